//! Published examples, recorded answers of other programs and common practice, through the public API.
//!
//! The tests ask as a keeper or a script asks: in JSON. Here is what they share: how a question
//! is put, and the tables of published figures (`published/*.csv`) with sources and tolerances.
//! A failing check panics with the figure, what was printed and where.

mod ask;
mod published;

pub use ask::{
    ANY_CARBON_AND_NITROGEN, balance, balance_answer, catalogue, custom, mix, mix_answer, part,
    weighed,
};
pub use published::{Published, all_published, published};

/// Asserts that two figures agree to a share of the larger.
///
/// # Panics
///
/// When they do not, naming `what`.
pub fn assert_agree(what: &str, found: f64, expected: f64, relative: f64) {
    let scale = found.abs().max(expected.abs());
    assert!(
        (found - expected).abs() <= relative * scale,
        "{what}: {found} is not {expected} to a share of {relative}"
    );
}
