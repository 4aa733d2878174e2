//! Rules of the project that no compiler knows: who may import whom ([`imports`]), named paths exist ([`paths`]), modules say
//! what they are ([`modules`]), sources resolve ([`sources`]), words that have no place here ([`words`]). Long files are told,
//! not refused.

mod imports;
mod modules;
mod paths;
mod sources;
mod words;

use std::fs;
use std::path::Path;

use crate::Outcome;
use crate::workspace::root;

/// Lines above which a file is worth a second look.
const LONG_FILE_LINES: usize = 600;

/// Folders that hold nothing of our own.
const NOT_OURS: [&str; 4] = [".git", "target", "dist", "node_modules"];

/// A text file of the project.
pub struct File {
    /// Path below the project's folder, with `/` between folders.
    pub path: String,
    /// What it says.
    pub text: String,
}

/// What one rule found.
#[derive(Default)]
pub struct Findings {
    /// What must be put right: one sentence each, with the file and line.
    pub faults: Vec<String>,
    /// What is only told.
    pub notes: Vec<String>,
}

/// Applies every rule.
pub fn tidy() -> Outcome {
    let root = root();
    let files = text_files(&root)?;
    let mut findings = Findings::default();
    for more in [
        imports::check(&files)?,
        paths::check(&files, &root),
        modules::check(&files),
        sources::check(&files),
        words::check(&files),
        long_files(&files),
    ] {
        findings.faults.extend(more.faults);
        findings.notes.extend(more.notes);
    }
    for note in &findings.notes {
        println!("note: {note}");
    }
    for fault in &findings.faults {
        println!("fault: {fault}");
    }
    if findings.faults.is_empty() {
        println!("tidy: {} files, no fault", files.len());
        return Ok(());
    }
    Err(format!(
        "{} faults; each line above says what to put right",
        findings.faults.len()
    ))
}

fn long_files(files: &[File]) -> Findings {
    let lines = |file: &File| file.text.lines().count();
    let notes = files
        .iter()
        .filter(|file| file.path.ends_with(".rs") && lines(file) > LONG_FILE_LINES)
        .map(|file| {
            format!(
                "{} has {} lines; does it still mean one thing?",
                file.path,
                lines(file)
            )
        })
        .collect();
    Findings {
        notes,
        ..Findings::default()
    }
}

/// Every text file of the project, in the order of their paths.
fn text_files(root: &Path) -> Outcome<Vec<File>> {
    let mut files = Vec::new();
    let mut folders = vec![root.to_path_buf()];
    while let Some(folder) = folders.pop() {
        let unreadable =
            |error: std::io::Error| format!("{} could not be read: {error}", folder.display());
        for entry in fs::read_dir(&folder).map_err(unreadable)? {
            let entry = entry.map_err(unreadable)?;
            let path = entry.path();
            let name = entry.file_name();
            let kind = entry.file_type().map_err(unreadable)?;
            if kind.is_dir() {
                if !NOT_OURS.iter().any(|other| name == *other) {
                    folders.push(path);
                }
            } else if kind.is_file() {
                let bytes = fs::read(&path)
                    .map_err(|error| format!("{} could not be read: {error}", path.display()))?;
                // Whatever is not UTF-8 is a picture or the like, and has nothing to say here.
                if let Ok(text) = String::from_utf8(bytes) {
                    files.push(File {
                        path: below(root, &path),
                        text,
                    });
                }
            }
        }
    }
    files.sort_by(|one, other| one.path.cmp(&other.path));
    Ok(files)
}

fn below(root: &Path, path: &Path) -> String {
    let parts = path.strip_prefix(root).unwrap_or(path).components();
    parts
        .map(|part| part.as_os_str().to_string_lossy().into_owned())
        .collect::<Vec<_>>()
        .join("/")
}

/// The lines of a file with their numbers, counted from 1.
pub fn numbered(file: &File) -> impl Iterator<Item = (usize, &str)> {
    file.text
        .lines()
        .enumerate()
        .map(|(index, line)| (index + 1, line))
}

#[cfg(test)]
pub fn file(path: &str, text: &str) -> File {
    File {
        path: path.to_owned(),
        text: text.to_owned(),
    }
}
