//! What does a column hold, by its name?

use super::numbers::{unit_in, words};

/// What a column holds, by its name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Role {
    /// Date and time of day.
    Moment,
    /// A date.
    Date,
    /// A time of day, or the whole time where there are no dates.
    Time,
    /// A temperature.
    Temperature,
    /// Something else.
    Other,
}

/// Words for a time in languages whose spreadsheets write decimal commas.
const MOMENT_WORDS: [&str; 8] = [
    "datetime",
    "timestamp",
    "happened",
    "moment",
    "zeitpunkt",
    "zeitstempel",
    "horodatage",
    "when",
];
const DATE_WORDS: [&str; 4] = ["date", "datum", "fecha", "day"];
const TIME_WORDS: [&str; 6] = ["time", "zeit", "uhrzeit", "hora", "heure", "tijd"];
/// Times that are not those of a reading.
const NO_TIMES: [&str; 6] = [
    "elapsed", "zone", "interval", "timezone", "duration", "start",
];
const TEMPERATURE_WORDS: [&str; 10] = [
    "temp",
    "temps",
    "temperature",
    "temperatures",
    "temperatur",
    "temperatura",
    "temperatuur",
    "température",
    "tempc",
    "tempf",
];
/// Temperatures that no probe shows.
const NO_TEMPERATURES: [&str; 3] = ["dew", "dewpoint", "humidity"];

/// What a column of this name holds.
pub(super) fn role(name: &str) -> Role {
    let words = words(name);
    let has = |some: &[&str]| words.iter().any(|word| some.contains(&word.as_str()));
    let numbered = words.iter().any(|word| {
        ["t", "temp", "temperature"].iter().any(|front| {
            word.strip_prefix(front).is_some_and(|rest| {
                !rest.is_empty() && rest.bytes().all(|byte| byte.is_ascii_digit())
            })
        })
    });
    let temperature = (has(&TEMPERATURE_WORDS) || numbered || unit_in(&words, false).is_some())
        && !has(&NO_TEMPERATURES);
    let (moment, date, time) = (has(&MOMENT_WORDS), has(&DATE_WORDS), has(&TIME_WORDS));
    match (temperature, moment || (date && time), date, time) {
        (true, false, false, false) => Role::Temperature,
        (false, ..) if has(&NO_TIMES) => Role::Other,
        (false, true, ..) => Role::Moment,
        (false, _, true, _) => Role::Date,
        (false, _, _, true) => Role::Time,
        _ => Role::Other,
    }
}
