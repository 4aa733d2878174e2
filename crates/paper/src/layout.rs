//! Blocks become pieces: what may not be torn apart, with the room it needs.

use crate::document::{Block, Document, Figure};
use crate::drawing::{Ink, Stroke};
use crate::face::{Faces, Shaped, Weight};
use crate::lines::{Setting, lines};
use crate::placed::{Kind, Mark, Parts, Placed};
use crate::table;

/// Sizes of the type. Nothing is smaller than 9 pt.
pub const TITLE: Setting = setting(Weight::Strong, 22.0, 26.0);
pub const LEAD: Setting = setting(Weight::Strong, 11.5, 16.0);
pub const HEADING: Setting = setting(Weight::Strong, 13.0, 17.0);
pub const BODY: Setting = setting(Weight::Regular, 10.0, 14.0);
pub const SMALL: Setting = setting(Weight::Regular, 9.0, 12.0);

const fn setting(weight: Weight, size: f64, leading: f64) -> Setting {
    Setting {
        weight,
        size,
        leading,
        even: false,
    }
}

/// Longest line that the eye comes back from with ease: some 85 letters of 10 pt.
const LONGEST_LINE: f64 = 420.0;
/// Room between two columns.
const GUTTER: f64 = 24.0;
/// Where a line of a list begins behind its mark.
const INDENT: f64 = 12.0;
/// Where a caution begins behind its bar.
const BAR: f64 = 10.0;

/// What stays in one place, whole.
#[derive(Clone, Debug, Default)]
pub struct Piece {
    /// Room above it, unless it begins a page.
    pub above: f64,
    /// Its own height.
    pub height: f64,
    /// Stays on the page of the next one.
    pub keeps: bool,
    /// Of which table it is a row: what is repeated above it on the next page.
    pub head: Option<usize>,
    /// Repeated to the end of its page.
    pub fills: bool,
    /// Its words for the outline.
    pub outline: Option<String>,
    /// Its marks, from its own upper left corner.
    pub marks: Vec<Placed>,
}

/// What all pieces need.
pub struct Setter<'a> {
    /// The type.
    pub faces: &'a Faces,
    /// The parts so far.
    pub parts: Parts,
    /// Heads of tables, to be repeated.
    pub heads: Vec<Piece>,
    /// What a reader aloud says for a box to tick.
    pub tick_word: String,
    /// Height of what fits on one page.
    pub page_height: f64,
    /// Whether a letter was lacking.
    pub lacking: bool,
}

impl Setter<'_> {
    /// The lines of a text.
    pub fn lines(&mut self, text: &str, setting: Setting, width: f64) -> Vec<Shaped> {
        let (text, lacks) = self.faces.showable(text);
        self.lacking |= lacks;
        lines(self.faces, &text, setting, width)
    }

    /// All blocks, below each other.
    pub fn blocks(&mut self, blocks: &[Block], width: f64) -> Vec<Piece> {
        let mut pieces = Vec::new();
        for block in blocks {
            self.block(block, width, &mut pieces);
        }
        pieces
    }

    fn block(&mut self, block: &Block, width: f64, pieces: &mut Vec<Piece>) {
        match block {
            Block::Heading(text) => {
                let part = self.parts.add(Kind::Heading(text.clone()), None);
                let mut set = self.paragraph(text, HEADING, width, 0.0, part, 20.0);
                for piece in &mut set {
                    piece.keeps = true;
                }
                if let Some(first) = set.first_mut() {
                    first.outline = Some(text.clone());
                }
                pieces.extend(set);
            }
            Block::Lead(text) => self.plain(text, LEAD, width, 8.0, pieces),
            Block::Paragraph(text) => self.plain(text, BODY, width, 6.0, pieces),
            Block::Small(text) => self.plain(text, SMALL, width, 6.0, pieces),
            Block::Caution(text) => {
                let part = self.parts.add(Kind::Paragraph, None);
                let mut set = self.paragraph(text, BODY, width - BAR, BAR, part, 8.0);
                for piece in &mut set {
                    piece.marks.push(Placed {
                        part: None,
                        mark: Mark::Rule {
                            from: (1.25, 0.0),
                            to: (1.25, piece.height),
                            weight: 2.5,
                        },
                    });
                }
                pieces.extend(set);
            }
            Block::List(items) => self.list(items, width, pieces),
            Block::Table(table) => {
                let set = table::set(self, table, width);
                pieces.extend(set);
            }
            Block::Figure(figure) => {
                let piece = self.figure(figure, width);
                pieces.push(piece);
            }
            Block::Beside {
                left,
                right,
                left_share,
            } => self.beside(left, right, *left_share, width, pieces),
        }
    }

    fn plain(
        &mut self,
        text: &str,
        setting: Setting,
        width: f64,
        above: f64,
        pieces: &mut Vec<Piece>,
    ) {
        let part = self.parts.add(Kind::Paragraph, None);
        let set = self.paragraph(text, setting, width, 0.0, part, above);
        pieces.extend(set);
    }

    /// A paragraph: no page begins or ends with one line of it alone.
    fn paragraph(
        &mut self,
        text: &str,
        setting: Setting,
        width: f64,
        indent: f64,
        part: usize,
        above: f64,
    ) -> Vec<Piece> {
        let set = self.lines(text, setting, width.min(LONGEST_LINE));
        let count = set.len();
        let mut pieces: Vec<Piece> = Vec::new();
        for (index, shaped) in set.into_iter().enumerate() {
            let piece = Piece {
                above: if index == 0 { above } else { 0.0 },
                height: setting.leading,
                keeps: (index == 0 && count > 1) || index + 2 == count,
                marks: vec![Placed {
                    part: Some(part),
                    mark: letters(shaped, setting, indent, 0.0),
                }],
                ..Piece::default()
            };
            pieces.push(piece);
        }
        pieces
    }

    fn list(&mut self, items: &[String], width: f64, pieces: &mut Vec<Piece>) {
        if items.is_empty() {
            return;
        }
        let list = self.parts.add(Kind::List, None);
        for (index, item) in items.iter().enumerate() {
            let entry = self.parts.add(Kind::Item, Some(list));
            let body = self.parts.add(Kind::ItemBody, Some(entry));
            let above = if index == 0 { 6.0 } else { 3.0 };
            let mut set = self.paragraph(item, BODY, width - INDENT, INDENT, body, above);
            if let Some(first) = set.first_mut() {
                first.marks.push(Placed {
                    part: None,
                    mark: Mark::Rule {
                        from: (0.0, BODY.leading * 0.52),
                        to: (5.0, BODY.leading * 0.52),
                        weight: 0.8,
                    },
                });
            }
            pieces.extend(set);
        }
    }

    fn figure(&mut self, figure: &Figure, width: f64) -> Piece {
        let part = self.parts.add(Kind::Figure(figure.told.clone()), None);
        let drawing = &figure.drawing;
        // Never wider than its column; letters keep their size.
        let scale = (width / drawing.width).min(1.0);
        let mut marks: Vec<Placed> = Vec::new();
        for stroke in &drawing.strokes {
            let go = |(x, y): (f64, f64)| (x * scale, y * scale);
            let mark = match stroke {
                Stroke::Path {
                    ink,
                    points,
                    closed,
                } => Mark::Path {
                    ink: *ink,
                    points: points.iter().copied().map(go).collect(),
                    closed: *closed,
                },
                Stroke::Disc {
                    ink,
                    centre,
                    radius,
                } => Mark::Disc {
                    ink: *ink,
                    centre: go(*centre),
                    radius: *radius,
                },
                Stroke::Word {
                    at,
                    hang,
                    text,
                    strong,
                } => self.word(go(*at), *hang, text, *strong, width),
            };
            // What guides the eye stays off the words.
            if let Mark::Letters { .. } = mark {
                let (left, top, right, bottom) = mark.bounds();
                marks.push(Placed {
                    part: Some(part),
                    mark: Mark::Path {
                        ink: Ink::Paper,
                        points: vec![
                            (left, top + 2.0),
                            (right, top + 2.0),
                            (right, bottom),
                            (left, bottom),
                        ],
                        closed: true,
                    },
                });
            }
            marks.push(Placed {
                part: Some(part),
                mark,
            });
        }
        let mut height = drawing.height * scale;
        if !figure.caption.is_empty() {
            let below = self.parts.add(Kind::Paragraph, None);
            for shaped in self.lines(&figure.caption, SMALL, width.min(LONGEST_LINE)) {
                marks.push(Placed {
                    part: Some(below),
                    mark: letters(shaped, SMALL, 0.0, height + 2.0),
                });
                height += SMALL.leading;
            }
            height += 2.0;
        }
        Piece {
            above: 8.0,
            height,
            marks,
            ..Piece::default()
        }
    }

    /// A word of a drawing; it is moved rather than let out of its column.
    fn word(&mut self, at: (f64, f64), hang: f64, text: &str, strong: bool, width: f64) -> Mark {
        let weight = if strong {
            Weight::Strong
        } else {
            Weight::Regular
        };
        let (text, lacks) = self.faces.showable(text);
        self.lacking |= lacks;
        let shaped = self.faces.shape(&text, weight, true);
        let long = shaped.width() * SMALL.size;
        Mark::Letters {
            x: (at.0 - long * hang).min(width - long).max(0.0),
            baseline: at.1,
            size: SMALL.size,
            shaped,
            weight,
        }
    }

    /// Two columns as one piece, or one below the other when they are higher than a page.
    fn beside(
        &mut self,
        left: &[Block],
        right: &[Block],
        left_share: f64,
        width: f64,
        pieces: &mut Vec<Piece>,
    ) {
        let room = width - GUTTER;
        let (heads, parts) = (self.heads.len(), self.parts.clone());
        let left_width = room * left_share.clamp(0.2, 0.8);
        let of_left = joined(self.blocks(left, left_width));
        let of_right = joined(self.blocks(right, room - left_width));
        let height = of_left.height.max(of_right.height);
        if height > self.page_height * 0.9 {
            self.heads.truncate(heads);
            self.parts = parts;
            pieces.extend(self.blocks(left, width));
            pieces.extend(self.blocks(right, width));
            return;
        }
        let mut whole = Piece {
            above: of_left.above.max(of_right.above),
            height,
            outline: of_left.outline.clone(),
            marks: of_left.marks,
            ..Piece::default()
        };
        let by = left_width + GUTTER;
        whole
            .marks
            .extend(of_right.marks.iter().map(|placed| Placed {
                part: placed.part,
                mark: placed.mark.moved(by, 0.0),
            }));
        pieces.push(whole);
    }

    /// The title and what stands with it, above everything else.
    pub fn top(&mut self, document: &Document, width: f64) -> Piece {
        let part = self.parts.add(Kind::Paragraph, None);
        let mut marks = Vec::new();
        let mut y = 0.0;
        let day = self.lines(&document.day, SMALL, width / 2.0);
        let day_width = day.first().map_or(0.0, Shaped::width) * SMALL.size;
        for shaped in self.lines(&document.garden, SMALL, width - day_width - GUTTER) {
            marks.push(Placed {
                part: Some(part),
                mark: letters(shaped, SMALL, 0.0, y),
            });
            y += SMALL.leading;
        }
        let part = self.parts.add(Kind::Paragraph, None);
        for shaped in day.into_iter().take(1) {
            marks.push(Placed {
                part: Some(part),
                mark: letters(shaped, SMALL, width - day_width, 0.0),
            });
        }
        y += 4.0;
        marks.push(rule(0.0, width, y, 1.2));
        y += 10.0;
        let part = self.parts.add(Kind::Title(document.title.clone()), None);
        for shaped in self.lines(&document.title, TITLE, width) {
            marks.push(Placed {
                part: Some(part),
                mark: letters(shaped, TITLE, 0.0, y),
            });
            y += TITLE.leading;
        }
        if !document.under.is_empty() {
            let part = self.parts.add(Kind::Paragraph, None);
            y += 2.0;
            for shaped in self.lines(&document.under, BODY, width.min(LONGEST_LINE)) {
                marks.push(Placed {
                    part: Some(part),
                    mark: letters(shaped, BODY, 0.0, y),
                });
                y += BODY.leading;
            }
        }
        Piece {
            height: y + 4.0,
            keeps: true,
            marks,
            ..Piece::default()
        }
    }
}

/// A line of letters whose leading begins at `top`.
pub fn letters(shaped: Shaped, setting: Setting, x: f64, top: f64) -> Mark {
    Mark::Letters {
        shaped,
        weight: setting.weight,
        size: setting.size,
        x,
        // The line stands so that capitals are in the middle of the leading.
        baseline: top + setting.leading / 2.0 + CAPITALS / 2.0 * setting.size,
    }
}

/// Height of capitals, in sizes of the type.
const CAPITALS: f64 = 0.689;

/// A rule from `from` to `to` at the height `y`.
pub fn rule(from: f64, to: f64, y: f64, weight: f64) -> Placed {
    Placed {
        part: None,
        mark: Mark::Rule {
            from: (from, y),
            to: (to, y),
            weight,
        },
    }
}

/// Pieces below each other as one.
fn joined(pieces: Vec<Piece>) -> Piece {
    let mut whole = Piece::default();
    for (index, piece) in pieces.into_iter().enumerate() {
        if index == 0 {
            whole.above = piece.above;
        } else {
            whole.height += piece.above;
        }
        let by = whole.height;
        whole.marks.extend(piece.marks.iter().map(|placed| Placed {
            part: placed.part,
            mark: placed.mark.moved(0.0, by),
        }));
        whole.height += piece.height;
        if whole.outline.is_none() {
            whole.outline = piece.outline;
        }
    }
    whole
}
