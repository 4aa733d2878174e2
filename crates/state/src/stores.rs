//! The stores: what was put by, what went, and what was counted.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use heapwright_journal::{AmountSaid, Content, Event, Moment};

use crate::timeline::{Step, Timeline};

/// What lies together: a material in the same conditions.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct ShelfKey {
    /// Id of the material.
    pub material: String,
    /// Ids of the conditions it is in, in rising order, each once.
    pub conditions: Vec<String>,
}

impl ShelfKey {
    /// Of a material in conditions.
    #[must_use]
    pub fn new(material: &str, conditions: &[String]) -> Self {
        let mut conditions = conditions.to_vec();
        conditions.sort_unstable();
        conditions.dedup();
        Self {
            material: material.to_owned(),
            conditions,
        }
    }

    fn is_of(&self, material: &str, conditions: &[String]) -> bool {
        self.material == material
            && (self.conditions == conditions || *self == Self::new(material, conditions))
    }
}

/// What came and went since the last counting.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Shelf {
    /// What was counted last, if it was.
    pub counted: Option<(Moment, Option<AmountSaid>)>,
    /// What was put by since.
    pub came: Vec<(Moment, AmountSaid)>,
    /// What was taken since.
    pub went: Vec<(Moment, AmountSaid)>,
    /// In what it is handed out.
    pub scoop: Option<AmountSaid>,
    /// The unit in which it was put by or counted last.
    pub unit: Option<String>,
}

/// What is put by.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct StoresNow {
    /// By what lies there.
    pub shelves: Shelves,
}

/// All shelves, by what lies there. Each has its own history: they do not touch each other.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Shelves(BTreeMap<ShelfKey, Timeline<OneShelf>>);

impl Shelves {
    /// True when nothing was ever put by.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// How many there are.
    #[must_use]
    pub fn len(&self) -> usize {
        self.0.len()
    }

    /// The shelf of something.
    #[must_use]
    pub fn get(&self, key: &ShelfKey) -> Option<&Shelf> {
        self.0.get(key).map(|timeline| &timeline.now().now)
    }

    /// All of them, by what lies there.
    pub fn iter(&self) -> impl Iterator<Item = (&ShelfKey, &Shelf)> {
        self.0
            .iter()
            .map(|(key, timeline)| (key, &timeline.now().now))
    }

    pub(crate) fn timeline(&mut self, key: &ShelfKey) -> &mut Timeline<OneShelf> {
        self.0.entry(key.clone()).or_insert_with(|| {
            Timeline::new(OneShelf {
                key: key.clone(),
                now: Shelf::default(),
            })
        })
    }

    pub(crate) fn settle(&mut self, key: &ShelfKey) {
        if let Some(timeline) = self.0.get_mut(key) {
            timeline.settle();
            if timeline.is_empty() {
                self.0.remove(key);
            }
        }
    }
}

impl<'a> IntoIterator for &'a Shelves {
    type Item = (&'a ShelfKey, &'a Shelf);
    type IntoIter = Box<dyn Iterator<Item = Self::Item> + 'a>;

    fn into_iter(self) -> Self::IntoIter {
        Box::new(self.iter())
    }
}

/// The shelves that an event touches.
pub(crate) fn shelves_of(content: &Content) -> BTreeSet<ShelfKey> {
    match content {
        Content::StockPutBy(put) => [ShelfKey::new(&put.material, &put.conditions)].into(),
        Content::StockUsed(used) => [ShelfKey::new(&used.material, &used.conditions)].into(),
        Content::StockCounted(counted) => {
            [ShelfKey::new(&counted.material, &counted.conditions)].into()
        }
        Content::Fed(fed) => fed
            .parts
            .iter()
            .filter(|part| part.from_stores)
            .filter_map(|part| Some(ShelfKey::new(part.material.as_ref()?, &part.conditions)))
            .collect(),
        _ => BTreeSet::new(),
    }
}

/// The fold needs to know whose history it is: a feed may take from many shelves.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct OneShelf {
    key: ShelfKey,
    now: Shelf,
}

impl Step for OneShelf {
    fn fresh(&self) -> Self {
        Self {
            key: self.key.clone(),
            now: Shelf::default(),
        }
    }

    fn step(&mut self, event: &Arc<Event>) {
        let when = event.happened;
        let shelf = &mut self.now;
        match event.content() {
            Some(Content::StockPutBy(put)) => {
                shelf.came.push((when, put.amount.clone()));
                shelf.unit = Some(put.amount.unit.clone());
                if put.scoop.is_some() {
                    shelf.scoop.clone_from(&put.scoop);
                }
            }
            Some(Content::StockUsed(used)) => shelf.went.push((when, used.amount.clone())),
            Some(Content::StockCounted(counted)) => {
                *shelf = Shelf {
                    counted: Some((when, counted.amount.clone())),
                    scoop: shelf.scoop.take(),
                    unit: match &counted.amount {
                        Some(amount) => Some(amount.unit.clone()),
                        None => shelf.unit.take(),
                    },
                    ..Shelf::default()
                };
            }
            Some(Content::Fed(fed)) => {
                for part in fed.parts.iter().filter(|part| part.from_stores) {
                    if let Some(material) = &part.material
                        && self.key.is_of(material, &part.conditions)
                    {
                        shelf.went.push((when, part.amount.clone()));
                    }
                }
            }
            _ => {}
        }
    }

    fn is_small(&self) -> bool {
        self.now.came.is_empty() && self.now.went.is_empty()
    }
}
