//! The store that is in use: the browser's, or that of the demo garden.

use heapwright_journal::store::{ReadThrough, Store};
use heapwright_journal::{Digest, Line};

use super::browser::BrowserStore;
use super::fault::KeepError;
use super::memory::MemoryStore;

/// What a store holds of what was read from it or written to it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Holds {
    /// All of it.
    All,
    /// The browser has cleared it since.
    Less,
    /// As many lines or more, but others: it was cleared, and another tab has written since.
    Other,
}

/// One of two stores.
#[derive(Debug)]
pub enum Kept {
    /// On this device.
    Browser(BrowserStore),
    /// In memory only.
    Memory(MemoryStore),
}

impl Kept {
    /// The store on this device, of which nothing was read yet.
    pub fn on_the_device() -> Self {
        Self::Browser(BrowserStore::new())
    }

    /// What it holds of what was read or written.
    pub async fn holds(&self) -> Result<Holds, KeepError> {
        match self {
            Self::Browser(store) => store.holds().await,
            Self::Memory(_) => Ok(Holds::All),
        }
    }

    /// True when it was read without one of these lines.
    pub fn lacks(&self, lines: &[Line]) -> bool {
        match self {
            Self::Browser(store) => store.lacks(lines),
            Self::Memory(_) => false,
        }
    }
}

macro_rules! either {
    ($kept:expr, $store:ident => $work:expr) => {
        match $kept {
            Kept::Browser($store) => $work,
            Kept::Memory($store) => $work.map_err(|never| match never {}),
        }
    };
}

impl Store for Kept {
    type Error = KeepError;

    async fn append(&mut self, lines: &[Line]) -> Result<usize, KeepError> {
        either!(self, store => store.append(lines).await)
    }

    async fn read(
        &mut self,
        behind: u64,
        take: &mut dyn FnMut(Line),
    ) -> Result<ReadThrough, KeepError> {
        either!(self, store => store.read(behind, take).await)
    }

    async fn fact(&mut self, name: &str) -> Result<Option<String>, KeepError> {
        either!(self, store => store.fact(name).await)
    }

    async fn set_fact(&mut self, name: &str, value: &str) -> Result<(), KeepError> {
        either!(self, store => store.set_fact(name, value).await)
    }

    async fn picture(&mut self, digest: Digest) -> Result<Option<Vec<u8>>, KeepError> {
        either!(self, store => store.picture(digest).await)
    }

    async fn keep_picture(&mut self, bytes: &[u8]) -> Result<Digest, KeepError> {
        either!(self, store => store.keep_picture(bytes).await)
    }
}
