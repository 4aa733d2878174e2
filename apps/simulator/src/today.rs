//! What each heap needs today, in the sentences of the page.

use heapwright_answers::today::{Need, Urgency, today};
use heapwright_catalogue::Catalogue;
use heapwright_garden::Garden;
use heapwright_journal::{Content, DeviceId, Event, EventId, Moment, Stamp, What};
use heapwright_quantity::UnitSystem;
use heapwright_state::State;
use heapwright_wire::{NeedTold, QuietTold, TodayTold};
use heapwright_wording::{self as wording, today as words};

/// The needs of all heaps.
pub fn told(state: &State, garden: &Garden, now: Moment, system: UnitSystem) -> TodayTold {
    let answer = today(Catalogue::built_in(), garden, state, now);
    TodayTold {
        needs: answer
            .needs
            .iter()
            .map(|need| need_told(state, garden, need, now, system))
            .collect(),
        quiet: answer
            .quiet
            .iter()
            .map(|quiet| QuietTold {
                heap: quiet.heap.to_string(),
                line: words::quiet_line(state, quiet),
            })
            .collect(),
    }
}

fn need_told(
    state: &State,
    garden: &Garden,
    need: &Need,
    now: Moment,
    system: UnitSystem,
) -> NeedTold {
    let catalogue = Catalogue::built_in();
    // What cannot be written as a line is not offered.
    let entry = need
        .entry
        .as_ref()
        .and_then(|entry| line(entry, now))
        .unwrap_or_default();
    NeedTold {
        heap: need.heap.map(|heap| heap.to_string()).unwrap_or_default(),
        name: need
            .heap
            .map(|heap| wording::heap_name(state, heap).to_owned())
            .unwrap_or_default(),
        kind: need.what.kind().key().to_owned(),
        urgency: match need.urgency {
            Urgency::Now => "now",
            Urgency::Soon => "soon",
            Urgency::Whenever => "whenever",
        }
        .to_owned(),
        how_soon: words::urgency_heading(need.urgency).to_owned(),
        headline: words::headline(catalogue, garden, state, need),
        how: words::how_to(catalogue, need, system),
        why: words::why_lines(need, now, system),
        cautions: need
            .cautions
            .iter()
            .map(|caution| words::caution_line(*caution).to_owned())
            .collect(),
        act: words::tap_word(need).unwrap_or_default().to_owned(),
        entry,
    }
}

/// An entry as a line of the journal whose id, stamp and time mean nothing.
fn line(entry: &Content, now: Moment) -> Option<String> {
    let event = Event {
        id: EventId::new(0, &[0; 10]),
        stamp: Stamp {
            wall_ms: 0,
            count: 0,
            device: DeviceId(0),
        },
        happened: now,
        recorded: now,
        by: None,
        batch: None,
        what: What::Known(entry.clone()),
    };
    event.write().ok()
}
