//! R2: the power may fail at any moment. Every state in which the disk may then be is opened.

#![cfg(unix)]
#![allow(clippy::unwrap_used, clippy::print_stderr)]

mod common;
#[path = "common/folder.rs"]
mod folder;

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use common::lines;
use folder::fleeting_folder;
use heapwright_disk::{Chance, Change, Platter, mark, record};
use heapwright_journal::{DeviceId, Digest, Line};
use heapwright_store::Sqlite;

const DEVICE: DeviceId = DeviceId(0x0123_4567_89ab_cdef);

/// What the writer does, one after the other.
const OPERATIONS: u64 = 200;

/// States by chance at each boundary, beside the two in which nothing and all arrives.
const BY_CHANCE: usize = 3;

const NAME: &str = "journal";

/// The operation with a number. Most append; some keep a fact or a picture, some close the journal
/// and open it again.
fn operate(store: &mut Option<Sqlite>, path: &Path, operation: u64, next: &mut u32) {
    let open = || Sqlite::open(path, || DEVICE).unwrap();
    match operation % 25 {
        7 => {
            let value = operation.to_string();
            store
                .get_or_insert_with(open)
                .set_fact_now("said", &value)
                .unwrap();
        }
        13 => {
            let picture = vec![u8::try_from(operation).unwrap(); 40_000];
            store
                .get_or_insert_with(open)
                .keep_picture_now(&picture)
                .unwrap();
        }
        // Seldom, so that the WAL comes round in between.
        24 if operation % 75 == 24 => drop(store.take()),
        _ => {
            let behind = *next + 1 + *next % 3;
            let new = store
                .get_or_insert_with(open)
                .append_now(&lines(DEVICE, *next..behind))
                .unwrap();
            assert_eq!(new, (behind - *next) as usize);
            *next = behind;
        }
    }
}

/// Which files a journal consists of; what programs share in memory is gone with the power.
fn put(folder: &Path, files: &BTreeMap<String, Vec<u8>>) {
    for name in [NAME, "journal-wal", "journal-shm"] {
        let path = folder.join(name);
        match files.get(name) {
            Some(bytes) if name != "journal-shm" => fs::write(path, bytes).unwrap(),
            _ => drop(fs::remove_file(path)),
        }
    }
}

struct Done {
    lines: u32,
    said: Option<u64>,
}

#[test]
fn r2_a_power_cut_at_any_moment_loses_nothing() {
    let folder = fleeting_folder();
    let path = folder.path().join(NAME);
    // A journal comes to its place whole, by one step, so the power cuts begin here.
    drop(Sqlite::open(&path, || DEVICE).unwrap());
    let mut platter = Platter::of([(NAME.to_owned(), fs::read(&path).unwrap())]);

    // What had been done after each operation.
    let mut done = vec![Done {
        lines: 0,
        said: None,
    }];
    let changes = record(|| {
        let mut store = None;
        let mut next = 0;
        for operation in 0..OPERATIONS {
            operate(&mut store, &path, operation, &mut next);
            mark(operation + 1);
            let said = (operation % 25 == 7).then_some(operation);
            let said = said.or(done.last().and_then(|done| done.said));
            done.push(Done { lines: next, said });
        }
    });
    let count =
        |wanted: fn(&Change) -> bool| changes.iter().filter(|change| wanted(change)).count();
    let writes = count(|change| matches!(change, Change::Written { .. }));
    let syncs = count(|change| matches!(change, Change::Synced { .. }));

    let all = lines(DEVICE, 0..done.last().unwrap().lines);
    let cut = fleeting_folder();
    let mut chance = Chance(2);
    let mut completed = 0;
    let mut states = 0;
    for change in std::iter::once(&Change::Mark(0)).chain(&changes) {
        if let Change::Mark(number) = change {
            completed = usize::try_from(*number).unwrap();
        }
        platter.take(change);
        let mut disks = vec![platter.all_arrives()];
        // Where nothing is on its way, all states are one.
        if !platter.is_settled() {
            disks.push(platter.nothing_arrives());
            disks.extend((0..BY_CHANCE).map(|_| platter.some_arrives(&mut chance)));
        }
        for disk in disks {
            states += 1;
            put(cut.path(), &disk);
            let now = &done[completed];
            let then = done.get(completed + 1).unwrap_or(now);
            look(&cut.path().join(NAME), &all, now, then);
        }
    }
    eprintln!("{OPERATIONS} operations, {writes} writes, {syncs} syncs: {states} power cuts");
    assert!(states > writes && syncs > 100);
}

/// Opens what the power cut left, without any repair.
fn look(path: &Path, all: &[Line], now: &Done, then: &Done) {
    let mut store = Sqlite::open_existing(path).unwrap();
    assert!(!store.is_damaged(), "{} lines were kept", now.lines);
    let mut read = Vec::new();
    let through = store.read_now(0, &mut |line| read.push(line)).unwrap();
    assert_eq!(through.damage, [], "{} lines were kept", now.lines);
    // What was acknowledged, and the operation under way wholly or not at all.
    let count = u32::try_from(read.len()).unwrap();
    assert!(
        count == now.lines || count == then.lines,
        "{count} lines are there, {} were kept",
        now.lines
    );
    assert!(read == all[..read.len()]);
    let said = store.fact_now("said").unwrap();
    let said = said.map(|said| said.parse().unwrap());
    assert!(said == now.said || said == then.said);
    for digest in store.pictures().unwrap() {
        let picture = store.picture_now(digest).unwrap().unwrap();
        assert_eq!((picture.len(), Digest::of(&picture)), (40_000, digest));
    }
    // It can be written to at once.
    if count == now.lines && now.lines.is_multiple_of(16) {
        let next = lines(DEVICE, count..count + 1);
        assert_eq!(store.append_now(&next).unwrap(), 1);
    }
}
