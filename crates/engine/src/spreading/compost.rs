//! What is in a litre of compost, and how much of that is there for plants?

use heapwright_numerics::{Stream, at_weight, outer_deciles, split_triangular_weight};
use heapwright_quantity::{Interval, Range};

use super::nitrogen;
use super::rules::Rules;

/// Compost as it is spread. Shares of the dry matter, as elements.
#[derive(Clone, Debug, PartialEq)]
pub struct Compost {
    /// Moisture, wet basis.
    pub moisture_wet_basis: Range,
    /// Bulk density as spread [kg/m3].
    pub bulk_density_kg_m3: Range,
    /// Nitrogen.
    pub nitrogen_dry_basis: Range,
    /// Phosphorus.
    pub phosphorus_dry_basis: Range,
    /// Potassium.
    pub potassium_dry_basis: Range,
    /// Calcium.
    pub calcium_dry_basis: Range,
    /// Magnesium.
    pub magnesium_dry_basis: Range,
    /// Conductivity of an extract [dS/m].
    pub conductivity_ds_m: Range,
    /// C:N, where it was measured.
    pub carbon_to_nitrogen: Option<f64>,
    /// Nitrate and ammonium nitrogen over all nitrogen, where measured.
    pub mineral_nitrogen_share: Option<f64>,
}

/// What one cubic metre of compost brings [kg/m3], as elements.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Brought<T> {
    /// Mass as spread.
    pub wet_mass: T,
    /// Dry matter.
    pub dry_mass: T,
    /// All nitrogen.
    pub nitrogen: T,
    /// Nitrogen that is there for plants in the first year.
    pub nitrogen_first_year: T,
    /// All phosphorus.
    pub phosphorus: T,
    /// Phosphorus that is there in the first year.
    pub phosphorus_first_year: T,
    /// All potassium.
    pub potassium: T,
    /// Potassium that is there in the first year.
    pub potassium_first_year: T,
    /// Calcium: it counts as lime.
    pub calcium: T,
    /// Magnesium: it counts as lime.
    pub magnesium: T,
}

/// How many figures that are.
const FIGURES: usize = 10;
/// How many draws stand behind an interval; see `crate::mixture`.
const DRAWS: usize = 1024;

impl Compost {
    /// Share of all nitrogen that is there in the first year.
    #[must_use]
    pub fn first_year_nitrogen(&self, rules: &Rules) -> Range {
        let measured = self.mineral_nitrogen_share.map(Range::exact);
        match (self.carbon_to_nitrogen, measured) {
            (Some(ratio), mineral) => nitrogen::first_year_share(
                &rules.organic_marks,
                ratio,
                mineral.unwrap_or(rules.mineral_share),
                rules.organic_spread,
            ),
            (None, Some(mineral)) => {
                // What is mineral is there at once; the usual share of the rest comes with it.
                let of = |share: f64| mineral.typical + (1.0 - mineral.typical) * share;
                let usual = rules.nitrogen_first_year;
                Range {
                    low: of(usual.low),
                    typical: of(usual.typical),
                    high: of(usual.high),
                }
            }
            (None, None) => rules.nitrogen_first_year,
        }
    }

    /// What a cubic metre brings at typical values.
    #[must_use]
    pub fn typical(&self, rules: &Rules) -> Brought<f64> {
        let first = self.first_year_nitrogen(rules);
        let (figures, shares) = self.ranges(rules, first);
        brought(
            figures.map(|range| range.typical),
            shares.map(|range| range.typical),
        )
    }

    /// The same with an 80 % interval, from draws of all figures under `seed`.
    #[must_use]
    pub fn brought(&self, rules: &Rules, seed: u64) -> Brought<Interval> {
        const NAMES: [&str; 10] = [
            "density",
            "moisture",
            "nitrogen",
            "phosphorus",
            "potassium",
            "calcium",
            "magnesium",
            "first nitrogen",
            "first phosphorus",
            "first potassium",
        ];
        let first = self.first_year_nitrogen(rules);
        let (figures, shares) = self.ranges(rules, first);
        let all: Vec<Range> = figures.iter().chain(&shares).copied().collect();
        let draws: Vec<Vec<f64>> = all
            .iter()
            .zip(NAMES)
            .map(|(range, name)| {
                Stream::new(seed, &format!("compost spread/{name}"))
                    .uniforms(DRAWS)
                    .into_iter()
                    .map(|u| {
                        at_weight(
                            range.low,
                            range.typical,
                            range.high,
                            split_triangular_weight(u),
                        )
                    })
                    .collect()
            })
            .collect();
        let mut columns: [Vec<f64>; FIGURES] = std::array::from_fn(|_| Vec::with_capacity(DRAWS));
        let ones = (0..DRAWS).map(|draw| {
            brought(
                std::array::from_fn(|figure| draws[figure][draw]),
                std::array::from_fn(|share| draws[7 + share][draw]),
            )
        });
        for one in ones {
            for (column, value) in columns.iter_mut().zip(one.values()) {
                column.push(value);
            }
        }
        let typical = self.typical(rules).values();
        let mut intervals = columns.iter_mut().zip(typical).map(|(column, value)| {
            outer_deciles(column).map_or(Interval::exact(value), |(low, high)| Interval {
                value,
                low: low.min(value),
                high: high.max(value),
            })
        });
        let mut next = || intervals.next().unwrap_or(Interval::exact(0.0));
        Brought {
            wet_mass: next(),
            dry_mass: next(),
            nitrogen: next(),
            nitrogen_first_year: next(),
            phosphorus: next(),
            phosphorus_first_year: next(),
            potassium: next(),
            potassium_first_year: next(),
            calcium: next(),
            magnesium: next(),
        }
    }

    fn ranges(&self, rules: &Rules, first_nitrogen: Range) -> ([Range; 7], [Range; 3]) {
        (
            [
                self.bulk_density_kg_m3,
                self.moisture_wet_basis,
                self.nitrogen_dry_basis,
                self.phosphorus_dry_basis,
                self.potassium_dry_basis,
                self.calcium_dry_basis,
                self.magnesium_dry_basis,
            ],
            [
                first_nitrogen,
                rules.phosphorus_first_year,
                rules.potassium_first_year,
            ],
        )
    }
}

fn brought(figures: [f64; 7], shares: [f64; 3]) -> Brought<f64> {
    let [
        density,
        moisture,
        nitrogen,
        phosphorus,
        potassium,
        calcium,
        magnesium,
    ] = figures;
    let dry = density * (1.0 - moisture);
    Brought {
        wet_mass: density,
        dry_mass: dry,
        nitrogen: dry * nitrogen,
        nitrogen_first_year: dry * nitrogen * shares[0],
        phosphorus: dry * phosphorus,
        phosphorus_first_year: dry * phosphorus * shares[1],
        potassium: dry * potassium,
        potassium_first_year: dry * potassium * shares[2],
        calcium: dry * calcium,
        magnesium: dry * magnesium,
    }
}

impl Brought<f64> {
    fn values(&self) -> [f64; FIGURES] {
        [
            self.wet_mass,
            self.dry_mass,
            self.nitrogen,
            self.nitrogen_first_year,
            self.phosphorus,
            self.phosphorus_first_year,
            self.potassium,
            self.potassium_first_year,
            self.calcium,
            self.magnesium,
        ]
    }
}

impl Brought<Interval> {
    /// What a volume brings, or a depth to each square metre.
    #[must_use]
    pub fn times(&self, amount: f64) -> Self {
        Self {
            wet_mass: self.wet_mass.scaled(amount),
            dry_mass: self.dry_mass.scaled(amount),
            nitrogen: self.nitrogen.scaled(amount),
            nitrogen_first_year: times(self.nitrogen_first_year, amount),
            phosphorus: self.phosphorus.scaled(amount),
            phosphorus_first_year: self.phosphorus_first_year.scaled(amount),
            potassium: self.potassium.scaled(amount),
            potassium_first_year: self.potassium_first_year.scaled(amount),
            calcium: self.calcium.scaled(amount),
            magnesium: self.magnesium.scaled(amount),
        }
    }
}

/// What can lie below nothing, where nitrogen is tied up.
fn times(interval: Interval, amount: f64) -> Interval {
    Interval {
        value: interval.value * amount,
        low: interval.low * amount,
        high: interval.high * amount,
    }
}
