//! The first day: the garden, its people, measures, materials and beds.

use heapwright_journal::content::{
    DriedSample, Figure, GardenDescribed, Laboratory, MaterialDefined, MaterialMeasured,
    MeasureDefined, PersonDescribed, Place, Role, UnitsSaid, WeighedMeasure,
};
use heapwright_journal::{AmountSaid, Content};

use crate::chance::Chance;
use crate::people::NAMES;

/// The garden and its place, which is nowhere.
pub(crate) fn garden(name: &str) -> Content {
    GardenDescribed {
        name: Some(name.to_owned()),
        place: Some(Place {
            name: Some("an invented place".to_owned()),
            latitude_deg: 51.0,
            longitude_deg: 3.0,
            elevation_m: Some(20.0),
            coldest_month_c: Some(3.0),
            warmest_month_c: Some(18.5),
        }),
        units: Some(UnitsSaid::Metric),
        invented: Some(true),
    }
    .into()
}

/// The n-th person.
pub(crate) fn person(number: usize) -> Content {
    PersonDescribed {
        name: NAMES[number % NAMES.len()].to_owned(),
        role: Some(if number < 2 {
            Role::Keeper
        } else {
            Role::Helper
        }),
    }
    .into()
}

/// What the vessels hold, and materials of the garden's own.
pub(crate) fn equipment() -> Vec<Content> {
    let mut contents: Vec<Content> = [("caddy", 5.0), ("bucket", 12.0), ("barrow", 80.0)]
        .map(|(measure, volume_l)| {
            MeasureDefined {
                measure: measure.to_owned(),
                volume_l,
            }
            .into()
        })
        .into();
    contents.push(
        MaterialDefined {
            material: "lane_hedge".to_owned(),
            name: "Hedge of the lane, shredded".to_owned(),
            like: "hedge_trimmings_fresh".to_owned(),
            moisture_pct: Some(Figure::Three([45.0, 55.0, 65.0])),
            nitrogen_pct_dry: Some(Figure::One(1.4)),
            cn_ratio_measured: None,
            bulk_density_kg_m3: Some(Figure::Three([150.0, 190.0, 240.0])),
        }
        .into(),
    );
    contents.push(
        MaterialMeasured {
            material: "leaves_shredded_dry".to_owned(),
            laboratory: None,
            dried_sample: None,
            weighed_measure: Some(WeighedMeasure {
                measure: AmountSaid {
                    count: 1.0,
                    unit: "bucket".to_owned(),
                },
                full_kg: 2.7,
                empty_kg: 0.8,
            }),
        }
        .into(),
    );
    contents
}

/// A material is measured, as somebody does on a quiet day.
pub(crate) fn measured(chance: &mut Chance) -> MaterialMeasured {
    let mut measured = MaterialMeasured {
        material: ["grass_clippings_fresh", "mixed_vegetable_scraps"][chance.below(2)].to_owned(),
        laboratory: None,
        dried_sample: None,
        weighed_measure: None,
    };
    if chance.happens(0.2) {
        measured.laboratory = Some(Box::new(Laboratory {
            nitrogen_pct_dry: Some(chance.stepped(2.0, 3.5, 0.1)),
            ..Laboratory::default()
        }));
    } else {
        measured.dried_sample = Some(DriedSample {
            wet_kg: 0.5,
            dry_kg: chance.stepped(0.06, 0.12, 0.01),
        });
    }
    measured
}
