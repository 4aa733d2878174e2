//! What the page says of the days ahead of a heap: names of what can be done, pictures in a sentence, differences.

use heapwright_answers::heap::Snapshot;
use heapwright_answers::{PlanAnswer, SimulationNotice};
use heapwright_journal::content::Place;
use heapwright_texts::Locale;
use heapwright_texts::messages::ahead as texts;

use crate::forecast::{CLIMATE_ROUGH_K, HOT_C, days_text, degrees_apart, known, number};

/// Heading of the section.
#[must_use]
pub fn looking_ahead(locale: Locale) -> &'static str {
    texts::looking_ahead(locale)
}

/// Heading of the cross-section.
#[must_use]
pub fn inside(locale: Locale) -> &'static str {
    texts::inside(locale)
}

/// Told before there is anything to show.
#[must_use]
pub fn computing(locale: Locale) -> &'static str {
    texts::computing(locale)
}

/// The keeper stopped it.
#[must_use]
pub fn stopped(locale: Locale) -> &'static str {
    texts::stopped(locale)
}

/// The keeper stopped it before there was anything.
#[must_use]
pub fn stopped_early(locale: Locale) -> &'static str {
    texts::stopped_early(locale)
}

/// Nothing lies in the heap.
#[must_use]
pub fn nothing_ahead(locale: Locale) -> &'static str {
    texts::nothing_ahead(locale)
}

/// The browser has no workers, or cannot load this one.
#[must_use]
pub fn no_simulator(locale: Locale) -> &'static str {
    texts::no_simulator(locale)
}

/// The program that computes could not be fetched.
#[must_use]
pub fn simulator_unfetched(locale: Locale) -> &'static str {
    texts::simulator_unfetched(locale)
}

/// The page and the worker beside it are of two versions.
#[must_use]
pub fn question_unread(locale: Locale) -> &'static str {
    texts::question_unread(locale)
}

/// It broke off.
#[must_use]
pub fn simulation_broke(locale: Locale) -> &'static str {
    texts::simulation_broke(locale)
}

/// What the picture over time has as its days.
#[must_use]
pub fn days_from_now(locale: Locale) -> &'static str {
    texts::days_from_now(locale)
}

/// Fewer days than these make no difference.
const LEAST_DAYS_APART: f64 = 0.25;

/// What can be looked at over time, short, in the order of the pictures.
#[must_use]
pub fn values(locale: Locale) -> [&'static str; 4] {
    [
        texts::value_core(locale),
        texts::value_moisture(locale),
        texts::value_oxygen(locale),
        texts::value_volume(locale),
    ]
}

/// Turnings that can be looked at, in the order of the switch.
#[must_use]
pub fn turnings(locale: Locale) -> [&'static str; 3] {
    [
        texts::turning_not_at_all(locale),
        texts::turning_now(locale),
        texts::turning_in_3_days(locale),
    ]
}

/// The name of a way to go on: how much it is watered now, and when it is turned, as a place in
/// [`turnings`].
#[must_use]
pub fn option_name(water: Option<&str>, turn: usize, locale: Locale) -> String {
    match (water, turn) {
        (None, 0) => texts::leave_alone(locale).to_owned(),
        (None, 1) => texts::turn_now(locale).to_owned(),
        (None, _) => texts::turn_in_3_days(locale).to_owned(),
        (Some(water), 0) => texts::WaterNow { water }.said(locale),
        (Some(water), 1) => texts::WaterNowAndTurnNow { water }.said(locale),
        (Some(water), _) => texts::WaterNowAndTurnIn3Days { water }.said(locale),
    }
}

/// Which weather was taken.
#[must_use]
pub fn weather_line(place: Option<&Place>, notices: &[SimulationNotice], locale: Locale) -> String {
    let degrees = |value: f64| locale.significant(value.abs(), 3);
    let line = match place {
        Some(place) => {
            let (latitude_deg, longitude_deg) = (place.latitude_deg, place.longitude_deg);
            let latitude = texts::Latitude {
                degrees: &degrees(latitude_deg),
                side: if latitude_deg < 0.0 { "south" } else { "north" },
            };
            let longitude = texts::Longitude {
                degrees: &degrees(longitude_deg),
                side: if longitude_deg < 0.0 { "west" } else { "east" },
            };
            texts::WeatherOfPlace {
                latitude: &latitude.said(locale),
                longitude: &longitude.said(locale),
            }
            .said(locale)
        }
        None => texts::weather_without_place(locale).to_owned(),
    };
    if notices.contains(&SimulationNotice::ClimateRough) {
        let degrees = &degrees_apart(CLIMATE_ROUGH_K, locale);
        let rough = texts::WeatherRough { degrees }.said(locale);
        format!("{line} {rough}")
    } else {
        line
    }
}

/// True for a notice that [`weather_line`] tells already.
#[must_use]
pub fn is_about_weather(notice: &SimulationNotice) -> bool {
    matches!(
        notice,
        SimulationNotice::ClimateAssumed { .. }
            | SimulationNotice::ClimateRough
            | SimulationNotice::WeatherUsual { .. }
    )
}

/// The figures of a time, in a sentence.
#[must_use]
pub fn figures_line(row: &Snapshot, locale: Locale) -> String {
    texts::Figures {
        core: &locale.temperature(row.core_temperature_c),
        edge: &locale.temperature(row.edge_temperature_c),
        outside: &locale.temperature(row.air_temperature_c),
        oxygen: &whole_percent(row.lowest_oxygen_pct, locale),
        moisture: &whole_percent(100.0 * row.moisture, locale),
        volume: &locale.volume(row.volume_m3),
    }
    .said(locale)
}

fn whole_percent(pct: f64, locale: Locale) -> String {
    texts::Percent {
        percent: pct.max(0.0).round(),
    }
    .said(locale)
}

/// A picture over time in a sentence: now, the middle of the runs ahead, and how far they lie apart.
#[must_use]
pub fn over_time_line(
    name: &str,
    now: &str,
    (least, most): (&str, &str),
    apart: Option<(&str, &str)>,
    locale: Locale,
) -> String {
    let line = if least == most {
        texts::OverTimeSteady { name, now }.said(locale)
    } else {
        texts::OverTime {
            name,
            now,
            least,
            most,
        }
        .said(locale)
    };
    match apart {
        Some((low, high)) => {
            format!("{line} {}", texts::RunsApart { low, high }.said(locale))
        }
        None => line,
    }
}

/// The figures of a plan that ways to go on are compared by.
struct Compared {
    peak_c: f64,
    days_hot: f64,
    lowest_oxygen_pct: f64,
    days_sour: f64,
    driest_pct: f64,
    water_wanted_l: f64,
    volume_m3: f64,
    ready_day: Option<f64>,
}

impl Compared {
    fn of(plan: &PlanAnswer) -> Self {
        let (ahead, spread) = (&plan.answer.ahead, plan.answer.spread.as_ref());
        let middle = |line: f64, band: Option<f64>| band.unwrap_or(line);
        Self {
            peak_c: middle(
                ahead.peak_core_temperature_c,
                spread.map(|spread| spread.peak_core_temperature_c.median),
            ),
            days_hot: middle(ahead.days_hot, spread.map(|spread| spread.days_hot.median)),
            lowest_oxygen_pct: ahead.lowest_oxygen_pct.max(0.0),
            days_sour: ahead.days_sour,
            driest_pct: 100.0 * ahead.driest,
            water_wanted_l: middle(
                ahead.water_wanted_l,
                spread.map(|spread| spread.water_wanted_l.median),
            ),
            volume_m3: middle(
                ahead.volume_m3,
                spread.map(|spread| spread.volume_m3.median),
            ),
            ready_day: ahead.ready_day,
        }
    }
}

/// What stands before the figures of [`compared_rows`].
#[must_use]
pub fn compared_head(locale: Locale) -> &'static str {
    texts::compared_head(locale)
}

/// The figures by which ways to go on are compared: a name, then the figure of each plan. `when`
/// tells a day.
#[must_use]
pub fn compared_rows(
    plans: &[&PlanAnswer],
    when: &dyn Fn(f64) -> String,
    locale: Locale,
) -> Vec<Vec<String>> {
    let all: Vec<Compared> = plans.iter().map(|plan| Compared::of(plan)).collect();
    let row = |name: &str, text: &dyn Fn(&Compared) -> String| {
        std::iter::once(name.to_owned())
            .chain(all.iter().map(text))
            .collect::<Vec<_>>()
    };
    let limit = locale.temperature(HOT_C);
    vec![
        row(texts::compared_core(locale), &|one| {
            locale.temperature(one.peak_c)
        }),
        row(
            &texts::ComparedHotDays { limit: &limit }.said(locale),
            &|one| number(one.days_hot, locale),
        ),
        row(texts::compared_oxygen(locale), &|one| {
            let number = locale.significant(one.lowest_oxygen_pct, 2);
            texts::OxygenPercent { number: &number }.said(locale)
        }),
        row(texts::compared_sour_days(locale), &|one| {
            number(one.days_sour, locale)
        }),
        row(texts::compared_driest(locale), &|one| {
            whole_percent(one.driest_pct, locale)
        }),
        row(texts::compared_water(locale), &|one| {
            if one.water_wanted_l >= 1.0 {
                locale.volume(one.water_wanted_l / 1000.0)
            } else if one.water_wanted_l <= -1.0 {
                let water = locale.volume(-one.water_wanted_l / 1000.0);
                texts::WaterTooMuch { water: &water }.said(locale)
            } else {
                texts::water_none(locale).to_owned()
            }
        }),
        row(texts::compared_volume(locale), &|one| {
            locale.volume(one.volume_m3)
        }),
        row(texts::compared_ready(locale), &|one| {
            one.ready_day
                .map_or_else(|| texts::not_yet(locale).to_owned(), &when)
        }),
    ]
}

/// What a plan changes against another, in a sentence; differences too small to matter are left out.
#[must_use]
pub fn difference_line(
    name: &str,
    plan: &PlanAnswer,
    against: &PlanAnswer,
    locale: Locale,
) -> String {
    let told = differences(&Compared::of(plan), &Compared::of(against), locale);
    if told.is_empty() {
        texts::NoDifference { name }.said(locale)
    } else {
        texts::Differences {
            name,
            differences: &locale.list(&told),
        }
        .said(locale)
    }
}

/// What is different, a clause each.
fn differences(one: &Compared, other: &Compared, locale: Locale) -> Vec<String> {
    let mut told = Vec::new();
    let warmer_k = one.peak_c - other.peak_c;
    if warmer_k.abs() >= 1.0 {
        let degrees = &degrees_apart(warmer_k, locale);
        told.push(if warmer_k > 0.0 {
            texts::CoreWarmer { degrees }.said(locale)
        } else {
            texts::CoreCooler { degrees }.said(locale)
        });
    }
    let longer_hot = one.days_hot - other.days_hot;
    if longer_hot.abs() >= LEAST_DAYS_APART {
        let limit = &locale.temperature(HOT_C);
        let days = &days_text(longer_hot.abs(), locale);
        told.push(if longer_hot > 0.0 {
            texts::HotLonger { limit, days }.said(locale)
        } else {
            texts::HotLess { limit, days }.said(locale)
        });
    }
    let longer_sour = one.days_sour - other.days_sour;
    if longer_sour.abs() >= LEAST_DAYS_APART {
        let days = &days_text(longer_sour.abs(), locale);
        told.push(if longer_sour > 0.0 {
            texts::SourLonger { days }.said(locale)
        } else {
            texts::SourLess { days }.said(locale)
        });
    }
    let wetter = one.driest_pct - other.driest_pct;
    if wetter.abs() >= 1.0 {
        let points = wetter.abs().round_ties_even();
        told.push(if wetter > 0.0 {
            texts::LessDry { points }.said(locale)
        } else {
            texts::Drier { points }.said(locale)
        });
    }
    let smaller_m3 = other.volume_m3 - one.volume_m3;
    if smaller_m3.abs() >= 0.02 * other.volume_m3 {
        let volume = &locale.volume(smaller_m3.abs());
        told.push(if smaller_m3 > 0.0 {
            texts::EndsSmaller { volume }.said(locale)
        } else {
            texts::EndsLarger { volume }.said(locale)
        });
    }
    match (one.ready_day, other.ready_day) {
        (Some(day), Some(before)) => {
            let sooner = before - day;
            let days = known(sooner.abs());
            if sooner >= 1.0 {
                told.push(texts::ReadySooner { days }.said(locale));
            } else if sooner <= -1.0 {
                told.push(texts::ReadyLater { days }.said(locale));
            }
        }
        (Some(_), None) => told.push(texts::may_be_ready(locale).to_owned()),
        (None, Some(_)) => told.push(texts::is_not_ready(locale).to_owned()),
        (None, None) => {}
    }
    told
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn options_are_named_by_what_is_done() {
        let names: Vec<String> = [(None, 0), (None, 1), (Some("15 L"), 0), (Some("15 L"), 2)]
            .into_iter()
            .map(|(water, turn)| option_name(water, turn, Locale::default()))
            .collect();
        assert_eq!(
            names,
            [
                "Leave it alone",
                "Turn it now",
                "Water it now with 15 L",
                "Water it now with 15 L and turn it in 3 days"
            ]
        );
    }

    #[test]
    fn weather_tells_where_it_is_taken_from() {
        let place = Place {
            name: None,
            latitude_deg: -33.92,
            longitude_deg: 18.4,
            elevation_m: None,
            coldest_month_c: None,
            warmest_month_c: None,
        };
        let line = weather_line(
            Some(&place),
            &[SimulationNotice::ClimateRough],
            Locale::default(),
        );
        assert!(
            line.contains("33.9\u{b0}\u{a0}south, 18.4\u{b0}\u{a0}east"),
            "{line}"
        );
        assert!(line.contains("a guess"), "{line}");
        assert!(weather_line(None, &[], Locale::default()).contains("50\u{b0}\u{a0}north"));
    }

    #[test]
    fn pictures_over_time_are_told() {
        assert_eq!(
            over_time_line(
                "Moisture",
                "58 %",
                ("50 %", "58 %"),
                Some(("47 %", "61 %")),
                Locale::default()
            ),
            "Moisture: about 58 % now; from now on between 50 % and 58 %. Nine of ten runs lie between 47 % and 61 %."
        );
        assert_eq!(
            over_time_line(
                "Moisture",
                "58 %",
                ("58 %", "58 %"),
                None,
                Locale::default()
            ),
            "Moisture: about 58 % now, and so it stays."
        );
    }

    #[test]
    fn only_differences_that_matter_are_told() {
        let leave = Compared {
            peak_c: 58.0,
            days_hot: 3.0,
            lowest_oxygen_pct: 8.0,
            days_sour: 0.0,
            driest_pct: 50.0,
            water_wanted_l: 0.0,
            volume_m3: 0.4,
            ready_day: Some(90.0),
        };
        let turned = Compared {
            peak_c: 61.2,
            days_hot: 2.0,
            days_sour: 0.1,
            driest_pct: 47.5,
            volume_m3: 0.399,
            ready_day: Some(89.0),
            ..leave
        };
        assert!(differences(&leave, &leave, Locale::default()).is_empty());
        assert_eq!(
            differences(&turned, &leave, Locale::default()),
            [
                "the core is 3\u{a0}\u{b0}C warmer at its warmest",
                "it is at 55\u{a0}\u{b0}C or more for 1\u{a0}day less",
                "it gets 2 percent of moisture drier",
                "it is ready 1 day sooner",
            ]
        );
    }
}
