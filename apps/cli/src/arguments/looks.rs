//! `read`, `note`, `test`.

use std::path::PathBuf;

use clap::Args;

use super::RecordArguments;
use super::numbers::{count, number};

/// `heapwright read`
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  heapwright read Bin --temperature \"58 C core\" --temperature \"41 C edge, 20 cm deep\"
  heapwright read --squeeze moist --smell earthy --look \"white threads\" --creatures worms
  heapwright read Bin --temperature \"136 F\" --air \"59 F\" --height \"70 cm\"")]
pub struct ReadArguments {
    /// Which heap; may be left out when only one is not finished
    pub heap: Option<String>,
    /// What the probe showed, with the place (core, halfway, edge, top, bottom) and depth if you
    /// like; once for each reading
    #[arg(long, value_name = "TEMPERATURE", allow_hyphen_values = true)]
    pub temperature: Vec<String>,
    /// Temperature of the air
    #[arg(long, value_name = "TEMPERATURE", allow_hyphen_values = true)]
    pub air: Option<String>,
    /// How a squeezed handful feels: dusty, dry, moist, wet, dripping
    #[arg(long)]
    pub squeeze: Option<String>,
    /// How it smells: hardly any smell, earthy, fresh, ammonia, sour, rotten, musty
    #[arg(long)]
    pub smell: Vec<String>,
    /// How it looks: steaming, white threads, mould, matted, slimy, dry pockets, sunk, crumbly,
    /// nothing to be told apart, sprouting
    #[arg(long)]
    pub look: Vec<String>,
    /// What lives in it: worms, woodlice, millipedes, ants, fruit flies, flies, maggots, beetle
    /// grubs, slugs, mice, rats
    #[arg(long)]
    pub creatures: Vec<String>,
    /// Height of the heap
    #[arg(long, value_name = "LENGTH")]
    pub height: Option<String>,
    /// How full the bin is, percent of its height
    #[arg(long, value_name = "PERCENT", allow_hyphen_values = true)]
    pub fill: Option<String>,
    /// When, by whom, in which journal.
    #[command(flatten)]
    pub record: RecordArguments,
}

/// `heapwright note`
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  heapwright note \"a hedgehog moved in\" --heap Bin
  heapwright note --heap Bin --picture heap.jpg")]
pub struct NoteArguments {
    /// What to write down
    pub text: Option<String>,
    /// About which heap
    #[arg(long, value_name = "HEAP")]
    pub heap: Option<String>,
    /// About which bed
    #[arg(long, value_name = "BED", conflicts_with = "heap")]
    pub bed: Option<String>,
    /// A picture (JPEG, PNG or WebP, at most 2 MiB), which is kept in the journal
    #[arg(long, value_name = "FILE")]
    pub picture: Option<PathBuf>,
    /// When, by whom, in which journal.
    #[command(flatten)]
    pub record: RecordArguments,
}

/// `heapwright test`
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  heapwright test Bin --bag-days 7 --swollen no --bag-smell earthy
  heapwright test Bin --heated-to \"24 C\" --room \"20 C\"
  heapwright test Bin --sown 20 --sprouted 18 --control-sown 20 --control-sprouted 19
  heapwright test Bin --moisture 45 --nitrogen 1.8 --cn 14 --ph 7.4")]
pub struct TestArguments {
    /// Which heap; may be left out when only one is not finished
    pub heap: Option<String>,
    /// A moist sample in a closed bag: for how many days it was closed
    #[arg(long, value_name = "DAYS", requires = "swollen", value_parser = number)]
    pub bag_days: Option<f64>,
    /// Whether the bag had swollen: yes or no
    #[arg(long, value_name = "YES|NO", requires = "bag_days")]
    pub swollen: Option<String>,
    /// How it smelt when it was opened
    #[arg(long, value_name = "SMELL", requires = "bag_days")]
    pub bag_smell: Option<String>,
    /// Self-heating in an insulated flask: the highest temperature of the sample
    #[arg(
        long,
        value_name = "TEMPERATURE",
        requires = "room",
        allow_hyphen_values = true
    )]
    pub heated_to: Option<String>,
    /// Temperature of the room
    #[arg(
        long,
        value_name = "TEMPERATURE",
        requires = "heated_to",
        allow_hyphen_values = true
    )]
    pub room: Option<String>,
    /// Germination: seeds sown in the compost
    #[arg(
        long,
        value_name = "SEEDS",
        requires_all = ["sprouted", "control_sown", "control_sprouted"],
        value_parser = count::<u32>
    )]
    pub sown: Option<u32>,
    /// Of them sprouted
    #[arg(long, value_name = "SEEDS", requires = "sown", value_parser = count::<u32>)]
    pub sprouted: Option<u32>,
    /// Seeds sown in water or in compost known to be good
    #[arg(long, value_name = "SEEDS", requires = "sown", value_parser = count::<u32>)]
    pub control_sown: Option<u32>,
    /// Of them sprouted
    #[arg(long, value_name = "SEEDS", requires = "sown", value_parser = count::<u32>)]
    pub control_sprouted: Option<u32>,
    /// Mean length of the roots in millimetres
    #[arg(long, value_name = "MM", requires = "sown", value_parser = number)]
    pub root_mm: Option<f64>,
    /// The same in the control
    #[arg(long, value_name = "MM", requires = "sown", value_parser = number)]
    pub control_root_mm: Option<f64>,
    /// What a laboratory found.
    #[command(flatten)]
    pub laboratory: LaboratoryArguments,
    /// When, by whom, in which journal.
    #[command(flatten)]
    pub record: RecordArguments,
}

/// What a laboratory found.
#[derive(Debug, Args)]
pub struct LaboratoryArguments {
    /// Laboratory: moisture, percent of the mass as found
    #[arg(long, value_name = "PERCENT", value_parser = number)]
    pub moisture: Option<f64>,
    /// Laboratory: carbon, percent of dry matter
    #[arg(long, value_name = "PERCENT", value_parser = number)]
    pub carbon: Option<f64>,
    /// Laboratory: nitrogen, percent of dry matter
    #[arg(long, value_name = "PERCENT", value_parser = number)]
    pub nitrogen: Option<f64>,
    /// Laboratory: C:N from measured carbon
    #[arg(long, value_name = "RATIO", value_parser = number)]
    pub cn: Option<f64>,
    /// Laboratory: ash, percent of dry matter
    #[arg(long, value_name = "PERCENT", value_parser = number)]
    pub ash: Option<f64>,
    /// Laboratory: phosphorus, the element, percent of dry matter
    #[arg(long, value_name = "PERCENT", value_parser = number)]
    pub phosphorus: Option<f64>,
    /// Laboratory: potassium, the element, percent of dry matter
    #[arg(long, value_name = "PERCENT", value_parser = number)]
    pub potassium: Option<f64>,
    /// Laboratory: calcium, the element, percent of dry matter
    #[arg(long, value_name = "PERCENT", value_parser = number)]
    pub calcium: Option<f64>,
    /// Laboratory: magnesium, the element, percent of dry matter
    #[arg(long, value_name = "PERCENT", value_parser = number)]
    pub magnesium: Option<f64>,
    /// Laboratory: sodium, the element, percent of dry matter
    #[arg(long, value_name = "PERCENT", value_parser = number)]
    pub sodium: Option<f64>,
    /// Laboratory: pH
    #[arg(long, value_parser = number)]
    pub ph: Option<f64>,
    /// Laboratory: electrical conductivity in dS/m
    #[arg(long, value_name = "DS_PER_M", value_parser = number)]
    pub conductivity: Option<f64>,
    /// Laboratory: nitrogen as ammonium, mg/kg of dry matter
    #[arg(long, value_name = "MG_PER_KG", value_parser = number)]
    pub ammonium: Option<f64>,
    /// Laboratory: nitrogen as nitrate, mg/kg of dry matter
    #[arg(long, value_name = "MG_PER_KG", value_parser = number)]
    pub nitrate: Option<f64>,
    /// Laboratory: carbon dioxide given off, mg a day for each g of volatile solids
    #[arg(long, value_name = "MG_PER_G", value_parser = number)]
    pub carbon_dioxide: Option<f64>,
}
