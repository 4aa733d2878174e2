//! How much salt does a crop bear, and how much compost is that?
//!
//! Yield against the conductivity of the saturation extract of the root zone is full up to a
//! threshold and falls straight behind it. Compost worked into soil raises the conductivity in
//! proportion to its share; rain that leaches it is left out, so that the limit is a cautious one.
//!
//! Source: `MAAS90`.
//! Checks: US-21 to US-24.

use heapwright_terms::SaltTolerance;

use super::cover::share_when_worked_in;

/// Share of the full yield at a conductivity of the root zone [dS/m].
#[must_use]
pub fn yield_share(tolerance: SaltTolerance, root_zone_ds_m: f64) -> f64 {
    let above = (root_zone_ds_m - tolerance.threshold_ds_m).max(0.0);
    (1.0 - above * tolerance.loss_per_ds_m).max(0.0)
}

/// Conductivity at which so much of the yield is lost [dS/m].
#[must_use]
pub fn conductivity_at_loss_ds_m(tolerance: SaltTolerance, lost_share: f64) -> f64 {
    tolerance.threshold_ds_m + lost_share / tolerance.loss_per_ds_m
}

/// Conductivity of the root zone once so much compost is worked into `dug_m` of soil [dS/m].
#[must_use]
pub fn root_zone_ds_m(soil_ds_m: f64, compost_ds_m: f64, depth_m: f64, dug_m: f64) -> f64 {
    let share = share_when_worked_in(depth_m, dug_m);
    soil_ds_m * (1.0 - share) + compost_ds_m * share
}

/// The deepest layer that keeps the root zone at or below a threshold [m]; infinite where compost
/// is no saltier than that, 0 where the soil alone is at it.
#[must_use]
pub fn most_depth_m(soil_ds_m: f64, compost_ds_m: f64, threshold_ds_m: f64, dug_m: f64) -> f64 {
    if compost_ds_m <= threshold_ds_m {
        return f64::INFINITY;
    }
    dug_m * (threshold_ds_m - soil_ds_m).max(0.0) / (compost_ds_m - threshold_ds_m)
}
