//! Browns that are put by in their season and handed out over the year.

use heapwright_journal::AmountSaid;
use heapwright_journal::content::{PartFed, StockCounted, StockPutBy, StockUsed};

use crate::chance::Chance;
use crate::seasons::{self, BROWNS};

/// What lies together.
#[derive(Clone, Debug)]
struct Pile {
    material: &'static str,
    conditions: Vec<String>,
    unit: String,
    /// How much is left, in the unit.
    left: f64,
    counted_day: i64,
}

/// All that is put by.
#[derive(Clone, Debug, Default)]
pub(crate) struct Stores {
    piles: Vec<Pile>,
}

impl Stores {
    /// Puts by what the month yields; `None` when it yields nothing.
    pub(crate) fn put_by(
        &mut self,
        chance: &mut Chance,
        month: i8,
        day: i64,
    ) -> Option<StockPutBy> {
        let brown = seasons::drawn(chance, BROWNS, month).filter(|one| one.is_in(month))?;
        let amount = brown.amount(chance);
        let conditions = brown.conditions(chance);
        let found = self
            .piles
            .iter_mut()
            .find(|pile| pile.material == brown.material && pile.conditions == conditions);
        match found {
            Some(pile) => pile.left += amount.count,
            None => self.piles.push(Pile {
                material: brown.material,
                conditions: conditions.clone(),
                unit: amount.unit.clone(),
                left: amount.count,
                counted_day: day,
            }),
        }
        let scoop = chance.happens(0.3).then(|| AmountSaid {
            count: 0.5,
            unit: "bucket".to_owned(),
        });
        Some(StockPutBy {
            material: brown.material.to_owned(),
            conditions,
            amount,
            scoop,
        })
    }

    /// Some of what is left, as it is handed out.
    fn taken(&mut self, chance: &mut Chance) -> Option<(&'static str, Vec<String>, AmountSaid)> {
        let full: Vec<usize> = (0..self.piles.len())
            .filter(|place| self.piles[*place].left >= 0.25)
            .collect();
        let pile = &mut self.piles[*chance.one_of(&full)?];
        let most = pile.left.min(if pile.unit == "bucket" { 2.0 } else { 0.5 });
        let count = chance.stepped(0.25, most.max(0.25), 0.25);
        pile.left -= count;
        let amount = AmountSaid {
            count,
            unit: pile.unit.clone(),
        };
        Some((pile.material, pile.conditions.clone(), amount))
    }

    /// A part of a feed from what is left; `None` when nothing is.
    pub(crate) fn hand_out(&mut self, chance: &mut Chance) -> Option<PartFed> {
        let (material, conditions, amount) = self.taken(chance)?;
        Some(PartFed {
            material: Some(material.to_owned()),
            custom: None,
            amount,
            conditions,
            moisture_pct: None,
            nitrogen_pct_dry: None,
            cn_ratio: None,
            bulk_density_kg_m3: None,
            from_stores: true,
        })
    }

    /// Something that is used otherwise: as a path or a cover.
    pub(crate) fn used(&mut self, chance: &mut Chance) -> Option<StockUsed> {
        let (material, conditions, amount) = self.taken(chance)?;
        Some(StockUsed {
            material: material.to_owned(),
            conditions,
            amount,
            heap: None,
        })
    }

    /// Counts the pile that was counted longest ago, when that is more than a quarter ago.
    pub(crate) fn counted(&mut self, chance: &mut Chance, day: i64) -> Option<StockCounted> {
        let pile = self.piles.iter_mut().min_by_key(|pile| pile.counted_day)?;
        if day - pile.counted_day < 90 {
            return None;
        }
        pile.counted_day = day;
        // More is lost and blown away than is written down.
        let left = crate::chance::rounded(pile.left * chance.between(0.6, 1.0), 0.5);
        pile.left = left;
        Some(StockCounted {
            material: pile.material.to_owned(),
            conditions: pile.conditions.clone(),
            amount: (left > 0.0).then(|| AmountSaid {
                count: left,
                unit: pile.unit.clone(),
            }),
        })
    }
}
