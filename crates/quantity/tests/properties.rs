//! What holds for every amount: it is written and read back, and scales; any text is answered.

#![allow(clippy::unwrap_used)]

use heapwright_quantity::{
    Amount, DecimalMark, Gallon, MassUnit, MeasureWords, Unit, UnitSystem, Vocabulary, VolumeUnit,
    mass_text, measure_count_text, parse_amount, parse_parts, significant, volume_text,
};
use proptest::prelude::*;

fn vocabulary(decimal: DecimalMark, gallon: Gallon) -> Vocabulary {
    Vocabulary {
        measures: MeasureWords::new(["handful", "mug", "bucket", "sack"].map(|word| (word, word))),
        gallon,
        decimal,
    }
}

fn any_vocabulary() -> impl Strategy<Value = Vocabulary> {
    (
        prop::sample::select(vec![
            DecimalMark::Unknown,
            DecimalMark::Point,
            DecimalMark::Comma,
        ]),
        prop::sample::select(vec![Gallon::Us, Gallon::Imperial]),
    )
        .prop_map(|(decimal, gallon)| vocabulary(decimal, gallon))
}

fn any_unit() -> impl Strategy<Value = Unit> {
    prop_oneof![
        prop::sample::select(MassUnit::ALL.to_vec()).prop_map(Unit::Mass),
        prop::sample::select(VolumeUnit::ALL.to_vec()).prop_map(Unit::Volume),
        prop::sample::select(vec!["handful", "mug", "bucket", "sack"])
            .prop_map(|id| Unit::Measure(id.to_owned())),
    ]
}

/// Counts that every unit allows: the largest unit is the tonne or the cubic metre.
fn any_count() -> impl Strategy<Value = f64> {
    prop_oneof![
        0.001..98.0f64,
        (1u32..98_000).prop_map(|thousandths| f64::from(thousandths) / 1000.0),
        (1u32..98).prop_map(f64::from),
    ]
}

/// Pieces of what people type, shuffled: far more telling than single random letters.
fn any_phrase() -> impl Strategy<Value = String> {
    let piece = prop_oneof![
        prop::sample::select(vec![
            "1", "2", "1/2", "½", "1,234", "3.5", "and", "a", "half", "of", "bucket", "mugs", "kg",
            "gal", ",", ";", "\n", "-", "−", "x", "dozen", "hundred", "twenty", "grass", "straw",
            "with", "+", "(", ")", ":", "some", "1e3", "0", "to", ".", "/", "İ", "u", "s",
        ])
        .prop_map(str::to_owned),
        "\\PC{0,4}",
    ];
    (prop::collection::vec(piece, 0..14), any::<bool>())
        .prop_map(|(pieces, spaced)| pieces.join(if spaced { " " } else { "" }))
}

proptest! {
    #[test]
    fn prop_u15_what_is_written_reads_back(
        count in any_count(), unit in any_unit(), vocabulary in any_vocabulary(),
    ) {
        let amount = Amount { count, unit };
        prop_assert_eq!(parse_amount(&amount.to_string(), &vocabulary), Ok(amount));
    }

    #[test]
    fn prop_u15_a_list_of_what_is_written_reads_back(
        amounts in prop::collection::vec((any_count(), any_unit()), 1..8),
        separator in prop::sample::select(vec![", ", "; ", "\n", " and ", " + ", " & ", " with "]),
        name_first in any::<bool>(),
        vocabulary in any_vocabulary(),
    ) {
        let amounts: Vec<Amount> =
            amounts.into_iter().map(|(count, unit)| Amount { count, unit }).collect();
        let texts: Vec<String> = amounts
            .iter()
            .map(|amount| if name_first { format!("oak leaves: {amount}") } else { format!("{amount} of oak leaves") })
            .collect();
        let parts = parse_parts(&texts.join(separator), &vocabulary).unwrap();
        prop_assert_eq!(parts.len(), amounts.len());
        for (part, amount) in parts.iter().zip(&amounts) {
            prop_assert_eq!(&part.amount, amount);
            prop_assert_eq!(&part.name, "oak leaves");
        }
    }

    #[test]
    fn prop_u15_scaling_scales_the_si_quantity(
        count in any_count(), unit in any_unit(), factor in 0.01..100.0f64,
    ) {
        let amount = Amount { count, unit };
        let scaled = amount.scaled(factor);
        // Two products of the same three factors differ by at most a few roundings.
        let near = |found: f64, expected: f64| (found - expected).abs() <= expected * 1e-15 * 4.0;
        match (amount.kilograms(), scaled.kilograms()) {
            (Some(one), Some(many)) => prop_assert!(near(many, one * factor)),
            (one, many) => prop_assert_eq!(one, many),
        }
        match (amount.cubic_metres(), scaled.cubic_metres()) {
            (Some(one), Some(many)) => prop_assert!(near(many, one * factor)),
            (one, many) => prop_assert_eq!(one, many),
        }
    }

    #[test]
    fn prop_u15_any_text_is_answered(text in any_phrase(), vocabulary in any_vocabulary()) {
        match parse_amount(&text, &vocabulary) {
            Ok(amount) => {
                prop_assert!(amount.count > 0.0 && amount.count.is_finite());
                prop_assert!(amount.kilograms().is_none_or(|mass| mass <= Amount::MOST_KILOGRAMS));
            }
            Err(error) => prop_assert!(error.to_string().chars().count() < 300),
        }
        match parse_parts(&text, &vocabulary) {
            Ok(parts) => {
                prop_assert!(!parts.is_empty());
                for part in parts {
                    prop_assert!(part.amount.count > 0.0 && part.amount.count.is_finite());
                    prop_assert!(!part.name.is_empty());
                    prop_assert!(text.contains(&part.text));
                }
            }
            Err(error) => prop_assert!(error.to_string().chars().count() < 400),
        }
    }

    #[test]
    fn prop_significant_is_near_and_short(value in -1e9..1e9f64, digits in 1usize..6) {
        let text = significant(value, digits).replace('\u{2212}', "-");
        let read: f64 = text.parse().unwrap();
        // Half a unit of the last digit, at most half of 10^(1-digits) of the value.
        let most = 0.5 * 10f64.powi(1 - i32::try_from(digits).unwrap());
        prop_assert!((read - value).abs() <= value.abs() * most * (1.0 + 1e-12));
        let trailing_zero = text.contains('.') && text.ends_with('0');
        prop_assert!(!text.contains('e') && !trailing_zero);
    }

    #[test]
    fn prop_texts_for_people_read_back_within_their_digits(value in 1e-6..900.0f64) {
        let vocabulary = vocabulary(DecimalMark::Point, Gallon::Us);
        for system in [UnitSystem::Metric, UnitSystem::UsCustomary] {
            let mass = parse_amount(&mass_text(value, system), &vocabulary).unwrap();
            let mass_kg = mass.kilograms().unwrap();
            // Two significant digits: within 5 % at worst.
            prop_assert!((mass_kg - value).abs() <= value * 0.0501);
            let volume = parse_amount(&volume_text(value, system), &vocabulary).unwrap();
            let volume_m3 = volume.cubic_metres().unwrap();
            prop_assert!((volume_m3 - value).abs() <= value * 0.0501);
        }
    }

    #[test]
    fn prop_measure_counts_read_back_within_their_step(count in 0.125..500.0f64) {
        let text = format!("{} bucket", measure_count_text(count));
        let read = parse_amount(&text, &vocabulary(DecimalMark::Unknown, Gallon::Us)).unwrap();
        let half_step = if count < 10.0 { 0.125 } else if count < 20.0 { 0.25 } else { 0.5 };
        prop_assert!((read.count - count).abs() <= half_step + 1e-12);
    }
}
