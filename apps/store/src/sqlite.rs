//! An open store: how it is made, opened and found to be damaged.

use std::fs;
use std::io::Read;
use std::path::{Path, PathBuf};
use std::time::Duration;

use heapwright_journal::DeviceId;
use heapwright_journal::store::facts;
use rusqlite::config::DbConfig;
use rusqlite::{Connection, OpenFlags, OptionalExtension, TransactionBehavior};

use crate::error::{StoreError, Why};
use crate::files::{
    Existing, Temporary, has_wal, make_folder, read_what_can_be_read, wal as wal_of,
};
use crate::keep::{keep_fact, sound_fact};
use crate::salvage::{salvage, salvage_wal};
use crate::schema::{self, HEAD_BYTES, Head, VERSION_FACT};
use crate::wal::was_changed;

/// How long to wait for another program that writes.
const WAIT: Duration = Duration::from_secs(10);

/// A journal in a file.
#[derive(Debug)]
pub struct Sqlite {
    pub(crate) path: PathBuf,
    /// `None` when SQLite can make nothing of the file.
    pub(crate) connection: Option<Connection>,
    pub(crate) damaged: bool,
}

impl Sqlite {
    /// Opens the journal in a file, and makes it when there is none: then `device` is asked for a
    /// new id. A folder that is not there is made too. What is new is for the keeper alone to read.
    ///
    /// A damaged journal is opened for reading; see [`Sqlite::is_damaged`].
    pub fn open(path: &Path, device: impl FnOnce() -> DeviceId) -> Result<Self, StoreError> {
        if is_missing(path) {
            make_folder(path)?;
            let made = Self::make(path, device())?;
            match made.place(path, Existing::Keep) {
                // Another program was quicker: its journal it is.
                Err(StoreError {
                    why: Why::Exists, ..
                }) => {}
                done => done?,
            }
        }
        Self::open_existing(path)
    }

    /// Opens the journal in a file that is there.
    pub fn open_existing(path: &Path) -> Result<Self, StoreError> {
        match look(path)? {
            Look::Sound => {}
            Look::Damaged => return Ok(Self::damaged(path)),
        }
        match connect(path) {
            Ok(connection) => Ok(Self {
                path: path.to_owned(),
                connection: Some(connection),
                damaged: false,
            }),
            Err(StoreError {
                why: Why::Damaged, ..
            }) => Ok(Self::damaged(path)),
            Err(error) => Err(error),
        }
    }

    /// Opens a journal for reading, be it on a disk that takes no changes.
    pub fn open_to_read(path: &Path) -> Result<Self, StoreError> {
        let refused = match Self::open_existing(path) {
            Err(error) if matches!(error.why, Why::ReadOnly | Why::NoPermission) => error,
            opened => return opened,
        };
        // Without a WAL the file is all there is, and nobody writes to it.
        if has_wal(path) {
            return Err(refused);
        }
        let flags = OpenFlags::SQLITE_OPEN_READ_ONLY
            | OpenFlags::SQLITE_OPEN_NO_MUTEX
            | OpenFlags::SQLITE_OPEN_URI;
        let connection =
            Connection::open_with_flags(immutable(path), flags).map_err(|_| refused)?;
        schema::set_up(&connection, false).map_err(|error| StoreError::sql(path, &error))?;
        Ok(Self {
            path: path.to_owned(),
            connection: Some(connection),
            damaged: false,
        })
    }

    fn damaged(path: &Path) -> Self {
        Self {
            path: path.to_owned(),
            connection: None,
            damaged: true,
        }
    }

    /// A new journal with no line, which is not yet in its place.
    pub(crate) fn make(path: &Path, device: DeviceId) -> Result<Temporary, StoreError> {
        let made = Temporary::for_path(path)?;
        let fail = |error: rusqlite::Error| StoreError::sql(path, &error);
        let mut connection = Connection::open(&made.path).map_err(fail)?;
        schema::set_up(&connection, false).map_err(fail)?;
        schema::make(&connection).map_err(fail)?;
        let transaction = connection.transaction().map_err(fail)?;
        for (name, value) in [
            (VERSION_FACT, schema::VERSION.to_string()),
            (facts::DEVICE, device.to_string()),
        ] {
            keep_fact(&transaction, name, &value).map_err(fail)?;
        }
        transaction.commit().map_err(fail)?;
        use_wal(&connection).map_err(fail)?;
        connection.close().map_err(|(_, error)| fail(error))?;
        Ok(made)
    }

    /// A file that is being made, to be filled before it is put in its place.
    pub(crate) fn unfinished(made: &Temporary) -> Result<Self, StoreError> {
        let connection = connect(&made.path)?;
        schema::set_up(&connection, false).map_err(|error| StoreError::sql(&made.path, &error))?;
        Ok(Self {
            path: made.path.clone(),
            connection: Some(connection),
            damaged: false,
        })
    }

    /// Closes the file; what was written since it was brought up to date is brought into it.
    pub(crate) fn close(self) -> Result<(), StoreError> {
        match self.connection.map(Connection::close) {
            Some(Err((_, error))) => Err(StoreError::sql(&self.path, &error)),
            _ => Ok(()),
        }
    }

    /// The file.
    #[must_use]
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// True when something in it was found to be other than it was written. What is sound can be
    /// read; nothing is written. Damage of single lines shows only when they are read.
    #[must_use]
    pub const fn is_damaged(&self) -> bool {
        self.damaged
    }

    /// The device that writes here.
    pub fn device(&self) -> Result<DeviceId, StoreError> {
        let damaged = || StoreError::new(&self.path, Why::Damaged);
        let connection = self.connection.as_ref().ok_or_else(damaged)?;
        sound_fact(connection, facts::DEVICE)
            .map_err(|error| StoreError::sql(&self.path, &error))?
            .and_then(|device| device.parse().ok())
            .ok_or_else(damaged)
    }

    /// Notes that the file is damaged, and leaves it as it is from now on.
    pub(crate) fn note_damage(&mut self) {
        self.damaged = true;
        if let Some(connection) = &self.connection {
            leave_as_it_is(connection);
        }
    }

    /// The connection, for changes.
    pub(crate) fn writable(&mut self) -> Result<&mut Connection, StoreError> {
        match &mut self.connection {
            Some(connection) if !self.damaged => Ok(connection),
            _ => Err(StoreError::new(&self.path, Why::Damaged)),
        }
    }

    /// What SQLite's error means; damage is noted.
    pub(crate) fn failed(&mut self, error: &rusqlite::Error) -> StoreError {
        let error = StoreError::sql(&self.path, error);
        if error.why == Why::Damaged {
            self.note_damage();
        }
        error
    }
}

fn is_missing(path: &Path) -> bool {
    fs::symlink_metadata(path).is_err_and(|error| error.kind() == std::io::ErrorKind::NotFound)
}

/// Closing the last connection would bring the WAL into the file and delete it.
fn leave_as_it_is(connection: &Connection) {
    // Only fails for options that SQLite does not know.
    let _ = connection.set_db_config(DbConfig::SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, true);
}

/// The address of a file that nobody changes, for SQLite.
fn immutable(path: &Path) -> String {
    let mut address = "file:".to_owned();
    for byte in path.as_os_str().as_encoded_bytes() {
        if byte.is_ascii_alphanumeric() || b"/._-:".contains(byte) {
            address.push(char::from(*byte));
        } else {
            address.push_str(&format!("%{byte:02x}"));
        }
    }
    address.push_str("?immutable=1");
    address
}

/// Puts the file into the mode in which readers and a writer do not wait for each other.
fn use_wal(connection: &Connection) -> rusqlite::Result<()> {
    let mode: String = connection.query_row("PRAGMA journal_mode = WAL", [], |row| row.get(0))?;
    if mode == "wal" {
        return Ok(());
    }
    Err(rusqlite::Error::SqliteFailure(
        rusqlite::ffi::Error::new(rusqlite::ffi::SQLITE_IOERR),
        Some("this disk cannot share memory between programs".to_owned()),
    ))
}

fn open_plainly(path: &Path) -> Result<Connection, StoreError> {
    let flags = OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let fail = |error: rusqlite::Error| StoreError::sql(path, &error);
    let connection = Connection::open_with_flags(path, flags).map_err(fail)?;
    connection.busy_timeout(WAIT).map_err(fail)?;
    if connection.is_readonly("main").map_err(fail)? {
        return Err(StoreError::new(path, Why::ReadOnly));
    }
    Ok(connection)
}

fn connect(path: &Path) -> Result<Connection, StoreError> {
    let fail = |error: rusqlite::Error| StoreError::sql(path, &error);
    let connection = open_plainly(path)?;
    // Until the device's id was read, the file is not known to be sound.
    leave_as_it_is(&connection);
    use_wal(&connection).map_err(fail)?;
    schema::set_up(&connection, true).map_err(fail)?;
    let device = sound_fact(&connection, facts::DEVICE).map_err(fail)?;
    if device.is_none() {
        return Err(StoreError::new(path, Why::Damaged));
    }
    connection
        .set_db_config(DbConfig::SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, false)
        .map_err(fail)?;
    Ok(connection)
}

enum Look {
    Sound,
    Damaged,
}

/// Looks at a file before SQLite does.
fn look(path: &Path) -> Result<Look, StoreError> {
    let fail = |error: std::io::Error| StoreError::io(path, &error);
    let file = fs::File::open(path).map_err(fail)?;
    if file.metadata().map_err(fail)?.is_dir() {
        return Err(StoreError::new(path, Why::Folder));
    }
    let mut bytes = Vec::new();
    // A disk that does not give the start of the file is a damage, not a reason to give up.
    let _ = file.take(HEAD_BYTES as u64).read_to_end(&mut bytes);
    match schema::head(&bytes) {
        Head::Sound if !lost_in_wal(path)? => Ok(Look::Sound),
        Head::Sound | Head::Broken => Ok(Look::Damaged),
        // Files come to their place whole, so an empty one was emptied.
        Head::Foreign if bytes.is_empty() => Ok(Look::Damaged),
        Head::OtherVersion(version) => match version_said_by_fact(path) {
            Some(said) if said != version => Ok(Look::Damaged),
            _ if version < schema::VERSION => Ok(Look::Damaged),
            _ => Err(StoreError::new(path, Why::Newer(version))),
        },
        Head::Foreign if salvage(path)?.lines.is_empty() => {
            Err(StoreError::new(path, Why::NotAJournal))
        }
        Head::Foreign => Ok(Look::Damaged),
    }
}

fn version_said_by_fact(path: &Path) -> Option<u32> {
    let connection = open_plainly(path).ok()?;
    leave_as_it_is(&connection);
    let version = sound_fact(&connection, VERSION_FACT).ok()??;
    version.parse().ok()
}

/// True when the WAL holds a line that SQLite would drop, though it was kept.
fn lost_in_wal(path: &Path) -> Result<bool, StoreError> {
    let suspicious = || -> Result<Option<Vec<u8>>, StoreError> {
        if !has_wal(path) {
            return Ok(None);
        }
        match read_what_can_be_read(&wal_of(path)) {
            Ok(wal) => Ok(was_changed(&wal).then_some(wal)),
            // Another program closed the journal in between.
            Err(StoreError {
                why: Why::NotFound, ..
            }) => Ok(None),
            Err(error) => Err(error),
        }
    };
    if suspicious()?.is_none() {
        return Ok(false);
    }
    // Nobody writes while this is open, so that it is no frame that is only now being written.
    let sound = |error: rusqlite::Error| StoreError::sql(path, &error);
    let mut connection = open_plainly(path)?;
    leave_as_it_is(&connection);
    let mut still = || -> rusqlite::Result<Result<bool, StoreError>> {
        let transaction = connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
        let wal = match suspicious() {
            Ok(Some(wal)) => wal,
            Ok(None) => return Ok(Ok(false)),
            Err(error) => return Ok(Err(error)),
        };
        let mut is_kept = transaction.prepare("SELECT 1 FROM events WHERE digest = ?1")?;
        for found in salvage_wal(&wal).lines {
            let kept = is_kept
                .query_row([found.line.digest().0], |_| Ok(()))
                .optional()?;
            if kept.is_none() {
                return Ok(Ok(true));
            }
        }
        Ok(Ok(false))
    };
    match still().map_err(sound) {
        Ok(still) => still,
        Err(StoreError {
            why: Why::Damaged, ..
        }) => Ok(true),
        Err(error) => Err(error),
    }
}
