//! Every example file is of its schema and is answered, and the answers are of theirs.

#![allow(clippy::unwrap_used)]

mod support;

use std::fs;
use std::path::PathBuf;

use jsonschema::Validator;
use serde_json::{Value, json};
use support::{answer, of_repository};

fn schema(name: &str) -> Validator {
    let path = of_repository(&format!("crates/wire/schemas/{name}.json"));
    let schema: Value = serde_json::from_str(&fs::read_to_string(path).unwrap()).unwrap();
    jsonschema::validator_for(&schema).unwrap()
}

fn examples(begin: &str) -> Vec<PathBuf> {
    let mut found: Vec<PathBuf> = fs::read_dir(of_repository("crates/wire/examples"))
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| {
            path.file_name()
                .unwrap()
                .to_str()
                .unwrap()
                .starts_with(begin)
        })
        .collect();
    found.sort();
    found
}

fn assert_valid(validator: &Validator, value: &Value, what: &str) {
    let faults: Vec<String> = validator
        .iter_errors(value)
        .map(|fault| format!("{}: {fault}", fault.instance_path()))
        .collect();
    assert!(faults.is_empty(), "{what}:\n{}", faults.join("\n"));
}

/// A file that the program must answer, held against the schemas of question and answer.
fn answered(command: &str, path: &PathBuf) -> Value {
    let name = path.display().to_string();
    let question: Value = serde_json::from_str(&fs::read_to_string(path).unwrap()).unwrap();
    assert_valid(&schema(&format!("{command}-question")), &question, &name);
    let found: Value =
        serde_json::from_str(&answer(&[command, "--json", "--file", &name])).unwrap();
    assert_valid(
        &schema(&format!("{command}-answer")),
        &found,
        &format!("the answer to {name}"),
    );
    // As text too.
    assert!(
        answer(&[command, "--file", &name]).contains("C:N"),
        "{name}"
    );
    found
}

#[test]
fn examples_of_mixtures_are_answered() {
    let files = examples("mix-");
    assert!(files.len() >= 4, "{files:?}");
    for path in files {
        let found = answered("mix", &path);
        assert!(found["wet_mass_kg"]["value"].as_f64().unwrap() > 0.0);
    }
}

#[test]
fn examples_of_balances_are_answered() {
    let files = examples("balance-");
    assert!(files.len() >= 4, "{files:?}");
    let mut statuses: Vec<String> = files
        .iter()
        .map(|path| {
            answered("balance", path)["status"]
                .as_str()
                .unwrap()
                .to_owned()
        })
        .collect();
    statuses.sort();
    statuses.dedup();
    assert_eq!(
        statuses,
        ["met", "not_met"],
        "the examples show one kind alone"
    );
}

#[test]
fn examples_of_gardens_are_read() {
    let files = examples("garden");
    assert!(!files.is_empty());
    for path in files.into_iter().chain([of_repository("demo/garden.json")]) {
        let name = path.display().to_string();
        let garden: Value = serde_json::from_str(&fs::read_to_string(&path).unwrap()).unwrap();
        assert_valid(&schema("garden"), &garden, &name);
        let found: Value = serde_json::from_str(&answer(&[
            "balance",
            "1 bucket grass",
            "--garden-file",
            &name,
            "--json",
        ]))
        .unwrap();
        assert_valid(&schema("balance-answer"), &found, &name);
        let inside = json!({ "have": [{ "material": "grass_clippings_fresh", "amount": "1 bucket" }], "garden": garden });
        assert_valid(&schema("balance-question"), &inside, &name);
    }
}

#[test]
fn materials_are_of_their_schema() {
    let validator = schema("material");
    let all: Value = serde_json::from_str(&answer(&["materials", "--json"])).unwrap();
    let all = all.as_array().unwrap();
    assert!(all.len() > 150, "{} materials", all.len());
    for material in all {
        assert_valid(&validator, material, material["id"].as_str().unwrap());
    }
    let one: Value =
        serde_json::from_str(&answer(&["materials", "grass_clippings_fresh", "--json"])).unwrap();
    assert_valid(&validator, &one, "grass_clippings_fresh");
}

/// What the schema of a question refuses, the program refuses.
#[test]
fn what_the_schema_refuses_is_refused() {
    let validator = schema("mix-question");
    for question in [
        json!({}),
        json!({ "parts": [{ "material": "straw_wheat" }] }),
        json!({ "parts": [{ "material": "straw_wheat", "amount": 3 }] }),
        json!({ "parts": [{ "material": "straw_wheat", "amount": "1 kg", "colour": "green" }] }),
        json!({ "parts": [{ "material": "straw_wheat", "amount": "1 kg" }], "target": { "cn_ratio": [25] } }),
        json!({ "parts": [{ "custom": { "name": "x" }, "amount": "1 kg" }] }),
        json!([]),
    ] {
        assert!(
            !validator.is_valid(&question),
            "the schema takes {question}"
        );
        let ran = support::run_with(
            &["mix", "--json", "--file", "-"],
            question.to_string().as_bytes(),
        );
        assert_eq!(ran.code, 2, "{question}");
    }
}
