//! What all questions share: the usual target, the seed, and what can be wrong with a question.

use std::fmt;

use heapwright_engine::heap::SimulationError;
use heapwright_garden::FoundError;
use heapwright_terms::Target;
use heapwright_weather::ClimateError;

/// The region to aim at when the keeper does not say otherwise.
///
/// - C:N 25 to 40: `NOP-205.203`, the start of the US organic rule for compost;
///   aim 30: common practice, on the handbook scale (decision 0003)
/// - moisture 50 to 60 %: `NRAES54m`
/// - free air space at least 30 %: `HAUGm`
pub const USUAL_TARGET: Target = Target {
    carbon_to_nitrogen_low: 25.0,
    carbon_to_nitrogen_high: 40.0,
    carbon_to_nitrogen_goal: 30.0,
    moisture_wet_basis_low: 0.50,
    moisture_wet_basis_high: 0.60,
    free_air_space_low: 0.30,
    free_air_space_high: 1.0,
};

/// The seed of all draws: fixed, so that the same question has the same answer
/// today, tomorrow and on every device. The number itself has no meaning.
pub const SEED: u64 = 0x4845_4150;

/// Where in a question something is, in the words of the JSON: `parts[1].amount`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Field(pub String);

impl Field {
    /// The field `list[index]`.
    #[must_use]
    pub fn item(list: &str, index: usize) -> Self {
        Self(format!("{list}[{index}]"))
    }

    /// A field inside this one.
    #[must_use]
    pub fn inside(&self, name: &str) -> Self {
        Self(format!("{}.{name}", self.0))
    }
}

impl fmt::Display for Field {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

/// What a figure of a question must be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Accepted {
    /// Above 0.
    Above0,
    /// A number above 0.
    NumberAbove0,
    /// 0 or more.
    ZeroOrMore,
    /// An amount of 0 or more.
    AmountOfZeroOrMore,
    /// Within limits.
    Within {
        /// The least.
        least: u32,
        /// The most.
        most: u32,
    },
    /// A share.
    Percent,
    /// The area of a bed.
    AreaOfBed,
    /// An amount of compost.
    AmountOfCompost,
    /// How much of what was spread how long ago.
    Dressing,
    /// Two of area, depth and amount.
    TwoOfThree,
    /// Nothing, but the amount of the mix.
    AmountOfMixInstead,
    /// Nothing, but the area.
    AreaInstead,
    /// Something to do in the time that is looked ahead to.
    DoneInTime,
    /// What a heap can hold.
    Feed,
    /// Two limits of C:N.
    TwoRatios,
    /// A C:N within the limits.
    RatioWithin,
    /// Two limits in percent.
    TwoPercentages,
}

/// To follow "must be".
impl fmt::Display for Accepted {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Within { least, most } => return write!(f, "from {least} to {most}"),
            Self::Above0 => "above 0",
            Self::NumberAbove0 => "a number above 0",
            Self::ZeroOrMore => "0 or more",
            Self::AmountOfZeroOrMore => "an amount of 0 or more",
            Self::Percent => "from 0 to 100 percent",
            Self::AreaOfBed => "from 0.01 to 100,000 square metres",
            Self::AmountOfCompost => "an amount of more than 0, at most 100,000,000 litres",
            Self::Dressing => "an amount of 0 or more, 0 to 1000 years ago",
            Self::TwoOfThree => "given two at a time: the third is computed",
            Self::AmountOfMixInstead => "left out: give the amount of the mix",
            Self::AreaInstead => "left out: give the area",
            Self::DoneInTime => {
                "something to do between now and the last day that is looked ahead to"
            }
            Self::Feed => {
                "a feed of a millionth of a kilogram of dry matter or more, and of no more than a heap can hold"
            }
            Self::TwoRatios => "two numbers from 1 to 1000, the lower first",
            Self::RatioWithin => "a number within cn_ratio",
            Self::TwoPercentages => "two percentages from 0 to 100, the lower first",
        })
    }
}

/// The words that may be said.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Known {
    /// How much a crop feeds.
    Feeding,
    /// One of these ids.
    OneOf(Vec<String>),
}

impl fmt::Display for Known {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Feeding => f.write_str("light, medium or heavy"),
            Self::OneOf(ids) => write!(f, "one of {}", ids.join(", ")),
        }
    }
}

/// Why a question cannot be answered: what is wrong, and where.
#[derive(Clone, Debug, PartialEq)]
pub enum QuestionError {
    /// There is nothing to compute with.
    Empty {
        /// The list that is empty.
        field: Field,
    },
    /// There is more than a heap can hold.
    TooMany {
        /// The list that is too long.
        field: Field,
        /// How many there may be.
        most: usize,
    },
    /// A part cannot be used.
    Part {
        /// Which one.
        field: Field,
        /// Why.
        error: FoundError,
    },
    /// A limit of the target cannot be.
    Target {
        /// Which one.
        field: Field,
        /// What would be accepted.
        accepted: Accepted,
    },
    /// A number is not what it must be.
    Number {
        /// Which one.
        field: Field,
        /// What would be accepted.
        accepted: Accepted,
    },
    /// There is no bed.
    NoBeds,
    /// A word stands for nothing that is known.
    Unknown {
        /// Where it stands.
        field: Field,
        /// What was said.
        said: String,
        /// What may be said instead.
        accepted: Known,
    },
    /// The place has no climate.
    Climate(ClimateError),
    /// The weather that is known ends, or begins, within the simulation.
    WeatherAmiss {
        /// From when to when it is known, as files have it: "2026-05-01 06:00Z".
        covered: [String; 2],
        /// From when to when is simulated.
        wanted: [String; 2],
    },
    /// The weather lies in years that are not reckoned with, or is too long.
    OutOfTime,
    /// The heap is empty, so that there is nothing to look ahead to.
    NothingInHeap,
    /// The heap cannot be simulated.
    Simulation(SimulationError),
}

impl fmt::Display for QuestionError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty { field } => write!(
                f,
                "{field} is empty: name at least one material with its amount"
            ),
            Self::TooMany { field, most } => {
                write!(f, "{field} has too many entries: give at most {most}")
            }
            Self::Part { field, error } => write!(f, "{field}: {error}"),
            Self::Target { field, accepted } | Self::Number { field, accepted } => {
                write!(f, "{field} must be {accepted}")
            }
            Self::NoBeds => f.write_str("there is no bed to plan: describe one"),
            Self::Unknown {
                field,
                said,
                accepted,
            } => write!(f, "{field}: \"{said}\" is not known: give {accepted}"),
            Self::Climate(error) => write!(f, "{error}"),
            Self::WeatherAmiss {
                covered: [known_from, known_to],
                wanted: [begins, ends],
            } => write!(
                f,
                "the weather covers {known_from} to {known_to}, the simulation {begins} to {ends}: give more weather, fewer days, or a climate for what is missing"
            ),
            Self::OutOfTime => f.write_str(
                "weather must lie in the years 1900 to 2199 and be at most 50 years long; correct the dates",
            ),
            Self::NothingInHeap => f.write_str(
                "nothing lies in this heap, as far as the journal tells: write down what goes in",
            ),
            Self::Simulation(error) => write!(f, "{error}"),
        }
    }
}

impl std::error::Error for QuestionError {}

/// The most parts, or materials in reach, of one question.
pub(crate) const MOST_PARTS: usize = 200;

/// The target itself, or what is wrong with it. Limits may coincide.
pub fn checked_target(target: Target) -> Result<Target, QuestionError> {
    let fail = |field: &str, accepted| {
        Err(QuestionError::Target {
            field: Field("target".to_owned()).inside(field),
            accepted,
        })
    };
    let ordered = |low: f64, high: f64, least: f64, most: f64| {
        low.is_finite() && high.is_finite() && least <= low && low <= high && high <= most
    };
    let Target {
        carbon_to_nitrogen_low: low,
        carbon_to_nitrogen_high: high,
        carbon_to_nitrogen_goal: goal,
        ..
    } = target;
    if !ordered(low, high, 1.0, 1000.0) {
        return fail("cn_ratio", Accepted::TwoRatios);
    }
    if !(goal >= low && goal <= high) {
        return fail("cn_goal", Accepted::RatioWithin);
    }
    if !ordered(
        target.moisture_wet_basis_low,
        target.moisture_wet_basis_high,
        0.0,
        1.0,
    ) {
        return fail("moisture_pct", Accepted::TwoPercentages);
    }
    if !ordered(
        target.free_air_space_low,
        target.free_air_space_high,
        0.0,
        1.0,
    ) {
        return fail("free_air_space_pct", Accepted::TwoPercentages);
    }
    Ok(target)
}
