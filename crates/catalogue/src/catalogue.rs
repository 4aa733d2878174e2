//! How do the tables become the trade's nouns? Percent to fraction, litres to cubic metres, keys to text.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use heapwright_quantity::Range;
use heapwright_terms::{Degradability, FigureSource, Group, Material, MaterialId};

use crate::records::{
    Assumption, CautionAbout, CautionText, Condition, ConditionEffect, Measure, Name, NameKind,
    Source,
};
use crate::rows::{self, About, Three};
use crate::search::{Match, Resolution, SearchIndex};

/// The tables of the world's figures, ready for use. It never changes.
#[derive(Debug)]
pub struct Catalogue {
    materials: Vec<Material>,
    names: Vec<Vec<Name>>,
    places: BTreeMap<&'static str, usize>,
    sources: BTreeMap<&'static str, Source>,
    measures: Vec<Measure>,
    measure_words: Vec<(String, String)>,
    conditions: Vec<Condition>,
    cautions: Vec<CautionText>,
    assumptions: BTreeMap<&'static str, Assumption>,
    index: SearchIndex,
}

static BUILT_IN: LazyLock<Catalogue> = LazyLock::new(Catalogue::from_rows);

impl Catalogue {
    /// The catalogue that the program carries; built at the first call.
    #[must_use]
    pub fn built_in() -> &'static Self {
        &BUILT_IN
    }

    /// Every material, in the order of the table.
    #[must_use]
    pub fn materials(&self) -> &[Material] {
        &self.materials
    }

    /// The material of that id.
    #[must_use]
    pub fn material(&self, id: &str) -> Option<&Material> {
        self.places.get(id).map(|place| &self.materials[*place])
    }

    /// What people call the material, the short name first; empty for an unknown id.
    #[must_use]
    pub fn names(&self, id: &str) -> &[Name] {
        self.places.get(id).map_or(&[], |place| &self.names[*place])
    }

    /// The source of that key.
    #[must_use]
    pub fn source(&self, key: &str) -> Option<&Source> {
        self.sources.get(key)
    }

    /// Every source, by key.
    pub fn sources(&self) -> impl Iterator<Item = &Source> {
        self.sources.values()
    }

    /// Every measure, small to large as in the table.
    #[must_use]
    pub fn measures(&self) -> &[Measure] {
        &self.measures
    }

    /// The measure of that id.
    #[must_use]
    pub fn measure(&self, id: &str) -> Option<&Measure> {
        self.measures.iter().find(|measure| measure.id == id)
    }

    /// Every word for a measure, in lower case, with the id of the measure.
    #[must_use]
    pub fn measure_words(&self) -> &[(String, String)] {
        &self.measure_words
    }

    /// Every condition, in the order of the table.
    #[must_use]
    pub fn conditions(&self) -> &[Condition] {
        &self.conditions
    }

    /// The condition of that id.
    #[must_use]
    pub fn condition(&self, id: &str) -> Option<&Condition> {
        self.conditions.iter().find(|condition| condition.id == id)
    }

    /// The conditions that have a meaning for the material, in the order of the table.
    #[must_use]
    pub fn conditions_for(&self, material: &Material) -> Vec<&Condition> {
        let conditions = self.conditions.iter();
        conditions
            .filter(|condition| condition.effect_on(material).is_some())
            .collect()
    }

    /// What to say about a material: its own cautions first, then those of its flags.
    #[must_use]
    pub fn cautions_for(&self, material: &Material) -> Vec<&CautionText> {
        let own = self.cautions.iter().filter(
            |caution| matches!(&caution.about, CautionAbout::Material(id) if *id == material.id),
        );
        let flagged = material.cautions.iter().filter_map(|flag| {
            let about = CautionAbout::Flag(*flag);
            self.cautions.iter().find(|caution| caution.about == about)
        });
        own.chain(flagged).collect()
    }

    /// What is assumed under that key; see `tables/assumptions.csv`.
    #[must_use]
    pub fn assumption(&self, key: &str) -> Option<&Assumption> {
        self.assumptions.get(key)
    }

    /// What is assumed for a group under `stem`:
    /// `bulk_density_kg_m3`, `ash_dry_basis` or `handbook_over_measured_carbon`.
    #[must_use]
    pub fn assumption_for_group(&self, stem: &str, group: Group) -> Option<&Assumption> {
        self.assumption(&format!("{stem}.{}", group_name(group)))
    }

    /// Biodegradable share of volatile solids where the lignin is not known [kg/kg].
    #[must_use]
    pub fn assumed_biodegradable_share(&self, degradability: Degradability) -> Option<&Assumption> {
        let word = match degradability {
            Degradability::Fast => "fast",
            Degradability::Medium => "medium",
            Degradability::Slow => "slow",
            Degradability::VerySlow => "very_slow",
            Degradability::Inert => "inert",
        };
        self.assumption(&format!("biodegradable_over_volatile_solids.{word}"))
    }

    /// Every assumption, by key.
    pub fn assumptions(&self) -> impl Iterator<Item = &Assumption> {
        self.assumptions.values()
    }

    /// The search over the names of the catalogue; [`SearchIndex::with_own`] adds a garden's own.
    #[must_use]
    pub fn search_index(&self) -> &SearchIndex {
        &self.index
    }

    /// The materials that `text` may mean, best first, at most `limit`.
    #[must_use]
    pub fn search(&self, text: &str, limit: usize) -> Vec<Match> {
        self.index.search(text, limit)
    }

    /// The one material that `text` means, or what it may have meant.
    #[must_use]
    pub fn resolve(&self, text: &str) -> Resolution {
        self.index.resolve(text)
    }

    fn from_rows() -> Self {
        let places: BTreeMap<&'static str, usize> = rows::MATERIALS
            .iter()
            .enumerate()
            .map(|(place, row)| (row.id, place))
            .collect();
        let mut names: Vec<Vec<Name>> = vec![Vec::new(); rows::MATERIALS.len()];
        for row in rows::NAMES {
            names[places[row.id]].push(Name {
                text: row.name.to_owned(),
                kind: row.kind,
                note: row.note.to_owned(),
            });
        }
        for list in &mut names {
            list.sort_by_key(|name| name.kind != NameKind::Short);
        }
        let materials: Vec<Material> = rows::MATERIALS
            .iter()
            .zip(&names)
            .map(|(row, names)| material(row, names))
            .collect();
        let conditions: Vec<Condition> = rows::CONDITIONS.iter().map(condition).collect();
        let index = SearchIndex::new(&materials, &names, &conditions);
        let measures: Vec<Measure> = rows::MEASURES.iter().map(measure).collect();
        let mut measure_words: Vec<(String, String)> = Vec::new();
        for measure in &measures {
            let words = [&measure.name, &measure.plural]
                .into_iter()
                .chain(&measure.other_words);
            for word in words {
                let entry = (word.to_lowercase(), measure.id.clone());
                if !measure_words.contains(&entry) {
                    measure_words.push(entry);
                }
            }
        }
        Self {
            materials,
            names,
            places,
            sources: rows::SOURCES
                .iter()
                .map(|row| {
                    let source = Source {
                        key: row.key.to_owned(),
                        kind: row.kind,
                        citation: row.citation.to_owned(),
                        address: row.address.to_owned(),
                    };
                    (row.key, source)
                })
                .collect(),
            measures,
            measure_words,
            conditions,
            cautions: rows::CAUTIONS.iter().map(caution).collect(),
            assumptions: rows::ASSUMPTIONS
                .iter()
                .map(|row| (row.key, assumption(row)))
                .collect(),
            index,
        }
    }
}

/// The name of a group as the tables write it.
#[must_use]
pub fn group_name(group: Group) -> &'static str {
    match group {
        Group::Kitchen => "kitchen",
        Group::GardenGreen => "garden_green",
        Group::GardenBrown => "garden_brown",
        Group::Wood => "wood",
        Group::Paper => "paper",
        Group::AnimalManure => "animal_manure",
        Group::AnimalProduct => "animal_product",
        Group::Mineral => "mineral",
        Group::Amendment => "amendment",
        Group::Finished => "finished",
    }
}

/// Low, typical and high, each through `convert`, which must not turn their order.
fn range(values: Three, convert: impl Fn(f64) -> f64) -> Range {
    let [low, typical, high] = values.map(convert);
    Range { low, typical, high }
}

fn fraction(percent: f64) -> f64 {
    percent / 100.0
}

fn owned(texts: &[&str]) -> Vec<String> {
    texts.iter().map(|text| (*text).to_owned()).collect()
}

fn material(row: &rows::MaterialRow, names: &[Name]) -> Material {
    let short = names.iter().find(|name| name.kind == NameKind::Short);
    Material {
        id: MaterialId(row.id.to_owned()),
        name: row.name.to_owned(),
        short_name: short.map_or_else(|| row.name.to_owned(), |name| name.text.clone()),
        group: row.group,
        nitrogen_dry_basis: row.nitrogen_pct_dry.map(|values| range(values, fraction)),
        carbon_to_nitrogen_measured: row.cn.map(|values| range(values, |ratio| ratio)),
        carbon_measured_dry_basis: row.carbon_pct_dry_typical.map(fraction),
        moisture_wet_basis: row.moisture_pct_wet.map(|values| range(values, fraction)),
        bulk_density_kg_m3: row
            .bulk_density_kg_m3
            .map(|values| range(values, |density| density)),
        ash_dry_basis: row.ash_pct_dry.map(fraction),
        lignin_dry_basis: row.lignin_pct_dry.map(fraction),
        cellulose_dry_basis: row.cellulose_pct_dry.map(fraction),
        hemicellulose_dry_basis: row.hemicellulose_pct_dry.map(fraction),
        phosphorus_dry_basis: row.phosphorus_pct_dry.map(fraction),
        potassium_dry_basis: row.potassium_pct_dry.map(fraction),
        calcium_dry_basis: row.calcium_pct_dry.map(fraction),
        magnesium_dry_basis: row.magnesium_pct_dry.map(fraction),
        sodium_dry_basis: row.sodium_pct_dry.map(fraction),
        ph: row.ph,
        degradability: row.degradability,
        cautions: row.cautions.to_vec(),
        sources: row
            .sources
            .iter()
            .map(|(figures, keys)| FigureSource {
                figures: *figures,
                source_keys: owned(keys),
            })
            .collect(),
        evidence: row.evidence,
        notes: row.notes.to_owned(),
    }
}

fn measure(row: &rows::MeasureRow) -> Measure {
    Measure {
        id: row.id.to_owned(),
        name: row.name.to_owned(),
        plural: row.plural.to_owned(),
        other_words: owned(row.other_words),
        volume_m3: range(row.volume_l, |litres| litres / 1000.0),
        source_keys: owned(row.sources),
        note: row.note.to_owned(),
    }
}

fn condition(row: &rows::ConditionRow) -> Condition {
    let effects = rows::CONDITION_EFFECTS
        .iter()
        .filter(|effect| effect.condition == row.id);
    Condition {
        id: row.id.to_owned(),
        name: row.name.to_owned(),
        other_words: owned(row.other_words),
        effects: effects
            .map(|effect| ConditionEffect {
                groups: effect.groups.to_vec(),
                materials: effect
                    .materials
                    .iter()
                    .map(|id| MaterialId((*id).to_owned()))
                    .collect(),
                moisture_wet_basis: effect
                    .moisture_pct_wet
                    .map(|values| range(values, fraction)),
                bulk_density_factor: effect
                    .bulk_density_factor
                    .map(|values| range(values, |factor| factor)),
                source_keys: owned(effect.sources),
                note: effect.note.to_owned(),
            })
            .collect(),
    }
}

fn caution(row: &rows::CautionRow) -> CautionText {
    CautionText {
        about: match row.about {
            About::Flag(flag) => CautionAbout::Flag(flag),
            About::Material(id) => CautionAbout::Material(MaterialId(id.to_owned())),
        },
        reason: row.reason.to_owned(),
        advice: row.advice.to_owned(),
        source_keys: owned(row.sources),
    }
}

fn assumption(row: &rows::AssumptionRow) -> Assumption {
    let (factor, unit) = match row.unit {
        "%" => (0.01, "1"),
        "1/%" => (100.0, "1"),
        unit => (1.0, unit),
    };
    Assumption {
        key: row.key.to_owned(),
        range: range(row.values, |value| value * factor),
        unit: unit.to_owned(),
        source_keys: owned(row.sources),
        note: row.note.to_owned(),
    }
}
