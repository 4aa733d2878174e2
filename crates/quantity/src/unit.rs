//! What is a pound, a gallon or a bushel in SI? Units with their exact defining factors.
//!
//! Sources of the factors:
//! - pound: 0.45359237 kg exactly; yard: 0.9144 m exactly, so inch 0.0254 m and foot 0.3048 m
//!   (international yard and pound agreement, 1959);
//! - US liquid gallon: 231 cubic inches; US bushel: 2150.42 cubic inches (NIST Handbook 44, appendix C);
//! - imperial gallon: 4.54609 L exactly (UK Weights and Measures Act 1985, schedule 1).

const KILOGRAMS_PER_POUND: f64 = 0.453_592_37;
const CUBIC_METRES_PER_CUBIC_INCH: f64 = 0.000_016_387_064;
const CUBIC_METRES_PER_US_GALLON: f64 = 0.003_785_411_784;
const CUBIC_METRES_PER_IMPERIAL_GALLON: f64 = 0.004_546_09;

/// A unit of mass that people weigh with.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum MassUnit {
    /// Kilogram, the SI unit.
    Kilogram,
    /// Gram, 0.001 kg.
    Gram,
    /// Metric ton, 1000 kg.
    Tonne,
    /// Avoirdupois pound, 0.45359237 kg.
    Pound,
    /// Avoirdupois ounce, 1/16 pound.
    Ounce,
    /// Stone, 14 pounds.
    Stone,
    /// US ton, 2000 pounds.
    ShortTon,
    /// Imperial ton, 2240 pounds.
    LongTon,
}

impl MassUnit {
    /// Every unit of mass.
    pub const ALL: [Self; 8] = [
        Self::Kilogram,
        Self::Gram,
        Self::Tonne,
        Self::Pound,
        Self::Ounce,
        Self::Stone,
        Self::ShortTon,
        Self::LongTon,
    ];

    /// Mass of one unit [kg]. Source: international yard and pound agreement, 1959.
    #[must_use]
    pub const fn kilograms(self) -> f64 {
        match self {
            Self::Kilogram => 1.0,
            Self::Gram => 0.001,
            Self::Tonne => 1000.0,
            Self::Pound => KILOGRAMS_PER_POUND,
            Self::Ounce => KILOGRAMS_PER_POUND / 16.0,
            Self::Stone => KILOGRAMS_PER_POUND * 14.0,
            Self::ShortTon => KILOGRAMS_PER_POUND * 2000.0,
            Self::LongTon => KILOGRAMS_PER_POUND * 2240.0,
        }
    }

    /// Symbol for screens and lists; the parser reads it back as the same unit.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Kilogram => "kg",
            Self::Gram => "g",
            Self::Tonne => "t",
            Self::Pound => "lb",
            Self::Ounce => "oz",
            Self::Stone => "stone",
            Self::ShortTon => "short ton",
            Self::LongTon => "long ton",
        }
    }
}

/// A unit of volume that people measure with.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum VolumeUnit {
    /// Cubic metre, the SI unit.
    CubicMetre,
    /// Litre, 0.001 m3.
    Litre,
    /// Decilitre, 0.1 L.
    Decilitre,
    /// Centilitre, 0.01 L.
    Centilitre,
    /// Millilitre or cubic centimetre, 0.001 L.
    Millilitre,
    /// US liquid gallon, 231 cubic inches.
    UsGallon,
    /// US liquid quart, 1/4 US gallon.
    UsQuart,
    /// US liquid pint, 1/8 US gallon.
    UsPint,
    /// US cup, 1/16 US gallon (236.588 mL).
    UsCup,
    /// US fluid ounce, 1/128 US gallon.
    UsFluidOunce,
    /// US bushel, 2150.42 cubic inches.
    UsBushel,
    /// Imperial gallon, 4.54609 L.
    ImperialGallon,
    /// Imperial quart, 1/4 imperial gallon.
    ImperialQuart,
    /// Imperial pint, 1/8 imperial gallon.
    ImperialPint,
    /// Imperial fluid ounce, 1/160 imperial gallon.
    ImperialFluidOunce,
    /// Imperial bushel, 8 imperial gallons.
    ImperialBushel,
    /// Cubic inch.
    CubicInch,
    /// Cubic foot, 1728 cubic inches.
    CubicFoot,
    /// Cubic yard, 27 cubic feet.
    CubicYard,
}

impl VolumeUnit {
    /// Every unit of volume.
    pub const ALL: [Self; 19] = [
        Self::CubicMetre,
        Self::Litre,
        Self::Decilitre,
        Self::Centilitre,
        Self::Millilitre,
        Self::UsGallon,
        Self::UsQuart,
        Self::UsPint,
        Self::UsCup,
        Self::UsFluidOunce,
        Self::UsBushel,
        Self::ImperialGallon,
        Self::ImperialQuart,
        Self::ImperialPint,
        Self::ImperialFluidOunce,
        Self::ImperialBushel,
        Self::CubicInch,
        Self::CubicFoot,
        Self::CubicYard,
    ];

    /// Volume of one unit [m3]. Source: see the module.
    #[must_use]
    pub const fn cubic_metres(self) -> f64 {
        match self {
            Self::CubicMetre => 1.0,
            Self::Litre => 0.001,
            Self::Decilitre => 0.000_1,
            Self::Centilitre => 0.000_01,
            Self::Millilitre => 0.000_001,
            Self::UsGallon => CUBIC_METRES_PER_US_GALLON,
            Self::UsQuart => CUBIC_METRES_PER_US_GALLON / 4.0,
            Self::UsPint => CUBIC_METRES_PER_US_GALLON / 8.0,
            Self::UsCup => CUBIC_METRES_PER_US_GALLON / 16.0,
            Self::UsFluidOunce => CUBIC_METRES_PER_US_GALLON / 128.0,
            Self::UsBushel => CUBIC_METRES_PER_CUBIC_INCH * 2150.42,
            Self::ImperialGallon => CUBIC_METRES_PER_IMPERIAL_GALLON,
            Self::ImperialQuart => CUBIC_METRES_PER_IMPERIAL_GALLON / 4.0,
            Self::ImperialPint => CUBIC_METRES_PER_IMPERIAL_GALLON / 8.0,
            Self::ImperialFluidOunce => CUBIC_METRES_PER_IMPERIAL_GALLON / 160.0,
            Self::ImperialBushel => CUBIC_METRES_PER_IMPERIAL_GALLON * 8.0,
            Self::CubicInch => CUBIC_METRES_PER_CUBIC_INCH,
            Self::CubicFoot => 0.028_316_846_592,
            Self::CubicYard => 0.764_554_857_984,
        }
    }

    /// Symbol for screens and lists; the parser reads it back as the same unit.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::CubicMetre => "m³",
            Self::Litre => "L",
            Self::Decilitre => "dL",
            Self::Centilitre => "cL",
            Self::Millilitre => "mL",
            Self::UsGallon => "US gal",
            Self::UsQuart => "US qt",
            Self::UsPint => "US pt",
            Self::UsCup => "US cup",
            Self::UsFluidOunce => "US fl oz",
            Self::UsBushel => "US bushel",
            Self::ImperialGallon => "imp gal",
            Self::ImperialQuart => "imp qt",
            Self::ImperialPint => "imp pt",
            Self::ImperialFluidOunce => "imp fl oz",
            Self::ImperialBushel => "imp bushel",
            Self::CubicInch => "cu in",
            Self::CubicFoot => "cu ft",
            Self::CubicYard => "cu yd",
        }
    }
}

/// Temperature in degC of one in degF: (F - 32) 5 / 9.
#[must_use]
pub fn celsius_from_fahrenheit(temperature_f: f64) -> f64 {
    (temperature_f - 32.0) * 5.0 / 9.0
}

/// Temperature in degF of one in degC: 9 C / 5 + 32.
#[must_use]
pub fn fahrenheit_from_celsius(temperature_c: f64) -> f64 {
    temperature_c * 9.0 / 5.0 + 32.0
}

#[cfg(test)]
mod tests {
    use super::*;

    fn assert_close(found: f64, expected: f64) {
        // A few steps of f64: the factors are products of at most three exact decimals.
        assert!(
            (found - expected).abs() <= expected.abs() * 1e-15 * 4.0,
            "{found} is not {expected}"
        );
    }

    #[test]
    fn cubic_metres_follow_from_the_inch() {
        let inch_m: f64 = 0.0254;
        let cubic_inch_m3 = inch_m * inch_m * inch_m;
        assert_close(VolumeUnit::CubicInch.cubic_metres(), cubic_inch_m3);
        assert_close(VolumeUnit::UsGallon.cubic_metres(), cubic_inch_m3 * 231.0);
        assert_close(VolumeUnit::CubicFoot.cubic_metres(), cubic_inch_m3 * 1728.0);
        assert_close(
            VolumeUnit::CubicYard.cubic_metres(),
            cubic_inch_m3 * 46656.0,
        );
        assert_close(VolumeUnit::UsBushel.cubic_metres(), 0.035_239_070_166_88);
        assert_close(VolumeUnit::UsCup.cubic_metres(), 0.000_236_588_236_5);
    }

    #[test]
    fn imperial_units_follow_from_the_gallon() {
        assert_close(VolumeUnit::ImperialPint.cubic_metres(), 0.000_568_261_25);
        assert_close(VolumeUnit::ImperialBushel.cubic_metres(), 0.036_368_72);
        assert_close(
            VolumeUnit::ImperialFluidOunce.cubic_metres(),
            0.000_028_413_062_5,
        );
    }

    #[test]
    fn kilograms_follow_from_the_pound() {
        assert_close(MassUnit::Ounce.kilograms(), 0.028_349_523_125);
        assert_close(MassUnit::Stone.kilograms(), 6.350_293_18);
        assert_close(MassUnit::ShortTon.kilograms(), 907.184_74);
        assert_close(MassUnit::LongTon.kilograms(), 1_016.046_908_8);
    }

    #[test]
    fn fahrenheit_and_celsius_meet_where_they_should() {
        assert_eq!(celsius_from_fahrenheit(212.0), 100.0);
        assert_eq!(celsius_from_fahrenheit(131.0), 55.0);
        assert_eq!(celsius_from_fahrenheit(-40.0), -40.0);
        assert_eq!(fahrenheit_from_celsius(55.0), 131.0);
        assert_eq!(fahrenheit_from_celsius(0.0), 32.0);
    }
}
