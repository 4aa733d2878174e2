//! `heapwright spread`: compost was spread on a bed.

use std::io::Write;

use heapwright_answers::{before_use, never_on_this_bed};
use heapwright_catalogue::Spreading;
use heapwright_journal::AmountSaid;
use heapwright_journal::content::Spread;
use heapwright_wire::{chosen, spoken_amount};
use heapwright_wording as wording;

use crate::arguments::SpreadArguments;
use crate::failure::Failure;
use crate::keeping::{Keeping, catalogue};
use crate::naming;
use crate::telling::{Besides, tell};

/// Runs the command.
pub fn run(arguments: &SpreadArguments, out: &mut impl Write) -> Result<(), Failure> {
    let mut keeping = Keeping::to_write(&arguments.record.journal)?;
    let spread = Spread {
        bed: naming::bed(&keeping.state, &arguments.bed)?,
        heap: arguments
            .heap
            .as_deref()
            .map(|text| keeping.heap(Some(text)))
            .transpose()?,
        amount: AmountSaid::from(&spoken_amount(catalogue(), &arguments.amount, "AMOUNT")?),
        how: arguments
            .how
            .as_deref()
            .map(|text| chosen(text, "--how"))
            .transpose()?,
    };
    // Asked before it is written down: what is spread is no longer of the compost that is there.
    let off_food = spread.heap.and_then(|heap| {
        let garden = keeping.garden();
        let found = never_on_this_bed(
            catalogue(),
            Spreading::built_in(),
            &garden,
            &keeping.state,
            (spread.bed, heap),
            keeping.edges.now,
        );
        let bed = keeping.state.bed(spread.bed)?.now().described.as_ref()?;
        (!found.is_empty())
            .then(|| wording::spread_on_food_bed(&bed.name, &found, keeping.locale()))
    });
    let besides = Besides {
        notices: off_food.into_iter().collect(),
        before_use: spread.heap.map_or_else(Vec::new, |heap| {
            let contents = keeping.state.contents_since_harvest(heap);
            before_use(catalogue(), &keeping.garden(), &contents)
        }),
        ..Besides::default()
    };
    let ids = keeping.record(&arguments.record, vec![spread.into()])?;
    tell(&keeping, &arguments.record.journal, &ids, &besides, out)
}
