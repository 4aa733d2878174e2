//! Which event is it? Ids that two devices never give alike.

use std::fmt;
use std::str::FromStr;

use uuid::{Builder, Uuid};

/// A UUID of version 7 (RFC 9562): milliseconds and 74 random bits.
///
/// A heap, a bed and a person go by the id of the event that brought them in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct EventId(Uuid);

impl EventId {
    /// The id of an event that is made when the wall clock says `now_ms`, from ten random bytes.
    #[must_use]
    pub const fn new(now_ms: u64, random: &[u8; 10]) -> Self {
        Self(Builder::from_unix_timestamp_millis(now_ms, random).into_uuid())
    }

    /// The sixteen bytes.
    #[must_use]
    pub const fn as_bytes(&self) -> &[u8; 16] {
        self.0.as_bytes()
    }
}

impl fmt::Display for EventId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.0.as_hyphenated())
    }
}

/// A text that is no id.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct IdError;

impl fmt::Display for IdError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("must be a UUID in lower case, like 0193f2a1-b3c4-7000-8000-000000000001")
    }
}

impl std::error::Error for IdError {}

impl FromStr for EventId {
    type Err = IdError;

    /// Any UUID is taken, so that what another program made is kept; one way of writing only, so
    /// that equal ids are equal texts.
    fn from_str(text: &str) -> Result<Self, IdError> {
        let id = Uuid::try_parse(text).map_err(|_| IdError)?;
        let mut buffer = Uuid::encode_buffer();
        if *id.as_hyphenated().encode_lower(&mut buffer) == *text {
            Ok(Self(id))
        } else {
            Err(IdError)
        }
    }
}

impl serde::Serialize for EventId {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> serde::Deserialize<'de> for EventId {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        crate::text::from_text(deserializer)
    }
}

#[cfg(feature = "schema")]
impl schemars::JsonSchema for EventId {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "EventId".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({
            "description": "A UUID in lower case; of version 7 when this program makes it.",
            "type": "string",
            "pattern": "^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$"
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ids_are_of_version_seven_and_written_in_one_way() {
        let id = EventId::new(0x0193_f2a1_b3c4, &[0xff; 10]);
        assert_eq!(id.to_string(), "0193f2a1-b3c4-7fff-bfff-ffffffffffff");
        assert_eq!(id.to_string().parse(), Ok(id));
        for text in [
            "",
            "0193F2A1-b3c4-7fff-bfff-ffffffffffff",
            "0193f2a1b3c47fffbfffffffffffffff",
            "{0193f2a1-b3c4-7fff-bfff-ffffffffffff}",
        ] {
            assert_eq!(text.parse::<EventId>(), Err(IdError), "{text}");
        }
    }
}
