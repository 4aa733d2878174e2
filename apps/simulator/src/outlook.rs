//! A question of the page, computed piece by piece: first one run of each way to go on, then the many
//! of the way that is looked at, then those of the others.
//!
//! The others go on together from a past that is simulated once. The way that is looked at does not
//! wait for them, so that the past is simulated twice in all, not once for each way.

use heapwright_answers::heap::{Action, Model};
use heapwright_answers::{
    ForecastAnswer, ForecastQuestion, MemberRuns, Plan, Planned, Prepared, PreparedForecast,
    QuestionError, SimulationAnswer, one_by_one, what_will_happen,
};
use heapwright_garden::Garden;
use heapwright_journal::{EventId, FileReader, Moment};
use heapwright_state::State;
use heapwright_texts::Locale;
use heapwright_wire::{AheadQuestion, forecast_json};
use heapwright_wording as wording;

use crate::frames;
use crate::shown::{self, Options};
use crate::spoken::{catalogue, locale, unread};

/// How far is looked ahead [d].
pub const DAYS: u32 = 30;
/// Runs of each way to go on.
pub const MEMBERS: u32 = 40;
/// Grids from fine to coarse: the finest with which a keeper does not wait long is taken.
const GRIDS: [(usize, usize); 4] = [(6, 4), (4, 4), (4, 3), (3, 2)];
/// Days by cells of the one run that a keeper waits for before there is a picture, and days by runs
/// by cells until all is there (`docs/measurements/heap-in-the-browser.md`).
const WAITED_FOR_ONE: f64 = 6_000.0;
const WAITED_FOR_ALL: f64 = 200_000.0;
/// A turning that is planned is this many days ahead.
const LATER_D: i64 = 3;
/// Water that is poured on where none is wanted [L]: a can.
const A_CAN_L: f64 = 10.0;
/// The most that is poured on in one go [L].
const MOST_WATER_L: f64 = 200.0;

const MS_PER_DAY: i64 = 86_400_000;

/// The question as it was understood.
struct Asked {
    state: State,
    garden: Garden,
    heap: EventId,
    now: Moment,
    turn: usize,
    water: bool,
    locale: Locale,
    width_px: f64,
}

/// The journal of the page's lines.
pub fn read_state(lines: &str) -> State {
    let mut reader = FileReader::default();
    let mut state = State::default();
    state.take_all(
        lines
            .split('\n')
            .filter_map(|line| reader.read(line.as_bytes()))
            .map(|(line, event)| (line.digest(), event)),
    );
    state
}

impl Asked {
    fn read(question: &str) -> Result<Self, String> {
        let asked: AheadQuestion = serde_json::from_str(question).map_err(unread)?;
        let state = read_state(&asked.journal);
        let heap = asked.heap.parse().map_err(unread)?;
        let now: Moment = asked.now.parse().map_err(unread)?;
        Ok(Self {
            garden: Garden::from_state(catalogue(), &state, now),
            state,
            heap,
            now,
            turn: asked.turn.min(2),
            water: asked.water,
            locale: locale(asked.us_units),
            width_px: asked.width_px.clamp(240.0, 1200.0),
        })
    }

    fn question(&self, plans: Vec<Plan>, model: Model) -> ForecastQuestion {
        ForecastQuestion {
            heap: self.heap,
            now: self.now,
            days: f64::from(DAYS),
            plans,
            weather: None,
            members: MEMBERS,
            model,
            member_model: model,
            fields_at_d: Vec::new(),
        }
    }

    /// The ways to go on, the first is to leave the heap alone, and where that of each turning is.
    fn plans(&self, litres: f64) -> (Vec<Plan>, [usize; 3]) {
        let water = self.water.then(|| self.locale.volume(litres / 1000.0));
        let plan = |water: Option<&str>, turn: usize| {
            let mut acts = Vec::new();
            if water.is_some() {
                acts.push(Planned {
                    at: self.now,
                    action: Action::Water { litres },
                });
            }
            let after_d = [None, Some(0), Some(LATER_D)][turn];
            let at = after_d.and_then(|days| {
                Moment::new(
                    self.now.instant_ms.saturating_add(days * MS_PER_DAY),
                    self.now.offset_min,
                )
            });
            acts.extend(at.map(|at| Planned {
                at,
                action: Action::Turn { thoroughness: 1.0 },
            }));
            Plan {
                name: wording::ahead::option_name(water, turn, self.locale),
                acts,
            }
        };
        let mut plans = vec![plan(None, 0)];
        if water.is_some() {
            plans.push(plan(water.as_deref(), 0));
        }
        plans.extend([1, 2].map(|turn| plan(water.as_deref(), turn)));
        let last = plans.len() - 1;
        (plans, [last - 2, last - 1, last])
    }
}

/// A question on its way to its answer.
pub struct Looking {
    asked: Asked,
    forecast: PreparedForecast,
    by_turn: [usize; 3],
    plans: usize,
    litres: f64,
    lines: Vec<heapwright_answers::heap::Run>,
    /// What came of all runs of a plan.
    whole: Vec<Option<SimulationAnswer>>,
    /// The plans whose runs are still to come: those of the first entry together, then the next.
    order: Vec<Vec<usize>>,
    /// Runs of each plan of the first entry.
    members: Vec<MemberRuns>,
    done: u32,
}

impl Looking {
    /// Reads a question of the page. The error is a sentence.
    ///
    /// # Errors
    ///
    /// When it cannot be read, or nothing lies in the heap.
    pub fn new(question: &str) -> Result<Self, String> {
        let asked = Asked::read(question)?;
        let forecast = prepare(&asked, Vec::new())?;
        let (plans, by_turn) = asked.plans(A_CAN_L);
        let looked_at = by_turn[asked.turn];
        let others = (0..plans.len()).filter(|plan| *plan != looked_at);
        let order = vec![vec![looked_at], others.collect()];
        Ok(Self {
            asked,
            forecast,
            by_turn,
            plans: plans.len(),
            litres: A_CAN_L,
            lines: Vec::new(),
            whole: plans.iter().map(|_| None).collect(),
            order,
            members: Vec::new(),
            done: 0,
        })
    }

    /// Runs that are done.
    #[must_use]
    pub fn done(&self) -> u32 {
        self.done
    }

    /// All runs.
    #[must_use]
    pub fn all(&self) -> u32 {
        u32::try_from(self.plans).unwrap_or(0) * (MEMBERS + 1)
    }

    /// Goes one piece further; hands back what is to be shown, as JSON, when there is something new.
    ///
    /// # Errors
    ///
    /// When the computation cannot go on; a sentence.
    pub fn step(&mut self) -> Result<Option<String>, String> {
        if self.lines.len() < self.plans {
            self.next_lines()?;
            return self.shown().map(Some);
        }
        let Some(plans) = self.order.first() else {
            return Ok(None);
        };
        let ways: Vec<&Prepared> = plans
            .iter()
            .filter_map(|plan| self.forecast.prepared().get(*plan))
            .collect();
        let Some(first) = ways.first() else {
            return Ok(None);
        };
        self.members.resize(ways.len(), Vec::new());
        let member = self.members.first().map_or(0, Vec::len);
        let member = u32::try_from(member).unwrap_or(u32::MAX);
        for (runs, run) in self.members.iter_mut().zip(first.members_of(&ways, member)) {
            runs.push(run);
            self.done += 1;
        }
        if member + 1 < MEMBERS {
            return Ok(None);
        }
        let members = std::mem::take(&mut self.members);
        for ((plan, way), members) in plans.iter().zip(ways).zip(members) {
            let line = self.lines.get(*plan).cloned();
            if let (Some(line), Some(whole)) = (line, self.whole.get_mut(*plan)) {
                *whole = Some(way.answer_of(line, members));
            }
        }
        self.order.remove(0);
        self.shown().map(Some)
    }

    /// The line of leaving the heap alone, or after it all others.
    fn next_lines(&mut self) -> Result<(), String> {
        let is_first = self.lines.is_empty();
        let ways = self.forecast.prepared().iter().skip(self.lines.len());
        let ways: Vec<&Prepared> = ways.take(if is_first { 1 } else { self.plans }).collect();
        let Some(first) = ways.first() else {
            return Err(wording::ahead::nothing_ahead(self.asked.locale).to_owned());
        };
        for line in first
            .lines(&ways)
            .map_err(|error| sentence(&error, self.asked.locale))?
        {
            self.lines.push(line);
            self.done += 1;
        }
        if is_first {
            // What is wanted now is what is poured on.
            self.litres = self.wanted_l();
            let (plans, _) = self.asked.plans(self.litres);
            self.forecast = prepare(&self.asked, plans)?;
        }
        Ok(())
    }

    /// Water that brings the heap to where it works well, in whole cans of 5 L [L].
    fn wanted_l(&self) -> f64 {
        let now_d = self.forecast.now_d();
        let wanted = self
            .lines
            .first()
            .and_then(|line| line.series.iter().find(|row| row.time_d >= now_d))
            .map_or(0.0, |row| row.water_wanted_l);
        if wanted < 2.5 {
            return A_CAN_L;
        }
        (wanted / 5.0).round().clamp(1.0, MOST_WATER_L / 5.0) * 5.0
    }

    fn answer(&self) -> ForecastAnswer {
        let answers = self
            .lines
            .iter()
            .zip(self.forecast.prepared())
            .zip(&self.whole)
            .map(|((line, prepared), whole)| match whole {
                Some(whole) => whole.clone(),
                None => prepared.answer_of(line.clone(), Vec::new()),
            })
            .collect();
        self.forecast.answer(answers)
    }

    fn shown(&self) -> Result<String, String> {
        let options = Options {
            by_turn: self.by_turn,
            whole: self.order.is_empty(),
            // The cross-section is that of the one run, which does not change.
            framed: self.whole.iter().any(Option::is_some),
            water: self.asked.locale.volume(self.litres / 1000.0),
            width_px: self.asked.width_px,
            locale: self.asked.locale,
        };
        let shown = shown::shown(&self.asked.state, &self.answer(), &options);
        serde_json::to_string(&shown).map_err(|error| error.to_string())
    }
}

fn prepare(asked: &Asked, plans: Vec<Plan>) -> Result<PreparedForecast, String> {
    let question = asked.question(plans, Model::Lumped);
    let forecast = PreparedForecast::of(catalogue(), &asked.garden, &asked.state, &question)
        .map_err(|error| sentence(&error, asked.locale))?;
    // How long the past is, is known when it is read.
    let now_d = forecast.now_d();
    let days = now_d.max(0.0) + f64::from(DAYS);
    let runs = if asked.water { 4.0 } else { 3.0 } * f64::from(MEMBERS);
    Ok(forecast.cut(
        grid(days, WAITED_FOR_ONE),
        grid(days * runs, WAITED_FOR_ALL),
        &frames::days(now_d),
    ))
}

/// How finely space is cut, by the days of all runs and the work that is waited for.
fn grid(days: f64, waited_for: f64) -> Model {
    GRIDS
        .into_iter()
        .find(|(layers, rings)| {
            #[allow(clippy::cast_precision_loss)] // some cells
            let cells = (layers * rings) as f64;
            days * cells <= waited_for
        })
        .map_or(Model::Lumped, |(layers, rings)| Model::Spatial {
            layers,
            rings,
        })
}

/// What is wrong, in a sentence of the page.
fn sentence(error: &QuestionError, locale: Locale) -> String {
    match error {
        QuestionError::NothingInHeap => wording::ahead::nothing_ahead(locale).to_owned(),
        other => wording::question_refusal(other, locale),
    }
}

/// The answer of the program to leaving the heap alone, for comparison.
pub fn forecast(question: &str, days: u32, members: u32) -> Result<String, String> {
    let asked = Asked::read(question)?;
    let model = Model::Spatial {
        layers: 6,
        rings: 4,
    };
    let question = ForecastQuestion {
        days: f64::from(days),
        members,
        ..asked.question(Vec::new(), model)
    };
    let catalogue = catalogue();
    let answer = what_will_happen(
        catalogue,
        &asked.garden,
        &asked.state,
        &question,
        &one_by_one,
    )
    .map_err(|error| sentence(&error, asked.locale))?;
    serde_json::to_string(&forecast_json(catalogue, &asked.state, &answer))
        .map_err(|error| error.to_string())
}

#[cfg(test)]
mod tests {
    use super::*;
    use heapwright_wire::AheadShown;

    /// A question on the last heap of the invented garden, or on one in which nothing lies.
    fn question(turn: usize, water: bool, empty: bool) -> String {
        let day = jiff::civil::date(2026, 11, 15);
        let lines: Vec<String> = heapwright_invented::lines(&heapwright_invented::Plan::demo(day))
            .map(Result::unwrap)
            .filter(|line| !empty || !line.contains("\"kind\":\"fed\""))
            .collect();
        let heap = lines
            .iter()
            .rfind(|line| line.contains("\"kind\":\"heap_started\""))
            .unwrap();
        let id = heap.split("\"id\":\"").nth(1).unwrap();
        serde_json::to_string(&AheadQuestion {
            journal: lines.join("\n"),
            heap: id.split('"').next().unwrap().to_owned(),
            now: "2026-11-15T12:00:00+00:00".to_owned(),
            turn,
            water,
            us_units: false,
            width_px: 320.0,
        })
        .unwrap()
    }

    fn next_shown(looking: &mut Looking) -> AheadShown {
        loop {
            if let Some(text) = looking.step().unwrap() {
                return serde_json::from_str(&text).unwrap();
            }
            assert!(looking.done() < looking.all());
        }
    }

    #[test]
    fn the_line_comes_first_then_all_ways_then_the_runs_of_the_one_looked_at() {
        let mut looking = Looking::new(&question(1, true, false)).unwrap();
        let first = next_shown(&mut looking);
        assert_eq!((looking.done(), first.options.len()), (1, 1));
        assert_eq!(first.options[0].name, "Leave it alone");
        let frames = &first.options[0].frames;
        assert_eq!(frames[first.frame_now].when, "now");
        assert!(frames.iter().all(|frame| !frame.layers.is_empty()));

        let lines = next_shown(&mut looking);
        assert_eq!((looking.done(), lines.options.len()), (4, 4));
        assert_eq!(lines.by_turn, [1, 2, 3]);
        assert_eq!(lines.differences.len(), 3);
        assert_eq!(lines.table.heads.len(), 5);
        assert!(lines.options[2].name.ends_with("and turn it now"));
        assert!(!lines.read.rows.is_empty(), "the garden has readings");

        let mut bands = next_shown(&mut looking);
        assert!(bands.options[0].frames.is_empty(), "told before");
        bands.keep_frames(&lines);
        assert_eq!(bands.options[3].frames, lines.options[3].frames);
        assert_eq!(looking.done(), 4 + MEMBERS);
        let heads = |which: usize| bands.options[which].charts[0].table.heads.len();
        assert_eq!(heads(2), heads(1) + 2, "the one looked at has bands");
        assert!(!bands.whole);
        let words = &bands.options[2].charts[0].sentence;
        assert!(words.contains("Nine of ten runs lie between"), "{words}");
        // Turning brings air: the ways differ.
        assert!(bands.table.rows.iter().any(|row| row[1] != row[3]));
    }

    #[test]
    fn a_heap_in_which_nothing_lies_is_told_what_to_do() {
        let told = Looking::new(&question(0, false, true)).err();
        assert_eq!(
            told.as_deref(),
            Some(wording::ahead::nothing_ahead(Locale::default()))
        );
        assert!(Looking::new("{}").is_err());
    }
}
