//! Makes the page: wasm from `apps/web`, its script glue, and the files of `apps/web/static`, ready to be served from `dist`.
//!
//! 1. Build `heapwright-web` for wasm32, put what is marked as needed later into a file of its own ([`crate::parts`]),
//!    and let wasm-bindgen write the glue; the same, undivided, for `heapwright-simulator` and `heapwright-press`, which workers run.
//! 2. Write the texts of each other language into a file of its own ([`crate::languages`]).
//! 3. Take the comments out of the styles ([`crate::style`]), put a content hash into the names of scripts, styles and wasm, and rewrite the references ([`crate::naming`]).
//! 4. Tell the service worker which files make up this version.
//! 5. Put the journal of the invented demo garden beside it; the worker keeps that only when it was used.
//! 6. Compress each file with brotli and gzip beside it, weigh everything ([`crate::sizes`]), and put the new folder in place.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::{env, fs};

use wasm_bindgen_cli_support::Bindgen;

use crate::forms::smaller_forms;
use crate::naming::{Files, content_hash, with_content_hashes};
use crate::workspace::{cargo, dist, output, root, run, target_folder};
use crate::{Outcome, languages, parts, sizes, style};

const WASM_TARGET: &str = "wasm32-unknown-unknown";
pub const SERVICE_WORKER: &str = "sw.js";
/// The module of the worker that computes the days ahead of a heap, and its glue.
pub const SIMULATOR: &str = "heapwright_simulator";

/// The module of the worker that sets type, and its glue.
pub const PRESS: &str = "heapwright_press";

/// The journal of the demo garden, and the day on which it ends: the same bundle from the same source.
const DEMO: &str = "demo.jsonl";
const DEMO_ENDS: jiff::civil::Date = jiff::civil::date(2026, 11, 15);

fn demo() -> Outcome<Vec<u8>> {
    let mut text = String::new();
    for line in heapwright_invented::lines(&heapwright_invented::Plan::demo(DEMO_ENDS)) {
        text += &line.map_err(|error| format!("the demo garden cannot be written: {error}"))?;
        text.push('\n');
    }
    Ok(text.into_bytes())
}

/// Bundles the page into `dist`.
pub fn bundle() -> Outcome {
    wasm_target_is_there()?;
    let glue = build()?;
    let written = with_lean_styles(read_folder(&root().join("apps/web/static"))?)?;
    let mut generated = read_folder(&glue)?;
    generated.extend(languages::files()?);
    let mut files = with_service_worker(with_content_hashes(&written, generated)?)?;
    files.insert(DEMO.to_owned(), demo()?);
    let bytes_on_the_wire = write(&files)?;
    sizes::report(&bytes_on_the_wire)
}

/// The files with their style sheets as they go over the wire.
fn with_lean_styles(mut files: Files) -> Outcome<Files> {
    for (name, bytes) in &mut files {
        if name.ends_with(".css") {
            let sheet = std::str::from_utf8(bytes).map_err(|_| format!("{name} is not UTF-8"))?;
            *bytes = style::without_comments(sheet)?.into_bytes();
        }
    }
    Ok(files)
}

fn wasm_target_is_there() -> Outcome {
    let sysroot = output(
        std::process::Command::new("rustc")
            .current_dir(root())
            .args(["--print", "sysroot"]),
    )?;
    if Path::new(sysroot.trim())
        .join("lib/rustlib")
        .join(WASM_TARGET)
        .is_dir()
    {
        return Ok(());
    }
    Err(format!(
        "the compiler lacks the target {WASM_TARGET}; run `rustup toolchain install --no-self-update` in the project's folder"
    ))
}

/// Builds the wasm and its glue; returns the folder that holds both.
fn build() -> Outcome<PathBuf> {
    if ["RUSTFLAGS", "CARGO_ENCODED_RUSTFLAGS"]
        .iter()
        .any(|name| env::var_os(name).is_some())
    {
        println!(
            "RUSTFLAGS is set and is not used for the page, which has its own flags in .cargo/config.toml"
        );
    }
    let wasm = compiled(
        "heapwright-web",
        "wasm-release",
        // What leads to what, by which the parts are told apart.
        &["-Clink-arg=--emit-relocs"],
    )?;
    let simulator = compiled("heapwright-simulator", "simulator-release", &[])?;
    let press = compiled("heapwright-press", "wasm-release", &[])?;
    let glue = target_folder()?.join("glue");
    if glue.exists() {
        fs::remove_dir_all(&glue)
            .map_err(|error| format!("{} could not be emptied: {error}", glue.display()))?;
    }
    let first = parts::split(&wasm, &glue)?;
    bind(&first, parts::NAME, &glue)?;
    bind(&simulator, SIMULATOR, &glue)?;
    bind(&press, PRESS, &glue)?;
    Ok(glue)
}

/// Builds a crate for wasm32; returns the file.
fn compiled(package: &str, profile: &str, options: &[&str]) -> Outcome<PathBuf> {
    let usual = [
        "rustc",
        "--package",
        package,
        "--lib",
        "--target",
        WASM_TARGET,
        "--profile",
        profile,
        "--crate-type",
        "cdylib",
        "--",
    ];
    run(cargo().args(usual).args(options))?;
    let file = package.replace('-', "_");
    Ok(target_folder()?
        .join(WASM_TARGET)
        .join(profile)
        .join(format!("{file}.wasm")))
}

/// Lets wasm-bindgen write the glue of a module.
fn bind(wasm: &Path, name: &str, glue: &Path) -> Outcome {
    let mut bindgen = Bindgen::new();
    bindgen
        .input_path(wasm)
        .out_name(name)
        .keep_lld_exports(true)
        .typescript(false)
        .omit_default_module_path(false)
        .remove_name_section(true)
        .remove_producers_section(true);
    bindgen
        .web(true)
        .and_then(|bindgen| bindgen.generate(glue))
        .map_err(|error| format!("wasm-bindgen could not write the glue of {name}: {error:#}"))
}

/// All files under `folder`, by their path below it, with `/` between folders.
pub fn read_folder(folder: &Path) -> Outcome<Files> {
    let mut files = Files::new();
    let mut folders = vec![(folder.to_path_buf(), String::new())];
    while let Some((folder, prefix)) = folders.pop() {
        let unreadable =
            |error: std::io::Error| format!("{} could not be read: {error}", folder.display());
        for entry in fs::read_dir(&folder).map_err(unreadable)? {
            let path = entry.map_err(unreadable)?.path();
            let Some(last) = path.file_name().and_then(|name| name.to_str()) else {
                return Err(format!(
                    "{} has a name that cannot stand in an address; rename it",
                    path.display()
                ));
            };
            let name = format!("{prefix}{last}");
            if path.is_dir() {
                folders.push((path, format!("{name}/")));
            } else {
                let bytes = fs::read(&path)
                    .map_err(|error| format!("{} could not be read: {error}", path.display()))?;
                files.insert(name, bytes);
            }
        }
    }
    Ok(files)
}

/// Fills in the service worker's two values: the list of files, and a version that changes with any of them.
fn with_service_worker(mut files: Files) -> Outcome<Files> {
    let Some(worker) = files.remove(SERVICE_WORKER) else {
        return Err(format!(
            "apps/web/static/{SERVICE_WORKER} is missing; the page cannot be kept on the device without it"
        ));
    };
    let everything: Vec<u8> = files
        .iter()
        .flat_map(|(name, bytes)| [name.as_bytes(), bytes].concat())
        .collect();
    let version = content_hash(&[everything.as_slice(), &worker].concat());
    let names: Vec<&str> = files
        .keys()
        .map(|name| {
            if name == "index.html" {
                "./"
            } else {
                name.as_str()
            }
        })
        .collect();
    let list = serde_json::to_string(&names)
        .map_err(|error| format!("the list of files cannot be written: {error}"))?;
    let mut worker =
        String::from_utf8(worker).map_err(|_| format!("{SERVICE_WORKER} is not UTF-8"))?;
    for (line, filled) in [
        (
            "const VERSION = \"unbundled\";",
            format!("const VERSION = \"{version}\";"),
        ),
        ("const FILES = [];", format!("const FILES = {list};")),
    ] {
        if worker.matches(line).count() != 1 {
            return Err(format!(
                "apps/web/static/{SERVICE_WORKER} must hold the line `{line}` once"
            ));
        }
        worker = worker.replace(line, &filled);
    }
    files.insert(SERVICE_WORKER.to_owned(), worker.into_bytes());
    Ok(files)
}

/// Writes the files and their compressed forms, then puts the folder in place of the old one.
fn write(files: &Files) -> Outcome<BTreeMap<String, usize>> {
    let folder = dist();
    let fresh = folder.with_extension("new");
    let failed = |error: std::io::Error| format!("dist could not be written: {error}");
    if fresh.exists() {
        fs::remove_dir_all(&fresh).map_err(failed)?;
    }
    let mut bytes_on_the_wire = BTreeMap::new();
    for (name, bytes) in files {
        let path = fresh.join(name);
        fs::create_dir_all(path.parent().unwrap_or(&fresh)).map_err(failed)?;
        fs::write(&path, bytes).map_err(failed)?;
        let mut least = bytes.len();
        // Pictures are compressed already; a second time would only make them larger.
        for (suffix, form) in smaller_forms(bytes).map_err(failed)? {
            least = least.min(form.len());
            fs::write(fresh.join(format!("{name}.{suffix}")), form).map_err(failed)?;
        }
        bytes_on_the_wire.insert(name.clone(), least);
    }
    if folder.exists() {
        fs::remove_dir_all(&folder).map_err(failed)?;
    }
    fs::rename(&fresh, &folder).map_err(failed)?;
    Ok(bytes_on_the_wire)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn page(style: &str) -> Files {
        let worker = "const VERSION = \"unbundled\";\nconst FILES = [];\n";
        [("index.html", "<p>"), ("app.css", style), ("sw.js", worker)]
            .map(|(name, text)| (name.to_owned(), text.as_bytes().to_vec()))
            .into()
    }

    fn worker_of(files: Files) -> String {
        String::from_utf8(with_service_worker(files).unwrap().remove("sw.js").unwrap()).unwrap()
    }

    #[test]
    fn the_service_worker_knows_its_files_and_its_version() {
        let one = worker_of(page("p{}"));
        assert!(one.contains("const FILES = [\"app.css\",\"./\"];"), "{one}");
        assert!(!one.contains("unbundled"));
        assert_eq!(one, worker_of(page("p{}")));
        assert_ne!(one, worker_of(page("q{}")));
    }

    #[test]
    fn a_service_worker_without_its_two_lines_is_refused() {
        let mut files = page("p{}");
        files.insert("sw.js".to_owned(), b"const VERSION = 1;".to_vec());
        assert!(
            with_service_worker(files)
                .unwrap_err()
                .contains("const VERSION")
        );
    }
}
