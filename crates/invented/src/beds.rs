//! Beds, and the compost that goes on them.

use heapwright_journal::content::{
    BagTest, BedDescribed, GerminationTest, Harvested, How, Laboratory, SelfHeatingTest, Smell,
    SoilTest, Spread, Tested,
};
use heapwright_journal::{AmountSaid, EventId};

use crate::chance::Chance;

/// Crops of the beds, one after the other.
const CROPS: [&str; 8] = [
    "potatoes",
    "beans",
    "squash",
    "lettuce and chard",
    "tomatoes",
    "soft fruit",
    "roses",
    "onions and carrots",
];

/// The n-th bed.
pub(crate) fn described(chance: &mut Chance, number: usize) -> BedDescribed {
    let crop = CROPS[number % CROPS.len()];
    let soil = chance.happens(0.5).then(|| SoilTest {
        ph: Some(chance.stepped(6.0, 7.5, 0.1)),
        organic_matter_pct: Some(chance.stepped(2.0, 6.0, 0.5)),
        phosphorus_mg_kg: Some(chance.stepped(15.0, 80.0, 1.0)),
        potassium_mg_kg: Some(chance.stepped(80.0, 250.0, 10.0)),
        conductivity_ds_m: None,
    });
    BedDescribed {
        name: format!("Bed {} ({crop})", number + 1),
        area_m2: chance.stepped(2.0, 14.0, 0.5),
        crop: Some(crop.to_owned()),
        feeding: None,
        new_ground: chance.happens(0.1),
        soil,
    }
}

/// Compost is taken out of a heap: a share of it, or all that is left.
pub(crate) fn harvest(
    chance: &mut Chance,
    heap: EventId,
    share_pct: Option<f64>,
    overs_to: Option<EventId>,
) -> Harvested {
    let sieved = chance.happens(0.6);
    Harvested {
        heap,
        amount: Some(AmountSaid {
            count: chance.stepped(2.0, 9.0, 0.5),
            unit: "barrow".to_owned(),
        }),
        share_pct,
        sieve_mm: sieved.then(|| [10.0, 12.0, 20.0][chance.below(3)]),
        overs: sieved.then(|| AmountSaid {
            count: chance.stepped(0.5, 3.0, 0.5),
            unit: "bucket".to_owned(),
        }),
        overs_to: overs_to.filter(|_| sieved),
    }
}

/// Compost goes on a bed.
pub(crate) fn spread(chance: &mut Chance, bed: EventId, heap: Option<EventId>) -> Spread {
    Spread {
        bed,
        heap,
        amount: AmountSaid {
            count: chance.stepped(0.5, 3.0, 0.5),
            unit: "barrow".to_owned(),
        },
        how: chance
            .one_of(&[How::Mulch, How::Mulch, How::DugIn, How::PlantingHole])
            .copied(),
    }
}

/// Compost that lies to cure is tested.
pub(crate) fn test(chance: &mut Chance, heap: EventId, ripe: bool) -> Tested {
    let mut tested = Tested {
        heap,
        laboratory: None,
        self_heating: None,
        germination: None,
        bag: None,
    };
    match chance.below(8) {
        0 => {
            tested.laboratory = Some(Box::new(Laboratory {
                moisture_pct: Some(chance.stepped(38.0, 58.0, 0.5)),
                nitrogen_pct_dry: Some(chance.stepped(1.1, 2.2, 0.1)),
                cn_ratio_measured: Some(chance.stepped(10.0, 18.0, 0.5)),
                ph: Some(chance.stepped(6.8, 8.0, 0.1)),
                conductivity_ds_m: Some(chance.stepped(1.0, 4.0, 0.1)),
                ..Laboratory::default()
            }));
        }
        1..=3 => {
            let room_c = chance.stepped(18.0, 22.0, 0.5);
            let rise_c = if ripe { (0.5, 6.0) } else { (6.0, 25.0) };
            tested.self_heating = Some(SelfHeatingTest {
                highest_c: room_c + chance.stepped(rise_c.0, rise_c.1, 0.5),
                room_c,
            });
        }
        4..=5 => {
            let least = if ripe { 16 } else { 6 };
            tested.germination = Some(GerminationTest {
                sown: 20,
                sprouted: least + u32::try_from(chance.below(5)).unwrap_or(0),
                control_sown: 20,
                control_sprouted: 18 + u32::try_from(chance.below(3)).unwrap_or(0),
                root_mm: Some(chance.stepped(15.0, 40.0, 1.0)),
                control_root_mm: Some(chance.stepped(30.0, 42.0, 1.0)),
            });
        }
        _ => {
            tested.bag = Some(BagTest {
                days: chance.stepped(3.0, 7.0, 1.0),
                swollen: !ripe && chance.happens(0.6),
                smell: Some(if ripe { Smell::Earthy } else { Smell::Sour }),
            });
        }
    }
    tested
}
