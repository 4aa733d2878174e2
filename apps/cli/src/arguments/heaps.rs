//! `heap`, `feed`, `turn`, `water`.

use clap::{Args, Subcommand};

use super::{RecordArguments, ViewArguments};

/// `heapwright heap`
#[derive(Debug, Subcommand)]
pub enum HeapCommand {
    /// Start a heap
    New(HeapNewArguments),
    /// List all heaps
    #[command(after_help = "\
Examples:
  heapwright heap list
  heapwright heap list --json")]
    List(ViewArguments),
    /// Show what is in a heap and what was done with it
    Show(HeapShowArguments),
    /// Let a heap rest, call it finished, or take it up again
    Stage(HeapStageArguments),
    /// Cover a heap
    Cover(HeapCoverArguments),
    /// Take the cover off
    Uncover(HeapUncoverArguments),
    /// Move compost from one heap to another
    Move(HeapMoveArguments),
}

/// `heapwright heap new`
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  heapwright heap new Bin
  heapwright heap new Bin --shape box --width \"1 m\" --depth \"1 m\" --height \"90 cm\" --wall slats --cover lid --ground soil --sun shade
  heapwright heap new Drum --shape drum --width \"60 cm\" --height \"1 m\"")]
pub struct HeapNewArguments {
    /// What to call it
    pub name: String,
    /// box, cylinder, free-standing, drum; a box when only lengths are given
    #[arg(long)]
    pub shape: Option<String>,
    /// Width or diameter: "1 m", "90 cm", "3 ft"
    #[arg(long, value_name = "LENGTH")]
    pub width: Option<String>,
    /// Depth; as the width when left out
    #[arg(long, value_name = "LENGTH")]
    pub depth: Option<String>,
    /// Height when full; the length of a drum that lies
    #[arg(long, value_name = "LENGTH")]
    pub height: Option<String>,
    /// no wall, wire mesh, slats, wood, plastic, metal, insulated
    #[arg(long)]
    pub wall: Option<String>,
    /// no cover, sheet, lid, roof
    #[arg(long)]
    pub cover: Option<String>,
    /// soil, paving
    #[arg(long)]
    pub ground: Option<String>,
    /// shade, half sun, full sun
    #[arg(long)]
    pub sun: Option<String>,
    /// little-by-little, at-once
    #[arg(long)]
    pub filling: Option<String>,
    /// When, by whom, in which journal.
    #[command(flatten)]
    pub record: RecordArguments,
}

/// `heapwright heap show`
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  heapwright heap show Bin")]
pub struct HeapShowArguments {
    /// Which heap; may be left out when only one is not finished
    pub heap: Option<String>,
    /// Which journal.
    #[command(flatten)]
    pub view: ViewArguments,
}

/// `heapwright heap stage`
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  heapwright heap stage Bin curing")]
pub struct HeapStageArguments {
    /// Which heap, and active, curing or finished
    #[arg(value_name = "[HEAP] STAGE", num_args = 1..=2, required = true)]
    pub words: Vec<String>,
    /// When, by whom, in which journal.
    #[command(flatten)]
    pub record: RecordArguments,
}

/// `heapwright heap cover`
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  heapwright heap cover Bin --with sheet")]
pub struct HeapCoverArguments {
    /// Which heap; may be left out when only one is not finished
    pub heap: Option<String>,
    /// sheet, lid, roof
    #[arg(long, value_name = "COVER")]
    pub with: Option<String>,
    /// When, by whom, in which journal.
    #[command(flatten)]
    pub record: RecordArguments,
}

/// `heapwright heap uncover`
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  heapwright heap uncover Bin")]
pub struct HeapUncoverArguments {
    /// Which heap; may be left out when only one is not finished
    pub heap: Option<String>,
    /// When, by whom, in which journal.
    #[command(flatten)]
    pub record: RecordArguments,
}

/// `heapwright heap move`
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  heapwright heap move Bin Box --share 50%")]
pub struct HeapMoveArguments {
    /// From which heap
    pub from: String,
    /// To which heap
    pub to: String,
    /// How much of it; all when left out
    #[arg(long, allow_hyphen_values = true)]
    pub share: Option<String>,
    /// When, by whom, in which journal.
    #[command(flatten)]
    pub record: RecordArguments,
}

/// `heapwright feed`
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  heapwright feed \"1 caddy vegetable scraps, 1 bucket shredded leaves\"
  heapwright feed Bin \"2 buckets grass\" --water \"3 l\" --at \"yesterday evening\"
  heapwright feed Bin \"1 bucket shredded leaves\" --from-stores")]
pub struct FeedArguments {
    /// Which heap, which may be left out when only one is not finished, and what went in, as you
    /// would say it
    #[arg(value_name = "[HEAP] PARTS", required_unless_present = "water")]
    pub words: Vec<String>,
    /// Water that was poured with it
    #[arg(long, value_name = "AMOUNT", allow_hyphen_values = true)]
    pub water: Option<String>,
    /// All of it was taken from the stores
    #[arg(long)]
    pub from_stores: bool,
    /// When, by whom, in which journal.
    #[command(flatten)]
    pub record: RecordArguments,
}

/// `heapwright turn`
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  heapwright turn Bin --how inside-out --at \"sunday 10:00\"")]
pub struct TurnArguments {
    /// Which heap; may be left out when only one is not finished
    pub heap: Option<String>,
    /// loosened, forked-over, inside-out
    #[arg(long)]
    pub how: Option<String>,
    /// When, by whom, in which journal.
    #[command(flatten)]
    pub record: RecordArguments,
}

/// `heapwright water`
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  heapwright water Bin \"10 l\"")]
pub struct WaterArguments {
    /// Which heap, which may be left out when only one is not finished, and how much
    #[arg(value_name = "[HEAP] AMOUNT", num_args = 1..=2, required = true)]
    pub words: Vec<String>,
    /// When, by whom, in which journal.
    #[command(flatten)]
    pub record: RecordArguments,
}
