//! A store that lasts as long as the page is open: for the invented demo garden.

use std::collections::{BTreeMap, HashSet};
use std::convert::Infallible;

use heapwright_journal::store::{ReadThrough, Store};
use heapwright_journal::{Digest, Line};

/// Lines, facts and pictures in memory.
#[derive(Debug, Default)]
pub struct MemoryStore {
    lines: Vec<Line>,
    known: HashSet<Digest>,
    facts: BTreeMap<String, String>,
    pictures: BTreeMap<Digest, Vec<u8>>,
}

impl Store for MemoryStore {
    type Error = Infallible;

    async fn append(&mut self, lines: &[Line]) -> Result<usize, Infallible> {
        let before = self.lines.len();
        for line in lines {
            if self.known.insert(line.digest()) {
                self.lines.push(line.clone());
            }
        }
        Ok(self.lines.len() - before)
    }

    async fn read(
        &mut self,
        behind: u64,
        take: &mut dyn FnMut(Line),
    ) -> Result<ReadThrough, Infallible> {
        let behind = usize::try_from(behind).unwrap_or(usize::MAX);
        self.lines.iter().skip(behind).cloned().for_each(take);
        Ok(ReadThrough {
            last: self.lines.len() as u64,
            damage: Vec::new(),
        })
    }

    async fn fact(&mut self, name: &str) -> Result<Option<String>, Infallible> {
        Ok(self.facts.get(name).cloned())
    }

    async fn set_fact(&mut self, name: &str, value: &str) -> Result<(), Infallible> {
        self.facts.insert(name.to_owned(), value.to_owned());
        Ok(())
    }

    async fn picture(&mut self, digest: Digest) -> Result<Option<Vec<u8>>, Infallible> {
        Ok(self.pictures.get(&digest).cloned())
    }

    async fn keep_picture(&mut self, bytes: &[u8]) -> Result<Digest, Infallible> {
        let digest = Digest::of(bytes);
        self.pictures.insert(digest, bytes.to_vec());
        Ok(digest)
    }
}
