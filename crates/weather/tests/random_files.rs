//! Files at random: whatever is read has bounds and no gap, and nothing makes the reader fall over.

#![allow(clippy::unwrap_used)]

use heapwright_weather::{Climate, Overrides, Place, ReadWeather, Reading, Setting, read};
use jiff::tz::TimeZone;
use proptest::prelude::*;

fn climate(latitude_deg: f64, longitude_deg: f64) -> Climate {
    let place = Place {
        latitude_deg,
        longitude_deg,
        elevation_m: 100.0,
        setting: Setting::Between,
    };
    Climate::new(place, &Overrides::default()).unwrap()
}

fn check(found: &ReadWeather) {
    assert_eq!(found.series.start_ms.rem_euclid(3_600_000), 0);
    assert!(!found.series.hours.is_empty());
    for hour in &found.series.hours {
        assert!(
            (-110.0..=90.0).contains(&hour.air_temperature_c),
            "{hour:?}"
        );
        assert!((0.0..=1.0).contains(&hour.relative_humidity), "{hour:?}");
        assert!((0.0..=30_000.0).contains(&hour.rain_mm), "{hour:?}");
        assert!((0.0..=120.0).contains(&hour.wind_m_s), "{hour:?}");
        assert!((0.0..=1700.0).contains(&hour.solar_w_m2), "{hour:?}");
    }
}

fn header() -> impl Strategy<Value = String> {
    prop::sample::select(vec![
        "time,temp [C],rh,rain [mm],wind,solar",
        "time;temp [C];rh;rain [mm];wind;solar",
        "date,tmin,tmax,rain,wind,rh",
        "date,time,temp_f,dew point_f,rain_in,wind_mph",
        "year,month,day,hour,temp,rain",
        "station,time [UTC],air temp [K],humidity [%],pressure",
    ])
    .prop_map(str::to_owned)
}

fn any_cell() -> impl Strategy<Value = String> {
    prop_oneof![
        4 => (-20_i32..40, 0_u8..10).prop_map(|(whole, tenth)| format!("{whole}.{tenth}")),
        4 => (2023_i16..2026, 1_u8..14, 1_u8..32, 0_u8..26)
            .prop_map(|(year, month, day, hour)| format!("{year}-{month:02}-{day:02} {hour:02}:00")),
        2 => (1_u8..14, 1_u8..32, 1_u8..14).prop_map(|(one, other, year)| format!("{one}/{other}/20{year:02}")),
        1 => (0_u8..26, 0_u8..61).prop_map(|(hour, minute)| format!("{hour}:{minute:02}")),
        1 => prop::sample::select(vec!["", "NA", "-9999", "\"", "\"3,5\"", "T", "+", "12,5", "é", "T12Z", "2024-10-27 02:00"])
            .prop_map(str::to_owned),
        1 => "\\PC{0,12}",
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(600))]

    #[test]
    fn any_bytes_are_read_or_refused(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        if let Ok(found) = read(&bytes, &Reading::new(&climate(50.0, 10.0))) {
            check(&found);
        }
    }

    #[test]
    fn any_cells_under_a_header_are_read_or_refused(
        header in header(),
        rows in prop::collection::vec(prop::collection::vec(any_cell(), 1..7), 0..12),
    ) {
        let mark = if header.contains(';') { ";" } else { "," };
        let rows: Vec<String> = rows.iter().map(|row| row.join(mark)).collect();
        let climate = climate(-35.0, 150.0);
        let reading = Reading {
            clock: TimeZone::posix("CET-1CEST,M3.5.0,M10.5.0/3").unwrap(),
            ..Reading::new(&climate)
        };
        if let Ok(found) = read(format!("{header}\n{}", rows.join("\n")).as_bytes(), &reading) {
            check(&found);
        }
    }

    #[test]
    fn good_rows_in_any_order_give_what_they_say(
        hours in prop::collection::vec((0_i64..3000, -200_i32..400, 0_u8..101), 1..60),
        latitude in -90.0..90.0,
        longitude in -180.0..180.0,
    ) {
        // Rows that are all at midnight are days.
        prop_assume!(hours.iter().any(|row| (row.0 + 22) % 24 != 0));
        let mut text = "time,temp [C],rh [%]\n".to_owned();
        for (hour, tenths, percent) in &hours {
            let time = jiff::Timestamp::from_second(1_700_000_000 / 3600 * 3600 + hour * 3600).unwrap();
            text.push_str(&format!("{time},{},{percent}\n", f64::from(*tenths) / 10.0));
        }
        let found = read(text.as_bytes(), &Reading::new(&climate(latitude, longitude))).unwrap();
        check(&found);
        let first = hours.iter().map(|row| row.0).min().unwrap();
        let last = hours.iter().map(|row| row.0).max().unwrap();
        prop_assert_eq!(i64::try_from(found.series.hours.len()).unwrap(), last - first + 1);
        for (place, (hour, tenths, _)) in hours.iter().enumerate() {
            // Of several rows of an hour the last one counts; a file that runs backwards does not
            // change which stands last.
            if hours[place + 1..].iter().all(|other| other.0 != *hour) {
                let index = usize::try_from(hour - first).unwrap();
                let temperature = found.series.hours[index].air_temperature_c;
                prop_assert!((temperature - f64::from(*tenths) / 10.0).abs() < 1e-9);
            }
        }
    }

    #[test]
    fn days_keep_their_rain_and_their_extremes(
        days in prop::collection::vec((-20.0_f64..25.0, 0.0_f64..25.0, 0.0_f64..90.0), 2..40),
        latitude in -89.0..89.0,
        longitude in -180.0..180.0,
    ) {
        let mut text = "date,tmin,tmax,rain\n".to_owned();
        for (index, day) in days.iter().enumerate() {
            let (least, range, rain): (f64, f64, f64) = *day;
            let date = jiff::civil::date(2024, 2, 10) + jiff::SignedDuration::from_hours(24 * i64::try_from(index).unwrap());
            text.push_str(&format!("{date},{least:.1},{:.1},{rain:.1}\n", least + range));
        }
        let found = read(text.as_bytes(), &Reading::new(&climate(latitude, longitude))).unwrap();
        check(&found);
        let mut previous: Option<f64> = None;
        for (index, hours) in found.series.hours.chunks(24).enumerate() {
            let rain: f64 = hours.iter().map(|hour| hour.rain_mm).sum();
            prop_assert!((rain - days[index].2).abs() < 0.06, "{} {}", rain, days[index].2);
            let around = index.saturating_sub(1)..(index + 2).min(days.len());
            let least = days[around.clone()].iter().map(|day| day.0).fold(f64::MAX, f64::min);
            let most = days[around.clone()].iter().map(|day| day.0 + day.1).fold(f64::MIN, f64::max);
            let widest = most - least;
            for hour in hours {
                prop_assert!(hour.air_temperature_c >= least - 0.11 && hour.air_temperature_c <= most + 0.11);
                if let Some(previous) = previous {
                    // The steepest hour of the shortest day and of the shortest night takes over a third of the whole swing.
                    let step: f64 = hour.air_temperature_c - previous;
                    prop_assert!(step.abs() <= 0.37 * widest + 0.1, "{} of {}", step, widest);
                }
                previous = Some(hour.air_temperature_c);
            }
        }
    }
}
