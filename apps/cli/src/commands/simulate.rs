//! `heapwright simulate`: what happens in a heap that a file describes?

use std::fs::File;
use std::io::{self, Read, Write};
use std::path::Path;

use heapwright_answers::heap::Snapshot;
use heapwright_answers::{Done, SimulationAnswer, SimulationQuestion, prepared};
use heapwright_catalogue::Catalogue;
use heapwright_drawings::{Doing, Event, Field, core_over_time, cut_open, cut_with_key, over_time};
use heapwright_garden::Garden;
use heapwright_texts::Locale;
use heapwright_wire::{LARGEST_CASE_BYTES, check_work, read_simulation, simulation_json};
use heapwright_wording as wording;

use crate::arguments::{Drawn, SimulateArguments};
use crate::commands::mix::WIDTH;
use crate::failure::Failure;
use crate::input;
use crate::keeping::plain_locale;
use crate::members::{is_shown, on_all_processors};
use crate::svg;
use crate::table::write_paragraph;
use crate::telling::write_json;
use crate::written::deliver;

/// Size of pictures in pixels.
pub const PICTURE: (f64, f64) = (760.0, 420.0);
/// The most bytes of a weather file: what is longer is refused with its own sentence.
const MOST_WEATHER_BYTES: u64 = 20 * 1024 * 1024 + 1;
/// More signs than this would cover each other.
const MOST_EVENTS: usize = 40;

/// Runs the command.
pub fn run(arguments: &SimulateArguments, out: &mut impl Write) -> Result<(), Failure> {
    deliver(arguments.output.as_deref(), arguments.replace, out, |out| {
        answer(arguments, out)
    })
}

fn answer(arguments: &SimulateArguments, out: &mut impl Write) -> Result<(), Failure> {
    let catalogue = Catalogue::built_in();
    let (mut question, garden) = read(catalogue, &arguments.file)?;
    if let Some(members) = arguments.members {
        check_work("--members", members, question.days, question.member_model)?;
        question.members = members;
    }
    if let Some(day) = arguments.at_day
        && !(0.0..=question.days).contains(&day)
    {
        return Err(Failure::Input(format!(
            "--at-day must be between 0 and {}, not {day}",
            question.days
        )));
    }
    let is_cut = matches!(
        arguments.svg,
        Some(Drawn::Section | Drawn::Wet | Drawn::Air)
    );
    if is_cut {
        question.fields_at_d = arguments.at_day.into_iter().collect();
        if question.fields_at_d.is_empty() {
            question.fields_at_d = vec![peak_day(catalogue, &garden, &question)?];
        }
    }
    let shown = is_shown(arguments.json, arguments.output.is_some());
    let answer = prepared(catalogue, &garden, &question)?
        .answer(&|count, member| on_all_processors(count, member, shown))?;
    if arguments.json {
        return write_json(&simulation_json(catalogue, &answer), out);
    }
    if arguments.csv {
        write_csv(&answer, out)?;
        return Ok(());
    }
    let locale = plain_locale(arguments.units);
    match arguments.svg {
        Some(drawn) => out.write_all(picture(&answer, drawn, locale).as_bytes())?,
        None => write_text(catalogue, &answer, locale, out)?,
    }
    Ok(())
}

/// The case of a file, whose weather file lies beside it.
fn read(catalogue: &Catalogue, path: &Path) -> Result<(SimulationQuestion, Garden), Failure> {
    let text = input::read_up_to(path, LARGEST_CASE_BYTES)?;
    let folder = match path.parent() {
        Some(parent) if path != Path::new("-") => parent,
        _ => Path::new(""),
    };
    let csv = |name: &str| {
        let path = folder.join(name);
        let mut bytes = Vec::new();
        File::open(&path)
            .and_then(|file| file.take(MOST_WEATHER_BYTES).read_to_end(&mut bytes))
            .map_err(|error| {
                format!(
                    "{} cannot be read ({error}): name a file from the folder of the case",
                    path.display()
                )
            })?;
        Ok(bytes)
    };
    Ok(read_simulation(catalogue, &Garden::default(), &text, &csv)?)
}

/// The day of the peak, from a run of the line alone.
fn peak_day(
    catalogue: &Catalogue,
    garden: &Garden,
    question: &SimulationQuestion,
) -> Result<f64, Failure> {
    let alone = SimulationQuestion {
        members: 0,
        fields_at_d: Vec::new(),
        ..question.clone()
    };
    let line = prepared(catalogue, garden, &alone)?.line()?;
    Ok(line.summary.peak_day)
}

fn write_text(
    catalogue: &Catalogue,
    answer: &SimulationAnswer,
    locale: Locale,
    out: &mut impl Write,
) -> Result<(), Failure> {
    for line in wording::simulation_lines(answer, locale) {
        write_paragraph(out, "", &line, WIDTH)?;
    }
    if answer.spread.is_some_and(|spread| spread.members > 1) {
        write_paragraph(out, "", wording::bands(locale), WIDTH)?;
    }
    for sentence in wording::simulation_notices(catalogue, &answer.notices, locale) {
        write_paragraph(out, "", &format!("Note: {sentence}"), WIDTH)?;
    }
    writeln!(out)?;
    write_paragraph(out, "", wording::simulation_limits(locale), WIDTH)?;
    Ok(())
}

/// A column of the table: its name and what stands in it.
type Column = (&'static str, fn(&Snapshot) -> f64);

/// The columns.
const COLUMNS: [Column; 14] = [
    ("time_d", |row| row.time_d),
    ("core_temperature_c", |row| row.core_temperature_c),
    ("mean_temperature_c", |row| row.mean_temperature_c),
    ("edge_temperature_c", |row| row.edge_temperature_c),
    ("air_temperature_c", |row| row.air_temperature_c),
    ("lowest_oxygen_pct", |row| row.lowest_oxygen_pct),
    ("moisture_pct", |row| row.moisture * 100.0),
    ("ph", |row| row.ph),
    ("volume_m3", |row| row.volume_m3),
    ("wet_mass_kg", |row| row.wet_mass_kg),
    ("dry_mass_kg", |row| row.dry_mass_kg),
    ("cn_ratio", |row| row.carbon_to_nitrogen),
    ("oxygen_uptake_mg_per_g_vs_h", |row| {
        row.oxygen_uptake_mg_per_g_vs_h
    }),
    ("water_wanted_l", |row| row.water_wanted_l),
];

/// The names of the columns.
pub fn column_names() -> impl Iterator<Item = &'static str> {
    COLUMNS.iter().map(|(name, _)| *name)
}

/// The cells of a row, with six digits.
pub fn cells(row: &Snapshot) -> impl Iterator<Item = String> {
    COLUMNS.iter().map(|(_, of)| digits(of(row)))
}

/// Six digits, which is more than anyone knows.
pub fn digits(value: f64) -> String {
    if value == 0.0 || !value.is_finite() {
        return "0".to_owned();
    }
    let exponent = value.abs().log10().floor();
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // held to 0 to 17
    let places = (5.0 - exponent).clamp(0.0, 17.0) as usize;
    let text = format!("{value:.places$}");
    if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        text
    }
}

/// A table of RFC 4180, its lines ended by CR LF.
fn write_csv(answer: &SimulationAnswer, out: &mut impl Write) -> io::Result<()> {
    let names: Vec<&str> = column_names().collect();
    write!(out, "{}\r\n", names.join(","))?;
    for row in &answer.series {
        let cells: Vec<String> = cells(row).collect();
        write!(out, "{}\r\n", cells.join(","))?;
    }
    Ok(())
}

/// What was and will be done, for a picture: the feeds are left out where there are many.
pub fn events(answer: &SimulationAnswer, zero_d: f64) -> Vec<Event> {
    let doing = |done: &Done| match done {
        Done::Fed => Doing::Fed,
        Done::Turned => Doing::Turned,
        Done::Watered => Doing::Watered,
        Done::Covered => Doing::Covered,
        Done::TakenOut => Doing::TakenOut,
    };
    let many = answer.done.len() > MOST_EVENTS;
    answer
        .done
        .iter()
        .filter(|(_, done)| !many || matches!(done, Done::Turned | Done::TakenOut))
        .map(|(day, done)| Event {
            day: day - zero_d,
            doing: doing(done),
            planned: *day >= zero_d && zero_d > 0.0,
        })
        .collect()
}

/// What the lanes of a picture are called.
pub fn doings(locale: Locale) -> Vec<(Doing, String)> {
    let words = wording::pictures_read::doings(locale).map(str::to_owned);
    Doing::ALL.into_iter().zip(words).collect()
}

fn picture(answer: &SimulationAnswer, drawn: Drawn, locale: Locale) -> String {
    if drawn == Drawn::Core {
        let mut shown = core_over_time(answer, 0.0, 0.0);
        shown.events = events(answer, 0.0);
        shown.doings = doings(locale);
        let drawing = over_time(&shown, PICTURE.0, PICTURE.1);
        return svg::complete(&drawing, "Temperature of the core", &key(answer, &[]));
    }
    let day = answer.fields.first().map_or(0.0, |field| field.time_d);
    cut(answer, drawn, &wording::day_of_case(day, locale))
}

/// What the bands and lines of a picture are.
pub fn key(answer: &SimulationAnswer, others: &[String]) -> Vec<String> {
    let mut key = Vec::new();
    if answer.bands.is_some() {
        key.push(
            "Line: half of the runs lie below. Dark band: half of the runs; light band: nine of ten."
                .to_owned(),
        );
    }
    key.extend_from_slice(others);
    key
}

/// The heap cut open, at the first of the answer's fields.
pub fn cut(answer: &SimulationAnswer, drawn: Drawn, when: &str) -> String {
    let (field, unit, title) = match drawn {
        Drawn::Wet => (Field::Wet, "%", "Moisture"),
        Drawn::Air => (Field::Air, "% oxygen", "Air"),
        Drawn::Core | Drawn::Section => (Field::Warm, "°C", "Temperature"),
    };
    let drawing = cut_open(answer, 0, field).map_or_else(
        || over_time(&core_over_time(answer, 0.0, 0.0), PICTURE.0, PICTURE.1),
        |cut| cut_with_key(&cut, unit, PICTURE.0, PICTURE.1),
    );
    svg::complete(&drawing, &format!("{title} inside the heap, {when}"), &[])
}

#[cfg(test)]
mod tests {
    use super::digits;

    #[test]
    fn numbers_have_six_digits_and_no_more_zeros() {
        assert_eq!(digits(61.234_567_8), "61.2346");
        assert_eq!(digits(0.000_123_456_78), "0.000123457");
        assert_eq!(digits(-3.0), "-3");
        assert_eq!(digits(1_234_567.0), "1234567");
        assert_eq!(digits(0.0), "0");
    }
}
