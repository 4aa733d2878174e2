//! `heapwright import`: a journal or a logger's table taken in, after telling what would come of it.

mod journal;
mod logger;

use std::fs::File;
use std::io::{self, IsTerminal, Read, Write};
use std::path::Path;

use heapwright_journal::{Content, LARGEST_FILE_BYTES, Line, Moment};
use heapwright_wire::ImportJson;

use crate::arguments::ImportArguments;
use crate::commands::mix::WIDTH;
use crate::edges::new_device;
use crate::failure::Failure;
use crate::keeping::Keeping;
use crate::table::write_paragraph;
use crate::telling::{counted, entries, write_json};

/// How many ids of conflicts the text lists.
const MOST_CONFLICTS: usize = 5;
/// How many faults the text lists.
const MOST_FAULTS: usize = 10;

/// What would come of taking in a file.
struct Coming {
    answer: ImportJson,
    new: New,
}

/// What is new.
enum New {
    /// Lines of another journal.
    Lines(Vec<Line>),
    /// Readings of a logger.
    Readings(Vec<(Content, Moment)>),
}

/// Runs the command.
pub fn run(arguments: &ImportArguments, out: &mut impl Write) -> Result<(), Failure> {
    let bytes = read(&arguments.file)?;
    let mut keeping = Keeping::to_write(&arguments.journal)?;
    let mut coming = if is_journal(&bytes) {
        journal::look(&keeping, &bytes)
    } else {
        logger::look(&keeping, arguments, &bytes)?
    };
    let refused = refused(&coming.answer, arguments);
    let json = arguments.journal.json;
    if !json {
        write_text(&coming.answer, out)?;
    }
    let write = refused.is_none()
        && coming.answer.new > 0
        && !arguments.dry_run
        && (arguments.yes || (!json && asked(out)?));
    if write {
        let count = add(&mut keeping, coming.new)?;
        coming.answer.written = true;
        if !json {
            writeln!(out, "Written: {}.", entries(count as u64))?;
        }
    }
    if json {
        write_json(&coming.answer, out)?;
    }
    match refused {
        Some(sentence) => {
            out.flush()?;
            Err(Failure::Input(sentence))
        }
        None if write || arguments.dry_run || coming.answer.new == 0 => Ok(()),
        None => {
            out.flush()?;
            Err(Failure::Input(
                "nothing was written: say --yes to take it in".to_owned(),
            ))
        }
    }
}

/// Why a file is not taken in.
fn refused(answer: &ImportJson, arguments: &ImportArguments) -> Option<String> {
    let entries = answer.new + answer.known;
    if entries == 0 && (answer.fault_count > 0 || answer.kind == "journal") {
        return Some(
            "there is no entry in this file: name a journal that was exported, or the table of a logger"
                .to_owned(),
        );
    }
    if arguments.skip_faulty {
        return None;
    }
    if answer.fault_count > 0 {
        return Some(format!(
            "{} cannot be used and nothing was written: put that right, or leave it out with --skip-faulty",
            counted(answer.fault_count, "line", "lines")
        ));
    }
    (!answer.whole).then(|| {
        "the file is not what its header says, so that some of it is missing or changed: export it again, or take in what there is with --skip-faulty"
            .to_owned()
    })
}

fn is_journal(bytes: &[u8]) -> bool {
    let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
    bytes
        .iter()
        .find(|byte| !byte.is_ascii_whitespace())
        .is_some_and(|byte| *byte == b'{')
}

fn read(path: &Path) -> Result<Vec<u8>, Failure> {
    let name = if path == Path::new("-") {
        "standard input".to_owned()
    } else {
        path.display().to_string()
    };
    let failed = |error| Failure::Read {
        path: name.clone(),
        error,
    };
    // One byte more than is read, so that what is too large is seen to be.
    let most = LARGEST_FILE_BYTES + 1;
    let mut bytes = Vec::new();
    if path == Path::new("-") {
        io::stdin().lock().take(most).read_to_end(&mut bytes)
    } else {
        File::open(path).and_then(|file| file.take(most).read_to_end(&mut bytes))
    }
    .map_err(failed)?;
    if bytes.len() as u64 >= most {
        return Err(Failure::Input(format!(
            "{name} has more than {} MiB: split it",
            LARGEST_FILE_BYTES >> 20
        )));
    }
    Ok(bytes)
}

/// Asks whoever sits at the terminal, if somebody does.
fn asked(out: &mut impl Write) -> Result<bool, Failure> {
    if !io::stdin().is_terminal() || !io::stdout().is_terminal() {
        return Ok(false);
    }
    write!(out, "Take it in? [y/N] ")?;
    out.flush()?;
    let mut answer = String::new();
    io::stdin()
        .read_line(&mut answer)
        .map_err(|error| Failure::Read {
            path: "the terminal".to_owned(),
            error,
        })?;
    Ok(matches!(answer.trim().to_lowercase().as_str(), "y" | "yes"))
}

fn add(keeping: &mut Keeping, new: New) -> Result<usize, Failure> {
    match new {
        New::Lines(lines) => keeping.keep(&lines, new_device()?),
        New::Readings(readings) => keeping.add_each(readings, None).map(|ids| ids.len()),
    }
}

fn write_text(answer: &ImportJson, out: &mut impl Write) -> Result<(), Failure> {
    if answer.other_garden {
        write_paragraph(
            out,
            "",
            "This may be the journal of another garden: neither has an entry of the other. Taken in, the two become one for good.",
            WIDTH,
        )?;
        writeln!(out)?;
    }
    writeln!(out, "New: {}.", entries(answer.new))?;
    writeln!(out, "There already: {}.", entries(answer.known))?;
    if !answer.conflicts.is_empty() {
        writeln!(
            out,
            "Under the id of an entry with other content, so that both are kept: {}.",
            entries(answer.conflicts.len() as u64)
        )?;
        for id in answer.conflicts.iter().take(MOST_CONFLICTS) {
            writeln!(out, "  {id}")?;
        }
    }
    if answer.ahead > 0 {
        writeln!(
            out,
            "Stamped more than a day ahead of the clock here: {}.",
            entries(answer.ahead)
        )?;
    }
    for (kind, count) in &answer.not_understood {
        writeln!(
            out,
            "Not understood, but kept and passed on: {} of the kind \"{kind}\".",
            entries(*count)
        )?;
    }
    if answer.fault_count > 0 {
        let lines = counted(answer.fault_count, "line", "lines");
        writeln!(out, "Of no use: {lines}.")?;
        for fault in answer.faults.iter().take(MOST_FAULTS) {
            writeln!(out, "  line {}: {}", fault.line, fault.what)?;
        }
    }
    for notice in &answer.notices {
        write_paragraph(out, "", notice, WIDTH)?;
    }
    Ok(())
}
