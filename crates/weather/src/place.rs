//! Where is it? Latitude, longitude and height, and how far the sea reaches.

/// A day has this many hours everywhere in this crate.
pub(crate) const DAY_HOURS: usize = 24;

/// Where weather is wanted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// Latitude [deg], north above 0, within 90.
    pub latitude_deg: f64,
    /// Longitude [deg], east above 0, within 180.
    pub longitude_deg: f64,
    /// Height above the sea [m].
    pub elevation_m: f64,
    /// How far the sea tempers the weather.
    pub setting: Setting,
}

/// How far the sea tempers the weather.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Setting {
    /// Mild winters and cool summers: within some tens of kilometres of an open sea, on the side
    /// that the wind comes from.
    Coast,
    /// Neither.
    #[default]
    Between,
    /// Cold winters and hot summers, far from the sea or behind mountains.
    Inland,
}

impl Place {
    /// The whole hours by which the clock of the place's longitude is ahead of UTC. Days in this
    /// crate run from midnight to midnight by this clock; no law on time zones is known here.
    #[must_use]
    pub fn zone_hours(&self) -> i32 {
        // A longitude lies within 180 degrees, so that the hours are a small number.
        #[allow(clippy::cast_possible_truncation)]
        let hours = libm::round(self.longitude_deg.clamp(-180.0, 180.0) / 15.0) as i32;
        hours
    }

    /// Mean solar time less the clock of [`Self::zone_hours`] [h], within half an hour.
    #[must_use]
    pub fn sun_ahead_of_clock_h(&self) -> f64 {
        self.longitude_deg.clamp(-180.0, 180.0) / 15.0 - f64::from(self.zone_hours())
    }

    pub(crate) fn is_south(&self) -> bool {
        self.latitude_deg < 0.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn clocks_follow_the_longitude() {
        for (longitude_deg, hours) in [(0.0, 0), (13.4, 1), (-74.0, -5), (180.0, 12), (-7.4, 0)] {
            let place = Place {
                latitude_deg: 0.0,
                longitude_deg,
                elevation_m: 0.0,
                setting: Setting::Between,
            };
            assert_eq!(place.zone_hours(), hours, "{longitude_deg}");
            assert!(place.sun_ahead_of_clock_h().abs() <= 0.5);
        }
    }
}
