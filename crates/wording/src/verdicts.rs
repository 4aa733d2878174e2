//! How is the mixture? One word and one sentence a figure.

use heapwright_answers::{MixAnswer, Mixture, Totals};
use heapwright_garden::FoundPart;
use heapwright_quantity::{UnitSystem, VolumeUnit, mass_text, significant};
use heapwright_terms::Target;
use heapwright_texts::Locale;

use crate::amounts::{apart, percent_text, ratio_text};

/// The scale on which C:N is shown; said beside every C:N that is opened.
pub const CARBON_SCALE: &str = "Carbon is counted as composting handbooks count it: the part of the dry matter that is not ash, divided by 1.8. The aim of about 30 belongs to that scale. A laboratory that measures carbon itself finds less in plants, so its C:N reads lower.";

/// Said once on every face.
pub const DISCLAIMER: &str = "These are estimates from typical figures. Your own stuff differs: the ranges say by how much. Local rules on what may be composted come first.";

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
pub fn ratio_state(mixture: &Mixture, target: &Target) -> (FigureState, &'static str) {
    let Some(ratio) = mixture.carbon_to_nitrogen else {
        return (FigureState::Unknown, "no nitrogen");
    };
    let state = FigureState::of(
        ratio.value,
        target.carbon_to_nitrogen_low,
        target.carbon_to_nitrogen_high,
    );
    (
        state,
        match state {
            FigureState::Low => "too green",
            FigureState::High => "too brown",
            FigureState::Good | FigureState::Unknown => "good",
        },
    )
}

/// State and word of the moisture.
#[must_use]
pub fn moisture_state(mixture: &Mixture, target: &Target) -> (FigureState, &'static str) {
    let state = FigureState::of(
        mixture.moisture_wet_basis.value,
        target.moisture_wet_basis_low,
        target.moisture_wet_basis_high,
    );
    (
        state,
        match state {
            FigureState::Low => "too dry",
            FigureState::High => "too wet",
            FigureState::Good | FigureState::Unknown => "good",
        },
    )
}

/// State and word of the air space.
#[must_use]
pub fn air_state(mixture: &Mixture, target: &Target) -> (FigureState, &'static str) {
    let Some(air) = mixture.free_air_space else {
        return (FigureState::Unknown, "not known");
    };
    let state = FigureState::of(
        air.value,
        target.free_air_space_low,
        target.free_air_space_high,
    );
    (
        state,
        match state {
            FigureState::Low => "too tight",
            FigureState::High => "too loose",
            FigureState::Good | FigureState::Unknown => "airy",
        },
    )
}

/// The chance in words and tenths: "about 6 in 10".
#[must_use]
pub fn chance_text(chance: f64) -> String {
    let tenths = (chance * 10.0).round();
    if tenths >= 10.0 {
        "nearly certain".to_owned()
    } else if tenths < 1.0 {
        "less than 1 in 10".to_owned()
    } else {
        format!("about {tenths:.0} in 10")
    }
}

/// A value beyond one of two limits, with digits enough to show that it is.
fn beyond(value: f64, (low, high): (f64, f64), is_ratio: bool) -> String {
    apart(value, if value < low { low } else { high }, is_ratio).0
}

/// What is in hand, by itself: "By itself this is too wet (82 %; aim 50 to 60 %) and too green (C:N 17; aim 25 to 40)."
#[must_use]
pub fn in_hand_line(answer: &MixAnswer) -> String {
    let (mixture, target) = (&answer.mixture, &answer.target);
    let mut faults = Vec::new();
    let (state, word) = moisture_state(mixture, target);
    if state != FigureState::Good {
        let limits = (
            target.moisture_wet_basis_low,
            target.moisture_wet_basis_high,
        );
        faults.push(format!(
            "{word} ({}; aim {} to {})",
            beyond(mixture.moisture_wet_basis.value, limits, false),
            percent_text(limits.0),
            percent_text(limits.1),
        ));
    }
    match mixture.carbon_to_nitrogen {
        Some(ratio) => {
            let (state, word) = ratio_state(mixture, target);
            if state != FigureState::Good {
                let limits = (
                    target.carbon_to_nitrogen_low,
                    target.carbon_to_nitrogen_high,
                );
                faults.push(format!(
                    "{word} (C:N {}; aim {} to {})",
                    beyond(ratio.value, limits, true),
                    ratio_text(limits.0),
                    ratio_text(limits.1),
                ));
            }
        }
        None => faults.push("without any nitrogen, so that it has no C:N".to_owned()),
    }
    let (state, word) = air_state(mixture, target);
    if let (FigureState::Low | FigureState::High, Some(air)) = (state, mixture.free_air_space) {
        faults.push(format!(
            "{word} ({} air; aim for at least {})",
            beyond(
                air.value,
                (target.free_air_space_low, target.free_air_space_high),
                false
            ),
            percent_text(target.free_air_space_low)
        ));
    }
    match &faults[..] {
        [] => "By itself this is a good mixture already.".to_owned(),
        [one] => format!("By itself this is {one}."),
        [most @ .., last] => format!("By itself this is {} and {last}.", most.join(", ")),
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
    let name = |found: &FoundPart| {
        found.material.as_ref().map_or_else(
            || found.name.clone(),
            |material| material.short_name.to_lowercase(),
        )
    };
    // One litre, or one US gallon, of each.
    let (vessel, vessel_m3) = match locale.units {
        UnitSystem::Metric => ("litre", VolumeUnit::Litre.cubic_metres()),
        UnitSystem::UsCustomary => ("gallon", VolumeUnit::UsGallon.cubic_metres()),
    };
    let weighs = |totals: &Totals, volume_m3: f64| {
        format!(
            "{} ({} water)",
            locale.mass(totals.wet_mass_kg / volume_m3 * vessel_m3),
            percent_text(totals.moisture_wet_basis())
        )
    };
    let (large, small) = (name(large), name(small));
    Some(format!(
        "By volume there is {} of {large} to 1 of {small}, by dry matter {} to 1: a {vessel} of {large} weighs {}, a {vessel} of {small} {}.",
        locale.significant(much_m3 / little_m3, 2),
        locale.significant(much.dry_mass_kg / little.dry_mass_kg, 2),
        weighs(much, much_m3),
        weighs(little, little_m3),
    ))
}
