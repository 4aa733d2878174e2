//! What is in it? Which material brought which nutrient, what left, what is there; how much compost
//! there will be.

use heapwright_wire::{HeapTold, NutrientsTold, TableShown};
use heapwright_wording::told as words;
use leptos::prelude::*;

use crate::language;
use crate::parts::choices::choices;
use crate::parts::fold::{folded, sentences};
use crate::parts::live::live_if;
use crate::parts::table::table_view;
use crate::places::telling::Telling;

/// What is in the section. The account is folded away: on a phone it is longer than all the rest.
pub fn body(telling: Telling<HeapTold>) -> AnyView {
    let as_labels = RwSignal::new(0);
    let there =
        Memo::new(move |_| telling.part(|told| told.nutrients.refusal.is_empty()) == Some(true));
    let account = move || {
        there.get().then(|| {
            folded(
                "more",
                words::account(language::locale()).into_any(),
                move || {
                    let as_labels = as_labels.get() == 1;
                    live_if(move || telling.part(|told| account(&told.nutrients, as_labels)))
                },
            )
        })
    };
    let switch = move || {
        there.get().then(|| {
            choices(
                "nutrients-as",
                words::named_as(language::locale()).to_owned(),
                words::names(language::locale()).map(str::to_owned).to_vec(),
                move || as_labels.get(),
                move |index| as_labels.set(index),
            )
        })
    };
    view! {
        {live_if(switch)}
        {live_if(account)}
        {live_if(move || telling.part(|told| beside(&told.nutrients)))}
    }
    .into_any()
}

fn whole(name: &'static str, table: &TableShown) -> Option<AnyView> {
    (!table.rows.is_empty()).then(|| table_view(name, table.clone()))
}

fn account(told: &NutrientsTold, as_labels: bool) -> AnyView {
    let table = if as_labels {
        &told.labels
    } else {
        &told.elements
    };
    whole(words::account(language::locale()), table).into_any()
}

/// What stands beside the account, or why there is none.
fn beside(told: &NutrientsTold) -> AnyView {
    if !told.refusal.is_empty() {
        return view! { <p>{told.refusal.clone()}</p> }.into_any();
    }
    let lines = told.lines.clone();
    let yields = (!told.yields.rows.is_empty())
        .then(|| view! { <h3>{words::how_much(language::locale())}</h3> });
    let yield_lines = (!told.yield_lines.is_empty()).then(|| sentences(&told.yield_lines));
    view! {
        {whole(words::beside(language::locale()), &told.beside)}
        {folded("more", words::about_account(language::locale()).into_any(), move || sentences(&lines))}
        {yields}
        {whole(words::how_much(language::locale()), &told.yields)}
        {yield_lines}
    }
    .into_any()
}
