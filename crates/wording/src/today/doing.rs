//! What to do: a headline, and how.

use heapwright_answers::today::{Because, DatedNeed, Kind, Need, What};
use heapwright_answers::{Help, RecipeAnswer};
use heapwright_catalogue::Catalogue;
use heapwright_garden::Garden;
use heapwright_journal::content::Thoroughness;
use heapwright_state::State;
use heapwright_terms::MaterialId;
use heapwright_texts::Locale;
use heapwright_texts::messages::today as messages;

use crate::amounts::{amount_of, amount_of_water, amount_text, name_of, water_text};
use crate::before_use_line;
use crate::conflicts::help_line;
use crate::home_tests::HomeTest;
use crate::journal::heap_name;
use crate::ready::{next_tests, next_without_test};

/// What to do, in a few words: "Turn Bin".
#[must_use]
pub fn headline(
    catalogue: &Catalogue,
    garden: &Garden,
    state: &State,
    need: &Need,
    locale: Locale,
) -> String {
    match (&need.what, need.heap) {
        (
            What::Restock {
                material,
                conditions,
                ..
            },
            _,
        ) => store_headline(catalogue, garden, material, conditions, locale),
        (what, Some(heap)) => kind_headline(what.kind(), heap_name(state, heap, locale), locale),
        (what, None) => kind_headline(what.kind(), messages::the_heap(locale), locale),
    }
}

/// What to do at a heap, in a few words.
#[must_use]
pub fn kind_headline(kind: Kind, heap: &str, locale: Locale) -> String {
    match kind {
        Kind::StandBack => messages::StandBack { heap }.said(locale),
        Kind::CoolDown => messages::CoolDown { heap }.said(locale),
        Kind::KeepAnimalsOut => messages::KeepAnimalsOut { heap }.said(locale),
        Kind::AddBrowns => messages::AddBrowns { heap }.said(locale),
        Kind::CoverWithBrowns => messages::CoverWithBrowns { heap }.said(locale),
        Kind::Water => messages::Water { heap }.said(locale),
        Kind::Turn => messages::Turn { heap }.said(locale),
        Kind::ReadHeat => messages::ReadHeat { heap }.said(locale),
        Kind::AddGreens => messages::AddGreens { heap }.said(locale),
        Kind::Harvest => messages::Harvest { heap }.said(locale),
        Kind::LetRipen => messages::LetRipen { heap }.said(locale),
        Kind::Test => messages::Test { heap }.said(locale),
        Kind::Cover => messages::Cover { heap }.said(locale),
        Kind::Look => messages::Look { heap }.said(locale),
        Kind::Restock => messages::restock(locale).to_owned(),
    }
}

/// What comes due, in a few words.
#[must_use]
pub fn dated_headline(
    catalogue: &Catalogue,
    garden: &Garden,
    state: &State,
    date: &DatedNeed,
    locale: Locale,
) -> String {
    match (&date.material, date.heap) {
        (Some((material, conditions)), _) => {
            store_headline(catalogue, garden, material, conditions, locale)
        }
        (None, Some(heap)) => kind_headline(date.kind, heap_name(state, heap, locale), locale),
        (None, None) => kind_headline(date.kind, messages::the_heap(locale), locale),
    }
}

/// Which store to fill up.
fn store_headline(
    catalogue: &Catalogue,
    garden: &Garden,
    material: &MaterialId,
    conditions: &[String],
    locale: Locale,
) -> String {
    let name = garden.material(catalogue, material).map_or_else(
        || material.as_str().to_owned(),
        |found| name_of(catalogue, &found, conditions, locale),
    );
    messages::RestockOf { material: &name }.said(locale)
}

/// What to do, in sentences, in the keeper's measures.
#[must_use]
pub fn how_to(catalogue: &Catalogue, need: &Need, locale: Locale) -> Vec<String> {
    let said = |lines: &[fn(Locale) -> &'static str]| {
        lines.iter().map(|line| line(locale).to_owned()).collect()
    };
    match &need.what {
        What::StandBack => said(&[messages::how_stand_back, messages::how_stand_back_call]),
        What::CoolDown => said(&[messages::how_cool_down, messages::how_cool_down_after]),
        What::KeepAnimalsOut { is_wet } => said(&[
            if *is_wet {
                messages::how_keep_animals_out_wet
            } else {
                messages::how_keep_animals_out
            },
            messages::how_keep_animals_out_for_good,
        ]),
        What::AddBrowns {
            recipe: Some(recipe),
            ..
        }
        | What::AddGreens {
            recipe: Some(recipe),
        } => vec![recipe_from_stores(catalogue, recipe, locale)],
        What::AddBrowns { recipe: None, help } => beyond_the_stores(help, locale),
        What::CoverWithBrowns { layer } => vec![
            messages::HowCoverWithBrowns {
                amount: &amount_of(catalogue, layer, locale),
            }
            .said(locale),
            messages::how_cover_with_browns_before(locale).to_owned(),
        ],
        What::Water { water_l, lacking_l } => watering(*water_l, *lacking_l, locale),
        What::Turn {
            how: Thoroughness::InsideOut,
        } => said(&[messages::how_turn_inside_out]),
        What::Turn { .. } if has_no_air(need) => {
            said(&[messages::how_turn, messages::how_turn_open])
        }
        What::Turn { .. } => said(&[messages::how_turn]),
        What::ReadHeat => said(&[messages::how_read_heat]),
        What::AddGreens { recipe: None } => said(&[messages::how_add_greens]),
        What::Look => said(&[messages::how_look]),
        What::Harvest { before_use } => {
            let mut lines: Vec<String> = said(&[messages::how_harvest]);
            if before_use.is_empty() {
                lines.push(messages::how_harvest_ripe(locale).to_owned());
            }
            lines.extend(before_use.iter().map(|one| before_use_line(one, locale)));
            lines
        }
        What::Test { judgement } => match next_tests(judgement) {
            [] => next_without_test(judgement, locale).into_iter().collect(),
            tests => tests
                .iter()
                .map(|test| test_line(*test, locale).to_owned())
                .collect(),
        },
        What::LetRipen => said(&[messages::how_let_ripen]),
        What::Cover => said(&[messages::how_cover]),
        What::Restock {
            left: Some(left), ..
        } => vec![
            messages::HowRestock {
                amount: &amount_text(catalogue, left, locale),
            }
            .said(locale),
        ],
        What::Restock { left: None, .. } => said(&[messages::how_restock_used_up]),
    }
}

/// What else helps where the stores do not. That more of the stores would help too is said in the
/// same sentence as that they are not enough: said after it, the two would gainsay each other.
fn beyond_the_stores(help: &[Help], locale: Locale) -> Vec<String> {
    let first = if help.contains(&Help::LargerStock) {
        messages::stores_help_and_do_not_suffice(locale)
    } else {
        messages::stores_do_not_suffice(locale)
    };
    let mut lines = vec![first.to_owned()];
    if help.is_empty() {
        lines.push(messages::how_add_browns(locale).to_owned());
    }
    lines.extend(
        help.iter()
            .filter(|help| **help != Help::LargerStock)
            .map(|help| help_line(*help, locale).to_owned()),
    );
    lines
}

fn watering(water_l: f64, lacking_l: f64, locale: Locale) -> Vec<String> {
    let mut lines = vec![
        messages::HowWater {
            water: &water_text(water_l, locale),
        }
        .said(locale),
    ];
    if lacking_l > water_l {
        lines.push(
            messages::HowWaterInAll {
                water: &water_text(lacking_l, locale),
            }
            .said(locale),
        );
    }
    lines.push(messages::how_water_after(locale).to_owned());
    lines
}

fn test_line(test: HomeTest, locale: Locale) -> &'static str {
    match test {
        HomeTest::Bag => messages::how_test_bag(locale),
        HomeTest::SelfHeating => messages::how_test_self_heating(locale),
        HomeTest::Seedlings => messages::how_test_seedlings(locale),
        other => other.sheet(locale).tells,
    }
}

fn recipe_from_stores(catalogue: &Catalogue, recipe: &RecipeAnswer, locale: Locale) -> String {
    let mut things: Vec<String> = recipe
        .added
        .iter()
        .map(|added| amount_of(catalogue, &added.found, locale))
        .collect();
    if recipe.whole.water_kg > 0.0 {
        things.push(amount_of_water(recipe.whole.water_kg, locale));
    }
    messages::HowMixIn {
        things: &locale.list(&things),
    }
    .said(locale)
}

fn has_no_air(need: &Need) -> bool {
    need.because
        .iter()
        .any(|because| matches!(because, Because::Smell { .. }))
}

/// What the button says that writes it down, with the amount where that is all it writes; `None`
/// where something must be typed or seen first.
#[must_use]
pub fn tap_word(need: &Need, locale: Locale) -> Option<String> {
    need.entry.as_ref()?;
    let word = match &need.what {
        What::Water { water_l, .. } => {
            let water = &water_text(*water_l, locale);
            return Some(messages::TapWatered { water }.said(locale));
        }
        What::AddBrowns { .. } | What::AddGreens { .. } => messages::tap_mixed_in(locale),
        What::CoverWithBrowns { .. } | What::Cover => messages::tap_covered(locale),
        What::CoolDown | What::KeepAnimalsOut { .. } | What::Turn { .. } => {
            messages::tap_turned(locale)
        }
        What::LetRipen => messages::tap_left_to_ripen(locale),
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
    use heapwright_texts::Translation;

    use super::*;

    fn watering_need(water_l: f64, lacking_l: f64) -> Need {
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
        let need = watering_need(20.0, 160.0);
        let word = tap_word(&need, Locale::default());
        assert_eq!(word.as_deref(), Some("Watered, 20\u{a0}L"));
        let lines = how_to(Catalogue::built_in(), &need, Locale::default());
        assert!(lines[1].contains("160\u{a0}L in all"), "{lines:?}");
        assert!(lines[2].starts_with("Then feel it again"), "{lines:?}");
        let lines = how_to(
            Catalogue::built_in(),
            &watering_need(8.5, 8.5),
            Locale::default(),
        );
        assert_eq!(lines.len(), 2, "{lines:?}");
        assert_eq!(
            tap_word(
                &Need {
                    entry: None,
                    ..need
                },
                Locale::default()
            ),
            None
        );
    }

    fn browns(help: &[Help]) -> Need {
        Need {
            what: What::AddBrowns {
                recipe: None,
                help: help.to_vec(),
            },
            entry: None,
            ..watering_need(0.0, 0.0)
        }
    }

    #[test]
    fn stores_that_help_and_are_not_enough_are_told_of_once() {
        let german: &'static Translation = Box::leak(Box::new(
            Translation::read("de", Translation::GERMAN, "").unwrap(),
        ));
        let english = Locale::default();
        for locale in [english, english.in_language(Some(german))] {
            let lines = |help: &[Help]| how_to(Catalogue::built_in(), &browns(help), locale);
            let both = lines(&[Help::DryBrown, Help::LargerStock]);
            assert_eq!(
                both,
                [
                    messages::stores_help_and_do_not_suffice(locale),
                    help_line(Help::DryBrown, locale)
                ]
            );
            let larger = help_line(Help::LargerStock, locale);
            assert!(!both.iter().any(|line| line == larger), "{both:?}");
            let alone = messages::stores_do_not_suffice(locale);
            assert_eq!(lines(&[Help::DryBrown])[0], alone);
            assert_eq!(lines(&[]), [alone, messages::how_add_browns(locale)]);
        }
    }

    #[test]
    fn animals_are_kept_out_of_a_wet_heap_without_keeping_it_moist() {
        let german: &'static Translation = Box::leak(Box::new(
            Translation::read("de", Translation::GERMAN, "").unwrap(),
        ));
        let english = Locale::default();
        for (locale, moist) in [
            (english, "moist"),
            (english.in_language(Some(german)), "feucht"),
        ] {
            let lines = |is_wet| {
                let need = Need {
                    what: What::KeepAnimalsOut { is_wet },
                    ..watering_need(0.0, 0.0)
                };
                how_to(Catalogue::built_in(), &need, locale)
            };
            assert!(lines(false)[0].contains(moist), "{:?}", lines(false));
            assert!(!lines(true)[0].contains(moist), "{:?}", lines(true));
            assert_eq!(lines(false)[1..], lines(true)[1..]);
        }
    }
}
