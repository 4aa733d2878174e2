//! Which quantities does a header name, and in which unit? By common words.

use super::header::Header;

/// What a column may hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Quantity {
    Temperature,
    Minimum,
    Maximum,
    Humidity,
    DewPoint,
    Rain,
    Wind,
    Solar,
}

pub(super) const QUANTITIES: [Quantity; 8] = [
    Quantity::Temperature,
    Quantity::Minimum,
    Quantity::Maximum,
    Quantity::Humidity,
    Quantity::DewPoint,
    Quantity::Rain,
    Quantity::Wind,
    Quantity::Solar,
];

/// How a unit becomes the one that is kept: times, plus.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Unit {
    pub name: &'static str,
    pub factor: f64,
    pub shift: f64,
    /// Given per hour and not per row: rows within an hour are averaged.
    pub is_rate: bool,
}

const fn unit(name: &'static str, factor: f64, shift: f64) -> Unit {
    Unit {
        name,
        factor,
        shift,
        is_rate: false,
    }
}

const fn rate(name: &'static str, factor: f64) -> Unit {
    Unit {
        name,
        factor,
        shift: 0.0,
        is_rate: true,
    }
}

const CELSIUS: Unit = unit("degC", 1.0, 0.0);
const FAHRENHEIT: Unit = unit("degF", 5.0 / 9.0, -160.0 / 9.0);
const KELVIN: Unit = unit("K", 1.0, -273.15);
pub(super) const PERCENT: Unit = unit("%", 0.01, 0.0);
pub(super) const SHARE: Unit = unit("share", 1.0, 0.0);
pub(super) const WATT: Unit = unit("W/m2", 1.0, 0.0);
pub(super) const MEGAJOULE: Unit = unit("MJ/m2", 1e6 / 3600.0, 0.0);

/// A row of the table of units: spellings without spaces, in small letters.
type Spelt = (&'static [&'static str], Unit);

const TEMPERATURES: &[Spelt] = &[
    (&["c", "°c", "ºc", "degc", "celsius", "gradc", "℃"], CELSIUS),
    (&["f", "°f", "ºf", "degf", "fahrenheit", "℉"], FAHRENHEIT),
    (&["k", "kelvin"], KELVIN),
];
const HUMIDITIES: &[Spelt] = &[
    (&["%", "pct", "percent", "prozent", "%rh"], PERCENT),
    (&["share", "fraction", "01", "0to1"], SHARE),
];
const RAINS: &[Spelt] = &[
    (
        &[
            "mm",
            "l/m2",
            "l/m²",
            "kg/m2",
            "kg/m²",
            "millimeter",
            "millimetre",
            "millimeters",
            "millimetres",
        ],
        unit("mm", 1.0, 0.0),
    ),
    (&["cm"], unit("cm", 10.0, 0.0)),
    (&["in", "inch", "inches", "\""], unit("in", 25.4, 0.0)),
    (&["mm/h", "mm/hr", "mmh", "mmperh"], rate("mm/h", 1.0)),
    (&["in/h", "in/hr", "inh"], rate("in/h", 25.4)),
];
const WINDS: &[Spelt] = &[
    (
        &["m/s", "ms", "mps", "mpers", "ms1", "m/sec", "ms-1"],
        unit("m/s", 1.0, 0.0),
    ),
    (
        &["km/h", "kmh", "kph", "kmperh", "kmh1", "km/hr"],
        unit("km/h", 1.0 / 3.6, 0.0),
    ),
    (&["mph", "mi/h", "miles/h"], unit("mph", 0.447_04, 0.0)),
    (
        &["kn", "kt", "kts", "knots", "knot", "knoten"],
        unit("kn", 1852.0 / 3600.0, 0.0),
    ),
    (&["ft/s", "fps"], unit("ft/s", 0.3048, 0.0)),
];
/// Energies are those of a row's hour.
const SOLARS: &[Spelt] = &[
    (
        &[
            "w/m2", "w/m²", "w/m^2", "wm2", "wm²", "wperm2", "w/sqm", "wm-2",
        ],
        WATT,
    ),
    (&["wh/m2", "wh/m²", "whm2"], unit("Wh/m2", 1.0, 0.0)),
    (&["kwh/m2", "kwh/m²"], unit("kWh/m2", 1000.0, 0.0)),
    (
        &["j/cm2", "j/cm²", "j/cm^2", "jcm2"],
        unit("J/cm2", 1e4 / 3600.0, 0.0),
    ),
    (
        &["kj/m2", "kj/m²", "kjm2"],
        unit("kJ/m2", 1e3 / 3600.0, 0.0),
    ),
    (&["mj/m2", "mj/m²", "mj/m^2", "mjm2"], MEGAJOULE),
];

/// Words, by their beginnings; a `=` before one asks for the whole word.
struct Words {
    any: &'static [&'static str],
    none: &'static [&'static str],
}

const TEMPERATURE: Words = Words {
    any: &[
        "temp", "lufttemp", "drybulb", "dry", "=t2m", "=ta", "=tair", "=t", "=tt", "=tavg",
        "=tmean",
    ],
    none: &[
        "dew", "tau", "rosee", "rocio", "soil", "boden", "ground", "water", "feel", "apparent",
        "wet", "chill", "index", "indoor", "=inside", "surface", "max", "min", "hoch", "tief",
        "humid", "grass", "heap",
    ],
};
const MINIMUM: Words = Words {
    any: &[
        "tmin", "mintemp", "tempmin", "=tn", "=tnk", "tempmin", "=min", "minimum", "lowest",
    ],
    none: &[
        "soil", "boden", "ground", "grass", "dew", "humid", "wind", "rain", "max",
    ],
};
const MAXIMUM: Words = Words {
    any: &[
        "tmax", "maxtemp", "tempmax", "=tx", "=txk", "=max", "maximum", "highest",
    ],
    none: &[
        "soil", "boden", "ground", "dew", "humid", "wind", "rain", "gust", "min",
    ],
};
const HUMIDITY: Words = Words {
    any: &[
        "humid",
        "=rh",
        "rhum",
        "=rhpct",
        "feuchte",
        "luftfeuchte",
        "relfeuchte",
        "=rf",
        "=hum",
        "humed",
        "=hr",
        "=ur",
    ],
    none: &[
        "soil", "boden", "specific", "absolute", "indoor", "max", "min", "=inside",
    ],
};
const DEW_POINT: Words = Words {
    any: &["dew", "taupunkt", "rosee", "rocio", "=td"],
    none: &["depression", "indoor", "max", "min"],
};
const RAIN: Words = Words {
    any: &[
        "rain",
        "precip",
        "niederschlag",
        "regen",
        "pluie",
        "lluvia",
        "=rr",
        "=prcp",
        "=rs",
        "=rsk",
        "lprecip",
    ],
    none: &[
        "prob", "chance", "year", "month", "week", "event", "cumul", "accumul", "type", "hours",
        "duration", "max",
    ],
};
const WIND: Words = Words {
    any: &[
        "wind", "wspd", "=ws", "vent", "viento", "=ff", "=awnd", "=fm",
    ],
    none: &[
        "dir", "gust", "max", "chill", "bearing", "boe", "rafale", "racha",
    ],
};
const SOLAR: Words = Words {
    any: &[
        "solar",
        "global",
        "=ghi",
        "radiation",
        "globalstrahlung",
        "shortwave",
        "strahlung",
        "rayonnement",
        "radiacion",
        "=srad",
        "=rs24",
        "irradiance",
    ],
    none: &[
        "direct",
        "diffus",
        "normal",
        "uv",
        "longwave",
        "net",
        "terrestrial",
        "extra",
        "max",
        "=dni",
        "=dhi",
        "illum",
        "time",
        "energy",
        "elevation",
    ],
};
/// Columns about columns.
const ABOUT: [&str; 10] = [
    "source",
    "uncert",
    "flag",
    "quality",
    "code",
    "=qc",
    "=qn",
    "error",
    "count",
    "attribute",
];

impl Quantity {
    fn words(self) -> &'static Words {
        match self {
            Self::Temperature => &TEMPERATURE,
            Self::Minimum => &MINIMUM,
            Self::Maximum => &MAXIMUM,
            Self::Humidity => &HUMIDITY,
            Self::DewPoint => &DEW_POINT,
            Self::Rain => &RAIN,
            Self::Wind => &WIND,
            Self::Solar => &SOLAR,
        }
    }

    fn units(self) -> &'static [Spelt] {
        match self {
            Self::Temperature | Self::Minimum | Self::Maximum | Self::DewPoint => TEMPERATURES,
            Self::Humidity => HUMIDITIES,
            Self::Rain => RAINS,
            Self::Wind => WINDS,
            Self::Solar => SOLARS,
        }
    }

    /// The unit of a column that names none.
    pub fn usual_unit(self) -> Unit {
        match self {
            Self::Humidity => PERCENT,
            Self::Solar => WATT,
            other => other.units()[0].1,
        }
    }

    /// The least and the most that is believed, in the unit that is kept, and both in words.
    pub fn bounds(self, is_daily: bool) -> (f64, f64, &'static str) {
        match self {
            Self::Temperature | Self::Minimum | Self::Maximum => (-90.0, 60.0, "-90 to 60 degC"),
            Self::DewPoint => (-100.0, 40.0, "-100 to 40 degC"),
            // Sensors drift: what is a little above 100 % counts as saturated.
            Self::Humidity => (0.0, 1.1, "0 to 100 %"),
            Self::Rain if is_daily => (0.0, 2000.0, "0 to 2000 mm in a day"),
            Self::Rain => (0.0, 450.0, "0 to 450 mm in an hour"),
            Self::Wind => (0.0, 120.0, "0 to 120 m/s"),
            // Sensors show a little below nothing at night. A day's mean cannot reach 600 W/m2.
            Self::Solar if is_daily => (-20.0, 600.0, "0 to 50 MJ/m2 in a day"),
            Self::Solar => (-20.0, 1700.0, "0 to 1700 W/m2"),
        }
    }

    /// How well a header names this quantity: nothing, or the less the better.
    pub fn named_by(self, header: &Header) -> Option<usize> {
        let words = self.words();
        let holds = |word: &&str| header.holds(word);
        if words.none.iter().any(holds) || ABOUT.iter().any(holds) {
            return None;
        }
        let by_word = words.any.iter().position(|word| header.holds(word));
        let by_pair = || {
            let of_temperature = header.holds("temp") || header.holds("lufttemp");
            let end = match self {
                Self::Minimum => ["min", "low", "tief"],
                Self::Maximum => ["max", "high", "hoch"],
                _ => return None,
            };
            (of_temperature && end.iter().any(|word| header.holds(word))).then_some(0)
        };
        // Fewer words more closely name it: "wind" before "wind at 80 m".
        by_pair()
            .or(by_word)
            .map(|place| place + header.words.len())
    }

    /// The unit that a header names.
    pub fn unit(self, header: &Header) -> Option<Unit> {
        let spelt = |text: &str| {
            self.units()
                .iter()
                .find(|(spellings, _)| spellings.contains(&text))
                .map(|(_, unit)| *unit)
        };
        header.unit_candidates().find_map(|text| spelt(&text))
    }
}
