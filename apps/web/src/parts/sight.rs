//! Heavy work waits while the page is in a tab that nobody looks at.

use leptos::prelude::*;

/// Whether the page is looked at, and what was left undone because it was not.
#[derive(Clone, Copy)]
pub struct Sight {
    /// Counts how often the page came back to something undone.
    again: RwSignal<u32>,
    is_undone: StoredValue<bool>,
}

impl Sight {
    /// Of the page, for as long as its owner is there.
    pub fn of_the_page() -> Self {
        let sight = Self {
            again: RwSignal::new(0),
            is_undone: StoredValue::new(false),
        };
        let listener = window_event_listener_untyped("visibilitychange", move |_| sight.look());
        on_cleanup(move || listener.remove());
        sight
    }

    fn look(self) {
        if document().hidden() || self.is_undone.try_get_value() != Some(true) {
            return;
        }
        self.is_undone.set_value(false);
        self.again.update(|count| *count = count.wrapping_add(1));
    }

    /// True while the page is looked at. An effect that heard otherwise runs anew once it is.
    pub fn is_there(self) -> bool {
        self.again.track();
        let is_there = !document().hidden();
        if !is_there {
            self.leave_undone();
        }
        is_there
    }

    /// What asked whether the page is looked at asks anew when it comes back into sight.
    pub fn leave_undone(self) {
        // The place may have been left.
        let _ = self.is_undone.try_set_value(true);
    }
}
