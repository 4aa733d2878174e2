//! The figures of the mixture, each to be opened to its range and its sources.

use heapwright_answers::{Figure, MixAnswer, figure_lines};
use heapwright_drawings::range_bar;
use heapwright_quantity::{Interval, Range};
use heapwright_texts::Locale;
use heapwright_texts::messages::balance_explained as texts;
use heapwright_wording as wording;
use heapwright_wording::FigureState;
use leptos::prelude::*;

use super::GAP;
use crate::language;
use crate::parts::fold::Fold;
use crate::parts::picture::Drawn;
use crate::shell::hub;

const BAR_WIDTH: f64 = 150.0;

/// The section.
#[component]
pub fn Figures() -> impl IntoView {
    let hub = hub();
    let locale = move || hub.explained.with(|shown| shown.page.locale());
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
        <section class="card figures" aria-labelledby="figures-title" hidden=move || hub.explained.with(|shown| shown.looked_at.is_none())>
            <h2 id="figures-title">{wording::page::figures(language::locale())}</h2>
            {rows}
            <Fold
                class="figure"
                summary=view! {
                    <span class="figure-name">{texts::nutrients(language::locale())}</span>
                    <span class="figure-value">
                        {move || {
                            let locale = locale();
                            hub.explained
                                .with(|shown| {
                                    let mass = shown.looked_at.as_ref().map(|mix| mix.mixture.nitrogen_kg.value);
                                    mass.map(|mass| locale.mass(mass))
                                })
                        }}
                    </span>
                    <span class="state">{texts::of_nitrogen(language::locale())}</span>
                }
                .into_any()
            >
                {move || hub.explained.with(|shown| shown.looked_at.as_ref().map(|mix| nutrients(mix, locale())))}
            </Fold>
            {move || {
                hub.explained.with(|shown| {
                    shown.looked_at
                        .as_ref()
                        .map(|mix| {
                            mix.notices
                                .iter()
                                .map(|notice| view! { <p class="note">{wording::mix_notice(language::catalogue(), notice, locale())}</p> })
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
    let locale = move || hub.explained.with(|shown| shown.page.locale());
    let folded = move || {
        let locale = locale();
        let text = move |value: f64| figure_text(figure, value, locale);
        hub.explained.with(|shown| {
            let mix = shown.looked_at.as_ref()?;
            let interval = interval_of(mix, figure);
            let (state, word) = state_of(mix, figure, locale);
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
                <span class="figure-name">{wording::page::figure_name(figure, language::locale())}</span>
                {folded}
            }
            .into_any()
        >
            <p>{wording::page::figure_meaning(figure, language::locale())}</p>
            {move || hub.explained.with(|shown| shown.looked_at.as_ref().map(|mix| opened(mix, figure, locale())))}
        </Fold>
    }
}

fn opened(mix: &MixAnswer, figure: Figure, locale: Locale) -> impl IntoView + use<> {
    let range = interval_of(mix, figure).map(|interval| {
        let text = wording::interval_text(
            &interval,
            |value| figure_text(figure, value, locale),
            locale,
        );
        let told = texts::InEightOfTen { range: GAP }.said(locale);
        let (before, after) = told.split_once(GAP).unwrap_or_default();
        view! { <p>{before.to_owned()}<strong>{text}</strong>{after.to_owned()}</p> }
    });
    let scale = (figure == Figure::CarbonToNitrogen).then(|| {
        let measured = mix.mixture.carbon_to_nitrogen_measured.map(|ratio| {
            let told = texts::OnMeasuredCarbon {
                ratio: &wording::ratio_text(ratio.value, locale),
            };
            format!(" {}", told.said(locale))
        });
        view! { <p class="hint">{wording::carbon_scale(language::locale())}{measured}</p> }
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
                .map_or_else(|| "–".to_owned(), |own| own_text(figure, &own, locale));
            view! {
                <tr>
                    <th scope="row">{line.name}</th>
                    <td>{own}</td>
                    <td>{wording::percent_text(line.weight, locale)}</td>
                </tr>
            }
        })
        .collect_view();
    let name = wording::page::figure_name(figure, locale);
    view! {
        {range}
        {scale}
        <div class="scroll" tabindex="0" role="region" aria-label=texts::PartByPart { name }.said(locale)>
            <table>
                <thead>
                    <tr>
                        <th scope="col">{texts::part(locale)}</th>
                        <th scope="col">{wording::page::figure_own_name(figure, locale)}</th>
                        <th scope="col">{wording::page::figure_weight_name(figure, locale)}</th>
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
        let summary = texts::SourcesOf {
            sources: wording::page::sources(language::locale()),
            name,
        };
        view! {
            <details class="sources">
                <summary>{summary.said(language::locale())}</summary>
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

fn state_of(mix: &MixAnswer, figure: Figure, locale: Locale) -> (FigureState, &'static str) {
    match figure {
        Figure::CarbonToNitrogen => wording::ratio_state(&mix.mixture, &mix.target, locale),
        Figure::Moisture => wording::moisture_state(&mix.mixture, &mix.target, locale),
        Figure::FreeAirSpace => wording::air_state(&mix.mixture, &mix.target, locale),
        Figure::Mass | Figure::Volume => (FigureState::Unknown, ""),
    }
}

fn figure_text(figure: Figure, value: f64, locale: Locale) -> String {
    match figure {
        Figure::CarbonToNitrogen => wording::ratio_text(value, locale),
        Figure::Moisture | Figure::FreeAirSpace => wording::percent_text(value, locale),
        Figure::Mass => locale.mass(value),
        Figure::Volume => locale.volume(value),
    }
}

fn own_text(figure: Figure, own: &Range, locale: Locale) -> String {
    let text = |value: f64| match figure {
        Figure::CarbonToNitrogen => wording::ratio_text(value, locale),
        Figure::Moisture => wording::percent_text(value, locale),
        Figure::FreeAirSpace | Figure::Mass | Figure::Volume => locale.significant(value, 3),
    };
    if own.is_exact() {
        text(own.typical)
    } else {
        texts::TypicalAndRange {
            typical: &text(own.typical),
            low: &text(own.low),
            high: &text(own.high),
        }
        .said(locale)
    }
}

/// What is in it for the beds, as far as it is known.
fn nutrients(mix: &MixAnswer, locale: Locale) -> impl IntoView + use<> {
    let mixture = &mix.mixture;
    let row = |name: &'static str, mass: Option<Interval>, known: f64| {
        let text = mass.map_or_else(
            || texts::not_known(locale).to_owned(),
            |mass| {
                texts::MassAndRange {
                    mass: &locale.mass(mass.value),
                    range: &wording::interval_text(&mass, |value| locale.mass(value), locale),
                }
                .said(locale)
            },
        );
        let known = if known >= 0.995 {
            String::new()
        } else {
            texts::KnownFor {
                percent: &wording::percent_text(known, locale),
            }
            .said(locale)
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
        <p>{texts::nutrients_are(locale)}</p>
        <div class="scroll" tabindex="0" role="region" aria-label=texts::nutrients(locale)>
            <table>
                <tbody>
                    {row(texts::nitrogen(locale), Some(mixture.nitrogen_kg), 1.0)}
                    {of(texts::phosphorus(locale), &mixture.phosphorus)}
                    {of(texts::potassium(locale), &mixture.potassium)}
                    {of(texts::calcium(locale), &mixture.calcium)}
                    {of(texts::magnesium(locale), &mixture.magnesium)}
                    {of(texts::sodium(locale), &mixture.sodium)}
                </tbody>
            </table>
        </div>
    }
}
