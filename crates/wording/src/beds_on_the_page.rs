//! What the page says of beds and stores: the sentences of the plan, without the words of commands.

use heapwright_answers::spreading::{BedLimit, Binding};
use heapwright_answers::{BedAnswer, BedsNotice};
use heapwright_catalogue::Catalogue;
use heapwright_garden::Garden;
use heapwright_quantity::{UnitSystem, significant};
use heapwright_terms::MaterialId;
use heapwright_texts::Locale;

use crate::amounts::name_of;
use crate::spreading::{beds_notice, binding_line};

/// The beds.
pub const BEDS: &str = "Beds";
/// The stores.
pub const STORES: &str = "Stores";
/// No bed is described.
pub const NO_BEDS: &str = "No bed yet. Describe one by its area and what grows there; then compost can be shared out among the beds.";
/// A bed had nothing spread on it.
pub const NEVER_SPREAD: &str = "No compost written down yet.";
/// A bed without a name.
pub const BED_NEEDS_NAME: &str = "Give the bed a name, such as North bed.";
/// A bed of that name is there.
pub const BED_NAME_TAKEN: &str = "A bed of this name is there already: give another name.";
/// An area cannot be read.
pub const NO_AREA: &str = "Enter the area, such as 12, or two sides, such as 3 m x 1.2 m.";
/// The plan was asked without beds.
pub const NO_BED_TICKED: &str = "Tick at least one bed.";
/// Neither the journal nor the keeper says how much compost there is.
pub const NO_COMPOST_SAID: &str =
    "Enter how much compost there is: the journal does not tell for this one.";
/// A count of days cannot be read.
pub const NO_DAYS: &str = "Enter the days until the harvest, from 0 to 3660, or leave it empty.";
/// Nothing is put by.
pub const NO_STORES: &str = "Nothing is put by yet. Dry leaves, straw or torn cardboard kept under cover are what a wet heap asks for: write down what you gather.";
/// All is used up.
pub const ALL_USED: &str = "All that was put by is used up. Time to gather more.";
/// No material was chosen.
pub const NO_MATERIAL: &str = "Choose a material first.";
/// What opens the uses away from beds.
pub const OTHER_USES: &str = "Other uses: pots, sowing, lawn, mulch, trees, tea";

/// What stops a bed from getting more, as a sentence of the page.
#[must_use]
pub fn page_binding_line(bed: &BedAnswer, locale: Locale) -> String {
    match bed.share.binding {
        Binding::Limit(BedLimit::MaturityUnknown) => format!(
            "{}: none yet, for seeds or seedlings come soon and the compost was not tested for maturity; test it, or say under \"About the compost\" that it is mature.",
            bed.asked.name
        ),
        Binding::Limit(BedLimit::RawUnknown) => format!(
            "{}: none, for nobody said whether raw manure or the like went into the compost, and the harvest comes before the {} days of waiting are over; say under \"About the compost\" if none did.",
            bed.asked.name,
            locale.significant(bed.share.weighed.wait_days.unwrap_or(0.0), 3)
        ),
        _ => binding_line(bed, locale),
    }
}

/// What to know about a plan, as a sentence of the page.
#[must_use]
pub fn page_beds_notice(notice: &BedsNotice, locale: Locale) -> String {
    match notice {
        BedsNotice::CompostAssumed => {
            "The compost was never analysed: usual figures with wide ranges are taken.".to_owned()
        }
        BedsNotice::MaturityUnknown => {
            "No tests show that the compost is mature: as with immature compost, let eight weeks pass before anything is sown or planted in it; the heap's own place tells what is missing.".to_owned()
        }
        BedsNotice::VolumeEstimated => {
            "How much compost there is was estimated from what went in; enter it once you have measured it.".to_owned()
        }
        BedsNotice::RawUnknown { days, .. } => format!(
            "Nobody said whether manure, droppings or meat went in: what touches the soil waits {} days between spreading and harvest, unless you say under \"About the compost\" that none did.",
            locale.significant(*days, 3)
        ),
        BedsNotice::CropUnknown { bed, crop } => format!(
            "{bed}: \"{crop}\" is not in the table of crops, so it is taken as a medium feeder; describe the bed with how much it feeds."
        ),
        _ => beds_notice(notice, locale),
    }
}

/// A material in conditions, as it lies in a store: "shredded leaves"; its id where nobody knows it.
#[must_use]
pub fn shelf_name(
    catalogue: &Catalogue,
    garden: &Garden,
    material: &MaterialId,
    conditions: &[String],
) -> String {
    garden.material(catalogue, material).map_or_else(
        || material.as_str().to_owned(),
        |found| name_of(catalogue, &found, conditions),
    )
}

#[cfg(test)]
mod tests {
    use heapwright_catalogue::Spreading;

    use super::*;
    use crate::spreading::use_line;

    #[test]
    fn no_sentence_of_the_page_names_a_command() {
        let notices = [
            BedsNotice::CompostAssumed,
            BedsNotice::PartlyAssumed {
                figures: vec!["salt"],
            },
            BedsNotice::DiluteExtract { times: 2.7 },
            BedsNotice::FedByEarlier { beds: Vec::new() },
            BedsNotice::Wait {
                days: 120.0,
                beds: Vec::new(),
            },
            BedsNotice::VolumeEstimated,
            BedsNotice::MaturityUnknown,
            BedsNotice::Immature,
            BedsNotice::TiesUpNitrogen,
            BedsNotice::RawUnknown {
                days: 120.0,
                beds: Vec::new(),
            },
            BedsNotice::NoCrop { beds: Vec::new() },
            BedsNotice::CropUnknown {
                bed: "Pots".to_owned(),
                crop: "moss".to_owned(),
            },
            BedsNotice::SaltUnknown { beds: Vec::new() },
            BedsNotice::PhosphorusHigh { beds: Vec::new() },
            BedsNotice::Left { left_m3: 0.1 },
            BedsNotice::NotProven,
        ];
        for notice in notices {
            let line = page_beds_notice(&notice, UnitSystem::Metric);
            assert!(!line.contains('`') && !line.contains("--"), "{line}");
        }
    }

    #[test]
    fn tea_has_no_amount_and_its_caution() {
        let tea = Spreading::built_in().use_of("tea").unwrap();
        let line = use_line(tea, &tea.name, None);
        assert!(line.starts_with("Compost tea: none."), "{line}");
        assert!(line.contains("raw manure"), "{line}");
    }
}
