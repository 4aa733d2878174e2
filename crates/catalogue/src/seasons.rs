//! What comes when? Months in which a material is at hand in the temperate north.
//!
//! Apart from the catalogue of materials, so that the first answer does not carry it. A rule of the
//! trade each, marked as common practice: a hint at what to offer first, never a figure.

use std::sync::LazyLock;

/// When a material comes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Season {
    /// Id of the material.
    pub material: &'static str,
    /// First month, 1 to 12, in the temperate north.
    pub first_month: u8,
    /// Last month; over the end of the year when it is the smaller.
    pub last_month: u8,
    /// Keys of the sources.
    pub source_keys: Vec<&'static str>,
}

/// On which half of the earth a garden lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hemisphere {
    /// North of the equator.
    North,
    /// South of it: the seasons come half a year later.
    South,
}

impl Hemisphere {
    /// The half of a latitude \[deg\], north above 0.
    #[must_use]
    pub fn of_latitude(latitude_deg: f64) -> Self {
        if latitude_deg < 0.0 {
            Self::South
        } else {
            Self::North
        }
    }
}

static SEASONS: LazyLock<Vec<Season>> = LazyLock::new(|| {
    include_str!(concat!(env!("OUT_DIR"), "/seasons.txt"))
        .lines()
        .filter_map(season)
        .collect()
});

fn season(line: &'static str) -> Option<Season> {
    let mut fields = line.split('\t');
    Some(Season {
        material: fields.next()?,
        first_month: fields.next()?.parse().ok()?,
        last_month: fields.next()?.parse().ok()?,
        source_keys: fields.next()?.split('+').collect(),
    })
}

/// All of them, in the order of the table.
#[must_use]
pub fn seasons() -> &'static [Season] {
    &SEASONS
}

impl Season {
    /// True when it comes in that month, 1 to 12, of the north.
    #[must_use]
    pub fn holds_in(&self, month: u8) -> bool {
        let (first, last) = (self.first_month, self.last_month);
        if first <= last {
            (first..=last).contains(&month)
        } else {
            month >= first || month <= last
        }
    }
}

/// Ids of the materials that come in a month, 1 to 12, of that half of the earth; in the order of
/// the table.
pub fn in_season(month: u8, hemisphere: Hemisphere) -> impl Iterator<Item = &'static str> {
    let of_the_north = match hemisphere {
        Hemisphere::North => month,
        Hemisphere::South => (month + 5) % 12 + 1,
    };
    seasons()
        .iter()
        .filter(move |season| season.holds_in(of_the_north))
        .map(|season| season.material)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn comes(material: &str, month: u8, hemisphere: Hemisphere) -> bool {
        in_season(month, hemisphere).any(|one| one == material)
    }

    #[test]
    fn the_south_has_its_leaves_half_a_year_later() {
        assert!(comes("dry_leaves_mixed", 11, Hemisphere::North));
        assert!(!comes("dry_leaves_mixed", 5, Hemisphere::North));
        assert!(comes("dry_leaves_mixed", 5, Hemisphere::South));
        assert!(!comes("dry_leaves_mixed", 11, Hemisphere::South));
        assert_eq!(Hemisphere::of_latitude(-33.9), Hemisphere::South);
    }

    #[test]
    fn a_season_goes_over_the_end_of_the_year() {
        let winter = [12, 1, 2, 3];
        for month in 1..=12 {
            assert_eq!(
                comes("citrus_peel", month, Hemisphere::North),
                winter.contains(&month),
                "{month}"
            );
        }
        // June in the south is December in the north.
        assert!(comes("citrus_peel", 6, Hemisphere::South));
    }

    #[test]
    fn every_month_has_something_on_either_half() {
        for month in 1..=12 {
            for half in [Hemisphere::North, Hemisphere::South] {
                assert!(in_season(month, half).count() >= 2, "{month} {half:?}");
            }
        }
    }
}
