//! What the commands of the journal refuse: exit code 2, nothing on standard output, one sentence,
//! and a journal that is as it was.

#![allow(clippy::unwrap_used)]

mod support;

use support::Kept;

/// A garden with two heaps, a bed, a person and something put by.
fn garden(name: &str) -> Kept {
    let kept = Kept::new(name);
    for arguments in [
        &["heap", "new", "Bin"][..],
        &["heap", "new", "Bin two"],
        &["heap", "new", "Box"],
        &["bed", "new", "Long bed", "12 m2"],
        &["garden", "person", "Ann"],
        &["stock", "put", "2 buckets straw"],
        &["feed", "Bin", "1 bucket straw"],
    ] {
        kept.answer(arguments);
    }
    std::fs::write(kept.folder.join("text.txt"), "no picture").unwrap();
    std::fs::write(kept.folder.join("large.png"), vec![0x89; (2 << 20) + 1]).unwrap();
    std::fs::write(kept.folder.join("cut.png"), b"\x89PNG\r\n\x1a\n\0\0").unwrap();
    std::fs::write(kept.folder.join("there.jsonl"), "mine").unwrap();
    kept
}

#[rustfmt::skip] // a table
const REFUSED: &[(&[&str], &[&str])] = &[
    // Times.
    (&["turn", "Bin", "--at", "soon"], &["--at", "soon", "yesterday evening"]),
    (&["turn", "Bin", "--at", ""], &["--at", "not understood"]),
    (&["turn", "Bin", "--at", "2026-02-30"], &["--at", "no day"]),
    (&["turn", "Bin", "--at", "2026-05-08"], &["--at", "future"]),
    (&["turn", "Bin", "--at", "-3 hours ago"], &["--at", "not understood"]),
    (&["log", "--since", "once"], &["--since", "once"]),
    (&["log", "--until", "25:00"], &["--until", "no day"]),
    // People.
    (&["turn", "Bin", "--by", "Bob"], &["--by", "Bob", "Ann"]),
    (&["garden", "person", ""], &["name", "empty"]),
    (&["garden", "person", "Bob", "--role", "king"], &["--role", "king", "keeper"]),
    // Heaps.
    (&["heap", "new", "bin"], &["bin", "already"]),
    (&["heap", "new", ""], &["name", "empty"]),
    (&["heap", "new", "  "], &["name", "empty"]),
    (&["heap", "new", "a\nb"], &["name", "control"]),
    (&["heap", "new", "C", "--width", "1"], &["--width", "90 cm"]),
    (&["heap", "new", "C", "--width", "1 m"], &["--height"]),
    (&["heap", "new", "C", "--wall", "wood"], &["--width"]),
    (&["heap", "new", "C", "--width", "1 m", "--height", "99 m"], &["The height must be from 10 to 1000\u{a0}cm"]),
    (&["heap", "new", "C", "--width", "1 mm", "--height", "1 m"], &["The width must be from 10 to 2000\u{a0}cm"]),
    (&["heap", "new", "C", "--shape", "egg", "--width", "1 m", "--height", "1 m"], &["--shape", "egg", "cylinder"]),
    (&["heap", "new", "C", "--sun", "moon"], &["--sun", "moon", "half sun"]),
    (&["heap", "new", "C", "--filling", "never"], &["--filling", "little-by-little"]),
    (&["heap", "show"], &["more than one heap", "Bin two or Box"]),
    (&["heap", "show", "Bxo"], &["Bxo", "did you mean \"Box\""]),
    (&["heap", "show", "b"], &["\"b\"", "say which"]),
    (&["heap", "show", "compost"], &["compost", "Bin, Bin two or Box"]),
    (&["heap", "show", "0193f2a1-b3c4-7000-8000-000000000001"], &["no heap"]),
    (&["heap", "stage", "Bin", "asleep"], &["STAGE", "asleep", "curing"]),
    (&["heap", "stage", "curing"], &["more than one heap"]),
    (&["heap", "cover", "Bin", "--with", "hat"], &["--with", "hat", "lid"]),
    (&["heap", "move", "Bin", "Bin"], &["to", "another heap"]),
    (&["heap", "move", "Bin", "Box", "--share", "0"], &["--share", "above 0"]),
    (&["heap", "move", "Bin", "Box", "--share", "-5"], &["--share", "above 0"]),
    (&["heap", "move", "Bin", "Box", "--share", "120%"], &["--share"]),
    // Feeds.
    (&["feed", "Bin"], &["PARTS"]),
    (&["feed", "1 bucket straw"], &["more than one heap"]),
    (&["feed", "Bin", "1 bucket unobtainium"], &["PARTS", "unobtainium"]),
    (&["feed", "Bin", "2 bukets straw"], &["did you mean buckets"]),
    (&["feed", "2 bukets straw", "1 kg grass"], &["did you mean buckets"]),
    (&["feed", "Bni", "1 bucket straw"], &["HEAP", "Bni", "Bin"]),
    (&["feed", "Bin", "0 kg straw"], &["PARTS", "zero"]),
    (&["feed", "Bin", "-1 kg straw"], &["-1 kg straw", "above 0"]),
    (&["feed", "Bin", "1 kg straw", "--water", "-1 l"], &["--water", "below zero"]),
    (&["feed", "Bin", "1 kg straw", "--water", "much"], &["--water"]),
    (&["feed", "Bin", "--water", "0"], &["say what went in"]),
    (&["water", "Bin", "lots"], &["AMOUNT"]),
    (&["water", "Bin", "0"], &["The water must be from 0.001"]),
    (&["water", "Bin", "99999 l", "--at", "2026-06-01"], &["--at", "future"]),
    (&["turn", "Bin", "--how", "badly"], &["--how", "badly", "inside out"]),
    // Readings.
    (&["read", "Bin"], &["--temperature"]),
    (&["read", "Bin", "--temperature", "hot"], &["--temperature", "hot"]),
    (&["read", "Bin", "--temperature", "400 C"], &["The temperature must be", "120\u{a0}°C"]),
    (&["read", "Bin", "--temperature", "-70 C"], &["The temperature must be", "-60"]),
    (&["read", "Bin", "--temperature", "58 C elsewhere"], &["--temperature", "halfway"]),
    (&["read", "Bin", "--temperature", "58 C, 30 m deep"], &["The depth must be", "1000\u{a0}cm"]),
    (&["read", "Bin", "--air", "58 K"], &["--air"]),
    (&["read", "Bin", "--squeeze", "soggy"], &["--squeeze", "soggy", "dripping"]),
    (&["read", "Bin", "--smell", "roses"], &["--smell", "roses", "ammonia"]),
    (&["read", "Bin", "--look", "pretty"], &["--look", "matted"]),
    (&["read", "Bin", "--creatures", "dragons"], &["--creatures", "worms"]),
    (&["read", "Bin", "--height", "tall"], &["--height"]),
    (&["read", "Bin", "--fill", "-3"], &["--fill"]),
    // Notes.
    (&["note"], &["--picture"]),
    (&["note", " "], &["--picture"]),
    (&["note", "x", "--heap", "nowhere"], &["nowhere"]),
    (&["note", "x", "--bed", "nowhere"], &["nowhere", "Long bed"]),
    (&["note", "--picture", "text.txt"], &["text.txt", "JPEG"]),
    (&["note", "--picture", "large.png"], &["large.png", "2 MiB"]),
    (&["note", "--picture", "cut.png"], &["cut.png"]),
    // Stores.
    (&["stock", "put", "1 bucket unobtainium"], &["unobtainium"]),
    (&["stock", "put", "1 bucket straw", "--scoop", "x"], &["--scoop"]),
    (&["stock", "use", "much straw"], &["PARTS"]),
    (&["stock", "use", "1 bucket straw", "--heap", "nowhere"], &["nowhere"]),
    (&["stock", "count", "--none", "unobtainium"], &["--none", "unobtainium"]),
    // Yields.
    (&["harvest", "Bin", "some"], &["AMOUNT"]),
    (&["harvest", "3 buckets"], &["more than one heap"]),
    (&["harvest", "Bin", "--share", "none"], &["--share"]),
    (&["harvest", "Bin", "2 buckets"], &["how much of the heap", "--share 20%", "--share all"]),
    (&["harvest", "Bin", "2 buckets", "--sieve", "12"], &["how much of the heap"]),
    (&["harvest", "Bin", "--sieve", "900"], &["The mesh of the sieve", "mm"]),
    (&["harvest", "Bin", "--sieve", "12", "--overs", "1 bucket", "--overs-to", "nowhere"], &["nowhere"]),
    (&["bed", "new", "Long Bed", "3 m2"], &["already"]),
    (&["bed", "new", "X", "3"], &["AREA", "12 m2"]),
    (&["bed", "new", "X", "3 m2", "--soil-ph", "30"], &["The pH must be from 2 to 12"]),
    (&["spread", "nowhere", "1 bucket"], &["BED", "nowhere"]),
    (&["spread", "long", "some"], &["AMOUNT"]),
    (&["spread", "long", "1 bucket", "--how", "thrown"], &["--how", "left on top"]),
    // Tests.
    (&["test", "Bin"], &["--bag-days"]),
    (&["test", "Bin", "--bag-days", "7", "--swollen", "maybe"], &["--swollen", "maybe"]),
    (&["test", "Bin", "--bag-days", "9999", "--swollen", "no"], &["The time in the bag", "365\u{a0}days"]),
    (&["test", "Bin", "--bag-days", "NaN", "--swollen", "no"], &["The time in the bag"]),
    (&["test", "Bin", "--moisture", "150"], &["The moisture must be", "100\u{a0}%"]),
    (&["test", "Bin", "--sown", "5", "--sprouted", "6", "--control-sown", "5", "--control-sprouted", "5"], &["seeds that sprouted", "from 0 to 5"]),
    (&["test", "Bin", "--heated-to", "warm", "--room", "20 C"], &["--heated-to"]),
    // The garden.
    (&["garden", "describe"], &["--name"]),
    (&["garden", "describe", "--latitude", "52"], &["--longitude"]),
    (&["garden", "describe", "--latitude", "152", "--longitude", "0"], &["The latitude must be from -90 to 90"]),
    (&["garden", "describe", "--latitude", "-91", "--longitude", "0"], &["The latitude must be"]),
    (&["garden", "describe", "--name", ""], &["name", "empty"]),
    (&["measure", "set", "teapot", "1 l"], &["MEASURE", "teapot"]),
    (&["measure", "set", "litre", "1 l"], &["MEASURE"]),
    (&["measure", "set", "bucket", "1 kg"], &["VOLUME", "no volume"]),
    (&["measure", "set", "bucket", "0 l"], &["VOLUME", "zero"]),
    (&["material", "define", "X", "--like", "unobtainium"], &["--like", "unobtainium"]),
    (&["material", "define", "ä", "--like", "straw_wheat"], &["--id"]),
    (&["material", "define", "My straw", "--id", "No!", "--like", "straw_wheat"], &["id"]),
    (&["material", "define", "My straw", "--like", "straw_wheat", "--moisture", "dry"], &["--moisture", "dry"]),
    (&["material", "define", "My straw", "--like", "straw_wheat", "--moisture", "50,40,60"], &["--moisture"]),
    (&["material", "define", "My straw", "--like", "straw_wheat", "--moisture", "150"], &["moisture_pct"]),
    (&["material", "measure", "straw"], &["--wet"]),
    (&["material", "measure", "unobtainium", "--moisture", "10"], &["MATERIAL", "unobtainium"]),
    (&["material", "measure", "straw", "--wet", "1 kg", "--dried", "2 kg"], &["cannot be"]),
    (&["material", "measure", "straw", "--wet", "1 l", "--dried", "1 kg"], &["--wet", "no weight"]),
    // The journal.
    (&["undo", "--bring-back"], &["nothing was taken back"]),
    (&["log", "--kind", "dances"], &["--kind", "dances", "feeds"]),
    (&["log", "--heap", "nowhere"], &["nowhere"]),
    (&["export", "there.jsonl"], &["there.jsonl", "--replace"]),
    (&["export", "."], &["folder"]),
    (&["export", "-", "--json"], &["--json"]),
    (&["backup", "there.jsonl"], &["there.jsonl", "--replace"]),
    (&["backup", "garden.heapwright", "--replace"], &["the journal itself"]),
    (&["restore", "garden.heapwright"], &["the journal itself"]),
    (&["restore", "--from-damaged"], &["sound"]),
    (&["import", "text.txt", "--yes", "--heap", "Bin"], &["columns"]),
    (&["import", "text.txt", "--unit", "K"], &["--unit", "neither C nor F"]),
    (&["import", "text.txt", "--column", "0"], &["--column"]),
    (&["import", "text.txt", "--date-order", "backwards"], &["--date-order", "day-first"]),
];

#[test]
fn refused_in_one_sentence_and_nothing_is_written() {
    let kept = garden("refused");
    let lines = kept.lines();
    let mut wrong = Vec::new();
    for (arguments, words) in REFUSED {
        let ran = kept.run(arguments);
        let one_sentence = ran.err.starts_with("heapwright: ") && ran.err.lines().count() == 1;
        let says = words.iter().all(|word| ran.err.contains(word));
        if ran.code != 2 || !ran.out.is_empty() || !one_sentence || !says {
            wrong.push(format!(
                "{arguments:?}: exit code {}, {}{}",
                ran.code, ran.out, ran.err
            ));
        }
        if ran.err.chars().count() > 400
            || ["struct", "enum", "None", "Some("]
                .iter()
                .any(|word| ran.err.contains(word))
        {
            wrong.push(format!("{arguments:?}: not plain: {}", ran.err));
        }
    }
    assert!(
        wrong.is_empty(),
        "{} of {}:\n{}",
        wrong.len(),
        REFUSED.len(),
        wrong.join("\n")
    );
    assert_eq!(kept.lines(), lines, "something was written");
    assert_eq!(
        std::fs::read_to_string(kept.folder.join("there.jsonl")).unwrap(),
        "mine"
    );
    // Nor are pictures kept of notes that are refused.
    assert_eq!(kept.json(&["check"])["pictures"], 0);
}

/// Clap's own refusals: the shape of the command line.
#[test]
fn wrong_words_end_with_two() {
    let kept = Kept::new("wrong-words");
    for arguments in [
        &["heap"][..],
        &["heap", "new"],
        &["heap", "burn"],
        &["feed"],
        &["water"],
        &["water", "a", "b", "c"],
        &["stock", "put"],
        &["stock", "count"],
        &["spread", "x"],
        &["test", "--bag-days", "7"],
        &["test", "--sown", "7"],
        &["test", "--moisture", "wet"],
        &["undo", "--list", "--bring-back"],
        &["log", "--last", "-1"],
        &["import"],
        &["import", "x", "--yes", "--dry-run"],
        &["export", "--csv", "pictures"],
        &["restore"],
        &["harvest", "Bin", "--overs", "1 bucket"],
    ] {
        let ran = kept.run(arguments);
        assert_eq!(ran.code, 2, "{arguments:?}: {}", ran.out);
        assert!(ran.out.is_empty() && !ran.err.is_empty(), "{arguments:?}");
    }
    assert!(!kept.path.exists());
}

/// A refusal makes no journal, and a reading command none either.
#[test]
fn no_journal_is_made_in_vain() {
    let kept = Kept::new("in-vain");
    for arguments in [
        &["feed", "1 kg straw"][..],
        &["heap", "new", ""],
        &["turn", "Bin"],
        &["note", "--picture", "nowhere.png"],
        &["stock", "put", "1 kg unobtainium"],
        &["import", "nowhere.jsonl", "--yes"],
    ] {
        let ran = kept.run(arguments);
        assert!(matches!(ran.code, 1 | 2), "{arguments:?}: {}", ran.out);
        assert_eq!(ran.err.lines().count(), 1, "{arguments:?}: {}", ran.err);
        assert!(!kept.path.exists(), "{arguments:?} made a journal");
    }
    for arguments in [
        &["heap", "list"][..],
        &["heap", "show"],
        &["stock", "list"],
        &["bed", "list"],
        &["log"],
        &["undo"],
        &["export", "-"],
        &["backup", "copy"],
        &["check"],
    ] {
        let ran = kept.run(arguments);
        assert_eq!(
            (ran.code, ran.err.lines().count()),
            (1, 1),
            "{arguments:?}: {}",
            ran.err
        );
        assert!(
            ran.err.contains("heapwright heap new"),
            "{arguments:?}: {}",
            ran.err
        );
        assert!(!kept.path.exists(), "{arguments:?} made a journal");
    }
    // The first that writes makes it and says where, apart from its answer.
    let ran = kept.run(&["heap", "new", "Bin", "--json"]);
    assert_eq!(ran.code, 0);
    assert!(
        ran.err.contains("garden.heapwright") && ran.err.lines().count() == 1,
        "{}",
        ran.err
    );
    assert!(serde_json::from_str::<serde_json::Value>(&ran.out).is_ok());
}

/// What is taken in is told first, and written only when that was asked for.
#[test]
fn an_import_is_told_and_taken_in_whole_or_not_at_all() {
    let kept = garden("told-first");
    let other = Kept::new("told-first-here");
    other.answer(&["garden", "describe", "--name", "Here"]);
    kept.answer(&["garden", "describe", "--name", "There"]);
    kept.answer(&["export", "all.jsonl"]);
    let lines = other.lines();
    let all = kept.folder.join("all.jsonl");
    let file = all.display().to_string();
    let dry = other.run(&["import", &file, "--dry-run"]);
    assert_eq!(dry.code, 0, "{}", dry.err);
    assert!(
        dry.out
            .starts_with("This may be the journal of another garden"),
        "{}",
        dry.out
    );
    assert!(dry.out.contains("New: 8 entries."), "{}", dry.out);
    let unasked = other.run(&["import", &file]);
    assert_eq!((unasked.code, unasked.err.lines().count()), (2, 1));
    assert!(unasked.err.contains("--yes"), "{}", unasked.err);
    // One line is spoilt, one is missing.
    let text = std::fs::read_to_string(&all).unwrap();
    let spoilt = text.replacen("\"kind\"", "\"kin\"", 1);
    let spoilt_path = kept.folder.join("spoilt.jsonl");
    std::fs::write(&spoilt_path, &spoilt).unwrap();
    let spoilt_file = spoilt_path.display().to_string();
    let refused = other.run(&["import", &spoilt_file, "--yes"]);
    assert_eq!(
        (refused.code, refused.err.lines().count()),
        (2, 1),
        "{}",
        refused.err
    );
    assert!(
        refused.out.contains("line 2: is no event") && refused.err.contains("--skip-faulty"),
        "{}{}",
        refused.out,
        refused.err
    );
    let cut: Vec<&str> = text.lines().take(4).collect();
    let cut_path = kept.folder.join("cut.jsonl");
    std::fs::write(&cut_path, cut.join("\n")).unwrap();
    let refused = other.run(&["import", &cut_path.display().to_string(), "--yes"]);
    assert_eq!(refused.code, 2);
    assert!(refused.err.contains("header"), "{}", refused.err);
    for text in ["{}", "{\"parts\":[]}", "\u{feff}{\"a\":1}\n{\"b\":2}\n"] {
        std::fs::write(&cut_path, text).unwrap();
        let refused = other.run(&[
            "import",
            &cut_path.display().to_string(),
            "--yes",
            "--skip-faulty",
        ]);
        assert_eq!(refused.code, 2, "{text}");
        assert!(refused.err.contains("no entry"), "{text}: {}", refused.err);
    }
    assert_eq!(other.lines(), lines, "something was written");
    let taken = other.json(&["import", &spoilt_file, "--yes", "--skip-faulty"]);
    assert_eq!(
        (&taken["new"], &taken["written"]),
        (&7.into(), &true.into())
    );
    // The rest comes with the sound file; a line of a newer program is kept and passed on.
    assert_eq!(other.json(&["import", &file, "--yes"])["new"], 1);
    let newer = text.lines().nth(1).unwrap().replace("\"v\":1", "\"v\":9");
    std::fs::write(&cut_path, &newer).unwrap();
    let told = other.json(&["import", &cut_path.display().to_string(), "--yes"]);
    assert_eq!(told["conflicts"].as_array().unwrap().len(), 1);
    assert_eq!(told["not_understood"].as_object().unwrap().len(), 1);
    assert!(other.lines().contains(&newer));
}
