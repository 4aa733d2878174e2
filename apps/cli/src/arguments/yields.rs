//! `harvest`, `bed`, `spread`.

use clap::{Args, Subcommand};

use super::numbers::number;
use super::{RecordArguments, ViewArguments};

/// `heapwright harvest`
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  heapwright harvest Bin
  heapwright harvest Bin \"6 buckets\" --share all
  heapwright harvest Bin \"4 buckets\" --share half --sieve 12 --overs \"1 bucket\" --overs-to Box")]
pub struct HarvestArguments {
    /// Which heap, which may be left out when only one is not finished, and how much compost
    #[arg(value_name = "[HEAP] [AMOUNT]", num_args = 0..=2)]
    pub words: Vec<String>,
    /// How much of the heap: 20%, half, all; must be said with an amount, else all when left out
    #[arg(long, allow_hyphen_values = true)]
    pub share: Option<String>,
    /// Mesh of the sieve in millimetres
    #[arg(long, value_name = "MM", value_parser = number)]
    pub sieve: Option<f64>,
    /// How much the sieve held back
    #[arg(long, value_name = "AMOUNT", requires = "sieve")]
    pub overs: Option<String>,
    /// The heap to which that went
    #[arg(long, value_name = "HEAP", requires = "overs")]
    pub overs_to: Option<String>,
    /// When, by whom, in which journal.
    #[command(flatten)]
    pub record: RecordArguments,
}

/// `heapwright bed`
#[derive(Debug, Subcommand)]
pub enum BedCommand {
    /// Describe a bed
    New(Box<BedNewArguments>),
    /// List all beds and what was spread on them
    #[command(after_help = "\
Examples:
  heapwright bed list
  heapwright bed list --json")]
    List(ViewArguments),
}

/// `heapwright bed new`
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  heapwright bed new \"Long bed\" \"6 m x 1.2 m\" --crop beans")]
pub struct BedNewArguments {
    /// What to call it
    pub name: String,
    /// How large it is: "12 m2", "100 sq ft", "6 m x 1.2 m"
    pub area: String,
    /// What grows there
    #[arg(long)]
    pub crop: Option<String>,
    /// How much that feeds on the soil, where its name does not say so: light, medium, heavy
    #[arg(long)]
    pub feeding: Option<String>,
    /// The ground was not dug and fed before
    #[arg(long)]
    pub new_ground: bool,
    /// Test of the soil: pH
    #[arg(long, value_name = "PH", value_parser = number)]
    pub soil_ph: Option<f64>,
    /// Test of the soil: organic matter in percent
    #[arg(long, value_name = "PERCENT", value_parser = number)]
    pub soil_organic: Option<f64>,
    /// Test of the soil: phosphorus that plants can take up, the element, mg/kg
    #[arg(long, value_name = "MG_PER_KG", value_parser = number)]
    pub soil_phosphorus: Option<f64>,
    /// Test of the soil: potassium that plants can take up, the element, mg/kg
    #[arg(long, value_name = "MG_PER_KG", value_parser = number)]
    pub soil_potassium: Option<f64>,
    /// Test of the soil: conductivity of the saturation extract in dS/m
    #[arg(long, value_name = "DS_PER_M", value_parser = number)]
    pub soil_conductivity: Option<f64>,
    /// When, by whom, in which journal.
    #[command(flatten)]
    pub record: RecordArguments,
}

/// `heapwright spread`
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  heapwright spread \"Long bed\" \"3 buckets\" --heap Bin --how mulch")]
pub struct SpreadArguments {
    /// On which bed
    pub bed: String,
    /// How much
    pub amount: String,
    /// From which heap
    #[arg(long, value_name = "HEAP")]
    pub heap: Option<String>,
    /// mulch, dug-in, planting-hole
    #[arg(long)]
    pub how: Option<String>,
    /// When, by whom, in which journal.
    #[command(flatten)]
    pub record: RecordArguments,
}
