//! Hygiene in sentences: what the record shows at the probe, what share of the heap that speaks for,
//! and what heat cannot be trusted with.
//!
//! Nothing here says that a heap is free of anything. A test looks for phrases that may never stand
//! here.

use heapwright_answers::heat::{Condition, Estimate, FLIES_D, Living, Method, Reach, Status};
use heapwright_answers::{BeforeUse, HygieneAnswer, HygieneNotice, RuleAnswer, ShareBasis};
use heapwright_catalogue::{Catalogue, CautionText, SourceKind};
use heapwright_journal::Moment;
use heapwright_quantity::{UnitSystem, fahrenheit_from_celsius, significant};
use heapwright_texts::Locale;
use heapwright_texts::messages::{hygiene as messages, notices_of_commands as of_commands};

use crate::amounts::percent_text;
use crate::journal::day_text;
use crate::spoken::rule_in;

/// What such an answer can and cannot tell.
#[must_use]
pub fn hygiene_limits(locale: Locale) -> &'static str {
    messages::limits(locale)
}

/// How the temperature between two points is taken.
#[must_use]
pub fn interpolation(locale: Locale) -> &'static str {
    messages::interpolation(locale)
}

/// A caution with its reason, what to do, and the local rule, all from the catalogue.
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
pub fn before_use_line(before_use: &BeforeUse, locale: Locale) -> String {
    let (first, last) = (
        day_text(before_use.first, locale),
        day_text(before_use.last, locale),
    );
    let advice_as_listed = &before_use.advice.join(" ");
    let (name, advice) = (
        &lower_first(&before_use.name),
        &lower_first(advice_as_listed),
    );
    if before_use.feeds == 1 || first == last {
        return messages::BeforeUseOnADay {
            advice,
            advice_as_listed,
            day: &first,
            name,
            name_as_listed: &before_use.name,
        }
        .said(locale);
    }
    messages::BeforeUseOnDays {
        advice,
        advice_as_listed,
        first: &first,
        last: &last,
        name,
        name_as_listed: &before_use.name,
        times: f64::from(before_use.feeds),
    }
    .said(locale)
}

/// The same for all that went in; what asks for the same is said in one sentence.
#[must_use]
pub fn before_use_lines(all: &[BeforeUse], locale: Locale) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for (index, one) in all.iter().enumerate() {
        let is_said = all[..index].iter().any(|said| said.advice == one.advice);
        if is_said {
            continue;
        }
        let alike: Vec<&BeforeUse> = all[index..]
            .iter()
            .filter(|other| other.advice == one.advice)
            .collect();
        if alike.len() == 1 {
            lines.push(before_use_line(one, locale));
            continue;
        }
        let fed: Vec<String> = alike.iter().map(|one| when_fed(one, locale)).collect();
        lines.push(
            messages::BeforeUseOfSeveral {
                advice: &one.advice.join(" "),
                fed: &fed.join("; "),
            }
            .said(locale),
        );
    }
    lines
}

fn when_fed(before_use: &BeforeUse, locale: Locale) -> String {
    let (first, last) = (
        day_text(before_use.first, locale),
        day_text(before_use.last, locale),
    );
    let (name, name_as_listed) = (&lower_first(&before_use.name), &before_use.name);
    if before_use.feeds == 1 || first == last {
        return messages::FedOnADay {
            day: &first,
            name,
            name_as_listed,
        }
        .said(locale);
    }
    messages::FedOnDays {
        first: &first,
        last: &last,
        name,
        name_as_listed,
        times: f64::from(before_use.feeds),
    }
    .said(locale)
}

fn lower_first(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_lowercase().chain(letters).collect()
    })
}

/// The headline: what was met at the probe, and the share of the heap.
#[must_use]
pub fn hygiene_headline(answer: &HygieneAnswer, locale: Locale) -> String {
    if !is_time_known(answer) {
        return messages::headline_time_unknown(locale).to_owned();
    }
    let rules = |wanted: &dyn Fn(Status) -> bool| {
        let found = answer.rules.iter().filter(|rule| wanted(rule.status[1]));
        found.count() as f64
    };
    messages::Headline {
        count: rules(&|status| status != Status::NotApplicable),
        met: rules(&|status| status == Status::Met),
        share: &range_text(answer.treated.share, locale),
    }
    .said(locale)
}

/// False when no two readings lie near enough to one another.
fn is_time_known(answer: &HygieneAnswer) -> bool {
    answer.findings.credited_s > 0.0
}

/// "60 % (34 to 80 %)".
fn range_text(estimate: Estimate, locale: Locale) -> String {
    let [value, low, high] =
        [estimate.value, estimate.low, estimate.high].map(|share| share_text(share, locale));
    if low == high {
        return value;
    }
    messages::ShareRange {
        high: &high,
        low: &low,
        value: &value,
    }
    .said(locale)
}

/// What the record shows, a sentence each.
#[must_use]
pub fn hygiene_lines(answer: &HygieneAnswer, locale: Locale) -> Vec<String> {
    let findings = &answer.findings;
    let limit = &locale.temperature(55.0);
    let mut lines = vec![probe_line(answer, locale)];
    if !is_time_known(answer) {
        lines.push(messages::TimeUnknown { limit }.said(locale));
        return lines;
    }
    let place = heapwright_answers::heat::HOUR_THRESHOLDS_C
        .iter()
        .position(|threshold| *threshold == 55.0)
        .unwrap_or_default();
    let [least, time, most] = &[0, 1, 2].map(|end| hours_text(findings.hours[end][place], locale));
    let error = &kelvin_text(findings.probe_error_k, locale);
    lines.push(if least == most {
        messages::TimeHotWhateverTheError { error, limit, time }.said(locale)
    } else {
        messages::TimeHot {
            error,
            least,
            limit,
            most,
            time,
        }
        .said(locale)
    });
    let [least, dose, most] = &findings.dose.map(|dose| locale.significant(dose, 2));
    lines.push(
        messages::Dose {
            dose,
            from: &locale.temperature(50.0),
            least,
            most,
        }
        .said(locale),
    );
    lines.extend(share_lines(answer, locale));
    lines
}

/// How often the probe was read, and the highest that it showed.
fn probe_line(answer: &HygieneAnswer, locale: Locale) -> String {
    let findings = &answer.findings;
    let length_s = findings.last_ms.saturating_sub(findings.first_ms) as f64 / 1000.0;
    let length = &time_text(length_s, locale);
    let hottest = &locale.temperature(findings.hottest_c);
    let points = findings.points as f64;
    match findings.depth_m {
        Some(depth_m) => messages::ProbeReadAtDepth {
            depth: &locale.significant(depth_m * 100.0, 3),
            hottest,
            length,
            points,
        }
        .said(locale),
        None => messages::ProbeRead {
            hottest,
            length,
            points,
        }
        .said(locale),
    }
}

fn share_lines(answer: &HygieneAnswer, locale: Locale) -> Vec<String> {
    let treated = &answer.treated;
    let share_of_middle = messages::ShareOfMiddle {
        basis: match answer.basis {
            ShareBasis::Assumed => "assumed",
            ShareBasis::Outline => "outline",
            ShareBasis::Depths => "depths",
            ShareBasis::Simulated => "simulated",
        },
        share: &range_text(answer.hot_share, locale),
    }
    .said(locale);
    let stays = messages::Stays {
        before: answer.findings.turns_before as f64,
        hot: treated.hot_stays as f64,
        limit: &locale.temperature(55.0),
        since: treated.stays.saturating_sub(1) as f64,
        stays: treated.stays as f64,
    }
    .said(locale);
    let mut lines = vec![format!("{share_of_middle} {stays}")];
    if let Some(ceiling) = treated.ceiling_log10.filter(|_| treated.hot_stays > 0) {
        lines.push(
            messages::NeverHot {
                // Ten to the power of so many steps.
                parts: &locale.significant(10_f64.powf(ceiling), 2),
                share: &never_text(treated.never.value, locale),
            }
            .said(locale),
        );
    }
    lines
}

/// No estimate is of a whole heap: even what rounds to all of it is not said to be all.
fn share_text(share: f64, locale: Locale) -> String {
    percent_text(share.min(0.999), locale)
}

/// A share that is not nothing is not called 0 %.
fn never_text(share: f64, locale: Locale) -> String {
    if share > 0.0 && share < 0.005 {
        return messages::less_than_one_percent(locale).to_owned();
    }
    percent_text(share, locale)
}

/// A number with no more digits than are shown, so that its plural is that of what is shown.
pub(crate) fn rounded(number: f64, digits: usize) -> f64 {
    significant(number, digits).parse().unwrap_or(number)
}

/// "12 hours", "2.5 days".
pub(crate) fn time_text(seconds: f64, locale: Locale) -> String {
    let hours = seconds / 3600.0;
    if hours < 48.0 {
        return hours_text(hours, locale);
    }
    messages::Days {
        days: rounded(hours / 24.0, 3),
    }
    .said(locale)
}

fn hours_text(hours: f64, locale: Locale) -> String {
    if hours > 0.0 && hours < 1.0 {
        return messages::Minutes {
            minutes: rounded(hours * 60.0, 2),
        }
        .said(locale);
    }
    messages::Hours {
        hours: rounded(hours, 3),
    }
    .said(locale)
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
pub fn method_line(answer: &HygieneAnswer, locale: Locale) -> String {
    messages::Judged {
        method: match answer.method {
            Method::Static => "static",
            Method::Turned => "turned",
        },
        why: if answer.method_said { "said" } else { "found" },
    }
    .said(locale)
}

/// One word or two for how a rule stands.
#[must_use]
pub fn status_word(status: Status, locale: Locale) -> &'static str {
    match status {
        Status::Met => messages::met(locale),
        Status::NotMet => messages::not_met(locale),
        Status::NotApplicable => messages::does_not_apply(locale),
    }
}

/// What is missing to meet a rule: "12 days and 3 turnings more".
#[must_use]
pub fn missing_text(rule: &RuleAnswer, locale: Locale) -> String {
    match rule.status[1] {
        Status::NotApplicable => String::new(),
        Status::Met if rule.status[0] != Status::Met => {
            messages::missing_nothing_unless_probe_errs(locale).to_owned()
        }
        Status::Met => String::new(),
        Status::NotMet => {
            let parts = &missing_parts(rule, locale);
            match rule
                .too_hot_above_c
                .filter(|_| rule.outcome[1].missing.seconds > 0.0)
            {
                Some(most_c) => messages::MissingAndTooHot {
                    most: &exact_temperature(most_c, locale),
                    parts,
                }
                .said(locale),
                None => messages::Missing { parts }.said(locale),
            }
        }
    }
}

/// "12 days and 3 turnings".
fn missing_parts(rule: &RuleAnswer, locale: Locale) -> String {
    let missing = rule.outcome[1].missing;
    let mut parts = Vec::new();
    if missing.seconds > 0.0 {
        parts.push(time_text(missing.seconds, locale));
    }
    if missing.peak_seconds > 0.0 {
        parts.push(time_above_55(missing.peak_seconds, locale));
    }
    if missing.turns > 0 {
        let turns = f64::from(missing.turns);
        parts.push(messages::PartTurnings { turns }.said(locale));
    }
    parts.extend(
        rule.lacking
            .map(|condition| condition_text(condition, locale).to_owned()),
    );
    // Two at a time: all of them are needed, so "and" stands between all.
    parts
        .into_iter()
        .reduce(|before, part| locale.list(&[before, part]))
        .unwrap_or_default()
}

/// "4 hours above 55 °C".
fn time_above_55(seconds: f64, locale: Locale) -> String {
    messages::PartTimeAbove55 {
        limit: &locale.temperature(55.0),
        time: &time_text(seconds, locale),
    }
    .said(locale)
}

/// A temperature [degC] to a tenth of a degree, as limits have it.
fn exact_temperature(temperature_c: f64, locale: Locale) -> String {
    match locale.units {
        UnitSystem::Metric => format!("{}\u{a0}°C", locale.decimals(temperature_c, 1, 1)),
        UnitSystem::UsCustomary => {
            let temperature_f = fahrenheit_from_celsius(temperature_c);
            format!("{}\u{a0}°F", locale.decimals(temperature_f, 1, 1))
        }
    }
}

/// What a rule asks of the vessel.
#[must_use]
pub fn condition_text(condition: Condition, locale: Locale) -> &'static str {
    match condition {
        Condition::ClosedVessel => messages::part_closed_vessel(locale),
        Condition::ClosedOrCovered => messages::part_closed_or_covered(locale),
    }
}

/// What a rule asks, what else it asks, and whether that was recalled, after its id and name.
#[must_use]
pub fn rule_line(catalogue: &Catalogue, rule: &RuleAnswer, locale: Locale) -> String {
    let words = rule_in(rule.words, locale);
    messages::Rule {
        asks: &rule_asks(catalogue, rule, locale),
        id: &words.id,
        name: &words.name,
        year: &words.year.to_string(),
    }
    .said(locale)
}

/// What a rule asks, what else it asks, and whether that was recalled.
#[must_use]
pub fn rule_asks(catalogue: &Catalogue, rule: &RuleAnswer, locale: Locale) -> String {
    let words = rule_in(rule.words, locale);
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
        line.push(' ');
        line.push_str(messages::recalled(locale));
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
    let head = [
        messages::hours_head_threshold(locale),
        messages::hours_head_shown(locale),
        messages::hours_head_least(locale),
        messages::hours_head_most(locale),
    ];
    let mut rows = vec![head.map(str::to_owned).to_vec()];
    let thresholds = heapwright_answers::heat::HOUR_THRESHOLDS_C;
    for (place, threshold_c) in thresholds.into_iter().enumerate() {
        let hours = |end: usize| hours_text(answer.findings.hours[end][place], locale);
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
#[must_use]
pub fn rules_more(locale: Locale) -> &'static str {
    messages::rules_more(locale)
}

/// What the record says of seeds, diseases and larvae.
#[must_use]
pub fn living_line(living: Living, reach: Reach, locale: Locale) -> String {
    let reach = match reach {
        Reach::Reached => "reached",
        Reach::NotReached | Reach::NotTrusted => "not-reached",
    };
    let temperature = |temperature_c| locale.temperature(temperature_c);
    match living {
        Living::SoftSeeds => messages::SoftSeeds {
            hot: &temperature(55.0),
            reach,
            warm: &temperature(50.0),
        }
        .said(locale),
        Living::HardySeeds => messages::HardySeeds {
            hot: &temperature(55.0),
            reach,
            warm: &temperature(50.0),
        }
        .said(locale),
        Living::CommonDiseases => messages::CommonDiseases {
            hot: &temperature(64.0),
            reach,
        }
        .said(locale),
        Living::WhiteRot => messages::WhiteRot {
            reach,
            warm: &temperature(48.0),
        }
        .said(locale),
        Living::Larvae => messages::Larvae {
            days: FLIES_D,
            reach,
            warm: &temperature(50.0),
        }
        .said(locale),
        Living::HardCoatedSeeds => messages::HardCoatedSeeds {
            hot: &temperature(55.0),
        }
        .said(locale),
        Living::Roots => messages::roots(locale).to_owned(),
        Living::Clubroot => messages::Clubroot {
            hot: &temperature(62.0),
        }
        .said(locale),
        Living::MosaicViruses => messages::MosaicViruses {
            hot: &temperature(68.0),
        }
        .said(locale),
        Living::Wilts => messages::wilts(locale).to_owned(),
    }
}

/// A notice on the answer, as the command line says it.
#[must_use]
pub fn hygiene_notice(notice: &HygieneNotice, locale: Locale) -> String {
    match notice {
        HygieneNotice::FedSince { feeds, last } => messages::FedSince {
            feeds: f64::from(*feeds),
            last: &day_text(*last, locale),
        }
        .said(locale),
        HygieneNotice::Loosened { turns } => messages::Loosened {
            turns: f64::from(*turns),
        }
        .said(locale),
        HygieneNotice::NotCredited { gaps, seconds } => messages::NotCredited {
            gaps: *gaps as f64,
            time: &time_text(*seconds, locale),
        }
        .said(locale),
        HygieneNotice::AfterTurns { seconds } => messages::AfterTurns {
            time: &time_text(*seconds, locale),
        }
        .said(locale),
        HygieneNotice::NoDepth { points } => messages::NoDepth {
            readings: *points as f64,
        }
        .said(locale),
        HygieneNotice::OtherDepths { depths } => of_commands::OtherDepths {
            depths: *depths as f64,
        }
        .said(locale),
        HygieneNotice::MovedIn => messages::moved_in(locale).to_owned(),
    }
}

/// A notice on the answer, as a sentence of the page, which has no options.
#[must_use]
pub fn page_hygiene_notice(notice: &HygieneNotice, locale: Locale) -> String {
    match notice {
        HygieneNotice::OtherDepths { depths } => messages::DeepestJudged {
            depths: *depths as f64,
        }
        .said(locale),
        _ => hygiene_notice(notice, locale),
    }
}

/// When a record begins and ends: "1 May 2026 to 16 May 2026".
#[must_use]
pub fn record_days(first: Moment, last: Moment, locale: Locale) -> String {
    messages::RecordDays {
        first: &day_text(first, locale),
        last: &day_text(last, locale),
    }
    .said(locale)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Spoken;
    use heapwright_catalogue::GERMAN;
    use heapwright_terms::MaterialId;
    use heapwright_texts::Translation;

    #[test]
    fn temperatures_are_in_the_units_of_the_keeper() {
        let translation = Translation::read("de", Translation::GERMAN, "").unwrap();
        let english = Locale::default();
        let german = english.in_language(Some(Box::leak(Box::new(translation))));
        for locale in [english, german] {
            let american = locale.with_units(UnitSystem::UsCustomary);
            let lines = |locale| {
                let living = Living::ALL.into_iter().flat_map(move |living| {
                    [Reach::Reached, Reach::NotReached]
                        .map(|reach| living_line(living, reach, locale))
                });
                living
                    .chain([time_above_55(4.0 * 3600.0, locale)])
                    .collect::<Vec<_>>()
            };
            for (metric, us) in lines(locale).iter().zip(lines(american)) {
                assert!(!us.contains("°C"), "{us}");
                let count = |said: &str, sign| said.matches(sign).count();
                assert_eq!(count(metric, "°C"), count(&us, "°F"), "{us}");
            }
            assert!(
                living_line(Living::Clubroot, Reach::NotTrusted, american).contains("144\u{a0}°F")
            );
            assert!(time_above_55(4.0 * 3600.0, american).ends_with("131\u{a0}°F"));
            assert_eq!(exact_temperature(65.0, english), "65.0\u{a0}°C");
            assert!(exact_temperature(65.0, american).starts_with("149"));
        }
    }

    fn fed(name: &str, advice: &str) -> BeforeUse {
        // Some day in 2026.
        let day = Moment::new(1_780_000_000_000, 0).unwrap();
        BeforeUse {
            material: MaterialId(name.to_owned()),
            name: name.to_owned(),
            first: day,
            last: day,
            feeds: 1,
            advice: vec![advice.to_owned()],
            food_beds: None,
            source_keys: Vec::new(),
        }
    }

    #[test]
    fn no_notice_of_the_page_names_a_command_or_an_option() {
        let german = Spoken::read("de", Translation::GERMAN, GERMAN).unwrap();
        let german: &'static Spoken = Box::leak(Box::new(german));
        let last = Moment::new(1_780_000_000_000, 0).unwrap();
        for notice in [
            HygieneNotice::FedSince { feeds: 1, last },
            HygieneNotice::Loosened { turns: 1 },
            HygieneNotice::NotCredited {
                gaps: 1,
                seconds: 90_000.0,
            },
            HygieneNotice::AfterTurns { seconds: 90_000.0 },
            HygieneNotice::NoDepth { points: 1 },
            HygieneNotice::OtherDepths { depths: 1 },
            HygieneNotice::OtherDepths { depths: 2 },
            HygieneNotice::MovedIn,
        ] {
            for locale in [Locale::default(), german.locale()] {
                let line = page_hygiene_notice(&notice, locale);
                assert!(!line.contains('`') && !line.contains("--"), "{line}");
            }
        }
        // The command line says how to have another judged.
        let others = HygieneNotice::OtherDepths { depths: 2 };
        assert!(hygiene_notice(&others, Locale::default()).contains("--depth"));
    }

    #[test]
    fn what_asks_for_the_same_is_said_once_and_everything_is_named() {
        let locale = Locale::default();
        let (hot, dig) = ("Give it a long hot time.", "Dig it in.");
        let all = [fed("Pigeon", hot), fed("Ash", dig), fed("Rabbit", hot)];
        let lines = before_use_lines(&all, locale);
        assert_eq!(lines.len(), 2);
        assert!(
            lines[0].starts_with("Give it a long hot time. In this heap that goes for pigeon on ")
        );
        assert!(lines[0].contains("; rabbit on "), "{}", lines[0]);
        assert_eq!(lines[1], before_use_line(&all[1], locale));
        assert!(before_use_lines(&[], locale).is_empty());
    }
}
