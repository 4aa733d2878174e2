//! `hygiene`.

use std::path::PathBuf;

use clap::{Args, ValueEnum};

use super::JournalArguments;
use super::numbers::number;

/// How a heap is kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum MethodArgument {
    /// In a closed vessel, or not turned and insulated all over
    Static,
    /// Turned
    Turned,
}

/// `heapwright hygiene`
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  heapwright hygiene Bin
  heapwright hygiene --json --csv probe.csv --turn 2026-05-03T18:00:00+02:00 --method turned
  heapwright hygiene --csv probe.csv --width \"1.2 m\" --height \"1 m\" --probe-error 0.5
  heapwright schema hygiene-answer

The file has the columns time, temperature_c (or temperature_f) and, if you like, depth_cm.")]
pub struct HygieneArguments {
    /// The heap; the only one that is not finished when left out
    #[arg(conflicts_with = "csv")]
    pub heap: Option<String>,
    /// Read the record from FILE, or from standard input with -, in place of the journal
    #[arg(long, value_name = "FILE")]
    pub csv: Option<PathBuf>,
    /// The heap was turned at this time, written as in the file; more than once if you like
    #[arg(long, value_name = "TIME", requires = "csv")]
    pub turn: Vec<String>,
    /// How the heap is kept; turned when turnings are known and you do not say
    #[arg(long, value_enum)]
    pub method: Option<MethodArgument>,
    /// By how much the probe may be wrong either way, in degrees Celsius; 1 when left out
    #[arg(long, value_name = "K", allow_hyphen_values = true, value_parser = number)]
    pub probe_error: Option<f64>,
    /// The depth of the probe that is judged: "30 cm"; the deepest of the file when left out
    #[arg(long, value_name = "LENGTH", requires = "csv")]
    pub depth: Option<String>,
    /// How wide the heap is: "1 m"
    #[arg(long, requires = "height")]
    pub width: Option<String>,
    /// How long it is, as wide when left out
    #[arg(long, requires = "width")]
    pub length: Option<String>,
    /// How high it is
    #[arg(long, requires = "width")]
    pub height: Option<String>,
    /// Its walls are double or padded
    #[arg(long)]
    pub insulated: bool,
    /// Estimate the share in the hot middle from a simulation of the heap
    #[arg(long, conflicts_with = "csv")]
    pub simulated: bool,
    /// Which journal.
    #[command(flatten)]
    pub journal: JournalArguments,
}
