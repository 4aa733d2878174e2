//! What stands on the disk when the power fails?
//!
//! What was synced is there. Of what was written since, each write may be there, may not be there,
//! or in part: disks write sectors, in any order. Bytes beside a write do not suffer, which is what
//! SQLite counts on too (`SQLITE_IOCAP_POWERSAFE_OVERWRITE`).

use std::collections::BTreeMap;

use crate::Change;

/// What a disk writes at once [bytes].
const SECTOR_BYTES: usize = 512;

/// Chance from a seed (the generator SplitMix64 of Steele, Lea and Flood, 2014).
#[derive(Clone, Debug)]
pub struct Chance(pub u64);

impl Chance {
    /// The next 64 bits.
    pub fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut bits = self.0;
        bits = (bits ^ (bits >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        bits = (bits ^ (bits >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        bits ^ (bits >> 31)
    }

    /// A number below a bound above zero.
    pub fn below(&mut self, bound: usize) -> usize {
        usize::try_from(self.bits() % bound as u64).unwrap_or(0)
    }
}

/// What is on its way to the disk.
#[derive(Clone, Debug)]
enum Pending {
    Write { offset: usize, bytes: Vec<u8> },
    Cut { length: usize },
    Deletion,
}

/// A file: what is on the disk for good, and what is on its way.
#[derive(Clone, Debug, Default)]
struct Kept {
    /// `None` while the file is not there.
    there: Option<Vec<u8>>,
    pending: Vec<Pending>,
}

/// A disk and what is on its way to it.
#[derive(Clone, Debug, Default)]
pub struct Platter {
    files: BTreeMap<String, Kept>,
}

fn write(file: &mut Option<Vec<u8>>, offset: usize, bytes: &[u8]) {
    let there = file.get_or_insert_default();
    let end = offset + bytes.len();
    if there.len() < end {
        there.resize(end, 0);
    }
    there[offset..end].copy_from_slice(bytes);
}

fn settle(file: &mut Option<Vec<u8>>, pending: &Pending) {
    match pending {
        Pending::Write { offset, bytes } => write(file, *offset, bytes),
        Pending::Cut { length } => file.get_or_insert_default().resize(*length, 0),
        Pending::Deletion => *file = None,
    }
}

impl Kept {
    fn settle(&mut self) {
        for pending in std::mem::take(&mut self.pending) {
            settle(&mut self.there, &pending);
        }
    }

    /// A file of the same name that is made anew comes after the deletion of the old one.
    fn push(&mut self, pending: Pending) {
        if matches!(self.pending.last(), Some(Pending::Deletion)) {
            self.settle();
        }
        self.pending.push(pending);
    }
}

impl Platter {
    /// A disk on which files stand for good.
    #[must_use]
    pub fn of(files: impl IntoIterator<Item = (String, Vec<u8>)>) -> Self {
        let kept = |there| Kept {
            there: Some(there),
            pending: Vec::new(),
        };
        Self {
            files: files
                .into_iter()
                .map(|(name, bytes)| (name, kept(bytes)))
                .collect(),
        }
    }

    /// Takes the next change.
    pub fn take(&mut self, change: &Change) {
        let size = |bytes: u64| usize::try_from(bytes).unwrap_or(usize::MAX);
        match change {
            Change::Written {
                file,
                offset,
                bytes,
            } => {
                self.file(file).push(Pending::Write {
                    offset: size(*offset),
                    bytes: bytes.clone(),
                });
            }
            Change::Cut { file, length } => {
                let length = size(*length);
                self.file(file).push(Pending::Cut { length });
            }
            Change::Synced { file } => self.file(file).settle(),
            Change::Deleted { file } => self.file(file).push(Pending::Deletion),
            Change::Mark(_) => {}
        }
    }

    fn file(&mut self, name: &str) -> &mut Kept {
        self.files.entry(name.to_owned()).or_default()
    }

    /// True when nothing is on its way.
    #[must_use]
    pub fn is_settled(&self) -> bool {
        self.files.values().all(|file| file.pending.is_empty())
    }

    /// The files when nothing that was on its way arrives.
    #[must_use]
    pub fn nothing_arrives(&self) -> BTreeMap<String, Vec<u8>> {
        self.arrives(|_, _| {})
    }

    /// The files when all that was on its way arrives.
    #[must_use]
    pub fn all_arrives(&self) -> BTreeMap<String, Vec<u8>> {
        self.arrives(settle)
    }

    /// The files when chance says what arrives, what does not and what does in part.
    #[must_use]
    pub fn some_arrives(&self, chance: &mut Chance) -> BTreeMap<String, Vec<u8>> {
        self.arrives(|file, pending| match (chance.below(4), pending) {
            (0, _) => {}
            (1, Pending::Write { offset, bytes }) => {
                // Up to some byte, as when a process is stopped.
                let end = chance.below(bytes.len() + 1);
                write(file, *offset, &bytes[..end]);
            }
            (2, Pending::Write { offset, bytes }) => {
                // Some sectors of it, counted from the start of the file.
                let mut start = 0;
                while start < bytes.len() {
                    let to_next = SECTOR_BYTES - (offset + start) % SECTOR_BYTES;
                    let end = (start + to_next).min(bytes.len());
                    if chance.bits() & 1 == 0 {
                        write(file, offset + start, &bytes[start..end]);
                    }
                    start = end;
                }
            }
            (_, pending) => settle(file, pending),
        })
    }

    fn arrives(
        &self,
        mut one: impl FnMut(&mut Option<Vec<u8>>, &Pending),
    ) -> BTreeMap<String, Vec<u8>> {
        self.files
            .iter()
            .filter_map(|(name, kept)| {
                let mut file = kept.there.clone();
                for pending in &kept.pending {
                    one(&mut file, pending);
                }
                Some((name.clone(), file?))
            })
            .collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn written(offset: u64, bytes: &[u8]) -> Change {
        Change::Written {
            file: "a".to_owned(),
            offset,
            bytes: bytes.to_vec(),
        }
    }

    #[test]
    fn what_is_synced_is_there_and_the_rest_may_be() {
        let mut platter = Platter::default();
        platter.take(&written(0, b"one"));
        assert!(platter.nothing_arrives().is_empty() && !platter.is_settled());
        let file = "a".to_owned();
        platter.take(&Change::Synced { file: file.clone() });
        assert!(platter.is_settled());
        platter.take(&written(3, b"two"));
        assert_eq!(platter.nothing_arrives()["a"], b"one");
        assert_eq!(platter.all_arrives()["a"], b"onetwo");
        let mut chance = Chance(1);
        let lengths: std::collections::BTreeSet<usize> = (0..100)
            .map(|_| platter.some_arrives(&mut chance)["a"].len())
            .collect();
        assert_eq!(lengths, (3..=6).collect());
        platter.take(&Change::Deleted { file });
        assert!(platter.all_arrives().is_empty());
        platter.take(&written(0, b"new"));
        assert!(platter.nothing_arrives().is_empty());
        assert_eq!(platter.all_arrives()["a"], b"new");
    }
}
