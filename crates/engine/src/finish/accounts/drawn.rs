//! The account of one draw: sums of mass, lot by lot.

use super::rates::{RatesAt, nitrogen_lost};
use super::{ELEMENTS, Lot};
use crate::mixture::{self, Totals};

/// One element in one draw [kg].
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Sums {
    pub(super) fed: f64,
    pub(super) gas: f64,
    pub(super) leached: f64,
    pub(super) now: f64,
}

impl Sums {
    fn add(&mut self, fed: f64, gas_share: f64, leached_share: f64) {
        self.fed += fed;
        self.gas += fed * gas_share;
        self.leached += fed * leached_share;
        self.now += fed * (1.0 - gas_share - leached_share);
    }

    pub(super) fn closure(&self) -> f64 {
        if self.fed > 0.0 {
            (self.fed - self.gas - self.leached - self.now).abs() / self.fed
        } else {
            0.0
        }
    }
}

/// The whole in one draw.
pub(super) struct Drawn {
    pub(super) fed_wet: f64,
    pub(super) fed_dry: f64,
    pub(super) dry_of_lots: Vec<f64>,
    pub(super) ash: f64,
    pub(super) dry: f64,
    pub(super) wet: f64,
    pub(super) volume: f64,
    pub(super) sieved: f64,
    pub(super) carbon: f64,
    pub(super) brought: Vec<[Option<f64>; ELEMENTS]>,
    pub(super) elements: [Sums; ELEMENTS],
    pub(super) measured: [Option<f64>; ELEMENTS],
    pub(super) ash_too_low: bool,
}

impl Drawn {
    pub(super) fn new(
        lots: &[Lot],
        brought: &[Totals],
        water_kg: f64,
        rates: &RatesAt,
    ) -> Option<Self> {
        let mut fed = Totals::default();
        for totals in brought {
            fed.add(totals, 1.0);
        }
        let fed_dry = fed.dry_mass_kg;
        if fed_dry <= 0.0 || !fed_dry.is_finite() {
            return None;
        }
        // Matter gone, lot by lot, and how far the whole has come by dry matter.
        let (mut gone, mut through) = (0.0, 0.0);
        for (lot, totals) in lots.iter().zip(brought) {
            let organic = (totals.dry_mass_kg - totals.ash_kg).max(0.0);
            gone += rates.gone_kg(organic, totals.biodegradable_kg) * lot.progress;
            through += totals.dry_mass_kg * lot.progress;
        }
        through /= fed_dry;
        let by_ash = rates.ash.map(|ash| fed.ash_kg / ash);
        let ash_too_low = by_ash.is_some_and(|dry| dry > fed_dry);
        // Never more than went in, never less than its ash.
        let dry = by_ash.map_or(fed_dry - gone, |dry| dry.clamp(fed.ash_kg, fed_dry));
        let fed_wet = fed.wet_mass_kg + water_kg;
        let fed_moisture = (fed_wet - fed_dry) / fed_wet;
        let between = |fresh: f64, finished: f64| fresh + (finished - fresh) * through;
        let moisture = if rates.moisture_known {
            rates.moisture
        } else {
            between(fed_moisture, rates.moisture)
        };
        let wet = dry / (1.0 - moisture.min(0.98));
        let fresh_density = fed
            .volume_m3
            .filter(|volume| *volume > 0.0)
            .map_or(rates.density, |volume| fed.wet_mass_kg / volume);
        let volume = rates
            .volume
            .unwrap_or_else(|| wet / between(fresh_density, rates.density));
        let organic_fed = (fed_dry - fed.ash_kg).max(0.0);
        let organic_left = (dry - fed.ash_kg).max(0.0);
        let carbon = if organic_fed > 0.0 {
            fed.carbon_measured_kg * organic_left / organic_fed
        } else {
            0.0
        };
        let lost = nitrogen_lost(fed.carbon_kg / fed.nitrogen_kg, rates.nitrogen);
        let mut elements = [Sums::default(); ELEMENTS];
        let brought_of_lots: Vec<[Option<f64>; ELEMENTS]> = brought
            .iter()
            .map(|totals| {
                let minerals = totals.minerals;
                [
                    Some(totals.nitrogen_kg),
                    minerals[mixture::PHOSPHORUS],
                    minerals[mixture::POTASSIUM],
                    minerals[mixture::CALCIUM],
                    minerals[mixture::MAGNESIUM],
                ]
            })
            .collect();
        for (lot, found) in lots.iter().zip(&brought_of_lots) {
            let lost = lost * lot.progress;
            let washed = lost * rates.washed;
            let potassium = rates.potassium * lot.progress;
            let shares = [
                (lost - washed, washed),
                (0.0, 0.0),
                (0.0, potassium),
                (0.0, 0.0),
                (0.0, 0.0),
            ];
            for (index, (gas, leached)) in shares.into_iter().enumerate() {
                if let Some(mass) = found[index] {
                    elements[index].add(mass, gas, leached);
                }
            }
        }
        Some(Self {
            fed_wet,
            fed_dry,
            dry_of_lots: brought.iter().map(|totals| totals.dry_mass_kg).collect(),
            ash: fed.ash_kg,
            dry,
            wet,
            volume,
            sieved: rates.sieved,
            carbon,
            brought: brought_of_lots,
            elements,
            measured: rates.measured.map(|share| share.map(|share| share * dry)),
            ash_too_low,
        })
    }

    pub(super) fn organic_loss(&self) -> f64 {
        let fed = self.fed_dry - self.ash;
        if fed > 0.0 {
            (self.fed_dry - self.dry) / fed
        } else {
            0.0
        }
    }
}
