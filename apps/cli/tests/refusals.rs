//! Input that cannot be used: exit code 2, nothing on standard output, one sentence on standard
//! error that names the field. What cannot be read ends with 1.

#![allow(clippy::unwrap_used)]

mod support;

use support::{Ran, own_folder, run_with};

/// How a question is put.
#[derive(Clone, Copy, Debug)]
enum Ask {
    /// As arguments.
    Words(&'static [&'static str]),
    /// A whole file for `mix`.
    Mix(&'static str),
    /// Fields of one part of a mixture: `{"parts":[{...}]}`.
    Part(&'static str),
    /// Fields of a custom material of which there is a kilogram.
    Custom(&'static str),
    /// Fields beside one part: `{"parts":[...], ...}`.
    Beside(&'static str),
    /// Fields of a garden inside a mixture.
    Garden(&'static str),
    /// A whole file for `balance`.
    Balance(&'static str),
    /// Fields beside what is in hand: `{"have":[...], ...}`.
    Have(&'static str),
}
use Ask::{Balance, Beside, Custom, Garden, Have, Mix, Part, Words};

fn ask(ask: Ask) -> Ran {
    const STRAW: &str = r#"{"material":"straw_wheat","amount":"1 kg"}"#;
    let (command, text) = match ask {
        Words(words) => return run_with(words, b""),
        Mix(text) => ("mix", text.to_owned()),
        Part(fields) => ("mix", format!(r#"{{"parts":[{{{fields}}}]}}"#)),
        Custom(fields) => (
            "mix",
            format!(r#"{{"parts":[{{"custom":{{{fields}}},"amount":"1 kg"}}]}}"#),
        ),
        Beside(fields) => ("mix", format!(r#"{{"parts":[{STRAW}],{fields}}}"#)),
        Garden(fields) => (
            "mix",
            format!(r#"{{"parts":[{STRAW}],"garden":{{{fields}}}}}"#),
        ),
        Balance(text) => ("balance", text.to_owned()),
        Have(fields) => ("balance", format!(r#"{{"have":[{STRAW}],{fields}}}"#)),
    };
    run_with(&[command, "--json", "--file", "-"], text.as_bytes())
}

/// Asserts that a question is refused in one sentence that has these words.
fn assert_refused(what: &str, ran: &Ran, code: i32, words: &[&str]) {
    assert_eq!(
        ran.code,
        code,
        "{what}: {}{}",
        ran.err,
        ran.out.chars().take(300).collect::<String>()
    );
    assert!(
        ran.out.is_empty(),
        "{what} wrote to standard output: {}",
        ran.out
    );
    assert!(
        ran.err.ends_with('\n') && ran.err.lines().count() == 1,
        "{what}: {}",
        ran.err
    );
    assert!(
        ran.err.starts_with("heapwright: ") && ran.err.len() > 30,
        "{what}: {}",
        ran.err
    );
    for word in words {
        assert!(
            ran.err.contains(word),
            "{what}: no \"{word}\" in: {}",
            ran.err
        );
    }
}

#[rustfmt::skip] // a table
const REFUSED: &[(Ask, &[&str])] = &[
    // Amounts and materials as people say them.
    (Words(&["mix", "1 kg unobtainium"]), &["PARTS", "unobtainium", "not known"]),
    (Words(&["mix", "2 bukets grass"]), &["PARTS", "bukets", "did you mean buckets"]),
    (Words(&["mix", "0 buckets grass"]), &["PARTS", "zero"]),
    (Words(&["mix", "--", "-2 kg grass"]), &["PARTS", "below zero"]),
    (Words(&["mix", "-2 kg grass"]), &["-2 kg grass", "above 0"]),
    (Words(&["mix", "--json", "-2 kg grass"]), &["-2 kg grass", "above 0"]),
    (Words(&["mix", "1 kg grass", "--water", "-1 l"]), &["--water", "below zero"]),
    (Words(&["balance", "1 kg grass", "--reach", "-2 kg straw"]), &["--reach", "below zero"]),
    (Words(&["balance", "1 kg grass", "--reach", ""]), &["--reach", "empty"]),
    (Words(&["mix", "NaN kg grass"]), &["PARTS", "finite"]),
    (Words(&["mix", "inf kg grass"]), &["PARTS", "finite"]),
    (Words(&["mix", "1e999 kg grass"]), &["PARTS", "finite"]),
    (Words(&["mix", "1000000 tonnes grass"]), &["PARTS", "more than a garden holds"]),
    (Words(&["mix", "grass"]), &["PARTS", "no number"]),
    (Words(&["mix", ""]), &["PARTS", "empty"]),
    (Words(&["mix", "a few handfuls grass"]), &["PARTS", "a few"]),
    (Words(&["mix", "1,234 kg grass"]), &["PARTS", "two ways"]),
    (Words(&["mix", "2 buckets"]), &["PARTS", "of what"]),
    (Words(&["mix", "1 kg grass, 1 bucket"]), &["PARTS", "Part 2"]),
    (Words(&["mix", "1 kg grass", "--water", "lots"]), &["--water", "no number"]),
    (Words(&["mix", "1 kg grass", "--water=-1 l"]), &["--water", "below zero"]),
    (Words(&["mix", "1 kg grass", "--cn", "thirty"]), &["--cn", "two numbers"]),
    (Words(&["mix", "1 kg grass", "--cn", "40-25"]), &["--cn", "lower first"]),
    (Words(&["mix", "1 kg grass", "--cn", "NaN-40"]), &["--cn", "two numbers"]),
    (Words(&["mix", "1 kg grass", "--cn", "0-25"]), &["cn_ratio", "1 to 1000"]),
    (Words(&["mix", "1 kg grass", "--moisture", "50-160"]), &["moisture_pct", "0 to 100"]),
    (Words(&["mix", "1 kg grass", "--air", "50-60-70"]), &["--air", "two numbers"]),
    (Words(&["balance", "1 kg grass", "--reach", "unobtainium"]), &["--reach", "unobtainium"]),
    (Words(&["balance", "1 kg grass", "--reach", "0 buckets straw"]), &["--reach", "zero"]),
    (Words(&["balance", "nothing", "--reach", "straw"]), &["PARTS", "no number"]),
    (Words(&["materials", "qqqqzzzz"]), &["qqqqzzzz"]),
    (Words(&["schema", "nothing"]), &["nothing", "mix-question"]),
    // Files that are no question.
    (Mix(""), &["JSON"]),
    (Mix("  \n"), &["JSON"]),
    (Mix("{\"parts\": ["), &["parts"]),
    (Mix("null"), &["JSON"]),
    (Mix("3"), &["JSON"]),
    (Mix("\"2 buckets grass\""), &["JSON"]),
    (Mix(r#"{"parts":[{"material":"straw_wheat","amount":"1 kg"}]} x"#), &["trailing"]),
    (Mix(r#"{"parts":[{"material":"straw_wheat","amount":"1 kg"},]}"#), &["parts", "trailing comma"]),
    (Mix(r#"{"parts":[],"parts":[{"material":"straw_wheat","amount":"1 kg"}]}"#), &["duplicate", "parts"]),
    (Mix(r#"{"parts":"grass"}"#), &["parts"]),
    (Mix("{}"), &["parts", "missing"]),
    (Mix(r#"{"parts":[]}"#), &["parts", "empty"]),
    (Mix(r#"{"parts":[],"colour":"green"}"#), &["colour", "unknown field"]),
    (Balance("{}"), &["have", "empty"]),
    (Balance(r#"{"have":[],"reach":[]}"#), &["have", "empty"]),
    // Parts.
    (Part(r#""material":"straw_wheat""#), &["parts[0]", "amount"]),
    (Part(r#""amount":"1 kg""#), &["parts[0]", "material or custom"]),
    (Part(r#""material":"straw_wheat","custom":{"name":"x","moisture_pct":5},"amount":"1 kg""#), &["parts[0]", "not both"]),
    (Part(r#""material":"straw_wheat","material":"straw_oat","amount":"1 kg""#), &["parts[0]", "duplicate"]),
    (Part(r#""material":"straw_wheat","amount":"1 kg","colour":"green""#), &["parts[0].colour", "unknown field"]),
    (Part(r#""material":"straw_wheat","amount":3"#), &["parts[0].amount"]),
    (Part(r#""material":"unobtainium","amount":"1 kg""#), &["parts[0].material", "unobtainium"]),
    (Part(r#""material":"","amount":"1 kg""#), &["parts[0].material", "not known"]),
    (Part(r#""material":"straw_wheat","amount":"3 bukets""#), &["parts[0].amount", "did you mean buckets"]),
    (Part(r#""material":"straw_wheat","amount":"0 kg""#), &["parts[0].amount", "zero"]),
    (Part(r#""material":"straw_wheat","amount":"-1 kg""#), &["parts[0].amount", "below zero"]),
    (Part(r#""material":"straw_wheat","amount":"NaN kg""#), &["parts[0].amount", "finite"]),
    (Part(r#""material":"straw_wheat","amount":"infinite kg""#), &["parts[0].amount", "finite"]),
    (Part(r#""material":"straw_wheat","amount":"1e999 kg""#), &["parts[0].amount", "finite"]),
    (Part(r#""material":"straw_wheat","amount":"1e9 kg""#), &["parts[0].amount", "more than a garden holds"]),
    (Part(r#""material":"straw_wheat","amount":"3""#), &["parts[0].amount", "no unit"]),
    (Part(r#""material":"straw_wheat","amount":"""#), &["parts[0].amount", "empty"]),
    (Part(r#""material":"straw_wheat","amount":"2 kg straw""#), &["parts[0].amount", "goes on"]),
    (Part(r#""material":"straw_wheat","amount":"1/0 kg""#), &["parts[0].amount", "zero"]),
    (Part(r#""material":"straw_wheat","amount":"2-3 kg""#), &["parts[0].amount", "several numbers"]),
    (Part(r#""material":"straw_wheat","amount":"1 ton""#), &["parts[0].amount", "several units"]),
    (Part(r#""material":"straw_wheat","amount":"1 kg","condition":"purple""#), &["parts[0].condition", "purple", "use one of"]),
    (Part(r#""material":"straw_wheat","amount":"1 kg","moisture_pct":100"#), &["parts[0]", "moisture_pct", "99.9"]),
    (Part(r#""material":"straw_wheat","amount":"1 kg","moisture_pct":-1"#), &["parts[0]", "moisture_pct"]),
    (Part(r#""material":"straw_wheat","amount":"1 kg","moisture_pct":NaN"#), &["parts[0].moisture_pct"]),
    (Part(r#""material":"straw_wheat","amount":"1 kg","moisture_pct":1e999"#), &["parts[0].moisture_pct"]),
    (Part(r#""material":"straw_wheat","amount":"1 kg","moisture_pct":"50""#), &["parts[0].moisture_pct"]),
    (Part(r#""material":"straw_wheat","amount":"1 kg","nitrogen_pct_dry":60"#), &["parts[0]", "nitrogen_pct_dry"]),
    (Part(r#""material":"straw_wheat","amount":"1 kg","cn_ratio":0"#), &["parts[0]", "cn_ratio"]),
    (Part(r#""material":"straw_wheat","amount":"1 kg","bulk_density_kg_m3":0"#), &["parts[0]", "bulk_density_kg_m3"]),
    (Part(r#""material":"straw_wheat","amount":"1 kg","bulk_density_kg_m3":99999"#), &["parts[0]", "bulk_density_kg_m3"]),
    // Custom materials.
    (Custom(r#""name":"x","moisture_pct":100,"carbon_pct_dry":45,"cn_ratio":30"#), &["parts[0]", "moisture_pct"]),
    (Custom(r#""name":"x","moisture_pct":-3,"carbon_pct_dry":45,"cn_ratio":30"#), &["parts[0]", "moisture_pct"]),
    (Custom(r#""name":"x","moisture_pct":50,"carbon_pct_dry":45"#), &["parts[0]", "give two of", "cn_ratio"]),
    (Custom(r#""name":"x","moisture_pct":50"#), &["parts[0]", "give two of"]),
    (Custom(r#""name":"x","moisture_pct":50,"carbon_pct_dry":45,"nitrogen_pct_dry":1.5,"cn_ratio":20"#), &["parts[0]", "cn_ratio 20", "30.0"]),
    (Custom(r#""name":"x","moisture_pct":50,"carbon_pct_dry":45,"nitrogen_pct_dry":0,"cn_ratio":20"#), &["parts[0]", "nitrogen_pct_dry is 0"]),
    (Custom(r#""name":"x","moisture_pct":50,"carbon_pct_dry":45,"nitrogen_pct_dry":1.5,"ash_pct_dry":80"#), &["parts[0]", "ash_pct_dry", "126.5"]),
    (Custom(r#""name":"x","moisture_pct":50,"carbon_pct_dry":101,"cn_ratio":30"#), &["parts[0]", "carbon_pct_dry"]),
    (Custom(r#""name":"x","moisture_pct":50,"carbon_pct_dry":45,"cn_ratio":30,"phosphorus_pct_dry":101"#), &["parts[0]", "phosphorus_pct_dry"]),
    (Custom(r#""name":" ","moisture_pct":50,"carbon_pct_dry":45,"cn_ratio":30"#), &["parts[0]", "name"]),
    (Custom(r#""moisture_pct":50,"carbon_pct_dry":45,"cn_ratio":30"#), &["parts[0].custom", "name"]),
    (Custom(r#""name":"x","carbon_pct_dry":45,"cn_ratio":30"#), &["parts[0].custom", "moisture_pct"]),
    (Custom(r#""name":"x","moisture_pct":50,"ph":7"#), &["parts[0].custom.ph", "unknown field"]),
    (Part(r#""custom":{"name":"x","moisture_pct":50,"carbon_pct_dry":45,"cn_ratio":30},"amount":"1 bucket""#), &["parts[0]", "bulk_density_kg_m3", "volume"]),
    (Part(r#""custom":{"name":"x","moisture_pct":50,"carbon_pct_dry":45,"cn_ratio":30},"amount":"1 kg","condition":"wet""#), &["parts[0].condition", "custom"]),
    (Part(r#""custom":{"name":"x","moisture_pct":50,"carbon_pct_dry":45,"cn_ratio":30},"amount":"1 kg","cn_ratio":-2"#), &["parts[0]", "cn_ratio"]),
    // Target and water.
    (Beside(r#""target":{"cn_ratio":[40,25]}"#), &["target.cn_ratio", "lower first"]),
    (Beside(r#""target":{"cn_goal":50}"#), &["target.cn_goal", "within cn_ratio"]),
    (Beside(r#""target":{"moisture_pct":[50,120]}"#), &["target.moisture_pct", "0 to 100"]),
    (Beside(r#""target":{"free_air_space_pct":[-1,50]}"#), &["target.free_air_space_pct"]),
    (Beside(r#""target":{"cn_ratio":[25]}"#), &["target.cn_ratio"]),
    (Beside(r#""target":{"cn_ratio":[25,30,40]}"#), &["target.cn_ratio"]),
    (Beside(r#""water":"wet""#), &["water", "no number"]),
    (Beside(r#""water":"-2 l""#), &["water", "below zero"]),
    (Beside(r#""water":2"#), &["water"]),
    // The garden's own.
    (Garden(r#""measures":{"teapot":"1 l"}"#), &["garden.measures.teapot", "use one of"]),
    (Garden(r#""measures":{"bucket":"1 kg"}"#), &["garden.measures.bucket", "volume"]),
    (Garden(r#""measures":{"bucket":"big"}"#), &["garden.measures.bucket", "no number"]),
    (Garden(r#""materials":[{"id":"A b","name":"x","like":"straw_wheat"}]"#), &["garden.materials[0].id"]),
    (Garden(r#""materials":[{"id":"a","name":"","like":"straw_wheat"}]"#), &["garden.materials[0].name"]),
    (Garden(r#""materials":[{"id":"a","name":"x","like":"unobtainium"}]"#), &["garden.materials[0].like"]),
    (Garden(r#""materials":[{"id":"a","name":"x","like":"straw_wheat"},{"id":"a","name":"y","like":"straw_oat"}]"#), &["garden.materials[1].id", "twice"]),
    (Garden(r#""materials":[{"id":"a","name":"x","like":"straw_wheat","moisture_pct":[50,40,60]}]"#), &["garden.materials[0].moisture_pct", "in that order"]),
    (Garden(r#""materials":[{"id":"a","name":"x","like":"straw_wheat","moisture_pct":100}]"#), &["garden.materials[0].moisture_pct"]),
    (Garden(r#""materials":[{"id":"a","name":"x","like":"straw_wheat","nitrogen_pct_dry":-1}]"#), &["garden.materials[0].nitrogen_pct_dry"]),
    (Garden(r#""measurements":[{"material":"straw_wheat"}]"#), &["garden.measurements[0]", "laboratory"]),
    (Garden(r#""measurements":[{"material":"straw_wheat","dried_sample":{"wet":"10 g","dry":"20 g"}}]"#), &["garden.measurements[0]", "cannot be"]),
    (Garden(r#""measurements":[{"material":"straw_wheat","dried_sample":{"wet":"10 l","dry":"20 g"}}]"#), &["garden.measurements[0].dried_sample.wet", "mass"]),
    (Garden(r#""measurements":[{"material":"straw_wheat","weighed_measure":{"measure":"1 bucket","full":"1 kg","empty":"2 kg"}}]"#), &["garden.measurements[0]", "cannot be"]),
    (Garden(r#""measurements":[{"material":"straw_wheat","weighed_measure":{"measure":"1 kg","full":"1 kg"}}]"#), &["garden.measurements[0].weighed_measure.measure"]),
    (Garden(r#""measurements":[{"material":"straw_wheat","laboratory":{"moisture_pct":100}}]"#), &["garden.measurements[0]"]),
    (Garden(r#""stores":[{"material":"straw_wheat","scoop":"1 bukket"}]"#), &["garden.stores[0].scoop", "bucket"]),
    (Garden(r#""stores":[{"material":"straw_wheat","scoop":"1 bucket","condition":"purple"}]"#), &["garden.stores[0].condition"]),
    // What is in reach.
    (Have(r#""reach":[{}]"#), &["reach[0]", "material or custom"]),
    (Have(r#""reach":[{"material":"straw_wheat","effort":0}]"#), &["reach[0].effort", "above 0"]),
    (Have(r#""reach":[{"material":"straw_wheat","effort":-1}]"#), &["reach[0].effort"]),
    (Have(r#""reach":[{"material":"straw_wheat","max":"0 kg"}]"#), &["reach[0].max", "zero"]),
    (Have(r#""reach":[{"material":"straw_wheat","step":"-1 kg"}]"#), &["reach[0].step", "below zero"]),
    (Have(r#""reach":[{"custom":{"name":"x","moisture_pct":5,"carbon_pct_dry":45,"cn_ratio":100},"step":"1 bucket"}]"#), &["reach[0]", "bulk_density_kg_m3"]),
    (Have(r#""reach":[{"custom":{"name":"x","moisture_pct":5,"carbon_pct_dry":45,"cn_ratio":100},"max":"1 bucket"}]"#), &["reach[0]", "bulk_density_kg_m3"]),
    (Have(r#""objective":"cheapest""#), &["objective", "least_mass"]),
    (Have(r#""alternatives":"no""#), &["alternatives"]),
    (Have(r#""water":{"step":"0 l"}"#), &["water.step", "zero"]),
    (Have(r#""water":{"max":"much"}"#), &["water.max"]),
    (Have(r#""water":"yes""#), &["water"]),
    (Have(r#""water":{"most":"2 l"}"#), &["water"]),
];

#[test]
fn refused_in_one_sentence_that_names_the_field() {
    assert!(REFUSED.len() >= 60);
    for (question, words) in REFUSED {
        assert_refused(&format!("{question:?}"), &ask(*question), 2, words);
    }
}

#[test]
fn refused_when_too_large_too_deep_or_too_many() {
    let mix = ["mix", "--json", "--file", "-"];
    let spaces = " ".repeat(2 << 20);
    assert_refused(
        "2 MiB of spaces",
        &run_with(&mix, spaces.as_bytes()),
        2,
        &["1048576"],
    );
    let text = format!(r#"{{"parts":[],"x":"{}"}}"#, "y".repeat(2 << 20));
    assert_refused(
        "2 MiB of text",
        &run_with(&mix, text.as_bytes()),
        2,
        &["1048576"],
    );
    for (what, text) in [
        ("lists", "[".repeat(200_000)),
        ("objects", r#"{"parts":"#.repeat(90_000)),
        (
            "lists for a figure",
            format!(
                r#"{{"parts":[],"garden":{{"materials":[{{"id":"a","name":"a","like":"straw_wheat","moisture_pct":{}"#,
                "[".repeat(200_000)
            ),
        ),
    ] {
        assert_refused(
            &format!("deep {what}"),
            &run_with(&mix, text.as_bytes()),
            2,
            &[],
        );
    }
    let deep_water = format!(r#"{{"have":[],"water":{}"#, "[".repeat(200_000));
    assert_refused(
        "deep water",
        &run_with(&["balance", "--file", "-"], deep_water.as_bytes()),
        2,
        &["water"],
    );
    let parts = vec![r#"{"material":"straw_wheat","amount":"1 kg"}"#; 201].join(",");
    assert_refused(
        "201 parts",
        &run_with(&mix, format!(r#"{{"parts":[{parts}]}}"#).as_bytes()),
        2,
        &["parts", "200"],
    );
    let reach = vec![r#"{"material":"straw_wheat"}"#; 201].join(",");
    let text =
        format!(r#"{{"have":[{{"material":"straw_wheat","amount":"1 kg"}}],"reach":[{reach}]}}"#);
    assert_refused(
        "201 in reach",
        &run_with(&["balance", "--file", "-"], text.as_bytes()),
        2,
        &["reach", "200"],
    );
}

#[test]
fn refused_when_it_is_not_text() {
    assert_refused(
        "not UTF-8",
        &run_with(&["mix", "--file", "-"], &[0xff, 0xfe, b'{', 0]),
        2,
        &["UTF-8"],
    );
    let folder = own_folder("not-text");
    let path = folder.join("latin1.json");
    std::fs::write(
        &path,
        b"{\"parts\":[{\"material\":\"caf\xe9\",\"amount\":\"1 kg\"}]}",
    )
    .unwrap();
    let path = path.display().to_string();
    assert_refused(
        "a file in Latin-1",
        &run_with(&["mix", "--file", &path], b""),
        2,
        &["latin1.json", "UTF-8"],
    );
}

#[test]
fn what_cannot_be_read_is_a_failure() {
    let folder = own_folder("unreadable").display().to_string();
    let missing = format!("{folder}/missing.json");
    for arguments in [
        &["mix", "--file", missing.as_str()][..],
        &["balance", "--file", missing.as_str()],
        &["mix", "1 kg grass", "--garden-file", missing.as_str()],
        &["mix", "--file", folder.as_str()],
    ] {
        let ran = run_with(arguments, b"");
        assert_refused(
            &format!("{arguments:?}"),
            &ran,
            1,
            &[&folder, "cannot be read"],
        );
    }
}

/// What cannot be must be refused, however well it is spelt.
#[rustfmt::skip] // a table
const IMPOSSIBLE: &[(Ask, &str)] = &[
    // Stuff without weight.
    (Garden(r#""materials":[{"id":"a","name":"x","like":"straw_wheat","bulk_density_kg_m3":0}]"#), "bulk_density_kg_m3"),
    (Garden(r#""materials":[{"id":"a","name":"x","like":"straw_wheat","bulk_density_kg_m3":[0,0,100]}]"#), "bulk_density_kg_m3"),
    // A C:N of 0.
    (Garden(r#""materials":[{"id":"a","name":"x","like":"straw_wheat","cn_ratio_measured":0}]"#), "cn_ratio_measured"),
    // More carbon, or nitrogen, than dry matter.
    (Garden(r#""materials":[{"id":"a","name":"x","like":"straw_wheat","nitrogen_pct_dry":50,"cn_ratio_measured":10000}]"#), "cn_ratio_measured"),
    (Part(r#""material":"straw_wheat","amount":"1 kg","nitrogen_pct_dry":50,"cn_ratio":10000"#), "cn_ratio"),
    (Part(r#""material":"straw_wheat","amount":"1 kg","cn_ratio":0.1"#), "cn_ratio"),
    // A C:N of 20 without carbon.
    (Custom(r#""name":"x","moisture_pct":50,"carbon_pct_dry":0,"cn_ratio":20"#), "carbon_pct_dry"),
    // More minerals than fits beside carbon.
    (Custom(r#""name":"x","moisture_pct":50,"carbon_pct_dry":45,"cn_ratio":30,"potassium_pct_dry":60"#), "potassium_pct_dry"),
    // Dry and wet at once; the same twice.
    (Part(r#""material":"straw_wheat","amount":"1 bucket","condition":"dry, wet""#), "condition"),
    // The same vessel twice.
    (Garden(r#""measures":{"bucket":"12 l","bucket":"1 l"}"#), "bucket"),
    // A list for an object: no schema has that.
    (Mix(r#"[[["straw_wheat",null,"1 kg",null,null,null,null,null]],null,null,null]"#), ""),
    (Beside(r#""target":[null,null,null,null]"#), "target"),
    // Less than can be weighed.
    (Part(r#""material":"straw_wheat","amount":"1e-300 kg""#), "amount"),
];

#[test]
fn refused_when_it_cannot_be() {
    let taken: Vec<String> = IMPOSSIBLE
        .iter()
        .filter_map(|(question, word)| {
            let ran = ask(*question);
            let refused = ran.code == 2 && ran.out.is_empty() && ran.err.contains(word);
            (!refused).then(|| format!("{question:?}: exit code {}, {}", ran.code, ran.err))
        })
        .collect();
    assert!(
        taken.is_empty(),
        "{} of {} are taken:\n{}",
        taken.len(),
        IMPOSSIBLE.len(),
        taken.join("\n")
    );
}

/// Nothing that goes on a heap is denser than rock: what is stated above that is refused, and so
/// must be what follows from other figures.
#[test]
fn no_mixture_is_denser_than_rock() {
    const ROCK_KG_M3: f64 = 3000.0;
    let packed = vec!["packed"; 20].join(",");
    for (what, fields) in [
        (
            "wetter than its pores hold",
            r#""moisture_pct":99.9"#.to_owned(),
        ),
        (
            "packed twenty times over",
            format!(r#""condition":"{packed}""#),
        ),
    ] {
        let text = format!(r#"{{"parts":[{{"material":"straw_wheat","amount":"1 l",{fields}}}]}}"#);
        let ran = run_with(&["mix", "--json", "--file", "-"], text.as_bytes());
        if ran.code == 0 {
            let answer: serde_json::Value = serde_json::from_str(&ran.out).unwrap();
            let density = answer["bulk_density_kg_m3"]["value"].as_f64().unwrap();
            assert!(density <= ROCK_KG_M3, "{what}: {density} kg/m3");
        }
    }
}

/// A keeper knows no Rust: no message speaks of structs, enums and variants.
#[test]
fn messages_are_in_plain_words() {
    let faults: Vec<String> = REFUSED
        .iter()
        .map(|(question, _)| (question, ask(*question).err))
        .filter(|(_, err)| {
            ["struct", "enum", "variant", "f64", "EOF"]
                .iter()
                .any(|word| err.contains(word))
        })
        .map(|(question, err)| format!("{question:?}: {}", err.trim_end()))
        .collect();
    assert!(
        faults.is_empty(),
        "{} messages:\n{}",
        faults.len(),
        faults.join("\n")
    );
}

/// A message is read on a screen 80 wide or on a phone.
#[test]
fn messages_stay_short() {
    let deep = run_with(
        &["mix", "--file", "-"],
        r#"{"parts":[{"custom":"#.repeat(3).as_bytes(),
    );
    let water = format!(r#"{{"have":[],"water":{}"#, "[".repeat(1000));
    let long = run_with(&["balance", "--file", "-"], water.as_bytes());
    for ran in [deep, long] {
        assert!(
            ran.err.chars().count() < 400,
            "{} signs: {}",
            ran.err.chars().count(),
            ran.err
        );
    }
}
