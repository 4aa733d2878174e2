//! What is in hand: lines to count, tiles to tap, a search for the rest.

use heapwright_terms::Caution;
use heapwright_texts::messages::balance_place as texts;
use heapwright_wording as wording;
use leptos::prelude::*;

use super::{condition_options, short_name};
use crate::asking::FaultPlace;
use crate::language;
use crate::parts::amount::AmountRow;
use crate::parts::finder::Finder;
use crate::parts::focus;
use crate::parts::live::button;
use crate::shell::hub;
use crate::state::{Action, HandLine, Page};

/// The section.
#[component]
pub fn InHand() -> impl IntoView {
    let hub = hub();
    // As they are when the place is opened: a tile must not move from under a finger.
    let tiles = untrack(move || hub.page.with(Page::tiles))
        .into_iter()
        .map(|id| {
            let name = short_name(&id);
            let tap = move || hub.act.run(Action::Tap(id.clone()));
            view! { <li>{button("tile", &name, tap)}</li> }
        })
        .collect_view();
    view! {
        <section class="card hand" aria-labelledby="hand-title">
            <div class="card-head">
                <h2 id="hand-title" tabindex="-1">{wording::page::in_hand(language::locale())}</h2>
                <div class="card-tools">
                    <button
                        type="button"
                        class="quiet"
                        aria-disabled=move || (!hub.can_undo.get()).then_some("true")
                        on:click=move |_| hub.undo.run(())
                    >
                        {wording::page::undo(language::locale())}
                    </button>
                    <button
                        type="button"
                        class="quiet"
                        aria-disabled=move || hub.page.with(|page| page.hand.is_empty()).then_some("true")
                        on:click=move |_| hub.act.run(Action::ClearHand)
                    >
                        {wording::page::clear(language::locale())}
                    </button>
                </div>
            </div>
            <ul class="lines">
                <For each=move || hub.page.with(|page| page.hand.clone()) key=|line| line.key let(line)>
                    <Line line=line/>
                </For>
            </ul>
            <p class="hint">
                {move || {
                    if hub.page.with(|page| page.hand.is_empty()) {
                        wording::page::empty_hand(language::locale())
                    } else {
                        wording::page::in_hand_hint(language::locale())
                    }
                }}
            </p>
            <ul class="tiles" aria-label=texts::common_materials(language::locale())>{tiles}</ul>
            <Finder id="find-hand" label=wording::page::find(language::locale()) on_pick=Callback::new(move |id| hub.act.run(Action::Tap(id)))/>
        </section>
    }
}

/// One line: name, condition, amount.
#[component]
fn Line(line: HandLine) -> impl IntoView {
    let hub = hub();
    let key = line.key;
    let name = short_name(&line.material);
    let material = line.material.clone();
    let is_kept_out = language::catalogue()
        .material(&material)
        .is_some_and(|known| known.cautions.contains(&Caution::Avoid));
    let kept_out = is_kept_out.then(|| texts::best_kept_out(language::locale()));
    // The line as it is now; as it was last when it has just been removed.
    let now = Memo::new(move |last: Option<&HandLine>| {
        hub.page
            .with(|page| page.hand.iter().find(|line| line.key == key).cloned())
            .or_else(|| last.cloned())
            .unwrap_or_else(|| line.clone())
    });
    // What is chosen of many is made anew only when it changes.
    let condition = Memo::new(move |_| now.with(|line| line.condition.clone()));
    let unit = Memo::new(move |_| now.with(|line| line.unit.clone()));
    view! {
        <li class="line">
            <div class="line-head">
                <span class="line-name">{name.clone()}</span>
                <select
                    class="condition"
                    aria-label=texts::ConditionOf { name: &name }.said(language::locale())
                    on:change=move |event| hub.act.run(Action::ConditionHand(key, event_target_value(&event)))
                >
                    {move || condition_options(&material, &condition.get())}
                </select>
                <button
                    type="button"
                    class="remove"
                    aria-label=texts::Remove { name: &name }.said(language::locale())
                    on:click=move |_| {
                        hub.act.run(Action::RemoveHand(key));
                        focus("hand-title");
                    }
                >
                    "\u{d7}"
                </button>
            </div>
            {kept_out.map(|line| view! { <p class="note" role="note">{line}</p> })}
            <AmountRow
                id=format!("hand-{key}")
                name=name.clone()
                typed=Signal::derive(move || now.with(|line| line.typed.clone()))
                unit=unit
                plain=true
                us_units=Signal::derive(move || hub.page.with(|page| page.us_units))
                fault=Signal::derive(move || {
                    hub.shown
                        .with(|shown| shown.fault(&FaultPlace::Hand(key)).map(|what| format!("{what} {}", wording::page::not_counted(language::locale()))))
                })
                on_type=Callback::new(move |typed| hub.act.run(Action::TypeHand(key, typed)))
                on_step=Some(Callback::new(move |up| hub.act.run(Action::StepHand(key, up))))
                on_unit=Callback::new(move |unit| hub.act.run(Action::UnitHand(key, unit)))
            />
        </li>
    }
}
