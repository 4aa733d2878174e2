//! R11: whatever byte of the file is hit, every line that is sound is read, and the damage is told.

#![allow(clippy::unwrap_used, clippy::print_stderr)]

mod common;
#[path = "common/folder.rs"]
mod folder;

use std::collections::HashSet;
use std::fs;
use std::ops::Range;
use std::path::{Path, PathBuf};

use common::lines;
use folder::fleeting_folder;
use heapwright_disk::Chance;
use heapwright_journal::{DeviceId, Line};
use heapwright_store::{Sqlite, Why};
use memchr::memmem;
use tempfile::TempDir;

const DEVICE: DeviceId = DeviceId(0x0123_4567_89ab_cdef);

/// Sixty lines, the fortieth of which takes more than a page.
const NUMBERS: Range<u32> = 60..120;

const PAGE_BYTES: usize = 16 << 10;

/// A journal, its bytes, and where each of its lines lies.
struct Whole {
    _folder: TempDir,
    path: PathBuf,
    lines: Vec<Line>,
    file: Vec<u8>,
    wal: Vec<u8>,
}

impl Whole {
    /// With the lines in the file itself, or the later half of them in the WAL.
    fn new(with_wal: bool) -> Self {
        let folder = fleeting_folder();
        let path = folder.path().join("journal");
        let lines = lines(DEVICE, NUMBERS);
        let mut store = Sqlite::open(&path, || DEVICE).unwrap();
        store.keep_picture_now(&[0xa5; 3000]).unwrap();
        store.append_now(&lines[..30]).unwrap();
        if with_wal {
            drop(store);
            store = Sqlite::open_existing(&path).unwrap();
        }
        for line in &lines[30..] {
            store.append_now(std::slice::from_ref(line)).unwrap();
        }
        if !with_wal {
            drop(store);
            return Self::of(folder, path, lines, Vec::new());
        }
        let wal = fs::read(path.with_file_name("journal-wal")).unwrap();
        let whole = Self::of(folder, path, lines, wal);
        drop(store);
        whole
    }

    fn of(folder: TempDir, path: PathBuf, lines: Vec<Line>, wal: Vec<u8>) -> Self {
        Self {
            _folder: folder,
            file: fs::read(&path).unwrap(),
            path,
            lines,
            wal,
        }
    }

    /// Puts these bytes in the place of the journal and reads it. Tells which lines were read, and
    /// whether damage was told; `None` when it was called no journal.
    fn read(&self, file: &[u8], wal: &[u8]) -> Option<(Vec<Line>, bool)> {
        put(&self.path, file);
        put(&self.path.with_file_name("journal-wal"), wal);
        put(&self.path.with_file_name("journal-shm"), &[]);
        let mut store = match Sqlite::open(&self.path, || panic!("there is a journal")) {
            Ok(store) => store,
            Err(error) => {
                assert_eq!(error.why, Why::NotAJournal);
                return None;
            }
        };
        let mut read = Vec::new();
        let through = store.read_now(0, &mut |line| read.push(line)).unwrap();
        let told = !through.damage.is_empty();
        // Read again, it is the same; and nothing is written into what is damaged.
        if told {
            assert!(store.is_damaged());
            let refused = store.append_now(&self.lines[..1]).unwrap_err();
            assert_eq!(refused.why, Why::Damaged);
        }
        Some((read, told))
    }

    /// Reads damaged bytes and holds what was read against what must be.
    fn look(&self, file: &[u8], wal: &[u8], must_be: impl Fn(&Line) -> bool, what: &str) -> bool {
        let Some((read, told)) = self.read(file, wal) else {
            assert!(!self.lines.iter().any(must_be), "{what}: called no journal");
            return true;
        };
        if !told {
            assert!(read == self.lines, "{what}: not told, {} lines", read.len());
            return false;
        }
        let set: HashSet<&str> = read.iter().map(Line::text).collect();
        assert_eq!(set.len(), read.len(), "{what}: a line was read twice");
        for line in &self.lines {
            assert!(
                set.contains(line.text()) || !must_be(line),
                "{what}: {} of {} lines, not {}",
                read.len(),
                self.lines.len(),
                line.text().get(..120).unwrap_or(line.text()),
            );
        }
        assert!(read.iter().all(|line| self.lines.contains(line)), "{what}");
        true
    }
}

/// Puts bytes in the place of a file; what belongs beside the journal is not there when it is empty.
fn put(path: &Path, bytes: &[u8]) {
    let is_beside = !path.ends_with("journal");
    if bytes.is_empty() && is_beside {
        drop(fs::remove_file(path));
    } else {
        fs::write(path, bytes).unwrap();
    }
}

/// Where a line lies: in one piece, or, when it takes more than a page, on these pages.
fn places(file: &[u8], line: &Line) -> Vec<Range<usize>> {
    let text = line.text().as_bytes();
    let whole: Vec<_> = memmem::find_iter(file, text)
        .map(|at| at..at + text.len())
        .collect();
    if !whole.is_empty() {
        return whole;
    }
    // Its head, which tells how long it is, and the pages with its letters.
    let start = memmem::find(file, &text[..100]).unwrap();
    let head = start - 80..start.next_multiple_of(PAGE_BYTES);
    let mut places = Vec::from([head]);
    let letters = "\u{1f41b}".repeat(20);
    for (index, page) in file.chunks(PAGE_BYTES).enumerate() {
        if memmem::find(page, letters.as_bytes()).is_some()
            || page.ends_with(&text[text.len() - 9..])
        {
            places.push(index * PAGE_BYTES..(index + 1) * PAGE_BYTES);
        }
    }
    places
}

/// True when no byte of any place is hit. A line may lie in the file more than once, since pages
/// that were divided keep what moved away; it need not be read then, but may.
fn is_spared(places: &[Range<usize>], hit: &Range<usize>) -> bool {
    places
        .iter()
        .all(|place| hit.end <= place.start || place.end <= hit.start)
}

fn index_of(whole: &Whole, line: &Line) -> usize {
    whole.lines.iter().position(|other| other == line).unwrap()
}

#[test]
fn r11_every_flipped_bit_is_told_or_harmless() {
    let whole = Whole::new(false);
    let places: Vec<_> = whole
        .lines
        .iter()
        .map(|line| places(&whole.file, line))
        .collect();
    assert!(
        places
            .iter()
            .any(|places| places.len() > 1 && places[1].len() == PAGE_BYTES),
        "no line takes more than a page"
    );
    let mut file = whole.file.clone();
    let (mut tried, mut told) = (0, 0);
    for offset in 0..file.len() {
        // Heads of pages, where the order of all the rest stands, bit by bit.
        let in_head = offset < 100 || offset % PAGE_BYTES < 16;
        let bits = if in_head {
            0..8
        } else if offset % 17 == 0 {
            let bit = offset / 17 % 8;
            bit..bit + 1
        } else {
            continue;
        };
        for bit in bits {
            file[offset] ^= 1 << bit;
            let spared =
                |line: &Line| is_spared(&places[index_of(&whole, line)], &(offset..offset + 1));
            let what = format!("bit {bit} of byte {offset}");
            told += usize::from(whole.look(&file, &[], spared, &what));
            tried += 1;
            file[offset] ^= 1 << bit;
        }
    }
    eprintln!("{} bytes, {tried} bits flipped, {told} told", file.len());
    assert!(told > 100 && told < tried);
}

#[test]
fn r11_blocks_that_the_disk_lost_cost_only_their_own_lines() {
    let whole = Whole::new(false);
    let places: Vec<_> = whole
        .lines
        .iter()
        .map(|line| places(&whole.file, line))
        .collect();
    let mut chance = Chance(3);
    for size in [512, 4096, PAGE_BYTES] {
        for start in (0..whole.file.len()).step_by(size) {
            let hit = start..start + size;
            let spared = |line: &Line| is_spared(&places[index_of(&whole, line)], &hit);
            // A line's digest may go with the block before its first byte; the index has it.
            let mut file = whole.file.clone();
            file[hit.clone()].fill(0);
            whole.look(&file, &[], spared, &format!("zeros at {hit:?}"));
            file[hit.clone()].fill_with(|| chance.bits() as u8);
            whole.look(&file, &[], spared, &format!("chance at {hit:?}"));
        }
    }
}

#[test]
fn r11_what_is_left_of_a_cut_file_is_read() {
    let whole = Whole::new(false);
    let places: Vec<_> = whole
        .lines
        .iter()
        .map(|line| places(&whole.file, line))
        .collect();
    let lengths = (0..whole.file.len()).filter(|length| {
        let in_page = length % PAGE_BYTES;
        length % 211 == 0 || in_page < 2 || in_page == PAGE_BYTES - 1 || *length < 130
    });
    for length in lengths {
        let cut = length..usize::MAX;
        let spared = |line: &Line| is_spared(&places[index_of(&whole, line)], &cut);
        let told = whole.look(
            &whole.file[..length],
            &[],
            spared,
            &format!("{length} bytes"),
        );
        assert!(told, "{length} bytes");
    }
}

#[test]
fn r11_a_changed_wal_takes_nothing_along() {
    let whole = Whole::new(true);
    assert!(whole.wal.len() > 30 * PAGE_BYTES);
    // A fault in the last transactions cannot be told from one that a crash cut short, so there the
    // lines before them must be read: each of them takes two frames.
    let frame = PAGE_BYTES + 24;
    let last = whole.wal.len() - 10 * frame;
    let mut wal = whole.wal.clone();
    let (mut tried, mut told) = (0, 0);
    for offset in 0..wal.len() {
        let in_frame = offset.saturating_sub(32) % frame;
        // Heads of frames, and some of what they hold.
        let in_head = in_frame < 24 && (offset / frame).is_multiple_of(3);
        if !(offset < 32 || in_head || offset % 2003 == 0) {
            continue;
        }
        let bit = offset % 8;
        wal[offset] ^= 1 << bit;
        let what = format!("bit {bit} of byte {offset} of the WAL");
        if offset < last {
            // A line on pages of its own stands in the WAL but once.
            let spared = |line: &Line| line.text().len() < 16_000;
            told += usize::from(whole.look(&whole.file, &wal, spared, &what));
        } else {
            let (read, _) = whole.read(&whole.file, &wal).unwrap();
            assert!(
                read.len() >= 55 && read[..55] == whole.lines[..55],
                "{what}"
            );
        }
        tried += 1;
        wal[offset] ^= 1 << bit;
    }
    eprintln!(
        "{} bytes of WAL, {tried} bits flipped, {told} told",
        wal.len()
    );
    assert!(told > 100);
    // As it was, it is sound.
    assert!(!whole.look(&whole.file, &whole.wal, |_| true, "unchanged"));
}
