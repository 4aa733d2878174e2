//! Why a record of heat has no answer.

use heapwright_answers::HygieneError;
use heapwright_texts::Locale;
use heapwright_texts::messages::refusals_of_commands as texts;

use crate::page::sentence;

/// A record that has no answer, as a sentence.
#[must_use]
pub fn hygiene_refusal(error: &HygieneError, locale: Locale) -> String {
    sentence(match error {
        HygieneError::NoReadings => texts::no_readings(locale),
        HygieneError::NoSuchDepth => texts::no_such_depth(locale),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::refusals::tests::german;

    #[test]
    fn a_record_is_refused_as_its_error_says() {
        for error in [HygieneError::NoReadings, HygieneError::NoSuchDepth] {
            german(&error, hygiene_refusal);
        }
    }
}
