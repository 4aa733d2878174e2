//! The schema that is kept beside the types says what the types say.
//!
//! UPDATE_SCHEMAS=1 rewrites it: look at the difference.
#![cfg(feature = "schema")]
#![allow(clippy::unwrap_used)]

use std::fs;
use std::path::Path;

use heapwright_journal::line_schema;
use serde_json::Value;

const HEADER: &str =
    r#"{"heapwright_journal":1,"events":0,"digest":"00","exported":"2026-05-01T16:00:00Z"}"#;

#[test]
fn the_schema_is_that_of_the_types() {
    let made = serde_json::to_string_pretty(&line_schema()).unwrap() + "\n";
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("schema/journal-line.json");
    if std::env::var_os("UPDATE_SCHEMAS").is_some() {
        fs::write(&path, &made).unwrap();
    }
    let kept = fs::read_to_string(&path).unwrap_or_default();
    assert_eq!(
        kept,
        made,
        "{} is not what the types give: rewrite it with UPDATE_SCHEMAS=1",
        path.display()
    );
}

#[test]
fn golden_lines_and_headers_are_valid_by_the_schema() {
    let schema = line_schema();
    let validator = jsonschema::validator_for(&schema).unwrap();
    let newer = include_str!("golden/newer.jsonl");
    // Later versions, and fields that are not described. A kind of this version that is not
    // described, and what lies outside what can be, is kept but not valid.
    let valid_newer = newer.lines().skip(2).take(4);
    let lines = include_str!("golden/v1.jsonl").lines().chain(valid_newer);
    for line in lines.chain([HEADER]) {
        let value: Value = serde_json::from_str(line).unwrap();
        let faults: Vec<String> = validator
            .iter_errors(&value)
            .map(|fault| fault.to_string())
            .collect();
        assert!(faults.is_empty(), "{faults:?}: {line}");
    }
}

#[test]
fn lines_that_are_no_events_are_not_valid_by_the_schema() {
    let schema = line_schema();
    let validator = jsonschema::validator_for(&schema).unwrap();
    let line = include_str!("golden/v1.jsonl")
        .lines()
        .find(|line| line.contains("\"watered\""))
        .unwrap();
    for (from, to) in [
        ("\"v\":1", "\"v\":0"),
        ("\"id\":\"0193f2a1", "\"id\":\"0193F2A1"),
        ("\"water_l\"", "\"water\""),
        ("\"stamp\":\"0", "\"stamp\":\""),
        (",\"body\"", ",\"bodies\""),
    ] {
        assert!(line.contains(from), "{from}");
        let value: Value = serde_json::from_str(&line.replacen(from, to, 1)).unwrap();
        assert!(!validator.is_valid(&value), "{from} {to}");
    }
    // A kind that a newer program added is kept, so it is valid too.
    let newer: Value = serde_json::from_str(&line.replacen("watered", "sung_to", 1)).unwrap();
    assert!(validator.is_valid(&newer));
}

/// A field without a description is a field that a script must guess.
#[test]
fn the_schema_describes_every_field() {
    fn walk(value: &Value, missing: &mut Vec<String>) {
        if let Some(properties) = value.get("properties").and_then(Value::as_object) {
            // Those that only tell the kinds apart describe nothing themselves.
            for (field, property) in properties.iter().filter(|(_, of)| of.is_object()) {
                let apart = property.get("const").is_some()
                    || property.get("enum").is_some()
                    || property.get("$ref").is_some();
                if !apart && property["description"].as_str().is_none_or(str::is_empty) {
                    missing.push(field.clone());
                }
            }
        }
        match value {
            Value::Object(fields) => fields.values().for_each(|value| walk(value, missing)),
            Value::Array(list) => list.iter().for_each(|value| walk(value, missing)),
            _ => {}
        }
    }
    let mut missing = Vec::new();
    walk(&line_schema(), &mut missing);
    missing.retain(|field| field != "kind");
    assert!(missing.is_empty(), "{missing:?}");
}
