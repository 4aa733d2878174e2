//! The command line: raw arguments to a typed question, the answer to text or JSON.
//!
//! Data goes to standard output, words to standard error. Exit code 0: done; 1:
//! it failed; 2: the input cannot be used. Nothing is written anywhere else but
//! into the journal and the files that are named.

mod arguments;
mod commands;
mod edges;
mod failure;
mod input;
mod keeping;
mod languages;
mod members;
mod naming;
mod reading;
mod svg;
mod table;
mod telling;
mod written;

use std::ffi::OsString;
use std::io::{self, BufWriter, Write};
use std::process::ExitCode;

use clap::Parser;

use crate::arguments::{Arguments, Command};
use crate::failure::Failure;

fn main() -> ExitCode {
    let mut out = BufWriter::new(io::stdout().lock());
    let result = match negative_amount(std::env::args_os().skip(1)) {
        Some(failure) => Err(failure),
        None => run(Arguments::parse().command, &mut out)
            .and_then(|()| out.flush().map_err(Failure::Output)),
    };
    match result {
        Ok(()) => ExitCode::SUCCESS,
        // Whoever reads has read enough.
        Err(Failure::Output(error)) if error.kind() == io::ErrorKind::BrokenPipe => {
            ExitCode::SUCCESS
        }
        Err(failure) => {
            // When even this cannot be written there is nobody left to tell.
            let _ = writeln!(io::stderr(), "heapwright: {failure}");
            ExitCode::from(failure.exit_code())
        }
    }
}

/// Options whose value may lie below 0, or is refused where it is read.
const TAKE_NEGATIVE: [&str; 17] = [
    "--probe-error",
    "--at-day",
    "--litres",
    "--water",
    "--reach",
    "--at",
    "--temperature",
    "--air",
    "--fill",
    "--share",
    "--heated-to",
    "--room",
    "--latitude",
    "--longitude",
    "--elevation",
    "--coldest-month",
    "--warmest-month",
];

/// A list that begins with a negative amount, which would be taken for an option.
fn negative_amount(arguments: impl Iterator<Item = OsString>) -> Option<Failure> {
    let mut after_option = false;
    for argument in arguments {
        let text = argument.to_string_lossy();
        // Behind this nothing is taken for an option.
        if text == "--" {
            return None;
        }
        let below = text
            .strip_prefix('-')
            .is_some_and(|rest| rest.starts_with(|c: char| c.is_ascii_digit() || c == '.'));
        // The amount of an option is refused where the option is read.
        if below && !after_option {
            let shown: String = text.chars().filter(|c| !c.is_control()).take(40).collect();
            return Some(Failure::Input(format!(
                "\"{shown}\" is below nothing: give an amount above 0"
            )));
        }
        after_option = TAKE_NEGATIVE.contains(&&*text);
    }
    None
}

fn run(command: Command, out: &mut impl Write) -> Result<(), Failure> {
    match command {
        Command::Mix(arguments) => commands::mix::run(&arguments, out),
        Command::Balance(arguments) => commands::balance::run(&arguments, out),
        Command::Simulate(arguments) => commands::simulate::run(&arguments, out),
        Command::Forecast(arguments) => commands::forecast::run(&arguments, out),
        Command::Hygiene(arguments) => commands::hygiene::run(&arguments, out),
        Command::Today(arguments) => commands::today::run(&arguments, out),
        Command::Calendar(arguments) => commands::calendar::run(&arguments, out),
        Command::Ready(arguments) => commands::ready::run(&arguments, out),
        Command::Ledger(arguments) => commands::ledger::run(&arguments, out),
        Command::Diversion(arguments) => commands::diversion::run(&arguments, out),
        Command::Materials(arguments) => commands::materials::run(&arguments, out),
        Command::Heap(command) => commands::heap::run(&command, out),
        Command::Feed(arguments) => commands::feed::run(&arguments, out),
        Command::Turn(arguments) => commands::turn::run(&arguments, out),
        Command::Water(arguments) => commands::water::run(&arguments, out),
        Command::Read(arguments) => commands::read::run(&arguments, out),
        Command::Note(arguments) => commands::note::run(&arguments, out),
        Command::Stock(command) => commands::stock::run(&command, out),
        Command::Harvest(arguments) => commands::harvest::run(&arguments, out),
        Command::Bed(command) => commands::bed::run(&command, out),
        Command::Beds(command) => commands::beds::run(&command, out),
        Command::Paper(command) => commands::paper::run(&command, out),
        Command::Convert(command) => commands::convert::run(&command, out),
        Command::Spread(arguments) => commands::spread::run(&arguments, out),
        Command::Test(arguments) => commands::test::run(&arguments, out),
        Command::Garden(command) => commands::garden::run(&command, out),
        Command::Measure(command) => commands::measure::run(&command, out),
        Command::Material(command) => commands::material::run(&command, out),
        Command::Undo(arguments) => commands::undo::run(&arguments, out),
        Command::Log(arguments) => commands::log::run(&arguments, out),
        Command::Export(arguments) => commands::export::run(&arguments, out),
        Command::Import(arguments) => commands::import::run(&arguments, out),
        Command::Backup(arguments) => commands::backup::run(&arguments, out),
        Command::Restore(arguments) => commands::restore::run(&arguments, out),
        Command::Check(arguments) => commands::check::run(&arguments, out),
        Command::Serve(arguments) => commands::serve::run(&arguments, out),
        Command::Schema(arguments) => commands::schema::run(&arguments, out),
        Command::Completions(arguments) => commands::completions::run(&arguments, out),
        Command::Manual => commands::manual::run(out),
    }
}
