//! Linear equations whose unknowns touch only their neighbours.
//!
//! Two solvers, both without exchange of rows: [`Banded`] for matrices that are
//! diagonally dominant or M-matrices (diffusion with upwind flow), where elimination
//! in the given order is stable (Higham 2002, *Accuracy and Stability of Numerical
//! Algorithms*, chapter 9), and [`SymmetricBanded`] for positive definite ones. The
//! work is `unknowns x band^2`, the memory `unknowns x band`.

/// A square matrix with `band` diagonals on either side of the main one.
#[derive(Clone, Debug, Default)]
pub struct Banded {
    unknowns: usize,
    band: usize,
    rows: Vec<f64>,
    inverse_diagonal: Vec<f64>,
}

impl Banded {
    /// A matrix of zeros.
    #[must_use]
    pub fn new(unknowns: usize, band: usize) -> Self {
        Self {
            unknowns,
            band,
            rows: vec![0.0; unknowns * (2 * band + 1)],
            inverse_diagonal: vec![0.0; unknowns],
        }
    }

    /// Sets all entries to zero.
    pub fn clear(&mut self) {
        self.rows.fill(0.0);
    }

    /// Adds `value` at `row`, `column`, which must lie within the band.
    #[inline]
    pub fn add(&mut self, row: usize, column: usize, value: f64) {
        let width = 2 * self.band + 1;
        self.rows[row * width + self.band + column - row] += value;
    }

    /// Adds `values` to the main diagonal.
    pub fn add_diagonal(&mut self, values: &[f64]) {
        let width = 2 * self.band + 1;
        for (row, value) in self.rows.chunks_exact_mut(width).zip(values) {
            row[self.band] += value;
        }
    }

    /// The product with `x`, into `out`; only before [`Self::factor`].
    pub fn multiply(&self, x: &[f64], out: &mut [f64]) {
        let width = 2 * self.band + 1;
        for (row, (entries, out)) in self.rows.chunks_exact(width).zip(out).enumerate() {
            let first = row.saturating_sub(self.band);
            let end = (row + self.band + 1).min(self.unknowns);
            let entries = &entries[self.band + first - row..self.band + end - row];
            *out = dot(entries, &x[first..end]);
        }
    }

    /// Replaces the matrix by its lower and upper factors. `false` when a pivot
    /// vanishes or is not a number.
    #[must_use]
    pub fn factor(&mut self) -> bool {
        let (band, width) = (self.band, 2 * self.band + 1);
        for pivot_row in 0..self.unknowns {
            let pivot = self.rows[pivot_row * width + band];
            if pivot == 0.0 || !pivot.is_finite() {
                return false;
            }
            let inverse = 1.0 / pivot;
            self.inverse_diagonal[pivot_row] = inverse;
            let end = (pivot_row + band + 1).min(self.unknowns);
            let reach = end - pivot_row - 1;
            let (above, below) = self.rows.split_at_mut((pivot_row + 1) * width);
            let source = &above[pivot_row * width + band + 1..][..reach];
            for row in pivot_row + 1..end {
                let offset = (row - pivot_row - 1) * width;
                let left = band - (row - pivot_row);
                let entries = &mut below[offset..offset + width];
                if entries[left] == 0.0 {
                    continue;
                }
                let factor = entries[left] * inverse;
                entries[left] = factor;
                for (entry, source) in entries[left + 1..=left + reach].iter_mut().zip(source) {
                    *entry -= factor * source;
                }
            }
        }
        true
    }

    /// Solves for one right-hand side in place, after [`Self::factor`].
    pub fn solve(&self, x: &mut [f64]) {
        let (band, width) = (self.band, 2 * self.band + 1);
        for row in 1..self.unknowns {
            let first = row.saturating_sub(band);
            let entries = &self.rows[row * width + band + first - row..row * width + band];
            x[row] -= dot(entries, &x[first..row]);
        }
        for row in (0..self.unknowns).rev() {
            let end = (row + band + 1).min(self.unknowns);
            let start = row * width + band;
            let entries = &self.rows[start + 1..start + end - row];
            x[row] = (x[row] - dot(entries, &x[row + 1..end])) * self.inverse_diagonal[row];
        }
    }
}

/// A symmetric positive definite matrix with `band` diagonals below the main one.
#[derive(Clone, Debug, Default)]
pub struct SymmetricBanded {
    unknowns: usize,
    band: usize,
    /// Row by row: the `band` entries left of the diagonal, then the diagonal.
    rows: Vec<f64>,
    inverse_diagonal: Vec<f64>,
}

impl SymmetricBanded {
    /// A matrix of zeros.
    #[must_use]
    pub fn new(unknowns: usize, band: usize) -> Self {
        Self {
            unknowns,
            band,
            rows: vec![0.0; unknowns * (band + 1)],
            inverse_diagonal: vec![0.0; unknowns],
        }
    }

    /// Sets all entries to zero.
    pub fn clear(&mut self) {
        self.rows.fill(0.0);
    }

    /// Adds a conductance between two unknowns, `low` below `high`: positive on
    /// both diagonal entries, negative between them.
    #[inline]
    pub fn connect(&mut self, low: usize, high: usize, conductance: f64) {
        let width = self.band + 1;
        self.rows[low * width + self.band] += conductance;
        self.rows[high * width + self.band] += conductance;
        self.rows[high * width + self.band + low - high] -= conductance;
    }

    /// Adds a conductance from an unknown to a place of known value.
    #[inline]
    pub fn ground(&mut self, unknown: usize, conductance: f64) {
        self.rows[unknown * (self.band + 1) + self.band] += conductance;
    }

    /// Replaces the matrix by its root-free Cholesky factors. `false` when it is
    /// not positive definite.
    #[must_use]
    pub fn factor(&mut self) -> bool {
        let (band, width) = (self.band, self.band + 1);
        for row in 0..self.unknowns {
            let first = row.saturating_sub(band);
            let (above, this) = self.rows.split_at_mut(row * width);
            let this = &mut this[..width];
            // Entry (row, column) still times the pivot of `column`.
            for column in first..row {
                let common = column.saturating_sub(band).max(first);
                let length = column - common;
                let mine = band + common - row;
                let theirs = column * width + band + common - column;
                this[band + column - row] -=
                    dot(&this[mine..mine + length], &above[theirs..theirs + length]);
            }
            let mut pivot = this[band];
            for column in first..row {
                let place = band + column - row;
                let scaled = this[place] * self.inverse_diagonal[column];
                pivot -= scaled * this[place];
                this[place] = scaled;
            }
            if !(pivot > 0.0 && pivot.is_finite()) {
                return false;
            }
            this[band] = pivot;
            self.inverse_diagonal[row] = 1.0 / pivot;
        }
        true
    }

    /// Solves for one right-hand side in place, after [`Self::factor`].
    pub fn solve(&self, x: &mut [f64]) {
        let (band, width) = (self.band, self.band + 1);
        for row in 1..self.unknowns {
            let first = row.saturating_sub(band);
            let entries = &self.rows[row * width + band + first - row..row * width + band];
            x[row] -= dot(entries, &x[first..row]);
        }
        for (x, inverse) in x.iter_mut().zip(&self.inverse_diagonal) {
            *x *= inverse;
        }
        for row in (1..self.unknowns).rev() {
            let first = row.saturating_sub(band);
            let entries = &self.rows[row * width + band + first - row..row * width + band];
            let value = x[row];
            for (x, entry) in x[first..row].iter_mut().zip(entries) {
                *x -= entry * value;
            }
        }
    }
}

/// The sum of products in four sums side by side, which need not wait for each other.
#[inline]
fn dot(one: &[f64], other: &[f64]) -> f64 {
    let (fours, others) = (one.chunks_exact(4), other.chunks_exact(4));
    let rest: f64 = fours
        .remainder()
        .iter()
        .zip(others.remainder())
        .map(|(a, b)| a * b)
        .sum();
    let mut sums = [0.0; 4];
    for (a, b) in fours.zip(others) {
        for lane in 0..4 {
            sums[lane] += a[lane] * b[lane];
        }
    }
    (sums[0] + sums[1]) + (sums[2] + sums[3]) + rest
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn the_second_difference_has_its_closed_form() {
        // -u'' = 2 on nine inner points of the unit interval: u = x (1 - x), exact on any grid.
        let step = 0.1;
        let mut general = Banded::new(9, 1);
        let mut symmetric = SymmetricBanded::new(9, 1);
        for row in 0..9 {
            general.add(row, row, 2.0);
            symmetric.ground(row, if row == 0 || row == 8 { 1.0 } else { 0.0 });
            if row > 0 {
                general.add(row, row - 1, -1.0);
                general.add(row - 1, row, -1.0);
                symmetric.connect(row - 1, row, 1.0);
            }
        }
        assert!(general.factor() && symmetric.factor());
        let mut one = vec![2.0 * step * step; 9];
        let mut other = one.clone();
        general.solve(&mut one);
        symmetric.solve(&mut other);
        for (index, (one, other)) in one.iter().zip(&other).enumerate() {
            let x = step * (f64::from(u8::try_from(index).unwrap()) + 1.0);
            assert!((one - x * (1.0 - x)).abs() < 1e-15, "{one}");
            assert!((other - x * (1.0 - x)).abs() < 1e-15, "{other}");
        }
    }

    #[test]
    fn a_matrix_without_solution_is_refused() {
        assert!(!Banded::new(2, 1).factor());
        assert!(!SymmetricBanded::new(2, 1).factor());
    }

    proptest! {
        #[test]
        fn prop_solutions_give_back_the_right_hand_side(
            unknowns in 1_usize..24,
            band in 1_usize..6,
            entries in prop::collection::vec(0.01..1.0_f64, 24 * 13),
        ) {
            let mut general = Banded::new(unknowns, band);
            let mut symmetric = SymmetricBanded::new(unknowns, band);
            for row in 0..unknowns {
                general.add(row, row, 14.0);
                symmetric.ground(row, entries[row]);
                for column in row.saturating_sub(band)..(row + band + 1).min(unknowns) {
                    if column != row {
                        general.add(row, column, -entries[row * 13 + column + band - row]);
                    }
                    if column < row {
                        symmetric.connect(column, row, entries[row * 13 + column + band - row]);
                    }
                }
            }
            let wanted: Vec<f64> = entries[..unknowns].to_vec();
            let mut right = vec![0.0; unknowns];
            general.multiply(&wanted, &mut right);
            let mut factored = general.clone();
            prop_assert!(factored.factor());
            factored.solve(&mut right);
            for (found, wanted) in right.iter().zip(&wanted) {
                prop_assert!((found - wanted).abs() < 1e-12);
            }
            // The symmetric matrix, multiplied from its own storage.
            let width = band + 1;
            let mut right = vec![0.0; unknowns];
            for row in 0..unknowns {
                for column in row.saturating_sub(band)..=row {
                    let entry = symmetric.rows[row * width + band + column - row];
                    right[row] += entry * wanted[column];
                    if column < row {
                        right[column] += entry * wanted[row];
                    }
                }
            }
            prop_assert!(symmetric.factor());
            symmetric.solve(&mut right);
            for (found, wanted) in right.iter().zip(&wanted) {
                prop_assert!((found - wanted).abs() < 1e-9);
            }
        }
    }
}
