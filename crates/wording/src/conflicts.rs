//! Why the region cannot be reached, by how much, and what would help.

use heapwright_answers::{Conflict, Help, Limit, Miss};

use crate::amounts::apart;

/// A limit as a noun.
#[must_use]
pub fn limit_name(limit: Limit) -> &'static str {
    match limit {
        Limit::CarbonToNitrogenLow => "the lowest C:N",
        Limit::CarbonToNitrogenHigh => "the highest C:N",
        Limit::MoistureLow => "the lowest moisture",
        Limit::MoistureHigh => "the highest moisture",
        Limit::FreeAirSpaceLow => "the least air space",
        Limit::FreeAirSpaceHigh => "the most air space",
    }
}

/// One limit that is missed, and by how much.
#[must_use]
pub fn miss_line(miss: &Miss) -> String {
    let is_ratio = matches!(
        miss.limit,
        Limit::CarbonToNitrogenLow | Limit::CarbonToNitrogenHigh
    );
    let (too, figure, limit) = match miss.limit {
        Limit::CarbonToNitrogenLow => ("too green", "C:N", "at least"),
        Limit::CarbonToNitrogenHigh => ("too brown", "C:N", "at most"),
        Limit::MoistureLow => ("too dry", "moisture", "at least"),
        Limit::MoistureHigh => ("too wet", "moisture", "at most"),
        Limit::FreeAirSpaceLow => ("too tight", "air space", "at least"),
        Limit::FreeAirSpaceHigh => ("too loose", "air space", "at most"),
    };
    match miss.reached {
        Some(reached) => {
            let (reached, asked) = apart(reached, miss.asked, is_ratio);
            format!("it stays {too}: {figure} {reached}, aim {limit} {asked}")
        }
        None => "there is no nitrogen in it, so that it has no C:N".to_owned(),
    }
}

/// The whole conflict in one sentence.
#[must_use]
pub fn conflict_line(conflict: &Conflict) -> String {
    if conflict.parts_of_units_would_do {
        return "Whole measures are too coarse for so little: part of one would do.".to_owned();
    }
    let misses: Vec<String> = conflict.misses.iter().map(miss_line).collect();
    match &misses[..] {
        [] => "Nothing in reach gets there.".to_owned(),
        all => format!("Nothing in reach gets there: {}.", all.join("; ")),
    }
}

/// Something that would help.
#[must_use]
pub fn help_line(help: Help) -> &'static str {
    match help {
        Help::DryBrown => {
            "Something dry and brown would help: dry leaves, straw, torn cardboard, sawdust."
        }
        Help::DryAndRicher => {
            "Something dry that holds more nitrogen than cardboard or wood would help: dry leaves, hay, dried grass."
        }
        Help::MoreCarbon => {
            "Something rich in carbon would help: dry leaves, straw, cardboard, wood chip."
        }
        Help::MoreNitrogen => {
            "Something green would help: grass, kitchen scraps, coffee grounds, manure."
        }
        Help::Water => "Water would help.",
        Help::Coarse => {
            "Something coarse that holds the heap open would help: shredded prunings, wood chip, straw."
        }
        Help::Fine => "Something finer would help: shred or tread it.",
        Help::LargerStock => "More of what is in reach already would help.",
        Help::PartUnits => "Use part of a measure, or wait until there is more to mix.",
    }
}
