//! Why something is needed: a sentence for each reason.

use heapwright_answers::today::{Because, Need};
use heapwright_catalogue::hygiene_rules;
use heapwright_journal::Moment;
use heapwright_journal::content::{Creature, Look, Smell, Squeeze};
use heapwright_texts::Locale;
use heapwright_texts::messages::today as messages;

use crate::amounts::{percent_text, ratio_text};
use crate::hygiene::{rounded, time_text};
use crate::journal::{ago_text, day_text, on_day_text};
use crate::spoken::{place_name, rule_in};
use crate::words::Word;

/// Fewer days than these are told without a number.
const FEW_D: f64 = 2.0;

/// How reasons tell times.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Times {
    /// From now, for who reads it at once: "3 hours ago", "2 days left".
    FromNow(Moment),
    /// By days of the calendar, for what is written now and read on another day: "on 1 May 2026".
    ByDay(Moment),
}

impl Times {
    /// When something was.
    fn past(self, at: Moment, locale: Locale) -> String {
        match self {
            Self::FromNow(now) => ago_text(at, now, locale),
            Self::ByDay(_) => on_day_text(at, locale),
        }
    }
}

/// All reasons of a need, a sentence each, the weightiest first, for who reads them at once.
#[must_use]
pub fn why_lines(need: &Need, now: Moment, locale: Locale) -> Vec<String> {
    need.because
        .iter()
        .map(|because| because_line(because, Times::FromNow(now), locale))
        .collect()
}

/// One reason as a sentence.
#[must_use]
pub fn because_line(because: &Because, times: Times, locale: Locale) -> String {
    let ago = |at: &Moment| times.past(*at, locale);
    match because {
        Because::Alarm { temperature_c, at } => messages::Alarm {
            ago: &ago(at),
            temperature: &locale.temperature(*temperature_c),
        }
        .said(locale),
        Because::HotAndDry { temperature_c, at } => messages::HotAndDry {
            ago: &ago(at),
            temperature: &locale.temperature(*temperature_c),
        }
        .said(locale),
        Because::TooHot { temperature_c, at } => messages::TooHot {
            ago: &ago(at),
            temperature: &locale.temperature(*temperature_c),
        }
        .said(locale),
        Because::Hot { temperature_c, at } => messages::Hot {
            ago: &ago(at),
            temperature: &locale.temperature(*temperature_c),
        }
        .said(locale),
        Because::Creature { creature, at } => creature_line(*creature, &ago(at), locale),
        Because::Smell { smell, at } => smell_line(*smell, &ago(at), locale),
        Because::Squeeze { squeeze, at } => squeeze_line(*squeeze, &ago(at), locale),
        Because::Look { look, at } => look_line(*look, &ago(at), locale),
        Because::FedTooWet { moisture } => messages::FedTooWet {
            water: &percent_text(*moisture, locale),
        }
        .said(locale),
        Because::FedTooDry { moisture } => messages::FedTooDry {
            water: &percent_text(*moisture, locale),
        }
        .said(locale),
        Because::FedTooRich { carbon_to_nitrogen } => messages::FedTooRich {
            ratio: &ratio_text(*carbon_to_nitrogen, locale),
        }
        .said(locale),
        Because::FedTooPoor { carbon_to_nitrogen } => messages::FedTooPoor {
            ratio: &ratio_text(*carbon_to_nitrogen, locale),
        }
        .said(locale),
        Because::Cooling { from_c, to_c, at } => messages::Cooling {
            ago: &ago(at),
            from: &locale.temperature(*from_c),
            to: &locale.temperature(*to_c),
        }
        .said(locale),
        Because::HotUnread { temperature_c, at } => messages::HotUnread {
            ago: &ago(at),
            temperature: &locale.temperature(*temperature_c),
        }
        .said(locale),
        Because::RuleTime {
            rule,
            missing_s,
            least_c,
            raw,
        } => {
            let called = rule_called(rule, locale);
            let (place, rule) = called
                .as_ref()
                .map_or(("", ""), |(place, name)| (place, name));
            messages::RuleTime {
                named: yes(called.is_some()),
                place,
                raw: yes(*raw),
                rule,
                temperature: &locale.temperature(*least_c),
                time: &time_text(*missing_s, locale),
            }
            .said(locale)
        }
        Because::RuleTurns { rule, turns, raw } => {
            let called = rule_called(rule, locale);
            let (place, rule) = called
                .as_ref()
                .map_or(("", ""), |(place, name)| (place, name));
            messages::RuleTurns {
                named: yes(called.is_some()),
                place,
                raw: yes(*raw),
                rule,
                turns: f64::from(*turns),
            }
            .said(locale)
        }
        Because::NotLookedAt { last: Some(last) } => {
            messages::NotLookedAtSince { ago: &ago(last) }.said(locale)
        }
        Because::NotLookedAt { last: None } => messages::not_looked_at(locale).to_owned(),
        Because::NotFed { since } => messages::NotFed { ago: &ago(since) }.said(locale),
        Because::LooksDone => messages::looks_done(locale).to_owned(),
        Because::Ripened { since } => messages::Ripened {
            day: &day_text(*since, locale),
        }
        .said(locale),
        Because::Ready => messages::ready(locale).to_owned(),
        Because::Uncovered => messages::not_covered(locale).to_owned(),
        Because::RunsOut { days } => runs_out_line(*days, times, locale),
        Because::UsedUp => messages::used_up(locale).to_owned(),
    }
}

/// By what a message chooses between two of its sentences.
const fn yes(is_so: bool) -> &'static str {
    if is_so { "yes" } else { "no" }
}

/// Where a rule holds and what it is called; nothing of a rule of a newer version.
fn rule_called(id: &str, locale: Locale) -> Option<(String, String)> {
    let rule = hygiene_rules().iter().find(|rule| rule.id == id)?;
    Some((
        place_name(&rule.jurisdiction, locale),
        rule_in(rule, locale).name,
    ))
}

/// How long a store lasts, or until when.
fn runs_out_line(days: f64, times: Times, locale: Locale) -> String {
    let last_day = match times {
        Times::FromNow(_) => None,
        Times::ByDay(written) => after(written, days),
    };
    match last_day {
        Some(last_day) => messages::RunsOutOn {
            day: &day_text(last_day, locale),
        }
        .said(locale),
        None if days < FEW_D => messages::runs_out_at_once(locale).to_owned(),
        None => messages::RunsOut {
            days: rounded(days.floor(), 2),
        }
        .said(locale),
    }
}

/// So many days later.
fn after(moment: Moment, days: f64) -> Option<Moment> {
    #[allow(clippy::cast_possible_truncation)] // a store lasts for weeks
    let later_ms = (days * 86_400_000.0) as i64;
    Moment::new(
        moment.instant_ms.saturating_add(later_ms),
        moment.offset_min,
    )
}

fn creature_line(creature: Creature, ago: &str, locale: Locale) -> String {
    match creature {
        Creature::Rats => messages::SawRats { ago }.said(locale),
        Creature::Mice => messages::SawMice { ago }.said(locale),
        Creature::Maggots => messages::SawMaggots { ago }.said(locale),
        Creature::FruitFlies => messages::SawFruitFlies { ago }.said(locale),
        Creature::Flies => messages::SawFlies { ago }.said(locale),
        other => messages::SawOther {
            ago,
            creature: other.word(locale),
        }
        .said(locale),
    }
}

fn smell_line(smell: Smell, ago: &str, locale: Locale) -> String {
    match smell {
        Smell::Ammonia => messages::SmeltOfAmmonia { ago }.said(locale),
        Smell::Sour => messages::SmeltSour { ago }.said(locale),
        Smell::Rotten => messages::SmeltRotten { ago }.said(locale),
        other => messages::SmeltOther {
            ago,
            smell: other.word(locale),
        }
        .said(locale),
    }
}

fn squeeze_line(squeeze: Squeeze, ago: &str, locale: Locale) -> String {
    match squeeze {
        Squeeze::Dusty => messages::FeltDusty { ago }.said(locale),
        Squeeze::Dry => messages::FeltDry { ago }.said(locale),
        Squeeze::Dripping => messages::FeltDripping { ago }.said(locale),
        other => messages::FeltOther {
            ago,
            squeeze: other.word(locale),
        }
        .said(locale),
    }
}

fn look_line(look: Look, ago: &str, locale: Locale) -> String {
    match look {
        Look::Matted => messages::LookedMatted { ago }.said(locale),
        Look::Slimy => messages::LookedSlimy { ago }.said(locale),
        Look::DryPockets => messages::HadDryPockets { ago }.said(locale),
        other => messages::LookedOther {
            ago,
            look: other.word(locale),
        }
        .said(locale),
    }
}

#[cfg(test)]
mod tests {
    use heapwright_texts::Translation;

    use super::*;

    #[test]
    fn what_is_read_on_another_day_names_the_day() {
        let german: &'static Translation = Box::leak(Box::new(
            Translation::read("de", Translation::GERMAN, "").unwrap(),
        ));
        let english = Locale::default();
        let german = english.in_language(Some(german));
        // 21 September 2026.
        let now = Moment::new(1_790_000_000_000, 60).unwrap();
        let at = Moment::new(now.instant_ms - 4 * 60_000, 60).unwrap();
        let rats = Because::Creature {
            creature: Creature::Rats,
            at,
        };
        let rotten = Because::Smell {
            smell: Smell::Rotten,
            at,
        };
        let runs_out = Because::RunsOut { days: 5.5 };
        let told = |because, locale| {
            (
                because_line(because, Times::FromNow(now), locale),
                because_line(because, Times::ByDay(now), locale),
            )
        };
        for (because, locale, at_once, by_day) in [
            (
                &rats,
                english,
                "Rats, or signs of them, were seen 4 minutes ago.",
                "Rats, or signs of them, were seen on 21 September 2026.",
            ),
            (
                &rotten,
                german,
                "Er roch vor 4 Minuten faulig: Ihm fehlt Luft.",
                "Er roch am 21. September 2026 faulig: Ihm fehlt Luft.",
            ),
            (
                &runs_out,
                english,
                "At the pace of the last weeks it lasts for 5 days.",
                "At the pace of the last weeks it lasts until about 27 September 2026.",
            ),
        ] {
            let (found_at_once, found_by_day) = told(because, locale);
            assert_eq!(found_at_once, at_once);
            assert_eq!(found_by_day, by_day);
        }
    }
}
