//! Beds and compost as the journal has them.

use heapwright_catalogue::{Catalogue, Spreading};
use heapwright_engine::spreading::bed::{Maturity, Soil};
use heapwright_garden::Garden;
use heapwright_journal::content::{Feeding, Laboratory, Tested};
use heapwright_journal::{AmountSaid, Content, EventId, Moment};
use heapwright_quantity::Range;
use heapwright_state::State;
use heapwright_terms::{Caution, Group, PartAmount};

use super::{BedAsked, CompostAsked, DressingAsked, compost_of_tables};
use crate::{MixQuestion, QuestionError, USUAL_TARGET, what_is_in};

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

/// The compost of a heap: its own tests where there are any, else the usual figures; what was
/// taken out and not spread, else what may come of what is in it.
///
/// # Errors
///
/// When what went in cannot be used.
pub fn compost_of_heap(
    catalogue: &Catalogue,
    spreading: &Spreading,
    garden: &Garden,
    state: &State,
    heap: EventId,
) -> Result<FromJournal, QuestionError> {
    let mut asked = compost_of_tables(spreading);
    let mut taken_out_m3 = None;
    let density = asked.compost.bulk_density_kg_m3.typical;
    if let Some(heap) = state.heap(heap) {
        for event in heap.history() {
            match event.content() {
                Some(Content::Tested(tested)) => take_test(spreading, &mut asked, tested),
                Some(Content::Harvested(harvested)) => {
                    let amount = harvested.amount.as_ref();
                    if let Some(volume) =
                        amount.and_then(|amount| volume_m3(catalogue, garden, amount, density))
                    {
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
    let (parts, water_kg) = garden.parts_of(catalogue, state, &state.contents(heap));
    let mut in_it_m3 = None;
    if !parts.is_empty() {
        let answer = what_is_in(
            catalogue,
            garden,
            &MixQuestion {
                parts,
                water_kg,
                target: USUAL_TARGET,
            },
        )?;
        let raw = |group: Group| matches!(group, Group::AnimalManure | Group::AnimalProduct);
        asked.held_raw = Some(answer.parts.iter().any(|part| {
            part.cautions().contains(&Caution::PathogenRisk)
                || part
                    .material
                    .as_ref()
                    .is_some_and(|material| raw(material.group))
        }));
        in_it_m3 = answer
            .mixture
            .volume_m3
            .map(|volume| volume.value * spreading.range("yield.volume_share").typical);
    }
    let left_m3 = taken_out_m3.map(|taken| (taken - spread_m3).max(0.0));
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

/// Takes the figures of a test in; a later test goes before an earlier one.
fn take_test(spreading: &Spreading, asked: &mut CompostAsked, tested: &Tested) {
    let compost = &mut asked.compost;
    if let Some(laboratory) = &tested.laboratory {
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
        } = **laboratory;
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
                asked.is_measured = true;
            }
        }
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
            let mineral = ammonium_nitrogen_mg_kg_dry.unwrap_or(0.0)
                + nitrate_nitrogen_mg_kg_dry.unwrap_or(0.0);
            let all = compost.nitrogen_dry_basis.typical;
            compost.mineral_nitrogen_share = (all > 0.0).then(|| (mineral * 1e-6 / all).min(1.0));
        }
    }
    if let Some(found) = maturity(spreading, tested) {
        asked.maturity = found;
    }
}

/// What a test says of maturity; `None` when it says nothing.
fn maturity(spreading: &Spreading, tested: &Tested) -> Option<Maturity> {
    let limit = |key: &str| spreading.range(&format!("immature.{key}")).typical;
    let mut signs: Vec<bool> = Vec::new();
    if let Some(heating) = &tested.self_heating {
        signs.push(heating.highest_c - heating.room_c <= limit("self_heating"));
    }
    if let Some(sown) = &tested.germination {
        let share = |sprouted: u32, sown: u32| f64::from(sprouted) / f64::from(sown.max(1));
        let control = share(sown.control_sprouted, sown.control_sown);
        if control > 0.0 {
            signs.push(share(sown.sprouted, sown.sown) / control >= limit("germination"));
        }
    }
    if let Some(bag) = &tested.bag {
        signs.push(!bag.swollen);
    }
    let ratio = tested
        .laboratory
        .as_ref()
        .and_then(|found| found.cn_ratio_measured);
    // A high C:N tells of immaturity; a low one tells nothing.
    if ratio.is_some_and(|ratio| ratio > limit("carbon_to_nitrogen")) {
        signs.push(false);
    }
    if signs.is_empty() {
        return None;
    }
    Some(if signs.iter().all(|mature| *mature) {
        Maturity::Mature
    } else {
        Maturity::Immature
    })
}
