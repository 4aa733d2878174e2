//! What do the garden's own harvests say of the next one? A small Bayesian update.
//!
//! Of every past harvest the ratio of what came out to what had been computed is known. Its
//! logarithm is taken as normal: a part that all heaps of this garden share (figures that do not
//! fit it, the habit of the hand that fills the bucket) and a part of each batch alone. The share
//! of the batch alone has a known spread; before the first harvest the shared part has mean 0 and
//! whatever spread makes the two together as wide as the computed interval. Then, with n harvests
//! of mean logarithm m,
//!
//! ```text
//! precision = 1 / s_shared^2 + n / s_batch^2
//! mean      = (n m / s_batch^2) / precision
//! spread^2  = 1 / precision + s_batch^2
//! ```
//!
//! which are the mean and spread for the next batch (the conjugate normal update, in any textbook).

use heapwright_quantity::Interval;

/// Spread of the logarithm of output over input between batches of one site.
///
/// Source: computed from 88 bin batches of food waste with prunings (open data by Lytras 2024,
/// Apache-2.0): 0.208.
pub const BATCH_SPREAD: f64 = 0.21;
/// The least spread of what heaps of a garden share: however narrow the computed interval, the
/// figures of a garden are not known better beforehand. Estimate.
const LEAST_SHARED_SPREAD: f64 = 0.05;
/// A harvest so far from what was computed is a slip of the pen or a heap that is not known whole:
/// the ratio, either way. Estimate.
pub const FARTHEST: f64 = 8.0;
/// Half an 80 % interval of a normal spread, over its standard deviation (Abramowitz and Stegun
/// 1964, table 26.5).
const DECILE: f64 = 1.281_551_565_5;

/// An interval as own harvests correct it, and from how many.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Learnt {
    /// The corrected figure.
    pub interval: Interval,
    /// By what it was multiplied.
    pub factor: f64,
    /// How many harvests it was learnt from.
    pub harvests: usize,
    /// How many were left out, for they lie too far off.
    pub left_out: usize,
    /// What heaps of the garden share, as variance of the logarithm: before and after.
    shared: (f64, f64),
}

impl Learnt {
    /// Another figure of the same heap, by the same factor: what the garden taught is how much
    /// stuff there is, so that parts still add up and shares stay what they are. It is as unsure
    /// as what was learnt, and by as much more as it was beforehand.
    #[must_use]
    pub fn carried_to(&self, other: Interval) -> Interval {
        if self.harvests == 0 {
            return other;
        }
        let value = other.value * self.factor;
        let scaled = |end: f64| end * self.factor;
        if other.low <= 0.0 {
            return Interval {
                value,
                low: scaled(other.low),
                high: scaled(other.high),
            };
        }
        let (before, after) = self.shared;
        let whole = libm::log(other.high / other.low) / (2.0 * DECILE);
        let own = (whole * whole - before).max(BATCH_SPREAD * BATCH_SPREAD);
        // The middle of the interval, which need not be the value.
        let middle = scaled((other.low * other.high).sqrt());
        let reach = libm::exp(DECILE * (after + own).sqrt());
        Interval {
            value,
            low: (middle / reach).min(value),
            high: (middle * reach).max(value),
        }
    }
}

/// Corrects a computed figure by past ratios of found to computed. Ratios that are not above 0 or
/// lie too far off are left out; without any the figure stays as it is.
#[must_use]
pub fn learn(computed: Interval, ratios: &[f64]) -> Learnt {
    let logs: Vec<f64> = ratios
        .iter()
        .filter(|ratio| **ratio >= 1.0 / FARTHEST && **ratio <= FARTHEST)
        .map(|ratio| libm::log(*ratio))
        .collect();
    let left_out = ratios.len() - logs.len();
    if logs.is_empty() || computed.low <= 0.0 {
        return Learnt {
            interval: computed,
            factor: 1.0,
            harvests: 0,
            left_out,
            shared: (0.0, 0.0),
        };
    }
    let whole = libm::log(computed.high / computed.low) / (2.0 * DECILE);
    let batch = BATCH_SPREAD * BATCH_SPREAD;
    let shared = (whole * whole - batch).max(LEAST_SHARED_SPREAD * LEAST_SHARED_SPREAD);
    #[allow(clippy::cast_precision_loss)] // a few harvests
    let count = logs.len() as f64;
    let precision = 1.0 / shared + count / batch;
    let mean = logs.iter().sum::<f64>() / batch / precision;
    let mut learnt = Learnt {
        interval: computed,
        factor: libm::exp(mean),
        harvests: logs.len(),
        left_out,
        shared: (shared, 1.0 / precision),
    };
    learnt.interval = learnt.carried_to(computed);
    learnt
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const COMPUTED: Interval = Interval {
        value: 100.0,
        low: 50.0,
        high: 200.0,
    };

    #[test]
    fn without_harvests_nothing_changes() {
        let learnt = learn(COMPUTED, &[]);
        assert_eq!((learnt.interval, learnt.harvests), (COMPUTED, 0));
        assert_eq!(
            learn(COMPUTED, &[0.0, -1.0, f64::NAN, 1e6]).interval,
            COMPUTED
        );
    }

    #[test]
    fn the_update_is_that_of_the_closed_form() {
        // ln 4 / (2 x 1.28155) = 0.54087; shared variance 0.29254 - 0.0441 = 0.24844; two harvests
        // at half: precision 4.0251 + 45.3515 = 49.3766; mean -0.69315 x 45.3515 / 49.3766.
        let learnt = learn(COMPUTED, &[0.5, 0.5]);
        let mean = -std::f64::consts::LN_2 * 45.351_5 / 49.376_6;
        assert!(
            (learnt.factor - libm::exp(mean)).abs() < 1e-4,
            "{}",
            learnt.factor
        );
        let spread = (1.0 / 49.376_6_f64 + 0.0441).sqrt();
        let reach = libm::exp(1.281_55 * spread);
        assert!((learnt.interval.high / (100.0 * learnt.factor) - reach).abs() < 1e-3);
    }

    #[test]
    fn a_garden_that_always_has_half_as_much_is_learnt_and_the_batch_stays_uncertain() {
        let learnt = learn(COMPUTED, &[0.5; 50]);
        assert!((learnt.factor - 0.5).abs() < 0.01, "{}", learnt.factor);
        let width = libm::log(learnt.interval.high / learnt.interval.low) / (2.0 * DECILE);
        assert!(
            width > BATCH_SPREAD && width < 1.05 * BATCH_SPREAD,
            "{width}"
        );
    }

    #[test]
    fn parts_of_a_figure_keep_their_shares_and_add_up() {
        let learnt = learn(COMPUTED, &[0.3, 0.25, 1e3]);
        assert_eq!((learnt.harvests, learnt.left_out), (2, 1));
        let dry = learnt.carried_to(Interval {
            value: 45.0,
            low: 40.0,
            high: 52.0,
        });
        assert!((dry.value / learnt.interval.value - 0.45).abs() < 1e-12);
        // A narrow figure is no surer than the factor it was multiplied by.
        assert!(dry.high / dry.low > 52.0 / 40.0, "{dry:?}");
        assert!(dry.high / dry.low <= learnt.interval.high / learnt.interval.low * (1.0 + 1e-12));
        let nothing = Interval {
            value: 1.0,
            low: 0.0,
            high: 2.0,
        };
        assert!((learnt.carried_to(nothing).high - 2.0 * learnt.factor).abs() < 1e-12);
        assert_eq!(learn(COMPUTED, &[]).carried_to(nothing), nothing);
    }

    proptest! {
        #[test]
        fn prop_more_found_never_means_less_expected(
            ratios in prop::collection::vec(0.2..5.0_f64, 1..9), more in 1.0..1.5_f64,
        ) {
            let one = learn(COMPUTED, &ratios);
            let other: Vec<f64> = ratios.iter().map(|ratio| ratio * more).collect();
            let other = learn(COMPUTED, &other);
            prop_assert!(other.interval.value >= one.interval.value - 1e-9);
            prop_assert!(one.interval.low <= one.interval.value && one.interval.value <= one.interval.high);
            // The order of harvests does not matter.
            let mut turned = ratios.clone();
            turned.reverse();
            prop_assert!((learn(COMPUTED, &turned).factor - one.factor).abs() < 1e-12);
        }
    }
}
