//! The text of the program as people see it, kept readable in `golden/`.
//!
//! A golden is no evidence of truth: it shows what changed. UPDATE_GOLDEN=1 rewrites them; look at
//! the difference.

#![allow(clippy::unwrap_used)]

mod support;

/// Compares what the program writes with what is kept.
fn golden(name: &str, arguments: &[&str]) {
    let text = format!(
        "{}\n{}",
        support::typed(arguments),
        support::answer(arguments)
    );
    support::golden_text(name, &text);
}

#[test]
fn golden_mix() {
    golden(
        "mix",
        &[
            "mix",
            "2 buckets vegetable scraps, 1 bucket dry grass, half a handful of sawdust",
        ],
    );
}

#[test]
fn golden_mix_in_us_units_with_water() {
    golden(
        "mix-us",
        &[
            "mix",
            "1 1/2 gal coffee grounds",
            "3.5 kg shredded leaves",
            "--water",
            "2 l",
            "--units",
            "us",
        ],
    );
}

#[test]
fn golden_mix_with_notices() {
    golden(
        "mix-notices",
        &[
            "mix",
            "1 kg biochar, 1 bucket wet oak leaves",
            "--cn",
            "20-30",
        ],
    );
}

#[test]
fn golden_balance_met() {
    golden(
        "balance-met",
        &[
            "balance",
            "1 caddy vegetable scraps, 1 bucket grass",
            "--reach",
            "6 buckets shredded leaves, 4 buckets cardboard",
        ],
    );
}

#[test]
fn golden_balance_with_the_demo_garden() {
    golden("balance-demo", &["balance", "2 buckets grass", "--demo"]);
}

#[test]
fn golden_balance_not_met() {
    golden(
        "balance-not-met",
        &[
            "balance",
            "1 barrow fresh grass",
            "--reach",
            "1 bucket wood chips",
            "--no-water",
        ],
    );
}

#[test]
fn golden_balance_with_nothing_in_reach() {
    golden(
        "balance-nothing-in-reach",
        &["balance", "10 kg grass", "--no-water"],
    );
}

#[test]
fn golden_materials_one() {
    golden("materials-one", &["materials", "courgettes"]);
}

#[test]
fn golden_materials_several() {
    golden("materials-several", &["materials", "straw"]);
}
