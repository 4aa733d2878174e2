//! Which heap, bed or person is meant? Names however they are written, beginnings, ids.

use std::collections::BTreeMap;

use heapwright_journal::EventId;
use heapwright_journal::content::Stage;
use heapwright_state::State;

use crate::failure::Failure;

/// How alike a name must be to be suggested when it is more than slips apart, 0 to 1: an estimate.
const ALIKE: f64 = 0.85;

/// The most names that a message lists.
const MOST_NAMES: usize = 6;

/// Something that goes by a name.
struct Named {
    id: EventId,
    name: String,
    /// What is done with is meant only when nothing else goes by the name.
    done: bool,
}

/// What is looked for, for messages.
struct Kind {
    one: &'static str,
    say: &'static str,
    start: &'static str,
}

const HEAP: Kind = Kind {
    one: "heap",
    say: "HEAP",
    start: "start one with `heapwright heap new NAME`",
};
const BED: Kind = Kind {
    one: "bed",
    say: "BED",
    start: "describe one with `heapwright bed new NAME AREA`",
};
const PERSON: Kind = Kind {
    one: "person",
    say: "--by",
    start: "name one with `heapwright garden person NAME`",
};

fn heaps(state: &State) -> Vec<Named> {
    state
        .heaps()
        .filter_map(|heap| {
            Some(Named {
                id: heap.id,
                name: heap.name()?.to_owned(),
                done: heap.now().stage == Stage::Finished,
            })
        })
        .collect()
}

/// The heap that a text names; without one, the only heap that is not finished.
pub fn heap(state: &State, text: Option<&str>) -> Result<EventId, Failure> {
    let heaps = heaps(state);
    if let Some(text) = text {
        return found(&heaps, text, &HEAP);
    }
    let mut open = heaps.iter().filter(|heap| !heap.done);
    match (open.next(), open.next()) {
        (Some(only), None) => Ok(only.id),
        (None, _) if heaps.is_empty() => Err(none_yet(&HEAP)),
        (None, _) => Err(Failure::Input(format!(
            "all heaps are finished: say which is meant, {}, or {}",
            list(heaps.iter()),
            HEAP.start
        ))),
        (Some(_), Some(_)) => Err(Failure::Input(format!(
            "there is more than one heap: say which is meant, {}",
            list(heaps.iter().filter(|heap| !heap.done))
        ))),
    }
}

/// True when a text is the very name or id of a heap.
pub fn is_heap(state: &State, text: &str) -> bool {
    heaps(state)
        .iter()
        .any(|heap| plain(&heap.name) == plain(text) || heap.id.to_string() == text)
}

/// True when a heap that is not finished has this name.
pub fn is_taken(state: &State, name: &str) -> bool {
    heaps(state)
        .iter()
        .any(|heap| !heap.done && plain(&heap.name) == plain(name))
}

/// The bed that a text names.
pub fn bed(state: &State, text: &str) -> Result<EventId, Failure> {
    found(&beds(state), text, &BED)
}

/// True when a bed has this name.
pub fn is_bed(state: &State, name: &str) -> bool {
    beds(state)
        .iter()
        .any(|bed| plain(&bed.name) == plain(name))
}

fn beds(state: &State) -> Vec<Named> {
    state
        .beds()
        .filter_map(|bed| {
            Some(Named {
                id: bed.id,
                name: bed.now().described.as_ref()?.name.clone(),
                done: false,
            })
        })
        .collect()
}

/// The person whom a text names.
pub fn person(state: &State, text: &str) -> Result<EventId, Failure> {
    found(&people(state), text, &PERSON)
}

/// The person who has this very name.
pub fn person_called(state: &State, name: &str) -> Option<EventId> {
    people(state)
        .iter()
        .find(|person| plain(&person.name) == plain(name))
        .map(|person| person.id)
}

fn people(state: &State) -> Vec<Named> {
    state
        .garden()
        .people
        .iter()
        .map(|(id, person)| Named {
            id: *id,
            name: person.name.clone(),
            done: false,
        })
        .collect()
}

/// Case and the number of spaces do not matter.
fn plain(name: &str) -> String {
    name.to_lowercase()
        .split_whitespace()
        .collect::<Vec<_>>()
        .join(" ")
}

fn none_yet(kind: &Kind) -> Failure {
    Failure::Input(format!("there is no {} yet: {}", kind.one, kind.start))
}

fn found(all: &[Named], text: &str, kind: &Kind) -> Result<EventId, Failure> {
    if let Some(named) = all.iter().find(|named| named.id.to_string() == text.trim()) {
        return Ok(named.id);
    }
    if all.is_empty() {
        return Err(none_yet(kind));
    }
    let typed = plain(text);
    let same = |named: &&Named| plain(&named.name) == typed;
    let begins = |named: &&Named| !typed.is_empty() && plain(&named.name).starts_with(&typed);
    let mut matches: Vec<&Named> = all.iter().filter(same).collect();
    if matches.is_empty() {
        matches = all.iter().filter(begins).collect();
    }
    if matches.iter().any(|named| !named.done) {
        matches.retain(|named| !named.done);
    }
    match matches.as_slice() {
        [] => Err(unknown(all, text, &typed, kind)),
        [one] => Ok(one.id),
        several => {
            let mut names: BTreeMap<&str, Vec<String>> = BTreeMap::new();
            for named in several {
                names
                    .entry(&named.name)
                    .or_default()
                    .push(named.id.to_string());
            }
            let shown = shown(text);
            Err(Failure::Input(if names.len() > 1 {
                format!(
                    "{}: \"{shown}\" can be {}: say which",
                    kind.say,
                    list(several.iter().copied())
                )
            } else {
                let ids: Vec<String> = names.into_values().flatten().collect();
                format!(
                    "{}: more than one {} is called \"{shown}\": say which by its id, {}",
                    kind.say,
                    kind.one,
                    ids.join(" or ")
                )
            }))
        }
    }
}

/// What goes by the name that is nearest to a text, when one is near enough.
pub fn nearest<'a, Meant>(
    text: &str,
    names: impl Iterator<Item = (&'a str, Meant)>,
) -> Option<Meant> {
    let typed = plain(text);
    let slips = if typed.chars().count() < 4 { 1 } else { 2 };
    names
        .map(|(name, meant)| {
            let name = plain(name);
            let alike = strsim::jaro_winkler(&typed, &name);
            (strsim::osa_distance(&typed, &name), alike, meant)
        })
        .filter(|(apart, alike, _)| *apart <= slips || *alike >= ALIKE)
        .min_by(|one, other| one.0.cmp(&other.0).then(other.1.total_cmp(&one.1)))
        .map(|(_, _, meant)| meant)
}

fn unknown(all: &[Named], text: &str, typed: &str, kind: &Kind) -> Failure {
    let nearest = nearest(typed, all.iter().map(|named| (named.name.as_str(), named)));
    let help = match (nearest, all) {
        (Some(named), _) => format!("did you mean \"{}\"?", named.name),
        (None, [only]) => format!("there is only \"{}\"", only.name),
        (None, _) => format!("use one of {}", list(all.iter())),
    };
    Failure::Input(format!(
        "{}: no {} is called \"{}\": {help}",
        kind.say,
        kind.one,
        shown(text)
    ))
}

fn list<'a>(all: impl Iterator<Item = &'a Named>) -> String {
    let mut names: Vec<&str> = Vec::new();
    for named in all {
        if !names.contains(&named.name.as_str()) {
            names.push(&named.name);
        }
    }
    names.sort_unstable();
    let more = names.len().saturating_sub(MOST_NAMES);
    names.truncate(MOST_NAMES);
    match (names.as_slice(), more) {
        (_, 1..) => format!("{} or one of {more} more", names.join(", ")),
        ([others @ .., last], 0) if !others.is_empty() => {
            format!("{} or {last}", others.join(", "))
        }
        _ => names.join(", "),
    }
}

/// What was typed, on one line and at a length that fits a message.
pub fn shown(text: &str) -> String {
    let clean: String = text
        .chars()
        .map(|c| if c.is_control() { ' ' } else { c })
        .take(40)
        .collect();
    if text.chars().count() > 40 {
        clean + "…"
    } else {
        clean
    }
}
