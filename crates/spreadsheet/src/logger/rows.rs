//! From records to rows: first what each cell says by itself, then what the whole column says of
//! unit and order, then the readings.

use std::borrow::Cow;

use super::dates::{DateOrder, Stamped, stamped, stated_offset};
use super::error::LoggerError;
use super::fault::{Fault, FaultKind, shown};
use super::header::{Layout, Times};
use super::numbers::{TemperatureUnit, guessed, number, temperature, unit_alone, unit_in, words};
use super::own::{Besides, besides, heap_to_take};
use super::records::{MOST_COLUMNS, Record, RecordFault, Records};
use super::understood::{FoundColumn, OffsetWhy, OrderWhy, Understood, UnitWhy};
use super::{
    COLDEST_C, HOTTEST_C, LoggerFile, LoggerMapping, LoggerRow, MOST_FAULTS, MOST_ROWS, OffsetOf,
};

/// A row as it is written.
struct Written {
    row: u64,
    stamped: Stamped,
    /// The number that is shown, in whatever unit.
    number: Option<f64>,
    /// The unit behind the number.
    unit: Option<TemperatureUnit>,
    besides: Option<Box<Besides>>,
}

/// What is wrong, in which column, counted from 0.
type Wrong = (usize, FaultKind);

#[derive(Default)]
struct Faults {
    first: Vec<Fault>,
    count: u64,
}

impl Faults {
    fn add(&mut self, row: u64, (column, kind): Wrong) {
        self.count += 1;
        // The second pass starts at the top again: it may find a fault above those of the first.
        let place = self.first.partition_point(|fault| fault.row <= row);
        if place < MOST_FAULTS {
            let column = column + 1;
            self.first.insert(place, Fault { row, column, kind });
            self.first.truncate(MOST_FAULTS);
        }
    }
}

/// Reads all rows of a file.
pub(super) fn read(
    text: &str,
    encoding: &'static str,
    layout: Layout,
    mapping: &LoggerMapping,
    offset_of: Option<&OffsetOf<'_>>,
) -> Result<LoggerFile, LoggerError> {
    let mut faults = Faults::default();
    let mut pass = Pass::new(&layout);
    let mut records = Records::new(text, layout.at, layout.row, layout.delimiter);
    let mut fields = Vec::new();
    let mut count = 0;
    while let Some(record) = records.next(&mut fields) {
        let blank = fields.iter().all(|field| field.trim().is_empty());
        let comment = fields
            .first()
            .is_some_and(|field| field.trim_start().starts_with('#'));
        if record.fault.is_none() && (blank || comment) {
            continue;
        }
        count += 1;
        if count > MOST_ROWS {
            return Err(LoggerError::TooManyRows);
        }
        if let Err(wrong) = pass.take(record, &fields) {
            faults.add(record.row, wrong);
        }
    }
    if layout.columns.own.is_some() {
        pass.keep_one_heap(mapping.heap.as_deref())?;
    }
    let (order, order_why) = date_order(&pass.written, mapping)?;
    let (unit, unit_why) = unit(&pass, mapping)?;
    let header_offset = time_names(&layout).find_map(stated_offset);
    let offset_min = header_offset.unwrap_or(mapping.offset_min);
    // What the header says is true of all rows.
    let offset_of = offset_of.filter(|_| header_offset.is_none());
    let mut all_have_offset = true;
    let mut rows = Vec::with_capacity(pass.written.len());
    let time_column = match layout.columns.times {
        Times::One(column) | Times::Two { date: column, .. } => column,
    };
    for written in pass.written {
        all_have_offset &= written.stamped.offset_min.is_some();
        let row = written.row;
        let moment = match offset_of {
            Some(offset_of) => (written.stamped.moment(order, 0))
                .and_then(|shown| written.stamped.moment(order, offset_of(shown))),
            None => written.stamped.moment(order, offset_min),
        };
        let moment = moment.ok_or_else(|| {
            let cell = written.stamped.date_as_written();
            (time_column, FaultKind::NoSuchDay { cell })
        });
        let read = moment.and_then(|moment| {
            Ok(LoggerRow {
                row,
                moment,
                temperature_c: celsius(&written, unit, layout.columns.temperature)?,
                besides: written.besides,
            })
        });
        match read {
            Ok(row) => rows.push(row),
            Err(wrong) => faults.add(row, wrong),
        }
    }
    if rows.is_empty() && layout.columns.own.is_none() {
        let first = faults.first.into_iter().next();
        return Err(LoggerError::NothingReadable { first });
    }
    let offset = match (all_have_offset, header_offset) {
        (true, _) => OffsetWhy::InEveryRow,
        (false, Some(offset_min)) => OffsetWhy::Header { offset_min },
        (false, None) if offset_of.is_some() => OffsetWhy::OfEachDay,
        (false, None) => OffsetWhy::Said { offset_min },
    };
    let understood = Understood {
        encoding,
        delimiter: char::from(layout.delimiter),
        header_row: layout.header_row,
        times: time_columns(&layout)
            .map(|at| column(&layout, at))
            .collect(),
        temperature: column(&layout, layout.columns.temperature),
        unit,
        unit_why,
        date_order: order_why.map(|why| (order, why)),
        offset,
        own: layout.columns.own.is_some(),
    };
    Ok(LoggerFile {
        rows,
        rows_without_temperature: pass.without_temperature,
        faults: faults.first,
        fault_count: faults.count,
        understood,
    })
}

fn time_columns(layout: &Layout) -> impl Iterator<Item = usize> + use<> {
    let (first, second) = match layout.columns.times {
        Times::One(column) => (column, None),
        Times::Two { date, time } => (date, Some(time)),
    };
    [first].into_iter().chain(second)
}

fn time_names(layout: &Layout) -> impl Iterator<Item = &str> {
    time_columns(layout).filter_map(|at| layout.names.get(at).map(String::as_str))
}

fn column(layout: &Layout, at: usize) -> FoundColumn {
    FoundColumn {
        number: at + 1,
        name: layout.names.get(at).cloned(),
    }
}

/// The first pass: what each cell says by itself.
struct Pass<'a> {
    layout: &'a Layout,
    written: Vec<Written>,
    without_temperature: u64,
    /// The unit in a line of units below the header.
    units_line: Option<TemperatureUnit>,
    begun: bool,
}

impl<'a> Pass<'a> {
    const fn new(layout: &'a Layout) -> Self {
        Self {
            layout,
            written: Vec::new(),
            without_temperature: 0,
            units_line: None,
            begun: false,
        }
    }

    /// Keeps the rows of one heap, in a file of our own.
    fn keep_one_heap(&mut self, wanted: Option<&str>) -> Result<(), LoggerError> {
        let besides = self.written.iter().filter_map(|row| row.besides.as_deref());
        let heap = heap_to_take(besides, wanted).map_err(|(fitting, names)| match wanted {
            Some(wanted) if fitting == 0 => LoggerError::NoSuchHeap {
                wanted: shown(wanted),
                names,
            },
            _ => LoggerError::SeveralHeaps { names },
        })?;
        self.written.retain(|row| {
            let besides = row.besides.as_ref();
            besides.map(|besides| &besides.heap_id) == heap.as_ref()
        });
        Ok(())
    }

    fn take(&mut self, record: Record, fields: &[Cow<'_, str>]) -> Result<(), Wrong> {
        if let Some((column, fault)) = record.fault {
            let kind = match fault {
                RecordFault::QuoteOpen => FaultKind::QuoteOpen,
                RecordFault::BehindQuote => FaultKind::BehindQuote,
                RecordFault::TooLong => FaultKind::TooLong,
            };
            return Err((column, kind));
        }
        let columns = &self.layout.columns;
        let cell = |at: usize| fields.get(at).map(|field| field.trim());
        let temperature_cell = cell(columns.temperature);
        if !std::mem::replace(&mut self.begun, true)
            && let Some(unit) = temperature_cell.and_then(unit_alone)
        {
            self.units_line = Some(unit);
            return Ok(());
        }
        // A mark at the end of the line makes one empty field more.
        let width = self.layout.width;
        let beyond = fields.iter().skip(width);
        if record.count > MOST_COLUMNS || beyond.clone().any(|field| !field.trim().is_empty()) {
            let fields = record.count;
            let header = width;
            return Err((width, FaultKind::TooManyFields { fields, header }));
        }
        let missing = |at: usize| {
            let (fields, header) = (record.count, width);
            (at, FaultKind::TooFewFields { fields, header })
        };
        let stamped = match columns.times {
            Times::One(at) => moment_cell(at, cell(at).ok_or_else(|| missing(at))?)?,
            Times::Two { date, time } => {
                let date_cell = cell(date).ok_or_else(|| missing(date))?;
                let time_cell = cell(time).ok_or_else(|| missing(time))?;
                let of_date = part_cell(date, date_cell)?;
                let of_time = part_cell(time, time_cell)?;
                let no_date = || {
                    (
                        date,
                        FaultKind::NoDate {
                            cell: shown(date_cell),
                        },
                    )
                };
                let no_time = || {
                    (
                        time,
                        FaultKind::NoTimeOfDay {
                            cell: shown(time_cell),
                        },
                    )
                };
                Stamped {
                    date: Some(of_date.date.ok_or_else(no_date)?),
                    time: Some(of_time.time.ok_or_else(no_time)?),
                    offset_min: of_time.offset_min,
                }
            }
        };
        let own = match &columns.own {
            Some(places) => Some(Box::new(besides(fields, places)?)),
            None => None,
        };
        let (number, unit) = match temperature_cell {
            None | Some("") if own.is_some() => (None, None),
            None => return Err(missing(columns.temperature)),
            Some("") => {
                self.without_temperature += 1;
                return Ok(());
            }
            Some(cell) => {
                let found = if own.is_some() {
                    number(cell).map(|number| (number, None))
                } else {
                    temperature(cell)
                };
                let wrong = || {
                    let cell = shown(cell);
                    (columns.temperature, FaultKind::NotANumber { cell })
                };
                let (number, unit) = found.ok_or_else(wrong)?;
                (Some(number), unit)
            }
        };
        self.written.push(Written {
            row: record.row,
            stamped,
            number,
            unit,
            besides: own,
        });
        Ok(())
    }
}

fn moment_cell(at: usize, cell: &str) -> Result<Stamped, Wrong> {
    let found = part_cell(at, cell)?;
    let cell = || shown(cell);
    match (found.date, found.time) {
        (None, _) => Err((at, FaultKind::NoDate { cell: cell() })),
        (_, None) => Err((at, FaultKind::NoTimeOfDay { cell: cell() })),
        _ => Ok(found),
    }
}

fn part_cell(at: usize, cell: &str) -> Result<Stamped, Wrong> {
    let found = stamped(cell).ok_or_else(|| {
        let shown = shown(cell);
        if number(cell).is_some() {
            (at, FaultKind::NumberForTime { cell: shown })
        } else {
            (at, FaultKind::NotATime { cell: shown })
        }
    })?;
    let impossible = found
        .date
        .and_then(|date| date.orders())
        .is_some_and(|orders| orders == [false; 3]);
    if impossible {
        return Err((at, FaultKind::NoSuchDay { cell: shown(cell) }));
    }
    Ok(found)
}

/// The order of all dates that do not say it themselves.
fn date_order(
    written: &[Written],
    mapping: &LoggerMapping,
) -> Result<(DateOrder, Option<OrderWhy>), LoggerError> {
    let mut open = [true; 3];
    let mut first = None;
    for row in written {
        let Some(orders) = row.stamped.date.and_then(|date| date.orders()) else {
            continue;
        };
        first = first.or(Some(row));
        let left = [0, 1, 2].map(|order| open[order] && orders[order]);
        if left == [false; 3] && mapping.date_order.is_none() {
            return Err(LoggerError::OrderMixed {
                row: row.row,
                cell: row.stamped.date_as_written(),
            });
        }
        open = left;
    }
    let Some(first) = first else {
        return Ok((DateOrder::YearFirst, None));
    };
    if let Some(order) = mapping.date_order {
        return Ok((order, Some(OrderWhy::Said)));
    }
    let mut fitting = DateOrder::ALL
        .into_iter()
        .zip(open)
        .filter_map(|(order, open)| open.then_some(order));
    match (fitting.next(), fitting.next()) {
        (Some(order), None) => Ok((order, Some(OrderWhy::OnlyOneFits))),
        _ => Err(LoggerError::OrderUnknown {
            row: first.row,
            cell: first.stamped.date_as_written(),
        }),
    }
}

/// The unit of the numbers, and how that is known.
fn unit(
    pass: &Pass<'_>,
    mapping: &LoggerMapping,
) -> Result<(TemperatureUnit, UnitWhy), LoggerError> {
    let layout = pass.layout;
    if layout.columns.own.is_some() {
        return Ok((TemperatureUnit::Celsius, UnitWhy::Header));
    }
    if let Some(unit) = mapping.unit {
        return Ok((unit, UnitWhy::Said));
    }
    let name = layout.names.get(layout.columns.temperature);
    match name.and_then(|name| unit_in(&words(name), true)) {
        Some(Ok(unit)) => return Ok((unit, UnitWhy::Header)),
        Some(Err(())) => {
            let name = name.cloned().unwrap_or_default();
            return Err(LoggerError::BothUnits { name });
        }
        None => {}
    }
    if let Some(unit) = pass.units_line {
        return Ok((unit, UnitWhy::Header));
    }
    if let Some(unit) = pass.written.iter().find_map(|row| row.unit) {
        return Ok((unit, UnitWhy::BehindNumbers));
    }
    let above = layout.preamble.lines().flat_map(words).collect::<Vec<_>>();
    if let Some(Ok(unit)) = unit_in(&above, false) {
        return Ok((unit, UnitWhy::AboveHeader));
    }
    // What no unit brings near a heap, such as the code of a broken probe, says nothing.
    let shown = pass
        .written
        .iter()
        .filter_map(|row| row.number)
        .filter(|number| {
            (COLDEST_C..=HOTTEST_C).contains(number)
                || (COLDEST_C..=HOTTEST_C).contains(&TemperatureUnit::Fahrenheit.celsius(*number))
        });
    let (least, most) = shown.fold(
        (f64::INFINITY, f64::NEG_INFINITY),
        |(least, most), number| (least.min(number), most.max(number)),
    );
    if least > most {
        // Nothing is near a heap in either unit: each row is a fault.
        return Ok((
            TemperatureUnit::Celsius,
            UnitWhy::Guess {
                least: 0.0,
                most: 0.0,
            },
        ));
    }
    guessed(least, most)
        .map(|unit| (unit, UnitWhy::Guess { least, most }))
        .ok_or(LoggerError::UnitUnknown { least, most })
}

fn celsius(written: &Written, unit: TemperatureUnit, column: usize) -> Result<Option<f64>, Wrong> {
    let Some(number) = written.number else {
        return Ok(None);
    };
    if written.unit.is_some_and(|other| other != unit) {
        let cell = number.to_string();
        return Err((column, FaultKind::OtherUnit { cell }));
    }
    let temperature_c = unit.celsius(number);
    if (COLDEST_C..=HOTTEST_C).contains(&temperature_c) {
        Ok(Some(temperature_c))
    } else {
        Err((column, FaultKind::OutOfRange { temperature_c }))
    }
}
