//! `heapwright bed`: beds and what was spread on them.

use std::io::Write;

use heapwright_catalogue::Spreading;
use heapwright_journal::content::{BedDescribed, SoilTest};
use heapwright_quantity::significant;
use heapwright_texts::Locale;
use heapwright_wire::{BedsJson, area_m2, bed_json, chosen};
use heapwright_wording::{self as wording, Word};

use crate::arguments::{BedCommand, BedNewArguments, ViewArguments};
use crate::failure::Failure;
use crate::keeping::{Keeping, catalogue};
use crate::naming;
use crate::telling::{Besides, amount_text, tell, write_invented, write_json};

/// Runs the command.
pub fn run(command: &BedCommand, out: &mut impl Write) -> Result<(), Failure> {
    match command {
        BedCommand::New(arguments) => new(arguments, out),
        BedCommand::List(arguments) => list(arguments, out),
    }
}

fn new(arguments: &BedNewArguments, out: &mut impl Write) -> Result<(), Failure> {
    let mut keeping = Keeping::to_write(&arguments.record.journal)?;
    let name = arguments.name.trim().to_owned();
    if naming::is_bed(&keeping.state, &name) {
        return Err(Failure::Input(format!(
            "a bed called \"{}\" is there already: give another name",
            naming::shown(&name)
        )));
    }
    let soil = SoilTest {
        ph: arguments.soil_ph,
        organic_matter_pct: arguments.soil_organic,
        phosphorus_mg_kg: arguments.soil_phosphorus,
        potassium_mg_kg: arguments.soil_potassium,
        conductivity_ds_m: arguments.soil_conductivity,
    };
    let described = BedDescribed {
        name,
        area_m2: area_m2(&arguments.area, "AREA")?,
        crop: arguments.crop.clone(),
        feeding: arguments
            .feeding
            .as_deref()
            .map(|text| chosen(text, "--feeding"))
            .transpose()?,
        new_ground: arguments.new_ground,
        soil: (soil != SoilTest::default()).then_some(soil),
    };
    let besides = Besides {
        notices: without_figures(&described, keeping.locale())
            .into_iter()
            .collect(),
        ..Besides::default()
    };
    let ids = keeping.record(&arguments.record, vec![described.into()])?;
    tell(&keeping, &arguments.record.journal, &ids, &besides, out)
}

/// What it means that nothing is known of the crop, unless somebody said how much it feeds.
fn without_figures(described: &BedDescribed, locale: Locale) -> Option<String> {
    let spreading = Spreading::built_in();
    let crop = described.crop.as_deref()?;
    if described.feeding.is_some() || spreading.crop(crop).is_some() {
        return None;
    }
    let names = spreading.crops().iter().flat_map(|known| {
        let words = known.other_words.iter().map(String::as_str);
        let words = words.chain([known.name.as_str()]);
        words.map(move |word| (word, known.name.as_str()))
    });
    let nearest = naming::nearest(crop, names);
    Some(wording::crop_without_figures(
        &naming::shown(crop),
        nearest,
        locale,
    ))
}

fn list(arguments: &ViewArguments, out: &mut impl Write) -> Result<(), Failure> {
    let keeping = Keeping::to_read(&arguments.journal)?;
    if arguments.journal.json {
        let beds = keeping
            .state
            .beds()
            .filter_map(|bed| bed_json(catalogue(), &keeping.state, bed))
            .collect();
        return write_json(
            &BedsJson {
                journal: keeping.shown_path(),
                beds,
            },
            out,
        );
    }
    write_invented(&keeping.state, out)?;
    let locale = keeping.locale();
    let mut any = false;
    for bed in keeping.state.beds() {
        let now = bed.now();
        let Some(described) = &now.described else {
            continue;
        };
        any = true;
        let crop = described
            .crop
            .as_ref()
            .map_or_else(String::new, |crop| format!(", {crop}"));
        let feeding = described.feeding.map_or_else(String::new, |feeding| {
            format!(", {} feeding", feeding.word(keeping.locale()))
        });
        writeln!(
            out,
            "{}: {}\u{a0}m²{crop}{feeding}",
            described.name,
            significant(described.area_m2, 3)
        )?;
        for (happened, spread) in &now.dressings {
            let from = spread.heap.map_or_else(String::new, |heap| {
                format!(" from {}", wording::heap_name(&keeping.state, heap, locale))
            });
            writeln!(
                out,
                "  {}: {}{from}",
                wording::day_text(*happened, locale),
                amount_text(&spread.amount.amount(), locale)
            )?;
        }
    }
    if !any {
        writeln!(
            out,
            "There is no bed yet: describe one with `heapwright bed new NAME AREA`."
        )?;
    }
    Ok(())
}
