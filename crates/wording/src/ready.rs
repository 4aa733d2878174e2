//! Is it ready? The verdict, what each sign says, why it is weak, and what to do next.

use heapwright_answers::finish::{
    FARTHEST, Family, HeatingClass, Judgement, MaturityClass, RespirationClass, Shown, Standing,
    Verdict, carbon_of_uptake,
};
use heapwright_answers::{Doubt, Finding, Hint, ReadyAnswer, Sign, Today, YieldAnswer};
use heapwright_quantity::{Interval, UnitSystem};
use heapwright_texts::Locale;
use heapwright_texts::messages::{notices_of_commands as of_commands, ready as messages};

use crate::amounts::{interval_text, percent_text, ratio_text};
use crate::forecast::degrees_apart;
use crate::home_tests::HomeTest;
use crate::hygiene::rounded;
use crate::journal::ago_text;
use crate::words::Word;

/// Said under every verdict of ripeness.
#[must_use]
pub fn ready_limits(locale: Locale) -> &'static str {
    messages::limits(locale)
}

/// Said over what is simulated.
#[must_use]
pub fn simulated_apart(locale: Locale) -> &'static str {
    messages::simulated_apart(locale)
}

/// The verdict in a word for scripts, the same in every language.
#[must_use]
pub const fn verdict_word(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Untested => "untested",
        Verdict::NotReady => "not ready",
        Verdict::Nearly => "nearly",
        Verdict::Ready => "ready",
    }
}

/// What signs of one kind say together, in a word for scripts, the same in every language.
#[must_use]
pub const fn shown_word(shown: Shown) -> &'static str {
    match shown {
        Shown::Untested => "untested",
        Shown::Against => "against",
        Shown::Divided => "divided",
        Shown::Between => "nearly",
        Shown::For => "for",
    }
}

/// What one sign says, in a word.
#[must_use]
pub fn standing_word(standing: Standing, locale: Locale) -> &'static str {
    match standing {
        Standing::Against => messages::standing_against(locale),
        Standing::Between => messages::standing_between(locale),
        Standing::For => messages::standing_for(locale),
    }
}

/// The verdict as sentences, and what to do next.
#[must_use]
pub fn verdict_lines(answer: &ReadyAnswer, locale: Locale) -> Vec<String> {
    let mut lines = verdict_sentences(answer, locale);
    lines.extend(next_line(answer, locale));
    lines
}

/// The verdict as sentences.
#[must_use]
pub fn verdict_sentences(answer: &ReadyAnswer, locale: Locale) -> Vec<String> {
    let judgement = &answer.judgement;
    let is_untested = judgement.verdict == Verdict::Untested;
    let verdict = match judgement.verdict {
        Verdict::Untested => messages::verdict_untested(locale),
        Verdict::NotReady => messages::verdict_not_ready(locale),
        Verdict::Nearly => messages::verdict_nearly(locale),
        Verdict::Ready => messages::verdict_ready(locale),
    };
    let stability = match judgement.stability {
        Shown::Untested if !is_untested => Some(messages::stability_untested(locale)),
        Shown::Against => Some(messages::stability_against(locale)),
        Shown::Divided => Some(messages::stability_divided(locale)),
        Shown::Between => Some(messages::stability_between(locale)),
        Shown::Untested | Shown::For => None,
    };
    let maturity = match judgement.maturity {
        Shown::Untested if !is_untested => Some(messages::maturity_untested(locale)),
        Shown::Against => Some(messages::maturity_against(locale)),
        Shown::Divided => Some(messages::maturity_divided(locale)),
        Shown::Between => Some(messages::maturity_between(locale)),
        Shown::Untested | Shown::For => None,
    };
    let at_home = answer
        .home_tests_only
        .then(|| messages::home_tests_only(locale));
    [Some(verdict), stability, maturity, at_home]
        .into_iter()
        .flatten()
        .map(str::to_owned)
        .collect()
}

/// What to do next, unless it is ready, with where the command line says how.
fn next_line(answer: &ReadyAnswer, locale: Locale) -> Option<String> {
    match tests_key(&answer.judgement) {
        Some(tests) => Some(of_commands::NextByCommand { tests }.said(locale)),
        None => next_without_test(&answer.judgement, locale),
    }
}

/// What to do next, unless it is ready, on a face that shows the sheets of the tests below it.
#[must_use]
pub fn next_step(answer: &ReadyAnswer, locale: Locale) -> Option<String> {
    match tests_key(&answer.judgement) {
        Some(tests) => Some(messages::NextBelow { tests }.said(locale)),
        None => next_without_test(&answer.judgement, locale),
    }
}

/// Which tests to do next; none when it is ready, or when it must ripen first.
#[must_use]
pub const fn next_tests(judgement: &Judgement) -> &'static [HomeTest] {
    let missing = (
        matches!(judgement.stability, Shown::Untested | Shown::Divided),
        matches!(judgement.maturity, Shown::Untested | Shown::Divided),
    );
    match (judgement.verdict, missing) {
        (Verdict::Ready, _) => &[],
        (_, (true, true)) => &[HomeTest::Bag, HomeTest::Seedlings],
        (Verdict::NotReady, _) | (_, (false, false)) => &[],
        (_, (true, false)) => &[HomeTest::Bag, HomeTest::SelfHeating],
        (_, (false, true)) => &[HomeTest::Seedlings],
    }
}

/// By what the messages choose which tests are next; `None` when none is.
const fn tests_key(judgement: &Judgement) -> Option<&'static str> {
    match next_tests(judgement) {
        [] => None,
        [HomeTest::Bag, HomeTest::Seedlings] => Some("bag-and-seedlings"),
        [HomeTest::Bag, ..] => Some("rest"),
        _ => Some("plants"),
    }
}

/// What to do next when no test is; `None` when it is ready.
pub(crate) fn next_without_test(judgement: &Judgement, locale: Locale) -> Option<String> {
    match judgement.verdict {
        Verdict::Ready => None,
        Verdict::NotReady => Some(messages::next_turn(locale).to_owned()),
        Verdict::Untested | Verdict::Nearly => Some(messages::next_ripen(locale).to_owned()),
    }
}

/// The name of a test.
#[must_use]
pub fn test_name(finding: &Finding, locale: Locale) -> &'static str {
    match finding {
        Finding::SelfHeating { .. } => messages::test_self_heating(locale),
        Finding::Reheating { .. } => messages::test_reheating(locale),
        Finding::Bag { .. } => messages::test_bag(locale),
        Finding::Respiration { .. } => messages::test_respiration(locale),
        Finding::Germination { .. } => messages::test_germination(locale),
        Finding::Emergence { .. } => messages::test_emergence(locale),
        Finding::CarbonToNitrogen { .. } => messages::test_carbon_to_nitrogen(locale),
        Finding::AmmoniumToNitrate { .. } => messages::test_ammonium_to_nitrate(locale),
        Finding::Ammonium { .. } => messages::test_ammonium(locale),
    }
}

/// Of which kind a sign is: "rest" or "plants".
#[must_use]
pub fn family_word(family: Family, locale: Locale) -> &'static str {
    match family {
        Family::Stability => messages::family_stability(locale),
        Family::Maturity => messages::family_maturity(locale),
    }
}

/// What a test found: "8 °C over the room, class V, counted as IV".
#[must_use]
pub fn finding_text(finding: &Finding, locale: Locale) -> String {
    let degrees = |kelvin: f64| match locale.units {
        UnitSystem::Metric => format!("{}\u{a0}°C", locale.significant(kelvin, 2)),
        UnitSystem::UsCustomary => format!("{}\u{a0}°F", locale.significant(kelvin * 1.8, 2)),
    };
    match finding {
        Finding::SelfHeating {
            rise_k,
            class,
            counted,
        } => messages::FoundSelfHeating {
            class: &heating_word(*class, locale),
            counted: &heating_word(*counted, locale),
            rise: &degrees(*rise_k),
        }
        .said(locale),
        Finding::Reheating { rise_k, .. } => messages::FoundReheating {
            rise: &degrees(*rise_k),
        }
        .said(locale),
        Finding::Bag {
            days,
            swollen,
            smell,
        } => messages::FoundBag {
            days: rounded(*days, 2),
            smell: smell.map_or_else(
                || messages::found_bag_unsmelt(locale),
                |smell| smell.word(locale),
            ),
            state: if *swollen { "swollen" } else { "flat" },
        }
        .said(locale),
        Finding::Respiration {
            carbon_mg_g_d,
            class,
        } => messages::FoundRespiration {
            class: respiration_word(*class, locale),
            uptake: &locale.significant(*carbon_mg_g_d, 2),
        }
        .said(locale),
        Finding::Germination { index } => messages::FoundGermination {
            share: &percent_text(*index, locale),
        }
        .said(locale),
        Finding::Emergence { share, class } => messages::FoundEmergence {
            class: maturity_word(*class, locale),
            share: &percent_text(*share, locale),
        }
        .said(locale),
        Finding::CarbonToNitrogen { ratio } => ratio_text(*ratio, locale),
        Finding::AmmoniumToNitrate { ratio, class } => messages::FoundAmmoniumToNitrate {
            class: maturity_word(*class, locale),
            ratio: &locale.significant(*ratio, 2),
        }
        .said(locale),
        Finding::Ammonium {
            nitrogen_mg_kg,
            class,
        } => messages::FoundAmmonium {
            class: maturity_word(*class, locale),
            content: &locale.significant(*nitrogen_mg_kg, 2),
        }
        .said(locale),
    }
}

/// "class IV".
#[must_use]
pub fn heating_word(class: HeatingClass, locale: Locale) -> String {
    let class = match class {
        HeatingClass::I => "I",
        HeatingClass::II => "II",
        HeatingClass::III => "III",
        HeatingClass::IV => "IV",
        HeatingClass::V => "V",
    };
    messages::HeatingClass { class }.said(locale)
}

/// "stable".
#[must_use]
pub fn respiration_word(class: RespirationClass, locale: Locale) -> &'static str {
    match class {
        RespirationClass::Raw => messages::respiration_raw(locale),
        RespirationClass::Unstable => messages::respiration_unstable(locale),
        RespirationClass::ModeratelyUnstable => messages::respiration_moderately_unstable(locale),
        RespirationClass::Stable => messages::respiration_stable(locale),
        RespirationClass::VeryStable => messages::respiration_very_stable(locale),
    }
}

/// "mature".
#[must_use]
pub fn maturity_word(class: MaturityClass, locale: Locale) -> &'static str {
    match class {
        MaturityClass::Immature => messages::maturity_immature(locale),
        MaturityClass::Mature => messages::maturity_mature(locale),
        MaturityClass::VeryMature => messages::maturity_very_mature(locale),
    }
}

/// One sign for a table: of what, test, found, says, when.
#[must_use]
pub fn sign_cells(answer: &ReadyAnswer, sign: &Sign, locale: Locale) -> [String; 5] {
    let says = if sign.counts() {
        standing_word(sign.standing, locale)
    } else {
        messages::standing_not_counted(locale)
    };
    [
        family_word(sign.finding.family(), locale).to_owned(),
        test_name(&sign.finding, locale).to_owned(),
        finding_text(&sign.finding, locale),
        says.to_owned(),
        ago_text(sign.at, answer.now, locale),
    ]
}

/// Why a sign is weak, as a sentence.
#[must_use]
pub fn doubt_line(doubt: Doubt, locale: Locale) -> &'static str {
    match doubt {
        Doubt::FedSince => messages::doubt_fed_since(locale),
        Doubt::Old => messages::doubt_old(locale),
        Doubt::BagSaysNothing => messages::doubt_bag_says_nothing(locale),
        Doubt::SmallHeap => messages::doubt_small_heap(locale),
        Doubt::Dry => messages::doubt_dry(locale),
        Doubt::MoistureUnknown => messages::doubt_moisture_unknown(locale),
        Doubt::AirUsual => messages::doubt_air_usual(locale),
        Doubt::FewSeeds => messages::doubt_few_seeds(locale),
        Doubt::SeedsForgive => messages::doubt_seeds_forgive(locale),
        Doubt::HomeFlask => messages::doubt_home_flask(locale),
        Doubt::NoseOnly => messages::doubt_nose_only(locale),
        Doubt::RatioAlone => messages::doubt_ratio_alone(locale),
    }
}

/// Why a sign is weak, as one sentence; `None` when it is not.
#[must_use]
pub fn weak_line(sign: &Sign, locale: Locale) -> Option<String> {
    if sign.doubts.is_empty() {
        return None;
    }
    let doubts: Vec<&str> = sign
        .doubts
        .iter()
        .map(|doubt| doubt_line(*doubt, locale))
        .collect();
    let doubts = &doubts.join("; ");
    Some(messages::Weak { doubts }.said(locale))
}

/// What nose and eye say, as a sentence; `None` when they say nothing.
#[must_use]
pub fn hints_line(hints: &[Hint], locale: Locale) -> Option<String> {
    if hints.is_empty() {
        return None;
    }
    let words: Vec<&str> = hints
        .iter()
        .map(|hint| match hint {
            Hint::SmellsEarthy => messages::hint_smells_earthy(locale),
            Hint::SmellsFoul => messages::hint_smells_foul(locale),
            Hint::LooksDone => messages::hint_looks_done(locale),
            Hint::Warm => messages::hint_warm(locale),
        })
        .collect();
    let hints = &words.join(", ");
    Some(messages::Hints { hints }.said(locale))
}

/// What the simulation says, as sentences.
#[must_use]
pub fn today_lines(today: &Today, locale: Locale) -> Vec<String> {
    let uptake = today.standard_uptake_mg_per_g_vs_h;
    let class = RespirationClass::of_carbon(carbon_of_uptake(uptake));
    let rise_k = today.core_temperature_c - today.air_temperature_c;
    let days = rounded(today.days.round(), 3);
    vec![
        messages::TodayUptake {
            class: respiration_word(class, locale),
            uptake: &locale.significant(uptake, 2),
        }
        .said(locale),
        messages::TodayCore {
            degrees: &degrees_apart(rise_k, locale),
            ratio: &ratio_text(today.carbon_to_nitrogen, locale),
            side: if rise_k < 0.0 { "cooler" } else { "warmer" },
            share: &percent_text(today.ammonium_share, locale),
        }
        .said(locale),
        match today.ready_day {
            Some(day) => messages::TodayReady {
                day: rounded(day.round(), 3),
                days,
            }
            .said(locale),
            None => messages::TodayNotReady { days }.said(locale),
        },
    ]
}

/// Rows of what is to be expected: name, figure, range.
#[must_use]
pub fn yield_rows(yields: &YieldAnswer, locale: Locale) -> Vec<Vec<String>> {
    let mass = |value: f64| locale.mass(value);
    let volume = |value: f64| locale.volume(value);
    let row = |name: &str, interval: &Interval, text: &dyn Fn(f64) -> String| {
        vec![
            name.to_owned(),
            text(interval.value),
            interval_text(interval, text, locale),
        ]
    };
    vec![
        row(messages::yield_dry(locale), &yields.dry_kg, &mass),
        row(messages::yield_wet(locale), &yields.wet_kg, &mass),
        row(messages::yield_volume(locale), &yields.volume_m3, &volume),
        row(messages::yield_sieved(locale), &yields.sieved_m3, &volume),
        row(messages::yield_overs(locale), &yields.overs_m3, &volume),
        row(
            messages::yield_organic_loss(locale),
            &yields.organic_loss,
            &|share| percent_text(share, locale),
        ),
    ]
}

/// What to know about the yield, as sentences.
#[must_use]
pub fn yield_lines(yields: &YieldAnswer, locale: Locale) -> Vec<String> {
    let mut lines = vec![
        if yields.ash_measured {
            messages::dry_matter_by_ash(locale)
        } else {
            messages::dry_matter_by_materials(locale)
        }
        .to_owned(),
    ];
    lines.push(if yields.harvests > 0 {
        messages::Learnt {
            factor: &locale.significant(yields.factor, 2),
            harvests: yields.harvests as f64,
        }
        .said(locale)
    } else {
        messages::learns_from_harvests(locale).to_owned()
    });
    if yields.harvests_left_out > 0 {
        lines.push(
            messages::UnlikelyHarvests {
                farthest: FARTHEST,
                harvests: yields.harvests_left_out as f64,
            }
            .said(locale),
        );
    }
    if yields.ash_too_low {
        lines.push(messages::ash_too_low(locale).to_owned());
    }
    if yields.soil_likely {
        lines.push(messages::soil_likely(locale).to_owned());
    }
    lines.extend(left_out_line(&yields.left_out, locale));
    lines
}

/// What could not be used, as a sentence.
#[must_use]
pub fn left_out_line(names: &[String], locale: Locale) -> Option<String> {
    (!names.is_empty()).then(|| {
        let names = &names.join(", ");
        messages::LeftOut { names }.said(locale)
    })
}
