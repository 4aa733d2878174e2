//! Does each crate import only what the table in ARCHITECTURE.md allows?
//!
//! The table stands under the heading "Who may import what"; its rows are `| crate | may import | must not know |`, where
//! both first cells may list several names, separated by commas, and "nothing" and "all above" are understood. It rules what
//! is compiled into a crate; tests and examples (dev-dependencies) are free.

use std::collections::{BTreeMap, BTreeSet};

use serde_json::Value;

use super::{File, Findings};
use crate::Outcome;
use crate::workspace::metadata;

const MAP: &str = "ARCHITECTURE.md";
const HEADING: &str = "Who may import what";
const OUR_PREFIX: &str = "heapwright-";

type Names = BTreeSet<String>;

/// Compares the table with the manifests.
pub fn check(files: &[File]) -> Outcome<Findings> {
    let Some(map) = files.iter().find(|file| file.path == MAP) else {
        return Ok(fault(format!(
            "{MAP} is missing; write it with a section \"{HEADING}\""
        )));
    };
    let allowed = table(&map.text);
    if allowed.is_empty() {
        return Ok(fault(format!(
            "{MAP} has no table under \"{HEADING}\"; add the rows `| crate | may import | must not know |`"
        )));
    }
    Ok(Findings {
        faults: compare(&allowed, &imports(&metadata()?)),
        ..Findings::default()
    })
}

fn fault(sentence: String) -> Findings {
    Findings {
        faults: vec![sentence],
        ..Findings::default()
    }
}

/// Per crate, the crates it may import.
fn table(text: &str) -> BTreeMap<String, Names> {
    let section = text
        .lines()
        .skip_while(|line| !(line.starts_with('#') && line.contains(HEADING)))
        .skip(1);
    let mut rows = BTreeMap::new();
    let mut above = Names::new();
    for line in section.take_while(|line| !line.starts_with('#')) {
        let Some(row) = line.trim().strip_prefix('|') else {
            continue;
        };
        let cells: Vec<&str> = row.split('|').map(str::trim).collect();
        let [crates, imports, ..] = cells.as_slice() else {
            continue;
        };
        if *crates == "crate" || crates.starts_with(['-', ':']) {
            continue;
        }
        let imports = match imports.trim_matches('`') {
            "nothing" | "" => Names::new(),
            "all above" => above.clone(),
            _ => names(imports),
        };
        let crates = names(crates);
        for name in &crates {
            rows.insert(name.clone(), imports.clone());
        }
        above.extend(crates);
    }
    rows
}

fn names(cell: &str) -> Names {
    let name = |part: &str| {
        part.trim()
            .trim_matches('`')
            .trim_start_matches(OUR_PREFIX)
            .to_owned()
    };
    cell.split([',', ';'])
        .map(name)
        .filter(|name| !name.is_empty())
        .collect()
}

/// Per crate under `crates`, the crates of ours that are compiled into it.
fn imports(metadata: &Value) -> BTreeMap<String, Names> {
    let list = |value: &Value| value.as_array().cloned().unwrap_or_default();
    let ours = |value: &Value| {
        value["name"]
            .as_str()
            .and_then(|name| name.strip_prefix(OUR_PREFIX))
            .map(str::to_owned)
    };
    let in_crates = |package: &Value| {
        let manifest = package["manifest_path"]
            .as_str()
            .unwrap_or("")
            .replace('\\', "/");
        manifest.rsplit('/').nth(2) == Some("crates")
    };
    list(&metadata["packages"])
        .iter()
        .filter(|package| in_crates(package))
        .filter_map(|package| {
            let dependencies = list(&package["dependencies"]);
            let compiled_in = dependencies
                .iter()
                .filter(|dependency| dependency["kind"].as_str() != Some("dev"));
            Some((ours(package)?, compiled_in.filter_map(ours).collect()))
        })
        .collect()
}

fn compare(allowed: &BTreeMap<String, Names>, imports: &BTreeMap<String, Names>) -> Vec<String> {
    let mut faults = Vec::new();
    for (name, imported) in imports {
        let Some(allowed) = allowed.get(name) else {
            faults.push(format!(
                "crates/{name} has no row in the table \"{HEADING}\" of {MAP}; add one"
            ));
            continue;
        };
        for other in imported.difference(allowed) {
            faults.push(format!("crates/{name} imports {other}, which {MAP} does not allow; turn the dependency round or take it out"));
        }
    }
    faults
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEXT: &str = "# Map\n## Who may import what\n\n| crate | may import | must not know |\n|---|---|---|\n\
        | `quantity`, numerics | nothing | each other |\n| engine | `numerics`, quantity | words |\n| answers | all above | faces |\n\n\
        ## After\n| other | engine | - |\n";

    fn set(list: &[&str]) -> Names {
        list.iter().map(|name| (*name).to_owned()).collect()
    }

    #[test]
    fn the_table_is_read() {
        let rows = table(TEXT);
        assert_eq!(rows.len(), 4);
        assert_eq!(rows["quantity"], set(&[]));
        assert_eq!(rows["engine"], set(&["numerics", "quantity"]));
        assert_eq!(rows["answers"], set(&["engine", "numerics", "quantity"]));
    }

    #[test]
    fn an_import_against_the_table_is_a_fault() {
        let imports = BTreeMap::from([
            ("engine".to_owned(), set(&["quantity"])),
            ("quantity".to_owned(), set(&["engine"])),
            ("new".to_owned(), set(&[])),
        ]);
        let faults = compare(&table(TEXT), &imports);
        assert_eq!(faults.len(), 2, "{faults:?}");
        assert!(faults[0].contains("crates/new has no row"));
        assert!(faults[1].contains("crates/quantity imports engine"));
    }

    #[test]
    fn only_what_is_compiled_in_counts() {
        let metadata = serde_json::json!({ "packages": [
            { "name": "heapwright-engine", "manifest_path": "x/crates/engine/Cargo.toml", "dependencies": [
                { "name": "heapwright-terms", "kind": null }, { "name": "heapwright-catalogue", "kind": "dev" },
                { "name": "serde", "kind": null }, { "name": "heapwright-wire", "kind": "build" } ] },
            { "name": "heapwright-cli", "manifest_path": "x/apps/cli/Cargo.toml", "dependencies": [] } ] });
        assert_eq!(
            imports(&metadata),
            BTreeMap::from([("engine".to_owned(), set(&["terms", "wire"]))])
        );
    }
}
