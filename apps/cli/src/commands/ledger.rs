//! `heapwright ledger`: where are the nutrients of a heap?

use std::io::{self, Write};

use heapwright_answers::{LedgerQuestion, where_nutrients_are};
use heapwright_wire::ledger_json;
use heapwright_wording as wording;

use crate::arguments::LedgerArguments;
use crate::commands::ready::WIDTH;
use crate::failure::Failure;
use crate::keeping::{Keeping, catalogue};
use crate::table::write_paragraph;
use crate::telling::{write_invented, write_json};

/// Letters of a name and of a figure: together they fill a line of 80.
const NAME: usize = 32;
const FIGURE: usize = 9;

/// Runs the command.
pub fn run(arguments: &LedgerArguments, out: &mut impl Write) -> Result<(), Failure> {
    let keeping = Keeping::to_read(&arguments.journal)?;
    let question = LedgerQuestion {
        heap: keeping.heap(arguments.heap.as_deref())?,
        now: keeping.edges.now,
        simulate: !arguments.no_simulation,
    };
    let answer = where_nutrients_are(catalogue(), &keeping.garden(), &keeping.state, &question)?;
    if arguments.journal.json {
        return write_json(&ledger_json(&keeping.state, &answer), out);
    }
    write_invented(&keeping.state, out)?;
    let name = wording::heap_name(&keeping.state, question.heap, keeping.locale());
    writeln!(
        out,
        "{name}, {}\n",
        wording::day_text(answer.now, keeping.locale())
    )?;
    write_table(out, &wording::ledger_rows(&answer, keeping.locale()))?;
    writeln!(out)?;
    write_table(out, &wording::label_rows(&answer, keeping.locale()))?;
    if let Some(rows) = wording::beside_rows(&answer, keeping.locale()) {
        writeln!(out)?;
        write_table(out, &rows)?;
    }
    writeln!(out)?;
    for line in wording::ledger_lines(&answer, keeping.locale()) {
        write_paragraph(out, "", &line, WIDTH)?;
    }
    Ok(())
}

/// A name and figures that stand under each other at their right ends.
fn write_table(out: &mut impl Write, rows: &[Vec<String>]) -> io::Result<()> {
    for row in rows {
        let mut cells = row.iter();
        let mut line = format!("{:<NAME$}", cells.next().map_or("", String::as_str));
        for cell in cells {
            line.push_str(&format!("{cell:>FIGURE$}"));
        }
        writeln!(out, "{}", line.trim_end())?;
    }
    Ok(())
}
