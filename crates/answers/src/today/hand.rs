//! What hand, nose and eye say: animals, smells, wet and dry handfuls, mats and slime.

use heapwright_journal::Content;
use heapwright_journal::content::{Creature, Look, Smell, Squeeze, Thoroughness};

use super::gather::Gathered;
use super::heat::turning;
use super::limits::{ANIMALS_HOLD_D, SENSES_HOLD_D};
use super::mixture;
use super::need::{Because, Urgency, What};
use super::seen::Seen;

const FORKED: What = What::Turn {
    how: Thoroughness::ForkedOver,
};

/// What the senses ask, but for what the mixture answers.
pub(super) fn hand(seen: &Seen, out: &mut Gathered) {
    animals(seen, out);
    let turned_since = |place| seen.since(place, |content| matches!(content, Content::Turned(_)));
    let entry = || turning(seen, Thoroughness::ForkedOver);
    let foul = seen.smell(|smell| matches!(smell, Smell::Sour | Smell::Rotten));
    if let Some(foul) = foul.filter(|foul| !turned_since(foul.place)) {
        let because = Because::Smell {
            smell: foul.what,
            at: foul.at,
        };
        out.need(FORKED, because, Urgency::Soon, entry());
    }
    let lumps = seen.look(|look| matches!(look, Look::Matted | Look::Slimy | Look::DryPockets));
    if let Some(lumps) = lumps.filter(|lumps| !turned_since(lumps.place)) {
        let because = Because::Look {
            look: lumps.what,
            at: lumps.at,
        };
        out.need(FORKED, because, Urgency::Soon, entry());
    }
    // Ripening compost is not fed again: turning lets it dry.
    if seen.is_curing()
        && let Some(wet) = seen.squeeze_of_now()
        && wet.what == Squeeze::Dripping
        && !turned_since(wet.place)
    {
        let because = Because::Squeeze {
            squeeze: wet.what,
            at: wet.at,
        };
        out.need(FORKED, because, Urgency::Soon, entry());
    }
}

/// Marks the advice against animals where the figures ask for browns for the sake of wetness: what
/// is to be dried is not to be kept moist.
pub(super) fn wet_by_figures(out: &mut Gathered) {
    let too_wet = |because: &Because| matches!(because, Because::FedTooWet { .. });
    if out
        .needs
        .iter()
        .any(|need| need.because.iter().any(too_wet))
    {
        for need in &mut out.needs {
            if let What::KeepAnimalsOut { is_wet } = &mut need.what {
                *is_wet = true;
            }
        }
    }
}

/// Whether the last handful was wet or more.
fn felt_wet(seen: &Seen) -> bool {
    seen.squeeze()
        .is_some_and(|felt| matches!(felt.what, Squeeze::Wet | Squeeze::Dripping))
}

fn animals(seen: &Seen, out: &mut Gathered) {
    let turned_since = |place| seen.since(place, |content| matches!(content, Content::Turned(_)));
    for (creature, urgency) in [
        (Creature::Rats, Urgency::Now),
        (Creature::Mice, Urgency::Soon),
    ] {
        let sight = seen.creature(ANIMALS_HOLD_D, |one| one == creature);
        if let Some(sight) = sight.filter(|sight| !turned_since(sight.place)) {
            let because = Because::Creature {
                creature,
                at: sight.at,
            };
            let entry = turning(seen, Thoroughness::ForkedOver);
            let is_wet = felt_wet(seen);
            out.need(What::KeepAnimalsOut { is_wet }, because, urgency, entry);
        }
    }
    let flies = seen.creature(SENSES_HOLD_D, |one| {
        matches!(
            one,
            Creature::Flies | Creature::Maggots | Creature::FruitFlies
        )
    });
    let answered = |place| {
        seen.since(place, |content| match content {
            Content::Turned(_) => true,
            Content::Fed(fed) => mixture::brings_browns(seen, fed),
            _ => false,
        })
    };
    let Some(flies) = flies.filter(|sight| !answered(sight.place)) else {
        return;
    };
    let because = Because::Creature {
        creature: flies.what,
        at: flies.at,
    };
    let layer = if seen.is_curing() {
        None
    } else {
        mixture::layer(seen)
    };
    match layer {
        Some((layer, entry)) => {
            let layer = Box::new(layer);
            let what = What::CoverWithBrowns { layer };
            out.need(what, because, Urgency::Soon, Some(entry));
        }
        // Without browns what draws them is worked in.
        None => {
            let entry = turning(seen, Thoroughness::ForkedOver);
            out.need(FORKED, because, Urgency::Soon, entry);
        }
    }
}
