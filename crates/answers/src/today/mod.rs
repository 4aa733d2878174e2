//! What does each heap need today, and when next?
//!
//! From the journal alone: what the last readings showed, what was fed lately, which rule of hygiene
//! is under way, how long it has ripened, what is left in the stores. The clock is handed in. Weather
//! to come is not known here, so that nothing is said of rain.
//!
//! Harm comes first, then what loses days, then what is convenient; of the same rank the heaps stand
//! in the order of the garden. A need that one tap can write down has its entry with it, and is gone
//! for that reason once the entry is in the journal.

mod gather;
mod hand;
mod heat;
pub(crate) mod limits;
mod mixture;
mod need;
mod ripening;
mod seen;
mod stores;
mod water;

pub use need::{
    Because, Caution, DatedNeed, Kind, Need, On, Quiet, Rest, TodayAnswer, Urgency, What,
};

use heapwright_catalogue::Catalogue;
use heapwright_garden::Garden;
use heapwright_journal::Moment;
use heapwright_journal::content::{Creature, Look, Smell, Stage};
use heapwright_state::State;
use jiff::civil::Date;

use gather::Gathered;
use limits::{ANIMALS_HOLD_D, HEAT_HOLDS_D, PEAK_C, TOO_HOT_C};
use seen::Seen;

/// What every heap needs that is fed or ripens.
#[must_use]
pub fn today(catalogue: &Catalogue, garden: &Garden, state: &State, now: Moment) -> TodayAnswer {
    let mut answer = TodayAnswer {
        now,
        needs: Vec::new(),
        quiet: Vec::new(),
        dates: Vec::new(),
    };
    let today = now.local().date();
    let living = state
        .heaps()
        .filter(|heap| heap.now().stage != Stage::Finished);
    for heap in living {
        let seen = Seen::of(catalogue, garden, state, heap, now);
        if seen.is_empty() {
            answer.quiet.push(Quiet {
                heap: heap.id,
                why: Rest::Empty,
                again: None,
            });
            continue;
        }
        let found = needs_of(&seen);
        if found.needs.is_empty() {
            let again = found.dates.iter().map(|date| date.on.day()).min();
            answer.quiet.push(Quiet {
                heap: heap.id,
                why: if seen.is_curing() {
                    Rest::Ripening
                } else {
                    Rest::Working
                },
                again: again.map(|day| day.max(today)),
            });
        }
        answer.dates.extend(found.dates);
        answer.needs.extend(found.needs);
    }
    answer
        .needs
        .extend(stores::stores(catalogue, garden, state, now));
    // Sorting keeps the order of the heaps.
    answer
        .needs
        .sort_by_key(|need| (need.urgency, need.what.kind()));
    date_all(&mut answer, today);
    answer
}

fn needs_of(seen: &Seen) -> Gathered {
    let mut out = Gathered::new(seen.id);
    if !heat::heat(seen, &mut out) {
        out.caution(Caution::Fire, &[Kind::StandBack]);
        return out;
    }
    hand::hand(seen, &mut out);
    mixture::mixture(seen, &mut out);
    hand::wet_by_figures(&mut out);
    ripening::ripening(seen, &mut out);
    // Opening a heap that is too hot is turning it.
    if out.has(Kind::CoolDown) {
        out.drop(Kind::Turn);
    }
    ripening::look(seen, &mut out);
    cautions(seen, &mut out);
    out
}

/// What moves a fork full and more.
const LOADS: &[Kind] = &[
    Kind::CoolDown,
    Kind::KeepAnimalsOut,
    Kind::AddBrowns,
    Kind::Turn,
    Kind::AddGreens,
    Kind::Harvest,
];
/// What opens the heap, if only a hand deep.
const OPENINGS: &[Kind] = &[
    Kind::CoolDown,
    Kind::KeepAnimalsOut,
    Kind::AddBrowns,
    Kind::CoverWithBrowns,
    Kind::Turn,
    Kind::AddGreens,
    Kind::Harvest,
    Kind::Test,
    Kind::Look,
];
/// What touches it without opening it.
const TOUCHINGS: &[Kind] = &[Kind::Cover, Kind::ReadHeat];

fn cautions(seen: &Seen, out: &mut Gathered) {
    let hottest = seen.hottest();
    if hottest.is_some_and(|hot| hot.what > TOO_HOT_C) {
        out.caution(Caution::Fire, &Kind::ALL);
    }
    if hottest.is_some_and(|hot| hot.what >= PEAK_C && seen.ago_d(hot.at) <= HEAT_HOLDS_D) {
        out.caution(Caution::Steam, OPENINGS);
    }
    let is_mouldy = seen
        .look(|look| matches!(look, Look::Mould | Look::WhiteThreads))
        .is_some();
    if is_mouldy || seen.is_dry() {
        out.caution(Caution::MouldDust, OPENINGS);
        out.caution(Caution::MouldDust, TOUCHINGS);
    }
    let gnawed = seen.creature(ANIMALS_HOLD_D, |one| {
        matches!(one, Creature::Rats | Creature::Mice)
    });
    if gnawed.is_some() {
        out.caution(Caution::Animals, OPENINGS);
        out.caution(Caution::Animals, TOUCHINGS);
    }
    let foul = seen.smell(|smell| matches!(smell, Smell::Ammonia | Smell::Sour | Smell::Rotten));
    if foul.is_some() {
        out.caution(Caution::Fumes, OPENINGS);
    }
    out.caution(Caution::Lifting, LOADS);
}

/// Puts all needs among the dates, today where they are due or no day is told; what comes later of
/// the same kind for the same heap gives way.
fn date_all(answer: &mut TodayAnswer, today: Date) {
    let needs = &answer.needs;
    answer.dates.retain(|date| {
        !needs
            .iter()
            .any(|need| need.heap == date.heap && need.what.kind() == date.kind)
    });
    answer.dates.extend(needs.iter().map(|need| {
        let material = match &need.what {
            What::Restock {
                material,
                conditions,
                ..
            } => Some((material.clone(), conditions.clone())),
            _ => None,
        };
        DatedNeed {
            heap: need.heap,
            kind: need.what.kind(),
            material,
            on: On::Day(today),
            because: need.because.clone(),
            cautions: need.cautions.clone(),
        }
    }));
    // Nothing is due on a day that is past.
    for date in &mut answer.dates {
        if date.on.day() < today {
            date.on = On::Day(today);
        }
    }
    answer.dates.sort_by_key(|date| (date.on.day(), date.kind));
}
