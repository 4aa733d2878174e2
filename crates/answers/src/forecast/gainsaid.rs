//! Does the last reading gainsay what was computed?
//!
//! The simulation does not learn from readings. Where a fresh one lies far from it, the keeper must
//! know so before anything that follows from it.

use heapwright_engine::heap::{Band, Bands};

use super::{ForecastAnswer, ProbeReading};

/// A reading tells of the days ahead for so long [d].
const FRESH_D: f64 = 3.0;
/// By so much temperatures in measured vessels differ from those computed for them, as the root mean
/// square of the worse of two (checks C1 and C2 of `docs/measurements/heap-checks.md`) [K].
const USUAL_ERROR_K: f64 = 7.0;

/// A fresh reading of the core, far from what was computed for its time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gainsaid {
    /// When [d after the start of the simulation].
    pub day: f64,
    /// What the probe showed [degC].
    pub probe_c: f64,
    /// What was computed for that time: the middle of the runs, or the one there is [degC].
    pub computed_c: f64,
}

impl ForecastAnswer {
    /// The last reading of the core, when it is fresh and lies outside the range of the runs at its
    /// time by more than the simulation's usual error.
    #[must_use]
    pub fn gainsaid(&self) -> Option<Gainsaid> {
        let (last, line_c) = self
            .readings
            .iter()
            .rev()
            .find_map(|reading| Some((reading, reading.computed_core_c?)))?;
        if self.now_d - last.day > FRESH_D {
            return None;
        }
        // All ways to go on share the past.
        let band = self
            .plans
            .iter()
            .filter_map(|plan| plan.answer.bands.as_ref())
            .find_map(|bands| core_at(bands, last));
        let (low, computed_c, high) = band.map_or((line_c, line_c, line_c), |band| {
            (band.low, band.median, band.high)
        });
        let probe_c = last.temperature_c;
        let outside_k = (low - probe_c).max(probe_c - high);
        (outside_k > USUAL_ERROR_K).then_some(Gainsaid {
            day: last.day,
            probe_c,
            computed_c,
        })
    }
}

/// The range of the core over the runs at the time of a reading, straight between rows.
fn core_at(bands: &Bands, reading: &ProbeReading) -> Option<Band> {
    let behind = bands
        .time_d
        .partition_point(|time_d| *time_d <= reading.day);
    let before = behind.checked_sub(1)?;
    let (from_d, to_d) = (*bands.time_d.get(before)?, *bands.time_d.get(behind)?);
    let (one, other) = (
        bands.core_temperature_c.get(before)?,
        bands.core_temperature_c.get(behind)?,
    );
    let share = (reading.day - from_d) / (to_d - from_d);
    let between = |of: fn(&Band) -> f64| of(one) + (of(other) - of(one)) * share;
    Some(Band {
        low: between(|band| band.low),
        lower: between(|band| band.lower),
        median: between(|band| band.median),
        upper: between(|band| band.upper),
        high: between(|band| band.high),
    })
}

#[cfg(test)]
mod tests {
    use heapwright_catalogue::Catalogue;
    use heapwright_engine::heap::Model;
    use heapwright_garden::Garden;
    use heapwright_journal::content::{Fed, HeapStarted, PartFed, Probe, ProbePlace, Read};
    use heapwright_journal::{AmountSaid, Content, DeviceId, EventId, Moment};
    use heapwright_state::{Now, Recorder, State};

    use super::*;
    use crate::forecast::{ForecastQuestion, what_will_happen};
    use crate::simulated::one_by_one;

    const FED: &str = "2026-11-20T12:00:00+00:00";
    const NOW: &str = "2026-11-26T12:00:00+00:00";

    fn hours_before_now(hours: f64) -> Moment {
        let now: Moment = NOW.parse().unwrap();
        Moment::new(now.instant_ms - (hours * 3_600_000.0) as i64, 0).unwrap()
    }

    struct Case {
        state: State,
        heap: EventId,
    }

    impl Case {
        fn write(&mut self, at: Moment, content: Content) -> EventId {
            let chance = Now {
                moment: at,
                random: [1; 10],
            };
            let mut recorder = Recorder::new(DeviceId(5), &self.state, at);
            let (line, event) = recorder
                .record(&self.state, content, at, None, chance)
                .unwrap();
            let id = event.id;
            self.state.take(line.digest(), event);
            id
        }

        /// A heap of leaves alone, which stays cool.
        fn cool() -> Self {
            let mut case = Self {
                state: State::default(),
                heap: EventId::new(1, &[0; 10]),
            };
            let fed: Moment = FED.parse().unwrap();
            let started = HeapStarted {
                name: "Bin".to_owned(),
                enclosure: None,
                sun: None,
                filling: None,
            };
            case.heap = case.write(
                Moment::new(fed.instant_ms - 1000, 0).unwrap(),
                started.into(),
            );
            let part = PartFed {
                material: Some("dry_leaves_mixed".to_owned()),
                custom: None,
                amount: AmountSaid {
                    count: 20.0,
                    unit: "kg".to_owned(),
                },
                conditions: Vec::new(),
                moisture_pct: None,
                nitrogen_pct_dry: None,
                cn_ratio: None,
                bulk_density_kg_m3: None,
                from_stores: false,
            };
            let feed = Fed {
                heap: case.heap,
                parts: vec![part],
                water_l: None,
            };
            case.write(fed, feed.into());
            case
        }

        fn read(&mut self, hours_ago: f64, temperature_c: f64, place: ProbePlace) {
            let read = Read {
                heap: self.heap,
                probes: vec![Probe {
                    temperature_c,
                    depth_m: None,
                    place: Some(place),
                }],
                air_temperature_c: None,
                squeeze: None,
                smells: Vec::new(),
                looks: Vec::new(),
                creatures: Vec::new(),
                height_m: None,
                fill_pct: None,
                logger: None,
            };
            self.write(hours_before_now(hours_ago), read.into());
        }

        fn answer(&self, members: u32) -> ForecastAnswer {
            let catalogue = Catalogue::built_in();
            let now: Moment = NOW.parse().unwrap();
            let garden = Garden::from_state(catalogue, &self.state, now);
            let question = ForecastQuestion {
                heap: self.heap,
                now,
                days: 3.0,
                plans: Vec::new(),
                weather: None,
                members,
                model: Model::Lumped,
                member_model: Model::Lumped,
                fields_at_d: Vec::new(),
            };
            what_will_happen(catalogue, &garden, &self.state, &question, &one_by_one).unwrap()
        }
    }

    #[test]
    fn a_hot_probe_in_a_heap_that_is_computed_cool_gainsays() {
        let mut case = Case::cool();
        case.read(0.0, 60.0, ProbePlace::Core);
        for members in [0, 6] {
            let answer = case.answer(members);
            let found = answer.gainsaid().unwrap();
            assert_eq!(found.probe_c, 60.0);
            assert!((found.day - answer.now_d).abs() < 1e-9);
            assert!(found.computed_c < 40.0, "{found:?}");
            assert_eq!(answer.plans[0].answer.bands.is_some(), members > 0);
        }
    }

    #[test]
    fn what_is_old_near_or_no_core_gainsays_nothing() {
        // Of four days ago, or at the edge.
        let mut case = Case::cool();
        case.read(96.0, 60.0, ProbePlace::Core);
        case.read(1.0, 60.0, ProbePlace::Edge);
        assert_eq!(case.answer(6).gainsaid(), None);
        // As warm as it was computed, or a little warmer; and the last reading counts alone.
        let mut near = Case::cool();
        near.read(2.0, 60.0, ProbePlace::Core);
        let computed_c = near.answer(6).gainsaid().unwrap().computed_c;
        near.read(1.0, computed_c + 3.0, ProbePlace::Core);
        assert_eq!(near.answer(6).gainsaid(), None);
        // Far colder than computed counts as well.
        let mut cold = Case::cool();
        cold.read(1.0, computed_c - 40.0, ProbePlace::Core);
        assert!(cold.answer(6).gainsaid().is_some());
    }

    #[test]
    fn a_reading_within_wide_runs_gainsays_nothing() {
        let mut case = Case::cool();
        case.read(1.0, 60.0, ProbePlace::Core);
        let mut answer = case.answer(6);
        let bands = answer.plans[0].answer.bands.as_mut().unwrap();
        for band in &mut bands.core_temperature_c {
            band.high = 54.0;
        }
        assert_eq!(answer.gainsaid(), None, "6 K outside is the usual error");
        let bands = answer.plans[0].answer.bands.as_mut().unwrap();
        for band in &mut bands.core_temperature_c {
            band.high = 52.0;
        }
        assert!(answer.gainsaid().is_some());
    }
}
