//! Where does a share of a bell curve end?

/// The standard normal quantile of `share`, which must lie between 0 and 1.
///
/// Rational approximation with a relative error below 1.15e-9 (from memory of
/// P. J. Acklam 2003, "An algorithm for computing the inverse normal cumulative
/// distribution function"); checked against tabled quantiles below.
#[must_use]
pub fn normal_quantile(share: f64) -> f64 {
    const A: [f64; 6] = [
        -3.969_683_028_665_376e1,
        2.209_460_984_245_205e2,
        -2.759_285_104_469_687e2,
        1.383_577_518_672_69e2,
        -3.066_479_806_614_716e1,
        2.506_628_277_459_239,
    ];
    const B: [f64; 5] = [
        -5.447_609_879_822_406e1,
        1.615_858_368_580_409e2,
        -1.556_989_798_598_866e2,
        6.680_131_188_771_972e1,
        -1.328_068_155_288_572e1,
    ];
    const C: [f64; 6] = [
        -7.784_894_002_430_293e-3,
        -3.223_964_580_411_365e-1,
        -2.400_758_277_161_838,
        -2.549_732_539_343_734,
        4.374_664_141_464_968,
        2.938_163_982_698_783,
    ];
    const D: [f64; 4] = [
        7.784_695_709_041_462e-3,
        3.224_671_290_700_398e-1,
        2.445_134_137_142_996,
        3.754_408_661_907_416,
    ];
    const TAIL: f64 = 0.02425;
    let polynomial = |factors: &[f64], x: f64| factors.iter().fold(0.0, |sum, f| sum * x + f);
    let tail = |share: f64| {
        let q = (-2.0 * libm::log(share)).sqrt();
        polynomial(&C, q) / (polynomial(&D, q) * q + 1.0)
    };
    if share < TAIL {
        tail(share)
    } else if share > 1.0 - TAIL {
        -tail(1.0 - share)
    } else {
        let q = share - 0.5;
        let r = q * q;
        q * polynomial(&A, r) / (polynomial(&B, r) * r + 1.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn quantiles_agree_with_the_tables() {
        // Abramowitz and Stegun 1964, table 26.5, and symmetry.
        for (share, quantile) in [
            (0.5, 0.0),
            (0.9, 1.281_551_565_5),
            (0.95, 1.644_853_627),
            (0.975, 1.959_963_985),
            (0.999, 3.090_232_306),
        ] {
            assert!((normal_quantile(share) - quantile).abs() < 1e-8, "{share}");
            assert!((normal_quantile(1.0 - share) + quantile).abs() < 1e-8);
        }
    }
}
