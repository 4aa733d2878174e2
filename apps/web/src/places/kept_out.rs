//! What all heaps kept out of the bin, month by month.

use heapwright_wire::KeptOutTold;
use heapwright_wording::told as words;
use leptos::prelude::*;

use super::telling::{About, Telling};
use crate::language;
use crate::parts::fold::{folded, sentences};
use crate::parts::live::live_if;
use crate::parts::table::table_view;
use crate::shell::Hub;

/// The section. Nothing is asked before it is opened: the worker that adds it up is fetched only for
/// those who look.
pub fn section(hub: Hub) -> AnyView {
    view! {
        <section class="card kept-out" aria-labelledby="kept-out-title">
            <h2 id="kept-out-title">{words::kept_out(language::locale())}</h2>
            {folded("more", words::by_month(language::locale()).into_any(), move || body(hub))}
        </section>
    }
    .into_any()
}

fn body(hub: Hub) -> AnyView {
    let telling: Telling<KeptOutTold> = Telling::about(hub, About::KeptOut, || true);
    let told = move || {
        telling.part(|told| {
            let table = |name, table: &heapwright_wire::TableShown| {
                (!table.rows.is_empty()).then(|| table_view(name, table.clone()))
            };
            let climate = (!told.climate.rows.is_empty()).then(|| {
                view! { <h3>{words::for_the_climate(language::locale())}</h3> }
            });
            view! {
                {table(words::months(language::locale()), &told.months)}
                {sentences(&told.lines)}
                {climate}
                {table(words::for_the_climate(language::locale()), &told.climate)}
                {sentences(&told.climate_lines)}
            }
            .into_any()
        })
    };
    view! { <div class="told-body">{telling.standing()}{live_if(told)}</div> }.into_any()
}
