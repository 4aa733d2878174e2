//! What is needed to open the page in a real browser: Node, Chromium, the test packages and the program itself.

use std::env;
use std::path::PathBuf;
use std::process::Command;

use crate::Outcome;
use crate::workspace::{cargo, find_program, output, root, run, target_folder};

/// Oldest Node that the browser driver works with.
const NODE_MAJOR: u32 = 20;

/// What this machine lacks, said so that it can be acted on.
pub struct Missing(pub String);

/// A machine that can open the page.
pub struct Rig {
    node: PathBuf,
    npm: PathBuf,
    chromium: PathBuf,
}

impl Rig {
    /// Looks for everything; nothing is installed.
    pub fn find() -> Result<Self, Missing> {
        let Some(chromium) = chromium() else {
            return Err(Missing(
                "no Chromium found; on Debian: apt-get install chromium, elsewhere set HEAPWRIGHT_CHROMIUM to its path".to_owned(),
            ));
        };
        let (Some(node), Some(npm)) = (find_program(&["node", "nodejs"]), find_program(&["npm"]))
        else {
            return Err(Missing(
                "no Node.js with npm found; on Debian: apt-get install nodejs npm".to_owned(),
            ));
        };
        let version = output(Command::new(&node).arg("--version")).map_err(Missing)?;
        if major(&version).is_none_or(|major| major < NODE_MAJOR) {
            return Err(Missing(format!(
                "Node.js {} is too old; install {NODE_MAJOR} or newer",
                version.trim()
            )));
        }
        Ok(Self {
            node,
            npm,
            chromium,
        })
    }

    /// Installs the test packages as locked, and builds the program.
    pub fn prepare(&self) -> Outcome {
        run(Command::new(&self.npm)
            .current_dir(folder())
            .args(["ci", "--no-audit", "--no-fund"]))?;
        if env::var_os("HEAPWRIGHT_BIN").is_some() {
            return Ok(());
        }
        run(cargo().args([
            "build",
            "--package",
            "heapwright-cli",
            "--bin",
            "heapwright",
        ]))
    }

    /// Node, started in the folder of the browser tests, told where browser and program are.
    pub fn node(&self) -> Outcome<Command> {
        let program = match env::var_os("HEAPWRIGHT_BIN") {
            Some(path) => PathBuf::from(path),
            None => target_folder()?
                .join("debug")
                .join(format!("heapwright{}", env::consts::EXE_SUFFIX)),
        };
        let mut node = Command::new(&self.node);
        node.current_dir(folder())
            .env("HEAPWRIGHT_CHROMIUM", &self.chromium)
            .env("HEAPWRIGHT_BIN", program);
        Ok(node)
    }
}

fn folder() -> PathBuf {
    root().join("apps/web/e2e")
}

fn chromium() -> Option<PathBuf> {
    if let Some(path) = env::var_os("HEAPWRIGHT_CHROMIUM") {
        return Some(PathBuf::from(path)).filter(|path| path.is_file());
    }
    find_program(&[
        "chromium",
        "chromium-browser",
        "google-chrome",
        "google-chrome-stable",
    ])
}

fn major(version: &str) -> Option<u32> {
    version
        .trim()
        .strip_prefix('v')?
        .split('.')
        .next()?
        .parse()
        .ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_version_of_node_is_read() {
        assert_eq!(major("v20.20.2\n"), Some(20));
        assert_eq!(major("20"), None);
    }
}
