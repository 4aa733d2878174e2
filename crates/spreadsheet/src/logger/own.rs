//! What a file of readings of our own tells besides time and temperature.

use std::borrow::Cow;
use std::collections::BTreeMap;

use heapwright_journal::content::{Creature, Look, ProbePlace, Smell, Squeeze};
use heapwright_wording::Word;

use super::fault::{FaultKind, shown};
use super::numbers::number;
use crate::ENGLISH;
use crate::readings::{BETWEEN_WORDS, READINGS_HEADER};
use crate::table::unguarded;

/// What stands in a row of a file of readings besides time and temperature.
#[derive(Clone, Debug, PartialEq)]
pub struct Besides {
    /// Of which look the row is a part: rows of one look have one id.
    pub id: String,
    /// The name of the heap.
    pub heap: String,
    /// The id of the heap.
    pub heap_id: String,
    /// How deep the probe was [m].
    pub depth_m: Option<f64>,
    /// Where the probe was.
    pub place: Option<ProbePlace>,
    /// Temperature of the air [degC].
    pub air_temperature_c: Option<f64>,
    /// How a handful feels.
    pub squeeze: Option<Squeeze>,
    /// How it smells.
    pub smells: Vec<Smell>,
    /// How it looks.
    pub looks: Vec<Look>,
    /// What lives in it.
    pub creatures: Vec<Creature>,
    /// Height of the heap [m].
    pub height_m: Option<f64>,
    /// How full the bin is, percent of its height.
    pub fill_pct: Option<f64>,
    /// Which instrument.
    pub logger: Option<String>,
}

/// The cells of a row, by the places of the columns of [`READINGS_HEADER`].
struct Cells<'a> {
    fields: &'a [Cow<'a, str>],
    places: &'a [Option<usize>; READINGS_HEADER.len()],
}

impl<'a> Cells<'a> {
    fn place(&self, name: &str) -> Option<usize> {
        let index = READINGS_HEADER.iter().position(|other| *other == name)?;
        self.places[index]
    }

    fn field(&self, name: &str) -> &'a str {
        self.place(name)
            .and_then(|place| self.fields.get(place))
            .map_or("", |field| field.as_ref())
    }

    fn text(&self, name: &str) -> &'a str {
        self.field(name).trim()
    }

    fn fault(&self, name: &str, kind: FaultKind) -> (usize, FaultKind) {
        (self.place(name).unwrap_or(0), kind)
    }

    fn number(&self, name: &str) -> Result<Option<f64>, (usize, FaultKind)> {
        match self.text(name) {
            "" => Ok(None),
            cell => number(cell)
                .map(Some)
                .ok_or_else(|| self.fault(name, FaultKind::NotANumber { cell: shown(cell) })),
        }
    }

    fn words<W: Word>(&self, name: &str, other: W) -> Result<Vec<W>, (usize, FaultKind)> {
        self.text(name)
            .split(BETWEEN_WORDS.trim())
            .map(str::trim)
            .filter(|word| !word.is_empty())
            .map(|word| {
                W::choices()
                    .iter()
                    .copied()
                    .chain([other])
                    .find(|choice| choice.word(ENGLISH).eq_ignore_ascii_case(word))
                    .ok_or_else(|| self.fault(name, FaultKind::NotAWord { cell: shown(word) }))
            })
            .collect()
    }

    fn word<W: Word>(&self, name: &str, other: W) -> Result<Option<W>, (usize, FaultKind)> {
        match self.words(name, other)?.as_slice() {
            [] => Ok(None),
            [word] => Ok(Some(*word)),
            _ => Err(self.fault(
                name,
                FaultKind::NotAWord {
                    cell: shown(self.text(name)),
                },
            )),
        }
    }
}

/// Reads a row; an error names the column, counted from 0.
pub(super) fn besides(
    fields: &[Cow<'_, str>],
    places: &[Option<usize>; READINGS_HEADER.len()],
) -> Result<Besides, (usize, FaultKind)> {
    let cells = Cells { fields, places };
    let logger = cells.field("logger");
    Ok(Besides {
        id: cells.text("id").to_owned(),
        heap: unguarded(cells.field("heap")).to_owned(),
        heap_id: cells.text("heap_id").to_owned(),
        depth_m: cells.number("depth_m")?,
        place: cells.word("place", ProbePlace::Other)?,
        air_temperature_c: cells.number("air_temperature_c")?,
        squeeze: cells.word("squeeze", Squeeze::Other)?,
        smells: cells.words("smells", Smell::Other)?,
        looks: cells.words("looks", Look::Other)?,
        creatures: cells.words("creatures", Creature::Other)?,
        height_m: cells.number("height_m")?,
        fill_pct: cells.number("fill_pct")?,
        logger: (!logger.trim().is_empty()).then(|| unguarded(logger).to_owned()),
    })
}

/// Of which heap the rows are to be taken: its id in the file. An error tells how many heaps fit and
/// the names of all.
pub(super) fn heap_to_take<'a>(
    rows: impl Iterator<Item = &'a Besides>,
    wanted: Option<&str>,
) -> Result<Option<String>, (usize, Vec<String>)> {
    let heaps: BTreeMap<&str, &str> = rows
        .map(|besides| (besides.heap_id.as_str(), besides.heap.as_str()))
        .collect();
    let fits: Vec<&str> = heaps
        .iter()
        .filter(|(id, name)| wanted.is_none_or(|wanted| **id == wanted || **name == wanted))
        .map(|(id, _)| *id)
        .collect();
    match fits.as_slice() {
        [] if heaps.is_empty() => Ok(None),
        [id] => Ok(Some((*id).to_owned())),
        _ => {
            let alike = |name: &str| heaps.values().filter(|other| **other == name).count() > 1;
            let names = heaps
                .iter()
                .map(|(id, name)| shown(if alike(name) { id } else { name }))
                .collect();
            Err((fits.len(), names))
        }
    }
}
