//! Browns that run out at the keeper's own pace.

use heapwright_catalogue::Catalogue;
use heapwright_engine::mixture::typical_totals;
use heapwright_garden::{Found, Garden, Stated, Stuff};
use heapwright_journal::{AmountSaid, Moment};
use heapwright_quantity::Amount;
use heapwright_state::{Shelf, ShelfKey, State};
use heapwright_terms::MaterialId;

use super::limits::{BROWN, STORE_LASTS_D, USE_OVER_D};
use super::need::{Because, Need, Urgency, What};
use crate::forecast::days_between;

/// A pace is told from no fewer days than this [d].
const LEAST_DAYS_D: f64 = 7.0;

/// Stores of browns that are used up or soon will be.
pub(super) fn stores(
    catalogue: &Catalogue,
    garden: &Garden,
    state: &State,
    now: Moment,
) -> Vec<Need> {
    state
        .stores()
        .shelves
        .iter()
        .filter_map(|(key, shelf)| of_shelf(catalogue, garden, key, shelf, now))
        .collect()
}

fn of_shelf(
    catalogue: &Catalogue,
    garden: &Garden,
    key: &ShelfKey,
    shelf: &Shelf,
    now: Moment,
) -> Option<Need> {
    let material = MaterialId(key.material.clone());
    let totals = |amount: Amount| {
        let found = Found {
            stuff: Stuff::Known {
                material: material.clone(),
                conditions: key.conditions.clone(),
                stated: Stated::default(),
            },
            amount,
        };
        let part = garden.find(catalogue, &found).ok()?;
        Some(typical_totals(&[part.part], 0.0))
    };
    let kilograms = |amount: Amount| totals(amount).map(|totals| totals.wet_mass_kg);
    let one = AmountSaid {
        count: 1.0,
        unit: shelf.unit.clone()?,
    };
    let brown = totals(one.amount())?;
    if brown.carbon_kg < BROWN * brown.nitrogen_kg || brown.carbon_kg <= 0.0 {
        return None;
    }
    let ago_d = |at: Moment| days_between(at.instant_ms, now.instant_ms);
    let mut used_kg = 0.0;
    for (at, said) in &shelf.went {
        if (0.0..=USE_OVER_D).contains(&ago_d(*at)) {
            used_kg += kilograms(said.amount())?;
        }
    }
    if used_kg <= 0.0 {
        return None;
    }
    // What went before the last counting is not known any more.
    let known_d = shelf
        .counted
        .as_ref()
        .map_or(USE_OVER_D, |(at, _)| ago_d(*at));
    let per_day_kg = used_kg / known_d.clamp(LEAST_DAYS_D, USE_OVER_D);
    let stock = garden
        .stores
        .iter()
        .find(|stock| stock.material == material && stock.conditions == key.conditions);
    let left = stock.and_then(|stock| stock.amount.clone());
    let because = match &left {
        None => Because::UsedUp,
        Some(left) => Because::RunsOut {
            days: kilograms(left.clone())? / per_day_kg,
        },
    };
    if matches!(because, Because::RunsOut { days } if days >= STORE_LASTS_D) {
        return None;
    }
    Some(Need {
        heap: None,
        what: What::Restock {
            material,
            conditions: key.conditions.clone(),
            left,
        },
        because: vec![because],
        urgency: Urgency::Whenever,
        due: None,
        entry: None,
        cautions: Vec::new(),
    })
}
