//! What to add, in one sentence, and why a recipe is offered.

use heapwright_answers::{BalanceAnswer, Objective, RecipeAnswer, RecipeKind};
use heapwright_catalogue::Catalogue;
use heapwright_texts::Locale;
use heapwright_texts::messages::recipes as texts;

use crate::amounts::{amount_of, amount_of_water};

/// "Put 3 buckets of shredded leaves and 2 L of water with it."
#[must_use]
pub fn recipe_line(catalogue: &Catalogue, recipe: &RecipeAnswer, locale: Locale) -> String {
    let mut things: Vec<String> = recipe
        .added
        .iter()
        .map(|added| amount_of(catalogue, &added.found, locale))
        .collect();
    // Less than a tenth of a litre is not worth fetching a can for.
    if recipe.whole.water_kg >= 0.05 || (recipe.whole.water_kg > 0.0 && things.is_empty()) {
        things.push(amount_of_water(recipe.whole.water_kg, locale));
    }
    if things.is_empty() {
        return match recipe.kind {
            RecipeKind::Nearest => texts::nothing_brings_it_nearer(locale),
            _ => texts::needs_nothing(locale),
        }
        .to_owned();
    }
    texts::PutWithIt {
        things: &locale.list(&things),
    }
    .said(locale)
}

/// Why a recipe is offered: a heading of a few words.
#[must_use]
pub fn recipe_title(
    answer: &BalanceAnswer,
    recipe: &RecipeAnswer,
    names_in_reach: &[String],
    locale: Locale,
) -> String {
    match recipe.kind {
        RecipeKind::Best(objective) => match objective {
            Objective::LeastMass => texts::least_to_carry(locale),
            Objective::LeastBulk => texts::least_bulk(locale),
            Objective::BestCentred => texts::surest(locale),
            Objective::UsePlentiful => texts::from_the_fullest_store(locale),
            Objective::LeastEffort => texts::least_effort(locale),
        }
        .to_owned(),
        RecipeKind::Without(index) => match names_in_reach.get(index) {
            Some(name) => texts::Without { name }.said(locale),
            None => texts::another_way(locale).to_owned(),
        },
        RecipeKind::Sparing(index) => match names_in_reach.get(index) {
            Some(name) => texts::WithLessOf { name }.said(locale),
            None => texts::another_way(locale).to_owned(),
        },
        RecipeKind::Nearest if answer.in_hand.is_none() => texts::nearest(locale).to_owned(),
        RecipeKind::Nearest => texts::nearest_you_can_get(locale).to_owned(),
    }
}
