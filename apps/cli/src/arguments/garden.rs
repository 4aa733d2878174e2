//! `garden`, `measure`, `material`, `stock`.

use clap::{Args, Subcommand};

use super::numbers::number;
use super::{RecordArguments, UnitsArgument, ViewArguments};

/// `heapwright garden`
#[derive(Debug, Subcommand)]
pub enum GardenCommand {
    /// Say what the garden is called, where it lies, in which units it is spoken
    Describe(DescribeArguments),
    /// Say who works here: from then on this device writes in their name
    Person(PersonArguments),
}

/// `heapwright garden describe`
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  heapwright garden describe --name \"Our garden\" --latitude 52.5 --longitude 13.4 --speak metric")]
pub struct DescribeArguments {
    /// What it is called
    #[arg(long)]
    pub name: Option<String>,
    /// What the place is called
    #[arg(long)]
    pub place: Option<String>,
    /// Latitude in degrees, north above 0
    #[arg(long, value_name = "DEGREES", allow_hyphen_values = true, value_parser = number)]
    pub latitude: Option<f64>,
    /// Longitude in degrees, east above 0
    #[arg(long, value_name = "DEGREES", allow_hyphen_values = true, value_parser = number)]
    pub longitude: Option<f64>,
    /// Height above the sea: "240 m"
    #[arg(long, value_name = "LENGTH")]
    pub elevation: Option<String>,
    /// Usual temperature of the coldest month
    #[arg(long, value_name = "TEMPERATURE", allow_hyphen_values = true)]
    pub coldest_month: Option<String>,
    /// Usual temperature of the warmest month
    #[arg(long, value_name = "TEMPERATURE", allow_hyphen_values = true)]
    pub warmest_month: Option<String>,
    /// The units in which people speak here
    #[arg(long, value_enum, value_name = "UNITS")]
    pub speak: Option<UnitsArgument>,
    /// When, by whom, in which journal.
    #[command(flatten)]
    pub record: RecordArguments,
}

/// `heapwright garden person`
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  heapwright garden person Ann
  heapwright garden person Ben --role helper --elsewhere")]
pub struct PersonArguments {
    /// Their name
    pub name: String,
    /// keeper, helper
    #[arg(long)]
    pub role: Option<String>,
    /// They do not work on this device
    #[arg(long)]
    pub elsewhere: bool,
    /// When, by whom, in which journal.
    #[command(flatten)]
    pub record: RecordArguments,
}

/// `heapwright measure`
#[derive(Debug, Subcommand)]
pub enum MeasureCommand {
    /// Say what one usual filling of a vessel holds
    Set(MeasureSetArguments),
}

/// `heapwright measure set`
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  heapwright measure set bucket \"12 l\"")]
pub struct MeasureSetArguments {
    /// Which vessel: bucket, caddy, barrow ...
    pub measure: String,
    /// What it holds
    pub volume: String,
    /// When, by whom, in which journal.
    #[command(flatten)]
    pub record: RecordArguments,
}

/// `heapwright material`
#[derive(Debug, Subcommand)]
pub enum MaterialCommand {
    /// Define a material of your own
    Define(MaterialDefineArguments),
    /// Write down what you measured of a material
    Measure(MaterialMeasureArguments),
}

/// `heapwright material define`
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  heapwright material define \"Our leaves\" --like dry_leaves_mixed --moisture 35 --cn 40,55,70")]
pub struct MaterialDefineArguments {
    /// What to call it
    pub name: String,
    /// The material of the catalogue that it is most like, by id or name
    #[arg(long, value_name = "MATERIAL")]
    pub like: String,
    /// Its id: lower-case letters, digits and underscores; made from the name when left out
    #[arg(long)]
    pub id: Option<String>,
    /// Moisture in percent: one number, or low,typical,high
    #[arg(long, value_name = "PERCENT")]
    pub moisture: Option<String>,
    /// Nitrogen, percent of dry matter
    #[arg(long, value_name = "PERCENT")]
    pub nitrogen: Option<String>,
    /// C:N from measured carbon
    #[arg(long, value_name = "RATIO")]
    pub cn: Option<String>,
    /// Bulk density as it lies, wet, in kg/m3
    #[arg(long, value_name = "KG_PER_M3")]
    pub density: Option<String>,
    /// When, by whom, in which journal.
    #[command(flatten)]
    pub record: RecordArguments,
}

/// `heapwright material measure`
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  heapwright material measure \"shredded leaves\" --vessel \"1 bucket\" --full \"2.2 kg\" --empty \"0.6 kg\"
  heapwright material measure \"grass\" --wet \"200 g\" --dried \"45 g\"
  heapwright material measure \"coffee grounds\" --moisture 62 --nitrogen 2.3")]
pub struct MaterialMeasureArguments {
    /// Which material, by id or name
    pub material: String,
    /// A sample weighed as found, the dish not counted
    #[arg(long, value_name = "WEIGHT", requires = "dried")]
    pub wet: Option<String>,
    /// The same after drying
    #[arg(long, value_name = "WEIGHT", requires = "wet")]
    pub dried: Option<String>,
    /// A vessel or volume that was filled with it: "1 bucket", "10 l"
    #[arg(long, value_name = "AMOUNT", requires_all = ["full", "empty"])]
    pub vessel: Option<String>,
    /// Its weight full
    #[arg(long, value_name = "WEIGHT", requires = "vessel")]
    pub full: Option<String>,
    /// Its weight empty
    #[arg(long, value_name = "WEIGHT", requires = "vessel")]
    pub empty: Option<String>,
    /// Laboratory: moisture, percent of the mass as found
    #[arg(long, value_name = "PERCENT", value_parser = number)]
    pub moisture: Option<f64>,
    /// Laboratory: nitrogen, percent of dry matter
    #[arg(long, value_name = "PERCENT", value_parser = number)]
    pub nitrogen: Option<f64>,
    /// Laboratory: C:N from measured carbon
    #[arg(long, value_name = "RATIO", value_parser = number)]
    pub cn: Option<f64>,
    /// When, by whom, in which journal.
    #[command(flatten)]
    pub record: RecordArguments,
}

/// `heapwright stock`
#[derive(Debug, Subcommand)]
pub enum StockCommand {
    /// Write down what was put by
    Put(StockPutArguments),
    /// Write down what was taken, other than for a feed
    Use(StockUseArguments),
    /// Write down how much was counted
    Count(StockCountArguments),
    /// List what is put by
    #[command(after_help = "\
Examples:
  heapwright stock list
  heapwright stock list --json")]
    List(ViewArguments),
}

/// `heapwright stock put`
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  heapwright stock put \"6 buckets shredded leaves\" --scoop \"1 bucket\"")]
pub struct StockPutArguments {
    /// What was put by, as you would say it
    #[arg(value_name = "PARTS", required = true)]
    pub parts: Vec<String>,
    /// In what it is handed out
    #[arg(long, value_name = "AMOUNT")]
    pub scoop: Option<String>,
    /// When, by whom, in which journal.
    #[command(flatten)]
    pub record: RecordArguments,
}

/// `heapwright stock use`
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  heapwright stock use \"1 bucket shredded leaves\" --heap Bin")]
pub struct StockUseArguments {
    /// What was taken, as you would say it
    #[arg(value_name = "PARTS", required = true)]
    pub parts: Vec<String>,
    /// The heap on which it went without being a feed, such as a cover of straw
    #[arg(long, value_name = "HEAP")]
    pub heap: Option<String>,
    /// When, by whom, in which journal.
    #[command(flatten)]
    pub record: RecordArguments,
}

/// `heapwright stock count`
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  heapwright stock count \"4 buckets shredded leaves\" --none sawdust")]
pub struct StockCountArguments {
    /// What is there, as you would say it
    #[arg(value_name = "PARTS", required_unless_present = "none")]
    pub parts: Vec<String>,
    /// A material of which nothing is left
    #[arg(long, value_name = "MATERIAL")]
    pub none: Vec<String>,
    /// When, by whom, in which journal.
    #[command(flatten)]
    pub record: RecordArguments,
}
