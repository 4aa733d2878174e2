//! What stands on paper, before anybody knows how large the paper is.
//!
//! A document is plain data that can be sent: the worker beside the page makes one from the
//! journal, and the module that sets type makes a PDF of it.

use serde::{Deserialize, Serialize};

use crate::drawing::Drawing;

/// A document.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Document {
    /// What it is called.
    pub title: String,
    /// A line below the title; may be empty.
    pub under: String,
    /// Whose it is: the garden's name.
    pub garden: String,
    /// The day, as it is shown.
    pub day: String,
    /// The day: year, month, day of the month.
    pub date: (i16, i8, i8),
    /// Language tag of its words: "en".
    pub language: String,
    /// What a reader aloud says for a box to tick.
    pub tick_word: String,
    /// What is said below everything when a letter is not in the type.
    pub lacking_note: String,
    /// What stands there, in the order of reading.
    pub blocks: Vec<Block>,
}

/// A piece of a document.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Block {
    /// Begins a part; stands in the outline.
    Heading(String),
    /// A sentence that is to be seen first.
    Lead(String),
    /// A paragraph.
    Paragraph(String),
    /// Small print.
    Small(String),
    /// Something to beware of.
    Caution(String),
    /// Short lines, each with a mark before it.
    List(Vec<String>),
    /// Rows and columns.
    Table(Table),
    /// A drawing with its key.
    Figure(Figure),
    /// Two columns, where the paper is wide enough to hold both at once.
    Beside {
        /// The left one.
        left: Vec<Block>,
        /// The right one.
        right: Vec<Block>,
        /// Part of the width that the left one takes, 0 to 1.
        left_share: f64,
    },
}

/// Rows and columns.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Table {
    /// The columns, each with its head.
    pub columns: Vec<Column>,
    /// The rows; of each as many cells as there are columns.
    pub rows: Vec<Row>,
    /// The last row is repeated to the end of its page: lines to write on.
    pub fills: bool,
}

/// A column.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Column {
    /// Its head; may be empty.
    pub head: String,
    /// Where its words stand.
    pub side: Side,
    /// How wide it is.
    pub width: Width,
}

/// Where words stand in their column.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Side {
    /// Where a line begins.
    Start,
    /// In the middle.
    Middle,
    /// Where a line ends.
    End,
}

/// How wide a column is.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub enum Width {
    /// As its longest words, if there is room.
    Fit,
    /// So many millimetres.
    Millimetres(f64),
    /// A share of what the others leave.
    Share(f64),
}

/// A row.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Row {
    /// Its cells.
    pub cells: Vec<Cell>,
    /// It is at least so high [mm]: room to write by hand.
    pub height_mm: f64,
    /// Set in bold, such as a sum.
    pub strong: bool,
}

/// A cell.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Cell {
    /// Words.
    Text(String),
    /// A box to tick.
    Tick,
    /// Room to write.
    Blank,
}

/// A drawing with its key.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Figure {
    /// The drawing.
    pub drawing: Drawing,
    /// What it tells, in words, for whoever cannot see it.
    pub told: String,
    /// What stands below it; may be empty.
    pub caption: String,
}

impl Column {
    /// A column of words, as wide as they are.
    #[must_use]
    pub fn fit(head: &str, side: Side) -> Self {
        Self {
            head: head.to_owned(),
            side,
            width: Width::Fit,
        }
    }

    /// A column that takes a share of what the others leave.
    #[must_use]
    pub fn share(head: &str, share: f64) -> Self {
        Self {
            head: head.to_owned(),
            side: Side::Start,
            width: Width::Share(share),
        }
    }
}

impl Row {
    /// A row of words.
    #[must_use]
    pub fn of(cells: impl IntoIterator<Item = String>) -> Self {
        Self {
            cells: cells.into_iter().map(Cell::Text).collect(),
            ..Self::default()
        }
    }
}

/// A sheet of paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum PageSize {
    /// 210 by 297 mm (ISO 216).
    A4,
    /// 8.5 by 11 inches (ANSI/ASME Y14.1).
    Letter,
}

impl PageSize {
    /// Width and height [pt].
    #[must_use]
    pub fn points(self) -> (f64, f64) {
        match self {
            Self::A4 => (210.0 * MM, 297.0 * MM),
            Self::Letter => (612.0, 792.0),
        }
    }
}

/// Points in a millimetre.
pub(crate) const MM: f64 = 72.0 / 25.4;
