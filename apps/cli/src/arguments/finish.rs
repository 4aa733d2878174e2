//! `ready`, `ledger` and `diversion`.

use clap::Args;

use super::JournalArguments;

/// `heapwright ready`
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  heapwright ready Bin
  heapwright ready --how bag
  heapwright ready --how list

Ready means that two independent signs speak for it: one that it has come to rest and one that
plants bear it. Write tests down with `heapwright test` and looks with `heapwright read`.")]
pub struct ReadyArguments {
    /// The heap; the only one that is not finished when left out
    pub heap: Option<String>,
    /// Show how a home test is done: bag, seedlings, squeeze ...; \"list\" names all
    #[arg(long, value_name = "TEST", conflicts_with_all = ["heap", "no_simulation"])]
    pub how: Option<String>,
    /// Leave out what the simulation says
    #[arg(long)]
    pub no_simulation: bool,
    /// Which journal.
    #[command(flatten)]
    pub journal: JournalArguments,
}

/// `heapwright ledger`
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  heapwright ledger Bin")]
pub struct LedgerArguments {
    /// The heap; the only one that is not finished when left out
    pub heap: Option<String>,
    /// Leave out what the simulation says
    #[arg(long)]
    pub no_simulation: bool,
    /// Which journal.
    #[command(flatten)]
    pub journal: JournalArguments,
}

/// `heapwright diversion`
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  heapwright diversion
  heapwright diversion --from 2026-01-01 --to 2026-06-30")]
pub struct DiversionArguments {
    /// Only what was fed from then on
    #[arg(long, value_name = "WHEN")]
    pub from: Option<String>,
    /// Only what was fed until then
    #[arg(long, value_name = "WHEN")]
    pub to: Option<String>,
    /// Which journal.
    #[command(flatten)]
    pub journal: JournalArguments,
}
