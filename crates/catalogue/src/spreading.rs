//! What is known of crops, of their needs, and of how much compost is spread?
//!
//! Apart from the catalogue of materials, so that a face that plans no beds does not carry it.
//! Percent becomes a fraction, millimetres metres, grams kilograms, oxides elements here.

use std::sync::LazyLock;

use heapwright_quantity::Range;
use heapwright_terms::{
    CropNeed, EdiblePart, PHOSPHATE_OVER_PHOSPHORUS, POTASH_OVER_POTASSIUM, Removal, SaltTolerance,
};

/// What a class of crops needs in a year.
#[derive(Clone, Debug, PartialEq)]
pub struct CropGroup {
    /// Stable name: light, medium, heavy.
    pub id: String,
    /// What to show.
    pub name: String,
    /// What it needs.
    pub need: CropNeed,
    /// Keys of the sources.
    pub source_keys: Vec<String>,
    /// Ground of the figures.
    pub note: String,
}

/// A crop.
#[derive(Clone, Debug, PartialEq)]
pub struct Crop {
    /// Stable name.
    pub id: String,
    /// What to show.
    pub name: String,
    /// Other words for it.
    pub other_words: Vec<String>,
    /// Id of its class.
    pub group: String,
    /// What is eaten of it.
    pub part: EdiblePart,
    /// True when its bed is one for food: this year, or between such years as with green manure.
    pub on_food_bed: bool,
    /// True when it needs acid soil.
    pub likes_acid: bool,
    /// The salt it bears; `None` when not tabulated.
    pub salt: Option<SaltTolerance>,
    /// What the harvest takes away; `None` when not tabulated.
    pub removal: Option<Removal>,
    /// Keys of the sources.
    pub source_keys: Vec<String>,
    /// Remarks.
    pub note: String,
}

/// In what a use of compost is counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum UseKind {
    /// Compost over the volume of the mix.
    ShareOfVolume,
    /// Depth of the layer \[m\].
    Depth,
}

/// A use of compost away from beds.
#[derive(Clone, Debug, PartialEq)]
pub struct CompostUse {
    /// Stable name.
    pub id: String,
    /// What to show.
    pub name: String,
    /// In what `limit` is counted.
    pub kind: UseKind,
    /// Usual least, usual amount, and the most.
    pub limit: Range,
    /// Mesh of the sieve, finest and coarsest \[mm\].
    pub sieve_mm: Option<(f64, f64)>,
    /// Conductivity of the saturated paste not to be passed \[dS/m\].
    pub conductivity_ds_m_most: Option<f64>,
    /// pH not to be passed.
    pub ph_most: Option<f64>,
    /// True when only mature compost will do.
    pub needs_mature: bool,
    /// What to do, in a sentence.
    pub advice: String,
    /// Keys of the sources.
    pub source_keys: Vec<String>,
    /// Remarks.
    pub note: String,
}

/// A figure for spreading compost.
#[derive(Clone, Debug, PartialEq)]
pub struct SpreadingFigure {
    /// Its name.
    pub key: String,
    /// The value, as a fraction or in SI units but for `d`, `years`, `dS/m`.
    pub range: Range,
    /// `1`, `m`, `kg/kg`, `kg/m2`, `kg/m3`, `d`, `K`, `years`, `dS/m`.
    pub unit: String,
    /// Keys of the sources.
    pub source_keys: Vec<String>,
    /// What it is.
    pub note: String,
}

/// All that is known of where compost goes.
#[derive(Clone, Debug)]
pub struct Spreading {
    pub(crate) groups: Vec<CropGroup>,
    pub(crate) crops: Vec<Crop>,
    pub(crate) uses: Vec<CompostUse>,
    figures: Vec<SpreadingFigure>,
}

macro_rules! built {
    ($file:literal) => {
        include_str!(concat!(env!("OUT_DIR"), "/", $file))
    };
}

static BUILT_IN: LazyLock<Spreading> = LazyLock::new(|| Spreading {
    groups: lines(built!("crop_groups.txt")).map(group).collect(),
    crops: lines(built!("crops.txt")).map(crop).collect(),
    uses: lines(built!("compost_uses.txt")).map(compost_use).collect(),
    figures: lines(built!("spreading.txt")).map(figure).collect(),
});

impl Crop {
    /// Whether these words, as [`words_of`] makes them, are one of its names.
    fn is_called(&self, said: &str) -> bool {
        let names = self.other_words.iter().chain([&self.id, &self.name]);
        names
            .into_iter()
            .any(|name| words_of(name).join(" ") == said)
    }
}

impl Spreading {
    /// The tables that the program carries; read at the first call.
    #[must_use]
    pub fn built_in() -> &'static Self {
        &BUILT_IN
    }

    /// Every class of crops, from little need to much.
    #[must_use]
    pub fn groups(&self) -> &[CropGroup] {
        &self.groups
    }

    /// The class of that id.
    #[must_use]
    pub fn group(&self, id: &str) -> Option<&CropGroup> {
        self.groups.iter().find(|group| group.id == id)
    }

    /// Every crop, in the order of the table.
    #[must_use]
    pub fn crops(&self) -> &[Crop] {
        &self.crops
    }

    /// The crop that a text names; of several words, the first that names one:
    /// "runner beans and lettuce" are beans.
    #[must_use]
    pub fn crop(&self, text: &str) -> Option<&Crop> {
        let words = words_of(text);
        // Longer runs of words first: "sweet potatoes" are no potatoes.
        (1..=words.len()).rev().find_map(|length| {
            words.windows(length).find_map(|run| {
                let said = run.join(" ");
                self.crops.iter().find(|crop| crop.is_called(&said))
            })
        })
    }

    /// The crop that a text names and nothing else: "roses", but not "roses and lettuce".
    #[must_use]
    pub fn crop_alone(&self, text: &str) -> Option<&Crop> {
        let said = words_of(text).join(" ");
        self.crops.iter().find(|crop| crop.is_called(&said))
    }

    /// Every use away from beds.
    #[must_use]
    pub fn uses(&self) -> &[CompostUse] {
        &self.uses
    }

    /// The use of that id.
    #[must_use]
    pub fn use_of(&self, id: &str) -> Option<&CompostUse> {
        self.uses.iter().find(|one| one.id == id)
    }

    /// The figure of that key.
    #[must_use]
    pub fn figure(&self, key: &str) -> Option<&SpreadingFigure> {
        self.figures.iter().find(|figure| figure.key == key)
    }

    /// Every figure.
    #[must_use]
    pub fn figures(&self) -> &[SpreadingFigure] {
        &self.figures
    }

    /// The range of a figure whose key stands in the table; not a number for one that does not.
    #[must_use]
    pub fn range(&self, key: &str) -> Range {
        self.figure(key)
            .map_or(Range::exact(f64::NAN), |figure| figure.range)
    }
}

/// The fields of one line.
struct Fields(std::str::Split<'static, char>);

fn lines(text: &'static str) -> impl Iterator<Item = Fields> {
    text.lines().map(|line| Fields(line.split('\t')))
}

impl Fields {
    fn text(&mut self) -> &'static str {
        self.0.next().unwrap_or_default()
    }

    fn string(&mut self) -> String {
        self.text().to_owned()
    }

    fn list(&mut self, separator: char) -> Vec<String> {
        let parts = self.text().split(separator).map(str::trim);
        parts
            .filter(|part| !part.is_empty())
            .map(str::to_owned)
            .collect()
    }

    fn number(&mut self) -> Option<f64> {
        self.text().parse().ok()
    }

    fn range(&mut self, factor: f64) -> Range {
        let mut next = || self.number().unwrap_or(f64::NAN) * factor;
        Range {
            low: next(),
            typical: next(),
            high: next(),
        }
    }

    fn yes(&mut self) -> bool {
        self.text() == "yes"
    }
}

const GRAM: f64 = 1e-3;
const PERCENT: f64 = 1e-2;
const MILLIMETRE: f64 = 1e-3;

fn group(mut fields: Fields) -> CropGroup {
    CropGroup {
        id: fields.string(),
        name: fields.string(),
        need: CropNeed {
            nitrogen_kg_m2: fields.range(GRAM),
            phosphorus_kg_m2: fields.range(GRAM / PHOSPHATE_OVER_PHOSPHORUS),
            potassium_kg_m2: fields.range(GRAM / POTASH_OVER_POTASSIUM),
        },
        source_keys: fields.list('+'),
        note: fields.string(),
    }
}

fn crop(mut fields: Fields) -> Crop {
    let mut crop = Crop {
        id: fields.string(),
        name: fields.string(),
        other_words: fields.list(';'),
        group: fields.string(),
        part: match fields.text() {
            "ground" => EdiblePart::TouchesSoil,
            "above" => EdiblePart::ClearOfSoil,
            _ => EdiblePart::NotEaten,
        },
        on_food_bed: fields.yes(),
        likes_acid: fields.yes(),
        salt: None,
        removal: None,
        source_keys: Vec::new(),
        note: String::new(),
    };
    let salt = (fields.number(), fields.number());
    crop.salt = salt
        .0
        .zip(salt.1)
        .map(|(threshold_ds_m, slope)| SaltTolerance {
            threshold_ds_m,
            loss_per_ds_m: slope * PERCENT,
        });
    let (nitrogen, phosphate, potash) = (fields.number(), fields.number(), fields.number());
    crop.removal = nitrogen
        .zip(phosphate)
        .zip(potash)
        .map(|((nitrogen, phosphate), potash)| Removal {
            nitrogen: nitrogen * GRAM,
            phosphorus: phosphate * GRAM / PHOSPHATE_OVER_PHOSPHORUS,
            potassium: potash * GRAM / POTASH_OVER_POTASSIUM,
        });
    crop.source_keys = fields.list('+');
    crop.note = fields.string();
    crop
}

fn compost_use(mut fields: Fields) -> CompostUse {
    let (id, name) = (fields.string(), fields.string());
    let (kind, factor) = match fields.text() {
        "depth" => (UseKind::Depth, MILLIMETRE),
        _ => (UseKind::ShareOfVolume, PERCENT),
    };
    CompostUse {
        id,
        name,
        kind,
        limit: fields.range(factor),
        sieve_mm: {
            let sieve = (fields.number(), fields.number());
            sieve.0.zip(sieve.1)
        },
        conductivity_ds_m_most: fields.number(),
        ph_most: fields.number(),
        needs_mature: fields.yes(),
        advice: fields.string(),
        source_keys: fields.list('+'),
        note: fields.string(),
    }
}

fn figure(mut fields: Fields) -> SpreadingFigure {
    let (key, range, unit) = (fields.string(), fields.range(1.0), fields.text());
    let (factor, unit) = match unit {
        "%" => (PERCENT, "1"),
        "mm" => (MILLIMETRE, "m"),
        "mg/kg" => (1e-6, "kg/kg"),
        unit => (1.0, unit),
    };
    SpreadingFigure {
        key,
        range: range.scaled(factor),
        unit: unit.to_owned(),
        source_keys: fields.list('+'),
        note: fields.string(),
    }
}
/// The words of a text in small letters.
fn words_of(text: &str) -> Vec<String> {
    text.to_lowercase()
        .split(|letter: char| !letter.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .map(str::to_owned)
        .collect()
}
