//! Weather that was measured: does it read well, and how near does what we make come to it?
//!
//! The files are open data kept beside the project; where they are absent the checks are skipped
//! and say so.

// Measurements and what was skipped are said.
#![allow(clippy::print_stdout, clippy::unwrap_used)]

use std::path::Path;

use heapwright_weather::air::relative_humidity;
use heapwright_weather::sun::hours_of_day_mj;
use heapwright_weather::{
    Climate, Overrides, Place, ReadWeather, Reading, Setting, WeatherDay, hours_of_days, read,
};
use jiff::civil::{Date, date};
use jiff::tz::{Offset, TimeZone};

const GREENSBORO: Place = Place {
    latitude_deg: 36.1,
    longitude_deg: -79.95,
    elevation_m: 270.0,
    setting: Setting::Between,
};
const NEW_YORK: Place = Place {
    latitude_deg: 40.64,
    longitude_deg: -73.76,
    elevation_m: 4.0,
    setting: Setting::Between,
};
const SEATTLE: Place = Place {
    latitude_deg: 47.45,
    longitude_deg: -122.31,
    elevation_m: 130.0,
    setting: Setting::Coast,
};

fn bytes(name: &str) -> Option<Vec<u8>> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../../shared/reference/data")
        .join(name);
    let found = std::fs::read(path).ok();
    if found.is_none() {
        println!("skipped: {name} is not here");
    }
    found
}

fn say(sentence: &str) {
    println!("{sentence}");
}

fn read_at(bytes: &[u8], place: Place, clock: TimeZone, station: Option<&str>) -> ReadWeather {
    let climate = Climate::new(place, &Overrides::default()).unwrap();
    let reading = Reading {
        clock,
        station,
        ..Reading::new(&climate)
    };
    read(bytes, &reading).unwrap()
}

fn hours_from_utc(hours: i8) -> TimeZone {
    TimeZone::fixed(Offset::constant(hours))
}

/// Mean and root of the mean square of differences.
fn bias_and_spread(differences: &[f64]) -> (f64, f64) {
    let count = f64::from(u32::try_from(differences.len()).unwrap());
    let squares: f64 = differences.iter().map(|value| value * value).sum();
    (
        differences.iter().sum::<f64>() / count,
        (squares / count).sqrt(),
    )
}

/// The columns of a file by name, for comparison.
fn column(bytes: &[u8], name: &str) -> Vec<Option<f64>> {
    let mut reader = csv::Reader::from_reader(bytes);
    let index = reader
        .headers()
        .unwrap()
        .iter()
        .position(|header| header == name)
        .unwrap();
    reader
        .records()
        .map(|record| record.unwrap()[index].parse().ok())
        .collect()
}

#[test]
fn the_typical_year_of_greensboro() {
    let Some(bytes) = bytes("weather_greensboro_tmy3_hourly_nrel.csv") else {
        return;
    };
    let found = read_at(&bytes, GREENSBORO, hours_from_utc(-5), None);
    let hours = &found.series.hours;
    assert_eq!(hours.len(), 8760);
    assert!(found.report.typical_year.is_some());
    assert_eq!(found.report.duplicates, 0);
    assert_eq!(
        found.report.temperature,
        heapwright_weather::Filled::default()
    );
    assert_eq!(found.report.rain.usual, 8760, "the file has no rain");

    let temperatures = column(&bytes, "temperature_c");
    let dew_points = column(&bytes, "dewpoint_c");
    let sun = column(&bytes, "ghi_w_per_m2");
    for (hour, (temperature, sun)) in hours.iter().zip(temperatures.iter().zip(&sun)) {
        assert!((hour.air_temperature_c - temperature.unwrap()).abs() < 1e-9);
        assert!((hour.solar_w_m2 - sun.unwrap()).abs() < 1e-9);
    }
    // The file's own dew point and humidity through our formula, in points of humidity.
    let differences: Vec<f64> = hours
        .iter()
        .zip(temperatures.iter().zip(&dew_points))
        .map(|(hour, (air, dew))| {
            100.0 * (relative_humidity(air.unwrap(), dew.unwrap()) - hour.relative_humidity)
        })
        .collect();
    let (bias, spread) = bias_and_spread(&differences);
    say(&format!(
        "humidity from dew points: bias {bias:.2}, spread {spread:.2} points"
    ));
    // Both temperatures are rounded, many to whole degrees F: each by 0.16 K, or a point of humidity.
    assert!(bias.abs() < 0.5 && spread < 1.4);

    sun_is_at_its_place(&found);
    radiation_by_range(&found);
}

/// No hour has more sun than falls in above the air, and by an hour's shift many would have.
fn sun_is_at_its_place(found: &ReadWeather) {
    let excess = |shift: usize| {
        let mut sum = 0.0;
        let mut day = date(2023, 1, 1);
        for hours in found.series.hours.chunks(24) {
            let above = hours_of_day_mj(&GREENSBORO, day.day_of_year());
            for (hour, weather) in hours.iter().enumerate() {
                let above_w = above[(hour + shift) % 24] * 1e6 / 3600.0;
                sum += (weather.solar_w_m2 - above_w).max(0.0);
            }
            day = day.tomorrow().unwrap();
        }
        sum
    };
    let (right, early, late) = (excess(0), excess(23), excess(1));
    say(&format!(
        "sun above what falls in: {right:.0} Wh/m2 a year; an hour off {early:.0} and {late:.0}"
    ));
    assert!(right < 500.0 && early > 10.0 * right && late > 10.0 * right);
}

/// Radiation by the range of the temperature against the file's, day by day.
fn radiation_by_range(found: &ReadWeather) {
    let mut day = date(2023, 1, 1);
    let mut differences = Vec::new();
    let mut measured_sum = 0.0;
    for hours in found.series.hours.chunks(24) {
        let temperatures = || hours.iter().map(|hour| hour.air_temperature_c);
        let made = WeatherDay {
            minimum_c: temperatures().fold(f64::MAX, f64::min),
            maximum_c: temperatures().fold(f64::MIN, f64::max),
            dew_point_c: None,
            rain_mm: 0.0,
            wind_m_s: 0.0,
            radiation_mj: None,
            rain_middle_h: None,
        };
        let made = hours_of_days(&GREENSBORO, day, &[made]).unwrap();
        let energy = |hours: &[heapwright_weather::WeatherHour]| {
            hours.iter().map(|hour| hour.solar_w_m2).sum::<f64>() * 0.0036
        };
        differences.push(energy(&made.hours) - energy(hours));
        measured_sum += energy(hours);
        day = day.tomorrow().unwrap();
    }
    let (bias, spread) = bias_and_spread(&differences);
    say(&format!(
        "radiation by range: bias {bias:.2}, spread {spread:.2} MJ/m2 a day, of {:.2} on the mean",
        measured_sum / 365.0
    ));
    assert!(bias.abs() < 2.0 && spread < 5.0);
}

#[test]
fn a_year_at_new_york_and_the_curve_through_its_days() {
    let Some(bytes) = bytes("weather_jfk_hourly_2013_cc0.csv") else {
        return;
    };
    let found = read_at(&bytes, NEW_YORK, TimeZone::UTC, None);
    let hours = &found.series.hours;
    let missing = hours.len() - found.report.rows + found.report.duplicates;
    say(&format!(
        "{} hours, {missing} without a row: {:?}",
        hours.len(),
        found.report.temperature
    ));
    assert_eq!(found.report.rows, 8706);
    assert_eq!(
        found.report.temperature.interpolated + found.report.temperature.usual,
        missing
    );
    let rain: f64 = hours.iter().map(|hour| hour.rain_mm).sum();
    let rain_in_file: f64 = column(&bytes, "precip_mm").iter().flatten().sum();
    assert!((rain - rain_in_file).abs() < 60.0, "{rain} {rain_in_file}");

    // From local midnight on, the days' extremes through our curve against the hours.
    let skipped =
        usize::try_from((24 - (found.series.start_ms / 3_600_000 - 5).rem_euclid(24)) % 24)
            .unwrap();
    let whole: Vec<&[heapwright_weather::WeatherHour]> =
        hours[skipped..].chunks_exact(24).collect();
    let days: Vec<WeatherDay> = whole
        .iter()
        .map(|day| WeatherDay {
            minimum_c: day
                .iter()
                .map(|hour| hour.air_temperature_c)
                .fold(f64::MAX, f64::min),
            maximum_c: day
                .iter()
                .map(|hour| hour.air_temperature_c)
                .fold(f64::MIN, f64::max),
            dew_point_c: None,
            rain_mm: 0.0,
            wind_m_s: 0.0,
            radiation_mj: None,
            rain_middle_h: None,
        })
        .collect();
    let made = hours_of_days(&NEW_YORK, date(2013, 1, 2), &days).unwrap();
    let pairs = || made.hours.iter().zip(whole.concat());
    let differences: Vec<f64> = pairs()
        .map(|(made, seen)| made.air_temperature_c - seen.air_temperature_c)
        .collect();
    let (bias, spread) = bias_and_spread(&differences);
    let humidity: Vec<f64> = pairs()
        .map(|(made, seen)| 100.0 * (made.relative_humidity - seen.relative_humidity))
        .collect();
    let (humidity_bias, humidity_spread) = bias_and_spread(&humidity);
    say(&format!(
        "hours from extremes: temperature bias {bias:.2}, spread {spread:.2} K; humidity {humidity_bias:.1}, {humidity_spread:.1} points"
    ));
    // A straight half of both extremes all day long is worse than the curve.
    let flat: Vec<f64> = days
        .iter()
        .zip(&whole)
        .flat_map(|(day, seen)| {
            seen.iter()
                .map(|hour| f64::midpoint(day.minimum_c, day.maximum_c) - hour.air_temperature_c)
        })
        .collect();
    let (_, flat_spread) = bias_and_spread(&flat);
    say(&format!(
        "the day's middle instead of the curve: spread {flat_spread:.2} K"
    ));
    assert!(bias.abs() < 0.7 && spread < 2.2 && spread < 0.75 * flat_spread);
    assert!(humidity_bias.abs() < 20.0 && humidity_spread < 30.0);
}

#[test]
fn four_years_of_days_at_two_cities() {
    let name = "weather_daily_seattle_newyork_2012_2015_noaa.csv";
    let Some(bytes) = bytes(name) else { return };
    for (station, place, months_c) in [
        // Mean of maximum and minimum, January to December, as the file's notes have them.
        (
            "New York",
            NEW_YORK,
            Some([
                0.5, 0.3, 5.0, 11.0, 17.0, 21.7, 25.5, 24.4, 21.0, 15.1, 8.1, 6.1,
            ]),
        ),
        ("Seattle", SEATTLE, None),
    ] {
        let found = read_at(&bytes, place, TimeZone::UTC, Some(station));
        assert_eq!(
            (found.report.rows, found.series.hours.len()),
            (1461, 1461 * 24),
            "{station}"
        );
        assert_eq!(
            found.report.temperature,
            heapwright_weather::Filled::default()
        );
        let mut middles = [(0.0, 0.0); 12];
        let mut day: Date = date(2012, 1, 1);
        for hours in found.series.hours.chunks(24) {
            let temperatures = || hours.iter().map(|hour| hour.air_temperature_c);
            let middle = f64::midpoint(
                temperatures().fold(f64::MAX, f64::min),
                temperatures().fold(f64::MIN, f64::max),
            );
            let slot = &mut middles[usize::try_from(day.month() - 1).unwrap()];
            *slot = (slot.0 + middle, slot.1 + 1.0);
            day = day.tomorrow().unwrap();
        }
        let middles = middles.map(|(sum, count)| sum / count);
        if let Some(months_c) = months_c {
            for (made, stated) in middles.iter().zip(months_c) {
                assert!((made - stated).abs() < 0.4, "{station}: {middles:?}");
            }
        }
        guess_against(station, place, middles);
    }
}

/// The rough climate against the months of a place, within thrice its stated spread.
fn guess_against(name: &str, place: Place, months_c: [f64; 12]) {
    let climate = Climate::new(place, &Overrides::default()).unwrap();
    let differences: Vec<f64> = climate
        .months()
        .iter()
        .zip(months_c)
        .map(|(guess, seen)| guess.mean_c - seen)
        .collect();
    let (bias, spread) = bias_and_spread(&differences);
    say(&format!(
        "guessed months of {name}: bias {bias:.1}, spread {spread:.1} K"
    ));
    assert!(
        differences
            .iter()
            .all(|value| value.abs() < 3.0 * heapwright_weather::SPREAD_K),
        "{differences:?}"
    );
}

#[test]
fn the_normal_hours_of_seattle() {
    let Some(bytes) = bytes("weather_seattle_hourly_normals_1981_2010_noaa.csv") else {
        return;
    };
    let found = read_at(&bytes, SEATTLE, hours_from_utc(-8), None);
    assert_eq!(found.series.hours.len(), 8759);
    assert_eq!(
        found.report.guessed_units,
        [("wind_unit_not_stated".to_owned(), "m/s")]
    );
    assert_eq!(
        (found.report.rain.usual, found.report.temperature.usual),
        (8759, 0)
    );
    // Usual weather has no clouds of its own; estimated radiation must stay sober.
    let mean = found
        .series
        .hours
        .iter()
        .map(|hour| hour.solar_w_m2)
        .sum::<f64>()
        / 8759.0;
    say(&format!("estimated radiation of Seattle: {mean:.0} W/m2"));
    assert!((110.0..190.0).contains(&mean));
}
