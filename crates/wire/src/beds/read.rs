//! From a file of beds to a question: every figure within bounds, every fault with its field.

use heapwright_answers::spreading::{Maturity, Soil};
use heapwright_answers::{BedAsked, BedsQuestion, CompostAsked, DressingAsked, compost_of_tables};
use heapwright_catalogue::{Catalogue, Spreading};
use heapwright_garden::Garden;
use heapwright_quantity::Range;
use heapwright_terms::PartAmount;

use super::question::{BedFile, BedsFile, CompostFile, SoilFile};
use crate::WireError;
use crate::garden_file::FigureFile;
use crate::read::{LARGEST_FILE_BYTES, own_garden};
use crate::shape::from_json;
use crate::spoken::{area_m2, spoken_amount};

/// Reads the question of `heapwright beds plan`. `garden` is used where the file has none.
///
/// # Errors
///
/// When the file is not JSON of the right shape, or a figure has no meaning.
pub fn read_beds(
    catalogue: &Catalogue,
    spreading: &Spreading,
    garden: &Garden,
    text: &str,
) -> Result<(BedsQuestion, Garden), WireError> {
    if text.len() > LARGEST_FILE_BYTES {
        return Err(WireError::TooLarge {
            bytes: text.len(),
            most: LARGEST_FILE_BYTES,
        });
    }
    let file: BedsFile = from_json(text.strip_prefix('\u{feff}').unwrap_or(text))?;
    let garden = own_garden(catalogue, garden, file.garden.as_ref())?;
    let compost = match &file.compost {
        Some(file) => compost(spreading, file)?,
        None => compost_of_tables(spreading),
    };
    let density = compost.compost.bulk_density_kg_m3.typical;
    let volume =
        |text: &str, field: &str| compost_volume_m3(catalogue, &garden, text, field, density);
    let mut beds = Vec::new();
    for (index, bed) in file.beds.iter().enumerate() {
        beds.push(asked(bed, &format!("beds[{index}]"), &volume)?);
    }
    let question = BedsQuestion {
        beds,
        volume_m3: volume(&file.amount, "amount")?,
        compost,
        volume_is_estimated: false,
    };
    Ok((question, garden))
}

/// The volume of an amount of compost [m3], in words; masses by the density.
fn compost_volume_m3(
    catalogue: &Catalogue,
    garden: &Garden,
    text: &str,
    field: &str,
    density_kg_m3: f64,
) -> Result<f64, WireError> {
    let amount = spoken_amount(catalogue, text, field)?;
    match garden.part_amount(catalogue, &amount) {
        Ok(PartAmount::VolumeM3 { count, each_m3, .. }) => Ok(count * each_m3.typical),
        Ok(PartAmount::MassKg(mass_kg)) => Ok(mass_kg / density_kg_m3),
        Err(error) => Err(WireError::field(field, error)),
    }
}

fn asked(
    file: &BedFile,
    field: &str,
    volume: &dyn Fn(&str, &str) -> Result<f64, WireError>,
) -> Result<BedAsked, WireError> {
    let name = file.name.trim();
    if name.is_empty() || name.chars().count() > 200 || name.chars().any(char::is_control) {
        return Err(WireError::field(
            format!("{field}.name"),
            "give a name of 1 to 200 characters on one line",
        ));
    }
    let mut dressings = Vec::new();
    for (index, dressing) in file.dressings.iter().enumerate() {
        dressings.push(DressingAsked {
            years_ago: dressing.years_ago,
            volume_m3: volume(
                &dressing.amount,
                &format!("{field}.dressings[{index}].amount"),
            )?,
        });
    }
    Ok(BedAsked {
        name: name.to_owned(),
        area_m2: area_m2(&file.area, &format!("{field}.area"))?,
        crop: file.crop.clone(),
        feeding: file.feeding.clone(),
        new_ground: file.new_ground,
        soil: soil(&file.soil.unwrap_or_default(), &format!("{field}.soil"))?,
        sown_in_days: file.sown_in_days,
        harvest_in_days: file.harvest_in_days,
        dressings,
    })
}

fn soil(file: &SoilFile, field: &str) -> Result<Soil, WireError> {
    let bounded = |name: &str, value: Option<f64>, most: f64| match value {
        Some(value) if !(0.0..=most).contains(&value) => Err(WireError::field(
            format!("{field}.{name}"),
            format!("must be between 0 and {most}, not {value}"),
        )),
        value => Ok(value),
    };
    Ok(Soil {
        phosphorus: bounded("phosphorus_mg_kg", file.phosphorus_mg_kg, 1e5)?
            .map(|mg_kg| mg_kg * 1e-6),
        potassium: bounded("potassium_mg_kg", file.potassium_mg_kg, 1e5)?.map(|mg_kg| mg_kg * 1e-6),
        conductivity_ds_m: bounded("conductivity_ds_m", file.conductivity_ds_m, 1000.0)?,
    })
}

fn compost(spreading: &Spreading, file: &CompostFile) -> Result<CompostAsked, WireError> {
    let mut asked = compost_of_tables(spreading);
    let figures = &mut asked.compost;
    let mut is_measured = false;
    let feeds = |name: &str| {
        ["nitrogen", "phosphorus", "potassium"]
            .iter()
            .any(|nutrient| name.starts_with(nutrient))
    };
    for (figure, name, given, most, per) in [
        (
            &mut figures.moisture_wet_basis,
            "moisture_pct",
            file.moisture_pct,
            95.0,
            0.01,
        ),
        (
            &mut figures.bulk_density_kg_m3,
            "bulk_density_kg_m3",
            file.bulk_density_kg_m3,
            2000.0,
            1.0,
        ),
        (
            &mut figures.nitrogen_dry_basis,
            "nitrogen_pct_dry",
            file.nitrogen_pct_dry,
            50.0,
            0.01,
        ),
        (
            &mut figures.phosphorus_dry_basis,
            "phosphorus_pct_dry",
            file.phosphorus_pct_dry,
            50.0,
            0.01,
        ),
        (
            &mut figures.potassium_dry_basis,
            "potassium_pct_dry",
            file.potassium_pct_dry,
            50.0,
            0.01,
        ),
        (
            &mut figures.calcium_dry_basis,
            "calcium_pct_dry",
            file.calcium_pct_dry,
            50.0,
            0.01,
        ),
        (
            &mut figures.magnesium_dry_basis,
            "magnesium_pct_dry",
            file.magnesium_pct_dry,
            50.0,
            0.01,
        ),
        (
            &mut figures.conductivity_ds_m,
            "conductivity_ds_m",
            file.conductivity_ds_m,
            1000.0,
            1.0,
        ),
    ] {
        let Some(given) = given else { continue };
        let range = match given {
            FigureFile::One(value) => Range::new(value, value, value),
            FigureFile::Three([low, typical, high]) => Range::new(low, typical, high),
        };
        *figure = range
            .filter(|range| range.low >= 0.0 && range.high <= most)
            .ok_or_else(|| {
                WireError::field(
                    format!("compost.{name}"),
                    format!("give one number, or low, typical and high in rising order, from 0 to {most}"),
                )
            })?
            .scaled(per);
        is_measured |= feeds(name);
    }
    let bounded = |name: &str, value: Option<f64>, least: f64, most: f64| match value {
        Some(value) if !(least..=most).contains(&value) => Err(WireError::field(
            format!("compost.{name}"),
            format!("must be between {least} and {most}, not {value}"),
        )),
        value => Ok(value),
    };
    figures.carbon_to_nitrogen = bounded("cn_ratio", file.cn_ratio, 1.0, 1000.0)?;
    figures.mineral_nitrogen_share = bounded(
        "mineral_nitrogen_pct",
        file.mineral_nitrogen_pct,
        0.0,
        100.0,
    )?
    .map(|pct| pct / 100.0);
    asked.is_measured = is_measured;
    asked.is_dilute_extract = file.conductivity_ds_m.is_none();
    asked.maturity = match file.mature {
        Some(true) => Maturity::Mature,
        Some(false) => Maturity::Immature,
        None => Maturity::Unknown,
    };
    asked.held_raw = file.held_raw;
    asked.off_food.is_off = file.never_on_food_beds;
    Ok(asked)
}

/// The volume of an amount of compost of the usual density [m3]: "3 barrows", "200 l", "50 kg".
///
/// # Errors
///
/// When it is no amount, or names a measure that nobody knows.
pub fn spoken_compost_m3(
    catalogue: &Catalogue,
    spreading: &Spreading,
    garden: &Garden,
    text: &str,
    field: &str,
) -> Result<f64, WireError> {
    let density = spreading.range("compost.bulk_density").typical;
    compost_volume_m3(catalogue, garden, text, field, density)
}
