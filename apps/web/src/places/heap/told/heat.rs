//! Was it hot enough? What the probe showed, what that meets, and what it does not tell.

use heapwright_texts::messages::heap_place as texts;
use heapwright_wire::{HeapTold, HeatTold, RuleTold};
use heapwright_wording::{self as wording, told as words};
use leptos::prelude::*;

use crate::keeping::device;
use crate::language;
use crate::parts::breath::in_turn;
use crate::parts::fold::{folded, sentences};
use crate::parts::live::live_if;
use crate::parts::marked::words_of;
use crate::parts::table;
use crate::places::telling::Telling;

/// Under which name the choice of rules is kept on the device.
const KEPT_AS: &str = "heapwright.rules.1";

/// What is in the section.
pub fn body(telling: Telling<HeapTold>) -> AnyView {
    let place = RwSignal::new(kept_place());
    let head = move || telling.part(|told| headed(&told.heat));
    let there = Memo::new(move |_| telling.part(|told| !told.heat.rules.is_empty()) == Some(true));
    let choice = move || {
        there.get().then(|| {
            let places = telling.part(|told| places(&told.heat)).unwrap_or_default();
            choice(place, places)
        })
    };
    // A long list: drawn apart, for all at once would leave a slow phone deaf.
    let listed = telling.later();
    let ruled = move || {
        let place = place.get();
        listed.part(|told| rules(&told.heat, &place))
    };
    let rest = move || listed.part(|told| rest(&told.heat));
    view! {
        {live_if(head)}
        {live_if(choice)}
        {in_turn(ruled)}
        {live_if(rest)}
    }
    .into_any()
}

/// The choice that was kept; at first the place of the browser's language.
fn kept_place() -> String {
    let kept = window()
        .local_storage()
        .ok()
        .flatten()
        .and_then(|storage| storage.get_item(KEPT_AS).ok().flatten());
    kept.unwrap_or_else(|| {
        let language = window().navigator().language().unwrap_or_default();
        words::place_of_language(&language)
            .unwrap_or_default()
            .to_owned()
    })
}

fn headed(told: &HeatTold) -> AnyView {
    view! {
        <p class="heat-headline">{told.headline.clone()}</p>
        {(!told.notices.is_empty()).then(|| sentences(&told.notices))}
        {(!told.method.is_empty()).then(|| view! { <p class="hint">{told.method.clone()}</p> })}
    }
    .into_any()
}

/// The places that have rules, each once.
fn places(told: &HeatTold) -> Vec<String> {
    let mut places: Vec<String> = Vec::new();
    for rule in &told.rules {
        if !places.contains(&rule.jurisdiction) {
            places.push(rule.jurisdiction.clone());
        }
    }
    places
}

fn choice(place: RwSignal<String>, places: Vec<String>) -> AnyView {
    let now = place.get_untracked();
    let options = places
        .into_iter()
        .map(|name| {
            let is_chosen = name == now;
            let word = wording::place_name(&name, language::locale());
            view! { <option value=name selected=is_chosen>{word}</option> }
        })
        .collect_view();
    let choose = move |_| {
        let chosen = device::value("heat-place");
        if let Ok(Some(storage)) = window().local_storage() {
            // What cannot be kept holds until the page is left.
            let _ = storage.set_item(KEPT_AS, &chosen);
        }
        place.set(chosen);
    };
    view! {
        <div class="field">
            <label for="heat-place">{words::whose_rules(language::locale())}</label>
            <select id="heat-place" aria-describedby="heat-place-hint" on:change=choose>
                <option value="">{texts::no_place(language::locale())}</option>
                {options}
            </select>
            <p class="hint" id="heat-place-hint">{words::whose_rules_hint(language::locale())}</p>
        </div>
    }
    .into_any()
}

/// The rules of the place, and those of all others folded away.
fn rules(told: &HeatTold, place: &str) -> AnyView {
    let (own, others): (Vec<RuleTold>, Vec<RuleTold>) = told
        .rules
        .iter()
        .cloned()
        .partition(|rule| words::rules_hold(&rule.jurisdiction, place));
    if own.is_empty() && others.is_empty() {
        return ().into_any();
    }
    let own = if own.is_empty() {
        view! { <p>{words::no_rule_chosen(language::locale())}</p> }.into_any()
    } else {
        list(&own)
    };
    view! {
        {own}
        {folded("more", words::other_rules(language::locale()).into_any(), move || list(&others))}
    }
    .into_any()
}

fn list(rules: &[RuleTold]) -> AnyView {
    let rules = rules.iter().map(rule_view).collect_view();
    view! { <ul class="rules">{rules}</ul> }.into_any()
}

fn rule_view(rule: &RuleTold) -> AnyView {
    let state = match (rule.met, rule.progress) {
        (true, _) => "state state-good",
        (false, Some(_)) => "state state-off",
        (false, None) => "state",
    };
    let locale = language::locale();
    let name = texts::RuleOfPlace {
        place: &wording::place_name(&rule.jurisdiction, locale),
        rule: &rule.name,
    }
    .said(locale);
    let done = rule.progress.map(|progress| {
        let share = words::done_text(progress, locale);
        let heard = texts::RuleMet {
            rule: &name,
            share: &share,
        };
        let heard = heard.said(locale);
        view! {
            <div class="rule-done">
                <progress aria-label=heard max="1" prop:value=progress></progress>
                <span>{share}</span>
            </div>
        }
    });
    let asks = words_of(words::rule_asks(locale), &name);
    let summary = view! { <span>{asks}</span> };
    let missing = (!rule.missing.is_empty()).then(|| view! { <p>{rule.missing.clone()}</p> });
    let rule = rule.clone();
    let status = rule.status.clone();
    let more = folded("more rule-more", summary.into_any(), move || {
        let sources = rule
            .sources
            .iter()
            .map(|source| view! { <p class="hint">{source.clone()}</p> })
            .collect_view();
        view! {
            <div class="told-body">
                <p>{rule.asks.clone()}</p>
                <p>{rule.scope.clone()}</p>
                {sources}
            </div>
        }
        .into_any()
    });
    view! {
        <li class="rule">
            <p class="rule-head"><span class="rule-name">{name.clone()}</span>" "<span class=state>{status}</span></p>
            {done}
            {missing}
            {more}
        </li>
    }
    .into_any()
}

/// What heat cannot be trusted with, the table, and how far all this goes.
fn rest(told: &HeatTold) -> AnyView {
    if told.rules.is_empty() {
        return ().into_any();
    }
    let lines = told.lines.clone();
    let living = told.living.clone();
    view! {
        {folded("more", words::showed(language::locale()).into_any(), move || sentences(&lines))}
        {folded("caution", words::living(language::locale()).into_any(), move || sentences(&living))}
        {table::fold(words::hours(language::locale()), told.hours.clone())}
        <p class="hint">{wording::interpolation(language::locale())}</p>
        <p class="hint">{wording::hygiene_limits(language::locale())}</p>
    }
    .into_any()
}
