//! The cloud of what a mixture may be: an ellipse within which nine of ten of its points lie.

type Point = (f64, f64);

/// Share of the points within.
const SHARE: f64 = 0.9;

/// The ellipse as a closed line, in the direction in which the points spread; `None` of few points,
/// or of points on one line.
pub(crate) fn around(points: &[Point]) -> Option<Vec<Point>> {
    const PARTS: u32 = 60;
    if points.len() < 20 {
        return None;
    }
    #[allow(clippy::cast_precision_loss)] // some hundred points
    let count = points.len() as f64;
    let sum = |part: &dyn Fn(&Point) -> f64| points.iter().map(part).sum::<f64>() / count;
    let middle = (sum(&|point| point.0), sum(&|point| point.1));
    let (dx, dy) = (
        |point: &Point| point.0 - middle.0,
        |point: &Point| point.1 - middle.1,
    );
    let xx = sum(&|point| dx(point) * dx(point));
    let xy = sum(&|point| dx(point) * dy(point));
    let yy = sum(&|point| dy(point) * dy(point));
    let determinant = xx * yy - xy * xy;
    if determinant < 1e-6 {
        return None;
    }
    // How many spreads each point lies from the middle, squared.
    let mut far: Vec<f64> = points
        .iter()
        .map(|point| {
            let (x, y) = (dx(point), dy(point));
            (yy * x * x - 2.0 * xy * x * y + xx * y * y) / determinant
        })
        .collect();
    far.sort_by(f64::total_cmp);
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // within the points
    let which = ((SHARE * count).ceil() as usize).saturating_sub(1);
    let radius = far.get(which)?.sqrt();
    // The root of the spread, lower triangle: it makes a circle into the ellipse.
    let (root, slant) = (xx.sqrt(), xy / xx.sqrt());
    let rest = (determinant / xx).sqrt();
    let ellipse = (0..PARTS).map(|part| {
        let angle = 2.0 * std::f64::consts::PI * f64::from(part) / f64::from(PARTS);
        let (sine, cosine) = (libm::sin(angle) * radius, libm::cos(angle) * radius);
        (
            middle.0 + root * cosine,
            middle.1 + slant * cosine + rest * sine,
        )
    });
    Some(ellipse.collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// True when a point lies within a closed line.
    fn is_within(point: Point, line: &[Point]) -> bool {
        let next = line.iter().cycle().skip(1);
        line.iter()
            .zip(next)
            .filter(|(one, other)| {
                (one.1 > point.1) != (other.1 > point.1)
                    && point.0 < one.0 + (other.0 - one.0) * (point.1 - one.1) / (other.1 - one.1)
            })
            .count()
            % 2
            == 1
    }

    #[test]
    fn nine_of_ten_points_lie_within() {
        // A spiral, stretched and slanted.
        let points: Vec<Point> = (0..240)
            .map(|index| {
                let (turn, out) = (f64::from(index) * 2.4, f64::from(index).sqrt());
                let (x, y) = (libm::cos(turn) * out, libm::sin(turn) * out);
                (100.0 + 3.0 * x, 80.0 + x + y)
            })
            .collect();
        let line = around(&points).unwrap();
        let within = points
            .iter()
            .filter(|point| is_within(**point, &line))
            .count();
        assert!((212..=217).contains(&within), "{within} of 240");
    }

    #[test]
    fn points_on_a_line_have_no_ellipse() {
        let points: Vec<Point> = (0..40)
            .map(|x| (f64::from(x), 2.0 * f64::from(x)))
            .collect();
        assert_eq!(around(&points), None);
    }
}
