//! How someone wants to be spoken to: the language, the units, the clock.

use fixed_decimal::Decimal;
use heapwright_quantity::{self as quantity, UnitSystem};
use icu_locale_core::LanguageIdentifier;
use icu_plurals::{PluralCategory, PluralRules};

use crate::dates::Clock;
use crate::messages::cldr;
use crate::pattern::plain;
use crate::translation::Translation;

/// First strong isolate and pop directional isolate of Unicode: what stands between keeps its own direction.
const ISOLATED: (char, char) = ('\u{2068}', '\u{2069}');

/// In which direction lines run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Direction {
    /// As English.
    LeftToRight,
    /// As Arabic.
    RightToLeft,
}

/// How someone wants to be spoken to; English, metric and by 24 hours unless told otherwise.
#[derive(Clone, Copy, Default)]
pub struct Locale {
    translation: Option<&'static Translation>,
    /// The units that are shown.
    pub units: UnitSystem,
    /// The hours of the day.
    pub clock: Clock,
}

impl Locale {
    /// English with these units.
    #[must_use]
    pub const fn english(units: UnitSystem) -> Self {
        Self {
            translation: None,
            units,
            clock: Clock::Hours24,
        }
    }

    /// The same in another language; `None` is English.
    #[must_use]
    pub const fn in_language(self, translation: Option<&'static Translation>) -> Self {
        Self {
            translation,
            ..self
        }
    }

    /// The same with these units.
    #[must_use]
    pub const fn with_units(self, units: UnitSystem) -> Self {
        Self { units, ..self }
    }

    /// The same by this clock.
    #[must_use]
    pub const fn by_clock(self, clock: Clock) -> Self {
        Self { clock, ..self }
    }

    /// What stands in for English.
    #[must_use]
    pub const fn translation(self) -> Option<&'static Translation> {
        self.translation
    }

    /// The language as BCP 47 has it: "en", "de".
    #[must_use]
    pub fn tag(self) -> &'static str {
        self.translation.map_or("en", Translation::tag)
    }

    /// In which direction lines run.
    #[must_use]
    pub fn direction(self) -> Direction {
        self.translation
            .map_or(Direction::LeftToRight, Translation::direction)
    }

    /// A number with at least and at most so many decimals.
    #[must_use]
    pub fn decimals(self, number: f64, least: usize, most: usize) -> String {
        self.marked(plain(number, least, most))
    }

    /// A number with so many significant digits.
    #[must_use]
    pub fn significant(self, number: f64, digits: usize) -> String {
        self.marked(quantity::significant(number, digits))
    }

    /// A mass [kg] in the units of the locale.
    #[must_use]
    pub fn mass(self, mass_kg: f64) -> String {
        self.marked(quantity::mass_text(mass_kg, self.units))
    }

    /// A volume [m3] in the units of the locale.
    #[must_use]
    pub fn volume(self, volume_m3: f64) -> String {
        self.marked(quantity::volume_text(volume_m3, self.units))
    }

    /// A temperature [degC] in the units of the locale.
    #[must_use]
    pub fn temperature(self, temperature_c: f64) -> String {
        quantity::temperature_text(temperature_c, self.units)
    }

    /// "a, b and c".
    #[must_use]
    pub fn list<Item: AsRef<str>>(self, items: &[Item]) -> String {
        let (last, before) = match items {
            [] => return String::new(),
            [only] => return only.as_ref().to_owned(),
            [first, second] => {
                return cldr::ListPair {
                    first: first.as_ref(),
                    second: second.as_ref(),
                }
                .said(self);
            }
            [before @ .., last] => (last, before),
        };
        let mut list = String::new();
        for item in before {
            list = if list.is_empty() {
                item.as_ref().to_owned()
            } else {
                cldr::ListMiddle {
                    first: &list,
                    second: item.as_ref(),
                }
                .said(self)
            };
        }
        cldr::ListEnd {
            first: &list,
            second: last.as_ref(),
        }
        .said(self)
    }

    /// What parts whole numbers from their parts.
    #[must_use]
    pub fn decimal_mark(self) -> &'static str {
        cldr::decimal_mark(self)
    }

    /// A number that was written with a point, with the mark of the language.
    fn marked(self, text: String) -> String {
        match self.decimal_mark() {
            "." => text,
            mark => text.replacen('.', mark, 1),
        }
    }

    /// The plural of CLDR for a number that is shown so.
    pub(crate) fn plural(self, shown: &str) -> &'static str {
        let category = self
            .tag()
            .parse::<LanguageIdentifier>()
            .ok()
            .and_then(|locale| PluralRules::try_new_cardinal((&locale).into()).ok())
            .zip(shown.trim_start_matches('\u{2212}').parse::<Decimal>().ok())
            .map_or(PluralCategory::Other, |(rules, decimal)| {
                rules.category_for(&decimal)
            });
        match category {
            PluralCategory::Zero => "zero",
            PluralCategory::One => "one",
            PluralCategory::Two => "two",
            PluralCategory::Few => "few",
            PluralCategory::Many => "many",
            PluralCategory::Other => "other",
        }
    }

    /// Puts what is of unknown direction into a sentence.
    pub(crate) fn isolated(self, sentence: &mut String, text: &str) {
        if self.direction() == Direction::RightToLeft {
            sentence.push(ISOLATED.0);
            sentence.push_str(text);
            sentence.push(ISOLATED.1);
        } else {
            sentence.push_str(text);
        }
    }
}
