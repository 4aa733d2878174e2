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
mod refusals;
mod seen;
pub mod settings;
mod spoken;
mod spreading;
pub mod today;
pub mod today_on_the_page;
pub mod told;
mod verdicts;
mod words;

pub use amounts::{
    amount_of, amount_text, apart, interval_text, name_in_sentence, percent_text, ratio_text,
    things_by_mass, water_text,
};
pub use conflicts::{conflict_line, help_line, limit_name, miss_line};
pub use diversion::{
    climate_lines, climate_method, climate_rows, diversion_lines, kind_name, month_rows,
    otherwise_name,
};
pub use forecast::{
    bands, date_of, day_of_case, gainsaid_line, plan_lines, readings_line, simulation_limits,
    simulation_lines, simulation_notice, simulation_notices,
};
pub use home_tests::{HomeTest, Sheet};
pub use hygiene::{
    before_use_line, before_use_lines, caution_line, condition_text, hours_rows, hygiene_headline,
    hygiene_limits, hygiene_lines, hygiene_notice, interpolation, living_line, method_line,
    missing_text, page_hygiene_notice, record_days, rule_asks, rule_line, rules_more, source_line,
    status_word,
};
pub use journal::{
    ago_text, as_fed, day_text, entry_line, feed_again_line, heap_name, kind_names, time_text,
};
pub use ledger::{
    account_rows, beside_rows, element_symbol, label_rows, label_symbol, ledger_lines, ledger_rows,
};
pub use notices::{mix_notice, part_notice};
pub use ready::{
    doubt_line, family_word, finding_text, heating_word, hints_line, left_out_line, maturity_word,
    next_step, next_tests, ready_limits, respiration_word, shown_word, sign_cells, simulated_apart,
    standing_word, test_name, today_lines, verdict_lines, verdict_sentences, verdict_word,
    weak_line, yield_lines, yield_rows,
};
pub use recipes::{recipe_line, recipe_title};
pub use refusals::{
    amount_refusal, fault_refusal, figure_refusal, found_refusal, hygiene_refusal_of_commands,
    moment_refusal, part_refusal_of_commands, parts_refusal, problem_refusal, question_refusal,
    question_refusal_of_commands, record_refusal, simulation_refusal, write_refusal, year_refusal,
};
pub use seen::read_line;
pub use spoken::{Spoken, place_name, rule_in};
pub use spreading::{
    bed_limit_name, beds_limits, beds_notice, beds_summary, binding_line, binding_name,
    covered_line, crop_without_figures, depth_text, met_text, nitrogen_limits, spread_on_food_bed,
    stops_at, use_line, uses_limits,
};
pub use verdicts::{
    FigureState, air_state, carbon_scale, chance_text, disclaimer, in_hand_line, moisture_state,
    ratio_state, volumes_and_masses,
};
pub use words::Word;
