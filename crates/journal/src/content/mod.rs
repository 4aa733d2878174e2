//! What was done or seen? One type a kind of event; one file a topic.
//!
//! The types are the written format: a field's name here is its name in the file.
//! Fields are only ever added, each with a default; a changed meaning is a new
//! kind. Numbers carry their unit in the name; shares of 100 end in `_pct`.

mod beds;
mod corrections;
mod garden;
mod heap;
mod notes;
mod readings;
mod stores;
mod tests_of_compost;

pub use beds::{BedDescribed, Feeding, Harvested, How, SoilTest, Spread};
pub use corrections::{Amended, Withdrawn};
pub use garden::{
    DriedSample, Figure, GardenDescribed, MaterialDefined, MaterialMeasured, MeasureDefined,
    PersonDescribed, Place, Role, UnitsSaid, WeighedMeasure,
};
pub use heap::{
    Cover, Covered, CustomPart, Enclosure, Fed, Filling, Ground, HeapStarted, Moved, PartFed,
    Rested, Shape, Stage, Sun, Thoroughness, Turned, Uncovered, Wall, Watered,
};
pub use notes::{Noted, Picture};
pub use readings::{Creature, Look, Probe, ProbePlace, Read, Smell, Squeeze};
pub use stores::{StockCounted, StockPutBy, StockUsed};
pub use tests_of_compost::{BagTest, GerminationTest, Laboratory, SelfHeatingTest, Tested};

use serde_json::value::RawValue;
use serde_json::{Map, Value};

use crate::check::{Problem, Wrong};
use crate::id::EventId;

macro_rules! kinds {
    ($($(#[doc = $doc:literal])+ $kind:ident = $word:literal),+ $(,)?) => {
        /// What was done or seen.
        #[derive(Clone, Debug, PartialEq)]
        pub enum Content {
            $($(#[doc = $doc])+ $kind($kind),)+
        }

        impl Content {
            /// The words of all kinds, in the order of the format description.
            pub const KINDS: &'static [&'static str] = &[$($word),+];

            /// The word of the kind, as it is written.
            #[must_use]
            pub const fn kind(&self) -> &'static str {
                match self {
                    $(Self::$kind(_) => $word,)+
                }
            }

            /// Reads the body of a kind. `None` for a kind that this program does not know.
            pub(crate) fn read(kind: &str, body: &RawValue) -> Option<Result<Self, serde_json::Error>> {
                match kind {
                    $($word => Some(serde_json::from_str(body.get()).map(Self::$kind)),)+
                    _ => None,
                }
            }

            /// The body, as it is written.
            pub fn write(&self) -> Result<Box<RawValue>, serde_json::Error> {
                match self {
                    $(Self::$kind(body) => serde_json::value::to_raw_value(body),)+
                }
            }

            /// Fails when something lies outside what can be.
            pub fn check(&self) -> Result<(), Problem> {
                match self {
                    $(Self::$kind(body) => body.check(),)+
                }
            }
        }

        $(impl From<$kind> for Content {
            fn from(body: $kind) -> Self {
                Self::$kind(body)
            }
        })+

        #[cfg(feature = "schema")]
        pub(crate) fn bodies(generator: &mut schemars::SchemaGenerator) -> Vec<(&'static str, schemars::Schema)> {
            vec![$(($word, generator.subschema_for::<$kind>())),+]
        }
    };
}

kinds! {
    /// The garden was set up or described anew.
    GardenDescribed = "garden_described",
    /// Somebody works in the garden.
    PersonDescribed = "person_described",
    /// What a vessel of the garden holds.
    MeasureDefined = "measure_defined",
    /// A material of the garden's own.
    MaterialDefined = "material_defined",
    /// A material was measured.
    MaterialMeasured = "material_measured",
    /// A heap was started.
    HeapStarted = "heap_started",
    /// A heap was fed.
    Fed = "fed",
    /// A heap was turned.
    Turned = "turned",
    /// A heap was watered.
    Watered = "watered",
    /// A heap was covered.
    Covered = "covered",
    /// The cover was taken off.
    Uncovered = "uncovered",
    /// A heap was looked at.
    Read = "read",
    /// Compost was tested.
    Tested = "tested",
    /// Compost was moved from one heap to another.
    Moved = "moved",
    /// A heap was left to cure, called finished or taken up again.
    Rested = "rested",
    /// Compost was taken out.
    Harvested = "harvested",
    /// Compost was spread on a bed.
    Spread = "spread",
    /// A bed was described.
    BedDescribed = "bed_described",
    /// A material was put by.
    StockPutBy = "stock_put_by",
    /// Something was taken from the stores.
    StockUsed = "stock_used",
    /// The stores were counted.
    StockCounted = "stock_counted",
    /// Something worth writing down.
    Noted = "noted",
    /// An earlier event was corrected.
    Amended = "amended",
    /// An earlier event was taken back.
    Withdrawn = "withdrawn",
}

impl Content {
    /// The content as an amendment leaves it. Fails when the change is not understood or leads
    /// outside what can be; then nothing changes.
    pub fn amended(&self, patch: &Map<String, Value>) -> Result<Self, Problem> {
        if patch.is_empty() {
            return Ok(self.clone());
        }
        let fault = |error: serde_json::Error| {
            let why = crate::event::plain(&error);
            Problem::new("patch", Wrong::CannotBeApplied { why })
        };
        let mut body = serde_json::from_str(self.write().map_err(fault)?.get()).map_err(fault)?;
        corrections::patched(&mut body, patch);
        let body = serde_json::value::to_raw_value(&body).map_err(fault)?;
        // The kind is our own, so it is known.
        let Some(content) = Self::read(self.kind(), &body) else {
            return Ok(self.clone());
        };
        let content = content.map_err(fault)?;
        content.check()?;
        Ok(content)
    }

    /// The event that this one corrects or takes back.
    #[must_use]
    pub const fn corrects(&self) -> Option<EventId> {
        match self {
            Self::Amended(amended) => Some(amended.event),
            Self::Withdrawn(withdrawn) => Some(withdrawn.event),
            _ => None,
        }
    }
}
