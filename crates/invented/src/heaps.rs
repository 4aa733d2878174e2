//! The life of a heap: started, fed, left to cure, emptied.

use heapwright_journal::EventId;
use heapwright_journal::content::{
    Cover, CustomPart, Enclosure, Fed, Filling, Ground, HeapStarted, PartFed, Shape, Stage, Sun,
    Wall,
};

use crate::chance::Chance;
use crate::seasons::{self, BROWNS, GARDEN, KITCHEN};
use crate::stores::Stores;
use crate::warmth::Warmth;

/// A heap that is there.
#[derive(Clone, Debug)]
pub(crate) struct Bay {
    pub(crate) id: EventId,
    pub(crate) stage: Stage,
    pub(crate) warmth: Warmth,
    /// 0 is dust, 1 is dripping.
    pub(crate) wetness: f64,
    /// How full, 0 to 1.
    pub(crate) full: f64,
    /// How many feeds fill it.
    room: f64,
    pub(crate) height_m: f64,
    pub(crate) covered: bool,
    /// Days for which it stays as it is.
    pub(crate) days_left: u32,
    /// Harvests still to come.
    pub(crate) harvests_left: u32,
}

/// Places by which heaps are called.
const PLACES: [&str; 6] = [
    "bay by the wall",
    "pallet box",
    "wire ring",
    "black bin",
    "bay under the elder",
    "long bay",
];

/// The start of the n-th heap of a garden.
pub(crate) fn start(chance: &mut Chance, number: usize, year: i16) -> HeapStarted {
    let kind = chance.below(PLACES.len());
    let (shape, wall, width_m, depth_m) = match kind {
        2 => (Shape::Cylinder, Some(Wall::Mesh), 1.0, None),
        3 => (Shape::Cylinder, Some(Wall::Plastic), 0.8, None),
        1 => (Shape::Box, Some(Wall::Slatted), 1.2, Some(1.0)),
        5 => (Shape::Box, Some(Wall::Wood), 1.5, Some(3.0)),
        _ => (Shape::Box, Some(Wall::Wood), 1.25, Some(1.25)),
    };
    let enclosure = Enclosure {
        shape,
        width_m,
        depth_m,
        height_m: chance.stepped(0.9, 1.2, 0.05),
        wall,
        cover: (kind == 3).then_some(Cover::Lid),
        ground: chance.happens(0.7).then_some(Ground::Soil),
    };
    HeapStarted {
        name: format!("Heap {number} of {year}, {}", PLACES[kind]),
        enclosure: chance.happens(0.9).then_some(enclosure),
        sun: chance
            .one_of(&[Some(Sun::Shade), Some(Sun::Part), None])
            .copied()
            .flatten(),
        filling: chance.happens(0.6).then_some(Filling::LittleByLittle),
    }
}

impl Bay {
    /// A heap that has just been started.
    pub(crate) fn new(chance: &mut Chance, id: EventId, height_m: f64, room: f64) -> Self {
        Self {
            id,
            stage: Stage::Active,
            warmth: Warmth::default(),
            wetness: 0.5,
            full: 0.05,
            room,
            height_m,
            covered: false,
            days_left: 70 + u32::try_from(chance.below(110)).unwrap_or(0),
            harvests_left: 0,
        }
    }

    /// A day passes: it sinks, dries or is rained on.
    pub(crate) fn day(&mut self, air_c: f64) {
        self.warmth.day();
        self.days_left = self.days_left.saturating_sub(1);
        self.full = (self.full * 0.995).max(0.05);
        let drying = 0.006 + 0.0008 * air_c;
        let rain = if self.covered { 0.0 } else { 0.014 };
        self.wetness = (self.wetness + rain - drying).clamp(0.05, 1.0);
    }

    /// Something goes in.
    pub(crate) fn takes(&mut self, food: f64) {
        self.warmth.fed(food);
        self.full = (self.full + 1.0 / self.room).min(1.05);
        self.wetness = (self.wetness + 0.02 * food).min(1.0);
    }
}

/// A feed for a heap: from the kitchen or the garden, with browns from the stores when there are
/// any. Gives how much food it is, too.
pub(crate) fn feed(
    chance: &mut Chance,
    stores: &mut Stores,
    heap: EventId,
    month: i8,
) -> (Fed, f64) {
    let greens = if chance.happens(0.55) {
        KITCHEN
    } else {
        GARDEN
    };
    let mut parts = Vec::new();
    let mut food = 0.0;
    let count = [1, 1, 1, 2, 2, 3][chance.below(6)];
    for _ in 0..count {
        let Some(material) = seasons::drawn(chance, greens, month).filter(|one| one.is_in(month))
        else {
            continue;
        };
        if parts
            .iter()
            .any(|part: &PartFed| part.material.as_deref() == Some(material.material))
        {
            continue;
        }
        let mut part = material.part(chance);
        if chance.happens(0.02) {
            part.moisture_pct = Some(chance.stepped(60.0, 88.0, 1.0));
        }
        food += 0.12 * material.quick;
        parts.push(part);
    }
    if chance.happens(0.004) {
        parts.push(described_outright(chance));
    }
    if chance.happens(0.55) {
        match stores.hand_out(chance) {
            Some(part) => parts.push(part),
            None => {
                let brown = seasons::drawn(chance, BROWNS, month);
                parts.extend(
                    brown
                        .filter(|one| one.is_in(month))
                        .map(|one| one.part(chance)),
                );
            }
        }
    }
    let water_l =
        (parts.is_empty() || chance.happens(0.06)).then(|| chance.stepped(2.0, 10.0, 1.0));
    let fed = Fed {
        heap,
        parts,
        water_l,
    };
    (fed, food + 0.01)
}

/// A material that no table has.
fn described_outright(chance: &mut Chance) -> PartFed {
    PartFed {
        material: None,
        custom: Some(CustomPart {
            name: "pressings of an invented cider".to_owned(),
            moisture_pct: chance.stepped(70.0, 80.0, 1.0),
            carbon_pct_dry: Some(48.0),
            nitrogen_pct_dry: None,
            cn_ratio: Some(chance.stepped(30.0, 50.0, 1.0)),
            bulk_density_kg_m3: Some(600.0),
            ash_pct_dry: None,
            phosphorus_pct_dry: None,
            potassium_pct_dry: None,
            calcium_pct_dry: None,
            magnesium_pct_dry: None,
            sodium_pct_dry: None,
        }),
        amount: heapwright_journal::AmountSaid {
            count: chance.stepped(5.0, 20.0, 1.0),
            unit: "kg".to_owned(),
        },
        conditions: Vec::new(),
        moisture_pct: None,
        nitrogen_pct_dry: None,
        cn_ratio: None,
        bulk_density_kg_m3: None,
        from_stores: false,
    }
}
