//! What kitchens, gardens and autumns yield, month by month. All of it is invented.

use heapwright_journal::AmountSaid;
use heapwright_journal::content::PartFed;

use crate::chance::Chance;

/// A material as it comes: in which months, in which vessel, how much, in what conditions.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Yield {
    pub(crate) material: &'static str,
    /// First and last month; over the end of the year when the last is the smaller.
    months: (i8, i8),
    unit: &'static str,
    least: f64,
    most: f64,
    step: f64,
    /// Conditions, one of which is drawn; those with "+" hold together.
    conditions: &'static [&'static str],
    /// How often it comes.
    weight: f64,
    /// How fast it rots in a heap, 0 to 1.
    pub(crate) quick: f64,
}

macro_rules! yields {
    ($($material:literal $from:literal-$to:literal, $least:literal-$most:literal by $step:literal $unit:literal, $conditions:expr, often $weight:literal, quick $quick:literal;)+) => {
        &[$(Yield {
            material: $material,
            months: ($from, $to),
            unit: $unit,
            least: $least,
            most: $most,
            step: $step,
            conditions: &$conditions,
            weight: $weight,
            quick: $quick,
        }),+]
    };
}

/// From the kitchen.
pub(crate) const KITCHEN: &[Yield] = yields! {
    "mixed_vegetable_scraps" 1-12, 0.5-2.0 by 0.25 "caddy", ["", "", "chopped", "wet"], often 30.0, quick 0.8;
    "mixed_fruit_scraps" 5-11, 0.5-1.5 by 0.25 "caddy", ["", "spoiled"], often 9.0, quick 0.8;
    "coffee_grounds" 1-12, 1.0-4.0 by 1.0 "mug", ["", "wet"], often 14.0, quick 0.5;
    "tea_leaves" 1-12, 1.0-3.0 by 1.0 "mug", ["wet"], often 5.0, quick 0.5;
    "egg_shells" 1-12, 1.0-3.0 by 1.0 "handful", [""], often 4.0, quick 0.0;
    "bread" 1-12, 0.2-0.8 by 0.1 "kg", ["", "dry", "spoiled"], often 3.0, quick 0.9;
    "apple" 9-11, 0.5-2.0 by 0.5 "bucket", ["whole", "chopped", "spoiled"], often 8.0, quick 0.8;
    "pumpkin_flesh" 10-12, 0.5-1.5 by 0.5 "bucket", ["chopped"], often 4.0, quick 0.7;
    "citrus_peel" 12-3, 0.5-1.0 by 0.5 "bowl", [""], often 3.0, quick 0.5;
    "tissue_paper_towel" 1-12, 1.0-2.0 by 1.0 "double_handful", ["damp", ""], often 2.0, quick 0.3;
};

/// From beds, lawns and hedges.
pub(crate) const GARDEN: &[Yield] = yields! {
    "grass_clippings_fresh" 4-10, 0.5-3.0 by 0.5 "mower_box", ["fresh", "wet", "wilted"], often 22.0, quick 1.0;
    "weeds_green" 4-10, 1.0-4.0 by 0.5 "bucket", ["", "wilted", "fresh"], often 18.0, quick 0.7;
    "spent_vegetable_plants" 8-11, 1.0-3.0 by 0.5 "trug", ["chopped", "whole"], often 12.0, quick 0.6;
    "tomato_vines" 9-11, 1.0-2.0 by 0.5 "barrow", ["chopped", "wilted"], often 5.0, quick 0.6;
    "pea_bean_vines" 7-9, 0.5-2.0 by 0.5 "trug", ["", "wilted"], often 5.0, quick 0.6;
    "brassica_stalks" 1-4, 0.5-1.5 by 0.5 "trug", ["chopped", "shredded"], often 4.0, quick 0.4;
    "hedge_trimmings_fresh" 6-9, 0.5-1.5 by 0.25 "barrow", ["shredded", ""], often 6.0, quick 0.5;
    "comfrey" 5-9, 1.0-2.0 by 0.5 "armful", ["fresh", "wilted"], often 4.0, quick 0.8;
    "nettle" 4-8, 1.0-2.0 by 0.5 "armful", ["fresh", "chopped"], often 4.0, quick 0.9;
    "spent_flowers" 5-10, 0.5-2.0 by 0.5 "bucket", [""], often 4.0, quick 0.5;
    "rhubarb_leaves" 4-6, 1.0-2.0 by 1.0 "armful", [""], often 2.0, quick 0.6;
    "horse_bedding_straw" 2-5, 0.5-3.0 by 0.5 "barrow", ["damp", "wet", ""], often 5.0, quick 0.7;
    "chicken_litter_bedding" 1-12, 0.5-2.0 by 0.5 "bucket", ["", "dry"], often 4.0, quick 0.8;
    "guinea_pig_bedding" 1-12, 0.5-1.0 by 0.5 "bucket", ["", "damp"], often 3.0, quick 0.4;
    "spent_potting_compost" 3-6, 1.0-3.0 by 1.0 "bucket", ["dry", "damp"], often 3.0, quick 0.1;
    "half_finished_compost" 3-10, 1.0-2.0 by 1.0 "bucket", [""], often 2.0, quick 0.2;
};

/// Browns, which are put by and handed out later.
pub(crate) const BROWNS: &[Yield] = yields! {
    "leaves_shredded_dry" 10-12, 2.0-12.0 by 1.0 "bucket", ["dry"], often 30.0, quick 0.2;
    "dry_leaves_mixed" 10-12, 1.0-6.0 by 0.5 "barrow", [""], often 14.0, quick 0.2;
    "straw_wheat" 8-9, 1.0-3.0 by 1.0 "bale", ["packed"], often 8.0, quick 0.3;
    "corrugated_cardboard" 1-12, 1.0-4.0 by 0.5 "bucket", ["shredded"], often 9.0, quick 0.2;
    "shredded_prunings" 1-3, 1.0-5.0 by 0.5 "barrow", [""], often 8.0, quick 0.2;
    "wood_shavings" 1-12, 0.5-1.0 by 0.5 "sack", ["dry"], often 3.0, quick 0.1;
};

/// Every material that is fed or put by.
pub fn materials() -> impl Iterator<Item = (&'static str, &'static str, Vec<String>)> {
    [KITCHEN, GARDEN, BROWNS]
        .into_iter()
        .flatten()
        .flat_map(|of| {
            of.conditions
                .iter()
                .map(|conditions| (of.material, of.unit, split(conditions)))
        })
}

fn split(conditions: &str) -> Vec<String> {
    conditions
        .split('+')
        .filter(|word| !word.is_empty())
        .map(str::to_owned)
        .collect()
}

impl Yield {
    /// True in a month.
    pub(crate) fn is_in(&self, month: i8) -> bool {
        let (first, last) = self.months;
        if first <= last {
            (first..=last).contains(&month)
        } else {
            month >= first || month <= last
        }
    }

    /// Some of it.
    pub(crate) fn amount(&self, chance: &mut Chance) -> AmountSaid {
        AmountSaid {
            count: chance.stepped(self.least, self.most, self.step),
            unit: self.unit.to_owned(),
        }
    }

    /// In what it comes.
    pub(crate) fn conditions(&self, chance: &mut Chance) -> Vec<String> {
        chance
            .one_of(self.conditions)
            .map(|conditions| split(conditions))
            .unwrap_or_default()
    }

    /// Some of it as a part of a feed.
    pub(crate) fn part(&self, chance: &mut Chance) -> PartFed {
        PartFed {
            material: Some(self.material.to_owned()),
            custom: None,
            amount: self.amount(chance),
            conditions: self.conditions(chance),
            moisture_pct: None,
            nitrogen_pct_dry: None,
            cn_ratio: None,
            bulk_density_kg_m3: None,
            from_stores: false,
        }
    }
}

/// One of those that come in a month, by how often they do.
pub(crate) fn drawn(
    chance: &mut Chance,
    of: &'static [Yield],
    month: i8,
) -> Option<&'static Yield> {
    let weights: Vec<f64> = of
        .iter()
        .map(|one| if one.is_in(month) { one.weight } else { 0.0 })
        .collect();
    of.get(chance.weighted(&weights))
}

/// How much is done in a month, beside the busiest.
pub(crate) fn busyness(month: i8) -> f64 {
    match month {
        1 | 2 => 0.45,
        3 | 11 => 0.7,
        12 => 0.5,
        _ => 1.0,
    }
}

/// Usual temperature of the air [degC] on a day of the year, coldest in late January.
pub(crate) fn air_c(day_of_year: i16) -> f64 {
    let from_coldest = (f64::from(day_of_year) - 25.0).rem_euclid(365.0);
    let to_warmest = from_coldest.min(365.0 - from_coldest) / 182.5;
    let smooth = to_warmest * to_warmest * (3.0 - 2.0 * to_warmest);
    3.0 + 15.5 * smooth
}
