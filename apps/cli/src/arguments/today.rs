//! `today` and `calendar`.

use std::path::PathBuf;

use clap::Args;

use super::{JournalArguments, LanguageArgument, UnitsArgument};

/// `heapwright today`
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  heapwright today
  heapwright today Bin --json

It is worked out from the journal alone: what is not written down, and the weather to come, is not
known.")]
pub struct TodayArguments {
    /// One heap alone; all that are fed or ripen when left out
    pub heap: Option<String>,
    /// Which journal.
    #[command(flatten)]
    pub journal: JournalArguments,
}

/// `heapwright calendar`
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  heapwright calendar > garden.ics
  heapwright calendar --output garden.ics

A calendar program that follows the file sees what changes each time it is written. While
`heapwright serve` runs, the same reminders are at /calendar.ics, worked out anew each time.")]
pub struct CalendarArguments {
    /// The file to write, in place of the one that was written before; standard output when left out
    #[arg(long, short, value_name = "FILE")]
    pub output: Option<PathBuf>,
    /// The file of the journal; else HEAPWRIGHT_GARDEN, else the usual one
    #[arg(long, value_name = "FILE")]
    pub garden: Option<PathBuf>,
    /// Units of the text; as the garden speaks, else metric
    #[arg(long, value_enum)]
    pub units: Option<UnitsArgument>,
    /// Language of the text
    #[arg(long, value_enum, default_value = "en")]
    pub language: LanguageArgument,
}
