//! The tables of what is typed and what it means (quality U15), and limits on any input.

#![allow(clippy::unwrap_used)]

use heapwright_quantity::{
    Amount, DecimalMark, Gallon, MeasureWords, Unit, Vocabulary, parse_amount, parse_parts,
};

fn vocabulary(decimal: DecimalMark, gallon: Gallon) -> Vocabulary {
    Vocabulary {
        measures: MeasureWords::new([
            ("handful", "handful"),
            ("mug", "mug"),
            ("caddy", "caddy"),
            ("caddies", "caddy"),
            ("bucket", "bucket"),
            ("barrow", "barrow"),
            ("wheelbarrow", "barrow"),
            ("wheelbarrow load", "barrow"),
            ("sack", "sack"),
            ("blue tub", "tub-2"),
        ]),
        gallon,
        decimal,
    }
}

fn unescaped(typed: &str) -> String {
    let mut text = typed.replace("\\t", "\t").replace("\\n", "\n");
    while let Some(start) = text.find("\\u{") {
        let end = start + text[start..].find('}').unwrap();
        let code = u32::from_str_radix(&text[start + 3..end], 16).unwrap();
        let sign = char::from_u32(code).unwrap().to_string();
        text.replace_range(start..=end, &sign);
    }
    text
}

/// The rows of a table as (line number, line), without remarks and blanks.
fn rows(table: &str) -> impl Iterator<Item = (usize, &str)> {
    let numbered = table
        .lines()
        .enumerate()
        .map(|(index, line)| (index + 1, line));
    numbered.filter(|(_, line)| !line.is_empty() && !line.starts_with('#'))
}

fn typed_in(field: &str) -> String {
    let inner = field
        .strip_prefix('«')
        .and_then(|field| field.strip_suffix('»'));
    unescaped(inner.unwrap())
}

fn short(amount: &Amount) -> String {
    let unit = match &amount.unit {
        Unit::Mass(unit) => unit.symbol(),
        Unit::Volume(unit) => unit.symbol(),
        Unit::Measure(id) => id,
    };
    format!("{} {unit}", amount.count)
}

#[test]
fn u15_amounts_are_read_as_the_table_says() {
    let mut wrong = Vec::new();
    let mut cases = 0;
    for (line, row) in rows(include_str!("amounts.txt")) {
        let fields: Vec<&str> = row.split(" | ").collect();
        let [decimal, gallon, typed, expected] = fields[..] else {
            panic!("line {line}: {row}");
        };
        let decimal = match decimal {
            "unknown" => DecimalMark::Unknown,
            "point" => DecimalMark::Point,
            "comma" => DecimalMark::Comma,
            other => panic!("line {line}: {other}"),
        };
        let gallon = match gallon {
            "us" => Gallon::Us,
            "imperial" => Gallon::Imperial,
            other => panic!("line {line}: {other}"),
        };
        let typed = typed_in(typed);
        let found = match parse_amount(&typed, &vocabulary(decimal, gallon)) {
            Ok(amount) => short(&amount),
            Err(error) => error.problem.name().to_owned(),
        };
        cases += 1;
        if found != expected {
            wrong.push(format!("line {line}: {typed:?} is {found}, not {expected}"));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    assert!(cases >= 200, "only {cases} cases");
}

#[test]
fn u15_lists_are_read_as_the_table_says() {
    let vocabulary = vocabulary(DecimalMark::Unknown, Gallon::Us);
    let mut wrong = Vec::new();
    for (line, row) in rows(include_str!("parts.txt")) {
        let (typed, expected) = row.split_once(" => ").unwrap();
        let typed = typed_in(typed);
        let found = match parse_parts(&typed, &vocabulary) {
            Ok(parts) => {
                let parts: Vec<String> = parts
                    .iter()
                    .map(|part| format!("{} ~ {}", short(&part.amount), part.name))
                    .collect();
                parts.join("; ")
            }
            Err(error) => format!("{} @ {}", error.problem.name(), error.index + 1),
        };
        if found != expected {
            wrong.push(format!("line {line}: {typed:?} is {found}, not {expected}"));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn u15_messages_are_one_sentence_that_quotes_what_was_typed() {
    let vocabulary = vocabulary(DecimalMark::Unknown, Gallon::Us);
    for (typed, message) in [
        (
            "3 bukets",
            "“3 bukets” has the unknown unit “bukets”: did you mean bucket?",
        ),
        ("3 kq", "“3 kq” has the unknown unit “kq”: did you mean kg?"),
        (
            "1,234 kg",
            "“1,234 kg” has “1,234”, which can be read in two ways: write 1234 or 1.2340.",
        ),
        (
            "",
            "The amount is empty: write an amount such as 2 buckets or 3.5 kg.",
        ),
        (
            "1 ton",
            "“1 ton” says “ton”, which means several units: \
             write tonne (1000 kg), short ton (2000 lb) or long ton (2240 lb).",
        ),
    ] {
        let error = parse_amount(typed, &vocabulary).unwrap_err();
        assert_eq!(error.to_string(), message);
    }
    let error = parse_parts(
        "1 mug tea, 2 bukets of a very long name that goes on and on",
        &vocabulary,
    )
    .unwrap_err();
    assert_eq!(
        error.to_string(),
        "Part 2, “2 bukets of a very long name that goes o…”, \
         has the unknown unit “bukets”: did you mean bucket?"
    );
    for (_, row) in rows(include_str!("amounts.txt")) {
        let typed = typed_in(row.split(" | ").nth(2).unwrap());
        if let Err(error) = parse_amount(&typed, &vocabulary) {
            let text = error.to_string();
            assert!(text.ends_with('.') || text.ends_with('?'), "{text}");
            assert!(text.chars().count() < 250 && !text.contains('\n'), "{text}");
        }
    }
}

#[test]
fn u15_lists_have_limits() {
    let vocabulary = vocabulary(DecimalMark::Unknown, Gallon::Us);
    let list = |parts| vec!["1 mug tea"; parts].join("\n");
    assert_eq!(parse_parts(&list(200), &vocabulary).unwrap().len(), 200);
    let name = |text: &str| parse_parts(text, &vocabulary).unwrap_err().problem.name();
    assert_eq!(name(&list(201)), "too-many-parts");
    assert_eq!(name(&"é".repeat(20_001)), "list-too-long");
    assert_eq!(name(&"é".repeat(20_000)), "no-number");
}

/// A second is a hundred times what each of these takes even in a debug build; a quadratic
/// reading of a mebibyte would take hours.
#[test]
fn u15_long_inputs_are_answered_at_once() {
    let vocabulary = vocabulary(DecimalMark::Unknown, Gallon::Us);
    let patterns = [
        "1",
        "1,",
        ", ",
        "and ",
        "1/",
        "1 000 ",
        "-",
        "a ",
        "half a ",
        "one hundred and ",
        "x",
        "İ",
        "\u{a0}",
        "½",
        "1 mug and ",
        "grass 1 mug ",
        "1e",
        "''1",
        "to 1 ",
        "\n",
        "u. s. ",
        "blue ",
        "\u{301}",
        "🪣",
        "1\u{2212}",
        "twenty-",
        "of a ",
        "2 x ",
        "(",
        ".1",
        "1.",
    ];
    for pattern in patterns {
        let huge = pattern.repeat((1 << 20) / pattern.len());
        let listed: String = huge.chars().take(20_000).collect();
        let begin = std::time::Instant::now();
        let _ = parse_amount(&huge, &vocabulary);
        let _ = parse_parts(&huge, &vocabulary);
        let _ = parse_parts(&listed, &vocabulary);
        let took = begin.elapsed();
        assert!(took.as_millis() < 1000, "{pattern:?} took {took:?}");
    }
}
