//! `mix`, `balance` and `materials`.

use std::path::PathBuf;

use clap::{Args, ValueEnum};

use super::UnitsArgument;

/// What mix and balance share.
#[derive(Debug, Args)]
pub struct CommonArguments {
    /// Read the question as JSON from FILE, or from standard input with -
    #[arg(long, value_name = "FILE")]
    pub file: Option<PathBuf>,
    /// Print the answer as one JSON object
    #[arg(long)]
    pub json: bool,
    /// The garden's own measures, materials and stores, as JSON
    #[arg(long, value_name = "FILE")]
    pub garden_file: Option<PathBuf>,
    /// Use the invented demo garden
    #[arg(long, conflicts_with = "garden_file")]
    pub demo: bool,
    /// The journal whose measures, materials and stores are used; the usual one when there is one
    #[arg(long, value_name = "FILE", conflicts_with_all = ["garden_file", "demo"])]
    pub garden: Option<PathBuf>,
    /// Units of the text; as the garden speaks, else metric
    #[arg(long, value_enum)]
    pub units: Option<UnitsArgument>,
}

/// The region to aim at.
#[derive(Debug, Args)]
pub struct TargetArguments {
    /// Lowest and highest C:N
    #[arg(long, value_name = "LOW-HIGH")]
    pub cn: Option<String>,
    /// Lowest and highest moisture in percent
    #[arg(long, value_name = "LOW-HIGH")]
    pub moisture: Option<String>,
    /// Lowest and highest free air space in percent
    #[arg(long, value_name = "LOW-HIGH")]
    pub air: Option<String>,
}

/// `heapwright mix`
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  heapwright mix \"2 buckets vegetable scraps, 1 bucket dry grass, half a handful of sawdust\"
  heapwright mix \"1 1/2 gal coffee grounds\" \"3.5 kg shredded leaves\" --water \"2 l\"
  heapwright mix --json --file mix.json
  echo '{\"parts\":[{\"material\":\"coffee_grounds\",\"amount\":\"2 buckets\"}]}' | heapwright mix --json --file -")]
pub struct MixArguments {
    /// What goes in, as you would say it
    #[arg(
        value_name = "PARTS",
        conflicts_with = "file",
        required_unless_present = "file"
    )]
    pub parts: Vec<String>,
    /// Water added from a can
    #[arg(
        long,
        value_name = "AMOUNT",
        allow_hyphen_values = true,
        conflicts_with = "file"
    )]
    pub water: Option<String>,
    /// The region to aim at
    #[command(flatten)]
    pub target: TargetArguments,
    /// What mix and balance share
    #[command(flatten)]
    pub common: CommonArguments,
}

/// What makes the first recipe best.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, ValueEnum)]
pub enum ObjectiveArgument {
    /// Best chance to be right in spite of what is uncertain
    #[default]
    BestCentred,
    /// Least to carry
    LeastMass,
    /// Least volume
    LeastBulk,
    /// From the fullest store
    UsePlentiful,
}

/// `heapwright balance`
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  heapwright balance \"1 caddy vegetable scraps, 1 bucket grass\" --reach \"6 buckets shredded leaves, 4 buckets cardboard\"
  heapwright balance \"10 kg food waste\" --reach \"sawdust, wood chips\" --no-water --moisture 45-60
  heapwright balance \"2 buckets grass\" --demo
  heapwright balance --json --file balance.json")]
pub struct BalanceArguments {
    /// What is in hand, as you would say it
    #[arg(
        value_name = "PARTS",
        conflicts_with = "file",
        required_unless_present = "file"
    )]
    pub parts: Vec<String>,
    /// What may go with it: "6 buckets shredded leaves" hands out whole buckets, at
    /// most 6; "shredded leaves" any amount. Without it, the garden's stores
    #[arg(
        long,
        value_name = "MATERIALS",
        allow_hyphen_values = true,
        conflicts_with = "file"
    )]
    pub reach: Vec<String>,
    /// There is no water to add
    #[arg(long, conflicts_with = "file")]
    pub no_water: bool,
    /// What makes the first recipe best
    #[arg(long, value_enum, default_value_t, conflicts_with = "file")]
    pub objective: ObjectiveArgument,
    /// The region to aim at
    #[command(flatten)]
    pub target: TargetArguments,
    /// What mix and balance share
    #[command(flatten)]
    pub common: CommonArguments,
}

/// `heapwright materials`
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  heapwright materials              all of them
  heapwright materials courgettes   the ones that are called so
  heapwright materials grass_clippings_fresh --json")]
pub struct MaterialsArguments {
    /// An id, or what you call it
    #[arg(value_name = "NAME")]
    pub words: Vec<String>,
    /// Print JSON: one material by its id, else a list
    #[arg(long)]
    pub json: bool,
}
