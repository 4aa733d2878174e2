//! Gives scripts, styles and wasm names that carry a hash of their content, and points every reference at the new names.
//!
//! A file is hashed after its own references were rewritten, so its name changes whenever anything that it leads to changes.
//! A reference is the file's name right after `"./`, `'./`, `(./` or a bare quote, and before the closing quote or bracket:
//! the forms used by HTML, CSS, ECMAScript modules and `new URL(...)`. References from written files that lead nowhere, hashed
//! files to which nothing leads, and files that refer to each other in a circle are faults.

use std::collections::{BTreeMap, BTreeSet};

use sha2::{Digest, Sha256};

use crate::Outcome;

/// Files by name.
pub type Files = BTreeMap<String, Vec<u8>>;

/// Scripts that browsers must find under one fixed name.
const FIXED: [&str; 1] = ["sw.js"];

/// All files under their final names, with references to match.
///
/// - `written`: the files of `apps/web/static`
/// - `generated`: what wasm-bindgen made; it holds strings that look like references and are none
pub fn with_content_hashes(written: &Files, generated: Files) -> Outcome<Files> {
    let mut files = generated;
    files.extend(written.clone());
    references_lead_somewhere(written, &files)?;
    let mut waiting: BTreeSet<String> = files
        .keys()
        .filter(|name| is_hashed(name))
        .cloned()
        .collect();
    everything_is_referred_to(&files, &waiting)?;
    while !waiting.is_empty() {
        let ready = waiting.iter().find(|name| {
            let text = text_of(name, &files);
            waiting
                .iter()
                .all(|other| other == *name || !refers(text, other))
        });
        let Some(name) = ready.cloned() else {
            let names: Vec<&str> = waiting.iter().map(String::as_str).collect();
            return Err(format!(
                "{} refer to each other in a circle; take one of the references out",
                names.join(", ")
            ));
        };
        waiting.remove(&name);
        let bytes = files.remove(&name).unwrap_or_default();
        let new_name = with_hash(&name, &content_hash(&bytes));
        for (other, content) in &mut files {
            if is_text(other) {
                *content =
                    rewritten(&String::from_utf8_lossy(content), &name, &new_name).into_bytes();
            }
        }
        files.insert(new_name, bytes);
    }
    Ok(files)
}

/// The first 16 hexadecimal digits of SHA-256.
pub fn content_hash(bytes: &[u8]) -> String {
    Sha256::digest(bytes)
        .iter()
        .take(8)
        .map(|byte| format!("{byte:02x}"))
        .collect()
}

fn is_hashed(name: &str) -> bool {
    !FIXED.contains(&name)
        && [".js", ".css", ".wasm"]
            .iter()
            .any(|suffix| name.ends_with(suffix))
}

fn is_text(name: &str) -> bool {
    [".html", ".js", ".css", ".webmanifest"]
        .iter()
        .any(|suffix| name.ends_with(suffix))
}

fn text_of<'a>(name: &str, files: &'a Files) -> &'a str {
    if !is_text(name) {
        return "";
    }
    files
        .get(name)
        .and_then(|bytes| std::str::from_utf8(bytes).ok())
        .unwrap_or("")
}

fn with_hash(name: &str, hash: &str) -> String {
    match name.rsplit_once('.') {
        Some((stem, suffix)) => format!("{stem}-{hash}.{suffix}"),
        None => format!("{name}-{hash}"),
    }
}

/// The places in `text` where `name` is referred to.
fn places(text: &str, name: &str) -> Vec<usize> {
    text.match_indices(name)
        .filter(|(start, _)| {
            let before = text[..*start].strip_suffix("./").unwrap_or(&text[..*start]);
            let after = &text[start + name.len()..];
            before.ends_with(['"', '\'', '`', '('])
                && after.starts_with(['"', '\'', '`', ')', '?', '#'])
        })
        .map(|(start, _)| start)
        .collect()
}

fn refers(text: &str, name: &str) -> bool {
    !places(text, name).is_empty()
}

fn rewritten(text: &str, name: &str, new_name: &str) -> String {
    let mut result = String::with_capacity(text.len());
    let mut from = 0;
    for start in places(text, name) {
        result.push_str(&text[from..start]);
        result.push_str(new_name);
        from = start + name.len();
    }
    result.push_str(&text[from..]);
    result
}

fn references_lead_somewhere(written: &Files, files: &Files) -> Outcome {
    for name in written.keys() {
        for part in text_of(name, written).split(['"', '\'', '`', '(', ')']) {
            let Some(path) = part.strip_prefix("./") else {
                continue;
            };
            let path = path.split(['?', '#']).next().unwrap_or("");
            let is_file_name = path.contains('.') && !path.contains(char::is_whitespace);
            if is_file_name && !files.contains_key(path) {
                return Err(format!(
                    "{name} refers to ./{path}, which is not in the bundle; correct the name"
                ));
            }
        }
    }
    Ok(())
}

fn everything_is_referred_to(files: &Files, hashed: &BTreeSet<String>) -> Outcome {
    for name in hashed {
        let mut others = files.keys().filter(|other| *other != name);
        if !others.any(|other| refers(text_of(other, files), name)) {
            return Err(format!(
                "nothing refers to {name}; remove it or refer to it as \"./{name}\""
            ));
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn files(list: &[(&str, &str)]) -> Files {
        list.iter()
            .map(|(name, text)| ((*name).to_owned(), text.as_bytes().to_vec()))
            .collect()
    }

    fn named(written: &Files) -> Outcome<Files> {
        with_content_hashes(
            written,
            files(&[
                ("snippet.js", "import \"./glue_bg.js\""),
                ("sw.js", "'./snippet.js'"),
            ]),
        )
    }

    fn small_page(style: &str, wasm: &str) -> Files {
        files(&[
            (
                "index.html",
                "<link href=\"./app.css\"><script src=\"./boot.js\"></script><p>boot.js</p>",
            ),
            (
                "boot.js",
                "import init from \"./glue.js\"; init(new URL(\"./glue_bg.wasm\", import.meta.url));",
            ),
            ("glue.js", "new URL('glue_bg.wasm', import.meta.url)"),
            ("glue_bg.wasm", wasm),
            ("app.css", style),
            ("sw.js", "const FILES = []; // \"./snippet.js\""),
        ])
    }

    fn name_of<'a>(files: &'a Files, start: &str, suffix: &str) -> &'a str {
        files
            .keys()
            .find(|name| name.starts_with(start) && name.ends_with(suffix))
            .unwrap()
    }

    #[test]
    fn references_follow_the_new_names_and_prose_stays() {
        let named = named(&small_page("p{}", "one")).unwrap();
        let index = text_of("index.html", &named);
        assert!(index.contains(&format!("href=\"./{}\"", name_of(&named, "app-", ".css"))));
        assert!(index.contains("<p>boot.js</p>"));
        let boot = text_of(name_of(&named, "boot-", ".js"), &named);
        assert!(boot.contains(&format!("\"./{}\"", name_of(&named, "glue-", ".js"))));
        assert!(boot.contains(&format!("\"./{}\"", name_of(&named, "glue_bg-", ".wasm"))));
        assert!(named.contains_key("sw.js"));
        assert_eq!(named.len(), 7);
    }

    #[test]
    fn a_change_renames_all_that_lead_to_it_and_nothing_else() {
        let before = named(&small_page("p{}", "one")).unwrap();
        let after = named(&small_page("p{}", "two")).unwrap();
        for (start, suffix) in [("glue_bg-", ".wasm"), ("glue-", ".js"), ("boot-", ".js")] {
            assert_ne!(
                name_of(&before, start, suffix),
                name_of(&after, start, suffix)
            );
        }
        assert_eq!(
            name_of(&before, "app-", ".css"),
            name_of(&after, "app-", ".css")
        );
    }

    #[test]
    fn faults_are_named() {
        let missing = files(&[("index.html", "<script src=\"./gone.js\"></script>")]);
        assert!(named(&missing).unwrap_err().contains("./gone.js"));
        let idle = files(&[
            ("index.html", "<p>"),
            ("idle.js", ""),
            ("sw.js", "'./snippet.js'"),
        ]);
        assert!(
            named(&idle)
                .unwrap_err()
                .contains("nothing refers to idle.js")
        );
        let circle = files(&[
            ("a.js", "import \"./b.js\""),
            ("b.js", "import \"./a.js\""),
            ("sw.js", "'./snippet.js'"),
        ]);
        assert!(named(&circle).unwrap_err().contains("circle"));
    }
}
