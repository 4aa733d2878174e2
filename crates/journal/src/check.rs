//! What cannot be: limits that every event keeps, so that no later part meets a surprise.

use std::fmt;

/// Why an event cannot be as it is written.
#[derive(Clone, Debug, PartialEq)]
pub struct Problem {
    /// Which field.
    pub field: String,
    /// What is wrong with it.
    pub what: Wrong,
}

/// What is wrong with a field.
#[derive(Clone, Debug, PartialEq)]
pub enum Wrong {
    /// A number lies outside what can be.
    Outside {
        /// The least it may be.
        least: f64,
        /// The most it may be.
        most: f64,
    },
    /// A number is larger than it may be.
    Above {
        /// The most it may be.
        most: f64,
    },
    /// An amount is not above 0.
    NotAbove0,
    /// A list has too few or too many entries.
    Count {
        /// The fewest there may be.
        least: usize,
        /// The most there may be.
        most: usize,
        /// How many there are.
        count: usize,
    },
    /// A text is empty.
    Empty,
    /// A text is too long.
    TooLong {
        /// The most characters it may have.
        most: usize,
        /// How many it has.
        count: usize,
    },
    /// A text holds control characters.
    ControlCharacters,
    /// A test of compost without a test.
    NoTest,
    /// A reading in which nothing was read.
    NothingRead,
    /// A measurement of a material without a measurement.
    NoMeasurement,
    /// A part with neither a known material nor one of its own, or with both.
    MaterialOrCustom,
    /// A heap is moved onto itself.
    SameHeap,
    /// An id has letters that no id has.
    NotAnId,
    /// Three figures are not in their order.
    NotInOrder,
    /// The digest of a picture is none.
    NotADigest,
    /// A picture is of a kind that is not kept.
    NotAPicture,
    /// A correction does not fit what it corrects.
    CannotBeApplied {
        /// What the reader of JSON says, in English.
        why: String,
    },
}

impl Problem {
    pub(crate) fn new(field: &str, what: Wrong) -> Self {
        Self {
            field: field.to_owned(),
            what,
        }
    }
}

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.field, self.what)
    }
}

/// To follow the name of the field.
impl fmt::Display for Wrong {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Outside { least, most } => write!(f, "must be from {least} to {most}"),
            Self::Above { most } => write!(f, "must be at most {most}"),
            Self::NotAbove0 => f.write_str("must be above 0"),
            Self::Count { least, most, count } => {
                write!(f, "must hold {least} to {most}, not {count}")
            }
            Self::Empty => f.write_str("must not be empty"),
            Self::TooLong { most, count } => {
                write!(f, "must have at most {most} characters, not {count}")
            }
            Self::ControlCharacters => f.write_str("must not hold control characters"),
            Self::NoTest => f.write_str("must come with a test"),
            Self::NothingRead => f.write_str("must come with something that was read"),
            Self::NoMeasurement => f.write_str("must come with a measurement"),
            Self::MaterialOrCustom => f.write_str("must have either a material or a custom one"),
            Self::SameHeap => f.write_str("must be another heap"),
            Self::NotAnId => {
                f.write_str("must be 1 to 60 lower-case letters, digits and underscores")
            }
            Self::NotInOrder => f.write_str("must be low, typical and high"),
            Self::NotADigest => f.write_str("must be 64 hexadecimal digits"),
            Self::NotAPicture => f.write_str("must be image/jpeg, image/png or image/webp"),
            Self::CannotBeApplied { why } => write!(f, "cannot be applied (“{why}”)"),
        }
    }
}

impl std::error::Error for Problem {}

/// A number from `least` to `most`.
pub(crate) fn within(field: &str, number: f64, least: f64, most: f64) -> Result<(), Problem> {
    if number >= least && number <= most {
        return Ok(());
    }
    Err(Problem::new(field, Wrong::Outside { least, most }))
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
    Err(Problem::new(field, Wrong::Above { most }))
}

/// A list of at most `most` things, and at least `least`.
pub(crate) fn many<T>(field: &str, list: &[T], least: usize, most: usize) -> Result<(), Problem> {
    if (least..=most).contains(&list.len()) {
        return Ok(());
    }
    Err(Problem::new(
        field,
        Wrong::Count {
            least,
            most,
            count: list.len(),
        },
    ))
}

/// Limits of texts.
pub(crate) struct Text;

impl Text {
    /// A name to show: 1 to 120 characters on one line.
    pub(crate) fn name(field: &str, text: &str) -> Result<(), Problem> {
        if text.trim().is_empty() {
            return Err(Problem::new(field, Wrong::Empty));
        }
        Self::of(field, text, 120, false)
    }

    /// An id or a word: 1 to 60 characters on one line.
    pub(crate) fn id(field: &str, text: &str) -> Result<(), Problem> {
        if text.trim().is_empty() {
            return Err(Problem::new(field, Wrong::Empty));
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
            return Err(Problem::new(field, Wrong::TooLong { most, count }));
        }
        let odd = |c: char| c.is_control() && !(lines && matches!(c, '\n' | '\t'));
        if text.contains(odd) {
            return Err(Problem::new(field, Wrong::ControlCharacters));
        }
        Ok(())
    }
}
