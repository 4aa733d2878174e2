"""The heaps that are compared. Amounts are invented round figures near those of a household's mixture."""

import numpy as np

# As documented with the engine's `Parameters`. The test gives them to the engine, so that a moved default does no harm.
PARAMETERS = {
    "rapid_rate_per_d": 0.60, "moderate_rate_per_d": 0.060, "slow_rate_per_d": 0.008, "humus_rate_per_d": 0.0004,
    "mesophile_activity": 0.85, "mesophiles": [0.0, 37.0, 49.0], "thermophiles": [22.0, 56.0, 72.0],
    "growth_yield": 0.35, "half_activity_cells": 0.02, "decay_of_cells_per_d": 0.15, "least_decay_of_cells_per_d": 0.02,
    "heat_death_per_d": 1.5, "mesophile_death_c": 50.0, "thermophile_death_c": 74.0, "surviving_cells": 0.002,
    "cells_to_humus": 0.40, "slow_to_humus": 0.45, "half_activity_oxygen": 0.02, "fermentation": 0.09,
    "acid_rate_per_d": 3.0, "nitrogen_in_cells": 0.066, "nitrogen_in_humus": 0.055, "half_growth_nitrogen": 5e-5,
    "ammonium_sorption": 1.0, "nitrification_per_d": 0.06, "nitrifiers_free_ammonia": 4e-5,
    "denitrification_per_d": 0.02, "heat_of_oxygen_mj_kg": 14.0, "solids_heat_mj_kg_k": 1.3e-3,
    "conductivity_factor": 1.5, "surface_factor": 1.0, "ground_coefficient_w_m2_k": 2.0, "grain_factor": 1.0,
    "diffusion_m2_s": 2.0e-5, "wind_exchange_per_d": 20.0, "skin_m": 0.02, "field_capacity": 2.7,
    "drainage_per_d": 1.0, "settling_by_decay": 0.6, "settling_by_load": 0.15, "settling_time_d": 8.0,
    "loosening": 0.15, "turning_heat_loss": 0.12, "bases_at_start": 0.30, "bases_by_decay": 0.60,
    "humic_acid_mol_kg": 0.8, "rapid_factor": 1.0, "water_factor": 1.0, "air_offset_k": 0.0,
}


def mixture(cubic_metres, water_kg=255.0, volume=1.0, grain_mm=0.6):
    """Kitchen scraps, grass, leaves and chips."""
    m = cubic_metres
    kg = {
        "rapid": 32.5, "moderate": 53.2, "slow": 64.3, "humus": 0.2, "mesophiles": 1.3, "thermophiles": 0.56, "acids": 0.49,
        "ammonium": 0.05, "nitrate": 0.01, "water": water_kg, "ash": 14.7, "potassium": 1.7,
    }
    charge = {name + "_kg": value * m for name, value in kg.items()}
    charge["nitrogen_kg"] = [1.3 * m, 0.54 * m, 0.44 * m, 0.004 * m]
    charge |= {"bases_mol": 46.0 * m, "volume_m3": volume * m}
    charge["dry_over_grain_kg_m"] = 170.0 * m / (1e-3 * grain_mm)
    return charge


VESSEL = {
    "rapid_kg": 0.215, "moderate_kg": 0.106, "slow_kg": 0.621, "humus_kg": 0.0, "mesophiles_kg": 0.0146,
    "thermophiles_kg": 0.0063, "acids_kg": 0.0, "ammonium_kg": 0.0, "nitrate_kg": 0.0, "water_kg": 1.385, "ash_kg": 0.0522,
    "potassium_kg": 0.0, "nitrogen_kg": [0.0107, 0.00176, 0.0103, 0.0], "bases_mol": 0.418, "volume_m3": 0.006075,
    "dry_over_grain_kg_m": 1740.0,
}


def mild(air_c, humidity=0.7, ground_offset_k=-2.0):
    return {"hours": [[air_c, humidity, 0.0, 1.25, 0.0, 1.0]], "ground_offset_k": ground_offset_k}


def april(days):
    """Days and nights, two fronts with rain, wind and cloud; invented."""
    hours = []
    for hour in range(24 * days + 1):
        day = hour / 24
        sun = max(0.0, -np.cos(2 * np.pi * day))
        rain = 1.5 if int(day) in (3, 4, 11) and hour % 24 in range(6, 12) else 0.0
        cloud = 0.9 if int(day) in (3, 4, 11) else 0.3
        hours.append(
            [
                round(11 - 6 * np.cos(2 * np.pi * (day - 0.1)) + 3 * np.sin(day / 2.3), 3),
                round(0.75 + 0.2 * np.cos(2 * np.pi * day), 4),
                rain,
                round(1.5 + np.sin(1.7 * day), 4),
                round(650 * sun * (1 - 0.7 * cloud), 2),
                cloud,
            ]
        )
    return {"hours": hours, "ground_offset_k": 0.0}


def box(side, **more):
    return {"width_m": side, "depth_m": side, "height_m": side} | more


def case(name, enclosure, weather, charge, days, grid, rows, temperature_c=None, more=()):
    feed = {"day": 0.0, "action": "feed", "charge": charge, "temperature_c": temperature_c}
    return {
        "name": name, "enclosure": enclosure, "weather": weather, "grid": list(grid), "days": float(days),
        "rows": [float(row) for row in rows], "events": [feed, *more],
    }


def turn(day, thoroughness=1.0):
    return {"day": float(day), "action": "turn", "thoroughness": thoroughness}


def water(day, litres):
    return {"day": float(day), "action": "water", "litres": litres}


CASES = [
    case("open box of 1 m3 at 15 degrees", box(1.0), mild(15.0), mixture(1), 60, (4, 3), (1, 2, 3, 5, 10, 20, 30, 60)),
    case(
        "the same turned and watered", box(1.0), mild(15.0), mixture(1), 40, (4, 3), (2, 6, 9, 13, 16, 25, 40),
        more=[turn(5), turn(12, 0.8), water(12, 30.0), water(15, 25.0), turn(20)],
    ),
    case(
        "wooden bin of 0.2 m3 with a lid", box(0.585, wall="Wood", cover="Lid"), mild(15.0), mixture(0.2), 60, (4, 3),
        (1, 2, 3, 5, 10, 20, 40, 60),
    ),
    case(
        "vessel with forced air",
        box(0.1825, cover="Lid", heat_loss_w_per_k=0.156, forced_air_kg_per_d=1.79), mild(24.0, 0.5, 0.0), VESSEL, 20,
        (1, 1), (0.25, 0.5, 1, 2, 3, 5, 10, 20), temperature_c=24.1,
    ),
    case(
        "soaked heap", box(1.0), mild(15.0), mixture(1, water_kg=560.0, volume=0.85, grain_mm=0.5), 30, (4, 3),
        (1, 2, 4, 7, 14, 30),
    ),
    case(
        "slatted box in changing weather", box(1.0, wall="Slatted"), april(20), mixture(1), 20, (4, 3),
        (0.5, 1.75, 3.3, 5, 8.25, 12, 16.6, 20), temperature_c=12.0, more=[turn(9.0)],
    ),
    case("one cell of 1 m3", box(1.0), mild(15.0), mixture(1), 60, (1, 1), (1, 2, 3, 5, 10, 20, 30, 60)),
    case(
        "insulated bin in frost", box(0.7, wall="Insulated", cover="Lid"), mild(-9.0, 0.8, 7.0), mixture(0.3), 40, (3, 2),
        (1, 2, 4, 8, 15, 25, 40), temperature_c=8.0,
    ),
    case(
        "dry leaves left in the cold", box(0.8, wall="Mesh"), mild(-6.0, 0.8, 5.0),
        mixture(0.4, water_kg=120.0, volume=1.3, grain_mm=1.5) | {"rapid_kg": 2.0, "mesophiles_kg": 0.05}, 30, (3, 3),
        (0.5, 1, 2, 5, 10, 20, 30), temperature_c=5.0,
    ),
]
