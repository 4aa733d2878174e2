//! Which rows of a file are new to a heap?

use std::collections::{BTreeMap, BTreeSet};
use std::fmt;

use heapwright_journal::content::{Probe, ProbePlace, Read};
use heapwright_journal::{Content, EventId, Moment, Problem};
use heapwright_state::State;

use crate::logger::{Besides, LoggerRow};

/// The most readings that are taken in at once; a reading every half hour makes 17,520 a year.
pub const MOST_READINGS: usize = 20_000;

/// Temperatures that are no further apart are the same [K]: loggers round, and so do people.
const SAME_TEMPERATURE_K: f64 = 0.05;
/// Depths that are no further apart are the same [m].
const SAME_DEPTH_M: f64 = 0.0005;

/// Where readings of a file belong.
#[derive(Clone, Debug, PartialEq)]
pub struct Placing {
    /// To which heap.
    pub heap: EventId,
    /// Where in it the probe was. A file of readings of our own says that itself.
    pub place: Option<ProbePlace>,
    /// How deep the probe was [m]. The same holds.
    pub depth_m: Option<f64>,
    /// What the logger is called. The same holds.
    pub logger: Option<String>,
    /// How far apart readings of a logger must be at least [min], with those that the heap has
    /// already; `None` keeps all.
    pub apart_min: Option<u32>,
}

/// What is new, and what is not.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct NewReadings {
    /// New readings, in the order in which they happened.
    pub readings: Vec<(Moment, Read)>,
    /// Rows that the heap has already, or that stand in the file twice.
    pub duplicates: u64,
    /// Rows that were left out because others are close.
    pub thinned: u64,
}

/// Why readings cannot be taken in.
#[derive(Clone, Debug, PartialEq)]
pub enum ReadingsError {
    /// There are too many.
    TooMany {
        /// How many there are.
        readings: usize,
        /// How far apart they could be for fewer [min], if that helps.
        apart_min: Option<u32>,
    },
    /// A reading cannot be as it is.
    CannotBe {
        /// In which row of the file.
        row: u64,
        /// Why.
        problem: Problem,
    },
}

impl fmt::Display for ReadingsError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooMany {
                readings,
                apart_min: Some(minutes),
            } => write!(
                f,
                "There are {readings} new readings and at most {MOST_READINGS} are taken at once; keep one every {minutes} minutes."
            ),
            Self::TooMany { readings, .. } => write!(
                f,
                "There are {readings} new readings and at most {MOST_READINGS} are taken at once; split the file."
            ),
            Self::CannotBe { row, problem } => {
                write!(f, "Row {row} cannot be a reading: {problem}; mend it.")
            }
        }
    }
}

impl std::error::Error for ReadingsError {}

/// Turns rows into readings of a heap that it does not have yet.
///
/// A row is known when the heap has a reading of the same instant, place and depth with a
/// temperature within 0.05 K, whether a logger or a person made it.
///
/// # Errors
///
/// When there are more than [`MOST_READINGS`], or one that the journal does not take.
pub fn new_readings(
    state: &State,
    rows: &[LoggerRow],
    placing: &Placing,
) -> Result<NewReadings, ReadingsError> {
    let found = sorted_out(state, rows, placing);
    if found.readings.len() > MOST_READINGS {
        let apart_min = [1, 2, 5, 10, 15, 20, 30, 60, 120, 180, 360, 720, 1440]
            .into_iter()
            .filter(|minutes| placing.apart_min.is_none_or(|apart| *minutes > apart))
            .find(|minutes| {
                let apart_min = Some(*minutes);
                let placing = Placing {
                    apart_min,
                    ..placing.clone()
                };
                sorted_out(state, rows, &placing).readings.len() <= MOST_READINGS
            });
        return Err(ReadingsError::TooMany {
            readings: found.readings.len(),
            apart_min,
        });
    }
    let mut new = NewReadings {
        readings: Vec::with_capacity(found.readings.len()),
        duplicates: found.duplicates,
        thinned: found.thinned,
    };
    for (row, moment, read) in found.readings {
        let content = Content::from(read);
        if let Err(problem) = content.check() {
            return Err(ReadingsError::CannotBe { row, problem });
        }
        if let Content::Read(read) = content {
            new.readings.push((moment, read));
        }
    }
    Ok(new)
}

#[derive(Default)]
struct SortedOut {
    readings: Vec<(u64, Moment, Read)>,
    duplicates: u64,
    thinned: u64,
}

fn sorted_out(state: &State, rows: &[LoggerRow], placing: &Placing) -> SortedOut {
    let mut known = Known::of(state, placing.heap);
    let mut looks = looks(rows, placing);
    looks.sort_by_key(|look| (look.moment.instant_ms, look.row));
    let mut found = SortedOut::default();
    for mut look in looks {
        let rows = look.rows;
        known.take_away(look.moment, &mut look.read);
        if is_empty(&look.read) {
            found.duplicates += rows;
            continue;
        }
        let probes = u64::try_from(look.read.probes.len()).unwrap_or(0);
        found.duplicates += rows.saturating_sub(probes.max(1));
        if let Some(minutes) = placing.apart_min
            && look.read.logger.is_some()
        {
            // What else was seen at the time stays.
            let moment = look.moment;
            look.read
                .probes
                .retain(|probe| !known.has_near(moment, probe, minutes));
            let left = u64::try_from(look.read.probes.len()).unwrap_or(0);
            found.thinned += probes - left;
            if is_empty(&look.read) {
                continue;
            }
        }
        // Looks of a file of our own are told apart by their ids, also when they are alike.
        known.add(look.moment, &look.read, !look.own);
        found.readings.push((look.row, look.moment, look.read));
    }
    found
}

/// Rows that make one look.
struct Look {
    row: u64,
    rows: u64,
    moment: Moment,
    own: bool,
    read: Read,
}

/// Rows of a logger one by one, those of a file of our own by the ids of their looks.
fn looks(rows: &[LoggerRow], placing: &Placing) -> Vec<Look> {
    let mut looks: Vec<Look> = Vec::with_capacity(rows.len());
    let mut by_id: BTreeMap<(&str, i64), usize> = BTreeMap::new();
    for row in rows {
        let (place, depth_m) = match &row.besides {
            Some(besides) => (besides.place, besides.depth_m),
            None => (placing.place, placing.depth_m),
        };
        let probe = row.temperature_c.map(|temperature_c| Probe {
            temperature_c,
            depth_m,
            place,
        });
        let id = row.besides.as_ref().map(|besides| besides.id.as_str());
        let key = id
            .filter(|id| !id.is_empty())
            .map(|id| (id, row.moment.instant_ms));
        let index = key.and_then(|key| by_id.get(&key).copied());
        let index = index.unwrap_or_else(|| {
            looks.push(Look {
                row: row.row,
                rows: 0,
                moment: row.moment,
                own: row.besides.is_some(),
                read: empty(placing, row),
            });
            looks.len() - 1
        });
        if let Some(key) = key {
            by_id.insert(key, index);
        }
        if let Some(look) = looks.get_mut(index) {
            look.rows += 1;
            look.read.probes.extend(probe);
            if let Some(besides) = &row.besides {
                merge(&mut look.read, besides);
            }
        }
    }
    looks
}

fn empty(placing: &Placing, row: &LoggerRow) -> Read {
    Read {
        heap: placing.heap,
        probes: Vec::new(),
        air_temperature_c: None,
        squeeze: None,
        smells: Vec::new(),
        looks: Vec::new(),
        creatures: Vec::new(),
        height_m: None,
        fill_pct: None,
        logger: if row.besides.is_some() {
            None
        } else {
            placing.logger.clone()
        },
    }
}

/// Adds what a row tells besides; it stands in one row of a look.
fn merge(read: &mut Read, besides: &Besides) {
    read.air_temperature_c = read.air_temperature_c.or(besides.air_temperature_c);
    read.squeeze = read.squeeze.or(besides.squeeze);
    read.height_m = read.height_m.or(besides.height_m);
    read.fill_pct = read.fill_pct.or(besides.fill_pct);
    if read.smells.is_empty() {
        read.smells.clone_from(&besides.smells);
    }
    if read.looks.is_empty() {
        read.looks.clone_from(&besides.looks);
    }
    if read.creatures.is_empty() {
        read.creatures.clone_from(&besides.creatures);
    }
    if read.logger.is_none() {
        read.logger.clone_from(&besides.logger);
    }
}

fn is_empty(read: &Read) -> bool {
    read.probes.is_empty()
        && read.air_temperature_c.is_none()
        && read.squeeze.is_none()
        && read.smells.is_empty()
        && read.looks.is_empty()
        && read.creatures.is_empty()
        && read.height_m.is_none()
        && read.fill_pct.is_none()
}

/// What is known of a heap already, by instant [ms].
struct Known<'a> {
    /// Looks that the journal has.
    looks: BTreeMap<i64, Vec<&'a Read>>,
    /// Probes of rows that were taken, where a second one counts as the same.
    taken: BTreeMap<i64, Vec<Probe>>,
    /// When something was shown at a place and depth [mm].
    shown: BTreeMap<(Option<ProbePlace>, Option<i64>), BTreeSet<i64>>,
}

impl<'a> Known<'a> {
    fn of(state: &'a State, heap: EventId) -> Self {
        let mut known = Self {
            looks: BTreeMap::new(),
            taken: BTreeMap::new(),
            shown: BTreeMap::new(),
        };
        let history = state.heap(heap).map(|heap| heap.history());
        for event in history.into_iter().flatten() {
            if let Some(Content::Read(read)) = event.content() {
                let instant_ms = event.happened.instant_ms;
                known.looks.entry(instant_ms).or_default().push(read);
                known.note_shown(instant_ms, &read.probes);
            }
        }
        known
    }

    /// Takes out of a look what is known.
    fn take_away(&self, moment: Moment, read: &mut Read) {
        let looks = self.looks.get(&moment.instant_ms);
        let looks = looks.map_or(&[][..], Vec::as_slice);
        let taken = self.taken.get(&moment.instant_ms);
        read.probes.retain(|probe| {
            let probes = looks.iter().flat_map(|look| &look.probes);
            let mut all = probes.chain(taken.into_iter().flatten());
            !all.any(|other| is_same(probe, other))
        });
        let any = |same: &dyn Fn(&Read) -> bool| looks.iter().any(|look| same(look));
        if any(&|look| look.air_temperature_c == read.air_temperature_c) {
            read.air_temperature_c = None;
        }
        if any(&|look| look.squeeze == read.squeeze) {
            read.squeeze = None;
        }
        if any(&|look| look.smells == read.smells) {
            read.smells.clear();
        }
        if any(&|look| look.looks == read.looks) {
            read.looks.clear();
        }
        if any(&|look| look.creatures == read.creatures) {
            read.creatures.clear();
        }
        if any(&|look| look.height_m == read.height_m) {
            read.height_m = None;
        }
        if any(&|look| look.fill_pct == read.fill_pct) {
            read.fill_pct = None;
        }
    }

    /// True when something is shown at this place and depth closer than so many minutes.
    fn has_near(&self, moment: Moment, probe: &Probe, minutes: u32) -> bool {
        let span_ms = i64::from(minutes) * 60_000;
        let from_ms = moment.instant_ms - span_ms + 1;
        let to_ms = moment.instant_ms + span_ms;
        self.shown
            .get(&spot(probe))
            .is_some_and(|shown| shown.range(from_ms..to_ms).next().is_some())
    }

    fn add(&mut self, moment: Moment, read: &Read, once: bool) {
        if once {
            let taken = self.taken.entry(moment.instant_ms).or_default();
            taken.extend(&read.probes);
        }
        self.note_shown(moment.instant_ms, &read.probes);
    }

    fn note_shown(&mut self, instant_ms: i64, probes: &[Probe]) {
        for probe in probes {
            let shown = self.shown.entry(spot(probe)).or_default();
            shown.insert(instant_ms);
        }
    }
}

/// Place and depth, the latter to the nearest millimetre.
#[allow(clippy::cast_possible_truncation)] // Depths are at most ten metres.
fn spot(probe: &Probe) -> (Option<ProbePlace>, Option<i64>) {
    let depth_mm = probe
        .depth_m
        .map(|depth_m| (depth_m * 1000.0).round() as i64);
    (probe.place, depth_mm)
}

fn is_same(one: &Probe, other: &Probe) -> bool {
    let same_depth = match (one.depth_m, other.depth_m) {
        (Some(one), Some(other)) => (one - other).abs() <= SAME_DEPTH_M,
        (None, None) => true,
        _ => false,
    };
    // Decimals are not exact: 55.05 less 55 is a little more than 0.05.
    let apart = (one.temperature_c - other.temperature_c).abs();
    same_depth && one.place == other.place && apart <= SAME_TEMPERATURE_K + 1e-9
}
