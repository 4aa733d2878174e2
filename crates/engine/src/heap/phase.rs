//! How warm is matter of a given enthalpy, and how much of its water is ice?
//!
//! Enthalpy counts from dry matter and liquid water at 0 degrees. Pore water freezes over
//! a span below zero, because it is salty and held in fine pores.

use super::air::{ICE_HEAT_MJ_KG_K, MELTING_HEAT_MJ_KG, WATER_HEAT_MJ_KG_K};
use super::parameters::{FREEZING_SHARE, FREEZING_SPAN_K, Parameters};

/// Temperature [degrees Celsius] of matter with an enthalpy [MJ].
#[inline]
pub(crate) fn temperature_c(
    enthalpy_mj: f64,
    dry_kg: f64,
    water_kg: f64,
    parameters: &Parameters,
) -> f64 {
    let solids = dry_kg * parameters.solids_heat_mj_kg_k;
    let thawed = solids + water_kg * WATER_HEAT_MJ_KG_K;
    if enthalpy_mj >= 0.0 {
        return enthalpy_mj / thawed;
    }
    let melting = FREEZING_SHARE * MELTING_HEAT_MJ_KG * water_kg;
    let frozen_at = -(thawed * FREEZING_SPAN_K + melting);
    if enthalpy_mj >= frozen_at {
        FREEZING_SPAN_K * enthalpy_mj / -frozen_at
    } else {
        let frozen = solids + water_kg * ICE_HEAT_MJ_KG_K;
        -FREEZING_SPAN_K + (enthalpy_mj - frozen_at) / frozen
    }
}

/// Enthalpy [MJ] of matter at a temperature.
pub(crate) fn enthalpy_mj(
    temperature_c: f64,
    dry_kg: f64,
    water_kg: f64,
    parameters: &Parameters,
) -> f64 {
    let solids = dry_kg * parameters.solids_heat_mj_kg_k;
    let thawed = solids + water_kg * WATER_HEAT_MJ_KG_K;
    if temperature_c >= 0.0 {
        return temperature_c * thawed;
    }
    let melting = FREEZING_SHARE * MELTING_HEAT_MJ_KG * water_kg;
    let frozen_at = -(thawed * FREEZING_SPAN_K + melting);
    if temperature_c >= -FREEZING_SPAN_K {
        -frozen_at * temperature_c / FREEZING_SPAN_K
    } else {
        let frozen = solids + water_kg * ICE_HEAT_MJ_KG_K;
        frozen_at + (temperature_c + FREEZING_SPAN_K) * frozen
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn temperature_and_enthalpy_are_each_others_inverse_through_the_ice() {
        let parameters = Parameters::default();
        for t in [-20.0, -1.5, -0.7, 0.0, 12.0, 70.0] {
            let enthalpy = enthalpy_mj(t, 100.0, 150.0, &parameters);
            let back = temperature_c(enthalpy, 100.0, 150.0, &parameters);
            assert!((back - t).abs() < 1e-12, "{t} {back}");
        }
        // Nine tenths of the water freeze between 0 and -1.5 degrees.
        let heat =
            enthalpy_mj(0.0, 0.0, 1.0, &parameters) - enthalpy_mj(-1.5, 0.0, 1.0, &parameters);
        assert!((heat - 0.9 * 0.334 - 1.5 * 4.186e-3).abs() < 1e-12);
    }
}
