//! Hygiene as JSON: rules, dose, hours, the share treated, and what must be seen to before use.

use std::collections::BTreeMap;

use heapwright_answers::heat::{
    Estimate, Findings, HOUR_THRESHOLDS_C, Method, RULE_THRESHOLDS_C, Reach, Status, Treated,
};
use heapwright_answers::{BeforeUse, HygieneAnswer, RuleAnswer, ShareBasis};
use heapwright_catalogue::{Catalogue, SourceKind};
use heapwright_journal::Moment;
use heapwright_texts::Locale;
use heapwright_wording as wording;
#[cfg(feature = "schema")]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::ENGLISH;
use crate::journal_answer::NamedJson;

/// What `heapwright hygiene` answers.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct HygieneJson {
    /// The heap; null for a record from a file.
    pub heap: Option<NamedJson>,
    /// What was met at the probe, and the estimated share of the heap.
    pub headline: String,
    /// "static" or "turned".
    pub method: String,
    /// The record.
    pub record: HeatRecordJson,
    /// The rules, each judged as it is written.
    pub rules: Vec<HygieneRuleJson>,
    /// Dose at the probe: 1 is what the equation of 40 CFR 503.32 asks.
    pub dose: EstimateJson,
    /// Hours at or above each temperature [degC], as the probe showed it.
    pub hours_at_or_above: BTreeMap<String, f64>,
    /// The same with the probe's error taken off.
    pub hours_at_or_above_low: BTreeMap<String, f64>,
    /// The same with the probe's error put on.
    pub hours_at_or_above_high: BTreeMap<String, f64>,
    /// Hours at or above 48 degC, the temperature of a trial on white rot.
    pub white_rot_hours: EstimateJson,
    /// Share of the heap that is likely to have been in the heat.
    pub share_treated: ShareTreatedJson,
    /// Between turnings, in order.
    pub stays: Vec<StayJson>,
    /// Other depths of the record.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub other_depths: Vec<DepthJson>,
    /// Seeds, diseases, larvae.
    pub living: Vec<LivingJson>,
    /// What went in that must be seen to before the compost is used.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub before_use: Vec<BeforeUseJson>,
    /// The record in sentences.
    pub sentences: Vec<String>,
    /// What to know about the answer, as sentences.
    pub notices: Vec<String>,
}

/// The record of a probe.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct HeatRecordJson {
    /// Its first point, in UTC.
    pub first: String,
    /// Its last point, in UTC.
    pub last: String,
    /// How many points.
    pub points: u64,
    /// The highest temperature shown [degC].
    pub hottest_c: f64,
    /// Depth of the probe [cm]; null when it is not told.
    pub depth_cm: Option<f64>,
    /// By how much the probe may be wrong either way [K].
    pub probe_error_k: f64,
    /// Gaps that were too long to be credited.
    pub gaps: u64,
    /// Time that is not credited, from turnings to the next reading too [h].
    pub not_credited_hours: f64,
    /// How the temperature between two points is taken.
    pub interpolation: String,
}

/// How the record stands to a rule.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct HygieneRuleJson {
    /// Stable name.
    pub id: String,
    /// What the rule is called.
    pub name: String,
    /// Where it holds.
    pub jurisdiction: String,
    /// "met", "`not_met`" or "`not_applicable`", in time and temperature at the probe.
    pub status: String,
    /// The same with the probe's error taken off.
    pub status_low: String,
    /// The same with the probe's error put on.
    pub status_high: String,
    /// How much is done, 0 to 1; 1 when it is met.
    pub progress: f64,
    /// The same with the probe's error taken off.
    pub progress_low: f64,
    /// The same with the probe's error put on.
    pub progress_high: f64,
    /// What is missing; null for a rule that does not apply.
    pub missing: Option<MissingJson>,
    /// What it asks of temperature, time and turnings.
    pub asks: String,
    /// What else it asks, which no thermometer shows; null for nothing.
    pub also_asks: Option<String>,
    /// For what it was written.
    pub scope: String,
    /// From which year it is.
    pub year: u16,
    /// Where it stands.
    pub source: String,
    /// Keys of the sources.
    pub source_keys: Vec<String>,
    /// True when it was recalled and not read again: check it before you rely on it.
    pub from_memory: bool,
}

/// What is missing to meet a rule; all 0 when it is met.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct MissingJson {
    /// Time at its temperature [h].
    pub hours: f64,
    /// The same in days.
    pub days: f64,
    /// Time at its higher temperature, for a rule that has one [h].
    pub peak_hours: f64,
    /// Turnings.
    pub turns: u32,
    /// What the rule asks of the vessel, in words, when this heap is not known to have it.
    pub vessel: Option<String>,
    /// Some heat was above this, which is too hot for the rule and does not count [degC].
    pub too_hot_above_c: Option<f64>,
}

/// A value and where it may lie.
#[derive(Clone, Copy, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct EstimateJson {
    /// The likeliest.
    pub value: f64,
    /// The least.
    pub low: f64,
    /// The most.
    pub high: f64,
}

/// Share of the heap that is likely to have been in the heat.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct ShareTreatedJson {
    /// The share, 0 to 1.
    pub value: f64,
    /// The least.
    pub low: f64,
    /// The most.
    pub high: f64,
    /// The share that was never there, 0 to 1.
    pub never_heated: EstimateJson,
    /// The share that lies in the hot middle at a time.
    pub hot_share: EstimateJson,
    /// On what that rests: "assumed", "outline", "depths" or "simulated".
    pub basis: String,
    /// False when no two readings lie near enough to tell how long it was hot.
    pub known: bool,
    /// Turnings since the first reading.
    pub turns: u32,
    /// Turnings that are known from before it.
    pub turns_before: u32,
    /// Stays between turnings.
    pub stays: u32,
    /// Those in which the probe was at 55 degC or more for a day, or the dose came to 1.
    pub hot_stays: u32,
    /// Tenfold steps by which germs in the whole heap can fall at most; null without a limit.
    pub ceiling_log10: Option<f64>,
}

/// Between two turnings.
#[derive(Clone, Copy, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct StayJson {
    /// Dose at the probe.
    pub dose: EstimateJson,
    /// True when the probe was at 55 degC or more for a day, or the dose came to 1.
    pub hot: bool,
}

/// What the record shows at another depth.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct DepthJson {
    /// Depth [cm]; null for readings without one.
    pub depth_cm: Option<f64>,
    /// How many points.
    pub points: u64,
    /// The highest temperature shown [degC].
    pub hottest_c: f64,
    /// Dose.
    pub dose: EstimateJson,
    /// Hours at or above each temperature [degC].
    pub hours_at_or_above: BTreeMap<String, f64>,
}

/// What the record says of seeds, diseases or larvae.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct LivingJson {
    /// "reached", "`not_reached`" or "`not_trusted`": whether the time that trials found was reached
    /// at the probe, or heat cannot be trusted with it at all.
    pub reach: String,
    /// In words.
    pub sentence: String,
}

/// Something that went in, and what to do before use.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct BeforeUseJson {
    /// Id of the material.
    pub material: String,
    /// What it is called.
    pub name: String,
    /// When it first went in.
    pub first: String,
    /// When it last went in.
    pub last: String,
    /// How many feeds had it.
    pub feeds: u32,
    /// In words.
    pub sentence: String,
    /// Keys of the sources.
    pub source_keys: Vec<String>,
}

fn plain(text: &str) -> String {
    text.replace('\u{a0}', " ")
}

/// Fine enough for a second in a year, and short.
fn rounded(value: f64) -> f64 {
    (value * 1e6).round() / 1e6
}

fn estimate(low: f64, value: f64, high: f64) -> EstimateJson {
    EstimateJson { value, low, high }
}

fn of_estimate(of: Estimate) -> EstimateJson {
    estimate(of.low, of.value, of.high)
}

fn small(count: usize) -> u32 {
    u32::try_from(count).unwrap_or(u32::MAX)
}

fn moment(instant_ms: i64) -> String {
    Moment::new(instant_ms, 0).map_or_else(String::new, |moment| moment.to_string())
}

fn depth_cm(depth_m: Option<f64>) -> Option<f64> {
    depth_m.map(|depth_m| rounded(depth_m * 100.0))
}

fn hours(findings: &Findings, end: usize) -> BTreeMap<String, f64> {
    HOUR_THRESHOLDS_C
        .iter()
        .zip(findings.hours[end])
        .filter(|(least_c, _)| RULE_THRESHOLDS_C.contains(least_c))
        .map(|(least_c, hours)| (least_c.to_string(), rounded(hours)))
        .collect()
}

fn white_rot_hours(findings: &Findings) -> EstimateJson {
    let place = HOUR_THRESHOLDS_C
        .iter()
        .position(|threshold| !RULE_THRESHOLDS_C.contains(threshold))
        .unwrap_or_default();
    let [low, value, high] = [0, 1, 2].map(|end| rounded(findings.hours[end][place]));
    estimate(low, value, high)
}

fn dose(findings: &Findings) -> EstimateJson {
    estimate(findings.dose[0], findings.dose[1], findings.dose[2])
}

/// The word of a status.
fn status(status: Status) -> String {
    match status {
        Status::Met => "met",
        Status::NotMet => "not_met",
        Status::NotApplicable => "not_applicable",
    }
    .to_owned()
}

fn rule(catalogue: &Catalogue, rule: &RuleAnswer) -> HygieneRuleJson {
    let words = rule.words;
    let sources: Vec<_> = words
        .source_keys
        .iter()
        .filter_map(|key| catalogue.source(key))
        .collect();
    let applies = rule.status[1] != Status::NotApplicable;
    let missing = rule.outcome[1].missing;
    let progress = |end: usize| {
        if applies { rule.progress(end) } else { 0.0 }
    };
    HygieneRuleJson {
        id: words.id.clone(),
        name: words.name.clone(),
        jurisdiction: words.jurisdiction.clone(),
        status: status(rule.status[1]),
        status_low: status(rule.status[0]),
        status_high: status(rule.status[2]),
        progress: progress(1),
        progress_low: progress(0),
        progress_high: progress(2),
        missing: applies.then(|| MissingJson {
            hours: rounded(missing.seconds / 3600.0),
            days: rounded(missing.seconds / 86_400.0),
            peak_hours: rounded(missing.peak_seconds / 3600.0),
            turns: missing.turns,
            vessel: rule
                .lacking
                .map(|condition| wording::condition_text(condition, ENGLISH).to_owned()),
            too_hot_above_c: rule.too_hot_above_c.map(rounded),
        }),
        asks: words.asks.clone(),
        also_asks: Some(words.also_asks.clone()).filter(|text| !text.is_empty()),
        scope: words.scope.clone(),
        year: words.year,
        source: sources
            .iter()
            .map(|source| source.citation.as_str())
            .collect::<Vec<_>>()
            .join("; "),
        source_keys: words.source_keys.clone(),
        from_memory: sources
            .first()
            .is_some_and(|source| source.kind == SourceKind::Memory),
    }
}

fn share_treated(answer: &HygieneAnswer) -> ShareTreatedJson {
    let treated: &Treated = &answer.treated;
    ShareTreatedJson {
        value: treated.share.value,
        low: treated.share.low,
        high: treated.share.high,
        never_heated: of_estimate(treated.never),
        hot_share: of_estimate(answer.hot_share),
        basis: match answer.basis {
            ShareBasis::Assumed => "assumed",
            ShareBasis::Outline => "outline",
            ShareBasis::Depths => "depths",
            ShareBasis::Simulated => "simulated",
        }
        .to_owned(),
        known: answer.findings.credited_s > 0.0,
        turns: small(treated.stays.saturating_sub(1)),
        turns_before: small(answer.findings.turns_before),
        stays: small(treated.stays),
        hot_stays: small(treated.hot_stays),
        ceiling_log10: treated.ceiling_log10,
    }
}

/// What went in that must be seen to before use, as JSON.
#[must_use]
pub fn before_use_json(before_use: &[BeforeUse]) -> Vec<BeforeUseJson> {
    before_use
        .iter()
        .map(|one| BeforeUseJson {
            material: one.material.as_str().to_owned(),
            name: one.name.clone(),
            first: one.first.to_string(),
            last: one.last.to_string(),
            feeds: one.feeds,
            sentence: plain(&wording::before_use_line(one, ENGLISH)),
            source_keys: one.source_keys.clone(),
        })
        .collect()
}

/// The answer on hygiene as JSON.
#[must_use]
pub fn hygiene_json(
    catalogue: &Catalogue,
    answer: &HygieneAnswer,
    heap: Option<NamedJson>,
    before_use: &[BeforeUse],
) -> HygieneJson {
    let findings = &answer.findings;
    let mut sentences: Vec<String> = wording::hygiene_lines(answer, Locale::default())
        .iter()
        .map(|line| plain(line))
        .collect();
    sentences.push(wording::method_line(answer, ENGLISH));
    let mut notices: Vec<String> = answer
        .notices
        .iter()
        .map(|notice| plain(&wording::hygiene_notice(notice, ENGLISH)))
        .collect();
    notices.push(wording::hygiene_limits(ENGLISH).to_owned());
    HygieneJson {
        heap,
        headline: plain(&wording::hygiene_headline(answer, ENGLISH)),
        method: match answer.method {
            Method::Static => "static",
            Method::Turned => "turned",
        }
        .to_owned(),
        record: HeatRecordJson {
            first: moment(findings.first_ms),
            last: moment(findings.last_ms),
            points: findings.points,
            hottest_c: findings.hottest_c,
            depth_cm: depth_cm(findings.depth_m),
            probe_error_k: findings.probe_error_k,
            gaps: findings.gaps,
            not_credited_hours: rounded(findings.not_credited_s / 3600.0),
            interpolation: wording::interpolation(ENGLISH).to_owned(),
        },
        rules: answer
            .rules
            .iter()
            .map(|one| rule(catalogue, one))
            .collect(),
        dose: dose(findings),
        hours_at_or_above: hours(findings, 1),
        hours_at_or_above_low: hours(findings, 0),
        hours_at_or_above_high: hours(findings, 2),
        white_rot_hours: white_rot_hours(findings),
        share_treated: share_treated(answer),
        stays: (0..findings.stays[1].len())
            .map(|place| StayJson {
                dose: estimate(
                    findings.stays[0][place].dose,
                    findings.stays[1][place].dose,
                    findings.stays[2][place].dose,
                ),
                hot: findings.stays[1][place].is_hot(),
            })
            .collect(),
        other_depths: answer
            .others
            .iter()
            .map(|other| DepthJson {
                depth_cm: depth_cm(other.depth_m),
                points: other.points,
                hottest_c: other.hottest_c,
                dose: dose(other),
                hours_at_or_above: hours(other, 1),
            })
            .collect(),
        living: answer
            .living
            .iter()
            .map(|(living, reach)| LivingJson {
                reach: match reach {
                    Reach::Reached => "reached",
                    Reach::NotReached => "not_reached",
                    Reach::NotTrusted => "not_trusted",
                }
                .to_owned(),
                sentence: plain(&wording::living_line(*living, *reach, ENGLISH)),
            })
            .collect(),
        before_use: before_use_json(before_use),
        sentences,
        notices,
    }
}
