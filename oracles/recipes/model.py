"""Which least amounts bring a mixture into its target? The recipe problem, solved in three ways.

A request is read into rows `coefficients . x + constant >= 0` over x = (what is added of each
material [kg], water [kg]), all in exact rational arithmetic. Three solvers then share nothing but
the rows: HiGHS (floating point, linear and whole-step), a dual simplex in fractions (exact, linear)
and plain enumeration (exact, whole steps).

Particle densities 1600 and 2500 kg/m3 of organic matter and ash, and the free air space equation:
Richard, Veeken, de Wilde & Hamelers 2004, Biotechnology Progress (from memory of the paper).
"""

import itertools
import math
from dataclasses import dataclass
from fractions import Fraction

import highspy

WATER_KG_M3 = 1000
ORGANIC_MATTER_KG_M3 = 1600
ASH_KG_M3 = 2500


def exact(value):
    """The decimal as it is written in the request, not its nearest double."""
    return Fraction(str(value))


def kilograms(text):
    """'12.5 kg' as a fraction [kg]."""
    number, unit = text.split()
    assert unit == "kg", text
    return Fraction(number)


@dataclass
class Row:
    """coefficients . x + constant >= 0."""

    coefficients: list
    constant: Fraction


@dataclass
class Problem:
    """The rows of a request; the last variable is water when there is any."""

    rows: list
    steps_kg: list  # of each variable; None when any amount will do
    has_water: bool
    has_air_rows: bool


def per_kilogram(custom, with_air):
    """Carbon, nitrogen, water, mass, volume [m3] and water + particle volume [m3] in 1 kg."""
    moisture = exact(custom["moisture_pct"]) / 100
    dry = 1 - moisture
    volume = filled = Fraction(0)
    if with_air:
        ash = dry * exact(custom["ash_pct_dry"]) / 100
        volume = 1 / exact(custom["bulk_density_kg_m3"])
        filled = moisture / WATER_KG_M3 + (dry - ash) / ORGANIC_MATTER_KG_M3 + ash / ASH_KG_M3
    return (
        dry * exact(custom["carbon_pct_dry"]) / 100,
        dry * exact(custom["nitrogen_pct_dry"]) / 100,
        moisture,
        Fraction(1),
        volume,
        filled,
    )


def pose(request, shift=Fraction(0)):
    """The rows of a request.

    `shift` moves every bound by that share of itself: above 0 narrows the target, below 0 widens it.
    A largest amount counts in whole steps where there is a step, and is then not moved.
    """
    target = request["target"]
    customs = [part["custom"] for part in request["have"] + request["reach"]]
    with_air = "free_air_space_pct" in target and all("bulk_density_kg_m3" in c for c in customs)

    columns = [per_kilogram(item["custom"], with_air) for item in request["reach"]]
    if request.get("water", False):
        columns.append((0, 0, Fraction(1), Fraction(1), 0, Fraction(1, WATER_KG_M3)))
    fixed = [Fraction(0)] * 6
    for part in request["have"]:
        mass = kilograms(part["amount"])
        fixed = [sum_ + mass * share for sum_, share in zip(fixed, per_kilogram(part["custom"], with_air))]

    rows = []

    def hold(expression):
        rows.append(Row([expression(*column) for column in columns], expression(*fixed)))

    def bounds(name, scale):
        low, high = target[name]
        return exact(low) / scale * (1 + shift), exact(high) / scale * (1 - shift)

    low, high = bounds("cn_ratio", 1)
    hold(lambda c, n, w, t, v, f: c - low * n)
    hold(lambda c, n, w, t, v, f: high * n - c)
    wet_low, wet_high = bounds("moisture_pct", 100)
    hold(lambda c, n, w, t, v, f: w - wet_low * t)
    hold(lambda c, n, w, t, v, f: wet_high * t - w)
    if with_air:  # in litres, so that all rows are of one size
        air_low, air_high = bounds("free_air_space_pct", 100)
        hold(lambda c, n, w, t, v, f: 1000 * ((1 - air_low) * v - f))
        hold(lambda c, n, w, t, v, f: 1000 * (f - (1 - air_high) * v))

    steps = [kilograms(item["step"]) if "step" in item else None for item in request["reach"]]
    for index, item in enumerate(request["reach"]):
        if "max" in item:
            most = kilograms(item["max"])
            if steps[index] is None:
                most *= 1 - shift
            else:
                most = most // steps[index] * steps[index]
            rows.append(Row([Fraction(-1 if i == index else 0) for i in range(len(columns))], most))
    has_water = request.get("water", False)
    return Problem(rows, steps + [None] * has_water, has_water, with_air)


def holds(problem, amounts):
    """True when every row holds exactly and every amount is a whole number of its steps."""
    whole = all(step is None or (x / step).denominator == 1 for x, step in zip(amounts, problem.steps_kg))
    return whole and all(x >= 0 for x in amounts) and all(slack(row, amounts) >= 0 for row in problem.rows)


def slack(row, amounts):
    return row.constant + sum(a * x for a, x in zip(row.coefficients, amounts))


# ---- HiGHS -------------------------------------------------------------------------------------


def by_highs(problem, time_limit_s=60.0):
    """('met', amounts as doubles), ('not_met', None) or ('unproven', None)."""
    solver = highspy.Highs()
    for option, value in {
        "output_flag": False,
        "threads": 1,
        "random_seed": 0,
        "time_limit": time_limit_s,
        "primal_feasibility_tolerance": 1e-10,
        "dual_feasibility_tolerance": 1e-10,
        "mip_feasibility_tolerance": 1e-9,
        "mip_rel_gap": 0.0,
        "mip_abs_gap": 0.0,
    }.items():
        assert solver.setOptionValue(option, value) == highspy.HighsStatus.kOk, option
    # A stepped amount is a whole number of steps times the step.
    size = [float(step) if step else 1.0 for step in problem.steps_kg]
    for index, step in enumerate(problem.steps_kg):
        solver.addVar(0.0, highspy.kHighsInf)
        solver.changeColCost(index, size[index])
        if step:
            solver.changeColIntegrality(index, highspy.HighsVarType.kInteger)
    for row in problem.rows:
        used = [i for i, a in enumerate(row.coefficients) if a]
        values = [float(row.coefficients[i]) * size[i] for i in used]
        solver.addRow(-float(row.constant), highspy.kHighsInf, len(used), used, values)
    solver.run()
    status = solver.getModelStatus()
    if status == highspy.HighsModelStatus.kOptimal:
        values = solver.getSolution().col_value
        return "met", [
            float(Fraction(round(x)) * step) if step else x for x, step in zip(values, problem.steps_kg)
        ]
    # Every cost is positive, so that the problem cannot be unbounded.
    if status in (highspy.HighsModelStatus.kInfeasible, highspy.HighsModelStatus.kUnboundedOrInfeasible):
        return "not_met", None
    return "unproven", None


# ---- exact dual simplex ------------------------------------------------------------------------


def by_exact_simplex(problem):
    """The least added mass without regard to steps, in fractions: amounts, or None when there are none.

    All costs are 1, so adding nothing is dual feasible from the start, and a row that cannot be
    raised proves that no answer exists. Smallest-index rules, so that it ends.
    """
    count = len(problem.steps_kg)
    free = list(range(count))  # at 0
    basic = [count + i for i in range(len(problem.rows))]
    table = [list(row.coefficients) for row in problem.rows]
    value = [row.constant for row in problem.rows]
    cost = [Fraction(1)] * count
    while True:
        short = [i for i, v in enumerate(value) if v < 0]
        if not short:
            break
        leave = min(short, key=lambda i: basic[i])
        able = [j for j in range(count) if table[leave][j] > 0]
        if not able:
            return None
        enter = min(able, key=lambda j: (cost[j] / table[leave][j], free[j]))
        pivot = table[leave][enter]
        swapped = [-a / pivot for a in table[leave]]
        swapped[enter] = 1 / pivot
        swapped_value = -value[leave] / pivot

        def substituted(line):
            factor = line[enter]
            if not factor:
                return line
            return [factor * s if j == enter else a + factor * s for j, (a, s) in enumerate(zip(line, swapped))]

        for i in range(len(table)):
            if i != leave:
                value[i] += table[i][enter] * swapped_value
                table[i] = substituted(table[i])
        cost = substituted(cost)
        table[leave], value[leave] = swapped, swapped_value
        basic[leave], free[enter] = free[enter], basic[leave]
    assert all(c >= 0 for c in cost)
    amounts = [Fraction(0)] * count
    for i, variable in enumerate(basic):
        if variable < count:
            amounts[variable] = value[i]
    return amounts


def with_steps_kept(problem, amounts):
    """Exact amounts that keep the stepped ones of `amounts` and choose the others best; None when none fit."""
    kept = [Fraction(round(x / float(step))) * step if step else None for x, step in zip(amounts, problem.steps_kg)]
    open_ = [i for i, x in enumerate(kept) if x is None]
    rows = [
        Row(
            [row.coefficients[i] for i in open_],
            row.constant + sum(a * x for a, x in zip(row.coefficients, kept) if x is not None),
        )
        for row in problem.rows
    ]
    rest = by_exact_simplex(Problem(rows, [None] * len(open_), problem.has_water, problem.has_air_rows))
    if rest is None:
        return None
    for i, x in zip(open_, rest):
        kept[i] = x
    return kept


# ---- enumeration -------------------------------------------------------------------------------


def combination_count(request):
    """How many whole-step combinations there are; infinite when a largest amount or a step lacks."""
    if any("max" not in item or "step" not in item for item in request["reach"]):
        return math.inf
    return math.prod(kilograms(i["max"]) // kilograms(i["step"]) + 1 for i in request["reach"])


def by_enumeration(request, problem):
    """Tries every whole-step combination; water, which enters alone, from its interval.

    Returns the best amounts (or None) and how many combinations fit.
    """
    steps = [step for step in problem.steps_kg if step]
    choices = [
        range(int(kilograms(item["max"]) // step) + 1) for item, step in zip(request["reach"], steps)
    ]
    scaled = []  # whole numbers only: quicker, and still exact
    for row in problem.rows:
        numbers = [a * s for a, s in zip(row.coefficients, steps)] + [
            row.constant,
            row.coefficients[-1] if problem.has_water else Fraction(0),
        ]
        common = math.lcm(*(number.denominator for number in numbers))
        whole = [int(number * common) for number in numbers]
        scaled.append((whole[:-2], whole[-2], whole[-1]))
    best, best_mass, fitting = None, None, 0
    for counts in itertools.product(*choices):
        water_low, water_high = Fraction(0), None
        for coefficients, constant, water in scaled:
            rest = constant + sum(a * k for a, k in zip(coefficients, counts))
            if water == 0:
                if rest < 0:
                    break
            elif water > 0:
                if rest < 0:
                    water_low = max(water_low, Fraction(-rest, water))
            elif rest < 0:
                break
            else:
                limit = Fraction(rest, -water)
                water_high = limit if water_high is None else min(water_high, limit)
        else:
            if water_high is None or water_low <= water_high:
                fitting += 1
                mass = sum(k * s for k, s in zip(counts, steps)) + water_low
                if best_mass is None or mass < best_mass:
                    best = [k * s for k, s in zip(counts, steps)] + [water_low] * problem.has_water
                    best_mass = mass
    return best, fitting
