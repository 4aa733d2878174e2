//! From a material and its condition to an ingredient: every gap filled, every filling named.
//!
//! What is filled in where the table is silent stands in the catalogue's table
//! of assumptions, with its source; here are only the rules of when to use it.

use heapwright_catalogue::{Catalogue, ConditionEffect, group_name};
use heapwright_quantity::Range;
use heapwright_terms::{
    Degradability, Evidence, Group, Ingredient, Material, NitrogenAndCarbon,
    ORGANIC_MATTER_DENSITY_KG_M3, WATER_DENSITY_KG_M3,
};

use crate::error::FoundError;
use crate::stated::{Custom, Stated, checked_share, ratio_has_nitrogen};

/// Something the keeper should know about how a part was understood.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Notice {
    /// Its density is not in the table; that of its group was taken.
    DensityAssumed {
        /// Name of the part.
        name: String,
    },
    /// Its nitrogen and carbon are not counted: soil, ash, lime, char.
    CountsNeither {
        /// Name of the part.
        name: String,
    },
    /// Its figures are estimates with no publication behind them.
    Estimated {
        /// Name of the part.
        name: String,
    },
    /// A condition was named that changes nothing of this material.
    ConditionIgnored {
        /// Name of the part.
        name: String,
        /// Id of the condition.
        condition: String,
    },
    /// A C:N was stated of a material of which neither carbon nor nitrogen is known.
    StatedRatioIgnored {
        /// Name of the part.
        name: String,
    },
}

/// Handbook carbon over measured carbon lies between these for anything that
/// grew as a plant; outside them (urea, shells) the rule "volatile solids over
/// 1.8" means nothing and measured carbon stands. Source: derived, the range over
/// the plant rows of the materials table (0.87 avocado to 1.34 syrup).
const PLANT_LIKE: (f64, f64) = (0.80, 1.35);

/// A spread that is assumed leaves some dry matter. What is stated or measured may be wetter.
const MOST_MOISTURE: f64 = 0.995;

/// The assumption `key` of the catalogue, as a range.
///
/// The build of the catalogue fails when one is missing (its tests ask for each
/// key by group and degradability), so that a missing one here is a bug.
fn assumed(catalogue: &Catalogue, key: &str) -> Range {
    match catalogue.assumption(key) {
        Some(assumption) => assumption.range,
        None => unreachable!("the catalogue holds the assumption {key}"),
    }
}

/// `range`, or the typical figure with the spread assumed where a row gives none.
fn with_spread(range: Range, spread: &Range) -> Range {
    if range.is_exact() && range.typical > 0.0 {
        around(range.typical, spread)
    } else {
        range
    }
}

fn around(typical: f64, spread: &Range) -> Range {
    Range {
        low: typical * spread.low,
        typical,
        high: typical * spread.high,
    }
}

/// The ingredient that a catalogue or own material makes, as found and as stated.
///
/// `conditions` holds each once. Fails when two of them say how wet it is, and when
/// carbon and nitrogen are more than the dry matter.
pub(crate) fn from_material(
    catalogue: &Catalogue,
    material: &Material,
    conditions: &[String],
    stated: &Stated,
    notices: &mut Vec<Notice>,
) -> Result<Ingredient, FoundError> {
    let name = || material.name.clone();
    if material.evidence == Evidence::Estimate {
        notices.push(Notice::Estimated { name: name() });
    }
    let known_moisture = material.moisture_wet_basis.unwrap_or(Range::exact(0.0));
    let table_moisture = with_spread(
        known_moisture,
        &assumed(catalogue, "spread_relative.moisture_wet_basis"),
    )
    .clamped(0.0, known_moisture.high.max(MOST_MOISTURE));
    let table_density = match material.bulk_density_kg_m3 {
        Some(range) => with_spread(range, &assumed(catalogue, "spread_relative.bulk_density")),
        None => {
            if stated.bulk_density_kg_m3.is_none() {
                notices.push(Notice::DensityAssumed { name: name() });
            }
            assumed(
                catalogue,
                &format!("bulk_density_kg_m3.{}", group_name(material.group)),
            )
        }
    };
    let effects: Vec<&ConditionEffect> = conditions
        .iter()
        .filter_map(|condition| {
            let effect = catalogue
                .condition(condition)
                .and_then(|condition| condition.effect_on_id(&material.id, material.group));
            if effect.is_none() {
                notices.push(Notice::ConditionIgnored {
                    name: name(),
                    condition: condition.clone(),
                });
            }
            effect
        })
        .collect();
    let pores_take_water = matches!(
        material.group,
        Group::GardenBrown | Group::Wood | Group::Paper
    );
    let mut naming_moisture = effects
        .iter()
        .filter(|effect| effect.moisture_wet_basis.is_some());
    let named = naming_moisture.next();
    if naming_moisture.next().is_some() {
        return Err(two_moistures(catalogue, material, conditions));
    }
    let named_moisture = named.and_then(|effect| effect.moisture_wet_basis);
    let moisture = match stated.moisture_wet_basis {
        Some(moisture) => Range::exact(moisture),
        None => named_moisture.unwrap_or(table_moisture),
    };
    // Water that fills pores adds mass and no volume: the dry density stands. A
    // condition with a density factor of its own has reckoned with that already.
    let fills_pores = match stated.moisture_wet_basis {
        Some(_) => pores_take_water,
        None => named.is_some_and(|effect| effect.bulk_density_factor.is_none()),
    };
    let density = match stated.bulk_density_kg_m3 {
        Some(density) => Range::exact(density),
        None => {
            let factor = effects
                .iter()
                .filter_map(|effect| effect.bulk_density_factor)
                .fold(Range::exact(1.0), |a, b| Range {
                    low: a.low * b.low,
                    typical: a.typical * b.typical,
                    high: a.high * b.high,
                });
            let wetted = if fills_pores {
                (1.0 - table_moisture.typical) / (1.0 - moisture.typical)
            } else {
                1.0
            };
            let as_it_lies = changed(table_density, factor).scaled(wetted);
            if pores_take_water {
                // Pores that are full take no more: wetter is then no longer heavier.
                as_it_lies.clamped(0.0, saturated_density(moisture.typical))
            } else {
                as_it_lies
            }
        }
    };
    let ash = match material.ash_dry_basis {
        Some(ash) => around(ash, &assumed(catalogue, "spread_relative.ash_dry_basis")),
        None => assumed(
            catalogue,
            &format!("ash_dry_basis.{}", group_name(material.group)),
        ),
    }
    .clamped(0.0, 1.0);
    let stated_ratio = match stated.carbon_to_nitrogen {
        Some(_) if !ratio_can_be_used(material, stated) => {
            notices.push(Notice::StatedRatioIgnored { name: name() });
            None
        }
        ratio => ratio,
    };
    let counted = material.degradability != Degradability::Inert || stated_ratio.is_some();
    if !counted {
        notices.push(Notice::CountsNeither { name: name() });
    }
    let handbook_factor = handbook_over_measured(catalogue, material);
    let nitrogen_and_carbon = if counted {
        let stated = Stated {
            carbon_to_nitrogen: stated_ratio,
            ..*stated
        };
        nitrogen_and_carbon(catalogue, material, &stated, handbook_factor)?
    } else {
        NOT_COUNTED
    };
    let mineral_spread = assumed(catalogue, "spread_relative.minerals_dry_basis");
    let mineral =
        |share: Option<f64>| share.map(|share| around(share, &mineral_spread).clamped(0.0, 1.0));
    Ok(Ingredient {
        identity: material.id.as_str().to_owned(),
        moisture_wet_basis: moisture,
        nitrogen_and_carbon,
        measured_over_handbook_carbon: 1.0 / handbook_factor,
        bulk_density_kg_m3: Some(density),
        density_follows_moisture: pores_take_water,
        biodegradable_dry_basis: biodegradable(catalogue, material, &ash),
        ash_dry_basis: ash,
        phosphorus_dry_basis: mineral(material.phosphorus_dry_basis),
        potassium_dry_basis: mineral(material.potassium_dry_basis),
        calcium_dry_basis: mineral(material.calcium_dry_basis),
        magnesium_dry_basis: mineral(material.magnesium_dry_basis),
        sodium_dry_basis: mineral(material.sodium_dry_basis),
    })
}

/// The density [kg/m3] at which water and solids leave no room for air: the most
/// that stuff of this moisture weighs. Source: `RICHARD04m`.
fn saturated_density(moisture_wet_basis: f64) -> f64 {
    1.0 / (moisture_wet_basis / WATER_DENSITY_KG_M3
        + (1.0 - moisture_wet_basis) / ORGANIC_MATTER_DENSITY_KG_M3)
}

/// The first two of the conditions that say how wet the material is.
fn two_moistures(catalogue: &Catalogue, material: &Material, conditions: &[String]) -> FoundError {
    let mut names = conditions.iter().filter_map(|id| {
        let condition = catalogue.condition(id)?;
        let effect = condition.effect_on_id(&material.id, material.group)?;
        effect.moisture_wet_basis?;
        Some(condition.name.clone())
    });
    FoundError::TwoMoistures {
        first: names.next().unwrap_or_default(),
        second: names.next().unwrap_or_default(),
    }
}

/// True when a stated C:N has carbon or nitrogen to go with.
fn ratio_can_be_used(material: &Material, stated: &Stated) -> bool {
    let carbon = material.carbon_measured_dry_basis.unwrap_or(0.0);
    let nitrogen = material
        .nitrogen_dry_basis
        .map_or(0.0, |range| range.typical);
    stated.nitrogen_dry_basis.is_some() || carbon > 0.0 || nitrogen > 0.0
}

/// A density under a factor that has a range of its own. The table's range is for
/// stuff as it usually lies; a named condition replaces that spread where the
/// factor's own is wider, and never doubles it.
fn changed(density: Range, factor: Range) -> Range {
    if factor.is_exact() {
        return density.scaled(factor.typical);
    }
    let typical = density.typical * factor.typical;
    Range {
        low: (density.typical * factor.low).min(typical),
        typical,
        high: (density.typical * factor.high).max(typical),
    }
}

const NOT_COUNTED: NitrogenAndCarbon = NitrogenAndCarbon {
    nitrogen_dry_basis: Range::exact(0.0),
    carbon_dry_basis_at_low_nitrogen: 0.0,
    carbon_dry_basis_typical: 0.0,
    carbon_dry_basis_at_high_nitrogen: 0.0,
};

/// Handbook carbon over measured carbon of a material: by its ash where that is
/// known, else as its group has it.
///
/// Handbook carbon is (1 - ash) / 1.8. Source: `HAUGm`; decision 0003. Checks: C1, C4.
pub(crate) fn handbook_over_measured(catalogue: &Catalogue, material: &Material) -> f64 {
    let divisor = assumed(catalogue, "handbook_carbon.volatile_solids_over_carbon").typical;
    let factor = match (material.ash_dry_basis, material.carbon_measured_dry_basis) {
        (Some(ash), Some(carbon)) if carbon > 0.0 => (1.0 - ash) / divisor / carbon,
        _ => {
            assumed(
                catalogue,
                &format!(
                    "handbook_over_measured_carbon.{}",
                    group_name(material.group)
                ),
            )
            .typical
        }
    };
    if (PLANT_LIKE.0..=PLANT_LIKE.1).contains(&factor) {
        factor
    } else {
        1.0
    }
}

/// Typical C:N of a material on the handbook scale, as it counts in a mixture;
/// `None` where nothing of it counts or it has no nitrogen.
#[must_use]
pub fn handbook_carbon_to_nitrogen(catalogue: &Catalogue, material: &Material) -> Option<f64> {
    if material.degradability == Degradability::Inert {
        return None;
    }
    let nitrogen = material.nitrogen_dry_basis?.typical;
    let carbon = material.carbon_measured_dry_basis? * handbook_over_measured(catalogue, material);
    (nitrogen > 0.0).then(|| carbon / nitrogen)
}

fn nitrogen_and_carbon(
    catalogue: &Catalogue,
    material: &Material,
    stated: &Stated,
    handbook_factor: f64,
) -> Result<NitrogenAndCarbon, FoundError> {
    let nitrogen_range = with_spread(
        material.nitrogen_dry_basis.unwrap_or(Range::exact(0.0)),
        &assumed(catalogue, "spread_relative.nitrogen_dry_basis"),
    );
    let carbon = material.carbon_measured_dry_basis.unwrap_or(0.0) * handbook_factor;
    // Carbon of the leanest and the richest specimen, where the table has their C:N.
    let (lean, rich) = match material.carbon_to_nitrogen_measured {
        Some(ratio) if !ratio.is_exact() => (
            nitrogen_range.low * ratio.high * handbook_factor,
            nitrogen_range.high * ratio.low * handbook_factor,
        ),
        _ => (carbon, carbon),
    };
    let found = match (stated.nitrogen_dry_basis, stated.carbon_to_nitrogen) {
        (Some(nitrogen), Some(ratio)) => {
            ratio_has_nitrogen(nitrogen, ratio)?;
            exact(nitrogen, nitrogen * ratio)
        }
        // What is richer in nitrogen is not richer in carbon: carbon stands.
        (Some(nitrogen), None) => exact(nitrogen, carbon),
        (None, Some(ratio)) if carbon > 0.0 => exact(carbon / ratio, carbon),
        // Nitrogen alone is known: carbon follows it at the stated ratio.
        (None, Some(ratio)) => NitrogenAndCarbon {
            nitrogen_dry_basis: nitrogen_range,
            carbon_dry_basis_at_low_nitrogen: nitrogen_range.low * ratio,
            carbon_dry_basis_typical: nitrogen_range.typical * ratio,
            carbon_dry_basis_at_high_nitrogen: nitrogen_range.high * ratio,
        },
        (None, None) => NitrogenAndCarbon {
            nitrogen_dry_basis: nitrogen_range,
            carbon_dry_basis_at_low_nitrogen: lean,
            carbon_dry_basis_typical: carbon,
            carbon_dry_basis_at_high_nitrogen: rich,
        },
    };
    let nitrogen = found.nitrogen_dry_basis;
    checked_share(found.carbon_dry_basis_at_low_nitrogen, nitrogen.low)?;
    checked_share(found.carbon_dry_basis_typical, nitrogen.typical)?;
    checked_share(found.carbon_dry_basis_at_high_nitrogen, nitrogen.high)?;
    Ok(found)
}

fn exact(nitrogen: f64, carbon: f64) -> NitrogenAndCarbon {
    NitrogenAndCarbon {
        nitrogen_dry_basis: Range::exact(nitrogen),
        carbon_dry_basis_at_low_nitrogen: carbon,
        carbon_dry_basis_typical: carbon,
        carbon_dry_basis_at_high_nitrogen: carbon,
    }
}

/// Biodegradable share of dry matter: of the volatile solids by lignin where it is
/// known, else by how readily the material rots.
///
/// B = 0.83 - 0.028 x lignin [% of volatile solids], held within 0.05 to 0.83.
/// Source: `CHANDLERm`.
fn biodegradable(catalogue: &Catalogue, material: &Material, ash: &Range) -> Range {
    let by_degradability = share_of_volatile_solids(catalogue, material.degradability);
    let volatile = 1.0 - ash.typical;
    let of_volatile = match material.lignin_dry_basis {
        Some(lignin) if volatile > 0.0 && material.degradability != Degradability::Inert => {
            let least = assumed(catalogue, "lignin_rule.least").typical;
            let most = assumed(catalogue, "lignin_rule.most").typical;
            let share = assumed(catalogue, "lignin_rule.intercept").typical
                - assumed(catalogue, "lignin_rule.slope").typical * lignin / volatile;
            let share = share.clamp(least, most);
            // The rule scatters about as its class does; it is not exact for one material.
            let relative = |end: f64| {
                if by_degradability.typical > 0.0 {
                    end / by_degradability.typical
                } else {
                    1.0
                }
            };
            Range {
                low: (share * relative(by_degradability.low).min(1.0)).max(least.min(share)),
                typical: share,
                high: (share * relative(by_degradability.high).max(1.0)).min(most.max(share)),
            }
        }
        _ => by_degradability,
    };
    of_volatile.scaled(volatile)
}

/// The ingredient that a custom material makes: what it states is exact.
pub(crate) fn from_custom(
    catalogue: &Catalogue,
    custom: &Custom,
) -> Result<Ingredient, FoundError> {
    custom.checked()?;
    let (carbon, nitrogen) = custom.carbon_and_nitrogen()?;
    let divisor = assumed(catalogue, "handbook_carbon.volatile_solids_over_carbon").typical;
    // On the handbook scale carbon tells the volatile solids, and they the ash.
    let ash = custom
        .ash_dry_basis
        .unwrap_or_else(|| (1.0 - carbon * divisor).max(custom.minerals_dry_basis()))
        .clamp(0.0, 1.0);
    let share = |stated: Option<f64>| stated.map(Range::exact);
    Ok(Ingredient {
        identity: format!("custom/{}", custom.name.trim()),
        moisture_wet_basis: Range::exact(custom.moisture_wet_basis),
        nitrogen_and_carbon: exact(nitrogen, carbon),
        measured_over_handbook_carbon: 1.0,
        bulk_density_kg_m3: share(custom.bulk_density_kg_m3),
        density_follows_moisture: false,
        ash_dry_basis: Range::exact(ash),
        biodegradable_dry_basis: share_of_volatile_solids(catalogue, Degradability::Medium)
            .scaled(1.0 - ash),
        phosphorus_dry_basis: share(custom.phosphorus_dry_basis),
        potassium_dry_basis: share(custom.potassium_dry_basis),
        calcium_dry_basis: share(custom.calcium_dry_basis),
        magnesium_dry_basis: share(custom.magnesium_dry_basis),
        sodium_dry_basis: share(custom.sodium_dry_basis),
    })
}

/// Biodegradable share of volatile solids where the lignin is not known.
fn share_of_volatile_solids(catalogue: &Catalogue, degradability: Degradability) -> Range {
    match catalogue.assumed_biodegradable_share(degradability) {
        Some(assumption) => assumption.range,
        None => unreachable!("the catalogue has a share for every degradability"),
    }
}
