//! What the page says of a heap's heat, ripeness and nutrients, and of what was kept out of the bin.

use heapwright_answers::MoreThanFits;
use heapwright_texts::Locale;
use heapwright_texts::messages::told as messages;

pub use heapwright_texts::messages::told::{
    about_account, account, before_use, beside, by_month, for_the_climate, heat, hours, how_much,
    kept_out, living, log_test, may_be_left_out, months, named_as, no_readings, no_rule_chosen,
    no_signs, not_told, nothing_in_it, nothing_kept_out, nothing_lasts, nutrients, other_rules,
    other_sheets, ripeness, rule_asks, sheet_reading, showed, signs, stays_with_heap, telling,
    test_empty, test_incomplete, which_test, whole_seeds, whose_rules, whose_rules_hint,
    write_test,
};

/// A feed that is more than a heap holds.
#[must_use]
pub fn more_than_fits(told: MoreThanFits, heap: &str, locale: Locale) -> String {
    messages::MoreThanFits {
        fed: &locale.volume(told.fed_m3),
        heap,
        holds: &locale.volume(told.holds_m3),
    }
    .said(locale)
}

/// What the switch between elements and oxides switches between.
#[must_use]
pub fn names(locale: Locale) -> [&'static str; 2] {
    [
        messages::names_elements(locale),
        messages::names_on_labels(locale),
    ]
}

/// The tests that can be written down.
#[must_use]
pub fn tests(locale: Locale) -> [&'static str; 4] {
    [
        messages::tests_bag(locale),
        messages::tests_self_heating(locale),
        messages::tests_seeds(locale),
        messages::tests_laboratory(locale),
    ]
}

/// How much of a rule is done: "40 % done". Less than all is never called all.
#[must_use]
pub fn done_text(progress: f64, locale: Locale) -> String {
    let percent = (progress.clamp(0.0, 1.0) * 100.0).floor();
    messages::Done { percent }.said(locale)
}

/// Heads of the yield's table.
#[must_use]
pub fn yield_heads(locale: Locale) -> [&'static str; 3] {
    [
        messages::yield_head_what(locale),
        messages::yield_head_likely(locale),
        messages::yield_head_range(locale),
    ]
}

/// Heads of the signs' table.
#[must_use]
pub fn sign_heads(locale: Locale) -> [&'static str; 5] {
    [
        messages::sign_head_of(locale),
        messages::sign_head_test(locale),
        messages::sign_head_found(locale),
        messages::sign_head_says(locale),
        messages::sign_head_when(locale),
    ]
}

/// What a test needs.
#[must_use]
pub fn needs_line(needs: &str, locale: Locale) -> String {
    messages::Needs { needs }.said(locale)
}

/// The places whose rules there are beside a place's own: those of a member state of the European
/// Union stand beside the union's.
#[must_use]
pub fn rules_hold(jurisdiction: &str, place: &str) -> bool {
    jurisdiction == place || (place == "Germany" && jurisdiction == "European Union")
}

/// Whose rules someone is likely to look for, by the language of the browser: "en-GB"; `None` when
/// the list has none for that place.
#[must_use]
pub fn place_of_language(language: &str) -> Option<&'static str> {
    // Member states in 2024, by their two letters.
    const UNION: [&str; 26] = [
        "AT", "BE", "BG", "CY", "CZ", "DK", "EE", "ES", "FI", "FR", "GR", "HR", "HU", "IE", "IT",
        "LT", "LU", "LV", "MT", "NL", "PL", "PT", "RO", "SE", "SI", "SK",
    ];
    let region = language.split(['-', '_']).next_back()?;
    match region {
        "US" => Some("United States"),
        "GB" => Some("United Kingdom"),
        "DE" => Some("Germany"),
        "CA" => Some("Canada"),
        "AU" => Some("Australia"),
        other => UNION.contains(&other).then_some("European Union"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn place_of_language_names_only_places_that_have_rules() {
        let rules = heapwright_catalogue::hygiene_rules();
        for language in ["en-US", "en-GB", "de-DE", "fr-CA", "en-AU", "sv-SE"] {
            let place = place_of_language(language).unwrap();
            let holds =
                |rule: &heapwright_catalogue::HygieneRule| rules_hold(&rule.jurisdiction, place);
            assert!(rules.iter().any(holds), "{language}");
        }
        assert_eq!(place_of_language("en"), None);
        assert_eq!(place_of_language("pt-BR"), None);
    }
}
