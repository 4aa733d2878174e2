//! What people do on a day, as often as they do it.

use heapwright_journal::Content;
use heapwright_journal::content::{
    Cover, Covered, GardenDescribed, Stage, Thoroughness, Turned, Uncovered, Watered, Withdrawn,
};

use crate::garden::{Journal, Today};
use crate::heaps::{self, Bay};
use crate::people::Scribe;
use crate::{beds, notes, readings, set_up};

/// What somebody may do on a day, with how often they do.
#[derive(Clone, Copy, Debug)]
enum Doing {
    Feed,
    Read,
    PutBy,
    Water,
    Turn,
    Cover,
    Note,
    UseStock,
    CountStock,
    Spread,
    Test,
    Logger,
    Measure,
    Amend,
    Withdraw,
}

impl Journal {
    /// One of the heaps of a stage.
    fn bay(&mut self, wanted: impl Fn(&Bay) -> bool) -> Option<usize> {
        let places: Vec<usize> = (0..self.bays.len())
            .filter(|place| wanted(&self.bays[*place]))
            .collect();
        self.chance.one_of(&places).copied()
    }

    fn doing(&mut self, month: i8) -> Doing {
        let autumn = (10..=12).contains(&month);
        let summer = (5..=9).contains(&month);
        let doings = [
            (Doing::Feed, 52.0),
            (Doing::Read, 22.0),
            (Doing::PutBy, if autumn { 9.0 } else { 2.5 }),
            (Doing::Water, if summer { 5.0 } else { 0.8 }),
            (Doing::Turn, 5.0),
            (Doing::Cover, 2.5),
            (Doing::Note, 3.0),
            (Doing::UseStock, 0.8),
            (Doing::CountStock, 1.2),
            (Doing::Spread, 0.6),
            (Doing::Test, 1.2),
            (Doing::Logger, 0.25),
            (Doing::Measure, 0.15),
            (Doing::Amend, 1.0),
            (Doing::Withdraw, 0.7),
        ];
        doings[self.chance.weighted(&doings.map(|(_, weight)| weight))].0
    }

    pub(crate) fn do_something(&mut self, today: &Today) {
        let month = today.date.month();
        let doing = self.doing(month);
        let hour = self.hour();
        let content = match doing {
            Doing::Feed => self.fed(month),
            Doing::Read => self.bay(|_| true).map(|place| {
                readings::look(&mut self.chance, &self.bays[place], today.air_c).into()
            }),
            Doing::PutBy => {
                let put = self.stores.put_by(&mut self.chance, month, today.number);
                put.map(Content::from)
            }
            Doing::Water => self.watered(),
            Doing::Turn => self.turned(),
            Doing::Cover => self.covered(),
            Doing::Note => self.remarked(),
            Doing::UseStock => self.stores.used(&mut self.chance).map(Content::from),
            Doing::CountStock => {
                let counted = self.stores.counted(&mut self.chance, today.number);
                counted.map(Content::from)
            }
            Doing::Spread => self
                .chance
                .one_of(&self.beds)
                .copied()
                .map(|bed| beds::spread(&mut self.chance, bed, None).into()),
            Doing::Test => self.bay(|bay| bay.stage != Stage::Active).map(|place| {
                let ripe = self.bays[place].stage == Stage::Finished;
                beds::test(&mut self.chance, self.bays[place].id, ripe).into()
            }),
            Doing::Logger => return self.logged(today, hour),
            Doing::Measure => Some(set_up::measured(&mut self.chance).into()),
            Doing::Amend | Doing::Withdraw => return self.corrected(today, doing),
        };
        if let Some(content) = content {
            self.note(today, hour, content);
        }
    }

    fn fed(&mut self, month: i8) -> Option<Content> {
        let place = self.bay(|bay| bay.stage == Stage::Active)?;
        let heap = self.bays[place].id;
        let (fed, food) = heaps::feed(&mut self.chance, &mut self.stores, heap, month);
        self.bays[place].takes(food);
        Some(fed.into())
    }

    fn watered(&mut self) -> Option<Content> {
        let place = self.bay(|bay| bay.wetness < 0.45)?;
        let water_l = self.chance.stepped(5.0, 30.0, 1.0);
        let bay = &mut self.bays[place];
        bay.wetness = (bay.wetness + water_l * 0.01).min(1.0);
        bay.warmth.watered();
        Some(
            Watered {
                heap: bay.id,
                water_l,
            }
            .into(),
        )
    }

    fn turned(&mut self) -> Option<Content> {
        let place = self.bay(|bay| bay.stage != Stage::Finished)?;
        let thoroughness = self
            .chance
            .one_of(&[
                None,
                Some(Thoroughness::ForkedOver),
                Some(Thoroughness::InsideOut),
                Some(Thoroughness::Loosened),
            ])
            .copied()
            .flatten();
        let bay = &mut self.bays[place];
        bay.warmth.turned();
        Some(
            Turned {
                heap: bay.id,
                thoroughness,
            }
            .into(),
        )
    }

    fn covered(&mut self) -> Option<Content> {
        let place = self.bay(|_| true)?;
        let cover = self.chance.happens(0.5).then_some(Cover::Lid);
        let bay = &mut self.bays[place];
        bay.covered = !bay.covered;
        let heap = bay.id;
        Some(if bay.covered {
            Covered { heap, cover }.into()
        } else {
            Uncovered { heap }.into()
        })
    }

    fn remarked(&mut self) -> Option<Content> {
        if self.chance.happens(0.01) {
            // Told anew, as people do when they set up another device.
            let garden = GardenDescribed {
                name: Some(self.plan.name.clone()),
                ..GardenDescribed::default()
            };
            return Some(garden.into());
        }
        let heap = self.bay(|_| true).map(|place| self.bays[place].id);
        let bed = self.chance.one_of(&self.beds).copied();
        let about_heap = self.chance.happens(0.7);
        let (heap, bed) = if about_heap {
            (heap, None)
        } else {
            (None, bed)
        };
        Some(notes::note(&mut self.chance, heap, bed).into())
    }

    /// A logger's file is read in: one reading an hour, all of one batch.
    fn logged(&mut self, today: &Today, hour: f64) {
        let Some(place) = self.bay(|bay| bay.stage == Stage::Active) else {
            return;
        };
        let person = self.somebody();
        let mut batch = Scribe::SELF;
        for back in 0..8 {
            let read = readings::logged(&mut self.chance, &self.bays[place], today.air_c);
            let at = hour - 7.0 + f64::from(back);
            let after_min = (hour - at) * 60.0 + 5.0;
            let id = self.write(today, at, person, after_min, Some(batch), read.into());
            match id {
                Some(id) if batch == Scribe::SELF => batch = id,
                Some(_) => {}
                None => return,
            }
        }
    }

    fn corrected(&mut self, today: &Today, doing: Doing) {
        let place = self.chance.below(self.recent.len());
        let Some((event, happened, content)) = self.recent.remove(place) else {
            return;
        };
        let correction = if matches!(doing, Doing::Amend) {
            notes::amendment(&mut self.chance, event, happened, &content).into()
        } else {
            Withdrawn { event }.into()
        };
        // Later on the same day than all that may be corrected.
        let person = self.somebody();
        self.write(today, 21.0, person, 1.0, None, correction);
    }
}
