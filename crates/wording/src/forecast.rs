//! What a heap is likely to do, in sentences: peak, air, water, losses, when it may be ready.
//!
//! Nothing here tells hygiene: that takes measured temperatures and the record of turns.

use heapwright_answers::heap::Band;
use heapwright_answers::{
    Ahead, ForecastAnswer, Gainsaid, PlanAnswer, SimulationAnswer, SimulationNotice, Spread,
};
use heapwright_catalogue::Catalogue;
use heapwright_garden::Notice;
use heapwright_journal::Moment;
use heapwright_quantity::UnitSystem;
use heapwright_texts::Locale;
use heapwright_texts::messages::cldr::ListPair;
use heapwright_texts::messages::{forecast as texts, notices_of_commands as of_commands};

use crate::journal::day_text;
use crate::notices::part_notice;

/// Below this moisture life nearly stops [kg/kg]. Common practice.
const TOO_DRY: f64 = 0.40;
/// Less than this much water is not worth a can [L].
const LEAST_WATER_L: f64 = 1.0;
/// A heap this warm is hot [degC].
pub(crate) const HOT_C: f64 = 55.0;

/// A simulation of a heap by itself goes on until it is over.
const BY_THE_END: &str = "by";
/// A plan goes on for some weeks.
const AT_THE_END: &str = "at";

/// What a simulation can and cannot tell.
#[must_use]
pub fn simulation_limits(locale: Locale) -> &'static str {
    texts::simulation_limits(locale)
}

/// What the two ranges of bands are.
#[must_use]
pub fn bands(locale: Locale) -> &'static str {
    texts::bands(locale)
}

/// When something is: how it reads, and which kind of time it is, for the word before it.
struct Time {
    /// "now", "day" or "date", as the messages choose by it.
    kind: &'static str,
    text: String,
}

/// When a day of the simulation is, as the face says it.
type When<'a> = &'a dyn Fn(f64) -> Time;

/// A day of a free-standing case: "day 3", "day 2.6".
#[must_use]
pub fn day_of_case(day: f64, locale: Locale) -> String {
    texts::DayOfCase { day: known(day) }.said(locale)
}

/// Days with as many digits as are known.
pub(crate) fn number(days: f64, locale: Locale) -> String {
    locale.decimals(known(days), 0, 1)
}

/// Days rounded to as many digits as are known, so that the plural is that of what is shown.
pub(crate) fn known(days: f64) -> f64 {
    let decimals = usize::from(days < 9.95);
    format!("{days:.decimals$}").parse().unwrap_or(days)
}

/// "1 day", "2.6 days".
pub(crate) fn days_text(days: f64, locale: Locale) -> String {
    texts::Days { days: known(days) }.said(locale)
}

/// How good a climate is that was guessed from latitude and height [K].
pub(crate) const CLIMATE_ROUGH_K: f64 = 3.0;

/// By how much something is warmer or cooler: "3 °C", and in °F as many as that is.
pub(crate) fn degrees_apart(difference_k: f64, locale: Locale) -> String {
    match locale.units {
        UnitSystem::Metric => texts::DegreesCelsius {
            degrees: difference_k.abs(),
        }
        .said(locale),
        UnitSystem::UsCustomary => texts::DegreesFahrenheit {
            degrees: 1.8 * difference_k.abs(),
        }
        .said(locale),
    }
}

/// The ends of a range in words; `None` when they read alike.
fn ends(band: Option<Band>, text: &dyn Fn(f64) -> String) -> Option<(String, String)> {
    band.map(|band| (text(band.low), text(band.high)))
        .filter(|(low, high)| low != high)
}

/// A figure and its range in brackets.
fn with_range(
    middle: f64,
    band: Option<Band>,
    text: &dyn Fn(f64) -> String,
    locale: Locale,
) -> String {
    let middle = text(middle);
    match ends(band, text) {
        None => middle,
        Some((low, high)) => texts::WithRange {
            middle: &middle,
            low: &low,
            high: &high,
        }
        .said(locale),
    }
}

/// The report on a free-standing case, a sentence each.
#[must_use]
pub fn simulation_lines(answer: &SimulationAnswer, locale: Locale) -> Vec<String> {
    let when = |day: f64| Time {
        kind: "day",
        text: day_of_case(day, locale),
    };
    let mut lines = ahead_lines(
        &answer.ahead,
        answer.spread.as_ref(),
        &when,
        BY_THE_END,
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
        with_range(middle, band, &|pct| percent(pct, locale), locale)
    };
    let lost = texts::Lost {
        volume: &of(|summary| summary.volume_loss_pct),
        dry_mass: &of(|summary| summary.dry_mass_loss_pct),
        nitrogen: &of(|summary| summary.nitrogen_loss_pct),
    };
    lines.push(lost.said(locale));
    if summary.leachate_l >= LEAST_WATER_L {
        let water = locale.volume(summary.leachate_l / 1000.0);
        lines.push(texts::RanOut { water: &water }.said(locale));
    }
    lines
}

fn percent(pct: f64, locale: Locale) -> String {
    texts::Percent {
        percent: pct.round(),
    }
    .said(locale)
}

/// What comes of a plan, a sentence each, with dates.
#[must_use]
pub fn plan_lines(forecast: &ForecastAnswer, plan: &PlanAnswer, locale: Locale) -> Vec<String> {
    let when = |day: f64| time_of(forecast, day, locale);
    ahead_lines(
        &plan.answer.ahead,
        plan.answer.spread.as_ref(),
        &when,
        AT_THE_END,
        locale,
    )
}

/// The date of a day of the simulation: "9 May 2026", or "now".
#[must_use]
pub fn date_of(forecast: &ForecastAnswer, day: f64, locale: Locale) -> String {
    time_of(forecast, day, locale).text
}

fn time_of(forecast: &ForecastAnswer, day: f64, locale: Locale) -> Time {
    #[allow(clippy::cast_possible_truncation)] // within limits
    let after_ms = ((day - forecast.now_d) * 86_400_000.0) as i64;
    if after_ms.abs() < 6 * 3_600_000 {
        return Time {
            kind: "now",
            text: texts::now(locale).to_owned(),
        };
    }
    let moment = Moment::new(
        forecast.now.instant_ms.saturating_add(after_ms),
        forecast.now.offset_min,
    );
    match moment {
        Some(moment) => Time {
            kind: "date",
            text: day_text(moment, locale),
        },
        None => Time {
            kind: "day",
            text: day_of_case(day, locale),
        },
    }
}

fn ahead_lines(
    ahead: &Ahead,
    spread: Option<&Spread>,
    when: When<'_>,
    end: &str,
    locale: Locale,
) -> Vec<String> {
    let degrees = |value: f64| locale.temperature(value);
    let days = |value: f64| days_text(value, locale);
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
    let peak = when(ahead.peak_day);
    let warmest = texts::CoreWarmest {
        core: &with_range(
            ahead.peak_core_temperature_c,
            spread.map(|spread| spread.peak_core_temperature_c),
            &degrees,
            locale,
        ),
        kind: peak.kind,
        time: &peak.text,
    };
    let limit = degrees(HOT_C);
    let limit = limit.as_str();
    let hot = if ahead.days_hot >= 0.05 {
        let band = spread.map(|spread| spread.days_hot);
        texts::IsHot {
            limit,
            days: &with_range(ahead.days_hot, band, &days, locale),
        }
        .said(locale)
    } else if let Some(spread) = spread.filter(|spread| spread.days_hot.high >= 0.5) {
        texts::StaysBelowWithLuck {
            limit,
            days: &days(spread.days_hot.high),
        }
        .said(locale)
    } else {
        texts::StaysBelow { limit }.said(locale)
    };
    let mut lines = vec![warmest.said(locale), hot];
    lines.extend(air_line(ahead, spread, when, locale));
    lines.extend(water_lines(ahead, spread, end, locale));
    lines.push(ready_line(ahead, spread, when, end, locale));
    lines
}

fn air_line(
    ahead: &Ahead,
    spread: Option<&Spread>,
    when: When<'_>,
    locale: Locale,
) -> Option<String> {
    let share = spread.map_or(0.0, |spread| spread.sour_share);
    let share_text = percent(100.0 * share, locale);
    if ahead.days_sour < 0.5 {
        return (share >= 0.1).then(|| texts::AirMayRunShort { share: &share_text }.said(locale));
    }
    let lowest = when(ahead.lowest_oxygen_day);
    let line = texts::AirShort {
        days: &days_text(ahead.days_sour, locale),
        oxygen: &locale.significant(ahead.lowest_oxygen_pct.max(0.0), 1),
        kind: lowest.kind,
        time: &lowest.text,
    }
    .said(locale);
    Some(if share > 0.0 {
        let many = texts::AirShortInRuns { share: &share_text };
        format!("{line} {}", many.said(locale))
    } else {
        line
    })
}

fn water_lines(ahead: &Ahead, spread: Option<&Spread>, end: &str, locale: Locale) -> Vec<String> {
    let litres = |value: f64| locale.volume(value / 1000.0);
    let mut lines = Vec::new();
    if ahead.driest < TOO_DRY {
        let moisture = percent(100.0 * ahead.driest, locale);
        lines.push(
            texts::TooDry {
                moisture: &moisture,
            }
            .said(locale),
        );
    }
    let wanted = ahead.water_wanted_l;
    let band = spread.map(|spread| spread.water_wanted_l);
    if wanted >= LEAST_WATER_L {
        let band = band.map(|band| Band {
            low: band.low.max(0.0),
            high: band.high.max(0.0),
            ..band
        });
        let water = &litres(wanted);
        lines.push(match ends(band, &litres) {
            None => texts::WantsWater { end, water }.said(locale),
            Some((low, high)) => texts::WantsWaterRange {
                end,
                water,
                low: &low,
                high: &high,
            }
            .said(locale),
        });
    } else if wanted <= -LEAST_WATER_L {
        let band = band.map(|band| Band {
            low: (-band.high).max(0.0),
            high: (-band.low).max(0.0),
            ..band
        });
        let water = &litres(-wanted);
        lines.push(match ends(band, &litres) {
            None => texts::TooMuchWater { end, water }.said(locale),
            Some((low, high)) => texts::TooMuchWaterRange {
                end,
                water,
                low: &low,
                high: &high,
            }
            .said(locale),
        });
    }
    lines
}

fn ready_line(
    ahead: &Ahead,
    spread: Option<&Spread>,
    when: When<'_>,
    end: &str,
    locale: Locale,
) -> String {
    let share = |spread: &Spread| percent(100.0 * spread.ready_share, locale);
    match (ahead.ready_day.map(when), spread) {
        (Some(ready), None) => texts::ReadyFrom { time: &ready.text }.said(locale),
        (Some(ready), Some(spread)) => texts::ReadyFromInRuns {
            end,
            time: &ready.text,
            share: &share(spread),
        }
        .said(locale),
        (None, Some(spread)) if spread.ready_share > 0.0 => texts::NotReadyInAllRuns {
            end,
            share: &share(spread),
        }
        .said(locale),
        (None, _) => texts::NotReady { end }.said(locale),
    }
}

/// How the readings agree with what was computed, when there are any of the core.
#[must_use]
pub fn readings_line(forecast: &ForecastAnswer, locale: Locale) -> Option<String> {
    let warmer_k = forecast.warmer_than_computed_k()?;
    let count = forecast
        .readings
        .iter()
        .filter(|reading| reading.computed_core_c.is_some())
        .count() as f64;
    Some(readings_said(count, warmer_k, locale))
}

fn readings_said(count: f64, warmer_k: f64, locale: Locale) -> String {
    let degrees = &degrees_apart(warmer_k, locale);
    if warmer_k.abs() < 1.0 {
        texts::ReadingsAsComputed { count }.said(locale)
    } else if warmer_k > 0.0 {
        texts::ReadingsWarmer { count, degrees }.said(locale)
    } else {
        texts::ReadingsCooler { count, degrees }.said(locale)
    }
}

/// What must be known before all that follows: a fresh reading is far from what was computed.
#[must_use]
pub fn gainsaid_line(forecast: &ForecastAnswer, locale: Locale) -> Option<String> {
    let gainsaid = forecast.gainsaid()?;
    #[allow(clippy::cast_possible_truncation)] // some days
    let after_ms = ((gainsaid.day - forecast.now_d) * 86_400_000.0) as i64;
    let at = Moment::new(
        forecast.now.instant_ms.saturating_add(after_ms),
        forecast.now.offset_min,
    )?;
    Some(gainsaid_told(gainsaid, at, locale))
}

fn gainsaid_told(gainsaid: Gainsaid, at: Moment, locale: Locale) -> String {
    texts::ProbeGainsays {
        computed: &locale.temperature(gainsaid.computed_c),
        day: &day_text(at, locale),
        probe: &locale.temperature(gainsaid.probe_c),
    }
    .said(locale)
}

/// The notices on a simulation, as sentences: what is alike of many materials in one.
#[must_use]
pub fn simulation_notices(
    catalogue: &Catalogue,
    notices: &[SimulationNotice],
    locale: Locale,
) -> Vec<String> {
    let (mut without_density, mut estimated, mut others) = (Vec::new(), Vec::new(), Vec::new());
    for notice in notices {
        match notice {
            SimulationNotice::Part(Notice::DensityAssumed { name }) => without_density.push(name),
            SimulationNotice::Part(Notice::Estimated { name }) => estimated.push(name),
            other => others.push(simulation_notice(catalogue, other, locale)),
        }
    }
    let mut told = Vec::new();
    if !without_density.is_empty() {
        let names = enumerated(&without_density, locale);
        told.push(texts::DensitiesUnknown { names: &names }.said(locale));
    }
    if !estimated.is_empty() {
        let names = enumerated(&estimated, locale);
        told.push(texts::FiguresEstimated { names: &names }.said(locale));
    }
    told.extend(others);
    told
}

/// "A", "A and B", "A; B and C": with semicolons, for names have commas.
fn enumerated(names: &[&String], locale: Locale) -> String {
    match names {
        [] => String::new(),
        [only] => (*only).clone(),
        [before @ .., last] => {
            let before: Vec<&str> = before.iter().map(|name| name.as_str()).collect();
            ListPair {
                first: &before.join("; "),
                second: last,
            }
            .said(locale)
        }
    }
}

/// A notice on a simulation, as a sentence.
#[must_use]
pub fn simulation_notice(
    catalogue: &Catalogue,
    notice: &SimulationNotice,
    locale: Locale,
) -> String {
    match notice {
        SimulationNotice::Part(notice) => part_notice(catalogue, notice, locale),
        SimulationNotice::EnclosureAssumed => texts::enclosure_assumed(locale).to_owned(),
        SimulationNotice::ClimateAssumed { latitude_deg } => of_commands::ClimateAssumed {
            latitude: f64::from(*latitude_deg),
        }
        .said(locale),
        SimulationNotice::ClimateRough => texts::ClimateRough {
            degrees: &degrees_apart(CLIMATE_ROUGH_K, locale),
        }
        .said(locale),
        SimulationNotice::WeatherUsual { hours } if *hours < 48 => texts::WeatherUsualHours {
            hours: *hours as f64,
        }
        .said(locale),
        SimulationNotice::WeatherUsual { hours } => texts::WeatherUsualDays {
            days: hours.div_ceil(24) as f64,
        }
        .said(locale),
        SimulationNotice::WeatherFilled { gaps } => {
            texts::WeatherFilled { gaps: *gaps as f64 }.said(locale)
        }
        SimulationNotice::WeatherSorted {
            twice,
            out_of_order,
        } => texts::WeatherSorted {
            twice: *twice as f64,
            out_of_order: *out_of_order as f64,
        }
        .said(locale),
        SimulationNotice::BehindTheEnd { events } => texts::BehindTheEnd {
            events: *events as f64,
        }
        .said(locale),
        SimulationNotice::Overfull => texts::overfull(locale).to_owned(),
        SimulationNotice::LeftOut { names } => texts::LeftOut {
            names: &names.join(", "),
        }
        .said(locale),
        SimulationNotice::MovedIn => texts::moved_in(locale).to_owned(),
        SimulationNotice::OldLeftOut { days } => texts::OldLeftOut {
            days: f64::from(*days),
        }
        .said(locale),
        SimulationNotice::MembersFailed { count } => texts::RunsFailed {
            count: f64::from(*count),
        }
        .said(locale),
    }
}

#[cfg(test)]
mod tests {
    use heapwright_texts::Translation;

    use super::*;

    #[test]
    fn days_have_the_digits_that_are_known() {
        let locale = Locale::default();
        assert_eq!(day_of_case(2.64, locale), "day 2.6");
        assert_eq!(day_of_case(3.0, locale), "day 3");
        assert_eq!(day_of_case(33.3, locale), "day 33");
        assert_eq!(number(9.96, locale), "10");
    }

    #[test]
    fn a_reading_that_gainsays_what_is_computed_is_to_be_believed() {
        let german: &'static Translation = Box::leak(Box::new(
            Translation::read("de", Translation::GERMAN, "").unwrap(),
        ));
        let english = Locale::default();
        let gainsaid = Gainsaid {
            day: 6.0,
            probe_c: 60.0,
            computed_c: 9.2,
        };
        // 21 September 2026.
        let at = Moment::new(1_790_000_000_000, 60).unwrap();
        for (locale, told) in [
            (
                english,
                "The probe showed 60\u{a0}°C on 21 September 2026, far from the 9\u{a0}°C that is \
                 computed for then: believe the probe. What follows is worked out without it.",
            ),
            (
                english.in_language(Some(german)),
                "Am 21. September 2026 zeigte der Fühler 60\u{a0}°C, weit entfernt von den \
                 9\u{a0}°C, die dafür berechnet sind: Glaub dem Fühler. Was folgt, ist ohne ihn \
                 berechnet.",
            ),
        ] {
            assert_eq!(gainsaid_told(gainsaid, at, locale), told);
        }
    }

    #[test]
    fn a_day_is_one_as_it_is_shown() {
        let locale = Locale::default();
        assert_eq!(days_text(1.0, locale), "1\u{a0}day");
        assert_eq!(days_text(0.96, locale), "1\u{a0}day");
        assert_eq!(days_text(1.1, locale), "1.1\u{a0}days");
    }

    /// English, and a language that has all texts in other words.
    fn languages() -> [Locale; 2] {
        let english = Locale::default();
        let translation = Translation::read("de", Translation::GERMAN, "").unwrap();
        let german = english.in_language(Some(Box::leak(Box::new(translation))));
        [english, german]
    }

    #[test]
    fn one_reading_has_no_average() {
        for (locale, average) in languages().into_iter().zip(["on average", "im Mittel"]) {
            for warmer_k in [-20.0, 0.5, 55.0] {
                let (one, two) = (
                    readings_said(1.0, warmer_k, locale),
                    readings_said(2.0, warmer_k, locale),
                );
                assert!(!one.contains(average), "{one}");
                assert!(two.contains(average), "{two}");
            }
        }
        let american = Locale::default().with_units(UnitSystem::UsCustomary);
        assert_eq!(
            readings_said(1.0, 55.0, american),
            "The one reading of the core so far: 99\u{a0}°F warmer than computed."
        );
    }

    #[test]
    fn a_rough_climate_is_as_rough_in_the_units_of_the_keeper() {
        let catalogue = Catalogue::built_in();
        for (units, good_to) in [
            (UnitSystem::Metric, "3\u{a0}°C."),
            (UnitSystem::UsCustomary, "5\u{a0}°F."),
        ] {
            let [english, german] = languages().map(|locale| {
                let locale = locale.with_units(units);
                simulation_notice(catalogue, &SimulationNotice::ClimateRough, locale)
            });
            assert!(
                english.ends_with(&format!("good to about {good_to}")),
                "{english}"
            );
            assert!(german.contains(good_to.trim_end_matches('.')), "{german}");
        }
    }

    #[test]
    fn ranges_that_read_alike_are_left_out() {
        let locale = Locale::default();
        let band = Some(Band {
            low: 1.2,
            high: 1.4,
            ..Band::default()
        });
        let coarse = |value: f64| format!("{value:.0}");
        let fine = |value: f64| format!("{value:.1}");
        assert_eq!(with_range(1.3, band, &coarse, locale), "1");
        assert_eq!(with_range(1.3, band, &fine, locale), "1.3 (1.2 to 1.4)");
        assert_eq!(with_range(1.3, None, &fine, locale), "1.3");
    }
}
