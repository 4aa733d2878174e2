//! `heapwright ready`: is a heap ready, how much will it give, and how are home tests done?

use std::io::Write;

use heapwright_answers::{ReadyAnswer, ReadyQuestion, is_it_ready};
use heapwright_texts::Locale;
use heapwright_wire::{home_test_json, ready_json};
use heapwright_wording::{self as wording, HomeTest};

use crate::arguments::ReadyArguments;
use crate::failure::Failure;
use crate::keeping::{Keeping, catalogue, plain_locale};
use crate::naming;
use crate::table::{write_paragraph, write_rows};
use crate::telling::{write_invented, write_json};

/// Letters in a line: the width of a plain terminal.
pub const WIDTH: usize = 80;

/// Runs the command.
pub fn run(arguments: &ReadyArguments, out: &mut impl Write) -> Result<(), Failure> {
    if let Some(how) = &arguments.how {
        return write_sheet(
            how,
            arguments.journal.json,
            plain_locale(arguments.journal.units),
            out,
        );
    }
    let keeping = Keeping::to_read(&arguments.journal)?;
    let question = ReadyQuestion {
        heap: keeping.heap(arguments.heap.as_deref())?,
        now: keeping.edges.now,
        simulate: !arguments.no_simulation,
    };
    let answer = is_it_ready(catalogue(), &keeping.garden(), &keeping.state, &question)?;
    if arguments.journal.json {
        return write_json(&ready_json(&keeping.state, &answer), out);
    }
    write_invented(&keeping.state, out)?;
    let name = wording::heap_name(&keeping.state, question.heap, keeping.locale());
    writeln!(
        out,
        "{name}, {}\n",
        wording::day_text(answer.now, keeping.locale())
    )?;
    write_answer(&answer, keeping.locale(), out)
}

fn write_answer(answer: &ReadyAnswer, locale: Locale, out: &mut impl Write) -> Result<(), Failure> {
    for line in wording::verdict_lines(answer, locale) {
        write_paragraph(out, "", &line, WIDTH)?;
    }
    if !answer.signs.is_empty() {
        writeln!(out, "\nMeasured signs:\n")?;
        for sign in &answer.signs {
            let [family, test, found, says, when] = wording::sign_cells(answer, sign, locale);
            write_paragraph(out, "  ", &format!("{family}: {test}, {when}"), WIDTH)?;
            write_paragraph(out, "    ", &format!("{found}: {says}"), WIDTH)?;
            if let Some(line) = wording::weak_line(sign, locale) {
                write_paragraph(out, "    ", &line, WIDTH)?;
            }
        }
    }
    if let Some(line) = wording::hints_line(&answer.hints, locale) {
        writeln!(out)?;
        write_paragraph(out, "", &line, WIDTH)?;
    }
    if let Some(today) = &answer.simulated {
        writeln!(out, "\n{}\n", wording::simulated_apart(locale))?;
        for line in wording::today_lines(today, locale) {
            write_paragraph(out, "  ", &line, WIDTH)?;
        }
    }
    if let Some(yields) = &answer.yields {
        writeln!(out, "\nWhen it is finished:\n")?;
        write_rows(out, &wording::yield_rows(yields, locale))?;
        writeln!(out)?;
        for line in wording::yield_lines(yields, locale) {
            write_paragraph(out, "", &line, WIDTH)?;
        }
    }
    writeln!(out)?;
    write_paragraph(out, "", wording::ready_limits(locale), WIDTH)?;
    Ok(())
}

fn write_sheet(how: &str, json: bool, locale: Locale, out: &mut impl Write) -> Result<(), Failure> {
    let names: Vec<&str> = HomeTest::ALL.iter().map(|test| test.name()).collect();
    if how.trim().eq_ignore_ascii_case("list") {
        if json {
            let all: Vec<_> = HomeTest::ALL.into_iter().map(home_test_json).collect();
            return write_json(&all, out);
        }
        let rows: Vec<Vec<String>> = HomeTest::ALL
            .iter()
            .map(|test| vec![test.name().to_owned(), test.sheet(locale).title.to_owned()])
            .collect();
        write_rows(out, &rows)?;
        return Ok(());
    }
    let Some(test) = HomeTest::called(how) else {
        return Err(Failure::Input(format!(
            "--how: there is no sheet \"{}\": use one of {}",
            naming::shown(how),
            names.join(", ")
        )));
    };
    if json {
        return write_json(&home_test_json(test), out);
    }
    let sheet = test.sheet(locale);
    writeln!(out, "{}\n", sheet.title)?;
    write_paragraph(out, "", sheet.tells, WIDTH)?;
    write_paragraph(
        out,
        "",
        &wording::told::needs_line(sheet.needs, locale),
        WIDTH,
    )?;
    writeln!(out)?;
    for (index, step) in sheet.steps.iter().enumerate() {
        write_paragraph(out, "  ", &format!("{}. {step}", index + 1), WIDTH)?;
    }
    writeln!(out, "\nWhat it says:\n")?;
    for line in sheet.reading {
        write_paragraph(out, "  ", line, WIDTH)?;
    }
    writeln!(out, "\nWrite it down:\n")?;
    write_paragraph(out, "  ", sheet.record, WIDTH)?;
    Ok(())
}
