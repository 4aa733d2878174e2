//! `beds` and `convert`: from a journal, from a file, as text, JSON and paper; and what is refused.

#![allow(clippy::unwrap_used)]

mod support;

use std::fs;

use serde_json::{Value, json};
use support::{Kept, answer, of_repository, run_with};

fn schema(name: &str) -> jsonschema::Validator {
    let path = of_repository(&format!("crates/wire/schemas/{name}.json"));
    let schema: Value = serde_json::from_str(&fs::read_to_string(path).unwrap()).unwrap();
    jsonschema::validator_for(&schema).unwrap()
}

fn valid(name: &str, value: &Value) {
    let faults: Vec<String> = schema(name)
        .iter_errors(value)
        .map(|fault| format!("{}: {fault}", fault.instance_path()))
        .collect();
    assert!(faults.is_empty(), "{name}:\n{}", faults.join("\n"));
}

fn as_json(text: &str) -> Value {
    serde_json::from_str(text).unwrap()
}

fn bed<'a>(plan: &'a Value, name: &str) -> &'a Value {
    let beds = plan["beds"].as_array().unwrap();
    beds.iter().find(|bed| bed["name"] == name).unwrap()
}

fn example(name: &str) -> String {
    of_repository(&format!("crates/wire/examples/{name}.json"))
        .display()
        .to_string()
}

#[test]
fn examples_of_beds_are_answered() {
    for name in ["beds-three", "beds-raw-and-immature"] {
        let path = example(name);
        valid(
            "beds-question",
            &as_json(&fs::read_to_string(&path).unwrap()),
        );
        let plan = as_json(&answer(&["beds", "plan", "--json", "--file", &path]));
        valid("beds-answer", &plan);
        let given: f64 = plan["beds"]
            .as_array()
            .unwrap()
            .iter()
            .map(|bed| bed["volume_l"].as_f64().unwrap())
            .sum();
        let there = plan["available_l"].as_f64().unwrap();
        let left = plan["left_l"].as_f64().unwrap();
        assert!((given + left - there).abs() <= 1e-9 * there, "{name}");
        for bed in plan["beds"].as_array().unwrap() {
            let depth = bed["depth_mm"].as_f64().unwrap();
            for limit in bed["limits"].as_array().unwrap() {
                if let Some(most) = limit["depth_mm"].as_f64() {
                    assert!(depth <= most + 1e-9, "{name}: {bed}");
                }
            }
        }
    }
}

#[test]
fn raw_and_immature_compost_is_kept_from_where_it_may_not_go() {
    let path = example("beds-raw-and-immature");
    let plan = as_json(&answer(&["beds", "plan", "--json", "--file", &path]));
    assert_eq!(bed(&plan, "Strawberries")["binding"], "waiting time");
    assert_eq!(bed(&plan, "Strawberries")["depth_mm"], 0.0);
    // Beans hang clear of the soil: 90 days will do.
    assert!(bed(&plan, "Beans")["depth_mm"].as_f64().unwrap() > 0.0);
    assert_eq!(bed(&plan, "Beans")["wait_days"], 90.0);
    assert_eq!(bed(&plan, "Seedbed")["binding"], "immature compost");
    assert_eq!(bed(&plan, "Blueberries")["binding"], "acid soil");
    assert_eq!(bed(&plan, "Border")["wait_days"], Value::Null);
    let text = answer(&["beds", "plan", "--file", &path]);
    assert!(
        text.contains("leaf mould") && text.contains("120 days"),
        "{text}"
    );
    assert!(!text.to_lowercase().contains("safe"), "{text}");
}

/// A garden with a heap that was fed, tested and emptied, and beds.
fn garden(name: &str) -> Kept {
    let mut kept = Kept::new(name);
    kept.answer(&["heap", "new", "Bin"]);
    kept.answer(&[
        "feed",
        "6 buckets vegetable scraps, 10 buckets shredded leaves",
    ]);
    kept.answer(&[
        "bed",
        "new",
        "Long bed",
        "6 m x 1.2 m",
        "--crop",
        "potatoes",
    ]);
    kept.answer(&["bed", "new", "Salads", "4 m2", "--crop", "lettuce"]);
    kept.answer(&[
        "bed",
        "new",
        "Odd",
        "3 m2",
        "--crop",
        "triffids",
        "--feeding",
        "heavy",
        "--soil-phosphorus",
        "90",
    ]);
    kept.now = "2026-09-06T14:30:00+02:00".to_owned();
    kept
}

#[test]
fn a_crop_without_figures_is_written_down_and_told() {
    let kept = Kept::new("crop-without-figures");
    let told = |name: &str, more: &[&str]| {
        let mut arguments = vec!["bed", "new", name, "4 m2"];
        arguments.extend(more);
        let text = kept.answer(&arguments);
        text.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    let slip = told("Tomatoes", &["--crop", "tomatos"]);
    assert!(
        slip.contains("no figures for the crop “tomatos”")
            && slip.contains("did you mean tomatoes?"),
        "{slip}"
    );
    let odd = told("Odd", &["--crop", "triffids"]);
    assert!(
        odd.contains("no figures for the crop “triffids”") && !odd.contains("did you mean"),
        "{odd}"
    );
    let said = told("Said", &["--crop", "triffids", "--feeding", "heavy"]);
    let known = told("Known", &["--crop", "beans"]);
    assert!(!said.contains("no figures") && !known.contains("no figures"));
    let list = kept.answer(&["bed", "list"]);
    assert!(
        list.contains("tomatos") && list.contains("triffids"),
        "{list}"
    );
}

#[test]
fn a_plan_comes_from_the_journal() {
    let kept = garden("plan");
    let guessed = as_json(&kept.answer(&["beds", "plan", "--from", "Bin", "--json"]));
    valid("beds-answer", &guessed);
    let notices = guessed["notices"].to_string();
    assert!(
        notices.contains("estimated") && notices.contains("never analysed"),
        "{notices}"
    );
    assert_eq!(bed(&guessed, "Odd")["feeding"], "heavy");

    kept.answer(&["harvest", "Bin", "200 l", "--share", "all"]);
    kept.answer(&[
        "test",
        "Bin",
        "--nitrogen",
        "2",
        "--phosphorus",
        "0.5",
        "--moisture",
        "50",
        "--cn",
        "12",
    ]);
    kept.answer(&["spread", "Salads", "20 l", "--heap", "Bin"]);
    let plan = as_json(&kept.answer(&["beds", "plan", "--from", "Bin", "--json"]));
    // What was taken out, less what was spread.
    assert!((plan["available_l"].as_f64().unwrap() - 180.0).abs() < 1e-9);
    assert!(!plan["notices"].to_string().contains("never analysed"));
    // 20 L on 4 m2 are 5 mm, and 0.6 kg/L x 50 % x 0.5 % in each.
    let salads = bed(&plan, "Salads");
    assert!(
        (salads["earlier_g_m2"]["phosphorus"].as_f64().unwrap() - 5.0 * 1.5 * 0.4).abs() < 1e-9
    );
    assert_eq!(salads["binding"], "phosphorus");
    let odd = bed(&plan, "Odd");
    assert_eq!(odd["need_g_m2"]["phosphorus"], 0.0);

    // What is sown soon gets none of a compost that was not tested for maturity.
    let sown = [
        "beds",
        "plan",
        "--from",
        "Bin",
        "--json",
        "--sow",
        "Long bed=10",
    ];
    let found = as_json(&kept.answer(&sown));
    assert_eq!(bed(&found, "Long bed")["binding"], "maturity not shown");
    let found = as_json(&kept.answer(&[&sown[..], &["--mature"]].concat()));
    assert!(bed(&found, "Long bed")["depth_mm"].as_f64().unwrap() > 0.0);
    let found = as_json(&kept.answer(&[
        "beds",
        "plan",
        "--litres",
        "50",
        "--json",
        "--held-raw",
        "--bed",
        "Salads",
        "--harvest",
        "Salads=40",
        "--crop",
        "Salads=beans",
    ]));
    assert_eq!(found["beds"].as_array().unwrap().len(), 1);
    assert_eq!(bed(&found, "Salads")["crop"], "beans");
    assert_eq!(bed(&found, "Salads")["binding"], "waiting time");
}

/// The plan of a bed of lettuce that is harvested in 60 days.
fn salads(kept: &Kept, more: &[&str]) -> Value {
    let plan = [
        "beds", "plan", "--from", "Bin", "--litres", "50", "--bed", "Salads", "--json",
    ];
    as_json(&kept.answer(&[&plan[..], &["--harvest", "Salads=60"], more].concat()))
}

#[test]
fn what_was_harvested_keeps_its_waiting_time() {
    let mut kept = garden("raw-harvested");
    kept.answer(&["feed", "Bin", "3 buckets horse manure"]);
    assert_eq!(
        bed(&salads(&kept, &[]), "Salads")["binding"],
        "waiting time"
    );
    kept.now = "2027-03-01T10:00:00+01:00".to_owned();
    kept.answer(&["harvest", "Bin", "200 l", "--share", "all"]);
    assert_eq!(
        bed(&salads(&kept, &[]), "Salads")["binding"],
        "waiting time"
    );
    // What goes in afterwards tells nothing of it.
    kept.answer(&["feed", "Bin", "2 buckets shredded leaves"]);
    assert_eq!(
        bed(&salads(&kept, &[]), "Salads")["binding"],
        "waiting time"
    );
    assert_ne!(
        bed(&salads(&kept, &["--no-raw"]), "Salads")["binding"],
        "waiting time"
    );
    // Once it is all spread, the compost is what lies there now.
    kept.answer(&["spread", "Long bed", "200 l", "--heap", "Bin"]);
    let found = salads(&kept, &[]);
    assert_eq!(bed(&found, "Salads")["wait_days"], Value::Null, "{found}");
}

#[test]
fn raw_matter_is_found_on_both_sides_of_a_move() {
    let mut kept = garden("raw-moved");
    kept.answer(&["feed", "Bin", "3 buckets horse manure"]);
    kept.answer(&["heap", "new", "Second"]);
    kept.now = "2027-03-01T10:00:00+01:00".to_owned();
    kept.answer(&["heap", "move", "Bin", "Second"]);
    for heap in ["Bin", "Second"] {
        let plan = as_json(&kept.answer(&[
            "beds",
            "plan",
            "--from",
            heap,
            "--litres",
            "50",
            "--json",
            "--harvest",
            "Salads=60",
        ]));
        assert_eq!(bed(&plan, "Salads")["binding"], "waiting time", "{heap}");
    }
}

#[test]
fn what_nobody_said_makes_what_touches_soil_wait() {
    let kept = garden("raw-unknown");
    let plan = |more: &[&str]| {
        let arguments = [
            "beds", "plan", "--litres", "50", "--json", "--bed", "Salads",
        ];
        as_json(&kept.answer(&[&arguments[..], more].concat()))
    };
    let soon = plan(&["--harvest", "Salads=60"]);
    assert_eq!(bed(&soon, "Salads")["binding"], "raw matter not ruled out");
    assert_eq!(bed(&soon, "Salads")["depth_mm"], 0.0);
    let open = plan(&[]);
    assert!(bed(&open, "Salads")["depth_mm"].as_f64().unwrap() > 0.0);
    assert!(
        open["notices"]
            .to_string()
            .contains("(Salads) unless you say --no-raw"),
        "{open}"
    );
    let said = plan(&["--harvest", "Salads=60", "--no-raw"]);
    assert!(bed(&said, "Salads")["depth_mm"].as_f64().unwrap() > 0.0);
    // Beans hang clear of the soil.
    let clear = plan(&["--harvest", "Salads=60", "--crop", "Salads=beans"]);
    assert!(bed(&clear, "Salads")["depth_mm"].as_f64().unwrap() > 0.0);
}

#[test]
fn maturity_is_what_ready_says_of_the_same_batch() {
    let mut kept = garden("mature-as-ready");
    let sown = |kept: &Kept| {
        let plan = as_json(&kept.answer(&[
            "beds",
            "plan",
            "--from",
            "Bin",
            "--litres",
            "50",
            "--no-raw",
            "--sow",
            "Salads=10",
            "--json",
        ]));
        bed(&plan, "Salads")["binding"].as_str().unwrap().to_owned()
    };
    // One sign of stability alone shows no maturity.
    kept.answer(&["test", "Bin", "--heated-to", "22 C", "--room", "20 C"]);
    assert_eq!(sown(&kept), "maturity not shown");
    kept.answer(&[
        "test",
        "Bin",
        "--sown",
        "30",
        "--sprouted",
        "29",
        "--control-sown",
        "30",
        "--control-sprouted",
        "29",
        "--root-mm",
        "34",
        "--control-root-mm",
        "34",
        "--ammonium",
        "60",
        "--nitrate",
        "600",
    ]);
    let ready = as_json(&kept.answer(&["ready", "Bin", "--json"]));
    assert_eq!(ready["verdict"], "ready", "{ready}");
    assert_ne!(sown(&kept), "maturity not shown");
    // The next batch is not the one that was tested, nor has it its figures.
    kept.answer(&["test", "Bin", "--nitrogen", "2"]);
    kept.now = "2027-03-01T10:00:00+01:00".to_owned();
    kept.answer(&["harvest", "Bin", "90 l", "--share", "all"]);
    kept.answer(&["test", "Bin", "--phosphorus", "0.5"]);
    assert_ne!(sown(&kept), "maturity not shown");
    kept.answer(&["spread", "Long bed", "90 l", "--heap", "Bin"]);
    kept.answer(&["feed", "Bin", "9 buckets shredded leaves"]);
    assert_eq!(sown(&kept), "maturity not shown");
    let plan = kept.answer(&["beds", "plan", "--from", "Bin", "--json"]);
    assert!(plan.contains("never analysed"), "{plan}");
}

#[test]
fn what_was_not_measured_is_named() {
    let kept = garden("partly");
    let notices = |kept: &Kept| {
        as_json(&kept.answer(&["beds", "plan", "--from", "Bin", "--json"]))["notices"].to_string()
    };
    kept.answer(&["test", "Bin", "--moisture", "50"]);
    assert!(notices(&kept).contains("never analysed"));
    kept.answer(&["test", "Bin", "--nitrogen", "2"]);
    let found = notices(&kept);
    assert!(
        found.contains("not measured of the compost: phosphorus, potassium and salt."),
        "{found}"
    );
    // Nobody says of which extract a laboratory's conductivity is.
    kept.answer(&["test", "Bin", "--conductivity", "4"]);
    let found = notices(&kept);
    assert!(found.contains("counts as 2.7 times as much"), "{found}");
}

#[test]
fn a_garden_with_too_much_is_told_once_what_to_do() {
    let kept = garden("too-much");
    for bed in ["Long bed", "Salads", "Odd"] {
        kept.answer(&["spread", bed, "600 l"]);
    }
    let text = kept.answer(&["beds", "plan", "--litres", "50", "--no-raw"]);
    assert_eq!(
        text.matches("leaf mould or another poor mulch").count(),
        1,
        "{text}"
    );
    assert_eq!(text.matches("  earlier dressings").count(), 3, "{text}");
    assert!(!text.contains("more would bring"), "{text}");
    assert!(
        text.contains("over 300") && text.contains("give it away"),
        "{text}"
    );
}

#[test]
fn an_amount_of_an_element_is_understood_as_it_is_said() {
    for (said, told) in [
        (&["5 kg P"][..], "5\u{a0}kg P are 11.46\u{a0}kg P2O5."),
        (
            &["5", "kg", "of", "P"],
            "5\u{a0}kg P are 11.46\u{a0}kg P2O5.",
        ),
        (&["5kg P"], "5\u{a0}kg P are 11.46\u{a0}kg P2O5."),
        (&["1e1", "P"], "10 P are 22.91 P2O5."),
        (
            &["10", "g/m2", "K2O"],
            "10\u{a0}g/m2 K2O are 8.302\u{a0}g/m2 K.",
        ),
        (&["3 % CaO"], "3\u{a0}% CaO are 2.144\u{a0}% Ca."),
    ] {
        let text = answer(&[&["convert", "oxide"], said].concat());
        assert_eq!(text.trim(), told);
    }
}

#[test]
fn paper_is_at_most_eighty_columns_wide() {
    let kept = garden("paper");
    let long = "A bed with a name that goes on and on, far beyond the fence";
    kept.answer(&["bed", "new", long, "2 m2"]);
    for units in ["metric", "us"] {
        let text = kept.answer(&[
            "beds", "plan", "--litres", "120", "--paper", "--units", units,
        ]);
        for line in text.lines() {
            assert!(line.chars().count() <= 80, "{line}");
        }
        assert!(text.contains("[ ]") && text.contains("barrows"), "{text}");
    }
}

#[test]
fn what_cannot_be_planned_is_refused_with_what_to_do() {
    let kept = garden("refused");
    for (arguments, words) in [
        (&["beds", "plan"][..], &["--from", "--litres"][..]),
        (&["beds", "plan", "--litres", "-3"], &["more than 0"]),
        (&["beds", "plan", "--litres", "NaN"], &["more than 0"]),
        (&["beds", "plan", "--from", "Nowhere"], &["Nowhere"]),
        (
            &["beds", "plan", "--litres", "9", "--bed", "Nowhere"],
            &["Nowhere"],
        ),
        (
            &["beds", "plan", "--litres", "9", "--harvest", "Salads"],
            &["BED=VALUE"],
        ),
        (
            &["beds", "plan", "--litres", "9", "--sow", "Salads=soon"],
            &["soon", "days"],
        ),
        (&["beds", "plan", "--amount", "9 unicorns"], &["unicorns"]),
        (&["beds", "uses", "soup"], &["soup", "potting_mix"]),
        (&["beds", "uses", "lawn_top", "--amount", "9 l"], &["area"]),
        (&["convert", "cover", "--area", "3 m2"], &["two at a time"]),
        (&["beds", "plan", "--litres", "0"], &["more than 0"]),
        (&["convert", "oxide", "1e308", "P"], &["1,000,000,000"]),
        (&["convert", "oxide", "-1", "P"], &["amount above 0"]),
        (&["convert", "oxide", "much P"], &["5 kg P2O5"]),
        (&["convert", "oxide", "5"], &["5 kg P2O5"]),
        (&["convert", "oxide", "1", "Fe"], &["Fe", "P2O5"]),
        (&["convert", "oxide", "1", "P", "--to", "CaO"], &["P2O5"]),
        (
            &["convert", "weight", "9 l", "--density", "5"],
            &["20", "2000"],
        ),
        (
            &["convert", "nitrogen", "9 l", "--years", "0"],
            &["1 to 50"],
        ),
        (&["convert", "nitrogen", "9 l", "--cn", "0"], &["--cn"]),
        (
            &["convert", "nitrogen", "9 l", "--first", "101"],
            &["--first"],
        ),
    ] {
        let ran = kept.run(arguments);
        assert_eq!(ran.code, 2, "{arguments:?}: {}{}", ran.out, ran.err);
        assert!(
            ran.out.is_empty() && ran.err.lines().count() == 1,
            "{}",
            ran.err
        );
        for word in words {
            assert!(ran.err.contains(word), "{arguments:?}: {}", ran.err);
        }
    }
    let empty = Kept::new("no-beds");
    empty.answer(&["heap", "new", "Bin"]);
    let ran = empty.run(&["beds", "plan", "--litres", "9"]);
    assert_eq!(ran.code, 2);
    assert!(ran.err.contains("heapwright bed new"), "{}", ran.err);
}

#[test]
fn bad_files_are_refused_with_their_field() {
    let with = |place: &str, value: Value| {
        let mut case = json!({
            "amount": "100 l",
            "compost": { "nitrogen_pct_dry": 1.5 },
            "beds": [{ "name": "One", "area": "4 m2", "soil": {}, "dressings": [{ "years_ago": 1, "amount": "9 l" }] }]
        });
        let (parent, last) = place.rsplit_once('/').unwrap();
        case.pointer_mut(parent).unwrap()[last] = value;
        case.to_string()
    };
    for (place, value, field) in [
        ("/amount", json!("some"), "amount"),
        ("/amount", json!(9), "amount"),
        ("/beds", json!([]), "bed"),
        ("/colour", json!("blue"), "colour"),
        (
            "/compost/nitrogen_pct_dry",
            json!([3, 2, 1]),
            "compost.nitrogen_pct_dry",
        ),
        (
            "/compost/nitrogen_pct_dry",
            json!(-1),
            "compost.nitrogen_pct_dry",
        ),
        ("/compost/moisture_pct", json!(99), "compost.moisture_pct"),
        (
            "/compost/bulk_density_kg_m3",
            json!(1),
            "compost.bulk_density_kg_m3",
        ),
        ("/compost/cn_ratio", json!(0), "compost.cn_ratio"),
        (
            "/compost/mineral_nitrogen_pct",
            json!(101),
            "compost.mineral_nitrogen_pct",
        ),
        (
            "/beds/0",
            json!({ "name": " ", "area": "4 m2" }),
            "beds[0].name",
        ),
        (
            "/beds/0",
            json!({ "name": "a", "area": "4" }),
            "beds[0].area",
        ),
        (
            "/beds/0",
            json!({ "name": "a", "area": "4 m2", "feeding": "ravenous" }),
            "beds[0].feeding",
        ),
        (
            "/beds/0",
            json!({ "name": "a", "area": "4 m2", "sown_in_days": -1 }),
            "beds[0].sown_in_days",
        ),
        (
            "/beds/0/soil",
            json!({ "phosphorus_mg_kg": -1 }),
            "beds[0].soil.phosphorus_mg_kg",
        ),
        (
            "/beds/0/dressings",
            json!([{ "years_ago": -1, "amount": "9 l" }]),
            "beds[0].dressings[0]",
        ),
        (
            "/beds/0/dressings",
            json!([{ "years_ago": 1, "amount": "x" }]),
            "beds[0].dressings[0].amount",
        ),
    ] {
        let text = if place == "/beds/0" {
            json!({ "amount": "100 l", "beds": [value] }).to_string()
        } else {
            with(place, value)
        };
        let ran = run_with(&["beds", "plan", "--json", "--file", "-"], text.as_bytes());
        assert_eq!(ran.code, 2, "{text}: {}{}", ran.out, ran.err);
        assert!(
            ran.out.is_empty() && ran.err.lines().count() == 1,
            "{}",
            ran.err
        );
        assert!(ran.err.contains(field), "{field}: {}", ran.err);
    }
}

#[test]
fn conversions_are_of_their_schema() {
    for arguments in [
        &["convert", "cover", "--area", "12 m2", "--depth", "5 mm"][..],
        &["convert", "weight", "3 barrows"],
        &["convert", "weight", "50 kg", "--density", "650"],
        &["convert", "oxide", "0.59", "P"],
        &["convert", "nitrogen", "100 l", "--cn", "12"],
    ] {
        let found = as_json(&answer(&[arguments, &["--json"]].concat()));
        valid("converted", &found);
    }
    let found = as_json(&answer(&["convert", "oxide", "1.352", "P2O5", "--json"]));
    assert!((found["oxide"]["as_element"].as_f64().unwrap() - 0.59).abs() < 5e-4);
    let found = as_json(&answer(&[
        "beds",
        "uses",
        "potting_mix",
        "--amount",
        "60 l",
        "--json",
    ]));
    valid("compost-uses", &found);
    assert!((found["uses"][0]["compost_l"][2].as_f64().unwrap() - 18.0).abs() < 1e-9);
    valid(
        "compost-uses",
        &as_json(&answer(&["beds", "uses", "--json"])),
    );
}

#[test]
fn golden_beds() {
    for (name, arguments) in [
        (
            "beds-plan",
            vec![
                "beds",
                "plan",
                "--file",
                "crates/wire/examples/beds-three.json",
            ],
        ),
        (
            "beds-paper",
            vec![
                "beds",
                "plan",
                "--paper",
                "--file",
                "crates/wire/examples/beds-three.json",
            ],
        ),
        ("beds-uses", vec!["beds", "uses"]),
        (
            "convert-nitrogen",
            vec!["convert", "nitrogen", "100 l", "--cn", "12"],
        ),
        (
            "convert-cover",
            vec!["convert", "cover", "--area", "12 m2", "--depth", "5 mm"],
        ),
    ] {
        let file = of_repository(arguments.last().unwrap())
            .display()
            .to_string();
        let mut run = arguments.clone();
        if arguments.contains(&"--file") {
            *run.last_mut().unwrap() = &file;
        }
        let text = format!("{}\n{}", support::typed(&arguments), answer(&run));
        support::golden_text(name, &text);
    }
}

/// Words as a shell parts them: quotation marks hold words together.
fn words(line: &str) -> Vec<String> {
    let mut words = vec![String::new()];
    let mut quoted = false;
    for sign in line.trim().chars() {
        match sign {
            '"' => quoted = !quoted,
            ' ' if !quoted => words.push(String::new()),
            sign => words.last_mut().unwrap().push(sign),
        }
    }
    words.retain(|word| !word.is_empty());
    words
}

#[test]
fn examples_of_the_help_work() {
    let kept = garden("help");
    fs::copy(example("beds-three"), kept.folder.join("beds.json")).unwrap();
    let mut count = 0;
    for command in [
        &["beds"][..],
        &["beds", "plan"],
        &["beds", "uses"],
        &["convert"],
        &["convert", "cover"],
        &["convert", "weight"],
        &["convert", "oxide"],
        &["convert", "nitrogen"],
    ] {
        let help = answer(&[&["help"], command].concat());
        for example in help
            .lines()
            .filter(|line| line.starts_with("  heapwright "))
        {
            let line = example.split(" > ").next().unwrap();
            let words = words(line);
            let mut arguments: Vec<&str> = words[1..].iter().map(String::as_str).collect();
            let file = kept.folder.join("beds.json").display().to_string();
            for argument in &mut arguments {
                if *argument == "beds.json" {
                    *argument = &file;
                }
            }
            let ran = kept.run(&arguments);
            assert_eq!(ran.code, 0, "{example}: {}", ran.err);
            count += 1;
        }
    }
    assert!(count >= 20, "{count} examples");
}

#[test]
fn what_never_goes_on_food_beds_is_given_to_ornamental_ones_only() {
    let mut kept = Kept::new("never-on-food-beds");
    kept.answer(&["heap", "new", "Bin"]);
    kept.answer(&[
        "feed",
        "Bin",
        "3 buckets dog waste, 8 buckets shredded leaves",
    ]);
    kept.answer(&["bed", "new", "Tomatoes", "3.6 m2", "--crop", "tomatoes"]);
    kept.answer(&["bed", "new", "Roses", "2 m2", "--crop", "roses"]);
    // Food grows there in other years, and where nobody said what grows it may.
    kept.answer(&["bed", "new", "Clover", "2 m2", "--crop", "clover"]);
    kept.answer(&["bed", "new", "Open", "2 m2"]);
    let plan = |kept: &Kept, more: &[&str]| {
        let arguments = ["beds", "plan", "--json", "--litres", "50"];
        as_json(&kept.answer(&[&arguments[..], more].concat()))
    };
    let kept_off = |plan: &Value| {
        valid("beds-answer", plan);
        for name in ["Tomatoes", "Clover", "Open"] {
            let bed = bed(plan, name);
            assert_eq!(bed["volume_l"], 0.0, "{bed}");
            assert_eq!(bed["binding"], "never on food beds", "{bed}");
            assert_eq!(bed["limits"][0]["depth_mm"], 0.0, "{bed}");
            assert_eq!(bed["wait_days"], Value::Null, "{bed}");
        }
        assert!(bed(plan, "Roses")["volume_l"].as_f64().unwrap() > 1.0);
        let first = plan["notices"][0].as_str().unwrap();
        assert!(first.contains("never goes on food beds"), "{first}");
        let all = plan["notices"].to_string();
        assert!(all.contains("only under trees"), "{all}");
        assert!(!all.contains("for pots or next year"), "{all}");
        assert!(!plan.to_string().to_lowercase().contains("safe"));
        first.to_owned()
    };
    // No answer about raw manure takes it back.
    for more in [&[][..], &["--no-raw", "--mature"]] {
        let found = plan(&kept, &[&["--from", "Bin"], more].concat());
        let first = kept_off(&found);
        assert!(first.contains("dog waste on"), "{first}");
        assert!(found["sources"].to_string().contains("Dubey"), "{found}");
    }
    kept_off(&plan(&kept, &["--never-on-food-beds"]));

    // So it stays with what was taken out, whatever goes into the heap afterwards.
    kept.now = "2027-03-01T10:00:00+01:00".to_owned();
    kept.answer(&["harvest", "Bin", "60 l", "--share", "all"]);
    kept.answer(&["feed", "Bin", "2 buckets shredded leaves"]);
    kept_off(&plan(&kept, &["--from", "Bin"]));
    let spread = |bed: &str| {
        let text = kept.answer(&["spread", bed, "10 l", "--heap", "Bin"]);
        text.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    let told = spread("Tomatoes");
    assert!(
        told.contains("Spread 10 L on Tomatoes")
            && told.contains("Tomatoes counts as a food bed")
            && told.contains("do not spread it there")
            && told.contains("dog waste on"),
        "{told}"
    );
    let told = spread("Roses");
    assert!(!told.contains("counts as a food bed"), "{told}");
    // Nor does it go with what was spread, for who can say which of it that was?
    kept.answer(&["spread", "Roses", "60 l", "--heap", "Bin"]);
    let told = spread("Tomatoes");
    assert!(told.contains("counts as a food bed"), "{told}");
    let after = plan(&kept, &["--from", "Bin"]);
    assert_eq!(bed(&after, "Open")["binding"], "never on food beds");
    // Of another compost nothing of the kind is known.
    let clean = plan(&kept, &[]);
    assert!(bed(&clean, "Tomatoes")["volume_l"].as_f64().unwrap() > 1.0);
}

#[test]
fn what_may_be_dirty_is_told_where_it_goes_on_food_beds() {
    let kept = Kept::new("doubtful-on-food-beds");
    kept.answer(&["heap", "new", "Bin"]);
    kept.answer(&[
        "feed",
        "Bin",
        "1 bucket wood ash, 8 buckets shredded leaves",
    ]);
    kept.answer(&["bed", "new", "Tomatoes", "3.6 m2", "--crop", "tomatoes"]);
    kept.answer(&["bed", "new", "Roses", "2 m2", "--crop", "roses"]);
    let notices = |bed: &str| {
        let plan = [
            "beds", "plan", "--from", "Bin", "--litres", "9", "--json", "--bed", bed,
        ];
        as_json(&kept.answer(&plan))["notices"].to_string()
    };
    let told = notices("Tomatoes");
    assert!(
        told.contains("Before this compost goes on Tomatoes") && told.contains("ash of coal"),
        "{told}"
    );
    assert!(!notices("Roses").contains("ash of coal"));
}

#[test]
fn a_file_may_say_that_compost_never_goes_on_food_beds() {
    let with = |more: Value| {
        let question = json!({
            "amount": "20 l",
            "compost": more,
            "beds": [
                { "name": "Peas", "area": "4 m2", "crop": "peas" },
                { "name": "Border", "area": "4 m2", "crop": "flowers" },
            ]
        });
        valid("beds-question", &question);
        let arguments = ["beds", "plan", "--json", "--file", "-"];
        as_json(&run_with(&arguments, question.to_string().as_bytes()).out)
    };
    let off = with(json!({ "never_on_food_beds": true }));
    assert_eq!(bed(&off, "Peas")["binding"], "never on food beds");
    assert!(bed(&off, "Border")["volume_l"].as_f64().unwrap() > 1.0);
    let on = with(json!({}));
    assert!(bed(&on, "Peas")["volume_l"].as_f64().unwrap() > 1.0);
}

#[test]
fn more_compost_never_makes_a_need_less_met() {
    // So little that the solver leaves drops of it, some more, and more than the bed bears.
    for (litres, binding) in [
        (4, "no more compost"),
        (8, "no more compost"),
        (12, "no more compost"),
        (20, "no more compost"),
        (40, "phosphorus"),
    ] {
        let question = json!({
            "amount": format!("{litres} l"),
            "beds": [{ "name": "One", "area": "3.6 m2", "crop": "tomatoes" }]
        });
        let arguments = ["beds", "plan", "--json", "--file", "-"];
        let plan = as_json(&run_with(&arguments, question.to_string().as_bytes()).out);
        assert_eq!(bed(&plan, "One")["binding"], binding, "{litres} L: {plan}");
    }
}
