//! How do life and chemistry answer to temperature, water and air?

/// Cardinal temperatures of a group of microbes [degrees Celsius].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cardinal {
    /// No growth at or below.
    pub least_c: f64,
    /// Fastest growth.
    pub best_c: f64,
    /// No growth at or above.
    pub most_c: f64,
}

impl Cardinal {
    /// Activity at a temperature, 0 to 1: the cardinal temperature model with inflection
    /// (Rosso, Lobry and Flandrois 1993, "An unexpected correlation between cardinal
    /// temperatures of microbial growth").
    #[must_use]
    pub fn activity(self, temperature_c: f64) -> f64 {
        let (t, least, best, most) = (temperature_c, self.least_c, self.best_c, self.most_c);
        if t <= least || t >= most {
            return 0.0;
        }
        let above = (t - most) * (t - least) * (t - least);
        let below = (best - least)
            * ((best - least) * (t - best) - (best - most) * (best + least - 2.0 * t));
        (above / below).clamp(0.0, 1.0)
    }
}

/// Activity by moisture, wet basis: Haug 1993, "The Practical Handbook of Compost
/// Engineering" (from memory). The wet side is limited by air, not here.
#[inline]
#[must_use]
pub fn moisture_factor(moisture_wet_basis: f64) -> f64 {
    1.0 / (1.0 + libm::exp(7.0622 - 17.684 * moisture_wet_basis))
}

/// A smooth switch from 0 to 1 around `middle`.
#[must_use]
pub fn logistic(value: f64, middle: f64, width: f64) -> f64 {
    1.0 / (1.0 + libm::exp((middle - value) / width))
}

/// Share of carbon lost that leaves as methane, at most one in twenty.
///
/// Estimate; its slope over moisture from the near thousandfold rise between 44 and 66 %
/// in reactors (Ermolaev 2015, "Greenhouse gas emissions from small-scale composting",
/// thesis, Uppsala). Good to a factor of ten.
#[inline]
#[must_use]
pub fn methane_share(dry_air_share: f64, oxygen_factor: f64) -> f64 {
    let lack = 1.0 - oxygen_factor;
    (dry_air_share * (1.0 + 100.0 * lack * lack)).min(0.05)
}

/// The part of [`methane_share`] that moisture sets.
#[inline]
#[must_use]
pub fn methane_by_moisture(moisture_wet_basis: f64) -> f64 {
    0.0005 * libm::exp((moisture_wet_basis - 0.60) * (std::f64::consts::LN_10 / 0.073))
}

#[cfg(test)]
mod tests {
    use super::*;

    const MESOPHILES: Cardinal = Cardinal {
        least_c: 0.0,
        best_c: 37.0,
        most_c: 49.0,
    };
    const THERMOPHILES: Cardinal = Cardinal {
        least_c: 22.0,
        best_c: 56.0,
        most_c: 72.0,
    };

    #[test]
    fn cardinal_model_meets_its_values() {
        for (t, wanted) in [
            (5.0, 0.035),
            (10.0, 0.133),
            (15.0, 0.283),
            (20.0, 0.471),
            (30.0, 0.864),
            (37.0, 1.0),
            (45.0, 0.644),
            (48.0, 0.207),
            (-3.0, 0.0),
            (49.0, 0.0),
        ] {
            assert!((MESOPHILES.activity(t) - wanted).abs() < 6e-4, "{t}");
        }
        for (t, wanted) in [
            (30.0, 0.133),
            (37.0, 0.398),
            (45.0, 0.742),
            (50.0, 0.912),
            (60.0, 0.951),
            (65.0, 0.724),
            (70.0, 0.263),
            (71.0, 0.137),
        ] {
            assert!((THERMOPHILES.activity(t) - wanted).abs() < 6e-4, "{t}");
        }
    }

    #[test]
    fn moisture_factor_meets_its_values() {
        for (moisture, wanted) in [
            (0.2, 0.03),
            (0.3, 0.15),
            (0.4, 0.50),
            (0.5, 0.86),
            (0.6, 0.97),
            (0.7, 0.995),
        ] {
            assert!((moisture_factor(moisture) - wanted).abs() < 6e-3);
        }
    }

    #[test]
    fn methane_rises_a_thousandfold_from_44_to_66_per_cent_moisture() {
        // C21: a ratio of 300 to 3,000.
        let ratio = methane_share(methane_by_moisture(0.66), 0.9)
            / methane_share(methane_by_moisture(0.44), 0.9);
        assert!((300.0..3000.0).contains(&ratio), "{ratio}");
    }
}
