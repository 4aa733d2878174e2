//! `heapwright schema`: the JSON Schema of a file or an answer.

use std::io::Write;

use heapwright_wire::SCHEMAS;

use crate::arguments::SchemaArguments;
use crate::failure::Failure;

/// The schema of a line of a journal file, which stands with the journal.
const JOURNAL_LINE: &str = "journal-line";

/// Runs the command.
pub fn run(arguments: &SchemaArguments, out: &mut impl Write) -> Result<(), Failure> {
    let names: Vec<&str> = SCHEMAS
        .iter()
        .map(|schema| schema.name)
        .chain([JOURNAL_LINE])
        .collect();
    let Some(name) = &arguments.name else {
        for name in names {
            writeln!(out, "{name}")?;
        }
        return Ok(());
    };
    let made = match SCHEMAS.iter().find(|schema| schema.name == name.as_str()) {
        Some(schema) => (schema.make)().to_value(),
        None if name == JOURNAL_LINE => heapwright_journal::line_schema(),
        None => {
            return Err(Failure::Input(format!(
                "there is no schema \"{name}\": use one of {}",
                names.join(", ")
            )));
        }
    };
    serde_json::to_writer_pretty(&mut *out, &made).map_err(std::io::Error::from)?;
    writeln!(out)?;
    Ok(())
}
