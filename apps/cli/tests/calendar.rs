//! Weather files as they come: with gaps, twice told and unsorted hours, offsets, ends; and the two
//! halves of the globe.

#![allow(clippy::unwrap_used)]

mod support;

use std::fs;
use std::path::Path;

use serde_json::{Value, json};
use support::{own_folder, run_with};

/// A case of five days with a table of weather beside it.
fn answer(name: &str, start: &str, rows: &[String]) -> Value {
    let folder = own_folder(&format!("calendar-{name}-{}", std::process::id()));
    let table = format!("time,temperature [degC]\n{}\n", rows.join("\n"));
    fs::write(folder.join("weather.csv"), table).unwrap();
    let case = json!({
        "start": start, "days": 5, "every_h": 6, "model": "lumped",
        "enclosure": { "width_m": 1, "height_m": 1 },
        "weather": { "csv": "weather.csv" },
        "events": [{ "day": 0, "feed": [{ "material": "straw_wheat", "amount": "30 kg" }] }]
    });
    simulated(&folder, &case)
}

fn simulated(folder: &Path, case: &Value) -> Value {
    let path = folder.join("case.json");
    fs::write(&path, case.to_string()).unwrap();
    let ran = run_with(
        &["simulate", "--json", "--file", path.to_str().unwrap()],
        b"",
    );
    assert_eq!(ran.code, 0, "{}", ran.err);
    serde_json::from_str(&ran.out).unwrap()
}

/// Hours of six days from 27 February of a leap year, each with its own temperature.
fn hours(suffix: &str) -> Vec<String> {
    ["02-27", "02-28", "02-29", "03-01", "03-02", "03-03"]
        .iter()
        .flat_map(|day| (0..24).map(move |hour| (day, hour)))
        .enumerate()
        .map(|(index, (day, hour))| {
            format!(
                "2028-{day}T{hour:02}:00{suffix},{}",
                5.0 + 0.1 * index as f64
            )
        })
        .collect()
}

fn notices(answer: &Value) -> String {
    answer["notices"].to_string()
}

#[test]
fn gaps_are_bridged_and_told() {
    let mut rows = hours("Z");
    let whole = answer("whole", "2028-02-27T00:00:00Z", &rows);
    assert!(!notices(&whole).contains("gaps"), "{}", notices(&whole));
    rows.drain(60..70);
    rows.drain(30..33);
    let found = answer("gaps", "2028-02-27T00:00:00Z", &rows);
    assert!(notices(&found).contains("13 gaps"), "{}", notices(&found));
    assert!(notices(&found).contains("six hours"), "{}", notices(&found));
    // Three hours are laid straight between their neighbours, which is what they were.
    let near = |row: usize| {
        let air = |found: &Value| found["air_temperature_c"][row].as_f64().unwrap();
        (air(&found) - air(&whole)).abs()
    };
    assert!(near(5) < 1e-9, "{}", near(5));
}

#[test]
fn unsorted_hours_are_put_in_order_and_the_later_of_two_rows_counts() {
    let rows = hours("Z");
    let whole = answer("sorted", "2028-02-27T00:00:00Z", &rows);
    let mut mixed = rows.clone();
    mixed.swap(10, 40);
    mixed.insert(0, rows[100].replace(",1", ",3"));
    let found = answer("mixed", "2028-02-27T00:00:00Z", &mixed);
    assert_eq!(found["air_temperature_c"], whole["air_temperature_c"]);
    assert!(
        notices(&found).contains("came twice: 1,"),
        "{}",
        notices(&found)
    );
}

#[test]
fn times_without_an_offset_are_those_of_the_start() {
    let own = answer("own-offset", "2028-02-27T00:00:00+05:30", &hours("+05:30"));
    let plain = answer("start-offset", "2028-02-27T00:00:00+05:30", &hours(""));
    let utc = answer("utc", "2028-02-27T00:00:00Z", &hours("Z"));
    assert_eq!(own["core_temperature_c"], plain["core_temperature_c"]);
    // The same hours of its own day; rows are put into hours of UTC, which here is half an hour
    // off, a twentieth of a degree.
    let (one, other) = (&own["air_temperature_c"][8], &utc["air_temperature_c"][8]);
    assert!((one.as_f64().unwrap() - other.as_f64().unwrap()).abs() < 0.051);
}

#[test]
fn the_leap_day_is_a_day() {
    let found = answer("leap", "2028-02-27T00:00:00Z", &hours("Z"));
    // Row 10 is noon of the 29th: hour 60, with the mean of the hours on both sides.
    let noon = found["air_temperature_c"][10].as_f64().unwrap();
    assert!((noon - 10.95).abs() < 1e-9, "{noon}");
}

#[test]
fn july_is_winter_in_the_south() {
    let folder = own_folder(&format!("calendar-south-{}", std::process::id()));
    let mean_air = |latitude: i32, start: &str| {
        let case = json!({
            "start": start, "days": 20, "model": "lumped",
            "enclosure": { "width_m": 1, "height_m": 1 },
            "weather": { "climate": { "latitude_deg": latitude } },
            "events": [{ "day": 0, "feed": [{ "material": "straw_wheat", "amount": "30 kg" }] }]
        });
        let found = simulated(&folder, &case);
        let rows = found["air_temperature_c"].as_array().unwrap();
        rows.iter().map(|air| air.as_f64().unwrap()).sum::<f64>() / rows.len() as f64
    };
    let (january, july) = ("2026-01-10T00:00:00Z", "2026-07-10T00:00:00Z");
    assert!(mean_air(45, july) > mean_air(45, january) + 8.0);
    assert!(mean_air(-45, january) > mean_air(-45, july) + 4.0);
}
