//! The words of the tables in other languages: one table a language and kind, beside the English ones.
//!
//! Written as lines `kind/id`, tab, field, tab, field: what `Catalogue::translated` asks for.

use std::collections::BTreeMap;
use std::path::Path;

/// Kind, file, and the columns that are words; where English has one, each language has one.
const KINDS: [(&str, &str, &[&str]); 8] = [
    (
        "material",
        "materials.csv",
        &["name", "short_name", "other_words"],
    ),
    (
        "measure",
        "measures.csv",
        &["name", "plural", "other_words"],
    ),
    ("condition", "conditions.csv", &["name", "other_words"]),
    (
        "caution",
        "cautions.csv",
        &["reason", "advice", "local_rule", "before_use"],
    ),
    (
        "rule",
        "hygiene_rules.csv",
        &["name", "asks", "also_asks", "scope"],
    ),
    ("crop", "crops.csv", &["name", "other_words"]),
    ("crop-group", "crop_groups.csv", &["name"]),
    ("use", "compost_uses.csv", &["name", "advice"]),
];

/// Columns that a language may leave empty, or that English has elsewhere.
const OPTIONAL: [&str; 2] = ["other_words", "short_name"];

type Rows = Vec<BTreeMap<String, String>>;

/// The words of every language, by its tag.
///
/// # Errors
/// With table and row when a row is missing, too many, or empty where English is not.
pub fn languages(tables: &Path) -> Result<BTreeMap<String, String>, String> {
    let mut languages = BTreeMap::new();
    let folders = std::fs::read_dir(tables).map_err(|error| error.to_string())?;
    for folder in folders {
        let folder = folder.map_err(|error| error.to_string())?.path();
        if let Some(tag) = folder
            .file_name()
            .and_then(|name| name.to_str())
            .filter(|_| folder.is_dir())
        {
            languages.insert(tag.to_owned(), words(tables, tag)?);
        }
    }
    Ok(languages)
}

fn words(tables: &Path, tag: &str) -> Result<String, String> {
    let mut lines = String::new();
    for (kind, file, columns) in KINDS {
        let english = rows(&tables.join(file))?;
        let translated = rows(&tables.join(tag).join(file))?;
        if english.len() != translated.len() {
            return Err(format!(
                "{tag}/{file} has {} rows, {file} has {}",
                translated.len(),
                english.len()
            ));
        }
        for (row, theirs) in english.iter().zip(&translated) {
            let id = row
                .get("id")
                .or_else(|| row.get("flag_or_id"))
                .map_or("", String::as_str);
            if theirs
                .get("id")
                .or_else(|| theirs.get("flag_or_id"))
                .is_none_or(|found| found != id)
            {
                return Err(format!("{tag}/{file}: `{id}` is not where {file} has it"));
            }
            lines.push_str(&format!("{kind}/{id}"));
            for column in columns {
                let text = theirs.get(*column).map_or("", String::as_str);
                let needed = row.get(*column).is_some_and(|text| !text.is_empty());
                if !OPTIONAL.contains(column) && text.is_empty() == needed {
                    return Err(format!(
                        "{tag}/{file}: `{id}` has {column} where {file} has none, or none where it has one"
                    ));
                }
                if text.contains(['\t', '\n']) {
                    return Err(format!(
                        "{tag}/{file}: `{id}` has a tab or a new line in {column}"
                    ));
                }
                lines.push('\t');
                lines.push_str(text);
            }
            lines.push('\n');
        }
    }
    Ok(lines)
}

fn rows(path: &Path) -> Result<Rows, String> {
    let failed = |error: csv::Error| format!("{}: {error}", path.display());
    let mut reader = csv::Reader::from_path(path).map_err(failed)?;
    let head = reader.headers().map_err(failed)?.clone();
    reader
        .records()
        .map(|record| {
            let record = record.map_err(failed)?;
            Ok(head
                .iter()
                .map(str::to_owned)
                .zip(record.iter().map(str::to_owned))
                .collect())
        })
        .collect()
}
