//! `heapwright manual`: the manual page, one part for the program and one for each command.

use std::io::Write;

use clap::CommandFactory;

use crate::arguments::Arguments;
use crate::failure::Failure;

/// Runs the command.
pub fn run(out: &mut impl Write) -> Result<(), Failure> {
    let mut command = Arguments::command();
    command.build();
    clap_mangen::Man::new(command.clone()).render(out)?;
    parts(&command, out)
}

fn parts(command: &clap::Command, out: &mut impl Write) -> Result<(), Failure> {
    for part in command
        .get_subcommands()
        .filter(|part| part.get_name() != "help")
    {
        clap_mangen::Man::new(part.clone()).render(out)?;
        parts(part, out)?;
    }
    Ok(())
}
