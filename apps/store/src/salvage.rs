//! Which lines can be found in a damaged file without SQLite, from its bytes alone?
//!
//! A line lies in one piece behind its digest (see the tables), and the digest stands once more in
//! the index. So a text is a line of the journal when its SHA-256 stands in front of it or in the
//! index: that cannot be by chance. Two marks lead to such texts: the head of a row, which tells
//! how long the line is and its position, and the start of a JSON object.
//!
//! Not found are lines of which a byte has changed, lines above 16,000 bytes when the page that
//! leads to their other parts is hit, and pictures. What was being written when a crash came is
//! found too, when it is whole.

use std::collections::HashMap;
use std::ops::Range;
use std::path::Path;

use heapwright_journal::{Digest, LONGEST_LINE_BYTES, Line};
use memchr::memmem;
use serde::de::IgnoredAny;

use crate::error::StoreError;
use crate::files::{has_wal, read_what_can_be_read, wal};
use crate::schema::PAGE_BYTES;
use crate::wal::{frames, page};

/// A line that was found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Found {
    /// Where it stood, counted from 1, when that could be told.
    pub position: Option<u64>,
    /// The line.
    pub line: Line,
}

/// What was found in a damaged file.
#[derive(Clone, Debug, Default)]
pub struct Salvaged {
    /// The lines, by position as far as it is known.
    pub lines: Vec<Found>,
    /// The digests of lines that were there, found or not, with their positions.
    pub known: HashMap<Digest, u64>,
}

/// Looks for lines in a file and its WAL. The file is not touched. All of it is held in memory.
pub fn salvage(path: &Path) -> Result<Salvaged, StoreError> {
    let file = read_what_can_be_read(path)?;
    let wal = if has_wal(path) {
        read_what_can_be_read(&wal(path))?
    } else {
        Vec::new()
    };
    Ok(Search::of(&file, &wal))
}

/// Looks for lines in a WAL alone.
pub(crate) fn salvage_wal(wal: &[u8]) -> Salvaged {
    Search::of(&[], wal)
}

/// The digest and the link of a row [bytes].
const BEFORE_LINE_BYTES: usize = 64;

struct Search<'a> {
    file: &'a [u8],
    /// The last state of each page in the WAL.
    pages: HashMap<u32, &'a [u8]>,
    known: HashMap<Digest, u64>,
    found: HashMap<Digest, Found>,
}

impl<'a> Search<'a> {
    fn of(file: &'a [u8], wal: &'a [u8]) -> Salvaged {
        let mut search = Self {
            file,
            pages: frames(wal).map(page).collect(),
            known: HashMap::new(),
            found: HashMap::new(),
        };
        for bytes in [file, wal] {
            search.index_entries(bytes);
        }
        for bytes in [file, wal] {
            let found = search.rows(bytes);
            search.objects(bytes, found);
        }
        let mut lines: Vec<Found> = search.found.into_values().collect();
        lines.sort_by_key(|found| (found.position.unwrap_or(u64::MAX), found.line.digest()));
        Salvaged {
            lines,
            known: search.known,
        }
    }

    /// Notes the digests of the index: an entry is a head of three bytes, the digest, the position.
    fn index_entries(&mut self, bytes: &[u8]) {
        for at in memmem::find_iter(bytes, &[3, 76]) {
            let width = match bytes.get(at + 2) {
                // One as a constant.
                Some(9) => 0,
                Some(width @ 1..=4) => usize::from(*width),
                Some(5) => 6,
                Some(6) => 8,
                _ => continue,
            };
            // The length of the entry stands in front of it.
            if at == 0 || usize::from(bytes[at - 1]) != 3 + 32 + width {
                continue;
            }
            let (Some(digest), Some(position)) = (
                bytes.get(at + 3..at + 35).and_then(Digest::from_slice),
                bytes.get(at + 35..at + 35 + width),
            ) else {
                continue;
            };
            let position = position
                .iter()
                .fold(0, |number, byte| number << 8 | u64::from(*byte));
            self.known
                .insert(digest, if width == 0 { 1 } else { position });
        }
    }

    /// Follows the heads of rows; tells which bytes were found to be lines.
    fn rows(&mut self, bytes: &[u8]) -> Vec<Range<usize>> {
        let mut ranges = Vec::new();
        // The position, which stands elsewhere, and twice 32 bytes.
        for at in memmem::find_iter(bytes, &[0, 76, 76]) {
            let Some((line_type, width)) = bytes.get(at + 3..).and_then(varint) else {
                continue;
            };
            let head_bytes = 4 + width;
            let is_text = line_type >= 13 && line_type % 2 == 1;
            let length = usize::try_from(line_type.saturating_sub(13) / 2).unwrap_or(usize::MAX);
            if at == 0
                || usize::from(bytes[at - 1]) != head_bytes
                || !is_text
                || length > LONGEST_LINE_BYTES
            {
                continue;
            }
            let start = at + 3 + width + BEFORE_LINE_BYTES;
            let here = bytes_here(head_bytes + BEFORE_LINE_BYTES + length)
                .saturating_sub(head_bytes + BEFORE_LINE_BYTES);
            let Some(kept) = bytes.get(start - 32..start).and_then(Digest::from_slice) else {
                continue;
            };
            let position = position_before(&bytes[..at - 1]);
            if here == length {
                if let Some(text) = bytes.get(start..start + length)
                    && self.take(text, kept, position)
                {
                    ranges.push(start..start + length);
                }
            } else if let Some(text) = self.over_pages(bytes, start, here, length) {
                self.take(&text, kept, position);
            }
        }
        ranges
    }

    /// A line that goes on in other pages: each begins with the number of the next.
    fn over_pages(
        &self,
        bytes: &[u8],
        start: usize,
        here: usize,
        length: usize,
    ) -> Option<Vec<u8>> {
        let mut text = bytes.get(start..start + here)?.to_vec();
        let mut next = bytes.get(start + here..)?;
        while text.len() < length {
            let number = u32::from_be_bytes(*next.first_chunk()?);
            let page = self.pages.get(&number).copied().or_else(|| {
                let from = usize::try_from(number.checked_sub(1)?).ok()?;
                let from = from.checked_mul(PAGE_BYTES)?;
                self.file.get(from..from.checked_add(PAGE_BYTES)?)
            })?;
            let part = page.get(4..)?;
            text.extend_from_slice(&part[..part.len().min(length - text.len())]);
            next = page;
        }
        Some(text)
    }

    /// Tries every start of a JSON object outside of what was found.
    fn objects(&mut self, bytes: &[u8], mut found: Vec<Range<usize>>) {
        found.sort_by_key(|range| range.start);
        let mut behind = 0;
        let mut found = found.into_iter().peekable();
        for at in memmem::find_iter(bytes, b"{\"") {
            while let Some(range) = found.next_if(|range| range.start <= at) {
                behind = behind.max(range.end);
            }
            if at < behind {
                continue;
            }
            let end = bytes.len().min(at + LONGEST_LINE_BYTES);
            let mut objects =
                serde_json::Deserializer::from_slice(&bytes[at..end]).into_iter::<IgnoredAny>();
            if !matches!(objects.next(), Some(Ok(_))) {
                continue;
            }
            let text = &bytes[at..at + objects.byte_offset()];
            let kept = at
                .checked_sub(32)
                .and_then(|from| Digest::from_slice(&bytes[from..at]));
            if self.take(text, kept.unwrap_or(Digest([0; 32])), None) {
                behind = at + text.len();
            }
        }
    }

    fn take(&mut self, text: &[u8], kept: Digest, position: Option<u64>) -> bool {
        let Ok(text) = std::str::from_utf8(text) else {
            return false;
        };
        let line = Line::from(text);
        let digest = line.digest();
        let indexed = self.known.get(&digest).copied();
        if digest != kept && indexed.is_none() {
            return false;
        }
        let position = indexed.or(position);
        let found = self.found.entry(digest).or_insert(Found { position, line });
        found.position = found.position.or(position);
        true
    }
}

/// A number of SQLite's: seven bits a byte, the high bit says that more follow. With its width.
fn varint(bytes: &[u8]) -> Option<(u64, usize)> {
    let mut number = 0;
    for (index, byte) in bytes.iter().take(8).enumerate() {
        number = number << 7 | u64::from(byte & 0x7f);
        if byte & 0x80 == 0 {
            return Some((number, index + 1));
        }
    }
    None
}

/// The number of a row, which ends where its head begins. Before it stands another number, whose
/// last byte has no high bit.
fn position_before(bytes: &[u8]) -> Option<u64> {
    let last = bytes.len().checked_sub(1)?;
    let more = bytes[..last]
        .iter()
        .rev()
        .take(7)
        .take_while(|byte| **byte & 0x80 != 0)
        .count();
    let (position, width) = varint(&bytes[last - more..])?;
    (width == more + 1 && position > 0).then_some(position)
}

/// How much of a row stands in its own page (SQLite, "Database File Format", section 1.6).
const fn bytes_here(row_bytes: usize) -> usize {
    let most = PAGE_BYTES - 35;
    if row_bytes <= most {
        return row_bytes;
    }
    let least = (PAGE_BYTES - 12) * 32 / 255 - 23;
    let some = least + (row_bytes - least) % (PAGE_BYTES - 4);
    if some <= most { some } else { least }
}
