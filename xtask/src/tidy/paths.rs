//! Does every path that a page for people names in backticks exist?
//!
//! Looked at: the `.md` files at the top and the decision records. A path begins with a folder of the project
//! (`crates/engine/src/heat.rs`) or with a crate (`engine/src/heat.rs`); a `*` stands for anything, and only the part before it
//! is looked up.

use std::path::Path;

use super::{File, Findings, numbered};

const TOP_FOLDERS: [&str; 9] = [
    "crates", "apps", "docs", "checks", "fuzz", "oracles", "xtask", ".ci", ".cargo",
];
const WHERE_CRATES_LIE: [&str; 2] = ["crates", "apps"];

/// Looks up each named path.
pub fn check(files: &[File], root: &Path) -> Findings {
    let exists = |path: &str| root.join(path).exists();
    let mut faults = Vec::new();
    for file in files.iter().filter(|file| is_page_for_people(&file.path)) {
        for (number, line) in numbered(file) {
            for path in in_backticks(line) {
                if leads_nowhere(path, &exists) {
                    faults.push(format!(
                        "{}:{number} names `{path}`, which does not exist; correct the path",
                        file.path
                    ));
                }
            }
        }
    }
    Findings {
        faults,
        ..Findings::default()
    }
}

fn is_page_for_people(path: &str) -> bool {
    path.ends_with(".md") && (!path.contains('/') || path.starts_with("docs/decisions/"))
}

fn in_backticks(line: &str) -> impl Iterator<Item = &str> {
    line.split('`').skip(1).step_by(2)
}

fn leads_nowhere(path: &str, exists: &dyn Fn(&str) -> bool) -> bool {
    let plain = path
        .bytes()
        .all(|byte| byte.is_ascii_alphanumeric() || b"./_-*".contains(&byte));
    let Some((first, rest)) = path.split_once('/') else {
        return false;
    };
    if !plain || first.is_empty() {
        return false;
    }
    let known_part = path.split('*').next().unwrap_or("");
    // A star in the middle of a name leaves the folder as the known part.
    let known_part = if path.contains('*') {
        known_part.rsplit_once('/').map_or("", |(folder, _)| folder)
    } else {
        known_part
    };
    if TOP_FOLDERS.contains(&first) {
        return !exists(known_part.trim_end_matches('/'));
    }
    let homes: Vec<&&str> = WHERE_CRATES_LIE
        .iter()
        .filter(|home| exists(&format!("{home}/{first}")))
        .collect();
    !homes.is_empty()
        && !rest.is_empty()
        && !homes
            .iter()
            .any(|home| exists(&format!("{home}/{}", known_part.trim_end_matches('/'))))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_paths_of_the_project_are_looked_up() {
        let there = [
            "crates/engine",
            "crates/engine/src",
            "crates/engine/src/heat.rs",
            "docs",
        ];
        let exists = |path: &str| there.contains(&path);
        for fine in [
            "crates/engine/src/heat.rs",
            "engine/src/heat.rs",
            "crates/engine/",
            "crates/*/src/x.rs",
            "docs/",
            "text/html",
            "a b",
            "kg/kg",
            "x",
        ] {
            let exists = |path: &str| exists(path) || path == "crates";
            assert!(!leads_nowhere(fine, &exists), "{fine}");
        }
        for gone in [
            "crates/engine/src/cold.rs",
            "engine/src/cold.rs",
            "docs/x/*.md",
            "xtask/src",
        ] {
            assert!(leads_nowhere(gone, &exists), "{gone}");
        }
    }

    #[test]
    fn backticks_come_in_pairs() {
        assert_eq!(
            in_backticks("see `a/b` and `c/d`.").collect::<Vec<_>>(),
            ["a/b", "c/d"]
        );
    }
}
