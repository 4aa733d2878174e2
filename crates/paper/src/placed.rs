//! What stands where on a sheet, and which part of the document it belongs to.

use crate::drawing::Ink;
use crate::face::{Shaped, Weight};

/// One mark; lengths in points from the upper left corner, y down.
#[derive(Clone, Debug, PartialEq)]
pub struct Placed {
    /// The part of the document it belongs to; `None` for what is no content: rules, page numbers.
    pub part: Option<usize>,
    /// What it is.
    pub mark: Mark,
}

/// What is put on paper.
#[derive(Clone, Debug, PartialEq)]
pub enum Mark {
    /// A line of letters.
    Letters {
        /// The letters.
        shaped: Shaped,
        /// The weight.
        weight: Weight,
        /// Their size [pt].
        size: f64,
        /// Where the line begins.
        x: f64,
        /// Where it stands.
        baseline: f64,
    },
    /// A straight rule.
    Rule {
        /// From where.
        from: (f64, f64),
        /// To where.
        to: (f64, f64),
        /// How thick it is [pt].
        weight: f64,
    },
    /// A line or an area.
    Path {
        /// How it is drawn.
        ink: Ink,
        /// Through where.
        points: Vec<(f64, f64)>,
        /// Whether the last point is joined to the first.
        closed: bool,
    },
    /// A disc.
    Disc {
        /// How it is drawn.
        ink: Ink,
        /// Its middle.
        centre: (f64, f64),
        /// Its radius.
        radius: f64,
    },
}

impl Mark {
    /// The same elsewhere.
    #[must_use]
    pub fn moved(&self, by_x: f64, by_y: f64) -> Self {
        let go = |(x, y): (f64, f64)| (x + by_x, y + by_y);
        let mut copy = self.clone();
        match &mut copy {
            Self::Letters { x, baseline, .. } => (*x, *baseline) = go((*x, *baseline)),
            Self::Rule { from, to, .. } => (*from, *to) = (go(*from), go(*to)),
            Self::Path { points, .. } => {
                for point in points {
                    *point = go(*point);
                }
            }
            Self::Disc { centre, .. } => *centre = go(*centre),
        }
        copy
    }

    /// Left, upper, right and lower end.
    #[must_use]
    pub fn bounds(&self) -> (f64, f64, f64, f64) {
        match self {
            Self::Letters {
                shaped,
                size,
                x,
                baseline,
                ..
            } => (
                *x,
                baseline - ABOVE * size,
                x + shaped.width() * size,
                baseline + BELOW * size,
            ),
            Self::Rule { from, to, .. } => (
                from.0.min(to.0),
                from.1.min(to.1),
                from.0.max(to.0),
                from.1.max(to.1),
            ),
            Self::Path { points, .. } => points.iter().fold(
                (f64::MAX, f64::MAX, f64::MIN, f64::MIN),
                |(left, top, right, bottom), (x, y)| {
                    (left.min(*x), top.min(*y), right.max(*x), bottom.max(*y))
                },
            ),
            Self::Disc { centre, radius, .. } => (
                centre.0 - radius,
                centre.1 - radius,
                centre.0 + radius,
                centre.1 + radius,
            ),
        }
    }
}

/// How far letters reach above and below the line they stand on, in sizes of the type; accents on
/// capitals included.
const ABOVE: f64 = 0.94;
const BELOW: f64 = 0.27;

/// One sheet.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Sheet {
    /// What stands on it, in the order of reading.
    pub marks: Vec<Placed>,
    /// Heads that begin here: their words and where [pt from the upper edge].
    pub heads: Vec<(String, f64)>,
}

/// What a part of the document is.
#[derive(Clone, Debug, PartialEq)]
pub enum Kind {
    /// The title, with its words.
    Title(String),
    /// The head of a part, with its words.
    Heading(String),
    /// A paragraph.
    Paragraph,
    /// A list and its lines.
    List,
    /// A line of a list.
    Item,
    /// What a line of a list says.
    ItemBody,
    /// A table.
    Table,
    /// A row.
    Row,
    /// The head of a column.
    Head,
    /// The head of a row.
    RowHead,
    /// A cell.
    Cell,
    /// A drawing and what it tells.
    Figure(String),
    /// A box to tick: what a reader aloud says.
    Tick(String),
}

/// A part of the document.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// What it is.
    pub kind: Kind,
    /// The part that it is in.
    pub inside: Option<usize>,
}

/// The parts of the document, in the order of reading.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Parts(pub Vec<Part>);

impl Parts {
    /// Adds one; returns its number.
    pub fn add(&mut self, kind: Kind, inside: Option<usize>) -> usize {
        self.0.push(Part { kind, inside });
        self.0.len() - 1
    }
}
