//! Corrections: nothing is ever rewritten; a later event amends or withdraws an earlier one.

use serde::{Deserialize, Serialize};
use serde_json::{Map, Value};

use crate::check::Problem;
use crate::id::EventId;
use crate::moment::Moment;

/// An event was corrected. The last correction counts: an amendment after a withdrawal brings the
/// event back, even one that changes nothing.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Amended {
    /// Which event; not itself a correction.
    pub event: EventId,
    /// When it happened in truth.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub happened: Option<Moment>,
    /// What changes in its body, as a merge patch (RFC 7396): fields that are given replace, `null`
    /// removes, all others stay, those too that this program does not know.
    #[serde(default, skip_serializing_if = "Map::is_empty")]
    pub patch: Map<String, Value>,
}

impl Amended {
    pub(super) const fn check(&self) -> Result<(), Problem> {
        Ok(())
    }
}

/// An event was taken back: it counts no more. Of an amendment: what it changed counts no more.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Withdrawn {
    /// Which event; not itself a withdrawal.
    pub event: EventId,
}

impl Withdrawn {
    pub(super) const fn check(&self) -> Result<(), Problem> {
        Ok(())
    }
}

/// Changes a value by a merge patch. Source: RFC 7396, section 2.
pub(crate) fn patched(value: &mut Map<String, Value>, patch: &Map<String, Value>) {
    for (name, change) in patch {
        match change {
            Value::Null => {
                value.remove(name);
            }
            Value::Object(inner) => {
                if !value.get(name).is_some_and(Value::is_object) {
                    value.insert(name.clone(), Value::Object(Map::new()));
                }
                if let Some(Value::Object(old)) = value.get_mut(name) {
                    patched(old, inner);
                }
            }
            other => {
                value.insert(name.clone(), other.clone());
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Examples of RFC 7396, appendix A, that have objects on both sides.
    #[test]
    fn patches_do_what_the_standard_says() {
        for (original, patch, result) in [
            (r#"{"a":"b"}"#, r#"{"a":"c"}"#, r#"{"a":"c"}"#),
            (r#"{"a":"b"}"#, r#"{"b":"c"}"#, r#"{"a":"b","b":"c"}"#),
            (r#"{"a":"b"}"#, r#"{"a":null}"#, "{}"),
            (r#"{"a":"b","b":"c"}"#, r#"{"a":null}"#, r#"{"b":"c"}"#),
            (r#"{"a":["b"]}"#, r#"{"a":"c"}"#, r#"{"a":"c"}"#),
            (r#"{"a":"c"}"#, r#"{"a":["b"]}"#, r#"{"a":["b"]}"#),
            (
                r#"{"a":{"b":"c"}}"#,
                r#"{"a":{"b":"d","c":null}}"#,
                r#"{"a":{"b":"d"}}"#,
            ),
            (r#"{"a":[{"b":"c"}]}"#, r#"{"a":[1]}"#, r#"{"a":[1]}"#),
            (r#"{"e":null}"#, r#"{"a":1}"#, r#"{"e":null,"a":1}"#),
            ("{}", r#"{"a":{"bb":{"ccc":null}}}"#, r#"{"a":{"bb":{}}}"#),
        ] {
            let mut value: Map<String, Value> = serde_json::from_str(original).unwrap();
            patched(&mut value, &serde_json::from_str(patch).unwrap());
            assert_eq!(
                Value::Object(value),
                serde_json::from_str::<Value>(result).unwrap()
            );
        }
    }
}
