//! Is it ready? The verdict, what each test said, and how the next one is done.

use heapwright_texts::messages::ready;
use heapwright_wire::{RipenessTold, SheetTold, SignTold};
use heapwright_wording::{self as wording, told as words};
use leptos::prelude::*;

use crate::language;
use crate::parts::fold::{folded, sentences};
use crate::parts::table;

/// The verdict, and what to do next.
pub fn verdict(told: &RipenessTold) -> AnyView {
    let mut lines = told.lines.clone().into_iter();
    let first = lines.next().unwrap_or_default();
    let others: Vec<String> = lines.collect();
    view! {
        <p class="verdict">{first}</p>
        {(!others.is_empty()).then(|| sentences(&others))}
        {(!told.next.is_empty()).then(|| view! { <p class="next-test">{told.next.clone()}</p> })}
        {told.sheets.iter().filter(|sheet| sheet.next).map(sheet).collect_view()}
    }
    .into_any()
}

/// What each test said, and how the others are done.
pub fn evidence(told: &RipenessTold) -> AnyView {
    let signs = if told.signs.is_empty() {
        view! { <p>{words::no_signs(language::locale())}</p> }.into_any()
    } else {
        let signs = told.signs.iter().map(sign).collect_view();
        view! {
            <ul class="signs">{signs}</ul>
            {table::fold(words::signs(language::locale()), told.table.clone())}
        }
        .into_any()
    };
    let others: Vec<SheetTold> = told
        .sheets
        .iter()
        .filter(|sheet| !sheet.next)
        .cloned()
        .collect();
    let others = (!others.is_empty()).then(|| {
        folded(
            "more",
            words::other_sheets(language::locale()).into_any(),
            move || {
                let sheets = others.iter().map(sheet).collect_view();
                view! { <div>{sheets}</div> }.into_any()
            },
        )
    });
    view! {
        {signs}
        {(!told.hints.is_empty()).then(|| view! { <p>{told.hints.clone()}</p> })}
        {others}
        <p class="hint">{wording::ready_limits(language::locale())}</p>
    }
    .into_any()
}

fn sign(sign: &SignTold) -> AnyView {
    // The worker says it in the language of the page.
    let locale = language::locale();
    let state = match sign.says.as_str() {
        says if says == ready::standing_for(locale) => "state state-good",
        says if says == ready::standing_against(locale) => "state state-off",
        _ => "state",
    };
    view! {
        <li class="sign">
            <p class="rule-head"><span class="rule-name">{sign.test.clone()}</span>" "<span class=state>{sign.says.clone()}</span></p>
            <p>{sign.found.clone()}</p>
            {(!sign.weak.is_empty()).then(|| view! { <p class="hint">{sign.weak.clone()}</p> })}
        </li>
    }
    .into_any()
}

/// How a test is done, folded away.
fn sheet(sheet: &SheetTold) -> AnyView {
    let title = sheet.title.clone();
    let sheet = sheet.clone();
    folded("more sheet", title.into_any(), move || {
        let steps = sheet
            .steps
            .iter()
            .map(|step| view! { <li>{step.clone()}</li> })
            .collect_view();
        view! {
            <div class="told-body">
                {sentences(&sheet.lines)}
                <ol class="steps">{steps}</ol>
                <h3>{words::sheet_reading(language::locale())}</h3>
                {sentences(&sheet.reading)}
            </div>
        }
        .into_any()
    })
}
