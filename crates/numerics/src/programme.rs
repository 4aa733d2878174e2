//! What is the cheapest way to keep within straight limits? Linear programmes,
//! with whole-number variables where asked.
//!
//! A thin wrapper of the solver crate `microlp` (decision 0004): it scales the
//! rows, bounds the search by a count of nodes instead of a clock, and turns
//! the ways a solve can end into three.

use microlp::{
    ComparisonOp, Error, OptimizationDirection, Problem, SolutionStatus, SolveOptions, SolveOutcome,
};

/// How a row compares with its right-hand side.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Comparison {
    /// At most.
    AtMost,
    /// At least.
    AtLeast,
}

/// A variable from 0 to `most`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Variable {
    /// What one unit adds to the objective, which is made least.
    pub cost: f64,
    /// Upper bound, may be infinite.
    pub most: f64,
    /// True when only whole numbers will do.
    pub whole: bool,
}

/// A programme under construction: make the objective least, within the rows.
#[derive(Clone, Debug, Default)]
pub struct Programme {
    variables: Vec<Variable>,
    rows: Vec<(Vec<f64>, Comparison, f64)>,
}

/// A point that meets all rows.
#[derive(Clone, Debug, PartialEq)]
pub struct Solved {
    /// Value of each variable, whole ones exactly whole.
    pub values: Vec<f64>,
    /// Value of the objective at `values`.
    pub objective: f64,
    /// False when the count of nodes ran out before this was known to be the best.
    pub proven: bool,
}

/// How a solve ended.
#[derive(Clone, Debug, PartialEq)]
pub enum Outcome {
    /// A point was found.
    Solved(Solved),
    /// No point meets all rows.
    Infeasible,
    /// The count of nodes ran out, or the numbers were too far apart in size,
    /// before anything was known.
    Unknown,
}

/// A coefficient this much smaller than the largest of its row is taken as nothing:
/// below the round-off of the figures it was made from.
const NEGLIGIBLE: f64 = 1e-10;

/// Whole numbers beyond this are beyond any heap; it also keeps them exact.
const MOST_WHOLE: f64 = 1_000_000.0;

impl Programme {
    /// Adds a variable.
    pub fn add_variable(&mut self, variable: Variable) {
        self.variables.push(variable);
    }

    /// Adds a row: the sum of `coefficients` times the variables compares so with `right`.
    ///
    /// One coefficient for each variable, in order. Rows are scaled to a largest
    /// coefficient of one, so that the solver's absolute tolerance means the same
    /// for a handful and for a lorry load.
    pub fn add_row(&mut self, coefficients: &[f64], comparison: Comparison, right: f64) {
        debug_assert_eq!(coefficients.len(), self.variables.len());
        let largest = coefficients
            .iter()
            .fold(right.abs(), |largest, c| c.abs().max(largest));
        if largest > 0.0 && largest.is_finite() {
            let scaled = coefficients
                .iter()
                .map(|c| {
                    if c.abs() < NEGLIGIBLE * largest {
                        0.0
                    } else {
                        c / largest
                    }
                })
                .collect();
            self.rows.push((scaled, comparison, right / largest));
        }
    }

    /// Solves, looking at no more than `node_limit` branches.
    #[must_use]
    pub fn solve(&self, node_limit: u64) -> Outcome {
        let mut problem = Problem::new(OptimizationDirection::Minimize);
        let handles: Vec<_> = self
            .variables
            .iter()
            .map(|variable| {
                if variable.whole {
                    #[allow(clippy::cast_possible_truncation)] // bounded just here
                    let most = variable.most.clamp(0.0, MOST_WHOLE).floor() as i32;
                    problem.add_integer_var(variable.cost, (0, most))
                } else {
                    problem.add_var(variable.cost, (0.0, variable.most))
                }
            })
            .collect();
        for (coefficients, comparison, right) in &self.rows {
            let terms: Vec<_> = handles
                .iter()
                .zip(coefficients)
                .filter(|(_, c)| **c != 0.0)
                .map(|(handle, c)| (*handle, *c))
                .collect();
            let operator = match comparison {
                Comparison::AtMost => ComparisonOp::Le,
                Comparison::AtLeast => ComparisonOp::Ge,
            };
            problem.add_constraint(&terms[..], operator, *right);
        }
        let mut options = SolveOptions::default();
        options.node_limit = Some(node_limit);
        match problem.solve_with(options) {
            Ok(SolveOutcome::Solution(solution)) => {
                let values: Vec<f64> = handles
                    .iter()
                    .zip(&self.variables)
                    .map(|(handle, variable)| {
                        let value = solution.var_value(*handle).max(0.0);
                        if variable.whole { value.round() } else { value }
                    })
                    .collect();
                let objective = values
                    .iter()
                    .zip(&self.variables)
                    .map(|(value, variable)| value * variable.cost)
                    .sum();
                Outcome::Solved(Solved {
                    values,
                    objective,
                    proven: solution.status() == SolutionStatus::Optimal,
                })
            }
            Err(Error::Infeasible) => Outcome::Infeasible,
            Ok(SolveOutcome::Interrupted(_)) | Err(_) => Outcome::Unknown,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn variable(cost: f64, most: f64, whole: bool) -> Variable {
        Variable { cost, most, whole }
    }

    #[test]
    fn solve_finds_the_corner() {
        let mut programme = Programme::default();
        programme.add_variable(variable(2.0, f64::INFINITY, false));
        programme.add_variable(variable(3.0, f64::INFINITY, false));
        programme.add_row(&[1.0, 1.0], Comparison::AtLeast, 4.0);
        programme.add_row(&[1.0, 0.0], Comparison::AtMost, 3.0);
        let Outcome::Solved(solved) = programme.solve(10) else {
            panic!("the corner exists")
        };
        assert!((solved.values[0] - 3.0).abs() < 1e-9 && (solved.values[1] - 1.0).abs() < 1e-9);
        assert!((solved.objective - 9.0).abs() < 1e-9 && solved.proven);
    }

    #[test]
    fn solve_keeps_to_whole_numbers() {
        let mut programme = Programme::default();
        programme.add_variable(variable(1.0, 10.0, true));
        programme.add_row(&[2.0], Comparison::AtLeast, 5.0);
        let Outcome::Solved(solved) = programme.solve(100) else {
            panic!("three will do")
        };
        assert_eq!(solved.values, [3.0]);
    }

    #[test]
    fn solve_says_when_nothing_will_do() {
        let mut programme = Programme::default();
        programme.add_variable(variable(1.0, 1.0, false));
        programme.add_row(&[1.0], Comparison::AtLeast, 2.0);
        assert_eq!(programme.solve(10), Outcome::Infeasible);
    }
}
