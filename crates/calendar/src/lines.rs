//! Lines of iCalendar: text escaped, folded at 75 octets, ended as the standard asks (RFC 5545, 3.1
//! and 3.3.11).

/// The most octets of a line, without its end.
const MOST_OCTETS: usize = 75;

/// A file that is being written.
#[derive(Default)]
pub struct Lines(String);

impl Lines {
    /// A line whose value is written as it is: times, durations, names of parts.
    pub fn plain(&mut self, name: &str, value: &str) {
        self.folded(&format!("{name}:{value}"));
    }

    /// A line whose value is text.
    pub fn text(&mut self, name: &str, value: &str) {
        self.folded(&format!("{name}:{}", escaped(value)));
    }

    /// The whole file.
    pub fn done(self) -> String {
        self.0
    }

    /// Breaks a line between letters, never within one: each next line begins with a space, which
    /// counts.
    fn folded(&mut self, line: &str) {
        let mut octets = 0;
        for letter in line.chars() {
            if octets + letter.len_utf8() > MOST_OCTETS {
                self.0.push_str("\r\n ");
                octets = 1;
            }
            self.0.push(letter);
            octets += letter.len_utf8();
        }
        self.0.push_str("\r\n");
    }
}

/// Text as a value: marks of the format are escaped, ends of lines written as `\n`. Control signs,
/// which no text may hold, are left out.
fn escaped(text: &str) -> String {
    let mut escaped = String::with_capacity(text.len());
    for letter in text.replace("\r\n", "\n").chars() {
        match letter {
            '\\' | ';' | ',' => {
                escaped.push('\\');
                escaped.push(letter);
            }
            '\n' | '\r' => escaped.push_str("\\n"),
            '\t' => escaped.push('\t'),
            letter if letter.is_control() => {}
            letter => escaped.push(letter),
        }
    }
    escaped
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn marks_and_ends_of_lines_are_escaped() {
        let mut lines = Lines::default();
        lines.text("SUMMARY", "a,b;c\\d\ne\r\nf\u{7}");
        assert_eq!(lines.done(), "SUMMARY:a\\,b\\;c\\\\d\\ne\\nf\r\n");
    }

    #[test]
    fn seventy_five_octets_are_one_line_and_one_more_is_two() {
        for (letters, expected) in [(74, 1), (75, 2), (148, 2), (149, 3)] {
            let mut lines = Lines::default();
            lines.plain("", &"x".repeat(letters));
            assert_eq!(lines.done().matches("\r\n").count(), expected, "{letters}");
        }
    }

    proptest! {
        /// Unfolded and unescaped again, whatever was written comes back.
        #[test]
        fn any_text_comes_back(text in "[\\PC\n,;\\\\]{0,300}") {
            let mut lines = Lines::default();
            lines.text("DESCRIPTION", &text);
            let file = lines.done();
            prop_assert!(file.ends_with("\r\n"));
            for line in file.split_terminator("\r\n") {
                prop_assert!(line.len() <= MOST_OCTETS, "{line}");
            }
            let whole = file.trim_end_matches("\r\n").replace("\r\n ", "");
            let mut back = String::new();
            let mut letters = whole["DESCRIPTION:".len()..].chars();
            while let Some(letter) = letters.next() {
                back.push(match (letter, letter == '\\') {
                    (_, true) => match letters.next().unwrap() {
                        'n' => '\n',
                        other => other,
                    },
                    (letter, false) => letter,
                });
            }
            prop_assert_eq!(back, text);
        }
    }
}
