//! Which lines of the journal bear on what a heap will do? Those of its garden, its own, and those
//! of heaps from which something was moved to it. And which on what is told of it? All, for it learns
//! from the harvests of other heaps.

use std::sync::Arc;

use heapwright_journal::{Content, Event, EventId};
use heapwright_state::{State, concerns};
use leptos::prelude::*;

use crate::keeping::Status;
use crate::parts::breath::turn;
use crate::parts::live::spawn;
use crate::shell::Hub;

/// For so long lines are written before the browser may draw [ms].
const WRITING_MS: f64 = 10.0;

/// Over how many moves between heaps their histories are followed, as the answer does.
const MOVES_DEEP: usize = 3;

/// Which lines, as they count now.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bearing {
    /// Those that bear on what a heap will do.
    OnTheFuture(EventId),
    /// All but notes.
    OnAnything,
}

/// Lines of the journal, one below the other, and a line break.
#[derive(Clone, Copy)]
pub struct Written {
    /// Empty until they are written, and while they are not wanted.
    pub text: RwSignal<String>,
    /// Which of the journals they are of, and how many lines that had.
    pub of: StoredValue<(u32, usize)>,
    /// True while a change is being written.
    pub is_writing: RwSignal<bool>,
}

/// What is to be written.
pub fn that_bear(state: &State, bearing: Bearing) -> Vec<Arc<Event>> {
    match bearing {
        Bearing::OnTheFuture(heap) => on_the_future(state, heap),
        Bearing::OnAnything => that_count(state, &|event| {
            !matches!(event.content(), Some(Content::Noted(_)) | None)
        }),
    }
}

/// Lines at once, for a question that a keeper has just asked.
pub fn at_once(events: &[Arc<Event>]) -> String {
    in_order(
        events
            .iter()
            .filter_map(|event| event.write().ok())
            .collect(),
    )
}

/// Lines a few at a time, for the page has to draw meanwhile; `None` as soon as they are not wanted
/// any more.
pub async fn in_pieces(
    events: Vec<Arc<Event>>,
    are_wanted: Box<dyn Fn() -> bool>,
) -> Option<String> {
    let mut lines = Vec::with_capacity(events.len());
    let mut next = 0;
    while next < events.len() {
        // Out of sight there is nothing to draw, and frames do not come.
        if !document().hidden() {
            turn().await;
        }
        if !are_wanted() {
            return None;
        }
        let began_ms = js_sys::Date::now();
        // A clock may be set back meanwhile.
        let is_time = || (0.0..WRITING_MS).contains(&(js_sys::Date::now() - began_ms));
        while next < events.len() && is_time() {
            lines.extend(events[next].write().ok());
            next += 1;
        }
    }
    turn().await;
    are_wanted().then(|| in_order(lines))
}

/// What bears on something, written anew whenever the journal changes while it is `wanted`.
pub fn written(hub: Hub, bearing: Bearing, wanted: Box<dyn Fn() -> bool + Send>) -> Written {
    let written = Written {
        text: RwSignal::new(String::new()),
        of: StoredValue::new((hub.keeper.opened(), 0)),
        is_writing: RwSignal::new(false),
    };
    let latest = StoredValue::new(0_u32);
    // A writing that another overtook: whoever waits for it is owed an answer, be the text the same.
    let is_owed = StoredValue::new(false);
    // Not all that is told of the journal changes its lines.
    let grounds = Memo::new(move |_| {
        hub.keeper.with(|journal| {
            (journal.status != Status::Opening)
                .then(|| (hub.keeper.opened(), journal.state.lines()))
        })
    });
    Effect::new(move |_| {
        latest.update_value(|count| *count = count.wrapping_add(1));
        let this = latest.get_value();
        let is_wanted = wanted();
        is_owed.update_value(|owed| *owed |= written.is_writing.get_untracked());
        let Some(of) = grounds.get().filter(|_| is_wanted) else {
            written.is_writing.set(false);
            written.text.set(String::new());
            return;
        };
        written.is_writing.set(true);
        let events = hub
            .keeper
            .peek(|journal| that_bear(&journal.state, bearing));
        spawn(async move {
            // By then the place may have been left.
            let are_wanted = move || latest.try_get_value() == Some(this);
            let Some(mut text) = in_pieces(events, Box::new(are_wanted)).await else {
                return;
            };
            text.push('\n');
            let is_of_another = written.of.get_value().0 != of.0;
            let is_new = written.text.with_untracked(|known| *known != text);
            written.of.set_value(of);
            if is_new || is_of_another || is_owed.get_value() {
                is_owed.set_value(false);
                written.text.set(text);
            }
            written.is_writing.set(false);
        });
    });
    written
}

fn on_the_future(state: &State, heap: EventId) -> Vec<Arc<Event>> {
    let mut heaps = vec![heap];
    for _ in 0..MOVES_DEEP {
        let more: Vec<EventId> = heaps
            .iter()
            .filter_map(|heap| state.heap(*heap))
            .flat_map(|heap| heap.history())
            .filter_map(|event| match event.content() {
                Some(Content::Moved(moved)) => Some(moved.from),
                _ => None,
            })
            .filter(|from| !heaps.contains(from))
            .collect();
        heaps.extend(more);
    }
    let bears = |event: &Event| match event.content() {
        Some(
            Content::GardenDescribed(_)
            | Content::MeasureDefined(_)
            | Content::MaterialDefined(_)
            | Content::MaterialMeasured(_),
        ) => true,
        // What is only told changes nothing.
        Some(Content::Noted(_) | Content::Tested(_)) | None => false,
        Some(content) => concerns(event.id, content)
            .0
            .iter()
            .flatten()
            .any(|one| heaps.contains(one)),
    };
    that_count(state, &bears)
}

fn that_count(state: &State, bears: &dyn Fn(&Event) -> bool) -> Vec<Arc<Event>> {
    state
        .entries()
        .filter_map(|entry| entry.counts())
        .filter(|event| bears(event))
        .cloned()
        .collect()
}

/// Entries come in no order: the same journal is the same question.
fn in_order(mut lines: Vec<String>) -> String {
    lines.sort_unstable();
    lines.join("\n")
}

#[cfg(test)]
mod tests {
    use super::*;
    use heapwright_journal::FileReader;

    #[test]
    fn lines_of_other_heaps_stay_out_and_nothing_that_counts_is_lost() {
        let mut reader = FileReader::default();
        let mut state = State::default();
        let day = jiff::civil::date(2026, 11, 15);
        for line in heapwright_invented::lines(&heapwright_invented::Plan::demo(day)) {
            let (line, event) = reader.read(line.unwrap().as_bytes()).unwrap();
            state.take_all([(line.digest(), event)]);
        }
        let heap = state.heaps().last().unwrap();
        let mut reader = FileReader::default();
        let mut apart = State::default();
        let lines = at_once(&that_bear(&state, Bearing::OnTheFuture(heap.id)));
        for line in lines.split('\n') {
            let (line, event) = reader.read(line.as_bytes()).unwrap();
            apart.take_all([(line.digest(), event)]);
        }
        assert!(apart.lines() < state.lines() / 2, "{}", apart.lines());
        assert_eq!(apart.garden().place, state.garden().place);
        let told = |state: &State| {
            let heap = state.heap(heap.id).unwrap();
            let history = heap.history().filter(|event| {
                !matches!(
                    event.content(),
                    Some(Content::Noted(_) | Content::Tested(_))
                )
            });
            history
                .map(|event| format!("{:?}", event.what))
                .collect::<Vec<_>>()
        };
        assert_eq!(told(&apart), told(&state));
    }
}
