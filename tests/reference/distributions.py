"""Student's and the normal distribution, evaluated by scipy; a correlated pair by integrating the
conditional distribution in 20 digits (mpmath). From them what is decided beside a band.
"""

import mpmath as mp
from scipy.optimize import brentq
from scipy.stats import norm, t as student

SOURCE = "Student's and the normal distribution; a correlated normal pair by its conditional distribution"
WITH = "scipy 1.17.1, mpmath 1.4.1"
DIGITS = 12

mp.mp.dps = 20
KNOWN = 1e9


def law(nu):
    return norm if nu >= KNOWN else student(nu)


def rectangle(x, y, r):
    """P(x0 < X < x1, y0 < Y < y1) for a correlation r."""
    if abs(r) == 1:
        low, high = (y if r > 0 else (-y[1], -y[0]))
        return max(norm.cdf(min(x[1], high)) - norm.cdf(max(x[0], low)), 0.0)
    r = mp.mpf(r)
    s = mp.sqrt((1 - r) * (1 + r))

    def slice_(z):
        return mp.npdf(z) * (mp.ncdf((y[1] - r * z) / s) - mp.ncdf((y[0] - r * z) / s))

    a, b = max(x[0], -12), min(x[1], 12)
    if a >= b:
        return 0.0
    # Steps of the conditional distribution are where z crosses an edge over r.
    marks = {mp.mpf(a), mp.mpf(b)} | {mp.mpf(m) for m in range(-9, 10, 3) if a < m < b}
    if r != 0:
        marks |= {e / r + k * s / r for e in y for k in range(-9, 10, 3) if a < e / r + k * s / r < b}
    return mp.quad(slice_, sorted(marks))


def checks():
    for nu in (1, 1.1, 1.5, 2, 2.7, 3, 4, 5, 7.5, 10, 16, 16.7519, 19, 30, 100, 333.3, 1e4, 1e6, 1e8, KNOWN):
        for sure in (50, 68.27, 90, 95, 99, 99.9):
            k = law(nu).isf((100 - sure) / 200)
            yield "uncertainty.coverage_factor", {"confidence_pct": sure, "degrees_of_freedom": nu}, {
                "coverage_factor": k}, 1e-10 * k, "twelve digits, two libraries"
        if nu in (1.1, 1.5, 2.7, 4, 7.5, 16, 19, 333.3, 1e6, 1e8):
            continue
        for z in (-6, -1.96, -0.3, 0, 0.001, 0.5, 1, 2.5, 4.4, 7, 30, 500):
            # One edge lies z standard uncertainties of a half below 20, the other three of them above.
            lowest, highest = 20 - z / 2, 21.5
            if lowest >= highest:
                continue
            below, above = 100 * law(nu).sf(z), 100 * law(nu).sf(3)
            yield "decision.chances", {"value": 20, "u_value": 0.5, "nu_value": nu, "lowest": lowest, "highest": highest}, {
                "below_pct": below, "above_pct": above, "inside_pct": 100 - below - above}, 2e-10, "twelve digits"

    # A window of 1.15 to 1.45 %, every reading in it with every uncertainty.
    lowest, highest = 1.15, 1.45
    for u, nu in ((0.01, KNOWN), (0.02, KNOWN), (0.03, KNOWN), (0.075, KNOWN), (0.02, 5), (0.02, 2), (0.03, 1)):
        band = {"lowest": lowest, "highest": highest}
        for y in (1.10, 1.17, 1.20, 1.30, 1.42, 1.45, 1.48):
            below, above = law(nu).sf((y - lowest) / u), law(nu).sf((highest - y) / u)
            inside = 1 - below - above
            facts = {"value": y, "u_value": u, "nu_value": nu, **band}
            yield "decision.chances", facts, {
                "below_pct": 100 * below, "inside_pct": 100 * inside, "above_pct": 100 * above}, 1e-10, "twelve digits"
            for sure in (90, 99):
                p = sure / 100
                best = 1 - 2 * law(nu).sf((highest - lowest) / 2 / u)
                code = 1 if inside >= p else 2 if below >= p else 3 if above >= p else 5 if best < p else 4
                yield "decision.decide", {**facts, "confidence_pct": sure}, {"decision": code}, 0, "a code"
        for sure in (80, 95, 97.72):
            p = sure / 100

            def outside(g):
                return law(nu).sf(g / u) + law(nu).sf((highest - lowest - g) / u) - (1 - p)

            half = (highest - lowest) / 2
            out = {"has_acceptance": 0, "acceptance.lowest": 0, "acceptance.highest": 0}
            if outside(half) < 0:
                g = brentq(outside, 0, half, xtol=1e-15)
                out = {"has_acceptance": 1, "acceptance.lowest": lowest + g, "acceptance.highest": highest - g}
            yield "decision.acceptance", {"u_value": u, "nu_value": nu, "confidence_pct": sure, **band}, out, 1e-11, "twelve digits"
            yield "decision.largest_uncertainty", {"degrees_of_freedom": nu, "confidence_pct": sure, **band}, {
                "u": half / law(nu).isf((1 - p) / 2)}, 1e-11, "twelve digits"
        # Repeating lessens the scatter, not the rest.
        for y in (1.16, 1.40, 1.43, 1.47):
            for rest in (0.0, 0.01):
                def decided(n):
                    scatter = u / n**0.5
                    both = (scatter**2 + rest**2) ** 0.5
                    freedom = min(both**4 / (scatter**4 / nu), KNOWN) if nu < KNOWN else KNOWN
                    of = law(freedom)
                    below, above = of.sf((y - lowest) / both), of.sf((highest - y) / both)
                    return max(below, above, 1 - below - above) >= 0.95

                if rest > 0:
                    below, above = norm.sf((y - lowest) / rest), norm.sf((highest - y) / rest)
                    possible = max(below, above, 1 - below - above) >= 0.95
                else:
                    # On an edge the chance is one half, whatever the scatter.
                    possible = y not in (lowest, highest)
                enough = [n for n in range(1, 11) if decided(n)]
                code, count = (3, 0) if not possible else (1, enough[0]) if enough else (2, 0)
                yield "decision.readings_needed", {
                    "value": y, "u_scatter": u, "nu_scatter": nu, "u_rest": rest, "nu_rest": KNOWN, "confidence_pct": 95, **band}, {
                    "needed": code, "readings": count}, 0, "a code and a count"

    for first, second, u1, nu1, u2, nu2, common, nu3 in [
        (1.44, 1.38, 0.015, KNOWN, 0.015, KNOWN, 2.4, KNOWN),
        (1.44, 1.42, 0.015, 4, 0.02, 9, 2.4, 8),
        (21.2, 19.4, 0.3, 2, 0.25, 2, 0, KNOWN),
        (19.4, 21.2, 0.6, 5, 0.9, 12, 3, 10),
        (5.0, 5.0, 0.1, 3, 0.1, 3, 5, KNOWN),
        (9.0, 4.0, 0.1, KNOWN, 0.1, KNOWN, 20, 2),
    ]:
        d = first - second
        third = common / 100 * abs(d)
        u = (u1**2 + u2**2 + third**2) ** 0.5


        def freedom(u, parts):
            inverse = sum(v**4 / n for v, n in parts if n < KNOWN) / u**4
            return min(1 / inverse, KNOWN) if inverse else KNOWN

        nu = freedom(u, ((u1, nu1), (u2, nu2), (third, nu3)))
        # The sign of a difference does not hang on what multiplies both.
        own = (u1**2 + u2**2) ** 0.5
        of_own = law(freedom(own, ((u1, nu1), (u2, nu2))))
        for sure in (90, 95, 99):
            least = of_own.isf((100 - sure) / 200) * own
            yield "decision.compare", {
                "first": first, "u_first": u1, "nu_first": nu1, "second": second, "u_second": u2, "nu_second": nu2,
                "u_factor_pct": common, "nu_factor": nu3, "confidence_pct": sure}, {
                "difference": d, "u": u, "degrees_of_freedom": nu, "least": least,
                "confidence_pct": 100 * (1 - 2 * of_own.sf(abs(d) / own)), "is_real": abs(d) >= least and d != 0}, {
                "difference": 1e-11, "u": 1e-11, "degrees_of_freedom": 1e-9 * nu, "least": 1e-9, "confidence_pct": 1e-8, "is_real": 0}, (
                "twelve digits of inputs whose difference is taken")

    # Strength and yield in 1.15 to 1.45 %, 18 to 22 %.
    for t, ut, e, ue in [(1.38, 0.0183, 19.182, 0.2603507), (1.42, 0.02, 21.69, 0.31), (1.45, 0.03, 22, 0.45), (1.2, 0.3, 19, 3), (1.5, 0.02, 17.5, 0.4), (1.3, 1e-4, 21.9, 0.2)]:
        for r in (0, 0.3, 0.9770284, 0.99999, 1, -0.6):
            x = ((1.15 - t) / ut, (1.45 - t) / ut)
            y = ((18 - e) / ue, (22 - e) / ue)
            yield "decision.joint", {
                "strength_pct": t, "u_strength_pct": ut, "nu_strength": KNOWN, "yield_pct": e, "u_yield_pct": ue, "nu_yield": KNOWN,
                "correlation": r, "strength_lowest_pct": 1.15, "strength_highest_pct": 1.45, "yield_lowest_pct": 18, "yield_highest_pct": 22}, {
                "both_pct": 100 * rectangle(x, y, r)}, 1e-9, "twelve digits"
    for both, sure in (95, 95), (94.9, 95), (5.1, 95), (5, 95), (50, 50), (99.95, 99.9), (0.05, 99.9):
        # To the hundredth part of a percent, in whole numbers.
        all_of, wanted = round(100 * both), round(100 * sure)
        yield "decision.decide_joint", {"both_pct": both, "confidence_pct": sure}, {
            "decision": 1 if all_of >= wanted else 2 if 10000 - all_of >= wanted else 3}, 0, "a code"
    # With few degrees of freedom each edge goes to where a normal value is exceeded as often.
    def normal_edge(z, nu):
        return (1 if z > 0 else -1) * norm.isf(law(nu).sf(abs(z)))

    for t, ut, nt, e, ue, ne, r in [(1.42, 0.02, 2, 21.69, 0.31, 2.4, 0.97), (1.3, 0.02, 4.5, 20.2, 0.5, 12, 0.8), (1.2, 0.06, 1, 18.4, 0.9, KNOWN, -0.3), (1.46, 0.01, 30, 22.2, 0.2, 28, 0.999)]:
        x = tuple(normal_edge((edge - t) / ut, nt) for edge in (1.15, 1.45))
        y = tuple(normal_edge((edge - e) / ue, ne) for edge in (18, 22))
        yield "decision.joint", {
            "strength_pct": t, "u_strength_pct": ut, "nu_strength": nt, "yield_pct": e, "u_yield_pct": ue, "nu_yield": ne,
            "correlation": r, "strength_lowest_pct": 1.15, "strength_highest_pct": 1.45, "yield_lowest_pct": 18, "yield_highest_pct": 22}, {
            "both_pct": 100 * rectangle(x, y, r)}, 1e-8, "twelve digits, and what is rarer than 1.4e-11 counts for nothing"
