"""The documented equations, in as many digits as mpmath is told to have.

Each is written from the docs of its function and from nothing else: inputs by their names, outputs by theirs.
Constants are decimals, as the docs and their sources print them. Where the library solves or integrates, so does
this, by other means: Newton's method from any start, or tanh-sinh quadrature of the equation as it stands. What
the docs leave to a rule (a median, a code) is followed by the code that was answered, and only its numbers are
measured.
"""

from mpmath import acos, atan, cos, cosh, erfc, exp, ln, mp, mpf, pi, quad, sqrt, loggamma, floor, ceil  # noqa: F401

FORMULAS = {}


def formula(name):
    def keep(function):
        FORMULAS[name] = function
        return function

    return keep


def simple(name, output, function):
    FORMULAS[name] = lambda i, o: {output: function(i)}


def d(text):
    return mpf(text)


def newton(f, slope, x, steps=60):
    """A root from a start; stops where a step is lost in rounding."""
    for _ in range(steps):
        step = f(x) / slope(x)
        x -= step
        if abs(step) <= abs(x) * mpf(10) ** (4 - mp.dps) or step == 0:
            break
    return x


# Water: IAPWS SR6-08(2011), IF97 region 4, ISO 2533.

A = {1: ("-1.661470539e5", 4), 2: ("2.708781640e6", 5), 3: ("-1.557191544e8", 7),
     6: ("6.74458446e3", 4), 7: ("-2.22521604e5", 5), 8: ("1.00231247e8", 7), 9: ("-1.63552118e9", 8), 10: ("8.32299658e9", 9)}
B = {1: ("-8.237426256e-1", 2), 2: ("1.908956353", 3), 3: ("-2.017597384", 4), 4: ("8.546361348e-1", 5),
     5: ("5.78545292e-3", 1), 6: ("-1.53195665e-2", 2), 7: ("3.11337859e-2", 3), 8: ("-4.23546241e-2", 4),
     9: ("3.38713507e-2", 5), 10: ("-1.19946761e-2", 6)}
TABLES = {}


def tables():
    """The coefficients at the present precision."""
    if mp.dps not in TABLES:
        TABLES[mp.dps] = [{k: (mpf(c), n) for k, (c, n) in of.items()} for of in (A, B)]
    return TABLES[mp.dps]


def poles(celsius):
    kelvin = celsius + d("273.15")
    return kelvin, 10 / (593 - kelvin), 10 / (kelvin - 232)


def density(celsius):
    a, b = tables()
    _, alpha, beta = poles(celsius)
    total = d("1.93763157e-2")
    total += sum(a[k][0] * alpha ** a[k][1] for k in range(6, 11)) + sum(b[k][0] * beta ** b[k][1] for k in range(5, 11))
    return 1 / (d("461.51805") * 10 / 100000 * total)


def specific_heat(celsius):
    a, b = tables()
    kelvin, alpha, beta = poles(celsius)
    tau = kelvin / 10
    hot = sum(n * (n + 1) * c * alpha ** (n + 2) for c, n in (a[k] for k in (1, 2, 3)))
    cold = sum(m * (m + 1) * c * beta ** (m + 2) for c, m in (b[k] for k in (1, 2, 3, 4)))
    return -d("461.51805") * (d("-8.983025854") + tau * hot + tau * cold) / 1000


def absolute_enthalpy(celsius):
    """g + T s with the release's logarithms left in; its c2 cancels and is taken as zero."""
    a, b = tables()
    kelvin, alpha, beta = poles(celsius)
    tau, gas, c3 = kelvin / 10, d("461.51805"), d("-8.983025854")
    gibbs = d("-2.452093414e2") + c3 * tau * ln(tau)
    entropy = c3 * (1 + ln(tau))
    for k in (1, 2, 3):
        c, n = a[k]
        gibbs += c * alpha ** n
        entropy += n * c * alpha ** (n + 1)
    for k in (1, 2, 3, 4):
        c, m = b[k]
        gibbs += c * beta ** m
        entropy -= m * c * beta ** (m + 1)
    return (gas * 10 * gibbs - kelvin * gas * entropy) / 1000


def enthalpy(celsius):
    return absolute_enthalpy(celsius) - absolute_enthalpy(mpf(0))


def balanced(water, dry, heat):
    """The temperature at which M h(t) + C t = H."""
    return newton(lambda t: water * enthalpy(t) + dry * t - heat, lambda t: water * specific_heat(t) + dry,
                  heat / (d("4.19") * water + dry))


N = [None] + ["0.11670521452767e4", "-0.72421316703206e6", "-0.17073846940092e2", "0.12020824702470e5", "-0.32325550322333e7",
              "0.14915108613530e2", "-0.48232657361591e4", "0.40511340542057e6", "-0.23855557567849", "0.65017534844798e3"]
NS = {}


def n(k):
    if (mp.dps, k) not in NS:
        NS[mp.dps, k] = mpf(N[k])
    return NS[mp.dps, k]


def vapour_pressure(celsius):
    kelvin = celsius + d("273.15")
    theta = kelvin + n(9) / (kelvin - n(10))
    a = theta ** 2 + n(1) * theta + n(2)
    b = n(3) * theta ** 2 + n(4) * theta + n(5)
    c = n(6) * theta ** 2 + n(7) * theta + n(8)
    return 1000 * (2 * c / (-b + sqrt(b ** 2 - 4 * a * c))) ** 4


def boiling_point(kilopascals):
    beta = (kilopascals / 1000) ** d("0.25")
    e = beta ** 2 + n(3) * beta + n(6)
    f = n(1) * beta ** 2 + n(4) * beta + n(7)
    g = n(2) * beta ** 2 + n(5) * beta + n(8)
    D = 2 * g / (-f - sqrt(f ** 2 - 4 * e * g))
    return (n(10) + D - sqrt((n(10) + D) ** 2 - 4 * (n(9) + n(10) * D))) / 2 - d("273.15")


def latent_heat(t):
    return d("2500.92") - d("2.37625") * t + d("5.6406e-4") * t ** 2 - d("1.25409e-5") * t ** 3


def atmosphere_exponent():
    return d("9.80665") / (d("287.05287") * d("0.0065"))


simple("water.density", "density_kg_per_m3", lambda i: density(i["water_c"]))
simple("water.specific_heat", "specific_heat_j_per_g_k", lambda i: specific_heat(i["water_c"]))
simple("water.enthalpy", "enthalpy_j_per_g", lambda i: enthalpy(i["water_c"]))
simple("water.temperature_of_enthalpy", "water_c", lambda i: balanced(mpf(1), mpf(0), i["enthalpy_j_per_g"]))
simple("water.vapour_pressure", "vapour_pressure_kpa", lambda i: vapour_pressure(i["water_c"]))
simple("water.boiling_point", "water_c", lambda i: boiling_point(i["pressure_kpa"]))
simple("water.latent_heat", "latent_heat_j_per_g", lambda i: latent_heat(i["water_c"]))
simple("water.pressure_at_altitude", "pressure_kpa",
       lambda i: d("101.325") * (1 - d("0.0065") * i["altitude_m"] / d("288.15")) ** atmosphere_exponent())
simple("water.altitude_at_pressure", "altitude_m",
       lambda i: (1 - (i["pressure_kpa"] / d("101.325")) ** (1 / atmosphere_exponent())) * d("288.15") / d("0.0065"))

# Ratios.

simple("ratio.water_ratio", "water_ratio_g_per_g", lambda i: i["water_g"] / i["dose_g"])
simple("ratio.water_for_ratio", "water_g", lambda i: i["water_ratio_g_per_g"] * i["dose_g"])
simple("ratio.dose_for_water", "dose_g", lambda i: i["water_g"] / i["water_ratio_g_per_g"])
simple("ratio.beverage_ratio", "beverage_ratio_g_per_g", lambda i: i["beverage_g"] / i["dose_g"])
simple("ratio.beverage_for_ratio", "beverage_g", lambda i: i["beverage_ratio_g_per_g"] * i["dose_g"])
simple("ratio.dose_for_beverage", "dose_g", lambda i: i["beverage_g"] / i["beverage_ratio_g_per_g"])
simple("ratio.dose_per_litre", "dose_g_per_l", lambda i: density(i["water_c"]) / i["water_ratio_g_per_g"])
simple("ratio.ratio_of_dose_per_litre", "water_ratio_g_per_g", lambda i: density(i["water_c"]) / i["dose_g_per_l"])
simple("ratio.water_mass", "water_g", lambda i: density(i["water_c"]) * i["volume_ml"] / 1000)
simple("ratio.water_volume", "volume_ml", lambda i: 1000 * i["water_g"] / density(i["water_c"]))


@formula("ratio.for_servings")
def for_servings(i, o):
    return {"dose_g": i["dose_g"] * i["servings"], "water_g": i["water_g"] * i["servings"]}


@formula("ratio.batches")
def batches(i, o):
    fill = 1000 * i["water_g"] / density(i["water_c"]) + i["displacement_ml_per_g"] * i["dose_g"]
    exact = fill / i["volume_ml"]
    # A billionth above a whole number counts as that number.
    assert exact * (1 - d("2e-9")) <= o["batches"] < exact + 1, "batches"
    return {"dose_g": i["dose_g"] / o["batches"], "water_g": i["water_g"] / o["batches"], "fill_ml": fill / o["batches"]}


@formula("ratio.largest_dose")
def largest_dose(i, o):
    per_gram = 1000 * i["water_ratio_g_per_g"] / density(i["water_c"]) + i["displacement_ml_per_g"]
    return {"dose_g": i["volume_ml"] / per_gram}


# Extraction: the mass balance.


def solids(i):
    return i["water_solids_mg_per_l"] * d("1e-6") / d("0.9982065")


def balance(i):
    """D, W, B, s, φ and hD − V."""
    D = i["dose_g"]
    return D, i["water_g"], i["beverage_g"], solids(i), i["held_strength_pct"] / 100, i["moisture_pct"] / 100 * D - i["vapour_g"]


@formula("extraction.extraction_yield")
def extraction_yield(i, o):
    D, W, B_, s, phi, wet = balance(i)
    tau, Q = i["strength_pct"] / 100 - s, W + wet - B_
    return {"yield_pct": 100 * (tau * (B_ + phi * Q) + s * wet) / (D * (1 - s - phi * tau))}


@formula("extraction.strength")
def strength(i, o):
    D, W, B_, s, phi, wet = balance(i)
    E, Q = i["yield_pct"] / 100, W + wet - B_
    tau = (E * D * (1 - s) - s * wet) / (B_ + phi * Q + phi * E * D)
    return {"strength_pct": 100 * (tau + s)}


@formula("extraction.beverage")
def beverage(i, o):
    D, W, _, s, phi, wet = balance(i)
    E, tau = i["yield_pct"] / 100, i["strength_pct"] / 100 - s
    return {"beverage_g": ((E * D * (1 - s - phi * tau) - s * wet) / tau - phi * (W + wet)) / (1 - phi)}


@formula("extraction.retained_liquid")
def retained_liquid(i, o):
    D, W, B_, _, _, wet = balance(i)
    return {"retained_g": W + wet - B_ + i["yield_pct"] / 100 * D}


simple("extraction.flow_through_yield", "yield_pct", lambda i: i["strength_pct"] * i["beverage_g"] / i["dose_g"])
simple("extraction.flow_through_strength", "strength_pct", lambda i: i["yield_pct"] * i["dose_g"] / i["beverage_g"])
simple("extraction.steeped_yield", "yield_pct",
       lambda i: 100 * i["water_g"] / i["dose_g"] * (i["strength_pct"] / 100) / (1 - i["strength_pct"] / 100))
simple("extraction.steeped_strength", "strength_pct",
       lambda i: 100 * (i["yield_pct"] / 100) / (i["water_ratio_g_per_g"] + i["yield_pct"] / 100))
simple("extraction.steeped_ratio", "water_ratio_g_per_g",
       lambda i: i["yield_pct"] / 100 * (1 - i["strength_pct"] / 100) / (i["strength_pct"] / 100))
simple("extraction.oven_dried_yield", "yield_pct",
       lambda i: i["yield_pct"] * (1 - i["true_retention_g_per_g"] / (i["water_ratio_g_per_g"] + i["yield_pct"] / 100)))
simple("extraction.dry_basis_yield", "yield_pct", lambda i: i["yield_pct"] / (1 - i["moisture_pct"] / 100))
simple("extraction.as_weighed_yield", "yield_pct", lambda i: i["yield_pct"] * (1 - i["moisture_pct"] / 100))


def kinetics(i):
    return i["equilibrium_yield_pct"], i["fast_share_pct"] / 100, i["fast_time_s"], i["slow_time_s"]


@formula("extraction.yield_at_time")
def yield_at_time(i, o):
    E, f, fast, slow = kinetics(i)
    t = i["time_s"]
    return {"yield_pct": E * (f * (1 - exp(-t / fast)) + (1 - f) * (1 - exp(-t / slow)))}


@formula("extraction.time_for_yield")
def time_for_yield(i, o):
    E, f, fast, slow = kinetics(i)
    if i["yield_pct"] == 0:
        return {"time_s": mpf(0)}
    left = lambda t: f * exp(-t / fast) + (1 - f) * exp(-t / slow)
    falls = lambda t: -(f * exp(-t / fast) / fast + (1 - f) * exp(-t / slow) / slow)
    # Newton's method on the yield itself, from below: the answer less a thousandth.
    wanted = 1 - i["yield_pct"] / E
    return {"time_s": newton(lambda t: left(t) - wanted, falls, o["time_s"] * d("0.999"))}


@formula("extraction.plausibility")
def plausibility(i, o):
    D, W, B_, s, phi, wet = balance(i)
    T, h, V = i["strength_pct"] / 100, i["moisture_pct"] / 100, i["vapour_g"]
    answers = extraction_yield(i, o)
    e = d("0.26")

    # What is linear in each symbol is zero where the straight line through two of its values is.
    def unbalanced(T=T, W=W, D=D, phi=phi):
        tau, wet = T - s, h * D - V
        return e * D * (1 - s - phi * tau) - tau * (B_ + phi * (W + wet - B_)) - s * wet

    for at, (name, scale) in enumerate([("T", 100), ("W", 1), ("D", 1), ("phi", 100)]):
        if o.get(f"doubts.{at}.has_would_have_to_be", 0) == 1:
            low, high = mpf(0), mpf(1)
            y0, y1 = unbalanced(**{name: low}), unbalanced(**{name: high})
            answers[f"doubts.{at}.would_have_to_be"] = scale * (low - y0 * (high - low) / (y1 - y0))
    return answers


# Retention.


def fixed(i):
    return i["hold_up_g"] + i["paper_g"] * i["paper_uptake_g_per_g"] + i["drips_g"] + i["vapour_g"]


simple("retention.beverage", "beverage_g",
       lambda i: i["water_g"] - i["apparent_retention_g_per_g"] * i["dose_g"] - fixed(i))
simple("retention.water_for_beverage", "water_g",
       lambda i: i["beverage_g"] + i["apparent_retention_g_per_g"] * i["dose_g"] + fixed(i))
simple("retention.dose_for_beverage", "dose_g",
       lambda i: (i["water_g"] - i["beverage_g"] - fixed(i)) / i["apparent_retention_g_per_g"])
simple("retention.retention_of_brew", "apparent_retention_g_per_g",
       lambda i: (i["water_g"] - i["beverage_g"] - fixed(i)) / i["dose_g"])
simple("retention.apparent_retention", "apparent_retention_g_per_g", lambda i: (i["water_g"] - i["beverage_g"]) / i["dose_g"])
simple("retention.true_retention", "true_retention_g_per_g",
       lambda i: i["apparent_retention_g_per_g"] + i["yield_pct"] / 100 + i["moisture_pct"] / 100 - i["vapour_g"] / i["dose_g"])
simple("retention.apparent_of_true_retention", "apparent_retention_g_per_g",
       lambda i: i["true_retention_g_per_g"] - i["yield_pct"] / 100 - i["moisture_pct"] / 100 + i["vapour_g"] / i["dose_g"])
simple("retention.retention_of_spent_moisture", "true_retention_g_per_g",
       lambda i: i["spent_moisture_pct"] / (100 - i["spent_moisture_pct"]) * (1 - i["yield_pct"] / 100))

# Dilution.

simple("dilution.strength_after_water", "strength_pct",
       lambda i: (i["strength_pct"] * i["beverage_g"] + 100 * solids(i) * i["added_g"]) / (i["beverage_g"] + i["added_g"]))
simple("dilution.water_to_reach", "added_g",
       lambda i: i["beverage_g"] * (i["strength_pct"] - i["wanted_pct"]) / (i["wanted_pct"] - 100 * solids(i))
       if i["strength_pct"] != i["wanted_pct"] else mpf(0))
simple("dilution.drink_of_brew", "cup_g",
       lambda i: i["beverage_g"] * (i["strength_pct"] - 100 * solids(i)) / (i["wanted_pct"] - 100 * solids(i))
       if i["strength_pct"] != i["wanted_pct"] else i["beverage_g"])


def brew_for_drink(i):
    if i["strength_pct"] == i["wanted_pct"]:
        return i["cup_g"]
    return i["cup_g"] * (i["wanted_pct"] - 100 * solids(i)) / (i["strength_pct"] - 100 * solids(i))


simple("dilution.brew_for_drink", "beverage_g", brew_for_drink)


@formula("dilution.split")
def split(i, o):
    each = brew_for_drink(i)
    return {"beverage_g": each, "added_g": i["cup_g"] - each, "rest_g": i["beverage_g"] - each * i["servings"]}


@formula("dilution.with_milk")
def with_milk(i, o):
    all_ = i["beverage_g"] + i["added_g"]
    return {"beverage_g": all_, "strength_pct": i["strength_pct"] * i["beverage_g"] / all_,
            "milk_solids_pct": i["milk_solids_pct"] * i["added_g"] / all_}


simple("dilution.mixed_temperature", "water_c", lambda i: balanced(
    i["hot_g"] + i["cold_g"], mpf(0), i["hot_g"] * enthalpy(i["hot_c"]) + i["cold_g"] * enthalpy(i["cold_c"])))
simple("dilution.mixed_with_milk_temperature", "water_c", lambda i: balanced(
    i["hot_g"], d("3.93") * i["cold_g"], i["hot_g"] * enthalpy(i["hot_c"]) + d("3.93") * i["cold_g"] * i["cold_c"]))


def ice_warming(t):
    return -(d("2.0967") * t + d("0.00735") * t ** 2 / 2)


@formula("dilution.iced")
def iced(i, o):
    b, m, fusion = i["beverage_g"], i["ice_g"], d("333.4265")
    heat = b * enthalpy(i["water_c"]) - m * ice_warming(i["ice_c"])
    melted = m if heat >= m * fusion else heat / fusion
    t = balanced(b + m, mpf(0), heat - m * fusion) if melted == m else mpf(0)
    return {"water_c": t, "melted_g": melted, "ice_g": m - melted, "strength_pct": i["strength_pct"] * b / (b + melted)}


@formula("dilution.ice_to_reach")
def ice_to_reach(i, o):
    end = enthalpy(i["wanted_c"])
    return {"ice_g": i["beverage_g"] * (enthalpy(i["water_c"]) - end) / (ice_warming(i["ice_c"]) + d("333.4265") + end)}


# Heat.


@formula("heat.grounds")
def grounds(i, o):
    return {"heat_capacity_j_per_k": d("1.6") * i["dose_g"], "body_c": i["grounds_c"]}


simple("heat.heat_capacity", "heat_capacity_j_per_k",
       lambda i: i["vessel_g"] * i["specific_heat_j_per_g_k"] * i["share_pct"] / 100)


def bodies(i):
    pairs = list(zip(i["heat_capacity_j_per_k"], i["body_c"]))
    return sum((c for c, _ in pairs), mpf(0)), sum((c * t for c, t in pairs), mpf(0))


@formula("heat.settle")
def settle(i, o):
    capacity, heat = bodies(i)
    return {"water_c": balanced(i["water_g"], capacity, i["water_g"] * enthalpy(i["water_c"]) + heat)}


@formula("heat.before_settling")
def before_settling(i, o):
    capacity, heat = bodies(i)
    needed = i["water_g"] * enthalpy(i["settled_c"]) + capacity * i["settled_c"] - heat
    return {"water_c": balanced(i["water_g"], mpf(0), needed)}


@formula("heat.preheated")
def preheated(i, o):
    c = i["heat_capacity_j_per_k"]
    return {"heat_capacity_j_per_k": c,
            "body_c": balanced(i["water_g"], c, i["water_g"] * enthalpy(i["water_c"]) + c * i["body_c"])}


@formula("heat.vessel_heat_capacity")
def vessel_heat_capacity(i, o):
    capacity, heat = bodies(i)
    t = i["settled_c"]
    given = i["water_g"] * (enthalpy(i["water_c"]) - enthalpy(t))
    return {"heat_capacity_j_per_k": (given - (capacity * t - heat)) / (t - i["vessel_c"])}


@formula("heat.after_vapour")
def after_vapour(i, o):
    rest, c, t0 = i["water_g"] - i["vapour_g"], i["capacity_j_per_k"], i["water_c"]
    return {"water_c": balanced(rest, c, rest * enthalpy(t0) + c * t0 - i["vapour_g"] * latent_heat(t0))}


simple("heat.after_pour", "water_c", lambda i: i["water_c"] - i["drop_k"])
simple("heat.before_pour", "water_c", lambda i: i["water_c"] + i["drop_k"])
simple("heat.reachable", "water_c", lambda i: i["water_c"])


class Law:
    """dT/dt = -k F(T), F(T) = (T − Ta) + β [p(T) − RH p(Ta)]; straight within 0.1 K of where F ends."""

    def __init__(self, i):
        self.room = i["room_c"]
        self.beta = mpf(6) if i["cover"] == 1 else mpf(0)
        self.air = i["humidity_pct"] / 100 * vapour_pressure(self.room)
        if self.beta == 0:
            self.end = self.room
        else:
            step = mpf(10) ** (-mp.dps // 3)
            slope = lambda t: (self.f(t + step) - self.f(t - step)) / (2 * step)
            self.end = newton(self.f, slope, self.room)

    def f(self, t):
        cooling = t - self.room
        return cooling + self.beta * (vapour_pressure(t) - self.air) if self.beta else cooling

    def span(self, start, to):
        if self.beta == 0:
            return ln((start - self.end) / (to - self.end))
        return quad(lambda u: exp(u) / self.f(self.end + exp(u)), [ln(to - self.end), ln(start - self.end)])


simple("heat.time_to_cool", "time_s", lambda i: 60 * Law(i).span(i["water_c"], i["to_c"]) / i["cooling_per_min"])
simple("heat.cooling_rate", "cooling_per_min", lambda i: 60 * Law(i).span(i["water_c"], i["to_c"]) / i["time_s"])


@formula("heat.temperature_after")
def temperature_after(i, o):
    law = Law(i)
    goal = i["cooling_per_min"] * i["time_s"] / 60
    straight = d("0.1")
    to_straight = law.span(i["water_c"], law.end + straight)
    if goal >= to_straight:
        rate = law.f(law.end + straight) / straight
        return {"water_c": law.end + straight * exp((to_straight - goal) * rate)}
    t = max(o["water_c"], law.end + straight)
    # Three steps of Newton's from an answer good to nine digits.
    for _ in range(3):
        t += (law.span(i["water_c"], t) - goal) * law.f(t)
    return {"water_c": t}


@formula("heat.open_cup_rate_estimate")
def open_cup_rate_estimate(i, o):
    area = pi * (i["diameter_mm"] / 2000) ** 2
    capacity = d("4.19") * i["water_g"] + i["heat_capacity_j_per_k"]
    return {"cooling_per_min": 60 * 218 * area / (6 * capacity)}


# Readings.

CRITICAL = ["2.7718", "3.3145", "3.6332", "3.8577", "4.0301", "4.1696", "4.2863", "4.3865", "4.4741"]


def mean(values):
    return sum(values, mpf(0)) / len(values)


def scatter(values):
    centre = mean(values)
    return sqrt(sum(((x - centre) ** 2 for x in values), mpf(0)) / (len(values) - 1))


@formula("reading.combine")
def combine(i, o):
    x = sorted(i["strength_pct"])
    count = len(x)
    spread = x[-1] - x[0]
    answers = {"range_pct": spread}
    if count > 1:
        answers["critical_range_pct"] = d(CRITICAL[count - 2]) * i["repeatability_pct"]
        agree = spread <= answers["critical_range_pct"] + d("1e-9")
        assert o["agreement"] == (1 if agree else 2 if count == 2 else 3), "agreement"
    middle = (x[(count - 1) // 2] + x[count // 2]) / 2
    answers["strength_pct"] = middle if o["agreement"] == 3 else mean(x)
    return answers


simple("reading.repeatability", "repeatability_pct", lambda i: scatter(i["strength_pct"]))
simple("reading.critical_range", "strength_range_pct", lambda i: d(CRITICAL[int(i["readings"]) - 2]) * i["repeatability_pct"])
simple("reading.total_strength", "strength_pct", lambda i: i["strength_pct"] if i["zero"] == 1 else
       i["strength_pct"] + 100 * solids(i) * (1 - i["strength_pct"] / 100))
simple("reading.coffee_strength", "strength_pct", lambda i: i["strength_pct"] if i["zero"] == 2 else
       100 * (i["strength_pct"] / 100 - solids(i)) / (1 - solids(i)))


def brix_of_index(index):
    y = index - d("1.33299")
    return d("700.327805") * y - d("1831.48841") * y ** 2 + d("4666.42701") * y ** 3


def brix_at_20(brix, celsius):
    D = celsius - 20
    return brix + d("0.06197413") * D + d("1.209347e-3") * D ** 2 - d("7.130168e-6") * D ** 3


simple("reading.brix_of_index", "brix", lambda i: brix_of_index(i["refractive_index"]))
simple("reading.index_of_brix", "refractive_index", lambda i: d("1.33299") + d("1.42737174e-3") * i["brix"]
       + d("5.41909447e-6") * i["brix"] ** 2 + d("1.70831402e-8") * i["brix"] ** 3)
simple("reading.brix_at_20", "brix", lambda i: brix_at_20(i["brix"], i["sample_c"]))
simple("reading.strength_of_brix", "strength_pct", lambda i: i["refractive_factor_pct_per_brix"] * i["brix"])
simple("reading.brix_of_strength", "brix", lambda i: i["strength_pct"] / i["refractive_factor_pct_per_brix"])
simple("reading.strength_of_index", "strength_pct",
       lambda i: i["refractive_factor_pct_per_brix"] * brix_at_20(brix_of_index(i["refractive_index"]), i["sample_c"]))


# Verdict and caution.


@formula("verdict.stand")
def stand(i, o):
    answers = {}
    kinds = ["strength"] + (["yield"] if i["has_yield"] == 1 else [])
    for kind in kinds:
        value, low, high = i[f"{kind}_pct"], i[f"{kind}_lowest_pct"], i[f"{kind}_highest_pct"]
        answers[f"{kind}.above_lowest"] = value - low
        answers[f"{kind}.below_highest"] = high - value
        answers[f"{kind}.above_centre"] = value - (low + high) / 2
        assert o[f"{kind}.side"] == (1 if value < low else 3 if value > high else 2), "side"
    return answers


BURNS = [("48.9", 300), ("52", 90), ("54.4", 30), ("56.1", 15), ("57", 10), ("60", 5), ("65", 2), ("68", 1)]


@formula("caution.time_to_burn")
def time_to_burn(i, o):
    t = i["water_c"]
    if o["burn"] != 2:
        assert (t < d("48.9001")) if o["burn"] == 1 else (t > d("67.9999")), "burn"
        return {}
    points = [(d(c), mpf(s)) for c, s in BURNS]
    # At its ends a straight piece goes on: the printed temperatures are not doubles.
    at = max([0] + [k for k in range(len(points) - 1) if points[k][0] <= t])
    (t0, s0), (t1, s1) = points[at], points[at + 1]
    return {"time_s": exp(ln(s0) + (t - t0) / (t1 - t0) * (ln(s1) - ln(s0)))}


simple("caution.caffeine", "caffeine_mg", lambda i: i["dose_g"] * i["caffeine_mg_per_g"] * i["share_pct"] / 100)

# Uncertainty and decisions.

KNOWN = 10 ** 9


def density_of_t(t, nu):
    if nu >= KNOWN:
        return exp(-t ** 2 / 2) / sqrt(2 * pi)
    return exp(loggamma((nu + 1) / 2) - loggamma(nu / 2)) / sqrt(nu * pi) * (1 + t ** 2 / nu) ** (-(nu + 1) / 2)


def tail(t, nu):
    """P(T > t): half less the integral of cos^(ν−1) over the angle of which t/√ν is the tangent."""
    if nu >= KNOWN:
        return erfc(t / sqrt(mpf(2))) / 2
    if t < 0:
        return 1 - tail(-t, nu)
    angle = atan(t / sqrt(nu))
    scale = exp(loggamma((nu + 1) / 2) - loggamma(nu / 2)) / sqrt(pi)
    if t > 3 or nu < 4:
        # Beyond t, the angle left over: no digits are lost.
        left = atan(sqrt(nu) / t) if t > 0 else pi / 2
        edge = min(left, 40 / sqrt(nu) if nu > 4 else left)
        if left > edge or nu > 100:
            ends = [angle + k * (min(pi / 2, angle + 12 / sqrt(nu)) - angle) / 4 for k in range(5)]
            ends += [pi / 2] if ends[-1] < pi / 2 else []
            return scale * quad(lambda a: cos(a) ** (nu - 1), ends)
        from mpmath import sin
        return scale * quad(lambda a: sin(a) ** (nu - 1), [0, left])
    return mpf(1) / 2 - scale * quad(lambda a: cos(a) ** (nu - 1), [0, angle / 2, angle])


def quantile(one_sided, nu, start):
    """From an answer good to ten digits, two of Newton's steps on the logarithm of the tail."""
    t = start
    for _ in range(2):
        if t == 0:
            return t
        there = tail(t, nu)
        t += ln(there / one_sided) * there / density_of_t(t, nu)
    return t


@formula("uncertainty.coverage_factor")
def coverage_factor(i, o):
    return {"coverage_factor": quantile((100 - i["confidence_pct"]) / 200, i["degrees_of_freedom"], o["coverage_factor"])}


@formula("uncertainty.expanded")
def expanded(i, o):
    k = quantile((100 - i["confidence_pct"]) / 200, i["nu_value"], o["coverage_factor"])
    return {"coverage_factor": k, "half_width": k * i["u_value"]}


def at_most_known(nu):
    return min(max(nu, mpf(1)), mpf(KNOWN))


def together(us, nus):
    variance = sum((u ** 2 for u in us), mpf(0))
    if variance == 0:
        return mpf(0), None
    return sqrt(variance), at_most_known(variance ** 2 / sum((u ** 4 / nu for u, nu in zip(us, nus) if nu < KNOWN), mpf(0))
                                         if any(nu < KNOWN and u > 0 for u, nu in zip(us, nus)) else mpf(KNOWN))


def measured(u, nu):
    return {"u": u} if nu is None else {"u": u, "degrees_of_freedom": nu}


@formula("uncertainty.of_repeats")
def of_repeats(i, o):
    x = i["value"]
    return {"value": mean(x), "u": scatter(x) / sqrt(mpf(len(x))), "degrees_of_freedom": mpf(len(x) - 1)}


@formula("uncertainty.pooled")
def pooled(i, o):
    pairs = list(zip(i["s"], i["degrees_of_freedom"]))
    nu = sum((v for _, v in pairs), mpf(0))
    return {"u": sqrt(sum((v * s ** 2 for s, v in pairs), mpf(0)) / nu / i["readings"]), "degrees_of_freedom": at_most_known(nu)}


@formula("uncertainty.together")
def together_(i, o):
    return measured(*together(i["u"], i["degrees_of_freedom"]))


simple("uncertainty.of_limit", "u", lambda i: i["limit"] / sqrt(mpf({1: 3, 2: 6, 3: 2}[int(i["shape"])])))
simple("uncertainty.of_display", "u", lambda i: i["step"] / sqrt(mpf(12)))
simple("uncertainty.of_expanded", "u", lambda i: i["expanded"] / i["coverage_factor"])
simple("uncertainty.freedom_of_doubt", "degrees_of_freedom",
       lambda i: at_most_known(1 / (i["doubt_pct"] / 100) ** 2 / 2) if i["doubt_pct"] > 0 else mpf(KNOWN))


@formula("uncertainty.combine")
def combine_budget(i, o):
    c = [abs(a) * u for a, u in zip(i["sensitivity"], i["u"])]
    u, nu = together(c, i["degrees_of_freedom"])
    answers = {"u": u} | ({"degrees_of_freedom": nu} if nu is not None else {})
    for at, contribution in enumerate(c):
        answers[f"terms.{at}.contribution"] = contribution
    if o["has_dominant"] == 1:
        most = max(c)
        answers["dominant.contribution"] = most
        answers["dominant.share_pct"] = 100 * most ** 2 / u ** 2
        at = c.index(most)
        others = sum((x ** 2 for k, x in enumerate(c) if k != at), mpf(0))
        answers["dominant.halved"] = sqrt(others + most ** 2 / 4)
        answers["dominant.gone"] = sqrt(others)
    return answers


def beside(value, u, nu, low, high):
    """P(below) and P(above), in percent."""
    if u == 0:
        return (100 * mpf(value < low), 100 * mpf(value > high))
    return 100 * tail((value - low) / u, nu), 100 * tail((high - value) / u, nu)


@formula("decision.chances")
def chances(i, o):
    below, above = beside(i["value"], i["u_value"], i["nu_value"], i["lowest"], i["highest"])
    return {"below_pct": below, "inside_pct": 100 - below - above, "above_pct": above}


@formula("decision.largest_uncertainty")
def largest_uncertainty(i, o):
    width = i["highest"] - i["lowest"]
    k = quantile((100 - i["confidence_pct"]) / 200, i["degrees_of_freedom"], width / 2 / o["u"] if o["u"] else mpf(0))
    return {"u": width / 2 / k} if k else {}


@formula("decision.compare")
def compare(i, o):
    difference = i["first"] - i["second"]
    own, nu = together([i["u_first"], i["u_second"]], [i["nu_first"], i["nu_second"]])
    u, all_nu = together([i["u_first"], i["u_second"], i["u_factor_pct"] / 100 * abs(difference)],
                         [i["nu_first"], i["nu_second"], i["nu_factor"]])
    answers = {"difference": difference} | measured(u, all_nu)
    if own and difference:
        k = quantile((100 - i["confidence_pct"]) / 200, nu, o["least"] / own)
        answers["least"] = k * own
        answers["confidence_pct"] = 100 * (1 - 2 * tail(abs(difference) / own, nu))
    return answers


@formula("decision.joint")
def joint(i, o):
    answers, edges = {}, []
    for kind in ("strength", "yield"):
        value, u, nu = i[f"{kind}_pct"], i[f"u_{kind}_pct"], i[f"nu_{kind}"]
        low, high = i[f"{kind}_lowest_pct"], i[f"{kind}_highest_pct"]
        below, above = beside(value, u, nu, low, high)
        answers[f"{kind}.below_pct"], answers[f"{kind}.above_pct"] = below, above
        answers[f"{kind}.inside_pct"] = 100 - below - above
        edges.append((normal_of(below / 100), -normal_of(above / 100)))
    r = i["correlation"]
    (h1, h2), (k1, k2) = edges
    apart = sqrt(1 - r ** 2)
    phi = lambda x: exp(-x ** 2 / 2) / sqrt(2 * pi)
    below = lambda z: erfc(-z / sqrt(mpf(2))) / 2
    far = mpf(14)
    low, high = max(h1, -far), min(h2, far)
    if low >= high:
        return answers
    if apart == 0:
        k1, k2 = (k1, k2) if r > 0 else (-k2, -k1)
        low, high = max(low, k1), min(high, k2)
        answers["both_pct"] = 100 * (below(high) - below(low)) if high > low else mpf(0)
        return answers
    # Steps of the inner probability are where the density is cut.
    cuts = sorted({low, high, *(low + (high - low) * k / 8 for k in range(1, 8)), *(
        x for k in (k1, k2) if r for w in (-8, -2, 0, 2, 8) for x in [(k + w * apart) / r] if low < x < high)})
    both = quad(lambda x: phi(x) * (below((k2 - r * x) / apart) - below((k1 - r * x) / apart)), cuts)
    answers["both_pct"] = 100 * both
    return answers


def normal_of(probability):
    """The normal value below which a probability lies; what is beyond 40 counts for nothing."""
    if probability <= mpf(10) ** -300:
        return mpf(-40)
    if probability >= 1 - mpf(10) ** -(mp.dps - 5):
        return mpf(40)
    if probability > mpf(1) / 2:
        return -normal_of(1 - probability)
    z = -sqrt(-2 * ln(2 * probability)) if probability < mpf("0.4") else (probability - mpf(1) / 2) * sqrt(2 * pi)
    for _ in range(60):
        there = erfc(-z / sqrt(mpf(2))) / 2
        step = ln(there / probability) * there * sqrt(2 * pi) * exp(z ** 2 / 2)
        z -= step
        if abs(step) < mpf(10) ** (6 - mp.dps) * max(1, abs(z)):
            break
    return z


@formula("decision.acceptance")
def acceptance(i, o):
    if o["has_acceptance"] != 1 or i["u_value"] == 0:
        return {}
    u, nu, low, high = i["u_value"], i["nu_value"], i["lowest"], i["highest"]
    width, allowed = high - low, 1 - i["confidence_pct"] / 100
    g = o["acceptance.lowest"] - low
    # Where it is had nowhere but in the middle the root is double, and its digits are half.
    if g > width * d("0.499") or g == 0:
        return {}
    # The sum of tails is convex and falls: from the left, and the normal value lies there.
    g = min(g, -u * normal_of(allowed))
    for _ in range(60):
        near, far = tail(g / u, nu), tail((width - g) / u, nu)
        step = (near + far - allowed) * u / (density_of_t(g / u, nu) - density_of_t((width - g) / u, nu))
        g += step
        if abs(step) < max(abs(low), abs(high)) * mpf(10) ** -22:
            break
    return {"acceptance.lowest": low + g, "acceptance.highest": high - g}
