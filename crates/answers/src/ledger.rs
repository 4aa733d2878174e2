//! Where are the nutrients of this heap? By source what went in, what left as gas and with water,
//! what is there; beside it, apart, a laboratory's figures and the simulation's.

use heapwright_catalogue::Catalogue;
use heapwright_engine::finish::accounts::{Accounts, ELEMENTS, accounts};
use heapwright_garden::Garden;
use heapwright_journal::{EventId, Moment};
use heapwright_quantity::Interval;
use heapwright_state::State;

use crate::forecast::{Today, today};
use crate::lots::{Lots, Until, inside};
use crate::question::{QuestionError, SEED};
use crate::yields::{known, last_laboratory};
use crate::{
    CALCIUM_OXIDE_OVER_CALCIUM, MAGNESIUM_OXIDE_OVER_MAGNESIUM, PHOSPHATE_OVER_PHOSPHORUS,
    POTASH_OVER_POTASSIUM,
};

/// The question: where are the nutrients of this heap?
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LedgerQuestion {
    /// Which heap.
    pub heap: EventId,
    /// What the clock says.
    pub now: Moment,
    /// Whether the heap is simulated beside the account, which may take a second.
    pub simulate: bool,
}

/// What one material brought of what is there.
#[derive(Clone, Debug, PartialEq)]
pub struct BroughtBy {
    /// Name to show.
    pub name: String,
    /// Nitrogen, phosphorus, potassium, calcium, magnesium [kg]; `None` where it is not known.
    pub brought_kg: [Option<Interval>; ELEMENTS],
}

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct LedgerAnswer {
    /// Which heap.
    pub heap: EventId,
    /// What the clock says.
    pub now: Moment,
    /// What each material brought, by name.
    pub sources: Vec<BroughtBy>,
    /// What was harvested or moved away of what came in since the heap was last empty, as it went
    /// in [kg].
    pub taken_kg: [f64; ELEMENTS],
    /// The account of what is there.
    pub accounts: Accounts,
    /// When a laboratory told what is in it.
    pub laboratory: Option<Moment>,
    /// What the simulation says, when it was asked for and could be had.
    pub simulated: Option<Today>,
    /// What cannot be used, by name.
    pub left_out: Vec<String>,
    /// True when some of it came over more moves than are followed.
    pub cut: bool,
}

/// Mass of the oxide that a label names over that of the element, in the order of the elements;
/// nitrogen stands as it is.
pub const LABEL_OVER_ELEMENT: [f64; ELEMENTS] = [
    1.0,
    PHOSPHATE_OVER_PHOSPHORUS,
    POTASH_OVER_POTASSIUM,
    CALCIUM_OXIDE_OVER_CALCIUM,
    MAGNESIUM_OXIDE_OVER_MAGNESIUM,
];

/// Keeps account of a heap's nutrients.
///
/// # Errors
///
/// When nothing that can be used lies in the heap.
pub fn where_nutrients_are(
    catalogue: &Catalogue,
    garden: &Garden,
    state: &State,
    question: &LedgerQuestion,
) -> Result<LedgerAnswer, QuestionError> {
    let LedgerQuestion { heap, now, .. } = *question;
    let there = inside(state, heap, Until::Instant(now.instant_ms));
    let lots = Lots::of(catalogue, garden, state, &there, now.instant_ms);
    let known = known(state, heap, &there, now);
    let accounts = accounts(&lots.by_age(), lots.water_kg, &known, SEED)
        .ok_or(QuestionError::NothingInHeap)?;
    let mut taken_kg = [0.0; ELEMENTS];
    let mut sources: Vec<BroughtBy> = Vec::new();
    for (source, brought) in lots.sources.iter().zip(&accounts.brought_kg) {
        for (taken, brought) in taken_kg.iter_mut().zip(brought) {
            *taken += brought.map_or(0.0, |mass| mass.value) * source.taken_over_left;
        }
        let name = &source.found.name;
        match sources.iter_mut().find(|other| other.name == *name) {
            Some(other) => {
                for (sum, more) in other.brought_kg.iter_mut().zip(brought) {
                    *sum = together(*sum, *more);
                }
            }
            None => sources.push(BroughtBy {
                name: name.clone(),
                brought_kg: *brought,
            }),
        }
    }
    sources.sort_by(|one, other| one.name.cmp(&other.name));
    Ok(LedgerAnswer {
        heap,
        now,
        sources,
        taken_kg,
        laboratory: last_laboratory(&there)
            .filter(|_| known.measured.iter().any(Option::is_some))
            .map(|(at, _)| at),
        accounts,
        simulated: if question.simulate {
            today(catalogue, garden, state, heap, now).ok()
        } else {
            None
        },
        left_out: lots.left_out,
        cut: lots.cut,
    })
}

/// The same stuff in two amounts or conditions: it varies as one, so ends add to ends.
fn together(one: Option<Interval>, other: Option<Interval>) -> Option<Interval> {
    match (one, other) {
        (Some(one), Some(other)) => Some(Interval {
            value: one.value + other.value,
            low: one.low + other.low,
            high: one.high + other.high,
        }),
        (one, None) => one,
        (None, other) => other,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn us_01_us_02_and_us_03_labels() {
        // US-01, derived from atomic masses.
        assert!((LABEL_OVER_ELEMENT[1] - 2.2913).abs() < 5e-5);
        assert!((LABEL_OVER_ELEMENT[2] - 1.2046).abs() < 5e-5);
        // US-02: 0.59 % P, the average of 1,600 compost samples; the laboratory printed 1.34.
        assert!((0.59 * LABEL_OVER_ELEMENT[1] / 1.352 - 1.0).abs() < 0.01);
        // US-03: Spanish household bins, 2.1-0.6-2.5 as elements.
        let label = [2.1, 0.6, 2.5]
            .iter()
            .zip(LABEL_OVER_ELEMENT)
            .map(|(pct, over)| pct * over);
        for (found, printed) in label.zip([2.1, 1.37, 3.01]) {
            assert!((found / printed - 1.0).abs() < 0.01, "{found} {printed}");
        }
    }
}
