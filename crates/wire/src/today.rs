//! What each heap needs today, as JSON.

use heapwright_answers::today::{Because, DatedNeed, Need, On, Quiet, Rest, TodayAnswer, Urgency};
use heapwright_catalogue::Catalogue;
use heapwright_garden::Garden;
use heapwright_journal::EventId;
use heapwright_state::State;
use heapwright_texts::Locale;
use heapwright_wording::today::{self as wording, Times};
#[cfg(feature = "schema")]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use serde_json::Value;

use crate::journal_answer::{NamedJson, heap_named};

/// What `heapwright today` answers.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct NeedsJson {
    /// What the clock said.
    pub now: String,
    /// What is needed, first things first.
    pub needs: Vec<NeedJson>,
    /// Heaps that need nothing today.
    pub quiet: Vec<QuietJson>,
    /// What is due when, the soonest first: all needs, and what comes later.
    pub dates: Vec<DatedNeedJson>,
}

/// Something that is needed.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct NeedJson {
    /// Which heap; null for what concerns the stores.
    pub heap: Option<NamedJson>,
    /// What to do, in a word: "stand_back", "cool_down", "keep_animals_out", "add_browns",
    /// "cover_with_browns", "water", "turn", "read_heat", "add_greens", "harvest", "let_ripen",
    /// "test", "cover", "look", "restock".
    pub what: String,
    /// What to do, in a few words.
    pub headline: String,
    /// How soon: "now", "soon" or "whenever".
    pub urgency: String,
    /// Why, the weightiest first.
    pub because: Vec<ReasonJson>,
    /// How it is done, a sentence each.
    pub how: Vec<String>,
    /// What can hurt while it is done, a sentence each.
    pub cautions: Vec<String>,
    /// By when, where that can be told.
    pub due: Option<String>,
    /// The kind of the entry that stands for it in the journal once it is done; null where
    /// something must be typed or seen first.
    pub entry_kind: Option<String>,
    /// That entry, as `docs/journal-format.md` describes its kind.
    pub entry: Option<Value>,
}

/// Why something is needed.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct ReasonJson {
    /// A word: "alarm", "hot_and_dry", "too_hot", "hot", "creature", "smell", "squeeze", "look",
    /// "fed_too_wet", "fed_too_dry", "fed_too_rich", "fed_too_poor", "cooling", "hot_unread",
    /// "rule_time", "rule_turns", "not_looked_at", "not_fed", "looks_done", "ripened", "ready",
    /// "uncovered", "runs_out", "used_up".
    pub key: String,
    /// In a sentence.
    pub sentence: String,
}

/// A heap that needs nothing today.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct QuietJson {
    /// Which heap.
    pub heap: NamedJson,
    /// Why: "empty", "working" or "ripening".
    pub why: String,
    /// The day to look again; null for an empty one.
    pub again: Option<String>,
    /// In a sentence.
    pub sentence: String,
}

/// Something with its day.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct DatedNeedJson {
    /// Which heap; null for what concerns the stores.
    pub heap: Option<NamedJson>,
    /// What to do, in a word, as for needs.
    pub what: String,
    /// What to do, in a few words.
    pub headline: String,
    /// The day.
    pub day: String,
    /// The time, where one is known.
    pub at: Option<String>,
}

/// The answer as JSON.
#[must_use]
pub fn needs_json(
    catalogue: &Catalogue,
    garden: &Garden,
    state: &State,
    answer: &TodayAnswer,
    locale: Locale,
) -> NeedsJson {
    let telling = Telling {
        catalogue,
        garden,
        state,
        answer,
        locale,
    };
    NeedsJson {
        now: answer.now.to_string(),
        needs: answer.needs.iter().map(|need| telling.need(need)).collect(),
        quiet: answer
            .quiet
            .iter()
            .map(|quiet| telling.quiet(quiet))
            .collect(),
        dates: answer.dates.iter().map(|date| telling.date(date)).collect(),
    }
}

struct Telling<'a> {
    catalogue: &'a Catalogue,
    garden: &'a Garden,
    state: &'a State,
    answer: &'a TodayAnswer,
    locale: Locale,
}

impl Telling<'_> {
    fn named(&self, heap: EventId) -> NamedJson {
        heap_named(self.state, heap)
    }

    fn need(&self, need: &Need) -> NeedJson {
        let reason = |because: &Because| ReasonJson {
            key: because.key().to_owned(),
            sentence: wording::because_line(because, Times::FromNow(self.answer.now), self.locale),
        };
        let entry = need.entry.as_ref();
        NeedJson {
            heap: need.heap.map(|heap| self.named(heap)),
            what: need.what.kind().key().to_owned(),
            headline: wording::headline(self.catalogue, self.garden, self.state, need, self.locale),
            urgency: match need.urgency {
                Urgency::Now => "now",
                Urgency::Soon => "soon",
                Urgency::Whenever => "whenever",
            }
            .to_owned(),
            because: need.because.iter().map(reason).collect(),
            how: wording::how_to(self.catalogue, need, self.locale),
            cautions: need
                .cautions
                .iter()
                .map(|caution| wording::caution_line(*caution, self.locale).to_owned())
                .collect(),
            due: need.due.map(|due| due.to_string()),
            entry_kind: entry.map(|entry| entry.kind().to_owned()),
            entry: entry.and_then(|entry| {
                let body = entry.write().ok()?;
                serde_json::from_str(body.get()).ok()
            }),
        }
    }

    fn quiet(&self, quiet: &Quiet) -> QuietJson {
        QuietJson {
            heap: self.named(quiet.heap),
            why: match quiet.why {
                Rest::Empty => "empty",
                Rest::Working => "working",
                Rest::Ripening => "ripening",
            }
            .to_owned(),
            again: quiet.again.map(|day| day.to_string()),
            sentence: wording::quiet_line(self.state, quiet, self.locale),
        }
    }

    fn date(&self, date: &DatedNeed) -> DatedNeedJson {
        DatedNeedJson {
            heap: date.heap.map(|heap| self.named(heap)),
            what: date.kind.key().to_owned(),
            headline: wording::dated_headline(
                self.catalogue,
                self.garden,
                self.state,
                date,
                self.locale,
            ),
            day: date.on.day().to_string(),
            at: match date.on {
                On::Day(_) => None,
                On::Time(moment) => Some(moment.to_string()),
            },
        }
    }
}
