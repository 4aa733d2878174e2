//! The Chebyshev integrator against backward differences with a sparse and a dense Jacobian.
//!
//! Both take the same slopes over the same stretches. The Jacobian of the draught and of
//! oxygen is full; the sparse solver is given a cell, its neighbours and theirs, which is
//! what matters for its iteration, and fills it by differences, colour by colour.

use std::cell::RefCell;
use std::rc::Rc;

use diffsol::{
    DenseMatrix, FaerSparseLU, FaerSparseMat, NalgebraLU, NalgebraMat, OdeBuilder, OdeSolverMethod,
};
use heapwright_numerics::{Chebyshev, System};

use crate::growth::computed;
use crate::heap_inside::heap::layout::{STATES, ledger::LEDGERS};
use crate::stretch::{LOOKS, Path, Stretch, TURNS, apart};

pub fn all() {
    for (layers, rings) in [(1, 1), (6, 4), (10, 10)] {
        println!(
            "race {layers} x {rings}: solver | tolerance | s | s to set up | slopes | K | dry matter"
        );
        let (reference, _, _, slopes) = chebyshev(layers, rings, 1e-3);
        println!("(reference: Chebyshev at 1e-3, {slopes} slopes)");
        for tolerance in [4.0, 1.0, 0.25, 0.06, 0.015] {
            report("Chebyshev", tolerance, &reference, || {
                chebyshev(layers, rings, tolerance)
            });
        }
        for tolerance in [1e-2, 1e-3, 1e-4, 1e-5] {
            report("BDF sparse", tolerance, &reference, || {
                backward_sparse(layers, rings, tolerance)
            });
        }
        if layers * rings <= 24 {
            for tolerance in [1e-2, 1e-3, 1e-4, 1e-5] {
                report("BDF dense", tolerance, &reference, || {
                    backward_dense(layers, rings, tolerance)
                });
            }
        }
    }
}

/// Runs over which times are averaged: many of the short ones, since the system's own count of
/// time goes by hundredths.
const ROUNDS: usize = 5;
const ROUNDS_OF_ONE_CELL: usize = 400;

/// A path, its seconds, those of setting the solver up besides, and its slopes.
type Raced = (Path, f64, f64, usize);

fn report(name: &str, tolerance: f64, reference: &Path, run: impl Fn() -> Raced) {
    let rounds = if reference[0].0.len() == 1 {
        ROUNDS_OF_ONE_CELL
    } else {
        ROUNDS
    };
    let (mut seconds, mut set_up) = (0.0, 0.0);
    let (mut path, mut slopes) = (Path::new(), 0);
    for _ in 0..rounds {
        let (found, taken, prepared, asked) = run();
        seconds += taken / rounds as f64;
        set_up += prepared / rounds as f64;
        (path, slopes) = (found, asked);
    }
    if path.len() < reference.len() {
        println!("{name} | {tolerance} | stuck after {} looks", path.len());
        return;
    }
    let (kelvin, mass) = apart(&path, reference);
    println!(
        "{name} | {tolerance} | {seconds:.4} | {set_up:.4} | {slopes} | {kelvin:.1e} | {mass:.1e}"
    );
}

fn looks_between(start: f64, end: f64) -> Vec<f64> {
    LOOKS
        .iter()
        .copied()
        .filter(|day| *day > start && *day <= end)
        .collect()
}

fn chebyshev(layers: usize, rings: usize, tolerance: f64) -> Raced {
    let mut stretch = Stretch::new(layers, rings);
    stretch.heap.tolerance = tolerance;
    let mut watcher = Stretch::new(layers, rings);
    let mut states: Vec<(f64, Vec<f64>)> = Vec::new();
    let mut y = stretch.y.clone();
    let start = computed();
    let mut integrator = Chebyshev::new(0.5, 10_000_000);
    for days in TURNS.windows(2) {
        if days[0] > 0.0 {
            stretch.turn(&mut y);
        }
        integrator.forget();
        integrator
            .integrate(&mut stretch.heap, days[0], days[1], &mut y, |_, step| {
                for day in looks_between(step.start, step.end) {
                    let mut now = vec![0.0; step.y_end.len()];
                    step.at(day, &mut now);
                    states.push((day, now));
                }
            })
            .expect("the engine goes on");
    }
    let seconds = computed() - start;
    let path = states
        .iter()
        .map(|(day, y)| watcher.seen(*day, y))
        .collect();
    (path, seconds, 0.0, integrator.cost.slopes)
}

/// The slopes in scaled unknowns, and their products with vectors by differences.
struct Scaled {
    stretch: Stretch,
    y: Vec<f64>,
    slope: Vec<f64>,
    base_at: Vec<f64>,
    base: Vec<f64>,
    slopes: usize,
}

impl Scaled {
    fn slopes(&mut self, t: f64, x: &[f64], out: &mut [f64]) {
        for (index, value) in x.iter().enumerate() {
            self.y[index] = value * self.stretch.size[index];
        }
        self.stretch.heap.derivative(t, &self.y, &mut self.slope);
        self.slopes += 1;
        for (index, out) in out.iter_mut().enumerate() {
            *out = self.slope[index] / self.stretch.size[index];
        }
    }

    fn product(&mut self, t: f64, x: &[f64], v: &[f64], out: &mut [f64]) {
        if let Some(asked) = v.iter().position(|value| value.is_nan()) {
            return self.pattern(asked, out);
        }
        let most = v.iter().fold(0.0_f64, |most, value| most.max(value.abs()));
        if most == 0.0 {
            return out.fill(0.0);
        }
        let step = 1e-6 / most;
        if self.base_at.len() != x.len() + 1 || self.base_at[0] != t || self.base_at[1..] != *x {
            let mut base = std::mem::take(&mut self.base);
            base.resize(x.len(), 0.0);
            self.slopes(t, x, &mut base);
            self.base = base;
            self.base_at = [&[t], x].concat();
        }
        let moved: Vec<f64> = x.iter().zip(v).map(|(x, v)| x + step * v).collect();
        self.slopes(t, &moved, out);
        for (out, base) in out.iter_mut().zip(&self.base) {
            *out = (*out - base) / step;
        }
    }

    /// Marks what an unknown is said to touch: its cell, the neighbours and theirs.
    fn pattern(&self, unknown: usize, out: &mut [f64]) {
        let (cells, rings) = (self.stretch.cells, self.stretch.rings);
        let cell = unknown % cells;
        let place = |cell: usize| (cell / rings, cell % rings);
        let (layer, ring) = place(cell);
        for (index, out) in out.iter_mut().enumerate() {
            let (other_layer, other_ring) = place(index % cells);
            let near = layer.abs_diff(other_layer) + ring.abs_diff(other_ring) <= REACH;
            *out = if near { f64::NAN } else { 0.0 };
        }
    }
}

/// Links within which cells are said to touch in the sparse Jacobian.
const REACH: usize = 1;

/// Backward differences with a kind of matrix, and whether its pattern is coloured.
macro_rules! backward {
    ($name:ident, $matrix:ty, $solver:ty, $coloured:literal) => {
        fn $name(layers: usize, rings: usize, tolerance: f64) -> Raced {
            let stretch = Stretch::new(layers, rings);
            let mut watcher = Stretch::new(layers, rings);
            let unknowns = STATES * stretch.cells;
            let mut y = stretch.y.clone();
            let scaled = Rc::new(RefCell::new(Scaled {
                y: stretch.y.clone(),
                slope: vec![0.0; stretch.y.len()],
                base_at: Vec::new(),
                base: Vec::new(),
                slopes: 0,
                stretch,
            }));
            let mut states: Vec<(f64, Vec<f64>)> = Vec::new();
            let mut set_up = 0.0;
            let start = computed();
            'all: for days in TURNS.windows(2) {
                if days[0] > 0.0 {
                    scaled.borrow().stretch.turn(&mut y);
                }
                let first: Vec<f64> = (0..unknowns)
                    .map(|index| y[index] / scaled.borrow().stretch.size[index])
                    .collect();
                let (one, other) = (Rc::clone(&scaled), Rc::clone(&scaled));
                let before = computed();
                let problem = OdeBuilder::<$matrix>::new()
                    .t0(days[0])
                    .h0(1e-3)
                    .rtol(tolerance)
                    .atol(vec![0.1 * tolerance; unknowns])
                    .use_coloring($coloured)
                    .rhs_implicit(
                        move |x: &[f64], _: &[f64], t: f64, out: &mut [f64]| {
                            one.borrow_mut().slopes(t, x, out)
                        },
                        move |x: &[f64], _: &[f64], t: f64, v: &[f64], out: &mut [f64]| {
                            other.borrow_mut().product(t, x, v, out);
                        },
                    )
                    .init(
                        move |_: &[f64], _: f64, out: &mut [f64]| out.copy_from_slice(&first),
                        unknowns,
                    )
                    .build()
                    .expect("the problem has a meaning");
                set_up += computed() - before;
                let mut solver = problem.bdf::<$solver>().expect("a solver");
                let mut looks = looks_between(days[0], days[1]);
                if looks.last() != Some(&days[1]) {
                    looks.push(days[1]);
                }
                let Ok((found, _)) = solver.solve_dense(&looks) else {
                    break 'all;
                };
                for (column, day) in looks.iter().enumerate() {
                    for row in 0..unknowns {
                        y[row] = found.get_index(row, column) * scaled.borrow().stretch.size[row];
                    }
                    if LOOKS.contains(day) {
                        states.push((*day, y.clone()));
                    }
                }
                y[unknowns..].fill(0.0);
            }
            let seconds = computed() - start - set_up;
            assert_eq!(y.len(), unknowns + LEDGERS);
            let path = states
                .iter()
                .map(|(day, y)| watcher.seen(*day, y))
                .collect();
            let slopes = scaled.borrow().slopes;
            (path, seconds, set_up, slopes)
        }
    };
}

backward!(backward_sparse, FaerSparseMat<f64>, FaerSparseLU<f64>, true);
backward!(backward_dense, NalgebraMat<f64>, NalgebraLU<f64>, false);
