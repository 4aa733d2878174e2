//! What does a bed need this year, and how deep a layer may it have?
//!
//! Every limit is told with the depth that it allows, so that the least one can be named.

use heapwright_quantity::Range;
use heapwright_terms::{CropNeed, EdiblePart, SaltTolerance};

use super::compost::{Brought, Compost};
use super::nitrogen::{self, Later};
use super::rules::Rules;
use super::salt;

/// What a test of the soil said.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Soil {
    /// Phosphorus that plants can take up [kg/kg].
    pub phosphorus: Option<f64>,
    /// Potassium that plants can take up [kg/kg].
    pub potassium: Option<f64>,
    /// Conductivity of the saturation extract [dS/m].
    pub conductivity_ds_m: Option<f64>,
}

/// Compost that was spread before.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dressing {
    /// How long ago [years of 365.25 d], 0 or more.
    pub age_years: f64,
    /// How deep [m].
    pub depth_m: f64,
}

/// A bed.
#[derive(Clone, Debug, PartialEq)]
pub struct Bed {
    /// Area [m2], above 0.
    pub area_m2: f64,
    /// What its crop needs in a year.
    pub need: CropNeed,
    /// The salt that the crop bears; `None` when it is not known.
    pub salt: Option<SaltTolerance>,
    /// What is eaten of it.
    pub part: EdiblePart,
    /// True when food grows there, in this year or another.
    pub is_for_food: bool,
    /// True when the crop needs acid soil.
    pub likes_acid: bool,
    /// True for ground that was not dug and fed before.
    pub new_ground: bool,
    /// What a test of the soil said.
    pub soil: Soil,
    /// Days until something is sown or planted there; `None` when nothing is to be.
    pub sown_in_days: Option<f64>,
    /// Days until the harvest; `None` when it is not known.
    pub harvest_in_days: Option<f64>,
    /// What was spread before.
    pub dressings: Vec<Dressing>,
}

/// Is the compost mature?
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Maturity {
    /// A test said so, or the keeper.
    Mature,
    /// A test said that it is not.
    Immature,
    /// No test, or none that decides.
    #[default]
    Unknown,
}

/// What the compost is besides its figures.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct State {
    /// Is it mature?
    pub maturity: Maturity,
    /// True when raw manure or the like went in, and no heat was shown to have dealt with it.
    /// `None` when that is not known: then what touches soil has to wait all the same.
    pub held_raw: Option<bool>,
    /// True when something went in that never goes on beds where food grows.
    pub off_food_beds: bool,
}

/// A limit of a bed's layer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum BedLimit {
    /// Food grows there, and something went in that never goes on such beds.
    FoodBed,
    /// The crop needs acid soil.
    Acid,
    /// Raw matter, and the harvest comes before the waiting time ends.
    Waiting,
    /// Not known whether raw matter went in, and the harvest of what touches soil comes too soon.
    RawUnknown,
    /// Immature, and seeds or seedlings come too soon.
    Immature,
    /// Not shown to be mature, and seeds or seedlings come soon.
    MaturityUnknown,
    /// The salt that the crop bears.
    Salt,
    /// Phosphorus that the crops of the window do not take away.
    Phosphorus,
    /// Nitrogen that the crop can use in the first year.
    Nitrogen,
    /// The usual depth on a bed.
    Depth,
}

/// The depth that a limit allows [m]; infinite where it does not bind at all.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Allowed {
    /// Which limit.
    pub limit: BedLimit,
    /// How deep a layer it allows now [m].
    pub depth_m: f64,
}

/// What earlier dressings still bring this year, and what they used up [kg/m2], [m].
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Carried {
    /// Nitrogen that is there this year.
    pub nitrogen_kg_m2: f64,
    /// Phosphorus that is there this year.
    pub phosphorus_kg_m2: f64,
    /// Potassium that is there this year.
    pub potassium_kg_m2: f64,
    /// All phosphorus spread within the window.
    pub phosphorus_in_window_kg_m2: f64,
    /// Depth spread within the last year.
    pub depth_this_year_m: f64,
}

/// A bed weighed up.
#[derive(Clone, Debug, PartialEq)]
pub struct Weighed {
    /// What the crop needs after the soil test.
    pub need: CropNeed,
    /// What earlier dressings bring and used up.
    pub carried: Carried,
    /// Every limit, in the order of [`BedLimit`].
    pub allowed: Vec<Allowed>,
    /// Days to wait between spreading and harvest; `None` where there is nothing to wait for.
    pub wait_days: Option<f64>,
}

impl Weighed {
    /// The limit that allows least; the first in the order of [`BedLimit`] among equals.
    #[must_use]
    pub fn tightest(&self) -> Option<Allowed> {
        self.allowed
            .iter()
            .copied()
            .min_by(|one, other| one.depth_m.total_cmp(&other.depth_m))
    }

    /// The deepest layer that all limits allow [m].
    #[must_use]
    pub fn most_depth_m(&self) -> f64 {
        self.tightest().map_or(0.0, |allowed| allowed.depth_m)
    }
}

/// Weighs a bed up for a compost.
#[must_use]
pub fn weigh(bed: &Bed, compost: &Compost, state: State, rules: &Rules) -> Weighed {
    let per_m3 = compost.typical(rules);
    let carried = carried(&bed.dressings, &per_m3, compost, rules);
    let need = need(bed, rules);
    let is_barred = bed.is_for_food && state.off_food_beds;
    let wait_days = match (bed.part, state.held_raw) {
        // No wait makes it fit for food.
        _ if is_barred => None,
        (EdiblePart::TouchesSoil, Some(true) | None) => Some(rules.waiting_touching_days),
        (EdiblePart::ClearOfSoil, Some(true)) => Some(rules.waiting_clear_days),
        _ => None,
    };
    let none_when = |barred: bool| if barred { 0.0 } else { f64::INFINITY };
    let too_early = wait_days
        .zip(bed.harvest_in_days)
        .is_some_and(|(wait, harvest)| harvest < wait);
    let sown_soon = bed
        .sown_in_days
        .is_some_and(|days| days < rules.immature_days);
    let salt_m = bed.salt.map_or(f64::INFINITY, |tolerance| {
        let soil = bed
            .soil
            .conductivity_ds_m
            .unwrap_or(rules.soil_conductivity_ds_m);
        salt::most_depth_m(
            soil,
            compost.conductivity_ds_m.typical,
            tolerance.threshold_ds_m,
            rules.dug_m,
        ) - carried.depth_this_year_m
    });
    let ratio = |room: f64, per: f64| if per > 0.0 { room / per } else { f64::INFINITY };
    let depth = if bed.new_ground {
        rules.new_ground_depth_m
    } else {
        rules.established_depth_m
    };
    let allowed = [
        (BedLimit::FoodBed, none_when(is_barred)),
        (BedLimit::Acid, none_when(bed.likes_acid)),
        (
            BedLimit::Waiting,
            none_when(too_early && state.held_raw.is_some()),
        ),
        (
            BedLimit::RawUnknown,
            none_when(too_early && state.held_raw.is_none()),
        ),
        (
            BedLimit::Immature,
            none_when(sown_soon && state.maturity == Maturity::Immature),
        ),
        (
            BedLimit::MaturityUnknown,
            none_when(sown_soon && state.maturity == Maturity::Unknown),
        ),
        (BedLimit::Salt, salt_m),
        (
            BedLimit::Phosphorus,
            ratio(
                phosphorus_room_kg_m2(bed, rules) - carried.phosphorus_in_window_kg_m2,
                per_m3.phosphorus,
            ),
        ),
        (
            BedLimit::Nitrogen,
            ratio(
                need.nitrogen_kg_m2.high - carried.nitrogen_kg_m2,
                per_m3.nitrogen_first_year,
            ),
        ),
        (BedLimit::Depth, depth - carried.depth_this_year_m),
    ]
    .map(|(limit, depth_m)| Allowed {
        limit,
        depth_m: depth_m.max(0.0),
    })
    .to_vec();
    Weighed {
        need,
        carried,
        allowed,
        wait_days,
    }
}

/// What the crop needs after the soil test.
fn need(bed: &Bed, rules: &Rules) -> CropNeed {
    let mut need = bed.need;
    let above = |found: Option<f64>, limit: f64| found.is_some_and(|found| found > limit);
    if above(bed.soil.phosphorus, rules.high_soil_phosphorus) {
        need.phosphorus_kg_m2 = Range::exact(0.0);
    }
    if above(bed.soil.potassium, rules.high_soil_potassium) {
        need.potassium_kg_m2 = Range::exact(0.0);
    }
    need
}

/// Phosphorus that may be given within the window [kg/m2]: what the crops take away, more where the
/// soil is low in it, one year's only where it is high.
fn phosphorus_room_kg_m2(bed: &Bed, rules: &Rules) -> f64 {
    let yearly = bed.need.phosphorus_kg_m2.typical;
    match bed.soil.phosphorus {
        Some(found) if found > rules.high_soil_phosphorus => yearly,
        Some(found) if found < rules.low_soil_phosphorus => {
            yearly * rules.phosphorus_window_years * rules.phosphorus_build_up
        }
        _ => yearly * rules.phosphorus_window_years,
    }
}

/// What earlier dressings bring: taken as the same compost.
fn carried(
    dressings: &[Dressing],
    per_m3: &Brought<f64>,
    compost: &Compost,
    rules: &Rules,
) -> Carried {
    let first = compost.first_year_nitrogen(rules).typical;
    let later = Later::OfRemaining(rules.nitrogen_later.typical);
    // What is not there in the first year comes within the rest of the window.
    let rest_years = (rules.phosphorus_window_years - 1.0).max(1.0);
    let of_year = |share: f64, age_years: f64| {
        if age_years < 1.0 {
            share
        } else if age_years < rules.phosphorus_window_years {
            (1.0 - share) / rest_years
        } else {
            0.0
        }
    };
    let mut carried = Carried::default();
    for dressing in dressings {
        let (depth, age) = (dressing.depth_m, dressing.age_years.max(0.0));
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // held to 0 to 1000
        let year = age.min(1000.0).floor() as u32 + 1;
        carried.nitrogen_kg_m2 += depth * per_m3.nitrogen * nitrogen::in_year(first, later, year);
        carried.phosphorus_kg_m2 +=
            depth * per_m3.phosphorus * of_year(rules.phosphorus_first_year.typical, age);
        carried.potassium_kg_m2 +=
            depth * per_m3.potassium * of_year(rules.potassium_first_year.typical, age);
        if age < rules.phosphorus_window_years {
            carried.phosphorus_in_window_kg_m2 += depth * per_m3.phosphorus;
        }
        if age < 1.0 {
            carried.depth_this_year_m += depth;
        }
    }
    carried
}
