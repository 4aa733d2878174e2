//! Rules of the trade that have no publication behind them: common practice. A rule is a round
//! number, so that a fifth either way agrees with it.

#![allow(clippy::unwrap_used)]

use std::fmt::Write as _;
use std::fs;
use std::path::Path;

use heapwright_answers::{MixAnswer, USUAL_TARGET};
use heapwright_checks::{catalogue, mix_answer};
use heapwright_texts::Locale;
use heapwright_wording as wording;
use serde_json::json;

/// A rule is a round number.
const ROUND: f64 = 0.2;

fn answer(parts: &[(&str, &str)]) -> MixAnswer {
    let parts: Vec<_> = parts
        .iter()
        .map(|(material, amount)| json!({ "material": material, "amount": amount }))
        .collect();
    mix_answer(&json!({ "parts": parts }))
}

fn ratio(answer: &MixAnswer) -> f64 {
    answer.mixture.carbon_to_nitrogen.unwrap().value
}

#[test]
fn practice_carbon_to_nitrogen_of_single_materials() {
    for (name, low, high) in [
        ("mixed vegetable scraps", 10.0, 20.0),
        ("mixed food waste", 10.0, 20.0),
        ("fresh grass clippings", 15.0, 15.0),
        ("dried grass", 20.0, 20.0),
        ("dry leaves", 60.0, 60.0),
        ("hardwood sawdust", 500.0, 500.0),
    ] {
        assert_practice(name, low, high);
    }
}

/// The rule does not say of which wood; what is called just "sawdust" must meet it.
#[test]
fn practice_sawdust_of_any_wood_is_about_five_hundred() {
    assert_practice("sawdust", 500.0, 500.0);
}

fn assert_practice(name: &str, low: f64, high: f64) {
    let found = ratio(&answer(&[(name, "1 kg")]));
    assert!(
        found >= low * (1.0 - ROUND) && found <= high * (1.0 + ROUND),
        "{name}: {found} where {low} to {high} is common practice"
    );
}

#[test]
fn practice_aim_is_about_thirty() {
    assert_eq!(USUAL_TARGET.carbon_to_nitrogen_goal, 30.0);
}

#[test]
fn practice_one_handful_of_scraps_to_two_of_leaves() {
    let found = answer(&[
        ("mixed_vegetable_scraps", "1 handful"),
        ("dry_leaves_mixed", "2 handfuls"),
    ]);
    let found_ratio = ratio(&found);
    assert!((25.0..=40.0).contains(&found_ratio), "{found_ratio}");
    let line = wording::volumes_and_masses(&found, Locale::default()).unwrap();
    for word in ["By volume", "by dry matter", "weighs", "water"] {
        assert!(line.contains(word), "{line}");
    }
}

/// What equal volumes of greens and browns really give. A golden is no evidence of truth: it shows
/// what changed. Rewrite it with UPDATE_GOLDEN=1 and look at the difference.
#[test]
fn golden_equal_volumes_of_greens_and_browns() {
    let mut text = String::new();
    for (green, brown, amounts) in [
        (
            "mixed_vegetable_scraps",
            "dry_leaves_mixed",
            ["1 bucket", "1 bucket"],
        ),
        (
            "mixed_vegetable_scraps",
            "dry_leaves_mixed",
            ["1 bucket", "2 buckets"],
        ),
        (
            "mixed_vegetable_scraps",
            "leaves_shredded_dry",
            ["1 bucket", "1 bucket"],
        ),
        (
            "grass_clippings_fresh",
            "straw_wheat",
            ["1 bucket", "1 bucket"],
        ),
        (
            "grass_clippings_fresh",
            "dry_leaves_mixed",
            ["1 bucket", "1 bucket"],
        ),
        (
            "grass_clippings_fresh",
            "straw_wheat",
            ["1 bucket", "2 buckets"],
        ),
    ] {
        let found = answer(&[(green, amounts[0]), (brown, amounts[1])]);
        let names: Vec<String> = found
            .parts
            .iter()
            .map(|part| wording::amount_of(catalogue(), part, Locale::default()))
            .collect();
        let mixture = &found.mixture;
        let locale = Locale::default();
        let ratio = mixture.carbon_to_nitrogen.unwrap();
        writeln!(
            text,
            "{}\n  C:N {} ({}), moisture {} ({}), air {}\n  {}\n",
            names.join(" and "),
            wording::ratio_text(ratio.value, locale),
            wording::interval_text(&ratio, |value| wording::ratio_text(value, locale), locale),
            wording::percent_text(mixture.moisture_wet_basis.value, locale),
            wording::interval_text(
                &mixture.moisture_wet_basis,
                |value| wording::percent_text(value, locale),
                locale
            ),
            wording::percent_text(mixture.free_air_space.unwrap().value, locale),
            wording::volumes_and_masses(&found, Locale::default()).unwrap(),
        )
        .unwrap();
    }
    let text = text.replace('\u{a0}', " ");
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/golden/equal-volumes.txt");
    if std::env::var_os("UPDATE_GOLDEN").is_some() {
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(&path, &text).unwrap();
    }
    assert_eq!(
        text,
        fs::read_to_string(&path).unwrap_or_default(),
        "look at {}",
        path.display()
    );
}
