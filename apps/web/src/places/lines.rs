//! Which lines of the journal bear on what a heap will do? Those of its garden, its own, and those
//! of heaps from which something was moved to it. And which on what is told of it? All, for it learns
//! from the harvests of other heaps.

use heapwright_journal::{Content, Event, EventId};
use heapwright_state::{State, concerns};

/// Over how many moves between heaps their histories are followed, as the answer does.
const MOVES_DEEP: usize = 3;

/// The lines as they count now, one below the other.
pub fn bearing_on(state: &State, heap: EventId) -> String {
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

/// All lines as they count now, one below the other, but for notes.
pub fn all(state: &State) -> String {
    that_count(state, &|event| {
        !matches!(event.content(), Some(Content::Noted(_)) | None)
    })
}

fn that_count(state: &State, bears: &dyn Fn(&Event) -> bool) -> String {
    let mut lines: Vec<String> = state
        .entries()
        .filter_map(|entry| entry.counts())
        .filter(|event| bears(event))
        .filter_map(|event| event.write().ok())
        .collect();
    // Entries come in no order: the same journal is the same question.
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
        let lines = bearing_on(&state, heap.id);
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
