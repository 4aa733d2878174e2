//! What does the world know about a material? One row of the catalogue, or one of the garden's own.

use heapwright_quantity::Range;

/// The short, stable name of a material: lower-case letters, digits and `_`.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct MaterialId(pub String);

impl MaterialId {
    /// The id as text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

/// Where a material comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Group {
    /// Scraps of the kitchen.
    Kitchen,
    /// Fresh, nitrogen-rich garden stuff.
    GardenGreen,
    /// Dry, carbon-rich garden stuff.
    GardenBrown,
    /// Wood, bark and what is cut from them.
    Wood,
    /// Paper and board.
    Paper,
    /// Manures and beddings.
    AnimalManure,
    /// Meat, bones, hair and other things of animal origin.
    AnimalProduct,
    /// Soil, ash, lime, shells.
    Mineral,
    /// Bought or processed stuff.
    Amendment,
    /// Compost and leaf mould.
    Finished,
}

/// How readily microbes take a material down.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Degradability {
    /// Days to weeks.
    Fast,
    /// Weeks to months.
    Medium,
    /// Months to a year.
    Slow,
    /// More than a year.
    VerySlow,
    /// Not at all.
    Inert,
}

/// What to beware of with a material.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Caution {
    /// Lowers the pH of the heap.
    Acidic,
    /// Raises the pH of the heap.
    Alkaline,
    /// Draws rats, foxes, flies.
    AttractsAnimals,
    /// Best kept out of a home heap.
    Avoid,
    /// Sinks together and shuts the air out.
    Compacts,
    /// May carry metals, plastics or other foreign matter.
    ContaminantRisk,
    /// May carry herbicides that pass through composting.
    HerbicideRisk,
    /// A little at a time.
    LimitAmount,
    /// Sticks together in sheets when wet.
    MatsWhenWet,
    /// May carry germs.
    PathogenRisk,
    /// Of animal origin: local rules may restrict it.
    RegulatedAnimalByproduct,
    /// Carries salt.
    Salty,
    /// Cut or shred before adding.
    ShredFirst,
    /// Carries seeds or roots that may regrow.
    WeedSeedRisk,
}

/// How well a row of figures is founded.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Evidence {
    /// Every figure was seen in its source or derived from what was seen.
    Retrieved,
    /// Some were seen, some recalled or estimated.
    Mixed,
    /// Recalled from the named publication.
    Memory,
    /// A professional estimate without publication.
    Estimate,
    /// The garden's own measurement.
    Measured,
}

/// A group of figures that share their sources.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum FigureGroup {
    /// Nitrogen.
    Nitrogen,
    /// Carbon to nitrogen.
    CarbonToNitrogen,
    /// Carbon.
    Carbon,
    /// Moisture.
    Moisture,
    /// Bulk density.
    BulkDensity,
    /// Ash.
    Ash,
    /// Lignin, cellulose, hemicellulose.
    Fibre,
    /// Phosphorus.
    Phosphorus,
    /// Potassium.
    Potassium,
    /// Calcium.
    Calcium,
    /// Magnesium.
    Magnesium,
    /// Sodium.
    Sodium,
    /// pH.
    Ph,
}

/// Which sources stand behind a group of figures.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FigureSource {
    /// The figures.
    pub figures: FigureGroup,
    /// Keys of the sources; several join to give a value or a range.
    pub source_keys: Vec<String>,
}

/// A material as the catalogue, or a garden's own list, describes it.
///
/// Figures that are not known are `None`; what is assumed in their place is
/// decided by the garden, not here.
#[derive(Clone, Debug, PartialEq)]
pub struct Material {
    /// Stable name.
    pub id: MaterialId,
    /// Name to show.
    pub name: String,
    /// Short name for a button, at most some 18 letters.
    pub short_name: String,
    /// Where it comes from.
    pub group: Group,
    /// Nitrogen, share of dry matter [kg/kg].
    pub nitrogen_dry_basis: Option<Range>,
    /// Carbon to nitrogen, ratio of masses on measured carbon.
    pub carbon_to_nitrogen_measured: Option<Range>,
    /// Measured (elemental) carbon, share of dry matter [kg/kg].
    pub carbon_measured_dry_basis: Option<f64>,
    /// Moisture, wet basis [kg/kg].
    pub moisture_wet_basis: Option<Range>,
    /// Bulk density as it lies, wet [kg/m3].
    pub bulk_density_kg_m3: Option<Range>,
    /// Ash, share of dry matter [kg/kg].
    pub ash_dry_basis: Option<f64>,
    /// Lignin, share of dry matter [kg/kg].
    pub lignin_dry_basis: Option<f64>,
    /// Cellulose, share of dry matter [kg/kg].
    pub cellulose_dry_basis: Option<f64>,
    /// Hemicellulose, share of dry matter [kg/kg].
    pub hemicellulose_dry_basis: Option<f64>,
    /// Phosphorus as the element, share of dry matter [kg/kg].
    pub phosphorus_dry_basis: Option<f64>,
    /// Potassium as the element, share of dry matter [kg/kg].
    pub potassium_dry_basis: Option<f64>,
    /// Calcium as the element, share of dry matter [kg/kg].
    pub calcium_dry_basis: Option<f64>,
    /// Magnesium as the element, share of dry matter [kg/kg].
    pub magnesium_dry_basis: Option<f64>,
    /// Sodium as the element, share of dry matter [kg/kg].
    pub sodium_dry_basis: Option<f64>,
    /// pH.
    pub ph: Option<f64>,
    /// How readily it is taken down.
    pub degradability: Degradability,
    /// What to beware of.
    pub cautions: Vec<Caution>,
    /// Where the figures come from.
    pub sources: Vec<FigureSource>,
    /// How well they are founded.
    pub evidence: Evidence,
    /// Remarks on the figures.
    pub notes: String,
}
