//! What each heap needs today, in the sentences of the page.

use crate::spoken::catalogue;
use heapwright_answers::today::{Need, TodayAnswer, Urgency, today};
use heapwright_calendar::{Reminder, Telling, calendar, reminders};
use heapwright_garden::Garden;
use heapwright_journal::{Content, Event, Moment};
use heapwright_state::State;
use heapwright_texts::Locale;
use heapwright_wire::{NeedTold, QuietTold, ReminderTold, TodayTold};
use heapwright_wording::{self as wording, today as words};

/// The needs of all heaps.
pub fn told(state: &State, garden: &Garden, now: Moment, locale: Locale) -> TodayTold {
    let answer = today(catalogue(), garden, state, now);
    let telling = Telling {
        catalogue: catalogue(),
        garden,
        state,
        locale,
    };
    TodayTold {
        needs: answer
            .needs
            .iter()
            .map(|need| need_told(state, garden, need, now, locale))
            .collect(),
        quiet: answer
            .quiet
            .iter()
            .map(|quiet| QuietTold {
                heap: quiet.heap.to_string(),
                line: words::quiet_line(state, quiet, locale),
            })
            .collect(),
        calendar: file(&telling, &answer),
        reminders: reminders(&telling, &answer)
            .into_iter()
            .map(|told| reminder(told, locale))
            .collect(),
    }
}

fn file(telling: &Telling, answer: &TodayAnswer) -> String {
    if answer.dates.is_empty() {
        return String::new();
    }
    calendar(telling, answer)
}

fn reminder(reminder: Reminder, locale: Locale) -> ReminderTold {
    ReminderTold {
        name: reminder.name,
        at: reminder.at,
        title: reminder.title,
        body: reminder.body,
        language: locale.tag().to_owned(),
    }
}

fn need_told(state: &State, garden: &Garden, need: &Need, now: Moment, locale: Locale) -> NeedTold {
    let catalogue = catalogue();
    // What cannot be written as a line is not offered.
    let entry = need
        .entry
        .as_ref()
        .and_then(|entry| line(entry, now))
        .unwrap_or_default();
    NeedTold {
        heap: need.heap.map(|heap| heap.to_string()).unwrap_or_default(),
        name: need
            .heap
            .map(|heap| wording::heap_name(state, heap, locale).to_owned())
            .unwrap_or_default(),
        kind: need.what.kind().key().to_owned(),
        urgency: match need.urgency {
            Urgency::Now => "now",
            Urgency::Soon => "soon",
            Urgency::Whenever => "whenever",
        }
        .to_owned(),
        how_soon: words::urgency_heading(need.urgency, locale).to_owned(),
        headline: words::headline(catalogue, garden, state, need, locale),
        how: words::how_to(catalogue, need, locale),
        why: words::why_lines(need, now, locale),
        cautions: need
            .cautions
            .iter()
            .map(|caution| words::caution_line(*caution, locale).to_owned())
            .collect(),
        act: words::tap_word(need, locale).unwrap_or_default(),
        entry,
    }
}

/// An entry as a line of the journal whose id, stamp and time mean nothing.
fn line(entry: &Content, now: Moment) -> Option<String> {
    Event::not_logged(entry.clone(), now).write().ok()
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use heapwright_wire::{TodayTold, ToldQuestion};

    use super::*;
    use crate::outlook::read_state;

    #[test]
    fn every_heap_of_the_demo_garden_is_told_of_and_each_entry_can_be_logged() {
        let day = jiff::civil::date(2026, 11, 15);
        let lines: Vec<String> = heapwright_invented::lines(&heapwright_invented::Plan::demo(day))
            .map(Result::unwrap)
            .collect();
        let journal = lines.join("\n");
        let question = ToldQuestion {
            journal: journal.clone(),
            heap: String::new(),
            today: true,
            now: "2026-11-15T12:00:00+00:00".to_owned(),
            us_units: false,
        };
        let text = crate::told::told(&serde_json::to_string(&question).unwrap()).unwrap();
        let told: TodayTold = serde_json::from_str(&text).unwrap();
        let state = read_state(&journal);
        let needing: BTreeSet<&str> = told.needs.iter().map(|need| need.heap.as_str()).collect();
        for heap in state.heaps() {
            use heapwright_journal::content::Stage;
            let id = heap.id.to_string();
            let is_quiet = told.quiet.iter().any(|quiet| quiet.heap == id);
            let is_told = needing.contains(id.as_str()) || is_quiet;
            assert_eq!(is_told, heap.now().stage != Stage::Finished, "{id}");
        }
        assert!(!told.needs.is_empty());
        for need in &told.needs {
            assert!(!need.why.is_empty(), "{}", need.headline);
            assert_eq!(need.act.is_empty(), need.entry.is_empty());
            if !need.entry.is_empty() {
                let event = Event::read(&need.entry).unwrap();
                assert!(event.content().is_some(), "{}", need.entry);
            }
        }
    }
}
