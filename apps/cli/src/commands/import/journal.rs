//! What would come of taking in another journal?

use std::collections::HashMap;

use heapwright_journal::{Digest, EventId, FileReader};
use heapwright_state::Arrival;
use heapwright_wire::{FaultJson, ImportJson, import_json};

use super::{Coming, New};
use crate::keeping::Keeping;

/// Looks at every line.
pub fn look(keeping: &Keeping, bytes: &[u8]) -> Coming {
    let now_ms = u64::try_from(keeping.edges.now.instant_ms).unwrap_or(0);
    let mut reader = FileReader::default();
    let mut arrival = Arrival::default();
    let mut seen: HashMap<EventId, Vec<Digest>> = HashMap::new();
    let mut lines = Vec::new();
    for line in bytes.split(|byte| *byte == b'\n') {
        let Some((line, event)) = reader.read(line) else {
            continue;
        };
        let digest = line.digest();
        let before = seen.entry(event.id).or_default();
        // The same line twice in one file is one line.
        if before.contains(&digest) {
            continue;
        }
        let known = keeping.state.has(event.id, digest);
        keeping.state.look_at(&mut arrival, digest, &event, now_ms);
        if !before.is_empty() && known.is_none() {
            arrival.conflicts.push(event.id);
        }
        before.push(digest);
        if known != Some(true) {
            lines.push(line);
        }
    }
    keeping.state.looked(&mut arrival);
    let summary = reader.finish();
    let answer = ImportJson {
        not_understood: summary.not_understood,
        faults: summary
            .faults
            .iter()
            .map(|fault| FaultJson {
                line: fault.line,
                what: fault.what.to_string(),
            })
            .collect(),
        fault_count: summary.fault_count,
        whole: summary.whole,
        ..import_json(keeping.shown_path(), "journal", &arrival)
    };
    Coming {
        answer,
        new: New::Lines(lines),
    }
}
