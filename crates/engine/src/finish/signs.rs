//! What does one test say? Formulas and classes of the tests of ripeness.
//!
//! A test speaks either of *stability* (does it still work?) or of *maturity* (does it do roots
//! good?). Each gives a [`Standing`]; limits that sources put differently lie at the cautious side.
//! A value on a boundary belongs to the riper class, as "up to 10" and "80 to 90" are printed.

/// Of which of two independent kinds a sign is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Family {
    /// Little goes on in it any more.
    Stability,
    /// Plants bear it.
    Maturity,
}

/// What a sign says of ripeness.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Standing {
    /// Against it.
    Against,
    /// Nearly.
    Between,
    /// For it.
    For,
}

/// Classes of self-heating, rawest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum HeatingClass {
    /// Rises by more than 40 K: raw.
    I,
    /// By 30 to 40 K: fresh.
    II,
    /// By 20 to 30 K: between fresh and finished.
    III,
    /// By 10 to 20 K: finished, curing.
    IV,
    /// By up to 10 K: very stable.
    V,
}

impl HeatingClass {
    /// The class of a rise over the room [K].
    ///
    /// Source: recalled from Brinton et al. 1995, the German methods book and its standard; a German
    /// plant's page prints I and II alike.
    /// Checks: HY-28, H1.
    #[must_use]
    pub fn of_rise(rise_k: f64) -> Self {
        match rise_k {
            rise if rise > 40.0 => Self::I,
            rise if rise > 30.0 => Self::II,
            rise if rise > 20.0 => Self::III,
            rise if rise > 10.0 => Self::IV,
            _ => Self::V,
        }
    }

    /// One class towards raw: a household flask is smaller than the standard one of 100 mm and loses
    /// its heat sooner, so that compost looks riper in it than it is. A choice of this program.
    #[must_use]
    pub const fn rawer(self) -> Self {
        match self {
            Self::V => Self::IV,
            Self::IV => Self::III,
            Self::III => Self::II,
            Self::II | Self::I => Self::I,
        }
    }

    /// What it says: the two riper classes are for use, the middle one nearly.
    ///
    /// Source: recalled from the maturity index of the Californian council of 2001, which draws its
    /// lines at rises of 10 and 20 K.
    #[must_use]
    pub const fn standing(self) -> Standing {
        match self {
            Self::V | Self::IV => Standing::For,
            Self::III => Standing::Between,
            Self::II | Self::I => Standing::Against,
        }
    }
}

/// Classes of respiration, rawest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum RespirationClass {
    /// Raw.
    Raw,
    /// Unstable.
    Unstable,
    /// Moderately unstable.
    ModeratelyUnstable,
    /// Stable.
    Stable,
    /// Very stable.
    VeryStable,
}

impl RespirationClass {
    /// The class of carbon given off as carbon dioxide [mg C per g of organic matter and day].
    ///
    /// Source: recalled from the US composting council's test methods (2002) and the maturity index
    /// of 2001.
    /// Checks: HY-29.
    #[must_use]
    pub fn of_carbon(carbon_mg_g_d: f64) -> Self {
        match carbon_mg_g_d {
            carbon if carbon > 40.0 => Self::Raw,
            carbon if carbon > 15.0 => Self::Unstable,
            carbon if carbon > 8.0 => Self::ModeratelyUnstable,
            carbon if carbon >= 2.0 => Self::Stable,
            _ => Self::VeryStable,
        }
    }

    /// What it says.
    #[must_use]
    pub const fn standing(self) -> Standing {
        match self {
            Self::VeryStable | Self::Stable => Standing::For,
            Self::ModeratelyUnstable => Standing::Between,
            Self::Unstable | Self::Raw => Standing::Against,
        }
    }
}

/// Carbon of carbon dioxide [kg/kg]: molar masses 12.011 and 44.009. Laboratories report either;
/// the classes are of carbon.
pub const CARBON_OF_DIOXIDE: f64 = 12.011 / 44.009;

/// Carbon given off [mg C/(g d)] for carbon dioxide given off [mg CO2/(g d)].
/// Checks: HY-30.
#[must_use]
pub fn carbon_given_off(dioxide_mg_g_d: f64) -> f64 {
    dioxide_mg_g_d * CARBON_OF_DIOXIDE
}

/// Carbon given off [mg C/(g d)] for oxygen taken [mg O2/(g h)], one mole for one.
///
/// Source: molar masses; equation 8.1 of the dossier of the heap's simulation.
#[must_use]
pub fn carbon_of_uptake(oxygen_mg_g_h: f64) -> f64 {
    oxygen_mg_g_h * 24.0 * 12.011 / 31.998
}

/// Germination index: share of seeds up against the control, times length of roots against the
/// control; 1 is as good as the control. `None` where the control has not sprouted or grown.
///
/// Source: recalled from Zucconi et al. 1981.
/// Checks: HY-32, H2.
#[must_use]
pub fn germination_index(
    sprouted_share: f64,
    control_share: f64,
    root_mm: f64,
    control_root_mm: f64,
) -> Option<f64> {
    let control = control_share * control_root_mm;
    (control > 0.0).then(|| sprouted_share * root_mm / control)
}

/// From this germination index on the extract does seeds no harm worth naming.
///
/// Source: recalled from Emino and Warman 2004; 60 % would have done for Zucconi et al. 1981.
pub const GERMINATION_GOOD: f64 = 0.8;
/// The older, laxer line.
///
/// Source: recalled from Zucconi et al. 1981.
pub const GERMINATION_ACCEPTABLE: f64 = 0.6;
/// Below this it is harmful to plants.
///
/// Source: a study of two local composts in the Journal of New Sciences 28(20).
pub const GERMINATION_HARMFUL: f64 = 0.5;
/// From this share of the control's seedlings on a compost is mature, from the next very mature.
///
/// Source: recalled from the maturity index of 2001.
/// Checks: H4.
pub const EMERGENCE_MATURE: f64 = 0.8;
/// See [`EMERGENCE_MATURE`].
pub const EMERGENCE_VERY_MATURE: f64 = 0.9;

/// What a germination index says.
#[must_use]
pub fn germination_standing(index: f64) -> Standing {
    if index >= GERMINATION_GOOD {
        Standing::For
    } else if index >= GERMINATION_HARMFUL {
        Standing::Between
    } else {
        Standing::Against
    }
}

/// What a share of the control's seedlings says; the source has no "nearly".
#[must_use]
pub fn emergence_standing(share: f64) -> Standing {
    if share >= EMERGENCE_MATURE {
        Standing::For
    } else {
        Standing::Against
    }
}

/// Maturity as tables of the year 2001 word it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum MaturityClass {
    /// Immature.
    Immature,
    /// Mature.
    Mature,
    /// Very mature.
    VeryMature,
}

impl MaturityClass {
    /// By ammonium over nitrate, both as nitrogen: up to 0.5, to 3, above.
    ///
    /// Source: recalled from the maturity index of 2001.
    /// Checks: HY-31.
    #[must_use]
    pub fn of_ammonium_to_nitrate(ratio: f64) -> Self {
        Self::of(ratio, 0.5, 3.0)
    }

    /// By ammonium nitrogen alone [mg/kg of dry matter]: below 75, to 500, above.
    ///
    /// Source: recalled from the maturity index of 2001.
    #[must_use]
    pub fn of_ammonium(nitrogen_mg_kg: f64) -> Self {
        Self::of(nitrogen_mg_kg, 75.0, 500.0)
    }

    /// By the share of the control's seedlings.
    /// Checks: H4.
    #[must_use]
    pub fn of_emergence(share: f64) -> Self {
        if share > EMERGENCE_VERY_MATURE {
            Self::VeryMature
        } else if share >= EMERGENCE_MATURE {
            Self::Mature
        } else {
            Self::Immature
        }
    }

    fn of(value: f64, very: f64, mature: f64) -> Self {
        if value < very {
            Self::VeryMature
        } else if value <= mature {
            Self::Mature
        } else {
            Self::Immature
        }
    }

    /// What it says; the source has no "nearly".
    #[must_use]
    pub const fn standing(self) -> Standing {
        match self {
            Self::VeryMature | Self::Mature => Standing::For,
            Self::Immature => Standing::Against,
        }
    }
}

/// What C:N says: to 20 it gives nitrogen off, above 25 it is not let in by the maturity index.
///
/// Source: Clemson's guide to compost analysis for 20; recalled from the maturity index of 2001
/// for 25.
/// Checks: F11.
#[must_use]
pub fn ratio_standing(carbon_to_nitrogen: f64) -> Standing {
    if carbon_to_nitrogen <= 20.0 {
        Standing::For
    } else if carbon_to_nitrogen <= 25.0 {
        Standing::Between
    } else {
        Standing::Against
    }
}

/// What the rise of a turned heap over the air says [K]: below 8 it stays cool, to 10 nearly.
///
/// Source: recalled from the Canadian guidelines of 2005 (8 K) and the best class of self-heating
/// (10 K).
#[must_use]
pub fn reheating_standing(rise_k: f64) -> Standing {
    if rise_k < 8.0 {
        Standing::For
    } else if rise_k <= 10.0 {
        Standing::Between
    } else {
        Standing::Against
    }
}

/// A heap smaller than this stays cool, ripe or not [m3]. Source: recalled, common practice.
pub const REHEATING_LEAST_M3: f64 = 0.5;
/// So many days after a turning a heap shows whether it heats again: from, to.
pub const REHEATING_DAYS: (f64, f64) = (1.0, 7.0);
/// The bag is closed at least so long [d]. Source: recalled, common practice: 3, some say 7 days.
pub const BAG_LEAST_D: f64 = 3.0;

/// What a bag says: foul or swollen counts at once, good only after three days. `None` where
/// nothing can be said.
#[must_use]
pub fn bag_standing(days: f64, swollen: bool, foul: bool, clean: bool) -> Option<Standing> {
    if swollen || foul {
        return Some(Standing::Against);
    }
    (clean && days >= BAG_LEAST_D).then_some(Standing::For)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn hy_28_and_h1_self_heating() {
        use HeatingClass::{I, II, III, IV, V};
        for (rise, class) in [
            (8.0, V),
            (17.0, IV),
            (24.0, III),
            (35.0, II),
            (45.0, I),
            // H1, memory of LAGA M10 1995: the boundaries, which belong to the riper class here.
            (9.9, V),
            (10.0, V),
            (10.1, IV),
            (20.0, IV),
            (20.1, III),
            (30.0, III),
            (30.1, II),
            (40.0, II),
            (40.1, I),
            (-1.0, V),
        ] {
            assert_eq!(HeatingClass::of_rise(rise), class, "{rise}");
        }
        assert_eq!((V.rawer(), I.rawer()), (IV, I));
    }

    #[test]
    fn hy_29_and_hy_30_respiration() {
        use RespirationClass::{ModeratelyUnstable, Raw, Stable, Unstable, VeryStable};
        for (carbon, class) in [
            (1.5, VeryStable),
            (6.0, Stable),
            (12.0, ModeratelyUnstable),
            (20.0, Unstable),
            (50.0, Raw),
        ] {
            assert_eq!(RespirationClass::of_carbon(carbon), class, "{carbon}");
        }
        // The British limit of 16 mg CO2 is inside "stable": HY-30, 0.5 %.
        assert!((carbon_given_off(16.0) / 4.37 - 1.0).abs() < 0.005);
        assert_eq!(RespirationClass::of_carbon(carbon_given_off(16.0)), Stable);
        // 1 mg C/(g d) is 0.111 mg O2/(g h): equation 8.1 of the dossier, three digits printed.
        assert!((carbon_of_uptake(0.111) - 1.0).abs() < 0.002);
    }

    #[test]
    fn hy_31_nitrogen_forms() {
        use MaturityClass::{Immature, Mature, VeryMature};
        for (ratio, class) in [
            (0.3, VeryMature),
            (2.0, Mature),
            (4.0, Immature),
            (3.0, Mature),
        ] {
            assert_eq!(MaturityClass::of_ammonium_to_nitrate(ratio), class);
        }
        // The same index, from memory: 75 and 500 mg/kg.
        for (found, class) in [(74.0, VeryMature), (500.0, Mature), (501.0, Immature)] {
            assert_eq!(MaturityClass::of_ammonium(found), class);
        }
    }

    #[test]
    fn hy_32_h2_and_h4_seeds() {
        // HY-32: 9 of 10 seeds, 30 against 40 mm.
        let index = germination_index(0.9, 1.0, 30.0, 40.0).unwrap();
        assert!((index - 0.675).abs() < 1e-12);
        assert!((GERMINATION_ACCEPTABLE..GERMINATION_GOOD).contains(&index));
        assert_eq!(germination_standing(index), Standing::Between);
        // H2, memory of Zucconi et al. 1981: 34 against 40 mm.
        let index = germination_index(0.9, 1.0, 34.0, 40.0).unwrap();
        assert!((index - 0.765).abs() < 1e-12);
        assert_eq!(germination_index(0.9, 0.0, 34.0, 40.0), None);
        assert_eq!(germination_index(0.9, 1.0, 34.0, 0.0), None);
        assert_eq!(germination_standing(0.49), Standing::Against);
        // H4, memory of the index of 2001: 90 and 80 are the boundaries.
        use MaturityClass::{Immature, Mature, VeryMature};
        for (share, class) in [
            (0.91, VeryMature),
            (0.9, Mature),
            (0.8, Mature),
            (0.79, Immature),
        ] {
            assert_eq!(MaturityClass::of_emergence(share), class, "{share}");
        }
    }

    #[test]
    fn ratios_rises_and_bags_have_their_lines() {
        use Standing::{Against, Between, For};
        // F11: above 30 it ties nitrogen up, below 20 it gives it off.
        for (ratio, standing) in [(15.0, For), (20.0, For), (23.0, Between), (31.0, Against)] {
            assert_eq!(ratio_standing(ratio), standing);
        }
        for (rise, standing) in [
            (-3.0, For),
            (7.9, For),
            (8.0, Between),
            (10.0, Between),
            (10.1, Against),
        ] {
            assert_eq!(reheating_standing(rise), standing);
        }
        assert_eq!(bag_standing(3.0, false, false, true), Some(For));
        assert_eq!(bag_standing(2.0, false, false, true), None);
        assert_eq!(bag_standing(7.0, false, false, false), None);
        assert_eq!(bag_standing(1.0, true, false, true), Some(Against));
        assert_eq!(bag_standing(1.0, false, true, false), Some(Against));
    }
}
