//! From what is on the page to a question, and from the question to all that is shown. Pure.

use std::sync::Arc;

use heapwright_answers::{
    BalanceAnswer, BalanceQuestion, InReach, MixAnswer, MixQuestion, Objective, OnTheMap,
    USUAL_TARGET, WaterSupply, checked_target, on_the_map, what_is_in, what_to_add,
};
use heapwright_catalogue::Catalogue;
use heapwright_garden::{Calibration, Found, FoundPart, Garden, Stated, Stuff};
use heapwright_journal::{EventId, Moment};
use heapwright_quantity::{Amount, DecimalMark, Gallon, Unit, Vocabulary, parse_amount};
use heapwright_state::State;
use heapwright_terms::{MaterialId, Target};
use heapwright_texts::messages::balance_place as texts;
use heapwright_wording::{amount_refusal, found_refusal, question_refusal};

use crate::demo;
use crate::language;
use crate::state::{AimField, Page};

/// Water is poured by the half litre: finer is not worth measuring.
const WATER_STEP_KG: f64 = 0.5;

/// Something typed that cannot be used, and where.
#[derive(Clone, Debug, PartialEq)]
pub struct Fault {
    /// Where.
    pub place: FaultPlace,
    /// What is wrong, in a sentence.
    pub what: String,
}

/// Where a fault is.
#[derive(Clone, Debug, PartialEq)]
pub enum FaultPlace {
    /// A line in hand.
    Hand(u32),
    /// A line in reach.
    Reach(u32),
    /// The volume of a measure.
    Measure(String),
    /// A limit of the aim.
    Aim(AimField),
    /// The aim as a whole.
    WholeAim,
    /// The question as a whole.
    WholeQuestion,
}

/// All that the page shows.
#[derive(Clone, Debug, PartialEq)]
pub struct Shown {
    /// The page that it answers.
    pub page: Arc<Page>,
    /// The recipes; `None` when there is nothing in hand.
    pub balance: Option<BalanceAnswer>,
    /// The mixture that is looked at: the chosen recipe's.
    pub looked_at: Option<MixAnswer>,
    /// What was asked of which garden, for the map of what is looked at.
    pub asked: Option<(Garden, BalanceQuestion)>,
    /// Keys of the lines in reach that are used, in the order of the arrows' numbers.
    pub numbered: Vec<u32>,
    /// What the feed is, to be logged: what is in hand and what the chosen recipe adds.
    pub feed: Feed,
    /// What cannot be used.
    pub faults: Vec<Fault>,
}

/// A feed as it stands on the page.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Feed {
    /// What is in hand.
    pub hand: Vec<Found>,
    /// What the chosen recipe adds.
    pub added: Vec<Found>,
    /// Water that the recipe adds [kg].
    pub water_kg: f64,
}

impl Shown {
    /// The fault of a place.
    #[must_use]
    pub fn fault(&self, place: &FaultPlace) -> Option<&str> {
        self.faults
            .iter()
            .find(|fault| fault.place == *place)
            .map(|fault| fault.what.as_str())
    }
}

/// How amounts are understood on this page.
#[must_use]
pub fn vocabulary(catalogue: &Catalogue) -> Vocabulary {
    Vocabulary {
        gallon: Gallon::Us,
        // Fields accept both marks; "1,234" is asked back.
        decimal: DecimalMark::Unknown,
        ..heapwright_wire::vocabulary(catalogue)
    }
}

/// Computes the page, with a garden of the keeper's own or the example. `before` is what was shown of the
/// same garden: what only looks at another recipe, or in other units, is not asked anew.
#[must_use]
pub fn shown(page: &Arc<Page>, own: Option<&Garden>, before: Option<&Shown>) -> Shown {
    match before.filter(|before| before.page.asks_the_same(page)) {
        Some(before) => looked_at_anew(before, page),
        None => asked_anew(page, own),
    }
}

fn asked_anew(page: &Arc<Page>, own: Option<&Garden>) -> Shown {
    let catalogue = language::catalogue();
    let vocabulary = vocabulary(catalogue);
    let mut faults = Vec::new();
    let base = own.cloned().unwrap_or_else(demo::garden);
    let garden = measured(base, page, &vocabulary, &mut faults);
    let target = target(page, &mut faults);
    let have = in_hand(catalogue, &garden, page, &vocabulary, &mut faults);
    let (reach, numbered) = in_reach(catalogue, &garden, page, &vocabulary, &mut faults);
    let nothing = Shown {
        page: page.clone(),
        balance: None,
        looked_at: None,
        asked: None,
        numbered,
        feed: Feed::default(),
        faults: Vec::new(),
    };
    if have.is_empty() {
        return Shown { faults, ..nothing };
    }
    let question = BalanceQuestion {
        have,
        reach,
        water: WaterSupply {
            most_kg: if page.water { f64::INFINITY } else { 0.0 },
            step_kg: WATER_STEP_KG,
        },
        target,
        objective: Objective::BestCentred,
        alternatives: true,
    };
    let balance = what_to_add(catalogue, &garden, &question)
        .map_err(|error| {
            faults.push(Fault {
                place: FaultPlace::WholeQuestion,
                what: question_refusal(&error, language::locale()),
            });
        })
        .ok();
    let answered = Shown {
        asked: Some((garden, question)),
        faults,
        balance,
        ..nothing
    };
    looked_at_anew(&answered, page)
}

/// Which of the recipes the page looks at: the first when the chosen one is not there.
#[must_use]
pub fn looked_at_of(answer: &BalanceAnswer, page: &Page) -> usize {
    if page.chosen < answer.recipes.len() {
        page.chosen
    } else {
        0
    }
}

/// The same answer with the recipe that the page looks at.
fn looked_at_anew(answered: &Shown, page: &Arc<Page>) -> Shown {
    let recipe = answered
        .balance
        .as_ref()
        .and_then(|answer| answer.recipes.get(looked_at_of(answer, page)));
    let hand = answered.asked.as_ref();
    Shown {
        page: page.clone(),
        looked_at: recipe.map(|recipe| recipe.whole.clone()),
        feed: Feed {
            added: recipe.map_or_else(Vec::new, |recipe| {
                recipe
                    .added
                    .iter()
                    .map(|added| as_found(&added.found))
                    .collect()
            }),
            water_kg: recipe.map_or(0.0, |recipe| recipe.whole.water_kg),
            hand: hand.map_or_else(Vec::new, |(_, question)| question.have.clone()),
        },
        ..answered.clone()
    }
}

/// The mixture that is looked at on its map; not there when nothing is looked at.
#[must_use]
pub fn mapped(shown: &Shown) -> Option<OnTheMap> {
    let mix = shown.looked_at.as_ref()?;
    let (garden, question) = shown.asked.as_ref()?;
    let (hand, added) = mix.parts.split_at(question.have.len().min(mix.parts.len()));
    on_the_map(
        language::catalogue(),
        garden,
        (hand, added, mix.water_kg),
        &whole_measures(&question.reach),
        question.target,
    )
    .ok()
}

/// A part that was understood, as it was meant.
fn as_found(part: &FoundPart) -> Found {
    let material = part.material.as_ref();
    Found {
        stuff: Stuff::Known {
            material: material
                .map_or_else(|| MaterialId(part.name.clone()), |known| known.id.clone()),
            conditions: part.conditions.clone(),
            stated: Stated::default(),
        },
        amount: part.amount.clone(),
    }
}

/// What is in a heap of the journal; `None` when nothing is. The error is a sentence.
pub fn in_heap(
    page: &Page,
    state: &State,
    heap: EventId,
    at: Moment,
) -> Result<Option<MixAnswer>, String> {
    let catalogue = language::catalogue();
    let garden = garden_now(page, state, at);
    let (parts, water_kg) = garden.parts_of(catalogue, state, &state.contents(heap));
    if parts.is_empty() {
        return Ok(None);
    }
    let question = MixQuestion {
        parts,
        water_kg,
        target: target(page, &mut Vec::new()),
    };
    what_is_in(catalogue, &garden, &question)
        .map(Some)
        .map_err(|error| question_refusal(&error, language::locale()))
}

/// Litres of a volume that was typed, or of a measure.
pub fn litres(page: &Page, own: Option<&Garden>, typed: &str, unit: &str) -> Result<f64, String> {
    let catalogue = language::catalogue();
    let vocabulary = vocabulary(catalogue);
    let amount = typed_amount(typed, unit, &vocabulary)?;
    let garden = measured(
        own.cloned().unwrap_or_default(),
        page,
        &vocabulary,
        &mut Vec::new(),
    );
    let volume_m3 = match &amount.unit {
        Unit::Measure(id) => garden
            .filling_m3(catalogue, id)
            .map(|filling| filling.typical * amount.count),
        // A litre of water weighs a kilogram.
        _ => amount
            .cubic_metres()
            .or_else(|| amount.kilograms().map(|mass_kg| mass_kg / 1000.0)),
    };
    volume_m3
        .map(|volume_m3| volume_m3 * 1000.0)
        .ok_or_else(|| texts::enter_a_volume(language::locale()).to_owned())
}

/// The garden of a journal, with what the keeper's own vessels hold.
#[must_use]
pub fn garden_now(page: &Page, state: &State, at: Moment) -> Garden {
    let catalogue = language::catalogue();
    measured(
        Garden::from_state(catalogue, state, at),
        page,
        &vocabulary(catalogue),
        &mut Vec::new(),
    )
}

/// A garden with what the keeper's own vessels hold.
fn measured(
    mut garden: Garden,
    page: &Page,
    vocabulary: &Vocabulary,
    faults: &mut Vec<Fault>,
) -> Garden {
    for (measure, typed) in &page.measures {
        match typed_amount(typed, if page.us_units { "gal" } else { "L" }, vocabulary) {
            Ok(amount) => match amount.cubic_metres() {
                Some(volume_m3) => garden.calibrations.push(Calibration {
                    measure: measure.clone(),
                    volume_m3,
                }),
                None => faults.push(Fault {
                    place: FaultPlace::Measure(measure.clone()),
                    what: texts::enter_a_volume(language::locale()).to_owned(),
                }),
            },
            Err(what) => faults.push(Fault {
                place: FaultPlace::Measure(measure.clone()),
                what,
            }),
        }
    }
    garden
}

fn in_hand(
    catalogue: &Catalogue,
    garden: &Garden,
    page: &Page,
    vocabulary: &Vocabulary,
    faults: &mut Vec<Fault>,
) -> Vec<Found> {
    let mut have = Vec::new();
    for line in &page.hand {
        let found = typed_amount(&line.typed, &line.unit, vocabulary).and_then(|amount| {
            let found = Found {
                stuff: stuff(&line.material, &line.condition),
                amount,
            };
            garden
                .find(catalogue, &found)
                .map_err(|error| found_refusal(&error, language::locale()))?;
            Ok(found)
        });
        match found {
            Ok(found) => have.push(found),
            Err(what) => faults.push(Fault {
                place: FaultPlace::Hand(line.key),
                what,
            }),
        }
    }
    have
}

fn in_reach(
    catalogue: &Catalogue,
    garden: &Garden,
    page: &Page,
    vocabulary: &Vocabulary,
    faults: &mut Vec<Fault>,
) -> (Vec<InReach>, Vec<u32>) {
    let (mut reach, mut keys) = (Vec::new(), Vec::new());
    for line in page.reach.iter().filter(|line| line.on) {
        let scoop = Found {
            stuff: stuff(&line.material, &line.condition),
            amount: Amount {
                count: scoop_count(garden, catalogue, &line.unit),
                unit: Unit::Measure(line.unit.clone()),
            },
        };
        let most = if line.typed.trim().is_empty() {
            Ok(None)
        } else {
            typed_amount(&line.typed, &line.unit, vocabulary).map(Some)
        };
        let most = most.and_then(|most| {
            garden
                .find(catalogue, &scoop)
                .map_err(|error| found_refusal(&error, language::locale()))?;
            Ok(most)
        });
        match most {
            Ok(most) => {
                reach.push(InReach {
                    stuff: scoop.stuff,
                    most,
                    step: Some(scoop.amount),
                    effort: 1.0,
                });
                keys.push(line.key);
            }
            Err(what) => faults.push(Fault {
                place: FaultPlace::Reach(line.key),
                what,
            }),
        }
    }
    (reach, keys)
}

/// From this volume on half a measure can be told by eye [m3]: a caddy, not a mug.
const HALVED_FROM_M3: f64 = 0.004;

/// In what part of a measure stuff is handed out.
fn scoop_count(garden: &Garden, catalogue: &Catalogue, measure: &str) -> f64 {
    match garden.filling_m3(catalogue, measure) {
        Some(filling) if filling.typical >= HALVED_FROM_M3 => 0.5,
        _ => 1.0,
    }
}

/// The same materials, a whole measure of each: what the map's arrows stand for.
fn whole_measures(reach: &[InReach]) -> Vec<InReach> {
    reach
        .iter()
        .cloned()
        .map(|mut item| {
            if let Some(step) = &mut item.step {
                step.count = 1.0;
            }
            item
        })
        .collect()
}

fn stuff(material: &str, condition: &str) -> Stuff {
    Stuff::Known {
        material: MaterialId(material.to_owned()),
        conditions: if condition.is_empty() {
            Vec::new()
        } else {
            condition.split('+').map(str::to_owned).collect()
        },
        stated: Stated::default(),
    }
}

/// What was typed as an amount: with its own unit where it has one, else in `unit`.
pub fn typed_amount(typed: &str, unit: &str, vocabulary: &Vocabulary) -> Result<Amount, String> {
    if typed.trim().is_empty() {
        return Err(texts::enter_a_number(language::locale()).to_owned());
    }
    let whole = if typed.chars().any(char::is_alphabetic) {
        typed.to_owned()
    } else {
        // By its name in the language, in which a refusal would say it.
        let measure = language::catalogue().measure(unit);
        let name = measure.map_or_else(|| unit.replace('_', " "), |found| found.name.clone());
        format!("{typed} {name}")
    };
    parse_amount(&whole, vocabulary).map_err(|error| amount_refusal(&error, language::locale()))
}

fn target(page: &Page, faults: &mut Vec<Fault>) -> Target {
    let usual = USUAL_TARGET;
    let mut number = |field: AimField, usual: f64, per: f64, most: f64| {
        let typed = page.aim.typed(field).trim();
        if typed.is_empty() {
            return usual;
        }
        let number = typed
            .trim_end_matches('%')
            .trim()
            .replace(',', ".")
            .parse::<f64>();
        match number {
            Ok(number) if (1.0..=most).contains(&number) => number / per,
            _ => {
                faults.push(Fault {
                    place: FaultPlace::Aim(field),
                    what: texts::NumberBetween { most }.said(language::locale()),
                });
                usual
            }
        }
    };
    let mut target = Target {
        carbon_to_nitrogen_low: number(
            AimField::RatioLow,
            usual.carbon_to_nitrogen_low,
            1.0,
            1000.0,
        ),
        carbon_to_nitrogen_high: number(
            AimField::RatioHigh,
            usual.carbon_to_nitrogen_high,
            1.0,
            1000.0,
        ),
        moisture_wet_basis_low: number(
            AimField::MoistureLow,
            usual.moisture_wet_basis_low,
            100.0,
            100.0,
        ),
        moisture_wet_basis_high: number(
            AimField::MoistureHigh,
            usual.moisture_wet_basis_high,
            100.0,
            100.0,
        ),
        free_air_space_low: number(AimField::AirLow, usual.free_air_space_low, 100.0, 100.0),
        ..usual
    };
    if !(target.carbon_to_nitrogen_low..=target.carbon_to_nitrogen_high)
        .contains(&target.carbon_to_nitrogen_goal)
    {
        target.carbon_to_nitrogen_goal = f64::midpoint(
            target.carbon_to_nitrogen_low,
            target.carbon_to_nitrogen_high,
        );
    }
    checked_target(target).unwrap_or_else(|_| {
        faults.push(Fault {
            place: FaultPlace::WholeAim,
            what: texts::limits_crossed(language::locale()).to_owned(),
        });
        usual
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::state::{Action, updated};

    #[test]
    fn shown_answers_the_first_page_with_several_buckets() {
        let shown = shown(&Arc::default(), None, None);
        assert_eq!(mapped(&shown).unwrap().moves.len(), shown.numbered.len());
        let balance = shown.balance.unwrap();
        assert_eq!(balance.status, heapwright_answers::Status::Met);
        assert!(!balance.recipes[0].added.is_empty());
    }

    #[test]
    fn what_is_only_looked_at_differently_is_as_if_asked_anew() {
        let page = Arc::new(Page::default());
        let before = shown(&page, None, None);
        let looks = [
            Action::Choose(1),
            Action::Choose(99),
            Action::Units(true),
            Action::Light(crate::state::Light::Dark),
            Action::Clock(crate::state::ClockChoice::Hours12),
            Action::Tiles("bread".to_owned()),
        ];
        for look in looks {
            let seen = Arc::new(updated(&page, &look));
            assert_ne!(page, seen, "{look:?}");
            assert!(before.page.asks_the_same(&seen), "{look:?}");
            assert_eq!(
                shown(&seen, None, Some(&before)),
                shown(&seen, None, None),
                "{look:?}"
            );
        }
        let more = Arc::new(updated(&page, &Action::Tap("bread".to_owned())));
        assert!(!before.page.asks_the_same(&more));
        assert_ne!(shown(&more, None, Some(&before)).balance, before.balance);
    }

    #[test]
    fn shown_names_the_field_and_keeps_answering() {
        let page = Page::default();
        let key = page.hand[1].key;
        let page = updated(&page, &Action::TypeHand(key, "-2".to_owned()));
        let shown = shown(&Arc::new(page.clone()), None, None);
        assert!(shown.fault(&FaultPlace::Hand(key)).is_some());
        assert!(shown.balance.is_some(), "the other line still counts");
    }

    #[test]
    fn shown_answers_without_a_line_in_reach_that_cannot_be_used() {
        let mut page = Page::default();
        page.reach[0].unit = "thimble".to_owned();
        page.reach[1].material = "moon_dust".to_owned();
        let shown = shown(&Arc::new(page.clone()), None, None);
        for line in &page.reach[..2] {
            assert!(shown.fault(&FaultPlace::Reach(line.key)).is_some());
        }
        assert_eq!(shown.numbered, [page.reach[2].key, page.reach[3].key]);
        assert!(shown.balance.is_some());
    }

    #[test]
    fn shown_takes_a_unit_that_was_typed() {
        let page = Page::default();
        let key = page.hand[0].key;
        let page = updated(&page, &Action::TypeHand(key, "3,5 kg".to_owned()));
        let mix = shown(&Arc::new(page), None, None)
            .balance
            .unwrap()
            .in_hand
            .unwrap();
        assert!((mix.brought[0].wet_mass_kg - 3.5).abs() < 1e-12);
    }
}
