//! What if: the heap turned or not, watered or not, side by side.

use heapwright_texts::messages::heap_place as texts;
use heapwright_wording::ahead as words;
use leptos::prelude::*;

use super::{Look, choices, table_view};
use crate::language;
use crate::parts::live::{live, live_if};

/// The switches.
pub fn switches(look: Look) -> AnyView {
    let locale = language::locale();
    let water = Memo::new(move |_| {
        look.shown
            .with(|shown| shown.as_ref().map(|shown| shown.water.clone()))
            .unwrap_or_default()
    });
    let turnings = words::turnings(language::locale())
        .map(str::to_owned)
        .to_vec();
    let waterings = move || {
        choices(
            "ahead-water",
            texts::if_you_water(locale).to_owned(),
            vec![
                texts::no_water(locale).to_owned(),
                texts::WaterNow {
                    water: &water.get(),
                }
                .said(locale),
            ],
            move || usize::from(look.water.get()),
            move |index| look.water.set(index == 1),
        )
    };
    view! {
        <div class="what-if">
            {choices(
                "ahead-turn",
                texts::if_you_turn(locale).to_owned(),
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
    let locale = language::locale();
    let body = move || {
        look.option(|shown, _| {
            let lines = shown
                .differences
                .iter()
                .map(|line| view! { <li>{line.clone()}</li> })
                .collect_view();
            view! {
                <ul class="told-lines differences">{lines}</ul>
                {table_view(texts::ways_side_by_side(locale), shown.table.clone())}
            }
            .into_any()
        })
    };
    view! {
        <h3>{texts::against_leaving_alone(locale)}</h3>
        {live_if(body)}
    }
    .into_any()
}
