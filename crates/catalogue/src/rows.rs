//! How do the tables come into the program? Read from the terse text that the build wrote (`build/emit.rs`).
//!
//! Percent becomes a fraction and litres become cubic metres here. The build has
//! checked every cell, and a test compares every record with its row, so a text
//! that cannot be read is not expected: it gives blanks or stops the program.

use std::str::Split;

use heapwright_quantity::Range;
use heapwright_terms::{
    Caution, Degradability, Evidence, FigureGroup, FigureSource, Group, Material, MaterialId,
};

use crate::records::{
    Assumption, CautionAbout, CautionText, Condition, ConditionEffect, FoodBeds, HygieneRule,
    Measure, Name, NameKind, Source, SourceKind,
};

macro_rules! built {
    ($file:literal) => {
        include_str!(concat!(env!("OUT_DIR"), "/", $file))
    };
}

// The closed lists, each in the order of its words in `build/rules.rs`.
const GROUPS: &[Group] = &[
    Group::Kitchen,
    Group::GardenGreen,
    Group::GardenBrown,
    Group::Wood,
    Group::Paper,
    Group::AnimalManure,
    Group::AnimalProduct,
    Group::Mineral,
    Group::Amendment,
    Group::Finished,
];
const DEGRADABILITIES: &[Degradability] = &[
    Degradability::Fast,
    Degradability::Medium,
    Degradability::Slow,
    Degradability::VerySlow,
    Degradability::Inert,
];
const BASES: &[Evidence] = &[
    Evidence::Retrieved,
    Evidence::Mixed,
    Evidence::Memory,
    Evidence::Estimate,
];
const FLAGS: &[Caution] = &[
    Caution::Acidic,
    Caution::Alkaline,
    Caution::AttractsAnimals,
    Caution::Avoid,
    Caution::Compacts,
    Caution::ContaminantRisk,
    Caution::HerbicideRisk,
    Caution::LimitAmount,
    Caution::MatsWhenWet,
    Caution::PathogenRisk,
    Caution::RegulatedAnimalByproduct,
    Caution::Salty,
    Caution::ShredFirst,
    Caution::WeedSeedRisk,
];
const FOOD_BEDS: &[FoodBeds] = &[FoodBeds::Never, FoodBeds::Doubtful];
const LABELS: &[FigureGroup] = &[
    FigureGroup::Nitrogen,
    FigureGroup::CarbonToNitrogen,
    FigureGroup::Carbon,
    FigureGroup::Moisture,
    FigureGroup::BulkDensity,
    FigureGroup::Ash,
    FigureGroup::Fibre,
    FigureGroup::Phosphorus,
    FigureGroup::Potassium,
    FigureGroup::Calcium,
    FigureGroup::Magnesium,
    FigureGroup::Sodium,
    FigureGroup::Ph,
];
const NAME_KINDS: &[NameKind] = &[
    NameKind::Short,
    NameKind::Name,
    NameKind::British,
    NameKind::American,
];
const SOURCE_KINDS: &[SourceKind] = &[
    SourceKind::Retrieved,
    SourceKind::Memory,
    SourceKind::Derived,
    SourceKind::Estimate,
];

/// The records that figures are computed from.
#[derive(Debug)]
pub(crate) struct Records {
    pub materials: Vec<Material>,
    pub measures: Vec<Measure>,
    pub conditions: Vec<Condition>,
    /// By key.
    pub assumptions: Vec<Assumption>,
}

/// Keys of the sources, in their order.
type Keys = [&'static str];

/// Reads what figures are computed from.
pub(crate) fn read() -> Records {
    #[cfg(feature = "remarks")]
    let remarks = built!("remarks.txt");
    #[cfg(not(feature = "remarks"))]
    let remarks = "";
    let mut remarks = Fields(remarks.split('\n'));
    let sources: Vec<&str> = source_keys().collect();
    // Struct fields are evaluated as written: in the order of the remarks.
    Records {
        materials: lines(built!("materials.txt"))
            .map(|fields| material(fields, &sources, &mut remarks))
            .collect(),
        measures: lines(built!("measures.txt"))
            .map(|fields| measure(fields, &sources, &mut remarks))
            .collect(),
        conditions: lines(built!("conditions.txt"))
            .map(|fields| condition(fields, &sources, &mut remarks))
            .collect(),
        assumptions: lines(built!("assumptions.txt"))
            .map(|fields| assumption(fields, &sources, &mut remarks))
            .collect(),
    }
}

fn source_keys() -> impl Iterator<Item = &'static str> {
    built!("source_keys.txt").lines()
}

// The rest stands apart: who does not ask for it does not carry it.

/// Reads the sources, by key.
pub(crate) fn sources() -> Vec<Source> {
    source_keys()
        .zip(lines(built!("sources.txt")))
        .map(|(key, mut fields)| Source {
            key: key.to_owned(),
            kind: fields.one(SOURCE_KINDS),
            citation: fields.string(),
            address: fields.string(),
        })
        .collect()
}

/// Reads the names of each material, in the order of the materials, the short one first.
pub(crate) fn names() -> Vec<Vec<Name>> {
    #[cfg(feature = "remarks")]
    let remarks = built!("name_remarks.txt");
    #[cfg(not(feature = "remarks"))]
    let remarks = "";
    let mut remarks = Fields(remarks.split('\n'));
    let mut name = |field: &str| Name {
        text: field[1..].to_owned(),
        kind: NAME_KINDS[place(field.as_bytes()[0])],
        note: remarks.string(),
    };
    lines(built!("names.txt"))
        .map(|fields| fields.0.map(&mut name).collect())
        .collect()
}

/// Reads the cautions.
pub(crate) fn cautions() -> Vec<CautionText> {
    let sources: Vec<&str> = source_keys().collect();
    lines(built!("cautions.txt"))
        .map(|fields| caution(fields, &sources))
        .collect()
}

/// Reads the rules of hygiene.
pub(crate) fn hygiene_rules() -> Vec<HygieneRule> {
    lines(built!("hygiene_rules.txt"))
        .map(|mut fields| HygieneRule {
            id: fields.string(),
            name: fields.string(),
            jurisdiction: fields.string(),
            asks: fields.string(),
            also_asks: fields.string(),
            scope: fields.string(),
            year: fields.text().parse().unwrap_or_default(),
            source_keys: fields.text().split('+').map(str::to_owned).collect(),
        })
        .collect()
}

/// The fields of one line, one after the other; blank after the last.
struct Fields(Split<'static, char>);

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

    fn list(&mut self) -> Vec<String> {
        let parts = self.text().split(';').filter(|part| !part.is_empty());
        parts.map(str::to_owned).collect()
    }

    fn number(&mut self) -> Option<f64> {
        self.text().parse().ok()
    }

    fn share(&mut self) -> Option<f64> {
        self.number().map(|percent| percent / 100.0)
    }

    /// A range that is always given, each value divided by `over`.
    fn certain(&mut self, over: f64) -> Range {
        let mut next = || self.number().unwrap_or(f64::NAN) / over;
        Range {
            low: next(),
            typical: next(),
            high: next(),
        }
    }

    fn range(&mut self, over: f64) -> Option<Range> {
        let range = self.certain(over);
        (!range.typical.is_nan()).then_some(range)
    }

    fn one<T: Copy>(&mut self, list: &[T]) -> T {
        list[place(self.text().as_bytes()[0])]
    }

    fn some<T: Copy>(&mut self, list: &[T]) -> Vec<T> {
        several(self.text(), list)
    }

    fn keys(&mut self, sources: &Keys) -> Vec<String> {
        keys(self.text(), sources)
    }
}

/// `a` is the first of a list.
fn place(letter: u8) -> usize {
    usize::from(letter.wrapping_sub(b'a'))
}

fn several<T: Copy>(letters: &str, list: &[T]) -> Vec<T> {
    letters.bytes().map(|letter| list[place(letter)]).collect()
}

/// `3+12` are the fourth and the thirteenth source.
fn keys(places: &str, sources: &Keys) -> Vec<String> {
    let places = places.split('+').filter_map(|place| place.parse().ok());
    places
        .map(|place: usize| sources[place].to_owned())
        .collect()
}

fn material(mut fields: Fields, sources: &Keys, remarks: &mut Fields) -> Material {
    Material {
        id: MaterialId(fields.string()),
        name: fields.string(),
        short_name: fields.string(),
        group: fields.one(GROUPS),
        nitrogen_dry_basis: fields.range(100.0),
        carbon_to_nitrogen_measured: fields.range(1.0),
        moisture_wet_basis: fields.range(100.0),
        bulk_density_kg_m3: fields.range(1.0),
        carbon_measured_dry_basis: fields.share(),
        ash_dry_basis: fields.share(),
        lignin_dry_basis: fields.share(),
        cellulose_dry_basis: fields.share(),
        hemicellulose_dry_basis: fields.share(),
        phosphorus_dry_basis: fields.share(),
        potassium_dry_basis: fields.share(),
        calcium_dry_basis: fields.share(),
        magnesium_dry_basis: fields.share(),
        sodium_dry_basis: fields.share(),
        ph: fields.number(),
        degradability: fields.one(DEGRADABILITIES),
        cautions: fields.some(FLAGS),
        sources: figure_sources(fields.text(), sources),
        evidence: fields.one(BASES),
        notes: remarks.string(),
    }
}

/// `ad:3+12;b:7`: figures, each a letter, and the places of their sources.
fn figure_sources(text: &str, sources: &Keys) -> Vec<FigureSource> {
    let mut list = Vec::new();
    for (figures, places) in text.split(';').filter_map(|part| part.split_once(':')) {
        list.extend(
            several(figures, LABELS)
                .into_iter()
                .map(|figures| FigureSource {
                    figures,
                    source_keys: keys(places, sources),
                }),
        );
    }
    list
}

fn measure(mut fields: Fields, sources: &Keys, remarks: &mut Fields) -> Measure {
    Measure {
        id: fields.string(),
        name: fields.string(),
        plural: fields.string(),
        other_words: fields.list(),
        volume_m3: fields.certain(1000.0),
        source_keys: fields.keys(sources),
        note: remarks.string(),
    }
}

fn condition(mut fields: Fields, sources: &Keys, remarks: &mut Fields) -> Condition {
    let mut condition = Condition {
        id: fields.string(),
        name: fields.string(),
        other_words: fields.list(),
        effects: Vec::new(),
    };
    while let Some(groups) = fields.0.next() {
        condition.effects.push(ConditionEffect {
            groups: several(groups, GROUPS),
            materials: fields.list().into_iter().map(MaterialId).collect(),
            moisture_wet_basis: fields.range(100.0),
            bulk_density_factor: fields.range(1.0),
            source_keys: fields.keys(sources),
            note: remarks.string(),
        });
    }
    condition
}

fn caution(mut fields: Fields, sources: &Keys) -> CautionText {
    let flag = fields.some(FLAGS).pop();
    let material = MaterialId(fields.string());
    CautionText {
        about: flag.map_or(CautionAbout::Material(material), CautionAbout::Flag),
        reason: fields.string(),
        advice: fields.string(),
        local_rule: fields.string(),
        before_use: fields.string(),
        food_beds: fields.some(FOOD_BEDS).pop(),
        source_keys: fields.keys(sources),
    }
}

fn assumption(mut fields: Fields, sources: &Keys, remarks: &mut Fields) -> Assumption {
    let (key, range, unit) = (fields.string(), fields.certain(1.0), fields.text());
    let (factor, unit) = match unit {
        "%" => (0.01, "1"),
        "1/%" => (100.0, "1"),
        unit => (1.0, unit),
    };
    Assumption {
        key,
        range: range.scaled(factor),
        unit: unit.to_owned(),
        source_keys: fields.keys(sources),
        note: remarks.string(),
    }
}
