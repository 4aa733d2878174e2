//! What a heap needs today: what to do, why, what can hurt, and when to look again.

mod doing;
mod why;

pub use doing::{dated_headline, headline, how_to, kind_headline, tap_word};
pub use why::{because_line, why_lines};

use heapwright_answers::today::{Caution, Quiet, Rest, Urgency};
use heapwright_state::State;
use jiff::civil::Date;

use crate::journal::{date_text, heap_name};

/// Said under everything that is needed.
pub const TODAY_LIMITS: &str = "All this is worked out from your journal. It knows nothing of what is not written down, nor of the weather to come. Local rules come first.";

/// Said when no heap needs anything.
pub const NOTHING_TODAY: &str = "Nothing needs you today.";

/// Said when there is no heap that is fed or ripens.
pub const NO_HEAPS: &str = "There is no heap that is fed or ripens.";

/// Heading of what needs nothing.
pub const QUIET: &str = "Quiet";

/// How soon, as a heading.
#[must_use]
pub const fn urgency_heading(urgency: Urgency) -> &'static str {
    match urgency {
        Urgency::Now => "Today",
        Urgency::Soon => "In the next days",
        Urgency::Whenever => "When it suits you",
    }
}

/// What can hurt while it is done.
#[must_use]
pub const fn caution_line(caution: Caution) -> &'static str {
    match caution {
        Caution::Fire => {
            "If it smokes or smells burnt, do not dig in, for air feeds a fire: keep away and call the fire service."
        }
        Caution::Steam => {
            "Steam and hot compost burn skin: open it from the side with a long fork, and keep your face away."
        }
        Caution::MouldDust => {
            "The dust of moulds harms the lungs: wet it first, stand upwind and wear a dust mask. With asthma or weak defences, leave this to others."
        }
        Caution::Animals => {
            "What rats and mice leave behind carries disease: wear gloves and wash your hands."
        }
        Caution::Fumes => {
            "A heap that smells foul or sharp gives off gases that sting eyes and lungs: stand upwind when you open it."
        }
        Caution::Lifting => {
            "Wet compost is heavy: a full barrow can weigh more than you do. Take half loads."
        }
    }
}

/// What a calendar of reminders is called.
#[must_use]
pub fn calendar_name(state: &State) -> String {
    match state.garden().name.as_deref() {
        Some(name) => format!("Compost, {name}"),
        None => "Compost".to_owned(),
    }
}

/// A heap that needs nothing, and when to look again.
#[must_use]
pub fn quiet_line(state: &State, quiet: &Quiet) -> String {
    let name = heap_name(state, quiet.heap);
    match (quiet.why, quiet.again) {
        (Rest::Empty, _) => format!("{name} is empty. It asks for nothing until it is fed."),
        (Rest::Working, Some(day)) => {
            format!("{name} works by itself. Look again on {}.", date_text(day))
        }
        (Rest::Ripening, Some(day)) => {
            format!("{name} ripens. Look again on {}.", date_text(day))
        }
        (Rest::Working, None) => format!("{name} works by itself. Look again in two weeks."),
        (Rest::Ripening, None) => format!("{name} ripens. Look again in a month."),
    }
}

/// A day as people write it: "1 May 2026".
#[must_use]
pub fn day_of(day: Date) -> String {
    date_text(day)
}
