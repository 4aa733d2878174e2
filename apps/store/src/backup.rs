//! How is a journal copied so that the copy can be relied on? It is opened and read before it gets
//! its name.

use std::collections::HashSet;
use std::fs;
use std::path::Path;
use std::time::Duration;

use heapwright_journal::store::facts;
use heapwright_journal::{DeviceId, Digest, Line, journal_digest};
use rusqlite::Connection;
use rusqlite::backup::{Backup, StepResult};

use crate::error::{StoreError, Why};
use crate::files::{Existing, Temporary, has_wal, make_folder};
use crate::schema::VERSION_FACT;
use crate::sqlite::Sqlite;

/// What stands in a backup that was made and read back.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BackupReport {
    /// How many lines.
    pub lines: u64,
    /// How many pictures.
    pub pictures: u64,
    /// The digest of the journal.
    pub digest: Digest,
    /// The size of the file [bytes].
    pub bytes: u64,
}

/// What came of restoring.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RestoreReport {
    /// How many lines stand in the backup.
    pub lines: u64,
    /// How many of them were new.
    pub new_lines: u64,
    /// How many pictures stand in the backup.
    pub pictures: u64,
    /// True when a journal was there, which now holds what both held.
    pub joined: bool,
}

impl Sqlite {
    /// Copies the journal, with facts and pictures, to a file that only the keeper may read. The
    /// copy is opened and read before it gets its name; other programs may write meanwhile.
    pub fn backup(&mut self, to: &Path, existing: Existing) -> Result<BackupReport, StoreError> {
        if existing == Existing::Keep && to.exists() {
            return Err(StoreError::new(to, Why::Exists));
        }
        if has_wal(to) {
            // Another program has the old backup open; its WAL would be taken for ours.
            return Err(StoreError::new(to, Why::Busy));
        }
        let source = self.sound_digests()?;
        make_folder(to)?;
        let made = Temporary::for_path(to)?;
        self.copy_pages(&made.path)
            .map_err(|error| match StoreError::sql(&self.path, &error) {
                // Room is missing where the copy is, not where the journal is.
                StoreError { why: Why::Full, .. } => StoreError::new(to, Why::Full),
                error => error,
            })?;
        let mut copy = Sqlite::unfinished(&made)?;
        let report = copy.report()?;
        let copied = copy.sound_digests()?;
        copy.close()?;
        // What was kept while we copied may be there too.
        if !report.is_sound() || !source.iter().all(|digest| copied.contains(digest)) {
            let what = "the copy is not what was copied".to_owned();
            return Err(StoreError::new(to, Why::Other(what)));
        }
        let bytes = fs::metadata(&made.path)
            .map_err(|error| StoreError::io(to, &error))?
            .len();
        made.place(to, existing)?;
        Ok(BackupReport {
            lines: report.lines,
            pictures: report.pictures,
            digest: journal_digest(copied.into_iter().collect()),
            bytes,
        })
    }

    fn copy_pages(&mut self, to: &Path) -> rusqlite::Result<()> {
        let mut copy = Connection::open(to)?;
        // The file is synced when it is finished.
        copy.execute_batch("PRAGMA synchronous = OFF; PRAGMA journal_mode = OFF;")?;
        let Some(connection) = &self.connection else {
            return Err(crate::keep::corrupt("the journal cannot be opened"));
        };
        let backup = Backup::new(connection, &mut copy)?;
        // All at one moment. Another program may be bringing the file up to date just now.
        let mut tries = 0;
        loop {
            match backup.step(-1)? {
                StepResult::Done => break,
                _ if tries < 200 => std::thread::sleep(Duration::from_millis(50)),
                _ => {
                    let busy = rusqlite::ffi::Error::new(rusqlite::ffi::SQLITE_BUSY);
                    return Err(rusqlite::Error::SqliteFailure(busy, None));
                }
            }
            tries += 1;
        }
        drop(backup);
        copy.close().map_err(|(_, error)| error)
    }

    /// The digests of all lines; fails when anything is damaged.
    fn sound_digests(&mut self) -> Result<HashSet<Digest>, StoreError> {
        let mut digests = HashSet::new();
        let through = self.read_now(0, &mut |line: Line| {
            digests.insert(line.digest());
        })?;
        if through.damage.is_empty() {
            Ok(digests)
        } else {
            Err(StoreError::new(&self.path, Why::Damaged))
        }
    }

    /// Takes over the pictures of a damaged file that can be read; the file is not touched. Tells
    /// how many, and which cannot be read.
    pub fn take_pictures(&mut self, damaged: &Path) -> Result<(u64, Vec<Digest>), StoreError> {
        // What SQLite does not open at all may hold lines, but gives no pictures.
        let Ok(mut from) = Sqlite::open_to_read(damaged) else {
            return Ok((0, Vec::new()));
        };
        from.note_damage();
        self.take_over(&mut from, false)
    }

    /// Takes over pictures and, for a new journal, the facts that do not belong to one device.
    /// Tells how many pictures, and which cannot be read.
    pub(crate) fn take_over(
        &mut self,
        from: &mut Sqlite,
        with_facts: bool,
    ) -> Result<(u64, Vec<Digest>), StoreError> {
        if with_facts {
            let facts = match from.facts() {
                Err(error) if error.why == Why::Damaged => Vec::new(),
                facts => facts?,
            };
            for (name, value) in facts {
                if ![facts::DEVICE, VERSION_FACT].contains(&name.as_str()) {
                    self.set_fact_now(&name, &value)?;
                }
            }
        }
        let digests = match from.pictures() {
            Err(error) if error.why == Why::Damaged => Vec::new(),
            digests => digests?,
        };
        let mut taken = 0;
        let mut damaged = Vec::new();
        for digest in digests {
            match from.picture_now(digest) {
                Ok(Some(bytes)) => {
                    self.keep_picture_now(&bytes)?;
                    taken += 1;
                }
                Ok(None) => damaged.push(digest),
                Err(error) if error.why == Why::Damaged => damaged.push(digest),
                Err(error) => return Err(error),
            }
        }
        Ok((taken, damaged))
    }
}

/// Brings back a backup. Where there is no journal, one is made, as that of a new `device`: the old
/// one may be in use elsewhere still. Where there is one, it then holds what both held.
///
/// The backup is read whole first; a damaged one is refused, see [`crate::mend`].
pub fn restore(from: &Path, to: &Path, device: DeviceId) -> Result<RestoreReport, StoreError> {
    let mut backup = Sqlite::open_to_read(from)?;
    if !backup.report()?.is_sound() {
        return Err(StoreError::new(from, Why::Damaged));
    }
    let mut lines = Vec::new();
    backup.read_now(0, &mut |line| lines.push(line))?;
    let joined = to.exists();
    let (new_lines, pictures) = if joined {
        let mut store = Sqlite::open_existing(to)?;
        // Damage shows only in reading, and nothing is written into a damaged journal.
        store.sound_digests()?;
        // Pictures first: lines name them.
        let (pictures, _) = store.take_over(&mut backup, false)?;
        (store.append_now(&lines)?, pictures)
    } else {
        make_folder(to)?;
        let made = Sqlite::make(to, device)?;
        let mut store = Sqlite::unfinished(&made)?;
        let (pictures, _) = store.take_over(&mut backup, true)?;
        let new = store.append_now(&lines)?;
        if !store.report()?.is_sound() {
            let what = "what was written does not read back".to_owned();
            return Err(StoreError::new(to, Why::Other(what)));
        }
        store.close()?;
        made.place(to, Existing::Keep)?;
        (new, pictures)
    };
    Ok(RestoreReport {
        lines: lines.len() as u64,
        new_lines: new_lines as u64,
        pictures,
        joined,
    })
}
