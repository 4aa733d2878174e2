//! Why could the journal not be opened, read or written? One sentence each, which says what to do.

use std::fmt;
use std::io;
use std::path::{Path, PathBuf};

use rusqlite::{Error as Sql, ErrorCode, ffi};

/// Why something could not be done with a store.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StoreError {
    /// Which file.
    pub path: PathBuf,
    /// What stood in the way.
    pub why: Why,
}

/// What stood in the way.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Why {
    /// There is no such file.
    NotFound,
    /// The path leads to a folder.
    Folder,
    /// This user may not read or write there.
    NoPermission,
    /// The file, its folder or the disk takes no changes.
    ReadOnly,
    /// The disk is full.
    Full,
    /// Another program keeps it too long.
    Busy,
    /// The file was made by something else.
    NotAJournal,
    /// A newer program made it, in this version of the store.
    Newer(u32),
    /// Something in it is not as it was written.
    Damaged,
    /// There is a file where a new one was to be made.
    Exists,
    /// Anything else, in the words of the system or of SQLite.
    Other(String),
}

impl fmt::Display for StoreError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let path = self.path.display();
        match &self.why {
            Why::NotFound => write!(f, "{path} does not exist: check how it is written."),
            Why::Folder => write!(f, "{path} is a folder: name a file in it."),
            Why::NoPermission => write!(
                f,
                "You may not read or write {path}: ask its owner, or choose another place."
            ),
            Why::ReadOnly => write!(
                f,
                "{path} cannot be changed, because it or its folder is read-only: allow writing \
                 there, or choose another place."
            ),
            Why::Full => write!(
                f,
                "The disk of {path} is full, and nothing of this was kept: make room and do it again."
            ),
            Why::Busy => write!(
                f,
                "Another program holds {path} for too long: close it and try again."
            ),
            Why::NotAJournal => write!(
                f,
                "{path} is no journal of Heapwright: name the right file, or a new one."
            ),
            Why::Newer(version) => write!(
                f,
                "{path} was made by a newer Heapwright (store version {version}): install that one \
                 to open it."
            ),
            Why::Damaged => write!(
                f,
                "{path} is damaged and is not written to: see with `heapwright check` what can be \
                 read, then put it right with `heapwright restore`."
            ),
            Why::Exists => write!(
                f,
                "{path} exists already: choose another name, or say that it may be replaced."
            ),
            Why::Other(what) => write!(
                f,
                "{path} could not be used ({what}): check the disk, then try again."
            ),
        }
    }
}

impl std::error::Error for StoreError {}

impl StoreError {
    pub(crate) fn new(path: &Path, why: Why) -> Self {
        Self {
            path: path.to_owned(),
            why,
        }
    }

    pub(crate) fn io(path: &Path, error: &io::Error) -> Self {
        let why = match error.kind() {
            io::ErrorKind::NotFound => Why::NotFound,
            io::ErrorKind::PermissionDenied => Why::NoPermission,
            io::ErrorKind::ReadOnlyFilesystem => Why::ReadOnly,
            io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded => Why::Full,
            io::ErrorKind::IsADirectory => Why::Folder,
            io::ErrorKind::AlreadyExists => Why::Exists,
            _ => Why::Other(error.to_string()),
        };
        Self::new(path, why)
    }

    pub(crate) fn sql(path: &Path, error: &Sql) -> Self {
        if is_damage(error) {
            return Self::new(path, Why::Damaged);
        }
        let Sql::SqliteFailure(failure, _) = error else {
            return Self::new(path, Why::Other(error.to_string()));
        };
        let why = match failure.code {
            ErrorCode::DiskFull => Why::Full,
            // The file in shared memory finds no room.
            ErrorCode::SystemIoFailure if failure.extended_code == ffi::SQLITE_IOERR_SHMSIZE => {
                Why::Full
            }
            ErrorCode::DatabaseBusy | ErrorCode::DatabaseLocked => Why::Busy,
            ErrorCode::ReadOnly => Why::ReadOnly,
            ErrorCode::PermissionDenied => Why::NoPermission,
            ErrorCode::CannotOpen => return Self::not_opened(path),
            _ => Why::Other(error.to_string()),
        };
        Self::new(path, why)
    }

    /// SQLite does not tell why it could not open a file, so the system is asked.
    fn not_opened(path: &Path) -> Self {
        match std::fs::OpenOptions::new().append(true).open(path) {
            Err(error) => Self::io(path, &error),
            // The file is fine; those that belong beside it cannot be made.
            Ok(_) => Self::new(path, Why::ReadOnly),
        }
    }
}

/// True when SQLite finds its file other than it must be. That includes tables and columns that are
/// not there: every statement of ours fits a sound store.
pub(crate) fn is_damage(error: &Sql) -> bool {
    match error {
        Sql::SqliteFailure(failure, _) => match failure.code {
            ErrorCode::DatabaseCorrupt | ErrorCode::NotADatabase | ErrorCode::Unknown => true,
            ErrorCode::SystemIoFailure => [
                ffi::SQLITE_IOERR_READ,
                ffi::SQLITE_IOERR_SHORT_READ,
                ffi::SQLITE_IOERR_CORRUPTFS,
                ffi::SQLITE_IOERR_DATA,
            ]
            .contains(&failure.extended_code),
            _ => false,
        },
        Sql::SqlInputError { .. }
        | Sql::InvalidColumnType(..)
        | Sql::InvalidColumnName(_)
        | Sql::InvalidColumnIndex(_)
        | Sql::FromSqlConversionFailure(..)
        | Sql::IntegralValueOutOfRange(..)
        | Sql::Utf8Error(..)
        | Sql::QueryReturnedNoRows => true,
        _ => false,
    }
}
