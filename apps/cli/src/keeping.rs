//! The journal as a command holds it: where it is, what it says, and how something is added.

use std::io::{self, Write};
use std::mem::ManuallyDrop;
use std::path::{Path, PathBuf};

use heapwright_catalogue::Catalogue;
use heapwright_garden::Garden;
use heapwright_journal::content::UnitsSaid;
use heapwright_journal::store::{Store, facts};
use heapwright_journal::{Content, Digest, Event, EventId, Line, Moment};
use heapwright_quantity::UnitSystem;
use heapwright_state::{RecordError, Recorder, State};
use heapwright_store::{Sqlite, StoreError, Why, finished};
use heapwright_texts::Locale;
use heapwright_wording as wording;

use crate::arguments::{JournalArguments, RecordArguments, UnitsArgument};
use crate::edges::{Edges, new_device, usual_journal};
use crate::failure::Failure;
use crate::naming;
use crate::reading;

/// Names the journal where --garden does not.
const GARDEN: &str = "HEAPWRIGHT_GARDEN";

/// The file that the arguments or the surroundings name.
pub fn journal_path(named: Option<&Path>) -> Result<PathBuf, Failure> {
    match (named, std::env::var_os(GARDEN)) {
        (Some(path), _) => Ok(path.to_owned()),
        (None, Some(path)) if !path.is_empty() => Ok(path.into()),
        _ => usual_journal(),
    }
}

/// The journal and all that it says.
pub struct Keeping {
    path: PathBuf,
    store: Option<Sqlite>,
    /// What the journal says. The program ends before it could be of use to give back its room,
    /// which takes a while for a large one.
    pub state: ManuallyDrop<State>,
    /// The clock.
    pub edges: Edges,
    units: Option<UnitsArgument>,
}

/// The catalogue, of which there is one.
pub fn catalogue() -> &'static Catalogue {
    Catalogue::built_in()
}

impl Keeping {
    /// Opens a journal that must be there, to be read.
    pub fn to_read(arguments: &JournalArguments) -> Result<Self, Failure> {
        let path = journal_path(arguments.garden.as_deref())?;
        match Self::open(&path, Sqlite::open_to_read, arguments.units) {
            Err(Failure::Store(StoreError {
                why: Why::NotFound, ..
            })) => Err(missing(&path)),
            opened => opened,
        }
    }

    /// Opens a journal that something is to be added to; one that is not there is empty, and made
    /// when something is added.
    pub fn to_write(arguments: &JournalArguments) -> Result<Self, Failure> {
        let path = journal_path(arguments.garden.as_deref())?;
        match Self::open(&path, Sqlite::open_existing, arguments.units) {
            Err(Failure::Store(StoreError {
                why: Why::NotFound, ..
            })) => Ok(Self {
                path,
                store: None,
                state: ManuallyDrop::default(),
                edges: Edges::look()?,
                units: arguments.units,
            }),
            opened => opened,
        }
    }

    /// The journal that stands behind a question: the one that is named, else the usual one if it
    /// is there.
    pub fn behind_question(named: Option<&Path>) -> Result<Option<Self>, Failure> {
        let path = match journal_path(named) {
            Ok(path) => path,
            // Without a home folder there is no usual one.
            Err(_) => return Ok(None),
        };
        match Self::open(&path, Sqlite::open_to_read, None) {
            Err(Failure::Store(StoreError {
                why: Why::NotFound, ..
            })) => match named {
                Some(_) => Err(missing(&path)),
                None => Ok(None),
            },
            opened => opened.map(Some),
        }
    }

    fn open(
        path: &Path,
        open: impl Fn(&Path) -> Result<Sqlite, StoreError>,
        units: Option<UnitsArgument>,
    ) -> Result<Self, Failure> {
        let edges = Edges::look()?;
        let mut store = open(path)?;
        let (found, through) = reading::read(&mut store)?;
        if found.unread > 0 {
            say(&format!(
                "left out of the journal, because they are no entries: {} lines",
                found.unread
            ));
        }
        if !through.damage.is_empty() || store.is_damaged() {
            say(&format!(
                "{} is damaged; what can be read is shown: see with `heapwright check`",
                path.display()
            ));
        }
        Ok(Self {
            path: path.to_owned(),
            store: Some(store),
            state: ManuallyDrop::new(State::fold(found.events)),
            edges,
            units,
        })
    }

    /// Opens a journal that must be there, and that something is to be added to.
    pub fn to_change(arguments: &JournalArguments) -> Result<Self, Failure> {
        let keeping = Self::to_write(arguments)?;
        match keeping.store {
            Some(_) => Ok(keeping),
            None => Err(missing(&keeping.path)),
        }
    }

    /// The file, as it is shown.
    pub fn shown_path(&self) -> String {
        self.path.display().to_string()
    }

    /// The file.
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// The store, when there is a file.
    pub fn store(&mut self) -> Option<&mut Sqlite> {
        self.store.as_mut()
    }

    /// The garden as it is now.
    pub fn garden(&self) -> Garden {
        Garden::from_state(catalogue(), &self.state, self.edges.now)
    }

    /// How the text speaks.
    pub fn locale(&self) -> Locale {
        self.locale_for(self.units)
    }

    /// How the text speaks when the arguments say so.
    pub fn locale_for(&self, argument: Option<UnitsArgument>) -> Locale {
        Locale::english(units(argument, &self.state))
    }

    /// The heap that a text names, or the only one that is not finished.
    pub fn heap(&self, text: Option<&str>) -> Result<EventId, Failure> {
        naming::heap(&self.state, text)
    }

    /// When something happened, by the arguments.
    pub fn happened(&self, arguments: &RecordArguments) -> Result<Moment, Failure> {
        arguments
            .at
            .as_deref()
            .map_or(Ok(self.edges.now), |text| self.edges.when("--at", text))
    }

    /// Writes down what happened, all of it or nothing, and tells what was added.
    pub fn record(
        &mut self,
        arguments: &RecordArguments,
        contents: Vec<Content>,
    ) -> Result<Vec<EventId>, Failure> {
        let happened = self.happened(arguments)?;
        let by = arguments
            .by
            .as_deref()
            .map(|text| naming::person(&self.state, text))
            .transpose()?;
        self.add(contents, happened, by)
    }

    /// The same for contents at a moment by somebody.
    pub fn add(
        &mut self,
        contents: Vec<Content>,
        happened: Moment,
        by: Option<EventId>,
    ) -> Result<Vec<EventId>, Failure> {
        self.add_each(
            contents
                .into_iter()
                .map(|content| (content, happened))
                .collect(),
            by,
        )
    }

    /// The same for contents that happened each at its own moment.
    pub fn add_each(
        &mut self,
        contents: Vec<(Content, Moment)>,
        by: Option<EventId>,
    ) -> Result<Vec<EventId>, Failure> {
        if let Some(remark) = self.edges.remark() {
            say(remark);
        }
        let device = match &mut self.store {
            Some(store) => store.device()?,
            None => new_device()?,
        };
        let mut recorder = Recorder::new(device, &self.state, self.edges.now);
        recorder.by = match by {
            Some(by) => Some(by),
            None => self.person()?,
        };
        let locale = self.locale();
        let together = contents.len() > 1;
        let mut batch = None;
        let mut lines: Vec<Line> = Vec::new();
        let mut events = Vec::new();
        for (content, happened) in contents {
            let now = self.edges.for_event()?;
            if together && batch.is_none() {
                let wall_ms = u64::try_from(now.moment.instant_ms).unwrap_or(0);
                batch = Some(EventId::new(wall_ms, &now.random));
            }
            let recorded = recorder.record(&self.state, content, happened, batch, now);
            let (line, event) = recorded.map_err(|error| refused(&error, locale))?;
            events.push((line.digest(), event));
            lines.push(line);
        }
        self.keep(&lines, device)?;
        let ids = events.iter().map(|(_, event)| event.id).collect();
        self.state.take_all(events);
        Ok(ids)
    }

    /// Keeps lines for good; the file is made when it is not there.
    pub fn keep(
        &mut self,
        lines: &[Line],
        device: heapwright_journal::DeviceId,
    ) -> Result<usize, Failure> {
        let path = &self.path;
        let store = match &mut self.store {
            Some(store) => store,
            none => {
                let made = Sqlite::open(path, || device)?;
                say(&format!("a new journal was started: {}", path.display()));
                none.insert(made)
            }
        };
        Ok(finished(store.append(lines))?)
    }

    /// Keeps a picture, before the entry that names it.
    pub fn keep_picture(&mut self, bytes: &[u8]) -> Result<Digest, Failure> {
        if self.store.is_none() {
            self.keep(&[], new_device()?)?;
        }
        match &mut self.store {
            Some(store) => Ok(finished(store.keep_picture(bytes))?),
            None => Err(missing(&self.path)),
        }
    }

    /// Who works on this device, if that is known.
    pub fn person(&mut self) -> Result<Option<EventId>, Failure> {
        let Some(store) = &mut self.store else {
            return Ok(None);
        };
        Ok(finished(store.fact(facts::PERSON))?
            .and_then(|text| text.parse().ok())
            .filter(|id| self.state.garden().people.contains_key(id)))
    }

    /// Keeps a fact of this device.
    pub fn set_fact(&mut self, name: &str, value: &str) -> Result<(), Failure> {
        match &mut self.store {
            Some(store) => Ok(finished(store.set_fact(name, value))?),
            None => Ok(()),
        }
    }

    /// An event by its id, as it counts.
    pub fn event(&self, id: EventId) -> Option<&Event> {
        let entry = self.state.entry(id)?;
        entry.counts().or(entry.recorded()).map(|event| &**event)
    }
}

/// The units of the text: as an argument or the garden says, else metric.
pub fn units(argument: Option<UnitsArgument>, state: &State) -> UnitSystem {
    match (argument, state.garden().units) {
        (Some(UnitsArgument::Us), _) | (None, Some(UnitsSaid::UsCustomary)) => {
            UnitSystem::UsCustomary
        }
        _ => UnitSystem::Metric,
    }
}

/// Words that belong to no answer.
pub fn say(words: &str) {
    // When this cannot be written there is nobody to tell.
    let _ = writeln!(io::stderr(), "heapwright: {words}");
}

fn missing(path: &Path) -> Failure {
    Failure::Outside(format!(
        "there is no journal at {} yet: start one with `heapwright heap new NAME`",
        path.display()
    ))
}

impl From<StoreError> for Failure {
    fn from(error: StoreError) -> Self {
        Self::Store(error)
    }
}

impl From<RecordError> for Failure {
    fn from(error: RecordError) -> Self {
        refused(&error, Locale::default())
    }
}

/// Why it cannot be recorded, with figures in the units of the keeper.
fn refused(error: &RecordError, locale: Locale) -> Failure {
    match wording::figure_refusal(error, locale) {
        Some(refusal) => Failure::refused(&refusal),
        None => Failure::Input(error.to_string()),
    }
}

/// How the text speaks where there is no garden: as the arguments say, else metric.
pub fn plain_locale(argument: Option<UnitsArgument>) -> Locale {
    Locale::english(match argument {
        Some(UnitsArgument::Us) => UnitSystem::UsCustomary,
        _ => UnitSystem::Metric,
    })
}
