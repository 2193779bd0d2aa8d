"""Forecasts and advice: the strength of an intended brew from conservation of water and solids, its
uncertainty by automatic differentiation (GTC), chances by quadrature of the normal density, changed
doses, waters and times by root finding, the surest strength by a bounded search.
"""

import math

import GTC
from scipy.integrate import quad
from scipy.optimize import brentq, minimize_scalar
from scipy.stats import norm
from scipy.stats import t as student

from budgets import KNOWN, budget, facts, fraction, tolerance

SOURCE = "conservation of water and solids; GUM propagation by automatic differentiation; quadrature"
WITH = "GTC 1.5.1, uncertainties 3.2.3, scipy 1.17.1"
DIGITS = 12
WHY = "a few roundings of doubles, twelve digits"

WINDOW = {"strength_lowest_pct": 1.15, "strength_highest_pct": 1.45, "has_yield": 1, "yield_lowest_pct": 18, "yield_highest_pct": 22,
          "yield_counting": 2}
BY_BALANCE = {**WINDOW, "yield_counting": 3}
NOT_STATED = {**WINDOW, "yield_counting": 1}


def brewed(d, w, e, r, other, fixed, h, s, v, held):
    """Beverage, strength of the brew and yield as the chart counts it, in g and percent."""
    s, h, held = fraction(s), h / 100, held / 100
    b = w - r * d - fixed - other
    x = e * d / 100
    # Water and solids that are not in the cup are the liquid kept: T B + [s + held (T - s)] L = x + s W.
    kept = w + h * d + x - v - b
    t = (x + s * w - s * (1 - held) * kept) / (b + held * kept)
    return b, 100 * t, 100 * t * b / d


def diluted(t, portion, added, s):
    return (t * portion + 100 * fraction(s) * added) / (portion + added)


def real(triple):
    x, u, nu = triple
    return GTC.ureal(x, u, math.inf if nu >= KNOWN else nu)


def known(y):
    nu = GTC.dof(y)
    return min(nu, KNOWN) if nu == nu else KNOWN


def edges(y, low, high):
    """The edges of a band as a standard normal value has them."""
    x, u, nu = GTC.value(y), GTC.uncertainty(y), known(y)
    law = norm if nu >= KNOWN else student(nu)
    # By the nearer tail, which keeps its digits.
    def equal(z):
        return norm.ppf(law.cdf(z)) if z < 0 else norm.isf(law.sf(z))
    return equal((low - x) / u), equal((high - x) / u)


def both(strength, counted, r, window):
    a, b = edges(strength, window["strength_lowest_pct"], window["strength_highest_pct"])
    c, d = edges(counted, window["yield_lowest_pct"], window["yield_highest_pct"])
    alone = math.sqrt(1 - r * r)

    def slice_(z):
        return norm.pdf(z) * (norm.cdf((d - r * z) / alone) - norm.cdf((c - r * z) / alone))

    points = sorted(p for p in ((c / r, d / r) if r else ()) if max(a, -9) < p < min(b, 9))
    return quad(slice_, max(a, -9.0), min(b, 9.0), epsabs=1e-13, epsrel=1e-12, limit=500, points=points or None)[0]


def outlook(size, strength, counted, window, r=None):
    r = GTC.get_correlation(strength, counted) if r is None else r
    a, b = edges(strength, window["strength_lowest_pct"], window["strength_highest_pct"])
    alone = norm.cdf(b) - norm.cdf(a)
    inside = both(strength, counted, r, window) if window["has_yield"] and window["yield_counting"] > 1 else alone
    out = {"correlation": r, "strength_inside_pct": 100 * alone, "inside_pct": 100 * inside}
    for name, unit, y in ("beverage", "g", size), ("strength", "pct", strength), ("counted_yield", "pct", counted):
        out |= {f"{name}_{unit}": GTC.value(y), f"u_{name}_{unit}": GTC.uncertainty(y), f"nu_{name}": known(y)}
    return out


CHANCE = 1e-7


def tolerances(out):
    return {k: CHANCE if "inside" in k else 1e-8 if "correlation" in k else 1e-9 * abs(v) + 1e-10 for k, v in out.items()}


INTENDED = [
    # dose, water, yield, retention, other losses, portion, addition; fixed, moisture, solids, vapour, held.
    ((13.4, 0.06, 80), (214, 2, 25), (20.8, 0.5, 14), (1.35, 0.1, 9), (None, 1, 30),
     (190, 0.1, 50), (0, 0, 40), (3, 0, 0, 2, 1), 1.8, 62, 1, 100),
    ((18, 0.06, KNOWN), (300, 2, KNOWN), (19.8, 0.5, KNOWN), (1.6, 0.1, KNOWN), (None, 1, KNOWN),
     (260, 0.1, KNOWN), (10, 1, KNOWN), (3, 0, 0, 2, 1), 1.8, 62, 1, 100),
    ((24, 0.1, 5), (230, 3, 4), (19.2, 0.8, 3), (1.5, 0.2, 6), (None, 1.5, KNOWN),
     (120, 0.5, KNOWN), (90, 1, KNOWN), (4, 0.8, 2.5, 0, 2), 2.5, 150, 2, 100),
    ((20, 0.05, KNOWN), (330, 1, KNOWN), (20, 0.4, 8), (2.05, 0.08, 5), (None, 0.5, KNOWN),
     (150, 0, KNOWN), (0, 0, KNOWN), (0, 0, 0, 1, 8), 2, 80, 8, 0),
    ((16, 0.1, KNOWN), (250, 2, KNOWN), (19.5, 0.3, KNOWN), (1.8, 0.1, KNOWN), (None, 0, KNOWN),
     (200, 1, KNOWN), (12, 1, 9), (2, 0, 0, 0, 0), 0, 0, 0, 40),
]


def case(numbers):
    d, w, e, r, other, portion, added, kept, h, s, v, held = numbers
    hold_up, paper, uptake, drips, vapour = kept
    assert vapour == v
    losses = {"hold_up_g": hold_up, "paper_g": paper, "paper_uptake_g_per_g": uptake, "drips_g": drips, "vapour_g": v}
    fixed = hold_up + paper * uptake + drips + v
    inputs = {
        **losses,
        "moisture_pct": h,
        "water_solids_mg_per_l": s,
        "held_strength_pct": held,
        **facts(dose_g=d, water_g=w, yield_pct=e, apparent_retention_g_per_g=r, losses_g=other, portion_g=portion, added_g=added),
    }
    return [d, w, e, r, (0.0, other[1], other[2]), portion, added], (fixed, h, s, v, held), inputs


# ---- Advice ----

SURE = 95


def score(suggestion):
    seen = suggestion[3]
    return seen["inside_pct"] + 0.1 * seen["strength_inside_pct"] - 10 * suggestion[4]


def lands(suggestion, alone):
    inside = suggestion[3]["inside_pct"]
    return inside >= alone[3]["inside_pct"] - 1 and inside >= 1


def advise(cup, next_, means, wanted, window):
    d, w, b, h, s, v, held, t, e = (cup[k] for k in ("d", "w", "b", "h", "s", "v", "held", "t", "e"))
    weigh = cup["weighing"]
    read, dose, size = real(t), real((d, *weigh)), real((b, *weigh))
    done = []
    by_balance = window["yield_counting"] == 3

    def balance(reading):
        kept = (w - b - v) / d
        return brentq(lambda x: brewed(d, w, x, kept, 0.0, v, h, s, v, held)[1] - reading, 1, 60, xtol=1e-13)

    def now(change, added, solids):
        water = real((added, *next_["water"])) if added else 0.0
        after = (read * size + 100 * fraction(solids) * water) / (size + water)
        counted, r = read * size / dose, None
        if by_balance:
            # They share the reading: the strength by its part in the drink, the yield by the balance.
            counted = real(e)
            slope = (balance(t[0] + 1e-4) - balance(t[0] - 1e-4)) / 2e-4
            r = GTC.component(after, read) * slope * t[1] / (GTC.uncertainty(after) * e[1])
        done.append((change, added, 0.0, outlook(size + water, after, counted, window, r), added / b, 0.0))

    now(1, 0.0, s)
    for change, solids in (2, s), (3, 0.0):
        if (change == 2 or means["milk"]) and t[0] > wanted:
            now(change, brentq(lambda a: diluted(t[0], b, a, solids) - wanted, 0, 20 * b, xtol=1e-12), solids)

    kept, fixed = (w - b - v) / d, v
    if means.get("kept"):
        kept, fixed = means["kept"][0], means["kept"][1] + v
    about = math.hypot(e[1], next_["yield"][0])
    inverse = sum((u / about) ** 4 / nu for u, nu in (e[1:], next_["yield"]) if nu < KNOWN)
    about_nu = min(1 / inverse, KNOWN) if inverse else KNOWN

    def later(change, dose_g, water_g, yield_pct, amount, before, ratio=1.0, with_dose=0.0):
        # Another ratio of dose to water extracts otherwise, by an estimate; a ratio of yields has a doubt of its own.
        apart = abs(dose_g / d - 1) + abs(water_g / w - 1)
        level = real((yield_pct, about * yield_pct / e[0], about_nu))
        by_size = GTC.ureal(0, 0.25 * apart * e[0])
        extracted = level + by_size * (yield_pct / e[0]) + (yield_pct * (ratio - 1) if GTC.uncertainty(ratio) else 0)
        inputs = [real((dose_g, *next_["dose"])), real((water_g, *next_["water"])), extracted,
                  real((kept, *next_["retention"])), real((0.0, *next_["losses"]))]
        size, strength, counted = brewed(*inputs, fixed, h, s, v, held)
        if by_balance:
            counted = extracted
        change_of = abs(amount - before) / before if before else 0.0
        if with_dose:
            change_of += abs(with_dose / d - 1)
        return change, amount, before, outlook(size, strength, counted, window), change_of, with_dose

    def strength(dose_g, water_g, yield_pct):
        return brewed(dose_g, water_g, yield_pct, kept, 0.0, fixed, h, s, v, held)[1]

    again = later(4, d, w, e[0], 0.0, 0.0)
    other = brentq(lambda x: strength(x, w, e[0]) - wanted, d / 3, 3 * d, xtol=1e-13)
    by_dose = later(5, other, w, e[0], other, d)
    other = brentq(lambda x: strength(d, x, e[0]) - wanted, w / 2, 3 * w, xtol=1e-12)
    by_water = later(6, d, other, e[0], other, w)
    singles = [one for one in (by_dose, by_water) if lands(one, again)]
    rates = means["rates"]
    together = []
    if rates:
        top, share, fast, slow = rates["law"]
        # The share and the logarithms of the times by what their errors have in common.
        free = GTC.multiple_ureal([share, math.log(fast), math.log(slow)], rates["u"], rates["nu"])
        for at, r in zip(((0, 1), (0, 2), (1, 2)), rates["r"]):
            if rates["u"][at[0]] and rates["u"][at[1]]:
                GTC.set_correlation(r, free[at[0]], free[at[1]])

        def reached(time, law=(share, math.log(fast), math.log(slow))):
            f, one, two = law[0] / 100, law[1], law[2]
            return top * (f * (1 - GTC.exp(-time / GTC.exp(one))) + (1 - f) * (1 - GTC.exp(-time / GTC.exp(two))))

        level = e[0] / reached(cup["contact"])
        low, high = window["yield_lowest_pct"], window["yield_highest_pct"]
        times, dosed_times = [], []
        for k in range(1, 8):
            aim = low + k * (high - low) / 8
            alone = brentq(lambda x: brewed(d, w, x, kept, 0.0, fixed, h, s, v, held)[2] - aim, 1, 60, xtol=1e-13)
            # C = T B/D at the strength wanted.
            other = brentq(lambda x: wanted * brewed(x, w, 20, kept, 0.0, fixed, h, s, v, held)[0] / x - aim, d / 4, 4 * d, xtol=1e-13)
            if by_balance:
                alone, other = aim, brentq(lambda x: strength(x, w, aim) - wanted, d / 4, 4 * d, xtol=1e-13)
            with_ = brentq(lambda x: strength(other, w, x) - wanted, 1, 60, xtol=1e-13)
            for goal, mass, change, listed in (alone, d, 7, times), (with_, other, 8, dosed_times):
                if level * reached(20000) <= goal:
                    continue
                time = brentq(lambda x: level * reached(x) - goal, 0, 20000, xtol=1e-11)
                ratio = reached(time, free) / reached(cup["contact"], free) / (reached(time) / reached(cup["contact"]))
                listed.append(later(change, mass, w, goal, time, cup["contact"], ratio, mass if change == 8 else 0.0))
        singles += [one for one in sorted(times, key=score)[-1:] if lands(one, again)]
        together = [one for one in sorted(dosed_times, key=score)[-1:]
                 if lands(one, again) and all(score(one) > score(other) + 1 for other in singles)]
    done = [one for one in done if one[0] == 1 or one[3]["inside_pct"] >= done[0][3]["inside_pct"] - 1]
    done += [again, *singles, *together]
    done.sort(key=lambda s: -score(s))
    counted = real(e) if by_balance else read * size / dose
    low, high = edges(counted, window["yield_lowest_pct"], window["yield_highest_pct"])
    grind = 2 if norm.cdf(low) >= SURE / 100 else 3 if norm.sf(high) >= SURE / 100 else 1 if norm.cdf(high) - norm.cdf(low) >= SURE / 100 else 4
    grind = 5 if window["yield_counting"] == 1 else grind
    out = {"grind": grind, "is_next_told": 1, "suggestion_count": len(done)}
    for at, (change, amount, before, seen, _, with_dose) in enumerate(done):
        out |= {f"suggestions.{at}.{k}": v for k, v in {"change": change, "amount": amount, "before": before, "with_dose_g": with_dose}.items()}
        out |= {f"suggestions.{at}.outlook.{k}": v for k, v in seen.items()}
    return out


CUPS = [
    # Invented: too strong; too weak and little extracted; a drip with yield to spare.
    ({"d": 14, "w": 200, "b": 178, "h": 2, "s": 0, "v": 0, "held": 100, "t": (1.5, 0.02, 15), "contact": 120},
     {"milk": True, "rates": {"law": (23, 60, 20, 150), "u": (3, 0.1, 0.2), "r": (0.5, 0.7, 0.6), "nu": 6}}),
    ({"d": 15, "w": 220, "b": 198, "h": 1.5, "s": 60, "v": 1, "held": 100, "t": (1.21, 0.025, KNOWN), "contact": 150},
     {"milk": False, "rates": None, "kept": (1.3, 2)}),
    ({"d": 20, "w": 330, "b": 290, "h": 2, "s": 90, "v": 6, "held": 0, "t": (1.52, 0.02, KNOWN), "contact": 200},
     {"milk": True, "rates": {"law": (25, 100, 90, 90), "u": (0, 0.08, 0), "r": (0, 0, 0), "nu": 4}}),
    # Little extracted, and as strong as wished.
    ({"d": 16, "w": 220, "b": 188, "h": 2, "s": 40, "v": 1, "held": 100, "t": (1.31, 0.01, KNOWN), "contact": 100},
     {"milk": False, "rates": {"law": (23, 40, 10, 120), "u": (2, 0.1, 0.05), "r": (-0.3, 0.4, 0.5), "nu": 12}}),
]
NEXT = {"dose": (0.06, 60), "water": (2, 30), "yield": (0.4, 12), "retention": (0.1, 9), "losses": (0.5, 20)}


def next_facts():
    fields = {"dose": "next_dose_g", "water": "next_water_g", "yield": "next_yield_pct", "retention": "next_retention_g_per_g", "losses": "next_losses_g"}
    return facts(**{field: (None, *NEXT[name]) for name, field in fields.items()})


# ---- Recipes ----

KITCHEN = {
    "cup_g": 190, "servings": 1, "brew_strength_pct": 2.4, "has_most_batches": 0, "most_batches": 1, "brew_c": 88, "contact_s": 120,
    "has_serve": 0, "serve_c": 60, "has_window": 1, **WINDOW,
    "held_strength_pct": 100, "apparent_retention_g_per_g": 1.4, "hold_up_g": 3, "paper_g": 0, "paper_uptake_g_per_g": 0,
    "drips_g": 1, "vapour_g": 1, "has_chamber": 0, "volume_ml": 300, "displacement_ml_per_g": 0.8, "heat_capacity_j_per_k": 90,
    "has_rinse": 0, "rinse_g": 100, "has_cooling": 0, "cooling_per_min": 0.02, "cover": 2, "pressed": 1, "glass": 0,
    "yield_pct": 21.5, "moisture_pct": 1.8, "has_caffeine": 0, "caffeine_mg_per_g": 11, "air": 2, "altitude_m": 300,
    "pressure_kpa": 98, "room_c": 20, "humidity_pct": 50, "drop_k": 1, "has_second_vessel": 0, "second_vessel_j_per_k": 100,
    "cup_j_per_k": 200, "has_cup_cooling": 0, "cup_cooling_per_min": 0.008, "water_solids_mg_per_l": 70, "added_c": 85,
}


def parts(wish):
    """Brew into the cup, water into it, and the strength of the brew."""
    if not wish["has_brew_strength"]:
        return wish["cup_g"], 0.0, wish["strength_pct"]
    s = 100 * fraction(wish["water_solids_mg_per_l"])
    strong = wish["brew_strength_pct"]
    portion = wish["cup_g"] * (wish["strength_pct"] - s) / (strong - s)
    return portion, wish["cup_g"] - portion, strong


def lost(wish):
    return wish["hold_up_g"] + wish["drips_g"] + wish["vapour_g"]


def brew_of(wish, d, w, e, r, other):
    return brewed(d, w, e, r, other, lost(wish), wish["moisture_pct"], wish["water_solids_mg_per_l"], wish["vapour_g"], wish["held_strength_pct"])


def forecast(wish, d, w, portion, added):
    inputs = [real((d, *NEXT["dose"])), real((w, *NEXT["water"])), real((wish["yield_pct"], *NEXT["yield"])),
              real((wish["apparent_retention_g_per_g"], *NEXT["retention"])), real((0.0, *NEXT["losses"]))]
    size, strength, counted = brew_of(wish, *inputs)
    water = real((added, *NEXT["water"])) if added else 0.0
    drink = diluted(strength, real((portion, *NEXT["dose"])), water, wish["water_solids_mg_per_l"]) if added else strength
    return {f"outlook.{k}": v for k, v in outlook(size, drink, counted, WINDOW).items()}


def planned(wish):
    portion, added, strong = parts(wish)

    def water(d):
        return portion + wish["apparent_retention_g_per_g"] * d + lost(wish)

    def surplus(d):
        return brew_of(wish, d, water(d), wish["yield_pct"], wish["apparent_retention_g_per_g"], 0.0)[1] - strong

    d = brentq(surplus, 0.5, 200, xtol=1e-13)
    recipe = {"recipe.dose_g": d, "recipe.water_g": water(d), "recipe.strength_pct": wish["strength_pct"]}
    counted = brew_of(wish, d, water(d), wish["yield_pct"], wish["apparent_retention_g_per_g"], 0.0)[2]
    recipe |= {"recipe.standing.yield.above_lowest": counted - WINDOW["yield_lowest_pct"]}
    return recipe, forecast(wish, d, water(d), portion, added)


def dosed(wish, recipe, drink):
    """The chance with the dose alone changed so that the drink is so strong."""
    portion, added, _ = parts(wish)
    s = 100 * fraction(wish["water_solids_mg_per_l"])
    strong = drink + (drink - s) * added / portion
    w, r = recipe["recipe.water_g"], wish["apparent_retention_g_per_g"]
    d = brentq(lambda d: brew_of(wish, d, w, wish["yield_pct"], r, 0.0)[1] - strong, 0.5, 100, xtol=1e-13)
    return forecast(wish, d, w, portion, added)["outlook.inside_pct"]


def checks():
    for numbers in INTENDED:
        inputs, rest, named = case(numbers)
        s = rest[2]

        def drink(d, w, e, r, other, portion, added):
            return diluted(brewed(d, w, e, r, other, *rest)[1], portion, added, s)

        def counted(d, w, e, r, other, portion, added):
            return brewed(d, w, e, r, other, *rest)[2] + 0 * portion + 0 * added

        for formula, model in ("forecast.strength", drink), ("forecast.counted_yield", counted):
            out = budget(model, inputs)
            yield formula, named, out, tolerance(out), WHY
        d, w, e, r, other, portion, added = (real(x) for x in inputs)
        size, strength, of_chart = brewed(d, w, e, r, other, *rest)
        for window, counted in (WINDOW, of_chart), (BY_BALANCE, e), (NOT_STATED, of_chart):
            out = outlook(size, diluted(strength, portion, added, s), counted, window)
            yield "forecast.outlook", {**named, **window}, out, tolerances(out), "quadrature to 1e-12, twelve digits"

    judged = [(*one, WINDOW) for one in CUPS] + [(*one, BY_BALANCE) for one in CUPS] + [(*CUPS[1], NOT_STATED)]
    for cup, means, window in judged:
        d, b, t = cup["d"], cup["b"], cup["t"][0]
        low, high = 5.0, 40.0

        def surplus(e):
            kept = (cup["w"] - b - cup["v"]) / d
            return brewed(d, cup["w"], e, kept, 0.0, cup["v"], cup["h"], cup["s"], cup["v"], cup["held"])[1] - t

        e = brentq(surplus, low, high, xtol=1e-13)
        # By the balance a yield is at least as uncertain as its strength makes it.
        cup = {**cup, "e": (e, 0.5 if window is BY_BALANCE else 0.3, 18), "weighing": (0.06, 50)}
        out = advise(cup, NEXT, means, 1.3, window)
        rates = means["rates"] or {"law": (22, 50, 20, 100), "u": (0, 0, 0), "r": (0, 0, 0), "nu": 5}
        kept = means.get("kept") or (1.5, 0)
        inputs = {
            "dose_g": d, "water_g": cup["w"], "beverage_g": b, "moisture_pct": cup["h"], "water_solids_mg_per_l": cup["s"],
            "vapour_g": cup["v"], "held_strength_pct": cup["held"], "contact_s": cup["contact"], "wanted_pct": 1.3, "water_c": 92,
            "has_chamber": 0, "milk": int(means["milk"]), "has_rates": int(bool(means["rates"])),
            "has_kept": int("kept" in means), "confidence_pct": SURE, **window, **next_facts(),
            **facts(strength_pct=cup["t"], yield_pct=cup["e"], weighing_g=(None, *cup["weighing"])),
            **dict(zip(("equilibrium_yield_pct", "fast_share_pct", "fast_time_s", "slow_time_s"), rates["law"])),
            **dict(zip(("u_fast_share_pct", "u_ln_fast_time", "u_ln_slow_time"), rates["u"])),
            **dict(zip(("correlation_share_fast", "correlation_share_slow", "correlation_fast_slow"), rates["r"])),
            "nu_rates": rates["nu"],
            **dict(zip(("apparent_retention_g_per_g", "hold_up_g"), kept)),
            "volume_ml": 300, "displacement_ml_per_g": 0.8,
        }
        yield "advise.on", inputs, out, {
            k: 2e-6 if "inside" in k else 1e-7 * abs(v) + 1e-8 for k, v in out.items()}, "roots to 1e-12, quadrature to 1e-12"

    for strength, added in (1.19, False), (1.30, False), (1.43, True), (1.22, True):
        wish = {**KITCHEN, "strength_pct": strength, "has_brew_strength": int(added)}
        as_wished, seen = planned(wish)
        yield "plan.foreseen", {**wish, **next_facts()}, {**as_wished, **seen}, {
            k: 2e-6 if "inside" in k else 1e-7 * abs(v) + 1e-8 for k, v in {**as_wished, **seen}.items()}, WHY
        # The likeliest strength is that of another dose at the same water; the recipe is then planned anew.
        likeliest = minimize_scalar(
            lambda t: -dosed(wish, as_wished, t), bounds=(1.15, 1.45), method="bounded", options={"xatol": 1e-6}).x
        anew, better = planned({**wish, "strength_pct": likeliest})
        gained = better["outlook.inside_pct"] - seen["outlook.inside_pct"] >= 1
        best = {**anew, **better} if gained else {**as_wished, **seen}
        # A golden section of twelve steps leaves a thousandth of a percent; the chance is flat there.
        step = 1e-3 if gained else 1e-8
        tells = ("recipe.dose_g", "recipe.water_g", "recipe.strength_pct", "outlook.strength_pct", "outlook.inside_pct")
        slack = {"recipe.dose_g": 10 * step, "recipe.water_g": 20 * step, "outlook.inside_pct": 0.02 if gained else 2e-6}
        yield "plan.surest", {**wish, **next_facts()}, {k: best[k] for k in tells}, {
            k: slack.get(k, step) for k in tells}, "golden section to a four-hundredth of the window"
