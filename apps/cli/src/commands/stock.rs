//! `heapwright stock`: what is put by, used and counted.

use std::io::Write;

use heapwright_garden::{Found, Garden, Stuff};
use heapwright_journal::content::{StockCounted, StockPutBy, StockUsed};
use heapwright_journal::{AmountSaid, Content};
use heapwright_wire::{StoresJson, spoken_amount, spoken_material, spoken_parts, stores_json};

use crate::arguments::{
    StockCommand, StockCountArguments, StockPutArguments, StockUseArguments, ViewArguments,
};
use crate::failure::Failure;
use crate::input;
use crate::keeping::{Keeping, catalogue};
use crate::table::write_rows;
use crate::telling::{amount_text, record_and_tell, write_invented, write_json};

/// Runs the command.
pub fn run(command: &StockCommand, out: &mut impl Write) -> Result<(), Failure> {
    match command {
        StockCommand::Put(arguments) => put(arguments, out),
        StockCommand::Use(arguments) => take(arguments, out),
        StockCommand::Count(arguments) => count(arguments, out),
        StockCommand::List(arguments) => list(arguments, out),
    }
}

/// The parts, each as material, conditions and amount.
fn parts(
    garden: &Garden,
    texts: &[String],
) -> Result<Vec<(String, Vec<String>, AmountSaid)>, Failure> {
    let typed = texts.join("; ");
    let parts = spoken_parts(catalogue(), garden, &typed, "PARTS")?;
    input::weighed(catalogue(), garden, &parts, &typed)?;
    parts
        .into_iter()
        .map(|part: Found| {
            let amount = AmountSaid::from(&part.amount);
            match part.stuff {
                Stuff::Known {
                    material,
                    conditions,
                    ..
                } => Ok((material.as_str().to_owned(), conditions, amount)),
                Stuff::Custom(custom) => Err(Failure::Input(format!(
                    "\"{}\" cannot be put by: define it with `heapwright material define`",
                    custom.name
                ))),
            }
        })
        .collect()
}

fn put(arguments: &StockPutArguments, out: &mut impl Write) -> Result<(), Failure> {
    let mut keeping = Keeping::to_write(&arguments.record.journal)?;
    let scoop = arguments
        .scoop
        .as_deref()
        .map(|text| spoken_amount(catalogue(), text, "--scoop"))
        .transpose()?;
    let contents: Vec<Content> = parts(&keeping.garden(), &arguments.parts)?
        .into_iter()
        .map(|(material, conditions, amount)| {
            StockPutBy {
                material,
                conditions,
                amount,
                scoop: scoop.as_ref().map(AmountSaid::from),
            }
            .into()
        })
        .collect();
    record_and_tell(&mut keeping, &arguments.record, contents, out)
}

fn take(arguments: &StockUseArguments, out: &mut impl Write) -> Result<(), Failure> {
    let mut keeping = Keeping::to_write(&arguments.record.journal)?;
    let heap = arguments
        .heap
        .as_deref()
        .map(|text| keeping.heap(Some(text)))
        .transpose()?;
    let contents: Vec<Content> = parts(&keeping.garden(), &arguments.parts)?
        .into_iter()
        .map(|(material, conditions, amount)| {
            StockUsed {
                material,
                conditions,
                amount,
                heap,
            }
            .into()
        })
        .collect();
    record_and_tell(&mut keeping, &arguments.record, contents, out)
}

fn count(arguments: &StockCountArguments, out: &mut impl Write) -> Result<(), Failure> {
    let mut keeping = Keeping::to_write(&arguments.record.journal)?;
    let garden = keeping.garden();
    let mut contents: Vec<Content> = Vec::new();
    if !arguments.parts.is_empty() {
        contents.extend(parts(&garden, &arguments.parts)?.into_iter().map(
            |(material, conditions, amount)| {
                Content::from(StockCounted {
                    material,
                    conditions,
                    amount: Some(amount),
                })
            },
        ));
    }
    for text in &arguments.none {
        let (material, conditions) = spoken_material(catalogue(), &garden, text, "--none")?;
        contents.push(
            StockCounted {
                material: material.as_str().to_owned(),
                conditions,
                amount: None,
            }
            .into(),
        );
    }
    record_and_tell(&mut keeping, &arguments.record, contents, out)
}

fn list(arguments: &ViewArguments, out: &mut impl Write) -> Result<(), Failure> {
    let keeping = Keeping::to_read(&arguments.journal)?;
    let garden = keeping.garden();
    let stores = stores_json(catalogue(), &garden);
    if arguments.journal.json {
        return write_json(
            &StoresJson {
                journal: keeping.shown_path(),
                stores,
            },
            out,
        );
    }
    write_invented(&keeping.state, out)?;
    if garden.stores.is_empty() {
        writeln!(
            out,
            "Nothing is put by, as far as the journal tells: write it down with `heapwright stock put`."
        )?;
        return Ok(());
    }
    let locale = keeping.locale();
    let mut rows = Vec::new();
    for (stock, told) in garden.stores.iter().zip(stores) {
        let conditions: Vec<&str> = stock
            .conditions
            .iter()
            .filter_map(|id| catalogue().condition(id))
            .map(|condition| condition.name.as_str())
            .collect();
        let name = if conditions.is_empty() {
            told.name
        } else {
            format!("{} ({})", told.name, conditions.join(", "))
        };
        rows.push(vec![
            stock
                .amount
                .as_ref()
                .map_or_else(|| "plenty".to_owned(), |amount| amount_text(amount, locale)),
            name,
            format!("{} at a time", amount_text(&stock.scoop, locale)),
        ]);
    }
    write_rows(out, &rows)?;
    Ok(())
}
