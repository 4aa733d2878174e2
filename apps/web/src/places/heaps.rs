//! All heaps, and how a new one is started.

use heapwright_journal::content::{
    Cover, Enclosure, Filling, Ground, HeapStarted, Shape, Stage, Sun, Wall,
};
use heapwright_journal::{Content, Moment};
use heapwright_quantity::{UnitSystem, temperature_text};
use heapwright_state::Heap;
use heapwright_wording::{self as wording, Word};
use leptos::prelude::*;

use crate::keeping::{Status, device};
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
        let system = hub.page.with(|page| page.system());
        hub.keeper.with(|journal| match journal.status {
            Status::Opening => view! { <p role="status">{wording::page::OPENING}</p> }.into_any(),
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
                let cards = in_order.map(|heap| card(heap, now, system)).collect_view();
                view! { <ul class="heaps">{cards}</ul> }.into_any()
            }
        })
    };
    let is_open = move || hub.keeper.with(|journal| journal.status != Status::Opening);
    view! {
        <div class="place">
            <h1 id="title" tabindex="-1">{wording::page::HEAPS}</h1>
            <div class="sides sides-list">
                <div>{live(heaps)}</div>
                <div>
                    {live_if(move || (is_open() && is_empty.get()).then(|| welcome(hub)))}
                    {live_if(move || (is_open() && !starting.get()).then(|| {
                        button("main-act", "Start a heap", move || starting.set(true))
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
            <p>{wording::page::NO_HEAPS}</p>
            {live_if(move || (!hub.keeper.with(|journal| journal.is_demo)).then(|| {
                button("quiet", wording::page::DEMO_ENTER, enter)
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

fn core_text(heap: &Heap, now: Moment, system: UnitSystem) -> Option<String> {
    let (then, temperature_c) = core_of(heap)?;
    Some(format!(
        "{}, {}",
        temperature_text(temperature_c, system),
        wording::ago_text(then, now)
    ))
}

/// What is told of a heap in few words: when it was fed, turned, looked at.
pub fn doings(heap: &Heap, now: Moment, system: UnitSystem) -> impl IntoView + use<> {
    let ago = |then: Option<Moment>| then.map(|then| wording::ago_text(then, now));
    let heap_now = heap.now();
    [
        ("Core", core_text(heap, now, system)),
        ("Fed", ago(heap_now.last_fed)),
        ("Turned", ago(heap_now.last_turned)),
        ("Looked at", ago(heap_now.last_read)),
    ]
    .into_iter()
    .filter_map(|(name, text)| {
        let text = text?;
        Some(view! { <div><dt>{name}</dt><dd>{text}</dd></div> })
    })
    .collect_view()
}

fn card(heap: &Heap, now: Moment, system: UnitSystem) -> AnyView {
    let name = heap.name().unwrap_or_default().to_owned();
    view! {
        <li class="card heap-card">
            <div class="heap-head">
                <h2><a class="heap-link" href=Route::Heap(heap.id).address()>{name}</a></h2>
                <span class="stage">{heap.now().stage.word()}</span>
            </div>
            <dl class="doings">{doings(heap, now, system)}</dl>
        </li>
    }
    .into_any()
}

fn start_form(hub: Hub, starting: RwSignal<bool>) -> AnyView {
    let system = hub.page.with(|page| page.system());
    let unit = match system {
        UnitSystem::Metric => "cm",
        UnitSystem::UsCustomary => "in",
    };
    let length = |id, name: &str| form::text(id, format!("{name}, {unit}"), "", true);
    view! {
        <section class="card" aria-labelledby="start-title">
            <h2 id="start-title">"Start a heap"</h2>
            {form::text("start-name", "Name".to_owned(), "Such as Bin 1, or By the shed.", false)}
            <details class="more">
                <summary>"What it stands in (may be left out)"</summary>
                <div class="fields">
                    {form::select("start-shape", "Shape", Some("not said"), form::words::<Shape>())}
                    {length("start-width", "Width or diameter")}
                    {length("start-depth", "Depth")}
                    {length("start-height", "Height")}
                    {form::select("start-wall", "Wall", Some("not said"), form::words::<Wall>())}
                    {form::select("start-cover", "Cover", Some("not said"), form::words::<Cover>())}
                    {form::select("start-ground", "Ground", Some("not said"), form::words::<Ground>())}
                    {form::select("start-sun", "Sun", Some("not said"), form::words::<Sun>())}
                    {form::select("start-filling", "Filled", Some("not said"), vec!["little by little", "at once"])}
                    {form::when("start-when")}
                </div>
            </details>
            <div class="acts">
                {form::send(hub, "Start this heap", move || started(system), move || starting.set(false))}
                {button("quiet", "Not now", move || starting.set(false))}
            </div>
        </section>
    }
    .into_any()
}

/// What the form says.
fn started(system: UnitSystem) -> form::Entry {
    let happened = form::moment("start-when")?;
    let metres =
        |id: &str| Ok::<_, String>(form::number(id)?.map(|length| form::metres(length, system)));
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
        _ => return Err(wording::page::SHAPE_NEEDS_SIZE.to_owned()),
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
