//! What people say and type (2 buckets, 3.5 kg, 1 1/2 gal) as SI quantities, ranges and back.
//!
//! The only home of litres, handfuls, pounds, gallons and degF. `parse_amount` reads one amount,
//! `parse_parts` a list of amounts with names; the `format` functions write for people. Everything
//! else in the workspace counts in kg, m3 and degC.

// Units stand in square brackets in our docs; they are no links.
#![allow(rustdoc::broken_intra_doc_links)]
#![cfg_attr(test, allow(clippy::unwrap_used))]

mod amount;
mod count;
mod format;
mod measure;
mod nearest;
mod number;
mod number_words;
mod parts;
mod range;
mod reader;
mod shorten;
mod tokens;
mod unit;
mod unit_words;
mod vocabulary;

pub use amount::{Amount, AmountError, AmountProblem, Unit, parse_amount};
pub use format::{
    UnitSystem, mass_text, measure_count_text, significant, temperature_text, volume_text,
};
pub use measure::MeasureWords;
pub use parts::{PartsError, PartsProblem, SpokenPart, parse_parts};
pub use range::{Interval, Range};
pub use unit::{MassUnit, VolumeUnit, celsius_from_fahrenheit, fahrenheit_from_celsius};
pub use vocabulary::{DecimalMark, Gallon, Vocabulary};
