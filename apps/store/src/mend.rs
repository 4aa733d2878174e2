//! How is a damaged journal put right? A new one is made of all that is sound; the damaged file
//! stays under another name.

use std::fs;
use std::path::{Path, PathBuf};

use heapwright_journal::{DeviceId, Digest};

use crate::error::{StoreError, Why};
use crate::files::{Existing, Temporary, beside, has_wal, sync_folder, wal};
use crate::sqlite::Sqlite;

/// What came of mending.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Mended {
    /// How many lines stand in the new journal.
    pub lines: u64,
    /// How many are lost, as far as that can be told.
    pub lost: u64,
    /// How many pictures stand in the new journal.
    pub pictures: u64,
    /// The pictures that could not be read.
    pub pictures_lost: Vec<Digest>,
    /// Where the damaged file is now.
    pub damaged: PathBuf,
}

/// Makes a new journal of all that is sound in a damaged one, as that of a new `device`, and puts
/// it in its place. No other program may have it open.
///
/// When this is cut short, the damaged file is in its place still, and it can be done again; what
/// only its WAL held is then in the copy that was put aside.
pub fn mend(path: &Path, device: DeviceId) -> Result<Mended, StoreError> {
    let path = &fs::canonicalize(path).map_err(|error| StoreError::io(path, &error))?;
    let mut old = Sqlite::open_existing(path)?;
    // Reading must not bring a WAL into the file that is to be kept.
    old.note_damage();
    let mut lines = Vec::new();
    old.read_now(0, &mut |line| lines.push(line))?;
    let lost = old.report()?.lost;

    let made = Sqlite::make(path, device)?;
    let mut new = Sqlite::unfinished(&made)?;
    let (pictures, pictures_lost) = new.take_over(&mut old, true)?;
    new.append_now(&lines)?;
    let report = new.report()?;
    if !report.is_sound() || report.lines != lines.len() as u64 {
        let what = "what was written does not read back".to_owned();
        return Err(StoreError::new(path, Why::Other(what)));
    }
    new.close()?;
    old.close()?;
    let damaged = put_aside(path)?;
    made.place(path, Existing::Replace)?;
    Ok(Mended {
        lines: report.lines,
        lost,
        pictures,
        pictures_lost,
        damaged,
    })
}

/// Keeps a damaged file and its WAL under another name. The file itself is still in its place, but
/// its WAL is not: that would be taken for the new file's.
fn put_aside(path: &Path) -> Result<PathBuf, StoreError> {
    let aside = (1..)
        .map(|count| beside(path, &format!(".damaged-{count}")))
        .find(|aside| !aside.exists())
        .unwrap_or_else(|| beside(path, ".damaged"));
    if has_wal(path) {
        copy(&wal(path), &wal(&aside))?;
    }
    copy(path, &aside)?;
    for ending in ["-wal", "-shm"] {
        let file = beside(path, ending);
        match fs::remove_file(&file) {
            Err(error) if error.kind() != std::io::ErrorKind::NotFound => {
                return Err(StoreError::io(&file, &error));
            }
            _ => {}
        }
    }
    sync_folder(path)?;
    Ok(aside)
}

fn copy(from: &Path, to: &Path) -> Result<(), StoreError> {
    let made = Temporary::for_path(to)?;
    let bytes = crate::files::read_what_can_be_read(from)?;
    fs::write(&made.path, bytes).map_err(|error| StoreError::io(to, &error))?;
    made.place(to, Existing::Keep)
}
