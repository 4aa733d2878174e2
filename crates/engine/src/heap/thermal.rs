//! What depends on temperature alone, tabled once and looked up.
//!
//! Cubic between knots a quarter of a degree apart, from exact values and slopes by
//! differences: within 2e-5 of the exact forms wherever those are smooth, at a tenth of
//! their cost, and the same on every platform.

use std::cell::OnceCell;

use super::air;
use super::parameters::{NITRIFIERS, Parameters};
use super::responses::{logistic, methane_by_moisture, moisture_factor};

const FIRST_C: f64 = -60.0;
const KNOTS_PER_DEGREE: f64 = 4.0;
const KNOTS: usize = 4 * 180 + 1;
/// Number of functions.
pub(crate) const COLUMNS: usize = 11;

/// Columns of the table.
pub(crate) const SATURATION: usize = 0;
pub(crate) const MESOPHILES: usize = 1;
pub(crate) const THERMOPHILES: usize = 2;
pub(crate) const DYING_MESOPHILES: usize = 3;
pub(crate) const DYING_THERMOPHILES: usize = 4;
pub(crate) const NITRIFICATION: usize = 5;
pub(crate) const DENITRIFICATION: usize = 6;
pub(crate) const DIFFUSION: usize = 7;
/// Dissociation constant of ammonium times 1e9.
pub(crate) const AMMONIUM: usize = 8;
pub(crate) const AMMONIA_GAS: usize = 9;
/// Bicarbonate product times 1e8.
pub(crate) const BICARBONATE: usize = 10;

/// pH at which half of the activity is left (estimate after Sundberg 2005, "Improving
/// compost process efficiency by controlling aeration, temperature and pH": acid below
/// pH 6 and above 40 degrees inhibits).
pub(crate) fn half_activity_ph(temperature_c: f64) -> f64 {
    5.0 + logistic(temperature_c, 40.0, 2.0)
}

/// One knot: value and slope of each column, and of 10^(1.2 (pH50 - 5)).
#[derive(Clone, Copy, Debug)]
struct Knot {
    columns: [[f64; 2]; COLUMNS],
    half_acid: [f64; 2],
}

/// The table. Knots are computed when first asked for: a heap sees a third of them.
#[derive(Clone, Debug)]
pub(crate) struct Thermal {
    parameters: Parameters,
    knots: Vec<OnceCell<Knot>>,
    /// Moisture factor and methane share by moisture.
    by_moisture: Vec<[[f64; 2]; 2]>,
}

impl Thermal {
    pub(crate) fn new(parameters: &Parameters) -> Self {
        Self {
            parameters: parameters.clone(),
            knots: vec![OnceCell::new(); KNOTS],
            by_moisture: moisture_table(),
        }
    }

    #[inline]
    fn knot(&self, place: usize) -> &Knot {
        self.knots[place].get_or_init(|| self.made(place))
    }

    #[cold]
    #[allow(clippy::cast_precision_loss)] // hundreds
    fn made(&self, place: usize) -> Knot {
        const SIDE_K: f64 = 1e-3;
        let t = FIRST_C + place as f64 / KNOTS_PER_DEGREE;
        let per_knot = 1.0 / (2.0 * SIDE_K) / KNOTS_PER_DEGREE;
        let (low, value, high) = (
            exact(t - SIDE_K, &self.parameters),
            exact(t, &self.parameters),
            exact(t + SIDE_K, &self.parameters),
        );
        let acid = |t: f64| libm::exp10(1.2 * (half_activity_ph(t) - 5.0));
        Knot {
            columns: std::array::from_fn(|column| {
                [value[column], (high[column] - low[column]) * per_knot]
            }),
            half_acid: [acid(t), (acid(t + SIDE_K) - acid(t - SIDE_K)) * per_knot],
        }
    }

    /// All columns at a temperature, held within the table, and 10^(1.2 (pH50 - 5)).
    #[inline]
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // held within the table
    pub(crate) fn at(&self, temperature_c: f64, out: &mut [f64; COLUMNS]) -> f64 {
        let place = ((temperature_c - FIRST_C) * KNOTS_PER_DEGREE).clamp(0.0, 719.999_9);
        let knot = place as usize;
        #[allow(clippy::cast_precision_loss)]
        let x = place - knot as f64;
        let weights = [
            1.0 - x * x * (3.0 - 2.0 * x),
            x * (1.0 - x) * (1.0 - x),
            x * x * (3.0 - 2.0 * x),
            x * x * (x - 1.0),
        ];
        let (low, high) = (self.knot(knot), self.knot(knot + 1));
        for (out, (low, high)) in out.iter_mut().zip(low.columns.iter().zip(&high.columns)) {
            // The cubic swings a little below nothing where an activity begins.
            *out = weighed(*low, *high, weights).max(0.0);
        }
        weighed(low.half_acid, high.half_acid, weights)
    }

    /// Moisture factor and methane share at a moisture.
    #[inline]
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // held within the table
    pub(crate) fn by_moisture(&self, moisture: f64) -> [f64; 2] {
        let place = (moisture * MOISTURE_KNOTS).clamp(0.0, MOISTURE_KNOTS - 1e-9);
        let knot = place as usize;
        #[allow(clippy::cast_precision_loss)]
        let x = place - knot as f64;
        let weights = [
            1.0 - x * x * (3.0 - 2.0 * x),
            x * (1.0 - x) * (1.0 - x),
            x * x * (3.0 - 2.0 * x),
            x * x * (x - 1.0),
        ];
        let (low, high) = (&self.by_moisture[knot], &self.by_moisture[knot + 1]);
        [
            weighed(low[0], high[0], weights),
            weighed(low[1], high[1], weights),
        ]
    }

    /// Saturation pressure alone [Pa].
    #[inline]
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // held within the table
    pub(crate) fn saturation(&self, temperature_c: f64) -> f64 {
        let place = ((temperature_c - FIRST_C) * KNOTS_PER_DEGREE).clamp(0.0, 719.999_9);
        let knot = place as usize;
        #[allow(clippy::cast_precision_loss)]
        let x = place - knot as f64;
        let weights = [
            1.0 - x * x * (3.0 - 2.0 * x),
            x * (1.0 - x) * (1.0 - x),
            x * x * (3.0 - 2.0 * x),
            x * x * (x - 1.0),
        ];
        weighed(
            self.knot(knot).columns[SATURATION],
            self.knot(knot + 1).columns[SATURATION],
            weights,
        )
    }
}

#[inline]
fn weighed(low: [f64; 2], high: [f64; 2], weights: [f64; 4]) -> f64 {
    low[0] * weights[0] + low[1] * weights[1] + high[0] * weights[2] + high[1] * weights[3]
}

/// Knots of the moisture table less one.
const MOISTURE_KNOTS: f64 = 200.0;

fn moisture_table() -> Vec<[[f64; 2]; 2]> {
    (0..=200)
        .map(|knot| {
            let moisture = f64::from(knot) / MOISTURE_KNOTS;
            let (factor, methane) = (moisture_factor(moisture), methane_by_moisture(moisture));
            [
                [factor, 17.684 * factor * (1.0 - factor) / MOISTURE_KNOTS],
                [
                    methane,
                    methane * std::f64::consts::LN_10 / 0.073 / MOISTURE_KNOTS,
                ],
            ]
        })
        .collect()
}

fn exact(t: f64, parameters: &Parameters) -> [f64; COLUMNS] {
    let dying = |activity: f64, death_c: f64, width: f64| {
        parameters.least_decay_of_cells_per_d
            + parameters.decay_of_cells_per_d * activity
            + parameters.heat_death_per_d * logistic(t, death_c, width)
    };
    let mesophiles = parameters.mesophiles.activity(t);
    let thermophiles = parameters.thermophiles.activity(t);
    [
        air::saturation_pressure_pa(t),
        parameters.mesophile_activity * mesophiles,
        thermophiles,
        dying(mesophiles, parameters.mesophile_death_c, 1.5),
        dying(thermophiles, parameters.thermophile_death_c, 1.0),
        NITRIFIERS.activity(t),
        libm::exp((t - 20.0) * 0.067_658_648_5).min(8.0), // 1.07 per degree
        air::diffusion_factor(t),
        libm::exp10(9.0 - air::ammonium_pk(t)),
        air::ammonia_gas_over_water(t),
        1e8 * air::bicarbonate_product(t),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_moisture_table_is_as_good_as_its_laws() {
        let table = Thermal::new(&Parameters::default());
        for step in 0..=1000 {
            let moisture = f64::from(step) / 1000.0;
            let [factor, methane] = table.by_moisture(moisture);
            assert!((factor / moisture_factor(moisture) - 1.0).abs() < 1e-6);
            assert!((methane / methane_by_moisture(moisture) - 1.0).abs() < 1e-5);
        }
    }

    #[test]
    fn the_table_is_as_good_as_the_forms_behind_it() {
        let parameters = Parameters::default();
        let table = Thermal::new(&parameters);
        let mut found = [0.0; COLUMNS];
        let mut t = -30.0;
        while t < 90.0 {
            table.at(t, &mut found);
            let wanted = exact(t, &parameters);
            // Kinks: cardinal temperatures, and the cap of denitrification near 50.7.
            let kinks = [0.0, 49.0, 22.0, 72.0, 2.0, 45.0, 50.7];
            let smooth = kinks.iter().all(|kink| (t - kink).abs() > 0.5);
            for column in 0..COLUMNS {
                let error = (found[column] - wanted[column]).abs();
                let size = wanted[column].abs();
                let allowed = if smooth {
                    2e-5 * size.max(1e-2)
                } else {
                    5e-3 * size.max(1.0)
                };
                assert!(error <= allowed, "column {column} at {t}: {error}");
            }
            t += 0.137;
        }
    }
}
