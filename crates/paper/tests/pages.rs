//! Do the pages of a whole garden say what they must, whatever the paper, and stay inside its margins?

#![allow(clippy::unwrap_used)] // a fault of the invented garden is a fault of the test

use heapwright_answers::{BedsQuestion, beds_of_journal, beds_plan, compost_of_tables};
use heapwright_catalogue::{Catalogue, Spreading};
use heapwright_garden::Garden;
use heapwright_journal::{EventId, FileReader, Moment};
use heapwright_paper::{
    Block, Book, Document, MARGIN_MM, Mark, PageSize, beds_page, bin_page, laid_out, season_page,
    typeset,
};
use heapwright_quantity::UnitSystem;
use heapwright_state::State;

const NOW: &str = "2026-11-15T12:00:00+00:00";

struct Kept {
    state: State,
    garden: Garden,
    now: Moment,
}

impl Kept {
    fn demo() -> Self {
        let day = jiff::civil::date(2026, 11, 15);
        let mut reader = FileReader::default();
        let mut state = State::default();
        state.take_all(
            heapwright_invented::lines(&heapwright_invented::Plan::demo(day))
                .map(Result::unwrap)
                .filter_map(|line| reader.read(line.as_bytes()))
                .map(|(line, event)| (line.digest(), event)),
        );
        let now: Moment = NOW.parse().unwrap();
        Self {
            garden: Garden::from_state(Catalogue::built_in(), &state, now),
            state,
            now,
        }
    }

    fn book(&self, system: UnitSystem) -> Book<'_> {
        Book {
            catalogue: Catalogue::built_in(),
            garden: &self.garden,
            state: &self.state,
            now: self.now,
            system,
        }
    }

    fn heaps(&self) -> Vec<EventId> {
        self.state.heaps().map(|heap| heap.id).collect()
    }
}

fn words(document: &Document, size: PageSize) -> String {
    let laid = laid_out(document, size).unwrap();
    let mut all = String::new();
    let (side, end) = (MARGIN_MM.0 * 72.0 / 25.4, MARGIN_MM.1 * 72.0 / 25.4);
    for sheet in &laid.sheets {
        for placed in &sheet.marks {
            let (left, top, right, bottom) = placed.mark.bounds();
            assert!(
                left >= side - 0.01 && right <= laid.size.0 - side + 0.01,
                "{:?}",
                placed.mark
            );
            assert!(
                top >= end - 0.01 && bottom <= laid.size.1 - end + 0.01,
                "{:?}",
                placed.mark
            );
            if let Mark::Letters { shaped, .. } = &placed.mark {
                all.push_str(&shaped.text.replace('\u{a0}', " "));
                all.push('\n');
            }
        }
    }
    all
}

#[test]
fn every_heap_has_its_page_on_both_papers_and_in_both_units() {
    let kept = Kept::demo();
    for (system, size, unit) in [
        (UnitSystem::Metric, PageSize::A4, "Core, °C"),
        (UnitSystem::UsCustomary, PageSize::Letter, "Core, °F"),
    ] {
        let book = kept.book(system);
        for heap in kept.heaps() {
            let document = bin_page(&book, heap).unwrap();
            let text = words(&document, size);
            for wanted in [
                "1 caddy",
                "3 caddies",
                "dripping",
                "What comes next",
                "Wear gloves",
                unit,
            ] {
                assert!(text.contains(wanted), "{wanted}");
            }
            // Two sides of a sheet, unless very much went in that must be seen to.
            assert!(laid_out(&document, size).unwrap().sheets.len() <= 3);
        }
    }
}

#[test]
fn the_record_tells_months_readings_turnings_and_harvests() {
    let kept = Kept::demo();
    let from = "2025-11-15T12:00:00+00:00".parse().unwrap();
    let document = season_page(&kept.book(UnitSystem::Metric), from, kept.now);
    let text = words(&document, PageSize::A4);
    for wanted in [
        "Kept out of the bin, month by month",
        "Turned once",
        "Compost taken out",
        "What went in, the most first",
        "October 2026",
    ] {
        assert!(text.contains(wanted), "{wanted}");
    }
    let charts = |blocks: &[Block]| {
        let is_chart = |block: &&Block| matches!(block, Block::Figure(_));
        blocks.iter().filter(is_chart).count()
    };
    assert!(charts(&document.blocks) > 0);
    let earlier = |text: &str| -> Moment { text.parse().unwrap() };
    let empty = season_page(
        &kept.book(UnitSystem::Metric),
        earlier("2001-01-01T00:00:00+00:00"),
        earlier("2001-12-31T00:00:00+00:00"),
    );
    assert!(words(&empty, PageSize::Letter).contains("Nothing was written down"));
}

#[test]
fn the_plan_has_a_row_and_a_reason_for_each_bed() {
    let kept = Kept::demo();
    let spreading = Spreading::built_in();
    let catalogue = Catalogue::built_in();
    let question = BedsQuestion {
        beds: beds_of_journal(catalogue, spreading, &kept.garden, &kept.state, kept.now),
        compost: compost_of_tables(spreading),
        volume_m3: 0.3,
        volume_is_estimated: false,
    };
    let answer = beds_plan(spreading, &question).unwrap();
    let document = beds_page(&kept.book(UnitSystem::Metric), &answer);
    let text = words(&document, PageSize::A4);
    assert!(answer.beds.len() > 1);
    for bed in &answer.beds {
        assert!(text.matches(bed.asked.name.as_str()).count() >= 2);
    }
}

#[test]
fn the_same_journal_gives_the_same_bytes() {
    let kept = Kept::demo();
    let heap = kept.heaps()[0];
    let bytes = || {
        let document = bin_page(&kept.book(UnitSystem::Metric), heap).unwrap();
        typeset(&document, PageSize::A4).unwrap()
    };
    assert_eq!(bytes(), bytes());
}
