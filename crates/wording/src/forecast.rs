//! What a heap is likely to do, in sentences: peak, air, water, losses, when it may be ready.
//!
//! Nothing here tells hygiene: that takes measured temperatures and the record of turns.

use heapwright_answers::heap::Band;
use heapwright_answers::{
    Ahead, ForecastAnswer, PlanAnswer, SimulationAnswer, SimulationNotice, Spread,
};
use heapwright_catalogue::Catalogue;
use heapwright_garden::Notice;
use heapwright_journal::Moment;
use heapwright_quantity::{UnitSystem, significant, temperature_text, volume_text};
use heapwright_texts::Locale;

use crate::journal::day_text;
use crate::notices::part_notice;

/// What a simulation can and cannot tell.
pub const SIMULATION_LIMITS: &str = "This says what is likely, from the kind of what went in and the weather. One cold corner or one wet pocket can differ. It cannot tell hygiene: that takes measured temperatures and the record of turns.";

/// What the two ranges of bands are.
pub const BANDS: &str =
    "In brackets: where nine of ten runs lie that differ in what nobody knows exactly.";

/// Below this moisture life nearly stops [kg/kg]. Common practice.
const TOO_DRY: f64 = 0.40;
/// Less than this much water is not worth a can [L].
const LEAST_WATER_L: f64 = 1.0;

/// When a day of the simulation is, as the face says it.
type When<'a> = &'a dyn Fn(f64) -> String;

/// A day of a free-standing case: "day 3", "day 2.6".
#[must_use]
pub fn day_of_case(day: f64) -> String {
    format!("day {}", number(day))
}

/// Days with as many digits as are known.
pub(crate) fn number(days: f64) -> String {
    if days < 9.95 {
        let text = format!("{days:.1}");
        text.strip_suffix(".0").map_or(text.clone(), str::to_owned)
    } else {
        format!("{days:.0}")
    }
}

fn days_text(days: f64) -> String {
    let number = number(days);
    let unit = if number == "1" { "day" } else { "days" };
    format!("{number}\u{a0}{unit}")
}

/// A range in brackets, or nothing when its ends read alike.
fn range(band: Option<Band>, text: &dyn Fn(f64) -> String) -> String {
    band.map_or_else(String::new, |band| {
        let (low, high) = (text(band.low), text(band.high));
        if low == high {
            String::new()
        } else {
            format!(" ({low} to {high})")
        }
    })
}

/// The report on a free-standing case, a sentence each.
#[must_use]
pub fn simulation_lines(answer: &SimulationAnswer, locale: Locale) -> Vec<String> {
    let mut lines = ahead_lines(
        &answer.ahead,
        answer.spread.as_ref(),
        &day_of_case,
        "by the end",
        locale,
    );
    let summary = &answer.summary;
    let of = |figure: fn(&heapwright_answers::heap::Summary) -> f64| {
        let band = answer
            .bands
            .as_ref()
            .filter(|bands| bands.summaries.len() > 1)
            .map(|bands| bands.of(figure));
        let middle = band.map_or(figure(summary), |band| band.median);
        format!("{}{}", percent(middle), range(band, &percent))
    };
    lines.push(format!(
        "By the end it has lost {} of its volume, {} of its dry matter and {} of its nitrogen.",
        of(|summary| summary.volume_loss_pct),
        of(|summary| summary.dry_mass_loss_pct),
        of(|summary| summary.nitrogen_loss_pct),
    ));
    if summary.leachate_l >= LEAST_WATER_L {
        lines.push(format!(
            "{} ran out below.",
            locale.volume(summary.leachate_l / 1000.0)
        ));
    }
    lines
}

fn percent(pct: f64) -> String {
    let whole = pct.round();
    let minus = if whole < 0.0 { "\u{2212}" } else { "" };
    format!("{minus}{}\u{a0}%", whole.abs())
}

/// What comes of a plan, a sentence each, with dates.
#[must_use]
pub fn plan_lines(forecast: &ForecastAnswer, plan: &PlanAnswer, locale: Locale) -> Vec<String> {
    let when = |day: f64| date_of(forecast, day);
    ahead_lines(
        &plan.answer.ahead,
        plan.answer.spread.as_ref(),
        &when,
        "at the end",
        locale,
    )
}

/// The date of a day of the simulation: "9 May 2026", or "now".
#[must_use]
pub fn date_of(forecast: &ForecastAnswer, day: f64) -> String {
    #[allow(clippy::cast_possible_truncation)] // within limits
    let after_ms = ((day - forecast.now_d) * 86_400_000.0) as i64;
    if after_ms.abs() < 6 * 3_600_000 {
        return "now".to_owned();
    }
    Moment::new(
        forecast.now.instant_ms.saturating_add(after_ms),
        forecast.now.offset_min,
    )
    .map_or_else(|| day_of_case(day), day_text)
}

fn ahead_lines(
    ahead: &Ahead,
    spread: Option<&Spread>,
    when: When<'_>,
    end: &str,
    locale: Locale,
) -> Vec<String> {
    let degrees = |value: f64| locale.temperature(value);
    let spread = spread.filter(|spread| spread.members > 1);
    // Among many runs the one with the usual figures is not the middle one: what is told must lie
    // within its own brackets.
    let ahead = &spread.map_or(*ahead, |spread| Ahead {
        peak_core_temperature_c: spread.peak_core_temperature_c.median,
        peak_day: spread.peak_day.median,
        days_hot: spread.days_hot.median,
        water_wanted_l: spread.water_wanted_l.median,
        volume_m3: spread.volume_m3.median,
        ..*ahead
    });
    let mut lines = vec![format!(
        "The core is warmest with {}{}, {}.",
        degrees(ahead.peak_core_temperature_c),
        range(
            spread.map(|spread| spread.peak_core_temperature_c),
            &degrees
        ),
        at(&when(ahead.peak_day)),
    )];
    let hot = range(spread.map(|spread| spread.days_hot), &days_text);
    lines.push(if ahead.days_hot < 0.05 {
        let may = spread
            .filter(|spread| spread.days_hot.high >= 0.5)
            .map(|spread| {
                format!(
                    "; with luck it is above that for {}",
                    days_text(spread.days_hot.high)
                )
            });
        format!(
            "It stays below {}{}.",
            degrees(55.0),
            may.unwrap_or_default()
        )
    } else {
        format!(
            "It is at {} or more for {}{hot}.",
            degrees(55.0),
            days_text(ahead.days_hot)
        )
    });
    lines.extend(air_line(ahead, spread, when));
    lines.extend(water_lines(ahead, spread, end, locale));
    lines.push(ready_line(ahead, spread, when, end));
    lines
}

/// "now" as it is; a date or a day with its word: "on 9 May 2026", "on day 3".
fn at(when: &str) -> String {
    if when == "now" {
        when.to_owned()
    } else {
        format!("on {when}")
    }
}

fn air_line(ahead: &Ahead, spread: Option<&Spread>, when: When<'_>) -> Option<String> {
    let many = spread
        .filter(|spread| spread.sour_share > 0.0)
        .map(|spread| {
            format!(
                " This is so for a day or more in {} of the runs.",
                percent(100.0 * spread.sour_share)
            )
        });
    if ahead.days_sour >= 0.5 {
        Some(format!(
            "Air runs short in some part for {}, down to {} % oxygen {}: it may go sour there.{}",
            days_text(ahead.days_sour),
            significant(ahead.lowest_oxygen_pct.max(0.0), 1),
            at(&when(ahead.lowest_oxygen_day)),
            many.unwrap_or_default()
        ))
    } else {
        spread
            .filter(|spread| spread.sour_share >= 0.1)
            .map(|spread| {
                format!(
                    "Air may run short in some part: so in {} of the runs.",
                    percent(100.0 * spread.sour_share)
                )
            })
    }
}

fn water_lines(ahead: &Ahead, spread: Option<&Spread>, end: &str, locale: Locale) -> Vec<String> {
    let litres = |value: f64| locale.volume(value / 1000.0);
    let mut lines = Vec::new();
    if ahead.driest < TOO_DRY {
        lines.push(format!(
            "It gets too dry to work well: down to {} moisture.",
            percent(100.0 * ahead.driest)
        ));
    }
    let wanted = ahead.water_wanted_l;
    let band = spread.map(|spread| spread.water_wanted_l);
    if wanted >= LEAST_WATER_L {
        let band = band.map(|band| Band {
            low: band.low.max(0.0),
            high: band.high.max(0.0),
            ..band
        });
        lines.push(format!(
            "It wants {} of water {end}{}.",
            litres(wanted),
            range(band, &litres)
        ));
    } else if wanted <= -LEAST_WATER_L {
        let band = band.map(|band| Band {
            low: (-band.high).max(0.0),
            high: (-band.low).max(0.0),
            ..band
        });
        lines.push(format!(
            "It has {} of water too much {end}{}.",
            litres(-wanted),
            range(band, &litres)
        ));
    }
    lines
}

fn ready_line(ahead: &Ahead, spread: Option<&Spread>, when: When<'_>, end: &str) -> String {
    match (ahead.ready_day, spread) {
        (Some(day), None) => format!("It may be ready to use from {} on.", when(day)),
        (Some(day), Some(spread)) => format!(
            "It may be ready to use from {} on; {end} it is in {} of the runs.",
            when(day),
            percent(100.0 * spread.ready_share)
        ),
        (None, Some(spread)) if spread.ready_share > 0.0 => format!(
            "It is not ready to use {end}; it is in {} of the runs.",
            percent(100.0 * spread.ready_share)
        ),
        (None, _) => format!("It is not ready to use {end}."),
    }
}

/// How the readings agree with what was computed, when there are any of the core.
#[must_use]
pub fn readings_line(forecast: &ForecastAnswer, locale: Locale) -> Option<String> {
    let warmer = forecast.warmer_than_computed_k()?;
    let count = forecast
        .readings
        .iter()
        .filter(|reading| reading.computed_core_c.is_some())
        .count();
    let degrees = match locale.units {
        UnitSystem::UsCustomary => format!("{:.0}\u{a0}°F", warmer.abs() * 1.8),
        UnitSystem::Metric => format!("{:.0}\u{a0}°C", warmer.abs()),
    };
    let readings = if count == 1 {
        "The one reading of the core so far".to_owned()
    } else {
        format!("The {count} readings of the core so far")
    };
    Some(if warmer.abs() < 1.0 {
        format!("{readings}: on average as computed.")
    } else {
        let word = if warmer > 0.0 { "warmer" } else { "cooler" };
        format!("{readings}: on average {degrees} {word} than computed.")
    })
}

/// The notices on a simulation, as sentences: what is alike of many materials in one.
#[must_use]
pub fn simulation_notices(catalogue: &Catalogue, notices: &[SimulationNotice]) -> Vec<String> {
    let (mut without_density, mut estimated, mut others) = (Vec::new(), Vec::new(), Vec::new());
    for notice in notices {
        match notice {
            SimulationNotice::Part(Notice::DensityAssumed { name }) => without_density.push(name),
            SimulationNotice::Part(Notice::Estimated { name }) => estimated.push(name),
            other => others.push(simulation_notice(catalogue, other)),
        }
    }
    let mut told = Vec::new();
    if !without_density.is_empty() {
        told.push(format!(
            "No density is known of {}: that of similar materials is taken.",
            enumerated(&without_density)
        ));
    }
    if !estimated.is_empty() {
        told.push(format!(
            "Estimates without a published source: the figures of {}.",
            enumerated(&estimated)
        ));
    }
    told.extend(others);
    told
}

/// "A", "A and B", "A; B and C": with semicolons, for names have commas.
fn enumerated(names: &[&String]) -> String {
    match names {
        [] => String::new(),
        [only] => (*only).clone(),
        [first @ .., last] => {
            let first: Vec<&str> = first.iter().map(|name| name.as_str()).collect();
            format!("{} and {last}", first.join("; "))
        }
    }
}

/// A notice on a simulation, as a sentence.
#[must_use]
pub fn simulation_notice(catalogue: &Catalogue, notice: &SimulationNotice) -> String {
    match notice {
        SimulationNotice::Part(notice) => part_notice(catalogue, notice),
        SimulationNotice::EnclosureAssumed => {
            "The heap's enclosure is not described: an open heap of 1 m each way on soil is taken."
                .to_owned()
        }
        SimulationNotice::ClimateAssumed { latitude_deg } => format!(
            "The garden's place is not described: the usual weather at {latitude_deg} degrees north is taken. Tell it with `heapwright garden describe --latitude --longitude`."
        ),
        SimulationNotice::ClimateRough => {
            "The usual temperatures are a guess from latitude and height, good to about 3 \u{b0}C."
                .to_owned()
        }
        SimulationNotice::WeatherUsual { hours } => format!(
            "The weather of {} is not known: the usual is taken, and runs differ around it.",
            hours_text(*hours)
        ),
        SimulationNotice::WeatherFilled { gaps } => {
            format!(
                "The weather file has {gaps} gaps in its temperatures: those of up to six hours were bridged, longer ones filled with what is usual there."
            )
        }
        SimulationNotice::WeatherSorted {
            twice,
            out_of_order,
        } => format!(
            "Rows of the weather file that came twice: {twice}, of which the later counts; rows put in order: {out_of_order}."
        ),
        SimulationNotice::BehindTheEnd { events } => {
            format!("Left out, for they lie behind the last day: {events} events.")
        }
        SimulationNotice::Overfull => {
            "More went in at the start than the enclosure holds: it stands above the brim."
                .to_owned()
        }
        SimulationNotice::LeftOut { names } => format!(
            "Left out, for this program cannot use them: {}.",
            names.join(", ")
        ),
        SimulationNotice::MovedIn => {
            "Compost from another heap is taken as that heap's own history suggests.".to_owned()
        }
        SimulationNotice::OldLeftOut { days } => {
            format!("What went in more than {days} days ago is left out.")
        }
        SimulationNotice::MembersFailed { count } => {
            format!("Runs that could not be computed and were left out: {count}.")
        }
    }
}

fn hours_text(hours: usize) -> String {
    if hours < 48 {
        format!("{hours} hours")
    } else {
        format!("{} days", hours.div_ceil(24))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn days_have_the_digits_that_are_known() {
        assert_eq!(day_of_case(2.64), "day 2.6");
        assert_eq!(day_of_case(3.0), "day 3");
        assert_eq!(day_of_case(33.3), "day 33");
        assert_eq!(days_text(1.0), "1\u{a0}day");
    }

    #[test]
    fn ranges_that_read_alike_are_left_out() {
        let band = Band {
            low: 1.2,
            high: 1.4,
            ..Band::default()
        };
        assert_eq!(range(Some(band), &|value| format!("{value:.0}")), "");
        assert_eq!(
            range(Some(band), &|value| format!("{value:.1}")),
            " (1.2 to 1.4)"
        );
        assert_eq!(range(None, &|value| format!("{value:.1}")), "");
    }
}
