//! Where does a record end, and its fields? One pass over the text, with broken quotation marks
//! told by place.
//!
//! The library that writes our tables reads broken quotation marks as best it can and says
//! nothing; a file of readings that is cut or mended by hand must not lose rows in silence. The
//! tests hold the two against each other on files that are whole.

use std::borrow::Cow;

/// The most columns that are read.
pub const MOST_COLUMNS: usize = 200;
/// The longest field that is read [bytes]: 64 KiB.
pub const LONGEST_FIELD_BYTES: usize = 64 << 10;

/// Records of a text, one after the other.
pub(super) struct Records<'a> {
    text: &'a str,
    at: usize,
    row: u64,
    delimiter: u8,
}

/// A record, without its fields.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Record {
    /// The line on which it begins, counted from 1.
    pub row: u64,
    /// How many fields it has, those that are not kept included.
    pub count: usize,
    /// What is wrong with it, and in which column, counted from 0.
    pub fault: Option<(usize, RecordFault)>,
}

/// Why a record cannot be taken apart.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum RecordFault {
    /// A quotation mark is not closed.
    QuoteOpen,
    /// Something stands behind a closing quotation mark.
    BehindQuote,
    /// A field is too long.
    TooLong,
}

impl<'a> Records<'a> {
    /// Records from a place in the text on, which is in the line `row`.
    pub(super) const fn new(text: &'a str, at: usize, row: u64, delimiter: u8) -> Self {
        Self {
            text,
            at,
            row,
            delimiter,
        }
    }

    /// Reads the next record into `fields`; `None` at the end.
    pub(super) fn next(&mut self, fields: &mut Vec<Cow<'a, str>>) -> Option<Record> {
        fields.clear();
        if self.at >= self.text.len() {
            return None;
        }
        let mut record = Record {
            row: self.row,
            count: 0,
            fault: None,
        };
        loop {
            let read = if self.byte() == Some(b'"') {
                self.quoted()
            } else {
                self.plain()
            };
            match read {
                Ok(field) if record.count < MOST_COLUMNS => fields.push(field),
                Ok(_) => {}
                Err(fault) => record.fault = record.fault.or(Some((record.count, fault))),
            }
            record.count += 1;
            if record.fault.is_some() {
                self.pass_line();
                return Some(record);
            }
            match self.byte() {
                Some(byte) if byte == self.delimiter => self.at += 1,
                _ => {
                    self.pass_line();
                    return Some(record);
                }
            }
        }
    }

    fn byte(&self) -> Option<u8> {
        self.text.as_bytes().get(self.at).copied()
    }

    fn next_of(&self, at: usize, wanted: impl Fn(u8) -> bool) -> usize {
        self.text.as_bytes()[at..]
            .iter()
            .position(|byte| wanted(*byte))
            .map_or(self.text.len(), |found| at + found)
    }

    /// Goes to the start of the next line.
    fn pass_line(&mut self) {
        let end = self.next_of(self.at, |byte| byte == b'\n');
        self.row += 1;
        self.at = end + 1;
    }

    /// A field without quotation marks around it.
    fn plain(&mut self) -> Result<Cow<'a, str>, RecordFault> {
        let delimiter = self.delimiter;
        let end = self.next_of(self.at, |byte| byte == delimiter || byte == b'\n');
        let field = &self.text[self.at..end];
        self.at = end;
        if field.len() > LONGEST_FIELD_BYTES {
            return Err(RecordFault::TooLong);
        }
        let at_line_end = self.byte() != Some(delimiter);
        Ok(Cow::Borrowed(match field.strip_suffix('\r') {
            Some(field) if at_line_end => field,
            _ => field,
        }))
    }

    /// A field in quotation marks. Of one that is not closed no more than its line is taken, so
    /// that the rows behind it are read.
    fn quoted(&mut self) -> Result<Cow<'a, str>, RecordFault> {
        let start = self.at + 1;
        let bytes = self.text.as_bytes();
        let mut from = start;
        let end = loop {
            // So far and no further: else one open mark after the other would be sought to the end.
            let limit = bytes.len().min(start + LONGEST_FIELD_BYTES + 1);
            let found = bytes
                .get(from..limit)
                .and_then(|rest| rest.iter().position(|byte| *byte == b'"'));
            let Some(found) = found else {
                return Err(RecordFault::QuoteOpen);
            };
            let quote = from + found;
            if bytes.get(quote + 1) == Some(&b'"') {
                from = quote + 2;
            } else {
                break quote;
            }
        };
        let field = &self.text[start..end];
        let lines = field.bytes().filter(|byte| *byte == b'\n').count();
        self.row += u64::try_from(lines).unwrap_or(0);
        self.at = end + 1;
        match self.byte() {
            None | Some(b'\n') => {}
            Some(byte) if byte == self.delimiter => {}
            Some(b'\r') if matches!(bytes.get(self.at + 1), None | Some(b'\n')) => self.at += 1,
            Some(_) => return Err(RecordFault::BehindQuote),
        }
        Ok(if field.contains('"') {
            Cow::Owned(field.replace("\"\"", "\""))
        } else {
            Cow::Borrowed(field)
        })
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn all(text: &str, delimiter: u8) -> Vec<(Record, Vec<String>)> {
        let mut records = Records::new(text, 0, 1, delimiter);
        let mut fields = Vec::new();
        let mut all = Vec::new();
        while let Some(record) = records.next(&mut fields) {
            all.push((
                record,
                fields.iter().map(|field| field.to_string()).collect(),
            ));
        }
        all
    }

    #[test]
    fn broken_quotation_marks_are_told_by_place_and_the_rows_behind_them_read() {
        let text = "a,b\r\n1,\"2\" 3\r\n4,\"5\r\n6,7\n\"8\n8\",9";
        let found = all(text, b',');
        let faults: Vec<_> = found
            .iter()
            .map(|(record, _)| (record.row, record.fault))
            .collect();
        assert_eq!(
            faults,
            [
                (1, None),
                (2, Some((1, RecordFault::BehindQuote))),
                // Its mark is closed by the one in front of the 8, behind which something stands.
                (3, Some((1, RecordFault::BehindQuote))),
                (6, None),
            ]
        );
        let found = all("1,\"2\n3,4\n", b',');
        assert_eq!(found[0].0.fault, Some((1, RecordFault::QuoteOpen)));
        assert_eq!(found[1].1, ["3", "4"]);
    }

    #[test]
    fn lengths_are_bounded() {
        let long = "x".repeat(LONGEST_FIELD_BYTES);
        for (text, fault) in [
            (long.clone(), None),
            (format!("{long}x"), Some((0, RecordFault::TooLong))),
            (format!("\"{long}\""), None),
            (format!("\"{long}x\""), Some((0, RecordFault::QuoteOpen))),
        ] {
            assert_eq!(all(&text, b',')[0].0.fault, fault);
        }
        let wide = ",".repeat(1000);
        let found = all(&wide, b',');
        assert_eq!((found[0].0.count, found[0].1.len()), (1001, MOST_COLUMNS));
    }

    proptest! {
        #[test]
        fn whole_files_are_read_as_the_library_reads_them(rows in prop::collection::vec(prop::collection::vec(".{0,6}|[\",;\r\na]{0,5}", 2..5), 1..5)) {
            let mut writer = csv::WriterBuilder::new()
                .flexible(true)
                .terminator(csv::Terminator::CRLF)
                .from_writer(Vec::new());
            for row in &rows {
                writer.write_record(row).unwrap();
            }
            let text = String::from_utf8(writer.into_inner().unwrap()).unwrap();
            let found = all(&text, b',');
            prop_assert!(found.iter().all(|(record, _)| record.fault.is_none()));
            prop_assert_eq!(found.into_iter().map(|(_, fields)| fields).collect::<Vec<_>>(), rows);
        }

        #[test]
        fn any_text_comes_to_an_end(text in "[\",;\r\na1]{0,40}") {
            let lines = text.bytes().filter(|byte| *byte == b'\n').count() + 1;
            prop_assert!(all(&text, b',').len() <= lines);
        }
    }
}
