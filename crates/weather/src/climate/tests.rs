//! Do climates keep what was stated, and stay within what can be?

use jiff::civil::date;

use super::*;
use crate::place::Setting;
use crate::series::midnight_ms;

const BERLIN: Place = Place {
    latitude_deg: 52.5,
    longitude_deg: 13.4,
    elevation_m: 40.0,
    setting: Setting::Between,
};

fn extremes(climate: &Climate) -> (f64, f64) {
    let means = climate.months().map(|month| month.mean_c);
    (
        means.iter().copied().fold(f64::MAX, f64::min),
        means.iter().copied().fold(f64::MIN, f64::max),
    )
}

#[test]
fn the_stated_months_are_kept() {
    let climate = |overrides| Climate::new(BERLIN, &overrides).unwrap();
    let guess = climate(Overrides::default());
    assert!(guess.is_rough());
    let both = climate(Overrides {
        coldest_month_c: Some(1.2),
        warmest_month_c: Some(19.8),
        ..Overrides::default()
    });
    assert!(!both.is_rough());
    let (least, most) = extremes(&both);
    assert!((least - 1.2).abs() < 1e-12 && (most - 19.8).abs() < 1e-12);

    let one = climate(Overrides {
        coldest_month_c: Some(1.2),
        ..Overrides::default()
    });
    assert!(one.is_rough());
    let (coldest, warmest) = extremes(&guess);
    let (least, most) = extremes(&one);
    assert!((least - 1.2).abs() < 1e-12);
    assert!((most - least - (warmest - coldest)).abs() < 1e-12);
}

#[test]
fn the_days_of_a_month_have_its_mean_and_its_rain() {
    let months_c = [
        1.2, 2.0, 5.0, 9.8, 14.5, 17.8, 19.8, 19.4, 15.1, 10.2, 5.4, 2.3,
    ];
    let rain_mm = [
        45.0, 33.0, 39.0, 33.0, 0.0, 58.0, 75.0, 300.0, 2.0, 40.0, 45.0, 50.0,
    ];
    let climate = Climate::new(
        BERLIN,
        &Overrides {
            months_c: Some(months_c),
            rain_mm: Some(rain_mm),
            ..Overrides::default()
        },
    )
    .unwrap();
    for year in [2023, 2024] {
        for month in 1..=12 {
            let first = date(year, month, 1);
            let days: Vec<WeatherDay> = (0..i64::from(first.days_in_month()))
                .map(|day| climate.day(later(first, day).unwrap()))
                .collect();
            let index = usize::try_from(month - 1).unwrap();
            let count = f64::from(first.days_in_month());
            let mean = days
                .iter()
                .map(|day| (day.minimum_c + day.maximum_c) / 2.0)
                .sum::<f64>()
                / count;
            // A day in the middle belongs to neither half of a month of odd length.
            assert!(
                (mean - months_c[index]).abs() < 0.02,
                "{year}-{month}: {mean}"
            );
            let rain: f64 = days.iter().map(|day| day.rain_mm).sum();
            assert!(
                (rain - rain_mm[index]).abs() < 1e-9,
                "{year}-{month}: {rain}"
            );
        }
    }
}

#[test]
fn hours_begin_and_end_where_asked() {
    let climate = Climate::new(BERLIN, &Overrides::default()).unwrap();
    let midnight = midnight_ms(&BERLIN, date(2024, 2, 28)).unwrap();
    let whole = climate.hours(midnight, 96).unwrap();
    let part = climate.hours(midnight + 30 * 3_600_000, 20).unwrap();
    assert_eq!(part.hours.len(), 20);
    assert_eq!(part.start_ms, midnight + 30 * 3_600_000);
    for (one, other) in part.hours.iter().zip(&whole.hours[30..50]) {
        assert!((one.solar_w_m2 - other.solar_w_m2).abs() < 1e-12);
    }
    assert_eq!(climate.hours(midnight + 1, 3), Err(OutOfTime));
    assert_eq!(climate.hours(i64::MAX - 7, 3), Err(OutOfTime));
    assert_eq!(climate.hours(midnight, 1_000_000), Err(OutOfTime));
    assert_eq!(climate.hours(midnight, 0).unwrap().hours.len(), 0);
}

#[test]
fn what_cannot_be_is_refused_in_a_sentence() {
    let refuse =
        |place, overrides: Overrides| Climate::new(place, &overrides).unwrap_err().to_string();
    let usual = Overrides::default;
    for (sentence, part) in [
        (
            refuse(
                Place {
                    latitude_deg: 91.0,
                    ..BERLIN
                },
                usual(),
            ),
            "latitude",
        ),
        (
            refuse(
                Place {
                    latitude_deg: f64::NAN,
                    ..BERLIN
                },
                usual(),
            ),
            "latitude",
        ),
        (
            refuse(
                Place {
                    longitude_deg: 200.0,
                    ..BERLIN
                },
                usual(),
            ),
            "longitude",
        ),
        (
            refuse(
                Place {
                    elevation_m: 9900.0,
                    ..BERLIN
                },
                usual(),
            ),
            "height",
        ),
        (
            refuse(
                BERLIN,
                Overrides {
                    coldest_month_c: Some(-300.0),
                    ..usual()
                },
            ),
            "month",
        ),
        (
            refuse(
                BERLIN,
                Overrides {
                    rain_mm: Some([-1.0; 12]),
                    ..usual()
                },
            ),
            "rain",
        ),
        (
            refuse(
                BERLIN,
                Overrides {
                    coldest_month_c: Some(20.0),
                    warmest_month_c: Some(1.0),
                    ..usual()
                },
            ),
            "exchange",
        ),
    ] {
        assert!(sentence.contains(part), "{sentence}");
    }
}
