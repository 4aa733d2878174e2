//! What one heap needs, case by case: what was written down, and what must and must not be asked.

#![allow(clippy::unwrap_used)]

mod heat;
mod hurts;
mod ripening;
mod water;

use heapwright_answers::today::{
    Because, Caution, Kind, Need, On, TodayAnswer, Urgency, What, today,
};
use heapwright_catalogue::Catalogue;
use heapwright_garden::Garden;
use heapwright_journal::content::{
    BagTest, Cover, Creature, Enclosure, Fed, GerminationTest, Harvested, HeapStarted, Look,
    PartFed, Probe, ProbePlace, Read, Rested, Shape, Smell, Squeeze, Stage, StockPutBy, Tested,
    Thoroughness, Turned, Watered,
};
use heapwright_journal::{AmountSaid, Content, DeviceId, EventId, Moment};
use heapwright_state::{Now, Recorder, State};

/// Noon of an ordinary day; all times are days before it.
const NOW: &str = "2026-06-15T12:00:00+02:00";

struct Case {
    state: State,
    heap: EventId,
    count: u8,
}

fn now() -> Moment {
    NOW.parse().unwrap()
}

fn days_ago(days: f64) -> Moment {
    let now = now();
    Moment::new(
        now.instant_ms - (days * 86_400_000.0) as i64,
        now.offset_min,
    )
    .unwrap()
}

fn amount(count: f64, unit: &str) -> AmountSaid {
    AmountSaid {
        count,
        unit: unit.to_owned(),
    }
}

fn part(material: &str, count: f64, unit: &str) -> PartFed {
    PartFed {
        material: Some(material.to_owned()),
        custom: None,
        amount: amount(count, unit),
        conditions: Vec::new(),
        moisture_pct: None,
        nitrogen_pct_dry: None,
        cn_ratio: None,
        bulk_density_kg_m3: None,
        from_stores: false,
    }
}

impl Case {
    /// An open box of a metre each way that was started so many days ago.
    fn new(started_days_ago: f64, height_m: f64) -> Self {
        let mut case = Self {
            state: State::default(),
            heap: EventId::new(1, &[0; 10]),
            count: 0,
        };
        let started = HeapStarted {
            name: "Bin".to_owned(),
            enclosure: Some(Enclosure {
                shape: Shape::Box,
                width_m: 1.0,
                depth_m: None,
                height_m,
                wall: None,
                cover: Some(Cover::None),
                ground: None,
            }),
            sun: None,
            filling: None,
        };
        case.heap = case.write(started_days_ago, started);
        case
    }

    /// The same with a feed of usual figures.
    fn fed(fed_days_ago: f64) -> Self {
        let mut case = Self::new(fed_days_ago, 1.0);
        case.feed(
            fed_days_ago,
            vec![
                part("grass_clippings_fresh", 8.0, "kg"),
                part("dry_leaves_mixed", 9.0, "kg"),
            ],
            Some(4.0),
        );
        case
    }

    fn write(&mut self, days: f64, content: impl Into<Content>) -> EventId {
        self.count += 1;
        let at = days_ago(days);
        let mut recorder = Recorder::new(DeviceId(5), &self.state, at);
        let chance = Now {
            moment: at,
            random: [self.count; 10],
        };
        let (line, event) = recorder
            .record(&self.state, content.into(), at, None, chance)
            .unwrap();
        let id = event.id;
        self.state.take(line.digest(), event);
        id
    }

    fn feed(&mut self, days: f64, parts: Vec<PartFed>, water_l: Option<f64>) {
        let heap = self.heap;
        self.write(
            days,
            Fed {
                heap,
                parts,
                water_l,
            },
        );
    }

    fn look(&mut self, days: f64, change: impl FnOnce(&mut Read)) {
        let mut read = Read {
            heap: self.heap,
            probes: Vec::new(),
            air_temperature_c: None,
            squeeze: None,
            smells: Vec::new(),
            looks: Vec::new(),
            creatures: Vec::new(),
            height_m: None,
            fill_pct: None,
            logger: None,
        };
        change(&mut read);
        self.write(days, read);
    }

    fn core(&mut self, days: f64, temperature_c: f64) {
        self.look(days, |read| {
            read.probes.push(Probe {
                temperature_c,
                depth_m: None,
                place: Some(ProbePlace::Core),
            });
        });
    }

    fn water(&mut self, days: f64, water_l: f64) {
        let heap = self.heap;
        self.write(days, Watered { heap, water_l });
    }

    fn turn(&mut self, days: f64) {
        let heap = self.heap;
        self.write(
            days,
            Turned {
                heap,
                thoroughness: Some(Thoroughness::InsideOut),
            },
        );
    }

    fn put_by(&mut self, material: &str, count: f64) {
        self.write(
            29.0,
            StockPutBy {
                material: material.to_owned(),
                conditions: Vec::new(),
                amount: amount(count, "bucket"),
                scoop: None,
            },
        );
    }

    fn rest(&mut self, days: f64) {
        let heap = self.heap;
        self.write(
            days,
            Rested {
                heap,
                stage: Stage::Curing,
            },
        );
    }

    fn asked(&self) -> TodayAnswer {
        let catalogue = Catalogue::built_in();
        let garden = Garden::from_state(catalogue, &self.state, now());
        today(catalogue, &garden, &self.state, now())
    }

    fn kinds(&self) -> Vec<Kind> {
        self.asked()
            .needs
            .iter()
            .map(|need| need.what.kind())
            .collect()
    }

    fn need(&self, kind: Kind) -> Need {
        let answer = self.asked();
        let found = answer.needs.iter().find(|need| need.what.kind() == kind);
        found
            .unwrap_or_else(|| panic!("no {kind:?} among {:#?}", answer.needs))
            .clone()
    }
}

#[test]
fn a_sound_heap_is_quiet_and_says_when_to_look_again() {
    let mut case = Case::fed(5.0);
    case.look(1.0, |read| {
        read.squeeze = Some(Squeeze::Moist);
        read.smells.push(Smell::Earthy);
    });
    let answer = case.asked();
    assert!(answer.needs.is_empty(), "{:#?}", answer.needs);
    let again = answer.quiet[0].again.unwrap();
    assert_eq!(again.to_string(), "2026-06-28");
    assert_eq!(answer.dates[0].kind, Kind::Look);
}

#[test]
fn an_empty_heap_asks_for_nothing() {
    let case = Case::new(3.0, 1.0);
    let answer = case.asked();
    assert!(answer.needs.is_empty() && answer.dates.is_empty());
    assert_eq!(answer.quiet.len(), 1);
    let mut case = Case::fed(90.0);
    let heap = case.heap;
    case.write(
        1.0,
        Harvested {
            heap,
            amount: None,
            share_pct: None,
            sieve_mm: None,
            overs: None,
            overs_to: None,
        },
    );
    assert!(case.asked().needs.is_empty());
}

#[test]
fn what_nose_and_eye_saw_is_answered_until_something_was_done() {
    let mut case = Case::fed(9.0);
    case.look(1.0, |read| read.smells.push(Smell::Rotten));
    let need = case.need(Kind::Turn);
    assert!(need.cautions.contains(&Caution::Fumes));
    let mut case = Case::fed(9.0);
    case.look(1.0, |read| read.creatures.push(Creature::Rats));
    let need = case.need(Kind::KeepAnimalsOut);
    assert_eq!(need.urgency, Urgency::Now);
    assert!(need.cautions.contains(&Caution::Animals));
    let mut case = Case::fed(9.0);
    case.look(1.0, |read| read.looks.push(Look::Slimy));
    assert_eq!(case.kinds(), [Kind::Turn]);
    // What was seen a month ago is no news.
    let mut case = Case::fed(29.0);
    case.look(20.0, |read| read.smells.push(Smell::Rotten));
    assert_eq!(case.kinds(), [Kind::Look]);
}

#[test]
fn flies_are_covered_with_browns_from_the_stores_or_turned_under() {
    let mut case = Case::fed(9.0);
    case.look(1.0, |read| read.creatures.push(Creature::FruitFlies));
    assert_eq!(case.kinds(), [Kind::Turn]);
    let mut case = Case::fed(9.0);
    case.put_by("dry_leaves_mixed", 20.0);
    case.look(1.0, |read| read.creatures.push(Creature::FruitFlies));
    let need = case.need(Kind::CoverWithBrowns);
    let Some(Content::Fed(fed)) = need.entry else {
        panic!("{:?}", need.entry)
    };
    // 5 cm on a square metre are 50 litres.
    assert!(fed.parts[0].from_stores);
    assert!(
        fed.parts[0].amount.count >= 3.0,
        "{:?}",
        fed.parts[0].amount
    );
}

#[test]
fn a_wet_feed_gets_browns_from_the_stores_that_bring_it_into_the_region() {
    let mut case = Case::new(3.0, 1.0);
    case.put_by("dry_leaves_mixed", 30.0);
    case.feed(2.0, vec![part("grass_clippings_fresh", 20.0, "kg")], None);
    let need = case.need(Kind::AddBrowns);
    let What::AddBrowns {
        recipe: Some(recipe),
        ..
    } = &need.what
    else {
        panic!("{need:#?}")
    };
    let mixture = &recipe.whole.mixture;
    let ratio = mixture.carbon_to_nitrogen.unwrap().value;
    let moisture = mixture.moisture_wet_basis.value;
    assert!((25.0 - 1e-6..=40.0 + 1e-6).contains(&ratio), "{ratio}");
    assert!((0.5 - 1e-6..=0.6 + 1e-6).contains(&moisture), "{moisture}");
    // Without stores it is told what would help.
    let mut case = Case::new(3.0, 1.0);
    case.feed(2.0, vec![part("grass_clippings_fresh", 20.0, "kg")], None);
    let need = case.need(Kind::AddBrowns);
    assert!(need.entry.is_none());
    assert!(matches!(&need.what, What::AddBrowns { recipe: None, help } if !help.is_empty()));
}

#[test]
fn browns_that_run_out_are_told_of_by_the_keepers_own_pace() {
    let mut case = Case::new(20.0, 1.0);
    case.put_by("dry_leaves_mixed", 10.0);
    let from_stores = |count| {
        let mut part = part("dry_leaves_mixed", count, "bucket");
        part.from_stores = true;
        vec![part, self::part("grass_clippings_fresh", 3.0, "kg")]
    };
    case.feed(18.0, from_stores(3.0), None);
    case.feed(4.0, from_stores(4.0), None);
    let need = case.need(Kind::Restock);
    // 7 buckets in 28 days: 3 last 12 days.
    assert!(
        matches!(need.because[0], Because::RunsOut { days } if (days - 12.0).abs() < 1e-6),
        "{need:#?}"
    );
    case.feed(1.0, from_stores(3.0), None);
    assert_eq!(case.need(Kind::Restock).because, [Because::UsedUp]);
}
