//! The mix map, with its sentence and its table.

use heapwright_answers::{MapPoint, OnTheMap};
use heapwright_drawings::{MapWords, Picture, mix_map_in};
use heapwright_texts::Locale;
use heapwright_texts::messages::balance_explained as texts;
use heapwright_wording as wording;
use leptos::prelude::*;

use crate::asking;
use crate::language;
use crate::parts::fold::Fold;
use crate::parts::picture::{Drawn, width_px};
use crate::shell::hub;

/// The widest map [px], and the height of one of a width of 1.
const WIDEST: f64 = 560.0;
const HEIGHT: f64 = 0.94;

/// The section.
#[component]
pub fn MixMap() -> impl IntoView {
    let hub = hub();
    let locale = language::locale();
    let map = Memo::new(move |_| hub.explained.with(asking::mapped));
    view! {
        <section class="card map" aria-labelledby="map-title" hidden=move || map.with(Option::is_none)>
            <h2 id="map-title">{wording::page::map(language::locale())}</h2>
            {move || {
                map.get().map(|map| {
                    let width = width_px().min(WIDEST);
                    let picture = drawn(&map, width, locale);
                    view! {
                        <figure aria-labelledby="map-title">
                            <Drawn picture=picture class="map-picture"/>
                            <figcaption>
                                <p>{wording::page::map_summary(&map, locale)}</p>
                                <ul class="map-key">
                                    <li><span class="key key-region" aria-hidden="true"></span>{texts::good_region(locale)}</li>
                                    <li><span class="key key-here" aria-hidden="true"></span>{texts::the_mixture(locale)}</li>
                                    <li><span class="key key-cloud" aria-hidden="true"></span>{texts::where_it_may_be(locale)}</li>
                                    <li><span class="key key-around" aria-hidden="true"></span>{wording::pictures_read::nine_of_ten_draws(locale)}</li>
                                    <li><span class="key key-hand" aria-hidden="true"></span>{texts::in_hand_alone(locale)}</li>
                                    <li><span class="key key-move" aria-hidden="true"></span>{texts::one_more_scoop(locale)}</li>
                                </ul>
                            </figcaption>
                        </figure>
                    }
                })
            }}
            <Fold class="map-table" summary=view! { {wording::page::map_table(language::locale())} }.into_any()>
                {move || map.with(|map| map.as_ref().map(table))}
            </Fold>
        </section>
    }
}

fn table(map: &OnTheMap) -> impl IntoView + use<> {
    let locale = language::locale();
    let row = |name: String, point: &MapPoint| {
        view! {
            <tr>
                <th scope="row">{name}</th>
                <td>{wording::ratio_text(point.carbon_to_nitrogen, locale)}</td>
                <td>{wording::percent_text(point.moisture_wet_basis, locale)}</td>
            </tr>
        }
    };
    let hand = map
        .in_hand
        .as_ref()
        .map(|point| row(texts::row_in_hand_alone(locale).to_owned(), point));
    let mixture = map
        .mixture
        .as_ref()
        .map(|point| row(texts::row_mixture(locale).to_owned(), point));
    let moves = map
        .moves
        .iter()
        .zip(1_u32..)
        .map(|(one, number)| {
            let scoop = wording::amount_of(language::catalogue(), &one.scoop, locale);
            let more = texts::RowWithMore {
                number: f64::from(number),
                scoop: &scoop,
            };
            row(more.said(locale), &one.to)
        })
        .collect_view();
    view! {
        <div class="scroll" tabindex="0" role="region" aria-label=wording::page::map_table(language::locale())>
            <table>
                <thead>
                    <tr>
                        <th scope="col">{texts::head_what(locale)}</th>
                        <th scope="col">{texts::head_ratio(locale)}</th>
                        <th scope="col">{texts::head_moisture(locale)}</th>
                    </tr>
                </thead>
                <tbody>{hand}{mixture}{moves}</tbody>
            </table>
            <p class="hint">{texts::cloud(locale)}</p>
        </div>
    }
}

fn drawn(map: &OnTheMap, width: f64, locale: Locale) -> Picture {
    let [moisture, green, brown, wet, dry, nine_of_ten] = wording::pictures_read::map_words(locale);
    let words = MapWords {
        moisture,
        green,
        brown,
        wet,
        dry,
        nine_of_ten,
    };
    mix_map_in(map, width, (width * HEIGHT).min(440.0), &words)
}
