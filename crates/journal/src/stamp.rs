//! Which event comes after which? The hybrid logical clock.
//!
//! A stamp is the wall clock of a device where that runs on, and a count where it
//! does not, so that what a device writes always comes after what it has seen.
//! Source: Kulkarni, Demirbas, Madappa, Avva and Leone, "Logical Physical Clocks
//! and Consistent Snapshots in Globally Distributed Databases", 2014, section 3.

use std::fmt;
use std::str::FromStr;

/// A device, told apart by 64 random bits.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct DeviceId(pub u64);

impl fmt::Display for DeviceId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:016x}", self.0)
    }
}

impl FromStr for DeviceId {
    type Err = StampError;

    fn from_str(text: &str) -> Result<Self, StampError> {
        hex(text, 16).map(Self)
    }
}

/// When an event was recorded, in the order of all devices: by wall clock, then count, then device.
///
/// Written as `0193f2a1b3c4.0003.7f3a9c2e41d05b68`: the order of the texts is the order of the stamps.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Stamp {
    /// Milliseconds since 1970-01-01T00:00Z, below 2^48.
    pub wall_ms: u64,
    /// Tells events of the same millisecond apart.
    pub count: u16,
    /// Whose event it is.
    pub device: DeviceId,
}

/// The last millisecond that a stamp can hold.
pub const LAST_WALL_MS: u64 = (1 << 48) - 1;

impl fmt::Display for Stamp {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "{:012x}.{:04x}.{}",
            self.wall_ms, self.count, self.device
        )
    }
}

/// A text that is no stamp.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct StampError;

impl fmt::Display for StampError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("must be like 0193f2a1b3c4.0003.7f3a9c2e41d05b68")
    }
}

impl std::error::Error for StampError {}

fn hex(text: &str, digits: usize) -> Result<u64, StampError> {
    let written = text.len() == digits
        && text
            .bytes()
            .all(|byte| byte.is_ascii_digit() || (b'a'..=b'f').contains(&byte));
    if !written {
        return Err(StampError);
    }
    u64::from_str_radix(text, 16).map_err(|_| StampError)
}

impl FromStr for Stamp {
    type Err = StampError;

    fn from_str(text: &str) -> Result<Self, StampError> {
        let mut parts = text.splitn(3, '.');
        let mut part = |digits| hex(parts.next().unwrap_or_default(), digits);
        let (wall_ms, count, device) = (part(12)?, part(4)?, part(16)?);
        Ok(Self {
            wall_ms,
            count: u16::try_from(count).map_err(|_| StampError)?,
            device: DeviceId(device),
        })
    }
}

impl Stamp {
    /// The stamp just behind this one, of a device.
    #[must_use]
    pub fn next(self, device: DeviceId) -> Self {
        match self.count.checked_add(1) {
            Some(count) => Self {
                count,
                device,
                ..self
            },
            None if self.wall_ms < LAST_WALL_MS => Self {
                wall_ms: self.wall_ms + 1,
                count: 0,
                device,
            },
            // The end of time: nothing stands behind, and nothing must stand before.
            None => Self { device, ..self },
        }
    }
}

/// How far ahead a foreign stamp may be and still move this clock: a day. A device whose clock is
/// further off must not drag all others along.
pub const MOST_AHEAD_MS: u64 = 24 * 3600 * 1000;

/// The clock of one device: the last stamp that it gave or followed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Clock {
    last: Stamp,
}

impl Clock {
    /// The clock of a device that has seen nothing.
    #[must_use]
    pub const fn new(device: DeviceId) -> Self {
        Self {
            last: Stamp {
                wall_ms: 0,
                count: 0,
                device,
            },
        }
    }

    /// Whose clock it is.
    #[must_use]
    pub const fn device(&self) -> DeviceId {
        self.last.device
    }

    /// Takes note of an event that was read or received when the wall clock said `now_ms`. False
    /// when its stamp lies more than a day ahead: then the clock stays, and the stamp is doubtful.
    ///
    /// An own stamp is always followed: this device must not give it twice.
    pub fn see(&mut self, stamp: Stamp, now_ms: u64) -> bool {
        let own = stamp.device == self.last.device;
        if !own && stamp.wall_ms > now_ms.saturating_add(MOST_AHEAD_MS) {
            return false;
        }
        if (stamp.wall_ms, stamp.count) > (self.last.wall_ms, self.last.count) {
            self.last.wall_ms = stamp.wall_ms;
            self.last.count = stamp.count;
        }
        true
    }

    /// The next stamp, when the wall clock says `now_ms`.
    pub fn tick(&mut self, now_ms: u64) -> Stamp {
        let now_ms = now_ms.min(LAST_WALL_MS);
        self.last = if now_ms > self.last.wall_ms {
            Stamp {
                wall_ms: now_ms,
                count: 0,
                device: self.last.device,
            }
        } else {
            self.last.next(self.last.device)
        };
        self.last
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const HERE: DeviceId = DeviceId(0x7f3a_9c2e_41d0_5b68);
    const THERE: DeviceId = DeviceId(3);

    #[test]
    fn ticks_rise_even_when_the_wall_clock_stands_or_falls() {
        let mut clock = Clock::new(HERE);
        let stamps = [5, 5, 3, 9].map(|now| clock.tick(now));
        assert!(stamps.is_sorted_by(|one, next| one < next));
        assert_eq!(
            stamps.map(|stamp| (stamp.wall_ms, stamp.count)),
            [(5, 0), (5, 1), (5, 2), (9, 0)]
        );
        let mut full = Clock::new(HERE);
        full.see(
            Stamp {
                wall_ms: 7,
                count: u16::MAX,
                device: THERE,
            },
            7,
        );
        assert_eq!(
            full.tick(7).to_string(),
            "000000000008.0000.7f3a9c2e41d05b68"
        );
    }

    #[test]
    fn a_stamp_over_a_day_ahead_does_not_move_the_clock() {
        let mut clock = Clock::new(HERE);
        let far = Stamp {
            wall_ms: 10 + MOST_AHEAD_MS + 1,
            count: 0,
            device: THERE,
        };
        assert!(!clock.see(far, 10));
        assert_eq!(clock.tick(10).wall_ms, 10);
        let near = Stamp {
            wall_ms: 10 + MOST_AHEAD_MS,
            count: 4,
            device: THERE,
        };
        assert!(clock.see(near, 10));
        assert_eq!(clock.tick(11), near.next(HERE));
        assert!(
            clock.see(
                Stamp {
                    device: HERE,
                    ..far
                },
                10
            ),
            "an own stamp is followed"
        );
    }

    #[test]
    fn stamps_are_written_and_read_in_their_order() {
        let stamp = Stamp {
            wall_ms: 0x0193_f2a1_b3c4,
            count: 3,
            device: HERE,
        };
        assert_eq!(stamp.to_string(), "0193f2a1b3c4.0003.7f3a9c2e41d05b68");
        assert_eq!("0193f2a1b3c4.0003.7f3a9c2e41d05b68".parse(), Ok(stamp));
        for text in [
            "",
            "0193F2A1B3C4.0003.7f3a9c2e41d05b68",
            "0193f2a1b3c4.3.7f3a9c2e41d05b68",
            "+193f2a1b3c4.0003.7f3a9c2e41d05b68",
            "0193f2a1b3c4.0003.7f3a9c2e41d05b68.1",
        ] {
            assert_eq!(text.parse::<Stamp>(), Err(StampError), "{text}");
        }
    }
}
