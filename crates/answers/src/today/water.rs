//! Water: how much a heap lacks by its hand, how much is poured at once, and when it is felt again.

use heapwright_engine::finish::accounts::accounts;
use heapwright_journal::Content;
use heapwright_journal::content::{Squeeze, Watered};

use super::gather::{Gathered, after};
use super::limits::{SOAKS_D, WATER_AT_ONCE_L};
use super::need::{Because, Kind, On, Urgency, What};
use super::seen::{Seen, Sight};
use crate::lots::Lots;
use crate::question::SEED;
use crate::yields::{known, moisture_of};

/// A can is poured by the half litre [kg].
pub(super) const WATER_STEP_KG: f64 = 0.5;
/// In the middle of the usual moisture, wet basis.
/// Source: `NRAES54m`
pub(super) const MOIST: f64 = 0.55;

/// Whether such a handful lacks water.
pub(super) const fn is_dry(squeeze: Squeeze) -> bool {
    matches!(squeeze, Squeeze::Dusty | Squeeze::Dry)
}

/// A dry handful, when nothing was fed since: that would be another heap.
pub(super) fn felt_dry(seen: &Seen) -> Option<Sight<Squeeze>> {
    seen.squeeze().filter(|felt| {
        is_dry(felt.what) && !seen.since(felt.place, |content| seen.brings_in(content))
    })
}

/// A heap that felt dry, and got a part of the water that it lacks, is felt again once that has
/// soaked in.
pub(super) fn feel_again(seen: &Seen, out: &mut Gathered) {
    let Some(felt) = felt_dry(seen) else {
        return;
    };
    let Some((poured_l, at)) = seen.poured_since(Some(felt.place)) else {
        return;
    };
    let lacks_more = water_of_felt(seen, felt.what).is_some_and(|lacking_l| poured_l < lacking_l);
    if !lacks_more {
        return;
    }
    let (because, due) = (felt_so(felt), after(at, SOAKS_D));
    if due.instant_ms <= seen.now.instant_ms {
        out.need(What::Look, because, Urgency::Soon, None).due = Some(due);
    } else {
        out.later(Kind::Look, On::Time(due), because);
    }
}

/// A handful as a reason.
pub(super) const fn felt_so(felt: Sight<Squeeze>) -> Because {
    Because::Squeeze {
        squeeze: felt.what,
        at: felt.at,
    }
}

/// Asks for what is lacking, but for no more than a heap takes up at once.
pub(super) fn water(seen: &Seen, lacking_l: f64, because: Because, out: &mut Gathered) {
    let lacking_l = (lacking_l / WATER_STEP_KG).ceil().max(1.0) * WATER_STEP_KG;
    let water_l = lacking_l.min(WATER_AT_ONCE_L);
    let entry = Content::Watered(Watered {
        heap: seen.id,
        water_l,
    });
    let what = What::Water { water_l, lacking_l };
    out.need(what, because, Urgency::Soon, Some(entry));
}

/// Dry matter that lies in the heap now, by what went in and its age [kg].
pub(super) fn dry_now_kg(seen: &Seen) -> Option<f64> {
    let at_ms = seen.now.instant_ms;
    let lots = Lots::of(seen.catalogue, seen.garden, seen.state, &seen.there, at_ms);
    let known = known(seen.state, seen.id, &seen.there, seen.now);
    let found = accounts(&lots.by_age(), lots.water_kg, &known, SEED)?;
    Some(found.dry_kg.value).filter(|dry_kg| dry_kg.is_finite() && *dry_kg > 0.0)
}

/// What brings a heap that feels so to the usual moisture [L].
pub(super) fn water_of_felt(seen: &Seen, squeeze: Squeeze) -> Option<f64> {
    let (dry_kg, moisture) = (dry_now_kg(seen)?, moisture_of(squeeze)?.typical);
    Some(dry_kg * (MOIST / (1.0 - MOIST) - moisture / (1.0 - moisture)))
}
