//! How does a JSON input change and stay JSON? By whole values: so that changes reach what lies
//! behind the reader, where changes of bytes mostly end at a missing bracket.

use serde_json::{Map, Value};

use crate::mutator::Mutator;

/// The input with one value replaced, taken out, doubled, put in or made larger or smaller; `None`
/// when it is no JSON.
pub(crate) fn changed(mutator: &mut Mutator, input: &[u8], other: &[u8]) -> Option<Vec<u8>> {
    let mut root: Value = serde_json::from_slice(input).ok()?;
    let places = places(&root);
    let place = &places[mutator.below(places.len())];
    match mutator.below(7) {
        0 => replace(&mut root, place, word(mutator)?),
        1 => replace(&mut root, place, graft(mutator, other)?),
        2 | 3 => add_fields(&mut root, place, fields(mutator)?),
        4 => in_parent(&mut root, place, |list, index| {
            list.insert(index, list[index].clone())
        }),
        5 => take_out(&mut root, place),
        _ => scale(root.pointer_mut(place)?, mutator),
    }
    serde_json::to_vec(&root).ok()
}

/// Pointers to all values inside, the whole first.
fn places(root: &Value) -> Vec<String> {
    fn walk(value: &Value, here: &str, places: &mut Vec<String>) {
        places.push(here.to_owned());
        match value {
            Value::Array(list) => {
                for (index, value) in list.iter().enumerate() {
                    walk(value, &format!("{here}/{index}"), places);
                }
            }
            Value::Object(fields) => {
                for (name, value) in fields {
                    let name = name.replace('~', "~0").replace('/', "~1");
                    walk(value, &format!("{here}/{name}"), places);
                }
            }
            _ => {}
        }
    }
    let mut places = Vec::new();
    walk(root, "", &mut places);
    places
}

/// A word of the dictionary that is a value by itself.
fn word(mutator: &mut Mutator) -> Option<Value> {
    serde_json::from_str(mutator.word()).ok()
}

/// A word of the dictionary that is one or more fields, or a further element as a field of its kind.
fn fields(mutator: &mut Mutator) -> Option<Map<String, Value>> {
    let word = mutator.word();
    serde_json::from_str(&format!("{{{}}}", word.trim_start_matches(','))).ok()
}

fn graft(mutator: &mut Mutator, other: &[u8]) -> Option<Value> {
    let other: Value = serde_json::from_slice(other).ok()?;
    let places = places(&other);
    other.pointer(&places[mutator.below(places.len())]).cloned()
}

fn replace(root: &mut Value, place: &str, new: Value) {
    if let Some(value) = root.pointer_mut(place) {
        *value = new;
    }
}

fn add_fields(root: &mut Value, place: &str, new: Map<String, Value>) {
    if let Some(Value::Object(fields)) = root.pointer_mut(place) {
        fields.extend(new);
    }
}

/// Does something with the list that holds the value, and its index there.
fn in_parent(root: &mut Value, place: &str, work: impl Fn(&mut Vec<Value>, usize)) {
    let Some((parent, name)) = place.rsplit_once('/') else {
        return;
    };
    if let (Some(Value::Array(list)), Ok(index)) = (root.pointer_mut(parent), name.parse()) {
        work(list, index);
    }
}

fn take_out(root: &mut Value, place: &str) {
    let Some((parent, name)) = place.rsplit_once('/') else {
        return;
    };
    match root.pointer_mut(parent) {
        Some(Value::Object(fields)) => {
            fields.remove(&name.replace("~1", "/").replace("~0", "~"));
        }
        Some(Value::Array(list)) => {
            if let Ok(index) = name.parse::<usize>() {
                list.remove(index);
            }
        }
        _ => {}
    }
}

/// A number by a factor of ten or less, an amount by another of the dictionary.
fn scale(value: &mut Value, mutator: &mut Mutator) {
    const FACTORS: [f64; 8] = [0.0, 0.1, 0.5, 0.99, 1.01, 2.0, 10.0, -1.0];
    let factor = FACTORS[mutator.below(FACTORS.len())];
    match value {
        Value::Number(number) => {
            if let Some(scaled) = number.as_f64().map(|number| number * factor) {
                *value = Value::from(scaled);
            }
        }
        Value::String(text) => {
            if let Ok(Value::String(word)) = serde_json::from_str(mutator.word()) {
                *text = word;
            }
        }
        _ => {}
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn changed_json_stays_json_and_changes() {
        let input = br#"{"parts":[{"material":"straw_wheat","amount":"1 kg"}],"target":{"cn_ratio":[25,40]}}"#;
        let mut mutator = Mutator::new(3, &["\"2 kg\"", ",\"water\":\"1 l\"", "7", "{"], 512);
        let mut distinct = std::collections::BTreeSet::new();
        for _ in 0..500 {
            if let Some(new) = changed(&mut mutator, input, input) {
                assert!(serde_json::from_slice::<Value>(&new).is_ok());
                distinct.insert(new);
            }
        }
        assert!(distinct.len() > 50, "{} distinct inputs", distinct.len());
        assert_eq!(changed(&mut mutator, b"{", input), None);
    }
}
