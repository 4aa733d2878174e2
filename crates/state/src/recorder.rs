//! From what the keeper did to an event: id, stamp and line.

use std::fmt;

use heapwright_journal::{
    Clock, Content, DeviceId, Event, EventId, Line, MOST_AHEAD_MS, Moment, Stamp, What, WriteError,
};

use crate::State;
use crate::state::concerns;

/// Makes the events of one device.
#[derive(Clone, Copy, Debug)]
pub struct Recorder {
    clock: Clock,
    /// Who works here, if that is known.
    pub by: Option<EventId>,
}

/// What the edges hand in for one event: the time, and chance.
#[derive(Clone, Copy, Debug)]
pub struct Now {
    /// What the clock of the device says.
    pub moment: Moment,
    /// Ten random bytes.
    pub random: [u8; 10],
}

/// Why something cannot be recorded.
#[derive(Clone, Debug, PartialEq)]
pub enum RecordError {
    /// It tells of a heap that is not there.
    NoSuchHeap,
    /// It tells of a bed that is not there.
    NoSuchBed,
    /// It corrects an entry that is not there.
    NoSuchEntry,
    /// It corrects what cannot be corrected so: a withdrawal, or by an amendment a correction.
    NotToBeCorrected,
    /// It happened more than a day after now, or is said so by a correction.
    InTheFuture,
    /// It cannot be as it is.
    Write(WriteError),
}

impl fmt::Display for RecordError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoSuchHeap => f.write_str("there is no such heap: start it first"),
            Self::NoSuchBed => f.write_str("there is no such bed: describe it first"),
            Self::NoSuchEntry => f.write_str("there is no such entry: look it up in the log"),
            Self::NotToBeCorrected => {
                f.write_str("a correction is not corrected: correct the entry itself again")
            }
            Self::InTheFuture => f.write_str("this lies in the future: give a time that is past"),
            Self::Write(error) => write!(f, "{error}"),
        }
    }
}

impl std::error::Error for RecordError {}

/// How far after now something may have happened [ms]: clocks of phones and thermometers differ.
const MOST_AFTER_NOW_MS: i64 = 24 * 3600 * 1000;

impl Recorder {
    /// The recorder of a device that has all events of a state, when its clock says `now`.
    #[must_use]
    pub fn new(device: DeviceId, state: &State, now: Moment) -> Self {
        let mut recorder = Self {
            clock: Clock::new(device),
            by: None,
        };
        for entry in state.entries() {
            for event in entry.recorded().into_iter().chain(entry.others()) {
                // A correction of an entry from a clock that is ahead stands behind that entry,
                // and is no reason to be ahead for ever.
                let corrects = event.content().and_then(Content::corrects).is_some();
                if !(corrects && event.stamp.wall_ms > wall_ms(event.recorded) + MOST_AHEAD_MS) {
                    recorder.see(event.stamp, now);
                }
            }
        }
        recorder
    }

    /// Whose events these are.
    #[must_use]
    pub const fn device(&self) -> DeviceId {
        self.clock.device()
    }

    /// Takes note of an event that has come; false when its stamp lies more than a day ahead.
    pub fn see(&mut self, stamp: Stamp, now: Moment) -> bool {
        self.clock.see(stamp, wall_ms(now))
    }

    /// The event and its line. Nothing is recorded by this alone: it counts when a store has kept
    /// the line.
    ///
    /// `batch` is the id of the first event of those that are recorded in one go.
    pub fn record(
        &mut self,
        state: &State,
        content: Content,
        happened: Moment,
        batch: Option<EventId>,
        now: Now,
    ) -> Result<(Line, Event), RecordError> {
        // A correction happens now; what it corrects cannot have happened later either.
        let in_truth = match &content {
            Content::Amended(amended) => amended.happened,
            _ => None,
        };
        let latest_ms = now.moment.instant_ms.saturating_add(MOST_AFTER_NOW_MS);
        let mut times = in_truth.into_iter().chain([happened]);
        if times.any(|time| time.instant_ms > latest_ms) {
            return Err(RecordError::InTheFuture);
        }
        let id = EventId::new(wall_ms(now.moment), &now.random);
        refers(state, id, &content)?;
        let mut clock = self.clock;
        let mut stamp = clock.tick(wall_ms(now.moment));
        if let Some(behind) = content
            .corrects()
            .and_then(|target| state.correction_follows(target))
        {
            // A correction stands behind what it corrects, even when that is stamped ahead of time.
            stamp = stamp.max(behind.next(clock.device()));
        }
        let event = Event {
            id,
            stamp,
            happened,
            recorded: Moment {
                offset_min: 0,
                ..now.moment
            },
            by: self.by,
            batch,
            what: What::Known(content),
        };
        let line = event.write().map_err(RecordError::Write)?;
        self.clock = clock;
        Ok((Line::from(line.as_str()), event))
    }
}

fn wall_ms(moment: Moment) -> u64 {
    u64::try_from(moment.instant_ms).unwrap_or(0)
}

/// Fails when what an event refers to is not there.
fn refers(state: &State, id: EventId, content: &Content) -> Result<(), RecordError> {
    if let Some(target) = content.corrects() {
        let event = state
            .entry(target)
            .and_then(|entry| entry.recorded())
            .ok_or(RecordError::NoSuchEntry)?;
        let allowed = match (content, event.content()) {
            // What is not understood can be taken back, but not changed.
            (Content::Withdrawn(_), Some(Content::Withdrawn(_)))
            | (Content::Amended(_), Some(Content::Withdrawn(_) | Content::Amended(_)) | None) => {
                false
            }
            _ => true,
        };
        return if allowed {
            Ok(())
        } else {
            Err(RecordError::NotToBeCorrected)
        };
    }
    let (heaps, bed) = concerns(id, content);
    let known = |heap: EventId| {
        heap == id
            || state
                .heap(heap)
                .is_some_and(|heap| heap.now().started.is_some())
    };
    if !heaps.into_iter().flatten().all(known) {
        return Err(RecordError::NoSuchHeap);
    }
    let known = |bed: EventId| {
        bed == id
            || state
                .bed(bed)
                .is_some_and(|bed| bed.now().described.is_some())
    };
    if !bed.is_none_or(known) {
        return Err(RecordError::NoSuchBed);
    }
    Ok(())
}
