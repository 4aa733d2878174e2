//! What was moved here from another heap: how far had it come?

use heapwright_engine::heap::{
    self, Action, Case, Charge, Enclosure, Event as Step, FeedClass, Model, Options, Parameters,
    PoolShares, Run, Sums, Weather, WeatherHour,
};
use heapwright_journal::EventId;

use super::days_between;
use super::history::{LONGEST_D, Reader};
use crate::simulated::is_sound;

impl Reader<'_> {
    /// What a share of another heap was when it was moved: its own history, simulated in one cell in
    /// mild air, tells how much is left and how far it has come.
    pub(super) fn moved(
        &mut self,
        from: EventId,
        at_ms: i64,
        share: f64,
        deep: u32,
    ) -> Option<Charge> {
        let deeper = deep.checked_sub(1)?;
        let (acts, cover) = self.acts(from, at_ms - 1, deeper);
        let start_ms = acts
            .iter()
            .find(|(_, action)| matches!(action, Action::Feed { .. }))
            .map(|(instant, _)| *instant)?;
        let days = days_between(start_ms, at_ms).clamp(0.01, LONGEST_D);
        let enclosure = self
            .state
            .heap(from)
            .and_then(|heap| heap.enclosure())
            .copied();
        let mut enclosure = match enclosure {
            Some(said) => self.enclosure(Some(&said)),
            None => Enclosure::open_box(1.0, 1.0, 1.0),
        };
        enclosure.cover = cover;
        let case = Case {
            enclosure,
            // A year's mean in the middle latitudes.
            weather: Weather::constant(WeatherHour::mild(10.0), 0.0),
            events: acts
                .into_iter()
                .filter(|(instant, _)| *instant >= start_ms)
                .map(|(instant, action)| Step {
                    day: days_between(start_ms, instant),
                    action,
                })
                .collect(),
            days,
            model: Model::Lumped,
        };
        let options = Options {
            every_h: 24.0,
            ..Options::default()
        };
        let run = heap::simulate(&case, &Parameters::default(), &options).ok()?;
        let charge = half_rotted(&run, share);
        is_sound(&charge).then_some(charge)
    }
}

/// What is left of a run, as something to be fed: what is rapid is known, and the rest lies between
/// leaves and finished compost, by how much is gone. Estimate.
fn half_rotted(run: &Run, share: f64) -> Charge {
    let left: Sums = run.left;
    let gone = (run.summary.volatile_solids_loss_pct / 100.0 / 0.6).clamp(0.0, 1.0);
    let (fresh, done) = (FeedClass::Leaves.shares(), FeedClass::Finished.shares());
    let volatile = (left.dry_kg - left.ash_kg).max(1e-9);
    let rapid = (left.rapid_kg / volatile).clamp(0.0, 0.6);
    let between = |one: f64, other: f64| one + (other - one) * gone;
    let moderate = between(fresh.moderate, done.moderate);
    let slow = between(fresh.slow, done.slow);
    let humus = between(fresh.humus, done.humus);
    let rest = (1.0 - rapid) / (moderate + slow + humus);
    let shares = PoolShares {
        rapid,
        moderate: moderate * rest,
        slow: slow * rest,
        humus: humus * rest,
        ..done
    };
    let mut charge = Charge::of_shares(
        &shares,
        left.dry_kg * share,
        left.ash_kg * share,
        (left.nitrogen_kg - left.ammonium_kg - left.nitrate_kg).max(0.0) * share,
        left.water_kg * share,
        &Parameters::default(),
    );
    charge.ammonium_kg = left.ammonium_kg * share;
    charge.nitrate_kg = left.nitrate_kg * share;
    charge.potassium_kg = left.potassium_kg * share;
    charge.phosphorus_kg = left.phosphorus_kg * share;
    charge.calcium_kg = left.calcium_kg * share;
    charge.magnesium_kg = left.magnesium_kg * share;
    charge.bases_mol = (left.bases_mol - left.potassium_kg / POTASSIUM_KG_PER_MOL).max(0.0) * share;
    charge.volume_m3 = left.volume_m3 * share;
    charge
}

/// Molar mass of potassium [kg/mol].
const POTASSIUM_KG_PER_MOL: f64 = 0.0391;
