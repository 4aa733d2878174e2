//! Sheets become a PDF: letters as letters, lines as lines, and the structure beside them.

use std::num::NonZeroU16;

use krilla::configure::{Accessibility, ConfigurationBuilder};
use krilla::destination::XyzDestination;
use krilla::geom::{Path, PathBuilder, Point};
use krilla::metadata::{DateTime, Metadata};
use krilla::outline::{Outline, OutlineNode};
use krilla::page::PageSettings;
use krilla::paint::{Fill, FillRule, LineCap, Stroke, StrokeDash};
use krilla::surface::Surface;
use krilla::tagging::{
    Artifact, ArtifactType, ContentTag, Identifier, ListNumbering, Node, SpanTag, TableHeaderScope,
    Tag, TagGroup, TagTree,
};
use krilla::text::{Font, GlyphId, KrillaGlyph};
use krilla::{SerializeSettings, color::luma};

use crate::PaperError;
use crate::document::{Document, PageSize};
use crate::drawing::Ink;
use crate::face::{Faces, Weight};
use crate::pages::{Laid, laid_out};
use crate::placed::{Kind, Mark, Parts};

/// Typesets a document. The same document gives the same bytes.
///
/// # Errors
///
/// When the built-in type cannot be read, or the writer of the PDF finds a fault.
pub fn typeset(document: &Document, size: PageSize) -> Result<Vec<u8>, PaperError> {
    let laid = laid_out(document, size)?;
    let writer = |error: &dyn std::fmt::Debug| PaperError::Writer(format!("{error:?}"));
    let configuration = ConfigurationBuilder::new()
        .with_accessibility_validator(Accessibility::UA1)
        .finish()
        .map_err(|error| writer(&error))?;
    let mut pdf = krilla::Document::new_with(SerializeSettings {
        configuration,
        ..SerializeSettings::default()
    });
    let fonts = [Faces::font(Weight::Regular)?, Faces::font(Weight::Strong)?];
    let mut leaves: Vec<Vec<Identifier>> = vec![Vec::new(); laid.parts.0.len()];
    let mut outline = Outline::new();
    for (index, sheet) in laid.sheets.iter().enumerate() {
        let settings = PageSettings::from_wh(short(laid.size.0), short(laid.size.1))
            .ok_or_else(|| PaperError::Writer("a sheet without a size".to_owned()))?;
        let mut page = pdf.start_page_with(settings);
        let mut surface = page.surface();
        let mut marks = sheet.marks.as_slice();
        while let Some(first) = marks.first() {
            let run = marks
                .iter()
                .take_while(|placed| placed.part == first.part)
                .count();
            let (these, rest) = marks.split_at(run);
            let tag = match first.part.and_then(|part| laid.parts.0.get(part)) {
                None => ContentTag::Artifact(Artifact::with_kind(ArtifactType::Layout)),
                Some(part) => match &part.kind {
                    Kind::Figure(_) => ContentTag::Other,
                    Kind::Tick(word) => {
                        ContentTag::Span(SpanTag::empty().with_alt_text(Some(word)))
                    }
                    _ => ContentTag::Span(SpanTag::empty()),
                },
            };
            let id = surface.start_tagged(tag);
            for placed in these {
                draw(&mut surface, &placed.mark, &fonts);
            }
            surface.end_tagged();
            if let Some(leaf) = first.part.and_then(|part| leaves.get_mut(part)) {
                leaf.push(id);
            }
            marks = rest;
        }
        surface.finish();
        page.finish();
        for (words, y) in &sheet.heads {
            let point = Point::from_xy(0.0, short(*y - 6.0));
            outline.push_child(OutlineNode::new(
                words.clone(),
                XyzDestination::new(index, point),
            ));
        }
    }
    pdf.set_tag_tree(structure(&laid, document, &leaves));
    pdf.set_outline(outline);
    pdf.set_metadata(metadata(document));
    pdf.finish().map_err(|error| writer(&error))
}

fn metadata(document: &Document) -> Metadata {
    let (year, month, day) = document.date;
    let whole = |value: i8| u8::try_from(value).unwrap_or(1);
    Metadata::new()
        .title(document.title.clone())
        .description(document.under.clone())
        .language(document.language.clone())
        .creator("Heapwright".to_owned())
        .creation_date(
            DateTime::new(u16::try_from(year).unwrap_or(1))
                .month(whole(month))
                .day(whole(day)),
        )
}

/// The parts of the document as a tree, each with its marks.
fn structure(laid: &Laid, document: &Document, leaves: &[Vec<Identifier>]) -> TagTree {
    let mut tree = TagTree::new().with_lang(Some(document.language.clone()));
    for (index, part) in laid.parts.0.iter().enumerate() {
        if part.inside.is_none() {
            for node in nodes(&laid.parts, index, leaves) {
                tree.push(node);
            }
        }
    }
    tree
}

fn nodes(parts: &Parts, index: usize, leaves: &[Vec<Identifier>]) -> Vec<Node> {
    let Some(part) = parts.0.get(index) else {
        return Vec::new();
    };
    let mut children: Vec<Node> = leaves
        .get(index)
        .into_iter()
        .flatten()
        .map(|id| Node::from(*id))
        .collect();
    // Parts inside stand behind it, in the order of reading.
    for (other, inner) in parts.0.iter().enumerate().skip(index + 1) {
        if inner.inside == Some(index) {
            children.extend(nodes(parts, other, leaves));
        }
    }
    let level = |level: u16| NonZeroU16::new(level).unwrap_or(NonZeroU16::MIN);
    let group = match &part.kind {
        Kind::Title(words) => {
            TagGroup::with_children(Tag::Hn(level(1), Some(words.clone())), children)
        }
        Kind::Heading(words) => {
            TagGroup::with_children(Tag::Hn(level(2), Some(words.clone())), children)
        }
        Kind::Paragraph => TagGroup::with_children(Tag::P, children),
        Kind::List => TagGroup::with_children(Tag::L(ListNumbering::None), children),
        Kind::Item => TagGroup::with_children(Tag::LI, children),
        Kind::ItemBody => TagGroup::with_children(Tag::LBody, children),
        Kind::Table => TagGroup::with_children(Tag::Table, children),
        Kind::Row => TagGroup::with_children(Tag::TR, children),
        Kind::Head => TagGroup::with_children(Tag::TH(TableHeaderScope::Column), children),
        Kind::RowHead => TagGroup::with_children(Tag::TH(TableHeaderScope::Row), children),
        Kind::Cell => TagGroup::with_children(Tag::TD, children),
        Kind::Figure(told) => TagGroup::with_children(Tag::Figure(Some(told.clone())), children),
        // A box belongs to its cell.
        Kind::Tick(_) => return children,
    };
    vec![group.into()]
}

fn draw(surface: &mut Surface<'_>, mark: &Mark, fonts: &[Font; 2]) {
    match mark {
        Mark::Letters {
            shaped,
            weight,
            size,
            x,
            baseline,
        } => {
            let glyphs: Vec<KrillaGlyph> = shaped
                .glyphs
                .iter()
                .map(|glyph| {
                    KrillaGlyph::new(
                        GlyphId::new(glyph.id),
                        short(glyph.advance),
                        short(glyph.along),
                        short(glyph.up),
                        0.0,
                        glyph.shows.clone(),
                        None,
                    )
                })
                .collect();
            let font = match weight {
                Weight::Regular => fonts[0].clone(),
                Weight::Strong => fonts[1].clone(),
            };
            surface.set_stroke(None);
            surface.set_fill(Some(black()));
            let start = Point::from_xy(short(*x), short(*baseline));
            surface.draw_glyphs(start, &glyphs, font, &shaped.text, short(*size), false);
        }
        Mark::Rule { from, to, weight } => {
            if let Some(path) = path(&[*from, *to], false) {
                line(surface, &path, *weight, &[]);
            }
        }
        Mark::Path {
            ink,
            points,
            closed,
        } => {
            if let Some(path) = path(points, *closed) {
                inked(surface, &path, *ink, mark.bounds());
            }
        }
        Mark::Disc {
            ink,
            centre,
            radius,
        } => {
            if let Some(path) = disc(*centre, *radius) {
                inked(surface, &path, *ink, mark.bounds());
            }
        }
    }
}

fn inked(surface: &mut Surface<'_>, path: &Path, ink: Ink, bounds: (f64, f64, f64, f64)) {
    match ink {
        Ink::Frame => line(surface, path, 0.6, &[]),
        Ink::Guide => line_of(surface, path, GUIDE, 0.4, &[]),
        Ink::Fine => line(surface, path, 0.7, &[]),
        Ink::Bold => line(surface, path, 1.3, &[]),
        Ink::Dashed => line(surface, path, 0.9, &[4.0, 2.5]),
        Ink::Dotted => line(surface, path, 0.9, &[0.9, 2.1]),
        Ink::Hatched => hatched(surface, path, bounds, 7.0),
        Ink::HatchedDense => hatched(surface, path, bounds, 3.0),
        Ink::Paper => white(surface, path),
        Ink::Hollow => {
            white(surface, path);
            line(surface, path, 0.9, &[]);
        }
        Ink::Solid => {
            surface.set_stroke(None);
            surface.set_fill(Some(black()));
            surface.draw_path(path);
        }
    }
}

fn white(surface: &mut Surface<'_>, path: &Path) {
    surface.set_stroke(None);
    surface.set_fill(Some(Fill {
        paint: luma::Color::white().into(),
        ..Fill::default()
    }));
    surface.draw_path(path);
}

/// Slanting lines inside an area, and its rim.
fn hatched(
    surface: &mut Surface<'_>,
    area: &Path,
    (left, top, right, bottom): (f64, f64, f64, f64),
    gap: f64,
) {
    let mut lines = PathBuilder::new();
    let rise = bottom - top;
    let mut x = left - rise;
    while x < right {
        lines.move_to(short(x), short(bottom));
        lines.line_to(short(x + rise), short(top));
        x += gap;
    }
    if let Some(lines) = lines.finish() {
        surface.push_clip_path(area, &FillRule::NonZero);
        line(surface, &lines, 0.35, &[]);
        surface.pop();
    }
    line(surface, area, 0.6, &[]);
}

/// How light a line is that only guides the eye, of 255: it is there, and nothing is read off its ink.
const GUIDE: u8 = 190;

fn line(surface: &mut Surface<'_>, path: &Path, weight: f64, dashes: &[f32]) {
    line_of(surface, path, 0, weight, dashes);
}

fn line_of(surface: &mut Surface<'_>, path: &Path, light: u8, weight: f64, dashes: &[f32]) {
    surface.set_fill(None);
    surface.set_stroke(Some(Stroke {
        paint: luma::Color::new(light).into(),
        width: short(weight),
        line_cap: LineCap::Butt,
        dash: (!dashes.is_empty()).then(|| StrokeDash {
            array: dashes.to_vec(),
            offset: 0.0,
        }),
        ..Stroke::default()
    }));
    surface.draw_path(path);
}

fn black() -> Fill {
    Fill {
        paint: luma::Color::black().into(),
        ..Fill::default()
    }
}

fn path(points: &[(f64, f64)], closed: bool) -> Option<Path> {
    let mut builder = PathBuilder::new();
    let (first, rest) = points.split_first()?;
    builder.move_to(short(first.0), short(first.1));
    for (x, y) in rest {
        builder.line_to(short(*x), short(*y));
    }
    if closed {
        builder.close();
    }
    builder.finish()
}

/// Four arcs, each a cubic whose handles are this part of the radius long.
const ARC: f64 = 0.552_284_75;

fn disc((x, y): (f64, f64), radius: f64) -> Option<Path> {
    let mut builder = PathBuilder::new();
    let at = |across: f64, down: f64| (short(x + across * radius), short(y + down * radius));
    let start = at(1.0, 0.0);
    builder.move_to(start.0, start.1);
    for (one, two, end) in [
        ((1.0, ARC), (ARC, 1.0), (0.0, 1.0)),
        ((-ARC, 1.0), (-1.0, ARC), (-1.0, 0.0)),
        ((-1.0, -ARC), (-ARC, -1.0), (0.0, -1.0)),
        ((ARC, -1.0), (1.0, -ARC), (1.0, 0.0)),
    ] {
        let (one, two, end) = (at(one.0, one.1), at(two.0, two.1), at(end.0, end.1));
        builder.cubic_to(one.0, one.1, two.0, two.1, end.0, end.1);
    }
    builder.close();
    builder.finish()
}

#[allow(clippy::cast_possible_truncation)] // a thousandth of a point is finer than any printer
fn short(value: f64) -> f32 {
    value as f32
}
