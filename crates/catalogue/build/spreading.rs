//! Where the compost goes: do its tables hold together, and how do they reach the program?
//!
//! Their texts stand apart from those of the materials, and only what plans beds reads them, so
//! that the page need not carry them.

use std::collections::BTreeMap;

use crate::emit::{Lines, shortest};
use crate::rules::{filled, ids, known_sources, listed, unique};
use crate::tables::{Fault, Row, Tables};

/// Units of the figures for spreading.
const UNITS: &[&str] = &[
    "1", "%", "dS/m", "kg/m2", "kg/m3", "mg/kg", "mm", "d", "K", "years",
];
/// What is eaten of a crop, as the table writes it.
const PARTS: &[&str] = &["ground", "above", "none"];
const YES_OR_NO: &[&str] = &["yes", "no"];

/// Everything that is wrong with these tables.
pub fn faults(tables: &Tables) -> Vec<Fault> {
    let mut found = Vec::new();
    for table in [&tables.crop_groups, &tables.crops, &tables.compost_uses] {
        ids(table, &mut found);
        unique(table, "name", &mut found);
    }
    unique(&tables.spreading, "key", &mut found);
    for table in [
        &tables.crop_groups,
        &tables.crops,
        &tables.compost_uses,
        &tables.spreading,
    ] {
        for row in table.rows() {
            filled(&row, "source", &mut found);
            known_sources(&row, "source", &row.list("source", '+'), tables, &mut found);
        }
    }
    let groups: Vec<&str> = tables.crop_groups.rows().map(|row| row.id()).collect();
    let mut owners: BTreeMap<String, &str> = BTreeMap::new();
    for row in tables.crops.rows() {
        listed(&row, "group", &groups, &mut found);
        listed(&row, "part", PARTS, &mut found);
        listed(&row, "food_bed", YES_OR_NO, &mut found);
        if row.text("part") != "none" && row.text("food_bed") == "no" {
            let what = "a bed of what is eaten is a food bed".to_owned();
            found.push(row.fault("food_bed", what));
        }
        listed(&row, "likes_acid", YES_OR_NO, &mut found);
        let given = |column: &str| !row.text(column).is_empty();
        if given("salt_threshold_ds_m") != given("salt_slope_pct_per_ds_m") {
            let what = "a threshold and a slope go together".to_owned();
            found.push(row.fault("salt_slope_pct_per_ds_m", what));
        }
        for word in std::iter::once(row.text("name")).chain(row.list("other_words", ';')) {
            let owner = *owners.entry(word.to_lowercase()).or_insert(row.id());
            if owner != row.id() {
                let what = format!("`{word}` already means {owner}");
                found.push(row.fault("other_words", what));
            }
        }
    }
    for row in tables.compost_uses.rows() {
        listed(&row, "kind", &["share", "depth"], &mut found);
        listed(&row, "needs_mature", YES_OR_NO, &mut found);
        filled(&row, "advice", &mut found);
    }
    for row in tables.spreading.rows() {
        listed(&row, "unit", UNITS, &mut found);
        filled(&row, "note", &mut found);
    }
    found
}

/// File name and text of every one of these tables.
pub fn texts(tables: &Tables) -> Result<Vec<(&'static str, String)>, Fault> {
    let mut groups = Lines::default();
    for row in tables.crop_groups.rows() {
        groups.texts(&row, &["id", "name"])?;
        for stem in ["nitrogen_g_m2", "phosphate_g_m2", "potash_g_m2"] {
            groups.certain(&row, stem)?;
        }
        groups.texts(&row, &["source", "note"])?;
        groups.end();
    }
    let mut crops = Lines::default();
    for row in tables.crops.rows() {
        crops.texts(
            &row,
            &[
                "id",
                "name",
                "other_words",
                "group",
                "part",
                "food_bed",
                "likes_acid",
            ],
        )?;
        numbers(
            &row,
            &[
                "salt_threshold_ds_m",
                "salt_slope_pct_per_ds_m",
                "removes_nitrogen_kg_t",
                "removes_phosphate_kg_t",
                "removes_potash_kg_t",
            ],
            &mut crops,
        )?;
        crops.texts(&row, &["source", "note"])?;
        crops.end();
    }
    let mut uses = Lines::default();
    for row in tables.compost_uses.rows() {
        uses.texts(&row, &["id", "name", "kind"])?;
        uses.certain(&row, "")?;
        numbers(
            &row,
            &[
                "sieve_mm_low",
                "sieve_mm_high",
                "conductivity_ds_m_most",
                "ph_most",
            ],
            &mut uses,
        )?;
        uses.texts(&row, &["needs_mature", "advice", "source", "note"])?;
        uses.end();
    }
    let mut figures = Lines::default();
    for row in tables.spreading.rows() {
        figures.texts(&row, &["key"])?;
        figures.certain(&row, "")?;
        figures.texts(&row, &["unit", "source", "note"])?;
        figures.end();
    }
    Ok(vec![
        ("crop_groups.txt", groups.text),
        ("crops.txt", crops.text),
        ("compost_uses.txt", uses.text),
        ("spreading.txt", figures.text),
    ])
}

fn numbers(row: &Row, columns: &[&str], out: &mut Lines) -> Result<(), Fault> {
    for column in columns {
        out.field(shortest(row.number(column)?));
    }
    Ok(())
}
