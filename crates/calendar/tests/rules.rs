//! The file of reminders against the rules of its format, over invented gardens; and as another
//! program reads it, recorded in `oracles/calendar`.

#![allow(clippy::unwrap_used)]

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use heapwright_answers::today::{Because, DatedNeed, Kind, On, TodayAnswer, today};
use heapwright_calendar::{Telling, calendar, reminders};
use heapwright_catalogue::{Catalogue, GERMAN};
use heapwright_garden::Garden;
use heapwright_invented::{Plan, lines};
use heapwright_journal::content::{GardenDescribed, HeapStarted};
use heapwright_journal::{Content, DeviceId, Digest, Event, EventId, Line, Moment};
use heapwright_quantity::UnitSystem;
use heapwright_state::{Now, Recorder, State};
use heapwright_terms::MaterialId;
use heapwright_texts::{Locale, Translation};
use heapwright_wording::Spoken;
use jiff::civil::date;

fn state_of(plan: &Plan) -> State {
    State::fold(lines(plan).map(|line| {
        let (line, event) = Line::read(&line.unwrap()).unwrap();
        (line.digest(), event)
    }))
}

fn file_of(state: &State, now: Moment) -> (TodayAnswer, String) {
    let garden = Garden::from_state(Catalogue::built_in(), state, now);
    let answer = today(Catalogue::built_in(), &garden, state, now);
    let file = written(state, &garden, &answer, Locale::default());
    (answer, file)
}

fn written(state: &State, garden: &Garden, answer: &TodayAnswer, locale: Locale) -> String {
    written_by(Catalogue::built_in(), state, garden, answer, locale)
}

fn written_by(
    catalogue: &Catalogue,
    state: &State,
    garden: &Garden,
    answer: &TodayAnswer,
    locale: Locale,
) -> String {
    let telling = Telling {
        catalogue,
        garden,
        state,
        locale,
    };
    calendar(&telling, answer)
}

fn demo() -> (State, Moment) {
    let state = state_of(&Plan::demo(date(2026, 5, 1)));
    (state, "2026-05-01T18:00:00+02:00".parse().unwrap())
}

/// Name and value of each line of each event, unfolded; the alarm's lines have `VALARM.` before.
fn events(file: &str) -> Vec<BTreeMap<String, String>> {
    let whole = file.replace("\r\n ", "");
    let mut events = Vec::new();
    let mut inside: Option<BTreeMap<String, String>> = None;
    let mut alarm = "";
    for line in whole.split_terminator("\r\n") {
        let (name, value) = line.split_once(':').unwrap();
        match (name, value) {
            ("BEGIN", "VEVENT") => inside = Some(BTreeMap::new()),
            ("END", "VEVENT") => events.extend(inside.take()),
            ("BEGIN", "VALARM") => alarm = "VALARM.",
            ("END", "VALARM") => alarm = "",
            _ => {
                if let Some(event) = &mut inside {
                    let before = event.insert(format!("{alarm}{name}"), value.to_owned());
                    assert!(before.is_none(), "{name} stands twice");
                }
            }
        }
    }
    events
}

#[test]
fn every_line_and_every_event_is_as_the_standard_asks() {
    for seed in 1..6 {
        let plan = Plan {
            seed,
            ..Plan::demo(date(2026, 5, 1))
        };
        let now: Moment = "2026-05-01T18:00:00+02:00".parse().unwrap();
        let (answer, file) = file_of(&state_of(&plan), now);
        assert!(file.starts_with("BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:"));
        assert!(file.ends_with("END:VCALENDAR\r\n"));
        assert!(!file.replace("\r\n", "").contains(['\r', '\n']));
        for line in file.split_terminator("\r\n") {
            assert!(line.len() <= 75, "{line}");
            assert!(!line.chars().any(|letter| letter.is_control()), "{line}");
        }
        for needed in [
            "METHOD:PUBLISH\r\n",
            "REFRESH-INTERVAL;VALUE=DURATION:PT1H\r\n",
        ] {
            assert_eq!(file.matches(needed).count(), 1, "{needed}");
        }
        let events = events(&file);
        assert_eq!(events.len(), answer.dates.len());
        assert!(!events.is_empty());
        let names: BTreeSet<&String> = events.iter().map(|event| &event["UID"]).collect();
        assert_eq!(names.len(), events.len(), "each has a name of its own");
        for event in &events {
            assert_eq!(event["DTSTAMP"], "20260501T160000Z");
            assert!(event["SEQUENCE"].parse::<i32>().is_ok());
            assert!(!event["SUMMARY"].is_empty() && !event["DESCRIPTION"].is_empty());
            assert_eq!(event["VALARM.ACTION"], "DISPLAY");
            assert_eq!(event["VALARM.DESCRIPTION"], event["SUMMARY"]);
            assert!(event["VALARM.TRIGGER"].starts_with("PT"));
            let is_day = event.contains_key("DTSTART;VALUE=DATE");
            let is_time = event.contains_key("DTSTART");
            assert!(is_day != is_time, "{event:?}");
            if is_day {
                // The end of a day is the day after, which is no part of it.
                assert!(event["DTEND;VALUE=DATE"] > event["DTSTART;VALUE=DATE"]);
            } else {
                assert!(event["DTSTART"].ends_with('Z') && event["DURATION"].starts_with("PT"));
            }
        }
    }
}

#[test]
fn the_same_need_keeps_its_name_and_moves() {
    let (state, now) = demo();
    let later: Moment = "2026-05-02T07:00:00+02:00".parse().unwrap();
    let (_, first) = file_of(&state, now);
    let (_, second) = file_of(&state, later);
    let names = |file: &str| -> BTreeSet<String> {
        events(file)
            .iter()
            .map(|event| event["UID"].clone())
            .collect()
    };
    let (first_names, second_names) = (names(&first), names(&second));
    assert!(first_names.intersection(&second_names).count() > 2);
    let sequence = |file: &str| events(file)[0]["SEQUENCE"].parse::<i64>().unwrap();
    assert_eq!(sequence(&second) - sequence(&first), 13 * 60);
    // The same question has the same file.
    assert_eq!(first, file_of(&state, now).1);
}

/// Whoever changes the language keeps each reminder: a calendar gives it another text.
#[test]
fn another_language_keeps_the_names_of_all_reminders() {
    let (state, now) = demo();
    let (answer, english) = file_of(&state, now);
    let spoken: &'static Spoken = Box::leak(Box::new(
        Spoken::read("de", Translation::GERMAN, GERMAN).unwrap(),
    ));
    let catalogue = spoken.catalogue();
    let garden = Garden::from_state(catalogue, &state, now);
    let german = written_by(catalogue, &state, &garden, &answer, spoken.locale());
    let (english, german) = (events(&english), events(&german));
    assert_eq!(english.len(), german.len());
    for (english, german) in english.iter().zip(&german) {
        for same in ["UID", "DTSTAMP", "SEQUENCE", "VALARM.TRIGGER"] {
            assert_eq!(english[same], german[same]);
        }
        for other in ["SUMMARY", "DESCRIPTION"] {
            assert_ne!(english[other], german[other]);
        }
        assert!(german["DESCRIPTION"].ends_with("Örtliche Regeln gehen vor."));
    }
}

/// A garden that is described after its stores were filled keeps its reminders: none is doubled.
#[test]
fn a_garden_that_is_described_later_keeps_the_names_of_its_reminders() {
    let (_, now) = demo();
    let all: Vec<(Digest, Event)> = lines(&Plan::demo(date(2026, 5, 1)))
        .map(|line| {
            let (line, event) = Line::read(&line.unwrap()).unwrap();
            (line.digest(), event)
        })
        .collect();
    let (described, others): (Vec<_>, Vec<_>) = all
        .into_iter()
        .partition(|(_, event)| matches!(event.content(), Some(Content::GardenDescribed(_))));
    assert!(!described.is_empty());
    let mut state = State::fold(others);
    let names = |state: &State| -> Vec<String> {
        let (answer, file) = file_of(state, now);
        // Without stores it would prove nothing.
        assert!(answer.dates.iter().any(|date| date.material.is_some()));
        events(&file)
            .iter()
            .map(|event| event["UID"].clone())
            .collect()
    };
    let before = names(&state);
    assert!(state.garden().set_up.is_none());
    for (digest, event) in described {
        state.take(digest, event);
    }
    assert!(state.garden().set_up.is_some());
    assert_eq!(names(&state), before);
}

/// Time zones and their changes of clocks: what is due at a time is due at that instant everywhere;
/// what is due on a day is due on that day of the keeper's calendar.
#[test]
fn changes_of_clocks_shift_nothing() {
    let (state, _) = demo();
    let heap = state.heaps().next().unwrap().id;
    let garden = Garden::default();
    // Clocks in Berlin go from +02:00 to +01:00 between these, on 25 October 2026 at 01:00 UTC.
    let cases = [
        ("2026-10-24T20:00:00+02:00", "20261024T180000Z"),
        ("2026-10-25T20:00:00+01:00", "20261025T190000Z"),
        ("2026-10-25T02:30:00+02:00", "20261025T003000Z"),
        ("2026-10-25T02:30:00+01:00", "20261025T013000Z"),
        ("2026-12-31T23:30:00-03:30", "20270101T030000Z"),
    ];
    for (at, expected) in cases {
        let at: Moment = at.parse().unwrap();
        let answer = answer_of(at, heap, On::Time(at));
        let events = events(&written(&state, &garden, &answer, Locale::default()));
        assert_eq!(events[0]["DTSTART"], expected);
        let day = date(2026, 10, 25);
        let answer = answer_of(at, heap, On::Day(day));
        let events = self::events(&written(&state, &garden, &answer, Locale::default()));
        assert_eq!(events[0]["DTSTART;VALUE=DATE"], "20261025");
        assert_eq!(events[0]["DTEND;VALUE=DATE"], "20261026");
    }
}

fn answer_of(now: Moment, heap: EventId, on: On) -> TodayAnswer {
    TodayAnswer {
        now,
        needs: Vec::new(),
        quiet: Vec::new(),
        dates: vec![DatedNeed {
            heap: Some(heap),
            kind: Kind::ReadHeat,
            material: None,
            on,
            because: vec![Because::NotLookedAt { last: None }],
            cautions: Vec::new(),
        }],
    }
}

/// A garden whose names make trouble in the format.
fn troubled() -> (State, Moment) {
    let now: Moment = "2026-10-24T18:00:00+02:00".parse().unwrap();
    let mut state = State::default();
    let names = [
        "Bin, left; the \"old\" one \\ behind",
        "Grüne Ecke am Bächlein, wo früher der große Nußbaum stand 🍂🍂🍂🍂🍂🍂",
        "堆肥箱一号在花园的角落里靠近老苹果树和水井旁边",
        "כלי ראשון",
    ];
    let mut write = |content: Content, count: u8| {
        let mut recorder = Recorder::new(DeviceId(5), &state, now);
        let chance = Now {
            moment: now,
            random: [count; 10],
        };
        let (line, event) = recorder.record(&state, content, now, None, chance).unwrap();
        state.take(line.digest(), event);
    };
    write(
        GardenDescribed {
            name: Some("Höhe; \"an invented garden\", 2".to_owned()),
            place: None,
            units: None,
            invented: Some(true),
        }
        .into(),
        200,
    );
    for (count, name) in names.into_iter().enumerate() {
        let started = HeapStarted {
            name: name.to_owned(),
            enclosure: None,
            sun: None,
            filling: None,
        };
        write(started.into(), u8::try_from(count).unwrap());
    }
    (state, now)
}

fn troubled_file() -> String {
    let (state, now) = troubled();
    let heaps: Vec<EventId> = state.heaps().map(|heap| heap.id).collect();
    let mut answer = answer_of(now, heaps[0], On::Time(now));
    let kinds = [Kind::Turn, Kind::Water, Kind::Look];
    for (heap, kind) in heaps[1..].iter().zip(kinds) {
        let mut more = answer_of(now, *heap, On::Day(date(2026, 10, 25)));
        more.dates[0].kind = kind;
        answer.dates.append(&mut more.dates);
    }
    let mut store = answer_of(now, heaps[0], On::Day(date(2026, 12, 31)));
    store.dates[0].heap = None;
    store.dates[0].kind = Kind::Restock;
    store.dates[0].material = Some((MaterialId("straw_wheat".to_owned()), vec!["wet".to_owned()]));
    answer.dates.append(&mut store.dates);
    written(
        &state,
        &Garden::default(),
        &answer,
        Locale::english(UnitSystem::UsCustomary),
    )
}

fn of_oracle(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../oracles/calendar")
        .join(name)
}

fn recorded_files() -> [(&'static str, String); 3] {
    let (state, now) = demo();
    [
        ("demo.ics", file_of(&state, now).1),
        ("troubled.ics", troubled_file()),
        ("empty.ics", file_of(&State::default(), now).1),
    ]
}

#[test]
#[ignore = "writes the files that oracles/calendar/make.py reads"]
fn write_files() {
    for (name, text) in recorded_files() {
        std::fs::write(of_oracle(name), text).unwrap();
    }
}

/// What another program read in the files is what they mean; and they are as they were then.
#[test]
fn another_program_reads_what_was_written() {
    let answers = std::fs::read_to_string(of_oracle("answers.json")).unwrap();
    let answers: serde_json::Value = serde_json::from_str(&answers).unwrap();
    for (name, text) in recorded_files() {
        let kept = std::fs::read_to_string(of_oracle(name)).unwrap();
        assert_eq!(
            kept, text,
            "{name} has changed: record it anew, see oracles/calendar"
        );
        let read = answers[name]["events"].as_array().unwrap();
        let ours = events(&text);
        assert_eq!(read.len(), ours.len(), "{name}");
        for (theirs, ours) in read.iter().zip(&ours) {
            assert_eq!(theirs["uid"], ours["UID"].as_str());
            let unescaped = |text: &str| {
                let mut back = String::new();
                let mut letters = text.chars();
                while let Some(letter) = letters.next() {
                    back.push(match letter {
                        '\\' => match letters.next().unwrap() {
                            'n' => '\n',
                            other => other,
                        },
                        other => other,
                    });
                }
                back
            };
            assert_eq!(theirs["summary"], unescaped(&ours["SUMMARY"]).as_str());
            assert_eq!(
                theirs["description"],
                unescaped(&ours["DESCRIPTION"]).as_str()
            );
            let start = ours.get("DTSTART").or(ours.get("DTSTART;VALUE=DATE"));
            assert_eq!(theirs["start"], start.unwrap().as_str());
            assert_eq!(theirs["alarms"], 1);
        }
        assert_eq!(
            answers[name]["faults"].as_array().unwrap().len(),
            0,
            "{name}"
        );
    }
    // Names as they were given came back through the other program.
    let read = answers["troubled.ics"]["events"].as_array().unwrap();
    let (state, _) = troubled();
    for (heap, event) in state.heaps().zip(read) {
        let summary = event["summary"].as_str().unwrap();
        assert!(summary.contains(heap.name().unwrap()), "{summary}");
    }
}

#[test]
fn nothing_is_told_from_the_moment_of_writing_in_either_language() {
    let german: &'static Translation = Box::leak(Box::new(
        Translation::read("de", Translation::GERMAN, "").unwrap(),
    ));
    let english = Locale::default();
    let (state, now) = demo();
    let garden = Garden::from_state(Catalogue::built_in(), &state, now);
    let answer = today(Catalogue::built_in(), &garden, &state, now);
    let looks = |told: &str| told.matches("April 2026").count();
    for (locale, relative) in [
        (english, [" ago", "yesterday", "just now"]),
        (
            english.in_language(Some(german)),
            ["vor ", "gestern", "gerade eben"],
        ),
    ] {
        let file = written(&state, &garden, &answer, locale).replace("\r\n ", "");
        let telling = Telling {
            catalogue: Catalogue::built_in(),
            garden: &garden,
            state: &state,
            locale,
        };
        let shown: Vec<String> = reminders(&telling, &answer)
            .into_iter()
            .map(|one| one.body)
            .collect();
        for told in [&file, &shown.join("\n")] {
            assert!(looks(told) >= 2, "days are named: {told}");
            for word in relative {
                assert!(!told.contains(word), "{word}: {told}");
            }
        }
    }
}
