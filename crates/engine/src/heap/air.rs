//! Moist air, and what depends on temperature alone: exact forms.
//!
//! [`crate::heap::thermal`] tables them, because they are asked for millions of times.

/// Atmospheric pressure [Pa], sea level.
pub const PRESSURE_PA: f64 = 101_325.0;
/// Oxygen in outside air, mole fraction. Standard atmosphere.
pub const OUTSIDE_OXYGEN: f64 = 0.2095;
/// Oxygen in outside air, mass per mass of dry air over its mole fraction.
pub const OXYGEN_KG_PER_KG_AIR: f64 = 0.2315 / 0.2095;
/// Specific heat of dry air [MJ/(kg K)].
pub const AIR_HEAT_MJ_KG_K: f64 = 1.006e-3;
/// Enthalpy of vapour at 0 degrees over liquid water at 0 degrees [MJ/kg].
pub const VAPOUR_HEAT_AT_ZERO_MJ_KG: f64 = 2.501;
/// Specific heat of vapour [MJ/(kg K)].
pub const VAPOUR_HEAT_MJ_KG_K: f64 = 1.826e-3;
/// Specific heat of water [MJ/(kg K)].
pub const WATER_HEAT_MJ_KG_K: f64 = 4.186e-3;
/// Specific heat of ice [MJ/(kg K)].
pub const ICE_HEAT_MJ_KG_K: f64 = 2.1e-3;
/// Heat of melting [MJ/kg].
pub const MELTING_HEAT_MJ_KG: f64 = 0.334;
/// Zero Celsius [K].
pub const ZERO_CELSIUS_K: f64 = 273.15;

const GAS_CONSTANT: f64 = 8.314_46;
const AIR_KG_PER_MOL: f64 = 0.028_96;
const WATER_KG_PER_MOL: f64 = 0.018_015;

/// Saturation pressure over water [Pa]: Magnus form of Alduchov and Eskridge 1996,
/// "Improved Magnus form approximation of saturation vapor pressure".
#[must_use]
pub fn saturation_pressure_pa(temperature_c: f64) -> f64 {
    610.94 * libm::exp(17.625 * temperature_c / (temperature_c + 243.04))
}

/// Latent heat of evaporation [MJ/kg]; the vapour's enthalpy less the water's.
#[must_use]
pub fn latent_heat_mj_kg(temperature_c: f64) -> f64 {
    2.501 - 0.002_36 * temperature_c
}

/// Humidity ratio of air at a vapour pressure [kg/kg dry air].
///
/// Held at nine tenths of the pressure, so that boiling stays finite.
#[inline]
#[must_use]
pub fn humidity_ratio(vapour_pressure_pa: f64) -> f64 {
    let vapour = vapour_pressure_pa.min(0.9 * PRESSURE_PA);
    0.622 * vapour / (PRESSURE_PA - vapour)
}

/// Density of moist air [kg/m3], ideal gas.
#[inline]
#[must_use]
pub fn density_kg_m3(temperature_c: f64, vapour_pressure_pa: f64) -> f64 {
    let vapour = vapour_pressure_pa.min(0.9 * PRESSURE_PA);
    ((PRESSURE_PA - vapour) * AIR_KG_PER_MOL + vapour * WATER_KG_PER_MOL)
        / (GAS_CONSTANT * (temperature_c + ZERO_CELSIUS_K))
}

/// Viscosity of air [Pa s], straight line through the tabled 0 to 80 degrees.
#[inline]
#[must_use]
pub fn viscosity_pa_s(temperature_c: f64) -> f64 {
    1.716e-5 + 4.8e-8 * temperature_c
}

/// Growth of diffusion in air with temperature, 1 at 20 degrees: power 1.75 (Fuller,
/// Schettler and Giddings 1966).
#[must_use]
pub fn diffusion_factor(temperature_c: f64) -> f64 {
    libm::pow((temperature_c + ZERO_CELSIUS_K) / 293.0, 1.75)
}

/// pK of ammonium. Emerson, Russo, Lund and Thurston 1975, "Aqueous ammonia equilibrium
/// calculations" (from memory).
#[must_use]
pub fn ammonium_pk(temperature_c: f64) -> f64 {
    0.090_18 + 2729.92 / (temperature_c + ZERO_CELSIUS_K)
}

/// Ammonia in gas over ammonia in water, both per volume. Sander 2015, "Compilation of
/// Henry's law constants" (from memory).
#[must_use]
pub fn ammonia_gas_over_water(temperature_c: f64) -> f64 {
    6.0e-4 * libm::exp(4200.0 * (1.0 / 298.15 - 1.0 / (temperature_c + ZERO_CELSIUS_K)))
}

/// Bicarbonate times hydrogen ions for one atmosphere of carbon dioxide [mol2/L2]:
/// solubility 0.034 mol/(L atm) at 25 degrees (Sander 2015) and pK1 6.35 (from memory).
#[must_use]
pub fn bicarbonate_product(temperature_c: f64) -> f64 {
    let solubility =
        0.034 * libm::exp(2400.0 * (1.0 / (temperature_c + ZERO_CELSIUS_K) - 1.0 / 298.0));
    solubility * libm::exp10(-(6.35 - 0.005 * (temperature_c - 25.0)))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(value: f64, wanted: f64, relative: f64) {
        assert!(
            (value - wanted).abs() <= relative * wanted.abs(),
            "{value} should be {wanted}"
        );
    }

    #[test]
    fn saturation_pressure_meets_the_steam_tables() {
        // IAPWS-95 at 20, 40, 60, 70 degrees; the Magnus form claims half a per cent... to 60.
        for (t, wanted) in [(20.0, 2339.0), (40.0, 7385.0), (60.0, 19946.0)] {
            near(saturation_pressure_pa(t), wanted, 0.005);
        }
        near(saturation_pressure_pa(70.0), 31201.0, 0.01);
        for (t, wanted) in [(0.0, 0.611), (55.0, 15.80), (70.0, 31.45)] {
            near(saturation_pressure_pa(t) / 1000.0, wanted, 1e-3);
        }
    }

    #[test]
    fn humidity_ratio_meets_the_psychrometric_tables() {
        // ASHRAE formulas at 101,325 Pa.
        for (t, wanted) in [
            (10.0, 0.00763),
            (20.0, 0.01470),
            (40.0, 0.04888),
            (60.0, 0.15242),
        ] {
            near(humidity_ratio(saturation_pressure_pa(t)), wanted, 0.01);
        }
        assert!(humidity_ratio(saturation_pressure_pa(120.0)).is_finite());
    }

    #[test]
    fn latent_heat_is_that_of_the_steam_tables() {
        for (t, wanted) in [
            (20.0, 2.4535),
            (40.0, 2.4060),
            (60.0, 2.3577),
            (70.0, 2.3330),
        ] {
            near(latent_heat_mj_kg(t), wanted, 2e-3);
            let enthalpies =
                VAPOUR_HEAT_AT_ZERO_MJ_KG + (VAPOUR_HEAT_MJ_KG_K - WATER_HEAT_MJ_KG_K) * t;
            near(enthalpies, latent_heat_mj_kg(t), 1e-9);
        }
    }

    #[test]
    fn warm_moist_air_is_light() {
        // 60 degrees, saturated, in air of 15: 1.22 - 0.98 = 0.24 kg/m3.
        let outside = density_kg_m3(15.0, 0.7 * saturation_pressure_pa(15.0));
        let inside = density_kg_m3(60.0, saturation_pressure_pa(60.0));
        near(outside, 1.22, 0.005);
        near(inside, 0.98, 0.005);
    }

    #[test]
    fn ammonia_follows_emerson_and_sander() {
        for (t, pk) in [(10.0, 9.73), (25.0, 9.25), (40.0, 8.81), (55.0, 8.41)] {
            near(ammonium_pk(t), pk, 1e-3);
        }
        for (t, henry) in [(20.0, 4.7e-4), (40.0, 1.18e-3), (55.0, 2.17e-3)] {
            near(ammonia_gas_over_water(t), henry, 0.01);
        }
        // pH 8, 55 degrees: 28 % ammonia; 1 g TAN per litre stands under 0.61 g N per m3.
        let share = 1.0 / (1.0 + libm::exp10(ammonium_pk(55.0) - 8.0));
        near(share, 0.280, 2e-3);
        near(share * ammonia_gas_over_water(55.0) * 1000.0, 0.61, 0.01);
    }
}
