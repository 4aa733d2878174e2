//! The command line: raw arguments to a typed question, the answer to text or JSON.
//!
//! Data goes to standard output, words to standard error. Exit code 0: done; 1:
//! it failed; 2: the input cannot be used. Nothing is written anywhere else.

mod arguments;
mod commands;
mod failure;
mod input;
mod table;

use std::io::{self, BufWriter, Write};
use std::process::ExitCode;

use clap::Parser;

use crate::arguments::{Arguments, Command};
use crate::failure::Failure;

fn main() -> ExitCode {
    let arguments = Arguments::parse();
    let mut out = BufWriter::new(io::stdout().lock());
    let result = run(arguments.command, &mut out).and_then(|()| out.flush().map_err(Failure::Output));
    match result {
        Ok(()) => ExitCode::SUCCESS,
        // Whoever reads has read enough.
        Err(Failure::Output(error)) if error.kind() == io::ErrorKind::BrokenPipe => ExitCode::SUCCESS,
        Err(failure) => {
            // When even this cannot be written there is nobody left to tell.
            let _ = writeln!(io::stderr(), "heapwright: {failure}");
            ExitCode::from(failure.exit_code())
        }
    }
}

fn run(command: Command, out: &mut impl Write) -> Result<(), Failure> {
    match command {
        Command::Mix(arguments) => commands::mix::run(&arguments, out),
        Command::Balance(arguments) => commands::balance::run(&arguments, out),
        Command::Materials(arguments) => commands::materials::run(&arguments, out),
        Command::Serve(arguments) => commands::serve::run(&arguments, out),
        Command::Schema(arguments) => commands::schema::run(&arguments, out),
        Command::Completions(arguments) => commands::completions::run(&arguments, out),
        Command::Manual => commands::manual::run(out),
    }
}
