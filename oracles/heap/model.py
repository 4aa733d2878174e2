"""The heap's right-hand side, written anew from its documented equations, for many states at once.

States are arrays of (state, quantity, cell); links and faces are index arrays, and every flow is summed with incidence
matrices. The air network is a dense linear system; oxygen is the root of its balance by a guarded Newton method, checked
against scipy's root finder in `make.py`; acidity is found by bisection and Newton's method.
"""

import numpy as np

QUANTITIES = (
    "rapid moderate slow humus mesophiles thermophiles acids nitrogen_rapid nitrogen_moderate nitrogen_slow "
    "nitrogen_humus ammonium nitrate water potassium enthalpy density"
).split()
LEDGERS = (
    "dioxide_carbon methane_carbon ammonia_nitrogen nitrous_nitrogen dinitrogen vapour leached_water leached_ammonium "
    "leached_potassium oxygen heat conducted_side conducted_top conducted_bottom vapour_heat air_heat matter_heat rain "
    "rain_heat leached_heat water_formed sun_heat oxygen_brought leached_nitrate"
).split()
Q = {name: place for place, name in enumerate(QUANTITIES)}
K = len(QUANTITIES)

# Carbon and hydrogen of each pool; the rest is oxygen.
# The acids are CH2O with as much C4H8O2 as makes them as reduced as rapid matter (oxygen demand per carbon alike).
CARBON = np.array([0.470, 72 / 162, 0.600, 0.560, 0.530, 0.530, 12 / 30])
HYDROGEN = np.array([0.065, 10 / 162, 0.058, 0.055, 0.065, 0.065, 2 / 30])


def demand(carbon, hydrogen):
    return 32 * (carbon / 12 + hydrogen / 4 - (1 - carbon - hydrogen) / 32)


_LACK = demand(0.470, 0.065) / 0.470 * CARBON[6] - demand(CARBON[6], HYDROGEN[6])
_GAIN = demand(48 / 88, 8 / 88) - demand(CARBON[6], HYDROGEN[6]) - demand(0.470, 0.065) / 0.470 * (48 / 88 - CARBON[6])
CARBON[6], HYDROGEN[6] = (plain + _LACK / _GAIN * (butyric - plain) for plain, butyric in ((CARBON[6], 48 / 88), (HYDROGEN[6], 8 / 88)))
DEMAND = demand(CARBON, HYDROGEN)
FORMED = 9 * HYDROGEN
RAPID, MODERATE, SLOW, HUMUS, CELLS, ACIDS = 0, 1, 2, 3, 4, 6
METHANE_OXYGEN = 64 / 12
NITROUS_NIT, NITROUS_DEN = 0.015, 0.1
NIT_OXYGEN = (1 - NITROUS_NIT) * 64 / 14 + NITROUS_NIT * 32 / 14
NIT_WATER = (1 - NITROUS_NIT) * 18 / 14 + NITROUS_NIT * 27 / 14
DEN_OXYGEN = (1 - NITROUS_DEN) * 40 / 14 + NITROUS_DEN * 32 / 14

PRESSURE, OUTSIDE, OXYGEN_PER_AIR = 101_325.0, 0.2095, 0.2315 / 0.2095
AIR_HEAT, WATER_HEAT, ICE_HEAT, MELTING = 1.006e-3, 4.186e-3, 2.1e-3, 0.334
DAY, MJ_D, G, LEAK = 86_400.0, 0.0864, 9.81, 1e-9
SOLIDS = 1600.0
FREEZE_SPAN, FREEZE_SHARE = 1.5, 0.9


def logistic(value, middle, width):
    return 1 / (1 + np.exp((middle - value) / width))


def cardinal(t, least, best, most):
    """Rosso's model with inflection."""
    with np.errstate(divide="ignore", invalid="ignore"):
        value = (t - most) * (t - least) ** 2 / (
            (best - least) * ((best - least) * (t - best) - (best - most) * (best + least - 2 * t))
        )
    return np.where((t > least) & (t < most), np.clip(value, 0, 1), 0.0)


def saturation(t):
    return 610.94 * np.exp(17.625 * t / (t + 243.04))


def humidity(vapour):
    vapour = np.minimum(vapour, 0.9 * PRESSURE)
    return 0.622 * vapour / (PRESSURE - vapour)


def gas_density(t, vapour):
    vapour = np.minimum(vapour, 0.9 * PRESSURE)
    return ((PRESSURE - vapour) * 0.02896 + vapour * 0.018015) / (8.31446 * (t + 273.15))


def vapour_heat(t):
    return 2.501 + 1.826e-3 * t


class Warmth:
    """All that depends on temperature or moisture alone: exactly, or through the documented tables (cubics over quarter
    degrees from -60 with slopes by central differences over a thousandth, none below zero; and over 0.005 of moisture)."""

    NAMES = "saturation meso thermo dying_m dying_t nitrify denitrify diffusion ammonium gas bicarbonate acid50".split()

    def __init__(self, p, tabled):
        self.p = p
        self.tabled = tabled
        if tabled:
            t = -60 + np.arange(721) / 4
            self.value = self.exact(t)
            self.slope = (self.exact(t + 1e-3) - self.exact(t - 1e-3)) / 2e-3 / 4
            wet = np.arange(201) / 200
            factor, methane = self.by_moisture_exactly(wet)
            self.wet_value = np.stack([factor, methane])
            self.wet_slope = np.stack([17.684 * factor * (1 - factor), methane * np.log(10) / 0.073]) / 200

    def exact(self, t):
        p = self.p
        meso = cardinal(t, *p["mesophiles"])
        thermo = cardinal(t, *p["thermophiles"])
        base = p["least_decay_of_cells_per_d"]
        kelvin = t + 273.15
        return np.stack(
            [
                saturation(t),
                p["mesophile_activity"] * meso,
                thermo,
                base + p["decay_of_cells_per_d"] * meso + p["heat_death_per_d"] * logistic(t, p["mesophile_death_c"], 1.5),
                base + p["decay_of_cells_per_d"] * thermo + p["heat_death_per_d"] * logistic(t, p["thermophile_death_c"], 1.0),
                cardinal(t, 2.0, 30.0, 45.0),
                np.minimum(np.exp((t - 20) * 0.067_658_648_5), 8.0),
                (kelvin / 293) ** 1.75,
                10 ** -(0.09018 + 2729.92 / kelvin),
                6e-4 * np.exp(4200 * (1 / 298.15 - 1 / kelvin)),
                0.034 * np.exp(2400 * (1 / kelvin - 1 / 298)) * 10 ** -(6.35 - 0.005 * (t - 25)),
                10 ** (1.2 * logistic(t, 40.0, 2.0)),
            ]
        )

    def at(self, t):
        if not self.tabled:
            return dict(zip(self.NAMES, self.exact(t)))
        found = self.between(np.clip((t + 60) * 4, 0, 719.9999), self.value, self.slope)
        return dict(zip(self.NAMES, np.maximum(found, 0)))

    @staticmethod
    def between(place, value, slope):
        """Cubics that meet values and slopes at whole places."""
        knot = place.astype(int)
        x = place - knot
        smooth = x * x * (3 - 2 * x)
        return (
            value[:, knot] * (1 - smooth)
            + value[:, knot + 1] * smooth
            + slope[:, knot] * x * (1 - x) ** 2
            + slope[:, knot + 1] * x * x * (x - 1)
        )

    @staticmethod
    def by_moisture_exactly(wet):
        """Activity by moisture, and the share of methane in plenty of air."""
        return 1 / (1 + np.exp(7.0622 - 17.684 * wet)), 5e-4 * 10 ** ((wet - 0.60) / 0.073)

    def by_moisture(self, wet):
        if not self.tabled:
            return self.by_moisture_exactly(wet)
        return self.between(np.clip(wet * 200, 0, 200 - 1e-9), self.wet_value, self.wet_slope)


def temperature(enthalpy, dry, water, p):
    solids = dry * p["solids_heat_mj_kg_k"]
    thawed = solids + water * WATER_HEAT
    frozen_at = thawed * FREEZE_SPAN + FREEZE_SHARE * MELTING * water
    within = FREEZE_SPAN * enthalpy / frozen_at
    below = -FREEZE_SPAN + (enthalpy + frozen_at) / (solids + water * ICE_HEAT)
    return np.where(enthalpy >= 0, enthalpy / thawed, np.where(enthalpy >= -frozen_at, within, below))


def enthalpy(t, dry, water, p):
    solids = dry * p["solids_heat_mj_kg_k"]
    thawed = solids + water * WATER_HEAT
    frozen_at = thawed * FREEZE_SPAN + FREEZE_SHARE * MELTING * water
    if t >= 0:
        return t * thawed
    if t >= -FREEZE_SPAN:
        return frozen_at * t / FREEZE_SPAN
    return -frozen_at + (t + FREEZE_SPAN) * (solids + water * ICE_HEAT)


class Weather:
    """Hours with straight lines between; rain even within each."""

    FIELDS = "air_temperature_c relative_humidity rain_mm_per_h wind_m_s solar_w_m2 cloud_cover".split()

    def __init__(self, hours, ground_offset_k=None):
        self.hours = np.array(hours, float)
        air = self.hours[:, 0]
        if len(hours) == 1:
            self.ground = air + ground_offset_k
        else:
            self.ground, warm = [], air[:240].mean()
            for now in air:
                warm += (now - warm) / 480
                self.ground.append(warm)
            self.ground = np.array(self.ground)

    def at(self, day):
        place = np.arange(len(self.hours))
        hour = day * 24
        values = {name: np.interp(hour, place, self.hours[:, column]) for column, name in enumerate(self.FIELDS)}
        values["ground_c"] = np.interp(hour, place, self.ground)
        return values

    def rain_mm_per_d(self, day):
        return 24 * self.hours[min(int((day + 1e-7) * 24), len(self.hours) - 1), 2]

    def breaks(self, start, end):
        """Days at which the rain changes."""
        rain = self.hours[:, 2]
        return [k / 24 for k in range(1, len(rain)) if rain[k] != rain[k - 1] and start < k / 24 < end]


def slits(share, spacing):
    """What gathering in slits adds to the way of the air [m]."""
    return spacing / np.pi * np.log(1 / np.sin(np.pi * share / 2))


VENTS = slits(0.04, 0.15)
WALLS = {  # openness, detour, resistance
    "Open": (1.0, 0.0, 0.0), "Mesh": (0.9, 0.0, 0.0), "Slatted": (0.5, slits(0.17, 0.12), 0.10),
    "Wood": (0.2, slits(0.03, 0.12), 0.15), "Plastic": (0.15, VENTS, 0.01),
    "Metal": (0.10, VENTS, 0.0), "Insulated": (0.15, VENTS, 1.4),
}
COVERS = {  # openness, detour, resistance, sun
    "None": (1.0, 0.0, 0.0, 1.0), "Sheet": (0.15, 0.5, 0.02, 1.0), "Lid": (0.2, 0.1, 0.02, 1.0), "Roof": (0.9, 0.0, 0.0, 0.0),
}


class Holder:
    """Sizes and faces of what holds the heap."""

    def __init__(self, **told):
        usual = {"shape": "Box", "wall": "Open", "cover": "None", "heat_loss_w_per_k": None, "forced_air_kg_per_d": None}
        self.__dict__.update(usual | told)
        w, d = self.width_m, self.depth_m
        round_area = np.pi / 4 * w * w
        self.base, self.outline = {
            "Box": (w * d, 2 * (w + d)),
            "Cylinder": (round_area, np.pi * w),
            "Drum": (round_area, np.pi * w),
            "Cone": (np.pi / 4 * w * d, np.pi * np.sqrt((w * w + d * d) / 2)),
        }[self.shape]
        self.capacity = self.base * self.height_m / (3 if self.shape == "Cone" else 1)

    def faces(self):
        """(openness, detour, resistance, sun) of flank, top and bottom."""
        side = (*WALLS[self.wall], 0.5 if self.shape == "Cone" else 1 / 3)
        top = COVERS[self.cover]
        if self.cover == "Lid" and self.wall == "Insulated":
            top = (0.2, 0.1, 1.0, 1.0)
        flank = side
        if self.shape == "Drum":
            top = (*side[:3], top[3])
        elif self.shape == "Cone" and self.cover == "Sheet":
            flank = (*top[:3], side[3])
        return {"flank": flank, "top": top, "bottom": (0.0, np.inf, side[2], 0.0)}

    def rain_share(self):
        if self.shape == "Drum" or self.cover in ("Lid", "Roof"):
            return 0.0
        return 0.05 if self.cover == "Sheet" else 1.0


class Heap:
    """Slopes of a heap of `layers` by `rings` cells between two events."""

    def __init__(self, p, holder, weather, layers, rings, carried, spread=1.0, lumped=False, tabled=True):
        self.p, self.holder, self.weather = p, holder, weather
        self.layers, self.rings, self.n = layers, rings, layers * rings
        self.carried, self.spread, self.lumped = carried, spread, lumped
        self.warmth = Warmth(p, tabled)
        self.rain_mm_per_d = 0.0
        n, m = self.n, rings
        cell = np.arange(n).reshape(layers, rings)
        self.layer_of, self.ring_of = np.divmod(np.arange(n), m)
        edges = np.arange(m + 1) / m
        self.share = np.diff(edges**2)
        self.edges = edges[1:]
        across = [(cell[i, j], cell[i, j + 1]) for i in range(layers) for j in range(m - 1)]
        along = [(cell[i, j], cell[i + 1, j]) for i in range(layers - 1) for j in range(m)]
        self.ups = np.array([False] * len(across) + [True] * len(along), bool)
        pairs = np.array(across + along, int).reshape(-1, 2)
        self.low, self.high = pairs[:, 0], pairs[:, 1]
        self.out = np.zeros((len(pairs), n))  # +1 at the low end, -1 at the high end
        self.out[np.arange(len(pairs)), self.low] = 1
        self.out[np.arange(len(pairs)), self.high] = -1
        sides = [(cell[0, j], "bottom") for j in range(m)]
        sides += [(cell[i, m - 1], "flank") for i in range(layers)]
        sides += [(cell[layers - 1, j], "top") for j in range(m)]
        self.face_cell = np.array([c for c, _ in sides])
        self.face_side = np.array([s for _, s in sides])
        self.at_face = np.zeros((len(sides), n))
        self.at_face[np.arange(len(sides)), self.face_cell] = 1

    # ---- one cell ---------------------------------------------------------------------------

    def look(self, t, y):
        """Everything at a moment; `y` is (states, K, cells)."""
        p, c = self.p, self.carried
        s = {name: y[:, place] for name, place in Q.items()}
        s["pools"] = y[:, :7]
        cells = s["mesophiles"] + s["thermophiles"]
        bound = y[:, 7:11].sum(1) + p["nitrogen_in_cells"] * cells
        dry = np.maximum(s["pools"].sum(1) + 17 / 14 * bound + c["ash_kg"], 1e-9)
        water = np.maximum(s["water"], 1e-9 * dry)
        filled = dry / SOLIDS + water / 1000
        volume = np.maximum(dry / np.maximum(s["density"], 1), filled / 0.98)
        space = 1 - filled / volume
        moisture = water / (water + dry)
        temp = temperature(s["enthalpy"], dry, water, p)
        w = self.warmth.at(temp)
        vapour = np.minimum(moisture / 0.25, 1) * w["saturation"]
        rho = gas_density(temp, vapour)
        s.update(
            bound=bound, dry=dry, wet=water, volume=volume, space=space, moisture=moisture, temp=temp, warm=w, rho=rho,
            decayed=np.clip(1 - dry / np.maximum(c["dry_fed_kg"], 1e-9), 0, 1),
            omega=humidity(vapour), steam=vapour_heat(temp),
            conduct=MJ_D * p["conductivity_factor"] * (0.045 + (3e-4 * dry + 0.85e-3 * water) / volume),
            diffuse=DAY * p["diffusion_m2_s"] * rho * w["diffusion"] * space**2,
            permeate=DAY * c["grain_m2"] * space**3 / (180 * (1 - space) ** 2) * rho / (1.716e-5 + 4.8e-8 * temp),
            sorbed=s["water"] + p["ammonium_sorption"] * dry,
        )
        s["f_water"], s["wet_methane"] = self.warmth.by_moisture(moisture)
        s["in_water"] = np.maximum(s["ammonium"], 0) / s["sorbed"]
        s["usual_h"] = self.acidity(s, 0.10)
        self.rates(s)
        self.outside(s, t)
        self.sizes(s)
        self.conductances(s)
        self.draught(s)
        s["oxygen_y"] = self.oxygen(s)
        s["h"] = self.acidity(s, np.maximum(OUTSIDE - s["oxygen_y"], 4e-4))
        free = s["in_water"] * w["ammonium"] / (w["ammonium"] + s["h"])
        s["nh3"] = 1000 * free * w["gas"] / rho
        return s

    def acidity(self, s, dioxide):
        """Hydrogen ions at which charges balance, pH 3 to 10, by bisection and some steps of Newton."""
        p, c = self.p, self.carried
        per = 1 / np.maximum(s["water"], 0.05 * s["dry"])
        freed = np.clip(p["bases_at_start"] + p["bases_by_decay"] * s["decayed"], 0, 1)
        bases = (c["bases_mol"] + s["potassium"] / 0.0391) * freed * per - np.maximum(s["nitrate"], 0) / 0.014 * per
        ammonium, k_n = s["in_water"] / 0.014, s["warm"]["ammonium"]
        acids = np.maximum(s["acids"], 0) / 0.070 * per
        humic = p["humic_acid_mol_kg"] * s["dry"] * per
        anions = s["warm"]["bicarbonate"] * dioxide + 1e-14
        k_a, k_h = 10**-4.3, 10**-8.2

        def charge(h):
            return bases + ammonium * h / (h + k_n) + h - acids * k_a / (h + k_a) - anions / h - humic * k_h / (h + k_h)

        low, high = np.full_like(bases, -10.0), np.full_like(bases, -3.0)
        for _ in range(14):
            middle = (low + high) / 2
            above = charge(10**middle) > 0
            high = np.where(above, middle, high)
            low = np.where(above, low, middle)
        u = np.log(10) * (low + high) / 2
        for _ in range(5):
            h = np.exp(u)
            slope = (
                ammonium * h * k_n / (h + k_n) ** 2 + h + acids * k_a * h / (h + k_a) ** 2 + anions / h
                + humic * k_h * h / (h + k_h) ** 2
            )
            u = np.clip(u - charge(h) / slope, -10 * np.log(10), -3 * np.log(10))
        return np.exp(u)

    def rates(self, s):
        """What life would do with air in plenty."""
        p, w = self.p, s["warm"]
        pools = np.maximum(s["pools"], 0)
        food = pools[:, RAPID] + pools[:, MODERATE] + 0.3 * pools[:, SLOW] + pools[:, ACIDS]
        half = p["half_activity_cells"] * food + 1e-12
        share_m = w["meso"] * pools[:, 4] / (pools[:, 4] + half)
        share_t = w["thermo"] * pools[:, 5] / (pools[:, 5] + half)
        acid = 1e5 * s["usual_h"]
        f_acid = 1 / (1 + acid**1.2 * w["acid50"])
        active = (1 - (1 - share_m) * (1 - share_t)) * s["f_water"] * f_acid
        rate = {RAPID: "rapid", MODERATE: "moderate", SLOW: "slow", HUMUS: "humus", ACIDS: "acid"}
        s["k"] = {pool: p[name + "_rate_per_d"] * active for pool, name in rate.items()}
        s["r"] = {pool: k * pools[:, pool] for pool, k in s["k"].items()}
        r = s["r"]
        ammonium, nitrate = np.maximum(s["ammonium"], 0), np.maximum(s["nitrate"], 0)
        mineral = ammonium + 0.3 * nitrate
        supply = mineral / (p["half_growth_nitrogen"] * np.maximum(s["water"], 1e-9) + mineral + 1e-15)
        s["supply"], s["from_ammonium"] = supply, ammonium / (mineral + 1e-15)
        s["growth"] = p["growth_yield"] * supply * (
            r[RAPID] + r[MODERATE] + 0.5 * (1 - p["slow_to_humus"]) * r[SLOW] + 0.2 * r[HUMUS] + 0.6 * r[ACIDS]
        )
        s["share_m"] = share_m / (share_m + share_t + 1e-30)
        floor = p["surviving_cells"] * s["dry"]
        s["dying"] = np.stack(
            [w["dying_m"] * np.maximum(pools[:, 4] - floor, 0), w["dying_t"] * np.maximum(pools[:, 5] - floor, 0)], 1
        )
        free = s["in_water"] * w["ammonium"] / (w["ammonium"] + s["usual_h"])
        s["nitrified"] = p["nitrification_per_d"] * ammonium * w["nitrify"] * s["f_water"] / (
            (1 + 10**6.8 * s["usual_h"]) * (1 + free / p["nitrifiers_free_ammonia"])
        )
        s["denitrified"] = p["denitrification_per_d"] * nitrate * w["denitrify"] * pools[:, MODERATE] / (
            pools[:, MODERATE] + 0.01 * s["dry"]
        )
        s["to_humus"] = p["slow_to_humus"] * CARBON[SLOW] / CARBON[HUMUS] * r[SLOW]
        burnt = dict(r) | {HUMUS: r[HUMUS] - s["to_humus"], CELLS: -s["growth"]}
        s["carbon_freed"] = np.maximum(sum(CARBON[pool] * mass for pool, mass in burnt.items()), 0)
        s["taken_up"] = p["nitrogen_in_cells"] * s["growth"] + p["nitrogen_in_humus"] * supply * s["to_humus"]
        s["use_f"] = sum(DEMAND[pool] * mass for pool, mass in burnt.items()) - 64 / 14 * (1 - s["from_ammonium"]) * s["taken_up"]
        f_h = p["cells_to_humus"]
        s["use_always"] = s["dying"].sum(1) * (
            DEMAND[CELLS]
            - (1 - f_h) * CARBON[CELLS] / CARBON[RAPID] * DEMAND[RAPID]
            - f_h * CARBON[CELLS] / CARBON[HUMUS] * DEMAND[HUMUS]
        )

    def methane_share(self, s, f):
        return np.minimum(s["wet_methane"] * (1 + 100 * (1 - f) ** 2), 0.05)

    def oxygen_use(self, s, y):
        f = y / (self.p["half_activity_oxygen"] + y)
        aerobic = s["use_f"] - METHANE_OXYGEN * self.methane_share(s, f) * s["carbon_freed"]
        return f * aerobic + y / (0.05 + y) * NIT_OXYGEN * s["nitrified"] + s["use_always"]

    # ---- sizes, links and faces -------------------------------------------------------------

    def outside(self, s, t):
        p, air = self.p, self.weather.at(t)
        warm = air["air_temperature_c"] + p["air_offset_k"]
        vapour = air["relative_humidity"] * self.warmth.at(np.array(warm))["saturation"]
        wind = air["wind_m_s"]
        film = (5 + 4 * wind) * p["surface_factor"]
        rho = gas_density(warm, vapour)
        s["air"] = {
            "t": warm, "ground": air["ground_c"] + p["air_offset_k"], "omega": humidity(vapour), "steam": vapour_heat(warm),
            "rho": rho, "film": film, "film_moisture": (2.5 + 3.5 * wind) * p["surface_factor"] * MJ_D / AIR_HEAT,
            "wind": p["wind_exchange_per_d"] * 0.1 * rho * (0.5 + 0.4 * wind),
            "sun": 0.8 * air["solar_w_m2"] / film, "sky": 4 * (1 - air["cloud_cover"]),
        }

    def sizes(self, s):
        volume = s["volume"].reshape(-1, self.layers, self.rings).sum(2)
        base, outline = self.holder.base * self.spread**2, self.holder.outline * self.spread
        half_width = 2 * base / outline
        states = len(volume)
        if self.holder.shape == "Cone":
            total = volume.sum(1, keepdims=True)
            left = np.concatenate([np.ones((states, 1)), np.maximum(1 - np.cumsum(volume, 1) / total, 0)], 1)
            scale = np.cbrt(left)
            scale[:, -1] = 0
            thick = -np.diff(scale, axis=1) * 3 * total / base
        else:
            scale = np.ones((states, self.layers + 1))
            thick = volume / base
        narrowing = -np.diff(scale, axis=1)
        mean = (scale[:, 1:] + scale[:, :-1]) / 2
        s["level"] = base * scale**2
        s["thick"], s["ring_width"] = thick, half_width * mean / self.rings
        s["outline"] = outline * mean
        s["side_m2"] = s["outline"] * np.hypot(thick, half_width * narrowing)
        s["layer_volume"] = volume
        s["surface"] = s["side_m2"].sum(1) + s["level"][:, 0] + s["level"][:, -1]

    def conductances(self, s):
        p, air, low, high = self.p, s["air"], self.low, self.high
        layer, ring = self.layer_of[low], self.ring_of[low]
        up_layer = self.layer_of[high]
        across = s["outline"][:, layer] * self.edges[ring] * s["thick"][:, layer]
        along = s["level"][:, up_layer] * self.share[ring]
        area = np.where(self.ups, along, across)
        half_low = np.where(self.ups, s["thick"][:, layer], s["ring_width"][:, layer]) / 2
        half_high = np.where(self.ups, s["thick"][:, up_layer], s["ring_width"][:, layer]) / 2

        def link(name):
            a, b = s[name][:, low], s[name][:, high]
            return area / (half_low / a + half_high / b)

        s["l_heat"], s["l_diff"], s["l_draught"] = link("conduct"), link("diffuse"), link("permeate")
        s["l_lift"] = np.where(
            self.ups, G * ((air["rho"] - s["rho"][:, low]) * half_low + (air["rho"] - s["rho"][:, high]) * half_high), 0.0
        )

        holder, faces = self.holder, self.holder.faces()
        layer, ring = self.layer_of[self.face_cell], self.ring_of[self.face_cell]
        flank, top, bottom = (self.face_side == side for side in ("flank", "top", "bottom"))
        openness, detour, resistance, sunlit = np.array([faces[side] for side in self.face_side]).T
        area = np.where(
            flank, s["side_m2"][:, layer], np.where(top, s["level"][:, [-1]], s["level"][:, [0]]) * self.share[ring]
        )
        half = np.where(flank, s["ring_width"][:, layer], s["thick"][:, layer]) / 2
        distance = 0.6 * s["layer_volume"][:, [0]] / s["surface"][:, None] if self.lumped else half
        ground = bottom & (holder.shape != "Drum")
        film = np.where(ground, p["ground_coefficient_w_m2_k"], air["film"])
        beyond = np.where(ground, air["ground"], air["t"])
        at = {name: s[name][:, self.face_cell] for name in ("conduct", "diffuse", "permeate", "space", "rho", "moisture", "temp")}
        inner = distance * MJ_D / at["conduct"]
        if holder.heat_loss_w_per_k is None:
            heat = area * MJ_D / (1 / film + np.where(ground, 0, resistance) + inner)
        else:
            loss = holder.heat_loss_w_per_k * area / s["surface"][:, None]
            heat = loss * MJ_D if self.lumped else area * MJ_D / (area / np.maximum(loss, 1e-12) + inner)
            beyond = np.broadcast_to(air["t"], beyond.shape)
        sun = sunlit * (air["sun"] - np.where(top, air["sky"], 0))
        blown = holder.forced_air_kg_per_d is not None
        free, reached = (0.0, 0.0) if blown else (openness * area, area)
        s["f_heat"], s["f_beyond"], s["f_sun"] = heat, beyond, heat * sun
        s["f_exchange"] = reached * at["diffuse"] / (distance + detour) + free * air["wind"] * at["space"]
        s["f_draught"] = reached * at["permeate"] / (half + detour)
        s["f_lift"] = np.where(top, G * (air["rho"] - at["rho"]) * half, 0)
        s["f_skin"] = s["f_skin_omega"] = np.zeros_like(heat)
        if holder.heat_loss_w_per_k is None and holder.forced_air_kg_per_d is None:
            with np.errstate(divide="ignore", invalid="ignore"):
                share = np.minimum(np.where(area > 0, heat / (area * MJ_D * film), 0), 1)
            skin_c = beyond + (at["temp"] - beyond) * share + (1 - share) * sun
            wetness = np.clip((at["moisture"] - 0.20) / 0.25, 0, 1)
            s["f_skin"] = free * wetness / (1 / air["film_moisture"] + p["skin_m"] / at["diffuse"])
            s["f_skin_omega"] = humidity(self.warmth.at(skin_c)["saturation"])

    def held(self, s):
        """Water held against gravity: by fresh matter, humus at 0.7 of it, ash at 0.5 kg/kg."""
        humus, ash = np.maximum(s["pools"][:, HUMUS], 0), self.carried["ash_kg"]
        fresh = np.maximum(s["dry"] - ash - humus, 0)
        return self.p["field_capacity"] * (fresh + 0.7 * humus) + 0.5 * ash

    # ---- air and oxygen ---------------------------------------------------------------------

    def draught(self, s):
        forced = self.holder.forced_air_kg_per_d
        if forced is not None:
            ring = self.ring_of[self.face_cell]
            sign = np.select([self.face_side == "top", self.face_side == "bottom"], [1.0, -1.0], 0.0)
            s["l_flow"] = np.broadcast_to(np.where(self.ups, forced * self.share[self.ring_of[self.low]], 0.0), s["l_heat"].shape)
            s["f_flow"] = np.broadcast_to(sign * forced * self.share[ring], s["f_heat"].shape)
            return
        g, e = s["l_draught"], s["f_draught"] + LEAK
        matrix = np.einsum("li,bl,lj->bij", self.out, g, self.out)
        matrix += np.einsum("fi,bf,fj->bij", self.at_face, e, self.at_face)
        sources = -(g * s["l_lift"]) @ self.out - (s["f_draught"] * s["f_lift"]) @ self.at_face
        pressure = np.linalg.solve(matrix, sources[..., None])[..., 0]
        s["l_flow"] = g * (pressure @ self.out.T + s["l_lift"])
        s["f_flow"] = e * pressure[:, self.face_cell] + s["f_draught"] * s["f_lift"]

    def transport(self, s):
        """Matrix and supply of the balance of oxygen: supply - matrix y = use / 1.105."""
        lows, highs = np.maximum(self.out, 0), np.maximum(-self.out, 0)
        forward = s["l_diff"] + np.maximum(s["l_flow"], 0)
        back = s["l_diff"] + np.maximum(-s["l_flow"], 0)
        matrix = np.einsum("li,bl,lj->bij", self.out, forward, lows) - np.einsum("li,bl,lj->bij", self.out, back, highs)
        leaving = s["f_exchange"] + np.maximum(s["f_flow"], 0) + LEAK
        entering = s["f_exchange"] + np.maximum(-s["f_flow"], 0) + LEAK
        matrix += np.einsum("fi,bf,fj->bij", self.at_face, leaving, self.at_face)
        return matrix, entering @ self.at_face * OUTSIDE

    def oxygen(self, s):
        """Root of the balance within 0 and the outside air; a cell that cannot cover its least use stands at zero
        (a complementarity problem, solved by Newton's method on the cells that do not)."""
        matrix, supply = self.transport(s)
        states, n = supply.shape
        half = self.p["half_activity_oxygen"]
        y = np.full((states, n), OUTSIDE)
        eye = np.eye(n)
        for _ in range(100):
            f = y / (half + y)
            share = self.methane_share(s, f)
            capped = share >= 0.05
            per_f = s["use_f"] - METHANE_OXYGEN * share * s["carbon_freed"]
            per_f = per_f + np.where(capped, 0, METHANE_OXYGEN * f * 200 * s["wet_methane"] * (1 - f) * s["carbon_freed"])
            slope = per_f * half / (half + y) ** 2 + 0.05 / (0.05 + y) ** 2 * NIT_OXYGEN * s["nitrified"]
            lack = supply - (matrix @ y[..., None])[..., 0] - self.oxygen_use(s, y) / OXYGEN_PER_AIR
            jacobian = matrix + eye * (slope / OXYGEN_PER_AIR)[:, None, :]
            held = (y <= 0) & (lack <= 0)
            row = np.where(held[..., None], eye, jacobian)
            step = np.linalg.solve(row, np.where(held, 0, lack)[..., None])[..., 0]
            new = np.clip(y + step, 0, OUTSIDE)
            # Halve the way to zero rather than fall onto it, unless it is as good as there.
            new = np.where((new <= 0) & (y > 1e-13), y / 8, new)
            new = np.where(new < 1e-16, 0, new)
            moved = np.abs(new - y).max()
            y = new
            if moved < 1e-15:
                break
        return y

    # ---- slopes -----------------------------------------------------------------------------

    def slopes(self, t, y):
        """Slopes of quantities (states, K, cells) and of ledgers (states, 24)."""
        s = self.look(t, y)
        p = self.p
        d = np.zeros_like(y)
        book = {name: np.zeros(len(y)) for name in LEDGERS}
        oxygen = s["oxygen_y"]
        f = oxygen / (p["half_activity_oxygen"] + oxygen)
        pools = np.maximum(s["pools"], 0)
        nitrogen = np.maximum(y[:, 7:11], 0)

        # Life.
        r = {pool: f * rate for pool, rate in s["r"].items()}
        ferment = p["fermentation"] * (1 - f) * s["k"][RAPID]
        fermented = ferment * pools[:, RAPID]
        den = s["denitrified"] * (1 - f)
        breathed = den * DEN_OXYGEN / DEMAND[MODERATE]
        nit = s["nitrified"] * oxygen / (0.05 + oxygen)
        growth, to_humus = f * s["growth"], f * s["to_humus"]
        dying = s["dying"].sum(1)
        f_h = p["cells_to_humus"]
        humus_of_cells = f_h * CARBON[CELLS] / CARBON[HUMUS] * dying
        change = np.zeros_like(s["pools"])
        change[:, RAPID] = -r[RAPID] - fermented + (1 - f_h) * CARBON[CELLS] / CARBON[RAPID] * dying
        change[:, MODERATE] = -r[MODERATE] - breathed
        change[:, SLOW] = -r[SLOW]
        change[:, HUMUS] = to_humus + humus_of_cells - r[HUMUS]
        change[:, 4] = growth * s["share_m"] - s["dying"][:, 0]
        change[:, 5] = growth * (1 - s["share_m"]) - s["dying"][:, 1]
        change[:, ACIDS] = CARBON[RAPID] / CARBON[ACIDS] * fermented - r[ACIDS]
        freed = np.stack(
            [
                (f * s["k"][RAPID] + ferment) * nitrogen[:, 0],
                (f * s["k"][MODERATE] + breathed / (pools[:, MODERATE] + 1e-30)) * nitrogen[:, 1],
                f * s["k"][SLOW] * nitrogen[:, 2],
                f * s["k"][HUMUS] * nitrogen[:, 3],
            ],
            1,
        )
        of_cells = p["nitrogen_in_cells"] * dying
        to_humus_mineral = p["nitrogen_in_humus"] * s["supply"] * to_humus
        to_humus_cells = p["nitrogen_in_humus"] * humus_of_cells
        taken = p["nitrogen_in_cells"] * growth + to_humus_mineral
        taken_nitrate = (1 - s["from_ammonium"]) * taken
        d_n = -freed
        d_n[:, 0] += (1 - f_h) * of_cells
        d_n[:, 3] += to_humus_mineral + to_humus_cells
        methane = self.methane_share(s, f) * s["carbon_freed"] * f
        carbon = -np.einsum("k,bkn->bn", CARBON, change)
        used = (
            -np.einsum("k,bkn->bn", DEMAND, change) - METHANE_OXYGEN * methane + NIT_OXYGEN * nit
            - 64 / 14 * taken_nitrate - DEN_OXYGEN * den
        )
        formed = (
            -np.einsum("k,bkn->bn", FORMED, change) - 3 * methane + NIT_WATER * nit - 18 / 14 * taken_nitrate + 9 / 14 * den
        )
        heat = p["heat_of_oxygen_mj_kg"] * used
        d_dry = change.sum(1) + 17 / 14 * (d_n.sum(1) + p["nitrogen_in_cells"] * (change[:, 4] + change[:, 5]))
        matter = s["temp"] * (p["solids_heat_mj_kg_k"] * d_dry + WATER_HEAT * formed)
        d[:, :7], d[:, 7:11] = change, d_n
        d[:, Q["ammonium"]] = freed.sum(1) + f_h * of_cells - to_humus_cells - (taken - taken_nitrate) - nit
        d[:, Q["nitrate"]] = (1 - NITROUS_NIT) * nit - den - taken_nitrate
        d[:, Q["water"]] = formed
        d[:, Q["enthalpy"]] = heat + matter
        for name, value in (
            ("dioxide_carbon", carbon - methane), ("methane_carbon", methane), ("oxygen", used), ("heat", heat),
            ("nitrous_nitrogen", NITROUS_NIT * nit + NITROUS_DEN * den), ("dinitrogen", (1 - NITROUS_DEN) * den),
            ("matter_heat", matter), ("water_formed", formed),
        ):
            book[name] += value.sum(1)

        # Settling under load.
        weight = G * (s["dry"] + s["wet"]).reshape(-1, self.layers, self.rings).sum(2) * s["thick"] / s["layer_volume"]
        above = np.cumsum(weight[:, ::-1], 1)[:, ::-1] - weight / 2
        pressed = (1 + above / 2000) ** p["settling_by_load"]
        wanted = self.carried["density_fed_kg_m3"] * (1 + p["settling_by_decay"] * s["decayed"]) * pressed[:, self.layer_of]
        d[:, Q["density"]] = (wanted - s["dry"] / s["volume"]) / p["settling_time_d"]

        # Between cells.
        low, high, flow, diff = self.low, self.high, s["l_flow"], s["l_diff"]
        forward = flow > 0

        def donor(name):
            return np.where(forward, s[name][:, low], s[name][:, high])

        def fall(name):
            return s[name][:, low] - s[name][:, high]

        moist, spread = flow * donor("omega"), diff * fall("omega")
        steam = (s["steam"][:, low] + s["steam"][:, high]) / 2
        passed = {
            "water": moist + spread,
            "enthalpy": s["l_heat"] * fall("temp") + flow * AIR_HEAT * donor("temp") + moist * donor("steam") + spread * steam,
            "ammonium": flow * donor("nh3") + diff * fall("nh3"),
        }
        for name, value in passed.items():
            d[:, Q[name]] -= value @ self.out

        # Through the faces.
        air, cell, flow, exchange = s["air"], self.face_cell, s["f_flow"], s["f_exchange"]
        outward = flow > 0
        inside = {name: s[name][:, cell] for name in ("omega", "temp", "steam", "nh3", "oxygen_y")}
        moist = flow * np.where(outward, inside["omega"], air["omega"])
        swapped = exchange * (inside["omega"] - air["omega"]) + s["f_skin"] * (s["f_skin_omega"] - air["omega"])
        steam = moist * np.where(outward, inside["steam"], air["steam"]) + swapped * inside["steam"]
        warm = AIR_HEAT * (flow * np.where(outward, inside["temp"], air["t"]) + exchange * (inside["temp"] - air["t"]))
        at_skin = np.minimum(s["f_skin_omega"] / np.maximum(inside["omega"], 1e-9), 1)
        ammonia = (np.where(outward, flow, 0) + exchange + s["f_skin"] * at_skin) * inside["nh3"]
        conducted = s["f_heat"] * (inside["temp"] - s["f_beyond"])
        brought = OXYGEN_PER_AIR * (
            exchange * (OUTSIDE - inside["oxygen_y"]) - flow * np.where(outward, inside["oxygen_y"], OUTSIDE)
        )
        d[:, Q["water"]] -= (moist + swapped) @ self.at_face
        d[:, Q["ammonium"]] -= ammonia @ self.at_face
        d[:, Q["enthalpy"]] -= (steam + warm + conducted - s["f_sun"]) @ self.at_face
        for name, value in (
            ("vapour", moist + swapped), ("ammonia_nitrogen", ammonia), ("vapour_heat", steam), ("air_heat", warm),
            ("sun_heat", s["f_sun"] + 0 * warm), ("oxygen_brought", brought),
        ):
            book[name] += value.sum(1)
        for side, name in (("flank", "side"), ("top", "top"), ("bottom", "bottom")):
            book["conducted_" + name] += conducted[:, self.face_side == side].sum(1)

        # Drainage downward and rain.
        thawed = np.clip(1 + s["temp"] / FREEZE_SPAN, 0, 1)
        runs = thawed * p["drainage_per_d"] * max(self.layers / 4, 1) * np.maximum(s["water"] - self.held(s), 0)
        carried_down = {
            "water": runs, "ammonium": runs * s["ammonium"] / s["sorbed"], "potassium": runs * s["potassium"] / (s["water"] + 12.0 * s["dry"]),
            "nitrate": np.where(runs > 0, runs * s["nitrate"] / np.where(s["water"] == 0, 1, s["water"]), 0),
            "enthalpy": runs * WATER_HEAT * np.maximum(s["temp"], 0),
        }
        for name, value in carried_down.items():
            d[:, Q[name]] -= value
            d[:, Q[name], : -self.rings] += value[:, self.rings :]
            book["leached_" + {"enthalpy": "heat"}.get(name, name)] += value[:, : self.rings].sum(1)
        falling = self.rain_mm_per_d * self.holder.rain_share()
        if falling > 0:
            level = s["level"]
            area = np.zeros_like(s["dry"])
            area[:, -self.rings :] += level[:, [-1]] * self.share
            area[:, self.rings - 1 :: self.rings] += level[:, :-1] - level[:, 1:]
            taken = area * falling * (0.4 + 0.6 * np.clip((s["moisture"] - 0.15) / 0.25, 0, 1))
            warm = taken * WATER_HEAT * np.maximum(s["air"]["t"], 0)
            d[:, Q["water"]] += taken
            d[:, Q["enthalpy"]] += warm
            book["rain"] += taken.sum(1)
            book["rain_heat"] += warm.sum(1)
        return d, np.stack([book[name] for name in LEDGERS], 1)
