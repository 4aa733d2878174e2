//! Chooses what is embedded: the bundle when there is one, else one small page that says how to make it.
//!
//! Without this a fresh clone could not compile before `cargo xtask bundle` had run.

use std::path::{Path, PathBuf};
use std::{env, fs, io};

const MISSING_BUNDLE: &str = "<!doctype html>
<html lang=\"en\">
<meta charset=\"utf-8\">
<title>Heapwright: page not built</title>
<h1>The page is not built yet</h1>
<p>In the project's folder, run <code>cargo xtask bundle</code>, then start this program again.</p>
</html>
";

fn main() -> io::Result<()> {
    let crate_folder = PathBuf::from(variable("CARGO_MANIFEST_DIR")?);
    let bundle = crate_folder.join("../../dist");
    let folder = if bundle.join("index.html").is_file() {
        println!("cargo:rerun-if-changed={}", bundle.display());
        bundle.canonicalize()?
    } else {
        // A path that is missing makes Cargo ask again at each build, which is what we want here.
        println!(
            "cargo:rerun-if-changed={}",
            bundle.join("index.html").display()
        );
        let folder = Path::new(&variable("OUT_DIR")?).join("missing-bundle");
        fs::create_dir_all(&folder)?;
        fs::write(folder.join("index.html"), MISSING_BUNDLE)?;
        folder
    };
    println!("cargo:rustc-env=HEAPWRIGHT_BUNDLE={}", folder.display());
    Ok(())
}

fn variable(name: &str) -> io::Result<String> {
    env::var(name).map_err(|error| io::Error::other(format!("{name}: {error}")))
}
