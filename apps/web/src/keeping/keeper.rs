//! Records what was done, takes it back, brings it back, and follows what other tabs record.

use heapwright_journal::content::{Amended, Picture, Withdrawn};
use heapwright_journal::store::{Damage, Store, facts};
use heapwright_journal::{Content, DeviceId, Digest, Event, EventId, Moment, Stamp};
use heapwright_state::{Now, Recorder, State};
use heapwright_texts::Locale;
use heapwright_wording as wording;
use js_sys::Function;
use leptos::prelude::*;
use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};

use super::cleared::Warning;
use super::device;
use super::fault::KeepError;
use super::kept::Kept;
use super::memory::MemoryStore;
use crate::language;
use crate::later::later;
use crate::parts::breath::breath;
use crate::parts::live::spawn;

/// How often a write is tried again when another tab was quicker.
const MOST_TRIES: usize = 3;
/// Lines of the demo garden that are read in one piece of work.
const LINES_AT_ONCE: usize = 100;

/// Whether there is a journal to write in.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub enum Status {
    /// It is being read.
    #[default]
    Opening,
    /// It is there.
    Ready,
    /// It cannot be opened; why, in a sentence.
    Failed(String),
}

/// What was done last, to be undone.
#[derive(Clone, Debug, PartialEq)]
pub struct Bar {
    /// The entry.
    pub event: EventId,
    /// What it was, in a line.
    pub text: String,
    /// True when it was taken back.
    pub withdrawn: bool,
    /// True when what was taken back can be brought back.
    pub can_return: bool,
    /// Why undoing it failed.
    pub fault: Option<String>,
}

/// The journal as it stands on this device.
#[derive(Debug, Default)]
pub struct Journal {
    /// Whether it is there.
    pub status: Status,
    /// What it amounts to.
    pub state: State,
    /// True in the invented demo garden.
    pub is_demo: bool,
    /// Whether the browser promises to keep it; `None` while that is not known.
    pub lasting: Option<bool>,
    /// True when the browser was asked for that promise since the page was opened.
    pub was_asked: bool,
    /// When it was last exported.
    pub last_export: Option<Moment>,
    /// What must be known before anything else, in sentences: the browser cleared the journal, something
    /// was not saved, something is damaged.
    pub trouble: String,
    /// What was done last.
    pub bar: Option<Bar>,
    pub(super) warned: Option<Warning>,
    pub(super) damage: Vec<Damage>,
    /// True from when the page has lines that the store was found without until they are written back.
    pub(super) must_put_back: bool,
    pub(super) recorder: Option<Recorder>,
    /// The position of the last line that is taken in.
    pub(super) last: u64,
}

impl Journal {
    /// Lines were kept behind the last: counts them, and follows their stamps.
    pub(super) fn stepped(&mut self, count: u64, stamps: impl Iterator<Item = Stamp>) {
        self.last += count;
        if let Some(recorder) = &mut self.recorder {
            let now = device::now();
            for stamp in stamps {
                recorder.see(stamp, now);
            }
        }
    }

    /// True when there is more to lose than a month's export would hold.
    #[must_use]
    pub fn export_is_due(&self, now: Moment) -> bool {
        const MONTH_MS: i64 = 30 * 24 * 3600 * 1000;
        !self.is_demo
            && match self.last_export {
                None => self.state.lines() > 20,
                Some(last) => now.instant_ms - last.instant_ms > MONTH_MS,
            }
    }
}

/// The one journal of the page, its store, and those who look at it.
#[derive(Clone, Copy)]
pub struct Keeper {
    pub(super) journal: StoredValue<Journal>,
    changed: RwSignal<u32>,
    store: StoredValue<Option<Kept>, LocalStorage>,
    /// Counts the journals that were opened: what waited for one must not go into the next.
    opened: StoredValue<u32>,
}

/// The store while it is this tab's turn.
pub(super) struct Turn {
    keeper: Keeper,
    pub(super) kept: Option<Kept>,
    free: JsValue,
    opened: u32,
}

impl Turn {
    /// Fails when another journal was opened since the turn began.
    pub(super) fn is_current(&self) -> Result<(), KeepError> {
        self.keeper.is_open(self.opened)
    }

    pub(super) fn store(&mut self) -> &mut Kept {
        self.kept.get_or_insert_with(Kept::on_the_device)
    }
}

impl Drop for Turn {
    fn drop(&mut self) {
        let kept = self.kept.take();
        self.keeper.store.set_value(kept);
        if let Some(free) = self.free.dyn_ref::<Function>() {
            // Nothing can be done when the browser will not take the lock back: it ends with the tab.
            let _ = free.call0(&JsValue::NULL);
        }
    }
}

impl Keeper {
    /// Starts to read what is on the device, and to listen to other tabs.
    pub fn start() -> Self {
        let keeper = Self {
            journal: StoredValue::new(Journal::default()),
            changed: RwSignal::new(0),
            store: StoredValue::new_local(None),
            opened: StoredValue::new(0),
        };
        let hear = Closure::<dyn Fn()>::new(move || {
            if !keeper.peek(|journal| journal.is_demo) {
                spawn(async move {
                    if let Ok(later) = later().await {
                        // Told again with the next entry, and when that is written.
                        let _ = (later.follow)(keeper).await;
                    }
                });
            }
        });
        device::listen(hear.as_ref().unchecked_ref());
        hear.forget();
        keeper.open();
        keeper
    }

    /// Something of the journal; read anew when it changes.
    pub fn with<T>(self, look: impl FnOnce(&Journal) -> T) -> T {
        self.changed.track();
        self.peek(look)
    }

    /// Something of the journal as it is now.
    pub fn peek<T>(self, look: impl FnOnce(&Journal) -> T) -> T {
        self.journal.with_value(look)
    }

    pub(super) fn change(self, change: impl FnOnce(&mut Journal)) {
        self.journal.update_value(change);
        self.changed.update(|count| *count = count.wrapping_add(1));
    }

    /// Which of the journals is open, as a count.
    pub fn opened(self) -> u32 {
        self.opened.get_value()
    }

    /// Fails when another journal was opened since `opened` was counted.
    pub fn is_open(self, opened: u32) -> Result<(), KeepError> {
        if self.opened() == opened {
            Ok(())
        } else {
            Err(KeepError::Swapped)
        }
    }

    fn count_opened(self) -> u32 {
        self.opened
            .update_value(|opened| *opened = opened.wrapping_add(1));
        self.opened()
    }

    /// Waits until nobody else has the store.
    pub(super) async fn turn(self) -> Result<Turn, KeepError> {
        let free = device::lock()
            .await
            .map_err(|thrown| KeepError::of(&thrown))?;
        let kept = self.store.try_update_value(Option::take).flatten();
        Ok(Turn {
            keeper: self,
            kept,
            free,
            opened: self.opened(),
        })
    }

    /// Opens the journal of this device, from its start.
    pub fn open(self) {
        let count = self.count_opened();
        self.change(|journal| *journal = Journal::default());
        spawn(async move {
            let opened = match later().await {
                Ok(later) => (later.open)(self).await,
                Err(error) => Err(error),
            };
            if self.is_open(count).is_err() {
                return;
            }
            self.change(|journal| {
                journal.status = match opened {
                    Ok(()) => Status::Ready,
                    Err(error) => Status::Failed(error.to_string()),
                };
            });
            device::mark("heapwright-journal-open");
        });
    }

    /// [`Keeper::open`], in the later part.
    pub async fn open_now(self) -> Result<(), KeepError> {
        let opened = self.opened();
        let mut turn = self.turn().await?;
        self.is_open(opened)?;
        turn.kept = Some(Kept::on_the_device());
        self.catch_up(&mut turn).await?;
        let device = turn.store().fact(facts::DEVICE).await?;
        let exported = turn.store().fact(facts::LAST_EXPORT).await?;
        drop(turn);
        let lasting = self.is_lasting(false).await;
        self.is_open(opened)?;
        self.change(|journal| {
            journal.recorder = device
                .and_then(|id| id.parse().ok())
                .map(|id| Recorder::new(id, &journal.state, device::now()));
            journal.last_export = exported.and_then(|text| text.parse().ok());
            journal.lasting = lasting;
            let missed = device::remembered();
            if journal.state.lines() == 0 && missed > 0 {
                journal.warned = Some(Warning::Gone(u64::from(missed)));
                journal.say_trouble();
            }
        });
        Ok(())
    }

    /// Something new is kept: other tabs hear of it, and it is missed when it is gone one day.
    pub(super) fn tell(self) {
        let (is_demo, lines) = self.peek(|journal| (journal.is_demo, journal.state.lines()));
        if !is_demo {
            device::remember(u32::try_from(lines).unwrap_or(u32::MAX));
            device::tell();
        }
    }

    async fn is_lasting(self, ask: bool) -> Option<bool> {
        device::lasting(ask).await.ok()?.as_bool()
    }

    /// Asks the browser to keep the journal; some browsers then ask the keeper.
    pub async fn ask_to_last(self) {
        let opened = self.opened();
        let lasting = self.is_lasting(true).await;
        if self.is_open(opened).is_ok() {
            self.change(|journal| {
                journal.lasting = lasting;
                journal.was_asked = true;
            });
        }
    }

    /// Opens the invented garden, in memory: what is on the device stays as it is.
    pub async fn open_demo(self) -> Result<(), String> {
        let bytes = device::beside("demo.jsonl")
            .await
            .ok()
            .and_then(|bytes| bytes.dyn_into::<js_sys::Uint8Array>().ok())
            .ok_or(wording::page::no_demo(language::locale()))?
            .to_vec();
        let mut reader = heapwright_journal::FileReader::default();
        let rows: Vec<&[u8]> = bytes.split(|byte| *byte == b'\n').collect();
        let (mut lines, mut events) = (Vec::new(), Vec::new());
        for some in rows.chunks(LINES_AT_ONCE) {
            for (line, event) in some.iter().filter_map(|row| reader.read(row)) {
                events.push((line.digest(), event));
                lines.push(line);
            }
            breath().await;
        }
        let mut store = MemoryStore::default();
        let Ok(count) = store.append(&lines).await;
        let turn = self.turn().await.map_err(|error| error.to_string())?;
        drop(turn);
        self.count_opened();
        self.store.set_value(Some(Kept::Memory(store)));
        self.change(|journal| {
            *journal = Journal {
                status: Status::Ready,
                is_demo: true,
                last: count as u64,
                ..Journal::default()
            };
            journal.state.take_all(events);
            let device = DeviceId(u64::from_le_bytes(device::chance()));
            journal.recorder = Some(Recorder::new(device, &journal.state, device::now()));
        });
        Ok(())
    }

    /// Takes in what others wrote since.
    pub(super) async fn catch_up(self, turn: &mut Turn) -> Result<(), KeepError> {
        let behind = self.peek(|journal| journal.last);
        let mut fresh: Vec<(Digest, Event)> = Vec::new();
        let through = turn
            .store()
            .read(behind, &mut |line| {
                // What is sound by its digest was an event when it was kept.
                if let Ok(event) = Event::read(line.text()) {
                    fresh.push((line.digest(), event));
                }
            })
            .await?;
        turn.is_current()?;
        if !fresh.is_empty() || !through.damage.is_empty() {
            let now = device::now();
            self.change(|journal| {
                if let Some(recorder) = &mut journal.recorder {
                    for (_, event) in &fresh {
                        recorder.see(event.stamp, now);
                    }
                }
                journal.state.take_all(fresh);
                journal.damage.extend(through.damage);
                journal.say_trouble();
            });
        }
        self.journal
            .update_value(|journal| journal.last = through.last);
        Ok(())
    }

    /// The recorder of this device; the first time the device gets its id.
    async fn recorder(self, turn: &mut Turn) -> Result<Recorder, KeepError> {
        if let Some(recorder) = self.peek(|journal| journal.recorder) {
            return Ok(recorder);
        }
        let id = match turn.store().fact(facts::DEVICE).await? {
            Some(id) => id.parse().ok(),
            None => None,
        };
        let id = match id {
            Some(id) => id,
            None => {
                let id = DeviceId(u64::from_le_bytes(device::chance()));
                turn.store()
                    .set_fact(facts::DEVICE, &id.to_string())
                    .await?;
                id
            }
        };
        Ok(self.peek(|journal| Recorder::new(id, &journal.state, device::now())))
    }

    /// Records one event; when this returns it is kept. What cannot be is said by `locale`.
    async fn record(
        self,
        content: Content,
        happened: Option<Moment>,
        locale: Locale,
    ) -> Result<Event, String> {
        if let Status::Failed(why) = self.peek(|journal| journal.status.clone()) {
            return Err(why);
        }
        let opened = self.opened();
        let warned = self.peek(|journal| journal.warned.clone());
        let mut tries = 0;
        let event = loop {
            tries += 1;
            let mut turn = self.turn().await.map_err(|error| error.to_string())?;
            let kept = async {
                self.is_open(opened)?;
                self.put_back(&mut turn).await?;
                self.catch_up(&mut turn).await?;
                let mut recorder = self.recorder(&mut turn).await?;
                let moment = device::now();
                let now = Now {
                    moment,
                    random: device::chance(),
                };
                let recorded = self.peek(|journal| {
                    recorder.record(
                        &journal.state,
                        content.clone(),
                        happened.unwrap_or(moment),
                        None,
                        now,
                    )
                });
                let (line, event) = match recorded {
                    Ok(recorded) => recorded,
                    Err(error) => {
                        return Ok(Err(wording::record_refusal(&error, locale)));
                    }
                };
                turn.is_current()?;
                turn.store().append(std::slice::from_ref(&line)).await?;
                turn.is_current()?;
                self.change(|journal| {
                    journal.state.take(line.digest(), event.clone());
                    journal.recorder = Some(recorder);
                    journal.last += 1;
                });
                Ok(Ok(event))
            }
            .await;
            match kept {
                Ok(Ok(recorded)) => break recorded,
                Ok(Err(sentence)) => return Err(sentence),
                Err(KeepError::Behind) if tries < MOST_TRIES => {}
                Err(error) => {
                    let why = error.to_string();
                    if error == KeepError::Swapped {
                        // The form that it came from may be gone with the garden that it was for.
                        self.warn(Some(Warning::NotSaved(why.clone())));
                    }
                    return Err(why);
                }
            }
        };
        self.mended(warned.as_ref(), false);
        self.tell();
        Ok(event)
    }

    /// Logs what was done and offers to undo it. The error is a sentence.
    pub async fn log(
        self,
        content: Content,
        happened: Option<Moment>,
        locale: Locale,
    ) -> Result<EventId, String> {
        let later = later().await.map_err(|error| error.to_string())?;
        (later.log)(self, content, happened, locale).await
    }

    /// [`Keeper::log`], in the later part.
    pub async fn log_now(
        self,
        content: Content,
        happened: Option<Moment>,
        locale: Locale,
    ) -> Result<EventId, String> {
        let event = self.record(content, happened, locale).await?;
        let catalogue = language::catalogue();
        let text =
            self.peek(|journal| wording::entry_line(catalogue, &journal.state, &event, locale));
        self.show(Some(Bar {
            event: event.id,
            text,
            withdrawn: false,
            can_return: !matches!(event.content(), Some(Content::Amended(_))),
            fault: None,
        }));
        Ok(event.id)
    }

    /// What an entry would say if it were logged now.
    pub fn told(self, content: Content, locale: Locale) -> String {
        let now = device::now();
        let event = Event::not_logged(content, now);
        self.with(|journal| {
            wording::entry_line(language::catalogue(), &journal.state, &event, locale)
        })
    }

    /// Shows what was done last, or nothing.
    pub fn show(self, bar: Option<Bar>) {
        self.change(|journal| journal.bar = bar);
    }

    /// Takes an entry back, or brings it back; the bar tells of it.
    pub fn withdraw(self, event: EventId, withdraw: bool, locale: Locale) {
        spawn(async move {
            // Without the later part there is no entry on the page to take back.
            if let Ok(later) = later().await {
                (later.withdraw)(self, event, withdraw, locale).await;
            }
        });
    }

    /// [`Keeper::withdraw`], in the later part.
    pub async fn withdraw_now(self, event: EventId, withdraw: bool, locale: Locale) {
        let content: Content = if withdraw {
            Withdrawn { event }.into()
        } else {
            amended(event, None).into()
        };
        let done = self.record(content, None, locale).await.map(drop);
        let (text, can_return) = self.peek(|journal| {
            let recorded = journal
                .state
                .entry(event)
                .and_then(|entry| entry.recorded());
            recorded.map_or((String::new(), false), |recorded| {
                let catalogue = language::catalogue();
                (
                    wording::entry_line(catalogue, &journal.state, recorded, locale),
                    matches!(recorded.content(), Some(content) if content.corrects().is_none()),
                )
            })
        });
        self.show(Some(Bar {
            event,
            text,
            withdrawn: withdraw == done.is_ok(),
            can_return,
            fault: done.err(),
        }));
    }

    /// Keeps a picture and tells what an entry says of it.
    pub async fn keep_picture(
        self,
        bytes: &[u8],
        (width_px, height_px): (u32, u32),
    ) -> Result<Picture, String> {
        let mut turn = self.turn().await.map_err(|error| error.to_string())?;
        let digest = turn
            .store()
            .keep_picture(bytes)
            .await
            .map_err(|error| error.to_string())?;
        Ok(Picture {
            sha256: digest.to_string(),
            media_type: "image/jpeg".to_owned(),
            width_px,
            height_px,
            bytes: u32::try_from(bytes.len()).unwrap_or(u32::MAX),
        })
    }

    /// A picture by its digest; `None` when it is not on this device or is not what it was.
    pub async fn picture(self, sha256: &str) -> Option<Vec<u8>> {
        let digest = sha256.parse().ok()?;
        let mut turn = self.turn().await.ok()?;
        let bytes = turn.store().picture(digest).await.ok()??;
        (Digest::of(&bytes) == digest).then_some(bytes)
    }
}

/// A correction of when an entry happened; with nothing it only brings it back.
pub fn amended(event: EventId, happened: Option<Moment>) -> Amended {
    Amended {
        event,
        happened,
        patch: serde_json::Map::new(),
    }
}
