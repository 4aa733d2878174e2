//! Which line is the header, what parts the fields, and which columns hold what?

use std::borrow::Cow;

use super::dates::stamped;
use super::error::LoggerError;
use super::fault::shown;
use super::numbers::temperature;
use super::records::{MOST_COLUMNS, Records};
use super::roles::{Role, role};
use super::{Column, LoggerMapping};
use crate::readings::READINGS_HEADER;

/// How many lines are looked through for a header.
const MOST_LINES: usize = 200;
/// How many lines behind a header are looked at, to see whether it is one.
const LOOK_AHEAD: usize = 10;

const DELIMITERS: [u8; 3] = [b',', b';', b'\t'];

/// Where the times stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Times {
    /// Date and time of day in one column.
    One(usize),
    /// In two.
    Two {
        /// The column of dates.
        date: usize,
        /// The column of times of day.
        time: usize,
    },
}

/// Which columns hold what, counted from 0.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Columns {
    pub times: Times,
    pub temperature: usize,
    /// Where the columns of a file of readings stand, when it is one of our own.
    pub own: Option<[Option<usize>; READINGS_HEADER.len()]>,
}

/// How a file is laid out.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Layout {
    pub delimiter: u8,
    pub columns: Columns,
    /// The line of the header, counted from 1, if there is one.
    pub header_row: Option<u64>,
    /// The cells of the header; none without one.
    pub names: Vec<String>,
    /// How many fields a row has at most.
    pub width: usize,
    /// Where the rows begin.
    pub at: usize,
    /// In which line they begin.
    pub row: u64,
    /// What stands above the header.
    pub preamble: String,
}

/// A line that was looked at.
struct Looked<'a> {
    /// Where the next one begins.
    end: usize,
    fields: Vec<Cow<'a, str>>,
    count: usize,
}

impl Looked<'_> {
    fn is_blank(&self) -> bool {
        self.fields.iter().all(|field| field.trim().is_empty())
    }
}

/// Why a line is no header.
enum Not {
    /// It names nothing that is sought.
    Header,
    /// It names too much.
    Clear(LoggerError),
}

/// Finds delimiter, header and columns.
pub(super) fn layout(text: &str, mapping: &LoggerMapping) -> Result<Layout, LoggerError> {
    let mut verified: Option<Layout> = None;
    let mut unverified: Option<Layout> = None;
    let mut unclear: Option<LoggerError> = None;
    let mut widest: Vec<String> = Vec::new();
    let mut most_columns = 0;
    for delimiter in DELIMITERS {
        let lines = looked_at(text, delimiter);
        for line in &lines {
            most_columns = most_columns.max(line.count);
            if line.fields.len() > widest.len() {
                widest = line.fields.iter().map(|field| shown(field)).collect();
            }
        }
        match by_header(text, delimiter, &lines, mapping) {
            Ok(Some((layout, true))) if wider(&layout, verified.as_ref()) => {
                verified = Some(layout);
            }
            Ok(Some((layout, false))) if wider(&layout, unverified.as_ref()) => {
                unverified = Some(layout);
            }
            Ok(_) => {}
            Err(error) => unclear = unclear.or(Some(error)),
        }
        if verified.is_none()
            && let Some(layout) = without_header(text, delimiter, &lines, mapping)
        {
            verified = Some(layout);
        }
    }
    if let Some(layout) = verified {
        return Ok(layout);
    }
    if let Some(error) = unclear {
        return Err(error);
    }
    if let Some(layout) = unverified {
        return Ok(layout);
    }
    if most_columns > MOST_COLUMNS {
        return Err(LoggerError::TooManyColumns {
            columns: most_columns,
        });
    }
    let missing = [&mapping.date, &mapping.time, &mapping.temperature]
        .into_iter()
        .flatten()
        .find(|column| place_of(column, &widest).is_none());
    Err(match missing {
        Some(wanted) => LoggerError::NoSuchColumn {
            wanted: wanted.clone(),
            found: widest,
        },
        None => LoggerError::NoColumns { found: widest },
    })
}

fn wider(layout: &Layout, other: Option<&Layout>) -> bool {
    other.is_none_or(|other| layout.width > other.width)
}

/// The first lines, each taken apart by itself: what stands above a header need not be CSV.
fn looked_at(text: &str, delimiter: u8) -> Vec<Looked<'_>> {
    let mut looked = Vec::new();
    let mut at = 0;
    while at < text.len() && looked.len() < MOST_LINES {
        let end = text[at..]
            .find('\n')
            .map_or(text.len(), |found| at + found + 1);
        let line = text[at..end].trim_end_matches(['\n', '\r']);
        let mut fields = Vec::new();
        let record = Records::new(line, 0, 1, delimiter).next(&mut fields);
        looked.push(Looked {
            end,
            fields,
            count: record.map_or(0, |record| record.count),
        });
        at = end;
    }
    looked
}

/// A header and the columns that it names; true when rows that fit stand below it.
fn by_header(
    text: &str,
    delimiter: u8,
    lines: &[Looked<'_>],
    mapping: &LoggerMapping,
) -> Result<Option<(Layout, bool)>, LoggerError> {
    let mut unverified = None;
    if matches!(
        (&mapping.time, &mapping.temperature),
        (Some(Column::Number(_)), Some(Column::Number(_)))
    ) {
        // Then no name is sought, and any line would do for a header.
        return Ok(None);
    }
    for (index, line) in lines.iter().enumerate() {
        let below = || {
            lines[index + 1..]
                .iter()
                .filter(|line| !line.is_blank())
                .take(LOOK_AHEAD)
        };
        match columns_of(&line.fields, mapping) {
            Ok(columns) if !is_data(&columns, &line.fields) => {
                if line.count > MOST_COLUMNS {
                    return Err(LoggerError::TooManyColumns {
                        columns: line.count,
                    });
                }
                let columns = settled(columns, below());
                let fits = below().any(|line| is_data(&columns, &line.fields));
                let layout = layout_below(text, delimiter, lines, index, columns);
                if fits {
                    return Ok(Some((layout, true)));
                }
                unverified = unverified.or(Some((layout, false)));
            }
            Err(Not::Clear(error)) => {
                // Only where rows with a time stand below it is it a header.
                let has_times = below().any(|line| {
                    line.fields
                        .iter()
                        .any(|field| stamped(field).is_some_and(|found| found.date.is_some()))
                });
                if has_times {
                    return Err(error);
                }
            }
            _ => {}
        }
    }
    Ok(unverified)
}

/// Rows without a header: where both columns are given by number, or where there are only two.
fn without_header(
    text: &str,
    delimiter: u8,
    lines: &[Looked<'_>],
    mapping: &LoggerMapping,
) -> Option<Layout> {
    let number = |column: &Option<Column>| match column {
        Some(Column::Number(number)) => number.checked_sub(1),
        _ => None,
    };
    let given = number(&mapping.time).zip(number(&mapping.temperature));
    let nothing_given = mapping.time.is_none() && mapping.temperature.is_none();
    let (time, temperature) = match given {
        Some(given) => given,
        None if nothing_given => (0, 1),
        None => return None,
    };
    let columns = Columns {
        times: match number(&mapping.date) {
            Some(date) => Times::Two { date, time },
            None => Times::One(time),
        },
        temperature,
        own: None,
    };
    let first = lines
        .iter()
        .position(|line| is_data(&columns, &line.fields) && (given.is_some() || line.count == 2))?;
    // What stands right above and is as wide is the header.
    let above = first
        .checked_sub(1)
        .filter(|above| lines[*above].count == lines[first].count && given.is_some());
    if let Some(above) = above {
        return Some(layout_below(text, delimiter, lines, above, columns));
    }
    let at = first.checked_sub(1).map_or(0, |above| lines[above].end);
    Some(Layout {
        delimiter,
        columns,
        header_row: None,
        names: Vec::new(),
        width: lines[first].count,
        at,
        row: u64::try_from(first).unwrap_or(0) + 1,
        preamble: text[..at].to_owned(),
    })
}

fn layout_below(
    text: &str,
    delimiter: u8,
    lines: &[Looked<'_>],
    index: usize,
    columns: Columns,
) -> Layout {
    let line = &lines[index];
    let above = index.checked_sub(1).map_or(0, |above| lines[above].end);
    let row = u64::try_from(index).unwrap_or(0) + 1;
    Layout {
        delimiter,
        columns,
        header_row: Some(row),
        names: line.fields.iter().map(|field| shown(field)).collect(),
        width: line.count,
        at: line.end,
        row: row + 1,
        preamble: text[..above].to_owned(),
    }
}

/// Where dates have a column of their own and say the time of day too, that column is enough.
fn settled<'a>(columns: Columns, mut below: impl Iterator<Item = &'a Looked<'a>>) -> Columns {
    match columns.times {
        Times::Two { date, .. }
            if below.any(|line| {
                line.fields
                    .get(date)
                    .and_then(|field| stamped(field))
                    .is_some_and(|found| found.date.is_some() && found.time.is_some())
            }) =>
        {
            Columns {
                times: Times::One(date),
                ..columns
            }
        }
        _ => columns,
    }
}

/// True when a line has a time and a temperature where they should be.
fn is_data(columns: &Columns, fields: &[Cow<'_, str>]) -> bool {
    let cell = |index: usize| fields.get(index).map(|field| field.as_ref());
    let has_time = match columns.times {
        Times::One(index) => cell(index)
            .and_then(stamped)
            .is_some_and(|found| found.date.is_some()),
        Times::Two { date, time } => {
            let date = cell(date).and_then(stamped);
            let time = cell(time).and_then(stamped);
            date.is_some_and(|found| found.date.is_some())
                && time.is_some_and(|found| found.time.is_some())
        }
    };
    has_time && (columns.own.is_some() || cell(columns.temperature).and_then(temperature).is_some())
}

/// The index of a column that was given.
fn place_of<Cell: AsRef<str>>(column: &Column, fields: &[Cell]) -> Option<usize> {
    match column {
        Column::Number(number) => number.checked_sub(1).filter(|index| *index < fields.len()),
        Column::Name(name) => fields
            .iter()
            .position(|field| field.as_ref().trim().to_lowercase() == name.trim().to_lowercase()),
    }
}

fn columns_of(fields: &[Cow<'_, str>], mapping: &LoggerMapping) -> Result<Columns, Not> {
    if mapping.time.is_none()
        && mapping.temperature.is_none()
        && let Some(columns) = own_columns(fields)
    {
        return Ok(columns);
    }
    let given = |column: &Option<Column>| match column {
        Some(column) => place_of(column, fields).map(Some).ok_or(Not::Header),
        None => Ok(None),
    };
    let (date, time, temperature) = (
        given(&mapping.date)?,
        given(&mapping.time)?,
        given(&mapping.temperature)?,
    );
    let roles: Vec<Role> = fields.iter().map(|field| role(field)).collect();
    let of = |wanted: Role| -> Vec<usize> {
        (0..roles.len())
            .filter(|index| roles[*index] == wanted && Some(*index) != temperature)
            .collect()
    };
    let names = |indices: &[usize]| indices.iter().map(|index| shown(&fields[*index])).collect();
    let temperature = match (temperature, of(Role::Temperature).as_slice()) {
        (Some(index), _) => index,
        (None, [index]) => *index,
        (None, []) => return Err(Not::Header),
        (None, several) => {
            let has_times = [Role::Moment, Role::Date, Role::Time]
                .into_iter()
                .any(|role| !of(role).is_empty());
            if !has_times && time.is_none() {
                return Err(Not::Header);
            }
            return Err(Not::Clear(LoggerError::SeveralTemperatures {
                names: names(several),
            }));
        }
    };
    let (moments, dates, times) = (of(Role::Moment), of(Role::Date), of(Role::Time));
    let times = match (
        time,
        date,
        moments.as_slice(),
        dates.as_slice(),
        times.as_slice(),
    ) {
        (Some(time), Some(date), ..) if time != date => Times::Two { date, time },
        (Some(time), ..) => Times::One(time),
        (None, Some(date), _, _, [time]) => Times::Two { date, time: *time },
        (None, Some(date), ..) => Times::One(date),
        (None, None, [moment], ..) => Times::One(*moment),
        (None, None, [], [date], [time]) => Times::Two {
            date: *date,
            time: *time,
        },
        (None, None, [], [one], []) | (None, None, [], [], [one]) => Times::One(*one),
        (None, None, [], [], []) => return Err(Not::Header),
        (None, None, ..) => {
            let all: Vec<usize> = [moments, dates, times].concat();
            return Err(Not::Clear(LoggerError::SeveralTimes { names: names(&all) }));
        }
    };
    Ok(Columns {
        times,
        temperature,
        own: None,
    })
}

/// The columns of a file of readings that this program wrote.
fn own_columns(fields: &[Cow<'_, str>]) -> Option<Columns> {
    let places = READINGS_HEADER.map(|name| fields.iter().position(|field| field.trim() == name));
    let at = |name: &str| {
        READINGS_HEADER
            .iter()
            .position(|other| *other == name)
            .and_then(|index| places[index])
    };
    let (happened, temperature) = (at("happened")?, at("temperature_c")?);
    at("id")?;
    at("heap_id")?;
    Some(Columns {
        times: Times::One(happened),
        temperature,
        own: Some(places),
    })
}
