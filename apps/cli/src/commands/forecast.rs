//! `heapwright forecast`: what will become of a heap of the garden?

use std::fs;
use std::io::{self, Write};
use std::path::Path;

use heapwright_answers::heap::Model;
use heapwright_answers::{
    ForecastAnswer, ForecastQuestion, Plan, garden_climate, what_will_happen,
};
use heapwright_drawings::{core_line, core_over_time, over_time};
use heapwright_garden::Garden;
use heapwright_journal::EventId;
use heapwright_texts::Locale;
use heapwright_wire::{forecast_json, read_weather, spoken_plan};
use heapwright_wording as wording;

use crate::arguments::{Drawn, ForecastArguments};
use crate::commands::mix::WIDTH;
use crate::commands::simulate::{PICTURE, cells, column_names, cut, doings, events, key};
use crate::failure::Failure;
use crate::keeping::{Keeping, catalogue};
use crate::members::{is_shown, on_all_processors};
use crate::svg;
use crate::table::write_paragraph;
use crate::telling::{write_invented, write_json};
use crate::written::deliver;

/// Grids from fine to coarse: the finest with which a keeper does not wait long is taken, the same
/// for the line and all members, so that they can be compared.
const GRIDS: [(usize, usize); 3] = [(6, 4), (4, 3), (3, 2)];
/// Days of a run by runs by cells that a keeper waits for: about ten seconds.
const WAITED_FOR: f64 = 300_000.0;
/// Days of the past that the picture shows.
const PAST_SHOWN_D: f64 = 30.0;
/// The most plans side by side.
const MOST_PLANS: usize = 6;

/// Runs the command.
pub fn run(arguments: &ForecastArguments, out: &mut impl Write) -> Result<(), Failure> {
    deliver(arguments.output.as_deref(), arguments.replace, out, |out| {
        answer(arguments, out)
    })
}

fn answer(arguments: &ForecastArguments, out: &mut impl Write) -> Result<(), Failure> {
    let keeping = Keeping::to_read(&arguments.journal)?;
    let garden = keeping.garden();
    let heap = keeping.heap(arguments.heap.as_deref())?;
    let mut notices = Vec::new();
    let weather = match &arguments.weather {
        Some(path) => {
            let (climate, _) = garden_climate(&keeping.state)?;
            let clock = keeping.edges.clock();
            let (series, told) = read_weather(&bytes(path)?, &climate, clock, "--weather")?;
            notices = told;
            Some(series)
        }
        None => None,
    };
    let days = f64::from(arguments.days);
    let at_d = arguments.at_day.unwrap_or(0.0);
    if !(-3660.0..=days).contains(&at_d) {
        return Err(Failure::Input(format!(
            "--at-day must be between -3660 and {days}, not {at_d}"
        )));
    }
    let is_cut = matches!(
        arguments.svg,
        Some(Drawn::Section | Drawn::Wet | Drawn::Air)
    );
    let plans = plans(arguments, &keeping, &garden)?;
    let model = grid(&keeping, heap, arguments, plans.len());
    let question = ForecastQuestion {
        heap,
        now: keeping.edges.now,
        days,
        plans,
        weather,
        members: arguments.members,
        model,
        member_model: model,
        fields_at_d: is_cut.then_some(at_d).into_iter().collect(),
    };
    let shown = is_shown(arguments.journal.json, arguments.output.is_some());
    let mut answer = what_will_happen(
        catalogue(),
        &garden,
        &keeping.state,
        &question,
        &|count, member| on_all_processors(count, member, shown),
    )?;
    answer.notices.extend(notices);
    answer.notices.sort();
    if arguments.journal.json {
        return write_json(&forecast_json(catalogue(), &keeping.state, &answer), out);
    }
    if arguments.csv {
        write_csv(&answer, out)?;
        return Ok(());
    }
    let name = wording::heap_name(&keeping.state, heap, keeping.locale());
    match arguments.svg {
        Some(drawn) => out.write_all(picture(&answer, name, drawn, keeping.locale()).as_bytes())?,
        None => {
            write_invented(&keeping.state, out)?;
            write_text(&answer, name, arguments.days, keeping.locale(), out)?;
        }
    }
    Ok(())
}

/// How finely space is cut, by the work that there is.
fn grid(keeping: &Keeping, heap: EventId, arguments: &ForecastArguments, plans: usize) -> Model {
    let first = keeping
        .state
        .heap(heap)
        .and_then(|heap| heap.history().next())
        .map_or(keeping.edges.now, |event| event.happened);
    #[allow(clippy::cast_precision_loss)] // milliseconds of centuries
    let past_d = (keeping.edges.now.instant_ms - first.instant_ms) as f64 / 86_400_000.0;
    // All plans have one past.
    #[allow(clippy::cast_precision_loss)] // a few plans
    let days = past_d.max(0.0) + plans.max(1) as f64 * f64::from(arguments.days);
    let runs = f64::from(arguments.members + 1);
    GRIDS
        .into_iter()
        .find(|(layers, rings)| {
            #[allow(clippy::cast_precision_loss)] // some cells
            let cells = (layers * rings) as f64;
            runs * days * cells <= WAITED_FOR
        })
        .map_or(Model::Lumped, |(layers, rings)| Model::Spatial {
            layers,
            rings,
        })
}

fn bytes(path: &Path) -> Result<Vec<u8>, Failure> {
    fs::read(path).map_err(|error| Failure::Read {
        path: path.display().to_string(),
        error,
    })
}

/// What is planned with --turn-on and --water, and what it is compared with.
fn plans(
    arguments: &ForecastArguments,
    keeping: &Keeping,
    garden: &Garden,
) -> Result<Vec<Plan>, Failure> {
    let now = keeping.edges.now;
    let offset_at = |local| keeping.edges.offset_at(local);
    let spoken = |text: &str, field: &str| {
        spoken_plan(catalogue(), garden, text, now, &offset_at, field).map_err(Failure::from)
    };
    let mut plans = Vec::new();
    let mut planned = Plan {
        name: String::new(),
        acts: Vec::new(),
    };
    let mut words = Vec::new();
    for text in &arguments.turn_on {
        planned
            .acts
            .extend(spoken(&format!("turn {text}"), "--turn-on")?.acts);
        let on = if text.starts_with(|c: char| c.is_ascii_digit()) {
            "on "
        } else {
            ""
        };
        words.push(format!("turn {on}{text}"));
    }
    for text in &arguments.water {
        planned
            .acts
            .extend(spoken(&format!("water {text}"), "--water")?.acts);
        let now = if text.contains(" in ") || text.contains(" on ") || text.ends_with("tomorrow") {
            ""
        } else {
            " now"
        };
        words.push(format!("water {text}{now}"));
    }
    if !planned.acts.is_empty() {
        planned.name = words.join(" and ");
        plans.push(planned);
    }
    for text in &arguments.compare {
        plans.push(spoken(text, "--compare")?);
    }
    if plans.len() > MOST_PLANS {
        return Err(Failure::Input(format!(
            "{} plans are too many side by side: give at most {MOST_PLANS}",
            plans.len()
        )));
    }
    Ok(plans)
}

fn write_text(
    answer: &ForecastAnswer,
    name: &str,
    days: u32,
    locale: Locale,
    out: &mut impl Write,
) -> Result<(), Failure> {
    let ahead = if days == 1 {
        "the next day".to_owned()
    } else {
        format!("the next {days} days")
    };
    writeln!(out, "{name}, {ahead}")?;
    if let Some(line) = wording::gainsaid_line(answer, locale) {
        writeln!(out)?;
        write_paragraph(out, "", &line, WIDTH)?;
    }
    for plan in &answer.plans {
        writeln!(
            out,
            "\nIf you {}:",
            plan.plan.name.replace("leave", "leave it alone")
        )?;
        for line in wording::plan_lines(answer, plan, locale) {
            write_paragraph(out, "  ", &line, WIDTH)?;
        }
    }
    writeln!(out)?;
    if let Some(line) = wording::readings_line(answer, locale) {
        write_paragraph(out, "", &line, WIDTH)?;
    }
    let spread = answer.plans.first().and_then(|plan| plan.answer.spread);
    if spread.is_some_and(|spread| spread.members > 1) {
        write_paragraph(out, "", wording::bands(locale), WIDTH)?;
    }
    for sentence in wording::simulation_notices(catalogue(), &answer.notices, locale) {
        write_paragraph(out, "", &format!("Note: {sentence}"), WIDTH)?;
    }
    writeln!(out)?;
    write_paragraph(out, "", wording::simulation_limits(locale), WIDTH)?;
    Ok(())
}

/// A table of RFC 4180: the rows of each plan one after the other, days counted from now too.
fn write_csv(answer: &ForecastAnswer, out: &mut impl Write) -> io::Result<()> {
    let names: Vec<&str> = ["plan", "days_from_now"]
        .into_iter()
        .chain(column_names())
        .collect();
    write!(out, "{}\r\n", names.join(","))?;
    for plan in &answer.plans {
        let name = plan.plan.name.replace('"', "\"\"");
        for row in &plan.answer.series {
            let cells: Vec<String> = cells(row).collect();
            let from_now = super::simulate::digits(row.time_d - answer.now_d);
            write!(out, "\"{name}\",{from_now},{}\r\n", cells.join(","))?;
        }
    }
    Ok(())
}

fn picture(answer: &ForecastAnswer, name: &str, drawn: Drawn, locale: Locale) -> String {
    let Some((first, others)) = answer.plans.split_first() else {
        return String::new();
    };
    if drawn != Drawn::Core {
        let day = first.answer.fields.first();
        let when = day.map_or_else(String::new, |field| {
            wording::date_of(answer, field.time_d, locale)
        });
        return cut(&first.answer, drawn, &when);
    }
    let from_d = (answer.now_d - PAST_SHOWN_D).max(0.0);
    let mut shown = core_over_time(&first.answer, answer.now_d, from_d);
    shown.events = events(&first.answer, answer.now_d);
    shown.doings = doings(locale);
    shown.readings = answer
        .readings
        .iter()
        .map(|reading| (reading.day - answer.now_d, reading.temperature_c))
        .collect();
    let mut lines = Vec::new();
    for (plan, dashes) in others.iter().zip(
        ["long dashes", "dots", "dashes and dots"]
            .into_iter()
            .cycle(),
    ) {
        lines.push(format!("{dashes}: {}", plan.plan.name));
        shown.others.push((
            plan.plan.name.clone(),
            core_line(&plan.answer, answer.now_d, answer.now_d),
        ));
    }
    if !shown.readings.is_empty() {
        lines.push("Circles: what the probe showed.".to_owned());
    }
    let drawing = over_time(&shown, PICTURE.0, PICTURE.1);
    let title = format!("Core of {name}, days from now, if you {}", first.plan.name);
    svg::complete(&drawing, &title, &key(&first.answer, &lines))
}
