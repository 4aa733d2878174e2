//! What the page asks of the worker beside it that needs no simulation, and what that hands back:
//! heat, ripeness and nutrients of a heap, what was kept out of the bin, and what is needed today.
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
    /// Id of the heap; empty for what concerns all heaps.
    pub heap: String,
    /// True for what all heaps need today; else, of all heaps, what they kept out of the bin.
    #[serde(default)]
    pub today: bool,
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

/// What all heaps need today.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
pub struct TodayTold {
    /// What is needed, first things first.
    pub needs: Vec<NeedTold>,
    /// Heaps that need nothing.
    pub quiet: Vec<QuietTold>,
    /// What has a day, as a file for calendar programs; empty when nothing has one.
    #[serde(default)]
    pub calendar: String,
    /// The same as reminders that the browser shows.
    #[serde(default)]
    pub reminders: Vec<ReminderTold>,
}

/// A reminder, as the service worker shows it.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
pub struct ReminderTold {
    /// Its lasting name.
    pub name: String,
    /// When it is due: a time that the browser reads.
    pub at: String,
    /// What to do.
    pub title: String,
    /// Why, how, and what can hurt, a line each.
    pub body: String,
    /// The language of its texts.
    pub language: String,
}

/// Something that is needed.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
pub struct NeedTold {
    /// Id of the heap; empty for what concerns the stores.
    pub heap: String,
    /// What the heap is called.
    pub name: String,
    /// The word of the kind of need.
    pub kind: String,
    /// "now", "soon" or "whenever".
    pub urgency: String,
    /// How soon, in words.
    pub how_soon: String,
    /// What to do, in a few words.
    pub headline: String,
    /// How, a sentence each.
    pub how: Vec<String>,
    /// Why, a sentence each, the weightiest first.
    pub why: Vec<String>,
    /// What can hurt while it is done, a sentence each.
    pub cautions: Vec<String>,
    /// What the button says that logs it; empty where nothing can be logged at once.
    pub act: String,
    /// What it logs, as a line of the journal whose id, stamp and time mean nothing; empty where
    /// something must be typed or seen first.
    pub entry: String,
}

/// A heap that needs nothing today.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
pub struct QuietTold {
    /// Its id.
    pub heap: String,
    /// Why it needs nothing, and when to look again, by its name.
    pub line: String,
}
