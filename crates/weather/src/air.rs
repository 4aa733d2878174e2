//! How much water does air hold? Saturation, dew point and relative humidity.

use libm::{exp, log};

/// Vapour pressure over water at 0 degC [Pa].
const AT_FREEZING_PA: f64 = 610.94;
/// The form's dimensionless slope.
const SLOPE: f64 = 17.625;
/// The form's temperature [degC].
const OFFSET_C: f64 = 243.04;
/// The driest air that is told apart; nearer to 0 the dew point leaves every table.
const DRIEST: f64 = 0.001;

/// Pressure of water vapour in saturated air [Pa], over water below freezing too.
///
/// The Magnus form, within 0.4 % from -40 to 50 degC.
/// Source: Alduchov and Eskridge 1996, Journal of Applied Meteorology 35, 601-609.
#[must_use]
pub fn saturation_vapour_pressure_pa(air_temperature_c: f64) -> f64 {
    AT_FREEZING_PA * exp(SLOPE * air_temperature_c / (OFFSET_C + air_temperature_c))
}

/// Temperature [degC] at which air with this vapour pressure is saturated: the same form, solved.
#[must_use]
pub fn dew_point_c(vapour_pressure_pa: f64) -> f64 {
    let logarithm = log(vapour_pressure_pa / AT_FREEZING_PA);
    OFFSET_C * logarithm / (SLOPE - logarithm)
}

/// Relative humidity (0 to 1) of air with this dew point; a dew point above the air's own
/// temperature counts as saturation.
#[must_use]
pub fn relative_humidity(air_temperature_c: f64, dew_point_c: f64) -> f64 {
    (saturation_vapour_pressure_pa(dew_point_c) / saturation_vapour_pressure_pa(air_temperature_c))
        .clamp(DRIEST, 1.0)
}

/// Dew point [degC] of air with this relative humidity (0 to 1).
#[must_use]
pub fn dew_point_of_humidity_c(air_temperature_c: f64, relative_humidity: f64) -> f64 {
    dew_point_c(
        relative_humidity.clamp(DRIEST, 1.0) * saturation_vapour_pressure_pa(air_temperature_c),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn saturation_agrees_with_steam_tables() {
        // Over water [Pa], from memory of the usual tables (after Wexler 1976).
        for (temperature_c, table_pa) in [
            (-20.0, 125.4),
            (-10.0, 286.5),
            (0.0, 611.2),
            (10.0, 1228.0),
            (20.0, 2338.8),
            (30.0, 4246.0),
            (40.0, 7384.0),
            (50.0, 12_350.0),
        ] {
            let ours = saturation_vapour_pressure_pa(temperature_c);
            assert!(
                (ours / table_pa - 1.0).abs() < 0.004,
                "{temperature_c}: {ours} where {table_pa} is expected"
            );
        }
    }

    #[test]
    fn dew_point_and_humidity_are_inverse() {
        for tenths in -400..=500 {
            let temperature_c = f64::from(tenths) / 10.0;
            for percent in [5.0, 20.0, 50.0, 80.0, 99.0, 100.0] {
                let dew = dew_point_of_humidity_c(temperature_c, percent / 100.0);
                let back = relative_humidity(temperature_c, dew);
                assert!((back - percent / 100.0).abs() < 1e-12);
                assert!(dew <= temperature_c + 1e-9);
            }
        }
    }

    #[test]
    fn known_dew_points_are_met() {
        // From memory of psychrometric tables, to a tenth of a degree.
        for (temperature_c, humidity, dew_c) in [
            (20.0, 0.5, 9.3),
            (25.0, 0.6, 16.7),
            (30.0, 0.3, 10.5),
            (0.0, 0.8, -3.0),
        ] {
            let ours = dew_point_of_humidity_c(temperature_c, humidity);
            assert!(
                (ours - dew_c).abs() < 0.1,
                "{temperature_c} {humidity}: {ours}"
            );
        }
    }

    #[test]
    fn nonsense_stays_in_bounds() {
        assert!((relative_humidity(5.0, 30.0) - 1.0).abs() < f64::EPSILON);
        assert!(dew_point_of_humidity_c(20.0, 0.0).is_finite());
    }
}
