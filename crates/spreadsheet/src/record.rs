//! A table of times and temperatures, read row by row: it may be longer than memory.
//!
//! The header names the columns `time`, `temperature_c` or `temperature_f`, and `depth_cm` or
//! `depth_m` when depths are told; others are passed over. Times are as ISO 8601 has them, with an
//! offset from UTC in every row or in none. What cannot be a temperature of a heap is refused with
//! its row: a record that is half understood says nothing.

use std::fmt;
use std::io::Read;

use csv::{ByteRecord, ReaderBuilder};
use heapwright_journal::Moment;

/// A row.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RecordRow {
    /// When; without an offset as if the clock on the wall showed UTC.
    pub moment: Moment,
    /// True when the row says how its time lies to UTC.
    pub has_offset: bool,
    /// What the probe showed [degrees Celsius].
    pub temperature_c: f64,
    /// How deep it was [m].
    pub depth_m: Option<f64>,
}

/// Why a table cannot be used. One sentence.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RecordFault {
    /// Which row of the file, the header being 1; 0 for the whole file.
    pub row: u64,
    /// What is wrong and what to do, without a full stop.
    pub what: String,
}

impl fmt::Display for RecordFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.row {
            0 => write!(f, "{}.", self.what),
            row => write!(f, "row {row}: {}.", self.what),
        }
    }
}

impl std::error::Error for RecordFault {}

/// Longer rows are no rows of a record [bytes].
const LONGEST_ROW_BYTES: usize = 4096;
/// A probe in a heap shows at least this [degrees Celsius], as in the journal.
const LEAST_C: f64 = -60.0;
/// And at most this: water boils, and what burns is no heap any more [degrees Celsius].
const MOST_C: f64 = 100.0;
/// The deepest probe [m], as in the journal.
const DEEPEST_M: f64 = 10.0;
/// How a good file begins.
const HEADER: &str = "time,temperature_c";

/// What a column holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Role {
    Time,
    Celsius,
    Fahrenheit,
    Centimetres,
    Metres,
}

/// Where the columns stand.
#[derive(Clone, Copy, Debug)]
struct Columns {
    time: usize,
    temperature: usize,
    fahrenheit: bool,
    depth: Option<(usize, f64)>,
}

/// Reads a table and hands over every row in the order of the file; `take` may refuse one with what
/// is wrong and what to do. Returns how many rows there are.
///
/// # Errors
///
/// At the first row that cannot be used.
pub fn read_record(
    file: impl Read,
    take: &mut dyn FnMut(RecordRow) -> Result<(), String>,
) -> Result<u64, RecordFault> {
    let mut reader = ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .from_reader(file);
    let mut record = ByteRecord::new();
    if !next(&mut reader, &mut record)? {
        return Err(RecordFault {
            row: 0,
            what: format!("the file is empty: it must begin with {HEADER}"),
        });
    }
    let columns = columns(&record).map_err(|what| RecordFault { row: 1, what })?;
    let width = record.len();
    let mut rows = 0;
    let mut offsets = None;
    while next(&mut reader, &mut record)? {
        let line = record.position().map_or(0, csv::Position::line);
        let refuse = |what: String| RecordFault { row: line, what };
        // A line without anything in it.
        if record.iter().all(|cell| cell.trim_ascii().is_empty()) {
            continue;
        }
        if record
            .iter()
            .skip(width)
            .any(|cell| !cell.trim_ascii().is_empty())
        {
            return Err(refuse(format!(
                "it has {} cells under a header of {width}: write numbers with a point, 58.5 and not 58,5",
                record.len()
            )));
        }
        let row = row(&record, columns).map_err(refuse)?;
        if *offsets.get_or_insert(row.has_offset) != row.has_offset {
            return Err(refuse(
                "some times have an offset from UTC and some have none: write all in one way"
                    .to_owned(),
            ));
        }
        take(row).map_err(refuse)?;
        rows += 1;
    }
    if rows == 0 {
        return Err(RecordFault {
            row: 0,
            what: "there is no row under the header: add rows of a time and a temperature"
                .to_owned(),
        });
    }
    Ok(rows)
}

fn next<R: Read>(
    reader: &mut csv::Reader<R>,
    record: &mut ByteRecord,
) -> Result<bool, RecordFault> {
    let line = reader.position().line();
    let found = reader
        .read_byte_record(record)
        .map_err(|error| RecordFault {
            row: line,
            what: match error.into_kind() {
                csv::ErrorKind::Io(error) => format!("the file cannot be read ({error})"),
                _ => "it is no row of a table: save the file as CSV".to_owned(),
            },
        })?;
    if record.as_slice().len() > LONGEST_ROW_BYTES {
        return Err(RecordFault {
            row: line,
            what: format!(
                "it has more than {LONGEST_ROW_BYTES} bytes: look for a quotation mark that is not closed"
            ),
        });
    }
    Ok(found)
}

/// A cell as it may be shown: short, without control signs.
fn shown(cell: &[u8]) -> String {
    String::from_utf8_lossy(cell)
        .chars()
        .filter(|letter| !letter.is_control())
        .take(40)
        .collect()
}

fn columns(header: &ByteRecord) -> Result<Columns, String> {
    let mut found: Vec<(Role, usize)> = Vec::new();
    let mut bare = false;
    for (place, cell) in header.iter().enumerate() {
        // Some spreadsheet programs put this mark in front.
        let cell = cell.strip_prefix("\u{feff}".as_bytes()).unwrap_or(cell);
        let name = String::from_utf8_lossy(cell).trim().to_lowercase();
        let role = match name.replace([' ', '-'], "_").as_str() {
            "time" | "timestamp" | "datetime" | "date_time" => Role::Time,
            "temperature_c" | "temp_c" | "temperature_(°c)" | "temperature_°c" => Role::Celsius,
            "temperature_f" | "temp_f" | "temperature_(°f)" | "temperature_°f" => {
                Role::Fahrenheit
            }
            "depth_cm" => Role::Centimetres,
            "depth_m" => Role::Metres,
            "temperature" | "temp" => {
                bare = true;
                continue;
            }
            _ => continue,
        };
        found.push((role, place));
    }
    let one = |roles: &[Role]| {
        let mut places = found.iter().filter(|(role, _)| roles.contains(role));
        match (places.next(), places.next()) {
            (Some(place), None) => Ok(Some(*place)),
            (None, _) => Ok(None),
            _ => Err("two columns have the same meaning: keep one of them".to_owned()),
        }
    };
    let time = one(&[Role::Time])?;
    let temperature = one(&[Role::Celsius, Role::Fahrenheit])?;
    let depth = one(&[Role::Centimetres, Role::Metres])?;
    match (time, temperature) {
        (Some((_, time)), Some((role, temperature))) => Ok(Columns {
            time,
            temperature,
            fahrenheit: role == Role::Fahrenheit,
            depth: depth.map(|(role, place)| {
                let metres = if role == Role::Centimetres { 0.01 } else { 1.0 };
                (place, metres)
            }),
        }),
        (_, None) if bare => Err(
            "the header does not say the unit: call the column temperature_c or temperature_f"
                .to_owned(),
        ),
        _ if header.len() == 1 && header[0].contains(&b'\t') => {
            Err("its columns are parted by tabs: save the file with commas between them".to_owned())
        }
        _ if header.len() == 1 && header[0].contains(&b';') => Err(
            "its columns are parted by semicolons: save the file with commas between them"
                .to_owned(),
        ),
        _ => Err(format!(
            "\"{}\" is no header: the file must begin with {HEADER}",
            shown(header.as_slice())
        )),
    }
}

fn row(record: &ByteRecord, columns: Columns) -> Result<RecordRow, String> {
    let cell = |place: usize| {
        record
            .get(place)
            .map(<[u8]>::trim_ascii)
            .filter(|cell| !cell.is_empty())
    };
    let Some(time) = cell(columns.time) else {
        return Err("it has no time: add one or leave the row out".to_owned());
    };
    let Some((moment, has_offset)) = std::str::from_utf8(time).ok().and_then(moment_said) else {
        return Err(format!(
            "\"{}\" is no time: write it as 2026-05-01T18:00:00+02:00",
            shown(time)
        ));
    };
    let Some(temperature) = cell(columns.temperature) else {
        return Err("it has no temperature: add one or leave the row out".to_owned());
    };
    let Some(said) = number(temperature) else {
        return Err(format!(
            "\"{}\" is no temperature: write a number with a point, such as 58.5",
            shown(temperature)
        ));
    };
    let temperature_c = if columns.fahrenheit {
        (said - 32.0) * 5.0 / 9.0
    } else {
        said
    };
    if !(LEAST_C..=MOST_C).contains(&temperature_c) {
        let unit = if columns.fahrenheit { "°F" } else { "°C" };
        let what = if !columns.fahrenheit && (MOST_C..=212.0).contains(&said) {
            "if the probe shows Fahrenheit, call the column temperature_f"
        } else {
            "correct it or leave the row out"
        };
        return Err(format!(
            "{} {unit} is no temperature of a heap: {what}",
            shown(temperature)
        ));
    }
    let depth_m = match columns
        .depth
        .and_then(|(place, each)| cell(place).map(|cell| (cell, each)))
    {
        None => None,
        Some((text, metres)) => {
            let depth_m = number(text).map(|depth| depth * metres);
            Some(
                depth_m
                    .filter(|depth_m| (0.0..=DEEPEST_M).contains(depth_m))
                    .ok_or_else(|| {
                        format!(
                            "\"{}\" is no depth of a probe: give one between 0 and 10 m",
                            shown(text)
                        )
                    })?,
            )
        }
    };
    Ok(RecordRow {
        moment,
        has_offset,
        temperature_c,
        depth_m,
    })
}

fn number(cell: &[u8]) -> Option<f64> {
    let text = std::str::from_utf8(cell).ok()?;
    text.parse().ok().filter(|number: &f64| number.is_finite())
}

/// A time as ISO 8601 has it, and whether it came with its offset from UTC: with or without
/// seconds, or a day alone, which is its midnight.
#[must_use]
pub fn moment_said(text: &str) -> Option<(Moment, bool)> {
    if let Ok(moment) = text.parse() {
        return Some((moment, true));
    }
    let text = text.trim();
    if !text.is_ascii() || text.len() > 40 {
        return None;
    }
    if text.len() == 10 {
        return format!("{text}T00:00:00Z")
            .parse()
            .ok()
            .map(|moment| (moment, false));
    }
    let (date, rest) = text.split_at_checked(11)?;
    // The time of day ends where the offset begins.
    let end = rest.find(['Z', 'z', '+', '-']).unwrap_or(rest.len());
    let (time, offset) = rest.split_at(end);
    let seconds = if time.len() == 5 { ":00" } else { "" };
    let with = if offset.is_empty() { "Z" } else { offset };
    let moment = format!("{date}{time}{seconds}{with}").parse().ok()?;
    Some((moment, !offset.is_empty()))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> Result<Vec<RecordRow>, String> {
        let mut rows = Vec::new();
        read_record(text.as_bytes(), &mut |row| {
            rows.push(row);
            Ok(())
        })
        .map_err(|fault| fault.to_string())?;
        Ok(rows)
    }

    #[test]
    fn rows_come_in_either_unit_with_or_without_depth() {
        let rows = read(
            "time,temperature_c,depth_cm\n2026-05-01T18:00:00Z,58.5,30\n2026-05-01T19:00:00Z,59,\n",
        )
        .unwrap();
        assert_eq!(rows.len(), 2);
        assert_eq!(rows[0].temperature_c, 58.5);
        assert_eq!((rows[0].depth_m, rows[1].depth_m), (Some(0.3), None));
        let rows =
            read("\u{feff}Note,Temperature_F,Time\r\nx,131,2026-05-01 18:00\r\n\r\n").unwrap();
        assert_eq!((rows[0].temperature_c, rows[0].has_offset), (55.0, false));
        assert_eq!(rows[0].moment.to_string(), "2026-05-01T18:00:00Z");
    }

    #[test]
    fn times_are_read_as_iso_8601_has_them() {
        for (text, written, has_offset) in [
            (
                "2026-05-01T18:00:00+02:00",
                "2026-05-01T18:00:00+02:00",
                true,
            ),
            ("2026-05-01T18:00+02:00", "2026-05-01T18:00:00+02:00", true),
            ("2026-05-01T18:00Z", "2026-05-01T18:00:00Z", true),
            ("2026-05-01T18:00:30.5", "2026-05-01T18:00:30.500Z", false),
            ("2026-05-01 18:00", "2026-05-01T18:00:00Z", false),
            ("2026-05-01", "2026-05-01T00:00:00Z", false),
        ] {
            let (moment, offset) = moment_said(text).unwrap();
            assert_eq!((moment.to_string().as_str(), offset), (written, has_offset));
        }
        for text in [
            "",
            "18:00",
            "2026-05-32",
            "1 May 2026",
            "2026-05-01T25:00",
            "2026-05-01T18",
        ] {
            assert_eq!(moment_said(text), None, "{text}");
        }
    }

    #[test]
    fn what_cannot_be_used_is_told_with_its_row() {
        for (text, said) in [
            (
                "",
                "the file is empty: it must begin with time,temperature_c.",
            ),
            (
                "time,temperature_c\n",
                "there is no row under the header: add rows of a time and a temperature.",
            ),
            (
                "2026-05-01T18:00:00Z,58\n",
                "row 1: \"2026-05-01T18:00:00Z58\" is no header: the file must begin with time,temperature_c.",
            ),
            (
                "time,temperature\n2026-05-01T18:00:00Z,58\n",
                "row 1: the header does not say the unit: call the column temperature_c or temperature_f.",
            ),
            (
                "time;temperature_c\n",
                "row 1: its columns are parted by semicolons: save the file with commas between them.",
            ),
            (
                "time\ttemperature_c\n2026-05-01T18:00Z\t58\n",
                "row 1: its columns are parted by tabs: save the file with commas between them.",
            ),
            (
                "time,temperature_c\n2026-05-01T18:00Z,58\n2026-05-01T19:00Z,58,5\n",
                "row 3: it has 3 cells under a header of 2: write numbers with a point, 58.5 and not 58,5.",
            ),
            (
                "time,temperature_c,temperature_f\n",
                "row 1: two columns have the same meaning: keep one of them.",
            ),
            (
                "time,temperature_c\n2026-05-01T18:00:00Z,131\n",
                "row 2: 131 °C is no temperature of a heap: if the probe shows Fahrenheit, call the column temperature_f.",
            ),
            (
                "time,temperature_c\n2026-05-01T18:00:00Z,-300\n",
                "row 2: -300 °C is no temperature of a heap: correct it or leave the row out.",
            ),
            (
                "time,temperature_f\n2026-05-01T18:00:00Z,400\n",
                "row 2: 400 °F is no temperature of a heap: correct it or leave the row out.",
            ),
            (
                "time,temperature_c\n2026-05-01T18:00:00Z,NaN\n",
                "row 2: \"NaN\" is no temperature: write a number with a point, such as 58.5.",
            ),
            (
                "time,temperature_c\nyesterday,58\n",
                "row 2: \"yesterday\" is no time: write it as 2026-05-01T18:00:00+02:00.",
            ),
            (
                "time,temperature_c\n2026-05-01T18:00:00Z\n",
                "row 2: it has no temperature: add one or leave the row out.",
            ),
            (
                "time,temperature_c\n,58\n",
                "row 2: it has no time: add one or leave the row out.",
            ),
            (
                "time,temperature_c,depth_cm\n2026-05-01T18:00Z,58,2000\n",
                "row 2: \"2000\" is no depth of a probe: give one between 0 and 10 m.",
            ),
            (
                "time,temperature_c\n2026-05-01T18:00Z,58\n2026-05-01T19:00,58\n",
                "row 3: some times have an offset from UTC and some have none: write all in one way.",
            ),
        ] {
            assert_eq!(read(text).unwrap_err(), said);
        }
        let long = format!(
            "time,temperature_c\n2026-05-01T18:00Z,\"{}\n",
            "x".repeat(5000)
        );
        assert!(
            read(&long)
                .unwrap_err()
                .starts_with("row 2: it has more than 4096 bytes")
        );
    }
}
