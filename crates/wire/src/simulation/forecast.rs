//! What will become of a heap of the garden as JSON: its plans side by side, and what probes showed.

use heapwright_answers::heap::Action;
use heapwright_answers::{Ahead, ForecastAnswer, PlanAnswer};
use heapwright_catalogue::Catalogue;
use heapwright_journal::Moment;
use heapwright_state::State;
use heapwright_texts::Locale;
use heapwright_wording as wording;
#[cfg(feature = "schema")]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::answer::{SimulationJson, bare, notices};

use crate::ENGLISH;

/// What `heapwright forecast` answers.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct ForecastJson {
    /// Id of the heap.
    pub heap: String,
    /// Its name.
    pub name: String,
    /// What the clock said.
    pub now: String,
    /// When the simulation starts: with the first feed since the heap was last empty.
    pub start: String,
    /// Now, in days after the start.
    pub now_d: f64,
    /// The ways to go on.
    pub plans: Vec<PlanJson>,
    /// What probes showed.
    pub readings: Vec<ReadingJson>,
    /// By how much the core was warmer than computed, on average [K]; null without readings.
    pub warmer_than_computed_k: Option<f64>,
    /// What to know about the answer, as sentences.
    pub notices: Vec<String>,
}

/// One way to go on and what comes of it.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct PlanJson {
    /// What it is called.
    pub name: String,
    /// What is done.
    pub acts: Vec<ActJson>,
    /// Figures from now on.
    pub ahead: AheadJson,
    /// The same in sentences.
    pub sentences: Vec<String>,
    /// The whole since the start; days are counted from there.
    pub simulation: SimulationJson,
}

/// Something that is meant to be done.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct ActJson {
    /// When.
    pub at: String,
    /// "turn" or "water".
    pub what: String,
    /// How much water [L]; null for a turn.
    pub water_l: Option<f64>,
}

/// Figures from now on.
#[derive(Clone, Copy, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct AheadJson {
    /// Highest core temperature [degC].
    pub peak_core_temperature_c: f64,
    /// When, in days from now.
    pub peak_in_d: f64,
    /// Days with the core at 55 degC or more.
    pub days_core_at_or_above_55: f64,
    /// Lowest oxygen, percent.
    pub lowest_oxygen_pct: f64,
    /// When, in days from now.
    pub lowest_oxygen_in_d: f64,
    /// Days with some part short of air.
    pub days_with_sour_part: f64,
    /// Lowest moisture, percent.
    pub driest_pct: f64,
    /// Water wanted at the end, below 0 what is too much [L].
    pub water_wanted_l: f64,
    /// Volume at the end [m3].
    pub volume_m3: f64,
    /// When it counts as ready, in days from now; below 0 it did before, null when it does not.
    pub ready_in_d: Option<f64>,
}

/// What a probe showed.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct ReadingJson {
    /// Days after the start.
    pub time_d: f64,
    /// What it showed [degC].
    pub temperature_c: f64,
    /// Where: "core", "edge" and so on; null when not told.
    pub place: Option<String>,
    /// How deep [m]; null when not told.
    pub depth_m: Option<f64>,
    /// The core as computed [degC]; null for a reading elsewhere.
    pub computed_core_c: Option<f64>,
}

/// What will become of a heap of the garden.
#[must_use]
pub fn forecast_json(
    catalogue: &Catalogue,
    state: &State,
    answer: &ForecastAnswer,
) -> ForecastJson {
    let start_ms = answer
        .plans
        .first()
        .map_or(answer.now.instant_ms, |plan| plan.answer.start_ms);
    ForecastJson {
        heap: answer.heap.to_string(),
        name: wording::heap_name(state, answer.heap, ENGLISH).to_owned(),
        now: answer.now.to_string(),
        start: Moment::new(start_ms, answer.now.offset_min)
            .unwrap_or(answer.now)
            .to_string(),
        now_d: answer.now_d,
        plans: answer
            .plans
            .iter()
            .map(|plan| plan_json(answer, plan))
            .collect(),
        readings: answer
            .readings
            .iter()
            .map(|reading| ReadingJson {
                time_d: reading.day,
                temperature_c: reading.temperature_c,
                place: reading
                    .place
                    .map(|place| wording::Word::word(place, ENGLISH).to_owned()),
                depth_m: reading.depth_m,
                computed_core_c: reading.computed_core_c,
            })
            .collect(),
        warmer_than_computed_k: answer.warmer_than_computed_k(),
        notices: notices(catalogue, &answer.notices),
    }
}

fn plan_json(answer: &ForecastAnswer, plan: &PlanAnswer) -> PlanJson {
    PlanJson {
        name: plan.plan.name.clone(),
        acts: plan
            .plan
            .acts
            .iter()
            .map(|act| {
                let (what, water_l) = match act.action {
                    Action::Water { litres } => ("water", Some(litres)),
                    _ => ("turn", None),
                };
                ActJson {
                    at: act.at.to_string(),
                    what: what.to_owned(),
                    water_l,
                }
            })
            .collect(),
        ahead: ahead(&plan.answer.ahead, answer.now_d),
        sentences: wording::plan_lines(answer, plan, Locale::default()),
        simulation: bare(&plan.answer),
    }
}

fn ahead(of: &Ahead, now_d: f64) -> AheadJson {
    AheadJson {
        peak_core_temperature_c: of.peak_core_temperature_c,
        peak_in_d: of.peak_day - now_d,
        days_core_at_or_above_55: of.days_hot,
        lowest_oxygen_pct: of.lowest_oxygen_pct,
        lowest_oxygen_in_d: of.lowest_oxygen_day - now_d,
        days_with_sour_part: of.days_sour,
        driest_pct: of.driest * 100.0,
        water_wanted_l: of.water_wanted_l,
        volume_m3: of.volume_m3,
        ready_in_d: of.ready_day.map(|day| day - now_d),
    }
}
