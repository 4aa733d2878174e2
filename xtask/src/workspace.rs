//! Where things lie in this workspace, and how a task starts other programs.

use std::env;
use std::ffi::OsString;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use serde_json::Value;

use crate::Outcome;

/// The folder of the whole project.
///
/// Cargo names this package's folder when it starts it; a binary started by hand falls back on where it was built.
pub fn root() -> PathBuf {
    let package = env::var_os("CARGO_MANIFEST_DIR")
        .unwrap_or_else(|| OsString::from(env!("CARGO_MANIFEST_DIR")));
    let package = PathBuf::from(package);
    package
        .parent()
        .map_or_else(|| package.clone(), Path::to_path_buf)
}

/// The folder with the bundled page.
pub fn dist() -> PathBuf {
    root().join("dist")
}

/// Cargo, started in the project's folder with this project's own compiler flags.
///
/// `RUSTFLAGS` in the environment would replace the flags of `.cargo/config.toml`, and the page would come out different.
pub fn cargo() -> Command {
    let mut cargo = Command::new(env::var_os("CARGO").unwrap_or_else(|| OsString::from("cargo")));
    cargo
        .current_dir(root())
        .env_remove("RUSTFLAGS")
        .env_remove("CARGO_ENCODED_RUSTFLAGS");
    cargo
}

/// Cargo's description of the workspace, without what it depends on.
pub fn metadata() -> Outcome<Value> {
    let text = output(cargo().args(["metadata", "--format-version", "1", "--no-deps"]))?;
    serde_json::from_str(&text)
        .map_err(|error| format!("`cargo metadata` gave no readable answer: {error}"))
}

/// Where Cargo puts what it builds.
pub fn target_folder() -> Outcome<PathBuf> {
    let metadata = metadata()?;
    let folder = metadata["target_directory"]
        .as_str()
        .ok_or("`cargo metadata` names no target folder")?;
    Ok(PathBuf::from(folder))
}

/// Runs a command, its output going where ours goes.
pub fn run(command: &mut Command) -> Outcome {
    let status = command
        .status()
        .map_err(|error| not_started(command, &error))?;
    if status.success() {
        Ok(())
    } else {
        Err(format!("`{}` failed ({status})", spoken(command)))
    }
}

/// Runs a command and returns what it wrote to standard output; its standard error goes where ours goes.
pub fn output(command: &mut Command) -> Outcome<String> {
    let output = command
        .stderr(Stdio::inherit())
        .output()
        .map_err(|error| not_started(command, &error))?;
    if !output.status.success() {
        return Err(format!("`{}` failed ({})", spoken(command), output.status));
    }
    String::from_utf8(output.stdout)
        .map_err(|_| format!("`{}` did not write text", spoken(command)))
}

/// The first of these programs that stands in a folder of `PATH`.
pub fn find_program(names: &[&str]) -> Option<PathBuf> {
    let folders = env::var_os("PATH")?;
    let folders: Vec<PathBuf> = env::split_paths(&folders).collect();
    names.iter().find_map(|name| {
        folders
            .iter()
            .map(|folder| folder.join(name))
            .find(|path| path.is_file())
    })
}

fn spoken(command: &Command) -> String {
    let words = std::iter::once(command.get_program()).chain(command.get_args());
    words
        .map(|word| word.to_string_lossy().into_owned())
        .collect::<Vec<_>>()
        .join(" ")
}

fn not_started(command: &Command, error: &std::io::Error) -> String {
    format!("`{}` could not be started: {error}", spoken(command))
}
