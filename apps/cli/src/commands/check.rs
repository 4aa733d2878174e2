//! `heapwright check`: is the journal as it was written?

use std::collections::{BTreeMap, BTreeSet};
use std::io::Write;

use heapwright_journal::store::DamageKind;
use heapwright_journal::{Content, What};
use heapwright_store::{Report, Sqlite, StoreError, Why, check};
use heapwright_wire::CheckJson;

use crate::arguments::CheckArguments;
use crate::commands::mix::WIDTH;
use crate::failure::Failure;
use crate::keeping::{Keeping, journal_path};
use crate::table::write_paragraph;
use crate::telling::{entries, pictures, write_json};

/// The most sentences about damage; more are counted.
const MOST_DAMAGE: usize = 20;

/// Runs the command. Damage is a failure, told when all that was found is told.
pub fn run(arguments: &CheckArguments, out: &mut impl Write) -> Result<(), Failure> {
    let path = journal_path(arguments.journal.garden.as_deref())?;
    let report = match check(&path) {
        Err(StoreError {
            why: Why::NotFound, ..
        }) => return Keeping::to_read(&arguments.journal).map(|_| ()),
        report => report?,
    };
    let sound = report.is_sound();
    let damage = damage(&report);
    let mut conflicts = Vec::new();
    let mut not_understood: BTreeMap<String, u64> = BTreeMap::new();
    // A damaged one says so here, on standard error.
    let mut keeping = Keeping::to_read(&arguments.journal)?;
    conflicts.extend(keeping.state.conflicts().iter().map(ToString::to_string));
    for entry in keeping.state.entries() {
        if let Some(What::Unknown(unknown)) = entry.recorded().map(|event| &event.what) {
            *not_understood.entry(unknown.kind.clone()).or_default() += 1;
        }
    }
    let answer = CheckJson {
        journal: path.display().to_string(),
        sound,
        entries: report.lines,
        searched_out: report.searched_out,
        lost: report.lost,
        pictures: report.pictures,
        pictures_missing: pictures_missing(&mut keeping)?,
        damage,
        conflicts,
        not_understood,
        digest: report.digest.map(|digest| digest.to_string()),
    };
    if arguments.journal.json {
        write_json(&answer, out)?;
    } else {
        write_text(&answer, out)?;
    }
    if sound {
        Ok(())
    } else {
        out.flush()?;
        Err(Failure::Outside(format!(
            "{} is damaged: save what is sound with `heapwright restore --from-damaged`, or bring back a backup",
            answer.journal
        )))
    }
}

/// How many pictures notes name that are not there, be they sound or damaged.
fn pictures_missing(keeping: &mut Keeping) -> Result<u64, Failure> {
    let kept = match keeping.store().map(Sqlite::pictures) {
        // That they cannot be listed is told as damage.
        Some(Err(error)) if error.why == Why::Damaged => return Ok(0),
        kept => kept.transpose()?.unwrap_or_default(),
    };
    let kept: BTreeSet<String> = kept.iter().map(ToString::to_string).collect();
    let named: BTreeSet<&str> = keeping
        .state
        .entries()
        .filter_map(|entry| match entry.counts()?.content()? {
            Content::Noted(noted) => Some(noted.picture.as_ref()?.sha256.as_str()),
            _ => None,
        })
        .collect();
    Ok(named.iter().filter(|name| !kept.contains(**name)).count() as u64)
}

fn write_text(answer: &CheckJson, out: &mut impl Write) -> Result<(), Failure> {
    writeln!(
        out,
        "{}: {} and {} can be read.",
        answer.journal,
        entries(answer.entries),
        pictures(answer.pictures)
    )?;
    for line in &answer.damage {
        write_paragraph(out, "  ", line, WIDTH)?;
    }
    if answer.searched_out > 0 {
        writeln!(
            out,
            "{} had to be searched for in the bytes of the file.",
            entries(answer.searched_out)
        )?;
    }
    if answer.lost > 0 {
        writeln!(out, "Lost: {}.", entries(answer.lost))?;
    }
    if answer.pictures_missing > 0 {
        writeln!(
            out,
            "Named by notes, but not here: {}; a backup that has them brings them back.",
            pictures(answer.pictures_missing)
        )?;
    }
    for id in &answer.conflicts {
        writeln!(
            out,
            "More than one entry came under the id {id}; all are kept, the first counts."
        )?;
    }
    for (kind, count) in &answer.not_understood {
        writeln!(
            out,
            "Not understood, but kept and passed on: {} of the kind \"{kind}\".",
            entries(*count)
        )?;
    }
    if answer.sound {
        writeln!(out, "Everything is as it was written.")?;
    }
    Ok(())
}

/// What is not as it was written, as sentences.
fn damage(report: &Report) -> Vec<String> {
    let mut told: Vec<String> = report
        .damage
        .iter()
        .map(|damage| {
            let position = damage.position;
            match damage.kind {
                DamageKind::Changed => format!("Entry {position} has changed and is left out."),
                DamageKind::ChainBroken => {
                    format!("Entries before entry {position} are missing or out of place.")
                }
                DamageKind::Missing => format!("Entry {position} is missing."),
            }
        })
        .collect();
    let more = told.len().saturating_sub(MOST_DAMAGE);
    told.truncate(MOST_DAMAGE);
    if more > 0 {
        told.push(format!("So are {more} more places."));
    }
    told.extend(
        report
            .structure
            .iter()
            .map(|what| format!("The file itself is damaged: {what}.")),
    );
    told.extend(
        report
            .facts_damaged
            .iter()
            .map(|name| format!("What this device keeps as \"{name}\" has changed.")),
    );
    told.extend(
        report
            .pictures_damaged
            .iter()
            .map(|digest| format!("The picture {digest} has changed or cannot be read.")),
    );
    if report.device.is_none() {
        told.push("The id of the device cannot be read.".to_owned());
    }
    told
}
