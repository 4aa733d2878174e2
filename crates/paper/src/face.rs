//! The type: two weights of one family, shaped, so that pairs of letters stand as they should.

use krilla::text::Font;
use rustybuzz::ttf_parser::Tag;
use rustybuzz::{Feature, UnicodeBuffer};

use crate::PaperError;

/// Fira Sans, cut down to the letters of Latin, Greek and Cyrillic writing (`fonts/README.md`).
static REGULAR: &[u8] = include_bytes!("../fonts/FiraSans-Regular.ttf");
static STRONG: &[u8] = include_bytes!("../fonts/FiraSans-SemiBold.ttf");

/// What stands for a letter that the type lacks.
const LACKING: char = '\u{25af}';

/// A weight.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Weight {
    /// For reading.
    Regular,
    /// For heads.
    Strong,
}

/// A glyph; lengths in units of the size of the type.
#[derive(Clone, Debug, PartialEq)]
pub struct Glyph {
    /// Its number in the font.
    pub id: u32,
    /// How far the next one stands.
    pub advance: f64,
    /// How far it is moved along.
    pub along: f64,
    /// How far it is moved up.
    pub up: f64,
    /// The bytes of the text that it shows.
    pub shows: std::ops::Range<usize>,
}

/// A text with its glyphs.
#[derive(Clone, Debug, PartialEq)]
pub struct Shaped {
    /// The text, with what the type lacks replaced.
    pub text: String,
    /// Its glyphs, from left to right.
    pub glyphs: Vec<Glyph>,
}

impl Shaped {
    /// How long it is, in units of the size of the type.
    pub fn width(&self) -> f64 {
        self.glyphs.iter().map(|glyph| glyph.advance).sum()
    }
}

/// Both weights, ready to shape.
pub struct Faces {
    regular: rustybuzz::Face<'static>,
    strong: rustybuzz::Face<'static>,
}

impl Faces {
    /// Reads the fonts that are built in.
    ///
    /// # Errors
    ///
    /// When they cannot be read.
    pub fn new() -> Result<Self, PaperError> {
        let read = |bytes| rustybuzz::Face::from_slice(bytes, 0).ok_or(PaperError::Type);
        Ok(Self {
            regular: read(REGULAR)?,
            strong: read(STRONG)?,
        })
    }

    /// The same weight for the writer of the PDF.
    ///
    /// # Errors
    ///
    /// When it cannot be read.
    pub fn font(weight: Weight) -> Result<Font, PaperError> {
        let bytes = match weight {
            Weight::Regular => REGULAR,
            Weight::Strong => STRONG,
        };
        Font::new(bytes.into(), 0).ok_or(PaperError::Type)
    }

    fn face(&self, weight: Weight) -> &rustybuzz::Face<'static> {
        match weight {
            Weight::Regular => &self.regular,
            Weight::Strong => &self.strong,
        }
    }

    /// A text in which every letter can be shown, and whether one could not.
    pub fn showable(&self, text: &str) -> (String, bool) {
        let mut lacks = false;
        let shown = text
            .chars()
            .filter_map(|letter| match letter {
                '\t' => Some(' '),
                // A narrow space that does not break.
                '\u{202f}' => Some('\u{a0}'),
                // What only joins or steers other letters leaves no gap.
                '\u{ad}' | '\u{200b}'..='\u{200f}' | '\u{2028}'..='\u{202e}' => None,
                '\u{2060}'..='\u{206f}' | '\u{fe00}'..='\u{fe0f}' | '\u{feff}' => None,
                letter if letter != '\n' && letter.is_control() => None,
                letter if letter == '\n' || self.regular.glyph_index(letter).is_some() => {
                    Some(letter)
                }
                _ => {
                    lacks = true;
                    Some(LACKING)
                }
            })
            .collect();
        (shown, lacks)
    }

    /// Shapes one line; `even` figures are all as wide as each other, for columns.
    pub fn shape(&self, text: &str, weight: Weight, even: bool) -> Shaped {
        let face = self.face(weight);
        let mut buffer = UnicodeBuffer::new();
        buffer.push_str(text);
        buffer.guess_segment_properties();
        buffer.set_direction(rustybuzz::Direction::LeftToRight);
        let features = [Feature::new(Tag::from_bytes(b"tnum"), u32::from(even), ..)];
        let output = rustybuzz::shape(face, &features, buffer);
        let em = f64::from(face.units_per_em());
        let (infos, positions) = (output.glyph_infos(), output.glyph_positions());
        let glyphs = infos
            .iter()
            .zip(positions)
            .enumerate()
            .map(|(index, (info, position))| {
                let start = usize::try_from(info.cluster).unwrap_or(0);
                let end = infos[index..]
                    .iter()
                    .find(|next| next.cluster != info.cluster)
                    .map_or(text.len(), |next| {
                        usize::try_from(next.cluster).unwrap_or(0)
                    });
                Glyph {
                    id: info.glyph_id,
                    advance: f64::from(position.x_advance) / em,
                    along: f64::from(position.x_offset) / em,
                    up: f64::from(position.y_offset) / em,
                    shows: start..end,
                }
            })
            .collect();
        Shaped {
            text: text.to_owned(),
            glyphs,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_the_project_writes_is_in_the_type() {
        let faces = Faces::new().unwrap();
        let text =
            "55\u{a0}°C, ½ ¼ ¾ ⅓ m² m³ CO₂ → ← – − × ± ≥ ≤ … “äöüß” «éèç» ñ ğşı łż őű ăț Ж Ω";
        assert_eq!(faces.showable(text), (text.to_owned(), false));
        for weight in [Weight::Regular, Weight::Strong] {
            assert!(
                faces
                    .shape(text, weight, false)
                    .glyphs
                    .iter()
                    .all(|glyph| glyph.id != 0)
            );
        }
    }

    #[test]
    fn a_letter_that_is_lacking_is_replaced_and_told() {
        let faces = Faces::new().unwrap();
        assert_eq!(
            faces.showable("堆肥 a\u{200d}b"),
            ("\u{25af}\u{25af} ab".to_owned(), true)
        );
    }

    #[test]
    fn pairs_are_kerned_and_figures_of_a_column_are_even() {
        let faces = Faces::new().unwrap();
        let width = |text: &str, even| faces.shape(text, Weight::Regular, even).width();
        assert!(width("AV", false) < width("A", false) + width("V", false) - 0.01);
        assert!((width("111", true) - width("888", true)).abs() < 1e-9);
        assert!(width("111", false) < width("888", false));
    }
}
