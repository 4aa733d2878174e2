//! The journal on the keeper's own disk: a [`Store`] in SQLite, written so that nothing is lost.
//!
//! - What was called saved is there after a crash or a power cut, and nothing is there by half:
//!   SQLite's WAL with a sync at every commit.
//! - Several programs may write to one journal at once.
//! - A damaged file is never given up: whatever line is sound is read, if need be from the bytes of
//!   the file ([`salvage`]), and a new journal is made of it ([`mend`]).
//! - A backup counts only when it was opened and read ([`Sqlite::backup`]).
//!
//! Nothing here reads a clock or draws at random: the id of a new device is handed in.

#![cfg_attr(test, allow(clippy::unwrap_used))]

mod backup;
mod check;
mod error;
mod files;
mod keep;
mod mend;
mod read;
mod salvage;
mod schema;
mod sqlite;
mod wal;

use std::pin::pin;
use std::task::{Context, Poll, Waker};

use heapwright_journal::store::{ReadThrough, Store};
use heapwright_journal::{Digest, Line};

pub use backup::{BackupReport, RestoreReport, restore};
pub use check::{Report, check};
pub use error::{StoreError, Why};
pub use files::Existing;
pub use mend::{Mended, mend};
pub use salvage::{Found, Salvaged, salvage};
pub use sqlite::Sqlite;

impl Store for Sqlite {
    type Error = StoreError;

    async fn append(&mut self, lines: &[Line]) -> Result<usize, StoreError> {
        self.append_now(lines)
    }

    async fn read(
        &mut self,
        behind: u64,
        take: &mut dyn FnMut(Line),
    ) -> Result<ReadThrough, StoreError> {
        self.read_now(behind, take)
    }

    async fn fact(&mut self, name: &str) -> Result<Option<String>, StoreError> {
        self.fact_now(name)
    }

    async fn set_fact(&mut self, name: &str, value: &str) -> Result<(), StoreError> {
        self.set_fact_now(name, value)
    }

    async fn picture(&mut self, digest: Digest) -> Result<Option<Vec<u8>>, StoreError> {
        self.picture_now(digest)
    }

    async fn keep_picture(&mut self, bytes: &[u8]) -> Result<Digest, StoreError> {
        self.keep_picture_now(bytes)
    }
}

/// Runs a future that waits for nothing, as all of this store are.
pub fn finished<F: Future>(future: F) -> F::Output {
    let mut future = pin!(future);
    let mut context = Context::from_waker(Waker::noop());
    loop {
        if let Poll::Ready(output) = future.as_mut().poll(&mut context) {
            return output;
        }
        std::thread::yield_now();
    }
}

#[cfg(test)]
mod tests;
