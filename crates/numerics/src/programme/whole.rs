//! What is the least of straight costs, where some variables come in whole units only?
//!
//! Branch and bound: where the least has a part of a unit, one branch allows that many units rounded
//! down at most, the other rounded up at least. The branch whose bound is cheapest is looked into
//! first, and each is followed down to whole units, so that there is something to compare with soon.

use super::simplex::{Ended, Question, Simplex};

/// How near to a whole number counts as whole.
const WHOLE: f64 = 1e-7;
/// By how much, as a share of the cost, a branch must be able to better what is found.
const WORTHWHILE: f64 = 1e-9;

/// Values of the least cost, and whether it is known to be the least.
pub(super) struct Least {
    pub values: Vec<f64>,
    pub proven: bool,
}

/// Looks at no more than `node_limit` branches; the error says why there are no values.
pub(super) fn least(question: &Question, whole: &[bool], node_limit: u64) -> Result<Least, Ended> {
    let mut root = Simplex::new(question);
    match root.solve() {
        Ended::Least => {}
        other => return Err(other),
    }
    let mut search = Search {
        whole,
        nodes_left: node_limit.saturating_sub(1),
        open: vec![root],
        best: None,
        cut_short: false,
    };
    while let Some(node) = search.cheapest() {
        search.follow(node);
    }
    match search.best {
        Some((_, values)) => Ok(Least {
            values,
            proven: !search.cut_short,
        }),
        None if search.cut_short => Err(Ended::GivenUp),
        None => Err(Ended::Infeasible),
    }
}

struct Search<'question> {
    whole: &'question [bool],
    nodes_left: u64,
    /// Branches that are solved and not yet looked into.
    open: Vec<Simplex<'question>>,
    best: Option<(f64, Vec<f64>)>,
    /// True once a branch was left that might have been better.
    cut_short: bool,
}

impl<'question> Search<'question> {
    /// Takes the open branch of the least cost.
    fn cheapest(&mut self) -> Option<Simplex<'question>> {
        let costs = self.open.iter().map(Simplex::cost).enumerate();
        let place = costs.min_by(|one, other| one.1.total_cmp(&other.1))?.0;
        Some(self.open.swap_remove(place))
    }

    /// Goes from a branch down to whole units or to where nothing better can come.
    fn follow(&mut self, mut node: Simplex<'question>) {
        while self.may_be_better(&node) {
            let Some((variable, value)) = self.divided(&node) else {
                self.best = Some((node.cost(), node.values().to_vec()));
                return;
            };
            if self.nodes_left < 2 {
                self.cut_short = true;
                return;
            }
            self.nodes_left -= 2;
            let fewer = self.branch(&node, variable, f64::NEG_INFINITY, value.floor());
            let more = self.branch(&node, variable, value.ceil(), f64::INFINITY);
            node = match (fewer, more) {
                (Some(fewer), Some(more)) => {
                    let (next, later) = if fewer.cost() <= more.cost() {
                        (fewer, more)
                    } else {
                        (more, fewer)
                    };
                    self.open.push(later);
                    next
                }
                (Some(only), None) | (None, Some(only)) => only,
                (None, None) => return,
            };
        }
    }

    fn branch(
        &mut self,
        node: &Simplex<'question>,
        variable: usize,
        low: f64,
        high: f64,
    ) -> Option<Simplex<'question>> {
        let mut branch = node.clone();
        branch.narrow(variable, low, high);
        match branch.solve() {
            Ended::Least => Some(branch),
            Ended::Infeasible => None,
            Ended::GivenUp => {
                self.cut_short = true;
                None
            }
        }
    }

    fn may_be_better(&self, node: &Simplex<'_>) -> bool {
        self.best
            .as_ref()
            .is_none_or(|(best, _)| node.cost() < best - WORTHWHILE * best.abs().max(1.0))
    }

    /// The variable furthest from the whole number that it must be, and its value.
    fn divided(&self, node: &Simplex<'_>) -> Option<(usize, f64)> {
        let mut furthest: Option<(f64, usize, f64)> = None;
        for (variable, (value, whole)) in node.values().iter().zip(self.whole).enumerate() {
            let off = (value - value.round()).abs();
            if *whole && off > WHOLE && furthest.is_none_or(|(most, ..)| off > most) {
                furthest = Some((off, variable, *value));
            }
        }
        furthest.map(|(_, variable, value)| (variable, value))
    }
}
