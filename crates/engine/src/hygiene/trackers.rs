//! How far has the record come towards each rule, point by point?

use super::line::{Band, Inside};
use super::rules::{Breaks, Missing, Need, Outcome};

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
    Hold(Hold),
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
            } => Self::Hold(Hold {
                need_s: seconds,
                need_turns: turns,
                breaks,
                apart_s,
                ..Hold::default()
            }),
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
                Inside::None => rounds.cold(),
                Inside::All => rounds.hot(seconds),
                Inside::Part(from, to) => {
                    if from > 0.0 {
                        rounds.cold();
                    }
                    rounds.hot(to - from);
                    if to < seconds {
                        rounds.cold();
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
            Self::Rounds(rounds) => rounds.cold(),
            Self::Peak(peak) => peak.cold(),
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
#[derive(Clone, Debug)]
pub(super) struct Hold {
    need_s: f64,
    need_turns: u32,
    breaks: Breaks,
    apart_s: f64,
    /// Time in the band in this period [s].
    hot_s: f64,
    /// Turnings in it.
    turns: u32,
    /// Turnings in the present break, which count when the heat comes back.
    turns_in_break: u32,
    /// How long the present break is [s].
    break_s: f64,
    /// How much of the break lies farther than the allowed time from the nearest turning [s].
    unexplained_s: f64,
    since_turn_s: f64,
    since_counted_s: f64,
    best: Outcome,
}

impl Default for Hold {
    fn default() -> Self {
        Self {
            need_s: 0.0,
            need_turns: 0,
            breaks: Breaks::None,
            apart_s: 0.0,
            hot_s: 0.0,
            turns: 0,
            turns_in_break: 0,
            break_s: 0.0,
            unexplained_s: 0.0,
            since_turn_s: f64::INFINITY,
            since_counted_s: f64::INFINITY,
            best: Outcome {
                progress: -1.0,
                missing: Missing::default(),
            },
        }
    }
}

impl Hold {
    fn is_open(&self) -> bool {
        self.hot_s > 0.0
    }

    fn pass(&mut self, seconds: f64) {
        self.since_turn_s += seconds;
        self.since_counted_s += seconds;
    }

    fn hot(&mut self, seconds: f64) {
        if self.break_s > 0.0 {
            self.turns += self.turns_in_break;
            self.turns_in_break = 0;
            self.break_s = 0.0;
            self.unexplained_s = 0.0;
        }
        self.hot_s += seconds;
        self.pass(seconds);
    }

    fn cold(&mut self, seconds: f64, until_turn_s: f64) {
        if self.is_open() {
            self.break_s += seconds;
            if let Breaks::AtTurns(most_s) = self.breaks {
                // Farther than allowed from the last turning, and not yet near the next.
                let first_s = (most_s - self.since_turn_s).max(0.0);
                let last_s = (until_turn_s + seconds - most_s).min(seconds);
                self.unexplained_s += (last_s - first_s).max(0.0);
            }
            if !self.goes_on() {
                self.end();
            }
        }
        self.pass(seconds);
    }

    /// Whether the present break does not end the period.
    fn goes_on(&self) -> bool {
        match self.breaks {
            Breaks::None => false,
            Breaks::Any => true,
            Breaks::UpTo(most_s) => self.break_s <= most_s,
            Breaks::AtTurns(most_s) => self.break_s <= most_s && self.unexplained_s <= ROUNDING_S,
        }
    }

    fn turn(&mut self) {
        self.since_turn_s = 0.0;
        if !self.is_open() || self.since_counted_s < self.apart_s - ROUNDING_S {
            return;
        }
        self.since_counted_s = 0.0;
        if self.break_s > 0.0 {
            self.turns_in_break += 1;
        } else {
            self.turns += 1;
        }
    }

    fn lost(&mut self, seconds: f64) {
        if self.breaks == Breaks::Any {
            self.cold(seconds, f64::INFINITY);
        } else {
            self.end();
            self.pass(seconds);
        }
    }

    /// The period is over; it is kept when it came further than those before.
    fn end(&mut self) {
        if self.is_open() {
            let outcome = self.of_period();
            if outcome.progress > self.best.progress {
                self.best = outcome;
            }
        }
        self.hot_s = 0.0;
        self.turns = 0;
        self.turns_in_break = 0;
        self.break_s = 0.0;
        self.unexplained_s = 0.0;
        self.since_counted_s = f64::INFINITY;
    }

    fn of_period(&self) -> Outcome {
        let (share, seconds) = done(self.hot_s, self.need_s);
        let turns = self.need_turns.saturating_sub(self.turns);
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

/// Turnings, each after a stretch of heat since the last one.
#[derive(Clone, Debug, Default)]
pub(super) struct Rounds {
    need_s: f64,
    need_turns: u32,
    spell_s: f64,
    /// The longest stretch since the last turning [s].
    longest_s: f64,
    rounds: u32,
    /// The longest stretch that no turning followed and that was thus not used [s].
    best_s: f64,
}

impl Rounds {
    fn hot(&mut self, seconds: f64) {
        self.spell_s += seconds;
        self.longest_s = self.longest_s.max(self.spell_s);
        self.best_s = self.best_s.max(self.longest_s);
    }

    fn cold(&mut self) {
        self.spell_s = 0.0;
    }

    fn turn(&mut self) {
        if self.longest_s >= self.need_s - ROUNDING_S {
            self.rounds += 1;
            self.best_s = 0.0;
        }
        self.spell_s = 0.0;
        self.longest_s = 0.0;
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
        let (_, missing_now) = done(self.longest_s, self.need_s);
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
