//! The invented demo garden, as plain values.
//!
//! The same as `demo/garden.json`, which a test holds it to: written out here, the
//! page need not carry a reader of garden files until it can open one.

use heapwright_garden::{Calibration, Garden, Observation, Observed, Stock};
use heapwright_quantity::{Amount, Unit};
use heapwright_terms::MaterialId;

/// The garden that the page opens with.
#[must_use]
pub fn garden() -> Garden {
    let calibrations = [("barrow", 80.0), ("bucket", 12.0), ("caddy", 5.0)];
    let stores = [
        ("leaves_shredded_dry", None, 14.0),
        ("corrugated_cardboard", Some("shredded"), 6.0),
        ("straw_wheat", None, 8.0),
        ("shredded_prunings", None, 10.0),
    ];
    let buckets = |count: f64| Amount {
        count,
        unit: Unit::Measure("bucket".to_owned()),
    };
    Garden {
        name: "Alder Lane, an invented garden".to_owned(),
        invented: true,
        calibrations: calibrations
            .into_iter()
            .map(|(measure, litres)| Calibration {
                measure: measure.to_owned(),
                volume_m3: litres / 1000.0,
            })
            .collect(),
        own_materials: Vec::new(),
        observations: vec![Observation {
            material: MaterialId("leaves_shredded_dry".to_owned()),
            observed: Observed::WeighedMeasure {
                full_kg: 2.7,
                empty_kg: 0.8,
                volume_m3: 0.012,
            },
        }],
        stores: stores
            .into_iter()
            .map(|(material, condition, count)| Stock {
                material: MaterialId(material.to_owned()),
                conditions: condition.into_iter().map(str::to_owned).collect(),
                amount: Some(buckets(count)),
                scoop: buckets(0.5),
            })
            .collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use heapwright_catalogue::Catalogue;

    #[test]
    fn garden_is_that_of_the_demo_file() {
        let file = include_str!("../../../demo/garden.json");
        let read = heapwright_wire::read_garden(Catalogue::built_in(), file).unwrap();
        let (ours, theirs) = (format!("{:?}", garden()), format!("{read:?}"));
        assert_eq!(ours, theirs);
    }
}
