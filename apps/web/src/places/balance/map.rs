//! The mix map, with its sentence and its table.

use heapwright_answers::{MapPoint, OnTheMap};
use heapwright_catalogue::Catalogue;
use heapwright_drawings::mix_map;
use heapwright_wording as wording;
use leptos::prelude::*;

use crate::asking;
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
    let map = Memo::new(move |_| hub.shown.with(asking::mapped));
    view! {
        <section class="card map" aria-labelledby="map-title" hidden=move || map.with(Option::is_none)>
            <h2 id="map-title">{wording::page::MAP}</h2>
            {move || {
                map.get().map(|map| {
                    let width = width_px().min(WIDEST);
                    let picture = mix_map(&map, width, (width * HEIGHT).min(440.0));
                    view! {
                        <figure aria-labelledby="map-title">
                            <Drawn picture=picture class="map-picture"/>
                            <figcaption>
                                <p>{wording::page::map_summary(&map)}</p>
                                <ul class="map-key">
                                    <li><span class="key key-region" aria-hidden="true"></span>"good region"</li>
                                    <li><span class="key key-here" aria-hidden="true"></span>"the mixture"</li>
                                    <li><span class="key key-cloud" aria-hidden="true"></span>"where it may be"</li>
                                    <li><span class="key key-around" aria-hidden="true"></span>{wording::pictures_read::NINE_OF_TEN_DRAWS}</li>
                                    <li><span class="key key-hand" aria-hidden="true"></span>"in hand alone"</li>
                                    <li><span class="key key-move" aria-hidden="true"></span>"one more scoop, by its number"</li>
                                </ul>
                            </figcaption>
                        </figure>
                    }
                })
            }}
            <Fold class="map-table" summary=view! { {wording::page::MAP_TABLE} }.into_any()>
                {move || map.with(|map| map.as_ref().map(table))}
            </Fold>
        </section>
    }
}

fn table(map: &OnTheMap) -> impl IntoView + use<> {
    let row = |name: String, point: &MapPoint| {
        view! {
            <tr>
                <th scope="row">{name}</th>
                <td>{wording::ratio_text(point.carbon_to_nitrogen)}</td>
                <td>{wording::percent_text(point.moisture_wet_basis)}</td>
            </tr>
        }
    };
    let hand = map
        .in_hand
        .as_ref()
        .map(|point| row("In hand alone".to_owned(), point));
    let mixture = map
        .mixture
        .as_ref()
        .map(|point| row("The mixture".to_owned(), point));
    let moves = map
        .moves
        .iter()
        .enumerate()
        .map(|(index, one)| {
            let scoop = wording::amount_of(
                Catalogue::built_in(),
                &one.scoop,
                heapwright_quantity::UnitSystem::Metric,
            );
            row(format!("{}: with {scoop} more", index + 1), &one.to)
        })
        .collect_view();
    view! {
        <div class="scroll" tabindex="0" role="region" aria-label=wording::page::MAP_TABLE>
            <table>
                <thead>
                    <tr>
                        <th scope="col">"What"</th>
                        <th scope="col">"C:N"</th>
                        <th scope="col">"Moisture"</th>
                    </tr>
                </thead>
                <tbody>{hand}{mixture}{moves}</tbody>
            </table>
            <p class="hint">"The cloud is 240 draws of what the mixture may be; the table gives its middle."</p>
        </div>
    }
}
