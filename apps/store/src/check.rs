//! Is a journal as it was written? Everything in it is looked at, and nothing is changed.

use std::collections::HashSet;
use std::path::Path;

use heapwright_journal::store::{Damage, facts};
use heapwright_journal::{DeviceId, Digest, Line, journal_digest};
use rusqlite::Connection;

use crate::error::{StoreError, Why, is_damage};
use crate::read::indexed;
use crate::salvage::salvage;
use crate::sqlite::Sqlite;

/// The most sentences of SQLite about one file.
const MOST_FAULTS: u32 = 20;

/// What was found when everything was looked at.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Report {
    /// How many lines can be read.
    pub lines: u64,
    /// How many of them SQLite does not give; they were found in the bytes of the file.
    pub searched_out: u64,
    /// How many lines were there and cannot be read any more, as far as that can be told.
    pub lost: u64,
    /// The digest of the journal as it can be read.
    pub digest: Option<Digest>,
    /// What is damaged, by position.
    pub damage: Vec<Damage>,
    /// What SQLite finds wrong with its own file, in its words.
    pub structure: Vec<String>,
    /// The facts that have changed.
    pub facts_damaged: Vec<String>,
    /// How many pictures are sound.
    pub pictures: u64,
    /// The pictures that have changed or cannot be read.
    pub pictures_damaged: Vec<Digest>,
    /// The device that writes here.
    pub device: Option<DeviceId>,
}

impl Report {
    /// True when everything is as it was written.
    #[must_use]
    pub const fn is_sound(&self) -> bool {
        self.lost == 0
            && self.damage.is_empty()
            && self.structure.is_empty()
            && self.facts_damaged.is_empty()
            && self.pictures_damaged.is_empty()
            && self.device.is_some()
    }
}

/// Looks at everything in a file.
pub fn check(path: &Path) -> Result<Report, StoreError> {
    Sqlite::open_to_read(path)?.report()
}

impl Sqlite {
    /// Looks at everything.
    pub fn report(&mut self) -> Result<Report, StoreError> {
        let mut digests = Vec::new();
        let through = self.read_now(0, &mut |line: Line| digests.push(line.digest()))?;
        let mut report = Report {
            lines: digests.len() as u64,
            damage: through.damage,
            ..Report::default()
        };
        let handed: HashSet<Digest> = digests.iter().copied().collect();
        if !report.damage.is_empty() {
            let known = salvage(&self.path)?.known;
            let unread = known.keys().filter(|digest| !handed.contains(digest));
            // The index tells which lines were there, the positions how many.
            report.lost = (unread.count() as u64).max(through.last.saturating_sub(report.lines));
        }
        report.digest = Some(journal_digest(digests));
        self.look_at_structure(&mut report, &handed)?;
        self.look_at_facts(&mut report)?;
        self.look_at_pictures(&mut report)?;
        if !report.is_sound() {
            self.note_damage();
        }
        Ok(report)
    }

    fn look_at_structure(
        &self,
        report: &mut Report,
        handed: &HashSet<Digest>,
    ) -> Result<(), StoreError> {
        let Some(connection) = &self.connection else {
            report.searched_out = report.lines;
            report
                .structure
                .push("the file cannot be opened".to_owned());
            return Ok(());
        };
        let look = || -> rusqlite::Result<(Vec<String>, u64)> {
            let mut faults: Vec<String> = connection
                .prepare(&format!("PRAGMA integrity_check({MOST_FAULTS})"))?
                .query_map([], |row| row.get(0))?
                .collect::<rusqlite::Result<_>>()?;
            faults.retain(|fault| fault != "ok");
            if indexed(connection)? != handed.len() as u64 && faults.is_empty() {
                faults.push("the index of the lines does not fit them".to_owned());
            }
            Ok((faults, given_by_sqlite(connection, handed)?))
        };
        match look() {
            Ok((faults, given)) => {
                report.structure = faults;
                report.searched_out = report.lines.saturating_sub(given);
            }
            Err(error) if is_damage(&error) => report.structure.push(error.to_string()),
            Err(error) => return Err(StoreError::sql(&self.path, &error)),
        }
        Ok(())
    }

    fn look_at_facts(&mut self, report: &mut Report) -> Result<(), StoreError> {
        report.device = self.device().ok();
        let Some(connection) = &self.connection else {
            return Ok(());
        };
        let names = || -> rusqlite::Result<Vec<String>> {
            connection
                .prepare("SELECT name FROM facts ORDER BY name")?
                .query_map([], |row| row.get(0))?
                .collect()
        };
        let names = match names() {
            Ok(names) => names,
            Err(error) if is_damage(&error) => vec![facts::DEVICE.to_owned()],
            Err(error) => return Err(StoreError::sql(&self.path, &error)),
        };
        for name in names {
            match self.fact_now(&name) {
                Ok(_) => {}
                Err(error) if error.why == Why::Damaged => report.facts_damaged.push(name),
                Err(error) => return Err(error),
            }
        }
        Ok(())
    }

    fn look_at_pictures(&mut self, report: &mut Report) -> Result<(), StoreError> {
        let digests = match self.pictures() {
            Ok(digests) => digests,
            Err(error) if error.why == Why::Damaged => {
                report
                    .structure
                    .push("the pictures cannot be listed".to_owned());
                return Ok(());
            }
            Err(error) => return Err(error),
        };
        for digest in digests {
            match self.picture_now(digest) {
                Ok(Some(_)) => report.pictures += 1,
                Ok(None) => report.pictures_damaged.push(digest),
                Err(error) if error.why == Why::Damaged => report.pictures_damaged.push(digest),
                Err(error) => return Err(error),
            }
        }
        Ok(())
    }
}

/// How many of these lines stand in the table under their own digest.
fn given_by_sqlite(connection: &Connection, handed: &HashSet<Digest>) -> rusqlite::Result<u64> {
    let mut statement = connection.prepare("SELECT line FROM events")?;
    let mut rows = statement.query([])?;
    let mut given = HashSet::new();
    loop {
        match rows.next() {
            Ok(Some(row)) => {
                if let Ok(line) = row.get_ref(0)?.as_bytes() {
                    given.insert(Digest::of(line));
                }
            }
            Ok(None) => break,
            // Up to here; the structure tells the rest.
            Err(error) if is_damage(&error) => break,
            Err(error) => return Err(error),
        }
    }
    Ok(handed.intersection(&given).count() as u64)
}
