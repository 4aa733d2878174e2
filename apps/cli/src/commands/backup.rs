//! `heapwright backup`: the journal with its pictures, copied and read back.

use std::io::Write;

use heapwright_store::{Existing, StoreError, Why};
use heapwright_wire::CopiedJson;

use crate::arguments::BackupArguments;
use crate::commands::export::note_export;
use crate::failure::Failure;
use crate::keeping::Keeping;
use crate::telling::{entries, pictures, write_json};

/// Runs the command.
pub fn run(arguments: &BackupArguments, out: &mut impl Write) -> Result<(), Failure> {
    let mut keeping = Keeping::to_read(&arguments.journal)?;
    let existing = if arguments.replace {
        Existing::Replace
    } else {
        Existing::Keep
    };
    let same = |one: &std::path::Path| one.canonicalize().ok();
    if same(&arguments.file).is_some() && same(&arguments.file) == same(keeping.path()) {
        return Err(Failure::Input(format!(
            "{} is the journal itself: name another file",
            arguments.file.display()
        )));
    }
    let Some(store) = keeping.store() else {
        return Err(Failure::Outside("there is no journal yet".to_owned()));
    };
    let report = store
        .backup(&arguments.file, existing)
        .map_err(|error| match error {
            StoreError {
                why: Why::Exists,
                path,
            } => Failure::Input(format!(
                "{} is there already: choose another name, or say --replace",
                path.display()
            )),
            error => Failure::Store(error),
        })?;
    note_export(&mut keeping);
    if arguments.journal.json {
        let answer = CopiedJson {
            journal: keeping.shown_path(),
            file: arguments.file.display().to_string(),
            entries: report.lines,
            new: None,
            pictures: report.pictures,
            digest: Some(report.digest.to_string()),
        };
        return write_json(&answer, out);
    }
    writeln!(
        out,
        "Copied to {} and read back: {} and {}.",
        arguments.file.display(),
        entries(report.lines),
        pictures(report.pictures)
    )?;
    Ok(())
}
