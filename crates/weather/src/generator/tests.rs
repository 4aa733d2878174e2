//! Does drawn weather have the moments that it is drawn with, and the same draws every time?

use super::*;
use crate::climate::Overrides;
use crate::place::Place;

const YEAR_HOURS: usize = 365 * 24;
/// 2025-01-01T00:00Z.
const START_MS: i64 = 1_735_689_600_000;

fn climate(latitude_deg: f64) -> Climate {
    let place = Place {
        latitude_deg,
        longitude_deg: 0.0,
        elevation_m: 100.0,
        setting: Setting::Between,
    };
    Climate::new(place, &Overrides::default()).unwrap()
}

fn draw(climate: &Climate, hours: usize, seed: u64, member: u32) -> Series {
    forecast(&Forecast {
        climate,
        start_ms: START_MS,
        hours,
        seed,
        member,
        known: None,
    })
    .unwrap()
}

#[test]
fn the_same_member_is_the_same_and_longer_begins_with_shorter() {
    let climate = climate(50.0);
    let year = draw(&climate, YEAR_HOURS, 7, 0);
    assert_eq!(year, draw(&climate, YEAR_HOURS, 7, 0));
    assert_eq!(year.hours[..240], draw(&climate, 240, 7, 0).hours[..]);
    assert_ne!(year, draw(&climate, YEAR_HOURS, 7, 1));
    assert_ne!(year, draw(&climate, YEAR_HOURS, 8, 0));
}

#[test]
fn an_ensemble_keeps_the_usual_weather() {
    for latitude_deg in [50.0, -35.0, 3.0] {
        let climate = climate(latitude_deg);
        let usual = climate.hours(START_MS, YEAR_HOURS).unwrap();
        let members: Vec<Series> = (0..60)
            .map(|member| draw(&climate, YEAR_HOURS, 3, member))
            .collect();
        let mean = |of: fn(&WeatherHour) -> f64, series: &Series| {
            series.hours.iter().map(of).sum::<f64>() / 8760.0
        };
        let ensemble = |of: fn(&WeatherHour) -> f64| {
            members.iter().map(|series| mean(of, series)).sum::<f64>() / 60.0
        };
        let warmth = ensemble(|hour| hour.air_temperature_c);
        let usual_warmth = mean(|hour| hour.air_temperature_c, &usual);
        // A year's mean of a process with 3.7 K and 0.7 spreads by 0.46 K; of 60 by 0.06 K.
        assert!(
            (warmth - usual_warmth).abs() < 0.25,
            "{latitude_deg}: {warmth} {usual_warmth}"
        );
        let rain = ensemble(|hour| hour.rain_mm) * 8760.0;
        let usual_rain = mean(|hour| hour.rain_mm, &usual) * 8760.0;
        assert!(
            (rain / usual_rain - 1.0).abs() < 0.05,
            "{latitude_deg}: {rain} {usual_rain}"
        );
        let wind = ensemble(|hour| hour.wind_m_s) / mean(|hour| hour.wind_m_s, &usual);
        assert!((wind - 1.0).abs() < 0.03, "{latitude_deg}: {wind}");
        let humidity = ensemble(|hour| hour.relative_humidity);
        let usual_humidity = mean(|hour| hour.relative_humidity, &usual);
        assert!(
            (humidity - usual_humidity).abs() < 0.05,
            "{humidity} {usual_humidity}"
        );
        let sun = ensemble(|hour| hour.solar_w_m2) / mean(|hour| hour.solar_w_m2, &usual);
        assert!((sun - 1.0).abs() < 0.06, "{latitude_deg}: {sun}");
    }
}

#[test]
fn departures_persist_as_stated() {
    let climate = climate(50.0);
    let (mut variance, mut together, mut count) = (0.0, 0.0, 0.0);
    let usual = climate.hours(START_MS, YEAR_HOURS).unwrap();
    for member in 0..40 {
        let series = draw(&climate, YEAR_HOURS, 11, member);
        let departures: Vec<f64> = series
            .hours
            .chunks(24)
            .zip(usual.hours.chunks(24))
            .map(|(drawn, usual)| {
                let difference =
                    |hour: usize| drawn[hour].air_temperature_c - usual[hour].air_temperature_c;
                (0..24).map(difference).sum::<f64>() / 24.0
            })
            .collect();
        for pair in departures.windows(2) {
            variance += pair[0] * pair[0];
            together += pair[0] * pair[1];
            count += 1.0;
        }
    }
    let correlation = together / variance;
    // A day's mean shares its nights with the neighbours, which makes it somewhat more alike.
    assert!((correlation - PERSISTENCE).abs() < 0.08, "{correlation}");
    let spread = sqrt(variance / count);
    assert!((spread - 3.7).abs() < 0.5, "{spread}");
}

#[test]
fn wet_days_come_in_runs() {
    let wet = 0.3;
    let (after_wet, after_dry) = (chance_of_rain(wet, true), chance_of_rain(wet, false));
    assert!((wet * after_wet + (1.0 - wet) * after_dry - wet).abs() < 1e-12);
    assert!(after_wet > after_dry);
}

#[test]
fn the_first_days_lean_on_what_is_known() {
    let climate = climate(50.0);
    let mut known = climate.hours(START_MS - 48 * HOUR_MS, 48).unwrap();
    for hour in &mut known.hours {
        hour.air_temperature_c += 9.0;
    }
    let usual = climate.hours(START_MS, 24 * 30).unwrap();
    let mut first = 0.0;
    let mut last = 0.0;
    for member in 0..80 {
        let series = forecast(&Forecast {
            climate: &climate,
            start_ms: START_MS,
            hours: 24 * 30,
            seed: 5,
            member,
            known: Some(&known),
        })
        .unwrap();
        let departure = |hour: usize| {
            series.hours[hour].air_temperature_c - usual.hours[hour].air_temperature_c
        };
        first += departure(14) / 80.0;
        last += departure(24 * 29 + 14) / 80.0;
        let joined = known.clone().followed_by(&series).unwrap();
        assert_eq!(joined.hours.len(), 48 + 24 * 30);
    }
    // 0.7 of 9 K, and nothing after a month; a mean of 80 spreads by 0.4 K.
    assert!((first - 6.3).abs() < 1.5, "{first}");
    assert!(last.abs() < 1.5, "{last}");
}
