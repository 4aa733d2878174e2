//! The target region as straight rows, narrower or wider as asked.

use heapwright_numerics::{Comparison, Outcome, Programme, Variable};
use heapwright_terms::Target;

use super::{Limit, Model, Objective, conflict};
use crate::mixture::Totals;

/// How many branches a search for whole units may look at. Twenty materials in
/// whole buckets need some hundreds; what is cut off is marked as not proven.
const NODE_LIMIT: u64 = 400;

/// How moisture and air space limits move, as a share, while C:N limits move by
/// a factor of two: the scale on which "nearest" is judged. Design choice: half a
/// C:N, a third of moisture and of air space are misses of like gravity.
const MOISTURE_SCALE: f64 = 1.0 / 3.0;
const AIR_SCALE: f64 = 1.0 / 3.0;

/// The region drawn in towards its goal by `depth` (0: as asked, 1: to a point).
pub(super) fn drawn_in(target: &Target, depth: f64) -> Target {
    let towards = |from: f64, to: f64| from + (to - from) * depth;
    let goal = target.carbon_to_nitrogen_goal;
    let moisture = f64::midpoint(
        target.moisture_wet_basis_low,
        target.moisture_wet_basis_high,
    );
    Target {
        carbon_to_nitrogen_low: towards(target.carbon_to_nitrogen_low, goal),
        carbon_to_nitrogen_high: towards(target.carbon_to_nitrogen_high, goal),
        moisture_wet_basis_low: towards(target.moisture_wet_basis_low, moisture),
        moisture_wet_basis_high: towards(target.moisture_wet_basis_high, moisture),
        // More air than the least is welcome but not aimed at.
        ..*target
    }
}

/// The region let out by `slack` (0: as asked) on every side.
pub(super) fn let_out(target: &Target, slack: f64) -> Target {
    Target {
        carbon_to_nitrogen_low: target.carbon_to_nitrogen_low / (1.0 + slack),
        carbon_to_nitrogen_high: target.carbon_to_nitrogen_high * (1.0 + slack),
        moisture_wet_basis_low: (target.moisture_wet_basis_low - MOISTURE_SCALE * slack).max(0.0),
        moisture_wet_basis_high: (target.moisture_wet_basis_high + MOISTURE_SCALE * slack).min(1.0),
        free_air_space_low: (target.free_air_space_low - AIR_SCALE * slack).max(0.0),
        free_air_space_high: (target.free_air_space_high + AIR_SCALE * slack).min(1.0),
        ..*target
    }
}

/// Variables and costs of a programme: a unit of each in reach, then water.
pub(super) struct Costs {
    pub(super) units: Vec<f64>,
    pub(super) water_kg: f64,
}

impl Costs {
    /// What a unit costs under an objective; `None` when the objective makes no
    /// sense here (no density, no stock).
    pub(super) fn of(model: &Model<'_>, objective: Objective) -> Option<Self> {
        let reach = &model.question.reach;
        // Of two recipes that are alike by the objective, the lighter one.
        let nudge = 1e-6;
        let mass = |unit: &Totals| unit.wet_mass_kg;
        let units = match objective {
            Objective::LeastMass | Objective::BestCentred => model.units.iter().map(mass).collect(),
            Objective::LeastBulk => model
                .units
                .iter()
                .map(|unit| {
                    unit.volume_m3
                        .map(|volume| volume * 1000.0 + nudge * mass(unit))
                })
                .collect::<Option<Vec<f64>>>()?,
            Objective::UsePlentiful => {
                if reach.iter().all(|reach| reach.most_units.is_infinite()) {
                    return None;
                }
                // The share of its store that a unit takes; what has no known
                // limit counts like the largest store that has one.
                let largest = reach
                    .iter()
                    .zip(&model.units)
                    .filter(|(reach, _)| reach.most_units.is_finite())
                    .map(|(reach, unit)| reach.most_units * mass(unit))
                    .fold(0.0, f64::max);
                reach
                    .iter()
                    .zip(&model.units)
                    .map(|(reach, unit)| {
                        let store = if reach.most_units.is_finite() {
                            reach.most_units * mass(unit)
                        } else {
                            largest
                        };
                        if store > 0.0 {
                            mass(unit) / store + nudge * mass(unit)
                        } else {
                            1.0
                        }
                    })
                    .collect()
            }
            Objective::LeastEffort => reach
                .iter()
                .zip(&model.units)
                .map(|(reach, unit)| reach.effort * mass(unit))
                .collect(),
        };
        let water_kg = match objective {
            Objective::LeastMass | Objective::BestCentred | Objective::LeastEffort => 1.0,
            Objective::LeastBulk | Objective::UsePlentiful => nudge,
        };
        Some(Self { units, water_kg })
    }
}

/// A point of a programme in the model's terms.
#[derive(Clone, Debug)]
pub(super) struct Point {
    pub(super) units: Vec<f64>,
    pub(super) water_kg: f64,
    pub(super) proven: bool,
}

/// What may be asked of the programme besides the region.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Variant {
    /// A material of which at most so many units may be used.
    pub(super) at_most: Option<(usize, f64)>,
    /// True to allow parts of units everywhere.
    pub(super) parts_allowed: bool,
    /// A limit that is dropped.
    pub(super) dropped: Option<Limit>,
    /// True to use only what has a known density, so that air can be judged.
    pub(super) known_density_only: bool,
}

impl Variant {
    /// How many units of the material at `index` may be used, of `stock` that there are.
    pub(super) fn most_units(&self, index: usize, stock: f64) -> f64 {
        match self.at_most {
            Some((held, most)) if held == index => stock.min(most),
            _ => stock,
        }
    }
}

/// How a solve ended.
pub(super) enum Reached {
    /// At this point.
    Yes(Point),
    /// Nowhere.
    No,
    /// The search was cut short with nothing found.
    Unknown,
}

/// The cheapest point within `target`, which it is certain to keep.
pub(super) fn cheapest(
    model: &Model<'_>,
    target: &Target,
    costs: &Costs,
    variant: Variant,
) -> Reached {
    let reached = match solve(model, target, costs, variant) {
        Reached::Yes(point) if keeps(model, target, variant, &point) => return Reached::Yes(point),
        // Without all densities air was no row. Where the point has a volume after
        // all and too little air in it, do without what has no density.
        Reached::Yes(_)
            if !model.has_volume
                && model.hand.volume_m3.is_some()
                && !variant.known_density_only =>
        {
            let variant = Variant {
                known_density_only: true,
                ..variant
            };
            return cheapest(model, target, costs, variant);
        }
        // The solver's tolerance hid a miss, as where a step is a million times
        // what is in hand.
        Reached::Yes(_) => Reached::No,
        other => other,
    };
    let any_whole =
        model.question.water.step_kg > 0.0 || model.question.reach.iter().any(|reach| reach.whole);
    if variant.parts_allowed || !any_whole {
        return reached;
    }
    // The search over whole units may be cut short where they are very many; then
    // rounding does no harm.
    ROUNDING_DEPTHS
        .into_iter()
        .find_map(|depth| rounded(model, target, depth, costs, variant))
        .map_or(reached, Reached::Yes)
}

/// How far inside parts of units are looked for that may be rounded to whole ones.
const ROUNDING_DEPTHS: [f64; 3] = [0.02, 0.15, 0.5];

/// The cheapest point at some depth of `target`, parts of units rounded to whole
/// ones; `None` where that breaks a limit. Not proven the cheapest.
pub(super) fn rounded(
    model: &Model<'_>,
    target: &Target,
    depth: f64,
    costs: &Costs,
    variant: Variant,
) -> Option<Point> {
    let divided = Variant {
        parts_allowed: true,
        ..variant
    };
    let Reached::Yes(mut point) = solve(model, &drawn_in(target, depth), costs, divided) else {
        return None;
    };
    for ((index, units), reach) in point
        .units
        .iter_mut()
        .enumerate()
        .zip(&model.question.reach)
    {
        if reach.whole {
            let most = variant.most_units(index, reach.most_units).floor();
            *units = units.round().min(most);
        }
    }
    let step = model.question.water.step_kg;
    if step > 0.0 {
        point.water_kg = (point.water_kg / step).round() * step;
    }
    point.proven = false;
    keeps(model, target, variant, &point).then_some(point)
}

/// True when a point keeps all limits that were not dropped, at typical values.
fn keeps(model: &Model<'_>, target: &Target, variant: Variant, point: &Point) -> bool {
    let totals = model.totals(&point.units, point.water_kg);
    conflict::misses(&totals, target)
        .iter()
        .all(|miss| variant.dropped == Some(miss.limit))
}

/// The programme itself.
fn solve(model: &Model<'_>, target: &Target, costs: &Costs, variant: Variant) -> Reached {
    let water = &model.question.water;
    let mut programme = Programme::default();
    // A continuous amount is counted in shares of what is in hand; whole units as they are.
    let factors: Vec<f64> = model
        .question
        .reach
        .iter()
        .zip(&model.units)
        .map(|(reach, unit)| {
            if (reach.whole && !variant.parts_allowed) || unit.wet_mass_kg <= 0.0 {
                1.0
            } else {
                model.scale_kg / unit.wet_mass_kg
            }
        })
        .collect();
    for (index, reach) in model.question.reach.iter().enumerate() {
        let unknown = variant.known_density_only && model.units[index].volume_m3.is_none();
        let most = if unknown {
            0.0
        } else {
            variant.most_units(index, reach.most_units)
        };
        programme.add_variable(Variable {
            cost: costs.units[index] * factors[index] / model.scale_kg,
            most: most / factors[index],
            whole: reach.whole && !variant.parts_allowed,
        });
    }
    let water_whole = water.step_kg > 0.0 && !variant.parts_allowed;
    let water_factor = if water_whole {
        water.step_kg
    } else {
        model.scale_kg
    };
    programme.add_variable(Variable {
        cost: costs.water_kg * water_factor / model.scale_kg,
        most: water.most_kg / water_factor,
        whole: water_whole,
    });
    let judge_air = model.has_volume || variant.known_density_only;
    for (limit, comparison, weigh) in rows(target, judge_air) {
        if variant.dropped == Some(limit) {
            continue;
        }
        let mut coefficients: Vec<f64> = model
            .units
            .iter()
            .zip(&factors)
            .map(|(unit, factor)| weigh(unit) * factor)
            .collect();
        let mut drop_of_water = Totals::default();
        drop_of_water.add_water(1.0);
        coefficients.push(weigh(&drop_of_water) * water_factor);
        programme.add_row(&coefficients, comparison, -weigh(&model.hand));
    }
    if variant.dropped != Some(Limit::CarbonToNitrogenHigh) {
        // No carbon over no nitrogen is no ratio at all, though both rows hold.
        let mut nitrogen: Vec<f64> = model
            .units
            .iter()
            .zip(&factors)
            .map(|(unit, factor)| unit.nitrogen_kg * factor)
            .collect();
        nitrogen.push(0.0);
        programme.add_row(
            &nitrogen,
            Comparison::AtLeast,
            LEAST_NITROGEN * model.scale_kg - model.hand.nitrogen_kg,
        );
    }
    match programme.solve(NODE_LIMIT) {
        Outcome::Solved(solved) => {
            let count = factors.len();
            // The solver holds bounds to a tolerance; stocks are not to be overdrawn at all.
            let units = solved.values[..count]
                .iter()
                .zip(&factors)
                .zip(&model.question.reach)
                .enumerate()
                .map(|(index, ((value, factor), reach))| {
                    (value * factor).min(variant.most_units(index, reach.most_units))
                })
                .collect();
            Reached::Yes(Point {
                units,
                water_kg: (solved.values[count] * water_factor).min(water.most_kg),
                proven: solved.proven,
            })
        }
        Outcome::Infeasible => Reached::No,
        Outcome::Unknown => Reached::Unknown,
    }
}

/// Nitrogen that makes a C:N worth the name, as a share of what is in hand: a
/// hundredth of what the poorest wood has.
const LEAST_NITROGEN: f64 = 1e-6;

type Weigh = Box<dyn Fn(&Totals) -> f64>;

/// The rows: a sum over the mixture that must be at most, or at least, zero.
fn rows(target: &Target, has_volume: bool) -> Vec<(Limit, Comparison, Weigh)> {
    let Target {
        carbon_to_nitrogen_low: nitrogen_low,
        carbon_to_nitrogen_high: nitrogen_high,
        moisture_wet_basis_low: moisture_low,
        moisture_wet_basis_high: moisture_high,
        free_air_space_low: air_low,
        free_air_space_high: air_high,
        ..
    } = *target;
    let mut rows: Vec<(Limit, Comparison, Weigh)> = vec![
        (
            Limit::CarbonToNitrogenLow,
            Comparison::AtLeast,
            Box::new(move |t| t.carbon_kg - nitrogen_low * t.nitrogen_kg),
        ),
        (
            Limit::CarbonToNitrogenHigh,
            Comparison::AtMost,
            Box::new(move |t| t.carbon_kg - nitrogen_high * t.nitrogen_kg),
        ),
        (
            Limit::MoistureLow,
            Comparison::AtLeast,
            Box::new(move |t| t.water_kg() - moisture_low * t.wet_mass_kg),
        ),
        (
            Limit::MoistureHigh,
            Comparison::AtMost,
            Box::new(move |t| t.water_kg() - moisture_high * t.wet_mass_kg),
        ),
    ];
    if has_volume {
        let volume = |t: &Totals| t.volume_m3.unwrap_or(0.0);
        rows.push((
            Limit::FreeAirSpaceLow,
            Comparison::AtMost,
            Box::new(move |t| t.filled_volume_m3() - (1.0 - air_low) * volume(t)),
        ));
        // No mixture fills less than nothing: the usual upper limit needs no row.
        if air_high < 1.0 {
            rows.push((
                Limit::FreeAirSpaceHigh,
                Comparison::AtLeast,
                Box::new(move |t| t.filled_volume_m3() - (1.0 - air_high) * volume(t)),
            ));
        }
    }
    rows
}
