//! What is simulated: a holder, its weather, what is done when, and how finely to look.

use std::fmt;

use super::charge::Charge;
use super::enclosure::{Cover, Enclosure};
use super::weather::Weather;

/// How finely space is cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Model {
    /// One cell for the whole heap: quick, for many runs.
    Lumped,
    /// Layers by rings.
    Spatial {
        /// At most so many layers.
        layers: usize,
        /// Rings from core to wall.
        rings: usize,
    },
}

impl Default for Model {
    fn default() -> Self {
        Self::Spatial {
            layers: 6,
            rings: 4,
        }
    }
}

impl Model {
    pub(crate) fn size(self) -> (usize, usize) {
        match self {
            Self::Lumped => (1, 1),
            Self::Spatial { layers, rings } => (layers, rings),
        }
    }
}

/// What is done to the heap.
#[derive(Clone, Debug, PartialEq)]
pub enum Action {
    /// Put on top.
    Feed {
        /// What.
        charge: Charge,
        /// How warm; as the air when not told [degrees Celsius].
        temperature_c: Option<f64>,
    },
    /// Turned over.
    Turn {
        /// 0 nothing moved, 1 all alike.
        thoroughness: f64,
    },
    /// Watered; on the day of a turn all through, else from above.
    Water {
        /// How much [L].
        litres: f64,
    },
    /// Covered or laid open.
    Cover(Cover),
    /// Taken out.
    TakeOut {
        /// Share of the volume, at most 0.95.
        share: f64,
        /// From the bottom upward, as through a hatch; else evenly.
        from_below: bool,
    },
}

/// Something that is done on a day.
#[derive(Clone, Debug, PartialEq)]
pub struct Event {
    /// Days after the start.
    pub day: f64,
    /// What.
    pub action: Action,
}

/// A heap and what befalls it.
#[derive(Clone, Debug, PartialEq)]
pub struct Case {
    /// What holds it.
    pub enclosure: Enclosure,
    /// The air around it.
    pub weather: Weather,
    /// What is done, in order of days.
    pub events: Vec<Event>,
    /// How long [d].
    pub days: f64,
    /// How finely.
    pub model: Model,
}

/// What to compute and how closely.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Options {
    /// Hours between two rows of the series.
    pub every_h: f64,
    /// Whether every row has the fields of all cells.
    pub fields: bool,
    /// Error allowed in a step, as a factor on the usual.
    pub tolerance: f64,
}

impl Default for Options {
    fn default() -> Self {
        Self {
            every_h: 6.0,
            fields: false,
            tolerance: 1.0,
        }
    }
}

/// Why a heap cannot be simulated.
#[derive(Clone, Debug, PartialEq)]
pub enum SimulationError {
    /// Nothing is ever put in.
    NothingFed,
    /// An entry of the enclosure has no meaning.
    Enclosure(&'static str),
    /// An hour of the weather has no meaning.
    Weather {
        /// Which, from 0.
        hour: usize,
    },
    /// The weather ends before the simulation.
    WeatherTooShort {
        /// Days of weather.
        days: f64,
    },
    /// An event has a value without meaning or lies before another.
    Event {
        /// Which, from 0.
        index: usize,
    },
    /// A length of time, a grid or an option without meaning.
    Settings(&'static str),
    /// The computation did not get on.
    Stuck {
        /// Day reached.
        day: f64,
    },
}

impl fmt::Display for SimulationError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NothingFed => f.write_str("nothing is put into the heap; add a feed"),
            Self::Enclosure(what) => {
                write!(f, "the {what} of the enclosure has no meaning; correct it")
            }
            Self::Weather { hour } => write!(
                f,
                "hour {hour} of the weather holds a value that no weather has; correct it"
            ),
            Self::WeatherTooShort { days } => write!(
                f,
                "the weather ends after {days:.1} days; add hours or simulate fewer days"
            ),
            Self::Event { index } => write!(
                f,
                "event {} has a value without meaning or stands out of order; correct it",
                index + 1
            ),
            Self::Settings(what) => write!(f, "the {what} has no meaning; correct it"),
            Self::Stuck { day } => write!(
                f,
                "the computation did not get beyond day {day:.2}; look for an unusual amount there, or for a feed with hardly any dry matter to its volume"
            ),
        }
    }
}

impl std::error::Error for SimulationError {}

/// Longest simulation [d]: some thirty years.
const MOST_DAYS: f64 = 11_000.0;
/// Most cells along one side.
const MOST_CELLS: usize = 40;

impl Case {
    /// The first thing that has no meaning.
    pub(crate) fn check(
        &self,
        options: &Options,
        parameters: &super::Parameters,
    ) -> Result<(), SimulationError> {
        if !(self.days > 0.0 && self.days <= MOST_DAYS) {
            return Err(SimulationError::Settings("number of days"));
        }
        let (layers, rings) = self.model.size();
        if layers == 0 || rings == 0 || layers > MOST_CELLS || rings > MOST_CELLS {
            return Err(SimulationError::Settings("grid"));
        }
        if !(options.every_h >= 0.01 && options.every_h.is_finite()) {
            return Err(SimulationError::Settings("interval of the series"));
        }
        if !(options.tolerance >= 1e-6 && options.tolerance <= 100.0) {
            return Err(SimulationError::Settings("tolerance"));
        }
        if let Some(what) = self.enclosure.fault() {
            return Err(SimulationError::Enclosure(what));
        }
        if let Some(hour) = self.weather.fault() {
            return Err(SimulationError::Weather { hour });
        }
        if self.weather.days() + 1e-9 < self.days {
            return Err(SimulationError::WeatherTooShort {
                days: self.weather.days(),
            });
        }
        self.check_events(&self.events, parameters)
    }

    /// The first event that has no meaning in this case.
    pub(crate) fn check_events(
        &self,
        events: &[Event],
        parameters: &super::Parameters,
    ) -> Result<(), SimulationError> {
        let mut last = 0.0;
        for (index, event) in events.iter().enumerate() {
            let sound = match &event.action {
                Action::Feed {
                    charge,
                    temperature_c,
                } => {
                    charge.is_sound(parameters)
                        && temperature_c.is_none_or(|t| (-40.0..=95.0).contains(&t))
                }
                Action::Turn { thoroughness } => (0.0..=1.0).contains(thoroughness),
                Action::Water { litres } => (0.0..=1e5).contains(litres),
                Action::Cover(_) => true,
                Action::TakeOut { share, .. } => (0.0..=0.95).contains(share),
            };
            if !(sound && event.day >= last && event.day.is_finite()) {
                return Err(SimulationError::Event { index });
            }
            last = event.day;
        }
        let fed =
            |event: &Event| matches!(event.action, Action::Feed { .. }) && event.day < self.days;
        if events.iter().any(fed) {
            Ok(())
        } else {
            Err(SimulationError::NothingFed)
        }
    }
}
