//! `heapwright water`: a heap was watered, and what that did to its balance.

use std::io::Write;

use heapwright_journal::content::Watered;
use heapwright_wire::water_kg;

use crate::arguments::WaterArguments;
use crate::commands::feed::add_and_tell;
use crate::failure::Failure;
use crate::keeping::{Keeping, catalogue};
use crate::telling::Besides;

/// Runs the command.
pub fn run(arguments: &WaterArguments, out: &mut impl Write) -> Result<(), Failure> {
    let mut keeping = Keeping::to_write(&arguments.record.journal)?;
    let (heap, amount) = match arguments.words.as_slice() {
        [heap, amount] => (Some(heap.as_str()), amount.as_str()),
        words => (None, words.first().map_or("", String::as_str)),
    };
    // A litre of water weighs a kilogram.
    let water_l = water_kg(catalogue(), &keeping.garden(), amount, "AMOUNT")?;
    let heap = keeping.heap(heap)?;
    let watered = Watered { heap, water_l };
    add_and_tell(
        &mut keeping,
        &arguments.record,
        heap,
        watered.into(),
        Besides::default(),
        out,
    )
}
