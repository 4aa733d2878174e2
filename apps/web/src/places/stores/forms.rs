//! The forms of the stores: put by, use, count.

use heapwright_journal::content::{StockCounted, StockPutBy, StockUsed};
use heapwright_journal::{AmountSaid, EventId};
use heapwright_state::ShelfKey;
use heapwright_texts::messages::stores_place as texts;
use heapwright_wording::{beds_on_the_page as words, settings};
use leptos::prelude::*;

use crate::asking;
use crate::keeping::device;
use crate::language;
use crate::parts::amount_said::AmountTyped;
use crate::parts::finder::Finder;
use crate::parts::form::{self, Entry};
use crate::parts::live::{button, live, live_if};
use crate::places::balance::{condition_options, short_name};
use crate::places::beds::heap_options;
use crate::places::known::put_by_tiles;
use crate::shell::Hub;

/// Something was put by.
pub fn put_by(hub: Hub, done: impl Fn() + Copy + 'static) -> AnyView {
    let locale = language::locale();
    let material = RwSignal::new(None::<String>);
    let condition = RwSignal::new(String::new());
    let amount = AmountTyped::new(hub, "1", "bucket");
    let entry = move || -> Entry {
        let content = StockPutBy {
            material: material
                .get_untracked()
                .ok_or_else(|| words::no_material(language::locale()).to_owned())?,
            conditions: Some(condition.get_untracked())
                .filter(|condition| !condition.is_empty())
                .into_iter()
                .collect(),
            amount: AmountSaid::from(&amount.said()?),
            scoop: None,
        };
        Ok((content.into(), form::moment("put-when")?))
    };
    let chosen = move || {
        material.get().map(|id| {
            view! {
                <div class="line-head">
                    <span class="line-name">{short_name(&id)}</span>
                    <select
                        class="condition"
                        aria-label=texts::condition(language::locale())
                        on:change=move |event| condition.set(event_target_value(&event))
                    >
                        {condition_options(&id, "")}
                    </select>
                </div>
            }
            .into_any()
        })
    };
    // As they are when the form is opened: a tile must not move from under a finger.
    let tiles = hub
        .keeper
        .peek(|journal| put_by_tiles(&journal.state, device::now()))
        .into_iter()
        .map(|id| {
            let name = short_name(&id);
            let pick = move || {
                condition.set(String::new());
                material.set(Some(id.clone()));
            };
            view! { <li>{button("tile", &name, pick)}</li> }
        })
        .collect_view();
    view! {
        <div class="log-form">
            <ul class="tiles" aria-label=words::often_put_by(language::locale())>{tiles}</ul>
            <Finder
                id="put-find"
                label=texts::what(locale)
                on_pick=Callback::new(move |id| {
                    condition.set(String::new());
                    material.set(Some(id));
                })
            />
            <div aria-live="polite">{live_if(chosen)}</div>
            {amount.row("put-amount", texts::amount_put_by(locale))}
            {form::when("put-when")}
            <div class="acts">
                {form::send(hub, texts::put_it_by(locale), entry, done)}
                {button("quiet", settings::not_now(language::locale()), done)}
            </div>
        </div>
    }
    .into_any()
}

/// Something was taken, other than by a feed.
pub fn used(hub: Hub, from: Option<ShelfKey>, done: impl Fn() + Copy + 'static) -> AnyView {
    let locale = language::locale();
    let amount = AmountTyped::new(hub, "1", "bucket");
    let shelves = Shelves::new(hub, from);
    let entry = move || -> Entry {
        let key = shelves.chosen()?;
        let content = StockUsed {
            material: key.material,
            conditions: key.conditions,
            amount: AmountSaid::from(&amount.said()?),
            heap: device::value("used-heap").parse::<EventId>().ok(),
        };
        Ok((content.into(), form::moment("used-when")?))
    };
    view! {
        <div class="log-form">
            {shelves.field()}
            {amount.row("used-amount", texts::amount_used(locale))}
            <div class="field">
                <label for="used-heap">{texts::on_a_heap(locale)}</label>
                <select id="used-heap" aria-describedby="used-heap-hint">
                    <option value="">{texts::on_none(locale)}</option>
                    {heap_options(hub)}
                </select>
                <p class="hint" id="used-heap-hint">{texts::feeds_are_taken_off(locale)}</p>
            </div>
            {form::when("used-when")}
            <div class="acts">
                {form::send(hub, texts::write_use(locale), entry, done)}
                {button("quiet", settings::not_now(language::locale()), done)}
            </div>
        </div>
    }
    .into_any()
}

/// The stores were counted.
pub fn counted(hub: Hub, from: Option<ShelfKey>, done: impl Fn() + Copy + 'static) -> AnyView {
    let locale = language::locale();
    let amount = AmountTyped::new(hub, "1", "bucket");
    let none_left = RwSignal::new(false);
    let shelves = Shelves::new(hub, from);
    let entry = move || -> Entry {
        let key = shelves.chosen()?;
        let content = StockCounted {
            material: key.material,
            conditions: key.conditions,
            amount: if none_left.get_untracked() {
                None
            } else {
                Some(AmountSaid::from(&amount.said()?))
            },
        };
        Ok((content.into(), form::moment("counted-when")?))
    };
    view! {
        <div class="log-form">
            {shelves.field()}
            <label class="tick">
                <input
                    type="checkbox"
                    prop:checked=move || none_left.get()
                    on:change=move |_| none_left.update(|none| *none = !*none)
                />
                <span>{texts::nothing_is_left(locale)}</span>
            </label>
            {live_if(move || (!none_left.get()).then(|| amount.row("counted-amount", texts::amount_counted(locale))))}
            {form::when("counted-when")}
            <div class="acts">
                {form::send(hub, texts::write_count(locale), entry, done)}
                {button("quiet", settings::not_now(language::locale()), done)}
            </div>
        </div>
    }
    .into_any()
}

/// The shelves to choose from; the choice stays while entries come in.
#[derive(Clone, Copy)]
struct Shelves {
    all: Memo<Vec<(ShelfKey, String)>>,
    chosen: RwSignal<Option<ShelfKey>>,
}

impl Shelves {
    fn new(hub: Hub, from: Option<ShelfKey>) -> Self {
        let all = Memo::new(move |_| {
            let page = hub.page.get();
            hub.keeper.with(|journal| {
                let garden = asking::garden_now(&page, &journal.state, device::now());
                super::shelves(&garden, &journal.state)
            })
        });
        Self {
            all,
            chosen: RwSignal::new(from),
        }
    }

    /// The shelf that the field shows.
    fn chosen(self) -> Result<ShelfKey, String> {
        self.chosen
            .get_untracked()
            .or_else(|| {
                self.all
                    .with_untracked(|all| all.first().map(|(key, _)| key.clone()))
            })
            .ok_or_else(|| words::no_material(language::locale()).to_owned())
    }

    fn field(self) -> AnyView {
        let Self { all, chosen } = self;
        let options = move || {
            all.get()
                .into_iter()
                .enumerate()
                .map(|(index, (key, name))| {
                    let selected = chosen.with_untracked(|chosen| chosen.as_ref() == Some(&key));
                    view! { <option value=index.to_string() prop:selected=selected>{name}</option> }
                })
                .collect_view()
                .into_any()
        };
        let choose = move |text: String| {
            let index: Option<usize> = text.parse().ok();
            let key = index.and_then(|index| {
                all.with_untracked(|all| all.get(index).map(|(key, _)| key.clone()))
            });
            chosen.set(key);
        };
        view! {
            <div class="field">
                <label for="shelf">{texts::what(language::locale())}</label>
                <select id="shelf" on:change=move |event| choose(event_target_value(&event))>
                    {live(options)}
                </select>
            </div>
        }
        .into_any()
    }
}
