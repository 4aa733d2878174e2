"""Solves every recorded request again from a second reading of it, and compares.

Shares no line with model.py: other arithmetic (doubles in arrays), other front end (SciPy), the rows
set up anew. It guards what the solvers in model.py have in common, namely the rows.
"""

import json
from pathlib import Path

import numpy
from scipy.optimize import Bounds, LinearConstraint, milp

FILES = ["answers", "continuous", "continuous_air", "continuous_some", "whole_steps", "enumerated"]
# Relative; the solver's own tolerance on rows is 1e-7.
AGREE = 1e-7


def column(customs, key, scale):
    return numpy.array([custom[key] for custom in customs], dtype=float) / scale


def amount(item, key, otherwise):
    return float(item[key].split()[0]) if key in item else otherwise


def least_mass(request):
    """The least added mass [kg], or None when the target cannot be met; and all rows at `added`."""
    reach, target = request["reach"], request["target"]
    have_kg = numpy.array([amount(part, "amount", None) for part in request["have"]])
    customs = [item["custom"] for item in request["have"] + reach]
    wet = numpy.append(column(customs, "moisture_pct", 100), 1.0)
    dry = (1 - wet)[:-1]
    carbon = numpy.append(dry * column(customs, "carbon_pct_dry", 100), 0)
    nitrogen = numpy.append(dry * column(customs, "nitrogen_pct_dry", 100), 0)
    cn_low, cn_high = target["cn_ratio"]
    wet_low, wet_high = (pct / 100 for pct in target["moisture_pct"])
    lines = [carbon - cn_low * nitrogen, cn_high * nitrogen - carbon, wet - wet_low, wet_high - wet]
    if "free_air_space_pct" in target and all("bulk_density_kg_m3" in custom for custom in customs):
        ash = column(customs, "ash_pct_dry", 100)
        litres = numpy.append(1000 / column(customs, "bulk_density_kg_m3", 1), 0)
        filled = 1000 * (wet / 1000 + numpy.append(dry * ((1 - ash) / 1600 + ash / 2500), 0))
        air_low, air_high = (pct / 100 for pct in target["free_air_space_pct"])
        lines += [(1 - air_low) * litres - filled, filled - (1 - air_high) * litres]
    table = numpy.array(lines)
    at_hand, per_kg = table[:, : len(have_kg)] @ have_kg, table[:, len(have_kg) :]
    step = numpy.array([amount(item, "step", 1.0) for item in reach] + [1.0])
    most = numpy.array([amount(item, "max", numpy.inf) for item in reach] + [numpy.inf if request["water"] else 0.0])
    found = milp(
        step,
        constraints=LinearConstraint(per_kg * step, -at_hand, numpy.inf),
        # A hair above, so that 0.3 kg in steps of 0.1 kg counts three.
        bounds=Bounds(0, most / step + 1e-12),
        integrality=numpy.array([int("step" in item) for item in reach] + [0]),
        options={"mip_rel_gap": 0},
    )
    assert found.status in (0, 2), found.message
    return (found.fun if found.status == 0 else None), lambda added: at_hand + per_kg @ added


def main():
    for name in FILES:
        cases = json.loads((Path(__file__).parent / f"{name}.json").read_text())["cases"]
        for case in cases:
            least, rows = least_mass(case["request"])
            assert (least is not None) == (case["status"] == "met"), case["id"]
            if least is None:
                continue
            recorded = case["least_added_mass_kg"]
            assert abs(least - recorded) <= AGREE * max(1.0, recorded), (case["id"], least, recorded)
            added = numpy.array(case["add_kg"] + [case["water_kg"]])
            assert abs(added.sum() - recorded) <= 1e-12 * max(1.0, recorded), case["id"]
            # Recorded amounts are rounded to 15 digits.
            assert rows(added).min() >= -1e-11, (case["id"], rows(added))
        print(f"{name}.json: {len(cases)} cases agree")


if __name__ == "__main__":
    main()
