//! How do the tables reach the program? As terse text that `src/rows.rs` reads: small on the way to the page.
//!
//! One text a table: a line a row, a tab between fields, in the order in which
//! the reader asks for them. A word of a closed list is a letter, its place in
//! the list; a source is its place among the sources by key. Effects stand in the line
//! of their condition. The remarks of all tables stand apart, in the order of the
//! rows, so that they can be left out. So do names, sources and cautions: no figure
//! needs them, and the page fetches them later.

use crate::rules;
use crate::tables::{Fault, Row, Table, Tables};

/// File name and text of every table, and of the remarks.
pub fn texts(tables: &Tables) -> Result<Vec<(&'static str, String)>, Fault> {
    let mut remarks = Lines::default();
    let mut materials = Lines::default();
    let (mut names, mut name_remarks) = (Lines::default(), Lines::default());
    for row in tables.materials.rows() {
        let called = called(&row, tables);
        material(&row, &called, tables, &mut materials, &mut remarks)?;
        for name in called {
            let kind = letters(rules::NAME_KINDS, &[name.text("kind")]);
            names.field(format!("{kind}{}", plain(&name, "name")?));
            name_remarks.line(&name, "note")?;
        }
        names.end();
    }
    let mut measures = Lines::default();
    for row in tables.measures.rows() {
        measures.texts(&row, &["id", "name", "plural", "other_words"])?;
        measures.certain(&row, "volume_l")?;
        measures.field(sources(&row, tables));
        measures.end();
        remarks.line(&row, "note")?;
    }
    let mut conditions = Lines::default();
    for row in tables.conditions.rows() {
        conditions.texts(&row, &["id", "name", "other_words"])?;
        for effect in with_id(&tables.condition_effects, row.id()) {
            let applies_to = effect.list("applies_to", ';').into_iter();
            let (groups, materials): (Vec<&str>, Vec<&str>) =
                applies_to.partition(|target| rules::GROUPS.contains(target));
            conditions.field(letters(rules::GROUPS, &groups));
            conditions.field(materials.join(";"));
            conditions.range(&effect, "moisture_pct_wet")?;
            conditions.range(&effect, "bulk_density_factor")?;
            conditions.field(sources(&effect, tables));
            remarks.line(&effect, "note")?;
        }
        conditions.end();
    }
    let mut cautions = Lines::default();
    for row in tables.cautions.rows() {
        let flag = letters(rules::FLAGS, &[row.id()]);
        let material = if flag.is_empty() { row.id() } else { "" };
        cautions.field(flag);
        cautions.field(material.to_owned());
        cautions.texts(&row, &["reason", "advice", "local_rule", "before_use"])?;
        cautions.field(letters(rules::FOOD_BEDS, &[row.text("food_beds")]));
        cautions.field(sources(&row, tables));
        cautions.end();
    }
    let mut hygiene_rules = Lines::default();
    for row in tables.hygiene_rules.rows() {
        hygiene_rules.texts(
            &row,
            &[
                "id",
                "name",
                "jurisdiction",
                "asks",
                "also_asks",
                "scope",
                "year",
            ],
        )?;
        // By key: these rules are read apart from the tables that know the places.
        hygiene_rules.field(row.list("source", '+').join("+"));
        hygiene_rules.end();
    }
    let mut assumptions = Lines::default();
    for row in by_key(&tables.assumptions) {
        assumptions.texts(&row, &["key"])?;
        assumptions.certain(&row, "")?;
        assumptions.texts(&row, &["unit"])?;
        assumptions.field(sources(&row, tables));
        assumptions.end();
        remarks.line(&row, "note")?;
    }
    let (mut source_keys, mut publications) = (Lines::default(), Lines::default());
    for row in by_key(&tables.sources) {
        source_keys.line(&row, "key")?;
        publications.field(letters(rules::SOURCE_KINDS, &[row.text("kind")]));
        publications.texts(&row, &["citation", "address"])?;
        publications.end();
    }
    Ok(vec![
        ("source_keys.txt", source_keys.text),
        ("sources.txt", publications.text),
        ("materials.txt", materials.text),
        ("names.txt", names.text),
        ("measures.txt", measures.text),
        ("conditions.txt", conditions.text),
        ("cautions.txt", cautions.text),
        ("hygiene_rules.txt", hygiene_rules.text),
        ("assumptions.txt", assumptions.text),
        ("remarks.txt", remarks.text),
        ("name_remarks.txt", name_remarks.text),
    ])
}

/// The names of a material, the short one first.
fn called<'tables>(row: &Row, tables: &'tables Tables) -> Vec<Row<'tables>> {
    let mut names: Vec<Row> = with_id(&tables.names, row.id()).collect();
    names.sort_by_key(|name| name.text("kind") != "short");
    names
}

fn material(
    row: &Row,
    names: &[Row],
    tables: &Tables,
    out: &mut Lines,
    remarks: &mut Lines,
) -> Result<(), Fault> {
    out.texts(row, &["id", "name"])?;
    match names.first() {
        Some(short) => out.texts(short, &["name"])?,
        None => return Err(row.fault("id", "has no name".to_owned())),
    }
    out.field(letters(rules::GROUPS, &[row.text("group")]));
    for stem in rules::RANGES {
        out.range(row, stem)?;
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
        out.field(shortest(row.number(column)?));
    }
    out.field(letters(
        rules::DEGRADABILITIES,
        &[row.text("degradability")],
    ));
    out.field(letters(rules::FLAGS, &row.list("flags", ';')));
    out.field(figure_sources(row, tables)?);
    out.field(letters(rules::BASES, &[row.text("basis")]));
    remarks.line(row, "notes")?;
    out.end();
    Ok(())
}

/// Rows of `table` under that id, in the order of the file.
fn with_id<'table>(table: &'table Table, id: &str) -> impl Iterator<Item = Row<'table>> {
    table.rows().filter(move |row| row.id() == id)
}

/// `ad:3+12;b:7`: figures, each a letter, and the places of their sources.
fn figure_sources(row: &Row, tables: &Tables) -> Result<String, Fault> {
    let mut parts: Vec<(String, String)> = Vec::new();
    for (figure, keys) in rules::source_list(row)? {
        let known = rules::LABELS.iter().map(|(_, known, _)| *known);
        let letter = letters(&known.collect::<Vec<_>>(), &[figure]);
        let places = places(&keys, tables);
        match parts.last_mut() {
            Some((figures, same)) if *same == places => figures.push_str(&letter),
            _ => parts.push((letter, places)),
        }
    }
    let parts = parts.iter();
    let parts: Vec<String> = parts
        .map(|(figures, places)| format!("{figures}:{places}"))
        .collect();
    Ok(parts.join(";"))
}

fn sources(row: &Row, tables: &Tables) -> String {
    places(&row.list("source", '+'), tables)
}

/// Places of the keys among the sources; the rules have seen to it that each is there.
fn places(keys: &[&str], tables: &Tables) -> String {
    let sources = by_key(&tables.sources);
    let place = |key: &&str| sources.iter().position(|row| row.id() == *key);
    let places = keys.iter().filter_map(place).map(|place| place.to_string());
    places.collect::<Vec<_>>().join("+")
}

/// The rows by their key, so that the reader need not sort them.
fn by_key(table: &Table) -> Vec<Row<'_>> {
    let mut rows: Vec<Row> = table.rows().collect();
    rows.sort_by_key(Row::id);
    rows
}

/// For every word its place in the list, `a` for the first; a word that is not there is left out.
fn letters(list: &[&str], words: &[&str]) -> String {
    let place = |word: &&str| list.iter().position(|known| known == word);
    let places = words.iter().filter_map(place);
    places.filter_map(|place| ('a'..='z').nth(place)).collect()
}

/// The fewest digits that give the same number again.
pub(crate) fn shortest(value: Option<f64>) -> String {
    value.map_or_else(String::new, |value| value.to_string())
}

/// A cell, which must not hold what parts fields and lines.
fn plain<'table>(row: &Row<'table>, column: &str) -> Result<&'table str, Fault> {
    let text = row.text(column);
    if text.contains(['\t', '\n', '\r']) {
        return Err(row.fault(column, "must be one line without tabs".to_owned()));
    }
    Ok(text)
}

/// Lines of tab-separated fields.
#[derive(Default)]
pub(crate) struct Lines {
    pub(crate) text: String,
    fields: Vec<String>,
}

impl Lines {
    pub(crate) fn field(&mut self, field: String) {
        self.fields.push(field);
    }

    pub(crate) fn texts(&mut self, row: &Row, columns: &[&str]) -> Result<(), Fault> {
        for column in columns {
            self.field(plain(row, column)?.to_owned());
        }
        Ok(())
    }

    /// Low, typical and high; three empty fields when there is none.
    pub(crate) fn range(&mut self, row: &Row, stem: &str) -> Result<(), Fault> {
        let values = row.range(stem)?;
        for place in 0..3 {
            self.field(shortest(values.map(|values| values[place])));
        }
        Ok(())
    }

    /// A range that the reader counts on.
    pub(crate) fn certain(&mut self, row: &Row, stem: &str) -> Result<(), Fault> {
        if row.range(stem)?.is_none() {
            return Err(row.fault(stem, "must not be empty".to_owned()));
        }
        self.range(row, stem)
    }

    /// A line of one field.
    fn line(&mut self, row: &Row, column: &str) -> Result<(), Fault> {
        self.texts(row, &[column])?;
        self.end();
        Ok(())
    }

    pub(crate) fn end(&mut self) {
        self.text += &self.fields.join("\t");
        self.text.push('\n');
        self.fields.clear();
    }
}
