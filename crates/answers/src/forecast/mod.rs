//! What will become of this heap? From its journal until today, and from today on.
//!
//! All that the journal tells of the heap since it was last empty is simulated anew, with the
//! weather that is known or usual, and then some days ahead with what is planned. Several plans lie
//! side by side: the same members see the same weather in each, so that they can be compared.

mod gainsaid;
mod history;
mod moved;
mod today;

use heapwright_catalogue::Catalogue;
use heapwright_engine::heap::{Action, Event, Model};
use heapwright_garden::Garden;
use heapwright_journal::content::ProbePlace;
use heapwright_journal::{EventId, Moment};
use heapwright_state::State;
use heapwright_weather::{Climate, Overrides, Place, Series, Setting};

use crate::question::{Accepted, Field, QuestionError, SEED};
use crate::simulated::{
    Prepared, Runner, SimulationAnswer, SimulationNotice, SimulationQuestion, WeatherGiven,
};
use history::{History, MS_PER_DAY};

pub use gainsaid::Gainsaid;
pub use today::Today;
pub(crate) use today::today;

/// Latitude of a garden that does not say where it lies [deg]: the middle latitudes.
const USUAL_LATITUDE_DEG: f64 = 50.0;
/// Hours between two rows.
const EVERY_H: f64 = 6.0;

/// Something that the keeper means to do.
#[derive(Clone, Debug, PartialEq)]
pub struct Planned {
    /// When.
    pub at: Moment,
    /// What.
    pub action: Action,
}

/// One way to go on.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// What to call it: "turn in 3 days".
    pub name: String,
    /// What is done.
    pub acts: Vec<Planned>,
}

/// The question: what will become of this heap?
#[derive(Clone, Debug, PartialEq)]
pub struct ForecastQuestion {
    /// Which heap.
    pub heap: EventId,
    /// What the clock says.
    pub now: Moment,
    /// How far ahead [d].
    pub days: f64,
    /// The ways to go on; leaving it alone when there is none.
    pub plans: Vec<Plan>,
    /// Weather that is known, measured or forecast.
    pub weather: Option<Series>,
    /// How many members the ensemble has.
    pub members: u32,
    /// How finely space is cut for the line and the cross-section.
    pub model: Model,
    /// How finely space is cut for the members.
    pub member_model: Model,
    /// Days from now at which the cross-section is wanted; below 0 is the past.
    pub fields_at_d: Vec<f64>,
}

/// What a probe showed, beside what was computed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ProbeReading {
    /// When [d after the start of the simulation].
    pub day: f64,
    /// What it showed [degC].
    pub temperature_c: f64,
    /// Where.
    pub place: Option<ProbePlace>,
    /// How deep [m].
    pub depth_m: Option<f64>,
    /// The core as it was computed for that time [degC]; `None` for a reading elsewhere.
    pub computed_core_c: Option<f64>,
}

/// What comes of one plan.
#[derive(Clone, Debug, PartialEq)]
pub struct PlanAnswer {
    /// The plan.
    pub plan: Plan,
    /// What comes of it; days are counted from the start of the simulation.
    pub answer: SimulationAnswer,
}

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct ForecastAnswer {
    /// Which heap.
    pub heap: EventId,
    /// What the clock says.
    pub now: Moment,
    /// The same on the clock of the simulation [d after its start].
    pub now_d: f64,
    /// What comes of each plan, in the order of the question.
    pub plans: Vec<PlanAnswer>,
    /// What probes showed, in the order of time.
    pub readings: Vec<ProbeReading>,
    /// What to know about it, each once.
    pub notices: Vec<SimulationNotice>,
}

impl ForecastAnswer {
    /// By how much the core was warmer than computed, on average over the readings there [K].
    #[must_use]
    pub fn warmer_than_computed_k(&self) -> Option<f64> {
        let (mut sum, mut count) = (0.0, 0.0);
        for reading in &self.readings {
            if let Some(computed) = reading.computed_core_c {
                sum += reading.temperature_c - computed;
                count += 1.0;
            }
        }
        (count > 0.0).then(|| sum / count)
    }
}

/// Computes what will become of a heap.
///
/// # Errors
///
/// When nothing lies in the heap, a plan has no meaning or the computation cannot go on.
pub fn what_will_happen(
    catalogue: &Catalogue,
    garden: &Garden,
    state: &State,
    question: &ForecastQuestion,
    runner: &Runner<'_>,
) -> Result<ForecastAnswer, QuestionError> {
    let forecast = PreparedForecast::of(catalogue, garden, state, question)?;
    let answers = Prepared::answers(&forecast.prepared, runner)?;
    Ok(forecast.answer(answers))
}

/// A forecast made ready to run, for faces that run it piece by piece.
#[derive(Clone, Debug, PartialEq)]
pub struct PreparedForecast {
    heap: EventId,
    now: Moment,
    now_d: f64,
    plans: Vec<Plan>,
    prepared: Vec<Prepared>,
    readings: Vec<ProbeReading>,
    notices: Vec<SimulationNotice>,
}

impl PreparedForecast {
    /// Reads the heap's history and makes a case of each plan.
    ///
    /// # Errors
    ///
    /// When nothing lies in the heap or a plan has no meaning.
    pub fn of(
        catalogue: &Catalogue,
        garden: &Garden,
        state: &State,
        question: &ForecastQuestion,
    ) -> Result<Self, QuestionError> {
        let history = History::of(catalogue, garden, state, question.heap, question.now)?;
        let (weather, assumed) = weather(state, question.weather.clone())?;
        let mut notices = history.notices.clone();
        notices.extend(assumed);
        let now_d = history.day_of(question.now);
        let plans = if question.plans.is_empty() {
            vec![Plan {
                name: "leave".to_owned(),
                acts: Vec::new(),
            }]
        } else {
            question.plans.clone()
        };
        let prepared = plans
            .iter()
            .enumerate()
            .map(|(index, plan)| planned(question, &history, &weather, plan, index, now_d))
            .collect::<Result<_, _>>()?;
        Ok(Self {
            heap: question.heap,
            now: question.now,
            now_d,
            plans,
            prepared,
            readings: history.readings,
            notices,
        })
    }

    /// The case of each plan, in the order of the question.
    #[must_use]
    pub fn prepared(&self) -> &[Prepared] {
        &self.prepared
    }

    /// Now, on the clock of the simulation [d after its start].
    #[must_use]
    pub fn now_d(&self) -> f64 {
        self.now_d
    }

    /// The same, with space cut otherwise and the cross-section at other days from now.
    #[must_use]
    pub fn cut(mut self, model: Model, member_model: Model, fields_at_d: &[f64]) -> Self {
        for prepared in &mut self.prepared {
            prepared.model = model;
            prepared.member_model = member_model;
            prepared.fields_at_d = fields_at_d.iter().map(|day| self.now_d + day).collect();
        }
        self
    }

    /// The answer from those of the plans, in their order; of the first ones alone when there are
    /// fewer.
    #[must_use]
    pub fn answer(&self, answers: Vec<SimulationAnswer>) -> ForecastAnswer {
        let mut notices = self.notices.clone();
        for answer in &answers {
            notices.extend(answer.notices.iter().cloned());
        }
        notices.sort();
        notices.dedup();
        let readings = self
            .readings
            .iter()
            .map(|reading| ProbeReading {
                computed_core_c: answers.first().and_then(|first| computed(first, reading)),
                ..*reading
            })
            .collect();
        ForecastAnswer {
            heap: self.heap,
            now: self.now,
            now_d: self.now_d,
            plans: self
                .plans
                .iter()
                .cloned()
                .zip(answers)
                .map(|(plan, answer)| PlanAnswer { plan, answer })
                .collect(),
            readings,
            notices,
        }
    }
}

fn planned(
    question: &ForecastQuestion,
    history: &History,
    weather: &WeatherGiven,
    plan: &Plan,
    index: usize,
    now_d: f64,
) -> Result<Prepared, QuestionError> {
    let mut events = history.events.clone();
    for act in &plan.acts {
        let day = history.day_of(act.at);
        if day < now_d - 1e-9 || day > now_d + question.days {
            return Err(QuestionError::Number {
                field: Field(format!("plans[{index}]")),
                accepted: Accepted::DoneInTime,
            });
        }
        events.push(Event {
            day,
            action: act.action.clone(),
        });
    }
    events.sort_by(|one, other| one.day.total_cmp(&other.day));
    let asked = SimulationQuestion {
        start_ms: history.start_ms,
        days: now_d + question.days,
        every_h: EVERY_H,
        model: question.model,
        enclosure: history.enclosure,
        weather: weather.clone(),
        events: Vec::new(),
        members: question.members,
        member_model: question.member_model,
        seed: SEED,
        fields_at_d: question.fields_at_d.iter().map(|day| now_d + day).collect(),
        notices: Vec::new(),
    };
    let mut prepared = Prepared::new(&asked, events, Vec::new())?;
    prepared.sun_share = history.sun_share;
    prepared.from_d = now_d;
    Ok(prepared)
}

/// The weather of the garden, as far as it is known where it lies.
fn weather(
    state: &State,
    known: Option<Series>,
) -> Result<(WeatherGiven, Option<SimulationNotice>), QuestionError> {
    let (climate, notice) = garden_climate(state)?;
    let notice = notice.filter(|_| known.is_none());
    let climate = Box::new(climate);
    Ok((WeatherGiven::Around { climate, known }, notice))
}

/// The climate of the garden, and a notice when its place is not known.
///
/// # Errors
///
/// When what the garden says of its place contradicts itself.
pub fn garden_climate(state: &State) -> Result<(Climate, Option<SimulationNotice>), QuestionError> {
    let (place, overrides, notice) = match &state.garden().place {
        Some(place) => (
            Place {
                latitude_deg: place.latitude_deg,
                longitude_deg: place.longitude_deg,
                elevation_m: place.elevation_m.unwrap_or(0.0),
                setting: Setting::Between,
            },
            Overrides {
                coldest_month_c: place.coldest_month_c,
                warmest_month_c: place.warmest_month_c,
                ..Overrides::default()
            },
            None,
        ),
        None => (usual_place(), Overrides::default(), Some(())),
    };
    let climate = Climate::new(place, &overrides).map_err(QuestionError::Climate)?;
    #[allow(clippy::cast_possible_truncation)] // a latitude
    let latitude_deg = USUAL_LATITUDE_DEG as i32;
    Ok((
        climate,
        notice.map(|()| SimulationNotice::ClimateAssumed { latitude_deg }),
    ))
}

/// Where a garden is taken to lie that does not say.
#[must_use]
pub fn usual_place() -> Place {
    Place {
        latitude_deg: USUAL_LATITUDE_DEG,
        longitude_deg: 0.0,
        elevation_m: 0.0,
        setting: Setting::Between,
    }
}

/// The core at the time of a reading there, straight between rows.
fn computed(answer: &SimulationAnswer, reading: &ProbeReading) -> Option<f64> {
    if !matches!(reading.place, None | Some(ProbePlace::Core)) {
        return None;
    }
    let behind = answer
        .series
        .partition_point(|row| row.time_d <= reading.day);
    let (one, other) = (
        answer.series.get(behind.checked_sub(1)?)?,
        answer.series.get(behind)?,
    );
    let share = (reading.day - one.time_d) / (other.time_d - one.time_d);
    Some(one.core_temperature_c + (other.core_temperature_c - one.core_temperature_c) * share)
}

#[allow(clippy::cast_precision_loss)] // milliseconds of centuries
pub(crate) fn days_between(from_ms: i64, until_ms: i64) -> f64 {
    (until_ms - from_ms) as f64 / MS_PER_DAY
}
