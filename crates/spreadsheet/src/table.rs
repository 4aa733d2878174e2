//! Rows that a spreadsheet opens and does not run.

use std::borrow::Cow;

/// CSV in the making: every row has `N` cells.
pub(crate) struct Table<const N: usize> {
    writer: csv::Writer<Vec<u8>>,
}

impl<const N: usize> Table<N> {
    pub(crate) fn new(header: [&str; N]) -> Self {
        let mut table = Self {
            writer: csv::WriterBuilder::new()
                .terminator(csv::Terminator::CRLF)
                .from_writer(Vec::new()),
        };
        table.row(header);
        table
    }

    pub(crate) fn row<Cell: AsRef<str>>(&mut self, cells: [Cell; N]) {
        // A vector takes everything, and all rows are equally long: nothing can fail here.
        let written = self
            .writer
            .write_record(cells.iter().map(|cell| cell.as_ref().as_bytes()));
        debug_assert!(written.is_ok());
    }

    pub(crate) fn finish(self) -> String {
        let bytes = self.writer.into_inner().unwrap_or_default();
        // Texts went in, so a text comes out.
        String::from_utf8(bytes).unwrap_or_default()
    }
}

/// Signs with which spreadsheets start a formula, or which they pass over before one: the last
/// four are the wide forms that some take for the same.
const STARTS_FORMULA: [char; 12] = [
    '=', '+', '-', '@', '\t', '\r', '\n', '\0', '＝', '＋', '－', '＠',
];

/// A text that no spreadsheet takes for a formula: with an apostrophe in front where needed.
pub(crate) fn guarded(text: &str) -> Cow<'_, str> {
    if looks_like_formula(text) {
        Cow::Owned(format!("'{text}"))
    } else {
        Cow::Borrowed(text)
    }
}

/// The text that was guarded.
pub(crate) fn unguarded(text: &str) -> &str {
    match text.strip_prefix('\'') {
        Some(rest) if looks_like_formula(rest) => rest,
        _ => text,
    }
}

/// Apostrophes in front are passed over: else a text that has one already could not be told from
/// one that was guarded.
fn looks_like_formula(text: &str) -> bool {
    text.trim_start_matches('\'').starts_with(STARTS_FORMULA)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn what_starts_a_formula_gets_an_apostrophe() {
        for (text, written) in [
            ("=1+1", "'=1+1"),
            ("+49", "'+49"),
            ("-5", "'-5"),
            ("@a", "'@a"),
            ("\tx", "'\tx"),
            ("\rx", "'\rx"),
            ("\0=x", "'\0=x"),
            ("'=x", "''=x"),
            ("'tis", "'tis"),
            ("a=b", "a=b"),
            ("", ""),
        ] {
            assert_eq!(guarded(text), written);
            assert_eq!(unguarded(written), text);
        }
    }

    proptest! {
        #[test]
        fn guarding_is_undone(text in "['=+@\\-a\\x00\t]{0,6}|.{0,8}") {
            let written = guarded(&text);
            prop_assert!(!written.starts_with(STARTS_FORMULA));
            prop_assert_eq!(unguarded(&written), &text);
        }

        #[test]
        fn another_reader_finds_the_same_cells(cells in prop::collection::vec(prop::array::uniform3(".{0,12}|[\",;\r\na]{0,6}"), 0..6)) {
            let mut table = Table::new(["a", "b", "c"]);
            for row in &cells {
                table.row([&row[0], &row[1], &row[2]]);
            }
            let text = table.finish();
            let mut reader = csv::Reader::from_reader(text.as_bytes());
            let found: Vec<Vec<String>> = reader
                .records()
                .map(|record| record.unwrap().iter().map(str::to_owned).collect())
                .collect();
            prop_assert_eq!(found, cells.iter().map(|row| row.to_vec()).collect::<Vec<_>>());
        }
    }
}
