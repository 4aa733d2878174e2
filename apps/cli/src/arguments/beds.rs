//! `beds` and `convert`.

use std::path::PathBuf;

use clap::{Args, Subcommand};

use super::numbers::{count, litres, number};
use super::{JournalArguments, UnitsArgument};

/// `heapwright beds`
#[derive(Debug, Subcommand)]
pub enum BedsCommand {
    /// Tell which bed gets how much compost, and why not more
    Plan(Box<BedsPlanArguments>),
    /// Tell how much compost goes into pots, on lawns, around trees
    Uses(BedsUsesArguments),
}

/// `heapwright beds plan`
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  heapwright beds plan --from Bin
  heapwright beds plan --litres 300 --sow \"Long bed=10\" --mature --no-raw
  heapwright beds plan --from Bin --paper > plan.txt
  heapwright beds plan --json --file beds.json")]
pub struct BedsPlanArguments {
    /// What is asked.
    #[command(flatten)]
    pub asked: BedsAskedArguments,
    /// Print a plain table of at most 80 columns to take outside
    #[arg(long, conflicts_with = "json")]
    pub paper: bool,
    /// Which journal, and how it is shown.
    #[command(flatten)]
    pub journal: JournalArguments,
}

/// How much compost there is, and for which beds.
#[derive(Debug, Args)]
pub struct BedsAskedArguments {
    /// The heap whose compost it is: its tests, and how much there is, are taken from the journal
    #[arg(long, value_name = "HEAP", conflicts_with = "file")]
    pub from: Option<String>,
    /// How many litres of compost there are
    #[arg(
        long,
        value_name = "N",
        allow_hyphen_values = true,
        conflicts_with_all = ["file", "amount"],
        value_parser = litres
    )]
    pub litres: Option<f64>,
    /// How much compost there is: "3 barrows"
    #[arg(long, conflicts_with = "file")]
    pub amount: Option<String>,
    /// Only this bed; may be given again
    #[arg(long, value_name = "BED", conflicts_with = "file")]
    pub bed: Vec<String>,
    /// What will grow on a bed, in place of what the journal says; may be given again
    #[arg(long, value_name = "BED=CROP", conflicts_with = "file")]
    pub crop: Vec<String>,
    /// Something is sown or planted on a bed in so many days, at once without a number; may be given again
    #[arg(long, value_name = "BED[=DAYS]", conflicts_with = "file")]
    pub sow: Vec<String>,
    /// A bed is harvested in so many days; may be given again
    #[arg(long, value_name = "BED=DAYS", conflicts_with = "file")]
    pub harvest: Vec<String>,
    /// The compost is mature, whatever was tested
    #[arg(long, conflicts_with_all = ["immature", "file"])]
    pub mature: bool,
    /// The compost is not mature
    #[arg(long, conflicts_with = "file")]
    pub immature: bool,
    /// Raw manure, droppings or meat went in
    #[arg(long, conflicts_with_all = ["no_raw", "file"])]
    pub held_raw: bool,
    /// None of these went in, or a heat was shown to have dealt with it
    #[arg(long, conflicts_with = "file")]
    pub no_raw: bool,
    /// Something went in that never goes on food beds, such as dog or cat waste
    #[arg(long, conflicts_with = "file")]
    pub never_on_food_beds: bool,
    /// Read beds and compost as JSON from FILE, or from standard input with -
    #[arg(long, value_name = "FILE")]
    pub file: Option<PathBuf>,
}

/// `heapwright beds uses`
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  heapwright beds uses
  heapwright beds uses potting_mix --amount \"60 l\"
  heapwright beds uses lawn_top --area \"40 m2\"")]
pub struct BedsUsesArguments {
    /// Which one, by its id; all when left out
    #[arg(value_name = "USE")]
    pub use_of: Option<String>,
    /// How much mix there is to be
    #[arg(long, requires = "use_of", conflicts_with = "area")]
    pub amount: Option<String>,
    /// How large the area is
    #[arg(long, requires = "use_of")]
    pub area: Option<String>,
    /// Print the answer as one JSON object
    #[arg(long)]
    pub json: bool,
    /// Units of the text
    #[arg(long, value_enum)]
    pub units: Option<UnitsArgument>,
}

/// `heapwright convert`
#[derive(Debug, Subcommand)]
pub enum ConvertCommand {
    /// Area, depth and amount: give two, get the third
    Cover(CoverArguments),
    /// The mass of a volume of compost, or the volume of a mass
    Weight(WeightArguments),
    /// An element as the oxide that labels name, or back
    Oxide(OxideArguments),
    /// Nitrogen of compost that is there for plants, year by year
    Nitrogen(NitrogenArguments),
}

/// What all conversions share.
#[derive(Debug, Args)]
pub struct ConvertCommon {
    /// Print the answer as one JSON object
    #[arg(long)]
    pub json: bool,
    /// The journal whose measures are used; the usual one when there is one
    #[arg(long, value_name = "FILE")]
    pub garden: Option<PathBuf>,
    /// Units of the text; as the garden speaks, else metric
    #[arg(long, value_enum)]
    pub units: Option<UnitsArgument>,
}

/// `heapwright convert cover`
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  heapwright convert cover --area \"12 m2\" --depth \"5 mm\"
  heapwright convert cover --amount \"1 cubic yard\" --depth \"1 in\"
  heapwright convert cover --area \"1000 sq ft\" --amount \"4 cubic yards\"")]
pub struct CoverArguments {
    /// How large the area is: "12 m2", "6 m x 1.2 m"
    #[arg(long)]
    pub area: Option<String>,
    /// How deep: "5 mm", "1 in"
    #[arg(long)]
    pub depth: Option<String>,
    /// How much: "3 barrows", "200 l"
    #[arg(long)]
    pub amount: Option<String>,
    /// What all conversions share.
    #[command(flatten)]
    pub common: ConvertCommon,
}

/// `heapwright convert weight`
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  heapwright convert weight \"3 barrows\"
  heapwright convert weight \"50 kg\" --density 650")]
pub struct WeightArguments {
    /// How much: "3 barrows", "50 kg"
    pub amount: String,
    /// Bulk density in kg/m3, which is grams a litre; the usual one of compost when left out
    #[arg(long, value_name = "KG_PER_M3", value_parser = number)]
    pub density: Option<f64>,
    /// What all conversions share.
    #[command(flatten)]
    pub common: ConvertCommon,
}

/// `heapwright convert oxide`
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  heapwright convert oxide 0.59 P
  heapwright convert oxide 3.2 P2O5
  heapwright convert oxide \"5 kg P\"
  heapwright convert oxide 1.0 Ca --to CaCO3")]
pub struct OxideArguments {
    /// How much, in whatever unit, and of what: P, K, Ca, Mg, P2O5, K2O, CaO, CaCO3, MgO
    #[arg(required = true, value_name = "AMOUNT OF")]
    pub words: Vec<String>,
    /// For calcium: CaO, or CaCO3
    #[arg(long, value_name = "OXIDE")]
    pub to: Option<String>,
    /// Print the answer as one JSON object
    #[arg(long)]
    pub json: bool,
}

/// `heapwright convert nitrogen`
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  heapwright convert nitrogen \"100 l\"
  heapwright convert nitrogen \"3 barrows\" --cn 12 --years 8
  heapwright convert nitrogen \"100 kg\" --first 12.5 --halving")]
pub struct NitrogenArguments {
    /// How much compost
    pub amount: String,
    /// How many years
    #[arg(long, default_value_t = 5, value_parser = count::<u32>)]
    pub years: u32,
    /// Nitrogen of the compost in percent of dry matter; the usual when left out
    #[arg(long, value_name = "PERCENT", value_parser = number)]
    pub nitrogen: Option<f64>,
    /// Its C:N
    #[arg(long, value_parser = number)]
    pub cn: Option<f64>,
    /// Its moisture in percent
    #[arg(long, value_name = "PERCENT", value_parser = number)]
    pub moisture: Option<f64>,
    /// Share of all nitrogen that is there in the first year, percent
    #[arg(long, value_name = "PERCENT", value_parser = number)]
    pub first: Option<f64>,
    /// Share of what remains, each later year, percent
    #[arg(long, value_name = "PERCENT", conflicts_with = "halving", value_parser = number)]
    pub later: Option<f64>,
    /// Each later year brings half of the year before
    #[arg(long)]
    pub halving: bool,
    /// What all conversions share.
    #[command(flatten)]
    pub common: ConvertCommon,
}
