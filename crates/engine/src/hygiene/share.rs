//! What share of a heap came through the place of the probe?
//!
//! A share of the matter lies in the hot middle, and each turning gives it out anew. What is never
//! there stays as it was: that caps everything that heat can do to the whole, however hot the core.

use super::tally::{HOT_C, Stay};

/// Outline of a heap [m].
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Outline {
    /// Upright with corners: width, depth, height.
    Box(f64, f64, f64),
    /// Upright and round, or a drum: diameter, height or length.
    Cylinder(f64, f64),
    /// Free-standing: diameter at the ground, height.
    Cone(f64, f64),
}

impl Outline {
    /// Share of the volume that lies deeper than so much below every side, ground and top too.
    #[must_use]
    pub fn share_deeper_than(&self, shell_m: f64) -> f64 {
        let left = |side_m: f64| ((side_m - 2.0 * shell_m) / side_m).clamp(0.0, 1.0);
        match *self {
            Self::Box(width_m, depth_m, height_m) => left(width_m) * left(depth_m) * left(height_m),
            Self::Cylinder(diameter_m, height_m) => {
                left(diameter_m) * left(diameter_m) * left(height_m)
            }
            Self::Cone(diameter_m, height_m) => {
                // What is left is the same cone, smaller: its inscribed ball loses the shell.
                let radius_m = diameter_m / 2.0;
                let slant_m = libm::sqrt(radius_m * radius_m + height_m * height_m);
                let inscribed_m = radius_m * height_m / (radius_m + slant_m);
                let scale = (1.0 - shell_m / inscribed_m).clamp(0.0, 1.0);
                scale * scale * scale
            }
        }
    }
}

/// A value and where it may lie.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate {
    /// The least.
    pub low: f64,
    /// The likeliest.
    pub value: f64,
    /// The most.
    pub high: f64,
}

/// Thickness of the cool shell of a heap without insulation [m]: the reference has 15 cm between 5
/// and 15; a heap in wind and frost has more.
/// Source: SHELL-EST
const BARE_SHELL_M: Estimate = Estimate {
    low: 0.05,
    value: 0.15,
    high: 0.25,
};
/// The same for padded or double walls.
/// Source: SHELL-EST
const INSULATED_SHELL_M: Estimate = Estimate {
    low: 0.02,
    value: 0.05,
    high: 0.10,
};

/// Share of a heap in its hot middle, from its outline.
#[must_use]
pub fn hot_share_of_outline(outline: Outline, insulated: bool) -> Estimate {
    let shell_m = if insulated {
        INSULATED_SHELL_M
    } else {
        BARE_SHELL_M
    };
    Estimate {
        low: outline.share_deeper_than(shell_m.high),
        value: outline.share_deeper_than(shell_m.value),
        high: outline.share_deeper_than(shell_m.low),
    }
}

/// The same, when probes at more than one depth tell where the shell ends: `cold_m` is the deepest
/// that never came to 55 degrees, `hot_m` the shallowest that did.
#[must_use]
pub fn hot_share_between(outline: Outline, cold_m: f64, hot_m: f64) -> Estimate {
    Estimate {
        low: outline.share_deeper_than(hot_m),
        value: outline.share_deeper_than(f64::midpoint(cold_m, hot_m)),
        high: outline.share_deeper_than(cold_m),
    }
}

/// The same from a field of temperatures: mass at or above 55 degrees over all mass. `cells` are
/// pairs of mass [kg] and temperature [degrees Celsius]; `None` without mass.
pub fn hot_share_of_field(cells: impl IntoIterator<Item = (f64, f64)>) -> Option<f64> {
    let (mut hot_kg, mut all_kg) = (0.0, 0.0);
    for (mass_kg, temperature_c) in cells {
        all_kg += mass_kg;
        if temperature_c >= HOT_C {
            hot_kg += mass_kg;
        }
    }
    (all_kg > 0.0).then(|| hot_kg / all_kg)
}

/// Share that was never in the hot middle, when this share lies there at a time and every turning
/// mixes at random.
#[must_use]
pub fn never_heated(hot_share: f64, turns: u32) -> f64 {
    libm::pow(1.0 - hot_share, f64::from(turns) + 1.0)
}

/// Share that was there in at least so many of the stays.
#[must_use]
pub fn heated_at_least(hot_share: f64, stays: u32, times: u32) -> f64 {
    let mut chance = 0.0;
    let mut ways = 1.0;
    for there in 0..=stays {
        if there >= times {
            chance += ways
                * libm::pow(hot_share, f64::from(there))
                * libm::pow(1.0 - hot_share, f64::from(stays - there));
        }
        ways *= f64::from(stays - there) / f64::from(there + 1);
    }
    chance
}

/// The fewest turnings that leave at most this share without heat; `None` when no number does.
#[must_use]
pub fn turns_until(hot_share: f64, most_never: f64) -> Option<u32> {
    (0..1000).find(|turns| never_heated(hot_share, *turns) <= most_never)
}

/// The hot share that leaves at most this share without heat after so many turnings.
#[must_use]
pub fn hot_share_for(turns: u32, most_never: f64) -> f64 {
    1.0 - libm::pow(most_never, 1.0 / (f64::from(turns) + 1.0))
}

/// Tenfold steps by which the whole can fall at most, when this share was never heated; `None`
/// without such a share.
/// Source: HAUGm
#[must_use]
pub fn ceiling_log10(never: f64) -> Option<f64> {
    // As 0 minus it, so that no heat at all is 0 and not -0.
    (never > 0.0).then(|| 0.0 - libm::log10(never))
}

/// What share of a heap is likely to have been in the heat.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Treated {
    /// Share that was in the hot middle in a stay that counts as hot.
    pub share: Estimate,
    /// Share that was never there.
    pub never: Estimate,
    /// Stays that were hot: a day at 55 degrees at the probe, or a dose of 1.
    pub hot_stays: usize,
    /// All stays: one more than turnings.
    pub stays: usize,
    /// Tenfold steps by which the whole can fall at most; `None` when nothing stayed out of it.
    pub ceiling_log10: Option<f64>,
}

/// The share that was heated, from the share of the hot middle and the stays between turnings: with
/// the probe's error taken off for the least, as shown, with it put on for the most.
#[must_use]
pub fn treated(hot_share: Estimate, stays: &[Vec<Stay>; 3]) -> Treated {
    let never_of = |share: f64, stays: &[Stay]| {
        stays
            .iter()
            .filter(|stay| stay.is_hot())
            .map(|stay| 1.0 - chance_of_heat(share, stay.mixing))
            .product::<f64>()
    };
    let never = Estimate {
        low: never_of(hot_share.high, &stays[2]),
        value: never_of(hot_share.value, &stays[1]),
        high: never_of(hot_share.low, &stays[0]),
    };
    Treated {
        share: Estimate {
            low: 1.0 - never.high,
            value: 1.0 - never.value,
            high: 1.0 - never.low,
        },
        never,
        hot_stays: stays[1].iter().filter(|stay| stay.is_hot()).count(),
        stays: stays[1].len(),
        ceiling_log10: ceiling_log10(never.value),
    }
}

/// Chance that what was cold comes to the hot middle: at random, or with the outside put inside.
fn chance_of_heat(hot_share: f64, mixing: f64) -> f64 {
    let put_inside = if hot_share < 0.5 {
        hot_share / (1.0 - hot_share)
    } else {
        1.0
    };
    (1.0 - mixing) * hot_share + mixing * put_inside
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(found: f64, expected: f64) {
        assert!(
            (found - expected).abs() <= 0.005 * expected,
            "{found}, not {expected}"
        );
    }

    /// HY-17, HY-18, HY-19, HY-20, HY-22, and the table of section 7.1 of the reference: derived.
    #[test]
    fn turnings_leave_ever_less_without_heat() {
        near(never_heated(0.5, 5), 0.015_625);
        near(never_heated(0.2, 10), 0.086);
        near(never_heated(0.7, 3), 0.0081);
        for (hot_share, turns) in [(0.2, 20), (0.3, 12), (0.5, 6), (0.6, 5), (0.7, 3), (0.8, 2)] {
            assert_eq!(turns_until(hot_share, 0.01), Some(turns), "{hot_share}");
        }
        assert_eq!(turns_until(0.0, 0.01), None);
        near(ceiling_log10(never_heated(0.7, 5)).unwrap(), 3.137);
        near(ceiling_log10(never_heated(0.2, 5)).unwrap(), 0.58);
        assert_eq!(ceiling_log10(1.0), Some(0.0));
        assert_eq!(ceiling_log10(0.0), None);
        near(heated_at_least(0.5, 6, 3), 0.656_25);
        near(heated_at_least(0.3, 6, 0), 1.0);
        near(hot_share_for(5, 0.01), 0.5358);
        near(hot_share_for(5, 0.001), 0.684);
    }

    /// HY-21, and the table of section 7.2: derived. A ball in a cone has the radius of geometry.
    #[test]
    fn a_shell_takes_most_of_a_small_heap() {
        for (side_m, shell_m, share) in [
            (1.0, 0.05, 0.729),
            (1.0, 0.10, 0.512),
            (1.0, 0.15, 0.343),
            (1.2, 0.15, 0.4219),
            (1.5, 0.15, 0.512),
            (0.7, 0.15, 0.1866),
        ] {
            near(
                Outline::Box(side_m, side_m, side_m).share_deeper_than(shell_m),
                share,
            );
        }
        let cube = Outline::Box(1.0, 1.0, 1.0);
        near(hot_share_of_outline(cube, false).value, 0.343);
        assert_eq!(cube.share_deeper_than(0.6), 0.0);
        near(Outline::Cylinder(1.0, 1.0).share_deeper_than(0.15), 0.343);
        let cone = Outline::Cone(6.0, 4.0);
        near(cone.share_deeper_than(0.75), 0.125);
        assert_eq!(cone.share_deeper_than(1.6), 0.0);
        let between = hot_share_between(cube, 0.05, 0.15);
        near(between.low, 0.343);
        near(between.value, 0.512);
        near(between.high, 0.729);
    }

    #[test]
    fn a_field_counts_by_mass() {
        let cells = [(1.0, 60.0), (2.0, 55.0), (5.0, 54.9)];
        assert_eq!(hot_share_of_field(cells), Some(0.375));
        assert_eq!(hot_share_of_field([]), None);
    }

    /// Putting the outside in: two stays serve when half is hot (section 7.1: derived).
    #[test]
    fn the_outside_to_the_inside_is_better_than_chance() {
        near(chance_of_heat(0.5, 1.0), 1.0);
        near(chance_of_heat(0.3, 1.0), 3.0 / 7.0);
        near(chance_of_heat(0.3, 0.0), 0.3);
        near(chance_of_heat(0.7, 1.0), 1.0);
    }
}
