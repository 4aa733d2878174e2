//! How much is lost, how wet and how dense is what is left? Ranges of the rates, and their draws.

use heapwright_numerics::{Stream, at_weight, split_triangular_weight};
use heapwright_quantity::Range;

use super::{ELEMENTS, Known};
use crate::mixture::DRAWS;

/// Of the degradable part of the organic matter so much is gone in finished compost. Together with
/// [`RESISTANT_GONE`] an estimate, so that mixed kitchen and garden stuff loses 40 to 70 % of its
/// organic matter (recalled from Haug 1993 and Breitenbeck and Schellinger 2004).
const DEGRADED: Range = Range {
    low: 0.7,
    typical: 0.9,
    high: 0.98,
};
/// Of the rest, lignin and what it shields, so much: fungi take it in months where methane makers
/// do not.
const RESISTANT_GONE: Range = Range {
    low: 0.1,
    typical: 0.25,
    high: 0.45,
};
/// Stuff of which less than this is degradable, of its organic matter, is inert by degrees: char.
const INERT_BELOW: f64 = 0.1;
/// Moisture of finished compost, wet basis.
///
/// Source: Penn State's laboratory guide, 40 to 50 % preferred; small heaps in New York 24 to 72 %.
const MOISTURE: Range = Range {
    low: 0.35,
    typical: 0.5,
    high: 0.65,
};
/// Bulk density of finished compost [kg/m3].
///
/// Source: recalled, usual 500 to 750, 600 in planning.
const DENSITY_KG_M3: Range = Range {
    low: 450.0,
    typical: 600.0,
    high: 800.0,
};
/// Share of the volume that passes a sieve of some 10 mm; it holds back 10 to 30 %.
///
/// Source: recalled, common practice.
const SIEVED: Range = Range {
    low: 0.7,
    typical: 0.8,
    high: 0.9,
};
/// Of that loss so much is washed out, in the rain and under a roof. Estimates.
const WASHED_OF_LOST: (Range, Range) = (
    Range {
        low: 0.0,
        typical: 0.1,
        high: 0.3,
    },
    Range {
        low: 0.0,
        typical: 0.02,
        high: 0.08,
    },
);
/// Share of the potassium that is washed out, in the rain and under a roof.
///
/// Source: recalled from Sommer 2001 and Eghball 1997 for rained-on heaps, 0 to 30 %, shaky; under a
/// roof an estimate.
const POTASSIUM_WASHED: (Range, Range) = (
    Range {
        low: 0.0,
        typical: 0.1,
        high: 0.3,
    },
    Range {
        low: 0.0,
        typical: 0.02,
        high: 0.08,
    },
);
/// Share of a heap's nitrogen that is lost until it is finished, by C:N at the start: low, typical,
/// high. Between the rows straight.
///
/// Source: the band of section 3.6 of the dossier of the heap's simulation, from eleven systems
/// (poultry manure after Kirchmann and Witter 1989, household waste over 590 days, home bins after
/// Andersen 2011 and others); the first row for home bins.
const NITROGEN_LOST: [(f64, f64, f64, f64); 5] = [
    (15.0, 0.30, 0.45, 0.65),
    (20.0, 0.25, 0.375, 0.50),
    (25.0, 0.15, 0.30, 0.45),
    (30.0, 0.08, 0.215, 0.35),
    (40.0, 0.03, 0.14, 0.25),
];
/// Draws of the rates that belong to no material.
pub(super) struct Rates {
    degraded: Figure,
    resistant: Figure,
    moisture: Figure,
    moisture_known: bool,
    density: Figure,
    volume: Option<Figure>,
    sieved: Figure,
    ash: Option<Figure>,
    measured: [Option<Figure>; ELEMENTS],
    nitrogen: Figure,
    washed: Figure,
    potassium: Figure,
}

/// A range with the weights of its draws.
struct Figure {
    range: Range,
    weights: Vec<f64>,
}

impl Figure {
    fn new(name: &str, range: Range, seed: u64) -> Self {
        let mut weights = Stream::new(seed, &format!("finish/{name}")).uniforms(DRAWS);
        for weight in &mut weights {
            *weight = split_triangular_weight(*weight);
        }
        Self { range, weights }
    }

    fn at(&self, draw: Option<usize>) -> f64 {
        let weight = draw.map_or(0.0, |draw| self.weights[draw]);
        at_weight(self.range.low, self.range.typical, self.range.high, weight)
    }
}

/// One draw of the rates.
pub(super) struct RatesAt {
    degraded: f64,
    resistant: f64,
    pub(super) moisture: f64,
    pub(super) moisture_known: bool,
    pub(super) density: f64,
    pub(super) volume: Option<f64>,
    pub(super) sieved: f64,
    pub(super) ash: Option<f64>,
    pub(super) measured: [Option<f64>; ELEMENTS],
    /// -1 at the low end of the band, 1 at its high end.
    pub(super) nitrogen: f64,
    pub(super) washed: f64,
    pub(super) potassium: f64,
}

impl Rates {
    pub(super) fn new(known: &Known, seed: u64) -> Self {
        let figure = |name: &str, range| Figure::new(name, range, seed);
        let by_rain = |(wet, dry): (Range, Range)| if known.rained_on { wet } else { dry };
        Self {
            degraded: figure("degraded", DEGRADED),
            resistant: figure("resistant", RESISTANT_GONE),
            moisture: figure("moisture", known.moisture_wet_basis.unwrap_or(MOISTURE)),
            moisture_known: known.moisture_wet_basis.is_some(),
            density: figure("density", DENSITY_KG_M3),
            volume: known.volume_m3.map(|range| figure("volume", range)),
            sieved: figure("sieved", known.sieved_share.unwrap_or(SIEVED)),
            ash: known.ash_dry_basis.map(|range| figure("ash", range)),
            measured: std::array::from_fn(|index| {
                known.measured[index].map(|range| figure(&format!("measured/{index}"), range))
            }),
            nitrogen: figure(
                "nitrogen",
                Range {
                    low: -1.0,
                    typical: 0.0,
                    high: 1.0,
                },
            ),
            washed: figure("washed", by_rain(WASHED_OF_LOST)),
            potassium: figure("potassium", by_rain(POTASSIUM_WASHED)),
        }
    }

    pub(super) fn at(&self, draw: Option<usize>) -> RatesAt {
        let maybe = |figure: &Option<Figure>| figure.as_ref().map(|figure| figure.at(draw));
        RatesAt {
            degraded: self.degraded.at(draw),
            resistant: self.resistant.at(draw),
            moisture: self.moisture.at(draw),
            moisture_known: self.moisture_known,
            density: self.density.at(draw),
            volume: maybe(&self.volume),
            sieved: self.sieved.at(draw),
            ash: maybe(&self.ash),
            measured: std::array::from_fn(|index| maybe(&self.measured[index])),
            nitrogen: self.nitrogen.at(draw),
            washed: self.washed.at(draw),
            potassium: self.potassium.at(draw),
        }
    }
}

impl RatesAt {
    /// Organic matter gone when finished [kg], of so much of which so much is degradable.
    pub(super) fn gone_kg(&self, organic_kg: f64, degradable_kg: f64) -> f64 {
        if organic_kg <= 0.0 {
            return 0.0;
        }
        let degradable = degradable_kg.clamp(0.0, organic_kg);
        let alive = (degradable / organic_kg / INERT_BELOW).min(1.0);
        degradable * self.degraded + (organic_kg - degradable) * self.resistant * alive
    }
}

/// Share of the nitrogen that is lost until it is finished: the band's low end at weight -1, its
/// high end at 1.
pub(super) fn nitrogen_lost(carbon_to_nitrogen: f64, weight: f64) -> f64 {
    let [first, .., last] = NITROGEN_LOST;
    let ratio = if carbon_to_nitrogen.is_finite() {
        carbon_to_nitrogen.clamp(first.0, last.0)
    } else {
        last.0
    };
    let (mut low, mut typical, mut high) = (last.1, last.2, last.3);
    for pair in NITROGEN_LOST.windows(2) {
        let (one, other) = (pair[0], pair[1]);
        if ratio <= other.0 {
            let share = (ratio - one.0) / (other.0 - one.0);
            let at = |from: f64, to: f64| from + (to - from) * share.max(0.0);
            (low, typical, high) = (at(one.1, other.1), at(one.2, other.2), at(one.3, other.3));
            break;
        }
    }
    at_weight(low, typical, high, weight)
}
