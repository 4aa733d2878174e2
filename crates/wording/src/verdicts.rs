//! How is the mixture? One word and one sentence a figure.

use heapwright_answers::{MixAnswer, Mixture, Totals};
use heapwright_garden::FoundPart;
use heapwright_quantity::{UnitSystem, VolumeUnit};
use heapwright_terms::Target;
use heapwright_texts::Locale;
use heapwright_texts::messages::verdicts as texts;

use crate::amounts::{apart, names_begin_small, percent_text, ratio_text};

/// The scale on which C:N is shown; said beside every C:N that is opened.
#[must_use]
pub fn carbon_scale(locale: Locale) -> &'static str {
    texts::carbon_scale(locale)
}

/// Said once on every face.
#[must_use]
pub fn disclaimer(locale: Locale) -> &'static str {
    texts::disclaimer(locale)
}

/// Where a figure lies against its limits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FigureState {
    /// Below.
    Low,
    /// Inside.
    Good,
    /// Above.
    High,
    /// It cannot be told.
    Unknown,
}

impl FigureState {
    fn of(value: f64, low: f64, high: f64) -> Self {
        // A value on the limit is good; the tolerance is that of the recipe solver.
        if value < low * (1.0 - 1e-6) {
            Self::Low
        } else if value > high * (1.0 + 1e-6) {
            Self::High
        } else {
            Self::Good
        }
    }
}

/// State and word of the C:N.
#[must_use]
pub fn ratio_state(
    mixture: &Mixture,
    target: &Target,
    locale: Locale,
) -> (FigureState, &'static str) {
    let Some(ratio) = mixture.carbon_to_nitrogen else {
        return (FigureState::Unknown, texts::no_nitrogen(locale));
    };
    let state = FigureState::of(
        ratio.value,
        target.carbon_to_nitrogen_low,
        target.carbon_to_nitrogen_high,
    );
    (
        state,
        match state {
            FigureState::Low => texts::too_green(locale),
            FigureState::High => texts::too_brown(locale),
            FigureState::Good | FigureState::Unknown => texts::good(locale),
        },
    )
}

/// State and word of the moisture.
#[must_use]
pub fn moisture_state(
    mixture: &Mixture,
    target: &Target,
    locale: Locale,
) -> (FigureState, &'static str) {
    let state = FigureState::of(
        mixture.moisture_wet_basis.value,
        target.moisture_wet_basis_low,
        target.moisture_wet_basis_high,
    );
    (
        state,
        match state {
            FigureState::Low => texts::too_dry(locale),
            FigureState::High => texts::too_wet(locale),
            FigureState::Good | FigureState::Unknown => texts::good(locale),
        },
    )
}

/// State and word of the air space.
#[must_use]
pub fn air_state(
    mixture: &Mixture,
    target: &Target,
    locale: Locale,
) -> (FigureState, &'static str) {
    let Some(air) = mixture.free_air_space else {
        return (FigureState::Unknown, texts::not_known(locale));
    };
    let state = FigureState::of(
        air.value,
        target.free_air_space_low,
        target.free_air_space_high,
    );
    (
        state,
        match state {
            FigureState::Low => texts::too_tight(locale),
            FigureState::High => texts::too_loose(locale),
            FigureState::Good | FigureState::Unknown => texts::airy(locale),
        },
    )
}

/// The chance in words and tenths: "about 6 in 10".
#[must_use]
pub fn chance_text(chance: f64, locale: Locale) -> String {
    let tenths = (chance * 10.0).round();
    if tenths >= 10.0 {
        texts::nearly_certain(locale).to_owned()
    } else if tenths < 1.0 {
        texts::less_than_one_in_ten(locale).to_owned()
    } else {
        texts::AboutInTen { tenths }.said(locale)
    }
}

/// A value beyond one of two limits, with digits enough to show that it is.
fn beyond(value: f64, (low, high): (f64, f64), is_ratio: bool, locale: Locale) -> String {
    let limit = if value < low { low } else { high };
    apart(value, limit, is_ratio, locale).0
}

/// What is in hand, by itself: "By itself this is too wet (82 %; aim 50 to 60 %) and too green (C:N 17; aim 25 to 40)."
#[must_use]
pub fn in_hand_line(answer: &MixAnswer, locale: Locale) -> String {
    let (mixture, target) = (&answer.mixture, &answer.target);
    let faults: Vec<String> = [
        moisture_fault(mixture, target, locale),
        ratio_fault(mixture, target, locale),
        air_fault(mixture, target, locale),
    ]
    .into_iter()
    .flatten()
    .collect();
    if faults.is_empty() {
        return texts::by_itself_good(locale).to_owned();
    }
    texts::ByItself {
        faults: &locale.list(&faults),
    }
    .said(locale)
}

fn moisture_fault(mixture: &Mixture, target: &Target, locale: Locale) -> Option<String> {
    let limits = (
        target.moisture_wet_basis_low,
        target.moisture_wet_basis_high,
    );
    let value = &beyond(mixture.moisture_wet_basis.value, limits, false, locale);
    let (low, high) = (
        &percent_text(limits.0, locale),
        &percent_text(limits.1, locale),
    );
    match moisture_state(mixture, target, locale).0 {
        FigureState::Low => Some(texts::FaultTooDry { high, low, value }.said(locale)),
        FigureState::High => Some(texts::FaultTooWet { high, low, value }.said(locale)),
        FigureState::Good | FigureState::Unknown => None,
    }
}

fn ratio_fault(mixture: &Mixture, target: &Target, locale: Locale) -> Option<String> {
    let Some(ratio) = mixture.carbon_to_nitrogen else {
        return Some(texts::fault_no_nitrogen(locale).to_owned());
    };
    let limits = (
        target.carbon_to_nitrogen_low,
        target.carbon_to_nitrogen_high,
    );
    let value = &beyond(ratio.value, limits, true, locale);
    let (low, high) = (&ratio_text(limits.0, locale), &ratio_text(limits.1, locale));
    match ratio_state(mixture, target, locale).0 {
        FigureState::Low => Some(texts::FaultTooGreen { high, low, value }.said(locale)),
        FigureState::High => Some(texts::FaultTooBrown { high, low, value }.said(locale)),
        FigureState::Good | FigureState::Unknown => None,
    }
}

fn air_fault(mixture: &Mixture, target: &Target, locale: Locale) -> Option<String> {
    let air = mixture.free_air_space?;
    let limits = (target.free_air_space_low, target.free_air_space_high);
    let value = &beyond(air.value, limits, false, locale);
    let low = &percent_text(limits.0, locale);
    match air_state(mixture, target, locale).0 {
        FigureState::Low => Some(texts::FaultTooTight { low, value }.said(locale)),
        FigureState::High => Some(texts::FaultTooLoose { low, value }.said(locale)),
        FigureState::Good | FigureState::Unknown => None,
    }
}

/// Why volumes and masses tell different stories, with the mixture's own numbers.
///
/// Of two parts, the larger by volume over the smaller; `None` for other mixtures.
#[must_use]
pub fn volumes_and_masses(answer: &MixAnswer, locale: Locale) -> Option<String> {
    let ([first, second], [one, two]) = (&answer.parts[..], &answer.brought[..]) else {
        return None;
    };
    let volumes = one.volume_m3.zip(two.volume_m3)?;
    let ((small, little, little_m3), (large, much, much_m3)) = if volumes.0 <= volumes.1 {
        ((first, one, volumes.0), (second, two, volumes.1))
    } else {
        ((second, two, volumes.1), (first, one, volumes.0))
    };
    if little_m3 <= 0.0 || little.dry_mass_kg <= 0.0 {
        return None;
    }
    let name = |found: &FoundPart| match &found.material {
        None => found.name.clone(),
        Some(material) if names_begin_small(locale) => material.short_name.to_lowercase(),
        Some(material) => material.short_name.clone(),
    };
    // One litre, or one US gallon, of each.
    let (vessel, vessel_m3) = match locale.units {
        UnitSystem::Metric => ("litre", VolumeUnit::Litre.cubic_metres()),
        UnitSystem::UsCustomary => ("gallon", VolumeUnit::UsGallon.cubic_metres()),
    };
    let mass =
        |totals: &Totals, volume_m3: f64| locale.mass(totals.wet_mass_kg / volume_m3 * vessel_m3);
    let water = |totals: &Totals| percent_text(totals.moisture_wet_basis(), locale);
    Some(
        texts::VolumesAndMasses {
            large: &name(large),
            large_mass: &mass(much, much_m3),
            large_water: &water(much),
            masses: &locale.significant(much.dry_mass_kg / little.dry_mass_kg, 2),
            small: &name(small),
            small_mass: &mass(little, little_m3),
            small_water: &water(little),
            vessel,
            volumes: &locale.significant(much_m3 / little_m3, 2),
        }
        .said(locale),
    )
}
