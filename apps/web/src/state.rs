//! What the keeper has tapped and typed, and how it changes. Plain data and pure functions.
//!
//! State goes down to the components; what the keeper does comes up as an
//! [`Action`]. What was typed stays as typed: it is understood anew each time.

use std::collections::BTreeMap;
use std::fmt::Display;

use heapwright_garden::Stock;
use heapwright_quantity::{Amount, Unit, UnitSystem};
use heapwright_texts::{Clock, Locale};
use serde::{Deserialize, Serialize};

use crate::{demo, language};

/// Something in hand.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
pub struct HandLine {
    /// Tells lines apart while they are moved and removed.
    pub key: u32,
    /// Id of the material.
    pub material: String,
    /// Id of the condition; empty for "as usual".
    pub condition: String,
    /// The number as typed: "1", "1½", "3,5", or a whole amount: "3.5 kg".
    pub typed: String,
    /// Id of the measure, or the word of a unit.
    pub unit: String,
}

/// Something in reach.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
pub struct ReachLine {
    /// Tells lines apart.
    pub key: u32,
    /// Id of the material.
    pub material: String,
    /// Id of the condition, or of several joined by "+"; empty for "as usual".
    pub condition: String,
    /// True when it may be used.
    pub on: bool,
    /// How many measures there are, as typed; empty for plenty.
    pub typed: String,
    /// Id of the measure in which it is handed out.
    pub unit: String,
    /// True when it stands here because it is in the stores.
    #[serde(default)]
    pub stored: bool,
}

/// Light or dark.
#[derive(Clone, Copy, Debug, Default, Deserialize, PartialEq, Eq, Serialize)]
pub enum Light {
    /// As the device is set.
    #[default]
    Device,
    /// For bright sun.
    Sun,
    /// For the evening.
    Dark,
}

/// How the time of day is shown.
#[derive(Clone, Copy, Debug, Default, Deserialize, PartialEq, Eq, Serialize)]
pub enum ClockChoice {
    /// As the device has it.
    #[default]
    Device,
    /// "18:05".
    Hours24,
    /// "6:05 pm".
    Hours12,
}

/// The limits of the aim, as typed; empty for the usual one.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
pub struct Aim {
    /// Lowest C:N.
    pub ratio_low: String,
    /// Highest C:N.
    pub ratio_high: String,
    /// Lowest moisture, percent.
    pub moisture_low: String,
    /// Highest moisture, percent.
    pub moisture_high: String,
    /// Least air space, percent.
    pub air_low: String,
}

/// One of the limits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AimField {
    /// Lowest C:N.
    RatioLow,
    /// Highest C:N.
    RatioHigh,
    /// Lowest moisture.
    MoistureLow,
    /// Highest moisture.
    MoistureHigh,
    /// Least air space.
    AirLow,
}

impl AimField {
    /// All limits, in the order of the form.
    pub const ALL: [Self; 5] = [
        Self::RatioLow,
        Self::RatioHigh,
        Self::MoistureLow,
        Self::MoistureHigh,
        Self::AirLow,
    ];
}

impl Aim {
    /// What is typed in a field.
    #[must_use]
    pub fn typed(&self, field: AimField) -> &str {
        match field {
            AimField::RatioLow => &self.ratio_low,
            AimField::RatioHigh => &self.ratio_high,
            AimField::MoistureLow => &self.moisture_low,
            AimField::MoistureHigh => &self.moisture_high,
            AimField::AirLow => &self.air_low,
        }
    }

    fn typed_mut(&mut self, field: AimField) -> &mut String {
        match field {
            AimField::RatioLow => &mut self.ratio_low,
            AimField::RatioHigh => &mut self.ratio_high,
            AimField::MoistureLow => &mut self.moisture_low,
            AimField::MoistureHigh => &mut self.moisture_high,
            AimField::AirLow => &mut self.air_low,
        }
    }
}

/// All that is on the page.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
pub struct Page {
    /// What is in hand.
    pub hand: Vec<HandLine>,
    /// What is in reach.
    pub reach: Vec<ReachLine>,
    /// True when there is water.
    pub water: bool,
    /// True for pounds and gallons.
    pub us_units: bool,
    /// Light or dark.
    pub light: Light,
    /// How the time of day is shown.
    #[serde(default)]
    pub clock: ClockChoice,
    /// What the keeper's own vessels hold, as typed before the journal kept it, by measure.
    pub measures: BTreeMap<String, String>,
    /// The aim.
    pub aim: Aim,
    /// Which recipe is looked at.
    pub chosen: usize,
    /// The next key.
    pub next_key: u32,
    /// Materials on the tiles, as the journal of this device had them when it was last looked at;
    /// ids with spaces between them. Empty when it had no heaps.
    #[serde(default)]
    pub tiles: String,
    /// In what is kept: the language in which units stand behind numbers, and below it each line that
    /// has one: its key, the number and the id of the unit, with tabs between them. The key of what a
    /// vessel holds is the id of its measure.
    #[serde(default)]
    pub spoken: String,
}

/// What the keeper can do.
#[derive(Clone, Debug, PartialEq)]
pub enum Action {
    /// One more of a material, in its usual measure.
    Tap(String),
    /// Add to what is in reach.
    Reach(String),
    /// Type an amount in hand.
    TypeHand(u32, String),
    /// A step up or down in hand.
    StepHand(u32, bool),
    /// Another measure in hand.
    UnitHand(u32, String),
    /// Another condition in hand.
    ConditionHand(u32, String),
    /// Take out of hand.
    RemoveHand(u32),
    /// Empty the hand.
    ClearHand,
    /// Use it or not.
    ToggleReach(u32),
    /// Type how much there is.
    TypeReach(u32, String),
    /// A step up or down of how much there is.
    StepReach(u32, bool),
    /// Another measure to hand out.
    UnitReach(u32, String),
    /// Another condition in reach.
    ConditionReach(u32, String),
    /// Take out of reach.
    RemoveReach(u32),
    /// Water or none.
    ToggleWater,
    /// Look at another recipe.
    Choose(usize),
    /// Other units.
    Units(bool),
    /// Light or dark.
    Light(Light),
    /// How the time of day is shown.
    Clock(ClockChoice),
    /// What was typed of vessels is in the journal now.
    MeasuresKept,
    /// A limit of the aim.
    AimAt(AimField, String),
    /// What the journal has in its stores.
    Stores(Vec<Stock>),
    /// What the journal would have on the tiles.
    Tiles(String),
    /// Everything as it was at first.
    StartAgain,
}

impl Action {
    /// True when "Undo" should offer to take it back as a step of its own.
    #[must_use]
    pub fn can_be_undone(&self) -> bool {
        !matches!(
            self,
            Self::Choose(_)
                | Self::Light(_)
                | Self::Clock(_)
                | Self::Units(_)
                | Self::MeasuresKept
                | Self::Stores(_)
                | Self::Tiles(_)
        )
    }
}

/// Tiles to tap: the things of a usual day, each with the measure it comes in.
pub const TILES: [(&str, &str); 12] = [
    ("mixed_vegetable_scraps", "caddy"),
    ("grass_clippings_fresh", "bucket"),
    ("coffee_grounds", "mug"),
    ("mixed_fruit_scraps", "caddy"),
    ("weeds_green", "bucket"),
    ("tea_leaves", "mug"),
    ("spent_vegetable_plants", "bucket"),
    ("hedge_trimmings_fresh", "bucket"),
    ("egg_shells", "handful"),
    ("chicken_litter_bedding", "bucket"),
    ("dry_leaves_mixed", "bucket"),
    ("bread", "handful"),
];

/// Units that an amount can be chosen in, besides measures.
#[must_use]
pub fn plain_units(us_units: bool) -> [&'static str; 2] {
    if us_units { ["gal", "lb"] } else { ["L", "kg"] }
}

/// Measures that an amount can be chosen in: the common ones.
pub const MEASURES: [&str; 8] = [
    "handful", "mug", "caddy", "bucket", "trug", "barrow", "sack", "leaf_bag",
];

impl Default for Page {
    /// The example of the first minute: a caddy of scraps, a bucket of grass, the demo garden's stores.
    fn default() -> Self {
        let mut page = Self {
            hand: Vec::new(),
            reach: Vec::new(),
            water: true,
            us_units: false,
            light: Light::Device,
            clock: ClockChoice::Device,
            measures: BTreeMap::new(),
            aim: Aim::default(),
            chosen: 0,
            next_key: 1,
            tiles: String::new(),
            spoken: String::new(),
        };
        page = updated(&page, &Action::Tap("mixed_vegetable_scraps".to_owned()));
        page = updated(&page, &Action::Tap("grass_clippings_fresh".to_owned()));
        page.take_stores(&demo::garden().stores);
        page
    }
}

impl Page {
    /// The units to show.
    #[must_use]
    pub fn system(&self) -> UnitSystem {
        if self.us_units {
            UnitSystem::UsCustomary
        } else {
            UnitSystem::Metric
        }
    }

    /// How to speak: the page's language with the keeper's units and clock.
    #[must_use]
    pub fn locale(&self) -> Locale {
        let of_device = language::locale();
        of_device
            .with_units(self.system())
            .by_clock(match self.clock {
                ClockChoice::Device => of_device.clock,
                ClockChoice::Hours24 => Clock::Hours24,
                ClockChoice::Hours12 => Clock::Hours12,
            })
    }

    /// True when another page asks the same: it only looks at it differently.
    #[must_use]
    pub fn asks_the_same(&self, other: &Self) -> bool {
        let seen_alike = Self {
            chosen: other.chosen,
            light: other.light,
            clock: other.clock,
            tiles: other.tiles.clone(),
            // What was typed of vessels counts in them.
            us_units: if self.measures.is_empty() {
                other.us_units
            } else {
                self.us_units
            },
            ..self.clone()
        };
        seen_alike == *other
    }

    /// The page as it is kept: with its language, and the lines with a unit in that once more without
    /// it, so that a page in another language can read them.
    #[must_use]
    pub fn to_keep(&self) -> Self {
        let hand = self.hand.iter();
        let hand = hand.map(|line| (&line.key as &dyn Display, &line.typed));
        let reach = self.reach.iter();
        let reach = reach.map(|line| (&line.key as &dyn Display, &line.typed));
        let measures = self.measures.iter();
        let measures = measures.map(|(measure, typed)| (measure as &dyn Display, typed));
        let mut spoken = language::locale().tag().to_owned();
        // Most lines are a number alone, and this is done at every tap.
        for (key, typed) in hand.chain(reach).chain(measures) {
            if typed.contains(char::is_alphabetic)
                && let Some((count, Some(unit))) = count_and_unit(typed)
            {
                spoken += &format!("\n{key}\t{count}\t{}", unit_word(&unit));
            }
        }
        Self {
            spoken,
            ..self.clone()
        }
    }

    /// The page that was kept, on a page that speaks this language.
    #[must_use]
    pub fn respoken(mut self, tag: &str) -> Self {
        let spoken = std::mem::take(&mut self.spoken);
        let mut lines = spoken.lines();
        // What was kept before there were languages names none.
        if lines.next().is_none_or(|kept_in| kept_in == tag) {
            return self;
        }
        for line in lines {
            let mut fields = line.split('\t');
            let (Some(key), Some(Ok(count)), Some(unit)) = (
                fields.next(),
                fields.next().map(str::parse::<f64>),
                fields.next(),
            ) else {
                continue;
            };
            let number = number_text(count);
            if let Some(held) = self.measures.get_mut(key) {
                *held = format!("{number} {}", measure_or_unit(unit));
                continue;
            }
            let Ok(key) = key.parse::<u32>() else {
                continue;
            };
            let (typed, unit) = (number, unit.to_owned());
            if let Some(line) = self.hand_line(key) {
                (line.typed, line.unit) = (typed, unit);
            } else if let Some(line) = self.reach_line(key) {
                (line.typed, line.unit) = (typed, unit);
            }
        }
        self
    }

    /// Materials on the tiles.
    #[must_use]
    pub fn tiles(&self) -> Vec<String> {
        if self.tiles.is_empty() {
            TILES.map(|(material, _)| material.to_owned()).to_vec()
        } else {
            self.tiles.split(' ').map(str::to_owned).collect()
        }
    }

    /// The page with what stands beside the balance as in `now`: a change that is taken back, or a
    /// balance that starts again, has nothing to do with units, light and journal.
    #[must_use]
    pub fn beside(self, now: &Self) -> Self {
        Self {
            us_units: now.us_units,
            light: now.light,
            clock: now.clock,
            tiles: now.tiles.clone(),
            ..self
        }
    }

    /// The page with a key of its own for each line: what was kept may come from anywhere.
    #[must_use]
    pub fn repaired(mut self) -> Self {
        let mut keys = std::collections::BTreeSet::new();
        let lines = self.hand.iter().map(|line| line.key);
        let apart = lines
            .chain(self.reach.iter().map(|line| line.key))
            .all(|key| key < self.next_key && keys.insert(key));
        if !apart {
            self.next_key = 1;
            for index in 0..self.hand.len() {
                self.hand[index].key = self.key();
            }
            for index in 0..self.reach.len() {
                self.reach[index].key = self.key();
            }
        }
        self
    }

    /// Puts what is in the stores in reach, in place of what stood there from stores before; ticks
    /// stay as they were.
    fn take_stores(&mut self, stores: &[Stock]) {
        let before = std::mem::take(&mut self.reach);
        for stock in stores {
            let material = stock.material.as_str();
            let condition = stock.conditions.join("+");
            let old = before.iter().find(|line| {
                line.stored && line.material == material && line.condition == condition
            });
            let key = old.map_or_else(|| self.key(), |line| line.key);
            let scoop = unit_word(&stock.scoop.unit);
            let typed = stock.amount.as_ref().map_or_else(String::new, |amount| {
                let number = number_text(amount.count);
                if amount.unit == stock.scoop.unit {
                    number
                } else {
                    format!("{number} {}", unit_in_words(&amount.unit))
                }
            });
            self.reach.push(ReachLine {
                key,
                material: material.to_owned(),
                condition,
                on: old.is_none_or(|line| line.on),
                typed,
                unit: scoop,
                stored: true,
            });
        }
        self.reach
            .extend(before.into_iter().filter(|line| !line.stored));
    }

    fn key(&mut self) -> u32 {
        let key = self.next_key;
        self.next_key = self.next_key.wrapping_add(1);
        key
    }

    fn hand_line(&mut self, key: u32) -> Option<&mut HandLine> {
        self.hand.iter_mut().find(|line| line.key == key)
    }

    fn reach_line(&mut self, key: u32) -> Option<&mut ReachLine> {
        self.reach.iter_mut().find(|line| line.key == key)
    }
}

/// The page after an action.
#[must_use]
pub fn updated(page: &Page, action: &Action) -> Page {
    let mut page = page.clone();
    // Another question has other recipes: the first is the one to see.
    if action.can_be_undone() {
        page.chosen = 0;
    }
    match action {
        Action::Tap(material) => match page
            .hand
            .iter_mut()
            .find(|line| line.material == *material && line.condition.is_empty())
        {
            Some(line) => line.typed = stepped(&line.typed, true),
            None => {
                let key = page.key();
                let unit = usual_measure(material).to_owned();
                page.hand.push(HandLine {
                    key,
                    material: material.clone(),
                    condition: String::new(),
                    typed: "1".to_owned(),
                    unit,
                });
            }
        },
        Action::Reach(material) => match page
            .reach
            .iter_mut()
            .find(|line| line.material == *material)
        {
            Some(line) => line.on = true,
            None => {
                let key = page.key();
                page.reach.push(ReachLine {
                    key,
                    material: material.clone(),
                    condition: String::new(),
                    on: true,
                    typed: String::new(),
                    unit: "bucket".to_owned(),
                    stored: false,
                });
            }
        },
        Action::TypeHand(key, typed) => {
            if let Some(line) = page.hand_line(*key) {
                line.typed.clone_from(typed);
            }
        }
        Action::StepHand(key, up) => {
            if let Some(line) = page.hand_line(*key) {
                line.typed = stepped(&line.typed, *up);
            }
        }
        Action::UnitHand(key, unit) => {
            if let Some(line) = page.hand_line(*key) {
                line.unit.clone_from(unit);
            }
        }
        Action::ConditionHand(key, condition) => {
            if let Some(line) = page.hand_line(*key) {
                line.condition.clone_from(condition);
            }
        }
        Action::RemoveHand(key) => page.hand.retain(|line| line.key != *key),
        Action::ClearHand => page.hand.clear(),
        Action::ToggleReach(key) => {
            if let Some(line) = page.reach_line(*key) {
                line.on = !line.on;
            }
        }
        Action::TypeReach(key, typed) => {
            if let Some(line) = page.reach_line(*key) {
                line.typed.clone_from(typed);
            }
        }
        Action::StepReach(key, up) => {
            if let Some(line) = page.reach_line(*key) {
                line.typed = if line.typed.trim().is_empty() {
                    // From plenty, what is counted begins with one.
                    "1".to_owned()
                } else {
                    stepped(&line.typed, *up)
                };
            }
        }
        Action::UnitReach(key, unit) => {
            if let Some(line) = page.reach_line(*key) {
                line.unit.clone_from(unit);
            }
        }
        Action::ConditionReach(key, condition) => {
            if let Some(line) = page.reach_line(*key) {
                line.condition.clone_from(condition);
            }
        }
        Action::RemoveReach(key) => page.reach.retain(|line| line.key != *key),
        Action::ToggleWater => page.water = !page.water,
        Action::Choose(index) => page.chosen = *index,
        Action::Units(us_units) => page.us_units = *us_units,
        Action::Light(light) => page.light = *light,
        Action::Clock(clock) => page.clock = *clock,
        Action::MeasuresKept => page.measures.clear(),
        Action::AimAt(field, typed) => page.aim.typed_mut(*field).clone_from(typed),
        Action::Stores(stores) => page.take_stores(stores),
        Action::Tiles(tiles) => page.tiles.clone_from(tiles),
        Action::StartAgain => page = Page::default().beside(&page),
    }
    page
}

fn usual_measure(material: &str) -> &'static str {
    TILES
        .iter()
        .find(|(id, _)| *id == material)
        .map_or("bucket", |(_, measure)| measure)
}

/// The word by which the amount parser knows a unit.
fn unit_word(unit: &Unit) -> String {
    match unit {
        Unit::Measure(id) => id.clone(),
        Unit::Mass(unit) => unit.symbol().to_owned(),
        Unit::Volume(unit) => unit.symbol().to_owned(),
    }
}

/// A unit as it is put into a field behind a number; the amount parser knows it by this as well.
fn unit_in_words(unit: &Unit) -> String {
    measure_or_unit(&unit_word(unit))
}

/// The name of a measure in the language; other units as they are.
fn measure_or_unit(word: &str) -> String {
    language::catalogue()
        .measure(word)
        .map_or_else(|| word.replace('_', " "), |measure| measure.name.clone())
}

/// One step more or less: halves below one, ones above, quarters at the least.
#[must_use]
pub fn stepped(typed: &str, up: bool) -> String {
    let Some((count, unit)) = count_and_unit(typed) else {
        // What cannot be read is not lost: the field says what is wrong with it.
        return typed.to_owned();
    };
    let next = match (up, count < 1.0, count <= 1.0) {
        (true, true, _) => count * 2.0,
        (true, false, _) => count + 1.0,
        (false, _, true) => (count / 2.0).max(0.25),
        (false, _, false) => (count - 1.0).max(1.0),
    };
    let number = number_text(next.min(Amount::MOST_MEASURES));
    match unit {
        Some(unit) => format!("{number} {}", unit_in_words(&unit)),
        None => number,
    }
}

/// The number in what was typed, and the unit if one stands with it.
fn count_and_unit(typed: &str) -> Option<(f64, Option<Unit>)> {
    let has_unit = typed.chars().any(char::is_alphabetic);
    let vocabulary = crate::asking::vocabulary(language::catalogue());
    let whole = if has_unit {
        typed.to_owned()
    } else {
        format!("{typed} kg")
    };
    let amount = heapwright_quantity::parse_amount(&whole, &vocabulary).ok()?;
    Some((amount.count, has_unit.then_some(amount.unit)))
}

/// A number as it is put into a field, with the decimal mark of the language.
fn number_text(count: f64) -> String {
    language::locale().significant(count, 4)
}

#[cfg(test)]
mod tests {
    use super::*;
    use heapwright_catalogue::{Catalogue, GERMAN};

    #[test]
    fn updated_taps_add_and_steps_keep_above_nothing() {
        let page = Page::default();
        assert_eq!(page.hand.len(), 2);
        let page = updated(&page, &Action::Tap("grass_clippings_fresh".to_owned()));
        assert_eq!((page.hand.len(), page.hand[1].typed.as_str()), (2, "2"));
        let key = page.hand[1].key;
        let down = (0..6).fold(page, |page, _| {
            updated(&page, &Action::StepHand(key, false))
        });
        assert_eq!(down.hand[1].typed, "0.25");
    }

    #[test]
    fn updated_keeps_what_cannot_be_read() {
        let page = Page::default();
        let key = page.hand[0].key;
        let page = updated(&page, &Action::TypeHand(key, "two-ish".to_owned()));
        let page = updated(&page, &Action::StepHand(key, true));
        assert_eq!(page.hand[0].typed, "two-ish");
    }

    #[test]
    fn updated_steps_in_the_unit_that_was_typed() {
        for (typed, up, down) in [
            ("3,5 kg", "4.5 kg", "2.5 kg"),
            ("1/2 gal", "1 US gal", "0.25 US gal"),
            ("2 leaf bags", "3 leaf bag", "1 leaf bag"),
            ("1½", "2.5", "1"),
        ] {
            assert_eq!(
                (stepped(typed, true), stepped(typed, false)),
                (up.to_owned(), down.to_owned())
            );
        }
    }

    fn german(key: &str, field: usize) -> Option<&'static str> {
        let mut rows = GERMAN.lines().filter_map(|line| line.split_once('\t'));
        let (_, words) = rows.find(|(known, _)| *known == key)?;
        words.split('\t').nth(field)
    }

    #[test]
    fn what_is_put_into_a_field_can_be_read_again_in_every_language() {
        let german = Catalogue::translated(&german);
        for catalogue in [Catalogue::built_in(), &german] {
            let vocabulary = crate::asking::vocabulary(catalogue);
            for measure in catalogue.measures() {
                // As either language writes one and a half.
                for number in ["1.5", "1,5"] {
                    let typed = format!("{number} {}", measure.name);
                    let amount = heapwright_quantity::parse_amount(&typed, &vocabulary).unwrap();
                    assert_eq!(amount.unit, Unit::Measure(measure.id.clone()), "{typed}");
                }
            }
        }
    }

    #[test]
    fn repaired_tells_lines_apart_that_were_kept_with_one_key() {
        let mut page = Page::default();
        let first = page.hand[0].key;
        page.hand[1].key = first;
        page.reach[0].key = first;
        page.next_key = 0;
        let page = updated(&page.repaired(), &Action::Tap("bread".to_owned()));
        let mut keys: Vec<u32> = page.hand.iter().map(|line| line.key).collect();
        keys.extend(page.reach.iter().map(|line| line.key));
        let lines = keys.len();
        keys.sort_unstable();
        keys.dedup();
        assert_eq!(keys.len(), lines);
    }

    #[test]
    fn updated_stores_take_the_place_of_those_before_and_leave_ticks_and_own_lines() {
        let page = Page::default();
        let first = page.reach[0].clone();
        let page = updated(&page, &Action::ToggleReach(first.key));
        let page = updated(&page, &Action::Reach("sawdust".to_owned()));
        let mut stores = demo::garden().stores;
        stores.truncate(2);
        stores[0].amount = Some(Amount {
            count: 30.0,
            unit: Unit::Mass(heapwright_quantity::MassUnit::Kilogram),
        });
        stores[1].conditions = vec!["shredded".to_owned(), "wet".to_owned()];
        let page = updated(&page, &Action::Stores(stores));
        let lines: Vec<_> = page
            .reach
            .iter()
            .map(|line| (line.material.as_str(), line.condition.as_str(), line.on))
            .collect();
        assert_eq!(
            lines,
            [
                (first.material.as_str(), "", false),
                ("corrugated_cardboard", "shredded+wet", true),
                ("sawdust", "", true),
            ]
        );
        assert_eq!(
            (page.reach[0].key, page.reach[0].typed.as_str()),
            (first.key, "30 kg")
        );
    }

    #[test]
    fn updated_steps_what_is_in_reach_from_plenty_to_a_count() {
        let page = updated(&Page::default(), &Action::Reach("sawdust".to_owned()));
        let key = page.reach.last().unwrap().key;
        let typed = |page: &Page| page.reach.last().unwrap().typed.clone();
        assert_eq!(typed(&page), "");
        let page = updated(&page, &Action::StepReach(key, true));
        assert_eq!(typed(&page), "1");
        let page = updated(&page, &Action::StepReach(key, true));
        assert_eq!(typed(&page), "2");
        let page = updated(&page, &Action::StepReach(key, false));
        assert_eq!(typed(&page), "1");
    }

    #[test]
    fn what_stands_beside_the_balance_stays_when_that_is_taken_back_or_starts_again() {
        let before = Page::default();
        let now = updated(&before, &Action::Tap("bread".to_owned()));
        let now = updated(&now, &Action::Light(Light::Sun));
        let now = updated(&now, &Action::Tiles("bread tea_leaves".to_owned()));
        let back = before.clone().beside(&now);
        assert_eq!(back.hand, before.hand);
        assert_eq!((back.light, back.tiles()), (Light::Sun, now.tiles()));
        assert_eq!(now.tiles(), ["bread", "tea_leaves"]);
        let again = updated(&now, &Action::StartAgain);
        assert_eq!((again.hand, again.light), (before.hand, Light::Sun));
        assert_eq!(Page::default().tiles().len(), TILES.len());
    }

    #[test]
    fn page_survives_being_kept() {
        let mut page = Page::default();
        page.hand[0].typed = "3 leaf bags".to_owned();
        let text = serde_json::to_string(&page.to_keep()).unwrap();
        let kept = serde_json::from_str::<Page>(&text).unwrap();
        assert_eq!(kept.respoken("en"), page);
    }

    #[test]
    fn what_vessels_hold_is_still_meant_in_another_language() {
        let mut page = Page::default();
        for (measure, typed) in [
            ("bucket", "9.5 litres"),
            ("caddy", "7"),
            ("mug", "1/2 quart"),
            ("sack", "3 leaf bags"),
            ("trug", "a lot"),
        ] {
            page.measures.insert(measure.to_owned(), typed.to_owned());
        }
        let here = page.to_keep().respoken("en");
        assert_eq!(here, page);
        let elsewhere = page.to_keep().respoken("de");
        // A number alone, and what cannot be read, stay as typed.
        for (measure, typed) in [
            ("bucket", "9.5 L"),
            ("caddy", "7"),
            ("sack", "3 leaf bag"),
            ("trug", "a lot"),
        ] {
            assert_eq!(elsewhere.measures[measure], typed);
        }
        for measure in ["bucket", "mug", "sack"] {
            let meant = |page: &Page| count_and_unit(&page.measures[measure]);
            assert_eq!(meant(&elsewhere), meant(&page), "{measure}");
        }
        assert_eq!(elsewhere.hand, page.hand);
    }

    #[test]
    fn units_that_were_typed_in_another_language_are_still_meant() {
        let mut page = Page::default();
        let line = |page: &Page| (page.hand[0].typed.clone(), page.hand[0].unit.clone());
        page.hand[0].typed = "3 leaf bags".to_owned();
        let unit = unit_word(&count_and_unit("3 leaf bags").unwrap().1.unwrap());
        let second = line(&Page::default());
        let elsewhere = page.to_keep().respoken("de");
        assert_eq!(line(&elsewhere), ("3".to_owned(), unit));
        assert_eq!(elsewhere.hand[1], page.hand[1]);
        // What was kept before languages were has none to be another than.
        let mut old = page.to_keep();
        old.spoken.clear();
        assert_eq!(
            line(&old.respoken("de")),
            ("3 leaf bags".to_owned(), second.1)
        );
    }
}
