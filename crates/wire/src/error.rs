//! What is wrong with a file, and where.

use std::fmt;

use heapwright_answers::QuestionError;

/// Why a file cannot be used. One sentence each, naming the field.
#[derive(Clone, Debug, PartialEq)]
pub enum WireError {
    /// The file is larger than any sensible one.
    TooLarge {
        /// Size in bytes.
        bytes: usize,
        /// The most that is read.
        most: usize,
    },
    /// It is not JSON, or not of the right shape.
    Json {
        /// The field, or empty for the file as a whole.
        field: String,
        /// What is wrong.
        what: String,
    },
    /// A field cannot be understood.
    Field {
        /// The field.
        field: String,
        /// What is wrong and what would be accepted.
        what: String,
    },
    /// The question cannot be answered.
    Question(QuestionError),
}

impl fmt::Display for WireError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooLarge { bytes, most } => write!(
                f,
                "the input has {bytes} bytes: give at most {most}"
            ),
            Self::Json { field, what } if field.is_empty() => {
                write!(f, "the input is not the JSON that is expected: {what}")
            }
            Self::Json { field, what } | Self::Field { field, what } => write!(f, "{field}: {what}"),
            Self::Question(error) => error.fmt(f),
        }
    }
}

impl std::error::Error for WireError {}

impl From<QuestionError> for WireError {
    fn from(error: QuestionError) -> Self {
        Self::Question(error)
    }
}

impl WireError {
    pub(crate) fn field(field: impl Into<String>, what: impl fmt::Display) -> Self {
        Self::Field {
            field: field.into(),
            what: what.to_string(),
        }
    }
}
