//! Published worked examples, a module a family. What is expected stands in `published/*.csv`.

#![allow(clippy::unwrap_used)]

use std::collections::BTreeSet;

use heapwright_checks::all_published;

mod carbon;
mod carbon_to_nitrogen;
mod density;
mod moisture;
mod nutrients;
mod programmes;
mod spreading;

const TESTS: [&str; 7] = [
    include_str!("carbon.rs"),
    include_str!("carbon_to_nitrogen.rs"),
    include_str!("density.rs"),
    include_str!("moisture.rs"),
    include_str!("nutrients.rs"),
    include_str!("programmes.rs"),
    include_str!("spreading.rs"),
];

#[test]
fn every_published_figure_has_its_check() {
    let mut ids = BTreeSet::new();
    for row in all_published() {
        assert!(ids.insert(&row.id), "{} is there twice", row.id);
        let name = format!("fn check_{}(", row.check().to_lowercase());
        assert!(
            TESTS.iter().any(|test| test.contains(&name)),
            "no test has {name}"
        );
        // A figure may be asked for by its own id or in a loop over those of its check.
        let asked = [format!("\"{}\"", row.id), format!("\"{}.", row.check())];
        assert!(
            TESTS
                .iter()
                .any(|test| asked.iter().any(|asked| test.contains(asked))),
            "no test asks for {}",
            row.id
        );
        assert!(
            !row.source.is_empty() && !row.reason.is_empty(),
            "{}",
            row.id
        );
    }
    assert!(ids.len() >= 60, "{} figures", ids.len());
}
