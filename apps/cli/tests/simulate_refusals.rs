//! Case files that cannot be used: exit code 2, nothing on standard output, one sentence on standard
//! error that names the field.

#![allow(clippy::unwrap_used)]

mod support;

use serde_json::{Value, json};
use support::run_with;

/// A sound case with one place set to something else; `null` takes it out.
fn with(place: &str, value: Value) -> String {
    let mut case = json!({
        "start": "2026-05-01T00:00:00Z", "days": 3, "every_h": 12, "model": "lumped",
        "enclosure": { "shape": "box", "width_m": 1, "height_m": 1 },
        "weather": { "constant": { "air_temperature_c": 15 } },
        "events": [{ "day": 0, "feed": [{ "material": "straw_wheat", "amount": "30 kg" }] }]
    });
    let (parent, last) = place.rsplit_once('/').unwrap();
    let into = case.pointer_mut(parent).unwrap();
    if value.is_null() {
        into.as_object_mut().unwrap().remove(last);
    } else if let Ok(index) = last.parse::<usize>() {
        let list = into.as_array_mut().unwrap();
        if index < list.len() {
            list[index] = value;
        } else {
            list.push(value);
        }
    } else {
        into[last] = value;
    }
    case.to_string()
}

fn assert_refused(text: &str, words: &[&str]) {
    let ran = run_with(&["simulate", "--json", "--file", "-"], text.as_bytes());
    let shown: String = text.chars().take(300).collect();
    assert_eq!(ran.code, 2, "{shown}: {}", ran.err);
    assert!(ran.out.is_empty(), "{shown}");
    assert!(
        ran.err.ends_with('\n') && ran.err.lines().count() == 1 && ran.err.len() > 30,
        "{shown}: {}",
        ran.err
    );
    for word in words {
        assert!(
            ran.err.contains(word),
            "{shown}: no \"{word}\" in: {}",
            ran.err
        );
    }
}

#[test]
#[rustfmt::skip] // a table
fn bad_cases_are_refused_with_their_field() {
    let part = |fields: Value| {
        let mut part = json!({ "material": "straw_wheat", "amount": "30 kg" });
        for (name, value) in fields.as_object().unwrap() {
            part[name] = value.clone();
        }
        part
    };
    let refused: Vec<(String, &[&str])> = vec![
        (String::new(), &["JSON"]),
        ("[]".to_owned(), &["JSON", "object"]),
        ("{\"start\":".to_owned(), &["start"]),
        (with("/start", Value::Null), &["start", "missing"]),
        (with("/start", json!("2026-05-01")), &["start", "offset"]),
        (with("/start", json!("2025-02-29T00:00:00Z")), &["start", "offset"]),
        (with("/start", json!(3)), &["start", "text"]),
        (with("/days", json!(0)), &["days", "3660"]),
        (with("/days", json!(-1)), &["days", "-1"]),
        (with("/days", json!(3661)), &["days", "3660"]),
        (with("/days", json!("ten")), &["days", "number"]),
        (with("/every_h", json!(0)), &["every_h", "0.05"]),
        (with("/every_h", json!(1000)), &["every_h", "720"]),
        (with("/model", json!("magic")), &["model", "magic"]),
        (with("/layers", json!(4)), &["layers", "spatial"]),
        (with("/layers", json!(2.5)), &["layers", "whole number"]),
        (with("/rings", json!(-1)), &["rings", "whole number"]),
        (with("/rings", json!(21)), &["rings", "20"]),
        (with("/colour", json!("green")), &["colour", "unknown field"]),
        (with("/enclosure", json!({ "height_m": 1 })), &["enclosure", "width_m", "missing"]),
        (with("/enclosure", json!(["box", 1, 1, 1])), &["enclosure", "object"]),
        (with("/enclosure/width_m", json!(0)), &["enclosure.width_m", "0.05"]),
        (with("/enclosure/height_m", json!(21)), &["enclosure.height_m", "10"]),
        (with("/enclosure/depth_m", json!(-1)), &["enclosure.depth_m"]),
        (with("/enclosure/shape", json!("sphere")), &["enclosure.shape", "sphere"]),
        (with("/enclosure/wall", json!("glass")), &["enclosure.wall", "glass"]),
        (with("/enclosure/cover", json!(true)), &["enclosure.cover"]),
        (with("/enclosure/heat_loss_w_per_k", json!(-0.1)), &["enclosure.heat_loss_w_per_k"]),
        (with("/enclosure/forced_air_kg_per_d", json!("much")), &["forced_air_kg_per_d", "number"]),
        (with("/weather", json!({})), &["weather", "exactly one"]),
        (with("/weather", json!({ "constant": { "air_temperature_c": 1 }, "csv": "x.csv" })), &["weather", "exactly one"]),
        (with("/weather", json!({ "csv": "nowhere.csv" })), &["weather.csv", "nowhere.csv"]),
        (with("/weather", json!({ "hours": [{ "air_temperature_c": 10 }] })), &["weather.hours", "72"]),
        (with("/weather", json!({ "climate": { "latitude_deg": 95 } })), &["weather.climate", "latitude"]),
        (with("/weather", json!({ "climate": { "latitude_deg": 50, "months_c": [1, 2, 3] } })), &["months_c", "twelve"]),
        (with("/weather", json!({ "climate": { "latitude_deg": 50, "coldest_month_c": 20, "warmest_month_c": 0 } })), &["weather.climate"]),
        (with("/weather/constant", json!({})), &["weather.constant", "air_temperature_c"]),
        (with("/weather/constant/air_temperature_c", json!(75)), &["weather.constant.air_temperature_c", "60"]),
        (with("/weather/constant/relative_humidity", json!(70)), &["weather.constant.relative_humidity", "between 0 and 1"]),
        (with("/weather/constant/rain_mm_per_d", json!(-1)), &["weather.constant.rain_mm_per_d"]),
        (with("/events", json!([])), &["events", "add a feed"]),
        (with("/events", json!([{ "day": 1, "turn": {} }])), &["events", "add a feed"]),
        (with("/events/0/day", json!(-1)), &["events[0].day"]),
        (with("/events/0/feed", json!([])), &["events[0].feed", "empty"]),
        (with("/events/0/turn", json!({})), &["events[0]", "exactly one"]),
        (with("/events/0/temperature_c", json!(95)), &["events[0].temperature_c", "90"]),
        (with("/events/0/water_l", json!(-5)), &["events[0].water_l"]),
        (with("/events/1", json!({ "day": 1 })), &["events[1]", "exactly one"]),
        (with("/events/1", json!({ "day": 1, "temperature_c": 5, "water_l": 3 })), &["events[1].temperature_c", "feed"]),
        (with("/events/1", json!({ "day": 1, "turn": { "thoroughness": 2 } })), &["events[1].turn.thoroughness"]),
        (with("/events/1", json!({ "day": 1, "turn": true })), &["events[1].turn", "object"]),
        (with("/events/1", json!({ "day": 1, "cover": "hat" })), &["events[1].cover", "hat"]),
        (with("/events/1", json!({ "day": 1, "cover": "lid", "water_l": 3 })), &["events[1].water_l", "own"]),
        (with("/events/1", json!({ "day": 1, "remove": { "share_pct": 100 } })), &["events[1].remove.share_pct", "95"]),
        (with("/events/1", json!({ "day": 1, "dance": {} })), &["dance", "unknown field"]),
        (with("/events/0/feed/0", json!({ "amount": "1 kg" })), &["events[0].feed[0]", "material or custom"]),
        (with("/events/0/feed/0", json!({ "material": "unobtainium", "amount": "1 kg" })), &["events[0].feed[0].material", "unobtainium"]),
        (with("/events/0/feed/0", part(json!({ "amount": "lots" }))), &["events[0].feed[0].amount"]),
        (with("/events/0/feed/0", part(json!({ "particle_mm": 0 }))), &["events[0].feed[0].particle_mm"]),
        (with("/events/0/feed/0", part(json!({ "rapid_fraction_vs": 60 }))), &["events[0].feed[0].rapid_fraction_vs", "between 0 and 1"]),
        (with("/events/0/feed/0", part(json!({ "rapid_fraction_vs": 0.6, "slow_fraction_vs": 0.6 }))), &["events[0].feed[0].rapid_fraction_vs", "1.200"]),
        (with("/events/0/feed/0", part(json!({ "moisture_pct": 120 }))), &["events[0].feed[0]", "moisture_pct"]),
        (with("/events/0/feed/0", part(json!({ "amount": "5000 t" }))), &["events[0].feed"]),
        (with("/ensemble", json!({ "members": 0 })), &["ensemble.members", "1000"]),
        (with("/ensemble", json!({ "members": 1001 })), &["ensemble.members", "1000"]),
        (with("/ensemble", json!({ "members": 5, "seed": -1 })), &["ensemble.seed", "whole number"]),
        (with("/fields_at_d", json!([9])), &["fields_at_d[0]", "between 0 and 3"]),
        (with("/garden", json!({ "measures": 5 })), &["garden"]),
    ];
    assert!(refused.len() >= 60);
    for (text, words) in &refused {
        assert_refused(text, words);
    }
}

#[test]
fn cases_that_are_too_much_are_refused() {
    let feed = json!([{ "material": "straw_wheat", "amount": "1 kg" }]);
    let many = |count: usize| -> Value {
        (0..count)
            .map(|_| json!({ "day": 0, "feed": feed }))
            .collect()
    };
    assert_refused(&with("/events", many(5001)), &["events", "5000"]);
    let long = with("/events", many(1)) + &" ".repeat(4 << 20);
    assert_refused(&long, &["4194304"]);
    let mut case: Value = serde_json::from_str(&with("/every_h", json!(0.05))).unwrap();
    case["days"] = json!(3000);
    assert_refused(&case.to_string(), &["every_h", "100000"]);
    case["every_h"] = json!(24);
    case["model"] = json!("spatial");
    case["ensemble"] = json!({ "members": 1000 });
    assert_refused(&case.to_string(), &["ensemble.members", "too long"]);
}

#[test]
fn a_heap_of_which_nothing_is_left_is_answered() {
    // Of thirty kilograms less than an atom's worth would be left.
    let mut case: Value = serde_json::from_str(&with("/every_h", json!(12))).unwrap();
    let events = case["events"].as_array_mut().unwrap();
    events.extend((0..12).map(|_| json!({ "day": 1, "remove": { "share_pct": 95 } })));
    let text = case.to_string();
    let ran = run_with(&["simulate", "--json", "--file", "-"], text.as_bytes());
    assert_eq!(ran.code, 0, "{}", ran.err);
    let answer: Value = serde_json::from_str(&ran.out).unwrap();
    assert_eq!(answer["time_d"].as_array().unwrap().len(), 7);
    assert_eq!(answer["volume_m3"][6], 0.0);
    assert_eq!(answer["core_temperature_c"][6], 15.0);
    // Told in words and drawn, too.
    for more in [
        &["--csv"][..],
        &["--svg", "core"],
        &["--svg", "air", "--at-day", "2"],
        &[],
    ] {
        let all: Vec<&str> = ["simulate", "--file", "-"]
            .into_iter()
            .chain(more.iter().copied())
            .collect();
        let ran = run_with(&all, text.as_bytes());
        assert_eq!(ran.code, 0, "{more:?} {}", ran.err);
        assert!(!ran.out.contains("NaN"), "{more:?}: {}", ran.out);
    }
}
