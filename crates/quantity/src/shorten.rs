//! How is typed text quoted in a message? Cut to a length, control signs made visible as spaces.

/// The longest quotation in characters.
const LONGEST_QUOTE: usize = 40;

/// The text with white space and control signs as single spaces, cut at 40 characters with "…".
pub(crate) fn shortened(text: &str) -> String {
    let mut short = String::new();
    let mut length = 0;
    for sign in text.trim().chars() {
        let blank = sign.is_whitespace() || sign.is_control();
        if blank && short.ends_with(' ') {
            continue;
        }
        if length == LONGEST_QUOTE {
            short.truncate(short.trim_end().len());
            short.push('…');
            break;
        }
        short.push(if blank { ' ' } else { sign });
        length += 1;
    }
    short
}

#[cfg(test)]
mod tests {
    use super::shortened;

    #[test]
    fn shortened_cuts_at_a_character() {
        assert_eq!(shortened("  2\n\tbuckets "), "2 buckets");
        let long = "é".repeat(50);
        assert_eq!(shortened(&long), format!("{}…", "é".repeat(40)));
    }
}
