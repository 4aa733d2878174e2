//! Writes the journals of these tests. Each test uses a part of it.
#![allow(dead_code)]

use heapwright_journal::content::{HeapStarted, Probe, ProbePlace, Read};
use heapwright_journal::{Content, DeviceId, EventId, Moment};
use heapwright_state::{Now, Recorder, State};

pub const START_MS: i64 = 1_777_600_000_000;
pub const MINUTE_MS: i64 = 60_000;

/// Writes a journal, minute by minute.
pub struct Pen {
    pub state: State,
    pub recorder: Recorder,
    count: i64,
}

impl Pen {
    pub fn new() -> Self {
        let state = State::default();
        let recorder = Recorder::new(DeviceId(1), &state, moment(0));
        Self {
            state,
            recorder,
            count: 0,
        }
    }

    pub fn write(&mut self, content: impl Into<Content>, happened: Moment) -> EventId {
        self.count += 1;
        let now = Now {
            moment: moment(self.count),
            random: self.count.to_le_bytes().repeat(2)[..10].try_into().unwrap(),
        };
        let (line, event) = self
            .recorder
            .record(&self.state, content.into(), happened, None, now)
            .unwrap();
        let id = event.id;
        assert!(self.state.take(line.digest(), event));
        id
    }

    pub fn heap(&mut self, name: &str) -> EventId {
        let name = name.to_owned();
        let started = HeapStarted {
            name,
            enclosure: None,
            sun: None,
            filling: None,
        };
        self.write(started, moment(0))
    }
}

pub fn moment(minute: i64) -> Moment {
    Moment::new(START_MS + minute * MINUTE_MS, 120).unwrap()
}

pub fn bare(heap: EventId) -> Read {
    Read {
        heap,
        probes: Vec::new(),
        air_temperature_c: None,
        squeeze: None,
        smells: Vec::new(),
        looks: Vec::new(),
        creatures: Vec::new(),
        height_m: None,
        fill_pct: None,
        logger: None,
    }
}

pub fn probe(temperature_c: f64) -> Probe {
    Probe {
        temperature_c,
        depth_m: Some(0.3),
        place: Some(ProbePlace::Core),
    }
}
