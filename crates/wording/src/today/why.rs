//! Why something is needed: a sentence for each reason.

use heapwright_answers::today::{Because, Need};
use heapwright_catalogue::hygiene_rules;
use heapwright_journal::Moment;
use heapwright_journal::content::{Creature, Look, Smell, Squeeze};
use heapwright_quantity::{UnitSystem, significant, temperature_text};

use crate::amounts::{percent_text, ratio_text};
use crate::hygiene::time_text;
use crate::journal::ago_text;
use crate::words::Word;

/// All reasons of a need, a sentence each, the weightiest first.
#[must_use]
pub fn why_lines(need: &Need, now: Moment, system: UnitSystem) -> Vec<String> {
    need.because
        .iter()
        .map(|because| because_line(because, now, system))
        .collect()
}

/// One reason as a sentence.
#[must_use]
pub fn because_line(because: &Because, now: Moment, system: UnitSystem) -> String {
    let degrees = |value: f64| temperature_text(value, system);
    let ago = |at: Moment| ago_text(at, now);
    match because {
        Because::Alarm { temperature_c, at } => format!(
            "The probe showed {} {}: living things do not make such heat, and it can go on to fire.",
            degrees(*temperature_c),
            ago(*at)
        ),
        Because::HotAndDry { temperature_c, at } => format!(
            "The probe showed {} {}, and the heap is high and dry: such a heap can set itself alight.",
            degrees(*temperature_c),
            ago(*at)
        ),
        Because::TooHot { temperature_c, at } => format!(
            "The probe showed {} {}: that kills most of what works in it, and dries it out.",
            degrees(*temperature_c),
            ago(*at)
        ),
        Because::Hot { temperature_c, at } => format!(
            "The probe showed {} {}: that hot, most of what works in it slows down.",
            degrees(*temperature_c),
            ago(*at)
        ),
        Because::Creature { creature, at } => creature_line(*creature, &ago(*at)),
        Because::Smell { smell, at } => smell_line(*smell, &ago(*at)),
        Because::Squeeze { squeeze, at } => squeeze_line(*squeeze, &ago(*at)),
        Because::Look { look, at } => look_line(*look, &ago(*at)),
        Because::FedTooWet { moisture } => format!(
            "By its figures, what you fed in the last month is {} water: too wet to let air in.",
            percent_text(*moisture)
        ),
        Because::FedTooDry { moisture } => format!(
            "By its figures, what you fed in the last month is only {} water: too dry to work.",
            percent_text(*moisture)
        ),
        Because::FedTooRich { carbon_to_nitrogen } => format!(
            "By its figures, what you fed in the last month has a C:N of {}: nitrogen will leave it as ammonia.",
            ratio_text(*carbon_to_nitrogen)
        ),
        Because::FedTooPoor { carbon_to_nitrogen } => format!(
            "By its figures, what you fed in the last month has a C:N of {}: it will hardly get warm.",
            ratio_text(*carbon_to_nitrogen)
        ),
        Because::Cooling { from_c, to_c, at } => format!(
            "It was {} and had cooled to {} when you read it {}: fresh air and mixing may warm it again.",
            degrees(*from_c),
            degrees(*to_c),
            ago(*at)
        ),
        Because::HotUnread { temperature_c, at } => format!(
            "It was hot when you last read it: {} {}.",
            degrees(*temperature_c),
            ago(*at)
        ),
        Because::RuleTime {
            rule,
            missing_s,
            least_c,
            raw,
        } => {
            let (rule, time, heat) = (rule_name(rule), time_text(*missing_s), degrees(*least_c));
            if *raw {
                format!(
                    "Something in it calls for heat. {rule} asks for {time} more at {heat} or above, read at least once a day."
                )
            } else {
                format!(
                    "{rule} asks for {time} more at {heat} or above, read at least once a day, if you want to meet it."
                )
            }
        }
        Because::RuleTurns { rule, turns, raw } => {
            let rule = rule_name(rule);
            match (*turns, *raw) {
                (1, true) => {
                    format!("Something in it calls for heat. {rule} asks for one more turning.")
                }
                (turns, true) => format!(
                    "Something in it calls for heat. {rule} asks for {turns} more turnings."
                ),
                (1, false) => format!("{rule} asks for one more turning, if you want to meet it."),
                (turns, false) => {
                    format!("{rule} asks for {turns} more turnings, if you want to meet it.")
                }
            }
        }
        Because::NotLookedAt { last: Some(last) } => {
            format!("The last look that you wrote down was {}.", ago(*last))
        }
        Because::NotLookedAt { last: None } => {
            "No look at it is written down since it was started.".to_owned()
        }
        Because::NotFed { since } => {
            format!("You last fed it {}, and it has come to rest.", ago(*since))
        }
        Because::LooksDone => "It looks done.".to_owned(),
        Because::Ripened { since } => format!("It has ripened since {}.", since_text(*since)),
        Because::Ready => {
            "Two independent signs say that it is ready: it has come to rest, and plants bear it."
                .to_owned()
        }
        Because::Uncovered => "Nothing lies over it while it ripens.".to_owned(),
        Because::RunsOut { days } if *days < 2.0 => {
            "At the pace of the last weeks it lasts for a day or two.".to_owned()
        }
        Because::RunsOut { days } => format!(
            "At the pace of the last weeks it lasts for {} days.",
            significant(days.floor(), 2)
        ),
        Because::UsedUp => "You used it in the last weeks, and it is used up.".to_owned(),
    }
}

fn since_text(since: Moment) -> String {
    crate::journal::day_text(since)
}

fn rule_name(id: &str) -> String {
    hygiene_rules()
        .iter()
        .find(|rule| rule.id == id)
        .map_or_else(
            || "A published rule".to_owned(),
            |rule| format!("A published rule ({}: {})", rule.jurisdiction, rule.name),
        )
}

fn creature_line(creature: Creature, ago: &str) -> String {
    match creature {
        Creature::Rats => format!("Rats, or signs of them, were seen {ago}."),
        Creature::Mice => format!("Mice were seen {ago}."),
        Creature::Maggots => format!("Maggots of flies were seen {ago}."),
        Creature::FruitFlies => format!("Small flies were seen {ago}."),
        Creature::Flies => format!("Flies were seen {ago}."),
        other => format!("There were {} {ago}.", other.word()),
    }
}

fn smell_line(smell: Smell, ago: &str) -> String {
    match smell {
        Smell::Ammonia => format!("It smelt of ammonia {ago}: nitrogen is leaving it."),
        Smell::Sour => format!("It smelt sour {ago}: it lacks air."),
        Smell::Rotten => format!("It smelt rotten {ago}: it lacks air."),
        other => format!("Its smell {ago}: {}.", other.word()),
    }
}

fn squeeze_line(squeeze: Squeeze, ago: &str) -> String {
    match squeeze {
        Squeeze::Dusty => format!("A handful fell apart as dust {ago}."),
        Squeeze::Dry => format!("A handful felt dry {ago}."),
        Squeeze::Dripping => format!("Water ran out of a handful {ago}."),
        other => format!("A handful felt {} {ago}.", other.word()),
    }
}

fn look_line(look: Look, ago: &str) -> String {
    match look {
        Look::Matted => format!("It lay in mats {ago}, which shut the air out."),
        Look::Slimy => format!("There were slimy places {ago}, which lack air."),
        Look::DryPockets => format!("There were dry pockets {ago}: wet them as you turn."),
        other => format!("It looked so {ago}: {}.", other.word()),
    }
}
