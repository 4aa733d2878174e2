//! Gives scripts, styles and wasm names that carry a hash of their content, and points every reference at the new names.
//!
//! A file is hashed after its own references were rewritten, so its name changes whenever anything that it leads to changes.
//! A reference is the file's name right after `"./`, `'./`, `(./` or a bare quote, and before the closing quote or bracket:
//! the forms used by HTML, CSS, ECMAScript modules and `new URL(...)`. Files that refer to each other in a circle share one hash.
//! References from written files that lead nowhere and hashed files to which nothing leads are faults.

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
        // What leads to the fewest leads only to itself, or to those that lead back to it.
        let group = waiting
            .iter()
            .map(|name| led_to(name, &waiting, &files))
            .min_by_key(BTreeSet::len)
            .unwrap_or_default();
        let together: Vec<u8> = group.iter().flat_map(|name| files[name].clone()).collect();
        let hash = content_hash(&together);
        for name in &group {
            waiting.remove(name);
            let new_name = with_hash(name, &hash);
            for (other, content) in &mut files {
                if is_text(other) {
                    *content =
                        rewritten(&String::from_utf8_lossy(content), name, &new_name).into_bytes();
                }
            }
            let bytes = files.remove(name).unwrap_or_default();
            files.insert(new_name, bytes);
        }
    }
    Ok(files)
}

/// A file and all those of `waiting` to which it leads, directly or through others.
fn led_to(name: &str, waiting: &BTreeSet<String>, files: &Files) -> BTreeSet<String> {
    let mut found = BTreeSet::from([name.to_owned()]);
    let mut open = vec![name.to_owned()];
    while let Some(from) = open.pop() {
        let text = text_of(&from, files);
        for other in waiting {
            if refers(text, other) && found.insert(other.clone()) {
                open.push(other.clone());
            }
        }
    }
    found
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
            // A key of an object is the name by which the wasm asks for the module.
            let is_key = after.starts_with("\":");
            before.ends_with(['"', '\'', '`', '('])
                && after.starts_with(['"', '\'', '`', ')', '?', '#'])
                && !is_key
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
    }

    #[test]
    fn a_circle_shares_one_hash_of_all_that_is_in_it() {
        let circle = |one: &str, other: &str| {
            named(&files(&[
                (
                    "a.js",
                    &format!("import * as b from \"./b.js\"; ({{\"./b.js\": b}}); {one}"),
                ),
                ("b.js", &format!("import \"./a.js\"; {other}")),
                ("sw.js", "'./snippet.js'"),
            ]))
            .unwrap()
        };
        let before = circle("1", "1");
        let (a, b) = (name_of(&before, "a-", ".js"), name_of(&before, "b-", ".js"));
        assert_eq!(a[1..], b[1..]);
        assert!(text_of(a, &before).contains("{\"./b.js\": b}"));
        assert!(refers(text_of(a, &before), b) && refers(text_of(b, &before), a));
        for after in [circle("2", "1"), circle("1", "2")] {
            assert_ne!(a, name_of(&after, "a-", ".js"));
            assert_ne!(b, name_of(&after, "b-", ".js"));
        }
    }
}
