//! Why a part of a mix cannot be used.

use heapwright_garden::{FoundError, MOST_NITROGEN_PCT};
use heapwright_texts::Locale;
use heapwright_texts::messages::refusals as texts;

use super::{field_name, figure};
use crate::page::sentence;

/// A part that cannot be used, as a sentence.
#[must_use]
pub fn found_refusal(error: &FoundError, locale: Locale) -> String {
    sentence(&after_colon(error, locale))
}

/// The same as it stands behind the name of the part.
pub(super) fn after_colon(error: &FoundError, locale: Locale) -> String {
    let exact = |number: f64| figure(number, locale);
    let rounded = |number: f64| locale.decimals(number, 1, 1);
    match error {
        FoundError::OutOfRange {
            field,
            stated,
            least,
            most,
        } => texts::FigureOutside {
            field: &field_name(field, locale),
            least: &exact(*least),
            most: &exact(*most),
            stated: &exact(*stated),
        }
        .said(locale),
        FoundError::TooFew => texts::too_few_figures(locale).to_owned(),
        FoundError::Contradiction {
            nitrogen_pct_dry, ..
        } if *nitrogen_pct_dry == 0.0 => texts::ratio_without_nitrogen(locale).to_owned(),
        FoundError::Contradiction {
            carbon_pct_dry,
            nitrogen_pct_dry,
            cn_ratio,
        } => texts::RatioContradicts {
            carbon: &exact(*carbon_pct_dry),
            follows: &rounded(carbon_pct_dry / nitrogen_pct_dry),
            nitrogen: &exact(*nitrogen_pct_dry),
            ratio: &exact(*cn_ratio),
        }
        .said(locale),
        FoundError::OverFull { sum_pct_dry } => texts::FiguresOverFull {
            sum: &rounded(*sum_pct_dry),
        }
        .said(locale),
        FoundError::RatioWithoutCarbon => texts::ratio_without_carbon(locale).to_owned(),
        FoundError::CombinedOverFull {
            carbon_pct_dry,
            nitrogen_pct_dry,
        } => texts::RatioOverFull {
            carbon: &rounded(*carbon_pct_dry),
            limit: &exact(MOST_NITROGEN_PCT),
            nitrogen: &rounded(*nitrogen_pct_dry),
        }
        .said(locale),
        FoundError::MineralsOverFull { sum_pct_dry } => texts::MineralsOverFull {
            sum: &rounded(*sum_pct_dry),
        }
        .said(locale),
        FoundError::TwoMoistures { first, second } => {
            texts::TwoMoistures { first, second }.said(locale)
        }
        FoundError::NoName => texts::no_name(locale).to_owned(),
        FoundError::UnknownMaterial { id } => texts::UnknownMaterial { id }.said(locale),
        FoundError::NoFigures { name } => texts::NoFigures { name }.said(locale),
        FoundError::UnknownMeasure { id } => texts::UnknownMeasure { id }.said(locale),
        FoundError::NoDensity => texts::no_density(locale).to_owned(),
    }
}

#[cfg(test)]
pub(super) mod tests {
    use super::*;
    use crate::refusals::tests::german;

    /// One of each kind.
    pub fn errors() -> Vec<FoundError> {
        let fields = [
            "moisture_pct",
            "nitrogen_pct_dry",
            "cn_ratio",
            "bulk_density_kg_m3",
            "carbon_pct_dry",
            "ash_pct_dry",
            "phosphorus_pct_dry",
            "potassium_pct_dry",
            "calcium_pct_dry",
            "magnesium_pct_dry",
            "sodium_pct_dry",
        ];
        let outside = fields.map(|field| FoundError::OutOfRange {
            field,
            stated: -2.5,
            least: 0.1,
            most: 99.9,
        });
        let contradiction = |nitrogen_pct_dry| FoundError::Contradiction {
            carbon_pct_dry: 45.5,
            nitrogen_pct_dry,
            cn_ratio: 30.25,
        };
        let mut errors = vec![
            FoundError::TooFew,
            contradiction(0.0),
            contradiction(2.0),
            FoundError::OverFull { sum_pct_dry: 104.0 },
            FoundError::RatioWithoutCarbon,
            FoundError::CombinedOverFull {
                carbon_pct_dry: 80.04,
                nitrogen_pct_dry: 60.06,
            },
            FoundError::MineralsOverFull {
                sum_pct_dry: 101.26,
            },
            FoundError::TwoMoistures {
                first: "nass".to_owned(),
                second: "trocken".to_owned(),
            },
            FoundError::NoName,
            FoundError::UnknownMaterial {
                id: "moon".to_owned(),
            },
            FoundError::NoFigures {
                name: "Mond".to_owned(),
            },
            FoundError::UnknownMeasure {
                id: "thimble".to_owned(),
            },
            FoundError::NoDensity,
        ];
        errors.extend(outside);
        errors
    }

    #[test]
    fn a_part_is_refused_as_its_error_says_and_in_words() {
        for error in errors() {
            let german = german(&error, found_refusal);
            assert!(!german.contains('_'), "{german}");
        }
    }
}
