//! How deep, how wide, how much? A layer on an area, and its mass.
//!
//! 1 mm on 1 m2 is 1 litre. Checks: US-05 to US-09, US-12, US-13; E2 to E13.

/// Volume of a layer [m3].
#[must_use]
pub fn volume_m3(area_m2: f64, depth_m: f64) -> f64 {
    area_m2 * depth_m
}

/// Depth of a volume on an area [m].
#[must_use]
pub fn depth_m(volume_m3: f64, area_m2: f64) -> f64 {
    volume_m3 / area_m2
}

/// Area that a volume covers so deep [m2].
#[must_use]
pub fn area_m2(volume_m3: f64, depth_m: f64) -> f64 {
    volume_m3 / depth_m
}

/// Depth of a yearly amount of dry matter [m], for compost of this bulk density and moisture.
#[must_use]
pub fn depth_of_dry_matter_m(
    dry_kg_m2: f64,
    bulk_density_kg_m3: f64,
    moisture_wet_basis: f64,
) -> f64 {
    dry_kg_m2 / (1.0 - moisture_wet_basis) / bulk_density_kg_m3
}

/// Dry matter that is left when organic matter goes and ash stays [kg].
///
/// `None` where the ash out is none, or less than the ash in.
#[must_use]
pub fn dry_matter_left_kg(dry_kg: f64, ash_before: f64, ash_after: f64) -> Option<f64> {
    (ash_before > 0.0 && ash_after >= ash_before && ash_after <= 1.0)
        .then(|| dry_kg * ash_before / ash_after)
}

/// Share of the compost in the layer that comes of it when a layer is worked into soil.
#[must_use]
pub fn share_when_worked_in(depth_m: f64, soil_depth_m: f64) -> f64 {
    depth_m / (depth_m + soil_depth_m)
}
