//! Bins behind the house: fed little by little, or filled at once with garden waste.

use heapwright_engine::heap::{Charge, Cover, Enclosure, Model, Run, Shape, Wall};

use crate::harness::{Row, above_zero, at_most, validation};
use crate::heap_cases::{
    built, chips, cube, grained, grass, household_mix, kitchen, leaves, run, together, wetted,
};
use crate::setup::{COARSE, bin, fed_every, mean_between, seasons};

pub fn rows() -> Vec<Row> {
    [
        fed_200_litres(),
        late_autumn(),
        kinds_of_bin(),
        single_family(),
        shares_of_garden_waste(),
    ]
    .concat()
}

/// 200 L bins of plastic with vents, 1.6 kg a day of scraps and dry leaves (C:N 26) until
/// full, taken as 50 days; then 120 days more.
fn fed_200_litres() -> Vec<Row> {
    let c4 = validation("C4", "Karnchanawong and Suriyanon 2011");
    let daily = together(&[kitchen(1.2), leaves(0.4)]);
    let enclosure = Enclosure {
        shape: Shape::Cylinder,
        wall: Wall::Plastic,
        cover: Cover::Lid,
        height_m: 0.7,
        ..cube(0.6)
    };
    let run = run(&fed_every(
        built(enclosure, 27.0, daily, 170.0),
        daily,
        1.0,
        50,
    ));
    let last = run.series.last().unwrap();
    vec![
        c4.row(
            "fed 200 L bin, air of 27 °C: peak of the core [°C]",
            "24 to 57",
            33.0..=60.0,
            run.summary.peak_core_temperature_c,
        ),
        c4.row(
            "fed 200 L bin: loss of wet mass [%]",
            "59 to 62",
            50.0..=68.0,
            run.summary.wet_mass_loss_pct,
        ),
        c4.row(
            "fed 200 L bin: C:N at the end",
            "14.8 to 16.0",
            12.0..=19.0,
            last.carbon_to_nitrogen,
        ),
    ]
}

/// Chipped garden waste, grained as its chips, grass and leaves are.
pub fn woody(cubic_metres: f64) -> Charge {
    let m = cubic_metres;
    let mut mixed = wetted(
        together(&[chips(130.0 * m), grass(70.0 * m), leaves(50.0 * m)]),
        0.50,
    );
    mixed.volume_m3 = m;
    mixed
}

fn late_autumn() -> Vec<Row> {
    let c5 = validation("C5", "trial heaps at a horticultural society's garden");
    let rise = |enclosure, volume| {
        run(&built(enclosure, 8.0, woody(volume), 60.0))
            .summary
            .peak_core_temperature_c
            - 8.0
    };
    vec![
        c5.row(
            "0.3 m³ of chipped garden waste, open, air of 8 °C: rise of the core [K]",
            "a few degrees",
            0.0..=12.0,
            rise(cube(0.67), 0.3),
        ),
        c5.row(
            "0.3 m³ in plastic: rise of the core [K]",
            "a few degrees",
            0.0..=12.0,
            rise(bin(0.67, Wall::Plastic, Cover::Lid), 0.3),
        ),
        c5.row(
            "0.75 m³ in wood: rise of the core [K]",
            "a few degrees",
            0.0..=12.0,
            rise(bin(0.91, Wall::Wood, Cover::None), 0.75),
        ),
    ]
}

/// 0.35 m3 of food and yard waste, built at once; air of 20 degrees is assumed.
fn kinds_of_bin() -> Vec<Row> {
    let c9 = validation("C9", "Adhikari and others 2013, and the part before");
    let heap = |enclosure: Enclosure, days: f64| {
        run(&built(enclosure, 20.0, household_mix(0.35), days)).summary
    };
    let plastic = bin(0.705, Wall::Plastic, Cover::Lid);
    let wood = bin(0.705, Wall::Slatted, Cover::None);
    let pile = Enclosure {
        shape: Shape::Cone,
        ..Enclosure::open_box(1.3, 1.3, 0.8)
    };
    let whole = [plastic, wood, pile].map(|enclosure| heap(enclosure, 150.0));
    let early = heap(plastic, 15.0);
    let twenty = heap(plastic, 20.0);
    let peak = whole.map(|s| s.peak_core_temperature_c);
    let dry = whole.map(|s| s.dry_mass_loss_pct);
    // Methane of the carbon lost between day 15 and the end.
    let methane = |s: &heapwright_engine::heap::Summary| {
        s.carbon_loss_pct * s.methane_share_of_carbon_loss_pct
    };
    let late =
        (methane(&whole[0]) - methane(&early)) / (whole[0].carbon_loss_pct - early.carbon_loss_pct);
    let nitrous_late =
        100.0 * (1.0 - twenty.nitrous_oxide_loss_pct / whole[0].nitrous_oxide_loss_pct);
    let spread =
        dry.iter().fold(f64::MIN, |a, b| a.max(*b)) - dry.iter().fold(f64::MAX, |a, b| a.min(*b));
    vec![
        c9.row(
            "core of the plastic bin less that of the slatted one [K]",
            "hotter",
            above_zero(),
            peak[0] - peak[1],
        ),
        c9.row(
            "core of the pile on the ground less that of the slatted bin [K]",
            "hotter",
            above_zero(),
            peak[2] - peak[1],
        ),
        c9.row(
            "spread of the loss of dry matter [points]",
            "alike",
            at_most(8.0),
            spread,
        ),
        c9.row(
            "methane of the carbon lost after day 15 [%]",
            "none measurable",
            at_most(1.0),
            late,
        )
        .that_sets(),
        c9.row(
            "nitrous oxide that leaves after day 20 [%]",
            "from day 20 to 120",
            50.0..=100.0,
            nitrous_late,
        ),
    ]
}

/// One family's bin: 3.5 kg twice a week, kitchen scraps with a little garden waste, for a
/// year. 300 L of plastic; air from 0 to 17 degrees, as in the sources' country.
fn fed_for_years(years: f64) -> Run {
    let half_week = grained(together(&[kitchen(2.5), grass(0.5), leaves(0.5)]), 0.6);
    let days = 365.0 * years;
    let mut case = built(bin(0.67, Wall::Plastic, Cover::Lid), 0.0, half_week, days);
    case.weather = seasons(8.5, 8.5, 0.0, 45.0, days);
    case.model = COARSE;
    run(&fed_every(case, half_week, 3.5, (days / 3.5) as u32))
}

/// Garden and kitchen waste in the open, where rain washes through.
fn open_to_rain(years: f64) -> Run {
    let half_week = grained(together(&[kitchen(2.5), grass(0.5), leaves(0.5)]), 0.6);
    let days = 365.0 * years;
    let mut case = built(bin(0.67, Wall::Plastic, Cover::None), 0.0, half_week, days);
    case.weather = seasons(8.5, 8.5, 700.0, 45.0, days);
    case.model = COARSE;
    run(&fed_every(case, half_week, 3.5, (days / 3.5) as u32))
}

fn single_family() -> Vec<Row> {
    let c26 = validation(
        "C26",
        "Andersen and others 2011; Smith and Jasim 2009, from memory",
    );
    let closed = fed_for_years(1.0);
    let open = open_to_rain(1.5);
    let rise = mean_between(&closed, 60.0, 365.0, |row| {
        row.core_temperature_c - row.air_temperature_c
    });
    let summer = crate::setup::most_between(&closed, 0.0, 365.0, |row| row.core_temperature_c);
    vec![
        c26.row(
            "fed family bin: mean rise of the core over the air [K]",
            "5 to 15",
            3.0..=15.0,
            rise,
        ),
        c26.row(
            "fed family bin: highest core in the year [°C]",
            "30 to 50",
            30.0..=50.0,
            summer,
        ),
        c26.row(
            "fed family bin, open to 700 mm of rain: nitrogen lost in 18 months [%]",
            "51 to 68",
            51.0..=68.0,
            open.summary.nitrogen_loss_pct,
        ),
    ]
}

/// 7 kg a week for 12 weeks, kitchen scraps and garden waste by mass; air of 18 degrees and
/// 200 L of plastic are assumed.
fn shares_of_garden_waste() -> Vec<Row> {
    let c27 = validation("C27", "Neugebauer and Solowiej 2017");
    let bin_of = |garden: f64| {
        let weekly = together(&[
            kitchen(7.0 * (1.0 - garden)),
            grass(2.5 * garden),
            leaves(2.5 * garden),
            chips(2.0 * garden),
        ]);
        let weekly = grained(weekly, 0.5 + garden);
        let mut case = built(bin(0.585, Wall::Plastic, Cover::Lid), 18.0, weekly, 110.0);
        case.model = Model::default();
        run(&fed_every(case, weekly, 7.0, 12)).summary
    };
    let bins = [0.0, 0.25, 0.5, 0.75, 1.0].map(bin_of);
    let peak = bins.map(|s| s.peak_core_temperature_c);
    let between = peak[1..4].iter().fold(f64::MIN, |a, b| a.max(*b));
    vec![
        c27.row(
            "hottest bin of mixed waste less the hotter of pure ones [K]",
            "hottest with half garden waste",
            above_zero(),
            between - peak[0].max(peak[4]),
        ),
        c27.row(
            "ammonia lost without garden waste less that with half [% of nitrogen]",
            "most without",
            above_zero(),
            bins[0].ammonia_loss_pct - bins[2].ammonia_loss_pct,
        ),
    ]
}
