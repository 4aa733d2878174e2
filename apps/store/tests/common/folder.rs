//! A folder for what need not last.

use std::path::Path;

/// A folder for what need not last: in memory where that is possible.
pub fn fleeting_folder() -> tempfile::TempDir {
    let memory = Path::new("/dev/shm");
    if memory.is_dir() {
        tempfile::tempdir_in(memory).unwrap()
    } else {
        tempfile::tempdir().unwrap()
    }
}
