//! `heapwright feed`: what went on a heap, and what that did to its balance.

use std::io::Write;

use heapwright_answers::{MixQuestion, USUAL_TARGET, before_use, more_than_fits, what_is_in};
use heapwright_garden::{Found, FoundPart, Garden, Stuff, part_fed};
use heapwright_journal::content::Fed;
use heapwright_journal::{Content, EventId};
use heapwright_quantity::parse_parts;
use heapwright_state::{Contents, Share};
use heapwright_texts::Locale;
use heapwright_wire::{spoken_parts, vocabulary, water_kg};
use heapwright_wording as wording;

use crate::arguments::{FeedArguments, RecordArguments};
use crate::commands::mix::write_cautions;
use crate::failure::Failure;
use crate::input;
use crate::keeping::{Keeping, catalogue};
use crate::naming;
use crate::telling::{Besides, as_fed, tell};

/// Runs the command.
pub fn run(arguments: &FeedArguments, out: &mut impl Write) -> Result<(), Failure> {
    let mut keeping = Keeping::to_write(&arguments.record.journal)?;
    let garden = keeping.garden();
    let (heap, parts) = heap_and_parts(&keeping, &arguments.words);
    let typed = parts.join("; ");
    let parts = if parts.is_empty() && arguments.water.is_some() {
        Vec::new()
    } else {
        spoken_parts(catalogue(), &garden, &typed, "PARTS")?
    };
    let water_l = arguments
        .water
        .as_deref()
        .map(|text| water_kg(catalogue(), &garden, text, "--water"))
        .transpose()?
        // A litre of water weighs a kilogram.
        .filter(|water_l| *water_l > 0.0);
    if parts.is_empty() && water_l.is_none() {
        return Err(Failure::Input(
            "say what went in, such as \"1 caddy vegetable scraps\"".to_owned(),
        ));
    }
    // What cannot be weighed is refused here, with its part.
    let found = input::weighed(catalogue(), &garden, &parts, &typed)?;
    let heap = keeping.heap(heap)?;
    let missing = if arguments.from_stores {
        not_in_stores(&garden, &parts, &found, keeping.locale())
    } else {
        Vec::new()
    };
    let mut notices = missing;
    notices.extend(slip(&keeping, &garden, heap, &parts, water_l));
    let known: Vec<_> = found
        .iter()
        .filter_map(|found| found.material.as_ref())
        .collect();
    let mut besides = Besides {
        notices,
        ..Besides::default()
    };
    for material in &known {
        for caution in catalogue().cautions_for(material) {
            let line = wording::caution_line(caution);
            if !besides.cautions.contains(&line) {
                besides.cautions.push(line);
            }
        }
    }
    let fed = Fed {
        heap,
        parts: parts
            .iter()
            .map(|part| part_fed(part, arguments.from_stores))
            .collect(),
        water_l,
    };
    add_and_tell(
        &mut keeping,
        &arguments.record,
        heap,
        fed.into(),
        besides,
        out,
    )?;
    if !arguments.record.journal.json {
        write_cautions(catalogue(), found.iter(), out)?;
    }
    Ok(())
}

/// Writes down what went in and tells what it did to the balance of the heap, and what of it must be
/// seen to before the compost is used.
pub fn add_and_tell(
    keeping: &mut Keeping,
    arguments: &RecordArguments,
    heap: EventId,
    content: Content,
    mut besides: Besides,
    out: &mut impl Write,
) -> Result<(), Failure> {
    let garden = keeping.garden();
    let before = as_fed(&keeping.state, &garden, heap).ok().flatten();
    let ids = keeping.record(arguments, vec![content])?;
    besides.before = before;
    let events = ids.iter().filter_map(|id| keeping.state.entry(*id));
    let now_in = Contents {
        shares: events
            .filter_map(|entry| entry.counts().cloned())
            .map(|event| Share { event, share: 1.0 })
            .collect(),
        cut: false,
    };
    besides.before_use = before_use(catalogue(), &garden, &now_in);
    match as_fed(&keeping.state, &garden, heap) {
        Ok(after) => besides.after = after,
        Err(error) => besides
            .notices
            .push(format!("the balance of the heap cannot be told: {error}.")),
    }
    tell(keeping, &arguments.journal, &ids, &besides, out)
}

/// A sentence when all of it is more than the heap holds.
fn slip(
    keeping: &Keeping,
    garden: &Garden,
    heap: EventId,
    parts: &[Found],
    water_l: Option<f64>,
) -> Option<String> {
    let heap = keeping.state.heap(heap)?;
    let question = MixQuestion {
        parts: parts.to_vec(),
        water_kg: water_l.unwrap_or(0.0),
        target: USUAL_TARGET,
    };
    let fed = what_is_in(catalogue(), garden, &question).ok()?;
    let told = more_than_fits(heap.enclosure()?, fed.mixture.volume_m3?.value)?;
    let line = wording::told::more_than_fits(told, heap.name()?, keeping.locale());
    Some(format!("{line} `heapwright undo` takes it back."))
}

/// The heap, if the first word names one, and the parts.
fn heap_and_parts<'a>(keeping: &Keeping, words: &'a [String]) -> (Option<&'a str>, &'a [String]) {
    let [first, rest @ ..] = words else {
        return (None, words);
    };
    if naming::is_heap(&keeping.state, first) {
        return (Some(first), rest);
    }
    // What begins with a number is an amount, spelt right or not.
    let is_part = first.starts_with(|c: char| c.is_numeric() || "-+.\u{2212}".contains(c))
        || parse_parts(first, &vocabulary(catalogue())).is_ok();
    if is_part || rest.is_empty() {
        (None, words)
    } else {
        (Some(first), rest)
    }
}

/// A sentence for each material that the stores do not have as it was named.
fn not_in_stores(
    garden: &Garden,
    parts: &[Found],
    found: &[FoundPart],
    locale: Locale,
) -> Vec<String> {
    let is_there = |part: &Found| match &part.stuff {
        Stuff::Custom(_) => false,
        Stuff::Known {
            material,
            conditions,
            ..
        } => garden.stores.iter().any(|stock| {
            let mut one = stock.conditions.clone();
            let mut other = conditions.clone();
            one.sort_unstable();
            other.sort_unstable();
            stock.material == *material && one == other
        }),
    };
    parts
        .iter()
        .zip(found)
        .filter(|(part, _)| !is_there(part))
        .map(|(_, found)| {
            format!(
                "the stores have no {}, as far as the journal tells: see `heapwright stock list`.",
                wording::name_in_sentence(catalogue(), found, locale)
            )
        })
        .collect()
}
