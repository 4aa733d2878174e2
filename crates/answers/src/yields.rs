//! How much compost will there be? By the balance of ash, and by what the garden's own harvests
//! taught.

use heapwright_catalogue::Catalogue;
use heapwright_engine::finish::accounts::{Known, Left, accounts, left_of};
use heapwright_engine::finish::learnt::learn;
use heapwright_garden::Garden;
use heapwright_journal::content::{Harvested, Laboratory, Squeeze};
use heapwright_journal::{AmountSaid, Content, EventId, Moment};
use heapwright_quantity::{Interval, Range};
use heapwright_state::State;
use heapwright_terms::PartAmount;

use crate::lots::{Inside, Lots, Until, harvests, inside, rained_on};
use crate::question::SEED;

/// So many harvests are learnt from, the last ones.
const MOST_HARVESTS: usize = 30;
/// A harvest of less than this share of a heap tells little of the whole.
const LEAST_SHARE: f64 = 0.1;
/// A look that is older tells no more how wet a heap is [d].
const LOOK_HOLDS_D: i64 = 30;

/// How much compost a heap will give.
#[derive(Clone, Debug, PartialEq)]
pub struct YieldAnswer {
    /// Dry matter, as learnt [kg].
    pub dry_kg: Interval,
    /// Wet mass, as learnt [kg].
    pub wet_kg: Interval,
    /// Volume, as learnt [m3].
    pub volume_m3: Interval,
    /// What passes the sieve, as learnt [m3].
    pub sieved_m3: Interval,
    /// What the sieve holds back, as learnt [m3].
    pub overs_m3: Interval,
    /// Organic matter that will be gone, of what went in [kg/kg].
    pub organic_loss: Interval,
    /// Wet mass put in [kg].
    pub fed_wet_kg: Interval,
    /// By what own harvests multiplied masses and volumes.
    pub factor: f64,
    /// From how many harvests that was learnt.
    pub harvests: usize,
    /// So many more gave so much or so little that they cannot be true.
    pub harvests_left_out: usize,
    /// True when a laboratory told the ash of the compost.
    pub ash_measured: bool,
    /// True when that ash is lower than what went in allows.
    pub ash_too_low: bool,
    /// True when that ash speaks of soil in the compost.
    pub soil_likely: bool,
    /// What cannot be used, by name.
    pub left_out: Vec<String>,
}

/// The yield of a heap as it lies; `None` when nothing is in it.
pub(crate) fn yields(
    catalogue: &Catalogue,
    garden: &Garden,
    state: &State,
    heap: EventId,
    there: &Inside,
    now: Moment,
) -> Option<YieldAnswer> {
    let lots = Lots::of(catalogue, garden, state, there, now.instant_ms);
    let mut known = known(state, heap, there, now);
    // What it is now says nothing of the room and the water when it is finished.
    known.volume_m3 = None;
    known.moisture_wet_basis = None;
    known.sieved_share = sieved_share(catalogue, garden, state);
    let found = accounts(&lots.finished(), lots.water_kg, &known, SEED)?;
    let learnt = learn(found.volume_m3, &ratios(catalogue, garden, state, now));
    Some(YieldAnswer {
        dry_kg: learnt.carried_to(found.dry_kg),
        wet_kg: learnt.carried_to(found.wet_kg),
        volume_m3: learnt.interval,
        sieved_m3: learnt.carried_to(found.sieved_m3),
        overs_m3: learnt.carried_to(found.overs_m3),
        organic_loss: found.organic_loss,
        fed_wet_kg: found.fed_wet_kg,
        factor: learnt.factor,
        harvests: learnt.harvests,
        harvests_left_out: learnt.left_out,
        ash_measured: known.ash_dry_basis.is_some(),
        ash_too_low: found.ash_too_low,
        soil_likely: found.soil_likely,
        left_out: lots.left_out,
    })
}

/// What the journal tells of a heap beyond what went in.
pub(crate) fn known(state: &State, heap: EventId, there: &Inside, now: Moment) -> Known {
    let mut known = Known {
        rained_on: rained_on(state, heap),
        ..Known::default()
    };
    if let Some((_, laboratory)) = last_laboratory(there) {
        // Two laboratories differ by about a tenth on the same compost; on ash and water less.
        let share = |pct: Option<f64>, relative: f64| {
            pct.filter(|pct| *pct > 0.0).map(|pct| Range {
                low: pct / 100.0 * (1.0 - relative),
                typical: pct / 100.0,
                high: (pct / 100.0 * (1.0 + relative)).min(1.0),
            })
        };
        known.ash_dry_basis = share(laboratory.ash_pct_dry, 0.05);
        known.moisture_wet_basis = share(laboratory.moisture_pct.filter(|pct| *pct < 98.0), 0.05);
        known.measured = [
            laboratory.nitrogen_pct_dry,
            laboratory.phosphorus_pct_dry,
            laboratory.potassium_pct_dry,
            laboratory.calcium_pct_dry,
            laboratory.magnesium_pct_dry,
        ]
        .map(|pct| share(pct, 0.1));
    }
    if known.moisture_wet_basis.is_none() {
        known.moisture_wet_basis = squeezed(there, now).and_then(moisture_of);
    }
    known.volume_m3 = measured_volume(state, heap, there, now);
    known
}

/// The last test of a laboratory since something last came into the heap.
pub(crate) fn last_laboratory(there: &Inside) -> Option<(Moment, &Laboratory)> {
    let arrived = there.last_arrival_ms.unwrap_or(i64::MIN);
    there
        .events
        .iter()
        .rev()
        .filter(|event| event.happened.instant_ms >= arrived)
        .find_map(|event| match event.content() {
            Some(Content::Tested(tested)) => Some((event.happened, tested.laboratory.as_deref()?)),
            _ => None,
        })
}

/// How a handful felt at the last look that still tells.
pub(crate) fn squeezed(there: &Inside, now: Moment) -> Option<Squeeze> {
    recent_looks(there, now).find_map(|read| read.squeeze)
}

/// Looks of the last days, the latest first.
pub(crate) fn recent_looks(
    there: &Inside,
    now: Moment,
) -> impl Iterator<Item = &heapwright_journal::content::Read> {
    let from = now.instant_ms - LOOK_HOLDS_D * 86_400_000;
    there
        .events
        .iter()
        .rev()
        .take_while(move |event| event.happened.instant_ms >= from)
        .filter_map(|event| match event.content() {
            Some(Content::Read(read)) => Some(read),
            _ => None,
        })
}

/// Moisture by the squeeze test, wet basis.
///
/// Source: recalled, extension consensus: a stream above 65 %, drops at 55 to 60, a ball without
/// drops 45 to 55, crumbling below 40; a German quality body has no drops as right.
pub(crate) fn moisture_of(squeeze: Squeeze) -> Option<Range> {
    let (low, typical, high) = match squeeze {
        Squeeze::Dusty => (0.15, 0.3, 0.4),
        Squeeze::Dry => (0.35, 0.42, 0.47),
        Squeeze::Moist => (0.45, 0.5, 0.57),
        Squeeze::Wet => (0.55, 0.6, 0.65),
        Squeeze::Dripping => (0.63, 0.68, 0.75),
        Squeeze::Other => return None,
    };
    Some(Range { low, typical, high })
}

/// The volume by a ruler or the marks of the bin [m3], if nothing came in or went out since.
fn measured_volume(state: &State, heap: EventId, there: &Inside, now: Moment) -> Option<Range> {
    use heapwright_journal::content::Shape;
    let enclosure = *state.heap(heap)?.enclosure()?;
    let height_m = there
        .events
        .iter()
        .rev()
        .take_while(|event| {
            !matches!(
                event.content(),
                Some(Content::Fed(_) | Content::Moved(_) | Content::Harvested(_))
            )
        })
        .filter(|event| event.happened.instant_ms >= now.instant_ms - LOOK_HOLDS_D * 86_400_000)
        .find_map(|event| match event.content() {
            Some(Content::Read(read)) => read
                .height_m
                .or_else(|| read.fill_pct.map(|pct| pct / 100.0 * enclosure.height_m)),
            _ => None,
        })?;
    let depth_m = enclosure.depth_m.unwrap_or(enclosure.width_m);
    let area_m2 = match enclosure.shape {
        Shape::Box => enclosure.width_m * depth_m,
        Shape::Cylinder => std::f64::consts::FRAC_PI_4 * enclosure.width_m * enclosure.width_m,
        // The height of a cone or of a drum's filling does not tell its volume.
        _ => return None,
    };
    let volume_m3 = area_m2 * height_m;
    // A surface is never flat.
    (volume_m3 > 0.0)
        .then(|| Range::exact(volume_m3))
        .map(|range| Range {
            low: range.low * 0.85,
            typical: range.typical,
            high: range.high * 1.1,
        })
}

/// An amount of compost: kilograms or cubic metres.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Size {
    MassKg(f64),
    VolumeM3(f64),
}

fn size(catalogue: &Catalogue, garden: &Garden, said: &AmountSaid) -> Option<Size> {
    Some(match garden.part_amount(catalogue, &said.amount()).ok()? {
        PartAmount::MassKg(mass_kg) => Size::MassKg(mass_kg),
        PartAmount::VolumeM3 { count, each_m3, .. } => Size::VolumeM3(count * each_m3.typical),
    })
}

/// The two parts of a sieved harvest together, when both are told alike.
fn whole(one: Size, other: Option<Size>) -> Option<Size> {
    match (one, other) {
        (Size::MassKg(one), Some(Size::MassKg(other))) => Some(Size::MassKg(one + other)),
        (Size::VolumeM3(one), Some(Size::VolumeM3(other))) => Some(Size::VolumeM3(one + other)),
        _ => None,
    }
}

/// Found over computed of past harvests.
fn ratios(catalogue: &Catalogue, garden: &Garden, state: &State, now: Moment) -> Vec<f64> {
    harvests(state, MOST_HARVESTS)
        .into_iter()
        .filter(|(event, _)| event.happened.instant_ms <= now.instant_ms)
        .filter_map(|(event, harvested)| {
            let share = harvested.share_pct.unwrap_or(100.0) / 100.0;
            if share < LEAST_SHARE {
                return None;
            }
            let there = inside(state, harvested.heap, Until::Before(event.id));
            let at_ms = event.happened.instant_ms;
            let lots = Lots::of(catalogue, garden, state, &there, at_ms);
            let known = Known {
                rained_on: rained_on(state, harvested.heap),
                ..Known::default()
            };
            let computed = left_of(&lots.finished(), lots.water_kg, &known)?;
            let found = found_over(catalogue, garden, harvested, &computed)?;
            Some(found / share)
        })
        .collect()
}

fn found_over(
    catalogue: &Catalogue,
    garden: &Garden,
    harvested: &Harvested,
    computed: &Left,
) -> Option<f64> {
    let amount = size(catalogue, garden, harvested.amount.as_ref()?)?;
    let overs = harvested
        .overs
        .as_ref()
        .and_then(|overs| size(catalogue, garden, overs));
    let together = match (harvested.sieve_mm, whole(amount, overs)) {
        (_, Some(both)) => both,
        (None, None) => amount,
        // Sieved, and what the sieve held back is not told: only the fine part can be compared.
        (Some(_), None) => {
            return match amount {
                Size::VolumeM3(volume) => Some(volume / computed.sieved_m3),
                Size::MassKg(_) => None,
            };
        }
    };
    Some(match together {
        Size::MassKg(mass) => mass / computed.wet_kg,
        Size::VolumeM3(volume) => volume / computed.volume_m3,
    })
}

/// What passed the sieve at own harvests.
fn sieved_share(catalogue: &Catalogue, garden: &Garden, state: &State) -> Option<Range> {
    let shares: Vec<f64> = harvests(state, MOST_HARVESTS)
        .into_iter()
        .filter_map(|(_, harvested)| {
            let fine = size(catalogue, garden, harvested.amount.as_ref()?)?;
            let overs = size(catalogue, garden, harvested.overs.as_ref()?)?;
            match (fine, overs) {
                (Size::MassKg(fine), Size::MassKg(overs))
                | (Size::VolumeM3(fine), Size::VolumeM3(overs)) => Some(fine / (fine + overs)),
                _ => None,
            }
        })
        .collect();
    #[allow(clippy::cast_precision_loss)] // a few harvests
    let mean = shares.iter().sum::<f64>() / shares.len() as f64;
    let low = shares.iter().copied().fold(f64::INFINITY, f64::min);
    let high = shares.iter().copied().fold(0.0, f64::max);
    // Few harvests do not show how far the next may lie off.
    Range::new((low - 0.1).max(0.0), mean, (high + 0.1).min(1.0))
}
