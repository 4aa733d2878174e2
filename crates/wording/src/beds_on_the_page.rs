//! What the page says of beds and stores: the sentences of the plan, without the words of commands.

use heapwright_answers::spreading::{BedLimit, Binding};
use heapwright_answers::{BedAnswer, BedsNotice};
use heapwright_catalogue::Catalogue;
use heapwright_garden::Garden;
use heapwright_terms::MaterialId;
use heapwright_texts::Locale;
use heapwright_texts::messages::beds_on_the_page as texts;

use crate::amounts::name_of;
use crate::spreading::{beds_notice, binding_line};

/// The beds.
#[must_use]
pub fn beds(locale: Locale) -> &'static str {
    texts::beds(locale)
}

/// The stores.
#[must_use]
pub fn stores(locale: Locale) -> &'static str {
    texts::stores(locale)
}

/// No bed is described.
#[must_use]
pub fn no_beds(locale: Locale) -> &'static str {
    texts::no_beds(locale)
}

/// A bed had nothing spread on it.
#[must_use]
pub fn never_spread(locale: Locale) -> &'static str {
    texts::never_spread(locale)
}

/// A bed without a name.
#[must_use]
pub fn bed_needs_name(locale: Locale) -> &'static str {
    texts::bed_needs_name(locale)
}

/// A bed of that name is there.
#[must_use]
pub fn bed_name_taken(locale: Locale) -> &'static str {
    texts::bed_name_taken(locale)
}

/// A correction changes nothing.
#[must_use]
pub fn bed_unchanged(locale: Locale) -> &'static str {
    texts::bed_unchanged(locale)
}

/// An area cannot be read.
#[must_use]
pub fn no_area(locale: Locale) -> &'static str {
    texts::no_area(locale)
}

/// The plan was asked without beds.
#[must_use]
pub fn no_bed_ticked(locale: Locale) -> &'static str {
    texts::no_bed_ticked(locale)
}

/// Neither the journal nor the keeper says how much compost there is.
#[must_use]
pub fn no_compost_said(locale: Locale) -> &'static str {
    texts::no_compost_said(locale)
}

/// A count of days cannot be read.
#[must_use]
pub fn no_days(locale: Locale) -> &'static str {
    texts::no_days(locale)
}

/// Nothing is put by.
#[must_use]
pub fn no_stores(locale: Locale) -> &'static str {
    texts::no_stores(locale)
}

/// All is used up.
#[must_use]
pub fn all_used(locale: Locale) -> &'static str {
    texts::all_used(locale)
}

/// No material was chosen.
#[must_use]
pub fn no_material(locale: Locale) -> &'static str {
    texts::no_material(locale)
}

/// What is put by most often, to be tapped.
#[must_use]
pub fn often_put_by(locale: Locale) -> &'static str {
    texts::often_put_by(locale)
}

/// What opens the uses away from beds.
#[must_use]
pub fn other_uses(locale: Locale) -> &'static str {
    texts::other_uses(locale)
}

/// What stops a bed from getting more, as a sentence of the page.
#[must_use]
pub fn page_binding_line(bed: &BedAnswer, locale: Locale) -> String {
    let bed_name = &bed.asked.name;
    match bed.share.binding {
        Binding::Limit(BedLimit::MaturityUnknown) => {
            texts::BoundByMaturityUnknown { bed: bed_name }.said(locale)
        }
        Binding::Limit(BedLimit::RawUnknown) => texts::BoundByRawUnknown {
            bed: bed_name,
            days: &locale.significant(bed.share.weighed.wait_days.unwrap_or(0.0), 3),
        }
        .said(locale),
        _ => binding_line(bed, locale),
    }
}

/// What to know about a plan, as a sentence of the page.
#[must_use]
pub fn page_beds_notice(notice: &BedsNotice, locale: Locale) -> String {
    match notice {
        BedsNotice::CompostAssumed => texts::compost_assumed(locale).to_owned(),
        BedsNotice::MaturityUnknown => texts::maturity_unknown(locale).to_owned(),
        BedsNotice::VolumeEstimated => texts::volume_estimated(locale).to_owned(),
        BedsNotice::RawUnknown { days, .. } => texts::RawUnknown {
            days: &locale.significant(*days, 3),
        }
        .said(locale),
        BedsNotice::CropUnknown { bed, crop } => texts::CropUnknown { bed, crop }.said(locale),
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
    locale: Locale,
) -> String {
    garden.material(catalogue, material).map_or_else(
        || material.as_str().to_owned(),
        |found| name_of(catalogue, &found, conditions, locale),
    )
}

#[cfg(test)]
mod tests {
    use heapwright_catalogue::{GERMAN, Spreading};
    use heapwright_texts::Translation;

    use super::*;
    use crate::Spoken;
    use crate::spreading::use_line;

    #[test]
    fn no_sentence_of_the_page_names_a_command() {
        let notices = [
            BedsNotice::CompostAssumed,
            BedsNotice::PartlyAssumed {
                figures: vec!["salt"],
            },
            BedsNotice::DiluteExtract { times: 2.7 },
            BedsNotice::OffFoodBeds {
                because: Vec::new(),
                beds: vec!["Pots".to_owned()],
            },
            BedsNotice::DoubtfulOnFoodBeds {
                because: Vec::new(),
                beds: vec!["Pots".to_owned()],
            },
            BedsNotice::FedByEarlier {
                beds: Vec::new(),
                off_food: false,
            },
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
            BedsNotice::Left {
                left_m3: 0.1,
                off_food: true,
            },
            BedsNotice::NotProven,
        ];
        for notice in notices {
            let line = page_beds_notice(&notice, Locale::default());
            assert!(!line.contains('`') && !line.contains("--"), "{line}");
        }
    }

    #[test]
    fn compost_that_never_goes_on_food_beds_is_named_in_both_languages() {
        let german = Spoken::read("de", Translation::GERMAN, GERMAN).unwrap();
        let german: &'static Spoken = Box::leak(Box::new(german));
        let notice = |beds: &[&str]| BedsNotice::OffFoodBeds {
            because: Vec::new(),
            beds: beds.iter().map(|bed| (*bed).to_owned()).collect(),
        };
        for (locale, words) in [
            (Locale::default(), "never goes on food beds"),
            (german.locale(), "gehört nie auf Gemüsebeete"),
        ] {
            for beds in [&["Peas", "Open"][..], &[]] {
                let line = page_beds_notice(&notice(beds), locale);
                assert!(line.contains(words), "{line}");
                assert!(beds.iter().all(|bed| line.contains(bed)), "{line}");
            }
            // What is left over is not for pots.
            let left = |off_food| {
                let left_m3 = 0.1;
                page_beds_notice(&BedsNotice::Left { left_m3, off_food }, locale)
            };
            assert_ne!(left(true), left(false));
            assert!(!left(true).contains("pots") && !left(true).contains("Töpfe"));
        }
    }

    #[test]
    fn tea_has_no_amount_and_its_caution() {
        let tea = Spreading::built_in().use_of("tea").unwrap();
        let line = use_line(tea, &tea.name, None, Locale::default());
        assert!(line.starts_with("Compost tea: none."), "{line}");
        assert!(line.contains("raw manure"), "{line}");
    }

    #[test]
    fn what_was_not_measured_is_named_in_the_language() {
        let german = Spoken::read("de", Translation::GERMAN, GERMAN).unwrap();
        let german: &'static Spoken = Box::leak(Box::new(german));
        let figures = vec!["nitrogen", "phosphorus", "potassium", "salt", "moisture"];
        let notice = BedsNotice::PartlyAssumed { figures };
        let line = page_beds_notice(&notice, german.locale());
        assert!(
            line.ends_with("Stickstoff, Phosphor, Kalium, Salz und Feuchte."),
            "{line}"
        );
    }
}
