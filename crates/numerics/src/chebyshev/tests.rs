//! Closed forms, order, invariants and limits of the integrator.

use super::*;

/// Exponential decay at several rates, with an error allowed that follows `tolerance`.
struct Decay {
    rates: Vec<f64>,
    tolerance: f64,
}

impl System for Decay {
    fn derivative(&mut self, _t: f64, y: &[f64], slope: &mut [f64]) {
        for index in 0..y.len() {
            slope[index] = -self.rates[index] * y[index];
        }
    }
    fn scale(&self, _y: &[f64], scale: &mut [f64]) {
        scale.fill(self.tolerance);
    }
}

#[test]
fn stiff_decay_meets_the_exponential() {
    let mut system = Decay {
        rates: vec![0.5, 20.0, 900.0],
        tolerance: 1e-6,
    };
    let mut y = vec![1.0; 3];
    let mut integrator = Chebyshev::new(1.0, 100_000);
    integrator
        .integrate(&mut system, 0.0, 2.0, &mut y, |_, _| {})
        .unwrap();
    for (value, rate) in y.iter().zip(&system.rates) {
        assert!((value - libm::exp(-rate * 2.0)).abs() < 2e-5, "{value}");
    }
}

/// y' = y cos t, forced and smooth: y = exp(sin t).
struct Swing;

impl System for Swing {
    fn derivative(&mut self, t: f64, y: &[f64], slope: &mut [f64]) {
        slope[0] = y[0] * libm::cos(t);
    }
    fn scale(&self, _y: &[f64], scale: &mut [f64]) {
        scale.fill(1e9); // never rejects: the step is the longest allowed
    }
}

#[test]
fn the_error_falls_with_the_square_of_the_step_and_dense_output_with_its_cube_or_better() {
    let errors = |steps: f64| {
        let mut integrator = Chebyshev::new(2.0 / steps, 10_000);
        integrator.next_step = Some(2.0 / steps);
        integrator.stiffness = Some(30.0 * steps); // many stages
        let mut y = vec![1.0];
        let mut between = 0.0_f64;
        integrator
            .integrate(&mut Swing, 0.0, 2.0, &mut y, |_, step| {
                let middle = 0.5 * (step.start + step.end);
                let ends = step.y_start[0] + step.y_end[0];
                let exact = |t: f64| libm::exp(libm::sin(t));
                // What interpolation adds to the error of the ends themselves.
                let drift = 0.5 * (ends - exact(step.start) - exact(step.end));
                between = between.max((step.component_at(middle, 0) - exact(middle) - drift).abs());
            })
            .unwrap();
        ((y[0] - libm::exp(libm::sin(2.0))).abs(), between)
    };
    let (coarse, coarse_between) = errors(20.0);
    let (fine, fine_between) = errors(40.0);
    let order = libm::log2(coarse / fine);
    assert!((1.8..2.4).contains(&order), "order {order}");
    assert!(libm::log2(coarse_between / fine_between) > 2.7);
}

/// Three vessels that pass a substance round: the sum stays.
struct Round;

impl System for Round {
    fn derivative(&mut self, t: f64, y: &[f64], slope: &mut [f64]) {
        let flows = [
            400.0 * y[0],
            30.0 * y[1] * y[1],
            (2.0 + libm::sin(t)) * y[2],
        ];
        for index in 0..3 {
            slope[index] = flows[(index + 2) % 3] - flows[index];
        }
    }
    fn scale(&self, y: &[f64], scale: &mut [f64]) {
        for (scale, y) in scale.iter_mut().zip(y) {
            *scale = 1e-4 * (y.abs() + 1e-3);
        }
    }
    fn admissible(&self, _before: &[f64], after: &[f64]) -> bool {
        after.iter().all(|y| *y >= -1e-12)
    }
}

#[test]
fn linear_invariants_are_kept_to_rounding() {
    let mut y = vec![1.0, 0.3, 0.0];
    Chebyshev::new(1.0, 1_000_000)
        .integrate(&mut Round, 0.0, 100.0, &mut y, |_, _| {})
        .unwrap();
    assert!((y.iter().sum::<f64>() - 1.3).abs() < 1e-12);
}

/// Heat in a rod of `y.len()` cells with cold ends.
struct Rod;

impl System for Rod {
    fn derivative(&mut self, _t: f64, y: &[f64], slope: &mut [f64]) {
        let last = y.len() - 1;
        let cells = f64::from(u16::try_from(y.len()).unwrap());
        let rate = cells * cells;
        for index in 0..y.len() {
            let left = if index == 0 { -y[0] } else { y[index - 1] };
            let right = if index == last {
                -y[last]
            } else {
                y[index + 1]
            };
            slope[index] = rate * (left - 2.0 * y[index] + right);
        }
    }
    fn scale(&self, _y: &[f64], scale: &mut [f64]) {
        scale.fill(1e-5);
    }
}

#[test]
fn heat_in_a_rod_falls_off_as_its_first_mode_with_few_slopes() {
    let cells = 100_u16;
    let mut y: Vec<f64> = (0..cells)
        .map(|index| libm::sin(std::f64::consts::PI * (f64::from(index) + 0.5) / f64::from(cells)))
        .collect();
    let mut integrator = Chebyshev::new(1.0, 10_000);
    integrator
        .integrate(&mut Rod, 0.0, 0.1, &mut y, |_, _| {})
        .unwrap();
    // The discrete mode decays a little slower than pi^2.
    let half = 0.5 * std::f64::consts::PI / f64::from(cells);
    let rate = 4.0 * f64::from(cells).powi(2) * libm::sin(half).powi(2);
    let exact = libm::exp(-0.1 * rate) * libm::sin(std::f64::consts::PI * 0.505);
    assert!((y[50] - exact).abs() < 1e-4, "{} {exact}", y[50]);
    // A plain explicit method would need 0.1 x 40,000 / 2 steps at least.
    assert!(integrator.cost.slopes < 1000, "{:?}", integrator.cost);
}

/// y' = y^2 runs away at t = 1.
struct Runaway;

impl System for Runaway {
    fn derivative(&mut self, _t: f64, y: &[f64], slope: &mut [f64]) {
        slope[0] = y[0] * y[0];
    }
    fn scale(&self, y: &[f64], scale: &mut [f64]) {
        scale[0] = 1e-6 * (1.0 + y[0].abs());
    }
}

#[test]
fn what_cannot_go_on_is_an_error_and_never_a_hang() {
    let stuck = Chebyshev::new(1.0, 5_000)
        .integrate(&mut Runaway, 0.0, 2.0, &mut [1.0], |_, _| {})
        .unwrap_err();
    let (Stuck::TooManySteps { at } | Stuck::StepTooShort { at }) = stuck;
    assert!((0.9..1.1).contains(&at), "{at}");
}
