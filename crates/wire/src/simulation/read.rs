//! From a case file to a question: every figure within bounds, every fault with its field.

use std::collections::HashMap;

use heapwright_answers::heap::{
    Action, Cover, Enclosure, Ground, Model, Overrides, Shape, Wall, WeatherHour,
};
use heapwright_answers::{
    Doing, FedPart, Happening, SEED, SimulationNotice, SimulationQuestion, WeatherGiven,
    usual_place,
};
use heapwright_catalogue::Catalogue;
use heapwright_garden::{Found, Garden};
use heapwright_journal::Moment;
use heapwright_weather::{self as weather, Climate, Place, Reading, Series, Setting};
use jiff::tz::{Offset, TimeZone};

use super::question::{
    ClimateFile, ConstantFile, CoverFile, EnclosureFile, EventFile, FedFile, GroundFile, HourFile,
    ModelFile, SettingFile, ShapeFile, SimulationFile, WallFile, WeatherFile,
};
use crate::WireError;
use crate::read::{Reader, own_garden};
use crate::request::PartFile;
use crate::shape::from_json;

/// The largest case file that is read.
pub const LARGEST_CASE_BYTES: usize = 4 << 20;

/// Bounds of a case; work and memory grow with them.
const MOST_DAYS: f64 = 3660.0;
const MOST_ROWS: f64 = 100_000.0;
const MOST_FIELD_CELLS: f64 = 2_000_000.0;
const MOST_EVENTS: usize = 20_000;
const MOST_FEEDS: usize = 5_000;
const MOST_FIELDS: usize = 400;
const MOST_MEMBERS: u32 = 1_000;
/// Members by days by cells: some minutes of work.
const MOST_WORK: f64 = 1_500_000.0;
/// The usual grid.
const LAYERS: u32 = 6;
const RINGS: u32 = 4;

/// Reads the question of `heapwright simulate`. `garden` is used where the file has none; `csv`
/// gives the bytes of a weather file by its name, or a sentence that says why not.
///
/// # Errors
///
/// When the file is not JSON of the right shape, or a figure has no meaning.
pub fn read_simulation(
    catalogue: &Catalogue,
    garden: &Garden,
    text: &str,
    csv: &dyn Fn(&str) -> Result<Vec<u8>, String>,
) -> Result<(SimulationQuestion, Garden), WireError> {
    if text.len() > LARGEST_CASE_BYTES {
        return Err(WireError::TooLarge {
            bytes: text.len(),
            most: LARGEST_CASE_BYTES,
        });
    }
    let file: SimulationFile = from_json(text.strip_prefix('\u{feff}').unwrap_or(text))?;
    let garden = own_garden(catalogue, garden, file.garden.as_ref())?;
    let start: Moment = file.start.parse().map_err(|_| {
        WireError::field(
            "start",
            "give a time with its offset from UTC, like \"2026-05-01T00:00:00Z\"",
        )
    })?;
    if !(file.days > 0.0 && file.days <= MOST_DAYS) {
        return Err(WireError::field(
            "days",
            format!("must be above 0 and at most {MOST_DAYS}, not {}", file.days),
        ));
    }
    let every_h = bounded("every_h", file.every_h.unwrap_or(6.0), 0.05, 720.0)?;
    let rows = file.days * 24.0 / every_h;
    if rows > MOST_ROWS {
        return Err(WireError::field(
            "every_h",
            format!("{rows:.0} rows are too many: ask for at most {MOST_ROWS}"),
        ));
    }
    let model = model(&file)?;
    let mut notices = Vec::new();
    let enclosure = enclosure(&file.enclosure)?;
    let weather = given(&file, start, &enclosure, csv, &mut notices)?;
    let (members, member_model, seed) = ensemble(&file, model)?;
    fields(&file, rows, model)?;
    let question = SimulationQuestion {
        start_ms: start.instant_ms,
        days: file.days,
        every_h,
        model,
        enclosure,
        weather,
        events: events(catalogue, &garden, &file.events)?,
        members,
        member_model,
        seed,
        fields_at_d: file.fields_at_d.clone(),
        notices,
    };
    Ok((question, garden))
}

fn bounded(field: &str, value: f64, least: f64, most: f64) -> Result<f64, WireError> {
    if (least..=most).contains(&value) {
        Ok(value)
    } else {
        Err(WireError::field(
            field,
            format!("must be between {least} and {most}, not {value}"),
        ))
    }
}

fn cells(model: Model) -> f64 {
    match model {
        Model::Lumped => 1.0,
        #[allow(clippy::cast_precision_loss)] // some hundreds
        Model::Spatial { layers, rings } => (layers * rings) as f64,
    }
}

fn model(file: &SimulationFile) -> Result<Model, WireError> {
    let told = |field: &str, count: Option<u32>, usual: u32, most: u32| {
        let count = count.unwrap_or(usual);
        if count == 0 || count > most {
            return Err(WireError::field(
                field,
                format!("must be between 1 and {most}, not {count}"),
            ));
        }
        Ok(count as usize)
    };
    let layers = told("layers", file.layers, LAYERS, 30)?;
    let rings = told("rings", file.rings, RINGS, 20)?;
    match file.model.unwrap_or_default() {
        ModelFile::Spatial => Ok(Model::Spatial { layers, rings }),
        ModelFile::Lumped => {
            for (field, count) in [("layers", file.layers), ("rings", file.rings)] {
                if count.is_some() {
                    return Err(WireError::field(
                        field,
                        "belongs to the spatial model: leave it out, or \"model\": \"lumped\"",
                    ));
                }
            }
            Ok(Model::Lumped)
        }
    }
}

fn enclosure(file: &EnclosureFile) -> Result<Enclosure, WireError> {
    let width_m = bounded("enclosure.width_m", file.width_m, 0.05, 20.0)?;
    let depth_m = file.depth_m.map_or(Ok(width_m), |depth_m| {
        bounded("enclosure.depth_m", depth_m, 0.05, 200.0)
    })?;
    let height_m = bounded("enclosure.height_m", file.height_m, 0.05, 10.0)?;
    let shape = match file.shape.unwrap_or_default() {
        ShapeFile::Box => Shape::Box,
        ShapeFile::Cylinder => Shape::Cylinder,
        ShapeFile::Cone => Shape::Cone,
        ShapeFile::Drum => Shape::Drum,
    };
    let rate = |field: &str, value: Option<f64>, most: f64| {
        value
            .map(|value| bounded(field, value, 0.0, most))
            .transpose()
    };
    Ok(Enclosure {
        shape,
        width_m,
        depth_m,
        height_m,
        wall: match file.wall.unwrap_or_default() {
            WallFile::Open => Wall::Open,
            WallFile::Mesh => Wall::Mesh,
            WallFile::Slatted => Wall::Slatted,
            WallFile::Wood => Wall::Wood,
            WallFile::Plastic => Wall::Plastic,
            WallFile::Metal => Wall::Metal,
            WallFile::Insulated => Wall::Insulated,
        },
        cover: cover(file.cover.unwrap_or_default()),
        ground: match file.ground.unwrap_or_default() {
            GroundFile::Soil => Ground::Soil,
            GroundFile::Paving => Ground::Paving,
        },
        heat_loss_w_per_k: rate(
            "enclosure.heat_loss_w_per_k",
            file.heat_loss_w_per_k,
            10_000.0,
        )?,
        forced_air_kg_per_d: rate(
            "enclosure.forced_air_kg_per_d",
            file.forced_air_kg_per_d,
            100_000.0,
        )?,
    })
}

fn cover(file: CoverFile) -> Cover {
    match file {
        CoverFile::None => Cover::None,
        CoverFile::Sheet => Cover::Sheet,
        CoverFile::Lid => Cover::Lid,
        CoverFile::Roof => Cover::Roof,
    }
}

fn given(
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
            let (series, gaps) = read_weather(&bytes, &rough, start, "weather.csv")?;
            if gaps > 0 {
                notices.push(SimulationNotice::WeatherFilled { gaps });
            }
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

/// Reads a file of weather, times without an offset by the clock that hangs where `clock` was
/// told: the hours, and how many of them, or days of a daily file, had to be filled.
///
/// # Errors
///
/// When the bytes are no weather.
pub fn read_weather(
    bytes: &[u8],
    climate: &Climate,
    clock: Moment,
    field: &str,
) -> Result<(Series, usize), WireError> {
    let offset = Offset::from_seconds(i32::from(clock.offset_min) * 60).unwrap_or(Offset::UTC);
    let reading = Reading {
        clock: TimeZone::fixed(offset),
        ..Reading::new(climate)
    };
    let read = weather::read(bytes, &reading).map_err(|error| WireError::field(field, error))?;
    let filled = read.report.temperature;
    Ok((read.series, filled.interpolated + filled.usual))
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

fn ensemble(file: &SimulationFile, model: Model) -> Result<(u32, Model, u64), WireError> {
    let Some(ensemble) = &file.ensemble else {
        return Ok((0, model, SEED));
    };
    if ensemble.members == 0 || ensemble.members > MOST_MEMBERS {
        return Err(WireError::field(
            "ensemble.members",
            format!(
                "must be between 1 and {MOST_MEMBERS}, not {}",
                ensemble.members
            ),
        ));
    }
    let member_model = match (ensemble.model, model) {
        (None, model) => model,
        (Some(ModelFile::Lumped), _) => Model::Lumped,
        (Some(ModelFile::Spatial), Model::Spatial { .. }) => model,
        (Some(ModelFile::Spatial), Model::Lumped) => Model::default(),
    };
    check_work(
        "ensemble.members",
        ensemble.members,
        file.days,
        member_model,
    )?;
    Ok((
        ensemble.members,
        member_model,
        ensemble.seed.map_or(SEED, u64::from),
    ))
}

/// Refuses an ensemble that would take longer than a keeper waits.
///
/// # Errors
///
/// When there are too many members for so many days and cells.
pub fn check_work(field: &str, members: u32, days: f64, model: Model) -> Result<(), WireError> {
    if f64::from(members) * days * cells(model) <= MOST_WORK {
        return Ok(());
    }
    Err(WireError::field(
        field,
        format!(
            "{members} members over {days:.0} days would take too long: ask for fewer of either, or for the lumped model"
        ),
    ))
}

fn fields(file: &SimulationFile, rows: f64, model: Model) -> Result<(), WireError> {
    if file.fields_at_d.len() > MOST_FIELDS {
        return Err(WireError::field(
            "fields_at_d",
            format!("has too many entries: give at most {MOST_FIELDS}"),
        ));
    }
    for (index, day) in file.fields_at_d.iter().enumerate() {
        bounded(&format!("fields_at_d[{index}]"), *day, 0.0, file.days)?;
    }
    if !file.fields_at_d.is_empty() && rows * cells(model) > MOST_FIELD_CELLS {
        return Err(WireError::field(
            "fields_at_d",
            "so many rows of so many cells are too much: give a longer every_h or fewer layers and rings",
        ));
    }
    Ok(())
}

fn events(
    catalogue: &Catalogue,
    garden: &Garden,
    files: &[EventFile],
) -> Result<Vec<Happening>, WireError> {
    if files.len() > MOST_EVENTS {
        return Err(WireError::field(
            "events",
            format!("has too many entries: give at most {MOST_EVENTS}"),
        ));
    }
    let feeds = files.iter().filter(|file| file.feed.is_some()).count();
    if feeds == 0 {
        return Err(WireError::field(
            "events",
            "nothing is put into the heap: add a feed",
        ));
    }
    if feeds > MOST_FEEDS {
        return Err(WireError::field(
            "events",
            format!("{feeds} feeds are too many: give at most {MOST_FEEDS}"),
        ));
    }
    let mut feeder = Feeder {
        reader: Reader::new(catalogue, garden),
        known: HashMap::new(),
    };
    let mut all = Vec::new();
    for (index, file) in files.iter().enumerate() {
        let field = format!("events[{index}]");
        let day = bounded(&format!("{field}.day"), file.day, 0.0, MOST_DAYS)?;
        for doing in doings(&mut feeder, file, &field)? {
            all.push(Happening {
                day,
                field: field.clone(),
                doing,
            });
        }
    }
    Ok(all)
}

fn doings(feeder: &mut Feeder<'_>, file: &EventFile, field: &str) -> Result<Vec<Doing>, WireError> {
    let litres = file
        .water_l
        .map(|litres| bounded(&format!("{field}.water_l"), litres, 0.0, 100_000.0))
        .transpose()?;
    let temperature_c = file
        .temperature_c
        .map(|warm| bounded(&format!("{field}.temperature_c"), warm, -30.0, 90.0))
        .transpose()?;
    if temperature_c.is_some() && file.feed.is_none() {
        return Err(WireError::field(
            format!("{field}.temperature_c"),
            "belongs to a feed: leave it out here",
        ));
    }
    let water = litres.map(|litres| Doing::Other(Action::Water { litres }));
    let (done, may_water) = match (&file.feed, &file.turn, file.cover, &file.remove) {
        (Some(parts), None, None, None) => {
            let parts = feeder.parts(parts, &format!("{field}.feed"))?;
            return Ok(vec![Doing::Fed {
                parts,
                water_l: litres.unwrap_or(0.0),
                temperature_c,
            }]);
        }
        (None, Some(turn), None, None) => {
            let thoroughness = bounded(
                &format!("{field}.turn.thoroughness"),
                turn.thoroughness.unwrap_or(1.0),
                0.0,
                1.0,
            )?;
            (Some(Action::Turn { thoroughness }), true)
        }
        (None, None, Some(laid), None) => (Some(Action::Cover(cover(laid))), false),
        (None, None, None, Some(remove)) => {
            let share_pct = bounded(
                &format!("{field}.remove.share_pct"),
                remove.share_pct,
                0.0,
                95.0,
            )?;
            let taken = Action::TakeOut {
                share: share_pct / 100.0,
                from_below: remove.from_below.unwrap_or(false),
            };
            (Some(taken), false)
        }
        (None, None, None, None) if water.is_some() => (None, true),
        _ => {
            return Err(WireError::field(
                field,
                "give exactly one of feed, turn, water_l, cover and remove; water_l may come with a feed or a turn",
            ));
        }
    };
    if water.is_some() && !may_water {
        return Err(WireError::field(
            format!("{field}.water_l"),
            "may come with a feed or a turn, or alone: give it an entry of its own",
        ));
    }
    Ok(done.map(Doing::Other).into_iter().chain(water).collect())
}

/// Understands the parts of feeds, each once however often it is fed.
struct Feeder<'a> {
    reader: Reader<'a>,
    known: HashMap<String, Found>,
}

impl Feeder<'_> {
    fn parts(&mut self, files: &[FedFile], list: &str) -> Result<Vec<FedPart>, WireError> {
        files
            .iter()
            .enumerate()
            .map(|(index, file)| {
                let field = format!("{list}[{index}]");
                Ok(FedPart {
                    overrides: overrides(file, &field)?,
                    found: self.found(file, list, index)?,
                })
            })
            .collect()
    }

    fn found(&mut self, file: &FedFile, list: &str, index: usize) -> Result<Found, WireError> {
        let part = PartFile {
            material: file.material.clone(),
            custom: file.custom.clone(),
            amount: file.amount.clone(),
            condition: file.condition.clone(),
            moisture_pct: file.moisture_pct,
            nitrogen_pct_dry: file.nitrogen_pct_dry,
            cn_ratio: file.cn_ratio,
            bulk_density_kg_m3: file.bulk_density_kg_m3,
        };
        let key = serde_json::to_string(&part).unwrap_or_default();
        if let Some(found) = self.known.get(&key) {
            return Ok(found.clone());
        }
        let found = self.reader.part(&part, &format!("{list}[{index}]"))?;
        self.known.insert(key, found.clone());
        Ok(found)
    }
}

fn overrides(file: &FedFile, field: &str) -> Result<Overrides, WireError> {
    let told = [
        ("rapid_fraction_vs", file.rapid_fraction_vs),
        ("moderate_fraction_vs", file.moderate_fraction_vs),
        ("slow_fraction_vs", file.slow_fraction_vs),
    ];
    let mut sum = 0.0;
    for (name, value) in told {
        if let Some(value) = value {
            sum += bounded(&format!("{field}.{name}"), value, 0.0, 1.0)?;
        }
    }
    let all = told.iter().all(|(_, value)| value.is_some());
    if sum > 1.0 + 1e-6 || (all && sum < 0.98) {
        return Err(WireError::field(
            format!("{field}.rapid_fraction_vs"),
            format!(
                "with moderate_fraction_vs and slow_fraction_vs it adds up to {sum:.3}: the three must make 1, and two at most 1"
            ),
        ));
    }
    let particle_mm = file
        .particle_mm
        .map(|size| bounded(&format!("{field}.particle_mm"), size, 0.1, 1000.0))
        .transpose()?;
    Ok(Overrides {
        rapid_fraction_vs: file.rapid_fraction_vs,
        moderate_fraction_vs: file.moderate_fraction_vs,
        slow_fraction_vs: file.slow_fraction_vs,
        particle_mm,
        volume_m3: None,
    })
}
