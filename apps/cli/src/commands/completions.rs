//! `heapwright completions`: completions for a shell.

use std::io::Write;

use clap::CommandFactory;

use crate::arguments::{Arguments, CompletionsArguments};
use crate::failure::Failure;

/// Runs the command.
pub fn run(arguments: &CompletionsArguments, out: &mut impl Write) -> Result<(), Failure> {
    let mut text = Vec::new();
    clap_complete::generate(
        arguments.shell,
        &mut Arguments::command(),
        "heapwright",
        &mut text,
    );
    out.write_all(&text)?;
    Ok(())
}
