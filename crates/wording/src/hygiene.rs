//! Hygiene in sentences: what the record shows at the probe, what share of the heap that speaks for,
//! and what heat cannot be trusted with.
//!
//! Nothing here says that a heap is free of anything. A test looks for phrases that may never stand
//! here.

use heapwright_answers::heat::{Condition, Estimate, FLIES_D, Living, Method, Reach, Status};
use heapwright_answers::{BeforeUse, HygieneAnswer, HygieneNotice, RuleAnswer, ShareBasis};
use heapwright_catalogue::{Catalogue, CautionText, SourceKind};
use heapwright_journal::Moment;
use heapwright_quantity::{UnitSystem, significant, temperature_text};
use heapwright_texts::Locale;

use crate::amounts::percent_text;
use crate::journal::day_text;

/// What such an answer can and cannot tell.
pub const HYGIENE_LIMITS: &str = "A rule that is met here is met in time and temperature at the probe. No published rule was written for a home heap, most ask more than a thermometer shows, and your local rule comes first.";

/// How the temperature between two points is taken.
pub const INTERPOLATION: &str = "Straight lines between neighbouring points. Of up to 26 hours between two of them 24 are credited; over a longer gap nothing is, and no spell of heat goes on across it. From a turning to the next reading nothing is credited.";

/// A caution with its reason, what to do, and the local rule.
#[must_use]
pub fn caution_line(caution: &CautionText) -> String {
    let mut line = format!("{} {}", caution.reason, caution.advice);
    if !caution.local_rule.is_empty() {
        line.push(' ');
        line.push_str(&caution.local_rule);
    }
    line
}

/// What went into a heap and what to do before its compost is used.
#[must_use]
pub fn before_use_line(before_use: &BeforeUse) -> String {
    let when = if before_use.feeds == 1 || day_text(before_use.first) == day_text(before_use.last) {
        format!("on {}", day_text(before_use.first))
    } else {
        format!(
            "from {} to {}, {} times",
            day_text(before_use.first),
            day_text(before_use.last),
            before_use.feeds
        )
    };
    format!(
        "This heap had {} {when}: {}",
        lower_first(&before_use.name),
        lower_first(&before_use.advice.join(" "))
    )
}

fn lower_first(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_lowercase().chain(letters).collect()
    })
}

/// The headline: what was met at the probe, and the share of the heap.
#[must_use]
pub fn hygiene_headline(answer: &HygieneAnswer) -> String {
    if !is_time_known(answer) {
        return "The readings tell how hot it was at the probe, not for how long: no published rule is met by them. Estimated share of the heap that has been through the heat: not known.".to_owned();
    }
    let met: Vec<&str> = answer
        .rules
        .iter()
        .filter(|rule| rule.status[1] == Status::Met)
        .map(|rule| rule.words.id.as_str())
        .collect();
    let count = answer
        .rules
        .iter()
        .filter(|rule| rule.status[1] != Status::NotApplicable)
        .count();
    let rules = match met.len() {
        0 => format!("none of {count} published rules is met"),
        1 => format!("1 of {count} published rules is met in time and temperature"),
        several => {
            format!("{several} of {count} published rules are met in time and temperature")
        }
    };
    format!(
        "At the probe, {rules}. Estimated share of the heap that has been through it: {}.",
        range_text(answer.treated.share)
    )
}

/// False when no two readings lie near enough to one another.
fn is_time_known(answer: &HygieneAnswer) -> bool {
    answer.findings.credited_s > 0.0
}

/// "60 % (34 to 80 %)".
fn range_text(estimate: Estimate) -> String {
    let (value, low, high) = (
        share_text(estimate.value),
        share_text(estimate.low),
        share_text(estimate.high),
    );
    if low == high {
        value
    } else {
        format!("{value} ({low} to {high})")
    }
}

/// What the record shows, a sentence each.
#[must_use]
pub fn hygiene_lines(answer: &HygieneAnswer, locale: Locale) -> Vec<String> {
    let findings = &answer.findings;
    #[allow(clippy::cast_precision_loss)] // milliseconds of centuries
    let length_s = findings.last_ms.saturating_sub(findings.first_ms) as f64 / 1000.0;
    let degrees = |value: f64| locale.temperature(value);
    let depth = findings.depth_m.map_or_else(String::new, |depth_m| {
        format!(" at {}\u{a0}cm", locale.significant(depth_m * 100.0, 3))
    });
    let read = match findings.points {
        1 => "once".to_owned(),
        points => format!("{points} times over {}", time_text(length_s)),
    };
    let mut lines = vec![format!(
        "The probe{depth} was read {read}; the highest that it showed was {}.",
        degrees(findings.hottest_c)
    )];
    if !is_time_known(answer) {
        lines.push(format!(
            "How long it was at {} or more is not known: read it at least once a day.",
            degrees(55.0)
        ));
        return lines;
    }
    let place = heapwright_answers::heat::HOUR_THRESHOLDS_C
        .iter()
        .position(|threshold| *threshold == 55.0)
        .unwrap_or_default();
    let hours = [0, 1, 2].map(|end| hours_text(findings.hours[end][place]));
    let error = kelvin_text(findings.probe_error_k, locale);
    let range = if hours[0] == hours[2] {
        format!("an error of the probe of {error} either way changes nothing in that")
    } else {
        format!(
            "{} to {} with an error of the probe of {error} either way",
            hours[0], hours[2]
        )
    };
    lines.push(format!(
        "It was at {} or more for {}; {range}.",
        degrees(55.0),
        hours[1]
    ));
    let dose = findings.dose.map(|dose| locale.significant(dose, 2));
    lines.push(format!(
        "Dose {} ({} to {}): 1 is what the time and temperature equation of the United States asks, which counts from {} on. To add it up while the temperature changes goes beyond that rule.",
        dose[1],
        dose[0],
        dose[2],
        degrees(50.0),
    ));
    lines.extend(share_lines(answer, locale));
    lines
}

fn share_lines(answer: &HygieneAnswer, locale: Locale) -> Vec<String> {
    let treated = &answer.treated;
    let basis = match answer.basis {
        ShareBasis::Assumed => {
            "for a heap of one metre each way, because its size is not known, with a cool outside of 5 to 25\u{a0}cm"
        }
        ShareBasis::Outline => "from the size of the heap and an estimate of its cool outside",
        ShareBasis::Depths => "from the size of the heap and probes at more than one depth",
        ShareBasis::Simulated => "from a simulation of the heap",
    };
    let turns = treated.stays - 1;
    let times = |turns: usize| match turns {
        1 => "once".to_owned(),
        2 => "twice".to_owned(),
        turns => format!("{turns} times"),
    };
    let turned = match (turns, answer.findings.turns_before) {
        (0, 0) => "It was not turned".to_owned(),
        (turns, 0) => format!("It was turned {}", times(turns)),
        (0, before) => format!(
            "It was turned {} before the first reading and not since",
            times(before)
        ),
        (turns, before) => format!(
            "It was turned {} before the first reading and {} since",
            times(before),
            times(turns)
        ),
    };
    let mut lines = vec![format!(
        "Share of the heap in its hot middle at a time, {basis}: {}. {turned}; in {} of {} stays between turnings the probe was at {} or more for a day, or the dose came to 1.",
        range_text(answer.hot_share),
        treated.hot_stays,
        treated.stays,
        locale.temperature(55.0),
    )];
    if let Some(ceiling) = treated.ceiling_log10.filter(|_| treated.hot_stays > 0) {
        let times = parts_in(ceiling);
        lines.push(format!(
            "About {} is likely never to have been in the heat: however hot the core, germs in the whole heap can fall to one part in {times} at best.",
            never_text(treated.never.value),
        ));
    }
    lines
}

/// No estimate is of a whole heap: even what rounds to all of it is not said to be all.
fn share_text(share: f64) -> String {
    percent_text(share.min(0.999))
}

/// A share that is not nothing is not called 0 %.
fn never_text(share: f64) -> String {
    if share > 0.0 && share < 0.005 {
        return "<1\u{a0}%".to_owned();
    }
    percent_text(share)
}

/// Ten to the power of so many steps, with two digits.
fn parts_in(steps: f64) -> String {
    significant(10_f64.powf(steps), 2)
}

/// "12 hours", "2.5 days".
fn time_text(seconds: f64) -> String {
    let hours = seconds / 3600.0;
    if hours < 48.0 {
        return hours_text(hours);
    }
    let days = significant(hours / 24.0, 3);
    format!("{days}\u{a0}days")
}

fn hours_text(hours: f64) -> String {
    if hours > 0.0 && hours < 1.0 {
        let minutes = significant(hours * 60.0, 2);
        let unit = if minutes == "1" { "minute" } else { "minutes" };
        return format!("{minutes}\u{a0}{unit}");
    }
    let number = significant(hours, 3);
    let unit = if number == "1" { "hour" } else { "hours" };
    format!("{number}\u{a0}{unit}")
}

/// A difference of temperatures.
fn kelvin_text(kelvin: f64, locale: Locale) -> String {
    match locale.units {
        UnitSystem::Metric => format!("{}\u{a0}K", locale.significant(kelvin, 2)),
        UnitSystem::UsCustomary => format!("{}\u{a0}°F", locale.significant(kelvin * 1.8, 2)),
    }
}

/// How the heap was judged.
#[must_use]
pub fn method_line(answer: &HygieneAnswer) -> String {
    let (kind, other) = match answer.method {
        Method::Static => (
            "a heap that is not turned",
            "heaps that are turned do not apply",
        ),
        Method::Turned => (
            "a heap that is turned",
            "heaps that are not turned do not apply",
        ),
    };
    let why = if answer.method_said {
        "as you said"
    } else if answer.method == Method::Turned {
        "because turnings are known"
    } else {
        "because no turning is known"
    };
    format!("Judged as {kind}, {why}: rules for {other}.")
}

/// One word or two for how a rule stands.
#[must_use]
pub fn status_word(status: Status) -> &'static str {
    match status {
        Status::Met => "met",
        Status::NotMet => "not met",
        Status::NotApplicable => "does not apply",
    }
}

/// What is missing to meet a rule: "12 days and 3 turnings more".
#[must_use]
pub fn missing_text(rule: &RuleAnswer) -> String {
    match rule.status[1] {
        Status::NotApplicable => String::new(),
        Status::Met if rule.status[0] != Status::Met => {
            "but not when the probe shows too much".to_owned()
        }
        Status::Met => String::new(),
        Status::NotMet => {
            let missing = rule.outcome[1].missing;
            let mut parts = Vec::new();
            if missing.seconds > 0.0 {
                parts.push(time_text(missing.seconds));
            }
            if missing.peak_seconds > 0.0 {
                parts.push(format!("{} above 55 °C", time_text(missing.peak_seconds)));
            }
            match missing.turns {
                0 => {}
                1 => parts.push("1\u{a0}turning".to_owned()),
                turns => parts.push(format!("{turns}\u{a0}turnings")),
            }
            parts.extend(
                rule.lacking
                    .map(|condition| condition_text(condition).to_owned()),
            );
            let hot = rule
                .too_hot_above_c
                .filter(|_| rule.outcome[1].missing.seconds > 0.0)
                .map_or_else(String::new, |most_c| {
                    format!("; time above {most_c:.1}\u{a0}°C was too hot to count")
                });
            format!("missing: {}{hot}", parts.join(" and "))
        }
    }
}

/// What a rule asks of the vessel.
#[must_use]
pub fn condition_text(condition: Condition) -> &'static str {
    match condition {
        Condition::ClosedVessel => "a closed vessel",
        Condition::ClosedOrCovered => "a closed vessel or insulation all over",
    }
}

/// What a rule asks, what else it asks, and whether that was recalled, after its id and name.
#[must_use]
pub fn rule_line(catalogue: &Catalogue, rule: &RuleAnswer) -> String {
    let words = rule.words;
    format!(
        "{} ({}, {}): {}",
        words.id,
        words.name,
        words.year,
        rule_asks(catalogue, rule)
    )
}

/// What a rule asks, what else it asks, and whether that was recalled.
#[must_use]
pub fn rule_asks(catalogue: &Catalogue, rule: &RuleAnswer) -> String {
    let words = rule.words;
    let recalled = words
        .source_keys
        .first()
        .and_then(|key| catalogue.source(key))
        .is_some_and(|source| source.kind == SourceKind::Memory);
    let mut line = format!("{}.", words.asks);
    if !words.also_asks.is_empty() {
        line.push(' ');
        line.push_str(&words.also_asks);
    }
    if recalled {
        line.push_str(" From memory: check it before you rely on it.");
    }
    line
}

/// A source: its key, what it is, where it can be found; `None` when the key is not known.
#[must_use]
pub fn source_line(catalogue: &Catalogue, key: &str) -> Option<String> {
    let source = catalogue.source(key)?;
    let line = format!("{}: {} {}", source.key, source.citation, source.address);
    Some(line.trim_end().to_owned())
}

/// How long the probe showed some temperatures or more, as rows with a head: with its error taken
/// off, as shown, with it put on.
#[must_use]
pub fn hours_rows(answer: &HygieneAnswer, locale: Locale) -> Vec<Vec<String>> {
    let head = ["At or above", "as shown", "at least", "at most"];
    let mut rows = vec![head.map(str::to_owned).to_vec()];
    let thresholds = heapwright_answers::heat::HOUR_THRESHOLDS_C;
    for (place, threshold_c) in thresholds.into_iter().enumerate() {
        let hours = |end: usize| hours_text(answer.findings.hours[end][place]);
        rows.push(vec![
            locale.temperature(threshold_c),
            hours(1),
            hours(0),
            hours(2),
        ]);
    }
    rows
}

/// Where the sources of the rules stand.
pub const RULES_MORE: &str =
    "For what each rule was written, and its source: see the answer as JSON.";

/// What the record says of seeds, diseases and larvae.
#[must_use]
pub fn living_line(living: Living, reach: Reach) -> String {
    let (what, trials) = match living {
        Living::SoftSeeds => (
            "Seeds of grasses, sowthistle and chickweed, when moist",
            "12 hours at 50 °C or 3 hours at 55 °C",
        ),
        Living::HardySeeds => (
            "Seeds of nightshade, purslane, pigweed, fat hen and tomato, when moist",
            "5 days at 50 °C or 20 hours at 55 °C",
        ),
        Living::CommonDiseases => (
            "Most fungi, bacteria and nematodes that make plants sick",
            "a peak of 64 °C and 21 days",
        ),
        Living::WhiteRot => ("White rot of onions, in moist waste", "3 days at 48 °C"),
        Living::Larvae => ("Larvae of flies", "an hour at 50 °C"),
        Living::HardCoatedSeeds => {
            return "Hard-coated seeds (bindweed, velvetleaf, mallow, woody legumes): heat cannot be trusted with them; some grew after days above 55 °C.".to_owned();
        }
        Living::Roots => {
            return "Roots of couch, bindweed and ground elder, bulbils and knotweed: heat cannot be trusted with them; dry them to a crisp or drown them for a month first, and keep to local rules on invasive plants.".to_owned();
        }
        Living::Clubroot => {
            return "Clubroot: heat cannot be trusted with it; it outlived peaks above 62 °C. Keep sick plants out.".to_owned();
        }
        Living::MosaicViruses => {
            return "Tomato and tobacco mosaic: heat cannot be trusted with them; they need more than 68 °C and 20 days. Keep sick plants out.".to_owned();
        }
        Living::Wilts => {
            return "Fusarium and Verticillium wilts: heat cannot be trusted with them. Keep sick plants out.".to_owned();
        }
    };
    let found = match reach {
        Reach::Reached => {
            "at the probe that was reached, in the cooler rest of the heap it may not have been"
        }
        Reach::NotReached | Reach::NotTrusted => "at the probe that was not reached",
    };
    let more = if living == Living::Larvae {
        format!(
            " Larvae leave the heat: only turning everything into it at least every {FLIES_D:.0} days breaks their breeding."
        )
    } else {
        String::new()
    };
    format!("{what}: enough in trials was {trials}; {found}.{more}")
}

/// A notice on the answer.
#[must_use]
pub fn hygiene_notice(notice: &HygieneNotice) -> String {
    match notice {
        HygieneNotice::FedSince { feeds, last } => {
            let fed = if *feeds == 1 {
                format!("Something went in on {}", day_text(*last))
            } else {
                format!(
                    "Something went in {feeds} times, the last on {}",
                    day_text(*last)
                )
            };
            format!(
                "{fed}, after the core was hot: what came later has had less heat than this says."
            )
        }
        HygieneNotice::Loosened { turns: 1 } => {
            "One turning only let air in, and is not counted.".to_owned()
        }
        HygieneNotice::Loosened { turns } => {
            format!("{turns} turnings only let air in, and are not counted.")
        }
        HygieneNotice::NotCredited { gaps, seconds } => {
            let gaps = match gaps {
                1 => "One gap".to_owned(),
                gaps => format!("{gaps} gaps"),
            };
            format!(
                "{gaps} between readings of more than a day, {} together: nothing is credited for that time.",
                time_text(*seconds)
            )
        }
        HygieneNotice::AfterTurns { seconds } => format!(
            "How warm it was from a turning to the next reading was not measured: {} are taken as warm as the cooler of the readings before and after, and the low end of each figure leaves them out. Read soon after turning.",
            time_text(*seconds)
        ),
        HygieneNotice::NoDepth { points } => {
            let rows = match points {
                1 => "One reading without a depth is".to_owned(),
                points => format!("{points} readings without a depth are"),
            };
            format!("{rows} left out, because the others have one: say how deep the probe was.")
        }
        HygieneNotice::OtherDepths { depths } => {
            let others = match depths {
                1 => "one other depth is".to_owned(),
                depths => format!("{depths} other depths are"),
            };
            format!(
                "The deepest probe is judged unless --depth says another; {others} used for the cool outside alone."
            )
        }
        HygieneNotice::MovedIn => {
            "Something came from another heap: what heat it had there is not counted.".to_owned()
        }
    }
}

/// When a record begins and ends: "1 May 2026 to 16 May 2026".
#[must_use]
pub fn record_days(first: Moment, last: Moment) -> String {
    format!("{} to {}", day_text(first), day_text(last))
}
