//! `simulate` and `forecast`.

use std::path::PathBuf;

use clap::{Args, ValueEnum};

use super::numbers::{number, whole};
use super::{JournalArguments, UnitsArgument};

/// A picture.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum Drawn {
    /// The core's temperature over time
    Core,
    /// The heap cut open, with its temperature
    Section,
    /// The heap cut open, with its moisture
    Wet,
    /// The heap cut open, with its air
    Air,
}

/// `heapwright simulate`
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  heapwright simulate --file heap.json
  heapwright simulate --json --file heap.json --members 200
  heapwright simulate --file heap.json --svg section --at-day 5 --output section.svg
  heapwright schema simulation-question")]
pub struct SimulateArguments {
    /// Read the case as JSON from FILE, or from standard input with -
    #[arg(long, value_name = "FILE")]
    pub file: PathBuf,
    /// Print the answer as one JSON object
    #[arg(long)]
    pub json: bool,
    /// Print the series as a table for spreadsheets
    #[arg(long, conflicts_with = "json")]
    pub csv: bool,
    /// Print a picture
    #[arg(long, value_enum, value_name = "PICTURE", conflicts_with_all = ["json", "csv"])]
    pub svg: Option<Drawn>,
    /// Of a cut: the day; that of the peak when left out
    #[arg(long, value_name = "DAY", requires = "svg", value_parser = number)]
    pub at_day: Option<f64>,
    /// Runs of the ensemble, in place of what the file says; 0 for none
    #[arg(long, value_name = "N", value_parser = whole(0..=1000_u32))]
    pub members: Option<u32>,
    /// Write the answer to this file, which appears when it is whole
    #[arg(long, short, value_name = "FILE")]
    pub output: Option<PathBuf>,
    /// Overwrite a file that is there already
    #[arg(long, requires = "output")]
    pub replace: bool,
    /// Units of the text; metric when left out
    #[arg(long, value_enum)]
    pub units: Option<UnitsArgument>,
}

/// `heapwright forecast`
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  heapwright forecast Bin
  heapwright forecast Bin --days 60 --turn-on 2026-05-09 --water \"10 l\"
  heapwright forecast Bin --compare \"turn now\" --compare \"turn in 3 days\" --compare leave
  heapwright forecast Bin --weather hours.csv --svg core --output core.svg")]
pub struct ForecastArguments {
    /// The heap; the only one that is not finished when left out
    pub heap: Option<String>,
    /// How many days ahead
    #[arg(long, value_name = "DAYS", default_value_t = 30, value_parser = whole(1..=1000_u32))]
    pub days: u32,
    /// The heap is turned on this day; more than once if you like
    #[arg(long, value_name = "DATE")]
    pub turn_on: Vec<String>,
    /// The heap is watered: "10 l" now, or "10 l in 3 days"; more than once if you like
    #[arg(long, value_name = "AMOUNT", allow_hyphen_values = true)]
    pub water: Vec<String>,
    /// Another way to go on: "turn now", "turn in 3 days", "leave"; more than once if you like
    #[arg(long, value_name = "PLAN")]
    pub compare: Vec<String>,
    /// Weather that is known or forecast, as a table of hours or days
    #[arg(long, value_name = "FILE")]
    pub weather: Option<PathBuf>,
    /// Runs of the ensemble; 0 for none
    #[arg(long, value_name = "N", default_value_t = 50, value_parser = whole(0..=1000_u32))]
    pub members: u32,
    /// Print the series as a table for spreadsheets
    #[arg(long, conflicts_with = "json")]
    pub csv: bool,
    /// Print a picture
    #[arg(long, value_enum, value_name = "PICTURE", conflicts_with_all = ["json", "csv"])]
    pub svg: Option<Drawn>,
    /// Of a cut: the day, counted from now; now when left out
    #[arg(
        long,
        value_name = "DAY",
        requires = "svg",
        allow_hyphen_values = true,
        value_parser = number
    )]
    pub at_day: Option<f64>,
    /// Write the answer to this file, which appears when it is whole
    #[arg(long, short, value_name = "FILE")]
    pub output: Option<PathBuf>,
    /// Overwrite a file that is there already
    #[arg(long, requires = "output")]
    pub replace: bool,
    /// Which journal.
    #[command(flatten)]
    pub journal: JournalArguments,
}
