//! What is done to the heap, day by day.

use std::collections::HashMap;

use heapwright_answers::heap::{Action, Overrides};
use heapwright_answers::{Doing, FedPart, Happening};
use heapwright_catalogue::Catalogue;
use heapwright_garden::{Found, Garden};

use super::enclosure::cover;
use super::{MOST_DAYS, bounded};
use crate::WireError;
use crate::read::Reader;
use crate::request::PartFile;
use crate::simulation::question::{EventFile, FedFile};

/// Most entries, and most feeds among them.
const MOST_EVENTS: usize = 20_000;
const MOST_FEEDS: usize = 5_000;

/// What is done, every part understood.
pub(super) fn events(
    catalogue: &Catalogue,
    garden: &Garden,
    files: &[EventFile],
) -> Result<Vec<Happening>, WireError> {
    if files.len() > MOST_EVENTS {
        return Err(WireError::field(
            "events",
            format!("has too many entries: give at most {MOST_EVENTS}"),
        ));
    }
    let feeds = files.iter().filter(|file| file.feed.is_some()).count();
    if feeds == 0 {
        return Err(WireError::field(
            "events",
            "nothing is put into the heap: add a feed",
        ));
    }
    if feeds > MOST_FEEDS {
        return Err(WireError::field(
            "events",
            format!("{feeds} feeds are too many: give at most {MOST_FEEDS}"),
        ));
    }
    let mut feeder = Feeder {
        reader: Reader::new(catalogue, garden),
        known: HashMap::new(),
    };
    let mut all = Vec::new();
    for (index, file) in files.iter().enumerate() {
        let field = format!("events[{index}]");
        let day = bounded(&format!("{field}.day"), file.day, 0.0, MOST_DAYS)?;
        for doing in doings(&mut feeder, file, &field)? {
            all.push(Happening {
                day,
                field: field.clone(),
                doing,
            });
        }
    }
    Ok(all)
}

fn doings(feeder: &mut Feeder<'_>, file: &EventFile, field: &str) -> Result<Vec<Doing>, WireError> {
    let litres = file
        .water_l
        .map(|litres| bounded(&format!("{field}.water_l"), litres, 0.0, 100_000.0))
        .transpose()?;
    let temperature_c = file
        .temperature_c
        .map(|warm| bounded(&format!("{field}.temperature_c"), warm, -30.0, 90.0))
        .transpose()?;
    if temperature_c.is_some() && file.feed.is_none() {
        return Err(WireError::field(
            format!("{field}.temperature_c"),
            "belongs to a feed: leave it out here",
        ));
    }
    let water = litres.map(|litres| Doing::Other(Action::Water { litres }));
    let (done, may_water) = match (&file.feed, &file.turn, file.cover, &file.remove) {
        (Some(parts), None, None, None) => {
            let parts = feeder.parts(parts, &format!("{field}.feed"))?;
            return Ok(vec![Doing::Fed {
                parts,
                water_l: litres.unwrap_or(0.0),
                temperature_c,
            }]);
        }
        (None, Some(turn), None, None) => {
            let thoroughness = bounded(
                &format!("{field}.turn.thoroughness"),
                turn.thoroughness.unwrap_or(1.0),
                0.0,
                1.0,
            )?;
            (Some(Action::Turn { thoroughness }), true)
        }
        (None, None, Some(laid), None) => (Some(Action::Cover(cover(laid))), false),
        (None, None, None, Some(remove)) => {
            let share_pct = bounded(
                &format!("{field}.remove.share_pct"),
                remove.share_pct,
                0.0,
                95.0,
            )?;
            let taken = Action::TakeOut {
                share: share_pct / 100.0,
                from_below: remove.from_below.unwrap_or(false),
            };
            (Some(taken), false)
        }
        (None, None, None, None) if water.is_some() => (None, true),
        _ => {
            return Err(WireError::field(
                field,
                "give exactly one of feed, turn, water_l, cover and remove; water_l may come with a feed or a turn",
            ));
        }
    };
    if water.is_some() && !may_water {
        return Err(WireError::field(
            format!("{field}.water_l"),
            "may come with a feed or a turn, or alone: give it an entry of its own",
        ));
    }
    Ok(done.map(Doing::Other).into_iter().chain(water).collect())
}

/// Understands the parts of feeds, each once however often it is fed.
struct Feeder<'a> {
    reader: Reader<'a>,
    known: HashMap<String, Found>,
}

impl Feeder<'_> {
    fn parts(&mut self, files: &[FedFile], list: &str) -> Result<Vec<FedPart>, WireError> {
        files
            .iter()
            .enumerate()
            .map(|(index, file)| {
                let field = format!("{list}[{index}]");
                Ok(FedPart {
                    overrides: overrides(file, &field)?,
                    found: self.found(file, list, index)?,
                })
            })
            .collect()
    }

    fn found(&mut self, file: &FedFile, list: &str, index: usize) -> Result<Found, WireError> {
        let part = PartFile {
            material: file.material.clone(),
            custom: file.custom.clone(),
            amount: file.amount.clone(),
            condition: file.condition.clone(),
            moisture_pct: file.moisture_pct,
            nitrogen_pct_dry: file.nitrogen_pct_dry,
            cn_ratio: file.cn_ratio,
            bulk_density_kg_m3: file.bulk_density_kg_m3,
        };
        let key = serde_json::to_string(&part).unwrap_or_default();
        if let Some(found) = self.known.get(&key) {
            return Ok(found.clone());
        }
        let found = self.reader.part(&part, &format!("{list}[{index}]"))?;
        self.known.insert(key, found.clone());
        Ok(found)
    }
}

fn overrides(file: &FedFile, field: &str) -> Result<Overrides, WireError> {
    let told = [
        ("rapid_fraction_vs", file.rapid_fraction_vs),
        ("moderate_fraction_vs", file.moderate_fraction_vs),
        ("slow_fraction_vs", file.slow_fraction_vs),
    ];
    let mut sum = 0.0;
    for (name, value) in told {
        if let Some(value) = value {
            sum += bounded(&format!("{field}.{name}"), value, 0.0, 1.0)?;
        }
    }
    let all = told.iter().all(|(_, value)| value.is_some());
    if sum > 1.0 + 1e-6 || (all && sum < 0.98) {
        return Err(WireError::field(
            format!("{field}.rapid_fraction_vs"),
            format!(
                "with moderate_fraction_vs and slow_fraction_vs it adds up to {sum:.3}: the three must make 1, and two at most 1"
            ),
        ));
    }
    let particle_mm = file
        .particle_mm
        .map(|size| bounded(&format!("{field}.particle_mm"), size, 0.1, 1000.0))
        .transpose()?;
    Ok(Overrides {
        rapid_fraction_vs: file.rapid_fraction_vs,
        moderate_fraction_vs: file.moderate_fraction_vs,
        slow_fraction_vs: file.slow_fraction_vs,
        particle_mm,
        volume_m3: None,
    })
}
