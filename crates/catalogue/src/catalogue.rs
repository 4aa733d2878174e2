//! What can the program ask of the tables? Records by id, what goes with a material, and the search.

use std::collections::BTreeMap;
use std::sync::{LazyLock, OnceLock};

use heapwright_terms::{Degradability, Group, Material};

use crate::records::{
    Assumption, CautionAbout, CautionText, Condition, HygieneRule, Measure, Name, Source,
};
use crate::rows::{self, Records};
use crate::search::{Match, Resolution, SearchIndex};
use crate::words::{self, Word, Words};

/// The tables of the world's figures, ready for use. It never changes.
#[derive(Debug)]
pub struct Catalogue {
    records: Records,
    /// Place of each material by its id.
    places: BTreeMap<String, usize>,
    measure_words: Vec<(String, String)>,
    words: Option<Words>,
    // What no figure needs is read when it is first asked for, and is not carried by a part of the
    // page that never asks.
    names: OnceLock<Vec<Vec<Name>>>,
    cautions: OnceLock<Vec<CautionText>>,
    index: OnceLock<SearchIndex>,
}

static BUILT_IN: LazyLock<Catalogue> = LazyLock::new(Catalogue::from_rows);

static SOURCES: LazyLock<Vec<Source>> = LazyLock::new(rows::sources);
static HYGIENE_RULES: LazyLock<Vec<HygieneRule>> = LazyLock::new(rows::hygiene_rules);

/// Published rules of hygiene in words, in the order of the table.
#[must_use]
pub fn hygiene_rules() -> &'static [HygieneRule] {
    &HYGIENE_RULES
}

impl Catalogue {
    /// The catalogue that the program carries; built at the first call.
    #[must_use]
    pub fn built_in() -> &'static Self {
        &BUILT_IN
    }

    /// The same catalogue in another language: names, measures, conditions and cautions, and the
    /// search by them. What `words` does not have stays English.
    #[must_use]
    pub fn translated(words: &'static Word) -> Self {
        let mut records = rows::read();
        words::translate(&mut records, words);
        Self::of(records, Some(Words(words)))
    }

    /// Every material, in the order of the table.
    #[must_use]
    pub fn materials(&self) -> &[Material] {
        &self.records.materials
    }

    /// The material of that id.
    #[must_use]
    pub fn material(&self, id: &str) -> Option<&Material> {
        self.places
            .get(id)
            .map(|place| &self.records.materials[*place])
    }

    /// What people call the material, the short name first; empty for an unknown id.
    #[must_use]
    pub fn names(&self, id: &str) -> &[Name] {
        self.places
            .get(id)
            .and_then(|place| self.all_names().get(*place))
            .map_or(&[], Vec::as_slice)
    }

    /// The source of that key.
    #[must_use]
    pub fn source(&self, key: &str) -> Option<&Source> {
        by_key(&SOURCES, key, |source| &source.key)
    }

    /// Every source, by key.
    pub fn sources(&self) -> impl Iterator<Item = &Source> {
        SOURCES.iter()
    }

    /// Every measure, small to large as in the table.
    #[must_use]
    pub fn measures(&self) -> &[Measure] {
        &self.records.measures
    }

    /// The measure of that id.
    #[must_use]
    pub fn measure(&self, id: &str) -> Option<&Measure> {
        self.records
            .measures
            .iter()
            .find(|measure| measure.id == id)
    }

    /// Every word for a measure, in lower case, with the id of the measure.
    #[must_use]
    pub fn measure_words(&self) -> &[(String, String)] {
        &self.measure_words
    }

    /// Every condition, in the order of the table.
    #[must_use]
    pub fn conditions(&self) -> &[Condition] {
        &self.records.conditions
    }

    /// The condition of that id.
    #[must_use]
    pub fn condition(&self, id: &str) -> Option<&Condition> {
        self.records
            .conditions
            .iter()
            .find(|condition| condition.id == id)
    }

    /// The conditions that have a meaning for the material, in the order of the table.
    #[must_use]
    pub fn conditions_for(&self, material: &Material) -> Vec<&Condition> {
        let conditions = self.records.conditions.iter();
        conditions
            .filter(|condition| condition.effect_on(material).is_some())
            .collect()
    }

    /// What to say about a material: its own cautions first, then those of its flags.
    #[must_use]
    pub fn cautions_for(&self, material: &Material) -> Vec<&CautionText> {
        let cautions = self.cautions.get_or_init(|| {
            let mut cautions = rows::cautions();
            if let Some(words) = self.words {
                words::translate_cautions(&mut cautions, words.0);
            }
            cautions
        });
        let own = cautions.iter().filter(
            |caution| matches!(&caution.about, CautionAbout::Material(id) if *id == material.id),
        );
        let flagged = material.cautions.iter().filter_map(|flag| {
            let about = CautionAbout::Flag(*flag);
            cautions.iter().find(|caution| caution.about == about)
        });
        own.chain(flagged).collect()
    }

    /// What is assumed under that key; see `tables/assumptions.csv`.
    #[must_use]
    pub fn assumption(&self, key: &str) -> Option<&Assumption> {
        by_key(&self.records.assumptions, key, |assumption| &assumption.key)
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
        self.records.assumptions.iter()
    }

    /// The search over the names of the catalogue; [`SearchIndex::with_own`] adds a garden's own.
    #[must_use]
    pub fn search_index(&self) -> &SearchIndex {
        self.index.get_or_init(|| {
            let records = &self.records;
            SearchIndex::new(&records.materials, self.all_names(), &records.conditions)
        })
    }

    /// The materials that `text` may mean, best first, at most `limit`.
    #[must_use]
    pub fn search(&self, text: &str, limit: usize) -> Vec<Match> {
        self.search_index().search(text, limit)
    }

    /// The one material that `text` means, or what it may have meant.
    #[must_use]
    pub fn resolve(&self, text: &str) -> Resolution {
        self.search_index().resolve(text)
    }

    fn from_rows() -> Self {
        Self::of(rows::read(), None)
    }

    fn all_names(&self) -> &[Vec<Name>] {
        self.names.get_or_init(|| {
            let mut names = rows::names();
            if let Some(words) = self.words {
                words::translate_names(&self.records.materials, &mut names, words.0);
            }
            names
        })
    }

    fn of(records: Records, words: Option<Words>) -> Self {
        let places = records.materials.iter().enumerate();
        let places = places.map(|(place, material)| (material.id.0.clone(), place));
        let mut measure_words: Vec<(String, String)> = Vec::new();
        for measure in &records.measures {
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
            places: places.collect(),
            measure_words,
            words,
            names: OnceLock::new(),
            cautions: OnceLock::new(),
            index: OnceLock::new(),
            records,
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

/// The record of that key in a list that is sorted by key.
fn by_key<'list, T>(list: &'list [T], key: &str, key_of: impl Fn(&T) -> &str) -> Option<&'list T> {
    let place = list.binary_search_by(|record| key_of(record).cmp(key));
    place.ok().map(|place| &list[place])
}
