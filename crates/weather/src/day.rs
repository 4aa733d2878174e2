//! How do days become hours? Temperature on a curve, humidity from a dew point, sun by its height,
//! rain in one fall.

use jiff::civil::Date;

use crate::air::relative_humidity;
use crate::curve::{Extremes, temperature_c};
use crate::place::{DAY_HOURS, Place, Setting};
use crate::series::{MOST_HOURS, OutOfTime, Series, WeatherHour, YEARS, later, midnight_ms};
use crate::sun::{SunDay, W_PER_MJ_H, hours_of_day_mj, share_by_temperature_range};

/// In how many hours rain falls: one for each of so many millimetres [mm/h].
///
/// A wet hour of temperate lands has about 1 mm (from memory of hourly records).
const RAIN_OF_A_WET_HOUR_MM: f64 = 1.0;
/// The middle of a day's rain where nothing is known of its hour: noon.
pub(crate) const RAIN_MIDDLE_H: f64 = 12.0;

/// The weather of a day, from midnight to midnight by the clock of the place's longitude.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WeatherDay {
    /// Lowest temperature [degC].
    pub minimum_c: f64,
    /// Highest temperature [degC].
    pub maximum_c: f64,
    /// Mean dew point [degC]; the minimum where it is not known.
    ///
    /// Source: Allen et al. 1998, FAO Irrigation and Drainage Paper 56, equation 48. In dry lands
    /// the true dew point is some 2 K or more below the minimum, as said there.
    pub dew_point_c: Option<f64>,
    /// Rain, and snow as water [mm].
    pub rain_mm: f64,
    /// Mean wind [m/s].
    pub wind_m_s: f64,
    /// Global radiation [MJ/m2]; by the range of the temperature where it is not known.
    pub radiation_mj: Option<f64>,
    /// Clock time of the middle of the rain [h]; noon where it is not known.
    pub rain_middle_h: Option<f64>,
}

/// Hargreaves' adjustment [1/sqrt(K)]: 0.16 inland and 0.19 on a coast, and the mean of both.
///
/// Source: Allen et al. 1998, FAO Irrigation and Drainage Paper 56, equation 50.
pub(crate) fn radiation_adjustment(setting: Setting) -> f64 {
    match setting {
        Setting::Coast => 0.19,
        Setting::Between => 0.175,
        Setting::Inland => 0.16,
    }
}

/// The hours of days that follow one another.
///
/// The temperature is that of the middle of each hour on the curve of [`crate::curve`]. The dew
/// point runs straight from one noon to the next. Radiation is shared out as the sun above the
/// air. Rain falls in one run of hours of at most 1 mm each, the last one only in part, around the
/// stated middle, or over all 24 hours where it is more than 24 mm. Wind is even.
///
/// Where a night is warmer than both days would have it, its minimum lies on the curve and an hour
/// of the evening before may be colder than its own day's minimum: without a jump both cannot be.
pub fn hours_of_days(place: &Place, first: Date, days: &[WeatherDay]) -> Result<Series, OutOfTime> {
    let start_ms = midnight_ms(place, first).ok_or(OutOfTime)?;
    if days.len() > MOST_HOURS / DAY_HOURS {
        return Err(OutOfTime);
    }
    let mut dates = Vec::with_capacity(days.len());
    for index in 0..days.len() {
        let date = i64::try_from(index)
            .ok()
            .and_then(|index| later(first, index))
            .filter(|date| YEARS.contains(&date.year()))
            .ok_or(OutOfTime)?;
        dates.push(date);
    }
    let extremes: Vec<Extremes> = days
        .iter()
        .zip(&dates)
        .map(|(day, date)| Extremes {
            minimum_c: day.minimum_c,
            maximum_c: day.maximum_c,
            day_length_h: SunDay::new(place.latitude_deg, date.day_of_year()).day_length_h(),
        })
        .collect();
    let mut hours = Vec::with_capacity(days.len() * DAY_HOURS);
    for (index, day) in days.iter().enumerate() {
        let around = Around {
            place,
            days,
            extremes: &extremes,
            index,
        };
        let sun = sun_of_day(place, dates[index].day_of_year(), day);
        let rain = rain_of_day(day.rain_mm, day.rain_middle_h.unwrap_or(RAIN_MIDDLE_H));
        let mut middle_h = 0.5;
        for hour in 0..DAY_HOURS {
            let air_temperature_c = around.temperature_c(middle_h);
            hours.push(WeatherHour {
                air_temperature_c,
                relative_humidity: relative_humidity(
                    air_temperature_c,
                    around.dew_point_c(middle_h),
                ),
                rain_mm: rain[hour],
                wind_m_s: day.wind_m_s,
                solar_w_m2: sun[hour],
            });
            middle_h += 1.0;
        }
    }
    Ok(Series {
        place: *place,
        start_ms,
        hours,
    })
}

/// A day among its neighbours; the first and the last are their own.
struct Around<'a> {
    place: &'a Place,
    days: &'a [WeatherDay],
    extremes: &'a [Extremes],
    index: usize,
}

impl Around<'_> {
    fn temperature_c(&self, clock_h: f64) -> f64 {
        let solar_h = clock_h + self.place.sun_ahead_of_clock_h();
        // Near midnight the sun's day may be a neighbour of the clock's.
        let (shift, solar_h) = if solar_h < 0.0 {
            (-1, solar_h + 24.0)
        } else if solar_h >= 24.0 {
            (1, solar_h - 24.0)
        } else {
            (0, solar_h)
        };
        let day = |step: isize| &self.extremes[self.neighbour(shift + step)];
        temperature_c(day(-1), day(0), day(1), solar_h)
    }

    fn neighbour(&self, step: isize) -> usize {
        self.index
            .saturating_add_signed(step)
            .min(self.days.len() - 1)
    }

    fn dew_point_c(&self, clock_h: f64) -> f64 {
        let of = |step| {
            let day = &self.days[self.neighbour(step)];
            day.dew_point_c.unwrap_or(day.minimum_c)
        };
        let from_noon = (clock_h - 12.0) / 24.0;
        let other = of(if from_noon < 0.0 { -1 } else { 1 });
        of(0) + (other - of(0)) * from_noon.abs()
    }
}

/// Mean radiation of each hour [W/m2].
fn sun_of_day(place: &Place, day_of_year: i16, day: &WeatherDay) -> [f64; DAY_HOURS] {
    let above = hours_of_day_mj(place, day_of_year);
    let above_mj: f64 = above.iter().sum();
    let adjustment = radiation_adjustment(place.setting);
    let share = match day.radiation_mj {
        // No more than falls in above the air, whatever a file says.
        Some(radiation_mj) if above_mj > 0.0 => (radiation_mj / above_mj).clamp(0.0, 1.0),
        Some(_) => 0.0,
        None => {
            share_by_temperature_range(day.maximum_c - day.minimum_c, adjustment, place.elevation_m)
        }
    };
    above.map(|mj| mj * share * W_PER_MJ_H)
}

/// Rain of each hour [mm].
fn rain_of_day(rain_mm: f64, middle_h: f64) -> [f64; DAY_HOURS] {
    let mut hours = [0.0; DAY_HOURS];
    let most_mm = RAIN_OF_A_WET_HOUR_MM.max(rain_mm / 24.0);
    let length_h = rain_mm / most_mm;
    let from_h = (middle_h - length_h / 2.0).clamp(0.0, 24.0 - length_h);
    let mut hour_h = 0.0;
    for hour in &mut hours {
        let overlap_h = (from_h + length_h).min(hour_h + 1.0) - from_h.max(hour_h);
        *hour = overlap_h.max(0.0) * most_mm;
        hour_h += 1.0;
    }
    hours
}

#[cfg(test)]
mod tests {
    use jiff::civil::date;

    use super::*;

    const PLACE: Place = Place {
        latitude_deg: 52.5,
        longitude_deg: 13.4,
        elevation_m: 40.0,
        setting: Setting::Between,
    };

    const DAY: WeatherDay = WeatherDay {
        minimum_c: 8.0,
        maximum_c: 19.0,
        dew_point_c: None,
        rain_mm: 0.0,
        wind_m_s: 3.0,
        radiation_mj: None,
        rain_middle_h: None,
    };

    #[test]
    fn rain_is_kept_to_the_drop() {
        for rain_mm in [0.0, 0.1, 0.5, 1.0, 2.3, 12.0, 23.99, 24.0, 31.0, 400.0] {
            for middle_h in [0.0, 3.3, 12.0, 23.9] {
                let hours = rain_of_day(rain_mm, middle_h);
                let sum: f64 = hours.iter().sum();
                assert!(
                    (sum - rain_mm).abs() < 1e-9,
                    "{rain_mm} at {middle_h}: {sum}"
                );
                let most = hours.iter().copied().fold(0.0, f64::max);
                assert!(most <= RAIN_OF_A_WET_HOUR_MM.max(rain_mm / 24.0) + 1e-12);
            }
        }
    }

    #[test]
    fn a_day_keeps_its_extremes_its_energy_and_its_dew_point() {
        let days = [WeatherDay {
            radiation_mj: Some(21.0),
            ..DAY
        }; 5];
        let series = hours_of_days(&PLACE, date(2024, 6, 1), &days).unwrap();
        assert_eq!(series.start_ms, 1_717_196_400_000, "2024-05-31T23:00Z");
        assert_eq!(series.hours.len(), 120);
        for day in series.hours.chunks(24) {
            let energy_mj: f64 = day.iter().map(|hour| hour.solar_w_m2).sum::<f64>() / W_PER_MJ_H;
            assert!((energy_mj - 21.0).abs() < 1e-9);
            let temperatures = day.iter().map(|hour| hour.air_temperature_c);
            let most = temperatures.clone().fold(f64::MIN, f64::max);
            let least = temperatures.fold(f64::MAX, f64::min);
            assert!(most <= 19.0 && most > 18.85, "{most}");
            assert!((8.0..8.2).contains(&least), "{least}");
            assert!(day.iter().any(|hour| hour.relative_humidity > 0.98));
            assert!(day[13].relative_humidity < 0.6);
        }
    }

    #[test]
    fn impossible_times_are_refused() {
        assert_eq!(
            hours_of_days(&PLACE, date(1899, 12, 31), &[DAY]),
            Err(OutOfTime)
        );
        assert_eq!(
            hours_of_days(&PLACE, date(2199, 12, 31), &[DAY; 2]),
            Err(OutOfTime)
        );
        assert_eq!(
            hours_of_days(&PLACE, date(2000, 1, 1), &vec![DAY; 20_000]),
            Err(OutOfTime)
        );
        assert_eq!(
            hours_of_days(&PLACE, date(2000, 1, 1), &[])
                .unwrap()
                .hours
                .len(),
            0
        );
    }
}
