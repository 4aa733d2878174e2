//! One line for each entry of the journal, and what is told of heaps and stores.

use heapwright_catalogue::Catalogue;
use heapwright_garden::{Stuff, found};
use heapwright_journal::content::{Fed, Harvested, Noted, PartFed, StockCounted};
use heapwright_journal::{AmountSaid, Content, Event, EventId, Moment, What};
use heapwright_state::State;
use heapwright_texts::messages::journal as texts;
use heapwright_texts::{Day, Locale};
use jiff::civil::Date;

use crate::amounts::{amount_of_water, amount_text, name_of, part_of, pct_text, row, water_text};
use crate::seen::{read_line, tested_line};
use crate::words::Word;

/// A day as people write it: "1 May 2026".
#[must_use]
pub fn day_text(moment: Moment, locale: Locale) -> String {
    date_text(moment.local().date(), locale)
}

/// The same for a day of the calendar.
pub(crate) fn date_text(day: Date, locale: Locale) -> String {
    locale.date(Day {
        year: i32::from(day.year()),
        month: day.month().unsigned_abs(),
        day: day.day().unsigned_abs(),
    })
}

/// The time of day: "18:05".
#[must_use]
pub fn time_text(moment: Moment, locale: Locale) -> String {
    let local = moment.local();
    locale.time(local.hour().unsigned_abs(), local.minute().unsigned_abs())
}

/// How long ago: "just now", "3 hours ago", "yesterday", "12 days ago".
#[must_use]
pub fn ago_text(then: Moment, now: Moment, locale: Locale) -> String {
    let minutes = (now.instant_ms - then.instant_ms) / 60_000;
    let days = i64::from(
        now.local()
            .date()
            .since(then.local().date())
            .map_or(0, |span| span.get_days()),
    );
    match (minutes, days) {
        (..-1, _) => on_day_text(then, locale),
        (..2, _) => texts::just_now(locale).to_owned(),
        (2..90, _) => texts::MinutesAgo {
            minutes: few(minutes),
        }
        .said(locale),
        (_, ..=0) => texts::HoursAgo {
            hours: few(minutes / 60),
        }
        .said(locale),
        (_, 1) => texts::yesterday(locale).to_owned(),
        (_, 2..60) => texts::DaysAgo { days: few(days) }.said(locale),
        _ => on_day_text(then, locale),
    }
}

/// The day on which something was, as it stands inside a sentence: "on 1 May 2026".
#[must_use]
pub fn on_day_text(then: Moment, locale: Locale) -> String {
    texts::OnDay {
        day: &day_text(then, locale),
    }
    .said(locale)
}

/// A small count as a number of a sentence.
fn few(count: i64) -> f64 {
    f64::from(i32::try_from(count).unwrap_or(i32::MAX))
}

/// The name of a heap, or what to call one whose start is not known.
#[must_use]
pub fn heap_name(state: &State, id: EventId, locale: Locale) -> &str {
    state
        .heap(id)
        .and_then(|heap| heap.name())
        .unwrap_or_else(|| texts::heap_not_known(locale))
}

/// What logging a feed once more would log.
#[must_use]
pub fn feed_again_line(catalogue: &Catalogue, state: &State, fed: &Fed, locale: Locale) -> String {
    let telling = Telling {
        catalogue,
        state,
        locale,
    };
    texts::FeedAgain {
        parts: &telling.fed(fed),
    }
    .said(locale)
}

fn bed_name(state: &State, id: EventId, locale: Locale) -> &str {
    state
        .bed(id)
        .and_then(|bed| bed.now().described.as_ref())
        .map_or_else(|| texts::bed_not_known(locale), |bed| bed.name.as_str())
}

/// Amounts, names and units as a face shows them.
struct Telling<'a> {
    catalogue: &'a Catalogue,
    state: &'a State,
    locale: Locale,
}

impl Telling<'_> {
    fn amount(&self, amount: &AmountSaid) -> String {
        amount_text(self.catalogue, &amount.amount(), self.locale)
    }

    fn named(&self, material: &str, conditions: &[String]) -> String {
        let own = self.state.garden().materials.get(material);
        match (own, self.catalogue.material(material)) {
            (Some(own), _) => own.name.clone(),
            (None, Some(material)) => name_of(self.catalogue, material, conditions, self.locale),
            (None, None) => material.to_owned(),
        }
    }

    fn part(&self, part: &PartFed) -> String {
        let name = match found(part).stuff {
            Stuff::Custom(custom) => custom.name,
            Stuff::Known {
                material,
                conditions,
                ..
            } => self.named(material.as_str(), &conditions),
        };
        part_of(&self.amount(&part.amount), &name, self.locale)
    }

    fn fed(&self, fed: &Fed) -> String {
        let water = fed.water_l.filter(|water_l| *water_l > 0.0);
        let parts = fed.parts.iter().map(|part| self.part(part));
        let things: Vec<String> = parts
            .chain(water.map(|water_l| amount_of_water(water_l, self.locale)))
            .collect();
        row(&things, self.locale)
    }

    fn heap(&self, id: EventId) -> &str {
        heap_name(self.state, id, self.locale)
    }

    fn line(&self, content: &Content) -> String {
        let locale = self.locale;
        match content {
            Content::GardenDescribed(described) => match &described.name {
                Some(name) => texts::GardenDescribedAs { name }.said(locale),
                None => texts::garden_described(locale).to_owned(),
            },
            Content::PersonDescribed(person) => {
                texts::PersonDescribed { name: &person.name }.said(locale)
            }
            Content::MeasureDefined(defined) => texts::MeasureDefined {
                measure: self
                    .catalogue
                    .measure(&defined.measure)
                    .map_or(defined.measure.as_str(), |measure| measure.name.as_str()),
                volume: &locale.volume(defined.volume_l / 1000.0),
            }
            .said(locale),
            Content::MaterialDefined(defined) => texts::MaterialDefined {
                name: &defined.name,
            }
            .said(locale),
            Content::MaterialMeasured(measured) => texts::MaterialMeasured {
                name: &self.named(&measured.material, &[]),
            }
            .said(locale),
            Content::HeapStarted(started) => texts::HeapStarted {
                heap: &started.name,
            }
            .said(locale),
            Content::Fed(fed) => texts::Fed {
                heap: self.heap(fed.heap),
                things: &self.fed(fed),
            }
            .said(locale),
            Content::Turned(turned) => {
                let heap = self.heap(turned.heap);
                match turned.thoroughness {
                    Some(how) => texts::TurnedSo {
                        heap,
                        how: how.word(locale),
                    }
                    .said(locale),
                    None => texts::Turned { heap }.said(locale),
                }
            }
            Content::Watered(watered) => texts::Watered {
                heap: self.heap(watered.heap),
                water: &water_text(watered.water_l, locale),
            }
            .said(locale),
            Content::Covered(covered) => {
                let heap = self.heap(covered.heap);
                match covered.cover {
                    Some(cover) => texts::CoveredWith {
                        cover: cover.word(locale),
                        heap,
                    }
                    .said(locale),
                    None => texts::Covered { heap }.said(locale),
                }
            }
            Content::Uncovered(uncovered) => texts::Uncovered {
                heap: self.heap(uncovered.heap),
            }
            .said(locale),
            Content::Read(read) => texts::LookedAt {
                heap: self.heap(read.heap),
                seen: &read_line(read, locale),
            }
            .said(locale),
            Content::Tested(tested) => texts::Tested {
                found: &tested_line(tested, locale),
                heap: self.heap(tested.heap),
            }
            .said(locale),
            Content::Moved(moved) => {
                let (from, to) = (self.heap(moved.from), self.heap(moved.to));
                match moved.share_pct {
                    None => texts::MovedAll { from, to }.said(locale),
                    Some(pct) => texts::MovedShare {
                        from,
                        percent: &pct_text(pct, locale),
                        to,
                    }
                    .said(locale),
                }
            }
            Content::Rested(rested) => texts::Rested {
                heap: self.heap(rested.heap),
                stage: rested.stage.word(locale),
            }
            .said(locale),
            Content::Harvested(harvested) => self.harvested(harvested),
            Content::BedDescribed(bed) => texts::BedDescribed {
                area: &locale.significant(bed.area_m2, 3),
                bed: &bed.name,
            }
            .said(locale),
            Content::Spread(spread) => texts::Spread {
                amount: &self.amount(&spread.amount),
                bed: bed_name(self.state, spread.bed, locale),
            }
            .said(locale),
            Content::StockPutBy(put) => texts::StockPutBy {
                amount: &self.amount(&put.amount),
                name: &self.named(&put.material, &put.conditions),
            }
            .said(locale),
            Content::StockUsed(used) => texts::StockUsed {
                amount: &self.amount(&used.amount),
                name: &self.named(&used.material, &used.conditions),
            }
            .said(locale),
            Content::StockCounted(counted) => self.counted(counted),
            Content::Noted(noted) => self.noted(noted),
            Content::Amended(amended) => match self.other(amended.event) {
                Other::Entry(line) => texts::Corrected { line: &line }.said(locale),
                Other::Correction => texts::corrected_a_correction(locale).to_owned(),
                Other::Absent => texts::corrected_something_absent(locale).to_owned(),
            },
            Content::Withdrawn(withdrawn) => match self.other(withdrawn.event) {
                Other::Entry(line) => texts::TakenBack { line: &line }.said(locale),
                Other::Correction => texts::taken_back_a_correction(locale).to_owned(),
                Other::Absent => texts::taken_back_something_absent(locale).to_owned(),
            },
        }
    }

    fn harvested(&self, harvested: &Harvested) -> String {
        let locale = self.locale;
        let mut details = vec![match harvested.share_pct {
            None => texts::all_of_it(locale).to_owned(),
            Some(pct) => texts::ShareOfIt {
                percent: &pct_text(pct, locale),
            }
            .said(locale),
        }];
        details.extend(harvested.amount.as_ref().map(|amount| self.amount(amount)));
        if harvested.sieve_mm.is_some() {
            details.push(texts::sieved(locale).to_owned());
        }
        texts::Harvested {
            details: &row(&details, locale),
            heap: self.heap(harvested.heap),
        }
        .said(locale)
    }

    fn counted(&self, counted: &StockCounted) -> String {
        let name = &self.named(&counted.material, &counted.conditions);
        match &counted.amount {
            Some(amount) => texts::StockCounted {
                amount: &self.amount(amount),
                name,
            }
            .said(self.locale),
            None => texts::StockCountedNone { name }.said(self.locale),
        }
    }

    fn noted(&self, noted: &Noted) -> String {
        let locale = self.locale;
        let picture = noted
            .picture
            .as_ref()
            .map(|_| texts::with_a_picture(locale));
        let text = noted.text.as_deref().or(picture).unwrap_or_default();
        let text = &text.replace(['\n', '\t'], " ");
        let about = match (noted.heap, noted.bed) {
            (Some(id), _) => Some(self.heap(id)),
            (None, Some(id)) => Some(bed_name(self.state, id, locale)),
            (None, None) => None,
        };
        match about {
            Some(name) => texts::NoteOn { name, text }.said(locale),
            None => texts::Note { text }.said(locale),
        }
    }

    fn other(&self, id: EventId) -> Other {
        let target = self.state.entry(id).and_then(|entry| entry.recorded());
        match target.and_then(|event| event.content()) {
            Some(content) if content.corrects().is_some() => Other::Correction,
            Some(content) => Other::Entry(self.line(content)),
            None => Other::Absent,
        }
    }
}

/// Another entry that a correction is about; of a correction no more than that it is one, so that no
/// two can tell of each other without end.
enum Other {
    /// Its line.
    Entry(String),
    Correction,
    Absent,
}

/// What an entry tells, in one line: "Fed Bin: 2 caddies of vegetable scraps".
#[must_use]
pub fn entry_line(catalogue: &Catalogue, state: &State, event: &Event, locale: Locale) -> String {
    let telling = Telling {
        catalogue,
        state,
        locale,
    };
    match &event.what {
        What::Known(content) => telling.line(content),
        What::Unknown(unknown) => texts::OfANewerVersion {
            kind: &unknown.kind,
        }
        .said(locale),
    }
}

/// The kinds by which a log can be narrowed: the word of the journal and what it is called.
#[must_use]
pub fn kind_names(locale: Locale) -> [(&'static str, &'static str); 24] {
    [
        ("fed", texts::kind_fed(locale)),
        ("read", texts::kind_read(locale)),
        ("turned", texts::kind_turned(locale)),
        ("watered", texts::kind_watered(locale)),
        ("noted", texts::kind_noted(locale)),
        ("harvested", texts::kind_harvested(locale)),
        ("heap_started", texts::kind_heap_started(locale)),
        ("covered", texts::kind_covered(locale)),
        ("uncovered", texts::kind_uncovered(locale)),
        ("moved", texts::kind_moved(locale)),
        ("rested", texts::kind_rested(locale)),
        ("tested", texts::kind_tested(locale)),
        ("spread", texts::kind_spread(locale)),
        ("bed_described", texts::kind_bed_described(locale)),
        ("stock_put_by", texts::kind_stock_put_by(locale)),
        ("stock_used", texts::kind_stock_used(locale)),
        ("stock_counted", texts::kind_stock_counted(locale)),
        ("garden_described", texts::kind_garden_described(locale)),
        ("person_described", texts::kind_person_described(locale)),
        ("measure_defined", texts::kind_measure_defined(locale)),
        ("material_defined", texts::kind_material_defined(locale)),
        ("material_measured", texts::kind_material_measured(locale)),
        ("amended", texts::kind_amended(locale)),
        ("withdrawn", texts::kind_withdrawn(locale)),
    ]
}

/// What the balance of a heap in the journal is, and is not.
#[must_use]
pub fn as_fed(locale: Locale) -> &'static str {
    texts::as_fed(locale)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn time_that_has_passed_is_told_as_people_count_it() {
        let now = Moment::new(1_790_000_000_000, 60).unwrap();
        for (minutes, told) in [
            (-5, "on 21 September 2026"),
            (1, "just now"),
            (89, "89 minutes ago"),
            (119, "1 hour ago"),
            (600, "10 hours ago"),
            (1500, "yesterday"),
            (3000, "2 days ago"),
            (200_000, "on 5 May 2026"),
        ] {
            let then = Moment::new(now.instant_ms - minutes * 60_000, 60).unwrap();
            assert_eq!(
                ago_text(then, now, Locale::default()),
                told,
                "{minutes} min"
            );
        }
    }
}
