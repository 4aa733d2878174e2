//! How hot was it for how long, and which published rule does that meet?
//!
//! A [`Record`] takes the points of a thermometer one at a time and keeps no point but the last: its
//! memory does not grow with the length of the record. Between two points the temperature is taken
//! as a straight line; of a gap that is up to two hours longer than [`RecordOptions::longest_gap_s`]
//! that much is credited, over a longer one nothing, and no spell of heat goes on across it. From a
//! turning to the next reading nothing is credited, for nobody knows how far it cooled; a reading at
//! the instant of a turning tells of both sides of it.
//!
//! Rules are judged as they are written, each as an object of its own ([`RULES`]): none is derived
//! from another, and none from the dose. Everything is told three times: as the probe showed it, and
//! with the probe's error taken off and put on.
//!
//! What a probe shows is one place. What share of a heap came through that place is another matter
//! ([`share`]), and none of it is a claim about what lives or died.

mod dose;
mod line;
mod living;
mod record;
mod rules;
pub mod share;
mod tally;
mod trackers;

pub use dose::{CREDITED_FROM_C, Regime, equation_d, hold_d};
pub use line::Band;
pub use living::{FLIES_D, Living, Reach};
pub use record::{
    Findings, MOST_DEPTHS, Point, Record, RecordError, RecordOptions, Turn, USUAL_PROBE_ERROR_K,
};
pub use rules::{
    Allowed, Breaks, Condition, Method, Missing, Need, Outcome, RULES, Rule, Status, WhichMethod,
};
pub use tally::{HOUR_THRESHOLDS_C, RULE_THRESHOLDS_C, Stay};
