//! `heapwright balance`: what should go with this?

use std::io::Write;

use heapwright_answers::{
    BalanceAnswer, BalanceQuestion, InReach, QuestionError, USUAL_TARGET, WaterSupply, what_to_add,
};
use heapwright_catalogue::Catalogue;
use heapwright_garden::{Garden, Stuff};
use heapwright_texts::Locale;
use heapwright_wire::{balance_json, read_balance, spoken_parts, spoken_reach, stores_in_reach};
use heapwright_wording as wording;

use crate::arguments::BalanceArguments;
use crate::commands::mix::{WIDTH, write_cautions, write_mixture};
use crate::failure::Failure;
use crate::input;
use crate::table::write_paragraph;

/// A can is poured by the half litre: finer is not worth measuring.
const WATER_STEP_KG: f64 = 0.5;

/// Runs the command.
pub fn run(arguments: &BalanceArguments, out: &mut impl Write) -> Result<(), Failure> {
    let catalogue = Catalogue::built_in();
    let (garden, locale) = input::garden(catalogue, &arguments.common)?;
    let (mut question, garden) = match &arguments.common.file {
        Some(path) => read_balance(catalogue, &garden, &input::read(path)?)?,
        None => (spoken(catalogue, &garden, arguments)?, garden),
    };
    question.target = input::target(question.target, &arguments.target)?;
    let answer =
        what_to_add(catalogue, &garden, &question).map_err(|error| named(error, arguments))?;
    if arguments.common.json {
        serde_json::to_writer_pretty(&mut *out, &balance_json(catalogue, &answer))
            .map_err(std::io::Error::from)?;
        writeln!(out)?;
        return Ok(());
    }
    write_text(catalogue, &garden, &question, &answer, locale, out)
}

/// A place in a list says nothing of what was typed behind --reach, or of stores: those are named.
fn named(error: QuestionError, arguments: &BalanceArguments) -> Failure {
    match &error {
        QuestionError::Part { field, error: why }
            if arguments.common.file.is_none() && field.0.starts_with("reach[") =>
        {
            let list = if arguments.reach.is_empty() {
                "what is in store"
            } else {
                "--reach"
            };
            Failure::Input(format!("{list}: {why}"))
        }
        _ => error.into(),
    }
}

fn spoken(
    catalogue: &Catalogue,
    garden: &Garden,
    arguments: &BalanceArguments,
) -> Result<BalanceQuestion, Failure> {
    let typed = arguments.parts.join("; ");
    let have = spoken_parts(catalogue, garden, &typed, "PARTS")?;
    input::weighed(catalogue, garden, &have, &typed)?;
    let reach: Vec<InReach> = if arguments.reach.is_empty() {
        stores_in_reach(garden)
    } else {
        spoken_reach(catalogue, garden, &arguments.reach.join("; "), "--reach")?
    };
    Ok(BalanceQuestion {
        have,
        reach,
        water: WaterSupply {
            most_kg: if arguments.no_water {
                0.0
            } else {
                f64::INFINITY
            },
            step_kg: WATER_STEP_KG,
        },
        target: USUAL_TARGET,
        objective: input::objective(arguments.objective),
        alternatives: true,
    })
}

fn write_text(
    catalogue: &Catalogue,
    garden: &Garden,
    question: &BalanceQuestion,
    answer: &BalanceAnswer,
    locale: Locale,
    out: &mut impl Write,
) -> Result<(), Failure> {
    if garden.invented {
        writeln!(out, "[{}]\n", garden.name)?;
    }
    if let Some(in_hand) = &answer.in_hand {
        write_paragraph(out, "", &wording::in_hand_line(in_hand, locale), WIDTH)?;
    }
    if let Some(conflict) = &answer.conflict {
        write_paragraph(out, "", &wording::conflict_line(conflict, locale), WIDTH)?;
        for help in &conflict.help {
            write_paragraph(out, "", wording::help_line(*help, locale), WIDTH)?;
        }
        if question.reach.is_empty() {
            writeln!(out, "Nothing is in reach: name what there is with --reach.")?;
        }
    }
    let names = names_in_reach(catalogue, garden, question);
    for recipe in &answer.recipes {
        writeln!(
            out,
            "\n{}",
            wording::recipe_title(answer, recipe, &names, locale)
        )?;
        write_paragraph(
            out,
            "  ",
            &wording::recipe_line(catalogue, recipe, locale),
            WIDTH,
        )?;
        let ratio = recipe.whole.mixture.carbon_to_nitrogen;
        let mut line = ratio.map_or_else(
            || "No C:N".to_owned(),
            |ratio| {
                format!(
                    "C:N {} ({})",
                    wording::ratio_text(ratio.value, locale),
                    wording::interval_text(
                        &ratio,
                        |value| wording::ratio_text(value, locale),
                        locale
                    )
                )
            },
        );
        let moisture = recipe.whole.mixture.moisture_wet_basis;
        line += &format!(
            ", moisture {} ({})",
            wording::percent_text(moisture.value, locale),
            wording::interval_text(
                &moisture,
                |value| wording::percent_text(value, locale),
                locale
            )
        );
        if let Some(air) = recipe.whole.mixture.free_air_space {
            line += &format!(", air {}", wording::percent_text(air.value, locale));
        }
        line += &format!(
            ", {} in all; chance to lie within all aims: {}.",
            locale.mass(recipe.whole.mixture.wet_mass_kg.value),
            wording::chance_text(recipe.whole.mixture.chance.all, locale)
        );
        write_paragraph(out, "  ", &line, WIDTH)?;
    }
    if let Some(first) = answer.recipes.first() {
        writeln!(out, "\nThe first in full:")?;
        write_mixture(&first.whole.mixture, &answer.target, locale, out)?;
        for notice in &first.whole.notices {
            write_paragraph(
                out,
                "",
                &format!("Note: {}", wording::mix_notice(catalogue, notice, locale)),
                WIDTH,
            )?;
        }
        let hand = answer.in_hand.iter().flat_map(|answer| answer.parts.iter());
        write_cautions(
            catalogue,
            hand.chain(first.added.iter().map(|added| &added.found)),
            out,
        )?;
    }
    writeln!(out)?;
    write_paragraph(out, "", wording::disclaimer(locale), WIDTH)?;
    Ok(())
}

fn names_in_reach(
    catalogue: &Catalogue,
    garden: &Garden,
    question: &BalanceQuestion,
) -> Vec<String> {
    question
        .reach
        .iter()
        .map(|item| match &item.stuff {
            Stuff::Custom(custom) => custom.name.clone(),
            Stuff::Known { material, .. } => garden.material(catalogue, material).map_or_else(
                || material.as_str().to_owned(),
                |material| material.short_name.to_lowercase(),
            ),
        })
        .collect()
}
