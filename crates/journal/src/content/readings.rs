//! What was seen, felt, smelt and measured at a heap.

use serde::{Deserialize, Serialize};

use crate::check::{Problem, Text, Wrong, if_within, many, within};
use crate::content::heap::words;
use crate::id::EventId;

/// Temperatures that a probe can show near a heap [degC].
pub(crate) const TEMPERATURE_C: (f64, f64) = (-60.0, 120.0);

/// A heap was looked at: at least one thing was seen.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Read {
    /// Which heap.
    pub heap: EventId,
    /// What the probe showed, at each place.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub probes: Vec<Probe>,
    /// Temperature of the air [degC].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub air_temperature_c: Option<f64>,
    /// How a handful feels when it is squeezed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub squeeze: Option<Squeeze>,
    /// How it smells.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub smells: Vec<Smell>,
    /// How it looks.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub looks: Vec<Look>,
    /// What lives in it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub creatures: Vec<Creature>,
    /// Height of the heap [m].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub height_m: Option<f64>,
    /// How full the bin is, percent of its height.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fill_pct: Option<f64>,
    /// Which instrument, when it came from a logger's file.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub logger: Option<String>,
}

/// One reading of a probe.
#[derive(Clone, Copy, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Probe {
    /// What it showed [degC].
    pub temperature_c: f64,
    /// How deep it was put in [m].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub depth_m: Option<f64>,
    /// Where.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub place: Option<ProbePlace>,
}

words! {
    /// Where in a heap.
    ProbePlace {
        /// In the middle.
        Core,
        /// Between middle and wall.
        Halfway,
        /// Near the wall.
        Edge,
        /// Near the top.
        Top,
        /// Near the ground.
        Bottom,
    }
}

words! {
    /// How a handful feels when it is squeezed: the squeeze test. Common practice.
    Squeeze {
        /// Falls apart as dust.
        Dusty,
        /// Holds together badly; no sheen.
        Dry,
        /// Holds together; a drop at most comes out.
        Moist,
        /// Drops come out.
        Wet,
        /// Water runs out.
        Dripping,
    }
}

words! {
    /// How a heap smells.
    Smell {
        /// Of hardly anything.
        Faint,
        /// Of forest soil.
        Earthy,
        /// Of what went in.
        Fresh,
        /// Of ammonia.
        Ammonia,
        /// Of vinegar or silage.
        Sour,
        /// Of bad eggs or rot.
        Rotten,
        /// Of mould.
        Musty,
    }
}

words! {
    /// How a heap looks.
    Look {
        /// It steams.
        Steam,
        /// White threads or ash-like dust: fungi and actinobacteria.
        WhiteThreads,
        /// Grey or green mould.
        Mould,
        /// Grass or leaves lie in mats.
        Matted,
        /// Slimy places.
        Slimy,
        /// Dry pockets.
        DryPockets,
        /// It has sunk much.
        Sunk,
        /// Dark and crumbly.
        Crumbly,
        /// What went in is hardly to be told.
        Unrecognisable,
        /// Things grow on it.
        Sprouting,
    }
}

words! {
    /// What lives in a heap.
    Creature {
        /// Compost worms.
        Worms,
        /// Woodlice.
        Woodlice,
        /// Millipedes and centipedes.
        Millipedes,
        /// Ants.
        Ants,
        /// Small flies.
        FruitFlies,
        /// House flies and blowflies.
        Flies,
        /// Maggots of flies.
        Maggots,
        /// Fat larvae of beetles.
        BeetleGrubs,
        /// Slugs and snails.
        Slugs,
        /// Mice.
        Mice,
        /// Rats, or their holes and droppings.
        Rats,
    }
}

impl Read {
    pub(super) fn check(&self) -> Result<(), Problem> {
        let nothing = self.probes.is_empty()
            && self.air_temperature_c.is_none()
            && self.squeeze.is_none()
            && self.smells.is_empty()
            && self.looks.is_empty()
            && self.creatures.is_empty()
            && self.height_m.is_none()
            && self.fill_pct.is_none();
        if nothing {
            return Err(Problem::new("heap", Wrong::NothingRead));
        }
        many("probes", &self.probes, 0, 100)?;
        many("smells", &self.smells, 0, 20)?;
        many("looks", &self.looks, 0, 20)?;
        many("creatures", &self.creatures, 0, 20)?;
        let (least, most) = TEMPERATURE_C;
        for (index, probe) in self.probes.iter().enumerate() {
            within(
                &format!("probes[{index}].temperature_c"),
                probe.temperature_c,
                least,
                most,
            )?;
            if_within(
                &format!("probes[{index}].depth_m"),
                probe.depth_m,
                0.0,
                10.0,
            )?;
        }
        if_within("air_temperature_c", self.air_temperature_c, least, most)?;
        if_within("height_m", self.height_m, 0.0, 10.0)?;
        if_within("fill_pct", self.fill_pct, 0.0, 200.0)?;
        self.logger
            .as_deref()
            .map_or(Ok(()), |logger| Text::name("logger", logger))
    }
}
