//! Why could something not be kept or read? One sentence that says what to do.

use std::fmt;

use wasm_bindgen::{JsCast, JsValue};

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
            .unwrap_or_else(|| "an unknown error".to_owned());
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
        match self {
            Self::Full => f.write_str(
                "This device has no room left, so nothing was saved. Make room and try again: what you entered is still here.",
            ),
            Self::Refused => f.write_str(
                "This browser keeps no journal for this page, so nothing was saved. Leave the private window, or allow the page to keep data, then load it again.",
            ),
            Self::Newer => f.write_str(
                "A newer version of this page has been at the journal, so nothing was saved. Close its other tabs, then load this page again with a signal.",
            ),
            Self::Behind => f.write_str(
                "Another tab wrote at the same time, so nothing was saved here. Try again: what you entered is still here.",
            ),
            Self::Swapped => f.write_str(
                "Another garden was opened before this was saved, so it was not saved. Go back to the first one and enter it again.",
            ),
            Self::Unfetched => f.write_str(
                "A part of this page could not be fetched, so the journal is not open. Load the page again when there is signal.",
            ),
            Self::Failed(name) => write!(
                f,
                "The browser could not save this ({name}), so nothing was saved. Try again: what you entered is still here."
            ),
        }
    }
}

impl std::error::Error for KeepError {}
