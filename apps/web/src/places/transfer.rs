//! The journal as a file: out to keep it elsewhere, in with a look at it first.

use std::sync::Arc;

use heapwright_wording as wording;
use leptos::prelude::*;

use crate::keeping::{Looked, device};
use crate::parts::form::Sender;
use crate::parts::live::{button, live_if, live_text, spawn};
use crate::shell::{Hub, Route, hub};

/// Faults of a file that are named; all are counted.
const NAMED_FAULTS: usize = 10;

/// What of the journal may be lost, with the way to prevent it.
pub fn warning(hub: Hub) -> AnyView {
    live_if(move || {
        is_due(hub).then(|| {
            view! {
                <p class="note">{wording::page::EXPORT_DUE}" "<a class="link" href=Route::Settings.address()>"To the export"</a></p>
            }
            .into_any()
        })
    })
}

fn is_due(hub: Hub) -> bool {
    hub.keeper
        .with(|journal| journal.export_is_due(device::now()))
}

/// The section of the settings.
pub fn journal_file() -> AnyView {
    let hub = hub();
    let keeper = hub.keeper;
    let size =
        move || keeper.with(|journal| wording::page::journal_size(journal.state.lines() as u64));
    let exported = move || {
        keeper.with(|journal| match journal.last_export {
            Some(then) => format!("Last exported {}.", wording::ago_text(then, device::now())),
            None => "Never exported.".to_owned(),
        })
    };
    let lasting = move || {
        keeper.with(|journal| match journal.lasting {
            _ if journal.is_demo || journal.state.lines() == 0 => None,
            Some(true) => Some(wording::page::LASTS),
            Some(false) => Some(wording::page::MAY_BE_LOST),
            None => None,
        })
    };
    let exporter = Sender::new(hub);
    let export = move || exporter.run(keeper.export(), || {});
    view! {
        <section class="card" aria-labelledby="journal-title">
            <h2 id="journal-title">"Your journal"</h2>
            <p role="status">{live_text(move || format!("{} {}", size(), exported()))}</p>
            <p class="hint">{live_text(move || lasting().unwrap_or_default().to_owned())}</p>
            <p class="note">{live_text(move || if is_due(hub) { wording::page::EXPORT_DUE.to_owned() } else { String::new() })}</p>
            {button("main-act", "Export the journal", export)}
            {exporter.fault()}
            {import(hub)}
        </section>
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
        told.set("Reading\u{2026}".to_owned());
        spawn(async move {
            let found = hub.keeper.look(&file).await;
            let line = match &found {
                Some(_) => String::new(),
                None => wording::page::FILE_NOT_READ.to_owned(),
            };
            let _ = told.try_set(line);
            let _ = looked.try_set(found.map(Arc::new));
        });
    };
    view! {
        <div class="field">
            <label for="import-file">"Import a file"</label>
            <input id="import-file" type="file" accept=".jsonl,.ndjson,application/jsonl,text/plain" on:change=choose/>
            <p class="hint">"A journal that was exported, of at most 256 MiB. You see what it holds before anything is taken in."</p>
        </div>
        <p role="status">{live_text(move || told.get())}</p>
        {live_if(move || looked.get().map(|found| arrival(hub, &found, looked, told)))}
    }
    .into_any()
}

fn arrival(
    hub: Hub,
    found: &Arc<Looked>,
    looked: RwSignal<Option<Arc<Looked>>>,
    told: RwSignal<String>,
) -> AnyView {
    let lines = wording::page::arrival_lines(&found.summary, &found.arrival)
        .into_iter()
        .map(|line| view! { <p>{line}</p> })
        .collect_view();
    let faults = found
        .summary
        .faults
        .iter()
        .take(NAMED_FAULTS)
        .map(|fault| view! { <li>{wording::page::sentence(&fault.to_string())}</li> })
        .collect_view();
    let sender = Sender::new(hub);
    let can_take = found.arrival.new > 0;
    let kept = Arc::clone(found);
    let take = move || {
        let kept = Arc::clone(&kept);
        sender.run(
            async move {
                let count = hub.keeper.take_in(&kept).await?;
                told.set(format!(
                    "Taken in: {}.",
                    wording::page::counted(count as u64, "entry", "entries")
                ));
                Ok(())
            },
            move || looked.set(None),
        );
    };
    view! {
        <div class="arrival" role="group" aria-label="What the file holds">
            {lines}
            <ul class="faults">{faults}</ul>
            <div class="acts">
                {can_take.then(|| button("main-act", "Take in", take))}
                {button("quiet", "Leave it", move || looked.set(None))}
            </div>
            {sender.fault()}
        </div>
    }
    .into_any()
}
