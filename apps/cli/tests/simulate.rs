//! Heaps that files describe: every example runs and is of its schema, the books close, long,
//! much-fed and absurd cases end in figures, and the same question has the same answer.

#![allow(clippy::unwrap_used)]

mod support;

use std::fs;
use std::path::PathBuf;
use std::time::Instant;

use jsonschema::Validator;
use serde_json::{Value, json};
use support::{Ran, answer, of_repository, own_folder, run_with};

fn schema(name: &str) -> Validator {
    let path = of_repository(&format!("crates/wire/schemas/{name}.json"));
    let schema: Value = serde_json::from_str(&fs::read_to_string(path).unwrap()).unwrap();
    jsonschema::validator_for(&schema).unwrap()
}

fn assert_valid(validator: &Validator, value: &Value, what: &str) {
    let faults: Vec<String> = validator
        .iter_errors(value)
        .map(|fault| format!("{}: {fault}", fault.instance_path()))
        .collect();
    assert!(faults.is_empty(), "{what}:\n{}", faults.join("\n"));
}

fn simulated(case: &Value) -> Ran {
    run_with(
        &["simulate", "--json", "--file", "-"],
        case.to_string().as_bytes(),
    )
}

fn answered(case: &Value) -> Value {
    let ran = simulated(case);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""), "{case}");
    serde_json::from_str(&ran.out).unwrap()
}

/// A small case; `change` makes it another.
fn case(change: impl FnOnce(&mut Value)) -> Value {
    let mut case = json!({
        "start": "2026-05-01T00:00:00Z", "days": 5, "every_h": 12, "model": "lumped",
        "enclosure": { "shape": "box", "width_m": 0.8, "height_m": 0.8, "wall": "slatted" },
        "weather": { "constant": { "air_temperature_c": 15 } },
        "events": [{ "day": 0, "feed": [
            { "material": "grass_clippings_fresh", "amount": "60 kg" },
            { "material": "leaves_shredded_dry", "amount": "40 kg" }
        ], "water_l": 20 }]
    });
    change(&mut case);
    case
}

fn numbers<'a>(value: &'a Value, name: &str) -> Vec<f64> {
    let list: &'a Vec<Value> = value[name].as_array().unwrap();
    list.iter().map(|one| one.as_f64().unwrap()).collect()
}

/// How closely the books must close over any run.
const CLOSES: f64 = 1e-8;

/// No figure is missing where one must be, masses are above nothing, the books close.
fn assert_sound(found: &Value, what: &str, closes: f64) {
    for name in [
        "core_temperature_c",
        "mean_temperature_c",
        "edge_temperature_c",
    ] {
        let values = numbers(found, name);
        assert!(!values.is_empty(), "{what}: no {name}");
        // What freezes and dries is a little colder than the coldest air that is taken.
        assert!(
            values.iter().all(|value| (-75.0..=100.0).contains(value)),
            "{what}: {name} {values:?}"
        );
    }
    for name in ["volume_m3", "wet_mass_kg", "dry_mass_kg", "moisture_pct"] {
        assert!(
            numbers(found, name).iter().all(|value| *value >= 0.0),
            "{what}: {name} below nothing"
        );
    }
    let oxygen = numbers(found, "lowest_oxygen_pct");
    assert!(
        oxygen.iter().all(|value| (0.0..=21.0).contains(value)),
        "{what}"
    );
    for book in ["carbon", "nitrogen", "water", "ash", "energy"] {
        let error = found["closure"][book].as_f64().unwrap();
        assert!(error <= closes, "{what}: {book} closes to {error}");
    }
}

#[test]
fn examples_of_cases_are_answered() {
    let (question, answers) = (schema("simulation-question"), schema("simulation-answer"));
    let mut files: Vec<PathBuf> = fs::read_dir(of_repository("crates/wire/examples"))
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.to_str().unwrap().contains("simulate-"))
        .collect();
    files.sort();
    assert!(files.len() >= 12, "{files:?}");
    for path in files {
        let name = path.display().to_string();
        let case: Value = serde_json::from_str(&fs::read_to_string(&path).unwrap()).unwrap();
        assert_valid(&question, &case, &name);
        let found: Value =
            serde_json::from_str(&answer(&["simulate", "--json", "--file", &name])).unwrap();
        assert_valid(&answers, &found, &format!("the answer to {name}"));
        assert_sound(&found, &name, CLOSES);
        let asked = case["fields_at_d"].as_array().map_or(0, Vec::len);
        let given = found["fields"].as_array().map_or(0, Vec::len);
        assert_eq!(asked, given, "{name}");
        let text = answer(&["simulate", "--file", &name, "--members", "0"]);
        assert!(text.contains("The core is warmest with"), "{name}: {text}");
        assert!(text.contains("cannot tell hygiene"), "{name}");
        assert!(!text.to_lowercase().contains("safe"), "{name}");
    }
}

#[test]
fn the_same_case_has_the_same_answer() {
    let case = case(|case| case["ensemble"] = json!({ "members": 8 }));
    assert_eq!(simulated(&case).out, simulated(&case).out);
    let found = answered(&case);
    assert_eq!(found["ensemble"]["members"], 8);
    let other = answered(&case_with_seed(8, 7));
    assert_ne!(found["ensemble"], other["ensemble"]);
}

fn case_with_seed(members: u32, seed: u32) -> Value {
    case(|case| case["ensemble"] = json!({ "members": members, "seed": seed }))
}

#[test]
fn bands_lie_in_order_around_each_other() {
    let found = answered(&case(|case| case["ensemble"] = json!({ "members": 20 })));
    let bands = found["bands"]["core_temperature_c"].as_array().unwrap();
    assert_eq!(
        bands.len(),
        found["bands"]["time_d"].as_array().unwrap().len()
    );
    for band in bands {
        let at = |name: &str| band[name].as_f64().unwrap();
        assert!(at("low") <= at("lower") && at("lower") <= at("median"));
        assert!(at("median") <= at("upper") && at("upper") <= at("high"));
    }
}

#[test]
fn order_in_the_file_does_not_matter_but_on_one_day() {
    let forward = case(|case| {
        let events = case["events"].as_array_mut().unwrap();
        events.push(json!({ "day": 2, "turn": {} }));
        events.push(json!({ "day": 3, "water_l": 10 }));
    });
    let mut backward = forward.clone();
    backward["events"].as_array_mut().unwrap().reverse();
    assert_eq!(simulated(&forward).out, simulated(&backward).out);
}

#[test]
fn what_lies_behind_the_end_is_left_out_and_said() {
    let found = answered(&case(|case| {
        let events = case["events"].as_array_mut().unwrap();
        events.push(json!({ "day": 50, "turn": {} }));
    }));
    let plain = answered(&case(|_| {}));
    assert_eq!(found["core_temperature_c"], plain["core_temperature_c"]);
    assert!(
        found["notices"][0]
            .as_str()
            .unwrap()
            .contains("behind the last day")
    );
}

#[test]
fn overrides_of_decay_count() {
    let with = |rapid: f64| {
        answered(&case(|case| {
            case["events"][0]["feed"][0]["rapid_fraction_vs"] = json!(rapid);
        }))["summary"]["peak_core_temperature_c"]
            .as_f64()
            .unwrap()
    };
    assert!(
        with(0.6) > with(0.1) + 2.0,
        "{} and {}",
        with(0.6),
        with(0.1)
    );
}

/// A file of weather for the days of a case, an hour a line, from 24 February 2024 on.
fn weather_file(name: &str, days: u32, gap: bool) -> PathBuf {
    let mut text = String::from("time,temperature_2m (°C),precipitation (mm)\n");
    let mut day = 24;
    let mut month = 2;
    for _ in 0..days {
        for hour in 0..24 {
            if !gap || hour != 7 {
                text.push_str(&format!(
                    "2024-{month:02}-{day:02}T{hour:02}:00,{}.5,0\n",
                    5 + hour / 4
                ));
            }
        }
        day += 1;
        // 2024 has a 29 February.
        if day == 30 {
            (day, month) = (1, 3);
        }
    }
    let path = own_folder("weather").join(name);
    fs::write(&path, text).unwrap();
    path
}

#[test]
fn weather_files_lie_beside_the_case_and_know_leap_days() {
    let weather = weather_file("leap.csv", 10, true);
    let case = case(|case| {
        case["start"] = json!("2024-02-25T06:30:00Z");
        case["weather"] = json!({ "csv": "leap.csv" });
    });
    let path = weather.with_file_name("leap.json");
    fs::write(&path, case.to_string()).unwrap();
    let found: Value = serde_json::from_str(&answer(&[
        "simulate",
        "--json",
        "--file",
        path.to_str().unwrap(),
    ]))
    .unwrap();
    assert!(found["notices"][0].as_str().unwrap().contains("gaps"));
    let air = numbers(&found, "air_temperature_c");
    // From 6:30 on every twelve hours: six and a half, and nine and a half degrees, and half an
    // hour towards the next.
    assert!((air[0] - 6.5).abs() < 0.51, "{air:?}");
    assert!((air[1] - 9.5).abs() < 0.51, "{air:?}");
    assert_eq!(air.len(), 11);
}

#[test]
fn weather_that_ends_too_soon_is_refused_or_filled() {
    let weather = weather_file("short.csv", 3, false);
    let with = |weather: Value| {
        case(|case| {
            case["start"] = json!("2024-02-24T00:00:00Z");
            case["weather"] = weather;
        })
    };
    let path = weather.with_file_name("short.json");
    let file = path.to_str().unwrap();
    fs::write(&path, with(json!({ "csv": "short.csv" })).to_string()).unwrap();
    let ran = support::run(&["simulate", "--file", file]);
    assert_eq!(ran.code, 2);
    assert!(ran.err.contains("2024-02-27"), "{}", ran.err);
    let filled = with(json!({ "csv": "short.csv", "climate": { "latitude_deg": 50 } }));
    fs::write(&path, filled.to_string()).unwrap();
    let text = answer(&["simulate", "--file", file]);
    assert!(
        text.contains("48 hours") || text.contains("2 days"),
        "{text}"
    );
}

#[test]
fn a_start_elsewhere_on_earth_is_the_same_instant() {
    let with = |start: &str| {
        case(|case| {
            case["start"] = json!(start);
            case["weather"] = json!({ "climate": { "latitude_deg": 48 } });
        })
    };
    assert_eq!(
        simulated(&with("2024-02-29T23:30:00Z")).out,
        simulated(&with("2024-03-01T05:15:00+05:45")).out
    );
}

/// Absurd but valid: a figure comes of it, and it is a number.
#[test]
fn absurd_cases_end_in_figures() {
    let feed = |case: &mut Value, parts: Value| case["events"][0]["feed"] = parts;
    let cases: Vec<(&str, Value)> = vec![
        (
            "a gram",
            case(|case| {
                feed(
                    case,
                    json!([{ "material": "straw_wheat", "amount": "1 g" }]),
                )
            }),
        ),
        (
            "a hill of straw",
            case(|case| {
                feed(
                    case,
                    json!([{ "material": "straw_wheat", "amount": "90 t" }]),
                )
            }),
        ),
        (
            "urea alone",
            case(|case| feed(case, json!([{ "material": "urea", "amount": "10 kg" }]))),
        ),
        (
            "sugar alone",
            case(|case| feed(case, json!([{ "material": "sugar", "amount": "50 kg" }]))),
        ),
        (
            "oil alone",
            case(|case| {
                feed(
                    case,
                    json!([{ "material": "cooking_oil", "amount": "50 kg" }]),
                )
            }),
        ),
        (
            "stone alone",
            case(|case| {
                feed(
                    case,
                    json!([{ "material": "lime_ground_limestone", "amount": "50 kg" }]),
                )
            }),
        ),
        (
            "sap",
            case(|case| {
                feed(
                    case,
                    json!([{ "custom": { "name": "sap", "moisture_pct": 99.9, "nitrogen_pct_dry": 5, "cn_ratio": 5 }, "amount": "100 kg" }]),
                )
            }),
        ),
        (
            "flooded",
            case(|case| case["events"][0]["water_l"] = json!(50_000)),
        ),
        (
            "cloudburst",
            case(|case| case["weather"]["constant"]["rain_mm_per_d"] = json!(2000)),
        ),
        (
            "arctic",
            case(|case| case["weather"]["constant"]["air_temperature_c"] = json!(-60)),
        ),
        (
            "desert",
            case(
                |case| case["weather"]["constant"] = json!({ "air_temperature_c": 55, "relative_humidity": 0, "wind_m_s": 60, "solar_w_m2": 1400, "cloud_cover": 0 }),
            ),
        ),
        (
            "hot feed",
            case(|case| {
                case["model"] = json!("spatial");
                case["events"][0]["temperature_c"] = json!(90);
            }),
        ),
        (
            "matchbox",
            case(|case| case["enclosure"] = json!({ "width_m": 0.05, "height_m": 0.05 })),
        ),
        (
            "aircraft hall",
            case(|case| {
                case["enclosure"] = json!({ "width_m": 20, "depth_m": 200, "height_m": 10 })
            }),
        ),
        (
            "gale from below",
            case(|case| case["enclosure"]["forced_air_kg_per_d"] = json!(100_000)),
        ),
        (
            "no loss of heat",
            case(|case| case["enclosure"]["heat_loss_w_per_k"] = json!(0)),
        ),
        (
            "all but empty",
            case(|case| {
                case["events"]
                    .as_array_mut()
                    .unwrap()
                    .extend((0..3).map(|_| json!({ "day": 1, "remove": { "share_pct": 95 } })))
            }),
        ),
        (
            "stirred all day",
            case(|case| {
                case["events"].as_array_mut().unwrap().extend(
                    (1..100).map(|turn| json!({ "day": f64::from(turn) / 25.0, "turn": {} })),
                )
            }),
        ),
        (
            "fine grid",
            case(|case| {
                case["model"] = json!("spatial");
                case["layers"] = json!(20);
                case["rings"] = json!(12);
                case["days"] = json!(2);
            }),
        ),
        (
            "one cell of a grid",
            case(|case| {
                case["model"] = json!("spatial");
                case["layers"] = json!(1);
                case["rings"] = json!(1);
            }),
        ),
    ];
    let mut odd = Vec::new();
    for (name, case) in cases {
        let ran = simulated(&case);
        if ran.code != 0 {
            odd.push(format!("{name}: {}", ran.err.trim()));
            continue;
        }
        let found: Value = serde_json::from_str(&ran.out).unwrap();
        // Books are held against what is fed and made. Where far more passes through a large thin
        // heap, rounding shows: the hall closes its heat to 1.1e-8 and misses the usual demand.
        assert_sound(&found, name, 10.0 * CLOSES);
    }
    assert!(odd.is_empty(), "{}", odd.join("\n"));
}

#[test]
fn hundreds_of_feeds_and_years_end_soon() {
    let feeds: Vec<Value> = (0..500)
        .map(|feed| {
            json!({ "day": f64::from(feed) * 0.7, "feed": [
                { "material": "vegetable scraps", "amount": "2 kg" },
                { "material": "shredded leaves", "amount": "0.8 kg" }
            ] })
        })
        .collect();
    let began = Instant::now();
    let found = answered(&case(|case| {
        case["days"] = json!(365);
        case["events"] = json!(feeds);
        case["model"] = json!("spatial");
        case["weather"] = json!({ "climate": { "latitude_deg": 50 } });
    }));
    assert_sound(&found, "fed five hundred times", CLOSES);
    let found = answered(&case(|case| {
        case["days"] = json!(3660);
        case["every_h"] = json!(24);
        case["weather"] = json!({ "climate": { "latitude_deg": 50 } });
    }));
    assert_eq!(numbers(&found, "time_d").len(), 3661);
    assert_sound(&found, "ten years", CLOSES);
    // A minute is far more than it takes, even on a busy computer and without optimisation.
    assert!(began.elapsed().as_secs() < 60, "{:?}", began.elapsed());
}

#[test]
fn tables_are_of_rfc_4180() {
    let ran = run_with(
        &["simulate", "--csv", "--file", "-"],
        case(|_| {}).to_string().as_bytes(),
    );
    let mut rows = ran.out.split("\r\n");
    let columns = rows.next().unwrap().split(',').count();
    let rows: Vec<&str> = rows.collect();
    assert_eq!(rows.last(), Some(&""), "the last line ends with CR LF");
    assert_eq!(rows.len() - 1, 11);
    for row in &rows[..11] {
        assert_eq!(row.split(',').count(), columns);
        assert!(
            row.split(',').all(|cell| cell.parse::<f64>().is_ok()),
            "{row}"
        );
    }
}

#[test]
fn pictures_are_whole_files() {
    let question = case(|case| case["model"] = json!("spatial"));
    for drawn in ["core", "section", "wet", "air"] {
        let ran = run_with(
            &["simulate", "--svg", drawn, "--file", "-"],
            question.to_string().as_bytes(),
        );
        assert_eq!(ran.code, 0, "{}", ran.err);
        assert!(ran.out.starts_with("<svg xmlns="), "{drawn}");
        assert!(ran.out.ends_with("</svg>\n"), "{drawn}");
        assert!(
            ran.out.contains("<style>") && !ran.out.contains("NaN"),
            "{drawn}"
        );
    }
}

#[test]
fn golden_simulate() {
    for name in ["one-cubic-metre-at-15", "dense-food-heap"] {
        let file = of_repository(&format!("crates/wire/examples/simulate-{name}.json"));
        let file = file.to_str().unwrap();
        let text = answer(&["simulate", "--file", file]);
        support::golden_text(&format!("simulate-{name}"), &text);
    }
    let file = of_repository("crates/wire/examples/simulate-bench-vessel-a.json");
    let found: Value = serde_json::from_str(&answer(&[
        "simulate",
        "--json",
        "--file",
        file.to_str().unwrap(),
    ]))
    .unwrap();
    // Rounding errors differ between computers; four digits do not.
    let mut summary = found["summary"].clone();
    for (_, value) in summary.as_object_mut().unwrap() {
        if let Some(number) = value.as_f64() {
            *value = json!(format!("{number:.2}"));
        }
    }
    let text = serde_json::to_string_pretty(&summary).unwrap() + "\n";
    support::golden_text("simulate-bench-vessel-a-summary", &text);
}
