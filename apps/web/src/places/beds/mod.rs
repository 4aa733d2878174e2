//! Beds: what grows where, what was spread on it, and how compost is shared among them.

mod ask;
mod describe;
mod paper;
mod plan;
mod spread;
mod uses;

pub(super) use spread::heap_options;

use heapwright_catalogue::Spreading;
use heapwright_journal::{EventId, Moment};
use heapwright_quantity::UnitSystem;
use heapwright_state::Bed;
use heapwright_texts::Locale;
use heapwright_texts::messages::beds_place as texts;
use heapwright_wording::{self as wording, Word, beds_on_the_page as words};
use leptos::prelude::*;

use crate::keeping::{Status, device};
use crate::language;
use crate::parts::entry::entry_row;
use crate::parts::focus;
use crate::parts::fold::Fold;
use crate::parts::live::{live, live_if, named_button, opener};
use crate::parts::marked::words_of;
use crate::shell::{Hub, hub};

/// The form that is open.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Form {
    Describe,
    Correct(EventId),
    Spread,
}

/// The place.
#[component]
pub fn Beds() -> impl IntoView {
    let hub = hub();
    let open = RwSignal::new(None::<Form>);
    let close = move || {
        open.set(None);
        focus("title");
    };
    let is_open = Memo::new(move |_| hub.keeper.with(|journal| journal.status != Status::Opening));
    // The forms stay as they are while entries come in: only this decides whether they are there.
    let any = Memo::new(move |_| {
        hub.keeper
            .with(|journal| journal.state.beds().next().is_some())
    });
    let form_opener = move |form: Form, name: &'static str| {
        let press = move || open.set((open.get_untracked() != Some(form)).then_some(form));
        opener(
            "log-act",
            name,
            None,
            move || open.get() == Some(form),
            press,
        )
    };
    let form = move || {
        open.get().map(|form| match form {
            Form::Describe => describe::form(hub, None, close),
            Form::Correct(bed) => describe::form(hub, Some(bed), close),
            Form::Spread => spread::form(hub, close),
        })
    };
    let locale = language::locale();
    let whole = move || {
        if !is_open.get() {
            return view! { <p role="status">{wording::page::opening(language::locale())}</p> }
                .into_any();
        }
        let has_beds = any.get();
        let none = (!has_beds)
            .then(|| view! { <p class="card">{words::no_beds(language::locale())}</p> }.into_any());
        view! {
            <div class="sides">
                <div>
                    {none}
                    <section class="card" aria-label=texts::write_down(locale)>
                        <div class="log-acts place-acts">
                            {form_opener(Form::Describe, texts::describe_a_bed(locale))}
                            {has_beds.then(|| form_opener(Form::Spread, texts::spread_compost(locale)))}
                        </div>
                        {live_if(form)}
                    </section>
                    {live(move || list(hub, open))}
                </div>
                <div>
                    {has_beds.then(|| plan::section(hub))}
                    {uses::section()}
                </div>
            </div>
        }
        .into_any()
    };
    view! {
        <div class="place">
            <h1 id="title" tabindex="-1">{words::beds(language::locale())}</h1>
            {live(whole)}
        </div>
    }
}

/// All beds that were described, with their names, in the order of these.
fn named(hub: Hub) -> Vec<(EventId, String)> {
    let mut named: Vec<(EventId, String)> = hub.keeper.with(|journal| {
        journal
            .state
            .beds()
            .filter_map(|bed| Some((bed.id, bed.now().described.as_ref()?.name.clone())))
            .collect()
    });
    named.sort_by_cached_key(|(_, name)| in_order(name));
    named
}

fn name_of(bed: &Bed) -> &str {
    let described = bed.now().described.as_ref();
    described.map_or("", |described| &described.name)
}

/// What names are put in order by: small letters, and numbers with noughts before them, so that 10
/// comes after 9.
fn in_order(name: &str) -> String {
    const DIGITS: usize = 9;
    let mut key = String::new();
    let mut digits = String::new();
    for letter in name.chars().chain(std::iter::once(' ')) {
        if letter.is_ascii_digit() {
            digits.push(letter);
            continue;
        }
        if !digits.is_empty() {
            key.push_str(&"0".repeat(DIGITS.saturating_sub(digits.len())));
            key.push_str(&digits);
            digits.clear();
        }
        key.extend(letter.to_lowercase());
    }
    key
}

/// An area in square metres or feet: "12 m²".
fn area_text(area_m2: f64, locale: Locale) -> String {
    match locale.units {
        UnitSystem::Metric => {
            let number = &locale.significant(area_m2, 3);
            texts::SquareMetres { number }.said(locale)
        }
        UnitSystem::UsCustomary => {
            let number = &locale.significant(area_m2 / SQUARE_METRES_PER_SQUARE_FOOT, 3);
            texts::SquareFeet { number }.said(locale)
        }
    }
}

/// International foot, 1959: 0.3048 m.
const SQUARE_METRES_PER_SQUARE_FOOT: f64 = 0.3048 * 0.3048;

/// What grows, as the journal keeps it: by its English name where the keeper's word is one for a crop of
/// the tables, so that every language knows it; else as typed.
fn crop_kept(typed: &str) -> String {
    let (here, english) = (language::spreading(), Spreading::built_in());
    let is_typed = |name: &&String| name.to_lowercase() == typed.to_lowercase();
    here.crop(typed)
        .filter(|crop| {
            crop.other_words
                .iter()
                .chain([&crop.name])
                .any(|name| is_typed(&name))
        })
        .and_then(|crop| english.crops().iter().find(|known| known.id == crop.id))
        // English words stay as they were typed.
        .filter(|known| known.other_words.iter().all(|word| !is_typed(&word)))
        .map_or_else(|| typed.to_owned(), |known| known.name.clone())
}

/// The same in the keeper's language.
fn crop_shown(kept: &str) -> String {
    let english = Spreading::built_in()
        .crops()
        .iter()
        .find(|crop| crop.name == kept);
    english
        .and_then(|known| {
            language::spreading()
                .crops()
                .iter()
                .find(|crop| crop.id == known.id)
        })
        .map_or_else(|| kept.to_owned(), |crop| crop.name.clone())
}

fn list(hub: Hub, open: RwSignal<Option<Form>>) -> AnyView {
    let locale = hub.page.with(|page| page.locale());
    let cards = hub.keeper.with(|journal| {
        let now = device::now();
        let mut beds: Vec<&Bed> = journal.state.beds().collect();
        // In an order that one sees: by name, numbers in names as numbers.
        beds.sort_by_cached_key(|bed| in_order(name_of(bed)));
        beds.into_iter()
            .filter_map(|bed| card(hub, bed, now, locale, open))
            .collect_view()
    });
    view! { <ul class="heaps">{cards}</ul> }.into_any()
}

fn card(
    hub: Hub,
    bed: &Bed,
    now: Moment,
    locale: Locale,
    open: RwSignal<Option<Form>>,
) -> Option<AnyView> {
    let described = bed.now().described.as_ref()?;
    let feeding = described.feeding.map(|feeding| {
        let feeding = feeding.word(locale);
        texts::FeedingSo { feeding }.said(locale)
    });
    let grows = match (described.crop.as_deref().map(crop_shown), feeding) {
        (Some(crop), Some(feeding)) => Some(
            texts::CropAndFeeding {
                crop: &crop,
                feeding: &feeding,
            }
            .said(locale),
        ),
        (crop, feeding) => crop.or(feeding),
    };
    let last = bed.now().dressings.last().map_or_else(
        || words::never_spread(language::locale()).to_owned(),
        |(when, spread)| {
            let amount =
                wording::amount_text(language::catalogue(), &spread.amount.amount(), locale);
            texts::DressingWhen {
                amount: &amount,
                ago: &wording::ago_text(*when, now, locale),
            }
            .said(locale)
        },
    );
    let ids: Vec<EventId> = bed.history().rev().map(|event| event.id).collect();
    let name = described.name.clone();
    let id = bed.id;
    let correct = named_button(
        "quiet",
        texts::change(locale),
        Some(texts::ChangeBed { bed: &name }.said(locale)),
        move || {
            open.set(Some(Form::Correct(id)));
            // The form lies above what may be a long list: it is there with the next frame.
            request_animation_frame(|| focus("bed-name"));
        },
    );
    let summary = words_of(texts::what_was_done(locale), &name);
    Some(
        view! {
            <li class="card bed-card">
                <div class="heap-head">
                    <h2>{name}</h2>
                    <span class="stage">{area_text(described.area_m2, locale)}</span>
                    {correct}
                </div>
                <dl class="doings">
                    {grows.map(|grows| view! { <div><dt>{texts::grows(locale)}</dt><dd>{grows}</dd></div> })}
                    <div><dt>{texts::last_dressing(locale)}</dt><dd>{last}</dd></div>
                </dl>
                <Fold class="more" summary=summary>
                    <ul class="entries">
                        {ids.iter().map(|id| view! { <li>{entry_row(hub, *id, true)}</li> }).collect_view()}
                    </ul>
                </Fold>
            </li>
        }
        .into_any(),
    )
}

#[cfg(test)]
mod tests {
    use super::in_order;

    #[test]
    fn beds_are_ordered_by_name_with_numbers_as_numbers() {
        let mut names = ["Bed 10", "apples", "Bed 9", "bed 2", "Bed 2b"];
        names.sort_by_cached_key(|name| in_order(name));
        assert_eq!(names, ["apples", "bed 2", "Bed 2b", "Bed 9", "Bed 10"]);
    }
}
