//! In which months what comes: does the table hold together, and how does it reach the program?

use crate::rules::{filled, known_sources, unique};
use crate::tables::{Fault, Tables};

/// Everything that is wrong with the table.
pub fn faults(tables: &Tables) -> Vec<Fault> {
    let mut found = Vec::new();
    unique(&tables.seasons, "material", &mut found);
    for row in tables.seasons.rows() {
        if tables.materials.row(row.text("material")).is_none() {
            found.push(row.fault("material", "no material has this id".to_owned()));
        }
        for column in ["first_month", "last_month"] {
            let month: Option<u8> = row.text(column).parse().ok();
            if !month.is_some_and(|month| (1..=12).contains(&month)) {
                found.push(row.fault(column, "must be a month, 1 to 12".to_owned()));
            }
        }
        filled(&row, "source", &mut found);
        known_sources(&row, "source", &row.list("source", '+'), tables, &mut found);
    }
    found
}

/// File name and text of the table.
pub fn texts(tables: &Tables) -> (&'static str, String) {
    let lines: String = tables
        .seasons
        .rows()
        .map(|row| {
            let [material, first, last] =
                ["material", "first_month", "last_month"].map(|column| row.text(column));
            format!("{material}\t{first}\t{last}\t{}\n", row.text("source"))
        })
        .collect();
    ("seasons.txt", lines)
}
