//! How much of the nitrogen in compost feeds a crop, this year and later?
//!
//! In the first year the mineral nitrogen, and a share of the organic nitrogen that falls with the
//! C:N and lies below nothing where it ties nitrogen up; in later years a small share of what
//! remains. Trials disagree widely, so that every share has a range.
//!
//! Source: `AMLINGER03`, `NITROGEN-MODEL`.
//! Checks: US-11, US-15, US-16; F10, F11.

use heapwright_quantity::Range;

/// Share of the organic nitrogen released in the first year at each C:N, by rising C:N.
pub type Marks = [(f64, f64); 6];

/// Share of the organic nitrogen that is released in the first year: straight between the marks,
/// held outside them. Below nothing, it ties nitrogen up.
#[must_use]
pub fn organic_share(marks: &Marks, carbon_to_nitrogen: f64) -> f64 {
    if carbon_to_nitrogen <= marks[0].0 {
        return marks[0].1;
    }
    marks
        .windows(2)
        .find(|pair| carbon_to_nitrogen <= pair[1].0)
        .map_or(marks[marks.len() - 1].1, |pair| {
            let ((from, at_from), (to, at_to)) = (pair[0], pair[1]);
            at_from + (at_to - at_from) * (carbon_to_nitrogen - from) / (to - from)
        })
}

/// Share of all nitrogen that is there for plants in the first year, from the C:N and the mineral
/// share; `spread` are factors on what the organic part releases.
#[must_use]
pub fn first_year_share(
    marks: &Marks,
    carbon_to_nitrogen: f64,
    mineral_share: Range,
    spread: Range,
) -> Range {
    let organic = organic_share(marks, carbon_to_nitrogen);
    let at = |mineral: f64, factor: f64| mineral + (1.0 - mineral) * organic * factor;
    let one = at(mineral_share.low, spread.low);
    let other = at(mineral_share.high, spread.high);
    // Where nitrogen is tied up, the larger factor is the lower end.
    let typical = at(mineral_share.typical, spread.typical);
    Range {
        low: one.min(other).min(typical),
        typical,
        high: one.max(other).max(typical),
    }
}

/// How it goes on after the first year.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Later {
    /// Each year this share of what remains.
    OfRemaining(f64),
    /// Each year half of the year before.
    Halving,
}

/// Share of all nitrogen that is there in a year, 1 for the first.
#[must_use]
pub fn in_year(first: f64, later: Later, year: u32) -> f64 {
    let Some(after) = year.checked_sub(2) else {
        return if year == 1 { first } else { 0.0 };
    };
    let powers = |base: f64, count: u32| (0..count).fold(1.0, |product, _| product * base);
    match later {
        // What was tied up in the first year is not there to be released twice.
        Later::OfRemaining(share) => share * (1.0 - first.max(0.0)) * powers(1.0 - share, after),
        Later::Halving => first * powers(0.5, after + 1),
    }
}

/// The first `years` years.
#[must_use]
pub fn schedule(first: f64, later: Later, years: u32) -> Vec<f64> {
    (1..=years)
        .map(|year| in_year(first, later, year))
        .collect()
}
