//! How much sun falls on a place? Its path, its strength above the air, and what passes a clear sky.
//!
//! Source: Allen, Pereira, Raes and Smith 1998, Crop evapotranspiration, FAO Irrigation and
//! Drainage Paper 56, chapter 3. Equations are cited by their numbers there. Angles are in
//! radians, energy is in MJ/m2 on level ground.

use std::f64::consts::PI;

use libm::{acos, cos, sin, sqrt, tan};

use crate::place::{DAY_HOURS, Place};

/// Energy of the sun above the air [MJ/m2 min].
const SOLAR_CONSTANT: f64 = 0.0820;
/// What a mean hour of 1 MJ/m2 is as power [W/m2].
pub(crate) const W_PER_MJ_H: f64 = 1e6 / 3600.0;

/// The sun of one day at one latitude.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SunDay {
    latitude: f64,
    day_of_year: f64,
    /// Distance of the sun, inverse and relative (equation 23).
    pub inverse_distance: f64,
    /// Declination [rad] (equation 24).
    pub declination: f64,
    /// Hour angle of the sunset [rad] (equation 25): 0 where the sun does not rise, pi where it
    /// does not set.
    pub sunset_hour_angle: f64,
}

impl SunDay {
    /// The sun at a latitude [deg] on a day of the year (1 to 366).
    #[must_use]
    pub fn new(latitude_deg: f64, day_of_year: i16) -> Self {
        let day_of_year = f64::from(day_of_year);
        // A hair off the poles, where the tangent is infinite.
        let latitude = latitude_deg.clamp(-89.9, 89.9) * PI / 180.0;
        let year_angle = 2.0 * PI * day_of_year / 365.0;
        let declination = 0.409 * sin(year_angle - 1.39);
        Self {
            latitude,
            day_of_year,
            inverse_distance: 1.0 + 0.033 * cos(year_angle),
            declination,
            sunset_hour_angle: acos((-tan(latitude) * tan(declination)).clamp(-1.0, 1.0)),
        }
    }

    /// From sunrise to sunset [h] (equation 34).
    #[must_use]
    pub fn day_length_h(&self) -> f64 {
        24.0 / PI * self.sunset_hour_angle
    }

    /// Sunrise in true solar time [h]; 12 where the sun does not rise, 0 where it does not set.
    #[must_use]
    pub fn sunrise_h(&self) -> f64 {
        12.0 - self.day_length_h() / 2.0
    }

    /// Sunset in true solar time [h].
    #[must_use]
    pub fn sunset_h(&self) -> f64 {
        12.0 + self.day_length_h() / 2.0
    }

    /// Energy above the air [MJ/m2 day] (equation 21).
    #[must_use]
    pub fn extraterrestrial_mj(&self) -> f64 {
        2.0 * self.between_angles(0.0, self.sunset_hour_angle)
    }

    /// Energy above the air [MJ/m2] while the hour angle goes from one to another (equation 28).
    fn between_angles(&self, from: f64, until: f64) -> f64 {
        let set = self.sunset_hour_angle;
        let (from, until) = (from.clamp(-set, set), until.clamp(-set, set));
        let level = sin(self.latitude) * sin(self.declination);
        let swing = cos(self.latitude) * cos(self.declination);
        (12.0 * 60.0 / PI
            * SOLAR_CONSTANT
            * self.inverse_distance
            * ((until - from) * level + swing * (sin(until) - sin(from))))
        .max(0.0)
    }

    /// True less mean solar time [h] (equations 32 and 33).
    #[must_use]
    pub fn equation_of_time_h(&self) -> f64 {
        let angle = 2.0 * PI * (self.day_of_year - 81.0) / 364.0;
        0.1645 * sin(2.0 * angle) - 0.1255 * cos(angle) - 0.025 * sin(angle)
    }

    /// Energy above the air [MJ/m2] in the hour whose middle is at this mean solar time [h]
    /// (equations 28 to 31).
    #[must_use]
    pub fn extraterrestrial_in_hour_mj(&self, middle_mean_solar_h: f64) -> f64 {
        let half = PI / 24.0;
        let middle = PI / 12.0 * (middle_mean_solar_h + self.equation_of_time_h() - 12.0);
        // The hour around midnight belongs to both ends of the circle.
        [-2.0 * PI, 0.0, 2.0 * PI]
            .iter()
            .map(|turn| {
                let (from, until) = (middle + turn - half, middle + turn + half);
                self.between_angles(from.max(-PI), until.min(PI).max(from.max(-PI)))
            })
            .sum()
    }
}

/// Share of the sun above the air that passes a clear sky (equation 37), at most 0.88.
#[must_use]
pub fn clear_sky_share(elevation_m: f64) -> f64 {
    (0.75 + 2e-5 * elevation_m.max(0.0)).min(0.88)
}

/// Share of the sun above the air that reaches the ground on a day with this range of the
/// temperature [K]; never more than through a clear sky.
///
/// Equation 50 (Hargreaves); `adjustment` is 0.16 inland and 0.19 on a coast, in 1/sqrt(K).
#[must_use]
pub fn share_by_temperature_range(range_k: f64, adjustment: f64, elevation_m: f64) -> f64 {
    (adjustment * sqrt(range_k.max(0.0))).min(clear_sky_share(elevation_m))
}

/// Energy above the air [MJ/m2] in each hour of a day by the clock of the place's longitude.
#[must_use]
pub fn hours_of_day_mj(place: &Place, day_of_year: i16) -> [f64; DAY_HOURS] {
    let sun = SunDay::new(place.latitude_deg, day_of_year);
    let ahead = place.sun_ahead_of_clock_h();
    let mut hours = [0.0; DAY_HOURS];
    let mut middle = 0.5 + ahead;
    for hour in &mut hours {
        *hour = sun.extraterrestrial_in_hour_mj(middle);
        middle += 1.0;
    }
    hours
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::place::Setting;

    fn near(what: &str, ours: f64, published: f64, tolerance: f64) {
        assert!(
            (ours - published).abs() <= tolerance,
            "{what}: {ours} where {published} is published"
        );
    }

    #[test]
    fn published_examples_8_and_9_20_south_3_september() {
        let sun = SunDay::new(-20.0, 246);
        near("inverse distance", sun.inverse_distance, 0.985, 0.0005);
        near("declination", sun.declination, 0.120, 0.0005);
        near("sunset hour angle", sun.sunset_hour_angle, 1.527, 0.0005);
        near("energy", sun.extraterrestrial_mj(), 32.2, 0.05);
        near("day length", sun.day_length_h(), 11.7, 0.05);
    }

    #[test]
    fn published_example_15_lyon_in_july() {
        let sun = SunDay::new(45.0 + 43.0 / 60.0, 196);
        near("energy", sun.extraterrestrial_mj(), 40.6, 0.1);
        let share = share_by_temperature_range(26.6 - 14.8, 0.16, 200.0);
        near(
            "at the ground",
            share * sun.extraterrestrial_mj(),
            22.3,
            0.1,
        );
    }

    #[test]
    fn published_example_19_senegal_hour_from_14_to_15() {
        let sun = SunDay::new(16.0 + 13.0 / 60.0, 274);
        near("equation of time", sun.equation_of_time_h(), 0.1889, 0.0005);
        // 16 deg 15 min W by a clock of 15 deg W.
        let middle = 14.5 + (15.0 - 16.25) / 15.0;
        near(
            "energy",
            sun.extraterrestrial_in_hour_mj(middle),
            3.543,
            0.005,
        );
    }

    #[test]
    fn hours_add_up_to_the_day_everywhere() {
        for latitude in -18..=18 {
            for longitude in [-180.0, -74.3, 0.0, 7.4, 113.0, 180.0] {
                let place = Place {
                    latitude_deg: f64::from(latitude) * 5.0,
                    longitude_deg: longitude,
                    elevation_m: 0.0,
                    setting: Setting::Between,
                };
                for day in (1..=366).step_by(7) {
                    let sum: f64 = hours_of_day_mj(&place, day).iter().sum();
                    let whole = SunDay::new(place.latitude_deg, day).extraterrestrial_mj();
                    near(&format!("{latitude} {longitude} {day}"), sum, whole, 1e-9);
                }
            }
        }
    }

    #[test]
    fn the_sun_stays_up_or_down_beyond_the_polar_circles() {
        near("June", SunDay::new(80.0, 172).day_length_h(), 24.0, 1e-9);
        near("December", SunDay::new(80.0, 355).day_length_h(), 0.0, 1e-9);
        near(
            "dark",
            SunDay::new(80.0, 355).extraterrestrial_mj(),
            0.0,
            1e-9,
        );
        near("south", SunDay::new(-80.0, 355).day_length_h(), 24.0, 1e-9);
        assert!(SunDay::new(90.0, 172).extraterrestrial_mj().is_finite());
    }
}
