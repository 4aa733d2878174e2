//! What all pages are made from: the journal at a moment, and how it is to be told.

use heapwright_catalogue::Catalogue;
use heapwright_garden::Garden;
use heapwright_journal::Moment;
use heapwright_state::State;
use heapwright_texts::Locale;
use heapwright_wording::{self as wording, paper as words};

use crate::document::{Block, Cell, Column, Document, Row, Side, Table, Width};

/// The journal at a moment.
#[derive(Clone, Copy)]
pub struct Book<'a> {
    /// The catalogue, in the words of the language.
    pub catalogue: &'a Catalogue,
    /// The garden at that moment.
    pub garden: &'a Garden,
    /// What the journal says.
    pub state: &'a State,
    /// What the clock says.
    pub now: Moment,
    /// In which language and units it is told.
    pub locale: Locale,
}

impl Book<'_> {
    /// A document with all but its blocks.
    pub(crate) fn document(&self, title: String, under: &str, blocks: Vec<Block>) -> Document {
        let local = self.now.local();
        let locale = self.locale;
        let invented = words::invented_garden(locale);
        let under = match (self.garden.invented, under) {
            (false, under) => under.to_owned(),
            (true, "") => invented.to_owned(),
            (true, under) => format!("{invented} {under}"),
        };
        Document {
            title,
            under,
            garden: self.garden.name.clone(),
            day: wording::day_text(self.now, locale),
            date: (local.year(), local.month(), local.day()),
            language: locale.tag().to_owned(),
            tick_word: words::box_to_tick(locale).to_owned(),
            lacking_note: words::letters_lacking(locale).to_owned(),
            blocks,
        }
    }
}

/// A table of which the first row is the head; the first column is of words, the others of figures.
pub(crate) fn headed(rows: Vec<Vec<String>>) -> Option<Block> {
    let mut rows = rows.into_iter();
    let head = rows.next()?;
    let columns = head
        .iter()
        .enumerate()
        .map(|(index, head)| Column {
            head: capital(head),
            side: if index == 0 { Side::Start } else { Side::End },
            width: Width::Fit,
        })
        .collect::<Vec<_>>();
    let rows: Vec<Row> = rows
        .map(|mut row| {
            row.resize(columns.len(), String::new());
            Row::of(row)
        })
        .collect();
    (!rows.is_empty()).then_some(Block::Table(Table {
        columns,
        rows,
        fills: false,
    }))
}

/// Heads of columns begin with a capital here; elements have theirs already, and the sign of a unit
/// ("g of the element") stays as it is.
fn capital(head: &str) -> String {
    let mut letters = head.chars();
    let first_word = head.split(|c: char| !c.is_alphanumeric()).next();
    if first_word.is_some_and(|word| word.chars().count() == 1) {
        return head.to_owned();
    }
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}

/// A row of words with a box to tick at its end.
pub(crate) fn ticked(cells: impl IntoIterator<Item = String>) -> Row {
    let mut row = Row::of(cells);
    row.cells.push(Cell::Tick);
    row
}
