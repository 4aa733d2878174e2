//! `heapwright harvest`: compost was taken out.

use std::io::Write;

use heapwright_answers::before_use;
use heapwright_journal::AmountSaid;
use heapwright_journal::content::Harvested;
use heapwright_wire::{share_pct, spoken_amount};

use crate::arguments::HarvestArguments;
use crate::failure::Failure;
use crate::keeping::{Keeping, catalogue};
use crate::naming;
use crate::telling::{Besides, tell};

/// Runs the command.
pub fn run(arguments: &HarvestArguments, out: &mut impl Write) -> Result<(), Failure> {
    let mut keeping = Keeping::to_write(&arguments.record.journal)?;
    let (heap, amount) = match arguments.words.as_slice() {
        [heap, amount, ..] => (Some(heap.as_str()), Some(amount.as_str())),
        [word] if is_amount(&keeping, word) => (None, Some(word.as_str())),
        [word] => (Some(word.as_str()), None),
        [] => (None, None),
    };
    let amount_said = |text: &str, field: &str| {
        spoken_amount(catalogue(), text, field).map(|amount| AmountSaid::from(&amount))
    };
    let amount = amount.map(|text| amount_said(text, "AMOUNT")).transpose()?;
    let share = arguments
        .share
        .as_deref()
        .map(|text| share_pct(text, "--share"))
        .transpose()?;
    let heap = keeping.heap(heap)?;
    // An amount alone does not tell what is left.
    if amount.is_some() && share.is_none() {
        return Err(Failure::Input(
            "say how much of the heap it was with --share, such as --share 20% or --share all"
                .to_owned(),
        ));
    }
    let harvested = Harvested {
        heap,
        amount,
        share_pct: share.filter(|share| *share < 100.0),
        sieve_mm: arguments.sieve,
        overs: arguments
            .overs
            .as_deref()
            .map(|text| amount_said(text, "--overs"))
            .transpose()?,
        overs_to: arguments
            .overs_to
            .as_deref()
            .map(|text| keeping.heap(Some(text)))
            .transpose()?,
    };
    let besides = Besides {
        before_use: before_use(
            catalogue(),
            &keeping.garden(),
            &keeping.state.contents(heap),
        ),
        ..Besides::default()
    };
    let ids = keeping.record(&arguments.record, vec![harvested.into()])?;
    tell(&keeping, &arguments.record.journal, &ids, &besides, out)
}

/// What begins with a number is an amount, spelt right or not, unless a heap is called so.
fn is_amount(keeping: &Keeping, word: &str) -> bool {
    !naming::is_heap(&keeping.state, word)
        && (word.starts_with(|c: char| c.is_numeric() || "-+.\u{2212}".contains(c))
            || spoken_amount(catalogue(), word, "").is_ok())
}
