//! The plan on paper: a table to take outside, with room to tick off what is done.

use heapwright_answers::BedsAnswer;
use heapwright_garden::Garden;
use heapwright_journal::Moment;
use heapwright_paper::{Book, beds_page};
use heapwright_texts::Locale;
use heapwright_texts::messages::beds_place as texts;
use heapwright_wording::{self as wording, beds_on_the_page as words};
use leptos::prelude::*;

use crate::language;
use crate::shell::Hub;

use super::plan::{all_sources, fillings, left_line, limit_line, source_list};

/// The plan as a document, as text for the module that sets type; empty when it cannot be written.
pub fn document(
    hub: Hub,
    garden: &Garden,
    answer: &BedsAnswer,
    locale: Locale,
    now: Moment,
) -> String {
    let document = hub.keeper.peek(|journal| {
        let book = Book {
            catalogue: language::catalogue(),
            garden,
            state: &journal.state,
            now,
            locale,
        };
        beds_page(&book, answer)
    });
    serde_json::to_string(&document).unwrap_or_default()
}

/// The sheet; it is seen in print only.
pub fn sheet(garden: &Garden, answer: &BedsAnswer, locale: Locale, now: Moment) -> AnyView {
    let rows = answer
        .beds
        .iter()
        .map(|bed| {
            let share = &bed.share;
            let some = |text: String| {
                if share.depth_m > 0.0 {
                    text
                } else {
                    "\u{2013}".to_owned()
                }
            };
            let weight_kg = share.brought_per_m2.wet_mass.value * bed.asked.area_m2;
            let of = |measure| some(fillings(garden, measure, share.volume_m3, locale));
            view! {
                <tr>
                    <th scope="row">{bed.asked.name.clone()}</th>
                    <td>{of("barrow")}</td>
                    <td>{of("bucket")}</td>
                    <td>{some(wording::depth_text(share.depth_m, locale))}</td>
                    <td>{some(locale.volume(share.volume_m3))}</td>
                    <td>{some(locale.mass(weight_kg))}</td>
                    <td>"\u{2610}"</td>
                </tr>
            }
        })
        .collect_view();
    let line = |text: String| view! { <li>{text}</li> };
    let sources = all_sources(answer);
    let limits = answer
        .beds
        .iter()
        .map(|bed| line(limit_line(bed, &sources, locale)))
        .collect_view();
    let notices = answer
        .notices
        .iter()
        .filter(|notice| !matches!(notice, heapwright_answers::BedsNotice::Left { .. }))
        .map(|notice| line(words::page_beds_notice(notice, locale)))
        .collect_view();
    let day = &wording::day_text(now, locale);
    let title = texts::PaperTitle { day }.said(locale);
    view! {
        <div class="paper">
            <p class="paper-title">{title}</p>
            <p>{wording::beds_summary(answer, locale)}" "{left_line(answer, locale)}</p>
            <table>
                <thead>
                    <tr>
                        <th scope="col">{texts::head_bed(locale)}</th>
                        <th scope="col">{texts::head_barrows(locale)}</th>
                        <th scope="col">{texts::head_buckets(locale)}</th>
                        <th scope="col">{texts::head_depth(locale)}</th>
                        <th scope="col">{texts::head_amount(locale)}</th>
                        <th scope="col">{texts::head_weight(locale)}</th>
                        <th scope="col">{texts::head_done(locale)}</th>
                    </tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
            <ul>{limits}</ul>
            <ul>{notices}</ul>
            <p>{wording::beds_limits(language::locale())}</p>
            {(!sources.is_empty()).then(|| source_list(&sources))}
        </div>
    }
    .into_any()
}
