//! When did it happen? An instant, and what the clock on the wall showed.

use std::fmt;
use std::str::FromStr;

use jiff::tz::Offset;
use jiff::{Timestamp, civil};

/// An instant with the offset of the local time from UTC, as RFC 3339 writes it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Moment {
    /// Milliseconds since 1970-01-01T00:00Z; negative before.
    pub instant_ms: i64,
    /// Local time less UTC [min], within 24 hours.
    pub offset_min: i16,
}

/// The first year, in UTC, of which a journal tells.
pub const FIRST_YEAR: i16 = 1900;

/// Moments lie in the years 1900 to 2200: what is outside is a slip of the pen.
const FIRST_MS: i64 = -2_208_988_800_000;
const LAST_MS: i64 = 7_258_118_400_000;

impl Moment {
    /// A moment; `None` outside the years 1900 to 2200 or with an offset of a day or more.
    #[must_use]
    pub fn new(instant_ms: i64, offset_min: i16) -> Option<Self> {
        ((FIRST_MS..LAST_MS).contains(&instant_ms) && offset_min.abs() < 24 * 60).then_some(Self {
            instant_ms,
            offset_min,
        })
    }

    /// The moment at which a clock with this offset shows a local time.
    #[must_use]
    pub fn from_local(local: civil::DateTime, offset_min: i16) -> Option<Self> {
        let offset = Offset::from_seconds(i32::from(offset_min) * 60).ok()?;
        let instant = offset.to_timestamp(local).ok()?;
        Self::new(instant.as_millisecond(), offset_min)
    }

    /// What the clock on the wall showed.
    #[must_use]
    pub fn local(&self) -> civil::DateTime {
        let offset = Offset::from_seconds(i32::from(self.offset_min) * 60).unwrap_or(Offset::UTC);
        offset.to_datetime(Timestamp::from_millisecond(self.instant_ms).unwrap_or_default())
    }
}

impl fmt::Display for Moment {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let local = self.local();
        write!(
            f,
            "{:04}-{:02}-{:02}T{:02}:{:02}:{:02}",
            local.year(),
            local.month(),
            local.day(),
            local.hour(),
            local.minute(),
            local.second()
        )?;
        let ms = self.instant_ms.rem_euclid(1000);
        if ms > 0 {
            write!(f, ".{ms:03}")?;
        }
        match self.offset_min {
            0 => f.write_str("Z"),
            offset => write!(
                f,
                "{}{:02}:{:02}",
                if offset < 0 { '-' } else { '+' },
                offset.abs() / 60,
                offset.abs() % 60
            ),
        }
    }
}

/// A text that is no moment.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct MomentError;

impl fmt::Display for MomentError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("must be a time with its offset from UTC in the years 1900 to 2199, like 2026-05-01T18:00:00+02:00")
    }
}

impl std::error::Error for MomentError {}

impl FromStr for Moment {
    type Err = MomentError;

    /// Reads RFC 3339; what is finer than a millisecond is cut.
    fn from_str(text: &str) -> Result<Self, MomentError> {
        parsed(text.as_bytes()).ok_or(MomentError)
    }
}

fn parsed(text: &[u8]) -> Option<Moment> {
    // By position, and not by a general reader: a journal has two moments a line.
    let number = |from: usize, digits: usize| {
        text.get(from..from + digits)?
            .iter()
            .try_fold(0_i32, |sum, byte| {
                byte.is_ascii_digit()
                    .then(|| sum * 10 + i32::from(byte - b'0'))
            })
    };
    let sign = |at: usize, allowed: &[u8]| text.get(at).filter(|byte| allowed.contains(byte));
    for (at, allowed) in [
        (4, &b"-"[..]),
        (7, b"-"),
        (10, b"Tt "),
        (13, b":"),
        (16, b":"),
    ] {
        sign(at, allowed)?;
    }
    let part = |from| number(from, 2).and_then(|number| i8::try_from(number).ok());
    let mut end = 19;
    let mut nanos = 0;
    if sign(end, b".,").is_some() {
        let digits = text[end + 1..]
            .iter()
            .take_while(|byte| byte.is_ascii_digit())
            .count();
        let ms = number(end + 1, digits.min(3)).filter(|_| digits > 0)?;
        nanos = ms * 10_i32.pow(9 - u32::try_from(digits.min(3)).ok()?);
        end += 1 + digits;
    }
    let offset_min = match text.get(end)? {
        b'Z' | b'z' if text.len() == end + 1 => 0,
        plus_or_minus @ (b'+' | b'-') if text.len() == end + 6 && text[end + 3] == b':' => {
            let (hours, minutes) = (number(end + 1, 2)?, number(end + 4, 2)?);
            let minutes = (minutes < 60).then_some(hours * 60 + minutes)?;
            i16::try_from(if *plus_or_minus == b'-' {
                -minutes
            } else {
                minutes
            })
            .ok()?
        }
        _ => return None,
    };
    let year = i16::try_from(number(0, 4)?).ok()?;
    // A leap second is taken as the last ordinary one.
    let second = part(17)?.min(if part(17)? == 60 { 59 } else { i8::MAX });
    let local = civil::DateTime::new(
        year,
        part(5)?,
        part(8)?,
        part(11)?,
        part(14)?,
        second,
        nanos,
    )
    .ok()?;
    Moment::from_local(local, offset_min)
}

impl serde::Serialize for Moment {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> serde::Deserialize<'de> for Moment {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        crate::text::from_text(deserializer)
    }
}

#[cfg(feature = "schema")]
impl schemars::JsonSchema for Moment {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Moment".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({
            "description": "A time with its offset from UTC (RFC 3339), in the years 1900 to 2199.",
            "type": "string",
            "format": "date-time"
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn moments_are_read_and_written_with_their_offset() {
        for (text, ms, written) in [
            (
                "2026-05-01T18:00:00+02:00",
                1_777_651_200_000,
                "2026-05-01T18:00:00+02:00",
            ),
            (
                "2026-05-01T16:00:00Z",
                1_777_651_200_000,
                "2026-05-01T16:00:00Z",
            ),
            (
                "2026-05-01t10:30:00.25-05:30",
                1_777_651_200_250,
                "2026-05-01T10:30:00.250-05:30",
            ),
            ("1969-12-31T23:59:59.999Z", -1, "1969-12-31T23:59:59.999Z"),
            (
                "2016-12-31T23:59:60Z",
                1_483_228_799_000,
                "2016-12-31T23:59:59Z",
            ),
            (
                "2024-02-29T00:00:00.123456789Z",
                1_709_164_800_123,
                "2024-02-29T00:00:00.123Z",
            ),
        ] {
            let moment: Moment = text.parse().unwrap();
            assert_eq!(moment.instant_ms, ms, "{text}");
            assert_eq!(moment.to_string(), written);
        }
    }

    #[test]
    fn what_is_no_moment_is_refused() {
        for text in [
            "",
            "2026-05-01",
            "2026-05-01T18:00:00",
            "2026-02-29T00:00:00Z",
            "2026-05-01T24:00:00Z",
            "2026-05-01T18:00:00+2:00",
            "2026-05-01T18:00:00+24:00",
            "2026-05-01T18:00:00+02:60",
            "1899-12-31T23:59:59Z",
            "2200-01-01T00:00:00Z",
            "2026-05-01T18:00:00.Z",
            "٢٠٢٦-05-01T18:00:00Z",
            "2026-05-01T18:00:61Z",
            "2026-05-01T18:00:00Zé",
        ] {
            assert_eq!(text.parse::<Moment>(), Err(MomentError), "{text}");
        }
    }
}
