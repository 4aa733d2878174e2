//! The record of a season: what went in, what the probe showed, what came out.

use heapwright_answers::{
    DiversionQuestion, HygieneQuestion, LedgerQuestion, ReadyQuestion, SeasonHeap, SeasonMonth,
    hygiene_of_heap, is_it_ready, season, what_was_kept_out, where_nutrients_are,
};
use heapwright_drawings as drawings;
use heapwright_journal::Moment;
use heapwright_quantity::UnitSystem;
use heapwright_texts::Locale;
use heapwright_wording::{self as wording, paper as words};

use crate::book::{Book, headed};
use crate::document::{Block, Column, Document, Figure, Row, Side, Table};
use crate::drawing::{Drawing, POINTS_OF_PIXEL};

/// Size of a chart [pt].
const CHART: (f64, f64) = (490.0, 150.0);
/// Fewer readings need no chart.
const LEAST_READINGS: usize = 3;
/// Materials of a month that are named; the rest is in the sum.
const MOST_NAMES: usize = 6;
/// From here on a heap counts as hot [degC].
/// Source: `EPA503-B`
const HOT_C: f64 = 55.0;

/// Makes the record from `from` to `to`.
#[must_use]
pub fn season_page(book: &Book<'_>, from: Moment, to: Moment) -> Document {
    let Book {
        catalogue,
        garden,
        state,
        now,
        locale,
    } = *book;
    let heaps = season(catalogue, garden, state, from, to);
    let mut blocks = Vec::new();
    if heaps.is_empty() {
        blocks.push(Block::Paragraph(words::season_empty(locale).to_owned()));
    }
    let kept = what_was_kept_out(
        catalogue,
        garden,
        state,
        &DiversionQuestion {
            from: Some(from),
            to: Some(to),
            now,
        },
    );
    if !kept.months.is_empty() {
        blocks.push(Block::Heading(words::season_months(locale).to_owned()));
        blocks.extend(headed(wording::month_rows(&kept, locale)));
        let lines = wording::diversion_lines(&kept, locale);
        blocks.extend(lines.into_iter().map(Block::Paragraph));
    }
    for heap in &heaps {
        heap_blocks(book, heap, (from, to), &mut blocks);
    }
    let title = words::season_title(locale).to_owned();
    book.document(title, &words::season_under(from, to, locale), blocks)
}

fn heap_blocks(
    book: &Book<'_>,
    heap: &SeasonHeap,
    (from, to): (Moment, Moment),
    blocks: &mut Vec<Block>,
) {
    let Book {
        catalogue,
        garden,
        state,
        locale,
        ..
    } = *book;
    let name = wording::heap_name(state, heap.heap, locale);
    blocks.push(Block::Heading(name.to_owned()));
    if !heap.months.is_empty() {
        blocks.push(went_in(&heap.months, locale));
    }
    if heap.core_c.is_empty() {
        blocks.push(Block::Paragraph(words::no_core(locale).to_owned()));
    } else if heap.core_c.len() < LEAST_READINGS {
        let lines = heap.core_c.iter();
        let lines = lines.map(|(at, value)| words::reading_line(*at, *value, locale));
        blocks.push(Block::List(lines.collect()));
    } else {
        blocks.push(chart(name, heap, (from, to), locale));
    }
    blocks.push(Block::Paragraph(words::turned_line(&heap.turned, locale)));
    // What came later is not of this time.
    let question = HygieneQuestion::default();
    if let Ok(answer) = hygiene_of_heap(state, heap.heap, to, &question) {
        blocks.push(Block::Lead(words::heat_measured(locale).to_owned()));
        blocks.push(Block::Paragraph(wording::hygiene_headline(&answer, locale)));
        blocks.push(Block::List(wording::hygiene_lines(&answer, locale)));
        blocks.push(Block::Small(wording::hygiene_limits(locale).to_owned()));
    }
    if !heap.harvested.is_empty() {
        blocks.push(Block::Lead(words::harvests(locale).to_owned()));
        blocks.push(harvests(book, heap));
    }
    let question = ReadyQuestion {
        heap: heap.heap,
        now: to,
        simulate: false,
    };
    if let Ok(answer) = is_it_ready(catalogue, garden, state, &question)
        && !answer.signs.is_empty()
    {
        blocks.push(Block::Lead(words::ripeness(locale).to_owned()));
        let lines = wording::verdict_sentences(&answer, locale);
        blocks.extend(lines.into_iter().map(Block::Paragraph));
    }
    let question = LedgerQuestion {
        heap: heap.heap,
        now: to,
        simulate: false,
    };
    if let Ok(answer) = where_nutrients_are(catalogue, garden, state, &question) {
        blocks.push(Block::Lead(words::nutrients(locale).to_owned()));
        blocks.extend(headed(wording::account_rows(&answer, false, locale)));
        let lines = wording::ledger_lines(&answer, locale);
        blocks.extend(lines.into_iter().map(Block::Small));
    }
}

fn went_in(months: &[SeasonMonth], locale: Locale) -> Block {
    let rows = months.iter().map(|month| {
        let mut parts: Vec<&(String, f64)> = month.parts.iter().collect();
        parts.sort_by(|one, other| other.1.total_cmp(&one.1));
        let named = parts.iter().take(MOST_NAMES);
        let names = words::went_in(
            named.map(|(name, mass_kg)| (name.as_str(), *mass_kg)),
            parts.len() > MOST_NAMES,
            locale,
        );
        let water = if month.water_l > 0.0 {
            wording::water_text(month.water_l, locale)
        } else {
            String::new()
        };
        let whole = month.wet_kg();
        Row::of([
            words::month_name(month.month, locale),
            if month.feeds == 0 {
                "\u{2013}".to_owned()
            } else {
                month.feeds.to_string()
            },
            names,
            if whole > 0.0 {
                locale.mass(whole)
            } else {
                String::new()
            },
            water,
        ])
    });
    let [month, feeds, what, together, water] = words::went_in_heads(locale);
    Block::Table(Table {
        columns: vec![
            Column::fit(month, Side::Start),
            Column::fit(feeds, Side::End),
            Column::share(what, 2.0),
            Column::fit(together, Side::End),
            Column::fit(water, Side::End),
        ],
        rows: rows.collect(),
        fills: false,
    })
}

fn harvests(book: &Book<'_>, heap: &SeasonHeap) -> Block {
    let locale = book.locale;
    let rows = heap.harvested.iter().map(|(at, harvested)| {
        let amount = harvested.amount.as_ref().map_or_else(
            || words::share_taken(harvested.share_pct, locale),
            |amount| wording::amount_text(book.catalogue, &amount.amount(), locale),
        );
        Row::of([
            wording::day_text(*at, locale),
            amount,
            words::sieved(harvested.sieve_mm, locale),
        ])
    });
    Block::Table(Table {
        columns: words::harvest_heads(locale)
            .map(|head| Column::fit(head, Side::Start))
            .to_vec(),
        rows: rows.collect(),
        fills: false,
    })
}

/// Local time in milliseconds, for the calendar.
fn local_ms(moment: Moment) -> f64 {
    #[allow(clippy::cast_precision_loss)] // a chart does not show milliseconds
    let ms = moment.instant_ms as f64;
    ms + f64::from(moment.offset_min) * 60_000.0
}

fn chart(name: &str, heap: &SeasonHeap, (from, to): (Moment, Moment), locale: Locale) -> Block {
    let shown = |celsius: f64| match locale.units {
        UnitSystem::Metric => celsius,
        UnitSystem::UsCustomary => celsius * 1.8 + 32.0,
    };
    let season = drawings::Season {
        from_ms: local_ms(from),
        to_ms: local_ms(to),
        months: months_of(from, to, locale),
        readings: heap
            .core_c
            .iter()
            .map(|(at, value)| (local_ms(*at), shown(*value)))
            .collect(),
        turned: heap.turned.iter().map(|at| local_ms(*at)).collect(),
        mark: Some((shown(HOT_C), locale.temperature(HOT_C))),
        unit: words::unit_of(locale).to_owned(),
    };
    let picture = drawings::season(
        &season,
        CHART.0 / POINTS_OF_PIXEL,
        CHART.1 / POINTS_OF_PIXEL,
    );
    Block::Figure(Figure {
        drawing: Drawing::of(&picture),
        told: words::chart_told(&heap.core_c, heap.turned.len(), locale),
        caption: words::chart_caption(name, locale),
    })
}

/// The months of a time: when each begins and its name; the first begins with the time itself.
fn months_of(from: Moment, to: Moment, locale: Locale) -> Vec<(f64, String)> {
    /// A chart of more months than this has no room for their names.
    const MOST: usize = 36;
    let mut all = vec![(
        local_ms(from),
        words::month_short(from.local().month(), locale),
    )];
    let mut day = from.local().date().first_of_month();
    while all.len() < MOST {
        let Ok(next) = day.checked_add(jiff::Span::new().months(1)) else {
            break;
        };
        day = next;
        let begins = Moment::from_local(day.at(0, 0, 0, 0), from.offset_min);
        match begins {
            Some(begins) if begins.instant_ms < to.instant_ms => {
                all.push((local_ms(begins), words::month_short(day.month(), locale)));
            }
            _ => break,
        }
    }
    all
}
