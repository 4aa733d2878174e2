//! The heap over time: bands of what is likely, other ways to go on as lines, the keeper's readings.
//!
//! The picture is read with a cursor: a slider of days, moved by keys, by a tap on the picture or by
//! the buttons below it. Keys follow what one sees, which is the same in either direction of script.

use heapwright_texts::messages::heap_place as texts;
use heapwright_wire::ChartShown;
use heapwright_wording::{ahead as words, pictures_read as read};
use leptos::prelude::*;
use wasm_bindgen::JsCast;

use super::{Look, choices, live_table};
use crate::language;
use crate::parts::breath::turn;
use crate::parts::live::{live_if, live_text, named_button, spawn};

/// Days of a week, by which the larger steps go.
const WEEK: isize = 7;

/// The cursor in the picture: which value, and which day of it, now when none was chosen.
#[derive(Clone, Copy)]
struct Cursor {
    look: Look,
    which: RwSignal<usize>,
    day: RwSignal<Option<usize>>,
    /// What the buttons read, to be told aloud.
    told: RwSignal<String>,
}

impl Cursor {
    /// Something of the picture that is shown.
    fn chart<T>(self, part: impl FnOnce(&ChartShown) -> T) -> Option<T> {
        self.look
            .option(|_, option| option.charts.get(self.which.get()).map(part))
            .flatten()
    }

    /// The last day that can be read.
    fn last(self) -> usize {
        self.chart(|chart| chart.at.len().saturating_sub(1))
            .unwrap_or_default()
    }

    fn here(self) -> usize {
        let now = self.chart(|chart| chart.at_now).unwrap_or_default();
        self.day.get().unwrap_or(now).min(self.last())
    }

    fn go(self, to: usize) {
        self.day.set(Some(to.min(untrack(|| self.last()))));
    }

    fn step(self, by: isize) {
        let here = untrack(|| self.here());
        self.go(here.saturating_add_signed(by));
    }

    /// Moves by a key; false when that means nothing here.
    fn key(self, key: &str) -> bool {
        match key {
            "ArrowRight" | "ArrowUp" => self.step(1),
            "ArrowLeft" | "ArrowDown" => self.step(-1),
            "PageUp" => self.step(WEEK),
            "PageDown" => self.step(-WEEK),
            "Home" => self.go(0),
            "End" => self.go(usize::MAX),
            _ => return false,
        }
        true
    }

    /// Moves to the day that lies nearest to a share of the width.
    fn tap(self, share: f64) {
        let nearest = untrack(|| {
            self.chart(|chart| {
                let x = share * chart.width_px;
                let far = |at: &(f64, f64)| (at.0 - x).abs();
                let all = chart.at.iter().enumerate();
                all.min_by(|one, other| far(one.1).total_cmp(&far(other.1)))
                    .map(|(index, _)| index)
            })
        });
        if let Some(day) = nearest.flatten() {
            self.go(day);
        }
    }

    /// What the picture says of the day.
    fn reading(self) -> String {
        let here = self.here();
        self.chart(|chart| reading(chart, here)).unwrap_or_default()
    }
}

/// What a picture says of one of its days.
fn reading(chart: &ChartShown, day: usize) -> String {
    let Some(row) = chart.table.rows.get(day) else {
        return String::new();
    };
    let cell = |index: usize| row.get(index).map_or("", String::as_str);
    let locale = language::locale();
    let value = format!("{}\u{a0}{}", cell(1), chart.unit);
    let line = if chart.has_bands {
        read::day_read_of_many(cell(0), &value, cell(2), cell(3), locale)
    } else {
        read::day_read(cell(0), &value, locale)
    };
    match row.last().filter(|done| chart.has_done && !done.is_empty()) {
        Some(done) => format!("{line} {}", read::done_on_the_day(done, locale)),
        None => line,
    }
}

/// The figure.
pub fn figure(look: Look) -> AnyView {
    let cursor = Cursor {
        look,
        which: RwSignal::new(0),
        day: RwSignal::new(None),
        told: RwSignal::new(String::new()),
    };
    // What is chosen is marked at once, and its picture drawn after that.
    let chosen = RwSignal::new(0);
    let choose = move |index| {
        chosen.set(index);
        spawn(async move {
            turn().await;
            // By then the place may have been left, or another was chosen.
            let latest = chosen.try_get_untracked();
            if let Some(latest) =
                latest.filter(|latest| cursor.which.try_get_untracked() != Some(*latest))
            {
                cursor.which.set(latest);
            }
        });
    };
    let locale = language::locale();
    let names = words::values(locale).map(str::to_owned).to_vec();
    let table = move || cursor.chart(|chart| chart.table.clone());
    view! {
        <figure class="over-time" aria-labelledby="ahead-title">
            {choices("ahead-value", texts::over_time(locale).to_owned(), names, move || chosen.get(), choose)}
            {slider(cursor)}
            {reader(cursor)}
            {live_if(move || cursor.chart(caption))}
        </figure>
        {live_table(texts::picture_as_table(locale), table)}
    }
    .into_any()
}

/// The picture, which is one control.
fn slider(cursor: Cursor) -> AnyView {
    let name = move || {
        cursor
            .chart(|chart| read::picture_name(&chart.name, language::locale()))
            .unwrap_or_default()
    };
    let pressed = move |event: web_sys::KeyboardEvent| {
        let plain = !(event.ctrl_key() || event.alt_key() || event.meta_key());
        if plain && cursor.key(&event.key()) {
            event.prevent_default();
        }
    };
    let tapped = move |event: web_sys::MouseEvent| {
        let width = event
            .current_target()
            .and_then(|target| target.dyn_into::<web_sys::HtmlElement>().ok())
            .map_or(0, |chart| chart.client_width());
        if width > 0 {
            cursor.tap(f64::from(event.offset_x()) / f64::from(width));
        }
    };
    view! {
        <div
            class="chart"
            dir="ltr"
            role="slider"
            tabindex="0"
            aria-label=name
            aria-describedby="chart-how"
            aria-orientation="horizontal"
            aria-valuemin="0"
            aria-valuemax=move || cursor.last().to_string()
            aria-valuenow=move || cursor.here().to_string()
            aria-valuetext=move || cursor.reading()
            on:keydown=pressed
            on:click=tapped
        >
            {live_if(move || cursor.chart(picture))}
            {live_if(move || {
                let here = cursor.here();
                cursor.chart(|chart| mark(chart, here)).flatten()
            })}
        </div>
        <p id="chart-how" class="unseen">{read::how_to_read(language::locale())}</p>
    }
    .into_any()
}

/// What the picture says of the day, between the buttons that go on from it.
fn reader(cursor: Cursor) -> AnyView {
    let step = move |by: isize| {
        cursor.step(by);
        cursor.told.set(untrack(|| cursor.reading()));
    };
    let earlier = named_button(
        "chart-step",
        "\u{2039}",
        Some(read::day_before(language::locale()).to_owned()),
        move || step(-1),
    );
    let later = named_button(
        "chart-step",
        "\u{203a}",
        Some(read::day_after(language::locale()).to_owned()),
        move || step(1),
    );
    view! {
        <div class="chart-read">
            {earlier}
            {later}
            <p class="chart-line">{live_text(move || cursor.reading())}</p>
            <p class="unseen" role="status">{live_text(move || cursor.told.get())}</p>
        </div>
    }
    .into_any()
}

fn picture(chart: &ChartShown) -> AnyView {
    let view_box = format!("0 0 {} {}", chart.width_px, chart.height_px);
    view! {
        <svg class="time-picture" viewBox=view_box aria-hidden="true" focusable="false" inner_html=chart.inside.clone()></svg>
    }
    .into_any()
}

/// The cursor's line and its ring around the value.
fn mark(chart: &ChartShown, day: usize) -> Option<AnyView> {
    let (x, y) = *chart.at.get(day)?;
    let (top, bottom) = chart.plot_px;
    let inside = format!(
        r#"<path d="M{x:.1} {top:.1}V{bottom:.1}"/><circle cx="{x:.1}" cy="{y:.1}" r="6"/>"#
    );
    let view_box = format!("0 0 {} {}", chart.width_px, chart.height_px);
    Some(
        view! { <svg class="chart-mark" viewBox=view_box aria-hidden="true" focusable="false" inner_html=inside></svg> }
            .into_any(),
    )
}

/// What the picture says in words, and what its lines and bands are.
fn caption(chart: &ChartShown) -> AnyView {
    let key = chart
        .key
        .iter()
        .map(|(class, words)| {
            view! {
                <li>
                    <svg class=format!("sample {class}") viewBox="0 0 28 12" aria-hidden="true" focusable="false" inner_html=SAMPLE></svg>
                    {words.clone()}
                </li>
            }
        })
        .collect_view();
    view! {
        <figcaption>
            <p>{chart.sentence.clone()}</p>
            <ul class="map-key">{key}</ul>
        </figcaption>
    }
    .into_any()
}

/// A line, an area and a dot, of which the style shows one.
const SAMPLE: &str = r#"<rect x="0" y="0" width="28" height="12" rx="2"/><path d="M0 6h28"/><circle cx="14" cy="6" r="4"/>"#;
