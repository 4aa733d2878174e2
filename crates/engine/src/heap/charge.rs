//! What does one feed bring to the heap? Sums of mass by pool.

use super::layout::{
    ACIDS, AMMONIUM, ASH, BASES, CALCIUM, CONTENTS, Contents, DRY_FED, DRY_OVER_GRAIN, ENTHALPY,
    GERM_KINDS, GERMS, HOT, HUMUS, MAGNESIUM, MESOPHILES, MODERATE, NITRATE, NITROGEN_HUMUS,
    NITROGEN_MODERATE, NITROGEN_RAPID, NITROGEN_SLOW, PHOSPHORUS, POTASSIUM, RAPID, SLOW,
    THERMOPHILES, VOLUME, VOLUME_FED, WATER,
};
use super::parameters::Parameters;
use super::phase::enthalpy_mj;
use super::pools::{AMMONIA_PER_NITROGEN, NITRIC_ACID_PER_NITROGEN};

/// Masses that are put into the heap together [kg], their pools without nitrogen.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Charge {
    /// Sugars, starch, soluble protein, fats.
    pub rapid_kg: f64,
    /// Cellulose and hemicellulose within reach.
    pub moderate_kg: f64,
    /// Lignin and what it hides.
    pub slow_kg: f64,
    /// Humus.
    pub humus_kg: f64,
    /// Living mesophiles.
    pub mesophiles_kg: f64,
    /// Living thermophiles.
    pub thermophiles_kg: f64,
    /// Organic acids.
    pub acids_kg: f64,
    /// Organic nitrogen of the rapid, moderate, slow and humus pools.
    pub nitrogen_kg: [f64; 4],
    /// Ammonium nitrogen.
    pub ammonium_kg: f64,
    /// Nitrate nitrogen.
    pub nitrate_kg: f64,
    /// Water.
    pub water_kg: f64,
    /// Ash.
    pub ash_kg: f64,
    /// Bases other than potassium [mol].
    pub bases_mol: f64,
    /// Potassium.
    pub potassium_kg: f64,
    /// Phosphorus.
    pub phosphorus_kg: f64,
    /// Calcium.
    pub calcium_kg: f64,
    /// Magnesium.
    pub magnesium_kg: f64,
    /// Volume as it lies in the heap [m3].
    pub volume_m3: f64,
    /// Dry matter over its effective grain diameter [kg/m]: what draught must pass by is
    /// surface, and surfaces add.
    pub dry_over_grain_kg_m: f64,
}

impl Charge {
    /// Dry matter [kg]; the cells carry their own nitrogen.
    #[must_use]
    pub fn dry_mass_kg(&self, parameters: &Parameters) -> f64 {
        let cells = self.mesophiles_kg + self.thermophiles_kg;
        let organic_nitrogen =
            self.nitrogen_kg.iter().sum::<f64>() + parameters.nitrogen_in_cells * cells;
        self.rapid_kg
            + self.moderate_kg
            + self.slow_kg
            + self.humus_kg
            + cells
            + self.acids_kg
            + AMMONIA_PER_NITROGEN * organic_nitrogen
            + self.ash_kg
    }

    /// Everything together [kg].
    #[must_use]
    pub fn wet_mass_kg(&self, parameters: &Parameters) -> f64 {
        self.dry_mass_kg(parameters)
            + self.water_kg
            + AMMONIA_PER_NITROGEN * self.ammonium_kg
            + NITRIC_ACID_PER_NITROGEN * self.nitrate_kg
    }

    /// Puts another charge to this one.
    pub fn add(&mut self, other: &Self) {
        self.rapid_kg += other.rapid_kg;
        self.moderate_kg += other.moderate_kg;
        self.slow_kg += other.slow_kg;
        self.humus_kg += other.humus_kg;
        self.mesophiles_kg += other.mesophiles_kg;
        self.thermophiles_kg += other.thermophiles_kg;
        self.acids_kg += other.acids_kg;
        for (mine, theirs) in self.nitrogen_kg.iter_mut().zip(other.nitrogen_kg) {
            *mine += theirs;
        }
        self.ammonium_kg += other.ammonium_kg;
        self.nitrate_kg += other.nitrate_kg;
        self.water_kg += other.water_kg;
        self.ash_kg += other.ash_kg;
        self.bases_mol += other.bases_mol;
        self.potassium_kg += other.potassium_kg;
        self.phosphorus_kg += other.phosphorus_kg;
        self.calcium_kg += other.calcium_kg;
        self.magnesium_kg += other.magnesium_kg;
        self.volume_m3 += other.volume_m3;
        self.dry_over_grain_kg_m += other.dry_over_grain_kg_m;
    }

    /// True when every entry is a number at or above zero, and there is something.
    #[must_use]
    pub fn is_sound(&self, parameters: &Parameters) -> bool {
        let contents = self.contents(parameters, 0.0);
        contents
            .iter()
            .all(|value| value.is_finite() && *value >= 0.0)
            && contents[DRY_FED] > super::pile::LEAST_DRY_KG
            && contents[DRY_OVER_GRAIN] > 0.0
            && self.volume_m3 > 1e-9
    }

    /// The charge as the contents of one cell at a temperature.
    pub(crate) fn contents(&self, parameters: &Parameters, temperature_c: f64) -> Contents {
        let mut contents = [0.0; CONTENTS];
        // A keeper's mixture may be richer or wetter than figured.
        let shift = (self.rapid_kg * (parameters.rapid_factor - 1.0))
            .min(0.9 * self.moderate_kg)
            .max(-0.9 * self.rapid_kg);
        let dry = self.dry_mass_kg(parameters);
        contents[RAPID] = self.rapid_kg + shift;
        contents[MODERATE] = self.moderate_kg - shift;
        contents[SLOW] = self.slow_kg;
        contents[HUMUS] = self.humus_kg;
        contents[MESOPHILES] = self.mesophiles_kg;
        contents[THERMOPHILES] = self.thermophiles_kg;
        contents[ACIDS] = self.acids_kg;
        contents[NITROGEN_RAPID] = self.nitrogen_kg[0];
        contents[NITROGEN_MODERATE] = self.nitrogen_kg[1];
        contents[NITROGEN_SLOW] = self.nitrogen_kg[2];
        contents[NITROGEN_HUMUS] = self.nitrogen_kg[3];
        contents[AMMONIUM] = self.ammonium_kg;
        contents[NITRATE] = self.nitrate_kg;
        contents[WATER] = self.water_kg * parameters.water_factor;
        contents[POTASSIUM] = self.potassium_kg;
        contents[ENTHALPY] = enthalpy_mj(temperature_c, dry, contents[WATER], parameters);
        contents[VOLUME] = self.volume_m3;
        contents[ASH] = self.ash_kg;
        contents[BASES] = self.bases_mol;
        contents[PHOSPHORUS] = self.phosphorus_kg;
        contents[CALCIUM] = self.calcium_kg;
        contents[MAGNESIUM] = self.magnesium_kg;
        contents[DRY_FED] = dry;
        contents[VOLUME_FED] = self.volume_m3;
        contents[DRY_OVER_GRAIN] = self.dry_over_grain_kg_m;
        contents[HOT] = dry;
        contents[GERMS..GERMS + GERM_KINDS].fill(dry);
        contents
    }
}
