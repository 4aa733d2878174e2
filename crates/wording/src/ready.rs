//! Is it ready? The verdict, what each sign says, why it is weak, and what to do next.

use heapwright_answers::finish::{
    FARTHEST, Family, HeatingClass, Judgement, MaturityClass, RespirationClass, Shown, Standing,
    Verdict, carbon_of_uptake,
};
use heapwright_answers::{Doubt, Finding, Hint, ReadyAnswer, Sign, Today, YieldAnswer};
use heapwright_quantity::{Interval, UnitSystem, mass_text, significant, volume_text};
use heapwright_texts::Locale;

use crate::amounts::{interval_text, percent_text, ratio_text};
use crate::home_tests::HomeTest;
use crate::journal::ago_text;
use crate::words::Word;

/// Said under every verdict of ripeness.
pub const READY_LIMITS: &str = "Ripe is not the same as free of germs or seeds: these signs say nothing of hygiene. Local rules come first.";

/// Said over what is simulated.
pub const SIMULATED_APART: &str = "From the simulation, not measured; it enters no verdict:";

/// The verdict in a word, for scripts.
#[must_use]
pub const fn verdict_word(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Untested => "untested",
        Verdict::NotReady => "not ready",
        Verdict::Nearly => "nearly",
        Verdict::Ready => "ready",
    }
}

/// What signs of one kind say together, in a word.
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
pub const fn standing_word(standing: Standing) -> &'static str {
    match standing {
        Standing::Against => "against",
        Standing::Between => "nearly",
        Standing::For => "for",
    }
}

/// The verdict as sentences, and what to do next.
#[must_use]
pub fn verdict_lines(answer: &ReadyAnswer) -> Vec<String> {
    let mut lines = verdict_sentences(answer);
    lines.extend(next_line(answer));
    lines
}

/// The verdict as sentences.
#[must_use]
pub fn verdict_sentences(answer: &ReadyAnswer) -> Vec<String> {
    let judgement = &answer.judgement;
    let (stability, maturity) = (judgement.stability, judgement.maturity);
    let mut lines = vec![
        match judgement.verdict {
            Verdict::Untested => "Whether it is ready cannot be told: no test says anything yet.",
            Verdict::NotReady => "Not ready yet.",
            Verdict::Nearly => "Nearly ready, or ready in one respect only.",
            Verdict::Ready => {
                "Ready by two independent signs: it has come to rest, and plants bear it."
            }
        }
        .to_owned(),
    ];
    match stability {
        Shown::Untested if judgement.verdict != Verdict::Untested => {
            lines.push("No sign of rest (stability) counts yet.".to_owned());
        }
        Shown::Against => lines.push("It still works: the signs of rest fail.".to_owned()),
        Shown::Divided => lines.push("The signs of rest contradict each other.".to_owned()),
        Shown::Between => lines.push("It is nearly at rest.".to_owned()),
        _ => {}
    }
    match maturity {
        Shown::Untested if judgement.verdict != Verdict::Untested => {
            lines.push("No sign that plants bear it (maturity) counts yet.".to_owned());
        }
        Shown::Against => lines.push("Plants would suffer: the signs of maturity fail.".to_owned()),
        Shown::Divided => lines.push("The signs of maturity contradict each other.".to_owned()),
        Shown::Between => lines.push("Plants nearly bear it.".to_owned()),
        _ => {}
    }
    if answer.home_tests_only {
        lines.push("This rests on home tests alone, which are rough.".to_owned());
    }
    lines
}

/// What to do next, unless it is ready, with where the command line says how.
fn next_line(answer: &ReadyAnswer) -> Option<String> {
    let how = match next_tests(&answer.judgement) {
        [] => return next_without_test(&answer.judgement).map(str::to_owned),
        [HomeTest::Bag, HomeTest::Seedlings] => {
            "`heapwright ready --how bag` and `heapwright ready --how seedlings` say how."
        }
        [HomeTest::Bag, ..] => "`heapwright ready --how bag` or `--how self-heating` says how.",
        _ => "`heapwright ready --how seedlings` says how.",
    };
    Some(format!("{}: {how}", next_aim(&answer.judgement)))
}

/// What to do next, unless it is ready, on a face that shows the sheets of the tests below it.
#[must_use]
pub fn next_step(answer: &ReadyAnswer) -> Option<String> {
    if next_tests(&answer.judgement).is_empty() {
        return next_without_test(&answer.judgement).map(str::to_owned);
    }
    Some(format!(
        "{}; how it is done stands below.",
        next_aim(&answer.judgement)
    ))
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

/// What the tests that are next are for.
const fn next_aim(judgement: &Judgement) -> &'static str {
    match next_tests(judgement) {
        [HomeTest::Bag, HomeTest::Seedlings] => "Try the bag and the cress",
        [HomeTest::Bag, ..] => "Test whether it is at rest",
        _ => "Test whether plants bear it",
    }
}

/// What to do next when no test is; `None` when it is ready.
const fn next_without_test(judgement: &Judgement) -> Option<&'static str> {
    match judgement.verdict {
        Verdict::Ready => None,
        Verdict::NotReady => Some(
            "Turn it once, keep it as moist as a squeezed sponge, and test again in three or four weeks.",
        ),
        _ => Some("Let it ripen for some weeks more and test again."),
    }
}

/// The name of a test.
#[must_use]
pub const fn test_name(finding: &Finding) -> &'static str {
    match finding {
        Finding::SelfHeating { .. } => "self-heating in a flask",
        Finding::Reheating { .. } => "heat after turning",
        Finding::Bag { .. } => "closed bag",
        Finding::Respiration { .. } => "respiration",
        Finding::Germination { .. } => "germination index",
        Finding::Emergence { .. } => "seedlings",
        Finding::CarbonToNitrogen { .. } => "C:N by laboratory",
        Finding::AmmoniumToNitrate { .. } => "ammonium to nitrate",
        Finding::Ammonium { .. } => "ammonium",
    }
}

/// Of which kind a sign is: "rest" or "plants".
#[must_use]
pub const fn family_word(family: Family) -> &'static str {
    match family {
        Family::Stability => "rest",
        Family::Maturity => "plants",
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
        } => format!(
            "{} over the room, {} (counted {})",
            degrees(*rise_k),
            heating_word(*class),
            heating_word(*counted)
        ),
        Finding::Reheating { rise_k, .. } => format!("{} over the air", degrees(*rise_k)),
        Finding::Bag {
            days,
            swollen,
            smell,
        } => {
            let smell = smell.map_or("nobody smelt it", Word::word);
            let swollen = if *swollen { "swollen" } else { "flat" };
            format!("{} days, {swollen}, {smell}", locale.significant(*days, 2))
        }
        Finding::Respiration {
            carbon_mg_g_d,
            class,
        } => format!(
            "{} mg C/(g\u{a0}d), {}",
            locale.significant(*carbon_mg_g_d, 2),
            respiration_word(*class)
        ),
        Finding::Germination { index } => format!("{} of the control", percent_text(*index)),
        Finding::Emergence { share, class } => format!(
            "{} of the control, {}",
            percent_text(*share),
            maturity_word(*class)
        ),
        Finding::CarbonToNitrogen { ratio } => ratio_text(*ratio),
        Finding::AmmoniumToNitrate { ratio, class } => {
            format!(
                "{}, {}",
                locale.significant(*ratio, 2),
                maturity_word(*class)
            )
        }
        Finding::Ammonium {
            nitrogen_mg_kg,
            class,
        } => format!(
            "{} mg/kg, {}",
            locale.significant(*nitrogen_mg_kg, 2),
            maturity_word(*class)
        ),
    }
}

/// "class IV".
#[must_use]
pub const fn heating_word(class: HeatingClass) -> &'static str {
    match class {
        HeatingClass::I => "class I",
        HeatingClass::II => "class II",
        HeatingClass::III => "class III",
        HeatingClass::IV => "class IV",
        HeatingClass::V => "class V",
    }
}

/// "stable".
#[must_use]
pub const fn respiration_word(class: RespirationClass) -> &'static str {
    match class {
        RespirationClass::Raw => "raw",
        RespirationClass::Unstable => "unstable",
        RespirationClass::ModeratelyUnstable => "moderately unstable",
        RespirationClass::Stable => "stable",
        RespirationClass::VeryStable => "very stable",
    }
}

/// "mature".
#[must_use]
pub const fn maturity_word(class: MaturityClass) -> &'static str {
    match class {
        MaturityClass::Immature => "immature",
        MaturityClass::Mature => "mature",
        MaturityClass::VeryMature => "very mature",
    }
}

/// One sign for a table: of what, test, found, says, when.
#[must_use]
pub fn sign_cells(answer: &ReadyAnswer, sign: &Sign, locale: Locale) -> [String; 5] {
    let says = if sign.counts() {
        standing_word(sign.standing)
    } else {
        "not counted"
    };
    [
        family_word(sign.finding.family()).to_owned(),
        test_name(&sign.finding).to_owned(),
        finding_text(&sign.finding, locale),
        says.to_owned(),
        ago_text(sign.at, answer.now),
    ]
}

/// Why a sign is weak, as a sentence.
#[must_use]
pub const fn doubt_line(doubt: Doubt) -> &'static str {
    match doubt {
        Doubt::FedSince => "something was fed or moved in after it, so it tells of other stuff",
        Doubt::Old => "it is more than two months old",
        Doubt::BagSaysNothing => "it needs three days closed and a nose at the end",
        Doubt::SmallHeap => "a heap of less than 500 L, or of unknown size, stays cool ripe or not",
        Doubt::Dry => "a dry heap stays cool ripe or not: water it first",
        Doubt::MoistureUnknown => "nobody squeezed a handful, and a dry heap stays cool",
        Doubt::AirUsual => "the air was not read, so what is usual in the month was taken",
        Doubt::FewSeeds => "fewer than 30 seeds say little",
        Doubt::SeedsForgive => "cress and radish forgive much: a pass is weak, a failure is not",
        Doubt::HomeFlask => "a home flask flatters, so it counts a class rawer",
        Doubt::NoseOnly => "a nose is a rough instrument",
        Doubt::RatioAlone => "wood left over raises it, much nitrogen lowers it, ripe or not",
    }
}

/// Why a sign is weak, as one sentence; `None` when it is not.
#[must_use]
pub fn weak_line(sign: &Sign) -> Option<String> {
    if sign.doubts.is_empty() {
        return None;
    }
    let doubts: Vec<&str> = sign.doubts.iter().map(|doubt| doubt_line(*doubt)).collect();
    Some(format!("Weak: {}.", doubts.join("; ")))
}

/// What nose and eye say, as a sentence; `None` when they say nothing.
#[must_use]
pub fn hints_line(hints: &[Hint]) -> Option<String> {
    if hints.is_empty() {
        return None;
    }
    let words: Vec<&str> = hints
        .iter()
        .map(|hint| match hint {
            Hint::SmellsEarthy => "it smells earthy",
            Hint::SmellsFoul => "it smells foul",
            Hint::LooksDone => "it looks done",
            Hint::Warm => "its core is warm",
        })
        .collect();
    Some(format!(
        "At the last look {}; looks and smells are the weakest signs and enter no verdict.",
        words.join(", ")
    ))
}

/// What the simulation says, as sentences.
#[must_use]
pub fn today_lines(today: &Today) -> Vec<String> {
    let uptake = today.standard_uptake_mg_per_g_vs_h;
    let class = RespirationClass::of_carbon(carbon_of_uptake(uptake));
    let mut lines = vec![format!(
        "Warm, moist and aired it would take {} mg of oxygen per g of organic matter and hour: {}.",
        significant(uptake, 2),
        respiration_word(class)
    )];
    let rise = today.core_temperature_c - today.air_temperature_c;
    lines.push(format!(
        "Its core is {}\u{a0}K over the air; C:N {}; ammonium {} of the nitrogen.",
        significant(rise, 2),
        ratio_text(today.carbon_to_nitrogen),
        percent_text(today.ammonium_share)
    ));
    lines.push(match today.ready_day {
        Some(day) => format!(
            "It counts as ready there since day {} of {}.",
            significant(day.round(), 3),
            significant(today.days.round(), 3)
        ),
        None => format!(
            "After {} days it does not count as ready there.",
            significant(today.days.round(), 3)
        ),
    });
    lines
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
            interval_text(interval, text),
        ]
    };
    vec![
        row("dry matter", &yields.dry_kg, &mass),
        row("as it lies", &yields.wet_kg, &mass),
        row("volume", &yields.volume_m3, &volume),
        row("through a sieve", &yields.sieved_m3, &volume),
        row("held back", &yields.overs_m3, &volume),
        row("organic matter gone", &yields.organic_loss, &percent_text),
    ]
}

/// What to know about the yield, as sentences.
#[must_use]
pub fn yield_lines(yields: &YieldAnswer) -> Vec<String> {
    let mut lines = Vec::new();
    lines.push(if yields.ash_measured {
        "The dry matter follows from the ash that the laboratory found: ash neither rots nor evaporates."
            .to_owned()
    } else {
        "The dry matter follows from what microbes usually leave of each material; the ash of a laboratory would narrow it."
            .to_owned()
    });
    if yields.harvests > 0 {
        let harvests = if yields.harvests == 1 {
            "the one harvest".to_owned()
        } else {
            format!("the {} harvests", yields.harvests)
        };
        lines.push(format!(
            "Learnt from {harvests} of this garden with a known amount: masses and volumes times {}.",
            significant(yields.factor, 2)
        ));
    } else {
        lines.push(
            "Write down how much each harvest gave, with its share of the heap: the next figure learns from it."
                .to_owned(),
        );
    }
    lines.extend(unlikely_harvests_line(yields.harvests_left_out));
    if yields.ash_too_low {
        lines.push("The ash that was found is less than went in: one of the two is wrong, and the dry matter put in was taken.".to_owned());
    }
    if yields.soil_likely {
        lines.push("The ash that was found leaves hardly any organic matter: soil came in that was not written down.".to_owned());
    }
    lines.extend(left_out_line(&yields.left_out));
    lines
}

/// Which harvests nothing was learnt from, as a sentence.
fn unlikely_harvests_line(count: usize) -> Option<String> {
    let (harvests, them) = match count {
        0 => return None,
        1 => ("One harvest is".to_owned(), "its"),
        _ => (format!("{count} harvests are"), "their"),
    };
    Some(format!(
        "{harvests} left out, more than {FARTHEST} times what was computed or less than 1/{FARTHEST} of it: look at {them} amount and share, and at what was fed."
    ))
}

/// What could not be used, as a sentence.
#[must_use]
pub fn left_out_line(names: &[String]) -> Option<String> {
    (!names.is_empty()).then(|| {
        format!(
            "Left out, for this program cannot use them: {}.",
            names.join(", ")
        )
    })
}
