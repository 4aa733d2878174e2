//! Values that are written as texts.

use std::fmt;
use std::marker::PhantomData;
use std::str::FromStr;

use serde::de::{Deserializer, Error, Visitor};

/// Reads a value from its text without keeping the text.
pub(crate) fn from_text<'de, T, D>(deserializer: D) -> Result<T, D::Error>
where
    T: FromStr,
    T::Err: fmt::Display,
    D: Deserializer<'de>,
{
    struct Text<T>(PhantomData<T>);
    impl<T: FromStr<Err: fmt::Display>> Visitor<'_> for Text<T> {
        type Value = T;

        fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
            f.write_str("a text in quotes")
        }

        fn visit_str<E: Error>(self, text: &str) -> Result<T, E> {
            text.parse().map_err(E::custom)
        }
    }
    deserializer.deserialize_str(Text(PhantomData))
}
