//! Why could something not be kept or read? One sentence that says what to do.

use std::fmt;

use heapwright_texts::messages::keeping as texts;
use wasm_bindgen::{JsCast, JsValue};

use crate::language;

/// Why the store did not do it. Nothing was kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum KeepError {
    /// There is no room on the device.
    Full,
    /// The browser keeps nothing for this page.
    Refused,
    /// A newer version of the page has the journal open, or had.
    Newer,
    /// Somebody else wrote in between: to be read, then tried again.
    Behind,
    /// Another journal was opened while this waited.
    Swapped,
    /// The part of the page that reads and writes the journal could not be fetched.
    Unfetched,
    /// Something else, by the browser's own word.
    Failed(String),
}

impl KeepError {
    /// From what the browser threw.
    pub fn of(thrown: &JsValue) -> Self {
        let name = thrown
            .dyn_ref::<js_sys::Object>()
            .and_then(|error| js_sys::Reflect::get(error, &JsValue::from_str("name")).ok())
            .and_then(|name| name.as_string())
            .unwrap_or_else(|| texts::unknown_error(language::locale()).to_owned());
        match name.as_str() {
            "QuotaExceededError" => Self::Full,
            // No storage at all (ReferenceError), or closed to this page.
            "SecurityError" | "InvalidStateError" | "ReferenceError" => Self::Refused,
            "VersionError" => Self::Newer,
            "BehindError" | "ConstraintError" => Self::Behind,
            _ => Self::Failed(name),
        }
    }
}

impl fmt::Display for KeepError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let locale = language::locale();
        match self {
            Self::Full => f.write_str(texts::full(locale)),
            Self::Refused => f.write_str(texts::refused(locale)),
            Self::Newer => f.write_str(texts::newer(locale)),
            Self::Behind => f.write_str(texts::behind(locale)),
            Self::Swapped => f.write_str(texts::swapped(locale)),
            Self::Unfetched => f.write_str(texts::unfetched(locale)),
            Self::Failed(name) => f.write_str(&texts::Failed { name }.said(locale)),
        }
    }
}

impl std::error::Error for KeepError {}
