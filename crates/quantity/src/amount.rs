//! How much was said? One amount ("2 buckets", "3.5 kg", "1½ gal") to a count and a unit.

use std::fmt;

use crate::reader::AmountReader;
use crate::shorten::shortened;
use crate::tokens::tokens;
use crate::unit::{MassUnit, VolumeUnit};
use crate::vocabulary::Vocabulary;

/// The longest amount that is read, in bytes; the longest sensible one takes about 80.
const LONGEST_AMOUNT: usize = 400;

/// What an amount is counted in.
#[derive(Clone, Debug, PartialEq)]
pub enum Unit {
    /// Weighed.
    Mass(MassUnit),
    /// Measured by volume.
    Volume(VolumeUnit),
    /// Counted in the garden's own vessels; the id of the measure.
    Measure(String),
}

/// A count of a unit.
#[derive(Clone, Debug, PartialEq)]
pub struct Amount {
    /// How many of the unit; finite and above 0 when parsed.
    pub count: f64,
    /// The unit.
    pub unit: Unit,
}

impl Amount {
    /// The most that is read by weight [kg].
    pub const MOST_KILOGRAMS: f64 = 100_000.0;
    /// The most that is read by volume [m3].
    pub const MOST_CUBIC_METRES: f64 = 1000.0;
    /// The most vessels that are read.
    pub const MOST_MEASURES: f64 = 100_000.0;

    /// The least that is read by weight [kg]: a milligram.
    pub const LEAST_KILOGRAMS: f64 = 1e-6;
    /// The least that is read by volume [m3]: a thousandth of a millilitre.
    pub const LEAST_CUBIC_METRES: f64 = 1e-9;
    /// The least of a vessel that is read.
    pub const LEAST_MEASURES: f64 = 1e-3;

    /// Mass [kg]; `None` when the unit is not one of mass.
    #[must_use]
    pub fn kilograms(&self) -> Option<f64> {
        match &self.unit {
            Unit::Mass(unit) => Some(self.count * unit.kilograms()),
            Unit::Volume(_) | Unit::Measure(_) => None,
        }
    }

    /// Volume [m3]; `None` when the unit is not one of volume. A measure has the volume that the
    /// garden gives it, which is not known here.
    #[must_use]
    pub fn cubic_metres(&self) -> Option<f64> {
        match &self.unit {
            Unit::Volume(unit) => Some(self.count * unit.cubic_metres()),
            Unit::Mass(_) | Unit::Measure(_) => None,
        }
    }

    /// The amount `factor` times over, in the same unit.
    #[must_use]
    pub fn scaled(&self, factor: f64) -> Self {
        Self {
            count: self.count * factor,
            unit: self.unit.clone(),
        }
    }

    /// True when more is said than any garden moves.
    pub(crate) fn is_absurd(&self) -> bool {
        match &self.unit {
            Unit::Mass(unit) => self.count * unit.kilograms() > Self::MOST_KILOGRAMS,
            Unit::Volume(unit) => self.count * unit.cubic_metres() > Self::MOST_CUBIC_METRES,
            Unit::Measure(_) => self.count > Self::MOST_MEASURES,
        }
    }

    /// True when less is said than anybody can weigh or measure.
    pub(crate) fn is_too_small(&self) -> bool {
        // "0.001 g" is the least itself, whatever the rounding.
        const ROUNDED: f64 = 1.0 - 1e-12;
        match &self.unit {
            Unit::Mass(unit) => self.count * unit.kilograms() < Self::LEAST_KILOGRAMS * ROUNDED,
            Unit::Volume(unit) => {
                self.count * unit.cubic_metres() < Self::LEAST_CUBIC_METRES * ROUNDED
            }
            Unit::Measure(_) => self.count < Self::LEAST_MEASURES * ROUNDED,
        }
    }
}

/// The exact count and the symbol of the unit (the id of a measure), parted by a no-break space.
///
/// It reads back as the same amount under every `DecimalMark` and `Gallon`, when the measure's id
/// is among the words for it: "1.234" is written "1.2340" so that it cannot be taken for 1234.
impl fmt::Display for Amount {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut count = self.count.to_string();
        if count
            .find('.')
            .is_some_and(|point| count.len() - point == 4)
        {
            count.push('0');
        }
        let unit = match &self.unit {
            Unit::Mass(unit) => unit.symbol(),
            Unit::Volume(unit) => unit.symbol(),
            Unit::Measure(id) => id,
        };
        write!(formatter, "{count}\u{a0}{unit}")
    }
}

/// Why an amount cannot be read.
#[derive(Clone, Debug, PartialEq)]
pub enum AmountProblem {
    /// Nothing was typed.
    Empty,
    /// More was typed than any amount takes.
    TooLong,
    /// No number stands where one is needed ("buckets").
    NoNumber,
    /// Words that are no number ("a few").
    Vague {
        /// The words as typed.
        words: String,
    },
    /// A number without a unit ("3").
    NoUnit,
    /// The word behind the number is no unit or vessel ("3 bukets").
    UnknownUnit {
        /// The word as typed.
        word: String,
        /// The known word that is nearest to it.
        nearest: Option<String>,
    },
    /// The word is used for several units ("ton").
    AmbiguousUnit {
        /// The word as typed.
        word: String,
        /// The clear ways to write it.
        clear: &'static [&'static str],
    },
    /// The number has two readings ("1,234").
    AmbiguousNumber {
        /// The number as typed.
        number: String,
        /// How to write the smaller, with decimals.
        small: String,
        /// How to write the larger, without a mark.
        large: String,
    },
    /// The digits and marks make no number ("1,2,3").
    NumberForm {
        /// The number as typed.
        number: String,
    },
    /// Two numbers for one amount ("2-3 buckets", "2 lb 3 oz").
    SeveralNumbers,
    /// Zero, or less than can be told from zero.
    Zero,
    /// Below zero.
    Negative,
    /// Not a number, or infinite.
    NotFinite,
    /// More than any garden moves.
    Absurd,
    /// Less than anybody can weigh or measure.
    TooSmall,
    /// A fraction with 0 below.
    DivisionByZero,
    /// Words behind the amount ("2 buckets grass", where only an amount is asked).
    Leftover {
        /// The words as typed.
        words: String,
    },
}

impl AmountProblem {
    /// True when words may look so by chance ("2-year-old", "10-10-10 fertiliser"); the others
    /// are amounts wherever they stand.
    pub(crate) fn may_be_a_name(&self) -> bool {
        matches!(
            self,
            Self::NoNumber
                | Self::Vague { .. }
                | Self::NoUnit
                | Self::UnknownUnit { .. }
                | Self::NumberForm { .. }
                | Self::SeveralNumbers
        )
    }

    /// A short fixed name of the kind, for tables and logs.
    #[must_use]
    pub fn name(&self) -> &'static str {
        match self {
            Self::Empty => "empty",
            Self::TooLong => "too-long",
            Self::NoNumber => "no-number",
            Self::Vague { .. } => "vague",
            Self::NoUnit => "no-unit",
            Self::UnknownUnit { .. } => "unknown-unit",
            Self::AmbiguousUnit { .. } => "ambiguous-unit",
            Self::AmbiguousNumber { .. } => "ambiguous-number",
            Self::NumberForm { .. } => "number-form",
            Self::SeveralNumbers => "several-numbers",
            Self::Zero => "zero",
            Self::Negative => "negative",
            Self::NotFinite => "not-finite",
            Self::Absurd => "absurd",
            Self::TooSmall => "too-small",
            Self::DivisionByZero => "division-by-zero",
            Self::Leftover { .. } => "leftover",
        }
    }
}

/// What is wrong and what would be accepted, to follow the quoted text.
impl fmt::Display for AmountProblem {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => {
                formatter.write_str("is empty: write an amount such as 2 buckets or 3.5 kg")
            }
            Self::TooLong => {
                formatter.write_str("is too long: write a number and a unit, such as 2 buckets")
            }
            Self::NoNumber => {
                formatter.write_str("has no number: write how many, such as 2 buckets")
            }
            Self::Vague { words } => write!(
                formatter,
                "says “{words}”, which is no number: write how many, such as 3 handfuls"
            ),
            Self::NoUnit => {
                formatter.write_str(
                    "has no unit: write how much, in a unit, such as 3 buckets or 3 kg",
                )
            }
            Self::UnknownUnit {
                word,
                nearest: Some(nearest),
            } => write!(
                formatter,
                "has the unknown unit “{word}”: did you mean {nearest}?"
            ),
            Self::UnknownUnit {
                word,
                nearest: None,
            } => write!(
                formatter,
                "has the unknown unit “{word}”: write one of your measures, such as a bucket, or kg, lb, L or gal"
            ),
            Self::AmbiguousUnit { word, clear } => {
                write!(
                    formatter,
                    "says “{word}”, which means several units: write "
                )?;
                for (index, way) in clear.iter().enumerate() {
                    let before = match index {
                        0 => "",
                        _ if index + 1 == clear.len() => " or ",
                        _ => ", ",
                    };
                    write!(formatter, "{before}{way}")?;
                }
                Ok(())
            }
            Self::AmbiguousNumber {
                number,
                small,
                large,
            } => write!(
                formatter,
                "has “{number}”, which can be read in two ways: write {large} or {small}"
            ),
            Self::NumberForm { number } => write!(
                formatter,
                "has “{number}”, which is no number: write it like 1234.5 or 1 1/2"
            ),
            Self::SeveralNumbers => formatter
                .write_str("has several numbers for one amount: write one, such as 2 1/2 buckets"),
            Self::Zero => formatter.write_str("is zero: write a number above 0"),
            Self::Negative => formatter.write_str("is below zero: write a number above 0"),
            Self::NotFinite => formatter.write_str("has no finite number: write one such as 2.5"),
            Self::Absurd => formatter.write_str(
                "is more than a garden holds: write at most 100000 kg, 1000 m³ or 100000 measures",
            ),
            Self::TooSmall => formatter.write_str(
                "is less than can be measured: write at least 0.001 g, 0.001 mL or 0.001 of a measure",
            ),
            Self::DivisionByZero => {
                formatter.write_str("divides by zero: write a fraction such as 1/2")
            }
            Self::Leftover { words } => write!(
                formatter,
                "goes on with “{words}”: write only a number and a unit, such as 2 buckets"
            ),
        }
    }
}

/// An amount that cannot be read: why, and what was typed.
#[derive(Clone, Debug, PartialEq)]
pub struct AmountError {
    /// Why.
    pub problem: AmountProblem,
    /// What was typed, cut at about 40 characters.
    pub typed: String,
}

impl fmt::Display for AmountError {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.typed.is_empty() {
            write!(formatter, "The amount {}", self.problem)?;
        } else {
            write!(formatter, "“{}” {}", self.typed, self.problem)?;
        }
        let asks = matches!(
            &self.problem,
            AmountProblem::UnknownUnit {
                nearest: Some(_),
                ..
            }
        );
        formatter.write_str(if asks { "" } else { "." })
    }
}

impl std::error::Error for AmountError {}

/// The amount that a text says, such as "2 buckets", "3,5 kg", "half a handful" or "1 1/2 gal".
///
/// A final "of" is allowed. The count may be written in digits with an exponent ("1.5e1 kg").
///
/// # Errors
///
/// One `AmountProblem` for each way in which the text is no single, positive, sensible amount.
pub fn parse_amount(text: &str, vocabulary: &Vocabulary) -> Result<Amount, AmountError> {
    amount_of(text.trim(), vocabulary).map_err(|problem| AmountError {
        problem,
        typed: shortened(text),
    })
}

fn amount_of(text: &str, vocabulary: &Vocabulary) -> Result<Amount, AmountProblem> {
    if text.len() > LONGEST_AMOUNT {
        return Err(AmountProblem::TooLong);
    }
    let tokens = tokens(text);
    if tokens.is_empty() {
        return Err(AmountProblem::Empty);
    }
    let reader = AmountReader::new(text, &tokens, vocabulary);
    let (amount, next) = match reader.amount(0) {
        Ok(read) => (read.amount, read.next),
        Err(failure) => return Err(reader.explained(failure.problem)),
    };
    let behind = reader.behind_of(next);
    match tokens.get(behind) {
        None => Ok(amount),
        Some(_) if reader.starts_amount(behind) => Err(AmountProblem::SeveralNumbers),
        Some(token) => Err(AmountProblem::Leftover {
            words: shortened(&text[token.span.start..]),
        }),
    }
}
