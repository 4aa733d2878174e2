//! What somebody with a probe sees, feels and smells there.

use heapwright_journal::EventId;
use heapwright_journal::content::{Creature, Look, Probe, ProbePlace, Read, Smell, Squeeze, Stage};

use crate::chance::{Chance, rounded};
use crate::heaps::Bay;

/// A reading of nothing yet.
pub(crate) fn empty(heap: EventId) -> Read {
    Read {
        heap,
        probes: Vec::new(),
        air_temperature_c: None,
        squeeze: None,
        smells: Vec::new(),
        looks: Vec::new(),
        creatures: Vec::new(),
        height_m: None,
        fill_pct: None,
        logger: None,
    }
}

/// A look at a heap, with a probe more often than not.
pub(crate) fn look(chance: &mut Chance, bay: &Bay, air_c: f64) -> Read {
    let mut read = empty(bay.id);
    if chance.happens(0.75) {
        read.probes = probes(chance, bay, air_c);
        if chance.happens(0.4) {
            read.air_temperature_c = Some(rounded(air_c, 0.5));
        }
    }
    if read.probes.is_empty() || chance.happens(0.3) {
        read.squeeze = Some(squeeze(chance, bay));
    }
    if chance.happens(0.25) {
        read.smells.push(smell(chance, bay));
    }
    if chance.happens(0.2) {
        read.looks.push(sight(chance, bay, air_c));
    }
    if chance.happens(0.15) {
        read.creatures.push(creature(chance, bay));
    }
    if chance.happens(0.2) {
        read.fill_pct = Some(rounded(bay.full * 100.0, 5.0).clamp(5.0, 110.0));
    }
    if chance.happens(0.05) {
        read.height_m = Some(rounded(bay.height_m * bay.full, 0.05).clamp(0.05, bay.height_m));
    }
    read
}

/// A line of a logger's file: the middle alone.
pub(crate) fn logged(chance: &mut Chance, bay: &Bay, air_c: f64) -> Read {
    let core_c = bay.warmth.core_c(air_c) + chance.between(-1.0, 1.0);
    Read {
        probes: vec![Probe {
            temperature_c: rounded(core_c, 0.1),
            depth_m: Some(0.4),
            place: Some(ProbePlace::Core),
        }],
        logger: Some("an invented logger".to_owned()),
        ..empty(bay.id)
    }
}

fn probes(chance: &mut Chance, bay: &Bay, air_c: f64) -> Vec<Probe> {
    let mut probe = |place, depth_m, temperature_c: f64| Probe {
        temperature_c: rounded(temperature_c + chance.between(-2.5, 2.5), 0.5),
        depth_m,
        place: Some(place),
    };
    let [core_c, edge_c] = [bay.warmth.core_c(air_c), bay.warmth.edge_c(air_c)];
    let core = probe(ProbePlace::Core, Some(0.4), core_c);
    let edge = probe(ProbePlace::Edge, Some(0.15), edge_c);
    let top = probe(ProbePlace::Top, None, (core_c + edge_c) / 2.0);
    match chance.below(4) {
        0 => vec![core, edge],
        1 => vec![core, edge, top],
        _ => vec![core],
    }
}

fn squeeze(chance: &mut Chance, bay: &Bay) -> Squeeze {
    let wetness = bay.wetness + chance.between(-0.15, 0.15);
    match wetness {
        ..0.15 => Squeeze::Dusty,
        ..0.35 => Squeeze::Dry,
        ..0.65 => Squeeze::Moist,
        ..0.9 => Squeeze::Wet,
        _ => Squeeze::Dripping,
    }
}

fn smell(chance: &mut Chance, bay: &Bay) -> Smell {
    let some: &[Smell] = match (bay.stage, bay.wetness > 0.75) {
        (Stage::Active, true) => &[Smell::Sour, Smell::Rotten, Smell::Ammonia],
        (Stage::Active, false) => &[Smell::Fresh, Smell::Fresh, Smell::Earthy, Smell::Ammonia],
        _ => &[Smell::Earthy, Smell::Earthy, Smell::Faint, Smell::Musty],
    };
    chance.one_of(some).copied().unwrap_or(Smell::Faint)
}

fn sight(chance: &mut Chance, bay: &Bay, air_c: f64) -> Look {
    let some: &[Look] = if bay.stage != Stage::Active {
        &[
            Look::Crumbly,
            Look::Unrecognisable,
            Look::Sunk,
            Look::Sprouting,
        ]
    } else if bay.warmth.core_c(air_c) > 50.0 {
        &[Look::Steam, Look::WhiteThreads, Look::DryPockets]
    } else {
        &[Look::Matted, Look::Slimy, Look::Mould, Look::Sunk]
    };
    chance.one_of(some).copied().unwrap_or(Look::Sunk)
}

fn creature(chance: &mut Chance, bay: &Bay) -> Creature {
    let some: &[Creature] = if bay.stage == Stage::Active {
        &[
            Creature::FruitFlies,
            Creature::Woodlice,
            Creature::Worms,
            Creature::Ants,
            Creature::BeetleGrubs,
            Creature::Mice,
        ]
    } else {
        &[
            Creature::Worms,
            Creature::Worms,
            Creature::Woodlice,
            Creature::Millipedes,
        ]
    };
    chance.one_of(some).copied().unwrap_or(Creature::Worms)
}
