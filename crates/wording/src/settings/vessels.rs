//! What the settings say of the vessels and how they are weighed.

use heapwright_journal::Moment;
use heapwright_quantity::UnitSystem;
use heapwright_texts::Locale;
use heapwright_texts::messages::settings as texts;

use crate::journal::day_text;

/// Heading of the vessels.
#[must_use]
pub fn your_vessels(locale: Locale) -> &'static str {
    texts::your_vessels(locale)
}

/// Why they are weighed.
#[must_use]
pub fn vessels_why(locale: Locale) -> &'static str {
    texts::vessels_why(locale)
}

/// Opens the steps.
#[must_use]
pub fn weigh(locale: Locale) -> &'static str {
    texts::weigh(locale)
}

/// Closes the steps.
#[must_use]
pub fn not_now(locale: Locale) -> &'static str {
    texts::not_now(locale)
}

/// Forth.
#[must_use]
pub fn next(locale: Locale) -> &'static str {
    texts::next(locale)
}

/// Back.
#[must_use]
pub fn back(locale: Locale) -> &'static str {
    texts::back(locale)
}

/// The choice of the vessel.
#[must_use]
pub fn which_vessel(locale: Locale) -> &'static str {
    texts::which_vessel(locale)
}

/// First step.
#[must_use]
pub fn step_empty(locale: Locale) -> &'static str {
    texts::step_empty(locale)
}

/// How.
#[must_use]
pub fn step_empty_how(locale: Locale) -> &'static str {
    texts::step_empty_how(locale)
}

/// Second step.
#[must_use]
pub fn step_water(locale: Locale) -> &'static str {
    texts::step_water(locale)
}

/// How.
#[must_use]
pub fn step_water_how(locale: Locale) -> &'static str {
    texts::step_water_how(locale)
}

/// Too heavy to weigh.
#[must_use]
pub fn step_water_heavy(locale: Locale) -> &'static str {
    texts::step_water_heavy(locale)
}

/// Third step.
#[must_use]
pub fn step_material(locale: Locale) -> &'static str {
    texts::step_material(locale)
}

/// How.
#[must_use]
pub fn step_material_how(locale: Locale) -> &'static str {
    texts::step_material_how(locale)
}

/// The material.
#[must_use]
pub fn which_material(locale: Locale) -> &'static str {
    texts::which_material(locale)
}

/// Saves the volume.
#[must_use]
pub fn save_volume(locale: Locale) -> &'static str {
    texts::save_volume(locale)
}

/// Saves the density.
#[must_use]
pub fn save_density(locale: Locale) -> &'static str {
    texts::save_density(locale)
}

/// It is known otherwise.
#[must_use]
pub fn known_volume(locale: Locale) -> &'static str {
    texts::known_volume(locale)
}

/// The full vessel is not heavier than the empty one.
#[must_use]
pub fn not_heavier(locale: Locale) -> &'static str {
    texts::not_heavier(locale)
}

/// Nothing was picked.
#[must_use]
pub fn no_material(locale: Locale) -> &'static str {
    texts::no_material(locale)
}

/// A weight is missing.
#[must_use]
pub fn no_weight(locale: Locale) -> &'static str {
    texts::no_weight(locale)
}

/// A volume is missing.
#[must_use]
pub fn no_volume(locale: Locale) -> &'static str {
    texts::no_volume(locale)
}

/// What was typed before journals kept it.
#[must_use]
pub fn only_here(locale: Locale) -> &'static str {
    texts::only_here(locale)
}

/// Puts them there.
#[must_use]
pub fn into_journal(locale: Locale) -> &'static str {
    texts::into_journal(locale)
}

/// Label of an empty vessel's weight.
#[must_use]
pub fn empty_label(locale: Locale) -> &'static str {
    match locale.units {
        UnitSystem::Metric => texts::empty_kilograms(locale),
        UnitSystem::UsCustomary => texts::empty_pounds(locale),
    }
}

/// Label of the weight of a vessel full of water.
#[must_use]
pub fn water_label(locale: Locale) -> &'static str {
    match locale.units {
        UnitSystem::Metric => texts::water_kilograms(locale),
        UnitSystem::UsCustomary => texts::water_pounds(locale),
    }
}

/// Label of the weight of a vessel full of a material.
#[must_use]
pub fn full_label(locale: Locale) -> &'static str {
    match locale.units {
        UnitSystem::Metric => texts::full_kilograms(locale),
        UnitSystem::UsCustomary => texts::full_pounds(locale),
    }
}

/// Label of a volume.
#[must_use]
pub fn holds_label(locale: Locale) -> &'static str {
    match locale.units {
        UnitSystem::Metric => texts::holds_litres(locale),
        UnitSystem::UsCustomary => texts::holds_gallons(locale),
    }
}

/// What a vessel was found to hold [m3].
#[must_use]
pub fn holds_line(volume_m3: f64, locale: Locale) -> String {
    texts::Holds {
        volume: &locale.volume(volume_m3),
    }
    .said(locale)
}

/// How many times the usual a vessel may hold, or what part of it, before its figures are doubted: large
/// and small buckets lie within it, pounds that were taken for ounces do not.
const USUAL_WITHIN: f64 = 5.0;

/// That a vessel was found to hold what such a vessel does not [m3]; nothing when it is near the usual.
#[must_use]
pub fn unusual_vessel(volume_m3: f64, usual_m3: f64, locale: Locale) -> Option<String> {
    let times = volume_m3 / usual_m3;
    let is_usual = (1.0 / USUAL_WITHIN..=USUAL_WITHIN).contains(&times);
    (!is_usual).then(|| {
        texts::VesselUnusual {
            volume: &locale.volume(usual_m3),
        }
        .said(locale)
    })
}

/// How heavy a material was found to be [kg/m3].
#[must_use]
pub fn density_line(density_kg_m3: f64, locale: Locale) -> String {
    match locale.units {
        UnitSystem::Metric => texts::DensityKilograms {
            density: &locale.decimals(density_kg_m3, 0, 0),
        }
        .said(locale),
        UnitSystem::UsCustomary => {
            // Pounds and yards of 1959: 0.45359237 kg, 0.9144 m, both exact.
            let pounds = density_kg_m3 * 0.764_554_857_984 / 0.453_592_37;
            texts::DensityPounds {
                density: &locale.decimals(pounds, 0, 0),
            }
            .said(locale)
        }
    }
}

/// What a vessel holds as the journal has it, since a day [m3].
#[must_use]
pub fn vessel_found(volume_m3: f64, since: Moment, locale: Locale) -> String {
    texts::VesselFound {
        day: &day_text(since, locale),
        volume: &locale.volume(volume_m3),
    }
    .said(locale)
}

/// What a vessel of this name usually holds [m3].
#[must_use]
pub fn vessel_usual(volume_m3: f64, locale: Locale) -> String {
    texts::VesselUsual {
        volume: &locale.volume(volume_m3),
    }
    .said(locale)
}

#[cfg(test)]
mod tests {
    use heapwright_texts::Translation;

    use super::*;

    #[test]
    fn a_vessel_that_holds_far_more_or_less_than_usual_is_doubted() {
        let translation = Translation::read("de", Translation::GERMAN, "").unwrap();
        let english = Locale::default();
        let german = english.in_language(Some(Box::leak(Box::new(translation))));
        for usual in [0.002, 0.01, 0.049] {
            assert_eq!(unusual_vessel(usual, 0.01, english), None, "{usual}");
        }
        for unusual in [0.899, 0.0019] {
            assert_eq!(
                unusual_vessel(unusual, 0.01, english).unwrap(),
                "Such a vessel usually holds about 10\u{a0}L: check the figures."
            );
            assert_eq!(
                unusual_vessel(unusual, 0.01, german).unwrap(),
                "So ein Gefäß fasst üblicherweise etwa 10\u{a0}L: Prüfe die Angaben."
            );
        }
    }

    #[test]
    fn a_density_is_the_same_in_both_systems() {
        // 593 kg/m3 is a thousand pounds in a cubic yard.
        let told = density_line(593.276, Locale::english(UnitSystem::UsCustomary));
        assert_eq!(told, "That is 1000\u{a0}lb in a cubic yard.");
    }
}
