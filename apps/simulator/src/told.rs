//! What the journal says of a heap without a simulation: its heat, ripeness and nutrients; and what
//! all heaps kept out of the bin.

use heapwright_answers::heat::Status;
use heapwright_answers::{
    DiversionQuestion, HygieneAnswer, HygieneQuestion, LedgerQuestion, QuestionError, ReadyAnswer,
    ReadyQuestion, RuleAnswer, before_use, hygiene_of_heap, is_it_ready, what_was_kept_out,
    where_nutrients_are,
};
use heapwright_garden::Garden;
use heapwright_journal::{EventId, Moment};
use heapwright_state::State;
use heapwright_texts::Locale;
use heapwright_wire::{
    HeapTold, HeatTold, KeptOutTold, NutrientsTold, RipenessTold, RuleTold, SheetTold, SignTold,
    TableShown, ToldQuestion,
};
use heapwright_wording::{self as wording, HomeTest, told as words};

use crate::outlook::read_state;
use crate::spoken::{catalogue, locale, unread};
use crate::today;

/// The journal as it was handed over.
struct Asked {
    state: State,
    garden: Garden,
    now: Moment,
    locale: Locale,
}

/// Answers a question of the page with JSON.
///
/// # Errors
///
/// When it cannot be read; a sentence.
pub fn told(question: &str) -> Result<String, String> {
    let question: ToldQuestion = serde_json::from_str(question).map_err(unread)?;
    let state = read_state(&question.journal);
    let now: Moment = question.now.parse().map_err(unread)?;
    let asked = Asked {
        garden: Garden::from_state(catalogue(), &state, now),
        state,
        now,
        locale: locale(question.us_units),
    };
    let text = if question.today {
        serde_json::to_string(&today::told(&asked.state, &asked.garden, now, asked.locale))
    } else if question.heap.is_empty() {
        serde_json::to_string(&asked.kept_out())
    } else {
        let heap = question.heap.parse().map_err(unread)?;
        serde_json::to_string(&asked.heap(heap))
    };
    text.map_err(|error| error.to_string())
}

impl Asked {
    fn heap(&self, heap: EventId) -> HeapTold {
        let catalogue = catalogue();
        let contents = self.state.contents_since_harvest(heap);
        let question = ReadyQuestion {
            heap,
            now: self.now,
            simulate: false,
        };
        let ready = is_it_ready(catalogue, &self.garden, &self.state, &question);
        HeapTold {
            before_use: wording::before_use_lines(
                &before_use(catalogue, &self.garden, &contents),
                self.locale,
            ),
            heat: self.heat(heap),
            nutrients: self.nutrients(heap, ready.as_ref().ok()),
            ripeness: match ready {
                Ok(answer) => ripeness(&answer, self.locale),
                Err(error) => RipenessTold {
                    lines: vec![sentence(&error, self.locale)],
                    sheets: sheets(&[], self.locale),
                    ..RipenessTold::default()
                },
            },
        }
    }

    fn heat(&self, heap: EventId) -> HeatTold {
        let question = HygieneQuestion::default();
        let Ok(answer) = hygiene_of_heap(&self.state, heap, self.now, &question) else {
            // The one fault that a heap of the journal can have here.
            return HeatTold {
                headline: words::no_readings(self.locale).to_owned(),
                ..HeatTold::default()
            };
        };
        heat(&answer, self.locale)
    }

    fn nutrients(&self, heap: EventId, ready: Option<&ReadyAnswer>) -> NutrientsTold {
        let question = LedgerQuestion {
            heap,
            now: self.now,
            simulate: false,
        };
        let catalogue = catalogue();
        let answer = match where_nutrients_are(catalogue, &self.garden, &self.state, &question) {
            Ok(answer) => answer,
            Err(error) => {
                return NutrientsTold {
                    refusal: sentence(&error, self.locale),
                    ..NutrientsTold::default()
                };
            }
        };
        let yields = ready.and_then(|ready| ready.yields.as_ref());
        NutrientsTold {
            refusal: String::new(),
            elements: headed(wording::account_rows(&answer, false, self.locale)),
            labels: headed(wording::account_rows(&answer, true, self.locale)),
            beside: headed(wording::beside_rows(&answer, self.locale).unwrap_or_default()),
            lines: wording::ledger_lines(&answer, self.locale),
            yields: yields.map_or_else(TableShown::default, |yields| TableShown {
                heads: words::yield_heads(self.locale).map(str::to_owned).to_vec(),
                rows: wording::yield_rows(yields, self.locale),
            }),
            yield_lines: yields
                .map_or_else(Vec::new, |yields| wording::yield_lines(yields, self.locale)),
        }
    }

    fn kept_out(&self) -> KeptOutTold {
        let question = DiversionQuestion {
            from: None,
            to: None,
            now: self.now,
        };
        let answer = what_was_kept_out(catalogue(), &self.garden, &self.state, &question);
        if answer.months.is_empty() {
            return KeptOutTold {
                lines: vec![words::nothing_kept_out(self.locale).to_owned()],
                ..KeptOutTold::default()
            };
        }
        let mut climate_lines = wording::climate_lines(&answer, self.locale);
        if !climate_lines.is_empty() {
            climate_lines.push(wording::climate_method(self.locale).to_owned());
        }
        KeptOutTold {
            months: headed(wording::month_rows(&answer, self.locale)),
            lines: wording::diversion_lines(&answer, self.locale),
            climate: headed(wording::climate_rows(&answer, self.locale)),
            climate_lines,
        }
    }
}

/// What is wrong, in a sentence of the page.
fn sentence(error: &QuestionError, locale: Locale) -> String {
    match error {
        QuestionError::NothingInHeap => words::nothing_in_it(locale).to_owned(),
        other => wording::question_refusal(other, locale),
    }
}

/// Rows of which the first is the head.
fn headed(rows: Vec<Vec<String>>) -> TableShown {
    let mut rows = rows.into_iter();
    TableShown {
        heads: rows.next().unwrap_or_default(),
        rows: rows.collect(),
    }
}

fn heat(answer: &HygieneAnswer, locale: Locale) -> HeatTold {
    HeatTold {
        headline: wording::hygiene_headline(answer, locale),
        lines: wording::hygiene_lines(answer, locale),
        method: wording::method_line(answer, locale),
        rules: answer.rules.iter().map(|each| rule(each, locale)).collect(),
        living: answer
            .living
            .iter()
            .map(|(living, reach)| wording::living_line(*living, *reach, locale))
            .collect(),
        notices: answer
            .notices
            .iter()
            .map(|notice| wording::page_hygiene_notice(notice, locale))
            .collect(),
        hours: headed(wording::hours_rows(answer, locale)),
    }
}

fn rule(rule: &RuleAnswer, locale: Locale) -> RuleTold {
    let catalogue = catalogue();
    let status = rule.status[1];
    let words = wording::rule_in(rule.words, locale);
    RuleTold {
        // By which the page finds the rules of a place; it has its own names for them.
        jurisdiction: words.jurisdiction,
        name: format!("{}, {}", words.name, words.year),
        status: wording::status_word(status, locale).to_owned(),
        met: status == Status::Met,
        progress: (status != Status::NotApplicable).then_some(rule.outcome[1].progress),
        missing: wording::missing_text(rule, locale),
        asks: wording::rule_asks(catalogue, rule, locale),
        scope: words.scope,
        sources: rule
            .words
            .source_keys
            .iter()
            .filter_map(|key| wording::source_line(catalogue, key))
            .collect(),
    }
}

fn ripeness(answer: &ReadyAnswer, locale: Locale) -> RipenessTold {
    let mut signs = Vec::new();
    let mut rows = Vec::new();
    for sign in &answer.signs {
        let cells = wording::sign_cells(answer, sign, locale);
        let [family, test, found, says, when] = cells.clone();
        signs.push(SignTold {
            test: format!("{test} ({family}), {when}"),
            found,
            says,
            weak: wording::weak_line(sign, locale).unwrap_or_default(),
        });
        rows.push(cells.to_vec());
    }
    RipenessTold {
        lines: wording::verdict_sentences(answer, locale),
        next: wording::next_step(answer, locale).unwrap_or_default(),
        signs,
        table: TableShown {
            heads: words::sign_heads(locale).map(str::to_owned).to_vec(),
            rows,
        },
        hints: wording::hints_line(&answer.hints, locale).unwrap_or_default(),
        sheets: sheets(wording::next_tests(&answer.judgement), locale),
    }
}

/// The sheets of all home tests, those first that are next.
fn sheets(next: &[HomeTest], locale: Locale) -> Vec<SheetTold> {
    let others = HomeTest::ALL
        .into_iter()
        .filter(|test| !next.contains(test));
    let all = next.iter().copied().chain(others);
    all.map(|test| {
        let sheet = test.sheet(locale);
        let owned = |lines: &[&str]| lines.iter().map(|line| (*line).to_owned()).collect();
        SheetTold {
            title: sheet.title.to_owned(),
            next: next.contains(&test),
            lines: vec![
                sheet.tells.to_owned(),
                words::needs_line(sheet.needs, locale),
            ],
            steps: owned(&sheet.steps),
            reading: owned(&sheet.reading),
        }
    })
    .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A question on the last heap of the invented garden, or on all.
    fn asked(of_all: bool) -> String {
        let day = jiff::civil::date(2026, 11, 15);
        let lines: Vec<String> = heapwright_invented::lines(&heapwright_invented::Plan::demo(day))
            .map(Result::unwrap)
            .collect();
        let started = lines
            .iter()
            .rfind(|line| line.contains("\"kind\":\"heap_started\""))
            .unwrap();
        let id = started.split("\"id\":\"").nth(1).unwrap();
        let heap = id.split('"').next().unwrap();
        let question = ToldQuestion {
            journal: lines.join("\n"),
            heap: if of_all { "" } else { heap }.to_owned(),
            now: "2026-11-15T12:00:00+00:00".to_owned(),
            us_units: false,
            today: false,
        };
        told(&serde_json::to_string(&question).unwrap()).unwrap()
    }

    #[test]
    fn a_heap_of_the_demo_garden_is_told_whole() {
        let told: HeapTold = serde_json::from_str(&asked(false)).unwrap();
        assert!(told.heat.headline.starts_with("At the probe, "));
        assert_eq!(
            told.heat.rules.len(),
            heapwright_catalogue::hygiene_rules().len()
        );
        assert!(told.heat.rules.iter().all(|rule| !rule.sources.is_empty()));
        assert_eq!(told.ripeness.sheets.len(), HomeTest::ALL.len());
        assert_eq!(told.nutrients.refusal, "");
        assert_eq!(
            told.nutrients.elements.rows.len(),
            told.nutrients.labels.rows.len()
        );
        assert!(!told.nutrients.yields.rows.is_empty());
        // The page has no command line.
        assert!(!asked(false).contains("heapwright "));
    }

    #[test]
    fn what_was_kept_out_is_told_of_all_heaps() {
        let told: KeptOutTold = serde_json::from_str(&asked(true)).unwrap();
        assert!(told.months.rows.len() > 3);
        assert!(!told.climate.rows.is_empty());
    }

    #[test]
    fn what_is_no_question_is_refused_with_a_sentence() {
        assert!(told("{}").unwrap_err().contains("another version"));
    }
}
