//! What can hurt comes with whatever opens or touches a heap.

use super::*;

#[test]
fn fire_is_warned_of_with_all_that_is_done_at_a_heap_that_was_too_hot() {
    let mut case = Case::new(20.0, 1.0);
    case.put_by("dry_leaves_mixed", 30.0);
    case.feed(2.0, vec![part("grass_clippings_fresh", 20.0, "kg")], None);
    case.core(0.5, 72.0);
    case.look(0.4, |read| read.creatures.push(Creature::Rats));
    let needs = case.asked().needs;
    let of_heap: Vec<&Need> = needs.iter().filter(|need| need.heap.is_some()).collect();
    assert!(of_heap.len() >= 3, "{of_heap:#?}");
    for need in of_heap {
        assert!(need.cautions.contains(&Caution::Fire), "{need:#?}");
    }
}

#[test]
fn what_opens_or_touches_a_heap_says_what_can_hurt() {
    // Rats of three weeks ago, turned since: it is looked at.
    let mut case = Case::fed(29.0);
    case.look(21.0, |read| read.creatures.push(Creature::Rats));
    case.turn(20.0);
    assert!(case.need(Kind::Look).cautions.contains(&Caution::Animals));
    // Ripening, mouldy, and rats: tested and covered.
    let mut case = Case::fed(90.0);
    case.rest(30.0);
    case.look(2.0, |read| {
        read.creatures.push(Creature::Rats);
        read.looks.push(Look::Mould);
    });
    for kind in [Kind::Test, Kind::Cover] {
        let cautions = case.need(kind).cautions;
        assert!(
            cautions.contains(&Caution::Animals) && cautions.contains(&Caution::MouldDust),
            "{kind:?} {cautions:?}"
        );
    }
    // Ammonia in a hot heap: browns are mixed in with care.
    let mut case = Case::fed(5.0);
    case.core(0.6, 62.0);
    case.look(0.5, |read| {
        read.smells.push(Smell::Ammonia);
        read.creatures.push(Creature::Mice);
    });
    let cautions = case.need(Kind::AddBrowns).cautions;
    for caution in [
        Caution::Steam,
        Caution::Animals,
        Caution::Fumes,
        Caution::Lifting,
    ] {
        assert!(cautions.contains(&caution), "{caution:?} in {cautions:?}");
    }
    // A foul heap that is too hot is opened, not turned besides: the gases are the same.
    let mut case = Case::fed(5.0);
    case.core(0.6, 73.0);
    case.look(0.5, |read| read.smells.push(Smell::Rotten));
    assert!(!case.kinds().contains(&Kind::Turn));
    assert!(case.need(Kind::CoolDown).cautions.contains(&Caution::Fumes));
    // Greens for what is too brown, where threads of mould were seen; browns laid on dust.
    let mut case = Case::new(5.0, 1.0);
    case.feed(5.0, vec![part("straw_wheat", 9.0, "kg")], Some(14.0));
    case.look(0.5, |read| read.looks.push(Look::WhiteThreads));
    let cautions = case.need(Kind::AddGreens).cautions;
    assert!(cautions.contains(&Caution::MouldDust), "{cautions:?}");
    let mut case = Case::fed(9.0);
    case.put_by("dry_leaves_mixed", 20.0);
    case.look(1.0, |read| {
        read.creatures.push(Creature::FruitFlies);
        read.squeeze = Some(Squeeze::Dusty);
    });
    let cautions = case.need(Kind::CoverWithBrowns).cautions;
    assert!(cautions.contains(&Caution::MouldDust), "{cautions:?}");
}

#[test]
fn a_heap_that_is_wet_is_not_to_be_kept_moist_for_the_sake_of_animals() {
    let is_wet = |case: &Case| match case.need(Kind::KeepAnimalsOut).what {
        What::KeepAnimalsOut { is_wet } => is_wet,
        other => panic!("{other:?}"),
    };
    for (squeeze, wet) in [
        (None, false),
        (Some(Squeeze::Dry), false),
        (Some(Squeeze::Moist), false),
        (Some(Squeeze::Wet), true),
        (Some(Squeeze::Dripping), true),
    ] {
        let mut case = Case::fed(9.0);
        case.look(0.1, |read| {
            read.squeeze = squeeze;
            read.creatures.push(Creature::Rats);
        });
        assert_eq!(is_wet(&case), wet, "{squeeze:?}");
    }
    // No hand was there, but what was fed is too wet by its figures.
    let mut case = Case::new(20.0, 1.0);
    case.feed(2.0, vec![part("grass_clippings_fresh", 20.0, "kg")], None);
    case.look(0.4, |read| read.creatures.push(Creature::Rats));
    let browns = case.need(Kind::AddBrowns).because;
    let too_wet = |because: &Because| matches!(because, Because::FedTooWet { .. });
    assert!(browns.iter().any(too_wet), "{browns:?}");
    assert!(is_wet(&case));
}
