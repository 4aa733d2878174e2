//! Where does a figure of the mixture come from? Part by part, with the sources.

use heapwright_quantity::Range;
use heapwright_terms::{FigureGroup, Material, Part, PartAmount};

use crate::what_is_in::MixAnswer;

/// A figure of a mixture that can be opened.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Figure {
    /// C:N.
    CarbonToNitrogen,
    /// Moisture.
    Moisture,
    /// Free air space.
    FreeAirSpace,
    /// Wet mass.
    Mass,
    /// Volume.
    Volume,
}

/// What one part has to do with a figure.
#[derive(Clone, Debug, PartialEq)]
pub struct FigureLine {
    /// Name of the part.
    pub name: String,
    /// The part's own value, in the unit of the figure: C:N, fractions, kg/m3 for
    /// mass and volume; `None` when it is not known or not counted.
    pub own: Option<Range>,
    /// Share of the whole that decides the figure, 0 to 1: of the nitrogen for
    /// C:N, of the water for moisture, of the volume for air, of the mass.
    pub weight: f64,
    /// Keys of the sources of the part's value; empty when the keeper stated it.
    pub source_keys: Vec<String>,
}

/// The lines behind a figure, one a part, in the order of the question.
#[must_use]
pub fn figure_lines(answer: &MixAnswer, figure: Figure) -> Vec<FigureLine> {
    let weigh = |totals: &crate::Totals| match figure {
        Figure::CarbonToNitrogen => totals.nitrogen_kg,
        Figure::Moisture => totals.water_kg(),
        Figure::FreeAirSpace | Figure::Volume => totals.volume_m3.unwrap_or(0.0),
        Figure::Mass => totals.wet_mass_kg,
    };
    let whole: f64 = answer.brought.iter().map(weigh).sum::<f64>()
        + if matches!(figure, Figure::Moisture | Figure::Mass) {
            answer.water_kg
        } else {
            0.0
        };
    answer
        .parts
        .iter()
        .zip(&answer.brought)
        .map(|(found, brought)| FigureLine {
            name: found.name.clone(),
            own: own_value(&found.part, figure),
            weight: if whole > 0.0 {
                weigh(brought) / whole
            } else {
                0.0
            },
            source_keys: found
                .material
                .as_ref()
                .map_or_else(Vec::new, |material| source_keys(material, figure)),
        })
        .collect()
}

fn own_value(part: &Part, figure: Figure) -> Option<Range> {
    let ingredient = &part.ingredient;
    match figure {
        Figure::CarbonToNitrogen => {
            let both = &ingredient.nitrogen_and_carbon;
            let nitrogen = both.nitrogen_dry_basis;
            if nitrogen.low <= 0.0 {
                return (nitrogen.typical > 0.0)
                    .then(|| Range::exact(both.carbon_dry_basis_typical / nitrogen.typical));
            }
            let (lean, rich) = (
                both.carbon_dry_basis_at_low_nitrogen / nitrogen.low,
                both.carbon_dry_basis_at_high_nitrogen / nitrogen.high,
            );
            let typical = both.carbon_dry_basis_typical / nitrogen.typical;
            Range::new(rich.min(typical), typical, lean.max(typical))
        }
        Figure::Moisture => Some(ingredient.moisture_wet_basis),
        Figure::FreeAirSpace | Figure::Volume | Figure::Mass => match part.amount {
            PartAmount::MassKg(_) if figure == Figure::Mass => None,
            _ => ingredient.bulk_density_kg_m3,
        },
    }
}

fn source_keys(material: &Material, figure: Figure) -> Vec<String> {
    let groups: &[FigureGroup] = match figure {
        Figure::CarbonToNitrogen => &[
            FigureGroup::Nitrogen,
            FigureGroup::CarbonToNitrogen,
            FigureGroup::Carbon,
            FigureGroup::Ash,
        ],
        Figure::Moisture => &[FigureGroup::Moisture],
        Figure::FreeAirSpace | Figure::Volume | Figure::Mass => &[FigureGroup::BulkDensity],
    };
    let mut keys: Vec<String> = material
        .sources
        .iter()
        .filter(|source| groups.contains(&source.figures))
        .flat_map(|source| source.source_keys.iter().cloned())
        .collect();
    keys.sort();
    keys.dedup();
    keys
}
