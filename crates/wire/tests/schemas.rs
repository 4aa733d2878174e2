//! The schemas that are kept beside the types say what the types say.
//!
//! UPDATE_SCHEMAS=1 rewrites them: look at the difference. What the program answers is held against
//! them in the tests of the command line.
#![cfg(feature = "schema")]
#![allow(clippy::unwrap_used)]

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use heapwright_wire::SCHEMAS;
use serde_json::Value;

fn folder(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(name)
}

#[test]
fn schemas_are_those_of_the_types() {
    for schema in &SCHEMAS {
        let made = serde_json::to_string_pretty(&(schema.make)()).unwrap() + "\n";
        let path = folder("schemas").join(format!("{}.json", schema.name));
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
    let kept: BTreeSet<String> = fs::read_dir(folder("schemas"))
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    let named = SCHEMAS
        .iter()
        .map(|schema| format!("{}.json", schema.name))
        .collect();
    assert_eq!(kept, named);
}

/// A field without a description is a field that a script must guess.
#[test]
fn schemas_describe_every_field() {
    fn walk(name: &str, value: &Value, count: &mut usize) {
        if let Some(properties) = value.get("properties").and_then(Value::as_object) {
            for (field, property) in properties {
                let described = property["description"]
                    .as_str()
                    .is_some_and(|text| !text.trim().is_empty());
                assert!(described, "{name}: {field} has no description");
                *count += 1;
            }
        }
        match value {
            Value::Object(fields) => fields.values().for_each(|value| walk(name, value, count)),
            Value::Array(items) => items.iter().for_each(|value| walk(name, value, count)),
            _ => {}
        }
    }
    for schema in &SCHEMAS {
        let made = serde_json::to_value((schema.make)()).unwrap();
        let mut count = 0;
        walk(schema.name, &made, &mut count);
        assert!(count >= 6, "{} has {count} fields", schema.name);
    }
}
