//! The cards of the day, which of them was logged just now, and whose form is open.

use std::time::Duration;

use heapwright_wire::{NeedTold, TodayTold};
use leptos::prelude::*;

use super::aside::Aside;
use crate::places::telling::Telling;
use crate::shell::Hub;

/// So long after the list has changed under a finger that logged something, a tap logs nothing: it was
/// meant for what lay there before.
const SETTLES: Duration = Duration::from_secs(1);

/// What a card is known by while it is told anew.
#[derive(Clone, Debug, Default, PartialEq, Eq, Hash)]
pub struct Key {
    /// Id of the heap; empty for the stores.
    pub heap: String,
    /// The word of the kind of need.
    pub kind: String,
    /// How many of the same kind stand before it.
    nth: usize,
}

impl Key {
    /// Id of the line on the page that says what a tap writes down.
    pub fn writes_id(&self) -> String {
        format!("writes-{}-{}-{}", self.heap, self.kind, self.nth)
    }
}

/// A need, and where it stands.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Card {
    /// What it is known by.
    pub key: Key,
    /// What is needed.
    pub need: NeedTold,
    /// True for the first of the day.
    pub is_first: bool,
}

/// All cards.
#[derive(Clone, Copy)]
pub struct Board {
    /// In their order, without those that are put aside.
    pub cards: Memo<Vec<Card>>,
    /// What is put aside for the day.
    pub put_aside: Memo<Vec<NeedTold>>,
    /// Puts aside and brings back.
    pub aside: Aside,
    /// The card whose form is open.
    pub open: RwSignal<Option<Key>>,
    /// What was logged, and how many lines the journal had with it.
    logged: RwSignal<Vec<(Key, usize)>>,
    /// How often the list has changed under a finger of late.
    settling: StoredValue<usize>,
    telling: Telling<TodayTold>,
}

impl Board {
    /// Of what is told.
    pub fn of(telling: Telling<TodayTold>, aside: Aside) -> Self {
        let put_aside = Memo::new(move |_| {
            let day = day_of(telling);
            let put = |need: &&NeedTold| aside.has(need, &day);
            telling
                .part(|told| told.needs.iter().filter(put).cloned().collect::<Vec<_>>())
                .unwrap_or_default()
        });
        let open = RwSignal::new(None::<Key>);
        let cards = Memo::new(move |last: Option<&Vec<Card>>| {
            let mut cards = telling
                .part(|told| cards_of(&told.needs))
                .unwrap_or_default();
            put_aside.with(|put| cards.retain(|card| !put.contains(&card.need)));
            let last = last.map_or(&[][..], Vec::as_slice);
            open.with(|open| keep_open(&mut cards, last, open.as_ref()));
            for (index, card) in cards.iter_mut().enumerate() {
                card.is_first = index == 0;
            }
            cards
        });
        let board = Self {
            cards,
            put_aside,
            aside,
            open,
            logged: RwSignal::new(Vec::new()),
            settling: StoredValue::new(0),
            telling,
        };
        Effect::new(move |_| board.hear());
        board
    }

    /// Something was told, or nothing can be told any more.
    fn hear(self) {
        let lines = self.telling.lines.get();
        if self.telling.told.with(Option::is_none) {
            self.logged.set(Vec::new());
            self.open.set(None);
            return;
        }
        let is_answered = self
            .logged
            .with_untracked(|logged| logged.iter().any(|(_, lines_then)| *lines_then <= lines));
        if is_answered {
            self.logged
                .update(|logged| logged.retain(|(_, lines_then)| *lines_then > lines));
            self.settle();
        }
    }

    /// The list changes under a finger.
    pub fn settle(self) {
        self.settling.update_value(|changes| *changes += 1);
        let settled = move || {
            // The place may have been left.
            let _ = self.settling.try_update_value(|changes| *changes -= 1);
        };
        set_timeout(settled, SETTLES);
    }

    /// The day that is looked at, by the clock of the device.
    pub fn day(self) -> String {
        day_of(self.telling)
    }

    /// A card by its key.
    pub fn card(self, key: &Key) -> Option<Card> {
        self.cards
            .with(|cards| cards.iter().find(|card| card.key == *key).cloned())
    }

    /// What a card asks was logged just now.
    pub fn log(self, hub: Hub, key: Key) {
        let lines = hub.keeper.peek(|journal| journal.state.lines());
        // Both may be gone by now.
        let told = self.telling.lines.try_get_untracked();
        if told.is_some_and(|told| told < lines) {
            let _ = self.logged.try_update(|logged| logged.push((key, lines)));
        }
    }

    /// True from then on until the worker has told what follows of it.
    pub fn is_logged(self, key: &Key) -> bool {
        self.logged
            .with(|logged| logged.iter().any(|(of, _)| of == key))
    }

    /// True while the list has just changed under a finger.
    pub fn is_settling(self) -> bool {
        self.settling.get_value() > 0
    }
}

fn day_of(telling: Telling<TodayTold>) -> String {
    telling.now.get().local().date().to_string()
}

fn cards_of(needs: &[NeedTold]) -> Vec<Card> {
    let mut cards: Vec<Card> = Vec::new();
    for need in needs {
        let before = cards
            .iter()
            .filter(|card| card.key.heap == need.heap && card.key.kind == need.kind);
        let key = Key {
            heap: need.heap.clone(),
            kind: need.kind.clone(),
            nth: before.count(),
        };
        cards.push(Card {
            key,
            need: need.clone(),
            is_first: false,
        });
    }
    cards
}

/// What is being typed is not taken away: its card stays until its form is closed.
fn keep_open(cards: &mut Vec<Card>, last: &[Card], open: Option<&Key>) {
    let Some(open) = open.filter(|open| cards.iter().all(|card| card.key != **open)) else {
        return;
    };
    if let Some(place) = last.iter().position(|card| card.key == *open) {
        cards.insert(place.min(cards.len()), last[place].clone());
    }
}
