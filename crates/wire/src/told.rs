//! What the page asks of the worker beside it that needs no simulation, and what that hands back:
//! heat, ripeness and nutrients of a heap, and what was kept out of the bin.
//!
//! Both are ours and of one version: unlike the files and answers of the program, they may change
//! with it.

use serde::{Deserialize, Serialize};

use crate::TableShown;

/// What is to be told, asked from the page.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
pub struct ToldQuestion {
    /// Lines of the journal, one below the other.
    pub journal: String,
    /// Id of the heap; empty for what was kept out of the bin by all heaps.
    pub heap: String,
    /// What the clock says.
    pub now: String,
    /// True for pounds, gallons and degrees Fahrenheit.
    pub us_units: bool,
}

/// A page to print, asked from the page.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
pub struct PaperQuestion {
    /// Lines of the journal, one below the other.
    pub journal: String,
    /// Id of the heap; empty for the record of all heaps over the last year.
    pub heap: String,
    /// What the clock says.
    pub now: String,
    /// True for pounds, gallons and degrees Fahrenheit.
    pub us_units: bool,
}

/// What is told of a heap.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
pub struct HeapTold {
    /// What must be seen to before its compost is used, a sentence each.
    pub before_use: Vec<String>,
    /// How hot it was.
    pub heat: HeatTold,
    /// Whether it is ready.
    pub ripeness: RipenessTold,
    /// Where its nutrients are.
    pub nutrients: NutrientsTold,
}

/// How hot it was, and which rules that meets.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
pub struct HeatTold {
    /// The headline; or why there is no answer, and then nothing else.
    pub headline: String,
    /// What the record shows, a sentence each.
    pub lines: Vec<String>,
    /// How the heap was judged.
    pub method: String,
    /// Published rules, in the order of their table.
    pub rules: Vec<RuleTold>,
    /// What heat does and what it cannot be trusted with, a sentence each.
    pub living: Vec<String>,
    /// What to know about the answer, a sentence each.
    pub notices: Vec<String>,
    /// Hours at or above some temperatures.
    pub hours: TableShown,
}

/// How the record stands to a rule.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
pub struct RuleTold {
    /// Where it holds.
    pub jurisdiction: String,
    /// What it is called.
    pub name: String,
    /// "met", "not met", "does not apply".
    pub status: String,
    /// True when it is met at the probe as shown.
    pub met: bool,
    /// How much of it is done, 0 to 1; `None` when it does not apply.
    pub progress: Option<f64>,
    /// What is missing; empty for nothing.
    pub missing: String,
    /// What it asks, of a thermometer and besides.
    pub asks: String,
    /// For what it was written.
    pub scope: String,
    /// Where it stands.
    pub sources: Vec<String>,
}

/// Whether it is ready.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
pub struct RipenessTold {
    /// The verdict, a sentence each; or why there is none.
    pub lines: Vec<String>,
    /// What to do next; empty when nothing is.
    pub next: String,
    /// What each test said.
    pub signs: Vec<SignTold>,
    /// The same as a table.
    pub table: TableShown,
    /// What nose and eye say; empty for nothing.
    pub hints: String,
    /// How home tests are done, those first that are next.
    pub sheets: Vec<SheetTold>,
}

/// What a test said.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
pub struct SignTold {
    /// Which test, of what, when: "closed bag (rest), 2 days ago".
    pub test: String,
    /// What it found: "7 days, flat, earthy".
    pub found: String,
    /// What that says: "for", "nearly", "against", "not counted".
    pub says: String,
    /// Why it is weak; empty when it is not.
    pub weak: String,
}

/// How a home test is done.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
pub struct SheetTold {
    /// Its title.
    pub title: String,
    /// True when it is to be done next.
    pub next: bool,
    /// What it tells, and what is needed for it.
    pub lines: Vec<String>,
    /// What is done, step by step.
    pub steps: Vec<String>,
    /// What the outcome says.
    pub reading: Vec<String>,
}

/// Where its nutrients are, and how much there will be.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
pub struct NutrientsTold {
    /// Why there is no answer; empty when there is one.
    pub refusal: String,
    /// The account of the elements.
    pub elements: TableShown,
    /// The same as labels name them.
    pub labels: TableShown,
    /// What a laboratory found beside it; without rows when there was none.
    pub beside: TableShown,
    /// What to know, a sentence each.
    pub lines: Vec<String>,
    /// How much compost there will be; without rows when that cannot be told.
    pub yields: TableShown,
    /// What to know of that, a sentence each.
    pub yield_lines: Vec<String>,
}

/// What was kept out of the bin.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
pub struct KeptOutTold {
    /// Months and kinds; without rows when there was nothing.
    pub months: TableShown,
    /// What it comes to, a sentence each.
    pub lines: Vec<String>,
    /// What it spared the climate; without rows when nothing was.
    pub climate: TableShown,
    /// What to know of that, a sentence each.
    pub climate_lines: Vec<String>,
}
