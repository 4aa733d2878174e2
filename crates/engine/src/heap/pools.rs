//! What is each pool made of, and what does burning it take and give?
//!
//! Every organic pool is written as a part free of nitrogen plus bound ammonia, so that
//! oxygen, carbon dioxide and water follow from the pool's change alone and close to the
//! last digit whatever the rates do. Mass shares derived from formulae: cellulose
//! C6H10O5; acids (lactic, acetic, a little butyric); cells, lignin-like matter, humus and mixed rapid
//! matter from their usual elementary analyses (Haug 1993, "The Practical Handbook of
//! Compost Engineering", and wood chemistry texts, from memory).

/// Elements of a pool, shares of its mass; oxygen is the rest.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Composition {
    /// Carbon [kg/kg].
    pub carbon: f64,
    /// Hydrogen [kg/kg].
    pub hydrogen: f64,
}

impl Composition {
    /// Oxygen taken by full oxidation [kg O2/kg].
    #[must_use]
    pub const fn oxygen_demand(self) -> f64 {
        let oxygen = 1.0 - self.carbon - self.hydrogen;
        32.0 * (self.carbon / 12.0 + self.hydrogen / 4.0 - oxygen / 32.0)
    }

    /// Water formed by full oxidation [kg/kg].
    #[must_use]
    pub const fn water(self) -> f64 {
        9.0 * self.hydrogen
    }
}

/// Sugars, starch, soluble protein without its nitrogen, fats, pectin.
pub const RAPID: Composition = Composition {
    carbon: 0.470,
    hydrogen: 0.065,
};
/// Cellulose and hemicellulose within reach.
pub const MODERATE: Composition = Composition {
    carbon: 72.0 / 162.0,
    hydrogen: 10.0 / 162.0,
};
/// Lignin and cellulose behind it.
pub const SLOW: Composition = Composition {
    carbon: 0.600,
    hydrogen: 0.058,
};
/// Stable matter formed in the heap.
pub const HUMUS: Composition = Composition {
    carbon: 0.560,
    hydrogen: 0.055,
};
/// Living cells without their nitrogen.
pub const CELLS: Composition = Composition {
    carbon: 0.530,
    hydrogen: 0.065,
};
/// Lactic and acetic acid, both CH2O, with as much butyric acid C4H8O2 (an eighth of the
/// mass) as makes them just as reduced as rapid matter: fermentation takes no oxygen and so
/// moves no electrons.
pub const ACIDS: Composition = {
    const PLAIN: Composition = Composition {
        carbon: 12.0 / 30.0,
        hydrogen: 2.0 / 30.0,
    };
    const BUTYRIC: Composition = Composition {
        carbon: 48.0 / 88.0,
        hydrogen: 8.0 / 88.0,
    };
    let per_carbon = RAPID.oxygen_demand() / RAPID.carbon;
    let share = (per_carbon * PLAIN.carbon - PLAIN.oxygen_demand())
        / (BUTYRIC.oxygen_demand()
            - PLAIN.oxygen_demand()
            - per_carbon * (BUTYRIC.carbon - PLAIN.carbon));
    Composition {
        carbon: PLAIN.carbon + share * (BUTYRIC.carbon - PLAIN.carbon),
        hydrogen: PLAIN.hydrogen + share * (BUTYRIC.hydrogen - PLAIN.hydrogen),
    }
};

/// Mass of one mole of acid [kg], two carbons on average (between acetic and lactic).
pub const ACID_KG_PER_MOL: f64 = 0.070;

/// Oxygen that one kg of carbon leaving as methane does not take [kg O2].
pub const OXYGEN_PER_METHANE_CARBON: f64 = 4.0 * 16.0 / 12.0;
/// Hydrogen leaving with methane, as water not formed [kg per kg methane carbon].
pub const WATER_PER_METHANE_CARBON: f64 = 3.0;
/// Oxygen to turn ammonium into nitrate [kg O2 per kg N].
pub const OXYGEN_PER_NITRATE: f64 = 64.0 / 14.0;
/// Water formed with nitrate [kg per kg N].
pub const WATER_PER_NITRATE: f64 = 18.0 / 14.0;
/// Oxygen to turn ammonium into nitrous oxide [kg O2 per kg N].
pub const OXYGEN_PER_NITROUS: f64 = 32.0 / 14.0;
/// Water formed with nitrous oxide from ammonium [kg per kg N].
pub const WATER_PER_NITROUS: f64 = 27.0 / 14.0;
/// Oxygen that nitrate stands in for when it is breathed to dinitrogen [kg O2 per kg N].
pub const OXYGEN_FROM_DINITROGEN: f64 = 40.0 / 14.0;
/// The same when it is breathed to nitrous oxide only [kg O2 per kg N].
pub const OXYGEN_FROM_NITROUS: f64 = 32.0 / 14.0;
/// Water formed in denitrification [kg per kg N].
pub const WATER_PER_DENITRIFIED: f64 = 9.0 / 14.0;
/// Mass of ammonia for one of nitrogen.
pub const AMMONIA_PER_NITROGEN: f64 = 17.0 / 14.0;
/// Mass of nitric acid for one of nitrogen.
pub const NITRIC_ACID_PER_NITROGEN: f64 = 63.0 / 14.0;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn oxygen_demand_and_water_balance_the_mass() {
        // Demand per kg by the stoichiometry of full oxidation, three digits.
        for (pool, demand, water) in [
            (RAPID, 1.308, 0.585),
            (MODERATE, 1.185, 0.556),
            (SLOW, 1.722, 0.522),
            (HUMUS, 1.548, 0.495),
            (CELLS, 1.528, 0.585),
            (ACIDS, 1.168, 0.630),
        ] {
            assert!((pool.oxygen_demand() - demand).abs() < 1e-3, "{pool:?}");
            assert!((pool.water() - water).abs() < 1e-3, "{pool:?}");
            let dioxide = pool.carbon * 44.0 / 12.0;
            assert!((1.0 + pool.oxygen_demand() - dioxide - pool.water()).abs() < 1e-12);
        }
    }

    #[test]
    fn fermentation_takes_no_oxygen() {
        let acids = RAPID.carbon / ACIDS.carbon;
        let left = RAPID.oxygen_demand() - acids * ACIDS.oxygen_demand();
        assert!(left.abs() < 1e-12);
        // Between CH2O alone and butyric acid alone, near the first.
        assert!((0.40..0.43).contains(&ACIDS.carbon), "{ACIDS:?}");
    }
}
