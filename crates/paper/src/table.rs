//! A table: how wide its columns are, how high its rows.

use crate::document::{Cell, Column, MM, Row, Side, Table, Width};
use crate::face::Weight;
use crate::layout::{Piece, Setter, letters, rule};
use crate::lines::Setting;
use crate::placed::{Kind, Mark, Placed};

const CELL: Setting = Setting {
    weight: Weight::Regular,
    size: 9.5,
    leading: 13.0,
    even: true,
};
const STRONG: Setting = Setting {
    weight: Weight::Strong,
    ..CELL
};
const HEAD: Setting = Setting {
    size: 9.0,
    leading: 12.0,
    ..STRONG
};
/// Room between columns, and above and below the words of a row.
const GAP: f64 = 12.0;
const ROOM: f64 = 3.0;
/// A column as wide as its words takes at most this part of the table.
const WIDEST: f64 = 0.45;
/// Lines of a cell; longer words are cut, and say so.
const MOST_LINES: usize = 12;
/// Side of a box to tick.
const TICK: f64 = 9.5;

/// The pieces of a table: its head and each row.
pub fn set(setter: &mut Setter<'_>, table: &Table, width: f64) -> Vec<Piece> {
    let widths = widths(setter, table, width);
    let mut lefts = Vec::with_capacity(widths.len());
    let mut left = 0.0;
    for width in &widths {
        lefts.push(left);
        left += width + GAP;
    }
    // A table is as wide as its columns: rules that run on beyond them lead nowhere.
    let whole = (left - GAP).max(0.0);
    let part = setter.parts.add(Kind::Table, None);
    let mut pieces = Vec::new();
    let mut grid = Grid {
        setter,
        columns: &table.columns,
        widths: &widths,
        lefts: &lefts,
        whole,
        table: part,
    };
    let has_head = table.columns.iter().any(|column| !column.head.is_empty());
    let head = has_head.then(|| {
        let mut piece = grid.head();
        piece.above = 8.0;
        grid.setter.heads.push(piece.clone());
        pieces.push(piece);
        grid.setter.heads.len() - 1
    });
    let count = table.rows.len();
    for (index, row) in table.rows.iter().enumerate() {
        let mut piece = grid.row(row);
        piece.head = head;
        if head.is_none() && index == 0 {
            piece.above = 6.0;
        }
        // No row stands alone before or behind a break.
        piece.fills = table.fills && index + 1 == count;
        piece.keeps = count > 1 && (index == 0 || index + 2 == count);
        pieces.push(piece);
    }
    pieces
}

struct Grid<'a, 'b> {
    setter: &'a mut Setter<'b>,
    columns: &'a [Column],
    widths: &'a [f64],
    lefts: &'a [f64],
    whole: f64,
    table: usize,
}

impl Grid<'_, '_> {
    fn head(&mut self) -> Piece {
        let row = self.setter.parts.add(Kind::Row, Some(self.table));
        let mut cells = Vec::new();
        for (column, width) in self.columns.iter().zip(self.widths) {
            let part = self.setter.parts.add(Kind::Head, Some(row));
            cells.push((part, self.setter.lines(&column.head, HEAD, *width)));
        }
        let most = cells
            .iter()
            .map(|(_, lines)| lines.len())
            .max()
            .unwrap_or(1);
        let mut marks = Vec::new();
        for (index, (part, lines)) in cells.into_iter().enumerate() {
            // Heads stand on their rule.
            let mut top = lead(most - lines.len(), HEAD);
            for shaped in lines {
                let x = self.x(index, shaped.width() * HEAD.size);
                marks.push(Placed {
                    part: Some(part),
                    mark: letters(shaped, HEAD, x, top),
                });
                top += HEAD.leading;
            }
        }
        let height = lead(most, HEAD) + ROOM;
        marks.push(rule(0.0, self.whole, height, 0.9));
        Piece {
            height: height + 1.0,
            keeps: true,
            marks,
            ..Piece::default()
        }
    }

    fn row(&mut self, row: &Row) -> Piece {
        let setting = if row.strong { STRONG } else { CELL };
        let part = self.setter.parts.add(Kind::Row, Some(self.table));
        let mut marks = Vec::new();
        let mut lines_of = Vec::new();
        for (index, (cell, width)) in row.cells.iter().zip(self.widths).enumerate() {
            let kind = if index == 0 {
                Kind::RowHead
            } else {
                Kind::Cell
            };
            let part = self.setter.parts.add(kind, Some(part));
            let lines = match cell {
                Cell::Text(text) => self.cut(text, setting, *width),
                // An empty line stands for the cell in the structure.
                Cell::Blank => self.setter.lines("\u{a0}", setting, *width),
                Cell::Tick => Vec::new(),
            };
            lines_of.push((part, cell, lines));
        }
        let most = lines_of.iter().map(|(_, _, lines)| lines.len()).max();
        let height = (lead(most.unwrap_or(1).max(1), setting) + 2.0 * ROOM).max(row.height_mm * MM);
        for (index, (part, cell, lines)) in lines_of.into_iter().enumerate() {
            let mut top = ROOM;
            for shaped in lines {
                let x = self.x(index, shaped.width() * setting.size);
                marks.push(Placed {
                    part: Some(part),
                    mark: letters(shaped, setting, x, top),
                });
                top += setting.leading;
            }
            if *cell == Cell::Tick {
                let word = self.setter.tick_word.clone();
                let tick = self.setter.parts.add(Kind::Tick(word), Some(part));
                let x = self.x(index, TICK);
                let top = ROOM + (setting.leading - TICK) / 2.0;
                let (right, bottom) = (x + TICK, top + TICK);
                marks.push(Placed {
                    part: Some(tick),
                    mark: Mark::Path {
                        ink: crate::drawing::Ink::Hollow,
                        points: vec![(x, top), (right, top), (right, bottom), (x, bottom)],
                        closed: true,
                    },
                });
            }
        }
        // Room to write has a line of its own in each column.
        if row.cells.contains(&Cell::Blank) {
            for (left, width) in self.lefts.iter().zip(self.widths) {
                marks.push(rule(*left, left + width, height, 0.4));
            }
        } else {
            marks.push(rule(0.0, self.whole, height, 0.4));
        }
        Piece {
            height,
            marks,
            ..Piece::default()
        }
    }

    /// The lines of a cell, not more than are allowed.
    fn cut(&mut self, text: &str, setting: Setting, width: f64) -> Vec<crate::face::Shaped> {
        let mut lines = self.setter.lines(text, setting, width);
        if lines.len() > MOST_LINES {
            lines.truncate(MOST_LINES);
            if let Some(last) = lines.last_mut() {
                let mut kept = last.text.clone();
                loop {
                    let shaped = self.setter.faces.shape(
                        &format!("{}…", kept.trim_end()),
                        setting.weight,
                        setting.even,
                    );
                    if shaped.width() * setting.size <= width || kept.pop().is_none() {
                        *last = shaped;
                        break;
                    }
                }
            }
        }
        lines
    }

    fn x(&self, column: usize, long: f64) -> f64 {
        let (left, width) = (self.lefts[column], self.widths[column]);
        match self.columns[column].side {
            Side::Start => left,
            Side::Middle => left + (width - long) / 2.0,
            Side::End => left + width - long,
        }
    }
}

fn lead(lines: usize, setting: Setting) -> f64 {
    f64::from(u32::try_from(lines).unwrap_or(u32::MAX)) * setting.leading
}

fn widths(setter: &mut Setter<'_>, table: &Table, width: f64) -> Vec<f64> {
    let gaps = GAP * f64::from(u32::try_from(table.columns.len().saturating_sub(1)).unwrap_or(0));
    let room = (width - gaps).max(1.0);
    let mut widths: Vec<f64> = Vec::new();
    let mut shares = 0.0;
    for (index, column) in table.columns.iter().enumerate() {
        widths.push(match column.width {
            Width::Millimetres(mm) => mm * MM,
            Width::Fit => natural(setter, table, index).min(room * WIDEST),
            Width::Share(share) => {
                shares += share;
                0.0
            }
        });
    }
    let taken: f64 = widths.iter().sum();
    // What is shared has at least a fifth of the table for each whole share, to at most half.
    let least = if shares > 0.0 {
        room * (0.2 * shares).clamp(0.2, 0.5)
    } else {
        0.0
    };
    if taken > room - least {
        let factor = (room - least) / taken;
        for width in &mut widths {
            *width *= factor;
        }
    }
    let left = room - widths.iter().sum::<f64>();
    for (width, column) in widths.iter_mut().zip(&table.columns) {
        if let Width::Share(share) = column.width {
            *width = left * share / shares;
        }
    }
    widths
}

/// How wide a column is when nothing in it breaks.
fn natural(setter: &mut Setter<'_>, table: &Table, index: usize) -> f64 {
    let mut widest: f64 = TICK;
    let head = table.columns[index].head.as_str();
    let words = table
        .rows
        .iter()
        .filter_map(|row| match row.cells.get(index) {
            Some(Cell::Text(text)) => Some((text.as_str(), if row.strong { STRONG } else { CELL })),
            _ => None,
        });
    for (text, setting) in words.chain([(head, HEAD)]) {
        for shaped in setter.lines(text, setting, f64::MAX) {
            widest = widest.max(shaped.width() * setting.size);
        }
    }
    // What is rounded must not break a line.
    widest + 0.5
}
