//! Which recipe is most likely right? A climb on the chance to lie in the region.
//!
//! The programme of `limits` meets the limits at typical values and therefore
//! ends at their edge, where every second case lies outside. This search starts
//! from points further in and moves, a unit or a part of one at a time, to
//! wherever more of the draws lie inside.

use heapwright_terms::Target;

use super::limits::{self, Costs, Point, Reached, Variant};
use super::{Model, Objective, conflict, unit_part};
use crate::mixture::{
    Totals, UnitDraws, carbon_to_nitrogen_fits, filled_volume_m3, free_air_space, within,
};

/// Draws that guide the climb; the answer's own figures use all of them.
const CLIMB_DRAWS: usize = 128;
/// Starting points between the edge and the middle of the region.
const START_DEPTHS: [f64; 4] = [0.0, 0.3, 0.6, 0.9];
/// Steps of the climb at most; it ends long before, when no step helps.
const MOST_STEPS: usize = 60;
/// What being well inside at typical values is worth beside the chance itself:
/// it leads the way where all or none of the draws lie inside.
const DEPTH_WORTH: f64 = 0.05;
/// What doubling the mass of what is in hand costs in chance: of two recipes that
/// are about as good, the smaller.
const MASS_COST: f64 = 0.01;
/// What fetching one more kind of thing costs in chance: two points are not worth a walk.
const KIND_COST: f64 = 0.02;

/// The best-centred point, or `None` when the region cannot be reached.
pub(super) fn best_centred(model: &Model<'_>, variant: Variant) -> Option<Point> {
    let costs = Costs::of(model, Objective::BestCentred)?;
    let judge = Judge::new(model);
    let mut best: Option<(f64, Point)> = None;
    let mut last: Option<Point> = None;
    for depth in START_DEPTHS {
        let Some(start) = start_at(model, &costs, depth, variant) else {
            // The edge itself is out of reach: there is no such recipe.
            if depth == 0.0 {
                break;
            }
            continue;
        };
        if last
            .as_ref()
            .is_some_and(|last| last.units == start.units && last.water_kg == start.water_kg)
        {
            continue;
        }
        last = Some(start.clone());
        let (score, point) = climb(model, &judge, start, variant, false);
        if best.as_ref().is_none_or(|(best, _)| score > *best) {
            best = Some((score, point));
        }
    }
    // Swaps are tried from the best alone: they are many.
    best.map(|(_, point)| Point {
        proven: false,
        ..climb(model, &judge, point, variant, true).1
    })
}

/// A point at some depth of the region that keeps its limits.
///
/// The first is found by the whole programme. Further in, where any point will
/// do, parts of units are rounded to whole ones, which takes a fraction of the
/// time and is given up where it breaks a limit.
fn start_at(model: &Model<'_>, costs: &Costs, depth: f64, variant: Variant) -> Option<Point> {
    let target = &model.question.target;
    if depth > 0.0 && model.question.reach.iter().any(|reach| reach.whole) {
        return limits::rounded(model, target, depth, costs, variant);
    }
    match limits::cheapest(model, &limits::drawn_in(target, depth), costs, variant) {
        Reached::Yes(point) => Some(point),
        Reached::No | Reached::Unknown => None,
    }
}

/// Moves to the best neighbour until none is better; with `swaps`, also to those
/// that have less of one thing and more of another.
fn climb(
    model: &Model<'_>,
    judge: &Judge,
    start: Point,
    variant: Variant,
    swaps: bool,
) -> (f64, Point) {
    let mut point = start;
    let mut sums = judge.sums(&point);
    let mut score = judge.score(&sums, model, &point);
    let mut fineness = 1.0;
    for _ in 0..MOST_STEPS {
        let single = steps(model, &point, fineness, variant);
        let better = best_move(
            model,
            judge,
            &sums,
            (score, &point),
            single.iter().map(|step| (*step, None)),
        )
        // Less of one and more of another, where neither alone is better.
        .or_else(|| {
            if !swaps {
                return None;
            }
            let (more, less): (Vec<Step>, Vec<Step>) =
                single.iter().partition(|step| step.by > 0.0);
            let swaps = less.iter().flat_map(|less| {
                more.iter()
                    .filter(|more| more.what != less.what)
                    .map(|more| (*less, Some(*more)))
            });
            best_move(model, judge, &sums, (score, &point), swaps)
        });
        match better {
            Some((better, moved)) => {
                score = better;
                point = moved;
                sums = judge.sums(&point);
            }
            // Continuous amounts are refined twice before giving up.
            None if fineness > 0.2 => fineness /= 2.0,
            None => break,
        }
    }
    (score, point)
}

/// The best of some moves, each of one step or two; `None` when none is better than
/// the score and point there are.
fn best_move(
    model: &Model<'_>,
    judge: &Judge,
    sums: &[[f64; FIGURES]],
    (score, point): (f64, &Point),
    moves: impl Iterator<Item = (Step, Option<Step>)>,
) -> Option<(f64, Point)> {
    let mut best: Option<(f64, Point)> = None;
    let mut moved = Vec::new();
    for (first, second) in moves {
        let mut candidate = point.clone();
        first.apply(&mut candidate);
        if let Some(second) = second {
            second.apply(&mut candidate);
        }
        // Draws may lie thicker beyond a limit; the typical mixture stays within all.
        if !judge.keeps_limits(model, &candidate) {
            continue;
        }
        moved.clear();
        moved.extend_from_slice(sums);
        judge.shift(&mut moved, &first);
        if let Some(second) = second {
            judge.shift(&mut moved, &second);
        }
        let moved_score = judge.score(&moved, model, &candidate);
        if moved_score > score + 1e-9 && best.as_ref().is_none_or(|(best, _)| moved_score > *best) {
            best = Some((moved_score, candidate));
        }
    }
    best
}

/// One change of a recipe: so many units of a material, or kilograms of water.
#[derive(Clone, Copy, Debug)]
struct Step {
    /// Index in `reach`, or its length for water.
    what: usize,
    by: f64,
}

impl Step {
    fn apply(&self, point: &mut Point) {
        match point.units.get_mut(self.what) {
            Some(units) => *units = (*units + self.by).max(0.0),
            None => point.water_kg = (point.water_kg + self.by).max(0.0),
        }
    }
}

/// Steps from a point that keep to stocks and whole units.
fn steps(model: &Model<'_>, point: &Point, fineness: f64, variant: Variant) -> Vec<Step> {
    // A part of what is in hand: an eighth, a sixteenth, ...
    let share_kg = model.scale_kg * 0.125 * fineness;
    let mut steps = Vec::with_capacity(2 * point.units.len() + 2);
    let mut offer = |what: usize, now: f64, size: f64, most: f64| {
        if now + size <= most {
            steps.push(Step { what, by: size });
        }
        if now > 0.0 {
            steps.push(Step {
                what,
                by: -size.min(now),
            });
        }
    };
    for (index, reach) in model.question.reach.iter().enumerate() {
        let mass = model.units[index].wet_mass_kg;
        if mass <= 0.0 {
            continue;
        }
        let size = if reach.whole { 1.0 } else { share_kg / mass };
        offer(
            index,
            point.units[index],
            size,
            variant.most_units(index, reach.most_units),
        );
    }
    let water = &model.question.water;
    let size = if water.step_kg > 0.0 {
        water.step_kg
    } else {
        share_kg
    };
    offer(point.units.len(), point.water_kg, size, water.most_kg);
    steps
}

/// Draws of what is in hand and of a unit of each in reach, and the region.
struct Judge {
    target: Target,
    has_volume: bool,
    hand: Vec<[f64; FIGURES]>,
    units: Vec<Vec<[f64; FIGURES]>>,
}

/// Wet mass, dry mass, volume, carbon, nitrogen, ash.
const FIGURES: usize = 6;

impl Judge {
    fn new(model: &Model<'_>) -> Self {
        let seed = model.question.seed;
        let mut hand = vec![[0.0; FIGURES]; CLIMB_DRAWS];
        for part in &model.question.in_hand {
            let draws = UnitDraws::of_region(part, seed, CLIMB_DRAWS);
            add(
                &mut hand,
                &draws.core_figures(),
                crate::mixture::count(&part.amount),
            );
        }
        let units = model
            .question
            .reach
            .iter()
            .map(|reach| {
                let mut unit = vec![[0.0; FIGURES]; CLIMB_DRAWS];
                let draws = UnitDraws::of_region(&unit_part(reach), seed, CLIMB_DRAWS);
                add(
                    &mut unit,
                    &draws.core_figures(),
                    crate::mixture::count(&reach.unit),
                );
                unit
            })
            .collect();
        Self {
            target: model.question.target,
            has_volume: model.has_volume,
            hand,
            units,
        }
    }

    fn sums(&self, point: &Point) -> Vec<[f64; FIGURES]> {
        let mut sums = self.hand.clone();
        for (unit, count) in self.units.iter().zip(&point.units) {
            if *count > 0.0 {
                add(&mut sums, unit, *count);
            }
        }
        for sum in &mut sums {
            sum[0] += point.water_kg;
        }
        sums
    }

    fn shift(&self, sums: &mut [[f64; FIGURES]], step: &Step) {
        match self.units.get(step.what) {
            Some(unit) => add(sums, unit, step.by),
            None => {
                for sum in sums {
                    sum[0] += step.by;
                }
            }
        }
    }

    /// True when the mixture lies within the limits at typical values.
    fn keeps_limits(&self, model: &Model<'_>, point: &Point) -> bool {
        let totals = model.totals(&point.units, point.water_kg);
        conflict::misses(&totals, &self.target).is_empty()
    }

    /// The chance, with a little for depth and against mass.
    fn score(&self, sums: &[[f64; FIGURES]], model: &Model<'_>, point: &Point) -> f64 {
        let inside = sums.iter().filter(|sum| self.is_inside(sum)).count();
        let totals = model.totals(&point.units, point.water_kg);
        let added = (totals.wet_mass_kg - model.hand.wet_mass_kg) / model.scale_kg;
        let kinds = point.units.iter().filter(|units| **units > 0.0).count()
            + usize::from(point.water_kg > 0.0);
        #[allow(clippy::cast_precision_loss)] // two hundred at most
        let kinds = kinds as f64;
        heapwright_numerics::share(inside, sums.len())
            + DEPTH_WORTH * depth(&totals, &self.target, self.has_volume)
            - MASS_COST * added
            - KIND_COST * kinds
    }

    fn is_inside(&self, &[wet, dry, volume, carbon, nitrogen, ash]: &[f64; FIGURES]) -> bool {
        carbon_to_nitrogen_fits(carbon, nitrogen, &self.target)
            && within(
                (wet - dry) / wet,
                self.target.moisture_wet_basis_low,
                self.target.moisture_wet_basis_high,
            )
            && (!self.has_volume
                || within(
                    free_air_space(filled_volume_m3(wet, dry, ash), volume),
                    self.target.free_air_space_low,
                    self.target.free_air_space_high,
                ))
    }
}

fn add(sums: &mut [[f64; FIGURES]], unit: &[[f64; FIGURES]], count: f64) {
    for (sum, unit) in sums.iter_mut().zip(unit) {
        for (sum, unit) in sum.iter_mut().zip(unit) {
            *sum += unit * count;
        }
    }
}

/// How far inside a mixture lies at typical values: 1 at the goal, 0 at the
/// nearest limit, below 0 outside, never below -1.
fn depth(totals: &Totals, target: &Target, has_volume: bool) -> f64 {
    let along = |value: f64, low: f64, goal: f64, high: f64| {
        if value < goal {
            (value - low) / (goal - low)
        } else {
            (high - value) / (high - goal)
        }
    };
    let ratio = along(
        totals.carbon_kg / totals.nitrogen_kg,
        target.carbon_to_nitrogen_low,
        target.carbon_to_nitrogen_goal,
        target.carbon_to_nitrogen_high,
    );
    let moisture = along(
        totals.moisture_wet_basis(),
        target.moisture_wet_basis_low,
        f64::midpoint(
            target.moisture_wet_basis_low,
            target.moisture_wet_basis_high,
        ),
        target.moisture_wet_basis_high,
    );
    // Twice the least air is air enough.
    let air = match totals.free_air_space() {
        Some(air) if has_volume && target.free_air_space_low > 0.0 => {
            (air / target.free_air_space_low - 1.0).min(1.0)
        }
        _ => 1.0,
    };
    // A window of no width gives 0/0 at its only point: that is the goal itself.
    let sound = |depth: f64| {
        if depth.is_nan() {
            1.0
        } else {
            depth.clamp(-1.0, 1.0)
        }
    };
    sound(ratio).min(sound(moisture)).min(sound(air))
}
