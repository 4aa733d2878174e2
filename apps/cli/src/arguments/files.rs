//! `export`, `import`, `backup`, `restore`, `check`.

use std::path::PathBuf;

use clap::{Args, ValueEnum};

use super::JournalArguments;
use super::numbers::whole;

/// A table for spreadsheets.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum Table {
    /// One row an entry
    Log,
    /// One row a reading of a probe
    Readings,
}

/// `heapwright export`
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  heapwright export garden.jsonl
  heapwright export --csv readings readings.csv
  heapwright export -")]
pub struct ExportArguments {
    /// The file to write; - or nothing for standard output
    pub file: Option<PathBuf>,
    /// Write a table for spreadsheets instead of the journal itself
    #[arg(long, value_enum, value_name = "TABLE")]
    pub csv: Option<Table>,
    /// Of readings: only those of this heap
    #[arg(long, value_name = "HEAP", requires = "csv")]
    pub heap: Option<String>,
    /// Of a damaged journal: leave out what cannot be read, and write the rest without a header
    #[arg(long, conflicts_with = "csv")]
    pub skip_faulty: bool,
    /// Replace the file if it is there
    #[arg(long)]
    pub replace: bool,
    /// Which journal.
    #[command(flatten)]
    pub journal: JournalArguments,
}

/// `heapwright import`
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  heapwright import garden.jsonl --dry-run
  heapwright import garden.jsonl --yes
  heapwright import probe.csv --heap Bin --column Temp --unit C --dry-run")]
pub struct ImportArguments {
    /// A journal (JSON Lines) or the table of a thermometer that logs (CSV)
    pub file: PathBuf,
    /// Tell what would come of it and write nothing
    #[arg(long, conflicts_with = "yes")]
    pub dry_run: bool,
    /// Write without asking
    #[arg(long)]
    pub yes: bool,
    /// Leave out the lines that cannot be used, and take in the others
    #[arg(long)]
    pub skip_faulty: bool,
    /// Of a logger: the heap in which the probe is
    #[arg(long, value_name = "HEAP")]
    pub heap: Option<String>,
    /// Of a logger: the column of the temperatures, by its title or its number from 1
    #[arg(long, value_name = "COLUMN")]
    pub column: Option<String>,
    /// Of a logger: the column of the times, by its title or its number from 1
    #[arg(long, value_name = "COLUMN")]
    pub time_column: Option<String>,
    /// Of a logger: the column of the dates, where the times have none
    #[arg(long, value_name = "COLUMN")]
    pub date_column: Option<String>,
    /// Of a logger: the order of dates: day-first, month-first, year-first
    #[arg(long, value_name = "ORDER")]
    pub date_order: Option<String>,
    /// Of a logger: the unit of the temperatures, C or F
    #[arg(long, value_name = "UNIT")]
    pub unit: Option<String>,
    /// Of a logger: where the probe was: core, halfway, edge, top, bottom
    #[arg(long, value_name = "PLACE")]
    pub place: Option<String>,
    /// Of a logger: how deep the probe was
    #[arg(long, value_name = "LENGTH")]
    pub depth: Option<String>,
    /// Of a logger: keep one reading in so many minutes
    #[arg(long, value_name = "MINUTES", value_parser = whole(1..=10_080_u32))]
    pub every: Option<u32>,
    /// Of a logger: what to call it
    #[arg(long, value_name = "NAME")]
    pub logger: Option<String>,
    /// Which journal.
    #[command(flatten)]
    pub journal: JournalArguments,
}

/// `heapwright backup`
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  heapwright backup garden-backup.heapwright")]
pub struct BackupArguments {
    /// The file to write
    pub file: PathBuf,
    /// Replace the file if it is there
    #[arg(long)]
    pub replace: bool,
    /// Which journal.
    #[command(flatten)]
    pub journal: JournalArguments,
}

/// `heapwright restore`
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  heapwright restore garden-backup.heapwright
  heapwright restore --from-damaged")]
pub struct RestoreArguments {
    /// The backup; where there is a journal, it then holds what both held
    #[arg(required_unless_present = "from_damaged")]
    pub file: Option<PathBuf>,
    /// Make a new journal of all that is sound in the damaged one, or take in all that is sound in
    /// the damaged FILE
    #[arg(long)]
    pub from_damaged: bool,
    /// Which journal.
    #[command(flatten)]
    pub journal: JournalArguments,
}

/// `heapwright check`
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  heapwright check")]
pub struct CheckArguments {
    /// Which journal.
    #[command(flatten)]
    pub journal: JournalArguments,
}
