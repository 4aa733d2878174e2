//! What the probe says: too hot, cooling, not read for long; and the rules of hygiene under way.

use heapwright_engine::hygiene::{Need as RuleNeed, RULES, Rule, Status};
use heapwright_journal::content::{Thoroughness, Turned};
use heapwright_journal::{Content, Moment};

use super::gather::{Gathered, after, day_after};
use super::limits::{
    ALARM_C, FALL_K, FIRE_HEIGHT_M, HEAT_HOLDS_D, HOLD_BROKEN_D, HOT_C, PEAK_C, PEAK_HOLDS_D,
    READ_HOLD_D, READ_HOT_D, READ_TURNED_D, TOO_HOT_C, WARM_C,
};
use super::need::{Because, Kind, On, Urgency, What};
use super::seen::{Seen, Sight};
use crate::before_use::before_use;
use crate::hygiene::{HygieneQuestion, hygiene_of_heap};

const DAY_S: f64 = 86_400.0;
const FORKED: What = What::Turn {
    how: Thoroughness::ForkedOver,
};

/// The entry of a turning.
pub(super) fn turning(seen: &Seen, how: Thoroughness) -> Option<Content> {
    Some(Content::Turned(Turned {
        heap: seen.id,
        thoroughness: Some(how),
    }))
}

const fn is_turning(content: &Content) -> bool {
    matches!(content, Content::Turned(_))
}

/// What the temperature asks; false when everybody should stay away.
pub(super) fn heat(seen: &Seen, out: &mut Gathered) -> bool {
    if let Some(hottest) = seen.hottest() {
        let (temperature_c, at) = (hottest.what, hottest.at);
        // An alarm stands until the probe shows less, however long that takes.
        if temperature_c >= ALARM_C {
            let because = Because::Alarm { temperature_c, at };
            out.need(What::StandBack, because, Urgency::Now, None);
            return false;
        }
        let is_high = seen.height_m().is_some_and(|high| high > FIRE_HEIGHT_M);
        if temperature_c > TOO_HOT_C && is_high && seen.was_dry_at(at) {
            let because = Because::HotAndDry { temperature_c, at };
            out.need(What::StandBack, because, Urgency::Now, None);
            return false;
        }
        let is_fresh = seen.ago_d(at) <= HEAT_HOLDS_D;
        if is_fresh && !seen.since(hottest.place, is_turning) {
            let entry = turning(seen, Thoroughness::ForkedOver);
            if temperature_c > TOO_HOT_C {
                let because = Because::TooHot { temperature_c, at };
                out.need(What::CoolDown, because, Urgency::Now, entry);
            } else if temperature_c >= HOT_C {
                let because = Because::Hot { temperature_c, at };
                out.need(FORKED, because, Urgency::Soon, entry);
            }
        }
    }
    cooling(seen, out);
    unread(seen, out);
    rules(seen, out);
    true
}

/// A heap that was hot and cools is worth turning, unless it ripens.
fn cooling(seen: &Seen, out: &mut Gathered) {
    if seen.is_curing() {
        return;
    }
    let mut cores = seen.cores_since(seen.last_turned().map(|sight| sight.place));
    cores.retain(|core| seen.ago_d(core.at) <= PEAK_HOLDS_D);
    let Some(last) = cores.last().copied() else {
        return;
    };
    let peak_c = cores.iter().map(|core| core.what).fold(last.what, f64::max);
    if seen.ago_d(last.at) <= HEAT_HOLDS_D && peak_c >= PEAK_C && peak_c - last.what >= FALL_K {
        let because = Because::Cooling {
            from_c: peak_c,
            to_c: last.what,
            at: last.at,
        };
        let entry = turning(seen, Thoroughness::ForkedOver);
        out.need(FORKED, because, Urgency::Soon, entry);
    }
}

/// A hot heap is read every few days, one that was too hot soon after it was turned.
fn unread(seen: &Seen, out: &mut Gathered) {
    if let Some((hottest, due)) = reread(seen) {
        let because = Because::HotUnread {
            temperature_c: hottest.what,
            at: hottest.at,
        };
        if due.instant_ms <= seen.now.instant_ms {
            out.need(What::ReadHeat, because, Urgency::Now, None).due = Some(due);
        } else {
            out.later(Kind::ReadHeat, On::Time(due), because);
        }
        return;
    }
    let Some(core) = seen
        .core()
        .filter(|core| core.what >= WARM_C && seen.ago_d(core.at) <= PEAK_HOLDS_D)
    else {
        return;
    };
    let because = Because::HotUnread {
        temperature_c: core.what,
        at: core.at,
    };
    if seen.ago_d(core.at) >= READ_HOT_D {
        let need = out.need(What::ReadHeat, because, Urgency::Soon, None);
        need.due = Some(after(core.at, READ_HOT_D));
    } else {
        let day = day_after(core.at, seen.now, READ_HOT_D);
        out.later(Kind::ReadHeat, On::Day(day), because);
    }
}

/// What was too hot, and when it is to be read again: after the first turning since, for to turn it
/// again and again shows nothing; or at once, when the reading is too old to turn it for.
fn reread(seen: &Seen) -> Option<(Sight<f64>, Moment)> {
    let hottest = seen.hottest().filter(|hot| hot.what > TOO_HOT_C)?;
    let due = match seen.first_since(hottest.place, is_turning) {
        Some(turned) => after(turned, READ_TURNED_D),
        None if seen.ago_d(hottest.at) > HEAT_HOLDS_D => after(hottest.at, READ_HOT_D),
        None => return None,
    };
    Some((hottest, due))
}

/// The rule that is nearest to being met, while its heat is held.
fn rules(seen: &Seen, out: &mut Gathered) {
    let Some(core) = seen
        .core()
        .filter(|core| seen.ago_d(core.at) <= HOLD_BROKEN_D)
    else {
        return;
    };
    let question = HygieneQuestion::default();
    let Ok(answer) = hygiene_of_heap(seen.state, seen.id, seen.now, &question) else {
        return;
    };
    let held = answer.rules.iter().filter_map(|found| {
        let rule = RULES.iter().find(|rule| rule.id == found.words.id)?;
        let outcome = found.outcome[1];
        let under_way = found.status[1] == Status::NotMet
            && found.lacking.is_none()
            && outcome.progress > 0.0
            && core.what >= rule.band.least_c
            && core.what <= rule.band.most_c;
        under_way.then_some((rule, outcome))
    });
    // Of several that are as near the first of the table.
    let Some((rule, outcome)) = held.reduce(|best, other| {
        if other.1.progress > best.1.progress {
            other
        } else {
            best
        }
    }) else {
        return;
    };
    let contents = seen.state.contents(seen.id);
    let raw = !before_use(seen.catalogue, seen.garden, &contents).is_empty();
    let urgency = if raw {
        Urgency::Soon
    } else {
        Urgency::Whenever
    };
    let missing_s = outcome.missing.seconds.max(outcome.missing.peak_seconds);
    if missing_s > 0.0 {
        let because = Because::RuleTime {
            rule: rule.id,
            missing_s,
            least_c: rule.band.least_c,
            raw,
        };
        let due = after(core.at, READ_HOLD_D);
        if seen.ago_d(core.at) >= READ_HOLD_D {
            out.need(What::ReadHeat, because, urgency, None).due = Some(due);
        } else {
            out.later(Kind::ReadHeat, On::Time(due), because);
        }
    }
    if outcome.missing.turns > 0 {
        rule_turns(seen, rule, outcome.missing.turns, raw, out);
    }
}

/// A turning that a rule asks for, when the last one is long enough ago.
fn rule_turns(seen: &Seen, rule: &'static Rule, turns: u32, raw: bool, out: &mut Gathered) {
    let every_d = match rule.need {
        RuleNeed::BeforeEachTurn { seconds, .. } => seconds / DAY_S,
        RuleNeed::Hold {
            seconds, apart_s, ..
        } => (seconds / f64::from(rule.turns().max(1))).max(apart_s) / DAY_S,
        RuleNeed::HoldWithPeak { .. } => return,
    };
    // Rules with turnings are for heaps that were turned: there is a last time.
    let Some(last) = seen.last_turned() else {
        return;
    };
    let because = Because::RuleTurns {
        rule: rule.id,
        turns,
        raw,
    };
    let urgency = if raw {
        Urgency::Soon
    } else {
        Urgency::Whenever
    };
    if seen.ago_d(last.at) >= every_d {
        let how = Thoroughness::InsideOut;
        let entry = turning(seen, how);
        out.need(What::Turn { how }, because, urgency, entry).due = Some(after(last.at, every_d));
    } else {
        let day = day_after(last.at, seen.now, every_d.ceil());
        out.later(Kind::Turn, On::Day(day), because);
    }
}
