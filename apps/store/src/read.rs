//! How is everything that is sound read? Through SQLite, line by line along the chain, and from the
//! bytes of the file when anything does not fit.

use std::collections::HashSet;

use heapwright_journal::store::{ChainWalk, Damage, DamageKind, ReadThrough};
use heapwright_journal::{Chain, Digest, Line};
use rusqlite::types::ValueRef;
use rusqlite::{Connection, OptionalExtension, Row};

use crate::error::{StoreError, is_damage};
use crate::salvage::salvage;
use crate::sqlite::Sqlite;

impl Sqlite {
    /// Hands over every sound line behind a position, in the order in which they were kept. Tells
    /// the last position and what is damaged.
    ///
    /// When anything is damaged, the lines that SQLite does not give are looked for in the bytes of
    /// the file and handed over last. A damage behind the last position means that from there on
    /// SQLite gave nothing: whether more lines stood there cannot be told.
    pub fn read_now(
        &mut self,
        behind: u64,
        take: &mut dyn FnMut(Line),
    ) -> Result<ReadThrough, StoreError> {
        let mut through = ReadThrough {
            last: behind,
            damage: Vec::new(),
        };
        let mut handed = HashSet::new();
        if let Some(connection) = &mut self.connection {
            let mut take = |line: Line| {
                // A damaged file can lead to the same page twice.
                if handed.insert(line.digest()) {
                    take(line);
                }
            };
            match rows(connection, behind, &mut through, &mut take) {
                Ok(()) => {}
                Err(error) if is_damage(&error) => through.damage.push(missing(through.last + 1)),
                Err(error) => return Err(StoreError::sql(&self.path, &error)),
            }
            if through.damage.is_empty() {
                return Ok(through);
            }
        }
        self.note_damage();
        self.read_bytes(behind, &handed, &mut through, take)?;
        Ok(through)
    }

    fn read_bytes(
        &self,
        behind: u64,
        handed: &HashSet<Digest>,
        through: &mut ReadThrough,
        take: &mut dyn FnMut(Line),
    ) -> Result<(), StoreError> {
        let salvaged = salvage(&self.path)?;
        if self.connection.is_none() {
            let mut last = behind;
            for position in salvaged.lines.iter().filter_map(|found| found.position) {
                if position > last + 1 {
                    through.damage.push(missing(last + 1));
                }
                last = last.max(position);
            }
            through.last = last;
            through.damage.push(missing(last + 1));
        }
        for found in salvaged.lines {
            let is_behind = found.position.is_none_or(|position| position > behind);
            if is_behind && !handed.contains(&found.line.digest()) {
                take(found.line);
            }
        }
        Ok(())
    }
}

const fn missing(position: u64) -> Damage {
    Damage {
        position,
        kind: DamageKind::Missing,
    }
}

/// Walks along the rows, all of one moment.
fn rows(
    connection: &mut Connection,
    behind: u64,
    through: &mut ReadThrough,
    take: &mut dyn FnMut(Line),
) -> rusqlite::Result<()> {
    let transaction = connection.transaction()?;
    let mut walk = start(&transaction, behind)?;
    let mut statement = transaction.prepare_cached(
        "SELECT position, link, digest, line FROM events WHERE position > ?1 ORDER BY position",
    )?;
    let mut rows = statement.query([i64::try_from(behind).unwrap_or(i64::MAX)])?;
    let mut count = 0;
    while let Some(row) = rows.next()? {
        let position = u64::try_from(row.get::<_, i64>(0)?).unwrap_or(u64::MAX - 1);
        let line = match row.get_ref(3)? {
            ValueRef::Text(text) => std::str::from_utf8(text).ok().map(Line::from),
            _ => None,
        };
        // What is no text is no line: it is told like a line that has changed.
        let found = line.as_ref().map_or(Digest([0; 32]), Line::digest);
        let kept = digest(row, 2)?;
        let link = digest(row, 1)?.map(Chain);
        let sound = walk.step(position, found, kept, link, &mut through.damage);
        if let Some(line) = line.filter(|_| sound) {
            take(line);
        }
        through.last = position;
        count += 1;
    }
    // A page that lost its last rows looks sound; the index knows how many there were.
    if behind == 0 && count != indexed(&transaction)? {
        through.damage.push(missing(through.last + 1));
    }
    Ok(())
}

fn start(connection: &Connection, behind: u64) -> rusqlite::Result<ChainWalk> {
    if behind == 0 {
        return Ok(ChainWalk::START);
    }
    let link: Option<Option<Digest>> = connection
        .prepare_cached("SELECT link FROM events WHERE position = ?1")?
        .query_row([i64::try_from(behind).unwrap_or(i64::MAX)], |row| {
            digest(row, 0)
        })
        .optional()?;
    let link = link.flatten().map_or(Chain::START, Chain);
    Ok(ChainWalk::behind(behind, link))
}

fn digest(row: &Row<'_>, column: usize) -> rusqlite::Result<Option<Digest>> {
    Ok(match row.get_ref(column)? {
        ValueRef::Blob(bytes) => Digest::from_slice(bytes),
        _ => None,
    })
}

/// How many lines the index knows.
pub(crate) fn indexed(connection: &Connection) -> rusqlite::Result<u64> {
    let count: i64 = connection
        .prepare_cached("SELECT count(*) FROM events INDEXED BY events_by_digest")?
        .query_row([], |row| row.get(0))?;
    Ok(u64::try_from(count).unwrap_or(0))
}
