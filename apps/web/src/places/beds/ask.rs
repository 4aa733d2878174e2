//! What is asked of the plan: how much compost, of which heap, for which beds.

use heapwright_answers::spreading::Maturity;
use heapwright_answers::{
    BedsAnswer, BedsQuestion, beds_of_journal, beds_plan, compost_of_heap, compost_of_tables,
};
use heapwright_garden::Garden;
use heapwright_journal::{EventId, Moment};
use heapwright_quantity::Amount;
use heapwright_state::State;
use heapwright_terms::PartAmount;
use heapwright_wording::{beds_on_the_page as words, found_refusal, question_refusal};

use crate::language;

/// The question as it was put; it is answered anew when the journal changes.
#[derive(Clone, Debug, PartialEq)]
pub struct Asked {
    /// The heap whose compost it is; `None` for compost of which nothing is known.
    pub heap: Option<EventId>,
    /// How much there is, when it was entered.
    pub amount: Option<Amount>,
    /// Is it mature? `None` to go by the tests.
    pub maturity: Option<Maturity>,
    /// Did raw manure or the like go in? `None` to go by the journal.
    pub held_raw: Option<bool>,
    /// Did something go in that never goes on food beds, whatever the journal says?
    pub never_on_food_beds: bool,
    /// The beds.
    pub beds: Vec<BedChosen>,
}

/// A bed that is to get some.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BedChosen {
    /// Which one.
    pub id: EventId,
    /// True when something is sown or planted there soon.
    pub sown_soon: bool,
    /// Days until the harvest.
    pub harvest_in_days: Option<f64>,
}

/// Answers it from a journal; the error is a sentence.
pub fn answered(
    asked: &Asked,
    garden: &Garden,
    state: &State,
    now: Moment,
) -> Result<BedsAnswer, String> {
    let (catalogue, spreading) = (language::catalogue(), language::spreading());
    let locale = language::locale();
    let (mut compost, mut volume_m3, mut volume_is_estimated) =
        (compost_of_tables(spreading), None, false);
    if let Some(heap) = asked.heap {
        let found = compost_of_heap(catalogue, spreading, garden, state, heap, now)
            .map_err(|error| question_refusal(&error, locale))?;
        compost = found.compost;
        volume_m3 = found.volume_m3;
        volume_is_estimated = found.is_estimated;
    }
    if let Some(amount) = &asked.amount {
        let density = compost.compost.bulk_density_kg_m3.typical;
        volume_m3 = match garden.part_amount(catalogue, amount) {
            Ok(PartAmount::VolumeM3 { count, each_m3, .. }) => Some(count * each_m3.typical),
            Ok(PartAmount::MassKg(mass_kg)) => Some(mass_kg / density),
            Err(error) => return Err(found_refusal(&error, locale)),
        };
        volume_is_estimated = false;
    }
    let volume_m3 = volume_m3.ok_or_else(|| words::no_compost_said(locale).to_owned())?;
    if let Some(maturity) = asked.maturity {
        compost.maturity = maturity;
    }
    compost.held_raw = asked.held_raw.or(compost.held_raw);
    compost.off_food.is_off |= asked.never_on_food_beds;
    // Both lists have the beds that were described, in the order of the state.
    let described = beds_of_journal(catalogue, spreading, garden, state, now);
    let beds = state
        .beds()
        .zip(described)
        .filter_map(|(bed, mut asked_bed)| {
            let chosen = asked.beds.iter().find(|chosen| chosen.id == bed.id)?;
            asked_bed.sown_in_days = chosen.sown_soon.then_some(0.0);
            asked_bed.harvest_in_days = chosen.harvest_in_days;
            Some(asked_bed)
        })
        .collect::<Vec<_>>();
    if beds.is_empty() {
        return Err(words::no_bed_ticked(locale).to_owned());
    }
    let question = BedsQuestion {
        beds,
        compost,
        volume_m3,
        volume_is_estimated,
    };
    beds_plan(spreading, &question).map_err(|error| question_refusal(&error, locale))
}
