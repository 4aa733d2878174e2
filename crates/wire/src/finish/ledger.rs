//! Where are the nutrients? The account as JSON.

use heapwright_answers::finish::{Element, ElementAccount};
use heapwright_answers::{BroughtBy, LABEL_OVER_ELEMENT, LedgerAnswer};
use heapwright_state::State;
use heapwright_wording as wording;
#[cfg(feature = "schema")]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::TodayJson;
use crate::ENGLISH;
use crate::answer::FigureJson;

/// What `heapwright ledger` answers.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct LedgerJson {
    /// Id of the heap.
    pub heap: String,
    /// Its name.
    pub name: String,
    /// What the clock said.
    pub now: String,
    /// What each material brought of what is there.
    pub sources: Vec<SourceJson>,
    /// Where each element is; those that are known in no material are left out.
    pub elements: Vec<ElementJson>,
    /// Dry matter that is there [kg].
    pub dry_mass_kg: FigureJson,
    /// Wet mass that is there [kg].
    pub wet_mass_kg: FigureJson,
    /// Volume [L].
    pub volume_l: FigureJson,
    /// Ash, percent of dry matter.
    pub ash_pct_dry: FigureJson,
    /// Organic matter gone, percent of that put in.
    pub organic_loss_pct: FigureJson,
    /// When a laboratory told what is in it; null when none did.
    pub laboratory: Option<String>,
    /// What the simulation says; null when it was not asked for or could not be had.
    pub simulated: Option<TodayJson>,
    /// What to know about it, as sentences.
    pub notices: Vec<String>,
}

/// What one material brought.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct SourceJson {
    /// Its name.
    pub name: String,
    /// Nitrogen [kg].
    pub nitrogen_kg: FigureJson,
    /// Phosphorus [kg].
    pub phosphorus_kg: FigureJson,
    /// Potassium [kg].
    pub potassium_kg: FigureJson,
    /// Calcium [kg].
    pub calcium_kg: FigureJson,
    /// Magnesium [kg].
    pub magnesium_kg: FigureJson,
}

/// Where one element is: what went in is what is there and what left, to 1e-9.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct ElementJson {
    /// "N", "P", "K", "Ca" or "Mg".
    pub element: String,
    /// What went in [kg].
    pub fed_kg: FigureJson,
    /// What left as gas [kg].
    pub gas_kg: FigureJson,
    /// What was washed out [kg].
    pub leached_kg: FigureJson,
    /// What is there [kg].
    pub now_kg: FigureJson,
    /// The same in a litre [g/L].
    pub now_g_l: FigureJson,
    /// The same, percent of dry matter.
    pub now_pct_dry: FigureJson,
    /// What labels name: "N", "P2O5", "K2O", "CaO" or "MgO".
    pub label: String,
    /// What is there, as labels name it [kg].
    pub now_as_label_kg: FigureJson,
    /// By the laboratory's figure and the dry matter that is there [kg].
    pub measured_kg: FigureJson,
    /// Harvested or moved away since the heap was last empty, as it went in; not in the account [kg].
    pub taken_kg: f64,
    /// Share of the dry matter put in for which it is known, percent.
    pub known_pct: f64,
    /// What went in less what is accounted for, over what went in.
    pub closure: f64,
}

/// The answer as JSON.
#[must_use]
pub fn ledger_json(state: &State, answer: &LedgerAnswer) -> LedgerJson {
    let accounts = &answer.accounts;
    LedgerJson {
        heap: answer.heap.to_string(),
        name: wording::heap_name(state, answer.heap, ENGLISH).to_owned(),
        now: answer.now.to_string(),
        sources: answer.sources.iter().map(source_json).collect(),
        elements: Element::ALL
            .into_iter()
            .enumerate()
            .filter_map(|(index, element)| {
                let account = accounts.elements[index].as_ref()?;
                Some(element_json(
                    element,
                    index,
                    account,
                    answer.taken_kg[index],
                ))
            })
            .collect(),
        dry_mass_kg: FigureJson::of(accounts.dry_kg, 1.0),
        wet_mass_kg: FigureJson::of(accounts.wet_kg, 1.0),
        volume_l: FigureJson::of(accounts.volume_m3, 1000.0),
        ash_pct_dry: FigureJson::of(accounts.ash_dry_basis, 100.0),
        organic_loss_pct: FigureJson::of(accounts.organic_loss, 100.0),
        laboratory: answer.laboratory.map(|at| at.to_string()),
        simulated: answer.simulated.as_ref().map(TodayJson::of),
        notices: wording::ledger_lines(answer, ENGLISH),
    }
}

fn source_json(source: &BroughtBy) -> SourceJson {
    let [
        nitrogen_kg,
        phosphorus_kg,
        potassium_kg,
        calcium_kg,
        magnesium_kg,
    ] = source.brought_kg.map(|mass| FigureJson::maybe(mass, 1.0));
    SourceJson {
        name: source.name.clone(),
        nitrogen_kg,
        phosphorus_kg,
        potassium_kg,
        calcium_kg,
        magnesium_kg,
    }
}

fn element_json(
    element: Element,
    index: usize,
    account: &ElementAccount,
    taken_kg: f64,
) -> ElementJson {
    ElementJson {
        element: wording::element_symbol(element).to_owned(),
        fed_kg: FigureJson::of(account.fed_kg, 1.0),
        gas_kg: FigureJson::of(account.gas_kg, 1.0),
        leached_kg: FigureJson::of(account.leached_kg, 1.0),
        now_kg: FigureJson::of(account.now_kg, 1.0),
        // A kilogram in a cubic metre is a gram in a litre.
        now_g_l: FigureJson::of(account.now_kg_m3, 1.0),
        now_pct_dry: FigureJson::of(account.now_dry_basis, 100.0),
        label: wording::label_symbol(element).to_owned(),
        now_as_label_kg: FigureJson::of(account.now_kg, LABEL_OVER_ELEMENT[index]),
        measured_kg: FigureJson::maybe(account.measured_kg, 1.0),
        taken_kg,
        known_pct: account.known_share * 100.0,
        closure: account.closure,
    }
}
