//! One event: what was done or seen, when, by whom, and where it stands in the order.

use std::fmt;

use serde::{Deserialize, Serialize};
use serde_json::error::Category;
use serde_json::value::RawValue;

use crate::check::Problem;
use crate::content::Content;
use crate::id::EventId;
use crate::moment::Moment;
use crate::stamp::{DeviceId, Stamp};

/// The version of the format that this program writes.
pub const FORMAT_VERSION: u32 = 1;

/// The longest line that is read [bytes]: 64 KiB. A feed of twenty parts takes about two.
pub const LONGEST_LINE_BYTES: usize = 64 << 10;

/// An event.
#[derive(Clone, Debug, PartialEq)]
pub struct Event {
    /// Which one.
    pub id: EventId,
    /// Where it stands in the order of all events, and on which device it was recorded.
    pub stamp: Stamp,
    /// When it happened, as far as the keeper knows.
    pub happened: Moment,
    /// When it was recorded, by the clock of the device.
    pub recorded: Moment,
    /// Who recorded it: the event that described this person.
    pub by: Option<EventId>,
    /// Of what it is a part, when many were recorded in one go, such as an import: the id of the
    /// first of them. They are taken back together.
    pub batch: Option<EventId>,
    /// What it was.
    pub what: What,
}

/// What an event was, as far as this program can tell.
#[derive(Clone, Debug, PartialEq)]
pub enum What {
    /// Something that this program understands.
    Known(Content),
    /// Something that it keeps and passes on without understanding it.
    Unknown(NotUnderstood),
}

/// Why an event is not understood.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NotUnderstood {
    /// The kind, as it is written.
    pub kind: String,
    /// The version of the format, as it is written.
    pub version: u32,
    /// What stands in the way, when version and kind are known.
    pub why: Option<String>,
}

impl Event {
    /// What would stand in the journal if it were logged now; its id and stamp mean nothing.
    #[must_use]
    pub const fn not_logged(content: Content, now: Moment) -> Self {
        Self {
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
            what: What::Known(content),
        }
    }

    /// What it was, when it is understood.
    #[must_use]
    pub const fn content(&self) -> Option<&Content> {
        match &self.what {
            What::Known(content) => Some(content),
            What::Unknown(_) => None,
        }
    }
}

/// The line as it is written: names in the order in which they stand.
#[derive(Deserialize, Serialize)]
struct Written<'a> {
    v: u32,
    id: EventId,
    #[serde(with = "stamp_text")]
    stamp: Stamp,
    happened: Moment,
    recorded: Moment,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    by: Option<EventId>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    batch: Option<EventId>,
    #[serde(borrow)]
    kind: std::borrow::Cow<'a, str>,
    #[serde(borrow)]
    body: std::borrow::Cow<'a, RawValue>,
}

mod stamp_text {
    use serde::{Deserializer, Serializer};

    use crate::stamp::Stamp;

    pub fn serialize<S: Serializer>(stamp: &Stamp, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(stamp)
    }

    pub fn deserialize<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Stamp, D::Error> {
        crate::text::from_text(deserializer)
    }
}

/// Why a line is no event.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LineError {
    /// It is longer than is read.
    TooLong {
        /// How long it is.
        bytes: usize,
    },
    /// It is not text in UTF-8.
    NotText,
    /// It is the header of a file of a later version.
    NewerFile,
    /// It is not the JSON of an event.
    NotAnEvent(NoEvent),
}

/// Why the JSON of a line is not that of an event.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NoEvent {
    /// It does not stand in braces.
    NoBraces,
    /// Its kind is no word.
    NoKind,
    /// The line ends before the JSON does.
    CutOff,
    /// There is a sign that no JSON has there.
    NoJson {
        /// Which sign, counted from 1.
        sign: usize,
        /// What the reader of JSON says, in English.
        detail: String,
    },
    /// A field is missing, or holds what it cannot.
    NoField {
        /// What the reader of JSON says, in English.
        detail: String,
    },
}

impl NoEvent {
    /// What the reader of JSON met in a line.
    fn of(error: &serde_json::Error, line: &str) -> Self {
        match error.classify() {
            Category::Eof => Self::CutOff,
            Category::Syntax => Self::NoJson {
                sign: sign_at(line, error.column()),
                detail: plain(error),
            },
            Category::Data | Category::Io => Self::NoField {
                detail: plain(error),
            },
        }
    }
}

/// Which sign of the line a byte belongs to, both counted from 1.
fn sign_at(line: &str, byte: usize) -> usize {
    line.char_indices()
        .take_while(|(start, _)| *start < byte.max(1))
        .count()
}

impl fmt::Display for NoEvent {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoBraces => f.write_str("it does not stand in braces"),
            Self::NoKind => f.write_str("its kind is no word"),
            Self::CutOff => f.write_str("it is cut off"),
            Self::NoJson { sign, detail } => {
                write!(f, "its sign {sign} makes it no JSON (“{detail}”)")
            }
            Self::NoField { detail } => {
                write!(f, "a field is missing or cannot be as it is (“{detail}”)")
            }
        }
    }
}

impl fmt::Display for LineError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooLong { bytes } => write!(
                f,
                "has {bytes} bytes; an event has at most {LONGEST_LINE_BYTES}"
            ),
            Self::NotText => f.write_str("is not text in UTF-8"),
            Self::NewerFile => {
                f.write_str("says that a newer version made this file: take it in with that one")
            }
            Self::NotAnEvent(why) => write!(f, "is no event: {why}"),
        }
    }
}

impl std::error::Error for LineError {}

/// An event that cannot be as it is.
#[derive(Clone, Debug, PartialEq)]
pub enum WriteError {
    /// Something lies outside what can be.
    Impossible(Problem),
    /// It takes a longer line than is read.
    TooLong,
    /// It is not understood.
    NotUnderstood,
}

impl fmt::Display for WriteError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Impossible(problem) => write!(f, "{problem}"),
            Self::NotUnderstood => {
                f.write_str("a newer version made this: use that one to change it")
            }
            Self::TooLong => f.write_str("this is too long for one entry: make two of it"),
        }
    }
}

impl std::error::Error for WriteError {}

/// The most characters of a reader's message: it may quote the whole line.
const LONGEST_MESSAGE: usize = 300;

/// What a reader's message says without its place: a line of a journal has no lines of its own.
pub(crate) fn plain(error: &serde_json::Error) -> String {
    let text = error.to_string();
    let place = format!(" at line {} column {}", error.line(), error.column());
    let text = text.strip_suffix(&place).unwrap_or(&text);
    match text.char_indices().nth(LONGEST_MESSAGE) {
        Some((end, _)) => format!("{}…", &text[..end]),
        None => text.to_owned(),
    }
}

impl Event {
    /// Reads a line. What a newer program wrote, or what lies outside what can be, is an event that
    /// is not understood; only what has no id, stamp, times and kind is none at all.
    pub fn read(line: &str) -> Result<Self, LineError> {
        if line.len() > LONGEST_LINE_BYTES {
            return Err(LineError::TooLong { bytes: line.len() });
        }
        // A reader of JSON takes a list, too, as fields in their order: that is not the format.
        if line.trim_start().starts_with('[') {
            return Err(LineError::NotAnEvent(NoEvent::NoBraces));
        }
        let written: Written<'_> = serde_json::from_str(line)
            .map_err(|error| LineError::NotAnEvent(NoEvent::of(&error, line)))?;
        if written.kind.chars().count() > 60 || written.kind.contains(char::is_control) {
            return Err(LineError::NotAnEvent(NoEvent::NoKind));
        }
        let unknown = |why| {
            What::Unknown(NotUnderstood {
                kind: written.kind.clone().into_owned(),
                version: written.v,
                why,
            })
        };
        let what = if written.v != FORMAT_VERSION {
            unknown(None)
        } else if written.body.get().starts_with('[') && Content::KINDS.contains(&&*written.kind) {
            unknown(Some("its body does not stand in braces".to_owned()))
        } else {
            match Content::read(&written.kind, &written.body) {
                None => unknown(None),
                Some(Err(error)) => unknown(Some(plain(&error))),
                Some(Ok(content)) => match content.check() {
                    Ok(()) => What::Known(content),
                    Err(problem) => unknown(Some(problem.to_string())),
                },
            }
        };
        Ok(Self {
            id: written.id,
            stamp: written.stamp,
            happened: written.happened,
            recorded: written.recorded,
            by: written.by,
            batch: written.batch,
            what,
        })
    }

    /// Writes the line of an event, without a line break. Fails when something lies outside what
    /// can be: nothing is written that would not be read back. Only what is understood is written
    /// anew; all else is passed on as the line that it came in.
    pub fn write(&self) -> Result<String, WriteError> {
        let What::Known(content) = &self.what else {
            return Err(WriteError::NotUnderstood);
        };
        content.check().map_err(WriteError::Impossible)?;
        // Our own types always have a JSON: their names are texts and their numbers were checked.
        let body = content.write().map_err(|_| WriteError::TooLong)?;
        let line = serde_json::to_string(&Written {
            v: FORMAT_VERSION,
            id: self.id,
            stamp: self.stamp,
            happened: self.happened,
            recorded: self.recorded,
            by: self.by,
            batch: self.batch,
            kind: content.kind().into(),
            body: std::borrow::Cow::Owned(body),
        })
        .map_err(|_| WriteError::TooLong)?;
        if line.len() > LONGEST_LINE_BYTES {
            return Err(WriteError::TooLong);
        }
        Ok(line)
    }
}
