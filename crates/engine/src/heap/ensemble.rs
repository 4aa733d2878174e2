//! How sure is it? Runs with parameters drawn from what is known, and bands over them.

use heapwright_numerics::{Stream, normal_quantile};

use super::case::{Case, Options, SimulationError};
use super::parameters::Parameters;
use super::run::{Run, simulate};
use super::snapshot::Snapshot;
use super::summary::Summary;

impl Parameters {
    /// One member of an ensemble: every weakly known parameter drawn around its default.
    ///
    /// Spreads of the logarithm, estimates: half of one for rates, more for what no one
    /// has measured, nearly none for the heat of oxygen. The draw belongs to seed, name
    /// and member alone; member 0 is the default itself.
    #[must_use]
    pub fn drawn(seed: u64, member: u32) -> Self {
        let mut drawn = Self::default();
        if member == 0 {
            return drawn;
        }
        let normal = |name: &str| {
            let share = Stream::new(seed, &format!("{name} {member}")).uniforms(1)[0];
            normal_quantile(share)
        };
        let vary = |name: &str, value: &mut f64, spread: f64| {
            *value *= libm::exp(spread * normal(name));
        };
        vary("rapid rate", &mut drawn.rapid_rate_per_d, 0.5);
        vary("moderate rate", &mut drawn.moderate_rate_per_d, 0.5);
        vary("slow rate", &mut drawn.slow_rate_per_d, 0.7);
        vary("half activity cells", &mut drawn.half_activity_cells, 0.7);
        vary("mesophile activity", &mut drawn.mesophile_activity, 0.3);
        vary("growth yield", &mut drawn.growth_yield, 0.25);
        vary("cells to humus", &mut drawn.cells_to_humus, 0.4);
        vary("half activity oxygen", &mut drawn.half_activity_oxygen, 0.7);
        vary("heat of oxygen", &mut drawn.heat_of_oxygen_mj_kg, 0.03);
        vary("conductivity", &mut drawn.conductivity_factor, 0.4);
        vary("surface", &mut drawn.surface_factor, 0.3);
        vary("grain", &mut drawn.grain_factor, 0.8);
        vary("wind", &mut drawn.wind_exchange_per_d, 0.8);
        vary("turning loss", &mut drawn.turning_heat_loss, 0.6);
        vary("settling by decay", &mut drawn.settling_by_decay, 0.4);
        vary("settling time", &mut drawn.settling_time_d, 0.5);
        vary("sorption", &mut drawn.ammonium_sorption, 0.6);
        vary("half growth nitrogen", &mut drawn.half_growth_nitrogen, 0.7);
        vary("nitrification", &mut drawn.nitrification_per_d, 0.7);
        vary("rapid share", &mut drawn.rapid_factor, 0.25);
        vary("water", &mut drawn.water_factor, 0.12);
        drawn.thermophiles.most_c += 2.0 * normal("thermophile limit").clamp(-2.5, 2.5);
        drawn.air_offset_k += 1.5 * normal("air offset");
        // Beyond these the equations lose their meaning.
        drawn.mesophile_activity = drawn.mesophile_activity.min(1.0);
        drawn.growth_yield = drawn.growth_yield.min(0.7);
        drawn.cells_to_humus = drawn.cells_to_humus.min(0.9);
        drawn.turning_heat_loss = drawn.turning_heat_loss.min(0.6);
        drawn
    }
}

/// Where the members of an ensemble lie.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Band {
    /// One in twenty lies below.
    pub low: f64,
    /// One in four lies below.
    pub lower: f64,
    /// Half lie below.
    pub median: f64,
    /// One in four lies above.
    pub upper: f64,
    /// One in twenty lies above.
    pub high: f64,
}

impl Band {
    /// The band of some values; zeros of none.
    #[must_use]
    pub fn of(values: &mut [f64]) -> Self {
        if values.is_empty() {
            return Self::default();
        }
        values.sort_by(f64::total_cmp);
        // Order statistics in 20ths, without interpolation.
        let last = values.len() - 1;
        let at = |twentieths: usize| values[(last * twentieths + 10) / 20];
        Self {
            low: at(1),
            lower: at(5),
            median: at(10),
            upper: at(15),
            high: at(19),
        }
    }
}

/// Bands over an ensemble of runs of one case.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Bands {
    /// Times of the rows [d].
    pub time_d: Vec<f64>,
    /// Core temperature at these times.
    pub core_temperature_c: Vec<Band>,
    /// Mean temperature at these times.
    pub mean_temperature_c: Vec<Band>,
    /// Moisture at these times.
    pub moisture: Vec<Band>,
    /// Volume at these times.
    pub volume_m3: Vec<Band>,
    /// Summaries of all members that could be computed, in order.
    pub summaries: Vec<Summary>,
    /// Members that could not.
    pub failed: u32,
}

/// Runs members `members` of the ensemble of `seed` and gives bands.
///
/// # Errors
///
/// When the case has no meaning. A single member that cannot go on is counted and left out.
pub fn bands(
    case: &Case,
    options: &Options,
    seed: u64,
    members: std::ops::Range<u32>,
) -> Result<Bands, SimulationError> {
    case.check(options, &Parameters::default())?;
    let mut runs: Vec<Run> = Vec::new();
    let mut failed = 0;
    for member in members {
        match simulate(case, &Parameters::drawn(seed, member), options) {
            Ok(run) => runs.push(run),
            Err(SimulationError::Stuck { .. }) => failed += 1,
            Err(error) => return Err(error),
        }
    }
    Ok(Bands::over(&runs, failed))
}

impl Bands {
    /// Bands over runs that were made elsewhere, for instance on several threads.
    #[must_use]
    pub fn over(runs: &[Run], failed: u32) -> Self {
        let rows = runs.iter().map(|run| run.series.len()).min().unwrap_or(0);
        let band = |row: usize, of: fn(&Snapshot) -> f64| {
            let mut values: Vec<f64> = runs.iter().map(|run| of(&run.series[row])).collect();
            Band::of(&mut values)
        };
        let along = |of: fn(&Snapshot) -> f64| (0..rows).map(|row| band(row, of)).collect();
        Self {
            time_d: runs
                .first()
                .map(|run| run.series[..rows].iter().map(|row| row.time_d).collect())
                .unwrap_or_default(),
            core_temperature_c: along(|row| row.core_temperature_c),
            mean_temperature_c: along(|row| row.mean_temperature_c),
            moisture: along(|row| row.moisture),
            volume_m3: along(|row| row.volume_m3),
            summaries: runs.iter().map(|run| run.summary).collect(),
            failed,
        }
    }

    /// The band of one figure of the summaries.
    #[must_use]
    pub fn of(&self, figure: fn(&Summary) -> f64) -> Band {
        let mut values: Vec<f64> = self.summaries.iter().map(figure).collect();
        Band::of(&mut values)
    }
}
