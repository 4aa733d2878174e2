//! What of a style sheet does not go over the wire: comments and the room at the beginnings of lines.

use crate::Outcome;

/// The sheet without comments, empty lines and indents; what stands in quotes stays.
///
/// # Errors
/// When a comment does not end.
pub fn without_comments(sheet: &str) -> Outcome<String> {
    let mut kept = String::with_capacity(sheet.len());
    let mut rest = sheet;
    while let Some(at) = rest.find(['"', '/']) {
        let (before, from) = rest.split_at(at);
        kept.push_str(before);
        if let Some(comment) = from.strip_prefix("/*") {
            let end = comment
                .find("*/")
                .ok_or("a comment in a style sheet does not end")?;
            rest = comment.get(end + 2..).unwrap_or_default();
            continue;
        }
        let end = match from.strip_prefix('"') {
            Some(quoted) => 1 + end_of_quote(quoted),
            None => 1,
        };
        let (verbatim, after) = from.split_at(end);
        kept.push_str(verbatim);
        rest = after;
    }
    kept.push_str(rest);
    let lines = kept.lines().map(str::trim).filter(|line| !line.is_empty());
    Ok(lines.fold(String::new(), |mut all, line| {
        all.push_str(line);
        all.push('\n');
        all
    }))
}

/// Bytes up to and with the closing quote; a quote behind a backslash closes nothing.
fn end_of_quote(quoted: &str) -> usize {
    let mut is_escaped = false;
    for (at, letter) in quoted.char_indices() {
        match letter {
            '"' if !is_escaped => return at + 1,
            _ => is_escaped = letter == '\\' && !is_escaped,
        }
    }
    quoted.len()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn comments_and_indents_go_and_what_is_quoted_stays() {
        let sheet = "/* one\n   two */\np::before {\n  content: \"/* \\\" */\";\n\n}\na { inset: 1px / 2px } /* end */\n";
        assert_eq!(
            without_comments(sheet).unwrap(),
            "p::before {\ncontent: \"/* \\\" */\";\n}\na { inset: 1px / 2px }\n"
        );
        assert!(without_comments("p {} /* never").is_err());
    }
}
