//! Which bed gets how much, and what stops it from getting more?

use heapwright_quantity::Interval;

use super::bed::{Bed, BedLimit, State, Weighed, weigh};
use super::compost::{Brought, Compost};
use super::cover::volume_m3;
use super::rules::Rules;
use super::sharing::{Plot, Shared, Sharing, share_out};

/// The question.
#[derive(Clone, Debug, PartialEq)]
pub struct Question {
    /// The beds.
    pub beds: Vec<Bed>,
    /// The compost.
    pub compost: Compost,
    /// What it is besides.
    pub state: State,
    /// How much there is [m3].
    pub volume_m3: f64,
    /// The figures of the trade.
    pub rules: Rules,
    /// What a medium feeder needs of nitrogen, phosphorus, potassium [kg/m2]: one unit each.
    pub unit_kg_m2: [f64; 3],
    /// The draws depend on it.
    pub seed: u64,
}

/// What stops a bed from getting more.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Binding {
    /// One of its limits.
    Limit(BedLimit),
    /// All compost is given out.
    Supply,
    /// Its need is met; more would only build up phosphorus.
    NeedMet,
}

/// What a bed gets.
#[derive(Clone, Debug, PartialEq)]
pub struct BedShare {
    /// Depth of the layer [m].
    pub depth_m: f64,
    /// Volume [m3].
    pub volume_m3: f64,
    /// What it brings to each square metre [kg/m2].
    pub brought_per_m2: Brought<Interval>,
    /// Share of the need of nitrogen, phosphorus, potassium that this layer and earlier ones meet
    /// at typical figures; `None` where none is needed. May lie above 1.
    pub met: [Option<f64>; 3],
    /// Phosphorus beyond what the crop takes away this year [kg/m2].
    pub surplus_phosphorus_kg_m2: f64,
    /// What stops it from getting more.
    pub binding: Binding,
    /// The bed weighed up.
    pub weighed: Weighed,
}

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// What each bed gets, in the order of the question.
    pub beds: Vec<BedShare>,
    /// What a cubic metre brings [kg/m3].
    pub brought_per_m3: Brought<Interval>,
    /// How it was shared out.
    pub shared: Shared,
}

/// Depths nearer than this to a limit are at it, and less than this of what is left on all beds is
/// nothing [m]: a thousandth of a millimetre.
const AT_LIMIT_M: f64 = 1e-6;

/// Plans the beds.
#[must_use]
pub fn plan(question: &Question) -> Plan {
    let Question {
        compost,
        rules,
        state,
        ..
    } = question;
    let typical = compost.typical(rules);
    let brought_per_m3 = compost.brought(rules, question.seed);
    let weighed: Vec<Weighed> = question
        .beds
        .iter()
        .map(|bed| weigh(bed, compost, *state, rules))
        .collect();
    let plots = question
        .beds
        .iter()
        .zip(&weighed)
        .map(|(bed, weighed)| plot(bed, weighed))
        .collect();
    let shared = share_out(&Sharing {
        plots,
        volume_m3: question.volume_m3,
        supplied_kg_m3: [
            // Where nitrogen is tied up, compost meets none of the need.
            typical.nitrogen_first_year.max(0.0),
            typical.phosphorus_first_year,
            typical.potassium_first_year,
        ],
        phosphorus_kg_m3: typical.phosphorus,
        unit_kg_m2: question.unit_kg_m2,
    });
    // Round-off leaves drops; a need is met only where what is left would make a layer.
    let area_m2: f64 = question.beds.iter().map(|bed| bed.area_m2).sum();
    let all_given = shared.left_m3 <= volume_m3(area_m2, AT_LIMIT_M);
    let beds = weighed
        .into_iter()
        .zip(&question.beds)
        .zip(&shared.depths_m)
        .map(|((weighed, bed), depth)| {
            let depth_m = *depth;
            let carried = weighed.carried;
            let met = |need: f64, brought: f64, carried: f64| {
                (need > 0.0).then(|| (brought * depth_m + carried) / need)
            };
            let binding = match weighed.tightest() {
                Some(tightest) if depth_m >= tightest.depth_m - AT_LIMIT_M => {
                    Binding::Limit(tightest.limit)
                }
                _ if all_given => Binding::Supply,
                _ => Binding::NeedMet,
            };
            BedShare {
                depth_m,
                volume_m3: volume_m3(bed.area_m2, depth_m),
                brought_per_m2: brought_per_m3.times(depth_m),
                met: [
                    met(
                        weighed.need.nitrogen_kg_m2.typical,
                        typical.nitrogen_first_year,
                        carried.nitrogen_kg_m2,
                    ),
                    met(
                        weighed.need.phosphorus_kg_m2.typical,
                        typical.phosphorus_first_year,
                        carried.phosphorus_kg_m2,
                    ),
                    met(
                        weighed.need.potassium_kg_m2.typical,
                        typical.potassium_first_year,
                        carried.potassium_kg_m2,
                    ),
                ],
                surplus_phosphorus_kg_m2: (typical.phosphorus * depth_m + carried.phosphorus_kg_m2
                    - bed.need.phosphorus_kg_m2.typical)
                    .max(0.0),
                binding,
                weighed,
            }
        })
        .collect();
    Plan {
        beds,
        brought_per_m3,
        shared,
    }
}

/// The bed as the programme sees it.
fn plot(bed: &Bed, weighed: &Weighed) -> Plot {
    let (need, carried) = (&weighed.need, &weighed.carried);
    Plot {
        area_m2: bed.area_m2,
        wanted_kg_m2: [
            need.nitrogen_kg_m2.typical - carried.nitrogen_kg_m2,
            need.phosphorus_kg_m2.typical - carried.phosphorus_kg_m2,
            need.potassium_kg_m2.typical - carried.potassium_kg_m2,
        ]
        .map(|wanted| wanted.max(0.0)),
        phosphorus_room_kg_m2: (bed.need.phosphorus_kg_m2.typical - carried.phosphorus_kg_m2)
            .max(0.0),
        // No bed gets more than a spade deep, whatever the figures.
        most_depth_m: weighed.most_depth_m().min(1.0),
    }
}
