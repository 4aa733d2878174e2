"""Writes the heap's independent slopes and paths (see README.md).

    python make.py            everything
    python make.py slopes     the slopes only; paths are kept as they are
    python make.py paths [n]  one path or all; slopes are kept as they are
"""

import json
import sys
from pathlib import Path

import numpy as np
from scipy.optimize import least_squares

import cases
import model
import pile
from model import K, LEDGERS, Q

HERE = Path(__file__).parent
SEED = 20_001
PATH_TOLERANCE = 1e-9


def rounded(value, digits):
    if isinstance(value, dict):
        return {key: rounded(entry, digits) for key, entry in value.items()}
    if isinstance(value, (list, tuple, np.ndarray)):
        return [rounded(entry, digits) for entry in value]
    if isinstance(value, (float, np.floating)):
        return float(f"{value:.{digits}g}")
    return value


# ---- slopes ------------------------------------------------------------------------------------


def scipy_agrees(heap, day, y):
    """Oxygen by scipy's root finder on the cells that do not stand at zero, against the model's own."""
    s = heap.look(day, y[None])
    matrix, supply = heap.transport(s)
    mine = s["oxygen_y"][0]
    free = mine > 0

    def balance(x):
        full = np.zeros(heap.n)
        full[free] = x
        use = heap.oxygen_use(s, full[None])[0]
        return ((supply[0] - matrix[0] @ full - use / model.OXYGEN_PER_AIR) / np.diag(matrix[0]))[free]

    residual = np.abs(balance(mine[free])).max(initial=0)
    start = np.full(free.sum(), 0.1)
    found = least_squares(balance, start, bounds=(0, model.OUTSIDE), xtol=1e-15, ftol=1e-15, gtol=1e-15, max_nfev=2000)
    return residual, np.abs(found.x - mine[free]).max(initial=0)


def constant(weather, day):
    """The weather of one moment as a constant one."""
    now = weather.at(day)
    hour = [float(now[name]) for name in model.Weather.FIELDS]
    return {"hours": [hour], "ground_offset_k": float(now["ground_c"] - now["air_temperature_c"])}


def states():
    """(name, case, heap, day, y, rain) of every state at which slopes are compared."""
    found = []
    for case, day in zip(cases.CASES, (2.0, 12.0, 3.0, 1.0, 4.0, 11.3, 10.0, 15.0, 20.0)):
        short = case | {"days": day + 0.1, "rows": []}
        short["events"] = [event for event in case["events"] if event["day"] <= day]
        _, _, kept, _ = pile.path(short, cases.PARAMETERS, 1e-7, keep_states=(day,))
        heap, _, y, rain = kept[0]
        found.append((f"{case['name']}, day {day:g}", case, heap, day, y[: K * heap.n].reshape(K, heap.n), rain))
    # Other outlines, faces and weathers, and cells that differ much from each other.
    chance = np.random.default_rng(SEED)
    sunny = {"hours": [[24.0, 0.45, 0.0, 3.0, 700.0, 0.1]], "ground_offset_k": -6.0}
    rainy = {"hours": [[7.0, 0.95, 3.0, 5.0, 40.0, 1.0]], "ground_offset_k": 1.5}
    frosty = {"hours": [[-12.0, 0.85, 0.4, 0.2, 0.0, 0.0]], "ground_offset_k": 12.0}
    others = [
        ("free heap in rain", box_of(1.6, 1.0, shape="Cone", depth_m=2.1), rainy, (3, 3), mixed(0.5)),
        ("free heap under a sheet in sun", box_of(1.6, 1.1, shape="Cone", cover="Sheet"), sunny, (4, 2), mixed(0.6)),
        ("drum in frost", box_of(0.8, 0.9, shape="Drum", wall="Plastic"), frosty, (2, 2), mixed(0.3)),
        ("round bin of sheet metal under a roof", box_of(0.9, 1.0, shape="Cylinder", wall="Metal", cover="Roof"), sunny, (3, 2), mixed(0.5)),
        ("blown vessel of cells", box_of(0.6, 0.8, wall="Plastic", heat_loss_w_per_k=1.1, forced_air_kg_per_d=30.0), sunny, (3, 2), mixed(0.2)),
        ("measured bin", box_of(0.7, 0.8, wall="Wood", cover="Lid", heat_loss_w_per_k=2.0), frosty, (3, 2), mixed(0.3)),
        ("one cell in a free heap", box_of(1.4, 1.0, shape="Cone"), rainy, (1, 1), mixed(0.5)),
    ]
    for name, enclosure, weather, grid, charge in others:
        case = cases.case(name, enclosure, weather, charge, 1, grid, (), temperature_c=35.0)
        heap_pile = pile.Pile(case, cases.PARAMETERS)
        heap_pile.act(case["events"], 0.0)
        heap, y = heap_pile.heap(), heap_pile.state()
        n = heap.n
        y *= chance.uniform(0.4, 1.7, y.shape)
        y[Q["enthalpy"]] *= chance.uniform(-0.5, 1.6, n)
        y[Q["water"]] *= chance.uniform(0.2, 2.5, n)
        y[Q["ammonium"]] *= chance.uniform(0, 20, n)
        y[Q["acids"]] *= chance.uniform(0, 8, n)
        # Nothing, and a trifle less than nothing.
        y[Q["nitrate"], 0], y[Q["acids"], -1], y[Q["thermophiles"], 0] = 0.0, -1e-13, 0.0
        found.append((name, case, heap, 0.0, y, heap_pile.weather.rain_mm_per_d(0.0)))
    return found


def box_of(width, height, **more):
    return {"width_m": width, "depth_m": width, "height_m": height} | more


def mixed(share):
    return cases.mixture(share)


def record_slopes():
    recorded = []
    for name, case, heap, moment, y, rain in states():
        weather, day = constant(heap.weather, moment), 0.0
        heap.weather = model.Weather(weather["hours"], weather["ground_offset_k"])
        heap.rain_mm_per_d = rain
        residual, apart = scipy_agrees(heap, day, y)
        d, books = heap.slopes(day, y[None])
        s = heap.look(day, y[None])
        exact = model.Heap(
            heap.p, heap.holder, heap.weather, heap.layers, heap.rings, heap.carried, heap.spread, heap.lumped, tabled=False
        )
        exact.rain_mm_per_d = rain
        untabled = exact.slopes(day, y[None])[0][0]
        size = np.abs(d[0]).max(1, keepdims=True) + 1e-300
        print(
            f"{name:45} oxygen {100 * s['oxygen_y'].min():8.4f} %, residual {residual:.1e}, scipy {apart:.1e}, "
            f"table against exact forms {(np.abs(untabled - d[0]) / size).max():.1e}"
        )
        recorded.append(
            {
                "name": name, "enclosure": case["enclosure"], "weather": weather, "rain_mm_per_d": rain,
                "layers": heap.layers, "rings": heap.rings, "lumped": heap.lumped, "spread": float(heap.spread),
                "carried": {key: value.tolist() for key, value in heap.carried.items()},
                "y": y.ravel().tolist(), "slope": rounded(d[0].ravel(), 15), "books": rounded(books[0], 15),
                "oxygen": rounded(s["oxygen_y"][0], 12), "hydrogen": rounded(s["h"][0], 12),
            }
        )
    return recorded


# ---- paths -------------------------------------------------------------------------------------


def record_path(case):
    rows, books, _, cost = pile.path(case, cases.PARAMETERS, PATH_TOLERANCE)
    rougher, _, _, rough_cost = pile.path(case, cases.PARAMETERS, 1e-6)
    apart = max(abs(one["mean_c"] - other["mean_c"]) for one, other in zip(rows, rougher))
    exact = pile.path(case, cases.PARAMETERS, 1e-6, tabled=False)[0]
    untabled = max(abs(one["mean_c"] - other["mean_c"]) for one, other in zip(rougher, exact))
    loose = pile.path(case, cases.PARAMETERS, 1e-4)
    loose_apart = max(abs(one["mean_c"] - other["mean_c"]) for one, other in zip(rows, loose[0]))
    summary = {
        "apart_1e-6_k": apart, "apart_1e-4_k": loose_apart, "exact_forms_k": untabled,
        "cost": {"1e-9": cost, "1e-6": rough_cost, "1e-4": loose[3]},
    }
    print(case["name"], json.dumps(rounded(summary, 3)), flush=True)
    return case | {"expected": {"rows": rounded(rows, 10), "books": rounded(books, 10)}, "reference": rounded(summary, 3)}


def main():
    what = sys.argv[1] if len(sys.argv) > 1 else "all"
    if what in ("all", "slopes"):
        write("slopes.json", {"parameters": cases.PARAMETERS, "states": record_slopes()})
    if what in ("all", "paths"):
        chosen = [cases.CASES[int(place)] for place in sys.argv[2:]] or cases.CASES
        for case in chosen:
            name = case["name"].replace(" ", "_").replace(".", "_") + ".json"
            (HERE / "paths").mkdir(exist_ok=True)
            write(f"paths/{name}", {"parameters": cases.PARAMETERS, "path": record_path(case)})


def write(name, content):
    (HERE / name).write_text(json.dumps(content, separators=(",", ":")) + "\n")


if __name__ == "__main__":
    main()
