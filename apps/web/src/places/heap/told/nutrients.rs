//! What is in it? Which material brought which nutrient, what left, what is there; how much compost
//! there will be.

use heapwright_wire::{HeapTold, NutrientsTold, TableShown};
use heapwright_wording::told as words;
use leptos::prelude::*;

use crate::parts::choices::choices;
use crate::parts::fold::{folded, sentences};
use crate::parts::live::live_if;
use crate::parts::table::table_view;
use crate::places::telling::Telling;

/// What is in the section.
pub fn body(telling: Telling<HeapTold>) -> AnyView {
    let as_labels = RwSignal::new(0);
    let there =
        Memo::new(move |_| telling.part(|told| told.nutrients.refusal.is_empty()) == Some(true));
    let switch = move || {
        there.get().then(|| {
            choices(
                "nutrients-as",
                words::NAMED_AS.to_owned(),
                words::NAMES.map(str::to_owned).to_vec(),
                move || as_labels.get(),
                move |index| as_labels.set(index),
            )
        })
    };
    let account = move || {
        let as_labels = as_labels.get() == 1;
        telling.part(|told| account(&told.nutrients, as_labels))
    };
    view! {
        {live_if(switch)}
        {live_if(account)}
    }
    .into_any()
}

fn account(told: &NutrientsTold, as_labels: bool) -> AnyView {
    if !told.refusal.is_empty() {
        return view! { <p>{told.refusal.clone()}</p> }.into_any();
    }
    let table = if as_labels {
        &told.labels
    } else {
        &told.elements
    };
    let whole = |name, table: &TableShown| {
        (!table.rows.is_empty()).then(|| table_view(name, table.clone()))
    };
    let lines = told.lines.clone();
    let yields = (!told.yields.rows.is_empty()).then(|| view! { <h3>{words::YIELD}</h3> });
    let yield_lines = (!told.yield_lines.is_empty()).then(|| sentences(&told.yield_lines));
    view! {
        {whole(words::ACCOUNT, table)}
        {whole(words::BESIDE, &told.beside)}
        {folded("more", words::ABOUT_ACCOUNT.into_any(), move || sentences(&lines))}
        {yields}
        {whole(words::YIELD, &told.yields)}
        {yield_lines}
    }
    .into_any()
}
