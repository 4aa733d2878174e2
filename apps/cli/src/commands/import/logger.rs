//! What would come of taking in the table of a thermometer that logs?

use heapwright_journal::{Content, Moment};
use heapwright_spreadsheet::{
    Column, DateOrder, LoggerMapping, Placing, TemperatureUnit, new_readings, read_local_logger,
};
use heapwright_state::Arrival;
use heapwright_wire::{FaultJson, ImportJson, chosen, import_json, length_m};

use super::{Coming, New};
use crate::arguments::ImportArguments;
use crate::failure::Failure;
use crate::keeping::Keeping;
use crate::naming;

/// Reads the table and finds what the heap does not have yet.
pub fn look(
    keeping: &Keeping,
    arguments: &ImportArguments,
    bytes: &[u8],
) -> Result<Coming, Failure> {
    let offset_of = |shown: Moment| keeping.edges.offset_at(shown.local());
    let file = read_local_logger(bytes, &mapping(arguments)?, &offset_of)
        .map_err(|error| refused(&error.to_string()))?;
    let placing = Placing {
        heap: keeping.heap(arguments.heap.as_deref())?,
        place: arguments
            .place
            .as_deref()
            .map(|text| chosen(text, "--place"))
            .transpose()?,
        depth_m: arguments
            .depth
            .as_deref()
            .map(|text| length_m(text, "--depth"))
            .transpose()?,
        logger: arguments.logger.clone(),
        apart_min: arguments.every,
    };
    let new = new_readings(&keeping.state, &file.rows, &placing)
        .map_err(|error| refused(&error.to_string()))?;
    let arrival = Arrival {
        new: new.readings.len() as u64,
        known: new.duplicates,
        ..Arrival::default()
    };
    let mut notices = file.understood.sentences();
    if file.rows_without_temperature > 0 {
        notices.push(format!(
            "{} rows have no temperature and are passed over.",
            file.rows_without_temperature
        ));
    }
    if new.thinned > 0 {
        notices.push(format!(
            "{} readings are left out because others are close.",
            new.thinned
        ));
    }
    let answer = ImportJson {
        faults: file
            .faults
            .iter()
            .map(|fault| FaultJson {
                line: fault.row,
                what: fault.kind.to_string(),
            })
            .collect(),
        fault_count: file.fault_count,
        notices,
        ..import_json(keeping.shown_path(), "logger", &arrival)
    };
    let readings = new
        .readings
        .into_iter()
        .map(|(moment, read)| (Content::from(read), moment))
        .collect();
    Ok(Coming {
        answer,
        new: New::Readings(readings),
    })
}

/// Sentences of the reader have a full stop; ours stand behind the name of the program.
fn refused(sentence: &str) -> Failure {
    Failure::Input(sentence.trim_end_matches('.').to_owned())
}

fn mapping(arguments: &ImportArguments) -> Result<LoggerMapping, Failure> {
    let column = |text: &Option<String>, option: &str| {
        text.as_deref()
            .map(|text| {
                text.parse::<Column>().map_err(|_| {
                    Failure::Input(format!(
                        "{option}: name a column as in the header, or number it from 1"
                    ))
                })
            })
            .transpose()
    };
    let one_of = |text: &Option<String>| {
        text.as_deref()
            .map(|text| text.trim().to_lowercase().replace(['-', '_'], " "))
    };
    let unit = match one_of(&arguments.unit).as_deref() {
        None => None,
        Some("c" | "°c" | "celsius") => Some(TemperatureUnit::Celsius),
        Some("f" | "°f" | "fahrenheit") => Some(TemperatureUnit::Fahrenheit),
        Some(other) => {
            return Err(Failure::Input(format!(
                "--unit: \"{}\" is neither C nor F",
                naming::shown(other)
            )));
        }
    };
    let date_order = match one_of(&arguments.date_order).as_deref() {
        None => None,
        Some("day first") => Some(DateOrder::DayFirst),
        Some("month first") => Some(DateOrder::MonthFirst),
        Some("year first") => Some(DateOrder::YearFirst),
        Some(other) => {
            return Err(Failure::Input(format!(
                "--date-order: \"{}\" is none of day-first, month-first, year-first",
                naming::shown(other)
            )));
        }
    };
    Ok(LoggerMapping {
        time: column(&arguments.time_column, "--time-column")?,
        date: column(&arguments.date_column, "--date-column")?,
        temperature: column(&arguments.column, "--column")?,
        unit,
        date_order,
        heap: arguments.heap.clone(),
        ..LoggerMapping::default()
    })
}
