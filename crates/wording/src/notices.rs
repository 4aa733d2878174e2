//! What to know about how a question was understood.

use heapwright_answers::MixNotice;
use heapwright_catalogue::Catalogue;
use heapwright_garden::Notice;

/// A notice on an answer, as a sentence.
#[must_use]
pub fn mix_notice(catalogue: &Catalogue, notice: &MixNotice) -> String {
    match notice {
        MixNotice::Part(notice) => part_notice(catalogue, notice),
        MixNotice::NoNitrogen => "There is no nitrogen in it, so that it has no C:N.".to_owned(),
        MixNotice::VolumeUnknown { names } => format!(
            "Volume and air space cannot be told: the density of {} is not known.",
            names.join(", ")
        ),
        MixNotice::NoAir => {
            "As the figures are, nothing is left for air: check the density.".to_owned()
        }
    }
}

/// A notice on a part, as a sentence.
#[must_use]
pub fn part_notice(catalogue: &Catalogue, notice: &Notice) -> String {
    match notice {
        Notice::DensityAssumed { name } => {
            format!("{name}: no density is known, so that of similar materials is taken.")
        }
        Notice::CountsNeither { name } => {
            format!(
                "{name}: its carbon and nitrogen are not counted, for microbes cannot use them."
            )
        }
        Notice::Estimated { name } => {
            format!("{name}: the figures are estimates without a published source.")
        }
        Notice::StatedRatioIgnored { name } => {
            format!(
                "{name}: the stated C:N is not counted, for neither its carbon nor its nitrogen is known."
            )
        }
        Notice::ConditionIgnored { name, condition } => {
            let condition = catalogue
                .condition(condition)
                .map_or(condition.as_str(), |condition| condition.name.as_str());
            format!("{name}: \"{condition}\" changes none of its figures.")
        }
    }
}
