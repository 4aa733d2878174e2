//! How much water is asked for, and when more.

use super::*;

#[test]
fn a_dry_feed_gets_the_water_that_makes_it_moist() {
    let mut case = Case::new(3.0, 1.0);
    case.feed(2.0, vec![part("hay_legume", 10.0, "kg")], None);
    let need = case.need(Kind::Water);
    let What::Water { water_l, .. } = need.what else {
        panic!("{need:#?}")
    };
    // 10 kg of hay with 12 % water or so: (0.55 x 10 - 1.2) / 0.45 litres.
    assert!((8.0..11.0).contains(&water_l), "{water_l}");
    let need = case.need(Kind::Water);
    assert!(matches!(need.entry, Some(Content::Watered(watered)) if watered.water_l == water_l));
    // A hand that feels it moist knows better.
    case.look(1.0, |read| read.squeeze = Some(Squeeze::Moist));
    assert!(!case.kinds().contains(&Kind::Water));
    case.look(0.5, |read| read.squeeze = Some(Squeeze::Dusty));
    assert!(case.kinds().contains(&Kind::Water));
}

fn watering(need: &Need) -> (f64, f64) {
    match need.what {
        What::Water { water_l, lacking_l } => (water_l, lacking_l),
        _ => panic!("{need:#?}"),
    }
}

#[test]
fn no_more_is_poured_at_once_than_soaks_in_and_the_rest_another_day() {
    // By its figures: 200 kg of hay lack much more than a can.
    let mut case = Case::new(9.0, 1.0);
    case.feed(2.0, vec![part("hay_legume", 200.0, "kg")], None);
    let need = case.need(Kind::Water);
    let (water_l, lacking_l) = watering(&need);
    assert!(
        water_l == 20.0 && lacking_l > 150.0,
        "{water_l} {lacking_l}"
    );
    assert!(matches!(&need.entry, Some(Content::Watered(watered)) if watered.water_l == 20.0));
    case.water(0.5, 20.0);
    assert!(!case.kinds().contains(&Kind::Water));
    let dates = case.asked().dates;
    let more = dates.iter().find(|date| date.kind == Kind::Water).unwrap();
    assert_eq!(more.on.day().to_string(), "2026-06-16");
    let mut case = Case::new(9.0, 1.0);
    case.feed(3.0, vec![part("hay_legume", 200.0, "kg")], None);
    case.water(1.5, 20.0);
    let (water_l, less_l) = watering(&case.need(Kind::Water));
    assert!(water_l == 20.0 && less_l < lacking_l, "{less_l}");

    // By hand: it is felt again once the water has soaked in.
    let felt = |poured: Option<(f64, f64)>| {
        let mut case = Case::new(9.0, 1.0);
        case.feed(
            9.0,
            vec![
                part("grass_clippings_fresh", 160.0, "kg"),
                part("dry_leaves_mixed", 180.0, "kg"),
            ],
            Some(80.0),
        );
        case.look(2.0, |read| read.squeeze = Some(Squeeze::Dusty));
        if let Some((days, water_l)) = poured {
            case.water(days, water_l);
        }
        case
    };
    let (water_l, lacking_l) = watering(&felt(None).need(Kind::Water));
    assert!(water_l == 20.0 && lacking_l > 60.0, "{water_l} {lacking_l}");
    let case = felt(Some((0.5, 20.0)));
    assert!(case.kinds().is_empty(), "{:?}", case.kinds());
    let again = case.asked().quiet[0].again.unwrap();
    assert_eq!(again.to_string(), "2026-06-16");
    let need = felt(Some((1.2, 20.0))).need(Kind::Look);
    assert!(
        matches!(
            need.because[0],
            Because::Squeeze {
                squeeze: Squeeze::Dusty,
                ..
            }
        ),
        "{need:#?}"
    );
    // All of it was poured: nothing more is asked.
    let case = felt(Some((1.2, lacking_l)));
    assert!(case.kinds().is_empty(), "{:?}", case.kinds());
}

#[test]
fn a_dry_handful_asks_for_no_water_where_a_recipe_brings_some() {
    let mut case = Case::new(9.0, 1.0);
    case.put_by("straw_wheat", 60.0);
    case.feed(3.0, vec![part("chicken_layer", 20.0, "kg")], None);
    case.look(1.0, |read| {
        read.squeeze = Some(Squeeze::Dry);
        read.smells.push(Smell::Ammonia);
    });
    let need = case.need(Kind::AddBrowns);
    assert!(
        matches!(&need.entry, Some(Content::Fed(fed)) if fed.water_l.is_some_and(|water_l| water_l > 0.0)),
        "{need:#?}"
    );
    assert!(!case.kinds().contains(&Kind::Water));
}
