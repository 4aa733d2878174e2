//! What is left of what went in, and where is each nutrient? One account for all of it.
//!
//! Ash neither rots nor evaporates: it is what compost is measured by. From what went in, lot by
//! lot, the ash stays and of the organic matter as much as microbes leave. Where a laboratory told
//! the ash of the compost, the dry matter follows from the balance
//!
//! ```text
//! dry matter left = dry matter put in x ash put in / ash of the compost (shares of dry matter)
//! ```
//!
//! Phosphorus, calcium and magnesium stay; potassium may be washed out; nitrogen leaves as gas and
//! is washed out, the more the closer the C:N. All sums are made over 1,024 draws of all ranges,
//! and in every draw what went in is what is left and lost.

mod drawn;
mod rates;

use heapwright_quantity::{Interval, Range};
use heapwright_terms::Part;

use crate::mixture::{self, DRAWS, Totals, UnitDraws};
use drawn::Drawn;
use rates::Rates;

/// Something that went in, and how far it has come.
#[derive(Clone, Debug, PartialEq)]
pub struct Lot {
    /// What and how much.
    pub part: Part,
    /// How much of what it will lose is lost, 0 (fresh) to 1 (finished).
    pub progress: f64,
}

/// What is known of the heap beyond what went in; what is `None` is taken as usual.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Known {
    /// Ash, share of dry matter [kg/kg], measured.
    pub ash_dry_basis: Option<Range>,
    /// Moisture, wet basis [kg/kg], measured or felt.
    pub moisture_wet_basis: Option<Range>,
    /// Volume [m3], measured.
    pub volume_m3: Option<Range>,
    /// Share of the volume that passes the sieve.
    pub sieved_share: Option<Range>,
    /// Shares of nitrogen, phosphorus, potassium, calcium and magnesium in dry matter, measured.
    pub measured: [Option<Range>; ELEMENTS],
    /// True when rain falls on it.
    pub rained_on: bool,
}

/// The elements that are kept account of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Element {
    /// Nitrogen.
    Nitrogen,
    /// Phosphorus.
    Phosphorus,
    /// Potassium.
    Potassium,
    /// Calcium.
    Calcium,
    /// Magnesium.
    Magnesium,
}

/// How many there are.
pub const ELEMENTS: usize = 5;

impl Element {
    /// All, in the order of every list here.
    pub const ALL: [Self; ELEMENTS] = [
        Self::Nitrogen,
        Self::Phosphorus,
        Self::Potassium,
        Self::Calcium,
        Self::Magnesium,
    ];
}

/// Where one element is. At typical values and in every draw
/// `fed = gas + leached + now`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ElementAccount {
    /// What went in [kg].
    pub fed_kg: Interval,
    /// What left as gas [kg].
    pub gas_kg: Interval,
    /// What was washed out [kg].
    pub leached_kg: Interval,
    /// What is there [kg].
    pub now_kg: Interval,
    /// The same by volume [kg/m3].
    pub now_kg_m3: Interval,
    /// The same on dry matter [kg/kg].
    pub now_dry_basis: Interval,
    /// By the laboratory's figure and the dry matter that is there [kg].
    pub measured_kg: Option<Interval>,
    /// Share of the dry matter put in for which the element is known, 0 to 1.
    pub known_share: f64,
    /// What went in less what is accounted for, over what went in: rounding alone.
    pub closure: f64,
}

/// The whole account.
#[derive(Clone, Debug, PartialEq)]
pub struct Accounts {
    /// Wet mass put in, water included [kg].
    pub fed_wet_kg: Interval,
    /// Dry matter put in [kg].
    pub fed_dry_kg: Interval,
    /// Ash put in, which is the ash that is there [kg].
    pub ash_kg: Interval,
    /// Dry matter that is there [kg].
    pub dry_kg: Interval,
    /// Ash of it [kg/kg].
    pub ash_dry_basis: Interval,
    /// Organic matter gone, of that put in [kg/kg].
    pub organic_loss: Interval,
    /// Wet mass that is there [kg].
    pub wet_kg: Interval,
    /// Volume [m3].
    pub volume_m3: Interval,
    /// What passes the sieve [m3].
    pub sieved_m3: Interval,
    /// What the sieve holds back [m3].
    pub overs_m3: Interval,
    /// Carbon that is there, elemental [kg].
    pub carbon_kg: Interval,
    /// What each lot brought of each element [kg], in the order of the question; `None` where the
    /// element is not known in it.
    pub brought_kg: Vec<[Option<Interval>; ELEMENTS]>,
    /// Where each element is; `None` where it is known in no lot.
    pub elements: [Option<ElementAccount>; ELEMENTS],
    /// True when the measured ash is lower than what went in allows, so that the dry matter put in
    /// was taken; the figures do not fit each other.
    pub ash_too_low: bool,
    /// True when the measured ash would mean that hardly any organic matter is left: soil came in.
    pub soil_likely: bool,
}

/// A measured ash that leaves less than this of the organic matter speaks of soil.
const LEAST_ORGANIC_LEFT: f64 = 0.1;

/// By how much stuff of this age is through, 0 to 1: with a time constant of 60 days, as vented
/// bins are stable at 56 to 91 days and hot heaps usable in two to four months. Planning value.
#[must_use]
pub fn progress_of_age(age_d: f64) -> f64 {
    1.0 - libm::exp(-age_d.max(0.0) / 60.0)
}

/// What is left of lots at the typical values of all that goes in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Left {
    /// Mass with its water [kg].
    pub wet_kg: f64,
    /// Volume [m3].
    pub volume_m3: f64,
    /// What passes the sieve [m3].
    pub sieved_m3: f64,
}

/// What [`accounts`] gives as the value of these, without its draws: some thousandth of its work.
#[must_use]
pub fn left_of(lots: &[Lot], water_kg: f64, known: &Known) -> Option<Left> {
    let brought: Vec<Totals> = lots
        .iter()
        .map(|lot| mixture::typical_totals(std::slice::from_ref(&lot.part), 0.0))
        .collect();
    // Of the figures that are drawn only the middle is taken, which no seed moves.
    let rates = Rates::new(known, 0).at(None);
    let typical = Drawn::new(lots, &brought, water_kg, &rates)?;
    Some(Left {
        wet_kg: typical.wet,
        volume_m3: typical.volume,
        sieved_m3: typical.volume * typical.sieved,
    })
}

/// Keeps account of lots, with water that was poured on them [kg]. `None` when nothing is in them.
#[must_use]
pub fn accounts(lots: &[Lot], water_kg: f64, known: &Known, seed: u64) -> Option<Accounts> {
    let units: Vec<(UnitDraws, f64)> = lots
        .iter()
        .map(|lot| {
            let count = mixture::count(&lot.part.amount);
            (UnitDraws::new(&lot.part, seed, DRAWS), count)
        })
        .collect();
    let brought_at = |draw: Option<usize>| -> Vec<Totals> {
        units
            .iter()
            .map(|(unit, count)| {
                let mut totals = Totals::default();
                match draw {
                    Some(draw) => totals.add(&unit.totals(draw), *count),
                    None => totals.add(&unit.typical, *count),
                }
                totals
            })
            .collect()
    };
    let rates = Rates::new(known, seed);
    let typical = Drawn::new(lots, &brought_at(None), water_kg, &rates.at(None))?;
    let draws: Vec<Drawn> = (0..DRAWS)
        .filter_map(|draw| {
            let rates = rates.at(Some(draw));
            Drawn::new(lots, &brought_at(Some(draw)), water_kg, &rates)
        })
        .collect();
    let of = |figure: &dyn Fn(&Drawn) -> f64| {
        mixture::interval(figure(&typical), draws.iter().map(figure).collect())
    };
    let dry_fed = typical.fed_dry;
    let element = |index: usize| {
        let share = if index == 0 {
            1.0
        } else {
            lots.iter()
                .zip(&typical.brought)
                .zip(&typical.dry_of_lots)
                .filter(|((_, brought), _)| brought[index].is_some())
                .map(|(_, dry)| dry)
                .sum::<f64>()
                / dry_fed
        };
        if share <= 0.0 {
            return None;
        }
        let account = |drawn: &Drawn| drawn.elements[index];
        let whole = account(&typical);
        Some(ElementAccount {
            fed_kg: of(&|drawn| account(drawn).fed),
            gas_kg: of(&|drawn| account(drawn).gas),
            leached_kg: of(&|drawn| account(drawn).leached),
            now_kg: of(&|drawn| account(drawn).now),
            now_kg_m3: of(&|drawn| account(drawn).now / drawn.volume),
            now_dry_basis: of(&|drawn| account(drawn).now / drawn.dry),
            measured_kg: typical.measured[index]
                .map(|_| of(&|drawn| drawn.measured[index].unwrap_or(0.0))),
            known_share: share.min(1.0),
            closure: draws
                .iter()
                .chain([&typical])
                .map(|drawn| account(drawn).closure())
                .fold(whole.closure(), f64::max),
        })
    };
    Some(Accounts {
        fed_wet_kg: of(&|drawn| drawn.fed_wet),
        fed_dry_kg: of(&|drawn| drawn.fed_dry),
        ash_kg: of(&|drawn| drawn.ash),
        dry_kg: of(&|drawn| drawn.dry),
        ash_dry_basis: of(&|drawn| drawn.ash / drawn.dry),
        organic_loss: of(&Drawn::organic_loss),
        wet_kg: of(&|drawn| drawn.wet),
        volume_m3: of(&|drawn| drawn.volume),
        sieved_m3: of(&|drawn| drawn.volume * drawn.sieved),
        overs_m3: of(&|drawn| drawn.volume * (1.0 - drawn.sieved)),
        carbon_kg: of(&|drawn| drawn.carbon),
        brought_kg: (0..lots.len())
            .map(|lot| {
                std::array::from_fn(|index| {
                    typical.brought[lot][index]?;
                    Some(of(&|drawn| drawn.brought[lot][index].unwrap_or(0.0)))
                })
            })
            .collect(),
        elements: std::array::from_fn(element),
        ash_too_low: typical.ash_too_low,
        soil_likely: known.ash_dry_basis.is_some()
            && typical.organic_loss() > 1.0 - LEAST_ORGANIC_LEFT,
    })
}
