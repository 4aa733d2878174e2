//! Is this heap ready? Signs that were measured, what they say together, and how weak they are;
//! beside them, apart, what the simulation says; and how much compost there will be.

use heapwright_catalogue::Catalogue;
use heapwright_engine::finish::signs::{
    self, Family, HeatingClass, MaturityClass, RespirationClass, Standing,
};
use heapwright_engine::finish::verdict::{Judgement, judge};
use heapwright_garden::Garden;
use heapwright_journal::content::{
    GerminationTest, Laboratory, Look, ProbePlace, Smell, Squeeze, Tested,
};
use heapwright_journal::{Content, EventId, Moment};
use heapwright_state::State;

use crate::forecast::{Today, days_between, garden_climate, today};
use crate::lots::{Inside, Until, inside};
use crate::question::QuestionError;
use crate::yields::{YieldAnswer, known, recent_looks, squeezed, yields};

/// A sign that is older says little of today [d].
const OLD_D: f64 = 60.0;
/// So many seeds make a share worth its name: ten in each of three dishes.
const ENOUGH_SEEDS: u32 = 30;
/// A reading of the air so far from that of the heap still counts [d].
const AIR_HOLDS_D: f64 = 1.0;

/// The question: is this heap ready?
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ReadyQuestion {
    /// Which heap.
    pub heap: EventId,
    /// What the clock says.
    pub now: Moment,
    /// Whether the heap is simulated beside the signs, which may take a second.
    pub simulate: bool,
}

/// What a test found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Finding {
    /// Self-heating in a flask.
    SelfHeating {
        /// Over the room [K].
        rise_k: f64,
        /// Its class.
        class: HeatingClass,
        /// The class that counts: one rawer, for a household flask.
        counted: HeatingClass,
    },
    /// The heap after it was turned.
    Reheating {
        /// Over the air [K].
        rise_k: f64,
        /// When it was turned.
        turned: Moment,
    },
    /// A closed bag.
    Bag {
        /// Closed for so long [d].
        days: f64,
        /// True when it swelled.
        swollen: bool,
        /// How it smelt.
        smell: Option<Smell>,
    },
    /// Carbon given off as carbon dioxide.
    Respiration {
        /// Of organic matter and day [mg/g].
        carbon_mg_g_d: f64,
        /// Its class.
        class: RespirationClass,
    },
    /// Germination index: seeds up and length of roots.
    Germination {
        /// 1 is as good as the control.
        index: f64,
    },
    /// Seedlings against the control, roots not measured.
    Emergence {
        /// 1 is as good as the control.
        share: f64,
        /// Its class.
        class: MaturityClass,
    },
    /// C:N by a laboratory.
    CarbonToNitrogen {
        /// Ratio of masses, measured carbon.
        ratio: f64,
    },
    /// Ammonium over nitrate.
    AmmoniumToNitrate {
        /// Ratio of masses of nitrogen.
        ratio: f64,
        /// Its class.
        class: MaturityClass,
    },
    /// Ammonium alone.
    Ammonium {
        /// Nitrogen of dry matter [mg/kg].
        nitrogen_mg_kg: f64,
        /// Its class.
        class: MaturityClass,
    },
}

impl Finding {
    /// Of which kind of sign it is.
    #[must_use]
    pub const fn family(&self) -> Family {
        match self {
            Self::SelfHeating { .. }
            | Self::Reheating { .. }
            | Self::Bag { .. }
            | Self::Respiration { .. } => Family::Stability,
            _ => Family::Maturity,
        }
    }

    /// Signs of the same test have the same order.
    const fn order(&self) -> u8 {
        match self {
            Self::Respiration { .. } => 0,
            Self::SelfHeating { .. } => 1,
            Self::Reheating { .. } => 2,
            Self::Bag { .. } => 3,
            Self::Germination { .. } => 4,
            Self::Emergence { .. } => 5,
            Self::AmmoniumToNitrate { .. } | Self::Ammonium { .. } => 6,
            Self::CarbonToNitrogen { .. } => 7,
        }
    }
}

/// Why a sign is weak.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Doubt {
    /// Something was fed or moved in after the test: it tells of other stuff, and does not count.
    FedSince,
    /// It is more than two months old.
    Old,
    /// The bag was not closed long enough, or nobody smelt it: it does not count.
    BagSaysNothing,
    /// The heap is too small, or of unknown size, to heat again at all.
    SmallHeap,
    /// The heap is too dry to heat: that it is cool does not count.
    Dry,
    /// How moist it was is not known.
    MoistureUnknown,
    /// The air was not measured: what is usual in the month was taken.
    AirUsual,
    /// So few seeds say little.
    FewSeeds,
    /// Cress forgives much: that seeds do well is a weak sign, that they fail a strong one.
    SeedsForgive,
    /// A home flask makes compost look riper; it was moved a class towards raw.
    HomeFlask,
    /// A nose is a rough instrument.
    NoseOnly,
    /// Wood that is left raises C:N in ripe compost, and much nitrogen lowers it in raw.
    RatioAlone,
}

impl Doubt {
    /// True when the sign is not counted for it.
    #[must_use]
    pub const fn is_fatal(self) -> bool {
        matches!(self, Self::FedSince | Self::BagSaysNothing | Self::Dry)
    }
}

/// One sign.
#[derive(Clone, Debug, PartialEq)]
pub struct Sign {
    /// What was found.
    pub finding: Finding,
    /// What it says.
    pub standing: Standing,
    /// When.
    pub at: Moment,
    /// Why it is weak.
    pub doubts: Vec<Doubt>,
}

impl Sign {
    /// True when it enters the verdict.
    #[must_use]
    pub fn counts(&self) -> bool {
        !self.doubts.iter().any(|doubt| doubt.is_fatal())
    }
}

/// Looks and smells of the last days: the weakest signs, which enter no verdict.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Hint {
    /// It smells of forest soil or hardly at all.
    SmellsEarthy,
    /// It smells of ammonia, sour or rotten.
    SmellsFoul,
    /// Dark and crumbly, or nothing can be told apart.
    LooksDone,
    /// A probe in the core shows much more than the air.
    Warm,
}

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct ReadyAnswer {
    /// Which heap.
    pub heap: EventId,
    /// What the clock says.
    pub now: Moment,
    /// What the signs say together.
    pub judgement: Judgement,
    /// The last sign of each test that counts, stability first; after it a later one that does not.
    pub signs: Vec<Sign>,
    /// True when the verdict rests on home tests alone.
    pub home_tests_only: bool,
    /// Looks and smells, each once.
    pub hints: Vec<Hint>,
    /// What the simulation says, when it was asked for and could be had.
    pub simulated: Option<Today>,
    /// How much compost there will be; `None` when nothing in the heap can be used.
    pub yields: Option<YieldAnswer>,
}

/// Answers whether a heap is ready.
///
/// # Errors
///
/// When nothing lies in the heap.
pub fn is_it_ready(
    catalogue: &Catalogue,
    garden: &Garden,
    state: &State,
    question: &ReadyQuestion,
) -> Result<ReadyAnswer, QuestionError> {
    let ReadyQuestion { heap, now, .. } = *question;
    let there = inside(state, heap, Until::Instant(now.instant_ms));
    if there.portions.is_empty() {
        return Err(QuestionError::NothingInHeap);
    }
    let signs = signs_of(state, heap, &there, now)?;
    let counted: Vec<&Sign> = signs.iter().filter(|sign| sign.counts()).collect();
    let judgement = judged(&signs);
    let home_tests_only = !counted.is_empty()
        && !counted.iter().any(|sign| {
            matches!(
                sign.finding,
                Finding::Respiration { .. }
                    | Finding::AmmoniumToNitrate { .. }
                    | Finding::Ammonium { .. }
                    | Finding::CarbonToNitrogen { .. }
            )
        });
    let simulated = if question.simulate {
        today(catalogue, garden, state, heap, now).ok()
    } else {
        None
    };
    Ok(ReadyAnswer {
        heap,
        now,
        judgement,
        home_tests_only,
        hints: hints(&there, now),
        simulated,
        yields: yields(catalogue, garden, state, heap, &there, now),
        signs,
    })
}

/// The signs of what lay in a heap: of each test what [`last_of_each`] has, stability first.
///
/// # Errors
///
/// When the usual air of the garden cannot be told.
pub(crate) fn signs_of(
    state: &State,
    heap: EventId,
    there: &Inside,
    now: Moment,
) -> Result<Vec<Sign>, QuestionError> {
    let mut signs = tested(there);
    signs.extend(reheated(state, heap, there, now)?);
    let arrived_ms = there.last_arrival_ms.unwrap_or(i64::MIN);
    for sign in &mut signs {
        if sign.at.instant_ms < arrived_ms {
            sign.doubts.push(Doubt::FedSince);
        } else if days_between(sign.at.instant_ms, now.instant_ms) > OLD_D {
            sign.doubts.push(Doubt::Old);
        }
        sign.doubts.sort();
    }
    Ok(last_of_each(signs))
}

/// Of signs in the order of time the last of each test that counts, and behind it the last of all
/// when that one does not count: what says nothing must not erase what was found before.
fn last_of_each(mut signs: Vec<Sign>) -> Vec<Sign> {
    // Sorting keeps the order of time.
    signs.sort_by_key(|sign| sign.finding.order());
    signs
        .chunk_by(|one, other| one.finding.order() == other.finding.order())
        .flat_map(|of_one_test| {
            let counted = of_one_test.iter().rposition(Sign::counts);
            let last = of_one_test.len() - 1;
            counted
                .filter(|index| *index < last)
                .into_iter()
                .chain([last])
                .map(|index| of_one_test[index].clone())
        })
        .collect()
}

/// What signs say together; those that do not count are left out.
pub(crate) fn judged(signs: &[Sign]) -> Judgement {
    judge(
        &signs
            .iter()
            .filter(|sign| sign.counts())
            .map(|sign| (sign.finding.family(), sign.standing))
            .collect::<Vec<_>>(),
    )
}

/// Signs of tests that were written down, in the order of time.
fn tested(there: &Inside) -> Vec<Sign> {
    let mut signs = Vec::new();
    for event in &there.events {
        let Some(Content::Tested(test)) = event.content() else {
            continue;
        };
        let mut add = |finding, standing, doubts: &[Doubt]| {
            signs.push(Sign {
                finding,
                standing,
                at: event.happened,
                doubts: doubts.to_vec(),
            });
        };
        at_home(test, &mut add);
        if let Some(laboratory) = &test.laboratory {
            in_laboratory(laboratory, &mut add);
        }
    }
    signs
}

fn at_home(test: &Tested, add: &mut impl FnMut(Finding, Standing, &[Doubt])) {
    if let Some(heated) = test.self_heating {
        let rise_k = heated.highest_c - heated.room_c;
        let class = HeatingClass::of_rise(rise_k);
        let counted = class.rawer();
        let finding = Finding::SelfHeating {
            rise_k,
            class,
            counted,
        };
        add(finding, counted.standing(), &[Doubt::HomeFlask]);
    }
    if let Some(bag) = test.bag {
        let finding = Finding::Bag {
            days: bag.days,
            swollen: bag.swollen,
            smell: bag.smell,
        };
        let foul = bag.smell.is_some_and(is_foul);
        let clean = matches!(bag.smell, Some(Smell::Earthy | Smell::Faint));
        match signs::bag_standing(bag.days, bag.swollen, foul, clean) {
            Some(standing) => add(finding, standing, &[Doubt::NoseOnly]),
            None => add(finding, Standing::Between, &[Doubt::BagSaysNothing]),
        }
    }
    if let Some(test) = test.germination {
        germinated(&test, add);
    }
}

fn germinated(test: &GerminationTest, add: &mut impl FnMut(Finding, Standing, &[Doubt])) {
    if test.sown == 0 || test.control_sown == 0 {
        return;
    }
    let share = f64::from(test.sprouted) / f64::from(test.sown);
    let control = f64::from(test.control_sprouted) / f64::from(test.control_sown);
    let mut doubts = Vec::new();
    if test.sown.min(test.control_sown) < ENOUGH_SEEDS {
        doubts.push(Doubt::FewSeeds);
    }
    let (finding, standing) = match (test.root_mm, test.control_root_mm) {
        (Some(root), Some(control_root)) => {
            let Some(index) = signs::germination_index(share, control, root, control_root) else {
                return;
            };
            (
                Finding::Germination { index },
                signs::germination_standing(index),
            )
        }
        _ if control > 0.0 => {
            let share = share / control;
            let class = MaturityClass::of_emergence(share);
            (
                Finding::Emergence { share, class },
                signs::emergence_standing(share),
            )
        }
        _ => return,
    };
    if standing == Standing::For {
        doubts.push(Doubt::SeedsForgive);
    }
    add(finding, standing, &doubts);
}

fn in_laboratory(found: &Laboratory, add: &mut impl FnMut(Finding, Standing, &[Doubt])) {
    if let Some(dioxide) = found.carbon_dioxide_mg_g_d {
        // The journal has carbon dioxide; the classes are of carbon.
        let carbon_mg_g_d = signs::carbon_given_off(dioxide);
        let class = RespirationClass::of_carbon(carbon_mg_g_d);
        let finding = Finding::Respiration {
            carbon_mg_g_d,
            class,
        };
        add(finding, class.standing(), &[]);
    }
    let ratio = found.cn_ratio_measured.or_else(|| {
        let nitrogen = found.nitrogen_pct_dry.filter(|pct| *pct > 0.0)?;
        Some(found.carbon_pct_dry? / nitrogen)
    });
    if let Some(ratio) = ratio {
        let finding = Finding::CarbonToNitrogen { ratio };
        add(finding, signs::ratio_standing(ratio), &[Doubt::RatioAlone]);
    }
    if let Some(ammonium) = found.ammonium_nitrogen_mg_kg_dry {
        match found.nitrate_nitrogen_mg_kg_dry {
            Some(nitrate) if nitrate > 0.0 => {
                let ratio = ammonium / nitrate;
                let class = MaturityClass::of_ammonium_to_nitrate(ratio);
                let finding = Finding::AmmoniumToNitrate { ratio, class };
                add(finding, class.standing(), &[]);
            }
            _ => {
                let class = MaturityClass::of_ammonium(ammonium);
                let finding = Finding::Ammonium {
                    nitrogen_mg_kg: ammonium,
                    class,
                };
                add(finding, class.standing(), &[]);
            }
        }
    }
}

fn is_foul(smell: Smell) -> bool {
    matches!(smell, Smell::Ammonia | Smell::Sour | Smell::Rotten)
}

/// Whether the heap heated again after it was last turned.
fn reheated(
    state: &State,
    heap: EventId,
    there: &Inside,
    now: Moment,
) -> Result<Option<Sign>, QuestionError> {
    let turned = there.events.iter().rev().find_map(|event| {
        matches!(event.content(), Some(Content::Turned(_))).then_some(event.happened)
    });
    let Some(turned) = turned else {
        return Ok(None);
    };
    let (from, to) = signs::REHEATING_DAYS;
    let mut hottest: Option<(f64, Moment, bool)> = None;
    for event in &there.events {
        let Some(Content::Read(read)) = event.content() else {
            continue;
        };
        let after_d = days_between(turned.instant_ms, event.happened.instant_ms);
        if !(from..=to).contains(&after_d) {
            continue;
        }
        let core = read
            .probes
            .iter()
            .filter(|probe| matches!(probe.place, None | Some(ProbePlace::Core)))
            .map(|probe| probe.temperature_c)
            .fold(f64::NEG_INFINITY, f64::max);
        if !core.is_finite() {
            continue;
        }
        let (air, is_usual) = match air_near(there, event.happened) {
            Some(air) => (air, false),
            None => (usual_air(state, event.happened)?, true),
        };
        let rise = core - air;
        if hottest.is_none_or(|(most, ..)| rise > most) {
            hottest = Some((rise, event.happened, is_usual));
        }
    }
    let Some((rise_k, at, is_usual)) = hottest else {
        return Ok(None);
    };
    let standing = signs::reheating_standing(rise_k);
    let mut doubts = Vec::new();
    if is_usual {
        doubts.push(Doubt::AirUsual);
    }
    if standing != Standing::Against {
        match squeezed(there, now) {
            Some(Squeeze::Dusty | Squeeze::Dry) => doubts.push(Doubt::Dry),
            None => doubts.push(Doubt::MoistureUnknown),
            _ => {}
        }
        let is_large = known(state, heap, there, now)
            .volume_m3
            .is_some_and(|volume| volume.typical >= signs::REHEATING_LEAST_M3);
        if !is_large {
            doubts.push(Doubt::SmallHeap);
        }
    }
    Ok(Some(Sign {
        finding: Finding::Reheating { rise_k, turned },
        standing,
        at,
        doubts,
    }))
}

/// The air as it was read nearest to a time.
fn air_near(there: &Inside, at: Moment) -> Option<f64> {
    there
        .events
        .iter()
        .filter_map(|event| match event.content() {
            Some(Content::Read(read)) => {
                let apart = days_between(event.happened.instant_ms, at.instant_ms).abs();
                Some((apart, read.air_temperature_c?))
            }
            _ => None,
        })
        .filter(|(apart, _)| *apart <= AIR_HOLDS_D)
        .min_by(|one, other| one.0.total_cmp(&other.0))
        .map(|(_, air)| air)
}

fn usual_air(state: &State, at: Moment) -> Result<f64, QuestionError> {
    let (climate, _) = garden_climate(state)?;
    let month = usize::try_from(at.local().month())
        .unwrap_or(1)
        .clamp(1, 12)
        - 1;
    Ok(climate.months()[month].mean_c)
}

fn hints(there: &Inside, now: Moment) -> Vec<Hint> {
    let mut hints = Vec::new();
    let Some(read) = recent_looks(there, now).next() else {
        return hints;
    };
    if read.smells.iter().any(|smell| is_foul(*smell)) {
        hints.push(Hint::SmellsFoul);
    } else if read
        .smells
        .iter()
        .any(|smell| matches!(smell, Smell::Earthy | Smell::Faint))
    {
        hints.push(Hint::SmellsEarthy);
    }
    if read
        .looks
        .iter()
        .any(|look| matches!(look, Look::Crumbly | Look::Unrecognisable))
    {
        hints.push(Hint::LooksDone);
    }
    let core = read
        .probes
        .iter()
        .map(|probe| probe.temperature_c)
        .fold(f64::NEG_INFINITY, f64::max);
    // The last class of self-heating begins at 10 K.
    if read.air_temperature_c.is_some_and(|air| core - air > 10.0) {
        hints.push(Hint::Warm);
    }
    hints.sort();
    hints
}
