//! The page for any host of plain files: nothing that runs, no header that it must send.
//!
//! Takes what [`crate::bundle`] made and adds to it
//! - the security policy in a `meta` element, for hosts that send no headers of their own,
//! - the compressed forms of what it changed, for hosts that hand out compressed files,
//! - `HEADERS.txt`: what a host that can send headers should send.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use crate::bundle::{self, SERVICE_WORKER};
use crate::forms::{SUFFIXES, smaller_forms};
use crate::naming::{Files, content_hash};
use crate::workspace::dist;
use crate::{Outcome, headers};

const INDEX: &str = "index.html";
/// What differs from the bundle.
const CHANGED: [&str; 2] = [INDEX, SERVICE_WORKER];
const NOTES: &str = "HEADERS.txt";
/// Behind this the policy stands: before anything that it governs.
const FIRST_LINE: &str = "<meta charset=\"utf-8\">\n";

/// Writes the page into an empty folder.
///
/// - `options`: `--output FOLDER`, and `--as-bundled` to take `dist` as it lies there
pub fn hosted(options: &[String]) -> Outcome {
    let (folder, is_bundled) = understood(options)?;
    is_free(&folder)?;
    if !is_bundled {
        bundle::bundle()?;
    }
    let files = with_policy(bundled()?)?;
    write(&folder, &files)
        .map_err(|error| format!("{} could not be written: {error}", folder.display()))?;
    fs::write(folder.join(NOTES), notes())
        .map_err(|error| format!("{NOTES} could not be written: {error}"))?;
    println!(
        "{} files of the page are in {}; {NOTES} there says which headers to send, if the host can",
        files.len(),
        folder.display()
    );
    Ok(())
}

fn understood(options: &[String]) -> Outcome<(PathBuf, bool)> {
    let words: Vec<&str> = options.iter().map(String::as_str).collect();
    match words[..] {
        ["--output", folder] => Ok((PathBuf::from(folder), false)),
        ["--output", folder, "--as-bundled"] | ["--as-bundled", "--output", folder] => {
            Ok((PathBuf::from(folder), true))
        }
        _ => Err("name the folder: `cargo xtask static --output FOLDER [--as-bundled]`".to_owned()),
    }
}

/// Files of an older version would lie among the new ones, so the folder must be new or empty.
fn is_free(folder: &Path) -> Outcome {
    let used = fs::read_dir(folder).is_ok_and(|mut entries| entries.next().is_some());
    if used || folder.is_file() {
        return Err(format!(
            "{} is not empty: choose a new folder, or empty it",
            folder.display()
        ));
    }
    Ok(())
}

/// The files of the bundle, compressed forms and all.
fn bundled() -> Outcome<Files> {
    bundle::read_folder(&dist()).map_err(|why| format!("{why}; leave --as-bundled away to make it"))
}

/// The policy for a `meta` element, where `frame-ancestors` has no meaning.
fn policy() -> String {
    headers::CONTENT_SECURITY_POLICY
        .split("; ")
        .filter(|rule| !rule.starts_with("frame-ancestors"))
        .collect::<Vec<_>>()
        .join("; ")
}

/// Puts the policy into the page, and tells the service worker that this is a version of its own.
fn with_policy(mut files: Files) -> Outcome<Files> {
    let element = format!(
        "{FIRST_LINE}<meta http-equiv=\"Content-Security-Policy\" content=\"{}\">\n",
        policy()
    );
    put_once(&mut files, INDEX, FIRST_LINE, &element)?;
    let index = files.get(INDEX).cloned().unwrap_or_default();
    let mark = "const VERSION = \"";
    let version = format!("{mark}{}", &content_hash(&index)[..8]);
    put_once(&mut files, SERVICE_WORKER, mark, &version)?;
    Ok(files)
}

fn put_once(files: &mut Files, name: &str, from: &str, to: &str) -> Outcome {
    let text = files
        .get(name)
        .and_then(|bytes| std::str::from_utf8(bytes).ok())
        .filter(|text| text.matches(from).count() == 1)
        .ok_or_else(|| format!("{name} must hold `{}` once", from.trim_end()))?;
    let changed = text.replace(from, to);
    files.insert(name.to_owned(), changed.into_bytes());
    Ok(())
}

/// Writes all files; those that differ from the bundle's are compressed anew, which takes a while for each.
fn write(folder: &Path, files: &Files) -> std::io::Result<()> {
    for (name, bytes) in files {
        let path = folder.join(name);
        fs::create_dir_all(path.parent().unwrap_or(folder))?;
        fs::write(path, bytes)?;
    }
    for name in CHANGED {
        for suffix in SUFFIXES {
            // A form that is not smaller any more must not stay as it was.
            let old = folder.join(format!("{name}.{suffix}"));
            if old.exists() {
                fs::remove_file(old)?;
            }
        }
        let bytes = files.get(name).map_or(&[][..], Vec::as_slice);
        for (suffix, form) in smaller_forms(bytes)? {
            fs::write(folder.join(format!("{name}.{suffix}")), form)?;
        }
    }
    Ok(())
}

fn notes() -> String {
    let every = BTreeMap::from(headers::ON_EVERY_ANSWER);
    let mut text = String::from(
        "Heapwright's page as plain files. It runs from any folder of any host that serves them over HTTPS\n\
         (or from localhost); none of the headers below is needed, all of them are good to have.\n\n\
         With every file:\n\n",
    );
    for (name, value) in every {
        text += &format!("    {name}: {value}\n");
    }
    text += "\nWith files that have sixteen hexadecimal digits before their suffix (their content never changes):\n\n    \
         cache-control: public, max-age=31536000, immutable\n\n\
         With all others, index.html and sw.js above all:\n\n    \
         cache-control: no-cache\n\n\
         Media types that some hosts do not know:\n\n    \
         .wasm          application/wasm\n    \
         .webmanifest   application/manifest+json\n    \
         .jsonl         application/jsonl\n\n\
         NAME.br and NAME.gz are NAME compressed, for hosts that hand out such files by `accept-encoding`\n\
         (then with `content-encoding: br` or `gzip`, and `vary: accept-encoding`). Others may leave them away.\n";
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    fn page() -> Files {
        [
            ("index.html", "<head>\n<meta charset=\"utf-8\">\n<title>"),
            ("sw.js", "const VERSION = \"0123\";"),
        ]
        .map(|(name, text)| (name.to_owned(), text.as_bytes().to_vec()))
        .into()
    }

    #[test]
    fn the_policy_stands_before_all_else_and_the_version_is_another() {
        let files = with_policy(page()).unwrap();
        let index = String::from_utf8(files["index.html"].clone()).unwrap();
        assert!(
            index.starts_with(
                "<head>\n<meta charset=\"utf-8\">\n<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; script-src 'self' 'wasm-unsafe-eval';"
            ),
            "{index}"
        );
        assert!(!index.contains("frame-ancestors"), "a browser warns of it");
        let worker = String::from_utf8(files["sw.js"].clone()).unwrap();
        assert!(
            worker.ends_with("0123\";") && worker.len() == "const VERSION = \"0123\";".len() + 8,
            "{worker}"
        );
        let mut headless = page();
        headless.insert("index.html".to_owned(), b"<title>".to_vec());
        assert!(with_policy(headless).unwrap_err().contains("index.html"));
    }

    #[test]
    fn a_folder_must_be_named_and_empty() {
        let words = |text: &str| -> Vec<String> { text.split(' ').map(str::to_owned).collect() };
        assert!(understood(&words("--output there")).is_ok_and(|(_, bundled)| !bundled));
        assert!(
            understood(&words("--as-bundled --output there")).is_ok_and(|(_, bundled)| bundled)
        );
        assert!(understood(&words("there")).is_err());
        assert!(is_free(Path::new("src")).is_err());
        assert!(is_free(Path::new("no-such-folder")).is_ok());
    }
}
