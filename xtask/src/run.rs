//! Bundles the page and starts the program that serves it.
//!
//! The development build of the program is used: it is ready in half the time, and the page itself is built for release.

use crate::Outcome;
use crate::bundle::bundle;
use crate::workspace::{cargo, run as run_command};

/// Bundles, then runs `heapwright serve` with the options after `--`; it prints the address to open.
pub fn run(options: &[String]) -> Outcome {
    let options = options.strip_prefix(&["--".to_owned()]).unwrap_or(options);
    bundle()?;
    run_command(
        cargo()
            .args([
                "run",
                "--quiet",
                "--package",
                "heapwright-cli",
                "--bin",
                "heapwright",
                "--",
                "serve",
            ])
            .args(options),
    )
}
