//! A material of the garden's own: like one of the catalogue, but for what is given.

use heapwright_catalogue::Catalogue;
use heapwright_quantity::Range;
use heapwright_terms::{Evidence, FigureSource, Material, MaterialId};

/// A figure as it was given.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Given {
    /// One number, which is then taken with the spread of a single measurement.
    One(f64),
    /// Low, typical, high.
    Three([f64; 3]),
}

/// A material of the garden's own.
#[derive(Clone, Debug, PartialEq)]
pub struct OwnMaterial {
    /// Id of its own: lower-case letters, digits and underscores.
    pub id: String,
    /// Name to show.
    pub name: String,
    /// Id of the material of the catalogue that it is most like.
    pub like: MaterialId,
    /// Moisture, percent of the mass as found.
    pub moisture_pct: Option<Given>,
    /// Nitrogen, percent of dry matter.
    pub nitrogen_pct_dry: Option<Given>,
    /// Carbon to nitrogen from measured carbon, as a laboratory gives it.
    pub cn_ratio_measured: Option<Given>,
    /// Bulk density as it lies, wet.
    pub bulk_density_kg_m3: Option<Given>,
}

/// Why a material cannot be.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OwnMaterialFault {
    /// Which field, in the words of the JSON.
    pub field: &'static str,
    /// What is wrong with it.
    pub what: String,
}

fn fault(field: &'static str, what: impl Into<String>) -> OwnMaterialFault {
    OwnMaterialFault {
        field,
        what: what.into(),
    }
}

/// Nitrogen reaches to urea (46.6 % by formula), share of dry matter.
const MOST_NITROGEN: f64 = 0.5;

impl OwnMaterial {
    /// The material: its own figures, and those of the like one where nothing is given.
    ///
    /// Fails when the id or name is missing, when the like one is not in the catalogue, and on
    /// figures that cannot be.
    pub fn material(&self, catalogue: &Catalogue) -> Result<Material, OwnMaterialFault> {
        let own = self;
        let sound = !own.id.is_empty()
            && own.id.len() <= 60
            && own
                .id
                .bytes()
                .all(|byte| byte.is_ascii_lowercase() || byte.is_ascii_digit() || byte == b'_');
        if !sound {
            return Err(fault(
                "id",
                "use 1 to 60 lower-case letters, digits and underscores",
            ));
        }
        if own.name.trim().is_empty() {
            return Err(fault("name", "must not be empty"));
        }
        let Some(base) = catalogue.material(own.like.as_str()) else {
            return Err(fault("like", "is not a material of the catalogue"));
        };
        let figure = |figure: Option<Given>,
                      name: &'static str,
                      per: f64,
                      (least, most): (f64, f64),
                      known: Option<Range>| {
            let Some(figure) = figure else {
                return Ok(known);
            };
            let range = match figure {
                // The spread of a single measurement: a tenth either way, an estimate.
                Given::One(value) => {
                    Range::new((value * 0.9).max(least), value, (value * 1.1).min(most))
                }
                Given::Three([low, typical, high]) => Range::new(low, typical, high),
            };
            range
            .filter(|range| range.low >= least && range.high <= most)
            .map(|range| Some(range.scaled(1.0 / per)))
            .ok_or_else(|| {
                fault(name,
                    format!(
                        "give one number, or low, typical and high in that order, from {least} to {most}"
                    ),
                )
            })
        };
        let nitrogen = figure(
            own.nitrogen_pct_dry,
            "nitrogen_pct_dry",
            100.0,
            (0.0, 50.0),
            base.nitrogen_dry_basis,
        )?;
        let ratio = figure(
            own.cn_ratio_measured,
            "cn_ratio_measured",
            1.0,
            (0.1, 10_000.0),
            base.carbon_to_nitrogen_measured,
        )?;
        // Carbon follows from the two when both are the garden's own; else nitrogen
        // and C:N follow each other at the carbon of the like material.
        let carbon = base.carbon_measured_dry_basis;
        // Nitrogen that may be as low as none would make C:N endless: what counts as lowest is at
        // least a tenth of the typical, an estimate.
        let nitrogen = nitrogen.map(|range| Range {
            low: range.low.max(range.typical * 0.1),
            ..range
        });
        let flipped = |range: Range, carbon: f64| Range {
            low: carbon / range.high,
            typical: carbon / range.typical,
            high: carbon / range.low,
        };
        let (nitrogen, ratio, carbon) = match (
            own.nitrogen_pct_dry,
            own.cn_ratio_measured,
            nitrogen,
            ratio,
            carbon,
        ) {
            (Some(_), Some(_), Some(nitrogen), Some(ratio), _) => (
                Some(nitrogen),
                Some(ratio),
                Some(nitrogen.typical * ratio.typical),
            ),
            (Some(_), None, Some(nitrogen), _, Some(carbon)) => (
                Some(nitrogen),
                (nitrogen.low > 0.0).then(|| flipped(nitrogen, carbon)),
                Some(carbon),
            ),
            (None, Some(_), _, Some(ratio), Some(carbon)) => {
                (Some(flipped(ratio, carbon)), Some(ratio), Some(carbon))
            }
            (_, _, nitrogen, ratio, carbon) => (nitrogen, ratio, carbon),
        };
        if let (Some(nitrogen), Some(ratio)) = (nitrogen, ratio) {
            let sum = nitrogen.typical * (1.0 + ratio.typical);
            if nitrogen.typical > MOST_NITROGEN || sum > 1.0 {
                let name = if own.cn_ratio_measured.is_some() {
                    "cn_ratio_measured"
                } else {
                    "nitrogen_pct_dry"
                };
                return Err(fault(
                    name,
                    format!(
                        "makes {:.1} % carbon and {:.1} % nitrogen of the dry matter: nitrogen must stay within 50 and both together within 100",
                        nitrogen.typical * ratio.typical * 100.0,
                        nitrogen.typical * 100.0
                    ),
                ));
            }
        }
        Ok(Material {
            id: MaterialId(own.id.clone()),
            name: own.name.trim().to_owned(),
            short_name: own.name.trim().chars().take(18).collect(),
            nitrogen_dry_basis: nitrogen,
            carbon_to_nitrogen_measured: ratio,
            carbon_measured_dry_basis: carbon,
            moisture_wet_basis: figure(
                own.moisture_pct,
                "moisture_pct",
                100.0,
                (0.0, 99.9),
                base.moisture_wet_basis,
            )?,
            bulk_density_kg_m3: figure(
                own.bulk_density_kg_m3,
                "bulk_density_kg_m3",
                1.0,
                (5.0, 3000.0),
                base.bulk_density_kg_m3,
            )?,
            evidence: Evidence::Measured,
            sources: Vec::<FigureSource>::new(),
            notes: format!(
                "The garden's own; like {} where nothing else is given.",
                base.name
            ),
            ..base.clone()
        })
    }
}
