//! `heapwright calendar`: reminders for a calendar program, in a file that it can follow.

use std::fs::File;
use std::io::{Read, Write};
use std::path::{Path, PathBuf};

use heapwright_answers::today::today;
use heapwright_calendar::{Telling, calendar};

use crate::arguments::{CalendarArguments, JournalArguments, LanguageArgument, UnitsArgument};
use crate::failure::Failure;
use crate::keeping::{Keeping, catalogue};
use crate::languages::spoken;
use crate::written::write_to;

/// With what every file of reminders begins.
const BEGINNING: &[u8] = b"BEGIN:VCALENDAR";

/// Runs the command.
pub fn run(arguments: &CalendarArguments, out: &mut impl Write) -> Result<(), Failure> {
    let path = arguments
        .output
        .as_deref()
        .filter(|path| *path != Path::new("-"));
    if let Some(path) = path {
        check_calendar(path)?;
    }
    let text = reminders(
        arguments.garden.clone(),
        arguments.units,
        arguments.language,
    )?;
    write_to(path, true, out, |out| out.write_all(text.as_bytes()))?;
    if let Some(path) = path {
        writeln!(out, "Written to {}.", path.display())?;
    }
    Ok(())
}

/// The reminders of a journal as it is now.
pub fn reminders(
    garden: Option<PathBuf>,
    units: Option<UnitsArgument>,
    language: LanguageArgument,
) -> Result<String, Failure> {
    let keeping = Keeping::to_read(&JournalArguments {
        garden,
        json: false,
        units,
    })?;
    let garden = keeping.garden();
    let answer = today(catalogue(), &garden, &keeping.state, keeping.edges.now);
    let spoken = spoken(language)?;
    let telling = Telling {
        catalogue: spoken.catalogue(),
        garden: &garden,
        state: &keeping.state,
        locale: spoken.locale().with_units(keeping.locale().units),
    };
    Ok(calendar(&telling, &answer))
}

/// Only what is a calendar already is written over without asking.
fn check_calendar(path: &Path) -> Result<(), Failure> {
    let Ok(file) = File::open(path) else {
        return Ok(());
    };
    if !path.is_file() {
        return Ok(());
    }
    let mut found = Vec::new();
    let read = file
        .take(BEGINNING.len() as u64)
        .read_to_end(&mut found)
        .is_ok();
    if read && !found.is_empty() && found != BEGINNING {
        return Err(Failure::Input(format!(
            "{} is there already and is no calendar: choose another name",
            path.display()
        )));
    }
    Ok(())
}
