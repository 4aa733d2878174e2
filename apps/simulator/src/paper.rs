//! Pages to print as documents: the one beside a heap, and the record of a season.

use heapwright_garden::Garden;
use heapwright_journal::Moment;
use heapwright_paper::{Book, bin_page, season_page};
use heapwright_wire::PaperQuestion;
use heapwright_wording as wording;

use crate::outlook::read_state;
use crate::spoken::{catalogue, locale, unread};

/// Milliseconds of the time that a record is of: a year.
const YEAR_MS: i64 = 365 * 86_400_000;

/// Makes a document from the journal, as text for the module that sets type.
///
/// # Errors
///
/// When the question cannot be read, or a page cannot be worked out; a sentence.
pub fn paper(question: &str) -> Result<String, String> {
    let asked: PaperQuestion = serde_json::from_str(question).map_err(unread)?;
    let now: Moment = asked.now.parse().map_err(unread)?;
    let state = read_state(&asked.journal);
    let garden = Garden::from_state(catalogue(), &state, now);
    let book = Book {
        catalogue: catalogue(),
        garden: &garden,
        state: &state,
        now,
        locale: locale(asked.us_units),
    };
    let document = if asked.heap.is_empty() {
        let from = Moment::new(now.instant_ms - YEAR_MS, now.offset_min).unwrap_or(now);
        season_page(&book, from, now)
    } else {
        let heap = asked.heap.parse().map_err(unread)?;
        bin_page(&book, heap).map_err(|error| wording::question_refusal(&error, book.locale))?
    };
    serde_json::to_string(&document).map_err(|error| error.to_string())
}
