//! How hot was every part, for how long? Hot spells, and germs that die by heat.
//!
//! Both ride on the cells and are mixed at a turn. They tell what the simulation makes
//! likely; only measured temperatures and the record of turns count for hygiene.

use super::cell::Cell;
use super::layout::{DRY_FED, GERM_KINDS, GERMS, HOT, HOT_CLASSES};
use super::pile::Pile;

/// Temperature from which a spell counts as hot [degrees Celsius].
pub(crate) const HOT_C: f64 = 55.0;
/// Days of a spell at which the next class begins; the first begins with any heat.
const CLASS_DAYS: [f64; HOT_CLASSES - 1] = [0.0, 1.0, 3.0, 7.0];

/// A germ that dies tenfold in `decimal_d` at 55 degrees, and ten times as fast for `z_k` more.
struct Germ {
    decimal_d: f64,
    z_k: f64,
}

/// Three references: bacteriophage f2 (267 min at 55, 47 at 60 degrees), Salmonella
/// Senftenberg 775W (89 and 7.5), Ascaris eggs (1.3 at 60; slope of Feachem and others
/// 1983). From memory of Burge and others 1978 and 1981 by way of Haug 1993.
const GERM_DATA: [Germ; GERM_KINDS] = [
    Germ {
        decimal_d: 267.0 / 1440.0,
        z_k: 6.6,
    },
    Germ {
        decimal_d: 89.0 / 1440.0,
        z_k: 4.7,
    },
    Germ {
        decimal_d: 7.4 / 1440.0,
        z_k: 6.6,
    },
];
/// Names of the three, in order.
pub const GERM_NAMES: [&str; GERM_KINDS] = [
    "bacteriophage f2",
    "Salmonella Senftenberg 775W",
    "Ascaris eggs",
];

/// Part of a stretch of `length` above `level` when a value runs straight between two.
pub(crate) fn time_above(level: f64, from: f64, to: f64, length: f64) -> f64 {
    let (low, high) = (from.min(to), from.max(to));
    if low >= level {
        length
    } else if high <= level {
        0.0
    } else {
        length * (high - level) / (high - low)
    }
}

/// Decimal reductions while the temperature runs straight between two values.
fn decimal_reductions(germ: &Germ, from_c: f64, to_c: f64, days: f64) -> f64 {
    let rate = |t: f64| libm::exp10(((t - HOT_C) / germ.z_k).min(12.0)) / germ.decimal_d;
    let power = (to_c - from_c) / germ.z_k * std::f64::consts::LN_10;
    if power.abs() < 1e-6 {
        days * rate(0.5 * (from_c + to_c))
    } else {
        days * (rate(to_c) - rate(from_c)) / power
    }
}

impl Pile {
    /// Goes on by one step, over which each cell's temperature ran from `before` to now.
    pub(crate) fn age(&mut self, before_c: &[f64], cells: &[Cell], days: f64) {
        for (index, cell) in cells.iter().enumerate() {
            let (from, to) = (before_c[index], cell.temperature_c);
            let contents = &mut self.cells[index];
            let hot = time_above(HOT_C, from, to, days);
            if hot > 0.0 {
                let spell = if from >= HOT_C {
                    self.spell_d[index] + hot
                } else {
                    hot
                };
                // Whoever has been hot less long than this joins the class of this spell.
                let class = CLASS_DAYS.iter().filter(|start| spell > **start).count();
                for lower in 0..class {
                    contents[HOT + class] += contents[HOT + lower];
                    contents[HOT + lower] = 0.0;
                }
                self.spell_d[index] = if to >= HOT_C { spell } else { 0.0 };
            }
            if from.max(to) > 40.0 {
                for (kind, germ) in GERM_DATA.iter().enumerate() {
                    let reductions = decimal_reductions(germ, from, to, days);
                    contents[GERMS + kind] *= libm::exp10(-reductions.min(300.0));
                }
            }
        }
    }

    /// Shares of the matter by its longest hot spell; of nothing, none was hot.
    pub(crate) fn hot_shares(&self) -> [f64; HOT_CLASSES] {
        if self.cells.is_empty() {
            return [1.0, 0.0, 0.0, 0.0, 0.0];
        }
        let fed: f64 = self.cells.iter().map(|contents| contents[DRY_FED]).sum();
        std::array::from_fn(|class| {
            self.cells
                .iter()
                .map(|contents| contents[HOT + class])
                .sum::<f64>()
                / fed
        })
    }

    /// Surviving share of each reference germ.
    pub(crate) fn surviving_shares(&self) -> [f64; GERM_KINDS] {
        if self.cells.is_empty() {
            return [1.0; GERM_KINDS];
        }
        let fed: f64 = self.cells.iter().map(|contents| contents[DRY_FED]).sum();
        std::array::from_fn(|kind| {
            self.cells
                .iter()
                .map(|contents| contents[GERMS + kind])
                .sum::<f64>()
                / fed
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn time_above_is_cut_at_the_crossing() {
        assert_eq!(time_above(55.0, 50.0, 60.0, 2.0), 1.0);
        assert_eq!(time_above(55.0, 56.0, 60.0, 2.0), 2.0);
        assert_eq!(time_above(55.0, 40.0, 50.0, 2.0), 0.0);
    }

    #[test]
    fn decimal_reductions_follow_the_decimal_times() {
        let phage = &GERM_DATA[0];
        let day = decimal_reductions(phage, 55.0, 55.0, 1.0);
        assert!((day - 1440.0 / 267.0).abs() < 1e-9);
        // 47 minutes at 60 degrees, within the rounding of z.
        let hour = decimal_reductions(phage, 60.0, 60.0, 47.0 / 1440.0);
        assert!((hour - 1.0).abs() < 0.02, "{hour}");
        // A ramp is the mean of the rates along it.
        let ramp = decimal_reductions(phage, 50.0, 60.0, 1.0);
        let steps = 10_000;
        let sum: f64 = (0..steps)
            .map(|step| {
                let t = 50.0 + 10.0 * (f64::from(step) + 0.5) / f64::from(steps);
                decimal_reductions(phage, t, t, 1.0) / f64::from(steps)
            })
            .sum();
        assert!((ramp / sum - 1.0).abs() < 1e-6);
    }
}
