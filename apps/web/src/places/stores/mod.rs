//! Stores: what is put by, and what came, went and was counted.

mod forms;

use heapwright_garden::Garden;
use heapwright_state::{ShelfKey, State};
use heapwright_terms::MaterialId;
use heapwright_texts::messages::{cldr, stores_place as texts};
use heapwright_wording::{self as wording, beds_on_the_page as words};
use leptos::prelude::*;

use crate::asking;
use crate::keeping::{Status, device};
use crate::language;
use crate::parts::focus;
use crate::parts::live::{live, live_if, named_button, opener};
use crate::parts::marked::name_and_said;
use crate::shell::{Hub, hub};

/// The form that is open.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Form {
    PutBy,
    Use,
    Count,
}

/// What a form is about: the form, and the shelf it was opened from.
type Open = RwSignal<Option<(Form, Option<ShelfKey>)>>;

/// The place.
#[component]
pub fn Stores() -> impl IntoView {
    let hub = hub();
    let open: Open = RwSignal::new(None);
    let close = move || {
        open.set(None);
        focus("title");
    };
    let is_open = Memo::new(move |_| hub.keeper.with(|journal| journal.status != Status::Opening));
    let any = Memo::new(move |_| {
        hub.keeper
            .with(|journal| !journal.state.stores().shelves.is_empty())
    });
    let form_opener = move |form: Form, name: &'static str| {
        let is_it = move || open.with(|open| open.as_ref().is_some_and(|(now, _)| *now == form));
        let is_now =
            move || open.with_untracked(|open| open.as_ref().is_some_and(|(now, _)| *now == form));
        let press = move || open.set((!is_now()).then_some((form, None)));
        opener("log-act", name, None, is_it, press)
    };
    let form = move || {
        open.get().map(|(form, key)| match form {
            Form::PutBy => forms::put_by(hub, close),
            Form::Use => forms::used(hub, key, close),
            Form::Count => forms::counted(hub, key, close),
        })
    };
    let whole = move || {
        if !is_open.get() {
            return view! { <p role="status">{wording::page::opening(language::locale())}</p> }
                .into_any();
        }
        let had_any = any.get();
        let locale = language::locale();
        view! {
            <div class="sides">
            <div>{live(move || list(hub, open))}</div>
            <section class="card" aria-label=texts::write_down(locale)>
                <div class="log-acts">
                    {form_opener(Form::PutBy, texts::put_by(locale))}
                    {had_any.then(|| form_opener(Form::Use, texts::use_(locale)))}
                    {had_any.then(|| form_opener(Form::Count, texts::count(locale)))}
                </div>
                {live_if(form)}
            </section>
            </div>
        }
        .into_any()
    };
    view! {
        <div class="place">
            <h1 id="title" tabindex="-1">{words::stores(language::locale())}</h1>
            {live(whole)}
        </div>
    }
}

/// What was ever put by: its key and its name, in the order of the state.
fn shelves(garden: &Garden, state: &State) -> Vec<(ShelfKey, String)> {
    state
        .stores()
        .shelves
        .iter()
        .map(|(key, _)| {
            let material = MaterialId(key.material.clone());
            let name = words::shelf_name(
                language::catalogue(),
                garden,
                &material,
                &key.conditions,
                language::locale(),
            );
            (key.clone(), name)
        })
        .collect()
}

fn list(hub: Hub, open: Open) -> AnyView {
    let page = hub.page.get();
    let locale = page.locale();
    let catalogue = language::catalogue();
    hub.keeper.with(|journal| {
        let garden = asking::garden_now(&page, &journal.state, device::now());
        let shelves = shelves(&garden, &journal.state);
        let none = match (shelves.is_empty(), garden.stores.is_empty()) {
            (true, _) => Some(words::no_stores(language::locale())),
            (false, true) => Some(words::all_used(language::locale())),
            (false, false) => None,
        };
        let none = none.map(|told| view! { <p class="card">{told}</p> });
        let (mut rows, mut gone) = (Vec::new(), Vec::new());
        for (key, name) in shelves {
            let stock = garden
                .stores
                .iter()
                .find(|stock| ShelfKey::new(stock.material.as_str(), &stock.conditions) == key);
            let Some(stock) = stock else {
                gone.push(name);
                continue;
            };
            let amount = stock.amount.as_ref().map_or_else(
                || texts::plenty(locale).to_owned(),
                |amount| wording::amount_text(catalogue, amount, locale),
            );
            let act = |form: Form, word: &str, act_name: String| {
                let key = key.clone();
                named_button("quiet", word, Some(act_name), move || {
                    open.set(Some((form, Some(key.clone()))));
                    // The form lies below what may be a long list: it is there with the next frame.
                    request_animation_frame(|| focus("shelf"));
                })
            };
            let use_of = texts::UseOf { name: &name }.said(locale);
            let count_of = texts::CountOf { name: &name }.said(locale);
            rows.push(
                view! {
                    <li class="shelf">
                        <p>{name_and_said(&name, &amount)}</p>
                        <div class="shelf-acts">
                            {act(Form::Use, texts::use_(locale), use_of)}
                            {act(Form::Count, texts::count(locale), count_of)}
                        </div>
                    </li>
                }
                .into_any(),
            );
        }
        let gone = gone
            .into_iter()
            .reduce(|first, second| {
                cldr::ListMiddle {
                    first: &first,
                    second: &second,
                }
                .said(locale)
            })
            .filter(|_| !rows.is_empty())
            .map(|names| {
                let told = texts::UsedUp { names: &names }.said(locale);
                view! { <p class="hint">{told}</p> }
            });
        let rows = (!rows.is_empty()).then(|| {
            view! {
                <section class="card" aria-label=texts::what_is_put_by(locale)>
                    <ul class="shelves">{rows.into_iter().collect_view()}</ul>
                    {gone}
                </section>
            }
        });
        view! { {none}{rows} }.into_any()
    })
}
