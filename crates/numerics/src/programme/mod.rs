//! What is the cheapest way to keep within straight limits? Linear programmes,
//! with whole-number variables where asked.
//!
//! Rows are scaled here, whole numbers kept exact, and the search bounded by a
//! count of branches instead of a clock (decision 0004). `simplex` solves with
//! parts of units, `whole` branches from there to whole ones.

mod simplex;
mod whole;

use simplex::{Ended, Question};

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
        let variables = self.variables.iter();
        let question = Question {
            costs: variables.clone().map(|variable| variable.cost).collect(),
            most: variables
                .clone()
                .map(|variable| {
                    if variable.whole {
                        variable.most.clamp(0.0, MOST_WHOLE).floor()
                    } else {
                        variable.most
                    }
                })
                .collect(),
            rows: self.rows.iter().map(at_most).collect(),
        };
        let whole: Vec<bool> = variables.clone().map(|variable| variable.whole).collect();
        match whole::least(&question, &whole, node_limit) {
            Ok(least) => {
                let values: Vec<f64> = least
                    .values
                    .iter()
                    .zip(&whole)
                    .map(|(value, whole)| if *whole { value.round() } else { *value }.max(0.0))
                    .collect();
                let costs = values.iter().zip(&question.costs);
                Outcome::Solved(Solved {
                    objective: costs.map(|(value, cost)| value * cost).sum(),
                    values,
                    proven: least.proven,
                })
            }
            Err(Ended::Infeasible) => Outcome::Infeasible,
            Err(_) => Outcome::Unknown,
        }
    }
}

/// A row turned to "at most".
fn at_most((coefficients, comparison, right): &(Vec<f64>, Comparison, f64)) -> (Vec<f64>, f64) {
    let sign = match comparison {
        Comparison::AtMost => 1.0,
        Comparison::AtLeast => -1.0,
    };
    let coefficients = coefficients.iter().map(|c| sign * c).collect();
    (coefficients, sign * right)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

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

    #[test]
    fn solve_goes_down_where_costs_are_gains() {
        let mut programme = Programme::default();
        programme.add_variable(variable(-1.0, f64::INFINITY, false));
        programme.add_variable(variable(-1.0, 2.0, false));
        programme.add_row(&[1.0, 1.0], Comparison::AtMost, 5.0);
        programme.add_row(&[1.0, -1.0], Comparison::AtMost, 1.0);
        let Outcome::Solved(solved) = programme.solve(10) else {
            panic!("the corner exists")
        };
        assert!((solved.objective + 5.0).abs() < 1e-9, "{solved:?}");
        let mut endless = Programme::default();
        endless.add_variable(variable(-1.0, f64::INFINITY, false));
        assert_eq!(endless.solve(10), Outcome::Unknown);
    }

    #[test]
    fn a_search_cut_short_says_so() {
        let mut programme = Programme::default();
        for _ in 0..6 {
            programme.add_variable(variable(1.0, 9.0, true));
        }
        // Twice a whole number is never odd: only looking into everything tells.
        programme.add_row(&[2.0; 6], Comparison::AtLeast, 7.0);
        programme.add_row(&[2.0; 6], Comparison::AtMost, 7.0);
        assert_eq!(programme.solve(9), Outcome::Unknown);
    }

    #[test]
    fn nearly_whole_is_not_whole() {
        let mut programme = Programme::default();
        programme.add_variable(variable(2.422_528_045_195_949_4, 1.0, true));
        programme.add_variable(variable(3.094_426_112_047_831_4, 4.0, true));
        programme.add_row(
            &[-1.0, -0.206_030_030_089_390_2],
            Comparison::AtMost,
            -0.153_970_994_804_595_9,
        );
        let Outcome::Solved(solved) = programme.solve(100) else {
            panic!("one of the first will do")
        };
        assert_eq!(solved.values, [1.0, 0.0]);
        assert!((solved.objective - 2.422_528_045_195_949_4).abs() < 1e-12);
    }

    /// A programme as the crate `microlp` solves it: the least cost, `None` where there is no point.
    ///
    /// It takes a number within a millionth of a whole one for whole, and its
    /// cost is then too low by as much. So the rest is solved again beside the
    /// whole numbers that it meant.
    fn of_another_solver(programme: &Programme) -> Option<f64> {
        let solved = points_of_another_solver(programme, None)?;
        let whole = solved.iter().map(|value| value.round()).collect::<Vec<_>>();
        let again = points_of_another_solver(programme, Some(&whole))?;
        let costs = programme.variables.iter().map(|variable| variable.cost);
        Some(costs.zip(again).map(|(cost, value)| cost * value).sum())
    }

    /// The values that `microlp` finds; with `whole`, the whole variables are held there.
    fn points_of_another_solver(programme: &Programme, whole: Option<&[f64]>) -> Option<Vec<f64>> {
        use microlp::{ComparisonOp, Error, OptimizationDirection, Problem};
        let mut problem = Problem::new(OptimizationDirection::Minimize);
        let handles: Vec<_> = programme
            .variables
            .iter()
            .enumerate()
            .map(|(place, variable)| match whole {
                Some(whole) if variable.whole => {
                    problem.add_var(variable.cost, (whole[place], whole[place]))
                }
                None if variable.whole => {
                    #[allow(clippy::cast_possible_truncation)] // a handful
                    problem.add_integer_var(variable.cost, (0, variable.most as i32))
                }
                _ => problem.add_var(variable.cost, (0.0, variable.most)),
            })
            .collect();
        for (coefficients, comparison, right) in &programme.rows {
            let terms: Vec<_> = handles
                .iter()
                .copied()
                .zip(coefficients.iter().copied())
                .collect();
            let operator = match comparison {
                Comparison::AtMost => ComparisonOp::Le,
                Comparison::AtLeast => ComparisonOp::Ge,
            };
            problem.add_constraint(&terms[..], operator, *right);
        }
        match problem.solve() {
            Ok(solved) => {
                let solved = solved.into_solution().unwrap();
                Some(handles.iter().map(|handle| solved[*handle]).collect())
            }
            Err(Error::Infeasible) => None,
            Err(other) => panic!("{other}"),
        }
    }

    prop_compose! {
        fn programmes()(
            (variables, rows) in (1..9_usize, 0..8_usize),
        )(
            variables in prop::collection::vec((-1.0..4.0_f64, 0.0..9.0_f64, any::<bool>()), variables),
            rows in prop::collection::vec(
                (prop::collection::vec(-3.0..3.0_f64, variables), any::<bool>(), -4.0..4.0_f64),
                rows,
            ),
        ) -> Programme {
            let mut programme = Programme::default();
            for (cost, most, whole) in variables {
                programme.add_variable(variable(cost, if whole { most.floor() } else { most }, whole));
            }
            for (coefficients, least, right) in rows {
                let comparison = if least { Comparison::AtLeast } else { Comparison::AtMost };
                programme.add_row(&coefficients, comparison, right);
            }
            programme
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(2_000))]
        #[test]
        fn prop_solve_agrees_with_another_solver(programme in programmes()) {
            match (programme.solve(100_000), of_another_solver(&programme)) {
                (Outcome::Solved(solved), Some(least)) => {
                    prop_assert!(solved.proven);
                    prop_assert!((solved.objective - least).abs() < 1e-6, "{} {least}", solved.objective);
                    for (coefficients, comparison, right) in &programme.rows {
                        let terms = coefficients.iter().zip(&solved.values);
                        let sum: f64 = terms.map(|(c, value)| c * value).sum();
                        let over = match comparison {
                            Comparison::AtMost => sum - right,
                            Comparison::AtLeast => right - sum,
                        };
                        prop_assert!(over <= 1e-6, "{over}");
                    }
                    for (value, variable) in solved.values.iter().zip(&programme.variables) {
                        prop_assert!((0.0..=variable.most + 1e-6).contains(value));
                        prop_assert!(!variable.whole || value.fract() == 0.0);
                    }
                }
                (Outcome::Infeasible, None) => {}
                other => prop_assert!(false, "{other:?}"),
            }
        }
    }
}
