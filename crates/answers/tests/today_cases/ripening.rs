//! Left to ripen, tested, taken out.

use super::*;

#[test]
fn a_heap_that_is_fed_no_more_is_left_to_ripen_then_tested_then_taken_out() {
    let mut case = Case::fed(60.0);
    case.core(2.0, 25.0);
    let need = case.need(Kind::LetRipen);
    assert!(need.entry.is_some());
    case.rest(1.5);
    let kinds = case.kinds();
    assert!(
        !kinds.contains(&Kind::LetRipen) && !kinds.contains(&Kind::Test),
        "{kinds:?}"
    );
    assert!(kinds.contains(&Kind::Cover));
    let dates = case.asked().dates;
    let test = dates.iter().find(|date| date.kind == Kind::Test).unwrap();
    assert_eq!(test.on.day().to_string(), "2026-07-05");

    let mut case = Case::fed(90.0);
    case.rest(30.0);
    assert!(case.kinds().contains(&Kind::Test));
    let heap = case.heap;
    case.write(
        3.0,
        Tested {
            heap,
            laboratory: None,
            self_heating: None,
            germination: Some(GerminationTest {
                sown: 30,
                sprouted: 29,
                control_sown: 30,
                control_sprouted: 29,
                root_mm: Some(33.0),
                control_root_mm: Some(34.0),
            }),
            bag: Some(BagTest {
                days: 7.0,
                swollen: false,
                smell: Some(Smell::Earthy),
            }),
        },
    );
    let kinds = case.kinds();
    assert!(
        kinds.contains(&Kind::Harvest) && !kinds.contains(&Kind::Test),
        "{kinds:?}"
    );
    // How much is taken out is said by whoever takes it out.
    assert!(case.need(Kind::Harvest).entry.is_none());
}

#[test]
fn what_must_be_seen_to_before_use_comes_with_the_harvest() {
    let mut case = Case::new(120.0, 1.0);
    case.feed(
        120.0,
        vec![
            part("chicken_layer", 5.0, "kg"),
            part("straw_wheat", 9.0, "kg"),
        ],
        Some(9.0),
    );
    case.rest(40.0);
    let heap = case.heap;
    case.write(
        3.0,
        Tested {
            heap,
            laboratory: None,
            self_heating: None,
            germination: Some(GerminationTest {
                sown: 30,
                sprouted: 29,
                control_sown: 30,
                control_sprouted: 29,
                root_mm: Some(33.0),
                control_root_mm: Some(34.0),
            }),
            bag: Some(BagTest {
                days: 7.0,
                swollen: false,
                smell: Some(Smell::Earthy),
            }),
        },
    );
    let need = case.need(Kind::Harvest);
    assert!(
        matches!(&need.what, What::Harvest { before_use }
            if before_use.iter().any(|one| one.material.as_str() == "chicken_layer")),
        "{need:#?}"
    );
}
