//! What stands on paper only: heads, tables to write in, how to read a handful.

use heapwright_answers::{PerCaddy, RecipeAnswer};
use heapwright_catalogue::Catalogue;
use heapwright_journal::Moment;
use heapwright_quantity::{Amount, Unit, UnitSystem, temperature_text};

use crate::amounts::{amount_of, amount_text, water_text};
use crate::journal::{MONTHS, day_text};

/// The language of all this, as a tag.
pub const LANGUAGE: &str = "en";
/// What a reader aloud says for a box to tick.
pub const BOX_TO_TICK: &str = "box to tick";
/// A letter is not in the type.
pub const LETTERS_LACKING: &str = "Letters that the type of this page lacks stand as \u{25af}. The journal keeps them as they were written.";
/// Said where the garden is made up.
pub const INVENTED_GARDEN: &str = "An invented garden, for looking around.";

/// Head of the card that makes pages.
pub const ON_PAPER: &str = "On paper";
/// What the page of a heap is for.
pub const ON_PAPER_HEAP: &str =
    "What goes with each caddy, what comes next, how to read a handful, and lines to write on.";
/// What the record is.
pub const ON_PAPER_ALL: &str = "What went in over the last year, month by month and heap by heap, what the probe showed, and what came out.";
/// Makes the page of a heap.
pub const PRESS_BIN: &str = "Page for the bin (PDF)";
/// Makes the record.
pub const PRESS_SEASON: &str = "Record (PDF)";
/// Makes the plan of the beds.
pub const PRESS_BEDS: &str = "Plan (PDF)";
/// It is being made.
pub const PRESSING: &str = "Setting the page.";
/// It was made.
pub const PRESSED: &str = "The page is among your downloads.";
/// It could not be made.
pub const NOT_PRESSED: &str = "The page could not be made. Load this page anew and try again.";

/// Title of the page that hangs beside a heap.
#[must_use]
pub fn bin_title(heap: &str) -> String {
    format!("{heap}: what goes in")
}
/// What the page beside a heap is for.
pub const BIN_UNDER: &str = "A page to hang beside the heap. Worked out from the journal; print a new one when the scraps or the stores change.";
/// Head of the table of caddies.
pub const WITH_EACH_CADDY: &str = "With the kitchen scraps";
/// Heads of its columns.
pub const CADDY_HEADS: [&str; 2] = ["Scraps", "Put with them, and mix in"];

/// So many caddies: "2 caddies".
#[must_use]
pub fn caddies(catalogue: &Catalogue, count: f64, system: UnitSystem) -> String {
    let amount = Amount {
        count,
        unit: Unit::Measure("caddy".to_owned()),
    };
    amount_text(catalogue, &amount, system)
}

/// What goes with them, each on a line of its own.
#[must_use]
pub fn put_with(catalogue: &Catalogue, recipe: &RecipeAnswer, system: UnitSystem) -> String {
    let mut things: Vec<String> = recipe
        .added
        .iter()
        .map(|added| amount_of(catalogue, &added.found, system))
        .collect();
    if recipe.whole.water_kg >= 0.05 {
        things.push(format!(
            "{} of water",
            water_text(recipe.whole.water_kg, system)
        ));
    }
    if things.is_empty() {
        "Nothing: they are right as they are.".to_owned()
    } else {
        things.join("\n")
    }
}

/// Which scraps and browns are meant, and how sure that is.
#[must_use]
pub fn caddy_lines(answer: &PerCaddy) -> Vec<String> {
    let scraps = answer.scraps.join(", ").to_lowercase();
    let mut lines = vec![if answer.scraps_known {
        format!("Scraps as they mostly came in the last three months: {scraps}.")
    } else {
        format!(
            "No scraps are written down for the last three months, so usual ones are taken: {scraps}."
        )
    }];
    if !answer.from_stores {
        lines.push("No browns are in the stores, so shredded dry leaves are taken.".to_owned());
    }
    if !answer.is_met() {
        lines.push(
            "This comes as near to a good mixture as the browns in reach allow; it does not get there."
                .to_owned(),
        );
    }
    lines
}

/// What the small map shows, for whoever cannot see it.
#[must_use]
pub fn map_told(answer: &PerCaddy) -> String {
    let at = |point: heapwright_answers::MapPoint| {
        format!(
            "C:N {:.0} and {:.0} % water",
            point.carbon_to_nitrogen,
            point.moisture_wet_basis * 100.0
        )
    };
    match (answer.map.in_hand, answer.map.mixture) {
        (Some(alone), Some(mixed)) => format!(
            "Map of C:N and moisture. One caddy alone: {}. With what goes with it: {}.",
            at(alone),
            at(mixed)
        ),
        _ => "Map of C:N and moisture, without a mixture.".to_owned(),
    }
}
/// What its signs mean.
pub const MAP_CAPTION: &str = "Ring: scraps alone. Black disc: with what goes with them. Points: where that may lie instead. Hatched: where heaps work well.";

/// Head of the dates.
pub const NEXT: &str = "What comes next";
/// Heads of their columns.
pub const NEXT_HEADS: [&str; 3] = ["Day", "What to do", "Done"];
/// There are none.
pub const NOTHING_NEXT: &str =
    "The journal tells of nothing that is due. Look at the heap in two weeks at the latest.";
/// Where they come from.
pub const NEXT_FROM: &str =
    "As the journal stands today; what you read or feed from now on changes these days.";

/// Head of the test by hand.
pub const SQUEEZE: &str = "Squeeze a handful from the middle";
/// Heads of its columns.
pub const SQUEEZE_HEADS: [&str; 3] = ["It feels", "You see", "So"];
/// The five ways a handful can feel, as the journal has them.
pub const SQUEEZE_ROWS: [[&str; 3]; 5] = [
    [
        "dusty",
        "Falls apart as dust",
        "Water well while turning; cover it",
    ],
    [
        "dry",
        "Hardly holds together, no sheen",
        "Water a little; add wet scraps",
    ],
    [
        "moist",
        "Holds together, a drop at most",
        "Leave it: this is right",
    ],
    ["wet", "Drops come out", "Mix in browns; keep rain off"],
    [
        "dripping",
        "Water runs out",
        "Mix in many browns and turn today",
    ],
];

/// Head of the cautions.
pub const BEWARE: &str = "Beware";
/// Head of what must be seen to before the compost is used.
pub const BEFORE_USE: &str = "Before its compost is used";
/// What holds at every heap.
pub const BEWARE_ALWAYS: [&str; 2] = [
    "Wear gloves, and wash your hands afterwards. Keep wounds covered, and a tetanus vaccination up to date.",
    "Dust and spores come up when dry or mouldy stuff is moved: wet it first and stand upwind. Who has a weak immune system or asthma leaves turning to others.",
];

/// Head of the table to write in.
pub const TO_WRITE: &str = "Write down what you find";

/// Heads of the table to write in.
#[must_use]
pub fn writing_heads(system: UnitSystem) -> [String; 6] {
    let unit = unit_of(system);
    [
        "Day".to_owned(),
        format!("Core, {unit}"),
        format!("Edge, {unit}"),
        format!("Air, {unit}"),
        "Squeeze".to_owned(),
        "Fed, turned, smelt, seen".to_owned(),
    ]
}

/// The unit of temperatures.
#[must_use]
pub const fn unit_of(system: UnitSystem) -> &'static str {
    match system {
        UnitSystem::Metric => "°C",
        UnitSystem::UsCustomary => "°F",
    }
}

/// Title of the record of a season.
pub const SEASON_TITLE: &str = "Record of the heaps";
/// In which time nothing happened.
pub const SEASON_EMPTY: &str = "Nothing was written down about any heap in this time.";

/// The time of a record.
#[must_use]
pub fn season_under(from: Moment, to: Moment) -> String {
    format!(
        "From {} to {}, as the journal has it.",
        day_text(from),
        day_text(to)
    )
}
/// Head of what went in by month, over all heaps.
pub const SEASON_MONTHS: &str = "Kept out of the bin, month by month";
/// Heads of what went into one heap.
pub const WENT_IN_HEADS: [&str; 5] = [
    "Month",
    "Feeds",
    "What went in, the most first",
    "Together",
    "Water",
];

/// A month: "May 2026".
#[must_use]
pub fn month_name((year, month): (i16, i8)) -> String {
    let index = usize::try_from(month).unwrap_or(1).clamp(1, 12);
    format!("{} {year}", MONTHS[index - 1])
}

/// A month in three letters: "May".
#[must_use]
pub fn month_short(month: i8) -> String {
    let index = usize::try_from(month).unwrap_or(1).clamp(1, 12);
    MONTHS[index - 1].chars().take(3).collect()
}

/// What is below the chart of a heap's readings.
#[must_use]
pub fn chart_caption(heap: &str) -> String {
    format!(
        "{heap}: what the probe showed in the core. Black triangles with a dotted line: turned."
    )
}

/// What the chart shows, for whoever cannot see it.
#[must_use]
pub fn chart_told(readings: &[(Moment, f64)], turnings: usize, system: UnitSystem) -> String {
    let hottest = readings
        .iter()
        .copied()
        .reduce(|one, other| if other.1 > one.1 { other } else { one });
    match hottest {
        Some((at, value)) => format!(
            "{} readings of the core, the hottest {} on {}; turned {turnings} times.",
            readings.len(),
            temperature_text(value, system),
            day_text(at)
        ),
        None => format!("No readings of the core; turned {turnings} times."),
    }
}

/// One reading: "24 °C in the core on 26 November 2025".
#[must_use]
pub fn reading_line(at: Moment, value_c: f64, system: UnitSystem) -> String {
    format!(
        "{} in the core on {}.",
        temperature_text(value_c, system),
        day_text(at)
    )
}

/// Nobody read a probe.
pub const NO_CORE: &str = "No probe was read in its core in this time.";

/// When a heap was turned.
#[must_use]
pub fn turned_line(turned: &[Moment]) -> String {
    let days: Vec<String> = turned.iter().map(|at| day_text(*at)).collect();
    match days.as_slice() {
        [] => "Not turned in this time.".to_owned(),
        [one] => format!("Turned once: {one}."),
        more => format!("Turned {} times: {}.", more.len(), more.join(", ")),
    }
}

/// Head of what the heat did.
pub const HEAT_MEASURED: &str = "Heat, as it was measured since the heap was last empty";
/// Head of what was taken out.
pub const HARVESTS: &str = "Compost taken out";
/// Heads of its columns.
pub const HARVEST_HEADS: [&str; 3] = ["Day", "How much", "Sieved"];

/// How a harvest was sieved.
#[must_use]
pub fn sieved(mesh_mm: Option<f64>) -> String {
    mesh_mm.map_or_else(|| "no".to_owned(), |mesh| format!("{mesh:.0}\u{a0}mm"))
}

/// How much was taken out where no amount was told.
#[must_use]
pub fn share_taken(share_pct: Option<f64>) -> String {
    share_pct.map_or_else(
        || "all of it".to_owned(),
        |share| format!("{share:.0}\u{a0}% of the heap"),
    )
}

/// Head of how ripe it is.
pub const RIPENESS: &str = "Ripeness at the end of this time";
/// Head of the account of nutrients.
pub const NUTRIENTS: &str = "Nutrients in it at the end of this time";

/// Title of the plan of the beds.
pub const BEDS_TITLE: &str = "Compost for the beds";
/// Heads of the plan.
pub const BEDS_HEADS: [&str; 7] = [
    "Bed", "Barrows", "Buckets", "Depth", "Amount", "Weight", "Done",
];
/// Head of what stops each bed.
pub const BEDS_LIMITED_BY: &str = "What stops each bed from getting more";
/// Head of what to know.
pub const BEDS_KNOW: &str = "What to know";
/// Head of the sources.
pub const SOURCES: &str = "Sources";
/// Nothing is left over.
pub const NOTHING_LEFT: &str = "Nothing is left over.";

/// A line with the numbers of its sources.
#[must_use]
pub fn with_sources(line: &str, numbers: &[usize]) -> String {
    let numbers: Vec<String> = numbers.iter().map(ToString::to_string).collect();
    match numbers.as_slice() {
        [] => line.to_owned(),
        [one] => format!("{line} (source {one})"),
        more => format!("{line} (sources {})", more.join(", ")),
    }
}
