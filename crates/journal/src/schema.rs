//! The JSON Schema of a line, for other programs.

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde_json::{Value, json};

use crate::content::bodies;
use crate::event::FORMAT_VERSION;
use crate::file::Header;
use crate::id::EventId;
use crate::moment::Moment;

/// A line of a journal file: the header, an event of a kind that is described here, or one of a
/// later version.
struct JournalLine;

impl JsonSchema for JournalLine {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "JournalLine".into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        let id = generator.subschema_for::<EventId>();
        let moment = generator.subschema_for::<Moment>();
        let header = generator.subschema_for::<Header>();
        let kinds: Vec<Value> = bodies(generator)
            .into_iter()
            .map(|(kind, body)| {
                json!({
                    "if": {"properties": {"kind": {"const": kind}}},
                    "then": {"properties": {"body": body}},
                })
            })
            .collect();
        let event = json!({
            "type": "object",
            "required": ["v", "id", "stamp", "happened", "recorded", "kind", "body"],
            "properties": {
                "v": {"type": "integer", "minimum": 1, "description": "Version of the format."},
                "id": id,
                "stamp": {
                    "type": "string",
                    "pattern": "^[0-9a-f]{12}\\.[0-9a-f]{4}\\.[0-9a-f]{16}$",
                    "description": "Milliseconds since 1970, a count, and the device, hexadecimal: the place in the order."
                },
                "happened": moment,
                "recorded": moment,
                "by": id,
                "batch": id,
                "kind": {
                    "type": "string",
                    "maxLength": 60,
                    "description": "What kind of event it is; other kinds than those below are kept and passed on."
                },
                "body": true
            },
            "if": {"properties": {"v": {"const": FORMAT_VERSION}}},
            "then": {"allOf": kinds}
        });
        json_schema!({
            "title": "A line of a journal file",
            "description": "The first line may be a header; every other is an event. Fields that are not described here are kept and passed on.",
            "anyOf": [header, event]
        })
    }
}

/// The JSON Schema of a line.
#[must_use]
pub fn line_schema() -> Value {
    SchemaGenerator::default()
        .into_root_schema_for::<JournalLine>()
        .to_value()
}
