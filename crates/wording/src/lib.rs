//! Every sentence that a face can show, in English, in one place.
//!
//! In: answers and quantities. Out: short plain sentences, the same for the web
//! page, the command line and the JSON. A face decides where a sentence stands
//! and how it looks, never what it says. Nothing here says "safe": cautions name
//! what to beware of and defer to local rules.
#![cfg_attr(test, allow(clippy::unwrap_used))]

pub mod ahead;
mod amounts;
pub mod beds_on_the_page;
mod conflicts;
mod diversion;
mod forecast;
mod home_tests;
mod hygiene;
mod journal;
mod ledger;
mod notices;
pub mod page;
pub mod paper;
pub mod pictures_read;
mod ready;
mod recipes;
pub mod settings;
mod spreading;
pub mod today;
pub mod today_on_the_page;
pub mod told;
mod verdicts;
mod words;

pub use amounts::{
    amount_of, amount_text, apart, interval_text, name_in_sentence, percent_text, ratio_text,
    water_text,
};
pub use conflicts::{conflict_line, help_line, limit_name, miss_line};
pub use diversion::{
    CLIMATE_METHOD, climate_lines, climate_rows, diversion_lines, kind_name, month_rows,
    otherwise_name,
};
pub use forecast::{
    BANDS, SIMULATION_LIMITS, date_of, day_of_case, plan_lines, readings_line, simulation_lines,
    simulation_notice, simulation_notices,
};
pub use home_tests::{HomeTest, Sheet};
pub use hygiene::{
    HYGIENE_LIMITS, INTERPOLATION, RULES_MORE, before_use_line, before_use_lines, caution_line,
    condition_text, hours_rows, hygiene_headline, hygiene_lines, hygiene_notice, living_line,
    method_line, missing_text, record_days, rule_asks, rule_line, source_line, status_word,
};
pub use journal::{
    AS_FED, KIND_NAMES, ago_text, day_text, entry_line, feed_again_line, heap_name, read_line,
    time_text,
};
pub use ledger::{
    account_rows, beside_rows, element_symbol, label_rows, label_symbol, ledger_lines, ledger_rows,
};
pub use notices::{mix_notice, part_notice};
pub use ready::{
    READY_LIMITS, SIMULATED_APART, doubt_line, family_word, finding_text, heating_word, hints_line,
    left_out_line, maturity_word, next_step, next_tests, respiration_word, shown_word, sign_cells,
    standing_word, test_name, today_lines, verdict_lines, verdict_sentences, verdict_word,
    weak_line, yield_lines, yield_rows,
};
pub use recipes::{recipe_line, recipe_title};
pub use spreading::{
    BEDS_LIMITS, NITROGEN_LIMITS, USES_LIMITS, bed_limit_name, beds_notice, beds_summary,
    binding_line, binding_name, covered_line, depth_text, met_text, stops_at, use_line,
};
pub use verdicts::{
    CARBON_SCALE, DISCLAIMER, FigureState, air_state, chance_text, in_hand_line, moisture_state,
    ratio_state, volumes_and_masses,
};
pub use words::Word;
