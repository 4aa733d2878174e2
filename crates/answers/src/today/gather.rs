//! Needs of one heap as they are found: one of a kind, with all its reasons.

use heapwright_journal::content::Thoroughness;
use heapwright_journal::{Content, EventId, Moment};
use jiff::ToSpan;
use jiff::civil::Date;

use super::need::{Because, Caution, DatedNeed, Kind, Need, On, Urgency, What};

const MS_PER_DAY: f64 = 86_400_000.0;

/// What was found so far.
pub(super) struct Gathered {
    heap: EventId,
    pub needs: Vec<Need>,
    pub dates: Vec<DatedNeed>,
}

impl Gathered {
    pub fn new(heap: EventId) -> Self {
        Self {
            heap,
            needs: Vec::new(),
            dates: Vec::new(),
        }
    }

    /// Takes a need in; one of the same kind gets one reason more.
    pub fn need(
        &mut self,
        what: What,
        because: Because,
        urgency: Urgency,
        entry: Option<Content>,
    ) -> &mut Need {
        let place = self
            .needs
            .iter()
            .position(|need| need.what.kind() == what.kind());
        let place = place.unwrap_or(self.needs.len());
        if place == self.needs.len() {
            self.needs.push(Need {
                heap: Some(self.heap),
                what,
                because: vec![because],
                urgency,
                due: None,
                entry,
                cautions: Vec::new(),
            });
            return &mut self.needs[place];
        }
        let need = &mut self.needs[place];
        // Taken out and put back is also forked over.
        if matches!(
            what,
            What::Turn {
                how: Thoroughness::InsideOut
            }
        ) {
            need.what = what;
            need.entry = entry;
        }
        if urgency < need.urgency {
            need.because.insert(0, because);
        } else {
            need.because.push(because);
        }
        need.urgency = need.urgency.min(urgency);
        need
    }

    /// Notes what comes later.
    pub fn later(&mut self, kind: Kind, on: On, because: Because) {
        match self.dates.iter_mut().find(|date| date.kind == kind) {
            Some(date) => {
                if on.day() < date.on.day() {
                    date.on = on;
                }
                date.because.push(because);
            }
            None => self.dates.push(DatedNeed {
                heap: Some(self.heap),
                kind,
                material: None,
                on,
                because: vec![because],
                cautions: Vec::new(),
            }),
        }
    }

    pub fn has(&self, kind: Kind) -> bool {
        self.needs.iter().any(|need| need.what.kind() == kind)
    }

    pub fn drop(&mut self, kind: Kind) {
        self.needs.retain(|need| need.what.kind() != kind);
    }

    /// Adds what can hurt to all of those kinds, those of later days too.
    pub fn caution(&mut self, caution: Caution, kinds: &[Kind]) {
        let needs = self
            .needs
            .iter_mut()
            .map(|need| (need.what.kind(), &mut need.cautions));
        let dates = self
            .dates
            .iter_mut()
            .map(|date| (date.kind, &mut date.cautions));
        for (kind, cautions) in needs.chain(dates) {
            if kinds.contains(&kind) && !cautions.contains(&caution) {
                cautions.push(caution);
                cautions.sort();
            }
        }
    }
}

/// So many days after a moment, on the same clock.
pub(super) fn after(moment: Moment, days: f64) -> Moment {
    #[allow(clippy::cast_possible_truncation)] // days of a season
    let instant_ms = moment.instant_ms + (days * MS_PER_DAY) as i64;
    Moment::new(instant_ms, moment.offset_min).unwrap_or(moment)
}

/// The day that lies so many days behind that of a moment, by the calendar, whatever clocks do.
pub(super) fn day_after(moment: Moment, now: Moment, days: f64) -> Date {
    #[allow(clippy::cast_possible_truncation)] // days of a season
    let days = days as i64;
    // As the clock of today shows it.
    let here = Moment::new(moment.instant_ms, now.offset_min).unwrap_or(moment);
    here.local().date().saturating_add(days.days())
}
