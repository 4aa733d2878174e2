//! The garden itself: its description, people, measures, materials.

use std::collections::BTreeMap;
use std::sync::Arc;

use heapwright_journal::content::{
    MaterialDefined, MaterialMeasured, PersonDescribed, Place, UnitsSaid,
};
use heapwright_journal::{Content, Event, EventId, Moment};

use crate::timeline::Step;

/// What the garden says of itself.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct GardenNow {
    /// The event that set it up: the first description.
    pub set_up: Option<EventId>,
    /// Name to show.
    pub name: Option<String>,
    /// Where it lies.
    pub place: Option<Place>,
    /// In which units it is spoken.
    pub units: Option<UnitsSaid>,
    /// True for a scenario that was made up.
    pub invented: bool,
    /// Who works here.
    pub people: BTreeMap<EventId, PersonDescribed>,
    /// What its vessels hold, by measure: each from a moment on.
    pub measures: BTreeMap<String, Vec<(Moment, f64)>>,
    /// Its own materials, by id.
    pub materials: BTreeMap<String, MaterialDefined>,
    /// What was measured of materials, and when.
    pub measurements: Vec<(Moment, MaterialMeasured)>,
}

impl GardenNow {
    /// What one filling of a measure holds [L] at a moment: as it was found last before it, or
    /// first after it, for a vessel is mostly older than its weighing.
    #[must_use]
    pub fn volume_l(&self, measure: &str, at: Moment) -> Option<f64> {
        let found = self.measures.get(measure)?;
        let behind = found.partition_point(|(moment, _)| moment.instant_ms <= at.instant_ms);
        found
            .get(behind.saturating_sub(1))
            .map(|(_, volume_l)| *volume_l)
    }
}

impl Step for GardenNow {
    fn fresh(&self) -> Self {
        Self::default()
    }

    fn step(&mut self, event: &Arc<Event>) {
        match event.content() {
            Some(Content::GardenDescribed(described)) => {
                self.set_up.get_or_insert(event.id);
                let described = described.clone();
                self.name = described.name.or(self.name.take());
                self.place = described.place.or(self.place.take());
                self.units = described.units.or(self.units);
                self.invented = described.invented.unwrap_or(self.invented);
            }
            Some(Content::PersonDescribed(person)) => {
                self.people.insert(event.id, person.clone());
            }
            Some(Content::MeasureDefined(defined)) => {
                self.measures
                    .entry(defined.measure.clone())
                    .or_default()
                    .push((event.happened, defined.volume_l));
            }
            Some(Content::MaterialDefined(defined)) => {
                self.materials
                    .insert(defined.material.clone(), defined.clone());
            }
            Some(Content::MaterialMeasured(measured)) => {
                self.measurements.push((event.happened, measured.clone()));
            }
            _ => {}
        }
    }
}
