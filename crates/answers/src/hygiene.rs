//! How long was it how hot, which published rules does that meet at the probe, and what share of the
//! heap is likely to have been there?
//!
//! From a record that was read, or from what the journal says of a heap: what its probes showed in the
//! core, and when it was turned.

use std::collections::BTreeMap;
use std::fmt;

use heapwright_catalogue::{HygieneRule, hygiene_rules};
use heapwright_engine::hygiene::share::{
    Estimate, Outline, Treated, hot_share_between, hot_share_of_outline, treated,
};
use heapwright_engine::hygiene::{
    Condition, Findings, Living, Method, Outcome, Point, RULES, Reach, Record, RecordOptions,
    Status, Turn,
};
use heapwright_journal::content::{Cover, Enclosure, Probe, ProbePlace, Shape, Thoroughness, Wall};
use heapwright_journal::{Content, Event, EventId, Moment};
use heapwright_state::State;

/// How much of the outside comes to the inside when a heap is taken out and put back so: an estimate,
/// since nobody sorts it all.
const INSIDE_OUT_MIXING: f64 = 0.5;
/// A probe that is put in less deep tells of the outside, not of the core [m]: the cool shell that is
/// reckoned with is 15 cm.
const LEAST_CORE_DEPTH_M: f64 = 0.15;
/// A reading of the outside is set beside one of the core when they lie no farther apart [ms]: an hour.
const BESIDE_MS: i64 = 3_600_000;
/// The temperature at which the core counts as hot [degrees Celsius], as in the engine.
/// Source: EPA503-B
const HOT_C: f64 = 55.0;
/// A heap of which nobody said how large it is: one metre each way, a usual bin.
const USUAL_OUTLINE: Outline = Outline::Box(1.0, 1.0, 1.0);

/// What is asked besides the record.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct HygieneQuestion {
    /// How the heap is kept; turned when turnings are known and nothing else is said.
    pub method: Option<Method>,
    /// How the record is read.
    pub options: RecordOptions,
    /// The depth whose readings are judged [m]; the deepest when left out.
    pub depth_m: Option<f64>,
    /// The heap's outline, when it is said.
    pub outline: Option<Outline>,
    /// True for double or padded walls.
    pub insulated: bool,
    /// What is known of the vessel.
    pub vessel: Vessel,
    /// Share of the heap at 55 degrees or more as simulated, where that was done.
    pub simulated: Option<Estimate>,
}

/// What is known of what the heap lies in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Vessel {
    /// Nothing.
    #[default]
    Unknown,
    /// It is neither closed nor insulated all over.
    Bare,
    /// It is insulated, and not known to be open at the top.
    Insulated,
    /// It is closed.
    Closed,
}

impl Vessel {
    fn of(enclosure: &Enclosure) -> Self {
        if enclosure.shape == Shape::Drum {
            Self::Closed
        } else if enclosure.wall == Some(Wall::Insulated) && enclosure.cover != Some(Cover::None) {
            Self::Insulated
        } else {
            Self::Bare
        }
    }
}

impl HygieneQuestion {
    /// Whether the vessel is what a rule asks. Of a vessel that is not known, whoever says that the
    /// heap lies still, closed or covered, is believed.
    fn has(&self, condition: Condition) -> bool {
        let said = self.method == Some(Method::Static);
        match (self.vessel, condition) {
            (Vessel::Closed, _) => true,
            (Vessel::Insulated, Condition::ClosedOrCovered) => true,
            (Vessel::Unknown, Condition::ClosedOrCovered) => said || self.insulated,
            (Vessel::Bare, Condition::ClosedOrCovered) => false,
            (Vessel::Unknown, Condition::ClosedVessel) => said,
            (Vessel::Bare | Vessel::Insulated, Condition::ClosedVessel) => false,
        }
    }
}

/// On what the share of the hot middle rests.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShareBasis {
    /// A heap of one metre each way, for want of a size.
    Assumed,
    /// The heap's size.
    Outline,
    /// Its size, and probes at more than one depth.
    Depths,
    /// A simulation of the heap.
    Simulated,
}

/// How the record stands to one rule.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RuleAnswer {
    /// The rule in words.
    pub words: &'static HygieneRule,
    /// With the probe's error taken off, as shown, with it put on.
    pub status: [Status; 3],
    /// What is done and missing of heat and turnings, likewise.
    pub outcome: [Outcome; 3],
    /// What the rule asks of the vessel, when this heap is not known to have it.
    pub lacking: Option<Condition>,
    /// Above this some of the heat was too much for the rule [degrees Celsius].
    pub too_hot_above_c: Option<f64>,
}

impl RuleAnswer {
    /// How much is done, 0 to 1; half of what heat and turnings give when the vessel is missing.
    #[must_use]
    pub fn progress(&self, end: usize) -> f64 {
        let heat = self.outcome[end].progress;
        if self.lacking.is_some() {
            heat / 2.0
        } else {
            heat
        }
    }
}

/// What to know about the answer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum HygieneNotice {
    /// Something went in after the core was first hot.
    FedSince {
        /// How many feeds.
        feeds: u32,
        /// The last of them.
        last: Moment,
    },
    /// Turnings that only let air in are not counted.
    Loosened {
        /// How many.
        turns: u32,
    },
    /// Gaps that were too long.
    NotCredited {
        /// How many.
        gaps: u64,
        /// How long together [s].
        seconds: f64,
    },
    /// From turnings to the next reading nothing is credited.
    AfterTurns {
        /// How long together [s].
        seconds: f64,
    },
    /// Rows without a depth beside rows with one are left out.
    NoDepth {
        /// How many rows.
        points: u64,
    },
    /// Some readings have other depths, and are not judged.
    OtherDepths {
        /// How many depths.
        depths: usize,
    },
    /// Compost came from another heap, whose heat is not known here.
    MovedIn,
}

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct HygieneAnswer {
    /// What the record shows where it is judged.
    pub findings: Findings,
    /// What it shows at other depths.
    pub others: Vec<Findings>,
    /// How the heap is taken to be kept.
    pub method: Method,
    /// True when that was said, false when it was told from the turnings.
    pub method_said: bool,
    /// The rules, in the order of the table.
    pub rules: Vec<RuleAnswer>,
    /// Share of the heap in its hot middle.
    pub hot_share: Estimate,
    /// On what it rests.
    pub basis: ShareBasis,
    /// Share that is likely to have been there while it was hot.
    pub treated: Treated,
    /// Seeds, diseases, larvae.
    pub living: Vec<(Living, Reach)>,
    /// What to know.
    pub notices: Vec<HygieneNotice>,
}

/// Why there is no answer. One sentence each.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum HygieneError {
    /// No probe was read.
    NoReadings,
    /// Nothing was read at that depth.
    NoSuchDepth,
}

impl fmt::Display for HygieneError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::NoReadings => {
                "there is no reading of the core since the heap was last empty: write some down"
            }
            Self::NoSuchDepth => {
                "there is no reading at that depth: give one of the depths of the record"
            }
        })
    }
}

impl std::error::Error for HygieneError {}

/// The answer for a record that was read.
///
/// # Errors
///
/// When it has no points, or none at the depth that is asked for.
pub fn hygiene_of_record(
    record: &Record,
    question: &HygieneQuestion,
) -> Result<HygieneAnswer, HygieneError> {
    let mut all = record.findings();
    if all.is_empty() {
        return Err(HygieneError::NoReadings);
    }
    let mut notices = Vec::new();
    // Nobody knows where a probe without a depth was: beside told depths it speaks for none.
    if all.iter().any(|findings| findings.depth_m.is_some()) {
        if let Some(without) = all.iter().find(|findings| findings.depth_m.is_none()) {
            notices.push(HygieneNotice::NoDepth {
                points: without.points,
            });
        }
        all.retain(|findings| findings.depth_m.is_some());
    }
    let place = match question.depth_m {
        // A tenth of a millimetre: what was typed and what stands in a file may be rounded apart.
        Some(depth_m) => all.iter().position(|findings| {
            findings
                .depth_m
                .is_some_and(|of| (of - depth_m).abs() < 1e-4)
        }),
        None => Some(all.len() - 1),
    };
    let findings = all.remove(place.ok_or(HygieneError::NoSuchDepth)?);
    if !all.is_empty() {
        notices.push(HygieneNotice::OtherDepths { depths: all.len() });
    }
    let shell = shell_between(&findings, &all);
    Ok(answer(findings, all, shell, question, notices))
}

/// The answer for a heap of the journal, since it was last empty.
///
/// # Errors
///
/// When no probe was read in its core.
pub fn hygiene_of_heap(
    state: &State,
    heap: EventId,
    now: Moment,
    question: &HygieneQuestion,
) -> Result<HygieneAnswer, HygieneError> {
    let history = Seen::of(state, heap, now);
    let mut record = Record::new(history.turns.clone(), question.options);
    for (time_ms, temperature_c) in &history.core {
        // In order and each instant once, as the map has it.
        let point = Point {
            time_ms: *time_ms,
            temperature_c: *temperature_c,
            depth_m: None,
        };
        if record.take(point).is_err() {
            return Err(HygieneError::NoReadings);
        }
    }
    let findings = record.findings().pop().ok_or(HygieneError::NoReadings)?;
    let notices = history.notices();
    let mut question = question.clone();
    if let Some(enclosure) = state.heap(heap).and_then(|heap| heap.enclosure()) {
        let height_m = history.height_m.unwrap_or(enclosure.height_m);
        question.outline = question.outline.or(Some(outline(enclosure, height_m)));
        question.vessel = Vessel::of(enclosure);
        question.insulated |= enclosure.wall == Some(Wall::Insulated);
    }
    let shell = history.shell();
    Ok(answer(findings, Vec::new(), shell, &question, notices))
}

fn outline(enclosure: &Enclosure, height_m: f64) -> Outline {
    let width_m = enclosure.width_m;
    match enclosure.shape {
        Shape::Cylinder | Shape::Drum => Outline::Cylinder(width_m, height_m),
        Shape::Cone => Outline::Cone(width_m, height_m),
        _ => Outline::Box(width_m, enclosure.depth_m.unwrap_or(width_m), height_m),
    }
}

/// The deepest depth that never came to heat and the shallowest that did, when one lies below the
/// other.
fn shell_between(judged: &Findings, others: &[Findings]) -> Option<(f64, f64)> {
    let all = || others.iter().chain([judged]);
    let depths = |hot: bool| {
        all()
            .filter(move |findings| (findings.hottest_c >= HOT_C) == hot)
            .filter_map(|findings| findings.depth_m)
    };
    let cold_m = depths(false).max_by(f64::total_cmp)?;
    let hot_m = depths(true).min_by(f64::total_cmp)?;
    (cold_m < hot_m).then_some((cold_m, hot_m))
}

fn answer(
    findings: Findings,
    others: Vec<Findings>,
    shell: Option<(f64, f64)>,
    question: &HygieneQuestion,
    mut notices: Vec<HygieneNotice>,
) -> HygieneAnswer {
    // Before the first reading or after it.
    let turned = findings.turns_before > 0 || findings.stays[1].len() > 1;
    let method = question.method.unwrap_or(if turned {
        Method::Turned
    } else {
        Method::Static
    });
    let outline = question.outline.unwrap_or(USUAL_OUTLINE);
    let (hot_share, basis) = match (question.simulated, shell, question.outline) {
        (Some(simulated), _, _) => (simulated, ShareBasis::Simulated),
        (None, Some((cold_m, hot_m)), Some(_)) => (
            hot_share_between(outline, cold_m, hot_m),
            ShareBasis::Depths,
        ),
        (None, _, Some(_)) => (
            hot_share_of_outline(outline, question.insulated),
            ShareBasis::Outline,
        ),
        (None, _, None) => (
            hot_share_of_outline(outline, question.insulated),
            ShareBasis::Assumed,
        ),
    };
    if findings.gaps > 0 {
        notices.push(HygieneNotice::NotCredited {
            gaps: findings.gaps,
            seconds: findings.gaps_s,
        });
    }
    if findings.after_turns_s > 0.0 {
        notices.push(HygieneNotice::AfterTurns {
            seconds: findings.after_turns_s,
        });
    }
    HygieneAnswer {
        method,
        method_said: question.method.is_some(),
        rules: rules(&findings, method, question),
        treated: treated(hot_share, &findings.stays),
        hot_share,
        basis,
        living: Living::ALL.map(|of| (of, of.reach(&findings))).to_vec(),
        findings,
        others,
        notices,
    }
}

/// Every rule of the table with its figures; a test sees to it that both lists are the same.
fn rules(findings: &Findings, method: Method, question: &HygieneQuestion) -> Vec<RuleAnswer> {
    hygiene_rules()
        .iter()
        .filter_map(|words| {
            let place = RULES.iter().position(|rule| rule.id == words.id)?;
            let rule = &RULES[place];
            let lacking = rule
                .condition
                .filter(|condition| rule.applies_to(method) && !question.has(*condition));
            let status = findings.status(place, method).map(|status| match status {
                Status::Met if lacking.is_some() => Status::NotMet,
                status => status,
            });
            Some(RuleAnswer {
                words,
                status,
                outcome: [0, 1, 2].map(|end| findings.outcomes[end][place]),
                lacking,
                too_hot_above_c: Some(rule.band.most_c)
                    .filter(|most_c| findings.hottest_c > *most_c),
            })
        })
        .collect()
}

/// What the journal saw of a heap since it was last empty.
#[derive(Default)]
struct Seen {
    /// By instant; of several readings of one instant the lowest.
    core: BTreeMap<i64, f64>,
    /// Depths with their temperatures, by instant.
    by_depth: Vec<(i64, f64, f64)>,
    turns: Vec<Turn>,
    loosened: u32,
    feeds: Vec<Moment>,
    moved_in: bool,
    height_m: Option<f64>,
}

impl Seen {
    fn of(state: &State, heap: EventId, now: Moment) -> Self {
        let mut seen = Self::default();
        if let Some(heap) = state.heap(heap) {
            for event in heap.history() {
                if event.happened.instant_ms <= now.instant_ms {
                    seen.take(heap.id, event);
                }
            }
        }
        seen
    }

    fn take(&mut self, heap: EventId, event: &Event) {
        let is_all = |share_pct: Option<f64>| share_pct.is_none_or(|share| share >= 100.0);
        match event.content() {
            Some(Content::Read(read)) => {
                self.height_m = read.height_m.or(self.height_m);
                for probe in &read.probes {
                    self.probe(event.happened.instant_ms, probe);
                }
            }
            Some(Content::Turned(turned)) => match turned.thoroughness {
                // Layers stay as they lie: it is no turning.
                Some(Thoroughness::Loosened) => self.loosened += 1,
                said => self.turns.push(Turn {
                    time_ms: event.happened.instant_ms,
                    mixing: if said == Some(Thoroughness::InsideOut) {
                        INSIDE_OUT_MIXING
                    } else {
                        0.0
                    },
                }),
            },
            Some(Content::Fed(fed)) if !fed.parts.is_empty() => self.feeds.push(event.happened),
            Some(Content::Moved(moved)) if moved.to == heap => self.moved_in = true,
            Some(Content::Moved(moved)) if moved.from == heap && is_all(moved.share_pct) => {
                *self = Self::default();
            }
            Some(Content::Harvested(harvested))
                if harvested.heap == heap && is_all(harvested.share_pct) =>
            {
                *self = Self::default();
            }
            _ => {}
        }
    }

    fn probe(&mut self, time_ms: i64, probe: &Probe) {
        if let Some(depth_m) = probe.depth_m {
            self.by_depth.push((time_ms, depth_m, probe.temperature_c));
        }
        let is_core = match probe.place {
            Some(ProbePlace::Core) => true,
            None => probe
                .depth_m
                .is_none_or(|depth_m| depth_m >= LEAST_CORE_DEPTH_M),
            _ => false,
        };
        if is_core {
            let shown = self.core.entry(time_ms).or_insert(probe.temperature_c);
            *shown = shown.min(probe.temperature_c);
        }
    }

    /// When the core was first seen hot.
    fn first_hot_ms(&self) -> Option<i64> {
        let mut hot = self.core.iter().filter(|(_, shown)| **shown >= HOT_C);
        hot.next().map(|(time_ms, _)| *time_ms)
    }

    /// The deepest that was cool and the shallowest that was hot while the core was hot.
    fn shell(&self) -> Option<(f64, f64)> {
        let beside_heat = |time_ms: i64| {
            self.core
                .range(time_ms - BESIDE_MS..=time_ms + BESIDE_MS)
                .any(|(_, shown)| *shown >= HOT_C)
        };
        let (mut cold_m, mut hot_m) = (None::<f64>, None::<f64>);
        for (time_ms, depth_m, shown) in &self.by_depth {
            if *shown >= HOT_C {
                hot_m = Some(hot_m.map_or(*depth_m, |known| known.min(*depth_m)));
            } else if beside_heat(*time_ms) {
                cold_m = Some(cold_m.map_or(*depth_m, |known| known.max(*depth_m)));
            }
        }
        cold_m.zip(hot_m).filter(|(cold_m, hot_m)| cold_m < hot_m)
    }

    fn notices(&self) -> Vec<HygieneNotice> {
        let mut notices = Vec::new();
        if let Some(first_ms) = self.first_hot_ms() {
            let since = || self.feeds.iter().filter(|fed| fed.instant_ms > first_ms);
            if let Some(last) = since().max() {
                notices.push(HygieneNotice::FedSince {
                    feeds: u32::try_from(since().count()).unwrap_or(u32::MAX),
                    last: *last,
                });
            }
        }
        if self.loosened > 0 {
            notices.push(HygieneNotice::Loosened {
                turns: self.loosened,
            });
        }
        if self.moved_in {
            notices.push(HygieneNotice::MovedIn);
        }
        notices
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_and_figures_are_of_the_same_rules() {
        let words: Vec<&str> = hygiene_rules()
            .iter()
            .map(|rule| rule.id.as_str())
            .collect();
        let figures: Vec<&str> = RULES.iter().map(|rule| rule.id).collect();
        assert_eq!(words, figures);
    }

    /// The words of a rule name its temperature, its time and its turnings.
    #[test]
    fn words_say_what_the_figures_ask() {
        use heapwright_engine::hygiene::Need;
        for (words, rule) in hygiene_rules().iter().zip(&RULES) {
            let asks = &words.asks;
            let seconds = match rule.need {
                Need::Hold { seconds, .. }
                | Need::HoldWithPeak { seconds, .. }
                | Need::BeforeEachTurn { seconds, .. } => seconds,
            };
            let time = if seconds < 86_400.0 {
                format!("for {} hour", seconds / 3600.0)
            } else {
                format!("for {} days", seconds / 86_400.0)
            };
            assert!(asks.contains(&time), "{}: {asks}", rule.id);
            let heat = format!("{} °C", rule.band.least_c);
            assert!(asks.contains(&heat), "{}: {asks}", rule.id);
            let turns = format!("{} turnings", rule.turns());
            assert_eq!(
                asks.contains(&turns),
                rule.turns() > 0,
                "{}: {asks}",
                rule.id
            );
            if rule.band.most_c.is_finite() {
                let most = format!("to {:.1} °C", rule.band.most_c);
                assert!(asks.contains(&most), "{}: {asks}", rule.id);
            }
        }
    }
}
