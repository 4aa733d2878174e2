//! The program itself: `serve`, `schema`, `completions`.

use std::net::IpAddr;
use std::path::PathBuf;

use clap::Args;
use clap_complete::Shell;

use super::LanguageArgument;
use super::numbers::whole;

/// `heapwright serve`
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  heapwright serve --port 8600
  heapwright serve --language de")]
pub struct ServeArguments {
    /// Port to listen on; 0 for any free one
    #[arg(long, default_value_t = 8420, value_parser = whole(0..=u16::MAX))]
    pub port: u16,
    /// Address to listen on; other computers reach the page only when you give another than this one
    #[arg(long, default_value = "127.0.0.1")]
    pub address: IpAddr,
    /// Hand out reminders at /calendar.ics to other computers too, when --address lets them in
    #[arg(long)]
    pub share_calendar: bool,
    /// The file of the journal behind /calendar.ics; else HEAPWRIGHT_GARDEN, else the usual one
    #[arg(long, value_name = "FILE")]
    pub garden: Option<PathBuf>,
    /// Language of the reminders at /calendar.ics; the page speaks that of its device
    #[arg(long, value_enum, default_value = "en")]
    pub language: LanguageArgument,
}

/// `heapwright schema`
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  heapwright schema balance-question")]
pub struct SchemaArguments {
    /// Which one; all names are listed when left out
    #[arg(value_name = "NAME")]
    pub name: Option<String>,
}

/// `heapwright completions`
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  heapwright completions bash > ~/.local/share/bash-completion/completions/heapwright")]
pub struct CompletionsArguments {
    /// Which shell
    #[arg(value_enum)]
    pub shell: Shell,
}
