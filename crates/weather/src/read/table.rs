//! Bytes as rows: the encoding, the delimiter, the header, and the rows that count.

use csv::{ReaderBuilder, StringRecord, Trim};
use jiff::civil::Time;

use super::columns::Columns;
use super::error::{ReadError, quoted};
use super::number::{Cell, Mark, cell, shows_point};
use super::quantity::{MEGAJOULE, PERCENT, Quantity, SHARE, Unit, WATT};
use super::time::Stamp;
use super::{Kind, MOST_BYTES, MOST_ROWS, Reading};

/// In so many rows the header is looked for.
const HEADER_WITHIN: usize = 60;
const DELIMITERS: [u8; 4] = [b';', b'\t', b',', b'|'];

/// Text of a file in UTF-8 or UTF-16 with a mark, or in Latin-1.
pub(super) fn decode(bytes: &[u8]) -> Result<String, ReadError> {
    if bytes.len() > MOST_BYTES {
        return Err(ReadError::TooLarge);
    }
    let units = |from: fn([u8; 2]) -> u16| -> Result<String, ReadError> {
        let pairs: Vec<u16> = bytes[2..]
            .as_chunks::<2>()
            .0
            .iter()
            .map(|pair| from(*pair))
            .collect();
        String::from_utf16(&pairs).map_err(|_| ReadError::NotText)
    };
    let text = match bytes {
        [0xff, 0xfe, ..] => units(u16::from_le_bytes)?,
        [0xfe, 0xff, ..] => units(u16::from_be_bytes)?,
        [0xef, 0xbb, 0xbf, rest @ ..] => text_of(rest),
        _ => text_of(bytes),
    };
    if text.contains('\0') || text.starts_with("PK\u{3}") {
        return Err(ReadError::NotText);
    }
    if text.trim().is_empty() {
        return Err(ReadError::Empty);
    }
    Ok(text)
}

/// UTF-8, or else Latin-1, in which older programs write the sign of degrees.
fn text_of(bytes: &[u8]) -> String {
    std::str::from_utf8(bytes).map_or_else(
        |_| bytes.iter().map(|byte| char::from(*byte)).collect(),
        str::to_owned,
    )
}

/// A row with a time.
#[derive(Clone, Debug)]
pub(super) struct Row {
    /// Line of the file, from 1.
    pub line: u64,
    pub stamp: Stamp,
    cells: StringRecord,
}

/// A file taken apart.
#[derive(Clone, Debug)]
pub(super) struct Sheet {
    pub columns: Columns,
    pub rows: Vec<Row>,
    mark: Mark,
}

impl Sheet {
    pub fn find(text: &str, reading: &Reading<'_>) -> Result<Self, ReadError> {
        let (delimiter, at, columns) = header(text)?;
        let records = records(text, delimiter, at + 1)?;
        let (columns, records) = with_units(columns, records);
        let records = of_station(&columns, records, reading.station)?;
        if records.is_empty() {
            return Err(ReadError::NoRows);
        }
        let rows = stamped(&columns, records)?;
        let has_time_of_day = has_time_of_day(&rows);
        let mut sheet = Self {
            columns,
            rows,
            mark: Mark::Comma,
        };
        sheet.columns.note_time_of_day(has_time_of_day);
        if sheet.shows_point() {
            sheet.mark = Mark::Point;
        }
        Ok(sheet)
    }

    fn shows_point(&self) -> bool {
        super::quantity::QUANTITIES
            .iter()
            .filter_map(|quantity| self.columns.index(*quantity))
            .any(|index| {
                self.rows
                    .iter()
                    .any(|row| row.cells.get(index).is_some_and(shows_point))
            })
    }

    /// A cell as it stands in the file, without unit and bounds.
    fn raw(&self, row: &Row, index: usize) -> Cell {
        cell(row.cells.get(index).unwrap_or(""), self.mark)
    }

    /// Header of a column as it stands.
    pub fn header(&self, quantity: Quantity) -> String {
        self.columns
            .index(quantity)
            .map_or_else(String::new, |index| {
                self.columns.headers[index].said.clone()
            })
    }

    /// What stands in the cells of a row's time.
    pub fn time_text(&self, row: &Row) -> String {
        self.columns
            .time_text(|index| row.cells.get(index).unwrap_or("").to_owned())
    }

    /// The unit of a column, and whether it was guessed.
    pub fn unit(&self, quantity: Quantity) -> Option<(Unit, bool)> {
        let index = self.columns.index(quantity)?;
        if let Some(unit) = self.columns.unit(quantity) {
            return Some((unit, false));
        }
        let most = self
            .rows
            .iter()
            .fold(0.0_f64, |most, row| match self.raw(row, index) {
                Cell::Number(value) => most.max(value),
                _ => most,
            });
        let unit = match quantity {
            Quantity::Humidity if most <= 1.0 => SHARE,
            Quantity::Humidity => PERCENT,
            // No day has 50 MJ/m2, and few sunny ones a mean below 50 W/m2.
            Quantity::Solar if self.columns.kind() == Kind::Daily && most < 50.0 => MEGAJOULE,
            Quantity::Solar => WATT,
            other => other.usual_unit(),
        };
        Some((unit, true))
    }

    /// A column's values in the unit that is kept; `None` where one is missing.
    pub fn values(&self, quantity: Quantity) -> Result<Option<Vec<Option<f64>>>, ReadError> {
        let (Some(index), Some((unit, _))) = (self.columns.index(quantity), self.unit(quantity))
        else {
            return Ok(None);
        };
        let is_daily = self.columns.kind() == Kind::Daily;
        // Energies of a day's row as the mean power of a day, not of an hour.
        let is_energy_of_day = is_daily && quantity == Quantity::Solar && unit.name != WATT.name;
        let hours = if is_energy_of_day { 24.0 } else { 1.0 };
        let (least, most, bounds) = quantity.bounds(is_daily);
        let column = &self.columns.headers[index].said;
        let mut values = Vec::with_capacity(self.rows.len());
        for row in &self.rows {
            let text = || quoted(row.cells.get(index).unwrap_or(""));
            let value = match self.raw(row, index) {
                Cell::Missing => None,
                Cell::Trace if quantity == Quantity::Rain => Some(0.0),
                Cell::Trace | Cell::NoNumber => {
                    return Err(ReadError::Number {
                        row: row.line,
                        column: column.clone(),
                        text: text(),
                    });
                }
                Cell::Number(number) => {
                    let value = (number * unit.factor + unit.shift) / hours;
                    // A hair of room for the rounding of the unit.
                    if value < least - 1e-9 || value > most + 1e-9 {
                        return Err(ReadError::Outside {
                            row: row.line,
                            column: column.clone(),
                            text: text(),
                            bounds,
                        });
                    }
                    Some(match quantity {
                        Quantity::Humidity => value.clamp(0.0, 1.0),
                        Quantity::Solar | Quantity::Rain | Quantity::Wind => value.max(0.0),
                        _ => value,
                    })
                }
            };
            values.push(value);
        }
        Ok(Some(values))
    }

    /// The columns whose unit was guessed.
    pub fn guessed_units(&self, quantities: &[Quantity]) -> Vec<(String, &'static str)> {
        quantities
            .iter()
            .filter_map(|quantity| {
                let (unit, is_guess) = self.unit(*quantity)?;
                let header = &self.columns.headers[self.columns.index(*quantity)?];
                is_guess.then(|| (header.said.clone(), unit.name))
            })
            .collect()
    }
}

/// A record with its line.
type Lined = (u64, StringRecord);

fn reader(text: &str, delimiter: u8) -> csv::Reader<&[u8]> {
    ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .delimiter(delimiter)
        .trim(Trim::All)
        .from_reader(text.as_bytes())
}

/// The delimiter with which a header is understood best, its place among the records, and what it
/// says.
fn header(text: &str) -> Result<(u8, usize, Columns), ReadError> {
    let mut best: Option<(u8, usize, Columns)> = None;
    for delimiter in DELIMITERS {
        let found = reader(text, delimiter)
            .into_records()
            .take(HEADER_WITHIN)
            .enumerate()
            .find_map(|(at, record)| Some((delimiter, at, Columns::find(record.ok()?.iter())?)));
        if let Some(found) = found
            && best
                .as_ref()
                .is_none_or(|(_, _, other)| found.2.count() > other.count())
        {
            best = Some(found);
        }
    }
    best.ok_or(ReadError::NoHeader)
}

/// Records from one on, without empty ones.
fn records(text: &str, delimiter: u8, from: usize) -> Result<Vec<Lined>, ReadError> {
    let mut records = Vec::new();
    let mut line = 1;
    for record in reader(text, delimiter).into_records().skip(from) {
        let record = record.map_err(|_| ReadError::Malformed { row: line })?;
        line = record.position().map_or(line + 1, csv::Position::line);
        if record.iter().any(|cell| cell.contains(['\n', '\r'])) {
            return Err(ReadError::Malformed { row: line });
        }
        if record.iter().any(|cell| !cell.is_empty()) {
            if records.len() == MOST_ROWS {
                return Err(ReadError::TooManyRows);
            }
            records.push((line, record));
        }
    }
    Ok(records)
}

/// Takes a row of units below the header into the columns.
fn with_units(mut columns: Columns, mut records: Vec<Lined>) -> (Columns, Vec<Lined>) {
    let is_units = records.first().is_some_and(|(_, record)| {
        let text = |index: usize| record.get(index).unwrap_or("").to_owned();
        let temperature = columns
            .index(Quantity::Temperature)
            .or_else(|| columns.index(Quantity::Minimum));
        columns.stamp(text).is_none()
            && temperature.is_some_and(|index| cell(&text(index), Mark::Comma) == Cell::NoNumber)
    });
    if is_units {
        let (_, units) = records.remove(0);
        columns.add_units(units.iter());
    }
    (columns, records)
}

/// Only the rows of one place.
fn of_station(
    columns: &Columns,
    mut records: Vec<Lined>,
    wanted: Option<&str>,
) -> Result<Vec<Lined>, ReadError> {
    let Some(index) = columns.station else {
        return Ok(records);
    };
    let name = |record: &StringRecord| record.get(index).unwrap_or("").to_owned();
    if let Some(wanted) = wanted {
        records.retain(|(_, record)| name(record).eq_ignore_ascii_case(wanted.trim()));
        if records.is_empty() {
            return Err(ReadError::NoStation {
                name: quoted(wanted),
            });
        }
        return Ok(records);
    }
    let mut names = records
        .iter()
        .map(|(_, record)| name(record))
        .filter(|name| !name.is_empty());
    let first = names.next().unwrap_or_default();
    match names.find(|other| *other != first) {
        None => Ok(records),
        Some(other) => Err(ReadError::SeveralStations {
            column: columns.headers[index].said.clone(),
            names: [quoted(&first), quoted(&other)],
        }),
    }
}

/// Whether rows are hours: some row is not at midnight, or the only time is written out.
fn has_time_of_day(rows: &[Row]) -> bool {
    let written = || rows.iter().filter_map(|row| row.stamp.clocked);
    let several_days = rows.iter().any(|row| row.stamp.date != rows[0].stamp.date);
    written().any(|clocked| clocked.time != Time::midnight())
        || !several_days && written().next().is_some()
}

/// Every row with its time; a row with more cells than the header is an error.
fn stamped(columns: &Columns, records: Vec<Lined>) -> Result<Vec<Row>, ReadError> {
    let width = columns.headers.len();
    let mut rows = Vec::with_capacity(records.len());
    for (line, cells) in records {
        if cells.iter().skip(width).any(|cell| !cell.is_empty()) {
            return Err(ReadError::TooManyCells { row: line });
        }
        let text = |index: usize| cells.get(index).unwrap_or("").to_owned();
        let Some(stamp) = columns.stamp(text) else {
            return Err(ReadError::Time {
                row: line,
                column: columns.time_header().to_owned(),
                text: quoted(&columns.time_text(text)),
            });
        };
        rows.push(Row { line, stamp, cells });
    }
    Ok(rows)
}
