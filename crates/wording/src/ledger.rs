//! Where are the nutrients? Names, rows and notes of the account.

use heapwright_answers::finish::Element;
use heapwright_answers::{BroughtBy, LABEL_OVER_ELEMENT, LedgerAnswer};
use heapwright_quantity::Interval;
use heapwright_texts::Locale;
use heapwright_texts::messages::ledger as texts;

use crate::ready::left_out_line;

/// Symbols of the elements, in the order of every list of the account.
#[must_use]
pub const fn element_symbol(element: Element) -> &'static str {
    match element {
        Element::Nitrogen => "N",
        Element::Phosphorus => "P",
        Element::Potassium => "K",
        Element::Calcium => "Ca",
        Element::Magnesium => "Mg",
    }
}

/// What labels name in its place.
#[must_use]
pub const fn label_symbol(element: Element) -> &'static str {
    match element {
        Element::Nitrogen => "N",
        Element::Phosphorus => "P2O5",
        Element::Potassium => "K2O",
        Element::Calcium => "CaO",
        Element::Magnesium => "MgO",
    }
}

/// Grams with two digits; "?" where nothing is known.
/// Less than this is told as less: nobody spreads by it, and its digits would run into the next column [g].
const LEAST_G: f64 = 0.01;

fn grams(mass_kg: Option<f64>, locale: Locale) -> String {
    match mass_kg.map(|mass| mass * 1000.0) {
        None => "?".to_owned(),
        Some(grams) if grams > 0.0 && grams < LEAST_G => {
            format!("<{}", locale.decimals(LEAST_G, 2, 2))
        }
        Some(grams) => locale.significant(grams, 2),
    }
}

/// The longest name that leaves room for five columns on 80.
const NAME_LETTERS: usize = 30;

fn short(name: &str) -> String {
    if name.chars().count() <= NAME_LETTERS {
        return name.to_owned();
    }
    let cut: String = name.chars().take(NAME_LETTERS - 1).collect();
    format!("{}…", cut.trim_end())
}

/// So many materials are named; a longer table tells less.
const MOST_NAMED: usize = 12;

/// Materials that are named, and those that are added up: named are those that brought the largest
/// share of any element.
fn named_and_others(answer: &LedgerAnswer) -> (Vec<&BroughtBy>, Vec<&BroughtBy>) {
    let largest_share = |source: &BroughtBy| {
        source
            .brought_kg
            .iter()
            .zip(&answer.accounts.elements)
            .filter_map(|(brought, account)| {
                let fed_kg = account.as_ref()?.fed_kg.value;
                (fed_kg > 0.0).then_some((*brought)?.value / fed_kg)
            })
            .fold(0.0, f64::max)
    };
    let mut named: Vec<&BroughtBy> = answer.sources.iter().collect();
    // Sorting keeps the order of names among equals.
    named.sort_by(|one, other| largest_share(other).total_cmp(&largest_share(one)));
    let others = named.split_off(MOST_NAMED.min(named.len()));
    named.sort_by(|one, other| one.name.cmp(&other.name));
    (named, others)
}

/// The account in grams, as rows with a head: what each material brought, what left, what is there.
/// Materials of which not all is known stand below the rest, under a row of one cell.
#[must_use]
pub fn ledger_rows(answer: &LedgerAnswer, locale: Locale) -> Vec<Vec<String>> {
    rows_named(answer, false, short, locale)
}

/// The same account with whole names, as elements or as labels name them.
#[must_use]
pub fn account_rows(answer: &LedgerAnswer, as_labels: bool, locale: Locale) -> Vec<Vec<String>> {
    rows_named(answer, as_labels, str::to_owned, locale)
}

fn rows_named(
    answer: &LedgerAnswer,
    as_labels: bool,
    name: fn(&str) -> String,
    locale: Locale,
) -> Vec<Vec<String>> {
    let (head, symbol, over_element): (_, fn(Element) -> &'static str, _) = if as_labels {
        (texts::head_labels(locale), label_symbol, LABEL_OVER_ELEMENT)
    } else {
        (
            texts::head_elements(locale),
            element_symbol,
            [1.0; LABEL_OVER_ELEMENT.len()],
        )
    };
    let elements = &answer.accounts.elements;
    let grams = |mass_kg: Option<f64>| grams(mass_kg, locale);
    let row = |name: &str, of: &dyn Fn(usize) -> String| {
        let mut row = vec![name.to_owned()];
        row.extend((0..elements.len()).map(of));
        row
    };
    let account = |index: usize, of: fn(&heapwright_answers::finish::ElementAccount) -> f64| {
        elements[index]
            .as_ref()
            .map(|account| of(account) * over_element[index])
    };
    let mut rows = vec![row(head, &|index| symbol(Element::ALL[index]).to_owned())];
    let brought = |source: &BroughtBy| {
        row(&name(&source.name), &|index| {
            grams(source.brought_kg[index].map(|mass| mass.value * over_element[index]))
        })
    };
    let (named, others) = named_and_others(answer);
    let (whole, in_part): (Vec<&BroughtBy>, Vec<&BroughtBy>) = named
        .into_iter()
        .partition(|source| source.brought_kg.iter().all(Option::is_some));
    rows.extend(whole.into_iter().map(brought));
    if !in_part.is_empty() {
        rows.push(vec![texts::not_all_known(locale).to_owned()]);
    }
    rows.extend(in_part.into_iter().map(brought));
    if !others.is_empty() {
        let name = texts::OthersTogether {
            count: others.len() as f64,
        }
        .said(locale);
        rows.push(row(&name, &|index| {
            let known = others.iter().filter_map(|source| source.brought_kg[index]);
            grams(
                known
                    .map(|mass| mass.value * over_element[index])
                    .reduce(|one, other| one + other),
            )
        }));
    }
    rows.push(row(texts::went_in(locale), &|index| {
        grams(account(index, |account| account.fed_kg.value))
    }));
    rows.push(row(texts::left_as_gas(locale), &|index| {
        grams(account(index, |account| account.gas_kg.value))
    }));
    rows.push(row(texts::washed_out(locale), &|index| {
        grams(account(index, |account| account.leached_kg.value))
    }));
    rows.push(row(texts::is_there(locale), &|index| {
        grams(account(index, |account| account.now_kg.value))
    }));
    rows.push(row(texts::at_least(locale), &|index| {
        grams(account(index, |account| account.now_kg.low))
    }));
    rows.push(row(texts::at_most(locale), &|index| {
        grams(account(index, |account| account.now_kg.high))
    }));
    rows.push(row(texts::per_litre(locale), &|index| {
        grams(account(index, |account| account.now_kg_m3.value / 1000.0))
    }));
    rows
}

/// The same as labels name it: whole heap and a litre, with a head.
#[must_use]
pub fn label_rows(answer: &LedgerAnswer, locale: Locale) -> Vec<Vec<String>> {
    let elements = &answer.accounts.elements;
    let grams = |mass_kg: Option<f64>| grams(mass_kg, locale);
    let row = |name: &str, of: &dyn Fn(usize) -> String| {
        let mut row = vec![name.to_owned()];
        row.extend((0..elements.len()).map(of));
        row
    };
    vec![
        row(texts::head_labels(locale), &|index| {
            label_symbol(Element::ALL[index]).to_owned()
        }),
        row(texts::is_there(locale), &|index| {
            grams(elements[index].map(|found| found.now_kg.value * LABEL_OVER_ELEMENT[index]))
        }),
        row(texts::per_litre(locale), &|index| {
            grams(
                elements[index]
                    .map(|found| found.now_kg_m3.value / 1000.0 * LABEL_OVER_ELEMENT[index]),
            )
        }),
    ]
}

/// What a laboratory's figures make of it, and what the simulation says, with a head; `None` when
/// there is neither.
#[must_use]
pub fn beside_rows(answer: &LedgerAnswer, locale: Locale) -> Option<Vec<Vec<String>>> {
    if answer.laboratory.is_none() && answer.simulated.is_none() {
        return None;
    }
    let mut head = vec![texts::head_beside(locale).to_owned()];
    head.extend(Element::ALL.map(|element| element_symbol(element).to_owned()));
    let mut rows = vec![head];
    if answer.laboratory.is_some() {
        let mut row = vec![texts::measured_by_laboratory(locale).to_owned()];
        row.extend(answer.accounts.elements.iter().map(|account| {
            let measured = account.and_then(|account| account.measured_kg);
            grams(measured.map(|mass: Interval| mass.value), locale)
        }));
        rows.push(row);
    }
    if let Some(today) = &answer.simulated {
        let mut row = vec![texts::simulated(locale).to_owned()];
        // What is known of no material is nothing to the simulation.
        row.extend(
            today
                .now_kg
                .iter()
                .map(|mass| grams((*mass > 0.0).then_some(*mass), locale)),
        );
        rows.push(row);
    }
    Some(rows)
}

/// What to know about the account, as sentences.
#[must_use]
pub fn ledger_lines(answer: &LedgerAnswer, locale: Locale) -> Vec<String> {
    let mut lines = vec![texts::how_nutrients_go(locale).to_owned()];
    let (named, others) = named_and_others(answer);
    if !others.is_empty() {
        let line = texts::NamedMaterials {
            named: named.len() as f64,
            all: answer.sources.len() as f64,
        };
        lines.push(line.said(locale));
    }
    let shares: Vec<String> = Element::ALL
        .into_iter()
        .zip(&answer.accounts.elements)
        .filter_map(|(element, account)| {
            let share = account.map_or(0.0, |account| account.known_share);
            (share < 0.995).then(|| {
                texts::KnownShare {
                    element: element_symbol(element),
                    percent: share * 100.0,
                }
                .said(locale)
            })
        })
        .collect();
    if !shares.is_empty() {
        let shares = locale.list(&shares);
        lines.push(texts::KnownInPart { shares: &shares }.said(locale));
    }
    if answer.taken_kg[0] > 1e-6 {
        let taken: Vec<String> = Element::ALL
            .into_iter()
            .zip(answer.taken_kg)
            .map(|(element, mass)| {
                texts::GramsOfElement {
                    element: element_symbol(element),
                    grams: &grams(Some(mass), locale),
                }
                .said(locale)
            })
            .collect();
        let taken = locale.list(&taken);
        lines.push(texts::TakenAway { taken: &taken }.said(locale));
    }
    let apart: Vec<&str> = Element::ALL
        .into_iter()
        .zip(&answer.accounts.elements)
        .filter_map(|(element, account)| {
            let account = account.as_ref()?;
            let measured = account.measured_kg?;
            let meets = measured.low <= account.now_kg.high && measured.high >= account.now_kg.low;
            (!meets).then(|| element_symbol(element))
        })
        .collect();
    if !apart.is_empty() {
        let elements = locale.list(&apart);
        let line = texts::LaboratoryApart {
            elements: &elements,
        };
        lines.push(line.said(locale));
    }
    if answer.accounts.ash_too_low {
        lines.push(texts::ash_too_low(locale).to_owned());
    }
    if answer.accounts.soil_likely {
        lines.push(texts::soil_likely(locale).to_owned());
    }
    if answer.cut {
        lines.push(texts::not_followed(locale).to_owned());
    }
    lines.extend(left_out_line(&answer.left_out, locale));
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_next_to_nothing_is_told_as_less() {
        let said = |in_grams: f64| grams(Some(in_grams / 1000.0), Locale::default());
        assert_eq!(
            [said(0.0), said(1.8e-8), said(0.0123), said(27.0)],
            ["0", "<0.01", "0.012", "27"]
        );
        assert_eq!(grams(None, Locale::default()), "?");
    }
}
