//! What may go with it: ticked or not, how much there is, in what it is handed out.

use heapwright_texts::messages::balance_place as texts;
use heapwright_wording as wording;
use leptos::prelude::*;

use super::{condition_options, short_name};
use crate::asking::FaultPlace;
use crate::language;
use crate::parts::amount::AmountRow;
use crate::parts::finder::Finder;
use crate::parts::focus;
use crate::parts::live::live_if;
use crate::shell::hub;
use crate::state::{Action, ReachLine};

/// The section.
#[component]
pub fn InReach() -> impl IntoView {
    let hub = hub();
    view! {
        <section class="card reach" aria-labelledby="reach-title">
            <h2 id="reach-title" tabindex="-1">{wording::page::in_reach(language::locale())}</h2>
            <p class="hint">{wording::page::in_reach_hint(language::locale())}</p>
            {live_if(move || {
                let line = texts::example_in_reach(language::locale());
                hub.shows_example().then(|| view! { <p class="note" role="note">{line}</p> }.into_any())
            })}
            <ul class="lines">
                <For each=move || hub.page.with(|page| page.reach.clone()) key=|line| line.key let(line)>
                    <Line line=line/>
                </For>
                <li class="line">
                    <label class="tick">
                        <input
                            type="checkbox"
                            prop:checked=move || hub.page.with(|page| page.water)
                            on:change=move |_| hub.act.run(Action::ToggleWater)
                        />
                        <span class="line-name">{wording::page::water(language::locale())}</span>
                    </label>
                </li>
            </ul>
            <Finder
                id="find-reach"
                label=texts::add_to_reach(language::locale())
                on_pick=Callback::new(move |id| hub.act.run(Action::Reach(id)))
            />
        </section>
    }
}

/// One line: number on the map, tick, condition, how much there is.
#[component]
fn Line(line: ReachLine) -> impl IntoView {
    let hub = hub();
    let key = line.key;
    let name = short_name(&line.material);
    let material = line.material.clone();
    let now = Memo::new(move |last: Option<&ReachLine>| {
        hub.page
            .with(|page| page.reach.iter().find(|line| line.key == key).cloned())
            .or_else(|| last.cloned())
            .unwrap_or_else(|| line.clone())
    });
    let number = Memo::new(move |_| {
        hub.shown
            .with(|shown| shown.numbered.iter().position(|numbered| *numbered == key))
            .map(|index| index + 1)
    });
    // What is chosen of many is made anew only when it changes.
    let condition = Memo::new(move |_| now.with(|line| line.condition.clone()));
    let unit = Memo::new(move |_| now.with(|line| line.unit.clone()));
    view! {
        <li class="line">
            <div class="line-head">
                <label class="tick">
                    <input
                        type="checkbox"
                        prop:checked=move || now.with(|line| line.on)
                        on:change=move |_| hub.act.run(Action::ToggleReach(key))
                    />
                    <span class="line-name">{name.clone()}</span>
                </label>
                <span class="badge" aria-hidden="true" class:badge-off=move || number.get().is_none()>
                    {move || number.get().map_or_else(String::new, |number| number.to_string())}
                </span>
                <button
                    type="button"
                    class="remove"
                    aria-label=texts::RemoveFromReach { name: &name }.said(language::locale())
                    on:click=move |_| {
                        hub.act.run(Action::RemoveReach(key));
                        focus("reach-title");
                    }
                >
                    "\u{d7}"
                </button>
            </div>
            <div class="stock">
                <span class="stock-word" aria-hidden="true">{texts::there_are(language::locale())}</span>
                <AmountRow
                    id=format!("reach-{key}")
                    name=texts::InStore { name: &name }.said(language::locale())
                    typed=Signal::derive(move || now.with(|line| line.typed.clone()))
                    unit=unit
                    plain=false
                    us_units=Signal::derive(move || hub.page.with(|page| page.us_units))
                    fault=Signal::derive(move || {
                        hub.shown
                            .with(|shown| shown.fault(&FaultPlace::Reach(key)).map(|what| format!("{what} {}", wording::page::not_counted(language::locale()))))
                    })
                    on_type=Callback::new(move |typed| hub.act.run(Action::TypeReach(key, typed)))
                    on_step=Some(Callback::new(move |up| hub.act.run(Action::StepReach(key, up))))
                    on_unit=Callback::new(move |unit| hub.act.run(Action::UnitReach(key, unit)))
                />
                <select
                    class="condition"
                    aria-label=texts::ConditionOf { name: &name }.said(language::locale())
                    on:change=move |event| hub.act.run(Action::ConditionReach(key, event_target_value(&event)))
                >
                    {move || condition_options(&material, &condition.get())}
                </select>
            </div>
        </li>
    }
}
