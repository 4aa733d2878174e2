//! What when the browser clears the journal, or another tab writes it anew? What the page has is written
//! back, and what must be known of it is said until it is mended.

use std::sync::Arc;

use heapwright_journal::store::{Store, facts};
use heapwright_journal::{Event, Line};
use heapwright_state::State;
use heapwright_wording as wording;
use leptos::prelude::*;

use super::fault::KeepError;
use super::keeper::{Journal, Keeper, Turn};
use super::kept::{Holds, Kept};
use crate::language;

/// What must be known before anything else, until it is mended.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Warning {
    /// The browser cleared so many entries between visits.
    Gone(u64),
    /// The browser cleared the journal while the page has it.
    Cleared,
    /// It was written back: so many entries, and so many could not be.
    PutBack(u64, u64),
    /// Something was not saved; why, in a sentence.
    NotSaved(String),
}

impl Warning {
    fn told(&self) -> String {
        match self {
            Self::Gone(entries) => wording::page::gone(*entries, language::locale()),
            Self::Cleared => wording::page::cleared(language::locale()).to_owned(),
            Self::PutBack(entries, lost) => {
                wording::page::put_back(*entries, *lost, language::locale())
            }
            Self::NotSaved(why) => why.clone(),
        }
    }
}

impl Journal {
    /// Says anew what must be known.
    pub(super) fn say_trouble(&mut self) {
        let told = [
            self.warned.as_ref().map(Warning::told),
            wording::page::damage_line(&self.damage, language::locale()),
        ];
        self.trouble = told.into_iter().flatten().collect::<Vec<_>>().join(" ");
    }
}

impl Keeper {
    /// Warns of something, or of nothing any more.
    pub(super) fn warn(self, warning: Option<Warning>) {
        self.change(|journal| {
            journal.warned = warning;
            journal.say_trouble();
        });
    }

    /// What the store holds of what the page has.
    async fn holds(self, turn: &mut Turn) -> Result<Holds, KeepError> {
        let holds = turn.store().holds().await?;
        turn.is_current()?;
        let must_put_back = self.peek(|journal| journal.must_put_back);
        Ok(if must_put_back { Holds::Less } else { holds })
    }

    /// Takes in what others wrote since, in the later part; tells when the browser cleared the journal.
    pub async fn follow_now(self) -> Result<(), KeepError> {
        let mut turn = self.turn().await?;
        match self.holds(&mut turn).await? {
            Holds::All => self.catch_up(&mut turn).await?,
            Holds::Less => {
                self.warn(Some(Warning::Cleared));
                return Ok(());
            }
            Holds::Other => {
                self.read_anew(&mut turn).await?;
                let (lines, _) = self.peek(|journal| lines_of(&journal.state));
                if turn.store().lacks(&lines) {
                    self.journal
                        .update_value(|journal| journal.must_put_back = true);
                    self.warn(Some(Warning::Cleared));
                    return Ok(());
                }
            }
        }
        // Another tab wrote it back.
        if self.peek(|journal| journal.warned == Some(Warning::Cleared)) {
            self.warn(None);
        }
        Ok(())
    }

    /// Reads the store from its start; what the page has besides stays.
    async fn read_anew(self, turn: &mut Turn) -> Result<(), KeepError> {
        turn.kept = Some(Kept::on_the_device());
        self.journal.update_value(|journal| {
            journal.last = 0;
            journal.damage.clear();
        });
        self.catch_up(turn).await?;
        self.change(Journal::say_trouble);
        Ok(())
    }

    /// Writes the journal back from the page when the browser cleared it since: what was told as saved
    /// is saved. Only on the way to something that the keeper asked for: who clears it on purpose and
    /// leaves must not find it again.
    pub(super) async fn put_back(self, turn: &mut Turn) -> Result<(), KeepError> {
        let holds = self.holds(turn).await?;
        if holds == Holds::All {
            return Ok(());
        }
        let (lines, lost) = self.peek(|journal| lines_of(&journal.state));
        // A store that is read anew does not know what it lacks: this does, until all of it is written.
        self.journal
            .update_value(|journal| journal.must_put_back = true);
        // Another tab may have begun a journal meanwhile.
        self.read_anew(turn).await?;
        let count = turn.store().append(&lines).await?;
        turn.is_current()?;
        if count > 0 || (lost > 0 && holds == Holds::Less) {
            self.warn(Some(Warning::PutBack(count as u64, lost)));
            self.change(|journal| {
                journal.lasting = Some(false);
                journal.last_export = None;
            });
        }
        if let Some(recorder) = self.peek(|journal| journal.recorder) {
            let id = recorder.device().to_string();
            turn.store().set_fact(facts::DEVICE, &id).await?;
        }
        turn.is_current()?;
        self.read_anew(turn).await?;
        self.journal
            .update_value(|journal| journal.must_put_back = false);
        if self.peek(|journal| journal.warned == Some(Warning::Cleared)) {
            self.warn(None);
        }
        Ok(())
    }

    /// What was warned of before something was kept is mended with it: what was not saved was entered
    /// again, what was written back was told. What was cleared between visits only a file mends.
    pub(super) fn mended(self, before: Option<&Warning>, by_a_file: bool) {
        let is_mended = self.peek(|journal| {
            journal.warned.is_some()
                && journal.warned.as_ref() == before
                && (by_a_file || !matches!(before, Some(Warning::Gone(_))))
        });
        if is_mended {
            self.warn(None);
        }
    }
}

/// The lines of all that was read, oldest first, byte for byte as they were kept; and how many cannot be
/// written again because only a newer version understands them.
fn lines_of(state: &State) -> (Vec<Line>, u64) {
    let mut events: Vec<&Event> = state
        .entries()
        .flat_map(|entry| {
            let mut all: Vec<&Arc<Event>> = entry.others().collect();
            all.extend(entry.recorded());
            all
        })
        .map(AsRef::as_ref)
        .collect();
    events.sort_unstable_by_key(|event| (event.stamp, event.id));
    let mut lost = 0;
    let mut lines = Vec::new();
    for event in events {
        let line = event.write().ok().map(|text| Line::from(text.as_str()));
        match line.filter(|line| state.has(event.id, line.digest()) == Some(true)) {
            Some(line) => lines.push(line),
            None => lost += 1,
        }
    }
    (lines, lost)
}
