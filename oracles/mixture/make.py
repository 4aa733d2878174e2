"""Writes mixtures and their independent figures (see README.md)."""

import json
import random
from decimal import Decimal, localcontext
from fractions import Fraction
from pathlib import Path

import numpy

HERE = Path(__file__).parent
LARGEST_FILE_BYTES = 400 * 1024
EXACT_SEED, SPREAD_SEED = 10_001, 10_002
DRAWS, BATCHES = 4_000_000, 40
# Water, organic matter, ash [kg/m3]: Richard, Veeken, de Wilde & Hamelers 2004, Biotechnology
# Progress (from memory of the paper).
PARTICLE_KG_M3 = (1000, 1600, 2500)


def exact(value):
    """The decimal as it is written, not its nearest double."""
    return Fraction(str(value))


def digits(value):
    """A fraction rounded to 15 significant digits, as a JSON number; None stays None."""
    if value is None:
        return None
    with localcontext() as context:
        context.prec = 15
        quotient = float(Decimal(value.numerator) / Decimal(value.denominator))
    return int(quotient) if quotient.is_integer() else quotient


def plain(value):
    """A drawn number without a needless '.0'."""
    return int(value) if float(value).is_integer() else value


# ---- exact mixtures ----------------------------------------------------------------------------


def draw_part(chance, name):
    """An invented material and its amount; the figures describe no real one."""
    moisture = plain(round(chance.choice([chance.uniform(0, 30), chance.uniform(30, 96)]), 1))
    ash = plain(round(chance.uniform(0, 45), 1))
    custom = {
        "name": name,
        "moisture_pct": moisture,
        # Organic matter is at most some 55 % carbon.
        "carbon_pct_dry": plain(round(chance.uniform(0.42, 0.55) * (100 - ash), 1)),
        "nitrogen_pct_dry": plain(round(chance.uniform(0.05, 6.0), 2)),
        "ash_pct_dry": ash,
        "phosphorus_pct_dry": plain(round(chance.uniform(0, 1.5), 3)),
        "potassium_pct_dry": plain(round(chance.uniform(0, 4), 2)),
        "calcium_pct_dry": plain(round(chance.uniform(0, 6), 2)),
    }
    by_volume = chance.random() < 0.5
    if by_volume or chance.random() < 0.9:
        wet = moisture / 100
        filled = wet / 1000 + (1 - wet) * ((1 - ash / 100) / 1600 + ash / 100 / 2500)
        custom["bulk_density_kg_m3"] = round((1 - chance.uniform(0.05, 0.93)) / filled)
    amount = chance.choice([chance.uniform(0.1, 3), chance.uniform(3, 120)])
    return {"custom": custom, "amount": f"{plain(round(amount, 2))} {'L' if by_volume else 'kg'}"}


def figures(parts):
    """Every figure of a mixture, in fractions. Volume, density and air are None when a density lacks."""
    wet_mass = dry_mass = carbon = nitrogen = ash = Fraction(0)
    minerals = {"phosphorus": Fraction(0), "potassium": Fraction(0), "calcium": Fraction(0)}
    volume = Fraction(0)
    for part in parts:
        custom = part["custom"]
        number, unit = part["amount"].split()
        density = exact(custom["bulk_density_kg_m3"]) if "bulk_density_kg_m3" in custom else None
        mass = Fraction(number) if unit == "kg" else Fraction(number) / 1000 * density
        dry = mass * (1 - exact(custom["moisture_pct"]) / 100)
        wet_mass += mass
        dry_mass += dry
        carbon += dry * exact(custom["carbon_pct_dry"]) / 100
        nitrogen += dry * exact(custom["nitrogen_pct_dry"]) / 100
        ash += dry * exact(custom["ash_pct_dry"]) / 100
        for mineral in minerals:
            minerals[mineral] += dry * exact(custom[f"{mineral}_pct_dry"]) / 100
        volume = None if density is None or volume is None else volume + mass / density
    water_kg_m3, organic_kg_m3, ash_kg_m3 = PARTICLE_KG_M3
    filled = (wet_mass - dry_mass) / water_kg_m3 + (dry_mass - ash) / organic_kg_m3 + ash / ash_kg_m3
    return {
        "wet_mass_kg": wet_mass,
        "dry_mass_kg": dry_mass,
        "volume_m3": volume,
        "carbon_kg": carbon,
        "nitrogen_kg": nitrogen,
        "carbon_to_nitrogen": carbon / nitrogen,
        "moisture_pct": 100 * (wet_mass - dry_mass) / wet_mass,
        "bulk_density_kg_m3": None if volume is None else wet_mass / volume,
        "free_air_space_pct": None if volume is None else 100 * (1 - filled / volume),
        "phosphorus_kg": minerals["phosphorus"],
        "potassium_kg": minerals["potassium"],
        "calcium_kg": minerals["calcium"],
    }


def check_worked_air_space():
    """500 kg/m3, 60 % moisture, 80 % organic matter: air-filled share 0.584 by hand."""
    custom = {
        "moisture_pct": 60,
        "carbon_pct_dry": 40,
        "nitrogen_pct_dry": 2,
        "ash_pct_dry": 20,
        "phosphorus_pct_dry": 0,
        "potassium_pct_dry": 0,
        "calcium_pct_dry": 0,
        "bulk_density_kg_m3": 500,
    }
    assert figures([{"custom": custom, "amount": "7 L"}])["free_air_space_pct"] == Fraction("58.4")


def exact_cases():
    chance = random.Random(EXACT_SEED)
    cases = []
    for index in range(200):
        parts = [draw_part(chance, f"m{i + 1}") for i in range(index % 8 + 1)]
        expected = {key: digits(value) for key, value in figures(parts).items()}
        cases.append({"id": f"exact-{index + 1:03}", "parts": parts, "expected": expected})
    return cases


# ---- spread ------------------------------------------------------------------------------------


def split_triangular(u, low, typical, high):
    """Half the draws below `typical`, half above, thinning out linearly to both ends."""
    below = typical - (typical - low) * (1 - numpy.sqrt(2 * u))
    above = typical + (high - typical) * (1 - numpy.sqrt(numpy.maximum(0.0, 2 * (1 - u))))
    return numpy.where(u < 0.5, below, above)


def draw_uncertain_part(chance, name, kind):
    """An invented material with its ranges."""
    nitrogen, moisture = {
        "green": ((1.8, 4.2), (62, 88)),
        "brown": ((0.2, 1.2), (8, 40)),
        "middling": ((0.8, 2.6), (35, 75)),
    }[kind]
    typical = round(chance.uniform(*nitrogen), 2)
    wet = round(chance.uniform(*moisture), 1)
    carbon = round(chance.uniform(40, 51), 1)
    return {
        "name": name,
        "mass_kg": round(chance.uniform(1, 25), 1),
        "moisture_pct": {
            "low": round(wet - wet * chance.uniform(0.05, 0.3), 1),
            "typical": wet,
            "high": round(wet + (100 - wet) * chance.uniform(0.05, 0.5), 1),
        },
        "nitrogen_pct_dry": {
            "low": round(typical * chance.uniform(0.45, 0.95), 2),
            "typical": typical,
            "high": round(typical * chance.uniform(1.05, 1.8), 2),
        },
        "carbon_pct_dry_at_low_nitrogen": round(carbon + chance.uniform(-4, 4), 1),
        "carbon_pct_dry_typical": carbon,
        "carbon_pct_dry_at_high_nitrogen": round(carbon + chance.uniform(-4, 4), 1),
    }


def spread(parts, generator):
    """P10, P50, P90 of C:N and moisture, with the standard error of each from the batches."""
    carbon, nitrogen, water = numpy.zeros(DRAWS), numpy.zeros(DRAWS), numpy.zeros(DRAWS)
    total_kg = sum(part["mass_kg"] for part in parts)
    for part in parts:
        # One draw for the specimen (nitrogen and carbon together), one for its moisture.
        specimen, wetness = generator.random(DRAWS), generator.random(DRAWS)
        moisture = split_triangular(wetness, *(part["moisture_pct"][k] for k in ("low", "typical", "high"))) / 100
        dry = part["mass_kg"] * (1 - moisture)
        nitrogen += dry * split_triangular(specimen, *(part["nitrogen_pct_dry"][k] for k in ("low", "typical", "high"))) / 100
        carbon += dry * split_triangular(
            specimen,
            part["carbon_pct_dry_at_low_nitrogen"],
            part["carbon_pct_dry_typical"],
            part["carbon_pct_dry_at_high_nitrogen"],
        ) / 100
        water += part["mass_kg"] * moisture
    expected = {}
    for key, values in (("carbon_to_nitrogen", carbon / nitrogen), ("moisture_pct", 100 * water / total_kg)):
        levels = [0.1, 0.5, 0.9]
        whole = numpy.quantile(values, levels)
        batches = numpy.array([numpy.quantile(batch, levels) for batch in values.reshape(BATCHES, -1)])
        error = batches.std(axis=0, ddof=1) / numpy.sqrt(BATCHES)
        expected[key] = {
            name: {"value": float(f"{value:.7g}"), "standard_error": float(f"{spread_:.2g}")}
            for name, value, spread_ in zip(("p10", "p50", "p90"), whole, error)
        }
    return expected


def spread_cases():
    chance, generator = random.Random(SPREAD_SEED), numpy.random.default_rng(SPREAD_SEED)
    kinds = [("green", "brown", "middling"), ("green", "green", "brown"), ("green", "brown", "brown")]
    cases = []
    for index in range(12):
        parts = [draw_uncertain_part(chance, f"m{i + 1}", kind) for i, kind in enumerate(kinds[index % 3])]
        cases.append({"id": f"spread-{index + 1:02}", "parts": parts, "expected": spread(parts, generator)})
    return cases


def check_split_triangular():
    """The inverse must give back the closed-form quantiles and stay inside its range."""
    u = numpy.array([0.0, 0.125, 0.5, 0.875, 1.0])
    assert numpy.allclose(split_triangular(u, 10.0, 20.0, 40.0), [10, 15, 20, 30, 40], atol=1e-12)


def block(name, cases):
    lines = ",\n".join(json.dumps(case, separators=(",", ":")) for case in cases)
    return f'"{name}":[\n{lines}\n]'


def main():
    check_worked_air_space()
    check_split_triangular()
    text = "{" + block("exact", exact_cases()) + ",\n" + block("spread", spread_cases()) + "}\n"
    assert len(text.encode()) < LARGEST_FILE_BYTES, len(text)
    (HERE / "answers.json").write_text(text)
    print(f"answers.json: {len(text) / 1024:.0f} KiB")


if __name__ == "__main__":
    main()
