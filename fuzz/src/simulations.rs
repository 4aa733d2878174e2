//! Case files of heaps: read, and simulated for half a day where they are small enough.

use heapwright_answers::heap::Model;
use heapwright_answers::{SimulationQuestion, one_by_one, prepared};
use heapwright_catalogue::Catalogue;
use heapwright_garden::Garden;
use heapwright_wire::{read_simulation, simulation_json};

use crate::requests::{check_json, hash, refused};
use crate::targets::{Outcome, length_class};

/// So much of a case is simulated [d]: the events of its first hours.
const SIMULATED_D: f64 = 0.5;
/// Cases with more events are read and not simulated.
const MOST_EVENTS: usize = 30;
/// Of the inputs of a run one in so many is simulated, all are read.
const SIMULATED_ONE_IN: u64 = 20;

/// Reads a case and simulates one in some, shortened.
///
/// # Panics
///
/// As `simulation_request_in_full`.
pub fn simulation_request(input: &[u8]) -> Outcome {
    answered(input, hash(input).is_multiple_of(SIMULATED_ONE_IN))
}

/// Reads a case and simulates it, shortened.
///
/// # Panics
///
/// When a figure of the answer is not finite, something lies below nothing, the books do not
/// close, an answer cannot be written as JSON, or a message is no single line.
pub fn simulation_request_in_full(input: &[u8]) -> Outcome {
    answered(input, true)
}

fn answered(input: &[u8], simulate: bool) -> Outcome {
    let text = String::from_utf8_lossy(input);
    let catalogue = Catalogue::built_in();
    let no_file = |name: &str| Err(format!("there is no file {}", name.len()));
    let (question, garden) = match read_simulation(catalogue, &Garden::default(), &text, &no_file) {
        Ok(read) => read,
        Err(error) => return refused(&error.to_string()),
    };
    let events = question.events.len();
    let short = shortened(question);
    let prepared = match prepared(catalogue, &garden, &short) {
        Ok(prepared) => prepared,
        Err(error) => return refused(&error.to_string()),
    };
    if !simulate || events > MOST_EVENTS {
        return format!("case x{}", length_class(events));
    }
    let answer = match prepared.answer(&one_by_one) {
        Ok(answer) => answer,
        Err(error) => return refused(&error.to_string()),
    };
    let closure = &answer.summary.closure;
    for error in [closure.carbon, closure.nitrogen, closure.ash, closure.mass] {
        assert!(error < 1e-6, "the books do not close: {closure:?}");
    }
    for row in &answer.series {
        assert!(
            row.volume_m3 >= 0.0 && row.dry_mass_kg >= 0.0 && row.moisture >= 0.0,
            "something lies below nothing"
        );
        assert!(
            row.core_temperature_c.is_finite() && row.volume_m3.is_finite(),
            "a figure is not finite"
        );
    }
    check_json(&simulation_json(catalogue, &answer));
    format!(
        "simulated x{} notices {}",
        length_class(events),
        answer.notices.len()
    )
}

/// The same heap for half a day in few cells, without an ensemble.
fn shortened(mut question: SimulationQuestion) -> SimulationQuestion {
    question.days = question.days.min(SIMULATED_D);
    question.every_h = question.every_h.max(1.0);
    question.members = 0;
    question.fields_at_d.retain(|day| *day <= SIMULATED_D);
    if let Model::Spatial { layers, rings } = question.model {
        question.model = Model::Spatial {
            layers: layers.min(3),
            rings: rings.min(2),
        };
    }
    question
}
