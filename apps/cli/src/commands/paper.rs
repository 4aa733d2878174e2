//! `heapwright paper`: pages to print, as PDF.

use std::io::Write;

use heapwright_journal::Moment;
use heapwright_paper::{Book, Document, PageSize, beds_page, bin_page, season_page, typeset};
use heapwright_quantity::UnitSystem;
use heapwright_state::State;

use crate::arguments::{PaperBedsArguments, PaperCommand, SheetArguments};
use crate::arguments::{PaperBinArguments, PaperSeasonArguments, SizeArgument};
use crate::commands::beds::planned;
use crate::edges::Edges;
use crate::failure::Failure;
use crate::keeping::Keeping;
use crate::languages::spoken;
use crate::written::deliver;

/// Days of a record whose begin is not told.
const YEAR_D: i64 = 365;

/// Runs the command.
pub fn run(command: &PaperCommand, out: &mut impl Write) -> Result<(), Failure> {
    match command {
        PaperCommand::Bin(arguments) => bin(arguments, out),
        PaperCommand::Season(arguments) => season(arguments, out),
        PaperCommand::Beds(arguments) => beds(arguments, out),
    }
}

fn bin(arguments: &PaperBinArguments, out: &mut impl Write) -> Result<(), Failure> {
    let keeping = Keeping::to_read(&arguments.journal)?;
    let heap = keeping.heap(arguments.heap.as_deref())?;
    let garden = keeping.garden();
    let spoken = spoken(arguments.sheet.language)?;
    let book = Book {
        catalogue: spoken.catalogue(),
        garden: &garden,
        state: &keeping.state,
        now: keeping.edges.now,
        locale: spoken.locale().with_units(keeping.locale().units),
    };
    put(&arguments.sheet, book.locale.units, out, || {
        Ok(bin_page(&book, heap)?)
    })
}

fn season(arguments: &PaperSeasonArguments, out: &mut impl Write) -> Result<(), Failure> {
    let keeping = Keeping::to_read(&arguments.journal)?;
    let now = keeping.edges.now;
    let to = match arguments.to.as_deref() {
        Some(text) => keeping.edges.until("--to", text)?,
        None => now,
    };
    let from = match arguments.from.as_deref() {
        Some(text) => keeping.edges.since("--from", text)?,
        None => Moment::new(to.instant_ms - YEAR_D * 86_400_000, to.offset_min).unwrap_or(to),
    };
    if from.instant_ms > to.instant_ms {
        let why = if arguments.to.is_some() {
            "--from lies behind --to: give the earlier day first"
        } else {
            "--from lies in the future, where there is nothing to tell of yet: give a day that is past"
        };
        return Err(Failure::Input(why.to_owned()));
    }
    let garden = keeping.garden();
    let spoken = spoken(arguments.sheet.language)?;
    let book = Book {
        catalogue: spoken.catalogue(),
        garden: &garden,
        state: &keeping.state,
        now,
        locale: spoken.locale().with_units(keeping.locale().units),
    };
    put(&arguments.sheet, book.locale.units, out, || {
        Ok(season_page(&book, from, to))
    })
}

fn beds(arguments: &PaperBedsArguments, out: &mut impl Write) -> Result<(), Failure> {
    let planned = planned(&arguments.asked, &arguments.journal)?;
    let now = match &planned.keeping {
        Some(keeping) => keeping.edges.now,
        None => Edges::look()?.now,
    };
    let nobody = State::default();
    let spoken = spoken(arguments.sheet.language)?;
    let book = Book {
        catalogue: spoken.catalogue(),
        garden: &planned.garden,
        state: planned
            .keeping
            .as_ref()
            .map_or(&nobody, |keeping| &keeping.state),
        now,
        locale: spoken.locale().with_units(planned.locale.units),
    };
    put(&arguments.sheet, book.locale.units, out, || {
        Ok(beds_page(&book, &planned.answer))
    })
}

/// Typesets a document and writes it, whole or not at all.
fn put(
    sheet: &SheetArguments,
    units: UnitSystem,
    out: &mut impl Write,
    make: impl FnOnce() -> Result<Document, Failure>,
) -> Result<(), Failure> {
    let size = match (sheet.size, units) {
        (Some(SizeArgument::A4), _) | (None, UnitSystem::Metric) => PageSize::A4,
        (Some(SizeArgument::Letter), _) | (None, UnitSystem::UsCustomary) => PageSize::Letter,
    };
    deliver(Some(&sheet.output), sheet.replace, out, |bytes| {
        let document = make()?;
        *bytes = typeset(&document, size).map_err(|error| Failure::Outside(error.to_string()))?;
        Ok(())
    })
}
