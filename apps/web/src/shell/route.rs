//! Which place does the address name? The part behind "#", so that reload and Back keep it.

use heapwright_journal::EventId;
use heapwright_texts::messages::shell as texts;
use heapwright_wording as wording;
use leptos::prelude::document;

use crate::language;

/// The address of Today that opens the invented garden first.
pub const DEMO_ADDRESS: &str = "#/today/demo";

/// A place of the page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Route {
    /// What each heap needs today.
    Today,
    /// What is in hand and what to put with it.
    Balance,
    /// All heaps.
    Heaps,
    /// One heap.
    Heap(EventId),
    /// Beds, and how compost is shared among them.
    Beds,
    /// What is put by.
    Stores,
    /// All entries.
    Logbook,
    /// Units, light, the journal as a file.
    Settings,
}

impl Route {
    /// Those that the bar leads to: first the [`Self::DAILY`], then those of the corner.
    pub const ALL: [Self; 7] = [
        Self::Today,
        Self::Balance,
        Self::Heaps,
        Self::Stores,
        Self::Beds,
        Self::Logbook,
        Self::Settings,
    ];

    /// How many of them lie at the foot of a phone, in reach of a thumb.
    pub const DAILY: usize = 5;

    /// From the part of an address behind and with "#"; an unknown one leads `home`.
    #[must_use]
    pub fn read(hash: &str, home: Self) -> Self {
        let path = hash.trim_start_matches(['#', '/']);
        match path.split_once('/').unwrap_or((path, "")) {
            ("today", _) => Self::Today,
            ("balance", _) => Self::Balance,
            ("heaps", "") => Self::Heaps,
            ("heaps", id) => id.parse().map_or(Self::Heaps, Self::Heap),
            ("beds", _) => Self::Beds,
            ("stores", _) => Self::Stores,
            ("logbook", _) => Self::Logbook,
            ("settings", _) => Self::Settings,
            _ => home,
        }
    }

    /// The address.
    #[must_use]
    pub fn address(self) -> String {
        match self {
            Self::Today => "#/today".to_owned(),
            Self::Balance => "#/balance".to_owned(),
            Self::Heaps => "#/heaps".to_owned(),
            Self::Heap(id) => format!("#/heaps/{id}"),
            Self::Beds => "#/beds".to_owned(),
            Self::Stores => "#/stores".to_owned(),
            Self::Logbook => "#/logbook".to_owned(),
            Self::Settings => "#/settings".to_owned(),
        }
    }

    /// What the bar calls it.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Today => wording::page::today(language::locale()),
            Self::Balance => texts::balance(language::locale()),
            Self::Heaps | Self::Heap(_) => wording::page::heaps(language::locale()),
            Self::Beds => wording::beds_on_the_page::beds(language::locale()),
            Self::Stores => wording::beds_on_the_page::stores(language::locale()),
            Self::Logbook => wording::page::logbook(language::locale()),
            Self::Settings => wording::page::settings(language::locale()),
        }
    }

    /// True when the bar shows `place` as the present one.
    #[must_use]
    pub fn is_in(self, place: Self) -> bool {
        self == place || matches!((self, place), (Self::Heap(_), Self::Heaps))
    }
}

/// Gives the window the title of a place.
pub fn entitle(place: &str) {
    let locale = language::locale();
    let page = wording::page::name(locale);
    document().set_title(&texts::WindowTitle { page, place }.said(locale));
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn addresses_lead_back_to_their_places() {
        let heap = "0193f2a1-b3c4-7000-8000-000000000001".parse().unwrap();
        for place in Route::ALL.into_iter().chain([Route::Heap(heap)]) {
            for home in [Route::Today, Route::Balance] {
                assert_eq!(Route::read(&place.address(), home), place);
            }
        }
        assert_eq!(Route::read("", Route::Today), Route::Today);
        assert_eq!(Route::read("#/moon", Route::Balance), Route::Balance);
        assert_eq!(Route::read("#/heaps/moon", Route::Today), Route::Heaps);
        assert!(Route::Heap(heap).is_in(Route::Heaps));
    }
}
