//! `heapwright restore`: a backup brought back, or what is sound in a damaged journal.

use std::io::Write;
use std::path::Path;

use heapwright_store::{Sqlite, mend, restore, salvage};
use heapwright_wire::CopiedJson;

use crate::arguments::RestoreArguments;
use crate::edges::new_device;
use crate::failure::Failure;
use crate::keeping::{Keeping, journal_path};
use crate::telling::{entries, pictures, write_json};

/// Runs the command.
pub fn run(arguments: &RestoreArguments, out: &mut impl Write) -> Result<(), Failure> {
    let path = journal_path(arguments.journal.garden.as_deref())?;
    let mut answer = CopiedJson {
        journal: path.display().to_string(),
        file: arguments.file.as_ref().map_or_else(
            || path.display().to_string(),
            |file| file.display().to_string(),
        ),
        entries: 0,
        new: None,
        pictures: 0,
        digest: None,
    };
    let told = match (&arguments.file, arguments.from_damaged) {
        (Some(file), false) if is_same(file, &path) => {
            return Err(Failure::Input(format!(
                "{} is the journal itself: name a backup",
                file.display()
            )));
        }
        (Some(file), true) if !is_same(file, &path) => taken_in(file, arguments, &mut answer)?,
        (Some(file), false) => {
            let report = restore(file, &path, new_device()?)?;
            answer.entries = report.lines;
            answer.new = Some(report.new_lines);
            answer.pictures = report.pictures;
            if report.joined {
                format!(
                    "The backup has {}; new to the journal: {}.",
                    entries(report.lines),
                    report.new_lines
                )
            } else {
                format!(
                    "Brought back to {}: {} and {}.",
                    answer.journal,
                    entries(report.lines),
                    pictures(report.pictures)
                )
            }
        }
        _ => mended(&path, &mut answer)?,
    };
    if arguments.journal.json {
        return write_json(&answer, out);
    }
    writeln!(out, "{told}")?;
    Ok(())
}

fn is_same(one: &Path, other: &Path) -> bool {
    let real = one.canonicalize().ok();
    one == other || (real.is_some() && real == other.canonicalize().ok())
}

/// A new journal of all that is sound in the damaged one.
fn mended(path: &Path, answer: &mut CopiedJson) -> Result<String, Failure> {
    // A sound one stays as it is.
    if Sqlite::open_to_read(path)?.report()?.is_sound() {
        return Err(Failure::Input(format!(
            "{} is sound: there is nothing to put right",
            path.display()
        )));
    }
    let mended = mend(path, new_device()?)?;
    answer.entries = mended.lines;
    answer.pictures = mended.pictures;
    Ok(format!(
        "Saved: {} and {}; lost: {}. The damaged file is now {}.",
        entries(mended.lines),
        pictures(mended.pictures),
        entries(mended.lost),
        mended.damaged.display()
    ))
}

/// All that is sound in a damaged file, taken into the journal.
fn taken_in(
    file: &Path,
    arguments: &RestoreArguments,
    answer: &mut CopiedJson,
) -> Result<String, Failure> {
    let salvaged = salvage(file)?;
    let lines: Vec<_> = salvaged.lines.into_iter().map(|found| found.line).collect();
    if lines.is_empty() {
        return Err(Failure::Input(format!(
            "{} holds no entry that can be read: name another file",
            file.display()
        )));
    }
    let mut keeping = Keeping::to_write(&arguments.journal)?;
    let device = new_device()?;
    // The journal is made where there is none. Pictures first: lines name them.
    keeping.keep(&[], device)?;
    let (taken, lost) = match keeping.store() {
        Some(store) => store.take_pictures(file)?,
        None => (0, Vec::new()),
    };
    let new = keeping.keep(&lines, device)?;
    answer.entries = lines.len() as u64;
    answer.new = Some(new as u64);
    answer.pictures = taken;
    let mut told = format!(
        "Found in {}: {} and {}; new to the journal: {new}.",
        file.display(),
        entries(answer.entries),
        pictures(taken)
    );
    if !lost.is_empty() {
        told.push_str(&format!(
            " Not to be read any more: {}.",
            pictures(lost.len() as u64)
        ));
    }
    Ok(told)
}
