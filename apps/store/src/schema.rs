//! What stands in the file: its marks and its tables.
//!
//! Every line lies in one piece right behind its digest, so that it can be found again and proved
//! when nothing around it makes sense any more. That asks for two things: the digest is the column
//! before the line, and pages of 16 KiB, so that lines above 16,000 bytes only, which hardly occur,
//! are laid out over several pages.

use rusqlite::Connection;

/// The size of a page [bytes].
pub(crate) const PAGE_BYTES: usize = 16 << 10;

/// Tells our files from others made with SQLite: the letters "Heap".
pub(crate) const APPLICATION_ID: u32 = u32::from_be_bytes(*b"Heap");

/// The version of the tables.
pub(crate) const VERSION: u32 = 1;

/// The fact that repeats the version, so that a damaged version is told from a newer one.
pub(crate) const VERSION_FACT: &str = "store_version";

/// Pages after which SQLite brings the file itself up to date. It keeps what was written since in
/// a second file, which is read whole when a journal is opened after a crash: 1 MiB.
pub(crate) const CHECKPOINT_PAGES: u32 = 64;

const TABLES: &str = "
    -- The journal. `link` is the chain's link behind the line, `digest` the SHA-256 of the line.
    CREATE TABLE events (
        position INTEGER PRIMARY KEY,
        link BLOB NOT NULL,
        digest BLOB NOT NULL,
        line TEXT NOT NULL
    ) STRICT;
    CREATE UNIQUE INDEX events_by_digest ON events (digest);
    -- What the device keeps for itself. `digest` covers name and value.
    CREATE TABLE facts (
        name TEXT NOT NULL PRIMARY KEY,
        value TEXT NOT NULL,
        digest BLOB NOT NULL
    ) STRICT;
    -- Pictures under the SHA-256 of their bytes: in digits, so that entries of this index do not
    -- look like those of the lines.
    CREATE TABLE pictures (
        digest TEXT NOT NULL PRIMARY KEY,
        bytes BLOB NOT NULL
    ) STRICT;
";

/// Says how an open file is used; `durable` is false for files that are put in place only when
/// they are finished.
pub(crate) fn set_up(connection: &Connection, durable: bool) -> rusqlite::Result<()> {
    connection.execute_batch(&format!(
        "PRAGMA synchronous = {};
         PRAGMA fullfsync = {durable};
         PRAGMA foreign_keys = ON;
         PRAGMA trusted_schema = OFF;
         PRAGMA cell_size_check = ON;
         PRAGMA wal_autocheckpoint = {CHECKPOINT_PAGES};",
        if durable { "FULL" } else { "OFF" },
    ))
}

/// Makes the tables in an empty file.
pub(crate) fn make(connection: &Connection) -> rusqlite::Result<()> {
    connection.execute_batch(&format!(
        "PRAGMA page_size = {PAGE_BYTES};
         BEGIN;
         PRAGMA application_id = {APPLICATION_ID};
         PRAGMA user_version = {VERSION};
         {TABLES}
         COMMIT;"
    ))
}

/// What the first bytes of a file tell.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Head {
    /// All as it must be.
    Sound,
    /// All as it must be but the version.
    OtherVersion(u32),
    /// Ours, or was.
    Broken,
    /// Nothing that we know.
    Foreign,
}

/// How many bytes the head has.
pub(crate) const HEAD_BYTES: usize = 100;

/// Looks at the first bytes of a file (SQLite, "Database File Format", section 1.3).
pub(crate) fn head(bytes: &[u8]) -> Head {
    let number = |at: usize| {
        bytes
            .get(at..)
            .and_then(<[u8]>::first_chunk)
            .map(|four| u32::from_be_bytes(*four))
    };
    let magic = bytes.starts_with(b"SQLite format 3\0");
    let ours = number(68) == Some(APPLICATION_ID);
    let page = bytes.get(16..18) == Some(&[(PAGE_BYTES >> 8) as u8, 0]);
    // How it is written and read (old way or WAL), then four bytes that never differ.
    let ways = matches!(bytes.get(18..20), Some([1, 1] | [2, 2]));
    let fixed = bytes.get(20..24) == Some(&[0, 64, 32, 32]);
    match number(60) {
        Some(version) if magic && ours && page && ways && fixed => {
            if version == VERSION {
                Head::Sound
            } else {
                Head::OtherVersion(version)
            }
        }
        _ if magic && !ours => Head::Foreign,
        _ if magic || ours => Head::Broken,
        _ => Head::Foreign,
    }
}
