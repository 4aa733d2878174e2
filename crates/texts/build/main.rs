//! Turns the Fluent files of `locales` into functions with named and typed arguments, and into one compact pack a language.
//!
//! Everything that a translator can get wrong stops the build with one sentence: a message that is
//! missing or too many, an argument that English does not have, a plural without `other`.

#![allow(clippy::print_stdout)] // how a build script speaks to Cargo

mod emit;
mod message;
mod read;

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::{env, fs};

use message::{File, Message};

/// The language that every other is held against.
const SOURCE: &str = "en";

fn main() {
    if let Err(sentence) = build() {
        println!("cargo::error={sentence}");
        std::process::exit(1);
    }
}

fn build() -> Result<(), String> {
    println!("cargo::rerun-if-changed=locales");
    println!("cargo::rerun-if-changed=build");
    let out = PathBuf::from(env::var("OUT_DIR").map_err(|error| error.to_string())?);
    let source = language(Path::new("locales").join(SOURCE).as_path())?;
    let mut others = BTreeMap::new();
    for folder in entries(Path::new("locales"))? {
        let name = file_name(&folder);
        if folder.is_dir() && name != SOURCE {
            let translated = language(&folder)?;
            held_against(&source, &translated).map_err(|why| format!("locales/{name}: {why}"))?;
            others.insert(name, translated);
        }
    }
    write(&out.join("messages.rs"), &emit::functions(&source))?;
    for (name, files) in &others {
        write(
            &out.join(format!("{name}.pack")),
            &emit::pack(&source, files),
        )?;
    }
    Ok(())
}

fn write(path: &Path, text: &str) -> Result<(), String> {
    fs::write(path, text)
        .map_err(|error| format!("{} could not be written: {error}", path.display()))
}

fn entries(folder: &Path) -> Result<Vec<PathBuf>, String> {
    let failed = |error: std::io::Error| format!("{} could not be read: {error}", folder.display());
    let mut paths = fs::read_dir(folder)
        .map_err(failed)?
        .map(|entry| entry.map(|entry| entry.path()))
        .collect::<Result<Vec<_>, _>>()
        .map_err(failed)?;
    paths.sort();
    Ok(paths)
}

fn file_name(path: &Path) -> String {
    path.file_stem()
        .unwrap_or_default()
        .to_string_lossy()
        .into_owned()
}

/// The files of a language by name.
fn language(folder: &Path) -> Result<BTreeMap<String, File>, String> {
    let mut sources = BTreeMap::new();
    for path in entries(folder)? {
        if path.extension().is_some_and(|extension| extension == "ftl") {
            let text = fs::read_to_string(&path)
                .map_err(|error| format!("{} could not be read: {error}", path.display()))?;
            sources.insert(file_name(&path), text);
        }
    }
    read::language(&sources).map_err(|why| format!("{}/{why}", folder.display()))
}

/// Says in what a translation differs from the source, where it may not.
fn held_against(
    source: &BTreeMap<String, File>,
    translated: &BTreeMap<String, File>,
) -> Result<(), String> {
    for (name, file) in source {
        let other = translated
            .get(name)
            .ok_or_else(|| format!("{name}.ftl is missing"))?;
        for message in file {
            let found = other
                .iter()
                .find(|found| found.id == message.id)
                .ok_or_else(|| format!("{name}.ftl: `{}` is not translated", message.id))?;
            same_arguments(message, found).map_err(|why| format!("{name}.ftl: {why}"))?;
        }
        if let Some(extra) = other
            .iter()
            .find(|found| file.iter().all(|message| message.id != found.id))
        {
            return Err(format!("{name}.ftl: `{}` is not in {SOURCE}", extra.id));
        }
    }
    match translated.keys().find(|name| !source.contains_key(*name)) {
        Some(name) => Err(format!("{name}.ftl is not in {SOURCE}")),
        None => Ok(()),
    }
}

/// A translation may leave out an argument, never bring its own or take it for another kind.
fn same_arguments(message: &Message, found: &Message) -> Result<(), String> {
    for (name, kind) in &found.arguments {
        match message.arguments.iter().find(|(known, _)| known == name) {
            None => {
                return Err(format!(
                    "`{}` has an argument `${name}` of its own",
                    found.id
                ));
            }
            Some((_, known)) if known != kind && *kind == message::Kind::Number => {
                return Err(format!(
                    "`{}` takes the text `${name}` for a number",
                    found.id
                ));
            }
            Some(_) => {}
        }
    }
    Ok(())
}
