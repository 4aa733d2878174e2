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
    /// Typical wet mass a week [kg], over the time from the first feed that counts until the end, or
    /// until now where that is sooner: a period that began before the keeper did, or is not over,
    /// thins nothing. `None` for less than a week.
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
    let until_ms = to.instant_ms.min(question.now.instant_ms);
    let since = answer
        .from
        .map_or(0.0, |first| days_between(first.instant_ms, until_ms));
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

#[cfg(test)]
mod tests {
    use heapwright_journal::content::{Fed, HeapStarted, PartFed};
    use heapwright_journal::{AmountSaid, DeviceId};
    use heapwright_state::{Now, Recorder};

    use super::*;

    fn day(text: &str) -> Moment {
        format!("{text}T12:00:00+01:00").parse().unwrap()
    }

    #[test]
    fn a_week_is_one_of_those_since_the_first_feed_of_the_period() {
        let mut state = State::default();
        let mut write = |at: Moment, content: Content| {
            let chance = Now {
                moment: at,
                random: [1; 10],
            };
            let mut recorder = Recorder::new(DeviceId(5), &state, at);
            let (line, event) = recorder.record(&state, content, at, None, chance).unwrap();
            let id = event.id;
            state.take(line.digest(), event);
            id
        };
        let started = HeapStarted {
            name: "Bin".to_owned(),
            enclosure: None,
            sun: None,
            filling: None,
        };
        let heap = write(day("2026-10-31"), started.into());
        for on in ["2026-11-01", "2026-11-15"] {
            let part = PartFed {
                material: Some("grass_clippings_fresh".to_owned()),
                custom: None,
                amount: AmountSaid {
                    count: 5.0,
                    unit: "kg".to_owned(),
                },
                conditions: Vec::new(),
                moisture_pct: None,
                nitrogen_pct_dry: None,
                cn_ratio: None,
                bulk_density_kg_m3: None,
                from_stores: false,
            };
            let fed = Fed {
                heap,
                parts: vec![part],
                water_l: None,
            };
            write(day(on), fed.into());
        }
        let catalogue = Catalogue::built_in();
        let garden = Garden::from_state(catalogue, &state, day("2026-11-29"));
        let weekly = |from: Option<&str>, to: Option<&str>, now: &str| {
            let question = DiversionQuestion {
                from: from.map(day),
                to: to.map(day),
                now: day(now),
            };
            let answer = what_was_kept_out(catalogue, &garden, &state, &question);
            assert!(answer.kinds.iter().any(|kept| kept.wet_kg.value > 0.0));
            answer.weekly_kg
        };
        let near = |found: Option<f64>, kg: f64| {
            assert!(
                found.is_some_and(|found| (found - kg).abs() < 1e-9),
                "{found:?} {kg}"
            );
        };
        // 10 kg in four weeks, whenever the period begins before the first feed or ends after now.
        near(weekly(None, None, "2026-11-29"), 2.5);
        near(
            weekly(Some("2025-11-29"), Some("2026-11-29"), "2026-11-29"),
            2.5,
        );
        near(
            weekly(Some("2026-01-01"), Some("2026-12-31"), "2026-11-29"),
            2.5,
        );
        // The first feed of the period counts: 5 kg in two weeks.
        near(weekly(Some("2026-11-10"), None, "2026-11-29"), 2.5);
        near(weekly(None, Some("2026-11-29"), "2027-06-01"), 2.5);
        // Of less than a week no pace is told.
        assert_eq!(weekly(Some("2026-11-10"), None, "2026-11-18"), None);
    }
}
