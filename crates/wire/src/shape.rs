//! What shape must a value have? Objects are written as objects, names stand once, and a message
//! about a wrong shape speaks of JSON, not of the types in which we keep it.

use std::collections::BTreeMap;
use std::fmt;

use serde::de::value::{MapAccessDeserializer, SeqAccessDeserializer};
use serde::de::{DeserializeOwned, Deserializer, Error, MapAccess, SeqAccess, Visitor};
use serde::{Deserialize, forward_to_deserialize_any};

use crate::WireError;
use crate::garden_file::FigureFile;
use crate::request::{WaterFile, WaterLimits};

/// The value that a text of JSON holds; faults are told with their field.
pub(crate) fn from_json<T: DeserializeOwned>(text: &str) -> Result<T, WireError> {
    let mut deserializer = serde_json::Deserializer::from_str(text);
    let value = serde_path_to_error::deserialize(&mut deserializer).map_err(|error| {
        let path = error.path().to_string();
        WireError::Json {
            field: if path == "." { String::new() } else { path },
            what: plain(error.inner()),
        }
    })?;
    deserializer.end().map_err(|error| WireError::Json {
        field: String::new(),
        what: plain(&error),
    })?;
    Ok(value)
}

/// Words of the JSON reader and what they are to a keeper.
const PLAIN_WORDS: [(&str, &str); 18] = [
    ("invalid type: sequence", "invalid type: a list"),
    ("invalid type: map", "invalid type: an object"),
    (
        "EOF while parsing a value",
        "it ends where a value is missing",
    ),
    ("EOF while parsing a list", "it ends inside a list"),
    ("EOF while parsing an object", "it ends inside an object"),
    ("EOF while parsing a string", "it ends inside a text"),
    (
        "recursion limit exceeded",
        "values lie too deep in each other",
    ),
    ("expected ident", "expected true, false or null"),
    ("unknown variant", "unknown word"),
    ("expected f64", "expected a number"),
    ("expected a string", "expected a text in quotes"),
    ("expected a boolean", "expected true or false"),
    ("expected a sequence", "expected a list in square brackets"),
    ("expected a map", "expected an object in braces"),
    ("an array of length 2", "two numbers in square brackets"),
    ("an array of length 3", "three numbers in square brackets"),
    ("an array of length 12", "twelve numbers in square brackets"),
    ("expected u32", "expected a whole number of 0 or more"),
];

/// What a reader's message says, in plain words. Words that were typed are left alone.
fn plain(error: &serde_json::Error) -> String {
    let place = format!(" at line {} column {}", error.line(), error.column());
    let text = error.to_string();
    let (mut what, at) = match text.strip_suffix(&place) {
        Some(what) if error.line() > 0 => (
            what.to_owned(),
            format!(" (line {}, column {})", error.line(), error.column()),
        ),
        Some(what) => (what.to_owned(), String::new()),
        None => (text, String::new()),
    };
    // What is typed is quoted and stands before what is expected.
    for (from, to) in PLAIN_WORDS {
        if let Some(start) = what.rfind(from).filter(|start| {
            *start == 0 || from.starts_with("expected") || from.starts_with("an array")
        }) {
            what.replace_range(start..start + from.len(), to);
        }
    }
    what + &at
}

/// Reads a type that derives `Deserialize` with `remote = "Self"` from an object only: the derived
/// reader alone would also take a list of the fields in their order, which no schema describes.
pub(crate) struct ObjectOnly<D>(pub D);

impl<'de, D: Deserializer<'de>> Deserializer<'de> for ObjectOnly<D> {
    type Error = D::Error;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, D::Error> {
        self.0.deserialize_map(visitor)
    }

    forward_to_deserialize_any! {
        bool i8 i16 i32 i64 i128 u8 u16 u32 u64 u128 f32 f64 char str string bytes byte_buf option
        unit unit_struct newtype_struct seq tuple tuple_struct map struct enum identifier ignored_any
    }
}

/// Makes types with derived readers (`remote = "Self"`) read from objects only.
macro_rules! objects_only {
    ($($name:ty),+ $(,)?) => {$(
        impl<'de> serde::Deserialize<'de> for $name {
            fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                <$name>::deserialize($crate::shape::ObjectOnly(deserializer))
            }
        }

        impl serde::Serialize for $name {
            fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                <$name>::serialize(self, serializer)
            }
        }
    )+};
}
pub(crate) use objects_only;

/// An object whose names stand once each.
pub(crate) fn names_once<'de, D: Deserializer<'de>>(
    deserializer: D,
) -> Result<BTreeMap<String, String>, D::Error> {
    struct Names;
    impl<'de> Visitor<'de> for Names {
        type Value = BTreeMap<String, String>;

        fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
            f.write_str("an object in braces")
        }

        fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Self::Value, A::Error> {
            let mut names = BTreeMap::new();
            while let Some((name, value)) = map.next_entry::<String, String>()? {
                if names.contains_key(&name) {
                    let what = format!("\"{name}\" is there twice: give each once");
                    return Err(A::Error::custom(what));
                }
                names.insert(name, value);
            }
            Ok(names)
        }
    }
    deserializer.deserialize_map(Names)
}

impl<'de> Deserialize<'de> for WaterFile {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Water;
        impl<'de> Visitor<'de> for Water {
            type Value = WaterFile;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("true, false, or an object with max and step")
            }

            fn visit_bool<E: Error>(self, there_is: bool) -> Result<WaterFile, E> {
                Ok(WaterFile::Any(there_is))
            }

            fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<WaterFile, A::Error> {
                <WaterLimits as Deserialize>::deserialize(MapAccessDeserializer::new(map))
                    .map(WaterFile::Limited)
            }
        }
        deserializer.deserialize_any(Water)
    }
}

impl<'de> Deserialize<'de> for FigureFile {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Figure;
        impl<'de> Visitor<'de> for Figure {
            type Value = FigureFile;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("one number, or low, typical and high in square brackets")
            }

            fn visit_f64<E: Error>(self, value: f64) -> Result<FigureFile, E> {
                Ok(FigureFile::One(value))
            }

            #[allow(clippy::cast_precision_loss)] // beyond 2^53 no figure is possible anyway
            fn visit_i64<E: Error>(self, value: i64) -> Result<FigureFile, E> {
                Ok(FigureFile::One(value as f64))
            }

            #[allow(clippy::cast_precision_loss)] // as above
            fn visit_u64<E: Error>(self, value: u64) -> Result<FigureFile, E> {
                Ok(FigureFile::One(value as f64))
            }

            fn visit_seq<A: SeqAccess<'de>>(self, figures: A) -> Result<FigureFile, A::Error> {
                <[f64; 3]>::deserialize(SeqAccessDeserializer::new(figures)).map(FigureFile::Three)
            }
        }
        deserializer.deserialize_any(Figure)
    }
}
