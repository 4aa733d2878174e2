//! Labels and hints of the page.

use heapwright_answers::{Chance, Figure, OnTheMap};
use heapwright_journal::Summary;
use heapwright_journal::store::{Damage, DamageKind};
use heapwright_quantity::UnitSystem;
use heapwright_state::Arrival;
use heapwright_texts::Locale;

use crate::amounts::{percent_text, ratio_text};
use crate::verdicts::chance_text;

/// The name of the program.
pub const NAME: &str = "Heapwright";
/// The place.
pub const BALANCE: &str = "Balance a feed";
/// Heading of what is in hand.
pub const IN_HAND: &str = "In hand";
/// Hint under the heading.
pub const IN_HAND_HINT: &str = "Tap what you have. Tap again for one more.";
/// Heading of what is in reach.
pub const IN_REACH: &str = "In reach";
/// Hint under the heading.
pub const IN_REACH_HINT: &str = "What may go with it. Untick what you will not use today.";
/// Heading of the answer.
pub const ANSWER: &str = "What to put with it";
/// Heading of the other recipes.
pub const WAYS: &str = "Other ways";
/// Heading of the map.
pub const MAP: &str = "Mix map";
/// Heading of the figures.
pub const FIGURES: &str = "The mixture";
/// Heading of the cautions.
pub const CAUTIONS: &str = "Take care";
/// Label of the search.
pub const FIND: &str = "Find another material";
/// Hint of the search.
pub const FIND_HINT: &str = "Type what you call it, such as peelings or sawdust.";
/// Nothing was found.
pub const FIND_NOTHING: &str = "Nothing is called that. Try a plainer word.";
/// Takes the last change back.
pub const UNDO: &str = "Undo";
/// Empties the hand.
pub const CLEAR: &str = "Clear all";
/// Water from a can.
pub const WATER: &str = "Water from a can";
/// The place of what each heap needs.
pub const TODAY: &str = "Today";
/// The light for bright sun.
pub const BRIGHT_SUN: &str = "Bright sun";
/// The settings.
pub const SETTINGS: &str = "Settings";
/// The heaps.
pub const HEAPS: &str = "Heaps";
/// The log.
pub const LOGBOOK: &str = "Logbook";
/// What the example is.
pub const EXAMPLE: &str = "Example stores, invented";
/// What the demo garden is.
pub const DEMO: &str = "Demo garden, invented";
/// Told in the demo garden.
pub const DEMO_TOLD: &str = "This garden is invented. Try what you like: nothing here is kept, and your own journal is left as it is.";
/// Leaves the demo garden.
pub const DEMO_LEAVE: &str = "Leave the demo garden";
/// Opens the demo garden.
pub const DEMO_ENTER: &str = "Look around in an invented garden";
/// There is no demo garden to open.
pub const NO_DEMO: &str =
    "The invented garden is not on this device yet: open it once with a signal.";
/// Nothing is in the journal.
pub const NO_HEAPS: &str =
    "No heap yet. Start one, and everything you do to it is kept in a journal on this device.";
/// The heap of an address is not there.
pub const NO_SUCH_HEAP: &str = "This heap is not in the journal of this device.";
/// The journal is being read.
pub const OPENING: &str = "Opening the journal\u{2026}";
/// Nothing was logged.
pub const NO_ENTRIES: &str = "Nothing logged yet.";
/// Nothing is in a heap.
pub const NOTHING_IN: &str = "Nothing has gone in yet. Feed it, and its figures stand here.";
/// Everything was taken out of a heap.
pub const EMPTIED: &str = "All that went in was taken out again.";
/// Entries under one id.
pub const CONFLICT: &str = "Two versions of this entry came; both are kept. The other says:";
/// Corrections are not among all entries.
pub const CORRECTIONS_APART: &str = "Corrections stand under their own kinds.";
/// The browser may evict the journal.
pub const MAY_BE_LOST: &str = "The browser may clear this journal when the device runs short of room. Install the page or export the journal now and then.";
/// The browser keeps the journal.
pub const LASTS: &str = "The browser promised to keep this journal until you remove it.";
/// It was never exported, or long ago.
pub const EXPORT_DUE: &str =
    "This journal is on this device only. Export it and keep the file somewhere else.";
/// The browser cleared the journal while the page was open.
pub const CLEARED: &str = "The browser has cleared the journal on this device. It is still on this page: export it now, or log anything, and it is written back. If you cleared it on purpose, close this page.";
/// A file cannot be read.
pub const FILE_NOT_READ: &str = "This file could not be read: choose a journal of at most 256 MiB.";
/// A picture cannot be read.
pub const PICTURE_NOT_READ: &str =
    "This picture could not be read: choose another, or log the note without it.";
/// A file has no end.
pub const FILE_CUT: &str = "The file is cut or was changed: it does not hold what its first line says. What is left of it can be taken in.";
/// A file without a header.
pub const FILE_HEADLESS: &str = "The file has no first line that says how much it holds, so that nobody can tell whether it is whole.";
/// A file of another garden.
pub const OTHER_GARDEN: &str = "This seems to be the journal of another garden: it shares no entry with yours. Taking it in mixes the two.";
/// Nothing to take in.
pub const NOTHING_NEW: &str = "Nothing in this file is new.";
/// What is wrong with a feed.
pub const MEND_FIRST: &str = "Mend the amount that is marked first.";
/// What the balance is for a heap.
pub const LOG_FEED_HINT: &str =
    "It goes into the heap's log as it stands above, with what the answer adds.";
/// A number cannot be read.
pub const NO_NUMBER: &str = "Enter a number, such as 58 or 3.5.";
/// A time cannot be read.
pub const NO_TIME: &str = "Enter a day and a time that are past.";
/// A shape without its size, or a size without its shape.
pub const SHAPE_NEEDS_SIZE: &str =
    "Give shape, width and height of what it stands in, or none of them.";
/// Turns the sign of a temperature.
pub const BELOW_ZERO: &str = "Below zero";
/// What an amount of harvested compost is good for.
pub const HARVEST_AMOUNT_HINT: &str =
    "May be left out. With it, the page learns how much compost your heaps become.";
/// Nothing was seen.
pub const NOTHING_READ: &str = "Enter or tick at least one thing that you saw.";
/// Nothing is in hand.
pub const EMPTY_HAND: &str = "Nothing in hand yet. Tap what you have.";
/// Shows the numbers of the map.
pub const MAP_TABLE: &str = "The map as a table";
/// The sources of a figure.
pub const SOURCES: &str = "Sources";
/// The line is left out until it is mended.
pub const NOT_COUNTED: &str = "Not counted until this is mended.";

/// Which units are shown.
#[must_use]
pub fn units_name(locale: Locale) -> &'static str {
    match locale.units {
        UnitSystem::Metric => "Kilograms and litres",
        UnitSystem::UsCustomary => "Pounds and US gallons",
    }
}

/// Name of a figure.
#[must_use]
pub fn figure_name(figure: Figure) -> &'static str {
    match figure {
        Figure::CarbonToNitrogen => "C:N",
        Figure::Moisture => "Moisture",
        Figure::FreeAirSpace => "Air space",
        Figure::Mass => "Mass",
        Figure::Volume => "Volume",
    }
}

/// What a figure means, in a sentence.
#[must_use]
pub fn figure_meaning(figure: Figure) -> &'static str {
    match figure {
        Figure::CarbonToNitrogen => {
            "Kilograms of carbon for each kilogram of nitrogen in the dry matter: low is green, high is brown."
        }
        Figure::Moisture => "The share of the mass that is water.",
        Figure::FreeAirSpace => {
            "The share of the volume that neither water nor solids fill, where air can move."
        }
        Figure::Mass => "The mass as it lies, water and all.",
        Figure::Volume => "The volume as it is tipped out, before it settles.",
    }
}

/// What the share of a part is a share of.
#[must_use]
pub fn figure_weight_name(figure: Figure) -> &'static str {
    match figure {
        Figure::CarbonToNitrogen => "of the nitrogen",
        Figure::Moisture => "of the water",
        Figure::FreeAirSpace | Figure::Volume => "of the volume",
        Figure::Mass => "of the mass",
    }
}

/// What a part's own value is.
#[must_use]
pub fn figure_own_name(figure: Figure) -> &'static str {
    match figure {
        Figure::CarbonToNitrogen => "its C:N",
        Figure::Moisture => "its moisture",
        Figure::FreeAirSpace | Figure::Volume | Figure::Mass => "its density, kg/m³",
    }
}

/// The chance in a sentence.
#[must_use]
pub fn chance_line(chance: &Chance, locale: Locale) -> String {
    format!(
        "Chance to lie within all aims, with all that is uncertain: {}.",
        chance_text(chance.all, locale)
    )
}

/// The map in a sentence, for those who do not see it.
#[must_use]
pub fn map_summary(map: &OnTheMap, locale: Locale) -> String {
    let place = |point: &heapwright_answers::MapPoint| {
        format!(
            "C:N {}, moisture {}",
            ratio_text(point.carbon_to_nitrogen, locale),
            percent_text(point.moisture_wet_basis, locale)
        )
    };
    let aim = format!(
        "The good region is C:N {} to {}, moisture {} to {}.",
        ratio_text(map.target.carbon_to_nitrogen_low, locale),
        ratio_text(map.target.carbon_to_nitrogen_high, locale),
        percent_text(map.target.moisture_wet_basis_low, locale),
        percent_text(map.target.moisture_wet_basis_high, locale)
    );
    match (&map.mixture, &map.in_hand) {
        (None, _) => format!("There is no mixture on the map yet. {aim}"),
        (Some(mixture), Some(hand)) if mixture != hand => {
            format!(
                "The mixture is at {}; what is in hand alone at {}. {aim}",
                place(mixture),
                place(hand)
            )
        }
        (Some(mixture), _) => format!("The mixture is at {}. {aim}", place(mixture)),
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

/// A number of things, with its word: "1 entry", "12 entries".
#[must_use]
pub fn counted(count: u64, one: &str, many: &str) -> String {
    if count == 1 {
        format!("1 {one}")
    } else {
        format!("{count} {many}")
    }
}

/// How much is in the journal.
#[must_use]
pub fn journal_size(lines: u64) -> String {
    format!("{} on this device.", counted(lines, "entry", "entries"))
}

/// The journal that was here is gone; so many entries were in it.
#[must_use]
pub fn gone(entries: u64) -> String {
    format!(
        "This browser had a journal of {} and has cleared it. If you have an exported file, import it: that brings back what it holds.",
        counted(entries, "entry", "entries")
    )
}

/// The journal was written back after the browser had cleared it; so many entries were, so many could not
/// be.
#[must_use]
pub fn put_back(entries: u64, lost: u64) -> String {
    let written = format!(
        "The browser had cleared the journal on this device. It was written back from this page: {}. Pictures cannot be: import them, if you exported them. Export the journal now.",
        counted(entries, "entry", "entries")
    );
    if lost == 0 {
        return written;
    }
    let lost = counted(lost, "entry", "entries");
    format!(
        "{written} Missing: {lost} that only a newer version understands; import your last file to have them again."
    )
}

/// What is damaged in the journal.
#[must_use]
pub fn damage_line(damage: &[Damage]) -> Option<String> {
    let count = |kind| damage.iter().filter(|one| one.kind == kind).count() as u64;
    let first = damage.iter().map(|one| one.position).min()?;
    let (changed, missing) = (count(DamageKind::Changed), count(DamageKind::Missing));
    let what = match (changed, missing) {
        (0, 0) => "Some entries stand out of order in the journal on this device".to_owned(),
        (1, 0) => "1 entry has changed in the journal on this device and is left out".to_owned(),
        (changed, 0) => {
            format!("{changed} entries have changed in the journal on this device and are left out")
        }
        (0, _) => "Entries are missing from the journal on this device".to_owned(),
        (changed, _) => format!(
            "Entries are missing from the journal on this device, and {} changed",
            counted(changed, "more has", "more have")
        ),
    };
    let place = if damage.len() == 1 { "" } else { "from " };
    Some(format!(
        "{what} ({place}number {first}). All others are here. If you have an exported file, import it: that brings back what it holds."
    ))
}

/// What a file would bring: one sentence each.
#[must_use]
pub fn arrival_lines(summary: &Summary, arrival: &Arrival) -> Vec<String> {
    let mut lines = vec![format!(
        "The file holds {}: {} new, {} known already.",
        counted(summary.events, "entry", "entries"),
        arrival.new,
        arrival.known
    )];
    let conflicts = arrival.conflicts.len() as u64;
    if conflicts > 0 {
        lines.push(format!(
            "{} here with other content; both versions will be kept.",
            counted(conflicts, "is", "are")
        ));
    }
    let not_understood: u64 = summary.not_understood.values().sum();
    if not_understood > 0 {
        let kinds: Vec<&str> = summary.not_understood.keys().map(String::as_str).collect();
        lines.push(format!(
            "{} from a newer version ({}): kept and passed on, not shown in full.",
            counted(not_understood, "comes", "come"),
            kinds.join(", ")
        ));
    }
    if arrival.ahead > 0 {
        lines.push(format!(
            "{} more than a day ahead of this device's clock.",
            counted(arrival.ahead, "is dated", "are dated")
        ));
    }
    if summary.header.is_none() {
        lines.push(FILE_HEADLESS.to_owned());
    } else if !summary.whole {
        lines.push(FILE_CUT.to_owned());
    }
    if arrival.other_garden.is_some() {
        lines.push(OTHER_GARDEN.to_owned());
    }
    if summary.fault_count > 0 {
        lines.push(format!(
            "{} cannot be used and will be left out:",
            counted(summary.fault_count, "line", "lines")
        ));
    }
    if arrival.new == 0 {
        lines.push(NOTHING_NEW.to_owned());
    }
    lines
}
