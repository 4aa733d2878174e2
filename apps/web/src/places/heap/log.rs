//! What can be logged of a heap: one tap where nothing need be said, a form in place where it must.

use heapwright_answers::lasting_cautions;
use heapwright_garden::Stuff;
use heapwright_journal::content::{
    Cover, Covered, Harvested, Noted, Rested, Stage, Thoroughness, Turned, Uncovered, Watered,
};
use heapwright_journal::{AmountSaid, Content, EventId};
use heapwright_texts::messages::heap_forms as texts;
use heapwright_wording as wording;
use js_sys::Uint8Array;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

use super::{Asked, asked_for, read};
use crate::asking;
use crate::keeping::device;
use crate::language;
use crate::parts::amount::AmountRow;
use crate::parts::amount_said::AmountTyped;
use crate::parts::focus;
use crate::parts::fold::sentences;
use crate::parts::form::{self, Entry, Sender};
use crate::parts::live::{self, button, live_if, live_text};
use crate::places::balance::log_feed::{feed, feed_line, to_think_of};
use crate::shell::{Hub, Route};
use crate::state::{Action, stepped};

/// The form that is open.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Form {
    Feed,
    Water,
    Read,
    Note,
    Harvest,
    More,
}

/// The section.
pub fn section(hub: Hub, id: EventId) -> AnyView {
    let open = RwSignal::new(match asked_for(id, &[Asked::Feed, Asked::Harvest]) {
        Some(Asked::Feed) => Some(Form::Feed),
        Some(Asked::Harvest) => Some(Form::Harvest),
        _ => None,
    });
    if open.with_untracked(Option::is_some) {
        request_animation_frame(|| focus("log-title"));
    }
    let close = move || {
        open.set(None);
        focus("log-title");
    };
    let opener = move |form: Form, name: &'static str| {
        let is_open = move || open.get() == Some(form);
        let press = move || open.set((open.get_untracked() != Some(form)).then_some(form));
        live::opener("log-act", name, None, is_open, press)
    };
    let turned = Sender::new(hub);
    let turn = move || {
        let content: Content = Turned {
            heap: id,
            thoroughness: None,
        }
        .into();
        turned.tap(content, move || open.set(None));
    };
    let locale = language::locale();
    let form = move || {
        open.get().map(|form| match form {
            Form::Feed => fed_form(hub, id, close),
            Form::Water => watered_form(hub, id, close),
            Form::Read => read::form(hub, id, close),
            Form::Note => noted_form(hub, id, close),
            Form::Harvest => harvested_form(hub, id, close),
            Form::More => more_form(hub, id, close),
        })
    };
    view! {
        <section class="card" aria-labelledby="log-title">
            <h2 id="log-title" tabindex="-1">{texts::log(locale)}</h2>
            <div class="log-acts">
                {opener(Form::Feed, texts::act_feed(locale))}
                {resting("log-act", texts::act_turned(locale).to_owned(), turned, turn)}
                {opener(Form::Water, texts::act_watered(locale))}
                {opener(Form::Read, texts::act_read(locale))}
                {opener(Form::Note, texts::act_note(locale))}
                {opener(Form::Harvest, texts::act_harvest(locale))}
                {opener(Form::More, texts::act_more(locale))}
            </div>
            {turned.fault()}
            {again(hub, id)}
            {live_if(form)}
        </section>
    }
    .into_any()
}

/// A button that logs at one tap, and cannot be tapped again at once.
fn resting(
    class: &'static str,
    word: String,
    sender: Sender,
    press: impl Fn() + 'static,
) -> AnyView {
    view! {
        <button type="button" class=class aria-disabled=move || sender.is_busy().then_some("true") on:click=move |_| press()>
            {word}
        </button>
    }
    .into_any()
}

/// The last feed, to be logged once more by one tap.
fn again(hub: Hub, id: EventId) -> AnyView {
    let sender = Sender::new(hub);
    let offer = move || {
        let locale = hub.page.with(|page| page.locale());
        hub.keeper.with(|journal| {
            let heap = journal.state.heap(id)?;
            let fed = heap
                .history()
                .rev()
                .find_map(|event| match event.content() {
                    Some(Content::Fed(fed)) if fed.heap == id => Some(fed.clone()),
                    _ => None,
                })?;
            let line =
                wording::feed_again_line(language::catalogue(), &journal.state, &fed, locale);
            let log = move || sender.tap(fed.clone().into(), || {});
            Some(resting("again", line, sender, log))
        })
    };
    view! { {live_if(offer)}{sender.fault()} }.into_any()
}

fn fed_form(hub: Hub, id: EventId, done: impl Fn() + Copy + 'static) -> AnyView {
    let with_added = RwSignal::new(true);
    let entry = move || -> Entry {
        hub.answering.settle();
        let content = feed(hub, id, with_added.get_untracked())?;
        Ok((content, form::moment("fed-when")?))
    };
    let locale = language::locale();
    view! {
        <div class="log-form">
            <p>{live_text(move || feed_line(hub, id, with_added.get()))}</p>
            <div role="status">{live_if(move || to_think_of(hub, id, with_added.get()))}</div>
            <label class="tick">
                <input
                    type="checkbox"
                    prop:checked=move || with_added.get()
                    on:change=move |_| with_added.update(|with| *with = !*with)
                />
                <span>{texts::with_what_answer_adds(locale)}</span>
            </label>
            {live_if(move || stays_with_heap(hub, with_added.get()))}
            <p><a class="link" href=Route::Balance.address()>{texts::change_in_balance(locale)}</a></p>
            {form::when("fed-when")}
            {form::send(hub, texts::log_feed(locale), entry, move || {
                hub.act.run(Action::ClearHand);
                done();
            })}
        </div>
    }
    .into_any()
}

/// What of the feed must be seen to before the compost is used; not there when nothing is.
fn stays_with_heap(hub: Hub, with_added: bool) -> Option<AnyView> {
    let catalogue = language::catalogue();
    let mut lines: Vec<String> = Vec::new();
    hub.shown.with(|shown| {
        let added = shown.feed.added.iter().filter(|_| with_added);
        let materials = shown.feed.hand.iter().chain(added).filter_map(|found| {
            let Stuff::Known { material, .. } = &found.stuff else {
                return None;
            };
            catalogue.material(material.as_str())
        });
        for material in materials {
            for caution in lasting_cautions(catalogue, material) {
                let line = texts::CautionOf {
                    material: &material.name,
                    caution: &wording::caution_line(caution),
                }
                .said(language::locale());
                if !lines.contains(&line) {
                    lines.push(line);
                }
            }
        }
    });
    (!lines.is_empty()).then(|| {
        view! {
            <div class="stays" role="note">
                <p class="note">{wording::told::stays_with_heap(language::locale())}</p>
                {sentences(&lines)}
            </div>
        }
        .into_any()
    })
}

fn watered_form(hub: Hub, id: EventId, done: impl Fn() + Copy + 'static) -> AnyView {
    let us_units = Signal::derive(move || hub.page.with(|page| page.us_units));
    let typed = RwSignal::new("5".to_owned());
    let unit = RwSignal::new(if us_units.get_untracked() { "gal" } else { "L" }.to_owned());
    let entry = move || -> Entry {
        let page = hub.page.get();
        let litres = hub
            .own
            .with(|own| asking::litres(&page, own.as_ref(), &typed.get(), &unit.get()))?;
        let content: Content = Watered {
            heap: id,
            water_l: litres,
        }
        .into();
        Ok((content, form::moment("watered-when")?))
    };
    let locale = language::locale();
    view! {
        <div class="log-form">
            <AmountRow
                id="watered".to_owned()
                name=texts::amount_water(locale).to_owned()
                typed=typed
                unit=unit
                plain=true
                us_units=us_units
                fault=Signal::stored(None::<String>)
                on_type=Callback::new(move |text| typed.set(text))
                on_step=Some(Callback::new(move |up| typed.update(|text| *text = stepped(text, up))))
                on_unit=Callback::new(move |text| unit.set(text))
            />
            {form::when("watered-when")}
            {form::send(hub, texts::log_water(locale), entry, done)}
        </div>
    }
    .into_any()
}

fn noted_form(hub: Hub, id: EventId, done: impl Fn() + Copy + 'static) -> AnyView {
    let sender = Sender::new(hub);
    let send = move || {
        let keeper = hub.keeper;
        let opened = keeper.opened();
        let work = async move {
            let happened = form::moment("noted-when")?;
            let text = device::value("noted-text").trim().to_owned();
            let file = device::chosen("noted-picture", true);
            let picture = if file.is_undefined() {
                None
            } else {
                let (bytes, width_px, height_px) = small(&file)
                    .await
                    .ok_or(wording::page::picture_not_read(language::locale()))?;
                // Drawing it anew takes a while, in which another garden may have been opened.
                keeper.is_open(opened).map_err(|error| error.to_string())?;
                Some(keeper.keep_picture(&bytes, (width_px, height_px)).await?)
            };
            let content = Noted {
                text: (!text.is_empty()).then_some(text),
                heap: Some(id),
                bed: None,
                picture,
            };
            let locale = hub.page.with(|page| page.locale());
            keeper.log(content.into(), happened, locale).await.map(drop)
        };
        sender.run(work, done);
    };
    let locale = language::locale();
    view! {
        <div class="log-form">
            <div class="field">
                <label for="noted-text">{texts::note(locale)}</label>
                <textarea id="noted-text" rows="3"></textarea>
            </div>
            <div class="field">
                <label for="noted-picture">{texts::picture(locale)}</label>
                <input id="noted-picture" type="file" accept="image/*" capture="environment"/>
            </div>
            {form::when("noted-when")}
            {button("main-act", texts::log_note(locale), send)}
            {sender.fault()}
        </div>
    }
    .into_any()
}

/// A picture drawn anew by the browser: its bytes, width and height.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // At most 1,280 pixels.
async fn small(file: &wasm_bindgen::JsValue) -> Option<(Vec<u8>, u32, u32)> {
    let drawn: js_sys::Array = device::shrunk(file).await.ok()?.dyn_into().ok()?;
    let bytes: Uint8Array = drawn.get(0).dyn_into().ok()?;
    let size = |at| drawn.get(at).as_f64().map(|pixels| pixels as u32);
    Some((bytes.to_vec(), size(1)?, size(2)?))
}

fn harvested_form(hub: Hub, id: EventId, done: impl Fn() + Copy + 'static) -> AnyView {
    let amount = AmountTyped::new(hub, "", "barrow");
    let entry = move || -> Entry {
        let content = Harvested {
            heap: id,
            amount: match amount.is_empty() {
                true => None,
                false => Some(AmountSaid::from(&amount.said()?)),
            },
            share_pct: form::number("harvested-share")?,
            sieve_mm: None,
            overs: None,
            overs_to: None,
        };
        Ok((content.into(), form::moment("harvested-when")?))
    };
    let locale = language::locale();
    view! {
        <div class="log-form">
            <div class="field">
                <label for="harvested-amount">{texts::how_much_compost(locale)}</label>
                {amount.row("harvested-amount", texts::amount_harvested(locale))}
                <p class="hint">{wording::page::harvest_amount_hint(language::locale())}</p>
            </div>
            {form::text("harvested-share", texts::share_of_heap(locale).to_owned(), texts::share_of_heap_hint(locale), true)}
            {form::when("harvested-when")}
            {form::send(hub, texts::log_harvest(locale), entry, done)}
        </div>
    }
    .into_any()
}

fn more_form(hub: Hub, id: EventId, done: impl Fn() + Copy + 'static) -> AnyView {
    let at = |content: Content| -> Entry { Ok((content, form::moment("more-when")?)) };
    let turned = move || {
        at(Turned {
            heap: id,
            thoroughness: form::chosen::<Thoroughness>("turned-how"),
        }
        .into())
    };
    let covered = move || {
        at(match form::chosen::<Cover>("cover") {
            None | Some(Cover::None) => Uncovered { heap: id }.into(),
            cover => Covered { heap: id, cover }.into(),
        })
    };
    let rested = move || {
        at(Rested {
            heap: id,
            stage: form::chosen::<Stage>("stage").unwrap_or(Stage::Active),
        }
        .into())
    };
    let locale = language::locale();
    view! {
        <div class="log-form">
            {form::when("more-when")}
            <div class="pair">
                {form::select("turned-how", texts::turned(locale), None, form::words::<Thoroughness>())}
                {form::send_as("log-act", hub, texts::log_turning(locale), turned, done)}
            </div>
            <div class="pair">
                {form::select("cover", texts::cover(locale), None, form::words::<Cover>())}
                {form::send_as("log-act", hub, texts::log_cover(locale), covered, done)}
            </div>
            <div class="pair">
                {form::select("stage", texts::stage(locale), None, form::words::<Stage>())}
                {form::send_as("log-act", hub, texts::log_stage(locale), rested, done)}
            </div>
        </div>
    }
    .into_any()
}
