//! Reads the tables, stops the build with table, row and column when one is wrong, and writes them as terse text.

#![allow(clippy::print_stdout)] // how a build script speaks to Cargo

mod emit;
#[allow(dead_code)] // the search uses more of it
#[path = "../src/normalise.rs"]
mod normalise;
mod rules;
mod seasons;
mod spreading;
mod tables;
mod words;

use std::path::PathBuf;
use std::process::ExitCode;

fn main() -> ExitCode {
    let home = PathBuf::from(std::env::var_os("CARGO_MANIFEST_DIR").unwrap_or_default());
    println!("cargo::rerun-if-changed=build");
    println!("cargo::rerun-if-changed=src/normalise.rs");
    println!("cargo::rerun-if-changed=tables");
    let text_of = |file: &str| {
        let path = home.join("tables").join(file);
        std::fs::read_to_string(&path).unwrap_or_else(|error| panic!("tables/{file}: {error}"))
    };
    let tables = match tables::Tables::read(text_of) {
        Ok(tables) => tables,
        Err(fault) => return stop(&[fault]),
    };
    let mut faults = rules::faults(&tables);
    faults.extend(spreading::faults(&tables));
    faults.extend(seasons::faults(&tables));
    if !faults.is_empty() {
        return stop(&faults);
    }
    let texts = match (emit::texts(&tables), spreading::texts(&tables)) {
        (Ok(texts), Ok(more)) => texts
            .into_iter()
            .chain(more)
            .chain([seasons::texts(&tables)]),
        (Err(fault), _) | (_, Err(fault)) => return stop(&[fault]),
    };
    let languages = match words::languages(&home.join("tables")) {
        Ok(languages) => languages,
        Err(sentence) => {
            println!("cargo::error={sentence}");
            return ExitCode::FAILURE;
        }
    };
    let languages = languages
        .into_iter()
        .map(|(tag, words)| (format!("{tag}.words"), words));
    let out = PathBuf::from(std::env::var_os("OUT_DIR").unwrap_or_default());
    for (file, text) in texts
        .map(|(file, text)| (file.to_string(), text))
        .chain(languages)
    {
        if let Err(error) = std::fs::write(out.join(&file), text) {
            println!("cargo::error={file} cannot be written: {error}");
            return ExitCode::FAILURE;
        }
    }
    ExitCode::SUCCESS
}

fn stop(faults: &[tables::Fault]) -> ExitCode {
    for fault in faults {
        println!("cargo::error={fault}");
    }
    ExitCode::FAILURE
}
