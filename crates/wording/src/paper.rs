//! What stands on paper only: heads, tables to write in, how to read a handful.

use heapwright_answers::{MapPoint, PerCaddy, RecipeAnswer};
use heapwright_catalogue::Catalogue;
use heapwright_journal::Moment;
use heapwright_journal::content::Squeeze;
use heapwright_quantity::{Amount, Unit, UnitSystem};
use heapwright_texts::Locale;
use heapwright_texts::messages::paper as messages;

use crate::amounts::{amount_of, amount_of_water, amount_text, folded, names_begin_small, row};
use crate::journal::day_text;
use crate::words::Word;

pub use heapwright_texts::messages::paper::{
    beds_know, beds_limited_by, beds_title, before_use, beware, bin_under, box_to_tick, harvests,
    heat_measured, invented_garden, letters_lacking, map_caption, next, next_from, no_core,
    not_pressed, nothing_left, nothing_next, nutrients, on_paper, on_paper_all, on_paper_heap,
    press_beds, press_bin, press_season, pressed, pressing, ripeness, season_empty, season_months,
    season_title, sources, squeeze, to_write, with_each_caddy,
};

/// The page could not be set in type; with a detail for who mends the program, in English.
#[must_use]
pub fn not_pressed_for(detail: &str, locale: Locale) -> String {
    messages::NotPressedFor { detail }.said(locale)
}

/// Title of the page that hangs beside a heap.
#[must_use]
pub fn bin_title(heap: &str, locale: Locale) -> String {
    messages::BinTitle { heap }.said(locale)
}

/// Heads of the table of caddies.
#[must_use]
pub fn caddy_heads(locale: Locale) -> [&'static str; 2] {
    [
        messages::caddy_head_scraps(locale),
        messages::caddy_head_with(locale),
    ]
}

/// So many caddies: "2 caddies".
#[must_use]
pub fn caddies(catalogue: &Catalogue, count: f64, locale: Locale) -> String {
    let amount = Amount {
        count,
        unit: Unit::Measure("caddy".to_owned()),
    };
    amount_text(catalogue, &amount, locale)
}

/// What goes with them, each on a line of its own.
#[must_use]
pub fn put_with(catalogue: &Catalogue, recipe: &RecipeAnswer, locale: Locale) -> String {
    let mut things: Vec<String> = recipe
        .added
        .iter()
        .map(|added| amount_of(catalogue, &added.found, locale))
        .collect();
    if recipe.whole.water_kg >= 0.05 {
        things.push(amount_of_water(recipe.whole.water_kg, locale));
    }
    if things.is_empty() {
        messages::nothing_with_them(locale).to_owned()
    } else {
        things.join("\n")
    }
}

/// Which scraps and browns are meant, and how sure that is.
#[must_use]
pub fn caddy_lines(answer: &PerCaddy, locale: Locale) -> Vec<String> {
    let named = names_in_a_row(&answer.scraps, locale);
    let scraps = if names_begin_small(locale) {
        &named.to_lowercase()
    } else {
        &named
    };
    let mut lines = vec![if answer.scraps_known {
        messages::ScrapsKnown { scraps }.said(locale)
    } else {
        messages::ScrapsUsual { scraps }.said(locale)
    }];
    if !answer.from_stores {
        lines.push(messages::browns_usual(locale).to_owned());
    }
    if !answer.is_met() {
        lines.push(messages::not_quite_good(locale).to_owned());
    }
    lines
}

/// What the small map shows, for whoever cannot see it.
#[must_use]
pub fn map_told(answer: &PerCaddy, locale: Locale) -> String {
    let ratio = |point: MapPoint| locale.decimals(point.carbon_to_nitrogen, 0, 0);
    let water = |point: MapPoint| locale.decimals(point.moisture_wet_basis * 100.0, 0, 0);
    match (answer.map.in_hand, answer.map.mixture) {
        (Some(alone), Some(mixed)) => messages::MapTold {
            alone_ratio: &ratio(alone),
            alone_water: &water(alone),
            mixed_ratio: &ratio(mixed),
            mixed_water: &water(mixed),
        }
        .said(locale),
        _ => messages::map_told_empty(locale).to_owned(),
    }
}

/// Heads of the columns of what comes next.
#[must_use]
pub fn next_heads(locale: Locale) -> [&'static str; 3] {
    [
        messages::next_head_day(locale),
        messages::next_head_what(locale),
        messages::next_head_done(locale),
    ]
}

/// Heads of the columns of the test by hand.
#[must_use]
pub fn squeeze_heads(locale: Locale) -> [&'static str; 3] {
    [
        messages::squeeze_head_feels(locale),
        messages::squeeze_head_see(locale),
        messages::squeeze_head_so(locale),
    ]
}

/// The five ways a handful can feel, as the journal has them.
#[must_use]
pub fn squeeze_rows(locale: Locale) -> [[&'static str; 3]; 5] {
    [
        [
            Squeeze::Dusty.word(locale),
            messages::squeeze_see_dusty(locale),
            messages::squeeze_so_dusty(locale),
        ],
        [
            Squeeze::Dry.word(locale),
            messages::squeeze_see_dry(locale),
            messages::squeeze_so_dry(locale),
        ],
        [
            Squeeze::Moist.word(locale),
            messages::squeeze_see_moist(locale),
            messages::squeeze_so_moist(locale),
        ],
        [
            Squeeze::Wet.word(locale),
            messages::squeeze_see_wet(locale),
            messages::squeeze_so_wet(locale),
        ],
        [
            Squeeze::Dripping.word(locale),
            messages::squeeze_see_dripping(locale),
            messages::squeeze_so_dripping(locale),
        ],
    ]
}

/// What to beware of at every heap.
#[must_use]
pub fn beware_always(locale: Locale) -> [&'static str; 2] {
    [
        messages::beware_gloves(locale),
        messages::beware_dust(locale),
    ]
}

/// Heads of the table to write in.
#[must_use]
pub fn writing_heads(locale: Locale) -> [String; 6] {
    let unit = unit_of(locale);
    [
        messages::writing_head_day(locale).to_owned(),
        messages::WritingHeadCore { unit }.said(locale),
        messages::WritingHeadEdge { unit }.said(locale),
        messages::WritingHeadAir { unit }.said(locale),
        messages::writing_head_squeeze(locale).to_owned(),
        messages::writing_head_rest(locale).to_owned(),
    ]
}

/// The unit of temperatures.
#[must_use]
pub const fn unit_of(locale: Locale) -> &'static str {
    match locale.units {
        UnitSystem::Metric => "°C",
        UnitSystem::UsCustomary => "°F",
    }
}

/// The time of a record.
#[must_use]
pub fn season_under(from: Moment, to: Moment, locale: Locale) -> String {
    messages::SeasonUnder {
        from: &day_text(from, locale),
        to: &day_text(to, locale),
    }
    .said(locale)
}

/// Heads of what went into one heap.
#[must_use]
pub fn went_in_heads(locale: Locale) -> [&'static str; 5] {
    [
        messages::went_in_head_month(locale),
        messages::went_in_head_feeds(locale),
        messages::went_in_head_what(locale),
        messages::went_in_head_together(locale),
        messages::went_in_head_water(locale),
    ]
}

/// What went into a heap, the most first: "leaves 12 kg, straw 3 kg …".
///
/// - `parts`: names with their masses [kg]
/// - `more`: whether more went in than is named
#[must_use]
pub fn went_in<'a>(
    parts: impl IntoIterator<Item = (&'a str, f64)>,
    more: bool,
    locale: Locale,
) -> String {
    let parts: Vec<String> = parts
        .into_iter()
        .map(|(name, mass_kg)| {
            messages::PartWithMass {
                mass: &locale.mass(mass_kg),
                name,
            }
            .said(locale)
        })
        .collect();
    let parts = names_in_a_row(&parts, locale);
    if more {
        messages::PartsAndMore { parts: &parts }.said(locale)
    } else {
        parts
    }
}

/// A month: "May 2026".
#[must_use]
pub fn month_name((year, month): (i16, i8), locale: Locale) -> String {
    locale.month(i32::from(year), month.unsigned_abs())
}

/// A month where there is little room: "Feb".
#[must_use]
pub fn month_short(month: i8, locale: Locale) -> String {
    locale.short_month(month.unsigned_abs())
}

/// What is below the chart of a heap's readings.
#[must_use]
pub fn chart_caption(heap: &str, locale: Locale) -> String {
    messages::ChartCaption { heap }.said(locale)
}

/// What the chart shows, for whoever cannot see it.
#[must_use]
pub fn chart_told(readings: &[(Moment, f64)], turnings: usize, locale: Locale) -> String {
    let hottest = readings
        .iter()
        .copied()
        .reduce(|one, other| if other.1 > one.1 { other } else { one });
    match hottest {
        Some((at, value_c)) => messages::ChartTold {
            day: &day_text(at, locale),
            hottest: &locale.temperature(value_c),
            readings: count(readings.len()),
            turnings: count(turnings),
        }
        .said(locale),
        None => messages::ChartToldEmpty {
            turnings: count(turnings),
        }
        .said(locale),
    }
}

/// One reading: "24 °C in the core on 26 November 2025".
#[must_use]
pub fn reading_line(at: Moment, value_c: f64, locale: Locale) -> String {
    messages::Reading {
        day: &day_text(at, locale),
        temperature: &locale.temperature(value_c),
    }
    .said(locale)
}

/// When a heap was turned.
#[must_use]
pub fn turned_line(turned: &[Moment], locale: Locale) -> String {
    if turned.is_empty() {
        return messages::not_turned(locale).to_owned();
    }
    let days: Vec<String> = turned.iter().map(|at| day_text(*at, locale)).collect();
    messages::Turned {
        days: &row(&days, locale),
        times: count(turned.len()),
    }
    .said(locale)
}

/// Heads of the columns of what was taken out.
#[must_use]
pub fn harvest_heads(locale: Locale) -> [&'static str; 3] {
    [
        messages::harvest_head_day(locale),
        messages::harvest_head_how_much(locale),
        messages::harvest_head_sieved(locale),
    ]
}

/// How a harvest was sieved.
#[must_use]
pub fn sieved(mesh_mm: Option<f64>, locale: Locale) -> String {
    match mesh_mm {
        Some(mesh_mm) => messages::Mesh {
            mesh: &locale.decimals(mesh_mm, 0, 0),
        }
        .said(locale),
        None => messages::not_sieved(locale).to_owned(),
    }
}

/// How much was taken out where no amount was told.
#[must_use]
pub fn share_taken(share_pct: Option<f64>, locale: Locale) -> String {
    match share_pct {
        Some(share_pct) => messages::ShareTaken {
            share: &locale.decimals(share_pct, 0, 0),
        }
        .said(locale),
        None => messages::all_taken(locale).to_owned(),
    }
}

/// Heads of the plan of the beds.
#[must_use]
pub fn beds_heads(locale: Locale) -> [&'static str; 7] {
    [
        messages::beds_head_bed(locale),
        messages::beds_head_barrows(locale),
        messages::beds_head_buckets(locale),
        messages::beds_head_depth(locale),
        messages::beds_head_amount(locale),
        messages::beds_head_weight(locale),
        messages::beds_head_done(locale),
    ]
}

/// A line with the numbers of its sources.
#[must_use]
pub fn with_sources(line: &str, numbers: &[usize], locale: Locale) -> String {
    if numbers.is_empty() {
        return line.to_owned();
    }
    let written: Vec<String> = numbers.iter().map(ToString::to_string).collect();
    messages::WithSources {
        count: count(numbers.len()),
        line,
        numbers: &row(&written, locale),
    }
    .said(locale)
}

fn names_in_a_row(names: &[String], locale: Locale) -> String {
    folded(names, |first, second| {
        messages::NamesInARow { first, second }.said(locale)
    })
}

/// A count as a number of a sentence.
const fn count(number: usize) -> f64 {
    number as f64
}
