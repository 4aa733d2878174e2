//! Which limit cannot be met, by how much, and what is the nearest that can be had?

use heapwright_terms::Target;

use super::limits::{self, Costs, Point, Reached, Variant};
use super::{Model, Objective};
use crate::mixture::{Totals, within};

/// One limit of the target region.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Limit {
    /// Lowest C:N.
    CarbonToNitrogenLow,
    /// Highest C:N.
    CarbonToNitrogenHigh,
    /// Lowest moisture.
    MoistureLow,
    /// Highest moisture.
    MoistureHigh,
    /// Lowest free air space.
    FreeAirSpaceLow,
    /// Highest free air space.
    FreeAirSpaceHigh,
}

impl Limit {
    /// All limits, in the order in which they are spoken of.
    pub const ALL: [Self; 6] = [
        Self::CarbonToNitrogenLow,
        Self::CarbonToNitrogenHigh,
        Self::MoistureLow,
        Self::MoistureHigh,
        Self::FreeAirSpaceLow,
        Self::FreeAirSpaceHigh,
    ];
}

/// A limit that the nearest mixture misses.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Miss {
    /// Which one.
    pub limit: Limit,
    /// What was asked, in the unit of the figure (ratio or fraction).
    pub asked: f64,
    /// What the nearest mixture has; `None` for a C:N without nitrogen.
    pub reached: Option<f64>,
}

impl Miss {
    /// How far the nearest mixture lies beyond the limit, 0 or more.
    #[must_use]
    pub fn short_by(&self) -> Option<f64> {
        self.reached.map(|reached| (reached - self.asked).abs())
    }
}

/// What stands in the way of the target region.
#[derive(Clone, Debug, PartialEq)]
pub struct Conflict {
    /// The limits that the nearest mixture misses, at least one.
    pub misses: Vec<Miss>,
    /// The limits each of which, dropped alone, would let all others be met.
    pub any_one_dropped_would_do: Vec<Limit>,
    /// True when the region could be reached if units could be divided.
    pub parts_of_units_would_do: bool,
}

/// How far limits are let out at most: C:N limits by a factor of 65.
const MOST_SLACK: f64 = 64.0;

/// Halvings of the slack between what fails and what does: a part in four million.
const HALVINGS: usize = 22;
/// The same where each try is a search over whole units.
const HALVINGS_WHOLE: usize = 10;

/// The nearest mixture and what it misses.
pub(super) fn nearest(model: &Model<'_>) -> (Point, Conflict) {
    let target = &model.question.target;
    let nothing = Point {
        units: vec![0.0; model.units.len()],
        water_kg: 0.0,
        proven: true,
    };
    let Some(costs) = Costs::of(model, Objective::LeastMass) else {
        unreachable!("every mixture has a mass")
    };
    let reach = |slack: f64, variant: Variant| match limits::cheapest(
        model,
        &limits::let_out(target, slack),
        &costs,
        variant,
    ) {
        Reached::Yes(point) => Some(point),
        Reached::No | Reached::Unknown => None,
    };
    let any_whole =
        model.question.water.step_kg > 0.0 || model.question.reach.iter().any(|reach| reach.whole);
    let whole = Variant::default();
    // A mixture without nitrogen has no C:N: then the other limits alone decide.
    let variant = if reach(MOST_SLACK, whole).is_some() {
        whole
    } else {
        Variant {
            dropped: Some(Limit::CarbonToNitrogenHigh),
            ..whole
        }
    };
    let mut best = reach(MOST_SLACK, variant);
    if best.is_some() {
        let (mut fails, mut does) = (0.0, MOST_SLACK);
        let halvings = if any_whole { HALVINGS_WHOLE } else { HALVINGS };
        for _ in 0..halvings {
            // The geometric mean while the two are far apart finds the size first.
            let middle = if fails > 0.0 {
                f64::midpoint(fails, does)
            } else {
                does / 4.0
            };
            match reach(middle, variant) {
                Some(point) => {
                    does = middle;
                    best = Some(point);
                }
                None => fails = middle,
            }
        }
    }
    let point = best.unwrap_or(nothing);
    let misses = misses(&model.totals(&point.units, point.water_kg), target);
    let any_one_dropped_would_do = Limit::ALL
        .into_iter()
        .filter(|limit| {
            let variant = Variant {
                dropped: Some(*limit),
                ..Variant::default()
            };
            reach(0.0, variant).is_some()
        })
        .collect();
    let parts_of_units_would_do = any_whole
        && reach(
            0.0,
            Variant {
                parts_allowed: true,
                ..Variant::default()
            },
        )
        .is_some();
    let conflict = Conflict {
        misses,
        any_one_dropped_would_do,
        parts_of_units_would_do,
    };
    (point, conflict)
}

/// The limits that a mixture misses at typical values.
pub(super) fn misses(totals: &Totals, target: &Target) -> Vec<Miss> {
    let ratio = (totals.nitrogen_kg > 0.0).then(|| totals.carbon_kg / totals.nitrogen_kg);
    let moisture = Some(totals.moisture_wet_basis()).filter(|moisture| moisture.is_finite());
    let air = totals.free_air_space();
    let judged = [
        (
            Limit::CarbonToNitrogenLow,
            target.carbon_to_nitrogen_low,
            ratio,
            false,
        ),
        (
            Limit::CarbonToNitrogenHigh,
            target.carbon_to_nitrogen_high,
            ratio,
            true,
        ),
        (
            Limit::MoistureLow,
            target.moisture_wet_basis_low,
            moisture,
            false,
        ),
        (
            Limit::MoistureHigh,
            target.moisture_wet_basis_high,
            moisture,
            true,
        ),
        (
            Limit::FreeAirSpaceLow,
            target.free_air_space_low,
            air,
            false,
        ),
        (
            Limit::FreeAirSpaceHigh,
            target.free_air_space_high,
            air,
            true,
        ),
    ];
    judged
        .into_iter()
        .filter(|(limit, asked, reached, is_upper)| match reached {
            Some(value) if *is_upper => !within(*value, f64::NEG_INFINITY, *asked),
            Some(value) => !within(*value, *asked, f64::INFINITY),
            // Without nitrogen the C:N is beyond any upper limit; air that is
            // not known is not judged.
            None => *limit == Limit::CarbonToNitrogenHigh,
        })
        .map(|(limit, asked, reached, _)| Miss {
            limit,
            asked,
            reached,
        })
        .collect()
}
