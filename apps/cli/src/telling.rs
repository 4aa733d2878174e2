//! What was written down, as text and as JSON; the balance of a heap before and after.

use std::io::Write;

use heapwright_answers::{
    BeforeUse, MixAnswer, MixQuestion, QuestionError, USUAL_TARGET, what_is_in,
};
use heapwright_garden::Garden;
use heapwright_journal::{Content, EventId, Moment};
use heapwright_quantity::Interval;
use heapwright_state::State;
use heapwright_texts::Locale;
use heapwright_wire::{RecordedJson, before_use_json, entry_json, mix_json};
use heapwright_wording as wording;
use serde::Serialize;

use crate::arguments::{JournalArguments, RecordArguments};
use crate::commands::hygiene::write_before_use;
use crate::commands::mix::WIDTH;
use crate::failure::Failure;
use crate::keeping::{Keeping, catalogue};
use crate::table::{write_paragraph, write_rows};

/// Writes an answer as one JSON object.
pub fn write_json(answer: &impl Serialize, out: &mut impl Write) -> Result<(), Failure> {
    serde_json::to_writer_pretty(&mut *out, answer).map_err(std::io::Error::from)?;
    writeln!(out)?;
    Ok(())
}

/// What went into a heap and was not taken out, with its balance; `None` when there is nothing.
pub fn as_fed(
    state: &State,
    garden: &Garden,
    heap: EventId,
) -> Result<Option<MixAnswer>, QuestionError> {
    let (parts, water_kg) = garden.parts_of(catalogue(), state, &state.contents(heap));
    if parts.is_empty() {
        return Ok(None);
    }
    let question = MixQuestion {
        parts,
        water_kg,
        target: USUAL_TARGET,
    };
    what_is_in(catalogue(), garden, &question).map(Some)
}

/// What a command has to tell besides what it wrote down.
#[derive(Default)]
pub struct Besides {
    /// What was in the heap before.
    pub before: Option<MixAnswer>,
    /// What is in it now.
    pub after: Option<MixAnswer>,
    /// What to beware of with what went in, as sentences.
    pub cautions: Vec<String>,
    /// What must be seen to before the compost is used.
    pub before_use: Vec<BeforeUse>,
    /// What to know about it, as sentences.
    pub notices: Vec<String>,
}

/// Tells what was written down.
pub fn tell(
    keeping: &Keeping,
    arguments: &JournalArguments,
    ids: &[EventId],
    besides: &Besides,
    out: &mut impl Write,
) -> Result<(), Failure> {
    if arguments.json {
        let mix = |answer: &Option<MixAnswer>| {
            answer.as_ref().map(|answer| mix_json(catalogue(), answer))
        };
        let answer = RecordedJson {
            journal: keeping.shown_path(),
            entries: ids
                .iter()
                .filter_map(|id| {
                    entry_json(catalogue(), &keeping.state, &keeping.state.entry(*id)?)
                })
                .collect(),
            before: mix(&besides.before),
            after: mix(&besides.after),
            cautions: besides.cautions.clone(),
            before_use: before_use_json(&besides.before_use),
            notices: besides.notices.clone(),
        };
        return write_json(&answer, out);
    }
    let locale = keeping.locale();
    for id in ids {
        if let Some(event) = keeping.event(*id) {
            let line = wording::entry_line(catalogue(), &keeping.state, event, locale);
            let line = format!("{line}{}", when(event.happened, keeping.edges.now, locale));
            write_paragraph(out, "", &line, WIDTH)?;
        }
    }
    if let Some(after) = &besides.after {
        writeln!(out)?;
        write_before_and_after(besides.before.as_ref(), after, out, locale)?;
        writeln!(out)?;
        write_paragraph(out, "", wording::as_fed(locale), WIDTH)?;
    }
    for notice in &besides.notices {
        write_paragraph(out, "", &format!("Note: {notice}"), WIDTH)?;
    }
    write_before_use(&besides.before_use, out, locale)
}

/// Writes down what happened and tells of it.
pub fn record_and_tell(
    keeping: &mut Keeping,
    arguments: &RecordArguments,
    contents: Vec<Content>,
    out: &mut impl Write,
) -> Result<(), Failure> {
    let ids = keeping.record(arguments, contents)?;
    tell(keeping, &arguments.journal, &ids, &Besides::default(), out)
}

/// When it happened, unless that is now: " (1 May 2026, 18:00)".
fn when(happened: Moment, now: Moment, locale: Locale) -> String {
    if happened == now {
        return String::new();
    }
    format!(
        " ({}, {})",
        wording::day_text(happened, locale),
        wording::time_text(happened, locale)
    )
}

/// C:N, moisture and air of a heap, before and after.
fn write_before_and_after(
    before: Option<&MixAnswer>,
    after: &MixAnswer,
    out: &mut impl Write,
    locale: Locale,
) -> Result<(), Failure> {
    let cells = |answer: &MixAnswer| {
        let (mixture, target) = (&answer.mixture, &answer.target);
        let ratio = mixture.carbon_to_nitrogen;
        let ratio = ratio.map(|ratio| wording::ratio_text(ratio.value, locale));
        let percent = |share: Interval| wording::percent_text(share.value, locale);
        [
            (ratio, wording::ratio_state(mixture, target, locale).1),
            (
                Some(percent(mixture.moisture_wet_basis)),
                wording::moisture_state(mixture, target, locale).1,
            ),
            (
                mixture.free_air_space.map(percent),
                wording::air_state(mixture, target, locale).1,
            ),
        ]
        .map(|(text, word)| {
            let text = text.as_deref().unwrap_or("\u{2013}");
            format!("{text}, {word}")
        })
    };
    let now = cells(after);
    let then = before.map(cells);
    let mut rows = vec![vec![String::new()]];
    if then.is_some() {
        rows[0].push("before".to_owned());
    }
    rows[0].push("now".to_owned());
    for (at, name) in ["C:N", "moisture", "free air space"]
        .into_iter()
        .enumerate()
    {
        let mut row = vec![name.to_owned()];
        row.extend(then.as_ref().map(|then| then[at].clone()));
        row.push(now[at].clone());
        rows.push(row);
    }
    write_rows(out, &rows)?;
    Ok(())
}

/// A garden that was made up says so above what it shows.
pub fn write_invented(state: &State, out: &mut impl Write) -> Result<(), Failure> {
    let garden = state.garden();
    if garden.invented {
        let name = garden.name.as_deref().unwrap_or("An invented garden");
        writeln!(out, "[{name}]\n")?;
    }
    Ok(())
}

/// How long ago, or that it never was: "3 days ago", "never".
pub fn ago(then: Option<Moment>, now: Moment, locale: Locale) -> String {
    then.map_or_else(
        || "never".to_owned(),
        |then| wording::ago_text(then, now, locale),
    )
}

/// A count of entries, lines or pictures: "1 entry", "3 entries".
pub fn counted(count: u64, one: &str, many: &str) -> String {
    format!("{count} {}", if count == 1 { one } else { many })
}

/// A count of entries: "1 entry", "3 entries".
pub fn entries(count: u64) -> String {
    counted(count, "entry", "entries")
}

/// A count of pictures: "1 picture", "3 pictures".
pub fn pictures(count: u64) -> String {
    counted(count, "picture", "pictures")
}

/// An amount as the keeper reads it.
pub fn amount_text(amount: &heapwright_quantity::Amount, locale: Locale) -> String {
    wording::amount_text(catalogue(), amount, locale)
}
