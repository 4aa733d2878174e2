//! What does a keeper take to the heap, file or pin to the shed? Answers become documents, and
//! documents become typeset PDF: black on white, fonts inside, with the structure that a reader
//! aloud needs.
//!
//! The same document gives the same bytes. Every date comes from outside.
#![cfg_attr(test, allow(clippy::unwrap_used))]

mod beds_page;
mod bin_page;
mod book;
mod document;
mod drawing;
mod face;
mod layout;
mod lines;
mod pages;
mod pdf;
mod placed;
mod season_page;
mod table;

pub use beds_page::beds_page;
pub use bin_page::bin_page;
pub use book::Book;
pub use document::{Block, Cell, Column, Document, Figure, PageSize, Row, Side, Table, Width};
pub use drawing::{Drawing, Ink, POINTS_OF_PIXEL, Stroke};
pub use pages::{Laid, MARGIN_MM, laid_out};
pub use pdf::typeset;
pub use placed::{Mark, Placed, Sheet};
pub use season_page::season_page;

/// Why nothing could be typeset.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PaperError {
    /// The fonts that are built in cannot be read.
    Type,
    /// The file cannot be written; what the writer said.
    Writer(String),
}

impl std::fmt::Display for PaperError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Type => f.write_str("the built-in type cannot be read: install the program anew"),
            Self::Writer(why) => write!(
                f,
                "the page cannot be typeset ({why}): please report it, with the command that you gave"
            ),
        }
    }
}

impl std::error::Error for PaperError {}
