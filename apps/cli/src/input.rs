//! From arguments and files to questions.

use std::fs::File;
use std::io::{self, Read};
use std::path::Path;

use heapwright_answers::{Objective, USUAL_TARGET, checked_target};
use heapwright_catalogue::Catalogue;
use heapwright_garden::{Found, FoundPart, Garden};
use heapwright_quantity::parse_parts;
use heapwright_terms::Target;
use heapwright_texts::Locale;
use heapwright_wire::{LARGEST_FILE_BYTES, read_garden, vocabulary};
use heapwright_wording as wording;

use crate::arguments::{CommonArguments, ObjectiveArgument, TargetArguments};
use crate::failure::Failure;
use crate::keeping::{Keeping, plain_locale};
use crate::naming;

/// The demo garden: invented, and marked so inside.
const DEMO_GARDEN: &str = include_str!("../../../demo/garden.json");

/// Reads a whole file, or standard input for `-`, up to the largest size that makes sense.
pub fn read(path: &Path) -> Result<String, Failure> {
    read_up_to(path, LARGEST_FILE_BYTES)
}

/// Reads a whole file, or standard input for `-`, of at most so many bytes.
pub fn read_up_to(path: &Path, most_bytes: usize) -> Result<String, Failure> {
    let from_standard_input = path == Path::new("-");
    let name = if from_standard_input {
        "standard input".to_owned()
    } else {
        path.display().to_string()
    };
    let failed = |error: io::Error| match error.kind() {
        io::ErrorKind::InvalidData => {
            Failure::Input(format!("{name} is not text in UTF-8: save it as UTF-8"))
        }
        _ => Failure::Read {
            path: name.clone(),
            error,
        },
    };
    let mut text = String::new();
    // One byte more than is accepted, so that what is too large is seen to be.
    let most = most_bytes as u64 + 1;
    if from_standard_input {
        io::stdin()
            .lock()
            .take(most)
            .read_to_string(&mut text)
            .map_err(failed)?;
    } else {
        File::open(path)
            .and_then(|file| file.take(most).read_to_string(&mut text))
            .map_err(failed)?;
    }
    if text.len() > most_bytes {
        return Err(Failure::Input(format!(
            "{name} has more than {most_bytes} bytes: give a smaller file"
        )));
    }
    Ok(text)
}

/// The garden that the arguments name, and the units of the text: its own file, the demo, the
/// journal, or one that knows nothing of itself.
pub fn garden(
    catalogue: &Catalogue,
    common: &CommonArguments,
) -> Result<(Garden, Locale), Failure> {
    let said = plain_locale(common.units);
    if let Some(path) = &common.garden_file {
        return Ok((read_garden(catalogue, &read(path)?)?, said));
    }
    if common.demo {
        return Ok((read_garden(catalogue, DEMO_GARDEN)?, said));
    }
    Ok(match Keeping::behind_question(common.garden.as_deref())? {
        Some(keeping) => (keeping.garden(), keeping.locale_for(common.units)),
        None => (Garden::default(), said),
    })
}

/// Refuses parts that cannot be weighed, each named as it was typed: such as what has no figures.
pub fn weighed(
    catalogue: &Catalogue,
    garden: &Garden,
    parts: &[Found],
    typed: &str,
) -> Result<Vec<FoundPart>, Failure> {
    // What was found came of the same words, part by part.
    let spoken = parse_parts(typed, &vocabulary(catalogue)).unwrap_or_default();
    parts
        .iter()
        .enumerate()
        .map(|(index, part)| {
            garden.find(catalogue, part).map_err(|error| {
                let text = spoken.get(index).map_or("", |part| part.text.as_str());
                Failure::refused(&wording::part_refusal_of_commands(
                    index,
                    &naming::shown(text),
                    &error,
                    Locale::default(),
                ))
            })
        })
        .collect()
}

/// The objective by its argument.
pub fn objective(argument: ObjectiveArgument) -> Objective {
    match argument {
        ObjectiveArgument::BestCentred => Objective::BestCentred,
        ObjectiveArgument::LeastMass => Objective::LeastMass,
        ObjectiveArgument::LeastBulk => Objective::LeastBulk,
        ObjectiveArgument::UsePlentiful => Objective::UsePlentiful,
    }
}

/// The target that the arguments give: `base` but for what they name.
pub fn target(base: Target, arguments: &TargetArguments) -> Result<Target, Failure> {
    let mut target = base;
    if let Some(text) = &arguments.cn {
        let (low, high) = low_and_high("--cn", text)?;
        target.carbon_to_nitrogen_low = low;
        target.carbon_to_nitrogen_high = high;
        if !(low..=high).contains(&USUAL_TARGET.carbon_to_nitrogen_goal) {
            target.carbon_to_nitrogen_goal = f64::midpoint(low, high);
        }
    }
    if let Some(text) = &arguments.moisture {
        let (low, high) = low_and_high("--moisture", text)?;
        target.moisture_wet_basis_low = low / 100.0;
        target.moisture_wet_basis_high = high / 100.0;
    }
    if let Some(text) = &arguments.air {
        let (low, high) = low_and_high("--air", text)?;
        target.free_air_space_low = low / 100.0;
        target.free_air_space_high = high / 100.0;
    }
    Ok(checked_target(target)?)
}

/// Two numbers with a dash between them.
fn low_and_high(option: &str, text: &str) -> Result<(f64, f64), Failure> {
    let number = |text: &str| {
        text.trim()
            .replace(',', ".")
            .parse::<f64>()
            .ok()
            .filter(|number| number.is_finite())
    };
    text.split_once(['-', '–', ':'])
        .and_then(|(low, high)| Some((number(low)?, number(high)?)))
        .filter(|(low, high)| low <= high)
        .ok_or_else(|| {
            Failure::Input(format!(
                "{option} takes two numbers, the lower first, such as 25-40"
            ))
        })
}
