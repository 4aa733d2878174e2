//! The plan: which bed gets how much, what stops it from getting more, and what is left over.

use heapwright_answers::spreading::Maturity;
use heapwright_answers::{BedAnswer, BedsAnswer, BedsNotice};
use heapwright_catalogue::Catalogue;
use heapwright_garden::Garden;
use heapwright_journal::EventId;
use heapwright_quantity::{Amount, Unit};
use heapwright_texts::Locale;
use heapwright_texts::messages::beds_place as texts;
use heapwright_wording::{self as wording, beds_on_the_page as words, paper as paper_words};
use leptos::prelude::*;

use super::ask::{Asked, BedChosen, answered};
use super::{paper, spread::heap_options};
use crate::asking;
use crate::keeping::device;
use crate::language;
use crate::parts::amount_said::AmountTyped;
use crate::parts::form;
use crate::parts::live::{button, live, live_if, live_text};
use crate::parts::marked::{name_and_said, words_of};
use crate::parts::press::{Wanted, press_button};
use crate::shell::Hub;

/// The section.
pub fn section(hub: Hub) -> AnyView {
    let amount = AmountTyped::empty(hub);
    let asked = RwSignal::new(None::<Asked>);
    let fault = RwSignal::new(None::<String>);
    let beds = Memo::new(move |_| super::named(hub));
    let heaps = Memo::new(move |_| {
        hub.keeper.with(|journal| {
            let heaps = journal.state.heaps();
            heaps
                .map(|heap| (heap.id, heap.now().stage))
                .collect::<Vec<_>>()
        })
    });
    let ask = move || match read(amount, &beds.get_untracked()) {
        Ok(read) => {
            fault.set(None);
            asked.set(Some(read));
        }
        Err(why) => {
            fault.set(Some(why));
            asked.set(None);
        }
    };
    let result = move || {
        asked
            .with(Option::is_some)
            .then(|| {
                let page = hub.page.get();
                hub.keeper.with(|journal| {
                    let now = device::now();
                    let garden = asking::garden_now(&page, &journal.state, now);
                    asked.with(|asked| {
                        let asked = asked.as_ref()?;
                        Some(match answered(asked, &garden, &journal.state, now) {
                            Ok(answer) => told(hub, &garden, &answer, page.locale(), now),
                            Err(why) => {
                                view! { <p class="fault" role="alert">{why}</p> }.into_any()
                            }
                        })
                    })
                })
            })
            .flatten()
    };
    let locale = language::locale();
    let yes_or_no = || vec![texts::yes(locale), texts::no(locale)];
    view! {
        <section class="card plan" aria-labelledby="plan-title">
            <h2 id="plan-title">{texts::share_compost(locale)}</h2>
            <div class="field">
                <label for="plan-heap">{texts::compost_of(locale)}</label>
                <select id="plan-heap">
                    <option value="">{texts::somewhere_else(locale)}</option>
                    {live(move || { heaps.track(); heap_options(hub) })}
                </select>
            </div>
            <p class="hint">{texts::how_much_there_is(locale)}</p>
            {amount.row("plan-amount", texts::amount_to_share(locale))}
            <details class="more">
                <summary>{texts::about_the_compost(locale)}</summary>
                <div class="fields">
                    {form::select("plan-maturity", texts::is_mature(locale), Some(texts::as_tests_say(locale)), yes_or_no())}
                    {form::select("plan-raw", texts::went_raw_in(locale), Some(texts::as_journal_says(locale)), yes_or_no())}
                    {form::select("plan-off", texts::dog_or_cat_went_in(locale), Some(texts::as_journal_says(locale)), vec![texts::yes(locale)])}
                </div>
            </details>
            {live(move || bed_ticks(&beds.get()))}
            {button("main-act plan-act", texts::plan(locale), ask)}
            <p class="fault" role="alert">{live_text(move || fault.get().unwrap_or_default())}</p>
            {live_if(result)}
        </section>
    }
    .into_any()
}

/// The beds to tick, each with what is soon to happen there.
fn bed_ticks(beds: &[(EventId, String)]) -> AnyView {
    let locale = language::locale();
    let rows = beds
        .iter()
        .enumerate()
        .map(|(index, (_, name))| {
            let (sow, harvest) = (format!("plan-sow-{index}"), format!("plan-harvest-{index}"));
            let soon_there = words_of(texts::soon_there(locale), name);
            view! {
                <li class="line">
                    <label class="tick">
                        <input type="checkbox" name="plan-bed" value=index.to_string() checked/>
                        <span class="line-name">{name.clone()}</span>
                    </label>
                    <details class="more">
                        <summary>{soon_there}</summary>
                        <div class="fields">
                            <label class="tick">
                                <input type="checkbox" name=sow value="0"/>
                                <span>{texts::sown_now(locale)}</span>
                            </label>
                            <div class="field">
                                <label for=harvest.clone()>{texts::harvest_in_days(locale)}</label>
                                <input id=harvest type="text" inputmode="numeric" autocomplete="off"/>
                            </div>
                        </div>
                    </details>
                </li>
            }
        })
        .collect_view();
    view! {
        <fieldset class="plan-beds">
            <legend>{texts::which_beds(locale)}</legend>
            <ul class="lines">{rows}</ul>
        </fieldset>
    }
    .into_any()
}

/// What the form says; the error is a sentence.
fn read(amount: AmountTyped, beds: &[(EventId, String)]) -> Result<Asked, String> {
    let ticked = device::ticked("plan-bed");
    let beds = beds
        .iter()
        .enumerate()
        .filter(|(index, _)| ticked.contains(index))
        .map(|(index, (id, _))| {
            let days = form::number(&format!("plan-harvest-{index}"))?;
            if days.is_some_and(|days| !(0.0..=3660.0).contains(&days)) {
                return Err(words::no_days(language::locale()).to_owned());
            }
            Ok(BedChosen {
                id: *id,
                sown_soon: !device::ticked(&format!("plan-sow-{index}")).is_empty(),
                harvest_in_days: days,
            })
        })
        .collect::<Result<Vec<_>, String>>()?;
    if beds.is_empty() {
        return Err(words::no_bed_ticked(language::locale()).to_owned());
    }
    let amount = if amount.is_empty() {
        None
    } else {
        Some(amount.said()?)
    };
    // Index of the choice "yes" or "no".
    let yes = |id: &str| match device::value(id).as_str() {
        "0" => Some(true),
        "1" => Some(false),
        _ => None,
    };
    Ok(Asked {
        heap: device::value("plan-heap").parse().ok(),
        amount,
        maturity: yes("plan-maturity").map(|mature| {
            if mature {
                Maturity::Mature
            } else {
                Maturity::Immature
            }
        }),
        held_raw: yes("plan-raw"),
        never_on_food_beds: yes("plan-off") == Some(true),
        beds,
    })
}

fn told(
    hub: Hub,
    garden: &Garden,
    answer: &BedsAnswer,
    locale: Locale,
    now: heapwright_journal::Moment,
) -> AnyView {
    let sources = all_sources(answer);
    let document = paper::document(hub, garden, answer, locale, now);
    let pdf = press_button(hub, paper_words::press_beds(locale), move || {
        Some(Wanted {
            name: format!("{} {}", paper_words::beds_title(locale), now.local().date()),
            question: String::new(),
            document: document.clone(),
        })
    });
    let rows = answer
        .beds
        .iter()
        .map(|bed| bed_row(garden, bed, &sources, locale))
        .collect_view();
    // What is left over stands in the line above.
    let notices = answer
        .notices
        .iter()
        .filter(|notice| !matches!(notice, BedsNotice::Left { .. }))
        .map(|notice| view! { <li>{words::page_beds_notice(notice, locale)}</li> })
        .collect_view();
    view! {
        <div class="plan-told" role="group" aria-labelledby="plan-told-title">
            <h3 id="plan-told-title" class="answer-line">{wording::beds_summary(answer, locale)}</h3>
            <p class="plan-left">{left_line(answer, locale)}</p>
            <ul class="lines">{rows}</ul>
            <ul class="told-lines">{notices}</ul>
            <p class="hint">{wording::beds_limits(language::locale())}</p>
            {(!sources.is_empty()).then(|| view! {
                <h4 class="plan-sources-title">{wording::page::sources(language::locale())}</h4>
                {source_list(&sources)}
            })}
            {button("plan-print", texts::print_plan(locale), || {
                // A browser that cannot print has told so itself.
                let _ = window().print();
            })}
            {pdf}
            {paper::sheet(garden, answer, locale, now)}
        </div>
    }
    .into_any()
}

/// What is left over, also when nothing is.
pub fn left_line(answer: &BedsAnswer, locale: Locale) -> String {
    answer
        .notices
        .iter()
        .find(|notice| matches!(notice, BedsNotice::Left { .. }))
        .map_or_else(
            || texts::nothing_left_over(locale).to_owned(),
            |notice| words::page_beds_notice(notice, locale),
        )
}

/// What stands behind the limits, each once, in the order in which the beds name it.
pub fn all_sources(answer: &BedsAnswer) -> Vec<String> {
    let mut all: Vec<String> = Vec::new();
    for bed in &answer.beds {
        for key in bed.binding_source_keys(language::spreading()) {
            if !all.contains(&key) {
                all.push(key);
            }
        }
    }
    all
}

/// The list of them, numbered as the beds name them.
pub fn source_list(sources: &[String]) -> AnyView {
    let catalogue = language::catalogue();
    let items = sources
        .iter()
        .map(|key| {
            let citation = catalogue
                .source(key)
                .map_or_else(|| key.clone(), |source| source.citation.clone());
            view! { <li>{citation}</li> }
        })
        .collect_view();
    view! { <ol class="plan-sources">{items}</ol> }.into_any()
}

/// What stops a bed, with the numbers of its sources.
pub fn limit_line(bed: &BedAnswer, sources: &[String], locale: Locale) -> String {
    let keys = bed.binding_source_keys(language::spreading());
    let numbers: Vec<String> = (1..)
        .zip(sources)
        .filter(|(_, key)| keys.contains(key))
        .map(|(number, _): (usize, _)| number.to_string())
        .collect();
    let line = words::page_binding_line(bed, locale);
    if numbers.is_empty() {
        return line;
    }
    texts::LimitWithSources {
        count: f64::from(u32::try_from(numbers.len()).unwrap_or(u32::MAX)),
        line: &line,
        numbers: &numbers.join(", "),
    }
    .said(locale)
}

/// Less than this part of a barrow is told in buckets alone.
const LEAST_BARROW: f64 = 0.25;

fn bed_row(garden: &Garden, bed: &BedAnswer, sources: &[String], locale: Locale) -> AnyView {
    let share = &bed.share;
    let of = |measure| fillings(garden, measure, share.volume_m3, locale);
    let barrow_m3 = garden
        .filling_m3(language::catalogue(), "barrow")
        .map_or(f64::INFINITY, |filling| filling.typical);
    let amount = if share.depth_m > 0.0 {
        let vessels = if share.volume_m3 < LEAST_BARROW * barrow_m3 {
            of("bucket")
        } else {
            texts::BarrowsOrBuckets {
                barrows: &of("barrow"),
                buckets: &of("bucket"),
            }
            .said(locale)
        };
        texts::ShareOfBed {
            vessels: &vessels,
            depth: &wording::depth_text(share.depth_m, locale),
            volume: &locale.volume(share.volume_m3),
        }
        .said(locale)
    } else {
        texts::share_none(locale).to_owned()
    };
    let stops_at = texts::StopsAt {
        limit: wording::binding_name(share.binding, locale),
    };
    view! {
        <li class="line plan-bed">
            <p>{name_and_said(&bed.asked.name, &amount)}</p>
            <p class="plan-limit">
                <span class="stage">{stops_at.said(locale)}</span>". "
                {limit_line(bed, sources, locale)}
            </p>
        </li>
    }
    .into_any()
}

/// So many of a measure of the garden: "2½ barrows"; a plain volume for one that is not known.
pub fn fillings(garden: &Garden, measure: &str, volume_m3: f64, locale: Locale) -> String {
    let catalogue = language::catalogue();
    garden.filling_m3(catalogue, measure).map_or_else(
        || locale.volume(volume_m3),
        |filling| {
            let amount = Amount {
                count: volume_m3 / filling.typical,
                unit: Unit::Measure(measure.to_owned()),
            };
            wording::amount_text(catalogue, &amount, locale)
        },
    )
}

/// The sources of keys, in a line.
pub fn citations(catalogue: &Catalogue, keys: &[String]) -> String {
    keys.iter()
        .filter_map(|key| catalogue.source(key))
        .map(|source| source.citation.as_str())
        .collect::<Vec<_>>()
        .join("; ")
}
