//! Do the pages of a whole garden say what they must, whatever the paper, and stay inside its margins?

#![allow(clippy::unwrap_used)] // a fault of the invented garden is a fault of the test

use heapwright_answers::{BedsAnswer, BedsQuestion, beds_of_journal, beds_plan, compost_of_tables};
use heapwright_catalogue::{Catalogue, GERMAN, Spreading};
use heapwright_garden::Garden;
use heapwright_journal::{EventId, FileReader, Moment};
use heapwright_paper::{
    Block, Book, Document, MARGIN_MM, Mark, PageSize, beds_page, bin_page, laid_out, season_page,
    typeset,
};
use heapwright_quantity::UnitSystem;
use heapwright_state::State;
use heapwright_texts::{Locale, Translation};
use heapwright_wording::Spoken;

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

    fn book(&self, locale: Locale) -> Book<'_> {
        self.book_by(Catalogue::built_in(), locale)
    }

    fn book_by<'a>(&'a self, catalogue: &'a Catalogue, locale: Locale) -> Book<'a> {
        Book {
            catalogue,
            garden: &self.garden,
            state: &self.state,
            now: self.now,
            locale,
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
        let book = kept.book(Locale::english(system));
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
    let document = season_page(&kept.book(Locale::default()), from, kept.now);
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
        &kept.book(Locale::default()),
        earlier("2001-01-01T00:00:00+00:00"),
        earlier("2001-12-31T00:00:00+00:00"),
    );
    assert!(words(&empty, PageSize::Letter).contains("Nothing was written down"));
}

/// A plan of all beds of the journal, with compost of the tables.
fn plan(kept: &Kept) -> BedsAnswer {
    let spreading = Spreading::built_in();
    let catalogue = Catalogue::built_in();
    let question = BedsQuestion {
        beds: beds_of_journal(catalogue, spreading, &kept.garden, &kept.state, kept.now),
        compost: compost_of_tables(spreading),
        volume_m3: 0.3,
        volume_is_estimated: false,
    };
    beds_plan(spreading, &question).unwrap()
}

#[test]
fn the_plan_has_a_row_and_a_reason_for_each_bed() {
    let kept = Kept::demo();
    let answer = plan(&kept);
    let document = beds_page(&kept.book(Locale::default()), &answer);
    let text = words(&document, PageSize::A4);
    assert!(answer.beds.len() > 1);
    for bed in &answer.beds {
        assert!(text.matches(bed.asked.name.as_str()).count() >= 2);
    }
}

/// The year that ends now.
fn last_year(kept: &Kept) -> Moment {
    let year_ms = 365 * 86_400_000;
    Moment::new(kept.now.instant_ms - year_ms, kept.now.offset_min).unwrap()
}

#[test]
fn german_pages_are_german_and_lack_no_letter() {
    let mut kept = Kept::demo();
    let spoken: &'static Spoken = Box::leak(Box::new(
        Spoken::read("de", Translation::GERMAN, GERMAN).unwrap(),
    ));
    let catalogue = spoken.catalogue();
    kept.garden = Garden::from_state(catalogue, &kept.state, kept.now);
    let german = spoken.locale();
    let (from, answer) = (last_year(&kept), plan(&kept));
    let made = |locale| {
        let book = kept.book_by(catalogue, locale);
        [
            bin_page(&book, kept.heaps()[0]).unwrap(),
            season_page(&book, from, kept.now),
            beds_page(&book, &answer),
        ]
    };
    let wanted = [
        [
            "Was als Nächstes kommt",
            "1 Küchenbehälter",
            "tropfnass",
            "15. November 2026",
        ],
        [
            "Der Mülltonne erspart, Monat für Monat",
            "Entnommener Kompost",
            "Oktober 2026",
            "Mär",
        ],
        [
            "Kompost für die Beete",
            "Schubkarren",
            "Was jedem Beet eine Grenze setzt",
            "Quellen",
        ],
    ];
    for ((document, english), wanted) in made(german)
        .iter()
        .zip(&made(Locale::default()))
        .zip(wanted)
    {
        assert_eq!(
            (document.language.as_str(), english.language.as_str()),
            ("de", "en")
        );
        // What does not fit is broken or goes on; what is lacking would stand as this.
        for size in [PageSize::A4, PageSize::Letter] {
            let text = words(document, size);
            for wanted in wanted {
                assert!(text.contains(wanted), "{wanted}: {text}");
            }
            assert!(!text.contains('\u{25af}'), "{text}");
            assert!(!text.contains(&document.lacking_note));
        }
        assert_eq!(document.blocks.len(), english.blocks.len());
        let file = typeset(document, PageSize::A4).unwrap();
        assert!(file.windows(9).any(|at| at == b"/Lang(de)"));
    }
}

#[test]
fn the_same_journal_gives_the_same_bytes() {
    let kept = Kept::demo();
    let heap = kept.heaps()[0];
    let bytes = || {
        let document = bin_page(&kept.book(Locale::default()), heap).unwrap();
        typeset(&document, PageSize::A4).unwrap()
    };
    assert_eq!(bytes(), bytes());
}
