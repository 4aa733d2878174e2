//! Does another solver share compost out the same way?
//!
//! The answers in `oracles/sharing` were recorded by Python with HiGHS (see its `README.md`), which
//! is not needed here. Aims are compared, not depths: several plans may be equally good.
#![allow(clippy::unwrap_used)]

use std::path::Path;

use heapwright_engine::spreading::sharing::{Plot, Sharing, share_out};
use serde_json::Value;

const GRAM: f64 = 1e-3;
const MILLIMETRE: f64 = 1e-3;

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap()
}

fn three(value: &Value) -> [f64; 3] {
    std::array::from_fn(|index| number(&value[index]))
}

fn sharing(case: &Value) -> Sharing {
    Sharing {
        plots: case["plots"]
            .as_array()
            .unwrap()
            .iter()
            .map(|plot| Plot {
                area_m2: number(&plot["area_m2"]),
                wanted_kg_m2: three(&plot["wanted_g_m2"]).map(|grams| grams * GRAM),
                phosphorus_room_kg_m2: number(&plot["phosphorus_room_g_m2"]) * GRAM,
                most_depth_m: number(&plot["most_mm"]) * MILLIMETRE,
            })
            .collect(),
        volume_m3: number(&case["volume_l"]) * 1e-3,
        // Grams a litre are kilograms a cubic metre.
        supplied_kg_m3: three(&case["supplied_g_l"]),
        phosphorus_kg_m3: number(&case["phosphorus_g_l"]),
        unit_kg_m2: three(&case["unit_g_m2"]).map(|grams| grams * GRAM),
    }
}

/// Aims that are held may slip by 1e-9 on either side; what follows from them by so much more.
const FIRST_AIM: f64 = 1e-7;
const LATER_AIMS: f64 = 1e-5;

#[test]
fn oracle_sharing() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../oracles/sharing/answers.json");
    let recorded: Value = serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap();
    let cases = recorded["cases"].as_array().unwrap();
    assert!(cases.len() >= 200, "{} cases", cases.len());
    let mut faults = Vec::new();
    for case in cases {
        let question = sharing(case);
        let found = share_out(&question);
        let wanted = &case["answer"];
        let mut check = |what: &str, found: f64, wanted: f64, tolerance: f64| {
            let off = (found - wanted).abs();
            if off.is_nan() || off > tolerance * wanted.abs().max(1.0) {
                faults.push(format!("{} {what}: {found} is not {wanted}", case["id"]));
            }
        };
        if !found.proven {
            check("proven", 0.0, 1.0, 0.0);
        }
        check("unmet", found.unmet, number(&wanted["unmet"]), FIRST_AIM);
        check(
            "surplus",
            found.surplus_phosphorus_kg / GRAM,
            number(&wanted["surplus_phosphorus_g"]),
            LATER_AIMS,
        );
        for (bed, served) in found.served.iter().enumerate() {
            check(
                &format!("served {bed}"),
                *served,
                number(&wanted["served"][bed]),
                LATER_AIMS,
            );
        }
        check(
            "used",
            (question.volume_m3 - found.left_m3) * 1e3,
            number(&wanted["used_l"]),
            LATER_AIMS,
        );
    }
    assert!(
        faults.is_empty(),
        "{} faults\n{}",
        faults.len(),
        faults.join("\n")
    );
}
