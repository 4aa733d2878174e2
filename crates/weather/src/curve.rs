//! How does the temperature run through a day of which only the coldest and warmest are known?
//!
//! By day a sine that begins some minutes before sunrise at the day's minimum and reaches the
//! maximum after noon; by night a decay from the temperature at sunset to the next day's minimum.
//! The curve has no jump, at midnight neither.
//!
//! Source: Parton and Logan 1981, Agricultural Meteorology 23, 205-216, with their parameters for
//! air at 1.5 m (from memory). Their decay ends a ninth above the next minimum, which would leave
//! a jump at dawn; here it is stretched to end there, as Goudriaan and van Laar 1994 (Modelling
//! Potential Crop Growth Processes, from memory) do.

use std::f64::consts::PI;

use libm::{exp, sin};

/// From noon to the maximum, less [`COLDEST_AFTER_SUNRISE_H`] [h].
const WARMEST_AFTER_NOON_H: f64 = 1.86;
/// How fast a night cools, per night.
const NIGHT_DECAY: f64 = 2.20;
/// From sunrise to the minimum [h].
const COLDEST_AFTER_SUNRISE_H: f64 = -0.17;
/// Days for the curve are at least this long [h]: nearer to the poles the temperature hardly
/// follows the sun of the day, and the maximum must come before sunset.
const SHORTEST_DAY_H: f64 = 6.0;
/// And at most so long [h], so that a night is left in which one day's warmth becomes another's.
const LONGEST_DAY_H: f64 = 18.0;

/// What the curve has to know of a day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Extremes {
    /// Lowest temperature, near sunrise [degC].
    pub minimum_c: f64,
    /// Highest temperature, after noon [degC].
    pub maximum_c: f64,
    /// From sunrise to sunset [h].
    pub day_length_h: f64,
}

impl Extremes {
    fn length_h(&self) -> f64 {
        self.day_length_h.clamp(SHORTEST_DAY_H, LONGEST_DAY_H)
    }

    /// Solar time of the minimum [h].
    #[must_use]
    pub fn coldest_h(&self) -> f64 {
        12.0 - self.length_h() / 2.0 + COLDEST_AFTER_SUNRISE_H
    }

    /// Solar time of the maximum [h].
    #[must_use]
    pub fn warmest_h(&self) -> f64 {
        12.0 + COLDEST_AFTER_SUNRISE_H + WARMEST_AFTER_NOON_H
    }

    fn sunset_h(&self) -> f64 {
        12.0 + self.length_h() / 2.0
    }

    fn by_day_c(&self, solar_h: f64) -> f64 {
        let through =
            PI * (solar_h - self.coldest_h()) / (self.length_h() + 2.0 * WARMEST_AFTER_NOON_H);
        self.minimum_c + (self.maximum_c - self.minimum_c) * sin(through)
    }
}

/// Temperature [degC] at a solar time (0 to 24 h) of a day between two others.
#[must_use]
pub fn temperature_c(before: &Extremes, day: &Extremes, after: &Extremes, solar_h: f64) -> f64 {
    if solar_h < day.coldest_h() {
        by_night_c(before, day, solar_h + 24.0)
    } else if solar_h <= day.sunset_h() {
        day.by_day_c(solar_h)
    } else {
        by_night_c(day, after, solar_h)
    }
}

/// In the night between two days, with the time counted from the first day's midnight [h].
fn by_night_c(evening: &Extremes, morning: &Extremes, solar_h: f64) -> f64 {
    let sunset_h = evening.sunset_h();
    let length_h = morning.coldest_h() + 24.0 - sunset_h;
    let through = (solar_h - sunset_h) / length_h;
    let left = exp(-NIGHT_DECAY);
    let share = (exp(-NIGHT_DECAY * through) - left) / (1.0 - left);
    let at_sunset_c = evening.by_day_c(sunset_h);
    morning.minimum_c + (at_sunset_c - morning.minimum_c) * share
}

#[cfg(test)]
mod tests {
    use super::*;

    const fn day(minimum_c: f64, maximum_c: f64, day_length_h: f64) -> Extremes {
        Extremes {
            minimum_c,
            maximum_c,
            day_length_h,
        }
    }

    #[test]
    fn the_extremes_are_met_at_their_hours() {
        for length in [0.0, 4.0, 8.0, 12.0, 16.0, 20.0, 24.0] {
            let days = [
                day(2.0, 9.0, length),
                day(5.0, 17.0, length),
                day(4.0, 12.0, length),
            ];
            let at = |solar_h| temperature_c(&days[0], &days[1], &days[2], solar_h);
            assert!((at(days[1].coldest_h()) - 5.0).abs() < 1e-12, "{length}");
            assert!((at(days[1].warmest_h()) - 17.0).abs() < 1e-12, "{length}");
            assert!(days[1].warmest_h() < days[1].sunset_h());
        }
    }

    #[test]
    fn the_curve_has_no_jump() {
        let days = [
            day(2.0, 9.0, 9.9),
            day(-5.0, 17.0, 10.0),
            day(12.0, 13.0, 10.1),
            day(0.0, 30.0, 10.2),
        ];
        let mut before = None;
        for middle in [1, 2] {
            for step in 0..=24_000 {
                let solar_h = f64::from(step) / 1000.0;
                let now =
                    temperature_c(&days[middle - 1], &days[middle], &days[middle + 1], solar_h);
                if let Some(before) = before {
                    let jump: f64 = now - before;
                    // 30 K at the steepest part of the sine rise by 6.8 K/h.
                    assert!(jump.abs() < 0.007, "{middle} {solar_h}: {jump}");
                }
                before = Some(now);
            }
        }
    }

    #[test]
    fn an_even_row_of_days_stays_within_its_extremes() {
        let even = day(5.0, 17.0, 13.0);
        for step in 0..=2400 {
            let now = temperature_c(&even, &even, &even, f64::from(step) / 100.0);
            assert!((5.0 - 1e-12..=17.0 + 1e-12).contains(&now));
        }
    }
}
