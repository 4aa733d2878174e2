//! Notes, and corrections of what was written down in haste.

use heapwright_journal::content::{Amended, Noted, Picture};
use heapwright_journal::{Content, Digest, EventId, Moment};
use serde_json::{Map, Value, json};

use crate::chance::Chance;

const TEXTS: [&str; 12] = [
    "The elder drops a lot of twigs into this bay.",
    "Somebody put a plastic tray in; taken out again.",
    "Rain all week, the lid helped.",
    "New fork, much easier.",
    "Robin at the heap again.",
    "Neighbours from over the lane bring leaves on Saturday.",
    "The middle looks like chocolate.",
    "Too much grass at once, next time in thin layers.",
    "Steam in the frost this morning.",
    "Thermometer stem is bent but still reads as before.",
    "Children counted 41 worms in one handful.",
    "The left boards need replacing before the winter.",
];

/// A note about a heap, a bed or neither.
pub(crate) fn note(chance: &mut Chance, heap: Option<EventId>, bed: Option<EventId>) -> Noted {
    let text = chance.one_of(&TEXTS).map(|text| (*text).to_owned());
    let picture = chance.happens(0.1).then(|| Picture {
        // Of no picture that exists: it is missing on every device.
        sha256: Digest::of(&chance.bytes()).to_string(),
        media_type: "image/jpeg".to_owned(),
        width_px: 1280,
        height_px: 960,
        bytes: 200_000,
    });
    Noted {
        text,
        heap,
        bed,
        picture,
    }
}

/// A correction of an earlier event: of its time, or of what people mistype.
pub(crate) fn amendment(
    chance: &mut Chance,
    event: EventId,
    happened: Moment,
    content: &Content,
) -> Amended {
    let mut amended = Amended {
        event,
        happened: None,
        patch: Map::new(),
    };
    let change = match content {
        Content::Fed(_) => Some(("water_l", json!(chance.stepped(1.0, 8.0, 1.0)))),
        Content::Read(_) => Some(("squeeze", json!("moist"))),
        Content::Turned(_) => Some(("thoroughness", json!("inside_out"))),
        Content::Watered(_) => Some(("water_l", json!(chance.stepped(5.0, 30.0, 1.0)))),
        Content::Noted(_) => Some(("text", Value::from("The other heap was meant."))),
        _ => None,
    };
    match change {
        Some((field, value)) if chance.happens(0.7) => {
            amended.patch.insert(field.to_owned(), value);
        }
        _ => {
            let earlier_ms = (chance.stepped(1.0, 30.0, 1.0) * 3_600_000.0) as i64;
            amended.happened = Moment::new(happened.instant_ms - earlier_ms, happened.offset_min);
        }
    }
    amended
}
