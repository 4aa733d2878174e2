//! `locales/*/cldr.ftl` is what ICU says of each language; `UPDATE_CLDR=1` writes it anew.
#![allow(clippy::unwrap_used)]

use std::fmt::Write as _;
use std::path::PathBuf;
use std::{env, fs};

use heapwright_quantity::UnitSystem;
use heapwright_texts::{Clock, Day, Locale, Translation};
use icu_datetime::input::{Date, Time};
use icu_datetime::{DateTimeFormatter, NoCalendarFormatter, fieldsets};
use icu_decimal::DecimalFormatter;
use icu_decimal::input::Decimal;
use icu_list::ListFormatter;
use icu_locale_core::Locale as Tag;

/// Folder, and the region whose habits it follows: days before months, as the trade's handbooks here do.
const LANGUAGES: [(&str, &str); 2] = [("en", "en-GB"), ("de", "de-DE")];

/// In Fluent, spaces that would not be seen are written as escapes.
fn escaped(text: &str) -> String {
    text.replace('\u{a0}', "{\"\\u00A0\"}")
        .replace('\u{202f}', "{\"\\u202F\"}")
}

fn months(fluent: &mut String, name: &str, pattern: impl Fn(u8) -> String) {
    let _ = writeln!(fluent, "{name} = {{ $month ->");
    for month in 1..12 {
        let _ = writeln!(fluent, "        [{month}] {}", pattern(month));
    }
    let _ = writeln!(fluent, "       *[other] {}\n    }}", pattern(12));
}

fn day_21(tag: &Tag, month: u8) -> (String, String, String) {
    let date = Date::try_new_iso(2031, month, 21).unwrap();
    let place = |text: String| {
        let text = text.replace("2031", "{ $year }").replace("21", "{ $day }");
        escaped(&text)
    };
    (
        place(
            DateTimeFormatter::try_new(tag.into(), fieldsets::YMD::long())
                .unwrap()
                .format(&date)
                .to_string(),
        ),
        place(
            DateTimeFormatter::try_new(tag.into(), fieldsets::MD::long())
                .unwrap()
                .format(&date)
                .to_string(),
        ),
        place(
            DateTimeFormatter::try_new(tag.into(), fieldsets::YM::long())
                .unwrap()
                .format(&date)
                .to_string(),
        ),
    )
}

/// A month by itself.
fn short_month(tag: &Tag, month: u8) -> String {
    let date = Date::try_new_iso(2031, month, 1).unwrap();
    DateTimeFormatter::try_new(tag.into(), fieldsets::M::medium())
        .unwrap()
        .format(&date)
        .to_string()
}

fn time(tag: &str, cycle: &str, hour: u8) -> String {
    let tag: Tag = format!("{tag}-u-hc-{cycle}").parse().unwrap();
    let formatter = NoCalendarFormatter::try_new((&tag).into(), fieldsets::T::hm()).unwrap();
    formatter
        .format(&Time::try_new(hour, 47, 0, 0).unwrap())
        .to_string()
}

fn fluent(tag: &str) -> String {
    let parsed: Tag = tag.parse().unwrap();
    let mut fluent = format!(
        "# Formats of {tag} from the Common Locale Data Repository by ICU; written by tests/cldr.rs.\n\n"
    );
    let tenths = DecimalFormatter::try_new((&parsed).into(), Default::default())
        .unwrap()
        .format(&"1.5".parse::<Decimal>().unwrap())
        .to_string();
    let _ = writeln!(fluent, "decimal-mark = {}", tenths.trim_matches(['1', '5']));
    months(&mut fluent, "date", |month| day_21(&parsed, month).0);
    months(&mut fluent, "day-of-month", |month| {
        day_21(&parsed, month).1
    });
    months(&mut fluent, "month-of-year", |month| {
        day_21(&parsed, month).2
    });
    months(&mut fluent, "short-month", |month| {
        escaped(&short_month(&parsed, month))
    });
    let place = |text: String, hour: &str| {
        escaped(
            &text
                .replacen(hour, "{ $hour }", 1)
                .replacen("47", "{ $minute }", 1),
        )
    };
    let _ = writeln!(
        fluent,
        "time-of-24-hours = {}",
        place(time(tag, "h23", 18), "18")
    );
    let _ = writeln!(
        fluent,
        "time-of-12-hours = {{ $half ->\n        [am] {}\n       *[pm] {}\n    }}",
        place(time(tag, "h12", 6), "6"),
        place(time(tag, "h12", 18), "6")
    );
    let list = ListFormatter::try_new_and((&parsed).into(), Default::default()).unwrap();
    let two = list.format(["<A>", "<B>"].iter()).to_string();
    let four = list.format(["<A>", "<B>", "<C>", "<D>"].iter()).to_string();
    let between = |first: &str, second: &str| {
        let (_, rest) = four.split_once(first).unwrap();
        rest.split_once(second).unwrap().0.to_owned()
    };
    assert_eq!(
        between("<A>", "<B>"),
        between("<B>", "<C>"),
        "a list begins as it goes on"
    );
    let _ = writeln!(
        fluent,
        "list-pair = {}",
        escaped(
            &two.replace("<A>", "{ $first }")
                .replace("<B>", "{ $second }")
        )
    );
    let _ = writeln!(
        fluent,
        "list-middle = {{ $first }}{}{{ $second }}",
        escaped(&between("<B>", "<C>"))
    );
    let _ = writeln!(
        fluent,
        "list-end = {{ $first }}{}{{ $second }}",
        escaped(&between("<C>", "<D>"))
    );
    fluent
}

#[test]
fn formats_are_those_of_icu() {
    for (folder, tag) in LANGUAGES {
        let path =
            PathBuf::from(env!("CARGO_MANIFEST_DIR")).join(format!("locales/{folder}/cldr.ftl"));
        let expected = fluent(tag);
        if env::var_os("UPDATE_CLDR").is_some() {
            fs::write(&path, &expected).unwrap();
        }
        assert_eq!(
            fs::read_to_string(&path).unwrap(),
            expected,
            "{folder}: run with UPDATE_CLDR=1"
        );
    }
}

fn locales() -> [(Locale, &'static str); 2] {
    let german: &'static Translation = Box::leak(Box::new(
        Translation::read("de", Translation::GERMAN, "").unwrap(),
    ));
    let english = Locale::english(UnitSystem::Metric);
    [
        (english, "en-GB"),
        (english.in_language(Some(german)), "de-DE"),
    ]
}

#[test]
fn dates_times_and_lists_are_said_as_icu_says_them() {
    for (locale, tag) in locales() {
        let parsed: Tag = tag.parse().unwrap();
        let date = DateTimeFormatter::try_new((&parsed).into(), fieldsets::YMD::long()).unwrap();
        for (year, month, day) in [
            (2026, 2, 28),
            (2028, 2, 29),
            (1999, 12, 31),
            (2031, 5, 1),
            (2021, 11, 21),
        ] {
            let said = locale.date(Day { year, month, day });
            assert_eq!(
                said,
                date.format(&Date::try_new_iso(year, month, day).unwrap())
                    .to_string()
            );
        }
        for month in 1..=12 {
            assert_eq!(locale.short_month(month), short_month(&parsed, month));
        }
        for hour in 0..24 {
            assert_eq!(
                locale.by_clock(Clock::Hours24).time(hour, 47),
                time(tag, "h23", hour)
            );
            assert_eq!(
                locale.by_clock(Clock::Hours12).time(hour, 47),
                time(tag, "h12", hour)
            );
        }
        let list = ListFormatter::try_new_and((&parsed).into(), Default::default()).unwrap();
        let items = ["a", "b", "c", "d", "e"];
        for length in 0..=items.len() {
            assert_eq!(
                locale.list(&items[..length]),
                list.format(items[..length].iter()).to_string()
            );
        }
    }
}

#[test]
fn decimals_are_written_as_icu_writes_them() {
    for (locale, tag) in locales() {
        let parsed: Tag = tag.parse().unwrap();
        // Thousands are not grouped, as nowhere in the page.
        let mut options = icu_decimal::options::DecimalFormatterOptions::default();
        options.grouping_strategy = Some(icu_decimal::options::GroupingStrategy::Never);
        let decimal = DecimalFormatter::try_new((&parsed).into(), options).unwrap();
        for text in ["0", "0.5", "1.25", "12000", "1234567.891"] {
            let number: f64 = text.parse().unwrap();
            assert_eq!(
                locale.decimals(number, 0, 3),
                decimal
                    .format(&text.parse::<Decimal>().unwrap())
                    .to_string()
            );
        }
        assert_eq!(
            locale
                .volume(0.0025)
                .replace(locale.decimals(2.5, 1, 1).as_str(), "x"),
            "x\u{a0}L"
        );
    }
}
