"""Writes the recipe problems and their independent answers (see README.md)."""

import json
import random
from decimal import Decimal, localcontext
from fractions import Fraction
from pathlib import Path

import model

HERE = Path(__file__).parent
LARGEST_FILE_BYTES = 400 * 1024
SHIFT = Fraction(1, 10**6)
# Widening and narrowing every bound by SHIFT may move the least mass by this share (or this many kg).
STEADY = 1e-4
STEPS_KG = ["0.1", "0.2", "0.25", "0.5", "1", "1.5", "2", "2.5", "5"]


def digits(value):
    """A fraction rounded to 15 significant digits, as a JSON number."""
    with localcontext() as context:
        context.prec = 15
        quotient = float(Decimal(value.numerator) / Decimal(value.denominator))
    return int(quotient) if quotient.is_integer() else quotient


def plain(value):
    """A drawn number without a needless '.0'."""
    return int(value) if float(value).is_integer() else value


# ---- drawn requests ----------------------------------------------------------------------------


def draw_custom(chance, name, with_density):
    """An invented material of one of four characters; the figures describe no real one."""
    character = chance.choices(["green", "brown", "wet", "any"], [4, 4, 1, 1])[0]
    moisture, nitrogen, air = {
        "green": ((60, 88), (1.5, 4.5), (0.12, 0.55)),
        "brown": ((5, 45), (0.1, 1.2), (0.45, 0.92)),
        "wet": ((85, 96), (1.0, 5.0), (0.04, 0.25)),
        "any": ((2, 92), (0.1, 6.0), (0.05, 0.92)),
    }[character]
    custom = {
        "name": name,
        "moisture_pct": plain(round(chance.uniform(*moisture), 1)),
        "carbon_pct_dry": plain(round(chance.uniform(36, 52), 1)),
        "nitrogen_pct_dry": plain(round(chance.uniform(*nitrogen), 2)),
    }
    if with_density:
        ash_pct = plain(round(chance.uniform(1, 30), 1))
        wet = custom["moisture_pct"] / 100
        ash = ash_pct / 100
        particle = wet / 1000 + (1 - wet) * ((1 - ash) / 1600 + ash / 2500)
        # From a drawn air space, so that no part is denser than its own particles.
        custom["bulk_density_kg_m3"] = round((1 - chance.uniform(*air)) / particle)
        custom["ash_pct_dry"] = ash_pct
    return custom


def draw_request(chance, density, reach_count, step_share, small=False):
    """`density`: 'all', 'none' or 'some' parts carry one; `step_share`: share of reach in whole steps."""

    def has_density():
        return density == "all" or (density == "some" and chance.random() < 0.6)

    have = []
    for index in range(chance.randint(1, 4)):
        custom = draw_custom(chance, f"h{index + 1}", has_density())
        have.append({"custom": custom, "amount": f"{plain(round(chance.uniform(0.5, 30), 1))} kg"})
    have_kg = sum(float(part["amount"].split()[0]) for part in have)
    reach = []
    for index in range(reach_count):
        item = {"custom": draw_custom(chance, f"r{index + 1}", has_density())}
        stepped = chance.random() < step_share
        if small or chance.random() < (0.85 if stepped else 0.45):
            item["max"] = f"{plain(round(have_kg * chance.uniform(0.05, 1.5), 1))} kg"
        if stepped:
            # A step that gives some 3 to 60 of them in the mass at hand.
            able = [step for step in STEPS_KG if 3 <= have_kg / float(step) <= 60]
            item["step"] = f"{chance.choice(able or STEPS_KG[:1])} kg"
        reach.append(item)
    cn_low = chance.randint(18, 30)
    cn_high = cn_low + chance.randint(4, 16)
    wet_low = chance.randint(42, 58)
    target = {
        "cn_ratio": [cn_low, cn_high],
        "cn_goal": chance.randint(cn_low, cn_high),
        "moisture_pct": [wet_low, wet_low + chance.randint(4, 15)],
    }
    if density != "none":
        target["free_air_space_pct"] = [chance.randint(20, 45), chance.choice([60, 70, 80, 100])]
    return {
        "have": have,
        "reach": reach,
        "water": chance.random() < 0.6,
        "target": target,
        "objective": "least_mass",
    }


# ---- answers -----------------------------------------------------------------------------------


class Doubtful(Exception):
    """The answer hangs on a bound by less than SHIFT, or was not proven."""


def answer(request):
    """The proven answer to a request; raises Doubtful where a hair's breadth decides."""
    problem = model.pose(request)
    status, amounts = model.by_highs(problem)
    if status == "unproven":
        raise Doubtful("unproven")
    around = [model.by_highs(model.pose(request, shift)) for shift in (-SHIFT, SHIFT)]
    if any(other != status for other, _ in around):
        raise Doubtful("status")
    if status == "not_met":
        if not any(problem.steps_kg):
            assert model.by_exact_simplex(problem) is None, "HiGHS and the exact simplex disagree"
        return {"status": status}
    wide, narrow = (sum(found) for _, found in around)
    if abs(narrow - wide) > STEADY * max(1.0, wide):
        raise Doubtful("objective")
    exact_amounts = model.with_steps_kept(problem, amounts)
    assert exact_amounts is not None and model.holds(problem, exact_amounts)
    least = sum(exact_amounts)
    assert abs(float(least) - sum(amounts)) <= 1e-7 * max(1.0, sum(amounts)), (float(least), sum(amounts))
    return answered(request, exact_amounts)


def answered(request, amounts):
    count = len(request["reach"])
    return {
        "status": "met",
        "least_added_mass_kg": digits(sum(amounts)),
        "add_kg": [digits(x) for x in amounts[:count]],
        "water_kg": digits(amounts[count]) if request["water"] else 0,
    }


def gather(chance, prefix, draw, met_count, not_met_count):
    """Draws until there are enough of both statuses; at most one in twenty needs nothing added."""
    cases, room = [], {"met": met_count, "not_met": not_met_count}
    idle_room = met_count // 20
    dropped = {"status": 0, "objective": 0, "unproven": 0}
    while any(room.values()):
        request = draw(chance)
        try:
            found = answer(request)
        except Doubtful as why:
            dropped[str(why)] += 1
            continue
        idle = found.get("least_added_mass_kg") == 0
        if room[found["status"]] == 0 or (idle and idle_room == 0):
            continue
        room[found["status"]] -= 1
        idle_room -= idle
        cases.append({"id": f"{prefix}-{len(cases) + 1:03}", "request": request, **found})
    return cases, dropped


def mixture_of(request, amounts):
    """C:N and moisture [%] of what is at hand with `amounts` added."""
    parts = [(p["custom"], model.kilograms(p["amount"])) for p in request["have"]]
    parts += [(item["custom"], mass) for item, mass in zip(request["reach"], amounts)]
    sums = [Fraction(0)] * 4
    for custom, mass in parts:
        sums = [s + mass * share for s, share in zip(sums, model.per_kilogram(custom, False)[:4])]
    water = amounts[len(request["reach"])] if request["water"] else 0
    carbon, nitrogen, wet, total = sums
    return carbon / nitrogen, 100 * (wet + water) / (total + water)


# ---- the four groups ---------------------------------------------------------------------------


def table():
    """Round example figures, worked once before with HiGHS 1.16.0; `EXPECTED` holds the printed answers."""

    def custom(name, moisture_pct, carbon_pct_dry, nitrogen_pct_dry):
        return {
            "name": name,
            "moisture_pct": moisture_pct,
            "carbon_pct_dry": carbon_pct_dry,
            "nitrogen_pct_dry": nitrogen_pct_dry,
        }

    scraps, grass = custom("scraps", 75, 50, 2.5), custom("grass", 77, 45, 2.4)
    leaves, cardboard = custom("leaves", 35, 50, 0.75), custom("cardboard", 8, 45, 0.1)
    both = [{"custom": leaves}, {"custom": cardboard}]
    usual = {"cn_ratio": [25, 40], "cn_goal": 30, "moisture_pct": [50, 60]}
    pinned = {"cn_ratio": [30, 30], "cn_goal": 30, "moisture_pct": [60, 60]}
    # leaves kg, cardboard kg, water kg, C:N, moisture %
    expected = [
        ("all allowed", both, usual, (0, Fraction(235, 52), 0, "38.601216", "60.000")),
        ("no cardboard", both[:1], usual, (Fraction(235, 25), None, 0, "35.479125", "60.000")),
        (
            "cardboard at most 2 kg",
            [both[0], {"custom": cardboard, "max": "2 kg"}],
            usual,
            (Fraction("5.24"), 2, 0, "36.587649", "60.000"),
        ),
        ("C:N exactly 30 and moisture exactly 60 %", both, pinned, None),
    ]
    cases = []
    for title, reach, target, printed in expected:
        request = {
            "have": [{"custom": scraps, "amount": "10 kg"}, {"custom": grass, "amount": "5 kg"}],
            "reach": reach,
            "water": True,
            "target": target,
            "objective": "least_mass",
        }
        start_cn, start_moisture = mixture_of(request, [Fraction(0)] * (len(reach) + 1))
        assert (f"{float(start_cn):.6f}", f"{float(start_moisture):.4f}") == ("19.617092", "75.6667")
        found = answer(request)
        if printed is None:
            assert found == {"status": "not_met"}
        else:
            amounts = model.by_exact_simplex(model.pose(request))
            assert amounts == [x for x in printed[:3] if x is not None], (title, amounts)
            cn, moisture = mixture_of(request, amounts)
            assert (f"{float(cn):.6f}", f"{float(moisture):.3f}") == printed[3:], (title, cn, moisture)
            found |= {"cn_ratio": digits(cn), "moisture_pct": digits(moisture)}
        cases.append({"id": title, "request": request, **found})
    return cases, None


def continuous(density, met_count, not_met_count, seed):
    def draw(chance):
        return draw_request(chance, density, chance.randint(1, 12), 0.0)

    return gather(random.Random(seed), f"continuous-{density}", draw, met_count, not_met_count)


def whole_steps():
    chance = random.Random(20_003)

    def density():
        return chance.choice(["all", "none"])

    groups = [
        ("steps", lambda c: draw_request(c, density(), c.randint(1, 8), 1.0), 70, 6),
        ("between", lambda c: draw_request(c, density(), c.randint(1, 3), 1.0, small=True), 0, 6),
        ("mixed", lambda c: draw_request(c, density(), c.randint(2, 8), 0.5), 24, 4),
        ("many", lambda c: draw_request(c, density(), c.randint(12, 20), 0.9), 10, 0),
    ]
    cases, dropped = [], {"status": 0, "objective": 0, "unproven": 0}
    for prefix, draw, met_count, not_met_count in groups:

        def fitting(c, prefix=prefix, draw=draw):
            while True:
                request = draw(c)
                stepped = sum("step" in item for item in request["reach"])
                if prefix == "mixed" and not 0 < stepped < len(request["reach"]):
                    continue
                # "between": any amounts would do, but no whole steps.
                if prefix == "between" and model.by_exact_simplex(model.pose(request)) is None:
                    continue
                return request

        found, lost = gather(chance, prefix, fitting, met_count, not_met_count)
        cases += found
        dropped = {key: dropped[key] + lost[key] for key in dropped}
    return cases, dropped


def enumerated():
    chance = random.Random(20_004)

    def draw(c):
        while True:
            request = draw_request(c, c.choice(["all", "none"]), c.randint(1, 4), 1.0, small=True)
            if 10 <= model.combination_count(request) <= 40_000:
                return request

    cases, dropped = gather(chance, "enumerated", draw, 32, 8)
    for case in cases:
        problem = model.pose(case["request"])
        best, fitting = model.by_enumeration(case["request"], problem)
        tried = int(model.combination_count(case["request"]))
        if best is None:
            assert case["status"] == "not_met", case["id"]
        else:
            assert model.holds(problem, best), case["id"]
            assert digits(sum(best)) == case["least_added_mass_kg"], case["id"]
        case |= {"combinations_tried": tried, "combinations_fitting": fitting}
    return cases, dropped


def write(name, what, cases, dropped):
    head = {"what": what, "cases_total": len(cases)}
    if dropped is not None:
        head["dropped"] = dropped
    lines = ",\n".join(json.dumps(case, separators=(",", ":")) for case in cases)
    text = json.dumps(head, separators=(",", ":"))[:-1] + f',"cases":[\n{lines}\n]}}\n'
    assert len(text.encode()) < LARGEST_FILE_BYTES, (name, len(text))
    (HERE / name).write_text(text)
    met = sum(case["status"] == "met" for case in cases)
    print(f"{name}: {len(cases)} cases, {met} met, dropped {dropped}, {len(text) / 1024:.0f} KiB", flush=True)


def main():
    write("answers.json", "the worked table", *table())
    write("continuous.json", "any amounts, no densities", *continuous("none", 112, 28, 20_001))
    write("continuous_air.json", "any amounts, all densities", *continuous("all", 116, 24, 20_002))
    write("continuous_some.json", "any amounts, densities of some parts: no air rows", *continuous("some", 16, 4, 20_005))
    write("whole_steps.json", "whole steps, alone and mixed", *whole_steps())
    write("enumerated.json", "whole steps, also enumerated", *enumerated())


if __name__ == "__main__":
    main()
