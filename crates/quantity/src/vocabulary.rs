//! What do this keeper's words mean? The vessels they own, their gallon, their decimal mark.

use crate::measure::MeasureWords;

/// Which gallon a bare "gallon" means; quarts, pints, fluid ounces and bushels follow it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Gallon {
    /// 231 cubic inches, 3.785 L.
    #[default]
    Us,
    /// 4.54609 L.
    Imperial,
}

/// Which mark stands before the decimals in what this keeper types.
///
/// It decides only where a number has two readings ("1,234" is 1.234 or 1234).
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum DecimalMark {
    /// Not known: a number with two readings is refused.
    #[default]
    Unknown,
    /// 1.5; the comma groups thousands.
    Point,
    /// 1,5; the point groups thousands.
    Comma,
}

/// Everything that the parsers need to know about who is speaking.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Vocabulary {
    /// The vessels and the words for them.
    pub measures: MeasureWords,
    /// What a bare "gallon" means.
    pub gallon: Gallon,
    /// How decimals are written.
    pub decimal: DecimalMark,
}
