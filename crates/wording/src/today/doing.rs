//! What to do: a headline, and how.

use heapwright_answers::RecipeAnswer;
use heapwright_answers::today::{Because, Kind, Need, What};
use heapwright_catalogue::Catalogue;
use heapwright_garden::Garden;
use heapwright_journal::content::Thoroughness;
use heapwright_quantity::UnitSystem;
use heapwright_state::State;
use heapwright_terms::MaterialId;

use crate::amounts::{amount_of, amount_text, name_of, water_text};
use crate::before_use_line;
use crate::conflicts::help_line;
use crate::journal::heap_name;
use crate::ready::{next_tests, next_without_test};

/// What to do, in a few words: "Turn Bin".
#[must_use]
pub fn headline(catalogue: &Catalogue, garden: &Garden, state: &State, need: &Need) -> String {
    match (&need.what, need.heap) {
        (
            What::Restock {
                material,
                conditions,
                ..
            },
            _,
        ) => store_headline(catalogue, garden, material, conditions),
        (what, Some(heap)) => kind_headline(what.kind(), heap_name(state, heap)),
        (what, None) => kind_headline(what.kind(), "the heap"),
    }
}

/// What to do at a heap, in a few words.
#[must_use]
pub fn kind_headline(kind: Kind, heap: &str) -> String {
    match kind {
        Kind::StandBack => format!("Keep away from {heap} and watch it"),
        Kind::CoolDown => format!("Open {heap} and cool it down"),
        Kind::KeepAnimalsOut => format!("Keep animals out of {heap}"),
        Kind::AddBrowns => format!("Mix browns into {heap}"),
        Kind::CoverWithBrowns => format!("Cover the top of {heap} with browns"),
        Kind::Water => format!("Water {heap}"),
        Kind::Turn => format!("Turn {heap}"),
        Kind::ReadHeat => format!("Take the temperature of {heap}"),
        Kind::AddGreens => format!("Mix greens into {heap}"),
        Kind::Harvest => format!("Take the compost out of {heap}"),
        Kind::LetRipen => format!("Let {heap} ripen"),
        Kind::Test => format!("Test whether {heap} is ready"),
        Kind::Cover => format!("Cover {heap}"),
        Kind::Look => format!("Look at {heap}"),
        Kind::Restock => "Fill up the stores".to_owned(),
    }
}

/// Which store to fill up.
#[must_use]
pub fn store_headline(
    catalogue: &Catalogue,
    garden: &Garden,
    material: &MaterialId,
    conditions: &[String],
) -> String {
    format!(
        "Gather more {}",
        store_name(catalogue, garden, material, conditions)
    )
}

fn store_name(
    catalogue: &Catalogue,
    garden: &Garden,
    material: &MaterialId,
    conditions: &[String],
) -> String {
    garden.material(catalogue, material).map_or_else(
        || material.as_str().to_owned(),
        |found| name_of(catalogue, &found, conditions),
    )
}

/// What to do, in sentences, in the keeper's measures.
#[must_use]
pub fn how_to(catalogue: &Catalogue, need: &Need, system: UnitSystem) -> Vec<String> {
    match &need.what {
        What::StandBack => vec![
            "Do not open it or dig in it. Keep children and animals away, and have a hose ready."
                .to_owned(),
            "Call the fire service if it smokes, smells burnt or gets hotter. Read the probe again from the outside, without digging."
                .to_owned(),
        ],
        What::CoolDown => vec![
            "Open it bit by bit, turn it, and wet dry places as you go.".to_owned(),
            "Leave it lower and wider than it was, and read the probe again tomorrow.".to_owned(),
        ],
        What::KeepAnimalsOut => vec![
            "Turn the heap, so that nothing nests in it, and keep it moist.".to_owned(),
            "Take out cooked and fatty food, bury fresh scraps in the middle, close gaps wider than 12\u{a0}mm with mesh, and keep half a metre around it clear.".to_owned(),
        ],
        What::AddBrowns {
            recipe: Some(recipe),
            ..
        } => vec![recipe_from_stores(catalogue, recipe, system)],
        What::AddBrowns { recipe: None, help } => {
            let mut lines = vec!["Your stores alone do not put this right.".to_owned()];
            if help.is_empty() {
                lines.push(
                    "Mix in dry leaves, straw, torn cardboard or sawdust until it feels like a squeezed sponge."
                        .to_owned(),
                );
            }
            lines.extend(help.iter().map(|help| help_line(*help).to_owned()));
            lines
        }
        What::CoverWithBrowns { layer } => vec![
            format!(
                "Lay {} over the top.",
                amount_of(catalogue, layer, system)
            ),
            "Bury fresh scraps before you do, and close the lid if there is one.".to_owned(),
        ],
        What::Water { water_l } => vec![
            format!(
                "Pour on {} of water, a little at a time, so that it soaks in.",
                water_text(*water_l, system)
            ),
            "A handful should feel like a squeezed sponge.".to_owned(),
        ],
        What::Turn {
            how: Thoroughness::InsideOut,
        } => vec!["Take it out and put it back, so that the outside comes to the inside.".to_owned()],
        What::Turn { .. } => {
            let mut lines = vec![
                "Fork it over in its place, and shake lumps apart.".to_owned(),
            ];
            if has_no_air(need) {
                lines.push(
                    "Mix in something coarse, such as shredded prunings or straw, to hold it open."
                        .to_owned(),
                );
            }
            lines
        }
        What::ReadHeat => {
            vec!["Put the probe into the middle and wait until it stands still.".to_owned()]
        }
        What::AddGreens {
            recipe: Some(recipe),
        } => vec![recipe_from_stores(catalogue, recipe, system)],
        What::AddGreens { recipe: None } => vec![
            "Mix in something green when you have it: grass, kitchen scraps, coffee grounds or manure. Without it, it only works slowly."
                .to_owned(),
        ],
        What::Look => vec![
            "Open it a hand deep: smell it, squeeze a handful, and see what lives there.".to_owned(),
        ],
        What::Harvest { before_use } => {
            let mut lines = vec!["Take it out, and sieve it if you like.".to_owned()];
            if before_use.is_empty() {
                lines.push("Ripe is not the same as free of germs or seeds.".to_owned());
            }
            lines.extend(before_use.iter().map(before_use_line));
            lines
        }
        What::Test { judgement } => match next_tests(judgement) {
            [] => next_without_test(judgement)
                .map(|line| vec![line.to_owned()])
                .unwrap_or_default(),
            tests => tests
                .iter()
                .map(|test| test.sheet().tells.to_owned())
                .collect(),
        },
        What::LetRipen => vec![
            "Feed it no more. Start the next heap, and keep this one covered and just moist."
                .to_owned(),
        ],
        What::Cover => vec![
            "Lay a sheet, sacks or a lid over it, so that rain does not wash out what has ripened."
                .to_owned(),
        ],
        What::Restock {
            left: Some(left), ..
        } => vec![format!(
            "There are {} left. Put some by before you run out.",
            amount_text(catalogue, left, system)
        )],
        What::Restock { left: None, .. } => {
            vec!["There is none left. Put some by, for wet scraps need it.".to_owned()]
        }
    }
}

fn recipe_from_stores(catalogue: &Catalogue, recipe: &RecipeAnswer, system: UnitSystem) -> String {
    let mut things: Vec<String> = recipe
        .added
        .iter()
        .map(|added| amount_of(catalogue, &added.found, system))
        .collect();
    if recipe.whole.water_kg > 0.0 {
        things.push(format!(
            "{} of water",
            water_text(recipe.whole.water_kg, system)
        ));
    }
    match &things[..] {
        [most @ .., last] if !most.is_empty() => {
            format!("Mix in {} and {last}.", most.join(", "))
        }
        _ => format!("Mix in {}.", things.join("")),
    }
}

fn has_no_air(need: &Need) -> bool {
    need.because
        .iter()
        .any(|because| matches!(because, Because::Smell { .. }))
}

/// What the button says that writes it down; `None` where something must be typed or seen first.
#[must_use]
pub const fn tap_word(need: &Need) -> Option<&'static str> {
    if need.entry.is_none() {
        return None;
    }
    match need.what.kind() {
        Kind::AddBrowns | Kind::AddGreens => Some("Mixed in"),
        Kind::CoverWithBrowns | Kind::Cover => Some("Covered"),
        Kind::Water => Some("Watered"),
        Kind::CoolDown | Kind::KeepAnimalsOut | Kind::Turn => Some("Turned"),
        Kind::LetRipen => Some("Left to ripen"),
        Kind::Harvest => Some("Taken out, all of it"),
        _ => None,
    }
}
