//! Spoken and written times as moments.

use super::*;

/// A Wednesday, 14:30, two hours east; clocks were one hour east before 29 March.
fn now() -> Moment {
    "2026-05-06T14:30:00+02:00".parse().unwrap()
}

fn offset_at(local: DateTime) -> i16 {
    if local.date() < jiff::civil::date(2026, 3, 29) {
        60
    } else {
        120
    }
}

#[rustfmt::skip] // a table
const UNDERSTOOD: &[(&str, &str)] = &[
    ("now", "2026-05-06T14:30:00+02:00"),
    ("today", "2026-05-06T14:30:00+02:00"),
    ("2026-05-01T18:00:00+02:00", "2026-05-01T18:00:00+02:00"),
    ("2026-05-01T18:00:00Z", "2026-05-01T18:00:00Z"),
    ("2026-05-01t18:00:00.250z", "2026-05-01T18:00:00.250Z"),
    ("2026-05-01T18:00+02:00", "2026-05-01T18:00:00+02:00"),
    ("2026-05-01 18:00-0530", "2026-05-01T18:00:00-05:30"),
    ("2026-05-01 18:00 +02", "2026-05-01T18:00:00+02:00"),
    ("2026-05-01 18:00", "2026-05-01T18:00:00+02:00"),
    ("2026-05-01T18:00", "2026-05-01T18:00:00+02:00"),
    ("2026-05-01T18:00:05", "2026-05-01T18:00:05+02:00"),
    ("  2026-05-01   7:05 ", "2026-05-01T07:05:00+02:00"),
    ("2026-05-01 6 pm", "2026-05-01T18:00:00+02:00"),
    ("2026-05-01 evening", "2026-05-01T19:00:00+02:00"),
    ("2026-05-01", "2026-05-01T12:00:00+02:00"),
    ("2026-02-01", "2026-02-01T12:00:00+01:00"),
    ("2024-02-29", "2024-02-29T12:00:00+01:00"),
    ("2026-05-06", "2026-05-06T12:00:00+02:00"),
    ("2026-05-07 12:00", "2026-05-07T12:00:00+02:00"),
    ("today 7:30", "2026-05-06T07:30:00+02:00"),
    ("Today at 7:30", "2026-05-06T07:30:00+02:00"),
    ("TODAY NOON", "2026-05-06T12:00:00+02:00"),
    ("this morning", "2026-05-06T08:00:00+02:00"),
    ("tonight", "2026-05-06T22:00:00+02:00"),
    ("yesterday", "2026-05-05T12:00:00+02:00"),
    ("yesterday 18:00", "2026-05-05T18:00:00+02:00"),
    ("yesterday 6pm", "2026-05-05T18:00:00+02:00"),
    ("yesterday 6:15 p.m.", "2026-05-05T18:15:00+02:00"),
    ("yesterday morning", "2026-05-05T08:00:00+02:00"),
    ("yesterday noon", "2026-05-05T12:00:00+02:00"),
    ("yesterday afternoon", "2026-05-05T15:00:00+02:00"),
    ("yesterday evening", "2026-05-05T19:00:00+02:00"),
    ("yesterday night", "2026-05-05T22:00:00+02:00"),
    ("last night", "2026-05-05T22:00:00+02:00"),
    ("the day before yesterday", "2026-05-04T12:00:00+02:00"),
    ("day before yesterday 9:00", "2026-05-04T09:00:00+02:00"),
    ("3 hours ago", "2026-05-06T11:30:00+02:00"),
    ("an hour ago", "2026-05-06T13:30:00+02:00"),
    ("half an hour ago", "2026-05-06T14:00:00+02:00"),
    ("20 min ago", "2026-05-06T14:10:00+02:00"),
    ("2h ago", "2026-05-06T12:30:00+02:00"),
    ("2 days ago", "2026-05-04T14:30:00+02:00"),
    ("two days ago 18:00", "2026-05-04T18:00:00+02:00"),
    ("2 days ago evening", "2026-05-04T19:00:00+02:00"),
    ("a week ago", "2026-04-29T14:30:00+02:00"),
    ("2 months ago", "2026-03-06T14:30:00+01:00"),
    ("1 year ago", "2025-05-06T14:30:00+01:00"),
    ("60 days ago", "2026-03-07T14:30:00+01:00"),
    ("monday", "2026-05-04T12:00:00+02:00"),
    ("last monday 9:00", "2026-05-04T09:00:00+02:00"),
    ("Mon 9:00", "2026-05-04T09:00:00+02:00"),
    ("wednesday", "2026-04-29T12:00:00+02:00"),
    ("on Thursday evening", "2026-04-30T19:00:00+02:00"),
    ("sunday 12 am", "2026-05-03T00:00:00+02:00"),
    ("last week", "2026-04-29T12:00:00+02:00"),
    ("9:00", "2026-05-06T09:00:00+02:00"),
    ("14:30", "2026-05-06T14:30:00+02:00"),
    ("18:00", "2026-05-05T18:00:00+02:00"),
    ("7:30 PM", "2026-05-05T19:30:00+02:00"),
    ("12 pm", "2026-05-06T12:00:00+02:00"),
    ("12:30 am", "2026-05-06T00:30:00+02:00"),
    ("evening", "2026-05-05T19:00:00+02:00"),
    ("morning", "2026-05-06T08:00:00+02:00"),
    ("midnight", "2026-05-06T00:00:00+02:00"),
    ("1 May 2026", "2026-05-01T12:00:00+02:00"),
    ("1 May 2026, 18:00", "2026-05-01T18:00:00+02:00"),
    ("May 1st 2026 6 pm", "2026-05-01T18:00:00+02:00"),
    ("12 Dec", "2025-12-12T12:00:00+01:00"),
    ("3rd may 7:00", "2026-05-03T07:00:00+02:00"),
];

#[test]
fn times_are_understood() {
    assert!(UNDERSTOOD.len() >= 60);
    let wrong: Vec<String> = UNDERSTOOD
        .iter()
        .filter_map(|(text, expected)| {
            let found = parse_when(text, now(), &offset_at);
            let told = found.as_ref().map_or(String::new(), ToString::to_string);
            (told != *expected).then(|| format!("{text}: {found:?}, not {expected}"))
        })
        .collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[rustfmt::skip] // a table
const REFUSED: &[(&str, &str)] = &[
    ("", "not understood"), ("   ", "not understood"), ("soon", "not understood"),
    ("01/05/2026", "not understood"), ("7", "not understood"), ("2026", "not understood"),
    ("2026-5-1", "not understood"), ("yesterday 7", "not understood"),
    ("yesterday tomorrow", "not understood"), ("3 hours", "not understood"),
    ("some days ago", "not understood"), ("3 fortnights ago", "not understood"),
    ("99999 days ago", "not understood"), ("2 hours ago 18:00", "not understood"),
    ("2026-05-01x18:00", "not understood"), ("1:2:3:4", "not understood"),
    ("the", "not understood"), ("ago", "not understood"), ("ä ago", "not understood"),
    ("99999999d ago", "not understood"), ("99999999 d ago", "not understood"),
    ("99999999999h ago", "not understood"), ("10001years ago", "not understood"),
    ("10000years ago", "before 1900"), ("10000weeks ago", "before 1900"),
    ("2026-05-01 18:00+1é1", "no day"), ("2026-05-01 18:00+éé", "no day"),
    ("2026-05-01 18:00-é", "no day"), ("2026-05-01 18:00é+02", "no day"),
    ("2026-02-29", "no day"), ("2026-13-01", "no day"), ("2026-05-01 25:00", "no day"),
    ("today 13:75", "no day"), ("13 pm", "no day"), ("31 April 2026", "no day"),
    ("1850-01-01", "before 1900"), ("500 years ago", "before 1900"),
    ("2026-05-08", "future"), ("2026-05-07 14:31", "future"),
    ("2027-01-01T00:00:00Z", "future"),
];

#[test]
fn what_is_no_time_past_is_refused_in_one_sentence() {
    for (text, word) in REFUSED {
        let told = match parse_when(text, now(), &offset_at) {
            Ok(moment) => panic!("{text} is {moment}"),
            Err(error) => error.to_string(),
        };
        assert!(told.contains(word), "{text}: {told}");
        assert!(told.lines().count() == 1 && told.contains("such as"));
    }
}

#[test]
fn days_alone_are_whole_days_where_a_stretch_of_time_is_told() {
    let since = parse_since("2026-05-01", now(), &offset_at).unwrap();
    let until = parse_until("2026-05-01", now(), &offset_at).unwrap();
    assert_eq!(since.to_string(), "2026-05-01T00:00:00+02:00");
    assert_eq!(until.to_string(), "2026-05-01T23:59:59.999+02:00");
    assert_eq!(
        parse_until("yesterday 18:00", now(), &offset_at)
            .unwrap()
            .to_string(),
        "2026-05-05T18:00:00+02:00"
    );
}

#[test]
fn today_is_a_whole_day_where_a_stretch_of_time_is_told() {
    let told = |found: Result<Moment, WhenError>| found.unwrap().to_string();
    let since = parse_since("today", now(), &offset_at);
    let until = parse_until("Today", now(), &offset_at);
    assert_eq!(told(since), "2026-05-06T00:00:00+02:00");
    assert_eq!(told(until), "2026-05-06T23:59:59.999+02:00");
    let since = parse_since("today 7:30", now(), &offset_at);
    assert_eq!(told(since), "2026-05-06T07:30:00+02:00");
}

/// A day whose noon is still to come has not happened then.
#[test]
fn today_before_noon_is_now() {
    let morning: Moment = "2026-05-06T08:00:00+02:00".parse().unwrap();
    assert_eq!(parse_when("2026-05-06", morning, &offset_at), Ok(morning));
    assert_eq!(parse_when("today", morning, &offset_at), Ok(morning));
}
