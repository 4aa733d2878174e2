//! The whole log as a table.

use std::sync::Arc;

use heapwright_catalogue::Catalogue;
use heapwright_journal::{Content, Event, What};
use heapwright_state::{Entry, Place, State, concerns};
use heapwright_texts::Locale;
use heapwright_wording::{entry_line, heap_name};

use crate::ENGLISH;
use crate::table::{Table, guarded};

/// The whole log: one row an entry, in the order in which things happened.
///
/// An entry that was corrected stands there as it counts, one that was taken back as it was
/// recorded. Of entries that came under one id all stand there, and which of them counts is said.
#[must_use]
pub fn log_csv(catalogue: &Catalogue, state: &State, locale: Locale) -> String {
    let mut shown: Vec<(&Arc<Event>, &str)> = Vec::with_capacity(state.lines());
    for entry in state.entries() {
        let Some(recorded) = entry.recorded() else {
            continue;
        };
        shown.push((entry.counts().unwrap_or(recorded), standing(&entry)));
        shown.extend(
            entry
                .others()
                .map(|other| (other, "does not count: another entry has its id")),
        );
    }
    shown.sort_by_key(|(event, _)| Place::of(event));
    let mut table = Table::new([
        "happened", "recorded", "heap", "kind", "text", "by", "device", "id", "state",
    ]);
    for (event, standing) in shown {
        let kind = match &event.what {
            What::Known(content) => content.kind(),
            What::Unknown(unknown) => unknown.kind.as_str(),
        };
        let by = event.by.map_or("", |person| {
            let people = &state.garden().people;
            people
                .get(&person)
                .map_or("a person who is not known", |person| person.name.as_str())
        });
        table.row([
            event.happened.to_string(),
            event.recorded.to_string(),
            guarded(&heaps(state, event)).into_owned(),
            guarded(kind).into_owned(),
            guarded(&entry_line(catalogue, state, event, locale)).into_owned(),
            guarded(by).into_owned(),
            event.stamp.device.to_string(),
            event.id.to_string(),
            standing.to_owned(),
        ]);
    }
    table.finish()
}

fn standing(entry: &Entry<'_>) -> &'static str {
    let Some(event) = entry.recorded() else {
        return "";
    };
    let corrects = event.content().and_then(Content::corrects).is_some();
    match entry.counts() {
        _ if event.content().is_none() => "newer version",
        _ if entry.is_withdrawn() => "taken back",
        Some(counts) if counts != event => "corrected",
        None if !corrects => "taken back",
        _ => "counts",
    }
}

/// The names of the heaps that an event tells of.
fn heaps(state: &State, event: &Event) -> String {
    let Some(content) = event.content() else {
        return String::new();
    };
    let (heaps, _) = concerns(event.id, content);
    heaps
        .into_iter()
        .flatten()
        .map(|heap| heap_name(state, heap, ENGLISH))
        .collect::<Vec<_>>()
        .join("; ")
}
