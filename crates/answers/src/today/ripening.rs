//! What time says: left to ripen, tested, taken out; and when to look again.

use heapwright_engine::finish::verdict::{Judgement, Shown, Verdict};
use heapwright_journal::Content;
use heapwright_journal::content::{Cover, Covered, Look, Rested, Shape, Stage};

use super::gather::{Gathered, after, day_after};
use super::limits::{
    COOL_C, CURE_D, FED_NO_MORE_D, LOOK_ACTIVE_D, LOOK_CURING_D, SENSES_HOLD_D, TEST_AGAIN_D,
};
use super::need::{Because, Kind, On, Urgency, What};
use super::seen::Seen;
use crate::before_use::before_use;
use crate::ready::{judged, signs_of};

/// What ripening asks.
pub(super) fn ripening(seen: &Seen, out: &mut Gathered) {
    let signs = signs_of(seen.state, seen.id, &seen.there, seen.now).unwrap_or_default();
    let judgement = judged(&signs);
    if judgement.verdict == Verdict::Ready {
        let contents = seen.state.contents(seen.id);
        let what = What::Harvest {
            before_use: before_use(seen.catalogue, seen.garden, &contents),
        };
        // How much is taken out must be said: one tap would empty it.
        out.need(what, Because::Ready, Urgency::Whenever, None);
        return;
    }
    if seen.is_curing() {
        let last_sign = signs
            .iter()
            .filter(|sign| sign.counts())
            .map(|sign| sign.at)
            .max();
        test(seen, judgement, last_sign, out);
        cover(seen, out);
    } else {
        rest(seen, out);
    }
}

/// A test, once it has ripened for a while.
fn test(
    seen: &Seen,
    judgement: Judgement,
    last_sign: Option<heapwright_journal::Moment>,
    out: &mut Gathered,
) {
    let rested = seen.last(|content| match content {
        Content::Rested(rested) if rested.stage == Stage::Curing => Some(()),
        _ => None,
    });
    let since = rested
        .map(|sight| sight.at)
        .max(seen.last_arrival().map(|sight| sight.at));
    let Some(since) = since else {
        return;
    };
    let untested = |shown| matches!(shown, Shown::Untested | Shown::Divided);
    let misses_one = judgement.verdict != Verdict::NotReady
        && (untested(judgement.stability) || untested(judgement.maturity));
    let (from, days) = match last_sign.filter(|_| !misses_one) {
        Some(last) => (last, TEST_AGAIN_D),
        None => (since, CURE_D),
    };
    let because = Because::Ripened { since };
    if seen.ago_d(from) >= days {
        let what = What::Test { judgement };
        out.need(what, because, Urgency::Whenever, None).due = Some(after(from, days));
    } else {
        let day = day_after(from, seen.now, days);
        out.later(Kind::Test, On::Day(day), because);
    }
}

/// Rain washes out what has ripened.
fn cover(seen: &Seen, out: &mut Gathered) {
    let is_drum = seen
        .heap
        .enclosure()
        .is_some_and(|enclosure| enclosure.shape == Shape::Drum);
    if seen.heap.now().cover != Cover::None || is_drum {
        return;
    }
    let entry = Content::Covered(Covered {
        heap: seen.id,
        cover: Some(Cover::Sheet),
    });
    let because = Because::Uncovered;
    out.need(What::Cover, because, Urgency::Whenever, Some(entry));
}

/// A heap that is fed no more and has cooled is left to ripen.
fn rest(seen: &Seen, out: &mut Gathered) {
    let Some(arrival) = seen
        .last_arrival()
        .filter(|arrival| seen.ago_d(arrival.at) >= FED_NO_MORE_D)
    else {
        return;
    };
    let is_cool = seen
        .core()
        .is_some_and(|core| core.what < COOL_C && seen.ago_d(core.at) <= SENSES_HOLD_D);
    let looks_done = seen
        .look(|look| matches!(look, Look::Crumbly | Look::Unrecognisable))
        .is_some();
    if !is_cool && !looks_done {
        return;
    }
    let entry = Content::Rested(Rested {
        heap: seen.id,
        stage: Stage::Curing,
    });
    let because = Because::NotFed { since: arrival.at };
    out.need(What::LetRipen, because, Urgency::Whenever, Some(entry));
    if looks_done {
        let because = Because::LooksDone;
        out.need(What::LetRipen, because, Urgency::Whenever, None);
    }
}

/// Every heap is looked at now and then.
pub(super) fn look(seen: &Seen, out: &mut Gathered) {
    let every_d = if seen.is_curing() {
        LOOK_CURING_D
    } else {
        LOOK_ACTIVE_D
    };
    let last = seen.last_look();
    let first_in = seen.there.portions.first();
    let Some(from) = last.or(first_in.map(|portion| portion.event.happened)) else {
        return;
    };
    let because = Because::NotLookedAt { last };
    if seen.ago_d(from) < every_d {
        let day = day_after(from, seen.now, every_d);
        out.later(Kind::Look, On::Day(day), because);
    } else if !out.has(Kind::ReadHeat) {
        let due = Some(after(from, every_d));
        out.need(What::Look, because, Urgency::Whenever, None).due = due;
    }
}
