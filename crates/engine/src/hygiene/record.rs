//! The record of a thermometer, taken in one point at a time.

use std::fmt;

use super::line::Piece;
use super::rules::{Method, Outcome, RULES, Rule, Status};
use super::tally::{HOUR_THRESHOLDS_C, Stay, Tally};

/// Gaps longer than this are not credited, unless it is said otherwise [s]: a day.
const USUAL_LONGEST_GAP_S: f64 = 86_400.0;
/// A gap may be longer by this and is still one: whoever reads once a day does so at nine one day and
/// at eleven the next, and when summer time ends a day has 25 hours [s]. The excess is not credited.
const LATE_S: f64 = 7200.0;
/// Error of a usual probe [K]: half of it is reading, half the instrument. An estimate; say your
/// own where it is known.
pub const USUAL_PROBE_ERROR_K: f64 = 1.0;
/// The most depths that are kept apart.
pub const MOST_DEPTHS: usize = 16;

/// One reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    /// When [ms since 1970-01-01T00:00Z].
    pub time_ms: i64,
    /// What the probe showed [degrees Celsius].
    pub temperature_c: f64,
    /// How deep it was [m], where that is told.
    pub depth_m: Option<f64>,
}

/// The heap was turned.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Turn {
    /// When [ms since 1970-01-01T00:00Z].
    pub time_ms: i64,
    /// How it mixed, 0 at random to 1 all of the outside to the inside.
    pub mixing: f64,
}

/// How a record is read.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RecordOptions {
    /// Gaps longer than this are not credited [s].
    pub longest_gap_s: f64,
    /// By how much the probe may be wrong either way [K].
    pub probe_error_k: f64,
}

impl Default for RecordOptions {
    fn default() -> Self {
        Self {
            longest_gap_s: USUAL_LONGEST_GAP_S,
            probe_error_k: USUAL_PROBE_ERROR_K,
        }
    }
}

/// Why a point cannot be taken in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RecordError {
    /// It lies before the one before it.
    Backwards,
    /// There is one of the same time and depth.
    SameTime,
    /// Its temperature or depth is no number.
    NotANumber,
    /// There are more depths than are kept apart.
    TooManyDepths,
}

impl fmt::Display for RecordError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Backwards => "it lies before the row above it: sort the rows by time",
            Self::SameTime => "there is a row of that time already: keep one of them",
            Self::NotANumber => "its temperature or depth is no number: correct it",
            Self::TooManyDepths => "there are more than 16 depths: give fewer",
        })
    }
}

impl std::error::Error for RecordError {}

/// What is counted of one depth.
#[derive(Clone, Debug)]
struct Trace {
    depth_m: Option<f64>,
    first_ms: i64,
    last: Point,
    /// Which turning comes next.
    next_turn: usize,
    points: u64,
    hottest_c: f64,
    hottest_ms: i64,
    gaps_s: f64,
    gaps: u64,
    /// What days of more than 24 hours had more [s].
    late_s: f64,
    /// From turnings to the next reading [s].
    after_turns_s: f64,
    /// With the error taken off, as shown, with the error put on.
    tallies: [Tally; 3],
}

/// A record that is being read. It keeps no point but the last of each depth.
#[derive(Clone, Debug)]
pub struct Record {
    options: RecordOptions,
    turns: Vec<Turn>,
    traces: Vec<Trace>,
}

/// What a record shows at one depth. Of three values the first has the probe's error taken off, the
/// second is as shown, the third has it put on.
#[derive(Clone, Debug, PartialEq)]
pub struct Findings {
    /// The depth [m], where that is told.
    pub depth_m: Option<f64>,
    /// The first point [ms since 1970-01-01T00:00Z].
    pub first_ms: i64,
    /// The last point.
    pub last_ms: i64,
    /// How many points there are.
    pub points: u64,
    /// The highest temperature shown [degrees Celsius].
    pub hottest_c: f64,
    /// When it was shown.
    pub hottest_ms: i64,
    /// By how much the probe may be wrong either way [K].
    pub probe_error_k: f64,
    /// Time that is credited [s].
    pub credited_s: f64,
    /// Time that is not credited [s]: gaps, and what a day of readings had more than 24 hours.
    pub not_credited_s: f64,
    /// How many gaps were too long.
    pub gaps: u64,
    /// Time in them [s].
    pub gaps_s: f64,
    /// Time from turnings to the next reading [s]: credited at the lower of the readings before and
    /// after, and not at all at the low end of each figure.
    pub after_turns_s: f64,
    /// Turnings that are known from before the first reading.
    pub turns_before: usize,
    /// Hours at or above each of [`HOUR_THRESHOLDS_C`].
    pub hours: [[f64; HOUR_THRESHOLDS_C.len()]; 3],
    /// Dose: 1 is what the equation of the rule asks.
    pub dose: [f64; 3],
    /// Between turnings, each with its dose.
    pub stays: [Vec<Stay>; 3],
    /// For each of [`RULES`].
    pub outcomes: [[Outcome; RULES.len()]; 3],
}

impl Findings {
    /// How the record stands to a rule, in the order of [`RULES`]: with the error taken off, as
    /// shown, with it put on.
    #[must_use]
    pub fn status(&self, place: usize, method: Method) -> [Status; 3] {
        let applies = RULES
            .get(place)
            .is_some_and(|rule: &Rule| rule.applies_to(method));
        [0, 1, 2].map(|end| {
            if !applies {
                Status::NotApplicable
            } else if self.outcomes[end][place].is_met() {
                Status::Met
            } else {
                Status::NotMet
            }
        })
    }
}

impl Record {
    /// A record without points, of a heap that was turned at these times.
    #[must_use]
    pub fn new(mut turns: Vec<Turn>, options: RecordOptions) -> Self {
        turns.sort_by_key(|turn| turn.time_ms);
        // Two entries of one instant are one turning.
        turns.dedup_by_key(|turn| turn.time_ms);
        Self {
            options,
            turns,
            traces: Vec::new(),
        }
    }

    /// Takes in the next point.
    pub fn take(&mut self, point: Point) -> Result<(), RecordError> {
        let is_number = point.temperature_c.is_finite() && point.depth_m.is_none_or(f64::is_finite);
        if !is_number {
            return Err(RecordError::NotANumber);
        }
        // Mostly there is one depth, and the next point is of the same.
        let known = self
            .traces
            .iter_mut()
            .find(|trace| trace.depth_m == point.depth_m);
        if let Some(trace) = known {
            return trace.take(point, &self.turns, &self.options);
        }
        if self.traces.len() == MOST_DEPTHS {
            return Err(RecordError::TooManyDepths);
        }
        self.traces
            .push(Trace::new(point, &self.turns, &self.options));
        Ok(())
    }

    /// What the record shows at each depth, the shallowest first, one that is not told last; empty
    /// without points.
    #[must_use]
    pub fn findings(&self) -> Vec<Findings> {
        let mut traces: Vec<&Trace> = self.traces.iter().collect();
        traces.sort_by(|one, other| {
            let depth = |trace: &Trace| trace.depth_m.unwrap_or(f64::INFINITY);
            depth(one).total_cmp(&depth(other))
        });
        traces
            .iter()
            .map(|trace| trace.findings(&self.turns, &self.options))
            .collect()
    }
}

#[allow(clippy::cast_precision_loss)] // milliseconds of centuries
fn seconds(from_ms: i64, to_ms: i64) -> f64 {
    to_ms.saturating_sub(from_ms) as f64 / 1000.0
}

impl Trace {
    fn new(point: Point, turns: &[Turn], options: &RecordOptions) -> Self {
        let error_k = options.probe_error_k;
        Self {
            depth_m: point.depth_m,
            first_ms: point.time_ms,
            last: point,
            // What was turned before the record begins, no record shows.
            next_turn: turns.partition_point(|turn| turn.time_ms < point.time_ms),
            points: 1,
            hottest_c: point.temperature_c,
            hottest_ms: point.time_ms,
            gaps_s: 0.0,
            gaps: 0,
            late_s: 0.0,
            after_turns_s: 0.0,
            tallies: [-error_k, 0.0, error_k].map(Tally::new),
        }
    }

    fn take(
        &mut self,
        point: Point,
        turns: &[Turn],
        options: &RecordOptions,
    ) -> Result<(), RecordError> {
        let last = self.last;
        match point.time_ms.cmp(&last.time_ms) {
            std::cmp::Ordering::Less => return Err(RecordError::Backwards),
            std::cmp::Ordering::Equal => return Err(RecordError::SameTime),
            std::cmp::Ordering::Greater => {}
        }
        let whole_s = seconds(last.time_ms, point.time_ms);
        let is_credited = whole_s <= options.longest_gap_s + LATE_S;
        let scale = if is_credited {
            (options.longest_gap_s / whole_s).min(1.0)
        } else {
            1.0
        };
        // Turned between the two: how hot it came after that says nothing of the time before.
        let is_turned_between = turns
            .get(self.next_turn..)
            .unwrap_or_default()
            .iter()
            .take_while(|turn| turn.time_ms < point.time_ms)
            .any(|turn| turn.time_ms > last.time_ms);
        let to_c = if is_turned_between {
            point.temperature_c.min(last.temperature_c)
        } else {
            point.temperature_c
        };
        let slope = (to_c - last.temperature_c) / whole_s;
        let at = |time_ms: i64| {
            if time_ms == point.time_ms {
                to_c
            } else {
                last.temperature_c + slope * seconds(last.time_ms, time_ms)
            }
        };
        let mut from_ms = last.time_ms;
        let mut after_turns_s = 0.0;
        let mut step = |tallies: &mut [Tally; 3], to_ms: i64, next_turn: usize| {
            let until_turn_s = turns
                .get(next_turn)
                .map_or(f64::INFINITY, |turn| seconds(to_ms, turn.time_ms));
            let seconds = scale * seconds(from_ms, to_ms);
            if seconds > 0.0 {
                let is_known = from_ms == last.time_ms;
                if is_credited && !is_known {
                    after_turns_s += seconds;
                }
                let piece = Piece {
                    from_c: at(from_ms),
                    to_c: at(to_ms),
                    seconds,
                };
                for (end, tally) in tallies.iter_mut().enumerate() {
                    match (is_credited, is_known || end > 0) {
                        (true, true) => tally.piece(piece, until_turn_s),
                        // How fast it warmed again nobody measured: the low end leaves it out.
                        (true, false) => tally.unknown(seconds, until_turn_s),
                        (false, _) => tally.lost(seconds),
                    }
                }
            }
            from_ms = to_ms;
        };
        // A turning at the instant of a point belongs to the time before it.
        while let Some(turn) = turns
            .get(self.next_turn)
            .filter(|turn| turn.time_ms <= point.time_ms)
        {
            step(&mut self.tallies, turn.time_ms, self.next_turn);
            for tally in &mut self.tallies {
                tally.turn(turn.mixing);
            }
            self.next_turn += 1;
        }
        step(&mut self.tallies, point.time_ms, self.next_turn);
        self.after_turns_s += after_turns_s;
        if is_credited {
            self.late_s += (whole_s - options.longest_gap_s).max(0.0);
        } else {
            self.gaps_s += whole_s;
            self.gaps += 1;
        }
        self.points += 1;
        if point.temperature_c > self.hottest_c {
            self.hottest_c = point.temperature_c;
            self.hottest_ms = point.time_ms;
        }
        self.last = point;
        Ok(())
    }

    fn findings(&self, turns: &[Turn], options: &RecordOptions) -> Findings {
        let tallies = [0, 1, 2].map(|end| self.tallies[end].settled());
        // A turning behind the last point opens a stay of which nothing is known.
        let after = turns.get(self.next_turn..).unwrap_or_default();
        let not_credited_s = self.gaps_s + self.late_s;
        Findings {
            depth_m: self.depth_m,
            first_ms: self.first_ms,
            last_ms: self.last.time_ms,
            points: self.points,
            hottest_c: self.hottest_c,
            hottest_ms: self.hottest_ms,
            probe_error_k: options.probe_error_k,
            credited_s: (seconds(self.first_ms, self.last.time_ms) - not_credited_s).max(0.0),
            not_credited_s,
            gaps: self.gaps,
            gaps_s: self.gaps_s,
            after_turns_s: self.after_turns_s,
            turns_before: turns.partition_point(|turn| turn.time_ms < self.first_ms),
            hours: [0, 1, 2].map(|end| tallies[end].hours()),
            dose: [0, 1, 2].map(|end| tallies[end].dose()),
            stays: [0, 1, 2].map(|end| {
                let mut stays = tallies[end].stays().to_vec();
                stays.extend(after.iter().map(|turn| Stay {
                    mixing: turn.mixing,
                    ..Stay::default()
                }));
                stays
            }),
            outcomes: [0, 1, 2].map(|end| tallies[end].outcomes()),
        }
    }
}
