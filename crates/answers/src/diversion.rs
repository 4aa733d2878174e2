//! How much was kept out of the bin, month by month and kind by kind, and what is it worth?

use std::collections::BTreeMap;

use heapwright_catalogue::Catalogue;
use heapwright_engine::finish::diversion::{Climate, KeptOut, Kind, kept_out};
use heapwright_engine::mixture::typical_totals;
use heapwright_garden::{Found, Garden};
use heapwright_journal::{Content, Moment};
use heapwright_state::{Contents, Share, State};
use heapwright_terms::{Group, Material, Part};

use crate::forecast::days_between;
use crate::question::SEED;

/// The question: what was kept out of the bin?
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DiversionQuestion {
    /// From when; from the first feed when left out.
    pub from: Option<Moment>,
    /// Until when; until now when left out.
    pub to: Option<Moment>,
    /// What the clock says.
    pub now: Moment,
}

/// One month.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct MonthKept {
    /// Year.
    pub year: i16,
    /// Month, 1 to 12.
    pub month: i8,
    /// Wet mass by kind, in the order of [`Kind::ALL`] [kg].
    pub wet_kg: [f64; Kind::ALL.len()],
}

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct DiversionAnswer {
    /// When the first feed that counts was.
    pub from: Option<Moment>,
    /// Until when it was counted.
    pub to: Moment,
    /// Months in which something was fed, in order.
    pub months: Vec<MonthKept>,
    /// All of it by kind; empty when there is nothing.
    pub kinds: Vec<KeptOut>,
    /// The climate's side.
    pub climate: Option<Climate>,
    /// Typical wet mass a week, over the time from the first feed [kg]; `None` for less than a week.
    pub weekly_kg: Option<f64>,
    /// Fed, but no waste: bought stuff, soil, lime, compost; typical wet mass [kg].
    pub not_waste_kg: f64,
    /// What cannot be used, by name.
    pub left_out: Vec<String>,
}

/// Adds up what was kept out of the bin.
#[must_use]
pub fn what_was_kept_out(
    catalogue: &Catalogue,
    garden: &Garden,
    state: &State,
    question: &DiversionQuestion,
) -> DiversionAnswer {
    let to = question.to.unwrap_or(question.now);
    let from_ms = question.from.map_or(i64::MIN, |from| from.instant_ms);
    let mut answer = DiversionAnswer {
        from: None,
        to,
        months: Vec::new(),
        kinds: Vec::new(),
        climate: None,
        weekly_kg: None,
        not_waste_kg: 0.0,
        left_out: Vec::new(),
    };
    let mut months: BTreeMap<(i16, i8), MonthKept> = BTreeMap::new();
    let mut all: Vec<(Kind, Found)> = Vec::new();
    for event in state.heaps().flat_map(heapwright_state::Heap::history) {
        let at = event.happened;
        if !matches!(event.content(), Some(Content::Fed(_)))
            || !(from_ms..=to.instant_ms).contains(&at.instant_ms)
        {
            continue;
        }
        let once = Contents {
            shares: vec![Share {
                event: std::sync::Arc::clone(event),
                share: 1.0,
            }],
            cut: false,
        };
        for part in garden.parts_of(catalogue, state, &once).0 {
            let Ok(found) = garden.find(catalogue, &part) else {
                answer.left_out.push(match &part.stuff {
                    heapwright_garden::Stuff::Known { material, .. } => {
                        material.as_str().to_owned()
                    }
                    heapwright_garden::Stuff::Custom(custom) => custom.name.clone(),
                });
                continue;
            };
            let wet_kg = typical_totals(std::slice::from_ref(&found.part), 0.0).wet_mass_kg;
            let Some(kind) = kind_of(found.material.as_ref()) else {
                answer.not_waste_kg += wet_kg;
                continue;
            };
            if answer
                .from
                .is_none_or(|first| at.instant_ms < first.instant_ms)
            {
                answer.from = Some(at);
            }
            let local = at.local();
            let month = months
                .entry((local.year(), local.month()))
                .or_insert(MonthKept {
                    year: local.year(),
                    month: local.month(),
                    ..MonthKept::default()
                });
            if let Some(index) = Kind::ALL.iter().position(|other| *other == kind) {
                month.wet_kg[index] += wet_kg;
            }
            match all.iter_mut().find(|(_, other)| {
                other.stuff == part.stuff && other.amount.unit == part.amount.unit
            }) {
                Some((_, other)) => other.amount.count += part.amount.count,
                None => all.push((kind, part)),
            }
        }
    }
    answer.left_out.sort();
    answer.left_out.dedup();
    answer.months = months.into_values().collect();
    let parts: Vec<(Kind, Part)> = all
        .iter()
        .filter_map(|(kind, part)| Some((*kind, garden.find(catalogue, part).ok()?.part)))
        .collect();
    if let Some((kinds, climate)) = kept_out(&parts, SEED) {
        answer.kinds = kinds;
        answer.climate = Some(climate);
    }
    let since = match question.from.or(answer.from) {
        Some(from) => days_between(from.instant_ms, to.instant_ms),
        None => 0.0,
    };
    if since >= 7.0 && !answer.kinds.is_empty() {
        let whole: f64 = answer.kinds.iter().map(|kept| kept.wet_kg.value).sum();
        answer.weekly_kg = Some(whole / since * 7.0);
    }
    answer
}

/// What sort of waste a material would have been; `None` for what would have been none.
fn kind_of(material: Option<&Material>) -> Option<Kind> {
    let Some(material) = material else {
        return Some(Kind::Other);
    };
    match material.group {
        Group::Kitchen | Group::AnimalProduct => Some(Kind::Food),
        // Shells of eggs come from the kitchen, whatever they are made of.
        Group::Mineral if material.id.as_str() == "egg_shells" => Some(Kind::Food),
        Group::GardenGreen | Group::GardenBrown => Some(Kind::Garden),
        Group::Wood => Some(Kind::Wood),
        Group::Paper => Some(Kind::Paper),
        Group::AnimalManure => Some(Kind::Other),
        Group::Mineral | Group::Amendment | Group::Finished => None,
    }
}
