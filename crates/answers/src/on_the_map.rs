//! Where does the mixture lie between green and brown, dry and wet, and where would one more scoop move it?

use heapwright_catalogue::Catalogue;
use heapwright_engine::mixture::{self, Totals};
use heapwright_garden::{FoundPart, Garden};
use heapwright_terms::{Part, Target};

use crate::question::{QuestionError, SEED};
use crate::what_to_add::{InReach, units_of_reach};

/// How many dots a cloud has: enough to see its shape, few enough to see through it.
const DOTS: usize = 240;

/// A place on the map.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MapPoint {
    /// C:N, handbook scale.
    pub carbon_to_nitrogen: f64,
    /// Moisture, wet basis [kg/kg].
    pub moisture_wet_basis: f64,
}

/// Where one more scoop of something would move the mixture.
#[derive(Clone, Debug, PartialEq)]
pub struct Move {
    /// The scoop, as it was found.
    pub scoop: FoundPart,
    /// Where the mixture would lie then.
    pub to: MapPoint,
}

/// The mix map's data.
#[derive(Clone, Debug, PartialEq)]
pub struct OnTheMap {
    /// What is in hand, by itself; `None` when it has no C:N or there is nothing.
    pub in_hand: Option<MapPoint>,
    /// The mixture; `None` when it has no C:N or there is nothing.
    pub mixture: Option<MapPoint>,
    /// Where it may lie instead: one point a draw.
    pub cloud: Vec<MapPoint>,
    /// Where one more scoop of each thing in reach would move it, in the order of the reach.
    pub moves: Vec<Move>,
    /// The region that is aimed at.
    pub target: Target,
}

/// Places a mixture on the map.
///
/// `in_hand` is what was there first, `added` and `water_kg` what a recipe puts
/// with it. Fails when something in reach cannot be used.
pub fn on_the_map(
    catalogue: &Catalogue,
    garden: &Garden,
    (in_hand, added, water_kg): (&[FoundPart], &[FoundPart], f64),
    reach: &[InReach],
    target: Target,
) -> Result<OnTheMap, QuestionError> {
    let engine_parts = |parts: &[FoundPart]| {
        parts
            .iter()
            .map(|found| found.part.clone())
            .collect::<Vec<Part>>()
    };
    let first = engine_parts(in_hand);
    let all: Vec<Part> = first.iter().cloned().chain(engine_parts(added)).collect();
    let totals = mixture::typical_totals(&all, water_kg);
    let moves = units_of_reach(catalogue, garden, reach)?
        .into_iter()
        .filter_map(|scoop| {
            let mut more = totals.clone();
            more.add(
                &mixture::typical_totals(std::slice::from_ref(&scoop.part), 0.0),
                1.0,
            );
            Some(Move {
                to: point(&more)?,
                scoop,
            })
        })
        .collect();
    Ok(OnTheMap {
        in_hand: point(&mixture::typical_totals(&first, 0.0)),
        mixture: point(&totals),
        cloud: mixture::cloud(&all, water_kg, SEED, DOTS)
            .into_iter()
            .map(|(carbon_to_nitrogen, moisture_wet_basis)| MapPoint {
                carbon_to_nitrogen,
                moisture_wet_basis,
            })
            .collect(),
        moves,
        target,
    })
}

fn point(totals: &Totals) -> Option<MapPoint> {
    (totals.nitrogen_kg > 0.0).then(|| MapPoint {
        carbon_to_nitrogen: totals.carbon_kg / totals.nitrogen_kg,
        moisture_wet_basis: totals.moisture_wet_basis(),
    })
}
