//! Labels and hints of the page.

mod files;

pub use files::{arrival_lines, damage_line, entries, gone, journal_size, put_back};

use heapwright_answers::{Chance, Figure, MapPoint, OnTheMap};
use heapwright_quantity::UnitSystem;
use heapwright_texts::Locale;
use heapwright_texts::messages::page as texts;

use crate::amounts::{percent_text, ratio_text};
use crate::verdicts::chance_text;

/// The name of the program.
#[must_use]
pub fn name(locale: Locale) -> &'static str {
    texts::name(locale)
}

/// The place.
#[must_use]
pub fn balance(locale: Locale) -> &'static str {
    texts::balance(locale)
}

/// Heading of what is in hand.
#[must_use]
pub fn in_hand(locale: Locale) -> &'static str {
    texts::in_hand(locale)
}

/// Hint under the heading.
#[must_use]
pub fn in_hand_hint(locale: Locale) -> &'static str {
    texts::in_hand_hint(locale)
}

/// Heading of what is in reach.
#[must_use]
pub fn in_reach(locale: Locale) -> &'static str {
    texts::in_reach(locale)
}

/// Hint under the heading.
#[must_use]
pub fn in_reach_hint(locale: Locale) -> &'static str {
    texts::in_reach_hint(locale)
}

/// Heading of the answer.
#[must_use]
pub fn answer(locale: Locale) -> &'static str {
    texts::answer(locale)
}

/// Heading of the other recipes.
#[must_use]
pub fn ways(locale: Locale) -> &'static str {
    texts::ways(locale)
}

/// Heading of the map.
#[must_use]
pub fn map(locale: Locale) -> &'static str {
    texts::map(locale)
}

/// Heading of the figures.
#[must_use]
pub fn figures(locale: Locale) -> &'static str {
    texts::figures(locale)
}

/// Heading of the cautions.
#[must_use]
pub fn cautions(locale: Locale) -> &'static str {
    texts::cautions(locale)
}

/// Label of the search.
#[must_use]
pub fn find(locale: Locale) -> &'static str {
    texts::find(locale)
}

/// Hint of the search.
#[must_use]
pub fn find_hint(locale: Locale) -> &'static str {
    texts::find_hint(locale)
}

/// Nothing was found.
#[must_use]
pub fn find_nothing(locale: Locale) -> &'static str {
    texts::find_nothing(locale)
}

/// Takes the last change back.
#[must_use]
pub fn undo(locale: Locale) -> &'static str {
    texts::undo(locale)
}

/// Empties the hand.
#[must_use]
pub fn clear(locale: Locale) -> &'static str {
    texts::clear(locale)
}

/// Water from a can.
#[must_use]
pub fn water(locale: Locale) -> &'static str {
    texts::water(locale)
}

/// The place of what each heap needs.
#[must_use]
pub fn today(locale: Locale) -> &'static str {
    texts::today(locale)
}

/// The light for bright sun.
#[must_use]
pub fn bright_sun(locale: Locale) -> &'static str {
    texts::bright_sun(locale)
}

/// The settings.
#[must_use]
pub fn settings(locale: Locale) -> &'static str {
    texts::settings(locale)
}

/// The heaps.
#[must_use]
pub fn heaps(locale: Locale) -> &'static str {
    texts::heaps(locale)
}

/// The log.
#[must_use]
pub fn logbook(locale: Locale) -> &'static str {
    texts::logbook(locale)
}

/// What the example is.
#[must_use]
pub fn example(locale: Locale) -> &'static str {
    texts::example(locale)
}

/// What the demo garden is.
#[must_use]
pub fn demo(locale: Locale) -> &'static str {
    texts::demo(locale)
}

/// Told in the demo garden.
#[must_use]
pub fn demo_told(locale: Locale) -> &'static str {
    texts::demo_told(locale)
}

/// Leaves the demo garden.
#[must_use]
pub fn demo_leave(locale: Locale) -> &'static str {
    texts::demo_leave(locale)
}

/// Opens the demo garden.
#[must_use]
pub fn demo_enter(locale: Locale) -> &'static str {
    texts::demo_enter(locale)
}

/// There is no demo garden to open.
#[must_use]
pub fn no_demo(locale: Locale) -> &'static str {
    texts::no_demo(locale)
}

/// Nothing is in the journal.
#[must_use]
pub fn no_heaps(locale: Locale) -> &'static str {
    texts::no_heaps(locale)
}

/// The heap of an address is not there.
#[must_use]
pub fn no_such_heap(locale: Locale) -> &'static str {
    texts::no_such_heap(locale)
}

/// The journal is being read.
#[must_use]
pub fn opening(locale: Locale) -> &'static str {
    texts::opening(locale)
}

/// Nothing was logged.
#[must_use]
pub fn no_entries(locale: Locale) -> &'static str {
    texts::no_entries(locale)
}

/// Nothing is in a heap.
#[must_use]
pub fn nothing_in(locale: Locale) -> &'static str {
    texts::nothing_in(locale)
}

/// Everything was taken out of a heap.
#[must_use]
pub fn emptied(locale: Locale) -> &'static str {
    texts::emptied(locale)
}

/// Entries under one id.
#[must_use]
pub fn conflict(locale: Locale) -> &'static str {
    texts::conflict(locale)
}

/// Corrections are not among all entries.
#[must_use]
pub fn corrections_apart(locale: Locale) -> &'static str {
    texts::corrections_apart(locale)
}

/// The browser may evict the journal.
#[must_use]
pub fn may_be_lost(locale: Locale) -> &'static str {
    texts::may_be_lost(locale)
}

/// The browser keeps the journal.
#[must_use]
pub fn lasts(locale: Locale) -> &'static str {
    texts::lasts(locale)
}

/// It was never exported, or long ago.
#[must_use]
pub fn export_due(locale: Locale) -> &'static str {
    texts::export_due(locale)
}

/// The browser cleared the journal while the page was open.
#[must_use]
pub fn cleared(locale: Locale) -> &'static str {
    texts::cleared(locale)
}

/// A file cannot be read.
#[must_use]
pub fn file_not_read(locale: Locale) -> &'static str {
    texts::file_not_read(locale)
}

/// A picture cannot be read.
#[must_use]
pub fn picture_not_read(locale: Locale) -> &'static str {
    texts::picture_not_read(locale)
}

/// A file has no end.
#[must_use]
pub fn file_cut(locale: Locale) -> &'static str {
    texts::file_cut(locale)
}

/// A file without a header.
#[must_use]
pub fn file_headless(locale: Locale) -> &'static str {
    texts::file_headless(locale)
}

/// A file of another garden.
#[must_use]
pub fn other_garden(locale: Locale) -> &'static str {
    texts::other_garden(locale)
}

/// Nothing to take in.
#[must_use]
pub fn nothing_new(locale: Locale) -> &'static str {
    texts::nothing_new(locale)
}

/// What is wrong with a feed.
#[must_use]
pub fn mend_first(locale: Locale) -> &'static str {
    texts::mend_first(locale)
}

/// What the balance is for a heap.
#[must_use]
pub fn log_feed_hint(locale: Locale) -> &'static str {
    texts::log_feed_hint(locale)
}

/// A number cannot be read.
#[must_use]
pub fn no_number(locale: Locale) -> &'static str {
    texts::no_number(locale)
}

/// A time cannot be read.
#[must_use]
pub fn no_time(locale: Locale) -> &'static str {
    texts::no_time(locale)
}

/// A shape without its size, or a size without its shape.
#[must_use]
pub fn shape_needs_size(locale: Locale) -> &'static str {
    texts::shape_needs_size(locale)
}

/// Turns the sign of a temperature.
#[must_use]
pub fn below_zero(locale: Locale) -> &'static str {
    texts::below_zero(locale)
}

/// What an amount of harvested compost is good for.
#[must_use]
pub fn harvest_amount_hint(locale: Locale) -> &'static str {
    texts::harvest_amount_hint(locale)
}

/// Nothing was seen.
#[must_use]
pub fn nothing_read(locale: Locale) -> &'static str {
    texts::nothing_read(locale)
}

/// Nothing is in hand.
#[must_use]
pub fn empty_hand(locale: Locale) -> &'static str {
    texts::empty_hand(locale)
}

/// Shows the numbers of the map.
#[must_use]
pub fn map_table(locale: Locale) -> &'static str {
    texts::map_table(locale)
}

/// The sources of a figure.
#[must_use]
pub fn sources(locale: Locale) -> &'static str {
    texts::sources(locale)
}

/// The line is left out until it is mended.
#[must_use]
pub fn not_counted(locale: Locale) -> &'static str {
    texts::not_counted(locale)
}

/// Which units are shown.
#[must_use]
pub fn units_name(locale: Locale) -> &'static str {
    match locale.units {
        UnitSystem::Metric => texts::units_metric(locale),
        UnitSystem::UsCustomary => texts::units_us(locale),
    }
}

/// Name of a figure.
#[must_use]
pub fn figure_name(figure: Figure, locale: Locale) -> &'static str {
    match figure {
        Figure::CarbonToNitrogen => texts::figure_carbon_to_nitrogen(locale),
        Figure::Moisture => texts::figure_moisture(locale),
        Figure::FreeAirSpace => texts::figure_free_air_space(locale),
        Figure::Mass => texts::figure_mass(locale),
        Figure::Volume => texts::figure_volume(locale),
    }
}

/// What a figure means, in a sentence.
#[must_use]
pub fn figure_meaning(figure: Figure, locale: Locale) -> &'static str {
    match figure {
        Figure::CarbonToNitrogen => texts::meaning_carbon_to_nitrogen(locale),
        Figure::Moisture => texts::meaning_moisture(locale),
        Figure::FreeAirSpace => texts::meaning_free_air_space(locale),
        Figure::Mass => texts::meaning_mass(locale),
        Figure::Volume => texts::meaning_volume(locale),
    }
}

/// What the share of a part is a share of.
#[must_use]
pub fn figure_weight_name(figure: Figure, locale: Locale) -> &'static str {
    match figure {
        Figure::CarbonToNitrogen => texts::share_of_nitrogen(locale),
        Figure::Moisture => texts::share_of_water(locale),
        Figure::FreeAirSpace | Figure::Volume => texts::share_of_volume(locale),
        Figure::Mass => texts::share_of_mass(locale),
    }
}

/// What a part's own value is.
#[must_use]
pub fn figure_own_name(figure: Figure, locale: Locale) -> &'static str {
    match figure {
        Figure::CarbonToNitrogen => texts::own_carbon_to_nitrogen(locale),
        Figure::Moisture => texts::own_moisture(locale),
        Figure::FreeAirSpace | Figure::Volume | Figure::Mass => texts::own_density(locale),
    }
}

/// The chance in a sentence.
#[must_use]
pub fn chance_line(chance: &Chance, locale: Locale) -> String {
    texts::Chance {
        chance: &chance_text(chance.all, locale),
    }
    .said(locale)
}

/// The map in a sentence, for those who do not see it.
#[must_use]
pub fn map_summary(map: &OnTheMap, locale: Locale) -> String {
    let ratio = |point: &MapPoint| ratio_text(point.carbon_to_nitrogen, locale);
    let moisture = |point: &MapPoint| percent_text(point.moisture_wet_basis, locale);
    let aim = &texts::MapAim {
        moisture_high: &percent_text(map.target.moisture_wet_basis_high, locale),
        moisture_low: &percent_text(map.target.moisture_wet_basis_low, locale),
        ratio_high: &ratio_text(map.target.carbon_to_nitrogen_high, locale),
        ratio_low: &ratio_text(map.target.carbon_to_nitrogen_low, locale),
    }
    .said(locale);
    match (&map.mixture, &map.in_hand) {
        (None, _) => texts::MapEmpty { aim }.said(locale),
        (Some(mixture), Some(hand)) if mixture != hand => texts::MapMixtureAndHand {
            aim,
            hand_moisture: &moisture(hand),
            hand_ratio: &ratio(hand),
            moisture: &moisture(mixture),
            ratio: &ratio(mixture),
        }
        .said(locale),
        (Some(mixture), _) => texts::MapMixture {
            aim,
            moisture: &moisture(mixture),
            ratio: &ratio(mixture),
        }
        .said(locale),
    }
}

/// A message as a sentence of its own.
#[must_use]
pub fn sentence(what: &str) -> String {
    let mut letters = what.chars();
    let first = letters
        .next()
        .map_or_else(String::new, |first| first.to_uppercase().collect());
    let end = if what.ends_with(['.', '?', '!']) {
        ""
    } else {
        "."
    };
    format!("{first}{}{end}", letters.as_str())
}

/// A count as a number of a sentence.
pub(crate) fn number(count: u64) -> f64 {
    count as f64
}
