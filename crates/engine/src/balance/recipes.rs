//! From points to recipes: the first by the objective, then others that differ.

use super::limits::{self, Costs, Point, Reached, Variant};
use super::{Balance, Model, Objective, Question, Recipe, RecipeKind, conflict, search, unit_part};
use crate::mixture::{self, DRAWS, UnitDraws};

/// At most so many recipes: more would be a choice, not help.
const MOST_RECIPES: usize = 4;

/// Recipes are as good as the same when no material differs by more than this
/// share of all that is added.
const SAME: f64 = 0.12;

pub(super) fn balance(question: &Question) -> Balance {
    let model = Model::new(question);
    if model.hand.wet_mass_kg <= 0.0 && question.reach.is_empty() {
        return Balance::Nothing;
    }
    let draws = Draws::new(question);
    let mut found: Vec<(RecipeKind, Point)> = Vec::new();
    let mut objectives = vec![question.objective];
    if question.alternatives {
        objectives.extend(
            [
                Objective::BestCentred,
                Objective::LeastBulk,
                Objective::UsePlentiful,
            ]
            .into_iter()
            .filter(|other| *other != question.objective),
        );
    }
    for objective in objectives {
        match best(&model, objective, Variant::default()) {
            Reached::Yes(point) => found.push((RecipeKind::Best(objective), point)),
            // What no objective can reach, the others cannot reach either.
            Reached::No if found.is_empty() => return not_met(&model, &draws),
            Reached::No | Reached::Unknown => {}
        }
    }
    if question.alternatives
        && let Some((_, first)) = found.first()
        && let Some(main) = main_addition(&model, first)
    {
        let half = first.units[main] / 2.0;
        let half = if question.reach[main].whole {
            half.floor()
        } else {
            half
        };
        // To do without it is the clearer choice; to spare it, the next best.
        for (kind, most) in [
            (RecipeKind::Without(main), 0.0),
            (RecipeKind::Sparing(main), half),
        ] {
            let variant = Variant {
                at_most: Some((main, most)),
                ..Variant::default()
            };
            if let Reached::Yes(point) = best(&model, Objective::BestCentred, variant) {
                found.push((kind, point));
                break;
            }
        }
    }
    let mut different: Vec<(RecipeKind, Point)> = Vec::new();
    for (kind, point) in found {
        if different.len() < MOST_RECIPES
            && !different
                .iter()
                .any(|(_, other)| alike(&model, &point, other))
        {
            different.push((kind, point));
        }
    }
    let recipes: Vec<Recipe> = different
        .into_iter()
        .filter_map(|(kind, point)| draws.recipe(kind, point, &model))
        .collect();
    if recipes.is_empty() {
        not_met(&model, &draws)
    } else {
        Balance::Met(recipes)
    }
}

/// The best point by an objective.
fn best(model: &Model<'_>, objective: Objective, variant: Variant) -> Reached {
    if objective == Objective::BestCentred {
        return search::best_centred(model, variant).map_or(Reached::No, Reached::Yes);
    }
    match Costs::of(model, objective) {
        Some(costs) => limits::cheapest(model, &model.question.target, &costs, variant),
        None => Reached::Unknown,
    }
}

fn not_met(model: &Model<'_>, draws: &Draws) -> Balance {
    let (point, conflict) = conflict::nearest(model);
    // The search that was cut short before has found its way after all.
    if conflict.misses.is_empty() {
        let kind = RecipeKind::Best(model.question.objective);
        let found = draws.recipe(kind, point, model);
        return found.map_or(Balance::Nothing, |recipe| Balance::Met(vec![recipe]));
    }
    match draws.recipe(RecipeKind::Nearest, point, model) {
        Some(nearest) => Balance::NotMet {
            nearest: Box::new(nearest),
            conflict,
        },
        None => Balance::Nothing,
    }
}

/// The material of which most is added.
fn main_addition(model: &Model<'_>, point: &Point) -> Option<usize> {
    let masses = added_masses_kg(model, point);
    let used = masses[..point.units.len()]
        .iter()
        .filter(|mass| **mass > 0.0)
        .count();
    (used > 0 && point.units.len() > 1)
        .then(|| (0..point.units.len()).max_by(|a, b| masses[*a].total_cmp(&masses[*b])))
        .flatten()
}

fn added_masses_kg(model: &Model<'_>, point: &Point) -> Vec<f64> {
    let mut masses: Vec<f64> = point
        .units
        .iter()
        .zip(&model.units)
        .map(|(count, unit)| count * unit.wet_mass_kg)
        .collect();
    masses.push(point.water_kg);
    masses
}

fn alike(model: &Model<'_>, a: &Point, b: &Point) -> bool {
    let (a, b) = (added_masses_kg(model, a), added_masses_kg(model, b));
    let all = a.iter().sum::<f64>().max(b.iter().sum());
    a.iter().zip(&b).all(|(a, b)| (a - b).abs() <= SAME * all)
}

/// Draws of what is in hand, made once; of what is added, when it is.
struct Draws {
    hand: Vec<(UnitDraws, f64)>,
}

impl Draws {
    fn new(question: &Question) -> Self {
        let mut hand: Vec<_> = question.in_hand.iter().collect();
        hand.sort_by(|a, b| mixture::order(a, b));
        Self {
            hand: hand
                .into_iter()
                .map(|part| {
                    let draws = UnitDraws::new(part, question.seed, DRAWS);
                    (draws, mixture::count(&part.amount))
                })
                .collect(),
        }
    }

    fn recipe(&self, kind: RecipeKind, point: Point, model: &Model<'_>) -> Option<Recipe> {
        let question = model.question;
        let added: Vec<(UnitDraws, f64)> = question
            .reach
            .iter()
            .zip(&point.units)
            .filter(|(_, units)| **units > 0.0)
            .map(|(reach, units)| {
                let draws = UnitDraws::new(&unit_part(reach), question.seed, DRAWS);
                (draws, mixture::count(&reach.unit) * units)
            })
            .collect();
        let counted: Vec<(&UnitDraws, f64)> = self
            .hand
            .iter()
            .chain(&added)
            .map(|(draws, count)| (draws, *count))
            .collect();
        let mixture = mixture::from_draws(&counted, point.water_kg, &question.target)?;
        Some(Recipe {
            kind,
            units: point.units,
            water_kg: point.water_kg,
            mixture,
            proven: point.proven,
        })
    }
}
