//! What to add, in one sentence, and why a recipe is offered.

use heapwright_answers::{BalanceAnswer, Objective, RecipeAnswer, RecipeKind};
use heapwright_catalogue::Catalogue;
use heapwright_quantity::UnitSystem;
use heapwright_texts::Locale;

use crate::amounts::{amount_of, water_text};

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
        things.push(format!(
            "{} of water",
            water_text(recipe.whole.water_kg, locale)
        ));
    }
    match &things[..] {
        [] if recipe.kind == RecipeKind::Nearest => {
            "Nothing in reach would bring it nearer.".to_owned()
        }
        [] => "It needs nothing with it.".to_owned(),
        [one] => format!("Put {one} with it."),
        [most @ .., last] => format!("Put {} and {last} with it.", most.join(", ")),
    }
}

/// Why a recipe is offered: a heading of a few words.
#[must_use]
pub fn recipe_title(
    answer: &BalanceAnswer,
    recipe: &RecipeAnswer,
    names_in_reach: &[String],
) -> String {
    match recipe.kind {
        RecipeKind::Best(objective) => match objective {
            Objective::LeastMass => "Least to carry",
            Objective::LeastBulk => "Least bulk",
            Objective::BestCentred => "Surest",
            Objective::UsePlentiful => "From the fullest store",
            Objective::LeastEffort => "Least effort",
        }
        .to_owned(),
        RecipeKind::Without(index) => match names_in_reach.get(index) {
            Some(name) => format!("Without {name}"),
            None => "Another way".to_owned(),
        },
        RecipeKind::Sparing(index) => match names_in_reach.get(index) {
            Some(name) => format!("With less of the {name}"),
            None => "Another way".to_owned(),
        },
        RecipeKind::Nearest if answer.in_hand.is_none() => "The nearest".to_owned(),
        RecipeKind::Nearest => "The nearest you can get".to_owned(),
    }
}
