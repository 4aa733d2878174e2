//! How is SQLite listened to? With a file system of its own that hands everything on.
//!
//! SQLite's own file system opens the file; then the table of functions that the file carries is
//! exchanged for a copy in which writing, cutting, syncing and closing are ours. Ours call the old
//! ones and note what they did. Locks and shared memory are handed on untouched.

use std::collections::HashMap;
use std::ffi::{CStr, c_char, c_int, c_void};
use std::sync::{Mutex, MutexGuard, OnceLock, PoisonError};

use rusqlite::ffi;

use crate::Change;

/// An open file: its name and the functions that SQLite's own file system gave it.
struct Open {
    name: String,
    own: &'static ffi::sqlite3_io_methods,
}

/// SQLite's own file system.
struct Own(*mut ffi::sqlite3_vfs);

// SAFETY: the struct is SQLite's; it lives as long as the process, is not written to after it was
// registered, and SQLite itself uses it from every thread.
unsafe impl Send for Own {}
// SAFETY: as above.
unsafe impl Sync for Own {}

static OWN: OnceLock<Own> = OnceLock::new();
static CHANGES: Mutex<Vec<Change>> = Mutex::new(Vec::new());
/// Open files by the address of their struct.
static FILES: OnceLock<Mutex<HashMap<usize, Open>>> = OnceLock::new();

fn changes() -> MutexGuard<'static, Vec<Change>> {
    CHANGES.lock().unwrap_or_else(PoisonError::into_inner)
}

fn files() -> MutexGuard<'static, HashMap<usize, Open>> {
    let files = FILES.get_or_init(Mutex::default);
    files.lock().unwrap_or_else(PoisonError::into_inner)
}

fn file(file: *mut ffi::sqlite3_file) -> Option<(String, &'static ffi::sqlite3_io_methods)> {
    let files = files();
    let open = files.get(&(file as usize))?;
    Some((open.name.clone(), open.own))
}

/// Notes that so much is done.
pub fn mark(done: u64) {
    changes().push(Change::Mark(done));
}

/// Runs some work of one thread and hands back what it did to files through SQLite.
///
/// Everything that this process opens through SQLite from now on is listened to, so a test program
/// records once only.
///
/// # Panics
///
/// When SQLite has no file system of its own or takes none.
pub fn record(work: impl FnOnce()) -> Vec<Change> {
    OWN.get_or_init(register);
    changes().clear();
    work();
    std::mem::take(&mut changes())
}

fn register() -> Own {
    // SAFETY: asking for the file system that is used by default; it lives as long as the process.
    let own = unsafe {
        assert_eq!(ffi::sqlite3_initialize(), ffi::SQLITE_OK);
        ffi::sqlite3_vfs_find(std::ptr::null())
    };
    assert!(!own.is_null(), "SQLite has no file system");
    // SAFETY: `own` is valid; the copy is leaked, so that SQLite can keep it.
    unsafe {
        let mut ours = *own;
        ours.zName = c"recorder".as_ptr();
        ours.pNext = std::ptr::null_mut();
        ours.xOpen = Some(open);
        ours.xDelete = Some(delete);
        let ours = Box::leak(Box::new(ours));
        assert_eq!(ffi::sqlite3_vfs_register(ours, 1), ffi::SQLITE_OK);
    }
    Own(own)
}

fn last_part(path: *const c_char) -> String {
    // SAFETY: SQLite hands in a text that ends in a zero byte.
    let path = unsafe { CStr::from_ptr(path) }.to_string_lossy();
    path.rsplit('/').next().unwrap_or_default().to_owned()
}

unsafe extern "C" fn open(
    _: *mut ffi::sqlite3_vfs,
    name: ffi::sqlite3_filename,
    file: *mut ffi::sqlite3_file,
    flags: c_int,
    out_flags: *mut c_int,
) -> c_int {
    let Some((own, own_open)) = OWN
        .get()
        .and_then(|own| Some((own.0, unsafe { (*own.0).xOpen }?)))
    else {
        return ffi::SQLITE_CANTOPEN;
    };
    // SAFETY: the arguments are those that SQLite handed in, for its own function.
    let code = unsafe { own_open(own, name, file, flags, out_flags) };
    // SAFETY: after success the file carries a table of functions that lives as long as the process.
    unsafe {
        if code == ffi::SQLITE_OK && !name.is_null() && !(*file).pMethods.is_null() {
            let own: &'static ffi::sqlite3_io_methods = &*(*file).pMethods;
            let mut ours = *own;
            ours.xWrite = Some(write);
            ours.xTruncate = Some(cut);
            ours.xSync = Some(sync);
            ours.xClose = Some(close);
            (*file).pMethods = Box::leak(Box::new(ours));
            let name = last_part(name);
            files().insert(file as usize, Open { name, own });
        }
    }
    code
}

unsafe extern "C" fn delete(
    _: *mut ffi::sqlite3_vfs,
    name: *const c_char,
    sync_folder: c_int,
) -> c_int {
    let Some((own, own_delete)) = OWN
        .get()
        .and_then(|own| Some((own.0, unsafe { (*own.0).xDelete }?)))
    else {
        return ffi::SQLITE_IOERR_DELETE;
    };
    // SAFETY: the arguments are those that SQLite handed in, for its own function.
    let code = unsafe { own_delete(own, name, sync_folder) };
    if code == ffi::SQLITE_OK {
        let file = last_part(name);
        changes().push(Change::Deleted { file });
    }
    code
}

unsafe extern "C" fn write(
    handle: *mut ffi::sqlite3_file,
    bytes: *const c_void,
    count: c_int,
    offset: ffi::sqlite3_int64,
) -> c_int {
    let Some((name, own)) = file(handle) else {
        return ffi::SQLITE_IOERR_WRITE;
    };
    let Some(own_write) = own.xWrite else {
        return ffi::SQLITE_IOERR_WRITE;
    };
    // SAFETY: the arguments are those that SQLite handed in, for its own function; `bytes` points to
    // `count` bytes.
    let (code, written) = unsafe {
        let code = own_write(handle, bytes, count, offset);
        let count = usize::try_from(count).unwrap_or(0);
        (code, std::slice::from_raw_parts(bytes.cast::<u8>(), count))
    };
    if code == ffi::SQLITE_OK {
        changes().push(Change::Written {
            file: name,
            offset: u64::try_from(offset).unwrap_or(0),
            bytes: written.to_vec(),
        });
    }
    code
}

unsafe extern "C" fn cut(handle: *mut ffi::sqlite3_file, length: ffi::sqlite3_int64) -> c_int {
    let Some((name, own)) = file(handle) else {
        return ffi::SQLITE_IOERR_TRUNCATE;
    };
    let Some(own_cut) = own.xTruncate else {
        return ffi::SQLITE_IOERR_TRUNCATE;
    };
    // SAFETY: the arguments are those that SQLite handed in, for its own function.
    let code = unsafe { own_cut(handle, length) };
    if code == ffi::SQLITE_OK {
        changes().push(Change::Cut {
            file: name,
            length: u64::try_from(length).unwrap_or(0),
        });
    }
    code
}

unsafe extern "C" fn sync(handle: *mut ffi::sqlite3_file, flags: c_int) -> c_int {
    let Some((name, own)) = file(handle) else {
        return ffi::SQLITE_IOERR_FSYNC;
    };
    let Some(own_sync) = own.xSync else {
        return ffi::SQLITE_IOERR_FSYNC;
    };
    // SAFETY: the arguments are those that SQLite handed in, for its own function.
    let code = unsafe { own_sync(handle, flags) };
    if code == ffi::SQLITE_OK {
        changes().push(Change::Synced { file: name });
    }
    code
}

unsafe extern "C" fn close(handle: *mut ffi::sqlite3_file) -> c_int {
    let Some(open) = files().remove(&(handle as usize)) else {
        return ffi::SQLITE_IOERR_CLOSE;
    };
    let Some(own_close) = open.own.xClose else {
        return ffi::SQLITE_IOERR_CLOSE;
    };
    // SAFETY: the argument is the one that SQLite handed in, for its own function.
    unsafe { own_close(handle) }
}
