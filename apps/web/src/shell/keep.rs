//! Keeps what was tapped and typed in this browser, so that leaving loses nothing.

use crate::language;
use crate::state::Page;

/// Under which name; the number rises when the shape changes beyond added fields.
const KEY: &str = "heapwright.balance.1";

/// What was kept, if it can still be read.
pub fn kept() -> Option<Page> {
    let storage = web_sys::window()?.local_storage().ok().flatten()?;
    let text = storage.get_item(KEY).ok().flatten()?;
    let page = serde_json::from_str::<Page>(&text).ok()?;
    Some(page.respoken(language::locale().tag()).repaired())
}

/// Keeps the page; false when the browser refuses (private mode, no room).
pub fn keep(page: &Page) -> bool {
    let Some(storage) = web_sys::window().and_then(|window| window.local_storage().ok().flatten())
    else {
        return false;
    };
    serde_json::to_string(&page.to_keep()).is_ok_and(|text| storage.set_item(KEY, &text).is_ok())
}
