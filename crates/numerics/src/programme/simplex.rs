//! What is the least of straight costs within straight rows, parts of units allowed?
//!
//! The simplex method with bounds on variables, on a full tableau: made for a handful of rows and some
//! tens of variables, where a table of all numbers is quicker than any cleverness about zeros.
//! First the dual method brings all variables within their bounds, then the primal one brings the
//! cost down. After a bound has been narrowed, the same two go on from where they were.
//!
//! Every row has a slack, a variable that is what the row leaves over. As many variables as there are
//! rows are *basic*: each row of the tableau gives one of them by the others, which rest at a bound.

/// How far a value may lie outside of a bound, as a share of one and the bound: well below what
/// those who ask leave between one programme and the next.
const FEASIBLE: f64 = 1e-10;
/// How far a cost may be from worth following.
const WORTHWHILE: f64 = 1e-9;
/// A number of the tableau below this is taken as nothing: it would be mostly round-off.
const PIVOT: f64 = 1e-10;
/// How far the rows may be from holding, as a share of their largest term, before the tableau is made anew.
const DRIFT: f64 = 1e-11;
/// Times that the tableau is made anew before a solve is given up.
const MOST_REBUILDS: usize = 3;

/// What is asked: make the costs least, each row at most its right-hand side.
#[derive(Clone, Debug, Default)]
pub(super) struct Question {
    /// Cost of each variable.
    pub costs: Vec<f64>,
    /// Upper bound of each variable, may be infinite; the lower one is 0.
    pub most: Vec<f64>,
    /// Coefficients of each row, and what their sum may be at most.
    pub rows: Vec<(Vec<f64>, f64)>,
}

/// How a solve ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Ended {
    /// At the least cost.
    Least,
    /// Without any point within all rows and bounds.
    Infeasible,
    /// Without an answer: costs fall without end, or round-off got the better of it.
    GivenUp,
}

/// Where the search stands.
#[derive(Clone, Debug)]
pub(super) struct Simplex<'question> {
    question: &'question Question,
    /// Variables and slacks.
    width: usize,
    /// The tableau, row by row.
    table: Vec<f64>,
    /// What a unit more of each variable costs, all told.
    prices: Vec<f64>,
    /// The basic variable of each row.
    basic: Vec<usize>,
    is_basic: Vec<bool>,
    low: Vec<f64>,
    high: Vec<f64>,
    values: Vec<f64>,
}

/// One change of basis: the basic variable of `row` leaves to a bound, `entering` takes its place.
struct Pivot {
    row: usize,
    entering: usize,
    bound: f64,
}

impl<'question> Simplex<'question> {
    pub(super) fn new(question: &'question Question) -> Self {
        let (count, rows) = (question.costs.len(), question.rows.len());
        let width = count + rows;
        let mut high = question.most.clone();
        high.resize(width, f64::INFINITY);
        let mut values: Vec<f64> = question
            .costs
            .iter()
            .zip(&question.most)
            .map(|(cost, most)| {
                // Where it is cheapest, so that only rows are broken, never prices.
                if *cost < 0.0 && most.is_finite() {
                    *most
                } else {
                    0.0
                }
            })
            .collect();
        values.resize(width, 0.0);
        let mut start = Self {
            question,
            width,
            table: Vec::new(),
            prices: Vec::new(),
            basic: (count..width).collect(),
            is_basic: (0..width).map(|variable| variable >= count).collect(),
            low: vec![0.0; width],
            high,
            values,
        };
        start.fill();
        start
    }

    /// Value of each variable, slacks left out.
    pub(super) fn values(&self) -> &[f64] {
        &self.values[..self.question.costs.len()]
    }

    /// The cost of the values.
    pub(super) fn cost(&self) -> f64 {
        let costs = self.question.costs.iter().zip(&self.values);
        costs.map(|(cost, value)| cost * value).sum()
    }

    /// Narrows the bounds of a basic variable.
    pub(super) fn narrow(&mut self, variable: usize, low: f64, high: f64) {
        debug_assert!(self.is_basic[variable]);
        self.low[variable] = self.low[variable].max(low);
        self.high[variable] = self.high[variable].min(high);
    }

    /// Goes on to the least cost.
    pub(super) fn solve(&mut self) -> Ended {
        if (0..self.width).any(|variable| self.low[variable] > self.high[variable]) {
            return Ended::Infeasible;
        }
        for _ in 0..=MOST_REBUILDS {
            let ended = match self.within_bounds() {
                Ended::Least => self.down(),
                other => other,
            };
            if self.rows_hold() && ended != Ended::GivenUp {
                return ended;
            }
            if !self.rebuild() {
                break;
            }
        }
        Ended::GivenUp
    }

    fn at(&self, row: usize, variable: usize) -> f64 {
        self.table[row * self.width + variable]
    }

    /// Steps that a phase may take, the second half of them by the rule that cannot go round in circles.
    fn most_steps(&self) -> usize {
        200 + 20 * self.width
    }

    /// Where a variable may go from its bound: up, down or nowhere.
    fn way(&self, variable: usize) -> f64 {
        if self.is_basic[variable] || self.low[variable] >= self.high[variable] {
            0.0
        } else if self.values[variable] <= self.low[variable] {
            1.0
        } else {
            -1.0
        }
    }

    /// Prices of the costs that are asked for; without falling ones, of those that cannot fall without end.
    fn price(&mut self, falling: bool) {
        let question = self.question;
        let cost = |variable: usize| match question.costs.get(variable) {
            Some(cost) if *cost < 0.0 && !falling && question.most[variable].is_infinite() => 0.0,
            Some(cost) => *cost,
            None => 0.0,
        };
        self.prices = (0..self.width).map(cost).collect();
        for row in 0..self.basic.len() {
            let by = cost(self.basic[row]);
            if by != 0.0 {
                for variable in 0..self.width {
                    self.prices[variable] -= by * self.table[row * self.width + variable];
                }
            }
        }
    }

    /// The dual method: until every basic variable is within its bounds.
    fn within_bounds(&mut self) -> Ended {
        self.price(false);
        for step in 0..self.most_steps() {
            let careful = step > self.most_steps() / 2;
            let Some((row, bound)) = self.leaving(careful) else {
                return Ended::Least;
            };
            let upwards = if self.values[self.basic[row]] < bound {
                1.0
            } else {
                -1.0
            };
            let mut best: Option<(f64, f64, usize)> = None;
            for variable in 0..self.width {
                // A unit more of this moves the basic variable by as much, the other way.
                let number = self.at(row, variable);
                if number.abs() <= PIVOT || -number * self.way(variable) * upwards <= 0.0 {
                    continue;
                }
                let ratio = self.prices[variable].abs() / number.abs();
                let better = best.is_none_or(|(least, size, _)| {
                    ratio < least || (ratio == least && !careful && number.abs() > size)
                });
                if better {
                    best = Some((ratio, number.abs(), variable));
                }
            }
            let Some((_, _, entering)) = best else {
                return Ended::Infeasible;
            };
            self.pivot(&Pivot {
                row,
                entering,
                bound,
            });
        }
        Ended::GivenUp
    }

    /// The row whose variable lies furthest outside of its bounds, and the bound; the first one when careful.
    fn leaving(&self, careful: bool) -> Option<(usize, f64)> {
        let mut worst: Option<(f64, usize, f64)> = None;
        for (row, variable) in self.basic.iter().copied().enumerate() {
            let (value, low, high) = (
                self.values[variable],
                self.low[variable],
                self.high[variable],
            );
            let (miss, bound) = if value < low {
                (low - value, low)
            } else if value > high {
                (value - high, high)
            } else {
                continue;
            };
            if miss <= FEASIBLE * (1.0 + bound.abs()) {
                continue;
            }
            let worse = worst.is_none_or(|(most, before, _)| {
                if careful {
                    variable < self.basic[before]
                } else {
                    miss > most
                }
            });
            if worse {
                worst = Some((miss, row, bound));
            }
        }
        worst.map(|(_, row, bound)| (row, bound))
    }

    /// The primal method: until no price is worth following.
    fn down(&mut self) -> Ended {
        self.price(true);
        for step in 0..self.most_steps() {
            let careful = step > self.most_steps() / 2;
            let mut best: Option<(f64, usize)> = None;
            for variable in 0..self.width {
                let gain = -self.prices[variable] * self.way(variable);
                if gain > WORTHWHILE && best.is_none_or(|(most, _)| !careful && gain > most) {
                    best = Some((gain, variable));
                }
            }
            let Some((_, entering)) = best else {
                return Ended::Least;
            };
            let way = self.way(entering);
            let mut nearest = self.high[entering] - self.low[entering];
            let mut stop: Option<(f64, Pivot)> = None;
            for row in 0..self.basic.len() {
                let rate = -self.at(row, entering) * way;
                if rate.abs() <= PIVOT {
                    continue;
                }
                let variable = self.basic[row];
                let bound = if rate > 0.0 {
                    self.high[variable]
                } else {
                    self.low[variable]
                };
                let far = ((bound - self.values[variable]) / rate).max(0.0);
                let sooner = far < nearest
                    || (far == nearest
                        && stop.as_ref().is_some_and(|(size, before)| {
                            if careful {
                                variable < self.basic[before.row]
                            } else {
                                rate.abs() > *size
                            }
                        }));
                if sooner {
                    nearest = far;
                    stop = Some((
                        rate.abs(),
                        Pivot {
                            row,
                            entering,
                            bound,
                        },
                    ));
                }
            }
            match stop {
                Some((_, pivot)) => self.pivot(&pivot),
                None if nearest.is_finite() => {
                    self.shift(entering, way * nearest);
                    // To the bound itself, not to where round-off leaves it.
                    self.values[entering] = if way > 0.0 {
                        self.high[entering]
                    } else {
                        self.low[entering]
                    };
                }
                None => return Ended::GivenUp,
            }
        }
        Ended::GivenUp
    }

    /// Moves a variable that is not basic, and with it the basic ones, as the rows have it.
    fn shift(&mut self, variable: usize, by: f64) {
        self.values[variable] += by;
        for row in 0..self.basic.len() {
            self.values[self.basic[row]] -= self.at(row, variable) * by;
        }
    }

    fn pivot(&mut self, pivot: &Pivot) {
        let leaving = self.basic[pivot.row];
        let by = (self.values[leaving] - pivot.bound) / self.at(pivot.row, pivot.entering);
        self.shift(pivot.entering, by);
        self.values[leaving] = pivot.bound;
        self.is_basic[leaving] = false;
        self.is_basic[pivot.entering] = true;
        self.basic[pivot.row] = pivot.entering;
        self.eliminate(pivot.row, pivot.entering);
    }

    /// Solves a row for a variable, and takes it out of all other rows and the prices.
    fn eliminate(&mut self, row: usize, variable: usize) {
        let width = self.width;
        let number = self.at(row, variable);
        for entry in &mut self.table[row * width..(row + 1) * width] {
            *entry /= number;
        }
        let solved = self.table[row * width..(row + 1) * width].to_vec();
        let others = self.table.chunks_mut(width).enumerate();
        let others = others.filter_map(|(place, other)| (place != row).then_some(other));
        for other in others.chain(std::iter::once(&mut self.prices[..])) {
            let times = other[variable];
            if times != 0.0 {
                for (entry, from) in other.iter_mut().zip(&solved) {
                    *entry -= times * from;
                }
                other[variable] = 0.0;
            }
        }
    }

    /// The tableau of the rows as they were asked, each solved for its slack, and the slacks' values.
    fn fill(&mut self) {
        let count = self.question.costs.len();
        self.table = vec![0.0; self.width * self.question.rows.len()];
        self.prices = vec![0.0; self.width];
        for (row, (coefficients, right)) in self.question.rows.iter().enumerate() {
            let start = row * self.width;
            self.table[start..start + count].copy_from_slice(coefficients);
            self.table[start + count + row] = 1.0;
            self.values[count + row] = right - summed(coefficients, &self.values);
        }
    }

    /// True when the rows hold for the values, as well as can be told.
    fn rows_hold(&self) -> bool {
        let count = self.question.costs.len();
        let mut rows = self.question.rows.iter().enumerate();
        rows.all(|(row, (coefficients, right))| {
            let slack = self.values[count + row];
            let largest = coefficients
                .iter()
                .zip(&self.values)
                .map(|(c, value)| (c * value).abs())
                .fold(1.0_f64.max(right.abs()), f64::max);
            (summed(coefficients, &self.values) + slack - right).abs() <= DRIFT * largest
        })
    }

    /// Makes the tableau anew for the same basis; false when the basis has lost its meaning.
    fn rebuild(&mut self) -> bool {
        let kept: Vec<usize> = self.basic.clone();
        for variable in &kept {
            self.values[*variable] = 0.0;
        }
        self.fill();
        // With the basic variables at nothing, the slacks show what each row still has to give them.
        let count = self.question.costs.len();
        let mut rights: Vec<f64> = self.values[count..].to_vec();
        for (row, right) in rights.iter_mut().enumerate() {
            if !kept.contains(&(count + row)) {
                // This slack rests at its bound, which is nothing.
                self.values[count + row] = 0.0;
            }
            if !right.is_finite() {
                return false;
            }
        }
        let mut free: Vec<usize> = (0..kept.len()).collect();
        for variable in kept {
            let size = |row: &usize| self.at(*row, variable).abs();
            let Some(place) = (0..free.len())
                .max_by(|one, other| size(&free[*one]).total_cmp(&size(&free[*other])))
            else {
                return false;
            };
            let row = free.swap_remove(place);
            let number = self.at(row, variable);
            if number.abs() <= PIVOT {
                return false;
            }
            let column: Vec<f64> = (0..rights.len())
                .map(|row| self.at(row, variable))
                .collect();
            rights[row] /= number;
            let solved = rights[row];
            for (place, right) in rights.iter_mut().enumerate() {
                if place != row {
                    *right -= column[place] * solved;
                }
            }
            self.eliminate(row, variable);
            self.basic[row] = variable;
        }
        for (row, right) in rights.iter().enumerate() {
            self.values[self.basic[row]] = *right;
        }
        true
    }
}

fn summed(coefficients: &[f64], values: &[f64]) -> f64 {
    let terms = coefficients.iter().zip(values);
    terms.map(|(coefficient, value)| coefficient * value).sum()
}
