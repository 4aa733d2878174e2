//! Published experiments, simulated with default parameters, each with its source.
//!
//! Every figure lies in the range that was asked of it, or is a known miss with its size and
//! its reason (`known_misses`). The table of all figures in `docs/measurements/heap-checks.md`
//! is written by `UPDATE_MEASUREMENTS=1 cargo test -p heapwright-engine --test published_heaps`
//! and compared otherwise, so that it is never stale.
//!
//! Where a source is silent, the module says what was assumed.
#![allow(clippy::unwrap_used)]

#[path = "../heap_cases/mod.rs"]
mod heap_cases;

mod batches;
mod bench;
mod gases;
mod harness;
mod home_bins;
mod household;
mod known_misses;
mod leaves_and_sticks;
mod litter;
mod nitrogen;
mod setup;
mod vessels;
mod windrows;

use std::sync::OnceLock;

use harness::Row;
use known_misses::{KNOWN_MISSES, Miss};

/// Experiments that are set up alike.
struct Family {
    compute: fn() -> Vec<Row>,
    rows: OnceLock<Vec<Row>>,
}

impl Family {
    const fn new(compute: fn() -> Vec<Row>) -> Self {
        Self {
            compute,
            rows: OnceLock::new(),
        }
    }

    fn rows(&self) -> &[Row] {
        self.rows.get_or_init(self.compute)
    }

    fn judge(&self) {
        let faults: Vec<String> = self
            .rows()
            .iter()
            .filter_map(|row| fault(row, KNOWN_MISSES))
            .collect();
        assert!(faults.is_empty(), "\n{}", faults.join("\n"));
    }
}

static BENCH: Family = Family::new(bench::rows);
static VESSELS: Family = Family::new(vessels::rows);
static HOUSEHOLD: Family = Family::new(household::rows);
static HOME_BINS: Family = Family::new(home_bins::rows);
static LITTER: Family = Family::new(litter::rows);
static NITROGEN: Family = Family::new(nitrogen::rows);
static GASES: Family = Family::new(gases::rows);
static WINDROWS: Family = Family::new(windrows::rows);
static LEAVES_AND_STICKS: Family = Family::new(leaves_and_sticks::rows);
static BATCHES_IN_BOARDS: Family = Family::new(batches::rows_of_boards);
static BATCHES_IN_FOAM: Family = Family::new(batches::rows_of_foam);

fn families() -> [&'static Family; 11] {
    [
        &BENCH,
        &VESSELS,
        &HOUSEHOLD,
        &HOME_BINS,
        &LITTER,
        &NITROGEN,
        &GASES,
        &WINDROWS,
        &LEAVES_AND_STICKS,
        &BATCHES_IN_BOARDS,
        &BATCHES_IN_FOAM,
    ]
}

/// The open data of these may be absent.
fn is_of_batches(id: &str) -> bool {
    id.starts_with("J5")
}

fn known<'a>(row: &Row, misses: &'a [Miss]) -> Option<&'a Miss> {
    misses
        .iter()
        .find(|miss| miss.id == row.id && miss.figure == row.figure)
}

/// What is wrong with a row, given the known misses.
fn fault(row: &Row, misses: &[Miss]) -> Option<String> {
    let told = |what: String| {
        Some(format!(
            "{} {}: {:.4} where {:?} is asked; {what}",
            row.id, row.figure, row.computed, row.asked
        ))
    };
    if !row.computed.is_finite() {
        return told("it is no number".into());
    }
    let miss = row.miss();
    match known(row, misses) {
        None if miss > 0.0 => told(format!("misses by {miss:.3} and is no known miss")),
        Some(_) if miss == 0.0 => told("is inside; take it off the known misses".into()),
        Some(known) if miss > known.size + 0.1 * row.width() => told(format!(
            "misses by {miss:.3}, more than the known {} and a tenth of the range",
            known.size
        )),
        _ => None,
    }
}

#[test]
fn bench() {
    BENCH.judge();
}

#[test]
fn vessels() {
    VESSELS.judge();
}

#[test]
fn household_heap() {
    HOUSEHOLD.judge();
}

#[test]
fn home_bins() {
    HOME_BINS.judge();
}

#[test]
fn litter() {
    LITTER.judge();
}

#[test]
fn nitrogen() {
    NITROGEN.judge();
}

#[test]
fn gases() {
    GASES.judge();
}

#[test]
fn windrows() {
    WINDROWS.judge();
}

#[test]
fn leaves_and_sticks() {
    LEAVES_AND_STICKS.judge();
}

#[test]
fn batches_in_boards() {
    BATCHES_IN_BOARDS.judge();
}

#[test]
fn batches_in_foam() {
    BATCHES_IN_FOAM.judge();
}

#[test]
fn every_known_miss_belongs_to_a_figure_and_every_figure_has_its_own_name() {
    let rows: Vec<&Row> = families().iter().flat_map(|family| family.rows()).collect();
    for miss in KNOWN_MISSES {
        if is_of_batches(miss.id) && !batches::at_hand() {
            continue;
        }
        let meant = rows
            .iter()
            .filter(|row| row.id == miss.id && row.figure == miss.figure);
        assert_eq!(meant.count(), 1, "{} {}", miss.id, miss.figure);
    }
    let mut names: Vec<_> = rows.iter().map(|row| (row.id, row.figure)).collect();
    let all = names.len();
    names.sort_unstable();
    names.dedup();
    assert_eq!(names.len(), all);
}

#[test]
fn a_new_miss_a_mended_one_and_a_grown_one_are_faults() {
    let row = |computed| harness::validation("X", "").row("figure", "", 10.0..=20.0, computed);
    let told = [Miss {
        id: "X",
        figure: "figure",
        size: 3.0,
        reason: "",
    }];
    assert_eq!(fault(&row(12.0), &[]), None);
    assert!(fault(&row(9.9), &[]).is_some());
    assert!(fault(&row(f64::NAN), &told).is_some());
    assert!(fault(&row(12.0), &told).is_some());
    assert_eq!(fault(&row(7.0), &told), None);
    assert_eq!(fault(&row(23.9), &told), None);
    assert!(fault(&row(24.1), &told).is_some());
}

const DOCUMENT: &str = concat!(
    env!("CARGO_MANIFEST_DIR"),
    "/../../docs/measurements/heap-checks.md"
);
const HEAD: &str = "| id | figure | published | asked | simulated | verdict | sets or checks | source |\n\
                    |---|---|---|---|---|---|---|---|";

fn table() -> String {
    let rows = || families().into_iter().flat_map(Family::rows);
    let inside = |role| {
        let of_role = || rows().filter(move |row| row.role == role);
        let inside = of_role().filter(|row| row.miss() == 0.0).count();
        (inside, of_role().count())
    };
    let (set, all_set) = inside(harness::Role::Calibration);
    let (checked, all_checked) = inside(harness::Role::Validation);
    let lines: Vec<String> = rows()
        .map(|row| row.line(known(row, KNOWN_MISSES).map(|miss| miss.reason)))
        .collect();
    format!(
        "{checked} of {all_checked} figures that only check lie inside, and {set} of {all_set} of those with which parameters were set.\n\n{HEAD}\n{}",
        lines.join("\n")
    )
}

/// Writes what is computed between the marks of the document, or compares it.
fn written(name: &str, computed: &str, document: &mut String) {
    let (begin, end) = (
        format!("<!-- {name}: written by the test -->"),
        format!("<!-- end of {name} -->"),
    );
    let (before, rest) = document.split_once(&begin).unwrap();
    let (old, after) = rest.split_once(&end).unwrap();
    if std::env::var_os("UPDATE_MEASUREMENTS").is_some() {
        assert!(
            batches::at_hand(),
            "without the batches the table would lose their lines"
        );
        *document = format!("{before}{begin}\n\n{computed}\n\n{end}{after}");
        return;
    }
    // Without the batches, their lines and the count of all go unchecked.
    let checked = |line: &&str| {
        batches::at_hand()
            || !(line.starts_with("| J5") || line.contains(" figures that only check "))
    };
    let (old, new): (Vec<_>, Vec<_>) = (
        old.trim().lines().filter(checked).collect(),
        computed.lines().filter(checked).collect(),
    );
    for line in 0..old.len().max(new.len()) {
        let (old, new) = (old.get(line).unwrap_or(&""), new.get(line).unwrap_or(&""));
        assert!(
            harness::alike(old, new),
            "the document says\n{old}\nbut computed is\n{new}\nrun with UPDATE_MEASUREMENTS=1"
        );
    }
}

#[test]
fn the_document_tells_what_is_computed() {
    let read = std::fs::read_to_string(DOCUMENT).unwrap();
    let mut document = read.clone();
    written("published experiments", &table(), &mut document);
    written("household heap", &household::table(), &mut document);
    if document != read {
        std::fs::write(DOCUMENT, document).unwrap();
    }
}
