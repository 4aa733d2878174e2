//! 88 bin batches of food waste from an island community, none of which set a parameter.
//!
//! Lytras and others 2024, "Development of a model composting process for food waste in an
//! island community", Waste and Biomass Valorization, doi 10.1007/s12649-024-02697-9; open data
//! (table `compost.csv` of the repository vaslyb/compost, commit f8ee4ae, Apache-2.0). The table
//! is not part of the project: it is read from the shared reference folder beside it, and
//! where that is absent the batches count as skipped.
//!
//! Known: feeds, mean air temperature, duration. Assumed, alike for all: bins with a lid, just
//! large enough for the feed at 450 kg/m3; turned every ten days, not watered; the moistures of
//! the feeds as handbooks give them, which make mixtures of 55 to 65 %. The walls are not
//! published and decide how much dries: boards and foam are both simulated, neither is chosen.

use std::io::Write;

use heapwright_engine::heap::{Case, Charge, Cover, FeedClass, Wall};

use crate::harness::{Experiment, Row, at_least, at_most, validation};
use crate::heap_cases::{
    built, grained, kitchen, leaves, material, packed, run, together, turned, wet_kg,
};
use crate::setup::{bin, correlation, days_from};

/// One line of the data: masses [kg], temperatures [degrees Celsius], days.
struct Batch {
    biowaste: f64,
    prunings: f64,
    recycled: f64,
    sawdust: f64,
    leaves: f64,
    air: f64,
    highest: f64,
    mean: f64,
    days: f64,
    product: f64,
}

const TABLE: &str = concat!(
    env!("CARGO_MANIFEST_DIR"),
    "/../../../shared/reference/data/compost_batches_apache2_lytras2024.csv"
);

/// True when the open data lies beside the project.
pub fn at_hand() -> bool {
    std::path::Path::new(TABLE).exists()
}

/// The numbers of a line; half of the table has decimal commas, in quotes.
fn numbers(line: &str) -> Vec<f64> {
    let mut quoted = false;
    let plain: String = line
        .chars()
        .filter_map(|letter| match letter {
            '"' => {
                quoted = !quoted;
                None
            }
            ',' if quoted => Some('.'),
            ',' => Some(';'),
            other => Some(other),
        })
        .collect();
    let number = |value: &str| value.trim().parse().unwrap();
    plain.split(';').map(number).collect()
}

fn batches() -> Vec<Batch> {
    std::fs::read_to_string(TABLE)
        .unwrap()
        .lines()
        .skip(1)
        .map(|line| {
            let values = numbers(line);
            Batch {
                biowaste: values[1],
                prunings: values[2],
                recycled: values[3],
                sawdust: values[4],
                leaves: values[5],
                air: values[6],
                mean: values[7],
                highest: values[8],
                days: values[9],
                product: values[10],
            }
        })
        .collect()
}

impl Batch {
    fn fed_kg(&self) -> f64 {
        self.biowaste + self.prunings + self.recycled + self.sawdust + self.leaves
    }

    fn charge(&self) -> Charge {
        // Prunings are half woody, half leafy.
        let mixed = together(&[
            kitchen(self.biowaste),
            material(FeedClass::Wood, 0.5 * self.prunings, 0.40, 0.03, 0.005),
            material(FeedClass::Leaves, 0.5 * self.prunings, 0.40, 0.07, 0.012),
            material(FeedClass::Finished, self.recycled, 0.40, 0.40, 0.018),
            material(FeedClass::Wood, self.sawdust, 0.10, 0.01, 0.002),
            leaves(self.leaves),
        ]);
        grained(packed(mixed, 450.0), 0.8)
    }

    fn case(&self, wall: Wall) -> Case {
        let charge = self.charge();
        let enclosure = bin(charge.volume_m3.cbrt(), wall, Cover::Lid);
        let case = built(enclosure, self.air, charge, self.days);
        turned(case, &days_from(10.0, 10.0, self.days))
    }
}

/// What a simulated batch and the real one come to.
struct Pair {
    highest: (f64, f64),
    excess: (f64, f64),
    product_pct: (f64, f64),
}

fn pair(batch: &Batch, wall: Wall) -> Pair {
    let run = run(&batch.case(wall));
    let mean = run
        .series
        .iter()
        .map(|row| row.core_temperature_c)
        .sum::<f64>()
        / run.series.len() as f64;
    let left = 100.0 * run.left.wet_kg / wet_kg(&batch.charge());
    Pair {
        highest: (run.summary.peak_core_temperature_c, batch.highest),
        excess: (mean - batch.air, batch.mean - batch.air),
        product_pct: (left, 100.0 * batch.product / batch.fed_kg()),
    }
}

fn quantile(mut values: Vec<f64>, share: f64) -> f64 {
    values.sort_by(f64::total_cmp);
    let place = share * (values.len() - 1) as f64;
    let low = place as usize;
    let high = (low + 1).min(values.len() - 1);
    values[low] + (values[high] - values[low]) * (place - low as f64)
}

/// Spearman's correlation: equal values share their mean rank.
fn rank_correlation(pairs: &[(f64, f64)]) -> f64 {
    let rank = |of: fn(&(f64, f64)) -> f64, value: f64| {
        let below = pairs.iter().filter(|pair| of(pair) < value).count();
        let equal = pairs.iter().filter(|pair| of(pair) == value).count();
        below as f64 + 0.5 * (equal as f64 - 1.0)
    };
    let ranks: Vec<(f64, f64)> = pairs
        .iter()
        .map(|pair| (rank(|p| p.0, pair.0), rank(|p| p.1, pair.1)))
        .collect();
    correlation(&ranks)
}

fn share_pct(values: &[f64], inside: impl Fn(f64) -> bool) -> f64 {
    100.0 * values.iter().filter(|value| inside(**value)).count() as f64 / values.len() as f64
}

const LYTRAS: &str = "Lytras and others 2024, open data";

/// In bins of boards.
pub fn rows_of_boards() -> Vec<Row> {
    rows(validation("J5 boards", LYTRAS), Wall::Wood)
}

/// In bins of foam.
pub fn rows_of_foam() -> Vec<Row> {
    rows(validation("J5 foam", LYTRAS), Wall::Insulated)
}

/// Rank correlation that 88 pairs without relation exceed one time in twenty.
const BEYOND_CHANCE: f64 = 0.21;

fn rows(lytras: Experiment, wall: Wall) -> Vec<Row> {
    if !at_hand() {
        let told = "skipped: the open data of the batches is not at hand";
        let _ = writeln!(std::io::stderr(), "{told} ({TABLE})");
        return Vec::new();
    }
    let pairs: Vec<Pair> = batches().iter().map(|batch| pair(batch, wall)).collect();
    assert_eq!(pairs.len(), 88);
    let highest: Vec<(f64, f64)> = pairs.iter().map(|pair| pair.highest).collect();
    let excess: Vec<(f64, f64)> = pairs.iter().map(|pair| pair.excess).collect();
    let product: Vec<(f64, f64)> = pairs.iter().map(|pair| pair.product_pct).collect();
    let simulated = |of: &[(f64, f64)]| of.iter().map(|pair| pair.0).collect::<Vec<f64>>();
    let apart =
        |of: &[(f64, f64)]| quantile(of.iter().map(|pair| (pair.0 - pair.1).abs()).collect(), 0.5);
    vec![
        lytras.row(
            "share of 88 batches that reach 55 °C [%]",
            "95",
            at_least(90.0),
            share_pct(&simulated(&highest), |t| t >= 55.0),
        ),
        lytras.row(
            "share of batches with a highest temperature of 51 to 90 °C [%]",
            "100",
            at_least(90.0),
            share_pct(&simulated(&highest), |t| (51.0..=90.0).contains(&t)),
        ),
        lytras.row(
            "median of the highest temperatures [°C]",
            "72, four fifths 63 to 79",
            63.0..=79.0,
            quantile(simulated(&highest), 0.5),
        ),
        lytras.row(
            "median of the mean rise of the core over the air [K]",
            "26, four fifths 19 to 38",
            19.0..=38.0,
            quantile(simulated(&excess), 0.5),
        ),
        lytras.row(
            "median of the product [% of feed]",
            "35, four fifths 27 to 43",
            27.0..=43.0,
            quantile(simulated(&product), 0.5),
        ),
        lytras.row(
            "share of batches with a product of 17 to 57 % [%]",
            "100",
            at_least(90.0),
            share_pct(&simulated(&product), |share| (17.0..=57.0).contains(&share)),
        ),
        // To tell one batch from another, an error must be below that of always saying the
        // median of the measured ones.
        lytras.row(
            "median error of the highest temperature [K]",
            "median alone: 4",
            at_most(4.0),
            apart(&highest),
        ),
        lytras.row(
            "median error of the product [points]",
            "median alone: 5.4",
            at_most(5.4),
            apart(&product),
        ),
        lytras.row(
            "order of the highest temperatures: rank correlation",
            "beyond chance: 0.21",
            BEYOND_CHANCE..=1.0,
            rank_correlation(&highest),
        ),
        lytras.row(
            "order of the mean rises: rank correlation",
            "beyond chance: 0.21",
            BEYOND_CHANCE..=1.0,
            rank_correlation(&excess),
        ),
        lytras.row(
            "order of the products: rank correlation",
            "beyond chance: 0.21",
            BEYOND_CHANCE..=1.0,
            rank_correlation(&product),
        ),
    ]
}

#[test]
fn ranks_and_quantiles_are_what_they_are() {
    assert_eq!(
        rank_correlation(&[(1.0, 10.0), (2.0, 20.0), (3.0, 90.0)]),
        1.0
    );
    assert_eq!(
        rank_correlation(&[(1.0, 9.0), (2.0, 5.0), (3.0, 1.0)]),
        -1.0
    );
    assert_eq!(quantile(vec![3.0, 1.0, 2.0], 0.5), 2.0);
    assert_eq!(quantile(vec![3.0, 1.0], 0.25), 1.5);
}
