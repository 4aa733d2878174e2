//! A message as it is kept: its text in the compact form of `src/pattern.rs`, and its arguments.

/// The messages of one file, in the order of their names.
pub type File = Vec<Message>;

/// What an argument is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Stands where it is put, as it is.
    Text,
    /// Is written in the language's figures, and chooses a plural.
    Number,
}

/// One message.
pub struct Message {
    /// Its name, such as `turn-it`.
    pub id: String,
    /// Names and kinds of its arguments, in the order of their names.
    pub arguments: Vec<(String, Kind)>,
    /// Its text; arguments stand in it by name, see [`Piece`].
    pub pattern: Vec<Piece>,
}

/// A piece of a pattern.
pub enum Piece {
    /// Text as it is.
    Text(String),
    /// An argument.
    Argument(String),
    /// A number with at least and at most so many decimals.
    Number(String, u8, u8),
    /// One of several patterns, by an argument.
    Select {
        /// The argument that decides.
        by: String,
        /// Keys and patterns.
        variants: Vec<(String, Vec<Piece>)>,
        /// Which of them stands for all other keys.
        default: usize,
    },
}
