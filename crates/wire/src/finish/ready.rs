//! Is a heap ready? Verdict, signs, yield; and the sheets of the home tests.

use heapwright_answers::{Finding, Hint, ReadyAnswer, Sign, YieldAnswer};
use heapwright_state::State;
use heapwright_wording::{self as wording, HomeTest};
#[cfg(feature = "schema")]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::TodayJson;
use crate::ENGLISH;
use crate::answer::FigureJson;

/// What `heapwright ready` answers.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct ReadyJson {
    /// Id of the heap.
    pub heap: String,
    /// Its name.
    pub name: String,
    /// What the clock said.
    pub now: String,
    /// "untested", "not ready", "nearly" or "ready".
    pub verdict: String,
    /// What signs of stability say together: "untested", "against", "divided", "nearly", "for".
    pub stability: String,
    /// What signs of maturity say together.
    pub maturity: String,
    /// True when the verdict rests on home tests alone.
    pub home_tests_only: bool,
    /// The last sign of each test that counts, and behind it a later one that does not; measured,
    /// all of them.
    pub signs: Vec<SignJson>,
    /// Looks and smells, which enter no verdict: "earthy", "foul", "looks_done", "warm".
    pub hints: Vec<String>,
    /// How much compost there will be; null when nothing in the heap can be used.
    #[serde(rename = "yield")]
    pub expected: Option<YieldJson>,
    /// What the simulation says; null when it was not asked for or could not be had.
    pub simulated: Option<TodayJson>,
    /// The verdict in sentences.
    pub sentences: Vec<String>,
}

/// One sign.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct SignJson {
    /// The test: "self_heating", "reheating", "bag", "respiration", "germination", "seedlings",
    /// "cn_ratio", "ammonium_to_nitrate", "ammonium".
    pub test: String,
    /// "stability" or "maturity".
    pub family: String,
    /// When.
    pub at: String,
    /// The figure: rise [K]; days closed; carbon [mg/(g d)]; percent of the control; a ratio; mg/kg.
    pub value: f64,
    /// Its class, where there is one.
    pub class: Option<String>,
    /// What it says: "for", "nearly" or "against".
    pub standing: String,
    /// True when it enters the verdict.
    pub counts: bool,
    /// Why it is weak, in words.
    pub doubts: Vec<String>,
}

/// How much compost there will be when it is finished.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct YieldJson {
    /// Dry matter [kg].
    pub dry_mass_kg: FigureJson,
    /// Wet mass [kg].
    pub wet_mass_kg: FigureJson,
    /// Volume [L].
    pub volume_l: FigureJson,
    /// What passes the sieve [L].
    pub sieved_l: FigureJson,
    /// What the sieve holds back [L].
    pub overs_l: FigureJson,
    /// Organic matter that will be gone, percent.
    pub organic_loss_pct: FigureJson,
    /// By what own harvests multiplied mass and volume.
    pub factor: f64,
    /// From how many harvests that was learnt.
    pub harvests: usize,
    /// So many more gave so much or so little that they cannot be true; nothing was learnt of them.
    pub harvests_left_out: usize,
    /// True when a laboratory told the ash of the compost.
    pub ash_measured: bool,
    /// What to know about it, as sentences.
    pub notices: Vec<String>,
}

/// The answer as JSON.
#[must_use]
pub fn ready_json(state: &State, answer: &ReadyAnswer) -> ReadyJson {
    ReadyJson {
        heap: answer.heap.to_string(),
        name: wording::heap_name(state, answer.heap, ENGLISH).to_owned(),
        now: answer.now.to_string(),
        verdict: wording::verdict_word(answer.judgement.verdict).to_owned(),
        stability: wording::shown_word(answer.judgement.stability).to_owned(),
        maturity: wording::shown_word(answer.judgement.maturity).to_owned(),
        home_tests_only: answer.home_tests_only,
        signs: answer.signs.iter().map(sign_json).collect(),
        hints: answer
            .hints
            .iter()
            .map(|hint| hint_key(*hint).to_owned())
            .collect(),
        expected: answer.yields.as_ref().map(yield_json),
        simulated: answer.simulated.as_ref().map(TodayJson::of),
        sentences: wording::verdict_lines(answer, ENGLISH),
    }
}

fn hint_key(hint: Hint) -> &'static str {
    match hint {
        Hint::SmellsEarthy => "earthy",
        Hint::SmellsFoul => "foul",
        Hint::LooksDone => "looks_done",
        Hint::Warm => "warm",
    }
}

fn sign_json(sign: &Sign) -> SignJson {
    let (test, value, class) = match &sign.finding {
        Finding::SelfHeating { rise_k, class, .. } => (
            "self_heating",
            *rise_k,
            Some(wording::heating_word(*class, ENGLISH)),
        ),
        Finding::Reheating { rise_k, .. } => ("reheating", *rise_k, None),
        Finding::Bag { days, .. } => ("bag", *days, None),
        Finding::Respiration {
            carbon_mg_g_d,
            class,
        } => (
            "respiration",
            *carbon_mg_g_d,
            Some(wording::respiration_word(*class, ENGLISH).to_owned()),
        ),
        Finding::Germination { index } => ("germination", index * 100.0, None),
        Finding::Emergence { share, class } => (
            "seedlings",
            share * 100.0,
            Some(wording::maturity_word(*class, ENGLISH).to_owned()),
        ),
        Finding::CarbonToNitrogen { ratio } => ("cn_ratio", *ratio, None),
        Finding::AmmoniumToNitrate { ratio, class } => (
            "ammonium_to_nitrate",
            *ratio,
            Some(wording::maturity_word(*class, ENGLISH).to_owned()),
        ),
        Finding::Ammonium {
            nitrogen_mg_kg,
            class,
        } => (
            "ammonium",
            *nitrogen_mg_kg,
            Some(wording::maturity_word(*class, ENGLISH).to_owned()),
        ),
    };
    SignJson {
        test: test.to_owned(),
        family: match sign.finding.family() {
            heapwright_answers::finish::Family::Stability => "stability",
            heapwright_answers::finish::Family::Maturity => "maturity",
        }
        .to_owned(),
        at: sign.at.to_string(),
        value,
        class,
        standing: wording::standing_word(sign.standing, ENGLISH).to_owned(),
        counts: sign.counts(),
        doubts: sign
            .doubts
            .iter()
            .map(|doubt| wording::doubt_line(*doubt, ENGLISH).to_owned())
            .collect(),
    }
}

fn yield_json(yields: &YieldAnswer) -> YieldJson {
    YieldJson {
        dry_mass_kg: FigureJson::of(yields.dry_kg, 1.0),
        wet_mass_kg: FigureJson::of(yields.wet_kg, 1.0),
        volume_l: FigureJson::of(yields.volume_m3, 1000.0),
        sieved_l: FigureJson::of(yields.sieved_m3, 1000.0),
        overs_l: FigureJson::of(yields.overs_m3, 1000.0),
        organic_loss_pct: FigureJson::of(yields.organic_loss, 100.0),
        factor: yields.factor,
        harvests: yields.harvests,
        harvests_left_out: yields.harvests_left_out,
        ash_measured: yields.ash_measured,
        notices: wording::yield_lines(yields, ENGLISH),
    }
}

/// What `heapwright ready --how` answers: the sheet of a home test.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct HomeTestJson {
    /// What it is called on the command line.
    pub name: String,
    /// Its title.
    pub title: String,
    /// What it tells.
    pub tells: String,
    /// What is needed.
    pub needs: String,
    /// What is done, step by step.
    pub steps: Vec<String>,
    /// What the outcome says.
    pub reading: Vec<String>,
    /// How to write it down.
    pub record: String,
}

/// The sheet of a home test as JSON.
#[must_use]
pub fn home_test_json(test: HomeTest) -> HomeTestJson {
    let sheet = test.sheet(ENGLISH);
    let owned = |lines: &[&str]| lines.iter().map(|line| (*line).to_owned()).collect();
    HomeTestJson {
        name: sheet.name.to_owned(),
        title: sheet.title.to_owned(),
        tells: sheet.tells.to_owned(),
        needs: sheet.needs.to_owned(),
        steps: owned(&sheet.steps),
        reading: owned(&sheet.reading),
        record: sheet.record.to_owned(),
    }
}
