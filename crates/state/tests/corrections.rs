//! Corrections, conflicts and what is in a heap, told by small journals.
#![allow(clippy::unwrap_used)]

use heapwright_journal::content::{
    Amended, Fed, Harvested, HeapStarted, Moved, PartFed, Watered, Withdrawn,
};
use heapwright_journal::{
    AmountSaid, Content, DeviceId, Digest, Event, EventId, Line, Moment, Stamp, What,
};
use heapwright_state::{Now, RecordError, Recorder, State};
use serde_json::json;

const HERE: DeviceId = DeviceId(1);
const HOUR_MS: i64 = 3_600_000;

/// Writes events hour by hour, each with an id of its own.
struct Pen {
    state: State,
    recorder: Recorder,
    lines: Vec<(Digest, Event)>,
}

impl Pen {
    fn new() -> Self {
        let state = State::default();
        let recorder = Recorder::new(HERE, &state, moment(0));
        Self {
            state,
            recorder,
            lines: Vec::new(),
        }
    }

    fn try_write(
        &mut self,
        content: impl Into<Content>,
        hour: i64,
    ) -> Result<EventId, RecordError> {
        let count = u8::try_from(self.lines.len()).unwrap();
        let now = Now {
            moment: moment(i64::from(count)),
            random: [count; 10],
        };
        let (line, event) =
            self.recorder
                .record(&self.state, content.into(), moment(hour), None, now)?;
        let id = event.id;
        self.take(line.digest(), event);
        Ok(id)
    }

    fn write(&mut self, content: impl Into<Content>, hour: i64) -> EventId {
        self.try_write(content, hour).unwrap()
    }

    fn take(&mut self, digest: Digest, event: Event) {
        assert!(self.state.take(digest, event.clone()));
        self.lines.push((digest, event));
        // Whatever the test does, the order of arrival must not matter.
        let backwards = State::fold(self.lines.iter().rev().cloned());
        assert_eq!(backwards, self.state);
    }

    fn heap(&mut self, name: &str) -> EventId {
        let started = HeapStarted {
            name: name.to_owned(),
            enclosure: None,
            sun: None,
            filling: None,
        };
        self.write(started, 0)
    }

    fn inside(&self, heap: EventId) -> Vec<(EventId, f64)> {
        let contents = self.state.contents(heap);
        assert!(!contents.cut);
        contents
            .shares
            .iter()
            .map(|one| (one.event.id, one.share))
            .collect()
    }
}

fn moment(hour: i64) -> Moment {
    Moment::new(1_777_600_000_000 + hour * HOUR_MS, 120).unwrap()
}

fn feed(heap: EventId, buckets: f64) -> Fed {
    Fed {
        heap,
        parts: vec![PartFed {
            material: Some("coffee_grounds".to_owned()),
            custom: None,
            amount: AmountSaid {
                count: buckets,
                unit: "bucket".to_owned(),
            },
            conditions: Vec::new(),
            moisture_pct: None,
            nitrogen_pct_dry: None,
            cn_ratio: None,
            bulk_density_kg_m3: None,
            from_stores: false,
        }],
        water_l: None,
    }
}

fn patch(event: EventId, patch: serde_json::Value) -> Amended {
    Amended {
        event,
        happened: None,
        patch: patch.as_object().unwrap().clone(),
    }
}

fn buckets(state: &State, id: EventId) -> Option<f64> {
    match state.entry(id)?.counts()?.content()? {
        Content::Fed(fed) => Some(fed.parts[0].amount.count),
        _ => None,
    }
}

#[test]
fn the_last_correction_decides_and_an_amendment_brings_back() {
    let mut pen = Pen::new();
    let heap = pen.heap("Bin");
    let fed = pen.write(feed(heap, 2.0), 1);
    let more = pen.write(
        patch(fed, json!({"parts": [{"material": "coffee_grounds", "amount": {"count": 3, "unit": "bucket"}}]})),
        2,
    );
    assert_eq!(buckets(&pen.state, fed), Some(3.0));
    pen.write(Withdrawn { event: fed }, 3);
    assert_eq!(buckets(&pen.state, fed), None);
    assert!(pen.inside(heap).is_empty());
    assert!(pen.state.entry(fed).unwrap().is_withdrawn());
    pen.write(patch(fed, json!({})), 4);
    assert_eq!(buckets(&pen.state, fed), Some(3.0));
    pen.write(Withdrawn { event: more }, 5);
    assert_eq!(
        buckets(&pen.state, fed),
        Some(2.0),
        "as it was before the amendment"
    );
    assert!(pen.state.entry(more).unwrap().is_withdrawn());
    assert_eq!(pen.state.heap(heap).unwrap().now().feeds, 1);
}

#[test]
fn an_amendment_that_leads_outside_what_can_be_changes_nothing() {
    let mut pen = Pen::new();
    let heap = pen.heap("Bin");
    let watered = pen.write(Watered { heap, water_l: 5.0 }, 1);
    for wrong in [
        json!({"water_l": -1}),
        json!({"water_l": "much"}),
        json!({"heap": null}),
    ] {
        pen.write(patch(watered, wrong), 2);
        assert_eq!(
            pen.state.heap(heap).unwrap().now().last_watered,
            Some(moment(1))
        );
    }
    pen.write(
        Amended {
            event: watered,
            happened: Some(moment(-5)),
            patch: serde_json::Map::new(),
        },
        3,
    );
    assert_eq!(
        pen.state.heap(heap).unwrap().now().last_watered,
        Some(moment(-5))
    );
}

#[test]
fn corrections_of_corrections_and_of_nothing_are_refused() {
    let mut pen = Pen::new();
    let heap = pen.heap("Bin");
    let fed = pen.write(feed(heap, 1.0), 1);
    let withdrawn = pen.write(Withdrawn { event: fed }, 2);
    let amended = pen.write(patch(fed, json!({})), 2);
    for wrong in [
        Content::from(Withdrawn { event: withdrawn }),
        patch(withdrawn, json!({})).into(),
        patch(amended, json!({})).into(),
    ] {
        assert_eq!(pen.try_write(wrong, 3), Err(RecordError::NotToBeCorrected));
    }
    let nobody = EventId::new(1, &[9; 10]);
    assert_eq!(
        pen.try_write(Withdrawn { event: nobody }, 3),
        Err(RecordError::NoSuchEntry)
    );
    assert_eq!(
        pen.try_write(feed(nobody, 1.0), 3),
        Err(RecordError::NoSuchHeap)
    );
    assert_eq!(
        pen.try_write(feed(heap, 1.0), 1000),
        Err(RecordError::InTheFuture)
    );
    for (day, expected) in [(1000, Some(RecordError::InTheFuture)), (1, None)] {
        let corrected = Amended {
            event: fed,
            happened: Some(moment(day)),
            patch: serde_json::Map::new(),
        };
        assert_eq!(pen.try_write(corrected, 3).err(), expected, "day {day}");
    }
    assert!(matches!(
        pen.try_write(feed(heap, -1.0), 3),
        Err(RecordError::Write(_))
    ));
}

#[test]
fn an_entry_from_a_clock_that_is_a_year_ahead_can_be_taken_back_now() {
    let mut pen = Pen::new();
    let heap = pen.heap("Bin");
    let far = Event {
        id: EventId::new(7, &[7; 10]),
        stamp: Stamp {
            wall_ms: 1_777_600_000_000 + 365 * 86_400_000,
            count: 0,
            device: DeviceId(2),
        },
        happened: moment(1),
        recorded: moment(1),
        by: None,
        batch: None,
        what: What::Known(feed(heap, 4.0).into()),
    };
    let line = Line::from(far.write().unwrap().as_str());
    pen.recorder.see(far.stamp, moment(3));
    let id = far.id;
    pen.take(line.digest(), far);
    pen.write(Withdrawn { event: id }, 2);
    assert_eq!(buckets(&pen.state, id), None);
    let after = pen.write(feed(heap, 1.0), 2);
    let stamp = pen.state.entry(after).unwrap().recorded().unwrap().stamp;
    assert!(
        stamp.wall_ms < 1_777_600_000_000 + 86_400_000,
        "the clock was not dragged along"
    );
}

#[test]
fn two_lines_of_one_id_are_both_kept_and_the_first_counts() {
    let mut pen = Pen::new();
    let heap = pen.heap("Bin");
    let fed = pen.write(feed(heap, 2.0), 1);
    let original = Event::clone(pen.state.entry(fed).unwrap().recorded().unwrap());
    let mut other = original.clone();
    other.stamp.wall_ms -= 1;
    other.what = What::Known(feed(heap, 5.0).into());
    let line = Line::from(other.write().unwrap().as_str());
    pen.take(line.digest(), other);
    assert_eq!(
        buckets(&pen.state, fed),
        Some(5.0),
        "the one with the earlier stamp"
    );
    assert_eq!(
        pen.state.conflicts().iter().copied().collect::<Vec<_>>(),
        [fed]
    );
    assert_eq!(pen.state.entry(fed).unwrap().others().len(), 1);
    assert_eq!(pen.state.lines(), 3);
    assert!(
        !pen.state.take(line.digest(), original),
        "known by its digest"
    );
}

#[test]
fn what_is_taken_out_counts_no_more_and_moves_are_followed() {
    let mut pen = Pen::new();
    let (one, two) = (pen.heap("One"), pen.heap("Two"));
    let first = pen.write(feed(one, 2.0), 1);
    let harvest = Harvested {
        heap: one,
        amount: None,
        share_pct: Some(50.0),
        sieve_mm: None,
        overs: None,
        overs_to: None,
    };
    pen.write(harvest.clone(), 2);
    let second = pen.write(feed(one, 1.0), 3);
    assert_eq!(pen.inside(one), [(first, 0.5), (second, 1.0)]);
    pen.write(
        Moved {
            from: one,
            to: two,
            share_pct: Some(20.0),
        },
        4,
    );
    let own = pen.write(feed(two, 1.0), 5);
    assert_eq!(pen.inside(one), [(first, 0.4), (second, 0.8)]);
    assert_eq!(pen.inside(two), [(first, 0.1), (second, 0.2), (own, 1.0)]);
    pen.write(
        Moved {
            from: two,
            to: one,
            share_pct: None,
        },
        6,
    );
    assert!(pen.inside(two).is_empty());
    assert_eq!(pen.inside(one), [(first, 0.5), (second, 1.0), (own, 1.0)]);
    // Something that is written down later but happened in between.
    let late = pen.write(feed(one, 1.0), 2);
    assert_eq!(
        pen.inside(one),
        [(first, 0.5), (late, 1.0), (second, 1.0), (own, 1.0)]
    );
    pen.write(
        Harvested {
            share_pct: None,
            ..harvest
        },
        7,
    );
    assert!(pen.inside(one).is_empty());
    assert_eq!(pen.state.heap(one).unwrap().now().emptied, 1);
}

#[test]
fn undo_takes_back_the_last_thing_that_stands() {
    let mut pen = Pen::new();
    let heap = pen.heap("Bin");
    let first = pen.write(feed(heap, 1.0), 1);
    let second = pen.write(feed(heap, 2.0), 2);
    assert_eq!(pen.state.last_of(HERE).unwrap().id, second);
    pen.write(Withdrawn { event: second }, 3);
    assert_eq!(pen.state.last_of(HERE).unwrap().id, first);
    assert!(pen.state.last_of(DeviceId(9)).is_none());
}

#[test]
fn what_is_fed_last_stays_through_any_number_of_harvests() {
    let mut pen = Pen::new();
    let heap = pen.heap("Bin");
    let mut last = None;
    for round in 0..12 {
        last = Some(pen.write(feed(heap, 1.0), 2 * round + 1));
        let harvest = Harvested {
            heap,
            amount: None,
            share_pct: Some(90.0),
            sieve_mm: None,
            overs: None,
            overs_to: None,
        };
        pen.write(harvest, 2 * round + 2);
    }
    let inside = pen.inside(heap);
    let (id, share) = *inside.last().unwrap();
    assert_eq!(Some(id), last);
    assert!((share - 0.1).abs() < 1e-12, "{share}");
    let sum: f64 = inside.iter().map(|(_, share)| share).sum();
    // What is less than a millionth of a feed is dropped: 1e-6, 1e-7 and so on.
    assert!((sum - 1.0 / 9.0).abs() < 2e-6, "{sum}");
    assert_eq!(pen.state.heap(heap).unwrap().now().emptied, 0);
}

#[test]
fn a_correction_of_an_entry_from_ahead_does_not_drag_its_device_along() {
    let mut pen = Pen::new();
    let heap = pen.heap("Bin");
    let far = Event {
        id: EventId::new(7, &[7; 10]),
        stamp: Stamp {
            wall_ms: heapwright_journal::LAST_WALL_MS,
            count: u16::MAX,
            device: DeviceId(2),
        },
        happened: moment(1),
        recorded: moment(1),
        by: None,
        batch: None,
        what: What::Known(feed(heap, 4.0).into()),
    };
    let line = Line::from(far.write().unwrap().as_str());
    let id = far.id;
    pen.take(line.digest(), far);
    pen.write(Withdrawn { event: id }, 2);
    // As after a restart.
    pen.recorder = Recorder::new(HERE, &pen.state, moment(50));
    let after = pen.write(feed(heap, 1.0), 2);
    let stamp = pen.state.entry(after).unwrap().recorded().unwrap().stamp;
    assert!(stamp.wall_ms < 1_777_600_000_000 + 86_400_000 * 3);
}
