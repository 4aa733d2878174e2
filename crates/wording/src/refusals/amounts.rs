//! Why an amount, or a list of amounts, cannot be read.

use heapwright_quantity::{AmountError, AmountProblem, PartsError, PartsProblem};
use heapwright_texts::Locale;
use heapwright_texts::messages::{refusals as texts, refusals_of_commands as of_commands};

/// An amount that cannot be read, as a sentence.
#[must_use]
pub fn amount_refusal(error: &AmountError, locale: Locale) -> String {
    let typed = error.typed.as_str();
    if typed.is_empty() {
        said_of(texts::amount_untyped(locale), &error.problem, locale)
    } else {
        let amount = texts::AmountTyped { typed }.said(locale);
        said_of(&amount, &error.problem, locale)
    }
}

/// A list that cannot be read, as a sentence.
#[must_use]
pub fn parts_refusal(error: &PartsError, locale: Locale) -> String {
    #[allow(clippy::cast_precision_loss)] // a place in a list that somebody typed
    let part = error.index as f64 + 1.0;
    let text = error.text.as_str();
    match &error.problem {
        PartsProblem::Empty => of_commands::list_is_empty(locale).to_owned(),
        PartsProblem::TooLong => of_commands::list_is_too_long(locale).to_owned(),
        PartsProblem::TooManyParts => of_commands::list_has_too_many_parts(locale).to_owned(),
        PartsProblem::Amount(problem) => {
            let amount = of_commands::AmountOfPart { part, text }.said(locale);
            said_of(&amount, problem, locale)
        }
        PartsProblem::NoName => of_commands::PartWithoutName { part, text }.said(locale),
        PartsProblem::SeveralAmounts => {
            of_commands::PartWithSeveralAmounts { part, text }.said(locale)
        }
        PartsProblem::AmountInside => of_commands::PartWithAmountInside { part, text }.said(locale),
    }
}

/// What is wrong with the amount that is named.
fn said_of(amount: &str, problem: &AmountProblem, locale: Locale) -> String {
    match problem {
        AmountProblem::Empty => texts::AmountIsEmpty { amount }.said(locale),
        AmountProblem::TooLong => texts::AmountIsTooLong { amount }.said(locale),
        AmountProblem::NoNumber => texts::AmountHasNoNumber { amount }.said(locale),
        AmountProblem::Vague { words } => texts::AmountIsVague { amount, words }.said(locale),
        AmountProblem::NoUnit => texts::AmountHasNoUnit { amount }.said(locale),
        AmountProblem::UnknownUnit {
            word,
            nearest: Some(nearest),
        } => texts::AmountHasUnitLike {
            amount,
            nearest,
            word,
        }
        .said(locale),
        AmountProblem::UnknownUnit {
            word,
            nearest: None,
        } => texts::AmountHasUnknownUnit { amount, word }.said(locale),
        AmountProblem::AmbiguousUnit { word, clear } => texts::AmountHasAmbiguousUnit {
            amount,
            clear: &either(clear, locale),
            word,
        }
        .said(locale),
        AmountProblem::AmbiguousNumber {
            number,
            small,
            large,
        } => texts::AmountHasAmbiguousNumber {
            amount,
            large,
            number,
            small: &small.replace('.', locale.decimal_mark()),
        }
        .said(locale),
        AmountProblem::NumberForm { number } => {
            texts::AmountHasMisformedNumber { amount, number }.said(locale)
        }
        AmountProblem::SeveralNumbers => texts::AmountHasSeveralNumbers { amount }.said(locale),
        AmountProblem::Zero => texts::AmountIsZero { amount }.said(locale),
        AmountProblem::Negative => texts::AmountIsNegative { amount }.said(locale),
        AmountProblem::NotFinite => texts::AmountIsNotFinite { amount }.said(locale),
        AmountProblem::Absurd => texts::AmountIsAbsurd { amount }.said(locale),
        AmountProblem::TooSmall => texts::AmountIsTooSmall { amount }.said(locale),
        AmountProblem::DivisionByZero => texts::AmountDividesByZero { amount }.said(locale),
        AmountProblem::Leftover { words } => texts::AmountGoesOn { amount, words }.said(locale),
    }
}

/// "a, b or c".
fn either(ways: &[&str], locale: Locale) -> String {
    match ways {
        [] => String::new(),
        [only] => (*only).to_owned(),
        [first, second] => texts::EitherOr { first, second }.said(locale),
        [first, others @ ..] => texts::EitherOfMore {
            first,
            others: &either(others, locale),
        }
        .said(locale),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::refusals::tests::german;

    fn problems() -> Vec<AmountProblem> {
        let text = || "dreiundzwanzig".to_owned();
        vec![
            AmountProblem::Empty,
            AmountProblem::TooLong,
            AmountProblem::NoNumber,
            AmountProblem::Vague { words: text() },
            AmountProblem::NoUnit,
            AmountProblem::UnknownUnit {
                word: text(),
                nearest: Some("bucket".to_owned()),
            },
            AmountProblem::UnknownUnit {
                word: text(),
                nearest: None,
            },
            AmountProblem::AmbiguousUnit {
                word: text(),
                clear: &["100 lb", "112 lb"],
            },
            AmountProblem::AmbiguousUnit {
                word: text(),
                clear: &["g", "oz", "lb", "kg"],
            },
            AmountProblem::AmbiguousNumber {
                number: text(),
                small: "1.2340".to_owned(),
                large: "1234".to_owned(),
            },
            AmountProblem::NumberForm { number: text() },
            AmountProblem::SeveralNumbers,
            AmountProblem::Zero,
            AmountProblem::Negative,
            AmountProblem::NotFinite,
            AmountProblem::Absurd,
            AmountProblem::TooSmall,
            AmountProblem::DivisionByZero,
            AmountProblem::Leftover { words: text() },
        ]
    }

    #[test]
    fn an_amount_is_refused_as_its_error_says() {
        for problem in problems() {
            for typed in ["", "3 bukets"] {
                let error = AmountError {
                    problem: problem.clone(),
                    typed: typed.to_owned(),
                };
                let german = german(&error, amount_refusal);
                assert!(german.contains(typed), "{german}");
                assert!(!german.contains(" or "), "{german}");
            }
        }
    }

    #[test]
    fn a_list_is_refused_as_its_error_says() {
        let of_list = [
            PartsProblem::Empty,
            PartsProblem::TooLong,
            PartsProblem::TooManyParts,
            PartsProblem::NoName,
            PartsProblem::SeveralAmounts,
            PartsProblem::AmountInside,
        ];
        let of_parts = problems().into_iter().map(PartsProblem::Amount);
        for problem in of_list.into_iter().chain(of_parts) {
            let error = PartsError {
                problem,
                index: 11,
                text: "3 bukets".to_owned(),
            };
            german(&error, parts_refusal);
        }
    }
}
