"""What is done to a heap, and its path through time with SUNDIALS (CVODE, BDF, dense Jacobian by differences)."""

import time

import numpy as np
from sksundae.cvode import CVODE

import model
from model import K, LEDGERS, Q

CARRIED = ("ash_kg", "bases_mol", "dry_fed_kg", "volume_fed_m3", "dry_over_grain_kg_m")
POOLS = ("rapid", "moderate", "slow", "humus", "mesophiles", "thermophiles", "acids")


class Pile:
    """A heap of cells as sums: everything but density, which is kept as volume."""

    def __init__(self, case, parameters, tabled=True):
        self.p, self.case, self.tabled = parameters, case, tabled
        self.holder = model.Holder(**case["enclosure"])
        self.weather = model.Weather(case["weather"]["hours"], case["weather"]["ground_offset_k"])
        self.most_layers, self.rings = case["grid"]
        self.lumped = case["grid"] == [1, 1]
        self.books = np.zeros(len(LEDGERS))
        self.evaporated_by_turns = 0.0

    def air(self, day):
        return self.weather.at(day)["air_temperature_c"] + self.p["air_offset_k"]

    def fill(self, charge, temperature_c, day):
        """The first filling; nothing is added later in these cases."""
        p = self.p
        y = np.zeros(K)
        y[:7] = [charge[name + "_kg"] for name in POOLS]
        y[7:11] = charge["nitrogen_kg"]
        for name in ("ammonium", "nitrate", "water", "potassium"):
            y[Q[name]] = charge[name + "_kg"]
        dry = y[:7].sum() + 17 / 14 * (y[7:11].sum() + p["nitrogen_in_cells"] * y[4:6].sum()) + charge["ash_kg"]
        warm = self.air(day) if temperature_c is None else temperature_c
        y[Q["enthalpy"]] = model.enthalpy(warm, dry, y[Q["water"]], p)
        capacity = self.holder.capacity
        nominal = max(capacity, charge["volume_m3"]) / self.most_layers
        self.layers = min(max(int(np.ceil(charge["volume_m3"] / (0.4 * nominal))), 1), self.most_layers)
        self.spread = min(np.cbrt(charge["volume_m3"] / capacity), 1) if self.holder.shape == "Cone" else 1.0
        share = np.diff((np.arange(self.rings + 1) / self.rings) ** 2)
        share = np.tile(share, self.layers) / self.layers
        self.y = y[:, None] * share
        self.volume = charge["volume_m3"] * share
        values = (charge["ash_kg"], charge["bases_mol"], dry, charge["volume_m3"], charge["dry_over_grain_kg_m"])
        self.kept = {name: value * share for name, value in zip(CARRIED, values)}

    def dry(self):
        y = self.y
        bound = y[7:11].sum(0) + self.p["nitrogen_in_cells"] * (y[4] + y[5])
        return y[:7].sum(0) + 17 / 14 * bound + self.kept["ash_kg"]

    def turn(self, thoroughness, day):
        dry = self.dry()
        share = dry / dry.sum()

        def mixed(values):
            return values + thoroughness * (values.sum(-1, keepdims=True) * share - values)

        self.y, self.volume = mixed(self.y), mixed(self.volume)
        self.kept = {name: mixed(values) for name, values in self.kept.items()}
        # Heat lost, half of it as vapour.
        p, y = self.p, self.y
        dry, water, air = self.dry(), y[Q["water"]], self.air(day)
        warm = model.temperature(y[Q["enthalpy"]], dry, water, p)
        lost = thoroughness * p["turning_heat_loss"] * np.maximum(warm - air, 0)
        lost *= dry * p["solids_heat_mj_kg_k"] + water * model.WATER_HEAT
        vapour = np.minimum(lost / 2 / (2.501 - 0.00236 * warm), 0.1 * water)
        y[Q["enthalpy"]] -= lost + vapour * model.WATER_HEAT * warm
        y[Q["water"]] -= vapour
        self.evaporated_by_turns += vapour.sum()
        as_fed = self.dry() * self.kept["volume_fed_m3"] / (0.8 * self.kept["dry_fed_kg"])
        loose = np.minimum(self.volume / (1 - thoroughness * p["loosening"]), as_fed)
        self.volume = np.maximum(self.volume, loose)

    def pour(self, litres, everywhere, day):
        top = slice(0 if everywhere else -self.rings, None)
        share = self.dry()[top] / self.dry()[top].sum()
        self.y[Q["water"], top] += litres * share
        self.y[Q["enthalpy"], top] += litres * share * model.WATER_HEAT * max(self.air(day), 0)

    def act(self, events, day):
        turned = any(event["action"] == "turn" for event in events)
        for event in events:
            if event["action"] == "feed":
                self.fill(event["charge"], event["temperature_c"], day)
            elif event["action"] == "turn":
                self.turn(event["thoroughness"], day)
            elif event["action"] == "water":
                self.pour(event["litres"], turned, day)

    def heap(self):
        kept = self.kept
        grain = self.p["grain_factor"] * kept["dry_fed_kg"] / kept["dry_over_grain_kg_m"]
        carried = {
            "ash_kg": kept["ash_kg"], "bases_mol": kept["bases_mol"], "dry_fed_kg": kept["dry_fed_kg"],
            "density_fed_kg_m3": kept["dry_fed_kg"] / kept["volume_fed_m3"], "grain_m2": grain**2,
        }
        return model.Heap(
            self.p, self.holder, self.weather, self.layers, self.rings, carried, self.spread, self.lumped, self.tabled
        )

    def state(self):
        y = self.y.copy()
        y[Q["density"]] = self.dry() / self.volume
        return y

    def take(self, y):
        self.y = y.copy()
        dry = self.dry()
        self.volume = np.maximum(dry / y[Q["density"]], (dry / model.SOLIDS + y[Q["water"]] / 1000) / 0.98)


def seen(heap, day, y, books):
    """What a keeper with many probes would see."""
    s = heap.look(day, y[None])
    s = {name: value[0] if isinstance(value, np.ndarray) else value for name, value in s.items()}
    wet = s["dry"] + s["water"]
    carbon = (model.CARBON[:, None] * y[:7]).sum()
    nitrogen = (s["bound"] + s["ammonium"] + s["nitrate"]).sum()
    volatile = (s["dry"] - heap.carried["ash_kg"]).sum()
    use = heap.oxygen_use({k: v[None] if isinstance(v, np.ndarray) else v for k, v in s.items()}, s["oxygen_y"][None])[0]
    core = s["temp"].reshape(heap.layers, heap.rings)
    edge = slice(heap.rings - 1, None, heap.rings)
    row = {
        "day": day, "mean_c": (wet * s["temp"]).sum() / wet.sum(), "edge_c": (wet * s["temp"])[edge].sum() / wet[edge].sum(),
        "core_c": core[:, 0].max(), "lowest_oxygen_pct": 100 * s["oxygen_y"].min(),
        "moisture": s["water"].sum() / wet.sum(), "ph": -(wet * np.log10(s["h"])).sum() / wet.sum(),
        "volume_m3": s["volume"].sum(), "dry_kg": s["dry"].sum(), "water_kg": s["water"].sum(),
        "carbon_kg": carbon, "nitrogen_kg": nitrogen, "ammonium_kg": s["ammonium"].sum(), "nitrate_kg": s["nitrate"].sum(),
        "rapid_kg": s["rapid"].sum(), "uptake_mg_g_h": use.sum() / volatile * 1000 / 24,
        "cells_c": s["temp"].tolist(),
    }
    if heap.lumped:
        row.pop("core_c")
    return row


def path(case, p, rtol=1e-9, tabled=True, method="sundials", keep_states=()):
    """Rows at the days of the case, the end's books, states to keep, and what it cost."""
    pile = Pile(case, p, tabled)
    events = case["events"]
    stops = sorted({event["day"] for event in events} | {case["days"]})
    rows, states = [], []
    cost = {"slopes": 0, "jacobians": 0, "seconds": 0.0}
    begin = time.time()
    for start, end in zip(stops, stops[1:]):
        pile.act([event for event in events if event["day"] == start], start)
        heap = pile.heap()
        n, y0 = heap.n, pile.state()
        size = K * n
        # Errors are held to rtol of what is there, and to as much of a thousandth of what was put in.
        floor = np.ones((K, n)) * heap.carried["dry_fed_kg"] * 1e-3
        floor[Q["enthalpy"]] = heap.carried["dry_fed_kg"] * 5e-3
        floor[Q["density"]] = 1.0
        ledger_floor = np.full(len(LEDGERS), heap.carried["dry_fed_kg"].sum() * 1e-2)
        absolute = rtol * np.concatenate([floor.ravel(), ledger_floor])
        bump = 1e-6 * floor.ravel()

        def slopes(t, y, out):
            cost["slopes"] += 1
            d, b = heap.slopes(t, y[:size].reshape(1, K, n))
            out[:size], out[size:] = d.ravel(), b[0]

        def jacobian(t, y, slope, matrix):
            cost["jacobians"] += 1
            step = np.sqrt(2e-16) * np.abs(y[:size]) + bump
            many = y[:size] + np.diag(step)
            d, b = heap.slopes(t, many.reshape(size, K, n))
            matrix[:size, :size] = ((d.reshape(size, size) - slope[:size]) / step[:, None]).T
            matrix[size:, :size] = ((b - slope[size:]) / step[:, None]).T
            matrix[:, size:] = 0

        inner = [start, *pile.weather.breaks(start, end), end]
        full = np.concatenate([y0.ravel(), pile.books])
        for one, other in zip(inner, inner[1:]):
            heap.rain_mm_per_d = pile.weather.rain_mm_per_d(one)
            wanted = sorted({day for day in (*case["rows"], *keep_states) if one <= day < other or day == other == case["days"]})
            times = sorted({one, other, *wanted})
            solver = CVODE(
                slopes, rtol=rtol, atol=absolute, jacfn=jacobian, linsolver="dense", max_num_steps=2_000_000, max_step=0.25
            )
            got = solver.solve(np.array(times), full)
            if not got.success:
                raise RuntimeError(f"{case['name']}: {got.message} between {one} and {other}")
            for day in wanted:
                y = got.y[times.index(day)]
                if day in case["rows"]:
                    rows.append(seen(heap, day, y[:size].reshape(K, n), y[size:]))
                if day in keep_states:
                    states.append((heap, day, y.copy(), heap.rain_mm_per_d))
            full = got.y[-1]
        pile.books = full[size:].copy()
        pile.take(full[:size].reshape(K, n))
    books = dict(zip(LEDGERS, pile.books))
    books["vapour"] += pile.evaporated_by_turns
    cost["seconds"] = time.time() - begin
    return rows, books, states, cost
