//! Which unit does a written word mean? One table of every spelling the parsers know.

use crate::unit::{MassUnit, VolumeUnit};
use crate::vocabulary::Gallon;

/// A written unit that has been understood, or cannot be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum UnitWord {
    Mass(MassUnit),
    Volume(VolumeUnit),
    /// The word is used for several units; these are the clear ways to write them.
    Ambiguous(&'static [&'static str]),
}

#[derive(Clone, Copy)]
enum Entry {
    Mass(MassUnit),
    Volume(VolumeUnit),
    ByGallon(VolumeUnit, VolumeUnit),
    Ambiguous(&'static [&'static str]),
}

use Entry::{Ambiguous, ByGallon, Mass, Volume};
use MassUnit::{Gram, Kilogram, LongTon, Ounce, Pound, ShortTon, Stone, Tonne};
use VolumeUnit as V;

const GALLON: Entry = ByGallon(V::UsGallon, V::ImperialGallon);
const QUART: Entry = ByGallon(V::UsQuart, V::ImperialQuart);
const PINT: Entry = ByGallon(V::UsPint, V::ImperialPint);
const FLUID_OUNCE: Entry = ByGallon(V::UsFluidOunce, V::ImperialFluidOunce);
const BUSHEL: Entry = ByGallon(V::UsBushel, V::ImperialBushel);
const TON: Entry = Ambiguous(&[
    "tonne (1000 kg)",
    "short ton (2000 lb)",
    "long ton (2240 lb)",
]);
const HUNDREDWEIGHT: Entry = Ambiguous(&["100 lb", "112 lb"]);

/// The most words that one unit takes ("imperial fluid ounces").
pub(crate) const LONGEST_UNIT_WORDS: usize = 3;

/// Spellings in lower case, sorted, words parted by one space. "us" and "imperial" before a
/// gallon, quart, pint, fluid ounce, bushel or cup are read by `unit_named`.
const SPELLINGS: &[(&str, Entry)] = &[
    ("bu", BUSHEL),
    ("bushel", BUSHEL),
    ("bushels", BUSHEL),
    ("cc", Volume(V::Millilitre)),
    ("centiliter", Volume(V::Centilitre)),
    ("centiliters", Volume(V::Centilitre)),
    ("centilitre", Volume(V::Centilitre)),
    ("centilitres", Volume(V::Centilitre)),
    ("cl", Volume(V::Centilitre)),
    ("cm3", Volume(V::Millilitre)),
    ("cm³", Volume(V::Millilitre)),
    ("cu ft", Volume(V::CubicFoot)),
    ("cu in", Volume(V::CubicInch)),
    ("cu m", Volume(V::CubicMetre)),
    ("cu yd", Volume(V::CubicYard)),
    ("cu yds", Volume(V::CubicYard)),
    ("cubic centimeter", Volume(V::Millilitre)),
    ("cubic centimeters", Volume(V::Millilitre)),
    ("cubic centimetre", Volume(V::Millilitre)),
    ("cubic centimetres", Volume(V::Millilitre)),
    ("cubic feet", Volume(V::CubicFoot)),
    ("cubic foot", Volume(V::CubicFoot)),
    ("cubic inch", Volume(V::CubicInch)),
    ("cubic inches", Volume(V::CubicInch)),
    ("cubic meter", Volume(V::CubicMetre)),
    ("cubic meters", Volume(V::CubicMetre)),
    ("cubic metre", Volume(V::CubicMetre)),
    ("cubic metres", Volume(V::CubicMetre)),
    ("cubic yard", Volume(V::CubicYard)),
    ("cubic yards", Volume(V::CubicYard)),
    ("cup", Volume(V::UsCup)),
    ("cups", Volume(V::UsCup)),
    ("cwt", HUNDREDWEIGHT),
    ("deciliter", Volume(V::Decilitre)),
    ("deciliters", Volume(V::Decilitre)),
    ("decilitre", Volume(V::Decilitre)),
    ("decilitres", Volume(V::Decilitre)),
    ("dl", Volume(V::Decilitre)),
    ("dm3", Volume(V::Litre)),
    ("dm³", Volume(V::Litre)),
    ("fl oz", FLUID_OUNCE),
    ("fluid ounce", FLUID_OUNCE),
    ("fluid ounces", FLUID_OUNCE),
    ("ft3", Volume(V::CubicFoot)),
    ("ft^3", Volume(V::CubicFoot)),
    ("ft³", Volume(V::CubicFoot)),
    ("g", Mass(Gram)),
    ("gal", GALLON),
    ("gallon", GALLON),
    ("gallons", GALLON),
    ("gals", GALLON),
    ("gm", Mass(Gram)),
    ("gms", Mass(Gram)),
    ("gr", Ambiguous(&["g (gram)", "oz"])),
    ("gram", Mass(Gram)),
    ("gramme", Mass(Gram)),
    ("grammes", Mass(Gram)),
    ("grams", Mass(Gram)),
    ("hundredweight", HUNDREDWEIGHT),
    ("hundredweights", HUNDREDWEIGHT),
    ("in3", Volume(V::CubicInch)),
    ("in^3", Volume(V::CubicInch)),
    ("in³", Volume(V::CubicInch)),
    ("kg", Mass(Kilogram)),
    ("kgs", Mass(Kilogram)),
    ("kilo", Mass(Kilogram)),
    ("kilogram", Mass(Kilogram)),
    ("kilogramme", Mass(Kilogram)),
    ("kilogrammes", Mass(Kilogram)),
    ("kilograms", Mass(Kilogram)),
    ("kilos", Mass(Kilogram)),
    ("l", Volume(V::Litre)),
    ("lb", Mass(Pound)),
    ("lbs", Mass(Pound)),
    ("liter", Volume(V::Litre)),
    ("liters", Volume(V::Litre)),
    ("litre", Volume(V::Litre)),
    ("litres", Volume(V::Litre)),
    ("long ton", Mass(LongTon)),
    ("long tons", Mass(LongTon)),
    ("ltr", Volume(V::Litre)),
    ("ltrs", Volume(V::Litre)),
    ("m3", Volume(V::CubicMetre)),
    ("m^3", Volume(V::CubicMetre)),
    ("metric ton", Mass(Tonne)),
    ("metric tonne", Mass(Tonne)),
    ("metric tonnes", Mass(Tonne)),
    ("metric tons", Mass(Tonne)),
    ("milliliter", Volume(V::Millilitre)),
    ("milliliters", Volume(V::Millilitre)),
    ("millilitre", Volume(V::Millilitre)),
    ("millilitres", Volume(V::Millilitre)),
    ("ml", Volume(V::Millilitre)),
    ("m³", Volume(V::CubicMetre)),
    ("ounce", Mass(Ounce)),
    ("ounces", Mass(Ounce)),
    ("oz", Mass(Ounce)),
    ("ozs", Mass(Ounce)),
    ("pint", PINT),
    ("pints", PINT),
    ("pound", Mass(Pound)),
    ("pounds", Mass(Pound)),
    ("pt", PINT),
    ("pts", PINT),
    ("qt", QUART),
    ("qts", QUART),
    ("quart", QUART),
    ("quarts", QUART),
    ("short ton", Mass(ShortTon)),
    ("short tons", Mass(ShortTon)),
    ("stone", Mass(Stone)),
    ("stones", Mass(Stone)),
    ("t", Mass(Tonne)),
    ("ton", TON),
    ("tonne", Mass(Tonne)),
    ("tonnes", Mass(Tonne)),
    ("tons", TON),
    ("yd3", Volume(V::CubicYard)),
    ("yd^3", Volume(V::CubicYard)),
    ("yd³", Volume(V::CubicYard)),
];

fn spelling(phrase: &str) -> Option<Entry> {
    let place = SPELLINGS.binary_search_by(|(word, _)| (*word).cmp(phrase));
    place.ok().map(|index| SPELLINGS[index].1)
}

/// The unit of a phrase in lower case with single spaces, or `None` when it is no unit.
///
/// "us ..." and "imperial ...", "imp ...", "uk ..." say which gallon; without them `gallon` decides.
pub(crate) fn unit_named(phrase: &str, gallon: Gallon) -> Option<UnitWord> {
    let (said, plain) = match phrase.split_once(' ') {
        Some(("us", rest)) => (Some(Gallon::Us), rest),
        Some(("imperial" | "imp" | "uk", rest)) => (Some(Gallon::Imperial), rest),
        _ => (None, phrase),
    };
    match (spelling(plain)?, said) {
        (ByGallon(us, imperial), _) => Some(UnitWord::Volume(match said.unwrap_or(gallon) {
            Gallon::Us => us,
            Gallon::Imperial => imperial,
        })),
        (Volume(V::UsCup), Some(Gallon::Us)) => Some(UnitWord::Volume(V::UsCup)),
        (_, Some(_)) => None,
        (Mass(unit), None) => Some(UnitWord::Mass(unit)),
        (Volume(unit), None) => Some(UnitWord::Volume(unit)),
        (Ambiguous(clear), None) => Some(UnitWord::Ambiguous(clear)),
    }
}

/// Every spelling, for suggestions.
pub(crate) fn spellings<'a>() -> impl Iterator<Item = &'a str> {
    SPELLINGS.iter().map(|(word, _)| *word)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn spellings_are_sorted_and_unique() {
        for pair in SPELLINGS.windows(2) {
            assert!(pair[0].0 < pair[1].0, "{} before {}", pair[0].0, pair[1].0);
        }
    }

    #[test]
    fn unit_named_reads_every_symbol_under_either_gallon() {
        for gallon in [Gallon::Us, Gallon::Imperial] {
            for unit in MassUnit::ALL {
                let phrase = unit.symbol().to_lowercase();
                assert_eq!(unit_named(&phrase, gallon), Some(UnitWord::Mass(unit)));
            }
            for unit in VolumeUnit::ALL {
                let phrase = unit.symbol().to_lowercase();
                assert_eq!(unit_named(&phrase, gallon), Some(UnitWord::Volume(unit)));
            }
        }
    }

    #[test]
    fn unit_named_refuses_a_country_before_a_metric_unit() {
        assert_eq!(unit_named("us kg", Gallon::Us), None);
        assert_eq!(unit_named("imperial cup", Gallon::Us), None);
    }
}
