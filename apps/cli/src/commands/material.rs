//! `heapwright material`: materials of the garden's own, and what was measured of materials.

use std::io::Write;

use heapwright_garden::{Given, Observed, OwnMaterial};
use heapwright_journal::AmountSaid;
use heapwright_journal::content::{
    DriedSample, Figure, Laboratory, MaterialDefined, MaterialMeasured, WeighedMeasure,
};
use heapwright_wire::{mass_kg, spoken_amount, spoken_material};

use crate::arguments::{MaterialCommand, MaterialDefineArguments, MaterialMeasureArguments};
use crate::failure::Failure;
use crate::keeping::{Keeping, catalogue};
use crate::naming;
use crate::telling::record_and_tell;

/// Runs the command.
pub fn run(command: &MaterialCommand, out: &mut impl Write) -> Result<(), Failure> {
    match command {
        MaterialCommand::Define(arguments) => define(arguments, out),
        MaterialCommand::Measure(arguments) => measure(arguments, out),
    }
}

fn define(arguments: &MaterialDefineArguments, out: &mut impl Write) -> Result<(), Failure> {
    let mut keeping = Keeping::to_write(&arguments.record.journal)?;
    let garden = keeping.garden();
    let (like, _) = spoken_material(catalogue(), &garden, &arguments.like, "--like")?;
    let id = match &arguments.id {
        Some(id) => id.clone(),
        None => id_from(&arguments.name).ok_or_else(|| {
            Failure::Input(format!(
                "no id can be made from \"{}\": give one with --id",
                naming::shown(&arguments.name)
            ))
        })?,
    };
    let defined = MaterialDefined {
        material: id,
        name: arguments.name.trim().to_owned(),
        like: like.as_str().to_owned(),
        moisture_pct: figure(arguments.moisture.as_deref(), "--moisture")?,
        nitrogen_pct_dry: figure(arguments.nitrogen.as_deref(), "--nitrogen")?,
        cn_ratio_measured: figure(arguments.cn.as_deref(), "--cn")?,
        bulk_density_kg_m3: figure(arguments.density.as_deref(), "--density")?,
    };
    let given = |figure: Option<Figure>| {
        figure.map(|figure| match figure {
            Figure::One(value) => Given::One(value),
            Figure::Three(values) => Given::Three(values),
        })
    };
    // What the catalogue cannot use is refused here, for it would be left out ever after.
    OwnMaterial {
        id: defined.material.clone(),
        name: defined.name.clone(),
        like,
        moisture_pct: given(defined.moisture_pct),
        nitrogen_pct_dry: given(defined.nitrogen_pct_dry),
        cn_ratio_measured: given(defined.cn_ratio_measured),
        bulk_density_kg_m3: given(defined.bulk_density_kg_m3),
    }
    .material(catalogue())
    .map_err(|fault| Failure::Input(format!("{}: {}", fault.field, fault.what)))?;
    record_and_tell(&mut keeping, &arguments.record, vec![defined.into()], out)
}

/// "Our leaves" is `our_leaves`; `None` when nothing is left.
fn id_from(name: &str) -> Option<String> {
    let id: String = name
        .to_lowercase()
        .chars()
        .map(|c| {
            if c.is_ascii_lowercase() || c.is_ascii_digit() {
                c
            } else {
                '_'
            }
        })
        .collect();
    let id = id.trim_matches('_').chars().take(60).collect::<String>();
    (id.chars().filter(char::is_ascii_alphanumeric).count() > 1).then_some(id)
}

/// One number, or low, typical and high.
fn figure(text: Option<&str>, option: &str) -> Result<Option<Figure>, Failure> {
    let Some(text) = text else { return Ok(None) };
    let numbers = text
        .split([',', ';', ' '])
        .filter(|part| !part.trim().is_empty())
        .map(|part| part.trim().parse::<f64>().ok().filter(|n| n.is_finite()))
        .collect::<Option<Vec<f64>>>();
    match numbers.as_deref() {
        Some([one]) => Ok(Some(Figure::One(*one))),
        Some([low, typical, high]) if low <= typical && typical <= high => {
            Ok(Some(Figure::Three([*low, *typical, *high])))
        }
        _ => Err(Failure::Input(format!(
            "{option}: \"{}\" is neither one number nor low,typical,high, such as 30,40,55",
            naming::shown(text)
        ))),
    }
}

fn measure(arguments: &MaterialMeasureArguments, out: &mut impl Write) -> Result<(), Failure> {
    let mut keeping = Keeping::to_write(&arguments.record.journal)?;
    let garden = keeping.garden();
    let (material, _) = spoken_material(catalogue(), &garden, &arguments.material, "MATERIAL")?;
    let weight = |text: &str, option: &str| mass_kg(catalogue(), text, option);
    let dried_sample = match (&arguments.wet, &arguments.dried) {
        (Some(wet), Some(dried)) => Some(DriedSample {
            wet_kg: weight(wet, "--wet")?,
            dry_kg: weight(dried, "--dried")?,
        }),
        _ => None,
    };
    let weighed_measure = match (&arguments.vessel, &arguments.full, &arguments.empty) {
        (Some(vessel), Some(full), Some(empty)) => Some(WeighedMeasure {
            measure: AmountSaid::from(&spoken_amount(catalogue(), vessel, "--vessel")?),
            full_kg: weight(full, "--full")?,
            empty_kg: weight(empty, "--empty")?,
        }),
        _ => None,
    };
    let laboratory = Laboratory {
        moisture_pct: arguments.moisture,
        nitrogen_pct_dry: arguments.nitrogen,
        cn_ratio_measured: arguments.cn,
        ..Laboratory::default()
    };
    let laboratory = (laboratory != Laboratory::default()).then(|| Box::new(laboratory));
    if dried_sample.is_none() && weighed_measure.is_none() && laboratory.is_none() {
        return Err(Failure::Input(
            "say what was measured: give --wet and --dried, --vessel with --full and --empty, or figures of a laboratory".to_owned(),
        ));
    }
    let possible = [
        dried_sample.map(|sample| Observed::DriedSample {
            wet_kg: sample.wet_kg,
            dry_kg: sample.dry_kg,
        }),
        weighed_measure
            .as_ref()
            .map(|weighed| Observed::WeighedMeasure {
                full_kg: weighed.full_kg,
                empty_kg: weighed.empty_kg,
                volume_m3: 1.0,
            }),
        arguments
            .moisture
            .map(|pct| Observed::MoistureWetBasis(pct / 100.0)),
        arguments
            .nitrogen
            .map(|pct| Observed::NitrogenDryBasis(pct / 100.0)),
        arguments.cn.map(Observed::CarbonToNitrogenMeasured),
    ];
    if possible
        .iter()
        .flatten()
        .any(|observed| !observed.is_possible())
    {
        return Err(Failure::Input(
            "these figures cannot be: a dried sample weighs no more than a wet one, a full vessel more than an empty one".to_owned(),
        ));
    }
    let measured = MaterialMeasured {
        material: material.as_str().to_owned(),
        laboratory,
        dried_sample,
        weighed_measure,
    };
    record_and_tell(&mut keeping, &arguments.record, vec![measured.into()], out)
}
