//! Files as people and loggers write them, good and bad: what is made of each?

#![allow(clippy::unwrap_used)]

use heapwright_weather::{
    Climate, DayOrder, Kind, MOST_BYTES, MOST_ROWS, Overrides, Place, ReadError, ReadWeather,
    Reading, Setting, WeatherHour, read,
};
use jiff::Timestamp;
use jiff::tz::TimeZone;

/// 2024-01-31T00:00Z.
const MIDNIGHT_MS: i64 = 1_706_659_200_000;

fn climate() -> Climate {
    let place = Place {
        latitude_deg: 52.5,
        longitude_deg: 13.4,
        elevation_m: 40.0,
        setting: Setting::Between,
    };
    Climate::new(place, &Overrides::default()).unwrap()
}

fn read_text(text: &str) -> Result<ReadWeather, ReadError> {
    read(text.as_bytes(), &Reading::new(&climate()))
}

fn central_europe(text: &str) -> ReadWeather {
    let climate = climate();
    let reading = Reading {
        clock: TimeZone::posix("CET-1CEST,M3.5.0,M10.5.0/3").unwrap(),
        ..Reading::new(&climate)
    };
    read(text.as_bytes(), &reading).unwrap()
}

fn hour(
    air_temperature_c: f64,
    percent: f64,
    rain_mm: f64,
    wind_m_s: f64,
    solar_w_m2: f64,
) -> WeatherHour {
    WeatherHour {
        air_temperature_c,
        relative_humidity: percent / 100.0,
        rain_mm,
        wind_m_s,
        solar_w_m2,
    }
}

fn agrees(one: &WeatherHour, other: &WeatherHour) -> bool {
    (one.air_temperature_c - other.air_temperature_c).abs() < 0.01
        && (one.relative_humidity - other.relative_humidity).abs() < 0.001
        && (one.rain_mm - other.rain_mm).abs() < 0.01
        && (one.wind_m_s - other.wind_m_s).abs() < 0.01
        && (one.solar_w_m2 - other.solar_w_m2).abs() < 0.5
}

#[test]
fn the_same_hour_in_many_spellings() {
    // 12 degC, 60 %, 0.5 mm, 5 m/s, 250 W/m2 at 2024-01-31T00:00Z and an hour later.
    for text in [
        "time,temperature [°C],humidity [%],rain [mm],wind [m/s],global radiation [W/m2]\n\
         2024-01-31T00:00,12,60,0.5,5,250\n2024-01-31T01:00,12,60,0.5,5,250\n",
        "\u{feff}time;temp (°C);rel. humidity (%);precipitation (mm);wind speed (m/s);GHI (W/m^2)\r\n\
         2024-01-31 00:00;12,0;60,0;0,5;5,0;250\r\n2024-01-31 01:00;12,0;60,0;0,5;5,0;250\r\n",
        "Datum;Uhrzeit;Lufttemperatur [°C];Rel. Feuchte [%];Niederschlag [mm];Windgeschwindigkeit [km/h];Windrichtung;Globalstrahlung [J/cm²]\n\
         31.01.2024;00:00;12,0;60;0,5;18,0;270;90\n31.01.2024;01:00;12,0;60;0,5;18,0;270;90\n",
        "date\ttime\ttemp_f\trh\train_in\twind_mph\tsolar_radiation\n\
         2024-01-31\t12:00 AM\t53.6\t60\t0.019685\t11.18468\t250\n2024-01-31\t1:00 AM\t53.6\t60\t0.019685\t11.18468\t250\n",
        "Année,Mois,Jour,Heure,Température (°C),Humidité (%),Pluie (mm),Vent (kn),Rayonnement global (W/m2)\n\
         2024,1,31,0,12,60,0.5,9.7192,250\n2024,1,31,1,12,60,0.5,9.7192,250\n",
        "timestamp|air temp K|humidity|rain mm|wind kmh|shortwave radiation kJ/m2\n\
         20240131:0010|285.15|0.6|0.5|18|900\n20240131:0110|285.15|0.6|0.5|18|900\n",
        "Weather of our garden\nlatitude,longitude,elevation\n52.5,13.4,40\n\n\
         time,temperature_2m (°C),relative_humidity_2m (%),dew_point_2m (°C),apparent_temperature (°C),precipitation_probability (%),\
         precipitation (mm),wind_speed_10m (km/h),wind_direction_10m (°),wind_gusts_10m (km/h),shortwave_radiation (W/m²)\n\
         2024-01-31T00:00,12,60,4.5,9,80,0.5,18,270,40,250\n2024-01-31T01:00,12,60,4.5,9,80,0.5,18,270,40,250\n",
        "time,temperature,humidity,rain,wind,solar radiation\n,°C,%,mm,m/s,W/m2\n\
         2024-01-31T01:00+01:00,12,60,0.5,5,250\n2024-01-31T02:00+01:00,12,60,0.5,5,250\n",
        "\"time\",\"temp [°C]\",\"humidity [%]\",\"rain [mm]\",\"wind [m/s]\",\"solar [W/m2]\"\n\
         \"31/01/2024 00:00\",\"12,0\",\"60,0\",\"0,5\",\"5,0\",\"250,0\"\n\"31/01/2024 01:00\",\"12,0\",\"60,0\",\"0,5\",\"5,0\",\"250,0\"\n",
        "Date (MM/DD/YYYY),Time (HH:MM),GHI (W/m^2),GHI source,Dry-bulb (C),Dry-bulb source,Dew-point (C),RHum (%),Wspd (m/s),Lprecip depth (mm)\n\
         01/30/2024,24:00,250,1,12,A,4.5,60,5,0.5\n01/31/2024,01:00,250,1,12,A,4.5,60,5,0.5\n01/31/2024,02:00,250,1,12,A,4.5,60,5,0.5\n",
        "hour ending,t [°C],dew point [°C],rain [mm/h],wind [m/s],solar [W/m2]\n\
         2024-01-31 00:30,12,4.476,0.5,5,250\n2024-01-31 01:00,12,4.476,0.5,5,250\n2024-01-31 02:00,12,4.476,0.5,5,250\n",
        // The later of two rows counts, and order has no effect.
        "time,temp [C],rh [%],rain [mm],wind [m/s],solar [W/m2]\n2024-01-31 01:00,12,60,0.5,5,250\n2024-01-31 00:00,99,60,0.5,5,250\n\
         2024-01-31 00:00,12,60,0.5,5,250\n"
            .replace(",99,", ",13,")
            .as_str(),
        // Ten minutes each: means, and the sum of the rain.
        "time,temp [C],rh [%],rain [mm],wind [m/s],solar [W/m2]\n2024-01-31 00:00,11,50,0.2,4,200\n2024-01-31 00:10,13,70,0.3,6,300\n\
         2024-01-31 01:00,12,60,0.5,5,250\n",
    ] {
        let found = read_text(text).unwrap_or_else(|error| panic!("{error}\n{text}"));
        let start = if text.contains("01/30/2024") { MIDNIGHT_MS - 3_600_000 } else { MIDNIGHT_MS };
        assert_eq!(found.series.start_ms, start, "{text}");
        assert_eq!(found.series.hours.len(), if start == MIDNIGHT_MS { 2 } else { 3 }, "{text}");
        for found in &found.series.hours {
            assert!(agrees(found, &hour(12.0, 60.0, 0.5, 5.0, 250.0)), "{found:?}\n{text}");
        }
    }
}

#[test]
fn other_encodings_are_read() {
    let text = "time,temp [°C]\n2024-01-31 00:00,12\n2024-01-31 01:00,13\n";
    let latin: Vec<u8> = text
        .chars()
        .map(|letter| u8::try_from(u32::from(letter)).unwrap())
        .collect();
    let little: Vec<u8> = "\u{feff}"
        .encode_utf16()
        .chain(text.encode_utf16())
        .flat_map(u16::to_le_bytes)
        .collect();
    let big: Vec<u8> = "\u{feff}"
        .encode_utf16()
        .chain(text.encode_utf16())
        .flat_map(u16::to_be_bytes)
        .collect();
    let climate = climate();
    let expected = read_text(text).unwrap();
    for bytes in [latin, little, big] {
        assert_eq!(read(&bytes, &Reading::new(&climate)).unwrap(), expected);
    }
}

fn rows(header: &str, rows: impl Iterator<Item = String>) -> String {
    std::iter::once(header.to_owned())
        .chain(rows)
        .collect::<Vec<_>>()
        .join("\n")
}

#[test]
fn gaps_are_filled_and_counted() {
    let hours = (0..240).filter(|hour| !(50..54).contains(hour) && !(100..150).contains(hour));
    let text = rows(
        "time,temp [C],rain [mm]",
        hours.map(|hour| {
            format!(
                "2024-07-{:02} {:02}:00,{},0",
                1 + hour / 24,
                hour % 24,
                15 + hour % 5
            )
        }),
    );
    let found = read_text(&text).unwrap();
    assert_eq!(found.series.hours.len(), 240);
    let report = &found.report;
    assert_eq!(
        (report.temperature.interpolated, report.temperature.usual),
        (4, 50)
    );
    assert_eq!((report.rain.interpolated, report.rain.usual), (4, 50));
    assert_eq!((report.wind.usual, report.wind.estimated), (240, 0));
    assert_eq!(
        (report.humidity.usual, report.humidity.estimated),
        (50, 190)
    );
    assert_eq!((report.solar.usual, report.solar.estimated), (50, 190));
    let edge = found.series.hours[49].air_temperature_c;
    assert!((found.series.hours[50].air_temperature_c - (edge + (19.0 - edge) / 5.0)).abs() < 1e-9);
}

#[test]
fn daylight_saving_is_followed() {
    let autumn = "time,temp [C]\n2024-10-27 01:00,10\n2024-10-27 02:00,11\n2024-10-27 02:00,12\n2024-10-27 03:00,13\n";
    let found = central_europe(autumn);
    assert_eq!(
        Timestamp::from_millisecond(found.series.start_ms)
            .unwrap()
            .to_string(),
        "2024-10-26T23:00:00Z"
    );
    let temperatures: Vec<f64> = found
        .series
        .hours
        .iter()
        .map(|hour| hour.air_temperature_c)
        .collect();
    assert_eq!(temperatures, [10.0, 11.0, 12.0, 13.0]);
    assert_eq!(found.report.duplicates, 0);
    // The same from the latest to the earliest row.
    let turned = "time,temp [C]\n2024-10-27 03:00,13\n2024-10-27 02:00,12\n2024-10-27 02:00,11\n2024-10-27 01:00,10\n";
    assert_eq!(central_europe(turned).series, found.series);

    let spring = "time,temp [C]\n2024-03-31 01:00,10\n2024-03-31 03:00,11\n2024-03-31 04:00,12\n";
    let found = central_europe(spring);
    assert_eq!(found.series.hours.len(), 3);
    assert!(!found.report.standard_time);

    // A logger that keeps standard time has the hour that is skipped.
    let standard = "time,temp [C]\n2024-03-31 01:00,10\n2024-03-31 02:00,11\n2024-03-31 03:00,12\n2024-07-01 12:00,20\n";
    let found = central_europe(standard);
    assert!(found.report.standard_time);
    assert_eq!(
        Timestamp::from_millisecond(found.series.end_ms())
            .unwrap()
            .to_string(),
        "2024-07-01T12:00:00Z"
    );
}

#[test]
fn leap_days_and_the_turn_of_the_year_are_hours_like_others() {
    let text = "time,temp [C]\n2024-02-28 23:00,1\n2024-02-29 00:00,2\n2024-02-29 23:00,2\n2024-03-01 00:00,3\n";
    assert_eq!(read_text(text).unwrap().series.hours.len(), 26);
    let text = "time,temp [C]\n2023-12-31 22:00,1\n2023-12-31 23:00,2\n2024-01-01 00:00,2\n";
    let found = read_text(text).unwrap();
    assert_eq!(
        (found.series.hours.len(), found.report.typical_year),
        (3, None)
    );
}

#[test]
fn typical_months_of_several_years_become_one_year() {
    // January of 1990, February of a leap year without its leap day, the rest of 1985.
    let year_of = |month: i8| match month {
        1 => 1990,
        2 => 1988,
        _ => 1985,
    };
    let mut day = jiff::civil::date(2023, 1, 1);
    let mut text = "date,time,temp [C]\n".to_owned();
    while day.year() == 2023 {
        for hour in 1..=24 {
            let (year, month) = (year_of(day.month()), day.month());
            text.push_str(&format!(
                "{year}-{month:02}-{:02},{hour:02}:00,{month}\n",
                day.day()
            ));
        }
        day = day.tomorrow().unwrap();
    }
    let found = read_text(&text).unwrap();
    assert_eq!(found.report.typical_year, Some(1990));
    assert_eq!(found.series.hours.len(), 8760);
    assert_eq!(
        (found.report.duplicates, found.report.temperature.usual),
        (0, 0)
    );
    assert_eq!(
        Timestamp::from_millisecond(found.series.start_ms)
            .unwrap()
            .to_string(),
        "1990-01-01T00:00:00Z"
    );
}

#[test]
fn days_become_hours() {
    let text = "date,min temp [C],max temp [C],precipitation [mm],wind [km/h]\n\
        2024-06-01,8,19,0,10.8\n2024-06-02,9,21,6,10.8\n2024-06-04,10,22,0,10.8\n2024-06-04,11,23,,10.8\n";
    let found = read_text(text).unwrap();
    assert_eq!(found.report.kind, Kind::Daily);
    assert_eq!(found.series.hours.len(), 96);
    assert_eq!(
        (found.report.duplicates, found.report.temperature.usual),
        (1, 1)
    );
    let rain: f64 = found.series.hours[24..48]
        .iter()
        .map(|hour| hour.rain_mm)
        .sum();
    assert!((rain - 6.0).abs() < 1e-9);
    let most = found.series.hours[72..]
        .iter()
        .map(|hour| hour.air_temperature_c)
        .fold(0.0, f64::max);
    assert!(most > 22.8 && most <= 23.0, "{most}");
    assert!((found.series.hours[0].wind_m_s - 3.0).abs() < 1e-9);

    // A mean alone gets the usual range around it.
    let found =
        read_text("date,mean temp [C],rain\n2024-06-01,15,0\n2024-06-02,15,3\n2024-06-03,15,0\n")
            .unwrap();
    assert_eq!(
        (found.report.kind, found.report.temperature.estimated),
        (Kind::Daily, 3)
    );
    let mean = found
        .series
        .hours
        .iter()
        .map(|hour| hour.air_temperature_c)
        .sum::<f64>()
        / 72.0;
    assert!((mean - 15.0).abs() < 0.6, "{mean}");

    // Radiation of days, in joules or as a mean.
    for solar in [
        "global [MJ/m2]\n2024-06-01,8,19,21.6\n",
        "global [W/m2]\n2024-06-01,8,19,250\n",
        "global\n2024-06-01,8,19,21.6\n",
    ] {
        let found = read_text(&format!("date,tmin,tmax,{solar}")).unwrap();
        let mean = found
            .series
            .hours
            .iter()
            .map(|hour| hour.solar_w_m2)
            .sum::<f64>()
            / 24.0;
        assert!((mean - 250.0).abs() < 1e-6, "{solar} {mean}");
    }
}

#[test]
fn rain_written_only_where_it_fell_is_none_elsewhere() {
    let text = "time,temp [C],rain [mm]\n2024-06-01 01:00,1,\n2024-06-01 02:00,1,0.4\n2024-06-01 03:00,1,\n";
    let found = read_text(text).unwrap();
    assert_eq!(found.report.rain, heapwright_weather::Filled::default());
}

#[test]
fn a_place_of_several_can_be_chosen() {
    let climate = climate();
    let text = "station,time,temp [C]\nNorth,2024-06-01 01:00,1\nSouth,2024-06-01 01:00,21\n";
    let one = |station| {
        let reading = Reading {
            station: Some(station),
            ..Reading::new(&climate)
        };
        read(text.as_bytes(), &reading)
    };
    assert!((one("south").unwrap().series.hours[0].air_temperature_c - 21.0).abs() < 1e-9);
    assert!(matches!(one("East"), Err(ReadError::NoStation { .. })));
    assert!(matches!(
        read_text(text),
        Err(ReadError::SeveralStations { .. })
    ));
}

#[test]
fn the_order_of_day_and_month_is_asked_for_once() {
    let climate = climate();
    let text = "date,time,temp [C]\n03/04/2024,01:00,1\n";
    assert!(matches!(
        read_text(text),
        Err(ReadError::DayOrder { row: 2, .. })
    ));
    for (order, start) in [
        (DayOrder::DayFirst, "2024-04-03T01:00:00Z"),
        (DayOrder::MonthFirst, "2024-03-04T01:00:00Z"),
    ] {
        let reading = Reading {
            day_order: Some(order),
            ..Reading::new(&climate)
        };
        let found = read(text.as_bytes(), &reading).unwrap();
        assert_eq!(
            Timestamp::from_millisecond(found.series.start_ms)
                .unwrap()
                .to_string(),
            start
        );
    }
}

#[test]
fn bad_files_get_one_sentence_that_says_where() {
    const TIMES: &str = "time,temp [C]\n2024-01-31 00:00,";
    let large = "x".repeat(MOST_BYTES + 1);
    let long = format!(
        "time,temp\n{}",
        "2024-01-31 00:00,1\n".repeat(MOST_ROWS + 1)
    );
    let after = |text: &str| format!("{TIMES}{text}");
    let table: Vec<(String, &str)> = vec![
        (String::new(), "empty"),
        (" \n\t\r\n".to_owned(), "empty"),
        (large, "20 MiB"),
        (long, "200000 rows"),
        ("PK\u{3}\u{4}rest of a workbook".to_owned(), "no text"),
        ("time,temp\n\0\0".to_owned(), "no text"),
        ("hello".to_owned(), "header"),
        ("<html><body>404</body></html>".to_owned(), "header"),
        ("1,2,3\n4,5,6\n".to_owned(), "header"),
        ("time,humidity\n2024-01-31 00:00,50\n".to_owned(), "header"),
        ("temperature,humidity\n1,50\n".to_owned(), "header"),
        ("time,dew point\n2024-01-31 00:00,5\n".to_owned(), "header"),
        ("time,min temp\n2024-01-31 00:00,5\n".to_owned(), "header"),
        ("time,soil temp\n2024-01-31 00:00,5\n".to_owned(), "header"),
        (
            "time,tmin,tmax\n2024-01-31 01:00,5,6\n".to_owned(),
            "header",
        ),
        ("time,temp [C]".to_owned(), "no row below"),
        ("time,temp [C]\n\n,\n".to_owned(), "no row below"),
        (
            after("warm"),
            "row 2, column \"temp [C]\": \"warm\" is no number",
        ),
        (after("1.2.3"), "row 2, column \"temp [C]\""),
        (after("61"), "not within -90 to 60 degC"),
        (after("1e300"), "row 2, column \"temp [C]\""),
        (after("inf"), "is no number"),
        (
            after("1\nyesterday,2"),
            "row 3, column \"time\": \"yesterday\" is no time",
        ),
        (after("1\n2023-02-29 00:00,2"), "row 3, column \"time\""),
        (after("1\n2024-01-31 25:00,2"), "row 3"),
        (after("1\n,2"), "row 3, column \"time\": \"\""),
        (after("1\nTotal,2"), "row 3"),
        (after("1\n1700-01-01 00:00,2"), "1900 to 2199"),
        (
            after("1\n2099-01-01 00:00,2"),
            "rows 2 and 3 lie more than 50 years apart",
        ),
        (after(""), "no temperature in any row"),
        (after("-9999"), "no temperature in any row"),
        (after("1,5"), "row 2 has more cells"),
        (
            after("1\n\"2024-01-31 01:00,2\n2024-01-31 02:00,3\n"),
            "stray quotation mark",
        ),
        (
            "time,temp,humidity [%]\n2024-01-31 01:00,1,160\n".to_owned(),
            "not within 0 to 100 %",
        ),
        (
            "time,temp,rain [mm]\n2024-01-31 01:00,1,-3\n".to_owned(),
            "not within 0 to 450 mm",
        ),
        (
            "time,temp,wind [m/s]\n2024-01-31 01:00,1,500\n".to_owned(),
            "not within 0 to 120 m/s",
        ),
        (
            "time,temp,solar [W/m2]\n2024-01-31 01:00,1,5000\n".to_owned(),
            "not within 0 to 1700",
        ),
        (
            "time,temp,dew point\n2024-01-31 01:00,1,88\n".to_owned(),
            "not within -100 to 40",
        ),
        (
            "date,tmin,tmax\n2024-01-31,9,3\n".to_owned(),
            "lowest temperature is above the highest",
        ),
        (
            "date,tmin,tmax\n2024-01-31,,\n".to_owned(),
            "no temperature in any row",
        ),
        (
            "date,tmin,tmax\n1900-01-31,1,2\n2024-01-31,1,2\n".to_owned(),
            "50 years apart",
        ),
        (
            "date,tmin,tmax\n2024-01-31,x,3\n".to_owned(),
            "is no number",
        ),
        (
            "date,time,temp\n01/02/2024,01:00,3\n".to_owned(),
            "day or the month",
        ),
        (
            "city,time,temp\nA,2024-01-31 00:00,3\nB,2024-01-31 00:00,4\n".to_owned(),
            "several places",
        ),
    ];
    assert!(table.len() >= 40);
    for (text, part) in table {
        let start: String = text.chars().take(80).collect();
        match read_text(&text) {
            Ok(found) => panic!("{start:?} was read: {:?}", found.report),
            Err(error) => {
                let sentence = error.to_string();
                assert!(sentence.contains(part), "{start:?}: {sentence}");
                assert!(
                    sentence.len() < 220 && !sentence.contains('\n'),
                    "{sentence}"
                );
            }
        }
    }
}
