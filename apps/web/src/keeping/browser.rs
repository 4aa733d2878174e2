//! The store in the browser: IndexedDB, most lines in blocks, the last ones each by itself.
//!
//! A block holds about a thousand lines, the digest of each and the link behind the last: a journal
//! of two hundred thousand opens in as many reads as it has blocks. New lines go to the tail, one
//! record each; a full tail moves into a block, in the transaction that makes it so.

use std::collections::HashSet;

use heapwright_journal::store::{ChainWalk, Damage, ReadThrough, Store};
use heapwright_journal::{Chain, Digest, Line};
use js_sys::{Array, Uint8Array};
use wasm_bindgen::{JsCast, JsValue};

use super::device;
use super::fault::KeepError;
use super::kept::Holds;

/// Lines of a block, and of a tail that is full.
const BLOCK_LINES: usize = 1000;
/// Blocks that are read in one go: some seven megabytes.
const BLOCKS_AT_ONCE: u32 = 20;
/// Fields of a block and of a line of the tail, as `device.js` hands them over.
const BLOCK_FIELDS: u32 = 5;
const TAIL_FIELDS: u32 = 4;

/// The journal of this browser.
#[derive(Debug)]
pub struct BrowserStore {
    end: ChainWalk,
    last: u64,
    known: HashSet<Digest>,
    tail: usize,
    /// Damage in the tail keeps it from moving: it would be sealed into a block.
    tail_is_sound: bool,
}

impl BrowserStore {
    /// A store of which nothing was read yet.
    pub fn new() -> Self {
        Self {
            end: ChainWalk::START,
            last: 0,
            known: HashSet::new(),
            tail: 0,
            tail_is_sound: true,
        }
    }

    /// One line as it was found.
    fn found(
        &mut self,
        position: u64,
        (text, kept, link): (Option<&str>, Option<Digest>, Option<Chain>),
        damage: &mut Vec<Damage>,
    ) -> Option<Line> {
        let line = Line::from(text.unwrap_or_default());
        let sound = self.end.step(position, line.digest(), kept, link, damage);
        self.last = position;
        if !sound {
            return None;
        }
        self.known.insert(line.digest());
        Some(line)
    }

    /// Takes a block from a row of fields; lines that were read before are passed over.
    fn block(
        &mut self,
        row: &Array,
        at: u32,
        take: &mut dyn FnMut(u64, Line),
        damage: &mut Vec<Damage>,
    ) {
        let (Some(first), Some(last)) = (whole(&row.get(at)), whole(&row.get(at + 1))) else {
            return;
        };
        let text = row.get(at + 2).as_string().unwrap_or_default();
        let digests = bytes(&row.get(at + 3));
        let end_link = digest_in(&row.get(at + 4)).map(Chain);
        let mut digests = digests.chunks(32).map(Digest::from_slice);
        let mut lines = text.split('\n');
        for position in first..=last {
            let (line, digest) = (lines.next(), digests.next().flatten());
            if position <= self.last {
                continue;
            }
            // Only the last link is kept: those before it follow from the digests.
            let link = if position == last {
                end_link
            } else {
                digest.map(|digest| self.end.chain().then(digest))
            };
            if let Some(line) = self.found(position, (line, digest, link), damage) {
                take(position, line);
            }
        }
    }

    /// The lines of the tail with their links, and the position of the first; `None` when they are
    /// not all as they were written.
    async fn tail_as_it_is(&self) -> Result<Option<Vec<(Line, Chain)>>, KeepError> {
        let row = row(device::tail(0.0).await)?;
        let mut all = Vec::new();
        for at in (0..row.length()).step_by(TAIL_FIELDS as usize) {
            let line = Line::from(row.get(at + 1).as_string().unwrap_or_default().as_str());
            let kept = digest_in(&row.get(at + 2));
            let Some(link) = digest_in(&row.get(at + 3)) else {
                return Ok(None);
            };
            if kept != Some(line.digest()) {
                return Ok(None);
            }
            all.push((line, Chain(link)));
        }
        Ok(Some(all))
    }
}

/// Lines with their links as rows of blocks, whole ones only, and of the tail.
fn rows(first: u64, lines: &[(Line, Chain)], in_blocks: bool) -> (Array, Array) {
    let (blocks, tail) = (Array::new(), Array::new());
    let mut position = first;
    let sealed = if in_blocks {
        lines.len() / BLOCK_LINES * BLOCK_LINES
    } else {
        0
    };
    let (for_blocks, for_tail) = lines.split_at(sealed);
    for block in for_blocks.chunks(BLOCK_LINES) {
        let last = position + block.len() as u64 - 1;
        let texts: Vec<&str> = block.iter().map(|(line, _)| line.text()).collect();
        let digests: Vec<u8> = block.iter().flat_map(|(line, _)| line.digest().0).collect();
        blocks.push(&number(position));
        blocks.push(&number(last));
        blocks.push(&JsValue::from_str(&texts.join("\n")));
        blocks.push(&Uint8Array::from(&digests[..]));
        if let Some((_, link)) = block.last() {
            blocks.push(&Uint8Array::from(&link.0.0[..]));
        }
        position = last + 1;
    }
    for (line, link) in for_tail {
        tail.push(&number(position));
        tail.push(&JsValue::from_str(line.text()));
        tail.push(&Uint8Array::from(&line.digest().0[..]));
        tail.push(&Uint8Array::from(&link.0.0[..]));
        position += 1;
    }
    (blocks, tail)
}

#[allow(clippy::cast_precision_loss)] // Positions are far below 2^53.
const fn as_number(position: u64) -> f64 {
    position as f64
}

fn number(position: u64) -> JsValue {
    JsValue::from_f64(as_number(position))
}

#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // Checked here.
fn whole(value: &JsValue) -> Option<u64> {
    value
        .as_f64()
        .filter(|number| *number >= 0.0 && *number <= 2_f64.powi(53))
        .map(|number| number as u64)
}

fn bytes(value: &JsValue) -> Vec<u8> {
    value
        .dyn_ref::<Uint8Array>()
        .map(Uint8Array::to_vec)
        .unwrap_or_default()
}

fn digest_in(value: &JsValue) -> Option<Digest> {
    Digest::from_slice(&bytes(value))
}

fn row(value: Result<JsValue, JsValue>) -> Result<Array, KeepError> {
    value
        .map(JsCast::unchecked_into)
        .map_err(|thrown| KeepError::of(&thrown))
}

impl BrowserStore {
    /// What the browser holds of what was read or written, by the link of the last of those lines: a
    /// number alone would not tell a journal that was cleared and written back in another order.
    pub async fn holds(&self) -> Result<Holds, KeepError> {
        if self.last == 0 {
            return Ok(Holds::All);
        }
        let before = as_number(self.last - 1);
        let tail = row(device::tail(before).await)?;
        if whole(&tail.get(0)) == Some(self.last) {
            return Ok(compared(digest_in(&tail.get(3)), self.end.chain(), &[]));
        }
        let block = row(device::blocks(before, 1).await)?;
        Ok(match whole(&block.get(0)) {
            Some(first) if first <= self.last => {
                let known = usize::try_from(self.last + 1 - first).unwrap_or(usize::MAX);
                let digests = bytes(&block.get(3));
                let behind = digests.get(known.saturating_mul(32)..).unwrap_or_default();
                compared(digest_in(&block.get(4)), self.end.chain(), behind)
            }
            None if tail.length() == 0 => Holds::Less,
            _ => Holds::Other,
        })
    }

    /// True when one of these lines is not among those that were read or written.
    pub fn lacks(&self, lines: &[Line]) -> bool {
        lines
            .iter()
            .any(|line| !self.known.contains(&line.digest()))
    }
}

/// Whether a link that the browser holds follows from the link of the last own line.
///
/// - `kept`: the link; where it is missing, reading tells of the damage
/// - `behind`: the digests of the lines from the last own one to that of the link
fn compared(kept: Option<Digest>, own: Chain, behind: &[u8]) -> Holds {
    let expected = behind
        .chunks(32)
        .filter_map(Digest::from_slice)
        .fold(own, Chain::then);
    match kept {
        Some(kept) if Chain(kept) != expected => Holds::Other,
        _ => Holds::All,
    }
}

impl Store for BrowserStore {
    type Error = KeepError;

    async fn append(&mut self, lines: &[Line]) -> Result<usize, KeepError> {
        let mut fresh = HashSet::new();
        let new: Vec<Line> = lines
            .iter()
            .filter(|line| !self.known.contains(&line.digest()) && fresh.insert(line.digest()))
            .cloned()
            .collect();
        if new.is_empty() {
            return Ok(0);
        }
        let mut chain = self.end.chain();
        let linked = new.iter().map(|line| {
            chain = chain.then(line.digest());
            (line.clone(), chain)
        });
        let linked: Vec<_> = linked.collect();
        // A full tail moves into blocks, before what is new.
        let full = self.tail_is_sound && self.tail + new.len() >= BLOCK_LINES;
        let moved = if full {
            self.tail_as_it_is().await?
        } else {
            None
        };
        let (blocks, tail) = match &moved {
            Some(old) => rows(
                self.last + 1 - old.len() as u64,
                &[&old[..], &linked[..]].concat(),
                true,
            ),
            None => rows(self.last + 1, &linked, false),
        };
        device::write(as_number(self.last), moved.is_some(), &blocks, &tail)
            .await
            .map_err(|thrown| KeepError::of(&thrown))?;
        self.last += new.len() as u64;
        self.end = ChainWalk::behind(self.last, chain);
        let in_tail = (tail.length() / TAIL_FIELDS) as usize;
        self.tail = if moved.is_some() {
            in_tail
        } else {
            self.tail + in_tail
        };
        self.known.extend(fresh);
        Ok(new.len())
    }

    async fn read(
        &mut self,
        behind: u64,
        take: &mut dyn FnMut(Line),
    ) -> Result<ReadThrough, KeepError> {
        if behind != self.last {
            *self = Self::new();
        }
        let take = &mut |position: u64, line: Line| {
            if position > behind {
                take(line);
            }
        };
        let mut damage = Vec::new();
        loop {
            let row = row(device::blocks(as_number(self.last), BLOCKS_AT_ONCE).await)?;
            let count = row.length() / BLOCK_FIELDS;
            if count > 0 {
                self.tail = 0;
                self.tail_is_sound = true;
            }
            for index in 0..count {
                self.block(&row, index * BLOCK_FIELDS, take, &mut damage);
            }
            if count < BLOCKS_AT_ONCE {
                break;
            }
        }
        let row = row(device::tail(as_number(self.last)).await)?;
        for at in (0..row.length()).step_by(TAIL_FIELDS as usize) {
            let Some(position) = whole(&row.get(at)) else {
                continue;
            };
            let text = row.get(at + 1).as_string();
            let kept = digest_in(&row.get(at + 2));
            let link = digest_in(&row.get(at + 3)).map(Chain);
            let before = damage.len();
            self.tail += 1;
            if let Some(line) = self.found(position, (text.as_deref(), kept, link), &mut damage) {
                take(position, line);
            }
            self.tail_is_sound &= damage.len() == before;
        }
        Ok(ReadThrough {
            last: self.last,
            damage,
        })
    }

    async fn fact(&mut self, name: &str) -> Result<Option<String>, KeepError> {
        let fact = device::get("facts", name)
            .await
            .map_err(|thrown| KeepError::of(&thrown))?;
        Ok(fact.as_string())
    }

    async fn set_fact(&mut self, name: &str, value: &str) -> Result<(), KeepError> {
        device::put("facts", name, &JsValue::from_str(value))
            .await
            .map(drop)
            .map_err(|thrown| KeepError::of(&thrown))
    }

    async fn picture(&mut self, digest: Digest) -> Result<Option<Vec<u8>>, KeepError> {
        let picture = device::get("pictures", &digest.to_string())
            .await
            .map_err(|thrown| KeepError::of(&thrown))?;
        Ok(picture.dyn_ref::<Uint8Array>().map(Uint8Array::to_vec))
    }

    async fn keep_picture(&mut self, bytes: &[u8]) -> Result<Digest, KeepError> {
        let digest = Digest::of(bytes);
        device::put("pictures", &digest.to_string(), &Uint8Array::from(bytes))
            .await
            .map(drop)
            .map_err(|thrown| KeepError::of(&thrown))?;
        Ok(digest)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_same_lines_in_another_order_are_another_journal() {
        let [one, two, three] = ["one", "two", "three"].map(|text| Line::from(text).digest());
        let own = Chain::START.then(one).then(two);
        let other = Chain::START.then(two).then(one);
        assert_eq!(compared(Some(own.0), own, &[]), Holds::All);
        assert_eq!(compared(Some(other.0), own, &[]), Holds::Other);
        // Inside a block only the link behind its last line is kept.
        let behind = three.0;
        assert_eq!(compared(Some(own.then(three).0), own, &behind), Holds::All);
        assert_eq!(
            compared(Some(other.then(three).0), own, &behind),
            Holds::Other
        );
        // A missing link is damage, not another journal.
        assert_eq!(compared(None, own, &[]), Holds::All);
    }
}
