//! From a case to an answer: the line, the members of the ensemble, and bands over them.

use heapwright_engine::heap::{
    Action, Band, Bands, Case, Enclosure, Event, Model, Options, Parameters, Run, Snapshot, hold,
};

use super::weather::WeatherGiven;
use super::{Done, FieldsAt, SimulationAnswer, SimulationNotice, SimulationQuestion, band_of};
use crate::question::QuestionError;

/// From here on the core counts as hot [degC]: common practice.
const HOT_C: f64 = 55.0;
/// Below this some part counts as short of air [% oxygen].
const SOUR_PCT: f64 = 2.0;
/// Most runs of members that are held at a time, of some hundred kilobytes each.
const MOST_RUNS_HELD: usize = 1200;
/// Most rows that a member keeps, before and after the time looked ahead from.
const MEMBER_ROWS: usize = 500;
/// So long before that time each row is kept: pictures show every day of it [d].
const LATELY_D: f64 = 31.0;

/// What a member sees of each way to go on; `None` when its computation did not get on.
pub type MemberRuns = Vec<Option<Run>>;

/// Runs the members 0 to a count and hands back their runs in order: one by one, or on threads.
pub type Runner<'a> = dyn Fn(u32, &(dyn Fn(u32) -> MemberRuns + Sync)) -> Vec<MemberRuns> + 'a;

/// Runs members one after another.
#[must_use]
pub fn one_by_one(count: u32, member: &(dyn Fn(u32) -> MemberRuns + Sync)) -> Vec<MemberRuns> {
    (0..count).map(member).collect()
}

/// A question made ready to run.
#[derive(Clone, Debug, PartialEq)]
pub struct Prepared {
    pub(crate) start_ms: i64,
    pub(crate) days: f64,
    pub(crate) every_h: f64,
    pub(crate) model: Model,
    pub(crate) enclosure: Enclosure,
    pub(crate) weather: WeatherGiven,
    pub(crate) sun_share: f64,
    pub(crate) events: Vec<Event>,
    pub(crate) members: u32,
    pub(crate) member_model: Model,
    pub(crate) seed: u64,
    pub(crate) fields_at_d: Vec<f64>,
    /// From when the keeper looks ahead.
    pub(crate) from_d: f64,
    pub(crate) notices: Vec<SimulationNotice>,
}

/// Figures from a time on.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Ahead {
    /// Highest core temperature [degC].
    pub peak_core_temperature_c: f64,
    /// When [d after the start].
    pub peak_day: f64,
    /// Days with the core at 55 degC or more.
    pub days_hot: f64,
    /// Lowest oxygen [%].
    pub lowest_oxygen_pct: f64,
    /// When.
    pub lowest_oxygen_day: f64,
    /// Days with some part short of air.
    pub days_sour: f64,
    /// Water that is wanted at the end, below 0 what is too much [L].
    pub water_wanted_l: f64,
    /// Lowest moisture [kg/kg].
    pub driest: f64,
    /// Volume at the end [m3].
    pub volume_m3: f64,
    /// From when it counts as ready.
    pub ready_day: Option<f64>,
}

/// How closely the members of an ensemble are computed: half a degree at worst, far less than what
/// lies between them (`docs/measurements/heap.md`).
const MEMBER_TOLERANCE: f64 = 10.0;

impl Ahead {
    fn of(run: &Run, from_d: f64) -> Self {
        let rows: Vec<&Snapshot> = run
            .series
            .iter()
            .filter(|row| row.time_d >= from_d - 1e-9)
            .collect();
        let mut ahead = Self {
            peak_core_temperature_c: f64::NEG_INFINITY,
            lowest_oxygen_pct: 100.0,
            driest: 1.0,
            ready_day: run.summary.ready_day,
            ..Self::default()
        };
        for row in &rows {
            if row.core_temperature_c > ahead.peak_core_temperature_c {
                ahead.peak_core_temperature_c = row.core_temperature_c;
                ahead.peak_day = row.time_d;
            }
            if row.lowest_oxygen_pct < ahead.lowest_oxygen_pct {
                ahead.lowest_oxygen_pct = row.lowest_oxygen_pct;
                ahead.lowest_oxygen_day = row.time_d;
            }
            ahead.driest = ahead.driest.min(row.moisture);
        }
        for pair in rows.windows(2) {
            let days = pair[1].time_d - pair[0].time_d;
            ahead.days_hot += days
                * share_above(
                    HOT_C,
                    pair[0].core_temperature_c,
                    pair[1].core_temperature_c,
                );
            ahead.days_sour += days
                * share_above(
                    -SOUR_PCT,
                    -pair[0].lowest_oxygen_pct,
                    -pair[1].lowest_oxygen_pct,
                );
        }
        if let Some(last) = rows.last().copied().or(run.series.last()) {
            ahead.water_wanted_l = last.water_wanted_l;
            ahead.volume_m3 = last.volume_m3;
        }
        ahead
    }
}

/// Share of a stretch on which a value that runs straight lies above a limit.
fn share_above(limit: f64, from: f64, to: f64) -> f64 {
    let (low, high) = (from.min(to), from.max(to));
    if low >= limit {
        1.0
    } else if high < limit {
        0.0
    } else {
        (high - limit) / (high - low)
    }
}

/// Where the figures of an ensemble from a time on lie.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Spread {
    /// How many members there are.
    pub members: u32,
    /// Highest core temperature [degC].
    pub peak_core_temperature_c: Band,
    /// When [d after the start].
    pub peak_day: Band,
    /// Days with the core at 55 degC or more.
    pub days_hot: Band,
    /// Share of the members with some part short of air for a day or more.
    pub sour_share: f64,
    /// Water that is wanted at the end, below 0 what is too much [L].
    pub water_wanted_l: Band,
    /// Volume at the end [m3].
    pub volume_m3: Band,
    /// Share of the members that are ready by the end.
    pub ready_share: f64,
    /// When those are ready [d after the start].
    pub ready_day: Option<Band>,
}

impl Spread {
    fn of(all: &[Ahead]) -> Self {
        #[allow(clippy::cast_precision_loss)] // a thousand members
        let share = |count: usize| count as f64 / all.len().max(1) as f64;
        let band = |of: fn(&Ahead) -> f64| band_of(all.iter().map(of));
        let ready: Vec<f64> = all.iter().filter_map(|ahead| ahead.ready_day).collect();
        Self {
            members: u32::try_from(all.len()).unwrap_or(u32::MAX),
            peak_core_temperature_c: band(|ahead| ahead.peak_core_temperature_c),
            peak_day: band(|ahead| ahead.peak_day),
            days_hot: band(|ahead| ahead.days_hot),
            sour_share: share(all.iter().filter(|ahead| ahead.days_sour >= 1.0).count()),
            water_wanted_l: band(|ahead| ahead.water_wanted_l),
            volume_m3: band(|ahead| ahead.volume_m3),
            ready_share: share(ready.len()),
            ready_day: (!ready.is_empty()).then(|| band_of(ready.into_iter())),
        }
    }
}

impl Prepared {
    pub(crate) fn new(
        question: &SimulationQuestion,
        events: Vec<Event>,
        mut notices: Vec<SimulationNotice>,
    ) -> Result<Self, QuestionError> {
        let unknown = question
            .weather
            .unknown_hours(question.start_ms, question.days);
        if unknown > 0 {
            notices.push(SimulationNotice::WeatherUsual { hours: unknown });
            if question
                .weather
                .climate()
                .is_some_and(heapwright_weather::Climate::is_rough)
            {
                notices.push(SimulationNotice::ClimateRough);
            }
        }
        let fed_m3: f64 = events
            .iter()
            .filter(|event| event.day <= 0.0)
            .map(|event| match &event.action {
                Action::Feed { charge, .. } => charge.volume_m3,
                _ => 0.0,
            })
            .sum();
        // What is built at once stands as high as it is; a tenth more than the brim is a hat.
        if fed_m3 > 1.1 * question.enclosure.capacity_m3() {
            notices.push(SimulationNotice::Overfull);
        }
        notices.sort();
        notices.dedup();
        Ok(Self {
            start_ms: question.start_ms,
            days: question.days,
            every_h: question.every_h,
            model: question.model,
            enclosure: question.enclosure,
            weather: question.weather.clone(),
            sun_share: 1.0,
            events,
            members: question.members,
            member_model: question.member_model,
            seed: question.seed,
            fields_at_d: question.fields_at_d.clone(),
            from_d: 0.0,
            notices,
        })
    }

    fn case(&self, model: Model, member: Option<u32>) -> Result<Case, QuestionError> {
        Ok(Case {
            enclosure: self.enclosure,
            weather: self.weather.for_engine(
                self.start_ms,
                self.days,
                self.sun_share,
                member.map(|member| (self.seed, member)),
            )?,
            events: self.events.clone(),
            days: self.days,
            model,
        })
    }

    /// The run with all parameters as they are likeliest, in the usual weather.
    ///
    /// # Errors
    ///
    /// When the case has no meaning or the computation cannot go on.
    pub fn line(&self) -> Result<Run, QuestionError> {
        self.lines(&[self])?
            .pop()
            .ok_or(QuestionError::NothingInHeap)
    }

    /// The lines of several ways to go on from what all have behind them, which is simulated once.
    ///
    /// # Errors
    ///
    /// When a case has no meaning or the computation cannot go on.
    pub fn lines(&self, all: &[&Self]) -> Result<Vec<Run>, QuestionError> {
        let options = Options {
            every_h: self.every_h,
            fields: !self.fields_at_d.is_empty(),
            ..Options::default()
        };
        let (case, parameters) = (self.case(self.model, None)?, Parameters::default());
        let held =
            hold(&case, &parameters, &options, self.from_d).map_err(QuestionError::Simulation)?;
        all.iter()
            .map(|way| held.go_on(&way.events).map_err(QuestionError::Simulation))
            .collect()
    }

    /// One member of the ensemble; `None` when its computation did not get on.
    #[must_use]
    pub fn member(&self, member: u32) -> Option<Run> {
        self.members_of(&[self], member).pop().flatten()
    }

    /// One member of the ensemble on several ways to go on from what all have behind them, which is
    /// simulated once.
    #[must_use]
    pub fn members_of(&self, all: &[&Self], member: u32) -> MemberRuns {
        let options = Options {
            every_h: self.every_h,
            tolerance: MEMBER_TOLERANCE,
            ..Options::default()
        };
        let parameters = Parameters::drawn(self.seed, member);
        let case = self.case(self.member_model, Some(member)).ok();
        let held = case
            .as_ref()
            .and_then(|case| hold(case, &parameters, &options, self.from_d).ok());
        all.iter()
            .map(|way| {
                let mut run = held.as_ref()?.go_on(&way.events).ok()?;
                thin(&mut run.series, self.from_d);
                Some(run)
            })
            .collect()
    }

    /// How many members are asked for.
    #[must_use]
    pub fn members(&self) -> u32 {
        self.members
    }

    /// Runs it all.
    ///
    /// # Errors
    ///
    /// When the case has no meaning or the computation cannot go on.
    pub fn answer(&self, runner: &Runner<'_>) -> Result<SimulationAnswer, QuestionError> {
        Self::answers(std::slice::from_ref(self), runner)?
            .pop()
            .ok_or(QuestionError::NothingInHeap)
    }

    /// Runs several ways to go on that have the same behind them up to the time looked ahead
    /// from: that is simulated once for all of them, by the line and by each member.
    ///
    /// # Errors
    ///
    /// When a case has no meaning or the computation cannot go on.
    pub(crate) fn answers(
        all: &[Self],
        runner: &Runner<'_>,
    ) -> Result<Vec<SimulationAnswer>, QuestionError> {
        let mut answers = Vec::new();
        // So many at a time that their runs find room.
        let members = all.first().map_or(0, |first| first.members as usize);
        for ways in all.chunks((MOST_RUNS_HELD / members.max(1)).max(1)) {
            let ways: Vec<&Self> = ways.iter().collect();
            let Some(first) = ways.first() else {
                continue;
            };
            let lines = first.lines(&ways)?;
            let mut members: Vec<MemberRuns> = vec![Vec::new(); ways.len()];
            if first.members > 0 {
                for runs in runner(first.members, &|member| first.members_of(&ways, member)) {
                    for (way, run) in members.iter_mut().zip(runs) {
                        way.push(run);
                    }
                }
            }
            for ((way, line), runs) in ways.iter().zip(lines).zip(members) {
                answers.push(way.answer_of(line, runs));
            }
        }
        Ok(answers)
    }

    /// The answer from what was run: the line, and of each member what came of it; without
    /// members the line alone.
    #[must_use]
    pub fn answer_of(&self, line: Run, members: MemberRuns) -> SimulationAnswer {
        let mut notices = self.notices.clone();
        let (mut bands, mut spread) = (None, None);
        if !members.is_empty() {
            let count = members.len();
            let runs: Vec<Run> = members.into_iter().flatten().collect();
            let failed = u32::try_from(count - runs.len()).unwrap_or(u32::MAX);
            if failed > 0 {
                notices.push(SimulationNotice::MembersFailed { count: failed });
            }
            let ahead: Vec<Ahead> = runs.iter().map(|run| Ahead::of(run, self.from_d)).collect();
            if !runs.is_empty() {
                spread = Some(Spread::of(&ahead));
                bands = Some(Bands::over(&runs, failed));
            }
        }
        SimulationAnswer {
            start_ms: self.start_ms,
            enclosure: self.enclosure,
            ahead: Ahead::of(&line, self.from_d),
            fields: fields_at(&line, &self.fields_at_d),
            series: line.series,
            summary: line.summary,
            bands,
            spread,
            done: self
                .events
                .iter()
                .map(|event| (event.day, Done::of(&event.action)))
                .collect(),
            notices,
        }
    }
}

/// The cross-sections at the rows nearest to some days, each once.
fn fields_at(run: &Run, days: &[f64]) -> Vec<FieldsAt> {
    let mut rows: Vec<usize> = days
        .iter()
        .filter_map(|day| {
            let behind = run.series.partition_point(|row| row.time_d < *day);
            [behind.saturating_sub(1), behind]
                .into_iter()
                .filter(|row| *row < run.series.len())
                .min_by(|one, other| {
                    let far = |row: usize| (run.series[row].time_d - day).abs();
                    far(*one).total_cmp(&far(*other))
                })
        })
        .collect();
    rows.sort_unstable();
    rows.dedup();
    rows.into_iter()
        .filter_map(|row| {
            Some(FieldsAt {
                time_d: run.series[row].time_d,
                cells: run.fields.get(row)?.clone(),
            })
        })
        .collect()
}

/// Leaves so many rows before a time and after it that bands can be drawn, and all that are lately
/// before it.
fn thin(rows: &mut Vec<Snapshot>, from_d: f64) {
    let until = |day: f64| rows.partition_point(|row| row.time_d < day - 1e-9);
    let (lately, before) = (until(from_d - LATELY_D), until(from_d));
    let after = rows.len() - before;
    let (step_before, step_after) = (
        lately.div_ceil(MEMBER_ROWS).max(1),
        after.div_ceil(MEMBER_ROWS).max(1),
    );
    let last = rows.len().saturating_sub(1);
    let mut index = 0;
    rows.retain(|_| {
        let kept = if index < lately {
            index % step_before == 0
        } else if index < before {
            true
        } else {
            (index - before) % step_after == 0 || index == last
        };
        index += 1;
        kept
    });
    rows.shrink_to_fit();
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn of_an_old_heap_every_row_of_the_last_month_is_kept() {
        let row = |quarter: u32| Snapshot {
            time_d: f64::from(quarter) / 4.0,
            ..Snapshot::default()
        };
        let mut rows: Vec<Snapshot> = (0..=4 * 630).map(row).collect();
        thin(&mut rows, 600.0);
        assert!(rows.len() <= MEMBER_ROWS + 4 * 61 + 1, "{}", rows.len());
        let late = |pair: &&[Snapshot]| pair[0].time_d >= 600.0 - LATELY_D;
        let mut steps = rows.windows(2).filter(late);
        assert!(steps.all(|pair| pair[1].time_d - pair[0].time_d < 0.26));
        assert!(rows[1].time_d > 1.0, "what is long ago is thinned");
    }
}
