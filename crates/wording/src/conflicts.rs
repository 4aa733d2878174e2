//! Why the region cannot be reached, by how much, and what would help.

use heapwright_answers::{Conflict, Help, Limit, Miss};
use heapwright_texts::Locale;
use heapwright_texts::messages::conflicts as texts;

use crate::amounts::{apart, clauses};

/// A limit as a noun.
#[must_use]
pub fn limit_name(limit: Limit, locale: Locale) -> &'static str {
    match limit {
        Limit::CarbonToNitrogenLow => texts::limit_ratio_low(locale),
        Limit::CarbonToNitrogenHigh => texts::limit_ratio_high(locale),
        Limit::MoistureLow => texts::limit_moisture_low(locale),
        Limit::MoistureHigh => texts::limit_moisture_high(locale),
        Limit::FreeAirSpaceLow => texts::limit_air_low(locale),
        Limit::FreeAirSpaceHigh => texts::limit_air_high(locale),
    }
}

/// One limit that is missed, and by how much.
#[must_use]
pub fn miss_line(miss: &Miss, locale: Locale) -> String {
    let is_ratio = matches!(
        miss.limit,
        Limit::CarbonToNitrogenLow | Limit::CarbonToNitrogenHigh
    );
    let Some(reached) = miss.reached else {
        return texts::miss_no_nitrogen(locale).to_owned();
    };
    let (reached, asked) = apart(reached, miss.asked, is_ratio, locale);
    let (reached, asked) = (reached.as_str(), asked.as_str());
    match miss.limit {
        Limit::CarbonToNitrogenLow => texts::MissRatioLow { reached, asked }.said(locale),
        Limit::CarbonToNitrogenHigh => texts::MissRatioHigh { reached, asked }.said(locale),
        Limit::MoistureLow => texts::MissMoistureLow { reached, asked }.said(locale),
        Limit::MoistureHigh => texts::MissMoistureHigh { reached, asked }.said(locale),
        Limit::FreeAirSpaceLow => texts::MissAirLow { reached, asked }.said(locale),
        Limit::FreeAirSpaceHigh => texts::MissAirHigh { reached, asked }.said(locale),
    }
}

/// The whole conflict in one sentence.
#[must_use]
pub fn conflict_line(conflict: &Conflict, locale: Locale) -> String {
    if conflict.parts_of_units_would_do {
        return texts::measures_too_coarse(locale).to_owned();
    }
    if conflict.misses.is_empty() {
        return texts::nothing_gets_there(locale).to_owned();
    }
    let misses: Vec<String> = conflict
        .misses
        .iter()
        .map(|miss| miss_line(miss, locale))
        .collect();
    texts::NothingGetsThereFor {
        misses: &clauses(&misses, locale),
    }
    .said(locale)
}

/// Something that would help.
#[must_use]
pub fn help_line(help: Help, locale: Locale) -> &'static str {
    match help {
        Help::DryBrown => texts::help_dry_brown(locale),
        Help::DryAndRicher => texts::help_dry_and_richer(locale),
        Help::MoreCarbon => texts::help_more_carbon(locale),
        Help::MoreNitrogen => texts::help_more_nitrogen(locale),
        Help::Water => texts::help_water(locale),
        Help::Coarse => texts::help_coarse(locale),
        Help::Fine => texts::help_fine(locale),
        Help::LargerStock => texts::help_larger_stock(locale),
        Help::PartUnits => texts::help_part_of_a_measure(locale),
    }
}
