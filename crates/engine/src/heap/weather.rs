//! The air around the heap: hour by hour, or always the same.

/// One hour of weather.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WeatherHour {
    /// Air temperature at the start of the hour [degrees Celsius].
    pub air_temperature_c: f64,
    /// Relative humidity at the start of the hour, 0 to 1.
    pub relative_humidity: f64,
    /// Rain within the hour [mm/h].
    pub rain_mm_per_h: f64,
    /// Wind at the start of the hour [m/s].
    pub wind_m_s: f64,
    /// Sun on the level at the start of the hour [W/m2].
    pub solar_w_m2: f64,
    /// Cloud cover at the start of the hour, 0 to 1; a clear sky cools.
    pub cloud_cover: f64,
}

impl WeatherHour {
    /// A mild, dry, shaded day with light air.
    #[must_use]
    pub fn mild(air_temperature_c: f64) -> Self {
        Self {
            air_temperature_c,
            relative_humidity: 0.7,
            rain_mm_per_h: 0.0,
            wind_m_s: 1.25,
            solar_w_m2: 0.0,
            cloud_cover: 1.0,
        }
    }
}

/// A weather series from the start of the simulation.
#[derive(Clone, Debug, PartialEq)]
pub struct Weather {
    hours: Vec<WeatherHour>,
    /// Temperature of the ground below the heap at each hour.
    ground_c: Vec<f64>,
}

/// The air at one moment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Air {
    pub temperature_c: f64,
    pub relative_humidity: f64,
    pub wind_m_s: f64,
    pub solar_w_m2: f64,
    pub cloud_cover: f64,
    pub ground_c: f64,
}

/// Time over which the ground follows the air [h]: half a metre to a metre deep. Estimate.
const GROUND_MEMORY_H: f64 = 20.0 * 24.0;

impl Weather {
    /// Always the same, the ground by `ground_offset_k` warmer than the air.
    #[must_use]
    pub fn constant(hour: WeatherHour, ground_offset_k: f64) -> Self {
        Self {
            hours: vec![hour],
            ground_c: vec![hour.air_temperature_c + ground_offset_k],
        }
    }

    /// Hour by hour; temperature and the like run straight between the hours, rain is
    /// even within each. The ground is the running mean of the air.
    #[must_use]
    pub fn hourly(hours: Vec<WeatherHour>) -> Self {
        let first = hours.len().min(240);
        #[allow(clippy::cast_precision_loss)] // at most 240
        let mut ground = hours[..first]
            .iter()
            .map(|hour| hour.air_temperature_c)
            .sum::<f64>()
            / first.max(1) as f64;
        let ground_c = hours
            .iter()
            .map(|hour| {
                ground += (hour.air_temperature_c - ground) / GROUND_MEMORY_H;
                ground
            })
            .collect();
        Self { hours, ground_c }
    }

    /// How many days it covers; without end when constant.
    #[must_use]
    #[allow(clippy::cast_precision_loss)] // hours of years
    pub fn days(&self) -> f64 {
        if self.hours.len() == 1 {
            f64::INFINITY
        } else {
            self.hours.len() as f64 / 24.0
        }
    }

    /// The first hour with a value that has no meaning.
    pub(crate) fn fault(&self) -> Option<usize> {
        if self.hours.is_empty() {
            return Some(0);
        }
        self.hours.iter().position(|hour| {
            !((-90.0..=80.0).contains(&hour.air_temperature_c)
                && (0.0..=1.0).contains(&hour.relative_humidity)
                && (0.0..=500.0).contains(&hour.rain_mm_per_h)
                && (0.0..=100.0).contains(&hour.wind_m_s)
                && (0.0..=2000.0).contains(&hour.solar_w_m2)
                && (0.0..=1.0).contains(&hour.cloud_cover))
        })
    }

    /// The air at a day.
    pub(crate) fn at(&self, day: f64) -> Air {
        let (low, high, x) = self.place(day);
        let (one, other) = (&self.hours[low], &self.hours[high]);
        let between = |from: f64, to: f64| from + (to - from) * x;
        Air {
            temperature_c: between(one.air_temperature_c, other.air_temperature_c),
            relative_humidity: between(one.relative_humidity, other.relative_humidity),
            wind_m_s: between(one.wind_m_s, other.wind_m_s),
            solar_w_m2: between(one.solar_w_m2, other.solar_w_m2),
            cloud_cover: between(one.cloud_cover, other.cloud_cover),
            ground_c: between(self.ground_c[low], self.ground_c[high]),
        }
    }

    /// Rain of the hour that begins at or runs over `day` [mm/d].
    pub(crate) fn rain_mm_per_d(&self, day: f64) -> f64 {
        // A hair past the hour, so that an hour's start is not taken for its end.
        self.hours[self.place(day + 1e-7).0].rain_mm_per_h * 24.0
    }

    /// Mean rain between two days [mm/d]: over any steps, all that falls.
    pub(crate) fn mean_rain_mm_per_d(&self, start: f64, end: f64) -> f64 {
        let mut fallen_mm = 0.0;
        let mut from = start;
        while from < end {
            let next_hour = ((from * 24.0 + 1e-5).floor() + 1.0) / 24.0;
            let to = next_hour.min(end);
            fallen_mm += (to - from) * self.rain_mm_per_d(from);
            from = to;
        }
        fallen_mm / (end - start)
    }

    /// The first moment after `start` at which rain begins or ends, if it is before `end`;
    /// else `end`.
    #[allow(clippy::cast_precision_loss)] // hours of years
    pub(crate) fn turn_of_rain(&self, start: f64, end: f64) -> f64 {
        let now = self.place(start + 1e-7).0;
        let wet = self.hours[now].rain_mm_per_h > 0.0;
        self.hours[now..]
            .iter()
            .enumerate()
            .map(|(ahead, hour)| ((now + ahead) as f64 / 24.0, hour.rain_mm_per_h > 0.0))
            .take_while(|(day, _)| *day < end - 1e-7)
            .find(|(_, other)| *other != wet)
            .map_or(end, |(day, _)| day)
    }

    /// Whether it is more than one moment that lasts.
    pub(crate) fn varies(&self) -> bool {
        self.hours.len() > 1
    }

    /// The hours on either side of a day, and the way between them.
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        clippy::cast_precision_loss
    )] // hours of years, held to the series
    fn place(&self, day: f64) -> (usize, usize, f64) {
        let last = self.hours.len() - 1;
        let hour = (day * 24.0).clamp(0.0, last as f64);
        let low = hour as usize;
        (low, (low + 1).min(last), hour - low as f64)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn temperature_runs_straight_and_rain_is_even() {
        let mut hours = vec![WeatherHour::mild(10.0); 48];
        hours[1].air_temperature_c = 13.0;
        hours[2].rain_mm_per_h = 2.0;
        let weather = Weather::hourly(hours);
        assert!((weather.at(0.5 / 24.0).temperature_c - 11.5).abs() < 1e-12);
        assert_eq!(weather.rain_mm_per_d(1.9 / 24.0), 0.0);
        assert_eq!(weather.rain_mm_per_d(2.0 / 24.0), 48.0);
        assert_eq!(weather.rain_mm_per_d(2.9 / 24.0), 48.0);
        assert_eq!(weather.days(), 2.0);
    }

    #[test]
    fn steps_of_any_length_lose_no_rain_and_see_where_it_begins_and_ends() {
        let mut hours = vec![WeatherHour::mild(10.0); 48];
        hours[5].rain_mm_per_h = 2.0;
        hours[6].rain_mm_per_h = 4.0;
        let weather = Weather::hourly(hours);
        let (mut day, mut fallen) = (0.0, 0.0);
        for step in 1_u8..30 {
            let end = day + 0.007 * f64::from(step % 7 + 1);
            fallen += weather.mean_rain_mm_per_d(day, end) * (end - day);
            day = end;
        }
        assert!((fallen - 6.0).abs() < 1e-9, "{fallen}");
        assert_eq!(weather.turn_of_rain(0.0, 0.1), 0.1);
        assert_eq!(weather.turn_of_rain(0.0, 1.0), 5.0 / 24.0);
        assert_eq!(weather.turn_of_rain(5.0 / 24.0, 1.0), 7.0 / 24.0);
        assert_eq!(weather.turn_of_rain(7.0 / 24.0, 1.0), 1.0);
    }

    #[test]
    fn values_without_meaning_are_found() {
        let mut hours = vec![WeatherHour::mild(10.0); 5];
        assert_eq!(Weather::hourly(hours.clone()).fault(), None);
        hours[3].relative_humidity = f64::NAN;
        assert_eq!(Weather::hourly(hours).fault(), Some(3));
        assert_eq!(Weather::hourly(Vec::new()).fault(), Some(0));
    }
}
