//! `heapwright heap`: start, list, show, cover, move heaps and let them rest.

use std::io::Write;

use heapwright_answers::before_use;
use heapwright_journal::content::{
    Covered, Enclosure, Filling, HeapStarted, Moved, Rested, Shape, Uncovered,
};
use heapwright_quantity::{UnitSystem, significant};
use heapwright_state::Heap;
use heapwright_texts::Locale;
use heapwright_wire::{
    HeapShownJson, HeapsJson, WireError, before_use_json, chosen, heap_json, length_m, mix_json,
    share_pct,
};
use heapwright_wording::{self as wording, Word};

use crate::arguments::{
    HeapCommand, HeapCoverArguments, HeapMoveArguments, HeapNewArguments, HeapShowArguments,
    HeapStageArguments, HeapUncoverArguments, ViewArguments,
};
use crate::commands::hygiene::write_before_use;
use crate::commands::mix::{WIDTH, write_mixture};
use crate::failure::Failure;
use crate::keeping::{Keeping, catalogue};
use crate::naming;
use crate::table::{write_paragraph, write_rows};
use crate::telling::{ago, as_fed, record_and_tell, write_invented, write_json};

/// Runs the command.
pub fn run(command: &HeapCommand, out: &mut impl Write) -> Result<(), Failure> {
    match command {
        HeapCommand::New(arguments) => new(arguments, out),
        HeapCommand::List(arguments) => list(arguments, out),
        HeapCommand::Show(arguments) => show(arguments, out),
        HeapCommand::Stage(arguments) => stage(arguments, out),
        HeapCommand::Cover(arguments) => cover(arguments, out),
        HeapCommand::Uncover(arguments) => uncover(arguments, out),
        HeapCommand::Move(arguments) => move_from(arguments, out),
    }
}

fn new(arguments: &HeapNewArguments, out: &mut impl Write) -> Result<(), Failure> {
    let mut keeping = Keeping::to_write(&arguments.record.journal)?;
    let name = arguments.name.trim().to_owned();
    if naming::is_taken(&keeping.state, &name) {
        return Err(Failure::Input(format!(
            "a heap called \"{}\" is there already: give another name",
            naming::shown(&name)
        )));
    }
    let started = HeapStarted {
        name,
        enclosure: enclosure(arguments)?,
        sun: optional(arguments.sun.as_deref(), "--sun")?,
        filling: arguments.filling.as_deref().map(filling).transpose()?,
    };
    record_and_tell(&mut keeping, &arguments.record, vec![started.into()], out)
}

/// A word to choose, if it was given.
fn optional<W: Word + serde::Serialize>(
    text: Option<&str>,
    option: &str,
) -> Result<Option<W>, WireError> {
    text.map(|text| chosen(text, option)).transpose()
}

fn filling(text: &str) -> Result<Filling, Failure> {
    match text.to_lowercase().replace(['-', '_'], " ").trim() {
        "little by little" => Ok(Filling::LittleByLittle),
        "at once" => Ok(Filling::AtOnce),
        _ => Err(Failure::Input(format!(
            "--filling: \"{}\" is none of little-by-little, at-once",
            naming::shown(text)
        ))),
    }
}

fn enclosure(arguments: &HeapNewArguments) -> Result<Option<Enclosure>, Failure> {
    let length = |text: &Option<String>, option: &str| {
        text.as_deref()
            .map(|text| length_m(text, option))
            .transpose()
    };
    let shape: Option<Shape> = optional(arguments.shape.as_deref(), "--shape")?;
    let width = length(&arguments.width, "--width")?;
    let depth = length(&arguments.depth, "--depth")?;
    let height = length(&arguments.height, "--height")?;
    let wall = optional(arguments.wall.as_deref(), "--wall")?;
    let cover = optional(arguments.cover.as_deref(), "--cover")?;
    let ground = optional(arguments.ground.as_deref(), "--ground")?;
    let (Some(width_m), Some(height_m)) = (width, height) else {
        let anything = shape.is_some()
            || width.or(depth).or(height).is_some()
            || wall.is_some()
            || cover.is_some()
            || ground.is_some();
        return if anything {
            Err(Failure::Input(
                "what a heap stands in needs its size: give --width and --height, such as --width \"1 m\" --height \"90 cm\"".to_owned(),
            ))
        } else {
            Ok(None)
        };
    };
    Ok(Some(Enclosure {
        shape: shape.unwrap_or(Shape::Box),
        width_m,
        depth_m: depth,
        height_m,
        wall,
        cover,
        ground,
    }))
}

fn started_first(keeping: &Keeping) -> Vec<&Heap> {
    let mut heaps: Vec<&Heap> = keeping.state.heaps().collect();
    heaps.sort_by_key(|heap| {
        let started = heap.now().started.as_ref();
        (started.map(|started| started.moment.instant_ms), heap.id)
    });
    heaps
}

fn list(arguments: &ViewArguments, out: &mut impl Write) -> Result<(), Failure> {
    let keeping = Keeping::to_read(&arguments.journal)?;
    let heaps = started_first(&keeping);
    if arguments.journal.json {
        let heaps = heaps.iter().filter_map(|heap| heap_json(heap)).collect();
        return write_json(
            &HeapsJson {
                journal: keeping.shown_path(),
                heaps,
            },
            out,
        );
    }
    write_invented(&keeping.state, out)?;
    if heaps.is_empty() {
        writeln!(
            out,
            "There is no heap yet: start one with `heapwright heap new NAME`."
        )?;
        return Ok(());
    }
    let mut rows = vec![
        ["heap", "", "fed", "turned", "looked at"]
            .map(str::to_owned)
            .to_vec(),
    ];
    for heap in heaps {
        let now = heap.now();
        let since = |then| ago(then, keeping.edges.now, keeping.locale());
        rows.push(vec![
            heap.name().unwrap_or_default().to_owned(),
            now.stage.word(keeping.locale()).to_owned(),
            since(now.last_fed),
            since(now.last_turned),
            since(now.last_read),
        ]);
    }
    write_rows(out, &rows)?;
    Ok(())
}

fn show(arguments: &HeapShowArguments, out: &mut impl Write) -> Result<(), Failure> {
    let keeping = Keeping::to_read(&arguments.view.journal)?;
    let id = keeping.heap(arguments.heap.as_deref())?;
    let Some(heap) = keeping.state.heap(id) else {
        return Err(Failure::Input("there is no such heap".to_owned()));
    };
    let garden = keeping.garden();
    let contents = keeping.state.contents(id);
    let (_, water_kg) = garden.parts_of(catalogue(), &keeping.state, &contents);
    let answer = as_fed(&keeping.state, &garden, id);
    let mut remark = match &answer {
        Ok(Some(_)) => wording::as_fed(keeping.locale()).to_owned(),
        Ok(None) => "Nothing is in it, as far as the journal tells.".to_owned(),
        Err(error) => format!("Its balance cannot be told: {error}."),
    };
    if contents.cut {
        remark.push_str(" What came by older moves between heaps is not followed.");
    }
    let before_use = before_use(catalogue(), &garden, &contents);
    if arguments.view.journal.json {
        let Some(json) = heap_json(heap) else {
            return Err(Failure::Input("there is no such heap".to_owned()));
        };
        return write_json(
            &HeapShownJson {
                journal: keeping.shown_path(),
                heap: json,
                as_fed: answer
                    .ok()
                    .flatten()
                    .map(|answer| mix_json(catalogue(), &answer)),
                water_poured_kg: water_kg,
                before_use: before_use_json(&before_use),
                remark,
            },
            out,
        );
    }
    let locale = keeping.locale();
    write_invented(&keeping.state, out)?;
    write_history(&keeping, heap, locale, out)?;
    if let Ok(Some(answer)) = &answer {
        writeln!(out, "\nIn it, as it was fed:")?;
        for found in &answer.parts {
            let amount = wording::amount_of(catalogue(), found, locale);
            writeln!(out, "  {amount}")?;
        }
        if answer.water_kg > 0.0 {
            let water = wording::water_text(answer.water_kg, locale);
            writeln!(out, "  {water} of water")?;
        }
        writeln!(out)?;
        write_mixture(&answer.mixture, &answer.target, locale, out)?;
        for notice in &answer.notices {
            let notice = wording::mix_notice(catalogue(), notice, locale);
            write_paragraph(out, "", &format!("Note: {notice}"), WIDTH)?;
        }
    } else if water_kg > 0.0 {
        let water = wording::water_text(water_kg, locale);
        writeln!(out, "\n{water} of water were poured in.")?;
    }
    write_before_use(&before_use, out, locale)?;
    writeln!(out)?;
    write_paragraph(out, "", &remark, WIDTH)?;
    if matches!(answer, Ok(Some(_))) {
        write_paragraph(out, "", wording::disclaimer(locale), WIDTH)?;
    }
    Ok(())
}

/// What the heap is and what was done with it.
fn write_history(
    keeping: &Keeping,
    heap: &Heap,
    locale: Locale,
    out: &mut impl Write,
) -> Result<(), Failure> {
    let now = heap.now();
    let since = |then| ago(then, keeping.edges.now, locale);
    writeln!(
        out,
        "{}: {}, {}",
        heap.name().unwrap_or_default(),
        now.stage.word(locale),
        now.cover.word(locale)
    )?;
    if let Some(enclosure) = heap.enclosure() {
        writeln!(out, "{}", enclosure_text(enclosure, locale))?;
    }
    writeln!(out)?;
    let mut rows = Vec::new();
    let times = |count: u32| match count {
        0 => String::new(),
        1 => "once".to_owned(),
        count => format!("{count} times"),
    };
    let mut row = |name: &str, then, count: String| {
        rows.push(vec![name.to_owned(), since(then), count]);
    };
    let started = now.started.as_ref().map(|started| started.moment);
    row("started", started, String::new());
    row("fed", now.last_fed, times(now.feeds));
    row("turned", now.last_turned, times(now.turns));
    row("watered", now.last_watered, String::new());
    row("looked at", now.last_read, String::new());
    row("harvested", now.last_harvested, times(now.harvests));
    write_rows(out, &rows)?;
    if let Some((happened, read)) = &now.last_probes {
        let line = wording::read_line(read, locale);
        let line = format!("Last probed {}: {line}.", since(Some(*happened)));
        writeln!(out)?;
        write_paragraph(out, "", &line, WIDTH)?;
    }
    Ok(())
}

fn enclosure_text(enclosure: &Enclosure, locale: Locale) -> String {
    let length = |length_m: f64| match locale.units {
        UnitSystem::Metric => format!("{}\u{a0}cm", significant(length_m * 100.0, 3)),
        // International inch: 0.0254 m exactly.
        UnitSystem::UsCustomary => format!("{}\u{a0}in", significant(length_m / 0.0254, 3)),
    };
    let depth_m = enclosure.depth_m.unwrap_or(enclosure.width_m);
    let size = match enclosure.shape {
        Shape::Box => format!(
            "{} wide, {} deep, {} high",
            length(enclosure.width_m),
            length(depth_m),
            length(enclosure.height_m)
        ),
        Shape::Drum => format!(
            "{} across, {} long",
            length(enclosure.width_m),
            length(enclosure.height_m)
        ),
        _ => format!(
            "{} across, {} high",
            length(enclosure.width_m),
            length(enclosure.height_m)
        ),
    };
    let mut text = format!("{}, {size}", enclosure.shape.word(locale));
    if let Some(wall) = enclosure.wall {
        text = format!("{text}, {}", wall.word(locale));
    }
    if let Some(ground) = enclosure.ground {
        text = format!("{text}, on {}", ground.word(locale));
    }
    text
}

fn stage(arguments: &HeapStageArguments, out: &mut impl Write) -> Result<(), Failure> {
    let mut keeping = Keeping::to_write(&arguments.record.journal)?;
    let (heap, word) = match arguments.words.as_slice() {
        [word] => (None, word),
        [heap, word, ..] => (Some(heap.as_str()), word),
        [] => return Err(Failure::Input("say active, curing or finished".to_owned())),
    };
    let rested = Rested {
        stage: chosen(word, "STAGE")?,
        heap: keeping.heap(heap)?,
    };
    record_and_tell(&mut keeping, &arguments.record, vec![rested.into()], out)
}

fn cover(arguments: &HeapCoverArguments, out: &mut impl Write) -> Result<(), Failure> {
    let mut keeping = Keeping::to_write(&arguments.record.journal)?;
    let covered = Covered {
        heap: keeping.heap(arguments.heap.as_deref())?,
        cover: optional(arguments.with.as_deref(), "--with")?,
    };
    record_and_tell(&mut keeping, &arguments.record, vec![covered.into()], out)
}

fn uncover(arguments: &HeapUncoverArguments, out: &mut impl Write) -> Result<(), Failure> {
    let mut keeping = Keeping::to_write(&arguments.record.journal)?;
    let uncovered = Uncovered {
        heap: keeping.heap(arguments.heap.as_deref())?,
    };
    record_and_tell(&mut keeping, &arguments.record, vec![uncovered.into()], out)
}

fn move_from(arguments: &HeapMoveArguments, out: &mut impl Write) -> Result<(), Failure> {
    let mut keeping = Keeping::to_write(&arguments.record.journal)?;
    let share = arguments
        .share
        .as_deref()
        .map(|text| share_pct(text, "--share"))
        .transpose()?;
    let moved = Moved {
        from: keeping.heap(Some(&arguments.from))?,
        to: keeping.heap(Some(&arguments.to))?,
        share_pct: share.filter(|share| *share < 100.0),
    };
    record_and_tell(&mut keeping, &arguments.record, vec![moved.into()], out)
}
