//! The plan of the beds on paper: what goes where, with boxes to tick.

use heapwright_answers::{BedsAnswer, BedsNotice};
use heapwright_catalogue::Spreading;
use heapwright_quantity::measure_count_text;
use heapwright_wording::{self as wording, beds_on_the_page as page_words, paper as words};

use crate::book::{Book, ticked};
use crate::document::{Block, Column, Document, Row, Side, Table};

/// Makes the page of a plan.
#[must_use]
pub fn beds_page(book: &Book<'_>, answer: &BedsAnswer) -> Document {
    let locale = book.locale;
    let spreading = Spreading::built_in();
    let mut sources: Vec<String> = Vec::new();
    for key in answer
        .beds
        .iter()
        .flat_map(|bed| bed.binding_source_keys(spreading))
    {
        if !sources.contains(&key) {
            sources.push(key);
        }
    }
    let left = answer
        .notices
        .iter()
        .find(|notice| matches!(notice, BedsNotice::Left { .. }))
        .map_or_else(
            || words::nothing_left(locale).to_owned(),
            |notice| page_words::page_beds_notice(notice, locale),
        );
    let mut blocks = vec![
        Block::Lead(wording::beds_summary(answer, locale)),
        Block::Paragraph(left),
        table(book, answer),
        Block::Heading(words::beds_limited_by(locale).to_owned()),
    ];
    let lines = answer.beds.iter().map(|bed| {
        let keys = bed.binding_source_keys(spreading);
        let numbers: Vec<usize> = (1..)
            .zip(&sources)
            .filter(|(_, key)| keys.contains(key))
            .map(|(number, _)| number)
            .collect();
        words::with_sources(
            &page_words::page_binding_line(bed, locale),
            &numbers,
            locale,
        )
    });
    blocks.push(Block::List(lines.collect()));
    blocks.push(Block::Heading(words::beds_know(locale).to_owned()));
    let notices = answer
        .notices
        .iter()
        .filter(|notice| !matches!(notice, BedsNotice::Left { .. }))
        .map(|notice| page_words::page_beds_notice(notice, locale));
    blocks.push(Block::List(notices.collect()));
    blocks.push(Block::Paragraph(wording::beds_limits(locale).to_owned()));
    if !sources.is_empty() {
        blocks.push(Block::Heading(words::sources(locale).to_owned()));
        blocks.push(Block::Table(Table {
            columns: vec![Column::fit("", Side::End), Column::share("", 1.0)],
            rows: (1..)
                .zip(&sources)
                .map(|(number, key): (usize, &String)| {
                    let citation = book
                        .catalogue
                        .source(key)
                        .map_or_else(|| key.clone(), |source| source.citation.clone());
                    Row::of([number.to_string(), citation])
                })
                .collect(),
            fills: false,
        }));
    }
    book.document(words::beds_title(locale).to_owned(), "", blocks)
}

fn table(book: &Book<'_>, answer: &BedsAnswer) -> Block {
    let locale = book.locale;
    let rows = answer.beds.iter().map(|bed| {
        let share = &bed.share;
        let some = |text: String| {
            if share.depth_m > 0.0 {
                text
            } else {
                "\u{2013}".to_owned()
            }
        };
        let count = |measure: &str| {
            book.garden
                .filling_m3(book.catalogue, measure)
                .map_or_else(String::new, |filling| {
                    measure_count_text(share.volume_m3 / filling.typical)
                })
        };
        let weight_kg = share.brought_per_m2.wet_mass.value * bed.asked.area_m2;
        ticked([
            bed.asked.name.clone(),
            some(count("barrow")),
            some(count("bucket")),
            some(wording::depth_text(share.depth_m, locale)),
            some(locale.volume(share.volume_m3)),
            some(locale.mass(weight_kg)),
        ])
    });
    let mut columns: Vec<Column> = words::beds_heads(locale)
        .map(|head| Column::fit(head, Side::End))
        .to_vec();
    if let Some(first) = columns.first_mut() {
        *first = Column::share(&first.head, 1.0);
    }
    if let Some(last) = columns.last_mut() {
        last.side = Side::Middle;
    }
    Block::Table(Table {
        columns,
        rows: rows.collect(),
        fills: false,
    })
}
