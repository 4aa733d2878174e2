//! What was measured here, and how much does it narrow a figure?
//!
//! The catalogue's range is what is found anywhere; one garden's own stuff
//! varies less. A measurement moves the typical value towards itself and narrows
//! the range, by the weights of a normal prior and normal observations.

use heapwright_quantity::Range;
use heapwright_terms::{Evidence, Material, MaterialId};

/// One measurement of a material.
#[derive(Clone, Debug, PartialEq)]
pub struct Observation {
    /// Of which material.
    pub material: MaterialId,
    /// What was measured.
    pub observed: Observed,
}

/// What was measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Observed {
    /// A laboratory's moisture, wet basis [kg/kg].
    MoistureWetBasis(f64),
    /// A laboratory's nitrogen, share of dry matter [kg/kg].
    NitrogenDryBasis(f64),
    /// A laboratory's C:N from measured (elemental) carbon.
    CarbonToNitrogenMeasured(f64),
    /// A sample weighed wet, dried and weighed again [kg]: moisture.
    DriedSample {
        /// Sample as found, dish not counted [kg].
        wet_kg: f64,
        /// Sample dry, dish not counted [kg].
        dry_kg: f64,
    },
    /// A vessel weighed empty and full [kg], of known volume [m3]: bulk density.
    WeighedMeasure {
        /// Vessel and filling [kg].
        full_kg: f64,
        /// Vessel alone [kg].
        empty_kg: f64,
        /// What it holds [m3].
        volume_m3: f64,
    },
}

impl Observed {
    /// True when the numbers can be what they say.
    #[must_use]
    pub fn is_possible(&self) -> bool {
        match *self {
            Self::MoistureWetBasis(share) => (0.0..1.0).contains(&share),
            Self::NitrogenDryBasis(share) => (0.0..=0.5).contains(&share),
            Self::CarbonToNitrogenMeasured(ratio) => ratio > 0.0 && ratio.is_finite(),
            Self::DriedSample { wet_kg, dry_kg } => {
                wet_kg.is_finite() && dry_kg > 0.0 && dry_kg <= wet_kg
            }
            Self::WeighedMeasure {
                full_kg,
                empty_kg,
                volume_m3,
            } => full_kg.is_finite() && empty_kg >= 0.0 && full_kg > empty_kg && volume_m3 > 0.0,
        }
    }
}

/// Moisture of a sample, wet basis: the water lost over the mass before drying.
///
/// Source: `CORNELL-MOISTURE`. Checks: A1.
#[must_use]
pub fn moisture_of_sample(wet_kg: f64, dry_kg: f64) -> f64 {
    (wet_kg - dry_kg) / wet_kg
}

/// Bulk density of a filling [kg/m3]: net mass over volume.
///
/// Source: `COOPERBAND02`. Checks: D1.
#[must_use]
pub fn density_of_filling(full_kg: f64, empty_kg: f64, volume_m3: f64) -> f64 {
    (full_kg - empty_kg) / volume_m3
}

/// How widely one garden's stuff varies from batch to batch, as a share of how
/// widely it varies over all gardens: an estimate.
const WITHIN_ONE_GARDEN: f64 = 0.35;

/// Half a range, as a share of the measured value, where the catalogue has none: an estimate.
const WITHOUT_RANGE: f64 = 0.15;

/// The material with its ranges narrowed by what was measured of it.
pub(crate) fn narrowed(material: &Material, observations: &[Observation]) -> Material {
    let own: Vec<Observed> = observations
        .iter()
        .filter(|observation| {
            observation.material == material.id && observation.observed.is_possible()
        })
        .map(|observation| observation.observed)
        .collect();
    if own.is_empty() {
        return material.clone();
    }
    let values =
        |of: &dyn Fn(&Observed) -> Option<f64>| own.iter().filter_map(of).collect::<Vec<f64>>();
    let moisture = values(&|observed| match *observed {
        Observed::MoistureWetBasis(share) => Some(share),
        Observed::DriedSample { wet_kg, dry_kg } => Some(moisture_of_sample(wet_kg, dry_kg)),
        _ => None,
    });
    let nitrogen = values(&|observed| match *observed {
        Observed::NitrogenDryBasis(share) => Some(share),
        _ => None,
    });
    let ratio = values(&|observed| match *observed {
        Observed::CarbonToNitrogenMeasured(ratio) => Some(ratio),
        _ => None,
    });
    let density = values(&|observed| match *observed {
        Observed::WeighedMeasure {
            full_kg,
            empty_kg,
            volume_m3,
        } => Some(density_of_filling(full_kg, empty_kg, volume_m3)),
        _ => None,
    });
    let mut narrowed = Material {
        moisture_wet_basis: updated(material.moisture_wet_basis, &moisture, 0.0, 0.999),
        bulk_density_kg_m3: updated(material.bulk_density_kg_m3, &density, 5.0, 3000.0),
        evidence: Evidence::Measured,
        ..material.clone()
    };
    narrow_nitrogen(&mut narrowed, &nitrogen, &ratio);
    narrowed
}

/// Nitrogen and C:N move together: what is measured of one is measured of the
/// other at the material's carbon, unless both were measured.
fn narrow_nitrogen(material: &mut Material, nitrogen: &[f64], ratio: &[f64]) {
    let carbon = material.carbon_measured_dry_basis;
    let (nitrogen, ratio) = match (nitrogen.is_empty(), ratio.is_empty(), carbon) {
        (false, true, Some(carbon)) => (
            nitrogen.to_vec(),
            nitrogen
                .iter()
                .filter(|share| **share > 0.0)
                .map(|share| carbon / share)
                .collect(),
        ),
        (true, false, Some(carbon)) => (
            ratio.iter().map(|ratio| carbon / ratio).collect(),
            ratio.to_vec(),
        ),
        _ => (nitrogen.to_vec(), ratio.to_vec()),
    };
    material.nitrogen_dry_basis = updated(material.nitrogen_dry_basis, &nitrogen, 0.0, 0.5);
    material.carbon_to_nitrogen_measured =
        updated(material.carbon_to_nitrogen_measured, &ratio, 0.1, 10_000.0);
    if let (Some(nitrogen), Some(ratio)) = (
        material.nitrogen_dry_basis,
        material.carbon_to_nitrogen_measured,
    ) {
        material.carbon_measured_dry_basis = Some(nitrogen.typical * ratio.typical);
    }
}

/// The range after `values` were measured.
///
/// The range is a normal prior with its half-width `h` as scale; a measurement
/// has the scale `r h` of one garden's batches. The mean of n measurements then
/// weighs n / (n + r^2), and what the next batch may be has the scale
/// h sqrt(r^2 + r^2 / (n + r^2)).
fn updated(range: Option<Range>, values: &[f64], least: f64, most: f64) -> Option<Range> {
    if values.is_empty() {
        return range;
    }
    #[allow(clippy::cast_precision_loss)] // a keeper's measurements, not 2^52
    let count = values.len() as f64;
    let mean = values.iter().sum::<f64>() / count;
    let Some(range) = range.filter(|range| !range.is_exact()) else {
        return Range::new(
            mean * (1.0 - WITHOUT_RANGE),
            mean,
            mean * (1.0 + WITHOUT_RANGE),
        )
        .map(|range| range.clamped(least, most));
    };
    let r2 = WITHIN_ONE_GARDEN * WITHIN_ONE_GARDEN;
    let weight = count / (count + r2);
    let typical = range.typical + (mean - range.typical) * weight;
    let scale = (r2 + r2 / (count + r2)).sqrt();
    Range::new(
        typical - (range.typical - range.low) * scale,
        typical,
        typical + (range.high - range.typical) * scale,
    )
    .map(|range| range.clamped(least, most))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const PRIOR: Range = Range {
        low: 0.72,
        typical: 0.82,
        high: 0.86,
    };

    #[test]
    fn moisture_of_sample_meets_its_published_example() {
        // check A1: 10 g of grass, 2.3 g dry: 77 %.
        assert!((moisture_of_sample(0.010, 0.0063 - 0.004) - 0.77).abs() < 1e-12);
    }

    #[test]
    fn density_of_filling_meets_its_published_example() {
        // check D1: a 20 L bucket of 1 kg weighs 10 kg full: 0.45 kg/L.
        assert!((density_of_filling(10.0, 1.0, 0.020) - 450.0).abs() < 1e-9);
    }

    #[test]
    fn updated_moves_most_of_the_way_and_narrows() {
        let once = updated(Some(PRIOR), &[0.77], 0.0, 1.0).unwrap();
        assert!((once.typical - 0.7755).abs() < 1e-3, "{once:?}");
        assert!(once.high - once.low < 0.6 * (PRIOR.high - PRIOR.low));
    }

    proptest! {
        #[test]
        fn prop_updated_narrows_with_every_measurement(value in 0.6..0.9_f64, count in 1..20_usize) {
            let width = |count| {
                let range = updated(Some(PRIOR), &vec![value; count], 0.0, 1.0).unwrap();
                range.high - range.low
            };
            prop_assert!(width(count + 1) <= width(count) + 1e-12);
            prop_assert!(width(count) < PRIOR.high - PRIOR.low);
        }
    }
}
