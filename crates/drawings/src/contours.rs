//! Where does a field on a grid reach a bound? Its areas, with edges that run straight between
//! the points of the grid.

/// Values on a grid, row by row.
pub(crate) struct Grid {
    /// Points in a row.
    pub columns: usize,
    /// Rows.
    pub rows: usize,
    /// The values, the first row first.
    pub values: Vec<f64>,
}

impl Grid {
    /// The value at a point of the grid with a rim of points around it, beyond which nothing lies.
    fn at(&self, column: usize, row: usize) -> f64 {
        if column == 0 || row == 0 || column > self.columns || row > self.rows {
            return f64::NEG_INFINITY;
        }
        self.values[(row - 1) * self.columns + column - 1]
    }
}

/// The loops around all that is at least `bound`, in columns and rows of the grid. Holes are loops
/// too: what lies within an odd number of loops belongs to the area.
pub(crate) fn at_least(grid: &Grid, bound: f64) -> Vec<Vec<(f64, f64)>> {
    let across = grid.columns + 2;
    // Edge 2k goes from point k to its right, 2k + 1 from point k down.
    let edges = 2 * across * (grid.rows + 2);
    let mut next = vec![usize::MAX; edges];
    for row in 0..=grid.rows {
        for column in 0..=grid.columns {
            let corners = [
                grid.at(column, row),
                grid.at(column + 1, row),
                grid.at(column + 1, row + 1),
                grid.at(column, row + 1),
            ];
            let point = row * across + column;
            // In the order of the clock: top, right, bottom, left.
            let sides = [
                2 * point,
                2 * point + 3,
                2 * (point + across),
                2 * point + 1,
            ];
            join(
                corners.map(|value| value >= bound),
                corners,
                sides,
                bound,
                &mut next,
            );
        }
    }
    let mut loops = Vec::new();
    for first in 0..edges {
        let mut points: Vec<(f64, f64)> = Vec::new();
        let mut edge = first;
        while let Some(after) = next.get(edge).copied().filter(|after| *after != usize::MAX) {
            let at = crossing(grid, edge, bound);
            if points.last() != Some(&at) {
                points.push(at);
            }
            next[edge] = usize::MAX;
            edge = after;
        }
        if points.len() > 2 {
            loops.push(points);
        }
    }
    loops
}

/// Within one cell of the grid: from where the walk around it leaves the area to where it comes in
/// again.
fn join(inside: [bool; 4], corners: [f64; 4], sides: [usize; 4], bound: f64, next: &mut [usize]) {
    let leaves = |side: usize| inside[side] && !inside[(side + 1) % 4];
    let enters = |side: usize| !inside[side] && inside[(side + 1) % 4];
    // Two corners across: they belong together when the middle does.
    let is_joined = corners.iter().sum::<f64>() / 4.0 >= bound;
    let is_saddle = (0..4).filter(|side| leaves(*side)).count() == 2;
    for side in (0..4).filter(|side| leaves(*side)) {
        let mut to = (side + 1) % 4;
        while !enters(to) {
            to = (to + 1) % 4;
        }
        if is_saddle && !is_joined {
            to = (to + 2) % 4;
        }
        next[sides[side]] = sides[to];
    }
}

/// Where the bound is crossed on an edge; at the rim of the grid on the rim.
fn crossing(grid: &Grid, edge: usize, bound: f64) -> (f64, f64) {
    let across = grid.columns + 2;
    let (column, row) = (edge / 2 % across, edge / 2 / across);
    let (right, down) = if edge.is_multiple_of(2) {
        (1, 0)
    } else {
        (0, 1)
    };
    let (from, to) = (grid.at(column, row), grid.at(column + right, row + down));
    let share = if from == f64::NEG_INFINITY {
        1.0
    } else if to == f64::NEG_INFINITY {
        0.0
    } else {
        (bound - from) / (to - from)
    };
    #[allow(clippy::cast_precision_loss)] // small counts
    let at = |start: usize, step: usize| start as f64 - 1.0 + share * step as f64;
    (at(column, right), at(row, down))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn grid(columns: usize, rows: usize, value: impl Fn(f64, f64) -> f64) -> Grid {
        let values = (0..rows)
            .flat_map(|row| (0..columns).map(move |column| (column, row)))
            .map(|(column, row)| value(column as f64, row as f64))
            .collect();
        Grid {
            columns,
            rows,
            values,
        }
    }

    /// Twice the area within, holes taken off.
    fn area(loops: &[Vec<(f64, f64)>]) -> f64 {
        let one = |points: &Vec<(f64, f64)>| {
            let next = points.iter().cycle().skip(1);
            let sum: f64 = points
                .iter()
                .zip(next)
                .map(|(here, there)| here.0 * there.1 - there.0 * here.1)
                .sum();
            sum / 2.0
        };
        loops.iter().map(one).sum::<f64>().abs()
    }

    #[test]
    fn a_slope_is_cut_where_it_crosses_the_bound_and_the_rim_is_kept() {
        let slope = grid(11, 5, |column, _| column);
        let loops = at_least(&slope, 2.5);
        assert_eq!(loops.len(), 1);
        assert!((area(&loops) - 7.5 * 4.0).abs() < 1e-9, "{loops:?}");
        assert!(
            (area(&at_least(&slope, -1.0)) - 40.0).abs() < 1e-9,
            "all of it"
        );
        assert!(at_least(&slope, 11.0).is_empty(), "nothing of it");
    }

    #[test]
    fn a_hollow_is_a_hole() {
        let bowl = grid(21, 21, |x, y| {
            ((x - 10.0) * (x - 10.0) + (y - 10.0) * (y - 10.0)).sqrt()
        });
        let loops = at_least(&bowl, 5.0);
        assert_eq!(loops.len(), 2);
        let round = std::f64::consts::PI * 25.0;
        assert!(
            (area(&loops) - (400.0 - round)).abs() < 1.5,
            "{}",
            area(&loops)
        );
    }

    #[test]
    fn two_tops_that_touch_across_a_corner_are_one_when_their_middle_is_high() {
        let saddle = |middle: f64| Grid {
            columns: 2,
            rows: 2,
            values: vec![10.0, middle, middle, 10.0],
        };
        assert_eq!(at_least(&saddle(1.0), 5.0).len(), 1, "the middle is 5.5");
        assert_eq!(at_least(&saddle(-1.0), 5.0).len(), 2, "the middle is 4.5");
    }
}
