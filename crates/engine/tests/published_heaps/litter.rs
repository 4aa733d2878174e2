//! Household waste with litters for 590 days: what is left of carbon and of nitrogen.

use heapwright_engine::heap::{Charge, FeedClass};

use crate::harness::{Row, above_zero, validation};
use crate::heap_cases::{
    built, cube, dry_kg, grained, kitchen, material, packed, run, together, wetted,
};
use crate::setup::{COARSE, correlation, seasons};

/// The litters of the source; peat, which is no feed of this model, is left out.
const LITTERS: [Option<FeedClass>; 5] = [
    None,
    Some(FeedClass::Straw),
    Some(FeedClass::Leaves),
    Some(FeedClass::Wood),
    Some(FeedClass::Paper),
];

/// 120 kg of waste with 60 kg of litter: the amounts are assumed.
fn waste_with(litter: Option<FeedClass>) -> Charge {
    let mut parts = vec![kitchen(120.0)];
    if let Some(class) = litter {
        parts.push(material(class, 60.0, 0.2, 0.06, 0.006));
    }
    grained(packed(wetted(together(&parts), 0.62), 450.0), 1.0)
}

pub fn rows() -> Vec<Row> {
    [carbon(), nitrogen()].concat()
}

fn carbon() -> Vec<Row> {
    let c10 = validation("C10", "Eklind and Kirchmann 2000, part I");
    let points = LITTERS.map(|litter| {
        let charge = waste_with(litter);
        let slow = charge.slow_kg / (dry_kg(&charge) - charge.ash_kg);
        let side = charge.volume_m3.cbrt();
        let run = run(&built(cube(side), 20.0, charge, 590.0));
        (slow, 100.0 - run.summary.carbon_loss_pct)
    });
    let left = points.map(|point| point.1);
    vec![
        c10.row(
            "carbon left and slow matter fed: correlation",
            "R² 0.91 with lignin",
            0.8..=1.0,
            correlation(&points),
        ),
        c10.row(
            "least carbon left of five mixtures [%]",
            "11 to 61",
            11.0..=61.0,
            left.iter().fold(f64::MAX, |a, b| a.min(*b)),
        ),
        c10.row(
            "most carbon left of five mixtures [%]",
            "11 to 61",
            11.0..=61.0,
            left.iter().fold(f64::MIN, |a, b| a.max(*b)),
        ),
        c10.row(
            "carbon left with wood less that without litter [points]",
            "more with wood",
            above_zero(),
            left[3] - left[0],
        ),
    ]
}

/// The same in the open: rain of 600 mm a year and air from 0 to 16 degrees, assumed after
/// the sources' country.
fn nitrogen() -> Vec<Row> {
    let c11 = validation("C11", "Eklind and Kirchmann 2000, part II");
    let lost = LITTERS.map(|litter| {
        let charge = waste_with(litter);
        let side = charge.volume_m3.cbrt();
        let mut case = built(cube(side), 8.0, charge, 590.0);
        case.weather = seasons(8.0, 8.0, 600.0, 120.0, 590.0);
        case.model = COARSE;
        run(&case).summary.nitrogen_loss_pct
    });
    let with = &lost[1..];
    vec![
        c11.row(
            "nitrogen lost without litter, with rain [%]",
            "70",
            50.0..=80.0,
            lost[0],
        ),
        c11.row(
            "least nitrogen lost with a litter [%]",
            "43 to 62",
            25.0..=70.0,
            with.iter().fold(f64::MAX, |a, b| a.min(*b)),
        ),
        c11.row(
            "most nitrogen lost with a litter [%]",
            "43 to 62",
            25.0..=70.0,
            with.iter().fold(f64::MIN, |a, b| a.max(*b)),
        ),
        c11.row(
            "nitrogen lost without litter less the most with one [points]",
            "8",
            above_zero(),
            lost[0] - with.iter().fold(f64::MIN, |a, b| a.max(*b)),
        ),
    ]
}
