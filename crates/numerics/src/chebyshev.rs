//! How does a stiff system go on in time? By stabilised explicit steps.
//!
//! The Runge-Kutta-Chebyshev method of second order (Sommeijer, Shampine and Verwer
//! 1997, "RKC: an explicit solver for parabolic PDEs", Journal of Computational and
//! Applied Mathematics 88:315-326): the number of stages grows with the square root of
//! the stiffness, no matrix is formed, and every linear invariant of the equations is
//! kept to rounding. The step follows an embedded error estimate; between steps the
//! solution is the cubic that matches values and slopes. All work is bounded by counts.

mod coefficients;
mod step;

pub use step::Step;

use coefficients::Stages;

/// Most stages of one step; stiffer systems take shorter steps.
const MOST_STAGES: usize = 120;
/// Accepted steps after which the stiffness is measured again.
const STEPS_BETWEEN_ESTIMATES: usize = 25;
/// Accepted steps after which it is measured again when a step has to be thrown away.
const STALE_AFTER: usize = 8;
/// Error, of what is allowed, that makes one doubt the stiffness even before.
const FAR_OFF: f64 = 20.0;
/// Rounds of the power method.
const MOST_POWER_ROUNDS: usize = 40;
/// Factor on the measured stiffness, as in the authors' own program.
const STIFFNESS_MARGIN: f64 = 1.2;

/// What changes in time.
pub trait System {
    /// The slope of `y` at `t`.
    fn derivative(&mut self, t: f64, y: &[f64], slope: &mut [f64]);

    /// Makes ready for a step from `start` to `end`: what drives the system from outside may
    /// be smoothed over it. Whether that moved the slopes.
    fn prepare(&mut self, _start: f64, _end: f64) -> bool {
        false
    }

    /// Where a step from `start` had better end that would go on to `end`.
    fn natural_end(&self, _start: f64, end: f64) -> f64 {
        end
    }

    /// The slope at a state at which it was computed last, after [`Self::prepare`].
    fn derivative_again(&mut self, t: f64, y: &[f64], slope: &mut [f64]) {
        self.derivative(t, y, slope);
    }

    /// The error allowed in each component of a step; infinite for components that
    /// only record and have no effect on the others.
    fn scale(&self, y: &[f64], scale: &mut [f64]);

    /// Whether a step from `before` may end at `after`; one that may not is taken again
    /// at half its length.
    fn admissible(&self, _before: &[f64], _after: &[f64]) -> bool {
        true
    }
}

/// Why the integration cannot go on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Stuck {
    /// The allowed number of steps was used up at this time.
    TooManySteps {
        /// Time reached.
        at: f64,
    },
    /// No step, however short, keeps the error or a meaning.
    StepTooShort {
        /// Time reached.
        at: f64,
    },
}

/// What the integration cost.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Cost {
    /// Steps taken.
    pub accepted: usize,
    /// Steps thrown away.
    pub rejected: usize,
    /// Slopes computed.
    pub slopes: usize,
}

/// The integrator with its memory; one for a system and its restarts.
#[derive(Clone, Debug, Default)]
pub struct Chebyshev {
    /// Longest step.
    pub longest_step: f64,
    /// Accepted and rejected steps allowed in all.
    pub most_steps: usize,
    /// What was done so far.
    pub cost: Cost,
    stages: Vec<Option<Stages>>,
    stiffness: Option<f64>,
    steps_since_estimate: usize,
    next_step: Option<f64>,
    last: Option<(f64, f64)>,
    eigenvector: Vec<f64>,
    slope: Vec<f64>,
    end_slope: Vec<f64>,
    scale: Vec<f64>,
    before: Vec<f64>,
    now: Vec<f64>,
    after: Vec<f64>,
    start: Vec<f64>,
    work: Vec<f64>,
}

impl Chebyshev {
    /// An integrator that takes steps of at most `longest_step` and at most
    /// `most_steps` of them.
    #[must_use]
    pub fn new(longest_step: f64, most_steps: usize) -> Self {
        Self {
            longest_step,
            most_steps,
            ..Self::default()
        }
    }

    /// Forgets step length and stiffness: after an event that changes the system.
    pub fn forget(&mut self) {
        self.stiffness = None;
        self.next_step = None;
        self.last = None;
        self.eigenvector.clear();
    }

    /// Takes `y` from `start` to `end`, which must not lie across a jump of the
    /// forcing, and shows every accepted step to `seen`.
    ///
    /// # Errors
    ///
    /// When the steps are used up or none is short enough.
    pub fn integrate<S: System>(
        &mut self,
        system: &mut S,
        start: f64,
        end: f64,
        y: &mut [f64],
        mut seen: impl FnMut(&mut S, &Step<'_>),
    ) -> Result<(), Stuck> {
        self.fit(y.len());
        let mut t = start;
        if end <= start {
            return Ok(());
        }
        self.start.copy_from_slice(y);
        system.prepare(t, end.min(t + self.longest_step));
        system.derivative(t, &self.start, &mut self.slope);
        self.cost.slopes += 1;
        // Whether the system looked last at the state from which the next step starts.
        let mut at_start = true;
        let shortest = 1e-12 * (end.abs().max(start.abs()) + 1e-3);
        let mut just_estimated = false;
        while t < end {
            if self.cost.accepted + self.cost.rejected >= self.most_steps {
                return Err(Stuck::TooManySteps { at: t });
            }
            system.scale(&self.start, &mut self.scale);
            if self.stiffness.is_none() || self.steps_since_estimate >= STEPS_BETWEEN_ESTIMATES {
                self.estimate_stiffness(system, t);
                just_estimated = true;
                at_start = false;
            }
            let stiffness = self.stiffness.unwrap_or(0.0);
            let wanted = self
                .next_step
                .unwrap_or(if stiffness > 0.0 {
                    0.5 / stiffness
                } else {
                    self.longest_step
                })
                .min(self.longest_step)
                .min(longest_for(MOST_STAGES, stiffness));
            // The rest of the way is walked in equal strides, so that no sliver is left.
            let rest = end - t;
            let strides = (rest / wanted).ceil().max(1.0);
            let step = if strides <= 1.0 {
                rest
            } else if strides <= 2.0 {
                0.5 * rest
            } else {
                wanted
            };
            if step < shortest && rest > shortest {
                return Err(Stuck::StepTooShort { at: t });
            }
            let planned = if strides <= 1.0 { end } else { t + step };
            let t_new = system.natural_end(t, planned);
            let step = if t_new < planned { t_new - t } else { step };
            let stages = stages_for(step, stiffness);
            if system.prepare(t, t_new) {
                if at_start {
                    system.derivative_again(t, &self.start, &mut self.slope);
                } else {
                    system.derivative(t, &self.start, &mut self.slope);
                }
                self.cost.slopes += 1;
            }
            self.advance(system, t, step, stages);
            at_start = false;
            let admissible = self.after.iter().all(|value| value.is_finite())
                && system.admissible(&self.start, &self.after);
            let error = if admissible {
                system.derivative(t_new, &self.after, &mut self.end_slope);
                self.cost.slopes += 1;
                self.error(step)
            } else {
                f64::INFINITY
            };
            if error <= 1.0 {
                let next = step * self.growth(step, error);
                // A step that was cut short says little about the next.
                self.next_step = Some(if t_new < planned {
                    next.max(wanted)
                } else {
                    next
                });
                self.last = Some((step, error.max(1e-8)));
                self.cost.accepted += 1;
                self.steps_since_estimate += 1;
                just_estimated = false;
                seen(
                    system,
                    &Step {
                        start: t,
                        end: t_new,
                        y_start: &self.start,
                        slope_start: &self.slope,
                        y_end: &self.after,
                        slope_end: &self.end_slope,
                    },
                );
                std::mem::swap(&mut self.start, &mut self.after);
                std::mem::swap(&mut self.slope, &mut self.end_slope);
                t = t_new;
                at_start = true;
            } else {
                self.cost.rejected += 1;
                let shrink = if error.is_finite() {
                    (0.8 / cube_root(error)).clamp(0.1, 0.8)
                } else {
                    0.5
                };
                self.next_step = Some(step * shrink);
                self.last = None;
                let stale = self.steps_since_estimate >= STALE_AFTER;
                if !just_estimated && (stale || error > FAR_OFF) {
                    self.stiffness = None;
                }
            }
        }
        y.copy_from_slice(&self.start);
        Ok(())
    }

    fn fit(&mut self, length: usize) {
        for buffer in [
            &mut self.slope,
            &mut self.end_slope,
            &mut self.scale,
            &mut self.before,
            &mut self.now,
            &mut self.after,
            &mut self.start,
            &mut self.work,
        ] {
            buffer.resize(length, 0.0);
        }
        if self.eigenvector.len() != length {
            self.eigenvector.clear();
        }
    }

    /// One step of `stages` stages from `start` into `after`.
    fn advance<S: System>(&mut self, system: &mut S, t: f64, step: f64, stages: usize) {
        if self.stages.len() <= stages {
            self.stages.resize(stages + 1, None);
        }
        let table = self.stages[stages].get_or_insert_with(|| Stages::new(stages));
        let first = step * table.first_slope;
        for index in 0..self.start.len() {
            self.before[index] = self.start[index];
            self.now[index] = self.start[index] + first * self.slope[index];
        }
        for stage in &table.later {
            system.derivative(t + step * stage.time, &self.now, &mut self.work);
            self.cost.slopes += 1;
            let (last, earlier, rest) = (stage.last, stage.earlier, stage.rest);
            let (slope_last, slope_start) = (step * stage.slope_last, step * stage.slope_start);
            let length = self.start.len();
            let (start, slope, now, before, work, after) = (
                &self.start[..length],
                &self.slope[..length],
                &self.now[..length],
                &self.before[..length],
                &self.work[..length],
                &mut self.after[..length],
            );
            for index in 0..length {
                after[index] = rest * start[index]
                    + last * now[index]
                    + earlier * before[index]
                    + slope_last * work[index]
                    + slope_start * slope[index];
            }
            // before <- now, now <- after, after <- free.
            std::mem::swap(&mut self.before, &mut self.now);
            std::mem::swap(&mut self.now, &mut self.after);
        }
        std::mem::swap(&mut self.now, &mut self.after);
    }

    /// The error estimate of the step over what is allowed, root mean square.
    fn error(&self, step: f64) -> f64 {
        let (mut sum, mut count) = (0.0, 0.0_f64);
        for index in 0..self.start.len() {
            let scale = self.scale[index];
            if scale.is_finite() {
                let estimate = 0.8 * (self.start[index] - self.after[index])
                    + 0.4 * step * (self.slope[index] + self.end_slope[index]);
                let relative = estimate / scale;
                sum += relative * relative;
                count += 1.0;
            }
        }
        let error = (sum / count.max(1.0)).sqrt();
        if error.is_nan() { f64::INFINITY } else { error }
    }

    /// By how much the next step may be longer (Watts 1984, as in the authors' program).
    fn growth(&self, step: f64, error: f64) -> f64 {
        let error = error.max(1e-8);
        let plain = 0.8 / cube_root(error);
        let with_memory = match self.last {
            Some((last_step, last_error)) => {
                plain * (step / last_step) * cube_root(last_error / error)
            }
            None => plain,
        };
        with_memory.min(plain).clamp(0.1, 5.0)
    }

    /// The largest rate of the linearised system, by the power method on differences.
    fn estimate_stiffness<S: System>(&mut self, system: &mut S, t: f64) {
        let length = self.start.len();
        if self.eigenvector.len() != length {
            self.eigenvector.resize(length, 0.0);
            self.eigenvector.copy_from_slice(&self.slope);
        }
        let mut size = norm(&self.eigenvector, &self.scale);
        if size == 0.0 || !size.is_finite() {
            for (index, (vector, scale)) in self.eigenvector.iter_mut().zip(&self.scale).enumerate()
            {
                let sign = if index % 2 == 0 { 1.0 } else { -1.0 };
                *vector = if scale.is_finite() { sign * scale } else { 0.0 };
            }
            size = norm(&self.eigenvector, &self.scale);
        }
        const DISTANCE: f64 = 1e-2;
        let mut estimate = 0.0_f64;
        for round in 0..MOST_POWER_ROUNDS {
            let factor = if size > 0.0 { DISTANCE / size } else { 0.0 };
            for index in 0..length {
                self.now[index] = self.start[index]
                    + if self.scale[index].is_finite() {
                        factor * self.eigenvector[index]
                    } else {
                        0.0
                    };
            }
            system.derivative(t, &self.now, &mut self.work);
            self.cost.slopes += 1;
            for index in 0..length {
                self.eigenvector[index] = self.work[index] - self.slope[index];
            }
            size = norm(&self.eigenvector, &self.scale);
            let next = size / DISTANCE;
            let settled = (next - estimate).abs() <= 0.05 * next;
            estimate = if next.is_finite() { next } else { estimate };
            if (round > 1 && settled) || size == 0.0 || !size.is_finite() {
                break;
            }
        }
        self.stiffness = Some(STIFFNESS_MARGIN * estimate);
        self.steps_since_estimate = 0;
    }
}

fn norm(vector: &[f64], scale: &[f64]) -> f64 {
    let (mut sum, mut count) = (0.0, 0.0_f64);
    for (value, scale) in vector.iter().zip(scale) {
        if scale.is_finite() {
            sum += (value / scale) * (value / scale);
            count += 1.0;
        }
    }
    (sum / count.max(1.0)).sqrt()
}

/// Stages that keep a step stable: s = 1 + sqrt(1 + 1.54 h rho), at least two.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // small and positive
fn stages_for(step: f64, stiffness: f64) -> usize {
    let wanted = 1.0 + (1.0 + 1.54 * step * stiffness).sqrt();
    (wanted.min(1e4) as usize).clamp(2, MOST_STAGES)
}

#[allow(clippy::cast_precision_loss)] // small
fn longest_for(stages: usize, stiffness: f64) -> f64 {
    let stages = stages as f64 - 1.0;
    if stiffness > 0.0 {
        (stages * stages - 1.0) / (1.54 * stiffness)
    } else {
        f64::INFINITY
    }
}

fn cube_root(value: f64) -> f64 {
    libm::cbrt(value)
}

#[cfg(test)]
mod tests;
