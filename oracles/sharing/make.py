"""Writes cases of sharing compost among beds and their independent answers (see README.md)."""

import json
import random
from pathlib import Path

import numpy
from scipy.optimize import linprog

HERE = Path(__file__).parent
CASES = 240
# How far an aim that is held may slip for the next, of its own size or of one.
HELD = 1e-8
# HiGHS' own tolerances, as small as it takes them.
TIGHT = {"primal_feasibility_tolerance": 1e-10, "dual_feasibility_tolerance": 1e-10}


def draw_plot(chance):
    """An invented bed in grams and millimetres; the figures describe no real one."""
    none = chance.random
    return {
        "area_m2": round(chance.uniform(0.5, 20), 2),
        "wanted_g_m2": [
            0 if none() < 0.08 else round(chance.uniform(2, 25), 3),
            0 if none() < 0.25 else round(chance.uniform(0.3, 3), 4),
            0 if none() < 0.15 else round(chance.uniform(1, 25), 3),
        ],
        "phosphorus_room_g_m2": 0 if none() < 0.2 else round(chance.uniform(0.3, 3), 4),
        "most_mm": chance.choice([0, 10, 10, round(chance.uniform(0.5, 50), 3)]),
    }


def draw(chance, number):
    plots = [draw_plot(chance) for _ in range(chance.randint(1, 9))]
    # Some beds are alike but for their area.
    for plot in list(plots):
        if chance.random() < 0.2:
            plots.append({**plot, "area_m2": round(chance.uniform(0.5, 20), 2)})
    room = sum(plot["area_m2"] * plot["most_mm"] for plot in plots)
    share = chance.choice([0, 0.02, 0.2, 0.5, 0.8, 1.0, 1.5]) * chance.uniform(0.5, 1)
    return {
        "id": f"sharing-{number}",
        "plots": plots,
        "volume_l": round(share * room, 2),
        "supplied_g_l": [round(chance.uniform(0.05, 1.5), 4), round(chance.uniform(0.1, 1), 4), round(chance.uniform(0.5, 6), 4)],
        "phosphorus_g_l": round(chance.uniform(0.4, 2.5), 4),
        "unit_g_m2": [12.5, 1.96, 14.5],
    }


class Beds:
    """The case as arrays: depths in mm, then unmet grams of three nutrients, then surplus phosphorus."""

    def __init__(self, case):
        plots = case["plots"]
        self.count = len(plots)
        self.area = numpy.array([plot["area_m2"] for plot in plots])
        self.wanted = numpy.array([plot["wanted_g_m2"] for plot in plots], dtype=float)
        self.room = numpy.array([plot["phosphorus_room_g_m2"] for plot in plots], dtype=float)
        self.most = numpy.array([plot["most_mm"] for plot in plots], dtype=float)
        self.volume = case["volume_l"]
        self.supplied = numpy.array(case["supplied_g_l"])
        self.phosphorus = case["phosphorus_g_l"]
        self.unit = numpy.array(case["unit_g_m2"])
        self.wanted_units = (self.wanted / self.unit).sum(axis=1)

    def size(self):
        return 5 * self.count + 1

    def base(self):
        """Rows `A x <= b` and bounds of every plan; the last variable is free for a level."""
        rows, rights = [], []
        whole = numpy.zeros(self.size())
        whole[: self.count] = self.area
        rows.append(whole)
        rights.append(self.volume)
        for bed in range(self.count):
            for nutrient in range(3):
                row = numpy.zeros(self.size())
                row[bed] = -self.supplied[nutrient]
                row[self.count * (1 + nutrient) + bed] = -1
                rows.append(row)
                rights.append(-self.wanted[bed, nutrient])
            row = numpy.zeros(self.size())
            row[bed] = self.phosphorus
            row[4 * self.count + bed] = -1
            rows.append(row)
            rights.append(self.room[bed])
        bounds = [(0, most) for most in self.most] + [(0, None)] * (4 * self.count) + [(None, None)]
        return rows, rights, bounds

    def unmet(self):
        cost = numpy.zeros(self.size())
        for nutrient in range(3):
            at = self.count * (1 + nutrient)
            cost[at : at + self.count] = self.area / self.unit[nutrient]
        return cost

    def surplus(self):
        cost = numpy.zeros(self.size())
        cost[4 * self.count : 5 * self.count] = self.area
        return cost

    def lacking(self, bed):
        row = numpy.zeros(self.size())
        for nutrient in range(3):
            row[self.count * (1 + nutrient) + bed] = 1 / self.unit[nutrient] / self.wanted_units[bed]
        return row


def least(cost, rows, rights, bounds):
    found = linprog(cost, A_ub=numpy.array(rows), b_ub=rights, bounds=bounds, method="highs", options=TIGHT)
    assert found.status == 0, found.message
    return found.fun, found.x


def most_met_greedily(beds):
    """Least unmet units without any programme: the litre that meets most goes first."""
    pieces = []
    for bed in range(beds.count):
        filled = beds.wanted[bed] / beds.supplied
        marks = sorted({0.0, beds.most[bed], *[mark for mark in filled if mark < beds.most[bed]]})
        for start, end in zip(marks, marks[1:]):
            gain = sum(beds.supplied[n] / beds.unit[n] for n in range(3) if filled[n] > start)
            pieces.append((gain, (end - start) * beds.area[bed]))
    left = beds.volume
    met = 0.0
    for gain, litres in sorted(pieces, reverse=True):
        taken = min(left, litres)
        met += gain * taken
        left -= taken
    return float((beds.area * beds.wanted_units).sum() - met)


def answer(case):
    beds = Beds(case)
    rows, rights, bounds = beds.base()
    unmet, _ = least(beds.unmet(), rows, rights, bounds)
    greedy = most_met_greedily(beds)
    assert abs(unmet - greedy) <= 1e-6 * max(1, unmet), (case["id"], unmet, greedy)
    rows.append(beds.unmet())
    rights.append(unmet + HELD * max(1, unmet))
    surplus, _ = least(beds.surplus(), rows, rights, bounds)
    rows.append(beds.surplus())
    rights.append(surplus + HELD * max(1, surplus))
    # The worst served first: bisection is not needed, a level is a variable.
    served = [1.0] * beds.count
    free = [bed for bed in range(beds.count) if beds.wanted_units[bed] > 0]
    while free:
        cost = numpy.zeros(beds.size())
        cost[-1] = 1
        more = [beds.lacking(bed) + numpy.append(numpy.zeros(beds.size() - 1), -1) for bed in free]
        level, _ = least(cost, rows + more, rights + [0.0] * len(free), bounds)
        kept_rows = rows + [beds.lacking(bed) for bed in free]
        kept_rights = rights + [level + HELD] * len(free)
        stuck = [bed for bed in free if least(beds.lacking(bed), kept_rows, kept_rights, bounds)[0] > level - 1e-7]
        for bed in stuck or free:
            served[bed] = 1 - level
            rows.append(beds.lacking(bed))
            rights.append(level + HELD)
        free = [bed for bed in free if bed not in (stuck or free)]
    used = numpy.zeros(beds.size())
    used[: beds.count] = -beds.area
    litres, _ = least(used, rows, rights, bounds)
    return {
        "unmet": float(f"{unmet:.12g}"),
        "surplus_phosphorus_g": float(f"{surplus:.12g}"),
        "served": [float(f"{value:.10g}") for value in served],
        "used_l": float(f"{-litres:.12g}"),
    }


def main():
    chance = random.Random(20261125)
    cases = []
    for number in range(CASES):
        case = draw(chance, number)
        cases.append({**case, "answer": answer(case)})
    lines = ",\n".join(json.dumps(case) for case in cases)
    (HERE / "answers.json").write_text('{"cases": [\n' + lines + "\n]}\n")
    print(len(cases), "cases")


if __name__ == "__main__":
    main()
