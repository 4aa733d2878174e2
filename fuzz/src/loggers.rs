//! Files of thermometer loggers: read, taken in, and held against what must always be so.

use heapwright_journal::content::{HeapStarted, ProbePlace};
use heapwright_journal::{Content, DeviceId, Event, EventId, Line, Moment, Stamp, What};
use heapwright_spreadsheet::{
    Column, DateOrder, LoggerError, LoggerFile, LoggerMapping, MOST_FAULTS, MOST_ROWS, NewReadings,
    Placing, TemperatureUnit, new_readings, read_logger, readings_csv,
};
use heapwright_state::State;

use crate::targets::{Outcome, check_message, length_class};

/// Files with more new readings are not taken in: what holds of these holds of more.
const MOST_TAKEN: usize = 20;

/// Reads a logger's file and takes it in. The first byte chooses what is said of it.
///
/// # Panics
///
/// When a second reading differs, a message is no single line, a limit is passed, a reading cannot
/// be written, a row is lost, the same file is new twice, or what was taken in does not come back
/// whole from a table.
pub fn logger_csv(input: &[u8]) -> Outcome {
    let (&first, file) = input.split_first().unwrap_or((&b'0', &[]));
    let mapping = mapping(first.wrapping_sub(b'0'));
    let read = read_logger(file, &mapping);
    assert_eq!(read, read_logger(file, &mapping), "two readings differ");
    let file = match read {
        Ok(file) => file,
        Err(error) => {
            check_message(&error.to_string());
            return kind(&error);
        }
    };
    check_file(&file);
    let heap = EventId::new(1, &[0; 10]);
    let placing = Placing {
        heap,
        place: Some(ProbePlace::Core),
        depth_m: None,
        logger: Some("probe".to_owned()),
        apart_min: (first % 2 == 0).then_some(30),
    };
    let mut state = State::default();
    keep(&mut state, heap, started(), moment(0));
    let new = match new_readings(&state, &file.rows, &placing) {
        Ok(new) => new,
        Err(error) => {
            check_message(&error.to_string());
            return "no readings".to_owned();
        }
    };
    if new.readings.len() <= MOST_TAKEN {
        check_taken(&mut state, &file, &placing, &new);
    }
    let understood = &file.understood;
    format!(
        "{} {:?} {} {:?} {} {} {} {} {}",
        understood.encoding,
        understood.delimiter,
        understood.times.len(),
        understood.date_order.map(|(order, _)| order),
        understood.unit.name(),
        understood.own,
        length_class(file.rows.len()),
        length_class(file.faults.len()),
        new.duplicates > 0,
    )
}

/// The name of an error, and of the fault in it.
fn kind(error: &LoggerError) -> Outcome {
    let name = |debug: String| -> String {
        debug
            .chars()
            .take_while(|c| c.is_ascii_alphabetic())
            .collect()
    };
    match error {
        LoggerError::NothingReadable { first: Some(fault) } => {
            format!("nothing readable: {}", name(format!("{:?}", fault.kind)))
        }
        error => name(format!("{error:?}")),
    }
}

fn mapping(choice: u8) -> LoggerMapping {
    let column = |number| Some(Column::Number(number));
    let mut mapping = LoggerMapping::default();
    match choice % 8 {
        1 => mapping.unit = Some(TemperatureUnit::Celsius),
        2 => {
            mapping.unit = Some(TemperatureUnit::Fahrenheit);
            mapping.date_order = Some(DateOrder::MonthFirst);
        }
        3 => {
            mapping.date_order = Some(DateOrder::DayFirst);
            mapping.offset_min = -570;
        }
        4 => {
            mapping.time = column(1);
            mapping.temperature = column(2);
            mapping.offset_min = i16::MAX;
        }
        5 => {
            mapping.date = column(1);
            mapping.time = column(2);
            mapping.temperature = column(3);
            mapping.date_order = Some(DateOrder::YearFirst);
        }
        6 => mapping.temperature = Some(Column::Name("Temp".to_owned())),
        7 => mapping.heap = Some("Bin".to_owned()),
        _ => {}
    }
    mapping
}

fn check_file(file: &LoggerFile) {
    assert!(file.rows.len() <= MOST_ROWS, "{} rows", file.rows.len());
    assert!(file.faults.len() <= MOST_FAULTS, "too many faults listed");
    let listed = file.faults.len() as u64;
    assert!(listed == file.fault_count || listed == MOST_FAULTS as u64);
    assert!(file.faults.is_sorted_by_key(|fault| fault.row));
    for fault in &file.faults {
        assert!(fault.row > 0 && fault.column > 0, "a fault nowhere");
        check_message(&fault.to_string());
    }
    for sentence in file.understood.sentences() {
        check_message(&sentence);
    }
    for row in &file.rows {
        let possible = row
            .temperature_c
            .is_none_or(|temperature_c| (-60.0..=120.0).contains(&temperature_c));
        assert!(possible, "row {} has {:?}", row.row, row.temperature_c);
        assert!(row.temperature_c.is_some() || row.besides.is_some());
    }
}

/// The readings are kept: then the same file brings nothing new, and neither does their table.
fn check_taken(state: &mut State, file: &LoggerFile, placing: &Placing, new: &NewReadings) {
    for (index, (happened, read)) in (1_u8..).zip(&new.readings) {
        let content = Content::from(read.clone());
        keep(state, EventId::new(1, &[index; 10]), content, *happened);
    }
    let again = new_readings(state, &file.rows, placing);
    let again = again.map(|again| again.readings);
    assert_eq!(again, Ok(Vec::new()), "the same file is new twice");
    let table = readings_csv(state, None);
    let back = read_logger(table.as_bytes(), &LoggerMapping::default());
    let back = back.unwrap_or_else(|error| panic!("our own table: {error}"));
    assert_eq!(back.faults, [], "faults in our own table");
    let fresh = Placing {
        apart_min: None,
        ..placing.clone()
    };
    let whole = new_readings(&State::default(), &back.rows, &fresh);
    let whole = whole.map(|whole| whole.readings);
    assert_eq!(whole.as_ref(), Ok(&new.readings), "{table}");
}

fn started() -> Content {
    Content::from(HeapStarted {
        name: "=Bin".to_owned(),
        enclosure: None,
        sun: None,
        filling: None,
    })
}

fn moment(instant_ms: i64) -> Moment {
    Moment {
        instant_ms,
        offset_min: 0,
    }
}

fn keep(state: &mut State, id: EventId, content: Content, happened: Moment) {
    let event = Event {
        id,
        stamp: Stamp {
            wall_ms: 1,
            count: u16::try_from(state.lines()).unwrap_or(0),
            device: DeviceId(1),
        },
        happened,
        recorded: moment(0),
        by: None,
        batch: None,
        what: What::Known(content),
    };
    let line = event
        .write()
        .unwrap_or_else(|error| panic!("a reading that cannot be written: {error}"));
    let digest = Line::from(line.as_str()).digest();
    assert!(state.take(digest, event), "an event is there already");
}
