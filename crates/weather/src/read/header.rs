//! The words of a column's header, and what may be its unit.

/// A column's header taken apart.
#[derive(Clone, Debug)]
pub(super) struct Header {
    /// As it stands.
    pub said: String,
    /// Words in small letters without accents.
    pub words: Vec<String>,
    /// What stands in brackets, without spaces.
    brackets: Vec<String>,
}

impl Header {
    pub fn new(said: &str) -> Self {
        let lower = folded(said);
        let mut brackets = Vec::new();
        let mut outside = String::new();
        for piece in lower.split_inclusive([')', ']']) {
            match piece.split_once(['(', '[']) {
                Some((before, inside)) => {
                    outside.push_str(before);
                    outside.push(' ');
                    brackets.push(
                        inside
                            .trim_end_matches([')', ']'])
                            .replace([' ', '·', '.'], ""),
                    );
                }
                None => outside.push_str(piece),
            }
        }
        let words = outside
            .split(|letter: char| !(letter.is_alphanumeric() || "%°/²".contains(letter)))
            .filter(|word| !word.is_empty())
            .map(str::to_owned)
            .collect();
        Self {
            said: super::error::quoted(said),
            words,
            brackets,
        }
    }

    /// Whether a word begins so; with a `=`, whether one is so.
    pub fn holds(&self, word: &str) -> bool {
        match word.strip_prefix('=') {
            Some(whole) => self.words.iter().any(|other| other == whole),
            None => self.words.iter().any(|other| other.starts_with(word)),
        }
    }

    /// Text in brackets.
    pub fn in_brackets(&self) -> &[String] {
        &self.brackets
    }

    /// What may be a unit: brackets, and one to three last words run together.
    pub fn unit_candidates(&self) -> impl Iterator<Item = String> {
        let count = self.words.len();
        let tails = (1..=3.min(count.saturating_sub(1)))
            .rev()
            .map(move |length| self.words[count - length..].concat());
        self.brackets.iter().cloned().chain(tails)
    }
}

/// Small letters without the accents of western Europe.
fn folded(text: &str) -> String {
    text.to_lowercase()
        .chars()
        .map(|letter| match letter {
            'ä' | 'á' | 'à' | 'â' => 'a',
            'é' | 'è' | 'ê' | 'ë' => 'e',
            'í' | 'ì' | 'î' | 'ï' => 'i',
            'ö' | 'ó' | 'ò' | 'ô' => 'o',
            'ü' | 'ú' | 'ù' | 'û' => 'u',
            other => other,
        })
        .collect()
}
