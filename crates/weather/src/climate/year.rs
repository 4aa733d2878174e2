//! How do twelve figures run through a year?

use jiff::civil::Date;

use super::{MONTHS, MonthNormal};

/// January is 0.
pub(super) fn month_index(date: Date) -> usize {
    usize::try_from(date.month() - 1)
        .unwrap_or(0)
        .min(MONTHS - 1)
}

/// Straight from the middle of one month to that of the next.
pub(super) fn at(knots: &[f64; MONTHS], date: Date) -> f64 {
    let month = month_index(date);
    let through = (f64::from(date.day()) - 0.5) / f64::from(date.days_in_month()) - 0.5;
    let other = if through < 0.0 {
        month + MONTHS - 1
    } else {
        month + 1
    } % MONTHS;
    knots[month] + (knots[other] - knots[month]) * through.abs()
}

/// Values for the middles of months such that the means over months are the given ones.
///
/// Straight lines between middles have the mean (before + 6 x own + after) / 8 over a month; the
/// twelve equations are solved by repeated substitution, which takes off two thirds of the fault
/// each time.
pub(super) fn knots(means: &[f64; MONTHS]) -> [f64; MONTHS] {
    const ROUNDS: usize = 40;
    let mut knots = *means;
    for _ in 0..ROUNDS {
        let last = knots;
        for (month, knot) in knots.iter_mut().enumerate() {
            let around = last[(month + MONTHS - 1) % MONTHS] + last[(month + 1) % MONTHS];
            *knot = (8.0 * means[month] - around) / 6.0;
        }
    }
    knots
}

/// The rain of a date [mm] where a month's wet days come evenly: whenever so much of a wet day
/// has gathered that the next whole one is nearest. A month with rain has one wet day at least.
pub(super) fn even_rain_mm(month: &MonthNormal, date: Date) -> f64 {
    let length = f64::from(date.days_in_month());
    let gathered = |day: f64| libm::floor((month.wet_days.max(1.0) * day / length) + 0.5);
    let day = f64::from(date.day());
    if gathered(day) > gathered(day - 1.0) {
        month.rain_mm / gathered(length)
    } else {
        0.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_knots_keep_the_means() {
        let means = [
            -6.0, -5.0, 0.0, 7.5, 13.0, 17.0, 20.0, 18.0, 12.0, 6.0, 0.5, -4.0,
        ];
        let knots = knots(&means);
        for month in 0..MONTHS {
            let around = knots[(month + 11) % 12] + 6.0 * knots[month] + knots[(month + 1) % 12];
            assert!((around / 8.0 - means[month]).abs() < 1e-12);
        }
    }
}
