//! What can go wrong, and the exit code of each.

use std::fmt;
use std::io;

use heapwright_answers::{HygieneError, QuestionError};
use heapwright_store::StoreError;
use heapwright_texts::Locale;
use heapwright_wire::WireError;
use heapwright_wording as wording;

/// Why a command did not do what was asked. One sentence each.
#[derive(Debug)]
pub enum Failure {
    /// The input cannot be used.
    Input(String),
    /// A file cannot be read.
    Read {
        /// Which one.
        path: String,
        /// Why.
        error: io::Error,
    },
    /// Standard output cannot be written.
    Output(io::Error),
    /// The journal cannot be opened, read or written.
    Store(StoreError),
    /// Something outside failed.
    Outside(String),
}

impl Failure {
    /// Our sentences stand behind the name of the program and have no full stop.
    pub fn refused(sentence: &str) -> Self {
        Self::Input(sentence.trim_end_matches('.').to_owned())
    }

    /// 2 for bad input, 1 for a failure of the world.
    pub fn exit_code(&self) -> u8 {
        match self {
            Self::Input(_) => 2,
            Self::Read { .. } | Self::Output(_) | Self::Store(_) | Self::Outside(_) => 1,
        }
    }
}

impl fmt::Display for Failure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Input(what) | Self::Outside(what) => f.write_str(what),
            Self::Read { path, error } => write!(
                f,
                "{path} cannot be read ({error}): check the name, or give - for standard input"
            ),
            // Without a full stop, as in `refused`.
            Self::Store(error) => f.write_str(error.to_string().trim_end_matches('.')),
            Self::Output(error) => write!(
                f,
                "the answer cannot be written ({error}): check the disk or the pipe"
            ),
        }
    }
}

impl std::error::Error for Failure {}

impl From<WireError> for Failure {
    fn from(error: WireError) -> Self {
        match error {
            WireError::Question(error @ (QuestionError::NoBeds | QuestionError::NothingInHeap)) => {
                error.into()
            }
            other => Self::Input(other.to_string()),
        }
    }
}

impl From<QuestionError> for Failure {
    /// Where a command helps, it is named: the errors themselves know no command.
    fn from(error: QuestionError) -> Self {
        match wording::question_refusal_of_commands(&error, Locale::default()) {
            Some(refusal) => Self::refused(refusal),
            None => Self::Input(error.to_string()),
        }
    }
}

impl From<HygieneError> for Failure {
    fn from(error: HygieneError) -> Self {
        Self::refused(wording::hygiene_refusal_of_commands(
            error,
            Locale::default(),
        ))
    }
}

impl From<io::Error> for Failure {
    fn from(error: io::Error) -> Self {
        Self::Output(error)
    }
}
