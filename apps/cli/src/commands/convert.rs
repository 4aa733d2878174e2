//! `heapwright convert`: areas, depths and amounts; masses; oxides; nitrogen over the years.

use std::io::Write;

use heapwright_answers::spreading::Later;
use heapwright_answers::{
    NitrogenQuestion, Oxide, compost_of_tables, covered, nitrogen_over_years, weighed,
};
use heapwright_catalogue::Spreading;
use heapwright_garden::Garden;
use heapwright_quantity::{Interval, Range, measure_count_text, significant};
use heapwright_texts::Locale;
use heapwright_wire::{
    area_m2, converted_cover, converted_nitrogen, converted_oxide, converted_weight, length_m,
    spoken_amount, spoken_compost_m3,
};
use heapwright_wording as wording;

use crate::arguments::{
    ConvertCommand, ConvertCommon, CoverArguments, NitrogenArguments, OxideArguments,
    WeightArguments,
};
use crate::commands::mix::WIDTH;
use crate::failure::Failure;
use crate::keeping::plain_locale;
use crate::keeping::{Keeping, catalogue};
use crate::naming;
use crate::table::{write_paragraph, write_rows};
use crate::telling::write_json;

/// Runs the command.
pub fn run(command: &ConvertCommand, out: &mut impl Write) -> Result<(), Failure> {
    match command {
        ConvertCommand::Cover(arguments) => cover(arguments, out),
        ConvertCommand::Weight(arguments) => weight(arguments, out),
        ConvertCommand::Oxide(arguments) => oxide(arguments, out),
        ConvertCommand::Nitrogen(arguments) => nitrogen(arguments, out),
    }
}

/// The garden whose measures count, and the units of the text.
fn garden(common: &ConvertCommon) -> Result<(Garden, Locale), Failure> {
    Ok(match Keeping::behind_question(common.garden.as_deref())? {
        Some(keeping) => (keeping.garden(), keeping.locale_for(common.units)),
        None => (Garden::default(), plain_locale(common.units)),
    })
}

fn cover(arguments: &CoverArguments, out: &mut impl Write) -> Result<(), Failure> {
    let spreading = Spreading::built_in();
    let (garden, locale) = garden(&arguments.common)?;
    let area = arguments
        .area
        .as_deref()
        .map(|text| area_m2(text, "--area"))
        .transpose()?;
    let depth = arguments
        .depth
        .as_deref()
        .map(|text| length_m(text, "--depth"))
        .transpose()?;
    let amount = arguments
        .amount
        .as_deref()
        .map(|text| spoken_compost_m3(catalogue(), spreading, &garden, text, "--amount"))
        .transpose()?;
    let found = covered(area, depth, amount)?;
    let density = spreading.range("compost.bulk_density");
    if arguments.common.json {
        return write_json(&converted_cover(catalogue(), &garden, &found, density), out);
    }
    let mut line = wording::covered_line(&found, locale);
    let counts: Vec<String> = [("barrow", "barrows"), ("bucket", "buckets")]
        .into_iter()
        .filter_map(|(id, plural)| {
            let filling = garden.filling_m3(catalogue(), id)?;
            let count = measure_count_text(found.volume_m3 / filling.typical);
            Some(format!("{count}\u{a0}{plural}"))
        })
        .collect();
    if !counts.is_empty() {
        line += &format!(" That is {}", counts.join(" or "));
        line += &format!(
            ", about {} of compost.",
            locale.mass(found.volume_m3 * density.typical)
        );
    }
    write_paragraph(out, "", &line, WIDTH)?;
    Ok(())
}

/// A density that was given, or the usual one.
fn density(said: Option<f64>, spreading: &Spreading) -> Result<Range, Failure> {
    match said {
        None => Ok(spreading.range("compost.bulk_density")),
        Some(said) if (20.0..=2000.0).contains(&said) => Ok(Range::exact(said)),
        Some(said) => Err(Failure::Input(format!(
            "--density must be between 20 and 2000, not {said}"
        ))),
    }
}

fn weight(arguments: &WeightArguments, out: &mut impl Write) -> Result<(), Failure> {
    let spreading = Spreading::built_in();
    let (garden, locale) = garden(&arguments.common)?;
    let density = density(arguments.density, spreading)?;
    let amount = spoken_amount(catalogue(), &arguments.amount, "AMOUNT")?;
    let found = match amount.kilograms() {
        Some(mass) => weighed(Some(mass), None, density),
        None => weighed(
            None,
            Some(spoken_compost_m3(
                catalogue(),
                spreading,
                &garden,
                &arguments.amount,
                "AMOUNT",
            )?),
            density,
        ),
    };
    let Some(found) = found else {
        return Err(Failure::Input("AMOUNT: give a volume or a mass".to_owned()));
    };
    if arguments.common.json {
        return write_json(&converted_weight(&found), out);
    }
    let text = |interval: &Interval, text: &dyn Fn(f64) -> String| {
        let value = text(interval.value);
        let range = wording::interval_text(interval, text, locale);
        if range == value {
            value
        } else {
            format!("{value} ({range})")
        }
    };
    let line = format!(
        "{} of compost at {}\u{a0}kg/m³ are {}.",
        text(&found.volume_m3, &|volume| locale.volume(volume)),
        significant(found.bulk_density_kg_m3.typical, 3),
        text(&found.mass_kg, &|mass| locale.mass(mass)),
    );
    write_paragraph(out, "", &line, WIDTH)?;
    Ok(())
}

/// The largest amount that is converted, in whatever unit.
const MOST_OXIDE: f64 = 1e9;

/// An amount of an element or oxide as it was said.
struct OxideSaid<'a> {
    amount: f64,
    /// With a space before it, or nothing.
    unit: String,
    of: &'a str,
}

/// Understands "5 P", "5 kg P" and "5 kg/ha of P2O5".
fn oxide_said(said: &str) -> Result<OxideSaid<'_>, Failure> {
    let unclear = || {
        Failure::Input(format!(
            "\"{}\" is not understood: write an amount and what of, such as 5 P or \"5 kg P2O5\"",
            naming::shown(said)
        ))
    };
    let said = said.trim();
    let digits = said
        .find(|sign: char| sign.is_alphabetic() || sign.is_whitespace() || sign == '%')
        .ok_or_else(unclear)?;
    // An exponent is part of the number.
    let (number, rest) = match said.split_once(char::is_whitespace) {
        Some((word, rest)) if word.parse::<f64>().is_ok() => (word, rest),
        _ => said.split_at(digits),
    };
    let amount: f64 = number.parse().map_err(|_| unclear())?;
    if !(0.0..=MOST_OXIDE).contains(&amount) {
        return Err(Failure::Input(format!(
            "AMOUNT must be from 0 to 1,000,000,000, not \"{}\"",
            naming::shown(number)
        )));
    }
    let mut words: Vec<&str> = rest.split_whitespace().collect();
    let of = words.pop().ok_or_else(unclear)?;
    if words.last() == Some(&"of") {
        words.pop();
    }
    let unit = match words[..] {
        [] => String::new(),
        [unit]
            if !unit
                .chars()
                .any(|sign| sign.is_ascii_digit() && sign != '2') =>
        {
            format!("\u{a0}{unit}")
        }
        _ => return Err(unclear()),
    };
    Ok(OxideSaid { amount, unit, of })
}

fn oxide(arguments: &OxideArguments, out: &mut impl Write) -> Result<(), Failure> {
    let said = arguments.words.join(" ");
    let OxideSaid { amount, unit, of } = oxide_said(&said)?;
    let same = |one: &str, other: &str| one.eq_ignore_ascii_case(other.trim());
    let is_oxide = Oxide::ALL.iter().any(|oxide| same(oxide.formula(), of));
    let found = Oxide::ALL.into_iter().find(|oxide| {
        let of = same(oxide.formula(), of) || same(oxide.element(), of);
        let to = arguments
            .to
            .as_deref()
            .is_none_or(|to| same(oxide.formula(), to));
        of && to
    });
    let Some(found) = found else {
        return Err(Failure::Input(format!(
            "\"{}\" is not known here: use one of P, K, Ca, Mg, P2O5, K2O, CaO, CaCO3, MgO",
            naming::shown(of)
        )));
    };
    let answer = converted_oxide(found, amount, is_oxide);
    if arguments.json {
        return write_json(&answer, out);
    }
    let (from, to, factor) = if is_oxide {
        (found.formula(), found.element(), 1.0 / found.over_element())
    } else {
        (found.element(), found.formula(), found.over_element())
    };
    writeln!(
        out,
        "{}{unit} {from} are {}{unit} {to}.",
        significant(amount, 6),
        significant(amount * factor, 4)
    )?;
    Ok(())
}

fn nitrogen(arguments: &NitrogenArguments, out: &mut impl Write) -> Result<(), Failure> {
    let spreading = Spreading::built_in();
    let (garden, locale) = garden(&arguments.common)?;
    let mut compost = compost_of_tables(spreading).compost;
    let share = |option: &str, said: Option<f64>, most: f64| match said {
        Some(pct) if !(0.0..=most).contains(&pct) => Err(Failure::Input(format!(
            "{option} must be between 0 and {most}, not {pct}"
        ))),
        said => Ok(said.map(|pct| pct / 100.0)),
    };
    if let Some(nitrogen) = share("--nitrogen", arguments.nitrogen, 50.0)? {
        compost.nitrogen_dry_basis = Range::exact(nitrogen);
    }
    if let Some(moisture) = share("--moisture", arguments.moisture, 95.0)? {
        compost.moisture_wet_basis = Range::exact(moisture);
    }
    if let Some(ratio) = arguments.cn {
        if !(1.0..=1000.0).contains(&ratio) {
            return Err(Failure::Input(format!(
                "--cn must be between 1 and 1000, not {ratio}"
            )));
        }
        compost.carbon_to_nitrogen = Some(ratio);
    }
    let later = match share("--later", arguments.later, 100.0)? {
        _ if arguments.halving => Some(Later::Halving),
        share => share.map(Later::OfRemaining),
    };
    let found = nitrogen_over_years(
        spreading,
        &NitrogenQuestion {
            volume_m3: spoken_compost_m3(
                catalogue(),
                spreading,
                &garden,
                &arguments.amount,
                "AMOUNT",
            )?,
            compost,
            years: arguments.years,
            first_year: share("--first", arguments.first, 100.0)?,
            later,
        },
    )?;
    if arguments.common.json {
        return write_json(&converted_nitrogen(&found), out);
    }
    writeln!(
        out,
        "{} of nitrogen in all, of which there are for plants:",
        locale.mass(found.nitrogen_kg)
    )?;
    let pct = |share: f64| significant(share * 100.0, 3);
    let mut rows = Vec::new();
    for (index, share) in found.shares.iter().enumerate() {
        rows.push(vec![
            format!("year {}", index + 1),
            format!("{}\u{a0}%", pct(*share)),
            format!(
                "{} to {}\u{a0}%",
                pct(found.low[index]),
                pct(found.high[index])
            ),
            locale.mass(share * found.nitrogen_kg),
        ]);
    }
    let sum: f64 = found.shares.iter().sum();
    rows.push(vec![
        "together".to_owned(),
        format!("{}\u{a0}%", pct(sum)),
        format!(
            "{} to {}\u{a0}%",
            pct(found.low.iter().sum()),
            pct(found.high.iter().sum())
        ),
        locale.mass(sum * found.nitrogen_kg),
    ]);
    write_rows(out, &rows)?;
    writeln!(out)?;
    write_paragraph(out, "", wording::nitrogen_limits(locale), WIDTH)?;
    Ok(())
}
