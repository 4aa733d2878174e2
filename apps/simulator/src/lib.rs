//! The simulated heap, for a worker beside the page.
//!
//! A module of its own: the page is there without it, and it is fetched when a heap is looked at.
//! Text comes in and text goes out. [`Outlook`] goes step by step, so that the worker can hear
//! between two of them that the keeper wants something else.
#![cfg_attr(test, allow(clippy::unwrap_used))]

mod by_day;
mod charts;
mod frames;
mod outlook;
mod paper;
mod shown;
mod spoken;
mod today;
mod told;

use heapwright_answers::{one_by_one, prepared};
use heapwright_garden::Garden;
use heapwright_wire::{read_simulation, simulation_json};
use spoken::catalogue;
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;

pub use outlook::Looking;

/// What the worker holds of one question.
#[wasm_bindgen]
pub struct Outlook(Looking);

#[wasm_bindgen]
impl Outlook {
    /// Reads the question; what is wrong with it is thrown as a sentence.
    ///
    /// # Errors
    ///
    /// When it cannot be read, or nothing lies in the heap.
    #[wasm_bindgen(constructor)]
    pub fn new(question: &str) -> Result<Self, JsValue> {
        Looking::new(question).map(Self).map_err(thrown)
    }

    /// Goes one run further; hands back what is to be shown when there is something new.
    ///
    /// # Errors
    ///
    /// When the computation cannot go on.
    pub fn step(&mut self) -> Result<Option<String>, JsValue> {
        self.0.step().map_err(thrown)
    }

    /// Runs that are done.
    #[wasm_bindgen(getter)]
    #[must_use]
    pub fn done(&self) -> u32 {
        self.0.done()
    }

    /// All runs.
    #[wasm_bindgen(getter)]
    #[must_use]
    pub fn all(&self) -> u32 {
        self.0.all()
    }
}

/// Speaks another language in whatever is answered from now on: its tag, its pack of texts, the words of
/// the catalogue's tables. Texts of another version are passed over.
#[wasm_bindgen]
pub fn speak(tag: &str, pack: String, words: String) {
    spoken::speak(tag, pack, words);
}

/// The answer of `heapwright simulate --json` to a case, which may lean on no weather file.
///
/// # Errors
///
/// When the case cannot be read or computed; a sentence.
#[wasm_bindgen]
pub fn simulate(case: &str) -> Result<String, JsValue> {
    simulated(case).map_err(thrown)
}

fn simulated(case: &str) -> Result<String, String> {
    let catalogue = catalogue();
    let no_file = |name: &str| Err(format!("there is no file {name} here"));
    let (question, garden) = read_simulation(catalogue, &Garden::default(), case, &no_file)
        .map_err(|error| error.to_string())?;
    let answer = prepared(catalogue, &garden, &question)
        .and_then(|prepared| prepared.answer(&one_by_one))
        .map_err(|error| error.to_string())?;
    serde_json::to_string(&simulation_json(catalogue, &answer)).map_err(|error| error.to_string())
}

/// The answer of `heapwright forecast --json` to the question of the page, as many members as asked.
///
/// # Errors
///
/// When the question cannot be read or computed; a sentence.
#[wasm_bindgen]
pub fn forecast(question: &str, days: u32, members: u32) -> Result<String, JsValue> {
    outlook::forecast(question, days, members).map_err(thrown)
}

/// What the journal says of a heap without a simulation, or of what was kept out of the bin.
///
/// # Errors
///
/// When the question cannot be read; a sentence.
#[wasm_bindgen]
pub fn told(question: &str) -> Result<String, JsValue> {
    told::told(question).map_err(thrown)
}

/// A page to print as a document for the module that sets type: the one of a heap, or the record of the
/// last year when the question names none.
///
/// # Errors
///
/// When the question cannot be read or the page cannot be worked out; a sentence.
#[wasm_bindgen]
pub fn paper(question: &str) -> Result<String, JsValue> {
    paper::paper(question).map_err(thrown)
}

#[allow(clippy::needless_pass_by_value)] // as `map_err` hands it over
fn thrown(sentence: String) -> JsValue {
    JsValue::from_str(&sentence)
}
