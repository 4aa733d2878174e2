//! What should go with what is in hand? Recipes that bring a mixture into the target region.
//!
//! In: the parts in hand (fixed), the materials in reach (in kilograms or in
//! whole fillings, with limits and effort), whether there is water, the target.
//! Out: several recipes that differ, each with the figures of its mixture and
//! its chance to lie in the region; or, when no mixture reaches it, the nearest
//! one and the limits that it misses.
//!
//! C:N, moisture and free air space are ratios of sums, so that each limit
//! becomes a straight row once it is multiplied by its denominator:
//!
//! - C - high N <= 0 and C - low N >= 0
//! - W - high T <= 0 and W - low T >= 0, with water W and total mass T
//! - F - (1 - low) V <= 0 and F - (1 - high) V >= 0, with filled volume F and volume V
//!
//! The rows hold at the typical values of all figures; the ranges enter through
//! the chance, which the search then makes large (`search`).
//!
//! Limits: the search for the best-centred recipe is a climb from several
//! starting points, not a proof.

mod conflict;
mod limits;
mod recipes;
mod search;

use heapwright_terms::{Ingredient, Part, PartAmount, Target};

use crate::mixture::{self, Mixture, Totals};

pub use conflict::{Conflict, Limit, Miss};

/// A material that may be added.
#[derive(Clone, Debug, PartialEq)]
pub struct Reach {
    /// What it is.
    pub ingredient: Ingredient,
    /// One unit of it, in which the recipe counts: a kilogram, two kilograms, a filling.
    pub unit: PartAmount,
    /// True when only whole units will do.
    pub whole: bool,
    /// How many units there are; may be infinite.
    pub most_units: f64,
    /// How unwelcome it is to use: 1 is usual, 2 twice as much, above 0.
    pub effort: f64,
}

/// Water from a can.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WaterSupply {
    /// How much there is at most [kg]; 0 when there is none, may be infinite.
    pub most_kg: f64,
    /// The smallest amount that is poured [kg]; 0 for any amount.
    pub step_kg: f64,
}

/// What makes one recipe better than another.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Objective {
    /// Least added mass, water included.
    LeastMass,
    /// Least added volume.
    LeastBulk,
    /// Best chance to lie in the region in spite of all that is uncertain.
    BestCentred,
    /// Smallest share of what is in store.
    UsePlentiful,
    /// Least effort, as stated for each material.
    LeastEffort,
}

/// The question.
#[derive(Clone, Debug, PartialEq)]
pub struct Question {
    /// What is in hand and will go in.
    pub in_hand: Vec<Part>,
    /// What may go with it.
    pub reach: Vec<Reach>,
    /// Water from a can.
    pub water: WaterSupply,
    /// The region to reach.
    pub target: Target,
    /// What makes the first recipe best.
    pub objective: Objective,
    /// True to look for other recipes besides the first.
    pub alternatives: bool,
    /// The draws depend on it, and on nothing else that could vary.
    pub seed: u64,
}

/// Why a recipe is in the answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RecipeKind {
    /// It is best by this objective.
    Best(Objective),
    /// It does without the main addition of the first recipe, given by its index in `reach`.
    Without(usize),
    /// It takes half as much, or less, of the main addition of the first recipe,
    /// given by its index in `reach`.
    Sparing(usize),
    /// It comes nearest to a region that cannot be reached.
    Nearest,
}

/// What to add.
#[derive(Clone, Debug, PartialEq)]
pub struct Recipe {
    /// Why it is in the answer.
    pub kind: RecipeKind,
    /// Units of each material of `reach`, in its order.
    pub units: Vec<f64>,
    /// Water to add [kg].
    pub water_kg: f64,
    /// What comes of it.
    pub mixture: Mixture,
    /// False when the search was cut short, so that a better one may exist.
    pub proven: bool,
}

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub enum Balance {
    /// The region is reached: the best recipe first, then others that differ from it.
    Met(Vec<Recipe>),
    /// No mixture reaches it.
    NotMet {
        /// The nearest mixture that can be had.
        nearest: Box<Recipe>,
        /// What stands in the way.
        conflict: Conflict,
    },
    /// There is nothing in hand and nothing in reach.
    Nothing,
}

/// What to add to what is in hand.
///
/// Limits are met at the typical values; a recipe's chance says how likely they
/// are met in truth. Free air space is left out of account when the density of
/// a part is not known. Effort and work are bounded by counts, so that the
/// answer is the same on every platform.
///
/// Checks: `LP-1` to `LP-4`; `oracle_recipes`.
#[must_use]
pub fn balance(question: &Question) -> Balance {
    recipes::balance(question)
}

/// What the solver works on: the totals of what is in hand and of a unit of each in reach.
#[derive(Clone, Debug)]
struct Model<'a> {
    question: &'a Question,
    hand: Totals,
    units: Vec<Totals>,
    /// True when every density is known, so that the air limits can be judged.
    has_volume: bool,
    /// What the masses are compared with, so that a handful and a lorry load look alike [kg].
    scale_kg: f64,
}

impl<'a> Model<'a> {
    fn new(question: &'a Question) -> Self {
        let hand = mixture::typical_totals(&question.in_hand, 0.0);
        let units: Vec<Totals> = question
            .reach
            .iter()
            .map(|reach| mixture::typical_totals(&[unit_part(reach)], 0.0))
            .collect();
        let has_volume =
            hand.volume_m3.is_some() && units.iter().all(|unit| unit.volume_m3.is_some());
        let scale_kg = if hand.wet_mass_kg > 0.0 {
            hand.wet_mass_kg
        } else {
            1.0
        };
        Self {
            question,
            hand,
            units,
            has_volume,
            scale_kg,
        }
    }

    /// The mixture of a recipe at typical values.
    fn totals(&self, units: &[f64], water_kg: f64) -> Totals {
        let mut totals = self.hand.clone();
        for (unit, count) in self.units.iter().zip(units) {
            totals.add(unit, *count);
        }
        totals.add_water(water_kg);
        totals
    }
}

/// One unit of a material in reach as a part.
fn unit_part(reach: &Reach) -> Part {
    Part {
        ingredient: reach.ingredient.clone(),
        amount: reach.unit.clone(),
    }
}
