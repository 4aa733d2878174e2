//! What a picture over time shows, day by day: the rows of its table, at which its cursor stops.

use heapwright_drawings::{BandPoint, OverTime};
use heapwright_journal::Moment;
use heapwright_texts::Locale;
use heapwright_wording::{self as wording, pictures_read as words};

const DAY_MS: f64 = 86_400_000.0;

/// A day of the calendar, and the point that stands for it.
pub struct DayRow<'a> {
    /// Midnights between this day and that of now: 0 today, -1 yesterday.
    pub midnights: i64,
    /// Its name: the date, or that it is now.
    pub name: String,
    /// The first point of the day; of today the one that is nearest to now.
    pub point: &'a BandPoint,
}

/// Which point is nearest to now; `None` when there is none.
pub fn nearest_to_now(points: &[BandPoint]) -> Option<usize> {
    let far = |at: usize| points[at].day.abs();
    (0..points.len()).min_by(|one, other| far(*one).total_cmp(&far(*other)))
}

/// A row for each day of the calendar that has a point; one is now.
pub fn by_day<'a>(now: Moment, points: &'a [BandPoint], locale: Locale) -> Vec<DayRow<'a>> {
    let Some(nearest) = nearest_to_now(points) else {
        return Vec::new();
    };
    let mut rows: Vec<DayRow<'a>> = Vec::new();
    for (index, point) in points.iter().enumerate() {
        // The nearest point stands for today also where it lies beyond a midnight.
        let midnights = match midnights(now, point.day) {
            _ if index == nearest => 0,
            0 => continue,
            day => day,
        };
        if rows.last().is_some_and(|last| last.midnights == midnights) {
            continue;
        }
        rows.push(DayRow {
            midnights,
            name: name(now, point.day, midnights, locale),
            point,
        });
    }
    rows
}

/// What was done and read on each of these days, or after it on days that have no row; `None` when that
/// was nothing.
pub fn done(
    now: Moment,
    shown: &OverTime,
    days: &[DayRow<'_>],
    read: impl Fn(f64) -> String,
) -> Option<Vec<String>> {
    let mut done: Vec<Vec<String>> = days.iter().map(|_| Vec::new()).collect();
    let row = |day: f64| {
        let on = midnights(now, day);
        days.partition_point(|row| row.midnights <= on)
            .saturating_sub(1)
    };
    for event in &shown.events {
        let word = shown.doings.iter().find(|(doing, _)| *doing == event.doing);
        if let Some((cell, (_, word))) = done.get_mut(row(event.day)).zip(word)
            && !cell.contains(word)
        {
            cell.push(word.clone());
        }
    }
    for (day, value) in &shown.readings {
        if let Some(cell) = done.get_mut(row(*day)) {
            cell.push(read(*value));
        }
    }
    let any = done.iter().any(|cell| !cell.is_empty());
    any.then(|| done.into_iter().map(|cell| cell.join(", ")).collect())
}

/// Midnights between now and a time so many days from it, by the clock as it goes now.
fn midnights(now: Moment, day: f64) -> i64 {
    let local_ms = now.instant_ms + i64::from(now.offset_min) * 60_000;
    #[allow(clippy::cast_precision_loss)] // less than a day
    let since_midnight_d = local_ms.rem_euclid(86_400_000) as f64 / DAY_MS;
    // What is planned for now lies a hair before it.
    #[allow(clippy::cast_possible_truncation)] // some days
    let all = (day + since_midnight_d + 1e-9).floor() as i64;
    all
}

fn name(now: Moment, day: f64, midnights: i64, locale: Locale) -> String {
    if midnights == 0 {
        return words::now(locale).to_owned();
    }
    #[allow(clippy::cast_possible_truncation)] // some days
    let after_ms = (day * DAY_MS).round() as i64;
    Moment::new(now.instant_ms.saturating_add(after_ms), now.offset_min).map_or_else(
        || wording::day_of_case(day, locale),
        |moment| wording::day_text(moment, locale),
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use heapwright_drawings::{Doing, Event};

    fn points(days: impl Iterator<Item = f64>) -> Vec<BandPoint> {
        days.map(|day| BandPoint {
            day,
            low: 0.0,
            lower: 0.0,
            middle: 0.0,
            upper: 0.0,
            high: 0.0,
        })
        .collect()
    }

    /// 26 November 2026 in UTC, so many minutes after midnight.
    fn at(minutes: i64) -> Moment {
        Moment::new(1_795_651_200_000 + minutes * 60_000, 0).unwrap()
    }

    #[test]
    fn each_day_has_one_row_and_now_is_one_of_them_at_every_hour() {
        for minutes in (0..1440).step_by(20) {
            let now = at(minutes);
            assert_eq!(now.local().day(), 26);
            for (every_d, ahead_d) in [0.25, 0.5].into_iter().flat_map(|every_d| {
                (0..10_u8).map(move |tenth| (every_d, every_d * f64::from(tenth) / 10.0))
            }) {
                let all = points((-20..40_i8).map(|index| f64::from(index) * every_d + ahead_d));
                let rows = by_day(now, &all, Locale::default());
                let told = || format!("{minutes} min, every {every_d} d, from {ahead_d} d");
                let is_next = |pair: &[DayRow<'_>]| pair[1].midnights == pair[0].midnights + 1;
                assert!(rows.windows(2).all(is_next), "{}", told());
                let named = |row: &&DayRow<'_>| row.name == words::now(Locale::default());
                assert_eq!(rows.iter().filter(named).count(), 1, "{}", told());
                let today = rows.iter().find(|row| row.midnights == 0).unwrap();
                assert!(today.point.day.abs() <= every_d / 2.0 + 1e-9, "{}", told());
                let mut names: Vec<&str> = rows.iter().map(|row| row.name.as_str()).collect();
                names.sort_unstable();
                names.dedup();
                assert_eq!(names.len(), rows.len(), "{}", told());
            }
        }
        assert!(by_day(at(0), &[], Locale::default()).is_empty());
    }

    #[test]
    fn what_was_done_stands_in_the_row_of_its_day() {
        // Noon.
        let now = at(720);
        let all = points((-2..=1_i8).map(f64::from));
        let days = by_day(now, &all, Locale::default());
        let event = |day: f64, doing: Doing| Event {
            day,
            doing,
            planned: false,
        };
        let shown = OverTime {
            events: vec![
                event(-2.4, Doing::Fed),
                event(-1.6, Doing::Fed),
                // In the morning of this day.
                event(-0.3, Doing::Watered),
                event(3.0, Doing::Turned),
            ],
            doings: vec![
                (Doing::Fed, "fed".to_owned()),
                (Doing::Watered, "watered".to_owned()),
                (Doing::Turned, "turned".to_owned()),
            ],
            readings: vec![(-1.7, 47.0)],
            ..OverTime::default()
        };
        let told = done(now, &shown, &days, |value| format!("probe {value}"));
        let wanted = ["fed, probe 47", "", "watered", "turned"];
        assert_eq!(told.unwrap(), wanted);
        assert_eq!(
            done(now, &OverTime::default(), &days, |_| String::new()),
            None
        );
    }
}
