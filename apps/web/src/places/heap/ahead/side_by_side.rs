//! What if: the heap turned or not, watered or not, side by side.

use heapwright_wording::ahead as words;
use leptos::prelude::*;

use super::{Look, choices, table_view};
use crate::parts::live::{live, live_if};

/// The switches.
pub fn switches(look: Look) -> AnyView {
    let water = Memo::new(move |_| {
        look.shown
            .with(|shown| shown.as_ref().map(|shown| shown.water.clone()))
            .unwrap_or_default()
    });
    let turnings = words::TURNINGS.map(str::to_owned).to_vec();
    let waterings = move || {
        choices(
            "ahead-water",
            "And if you water it".to_owned(),
            vec!["No water".to_owned(), format!("{} now", water.get())],
            move || usize::from(look.water.get()),
            move |index| look.water.set(index == 1),
        )
    };
    view! {
        <div class="what-if">
            {choices(
                "ahead-turn",
                "What if you turn it".to_owned(),
                turnings,
                move || look.turn.get(),
                move |index| look.turn.set(index),
            )}
            {live(waterings)}
        </div>
    }
    .into_any()
}

/// The figures side by side, and what differs in words.
pub fn table(look: Look) -> AnyView {
    let body = move || {
        look.option(|shown, _| {
            let lines = shown
                .differences
                .iter()
                .map(|line| view! { <li>{line.clone()}</li> })
                .collect_view();
            view! {
                <ul class="told-lines differences">{lines}</ul>
                {table_view("Ways to go on, side by side", shown.table.clone())}
            }
            .into_any()
        })
    };
    view! {
        <h3>"Against leaving it alone"</h3>
        {live_if(body)}
    }
    .into_any()
}
