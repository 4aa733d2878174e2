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
#[derive(Clone, Debug, Default)]
pub(crate) struct Gas {
    pressures: SymmetricBanded,
    pressure: Vec<f64>,
    transport: Banded,
    newton: Banded,
    supply: Vec<f64>,
    residual: Vec<f64>,
    slope: Vec<f64>,
    /// Oxygen of each cell, mole fraction; the guess for the next time.
    pub oxygen: Vec<f64>,
}

const MOST_ROUNDS: usize = 200;
/// Newton's error is squared each time: what is left is below 1e-9.
const SETTLED: f64 = 3e-6;
/// Slope of the demand that holds a cell at zero.
const HELD: f64 = 1e30;
/// A leak that keeps closed vessels solvable [kg/(d Pa)].
const LEAK: f64 = 1e-9;

impl Gas {
    pub(crate) fn new(cells: usize, rings: usize) -> Self {
        let band = rings.min(cells.saturating_sub(1));
        Self {
            pressures: SymmetricBanded::new(cells, band),
            pressure: vec![0.0; cells],
            transport: Banded::new(cells, band),
            newton: Banded::new(cells, band),
            supply: vec![0.0; cells],
            residual: vec![0.0; cells],
            slope: vec![0.0; cells],
            oxygen: vec![0.15; cells],
        }
    }

    /// Flows of all links and outlets by natural draught.
    pub(crate) fn find_draught(&mut self, links: &mut [Link], outlets: &mut [Outlet]) {
        self.pressures.clear();
        self.pressure.fill(0.0);
        for link in links.iter() {
            self.pressures.connect(link.low, link.high, link.draught);
            let drive = link.draught * link.lift_pa;
            self.pressure[link.low] -= drive;
            self.pressure[link.high] += drive;
        }
        for outlet in outlets.iter() {
            self.pressures.ground(outlet.cell, outlet.draught + LEAK);
            self.pressure[outlet.cell] -= outlet.draught * outlet.lift_pa;
        }
        if !self.pressures.factor() {
            // Clogged everywhere: still air.
            links.iter_mut().for_each(|link| link.flow = 0.0);
            outlets.iter_mut().for_each(|outlet| outlet.flow = 0.0);
            return;
        }
        self.pressures.solve(&mut self.pressure);
        for link in links {
            link.flow =
                link.draught * (self.pressure[link.low] - self.pressure[link.high] + link.lift_pa);
        }
        for outlet in outlets {
            outlet.flow = (outlet.draught + LEAK) * self.pressure[outlet.cell]
                + outlet.draught * outlet.lift_pa;
        }
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
        self.transport.clear();
        self.supply.fill(0.0);
        for link in links {
            let up = link.diffusion + link.flow.max(0.0);
            let down = link.diffusion + (-link.flow).max(0.0);
            self.transport.add(link.low, link.low, up);
            self.transport.add(link.high, link.low, -up);
            self.transport.add(link.high, link.high, down);
            self.transport.add(link.low, link.high, -down);
        }
        for outlet in outlets {
            let out = outlet.exchange + outlet.flow.max(0.0);
            let inward = outlet.exchange + (-outlet.flow).max(0.0);
            self.transport.add(outlet.cell, outlet.cell, out + LEAK);
            self.supply[outlet.cell] += (inward + LEAK) * OUTSIDE_OXYGEN;
        }
        for _ in 0..MOST_ROUNDS {
            self.transport.multiply(&self.oxygen, &mut self.residual);
            for (cell, potential) in potentials.iter().enumerate() {
                let (taken, slope) = potential.oxygen_use(self.oxygen[cell], parameters);
                self.residual[cell] =
                    self.supply[cell] - self.residual[cell] - taken * (1.0 / OXYGEN_KG_PER_KG_AIR);
                self.slope[cell] = slope * (1.0 / OXYGEN_KG_PER_KG_AIR);
                // Without supply it stays at zero, and its neighbours must know.
                if self.oxygen[cell] <= 0.0 && self.residual[cell] < 0.0 {
                    self.residual[cell] = 0.0;
                    self.slope[cell] = HELD;
                }
            }
            self.newton.copy_from(&self.transport);
            self.newton.add_diagonal(&self.slope);
            if !self.newton.factor() {
                return;
            }
            self.newton.solve(&mut self.residual);
            let mut moved = 0.0_f64;
            let steps = self.residual.iter().zip(&self.slope);
            for (oxygen, (step, slope)) in self.oxygen.iter_mut().zip(steps) {
                // A held cell stays at zero to the last bit: a trace would set it free again, to
                // and fro without end.
                let next = if *slope >= HELD {
                    0.0
                } else {
                    (*oxygen + step).clamp(0.0, OUTSIDE_OXYGEN)
                };
                moved = moved.max((next - *oxygen).abs());
                *oxygen = next;
            }
            if moved < SETTLED {
                break;
            }
        }
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
