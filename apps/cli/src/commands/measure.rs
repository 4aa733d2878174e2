//! `heapwright measure`: what the garden's vessels hold.

use std::io::Write;

use heapwright_journal::content::MeasureDefined;
use heapwright_wire::{measure_id, volume_l};

use crate::arguments::MeasureCommand;
use crate::failure::Failure;
use crate::keeping::{Keeping, catalogue};
use crate::telling::record_and_tell;

/// Runs the command.
pub fn run(command: &MeasureCommand, out: &mut impl Write) -> Result<(), Failure> {
    let MeasureCommand::Set(arguments) = command;
    let mut keeping = Keeping::to_write(&arguments.record.journal)?;
    let defined = MeasureDefined {
        measure: measure_id(catalogue(), &arguments.measure, "MEASURE")?,
        volume_l: volume_l(catalogue(), &arguments.volume, "VOLUME")?,
    };
    record_and_tell(&mut keeping, &arguments.record, vec![defined.into()], out)
}
