//! Random edits of every kind over a few heaps and beds, so that they meet.

use heapwright_journal::content::*;
use heapwright_journal::{AmountSaid, Content, EventId, Moment};
use serde_json::{Map, json};

/// A small stream of chance (xorshift64*, Vigna 2016).
#[derive(Clone, Debug)]
pub struct Chance(u64);

impl Chance {
    pub fn new(seed: u64) -> Self {
        Self(seed.wrapping_add(1).wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1)
    }

    pub fn next(&mut self) -> u64 {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        self.0.wrapping_mul(0x2545_f491_4f6c_dd1d)
    }

    pub fn below(&mut self, bound: usize) -> usize {
        ((self.next() >> 16) % bound.max(1) as u64) as usize
    }

    pub fn one_in(&mut self, bound: usize) -> bool {
        self.below(bound) == 0
    }

    pub fn bytes(&mut self) -> [u8; 10] {
        let mut bytes = [0; 10];
        bytes[..8].copy_from_slice(&self.next().to_le_bytes());
        bytes
    }

    pub fn shuffle<T>(&mut self, list: &mut [T]) {
        for last in (1..list.len()).rev() {
            list.swap(last, self.below(last + 1));
        }
    }
}

/// 2026-01-01T00:00Z [ms].
pub const START_MS: i64 = 1_767_225_600_000;

/// A moment within a few days: many fall on the same instant.
pub fn moment(chance: &mut Chance) -> Moment {
    let hours = chance.below(72) as i64;
    Moment::new(START_MS + hours * 3_600_000, 60).unwrap()
}

fn amount(chance: &mut Chance) -> AmountSaid {
    AmountSaid {
        count: 0.5 * (1 + chance.below(6)) as f64,
        unit: ["bucket", "kg", "L"][chance.below(3)].to_owned(),
    }
}

fn material(chance: &mut Chance) -> String {
    ["straw_wheat", "mixed_vegetable_scraps", "dry_leaves_mixed"][chance.below(3)].to_owned()
}

fn conditions(chance: &mut Chance) -> Vec<String> {
    match chance.below(4) {
        0 => vec!["wet".to_owned()],
        1 => vec!["wet".to_owned(), "shredded".to_owned()],
        _ => Vec::new(),
    }
}

fn part(chance: &mut Chance) -> PartFed {
    PartFed {
        material: Some(material(chance)),
        custom: None,
        amount: amount(chance),
        conditions: conditions(chance),
        moisture_pct: None,
        nitrogen_pct_dry: None,
        cn_ratio: None,
        bulk_density_kg_m3: None,
        from_stores: chance.one_in(2),
    }
}

fn share(chance: &mut Chance) -> Option<f64> {
    [None, Some(25.0), Some(50.0), Some(100.0), Some(0.0)][chance.below(5)]
}

/// How many ordinary kinds there are, corrections not counted.
const ORDINARY: usize = Content::KINDS.len() - 2;

/// Some ordinary content. `known` are ids of earlier events, whatever they are: what refers to
/// something that is no heap must do no harm either.
pub fn ordinary(chance: &mut Chance, known: &[EventId]) -> Content {
    let id = |chance: &mut Chance| {
        known
            .get(chance.below(known.len().min(12)))
            .copied()
            .unwrap_or_else(|| EventId::new(1, &[7; 10]))
    };
    let heap = id(chance);
    match chance.below(ORDINARY + 6) {
        0 => GardenDescribed {
            name: chance
                .one_in(2)
                .then(|| format!("Garden {}", chance.below(9))),
            units: chance.one_in(2).then_some(UnitsSaid::Metric),
            place: None,
            invented: chance.one_in(2).then_some(true),
        }
        .into(),
        1 => PersonDescribed {
            name: format!("Person {}", chance.below(9)),
            role: Some(Role::Helper),
        }
        .into(),
        2 => MeasureDefined {
            measure: "bucket".to_owned(),
            volume_l: 8.0 + chance.below(5) as f64,
        }
        .into(),
        3 => MaterialDefined {
            material: ["hay_of_ours", "dust"][chance.below(2)].to_owned(),
            name: format!("Our {}", chance.below(9)),
            like: "straw_wheat".to_owned(),
            moisture_pct: Some(Figure::One(12.0)),
            nitrogen_pct_dry: None,
            cn_ratio_measured: None,
            bulk_density_kg_m3: None,
        }
        .into(),
        4 => MaterialMeasured {
            material: material(chance),
            laboratory: None,
            dried_sample: Some(DriedSample {
                wet_kg: 1.0,
                dry_kg: 0.1 * chance.below(10) as f64,
            }),
            weighed_measure: None,
        }
        .into(),
        5 | 22 => HeapStarted {
            name: format!("Heap {}", chance.below(9)),
            enclosure: None,
            sun: None,
            filling: None,
        }
        .into(),
        6 | 23..=25 => Fed {
            heap,
            parts: (0..=chance.below(3)).map(|_| part(chance)).collect(),
            water_l: chance.one_in(4).then_some(3.0),
        }
        .into(),
        7 => Turned {
            heap,
            thoroughness: None,
        }
        .into(),
        8 => Watered { heap, water_l: 5.0 }.into(),
        9 => Covered {
            heap,
            cover: Some(Cover::Lid),
        }
        .into(),
        10 => Uncovered { heap }.into(),
        11 => Read {
            heap,
            probes: vec![Probe {
                temperature_c: 20.0 + chance.below(50) as f64,
                depth_m: None,
                place: Some(ProbePlace::Core),
            }],
            air_temperature_c: None,
            squeeze: Some(Squeeze::Moist),
            smells: Vec::new(),
            looks: Vec::new(),
            creatures: Vec::new(),
            height_m: None,
            fill_pct: None,
            logger: None,
        }
        .into(),
        12 => Tested {
            heap,
            laboratory: None,
            self_heating: None,
            germination: None,
            bag: Some(BagTest {
                days: 3.0,
                swollen: true,
                smell: None,
            }),
        }
        .into(),
        13 | 26 => {
            let to = id(chance);
            if to == heap {
                return Uncovered { heap }.into();
            }
            Moved {
                from: heap,
                to,
                share_pct: share(chance),
            }
            .into()
        }
        14 => Rested {
            heap,
            stage: Stage::ALL[chance.below(3)],
        }
        .into(),
        15 => Harvested {
            heap,
            amount: Some(amount(chance)),
            share_pct: share(chance),
            sieve_mm: None,
            overs: None,
            overs_to: chance.one_in(3).then(|| id(chance)),
        }
        .into(),
        16 => Spread {
            bed: heap,
            heap: chance.one_in(2).then(|| id(chance)),
            amount: amount(chance),
            how: Some(How::Mulch),
        }
        .into(),
        17 => BedDescribed {
            name: format!("Bed {}", chance.below(9)),
            area_m2: 4.0,
            crop: None,
            feeding: None,
            new_ground: false,
            soil: None,
        }
        .into(),
        18 => StockPutBy {
            material: material(chance),
            conditions: conditions(chance),
            amount: amount(chance),
            scoop: chance.one_in(2).then(|| amount(chance)),
        }
        .into(),
        19 => StockUsed {
            material: material(chance),
            conditions: conditions(chance),
            amount: amount(chance),
            heap: chance.one_in(2).then_some(heap),
        }
        .into(),
        20 => StockCounted {
            material: material(chance),
            conditions: conditions(chance),
            amount: chance.one_in(2).then(|| amount(chance)),
        }
        .into(),
        _ => Noted {
            text: Some("A note.".to_owned()),
            heap: Some(heap),
            bed: None,
            picture: None,
        }
        .into(),
    }
}

/// Any content: corrections are every fourth, of anything, corrections included.
pub fn any(chance: &mut Chance, known: &[EventId]) -> Content {
    if known.is_empty() || !chance.one_in(4) {
        return ordinary(chance, known);
    }
    // Sometimes of an event that never arrives anywhere.
    let event = if chance.one_in(10) {
        EventId::new(1, &[7; 10])
    } else {
        known[chance.below(known.len())]
    };
    if chance.one_in(2) {
        return Withdrawn { event }.into();
    }
    let mut patch = Map::new();
    match chance.below(6) {
        0 => drop(patch.insert("water_l".to_owned(), json!(chance.below(9)))),
        1 => drop(patch.insert("share_pct".to_owned(), json!(40.0))),
        2 => drop(patch.insert("name".to_owned(), json!("Renamed"))),
        3 => drop(patch.insert("heap".to_owned(), json!(known[chance.below(known.len())]))),
        // Leads outside what can be.
        4 => drop(patch.insert("water_l".to_owned(), json!(-1.0))),
        _ => {}
    }
    Amended {
        event,
        happened: chance.one_in(3).then(|| moment(chance)),
        patch,
    }
    .into()
}
