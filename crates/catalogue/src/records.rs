//! What can be read from the catalogue beside materials? Names, sources, measures, conditions, cautions, assumptions.

use heapwright_quantity::Range;
use heapwright_terms::{Caution, Group, Material, MaterialId};

/// Where a name of a material is at home.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum NameKind {
    /// The label of a button, one for every material.
    Short,
    /// Said everywhere.
    Name,
    /// Said in Britain.
    British,
    /// Said in America.
    American,
}

/// What people call a material.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Name {
    /// The name as people write it.
    pub text: String,
    /// Where it is at home.
    pub kind: NameKind,
    /// Why this material and no other has the name; mostly empty, and always without the feature `remarks`.
    pub note: String,
}

/// How the catalogue came by a figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SourceKind {
    /// Seen in the publication.
    Retrieved,
    /// Recalled from the publication, not seen: check against the print before quoting.
    Memory,
    /// Computed from other figures.
    Derived,
    /// A professional estimate or a rule of the trade without publication.
    Estimate,
}

/// A publication, or another ground on which a figure stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Source {
    /// The key by which figures point to it.
    pub key: String,
    /// How the catalogue came by its figures.
    pub kind: SourceKind,
    /// Author, year, title and publisher in our words.
    pub citation: String,
    /// Where it can be found: agency, journal, DOI or package; empty when there is none to name.
    pub address: String,
}

/// A vessel of known volume.
#[derive(Clone, Debug, PartialEq)]
pub struct Measure {
    /// Stable name.
    pub id: String,
    /// What one of it is called.
    pub name: String,
    /// What several are called.
    pub plural: String,
    /// Other words for it.
    pub other_words: Vec<String>,
    /// What one filling holds \[m3\].
    pub volume_m3: Range,
    /// Keys of the sources.
    pub source_keys: Vec<String>,
    /// Remarks on the figure; empty without the feature `remarks`.
    pub note: String,
}

/// A way in which a material can be found: wet, shredded, packed.
#[derive(Clone, Debug, PartialEq)]
pub struct Condition {
    /// Stable name.
    pub id: String,
    /// What to show.
    pub name: String,
    /// Other words for it.
    pub other_words: Vec<String>,
    /// What it does to the figures, by material.
    pub effects: Vec<ConditionEffect>,
}

impl Condition {
    /// What the condition does to a material; `None` when it has no meaning there.
    ///
    /// A line that names the material goes before one that names its group.
    #[must_use]
    pub fn effect_on(&self, material: &Material) -> Option<&ConditionEffect> {
        self.effect_on_id(&material.id, material.group)
    }

    /// As [`Condition::effect_on`], for a material known by id and group.
    #[must_use]
    pub fn effect_on_id(&self, id: &MaterialId, group: Group) -> Option<&ConditionEffect> {
        let named = self
            .effects
            .iter()
            .find(|effect| effect.materials.contains(id));
        named.or_else(|| {
            self.effects
                .iter()
                .find(|effect| effect.groups.contains(&group))
        })
    }
}

/// What a condition does to the figures of some materials.
///
/// When it sets the moisture and gives no density factor, the water goes into
/// the pores: the dry bulk density stays. When it gives a factor, that is the
/// wet bulk density as found over the wet bulk density of the row, all told.
/// When it gives neither, the figures of the row serve as they are.
#[derive(Clone, Debug, PartialEq)]
pub struct ConditionEffect {
    /// The groups it applies to.
    pub groups: Vec<Group>,
    /// The materials it applies to.
    pub materials: Vec<MaterialId>,
    /// Moisture, wet basis [kg/kg], in place of that of the row.
    pub moisture_wet_basis: Option<Range>,
    /// Factor on the wet bulk density of the row.
    pub bulk_density_factor: Option<Range>,
    /// Keys of the sources.
    pub source_keys: Vec<String>,
    /// Ground of the figures; empty without the feature `remarks`.
    pub note: String,
}

/// What a caution is about.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum CautionAbout {
    /// Every material that carries the flag.
    Flag(Caution),
    /// One material.
    Material(MaterialId),
}

/// How something that went in keeps compost off beds where food grows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum FoodBeds {
    /// It never goes on them.
    Never,
    /// It goes on them only once what `before_use` says was seen to.
    Doubtful,
}

/// A caution in words. It defers to local rules.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CautionText {
    /// What it is about.
    pub about: CautionAbout,
    /// Why care is due.
    pub reason: String,
    /// What to do.
    pub advice: String,
    /// What a local rule may say; empty where none is known.
    pub local_rule: String,
    /// What to do before compost with it in it is used; empty where nothing lasts so long.
    pub before_use: String,
    /// Whether it keeps compost off beds where food grows; `None` where it does not.
    pub food_beds: Option<FoodBeds>,
    /// Keys of the sources.
    pub source_keys: Vec<String>,
}

/// A published rule of hygiene in words; its figures stand in the engine, under the same id.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct HygieneRule {
    /// Stable name.
    pub id: String,
    /// What the rule is called.
    pub name: String,
    /// Where it holds.
    pub jurisdiction: String,
    /// What it asks of temperature, time and turnings.
    pub asks: String,
    /// What else it asks, which no thermometer shows; empty for nothing.
    pub also_asks: String,
    /// For what it was written.
    pub scope: String,
    /// From which year it is.
    pub year: u16,
    /// Keys of the sources.
    pub source_keys: Vec<String>,
}

/// What is assumed where a row of the materials is silent.
#[derive(Clone, Debug, PartialEq)]
pub struct Assumption {
    /// Its name, with the group or degradability after a dot.
    pub key: String,
    /// The value, as a fraction or in the SI unit.
    pub range: Range,
    /// `1` or `kg/m3`.
    pub unit: String,
    /// Keys of the sources.
    pub source_keys: Vec<String>,
    /// What it is used for; empty without the feature `remarks`.
    pub note: String,
}
