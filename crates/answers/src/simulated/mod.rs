//! What happens in a heap that is described outright: feeds, weather and what is done, day by day.
//!
//! A question becomes a case of the engine (`charges`, `weather`), the case a run, and many runs
//! with drawn parameters and drawn weather become bands (`runs`). Members of the ensemble do not
//! know of each other: a face may run them on several threads and hand them back in order.

mod charges;
mod runs;
mod weather;

use heapwright_catalogue::Catalogue;
use heapwright_engine::heap::{
    Action, Band, Bands, CellField, Enclosure, Event, Model, Overrides, Snapshot, Summary,
};
use heapwright_garden::{Found, Garden, Notice};

pub(crate) use charges::{charge_of, is_sound};
pub use runs::{Ahead, MemberRuns, Prepared, Runner, Spread, one_by_one};
pub use weather::WeatherGiven;

use crate::question::{Accepted, Field, MOST_PARTS, QuestionError};

/// One part of a feed, and what is told of it beyond its kind.
#[derive(Clone, Debug, PartialEq)]
pub struct FedPart {
    /// What and how much.
    pub found: Found,
    /// What is told of how it decays.
    pub overrides: Overrides,
}

/// What is done to the heap.
#[derive(Clone, Debug, PartialEq)]
pub enum Doing {
    /// Put on top.
    Fed {
        /// What.
        parts: Vec<FedPart>,
        /// Water that comes with it [L].
        water_l: f64,
        /// How warm it is [degC]; as the air when not told.
        temperature_c: Option<f64>,
    },
    /// Anything else, in the engine's words.
    Other(Action),
}

/// Something that is done on a day.
#[derive(Clone, Debug, PartialEq)]
pub struct Happening {
    /// Days after the start.
    pub day: f64,
    /// Where it stands in the question, for messages.
    pub field: String,
    /// What.
    pub doing: Doing,
}

/// The question: what happens in this heap?
#[derive(Clone, Debug, PartialEq)]
pub struct SimulationQuestion {
    /// When it starts [ms since 1970-01-01T00:00Z].
    pub start_ms: i64,
    /// How long [d].
    pub days: f64,
    /// Hours between two rows of the series.
    pub every_h: f64,
    /// How finely space is cut.
    pub model: Model,
    /// What holds the heap.
    pub enclosure: Enclosure,
    /// The air around it.
    pub weather: WeatherGiven,
    /// What is done; in any order, what is done on one day in the order in which it stands.
    pub events: Vec<Happening>,
    /// How many members the ensemble has; 0 for the line alone.
    pub members: u32,
    /// How finely space is cut for the members.
    pub member_model: Model,
    /// Which chance is taken.
    pub seed: u64,
    /// Days at which the cross-section is wanted.
    pub fields_at_d: Vec<f64>,
    /// What was assumed when the question was read.
    pub notices: Vec<SimulationNotice>,
}

/// What the keeper should know about an answer.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum SimulationNotice {
    /// How a part was understood.
    Part(Notice),
    /// No enclosure is described: an open heap, a metre each way, is taken.
    EnclosureAssumed,
    /// The heap's place is not known: a climate at this latitude [deg north] is taken.
    ClimateAssumed {
        /// Whole degrees.
        latitude_deg: i32,
    },
    /// The climate's temperatures are a guess from latitude and height.
    ClimateRough,
    /// So many hours of the weather are not known: the usual is taken, or drawn around it.
    WeatherUsual {
        /// How many.
        hours: usize,
    },
    /// The file of the weather had gaps, which were filled.
    WeatherFilled {
        /// Hours, or days of a daily file.
        gaps: usize,
    },
    /// Rows of the weather's file whose time came twice, of which the later counts, and rows that
    /// were put in order.
    WeatherSorted {
        /// How many came again.
        twice: usize,
        /// How many stood behind a later one.
        out_of_order: usize,
    },
    /// So many events lie behind the end and were left out.
    BehindTheEnd {
        /// How many.
        events: usize,
    },
    /// More went in than the enclosure holds, before settling.
    Overfull,
    /// Parts that cannot be used were left out.
    LeftOut {
        /// What they are called.
        names: Vec<String>,
    },
    /// Compost from another heap is taken as its own history suggests.
    MovedIn,
    /// What went in more than so many days ago is left out.
    OldLeftOut {
        /// Days.
        days: u32,
    },
    /// So many members could not be computed.
    MembersFailed {
        /// How many.
        count: u32,
    },
}

/// The cross-section at one time.
#[derive(Clone, Debug, PartialEq)]
pub struct FieldsAt {
    /// Days after the start.
    pub time_d: f64,
    /// The cells, layer by layer from below, each from core to wall.
    pub cells: Vec<CellField>,
}

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct SimulationAnswer {
    /// When the simulation starts [ms since 1970-01-01T00:00Z].
    pub start_ms: i64,
    /// What holds the heap.
    pub enclosure: Enclosure,
    /// Rows at the times asked for.
    pub series: Vec<Snapshot>,
    /// Figures of the whole.
    pub summary: Summary,
    /// Figures from the time that the keeper looks ahead from.
    pub ahead: Ahead,
    /// The cross-sections asked for, at the nearest rows.
    pub fields: Vec<FieldsAt>,
    /// Bands over the ensemble, when one was asked for.
    pub bands: Option<Bands>,
    /// Where the ensemble's figures from that time on lie.
    pub spread: Option<Spread>,
    /// Days and kinds of what is done, for pictures.
    pub done: Vec<(f64, Done)>,
    /// What to know about it, each once.
    pub notices: Vec<SimulationNotice>,
}

/// What was done, without how much.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Done {
    /// Fed.
    Fed,
    /// Turned.
    Turned,
    /// Watered.
    Watered,
    /// Covered or laid open.
    Covered,
    /// Some was taken out.
    TakenOut,
}

impl Done {
    pub(crate) fn of(action: &Action) -> Self {
        match action {
            Action::Feed { .. } => Self::Fed,
            Action::Turn { .. } => Self::Turned,
            Action::Water { .. } => Self::Watered,
            Action::Cover(_) => Self::Covered,
            Action::TakeOut { .. } => Self::TakenOut,
        }
    }
}

/// The most that a band has below and above, as one figure for each of the five lines.
#[must_use]
pub fn band_of(values: impl Iterator<Item = f64>) -> Band {
    let mut values: Vec<f64> = values.collect();
    Band::of(&mut values)
}

/// Makes a case of a question: parts looked up, weights and pools known, events in order.
///
/// # Errors
///
/// When a part cannot be used or a figure has no meaning.
pub fn prepared(
    catalogue: &Catalogue,
    garden: &Garden,
    question: &SimulationQuestion,
) -> Result<Prepared, QuestionError> {
    let mut notices = question.notices.clone();
    let mut order: Vec<&Happening> = question.events.iter().collect();
    order.sort_by(|one, other| one.day.total_cmp(&other.day));
    let behind = order
        .iter()
        .filter(|event| event.day > question.days)
        .count();
    if behind > 0 {
        notices.push(SimulationNotice::BehindTheEnd { events: behind });
    }
    let mut events = Vec::new();
    for happening in order {
        if happening.day > question.days {
            continue;
        }
        let action = match &happening.doing {
            Doing::Other(action) => action.clone(),
            Doing::Fed {
                parts,
                water_l,
                temperature_c,
            } => Action::Feed {
                charge: fed(catalogue, garden, parts, *water_l, happening, &mut notices)?,
                temperature_c: *temperature_c,
            },
        };
        events.push(Event {
            day: happening.day,
            action,
        });
    }
    Prepared::new(question, events, notices)
}

fn fed(
    catalogue: &Catalogue,
    garden: &Garden,
    parts: &[FedPart],
    water_l: f64,
    happening: &Happening,
    notices: &mut Vec<SimulationNotice>,
) -> Result<heapwright_engine::heap::Charge, QuestionError> {
    let list = format!("{}.feed", happening.field);
    if parts.is_empty() {
        return Err(QuestionError::Empty { field: Field(list) });
    }
    if parts.len() > MOST_PARTS {
        return Err(QuestionError::TooMany {
            field: Field(list),
            most: MOST_PARTS,
        });
    }
    let mut sum = heapwright_engine::heap::Charge::default();
    for (index, part) in parts.iter().enumerate() {
        let found = garden
            .find(catalogue, &part.found)
            .map_err(|error| QuestionError::Part {
                field: Field::item(&list, index),
                error,
            })?;
        notices.extend(found.notices.iter().cloned().map(SimulationNotice::Part));
        sum.add(&charge_of(&part.found, &found, &part.overrides));
    }
    // A litre of water weighs a kilogram.
    sum.water_kg += water_l;
    if is_sound(&sum) {
        Ok(sum)
    } else {
        Err(QuestionError::Number {
            field: Field(list),
            accepted: Accepted::Feed,
        })
    }
}

/// Computes what happens, one member of the ensemble after another.
///
/// # Errors
///
/// When a part cannot be used, a figure has no meaning or the computation cannot go on.
pub fn what_happens(
    catalogue: &Catalogue,
    garden: &Garden,
    question: &SimulationQuestion,
) -> Result<SimulationAnswer, QuestionError> {
    prepared(catalogue, garden, question)?.answer(&one_by_one)
}
