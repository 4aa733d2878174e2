//! How are lines, facts and pictures kept? Each in one transaction, which is on the disk before it
//! is called done.

use heapwright_journal::{Chain, Digest, Line};
use rusqlite::types::ValueRef;
use rusqlite::{Connection, OptionalExtension, TransactionBehavior, ffi, params};

use crate::error::{StoreError, Why};
use crate::sqlite::Sqlite;

impl Sqlite {
    /// Keeps lines; those that are there already are left out. When this returns they are on the
    /// disk, all of them; when it fails, none is. Tells how many were new.
    ///
    /// One case cannot be told apart: when the disk reports a fault just as the last byte is
    /// written, and the power fails at once, the lines may be found there later all the same.
    pub fn append_now(&mut self, lines: &[Line]) -> Result<usize, StoreError> {
        let connection = self.writable()?;
        append(connection, lines).map_err(|error| self.failed(&error))
    }

    /// A fact that the device keeps for itself.
    pub fn fact_now(&mut self, name: &str) -> Result<Option<String>, StoreError> {
        let Some(connection) = &self.connection else {
            return Err(StoreError::new(&self.path, Why::Damaged));
        };
        sound_fact(connection, name).map_err(|error| self.failed(&error))
    }

    /// Keeps a fact.
    pub fn set_fact_now(&mut self, name: &str, value: &str) -> Result<(), StoreError> {
        let connection = self.writable()?;
        keep_fact(connection, name, value).map_err(|error| self.failed(&error))
    }

    /// The names and values of all facts that are sound.
    pub fn facts(&mut self) -> Result<Vec<(String, String)>, StoreError> {
        let names = |connection: &Connection| -> rusqlite::Result<Vec<String>> {
            connection
                .prepare("SELECT name FROM facts ORDER BY name")?
                .query_map([], |row| row.get(0))?
                .collect()
        };
        let Some(connection) = &self.connection else {
            return Ok(Vec::new());
        };
        let names = names(connection).map_err(|error| self.failed(&error))?;
        let mut facts = Vec::new();
        for name in names {
            match self.fact_now(&name) {
                Ok(Some(value)) => facts.push((name, value)),
                Ok(None) => {}
                Err(error) if error.why == Why::Damaged => {}
                Err(error) => return Err(error),
            }
        }
        Ok(facts)
    }

    /// A picture by the digest of its bytes.
    pub fn picture_now(&mut self, digest: Digest) -> Result<Option<Vec<u8>>, StoreError> {
        let Some(connection) = &self.connection else {
            return Err(StoreError::new(&self.path, Why::Damaged));
        };
        let bytes: Option<Vec<u8>> = connection
            .prepare_cached("SELECT bytes FROM pictures WHERE digest = ?1")
            .and_then(|mut statement| {
                statement
                    .query_row([digest.to_string()], |row| row.get(0))
                    .optional()
            })
            .map_err(|error| self.failed(&error))?;
        match bytes {
            Some(bytes) if Digest::of(&bytes) != digest => {
                // The lines may be sound all the same, so they can still be written.
                Err(StoreError::new(&self.path, Why::Damaged))
            }
            bytes => Ok(bytes),
        }
    }

    /// Keeps a picture; one that is there already is left as it is.
    pub fn keep_picture_now(&mut self, bytes: &[u8]) -> Result<Digest, StoreError> {
        let digest = Digest::of(bytes);
        self.writable()?
            .prepare_cached(
                "INSERT INTO pictures (digest, bytes) VALUES (?1, ?2)
                 ON CONFLICT (digest) DO NOTHING",
            )
            .and_then(|mut statement| statement.execute(params![digest.to_string(), bytes]))
            .map_err(|error| self.failed(&error))?;
        Ok(digest)
    }

    /// The digests of all pictures, in rising order.
    pub fn pictures(&mut self) -> Result<Vec<Digest>, StoreError> {
        let digests = |connection: &Connection| -> rusqlite::Result<Vec<Digest>> {
            connection
                .prepare("SELECT digest FROM pictures ORDER BY digest")?
                .query_map([], |row| row.get::<_, String>(0))?
                .map(|digest| digest?.parse().map_err(|_| corrupt("no digest")))
                .collect()
        };
        match &self.connection {
            Some(connection) => digests(connection).map_err(|error| self.failed(&error)),
            None => Ok(Vec::new()),
        }
    }
}

/// What SQLite says of a file in which something does not fit.
pub(crate) fn corrupt(what: &str) -> rusqlite::Error {
    rusqlite::Error::SqliteFailure(ffi::Error::new(ffi::SQLITE_CORRUPT), Some(what.to_owned()))
}

fn append(connection: &mut Connection, lines: &[Line]) -> rusqlite::Result<usize> {
    // From here on no other program writes, so that the last line stays the last.
    let transaction = connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
    let mut new = 0;
    {
        let (mut position, mut chain) = transaction
            .prepare_cached(
                "SELECT position, link, digest, line FROM events ORDER BY position DESC LIMIT 1",
            )?
            .query_row([], |row| {
                let link = row.get(1).map(Digest)?;
                // Nothing is written behind a line that has changed.
                let sound = match row.get_ref(3)? {
                    ValueRef::Text(text) => Digest::of(text).0 == row.get::<_, [u8; 32]>(2)?,
                    _ => false,
                };
                if sound {
                    Ok((row.get::<_, i64>(0)?, Chain(link)))
                } else {
                    Err(corrupt("the last line has changed"))
                }
            })
            .optional()?
            .unwrap_or((0, Chain::START));
        let mut insert = transaction.prepare_cached(
            "INSERT INTO events (position, link, digest, line) VALUES (?1, ?2, ?3, ?4)
             ON CONFLICT (digest) DO NOTHING",
        )?;
        for line in lines {
            let link = chain.then(line.digest());
            let row = params![position + 1, link.0.0, line.digest().0, line.text()];
            if insert.execute(row)? == 1 {
                position += 1;
                chain = link;
                new += 1;
            }
        }
    }
    transaction.commit()?;
    Ok(new)
}

fn fact_digest(name: &str, value: &str) -> Digest {
    Digest::of(format!("{name}\0{value}").as_bytes())
}

pub(crate) fn keep_fact(connection: &Connection, name: &str, value: &str) -> rusqlite::Result<()> {
    connection
        .prepare_cached(
            "INSERT INTO facts (name, value, digest) VALUES (?1, ?2, ?3)
             ON CONFLICT (name) DO UPDATE SET value = excluded.value, digest = excluded.digest",
        )?
        .execute(params![name, value, fact_digest(name, value).0])?;
    Ok(())
}

/// A fact; fails when it has changed.
pub(crate) fn sound_fact(connection: &Connection, name: &str) -> rusqlite::Result<Option<String>> {
    let fact: Option<(String, [u8; 32])> = connection
        .prepare_cached("SELECT value, digest FROM facts WHERE name = ?1")?
        .query_row([name], |row| Ok((row.get(0)?, row.get(1)?)))
        .optional()?;
    match fact {
        Some((value, digest)) if digest == fact_digest(name, &value).0 => Ok(Some(value)),
        Some(_) => Err(corrupt("a fact has changed")),
        None => Ok(None),
    }
}
