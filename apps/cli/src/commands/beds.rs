//! `heapwright beds`: which bed gets how much compost, and how much goes into pots.

use std::io::Write;

use heapwright_answers::spreading::Maturity;
use heapwright_answers::{
    BedAsked, BedsAnswer, BedsQuestion, MixedQuestion, beds_of_journal, beds_plan, compost_of_heap,
    compost_of_tables, in_mix,
};
use heapwright_catalogue::{Spreading, UseKind};
use heapwright_garden::Garden;
use heapwright_quantity::{measure_count_text, significant};
use heapwright_texts::Locale;
use heapwright_wire::{area_m2, beds_plan_json, read_beds, spoken_compost_m3, uses_json};
use heapwright_wording as wording;

use crate::arguments::{
    BedsAskedArguments, BedsCommand, BedsPlanArguments, BedsUsesArguments, JournalArguments,
};
use crate::commands::mix::WIDTH;
use crate::failure::Failure;
use crate::input;
use crate::keeping::plain_locale;
use crate::keeping::{Keeping, catalogue};
use crate::naming;
use crate::table::{write_paragraph, write_rows};
use crate::telling::{write_invented, write_json};

/// Width of the table for paper.
const PAPER: usize = 80;
/// Longest name of a bed in that table, so that its lines fit.
const PAPER_NAME: usize = 18;

/// Runs the command.
pub fn run(command: &BedsCommand, out: &mut impl Write) -> Result<(), Failure> {
    match command {
        BedsCommand::Plan(arguments) => plan(arguments, out),
        BedsCommand::Uses(arguments) => uses(arguments, out),
    }
}

/// A plan, the garden it is for, and how it is told.
pub struct Planned {
    /// The plan.
    pub answer: BedsAnswer,
    /// The garden.
    pub garden: Garden,
    /// How it is told.
    pub locale: Locale,
    /// The journal it is from; `None` for one from a file.
    pub keeping: Option<Keeping>,
}

/// Works out the plan that is asked for.
///
/// # Errors
///
/// When a file or the journal cannot be read, or what is asked cannot be used.
pub fn planned(
    arguments: &BedsAskedArguments,
    journal: &JournalArguments,
) -> Result<Planned, Failure> {
    let spreading = Spreading::built_in();
    if let Some(path) = &arguments.file {
        let text = input::read(path)?;
        let (question, garden) = read_beds(catalogue(), spreading, &Garden::default(), &text)?;
        let locale = plain_locale(journal.units);
        let answer = beds_plan(spreading, &question)?;
        return Ok(Planned {
            answer,
            garden,
            locale,
            keeping: None,
        });
    }
    let keeping = Keeping::to_read(journal)?;
    let garden = keeping.garden();
    let question = asked(arguments, spreading, &keeping, &garden)?;
    Ok(Planned {
        answer: beds_plan(spreading, &question)?,
        garden,
        locale: keeping.locale(),
        keeping: Some(keeping),
    })
}

fn plan(arguments: &BedsPlanArguments, out: &mut impl Write) -> Result<(), Failure> {
    let planned = planned(&arguments.asked, &arguments.journal)?;
    if let (Some(keeping), false) = (&planned.keeping, arguments.journal.json) {
        write_invented(&keeping.state, out)?;
    }
    tell(
        arguments,
        &planned.garden,
        &planned.answer,
        planned.locale,
        out,
    )
}

/// The question by the journal and the arguments.
fn asked(
    arguments: &BedsAskedArguments,
    spreading: &Spreading,
    keeping: &Keeping,
    garden: &Garden,
) -> Result<BedsQuestion, Failure> {
    let state = &keeping.state;
    let mut compost = compost_of_tables(spreading);
    let (mut volume_m3, mut volume_is_estimated) = (None, false);
    if let Some(text) = &arguments.from {
        let heap = keeping.heap(Some(text))?;
        let found = compost_of_heap(
            catalogue(),
            spreading,
            garden,
            state,
            heap,
            keeping.edges.now,
        )?;
        compost = found.compost;
        volume_m3 = found.volume_m3;
        volume_is_estimated = found.is_estimated;
    }
    let said = match (arguments.litres, &arguments.amount) {
        (Some(litres), _) => Some(litres / 1000.0),
        (None, Some(text)) => Some(spoken_compost_m3(
            catalogue(),
            spreading,
            garden,
            text,
            "--amount",
        )?),
        (None, None) => None,
    };
    if said.is_some() {
        (volume_m3, volume_is_estimated) = (said, false);
    }
    let Some(volume_m3) = volume_m3 else {
        return Err(Failure::Input(match &arguments.from {
            Some(heap) => format!(
                "the journal does not tell how much compost \"{}\" has: say it with --litres",
                naming::shown(heap)
            ),
            None => {
                "say how much compost there is: give --from HEAP, --litres or --amount".to_owned()
            }
        }));
    };
    if arguments.mature {
        compost.maturity = Maturity::Mature;
    }
    if arguments.immature {
        compost.maturity = Maturity::Immature;
    }
    if arguments.held_raw || arguments.no_raw {
        compost.held_raw = Some(arguments.held_raw);
    }
    // What the journal tells is never taken back.
    compost.off_food.is_off |= arguments.never_on_food_beds;
    let mut beds = beds_of_journal(catalogue(), spreading, garden, state, keeping.edges.now);
    let name_of = |text: &str| -> Result<String, Failure> {
        let id = naming::bed(state, text)?;
        let name = state
            .bed(id)
            .and_then(|bed| bed.now().described.as_ref())
            .map(|described| described.name.clone());
        Ok(name.unwrap_or_default())
    };
    if !arguments.bed.is_empty() {
        let wanted = arguments
            .bed
            .iter()
            .map(|text| name_of(text))
            .collect::<Result<Vec<String>, Failure>>()?;
        beds.retain(|bed| wanted.contains(&bed.name));
    }
    let mut each = |option: &str,
                    said: &[String],
                    usual: Option<&str>,
                    set: &dyn Fn(&mut BedAsked, &str) -> Result<(), Failure>|
     -> Result<(), Failure> {
        for text in said {
            let (bed, value) = match (text.rsplit_once('='), usual) {
                (Some((bed, value)), _) => (bed, value.trim()),
                (None, Some(usual)) => (text.as_str(), usual),
                (None, None) => {
                    return Err(Failure::Input(format!(
                        "{option}: \"{}\" names no value: write BED=VALUE",
                        naming::shown(text)
                    )));
                }
            };
            let name = name_of(bed)?;
            for bed in beds.iter_mut().filter(|bed| bed.name == name) {
                set(bed, value)?;
            }
        }
        Ok(())
    };
    each("--crop", &arguments.crop, None, &|bed, crop| {
        bed.crop = Some(crop.to_owned());
        bed.feeding = None;
        Ok(())
    })?;
    each("--sow", &arguments.sow, Some("0"), &|bed, days| {
        bed.sown_in_days = Some(days_of("--sow", days)?);
        Ok(())
    })?;
    each("--harvest", &arguments.harvest, None, &|bed, days| {
        bed.harvest_in_days = Some(days_of("--harvest", days)?);
        Ok(())
    })?;
    Ok(BedsQuestion {
        beds,
        compost,
        volume_m3,
        volume_is_estimated,
    })
}

fn days_of(option: &str, text: &str) -> Result<f64, Failure> {
    text.parse::<f64>()
        .ok()
        .filter(|days| (0.0..=3660.0).contains(days))
        .ok_or_else(|| {
            Failure::Input(format!(
                "{option}: \"{}\" is no count of days from 0 to 3660",
                naming::shown(text)
            ))
        })
}

fn tell(
    arguments: &BedsPlanArguments,
    garden: &Garden,
    answer: &BedsAnswer,
    locale: Locale,
    out: &mut impl Write,
) -> Result<(), Failure> {
    if arguments.journal.json {
        return write_json(&beds_plan_json(catalogue(), garden, answer), out);
    }
    if arguments.paper {
        return write_paper(garden, answer, locale, out);
    }
    write_paragraph(out, "", &wording::beds_summary(answer, locale), WIDTH)?;
    writeln!(out)?;
    let mut rows = vec![
        [
            "", "area", "depth", "amount", "barrows", "N now", "N met", "P met", "K met",
            "stops at",
        ]
        .map(str::to_owned)
        .to_vec(),
    ];
    for bed in &answer.beds {
        let share = &bed.share;
        let met = |index: usize| wording::met_text(share.met[index], locale);
        let nitrogen = share.brought_per_m2.nitrogen_first_year;
        rows.push(vec![
            bed.asked.name.clone(),
            format!("{}\u{a0}m²", significant(bed.asked.area_m2, 3)),
            wording::depth_text(share.depth_m, locale),
            locale.volume(share.volume_m3),
            fillings(garden, "barrow", share.volume_m3),
            format!(
                "{}\u{a0}g/m²",
                wording::interval_text(&nitrogen, |kg_m2| significant(kg_m2 * 1000.0, 2), locale)
            ),
            met(0),
            met(1),
            met(2),
            wording::stops_at(bed, locale).to_owned(),
        ]);
    }
    write_rows(out, &rows)?;
    writeln!(out)?;
    // The others are told of in one note.
    for bed in answer.beds.iter().filter(|bed| !bed.is_fed_by_earlier()) {
        write_paragraph(out, "", &wording::binding_line(bed, locale), WIDTH)?;
    }
    for notice in &answer.notices {
        let sentence = wording::beds_notice(notice, locale);
        write_paragraph(out, "", &format!("Note: {sentence}"), WIDTH)?;
    }
    writeln!(out)?;
    write_paragraph(out, "", wording::beds_limits(locale), WIDTH)?;
    Ok(())
}

/// So many of a measure of the garden: "2½".
fn fillings(garden: &Garden, measure: &str, volume_m3: f64) -> String {
    garden
        .filling_m3(catalogue(), measure)
        .map_or_else(String::new, |filling| {
            measure_count_text(volume_m3 / filling.typical)
        })
}

/// A table to take outside: what goes where, with room to tick it off.
fn write_paper(
    garden: &Garden,
    answer: &BedsAnswer,
    locale: Locale,
    out: &mut impl Write,
) -> Result<(), Failure> {
    write_paragraph(out, "", &wording::beds_summary(answer, locale), PAPER)?;
    writeln!(out)?;
    let mut rows = vec![
        [
            "", "bed", "depth", "barrows", "buckets", "amount", "weight", "done",
        ]
        .map(str::to_owned)
        .to_vec(),
    ];
    for (number, bed) in (1..).zip(&answer.beds) {
        let share = &bed.share;
        let name: String = if bed.asked.name.chars().count() > PAPER_NAME {
            bed.asked
                .name
                .chars()
                .take(PAPER_NAME - 1)
                .chain(['…'])
                .collect()
        } else {
            bed.asked.name.clone()
        };
        let some = |text: String| {
            if share.depth_m > 0.0 {
                text
            } else {
                "–".to_owned()
            }
        };
        let weight_kg = share.brought_per_m2.wet_mass.value * bed.asked.area_m2;
        rows.push(vec![
            format!("{number}"),
            name,
            some(wording::depth_text(share.depth_m, locale)),
            some(fillings(garden, "barrow", share.volume_m3)),
            some(fillings(garden, "bucket", share.volume_m3)),
            some(locale.volume(share.volume_m3)),
            some(locale.mass(weight_kg)),
            some("[ ]".to_owned()),
        ]);
    }
    write_rows(out, &rows)?;
    writeln!(out)?;
    // The others are told of in one note.
    for bed in answer.beds.iter().filter(|bed| !bed.is_fed_by_earlier()) {
        write_paragraph(out, "", &wording::binding_line(bed, locale), PAPER)?;
    }
    for notice in &answer.notices {
        write_paragraph(out, "", &wording::beds_notice(notice, locale), PAPER)?;
    }
    writeln!(out)?;
    write_paragraph(out, "", wording::beds_limits(locale), PAPER)?;
    Ok(())
}

fn uses(arguments: &BedsUsesArguments, out: &mut impl Write) -> Result<(), Failure> {
    let spreading = Spreading::built_in();
    let garden = Garden::default();
    let mix_m3 = arguments
        .amount
        .as_deref()
        .map(|text| spoken_compost_m3(catalogue(), spreading, &garden, text, "--amount"))
        .transpose()?;
    let area = arguments
        .area
        .as_deref()
        .map(|text| area_m2(text, "--area"))
        .transpose()?;
    if let Some(id) = &arguments.use_of {
        let question = match (mix_m3, area) {
            (Some(volume), _) => MixedQuestion::Volume(volume),
            (None, Some(area)) => MixedQuestion::Area(area),
            // Only to see whether it is known.
            (None, None) => match spreading.use_of(id).map(|known| known.kind) {
                Some(UseKind::Depth) => MixedQuestion::Area(1.0),
                _ => MixedQuestion::Volume(1.0),
            },
        };
        in_mix(spreading, id, question)?;
    }
    let ids: Vec<String> = arguments.use_of.iter().cloned().collect();
    if arguments.json {
        return write_json(&uses_json(catalogue(), spreading, &ids, mix_m3, area), out);
    }
    let locale = plain_locale(arguments.units);
    let amount = mix_m3.or(area);
    for use_of in spreading
        .uses()
        .iter()
        .filter(|use_of| ids.is_empty() || ids.contains(&use_of.id))
    {
        let here = amount.map(|amount| locale.volume(use_of.limit.high * amount));
        let called = format!("{} ({})", use_of.name, use_of.id);
        let line = wording::use_line(use_of, &called, here.as_deref(), locale);
        write_paragraph(out, "", &line, WIDTH)?;
        let keys = use_of.source_keys.iter();
        let sources: Vec<&str> = keys
            .filter_map(|key| catalogue().source(key))
            .map(|source| source.citation.as_str())
            .collect();
        write_paragraph(out, "    ", &sources.join("; "), WIDTH)?;
    }
    writeln!(out)?;
    write_paragraph(out, "", wording::uses_limits(locale), WIDTH)?;
    Ok(())
}
