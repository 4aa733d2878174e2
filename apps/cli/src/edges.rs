//! The edges of the program: what time it is and where, chance, and where files are usually kept.
//!
//! HEAPWRIGHT_NOW, a time with its offset from UTC, stands in for the clock and the time zone, so
//! that tests and scripts have the same output every day.

use std::cell::Cell;
use std::path::PathBuf;
use std::time::{SystemTime, UNIX_EPOCH};

use etcetera::BaseStrategy;
use heapwright_journal::{DeviceId, Moment};
use heapwright_state::Now;
use heapwright_wire::{OffsetAt, WhenError};
use jiff::Timestamp;
use jiff::civil::DateTime;
use jiff::tz::{AmbiguousOffset, Offset, TimeZone};

use crate::failure::Failure;

/// The clock that is used in place of the computer's.
const NOW: &str = "HEAPWRIGHT_NOW";

/// The clock and where it hangs.
#[derive(Clone, Debug)]
pub struct Edges {
    /// What the clock says.
    pub now: Moment,
    zone: Zone,
}

#[derive(Clone, Debug)]
enum Zone {
    /// Always the same offset from UTC [min].
    Fixed(i16),
    /// As the computer has it.
    Computer(TimeZone),
    /// The computer does not know.
    Unknown,
}

impl Edges {
    /// The clock as it is now.
    pub fn look() -> Result<Self, Failure> {
        if let Some(text) = std::env::var_os(NOW) {
            let now: Moment = text
                .to_str()
                .and_then(|text| text.parse().ok())
                .ok_or_else(|| {
                    Failure::Input(format!(
                        "{NOW} must be a time with its offset from UTC, like 2026-05-01T18:00:00+02:00"
                    ))
                })?;
            return Ok(Self {
                now,
                zone: Zone::Fixed(now.offset_min),
            });
        }
        let zone = TimeZone::try_system().map_or(Zone::Unknown, Zone::Computer);
        let since = SystemTime::now()
            .duration_since(UNIX_EPOCH)
            .unwrap_or_default();
        let instant_ms = i64::try_from(since.as_millis()).unwrap_or(i64::MAX);
        let now = Moment::new(instant_ms, offset_of(&zone, instant_ms)).ok_or_else(|| {
            Failure::Outside("the clock of this computer is wrong: set it".to_owned())
        })?;
        Ok(Self { now, zone })
    }

    /// What to say when the computer does not know its time zone.
    pub fn remark(&self) -> Option<&'static str> {
        matches!(self.zone, Zone::Unknown).then_some(
            "this computer does not know its time zone, so times are in UTC: set TZ or give times with their offset",
        )
    }

    /// The moment that a text tells.
    pub fn when(&self, option: &str, text: &str) -> Result<Moment, Failure> {
        self.told(option, text, heapwright_wire::parse_when)
    }

    /// The moment from which a text tells.
    pub fn since(&self, option: &str, text: &str) -> Result<Moment, Failure> {
        self.told(option, text, heapwright_wire::parse_since)
    }

    /// The moment until which a text tells.
    pub fn until(&self, option: &str, text: &str) -> Result<Moment, Failure> {
        self.told(option, text, heapwright_wire::parse_until)
    }

    fn told(
        &self,
        option: &str,
        text: &str,
        parse: impl Fn(&str, Moment, &OffsetAt<'_>) -> Result<Moment, WhenError>,
    ) -> Result<Moment, Failure> {
        let local_was_said = Cell::new(false);
        let moment = parse(text, self.now, &|local| {
            local_was_said.set(true);
            self.offset_at(local)
        })
        .map_err(|error| Failure::Input(format!("{option}: {error}")))?;
        // In the hour that the clock leaves out, it shows another offset at that moment.
        let shown = local_was_said
            .get()
            .then(|| Moment::new(moment.instant_ms, offset_of(&self.zone, moment.instant_ms)));
        Ok(shown.flatten().unwrap_or(moment))
    }

    /// The clock on the wall, with its daylight saving where the computer knows it.
    pub fn clock(&self) -> TimeZone {
        match &self.zone {
            Zone::Fixed(offset_min) => Offset::from_seconds(i32::from(*offset_min) * 60)
                .map_or(TimeZone::UTC, TimeZone::fixed),
            Zone::Unknown => TimeZone::UTC,
            Zone::Computer(zone) => zone.clone(),
        }
    }

    /// The offset from UTC [min] that leads from what the clock on the wall shows to the moment.
    pub fn offset_at(&self, local: DateTime) -> i16 {
        match &self.zone {
            Zone::Fixed(offset_min) => *offset_min,
            Zone::Unknown => 0,
            // An hour that the clock shows twice is the first of the two; one that it leaves out is
            // counted on from before it.
            Zone::Computer(zone) => match zone.to_ambiguous_timestamp(local).offset() {
                AmbiguousOffset::Unambiguous { offset: before }
                | AmbiguousOffset::Gap { before, .. }
                | AmbiguousOffset::Fold { before, .. } => minutes(before.seconds()),
            },
        }
    }

    /// What is handed in for one event.
    pub fn for_event(&self) -> Result<Now, Failure> {
        let mut random = [0; 10];
        chance(&mut random)?;
        Ok(Now {
            moment: self.now,
            random,
        })
    }
}

fn offset_of(zone: &Zone, instant_ms: i64) -> i16 {
    match zone {
        Zone::Fixed(offset_min) => *offset_min,
        Zone::Unknown => 0,
        Zone::Computer(zone) => Timestamp::from_millisecond(instant_ms)
            .map_or(0, |instant| minutes(zone.to_offset(instant).seconds())),
    }
}

fn minutes(seconds: i32) -> i16 {
    i16::try_from(seconds / 60).unwrap_or(0)
}

fn chance(bytes: &mut [u8]) -> Result<(), Failure> {
    getrandom::fill(bytes).map_err(|error| {
        Failure::Outside(format!(
            "this computer hands out no random numbers ({error}): restart it"
        ))
    })
}

/// The id of a device that writes for the first time.
pub fn new_device() -> Result<DeviceId, Failure> {
    let mut bytes = [0; 8];
    chance(&mut bytes)?;
    Ok(DeviceId(u64::from_le_bytes(bytes)))
}

/// The file in which a journal is usually kept.
pub fn usual_journal() -> Result<PathBuf, Failure> {
    let nowhere = || {
        Failure::Outside(
            "there is no home folder to keep the journal in: name a file with --garden".to_owned(),
        )
    };
    let named = |name: &str| std::env::var_os(name).is_some_and(|value| !value.is_empty());
    // Without these the folder of another user could be found.
    if cfg!(unix) && !named("HOME") && !named("XDG_DATA_HOME") {
        return Err(nowhere());
    }
    let folders = etcetera::base_strategy::choose_native_strategy().map_err(|_| nowhere())?;
    Ok(folders
        .data_dir()
        .join("heapwright")
        .join("garden.heapwright"))
}
