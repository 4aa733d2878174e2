//! R1: what was called kept is there after `kill -9` at any moment. Several programs at once lose
//! nothing.

#![cfg(unix)]
#![allow(clippy::unwrap_used, clippy::print_stderr)]

mod common;
#[path = "common/folder.rs"]
mod folder;

use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::Duration;

use common::lines;
use folder::fleeting_folder;
use heapwright_disk::Chance;
use heapwright_journal::{DeviceId, Line};
use heapwright_store::{Sqlite, check};

/// How often the writer is killed.
const KILLS: u32 = 1000;

/// After how many kills a new journal is begun, so that reading it stays quick.
const KILLS_PER_JOURNAL: u32 = 10;

/// The longest time that the writer gets [microseconds]: it starts, opens and writes many times.
const LONGEST_US: usize = 9_000;

const DEVICE: DeviceId = DeviceId(0x0123_4567_89ab_cdef);

fn writer(path: &Path, device: DeviceId, first: u32, count: u32) -> Child {
    Command::new(env!("CARGO_BIN_EXE_store-writer"))
        .arg(path)
        .args([device.0.to_string(), first.to_string(), count.to_string()])
        .stdout(Stdio::piped())
        .spawn()
        .unwrap()
}

fn read(path: &Path) -> Vec<Line> {
    let mut store = Sqlite::open_existing(path).unwrap();
    assert!(!store.is_damaged());
    let mut read = Vec::new();
    let through = store.read_now(0, &mut |line| read.push(line)).unwrap();
    assert_eq!(through.damage, []);
    read
}

/// What an append writes, as the writer cuts it.
fn append_behind(next: u32) -> u32 {
    next + 1 + next % 3
}

#[test]
fn r1_what_was_called_kept_survives_a_kill() {
    let folder = fleeting_folder();
    let mut chance = Chance(1);
    let mut acknowledged_in_all = 0;
    let mut cut_short = 0;
    let mut expected: Vec<Line> = Vec::new();
    for kill in 0..KILLS {
        let path = folder.path().join(format!("{}", kill / KILLS_PER_JOURNAL));
        let there = if path.exists() { read(&path).len() } else { 0 };
        let first = u32::try_from(there).unwrap();
        let mut child = writer(&path, DEVICE, first, 1_000_000);
        std::thread::sleep(Duration::from_micros(chance.below(LONGEST_US) as u64));
        // SIGKILL.
        child.kill().unwrap();
        let out = BufReader::new(child.stdout.take().unwrap());
        // A line that was cut by the kill is no acknowledgement, but it cannot be: it is one write.
        let acknowledged = out
            .lines()
            .map_while(Result::ok)
            .filter_map(|line| line.parse().ok())
            .last();
        child.wait().unwrap();
        if !path.exists() {
            assert_eq!(acknowledged, None);
            continue;
        }
        let kept = read(&path);
        let count = u32::try_from(kept.len()).unwrap();
        let more = u32::try_from(expected.len()).unwrap()..count;
        expected.extend(lines(DEVICE, more));
        assert!(kept == expected[..kept.len()], "kill {kill}");
        // All that was acknowledged, and at most the append that was under way, whole.
        let acknowledged = acknowledged.unwrap_or(first);
        assert!(
            count == acknowledged || count == append_behind(acknowledged),
            "kill {kill}: {count} lines are there, {acknowledged} were acknowledged"
        );
        acknowledged_in_all += acknowledged - first;
        cut_short += u32::from(count != acknowledged);
    }
    eprintln!(
        "{KILLS} kills: {acknowledged_in_all} lines acknowledged, {cut_short} appends done but not told"
    );
    // Else the writer was killed before it wrote.
    assert!(acknowledged_in_all > KILLS);
    for entry in std::fs::read_dir(folder.path()).unwrap() {
        let path = entry.unwrap().path();
        // A kill while the journal is made leaves its unfinished file; one while it is open, what
        // belongs to it.
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        if name.parse::<u32>().is_ok() {
            let report = check(&path).unwrap();
            assert!(report.is_sound(), "{report:?}");
        }
    }
}

#[test]
fn r1_programs_that_write_at_once_lose_nothing() {
    for programs in [2, 4] {
        let folder = fleeting_folder();
        let path = folder.path().join("journal");
        let mut children: Vec<Child> = (1..=programs)
            .map(|device| writer(&path, DeviceId(device), 0, 60))
            .collect();
        let mut expected = Vec::new();
        for (child, device) in children.iter_mut().zip(1..) {
            let out = BufReader::new(child.stdout.take().unwrap());
            let last = out.lines().last().unwrap().unwrap().parse().unwrap();
            assert!(child.wait().unwrap().success());
            expected.extend(lines(DeviceId(device), 0..last));
        }
        let mut kept = read(&path);
        for device in 1..=programs {
            // Of each device in its own order.
            let mark = format!(".{}\"", DeviceId(device));
            let of_device = kept.iter().filter(|line| line.text().contains(&mark));
            let of_device: Vec<Line> = of_device.cloned().collect();
            let count = u32::try_from(of_device.len()).unwrap();
            assert_eq!(of_device, lines(DeviceId(device), 0..count));
        }
        let by_digest = |line: &Line| line.digest();
        kept.sort_by_key(by_digest);
        expected.sort_by_key(by_digest);
        assert_eq!(kept, expected);
        let report = check(&path).unwrap();
        assert!(report.is_sound(), "{report:?}");
        // It belongs to whoever made it first.
        assert!((1..=programs).contains(&report.device.unwrap().0));
    }
}
