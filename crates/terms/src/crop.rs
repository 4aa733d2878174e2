//! What does a crop need, bear and take away?

use heapwright_quantity::Range;

/// What a crop needs in a year, as elements.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CropNeed {
    /// Nitrogen [kg/m2].
    pub nitrogen_kg_m2: Range,
    /// Phosphorus [kg/m2].
    pub phosphorus_kg_m2: Range,
    /// Potassium [kg/m2].
    pub potassium_kg_m2: Range,
}

/// What is eaten of a crop.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EdiblePart {
    /// It touches the soil or grows in it.
    TouchesSoil,
    /// It hangs clear of the soil.
    ClearOfSoil,
    /// Nothing.
    NotEaten,
}

/// The salt that a crop bears: full yield up to a threshold, then a straight fall.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SaltTolerance {
    /// Conductivity of the saturation extract of the soil up to which nothing is lost [dS/m].
    pub threshold_ds_m: f64,
    /// Share of the yield lost for one dS/m above it.
    pub loss_per_ds_m: f64,
}

/// What one kilogram of harvest takes away, as elements [kg/kg].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Removal {
    /// Nitrogen.
    pub nitrogen: f64,
    /// Phosphorus.
    pub phosphorus: f64,
    /// Potassium.
    pub potassium: f64,
}
