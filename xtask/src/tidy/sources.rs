//! Does every source key in a doc comment stand in the catalogue's list of sources?
//!
//! A key begins with two capitals and stands on a doc line that begins with `Source:`, in backticks or, without them, all in
//! capitals with a digit or a hyphen (HAUG93, RSC-STRAW). The list is the first column of
//! `crates/catalogue/tables/sources.csv`.

use std::collections::BTreeSet;

use super::{File, Findings, numbered};

const LIST: &str = "crates/catalogue/tables/sources.csv";

/// Looks up each key.
pub fn check(files: &[File]) -> Findings {
    let Some(list) = files.iter().find(|file| file.path == LIST) else {
        return Findings {
            faults: vec![format!(
                "{LIST} is missing; without it no source can be looked up"
            )],
            ..Findings::default()
        };
    };
    let known = keys_of(&list.text);
    let mut faults = Vec::new();
    for file in files.iter().filter(|file| file.path.ends_with(".rs")) {
        for (number, line) in numbered(file) {
            for key in keys_in(line).filter(|key| !known.contains(key)) {
                faults.push(format!(
                    "{}:{number} names the source {key}, which {LIST} does not list; add it there",
                    file.path
                ));
            }
        }
    }
    Findings {
        faults,
        ..Findings::default()
    }
}

fn keys_of(list: &str) -> BTreeSet<&str> {
    list.lines()
        .skip(1)
        .filter_map(|line| line.split(',').next())
        .map(|key| key.trim().trim_matches('"'))
        .collect()
}

fn keys_in(line: &str) -> impl Iterator<Item = &str> {
    let comment = line.trim_start();
    let said = comment
        .strip_prefix("///")
        .or_else(|| comment.strip_prefix("//!"))
        .unwrap_or("");
    let sources = said.trim_start().strip_prefix("Source:").unwrap_or("");
    sources.split('`').enumerate().flat_map(|(index, part)| {
        let in_backticks = index % 2 == 1;
        part.split(|letter: char| !letter.is_ascii_alphanumeric() && letter != '-')
            .filter(move |word| is_key(word, in_backticks))
    })
}

fn is_key(word: &str, in_backticks: bool) -> bool {
    let capitals = word.bytes().take_while(u8::is_ascii_uppercase).count();
    let no_word = word
        .bytes()
        .any(|byte| byte.is_ascii_digit() || byte == b'-')
        && !word.bytes().any(|byte| byte.is_ascii_lowercase());
    word.len() >= 4 && capitals >= 2 && (in_backticks || no_word)
}

#[cfg(test)]
mod tests {
    use super::super::file;
    use super::*;

    #[test]
    fn an_unknown_key_is_a_fault_and_prose_is_not() {
        let doc = "//! Source: none\n/// Source: HAUG93 table 9.2, RSC-STRAW; from memory of A2 USDA.\n/// Source: `WENTm` and `mass`.\n/// Checks: X-99\nlet a = \"Source: Y-1\";";
        let files = [
            file(LIST, "source_key,title\nHAUG93,A book\n"),
            file("a.rs", doc),
        ];
        let faults = check(&files).faults;
        assert_eq!(faults.len(), 2, "{faults:?}");
        assert!(faults[0].starts_with("a.rs:2 names the source RSC-STRAW"));
        assert!(faults[1].starts_with("a.rs:3 names the source WENTm"));
    }
}
