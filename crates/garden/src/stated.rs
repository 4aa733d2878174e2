//! What does the keeper state outright? Figures of a part that carry no spread.

use crate::error::FoundError;

/// Figures that override those of a catalogue material. Fractions, kg/m3.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Stated {
    /// Moisture, wet basis [kg/kg].
    pub moisture_wet_basis: Option<f64>,
    /// Nitrogen, share of dry matter [kg/kg].
    pub nitrogen_dry_basis: Option<f64>,
    /// Carbon to nitrogen, on the scale that is shown.
    pub carbon_to_nitrogen: Option<f64>,
    /// Bulk density as it lies, wet [kg/m3].
    pub bulk_density_kg_m3: Option<f64>,
}

/// A material described by the keeper alone. Fractions, kg/m3.
///
/// Two of carbon, nitrogen and C:N are needed; carbon is taken on the scale
/// that is shown (decision 0003).
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Custom {
    /// What to call it.
    pub name: String,
    /// Moisture, wet basis [kg/kg], 0 to below 1.
    pub moisture_wet_basis: f64,
    /// Carbon, share of dry matter [kg/kg].
    pub carbon_dry_basis: Option<f64>,
    /// Nitrogen, share of dry matter [kg/kg].
    pub nitrogen_dry_basis: Option<f64>,
    /// Carbon to nitrogen.
    pub carbon_to_nitrogen: Option<f64>,
    /// Bulk density as it lies, wet [kg/m3].
    pub bulk_density_kg_m3: Option<f64>,
    /// Ash, share of dry matter [kg/kg].
    pub ash_dry_basis: Option<f64>,
    /// Phosphorus as the element, share of dry matter [kg/kg].
    pub phosphorus_dry_basis: Option<f64>,
    /// Potassium as the element, share of dry matter [kg/kg].
    pub potassium_dry_basis: Option<f64>,
    /// Calcium as the element, share of dry matter [kg/kg].
    pub calcium_dry_basis: Option<f64>,
    /// Magnesium as the element, share of dry matter [kg/kg].
    pub magnesium_dry_basis: Option<f64>,
    /// Sodium as the element, share of dry matter [kg/kg].
    pub sodium_dry_basis: Option<f64>,
}

/// Stated C, N and C:N may differ by so much, as they are rounded when printed.
const ROUNDING: f64 = 0.02;

/// Widest limits of what is possible; names and units are those of the JSON.
/// Nitrogen reaches to urea (46.6 % by formula); densities from fluff to rock.
const MOST_MOISTURE_PCT: f64 = 99.9;
/// The most nitrogen that is taken to be in dry matter, percent.
pub const MOST_NITROGEN_PCT: f64 = 50.0;
const CN_RATIO: (f64, f64) = (0.1, 10_000.0);
const BULK_DENSITY: (f64, f64) = (5.0, 3_000.0);

fn check(
    field: &'static str,
    stated: Option<f64>,
    least: f64,
    most: f64,
    shown_per_unit: f64,
) -> Result<(), FoundError> {
    match stated.map(|stated| stated * shown_per_unit) {
        // Rounding of the percent must not push a limit over itself.
        Some(stated) if !(stated >= least && stated <= most * (1.0 + 1e-12)) => {
            Err(FoundError::OutOfRange {
                field,
                stated,
                least,
                most,
            })
        }
        _ => Ok(()),
    }
}

/// Fails when carbon and nitrogen [kg/kg dry] are more than the dry matter holds.
pub(crate) fn checked_share(carbon: f64, nitrogen: f64) -> Result<(), FoundError> {
    const ROUNDED: f64 = 1.0 + 1e-9;
    if nitrogen * 100.0 <= MOST_NITROGEN_PCT * ROUNDED && carbon + nitrogen <= ROUNDED {
        return Ok(());
    }
    Err(FoundError::CombinedOverFull {
        carbon_pct_dry: carbon * 100.0,
        nitrogen_pct_dry: nitrogen * 100.0,
    })
}

/// Fails for a C:N together with no nitrogen.
pub(crate) fn ratio_has_nitrogen(nitrogen: f64, ratio: f64) -> Result<(), FoundError> {
    if nitrogen > 0.0 {
        return Ok(());
    }
    Err(FoundError::Contradiction {
        carbon_pct_dry: 0.0,
        nitrogen_pct_dry: 0.0,
        cn_ratio: ratio,
    })
}

impl Stated {
    /// Fails when a figure lies outside what is possible.
    pub fn checked(&self) -> Result<(), FoundError> {
        check(
            "moisture_pct",
            self.moisture_wet_basis,
            0.0,
            MOST_MOISTURE_PCT,
            100.0,
        )?;
        check(
            "nitrogen_pct_dry",
            self.nitrogen_dry_basis,
            0.0,
            MOST_NITROGEN_PCT,
            100.0,
        )?;
        check(
            "cn_ratio",
            self.carbon_to_nitrogen,
            CN_RATIO.0,
            CN_RATIO.1,
            1.0,
        )?;
        check(
            "bulk_density_kg_m3",
            self.bulk_density_kg_m3,
            BULK_DENSITY.0,
            BULK_DENSITY.1,
            1.0,
        )
    }
}

impl Custom {
    /// Carbon and nitrogen [kg/kg dry] from any two of carbon, nitrogen, C:N.
    pub fn carbon_and_nitrogen(&self) -> Result<(f64, f64), FoundError> {
        match (
            self.carbon_dry_basis,
            self.nitrogen_dry_basis,
            self.carbon_to_nitrogen,
        ) {
            (Some(carbon), Some(nitrogen), Some(ratio)) => {
                let implied = carbon / nitrogen;
                if (implied - ratio).abs() <= ROUNDING * ratio {
                    Ok((carbon, nitrogen))
                } else {
                    Err(FoundError::Contradiction {
                        carbon_pct_dry: carbon * 100.0,
                        nitrogen_pct_dry: nitrogen * 100.0,
                        cn_ratio: ratio,
                    })
                }
            }
            (Some(carbon), Some(nitrogen), None) => Ok((carbon, nitrogen)),
            (Some(carbon), None, Some(_)) if carbon <= 0.0 => Err(FoundError::RatioWithoutCarbon),
            (Some(carbon), None, Some(ratio)) => Ok((carbon, carbon / ratio)),
            (None, Some(nitrogen), Some(ratio)) => {
                ratio_has_nitrogen(nitrogen, ratio)?;
                Ok((nitrogen * ratio, nitrogen))
            }
            _ => Err(FoundError::TooFew),
        }
    }

    /// Fails when the figures are impossible, too few or contradict each other.
    pub fn checked(&self) -> Result<(), FoundError> {
        if self.name.trim().is_empty() {
            return Err(FoundError::NoName);
        }
        let share = |field, figure| check(field, figure, 0.0, 100.0, 100.0);
        check(
            "moisture_pct",
            Some(self.moisture_wet_basis),
            0.0,
            MOST_MOISTURE_PCT,
            100.0,
        )?;
        share("carbon_pct_dry", self.carbon_dry_basis)?;
        check(
            "nitrogen_pct_dry",
            self.nitrogen_dry_basis,
            0.0,
            MOST_NITROGEN_PCT,
            100.0,
        )?;
        check(
            "cn_ratio",
            self.carbon_to_nitrogen,
            CN_RATIO.0,
            CN_RATIO.1,
            1.0,
        )?;
        check(
            "bulk_density_kg_m3",
            self.bulk_density_kg_m3,
            BULK_DENSITY.0,
            BULK_DENSITY.1,
            1.0,
        )?;
        share("ash_pct_dry", self.ash_dry_basis)?;
        share("phosphorus_pct_dry", self.phosphorus_dry_basis)?;
        share("potassium_pct_dry", self.potassium_dry_basis)?;
        share("calcium_pct_dry", self.calcium_dry_basis)?;
        share("magnesium_pct_dry", self.magnesium_dry_basis)?;
        share("sodium_pct_dry", self.sodium_dry_basis)?;
        let (carbon, nitrogen) = self.carbon_and_nitrogen()?;
        let ash = self.ash_dry_basis;
        let sum = carbon + nitrogen + ash.unwrap_or(0.0);
        if sum > 1.0 + 1e-9 {
            return Err(FoundError::OverFull {
                sum_pct_dry: sum * 100.0,
            });
        }
        checked_share(carbon, nitrogen)?;
        // The minerals are part of the ash; but ash and minerals may come from two
        // samples, and only what cannot be in one is refused.
        let minerals = self.minerals_dry_basis();
        if carbon + nitrogen + minerals > 1.0 + 1e-9 {
            return Err(FoundError::MineralsOverFull {
                sum_pct_dry: (carbon + nitrogen + minerals) * 100.0,
            });
        }
        Ok(())
    }

    /// All minerals that are stated, share of dry matter [kg/kg].
    pub(crate) fn minerals_dry_basis(&self) -> f64 {
        [
            self.phosphorus_dry_basis,
            self.potassium_dry_basis,
            self.calcium_dry_basis,
            self.magnesium_dry_basis,
            self.sodium_dry_basis,
        ]
        .iter()
        .flatten()
        .sum()
    }
}
