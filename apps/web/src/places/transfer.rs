//! The journal as a file: out to keep it elsewhere, in with a look at it first; and what may become of it.

use std::sync::Arc;

use heapwright_texts::messages::logbook_place as texts;
use heapwright_wording::{self as wording, settings as words};
use leptos::prelude::*;
use wasm_bindgen::JsValue;

use super::settings::{offer_to_keep, offer_update, promise};
use crate::keeping::{Looked, device};
use crate::language;
use crate::parts::form::Sender;
use crate::parts::live::{button, live_if, live_text, spawn};
use crate::shell::{Hub, Route, hub};

/// Faults of a file that are named; all are counted.
const NAMED_FAULTS: usize = 10;

/// What of the journal may be lost, with the way to prevent it; and a new version that waits.
pub fn warning(hub: Hub) -> AnyView {
    let due = move || {
        is_due(hub).then(|| {
            view! {
                <p class="note">{wording::page::export_due(language::locale())}" "<a class="link" href=Route::Settings.address()>{texts::to_the_export(language::locale())}</a></p>
            }
            .into_any()
        })
    };
    view! {
        {offer_update()}
        {offer_to_keep(hub)}
        {live_if(due)}
    }
    .into_any()
}

fn is_due(hub: Hub) -> bool {
    hub.keeper
        .with(|journal| journal.export_is_due(device::now()))
}

/// The section of the settings.
pub fn journal_file() -> AnyView {
    let hub = hub();
    let keeper = hub.keeper;
    let locale = language::locale();
    let size = move || {
        keeper.with(|journal| wording::page::journal_size(journal.state.lines() as u64, locale))
    };
    let exported = move || {
        keeper.with(|journal| match journal.last_export {
            Some(then) => {
                words::exported_line(&wording::ago_text(then, device::now(), locale), locale)
            }
            None => words::never_exported(language::locale()).to_owned(),
        })
    };
    let exporter = Sender::new(hub);
    let export = move || exporter.run(keeper.export(), || {});
    view! {
        <section class="card" aria-labelledby="journal-title">
            <h2 id="journal-title">{words::your_journal(language::locale())}</h2>
            <p role="status">{live_text(move || format!("{} {}", size(), exported()))}</p>
            <p class="note">{live_text(move || if is_due(hub) { wording::page::export_due(language::locale()).to_owned() } else { String::new() })}</p>
            {button("main-act", words::export(language::locale()), export)}
            {exporter.fault()}
            {live_if(move || keeper.has_pictures().then(|| pictures(hub)))}
            {import(hub)}
            {promise(hub)}
            {demo(hub)}
        </section>
    }
    .into_any()
}

/// The way into the invented garden; the bar above leads out of it.
fn demo(hub: Hub) -> AnyView {
    let sender = Sender::new(hub);
    let enter = move || sender.run(hub.keeper.open_demo(), || {});
    live_if(move || {
        (!hub.keeper.with(|journal| journal.is_demo)).then(|| {
            view! {
                {button("quiet", wording::page::demo_enter(language::locale()), enter)}
                {sender.fault()}
            }
            .into_any()
        })
    })
}

/// The pictures as a file of their own.
fn pictures(hub: Hub) -> AnyView {
    let exporter = Sender::new(hub);
    let told = RwSignal::new(String::new());
    let export = move || {
        let work = async move {
            let missing = hub.keeper.export_pictures().await?;
            let line = (missing > 0).then(|| words::pictures_missing(missing, language::locale()));
            let _ = told.try_set(line.unwrap_or_default());
            Ok(())
        };
        exporter.run(work, || {});
    };
    view! {
        {button("", words::export_pictures(language::locale()), export)}
        <p class="hint">{words::pictures_hint(language::locale())}</p>
        <p role="status">{live_text(move || told.get())}</p>
        {exporter.fault()}
    }
    .into_any()
}

fn import(hub: Hub) -> AnyView {
    let looked = RwSignal::new(None::<Arc<Looked>>);
    let told = RwSignal::new(String::new());
    let choose = move |_| {
        let file = device::chosen("import-file", false);
        if file.is_undefined() {
            return;
        }
        looked.set(None);
        told.set(words::reading(language::locale()).to_owned());
        spawn(async move {
            if let Some(line) = taken_in_pictures(hub, &file).await {
                let _ = told.try_set(line);
                return;
            }
            let found = hub.keeper.look(&file).await;
            let line = match &found {
                Some(_) => String::new(),
                None => wording::page::file_not_read(language::locale()).to_owned(),
            };
            let _ = told.try_set(line);
            let _ = looked.try_set(found.map(Arc::new));
        });
    };
    view! {
        <div class="field">
            <label for="import-file">{words::import(language::locale())}</label>
            <input id="import-file" type="file" accept=".jsonl,.ndjson,application/jsonl,text/plain" on:change=choose/>
            <p class="hint">{words::import_hint(language::locale())}</p>
        </div>
        <p role="status">{live_text(move || told.get())}</p>
        {live_if(move || looked.get().map(|found| arrival(hub, &found, looked, told)))}
    }
    .into_any()
}

/// Takes in a file of pictures and tells what came of it; `None` when it is another file.
async fn taken_in_pictures(hub: Hub, file: &JsValue) -> Option<String> {
    match hub.keeper.take_in_pictures(file).await {
        Ok(None) => None,
        Ok(Some((kept, 0))) => Some(words::pictures_taken_in(kept, language::locale())),
        Ok(Some((kept, _))) => Some(format!(
            "{} {}",
            words::pictures_taken_in(kept, language::locale()),
            words::pictures_cut(language::locale())
        )),
        Err(why) => Some(why),
    }
}

fn arrival(
    hub: Hub,
    found: &Arc<Looked>,
    looked: RwSignal<Option<Arc<Looked>>>,
    told: RwSignal<String>,
) -> AnyView {
    let lines = wording::page::arrival_lines(&found.summary, &found.arrival, language::locale())
        .into_iter()
        .map(|line| view! { <p>{line}</p> })
        .collect_view();
    let faults = found
        .summary
        .faults
        .iter()
        .take(NAMED_FAULTS)
        .map(|fault| view! { <li>{wording::fault_refusal(fault, language::locale())}</li> })
        .collect_view();
    let sender = Sender::new(hub);
    let can_take = found.arrival.new > 0;
    let kept = Arc::clone(found);
    let take = move || {
        let kept = Arc::clone(&kept);
        sender.run(
            async move {
                let count = hub.keeper.take_in(&kept).await?;
                told.set(words::taken_in(count as u64, language::locale()));
                Ok(())
            },
            move || looked.set(None),
        );
    };
    view! {
        <div class="arrival" role="group" aria-label=words::file_holds(language::locale())>
            {lines}
            <ul class="faults">{faults}</ul>
            <div class="acts">
                {can_take.then(|| button("main-act", words::take_in(language::locale()), take))}
                {button("quiet", words::leave_it(language::locale()), move || looked.set(None))}
            </div>
            {sender.fault()}
        </div>
    }
    .into_any()
}
