//! `heapwright hygiene`: how hot was it for how long, and which published rules does that meet?

use std::fs::File;
use std::io::{self, BufReader, Read, Write};
use std::path::Path;

use heapwright_answers::heap::Model;
use heapwright_answers::heat::{
    Estimate, Method, Outline, Point, Record, RecordOptions, Turn, USUAL_PROBE_ERROR_K,
    hot_share_of_field,
};
use heapwright_answers::{
    BeforeUse, ForecastQuestion, HygieneAnswer, HygieneQuestion, Vessel, before_use,
    hygiene_of_heap, hygiene_of_record, what_will_happen,
};
use heapwright_journal::EventId;
use heapwright_spreadsheet::{moment_said, read_record};
use heapwright_texts::Locale;
use heapwright_wire::{heap_named, hygiene_json, length_m};
use heapwright_wording as wording;

use crate::arguments::{HygieneArguments, MethodArgument};
use crate::commands::mix::WIDTH;
use crate::failure::Failure;
use crate::keeping::plain_locale;
use crate::keeping::{Keeping, catalogue};
use crate::members::on_all_processors;
use crate::naming::shown;
use crate::table::{write_paragraph, write_rows};
use crate::telling::{write_invented, write_json};

/// A probe that is wrong by more is no thermometer [K].
const MOST_PROBE_ERROR_K: f64 = 20.0;
/// How finely the heap is cut for its hot share: layers, rings.
const GRID: (usize, usize) = (6, 4);
/// How long before and after its hottest reading a simulated heap is looked at too [d].
const AROUND_D: f64 = 1.0;

/// Runs the command.
pub fn run(arguments: &HygieneArguments, out: &mut impl Write) -> Result<(), Failure> {
    let mut question = question(arguments)?;
    if let Some(path) = &arguments.csv {
        let answer = of_file(path, arguments, &question)?;
        if arguments.journal.json {
            return write_json(&hygiene_json(catalogue(), &answer, None, &[]), out);
        }
        let locale = plain_locale(arguments.journal.units);
        return write_text(&answer, &[], locale, out);
    }
    let keeping = Keeping::to_read(&arguments.journal)?;
    let heap = keeping.heap(arguments.heap.as_deref())?;
    let now = keeping.edges.now;
    let mut answer = hygiene_of_heap(&keeping.state, heap, now, &question)?;
    if arguments.simulated {
        question.simulated = Some(simulated(&keeping, heap, answer.findings.hottest_ms)?);
        answer = hygiene_of_heap(&keeping.state, heap, now, &question)?;
    }
    let contents = keeping.state.contents_since_harvest(heap);
    let before_use = before_use(catalogue(), &keeping.garden(), &contents);
    if arguments.journal.json {
        let named = heap_named(&keeping.state, heap);
        return write_json(
            &hygiene_json(catalogue(), &answer, Some(named), &before_use),
            out,
        );
    }
    write_invented(&keeping.state, out)?;
    writeln!(
        out,
        "{}\n",
        wording::heap_name(&keeping.state, heap, keeping.locale())
    )?;
    write_text(&answer, &before_use, keeping.locale(), out)
}

fn question(arguments: &HygieneArguments) -> Result<HygieneQuestion, Failure> {
    let probe_error_k = arguments.probe_error.unwrap_or(USUAL_PROBE_ERROR_K);
    if !(0.0..=MOST_PROBE_ERROR_K).contains(&probe_error_k) {
        return Err(Failure::Input(format!(
            "--probe-error must be between 0 and {MOST_PROBE_ERROR_K}, not {probe_error_k}"
        )));
    }
    let length = |text: &Option<String>, option: &str| {
        text.as_deref()
            .map(|text| length_m(text, option))
            .transpose()
    };
    let width = length(&arguments.width, "--width")?;
    let outline = match (width, length(&arguments.height, "--height")?) {
        (Some(width_m), Some(height_m)) => {
            let length_m = length(&arguments.length, "--length")?.unwrap_or(width_m);
            Some(Outline::Box(width_m, length_m, height_m))
        }
        _ => None,
    };
    Ok(HygieneQuestion {
        method: arguments.method.map(|method| match method {
            MethodArgument::Static => Method::Static,
            MethodArgument::Turned => Method::Turned,
        }),
        options: RecordOptions {
            probe_error_k,
            ..RecordOptions::default()
        },
        depth_m: length(&arguments.depth, "--depth")?,
        outline,
        insulated: arguments.insulated,
        vessel: Vessel::Unknown,
        simulated: None,
    })
}

/// The answer for a file, of which no more than a row is in memory at a time.
fn of_file(
    path: &Path,
    arguments: &HygieneArguments,
    question: &HygieneQuestion,
) -> Result<HygieneAnswer, Failure> {
    let from_standard_input = path == Path::new("-");
    let name = if from_standard_input {
        "standard input".to_owned()
    } else {
        path.display().to_string()
    };
    let file: Box<dyn Read> = if from_standard_input {
        Box::new(io::stdin().lock())
    } else {
        Box::new(File::open(path).map_err(|error| Failure::Read {
            path: name.clone(),
            error,
        })?)
    };
    let turns = turns(arguments)?;
    let turns_have_offset = turns.first().map(|(_, has_offset)| *has_offset);
    let turns = turns.into_iter().map(|(turn, _)| turn).collect();
    let mut record = Record::new(turns, question.options);
    read_record(BufReader::with_capacity(1 << 16, file), &mut |row| {
        if turns_have_offset.is_some_and(|has_offset| has_offset != row.has_offset) {
            return Err(
                "its time and those of --turn are written in two ways: give all with an offset from UTC, or none"
                    .to_owned(),
            );
        }
        record
            .take(Point {
                time_ms: row.moment.instant_ms,
                temperature_c: row.temperature_c,
                depth_m: row.depth_m,
            })
            .map_err(|error| error.to_string())
    })
    .map_err(|fault| {
        let sentence = fault.to_string();
        Failure::Input(format!("{name}: {}", sentence.trim_end_matches('.')))
    })?;
    Ok(hygiene_of_record(&record, question)?)
}

/// The turnings that were given, and whether their times have an offset from UTC.
fn turns(arguments: &HygieneArguments) -> Result<Vec<(Turn, bool)>, Failure> {
    let turns = arguments
        .turn
        .iter()
        .map(|text| {
            let (moment, has_offset) = moment_said(text).ok_or_else(|| {
                Failure::Input(format!(
                    "--turn: \"{}\" is no time: write it as 2026-05-01T18:00:00+02:00",
                    shown(text)
                ))
            })?;
            let turn = Turn {
                time_ms: moment.instant_ms,
                mixing: 0.0,
            };
            Ok((turn, has_offset))
        })
        .collect::<Result<Vec<(Turn, bool)>, Failure>>()?;
    if let Some((_, first)) = turns.first()
        && turns.iter().any(|(_, has_offset)| has_offset != first)
    {
        return Err(Failure::Input(
            "--turn: some times have an offset from UTC and some have none: write all in one way"
                .to_owned(),
        ));
    }
    Ok(turns)
}

/// The hot share of the heap as simulated, around its hottest reading.
fn simulated(keeping: &Keeping, heap: EventId, hottest_ms: i64) -> Result<Estimate, Failure> {
    #[allow(clippy::cast_precision_loss)] // milliseconds of centuries
    let day = (hottest_ms - keeping.edges.now.instant_ms) as f64 / 86_400_000.0;
    let model = Model::Spatial {
        layers: GRID.0,
        rings: GRID.1,
    };
    let question = ForecastQuestion {
        heap,
        now: keeping.edges.now,
        days: 1.0,
        plans: Vec::new(),
        weather: None,
        members: 0,
        model,
        member_model: model,
        fields_at_d: vec![day - AROUND_D, day, day + AROUND_D],
    };
    let answer = what_will_happen(
        catalogue(),
        &keeping.garden(),
        &keeping.state,
        &question,
        &|count, member| on_all_processors(count, member, false),
    )?;
    let shares: Vec<f64> = answer
        .plans
        .iter()
        .flat_map(|plan| &plan.answer.fields)
        .filter_map(|field| {
            let cells = field.cells.iter();
            hot_share_of_field(cells.map(|cell| (cell.dry_mass_kg, cell.temperature_c)))
        })
        .collect();
    if shares.is_empty() {
        return Err(Failure::Input(
            "the heap cannot be simulated at its hottest reading: leave --simulated out".to_owned(),
        ));
    }
    #[allow(clippy::cast_precision_loss)] // a few
    let mean = shares.iter().sum::<f64>() / shares.len() as f64;
    Ok(Estimate {
        low: shares.iter().copied().fold(f64::INFINITY, f64::min),
        value: mean,
        high: shares.iter().copied().fold(0.0, f64::max),
    })
}

fn write_text(
    answer: &HygieneAnswer,
    before_use: &[BeforeUse],
    locale: Locale,
    out: &mut impl Write,
) -> Result<(), Failure> {
    write_paragraph(out, "", &wording::hygiene_headline(answer, locale), WIDTH)?;
    writeln!(out)?;
    for line in wording::hygiene_lines(answer, locale) {
        write_paragraph(out, "", &line, WIDTH)?;
    }
    writeln!(out)?;
    write_paragraph(out, "", &wording::method_line(answer, locale), WIDTH)?;
    let applied: Vec<_> = answer
        .rules
        .iter()
        .filter(|rule| rule.status[1] != heapwright_answers::heat::Status::NotApplicable)
        .collect();
    let mut rows = Vec::new();
    for rule in &applied {
        rows.push(vec![
            rule.words.jurisdiction.clone(),
            rule.words.id.clone(),
            wording::status_word(rule.status[1], locale).to_owned(),
            wording::missing_text(rule, locale),
        ]);
    }
    write_rows(out, &rows)?;
    writeln!(out, "\nWhat they ask:")?;
    for rule in &applied {
        let line = wording::rule_line(catalogue(), rule, locale);
        write_paragraph(out, "  ", &line, WIDTH)?;
    }
    write_paragraph(out, "", wording::rules_more(locale), WIDTH)?;
    writeln!(out)?;
    for (living, reach) in &answer.living {
        write_paragraph(
            out,
            "",
            &wording::living_line(*living, *reach, locale),
            WIDTH,
        )?;
    }
    write_before_use(before_use, out, locale)?;
    for notice in &answer.notices {
        let notice = wording::hygiene_notice(notice, locale);
        write_paragraph(out, "", &format!("Note: {notice}"), WIDTH)?;
    }
    writeln!(out)?;
    write_paragraph(out, "", wording::interpolation(locale), WIDTH)?;
    write_paragraph(out, "", wording::hygiene_limits(locale), WIDTH)?;
    Ok(())
}

/// What must be seen to before the compost of a heap is used.
pub fn write_before_use(
    before_use: &[BeforeUse],
    out: &mut impl Write,
    locale: Locale,
) -> Result<(), Failure> {
    if before_use.is_empty() {
        return Ok(());
    }
    writeln!(out, "\nBefore this compost is used:")?;
    for one in before_use {
        write_paragraph(out, "  ", &wording::before_use_line(one, locale), WIDTH)?;
    }
    Ok(())
}
