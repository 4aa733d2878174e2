//! What the page says of a heap's heat, ripeness and nutrients, and of what was kept out of the bin.

/// Heading of the heat.
pub const HEAT: &str = "Was it hot enough?";
/// There is no reading to judge.
pub const NO_READINGS: &str = "Nobody has read a probe in the core since this heap was last empty. Log a reading, with the place and how deep it was, and this says which published rules it meets.";
/// Heading of what lasts until harvest.
pub const BEFORE_USE: &str = "Before you use it";
/// Nothing went in that lasts.
pub const NOTHING_LASTS: &str =
    "Nothing that is written down of this heap needs to be seen to before its compost is used.";
/// Heading of the ripeness.
pub const RIPENESS: &str = "Is it ready?";
/// Heading of the nutrients.
pub const NUTRIENTS: &str = "Nutrients in it";
/// The table of the account.
pub const ACCOUNT: &str = "Where they come from and go to";
/// Nothing was fed.
pub const NOTHING_IN_IT: &str =
    "Nothing lies in this heap yet. Log what you feed it, and this page keeps account of it.";
/// Heading of what was kept out of the bin.
pub const KEPT_OUT: &str = "Kept out of the bin";
/// Nothing was fed that would have been waste.
pub const NOTHING_KEPT_OUT: &str =
    "Nothing was fed yet that would have been waste. Log what you feed a heap, and it is counted.";
/// While the worker computes.
pub const TELLING: &str = "Adding up what is written down.";
/// The worker handed back what cannot be read.
pub const NOT_TOLD: &str = "This could not be worked out. Load the page again.";
/// Label of the choice of rules.
pub const WHOSE_RULES: &str = "Rules of";
/// Where the choice of rules comes from.
pub const WHOSE_RULES_HINT: &str = "At first as your browser's language has it. The rule of your own place comes before all of these.";
/// No list has a rule of the place.
pub const NO_RULE_CHOSEN: &str = "Choose a place to see its rules here.";
/// The rules of other places.
pub const OTHER_RULES: &str = "Rules of other places";
/// What the record shows.
pub const SHOWED: &str = "What the probe showed, and for how much of the heap";
/// What heat cannot be trusted with.
pub const LIVING: &str = "Seeds, diseases and larvae";
/// The table of hours.
pub const HOURS: &str = "How long it was how hot, as a table";
/// The table of signs.
pub const SIGNS: &str = "All signs as a table";
/// No test is written down.
pub const NO_SIGNS: &str = "No test of this compost is written down.";
/// How tests are done.
pub const OTHER_SHEETS: &str = "How other home tests are done";
/// Opens the form of a test.
pub const WRITE_TEST: &str = "Write a test down";
/// A form of a test was sent empty.
pub const TEST_EMPTY: &str = "Fill in what the test found.";
/// Only some of the fields that belong together were filled in.
pub const TEST_INCOMPLETE: &str =
    "This test needs every field that is not marked as one to leave out.";
/// A count of seeds that is none.
pub const WHOLE_SEEDS: &str = "Seeds are counted in whole numbers from 0 on.";
/// What of a feed lasts until harvest.
pub const STAYS_WITH_HEAP: &str = "This stays with the heap until it is harvested:";

/// Opens the months.
pub const BY_MONTH: &str = "By month";
/// The table of months.
pub const MONTHS: &str = "Kept out of the bin, month by month";
/// What was spared the climate.
pub const FOR_THE_CLIMATE: &str = "For the climate, as carbon dioxide over a century";
/// What a rule asks and where it stands.
pub const RULE_ASKS: &str = "What it asks, and its source";
/// Over what the outcome of a test says.
pub const SHEET_READING: &str = "What it says";
/// Label of the switch between elements and oxides.
pub const NAMED_AS: &str = "Named as";
/// What it switches between.
pub const NAMES: [&str; 2] = ["elements", "on labels"];
/// What a laboratory found beside the account.
pub const BESIDE: &str = "Beside the account";
/// What to know about the account.
pub const ABOUT_ACCOUNT: &str = "How this account is kept";
/// How much compost there will be.
pub const YIELD: &str = "How much compost it will be";
/// Label of the choice of a test.
pub const WHICH_TEST: &str = "Which test";
/// The tests that can be written down.
pub const TESTS: [&str; 4] = ["Closed bag", "Self-heating flask", "Seeds", "Laboratory"];
/// The button that writes the test down.
pub const LOG_TEST: &str = "Log the test";
/// Hint at a field that need not be filled in.
pub const MAY_BE_LEFT_OUT: &str = "May be left out.";

/// How much of a rule is done: "40 % done". Less than all is never called all.
#[must_use]
pub fn done_text(progress: f64) -> String {
    let percent = (progress.clamp(0.0, 1.0) * 100.0).floor();
    format!("{percent:.0}\u{a0}% done")
}

/// Heads of the yield's table.
pub const YIELD_HEADS: [&str; 3] = ["When it is finished", "likely", "eight of ten cases"];
/// Heads of the signs' table.
pub const SIGN_HEADS: [&str; 5] = ["Of", "Test", "Found", "Says", "When"];

/// What a test needs.
#[must_use]
pub fn needs_line(needs: &str) -> String {
    format!("You need: {needs}")
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
