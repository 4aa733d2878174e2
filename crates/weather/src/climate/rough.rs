//! Which weather is usual at a latitude? A rough guess for a place of which nothing else is known.
//!
//! **Rough**: the coldest and the warmest month are off by 3 K (root of the mean square over
//! twelve cities that were not used to choose the figures), and by up to 9 K where currents or
//! mountains rule: mild western coasts are warmer, eastern ones and the hearts of continents have
//! colder winters. Rain and wind are off by a factor of two and have no seasons here. A keeper's
//! own normals, or only their coldest and warmest months, should replace it.

use std::f64::consts::PI;

use libm::{cos, sin};

use super::{MONTHS, MonthNormal};
use crate::place::{Place, Setting};

/// Root of the mean square error of the guessed coldest and warmest months [K].
pub const SPREAD_K: f64 = 3.0;

/// Mean of the year at sea level at 0, 10 ... 90 deg north [degC].
///
/// Source: from memory of the classical table of the mean temperatures of the parallels, after
/// von Hann and Meinardus, in Haurwitz and Austin 1944, Climatology, McGraw-Hill.
const NORTH_C: [f64; 10] = [26.2, 26.7, 25.3, 20.4, 14.1, 5.8, -1.1, -10.7, -18.1, -22.7];
/// The same at 0, 10 ... 90 deg south [degC].
///
/// Source: as for the north.
const SOUTH_C: [f64; 10] = [26.2, 25.3, 22.9, 18.4, 11.9, 5.8, -3.4, -13.6, -27.0, -33.1];
/// What towns of our day are warmer than that table of the early twentieth century [K]: one
/// figure for the warming since and for the warmth of towns, chosen on ten cities.
const WARMER_SINCE_K: f64 = 2.0;
/// Rain of a year over land at 0, 10 ... 90 deg [mm].
///
/// Source: rounded from memory of zonal means over land in textbooks of climatology (such as
/// Sellers 1965, Physical Climatology); good to a factor of two.
const RAIN_MM: [f64; 10] = [
    1900.0, 1300.0, 750.0, 600.0, 700.0, 700.0, 550.0, 300.0, 150.0, 100.0,
];
/// Rain of a wet day at 0, 10 ... 90 deg [mm]; from memory, good to a factor of two.
const WET_DAY_MM: [f64; 10] = [11.0, 11.0, 10.0, 8.0, 6.5, 5.0, 4.5, 4.0, 3.0, 3.0];
/// Fall of temperature with height in the standard atmosphere [K/m].
///
/// Source: ISO 2533:1975, Standard Atmosphere.
const LAPSE_K_PER_M: f64 = 0.0065;

/// Figures that go with the reach of the sea; rounded from memory of cities' normals.
struct Reach {
    /// Continentality after Conrad: about 0 in the middle of oceans, 100 in that of Asia.
    conrad_index: f64,
    /// What the north is warmer from 50 deg on than its parallel [K].
    northern_warmth_k: f64,
    /// From the solstice to the coldest and the warmest day [d].
    lag_days: f64,
    /// Mean daily range of the temperature [K].
    daily_range_k: f64,
    relative_humidity: f64,
    rain_share: f64,
    wind_m_s: f64,
}

const fn reach(setting: Setting) -> Reach {
    match setting {
        Setting::Coast => Reach {
            conrad_index: 10.0,
            northern_warmth_k: 3.5,
            lag_days: 44.0,
            daily_range_k: 6.5,
            relative_humidity: 0.78,
            rain_share: 1.2,
            wind_m_s: 4.5,
        },
        Setting::Between => Reach {
            conrad_index: 27.0,
            northern_warmth_k: 3.0,
            lag_days: 32.0,
            daily_range_k: 9.0,
            relative_humidity: 0.73,
            rain_share: 1.0,
            wind_m_s: 3.5,
        },
        Setting::Inland => Reach {
            conrad_index: 45.0,
            northern_warmth_k: 0.0,
            lag_days: 26.0,
            daily_range_k: 11.5,
            relative_humidity: 0.66,
            rain_share: 0.7,
            wind_m_s: 3.0,
        },
    }
}

/// From the coldest to the warmest month [K].
///
/// Source: Conrad 1946, Transactions of the American Geophysical Union 27, 663-664: the index of
/// continentality is 1.7 times the range over the sine of (latitude + 10 deg), less 14; solved.
fn yearly_range_k(latitude_deg: f64, conrad_index: f64) -> f64 {
    (conrad_index + 14.0) * sin((latitude_deg.abs() + 10.0) * PI / 180.0) / 1.7
}

/// Straight between the rows of a table.
fn between_rows(table: &[f64; 10], latitude_deg: f64) -> f64 {
    let tens = latitude_deg.abs().min(90.0) / 10.0;
    let mut row = 0;
    let mut below = 0.0;
    while row < 8 && below + 1.0 <= tens {
        row += 1;
        below += 1.0;
    }
    table[row] + (table[row + 1] - table[row]) * (tens - below)
}

/// Where the year stands in each month, from -1 in the coldest to 1 in the warmest.
fn seasons(place: &Place, lag_days: f64) -> [f64; MONTHS] {
    // The solstice of the cold half is on 21 December or 21 June.
    let solstice_day = if place.is_south() { 172.0 } else { 355.0 };
    let mut middle_day = 15.5;
    let shape = [(); MONTHS].map(|()| {
        let angle = 2.0 * PI * (middle_day - solstice_day - lag_days) / 365.25;
        middle_day += 365.25 / 12.0;
        -cos(angle)
    });
    let least = shape.iter().copied().fold(f64::MAX, f64::min);
    let most = shape.iter().copied().fold(f64::MIN, f64::max);
    shape.map(|value| 2.0 * (value - least) / (most - least) - 1.0)
}

/// The guess for each month, January first.
pub(super) fn normals(place: &Place) -> [MonthNormal; MONTHS] {
    let reach = reach(place.setting);
    let latitude_deg = place.latitude_deg;
    let table = if place.is_south() { &SOUTH_C } else { &NORTH_C };
    let warmth = if place.is_south() {
        0.0
    } else {
        // Nothing up to 35 deg, all from 50 deg on.
        reach.northern_warmth_k * ((latitude_deg - 35.0) / 15.0).clamp(0.0, 1.0)
    };
    let mean_c = between_rows(table, latitude_deg) + WARMER_SINCE_K + warmth
        - LAPSE_K_PER_M * place.elevation_m;
    let half_range_k = yearly_range_k(latitude_deg, reach.conrad_index) / 2.0;
    let rain_mm = between_rows(&RAIN_MM, latitude_deg) * reach.rain_share / 12.0;
    let wet_days = rain_mm / between_rows(&WET_DAY_MM, latitude_deg);
    // Seasons of the daily range and of humidity fade towards the equator.
    let seasonal = (latitude_deg.abs() / 40.0).min(1.0);
    seasons(place, reach.lag_days).map(|season| MonthNormal {
        mean_c: mean_c + half_range_k * season,
        daily_range_k: reach.daily_range_k * (1.0 + 0.25 * season * seasonal),
        relative_humidity: reach.relative_humidity - 0.06 * season * seasonal,
        rain_mm,
        wet_days,
        wind_m_s: reach.wind_m_s,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    struct City {
        name: &'static str,
        place: Place,
        coldest_c: f64,
        warmest_c: f64,
    }

    fn city(
        name: &'static str,
        latitude_deg: f64,
        elevation_m: f64,
        setting: Setting,
        coldest_c: f64,
        warmest_c: f64,
    ) -> City {
        City {
            name,
            place: Place {
                latitude_deg,
                longitude_deg: 0.0,
                elevation_m,
                setting,
            },
            coldest_c,
            warmest_c,
        }
    }

    /// Means of the coldest and warmest months, from memory of normals of about 1991 to 2020, to a
    /// degree or so. No figure of the guess was chosen on these.
    fn cities() -> Vec<City> {
        use Setting::{Between, Coast, Inland};
        vec![
            city("Edinburgh", 55.9, 50.0, Coast, 4.2, 15.5),
            city("Paris", 48.9, 50.0, Between, 4.9, 20.5),
            city("Warsaw", 52.2, 110.0, Between, -1.5, 19.6),
            city("Helsinki", 60.2, 20.0, Between, -4.5, 18.1),
            city("Winnipeg", 49.9, 240.0, Inland, -16.3, 19.9),
            city("San Francisco", 37.6, 5.0, Coast, 10.5, 17.5),
            city("Tokyo", 35.7, 25.0, Between, 5.4, 26.9),
            city("Nairobi", -1.3, 1795.0, Inland, 17.0, 20.5),
            city("Buenos Aires", -34.6, 25.0, Between, 11.0, 24.9),
            city("Sydney", -33.9, 20.0, Coast, 13.0, 23.5),
            city("Cape Town", -34.0, 40.0, Coast, 12.2, 21.3),
            city("Christchurch", -43.5, 30.0, Coast, 6.2, 17.5),
        ]
    }

    #[test]
    fn the_guess_is_as_rough_as_it_says() {
        let mut squares = 0.0;
        let cities = cities();
        for city in &cities {
            let means = normals(&city.place).map(|month| month.mean_c);
            let coldest = means.iter().copied().fold(f64::MAX, f64::min) - city.coldest_c;
            let warmest = means.iter().copied().fold(f64::MIN, f64::max) - city.warmest_c;
            assert!(coldest.abs() < 9.0 && warmest.abs() < 9.0, "{}", city.name);
            squares += coldest * coldest + warmest * warmest;
        }
        let spread = libm::sqrt(squares / 24.0);
        assert!(
            spread < SPREAD_K * 1.05 && spread > SPREAD_K * 0.7,
            "{spread}"
        );
    }

    #[test]
    fn seasons_turn_with_the_hemisphere() {
        for (latitude_deg, coldest) in [(50.0, [0, 1]), (-40.0, [6, 7])] {
            for setting in [Setting::Coast, Setting::Between, Setting::Inland] {
                let place = Place {
                    latitude_deg,
                    longitude_deg: 0.0,
                    elevation_m: 0.0,
                    setting,
                };
                let means = normals(&place).map(|month| month.mean_c);
                let least = (0..MONTHS)
                    .min_by(|a, b| means[*a].total_cmp(&means[*b]))
                    .unwrap();
                let most = (0..MONTHS)
                    .max_by(|a, b| means[*a].total_cmp(&means[*b]))
                    .unwrap();
                assert!(
                    coldest.contains(&least),
                    "{latitude_deg} {setting:?}: {least}"
                );
                assert_eq!(most, (least + 6) % 12, "{latitude_deg} {setting:?}");
            }
        }
    }

    #[test]
    fn guesses_are_sober_everywhere() {
        for latitude in -90..=90 {
            for setting in [Setting::Coast, Setting::Between, Setting::Inland] {
                for elevation_m in [-400.0, 0.0, 4000.0] {
                    let place = Place {
                        latitude_deg: f64::from(latitude),
                        longitude_deg: 0.0,
                        elevation_m,
                        setting,
                    };
                    for month in normals(&place) {
                        assert!((-95.0..45.0).contains(&month.mean_c), "{place:?} {month:?}");
                        assert!(month.daily_range_k > 3.0 && month.daily_range_k < 16.0);
                        assert!(month.relative_humidity > 0.5 && month.relative_humidity < 0.9);
                        assert!(month.wet_days > 0.5 && month.wet_days < 25.0);
                    }
                }
            }
        }
    }
}
