//! What is this garden used to? The materials that its keeper reaches for: what was fed lately, what
//! the season brings, what a usual day has.

use heapwright_catalogue::{Hemisphere, in_season};
use heapwright_journal::content::PartFed;
use heapwright_journal::{Content, Moment};
use heapwright_state::State;

use crate::keeping::{Journal, Status, device};
use crate::language;
use crate::state::TILES;

/// Of what was fed lately, how many come first.
const MOST_RECENT: usize = 6;
/// Of what is in season, how many come next.
const MOST_IN_SEASON: usize = 3;
/// How many tiles there are to put by.
const MOST_PUT_BY: usize = 8;
/// How far back "lately" goes \[ms\]: a season.
const LATELY_MS: i64 = 90 * 24 * 3600 * 1000;

/// The tiles, none when there are no heaps; `None` while the journal is being read, and in the demo
/// garden.
pub fn known(journal: &Journal) -> Option<String> {
    let is_own = journal.status == Status::Ready && !journal.is_demo;
    is_own.then(|| {
        let has_heaps = journal.state.heaps().next().is_some();
        if has_heaps {
            tiles(&journal.state, device::now()).join(" ")
        } else {
            String::new()
        }
    })
}

/// Materials to offer first: as many as on a usual day.
fn tiles(state: &State, now: Moment) -> Vec<String> {
    let mut found: Vec<String> = recent(state, now);
    found.truncate(MOST_RECENT);
    let season: Vec<String> = fresh(state, now)
        .into_iter()
        .filter(|material| !found.iter().any(|known| known == material))
        .take(MOST_IN_SEASON)
        .map(str::to_owned)
        .collect();
    found.extend(season);
    for (usual, _) in TILES {
        if found.len() < TILES.len() && !found.iter().any(|known| known == usual) {
            found.push(usual.to_owned());
        }
    }
    found
}

/// Browns of a usual year.
const BROWNS: [&str; 5] = [
    "dry_leaves_mixed",
    "corrugated_cardboard",
    "straw_wheat",
    "shredded_prunings",
    "leaves_shredded_dry",
];

/// What is put by most often: what the stores had before, then browns, those in season first.
pub fn put_by_tiles(state: &State, now: Moment) -> Vec<String> {
    let mut found: Vec<String> = Vec::new();
    let known = state.stores().shelves.iter().map(|(key, _)| &*key.material);
    let season = fresh(state, now);
    let in_season = season.iter().copied().filter(|id| BROWNS.contains(id));
    for id in known.chain(in_season).chain(BROWNS) {
        let is_material = language::catalogue().material(id).is_some();
        if is_material && found.len() < MOST_PUT_BY && !found.iter().any(|one| one == id) {
            found.push(id.to_owned());
        }
    }
    found
}

/// What is in season where the garden lies; nothing when that is not known.
fn fresh(state: &State, now: Moment) -> Vec<&'static str> {
    let month = u8::try_from(now.local().month()).unwrap_or(1);
    let place = state.garden().place.as_ref();
    place.map_or_else(Vec::new, |place| {
        in_season(month, Hemisphere::of_latitude(place.latitude_deg)).collect()
    })
}

/// What was fed lately and did not come from the stores, which are in reach: the most often first,
/// of as often the latest.
fn recent(state: &State, now: Moment) -> Vec<String> {
    let mut counted: Vec<(String, usize, i64)> = Vec::new();
    let feeds = state
        .entries()
        .filter_map(|entry| entry.counts())
        .filter_map(|event| match event.content() {
            Some(Content::Fed(fed)) => Some((event.happened.instant_ms, &fed.parts)),
            _ => None,
        })
        .filter(|(then, _)| now.instant_ms - then < LATELY_MS);
    for (then, parts) in feeds {
        for id in parts.iter().filter_map(offered) {
            match counted.iter_mut().find(|(known, ..)| known == id) {
                Some((_, count, last)) => {
                    *count += 1;
                    *last = then.max(*last);
                }
                None => counted.push((id.to_owned(), 1, then)),
            }
        }
    }
    counted.sort_by(|one, other| (other.1, other.2, &one.0).cmp(&(one.1, one.2, &other.0)));
    counted.into_iter().map(|(id, ..)| id).collect()
}

/// The material of a part, if a tile can offer it.
fn offered(part: &PartFed) -> Option<&str> {
    let id = part.material.as_deref()?;
    let is_known = language::catalogue().material(id).is_some();
    (is_known && !part.from_stores).then_some(id)
}

#[cfg(test)]
mod tests {
    use super::*;
    use heapwright_catalogue::Catalogue;
    use heapwright_journal::FileReader;

    fn demo() -> State {
        let mut reader = FileReader::default();
        let mut state = State::default();
        let day = jiff::civil::date(2026, 11, 15);
        for line in heapwright_invented::lines(&heapwright_invented::Plan::demo(day)) {
            let (line, event) = reader.read(line.unwrap().as_bytes()).unwrap();
            state.take_all([(line.digest(), event)]);
        }
        state
    }

    fn november() -> Moment {
        Moment::new(
            "2026-11-15T12:00:00Z"
                .parse::<jiff::Timestamp>()
                .unwrap()
                .as_millisecond(),
            0,
        )
        .unwrap()
    }

    #[test]
    fn tiles_are_known_materials_each_once_and_without_feeds_those_of_a_usual_day() {
        let tiles_now = tiles(&demo(), november());
        assert_eq!(tiles_now.len(), TILES.len());
        for (index, tile) in tiles_now.iter().enumerate() {
            assert!(Catalogue::built_in().material(tile).is_some(), "{tile}");
            assert!(!tiles_now[..index].contains(tile), "{tile}");
        }
        assert_eq!(
            tiles(&State::default(), november()),
            TILES.map(|(material, _)| material)
        );
    }

    #[test]
    fn what_was_fed_lately_comes_before_what_the_season_brings() {
        let state = demo();
        let recent = recent(&state, november());
        let found = tiles(&state, november());
        let first = recent.len().min(MOST_RECENT);
        assert!(first > 0);
        assert_eq!(found[..first], recent[..first]);
        // The demo garden lies in the north, and it is November.
        let leaves = found.iter().position(|tile| tile == "dry_leaves_mixed");
        assert!(leaves.is_some(), "{found:?}");
    }
}
