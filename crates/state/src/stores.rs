//! The stores: what was put by, what went, and what was counted.

use std::collections::BTreeMap;
use std::sync::Arc;

use heapwright_journal::{AmountSaid, Content, Event, Moment};

use crate::timeline::Step;

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

/// All shelves.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct StoresNow {
    /// By what lies there.
    pub shelves: BTreeMap<ShelfKey, Shelf>,
}

impl StoresNow {
    fn shelf(&mut self, material: &str, conditions: &[String]) -> &mut Shelf {
        self.shelves
            .entry(ShelfKey::new(material, conditions))
            .or_default()
    }
}

impl Step for StoresNow {
    fn fresh(&self) -> Self {
        Self::default()
    }

    fn step(&mut self, event: &Arc<Event>) {
        let when = event.happened;
        match event.content() {
            Some(Content::StockPutBy(put)) => {
                let shelf = self.shelf(&put.material, &put.conditions);
                shelf.came.push((when, put.amount.clone()));
                shelf.unit = Some(put.amount.unit.clone());
                if put.scoop.is_some() {
                    shelf.scoop.clone_from(&put.scoop);
                }
            }
            Some(Content::StockUsed(used)) => self
                .shelf(&used.material, &used.conditions)
                .went
                .push((when, used.amount.clone())),
            Some(Content::StockCounted(counted)) => {
                let shelf = self.shelf(&counted.material, &counted.conditions);
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
                    if let Some(material) = &part.material {
                        self.shelf(material, &part.conditions)
                            .went
                            .push((when, part.amount.clone()));
                    }
                }
            }
            _ => {}
        }
    }
}
