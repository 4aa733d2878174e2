//! The page that hangs beside a heap: what goes with each caddy, what comes next, how to read a
//! handful, and room to write.

use heapwright_answers::{PerCaddy, QuestionError, before_use, per_caddy, today};
use heapwright_drawings::{MapWords, mix_map_in};
use heapwright_journal::EventId;
use heapwright_wording::{self as wording, paper as words, today as today_words};

use crate::book::{Book, ticked};
use crate::document::{Block, Cell, Column, Document, Figure, Row, Side, Table, Width};
use crate::drawing::{Drawing, POINTS_OF_PIXEL};

/// Size of the map [pt].
const MAP: (f64, f64) = (205.0, 165.0);
/// Height of a row to write in by hand [mm].
const WRITING_MM: f64 = 8.5;
/// Dates that are told of at most; who hangs up a page does not plan further.
const MOST_DATES: usize = 6;

/// Makes the page of a heap.
///
/// # Errors
///
/// When what goes with the scraps cannot be worked out.
pub fn bin_page(book: &Book<'_>, heap: EventId) -> Result<Document, QuestionError> {
    let Book {
        catalogue,
        garden,
        state,
        now,
        locale,
    } = *book;
    let name = wording::heap_name(state, heap, locale);
    let caddy = per_caddy(catalogue, garden, state, heap, now)?;
    let [moisture, green, brown, wet, dry, nine_of_ten] = wording::pictures_read::map_words(locale);
    let picture = mix_map_in(
        &caddy.map,
        MAP.0 / POINTS_OF_PIXEL,
        MAP.1 / POINTS_OF_PIXEL,
        &MapWords {
            moisture,
            green,
            brown,
            wet,
            dry,
            nine_of_ten,
        },
    );
    let mut left = vec![
        Block::Heading(words::with_each_caddy(locale).to_owned()),
        caddies(book, &caddy),
    ];
    left.extend(
        words::caddy_lines(&caddy, locale)
            .into_iter()
            .map(Block::Small),
    );
    let help = caddy
        .rows
        .first()
        .and_then(|(_, answer)| answer.conflict.as_ref()?.help.first());
    left.extend(help.map(|help| Block::Small(wording::help_line(*help, locale).to_owned())));
    let right = vec![Block::Figure(Figure {
        drawing: Drawing::of(&picture),
        told: words::map_told(&caddy, locale),
        caption: words::map_caption(locale).to_owned(),
    })];
    let mut blocks = vec![Block::Beside {
        left,
        right,
        left_share: 0.55,
    }];
    let answer = today::today(catalogue, garden, state, now);
    let dates: Vec<_> = answer
        .dates
        .iter()
        .filter(|date| date.heap == Some(heap))
        .take(MOST_DATES)
        .collect();
    blocks.push(Block::Heading(words::next(locale).to_owned()));
    if dates.is_empty() {
        blocks.push(Block::Paragraph(words::nothing_next(locale).to_owned()));
    } else {
        let [day, what, done] = words::next_heads(locale);
        let rows = dates.iter().map(|date| {
            ticked([
                today_words::day_of(date.on.day(), locale),
                today_words::kind_headline(date.kind, name, locale),
            ])
        });
        blocks.push(Block::Table(Table {
            columns: vec![
                Column::fit(day, Side::Start),
                Column::share(what, 1.0),
                Column::fit(done, Side::Middle),
            ],
            rows: rows.collect(),
            fills: false,
        }));
        blocks.push(Block::Small(words::next_from(locale).to_owned()));
    }
    blocks.push(Block::Heading(words::squeeze(locale).to_owned()));
    let [feels, see, so] = words::squeeze_heads(locale);
    blocks.push(Block::Table(Table {
        columns: vec![
            Column::fit(feels, Side::Start),
            Column::share(see, 1.0),
            Column::share(so, 1.0),
        ],
        rows: words::squeeze_rows(locale)
            .iter()
            .map(|row| Row::of(row.map(str::to_owned)))
            .collect(),
        fills: false,
    }));
    blocks.push(Block::Heading(words::beware(locale).to_owned()));
    let mut cautions: Vec<String> = Vec::new();
    for caution in dates.iter().flat_map(|date| &date.cautions) {
        let line = today_words::caution_line(*caution, locale).to_owned();
        if !cautions.contains(&line) {
            cautions.push(line);
        }
    }
    cautions.extend(words::beware_always(locale).map(str::to_owned));
    blocks.extend(cautions.into_iter().map(Block::Caution));
    let contents = state.contents_since_harvest(heap);
    let asked = before_use(catalogue, garden, &contents);
    if !asked.is_empty() {
        blocks.push(Block::Heading(words::before_use(locale).to_owned()));
        blocks.push(Block::List(
            asked
                .iter()
                .map(|one| wording::before_use_line(one, locale))
                .collect(),
        ));
    }
    blocks.push(Block::Heading(words::to_write(locale).to_owned()));
    blocks.push(to_write(book));
    Ok(book.document(
        words::bin_title(name, locale),
        words::bin_under(locale),
        blocks,
    ))
}

fn caddies(book: &Book<'_>, caddy: &PerCaddy) -> Block {
    let locale = book.locale;
    let rows = caddy.rows.iter().filter_map(|(count, answer)| {
        let recipe = answer.recipes.first()?;
        Some(Row::of([
            words::caddies(book.catalogue, *count, locale),
            words::put_with(book.catalogue, recipe, locale),
        ]))
    });
    let [scraps, with] = words::caddy_heads(locale);
    Block::Table(Table {
        columns: vec![Column::fit(scraps, Side::Start), Column::share(with, 1.0)],
        rows: rows.collect(),
        fills: false,
    })
}

/// As many lines to write on as the page has room for.
fn to_write(book: &Book<'_>) -> Block {
    const WIDTHS_MM: [f64; 5] = [20.0, 19.0, 19.0, 19.0, 24.0];
    let heads = words::writing_heads(book.locale);
    let columns = heads
        .iter()
        .enumerate()
        .map(|(index, head)| Column {
            head: head.clone(),
            side: Side::Start,
            width: WIDTHS_MM
                .get(index)
                .map_or(Width::Share(1.0), |width| Width::Millimetres(*width)),
        })
        .collect::<Vec<_>>();
    let row = Row {
        cells: vec![Cell::Blank; columns.len()],
        height_mm: WRITING_MM,
        strong: false,
    };
    Block::Table(Table {
        columns,
        rows: vec![row; 5],
        fills: true,
    })
}
