//! How does a heap stand today, by simulation alone?

use heapwright_catalogue::Catalogue;
use heapwright_engine::heap::Model;
use heapwright_garden::Garden;
use heapwright_journal::{EventId, Moment};
use heapwright_state::State;

use super::history::History;
use super::weather;
use crate::question::{QuestionError, SEED};
use crate::simulated::{Prepared, SimulationQuestion};

/// Hours between two rows.
const EVERY_H: f64 = 24.0;
/// Younger heaps are cut into cells; older ones are computed in one, so that nobody waits [d].
const CELLS_BELOW_D: f64 = 400.0;
/// The shortest time that is simulated [d].
const SHORTEST_D: f64 = 0.05;

/// A heap today, as simulated since it was last empty. Nothing of it was measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Today {
    /// Simulated for so long [d].
    pub days: f64,
    /// Core temperature [degC].
    pub core_temperature_c: f64,
    /// The air [degC].
    pub air_temperature_c: f64,
    /// Oxygen it would take at 37 degC, moist and aired [mg per g of volatile solids and hour].
    pub standard_uptake_mg_per_g_vs_h: f64,
    /// C:N, elemental carbon.
    pub carbon_to_nitrogen: f64,
    /// Ammonium, share of nitrogen.
    pub ammonium_share: f64,
    /// Day from which it counts as ready, after the start; `None` while it does not.
    pub ready_day: Option<f64>,
    /// Dry matter that is there [kg].
    pub dry_kg: f64,
    /// Everything that is there [kg].
    pub wet_kg: f64,
    /// Volume [m3].
    pub volume_m3: f64,
    /// Nitrogen, phosphorus, potassium, calcium, magnesium that are there [kg].
    pub now_kg: [f64; 5],
    /// Nitrogen lost in all, share of that put in.
    pub nitrogen_lost: f64,
    /// Of that put in, as ammonia.
    pub ammonia_lost: f64,
    /// Of that put in, as nitrous oxide; good to a factor of ten.
    pub nitrous_oxide_lost: f64,
    /// Methane, of the carbon lost; good to a factor of ten.
    pub methane_of_carbon_lost: f64,
}

/// Simulates a heap until now.
///
/// # Errors
///
/// When nothing lies in the heap or the computation cannot go on.
pub(crate) fn today(
    catalogue: &Catalogue,
    garden: &Garden,
    state: &State,
    heap: EventId,
    now: Moment,
) -> Result<Today, QuestionError> {
    let history = History::of(catalogue, garden, state, heap, now)?;
    let (weather, _) = weather(state, None)?;
    let days = history.day_of(now).max(SHORTEST_D);
    let model = if days < CELLS_BELOW_D {
        Model::Spatial {
            layers: 4,
            rings: 3,
        }
    } else {
        Model::Lumped
    };
    let asked = SimulationQuestion {
        start_ms: history.start_ms,
        days,
        every_h: EVERY_H,
        model,
        enclosure: history.enclosure,
        weather,
        events: Vec::new(),
        members: 0,
        member_model: model,
        seed: SEED,
        fields_at_d: Vec::new(),
        notices: Vec::new(),
    };
    let mut prepared = Prepared::new(&asked, history.events, Vec::new())?;
    prepared.sun_share = history.sun_share;
    let run = prepared.line()?;
    let last = run
        .series
        .last()
        .copied()
        .ok_or(QuestionError::NothingInHeap)?;
    let summary = &run.summary;
    Ok(Today {
        days,
        core_temperature_c: last.core_temperature_c,
        air_temperature_c: last.air_temperature_c,
        standard_uptake_mg_per_g_vs_h: last.standard_uptake_mg_per_g_vs_h,
        carbon_to_nitrogen: last.carbon_to_nitrogen,
        ammonium_share: last.ammonium_share,
        ready_day: summary.ready_day,
        dry_kg: run.left.dry_kg,
        wet_kg: run.left.wet_kg,
        volume_m3: run.left.volume_m3,
        now_kg: [
            run.left.nitrogen_kg,
            run.left.phosphorus_kg,
            run.left.potassium_kg,
            run.left.calcium_kg,
            run.left.magnesium_kg,
        ],
        nitrogen_lost: summary.nitrogen_loss_pct / 100.0,
        ammonia_lost: summary.ammonia_loss_pct / 100.0,
        nitrous_oxide_lost: summary.nitrous_oxide_loss_pct / 100.0,
        methane_of_carbon_lost: summary.methane_share_of_carbon_loss_pct / 100.0,
    })
}
