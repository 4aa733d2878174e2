//! One line for each entry of the journal, and what is told of heaps and stores.

use heapwright_catalogue::Catalogue;
use heapwright_garden::{Stuff, found};
use heapwright_journal::content::{Fed, PartFed, Read, Tested};
use heapwright_journal::{AmountSaid, Content, Event, EventId, Moment, What};
use heapwright_quantity::{UnitSystem, significant, temperature_text, volume_text};
use heapwright_state::State;
use heapwright_texts::Locale;

use crate::amounts::{amount_text, name_of, water_text};
use crate::words::Word;

const MONTHS: [&str; 12] = [
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
];

/// A day as people write it: "1 May 2026".
#[must_use]
pub fn day_text(moment: Moment) -> String {
    let local = moment.local();
    let month = usize::try_from(local.month()).unwrap_or(1).clamp(1, 12);
    format!("{} {} {}", local.day(), MONTHS[month - 1], local.year())
}

/// The time of day: "18:05".
#[must_use]
pub fn time_text(moment: Moment) -> String {
    let local = moment.local();
    format!("{:02}:{:02}", local.hour(), local.minute())
}

/// How long ago: "just now", "3 hours ago", "yesterday", "12 days ago".
#[must_use]
pub fn ago_text(then: Moment, now: Moment) -> String {
    let minutes = (now.instant_ms - then.instant_ms) / 60_000;
    let days = i64::from(
        now.local()
            .date()
            .since(then.local().date())
            .map_or(0, |span| span.get_days()),
    );
    match (minutes, days) {
        (..-1, _) => format!("on {}", day_text(then)),
        (..2, _) => "just now".to_owned(),
        (2..90, _) => format!("{minutes} minutes ago"),
        (_, ..=0) => format!("{} hours ago", minutes / 60),
        (_, 1) => "yesterday".to_owned(),
        (_, 2..60) => format!("{days} days ago"),
        _ => format!("on {}", day_text(then)),
    }
}

/// The name of a heap, or what to call one whose start is not known.
#[must_use]
pub fn heap_name(state: &State, id: EventId) -> &str {
    state
        .heap(id)
        .and_then(|heap| heap.name())
        .unwrap_or("a heap that is not known")
}

fn bed_name(state: &State, id: EventId) -> &str {
    state
        .bed(id)
        .and_then(|bed| bed.now().described.as_ref())
        .map_or("a bed that is not known", |bed| bed.name.as_str())
}

/// Amounts, names and units as a face shows them.
struct Telling<'a> {
    catalogue: &'a Catalogue,
    state: &'a State,
    locale: Locale,
}

impl Telling<'_> {
    fn amount(&self, amount: &AmountSaid) -> String {
        amount_text(self.catalogue, &amount.amount(), self.locale)
    }

    fn water(&self, water_l: f64) -> String {
        format!("{} of water", water_text(water_l, self.locale))
    }

    fn named(&self, material: &str, conditions: &[String]) -> String {
        let own = self.state.garden().materials.get(material);
        match (own, self.catalogue.material(material)) {
            (Some(own), _) => own.name.clone(),
            (None, Some(material)) => name_of(self.catalogue, material, conditions),
            (None, None) => material.to_owned(),
        }
    }

    fn part(&self, part: &PartFed) -> String {
        let name = match found(part).stuff {
            Stuff::Custom(custom) => custom.name,
            Stuff::Known {
                material,
                conditions,
                ..
            } => self.named(material.as_str(), &conditions),
        };
        format!("{} of {name}", self.amount(&part.amount))
    }

    fn fed(&self, fed: &Fed) -> String {
        let water = fed.water_l.filter(|water_l| *water_l > 0.0);
        let parts = fed.parts.iter().map(|part| self.part(part));
        parts
            .chain(water.map(|water_l| self.water(water_l)))
            .collect::<Vec<_>>()
            .join(", ")
    }

    fn length(&self, length_m: f64) -> String {
        match self.locale.units {
            UnitSystem::Metric => format!("{}\u{a0}cm", significant(length_m * 100.0, 3)),
            // International inch: 0.0254 m exactly.
            UnitSystem::UsCustomary => {
                format!("{}\u{a0}in", significant(length_m / 0.0254, 3))
            }
        }
    }

    fn read(&self, read: &Read) -> String {
        let mut told: Vec<String> = Vec::new();
        for probe in &read.probes {
            let mut text = self.locale.temperature(probe.temperature_c);
            if let Some(place) = probe.place {
                text = format!("{text} {}", place_text(place.word()));
            }
            if let Some(depth_m) = probe.depth_m {
                text = format!("{text}, {} deep", self.length(depth_m));
            }
            told.push(text);
        }
        told.extend(
            read.air_temperature_c
                .map(|air_c| format!("air {}", self.locale.temperature(air_c))),
        );
        told.extend(
            read.squeeze
                .map(|squeeze| format!("feels {}", squeeze.word())),
        );
        if !read.smells.is_empty() {
            told.push(format!("smell: {}", list(&read.smells)));
        }
        if !read.looks.is_empty() {
            told.push(format!("looks: {}", list(&read.looks)));
        }
        if !read.creatures.is_empty() {
            told.push(list(&read.creatures));
        }
        told.extend(
            read.height_m
                .map(|height_m| format!("{} high", self.length(height_m))),
        );
        told.extend(
            read.fill_pct
                .map(|fill_pct| format!("{}\u{a0}% full", significant(fill_pct, 3))),
        );
        told.join(", ")
    }

    fn tested(&self, tested: &Tested) -> String {
        let mut told: Vec<String> = Vec::new();
        if tested.laboratory.is_some() {
            told.push("figures of a laboratory".to_owned());
        }
        if let Some(test) = &tested.self_heating {
            told.push(format!(
                "self-heating to {} in a room of {}",
                self.locale.temperature(test.highest_c),
                self.locale.temperature(test.room_c)
            ));
        }
        if let Some(test) = &tested.germination {
            told.push(format!(
                "{} of {} seeds sprouted, {} of {} in the control",
                test.sprouted, test.sown, test.control_sprouted, test.control_sown
            ));
        }
        if let Some(test) = &tested.bag {
            told.push(format!(
                "bag closed for {} days, {}",
                significant(test.days, 3),
                if test.swollen {
                    "swollen"
                } else {
                    "not swollen"
                }
            ));
        }
        told.join("; ")
    }

    fn line(&self, content: &Content) -> String {
        let heap = |id| heap_name(self.state, id);
        let share = |share_pct: Option<f64>| match share_pct {
            None => "all".to_owned(),
            Some(pct) => format!("{}\u{a0}%", significant(pct, 3)),
        };
        match content {
            Content::GardenDescribed(described) => match &described.name {
                Some(name) => format!("Garden described: {name}"),
                None => "Garden described".to_owned(),
            },
            Content::PersonDescribed(person) => format!("{} works here", person.name),
            Content::MeasureDefined(defined) => format!(
                "One {} holds {}",
                self.catalogue
                    .measure(&defined.measure)
                    .map_or(defined.measure.as_str(), |measure| measure.name.as_str()),
                self.locale.volume(defined.volume_l / 1000.0)
            ),
            Content::MaterialDefined(defined) => format!("Own material: {}", defined.name),
            Content::MaterialMeasured(measured) => {
                format!("Measured: {}", self.named(&measured.material, &[]))
            }
            Content::HeapStarted(started) => format!("Started {}", started.name),
            Content::Fed(fed) => format!("Fed {}: {}", heap(fed.heap), self.fed(fed)),
            Content::Turned(turned) => match turned.thoroughness {
                Some(how) => format!("Turned {}: {}", heap(turned.heap), how.word()),
                None => format!("Turned {}", heap(turned.heap)),
            },
            Content::Watered(watered) => format!(
                "Watered {}: {}",
                heap(watered.heap),
                water_text(watered.water_l, self.locale)
            ),
            Content::Covered(covered) => match covered.cover {
                Some(cover) => format!("Covered {}: {}", heap(covered.heap), cover.word()),
                None => format!("Covered {}", heap(covered.heap)),
            },
            Content::Uncovered(uncovered) => format!("Uncovered {}", heap(uncovered.heap)),
            Content::Read(read) => format!("Looked at {}: {}", heap(read.heap), self.read(read)),
            Content::Tested(tested) => {
                format!("Tested {}: {}", heap(tested.heap), self.tested(tested))
            }
            Content::Moved(moved) => format!(
                "Moved {} of {} to {}",
                share(moved.share_pct),
                heap(moved.from),
                heap(moved.to)
            ),
            Content::Rested(rested) => {
                format!("{} is now {}", heap(rested.heap), rested.stage.word())
            }
            Content::Harvested(harvested) => {
                let mut text = format!(
                    "Harvested {}: {} of it",
                    heap(harvested.heap),
                    share(harvested.share_pct)
                );
                if let Some(amount) = &harvested.amount {
                    text = format!("{text}, {}", self.amount(amount));
                }
                if harvested.sieve_mm.is_some() {
                    text.push_str(", sieved");
                }
                text
            }
            Content::Spread(spread) => format!(
                "Spread {} on {}",
                self.amount(&spread.amount),
                bed_name(self.state, spread.bed)
            ),
            Content::BedDescribed(bed) => format!(
                "Bed described: {}, {}\u{a0}m²",
                bed.name,
                significant(bed.area_m2, 3)
            ),
            Content::StockPutBy(put) => format!(
                "Put by {} of {}",
                self.amount(&put.amount),
                self.named(&put.material, &put.conditions)
            ),
            Content::StockUsed(used) => format!(
                "Took {} of {} from the stores",
                self.amount(&used.amount),
                self.named(&used.material, &used.conditions)
            ),
            Content::StockCounted(counted) => format!(
                "Counted {} of {}",
                counted
                    .amount
                    .as_ref()
                    .map_or_else(|| "nothing".to_owned(), |amount| self.amount(amount)),
                self.named(&counted.material, &counted.conditions)
            ),
            Content::Noted(noted) => {
                let about = match (noted.heap, noted.bed) {
                    (Some(id), _) => format!("Note on {}", heap(id)),
                    (None, Some(id)) => format!("Note on {}", bed_name(self.state, id)),
                    (None, None) => "Note".to_owned(),
                };
                let picture = noted.picture.as_ref().map(|_| "with a picture");
                let text = noted.text.as_deref().or(picture).unwrap_or_default();
                format!("{about}: {}", text.replace(['\n', '\t'], " "))
            }
            Content::Amended(amended) => self.of("Corrected", amended.event),
            Content::Withdrawn(withdrawn) => self.of("Taken back", withdrawn.event),
        }
    }

    /// A line about another entry; of a correction no more than that it is one, so that no two can
    /// tell of each other without end.
    fn of(&self, what: &str, id: EventId) -> String {
        let target = self.state.entry(id).and_then(|entry| entry.recorded());
        match target.map(|event| (event.content(), event)) {
            Some((Some(content), _)) if content.corrects().is_some() => {
                format!("{what}: a correction")
            }
            Some((Some(content), _)) => format!("{what}: {}", self.line(content)),
            _ => format!("{what}: an entry that is not here"),
        }
    }
}

fn place_text(word: &str) -> String {
    match word {
        "core" => "in the core".to_owned(),
        "halfway" => "halfway".to_owned(),
        word => format!("at the {word}"),
    }
}

fn list<W: Word>(all: &[W]) -> String {
    all.iter()
        .map(|one| one.word())
        .collect::<Vec<_>>()
        .join(", ")
}

/// What an entry tells, in one line: "Fed Bin: 2 caddies of vegetable scraps".
#[must_use]
pub fn entry_line(catalogue: &Catalogue, state: &State, event: &Event, locale: Locale) -> String {
    let telling = Telling {
        catalogue,
        state,
        locale,
    };
    match &event.what {
        What::Known(content) => telling.line(content),
        What::Unknown(unknown) => format!(
            "An entry of the kind \"{}\" that a newer version made: it is kept and passed on",
            unknown.kind
        ),
    }
}

/// What a look saw, without the heap: "58 °C in the core, feels moist".
#[must_use]
pub fn read_line(catalogue: &Catalogue, state: &State, read: &Read, locale: Locale) -> String {
    Telling {
        catalogue,
        state,
        locale,
    }
    .read(read)
}

/// The kinds by which a log can be narrowed: the word of the journal and what it is called.
pub const KIND_NAMES: [(&str, &str); 24] = [
    ("fed", "feeds"),
    ("read", "readings"),
    ("turned", "turnings"),
    ("watered", "waterings"),
    ("noted", "notes"),
    ("harvested", "harvests"),
    ("heap_started", "heaps started"),
    ("covered", "covered"),
    ("uncovered", "uncovered"),
    ("moved", "moves"),
    ("rested", "stages"),
    ("tested", "tests"),
    ("spread", "spreading"),
    ("bed_described", "beds"),
    ("stock_put_by", "put by"),
    ("stock_used", "taken from stores"),
    ("stock_counted", "stores counted"),
    ("garden_described", "the garden"),
    ("person_described", "people"),
    ("measure_defined", "measures"),
    ("material_defined", "own materials"),
    ("material_measured", "materials measured"),
    ("amended", "corrections"),
    ("withdrawn", "taken back"),
];

/// What the balance of a heap in the journal is, and is not.
pub const AS_FED: &str = "This is what went in and was not taken out. What has rotted or dried away since is not counted.";
