//! The figures of the mixture, each to be opened to its range and its sources.

use heapwright_answers::{Figure, MixAnswer, figure_lines};
use heapwright_catalogue::Catalogue;
use heapwright_drawings::range_bar;
use heapwright_quantity::{Interval, Range, UnitSystem, mass_text, significant, volume_text};
use heapwright_texts::Locale;
use heapwright_wording as wording;
use heapwright_wording::FigureState;
use leptos::prelude::*;

use crate::language;
use crate::parts::fold::Fold;
use crate::parts::picture::Drawn;
use crate::shell::hub;

const BAR_WIDTH: f64 = 150.0;

/// The section.
#[component]
pub fn Figures() -> impl IntoView {
    let hub = hub();
    let locale = move || hub.page.with(|page| page.locale());
    let rows = [
        Figure::CarbonToNitrogen,
        Figure::Moisture,
        Figure::FreeAirSpace,
        Figure::Mass,
        Figure::Volume,
    ]
    .map(|figure| view! { <FigureRow figure=figure/> })
    .collect_view();
    view! {
        <section class="card figures" aria-labelledby="figures-title" hidden=move || hub.shown.with(|shown| shown.looked_at.is_none())>
            <h2 id="figures-title">{wording::page::FIGURES}</h2>
            {rows}
            <Fold
                class="figure"
                summary=view! {
                    <span class="figure-name">"Nutrients"</span>
                    <span class="figure-value">
                        {move || {
                            let locale = locale();
                            hub.shown
                                .with(|shown| {
                                    let mass = shown.looked_at.as_ref().map(|mix| mix.mixture.nitrogen_kg.value);
                                    mass.map(|mass| mass_text(mass, locale))
                                })
                        }}
                    </span>
                    <span class="state">"nitrogen"</span>
                }
                .into_any()
            >
                {move || hub.shown.with(|shown| shown.looked_at.as_ref().map(|mix| nutrients(mix, locale())))}
            </Fold>
            {move || {
                hub.shown.with(|shown| {
                    shown.looked_at
                        .as_ref()
                        .map(|mix| {
                            mix.notices
                                .iter()
                                .map(|notice| view! { <p class="note">{wording::mix_notice(language::catalogue(), notice)}</p> })
                                .collect_view()
                        })
                })
            }}
        </section>
    }
}

/// One figure: folded it shows value, word and bar; open, where it comes from.
#[component]
fn FigureRow(figure: Figure) -> impl IntoView {
    let hub = hub();
    let locale = move || hub.page.with(|page| page.locale());
    let folded = move || {
        let locale = locale();
        let text = move |value: f64| figure_text(figure, value, locale);
        hub.shown.with(|shown| {
            let mix = shown.looked_at.as_ref()?;
            let interval = interval_of(mix, figure);
            let (state, word) = state_of(mix, figure);
            let bar = interval
                .as_ref()
                .and_then(|interval| range_bar(figure, interval, &mix.target, BAR_WIDTH));
            let class = match state {
                FigureState::Good => "state state-good",
                FigureState::Low | FigureState::High => "state state-off",
                FigureState::Unknown => "state",
            };
            Some(view! {
                <span class="figure-value">
                    {interval.map_or_else(|| "–".to_owned(), |interval| text(interval.value))}
                </span>
                <span class=class>{word}</span>
                {bar.map(|picture| view! { <Drawn picture=picture class="bar"/> })}
            })
        })
    };
    view! {
        <Fold
            class="figure"
            summary=view! {
                <span class="figure-name">{wording::page::figure_name(figure)}</span>
                {folded}
            }
            .into_any()
        >
            <p>{wording::page::figure_meaning(figure)}</p>
            {move || hub.shown.with(|shown| shown.looked_at.as_ref().map(|mix| opened(mix, figure, locale())))}
        </Fold>
    }
}

fn opened(mix: &MixAnswer, figure: Figure, locale: Locale) -> impl IntoView + use<> {
    let range = interval_of(mix, figure).map(|interval| {
        let text = wording::interval_text(&interval, |value| figure_text(figure, value, locale));
        view! { <p>"In 8 of 10 cases: " <strong>{text}</strong> "."</p> }
    });
    let scale = (figure == Figure::CarbonToNitrogen).then(|| {
        let measured = mix.mixture.carbon_to_nitrogen_measured.map(|ratio| {
            format!(
                " On measured carbon this mixture has {}.",
                wording::ratio_text(ratio.value)
            )
        });
        view! { <p class="hint">{wording::CARBON_SCALE}{measured}</p> }
    });
    let lines = figure_lines(mix, figure);
    let mut keys: Vec<String> = lines
        .iter()
        .flat_map(|line| line.source_keys.iter().cloned())
        .collect();
    keys.sort();
    keys.dedup();
    let rows = lines
        .into_iter()
        .map(|line| {
            let own = line
                .own
                .map_or_else(|| "–".to_owned(), |own| own_text(figure, &own));
            view! {
                <tr>
                    <th scope="row">{line.name}</th>
                    <td>{own}</td>
                    <td>{wording::percent_text(line.weight)}</td>
                </tr>
            }
        })
        .collect_view();
    let name = wording::page::figure_name(figure);
    view! {
        {range}
        {scale}
        <div class="scroll" tabindex="0" role="region" aria-label=format!("{name}, part by part")>
            <table>
                <thead>
                    <tr>
                        <th scope="col">"Part"</th>
                        <th scope="col">{wording::page::figure_own_name(figure)}</th>
                        <th scope="col">{wording::page::figure_weight_name(figure)}</th>
                    </tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
        </div>
        {sources(&keys, name)}
    }
}

fn sources(keys: &[String], name: &str) -> Option<impl IntoView + use<>> {
    let catalogue = language::catalogue();
    let items: Vec<_> = keys
        .iter()
        .filter_map(|key| catalogue.source(key))
        .map(|source| {
            view! {
                <li><span class="source-key">{source.key.clone()}</span>" "{source.citation.clone()}" "{source.address.clone()}</li>
            }
        })
        .collect();
    (!items.is_empty()).then(|| {
        view! {
            <details class="sources">
                <summary>{format!("{}, {name}", wording::page::SOURCES)}</summary>
                <ul>{items}</ul>
            </details>
        }
    })
}

fn interval_of(mix: &MixAnswer, figure: Figure) -> Option<Interval> {
    let mixture = &mix.mixture;
    match figure {
        Figure::CarbonToNitrogen => mixture.carbon_to_nitrogen,
        Figure::Moisture => Some(mixture.moisture_wet_basis),
        Figure::FreeAirSpace => mixture.free_air_space,
        Figure::Mass => Some(mixture.wet_mass_kg),
        Figure::Volume => mixture.volume_m3,
    }
}

fn state_of(mix: &MixAnswer, figure: Figure) -> (FigureState, &'static str) {
    match figure {
        Figure::CarbonToNitrogen => wording::ratio_state(&mix.mixture, &mix.target),
        Figure::Moisture => wording::moisture_state(&mix.mixture, &mix.target),
        Figure::FreeAirSpace => wording::air_state(&mix.mixture, &mix.target),
        Figure::Mass | Figure::Volume => (FigureState::Unknown, ""),
    }
}

fn figure_text(figure: Figure, value: f64, locale: Locale) -> String {
    match figure {
        Figure::CarbonToNitrogen => wording::ratio_text(value),
        Figure::Moisture | Figure::FreeAirSpace => wording::percent_text(value),
        Figure::Mass => mass_text(value, locale),
        Figure::Volume => volume_text(value, locale),
    }
}

fn own_text(figure: Figure, own: &Range) -> String {
    let text = |value: f64| match figure {
        Figure::CarbonToNitrogen => wording::ratio_text(value),
        Figure::Moisture => wording::percent_text(value),
        Figure::FreeAirSpace | Figure::Mass | Figure::Volume => significant(value, 3),
    };
    if own.is_exact() {
        text(own.typical)
    } else {
        format!(
            "{} ({} to {})",
            text(own.typical),
            text(own.low),
            text(own.high)
        )
    }
}

/// What is in it for the beds, as far as it is known.
fn nutrients(mix: &MixAnswer, locale: Locale) -> impl IntoView + use<> {
    let mixture = &mix.mixture;
    let row = |name: &'static str, mass: Option<Interval>, known: f64| {
        let text = mass.map_or_else(
            || "not known".to_owned(),
            |mass| {
                format!(
                    "{} ({})",
                    mass_text(mass.value, locale),
                    wording::interval_text(&mass, |value| mass_text(value, locale))
                )
            },
        );
        let known = if known >= 0.995 {
            String::new()
        } else {
            format!("known for {}", wording::percent_text(known))
        };
        view! {
            <tr>
                <th scope="row">{name}</th>
                <td>{text}</td>
                <td>{known}</td>
            </tr>
        }
    };
    let of = |name, nutrient: &heapwright_answers::Nutrient| {
        row(name, nutrient.mass_kg, nutrient.known_share_of_dry_matter)
    };
    view! {
        <p>"Mass of each element in the mixture; some of it is lost while it rots."</p>
        <div class="scroll" tabindex="0" role="region" aria-label="Nutrients">
            <table>
                <tbody>
                    {row("Nitrogen", Some(mixture.nitrogen_kg), 1.0)}
                    {of("Phosphorus", &mixture.phosphorus)}
                    {of("Potassium", &mixture.potassium)}
                    {of("Calcium", &mixture.calcium)}
                    {of("Magnesium", &mixture.magnesium)}
                    {of("Sodium", &mixture.sodium)}
                </tbody>
            </table>
        </div>
    }
}
