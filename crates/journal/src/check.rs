//! What cannot be: limits that every event keeps, so that no later part meets a surprise.

use std::fmt;

/// Why an event cannot be as it is written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Problem {
    /// Which field.
    pub field: String,
    /// What is wrong with it.
    pub what: String,
}

impl Problem {
    pub(crate) fn new(field: &str, what: impl Into<String>) -> Self {
        Self {
            field: field.to_owned(),
            what: what.into(),
        }
    }
}

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.field, self.what)
    }
}

impl std::error::Error for Problem {}

/// A number from `least` to `most`.
pub(crate) fn within(field: &str, number: f64, least: f64, most: f64) -> Result<(), Problem> {
    if number >= least && number <= most {
        return Ok(());
    }
    Err(Problem::new(
        field,
        format!("must be from {least} to {most}"),
    ))
}

/// The same for a number that may be missing.
pub(crate) fn if_within(
    field: &str,
    number: Option<f64>,
    least: f64,
    most: f64,
) -> Result<(), Problem> {
    number.map_or(Ok(()), |number| within(field, number, least, most))
}

/// A number of at most `most`.
pub(crate) fn below(field: &str, number: f64, most: f64) -> Result<(), Problem> {
    if number <= most {
        return Ok(());
    }
    Err(Problem::new(field, format!("must be at most {most}")))
}

/// A list of at most `most` things, and at least `least`.
pub(crate) fn many<T>(field: &str, list: &[T], least: usize, most: usize) -> Result<(), Problem> {
    if (least..=most).contains(&list.len()) {
        return Ok(());
    }
    Err(Problem::new(
        field,
        format!("must hold {least} to {most}, not {}", list.len()),
    ))
}

/// Limits of texts.
pub(crate) struct Text;

impl Text {
    /// A name to show: 1 to 120 characters on one line.
    pub(crate) fn name(field: &str, text: &str) -> Result<(), Problem> {
        if text.trim().is_empty() {
            return Err(Problem::new(field, "must not be empty"));
        }
        Self::of(field, text, 120, false)
    }

    /// An id or a word: 1 to 60 characters on one line.
    pub(crate) fn id(field: &str, text: &str) -> Result<(), Problem> {
        if text.trim().is_empty() {
            return Err(Problem::new(field, "must not be empty"));
        }
        Self::of(field, text, 60, false)
    }

    /// A remark that may be missing: at most 4,000 characters on any number of lines.
    pub(crate) fn remark(field: &str, text: Option<&str>) -> Result<(), Problem> {
        text.map_or(Ok(()), |text| Self::of(field, text, 4000, true))
    }

    fn of(field: &str, text: &str, most: usize, lines: bool) -> Result<(), Problem> {
        let count = text.chars().count();
        if count > most {
            return Err(Problem::new(
                field,
                format!("must have at most {most} characters, not {count}"),
            ));
        }
        let odd = |c: char| c.is_control() && !(lines && matches!(c, '\n' | '\t'));
        if text.contains(odd) {
            return Err(Problem::new(field, "must not hold control characters"));
        }
        Ok(())
    }
}
