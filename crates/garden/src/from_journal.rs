//! The garden and what lies in its heaps, as its journal has them.

use heapwright_catalogue::Catalogue;
use heapwright_journal::content::{CustomPart, Figure, MaterialDefined, MaterialMeasured, PartFed};
use heapwright_journal::{AmountSaid, Content, Moment};
use heapwright_quantity::{Amount, Unit};
use heapwright_state::{Contents, Shelf, ShelfKey, State};
use heapwright_terms::{MaterialId, PartAmount};

use crate::{
    Calibration, Custom, Found, Garden, Given, Observation, Observed, OwnMaterial, Stated, Stock,
    Stuff,
};

/// Less than this counts as gone: a tenth of a litre, or as many kilograms of what has no known
/// density.
const GONE_M3: f64 = 1e-4;
const GONE_KG: f64 = 0.1;

impl Garden {
    /// The garden at a moment. Definitions that this catalogue cannot use are left out: a newer
    /// program may have made them.
    #[must_use]
    pub fn from_state(catalogue: &Catalogue, state: &State, at: Moment) -> Self {
        let now = state.garden();
        let mut garden = Self {
            name: now.name.clone().unwrap_or_default(),
            invented: now.invented,
            ..Self::default()
        };
        for measure in now.measures.keys() {
            if let Some(volume_l) = now.volume_l(measure, at) {
                garden.calibrations.push(Calibration {
                    measure: measure.clone(),
                    volume_m3: volume_l / 1000.0,
                });
            }
        }
        garden.own_materials.extend(
            now.materials
                .values()
                .filter_map(|defined| own_material(defined).material(catalogue).ok()),
        );
        for (when, measured) in &now.measurements {
            let then_over_now = measured.weighed_measure.as_ref().map_or(1.0, |weighed| {
                garden.then_over_now(catalogue, state, &weighed.measure.amount().unit, *when)
            });
            let observed = observed(catalogue, &garden, measured, then_over_now);
            garden.observations.extend(observed);
        }
        for (key, shelf) in &state.stores().shelves {
            garden
                .stores
                .extend(stock(catalogue, &garden, state, key, shelf));
        }
        garden
    }

    /// What went into a heap as parts, alike ones together, and the water that was poured with it
    /// [kg].
    #[must_use]
    pub fn parts_of(
        &self,
        catalogue: &Catalogue,
        state: &State,
        contents: &Contents,
    ) -> (Vec<Found>, f64) {
        let mut parts: Vec<Found> = Vec::new();
        let mut water_kg = 0.0;
        for one in &contents.shares {
            let fed = match one.event.content() {
                Some(Content::Fed(fed)) => fed,
                Some(Content::Watered(watered)) => {
                    water_kg += watered.water_l * one.share;
                    continue;
                }
                _ => continue,
            };
            water_kg += fed.water_l.unwrap_or(0.0) * one.share;
            for part in &fed.parts {
                let mut found = found(part);
                found.amount.count *= one.share
                    * self.then_over_now(catalogue, state, &found.amount.unit, one.event.happened);
                let alike = parts.iter_mut().find(|other| {
                    other.stuff == found.stuff && other.amount.unit == found.amount.unit
                });
                match alike {
                    Some(other) => other.amount.count += found.amount.count,
                    None => parts.push(found),
                }
            }
        }
        (parts, water_kg)
    }

    /// What a vessel held at a moment over what it holds now: one that was replaced or weighed anew
    /// has its own volume for each feed.
    fn then_over_now(&self, catalogue: &Catalogue, state: &State, unit: &Unit, at: Moment) -> f64 {
        let Unit::Measure(id) = unit else { return 1.0 };
        let (Some(then_l), Some(now)) = (
            state.garden().volume_l(id, at),
            self.filling_m3(catalogue, id),
        ) else {
            return 1.0;
        };
        then_l / 1000.0 / now.typical
    }

    /// The typical volume of an amount of some stuff [m3]; `None` when it is not known.
    fn volume_m3(&self, catalogue: &Catalogue, stuff: &Stuff, amount: &Amount) -> Option<f64> {
        match self.part_amount(catalogue, amount).ok()? {
            PartAmount::VolumeM3 { count, each_m3, .. } => Some(count * each_m3.typical),
            PartAmount::MassKg(mass_kg) => {
                let (ingredient, _, _) = self.ingredient(catalogue, stuff, &mut Vec::new()).ok()?;
                Some(mass_kg / ingredient.bulk_density_kg_m3?.typical)
            }
        }
    }
}

/// A part of a feed, as the keeper meant it.
#[must_use]
pub fn found(part: &PartFed) -> Found {
    let share = |pct: Option<f64>| pct.map(|pct| pct / 100.0);
    let stuff = match &part.custom {
        Some(own) => Stuff::Custom(custom(own)),
        None => Stuff::Known {
            material: MaterialId(part.material.clone().unwrap_or_default()),
            conditions: part.conditions.clone(),
            stated: Stated {
                moisture_wet_basis: share(part.moisture_pct),
                nitrogen_dry_basis: share(part.nitrogen_pct_dry),
                carbon_to_nitrogen: part.cn_ratio,
                bulk_density_kg_m3: part.bulk_density_kg_m3,
            },
        },
    };
    Found {
        stuff,
        amount: part.amount.amount(),
    }
}

/// A part as it is written into the journal.
#[must_use]
pub fn part_fed(found: &Found, from_stores: bool) -> PartFed {
    let pct = |share: Option<f64>| share.map(|share| share * 100.0);
    let mut part = PartFed {
        material: None,
        custom: None,
        amount: AmountSaid::from(&found.amount),
        conditions: Vec::new(),
        moisture_pct: None,
        nitrogen_pct_dry: None,
        cn_ratio: None,
        bulk_density_kg_m3: None,
        from_stores,
    };
    match &found.stuff {
        Stuff::Known {
            material,
            conditions,
            stated,
        } => {
            part.material = Some(material.as_str().to_owned());
            part.conditions.clone_from(conditions);
            part.moisture_pct = pct(stated.moisture_wet_basis);
            part.nitrogen_pct_dry = pct(stated.nitrogen_dry_basis);
            part.cn_ratio = stated.carbon_to_nitrogen;
            part.bulk_density_kg_m3 = stated.bulk_density_kg_m3;
        }
        Stuff::Custom(own) => {
            part.custom = Some(CustomPart {
                name: own.name.clone(),
                moisture_pct: own.moisture_wet_basis * 100.0,
                carbon_pct_dry: pct(own.carbon_dry_basis),
                nitrogen_pct_dry: pct(own.nitrogen_dry_basis),
                cn_ratio: own.carbon_to_nitrogen,
                bulk_density_kg_m3: own.bulk_density_kg_m3,
                ash_pct_dry: pct(own.ash_dry_basis),
                phosphorus_pct_dry: pct(own.phosphorus_dry_basis),
                potassium_pct_dry: pct(own.potassium_dry_basis),
                calcium_pct_dry: pct(own.calcium_dry_basis),
                magnesium_pct_dry: pct(own.magnesium_dry_basis),
                sodium_pct_dry: pct(own.sodium_dry_basis),
            });
        }
    }
    part
}

fn custom(own: &CustomPart) -> Custom {
    let share = |pct: Option<f64>| pct.map(|pct| pct / 100.0);
    Custom {
        name: own.name.clone(),
        moisture_wet_basis: own.moisture_pct / 100.0,
        carbon_dry_basis: share(own.carbon_pct_dry),
        nitrogen_dry_basis: share(own.nitrogen_pct_dry),
        carbon_to_nitrogen: own.cn_ratio,
        bulk_density_kg_m3: own.bulk_density_kg_m3,
        ash_dry_basis: share(own.ash_pct_dry),
        phosphorus_dry_basis: share(own.phosphorus_pct_dry),
        potassium_dry_basis: share(own.potassium_pct_dry),
        calcium_dry_basis: share(own.calcium_pct_dry),
        magnesium_dry_basis: share(own.magnesium_pct_dry),
        sodium_dry_basis: share(own.sodium_pct_dry),
    }
}

fn own_material(defined: &MaterialDefined) -> OwnMaterial {
    let given = |figure: Option<Figure>| {
        figure.map(|figure| match figure {
            Figure::One(value) => Given::One(value),
            Figure::Three(values) => Given::Three(values),
        })
    };
    OwnMaterial {
        id: defined.material.clone(),
        name: defined.name.clone(),
        like: MaterialId(defined.like.clone()),
        moisture_pct: given(defined.moisture_pct),
        nitrogen_pct_dry: given(defined.nitrogen_pct_dry),
        cn_ratio_measured: given(defined.cn_ratio_measured),
        bulk_density_kg_m3: given(defined.bulk_density_kg_m3),
    }
}

fn observed(
    catalogue: &Catalogue,
    garden: &Garden,
    measured: &MaterialMeasured,
    then_over_now: f64,
) -> Vec<Observation> {
    let mut all = Vec::new();
    if let Some(laboratory) = &measured.laboratory {
        let share = |pct: Option<f64>| pct.map(|pct| pct / 100.0);
        all.extend(share(laboratory.moisture_pct).map(Observed::MoistureWetBasis));
        all.extend(share(laboratory.nitrogen_pct_dry).map(Observed::NitrogenDryBasis));
        all.extend(
            laboratory
                .cn_ratio_measured
                .map(Observed::CarbonToNitrogenMeasured),
        );
    }
    if let Some(sample) = measured.dried_sample {
        all.push(Observed::DriedSample {
            wet_kg: sample.wet_kg,
            dry_kg: sample.dry_kg,
        });
    }
    if let Some(weighed) = &measured.weighed_measure
        && let Ok(PartAmount::VolumeM3 { count, each_m3, .. }) =
            garden.part_amount(catalogue, &weighed.measure.amount())
    {
        all.push(Observed::WeighedMeasure {
            full_kg: weighed.full_kg,
            empty_kg: weighed.empty_kg,
            volume_m3: count * each_m3.typical * then_over_now,
        });
    }
    all.into_iter()
        .filter(Observed::is_possible)
        .map(|observed| Observation {
            material: MaterialId(measured.material.clone()),
            observed,
        })
        .collect()
}

/// What is left on a shelf, in the unit in which it was put there last; `None` when it is empty or
/// of something that is not known. More than was written down may be taken, but there is never less
/// than nothing: what came later is there.
fn stock(
    catalogue: &Catalogue,
    garden: &Garden,
    state: &State,
    key: &ShelfKey,
    shelf: &Shelf,
) -> Option<Stock> {
    let material = MaterialId(key.material.clone());
    garden.material(catalogue, &material)?;
    let stuff = Stuff::Known {
        material: material.clone(),
        conditions: key.conditions.clone(),
        stated: Stated::default(),
    };
    let one = AmountSaid {
        count: 1.0,
        unit: shelf.unit.clone()?,
    }
    .amount();
    let (one_size, gone) = match garden.volume_m3(catalogue, &stuff, &one) {
        Some(one_m3) => (one_m3, GONE_M3),
        None => (one.kilograms()?, GONE_KG),
    };
    let by_volume = gone == GONE_M3;
    let size = |said: &AmountSaid, at: Moment| {
        let amount = said.amount();
        let size = if by_volume {
            garden.volume_m3(catalogue, &stuff, &amount)
        } else {
            amount.kilograms()
        };
        size.unwrap_or(0.0) * garden.then_over_now(catalogue, state, &amount.unit, at)
    };
    let mut there = match &shelf.counted {
        Some((at, Some(said))) => size(said, *at),
        _ => 0.0,
    };
    let mut changes: Vec<(Moment, bool, &AmountSaid)> = (shelf.came.iter())
        .map(|(at, said)| (*at, false, said))
        .chain(shelf.went.iter().map(|(at, said)| (*at, true, said)))
        .collect();
    // What came at the same instant came first.
    changes.sort_by_key(|(at, went, _)| (at.instant_ms, *went));
    for (at, went, said) in changes {
        let change = size(said, at);
        there = if went {
            (there - change).max(0.0)
        } else {
            there + change
        };
    }
    let count = there / one_size;
    (there >= gone).then(|| Stock {
        material,
        conditions: key.conditions.clone(),
        scoop: shelf.scoop.as_ref().map_or_else(
            || match &one.unit {
                Unit::Measure(_) => one.clone(),
                // By weight or volume any amount can be taken; a bucket is how it is carried.
                _ => Amount {
                    count: 1.0,
                    unit: Unit::Measure("bucket".to_owned()),
                },
            },
            AmountSaid::amount,
        ),
        amount: Some(Amount {
            count,
            unit: one.unit,
        }),
    })
}
