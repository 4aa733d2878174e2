//! What is wrong with a file, and where.

use std::cmp::Ordering;
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

/// The longest piece of input that a message shows, in characters.
const LONGEST_SHOWN: usize = 60;

/// A field's name on one line; the middle of a long one is left out.
fn field_shown(field: &str) -> String {
    let signs: Vec<char> = field.chars().map(visible).collect();
    if signs.len() <= LONGEST_SHOWN {
        return signs.into_iter().collect();
    }
    let half = LONGEST_SHOWN / 2;
    let (head, tail) = (&signs[..half], &signs[signs.len() - half..]);
    head.iter().chain(&['…']).chain(tail).collect()
}

/// A message on one line, each quotation in it cut to a length.
fn what_shown(what: &str) -> String {
    let mut shown = String::new();
    let mut quoted: Option<(char, usize)> = None;
    let mut escaped = false;
    for sign in what.chars().map(visible) {
        match &mut quoted {
            None => {
                if let Some(end) = closing(sign) {
                    quoted = Some((end, 0));
                }
                shown.push(sign);
            }
            Some((end, _)) if sign == *end && !escaped => {
                quoted = None;
                shown.push(sign);
            }
            Some((_, length)) => {
                *length += 1;
                match (*length).cmp(&LONGEST_SHOWN) {
                    Ordering::Less => shown.push(sign),
                    Ordering::Equal => shown.push('…'),
                    Ordering::Greater => {}
                }
            }
        }
        escaped = sign == '\\' && !escaped;
    }
    shown
}

/// The sign that ends what this one begins to quote.
fn closing(sign: char) -> Option<char> {
    match sign {
        '"' | '`' => Some(sign),
        '“' => Some('”'),
        _ => None,
    }
}

fn visible(sign: char) -> char {
    if sign.is_control() { ' ' } else { sign }
}

impl fmt::Display for WireError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooLarge { bytes, most } => {
                write!(f, "the input has {bytes} bytes: give at most {most}")
            }
            Self::Json { field, what } if field.is_empty() => {
                write!(
                    f,
                    "the input is not the JSON that is expected: {}",
                    what_shown(what)
                )
            }
            Self::Json { field, what } | Self::Field { field, what } => {
                write!(f, "{}: {}", field_shown(field), what_shown(what))
            }
            Self::Question(error) => f.write_str(&what_shown(&error.to_string())),
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn messages_are_one_short_line() {
        let long = "x".repeat(500);
        let error = WireError::Json {
            field: format!("parts[0].{long}"),
            what: format!("unknown field `{long}\u{7}\n`, expected `a\\\"b`"),
        };
        let text = error.to_string();
        assert!(text.chars().count() < 200, "{text}");
        assert!(!text.chars().any(char::is_control), "{text:?}");
        assert!(
            text.starts_with("parts[0].xxx") && text.ends_with("…`, expected `a\\\"b`"),
            "{text}"
        );
    }
}
