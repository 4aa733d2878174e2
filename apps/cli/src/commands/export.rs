//! `heapwright export`: the journal, or tables of it, in a file of its own.

use std::io::Write;
use std::path::Path;

use heapwright_journal::store::{Store, facts};
use heapwright_journal::{Header, Line};
use heapwright_spreadsheet::{log_csv, readings_csv};
use heapwright_store::finished;
use heapwright_wire::CopiedJson;

use crate::arguments::{ExportArguments, Table};
use crate::failure::Failure;
use crate::keeping::{Keeping, catalogue};
use crate::telling::{entries, write_json};
use crate::written::write_to;

/// Runs the command.
pub fn run(arguments: &ExportArguments, out: &mut impl Write) -> Result<(), Failure> {
    let mut keeping = Keeping::to_read(&arguments.journal)?;
    let to_file = arguments
        .file
        .as_deref()
        .filter(|path| *path != Path::new("-"));
    if arguments.journal.json && to_file.is_none() {
        return Err(Failure::Input(
            "standard output can take the export or the answer of --json: name a file".to_owned(),
        ));
    }
    let mut answer = CopiedJson {
        journal: keeping.shown_path(),
        file: to_file.map_or_else(|| "-".to_owned(), |path| path.display().to_string()),
        entries: 0,
        new: None,
        pictures: 0,
        digest: None,
    };
    let locale = keeping.locale();
    let heap = arguments
        .heap
        .as_deref()
        .map(|text| keeping.heap(Some(text)))
        .transpose()?;
    match arguments.csv {
        Some(table) => {
            let text = match table {
                Table::Log => log_csv(catalogue(), &keeping.state, locale),
                Table::Readings => readings_csv(&keeping.state, heap),
            };
            answer.entries = keeping.state.lines() as u64;
            write_to(to_file, arguments.replace, out, |out| {
                out.write_all(text.as_bytes())
            })?;
        }
        None => {
            let (lines, whole) = lines(&mut keeping)?;
            if !whole && !arguments.skip_faulty {
                return Err(Failure::Outside(format!(
                    "{} is damaged and nothing was exported: export what can be read with --skip-faulty",
                    keeping.path().display()
                )));
            }
            // A header says that the file is whole.
            let header = whole.then(|| {
                let digests = lines.iter().map(Line::digest).collect();
                Header::of(digests, keeping.edges.now)
            });
            answer.entries = lines.len() as u64;
            answer.digest = header.as_ref().map(|header| header.digest.clone());
            write_to(to_file, arguments.replace, out, |out| {
                if let Some(header) = &header {
                    writeln!(out, "{}", header.line())?;
                }
                lines
                    .iter()
                    .try_for_each(|line| writeln!(out, "{}", line.text()))
            })?;
            if whole {
                note_export(&mut keeping);
            }
        }
    }
    if arguments.journal.json {
        return write_json(&answer, out);
    }
    if to_file.is_some() {
        writeln!(
            out,
            "Written to {}: {}.",
            answer.file,
            entries(answer.entries)
        )?;
    }
    Ok(())
}

/// All lines of a journal that can be read, and whether these are all that there were.
fn lines(keeping: &mut Keeping) -> Result<(Vec<Line>, bool), Failure> {
    let mut lines = Vec::new();
    let mut whole = true;
    if let Some(store) = keeping.store() {
        let through = finished(store.read(0, &mut |line| lines.push(line)))?;
        whole = through.damage.is_empty() && !store.is_damaged();
    }
    Ok((lines, whole))
}

/// Remembers when the journal was last brought to another file. A journal that can only be read
/// is exported all the same.
pub fn note_export(keeping: &mut Keeping) {
    let now = keeping.edges.now.to_string();
    let _ = keeping.set_fact(facts::LAST_EXPORT, &now);
}
