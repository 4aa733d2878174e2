//! `heapwright log`: what was written down, in the order in which it happened.

use std::io::Write;

use heapwright_journal::{Content, Event, What};
use heapwright_state::{Entry, Place, concerns};
use heapwright_texts::Locale;
use heapwright_wire::{LogJson, entry_json};
use heapwright_wording as wording;

use crate::arguments::LogArguments;
use crate::failure::Failure;
use crate::keeping::{Keeping, catalogue};
use crate::naming;
use crate::telling::{write_invented, write_json};

/// Runs the command.
pub fn run(arguments: &LogArguments, out: &mut impl Write) -> Result<(), Failure> {
    let keeping = Keeping::to_read(&arguments.journal)?;
    let heap = arguments
        .heap
        .as_deref()
        .map(|text| keeping.heap(Some(text)))
        .transpose()?;
    let kinds = kinds(&arguments.kind, keeping.locale())?;
    let since = arguments
        .since
        .as_deref()
        .map(|text| keeping.edges.since("--since", text))
        .transpose()?;
    let until = arguments
        .until
        .as_deref()
        .map(|text| keeping.edges.until("--until", text))
        .transpose()?;
    let wanted = |entry: &Entry<'_>, event: &Event| {
        let is_correction = event
            .content()
            .is_some_and(|content| content.corrects().is_some());
        let of_heap = heap.is_none_or(|heap| {
            event
                .content()
                .is_some_and(|content| concerns(event.id, content).0.contains(&Some(heap)))
        });
        let in_time = since.is_none_or(|since| event.happened.instant_ms >= since.instant_ms)
            && until.is_none_or(|until| event.happened.instant_ms <= until.instant_ms);
        let of_kind = kinds.is_empty() || kinds.contains(&kind(event));
        let stands = !entry.is_withdrawn() && !is_correction;
        (arguments.all || stands || (of_kind && !kinds.is_empty() && is_correction))
            && of_heap
            && in_time
            && of_kind
    };
    let mut entries: Vec<(Place, Entry<'_>)> = keeping
        .state
        .entries()
        .filter_map(|entry| {
            let event = entry.counts().or(entry.recorded())?;
            wanted(&entry, event).then(|| (Place::of(event), entry))
        })
        .collect();
    entries.sort_by_key(|(place, _)| *place);
    let skipped = entries
        .len()
        .saturating_sub(arguments.last.unwrap_or(usize::MAX));
    entries.drain(..skipped);
    if arguments.journal.json {
        let entries = entries
            .iter()
            .filter_map(|(_, entry)| entry_json(catalogue(), &keeping.state, entry))
            .collect();
        return write_json(
            &LogJson {
                journal: keeping.shown_path(),
                lines: keeping.state.lines() as u64,
                entries,
            },
            out,
        );
    }
    write_text(&keeping, &entries, out)
}

/// The words of the journal for the kinds that are named.
fn kinds(texts: &[String], locale: Locale) -> Result<Vec<&'static str>, Failure> {
    let plain = |text: &str| text.trim().to_lowercase().replace(['-', '_'], " ");
    texts
        .iter()
        .flat_map(|text| text.split(','))
        .map(|text| {
            let typed = plain(text);
            wording::kind_names(locale)
                .iter()
                .find(|(word, name)| {
                    // "feed" is one of the feeds.
                    plain(word) == typed || *name == typed || *name == format!("{typed}s")
                })
                .map(|(word, _)| *word)
                .ok_or_else(|| {
                    let names: Vec<&str> = wording::kind_names(locale)
                        .iter()
                        .map(|(_, name)| *name)
                        .collect();
                    Failure::Input(format!(
                        "--kind: \"{}\" is none of {}",
                        naming::shown(text),
                        names.join(", ")
                    ))
                })
        })
        .collect()
}

fn kind(event: &Event) -> &str {
    match &event.what {
        What::Known(content) => content.kind(),
        What::Unknown(unknown) => &unknown.kind,
    }
}

fn write_text(
    keeping: &Keeping,
    entries: &[(Place, Entry<'_>)],
    out: &mut impl Write,
) -> Result<(), Failure> {
    write_invented(&keeping.state, out)?;
    if entries.is_empty() {
        writeln!(out, "Nothing of this was written down.")?;
        return Ok(());
    }
    let locale = keeping.locale();
    let mut day = String::new();
    for (_, entry) in entries {
        let Some(event) = entry.counts().or(entry.recorded()) else {
            continue;
        };
        let of_day = wording::day_text(event.happened, locale);
        if of_day != day {
            writeln!(out, "{of_day}")?;
            day = of_day;
        }
        let line = wording::entry_line(catalogue(), &keeping.state, event, locale);
        let people = &keeping.state.garden().people;
        let by = event.by.and_then(|id| people.get(&id));
        let by = by.map_or_else(String::new, |person| format!(" ({})", person.name));
        let corrected = entry
            .corrections()
            .any(|event| matches!(event.content(), Some(Content::Amended(_))));
        let mark = if entry.is_withdrawn() {
            " [taken back]"
        } else if entry.others().len() > 0 {
            " [another entry came under the same id]"
        } else if corrected {
            " [corrected]"
        } else {
            ""
        };
        writeln!(
            out,
            "  {}  {line}{by}{mark}",
            wording::time_text(event.happened, locale)
        )?;
    }
    Ok(())
}
