//! The file in which a journal travels: JSON Lines, a header and then one event a line.

use std::collections::BTreeMap;
use std::fmt;

use serde::{Deserialize, Serialize};

use crate::event::{Event, LONGEST_LINE_BYTES, LineError};
use crate::line::{Digest, Line, journal_digest};
use crate::moment::Moment;

/// The largest file that is read [bytes]: 512 MiB, above a million events.
pub const LARGEST_FILE_BYTES: u64 = 512 << 20;

/// The most faults that are listed; all are counted.
pub const MOST_FAULTS: usize = 100;

/// The first line of a file.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Header {
    /// The version of the file: 1.
    pub heapwright_journal: u32,
    /// How many events follow.
    pub events: u64,
    /// SHA-256 of the digests of all lines in rising order, hexadecimal: each line's digest is the
    /// SHA-256 of its bytes without the line break.
    pub digest: String,
    /// When the file was made.
    pub exported: Moment,
}

impl Header {
    /// The header of a file of these lines.
    #[must_use]
    pub fn of(digests: Vec<Digest>, exported: Moment) -> Self {
        Self {
            heapwright_journal: 1,
            events: digests.len() as u64,
            digest: journal_digest(digests).to_string(),
            exported,
        }
    }

    /// The line, without a line break.
    #[must_use]
    pub fn line(&self) -> String {
        format!(
            r#"{{"heapwright_journal":{},"events":{},"digest":"{}","exported":"{}"}}"#,
            self.heapwright_journal, self.events, self.digest, self.exported
        )
    }
}

/// How a header begins; no event does.
const HEADER_BEGINS: &str = "{\"heapwright_journal\"";

/// A line of a file that cannot be used.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// Which line, counted from 1.
    pub line: u64,
    /// What is wrong with it.
    pub what: LineError,
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "line {} {}", self.line, self.what)
    }
}

/// What stands in a file on the whole.
#[derive(Clone, Debug, PartialEq)]
pub struct Summary {
    /// The header; a file without one is taken, but may be cut without our knowing.
    pub header: Option<Header>,
    /// How many events could be read.
    pub events: u64,
    /// How many of them this program does not understand, by kind.
    pub not_understood: BTreeMap<String, u64>,
    /// The first faults.
    pub faults: Vec<Fault>,
    /// How many faults there are.
    pub fault_count: u64,
    /// True when header and events agree, or when there is no header.
    pub whole: bool,
}

/// Reads a file line by line, so that its size needs no room.
#[derive(Debug, Default)]
pub struct FileReader {
    line: u64,
    header: Option<Header>,
    joined: bool,
    digests: Vec<Digest>,
    not_understood: BTreeMap<String, u64>,
    faults: Vec<Fault>,
    fault_count: u64,
}

impl FileReader {
    /// Takes the next line, without its line break. `None` for the header, an empty line, and one
    /// that cannot be used, which is noted as a fault.
    pub fn read(&mut self, line: &[u8]) -> Option<(Line, Event)> {
        self.line += 1;
        let line = line.strip_suffix(b"\r").unwrap_or(line);
        let line = match self.line {
            // What some editors put in front of UTF-8.
            1 => line.strip_prefix(b"\xef\xbb\xbf").unwrap_or(line),
            _ => line,
        };
        if line.iter().all(u8::is_ascii_whitespace) {
            return None;
        }
        match self.line_read(line) {
            Ok(read) => read,
            Err(what) => {
                self.fault_count += 1;
                if self.faults.len() < MOST_FAULTS {
                    self.faults.push(Fault {
                        line: self.line,
                        what,
                    });
                }
                None
            }
        }
    }

    fn line_read(&mut self, line: &[u8]) -> Result<Option<(Line, Event)>, LineError> {
        if line.len() > LONGEST_LINE_BYTES {
            return Err(LineError::TooLong { bytes: line.len() });
        }
        let text = std::str::from_utf8(line).map_err(|_| LineError::NotText)?;
        if text.starts_with(HEADER_BEGINS)
            && let Ok(header) = serde_json::from_str::<Header>(text)
        {
            return self.header_read(header).map(|()| None);
        }
        let (line, event) = Line::read(text)?;
        self.digests.push(line.digest());
        if let crate::event::What::Unknown(unknown) = &event.what {
            // Kinds come from the file: their number is kept within bounds.
            let kind = if self.not_understood.len() < MOST_FAULTS {
                unknown.kind.clone()
            } else {
                "other".to_owned()
            };
            *self.not_understood.entry(kind).or_default() += 1;
        }
        Ok(Some((line, event)))
    }

    fn header_read(&mut self, header: Header) -> Result<(), LineError> {
        if header.heapwright_journal != 1 {
            return Err(LineError::NewerFile);
        }
        // A second header is that of a second file behind the first: what is whole, nobody can
        // tell any more.
        self.joined |= self.header.is_some() || !self.digests.is_empty();
        self.header = (!self.joined).then_some(header);
        Ok(())
    }

    /// What the file held, when all lines were taken.
    #[must_use]
    pub fn finish(self) -> Summary {
        let events = self.digests.len() as u64;
        let whole = self.header.as_ref().is_none_or(|header| {
            header.events == events && header.digest == journal_digest(self.digests).to_string()
        });
        Summary {
            header: self.header,
            events,
            not_understood: self.not_understood,
            faults: self.faults,
            fault_count: self.fault_count,
            whole,
        }
    }
}
