//! A whole language as one pack: files and in them messages, in the order of the English ones.

use std::collections::BTreeMap;
use std::fmt;

use crate::locale::Direction;

const FILE: char = '\u{1d}';
const MESSAGE: char = '\u{1e}';

/// Languages of which lines run from right to left, by their first subtag.
const RIGHT_TO_LEFT: [&str; 4] = ["ar", "fa", "he", "ur"];

/// A language other than English.
pub struct Translation {
    tag: String,
    files: Vec<Vec<&'static str>>,
    /// Rows of the catalogue's tables by keys such as `material/apple`, fields apart by tabs.
    words: BTreeMap<&'static str, &'static str>,
}

/// A pack that is not of this version, or no pack at all.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PackError {
    /// Messages that were found.
    pub found: usize,
    /// Messages that there must be.
    pub expected: usize,
}

impl fmt::Display for PackError {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            formatter,
            "The texts of this language do not belong to this version ({} of {}): load the page again.",
            self.found, self.expected
        )
    }
}

impl std::error::Error for PackError {}

impl Translation {
    /// Reads a pack; `tag` names its language as BCP 47 has it.
    ///
    /// - `words`: the catalogue's words, a line a row: key, tab, fields apart by tabs
    ///
    /// # Errors
    /// When its files do not hold as many messages as there are.
    pub fn read(tag: &str, pack: &'static str, words: &'static str) -> Result<Self, PackError> {
        let files: Vec<Vec<&str>> = pack
            .split(FILE)
            .map(|file| file.split(MESSAGE).collect())
            .collect();
        let counts = files.iter().map(Vec::len);
        if !counts.clone().eq(crate::messages::COUNTS) {
            return Err(PackError {
                found: counts.sum(),
                expected: crate::messages::COUNTS.iter().sum(),
            });
        }
        Ok(Self {
            tag: tag.to_owned(),
            files,
            words: words
                .lines()
                .filter_map(|line| line.split_once('\t'))
                .collect(),
        })
    }

    /// The pack of German.
    #[cfg(feature = "all-languages")]
    pub const GERMAN: &str = include_str!(concat!(env!("OUT_DIR"), "/de.pack"));

    /// A pack without what is said of the arguments of commands, which no page says.
    #[cfg(feature = "all-languages")]
    #[must_use]
    pub fn without_commands(pack: &str) -> String {
        let files = pack.split(FILE).zip(crate::messages::NAMES);
        let kept: Vec<String> = files
            .map(|(file, name)| match name {
                "refusals_of_commands" => file.chars().filter(|one| *one == MESSAGE).collect(),
                _ => file.to_owned(),
            })
            .collect();
        kept.join(&FILE.to_string())
    }

    /// The language.
    #[must_use]
    pub fn tag(&self) -> &str {
        &self.tag
    }

    /// In which direction its lines run.
    #[must_use]
    pub fn direction(&self) -> Direction {
        let language = self.tag.split('-').next().unwrap_or_default();
        if RIGHT_TO_LEFT.contains(&language) {
            Direction::RightToLeft
        } else {
            Direction::LeftToRight
        }
    }

    /// A field of a row of the catalogue; `None` when this language does not have it.
    #[must_use]
    pub fn word(&self, key: &str, field: usize) -> Option<&'static str> {
        self.words.get(key)?.split('\t').nth(field)
    }

    /// A message in its compact form; `None` when it is left empty.
    pub(crate) fn text(&self, file: usize, message: usize) -> Option<&'static str> {
        let text = *self.files.get(file)?.get(message)?;
        (!text.is_empty()).then_some(text)
    }
}
