//! What to know about how a question was understood.

use heapwright_answers::MixNotice;
use heapwright_catalogue::Catalogue;
use heapwright_garden::Notice;
use heapwright_texts::Locale;
use heapwright_texts::messages::notices as texts;

use crate::amounts::row;

/// A notice on an answer, as a sentence.
#[must_use]
pub fn mix_notice(catalogue: &Catalogue, notice: &MixNotice, locale: Locale) -> String {
    match notice {
        MixNotice::Part(notice) => part_notice(catalogue, notice, locale),
        MixNotice::NoNitrogen => texts::no_nitrogen(locale).to_owned(),
        MixNotice::VolumeUnknown { names } => texts::VolumeUnknown {
            names: &row(names, locale),
        }
        .said(locale),
        MixNotice::NoAir => texts::no_air(locale).to_owned(),
    }
}

/// A notice on a part, as a sentence.
#[must_use]
pub fn part_notice(catalogue: &Catalogue, notice: &Notice, locale: Locale) -> String {
    match notice {
        Notice::DensityAssumed { name } => texts::DensityAssumed { name }.said(locale),
        Notice::CountsNeither { name } => texts::CountsNeither { name }.said(locale),
        Notice::Estimated { name } => texts::Estimated { name }.said(locale),
        Notice::StatedRatioIgnored { name } => texts::StatedRatioIgnored { name }.said(locale),
        Notice::ConditionIgnored { name, condition } => {
            let condition = catalogue
                .condition(condition)
                .map_or(condition.as_str(), |condition| condition.name.as_str());
            texts::ConditionIgnored { condition, name }.said(locale)
        }
    }
}
