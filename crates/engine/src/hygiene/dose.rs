//! How much heat is that, in the one unit that a rule writes down: time over the time that is asked?

use super::line::Piece;

/// Heat below this counts as nothing [degrees Celsius].
/// Source: EPA503-T, the equation is written for 50 degrees and above.
pub const CREDITED_FROM_C: f64 = 50.0;
/// Tenfold steps of the time asked, for one degree [1/K]: z is 7.14 K.
/// Source: EPA503-T
const STEPS_PER_K: f64 = 0.1400;
/// Numerator of the equation for matter of 7 % solids and more [d].
/// Source: EPA503-T
const SOLID_NUMERATOR_D: f64 = 131_700_000.0;
/// The same for thin matter.
/// Source: EPA503-T
const THIN_NUMERATOR_D: f64 = 50_070_000.0;
/// Shortest contact of solid matter: 20 minutes [d].
/// Source: EPA503-T
const SOLID_LEAST_D: f64 = 20.0 / 1440.0;
/// Shortest contact of thin matter that is held for half an hour: 30 minutes [d].
/// Source: EPA503-T
const THIN_LEAST_D: f64 = 30.0 / 1440.0;
const SECONDS_PER_DAY: f64 = 86_400.0;

/// Which of the regimes of the equation.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Regime {
    /// 7 % solids or more: compost.
    Solid,
    /// Less than 7 % solids, held for 30 minutes or more.
    Thin,
}

/// The time that the equation alone asks at a constant temperature [d], without its minimum.
#[must_use]
pub fn equation_d(regime: Regime, temperature_c: f64) -> f64 {
    let numerator = match regime {
        Regime::Solid => SOLID_NUMERATOR_D,
        Regime::Thin => THIN_NUMERATOR_D,
    };
    numerator / libm::pow(10.0, STEPS_PER_K * temperature_c)
}

/// The time that must be held at a constant temperature [d]; `None` below 50 degrees.
#[must_use]
pub fn hold_d(regime: Regime, temperature_c: f64) -> Option<f64> {
    let least = match regime {
        Regime::Solid => SOLID_LEAST_D,
        Regime::Thin => THIN_LEAST_D,
    };
    (temperature_c >= CREDITED_FROM_C).then(|| equation_d(regime, temperature_c).max(least))
}

/// Where the minimum contact takes over from the equation for solid matter [degrees Celsius]:
/// log10(`SOLID_NUMERATOR_D` / `SOLID_LEAST_D`) / `STEPS_PER_K`.
const LEAST_FROM_C: f64 = 71.263_701_938_521_79;

/// Dose of a second at that temperature, by the equation alone [1/s].
fn rate(temperature_c: f64) -> f64 {
    // 10^x as e^(x ln 10): twice as fast, and a million points are to be read in a second.
    libm::exp(STEPS_PER_K * std::f64::consts::LN_10 * temperature_c)
        / (SOLID_NUMERATOR_D * SECONDS_PER_DAY)
}

/// The mean of the rate along a straight line between two temperatures.
fn mean_rate(first: f64, last: f64, rise_k: f64) -> f64 {
    let steps = STEPS_PER_K * std::f64::consts::LN_10 * rise_k;
    // Of a short line the ends serve, and are better than the difference of two numbers that are
    // nearly alike.
    if steps.abs() > 1e-4 {
        (last - first) / steps
    } else {
        f64::midpoint(first, last)
    }
}

/// Dose of a piece of the record: the integral of time over the time that is asked; 1 is the rule's
/// own measure. To add it up over a changing temperature goes beyond the rule's wording.
pub(super) fn dose_of(piece: Piece) -> f64 {
    let (cold, hot) = piece.ends();
    if hot < CREDITED_FROM_C {
        return 0.0;
    }
    let rise = hot - cold;
    if rise <= 0.0 {
        return piece.seconds * rate(hot.min(LEAST_FROM_C));
    }
    let from = cold.max(CREDITED_FROM_C);
    let to = hot.min(LEAST_FROM_C);
    let mut dose = 0.0;
    if to > from {
        let seconds = piece.seconds * (to - from) / rise;
        dose += seconds * mean_rate(rate(from), rate(to), to - from);
    }
    if hot > LEAST_FROM_C {
        let seconds = piece.seconds * (hot - cold.max(LEAST_FROM_C)) / rise;
        dose += seconds / (SOLID_LEAST_D * SECONDS_PER_DAY);
    }
    dose
}

/// Remembers the last end of the record, which is where the next piece begins: an exponential a point
/// is enough.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct DoseMeter {
    last_c: f64,
    last_rate: f64,
}

impl DoseMeter {
    /// The dose of the next piece.
    pub fn dose(&mut self, piece: Piece) -> f64 {
        let plain = CREDITED_FROM_C..=LEAST_FROM_C;
        if !plain.contains(&piece.from_c) || !plain.contains(&piece.to_c) {
            return dose_of(piece);
        }
        let first = if piece.from_c == self.last_c {
            self.last_rate
        } else {
            rate(piece.from_c)
        };
        let last = rate(piece.to_c);
        (self.last_c, self.last_rate) = (piece.to_c, last);
        piece.seconds * mean_rate(first, last, piece.to_c - piece.from_c)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(found: f64, expected: f64, relative: f64) {
        assert!(
            (found - expected).abs() <= relative * expected,
            "{found}, not {expected}"
        );
    }

    fn solid_d(temperature_c: f64) -> f64 {
        hold_d(Regime::Solid, temperature_c).unwrap()
    }

    fn held(temperature_c: f64, days: f64) -> f64 {
        dose_of(Piece {
            from_c: temperature_c,
            to_c: temperature_c,
            seconds: days * SECONDS_PER_DAY,
        })
    }

    /// HY-01 to HY-05, and G4 of the worked examples: 15A NCAC 02T .1106, as 40 CFR 503.32(a)(3).
    #[test]
    fn the_equation_gives_its_published_times() {
        near(solid_d(50.0), 13.170, 0.005);
        near(solid_d(53.0), 5.0071, 0.005);
        near(solid_d(55.0) * 24.0, 63.07, 0.005);
        near(solid_d(60.0) * 24.0, 12.58, 0.005);
        near(solid_d(62.0) * 24.0, 6.604, 0.005);
        near(solid_d(65.0) * 1440.0, 150.6, 0.005);
        near(solid_d(70.0) * 1440.0, 30.06, 0.005);
    }

    /// HY-06, HY-07: the minimum of 20 minutes. 15A NCAC 02T .1106.
    #[test]
    fn above_71_degrees_the_minimum_holds() {
        near(equation_d(Regime::Solid, 75.0) * 1440.0, 6.00, 0.005);
        near(solid_d(75.0) * 1440.0, 20.0, 1e-12);
        near(LEAST_FROM_C, 71.26, 1e-4);
        near(equation_d(Regime::Solid, LEAST_FROM_C), SOLID_LEAST_D, 1e-9);
        near(rate(LEAST_FROM_C) * 1200.0, 1.0, 1e-9);
    }

    /// HY-08: derived from the exponent of the equation.
    #[test]
    fn ten_times_as_long_for_seven_degrees() {
        near(1.0 / STEPS_PER_K, 7.143, 0.005);
        near(solid_d(55.0) / solid_d(55.0 + 50.0 / 7.0), 10.0, 1e-9);
    }

    /// HY-09: the equation begins at 50 degrees.
    #[test]
    fn below_50_degrees_nothing_counts() {
        assert_eq!(held(49.9, 10.0), 0.0);
        assert_eq!(hold_d(Regime::Solid, 49.9), None);
        let rising = Piece {
            from_c: 40.0,
            to_c: 49.999,
            seconds: 1e6,
        };
        assert_eq!(dose_of(rising), 0.0);
    }

    /// HY-10, HY-11 and G5: matter below 7 % solids, the same rule.
    #[test]
    fn thin_matter_has_an_equation_of_its_own() {
        let thin = |temperature_c| hold_d(Regime::Thin, temperature_c).unwrap();
        near(thin(50.0), 5.0070, 0.005);
        near(thin(55.0) * 24.0, 23.98, 0.005);
        near(thin(60.0), 0.1993, 0.005);
        near(equation_d(Regime::Thin, 70.0) * 1440.0, 11.43, 0.005);
        near(thin(70.0) * 1440.0, 30.0, 1e-12);
    }

    /// HY-12 to HY-14, and the table of section 2.7 of the reference: derived from the equation.
    #[test]
    fn rules_have_their_doses() {
        near(held(55.0, 3.0), 1.142, 0.005);
        near(held(70.0, 1.0 / 24.0), 1.996, 0.005);
        near(held(55.0, 14.0), 5.33, 0.005);
        near(held(60.0, 6.0), 11.44, 0.005);
        near(held(65.0, 3.0), 28.68, 0.005);
        near(held(50.0, 7.0), 0.53, 0.005);
        near(held(65.0, 5.0), 47.8, 0.005);
        near(held(70.0, 3.0), 144.0, 0.005);
    }

    /// G6, a negative control: the steps of the German rule are no curve of this kind.
    #[test]
    fn the_german_steps_do_not_lie_on_this_curve() {
        let z_k =
            |cold: f64, hot: f64, days: f64, fewer: f64| (hot - cold) / libm::log10(days / fewer);
        near(z_k(55.0, 60.0, 14.0, 6.0), 13.6, 0.005);
        near(z_k(60.0, 65.0, 6.0, 3.0), 16.6, 0.005);
        assert!(held(65.0, 3.0) > 5.0 * held(55.0, 14.0));
    }

    /// HY-35: Burge et al. 1981 in Haug 1993, from memory, against the equation.
    #[test]
    fn the_phage_behind_the_equation_agrees() {
        near(15.0 * 267.0 / 60.0, 66.75, 1e-12);
        near(66.75 / (solid_d(55.0) * 24.0), 1.06, 0.005);
    }

    /// The closed form against many small steps.
    #[test]
    fn a_ramp_is_the_sum_of_its_steps() {
        for (from_c, to_c) in [(45.0, 80.0), (80.0, 45.0), (50.0, 50.001), (71.0, 72.0)] {
            let whole = DoseMeter::default().dose(Piece {
                from_c,
                to_c,
                seconds: 86_400.0,
            });
            let steps = 100_000;
            let sum: f64 = (0..steps)
                .map(|step| {
                    let share = (f64::from(step) + 0.5) / f64::from(steps);
                    let temperature_c = from_c + (to_c - from_c) * share;
                    hold_d(Regime::Solid, temperature_c).map_or(0.0, |days| 1.0 / days)
                        / f64::from(steps)
                })
                .sum();
            near(whole, sum, 1e-4);
        }
    }
}
