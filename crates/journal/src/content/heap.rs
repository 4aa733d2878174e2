//! Heaps: started, fed, turned, watered, covered, moved, rested.

use serde::{Deserialize, Serialize};

use crate::amount::AmountSaid;
use crate::check::{Problem, Text, Wrong, if_within, many, within};
use crate::id::EventId;

macro_rules! words {
    ($(#[doc = $doc:literal])+ $name:ident { $($(#[doc = $what:literal])+ $word:ident),+ $(,)? }) => {
        $(#[doc = $doc])+
        #[derive(Clone, Copy, Debug, serde::Deserialize, PartialEq, Eq, PartialOrd, Ord, serde::Serialize)]
        #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
        #[serde(rename_all = "snake_case")]
        pub enum $name {
            $($(#[doc = $what])+ $word,)+
            /// One that a newer program knows.
            #[serde(other)]
            Other,
        }

        impl $name {
            /// Those that this program knows.
            pub const ALL: &'static [Self] = &[$(Self::$word),+];
        }
    };
}
pub(super) use words;

/// A heap was started; it goes by the id of this event.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct HeapStarted {
    /// Name to show.
    pub name: String,
    /// In what it stands.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub enclosure: Option<Enclosure>,
    /// How much sun it has.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sun: Option<Sun>,
    /// How it is filled.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub filling: Option<Filling>,
}

/// In what a heap stands: its room when full.
#[derive(Clone, Copy, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Enclosure {
    /// Its shape.
    pub shape: Shape,
    /// Width, or diameter [m].
    pub width_m: f64,
    /// Depth [m]; as the width when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub depth_m: Option<f64>,
    /// Height [m]; the length of a drum that lies.
    pub height_m: f64,
    /// Its wall; none for a free-standing heap.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wall: Option<Wall>,
    /// Its cover when it is started.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cover: Option<Cover>,
    /// On what it stands.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ground: Option<Ground>,
}

words! {
    /// Shape of a heap.
    Shape {
        /// Upright, with corners.
        Box,
        /// Upright and round.
        Cylinder,
        /// Free-standing.
        Cone,
        /// A drum that is turned about its axis.
        Drum,
    }
}

words! {
    /// Wall of a heap.
    Wall {
        /// None.
        Open,
        /// Wire mesh.
        Mesh,
        /// Boards or pallets with gaps.
        Slatted,
        /// Closed boards.
        Wood,
        /// Plastic.
        Plastic,
        /// Sheet metal.
        Metal,
        /// Double or padded.
        Insulated,
    }
}

words! {
    /// Cover of a heap.
    Cover {
        /// None.
        None,
        /// A sheet, sack or carpet that lies on it.
        Sheet,
        /// A lid that closes.
        Lid,
        /// A roof that keeps the rain off.
        Roof,
    }
}

words! {
    /// On what a heap stands.
    Ground {
        /// Bare soil.
        Soil,
        /// Paving or a closed floor.
        Paving,
    }
}

words! {
    /// How much sun a heap has.
    Sun {
        /// Hardly any.
        Shade,
        /// Half of the day.
        Part,
        /// Most of the day.
        Full,
    }
}

words! {
    /// How a heap is filled.
    Filling {
        /// Fed as things come.
        LittleByLittle,
        /// Built in one go.
        AtOnce,
    }
}

impl HeapStarted {
    pub(super) fn check(&self) -> Result<(), Problem> {
        Text::name("name", &self.name)?;
        let Some(enclosure) = &self.enclosure else {
            return Ok(());
        };
        // From a bucket to a windrow.
        within("enclosure.width_m", enclosure.width_m, 0.1, 20.0)?;
        if_within("enclosure.depth_m", enclosure.depth_m, 0.1, 200.0)?;
        within("enclosure.height_m", enclosure.height_m, 0.1, 10.0)
    }
}

/// A heap was fed.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Fed {
    /// Which heap.
    pub heap: EventId,
    /// What went in, 1 to 200 parts; none when only water did.
    #[serde(default)]
    pub parts: Vec<PartFed>,
    /// Water that was poured with it [L].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub water_l: Option<f64>,
}

/// One material of a feed: one of the catalogue or of the garden, or one described outright.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PartFed {
    /// Id of the material. Either this or `custom`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub material: Option<String>,
    /// A material described outright. Either this or `material`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub custom: Option<CustomPart>,
    /// How much.
    pub amount: AmountSaid,
    /// Ids of the conditions it was in ("wet", "shredded").
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub conditions: Vec<String>,
    /// Moisture that was stated, percent of the mass as found.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub moisture_pct: Option<f64>,
    /// Nitrogen that was stated, percent of dry matter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub nitrogen_pct_dry: Option<f64>,
    /// Carbon to nitrogen that was stated.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cn_ratio: Option<f64>,
    /// Bulk density that was stated, as it lies, wet.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bulk_density_kg_m3: Option<f64>,
    /// True when it was taken from the stores.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub from_stores: bool,
}

/// A material described outright. Two of carbon, nitrogen and C:N are needed.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CustomPart {
    /// What to call it.
    pub name: String,
    /// Moisture, percent of the mass as found.
    pub moisture_pct: f64,
    /// Carbon, percent of dry matter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub carbon_pct_dry: Option<f64>,
    /// Nitrogen, percent of dry matter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub nitrogen_pct_dry: Option<f64>,
    /// Carbon to nitrogen.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cn_ratio: Option<f64>,
    /// Bulk density as it lies, wet.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bulk_density_kg_m3: Option<f64>,
    /// Ash, percent of dry matter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ash_pct_dry: Option<f64>,
    /// Phosphorus (the element), percent of dry matter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub phosphorus_pct_dry: Option<f64>,
    /// Potassium (the element), percent of dry matter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub potassium_pct_dry: Option<f64>,
    /// Calcium (the element), percent of dry matter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub calcium_pct_dry: Option<f64>,
    /// Magnesium (the element), percent of dry matter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub magnesium_pct_dry: Option<f64>,
    /// Sodium (the element), percent of dry matter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sodium_pct_dry: Option<f64>,
}

/// The most water of one watering [L].
const MOST_WATER_L: f64 = 100_000.0;

impl Fed {
    pub(super) fn check(&self) -> Result<(), Problem> {
        many(
            "parts",
            &self.parts,
            usize::from(self.water_l.is_none()),
            200,
        )?;
        if_within("water_l", self.water_l, 0.0, MOST_WATER_L)?;
        for (index, part) in self.parts.iter().enumerate() {
            part.check(&format!("parts[{index}]"))?;
        }
        Ok(())
    }
}

impl PartFed {
    fn check(&self, field: &str) -> Result<(), Problem> {
        match (&self.material, &self.custom) {
            (Some(material), None) => Text::id(&format!("{field}.material"), material)?,
            (None, Some(custom)) => custom.check(&format!("{field}.custom"))?,
            _ => {
                return Err(Problem::new(field, Wrong::MaterialOrCustom));
            }
        }
        self.amount.check(&format!("{field}.amount"))?;
        many(&format!("{field}.conditions"), &self.conditions, 0, 10)?;
        for condition in &self.conditions {
            Text::id(&format!("{field}.conditions"), condition)?;
        }
        for (name, stated, least, most) in [
            ("moisture_pct", self.moisture_pct, 0.0, 99.9),
            ("nitrogen_pct_dry", self.nitrogen_pct_dry, 0.0, 50.0),
            ("cn_ratio", self.cn_ratio, 0.1, 10_000.0),
            ("bulk_density_kg_m3", self.bulk_density_kg_m3, 5.0, 3000.0),
        ] {
            if_within(&format!("{field}.{name}"), stated, least, most)?;
        }
        Ok(())
    }
}

impl CustomPart {
    fn check(&self, field: &str) -> Result<(), Problem> {
        Text::name(&format!("{field}.name"), &self.name)?;
        within(
            &format!("{field}.moisture_pct"),
            self.moisture_pct,
            0.0,
            99.9,
        )?;
        for (name, stated) in [
            ("carbon_pct_dry", self.carbon_pct_dry),
            ("nitrogen_pct_dry", self.nitrogen_pct_dry),
            ("ash_pct_dry", self.ash_pct_dry),
            ("phosphorus_pct_dry", self.phosphorus_pct_dry),
            ("potassium_pct_dry", self.potassium_pct_dry),
            ("calcium_pct_dry", self.calcium_pct_dry),
            ("magnesium_pct_dry", self.magnesium_pct_dry),
            ("sodium_pct_dry", self.sodium_pct_dry),
        ] {
            if_within(&format!("{field}.{name}"), stated, 0.0, 100.0)?;
        }
        if_within(&format!("{field}.cn_ratio"), self.cn_ratio, 0.1, 10_000.0)?;
        if_within(
            &format!("{field}.bulk_density_kg_m3"),
            self.bulk_density_kg_m3,
            5.0,
            3000.0,
        )
    }
}

/// A heap was turned.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Turned {
    /// Which heap.
    pub heap: EventId,
    /// How well; forked over when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thoroughness: Option<Thoroughness>,
}

words! {
    /// How well a heap was turned.
    Thoroughness {
        /// Air let in, layers left as they lie.
        Loosened,
        /// Forked over in its place.
        ForkedOver,
        /// Taken out and put back, the outside to the inside.
        InsideOut,
    }
}

impl Turned {
    pub(super) const fn check(&self) -> Result<(), Problem> {
        Ok(())
    }
}

/// A heap was watered.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Watered {
    /// Which heap.
    pub heap: EventId,
    /// How much [L].
    pub water_l: f64,
}

impl Watered {
    pub(super) fn check(&self) -> Result<(), Problem> {
        within("water_l", self.water_l, 1e-3, MOST_WATER_L)
    }
}

/// A heap was covered.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Covered {
    /// Which heap.
    pub heap: EventId,
    /// With what; a sheet when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cover: Option<Cover>,
}

impl Covered {
    pub(super) const fn check(&self) -> Result<(), Problem> {
        Ok(())
    }
}

/// The cover was taken off.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Uncovered {
    /// Which heap.
    pub heap: EventId,
}

impl Uncovered {
    pub(super) const fn check(&self) -> Result<(), Problem> {
        Ok(())
    }
}

/// Compost was moved from one heap to another.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Moved {
    /// From which heap.
    pub from: EventId,
    /// To which heap.
    pub to: EventId,
    /// How much of it, percent; all when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub share_pct: Option<f64>,
}

impl Moved {
    pub(super) fn check(&self) -> Result<(), Problem> {
        if self.from == self.to {
            return Err(Problem::new("to", Wrong::SameHeap));
        }
        if_within("share_pct", self.share_pct, 0.0, 100.0)
    }
}

/// A heap was left to cure, called finished, or taken up again.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Rested {
    /// Which heap.
    pub heap: EventId,
    /// What it is from then on.
    pub stage: Stage,
}

words! {
    /// What a heap is.
    Stage {
        /// Fed and working.
        Active,
        /// Fed no more; ripens.
        Curing,
        /// Ready to use.
        Finished,
    }
}

impl Rested {
    pub(super) const fn check(&self) -> Result<(), Problem> {
        Ok(())
    }
}
