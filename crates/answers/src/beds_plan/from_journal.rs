//! Beds and compost as the journal has them.

use heapwright_catalogue::{Catalogue, Spreading};
use heapwright_engine::spreading::bed::Soil;
use heapwright_garden::Garden;
use heapwright_journal::content::{Feeding, Harvested, Laboratory};
use heapwright_journal::{AmountSaid, Content, EventId, Moment};
use heapwright_quantity::Range;
use heapwright_state::State;
use heapwright_terms::PartAmount;

use super::batch::Batches;
use super::{BedAsked, CompostAsked, DressingAsked, compost_of_tables, off_food};
use crate::QuestionError;
use crate::lots::{Until, inside};
use crate::yields::yields;

const MILLISECONDS_PER_YEAR: f64 = 365.25 * 86_400_000.0;

/// Compost of a heap.
#[derive(Clone, Debug, PartialEq)]
pub struct FromJournal {
    /// The compost.
    pub compost: CompostAsked,
    /// How much there is [m3]; `None` when the journal does not tell.
    pub volume_m3: Option<f64>,
    /// True when that is an estimate from what went in.
    pub is_estimated: bool,
}

/// Every bed that was described, in the order of the state.
#[must_use]
pub fn beds_of_journal(
    catalogue: &Catalogue,
    spreading: &Spreading,
    garden: &Garden,
    state: &State,
    now: Moment,
) -> Vec<BedAsked> {
    let density = spreading.range("compost.bulk_density").typical;
    state
        .beds()
        .filter_map(|bed| {
            let described = bed.now().described.as_ref()?;
            let soil = described.soil.unwrap_or_default();
            let share = |mg_kg: Option<f64>| mg_kg.map(|mg_kg| mg_kg * 1e-6);
            let dressings = bed.now().dressings.iter().filter_map(|(when, spread)| {
                Some(DressingAsked {
                    years_ago: years_between(*when, now)?,
                    volume_m3: volume_m3(catalogue, garden, &spread.amount, density)?,
                })
            });
            Some(BedAsked {
                name: described.name.clone(),
                area_m2: described.area_m2,
                crop: described.crop.clone(),
                feeding: described.feeding.and_then(feeding).map(str::to_owned),
                new_ground: described.new_ground,
                soil: Soil {
                    phosphorus: share(soil.phosphorus_mg_kg),
                    potassium: share(soil.potassium_mg_kg),
                    conductivity_ds_m: soil.conductivity_ds_m,
                },
                sown_in_days: None,
                harvest_in_days: None,
                dressings: dressings.collect(),
            })
        })
        .collect()
}

fn feeding(said: Feeding) -> Option<&'static str> {
    match said {
        Feeding::Light => Some("light"),
        Feeding::Medium => Some("medium"),
        Feeding::Heavy => Some("heavy"),
        Feeding::Other => None,
    }
}

/// Years from one moment to another; `None` for what lies ahead.
fn years_between(then: Moment, now: Moment) -> Option<f64> {
    #[allow(clippy::cast_precision_loss)] // milliseconds of centuries lie far below 2^52
    let years = (now.instant_ms - then.instant_ms) as f64 / MILLISECONDS_PER_YEAR;
    (years >= 0.0).then_some(years)
}

/// The volume of an amount of compost [m3]; `None` for a measure that is not known.
fn volume_m3(
    catalogue: &Catalogue,
    garden: &Garden,
    amount: &AmountSaid,
    density_kg_m3: f64,
) -> Option<f64> {
    Some(
        match garden.part_amount(catalogue, &amount.amount()).ok()? {
            PartAmount::VolumeM3 { count, each_m3, .. } => count * each_m3.typical,
            PartAmount::MassKg(mass_kg) => mass_kg / density_kg_m3,
        },
    )
}

/// The compost of a heap: the tests of its batch where there are any, else the usual figures; what
/// was taken out and not spread, else what may come of what is in it.
///
/// # Errors
///
/// When a test of its compost cannot be read.
pub fn compost_of_heap(
    catalogue: &Catalogue,
    spreading: &Spreading,
    garden: &Garden,
    state: &State,
    heap: EventId,
    now: Moment,
) -> Result<FromJournal, QuestionError> {
    let mut asked = compost_of_tables(spreading);
    let (batches, left_m3) = batches_of_heap(catalogue, spreading, garden, state, heap, now);
    asked.held_raw = batches.held_raw(catalogue, garden);
    asked.off_food = off_food::of_heap(catalogue, garden, state, heap, &batches);
    asked.maturity = batches.maturity(state, heap, now)?;
    for tested in batches.tests() {
        if let Some(laboratory) = &tested.laboratory {
            take_laboratory(&mut asked, laboratory);
        }
    }
    // The same account that says how much compost there will be when it is finished.
    let there = inside(state, heap, Until::Instant(now.instant_ms));
    let in_it_m3 = yields(catalogue, garden, state, heap, &there, now)
        .map(|expected| expected.volume_m3.value);
    Ok(match left_m3 {
        Some(left) if left > 0.0 => FromJournal {
            compost: asked,
            volume_m3: Some(left),
            is_estimated: false,
        },
        _ => FromJournal {
            compost: asked,
            volume_m3: in_it_m3,
            is_estimated: true,
        },
    })
}

/// The batches that the compost of a heap may be of, and how much was taken out and not spread [m3];
/// `None` when the journal does not tell.
pub(super) fn batches_of_heap(
    catalogue: &Catalogue,
    spreading: &Spreading,
    garden: &Garden,
    state: &State,
    heap: EventId,
    now: Moment,
) -> (Batches, Option<f64>) {
    let mut taken_out_m3 = None;
    let density = spreading.range("compost.bulk_density").typical;
    let harvested_m3 = |harvested: &Harvested| {
        let amount = harvested.amount.as_ref()?;
        volume_m3(catalogue, garden, amount, density)
    };
    if let Some(found) = state.heap(heap) {
        for event in found.history() {
            match event.content() {
                Some(Content::Harvested(harvested)) if harvested.heap == heap => {
                    if let Some(volume) = harvested_m3(harvested) {
                        *taken_out_m3.get_or_insert(0.0) += volume;
                    }
                }
                _ => {}
            }
        }
    }
    let spread_m3: f64 = state
        .beds()
        .flat_map(|bed| &bed.now().dressings)
        .filter(|(_, spread)| spread.heap == Some(heap))
        .filter_map(|(_, spread)| volume_m3(catalogue, garden, &spread.amount, density))
        .sum();
    let left_m3 = taken_out_m3.map(|taken: f64| (taken - spread_m3).max(0.0));
    let batches = Batches::of(state, heap, now, left_m3.unwrap_or(0.0), &harvested_m3);
    (batches, left_m3)
}

/// Takes the figures of a laboratory in; later ones go before earlier ones.
fn take_laboratory(asked: &mut CompostAsked, laboratory: &Laboratory) {
    let compost = &mut asked.compost;
    let Laboratory {
        moisture_pct,
        nitrogen_pct_dry,
        cn_ratio_measured,
        phosphorus_pct_dry,
        potassium_pct_dry,
        calcium_pct_dry,
        magnesium_pct_dry,
        conductivity_ds_m,
        ammonium_nitrogen_mg_kg_dry,
        nitrate_nitrogen_mg_kg_dry,
        carbon_pct_dry,
        ..
    } = *laboratory;
    for (figure, found) in [
        (&mut compost.moisture_wet_basis, moisture_pct),
        (&mut compost.nitrogen_dry_basis, nitrogen_pct_dry),
        (&mut compost.phosphorus_dry_basis, phosphorus_pct_dry),
        (&mut compost.potassium_dry_basis, potassium_pct_dry),
        (&mut compost.calcium_dry_basis, calcium_pct_dry),
        (&mut compost.magnesium_dry_basis, magnesium_pct_dry),
    ] {
        if let Some(pct) = found {
            *figure = Range::exact(pct / 100.0);
        }
    }
    asked.is_measured |= [nitrogen_pct_dry, phosphorus_pct_dry, potassium_pct_dry]
        .iter()
        .any(Option::is_some);
    if let Some(found) = conductivity_ds_m {
        compost.conductivity_ds_m = Range::exact(found);
    }
    let from_carbon = carbon_pct_dry
        .zip(nitrogen_pct_dry)
        .filter(|(_, nitrogen)| *nitrogen > 0.0)
        .map(|(carbon, nitrogen)| carbon / nitrogen);
    compost.carbon_to_nitrogen = cn_ratio_measured
        .or(from_carbon)
        .or(compost.carbon_to_nitrogen);
    if ammonium_nitrogen_mg_kg_dry.is_some() || nitrate_nitrogen_mg_kg_dry.is_some() {
        let mineral =
            ammonium_nitrogen_mg_kg_dry.unwrap_or(0.0) + nitrate_nitrogen_mg_kg_dry.unwrap_or(0.0);
        let all = compost.nitrogen_dry_basis.typical;
        compost.mineral_nitrogen_share = (all > 0.0).then(|| (mineral * 1e-6 / all).min(1.0));
    }
}
