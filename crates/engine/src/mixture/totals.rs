//! What does a part bring? Sums of mass, at one set of values.

use std::cmp::Ordering;

use heapwright_quantity::Range;
use heapwright_terms::{
    ASH_DENSITY_KG_M3, Ingredient, ORGANIC_MATTER_DENSITY_KG_M3, Part, PartAmount,
    WATER_DENSITY_KG_M3,
};

pub(crate) const PHOSPHORUS: usize = 0;
pub(crate) const POTASSIUM: usize = 1;
pub(crate) const CALCIUM: usize = 2;
pub(crate) const MAGNESIUM: usize = 3;
pub(crate) const SODIUM: usize = 4;
pub(crate) const MINERALS: usize = 5;

/// Masses and volumes that add up when materials are put together.
#[derive(Clone, Debug, PartialEq)]
pub struct Totals {
    /// Mass as it lies [kg].
    pub wet_mass_kg: f64,
    /// Dry matter [kg].
    pub dry_mass_kg: f64,
    /// Volume as it lies [m3]; `None` once a part of unknown density is in it.
    pub volume_m3: Option<f64>,
    /// Carbon that counts, handbook scale [kg].
    pub carbon_kg: f64,
    /// The same on the scale of measured carbon [kg].
    pub carbon_measured_kg: f64,
    /// Nitrogen [kg].
    pub nitrogen_kg: f64,
    /// Ash [kg].
    pub ash_kg: f64,
    /// Biodegradable dry matter [kg].
    pub biodegradable_kg: f64,
    /// Phosphorus, potassium, calcium, magnesium, sodium [kg]; `None` when known for no part.
    pub(crate) minerals: [Option<f64>; MINERALS],
    /// Dry matter of the parts for which each mineral is known [kg].
    pub(crate) known_dry_mass_kg: [f64; MINERALS],
}

impl Default for Totals {
    fn default() -> Self {
        Self {
            wet_mass_kg: 0.0,
            dry_mass_kg: 0.0,
            volume_m3: Some(0.0),
            carbon_kg: 0.0,
            carbon_measured_kg: 0.0,
            nitrogen_kg: 0.0,
            ash_kg: 0.0,
            biodegradable_kg: 0.0,
            minerals: [None; MINERALS],
            known_dry_mass_kg: [0.0; MINERALS],
        }
    }
}

impl Totals {
    /// What one unit of a part (one kilogram, or one filling) brings at typical values.
    ///
    /// A volume of unknown density brings nothing: its mass cannot be known, and
    /// whoever makes the part must not let this happen.
    #[must_use]
    pub fn of_unit(part: &Part) -> Self {
        let ingredient = &part.ingredient;
        let density = ingredient.bulk_density_kg_m3.map(|range| range.typical);
        let (wet, volume) = match &part.amount {
            PartAmount::MassKg(_) => (1.0, density.map(|density| 1.0 / density)),
            PartAmount::VolumeM3 { each_m3, .. } => (
                each_m3.typical * density.unwrap_or(0.0),
                Some(each_m3.typical),
            ),
        };
        let dry = wet * (1.0 - ingredient.moisture_wet_basis.typical);
        let carbon = dry * ingredient.nitrogen_and_carbon.carbon_dry_basis_typical;
        let minerals = minerals(ingredient);
        Self {
            wet_mass_kg: wet,
            dry_mass_kg: dry,
            volume_m3: volume,
            carbon_kg: carbon,
            carbon_measured_kg: carbon * ingredient.measured_over_handbook_carbon,
            nitrogen_kg: dry * ingredient.nitrogen_and_carbon.nitrogen_dry_basis.typical,
            ash_kg: dry * ingredient.ash_dry_basis.typical,
            biodegradable_kg: dry * ingredient.biodegradable_dry_basis.typical,
            minerals: minerals.map(|range| range.map(|range| dry * range.typical)),
            known_dry_mass_kg: minerals.map(|range| if range.is_some() { dry } else { 0.0 }),
        }
    }

    /// Adds `count` units of `unit`.
    pub fn add(&mut self, unit: &Self, count: f64) {
        self.wet_mass_kg += unit.wet_mass_kg * count;
        self.dry_mass_kg += unit.dry_mass_kg * count;
        if count > 0.0 {
            self.volume_m3 = match (self.volume_m3, unit.volume_m3) {
                (Some(sum), Some(volume)) => Some(sum + volume * count),
                _ => None,
            };
        }
        self.carbon_kg += unit.carbon_kg * count;
        self.carbon_measured_kg += unit.carbon_measured_kg * count;
        self.nitrogen_kg += unit.nitrogen_kg * count;
        self.ash_kg += unit.ash_kg * count;
        self.biodegradable_kg += unit.biodegradable_kg * count;
        for index in 0..MINERALS {
            if let (Some(mass), true) = (unit.minerals[index], count > 0.0) {
                self.minerals[index] = Some(self.minerals[index].unwrap_or(0.0) + mass * count);
            }
            self.known_dry_mass_kg[index] += unit.known_dry_mass_kg[index] * count;
        }
    }

    /// Adds water from a can [kg]. It fills pores: it adds mass and no volume.
    pub fn add_water(&mut self, water_kg: f64) {
        self.wet_mass_kg += water_kg;
    }

    /// Water [kg].
    #[must_use]
    pub fn water_kg(&self) -> f64 {
        self.wet_mass_kg - self.dry_mass_kg
    }

    /// Moisture, wet basis [kg/kg].
    #[must_use]
    pub fn moisture_wet_basis(&self) -> f64 {
        self.water_kg() / self.wet_mass_kg
    }

    /// Volume that water and solids fill, pores left out [m3].
    #[must_use]
    pub fn filled_volume_m3(&self) -> f64 {
        filled_volume_m3(self.wet_mass_kg, self.dry_mass_kg, self.ash_kg)
    }

    /// Free air space [m3/m3]; `None` when the volume is not known.
    #[must_use]
    pub fn free_air_space(&self) -> Option<f64> {
        self.volume_m3
            .filter(|volume| *volume > 0.0)
            .map(|volume| free_air_space(self.filled_volume_m3(), volume))
    }

    /// Share of the dry matter for which a mineral is known.
    pub(crate) fn known_share(&self, mineral: usize) -> f64 {
        if self.dry_mass_kg > 0.0 {
            self.known_dry_mass_kg[mineral] / self.dry_mass_kg
        } else {
            0.0
        }
    }
}

/// Volume that water, organic matter and ash fill without pores [m3].
///
/// Source: `RICHARD04m`. Checks: D12, D13.
pub(crate) fn filled_volume_m3(wet_mass_kg: f64, dry_mass_kg: f64, ash_kg: f64) -> f64 {
    (wet_mass_kg - dry_mass_kg) / WATER_DENSITY_KG_M3
        + (dry_mass_kg - ash_kg) / ORGANIC_MATTER_DENSITY_KG_M3
        + ash_kg / ASH_DENSITY_KG_M3
}

/// Free air space: the share of the volume that neither water nor solids fill.
///
/// With bulk density BD, moisture M and organic matter OM of the solids:
/// 1 - BD [M / 1000 + (1 - M) OM / 1600 + (1 - M)(1 - OM) / 2500].
/// 0 when the figures leave no room for air.
///
/// Source: `RICHARD04m`. Checks: D12, D13.
pub(crate) fn free_air_space(filled_volume_m3: f64, volume_m3: f64) -> f64 {
    (1.0 - filled_volume_m3 / volume_m3).max(0.0)
}

pub(crate) fn minerals(ingredient: &Ingredient) -> [Option<Range>; MINERALS] {
    [
        ingredient.phosphorus_dry_basis,
        ingredient.potassium_dry_basis,
        ingredient.calcium_dry_basis,
        ingredient.magnesium_dry_basis,
        ingredient.sodium_dry_basis,
    ]
}

/// How many units an amount is.
pub(crate) fn count(amount: &PartAmount) -> f64 {
    match amount {
        PartAmount::MassKg(mass_kg) => *mass_kg,
        PartAmount::VolumeM3 { count, .. } => *count,
    }
}

/// One order for parts, whatever order they came in, so that sums round alike.
pub(crate) fn order(a: &Part, b: &Part) -> Ordering {
    let key = |part: &Part| match &part.amount {
        PartAmount::MassKg(mass_kg) => (*mass_kg, 0.0),
        PartAmount::VolumeM3 { count, each_m3, .. } => (*count, each_m3.typical),
    };
    let (a_count, a_each): (f64, f64) = key(a);
    let (b_count, b_each): (f64, f64) = key(b);
    a.ingredient
        .identity
        .cmp(&b.ingredient.identity)
        .then(a_each.total_cmp(&b_each))
        .then(a_count.total_cmp(&b_count))
        .then_with(|| {
            a.ingredient
                .moisture_wet_basis
                .typical
                .total_cmp(&b.ingredient.moisture_wet_basis.typical)
        })
}
