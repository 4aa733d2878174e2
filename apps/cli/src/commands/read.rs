//! `heapwright read`: what was seen, felt, smelt and measured at a heap.

use std::io::Write;

use heapwright_journal::content::Read;
use heapwright_wire::{all_chosen, chosen, length_m, probe, share_pct, temperature_c};

use crate::arguments::ReadArguments;
use crate::failure::Failure;
use crate::keeping::Keeping;
use crate::telling::record_and_tell;

/// Runs the command.
pub fn run(arguments: &ReadArguments, out: &mut impl Write) -> Result<(), Failure> {
    let mut keeping = Keeping::to_write(&arguments.record.journal)?;
    let locale = keeping.locale();
    let read = Read {
        heap: keeping.heap(arguments.heap.as_deref())?,
        probes: arguments
            .temperature
            .iter()
            .map(|text| probe(text, locale.units, "--temperature"))
            .collect::<Result<_, _>>()?,
        air_temperature_c: arguments
            .air
            .as_deref()
            .map(|text| temperature_c(text, locale.units, "--air"))
            .transpose()?,
        squeeze: arguments
            .squeeze
            .as_deref()
            .map(|text| chosen(text, "--squeeze"))
            .transpose()?,
        smells: all_chosen(&arguments.smell, "--smell")?,
        looks: all_chosen(&arguments.look, "--look")?,
        creatures: all_chosen(&arguments.creatures, "--creatures")?,
        height_m: arguments
            .height
            .as_deref()
            .map(|text| length_m(text, "--height"))
            .transpose()?,
        fill_pct: arguments
            .fill
            .as_deref()
            .map(|text| share_pct(text, "--fill"))
            .transpose()?,
        logger: None,
    };
    if is_nothing(arguments) {
        return Err(Failure::Input(
            "say what you saw: give at least one of --temperature, --squeeze, --smell, --look, --creatures, --air, --height, --fill".to_owned(),
        ));
    }
    record_and_tell(&mut keeping, &arguments.record, vec![read.into()], out)
}

fn is_nothing(arguments: &ReadArguments) -> bool {
    arguments.temperature.is_empty()
        && arguments.smell.is_empty()
        && arguments.look.is_empty()
        && arguments.creatures.is_empty()
        && [
            &arguments.air,
            &arguments.squeeze,
            &arguments.height,
            &arguments.fill,
        ]
        .into_iter()
        .all(Option::is_none)
}
