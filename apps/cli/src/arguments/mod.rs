//! What can be typed after `heapwright`: one definition for parsing, help, manual and completions.

mod beds;
mod files;
mod finish;
mod forecast;
mod garden;
mod heaps;
mod hygiene;
mod keeping;
mod looks;
mod numbers;
mod paper;
mod program;
mod questions;
mod today;
mod yields;

pub use beds::{
    BedsAskedArguments, BedsCommand, BedsPlanArguments, BedsUsesArguments, ConvertCommand,
    ConvertCommon, CoverArguments, NitrogenArguments, OxideArguments, WeightArguments,
};
pub use files::{
    BackupArguments, CheckArguments, ExportArguments, ImportArguments, RestoreArguments, Table,
};
pub use finish::{DiversionArguments, LedgerArguments, ReadyArguments};
pub use forecast::{Drawn, ForecastArguments, SimulateArguments};
pub use garden::{
    DescribeArguments, GardenCommand, MaterialCommand, MaterialDefineArguments,
    MaterialMeasureArguments, MeasureCommand, PersonArguments, StockCommand, StockCountArguments,
    StockPutArguments, StockUseArguments,
};
pub use heaps::{
    FeedArguments, HeapCommand, HeapCoverArguments, HeapMoveArguments, HeapNewArguments,
    HeapShowArguments, HeapStageArguments, HeapUncoverArguments, TurnArguments, WaterArguments,
};
pub use hygiene::{HygieneArguments, MethodArgument};
pub use keeping::{JournalArguments, LogArguments, RecordArguments, UndoArguments, ViewArguments};
pub use looks::{LaboratoryArguments, NoteArguments, ReadArguments, TestArguments};
pub use paper::{
    PaperBedsArguments, PaperBinArguments, PaperCommand, PaperSeasonArguments, SheetArguments,
    SizeArgument,
};
pub use program::{CompletionsArguments, SchemaArguments, ServeArguments};
pub use questions::{
    BalanceArguments, CommonArguments, MaterialsArguments, MixArguments, ObjectiveArgument,
    TargetArguments,
};
pub use today::{CalendarArguments, TodayArguments};
pub use yields::{BedCommand, BedNewArguments, HarvestArguments, SpreadArguments};

use clap::{Parser, Subcommand, ValueEnum};

/// Keep compost by computing instead of guessing.
#[derive(Debug, Parser)]
#[command(
    name = "heapwright",
    version,
    arg_required_else_help = true,
    max_term_width = 100
)]
#[command(after_help = "\
Examples:
  heapwright mix \"2 buckets vegetable scraps, 1 bucket dry grass\"
  heapwright balance \"1 caddy vegetable scraps, 1 bucket grass\" --reach \"6 buckets shredded leaves\"
  heapwright heap new Bin --width \"1 m\" --height \"90 cm\"
  heapwright feed \"1 caddy vegetable scraps, 1 bucket shredded leaves\" --at \"yesterday evening\"
  heapwright read --temperature \"58 C core\" --squeeze moist
  heapwright today
  heapwright log --last 10
  heapwright forecast Bin --compare \"turn now\" --compare leave
  heapwright materials coffee
  heapwright serve

The journal is one file: the one that --garden or HEAPWRIGHT_GARDEN names, else garden.heapwright in
the folder heapwright of your data folder. HEAPWRIGHT_NOW, a time with its offset from UTC, stands in
for the clock in tests.

Exit codes: 0 done, 1 it failed, 2 the input cannot be used.")]
pub struct Arguments {
    /// What to do.
    #[command(subcommand)]
    pub command: Command,
}

/// What to do.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Tell what a mixture is: C:N, moisture, air, nutrients, each with its range
    Mix(MixArguments),
    /// Tell what to put with what is in hand
    Balance(BalanceArguments),
    /// Tell what happens in a heap that a file describes, day by day
    Simulate(SimulateArguments),
    /// Tell what will become of a heap, and compare ways to go on
    Forecast(ForecastArguments),
    /// Tell which published rules of time and temperature a heap or a record meets
    Hygiene(Box<HygieneArguments>),
    /// Tell what each heap needs today, first things first, and why
    Today(TodayArguments),
    /// Write reminders for a calendar program (iCalendar)
    Calendar(CalendarArguments),
    /// Tell whether a heap is ready, how much it will give, and how home tests are done
    Ready(ReadyArguments),
    /// Tell where the nutrients of a heap are, by source
    Ledger(LedgerArguments),
    /// Tell what was kept out of the bin, and what it may mean for the climate
    Diversion(DiversionArguments),
    /// Look up materials and their figures
    Materials(MaterialsArguments),
    /// Heaps: start, list, show, cover, move, let rest
    #[command(
        subcommand,
        after_help = "\
Examples:
  heapwright heap new Bin --width \"1 m\" --height \"90 cm\" --wall slats --cover lid
  heapwright heap list
  heapwright heap show Bin"
    )]
    Heap(HeapCommand),
    /// Write down what went on a heap
    Feed(FeedArguments),
    /// Write down that a heap was turned
    Turn(TurnArguments),
    /// Write down that a heap was watered
    Water(WaterArguments),
    /// Write down what was seen, felt, smelt and measured at a heap
    Read(ReadArguments),
    /// Write something down, with a picture if you like
    Note(NoteArguments),
    /// Stores: put by, use, count, list
    #[command(
        subcommand,
        after_help = "\
Examples:
  heapwright stock put \"6 buckets shredded leaves, 2 sacks sawdust\"
  heapwright stock use \"1 bucket shredded leaves\"
  heapwright stock count \"4 buckets shredded leaves\" --none sawdust
  heapwright stock list"
    )]
    Stock(StockCommand),
    /// Write down that compost was taken out
    Harvest(HarvestArguments),
    /// Beds: describe, list
    #[command(
        subcommand,
        after_help = "\
Examples:
  heapwright bed new \"Long bed\" \"6 m x 1.2 m\" --crop beans
  heapwright bed list"
    )]
    Bed(BedCommand),
    /// Where the compost goes: a plan for the beds, limits for pots, lawns and trees
    #[command(
        subcommand,
        after_help = "\
Examples:
  heapwright beds plan --from Bin
  heapwright beds plan --litres 300 --paper
  heapwright beds uses potting_mix --amount \"60 l\""
    )]
    Beds(BedsCommand),
    /// Typeset pages (PDF): beside a heap, the record of a season, the plan of the beds
    #[command(
        subcommand,
        after_help = "\
Examples:
  heapwright paper bin Bin --output bin.pdf
  heapwright paper season --from 2026-01-01 --output record.pdf
  heapwright paper beds --from Bin --output plan.pdf"
    )]
    Paper(PaperCommand),
    /// Convert: depth, area and amount; mass; oxides; nitrogen over the years
    #[command(
        subcommand,
        after_help = "\
Examples:
  heapwright convert cover --area \"12 m2\" --depth \"5 mm\"
  heapwright convert weight \"3 barrows\"
  heapwright convert oxide 0.59 P
  heapwright convert nitrogen \"100 l\""
    )]
    Convert(ConvertCommand),
    /// Write down that compost was spread on a bed
    Spread(SpreadArguments),
    /// Write down a test of compost: bag, self-heating, germination, laboratory
    Test(TestArguments),
    /// The garden: its description and people
    #[command(
        subcommand,
        after_help = "\
Examples:
  heapwright garden describe --name \"Our garden\" --latitude 52.5 --longitude 13.4 --speak metric
  heapwright garden person Ann"
    )]
    Garden(GardenCommand),
    /// What your vessels hold
    #[command(
        subcommand,
        after_help = "\
Example:
  heapwright measure set bucket \"12 l\""
    )]
    Measure(MeasureCommand),
    /// Materials of your own, and what you measured of materials
    #[command(
        subcommand,
        after_help = "\
Examples:
  heapwright material define \"Our leaves\" --like dry_leaves_mixed --moisture 35
  heapwright material measure \"shredded leaves\" --vessel \"1 bucket\" --full \"2.2 kg\" --empty \"0.6 kg\""
    )]
    Material(MaterialCommand),
    /// Take back what was written down last
    Undo(UndoArguments),
    /// Show what was written down
    Log(LogArguments),
    /// Write the journal, or tables of it, to a file
    Export(ExportArguments),
    /// Take in a journal, or the readings of a thermometer that logs
    Import(ImportArguments),
    /// Copy the journal with its pictures, and read the copy back
    Backup(BackupArguments),
    /// Bring back a backup, or what is sound in a damaged journal
    Restore(RestoreArguments),
    /// See whether the journal is as it was written
    Check(CheckArguments),
    /// Start the web page on this computer
    Serve(ServeArguments),
    /// Print the JSON Schema of a file or an answer
    Schema(SchemaArguments),
    /// Print completions for a shell
    Completions(CompletionsArguments),
    /// Print the manual page
    #[command(after_help = "\
Example:
  heapwright manual > heapwright.1")]
    Manual,
}

/// Languages of paper and reminders.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum LanguageArgument {
    /// English
    En,
    /// German
    De,
}

/// Units of the text output.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum UnitsArgument {
    /// Kilograms and litres
    Metric,
    /// Pounds and US gallons
    Us,
}
