//! `heapwright test`: compost was tested, at home or in a laboratory.

use std::io::Write;

use heapwright_journal::content::{BagTest, GerminationTest, Laboratory, SelfHeatingTest, Tested};
use heapwright_wire::{chosen, temperature_c};

use crate::arguments::{LaboratoryArguments, TestArguments};
use crate::failure::Failure;
use crate::keeping::Keeping;
use crate::naming;
use crate::telling::record_and_tell;

/// Runs the command.
pub fn run(arguments: &TestArguments, out: &mut impl Write) -> Result<(), Failure> {
    let mut keeping = Keeping::to_write(&arguments.record.journal)?;
    let locale = keeping.locale();
    let laboratory = laboratory(&arguments.laboratory);
    let self_heating = match (&arguments.heated_to, &arguments.room) {
        (Some(highest), Some(room)) => Some(SelfHeatingTest {
            highest_c: temperature_c(highest, locale.units, "--heated-to")?,
            room_c: temperature_c(room, locale.units, "--room")?,
        }),
        _ => None,
    };
    let tested = Tested {
        heap: keeping.heap(arguments.heap.as_deref())?,
        laboratory: (laboratory != Laboratory::default()).then(|| Box::new(laboratory)),
        self_heating,
        germination: germination(arguments),
        bag: bag(arguments)?,
    };
    let nothing = tested.laboratory.is_none()
        && tested.self_heating.is_none()
        && tested.germination.is_none()
        && tested.bag.is_none();
    if nothing {
        return Err(Failure::Input(
            "say what was tested: give --bag-days, --heated-to, --sown or figures of a laboratory"
                .to_owned(),
        ));
    }
    record_and_tell(&mut keeping, &arguments.record, vec![tested.into()], out)
}

fn germination(arguments: &TestArguments) -> Option<GerminationTest> {
    Some(GerminationTest {
        sown: arguments.sown?,
        sprouted: arguments.sprouted?,
        control_sown: arguments.control_sown?,
        control_sprouted: arguments.control_sprouted?,
        root_mm: arguments.root_mm,
        control_root_mm: arguments.control_root_mm,
    })
}

fn bag(arguments: &TestArguments) -> Result<Option<BagTest>, Failure> {
    let (Some(days), Some(swollen)) = (arguments.bag_days, &arguments.swollen) else {
        return Ok(None);
    };
    let swollen = match swollen.to_lowercase().as_str() {
        "yes" => true,
        "no" => false,
        _ => {
            return Err(Failure::Input(format!(
                "--swollen: \"{}\" is neither yes nor no",
                naming::shown(swollen)
            )));
        }
    };
    Ok(Some(BagTest {
        days,
        swollen,
        smell: arguments
            .bag_smell
            .as_deref()
            .map(|text| chosen(text, "--bag-smell"))
            .transpose()?,
    }))
}

fn laboratory(arguments: &LaboratoryArguments) -> Laboratory {
    Laboratory {
        moisture_pct: arguments.moisture,
        carbon_pct_dry: arguments.carbon,
        nitrogen_pct_dry: arguments.nitrogen,
        cn_ratio_measured: arguments.cn,
        ash_pct_dry: arguments.ash,
        phosphorus_pct_dry: arguments.phosphorus,
        potassium_pct_dry: arguments.potassium,
        calcium_pct_dry: arguments.calcium,
        magnesium_pct_dry: arguments.magnesium,
        sodium_pct_dry: arguments.sodium,
        ph: arguments.ph,
        conductivity_ds_m: arguments.conductivity,
        ammonium_nitrogen_mg_kg_dry: arguments.ammonium,
        nitrate_nitrogen_mg_kg_dry: arguments.nitrate,
        carbon_dioxide_mg_g_d: arguments.carbon_dioxide,
    }
}
