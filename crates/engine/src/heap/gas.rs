//! Where does the air go, and how much oxygen is left of it?
//!
//! Both are at rest against everything else within minutes, so they are solved for
//! rather than followed in time: the draught from the pressures of a network, the oxygen
//! from the balance of what diffusion and draught bring and what life takes.

use heapwright_numerics::{Banded, SymmetricBanded};

use super::air::{OUTSIDE_OXYGEN, OXYGEN_KG_PER_KG_AIR};
use super::biology::Potential;
use super::links::{Link, Outlet};
use super::parameters::Parameters;

/// The two networks with their memory.
///
/// Their matrices change little from one look to the next, so their factors are kept and
/// the solution is mended with them, until that takes too many rounds.
#[derive(Clone, Debug, Default)]
pub(crate) struct Gas {
    pressures: SymmetricBanded,
    pressures_factored: bool,
    pressure: Vec<f64>,
    demand: Banded,
    demand_factored: bool,
    held_when_factored: Vec<bool>,
    held: Vec<bool>,
    supply: Vec<f64>,
    residual: Vec<f64>,
    slope: Vec<f64>,
    /// Oxygen of each cell, mole fraction; the guess for the next time.
    pub oxygen: Vec<f64>,
}

const MOST_ROUNDS: usize = 200;
/// Newton's error is squared each time: what is left is below 1e-9.
const SETTLED: f64 = 3e-6;
/// What may be left when older factors are used, mole fraction: less than a ten-millionth of any rate.
const LEFT: f64 = 1e-9;
/// Both at the first look.
const AT_FIRST: (f64, f64) = (1e-8, 1e-12);
/// Rounds with older factors that cost about as much as new ones.
const PATIENCE: usize = 4;
/// Gain of a round below which older factors are given up.
const POOR_GAIN: f64 = 0.25;
/// Air that may be lost at a cell, of the largest flow.
const UNBALANCED: f64 = 1e-9;
/// A leak that keeps closed vessels solvable [kg/(d Pa)].
const LEAK: f64 = 1e-9;

impl Gas {
    pub(crate) fn new(cells: usize, rings: usize) -> Self {
        let band = rings.min(cells.saturating_sub(1));
        Self {
            pressures: SymmetricBanded::new(cells, band),
            pressures_factored: false,
            pressure: vec![0.0; cells],
            demand: Banded::new(cells, band),
            demand_factored: false,
            held_when_factored: vec![false; cells],
            held: vec![false; cells],
            supply: vec![0.0; cells],
            residual: vec![0.0; cells],
            slope: vec![0.0; cells],
            oxygen: vec![0.15; cells],
        }
    }

    /// Whether new factors cost no more than a round.
    fn is_small(&self) -> bool {
        self.pressure.len() <= 2
    }

    /// Flows of all links and outlets by natural draught.
    pub(crate) fn find_draught(&mut self, links: &mut [Link], outlets: &mut [Outlet]) {
        let mut before = f64::INFINITY;
        let mut just_factored = false;
        for round in 0..MOST_ROUNDS {
            let (unbalanced, largest) = self.flow(links, outlets);
            if unbalanced <= UNBALANCED * largest {
                return;
            }
            let poor = round >= PATIENCE || unbalanced > POOR_GAIN * before;
            if just_factored && poor {
                // As good as rounding lets it be.
                return;
            }
            if !self.pressures_factored || poor || (self.is_small() && !just_factored) {
                if !self.factor_pressures(links, outlets) {
                    // Clogged everywhere: still air.
                    self.pressure.fill(0.0);
                    links.iter_mut().for_each(|link| link.flow = 0.0);
                    outlets.iter_mut().for_each(|outlet| outlet.flow = 0.0);
                    return;
                }
                just_factored = true;
                before = f64::INFINITY;
            } else {
                before = unbalanced;
            }
            self.pressures.solve(&mut self.residual);
            for (pressure, step) in self.pressure.iter_mut().zip(&self.residual) {
                *pressure += step;
            }
        }
    }

    /// Flows by the pressures; what each cell gets too much goes to the residual. Gives the
    /// largest of those and the largest flow.
    fn flow(&mut self, links: &mut [Link], outlets: &mut [Outlet]) -> (f64, f64) {
        self.residual.fill(0.0);
        let mut largest = 0.0_f64;
        for link in links {
            link.flow =
                link.draught * (self.pressure[link.low] - self.pressure[link.high] + link.lift_pa);
            self.residual[link.low] -= link.flow;
            self.residual[link.high] += link.flow;
            largest = largest.max(link.flow.abs());
        }
        for outlet in outlets {
            outlet.flow = (outlet.draught + LEAK) * self.pressure[outlet.cell]
                + outlet.draught * outlet.lift_pa;
            self.residual[outlet.cell] -= outlet.flow;
            largest = largest.max(outlet.flow.abs());
        }
        let unbalanced = self
            .residual
            .iter()
            .fold(0.0_f64, |most, value| most.max(value.abs()));
        (unbalanced, largest)
    }

    fn factor_pressures(&mut self, links: &[Link], outlets: &[Outlet]) -> bool {
        self.pressures.clear();
        for link in links {
            self.pressures.connect(link.low, link.high, link.draught);
        }
        for outlet in outlets {
            self.pressures.ground(outlet.cell, outlet.draught + LEAK);
        }
        self.pressures_factored = self.pressures.factor();
        self.pressures_factored
    }

    /// Oxygen of all cells: what is brought is what is taken.
    ///
    /// The balance is an M-matrix plus a demand that rises ever more slowly, so Newton's
    /// steps come from below after the first and cannot overshoot; a cell whose supply
    /// does not even cover the trifle that dying cells take stands at zero.
    pub(crate) fn find_oxygen(
        &mut self,
        links: &[Link],
        outlets: &[Outlet],
        potentials: &[Potential],
        parameters: &Parameters,
    ) {
        self.supply.fill(0.0);
        for outlet in outlets {
            let inward = outlet.exchange + (-outlet.flow).max(0.0);
            self.supply[outlet.cell] += (inward + LEAK) * OUTSIDE_OXYGEN;
        }
        let (settled, left) = if self.demand_factored {
            (SETTLED, LEFT)
        } else {
            AT_FIRST
        };
        let (mut before, mut age) = (f64::INFINITY, 0);
        for round in 0..MOST_ROUNDS {
            self.balance(links, outlets, potentials, parameters);
            let renew = !self.demand_factored
                || self.is_small()
                || age >= PATIENCE
                || round > 5 * PATIENCE
                || self.held != self.held_when_factored;
            if renew {
                if !self.factor_demand(links, outlets) {
                    return;
                }
                age = 0;
            }
            self.demand.solve(&mut self.residual);
            let mut moved = 0.0_f64;
            for ((oxygen, held), step) in self.oxygen.iter_mut().zip(&self.held).zip(&self.residual)
            {
                // A held cell stays at zero to the last bit: a trace would set it free again,
                // to and fro without end.
                let next = if *held {
                    0.0
                } else {
                    (*oxygen + step).clamp(0.0, OUTSIDE_OXYGEN)
                };
                moved = moved.max((next - *oxygen).abs());
                *oxygen = next;
            }
            let gain = moved / before;
            if moved < left
                || (renew && moved < settled)
                || (before.is_finite() && gain < POOR_GAIN && moved * gain < left)
            {
                break;
            }
            age = if gain > POOR_GAIN && before.is_finite() {
                PATIENCE
            } else {
                age + 1
            };
            before = moved;
        }
    }

    /// What is brought less what is taken, how the latter grows, and who is held at zero.
    fn balance(
        &mut self,
        links: &[Link],
        outlets: &[Outlet],
        potentials: &[Potential],
        parameters: &Parameters,
    ) {
        self.residual.copy_from_slice(&self.supply);
        for link in links {
            let up = link.diffusion + link.flow.max(0.0);
            let down = link.diffusion + (-link.flow).max(0.0);
            let net = up * self.oxygen[link.low] - down * self.oxygen[link.high];
            self.residual[link.low] -= net;
            self.residual[link.high] += net;
        }
        for outlet in outlets {
            let out = outlet.exchange + outlet.flow.max(0.0) + LEAK;
            self.residual[outlet.cell] -= out * self.oxygen[outlet.cell];
        }
        for (cell, potential) in potentials.iter().enumerate() {
            let (taken, slope) = potential.oxygen_use(self.oxygen[cell], parameters);
            self.residual[cell] -= taken * (1.0 / OXYGEN_KG_PER_KG_AIR);
            self.slope[cell] = slope * (1.0 / OXYGEN_KG_PER_KG_AIR);
            // Without supply it stays at zero, and its neighbours must know.
            self.held[cell] = self.oxygen[cell] <= 0.0 && self.residual[cell] < 0.0;
            if self.held[cell] {
                self.residual[cell] = 0.0;
                self.slope[cell] = 1e30;
            }
        }
    }

    fn factor_demand(&mut self, links: &[Link], outlets: &[Outlet]) -> bool {
        self.demand.clear();
        for link in links {
            let up = link.diffusion + link.flow.max(0.0);
            let down = link.diffusion + (-link.flow).max(0.0);
            self.demand.add(link.low, link.low, up);
            self.demand.add(link.high, link.low, -up);
            self.demand.add(link.high, link.high, down);
            self.demand.add(link.low, link.high, -down);
        }
        for outlet in outlets {
            let out = outlet.exchange + outlet.flow.max(0.0);
            self.demand.add(outlet.cell, outlet.cell, out + LEAK);
        }
        self.demand.add_diagonal(&self.slope);
        self.held_when_factored.copy_from_slice(&self.held);
        self.demand_factored = self.demand.factor();
        self.demand_factored
    }
}

#[cfg(test)]
mod tests {
    use super::super::links::Side;
    use super::*;

    fn outlet(cell: usize, exchange: f64, draught: f64, lift_pa: f64, side: Side) -> Outlet {
        Outlet {
            cell,
            layer: 0,
            ring: 0,
            side,
            heat: 0.0,
            beyond_c: 0.0,
            sun: 0.0,
            exchange,
            skin: 0.0,
            skin_humidity: 0.0,
            draught,
            lift_pa,
            flow: 0.0,
        }
    }

    fn chain(cells: usize, diffusion: f64, draught: f64, lift_pa: f64) -> Vec<Link> {
        (0..cells - 1)
            .map(|low| Link {
                low,
                high: low + 1,
                upward: true,
                diffusion,
                draught,
                lift_pa,
                ..Link::default()
            })
            .collect()
    }

    #[allow(clippy::field_reassign_with_default)] // its other fields are its own affair
    fn demand(with_factor: f64) -> Potential {
        let mut potential = Potential::default();
        potential.with_factor = with_factor;
        potential
    }

    #[test]
    fn oxygen_of_a_lumped_heap_meets_its_closed_form() {
        // Supply G (0.2095 - y), demand D y / (K + y): D / G = 0.30 leaves y = 0.0299.
        let parameters = Parameters::default();
        let mut gas = Gas::new(1, 1);
        let outlets = [outlet(0, 10.0, 0.0, 0.0, Side::Top)];
        gas.find_oxygen(
            &[],
            &outlets,
            &[demand(3.0 * OXYGEN_KG_PER_KG_AIR)],
            &parameters,
        );
        let p: f64 = 0.02 - 0.2095 + 0.30;
        let exact = 0.5 * (-p + (p * p + 4.0 * 0.2095 * 0.02).sqrt());
        assert!((gas.oxygen[0] - exact).abs() < 1e-9);
        assert!((exact - 0.0299).abs() < 1e-4);
    }

    /// A slab of `cells` over one metre, open on the last face; demand per metre.
    fn slab(cells: usize, conductance: f64, taken: f64, half: f64) -> Vec<f64> {
        let parameters = Parameters {
            half_activity_oxygen: half,
            ..Parameters::default()
        };
        #[allow(clippy::cast_precision_loss)]
        let count = cells as f64;
        let links = chain(cells, conductance * count, 0.0, 0.0);
        let outlets = [outlet(
            cells - 1,
            2.0 * conductance * count,
            0.0,
            0.0,
            Side::Top,
        )];
        let each = demand(taken * OXYGEN_KG_PER_KG_AIR / count);
        let mut gas = Gas::new(cells, 1);
        gas.find_oxygen(&links, &outlets, &vec![each; cells], &parameters);
        gas.oxygen
    }

    #[test]
    #[allow(clippy::cast_precision_loss)]
    fn even_demand_uses_up_the_oxygen_at_the_depth_of_its_closed_form() {
        // D y'' = r: y = y0 (1 - x / depth)^2 with depth = sqrt(2 D y0 / r), order 2 in the cell.
        let (conductance, depth) = (1.0, 0.6_f64);
        let taken = 2.0 * conductance * OUTSIDE_OXYGEN / (depth * depth);
        let error = |cells: usize| {
            let found = slab(cells, conductance, taken, 1e-7);
            let mut worst = 0.0_f64;
            for (cell, y) in found.iter().enumerate() {
                let x = 1.0 - (cell as f64 + 0.5) / cells as f64;
                let exact =
                    OUTSIDE_OXYGEN * (1.0 - x / depth).max(0.0) * (1.0 - x / depth).max(0.0);
                worst = worst.max((y - exact).abs());
            }
            worst
        };
        let (coarse, fine) = (error(20), error(80));
        assert!(fine < 2e-4, "{fine}");
        assert!(libm::log2(coarse / fine) / 2.0 > 1.5, "{coarse} {fine}");
    }

    #[test]
    #[allow(clippy::cast_precision_loss)]
    fn demand_in_proportion_gives_the_hyperbolic_cosine() {
        // A large half-value makes the demand proportional: k = r / half.
        let (cells, half) = (200, 1e4);
        let k: f64 = 9.0;
        let found = slab(cells, 1.0, k * half, half);
        for (cell, y) in found.iter().enumerate() {
            let x = (cell as f64 + 0.5) / cells as f64;
            let exact = OUTSIDE_OXYGEN * libm::cosh(k.sqrt() * x) / libm::cosh(k.sqrt());
            assert!((y - exact).abs() < 2e-4, "{y} {exact}");
        }
    }

    #[test]
    fn a_warm_column_draws_as_darcy_says() {
        // Permeability 1e-9 m2, one metre of 60 degrees in air of 15: 0.12 mm/s.
        let (cells, gas_density, viscosity) = (10_usize, 0.98, 2.0e-5);
        let lift = 0.24 * 9.81 * 0.1;
        let draught = gas_density * 1e-9 / (viscosity * 0.1); // kg/(s Pa) over one m2
        let mut links = chain(cells, 0.0, draught, lift);
        let mut outlets = [
            outlet(0, 0.0, 2.0 * draught, -0.5 * lift, Side::Bottom),
            outlet(cells - 1, 0.0, 2.0 * draught, 0.5 * lift, Side::Top),
        ];
        Gas::new(cells, 1).find_draught(&mut links, &mut outlets);
        let speed = outlets[1].flow / gas_density;
        assert!((speed - 1.18e-4).abs() < 2e-6, "{speed} m/s");
        for link in &links {
            assert!((link.flow - outlets[1].flow).abs() < 1e-9);
        }
        assert!((outlets[0].flow + outlets[1].flow).abs() < 1e-12);
    }
}
