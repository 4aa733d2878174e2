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
