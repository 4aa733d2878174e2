//! What was done last, to be undone or brought back.

use heapwright_texts::messages::shell as texts;
use heapwright_wording as wording;
use leptos::prelude::*;

use super::Hub;
use crate::keeping::Status;
use crate::language;
use crate::parts::live::{button, live_if, live_text, named_button};

/// The most letters that the bar tells; the entry below has them all.
const MOST_LETTERS: usize = 120;

fn shortened(line: &str) -> String {
    match line.char_indices().nth(MOST_LETTERS) {
        Some((end, _)) => format!("{}\u{2026}", &line[..end]),
        None => line.to_owned(),
    }
}

/// The bar, and what must be known of the journal before anything else.
pub fn bar(hub: Hub) -> AnyView {
    let keeper = hub.keeper;
    let locale = move || hub.page.with(|page| page.locale());
    let told = move || {
        keeper.with(|journal| journal.bar.clone()).map(|bar| {
            let event = bar.event;
            let act = match (bar.withdrawn, bar.can_return) {
                (false, _) => Some(wording::page::undo(language::locale())),
                (true, true) => Some(texts::bring_back(language::locale())),
                (true, false) => None,
            };
            let act = act.map(|word| {
                button("done-act", word, move || keeper.withdraw(event, !bar.withdrawn, locale()))
            });
            let line = if bar.withdrawn {
                texts::TakenBack { entry: &bar.text }.said(language::locale())
            } else {
                bar.text
            };
            let line = shortened(&line);
            view! {
                <div class="done">
                    <p class="done-line">
                        {line}
                        {bar.fault.map(|fault| view! { <span class="done-fault">{fault}</span> })}
                    </p>
                    {act}
                    {named_button("done-act done-away", "\u{d7}", Some(texts::dismiss(language::locale()).to_owned()), move || keeper.show(None))}
                </div>
            }
            .into_any()
        })
    };
    let trouble = move || {
        keeper.with(|journal| match &journal.status {
            Status::Failed(why) => why.clone(),
            _ => journal.trouble.clone(),
        })
    };
    let demo = move || {
        keeper.with(|journal| journal.is_demo).then(|| {
            view! {
                <div class="card told">
                    <p>{wording::page::demo_told(language::locale())}</p>
                    {button("", wording::page::demo_leave(language::locale()), move || keeper.open())}
                </div>
            }
            .into_any()
        })
    };
    view! {
        <div class="done-place" role="status">{live_if(told)}</div>
        <p class="trouble" role="alert">{live_text(trouble)}</p>
        {live_if(demo)}
    }
    .into_any()
}
