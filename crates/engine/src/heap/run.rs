//! From a case to a run: stretch by stretch between events, and what was seen on the way.

use heapwright_numerics::{Chebyshev, Cost, Stuck};

use super::air;
use super::case::{Action, Case, Event, Options, SimulationError};
use super::derivative::Heap;
use super::layout::ledger::LEDGERS;
use super::parameters::Parameters;
use super::pile::{Pile, Sums};
use super::snapshot::{CellField, Snapshot};
use super::summary::{Moved, Summary};
use super::tracers::time_above;
use super::weather::Weather;

/// A simulated heap.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Run {
    /// Rows at the times asked for.
    pub series: Vec<Snapshot>,
    /// Cross-sections at the same times, when asked for.
    pub fields: Vec<Vec<CellField>>,
    /// Figures of the whole.
    pub summary: Summary,
    /// What was fed, and what is left.
    pub fed: Sums,
    /// What is left.
    pub left: Sums,
    /// Work.
    pub cost: RunCost,
}

/// What a run cost.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct RunCost {
    /// Steps taken.
    pub steps: usize,
    /// Steps thrown away.
    pub rejected: usize,
    /// Slopes computed.
    pub slopes: usize,
}

/// Longest step [d]: temperature runs nearly straight within it.
const LONGEST_STEP_D: f64 = 1.0;
/// The same in weather that varies: a piece of its daily swing.
const LONGEST_STEP_IN_WEATHER_D: f64 = 0.125;
/// Steps allowed in all, and for each day.
const MOST_STEPS: f64 = 20_000.0;
const MOST_STEPS_PER_D: f64 = 1000.0;
/// Days of cooling after which a heap may count as finished.
const COOL_DAYS: f64 = 7.0;

/// Simulates a case.
///
/// # Errors
///
/// When the case has no meaning or the computation cannot go on.
pub fn simulate(
    case: &Case,
    parameters: &Parameters,
    options: &Options,
) -> Result<Run, SimulationError> {
    case.check(options, parameters)?;
    let mut simulation = Simulation::new(case, parameters, options);
    simulation.go(&case.events, None)?;
    Ok(simulation.finish())
}

/// A simulation that was stopped on a day, from where several ways to go on can start.
#[derive(Clone)]
pub struct Held<'a> {
    simulation: Simulation<'a>,
}

/// Simulates a case up to a day, before anything that is done on it.
///
/// # Errors
///
/// When the case has no meaning or the computation cannot go on.
pub fn hold<'a>(
    case: &'a Case,
    parameters: &'a Parameters,
    options: &Options,
    day: f64,
) -> Result<Held<'a>, SimulationError> {
    case.check(options, parameters)?;
    let mut simulation = Simulation::new(case, parameters, options);
    simulation.go(&case.events, Some(day))?;
    Ok(Held { simulation })
}

impl Held<'_> {
    /// Goes on to the end with what is done from then on; the same events give the same run to
    /// the last bit, however often and in whatever order they are asked for.
    ///
    /// - `events`: those of the whole case, the past as it was
    ///
    /// # Errors
    ///
    /// When the past is another one, an event has no meaning or the computation cannot go on.
    pub fn go_on(&self, events: &[Event]) -> Result<Run, SimulationError> {
        let past = self.simulation.next_event;
        let case = self.simulation.case;
        case.check_events(events, self.simulation.parameters)?;
        for (index, event) in case.events[..past].iter().enumerate() {
            if events.get(index) != Some(event) {
                return Err(SimulationError::Event { index });
            }
        }
        if events[past..]
            .iter()
            .any(|event| event.day < self.simulation.day)
        {
            return Err(SimulationError::Event { index: past });
        }
        let mut simulation = self.simulation.clone();
        simulation.go(events, None)?;
        Ok(simulation.finish())
    }
}

#[derive(Clone)]
struct Simulation<'a> {
    case: &'a Case,
    parameters: &'a Parameters,
    heap: Heap<'a>,
    pile: Pile,
    moved: Moved,
    integrator: Chebyshev,
    seen: Seen,
    /// Day reached.
    day: f64,
    /// The first event that is not done yet.
    next_event: usize,
}

/// What was seen so far.
#[derive(Clone, Default)]
struct Seen {
    run: Run,
    rows: u32,
    first_row_d: f64,
    every_d: f64,
    keep_fields: bool,
    before_c: Vec<f64>,
    core_before_c: f64,
    mean_before_c: f64,
    between: Vec<f64>,
    cool_since_d: Option<f64>,
}

impl<'a> Simulation<'a> {
    fn new(case: &'a Case, parameters: &'a Parameters, options: &Options) -> Self {
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // within limits
        let most_steps = (MOST_STEPS + MOST_STEPS_PER_D * case.days) as usize;
        let longest = if case.weather.varies() {
            LONGEST_STEP_IN_WEATHER_D
        } else {
            LONGEST_STEP_D
        };
        Self {
            case,
            parameters,
            heap: Heap::new(parameters, &case.weather, case.enclosure, options.tolerance),
            pile: Pile::default(),
            moved: Moved::default(),
            integrator: Chebyshev::new(longest, most_steps),
            day: 0.0,
            next_event: 0,
            seen: Seen {
                every_d: options.every_h / 24.0,
                keep_fields: options.fields,
                run: Run {
                    summary: Summary {
                        peak_core_temperature_c: f64::NEG_INFINITY,
                        peak_mean_temperature_c: f64::NEG_INFINITY,
                        lowest_oxygen_pct: 100.0,
                        ..Summary::default()
                    },
                    ..Run::default()
                },
                ..Seen::default()
            },
        }
    }

    /// Goes on to the end, or to a day on which it is held before anything is done.
    fn go(&mut self, events: &[Event], held: Option<f64>) -> Result<(), SimulationError> {
        let days = self.case.days;
        let last = held.map_or(days, |held| held.min(days));
        loop {
            if held.is_some() && self.day >= last {
                return Ok(());
            }
            let mut next = self.next_event;
            let changed = self.act(events, &mut next, self.day);
            self.next_event = next;
            if self.day >= days {
                return Ok(());
            }
            let until = events.get(next).map_or(last, |event| event.day.min(last));
            if self.pile.cells.is_empty() {
                self.seen
                    .nothing(&self.case.weather, self.parameters, until);
                self.day = until;
                continue;
            }
            if changed {
                self.integrator.forget();
            }
            let mut day = self.day;
            self.go_to(&mut day, until)?;
            self.day = day;
        }
    }

    /// Does all that is due by `day`; true when something was done.
    fn act(&mut self, events: &[Event], next: &mut usize, day: f64) -> bool {
        let first = *next;
        while let Some(event) = events.get(*next).filter(|event| event.day <= day) {
            let turned = events
                .iter()
                .any(|other| other.day == event.day && matches!(other.action, Action::Turn { .. }));
            if self.pile.cells.is_empty()
                && !matches!(event.action, Action::Feed { .. } | Action::Cover(_))
            {
                // Nothing is there yet to turn, water or take.
            } else {
                self.do_one(&event.action, day, turned);
            }
            *next += 1;
        }
        *next > first
    }

    fn do_one(&mut self, action: &Action, day: f64, turned: bool) {
        let parameters = self.parameters;
        let air_c = self.case.weather.at(day).temperature_c + parameters.air_offset_k;
        match action {
            Action::Feed {
                charge,
                temperature_c,
            } => {
                let contents = charge.contents(parameters, temperature_c.unwrap_or(air_c));
                self.moved.fed.add(&contents, parameters);
                let (layers, rings) = self.case.model.size();
                let lumped = layers == 1 && rings == 1;
                let capacity = self.heap.enclosure.capacity_m3();
                let before = self.pile.volume_m3();
                let volume = before + charge.volume_m3;
                let nominal = self.nominal_m3(volume);
                let shares = super::geometry::Geometry::new(1, rings, lumped).ring_share;
                self.pile.feed(&contents, &shares, nominal, layers);
                let wanted = libm::cbrt(volume / capacity).min(1.0);
                let first = before == 0.0;
                self.heap.spread = if first {
                    wanted
                } else {
                    self.heap.spread.max(wanted)
                };
                if self.heap.enclosure.shape != super::enclosure::Shape::Cone {
                    self.heap.spread = 1.0;
                }
            }
            Action::Turn { thoroughness } => {
                self.pile.mix(*thoroughness, parameters);
                let (heat, water) = self.pile.cool(
                    thoroughness * parameters.turning_heat_loss,
                    air_c,
                    parameters,
                );
                self.moved.turning_heat_mj += heat;
                self.moved.turning_water_kg += water;
                self.pile
                    .loosen(thoroughness * parameters.loosening, parameters);
            }
            Action::Water { litres } => {
                let heat = litres * air::WATER_HEAT_MJ_KG_K * air_c.max(0.0);
                self.pile.water(*litres, heat, turned, parameters);
                self.moved.watered_kg += litres;
                self.moved.watering_heat_mj += heat;
            }
            Action::Cover(cover) => self.heap.enclosure.cover = *cover,
            Action::TakeOut { share, from_below } => {
                let nominal = self.nominal_m3(self.pile.volume_m3());
                let taken = self.pile.take_out(*share, *from_below, nominal, parameters);
                add(&mut self.moved.taken, &taken);
            }
        }
        self.heap.carried = self.pile.carried(parameters);
    }

    /// Volume of a layer of usual thickness in a heap of a volume.
    fn nominal_m3(&self, volume_m3: f64) -> f64 {
        let (layers, _) = self.case.model.size();
        #[allow(clippy::cast_precision_loss)] // a few layers
        let layers = layers as f64;
        self.heap.enclosure.capacity_m3().max(volume_m3) / layers
    }

    /// Integrates to `end`.
    fn go_to(&mut self, day: &mut f64, end: f64) -> Result<(), SimulationError> {
        let parameters = self.parameters;
        if self.heap.geometry.layers != self.pile.layers {
            let (layers, rings) = self.case.model.size();
            self.heap
                .take_grid(self.pile.layers, self.pile.rings, layers == 1 && rings == 1);
        }
        self.heap.carried = self.pile.carried(parameters);
        let mut y = self.pile.to_state(parameters);
        self.heap.look(*day, &y);
        self.heap.use_oxygen();
        if self.seen.run.series.is_empty() {
            self.seen.first_row_d = *day;
        }
        self.seen.start(&self.heap, *day);
        let (seen, pile) = (&mut self.seen, &mut self.pile);
        self.integrator
            .integrate(&mut self.heap, *day, end, &mut y, |heap, step| {
                seen.step(heap, pile, step);
            })
            .map_err(|stuck| {
                let (Stuck::TooManySteps { at } | Stuck::StepTooShort { at }) = stuck;
                SimulationError::Stuck { day: at }
            })?;
        *day = end;
        self.pile.take_state(&y, parameters);
        Ok(())
    }

    fn finish(mut self) -> Run {
        let left = self.pile.sums(self.parameters);
        let books: [f64; LEDGERS] = self.pile.books;
        let mut run = std::mem::take(&mut self.seen.run);
        run.summary.close(&left, &self.moved, &books);
        run.summary.hot_shares = self.pile.hot_shares();
        run.summary.never_hot_share_pct = 100.0 * run.summary.hot_shares[0];
        run.summary.germ_survival = self.pile.surviving_shares();
        run.fed = self.moved.fed;
        run.left = left;
        let Cost {
            accepted,
            rejected,
            slopes,
        } = self.integrator.cost;
        run.cost = RunCost {
            steps: accepted,
            rejected,
            slopes,
        };
        run
    }
}

fn add(into: &mut Sums, other: &Sums) {
    into.dry_kg += other.dry_kg;
    into.water_kg += other.water_kg;
    into.wet_kg += other.wet_kg;
    into.carbon_kg += other.carbon_kg;
    into.nitrogen_kg += other.nitrogen_kg;
    into.ammonium_kg += other.ammonium_kg;
    into.nitrate_kg += other.nitrate_kg;
    into.rapid_kg += other.rapid_kg;
    into.ash_kg += other.ash_kg;
    into.phosphorus_kg += other.phosphorus_kg;
    into.potassium_kg += other.potassium_kg;
    into.calcium_kg += other.calcium_kg;
    into.magnesium_kg += other.magnesium_kg;
    into.bases_mol += other.bases_mol;
    into.volume_m3 += other.volume_m3;
    into.enthalpy_mj += other.enthalpy_mj;
}

impl Seen {
    fn next_row_d(&self) -> f64 {
        self.first_row_d + f64::from(self.rows) * self.every_d
    }

    /// At the start of a stretch, after an event.
    fn start(&mut self, heap: &Heap<'_>, day: f64) {
        self.before_c.clear();
        self.before_c
            .extend(heap.cells.iter().map(|cell| cell.temperature_c));
        self.core_before_c = heap.core_c();
        self.mean_before_c = heap.mean_c();
        self.peaks(day);
        if self.rows == 0 {
            self.row(heap, day);
        }
    }

    /// While all has been taken out and nothing is put in until `end`.
    fn nothing(&mut self, weather: &Weather, parameters: &Parameters, end: f64) {
        if self.rows == 0 {
            return;
        }
        while self.next_row_d() <= end + 1e-9 {
            let day = self.next_row_d();
            let air_c = weather.at(day).temperature_c + parameters.air_offset_k;
            self.run.series.push(Snapshot::of_nothing(day, air_c));
            if self.keep_fields {
                self.run.fields.push(Vec::new());
            }
            self.rows += 1;
        }
    }

    fn peaks(&mut self, day: f64) {
        let summary = &mut self.run.summary;
        if self.core_before_c > summary.peak_core_temperature_c {
            summary.peak_core_temperature_c = self.core_before_c;
            summary.peak_day = day;
        }
        summary.peak_mean_temperature_c = summary.peak_mean_temperature_c.max(self.mean_before_c);
    }

    /// After an accepted step, with `heap` looked at its end.
    fn step(&mut self, heap: &mut Heap<'_>, pile: &mut Pile, step: &heapwright_numerics::Step<'_>) {
        let days = step.end - step.start;
        let (core, mean) = (heap.core_c(), heap.mean_c());
        let (oxygen, cell) = heap.lowest_oxygen();
        let rings = heap.geometry.rings;
        let summary = &mut self.run.summary;
        summary.days_core_at_or_above_55 += time_above(55.0, self.core_before_c, core, days);
        summary.days_mean_at_or_above_55 += time_above(55.0, self.mean_before_c, mean, days);
        if 100.0 * oxygen < summary.lowest_oxygen_pct {
            summary.lowest_oxygen_pct = 100.0 * oxygen;
            summary.lowest_oxygen_day = step.end;
            summary.lowest_oxygen_layer = cell / rings;
            summary.lowest_oxygen_ring = cell % rings;
        }
        if oxygen < 0.02 {
            summary.days_with_sour_part += days;
        }
        pile.age(&self.before_c, &heap.cells, days);
        for (before, cell) in self.before_c.iter_mut().zip(&heap.cells) {
            *before = cell.temperature_c;
        }
        self.core_before_c = core;
        self.mean_before_c = mean;
        self.peaks(step.end);
        if self.next_row_d() > step.end + 1e-9 {
            return;
        }
        // Rows between two steps: look there, and leave no trace of having looked.
        let cells = heap.cells.clone();
        let potentials = heap.potentials.clone();
        let gas = heap.gas.clone();
        while self.next_row_d() <= step.end + 1e-9 {
            let day = self.next_row_d().min(step.end);
            self.between.resize(step.y_end.len(), 0.0);
            step.at(day, &mut self.between);
            heap.look(day, &self.between);
            heap.use_oxygen();
            self.row(heap, day);
        }
        heap.cells = cells;
        heap.potentials = potentials;
        heap.gas = gas;
    }

    fn row(&mut self, heap: &Heap<'_>, day: f64) {
        let row = heap.snapshot(day);
        let summary = &mut self.run.summary;
        summary.peak_uptake_mg_per_g_vs_h = summary
            .peak_uptake_mg_per_g_vs_h
            .max(row.oxygen_uptake_mg_per_g_vs_h);
        let calm = row.standard_uptake_mg_per_g_vs_h < 0.8
            && (row.core_temperature_c - row.air_temperature_c).abs() < 5.0
            && row.rapid_share < 0.03
            && row.ammonium_share < 0.10;
        self.cool_since_d = if calm {
            self.cool_since_d.or(Some(day))
        } else {
            None
        };
        if summary.ready_day.is_none()
            && self
                .cool_since_d
                .is_some_and(|since| day - since >= COOL_DAYS)
        {
            summary.ready_day = Some(day);
        }
        self.run.series.push(row);
        if self.keep_fields {
            self.run.fields.push(heap.fields());
        }
        self.rows += 1;
    }
}

impl Heap<'_> {
    /// Fills in the oxygen used, which a look alone does not.
    fn use_oxygen(&mut self) {
        for (cell, potential) in self.cells.iter_mut().zip(&self.potentials) {
            cell.oxygen_use = potential.oxygen_use(cell.oxygen, self.parameters).0;
        }
    }
}
