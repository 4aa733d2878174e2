//! The store as its callers see it: lines, facts, pictures, backups, and what stands in the way.

use std::fs;
use std::path::{Path, PathBuf};

use heapwright_journal::store::{DamageKind, Store, facts};
use heapwright_journal::{DeviceId, Digest, Line, journal_digest};
use rusqlite::Connection;
use tempfile::TempDir;

use crate::*;

#[path = "../tests/common/mod.rs"]
mod common;

use common::{line, lines};

const DEVICE: DeviceId = DeviceId(0x7f3a_9c2e_41d0_5b68);
const OTHER: DeviceId = DeviceId(2);

fn place() -> (TempDir, PathBuf) {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("journal.heapwright");
    (folder, path)
}

fn open(path: &Path) -> Sqlite {
    Sqlite::open(path, || DEVICE).unwrap()
}

fn all(store: &mut Sqlite) -> Vec<Line> {
    let mut lines = Vec::new();
    let through = store.read_now(0, &mut |line| lines.push(line)).unwrap();
    assert_eq!(through.damage, []);
    assert_eq!(through.last, lines.len() as u64);
    lines
}

fn why<T: std::fmt::Debug>(result: Result<T, StoreError>) -> Why {
    result.unwrap_err().why
}

/// Changes a line wherever it stands: pages that were divided keep what moved away.
fn hit(bytes: &mut [u8], line: &Line) {
    let places: Vec<usize> = memchr::memmem::find_iter(bytes, line.text().as_bytes()).collect();
    assert!(!places.is_empty());
    for place in places {
        bytes[place + 30] ^= 1;
    }
}

#[test]
fn lines_come_back_in_order_and_only_once() {
    let (_folder, path) = place();
    let mut store = open(&path);
    assert_eq!(store.append_now(&lines(DEVICE, 0..5)).unwrap(), 5);
    assert_eq!(store.append_now(&lines(DEVICE, 3..101)).unwrap(), 96);
    assert_eq!(store.append_now(&lines(DEVICE, 0..101)).unwrap(), 0);
    assert_eq!(store.append_now(&[]).unwrap(), 0);
    assert_eq!(all(&mut store), lines(DEVICE, 0..101));
    let mut rest = Vec::new();
    let through = store.read_now(99, &mut |line| rest.push(line)).unwrap();
    assert_eq!((through.last, through.damage.len()), (101, 0));
    assert_eq!(rest, lines(DEVICE, 99..101));
    let through = store.read_now(101, &mut |_| panic!("a line")).unwrap();
    assert_eq!((through.last, through.damage.len()), (101, 0));
    drop(store);
    let mut again = Sqlite::open(&path, || panic!("it has a device")).unwrap();
    assert_eq!(again.device().unwrap(), DEVICE);
    assert_eq!(all(&mut again), lines(DEVICE, 0..101));
}

#[test]
fn it_serves_as_a_store() {
    let (_folder, path) = place();
    let mut store = open(&path);
    finished(async {
        assert_eq!(Store::append(&mut store, &lines(DEVICE, 0..3)).await, Ok(3));
        let mut count = 0;
        let through = Store::read(&mut store, 0, &mut |_| count += 1)
            .await
            .unwrap();
        assert_eq!((through.last, count), (3, 3));
        let device = store.fact(facts::DEVICE).await.unwrap();
        assert_eq!(device, Some(DEVICE.to_string()));
        assert_eq!(store.fact(facts::PERSON).await.unwrap(), None);
        store.set_fact(facts::PERSON, "one").await.unwrap();
        store.set_fact(facts::PERSON, "two").await.unwrap();
        assert_eq!(
            store.fact(facts::PERSON).await.unwrap(),
            Some("two".to_owned())
        );
        let digest = store.keep_picture(b"picture").await.unwrap();
        assert_eq!(store.keep_picture(b"picture").await.unwrap(), digest);
        assert_eq!(digest, Digest::of(b"picture"));
        assert_eq!(store.picture(digest).await.unwrap().unwrap(), b"picture");
        assert_eq!(store.picture(Digest([1; 32])).await.unwrap(), None);
    });
    assert_eq!(store.pictures().unwrap(), [Digest::of(b"picture")]);
    let report = check(&path).unwrap();
    assert!(report.is_sound(), "{report:?}");
    assert_eq!((report.lines, report.pictures), (3, 1));
}

#[test]
#[cfg(unix)]
fn only_the_keeper_may_read_it() {
    use std::os::unix::fs::PermissionsExt;
    let (folder, _) = place();
    let path = folder.path().join("a/b/journal.heapwright");
    let mut store = open(&path);
    store.append_now(&lines(DEVICE, 0..3)).unwrap();
    let copy = folder.path().join("copy.heapwright");
    store.backup(&copy, Existing::Keep).unwrap();
    let mode = |path: &Path| fs::metadata(path).unwrap().permissions().mode() & 0o777;
    assert_eq!(mode(&folder.path().join("a")), 0o700);
    assert_eq!(mode(&folder.path().join("a/b")), 0o700);
    assert_eq!(
        (mode(&path), mode(&files::wal(&path)), mode(&copy)),
        (0o600, 0o600, 0o600)
    );
    drop(store);
    // Nothing is left lying about.
    assert_eq!(fs::read_dir(path.parent().unwrap()).unwrap().count(), 1);
}

#[test]
fn what_stands_in_the_way_is_told() {
    let (folder, path) = place();
    assert_eq!(why(Sqlite::open_existing(&path)), Why::NotFound);
    assert_eq!(why(Sqlite::open(folder.path(), || DEVICE)), Why::Folder);
    assert_eq!(why(check(folder.path())), Why::Folder);
    fs::write(&path, "Dear diary, this is no journal. ".repeat(99)).unwrap();
    assert_eq!(why(Sqlite::open(&path, || DEVICE)), Why::NotAJournal);
    let below = path.join("journal.heapwright");
    assert!(matches!(
        why(Sqlite::open(&below, || DEVICE)),
        Why::Other(_) | Why::Exists | Why::NotFound
    ));
    // Another program's SQLite file.
    fs::remove_file(&path).unwrap();
    let foreign = Connection::open(&path).unwrap();
    foreign
        .execute_batch("CREATE TABLE diary (day TEXT)")
        .unwrap();
    foreign.close().unwrap();
    assert_eq!(why(Sqlite::open(&path, || DEVICE)), Why::NotAJournal);
}

#[test]
fn a_newer_store_is_left_alone_and_a_damaged_version_is_told_apart() {
    let (_folder, path) = place();
    open(&path).append_now(&lines(DEVICE, 0..3)).unwrap();
    let connection = Connection::open(&path).unwrap();
    connection.execute_batch("PRAGMA user_version = 7").unwrap();
    connection.close().unwrap();
    // The version alone has changed: that was no newer program.
    let mut store = Sqlite::open_existing(&path).unwrap();
    assert!(store.is_damaged());
    let mut count = 0;
    store.read_now(0, &mut |_| count += 1).unwrap();
    assert_eq!(count, 3);
    let connection = Connection::open(&path).unwrap();
    keep::keep_fact(&connection, schema::VERSION_FACT, "7").unwrap();
    connection.close().unwrap();
    let error = Sqlite::open_existing(&path).unwrap_err();
    assert_eq!(error.why, Why::Newer(7));
    assert!(error.to_string().contains("install"), "{error}");
}

#[test]
fn another_program_that_writes_is_waited_for_and_then_named() {
    let (_folder, path) = place();
    let mut store = open(&path);
    let other = Connection::open(&path).unwrap();
    other.execute_batch("BEGIN IMMEDIATE").unwrap();
    store
        .connection
        .as_ref()
        .unwrap()
        .busy_timeout(std::time::Duration::from_millis(50))
        .unwrap();
    assert_eq!(why(store.append_now(&lines(DEVICE, 0..1))), Why::Busy);
    other.execute_batch("ROLLBACK").unwrap();
    assert_eq!(store.append_now(&lines(DEVICE, 0..1)).unwrap(), 1);
}

/// R4: whenever the disk is full, nothing is kept by half, what was there stays, and it works again.
#[test]
fn r4_a_full_disk_loses_nothing() {
    let (_folder, path) = place();
    let mut store = open(&path);
    let mut kept = 0;
    let mut refused = 0;
    for round in 0..40 {
        let limit = |store: &Sqlite, pages: i64| {
            let connection = store.connection.as_ref().unwrap();
            connection
                .query_row(&format!("PRAGMA max_page_count = {pages}"), [], |row| {
                    row.get::<_, i64>(0)
                })
                .unwrap()
        };
        // SQLite takes no limit below what there is.
        let pages = limit(&store, 1);
        let mut next = kept;
        loop {
            match store.append_now(&lines(DEVICE, next..next + 1 + round % 7)) {
                Ok(_) => next += 1 + round % 7,
                Err(error) => {
                    assert_eq!(error.why, Why::Full, "{error}");
                    break;
                }
            }
        }
        refused += 1;
        kept = next;
        assert_eq!(all(&mut store), lines(DEVICE, 0..kept));
        assert!(!store.is_damaged());
        limit(&store, pages + 4 + i64::from(round % 3));
        // After room was made, the same lines are taken.
        store.append_now(&lines(DEVICE, kept..kept + 1)).unwrap();
        kept += 1;
    }
    assert_eq!(refused, 40);
    drop(store);
    let report = check(&path).unwrap();
    assert!(
        report.is_sound() && report.lines == u64::from(kept),
        "{report:?}"
    );
}

#[test]
fn r11_a_changed_line_is_told_left_out_and_nothing_is_written_behind_it() {
    let (_folder, path) = place();
    open(&path).append_now(&lines(DEVICE, 0..9)).unwrap();
    let connection = Connection::open(&path).unwrap();
    connection
        .execute_batch("UPDATE events SET line = replace(line, 'water_l', 'water_m') WHERE position = 5; DELETE FROM events WHERE position = 3;")
        .unwrap();
    connection.close().unwrap();
    let mut store = Sqlite::open_existing(&path).unwrap();
    let mut read = Vec::new();
    let through = store.read_now(0, &mut |line| read.push(line)).unwrap();
    let kinds: Vec<_> = through
        .damage
        .iter()
        .map(|damage| (damage.position, damage.kind))
        .collect();
    assert!(
        kinds.contains(&(3, DamageKind::Missing)) && kinds.contains(&(5, DamageKind::Changed)),
        "{kinds:?}"
    );
    let mut expected = lines(DEVICE, 0..9);
    expected.remove(4);
    // The deleted line may still stand in the bytes of the file.
    if read.len() == 7 {
        expected.remove(2);
    }
    read.sort_by_key(|line| line.text().to_owned());
    expected.sort_by_key(|line| line.text().to_owned());
    assert_eq!(read, expected);
    let error = store.append_now(&lines(DEVICE, 9..10)).unwrap_err();
    assert_eq!(error.why, Why::Damaged);
    let sentence = error.to_string();
    assert!(sentence.contains("heapwright check") && sentence.contains("heapwright restore"));
    assert_eq!(why(store.set_fact_now("a", "b")), Why::Damaged);
    assert_eq!(why(store.keep_picture_now(b"a")), Why::Damaged);
    let report = check(&path).unwrap();
    assert!(!report.is_sound() && report.lost >= 1, "{report:?}");
    let copy = path.with_file_name("copy");
    assert_eq!(why(store.backup(&copy, Existing::Keep)), Why::Damaged);
    assert!(!copy.exists());
}

#[test]
fn a_changed_fact_or_picture_is_told() {
    let (_folder, path) = place();
    let mut store = open(&path);
    store.set_fact_now(facts::PERSON, "one").unwrap();
    let picture = store.keep_picture_now(b"picture").unwrap();
    drop(store);
    let connection = Connection::open(&path).unwrap();
    connection.execute_batch("UPDATE facts SET value = 'two' WHERE name = 'person'; UPDATE pictures SET bytes = x'00'").unwrap();
    connection.close().unwrap();
    let report = check(&path).unwrap();
    assert_eq!(report.facts_damaged, [facts::PERSON]);
    assert_eq!(report.pictures_damaged, [picture]);
    let mut store = Sqlite::open_existing(&path).unwrap();
    assert_eq!(why(store.picture_now(picture)), Why::Damaged);
    assert_eq!(why(store.fact_now(facts::PERSON)), Why::Damaged);
}

#[test]
fn a_backup_is_read_back_and_replaces_only_when_told() {
    let (folder, path) = place();
    let mut store = open(&path);
    store.append_now(&lines(DEVICE, 0..200)).unwrap();
    store.set_fact_now(facts::PERSON, "me").unwrap();
    let picture = store.keep_picture_now(&[7; 50_000]).unwrap();
    let copy = folder.path().join("copy of 50% #1?.heapwright");
    let report = store.backup(&copy, Existing::Keep).unwrap();
    let digests = lines(DEVICE, 0..200).iter().map(Line::digest).collect();
    assert_eq!((report.lines, report.pictures), (200, 1));
    assert_eq!(report.digest, journal_digest(digests));
    assert_eq!(report.bytes, fs::metadata(&copy).unwrap().len());
    assert_eq!(why(store.backup(&copy, Existing::Keep)), Why::Exists);
    store.append_now(&lines(DEVICE, 200..201)).unwrap();
    assert_eq!(store.backup(&copy, Existing::Replace).unwrap().lines, 201);

    // A new place is a new device; facts of the garden come along.
    let new = folder.path().join("new/journal.heapwright");
    let report = restore(&copy, &new, OTHER).unwrap();
    assert_eq!(
        (
            report.lines,
            report.new_lines,
            report.pictures,
            report.joined
        ),
        (201, 201, 1, false)
    );
    let mut restored = Sqlite::open_existing(&new).unwrap();
    assert_eq!(restored.device().unwrap(), OTHER);
    assert_eq!(
        restored.fact_now(facts::PERSON).unwrap(),
        Some("me".to_owned())
    );
    assert_eq!(restored.picture_now(picture).unwrap().unwrap(), [7; 50_000]);
    assert_eq!(all(&mut restored), lines(DEVICE, 0..201));

    // A journal that is there keeps its device, and what it holds.
    restored.append_now(&lines(OTHER, 0..3)).unwrap();
    store.append_now(&lines(DEVICE, 201..203)).unwrap();
    store.backup(&copy, Existing::Replace).unwrap();
    drop(restored);
    let report = restore(&copy, &new, DeviceId(9)).unwrap();
    assert_eq!(
        (report.lines, report.new_lines, report.joined),
        (203, 2, true)
    );
    let mut joined = Sqlite::open_existing(&new).unwrap();
    assert_eq!(joined.device().unwrap(), OTHER);
    assert_eq!(all(&mut joined).len(), 206);

    // A damaged backup is refused whole.
    let mut bytes = fs::read(&copy).unwrap();
    hit(&mut bytes, &line(DEVICE, 10));
    fs::write(&copy, bytes).unwrap();
    let another = folder.path().join("another.heapwright");
    assert_eq!(why(restore(&copy, &another, OTHER)), Why::Damaged);
    assert!(!another.exists());
}

/// R11: a new journal is made of all that is sound, and the damaged file stays.
#[test]
fn r11_mending_keeps_all_that_is_sound() {
    let (_folder, path) = place();
    let mut store = open(&path);
    store.append_now(&lines(DEVICE, 0..200)).unwrap();
    store.set_fact_now(facts::PERSON, "me").unwrap();
    let picture = store.keep_picture_now(b"picture").unwrap();
    drop(store);
    let mut bytes = fs::read(&path).unwrap();
    hit(&mut bytes, &line(DEVICE, 10));
    fs::write(&path, &bytes).unwrap();
    let mended = mend(&path, OTHER).unwrap();
    assert_eq!((mended.lines, mended.lost, mended.pictures), (199, 1, 1));
    assert_eq!(fs::read(&mended.damaged).unwrap(), bytes);
    let report = check(&path).unwrap();
    assert!(report.is_sound(), "{report:?}");
    let mut store = Sqlite::open_existing(&path).unwrap();
    assert_eq!(store.device().unwrap(), OTHER);
    assert_eq!(
        store.fact_now(facts::PERSON).unwrap(),
        Some("me".to_owned())
    );
    assert_eq!(store.picture_now(picture).unwrap().unwrap(), b"picture");
    let mut expected = lines(DEVICE, 0..200);
    expected.remove(10);
    assert_eq!(all(&mut store), expected);
    store.append_now(&lines(DEVICE, 10..11)).unwrap();
    drop(store);

    // Without its head SQLite makes nothing of it; all lines are found.
    let mut bytes = fs::read(&path).unwrap();
    bytes[..100].fill(0);
    fs::write(&path, &bytes).unwrap();
    let mended = mend(&path, DEVICE).unwrap();
    assert_eq!((mended.lines, mended.lost), (200, 0));
    assert!(check(&path).unwrap().is_sound());
    assert!(mended.damaged.to_string_lossy().ends_with(".damaged-2"));
}
