//! One entry of the journal, with its picture, its other versions and what can be done about it.

use heapwright_journal::{Content, EventId, What};
use heapwright_texts::messages::{forms as texts, shell};
use heapwright_wording as wording;
use js_sys::Uint8Array;
use leptos::prelude::*;

use super::form::{self, Sender};
use super::live::{button, live_if, named_button, opener, spawn};
use crate::keeping::{amended, device};
use crate::language;
use crate::shell::Hub;

/// The entry; nothing when the journal does not have it.
///
/// - `with_day`: true to show the day before the time
pub fn entry_row(hub: Hub, id: EventId, with_day: bool) -> AnyView {
    let correcting = RwSignal::new(false);
    live_if(move || {
        let locale = hub.page.with(|page| page.locale());
        hub.keeper.with(|journal| {
            let catalogue = language::catalogue();
            let entry = journal.state.entry(id)?;
            let recorded = entry.recorded()?;
            let event = entry.counts().unwrap_or(recorded);
            let is_withdrawn = entry.is_withdrawn();
            let content = recorded.content();
            let is_correction = content.is_some_and(|content| content.corrects().is_some());
            let is_understood = matches!(recorded.what, What::Known(_));
            let time = wording::time_text(event.happened, locale);
            let time = if with_day {
                texts::DayAndTime {
                    day: &wording::day_text(event.happened, locale),
                    time: &time,
                }
                .said(locale)
            } else {
                time
            };
            let text = wording::entry_line(catalogue, &journal.state, event, locale);
            let is_corrected = !is_withdrawn && entry.corrections().next().is_some();
            let others = entry
                .others()
                .map(|other| {
                    let text = wording::entry_line(catalogue, &journal.state, other, locale);
                    view! { <p class="entry-other">{wording::page::conflict(language::locale())}" "{text}</p> }
                })
                .collect_view();
            let picture = match content {
                Some(Content::Noted(noted)) if !is_withdrawn => noted.picture.clone(),
                _ => None,
            };
            let picture = picture.map(|picture| shown_picture(hub, picture.sha256));
            let name = texts::EntryAt {
                entry: &text,
                time: &time,
            }
            .said(locale);
            let (act, act_name) = if is_withdrawn {
                let act_name = texts::BringBackEntry { entry: &name };
                (shell::bring_back(locale), act_name.said(locale))
            } else {
                let act_name = texts::TakeBackEntry { entry: &name };
                (texts::take_back(locale), act_name.said(locale))
            };
            let is_final = matches!(content, Some(Content::Withdrawn(_)))
                || (is_withdrawn && is_correction);
            let keeper = hub.keeper;
            let acts = (!is_final).then(|| {
                named_button("quiet", act, Some(act_name), move || {
                    keeper.withdraw(id, !is_withdrawn, locale);
                })
            });
            let correct = (is_understood && !is_withdrawn && !is_correction).then(|| {
                let correct_name = texts::CorrectTheTimeOfEntry { entry: &name };
                opener(
                    "quiet",
                    texts::correct_the_time(locale),
                    Some(correct_name.said(locale)),
                    move || correcting.get(),
                    move || correcting.update(|open| *open = !*open),
                )
            });
            Some(view! {
                <div class="entry" class:entry-withdrawn=is_withdrawn class:entry-correction=is_correction>
                    <p class="entry-time">{time}{is_corrected.then(|| format!(" {}", texts::corrected(locale)))}</p>
                    <p class="entry-text">
                        {if is_withdrawn { view! { <s>{text}</s>" "{texts::taken_back(locale)} }.into_any() } else { text.into_any() }}
                    </p>
                    {picture}
                    {others}
                    <div class="entry-acts">{acts}{correct}</div>
                    {live_if(move || correcting.get().then(|| correction(hub, id, correcting)))}
                </div>
            }
            .into_any())
        })
    })
}

fn correction(hub: Hub, id: EventId, correcting: RwSignal<bool>) -> AnyView {
    let field = format!("correct-{id}");
    let read = field.clone();
    let sender = Sender::new(hub);
    let send = move || {
        let entry = form::moment(&read).and_then(|happened| {
            let happened =
                happened.ok_or_else(|| wording::page::no_time(language::locale()).to_owned())?;
            Ok((amended(id, Some(happened)).into(), None))
        });
        sender.send(entry, move || correcting.set(false));
    };
    view! {
        <div class="field">
            <label for=field.clone()>{texts::when_in_truth(language::locale())}</label>
            <input id=field type="datetime-local"/>
            {button("", texts::correct(language::locale()), send)}
            {sender.fault()}
        </div>
    }
    .into_any()
}

fn shown_picture(hub: Hub, sha256: String) -> AnyView {
    let address = RwSignal::new(None::<String>);
    spawn(async move {
        if let Some(bytes) = hub.keeper.picture(&sha256).await {
            let made = device::shown(&Uint8Array::from(&bytes[..]));
            if address.try_set(Some(made.clone())).is_some() {
                // The entry is gone before its picture came.
                device::hidden(&made);
            }
        }
    });
    on_cleanup(move || {
        if let Some(address) = address.try_get_untracked().flatten() {
            device::hidden(&address);
        }
    });
    view! {
        {live_if(move || address.get().map(|address| {
            view! { <img class="entry-picture" src=address alt=texts::picture_of_note(language::locale())/> }.into_any()
        }))}
    }
    .into_any()
}
