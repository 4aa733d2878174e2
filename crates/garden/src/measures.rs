//! How much does the garden's own bucket hold?

use heapwright_catalogue::Catalogue;
use heapwright_quantity::{Amount, Range, Unit};
use heapwright_terms::PartAmount;

/// A vessel whose volume the keeper has found out, by reading it off or by
/// weighing it empty and full of water.
#[derive(Clone, Debug, PartialEq)]
pub struct Calibration {
    /// Id of the measure: one of the catalogue's or one of the garden's own.
    pub measure: String,
    /// Volume of one usual filling [m3], above 0.
    pub volume_m3: f64,
}

/// How far one filling of a calibrated vessel differs from the next: a tenth
/// either way. Common practice: a bucket is heaped or not quite full.
const FILLING_SPREAD: f64 = 0.1;

/// What one filling of a measure holds [m3]: as calibrated here, or as the
/// catalogue has it. `None` for a measure that neither knows.
pub(crate) fn filling_m3(
    catalogue: &Catalogue,
    calibrations: &[Calibration],
    measure: &str,
) -> Option<Range> {
    match calibrations.iter().rev().find(|own| own.measure == measure) {
        Some(own) => Range::new(
            own.volume_m3 * (1.0 - FILLING_SPREAD),
            own.volume_m3,
            own.volume_m3 * (1.0 + FILLING_SPREAD),
        ),
        None => catalogue.measure(measure).map(|measure| measure.volume_m3),
    }
}

/// The amount in kilograms, or in fillings of known volume.
pub(crate) fn part_amount(
    catalogue: &Catalogue,
    calibrations: &[Calibration],
    amount: &Amount,
) -> Option<PartAmount> {
    Some(match &amount.unit {
        Unit::Mass(unit) => PartAmount::MassKg(amount.count * unit.kilograms()),
        Unit::Volume(unit) => PartAmount::VolumeM3 {
            measure: "stated volume".to_owned(),
            count: amount.count,
            each_m3: Range::exact(unit.cubic_metres()),
        },
        Unit::Measure(id) => PartAmount::VolumeM3 {
            measure: id.clone(),
            count: amount.count,
            each_m3: filling_m3(catalogue, calibrations, id)?,
        },
    })
}
