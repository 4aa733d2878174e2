//! Why something is needed: a sentence for each reason.

use heapwright_answers::today::{Because, Need};
use heapwright_catalogue::hygiene_rules;
use heapwright_journal::Moment;
use heapwright_journal::content::{Creature, Look, Smell, Squeeze};
use heapwright_texts::Locale;
use heapwright_texts::messages::today as messages;

use crate::amounts::{percent_text, ratio_text};
use crate::hygiene::{rounded, time_text};
use crate::journal::{ago_text, day_text};
use crate::spoken::{place_name, rule_in};
use crate::words::Word;

/// Fewer days than these are told without a number.
const FEW_D: f64 = 2.0;

/// All reasons of a need, a sentence each, the weightiest first.
#[must_use]
pub fn why_lines(need: &Need, now: Moment, locale: Locale) -> Vec<String> {
    need.because
        .iter()
        .map(|because| because_line(because, now, locale))
        .collect()
}

/// One reason as a sentence.
#[must_use]
pub fn because_line(because: &Because, now: Moment, locale: Locale) -> String {
    let ago = |at: &Moment| ago_text(*at, now, locale);
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
        Because::RunsOut { days } if *days < FEW_D => messages::runs_out_at_once(locale).to_owned(),
        Because::RunsOut { days } => messages::RunsOut {
            days: rounded(days.floor(), 2),
        }
        .said(locale),
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
