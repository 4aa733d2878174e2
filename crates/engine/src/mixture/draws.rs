//! What might a part bring? Draws of all its ranges, in columns.

use heapwright_numerics::{Stream, at_weight, split_triangular_weight};
use heapwright_quantity::Range;
use heapwright_terms::{Ingredient, Part, PartAmount};

use super::totals::{self, MINERALS, Totals};

/// How many draws stand behind an interval: the error of a chance of one half is
/// then 1.6 points (one standard error), and the answer takes well under a millisecond.
pub const DRAWS: usize = 1024;

/// In so many of a hundred draws the density of a material whose pores fill with
/// water follows its moisture; in the others the two are independent. The rank
/// correlation is then 0.5. An estimate: densities in tables vary by packing as
/// much as by water.
const DENSITY_FOLLOWS_MOISTURE: f64 = 0.5;

/// Draws of what one unit of a part (one kilogram or one filling) brings.
///
/// The draws of a material depend on the seed and its identity alone: parts of
/// the same stuff vary as one, and no other part changes them.
#[derive(Clone, Debug)]
pub struct UnitDraws {
    /// At typical values.
    pub typical: Totals,
    wet_mass_kg: Column,
    dry_mass_kg: Column,
    volume_m3: Column,
    carbon_kg: Column,
    nitrogen_kg: Column,
    ash_kg: Column,
    biodegradable_kg: Column,
    carbon_measured_kg: Column,
    minerals: [Option<Column>; MINERALS],
    len: usize,
}

type Column = Vec<f64>;

impl UnitDraws {
    /// `len` draws of all figures of one unit of `part` under `seed`.
    #[must_use]
    pub fn new(part: &Part, seed: u64, len: usize) -> Self {
        Self::of(part, seed, len, true)
    }

    /// The same draws of what the target region is judged by, and of nothing else.
    pub(crate) fn of_region(part: &Part, seed: u64, len: usize) -> Self {
        Self::of(part, seed, len, false)
    }

    fn of(part: &Part, seed: u64, len: usize, all_figures: bool) -> Self {
        let ingredient = &part.ingredient;
        let of = |figure: &str| Stream::new(seed, &format!("{}/{figure}", ingredient.identity));
        let moisture_weights = weights(
            of("moisture"),
            len,
            ingredient.moisture_wet_basis.is_exact(),
        );
        let moisture = values(&ingredient.moisture_wet_basis, &moisture_weights, len);
        let density = ingredient
            .bulk_density_kg_m3
            .map(|range| densities(&range, ingredient, &of, &moisture_weights, len));
        let (wet, volume) = match &part.amount {
            PartAmount::MassKg(_) => (
                vec![1.0; len],
                density.map_or_else(Vec::new, |density| {
                    density.iter().map(|d| 1.0 / d).collect()
                }),
            ),
            PartAmount::VolumeM3 {
                measure, each_m3, ..
            } => {
                let stream = Stream::new(seed, &format!("measure/{measure}"));
                let each = values(each_m3, &weights(stream, len, each_m3.is_exact()), len);
                let wet =
                    density.map_or_else(|| vec![0.0; len], |density| product(&each, &density));
                (wet, each)
            }
        };
        let dry: Column = wet
            .iter()
            .zip(&moisture)
            .map(|(w, m)| w * (1.0 - m))
            .collect();
        let balance = &ingredient.nitrogen_and_carbon;
        let richness = weights(
            of("nitrogen"),
            len,
            balance.nitrogen_dry_basis.is_exact()
                && balance.carbon_dry_basis_at_low_nitrogen
                    == balance.carbon_dry_basis_at_high_nitrogen,
        );
        let carbon_range = (
            balance.carbon_dry_basis_at_low_nitrogen,
            balance.carbon_dry_basis_typical,
            balance.carbon_dry_basis_at_high_nitrogen,
        );
        let nitrogen = values(&balance.nitrogen_dry_basis, &richness, len);
        let carbon = spread(carbon_range, &richness, len);
        let on_dry = |range: &Range, figure: &str| {
            if range.is_exact() {
                return dry.iter().map(|dry| dry * range.typical).collect();
            }
            let figure_weights = weights(of(figure), len, false);
            product(&dry, &values(range, &figure_weights, len))
        };
        let carbon_kg = product(&dry, &carbon);
        let names = ["phosphorus", "potassium", "calcium", "magnesium", "sodium"];
        let ranges = totals::minerals(ingredient);
        Self {
            typical: Totals::of_unit(part),
            carbon_measured_kg: if all_figures {
                carbon_kg
                    .iter()
                    .map(|carbon| carbon * ingredient.measured_over_handbook_carbon)
                    .collect()
            } else {
                Column::new()
            },
            carbon_kg,
            nitrogen_kg: product(&dry, &nitrogen),
            ash_kg: on_dry(&ingredient.ash_dry_basis, "ash"),
            biodegradable_kg: if all_figures {
                on_dry(&ingredient.biodegradable_dry_basis, "biodegradable")
            } else {
                Column::new()
            },
            minerals: std::array::from_fn(|index| {
                ranges[index]
                    .as_ref()
                    .filter(|_| all_figures)
                    .map(|range| on_dry(range, names[index]))
            }),
            wet_mass_kg: wet,
            dry_mass_kg: dry,
            volume_m3: volume,
            len,
        }
    }

    /// What one draw of one unit brings, with the minerals; nothing where a figure is not drawn.
    pub(crate) fn totals(&self, index: usize) -> Totals {
        let at = |column: &Column| column.get(index).copied().unwrap_or(0.0);
        Totals {
            wet_mass_kg: at(&self.wet_mass_kg),
            dry_mass_kg: at(&self.dry_mass_kg),
            volume_m3: self.volume_m3.get(index).copied(),
            carbon_kg: at(&self.carbon_kg),
            carbon_measured_kg: at(&self.carbon_measured_kg),
            nitrogen_kg: at(&self.nitrogen_kg),
            ash_kg: at(&self.ash_kg),
            biodegradable_kg: at(&self.biodegradable_kg),
            minerals: std::array::from_fn(|mineral| self.minerals[mineral].as_ref().map(at)),
            known_dry_mass_kg: self.typical.known_dry_mass_kg,
        }
    }

    /// Wet mass, dry mass, volume, carbon, nitrogen and ash of each draw: what
    /// the target region is judged by.
    pub(crate) fn core_figures(&self) -> Vec<[f64; 6]> {
        (0..self.len)
            .map(|index| {
                [
                    self.wet_mass_kg[index],
                    self.dry_mass_kg[index],
                    self.volume_m3.get(index).copied().unwrap_or(0.0),
                    self.carbon_kg[index],
                    self.nitrogen_kg[index],
                    self.ash_kg[index],
                ]
            })
            .collect()
    }
}

/// Weights of `len` draws; none when the figure is exact, which then costs nothing.
fn weights(mut stream: Stream, len: usize, exact: bool) -> Column {
    if exact {
        Vec::new()
    } else {
        let mut draws = stream.uniforms(len);
        for draw in &mut draws {
            *draw = split_triangular_weight(*draw);
        }
        draws
    }
}

fn values(range: &Range, weights: &[f64], len: usize) -> Column {
    spread((range.low, range.typical, range.high), weights, len)
}

fn spread((at_low, typical, at_high): (f64, f64, f64), weights: &[f64], len: usize) -> Column {
    if weights.is_empty() {
        vec![typical; len]
    } else {
        weights
            .iter()
            .map(|weight| at_weight(at_low, typical, at_high, *weight))
            .collect()
    }
}

fn densities(
    range: &Range,
    ingredient: &Ingredient,
    of: &impl Fn(&str) -> Stream,
    moisture_weights: &[f64],
    len: usize,
) -> Column {
    let mut own = weights(of("bulk density"), len, range.is_exact());
    if ingredient.density_follows_moisture && !own.is_empty() && !moisture_weights.is_empty() {
        let choices = of("density follows moisture").uniforms(len);
        for ((weight, moisture_weight), choice) in own.iter_mut().zip(moisture_weights).zip(choices)
        {
            if choice < DENSITY_FOLLOWS_MOISTURE {
                *weight = *moisture_weight;
            }
        }
    }
    values(range, &own, len)
}

fn product(a: &[f64], b: &[f64]) -> Column {
    a.iter().zip(b).map(|(a, b)| a * b).collect()
}

/// Draws of a whole mixture.
#[derive(Clone, Debug)]
pub(crate) struct Sums {
    pub(crate) wet_mass_kg: Column,
    pub(crate) dry_mass_kg: Column,
    pub(crate) volume_m3: Column,
    pub(crate) carbon_kg: Column,
    carbon_measured_kg: Column,
    pub(crate) nitrogen_kg: Column,
    ash_kg: Column,
    biodegradable_kg: Column,
    pub(crate) minerals: [Column; MINERALS],
}

impl Sums {
    /// The draws of `count` units of each, and of added water.
    pub(crate) fn new(counted: &[(&UnitDraws, f64)], water_kg: f64) -> Self {
        let len = counted.iter().map(|(unit, _)| unit.len).min().unwrap_or(0);
        let sum =
            |column: fn(&UnitDraws) -> &[f64]| sum_of(counted, len, |unit| Some(column(unit)));
        let mut wet_mass_kg = sum(|unit| &unit.wet_mass_kg);
        for mass in &mut wet_mass_kg {
            *mass += water_kg;
        }
        Self {
            wet_mass_kg,
            dry_mass_kg: sum(|unit| &unit.dry_mass_kg),
            volume_m3: sum(|unit| &unit.volume_m3),
            carbon_kg: sum(|unit| &unit.carbon_kg),
            carbon_measured_kg: sum(|unit| &unit.carbon_measured_kg),
            nitrogen_kg: sum(|unit| &unit.nitrogen_kg),
            ash_kg: sum(|unit| &unit.ash_kg),
            biodegradable_kg: sum(|unit| &unit.biodegradable_kg),
            minerals: std::array::from_fn(|index| {
                sum_of(counted, len, |unit| unit.minerals[index].as_deref())
            }),
        }
    }

    pub(crate) fn len(&self) -> usize {
        self.wet_mass_kg.len()
    }

    pub(crate) fn at(&self, index: usize) -> At<'_> {
        At { sums: self, index }
    }

    /// A figure of every draw.
    pub(crate) fn map(&self, figure: impl Fn(At<'_>) -> f64) -> Column {
        (0..self.len())
            .map(|index| figure(self.at(index)))
            .collect()
    }
}

/// The sum of `count` times a column over all units that have it.
fn sum_of<'a>(
    counted: &[(&'a UnitDraws, f64)],
    len: usize,
    column: impl Fn(&'a UnitDraws) -> Option<&'a [f64]>,
) -> Column {
    let mut total = vec![0.0; len];
    for (unit, count) in counted {
        if let Some(column) = column(unit) {
            add_scaled(&mut total, column, *count);
        }
    }
    total
}

fn add_scaled(total: &mut [f64], column: &[f64], factor: f64) {
    for (total, value) in total.iter_mut().zip(column) {
        *total += value * factor;
    }
}

/// One draw of a mixture.
#[derive(Clone, Copy, Debug)]
pub(crate) struct At<'a> {
    sums: &'a Sums,
    index: usize,
}

impl At<'_> {
    pub(crate) fn wet_mass_kg(self) -> f64 {
        self.sums.wet_mass_kg[self.index]
    }
    pub(crate) fn dry_mass_kg(self) -> f64 {
        self.sums.dry_mass_kg[self.index]
    }
    pub(crate) fn water_kg(self) -> f64 {
        self.wet_mass_kg() - self.dry_mass_kg()
    }
    pub(crate) fn volume_m3(self) -> f64 {
        self.sums.volume_m3[self.index]
    }
    pub(crate) fn carbon_kg(self) -> f64 {
        self.sums.carbon_kg[self.index]
    }
    pub(crate) fn carbon_measured_kg(self) -> f64 {
        self.sums.carbon_measured_kg[self.index]
    }
    pub(crate) fn nitrogen_kg(self) -> f64 {
        self.sums.nitrogen_kg[self.index]
    }
    pub(crate) fn biodegradable_kg(self) -> f64 {
        self.sums.biodegradable_kg[self.index]
    }
    pub(crate) fn moisture_wet_basis(self) -> f64 {
        self.water_kg() / self.wet_mass_kg()
    }
    pub(crate) fn free_air_space(self) -> f64 {
        totals::free_air_space(
            totals::filled_volume_m3(
                self.wet_mass_kg(),
                self.dry_mass_kg(),
                self.sums.ash_kg[self.index],
            ),
            self.volume_m3(),
        )
    }
}
