//! The heap over time: bands of what is likely, other ways to go on as lines, the keeper's readings.

use heapwright_texts::messages::heap_place as texts;
use heapwright_wire::ChartShown;
use heapwright_wording::ahead as words;
use leptos::prelude::*;

use super::{Look, choices, live_table};
use crate::language;
use crate::parts::live::live_if;

/// The figure.
pub fn figure(look: Look) -> AnyView {
    let which = RwSignal::new(0);
    let locale = language::locale();
    let names = words::values(language::locale())
        .map(str::to_owned)
        .to_vec();
    let chart = move || {
        look.option(|_, option| option.charts.get(which.get()).cloned())
            .flatten()
    };
    let picture = move || chart().map(drawn);
    let table = move || chart().map(|chart| chart.table);
    view! {
        <figure class="over-time" aria-labelledby="ahead-title">
            {choices("ahead-value", texts::over_time(locale).to_owned(), names, move || which.get(), move |index| which.set(index))}
            {live_if(picture)}
        </figure>
        {live_table(texts::picture_as_table(locale), table)}
    }
    .into_any()
}

fn drawn(chart: ChartShown) -> AnyView {
    let view_box = format!("0 0 {} {}", chart.width_px, chart.height_px);
    let key = chart
        .key
        .into_iter()
        .map(|(class, words)| {
            view! {
                <li>
                    <svg class=format!("sample {class}") viewBox="0 0 28 12" aria-hidden="true" focusable="false" inner_html=SAMPLE></svg>
                    {words}
                </li>
            }
        })
        .collect_view();
    view! {
        <svg class="time-picture" viewBox=view_box aria-hidden="true" focusable="false" inner_html=chart.inside></svg>
        <figcaption>
            <p>{chart.sentence}</p>
            <ul class="map-key">{key}</ul>
            <p class="hint">{words::days_from_now(language::locale())}</p>
        </figcaption>
    }
    .into_any()
}

/// A line, an area and a dot, of which the style shows one.
const SAMPLE: &str = r#"<rect x="0" y="0" width="28" height="12" rx="2"/><path d="M0 6h28"/><circle cx="14" cy="6" r="4"/>"#;
