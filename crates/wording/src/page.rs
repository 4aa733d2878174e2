//! Labels and hints of the page.

use heapwright_answers::{Chance, Figure, OnTheMap};
use heapwright_quantity::UnitSystem;

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
/// The settings.
pub const SETTINGS: &str = "Units, measures, aim";
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
pub fn units_name(system: UnitSystem) -> &'static str {
    match system {
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
pub fn chance_line(chance: &Chance) -> String {
    format!(
        "Chance to lie within all aims, with all that is uncertain: {}.",
        chance_text(chance.all)
    )
}

/// The map in a sentence, for those who do not see it.
#[must_use]
pub fn map_summary(map: &OnTheMap) -> String {
    let place = |point: &heapwright_answers::MapPoint| {
        format!(
            "C:N {}, moisture {}",
            ratio_text(point.carbon_to_nitrogen),
            percent_text(point.moisture_wet_basis)
        )
    };
    let aim = format!(
        "The good region is C:N {} to {}, moisture {} to {}.",
        ratio_text(map.target.carbon_to_nitrogen_low),
        ratio_text(map.target.carbon_to_nitrogen_high),
        percent_text(map.target.moisture_wet_basis_low),
        percent_text(map.target.moisture_wet_basis_high)
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
