//! What went into this heap that must be seen to before its compost is used?
//!
//! A pure function of the journal: as long as something of a feed is there, what it asks for stays
//! with the heap.

use heapwright_catalogue::{Catalogue, CautionAbout, CautionText, FoodBeds};
use heapwright_garden::Garden;
use heapwright_journal::{Content, Event, Moment};
use heapwright_state::Contents;
use heapwright_terms::{Material, MaterialId};

/// Something that went in, and what to do before use.
#[derive(Clone, Debug, PartialEq)]
pub struct BeforeUse {
    /// Which material.
    pub material: MaterialId,
    /// What it is called.
    pub name: String,
    /// When it first went in.
    pub first: Moment,
    /// When it last went in.
    pub last: Moment,
    /// How many feeds had it.
    pub feeds: u32,
    /// What to do, a sentence of the catalogue each.
    pub advice: Vec<String>,
    /// Whether it keeps the compost off beds where food grows; `None` where it does not.
    pub food_beds: Option<FoodBeds>,
    /// Keys of the sources.
    pub source_keys: Vec<String>,
}

/// What to beware of with a material until its compost is used: what is said of the material
/// itself, and else what is said of its kind.
#[must_use]
pub fn lasting_cautions<'a>(catalogue: &'a Catalogue, material: &Material) -> Vec<&'a CautionText> {
    let cautions = catalogue.cautions_for(material);
    let lasting = |own: bool| {
        cautions.iter().copied().filter(move |caution| {
            let is_own = matches!(caution.about, CautionAbout::Material(_));
            is_own == own && !caution.before_use.is_empty()
        })
    };
    // What is said of the material itself is nearer than what is said of its kind.
    let mut told: Vec<&CautionText> = lasting(true).collect();
    if told.is_empty() {
        told = lasting(false).collect();
    }
    told
}

/// What must be seen to, in the order in which it first went in.
#[must_use]
pub fn before_use(catalogue: &Catalogue, garden: &Garden, contents: &Contents) -> Vec<BeforeUse> {
    let events = contents.shares.iter().map(|share| share.event.as_ref());
    before_use_of(catalogue, garden, events)
}

/// What must be seen to of what these feeds brought, in the order in which it first went in.
pub(crate) fn before_use_of<'a>(
    catalogue: &Catalogue,
    garden: &Garden,
    events: impl Iterator<Item = &'a Event>,
) -> Vec<BeforeUse> {
    let mut found: Vec<BeforeUse> = Vec::new();
    for event in events {
        let Some(Content::Fed(fed)) = event.content() else {
            continue;
        };
        let happened = event.happened;
        let mut in_this_feed: Vec<&str> = Vec::new();
        for id in fed.parts.iter().filter_map(|part| part.material.as_deref()) {
            if in_this_feed.contains(&id) {
                continue;
            }
            in_this_feed.push(id);
            if let Some(known) = found.iter_mut().find(|one| one.material.as_str() == id) {
                known.first = known.first.min(happened);
                known.last = known.last.max(happened);
                known.feeds += 1;
                continue;
            }
            let id = MaterialId(id.to_owned());
            let Some(material) = garden.material(catalogue, &id) else {
                continue;
            };
            let told = lasting_cautions(catalogue, &material);
            if told.is_empty() {
                continue;
            }
            let mut advice: Vec<String> = Vec::new();
            let mut source_keys: Vec<String> = Vec::new();
            // What never goes on food beds is the first of the two.
            let food_beds = told.iter().filter_map(|caution| caution.food_beds).min();
            for caution in told {
                if !advice.contains(&caution.before_use) {
                    advice.push(caution.before_use.clone());
                }
                for key in &caution.source_keys {
                    if !source_keys.contains(key) {
                        source_keys.push(key.clone());
                    }
                }
            }
            found.push(BeforeUse {
                material: id,
                name: material.name,
                first: happened,
                last: happened,
                feeds: 1,
                advice,
                food_beds,
                source_keys,
            });
        }
    }
    found
}
