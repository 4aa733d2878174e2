//! `heapwright diversion`: what was kept out of the bin?

use std::io::Write;

use heapwright_answers::{DiversionQuestion, what_was_kept_out};
use heapwright_wire::diversion_json;
use heapwright_wording as wording;

use crate::arguments::DiversionArguments;
use crate::commands::ready::WIDTH;
use crate::failure::Failure;
use crate::keeping::{Keeping, catalogue};
use crate::table::{write_paragraph, write_rows};
use crate::telling::{write_invented, write_json};

/// Runs the command.
pub fn run(arguments: &DiversionArguments, out: &mut impl Write) -> Result<(), Failure> {
    let keeping = Keeping::to_read(&arguments.journal)?;
    let from = arguments
        .from
        .as_deref()
        .map(|text| keeping.edges.since("--from", text))
        .transpose()?;
    let to = arguments
        .to
        .as_deref()
        .map(|text| keeping.edges.until("--to", text))
        .transpose()?;
    if let (Some(from), Some(to)) = (from, to)
        && from.instant_ms > to.instant_ms
    {
        return Err(Failure::Input(
            "--from lies behind --to: give the earlier day first".to_owned(),
        ));
    }
    let question = DiversionQuestion {
        from,
        to,
        now: keeping.edges.now,
    };
    let answer = what_was_kept_out(catalogue(), &keeping.garden(), &keeping.state, &question);
    if arguments.journal.json {
        return write_json(&diversion_json(&answer), out);
    }
    write_invented(&keeping.state, out)?;
    let locale = keeping.locale();
    if answer.months.is_empty() {
        writeln!(
            out,
            "Nothing was fed in this time that would have been waste."
        )?;
    } else {
        writeln!(out, "Kept out of the bin, as it went in:\n")?;
        write_rows(out, &wording::month_rows(&answer, locale))?;
        writeln!(out)?;
    }
    for line in wording::diversion_lines(&answer, locale) {
        write_paragraph(out, "", &line, WIDTH)?;
    }
    if answer.climate.is_some() {
        writeln!(
            out,
            "\nFor the climate, as carbon dioxide over a century:\n"
        )?;
        write_rows(out, &wording::climate_rows(&answer, locale))?;
        writeln!(out)?;
        for line in wording::climate_lines(&answer, locale) {
            write_paragraph(out, "", &line, WIDTH)?;
        }
        writeln!(out)?;
        write_paragraph(out, "", wording::climate_method(locale), WIDTH)?;
    }
    Ok(())
}
