//! The record of a season: what went in, what the probe showed, what came out.

use heapwright_answers::{
    DiversionQuestion, HygieneQuestion, LedgerQuestion, ReadyQuestion, SeasonHeap, SeasonMonth,
    hygiene_of_heap, is_it_ready, season, what_was_kept_out, where_nutrients_are,
};
use heapwright_drawings as drawings;
use heapwright_journal::Moment;
use heapwright_quantity::{UnitSystem, mass_text};
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
        system,
    } = *book;
    let heaps = season(catalogue, garden, state, from, to);
    let mut blocks = Vec::new();
    if heaps.is_empty() {
        blocks.push(Block::Paragraph(words::SEASON_EMPTY.to_owned()));
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
        blocks.push(Block::Heading(words::SEASON_MONTHS.to_owned()));
        blocks.extend(headed(wording::month_rows(&kept, system)));
        let lines = wording::diversion_lines(&kept, system);
        blocks.extend(lines.into_iter().map(Block::Paragraph));
    }
    for heap in &heaps {
        heap_blocks(book, heap, (from, to), &mut blocks);
    }
    let title = words::SEASON_TITLE.to_owned();
    book.document(title, &words::season_under(from, to), blocks)
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
        system,
        ..
    } = *book;
    let name = wording::heap_name(state, heap.heap);
    blocks.push(Block::Heading(name.to_owned()));
    if !heap.months.is_empty() {
        blocks.push(went_in(&heap.months, system));
    }
    if heap.core_c.is_empty() {
        blocks.push(Block::Paragraph(words::NO_CORE.to_owned()));
    } else if heap.core_c.len() < LEAST_READINGS {
        let lines = heap.core_c.iter();
        let lines = lines.map(|(at, value)| words::reading_line(*at, *value, system));
        blocks.push(Block::List(lines.collect()));
    } else {
        blocks.push(chart(name, heap, (from, to), system));
    }
    blocks.push(Block::Paragraph(words::turned_line(&heap.turned)));
    // What came later is not of this time.
    let question = HygieneQuestion::default();
    if let Ok(answer) = hygiene_of_heap(state, heap.heap, to, &question) {
        blocks.push(Block::Lead(words::HEAT_MEASURED.to_owned()));
        blocks.push(Block::Paragraph(wording::hygiene_headline(&answer)));
        blocks.push(Block::List(wording::hygiene_lines(&answer, system)));
        blocks.push(Block::Small(wording::HYGIENE_LIMITS.to_owned()));
    }
    if !heap.harvested.is_empty() {
        blocks.push(Block::Lead(words::HARVESTS.to_owned()));
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
        blocks.push(Block::Lead(words::RIPENESS.to_owned()));
        let lines = wording::verdict_sentences(&answer);
        blocks.extend(lines.into_iter().map(Block::Paragraph));
    }
    let question = LedgerQuestion {
        heap: heap.heap,
        now: to,
        simulate: false,
    };
    if let Ok(answer) = where_nutrients_are(catalogue, garden, state, &question) {
        blocks.push(Block::Lead(words::NUTRIENTS.to_owned()));
        blocks.extend(headed(wording::account_rows(&answer, false)));
        let lines = wording::ledger_lines(&answer);
        blocks.extend(lines.into_iter().map(Block::Small));
    }
}

fn went_in(months: &[SeasonMonth], system: UnitSystem) -> Block {
    let rows = months.iter().map(|month| {
        let mut parts: Vec<&(String, f64)> = month.parts.iter().collect();
        parts.sort_by(|one, other| other.1.total_cmp(&one.1));
        let names: Vec<String> = parts
            .iter()
            .take(MOST_NAMES)
            .map(|(name, mass)| format!("{name} {}", mass_text(*mass, system)))
            .collect();
        let mut names = names.join(", ");
        if parts.len() > MOST_NAMES {
            names.push_str(" …");
        }
        let water = if month.water_l > 0.0 {
            heapwright_wording::water_text(month.water_l, system)
        } else {
            String::new()
        };
        let whole = month.wet_kg();
        Row::of([
            words::month_name(month.month),
            if month.feeds == 0 {
                "\u{2013}".to_owned()
            } else {
                month.feeds.to_string()
            },
            names,
            if whole > 0.0 {
                mass_text(whole, system)
            } else {
                String::new()
            },
            water,
        ])
    });
    let [month, feeds, what, together, water] = words::WENT_IN_HEADS;
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
    let rows = heap.harvested.iter().map(|(at, harvested)| {
        let amount = harvested.amount.as_ref().map_or_else(
            || words::share_taken(harvested.share_pct),
            |amount| wording::amount_text(book.catalogue, &amount.amount(), book.system),
        );
        Row::of([
            wording::day_text(*at),
            amount,
            words::sieved(harvested.sieve_mm),
        ])
    });
    Block::Table(Table {
        columns: words::HARVEST_HEADS
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

fn chart(name: &str, heap: &SeasonHeap, (from, to): (Moment, Moment), system: UnitSystem) -> Block {
    let shown = |celsius: f64| match system {
        UnitSystem::Metric => celsius,
        UnitSystem::UsCustomary => celsius * 1.8 + 32.0,
    };
    let season = drawings::Season {
        from_ms: local_ms(from),
        to_ms: local_ms(to),
        months: months_of(from, to),
        readings: heap
            .core_c
            .iter()
            .map(|(at, value)| (local_ms(*at), shown(*value)))
            .collect(),
        turned: heap.turned.iter().map(|at| local_ms(*at)).collect(),
        mark: Some((
            shown(HOT_C),
            heapwright_quantity::temperature_text(HOT_C, system),
        )),
        unit: words::unit_of(system).to_owned(),
    };
    let picture = drawings::season(
        &season,
        CHART.0 / POINTS_OF_PIXEL,
        CHART.1 / POINTS_OF_PIXEL,
    );
    Block::Figure(Figure {
        drawing: Drawing::of(&picture),
        told: words::chart_told(&heap.core_c, heap.turned.len(), system),
        caption: words::chart_caption(name),
    })
}

/// The months of a time: when each begins and its name; the first begins with the time itself.
fn months_of(from: Moment, to: Moment) -> Vec<(f64, String)> {
    /// A chart of more months than this has no room for their names.
    const MOST: usize = 36;
    let mut all = vec![(local_ms(from), words::month_short(from.local().month()))];
    let mut day = from.local().date().first_of_month();
    while all.len() < MOST {
        let Ok(next) = day.checked_add(jiff::Span::new().months(1)) else {
            break;
        };
        day = next;
        let begins = Moment::from_local(day.at(0, 0, 0, 0), from.offset_min);
        match begins {
            Some(begins) if begins.instant_ms < to.instant_ms => {
                all.push((local_ms(begins), words::month_short(day.month())));
            }
            _ => break,
        }
    }
    all
}
