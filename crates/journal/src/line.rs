//! What is kept: an event's line, byte for byte, and the digests that tell damage.

use std::fmt;
use std::sync::Arc;

use sha2::{Digest as _, Sha256};

use crate::event::{Event, LineError};

/// SHA-256 (FIPS 180-4) of some bytes.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Digest(pub [u8; 32]);

impl Digest {
    /// Of bytes.
    #[must_use]
    pub fn of(bytes: &[u8]) -> Self {
        Self(Sha256::digest(bytes).into())
    }

    /// From 32 bytes; `None` for any other number of them.
    #[must_use]
    pub fn from_slice(bytes: &[u8]) -> Option<Self> {
        bytes.try_into().ok().map(Self)
    }
}

impl fmt::Display for Digest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|byte| write!(f, "{byte:02x}"))
    }
}

impl fmt::Debug for Digest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{self}")
    }
}

impl std::str::FromStr for Digest {
    type Err = fmt::Error;

    fn from_str(text: &str) -> Result<Self, fmt::Error> {
        let digits = text
            .bytes()
            .map(|byte| match byte {
                b'0'..=b'9' => Ok(byte - b'0'),
                b'a'..=b'f' => Ok(byte - b'a' + 10),
                _ => Err(fmt::Error),
            })
            .collect::<Result<Vec<u8>, _>>()?;
        let bytes: Vec<u8> = digits
            .as_chunks::<2>()
            .0
            .iter()
            .map(|[high, low]| high * 16 + low)
            .collect();
        if digits.len() == 64 {
            Self::from_slice(&bytes).ok_or(fmt::Error)
        } else {
            Err(fmt::Error)
        }
    }
}

/// A line of the journal as it was first written. Two lines are the same event when they are the
/// same bytes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    text: Arc<str>,
    digest: Digest,
}

impl Line {
    /// A line and its event; fails when it holds none.
    pub fn read(text: &str) -> Result<(Self, Event), LineError> {
        let event = Event::read(text)?;
        Ok((Self::from(text), event))
    }

    /// The bytes, without a line break.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    /// Their digest.
    #[must_use]
    pub const fn digest(&self) -> Digest {
        self.digest
    }
}

impl From<&str> for Line {
    fn from(text: &str) -> Self {
        Self {
            text: text.into(),
            digest: Digest::of(text.as_bytes()),
        }
    }
}

/// The integrity chain of a store: each link covers a line and all lines before it, so that a line
/// that is changed, lost or out of place shows, and where.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Chain(pub Digest);

impl Chain {
    /// Before the first line.
    pub const START: Self = Self(Digest([0; 32]));

    /// The link behind this one, for a line of this digest.
    #[must_use]
    pub fn then(self, line: Digest) -> Self {
        let mut hash = Sha256::new();
        hash.update(self.0.0);
        hash.update(line.0);
        Self(Digest(hash.finalize().into()))
    }
}

/// The digest of a whole journal: of the digests of its lines in rising order, so that the order of
/// arrival has no effect.
#[must_use]
pub fn journal_digest(mut lines: Vec<Digest>) -> Digest {
    lines.sort_unstable();
    lines.dedup();
    let mut hash = Sha256::new();
    for line in &lines {
        hash.update(line.0);
    }
    Digest(hash.finalize().into())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn digests_are_those_of_the_standard() {
        // FIPS 180-2, appendix B.1: the message "abc".
        let digest = Digest::of(b"abc");
        let text = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
        assert_eq!(digest.to_string(), text);
        assert_eq!(text.parse(), Ok(digest));
        assert!(text[1..].parse::<Digest>().is_err());
        assert!(format!("{text}0").parse::<Digest>().is_err());
    }

    #[test]
    fn a_chain_tells_order_and_the_whole_does_not() {
        let [one, two] = [Digest::of(b"1"), Digest::of(b"2")];
        assert_ne!(
            Chain::START.then(one).then(two),
            Chain::START.then(two).then(one)
        );
        assert_eq!(
            journal_digest(vec![one, two]),
            journal_digest(vec![two, one, two])
        );
    }
}
