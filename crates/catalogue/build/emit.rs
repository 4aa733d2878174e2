//! How do the tables reach the program? As constants in Rust source, so that nothing is parsed there.

use std::fmt::Write;

use crate::rules;
use crate::tables::{Fault, Row, Tables};

/// The Rust source of all tables, one array each.
pub fn source(tables: &Tables) -> Result<String, Fault> {
    let mut out = String::new();
    array(
        &mut out,
        "MATERIALS",
        "MaterialRow",
        tables.materials.rows(),
        material,
    )?;
    array(&mut out, "NAMES", "NameRow", tables.names.rows(), |row| {
        let kind = variant(row.text("kind"));
        let (id, name, note) = (row.id(), row.text("name"), row.text("note"));
        Ok(format!(
            "id: {id:?}, name: {name:?}, kind: NameKind::{kind}, note: {note:?}"
        ))
    })?;
    array(
        &mut out,
        "SOURCES",
        "SourceRow",
        tables.sources.rows(),
        |row| {
            let kind = variant(row.text("kind"));
            let (key, citation, address) = (row.id(), row.text("citation"), row.text("address"));
            Ok(format!(
                "key: {key:?}, kind: SourceKind::{kind}, citation: {citation:?}, address: {address:?}"
            ))
        },
    )?;
    array(
        &mut out,
        "MEASURES",
        "MeasureRow",
        tables.measures.rows(),
        |row| {
            Ok(format!(
                "id: {:?}, name: {:?}, plural: {:?}, other_words: &{:?}, volume_l: {}, sources: &{:?}, note: {:?}",
                row.id(),
                row.text("name"),
                row.text("plural"),
                row.list("other_words", ';'),
                certain(row, "volume_l")?,
                row.list("source", '+'),
                row.text("note"),
            ))
        },
    )?;
    array(
        &mut out,
        "CONDITIONS",
        "ConditionRow",
        tables.conditions.rows(),
        |row| {
            Ok(format!(
                "id: {:?}, name: {:?}, other_words: &{:?}",
                row.id(),
                row.text("name"),
                row.list("other_words", ';')
            ))
        },
    )?;
    array(
        &mut out,
        "CONDITION_EFFECTS",
        "ConditionEffectRow",
        tables.condition_effects.rows(),
        effect,
    )?;
    array(
        &mut out,
        "CAUTIONS",
        "CautionRow",
        tables.cautions.rows(),
        |row| {
            let about = if rules::FLAGS.contains(&row.id()) {
                format!("About::Flag(Caution::{})", variant(row.id()))
            } else {
                format!("About::Material({:?})", row.id())
            };
            Ok(format!(
                "about: {about}, reason: {:?}, advice: {:?}, sources: &{:?}",
                row.text("reason"),
                row.text("advice"),
                row.list("source", '+')
            ))
        },
    )?;
    array(
        &mut out,
        "ASSUMPTIONS",
        "AssumptionRow",
        tables.assumptions.rows(),
        |row| {
            Ok(format!(
                "key: {:?}, values: {}, unit: {:?}, sources: &{:?}, note: {:?}",
                row.id(),
                certain(row, "")?,
                row.text("unit"),
                row.list("source", '+'),
                row.text("note"),
            ))
        },
    )?;
    Ok(out)
}

fn array<'table>(
    out: &mut String,
    name: &str,
    row_type: &str,
    rows: impl Iterator<Item = Row<'table>>,
    write_row: impl Fn(&Row<'table>) -> Result<String, Fault>,
) -> Result<(), Fault> {
    // Writing to a string cannot fail.
    let _ = writeln!(out, "pub(crate) static {name}: &[{row_type}] = &[");
    for row in rows {
        let _ = writeln!(out, "    {row_type} {{ {} }},", write_row(&row)?);
    }
    out.push_str("];\n");
    Ok(())
}

fn material(row: &Row) -> Result<String, Fault> {
    let mut out = format!("id: {:?}, name: {:?}, ", row.id(), row.text("name"));
    let _ = write!(out, "group: Group::{}, ", variant(row.text("group")));
    for stem in rules::RANGES {
        let _ = write!(out, "{stem}: {:?}, ", row.range(stem)?);
    }
    for column in [
        "carbon_pct_dry_typical",
        "ash_pct_dry",
        "lignin_pct_dry",
        "cellulose_pct_dry",
        "hemicellulose_pct_dry",
        "phosphorus_pct_dry",
        "potassium_pct_dry",
        "calcium_pct_dry",
        "magnesium_pct_dry",
        "sodium_pct_dry",
        "ph",
    ] {
        let _ = write!(out, "{column}: {:?}, ", row.number(column)?);
    }
    let _ = write!(
        out,
        "degradability: Degradability::{}, ",
        variant(row.text("degradability"))
    );
    let flags = row.list("flags", ';');
    let flags: Vec<String> = flags
        .iter()
        .map(|flag| format!("Caution::{}", variant(flag)))
        .collect();
    let _ = write!(out, "cautions: &[{}], sources: &[", flags.join(", "));
    for (figure, keys) in rules::source_list(row)? {
        let _ = write!(out, "(FigureGroup::{figure}, &{keys:?}), ");
    }
    let _ = write!(
        out,
        "], evidence: Evidence::{}, notes: {:?}",
        variant(row.text("basis")),
        row.text("notes")
    );
    Ok(out)
}

fn effect(row: &Row) -> Result<String, Fault> {
    let (mut groups, mut materials) = (Vec::new(), Vec::new());
    for target in row.list("applies_to", ';') {
        if rules::GROUPS.contains(&target) {
            groups.push(format!("Group::{}", variant(target)));
        } else {
            materials.push(target);
        }
    }
    Ok(format!(
        "condition: {:?}, groups: &[{}], materials: &{materials:?}, moisture_pct_wet: {:?}, bulk_density_factor: {:?}, \
         sources: &{:?}, note: {:?}",
        row.id(),
        groups.join(", "),
        row.range("moisture_pct_wet")?,
        row.range("bulk_density_factor")?,
        row.list("source", '+'),
        row.text("note"),
    ))
}

/// A range that the rules demand.
fn certain(row: &Row, stem: &str) -> Result<String, Fault> {
    let range = row.range(stem)?;
    let range = range.ok_or_else(|| row.fault(stem, "must not be empty".to_owned()))?;
    Ok(format!("{range:?}"))
}

/// `garden_green` as `GardenGreen`.
fn variant(text: &str) -> String {
    let mut out = String::new();
    for word in text.split('_') {
        let mut letters = word.chars();
        out.extend(letters.next().map(|first| first.to_ascii_uppercase()));
        out.push_str(letters.as_str());
    }
    out
}
