//! Everything that is counted of one probe, as it showed it or with its error.

use super::dose::DoseMeter;
use super::line::{Band, Inside, Piece};
use super::rules::{Outcome, RULES, Rule};
use super::trackers::{Tracker, peak_band};

/// Temperatures at and above which hours are told [degrees Celsius].
pub const HOUR_THRESHOLDS_C: [f64; 7] = [40.0, 48.0, 50.0, 55.0, 60.0, 65.0, 70.0];
/// Of these, the temperatures that rules ask; the others are those of trials.
pub const RULE_THRESHOLDS_C: [f64; 6] = [40.0, 50.0, 55.0, 60.0, 65.0, 70.0];
/// The temperature that most rules ask [degrees Celsius].
/// Source: EPA503-B
pub(super) const HOT_C: f64 = 55.0;
/// A stay counts as hot when the probe was at 55 degrees for this long in it [s]: a day. Trials came
/// to the bacterial reductions of the European rule in 17 hours of it. A touch of heat is no stay in
/// it, and three days, as the rules for heaps that lie still ask, no turned heap has that is turned
/// five times in fifteen days.
/// Source: ELVING09
const STAY_HOT_S: f64 = 86_400.0;
/// Or when the dose of the stay came to this, which at higher temperatures takes less time.
const STAY_DOSE: f64 = 1.0;
/// As many bands as the rules can have: one each and one for a peak.
const MOST_BANDS: usize = RULES.len() + 1;

/// Between two turnings, or before the first, or after the last.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Stay {
    /// Dose at the probe.
    pub dose: f64,
    /// How long the probe was at 55 degrees or more [s].
    pub hot_s: f64,
    /// How the turning before it mixed, 0 at random to 1 all of the outside in; 0 for the first.
    pub mixing: f64,
}

impl Stay {
    /// True when what lay at the probe counts as having been in the heat: a day at 55 degrees or
    /// more in all, or a dose of 1.
    #[must_use]
    pub fn is_hot(&self) -> bool {
        // Sums of a million pieces round to a thousandth of a second.
        self.hot_s >= STAY_HOT_S - 1e-3 || self.dose >= STAY_DOSE
    }
}

/// What is counted.
#[derive(Clone, Debug)]
pub(super) struct Tally {
    /// How much warmer than shown [K].
    shift_k: f64,
    meter: DoseMeter,
    /// Temperatures at which anything counted changes, ascending.
    edges: Vec<f64>,
    /// The last end of the record and its class.
    last: (f64, usize),
    /// Pieces that lie between the same two edges: their time, their class, a temperature of them, and
    /// how long after them the heap is turned next. Most points cross no edge, and are counted so.
    alike_s: f64,
    alike_class: usize,
    alike_c: f64,
    alike_until_turn_s: f64,
    hours_s: [f64; HOUR_THRESHOLDS_C.len()],
    stays: Vec<Stay>,
    /// Each band of the rules once.
    bands: Vec<Band>,
    /// For each rule: the place of its band, of its peak's band, and how far it has come.
    trackers: Vec<(usize, usize, Tracker)>,
}

impl Tally {
    pub fn new(shift_k: f64) -> Self {
        let mut bands: Vec<Band> = Vec::new();
        let mut place = |band: Band| {
            let known = bands.iter().position(|known| *known == band);
            known.unwrap_or_else(|| {
                bands.push(band);
                bands.len() - 1
            })
        };
        let trackers = RULES
            .iter()
            .map(|rule: &Rule| {
                let own = place(rule.band);
                let peak = peak_band(rule.need).map_or(own, &mut place);
                (own, peak, Tracker::new(rule.need))
            })
            .collect();
        let mut edges: Vec<f64> = bands
            .iter()
            .flat_map(|band| [band.least_c, band.most_c])
            .chain(HOUR_THRESHOLDS_C)
            .collect();
        edges.sort_by(f64::total_cmp);
        edges.dedup();
        let last = (f64::NAN, 0);
        Self {
            shift_k,
            meter: DoseMeter::default(),
            edges,
            last,
            alike_s: 0.0,
            alike_class: 0,
            alike_c: 0.0,
            alike_until_turn_s: 0.0,
            hours_s: [0.0; HOUR_THRESHOLDS_C.len()],
            stays: vec![Stay::default()],
            bands,
            trackers,
        }
    }

    /// A part of the record; `until_turn_s` from its end the heap is turned next.
    pub fn piece(&mut self, shown: Piece, until_turn_s: f64) {
        let piece = shown.warmer(self.shift_k);
        if let Some(stay) = self.stays.last_mut() {
            stay.dose += self.meter.dose(piece);
            stay.hot_s += piece.at_or_above(HOT_C);
        }
        let from_class = if piece.from_c == self.last.0 {
            self.last.1
        } else {
            self.class(piece.from_c)
        };
        let to_class = self.class(piece.to_c);
        self.last = (piece.to_c, to_class);
        if from_class != to_class {
            self.settle();
            self.count(piece, until_turn_s);
            return;
        }
        if self.alike_class != from_class {
            self.settle();
        }
        self.alike_s += piece.seconds;
        self.alike_class = from_class;
        self.alike_c = piece.from_c;
        self.alike_until_turn_s = until_turn_s;
    }

    /// Between which edges a temperature lies, or on which.
    fn class(&self, temperature_c: f64) -> usize {
        let edges = self.edges.iter();
        edges
            .map(|edge| usize::from(*edge < temperature_c) + usize::from(*edge <= temperature_c))
            .sum()
    }

    /// Counts what was held back.
    fn settle(&mut self) {
        if self.alike_s > 0.0 {
            let piece = Piece {
                from_c: self.alike_c,
                to_c: self.alike_c,
                seconds: self.alike_s,
            };
            self.alike_s = 0.0;
            self.count(piece, self.alike_until_turn_s);
        }
    }

    fn count(&mut self, piece: Piece, until_turn_s: f64) {
        for (sum, least_c) in self.hours_s.iter_mut().zip(HOUR_THRESHOLDS_C) {
            *sum += piece.at_or_above(least_c);
        }
        let mut inside = [Inside::None; MOST_BANDS];
        for (inside, band) in inside.iter_mut().zip(&self.bands) {
            *inside = Inside::of(piece, *band);
        }
        for (own, peak, tracker) in &mut self.trackers {
            tracker.piece(piece.seconds, until_turn_s, inside[*own], inside[*peak]);
        }
    }

    pub fn turn(&mut self, mixing: f64) {
        self.settle();
        self.stays.push(Stay {
            mixing,
            ..Stay::default()
        });
        for (_, _, tracker) in &mut self.trackers {
            tracker.turn();
        }
    }

    /// From a turning to the next reading.
    pub fn unknown(&mut self, seconds: f64, until_turn_s: f64) {
        self.settle();
        for (_, _, tracker) in &mut self.trackers {
            tracker.unknown(seconds, until_turn_s);
        }
    }

    pub fn lost(&mut self, seconds: f64) {
        self.settle();
        for (_, _, tracker) in &mut self.trackers {
            tracker.lost(seconds);
        }
    }

    /// The same with nothing held back.
    pub fn settled(&self) -> Self {
        let mut settled = self.clone();
        settled.settle();
        settled
    }

    pub fn dose(&self) -> f64 {
        self.stays.iter().map(|stay| stay.dose).sum()
    }

    pub fn hours(&self) -> [f64; HOUR_THRESHOLDS_C.len()] {
        self.hours_s.map(|seconds| seconds / 3600.0)
    }

    pub fn stays(&self) -> &[Stay] {
        &self.stays
    }

    pub fn outcomes(&self) -> [Outcome; RULES.len()] {
        let mut outcomes = [Outcome::default(); RULES.len()];
        for (outcome, (_, _, tracker)) in outcomes.iter_mut().zip(&self.trackers) {
            *outcome = tracker.outcome();
        }
        outcomes
    }
}
