//! Where a text may break is said by Unicode; which of these places are taken is said here.

use unicode_linebreak::{BreakOpportunity, linebreaks};

use crate::face::{Faces, Shaped, Weight};

/// How a text is set.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Setting {
    /// The weight.
    pub weight: Weight,
    /// Size of the type [pt].
    pub size: f64,
    /// From one line to the next [pt].
    pub leading: f64,
    /// Figures are all as wide as each other.
    pub even: bool,
}

/// Breaks a text into lines that are at most `width` points long.
pub fn lines(faces: &Faces, text: &str, setting: Setting, width: f64) -> Vec<Shaped> {
    let shape = |part: &str| faces.shape(part, setting.weight, setting.even);
    // What is rounded must not break a line that just fits.
    let most = width / setting.size + 1e-6;
    let mut done = Vec::new();
    let (mut begin, mut fits) = (0, 0);
    for (end, kind) in linebreaks(text) {
        if shape(shown(text, begin, end)).width() > most && fits > begin {
            done.push(shape(shown(text, begin, fits)));
            begin = fits;
        }
        // A word that is longer than a line is cut where it must be.
        while shape(shown(text, begin, end)).width() > most {
            let cut = longest(text, begin, end, |part| shape(part).width() <= most);
            done.push(shape(&text[begin..cut]));
            begin = cut;
        }
        fits = end;
        if kind == BreakOpportunity::Mandatory && (end < text.len() || begin < end) {
            done.push(shape(shown(text, begin, end)));
            begin = end;
        }
    }
    if done.is_empty() {
        done.push(shape(""));
    }
    done
}

/// A line without the spaces at its end, which nobody sees.
fn shown(text: &str, begin: usize, end: usize) -> &str {
    text[begin..end].trim_end_matches([' ', '\n', '\r'])
}

/// Where the longest part ends that fits, at least one letter long; a letter keeps its accents.
fn longest(text: &str, begin: usize, end: usize, fits: impl Fn(&str) -> bool) -> usize {
    let mut ends = text[begin..end]
        .char_indices()
        .skip(1)
        .filter(|(_, letter)| !('\u{300}'..='\u{36f}').contains(letter))
        .map(|(offset, _)| begin + offset)
        .chain([end]);
    let first = ends.next().unwrap_or(end);
    ends.take_while(|cut| fits(&text[begin..*cut]))
        .last()
        .unwrap_or(first)
}

#[cfg(test)]
mod tests {
    use super::*;

    const BODY: Setting = Setting {
        weight: Weight::Regular,
        size: 10.0,
        leading: 14.0,
        even: false,
    };

    fn broken(text: &str, width: f64) -> Vec<String> {
        let faces = Faces::new().unwrap();
        let lines = lines(&faces, text, BODY, width);
        assert!(
            lines
                .iter()
                .all(|line| line.width() * BODY.size <= width + 1e-3
                    || line.text.chars().count() == 1)
        );
        lines.into_iter().map(|line| line.text).collect()
    }

    #[test]
    fn lines_break_at_spaces_and_never_between_a_number_and_its_unit() {
        assert_eq!(
            broken("Turn it when the core is below 40\u{a0}°C again.", 120.0),
            ["Turn it when the core is", "below 40\u{a0}°C again."]
        );
        assert_eq!(
            broken("Turn it when the core: 40\u{a0}°C.", 114.0),
            ["Turn it when the core:", "40\u{a0}°C."]
        );
    }

    #[test]
    fn a_word_longer_than_a_line_is_cut_and_nothing_is_lost() {
        let word = "n".repeat(60);
        let all = broken(&format!("a {word} z"), 100.0);
        assert_eq!(all.concat().replace(' ', ""), format!("a{word}z"));
        assert_eq!(broken("äöü", 0.5).concat(), "äöü");
        assert_eq!(broken("", 100.0), [""]);
    }

    #[test]
    fn a_break_that_is_written_is_kept() {
        assert_eq!(broken("one\ntwo\n", 100.0), ["one", "two"]);
    }
}
