//! A disk that remembers what SQLite wrote, so that every power cut can be tried.
//!
//! [`record`] puts a file system between SQLite and the real one. It hands everything on and notes
//! each write, cut, sync and deletion. From the notes a [`Platter`] tells what may stand on a disk
//! when the power fails at any moment between two of them.

mod platter;
mod recorder;

pub use platter::{Chance, Platter};
pub use recorder::{mark, record};

/// What was done to a file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Change {
    /// Bytes were written.
    Written {
        /// The file's name without its folder.
        file: String,
        /// Where [bytes].
        offset: u64,
        /// What.
        bytes: Vec<u8>,
    },
    /// The file was cut or lengthened.
    Cut {
        /// The file's name without its folder.
        file: String,
        /// To how many bytes.
        length: u64,
    },
    /// All that was written before reached the disk.
    Synced {
        /// The file's name without its folder.
        file: String,
    },
    /// The file was deleted.
    Deleted {
        /// The file's name without its folder.
        file: String,
    },
    /// The writer said that so much is done.
    Mark(u64),
}
