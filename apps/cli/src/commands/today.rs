//! `heapwright today`: what does each heap need, and when should it be looked at again?

use std::io::Write;

use heapwright_answers::today::{Need, TodayAnswer, today};
use heapwright_journal::content::Stage;
use heapwright_texts::Locale;
use heapwright_wire::needs_json;
use heapwright_wording::{day_text, heap_name, today as wording};

use crate::arguments::TodayArguments;
use crate::commands::ready::WIDTH;
use crate::failure::Failure;
use crate::keeping::{Keeping, catalogue};
use crate::table::write_paragraph;
use crate::telling::{write_invented, write_json};

/// Runs the command.
pub fn run(arguments: &TodayArguments, out: &mut impl Write) -> Result<(), Failure> {
    let keeping = Keeping::to_read(&arguments.journal)?;
    let garden = keeping.garden();
    let locale = keeping.locale();
    let mut answer = today(catalogue(), &garden, &keeping.state, keeping.edges.now);
    if let Some(text) = &arguments.heap {
        let heap = keeping.heap(Some(text))?;
        let stage = keeping.state.heap(heap).map(|heap| heap.now().stage);
        if stage == Some(Stage::Finished) {
            return Err(Failure::Input(format!(
                "{} is finished and asks for nothing: name a heap that is fed or ripens",
                heap_name(&keeping.state, heap, locale)
            )));
        }
        answer = answer.of_heap(heap);
    }
    if arguments.journal.json {
        let json = needs_json(catalogue(), &garden, &keeping.state, &answer, locale);
        return write_json(&json, out);
    }
    write_invented(&keeping.state, out)?;
    write_paragraph(out, "", &day_text(answer.now, locale), WIDTH)?;
    write_needs(&answer, locale, out, |need, out| {
        let headline = wording::headline(catalogue(), &garden, &keeping.state, need, locale);
        writeln!(out)?;
        write_paragraph(out, "  ", &headline, WIDTH)?;
        let why = wording::why_lines(need, answer.now, locale);
        let how = wording::how_to(catalogue(), need, locale);
        let cautions = need.cautions.iter();
        let cautions = cautions.map(|caution| wording::caution_line(*caution, locale).to_owned());
        for line in why.into_iter().chain(how).chain(cautions) {
            write_paragraph(out, "    ", &line, WIDTH)?;
        }
        Ok(())
    })?;
    if !answer.quiet.is_empty() {
        writeln!(out, "\n{}\n", wording::quiet(locale))?;
        for quiet in &answer.quiet {
            let line = wording::quiet_line(&keeping.state, quiet, locale);
            write_paragraph(out, "  ", &line, WIDTH)?;
        }
    }
    writeln!(out)?;
    write_paragraph(out, "", wording::today_limits(locale), WIDTH)?;
    Ok(())
}

/// Needs under the heading of how soon they are.
fn write_needs<Out: Write>(
    answer: &TodayAnswer,
    locale: Locale,
    out: &mut Out,
    mut write: impl FnMut(&Need, &mut Out) -> Result<(), Failure>,
) -> Result<(), Failure> {
    if answer.needs.is_empty() {
        let nothing = if answer.quiet.is_empty() {
            wording::no_heaps(locale)
        } else {
            wording::nothing_today(locale)
        };
        writeln!(out)?;
        write_paragraph(out, "", nothing, WIDTH)?;
    }
    for needs in answer
        .needs
        .chunk_by(|one, other| one.urgency == other.urgency)
    {
        writeln!(
            out,
            "\n{}",
            wording::urgency_heading(needs[0].urgency, locale)
        )?;
        for need in needs {
            write(need, out)?;
        }
    }
    Ok(())
}
