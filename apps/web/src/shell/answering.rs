//! When the page is answered: not within a tap, but right after what was tapped has been drawn.
//!
//! A tap changes its own line at once. The answer comes in a piece of work of its own, what explains
//! the answer in another, so that a slow phone is never deaf for long. Whoever writes the answer down
//! calls [`Answering::settle`] first, or would write an older one.

use std::sync::Arc;

use heapwright_garden::Garden;
use leptos::prelude::*;

use crate::asking::{self, Shown};
use crate::parts::breath::painted;
use crate::parts::live::spawn;
use crate::state::Page;

/// The garden of the journal, if that has one.
type Own = Arc<Option<Garden>>;

/// The answers, and what they answer.
#[derive(Clone, Copy)]
pub struct Answering {
    page: ReadSignal<Arc<Page>>,
    own: Memo<Own>,
    /// The answer to what was on the page a moment ago.
    pub shown: RwSignal<Arc<Shown>>,
    /// The same once more, a moment later.
    pub explained: RwSignal<Arc<Shown>>,
    /// True from a change until all of its answer is there.
    pub is_busy: RwSignal<bool>,
    answered_own: StoredValue<Own>,
    is_due: StoredValue<bool>,
}

impl Answering {
    /// Goes on from a first answer, which is that to the page without a garden of its own.
    pub fn start(page: ReadSignal<Arc<Page>>, own: Memo<Own>, first: Arc<Shown>) -> Self {
        let answering = Self {
            page,
            own,
            shown: RwSignal::new(first.clone()),
            explained: RwSignal::new(first),
            is_busy: RwSignal::new(false),
            answered_own: StoredValue::new(Arc::default()),
            is_due: StoredValue::new(false),
        };
        Effect::new(move |_| {
            let (page, own) = (page.get(), own.get());
            let shown = answering.shown.get_untracked();
            let answered_own = answering.answered_own.get_value();
            // The first answer may have been to this page.
            if !Arc::ptr_eq(&page, &shown.page) || *own != *answered_own {
                answering.put_off();
            }
        });
        answering
    }

    fn put_off(self) {
        // Several changes at once are answered together.
        if self.is_due.get_value() {
            return;
        }
        self.is_due.set_value(true);
        self.is_busy.set(true);
        spawn(async move {
            painted().await;
            self.settle();
            painted().await;
            self.explained.set(self.shown.get_untracked());
            self.is_busy.set(self.is_due.get_value());
        });
    }

    /// Answers now what was put off: whoever writes the answer down must not write an older one.
    pub fn settle(self) {
        if !self.is_due.get_value() {
            return;
        }
        self.is_due.set_value(false);
        let own = self.own.get_untracked();
        let before = self.shown.get_untracked();
        let same_own = *own == *self.answered_own.get_value();
        let shown = asking::shown(
            &self.page.get_untracked(),
            own.as_ref().as_ref(),
            same_own.then_some(before.as_ref()),
        );
        self.answered_own.set_value(own);
        self.shown.set(Arc::new(shown));
    }
}
