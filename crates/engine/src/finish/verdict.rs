//! Is it ready? Signs of two independent kinds make a verdict.
//!
//! One kind alone deceives: a dry heap is cold, and a raw one may let cress grow. So ready means
//! that a sign of stability *and* one of maturity speak for it and none of either against. The
//! structure is that of the Californian maturity index of 2001 (recalled; seen in its table of
//! contents): C:N, then one test of stability, then one of maturity.

use super::signs::{Family, Standing};

/// What the signs of one kind say together.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shown {
    /// There is none.
    Untested,
    /// Against it.
    Against,
    /// Some for, some against.
    Divided,
    /// Nearly.
    Between,
    /// For it.
    For,
}

impl Shown {
    /// What signs of one kind say together.
    #[must_use]
    pub fn of(standings: &[Standing]) -> Self {
        let has = |standing| standings.contains(&standing);
        match (
            has(Standing::For),
            has(Standing::Between),
            has(Standing::Against),
        ) {
            (true, _, true) => Self::Divided,
            (false, _, true) => Self::Against,
            (true, _, false) => Self::For,
            (false, true, false) => Self::Between,
            (false, false, false) => Self::Untested,
        }
    }
}

/// The verdict.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// Nothing was tested that says anything.
    Untested,
    /// Not ready.
    NotReady,
    /// Nearly, or half shown.
    Nearly,
    /// Ready by two independent signs.
    Ready,
}

/// The verdict and what it rests on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Judgement {
    /// The verdict.
    pub verdict: Verdict,
    /// What signs of stability say.
    pub stability: Shown,
    /// What signs of maturity say.
    pub maturity: Shown,
}

/// Judges signs.
#[must_use]
pub fn judge(signs: &[(Family, Standing)]) -> Judgement {
    let shown = |family| {
        let standings: Vec<Standing> = signs
            .iter()
            .filter(|(of, _)| *of == family)
            .map(|(_, standing)| *standing)
            .collect();
        Shown::of(&standings)
    };
    let (stability, maturity) = (shown(Family::Stability), shown(Family::Maturity));
    let verdict = match (stability, maturity) {
        (Shown::Untested, Shown::Untested) => Verdict::Untested,
        (Shown::Against, _) | (_, Shown::Against) => Verdict::NotReady,
        (Shown::For, Shown::For) => Verdict::Ready,
        _ => Verdict::Nearly,
    };
    Judgement {
        verdict,
        stability,
        maturity,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const FAMILIES: [Family; 2] = [Family::Stability, Family::Maturity];
    const STANDINGS: [Standing; 3] = [Standing::Against, Standing::Between, Standing::For];

    #[test]
    fn two_signs_of_one_kind_are_not_enough() {
        let stable = (Family::Stability, Standing::For);
        let mature = (Family::Maturity, Standing::For);
        assert_eq!(judge(&[]).verdict, Verdict::Untested);
        assert_eq!(judge(&[stable, stable]).verdict, Verdict::Nearly);
        assert_eq!(judge(&[stable, mature]).verdict, Verdict::Ready);
        let raw = (Family::Maturity, Standing::Against);
        assert_eq!(judge(&[stable, raw]).verdict, Verdict::NotReady);
        let divided = judge(&[stable, mature, raw]);
        assert_eq!(
            (divided.verdict, divided.maturity),
            (Verdict::Nearly, Shown::Divided)
        );
    }

    fn rank(verdict: Verdict) -> u8 {
        match verdict {
            Verdict::NotReady => 0,
            Verdict::Untested => 1,
            Verdict::Nearly => 2,
            Verdict::Ready => 3,
        }
    }

    proptest! {
        #[test]
        fn prop_a_good_sign_never_lowers_and_a_bad_one_never_raises(
            picks in prop::collection::vec((0_usize..2, 0_usize..3), 0..8),
            family in 0_usize..2,
        ) {
            let mut signs: Vec<_> = picks.iter().map(|(f, s)| (FAMILIES[*f], STANDINGS[*s])).collect();
            let before = judge(&signs);
            signs.push((FAMILIES[family], Standing::For));
            prop_assert!(rank(judge(&signs).verdict) >= rank(before.verdict));
            signs.pop();
            signs.push((FAMILIES[family], Standing::Against));
            prop_assert!(rank(judge(&signs).verdict) <= rank(before.verdict));
            if before.verdict == Verdict::Ready {
                prop_assert!(FAMILIES.iter().all(|family| picks.iter().any(
                    |(f, s)| FAMILIES[*f] == *family && STANDINGS[*s] == Standing::For
                )));
            }
        }
    }
}
