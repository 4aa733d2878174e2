//! `heapwright mix`: what is this mixture?

use std::io::Write;

use heapwright_answers::{MixAnswer, MixQuestion, Mixture, USUAL_TARGET, what_is_in};
use heapwright_catalogue::Catalogue;
use heapwright_garden::{FoundPart, Garden};
use heapwright_quantity::{Interval, significant};
use heapwright_terms::Target;
use heapwright_texts::Locale;
use heapwright_wire::{mix_json, read_mix, spoken_parts};
use heapwright_wording as wording;

use crate::arguments::MixArguments;
use crate::failure::Failure;
use crate::input;
use crate::table::{write_paragraph, write_rows};

/// How wide paragraphs are.
pub const WIDTH: usize = 88;

/// Runs the command.
pub fn run(arguments: &MixArguments, out: &mut impl Write) -> Result<(), Failure> {
    let catalogue = Catalogue::built_in();
    let (garden, locale) = input::garden(catalogue, &arguments.common)?;
    let (mut question, garden) = match &arguments.common.file {
        Some(path) => read_mix(catalogue, &garden, &input::read(path)?)?,
        None => (spoken(catalogue, &garden, arguments)?, garden),
    };
    question.target = input::target(question.target, &arguments.target)?;
    let answer = what_is_in(catalogue, &garden, &question)?;
    if arguments.common.json {
        serde_json::to_writer_pretty(&mut *out, &mix_json(catalogue, &answer))
            .map_err(std::io::Error::from)?;
        writeln!(out)?;
        return Ok(());
    }
    write_text(catalogue, &answer, locale, out)
}

fn spoken(
    catalogue: &Catalogue,
    garden: &Garden,
    arguments: &MixArguments,
) -> Result<MixQuestion, Failure> {
    let typed = arguments.parts.join("; ");
    let parts = spoken_parts(catalogue, garden, &typed, "PARTS")?;
    input::weighed(catalogue, garden, &parts, &typed)?;
    let water_kg = arguments.water.as_deref().map_or(Ok(0.0), |text| {
        heapwright_wire::water_kg(catalogue, garden, text, "--water")
    })?;
    Ok(MixQuestion {
        parts,
        water_kg,
        target: USUAL_TARGET,
    })
}

fn write_text(
    catalogue: &Catalogue,
    answer: &MixAnswer,
    locale: Locale,
    out: &mut impl Write,
) -> Result<(), Failure> {
    for found in &answer.parts {
        writeln!(out, "{}", wording::amount_of(catalogue, found, locale))?;
    }
    if answer.water_kg > 0.0 {
        writeln!(
            out,
            "{} of water",
            wording::water_text(answer.water_kg, locale)
        )?;
    }
    writeln!(out)?;
    write_mixture(&answer.mixture, &answer.target, locale, out)?;
    if let Some(line) = wording::volumes_and_masses(answer, locale) {
        writeln!(out)?;
        write_paragraph(out, "", &line, WIDTH)?;
    }
    for notice in &answer.notices {
        write_paragraph(
            out,
            "",
            &format!("Note: {}", wording::mix_notice(catalogue, notice, locale)),
            WIDTH,
        )?;
    }
    write_cautions(catalogue, answer.parts.iter(), out)?;
    writeln!(out)?;
    write_paragraph(out, "", wording::disclaimer(locale), WIDTH)?;
    Ok(())
}

/// The figures of a mixture as a table.
pub fn write_mixture(
    mixture: &Mixture,
    target: &Target,
    locale: Locale,
    out: &mut impl Write,
) -> Result<(), Failure> {
    let row =
        |name: &str, interval: Option<Interval>, text: &dyn Fn(f64) -> String, judged: String| {
            let (value, range) = match interval {
                Some(interval) => (
                    text(interval.value),
                    wording::interval_text(&interval, text, locale),
                ),
                None => ("–".to_owned(), String::new()),
            };
            let range = if range == value { String::new() } else { range };
            vec![name.to_owned(), value, range, judged]
        };
    let kg = |value: f64| locale.mass(value);
    let litres = |value: f64| locale.volume(value);
    let aim = |word: &str, low: String, high: String| format!("{word}; aim {low} to {high}");
    let rows = vec![
        vec![
            "".to_owned(),
            "value".to_owned(),
            "8 in 10 lie in".to_owned(),
            String::new(),
        ],
        row(
            "C:N",
            mixture.carbon_to_nitrogen,
            &|value| wording::ratio_text(value, locale),
            {
                aim(
                    wording::ratio_state(mixture, target, locale).1,
                    wording::ratio_text(target.carbon_to_nitrogen_low, locale),
                    wording::ratio_text(target.carbon_to_nitrogen_high, locale),
                )
            },
        ),
        row(
            "moisture",
            Some(mixture.moisture_wet_basis),
            &|value| wording::percent_text(value, locale),
            {
                aim(
                    wording::moisture_state(mixture, target, locale).1,
                    wording::percent_text(target.moisture_wet_basis_low, locale),
                    wording::percent_text(target.moisture_wet_basis_high, locale),
                )
            },
        ),
        row(
            "free air space",
            mixture.free_air_space,
            &|value| wording::percent_text(value, locale),
            {
                aim(
                    wording::air_state(mixture, target, locale).1,
                    wording::percent_text(target.free_air_space_low, locale),
                    wording::percent_text(target.free_air_space_high, locale),
                )
            },
        ),
        row("mass", Some(mixture.wet_mass_kg), &kg, String::new()),
        row("dry matter", Some(mixture.dry_mass_kg), &kg, String::new()),
        row(
            "volume",
            mixture.volume_m3,
            &litres,
            "before settling".to_owned(),
        ),
        row(
            "bulk density",
            mixture.bulk_density_kg_m3,
            &|value| format!("{}\u{a0}kg/m³", significant(value, 3)),
            String::new(),
        ),
        row(
            "biodegradable",
            Some(mixture.biodegradable_dry_basis),
            &|value| wording::percent_text(value, locale),
            "of dry matter".to_owned(),
        ),
        row("nitrogen", Some(mixture.nitrogen_kg), &kg, String::new()),
        row(
            "phosphorus",
            mixture.phosphorus.mass_kg,
            &kg,
            known(mixture.phosphorus.known_share_of_dry_matter, locale),
        ),
        row(
            "potassium",
            mixture.potassium.mass_kg,
            &kg,
            known(mixture.potassium.known_share_of_dry_matter, locale),
        ),
        row(
            "calcium",
            mixture.calcium.mass_kg,
            &kg,
            known(mixture.calcium.known_share_of_dry_matter, locale),
        ),
        row(
            "magnesium",
            mixture.magnesium.mass_kg,
            &kg,
            known(mixture.magnesium.known_share_of_dry_matter, locale),
        ),
        row(
            "sodium",
            mixture.sodium.mass_kg,
            &kg,
            known(mixture.sodium.known_share_of_dry_matter, locale),
        ),
    ];
    write_rows(out, &rows)?;
    writeln!(
        out,
        "\nChance to lie within all three aims: {}.",
        wording::chance_text(mixture.chance.all, locale)
    )?;
    Ok(())
}

fn known(share: f64, locale: Locale) -> String {
    if share >= 0.995 {
        String::new()
    } else {
        format!(
            "known for {} of the dry matter",
            wording::percent_text(share, locale)
        )
    }
}

/// What to beware of, each material once.
pub fn write_cautions<'a>(
    catalogue: &Catalogue,
    parts: impl Iterator<Item = &'a FoundPart>,
    out: &mut impl Write,
) -> Result<(), Failure> {
    let mut seen: Vec<&str> = Vec::new();
    for material in parts.filter_map(|found| found.material.as_ref()) {
        if seen.contains(&material.id.as_str()) {
            continue;
        }
        seen.push(material.id.as_str());
        let cautions = catalogue.cautions_for(material);
        if cautions.is_empty() {
            continue;
        }
        writeln!(out, "\nTake care with {}:", material.name)?;
        for caution in cautions {
            write_paragraph(out, "  ", &wording::caution_line(caution), WIDTH)?;
        }
    }
    Ok(())
}
