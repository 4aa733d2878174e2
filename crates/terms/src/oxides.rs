//! How much of an oxide does a label name for an element? Ratios of molar masses.
//!
//! Labels of fertilisers and composts count phosphorus, potassium, calcium and
//! magnesium as P2O5, K2O, CaO and MgO; laboratories and this program as elements.
//!
//! Source: IUPAC standard atomic weights (abridged, 2021): C 12.011, O 15.999, Mg 24.305,
//! P 30.974, K 39.098, Ca 40.078. Checks: F2, F3, F7, US-01, US-02.

const CARBON: f64 = 12.011;
const OXYGEN: f64 = 15.999;
const MAGNESIUM: f64 = 24.305;
const PHOSPHORUS: f64 = 30.974;
const POTASSIUM: f64 = 39.098;
const CALCIUM: f64 = 40.078;

/// Phosphate (P2O5) over the phosphorus in it [kg/kg].
pub const PHOSPHATE_OVER_PHOSPHORUS: f64 = (2.0 * PHOSPHORUS + 5.0 * OXYGEN) / (2.0 * PHOSPHORUS);
/// Potash (K2O) over the potassium in it [kg/kg].
pub const POTASH_OVER_POTASSIUM: f64 = (2.0 * POTASSIUM + OXYGEN) / (2.0 * POTASSIUM);
/// Calcium oxide (CaO) over the calcium in it [kg/kg].
pub const CALCIUM_OXIDE_OVER_CALCIUM: f64 = (CALCIUM + OXYGEN) / CALCIUM;
/// Magnesium oxide (MgO) over the magnesium in it [kg/kg].
pub const MAGNESIUM_OXIDE_OVER_MAGNESIUM: f64 = (MAGNESIUM + OXYGEN) / MAGNESIUM;
/// Chalk (CaCO3) over the calcium in it [kg/kg].
pub const CALCIUM_CARBONATE_OVER_CALCIUM: f64 = (CALCIUM + CARBON + 3.0 * OXYGEN) / CALCIUM;
