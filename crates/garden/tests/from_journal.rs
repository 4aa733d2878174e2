//! The garden and its heaps as a journal tells of them.
#![allow(clippy::unwrap_used)]

use heapwright_catalogue::Catalogue;
use heapwright_garden::{Garden, part_fed};
use heapwright_journal::content::{
    Fed, HeapStarted, MeasureDefined, PartFed, StockCounted, StockPutBy, StockUsed, Watered,
};
use heapwright_journal::{AmountSaid, Content, DeviceId, EventId, Moment};
use heapwright_state::{Now, Recorder, State};

const DAY_MS: i64 = 86_400_000;

fn day(day: i64) -> Moment {
    Moment::new(1_777_600_000_000 + day * DAY_MS, 0).unwrap()
}

fn said(count: f64, unit: &str) -> AmountSaid {
    AmountSaid {
        count,
        unit: unit.to_owned(),
    }
}

fn part(material: &str, amount: AmountSaid, from_stores: bool) -> PartFed {
    PartFed {
        material: Some(material.to_owned()),
        custom: None,
        amount,
        conditions: Vec::new(),
        moisture_pct: None,
        nitrogen_pct_dry: None,
        cn_ratio: None,
        bulk_density_kg_m3: None,
        from_stores,
    }
}

struct Pen {
    state: State,
    recorder: Recorder,
    count: u8,
}

impl Pen {
    fn new() -> Self {
        let state = State::default();
        Self {
            recorder: Recorder::new(DeviceId(1), &state, day(0)),
            state,
            count: 0,
        }
    }

    fn write(&mut self, content: impl Into<Content>, on: i64) -> EventId {
        self.count += 1;
        let now = Now {
            moment: day(100),
            random: [self.count; 10],
        };
        let (line, event) = self
            .recorder
            .record(&self.state, content.into(), day(on), None, now)
            .unwrap();
        let id = event.id;
        assert!(self.state.take(line.digest(), event));
        id
    }

    fn garden(&self) -> Garden {
        Garden::from_state(Catalogue::built_in(), &self.state, day(100))
    }

    fn heap(&mut self) -> EventId {
        self.write(
            HeapStarted {
                name: "Bin".to_owned(),
                enclosure: None,
                sun: None,
                filling: None,
            },
            0,
        )
    }
}

#[test]
fn a_feed_counts_with_the_vessel_of_its_time() {
    let mut pen = Pen::new();
    let heap = pen.heap();
    let bucket = |volume_l| MeasureDefined {
        measure: "bucket".to_owned(),
        volume_l,
    };
    pen.write(bucket(10.0), 5);
    pen.write(bucket(15.0), 20);
    for on in [1, 10, 30] {
        let parts = vec![part("coffee_grounds", said(3.0, "bucket"), false)];
        pen.write(
            Fed {
                heap,
                parts,
                water_l: Some(2.0),
            },
            on,
        );
    }
    pen.write(Watered { heap, water_l: 5.0 }, 31);
    let garden = pen.garden();
    let contents = pen.state.contents(heap);
    let (parts, water_kg) = garden.parts_of(Catalogue::built_in(), &pen.state, &contents);
    // Twice three of 10 L, the earliest too, and three of 15 L, told in buckets of now.
    assert_eq!(parts.len(), 1);
    assert!((parts[0].amount.count - (2.0 * 3.0 * 10.0 / 15.0 + 3.0)).abs() < 1e-12);
    assert_eq!(water_kg, 11.0);
}

#[test]
fn parts_come_back_as_they_were_meant() {
    let mut told = part("coffee_grounds", said(2.0, "kg"), true);
    told.conditions = vec!["wet".to_owned()];
    told.moisture_pct = Some(62.5);
    told.cn_ratio = Some(20.0);
    assert_eq!(part_fed(&heapwright_garden::found(&told), true), told);
}

#[test]
fn stores_are_what_was_counted_and_put_by_less_what_went() {
    let mut pen = Pen::new();
    let heap = pen.heap();
    let straw = "straw_wheat".to_owned();
    let put = |count, unit: &str| StockPutBy {
        material: straw.clone(),
        conditions: Vec::new(),
        amount: said(count, unit),
        scoop: None,
    };
    pen.write(put(50.0, "bucket"), 1);
    pen.write(
        StockCounted {
            material: straw.clone(),
            conditions: Vec::new(),
            amount: Some(said(10.0, "bucket")),
        },
        2,
    );
    pen.write(put(4.0, "bucket"), 3);
    pen.write(
        StockUsed {
            material: straw.clone(),
            conditions: Vec::new(),
            amount: said(1.0, "bucket"),
            heap: None,
        },
        4,
    );
    let parts = vec![
        part("straw_wheat", said(2.0, "bucket"), true),
        part("straw_wheat", said(5.0, "bucket"), false),
        part("coffee_grounds", said(1.0, "bucket"), true),
    ];
    pen.write(
        Fed {
            heap,
            parts,
            water_l: None,
        },
        5,
    );
    let stores = pen.garden().stores;
    assert_eq!(
        stores.len(),
        1,
        "what was never put by is no store: {stores:?}"
    );
    let amount = stores[0].amount.as_ref().unwrap();
    assert!((amount.count - 11.0).abs() < 1e-9, "{amount:?}");
    // By weight: a third unit, turned into buckets by the density of straw.
    pen.write(put(1.0, "kg"), 6);
    let stores = pen.garden().stores;
    let kilograms = stores[0].amount.as_ref().unwrap();
    assert_eq!(AmountSaid::from(kilograms).unit, "kg");
    pen.write(
        StockCounted {
            material: straw,
            conditions: Vec::new(),
            amount: None,
        },
        7,
    );
    assert!(pen.garden().stores.is_empty());
}

#[test]
fn stores_never_owe_and_count_with_the_vessels_of_their_time() {
    let mut pen = Pen::new();
    let straw = "straw_wheat".to_owned();
    let put = |count, unit: &str| StockPutBy {
        material: straw.clone(),
        conditions: Vec::new(),
        amount: said(count, unit),
        scoop: None,
    };
    let used = |count, unit: &str| StockUsed {
        material: straw.clone(),
        conditions: Vec::new(),
        amount: said(count, unit),
        heap: None,
    };
    let left = |pen: &Pen| pen.garden().stores[0].amount.as_ref().unwrap().count;
    pen.write(put(5.0, "kg"), 1);
    pen.write(used(8.0, "kg"), 2);
    pen.write(put(10.0, "kg"), 3);
    assert!((left(&pen) - 10.0).abs() < 1e-9, "what came later is there");
    let mut pen = Pen::new();
    let bucket = |volume_l| MeasureDefined {
        measure: "bucket".to_owned(),
        volume_l,
    };
    pen.write(bucket(10.0), 1);
    pen.write(put(10.0, "bucket"), 2);
    pen.write(bucket(20.0), 3);
    pen.write(used(50.0, "L"), 4);
    assert!((left(&pen) - 2.5).abs() < 1e-9, "50 L in buckets of 20 L");
    let mut pen = Pen::new();
    pen.write(put(0.015, "t"), 1);
    assert!((left(&pen) - 0.015).abs() < 1e-12, "15 kg are not nothing");
}
