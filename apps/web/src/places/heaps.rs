//! All heaps, and how a new one is started.

use heapwright_journal::content::{
    Cover, Enclosure, Filling, Ground, HeapStarted, Shape, Stage, Sun, Wall,
};
use heapwright_journal::{Content, Moment};
use heapwright_quantity::UnitSystem;
use heapwright_state::Heap;
use heapwright_texts::Locale;
use heapwright_texts::messages::{heap_forms as texts, heap_place};
use heapwright_wording::{self as wording, Word};
use leptos::prelude::*;

use crate::keeping::{Status, device};
use crate::language;
use crate::parts::form::{self, Sender};
use crate::parts::live::{button, live, live_if};
use crate::places::{kept_out, transfer};
use crate::shell::{Hub, Route, hub};

/// The place.
#[component]
pub fn Heaps() -> impl IntoView {
    let hub = hub();
    let starting = RwSignal::new(false);
    let is_empty = Memo::new(move |_| {
        hub.keeper
            .with(|journal| journal.state.heaps().next().is_none())
    });
    let heaps = move || {
        let locale = hub.page.with(|page| page.locale());
        hub.keeper.with(|journal| match journal.status {
            Status::Opening => {
                view! { <p role="status">{wording::page::opening(language::locale())}</p> }
                    .into_any()
            }
            _ => {
                let now = device::now();
                let heaps: Vec<&Heap> = journal.state.heaps().collect();
                // Those at work first, and of each stage the one that was started last.
                let stages = [Stage::Active, Stage::Curing, Stage::Finished, Stage::Other];
                let in_order = stages.into_iter().flat_map(|stage| {
                    heaps
                        .iter()
                        .rev()
                        .filter(move |heap| heap.now().stage == stage)
                });
                let cards = in_order.map(|heap| card(heap, now, locale)).collect_view();
                view! { <ul class="heaps">{cards}</ul> }.into_any()
            }
        })
    };
    let is_open = move || hub.keeper.with(|journal| journal.status != Status::Opening);
    view! {
        <div class="place">
            <h1 id="title" tabindex="-1">{wording::page::heaps(language::locale())}</h1>
            <div class="sides sides-list">
                <div>{live(heaps)}</div>
                <div>
                    {live_if(move || (is_open() && is_empty.get()).then(|| welcome(hub)))}
                    {live_if(move || (is_open() && !starting.get()).then(|| {
                        button("main-act", texts::start_a_heap(language::locale()), move || starting.set(true))
                    }))}
                    {live_if(move || starting.get().then(|| start_form(hub, starting)))}
                    {live_if(move || (is_open() && !is_empty.get()).then(|| kept_out::section(hub)))}
                    {transfer::warning(hub)}
                </div>
            </div>
        </div>
    }
}

fn welcome(hub: Hub) -> AnyView {
    let sender = Sender::new(hub);
    let enter = move || sender.run(hub.keeper.open_demo(), || {});
    view! {
        <section class="card welcome">
            <p>{wording::page::no_heaps(language::locale())}</p>
            {live_if(move || (!hub.keeper.with(|journal| journal.is_demo)).then(|| {
                button("quiet", wording::page::demo_enter(language::locale()), enter)
            }))}
            {sender.fault()}
        </section>
    }
    .into_any()
}

/// The last temperature in the core, or of the first probe, and when it was read [degC].
pub fn core_of(heap: &Heap) -> Option<(Moment, f64)> {
    use heapwright_journal::content::ProbePlace;
    let (then, read) = heap.now().last_probes.as_ref()?;
    let probe = read
        .probes
        .iter()
        .find(|probe| probe.place == Some(ProbePlace::Core))
        .or_else(|| read.probes.first())?;
    Some((*then, probe.temperature_c))
}

fn core_text(heap: &Heap, now: Moment, locale: Locale) -> Option<String> {
    let (then, temperature_c) = core_of(heap)?;
    let told = heap_place::CoreWhen {
        temperature: &locale.temperature(temperature_c),
        ago: &wording::ago_text(then, now, locale),
    };
    Some(told.said(locale))
}

/// What is told of a heap in few words: when it was fed, turned, looked at.
pub fn doings(heap: &Heap, now: Moment, locale: Locale) -> impl IntoView + use<> {
    let ago = |then: Option<Moment>| then.map(|then| wording::ago_text(then, now, locale));
    let heap_now = heap.now();
    [
        (heap_place::core(locale), core_text(heap, now, locale)),
        (heap_place::fed(locale), ago(heap_now.last_fed)),
        (heap_place::turned(locale), ago(heap_now.last_turned)),
        (heap_place::looked_at(locale), ago(heap_now.last_read)),
    ]
    .into_iter()
    .filter_map(|(name, text)| {
        let text = text?;
        Some(view! { <div><dt>{name}</dt><dd>{text}</dd></div> })
    })
    .collect_view()
}

fn card(heap: &Heap, now: Moment, locale: Locale) -> AnyView {
    let name = heap.name().unwrap_or_default().to_owned();
    let stage = match heap.now().stage {
        Stage::Finished => "stage stage-past",
        _ => "stage",
    };
    view! {
        <li class="card heap-card">
            <div class="heap-head">
                <h2><a class="heap-link" href=Route::Heap(heap.id).address()>{name}</a></h2>
                <span class=stage>{heap.now().stage.word(locale)}</span>
            </div>
            <dl class="doings">{doings(heap, now, locale)}</dl>
        </li>
    }
    .into_any()
}

fn start_form(hub: Hub, starting: RwSignal<bool>) -> AnyView {
    let locale = hub.page.with(|page| page.locale());
    let unit = match locale.units {
        UnitSystem::Metric => texts::centimetres(locale),
        UnitSystem::UsCustomary => texts::inches(locale),
    };
    let length = |id, label: String| form::text(id, label, "", true);
    let not_said = Some(texts::not_said(locale));
    let fillings = vec![
        texts::filled_little_by_little(locale),
        texts::filled_at_once(locale),
    ];
    view! {
        <section class="card" aria-labelledby="start-title">
            <h2 id="start-title">{texts::start_a_heap(locale)}</h2>
            {form::text("start-name", texts::name(locale).to_owned(), texts::name_hint(locale), false)}
            <details class="more">
                <summary>{texts::stands_in(locale)}</summary>
                <div class="fields">
                    {form::select("start-shape", texts::shape(locale), not_said, form::words::<Shape>())}
                    {length("start-width", texts::WidthOrDiameter { unit }.said(locale))}
                    {length("start-depth", texts::Depth { unit }.said(locale))}
                    {length("start-height", texts::Height { unit }.said(locale))}
                    {form::select("start-wall", texts::wall(locale), not_said, form::words::<Wall>())}
                    {form::select("start-cover", texts::cover(locale), not_said, form::words::<Cover>())}
                    {form::select("start-ground", texts::ground(locale), not_said, form::words::<Ground>())}
                    {form::select("start-sun", texts::sun(locale), not_said, form::words::<Sun>())}
                    {form::select("start-filling", texts::filled(locale), not_said, fillings)}
                    {form::when("start-when")}
                </div>
            </details>
            <div class="acts">
                {form::send(hub, texts::start_this_heap(locale), move || started(locale), move || starting.set(false))}
                {button("quiet", texts::not_now(locale), move || starting.set(false))}
            </div>
        </section>
    }
    .into_any()
}

/// What the form says.
fn started(locale: Locale) -> form::Entry {
    let happened = form::moment("start-when")?;
    let metres =
        |id: &str| Ok::<_, String>(form::number(id)?.map(|length| form::metres(length, locale)));
    let (width_m, depth_m, height_m) = (
        metres("start-width")?,
        metres("start-depth")?,
        metres("start-height")?,
    );
    let enclosure = match (form::chosen::<Shape>("start-shape"), width_m, height_m) {
        (None, None, None) if depth_m.is_none() => None,
        (Some(shape), Some(width_m), Some(height_m)) => Some(Enclosure {
            shape,
            width_m,
            depth_m,
            height_m,
            wall: form::chosen::<Wall>("start-wall"),
            cover: form::chosen::<Cover>("start-cover"),
            ground: form::chosen::<Ground>("start-ground"),
        }),
        _ => return Err(wording::page::shape_needs_size(language::locale()).to_owned()),
    };
    let content: Content = HeapStarted {
        name: device::value("start-name").trim().to_owned(),
        enclosure,
        sun: form::chosen::<Sun>("start-sun"),
        filling: device::value("start-filling")
            .parse::<usize>()
            .ok()
            .and_then(|index| Filling::ALL.get(index).copied()),
    }
    .into();
    Ok((content, happened))
}
