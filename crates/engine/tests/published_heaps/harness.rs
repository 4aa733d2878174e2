//! A figure of a published experiment beside the simulated one.

use std::fmt::Write as _;
use std::ops::RangeInclusive;

/// What an experiment was used for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Role {
    /// Parameters were set with it: that it agrees says little.
    Calibration,
    /// No parameter was set with it.
    Validation,
}

/// One figure.
#[derive(Clone, Debug)]
pub struct Row {
    /// The experiment.
    pub id: &'static str,
    /// What was measured.
    pub figure: &'static str,
    /// What the source says of it.
    pub published: &'static str,
    /// What the simulation must lie in.
    pub asked: RangeInclusive<f64>,
    /// What the simulation gives.
    pub computed: f64,
    /// What the experiment was used for.
    pub role: Role,
    /// Where it is published.
    pub source: &'static str,
}

/// An experiment, whose figures become rows.
#[derive(Clone, Copy, Debug)]
pub struct Experiment {
    pub id: &'static str,
    pub source: &'static str,
    pub role: Role,
}

/// An experiment that only checks.
pub const fn validation(id: &'static str, source: &'static str) -> Experiment {
    Experiment {
        id,
        source,
        role: Role::Validation,
    }
}

/// An experiment with which parameters were set.
pub const fn calibration(id: &'static str, source: &'static str) -> Experiment {
    Experiment {
        id,
        source,
        role: Role::Calibration,
    }
}

impl Experiment {
    pub fn row(
        &self,
        figure: &'static str,
        published: &'static str,
        asked: RangeInclusive<f64>,
        computed: f64,
    ) -> Row {
        Row {
            id: self.id,
            figure,
            published,
            asked,
            computed,
            role: self.role,
            source: self.source,
        }
    }
}

pub fn at_least(low: f64) -> RangeInclusive<f64> {
    low..=f64::INFINITY
}

pub fn at_most(high: f64) -> RangeInclusive<f64> {
    f64::NEG_INFINITY..=high
}

/// What is asked of a difference when only its direction is published.
pub fn above_zero() -> RangeInclusive<f64> {
    at_least(0.0)
}

impl Row {
    /// The row, as one with which a parameter was set though the rest of its experiment checks.
    pub fn that_sets(self) -> Self {
        Self {
            role: Role::Calibration,
            ..self
        }
    }

    /// How far outside it lies; 0 inside.
    pub fn miss(&self) -> f64 {
        let (low, high) = (self.asked.start(), self.asked.end());
        (low - self.computed).max(self.computed - high).max(0.0)
    }

    /// Width of the range; of an open one the size of its limit, at least 1.
    pub fn width(&self) -> f64 {
        let (low, high) = (*self.asked.start(), *self.asked.end());
        match (low.is_finite(), high.is_finite()) {
            (true, true) => high - low,
            (true, false) => low.abs().max(1.0),
            _ => high.abs().max(1.0),
        }
    }

    fn decimals(&self) -> usize {
        let largest = [*self.asked.start(), *self.asked.end()]
            .into_iter()
            .filter(|limit| limit.is_finite())
            .fold(0.0, |most: f64, limit| most.max(limit.abs()));
        match largest {
            size if size >= 200.0 => 0,
            size if size > 2.0 || size == 0.0 => 1,
            _ => 2,
        }
    }

    fn range_in_words(&self) -> String {
        let (low, high) = (*self.asked.start(), *self.asked.end());
        match (low.is_finite(), high.is_finite()) {
            (true, true) => format!("{low} to {high}"),
            (true, false) => format!("at least {low}"),
            _ => format!("at most {high}"),
        }
    }

    /// The row as one line of the document; `reason` why it misses.
    pub fn line(&self, reason: Option<&str>) -> String {
        let decimals = self.decimals();
        let mut line = format!(
            "| {} | {} | {} | {} | {:.decimals$} |",
            self.id,
            self.figure,
            self.published,
            self.range_in_words(),
            self.computed,
        );
        let miss = self.miss();
        // Writing to a string does not fail.
        let _ = if miss > 0.0 {
            let reason = reason.unwrap_or("not in the list of known misses");
            write!(line, " **misses** by {miss:.decimals$} : {reason} |")
        } else {
            write!(line, " inside |")
        };
        let role = match self.role {
            Role::Calibration => "sets",
            Role::Validation => "checks",
        };
        let _ = write!(line, " {role} | {} |", self.source);
        line
    }
}

/// True when two lines differ at most by one in the last digit of their numbers.
pub fn alike(one: &str, other: &str) -> bool {
    let (one, other): (Vec<_>, Vec<_>) = (
        one.split_whitespace().collect(),
        other.split_whitespace().collect(),
    );
    let digits = |word: &str| word.split_once('.').map_or(0, |(_, after)| after.len());
    one.len() == other.len()
        && one.iter().zip(&other).all(|(a, b)| {
            let near = || -> Option<bool> {
                let (x, y): (f64, f64) = (a.parse().ok()?, b.parse().ok()?);
                let last = 0.1_f64.powi(i32::try_from(digits(a)).ok()?);
                Some(digits(a) == digits(b) && (x - y).abs() < 1.01 * last)
            };
            a == b || near().unwrap_or(false)
        })
}

#[test]
fn lines_are_alike_up_to_one_in_the_last_digit() {
    assert!(alike("| C1 | peak | 47.2 |", "| C1 | peak | 47.3 |"));
    assert!(!alike("| C1 | peak | 47.2 |", "| C1 | peak | 47.4 |"));
    assert!(!alike("| C1 | peak | 47.2 |", "| C1 | core | 47.2 |"));
    assert!(!alike("| C1 | peak | 47.2 |", "| C1 | peak |"));
}

#[test]
fn a_miss_is_the_distance_to_the_nearer_limit() {
    let row = |computed| validation("X", "").row("", "", 10.0..=20.0, computed);
    assert_eq!(row(7.0).miss(), 3.0);
    assert_eq!(row(20.5).miss(), 0.5);
    assert_eq!(row(15.0).miss(), 0.0);
    assert_eq!(
        validation("X", "").row("", "", at_least(4.0), 3.0).width(),
        4.0
    );
}
