//! What all commands of the journal share; `undo` and `log`.

use std::path::PathBuf;

use clap::Args;

use super::UnitsArgument;
use super::numbers::count;

/// Which journal.
#[derive(Debug, Args)]
pub struct JournalArguments {
    /// The file of the journal; else HEAPWRIGHT_GARDEN, else the usual one
    #[arg(long, value_name = "FILE")]
    pub garden: Option<PathBuf>,
    /// Print the answer as one JSON object
    #[arg(long)]
    pub json: bool,
    /// Units of the text; as the garden speaks, else metric
    #[arg(long, value_enum)]
    pub units: Option<UnitsArgument>,
}

/// What all commands that show something share.
#[derive(Debug, Args)]
pub struct ViewArguments {
    /// Which journal.
    #[command(flatten)]
    pub journal: JournalArguments,
}

/// What all commands that write something down share.
#[derive(Debug, Args)]
pub struct RecordArguments {
    /// When it happened: "yesterday evening", "2 days ago", "2026-05-01 18:00"; now when left out
    #[arg(long, value_name = "WHEN", allow_hyphen_values = true)]
    pub at: Option<String>,
    /// Who writes it down, if not the one who works on this device
    #[arg(long, value_name = "PERSON")]
    pub by: Option<String>,
    /// Which journal.
    #[command(flatten)]
    pub journal: JournalArguments,
}

/// `heapwright undo`
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  heapwright undo --list
  heapwright undo
  heapwright undo --bring-back")]
pub struct UndoArguments {
    /// List what can be taken back, the last first, and change nothing
    #[arg(long)]
    pub list: bool,
    /// Bring back what was taken back last
    #[arg(long, conflicts_with = "list")]
    pub bring_back: bool,
    /// Which journal.
    #[command(flatten)]
    pub journal: JournalArguments,
}

/// `heapwright log`
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  heapwright log --last 20
  heapwright log --heap Bin --kind feeds --since \"last monday\"
  heapwright log --all --json")]
pub struct LogArguments {
    /// Only what tells of this heap
    #[arg(long, value_name = "HEAP")]
    pub heap: Option<String>,
    /// Only entries of these kinds: feeds, readings, turnings, notes ...; more than once if you like
    #[arg(long, value_name = "KIND")]
    pub kind: Vec<String>,
    /// Only what happened from then on
    #[arg(long, value_name = "WHEN")]
    pub since: Option<String>,
    /// Only what happened until then
    #[arg(long, value_name = "WHEN")]
    pub until: Option<String>,
    /// Only the last so many
    #[arg(long, value_name = "N", value_parser = count::<usize>)]
    pub last: Option<usize>,
    /// Show what was taken back too, and the corrections themselves
    #[arg(long)]
    pub all: bool,
    /// Which journal.
    #[command(flatten)]
    pub journal: JournalArguments,
}
