//! What the heaps themselves ask for: new ones are started, others rest and are harvested.

use heapwright_journal::EventId;
use heapwright_journal::content::{Moved, Rested, Stage};

use crate::beds;
use crate::garden::{Journal, Today};
use crate::heaps::{self, Bay};

impl Journal {
    /// What the heaps themselves ask for: new ones, rest, harvest.
    pub(crate) fn go_on(&mut self, today: &Today) {
        let active = self
            .bays
            .iter()
            .filter(|bay| bay.stage == Stage::Active)
            .count();
        // The first heaps are not all started on one day.
        if active < self.plan.heaps && (self.started == 0 || self.chance.happens(0.3)) {
            self.start(today);
        }
        for place in 0..self.bays.len() {
            let bay = &self.bays[place];
            let (id, stage, over) = (bay.id, bay.stage, bay.days_left == 0);
            match stage {
                Stage::Active if over || bay.full > 1.0 => {
                    self.rest(today, place, Stage::Curing, 50.0);
                }
                Stage::Curing if over => {
                    self.rest(today, place, Stage::Finished, 5.0);
                    self.bays[place].harvests_left = 1 + self.chance.below(3) as u32;
                }
                Stage::Finished if over => self.harvest(today, place, id),
                _ => {}
            }
        }
        self.bays
            .retain(|bay| bay.stage != Stage::Finished || bay.harvests_left > 0);
    }

    fn start(&mut self, today: &Today) {
        self.started += 1;
        let heap = heaps::start(&mut self.chance, self.started, today.date.year());
        let height_m = heap.enclosure.map_or(1.0, |enclosure| enclosure.height_m);
        let Some(id) = self.write(today, 6.5, 0, 1.0, None, heap.into()) else {
            return;
        };
        // A few shovels of an older heap bring what works there.
        let older = self
            .bays
            .iter()
            .find(|bay| bay.stage == Stage::Curing)
            .map(|bay| bay.id);
        // Half of all events are feeds; a heap that is fed for four months has room for them.
        let per_day = self.plan.events as f64 / f64::from(self.plan.days.max(1));
        let room = (60.0 * per_day / self.plan.heaps.max(1) as f64).max(30.0);
        self.bays
            .push(Bay::new(&mut self.chance, id, height_m, room));
        if let Some(from) = older.filter(|_| self.chance.happens(0.4)) {
            let share_pct = Some(self.chance.stepped(5.0, 20.0, 5.0));
            let moved = Moved {
                from,
                to: id,
                share_pct,
            };
            self.note(today, 6.8, moved.into());
        }
    }

    fn rest(&mut self, today: &Today, place: usize, stage: Stage, most_days: f64) {
        let heap = self.bays[place].id;
        self.note(today, 6.9, Rested { heap, stage }.into());
        let days = self.chance.between(most_days * 0.6, most_days * 1.6);
        let bay = &mut self.bays[place];
        bay.stage = stage;
        bay.days_left = days as u32 + 1;
    }

    fn harvest(&mut self, today: &Today, place: usize, heap: EventId) {
        let bay = &mut self.bays[place];
        bay.harvests_left = bay.harvests_left.saturating_sub(1);
        bay.days_left = 10;
        let all = bay.harvests_left == 0;
        let share_pct = (!all).then(|| self.chance.stepped(25.0, 60.0, 5.0));
        let active = self
            .bays
            .iter()
            .find(|bay| bay.stage == Stage::Active)
            .map(|bay| bay.id);
        let harvested = beds::harvest(&mut self.chance, heap, share_pct, active);
        self.note(today, 7.0, harvested.into());
        for hour in 0..1 + self.chance.below(2) {
            if let Some(bed) = self.chance.one_of(&self.beds).copied() {
                let spread = beds::spread(&mut self.chance, bed, Some(heap));
                self.note(today, 8.0 + hour as f64, spread.into());
            }
        }
    }
}
