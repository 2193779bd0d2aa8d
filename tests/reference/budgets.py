"""Budgets by automatic differentiation: GTC for the values, uncertainties and degrees of freedom, the
package uncertainties beside it. The yield is the solution of the conservation equations, not a closed
form of the library. Scatter of repeats by the standard library.
"""

import math
import statistics

import GTC
import numpy as np
import uncertainties
from uncertainties import umath
from scipy.integrate import solve_ivp
from scipy.optimize import brentq
from scipy.stats import t as student

from cooling import law
from water_coolprop import enthalpy

SOURCE = "GUM propagation by automatic differentiation; conservation of water and solids; IAPWS-95"
WITH = "GTC 1.5.1, uncertainties 3.2.3, scipy 1.17.1, iapws 1.5.5, CoolProp 8.0.0"
DIGITS = 12

KNOWN = 1e9
LITRE = 0.9982065
WHY = "a few roundings of doubles, twelve digits"


def fraction(mg_per_l):
    return mg_per_l * 1e-6 / LITRE


def budget(model, inputs):
    """Value, u, degrees of freedom and contributions of a model of (value, u, nu) triples."""
    numbers = [GTC.ureal(x, u, math.inf if nu >= KNOWN else nu) for x, u, nu in inputs]
    y = model(*numbers)
    other = model(*[uncertainties.ufloat(x, u) if u else x for x, u, _ in inputs])
    assert math.isclose(GTC.value(y), uncertainties.nominal_value(other), rel_tol=1e-12)
    assert math.isclose(GTC.uncertainty(y), uncertainties.std_dev(other), rel_tol=1e-10, abs_tol=1e-15)
    nu = GTC.dof(y)
    out = {"value": GTC.value(y), "u": GTC.uncertainty(y), "degrees_of_freedom": min(nu, KNOWN) if nu == nu else KNOWN}
    parts = [abs(GTC.component(y, x)) for x in numbers]
    for at, part in enumerate(parts):
        out[f"terms.{at}.contribution"] = part
    most = max(parts)
    if most > 0:
        rest = math.fsum(p * p for p in parts) - most * most
        out |= {
            "dominant.contribution": most,
            "dominant.share_pct": 100 * most * most / (rest + most * most),
            "dominant.halved": math.sqrt(rest + most * most / 4),
        }
    return out


def tolerance(out):
    return {name: 1e-10 * abs(value) + 1e-12 for name, value in out.items()}


def facts(**triples):
    """Triples by the names of their fields, with `_u` and `_nu` before them as the formulas say it."""
    inputs = {}
    for field, (x, u, nu) in triples.items():
        bare = field
        for unit in ("_mg_per_l", "_g_per_g", "_pct", "_g"):
            bare = bare.removesuffix(unit) if bare.endswith(unit) else bare
        if x is not None:
            inputs[field] = x
        inputs[f"u_{field}"] = u
        inputs[f"nu_{bare}"] = nu
    return inputs


def mixture(**triples):
    """Triples of masses and temperatures, whose names differ by their units alone."""
    names = facts(**triples)
    for bare in ("hot", "cold"):
        names[f"nu_{bare}_mass"] = names.pop(f"nu_{bare}")
        names[f"nu_{bare}_temperature"] = names.pop(f"nu_{bare}_c")
        names[f"u_{bare}_k"] = names.pop(f"u_{bare}_c")
    return names


def triples(names, inputs):
    """Triples by names of their own."""
    return {name: part for of, triple in zip(names, inputs) for name, part in zip(of, triple)}


def by_differences(model, inputs, steps=None):
    """A budget of a model of plain numbers, its sensitivities by differences."""
    x = [value for value, _, _ in inputs]
    parts = []
    for at, (_, u, _) in enumerate(inputs):
        step = steps[at] if steps else 0.01
        up, down = ([v + (sign * step if k == at else 0) for k, v in enumerate(x)] for sign in (1, -1))
        parts.append(abs(model(*up) - model(*down)) / (2 * step) * u)
    u = math.hypot(*parts)
    inverse = sum((p / u) ** 4 / nu for p, (_, _, nu) in zip(parts, inputs) if nu < KNOWN)
    nu = min(1 / inverse, KNOWN) if inverse else KNOWN
    return {"value": model(*x), "u": u, "degrees_of_freedom": nu} | {f"terms.{k}.contribution": p for k, p in enumerate(parts)}


def near(out, value):
    """Tolerances of a value, and of what its budget says."""
    nu, u = out["degrees_of_freedom"], out["u"]
    return {"value": value, "degrees_of_freedom": 2e-3 * nu} | {k: 1e-4 * u for k in out if k not in ("value", "degrees_of_freedom")}


def extracted(t, d, w, b, h, s, v, held, span, factor):
    """Yield in percent from conservation by Cramer's rule: the dissolved x and the kept L."""
    t = t * (1 + factor / 100) / 100
    grow = 1 + span / 100
    d, w, b, h, s, held = d * grow, w * grow, b * grow, h / 100, fraction(s), held / 100
    kept = s + held * (t - s)
    # x - L = B + V - hD - W;   x - kept L = TB - sW
    right, left = b + v - h * d - w, t * b - s * w
    x = (left - kept * right) / (1 - kept)
    return 100 * x / d


# Laws of extraction as fits tell them, invented: E∞, f, τ1 and τ2, the uncertainties of E∞, f and the two
# logarithms, their correlations (E∞ f, E∞ 1, E∞ 2, f 1, f 2, 1 2), and ν.
LAWS = [
    ((20.76, 100, 53.2, 53.2), (0.12, 0, 0.02, 0), (0, 0.62, 0, 0, 0, 0), 2),
    ((21.4, 58, 4.8, 104), (0.25, 1.6, 0.05, 0.08), (-0.71, -0.45, 0.86, 0.74, -0.62, -0.4), 4),
    ((22, 40, 12, 150), (0.5, 3, 0.1, 0.12), (0, 0, 0, 0, 0, 0), KNOWN),
]
PAIRS = [(0, 1), (0, 2), (0, 3), (1, 2), (1, 3), (2, 3)]


def covariances(u, r):
    table = np.diag(np.square(u))
    for (a, b), of in zip(PAIRS, r):
        table[a, b] = table[b, a] = of * u[a] * u[b]
    return table


def laws_of_extraction():
    """Yields by correlated inputs of GTC, an ensemble of one ν; times by root finding, their slopes by differences,
    and the quadratic form of the covariances."""
    for (level, share, fast, slow), u, r, nu in LAWS:
        x = [level, share, math.log(fast), math.log(slow)]
        assert np.linalg.eigvalsh(covariances(u, r)).min() > -1e-15
        given = dict(zip(("equilibrium_yield_pct", "fast_share_pct", "fast_time_s", "slow_time_s"), (level, share, fast, slow)))
        given |= dict(zip(("u_equilibrium_yield_pct", "u_fast_share_pct", "u_ln_fast_time", "u_ln_slow_time"), u))
        given |= {f"correlation_{name}": of for name, of in zip(
            ("equilibrium_share", "equilibrium_fast", "equilibrium_slow", "share_fast", "share_slow", "fast_slow"), r)}
        given["nu_rates"] = nu

        def reached(law, t, exp):
            f, one, two = law[1] / 100, exp(law[2]), exp(law[3])
            return law[0] * (f * (1 - exp(-t / one)) + (1 - f) * (1 - exp(-t / two)))

        for t, u_t, nu_t in (45, 3, 5), (120, 3, KNOWN), (600, 0, KNOWN):
            free = GTC.multiple_ureal(x, u, math.inf if nu >= KNOWN else nu)
            for (a, b), of in zip(PAIRS, r):
                if u[a] and u[b]:
                    GTC.set_correlation(of, free[a], free[b])
            fitted = reached(free, t, GTC.exp)
            time = GTC.ureal(t, u_t, math.inf if nu_t >= KNOWN else nu_t)
            both = reached(free, time, GTC.exp)
            other = reached(uncertainties.correlated_values(x, covariances(u, r)), t, umath.exp)
            assert math.isclose(GTC.uncertainty(fitted), uncertainties.std_dev(other), rel_tol=1e-7)
            # Welch and Satterthwaite for the fit as one term and the time as another.
            parts = GTC.uncertainty(fitted), abs(GTC.component(both, time))
            all_ = math.hypot(*parts)
            inverse = sum((p / all_) ** 4 / n for p, n in zip(parts, (nu, nu_t)) if n < KNOWN)
            out = {"value": GTC.value(both), "u": all_, "degrees_of_freedom": min(1 / inverse, KNOWN) if inverse else KNOWN,
                   "terms.0.contribution": parts[0], "terms.1.contribution": parts[1]}
            assert math.isclose(GTC.uncertainty(both), all_, rel_tol=1e-9)
            yield "uncertainty.yield_at_time", {**given, "time_s": t, "u_time_s": u_t, "nu_time": nu_t}, out, {
                k: 1e-9 * abs(v) + 1e-11 for k, v in out.items()}, WHY

        for wanted in (12, 18, 20):
            def wait(*law):
                return brentq(lambda t: reached(law, t, math.exp) - wanted, 0, 20000, xtol=1e-11)

            slopes = []
            for at in range(4):
                step = 1e-4 * abs(x[at])
                up, down = ([v + (sign * step if k == at else 0) for k, v in enumerate(x)] for sign in (1, -1))
                slopes.append((wait(*up) - wait(*down)) / (2 * step))
            u_t = math.sqrt(np.array(slopes) @ covariances(u, r) @ np.array(slopes))
            out = {"value": wait(*x), "u": u_t, "degrees_of_freedom": nu, "terms.0.contribution": u_t}
            yield "uncertainty.time_for_yield", {**given, "wanted_yield_pct": wanted}, {
                k: float(f"{v:.9g}") for k, v in out.items()}, {
                k: 1e-5 * abs(v) if k != "value" else 1e-7 * v for k, v in out.items()}, "differences of a ten-thousandth"


def total(r, e, f, s, brew_water):
    x = (r + e) * (1 + f / 100)
    return x + 100 * fraction(s) * (1 - x / 100) if brew_water else x


def checks():
    zero = (None, 0.0, KNOWN)

    def error(triple):
        return (0.0, triple[1], triple[2])

    for r, e, f, s in [
        ((1.44, 0.0058, 2), (None, 0.01732, KNOWN), (None, 2.353, 8), (150, 30, KNOWN)),
        ((1.38, 0.01, 12), (None, 0.03, 50), zero, (0, 0, KNOWN)),
        ((9.2, 0.05, 3), (None, 0.06, KNOWN), (None, 4, 4), (400, 100, 5)),
        ((1.2, 0, KNOWN), zero, zero, (80, 0, KNOWN)),
    ]:
        for code, brew_water in ((1, False), (2, True)):
            out = budget(lambda *x: total(*x, brew_water), [r, error(e), error(f), s])
            yield "uncertainty.strength", {
                "zero": code, **facts(strength_pct=r, instrument_pct=e, factor_pct=f, water_solids_mg_per_l=s)}, out, tolerance(out), WHY

    # T 1.38 % from three readings on an instrument of ± 0.03 %; masses ± 0.1 g.
    limit = 0.1 / math.sqrt(3)
    read = (1.38, 0.0183, 219)
    for t, b, d, f in [
        (read, (278, limit, KNOWN), (20, limit, KNOWN), zero),
        ((1.44, 0.02, 5), (250, 0.06, 9), (18, 0.03, 4), (None, 2.353, 8)),
        ((8.9, 0.1, 3), (36.2, 0.2, KNOWN), (18.1, 0.05, KNOWN), (None, 5, 10)),
        ((1.3, 0, KNOWN), (300, 0, KNOWN), (20, 0, KNOWN), zero),
    ]:
        out = budget(lambda t, b, d, f: t * (1 + f / 100) * b / d, [t, b, d, error(f)])
        if out["u"] > 0:
            out["correlation"] = math.hypot(out["terms.0.contribution"], out["terms.3.contribution"]) / out["u"]
        yield "uncertainty.flow_through_yield", facts(strength_pct=t, beverage_g=b, dose_g=d, factor_pct=f), out, tolerance(out), WHY
        if out["u"] > 0:
            inputs = {"value": out["value"], "u_value": out["u"], "nu_value": out["degrees_of_freedom"], "confidence_pct": 95}
            half = student.isf(0.025, out["degrees_of_freedom"]) * out["u"]
            yield "uncertainty.expanded", inputs, {"half_width": half}, 1e-9, "twelve digits"
        w = (b[0] * 1.2, b[1], b[2])
        out = budget(lambda t, w, d, f: 100 * w / d * (t * (1 + f / 100) / 100) / (1 - t * (1 + f / 100) / 100), [t, w, d, error(f)])
        yield "uncertainty.steeped_yield", facts(strength_pct=t, water_g=w, dose_g=d, factor_pct=f), out, tolerance(out), WHY

    for t, d, w, b, h, s, v, held, span, factor in [
        ((1.29, 0.02, 4), (60, 0.1, 10), (1000, 1, 3), (870, 1, 5), (3, 0.5, 2), (250, 40, 6), (12, 4, 7), (35, 15, 3), (None, 0.2, 9), (None, 2, 8)),
        (read, (20, limit, KNOWN), (320, 0.5, KNOWN), (278, limit, KNOWN), (2, 1, KNOWN), (149.730975, 50, KNOWN), (3, 2, KNOWN), (0, 0, KNOWN), (None, 0.3, KNOWN), (None, 2.353, 8)),
        (read, (20, limit, KNOWN), (320, 0.5, KNOWN), (278, limit, KNOWN), (2, 1, KNOWN), (149.730975, 50, KNOWN), (3, 2, KNOWN), (100, 0, KNOWN), zero, zero),
        ((1.2, 0.02, 5), (25, 0.1, KNOWN), (375, 1, KNOWN), (340, 0.2, KNOWN), (0, 0, KNOWN), (0, 0, KNOWN), (0, 0, KNOWN), (0, 0, KNOWN), (None, 1, KNOWN), zero),
        ((7.7, 0.1, 3), (30, 0.05, KNOWN), (90, 0.2, KNOWN), (52, 0.2, KNOWN), (10, 2, KNOWN), (5000, 500, KNOWN), (4, 1, KNOWN), (66.6, 20, KNOWN), (None, 0.5, KNOWN), (None, 5, 4)),
    ]:
        inputs = [t, d, w, b, h, s, v, held, error(span), error(factor)]
        out = budget(extracted, inputs)
        out["correlation"] = math.hypot(out["terms.0.contribution"], out["terms.9.contribution"]) / out["u"]
        if h[0] == s[0] == v[0] == 0:
            out["terms.8.contribution"] = 0.0
        yield "uncertainty.extraction_yield", facts(
            strength_pct=t, dose_g=d, water_g=w, beverage_g=b, moisture_pct=h, water_solids_mg_per_l=s, vapour_g=v,
            held_strength_pct=held, span_pct=span, factor_pct=factor), out, {
            name: 1e-9 * abs(value) + 1e-11 for name, value in out.items()}, "digits lost where a span all but cancels"

    for e, d, w in [((20, 1, 5), (15, 0.06, KNOWN), (200, 0.5, KNOWN)), ((21, 0.5, KNOWN), (60, 0.1, 9), (1000, 2, 3)), ((18, 2, 2), (18, 0.1, KNOWN), (40, 1, KNOWN))]:
        out = budget(lambda e, d, w: 100 * (e / 100 * d) / (w + e / 100 * d), [e, d, w])
        yield "uncertainty.steeped_strength", facts(yield_pct=e, dose_g=d, water_g=w), out, tolerance(out), WHY

    for r, kept, other, d, w in [
        ((2.0, 0.15, 6), {"hold_up_g": 3, "paper_g": 0.5, "paper_uptake_g_per_g": 2, "drips_g": 1, "vapour_g": 2}, (None, 1.5, KNOWN), (20, 0.06, KNOWN), (320, 0.5, KNOWN)),
        ((1.5, 0.05, 3), {"hold_up_g": 0, "paper_g": 0, "paper_uptake_g_per_g": 0, "drips_g": 0, "vapour_g": 0}, zero, (15, 0.1, 4), (250, 1, 8)),
    ]:
        lost = kept["hold_up_g"] + kept["paper_g"] * kept["paper_uptake_g_per_g"] + kept["drips_g"] + kept["vapour_g"]
        out = budget(lambda w, d, r, x: w - r * d - lost - x, [w, d, r, error(other)])
        yield "uncertainty.beverage", {**kept, **facts(apparent_retention_g_per_g=r, losses_g=other, dose_g=d, water_g=w)}, out, tolerance(out), WHY

    for b, t, aim, s in [((180, 0.06, KNOWN), (1.55, 0.02, 5), 1.35, (0, 0, KNOWN)), ((45, 0.1, 9), (5.2, 0.08, 3), 1.4, (150, 40, 6)), ((300, 1, KNOWN), (1.4, 0.03, KNOWN), 1.399, (80, 20, KNOWN))]:
        out = budget(lambda b, t, s: b * (t - aim) / (aim - 100 * fraction(s)), [b, t, s])
        yield "uncertainty.water_to_reach", {"wanted_pct": aim, **facts(beverage_g=b, strength_pct=t, water_solids_mg_per_l=s)}, out, tolerance(out), WHY
    for b, t, a, s in [((180, 0.06, KNOWN), (1.55, 0.02, 5), (30, 0.06, KNOWN), (0, 0, KNOWN)), ((45, 0.1, 9), (5.2, 0.08, 3), (120, 0.5, 4), (150, 40, 6)), ((40, 1, 5), (8, 0.2, 3), (0, 0.3, 2), (80, 20, KNOWN))]:
        out = budget(lambda b, t, a, s: (t * b + 100 * fraction(s) * a) / (b + a), [b, t, a, s])
        yield "uncertainty.strength_after_water", facts(beverage_g=b, strength_pct=t, added_g=a, water_solids_mg_per_l=s), out, tolerance(out), WHY

    # The temperature of a mixture by root finding, its sensitivities by differences.
    for inputs in [
        [(45, 0.2, 5), (82, 1, 3), (120, 0.5, 9), (88, 0.5, 4)],
        [(200, 1, KNOWN), (93, 0.5, KNOWN), (50, 0.5, KNOWN), (20, 1, KNOWN)],
        [(170, 0.1, KNOWN), (70, 0.3, 8), (20, 2, KNOWN), (8, 2, KNOWN)],
    ]:
        def mixed(b, t, a, other):
            heat = (b * enthalpy(t) + a * enthalpy(other)) / (b + a)
            return brentq(lambda x: enthalpy(x) - heat, 0.0, 105.0, xtol=1e-12)

        out = by_differences(mixed, inputs)
        hot_g, hot_c, cold_g, cold_c = inputs
        yield "uncertainty.mixed_temperature", mixture(hot_g=hot_g, hot_c=hot_c, cold_g=cold_g, cold_c=cold_c), {
            k: float(f"{v:.7g}") for k, v in out.items()}, near(out, 2e-3), (
            "difference of IAPWS SR6-08 and IAPWS-95")

    # The temperature of a liquid and a body by root finding.
    for inputs in [
        [(250, 0.5, 4), (95, 0.5, KNOWN), (193, 19, 6), (21, 1, KNOWN)],
        [(40, 0.2, KNOWN), (92, 1, 3), (480, 30, 5), (88, 2, 8)],
        [(600, 2, KNOWN), (60, 0.3, 9), (90, 0, KNOWN), (-15, 1, 5)],
    ]:
        def settled(m, t, capacity, of):
            return brentq(lambda x: m * (enthalpy(x) - enthalpy(t)) + capacity * (x - of), 0.0, 105.0, xtol=1e-12)

        out = by_differences(settled, inputs)
        names = ("liquid_g", "u_liquid_g", "nu_liquid"), ("before_c", "u_before_k", "nu_before"), (
            "heat_capacity_j_per_k", "u_heat_capacity_j_per_k", "nu_heat_capacity"), ("body_c", "u_body_k", "nu_body")
        yield "uncertainty.settle", triples(names, inputs), {k: float(f"{v:.7g}") for k, v in out.items()}, near(out, 2e-3), (
            "difference of IAPWS SR6-08 and IAPWS-95")

    # Lidded, the time to cool is a logarithm; open, a quadrature over IF97's vapour pressure would be the model itself.
    for start, rate, to, room in [((82, 0.5, KNOWN), (0.0066, 0.0002, 2), 60, 17), ((95, 1, 4), (0.02, 0.004, 5), 35, 22)]:
        def wait(t, k):
            log = umath.log if hasattr(t, "nominal_value") else GTC.log
            return 60 * log((t - room) / (to - room)) / k

        out = budget(wait, [start, rate])
        names = ("water_c", "u_water_k", "nu_water"), ("cooling_per_min", "u_cooling_per_min", "nu_cooling")
        yield "uncertainty.time_to_cool", {
            **triples(names, [start, rate]), "to_c": to, "room_c": room, "humidity_pct": 50, "cover": 2}, out, {
            name: 1e-8 * abs(value) + 1e-12 for name, value in out.items()}, "the core's quadrature"

    # The temperature after a time: lidded an exponential, open by stepping the law, with differences.
    names = ("water_c", "u_water_k", "nu_water"), ("time_s", "u_time_s", "nu_time"), (
        "cooling_per_min", "u_cooling_per_min", "nu_cooling")
    for inputs, room in [
        ([(82, 0.5, KNOWN), (600, 10, KNOWN), (0.0066, 0.0002, 2)], 17),
        ([(95, 1, 4), (1500, 60, 8), (0.02, 0.004, 5)], 22),
    ]:
        def later(t, s, k):
            exp = umath.exp if any(hasattr(x, "nominal_value") for x in (t, s, k)) else GTC.exp
            return room + (t - room) * exp(-k * s / 60)

        out = budget(later, inputs)
        yield "uncertainty.temperature_after", {
            **triples(names, inputs), "room_c": room, "humidity_pct": 50, "cover": 2}, out, {
            name: 1e-8 * abs(value) + 1e-12 for name, value in out.items()}, "the core's quadrature"
    for inputs, room, humidity in [
        ([(82.3, 0.5, 5), (600, 5, KNOWN), (0.00665, 0.00016, 2)], 17, 50),
        ([(94, 1, KNOWN), (1200, 30, 6), (0.0105, 0.001, 4)], 28, 80),
    ]:
        f = law(room, humidity, True)

        def stepped(t, s, k):
            return solve_ivp(lambda _, y: [-k / 60 * f(y[0])], (0, s), [t], method="DOP853", rtol=1e-12, atol=1e-12).y[0, -1]

        out = by_differences(stepped, inputs, [x * 1e-3 for x, _, _ in inputs])
        yield "uncertainty.temperature_after", {
            **triples(names, inputs), "room_c": room, "humidity_pct": humidity, "cover": 1}, {
            k: float(f"{v:.8g}") for k, v in out.items()}, near(out, 1e-6), "stepped, differences of a thousandth"

    yield from laws_of_extraction()

    for b, k in [((1.7, 0.03, KNOWN), (0.85, 2.353, 8)), ((9.4, 0.05, 3), (1.2, 0, KNOWN)), ((1.2, 0, KNOWN), (0.9, 5, 4))]:
        out = budget(lambda b, f: k[0] * (1 + f / 100) * b, [b, (0.0, k[1], k[2])])
        names = ("brix", "u_brix", "nu_brix"), ("refractive_factor_pct_per_brix", "u_factor_pct", "nu_factor")
        yield "uncertainty.strength_of_brix", triples(names, [b, k]), out, tolerance(out), WHY

    # Readings that agree rest on earlier ones, others on their own spread.
    for readings, agree in [([1.44], True), ([1.44, 1.45], True), ([1.44, 1.39], False), ([1.44, 1.39, 1.43], False), ([1.40, 1.41, 1.42, 1.41], True)]:
        n = len(readings)
        middle = statistics.fmean(readings) if agree or n < 3 else statistics.median(readings)
        u = (0.01 if agree else statistics.stdev(readings)) / math.sqrt(n)
        yield "uncertainty.of_readings", {
            "strength_pct": readings, "repeatability_pct": 0.01, "u_repeatability_pct": 0.003, "nu_repeatability": 12}, {
            "strength_pct": middle, "u_strength_pct": u, "nu_strength": 12 if agree else n - 1}, 1e-10, WHY
    for u, nu in ([0.3, 0.4], [KNOWN, KNOWN]), ([0.01, 0.0029, 0.02], [2, KNOWN, 9]), ([0.5], [4]):
        out = budget(lambda *x: sum(x), [(0.0, *one) for one in zip(u, nu)])
        yield "uncertainty.together", {"u": u, "degrees_of_freedom": nu}, {
            name: out[name] for name in ("u", "degrees_of_freedom")}, tolerance(out)["degrees_of_freedom"], WHY

    for repeats in ([1.43, 1.45, 1.44], [1.44, 1.44], [92.8, 93.1, 93.0, 92.7], [20.01, 20.03, 19.98, 20.0, 20.02, 19.97]):
        yield "uncertainty.of_repeats", {"value": repeats}, {
            "value": statistics.fmean(repeats), "u": statistics.stdev(repeats) / math.sqrt(len(repeats)), "degrees_of_freedom": len(repeats) - 1}, 1e-10, WHY
    for s, nu, n in ([0.010, 0.014, 0.008], [4, 6, 2], 2), ([0.02], [9], 1), ([0.1, 0.12], [KNOWN, 3], 5):
        pooled = math.sqrt(sum(a * a * b for a, b in zip(s, nu)) / sum(nu))
        yield "uncertainty.pooled", {"s": s, "degrees_of_freedom": nu, "readings": n}, {
            "u": pooled / math.sqrt(n), "degrees_of_freedom": min(sum(nu), KNOWN)}, 1e-11, WHY
    # Half widths of one: the variances of the three laws, by their integrals 1/3, 1/6 and 1/2.
    for shape, variance in (1, 1 / 3), (2, 1 / 6), (3, 1 / 2):
        yield "uncertainty.of_limit", {"limit": 0.3, "shape": shape}, {"u": 0.3 * math.sqrt(variance), "degrees_of_freedom": KNOWN}, 1e-12, WHY
    yield "uncertainty.of_display", {"step": 0.01}, {"u": 0.005 / math.sqrt(3), "degrees_of_freedom": KNOWN}, 1e-12, WHY
    yield "uncertainty.of_expanded", {"expanded": 0.05, "coverage_factor": 2}, {"u": 0.025, "degrees_of_freedom": KNOWN}, 1e-15, WHY
    for doubt, nu in (25, 8), (50, 2), (10, 50), (0, KNOWN):
        yield "uncertainty.freedom_of_doubt", {"doubt_pct": doubt}, {"degrees_of_freedom": nu}, 1e-12 * nu, WHY
    # GUM G.4.1's form: a product of three, relative uncertainties 0.25, 0.57 and 0.82 %.
    out = budget(lambda a, b, c: a + b + c, [(0, 0.25, 9), (0, 0.57, 4), (0, 0.82, 14)])
    yield "uncertainty.combine", {"value": 0, "sensitivity": [1, 1, 1], "u": [0.25, 0.57, 0.82], "degrees_of_freedom": [9, 4, 14]}, out, tolerance(out), WHY
