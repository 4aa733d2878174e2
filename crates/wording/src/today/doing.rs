//! What to do: a headline, and how.

use heapwright_answers::RecipeAnswer;
use heapwright_answers::today::{Because, DatedNeed, Kind, Need, What};
use heapwright_catalogue::Catalogue;
use heapwright_garden::Garden;
use heapwright_journal::content::Thoroughness;
use heapwright_quantity::UnitSystem;
use heapwright_state::State;
use heapwright_terms::MaterialId;

use crate::amounts::{amount_of, amount_text, name_of, water_text};
use crate::before_use_line;
use crate::conflicts::help_line;
use crate::home_tests::HomeTest;
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

/// What comes due, in a few words.
#[must_use]
pub fn dated_headline(
    catalogue: &Catalogue,
    garden: &Garden,
    state: &State,
    date: &DatedNeed,
) -> String {
    match (&date.material, date.heap) {
        (Some((material, conditions)), _) => {
            store_headline(catalogue, garden, material, conditions)
        }
        (None, Some(heap)) => kind_headline(date.kind, heap_name(state, heap)),
        (None, None) => kind_headline(date.kind, "the heap"),
    }
}

/// Which store to fill up.
#[must_use]
fn store_headline(
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
        What::Water { water_l, lacking_l } => {
            let mut lines = vec![format!(
                "Pour on {} of water, a little at a time, so that it soaks in.",
                water_text(*water_l, system)
            )];
            if lacking_l > water_l {
                lines.push(format!(
                    "It may lack {} in all, but what it cannot take up at once runs out below.",
                    water_text(*lacking_l, system)
                ));
            }
            lines.push(
                "Then feel it again the next day: a handful should feel like a squeezed sponge."
                    .to_owned(),
            );
            lines
        }
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
            tests => tests.iter().map(|test| test_line(*test)).collect(),
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

fn test_line(test: HomeTest) -> String {
    match test {
        HomeTest::Bag => "Close a moist handful in a bag for a week, then smell it: that shows whether it has come to rest.".to_owned(),
        HomeTest::SelfHeating => "Fill a vacuum flask with it and read how warm it gets: that shows whether it has come to rest.".to_owned(),
        HomeTest::Seedlings => "Sow cress in it, and as much in what you know to be good: that shows whether plants bear it.".to_owned(),
        other => other.sheet().tells.to_owned(),
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

/// What the button says that writes it down, with the amount where that is all it writes; `None`
/// where something must be typed or seen first.
#[must_use]
pub fn tap_word(need: &Need, system: UnitSystem) -> Option<String> {
    need.entry.as_ref()?;
    let word = match &need.what {
        What::Water { water_l, .. } => {
            return Some(format!("Watered, {}", water_text(*water_l, system)));
        }
        What::AddBrowns { .. } | What::AddGreens { .. } => "Mixed in",
        What::CoverWithBrowns { .. } | What::Cover => "Covered",
        What::CoolDown | What::KeepAnimalsOut | What::Turn { .. } => "Turned",
        What::LetRipen => "Left to ripen",
        What::StandBack
        | What::ReadHeat
        | What::Look
        | What::Harvest { .. }
        | What::Test { .. }
        | What::Restock { .. } => return None,
    };
    Some(word.to_owned())
}

#[cfg(test)]
mod tests {
    use heapwright_answers::today::Urgency;
    use heapwright_journal::content::Watered;
    use heapwright_journal::{Content, EventId};

    use super::*;

    fn watering(water_l: f64, lacking_l: f64) -> Need {
        let heap = EventId::new(1, &[0; 10]);
        Need {
            heap: Some(heap),
            what: What::Water { water_l, lacking_l },
            because: Vec::new(),
            urgency: Urgency::Soon,
            due: None,
            entry: Some(Content::Watered(Watered { heap, water_l })),
            cautions: Vec::new(),
        }
    }

    #[test]
    fn the_button_of_a_watering_says_how_much_it_writes_down() {
        let need = watering(20.0, 160.0);
        let word = tap_word(&need, UnitSystem::Metric);
        assert_eq!(word.as_deref(), Some("Watered, 20\u{a0}L"));
        let lines = how_to(Catalogue::built_in(), &need, UnitSystem::Metric);
        assert!(lines[1].contains("160\u{a0}L in all"), "{lines:?}");
        assert!(lines[2].starts_with("Then feel it again"), "{lines:?}");
        let lines = how_to(
            Catalogue::built_in(),
            &watering(8.5, 8.5),
            UnitSystem::Metric,
        );
        assert_eq!(lines.len(), 2, "{lines:?}");
        assert_eq!(
            tap_word(
                &Need {
                    entry: None,
                    ..need
                },
                UnitSystem::Metric
            ),
            None
        );
    }
}
