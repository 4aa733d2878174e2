//! The answer: one sentence to act on, its chance, and other ways to do it.

use std::sync::Arc;

use heapwright_answers::{BalanceAnswer, RecipeAnswer};
use heapwright_texts::messages::{amounts, balance_place as texts};
use heapwright_wording as wording;
use leptos::prelude::*;

use super::short_name;
use crate::asking::{FaultPlace, Shown, looked_at_of};
use crate::language;
use crate::shell::{Hub, hub};
use crate::state::{Action, Page};

/// The sentence that the keeper came for; stays in sight while tapping.
#[component]
pub fn Answer() -> impl IntoView {
    let hub = hub();
    let told = Memo::new(move |_| {
        hub.shown.with(|shown| {
            let locale = shown.page.locale();
            let answered = shown
                .balance
                .as_ref()
                .and_then(|balance| Some((balance, recipe(balance, &shown.page)?)));
            let Some((balance, recipe)) = answered else {
                return (unanswered(shown), String::new());
            };
            let line = wording::recipe_line(language::catalogue(), recipe, locale);
            let (line, besides) = match &balance.conflict {
                Some(conflict) => (
                    wording::conflict_line(conflict, locale),
                    texts::Nearest { recipe: &line }.said(locale),
                ),
                None => (
                    line,
                    wording::page::chance_line(&recipe.whole.mixture.chance, locale),
                ),
            };
            let is_short = shown
                .faults
                .iter()
                .any(|fault| matches!(fault.place, FaultPlace::Hand(_)));
            if is_short {
                // First, for it is what the rest rests on.
                (
                    line,
                    format!("{} {besides}", texts::not_all_counted(locale)),
                )
            } else {
                (line, besides)
            }
        })
    });
    let missed = move || {
        hub.shown.with(|shown| {
            let met = shown
                .balance
                .as_ref()
                .is_some_and(|balance| balance.conflict.is_none());
            !met && !shown.page.hand.is_empty()
        })
    };
    view! {
        <section
            class="answer"
            class:answer-missed=missed
            aria-labelledby="answer-title"
            // Not `aria-busy`: what is in it could then be changed without being read out.
            data-busy=move || hub.answering.is_busy.get().then_some("true")
        >
            <h2 id="answer-title" class="answer-title">{wording::page::answer(language::locale())}</h2>
            <div role="status">
                <p class="answer-line">{move || told.get().0}</p>
                <p class="answer-chance">{move || told.get().1}</p>
            </div>
        </section>
    }
}

/// Why there is no answer yet, and what to do about it.
fn unanswered(shown: &Shown) -> String {
    if shown.page.hand.is_empty() {
        return wording::page::empty_hand(language::locale()).to_owned();
    }
    shown
        .fault(&FaultPlace::WholeQuestion)
        .unwrap_or_else(|| texts::no_amount_read(language::locale()))
        .to_owned()
}

/// Why, and the other recipes.
#[component]
pub fn Ways() -> impl IntoView {
    let hub = hub();
    let hand_line = move || {
        hub.shown.with(|shown| {
            let balance = shown.balance.as_ref()?;
            let in_hand = balance.in_hand.as_ref()?;
            Some(wording::in_hand_line(in_hand, language::locale()))
        })
    };
    let help = move || {
        hub.shown.with(|shown| {
            shown
                .balance
                .as_ref()
                .and_then(|balance| balance.conflict.as_ref())
                .map(|conflict| {
                    conflict
                        .help
                        .iter()
                        .map(
                            |help| view! { <p>{wording::help_line(*help, language::locale())}</p> },
                        )
                        .collect_view()
                })
        })
    };
    let ways = move || {
        hub.shown.with(|shown| {
            let balance = shown
                .balance
                .as_ref()
                .filter(|balance| balance.recipes.len() > 1)?;
            Some(ways_view(balance, &shown.page, &shown.numbered, hub))
        })
    };
    view! {
        <section class="ways" aria-labelledby="why-title">
            <h2 id="why-title" class="unseen">{texts::why_and_other_ways(language::locale())}</h2>
            <p class="why">{hand_line}</p>
            {help}
            {ways}
        </section>
    }
}

fn recipe<'a>(balance: &'a BalanceAnswer, page: &Page) -> Option<&'a RecipeAnswer> {
    balance.recipes.get(looked_at_of(balance, page))
}

/// "sawdust", where the language has names begin small inside a sentence.
fn name_in_sentence(material: &str) -> String {
    let name = short_name(material);
    match amounts::names_in_a_sentence(language::locale()) {
        "small" => name.to_lowercase(),
        _ => name,
    }
}

fn ways_view(
    balance: &BalanceAnswer,
    page: &Arc<Page>,
    numbered: &[u32],
    hub: Hub,
) -> impl IntoView + use<> {
    let names: Vec<String> = numbered
        .iter()
        .filter_map(|key| page.reach.iter().find(|line| line.key == *key))
        .map(|line| name_in_sentence(&line.material))
        .collect();
    let chosen = looked_at_of(balance, page);
    let cards = balance
        .recipes
        .iter()
        .enumerate()
        .map(|(index, recipe)| {
            let locale = page.locale();
            let title = wording::recipe_title(balance, recipe, &names, locale);
            let line = wording::recipe_line(language::catalogue(), recipe, locale);
            let chance = wording::chance_text(recipe.whole.mixture.chance.all, locale);
            let answered = page.clone();
            let choose = move || {
                // While a newer answer is on its way, a tap on the older one means nothing in it.
                if hub.page.with(|page| answered.asks_the_same(page)) {
                    hub.act.run(Action::Choose(index));
                }
            };
            view! {
                <li>
                    <button
                        type="button"
                        class="way"
                        aria-pressed=if index == chosen { "true" } else { "false" }
                        on:click=move |_| untrack(&choose)
                    >
                        <span class="way-title">{title}</span>
                        <span class="way-line">{line}</span>
                        <span class="way-chance">{chance}</span>
                    </button>
                </li>
            }
        })
        .collect_view();
    view! { <ul class="way-list" aria-label=wording::page::ways(language::locale())>{cards}</ul> }
}
