//! How does a file come to its place? Whole, under a name of its own, then by one step.

use std::ffi::OsString;
use std::fs::{self, DirBuilder, File, OpenOptions};
use std::io::{self, Read, Seek, SeekFrom};
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicU32, Ordering};

use crate::error::{StoreError, Why};

/// What becomes of a file that is in the way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Existing {
    /// It stays, and the new one is refused.
    Keep,
    /// It is replaced.
    Replace,
}

/// The path with something added to the file's name, as SQLite names what it keeps beside a file.
pub(crate) fn beside(path: &Path, ending: &str) -> PathBuf {
    let mut name = OsString::from(path);
    name.push(ending);
    name.into()
}

/// What was written since the file itself was last brought up to date.
pub(crate) fn wal(path: &Path) -> PathBuf {
    beside(path, "-wal")
}

/// True when there is a WAL with something in it.
pub(crate) fn has_wal(path: &Path) -> bool {
    fs::metadata(wal(path)).is_ok_and(|wal| wal.len() > 0)
}

fn folder(path: &Path) -> &Path {
    match path.parent() {
        Some(folder) if folder != Path::new("") => folder,
        _ => Path::new("."),
    }
}

/// Makes sure of the folder of a file; new folders are the keeper's alone.
pub(crate) fn make_folder(path: &Path) -> Result<(), StoreError> {
    let folder = folder(path);
    let missing: Vec<&Path> = folder
        .ancestors()
        .take_while(|ancestor| *ancestor != Path::new("") && !ancestor.exists())
        .collect();
    if missing.is_empty() {
        return Ok(());
    }
    let mut builder = DirBuilder::new();
    builder.recursive(true);
    #[cfg(unix)]
    std::os::unix::fs::DirBuilderExt::mode(&mut builder, 0o700);
    builder
        .create(folder)
        .map_err(|error| StoreError::io(folder, &error))?;
    missing.into_iter().try_for_each(sync_folder)
}

/// Makes names in the folder of this path last.
pub(crate) fn sync_folder(path: &Path) -> Result<(), StoreError> {
    // Elsewhere folders cannot be opened, and need not be.
    if cfg!(unix) {
        let folder = folder(path);
        File::open(folder)
            .and_then(|opened| opened.sync_all())
            .map_err(|error| StoreError::io(folder, &error))?;
    }
    Ok(())
}

/// A file that is being made, in the folder where it belongs. It goes when it is not placed.
pub(crate) struct Temporary {
    pub(crate) path: PathBuf,
}

impl Temporary {
    /// An empty file for a path, which the keeper alone may read.
    pub(crate) fn for_path(path: &Path) -> Result<Self, StoreError> {
        static COUNT: AtomicU32 = AtomicU32::new(0);
        if path.is_dir() {
            return Err(StoreError::new(path, Why::Folder));
        }
        let Some(name) = path.file_name() else {
            return Err(StoreError::new(path, Why::NotFound));
        };
        let mut hidden = OsString::from(".");
        hidden.push(name);
        let count = COUNT.fetch_add(1, Ordering::Relaxed);
        hidden.push(format!(".{}-{count}.new", std::process::id()));
        let made = folder(path).join(hidden);
        let mut options = OpenOptions::new();
        options.write(true).create(true).truncate(true);
        #[cfg(unix)]
        std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
        options
            .open(&made)
            .map_err(|error| StoreError::io(path, &error))?;
        Ok(Self { path: made })
    }

    /// Brings the finished file to its place, for good.
    pub(crate) fn place(self, to: &Path, existing: Existing) -> Result<(), StoreError> {
        let fail = |error: io::Error| StoreError::io(to, &error);
        OpenOptions::new()
            .write(true)
            .open(&self.path)
            .and_then(|file| file.sync_all())
            .map_err(fail)?;
        match existing {
            Existing::Replace => fs::rename(&self.path, to).map_err(fail)?,
            // A second name is refused where there is one, which renaming is not.
            Existing::Keep => match fs::hard_link(&self.path, to) {
                Ok(()) => {}
                Err(error) if error.kind() == io::ErrorKind::AlreadyExists => {
                    return Err(fail(error));
                }
                Err(_) if to.exists() => return Err(StoreError::new(to, Why::Exists)),
                // Some disks know no second names.
                Err(_) => fs::rename(&self.path, to).map_err(fail)?,
            },
        }
        sync_folder(to)
    }
}

impl Drop for Temporary {
    fn drop(&mut self) {
        for ending in ["", "-wal", "-shm", "-journal"] {
            // Nothing is lost with it, and most of these are not there.
            let _ = fs::remove_file(beside(&self.path, ending));
        }
    }
}

/// How much is read at once [bytes].
const BLOCK_BYTES: usize = 16 << 10;

/// Reads a file as far as the disk still gives it: zeros stand for what it does not.
pub(crate) fn read_what_can_be_read(path: &Path) -> Result<Vec<u8>, StoreError> {
    let fail = |error: io::Error| StoreError::io(path, &error);
    let mut file = File::open(path).map_err(fail)?;
    let length = usize::try_from(file.metadata().map_err(fail)?.len()).unwrap_or(usize::MAX);
    let mut bytes = Vec::new();
    bytes
        .try_reserve_exact(length)
        .map_err(|error| StoreError::new(path, Why::Other(error.to_string())))?;
    bytes.resize(length, 0);
    for (index, block) in bytes.chunks_mut(BLOCK_BYTES).enumerate() {
        let offset = (index * BLOCK_BYTES) as u64;
        let read = file
            .seek(SeekFrom::Start(offset))
            .and_then(|_| file.read_exact(block));
        if read.is_err() {
            // Half a block is no better than none, and may be anything.
            block.fill(0);
        }
    }
    Ok(bytes)
}
