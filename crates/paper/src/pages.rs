//! Pieces are put on sheets.

use crate::PaperError;
use crate::document::{Document, MM, PageSize};
use crate::face::Faces;
use crate::layout::{Piece, SMALL, Setter, letters, rule};
use crate::placed::{Parts, Placed, Sheet};

/// Room at the left and right, and at the top and bottom, that stays white [mm].
pub const MARGIN_MM: (f64, f64) = (18.0, 14.0);
/// Room for the line at the foot, and for the one above a page that goes on [pt].
const FOOT: f64 = 24.0;
const GOES_ON: f64 = 28.0;

/// A document on sheets.
#[derive(Clone, Debug, PartialEq)]
pub struct Laid {
    /// The sheets.
    pub sheets: Vec<Sheet>,
    /// Width and height of each [pt].
    pub size: (f64, f64),
    pub(crate) parts: Parts,
}

/// Lays a document out on paper.
///
/// # Errors
///
/// When the built-in type cannot be read.
pub fn laid_out(document: &Document, size: PageSize) -> Result<Laid, PaperError> {
    let faces = Faces::new()?;
    let (width, height) = size.points();
    let (side, end) = (MARGIN_MM.0 * MM, MARGIN_MM.1 * MM);
    let measure = width - 2.0 * side;
    let mut setter = Setter {
        faces: &faces,
        parts: Parts::default(),
        heads: Vec::new(),
        tick_word: document.tick_word.clone(),
        page_height: height - 2.0 * end - FOOT - GOES_ON,
        lacking: false,
    };
    let mut pieces = vec![setter.top(document, measure)];
    pieces.extend(setter.blocks(&document.blocks, measure));
    if setter.lacking && !document.lacking_note.is_empty() {
        let note = crate::Block::Small(document.lacking_note.clone());
        pieces.extend(setter.blocks(&[note], measure));
    }
    let mut press = Press {
        sheets: vec![Sheet::default()],
        y: end,
        side,
        top: end,
        bottom: height - end - FOOT,
        is_fresh: true,
    };
    let mut index = 0;
    while index < pieces.len() {
        let last = (index..pieces.len())
            .find(|at| !pieces[*at].keeps)
            .unwrap_or(pieces.len() - 1);
        press.put(&pieces[index..=last], &setter.heads);
        index = last + 1;
    }
    let mut sheets = press.sheets;
    around(&mut setter, document, &mut sheets, (width, height));
    Ok(Laid {
        sheets,
        size: (width, height),
        parts: setter.parts,
    })
}

struct Press {
    sheets: Vec<Sheet>,
    y: f64,
    side: f64,
    top: f64,
    bottom: f64,
    is_fresh: bool,
}

impl Press {
    /// Puts pieces that stay together on this sheet, or on the next when they do not fit.
    fn put(&mut self, pieces: &[Piece], heads: &[Piece]) {
        let needed: f64 = pieces
            .iter()
            .enumerate()
            .map(|(index, piece)| {
                let above = if index == 0 && self.is_fresh {
                    0.0
                } else {
                    piece.above
                };
                above + piece.height
            })
            .sum();
        if self.y + needed > self.bottom && !self.is_fresh {
            self.turn();
            self.repeat(pieces, heads);
        }
        for piece in pieces {
            // Only what is higher than a page as a whole is still torn apart here.
            if self.y + piece.height > self.bottom && !self.is_fresh {
                self.turn();
                self.repeat(std::slice::from_ref(piece), heads);
            }
            if !self.is_fresh {
                self.y += piece.above;
            }
            self.stamp(piece, false);
            while piece.fills && piece.height > 1.0 && self.y + piece.height <= self.bottom {
                self.stamp(piece, true);
            }
        }
    }

    /// The head of a table whose rows go on.
    fn repeat(&mut self, pieces: &[Piece], heads: &[Piece]) {
        if let Some(head) = pieces
            .first()
            .and_then(|piece| piece.head)
            .and_then(|head| heads.get(head))
        {
            self.stamp(head, true);
        }
    }

    fn stamp(&mut self, piece: &Piece, again: bool) {
        let y = self.y;
        if let Some(sheet) = self.sheets.last_mut() {
            if let (Some(words), false) = (&piece.outline, again) {
                sheet.heads.push((words.clone(), y));
            }
            sheet.marks.extend(piece.marks.iter().map(|placed| Placed {
                // What is repeated is read once.
                part: placed.part.filter(|_| !again),
                mark: placed.mark.moved(self.side, y),
            }));
        }
        self.y += piece.height;
        self.is_fresh = false;
    }

    fn turn(&mut self) {
        self.sheets.push(Sheet::default());
        self.y = self.top + GOES_ON;
        self.is_fresh = true;
    }
}

/// What stands around the text: the foot of every sheet and the line above those that go on.
fn around(
    setter: &mut Setter<'_>,
    document: &Document,
    sheets: &mut [Sheet],
    (width, height): (f64, f64),
) {
    let (side, end) = (MARGIN_MM.0 * MM, MARGIN_MM.1 * MM);
    let count = sheets.len();
    let half = (width - 2.0 * side) * 0.6;
    for (number, sheet) in (1..).zip(sheets) {
        let mut line = |text: &str, top: f64, at_end: bool| {
            let lines = setter.lines(text, SMALL, half);
            for shaped in lines.into_iter().take(1) {
                let x = if at_end {
                    width - side - shaped.width() * SMALL.size
                } else {
                    side
                };
                sheet.marks.push(Placed {
                    part: None,
                    mark: letters(shaped, SMALL, x, top),
                });
            }
        };
        let foot = height - end - SMALL.leading;
        line("Heapwright", foot, false);
        line(&format!("{number} / {count}"), foot, true);
        if number > 1 {
            line(&document.title, end, false);
            line(&document.day, end, true);
            let y = end + SMALL.leading + 3.0;
            sheet.marks.push(rule(side, width - side, y, 0.4));
        }
    }
}
