//! The air around the heap: given outright, hour by hour, as a table, or as a climate.

use heapwright_answers::heap::{Enclosure, WeatherHour};
use heapwright_answers::{SimulationNotice, WeatherGiven, usual_place};
use heapwright_journal::Moment;
use heapwright_weather::{self as weather, Climate, Place, Reading, Series, Setting};
use jiff::tz::{Offset, TimeZone};

use super::bounded;
use crate::WireError;
use crate::simulation::question::{
    ClimateFile, ConstantFile, HourFile, SettingFile, SimulationFile, WeatherFile,
};

/// The weather that a file describes, or names a table of.
pub(super) fn given(
    file: &SimulationFile,
    start: Moment,
    enclosure: &Enclosure,
    csv: &dyn Fn(&str) -> Result<Vec<u8>, String>,
    notices: &mut Vec<SimulationNotice>,
) -> Result<WeatherGiven, WireError> {
    let WeatherFile {
        constant,
        csv: named,
        hours,
        climate,
    } = &file.weather;
    let one = "give exactly one of constant, csv, hours and climate; csv may come with a climate";
    match (constant, named, hours, climate) {
        (Some(constant), None, None, None) => constant_weather(constant, enclosure),
        (None, None, Some(hours), None) => hourly(hours, file.days),
        (None, None, None, Some(climate)) => Ok(WeatherGiven::Around {
            climate: Box::new(usual(climate)?),
            known: None,
        }),
        (None, Some(name), None, climate) => {
            let around = climate.as_ref().map(usual).transpose()?;
            let bytes = csv(name).map_err(|what| WireError::field("weather.csv", what))?;
            let rough = match &around {
                Some(climate) => climate.clone(),
                None => Climate::new(usual_place(), &weather::Overrides::default())
                    .map_err(|error| WireError::field("weather.csv", error))?,
            };
            let (series, told) = read_weather(&bytes, &rough, fixed(start), "weather.csv")?;
            notices.extend(told);
            Ok(match around {
                Some(climate) => WeatherGiven::Around {
                    climate: Box::new(climate),
                    known: Some(series),
                },
                None => WeatherGiven::Known(series),
            })
        }
        _ => Err(WireError::field("weather", one)),
    }
}

/// A clock that is never put forward or back.
fn fixed(clock: Moment) -> TimeZone {
    let offset = Offset::from_seconds(i32::from(clock.offset_min) * 60).unwrap_or(Offset::UTC);
    TimeZone::fixed(offset)
}

/// Reads a file of weather, times without an offset by a clock: the hours, and what had to be done
/// to make them whole.
///
/// # Errors
///
/// When the bytes are no weather.
pub fn read_weather(
    bytes: &[u8],
    climate: &Climate,
    clock: TimeZone,
    field: &str,
) -> Result<(Series, Vec<SimulationNotice>), WireError> {
    let reading = Reading {
        clock,
        ..Reading::new(climate)
    };
    let read = weather::read(bytes, &reading).map_err(|error| WireError::field(field, error))?;
    let filled = read.report.temperature;
    let mut notices = Vec::new();
    let gaps = filled.interpolated + filled.usual;
    if gaps > 0 {
        notices.push(SimulationNotice::WeatherFilled { gaps });
    }
    let (twice, out_of_order) = (read.report.duplicates, read.report.out_of_order);
    if twice + out_of_order > 0 {
        notices.push(SimulationNotice::WeatherSorted {
            twice,
            out_of_order,
        });
    }
    Ok((read.series, notices))
}

fn constant_weather(file: &ConstantFile, enclosure: &Enclosure) -> Result<WeatherGiven, WireError> {
    let inside = |name: &str| format!("weather.constant.{name}");
    let air = bounded(
        &inside("air_temperature_c"),
        file.air_temperature_c,
        -60.0,
        60.0,
    )?;
    let rain = bounded(
        &inside("rain_mm_per_d"),
        file.rain_mm_per_d.unwrap_or(0.0),
        0.0,
        2000.0,
    )?;
    let mut hour = air_of(
        [
            file.relative_humidity,
            file.wind_m_s,
            file.solar_w_m2,
            file.cloud_cover,
        ],
        "weather.constant",
    )?;
    hour.air_temperature_c = air;
    hour.rain_mm_per_h = rain / 24.0;
    let ground_offset_k = match file.ground_temperature_c {
        Some(ground) => bounded(&inside("ground_temperature_c"), ground, -60.0, 60.0)? - air,
        // A vessel stands on a bench; a heap on ground that is a little colder.
        None if enclosure.heat_loss_w_per_k.is_some() => 0.0,
        None => -2.0,
    };
    Ok(WeatherGiven::Constant {
        hour,
        ground_offset_k,
    })
}

/// Humidity, wind, sun and clouds, where they are told.
fn air_of(told: [Option<f64>; 4], field: &str) -> Result<WeatherHour, WireError> {
    let mut hour = WeatherHour::mild(0.0);
    for (told, (into, name, most)) in told.into_iter().zip([
        (&mut hour.relative_humidity, "relative_humidity", 1.0),
        (&mut hour.wind_m_s, "wind_m_s", 60.0),
        (&mut hour.solar_w_m2, "solar_w_m2", 1400.0),
        (&mut hour.cloud_cover, "cloud_cover", 1.0),
    ]) {
        if let Some(told) = told {
            *into = bounded(&format!("{field}.{name}"), told, 0.0, most)?;
        }
    }
    Ok(hour)
}

fn hourly(files: &[HourFile], days: f64) -> Result<WeatherGiven, WireError> {
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // within limits
    let wanted = (days * 24.0 - 1e-6).ceil() as usize;
    // One hour alone would be taken for weather that never changes.
    if files.len() < wanted.max(2) {
        return Err(WireError::field(
            "weather.hours",
            format!(
                "{} hours do not cover {days} days: give at least {}",
                files.len(),
                wanted.max(2)
            ),
        ));
    }
    let mut hours = Vec::with_capacity(files.len());
    for (index, file) in files.iter().enumerate() {
        let field = format!("weather.hours[{index}]");
        let mut hour = air_of(
            [
                file.relative_humidity,
                file.wind_m_s,
                file.solar_w_m2,
                file.cloud_cover,
            ],
            &field,
        )?;
        hour.air_temperature_c = bounded(
            &format!("{field}.air_temperature_c"),
            file.air_temperature_c,
            -60.0,
            60.0,
        )?;
        hour.rain_mm_per_h = bounded(
            &format!("{field}.rain_mm"),
            file.rain_mm.unwrap_or(0.0),
            0.0,
            400.0,
        )?;
        hours.push(hour);
    }
    Ok(WeatherGiven::Hours(hours))
}

fn usual(file: &ClimateFile) -> Result<Climate, WireError> {
    let place = Place {
        latitude_deg: file.latitude_deg,
        longitude_deg: file.longitude_deg.unwrap_or(0.0),
        elevation_m: file.elevation_m.unwrap_or(0.0),
        setting: match file.setting.unwrap_or_default() {
            SettingFile::Coast => Setting::Coast,
            SettingFile::Between => Setting::Between,
            SettingFile::Inland => Setting::Inland,
        },
    };
    let overrides = weather::Overrides {
        months_c: file.months_c,
        coldest_month_c: file.coldest_month_c,
        warmest_month_c: file.warmest_month_c,
        rain_mm: file.rain_mm,
    };
    Climate::new(place, &overrides).map_err(|error| WireError::field("weather.climate", error))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_clock_that_is_put_forward_has_a_day_of_23_hours() {
        let climate = Climate::new(usual_place(), &weather::Overrides::default()).unwrap();
        let mut text = String::from("time,temperature [degC]\n");
        for day in ["28", "29", "30"] {
            for hour in (0..24).filter(|hour| day != "29" || *hour != 2) {
                text.push_str(&format!("2026-03-{day} {hour:02}:00,10\n"));
            }
        }
        let clock = TimeZone::posix("CET-1CEST,M3.5.0,M10.5.0/3").unwrap();
        let (series, told) = read_weather(text.as_bytes(), &climate, clock, "x").unwrap();
        assert_eq!(series.hours.len(), 71);
        assert!(told.is_empty(), "{told:?}");
        // A clock that stays finds an hour missing there, and tells of it.
        let stays = fixed("2026-03-28T00:00:00+01:00".parse().unwrap());
        let (series, told) = read_weather(text.as_bytes(), &climate, stays, "x").unwrap();
        assert_eq!(series.hours.len(), 72);
        assert_eq!(told, [SimulationNotice::WeatherFilled { gaps: 1 }]);
    }
}
