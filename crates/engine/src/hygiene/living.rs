//! What does a record say of seeds, of diseases of plants and of larvae, and what can no heat be
//! trusted with?
//!
//! Hours are those at the probe with its error taken off. What is reached there is reached there: it
//! tells nothing of the cooler rest of the heap.

use super::record::Findings;
use super::tally::HOUR_THRESHOLDS_C;

/// What may live in a heap.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Living {
    /// Seeds of grasses, sowthistle, chickweed.
    SoftSeeds,
    /// Seeds of nightshade, purslane, pigweed, fat hen, tomato.
    HardySeeds,
    /// Hard-coated seeds: woody legumes, bindweed, velvetleaf, mallow.
    HardCoatedSeeds,
    /// Rhizomes, tubers, bulbils.
    Roots,
    /// Most fungi, bacteria and nematodes of plants.
    CommonDiseases,
    /// White rot of onions.
    WhiteRot,
    /// Clubroot of cabbages.
    Clubroot,
    /// Tomato and tobacco mosaic.
    MosaicViruses,
    /// Fusarium and Verticillium wilts.
    Wilts,
    /// Larvae of flies.
    Larvae,
}

/// What the record says of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reach {
    /// The time at the temperature that trials found was reached at the probe.
    Reached,
    /// It was not.
    NotReached,
    /// Heat cannot be trusted with it, whatever the record says.
    NotTrusted,
}

impl Living {
    /// All, in the order in which they are told.
    pub const ALL: [Self; 10] = [
        Self::SoftSeeds,
        Self::HardySeeds,
        Self::HardCoatedSeeds,
        Self::Roots,
        Self::CommonDiseases,
        Self::WhiteRot,
        Self::Clubroot,
        Self::MosaicViruses,
        Self::Wilts,
        Self::Larvae,
    ];

    /// Any one of these is enough: at or above this temperature for so many hours. For moist seed.
    /// Source: DAHLQ07, DAHLQ07m, ON-SEEDS, WHITEROT, GOTAAS-FLYm
    fn enough(self) -> &'static [(f64, f64)] {
        match self {
            Self::SoftSeeds => &[(50.0, 12.0), (55.0, 3.0), (60.0, 0.75), (70.0, 0.05)],
            Self::HardySeeds => &[(50.0, 120.0), (55.0, 20.0), (60.0, 3.0), (70.0, 1.0 / 3.0)],
            Self::WhiteRot => &[(48.0, 72.0)],
            Self::Larvae => &[(50.0, 1.0)],
            _ => &[],
        }
    }

    /// What a record says of it.
    #[must_use]
    pub fn reach(self, findings: &Findings) -> Reach {
        match self {
            // Some of them grew after 136 hours above 55 degrees: never said to be dead.
            // Source: ACACIA-GW
            Self::HardCoatedSeeds
            | Self::Roots
            | Self::Clubroot
            | Self::MosaicViruses
            | Self::Wilts => Reach::NotTrusted,
            Self::CommonDiseases => {
                let days = findings.credited_s / 86_400.0;
                let hottest_c = findings.hottest_c - findings.probe_error_k;
                reached(hottest_c >= DISEASES_PEAK_C && days >= DISEASES_D)
            }
            _ => reached(self.enough().iter().any(|(least_c, hours)| {
                let place = HOUR_THRESHOLDS_C
                    .iter()
                    .position(|threshold| threshold == least_c);
                place.is_some_and(|place| findings.hours[0][place] >= *hours)
            })),
        }
    }
}

/// Most of what was looked at was below detection after a peak of at least this [degrees Celsius].
/// Source: NOBLE04
const DISEASES_PEAK_C: f64 = 64.0;
/// And after so long [d].
/// Source: NOBLE04
const DISEASES_D: f64 = 21.0;
/// The longest time between two visits to the heat in which no fly comes to an end of its growth [d].
/// Source: FLIES-SARE
pub const FLIES_D: f64 = 9.0;

fn reached(is_reached: bool) -> Reach {
    if is_reached {
        Reach::Reached
    } else {
        Reach::NotReached
    }
}
