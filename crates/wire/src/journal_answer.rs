//! What the journal answers, as JSON: entries, heaps, stores, beds, and what came of files.

use std::collections::BTreeMap;

use heapwright_catalogue::Catalogue;
use heapwright_garden::Garden;
use heapwright_journal::content::{Probe, Read};
use heapwright_journal::{Content, Event, EventId, Moment};
use heapwright_state::{Arrival, Bed, Entry, Heap, State, concerns};
use heapwright_texts::Locale;
use heapwright_wording::{Word, amount_text, entry_line, read_line};
#[cfg(feature = "schema")]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::ENGLISH;
use crate::answer::MixJson;
use crate::hygiene::BeforeUseJson;

/// An entry of the journal.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct EntryJson {
    /// Its id.
    pub id: String,
    /// When it happened, with the offset from UTC.
    pub happened: String,
    /// When it was recorded, in UTC.
    pub recorded: String,
    /// What kind it is, in the word of the journal: "fed".
    pub kind: String,
    /// The whole in a sentence.
    pub sentence: String,
    /// Names of the heaps that it tells of.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub heaps: Vec<NamedJson>,
    /// The bed that it tells of.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bed: Option<NamedJson>,
    /// Who recorded it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub by: Option<NamedJson>,
    /// The id of the first entry of those that were recorded in one go.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub batch: Option<String>,
    /// True when it was taken back.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub taken_back: bool,
    /// True when it was corrected later; all else here is as corrected.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub corrected: bool,
    /// True when another entry came under the same id: both are kept, the first by stamp counts.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub conflict: bool,
}

/// A thing of the garden by id and name.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct NamedJson {
    /// Its id.
    pub id: String,
    /// Its name; null while what named it has not arrived.
    pub name: Option<String>,
}

/// What a command that records answers.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct RecordedJson {
    /// The file of the journal.
    pub journal: String,
    /// What was recorded.
    pub entries: Vec<EntryJson>,
    /// What was in the heap before, for a feed or a watering; absent when there was nothing.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub before: Option<MixJson>,
    /// What is in it now.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub after: Option<MixJson>,
    /// What to beware of with what went in, for a feed.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub cautions: Vec<String>,
    /// What went in that must be seen to before its compost is used.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub before_use: Vec<BeforeUseJson>,
    /// What to know about it, as sentences.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub notices: Vec<String>,
}

/// What `heapwright log` answers.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct LogJson {
    /// The file of the journal.
    pub journal: String,
    /// How many lines the journal has in all.
    pub lines: u64,
    /// The entries, in the order in which they happened.
    pub entries: Vec<EntryJson>,
}

/// A heap in a list.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct HeapJson {
    /// Its id.
    pub id: String,
    /// Its name.
    pub name: String,
    /// "active", "curing" or "finished".
    pub stage: String,
    /// What lies on it.
    pub cover: String,
    /// When it was started.
    pub started: String,
    /// When it was fed last.
    pub last_fed: Option<String>,
    /// When it was turned last.
    pub last_turned: Option<String>,
    /// When it was watered last, other than with a feed.
    pub last_watered: Option<String>,
    /// When it was looked at last.
    pub last_read: Option<String>,
    /// When compost was taken out last.
    pub last_harvested: Option<String>,
    /// How often it was fed.
    pub feeds: u32,
    /// How often it was turned.
    pub turns: u32,
    /// How often compost was taken out.
    pub harvests: u32,
    /// How often it was emptied.
    pub emptied: u32,
    /// What the last look with a probe saw.
    pub last_probes: Option<ReadJson>,
}

/// A look with a probe.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct ReadJson {
    /// When.
    pub happened: String,
    /// The whole in words.
    pub sentence: String,
    /// What the probe showed.
    pub probes: Vec<ProbeJson>,
}

/// One reading of a probe.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct ProbeJson {
    /// Temperature [degC].
    pub temperature_c: f64,
    /// How deep it was put in [m].
    pub depth_m: Option<f64>,
    /// Where.
    pub place: Option<String>,
}

/// What `heapwright heap list` answers.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct HeapsJson {
    /// The file of the journal.
    pub journal: String,
    /// The heaps, in the order in which they were started.
    pub heaps: Vec<HeapJson>,
}

/// What `heapwright heap show` answers.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct HeapShownJson {
    /// The file of the journal.
    pub journal: String,
    /// The heap.
    pub heap: HeapJson,
    /// What went in and was not taken out, with its balance; absent when there is nothing.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub as_fed: Option<MixJson>,
    /// Water that was poured in and counts still [kg].
    pub water_poured_kg: f64,
    /// What went in that must be seen to before its compost is used.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub before_use: Vec<BeforeUseJson>,
    /// What `as_fed` is and is not; with why there is none when it cannot be told.
    pub remark: String,
}

/// What lies in the stores.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct StockJson {
    /// Id of the material.
    pub material: String,
    /// Its name.
    pub name: String,
    /// Ids of the conditions it is in.
    pub conditions: Vec<String>,
    /// How much is there, as it was put by; null for plenty.
    pub amount: Option<String>,
    /// In what it is handed out.
    pub scoop: String,
}

/// What `heapwright stock list` answers.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct StoresJson {
    /// The file of the journal.
    pub journal: String,
    /// What lies there, by material.
    pub stores: Vec<StockJson>,
}

/// A bed.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct BedJson {
    /// Its id.
    pub id: String,
    /// Its name.
    pub name: String,
    /// Area [m2].
    pub area_m2: f64,
    /// What grows there.
    pub crop: Option<String>,
    /// How much that feeds on the soil, where it was said: "light", "medium", "heavy".
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub feeding: Option<String>,
    /// True for ground that was not dug and fed before.
    pub new_ground: bool,
    /// What was spread on it.
    pub dressings: Vec<DressingJson>,
}

/// Compost that was spread on a bed.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct DressingJson {
    /// When.
    pub happened: String,
    /// How much.
    pub amount: String,
    /// From which heap.
    pub heap: Option<NamedJson>,
}

/// What `heapwright bed list` answers.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct BedsJson {
    /// The file of the journal.
    pub journal: String,
    /// The beds.
    pub beds: Vec<BedJson>,
}

/// What `heapwright import` answers.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct ImportJson {
    /// The file of the journal.
    pub journal: String,
    /// "journal" or "logger".
    pub kind: String,
    /// True when the file belongs to a garden of another set-up.
    pub other_garden: bool,
    /// Entries that are new.
    pub new: u64,
    /// Entries that are there already.
    pub known: u64,
    /// Ids of new entries that are there with other content: both are kept.
    pub conflicts: Vec<String>,
    /// New entries whose stamps lie more than a day ahead of the clock.
    pub ahead: u64,
    /// Entries that this program does not understand, by kind: they are kept and passed on.
    pub not_understood: BTreeMap<String, u64>,
    /// The first lines that cannot be used.
    pub faults: Vec<FaultJson>,
    /// How many lines cannot be used.
    pub fault_count: u64,
    /// False when the file is not what its header says.
    pub whole: bool,
    /// What else to know, as sentences.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub notices: Vec<String>,
    /// True when the new entries were written.
    pub written: bool,
}

/// A line that cannot be used.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct FaultJson {
    /// Which line, from 1.
    pub line: u64,
    /// What is wrong.
    pub what: String,
}

/// What `heapwright export`, `backup` and `restore` answer.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct CopiedJson {
    /// The file of the journal.
    pub journal: String,
    /// The other file.
    pub file: String,
    /// How many entries were copied; for a restore, how many the backup has.
    pub entries: u64,
    /// How many of them were new to the journal; absent where nothing is joined.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub new: Option<u64>,
    /// How many pictures were copied.
    pub pictures: u64,
    /// SHA-256 over all lines, as in the header of an exported journal; null for a table
    /// and for what is left of a damaged journal.
    pub digest: Option<String>,
}

/// What `heapwright check` answers.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct CheckJson {
    /// The file of the journal.
    pub journal: String,
    /// True when everything is as it was written.
    pub sound: bool,
    /// How many entries can be read.
    pub entries: u64,
    /// How many of them had to be searched for in the bytes of the file.
    pub searched_out: u64,
    /// How many entries were there and cannot be read any more.
    pub lost: u64,
    /// How many pictures are sound.
    pub pictures: u64,
    /// How many pictures notes name that are not kept here, as after an import.
    pub pictures_missing: u64,
    /// What is not as it was written, as sentences.
    pub damage: Vec<String>,
    /// Ids under which more than one entry came.
    pub conflicts: Vec<String>,
    /// Entries that this program does not understand, by kind.
    pub not_understood: BTreeMap<String, u64>,
    /// SHA-256 over all lines that can be read.
    pub digest: Option<String>,
}

/// JSON is for programs: plain spaces, metric.
fn plain(text: &str) -> String {
    text.replace('\u{a0}', " ")
}

fn text(moment: Option<Moment>) -> Option<String> {
    moment.map(|moment| moment.to_string())
}

/// A heap by its id and name.
#[must_use]
pub fn heap_named(state: &State, id: EventId) -> NamedJson {
    NamedJson {
        id: id.to_string(),
        name: state
            .heap(id)
            .and_then(|heap| heap.name())
            .map(str::to_owned),
    }
}

/// An entry as JSON: as it counts, or as it was recorded when it counts no more.
#[must_use]
pub fn entry_json(catalogue: &Catalogue, state: &State, entry: &Entry<'_>) -> Option<EntryJson> {
    let event: &Event = entry.counts().or(entry.recorded())?;
    let (heaps, bed) = event
        .content()
        .map_or(([None, None], None), |content| concerns(event.id, content));
    let kind = match &event.what {
        heapwright_journal::What::Known(content) => content.kind().to_owned(),
        heapwright_journal::What::Unknown(unknown) => unknown.kind.clone(),
    };
    Some(EntryJson {
        id: event.id.to_string(),
        happened: event.happened.to_string(),
        recorded: event.recorded.to_string(),
        kind,
        sentence: plain(&entry_line(catalogue, state, event, Locale::default())),
        heaps: heaps
            .into_iter()
            .flatten()
            .map(|id| heap_named(state, id))
            .collect(),
        bed: bed.map(|id| NamedJson {
            id: id.to_string(),
            name: state
                .bed(id)
                .and_then(|bed| bed.now().described.as_ref())
                .map(|bed| bed.name.clone()),
        }),
        by: event.by.map(|id| NamedJson {
            id: id.to_string(),
            name: state
                .garden()
                .people
                .get(&id)
                .map(|person| person.name.clone()),
        }),
        batch: event.batch.map(|id| id.to_string()),
        taken_back: entry.is_withdrawn(),
        corrected: entry
            .corrections()
            .any(|event| matches!(event.content(), Some(Content::Amended(_)))),
        conflict: entry.others().len() > 0,
    })
}

fn probe_json(probe: &Probe) -> ProbeJson {
    ProbeJson {
        temperature_c: probe.temperature_c,
        depth_m: probe.depth_m,
        place: probe.place.map(|place| place.word(ENGLISH).to_owned()),
    }
}

fn read_json(happened: Moment, read: &Read) -> ReadJson {
    ReadJson {
        happened: happened.to_string(),
        sentence: plain(&read_line(read, ENGLISH)),
        probes: read.probes.iter().map(probe_json).collect(),
    }
}

/// A heap as JSON; `None` while its start is not known.
#[must_use]
pub fn heap_json(heap: &Heap) -> Option<HeapJson> {
    let now = heap.now();
    let started = now.started.as_ref()?;
    Some(HeapJson {
        id: heap.id.to_string(),
        name: started.heap.name.clone(),
        stage: now.stage.word(ENGLISH).to_owned(),
        cover: now.cover.word(ENGLISH).to_owned(),
        started: started.moment.to_string(),
        last_fed: text(now.last_fed),
        last_turned: text(now.last_turned),
        last_watered: text(now.last_watered),
        last_read: text(now.last_read),
        last_harvested: text(now.last_harvested),
        feeds: now.feeds,
        turns: now.turns,
        harvests: now.harvests,
        emptied: now.emptied,
        last_probes: now
            .last_probes
            .as_ref()
            .map(|(happened, read)| read_json(*happened, read)),
    })
}

/// The stores as JSON.
#[must_use]
pub fn stores_json(catalogue: &Catalogue, garden: &Garden) -> Vec<StockJson> {
    let amount = |amount| plain(&amount_text(catalogue, amount, Locale::default()));
    garden
        .stores
        .iter()
        .map(|stock| StockJson {
            material: stock.material.as_str().to_owned(),
            name: garden
                .material(catalogue, &stock.material)
                .map_or_else(|| stock.material.as_str().to_owned(), |found| found.name),
            conditions: stock.conditions.clone(),
            amount: stock.amount.as_ref().map(amount),
            scoop: amount(&stock.scoop),
        })
        .collect()
}

/// A bed as JSON; `None` while it is not described.
#[must_use]
pub fn bed_json(catalogue: &Catalogue, state: &State, bed: &Bed) -> Option<BedJson> {
    let now = bed.now();
    let described = now.described.as_ref()?;
    Some(BedJson {
        id: bed.id.to_string(),
        name: described.name.clone(),
        area_m2: described.area_m2,
        crop: described.crop.clone(),
        feeding: described
            .feeding
            .map(|feeding| feeding.word(ENGLISH).to_owned()),
        new_ground: described.new_ground,
        dressings: now
            .dressings
            .iter()
            .map(|(happened, spread)| DressingJson {
                happened: happened.to_string(),
                amount: plain(&amount_text(
                    catalogue,
                    &spread.amount.amount(),
                    Locale::default(),
                )),
                heap: spread.heap.map(|id| heap_named(state, id)),
            })
            .collect(),
    })
}

/// What would come, or came, of taking in a file.
#[must_use]
pub fn import_json(journal: String, kind: &str, arrival: &Arrival) -> ImportJson {
    ImportJson {
        journal,
        kind: kind.to_owned(),
        other_garden: arrival.other_garden.is_some(),
        new: arrival.new,
        known: arrival.known,
        conflicts: arrival.conflicts.iter().map(EventId::to_string).collect(),
        ahead: arrival.ahead,
        not_understood: BTreeMap::new(),
        faults: Vec::new(),
        fault_count: 0,
        whole: true,
        notices: Vec::new(),
        written: false,
    }
}
