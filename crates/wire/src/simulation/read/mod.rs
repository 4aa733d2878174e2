//! From a case file to a question: every figure within bounds, every fault with its field.

mod enclosure;
mod events;
mod weather;

use heapwright_answers::heap::Model;
use heapwright_answers::{SEED, SimulationQuestion};
use heapwright_catalogue::Catalogue;
use heapwright_garden::Garden;
use heapwright_journal::Moment;

use super::question::{ModelFile, SimulationFile};
use crate::WireError;
use crate::read::own_garden;
use crate::shape::from_json;

pub use weather::read_weather;

/// The largest case file that is read.
pub const LARGEST_CASE_BYTES: usize = 4 << 20;

/// Bounds of a case; work and memory grow with them.
const MOST_DAYS: f64 = 3660.0;
const MOST_ROWS: f64 = 100_000.0;
const MOST_FIELD_CELLS: f64 = 2_000_000.0;
const MOST_FIELDS: usize = 400;
const MOST_MEMBERS: u32 = 1_000;
/// Members by days by cells: some minutes of work.
const MOST_WORK: f64 = 1_500_000.0;
/// The usual grid.
const LAYERS: u32 = 6;
const RINGS: u32 = 4;

/// Reads the question of `heapwright simulate`. `garden` is used where the file has none; `csv`
/// gives the bytes of a weather file by its name, or a sentence that says why not.
///
/// # Errors
///
/// When the file is not JSON of the right shape, or a figure has no meaning.
pub fn read_simulation(
    catalogue: &Catalogue,
    garden: &Garden,
    text: &str,
    csv: &dyn Fn(&str) -> Result<Vec<u8>, String>,
) -> Result<(SimulationQuestion, Garden), WireError> {
    if text.len() > LARGEST_CASE_BYTES {
        return Err(WireError::TooLarge {
            bytes: text.len(),
            most: LARGEST_CASE_BYTES,
        });
    }
    let file: SimulationFile = from_json(text.strip_prefix('\u{feff}').unwrap_or(text))?;
    let garden = own_garden(catalogue, garden, file.garden.as_ref())?;
    let start: Moment = file.start.parse().map_err(|_| {
        WireError::field(
            "start",
            "give a time with its offset from UTC, like \"2026-05-01T00:00:00Z\"",
        )
    })?;
    if !(file.days > 0.0 && file.days <= MOST_DAYS) {
        return Err(WireError::field(
            "days",
            format!("must be above 0 and at most {MOST_DAYS}, not {}", file.days),
        ));
    }
    let every_h = bounded("every_h", file.every_h.unwrap_or(6.0), 0.05, 720.0)?;
    let rows = file.days * 24.0 / every_h;
    if rows > MOST_ROWS {
        return Err(WireError::field(
            "every_h",
            format!("{rows:.0} rows are too many: ask for at most {MOST_ROWS}"),
        ));
    }
    let model = model(&file)?;
    let mut notices = Vec::new();
    let enclosure = enclosure::enclosure(&file.enclosure)?;
    let weather = weather::given(&file, start, &enclosure, csv, &mut notices)?;
    let (members, member_model, seed) = ensemble(&file, model)?;
    fields(&file, rows, model)?;
    let question = SimulationQuestion {
        start_ms: start.instant_ms,
        days: file.days,
        every_h,
        model,
        enclosure,
        weather,
        events: events::events(catalogue, &garden, &file.events)?,
        members,
        member_model,
        seed,
        fields_at_d: file.fields_at_d.clone(),
        notices,
    };
    Ok((question, garden))
}

fn bounded(field: &str, value: f64, least: f64, most: f64) -> Result<f64, WireError> {
    if (least..=most).contains(&value) {
        Ok(value)
    } else {
        Err(WireError::field(
            field,
            format!("must be between {least} and {most}, not {value}"),
        ))
    }
}

fn cells(model: Model) -> f64 {
    match model {
        Model::Lumped => 1.0,
        #[allow(clippy::cast_precision_loss)] // some hundreds
        Model::Spatial { layers, rings } => (layers * rings) as f64,
    }
}

fn model(file: &SimulationFile) -> Result<Model, WireError> {
    let told = |field: &str, count: Option<u32>, usual: u32, most: u32| {
        let count = count.unwrap_or(usual);
        if count == 0 || count > most {
            return Err(WireError::field(
                field,
                format!("must be between 1 and {most}, not {count}"),
            ));
        }
        Ok(count as usize)
    };
    let layers = told("layers", file.layers, LAYERS, 30)?;
    let rings = told("rings", file.rings, RINGS, 20)?;
    match file.model.unwrap_or_default() {
        ModelFile::Spatial => Ok(Model::Spatial { layers, rings }),
        ModelFile::Lumped => {
            for (field, count) in [("layers", file.layers), ("rings", file.rings)] {
                if count.is_some() {
                    return Err(WireError::field(
                        field,
                        "belongs to the spatial model: leave it out, or \"model\": \"lumped\"",
                    ));
                }
            }
            Ok(Model::Lumped)
        }
    }
}

fn ensemble(file: &SimulationFile, model: Model) -> Result<(u32, Model, u64), WireError> {
    let Some(ensemble) = &file.ensemble else {
        return Ok((0, model, SEED));
    };
    if ensemble.members == 0 || ensemble.members > MOST_MEMBERS {
        return Err(WireError::field(
            "ensemble.members",
            format!(
                "must be between 1 and {MOST_MEMBERS}, not {}",
                ensemble.members
            ),
        ));
    }
    let member_model = match (ensemble.model, model) {
        (None, model) => model,
        (Some(ModelFile::Lumped), _) => Model::Lumped,
        (Some(ModelFile::Spatial), Model::Spatial { .. }) => model,
        (Some(ModelFile::Spatial), Model::Lumped) => Model::default(),
    };
    check_work(
        "ensemble.members",
        ensemble.members,
        file.days,
        member_model,
    )?;
    Ok((
        ensemble.members,
        member_model,
        ensemble.seed.map_or(SEED, u64::from),
    ))
}

/// Refuses an ensemble that would take longer than a keeper waits.
///
/// # Errors
///
/// When there are too many members for so many days and cells.
pub fn check_work(field: &str, members: u32, days: f64, model: Model) -> Result<(), WireError> {
    if f64::from(members) * days * cells(model) <= MOST_WORK {
        return Ok(());
    }
    Err(WireError::field(
        field,
        format!(
            "{members} members over {days:.0} days would take too long: ask for fewer of either, or for the lumped model"
        ),
    ))
}

fn fields(file: &SimulationFile, rows: f64, model: Model) -> Result<(), WireError> {
    if file.fields_at_d.len() > MOST_FIELDS {
        return Err(WireError::field(
            "fields_at_d",
            format!("has too many entries: give at most {MOST_FIELDS}"),
        ));
    }
    for (index, day) in file.fields_at_d.iter().enumerate() {
        bounded(&format!("fields_at_d[{index}]"), *day, 0.0, file.days)?;
    }
    if !file.fields_at_d.is_empty() && rows * cells(model) > MOST_FIELD_CELLS {
        return Err(WireError::field(
            "fields_at_d",
            "so many rows of so many cells are too much: give a longer every_h or fewer layers and rings",
        ));
    }
    Ok(())
}
