//! How is compost shared out among beds? Several aims, one after the other.
//!
//! 1. What the crops need is met: the least sum of unmet nitrogen, phosphorus and potassium.
//! 2. Of all such plans, the least phosphorus beyond what the crops take away this year.
//! 3. Of those, the fairest: the bed that is served worst is served as well as can be, then the
//!    next worst, and so on.
//! 4. Of those, the one that uses most compost.
//!
//! Each aim is a linear programme within the limits and with the earlier aims held. Beds that are
//! alike in every figure are one bed to the programme, and beds stand in an order of their figures,
//! so that the order in which they were named has no effect.
//!
//! Checks: `oracle_sharing` against another solver.

use heapwright_numerics::{Comparison, Outcome, Programme, Variable};

/// Nitrogen, phosphorus, potassium.
pub const NUTRIENTS: usize = 3;

/// A bed to the programme.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Plot {
    /// Area [m2], above 0.
    pub area_m2: f64,
    /// Nutrients still wanted [kg/m2], 0 or more.
    pub wanted_kg_m2: [f64; NUTRIENTS],
    /// Phosphorus that the crop takes away this year and that nothing else brings [kg/m2].
    pub phosphorus_room_kg_m2: f64,
    /// Deepest layer [m], 0 or more, finite.
    pub most_depth_m: f64,
}

/// The question.
#[derive(Clone, Debug, PartialEq)]
pub struct Sharing {
    /// The beds.
    pub plots: Vec<Plot>,
    /// Compost that there is [m3], 0 or more.
    pub volume_m3: f64,
    /// What a cubic metre supplies of each nutrient this year [kg/m3], 0 or more.
    pub supplied_kg_m3: [f64; NUTRIENTS],
    /// All phosphorus in a cubic metre [kg/m3].
    pub phosphorus_kg_m3: f64,
    /// What counts as one unit of each nutrient [kg/m2], above 0: what a medium feeder needs.
    pub unit_kg_m2: [f64; NUTRIENTS],
}

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct Shared {
    /// Depth on each bed [m], in the order of the plots.
    pub depths_m: Vec<f64>,
    /// Compost that is left over [m3].
    pub left_m3: f64,
    /// Sum of unmet units over all beds, by area [m2].
    pub unmet: f64,
    /// Phosphorus beyond what the crops take away [kg].
    pub surplus_phosphorus_kg: f64,
    /// How well each bed is served: units met over units wanted; 1 where none is wanted.
    pub served: Vec<f64>,
    /// False where a programme could not be solved, so that an earlier aim's plan stands.
    pub proven: bool,
}

/// Depths are counted in this [m], so that the solver's absolute tolerances are far below any spade.
const STEP_M: f64 = 1e-3;
/// How far an aim that is held may slip for the next, in units a square metre: hidden in round-off.
const HELD: f64 = 1e-9;
/// What counts as served alike.
const ALIKE: f64 = 1e-7;

/// Shares compost out.
///
/// The depths keep to every limit, and with what is left they sum to what there is.
#[must_use]
pub fn share_out(question: &Sharing) -> Shared {
    let classes = classes(&question.plots);
    let model = Model::new(question, &classes);
    let (steps, proven) = model.solve();
    let mut depths_m = vec![0.0; question.plots.len()];
    for (class, step) in classes.iter().zip(&steps) {
        for index in &class.members {
            let most = question.plots[*index].most_depth_m;
            depths_m[*index] = (step * STEP_M).clamp(0.0, most);
        }
    }
    // The solver holds rows to a tolerance; what is not there is not given out.
    let given = given_m3(question, &depths_m);
    if given > question.volume_m3 {
        let factor = question.volume_m3 / given;
        for depth in &mut depths_m {
            *depth *= factor;
        }
    }
    let left_m3 = (question.volume_m3 - given_m3(question, &depths_m)).max(0.0);
    judged(question, depths_m, left_m3, proven)
}

fn given_m3(question: &Sharing, depths_m: &[f64]) -> f64 {
    question
        .plots
        .iter()
        .zip(depths_m)
        .map(|(plot, depth)| plot.area_m2 * depth)
        .sum()
}

/// The aims at these depths, from the figures alone.
fn judged(question: &Sharing, depths_m: Vec<f64>, left_m3: f64, proven: bool) -> Shared {
    let mut unmet = 0.0;
    let mut surplus_phosphorus_kg = 0.0;
    let mut served = Vec::with_capacity(depths_m.len());
    for (plot, depth) in question.plots.iter().zip(&depths_m) {
        let (mut missing, mut wanted) = (0.0, 0.0);
        for nutrient in 0..NUTRIENTS {
            let unit = question.unit_kg_m2[nutrient];
            let supplied = question.supplied_kg_m3[nutrient] * depth;
            wanted += plot.wanted_kg_m2[nutrient] / unit;
            missing += (plot.wanted_kg_m2[nutrient] - supplied).max(0.0) / unit;
        }
        unmet += plot.area_m2 * missing;
        let beyond = question.phosphorus_kg_m3 * depth - plot.phosphorus_room_kg_m2;
        surplus_phosphorus_kg += plot.area_m2 * beyond.max(0.0);
        served.push(if wanted > 0.0 {
            1.0 - missing / wanted
        } else {
            1.0
        });
    }
    Shared {
        depths_m,
        left_m3,
        unmet,
        surplus_phosphorus_kg,
        served,
        proven,
    }
}

/// Beds that are alike but for their area.
struct Class {
    plot: Plot,
    area_m2: f64,
    members: Vec<usize>,
}

fn key(plot: &Plot) -> [f64; NUTRIENTS + 2] {
    let [nitrogen, phosphorus, potassium] = plot.wanted_kg_m2;
    [
        nitrogen,
        phosphorus,
        potassium,
        plot.phosphorus_room_kg_m2,
        plot.most_depth_m,
    ]
}

fn classes(plots: &[Plot]) -> Vec<Class> {
    let mut order: Vec<usize> = (0..plots.len()).collect();
    order.sort_by(|one, other| {
        let (one, other) = (&plots[*one], &plots[*other]);
        key(one)
            .iter()
            .zip(key(other))
            .map(|(a, b)| a.total_cmp(&b))
            .find(|order| order.is_ne())
            .unwrap_or(one.area_m2.total_cmp(&other.area_m2))
    });
    let mut classes: Vec<Class> = Vec::new();
    for index in order {
        let plot = plots[index];
        match classes.last_mut() {
            Some(class) if key(&class.plot) == key(&plot) => {
                class.area_m2 += plot.area_m2;
                class.members.push(index);
            }
            _ => classes.push(Class {
                plot,
                area_m2: plot.area_m2,
                members: vec![index],
            }),
        }
    }
    classes
}

/// What the solver works on. For each class: the depth in steps, what is unmet of each nutrient in
/// units, and the surplus of phosphorus in its unit; then one variable for the worst served.
struct Model<'a> {
    question: &'a Sharing,
    classes: &'a [Class],
    /// Share of the whole area that each class has.
    weights: Vec<f64>,
    /// Mean depth if all were spread [steps].
    mean_steps: f64,
}

/// Variables of one class.
const WIDTH: usize = NUTRIENTS + 2;
const SURPLUS: usize = NUTRIENTS + 1;

/// A row that holds an earlier aim: coefficients and the most.
type Row = (Vec<f64>, Comparison, f64);

impl<'a> Model<'a> {
    fn new(question: &'a Sharing, classes: &'a [Class]) -> Self {
        let area: f64 = classes.iter().map(|class| class.area_m2).sum();
        Self {
            question,
            classes,
            weights: classes.iter().map(|class| class.area_m2 / area).collect(),
            mean_steps: question.volume_m3 / area / STEP_M,
        }
    }

    fn count(&self) -> usize {
        self.classes.len() * WIDTH + 1
    }

    fn row(&self) -> Vec<f64> {
        vec![0.0; self.count()]
    }

    /// What one step of depth supplies of a nutrient, in units.
    fn supplied(&self, nutrient: usize) -> f64 {
        self.question.supplied_kg_m3[nutrient] * STEP_M / self.question.unit_kg_m2[nutrient]
    }

    fn wanted(&self, class: usize, nutrient: usize) -> f64 {
        self.classes[class].plot.wanted_kg_m2[nutrient] / self.question.unit_kg_m2[nutrient]
    }

    fn wanted_in_all(&self, class: usize) -> f64 {
        (0..NUTRIENTS)
            .map(|nutrient| self.wanted(class, nutrient))
            .sum()
    }

    /// The rows that every plan keeps.
    fn limits(&self) -> Vec<Row> {
        let mut rows = Vec::new();
        let mut whole = self.row();
        for (class, weight) in self.weights.iter().enumerate() {
            whole[class * WIDTH] = *weight;
            for nutrient in 0..NUTRIENTS {
                let mut row = self.row();
                row[class * WIDTH] = self.supplied(nutrient);
                row[class * WIDTH + 1 + nutrient] = 1.0;
                rows.push((row, Comparison::AtLeast, self.wanted(class, nutrient)));
            }
            let unit = self.question.unit_kg_m2[1];
            let mut row = self.row();
            row[class * WIDTH] = self.question.phosphorus_kg_m3 * STEP_M / unit;
            row[class * WIDTH + SURPLUS] = -1.0;
            let room = self.classes[class].plot.phosphorus_room_kg_m2 / unit;
            rows.push((row, Comparison::AtMost, room));
        }
        rows.push((whole, Comparison::AtMost, self.mean_steps));
        rows
    }

    /// Costs by class and place, and for the worst served.
    fn costs(&self, of: impl Fn(usize, usize) -> f64, worst: f64) -> Vec<f64> {
        let mut costs: Vec<f64> = (0..self.classes.len() * WIDTH)
            .map(|index| of(index / WIDTH, index % WIDTH))
            .collect();
        costs.push(worst);
        costs
    }

    /// The point of least cost within the rows. Rows that hold earlier aims may leave no room but that
    /// of round-off: then they give way, by no more than what counts as alike.
    fn least(&self, costs: &[f64], rows: &[Row]) -> Option<Vec<f64>> {
        [0.0, 10.0 * HELD, ALIKE]
            .into_iter()
            .find_map(|slip| self.least_within(costs, rows, slip))
    }

    /// The same with rows beyond the limits that give way by so much.
    fn least_within(&self, costs: &[f64], rows: &[Row], slip: f64) -> Option<Vec<f64>> {
        let limits = self.classes.len() * (NUTRIENTS + 1) + 1;
        let mut programme = Programme::default();
        for (index, cost) in costs.iter().enumerate() {
            let most = match (index / WIDTH, index % WIDTH) {
                (class, 0) if class < self.classes.len() => {
                    (self.classes[class].plot.most_depth_m / STEP_M).max(0.0)
                }
                _ => f64::INFINITY,
            };
            programme.add_variable(Variable {
                cost: *cost,
                most,
                whole: false,
            });
        }
        for (index, (coefficients, comparison, right)) in rows.iter().enumerate() {
            // All rows that hold an aim say that something is at most so much.
            let slip = if index < limits { 0.0 } else { slip };
            programme.add_row(coefficients, *comparison, right + slip);
        }
        match programme.solve(1) {
            Outcome::Solved(solved) => Some(solved.values),
            Outcome::Infeasible | Outcome::Unknown => None,
        }
    }

    /// The row that holds the value that `costs` has at `point`.
    fn held(costs: &[f64], point: &[f64]) -> Row {
        let value: f64 = costs
            .iter()
            .zip(point)
            .map(|(cost, value)| cost * value)
            .sum();
        (
            costs.to_vec(),
            Comparison::AtMost,
            value + HELD * value.abs().max(1.0),
        )
    }

    /// Depth of each class [steps], and whether all aims were reached.
    fn solve(&self) -> (Vec<f64>, bool) {
        let steps = |point: &[f64]| -> Vec<f64> {
            point
                .chunks(WIDTH)
                .map(|class| class[0])
                .take(self.classes.len())
                .collect()
        };
        if self.classes.is_empty() {
            return (Vec::new(), true);
        }
        let mut rows = self.limits();
        let unmet = self.costs(
            |class, place| {
                if (1..=NUTRIENTS).contains(&place) {
                    self.weights[class]
                } else {
                    0.0
                }
            },
            0.0,
        );
        let surplus = self.costs(
            |class, place| {
                if place == SURPLUS {
                    self.weights[class]
                } else {
                    0.0
                }
            },
            0.0,
        );
        let mut best = vec![0.0; self.count()];
        for costs in [&unmet, &surplus] {
            match self.least(costs, &rows) {
                Some(point) => best = point,
                None => return (steps(&best), false),
            }
            rows.push(Self::held(costs, &best));
        }
        match self.fairest(&mut rows) {
            Some(point) => best = point,
            None => return (steps(&best), false),
        }
        let most_used = self.costs(
            |class, place| {
                if place == 0 {
                    -self.weights[class]
                } else {
                    0.0
                }
            },
            0.0,
        );
        match self.least(&most_used, &rows) {
            Some(point) => (steps(&point), true),
            None => (steps(&best), false),
        }
    }

    /// Row: a class is served at least so well. With `worst`, at least as well as that variable says.
    fn served_at_least(&self, class: usize, served: Option<f64>) -> Row {
        // Unmet over wanted is at most one less what is served.
        let mut row = self.row();
        let wanted = self.wanted_in_all(class);
        for nutrient in 0..NUTRIENTS {
            row[class * WIDTH + 1 + nutrient] = 1.0 / wanted;
        }
        match served {
            Some(served) => (row, Comparison::AtMost, 1.0 - served),
            None => {
                // The variable is what the worst served still lacks.
                row[self.classes.len() * WIDTH] = -1.0;
                (row, Comparison::AtMost, 0.0)
            }
        }
    }

    /// Serves the worst served as well as can be, then the next: adds the rows that hold it.
    fn fairest(&self, rows: &mut Vec<Row>) -> Option<Vec<f64>> {
        let worst = self.costs(|_, _| 0.0, 1.0);
        let mut free: Vec<usize> = (0..self.classes.len())
            .filter(|class| self.wanted_in_all(*class) > 0.0)
            .collect();
        let mut best = self.least(&worst, rows)?;
        while !free.is_empty() {
            let mut level_rows = rows.clone();
            level_rows.extend(free.iter().map(|class| self.served_at_least(*class, None)));
            best = self.least(&worst, &level_rows)?;
            let level = 1.0 - best[self.classes.len() * WIDTH];
            // All free ones keep this level from here on.
            let mut kept = rows.clone();
            kept.extend(
                free.iter()
                    .map(|class| self.served_at_least(*class, Some(level - HELD))),
            );
            let mut fixed = Vec::new();
            for class in &free {
                if self.lacks(&best, *class) < 1.0 - level - ALIKE {
                    continue;
                }
                let alone = self.costs(
                    |other, place| {
                        if other == *class && (1..=NUTRIENTS).contains(&place) {
                            1.0 / self.wanted_in_all(*class)
                        } else {
                            0.0
                        }
                    },
                    0.0,
                );
                let raised = self.least(&alone, &kept)?;
                if self.lacks(&raised, *class) > 1.0 - level - ALIKE {
                    fixed.push(*class);
                }
            }
            // Round-off may hide that none can rise: then all are done.
            if fixed.is_empty() {
                fixed.clone_from(&free);
            }
            rows.extend(
                fixed
                    .iter()
                    .map(|class| self.served_at_least(*class, Some(level - HELD))),
            );
            free.retain(|class| !fixed.contains(class));
        }
        Some(best)
    }

    /// What a class lacks at a point, of what it wants: from its depth, for what is unmet may be
    /// told too high where no cost presses it down.
    fn lacks(&self, point: &[f64], class: usize) -> f64 {
        let unmet: f64 = (0..NUTRIENTS)
            .map(|nutrient| {
                (self.wanted(class, nutrient) - self.supplied(nutrient) * point[class * WIDTH])
                    .max(0.0)
            })
            .sum();
        unmet / self.wanted_in_all(class)
    }
}
