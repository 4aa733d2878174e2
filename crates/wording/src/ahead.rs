//! What the page says of the days ahead of a heap: names of what can be done, pictures in a sentence, differences.

use heapwright_answers::heap::Snapshot;
use heapwright_answers::{PlanAnswer, SimulationNotice};
use heapwright_journal::content::Place;
use heapwright_quantity::{UnitSystem, significant, temperature_text, volume_text};
use heapwright_texts::Locale;

use crate::forecast::number;

/// Heading of the section.
pub const LOOKING_AHEAD: &str = "Looking ahead";
/// Heading of the cross-section.
pub const INSIDE: &str = "Inside the heap";
/// Told before there is anything to show.
pub const COMPUTING: &str = "Computing what is likely\u{2026}";
/// The keeper stopped it.
pub const STOPPED: &str = "Stopped. What was computed until then stands below.";
/// The keeper stopped it before there was anything.
pub const STOPPED_EARLY: &str = "Stopped before there was anything to show.";
/// Nothing lies in the heap.
pub const NOTHING_AHEAD: &str = "Nothing lies in this heap yet, so there is nothing to look ahead to. Log what goes in with Feed, and its days ahead stand here.";
/// The browser has no workers, or cannot load this one.
pub const NO_SIMULATOR: &str =
    "This browser cannot compute the days ahead. Update it, or try another one.";
/// The program that computes could not be fetched.
pub const SIMULATOR_UNFETCHED: &str =
    "What computes the days ahead could not be fetched. Load the page again when there is signal.";
/// It broke off.
pub const SIMULATION_BROKE: &str =
    "The days ahead could not be computed. Try again; if that does not help, load the page again.";
/// What the picture over time has as its days.
pub const DAYS_FROM_NOW: &str = "Days are counted from now: what is left of 0 is past.";

/// What can be looked at over time, short, in the order of the pictures.
pub const VALUES: [&str; 4] = ["Core", "Moisture", "Oxygen", "Volume"];

/// Turnings that can be looked at, in the order of the switch.
pub const TURNINGS: [&str; 3] = ["Not at all", "Now", "In 3 days"];

/// What the names of ways to go on are made of.
#[must_use]
pub fn option_name(water: Option<&str>, turn: usize) -> String {
    let turned = match turn {
        0 => None,
        1 => Some("turn it now"),
        _ => Some("turn it in 3 days"),
    };
    match (water, turned) {
        (None, None) => "Leave it alone".to_owned(),
        (None, Some(turned)) => crate::page::sentence(turned)
            .trim_end_matches('.')
            .to_owned(),
        (Some(water), None) => format!("Water it now with {water}"),
        (Some(water), Some(turned)) => format!("Water it now with {water} and {turned}"),
    }
}

/// Which weather was taken.
#[must_use]
pub fn weather_line(place: Option<&Place>, notices: &[SimulationNotice]) -> String {
    let degrees = |value: f64, plus: &str, minus: &str| {
        let side = if value < 0.0 { minus } else { plus };
        format!("{}\u{b0}\u{a0}{side}", significant(value.abs(), 3))
    };
    let mut line = match place {
        Some(place) => format!(
            "Weather: the usual for this garden's place ({}, {}) on each day of the year; the runs differ around it.",
            degrees(place.latitude_deg, "north", "south"),
            degrees(place.longitude_deg, "east", "west")
        ),
        None => "Weather: the usual at 50\u{b0}\u{a0}north, for the journal does not say where the garden lies; the runs differ around it.".to_owned(),
    };
    if notices.contains(&SimulationNotice::ClimateRough) {
        line.push_str(
            " Its temperatures are a guess from latitude and height, good to about 3\u{a0}\u{b0}C.",
        );
    }
    line
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
    format!(
        "Core {}, edge {}, air outside {}; lowest oxygen {}; moisture {}; volume {}.",
        locale.temperature(row.core_temperature_c),
        locale.temperature(row.edge_temperature_c),
        locale.temperature(row.air_temperature_c),
        whole_percent(row.lowest_oxygen_pct),
        whole_percent(100.0 * row.moisture),
        locale.volume(row.volume_m3)
    )
}

fn whole_percent(pct: f64) -> String {
    format!("{:.0}\u{a0}%", pct.max(0.0).round())
}

/// A picture over time in a sentence: now, the middle of the runs ahead, and how far they lie apart.
#[must_use]
pub fn over_time_line(
    name: &str,
    now: &str,
    (least, most): (&str, &str),
    apart: Option<(&str, &str)>,
) -> String {
    let line = if least == most {
        format!("{name}: about {now} now, and so it stays.")
    } else {
        format!("{name}: about {now} now; from now on between {least} and {most}.")
    };
    match apart {
        Some((low, high)) => {
            format!("{line} Nine of ten runs lie between {low} and {high}.")
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
pub const COMPARED_HEAD: &str = "From now on";

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
    vec![
        row("Core at its warmest", &|one| locale.temperature(one.peak_c)),
        row(
            &format!("Days at {} or more", locale.temperature(55.0)),
            &|one| number(one.days_hot),
        ),
        row("Lowest oxygen", &|one| {
            format!("{}\u{a0}%", locale.significant(one.lowest_oxygen_pct, 2))
        }),
        row("Days short of air", &|one| number(one.days_sour)),
        row("Driest", &|one| whole_percent(one.driest_pct)),
        row("Water wanted at the end", &|one| {
            if one.water_wanted_l >= 1.0 {
                locale.volume(one.water_wanted_l / 1000.0)
            } else if one.water_wanted_l <= -1.0 {
                format!(
                    "none, {} too much",
                    locale.volume(-one.water_wanted_l / 1000.0)
                )
            } else {
                "none".to_owned()
            }
        }),
        row("Volume at the end", &|one| locale.volume(one.volume_m3)),
        row("Ready from", &|one| {
            one.ready_day.map_or_else(|| "not yet".to_owned(), &when)
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
    let (one, other) = (Compared::of(plan), Compared::of(against));
    let mut told = Vec::new();
    let warmer_k = one.peak_c - other.peak_c;
    if warmer_k.abs() >= 1.0 {
        let word = if warmer_k > 0.0 { "warmer" } else { "cooler" };
        let degrees = match locale.units {
            UnitSystem::Metric => format!("{:.0}\u{a0}\u{b0}C", warmer_k.abs()),
            UnitSystem::UsCustomary => format!("{:.0}\u{a0}\u{b0}F", 1.8 * warmer_k.abs()),
        };
        told.push(format!("the core is {degrees} {word} at its warmest"));
    }
    told.extend(
        days_apart(one.days_hot - other.days_hot).map(|(days, word)| {
            format!(
                "it is at {} or more for {days} {word}",
                locale.temperature(55.0)
            )
        }),
    );
    told.extend(
        days_apart(one.days_sour - other.days_sour)
            .map(|(days, word)| format!("some part is short of air for {days} {word}")),
    );
    let wetter = one.driest_pct - other.driest_pct;
    if wetter.abs() >= 1.0 {
        let word = if wetter > 0.0 { "less dry" } else { "drier" };
        told.push(format!(
            "it gets {:.0} percent of moisture {word}",
            wetter.abs()
        ));
    }
    let smaller_m3 = other.volume_m3 - one.volume_m3;
    if smaller_m3.abs() >= 0.02 * other.volume_m3 {
        let word = if smaller_m3 > 0.0 {
            "smaller"
        } else {
            "larger"
        };
        told.push(format!(
            "it ends {} {word}",
            locale.volume(smaller_m3.abs())
        ));
    }
    match (one.ready_day, other.ready_day) {
        (Some(day), Some(before)) => {
            let sooner = before - day;
            if sooner.abs() >= 1.0 {
                let word = if sooner > 0.0 { "sooner" } else { "later" };
                told.push(format!("it is ready {} days {word}", number(sooner.abs())));
            }
        }
        (Some(_), None) => told.push("it may be ready in that time".to_owned()),
        (None, Some(_)) => told.push("it is not ready in that time".to_owned()),
        (None, None) => {}
    }
    if told.is_empty() {
        format!("{name}: no difference that matters.")
    } else {
        format!("{name}: {}.", joined(&told))
    }
}

fn days_apart(days: f64) -> Option<(String, &'static str)> {
    let word = if days > 0.0 { "longer" } else { "less" };
    (days.abs() >= 0.25).then(|| {
        let count = number(days.abs());
        let unit = if count == "1" { "day" } else { "days" };
        (format!("{count}\u{a0}{unit}"), word)
    })
}

/// "one", "one and two", "one, two and three".
fn joined(told: &[String]) -> String {
    match told.split_last() {
        None => String::new(),
        Some((last, [])) => last.clone(),
        Some((last, before)) => format!("{} and {last}", before.join(", ")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn options_are_named_by_what_is_done() {
        let names: Vec<String> = [(None, 0), (None, 1), (Some("15 L"), 0), (Some("15 L"), 2)]
            .into_iter()
            .map(|(water, turn)| option_name(water, turn))
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
        let line = weather_line(Some(&place), &[SimulationNotice::ClimateRough]);
        assert!(
            line.contains("33.9\u{b0}\u{a0}south, 18.4\u{b0}\u{a0}east"),
            "{line}"
        );
        assert!(line.contains("a guess"), "{line}");
        assert!(weather_line(None, &[]).contains("50\u{b0}\u{a0}north"));
    }

    #[test]
    fn pictures_over_time_are_told() {
        assert_eq!(
            over_time_line("Moisture", "58 %", ("50 %", "58 %"), Some(("47 %", "61 %"))),
            "Moisture: about 58 % now; from now on between 50 % and 58 %. Nine of ten runs lie between 47 % and 61 %."
        );
        assert_eq!(
            over_time_line("Moisture", "58 %", ("58 %", "58 %"), None),
            "Moisture: about 58 % now, and so it stays."
        );
    }

    #[test]
    fn lists_are_joined_as_people_do() {
        let told = ["a", "b", "c"].map(str::to_owned);
        assert_eq!(joined(&told), "a, b and c");
        assert_eq!(joined(&told[..1]), "a");
        assert_eq!(joined(&[]), "");
    }
}
