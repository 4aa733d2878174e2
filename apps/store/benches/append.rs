//! How long does it take to keep one event for good? Beside the least that SQLite can do: the same
//! bytes into a table of one column, with the same promise of lasting.
//!
//! Both write in turn in one run, to the same disk. The aim is a ratio of at most 1.5.

#![allow(clippy::print_stdout, clippy::unwrap_used)]

#[path = "../tests/common/mod.rs"]
mod common;

use std::time::{Duration, Instant};

use heapwright_journal::DeviceId;
use heapwright_store::Sqlite;
use rusqlite::Connection;

/// How many are there before it begins, as in a journal of some years.
const BEFORE: u32 = 5000;

/// How many are written one by one.
const WRITES: u32 = 1000;

fn main() {
    // `cargo test` runs benches too, to see that they work.
    let is_bench = std::env::args().any(|argument| argument == "--bench");
    let (before, writes) = if is_bench { (BEFORE, WRITES) } else { (10, 10) };
    let folder = tempfile::tempdir().unwrap();
    let device = DeviceId(1);
    let lines = common::lines(device, 0..before + writes);
    let (before, rest) = lines.split_at(before as usize);

    let mut store = Sqlite::open(&folder.path().join("journal"), || device).unwrap();
    store.append_now(before).unwrap();

    let mut bare = Connection::open(folder.path().join("bare")).unwrap();
    bare.execute_batch(
        "PRAGMA page_size = 16384;
         PRAGMA journal_mode = WAL;
         PRAGMA synchronous = FULL;
         PRAGMA wal_autocheckpoint = 64;
         CREATE TABLE events (position INTEGER PRIMARY KEY, line TEXT NOT NULL) STRICT;",
    )
    .unwrap();
    let transaction = bare.transaction().unwrap();
    for line in before {
        insert(&transaction, line.text());
    }
    transaction.commit().unwrap();

    let mut times = [Vec::new(), Vec::new()];
    for line in rest {
        let start = Instant::now();
        store.append_now(std::slice::from_ref(line)).unwrap();
        times[0].push(start.elapsed());
        let start = Instant::now();
        insert(&bare, line.text());
        times[1].push(start.elapsed());
    }
    let [ours, least] = times.map(|mut times| {
        times.sort_unstable();
        let mean = times.iter().sum::<Duration>() / u32::try_from(times.len()).unwrap();
        let share = |percent: usize| times[(times.len() - 1) * percent / 100];
        (mean, share(50), share(95))
    });
    println!("one event, kept for good      mean      half      95 %");
    for (name, (mean, half, most)) in [("store", ours), ("bare SQLite", least)] {
        println!("{name:<22} {mean:>10.1?} {half:>9.1?} {most:>9.1?}");
    }
    let start = Instant::now();
    let mut count = 0;
    store.read_now(0, &mut |_| count += 1).unwrap();
    println!(
        "reading {count} lines along the chain: {:.1?}",
        start.elapsed()
    );
    let ratio = |one: Duration, other: Duration| one.as_secs_f64() / other.as_secs_f64();
    println!(
        "ratio: {:.2} of the means, {:.2} of the halves (aim: at most 1.5)",
        ratio(ours.0, least.0),
        ratio(ours.1, least.1)
    );
}

fn insert(connection: &Connection, line: &str) {
    let mut insert = connection
        .prepare_cached("INSERT INTO events (line) VALUES (?1)")
        .unwrap();
    insert.execute([line]).unwrap();
}
