//! R4: a full disk and one that takes no changes, with real file systems where this system lets us
//! make them: that takes root on Linux. Elsewhere it says that it was left out; what can be tried
//! without is tried in the unit tests.

#![cfg(target_os = "linux")]
#![allow(clippy::unwrap_used, clippy::print_stderr)]

mod common;

use std::fs;
use std::os::unix::fs::PermissionsExt;
use std::path::{Path, PathBuf};
use std::process::Command;

use common::lines;
use heapwright_journal::{DeviceId, Line};
use heapwright_store::{Existing, Sqlite, Why, check, mend, restore};
use tempfile::TempDir;

const DEVICE: DeviceId = DeviceId(0x0123_4567_89ab_cdef);

/// A file system in a folder of its own; it goes with this.
struct Mount {
    folder: TempDir,
}

impl Mount {
    fn new(arguments: &[&str]) -> Option<Self> {
        let folder = tempfile::tempdir().unwrap();
        let done = Command::new("mount")
            .args(arguments)
            .arg(folder.path())
            .output();
        if done.is_ok_and(|done| done.status.success()) {
            return Some(Self { folder });
        }
        eprintln!("left out: no file system can be mounted here");
        None
    }

    fn path(&self) -> PathBuf {
        self.folder.path().join("journal")
    }
}

impl Drop for Mount {
    fn drop(&mut self) {
        let done = Command::new("umount").arg(self.folder.path()).status();
        assert!(std::thread::panicking() || done.unwrap().success());
    }
}

fn read(store: &mut Sqlite) -> Vec<Line> {
    let mut read = Vec::new();
    let through = store.read_now(0, &mut |line| read.push(line)).unwrap();
    assert_eq!(through.damage, []);
    read
}

#[test]
fn r4_a_disk_that_fills_up_loses_nothing() {
    let Some(mount) = Mount::new(&["-t", "tmpfs", "-o", "size=1m", "tmpfs"]) else {
        return;
    };
    let path = mount.path();
    let filler = mount.folder.path().join("filler");
    let mut kept = 0;
    // Filled up to another point each time, so that it gets full at each step of an append, of
    // opening and of bringing the file up to date.
    for round in 0..150_usize {
        if kept > 500 {
            fs::remove_file(&path).unwrap();
            kept = 0;
        }
        let mut refused = false;
        let opened = Sqlite::open(&path, || DEVICE);
        if let Ok(mut store) = opened {
            // With the disk full there is room for up to a few pages, then none.
            fill(&filler, round * 1700 % 70_000);
            for _ in 0..40 {
                match store.append_now(&lines(DEVICE, kept..kept + 1)) {
                    Ok(new) => kept += u32::try_from(new).unwrap(),
                    Err(error) => {
                        assert_eq!(error.why, Why::Full, "{error}");
                        refused = true;
                        break;
                    }
                }
            }
            assert!(read(&mut store) == lines(DEVICE, 0..kept), "round {round}");
            assert!(!store.is_damaged());
        }
        assert!(refused, "round {round}: the disk did not get full");
        // Opened anew on the full disk: that works, or says why.
        match Sqlite::open_existing(&path) {
            Ok(mut store) => {
                assert!(!store.is_damaged());
                assert!(read(&mut store) == lines(DEVICE, 0..kept), "round {round}");
            }
            Err(error) => assert_eq!(error.why, Why::Full, "{error}"),
        }
        let copy = path.with_file_name("copy");
        if let Ok(mut store) = Sqlite::open_existing(&path) {
            match store.backup(&copy, Existing::Keep) {
                // There was room enough.
                Ok(_) => fs::remove_file(&copy).unwrap(),
                Err(error) => assert_eq!(error.why, Why::Full, "{error}"),
            }
        }
        assert!(!copy.exists());
        fs::remove_file(&filler).unwrap();
        // With room again, it goes on.
        let mut store = open_with_room(&path);
        assert!(read(&mut store) == lines(DEVICE, 0..kept), "round {round}");
        assert_eq!(store.append_now(&lines(DEVICE, kept..kept + 1)).unwrap(), 1);
        kept += 1;
    }
    let report = check(&path).unwrap();
    assert!(report.is_sound(), "{report:?}");
}

/// Opens a journal when the room of a file that was just removed is free. Tests beside this one
/// start programs, and until such a program is on its way it holds the files of this one too.
fn open_with_room(path: &Path) -> Sqlite {
    for _ in 0..200 {
        match Sqlite::open_existing(path) {
            Err(error) if error.why == Why::Full => {
                std::thread::sleep(std::time::Duration::from_millis(10));
            }
            opened => return opened.unwrap(),
        }
    }
    panic!("two seconds after a file was removed its room is not free");
}

/// Leaves so much room on a disk [bytes].
fn fill(filler: &Path, room: usize) {
    use std::io::Write;
    let mut file = fs::File::create(filler).unwrap();
    let mut length = 0;
    while file.write(&[1; 4096]).is_ok_and(|written| written > 0) {
        length += 4096;
    }
    file.set_len((length as u64).saturating_sub(room as u64))
        .unwrap();
}

#[test]
fn r4_no_room_for_a_new_journal_is_told() {
    let Some(mount) = Mount::new(&["-t", "tmpfs", "-o", "size=8k", "tmpfs"]) else {
        return;
    };
    let error = Sqlite::open(&mount.path(), || DEVICE).unwrap_err();
    assert_eq!(error.why, Why::Full, "{error}");
    assert_eq!(fs::read_dir(mount.folder.path()).unwrap().count(), 0);
}

#[test]
fn r4_a_disk_that_takes_no_changes_is_told_and_can_be_read_from() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("journal");
    let mut store = Sqlite::open(&path, || DEVICE).unwrap();
    store.append_now(&lines(DEVICE, 0..20)).unwrap();
    drop(store);
    let from = folder.path().to_string_lossy().into_owned();
    let Some(mount) = Mount::new(&["-o", "bind", &from]) else {
        return;
    };
    let remounted = Command::new("mount")
        .args(["-o", "remount,ro,bind"])
        .arg(mount.folder.path())
        .status();
    if !remounted.unwrap().success() {
        eprintln!("left out: nothing can be mounted read-only here");
        return;
    }
    for error in [
        Sqlite::open_existing(&mount.path()).unwrap_err(),
        Sqlite::open(&mount.folder.path().join("new"), || DEVICE).unwrap_err(),
        Sqlite::open(&mount.folder.path().join("a/new"), || DEVICE).unwrap_err(),
        mend(&mount.path(), DEVICE).unwrap_err(),
    ] {
        assert_eq!(error.why, Why::ReadOnly, "{error}");
    }
    // A backup on such a disk can be looked at and brought back.
    let report = check(&mount.path()).unwrap();
    assert!(report.is_sound() && report.lines == 20, "{report:?}");
    let to = folder.path().join("restored");
    let restored = restore(&mount.path(), &to, DeviceId(2)).unwrap();
    assert_eq!(restored.new_lines, 20);
    let mut store = Sqlite::open_to_read(&mount.path()).unwrap();
    assert_eq!(read(&mut store), lines(DEVICE, 0..20));
    let error = store.append_now(&lines(DEVICE, 20..21)).unwrap_err();
    assert_eq!(error.why, Why::ReadOnly, "{error}");
}

#[test]
fn r4_a_folder_that_may_not_be_written_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("journal");
    drop(Sqlite::open(&path, || DEVICE).unwrap());
    fs::set_permissions(folder.path(), fs::Permissions::from_mode(0o500)).unwrap();
    if fs::write(folder.path().join("probe"), b"").is_ok() {
        eprintln!("left out: permissions do not bind root");
        return;
    }
    let error = Sqlite::open(&folder.path().join("new"), || DEVICE).unwrap_err();
    assert_eq!(error.why, Why::NoPermission, "{error}");
    let error = Sqlite::open_existing(&path).unwrap_err();
    assert_eq!(error.why, Why::ReadOnly, "{error}");
    fs::set_permissions(folder.path(), fs::Permissions::from_mode(0o700)).unwrap();
    fs::set_permissions(&path, fs::Permissions::from_mode(0o000)).unwrap();
    let error = Sqlite::open_existing(&path).unwrap_err();
    assert_eq!(error.why, Why::NoPermission, "{error}");
}
