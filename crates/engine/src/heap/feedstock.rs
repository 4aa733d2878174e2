//! How does a material split into pools? By its kind, by its figures, or as told.
//!
//! The shares are estimates: tables of fibre and lignin (Komilis and Ham 2003, "The effect
//! of lignin and sugars to the aerobic decomposition of solid wastes"; Richard 1996;
//! Chandler and others 1980, all from memory) set the order of the materials, and a built
//! heap of kitchen scraps, grass, leaves and chips that behaves as heaps do sets the level.
//! A household's "kitchen scraps" may differ by half.

use heapwright_terms::{Degradability, Group, Ingredient, Part, PartAmount};

use super::charge::Charge;
use super::parameters::Parameters;
use super::pools::AMMONIA_PER_NITROGEN;

/// Kinds of feed that decay alike.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum FeedClass {
    /// Kitchen scraps, fruit, soft greens.
    Soft,
    /// Grass and young leafy stuff.
    Grass,
    /// Fallen leaves and other dry leafy stuff.
    Leaves,
    /// Straw, stalks, haulm.
    Straw,
    /// Wood, bark, twigs.
    Wood,
    /// Paper and board.
    Paper,
    /// Manures.
    Manure,
    /// Compost and leaf mould.
    Finished,
    /// Soil, ash, stone, shells.
    Mineral,
}

/// Shares of volatile solids (without nitrogen) and other traits of a kind.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PoolShares {
    /// Rapid.
    pub rapid: f64,
    /// Moderate.
    pub moderate: f64,
    /// Slow.
    pub slow: f64,
    /// Humus.
    pub humus: f64,
    /// Organic acids [mol/kg wet].
    pub acids_mol_kg_wet: f64,
    /// Bases [mol/kg dry].
    pub bases_mol_kg_dry: f64,
    /// Microbes on it, share of volatile solids.
    pub microbes: f64,
    /// Nitrogen that is ammonium as it comes, share of all of it.
    pub ammonium: f64,
    /// Usual size of its pieces [mm].
    pub particle_mm: f64,
    /// Depth to which a piece is open to decay within a season [mm].
    pub shell_mm: f64,
    /// Effective grain diameter at the usual size [mm], which sets permeability.
    pub grain_mm: f64,
    /// Bulk density in a built heap, dry [kg/m3].
    pub built_dry_density_kg_m3: f64,
}

impl FeedClass {
    /// The kind of a catalogue material.
    #[must_use]
    pub fn of(group: Group, degradability: Degradability) -> Self {
        use Degradability as D;
        match (group, degradability) {
            (_, D::Inert) | (Group::Mineral, _) => Self::Mineral,
            (Group::Finished, _) => Self::Finished,
            (Group::Wood, _) | (_, D::VerySlow) => Self::Wood,
            (Group::Paper, _) => Self::Paper,
            (Group::AnimalManure, D::Slow) | (Group::GardenBrown, D::Medium) => Self::Straw,
            (Group::AnimalManure, _) => Self::Manure,
            (Group::GardenBrown, D::Fast) | (Group::GardenGreen, D::Medium) => Self::Grass,
            (Group::GardenBrown | Group::GardenGreen, D::Slow) => Self::Leaves,
            (Group::Kitchen | Group::AnimalProduct | Group::Amendment, D::Slow) => Self::Leaves,
            (Group::GardenGreen, D::Fast) => Self::Grass,
            (Group::Kitchen | Group::AnimalProduct | Group::Amendment, _) => Self::Soft,
        }
    }

    /// Its usual shares. Estimates; see the head of this file.
    #[must_use]
    pub fn shares(self) -> PoolShares {
        let shares =
            |pools: [f64; 4], acids, bases, microbes, particle, shell, grain, density| PoolShares {
                rapid: pools[0],
                moderate: pools[1],
                slow: pools[2],
                humus: pools[3],
                acids_mol_kg_wet: acids,
                bases_mol_kg_dry: bases,
                microbes,
                ammonium: 0.0,
                particle_mm: particle,
                shell_mm: shell,
                grain_mm: grain,
                built_dry_density_kg_m3: density,
            };
        match self {
            Self::Soft => shares(
                [0.60, 0.27, 0.13, 0.0],
                0.05,
                0.55,
                0.012,
                30.0,
                20.0,
                0.6,
                180.0,
            ),
            Self::Grass => shares(
                [0.42, 0.43, 0.15, 0.0],
                0.01,
                0.70,
                0.012,
                30.0,
                20.0,
                0.6,
                150.0,
            ),
            Self::Leaves => shares(
                [0.10, 0.42, 0.48, 0.0],
                0.0,
                0.60,
                0.012,
                60.0,
                10.0,
                0.6,
                150.0,
            ),
            Self::Straw => shares(
                [0.08, 0.62, 0.30, 0.0],
                0.0,
                0.12,
                0.006,
                100.0,
                10.0,
                1.2,
                90.0,
            ),
            Self::Wood => shares(
                [0.015, 0.15, 0.835, 0.0],
                0.0,
                0.05,
                0.006,
                20.0,
                2.0,
                2.0,
                200.0,
            ),
            Self::Paper => shares(
                [0.02, 0.75, 0.23, 0.0],
                0.0,
                0.10,
                0.003,
                80.0,
                20.0,
                1.0,
                120.0,
            ),
            // Solid manures have 10 to 40 % of their nitrogen as ammonium (Rynk 1992, "On-Farm
            // Composting Handbook", from memory).
            Self::Manure => PoolShares {
                ammonium: 0.25,
                ..shares(
                    [0.25, 0.42, 0.33, 0.0],
                    0.01,
                    0.70,
                    0.02,
                    20.0,
                    10.0,
                    0.6,
                    180.0,
                )
            },
            Self::Finished => shares(
                [0.01, 0.10, 0.35, 0.54],
                0.0,
                0.60,
                0.02,
                5.0,
                5.0,
                0.5,
                300.0,
            ),
            Self::Mineral => shares(
                [0.05, 0.25, 0.70, 0.0],
                0.0,
                0.0,
                0.001,
                5.0,
                5.0,
                0.5,
                1000.0,
            ),
        }
    }
}

/// What a case file may say of a part instead of what its kind suggests.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Overrides {
    /// Rapid share of volatile solids.
    pub rapid_fraction_vs: Option<f64>,
    /// Moderate share.
    pub moderate_fraction_vs: Option<f64>,
    /// Slow share.
    pub slow_fraction_vs: Option<f64>,
    /// Size of the pieces [mm].
    pub particle_mm: Option<f64>,
    /// Volume as it lies in the heap [m3], where measured.
    pub volume_m3: Option<f64>,
}

/// Share of a piece of a size that decay reaches, a shell of a depth: a long round piece.
#[must_use]
pub fn reached_share(particle_mm: f64, shell_mm: f64) -> f64 {
    let core = (1.0 - 2.0 * shell_mm / particle_mm).max(0.0);
    1.0 - core * core
}

impl PoolShares {
    /// Shares read off the figures of an ingredient of unknown kind: what is rich in
    /// nitrogen and moist is soft, what is poor in both is not. Estimate.
    #[must_use]
    pub fn estimated(ingredient: &Ingredient) -> Self {
        let ash = ingredient.ash_dry_basis.typical;
        if ash > 0.75 {
            return FeedClass::Mineral.shares();
        }
        let biodegradable =
            (ingredient.biodegradable_dry_basis.typical / (1.0 - ash)).clamp(0.0, 0.95);
        let nitrogen = ingredient.nitrogen_and_carbon.nitrogen_dry_basis.typical;
        let softness =
            (nitrogen / 0.03).min(1.0) * (ingredient.moisture_wet_basis.typical / 0.7).min(1.0);
        let nearest = if biodegradable < 0.25 {
            FeedClass::Wood
        } else if softness > 0.5 {
            FeedClass::Soft
        } else {
            FeedClass::Leaves
        };
        let within_reach = (1.15 * biodegradable).min(0.9);
        let rapid = within_reach * (0.08 + 0.6 * softness);
        Self {
            rapid,
            moderate: within_reach - rapid,
            slow: 1.0 - within_reach,
            humus: 0.0,
            ..nearest.shares()
        }
    }

    /// Shares with what was told, and pieces of the size told.
    #[must_use]
    pub fn with(mut self, overrides: &Overrides) -> Self {
        let told = [
            overrides.rapid_fraction_vs,
            overrides.moderate_fraction_vs,
            overrides.slow_fraction_vs,
        ];
        if told.iter().any(Option::is_some) {
            let mut pools = [self.rapid, self.moderate, self.slow + self.humus];
            let said: f64 = told.iter().flatten().sum();
            let unsaid: f64 = pools
                .iter()
                .zip(&told)
                .filter(|(_, told)| told.is_none())
                .map(|(share, _)| share)
                .sum();
            let rest = (1.0 - said).max(0.0);
            for (share, told) in pools.iter_mut().zip(told) {
                *share = told.unwrap_or(if unsaid > 0.0 {
                    *share * rest / unsaid
                } else {
                    0.0
                });
            }
            let sum: f64 = pools.iter().sum();
            if sum > 0.0 {
                [self.rapid, self.moderate, self.slow] = pools.map(|share| share / sum);
                self.humus = 0.0;
            }
        }
        if let Some(size) = overrides.particle_mm {
            self = self.cut_to(size);
        }
        self
    }

    /// Pieces of another size: more or less of them is within reach, and air passes
    /// between them more or less easily.
    #[must_use]
    pub fn cut_to(mut self, particle_mm: f64) -> Self {
        let size = particle_mm.clamp(0.1, 1000.0);
        let factor =
            reached_share(size, self.shell_mm) / reached_share(self.particle_mm, self.shell_mm);
        // At most two thirds of the slow share is matter that was merely hidden.
        let hidden = 0.66 * self.slow;
        let wanted = (factor - 1.0) * self.moderate;
        let moved = wanted.clamp(-self.moderate, hidden);
        self.moderate += moved;
        self.slow -= moved;
        if factor < 1.0 {
            let shut = (1.0 - factor) * self.rapid;
            self.rapid -= shut;
            self.moderate += shut;
        } else {
            // Opened tissue gives its juices sooner.
            let opened = ((factor - 1.0) * self.rapid)
                .min(0.5 * self.moderate)
                .min(0.3 * self.rapid);
            self.rapid += opened;
            self.moderate -= opened;
        }
        self.grain_mm *= (size / self.particle_mm).sqrt().clamp(0.4, 4.0);
        self.particle_mm = size;
        self
    }
}

/// Share of starting microbes that are mesophiles. Estimate.
const MESOPHILE_SHARE: f64 = 0.7;
/// Weights by which nitrogen lies in rapid, moderate and slow matter. Estimate.
const NITROGEN_WEIGHTS: [f64; 4] = [3.0, 1.0, 1.0, 3.0];

impl Charge {
    /// The charge of dry matter split by shares.
    ///
    /// - `dry_kg`, `ash_kg`, `nitrogen_kg`, `water_kg`: masses
    #[must_use]
    pub fn of_shares(
        shares: &PoolShares,
        dry_kg: f64,
        ash_kg: f64,
        nitrogen_kg: f64,
        water_kg: f64,
        parameters: &Parameters,
    ) -> Self {
        let volatile = (dry_kg - ash_kg).max(0.0);
        // Never so much nitrogen that nothing is left for its matter.
        let nitrogen = nitrogen_kg.min(0.5 * volatile / AMMONIA_PER_NITROGEN);
        // Drying drives ammonia off, so that it counts with the water, not the dry matter.
        let ammonium = (shares.ammonium * nitrogen).min(0.5 * water_kg / AMMONIA_PER_NITROGEN);
        let nitrogen = nitrogen - ammonium;
        let free = volatile - AMMONIA_PER_NITROGEN * nitrogen;
        let acids = (shares.acids_mol_kg_wet * (dry_kg + water_kg) * super::pools::ACID_KG_PER_MOL)
            .min(0.5 * shares.rapid * free);
        let cells = (shares.microbes * volatile)
            .min(0.5 * (shares.rapid * free - acids + shares.humus * free) + 0.02 * free)
            .min(nitrogen / parameters.nitrogen_in_cells * 0.5);
        let mut pools = [
            shares.rapid * free - acids,
            shares.moderate * free,
            shares.slow * free,
            shares.humus * free,
        ];
        // Cells live on the surface of whatever is there; their mass is taken from all.
        let all: f64 = pools.iter().sum();
        if all > 0.0 {
            for pool in &mut pools {
                *pool -= cells * *pool / all;
            }
        }
        let bound = (nitrogen - parameters.nitrogen_in_cells * cells).max(0.0);
        let weight: f64 = pools
            .iter()
            .zip(NITROGEN_WEIGHTS)
            .map(|(pool, weight)| pool * weight)
            .sum();
        let mut nitrogen_kg = [0.0; 4];
        for (share, (pool, heavy)) in nitrogen_kg
            .iter_mut()
            .zip(pools.iter().zip(NITROGEN_WEIGHTS))
        {
            *share = if weight > 0.0 {
                bound * pool * heavy / weight
            } else {
                0.0
            };
        }
        Self {
            rapid_kg: pools[0],
            moderate_kg: pools[1],
            slow_kg: pools[2],
            humus_kg: pools[3],
            mesophiles_kg: MESOPHILE_SHARE * cells,
            thermophiles_kg: (1.0 - MESOPHILE_SHARE) * cells,
            acids_kg: acids,
            nitrogen_kg,
            ammonium_kg: ammonium,
            water_kg: water_kg - AMMONIA_PER_NITROGEN * ammonium,
            ash_kg,
            bases_mol: shares.bases_mol_kg_dry * dry_kg,
            volume_m3: dry_kg / shares.built_dry_density_kg_m3,
            dry_over_grain_kg_m: dry_kg / (1e-3 * shares.grain_mm),
            ..Self::default()
        }
    }

    /// The charge of a part at its typical values.
    #[must_use]
    pub fn of_part(
        part: &Part,
        class: Option<FeedClass>,
        overrides: &Overrides,
        parameters: &Parameters,
    ) -> Self {
        let ingredient = &part.ingredient;
        let shares = class
            .map_or_else(|| PoolShares::estimated(ingredient), FeedClass::shares)
            .with(overrides);
        let density = ingredient.bulk_density_kg_m3.map(|range| range.typical);
        let wet = match &part.amount {
            PartAmount::MassKg(mass) => *mass,
            PartAmount::VolumeM3 { count, each_m3, .. } => {
                count * each_m3.typical * density.unwrap_or(0.0)
            }
        };
        let dry = wet * (1.0 - ingredient.moisture_wet_basis.typical);
        let water = wet - dry;
        let ash = dry * ingredient.ash_dry_basis.typical;
        let nitrogen = dry * ingredient.nitrogen_and_carbon.nitrogen_dry_basis.typical;
        let mut charge = Self::of_shares(&shares, dry, ash, nitrogen, water, parameters);
        let mineral = |range: Option<heapwright_quantity::Range>| {
            range.map_or(0.0, |range| range.typical * dry)
        };
        charge.phosphorus_kg = mineral(ingredient.phosphorus_dry_basis);
        charge.potassium_kg = mineral(ingredient.potassium_dry_basis);
        charge.calcium_kg = mineral(ingredient.calcium_dry_basis);
        charge.magnesium_kg = mineral(ingredient.magnesium_dry_basis);
        // The kind's bases are the sum with potassium; what is left are the others.
        charge.bases_mol = (charge.bases_mol - charge.potassium_kg / 0.0391).max(0.0);
        if let Some(volume) = overrides.volume_m3 {
            charge.volume_m3 = volume;
        } else if let Some(density) = density {
            // Loose stuff settles as it is put up: never above the usual density of a
            // built heap of its kind, never looser than it came.
            let as_it_came = wet / density;
            charge.volume_m3 = charge.volume_m3.min(as_it_came).max(0.4 * as_it_came);
        }
        charge
    }
}
