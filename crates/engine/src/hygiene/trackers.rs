//! How far has the record come towards each rule, point by point?

use std::collections::VecDeque;

use super::line::{Band, Inside};
use super::rules::{Allowed, BREAK_S, Breaks, Missing, Need, Outcome};

/// Sums of a million pieces round to this [s].
const ROUNDING_S: f64 = 1e-3;
/// The stretch in which the peak of a rule must lie is counted in steps this long [s].
const STEP_S: f64 = 300.0;

/// How much of a demand is done, 0 to 1, and what is missing of it.
fn done(have: f64, need: f64) -> (f64, f64) {
    if have >= need - ROUNDING_S {
        (1.0, 0.0)
    } else {
        (have / need, need - have)
    }
}

/// Progress towards one rule.
#[derive(Clone, Debug)]
pub(super) enum Tracker {
    Hold(Box<Hold>),
    Peak(Box<Peak>),
    Rounds(Rounds),
}

impl Tracker {
    pub fn new(need: Need) -> Self {
        match need {
            Need::Hold {
                seconds,
                breaks,
                turns,
                apart_s,
            } => Self::Hold(Box::new(Hold::new(seconds, turns, breaks, apart_s))),
            Need::HoldWithPeak {
                seconds,
                peak_seconds,
                ..
            } => Self::Peak(Box::new(Peak::new(seconds, peak_seconds))),
            Need::BeforeEachTurn { seconds, turns } => Self::Rounds(Rounds {
                need_s: seconds,
                need_turns: turns,
                ..Rounds::default()
            }),
        }
    }

    /// A piece of the record, of which a part lies in the rule's band; `until_turn_s` from its end
    /// the heap is turned next.
    pub fn piece(&mut self, seconds: f64, until_turn_s: f64, inside: Inside, peak: Inside) {
        match self {
            Self::Hold(hold) => match inside {
                Inside::None => hold.cold(seconds, until_turn_s),
                Inside::All => hold.hot(seconds),
                Inside::Part(from, to) => {
                    if from > 0.0 {
                        hold.cold(from, until_turn_s + (seconds - from));
                    }
                    hold.hot(to - from);
                    if to < seconds {
                        hold.cold(seconds - to, until_turn_s);
                    }
                }
            },
            Self::Rounds(rounds) => match inside {
                Inside::None => rounds.cold(seconds),
                Inside::All => rounds.hot(seconds),
                Inside::Part(from, to) => {
                    if from > 0.0 {
                        rounds.cold(from);
                    }
                    rounds.hot(to - from);
                    if to < seconds {
                        rounds.cold(seconds - to);
                    }
                }
            },
            Self::Peak(tracker) => {
                let (from, to) = match inside {
                    Inside::None => return tracker.cold(),
                    Inside::All => (0.0, seconds),
                    Inside::Part(from, to) => (from, to),
                };
                if from > 0.0 {
                    tracker.cold();
                }
                let (above_from, above_to) = match peak {
                    Inside::None => (to, to),
                    Inside::All => (from, to),
                    Inside::Part(first, last) => (first.max(from), last.min(to)),
                };
                tracker.hot(above_from - from, false);
                tracker.hot(above_to - above_from, true);
                tracker.hot(to - above_to, false);
                if to < seconds {
                    tracker.cold();
                }
            }
        }
    }

    /// The heap was turned.
    pub fn turn(&mut self) {
        match self {
            Self::Hold(hold) => hold.turn(),
            Self::Rounds(rounds) => rounds.turn(),
            Self::Peak(_) => {}
        }
    }

    /// A gap of which nothing is known.
    pub fn lost(&mut self, seconds: f64) {
        match self {
            Self::Hold(hold) => hold.lost(seconds),
            Self::Rounds(rounds) => rounds.cold(seconds),
            Self::Peak(peak) => peak.cold(),
        }
    }

    /// From a turning to the next reading: it never counts, and ends what such a break ends.
    pub fn unknown(&mut self, seconds: f64, until_turn_s: f64) {
        match self {
            Self::Hold(hold) => hold.cold(seconds, until_turn_s),
            Self::Rounds(rounds) => rounds.cold(seconds),
            // Turning is no part of what this rule asks, and does not end its stretch: it waits.
            Self::Peak(_) => {}
        }
    }

    /// What is done and missing.
    pub fn outcome(&self) -> Outcome {
        match self {
            Self::Hold(hold) => hold.outcome(),
            Self::Rounds(rounds) => rounds.outcome(),
            Self::Peak(peak) => peak.outcome(),
        }
    }
}

/// The band of a rule's peak; what does not exist is never reached.
pub(super) fn peak_band(need: Need) -> Option<Band> {
    match need {
        Need::HoldWithPeak { peak, .. } => Some(peak),
        _ => None,
    }
}

/// Time at a temperature, with turnings, in a period that some breaks do not end.
///
/// The period reaches back as far as its breaks together are no longer than is allowed: when heat
/// comes back after a break that makes them more, the oldest heat is given up.
#[derive(Clone, Debug)]
pub(super) struct Hold {
    need_s: f64,
    need_turns: u32,
    breaks: Breaks,
    apart_s: f64,
    /// Time since the record began [s].
    now_s: f64,
    /// True when the rule is met, which nothing takes back.
    is_met: bool,
    /// The heat of the period, the oldest first.
    stretches: VecDeque<Stretch>,
    /// Time in the band in this period [s].
    hot_s: f64,
    /// Time in breaks that are over [s].
    cold_s: f64,
    /// When it was turned in this period [s since the record began].
    turns: VecDeque<f64>,
    /// Turnings in the present break, which may count when the heat comes back.
    turns_in_break: Vec<f64>,
    /// How long the present break is [s].
    break_s: f64,
    /// How much of the break lies farther than the allowed time from the nearest turning [s].
    unexplained_s: f64,
    last_turn_s: f64,
    best: Outcome,
}

/// Heat without a break, and the break behind it [s].
#[derive(Clone, Copy, Debug)]
struct Stretch {
    from_s: f64,
    hot_s: f64,
    cold_s: f64,
}

/// More stretches are not kept apart: a period of that many breaks is given up a little more
/// coarsely, and memory does not grow.
const MOST_STRETCHES: usize = 4096;

impl Hold {
    fn new(need_s: f64, need_turns: u32, breaks: Breaks, apart_s: f64) -> Self {
        Self {
            need_s,
            need_turns,
            breaks,
            apart_s,
            now_s: 0.0,
            is_met: false,
            stretches: VecDeque::new(),
            hot_s: 0.0,
            cold_s: 0.0,
            turns: VecDeque::new(),
            turns_in_break: Vec::new(),
            break_s: 0.0,
            unexplained_s: 0.0,
            last_turn_s: f64::NEG_INFINITY,
            best: Outcome {
                progress: -1.0,
                missing: Missing::default(),
            },
        }
    }

    fn is_open(&self) -> bool {
        self.hot_s > 0.0
    }

    /// All breaks of a period together are at most this long [s].
    fn most_cold_s(&self) -> f64 {
        match self.breaks {
            Breaks::None | Breaks::Untouched => 0.0,
            Breaks::Any => f64::INFINITY,
            Breaks::AtTurns(allowed) | Breaks::UpTo(allowed) => allowed.of_hold * self.need_s,
        }
    }

    fn hot(&mut self, seconds: f64) {
        if self.is_met || seconds <= 0.0 {
            return;
        }
        if self.break_s > 0.0 {
            self.heat_is_back();
        }
        if self.stretches.is_empty() {
            self.begin_stretch();
        }
        if let Some(stretch) = self.stretches.back_mut() {
            stretch.hot_s += seconds;
        }
        self.hot_s += seconds;
        self.now_s += seconds;
        self.look();
    }

    fn begin_stretch(&mut self) {
        self.stretches.push_back(Stretch {
            from_s: self.now_s,
            hot_s: 0.0,
            cold_s: 0.0,
        });
    }

    /// The break becomes a part of the period, unless it is too much with those before.
    fn heat_is_back(&mut self) {
        if let Some(stretch) = self.stretches.back_mut() {
            stretch.cold_s += self.break_s;
        }
        self.cold_s += self.break_s;
        self.break_s = 0.0;
        self.unexplained_s = 0.0;
        let now_s = self.now_s;
        // A turning is one of a hot heap when there was heat within a day of it, before and after.
        let near = self.turns_in_break.drain(..);
        self.turns
            .extend(near.filter(|turned_s| now_s - turned_s <= BREAK_S + ROUNDING_S));
        if self.cold_s > self.most_cold_s() + ROUNDING_S {
            self.keep_best();
            while self.cold_s > self.most_cold_s() + ROUNDING_S {
                let Some(oldest) = self.stretches.pop_front() else {
                    break;
                };
                self.hot_s -= oldest.hot_s;
                self.cold_s -= oldest.cold_s;
            }
            let from_s = self.stretches.front().map_or(now_s, |first| first.from_s);
            self.turns.retain(|turned_s| *turned_s > from_s);
            if self.stretches.is_empty() {
                // Without what rounding left.
                self.hot_s = 0.0;
                self.cold_s = 0.0;
            }
        }
        if self.breaks != Breaks::Any && self.stretches.len() < MOST_STRETCHES {
            self.begin_stretch();
        }
    }

    fn cold(&mut self, seconds: f64, until_turn_s: f64) {
        if self.is_met {
            return;
        }
        if self.is_open() {
            self.break_s += seconds;
            if let Breaks::AtTurns(Allowed { each_s, .. }) = self.breaks {
                // Farther than allowed from the last turning, and not yet near the next.
                let first_s = (each_s - (self.now_s - self.last_turn_s)).max(0.0);
                let last_s = (until_turn_s + seconds - each_s).min(seconds);
                self.unexplained_s += (last_s - first_s).max(0.0);
            }
            if !self.goes_on() {
                self.end();
            }
        }
        self.now_s += seconds;
    }

    /// Whether the present break does not end the period.
    fn goes_on(&self) -> bool {
        match self.breaks {
            Breaks::None | Breaks::Untouched => false,
            Breaks::Any => true,
            Breaks::UpTo(allowed) => self.break_s <= allowed.each_s,
            Breaks::AtTurns(allowed) => {
                self.break_s <= allowed.each_s && self.unexplained_s <= ROUNDING_S
            }
        }
    }

    fn turn(&mut self) {
        if self.is_met {
            return;
        }
        self.last_turn_s = self.now_s;
        if !self.is_open() {
            return;
        }
        if self.breaks == Breaks::Untouched {
            self.end();
        } else if self.break_s <= 0.0 {
            self.turns.push_back(self.now_s);
            self.look();
        } else if self.break_s <= BREAK_S + ROUNDING_S {
            self.turns_in_break.push(self.now_s);
        }
    }

    fn lost(&mut self, seconds: f64) {
        if self.breaks == Breaks::Any {
            self.cold(seconds, f64::INFINITY);
        } else {
            self.end();
            self.now_s += seconds;
        }
    }

    /// Whether the rule is now met.
    fn look(&mut self) {
        if self.hot_s >= self.need_s - ROUNDING_S && self.turns_apart() >= self.need_turns {
            self.is_met = true;
            self.best = Outcome {
                progress: 1.0,
                missing: Missing::default(),
            };
        }
    }

    /// Turnings in this period that lie far enough from one another.
    fn turns_apart(&self) -> u32 {
        let mut last_s = f64::NEG_INFINITY;
        let mut count = 0;
        for turned_s in &self.turns {
            if turned_s - last_s >= self.apart_s - ROUNDING_S {
                last_s = *turned_s;
                count += 1;
            }
        }
        count
    }

    fn keep_best(&mut self) {
        let outcome = self.of_period();
        if outcome.progress > self.best.progress {
            self.best = outcome;
        }
    }

    /// The period is over; it is kept when it came further than those before.
    fn end(&mut self) {
        if self.is_met {
            return;
        }
        if self.is_open() {
            self.keep_best();
        }
        self.stretches.clear();
        self.turns.clear();
        self.turns_in_break.clear();
        self.hot_s = 0.0;
        self.cold_s = 0.0;
        self.break_s = 0.0;
        self.unexplained_s = 0.0;
    }

    fn of_period(&self) -> Outcome {
        let (share, seconds) = done(self.hot_s, self.need_s);
        let turns = self.need_turns.saturating_sub(self.turns_apart());
        let progress = if self.need_turns == 0 {
            share
        } else {
            let turned = 1.0 - f64::from(turns) / f64::from(self.need_turns);
            f64::midpoint(share, turned)
        };
        Outcome {
            progress,
            missing: Missing {
                seconds,
                peak_seconds: 0.0,
                turns,
            },
        }
    }

    fn outcome(&self) -> Outcome {
        if self.is_met {
            return self.best;
        }
        let now = self.of_period();
        if now.progress > self.best.progress {
            now
        } else {
            self.best
        }
    }
}

/// One stretch of heat with a peak within a part of it of a given length.
#[derive(Clone, Debug)]
pub(super) struct Peak {
    need_s: f64,
    need_peak_s: f64,
    /// Length of the present stretch [s].
    spell_s: f64,
    /// Time at the peak by steps of the stretch, the last of them [s].
    steps: Vec<f64>,
    /// The step in which the stretch now is, counted from its beginning.
    step: usize,
    /// The sum of `steps` [s].
    in_steps_s: f64,
    /// The greatest sum in this stretch [s].
    most_s: f64,
    best: Outcome,
}

impl Peak {
    fn new(need_s: f64, need_peak_s: f64) -> Self {
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // some thousand
        let steps = (need_s / STEP_S) as usize;
        Self {
            need_s,
            need_peak_s,
            spell_s: 0.0,
            steps: vec![0.0; steps.max(1)],
            step: 0,
            in_steps_s: 0.0,
            most_s: 0.0,
            best: Outcome {
                progress: -1.0,
                missing: Missing::default(),
            },
        }
    }

    /// Time in the stretch, at the peak or not.
    fn hot(&mut self, seconds: f64, at_peak: bool) {
        let mut left = seconds;
        while left > 0.0 {
            #[allow(clippy::cast_precision_loss)] // a stretch of a million steps lasts ten years
            let end_s = (self.step + 1) as f64 * STEP_S;
            let room = (end_s - self.spell_s).max(0.0);
            let part = left.min(room);
            if at_peak {
                let place = self.step % self.steps.len();
                self.steps[place] += part;
                self.in_steps_s += part;
            }
            self.spell_s += part;
            left -= part;
            if left > 0.0 || part >= room {
                self.most_s = self.most_s.max(self.in_steps_s);
                self.step += 1;
                let place = self.step % self.steps.len();
                self.in_steps_s -= self.steps[place];
                self.steps[place] = 0.0;
            }
        }
        self.most_s = self.most_s.max(self.in_steps_s);
    }

    fn cold(&mut self) {
        if self.spell_s > 0.0 {
            let outcome = self.of_spell();
            if outcome.progress > self.best.progress {
                self.best = outcome;
            }
            self.spell_s = 0.0;
            self.steps.fill(0.0);
            self.step = 0;
            self.in_steps_s = 0.0;
            self.most_s = 0.0;
        }
    }

    fn of_spell(&self) -> Outcome {
        let (held, seconds) = done(self.spell_s, self.need_s);
        let (peaked, peak_seconds) = done(self.most_s, self.need_peak_s);
        Outcome {
            progress: f64::midpoint(held, peaked),
            missing: Missing {
                seconds,
                peak_seconds,
                turns: 0,
            },
        }
    }

    fn outcome(&self) -> Outcome {
        let now = self.of_spell();
        if now.progress > self.best.progress {
            now
        } else {
            self.best
        }
    }
}

/// Turnings, each after a stretch of heat since the last one, which ended at most a day before.
#[derive(Clone, Debug, Default)]
pub(super) struct Rounds {
    need_s: f64,
    need_turns: u32,
    spell_s: f64,
    /// How long ago a stretch that is long enough ended [s]; 0 while it lasts.
    since_enough_s: Option<f64>,
    rounds: u32,
    /// The longest stretch that no turning followed and that was thus not used [s].
    best_s: f64,
}

impl Rounds {
    fn hot(&mut self, seconds: f64) {
        self.spell_s += seconds;
        self.best_s = self.best_s.max(self.spell_s);
        if self.spell_s >= self.need_s - ROUNDING_S {
            self.since_enough_s = Some(0.0);
        } else {
            self.pass(seconds);
        }
    }

    fn cold(&mut self, seconds: f64) {
        self.spell_s = 0.0;
        self.pass(seconds);
    }

    fn pass(&mut self, seconds: f64) {
        if let Some(since_s) = &mut self.since_enough_s {
            *since_s += seconds;
        }
    }

    /// Whether a turning now would count.
    fn is_ready(&self) -> bool {
        self.since_enough_s
            .is_some_and(|since_s| since_s <= BREAK_S + ROUNDING_S)
    }

    fn turn(&mut self) {
        if self.is_ready() {
            self.rounds += 1;
            self.best_s = 0.0;
        }
        self.spell_s = 0.0;
        self.since_enough_s = None;
    }

    fn outcome(&self) -> Outcome {
        let turns = self.need_turns.saturating_sub(self.rounds);
        if turns == 0 {
            return Outcome {
                progress: 1.0,
                missing: Missing::default(),
            };
        }
        // A round is half done when its heat is there and the turning is not.
        let (share, _) = done(self.best_s, self.need_s);
        // Only the stretch that still runs towards a turning can serve for one.
        let missing_now = if self.is_ready() {
            0.0
        } else {
            done(self.spell_s, self.need_s).1
        };
        Outcome {
            progress: (f64::from(self.rounds) + share / 2.0) / f64::from(self.need_turns),
            missing: Missing {
                seconds: f64::from(turns - 1) * self.need_s + missing_now,
                peak_seconds: 0.0,
                turns,
            },
        }
    }
}
