//! `heapwright undo`: the last thing that this device wrote down, taken back or brought back.

use std::io::Write;
use std::sync::Arc;

use heapwright_journal::content::{Amended, Withdrawn};
use heapwright_journal::{Content, DeviceId, Event, EventId};
use heapwright_state::{Entry, State};
use heapwright_wire::{LogJson, entry_json};
use heapwright_wording as wording;

use crate::arguments::UndoArguments;
use crate::commands::mix::WIDTH;
use crate::failure::Failure;
use crate::keeping::{Keeping, catalogue};
use crate::table::write_paragraph;
use crate::telling::{Besides, tell, write_json};

/// How many entries `--list` shows.
const MOST_LISTED: usize = 10;

/// Runs the command.
pub fn run(arguments: &UndoArguments, out: &mut impl Write) -> Result<(), Failure> {
    let mut keeping = if arguments.list {
        Keeping::to_read(&arguments.journal)?
    } else {
        Keeping::to_change(&arguments.journal)?
    };
    let Some(store) = keeping.store() else {
        return Err(nothing());
    };
    let device = store.device()?;
    if arguments.list {
        return list(&keeping, device, arguments, out);
    }
    let (contents, verb): (Vec<Content>, &str) = if arguments.bring_back {
        (brought_back(&keeping.state, device)?, "Brought back")
    } else {
        (taken_back(&keeping.state, device)?, "Taken back")
    };
    let targets: Vec<EventId> = contents.iter().filter_map(Content::corrects).collect();
    let now = keeping.edges.now;
    let ids = keeping.add(contents, now, None)?;
    if arguments.journal.json {
        return tell(&keeping, &arguments.journal, &ids, &Besides::default(), out);
    }
    for id in targets {
        let recorded = keeping.state.entry(id).and_then(|entry| entry.recorded());
        if let Some(event) = recorded {
            let line = line(&keeping, event);
            write_paragraph(out, "", &format!("{verb}: {line}"), WIDTH)?;
        }
    }
    Ok(())
}

fn nothing() -> Failure {
    Failure::Input("nothing was written down on this device that can be taken back".to_owned())
}

fn line(keeping: &Keeping, event: &Event) -> String {
    wording::entry_line(catalogue(), &keeping.state, event, keeping.locale())
}

/// True for what can be taken back: it stands, and is no withdrawal itself.
fn stands(entry: &Entry<'_>, device: DeviceId) -> bool {
    entry.recorded().is_some_and(|event| {
        event.stamp.device == device
            && match event.content() {
                Some(Content::Withdrawn(_)) | None => false,
                Some(Content::Amended(_)) => !entry.is_withdrawn(),
                Some(_) => entry.counts().is_some(),
            }
    })
}

/// What is taken back together with an event: all of its batch that stands.
fn together(state: &State, event: &Arc<Event>, device: DeviceId) -> Vec<Arc<Event>> {
    let Some(batch) = event.batch else {
        return vec![Arc::clone(event)];
    };
    let mut all: Vec<Arc<Event>> = state
        .entries()
        .filter(|entry| stands(entry, device))
        .filter_map(|entry| entry.recorded())
        .filter(|event| event.batch == Some(batch))
        .map(Arc::clone)
        .collect();
    all.sort_by_key(|event| (event.stamp, event.id));
    all
}

fn taken_back(state: &State, device: DeviceId) -> Result<Vec<Content>, Failure> {
    let last = state.last_of(device).ok_or_else(nothing)?;
    Ok(together(state, last, device)
        .iter()
        .map(|event| Withdrawn { event: event.id }.into())
        .collect())
}

/// True for a correction that was taken back when what it corrected counts, and was corrected again
/// since. Such a correction stays taken back itself.
fn is_made_once_more(state: &State, correction: &Entry<'_>, withdrawal: &Event) -> bool {
    let corrected = match correction.recorded().and_then(|event| event.content()) {
        Some(Content::Amended(amended)) => state.entry(amended.event),
        _ => None,
    };
    corrected.is_some_and(|entry| {
        entry.counts().is_some()
            && entry.corrections().any(|later| {
                later.stamp > withdrawal.stamp
                    && matches!(later.content(), Some(Content::Amended(_)))
                    && state
                        .entry(later.id)
                        .is_some_and(|later| !later.is_withdrawn())
            })
    })
}

/// Amendments that make the last withdrawal good.
fn brought_back(state: &State, device: DeviceId) -> Result<Vec<Content>, Failure> {
    // What an amendment made good already is passed over.
    let gone = |withdrawal: &Event, target: EventId| {
        state.entry(target).is_some_and(|entry| {
            entry.is_withdrawn() && !is_made_once_more(state, &entry, withdrawal)
        })
    };
    let mut withdrawals: Vec<(&Arc<Event>, EventId)> = state
        .entries()
        .filter_map(|entry| entry.recorded())
        .filter(|event| event.stamp.device == device)
        .filter_map(|event| match event.content() {
            Some(Content::Withdrawn(withdrawn)) if gone(event, withdrawn.event) => {
                Some((event, withdrawn.event))
            }
            _ => None,
        })
        .collect();
    withdrawals.sort_by_key(|(event, _)| (event.stamp, event.id));
    let Some((last, _)) = withdrawals.last() else {
        return Err(Failure::Input(
            "nothing was taken back on this device that can be brought back".to_owned(),
        ));
    };
    let (id, batch) = (last.id, last.batch);
    Ok(withdrawals
        .iter()
        .filter(|(event, _)| event.id == id || (batch.is_some() && event.batch == batch))
        .filter_map(|(_, target)| {
            let event = state.entry(*target)?.recorded()?;
            Some(match event.content() {
                // A correction that was taken back is made once more.
                Some(Content::Amended(amended)) => amended.clone().into(),
                _ => Amended {
                    event: event.id,
                    happened: None,
                    patch: serde_json::Map::new(),
                }
                .into(),
            })
        })
        .collect())
}

fn list(
    keeping: &Keeping,
    device: DeviceId,
    arguments: &UndoArguments,
    out: &mut impl Write,
) -> Result<(), Failure> {
    let mut standing: Vec<Entry<'_>> = keeping
        .state
        .entries()
        .filter(|entry| stands(entry, device))
        .collect();
    standing.sort_by_key(|entry| entry.recorded().map(|event| (event.stamp, event.id)));
    standing.reverse();
    standing.truncate(MOST_LISTED);
    if arguments.journal.json {
        let entries = standing
            .iter()
            .filter_map(|entry| entry_json(catalogue(), &keeping.state, entry))
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
    if standing.is_empty() {
        writeln!(out, "Nothing was written down on this device.")?;
    }
    for event in standing.iter().filter_map(|entry| entry.recorded()) {
        let ago = wording::ago_text(event.recorded, keeping.edges.now, keeping.locale());
        writeln!(out, "{}  (written down {ago})", line(keeping, event))?;
    }
    Ok(())
}
