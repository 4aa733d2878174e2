//! Journals: one line, and whole files that are folded into a state.

use heapwright_journal::content::Moved;
use heapwright_journal::{Content, Event, FileReader, LONGEST_LINE_BYTES, Line, MOST_FAULTS, What};
use heapwright_state::State;

use crate::targets::{Outcome, length_class};

/// The most characters of a message about a line.
const LONGEST_MESSAGE: usize = 500;

/// Reads one line of a journal.
///
/// # Panics
///
/// When what is understood cannot be written or does not read back equal; when what is kept is not
/// the same bytes; when a message holds control signs or is endless; when a second reading differs.
pub fn journal_line(input: &[u8]) -> Outcome {
    let text = String::from_utf8_lossy(input);
    let found = Line::read(&text);
    match &found {
        Ok((line, event)) => {
            assert_eq!(line.text(), text, "a line is kept as it came");
            assert!(text.len() <= LONGEST_LINE_BYTES, "{} bytes", text.len());
            let again = Event::read(&text);
            assert_eq!(again.as_ref(), Ok(event), "two readings differ");
            let kind = check_event(event);
            format!("{kind} {}", length_class(text.len()))
        }
        Err(error) => {
            let message = error.to_string();
            check_message(&message);
            // The first words tell faults apart; the rest are the input's own.
            let words: Vec<&str> = message.split(' ').take(5).collect();
            format!("{} {}", words.join(" "), length_class(text.len()))
        }
    }
}

/// Reads a file of a journal and folds it: in the order of the file, and in the reverse one by one.
///
/// # Panics
///
/// When the two states differ, more is kept than came, or a share of a heap is none.
pub fn journal_file(input: &[u8]) -> Outcome {
    let mut reader = FileReader::default();
    let lines: Vec<_> = input
        .split(|byte| *byte == b'\n')
        .filter_map(|line| reader.read(line))
        .map(|(line, event)| (line.digest(), event))
        .collect();
    let summary = reader.finish();
    assert_eq!(summary.events, lines.len() as u64, "events of the summary");
    assert!(
        summary.faults.len() <= MOST_FAULTS,
        "too many faults listed"
    );
    assert!(
        summary.not_understood.len() <= MOST_FAULTS + 1,
        "too many kinds listed"
    );
    for fault in &summary.faults {
        check_message(&fault.to_string());
    }
    let state = State::fold(lines.iter().cloned());
    let mut one_by_one = State::default();
    for (digest, event) in lines.iter().rev() {
        one_by_one.take(*digest, event.clone());
    }
    assert_eq!(state, one_by_one, "another order gives another state");
    assert!(state.lines() <= lines.len(), "more lines than came");
    let mut shares = 0;
    for heap in state.heaps().chain(state.unknown_heaps()) {
        let contents = state.contents(heap.id);
        assert!(
            contents.shares.len() <= lines.len(),
            "more feeds than lines"
        );
        for one in &contents.shares {
            let share = one.share;
            assert!(share.is_finite() && share >= 0.0, "a share of {share}");
        }
        shares += contents.shares.len();
    }
    let moves = lines
        .iter()
        .filter(|(_, event)| matches!(event.content(), Some(Content::Moved(Moved { .. }))));
    format!(
        "{} events {} faults {} heaps {} shares {} moves {} conflicts",
        length_class(lines.len()),
        length_class(summary.faults.len()),
        length_class(state.heaps().count()),
        length_class(shares),
        length_class(moves.count()),
        length_class(state.conflicts().len()),
    )
}

/// What is understood is written and reads back equal; what is not is not written anew. Gives the
/// kind, or how it is not understood.
fn check_event(event: &Event) -> String {
    match &event.what {
        What::Known(content) => {
            // A line grows when texts are escaped in another way.
            if let Ok(written) = event.write() {
                let again = Event::read(&written);
                assert_eq!(again.as_ref(), Ok(event), "{written} does not read back");
            } else {
                assert!(content.check().is_ok(), "what was read was not checked");
            }
            content.kind().to_owned()
        }
        What::Unknown(unknown) => {
            assert!(event.write().is_err(), "what is not understood is written");
            let why = unknown.why.as_deref().unwrap_or("unknown");
            check_message(&format!("{}: {why}", unknown.kind));
            let words: Vec<&str> = why.split(' ').take(3).collect();
            format!("not understood: {}", words.join(" "))
        }
    }
}

fn check_message(message: &str) {
    let length = message.chars().count();
    assert!(length < LONGEST_MESSAGE, "a message of {length} characters");
    assert!(
        !message.contains(char::is_control),
        "a message with control signs: {message:?}"
    );
}
