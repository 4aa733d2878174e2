//! Is what comes out a PDF that others can read, with everything inside the margins, and the same
//! every time? Readers that are not ours (`pdftotext`, `pdfinfo`, `pdffonts`, `qpdf`) count as
//! skipped, in words, where they are absent.

#![allow(clippy::unwrap_used, clippy::print_stderr)] // a fault is the failure of the test; what is skipped is said

use std::io::ErrorKind;
use std::path::{Path, PathBuf};
use std::process::Command;

use heapwright_paper::{
    Block, Cell, Column, Document, Drawing, Figure, Ink, MARGIN_MM, Mark, PageSize, Row, Side,
    Stroke, Table, laid_out, typeset,
};

const MM: f64 = 72.0 / 25.4;

/// A document with everything in it, and a table that goes on over pages.
fn everything(rows: usize) -> Document {
    let table = Table {
        columns: vec![
            Column::share("What", 1.0),
            Column::fit("How much", Side::End),
            Column::fit("Done", Side::Middle),
        ],
        rows: (0..rows)
            .map(|row| Row {
                cells: vec![
                    Cell::Text(format!(
                        "Row {row} of leaves that were shredded and are dry"
                    )),
                    Cell::Text(format!("{row}\u{a0}L")),
                    Cell::Tick,
                ],
                ..Row::default()
            })
            .collect(),
        fills: false,
    };
    let blank = Table {
        columns: vec![Column::share("Day", 1.0), Column::share("Core, °C", 1.0)],
        rows: vec![
            Row {
                cells: vec![Cell::Blank, Cell::Blank],
                height_mm: 9.0,
                ..Row::default()
            };
            4
        ],
        fills: false,
    };
    let drawing = Drawing {
        width: 150.0,
        height: 90.0,
        strokes: vec![
            Stroke::Path {
                ink: Ink::Hatched,
                points: vec![(10.0, 10.0), (90.0, 10.0), (90.0, 70.0), (10.0, 70.0)],
                closed: true,
            },
            Stroke::Disc {
                ink: Ink::Solid,
                centre: (50.0, 40.0),
                radius: 4.0,
            },
            Stroke::Word {
                at: (149.0, 80.0),
                hang: 0.5,
                text: "a word at the rim".to_owned(),
                strong: false,
            },
        ],
    };
    Document {
        title: "The page for the bin".to_owned(),
        under: "Bay 1, begun on 3 April".to_owned(),
        garden: "Żółty ogród".to_owned(),
        day: "15 November 2026".to_owned(),
        date: (2026, 11, 15),
        language: "en".to_owned(),
        tick_word: "to tick".to_owned(),
        lacking_note: "Letters that the type lacks stand as \u{25af}.".to_owned(),
        blocks: vec![
            Block::Lead("Put 2\u{a0}handfuls with each caddy.".to_owned()),
            Block::Beside {
                left: vec![
                    Block::Heading("On the left".to_owned()),
                    Block::List(vec!["one".to_owned(), "two words".to_owned()]),
                ],
                right: vec![Block::Figure(Figure {
                    drawing,
                    told: "A region and a point in it.".to_owned(),
                    caption: "The point lies in the region.".to_owned(),
                })],
                left_share: 0.5,
            },
            Block::Caution("Wash your hands.".to_owned()),
            Block::Heading("Rows".to_owned()),
            Block::Table(table),
            Block::Heading("To write".to_owned()),
            Block::Table(blank),
            Block::Paragraph("The end. ".repeat(200)),
            Block::Small("Small print.".to_owned()),
        ],
    }
}

#[test]
fn nothing_stands_outside_the_margins_or_is_smaller_than_9_points() {
    let mut document = everything(120);
    document.title = "A name without any break".replace(' ', "").repeat(12);
    document.garden = "Garden of all the neighbours ".repeat(12);
    for size in [PageSize::A4, PageSize::Letter] {
        let laid = laid_out(&document, size).unwrap();
        let (width, height) = laid.size;
        let (side, end) = (MARGIN_MM.0 * MM, MARGIN_MM.1 * MM);
        assert!(side >= 10.0 * MM && end >= 10.0 * MM);
        assert!(laid.sheets.len() > 3);
        for sheet in &laid.sheets {
            for placed in &sheet.marks {
                let (left, top, right, bottom) = placed.mark.bounds();
                assert!(
                    left >= side - 0.01
                        && right <= width - side + 0.01
                        && top >= end - 0.01
                        && bottom <= height - end + 0.01,
                    "{:?}",
                    placed.mark
                );
                if let Mark::Letters { size, .. } = placed.mark {
                    assert!(size >= 9.0);
                }
            }
        }
    }
}

/// Letters of a sheet with where they stand.
fn words(sheet: &heapwright_paper::Sheet) -> Vec<(String, f64)> {
    sheet
        .marks
        .iter()
        .filter_map(|placed| match &placed.mark {
            Mark::Letters {
                shaped, baseline, ..
            } => Some((shaped.text.clone(), *baseline)),
            _ => None,
        })
        .collect()
}

#[test]
fn every_row_is_whole_and_stands_below_a_head() {
    let laid = laid_out(&everything(120), PageSize::A4).unwrap();
    let mut found = Vec::new();
    for sheet in &laid.sheets {
        let words = words(sheet);
        let head = words.iter().find(|(text, _)| text == "How much");
        for (text, baseline) in &words {
            if let Some(row) = text
                .strip_prefix("Row ")
                .and_then(|rest| rest.split(' ').next())
            {
                assert!(head.unwrap().1 < *baseline);
                assert!(
                    words
                        .iter()
                        .any(|(other, at)| at == baseline && *other == format!("{row}\u{a0}L"))
                );
                found.push(row.parse::<usize>().unwrap());
            }
        }
    }
    assert_eq!(found, (0..120).collect::<Vec<_>>());
}

#[test]
fn lines_do_not_stand_on_each_other() {
    let laid = laid_out(&everything(40), PageSize::Letter).unwrap();
    for sheet in &laid.sheets {
        let boxes: Vec<_> = sheet
            .marks
            .iter()
            .filter(|placed| matches!(placed.mark, Mark::Letters { .. }))
            .map(|placed| placed.mark.bounds())
            .filter(|(left, _, right, _)| right - left > 2.0)
            .collect();
        for (index, one) in boxes.iter().enumerate() {
            for other in &boxes[index + 1..] {
                let over = one.2.min(other.2) - one.0.max(other.0);
                let height = (one.3 - one.1).min(other.3 - other.1);
                let cover = one.3.min(other.3) - one.1.max(other.1);
                assert!(over <= 0.01 || cover < height * 0.5, "{one:?} {other:?}");
            }
        }
    }
}

#[test]
fn the_same_document_gives_the_same_bytes() {
    let document = everything(30);
    let once = typeset(&document, PageSize::A4).unwrap();
    assert_eq!(once, typeset(&document, PageSize::A4).unwrap());
    assert_ne!(once, typeset(&document, PageSize::Letter).unwrap());
}

#[test]
fn a_letter_that_the_type_lacks_is_told_of_and_the_file_is_still_made() {
    let mut document = everything(1);
    document.garden = "堆肥 🐛".to_owned();
    typeset(&document, PageSize::A4).unwrap();
    let laid = laid_out(&document, PageSize::A4).unwrap();
    let all: Vec<_> = laid.sheets.iter().flat_map(words).collect();
    assert!(
        all.iter()
            .any(|(text, _)| text == "\u{25af}\u{25af} \u{25af}")
    );
    assert!(all.iter().any(|(text, _)| text == &document.lacking_note));
}

/// What another program says of a file; `None`, and a word of it, where it is not there.
fn said_by(program: &str, arguments: &[&str], file: &Path) -> Option<String> {
    match Command::new(program).args(arguments).arg(file).output() {
        Ok(output) => {
            assert!(
                output.status.success(),
                "{program}: {}",
                String::from_utf8_lossy(&output.stderr)
            );
            Some(String::from_utf8_lossy(&output.stdout).into_owned())
        }
        Err(error) if error.kind() == ErrorKind::NotFound => {
            eprintln!("skipped: {program} is not there to read the PDF");
            None
        }
        Err(error) => panic!("{program}: {error}"),
    }
}

#[test]
fn programs_that_are_not_ours_read_it() {
    let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR"));
    for (size, said) in [(PageSize::A4, "(A4)"), (PageSize::Letter, "(letter)")] {
        let document = everything(90);
        let file = folder.join(format!("everything{said}.pdf"));
        std::fs::write(&file, typeset(&document, size).unwrap()).unwrap();
        let pages = laid_out(&document, size).unwrap().sheets.len();
        said_by("qpdf", &["--check"], &file);
        if let Some(info) = said_by("pdfinfo", &[], &file) {
            for wanted in [
                "Title:           The page for the bin".to_owned(),
                "Tagged:          yes".to_owned(),
                format!("Pages:           {pages}"),
                said.to_owned(),
            ] {
                assert!(info.contains(&wanted), "{wanted}: {info}");
            }
        }
        if let Some(fonts) = said_by("pdffonts", &[], &file) {
            let rows: Vec<&str> = fonts.lines().skip(2).collect();
            assert_eq!(rows.len(), 2, "{fonts}");
            // Embedded, subset, with their letters told.
            assert!(
                rows.iter()
                    .all(|row| row.contains("+FiraSans") && row.contains("yes yes yes"))
            );
        }
        // The names of files come last, and standard output is asked for by a dash behind them.
        let text = Command::new("pdftotext")
            .args(["-layout"])
            .arg(&file)
            .arg("-")
            .output();
        match text {
            Ok(output) => {
                let text = String::from_utf8_lossy(&output.stdout);
                for wanted in ["Żółty ogród", "Row 89 of leaves", "Done", "Core, °C"] {
                    assert!(text.contains(wanted), "{wanted}");
                }
            }
            Err(error) => eprintln!("skipped: pdftotext is not there to read the PDF ({error})"),
        }
    }
}
