//! What is told of the journal on this device, and of files that come to it.

use heapwright_journal::Summary;
use heapwright_journal::store::{Damage, DamageKind};
use heapwright_state::Arrival;
use heapwright_texts::Locale;
use heapwright_texts::messages::page as texts;

use super::{file_cut, file_headless, nothing_new, number, other_garden};
use crate::amounts::row;

/// A number of entries: "1 entry", "12 entries".
#[must_use]
pub fn entries(count: u64, locale: Locale) -> String {
    texts::Entries {
        count: number(count),
    }
    .said(locale)
}

/// How much is in the journal.
#[must_use]
pub fn journal_size(lines: u64, locale: Locale) -> String {
    texts::JournalSize {
        count: number(lines),
    }
    .said(locale)
}

/// The journal that was here is gone; so many entries were in it.
#[must_use]
pub fn gone(entries: u64, locale: Locale) -> String {
    texts::Gone {
        count: number(entries),
    }
    .said(locale)
}

/// The journal was written back after the browser had cleared it; so many entries were, so many could not
/// be.
#[must_use]
pub fn put_back(entries: u64, lost: u64, locale: Locale) -> String {
    let put_back = texts::PutBack {
        count: number(entries),
    }
    .said(locale);
    if lost == 0 {
        return put_back;
    }
    texts::PutBackInPart {
        lost: number(lost),
        put_back: &put_back,
    }
    .said(locale)
}

/// What is damaged in the journal.
#[must_use]
pub fn damage_line(damage: &[Damage], locale: Locale) -> Option<String> {
    let count = |kind| damage.iter().filter(|one| one.kind == kind).count() as u64;
    let first = number(damage.iter().map(|one| one.position).min()?);
    let places = if damage.len() == 1 {
        "single"
    } else {
        "several"
    };
    let (changed, missing) = (count(DamageKind::Changed), count(DamageKind::Missing));
    Some(match (changed, missing) {
        (0, 0) => texts::DamageOrder { first, places }.said(locale),
        (_, 0) => texts::DamageChanged {
            changed: number(changed),
            first,
            places,
        }
        .said(locale),
        (0, _) => texts::DamageMissing { first, places }.said(locale),
        (_, _) => texts::DamageMissingAndChanged {
            changed: number(changed),
            first,
        }
        .said(locale),
    })
}

/// What a file would bring: one sentence each.
#[must_use]
pub fn arrival_lines(summary: &Summary, arrival: &Arrival, locale: Locale) -> Vec<String> {
    let mut lines = vec![
        texts::FileHolds {
            count: number(summary.events),
            known: number(arrival.known),
            new: number(arrival.new),
        }
        .said(locale),
    ];
    if !arrival.conflicts.is_empty() {
        let count = number(arrival.conflicts.len() as u64);
        lines.push(texts::FileConflicts { count }.said(locale));
    }
    let not_understood: u64 = summary.not_understood.values().sum();
    if not_understood > 0 {
        let kinds: Vec<&String> = summary.not_understood.keys().collect();
        lines.push(
            texts::FileNotUnderstood {
                count: number(not_understood),
                kinds: &row(&kinds, locale),
            }
            .said(locale),
        );
    }
    if arrival.ahead > 0 {
        let count = number(arrival.ahead);
        lines.push(texts::FileAhead { count }.said(locale));
    }
    if summary.header.is_none() {
        lines.push(file_headless(locale).to_owned());
    } else if !summary.whole {
        lines.push(file_cut(locale).to_owned());
    }
    if arrival.other_garden.is_some() {
        lines.push(other_garden(locale).to_owned());
    }
    if summary.fault_count > 0 {
        let count = number(summary.fault_count);
        lines.push(texts::FileFaults { count }.said(locale));
    }
    if arrival.new == 0 {
        lines.push(nothing_new(locale).to_owned());
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn damage_is_told_by_its_first_place_and_kind() {
        use DamageKind::{Changed, Missing};
        for (damage, begins) in [
            (
                &[(7, Changed)][..],
                "1 entry has changed in the journal on this device and is left out (number 7). All",
            ),
            (
                &[(9, Changed), (4, Changed)],
                "2 entries have changed in the journal on this device and are left out (from number 4). All",
            ),
            (
                &[(3, Missing), (8, Changed)],
                "Entries are missing from the journal on this device, and 1 more has changed (from number 3). All",
            ),
        ] {
            let damage: Vec<Damage> = damage
                .iter()
                .map(|&(position, kind)| Damage { position, kind })
                .collect();
            let line = damage_line(&damage, Locale::default()).unwrap();
            assert!(line.starts_with(begins), "{line}");
            assert!(line.ends_with("brings back what it holds."), "{line}");
        }
        assert_eq!(damage_line(&[], Locale::default()), None);
    }

    #[test]
    fn what_could_not_be_put_back_is_told_after_what_was() {
        let all = put_back(1, 0, Locale::default());
        assert!(all.contains(": 1 entry. Pictures"), "{all}");
        let part = put_back(1, 2, Locale::default());
        assert!(part.starts_with(&all), "{part}");
        assert!(part.contains("Missing: 2 entries that"), "{part}");
    }
}
