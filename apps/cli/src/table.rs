//! Columns for the terminal.

use std::io::{self, Write};

/// Writes rows in columns as wide as their widest cell, parted by two spaces.
pub fn write_rows(out: &mut impl Write, rows: &[Vec<String>]) -> io::Result<()> {
    let columns = rows.iter().map(Vec::len).max().unwrap_or(0);
    let widths: Vec<usize> = (0..columns)
        .map(|column| {
            rows.iter()
                .filter_map(|row| row.get(column))
                .map(|cell| cell.chars().count())
                .max()
                .unwrap_or(0)
        })
        .collect();
    for row in rows {
        let mut line = String::new();
        for (cell, width) in row.iter().zip(&widths) {
            line.push_str(cell);
            line.extend(std::iter::repeat_n(' ', width - cell.chars().count() + 2));
        }
        writeln!(out, "{}", line.trim_end())?;
    }
    Ok(())
}

/// Writes a paragraph in lines of at most `width` characters, each begun with `indent`.
pub fn write_paragraph(
    out: &mut impl Write,
    indent: &str,
    text: &str,
    width: usize,
) -> io::Result<()> {
    let mut line = String::new();
    // A no-break space holds an amount together.
    for word in text.split(' ').filter(|word| !word.is_empty()) {
        if !line.is_empty()
            && indent.chars().count() + line.chars().count() + 1 + word.chars().count() > width
        {
            writeln!(out, "{indent}{line}")?;
            line.clear();
        }
        if !line.is_empty() {
            line.push(' ');
        }
        line.push_str(word);
    }
    if !line.is_empty() {
        writeln!(out, "{indent}{line}")?;
    }
    Ok(())
}
