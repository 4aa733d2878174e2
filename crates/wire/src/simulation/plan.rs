//! "turn now", "turn in 3 days", "water 10 l tomorrow", "leave": ways to go on, as people say them.

use heapwright_answers::heap::Action;
use heapwright_answers::{Plan, Planned};
use heapwright_catalogue::Catalogue;
use heapwright_garden::Garden;
use heapwright_journal::Moment;

use crate::WireError;
use crate::read::{shown, water_kg};
use crate::when::{OffsetAt, parse_since};

const MS_PER_HOUR: i64 = 3_600_000;
/// A day alone is its noon.
const NOON_H: i64 = 12;

/// Understands a way to go on: acts parted by "and" or commas, each a word, what and when.
///
/// # Errors
///
/// When a word or a time is not understood.
pub fn spoken_plan(
    catalogue: &Catalogue,
    garden: &Garden,
    text: &str,
    now: Moment,
    offset_at: &OffsetAt,
    field: &str,
) -> Result<Plan, WireError> {
    let name = text.split_whitespace().collect::<Vec<_>>().join(" ");
    let mut acts = Vec::new();
    let joined = name.to_lowercase().replace(" and ", ", ");
    for act in joined.split(',').map(str::trim) {
        let (verb, rest) = act.split_once(' ').unwrap_or((act, ""));
        let rest = rest.strip_prefix("it ").unwrap_or(rest);
        let rest = if rest == "it" { "" } else { rest };
        match verb {
            "leave" | "nothing" | "" if rest.is_empty() || rest == "alone" => {
                if verb.is_empty() {
                    return Err(not_understood(field, text));
                }
            }
            "turn" => acts.push(Planned {
                at: when(rest, now, offset_at, field, text)?,
                action: Action::Turn { thoroughness: 1.0 },
            }),
            "water" => {
                let (amount, time) = amount_and_time(rest);
                let litres = water_kg(catalogue, garden, amount, field)?;
                acts.push(Planned {
                    at: when(time, now, offset_at, field, text)?,
                    action: Action::Water { litres },
                });
            }
            _ => return Err(not_understood(field, text)),
        }
    }
    Ok(Plan { name, acts })
}

/// "10 l in 3 days" as an amount and a time.
fn amount_and_time(text: &str) -> (&str, &str) {
    [" in ", " on ", " now", " today", " tomorrow"]
        .iter()
        .filter_map(|word| text.find(word))
        .min()
        .map_or((text, ""), |place| {
            (text[..place].trim(), text[place..].trim())
        })
}

fn not_understood(field: &str, text: &str) -> WireError {
    WireError::field(
        field,
        format!(
            "\"{}\" is not understood: say what and when, such as \"turn now\", \"turn in 3 days\", \"water 10 l tomorrow\" or \"leave\"",
            shown(text)
        ),
    )
}

/// A time from now on: now when none is said.
fn when(
    text: &str,
    now: Moment,
    offset_at: &OffsetAt,
    field: &str,
    whole: &str,
) -> Result<Moment, WireError> {
    let later = |hours: i64| {
        Moment::new(
            now.instant_ms.saturating_add(hours * MS_PER_HOUR),
            now.offset_min,
        )
        .ok_or_else(|| not_understood(field, whole))
    };
    let words: Vec<&str> = text.split_whitespace().collect();
    let moment = match words.as_slice() {
        [] | ["now" | "today"] => now,
        ["tomorrow"] => later(24)?,
        ["in", count, unit] => {
            let hours = match *unit {
                "hour" | "hours" | "h" => 1,
                "day" | "days" | "d" => 24,
                "week" | "weeks" => 7 * 24,
                _ => return Err(not_understood(field, whole)),
            };
            let count = match *count {
                "a" | "an" | "one" => 1,
                count => count
                    .parse::<u16>()
                    .map_err(|_| not_understood(field, whole))?,
            };
            later(hours * i64::from(count))?
        }
        _ => {
            let date = text.strip_prefix("on ").unwrap_or(text);
            let moment = parse_since(date, now, offset_at)
                .map_err(|error| WireError::field(field, error))?;
            let local = moment.local();
            let midnight = (local.hour(), local.minute()) == (0, 0);
            let shift = if midnight { NOON_H * MS_PER_HOUR } else { 0 };
            let noon = Moment::new(moment.instant_ms + shift, moment.offset_min)
                .ok_or_else(|| not_understood(field, whole))?;
            // Today's noon may be past, but the day is not.
            if noon.local().date() == now.local().date() && noon.instant_ms < now.instant_ms {
                now
            } else {
                noon
            }
        }
    };
    if moment.instant_ms < now.instant_ms {
        return Err(WireError::field(
            field,
            format!(
                "\"{}\" lies in the past: give a day from today on",
                shown(whole)
            ),
        ));
    }
    Ok(moment)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn acts(text: &str) -> Result<Vec<(i64, Action)>, String> {
        let now: Moment = "2026-05-06T14:30:00+02:00".parse().unwrap();
        spoken_plan(
            Catalogue::built_in(),
            &Garden::default(),
            text,
            now,
            &|_| 120,
            "--compare",
        )
        .map(|plan| {
            plan.acts
                .into_iter()
                .map(|act| {
                    (
                        (act.at.instant_ms - now.instant_ms) / MS_PER_HOUR,
                        act.action,
                    )
                })
                .collect()
        })
        .map_err(|error| error.to_string())
    }

    #[test]
    fn plans_are_understood() {
        let turn = Action::Turn { thoroughness: 1.0 };
        let water = Action::Water { litres: 10.0 };
        for (text, expected) in [
            ("leave", vec![]),
            ("leave it alone", vec![]),
            ("turn", vec![(0, turn.clone())]),
            ("Turn now", vec![(0, turn.clone())]),
            ("turn it tomorrow", vec![(24, turn.clone())]),
            ("turn in 3 days", vec![(72, turn.clone())]),
            ("turn in a week", vec![(168, turn.clone())]),
            ("turn on 2026-05-08 14:30", vec![(48, turn.clone())]),
            // A day alone is its noon.
            ("turn 2026-05-07", vec![(21, turn.clone())]),
            ("water 10 l", vec![(0, water.clone())]),
            (
                "turn in 2 days and water 10 l in 2 days",
                vec![(48, turn), (48, water)],
            ),
        ] {
            assert_eq!(acts(text), Ok(expected), "{text}");
        }
    }

    #[test]
    fn what_is_no_plan_is_told() {
        for text in [
            "",
            "dance",
            "leave now",
            "turn in x days",
            "turn in 3 moons",
            "water",
            "turn,",
        ] {
            assert!(acts(text).unwrap_err().starts_with("--compare: "), "{text}");
        }
    }
}
