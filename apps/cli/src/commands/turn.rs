//! `heapwright turn`: a heap was turned.

use std::io::Write;

use heapwright_journal::content::Turned;
use heapwright_wire::chosen;

use crate::arguments::TurnArguments;
use crate::failure::Failure;
use crate::keeping::Keeping;
use crate::telling::record_and_tell;

/// Runs the command.
pub fn run(arguments: &TurnArguments, out: &mut impl Write) -> Result<(), Failure> {
    let mut keeping = Keeping::to_write(&arguments.record.journal)?;
    let turned = Turned {
        heap: keeping.heap(arguments.heap.as_deref())?,
        thoroughness: arguments
            .how
            .as_deref()
            .map(|text| chosen(text, "--how"))
            .transpose()?,
    };
    record_and_tell(&mut keeping, &arguments.record, vec![turned.into()], out)
}
