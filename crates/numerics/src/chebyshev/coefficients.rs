//! The weights of each stage.
//!
//! From Chebyshev polynomials at `w0 = 1 + (2/13)/s^2` (Sommeijer, Shampine and Verwer
//! 1997, section 2; van der Houwen and Sommeijer 1980).

/// Weights of one stage after the first.
#[derive(Clone, Copy, Debug)]
pub struct Stage {
    /// Place in the step at which the slope is taken, 0 to 1.
    pub time: f64,
    /// Weight of the last stage's value.
    pub last: f64,
    /// Weight of the value before.
    pub earlier: f64,
    /// Weight of the value at the start.
    pub rest: f64,
    /// Weight of step times slope at the last stage.
    pub slope_last: f64,
    /// Weight of step times slope at the start.
    pub slope_start: f64,
}

/// All weights of a step.
#[derive(Clone, Debug)]
pub struct Stages {
    /// Weight of step times slope in the first stage.
    pub first_slope: f64,
    /// The other stages.
    pub later: Vec<Stage>,
}

impl Stages {
    /// The weights for a number of stages, two or more.
    #[allow(clippy::cast_precision_loss)] // small counts
    pub fn new(stages: usize) -> Self {
        let count = stages as f64;
        let w0 = 1.0 + 2.0 / (13.0 * count * count);
        // Values, first and second derivatives of the polynomials at w0.
        let mut value = vec![1.0, w0];
        let mut first = vec![0.0, 1.0];
        let mut second = vec![0.0, 0.0];
        for degree in 2..=stages {
            let (one, two) = (degree - 1, degree - 2);
            value.push(2.0 * w0 * value[one] - value[two]);
            first.push(2.0 * value[one] + 2.0 * w0 * first[one] - first[two]);
            second.push(4.0 * first[one] + 2.0 * w0 * second[one] - second[two]);
        }
        let w1 = first[stages] / second[stages];
        let b = |degree: usize| {
            let degree = degree.max(2);
            second[degree] / (first[degree] * first[degree])
        };
        let a = |degree: usize| 1.0 - b(degree) * value[degree];
        let time = |degree: usize| match degree {
            0 => 0.0,
            1 => w1 * second[2] / first[2] / (4.0 * w0),
            _ => w1 * second[degree] / first[degree],
        };
        let later = (2..=stages)
            .map(|degree| {
                let last = 2.0 * b(degree) * w0 / b(degree - 1);
                let earlier = -b(degree) / b(degree - 2);
                let slope_last = 2.0 * b(degree) * w1 / b(degree - 1);
                Stage {
                    time: time(degree - 1),
                    last,
                    earlier,
                    rest: 1.0 - last - earlier,
                    slope_last,
                    slope_start: -a(degree - 1) * slope_last,
                }
            })
            .collect();
        Self {
            first_slope: b(1) * w1,
            later,
        }
    }
}
