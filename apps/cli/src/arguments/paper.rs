//! `paper`.

use std::path::PathBuf;

use clap::{Args, Subcommand, ValueEnum};

use super::{BedsAskedArguments, JournalArguments, LanguageArgument};

/// `heapwright paper`
#[derive(Debug, Subcommand)]
pub enum PaperCommand {
    /// A page to hang beside a heap: what goes with each caddy, what comes next, room to write
    Bin(PaperBinArguments),
    /// The record of a season: what went in, what the probe showed, what came out
    Season(PaperSeasonArguments),
    /// The plan of the beds, with boxes to tick
    Beds(Box<PaperBedsArguments>),
}

/// A sheet of paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum SizeArgument {
    /// 210 by 297 mm
    A4,
    /// 8.5 by 11 inches
    Letter,
}

/// Where the pages go.
#[derive(Debug, Args)]
pub struct SheetArguments {
    /// The file to write; - for standard output
    #[arg(long, short, value_name = "FILE")]
    pub output: PathBuf,
    /// Replace the file if it is there
    #[arg(long)]
    pub replace: bool,
    /// The paper; Letter where US units are used, else A4
    #[arg(long, value_enum)]
    pub size: Option<SizeArgument>,
    /// Language of the page
    #[arg(long, value_enum, default_value = "en")]
    pub language: LanguageArgument,
}

/// `heapwright paper bin`
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  heapwright paper bin Bin --output bin.pdf")]
pub struct PaperBinArguments {
    /// The heap; the only one that is not finished when left out
    pub heap: Option<String>,
    /// Where the page goes.
    #[command(flatten)]
    pub sheet: SheetArguments,
    /// Which journal.
    #[command(flatten)]
    pub journal: JournalArguments,
}

/// `heapwright paper season`
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  heapwright paper season --from 2026-03-01 --to 2026-10-31 --output record.pdf")]
pub struct PaperSeasonArguments {
    /// From then on; a year before its end when left out
    #[arg(long, value_name = "WHEN")]
    pub from: Option<String>,
    /// Until then; until now when left out
    #[arg(long, value_name = "WHEN")]
    pub to: Option<String>,
    /// Where the pages go.
    #[command(flatten)]
    pub sheet: SheetArguments,
    /// Which journal.
    #[command(flatten)]
    pub journal: JournalArguments,
}

/// `heapwright paper beds`
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  heapwright paper beds --from Bin --output plan.pdf
  heapwright paper beds --litres 300 --mature --no-raw --output plan.pdf")]
pub struct PaperBedsArguments {
    /// What is asked.
    #[command(flatten)]
    pub asked: BedsAskedArguments,
    /// Where the page goes.
    #[command(flatten)]
    pub sheet: SheetArguments,
    /// Which journal.
    #[command(flatten)]
    pub journal: JournalArguments,
}
