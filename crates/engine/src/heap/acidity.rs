//! How acid is the pore water? The pH at which all charges balance.

/// What is dissolved [mol per kg pore water].
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Dissolved {
    /// Bases set free so far (potassium, calcium, magnesium against organic anions).
    pub bases: f64,
    /// Ammonium and ammonia.
    pub ammonium: f64,
    /// Dissociation constant of ammonium [mol/L].
    pub ammonium_constant: f64,
    /// Organic acids.
    pub acids: f64,
    /// Bicarbonate times hydrogen ions [mol2/L2].
    pub bicarbonate: f64,
    /// Weak acids of humus.
    pub humic: f64,
    /// Nitrate.
    pub nitrate: f64,
}

/// pK 4.3 of the organic acids, between lactic 3.86 and acetic 4.76.
const ORGANIC_ACID: f64 = 5.011_872_336_272_725e-5;
/// pK 8.2 of the weak acids of humus. Estimate.
const HUMIC_ACID: f64 = 6.309_573_444_801_93e-9;
const WATER: f64 = 1e-14;
const MOST_ROUNDS: usize = 80;
/// Hydrogen ions at pH 3 and at pH 10 [mol/L]: the model's limits.
const MOST: f64 = 1e-3;
const LEAST: f64 = 1e-10;

impl Dissolved {
    /// Charge that is left over at a concentration of hydrogen ions, and its slope times
    /// that concentration; rises throughout.
    #[inline]
    fn charge(&self, h: f64) -> (f64, f64) {
        let over_ammonium = 1.0 / (h + self.ammonium_constant);
        let over_acids = 1.0 / (h + ORGANIC_ACID);
        let over_humic = 1.0 / (h + HUMIC_ACID);
        let over_h = 1.0 / h;
        let ammonium = self.ammonium * h * over_ammonium;
        let acids = self.acids * ORGANIC_ACID * over_acids;
        let humic = self.humic * HUMIC_ACID * over_humic;
        let anions = (self.bicarbonate + WATER) * over_h;
        (
            self.bases + ammonium + h - acids - anions - humic - self.nitrate,
            ammonium * self.ammonium_constant * over_ammonium
                + h
                + acids * h * over_acids
                + anions
                + humic * h * over_humic,
        )
    }

    /// Hydrogen ions [mol/L] at balance, from a guess; between pH 3 and pH 10.
    #[must_use]
    pub fn hydrogen(&self, guess: f64) -> f64 {
        let (mut low, mut high) = (LEAST, MOST);
        let mut h = if guess > low && guess < high {
            guess
        } else {
            1e-7
        };
        for _ in 0..MOST_ROUNDS {
            let (charge, slope) = self.charge(h);
            if charge > 0.0 {
                high = h;
            } else {
                low = h;
            }
            // Newton's step in the logarithm; (2 + d) / (2 - d) stands for e^d.
            let step = (-charge / slope).clamp(-1.2, 1.2);
            let mut next = h * (2.0 + step) / (2.0 - step);
            // Newton's error is squared each time: what is left is below 1e-11.
            if step.abs() < 1e-5 {
                h = next.clamp(LEAST, MOST);
                break;
            }
            if !(next > low && next < high) {
                next = (low * high).sqrt();
            }
            h = next;
            if high - low <= 1e-13 * high {
                break;
            }
        }
        h
    }
}

/// pH of a concentration of hydrogen ions.
#[must_use]
pub fn ph(hydrogen: f64) -> f64 {
    -libm::log10(hydrogen)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn the_constants_are_the_powers_they_say() {
        assert!((ORGANIC_ACID / libm::exp10(-4.3) - 1.0).abs() < 1e-12);
        assert!((HUMIC_ACID / libm::exp10(-8.2) - 1.0).abs() < 1e-12);
    }

    #[test]
    fn vinegar_and_ammonia_have_their_textbook_ph() {
        // A weak acid of 0.1 mol/kg and pK 4.3: pH = (4.3 + 1) / 2, held at 3 by the model.
        let weak = Dissolved {
            acids: 0.001,
            ammonium_constant: 5.6e-10,
            ..Dissolved::default()
        };
        // h^2 / (c - h) = K: h = 2.00e-4.
        assert!((ph(weak.hydrogen(1e-7)) - 3.699).abs() < 2e-3);
        // Half neutralised: pH = pK.
        let buffer = Dissolved {
            acids: 0.2,
            bases: 0.1,
            ammonium_constant: 5.6e-10,
            ..Dissolved::default()
        };
        assert!((ph(buffer.hydrogen(1e-7)) - 4.3).abs() < 2e-3);
    }

    #[test]
    fn starting_at_the_answer_stays_there() {
        let buffer = Dissolved {
            acids: 0.2,
            bases: 0.1,
            ammonium: 0.05,
            ammonium_constant: 1e-9,
            ..Dissolved::default()
        };
        let h = buffer.hydrogen(1e-7);
        for nudge in [-1e-15, 0.0, 1e-15] {
            let again = buffer.hydrogen(h * (1.0 + nudge));
            assert!((again / h - 1.0).abs() < 1e-9, "{again} {h}");
        }
    }

    proptest! {
        #[test]
        fn prop_the_balance_holds_from_any_guess(
            bases in 0.0..1.0_f64, ammonium in 0.0..0.5_f64, acids in 0.0..0.6_f64,
            humic in 0.0..2.0_f64, nitrate in 0.0..0.2_f64, guess in 1e-11..1e-2_f64,
        ) {
            let dissolved = Dissolved {
                bases, ammonium, acids, humic, nitrate,
                ammonium_constant: 1e-9, bicarbonate: 1e-9,
            };
            let h = dissolved.hydrogen(guess);
            let again = dissolved.hydrogen(1e-7);
            prop_assert!((h / again - 1.0).abs() < 1e-9);
            if h > 1.01 * LEAST && h < 0.99 * MOST {
                let (charge, slope) = dissolved.charge(h);
                prop_assert!(charge.abs() <= 1e-9 * slope.max(1e-9) + 1e-14, "{charge} {slope}");
            }
        }
    }
}
