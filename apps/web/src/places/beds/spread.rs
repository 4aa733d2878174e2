//! The form that writes down what was spread on a bed.

use heapwright_answers::{before_use, never_on_this_bed};
use heapwright_journal::content::{How, Spread};
use heapwright_journal::{AmountSaid, EventId};
use heapwright_texts::messages::beds_place as texts;
use heapwright_wording::{self as wording, beds_on_the_page as words};
use leptos::prelude::*;

use crate::asking;
use crate::keeping::device;
use crate::language;
use crate::parts::amount_said::AmountTyped;
use crate::parts::form::{self, Entry};
use crate::parts::live::{button, live_if};
use crate::shell::Hub;

/// The form.
pub fn form(hub: Hub, done: impl Fn() + Copy + 'static) -> AnyView {
    let heap = RwSignal::new(None::<EventId>);
    let amount = AmountTyped::new(hub, "1", "barrow");
    let named = super::named(hub);
    // The first one is chosen until another is.
    let bed = RwSignal::new(named.first().map(|(id, _)| *id));
    let beds = named
        .into_iter()
        .map(|(id, name)| view! { <option value=id.to_string()>{name}</option> })
        .collect_view();
    let entry = move || -> Entry {
        let content = Spread {
            bed: device::value("spread-bed")
                .parse()
                .map_err(|_| words::no_bed_ticked(language::locale()).to_owned())?,
            heap: heap.get_untracked(),
            amount: AmountSaid::from(&amount.said()?),
            how: form::chosen::<How>("spread-how"),
        };
        Ok((content.into(), form::moment("spread-when")?))
    };
    let locale = language::locale();
    let not_said = texts::not_said(locale);
    view! {
        <div class="log-form">
            <div class="field">
                <label for="spread-bed">{texts::bed(locale)}</label>
                <select id="spread-bed" on:change=move |event| bed.set(event_target_value(&event).parse().ok())>
                    {beds}
                </select>
            </div>
            {amount.row("spread-amount", texts::amount_spread(locale))}
            <div class="field">
                <label for="spread-heap">{texts::from_heap(locale)}</label>
                <select id="spread-heap" on:change=move |event| heap.set(event_target_value(&event).parse().ok())>
                    <option value="">{not_said}</option>
                    {heap_options(hub)}
                </select>
            </div>
            {live_if(move || bed.get().zip(heap.get()).and_then(|both| off_food(hub, both)))}
            {live_if(move || heap.get().and_then(|heap| to_see_to(hub, heap)))}
            {form::select("spread-how", texts::how(locale), Some(not_said), form::words::<How>())}
            {form::when("spread-when")}
            <div class="acts">
                {form::send(hub, texts::write_it_down(locale), entry, done)}
                {button("quiet", texts::not_now(locale), done)}
            </div>
        </div>
    }
    .into_any()
}

/// The heaps as options, those with finished compost first.
pub fn heap_options(hub: Hub) -> AnyView {
    use heapwright_journal::content::Stage;
    use heapwright_wording::Word;
    let locale = language::locale();
    hub.keeper
        .with(|journal| {
            let stages = [Stage::Finished, Stage::Curing, Stage::Active, Stage::Other];
            stages
                .into_iter()
                .flat_map(|stage| {
                    let of_stage = journal
                        .state
                        .heaps()
                        .filter(move |heap| heap.now().stage == stage);
                    of_stage.filter_map(move |heap| {
                        let name = texts::HeapInStage {
                            heap: heap.name()?,
                            stage: stage.word(locale),
                        };
                        let name = name.said(locale);
                        Some(view! { <option value=heap.id.to_string()>{name}</option> })
                    })
                })
                .collect_view()
        })
        .into_any()
}

/// That the compost of this heap never goes on this bed, where food grows there; it is written down
/// all the same.
fn off_food(hub: Hub, (bed, heap): (EventId, EventId)) -> Option<AnyView> {
    let page = hub.page.get();
    let locale = language::locale();
    let line = hub.keeper.with(|journal| {
        let (state, now) = (&journal.state, device::now());
        let garden = asking::garden_now(&page, state, now);
        let found = never_on_this_bed(
            language::catalogue(),
            language::spreading(),
            &garden,
            state,
            (bed, heap),
            now,
        );
        let described = state.bed(bed)?.now().described.as_ref()?;
        (!found.is_empty()).then(|| wording::spread_on_food_bed(&described.name, &found, locale))
    })?;
    Some(view! { <p class="fault" role="status">{line}</p> }.into_any())
}

/// What went into a heap and must be seen to before its compost is used.
fn to_see_to(hub: Hub, heap: EventId) -> Option<AnyView> {
    let page = hub.page.get();
    let lines: Vec<String> = hub.keeper.with(|journal| {
        let state = &journal.state;
        let garden = asking::garden_now(&page, state, device::now());
        let contents = state.contents_since_harvest(heap);
        wording::before_use_lines(
            &before_use(language::catalogue(), &garden, &contents),
            language::locale(),
        )
    });
    (!lines.is_empty()).then(|| {
        let lines = lines
            .into_iter()
            .map(|line| view! { <li>{line}</li> })
            .collect_view();
        view! { <ul class="told-lines">{lines}</ul> }.into_any()
    })
}
