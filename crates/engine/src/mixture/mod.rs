//! What is this mixture? Masses, C:N, moisture, density, air, nutrients, each with its range.
//!
//! In: parts (ingredients with the ranges of their figures, and amounts), added
//! water, a seed. Out: every figure at the typical values, with an 80 %
//! interval over draws of all ranges, and the chance that the mixture lies in a
//! target region.
//!
//! Everything adds up by mass: water, dry matter, carbon, nitrogen and ash of
//! the parts are summed and only then divided, so that a C:N is a ratio of
//! masses and never a mean of ratios. Volumes add as measured: a mixture that
//! has just been tipped out, before it settles.
//!
//! Limits: no chemistry and no time. What becomes of the mixture is the work of
//! other modules.

mod draws;
mod totals;

use heapwright_numerics::{outer_deciles, share};
use heapwright_quantity::Interval;
use heapwright_terms::{Part, Target};

pub use draws::{DRAWS, UnitDraws};
pub use totals::Totals;
pub(crate) use totals::{
    CALCIUM, MAGNESIUM, PHOSPHORUS, POTASSIUM, count, filled_volume_m3, free_air_space, order,
};

/// A nutrient of the mixture, as far as it is known.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Nutrient {
    /// Mass of the element in the parts for which it is known [kg]; `None` when
    /// it is known for none.
    pub mass_kg: Option<Interval>,
    /// Share of the dry matter for which it is known, 0 to 1.
    pub known_share_of_dry_matter: f64,
}

/// How likely the mixture lies in the target region: shares of the draws, 0 to 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Chance {
    /// All limits at once that can be judged.
    pub all: f64,
    /// Within the C:N limits.
    pub carbon_to_nitrogen: f64,
    /// Within the moisture limits.
    pub moisture: f64,
    /// Within the limits of free air space; `None` when the volume is not known.
    pub free_air_space: Option<f64>,
}

/// Everything computed about a mixture.
#[derive(Clone, Debug, PartialEq)]
pub struct Mixture {
    /// Mass as it lies, added water included [kg].
    pub wet_mass_kg: Interval,
    /// Dry matter [kg].
    pub dry_mass_kg: Interval,
    /// Water, added water included [kg].
    pub water_kg: Interval,
    /// Volume before settling [m3]; `None` when the density of a weighed part is not known.
    pub volume_m3: Option<Interval>,
    /// Carbon that counts, handbook scale [kg].
    pub carbon_kg: Interval,
    /// Nitrogen [kg].
    pub nitrogen_kg: Interval,
    /// Carbon to nitrogen, ratio of masses on dry matter, handbook scale; `None`
    /// when there is no nitrogen.
    pub carbon_to_nitrogen: Option<Interval>,
    /// The same on measured (elemental) carbon.
    pub carbon_to_nitrogen_measured: Option<Interval>,
    /// Moisture, wet basis [kg/kg].
    pub moisture_wet_basis: Interval,
    /// Bulk density, wet [kg/m3].
    pub bulk_density_kg_m3: Option<Interval>,
    /// Free air space [m3/m3], 0 to 1; 0 when the figures leave no room for air.
    pub free_air_space: Option<Interval>,
    /// Biodegradable share of dry matter [kg/kg].
    pub biodegradable_dry_basis: Interval,
    /// Phosphorus, the element.
    pub phosphorus: Nutrient,
    /// Potassium, the element.
    pub potassium: Nutrient,
    /// Calcium, the element.
    pub calcium: Nutrient,
    /// Magnesium, the element.
    pub magnesium: Nutrient,
    /// Sodium, the element.
    pub sodium: Nutrient,
    /// Chance to lie in the target region.
    pub chance: Chance,
}

/// The figures of a mixture.
///
/// - `parts`: at least one, with at least one amount above 0
/// - `water_kg`: water added from a can [kg], 0 or more
/// - `target`: the region for [`Mixture::chance`]
/// - `seed`: the draws depend on it, and on nothing else that could vary
///
/// Returns `None` when there is nothing in it (no mass at all). The order of
/// `parts` has no effect, to the last bit.
///
/// Source: mass balance; Cornell composting-science pages (`CORNELL-MOISTURE`)
/// for the weighting by mass. Checks: A1 to A6, B1 to B10.
#[must_use]
pub fn mixture(parts: &[Part], water_kg: f64, target: &Target, seed: u64) -> Option<Mixture> {
    let mut ordered: Vec<&Part> = parts.iter().collect();
    ordered.sort_by(|a, b| totals::order(a, b));
    let units: Vec<UnitDraws> = ordered
        .iter()
        .map(|part| UnitDraws::new(part, seed, DRAWS))
        .collect();
    let counted: Vec<(&UnitDraws, f64)> = ordered
        .iter()
        .zip(&units)
        .map(|(part, unit)| (unit, totals::count(&part.amount)))
        .collect();
    from_draws(&counted, water_kg, target)
}

/// Where the mixture may lie: C:N and moisture (wet basis) of `len` draws.
///
/// Draws without nitrogen have no C:N and are left out.
#[must_use]
pub fn cloud(parts: &[Part], water_kg: f64, seed: u64, len: usize) -> Vec<(f64, f64)> {
    let units: Vec<UnitDraws> = parts
        .iter()
        .map(|part| UnitDraws::new(part, seed, len))
        .collect();
    let counted: Vec<(&UnitDraws, f64)> = units
        .iter()
        .zip(parts)
        .map(|(unit, part)| (unit, totals::count(&part.amount)))
        .collect();
    let sums = draws::Sums::new(&counted, water_kg);
    (0..sums.len())
        .map(|index| sums.at(index))
        .filter(|at| at.nitrogen_kg() > 0.0 && at.wet_mass_kg() > 0.0)
        .map(|at| (at.carbon_kg() / at.nitrogen_kg(), at.moisture_wet_basis()))
        .collect()
}

/// The figures of a mixture at the typical values of all that goes in, without
/// intervals: what [`mixture`] gives as `value`, in under a microsecond a part.
#[must_use]
pub fn typical_totals(parts: &[Part], water_kg: f64) -> Totals {
    let mut totals = Totals::default();
    for part in parts {
        totals.add(&Totals::of_unit(part), totals::count(&part.amount));
    }
    totals.add_water(water_kg);
    totals
}

/// The figures of so many units of each, from draws that were made before.
pub(crate) fn from_draws(
    counted: &[(&UnitDraws, f64)],
    water_kg: f64,
    target: &Target,
) -> Option<Mixture> {
    let mut typical = Totals::default();
    for (unit, count) in counted {
        typical.add(&unit.typical, *count);
    }
    typical.add_water(water_kg);
    if typical.wet_mass_kg <= 0.0 || !typical.wet_mass_kg.is_finite() {
        return None;
    }
    let sums = draws::Sums::new(counted, water_kg);
    let has_volume = typical.volume_m3.is_some();
    let has_nitrogen = typical.nitrogen_kg > 0.0;
    let nutrient = |index: usize| Nutrient {
        mass_kg: typical.minerals[index].map(|value| interval(value, sums.minerals[index].clone())),
        known_share_of_dry_matter: typical.known_share(index),
    };
    Some(Mixture {
        wet_mass_kg: interval(typical.wet_mass_kg, sums.wet_mass_kg.clone()),
        dry_mass_kg: interval(typical.dry_mass_kg, sums.dry_mass_kg.clone()),
        water_kg: interval(typical.water_kg(), sums.map(|at| at.water_kg())),
        volume_m3: typical
            .volume_m3
            .map(|value| interval(value, sums.volume_m3.clone())),
        carbon_kg: interval(typical.carbon_kg, sums.carbon_kg.clone()),
        nitrogen_kg: interval(typical.nitrogen_kg, sums.nitrogen_kg.clone()),
        carbon_to_nitrogen: has_nitrogen.then(|| {
            interval(
                typical.carbon_kg / typical.nitrogen_kg,
                sums.map(|at| at.carbon_kg() / at.nitrogen_kg()),
            )
        }),
        carbon_to_nitrogen_measured: has_nitrogen.then(|| {
            interval(
                typical.carbon_measured_kg / typical.nitrogen_kg,
                sums.map(|at| at.carbon_measured_kg() / at.nitrogen_kg()),
            )
        }),
        moisture_wet_basis: interval(
            typical.moisture_wet_basis(),
            sums.map(|at| at.moisture_wet_basis()),
        ),
        bulk_density_kg_m3: typical.volume_m3.map(|volume| {
            interval(
                typical.wet_mass_kg / volume,
                sums.map(|at| at.wet_mass_kg() / at.volume_m3()),
            )
        }),
        free_air_space: typical
            .free_air_space()
            .map(|value| interval(value, sums.map(|at| at.free_air_space()))),
        biodegradable_dry_basis: interval(
            typical.biodegradable_kg / typical.dry_mass_kg,
            sums.map(|at| at.biodegradable_kg() / at.dry_mass_kg()),
        ),
        phosphorus: nutrient(totals::PHOSPHORUS),
        potassium: nutrient(totals::POTASSIUM),
        calcium: nutrient(totals::CALCIUM),
        magnesium: nutrient(totals::MAGNESIUM),
        sodium: nutrient(totals::SODIUM),
        chance: chance(&sums, has_volume, target),
    })
}

/// The value with the deciles of its draws, widened where needed to hold the value.
///
/// The value is the mixture of typical figures, which need not be the median of
/// the draws when several ranges lean to one side.
pub(crate) fn interval(value: f64, mut draws: Vec<f64>) -> Interval {
    match outer_deciles(&mut draws) {
        Some((low, high)) => Interval {
            value,
            low: low.min(value),
            high: high.max(value),
        },
        None => Interval::exact(value),
    }
}

fn chance(sums: &draws::Sums, has_volume: bool, target: &Target) -> Chance {
    let (mut all, mut carbon_to_nitrogen, mut moisture, mut air) = (0, 0, 0, 0);
    for index in 0..sums.len() {
        let at = sums.at(index);
        let nitrogen_fits = carbon_to_nitrogen_fits(at.carbon_kg(), at.nitrogen_kg(), target);
        let moisture_fits = within(
            at.moisture_wet_basis(),
            target.moisture_wet_basis_low,
            target.moisture_wet_basis_high,
        );
        let air_fits = !has_volume
            || within(
                at.free_air_space(),
                target.free_air_space_low,
                target.free_air_space_high,
            );
        carbon_to_nitrogen += usize::from(nitrogen_fits);
        moisture += usize::from(moisture_fits);
        air += usize::from(air_fits);
        all += usize::from(nitrogen_fits && moisture_fits && air_fits);
    }
    let of_all = |count| share(count, sums.len());
    Chance {
        all: of_all(all),
        carbon_to_nitrogen: of_all(carbon_to_nitrogen),
        moisture: of_all(moisture),
        free_air_space: has_volume.then(|| of_all(air)),
    }
}

/// A mixture at the very edge of the region counts as inside: this share of a
/// limit is the tolerance to which the recipe solver meets its rows, not a miss.
const EDGE: f64 = 1e-6;

pub(crate) fn within(value: f64, low: f64, high: f64) -> bool {
    value >= low - EDGE * low.abs() && value <= high + EDGE * high.abs()
}

pub(crate) fn carbon_to_nitrogen_fits(carbon_kg: f64, nitrogen_kg: f64, target: &Target) -> bool {
    nitrogen_kg > 0.0
        && within(
            carbon_kg / nitrogen_kg,
            target.carbon_to_nitrogen_low,
            target.carbon_to_nitrogen_high,
        )
}
