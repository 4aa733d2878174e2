//! `heapwright schema`: the JSON Schema of a file or an answer.

use std::io::Write;

use heapwright_wire::SCHEMAS;

use crate::arguments::SchemaArguments;
use crate::failure::Failure;

/// Runs the command.
pub fn run(arguments: &SchemaArguments, out: &mut impl Write) -> Result<(), Failure> {
    let Some(name) = &arguments.name else {
        for schema in &SCHEMAS {
            writeln!(out, "{}", schema.name)?;
        }
        return Ok(());
    };
    let Some(schema) = SCHEMAS.iter().find(|schema| schema.name == name.as_str()) else {
        let known: Vec<&str> = SCHEMAS.iter().map(|schema| schema.name).collect();
        return Err(Failure::Input(format!(
            "there is no schema \"{name}\": use one of {}",
            known.join(", ")
        )));
    };
    serde_json::to_writer_pretty(&mut *out, &(schema.make)()).map_err(std::io::Error::from)?;
    writeln!(out)?;
    Ok(())
}
