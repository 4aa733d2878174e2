//! What does the engine compute with? A material as found, with every gap filled, and its amount.

use heapwright_quantity::Range;

/// Nitrogen and carbon of one material, which vary together.
///
/// A leafy specimen is rich in nitrogen and has a low C:N; the carbon of the dry
/// matter hardly moves. So the two are given at the same three specimens.
/// Carbon is on the handbook scale (decision 0003) and counts only what microbes
/// can take up: none of shells, lime, biochar.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NitrogenAndCarbon {
    /// Nitrogen, share of dry matter [kg/kg].
    pub nitrogen_dry_basis: Range,
    /// Carbon of the specimen that is lowest in nitrogen [kg/kg dry].
    pub carbon_dry_basis_at_low_nitrogen: f64,
    /// Carbon of the typical specimen [kg/kg dry].
    pub carbon_dry_basis_typical: f64,
    /// Carbon of the specimen that is highest in nitrogen [kg/kg dry].
    pub carbon_dry_basis_at_high_nitrogen: f64,
}

/// A material as it was found and will be mixed.
#[derive(Clone, Debug, PartialEq)]
pub struct Ingredient {
    /// What makes two parts the same stuff: parts that share it vary as one.
    pub identity: String,
    /// Moisture, wet basis [kg/kg], 0 to below 1.
    pub moisture_wet_basis: Range,
    /// Nitrogen and carbon on dry matter.
    pub nitrogen_and_carbon: NitrogenAndCarbon,
    /// Measured over handbook carbon, the same for all specimens; 1 when both are one.
    pub measured_over_handbook_carbon: f64,
    /// Bulk density as it lies, wet [kg/m3]; `None` when it is not known.
    pub bulk_density_kg_m3: Option<Range>,
    /// True when wetting fills its pores, so that wetter also means heavier by volume.
    pub density_follows_moisture: bool,
    /// Ash, share of dry matter [kg/kg].
    pub ash_dry_basis: Range,
    /// Biodegradable share of dry matter [kg/kg].
    pub biodegradable_dry_basis: Range,
    /// Phosphorus as the element, share of dry matter [kg/kg].
    pub phosphorus_dry_basis: Option<Range>,
    /// Potassium as the element, share of dry matter [kg/kg].
    pub potassium_dry_basis: Option<Range>,
    /// Calcium as the element, share of dry matter [kg/kg].
    pub calcium_dry_basis: Option<Range>,
    /// Magnesium as the element, share of dry matter [kg/kg].
    pub magnesium_dry_basis: Option<Range>,
    /// Sodium as the element, share of dry matter [kg/kg].
    pub sodium_dry_basis: Option<Range>,
}

/// How much of an ingredient there is.
#[derive(Clone, Debug, PartialEq)]
pub enum PartAmount {
    /// Weighed [kg].
    MassKg(f64),
    /// Measured by volume.
    VolumeM3 {
        /// The vessel, so that one bucket used twice errs twice the same way.
        measure: String,
        /// How often it was filled, above 0.
        count: f64,
        /// What one filling holds [m3].
        each_m3: Range,
    },
}

/// One part of a mixture.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// What it is.
    pub ingredient: Ingredient,
    /// How much of it.
    pub amount: PartAmount,
}
