//! Readings as a table, which can be read again without loss.

use heapwright_journal::content::{Probe, Read};
use heapwright_journal::{Content, Event, EventId};
use heapwright_state::{Place, State};
use heapwright_wording::{Word, heap_name};

use crate::ENGLISH;
use crate::table::{Table, guarded};

/// The columns of a file of readings. By these names it is known again.
pub const READINGS_HEADER: [&str; 15] = [
    "happened",
    "heap",
    "temperature_c",
    "depth_m",
    "place",
    "air_temperature_c",
    "squeeze",
    "smells",
    "looks",
    "creatures",
    "height_m",
    "fill_pct",
    "logger",
    "id",
    "heap_id",
];

/// What parts the words of one cell.
pub(crate) const BETWEEN_WORDS: &str = "; ";

/// Readings of one heap or of all, as they count, in the order in which they happened.
///
/// One row a probe; what else was seen stands in the first row of a look, so that nothing is
/// counted twice. A look without a probe has a row without a temperature.
#[must_use]
pub fn readings_csv(state: &State, heap: Option<EventId>) -> String {
    let mut looks: Vec<(Place, &Event, &Read)> = state
        .heaps()
        .chain(state.unknown_heaps())
        .filter(|one| heap.is_none_or(|heap| one.id == heap))
        .flat_map(|one| one.history())
        .filter_map(|event| match event.content() {
            Some(Content::Read(read)) => Some((Place::of(event), event.as_ref(), read)),
            _ => None,
        })
        .collect();
    looks.sort_unstable_by_key(|(place, ..)| *place);
    let mut table = Table::new(READINGS_HEADER);
    for (_, event, read) in looks {
        if read.probes.is_empty() {
            row(&mut table, state, event, read, None, true);
        }
        for (index, probe) in read.probes.iter().enumerate() {
            row(&mut table, state, event, read, Some(probe), index == 0);
        }
    }
    table.finish()
}

fn row(
    table: &mut Table<15>,
    state: &State,
    event: &Event,
    read: &Read,
    probe: Option<&Probe>,
    first: bool,
) {
    let number = |number: Option<f64>| number.map_or_else(String::new, |number| number.to_string());
    let only_first = |number: Option<f64>| number.filter(|_| first);
    let place = probe.and_then(|probe| probe.place);
    table.row([
        event.happened.to_string(),
        guarded(heap_name(state, read.heap, ENGLISH)).into_owned(),
        number(probe.map(|probe| probe.temperature_c)),
        number(probe.and_then(|probe| probe.depth_m)),
        place.map_or_else(String::new, |place| place.word(ENGLISH).to_owned()),
        number(only_first(read.air_temperature_c)),
        read.squeeze
            .filter(|_| first)
            .map_or_else(String::new, |squeeze| squeeze.word(ENGLISH).to_owned()),
        words(&read.smells, first),
        words(&read.looks, first),
        words(&read.creatures, first),
        number(only_first(read.height_m)),
        number(only_first(read.fill_pct)),
        guarded(read.logger.as_deref().unwrap_or_default()).into_owned(),
        event.id.to_string(),
        read.heap.to_string(),
    ]);
}

fn words<W: Word>(all: &[W], first: bool) -> String {
    let all = if first { all } else { &[] };
    all.iter()
        .map(|one| one.word(ENGLISH))
        .collect::<Vec<_>>()
        .join(BETWEEN_WORDS)
}
