//! Section E, the rest of section F, and the check values of using compost: depths, rates, salt, waiting.

use heapwright_answers::spreading::{Compost, Later, Rules};
use heapwright_answers::{
    NitrogenQuestion, Oxide, compost_of_tables, covered, nitrogen_over_years, rules, weighed,
};
use heapwright_catalogue::Spreading;
use heapwright_checks::published;
use heapwright_engine::spreading::{cover, nitrogen, salt};
use heapwright_quantity::{MassUnit, Range, VolumeUnit};
use heapwright_terms::SaltTolerance;
use heapwright_wire::{area_m2, length_m};

const POUND_KG: f64 = MassUnit::Pound.kilograms();

fn spreading() -> &'static Spreading {
    Spreading::built_in()
}

fn of_tables() -> Rules {
    rules(spreading())
}

fn area(text: &str) -> f64 {
    area_m2(text, "area").unwrap()
}

fn length(text: &str) -> f64 {
    length_m(text, "depth").unwrap()
}

fn cubic_yards(volume_m3: f64) -> f64 {
    volume_m3 / VolumeUnit::CubicYard.cubic_metres()
}

fn cubic_feet(volume_m3: f64) -> f64 {
    cubic_yards(volume_m3) * 27.0
}

/// The volume of a layer [m3].
fn layer(on: &str, depth: &str) -> f64 {
    covered(Some(area(on)), Some(length(depth)), None)
        .unwrap()
        .volume_m3
}

/// The area that a cubic yard covers [sq ft].
fn covers(depth_m: f64) -> f64 {
    let yard = VolumeUnit::CubicYard.cubic_metres();
    let found = covered(None, Some(depth_m), Some(yard)).unwrap();
    found.area_m2 / area("1 sq ft")
}

#[test]
fn check_us01() {
    published("US01.1").meets(Oxide::Phosphate.over_element());
    published("US01.2").meets(Oxide::Potash.over_element());
}

#[test]
fn check_us02() {
    published("US02").meets(0.59 * Oxide::Phosphate.over_element());
}

#[test]
fn check_us03() {
    published("US03.1").meets(0.6 * Oxide::Phosphate.over_element());
    published("US03.2").meets(2.5 * Oxide::Potash.over_element());
}

#[test]
fn check_us04() {
    published("US04").meets(cover::dry_matter_left_kg(100.0, 0.12, 0.40).unwrap());
}

#[test]
fn check_us05() {
    let mass_kg = 30.0 / (1.0 - 0.5);
    published("US05.1").meets(mass_kg);
    let found = weighed(Some(mass_kg), None, Range::exact(600.0)).unwrap();
    published("US05.2").meets(found.volume_m3.value * 1000.0);
}

#[test]
fn check_us06() {
    let volume = layer("100 sq ft", "1 in");
    published("US06.1").meets(volume * 1000.0);
    published("US06.2").meets(cubic_yards(volume));
}

#[test]
fn check_us07() {
    published("US07").meets(covers(length("1 in")));
}

#[test]
fn check_us08() {
    published("US08").meets(cubic_yards(layer("1000 sq ft", "0.25 in")));
}

/// Depth of four cubic yards on a thousand square feet [m].
fn four_yards_m() -> f64 {
    let volume = 4.0 * VolumeUnit::CubicYard.cubic_metres();
    covered(Some(area("1000 sq ft")), None, Some(volume))
        .unwrap()
        .depth_m
}

#[test]
fn check_us09() {
    published("US09").meets(four_yards_m() * 1000.0);
}

/// The compost of US-10: 0.60 kg/L, 55 % dry matter.
fn default_compost() -> Compost {
    Compost {
        moisture_wet_basis: Range::exact(0.45),
        bulk_density_kg_m3: Range::exact(600.0),
        nitrogen_dry_basis: Range::exact(0.015),
        phosphorus_dry_basis: Range::exact(0.004),
        potassium_dry_basis: Range::exact(0.010),
        ..compost_of_tables(spreading()).compost
    }
}

#[test]
fn check_us10() {
    let inch = length("1 in");
    let brought = default_compost().typical(&of_tables());
    published("US10.1").meets(brought.nitrogen * inch * 1000.0);
    published("US10.2").meets(brought.phosphorus * inch * 1000.0);
    published("US10.3").meets(brought.potassium * inch * 1000.0);
}

#[test]
fn check_us11() {
    // Ten percent is what the tables hold for compost that was never analysed.
    let brought = default_compost().typical(&of_tables());
    published("US11").meets(brought.nitrogen_first_year * length("1 in") * 1000.0);
}

/// Yearly depth of 20 t of dry matter a hectare in three years [m].
fn german_m() -> f64 {
    cover::depth_of_dry_matter_m(20_000.0 / area("1 ha") / 3.0, 650.0, 0.4)
}

#[test]
fn check_us12() {
    published("US12").meets(german_m() * 1000.0);
}

#[test]
fn check_us13() {
    published("US13").meets(length("1 in") / german_m());
}

#[test]
fn check_us14() {
    // Per tonne fresh, so that any moisture will do when the shares of dry matter follow it.
    let dry = 0.6;
    let compost = Compost {
        moisture_wet_basis: Range::exact(1.0 - dry),
        bulk_density_kg_m3: Range::exact(650.0),
        nitrogen_dry_basis: Range::exact(0.0075 / dry),
        phosphorus_dry_basis: Range::exact(0.0032 / Oxide::Phosphate.over_element() / dry),
        potassium_dry_basis: Range::exact(0.0063 / Oxide::Potash.over_element() / dry),
        ..default_compost()
    };
    let brought = compost.typical(&of_tables());
    let ten_mm = 0.010 * 1000.0;
    published("US14.1").meets(brought.nitrogen * ten_mm);
    published("US14.2").meets(brought.phosphorus * ten_mm * Oxide::Phosphate.over_element());
    published("US14.3").meets(brought.potassium * ten_mm * Oxide::Potash.over_element());
}

/// Shares of all nitrogen, year by year [%].
fn over_years(first: f64, later: Later, years: u32) -> Vec<f64> {
    let question = NitrogenQuestion {
        compost: default_compost(),
        volume_m3: 1.0,
        years,
        first_year: Some(first),
        later: Some(later),
    };
    let found = nitrogen_over_years(spreading(), &question).unwrap();
    found.shares.iter().map(|share| share * 100.0).collect()
}

#[test]
fn check_us15() {
    let shares = over_years(0.10, Later::OfRemaining(0.05), 5);
    published("US15.1").meets(shares[2]);
    published("US15.2").meets(shares.iter().sum());
}

#[test]
fn check_us16() {
    let shares = over_years(0.05, Later::OfRemaining(0.02), 5);
    published("US16").meets(shares.iter().sum());
}

/// What the table has for a harvest, as labels count it [kg/t].
fn removed(crop: &str) -> [f64; 3] {
    let removal = spreading().crop(crop).unwrap().removal.unwrap();
    [
        removal.nitrogen * 1000.0,
        removal.phosphorus * 1000.0 * Oxide::Phosphate.over_element(),
        removal.potassium * 1000.0 * Oxide::Potash.over_element(),
    ]
}

#[test]
fn check_us17() {
    let [nitrogen, phosphate, potash] = removed("cabbage");
    published("US17.1").meets(nitrogen);
    published("US17.2").meets(phosphate);
    published("US17.3").meets(potash);
}

#[test]
fn check_us18() {
    let [nitrogen, phosphate, potash] = removed("carrots");
    published("US18.1").meets(nitrogen);
    published("US18.2").meets(phosphate);
    published("US18.3").meets(potash);
}

#[test]
fn check_us19() {
    let grams = |pounds: f64| pounds * POUND_KG * 1000.0 / area("1000 sq ft");
    published("US19.1").meets(grams(2.0));
    published("US19.2").meets(grams(2.5));
}

#[test]
fn check_us20() {
    published("US20").meets(125.0 * POUND_KG / area("1 acre") * area("1 ha"));
}

fn bears(crop: &str) -> SaltTolerance {
    spreading().crop(crop).unwrap().salt.unwrap()
}

fn yield_pct(crop: &str, conductivity_ds_m: f64) -> f64 {
    salt::yield_share(bears(crop), conductivity_ds_m) * 100.0
}

#[test]
fn check_us21() {
    published("US21.1").meets(yield_pct("bean", 2.0));
    published("US21.2").meets(yield_pct("bean", 4.0));
}

#[test]
fn check_us22() {
    published("US22.1").meets(yield_pct("tomato", 2.0));
    published("US22.2").meets(yield_pct("tomato", 4.0));
}

#[test]
fn check_us23() {
    published("US23").meets(salt::conductivity_at_loss_ds_m(bears("carrot"), 0.10));
}

#[test]
fn check_us24() {
    published("US24").meets(yield_pct("beetroot", 4.0));
}

#[test]
fn check_us36() {
    let yard = VolumeUnit::CubicYard.cubic_metres();
    published("US36.1").meets(250.0 * POUND_KG / yard);
    published("US36.2").meets(24.0 * POUND_KG / yard * 27.0);
}

#[test]
fn check_us37() {
    let gallon = VolumeUnit::UsGallon.cubic_metres();
    published("US37.1").meets(7.49 * POUND_KG / gallon);
    published("US37.2").meets(3.8 * POUND_KG / gallon);
}

#[test]
fn check_us38() {
    published("US38.1").meets(of_tables().waiting_touching_days);
    published("US38.2").meets(of_tables().waiting_clear_days);
}

#[test]
fn check_e1() {
    published("E1").meets(cubic_yards(layer("2000 sq ft", "0.25 in")));
}

#[test]
fn check_e2() {
    published("E2.1").meets(covers(length("1 in")));
    published("E2.2").meets(covers(length("2 in")));
    published("E2.3").meets(covers(length("3 in")));
}

#[test]
fn check_e3() {
    published("E3").meets(covers(length("1 in") / 3.0));
}

#[test]
fn check_e4() {
    published("E4").meets(covers(length("3 in")));
}

#[test]
fn check_e5() {
    published("E5").meets(area("27 ft x 12 ft") / area("1 sq ft"));
}

#[test]
fn check_e6() {
    published("E6.1").meets(cubic_yards(layer("1000 sq ft", "1 in")));
    published("E6.2").meets(cubic_yards(layer("1000 sq ft", "2 in")));
}

#[test]
fn check_e7() {
    published("E7").meets(four_yards_m() / length("1 in"));
}

#[test]
fn check_e8() {
    let bags = VolumeUnit::CubicYard.cubic_metres() / 0.040;
    published("E8.1").meets(bags);
    published("E8.2").meets(bags / 2.0);
}

#[test]
fn check_e9() {
    published("E9.1").meets(cubic_feet(layer("2 ft x 2 ft", "3 in")));
    published("E9.2").meets(cubic_feet(layer("1 ft x 2 ft", "6 in")));
    published("E9.3").meets(cubic_feet(layer("1 ft x 1 ft", "12 in")));
}

#[test]
fn check_e10() {
    published("E10.1").meets(cubic_feet(layer("4 ft x 8 ft", "8 in")));
    published("E10.2").meets(cubic_feet(layer("4 ft x 8 ft", "10 in")));
    published("E10.3").meets(cubic_feet(layer("4 ft x 8 ft", "12 in")));
}

#[test]
fn check_e11() {
    published("E11").meets(cubic_yards(layer("4 ft x 8 ft", "12 in")));
}

#[test]
fn check_e12() {
    published("E12").meets(cubic_feet(layer("48 in x 36 in", "18 in")));
}

#[test]
fn check_e13() {
    published("E13.1").meets(cover::share_when_worked_in(length("3 in"), length("5 in")) * 100.0);
    let thin = cover::share_when_worked_in(length("1.75 in"), length("6.25 in"));
    published("E13.2").meets(thin * 100.0);
}

#[test]
fn check_e14() {
    let soil_pct = |compost: &str, soil: &str| {
        100.0 * (1.0 - cover::share_when_worked_in(length(compost), length(soil)))
    };
    published("E14.1").meets(soil_pct("1 in", "4 in"));
    published("E14.2").meets(soil_pct("3 in", "15 in"));
}

#[test]
fn check_f5() {
    published("F5").meets(area("1 acre") / area("1 sq ft"));
}

#[test]
fn check_f10() {
    let pounds = over_years(0.125, Later::Halving, 50);
    published("F10.1").meets(pounds[0]);
    published("F10.2").meets(pounds[1]);
    published("F10.3").meets(pounds[2]);
    published("F10.4").meets(pounds.iter().sum());
}

/// F11: above 30 nitrogen is tied up, below 20 it is released (Clemson University, compost
/// interpretation). A sign, not a figure, so that it stands in no table.
#[test]
fn carbon_decides_whether_nitrogen_is_released_or_tied_up() {
    let marks = of_tables().organic_marks;
    for ratio in [10.0, 12.5, 15.0, 19.9] {
        assert!(nitrogen::organic_share(&marks, ratio) > 0.0, "{ratio}");
    }
    for ratio in [30.1, 35.0, 60.0] {
        assert!(nitrogen::organic_share(&marks, ratio) < 0.0, "{ratio}");
    }
}
