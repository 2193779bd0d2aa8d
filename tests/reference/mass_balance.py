"""The mass balance by conservation alone, solved as linear systems in 50 digits (mpmath).

Water and everything: W + D = B + L + (D - hD - x) + V, with x the dissolved coffee and L the liquid
kept. Solids: x + sW = TB + [s + phi (T - s)] L. No closed form of the library is used. Sums and
quotients of one line stand beside them, evaluated in 50 digits; so do the rates, by bisection.
"""

import itertools

import mpmath as mp

SOURCE = "conservation of water and solids, solved in 50 digits; exponentials and roots in 50 digits"
WITH = "mpmath 1.4.1"
# All that a double holds: no processor's arithmetic has a part in them.
DIGITS = 17

mp.mp.dps = 50
M = mp.mpf
# kg per litre of water at 20 °C and 0.1 MPa, as the library states it.
LITRE = M("0.9982065")


def solids(mg_per_l):
    return M(mg_per_l) * M("1e-6") / LITRE


def dissolved_and_kept(d, w, b, h, s, v, phi, t):
    """x and L from the strength."""
    # x - L = B + V - hD - W;   x - [s + phi (T - s)] L = TB - sW
    kept = s + phi * (t - s)
    a = mp.matrix([[1, -1], [1, -kept]])
    y = mp.matrix([b + v - h * d - w, t * b - s * w])
    x, l = mp.lu_solve(a, y)
    return x, l


BREWS = [
    # dose, water, beverage, moisture, solids mg/L, vapour, phi %, strength %
    (20, 320, 278, 2, 149.730975, 3, 0, 1.38),
    (20, 320, 278, 2, 149.730975, 3, 100, 1.38),
    (15, 200, 173, 0, 0, 0, 100, 1.44),
    (15, 60, 33, 0, 0, 0, 100, 6.49),
    (18, 36.5, 36, 1.5, 80, 0.5, 0, 9.2),
    (60, 1000, 870, 3, 250, 12, 35, 1.29),
    (7, 35, 25, 5, 10, 0.2, 80, 5.1),
    (12.5, 250, 221, 1, 400, 2, 50, 1.02),
    (0.2, 3.1, 2.6, 2, 60, 0, 100, 1.3),
    (4000, 70000, 61500, 2.2, 120, 800, 15, 1.18),
    (30, 90, 52, 15, 5000, 4, 66.6, 7.7),
    (25, 375, 340, 0, 0, 0, 0, 1.2),
    (0.1, 1.9, 1.7, 0, 0, 0, 0, 1.15),
    (10000, 200000, 178000, 4, 300, 2000, 60, 1.05),
]


def balance_checks():
    why = "a few roundings of doubles"
    for d, w, b, h, c, v, phi, t in BREWS:
        facts = {"dose_g": d, "water_g": w, "beverage_g": b, "moisture_pct": h,
                 "water_solids_mg_per_l": c, "vapour_g": v, "held_strength_pct": phi}
        exact = [M(repr(q)) for q in (d, w, b, h, c, v, phi, t)]
        d_, w_, b_, h_, _, v_, phi_, t_ = exact
        x, l = dissolved_and_kept(d_, w_, b_, h_ / 100, solids(exact[4]), v_, phi_ / 100, t_ / 100)
        e = 100 * x / d_
        yield "extraction.extraction_yield", {**facts, "strength_pct": t}, {"yield_pct": e}, 1e-10, why
        yield "extraction.plausibility", {**facts, "strength_pct": t}, {"yield_pct": e}, 1e-10, why
        yield "extraction.retained_liquid", {**facts, "yield_pct": e}, {"retained_g": l}, float(1e-12 * w), why
        short = float(f"{float(e):.12g}")
        yield "extraction.strength", {**facts, "yield_pct": short}, {"strength_pct": t}, 1e-10, why
        if phi < 100:
            # The beverage is the unknown; the one given is not used.
            yield "extraction.beverage", {**facts, "beverage_g": 1, "strength_pct": t, "yield_pct": short}, {
                "beverage_g": b}, float(1e-9 * b), "digits lost as 1/(1 - phi), the yield rounded to twelve"
        if h == 0 and c == 0 and v == 0:
            ratio = M(w) / M(repr(d))
            if phi == 100:
                yield "extraction.steeped_yield", {"strength_pct": t, "water_g": w, "dose_g": d}, {"yield_pct": e}, 1e-11, why
                yield "extraction.steeped_strength", {"yield_pct": short, "water_ratio_g_per_g": float(ratio)}, {
                    "strength_pct": t}, 1e-10, why
                yield "extraction.steeped_ratio", {"yield_pct": short, "strength_pct": t}, {
                    "water_ratio_g_per_g": ratio}, 1e-9, why
            else:
                yield "extraction.flow_through_yield", {"strength_pct": t, "beverage_g": b, "dose_g": d}, {
                    "yield_pct": e}, 1e-11, why
                yield "extraction.flow_through_strength", {"yield_pct": short, "beverage_g": b, "dose_g": d}, {
                    "strength_pct": t}, 1e-10, why


def chart_checks():
    """The lines of the brewing control chart at its 55 g/L: apparent retention 1.5, 2 and 2.5 g/g."""
    why = "rounding"
    for kept, e in itertools.product([1.5, 2, 2.5], [18, 20, 22]):
        # The kept liquid is plain water, so all that dissolved is in the cup.
        beverage = 1000 - M(repr(kept)) * 55
        t = e * M(55) / beverage
        yield "extraction.flow_through_strength", {"yield_pct": e, "beverage_g": beverage, "dose_g": 55}, {
            "strength_pct": t}, 1e-13, why
        yield "extraction.strength", {
            "dose_g": 55, "water_g": 1000, "beverage_g": beverage, "moisture_pct": 0, "water_solids_mg_per_l": 0,
            "vapour_g": 0, "held_strength_pct": 0, "yield_pct": e}, {"strength_pct": t}, 1e-13, why


def yield_checks():
    why = "rounding"
    for e, r, kept in [(21, r, kept) for r in (5, 10, 15, 18) for kept in (1, 1.5, 2, 2.5)] + [(17.5, 10, 1), (24, 25, 2.2)]:
        # The oven sees what did not dissolve and the solids of the kept liquid.
        t = M(e) / 100 / (r + M(e) / 100)
        residue = 1 - M(e) / 100 + t * M(repr(kept))
        yield "extraction.oven_dried_yield", {
            "yield_pct": e, "water_ratio_g_per_g": r, "true_retention_g_per_g": kept}, {
            "yield_pct": 100 * (1 - residue)}, 1e-12, why
    # The equilibrium of a full steep at the published yield of about 21 % (Liang, Chan & Ristenpart
    # 2021, doi 10.1038/s41598-021-85787-1): the coffee in all the liquid.
    for r in (5, 8, 10, 12, 15, 16, 18, 20, 25):
        coffee = M("0.21")
        yield "extraction.steeped_strength", {"yield_pct": 21, "water_ratio_g_per_g": r}, {
            "strength_pct": 100 * coffee / (r + coffee)}, 1e-12, why
    for e, h in [(19.5, 2), (21, 0), (18, 12.5)]:
        dry = 100 * (M(repr(e)) / 100) / (1 - M(repr(h)) / 100)
        yield "extraction.dry_basis_yield", {"yield_pct": e, "moisture_pct": h}, {"yield_pct": dry}, 1e-13, why
        yield "extraction.as_weighed_yield", {"yield_pct": float(dry), "moisture_pct": h}, {"yield_pct": e}, 1e-13, why
    laws = [(21, 60, 12, 150), (22.5, 100, 40, 1), (20, 0, 1, 90), (19, 35.5, 5, 1200), (21, 50, 9000, 21600)]
    for (e, f, a, b), t in itertools.product(laws, [0, 1, 60, 120, 240, 3600]):
        law = {"equilibrium_yield_pct": e, "fast_share_pct": f, "fast_time_s": a, "slow_time_s": b}
        share = M(repr(f)) / 100
        curve = lambda s: M(repr(e)) * (share * (1 - mp.exp(-s / M(a))) + (1 - share) * (1 - mp.exp(-s / M(b))))
        yield "extraction.yield_at_time", {**law, "time_s": t}, {"yield_pct": curve(M(t))}, 1e-13, why
        if t == 240:
            for part in ("0.5", "0.9"):
                goal = float(M(part) * M(repr(e)))
                low, high = M(0), M(172800)
                for _ in range(160):
                    middle = (low + high) / 2
                    low, high = (middle, high) if curve(middle) < M(repr(goal)) else (low, middle)
                root = low
                yield "extraction.time_for_yield", {**law, "yield_pct": goal}, {"time_s": root}, float(1e-11 * root), (
                    "rounding, larger where the curve is flat")


def mass_checks():
    why = "rounding"
    for d, w, b, r_extra in [(15, 200, 171.5, 2.5), (36, 600, 532, 0), (0.5, 9, 7.9, 0.1)]:
        d_, w_, b_, x_ = (M(repr(q)) for q in (d, w, b, r_extra))
        yield "ratio.water_ratio", {"dose_g": d, "water_g": w}, {"water_ratio_g_per_g": w_ / d_}, 1e-13, why
        yield "ratio.water_for_ratio", {"dose_g": d, "water_ratio_g_per_g": 16.5}, {"water_g": d_ * M("16.5")}, 1e-12, why
        yield "ratio.dose_for_water", {"water_g": w, "water_ratio_g_per_g": 16.5}, {"dose_g": w_ / M("16.5")}, 1e-12, why
        yield "ratio.beverage_ratio", {"dose_g": d, "beverage_g": b}, {"beverage_ratio_g_per_g": b_ / d_}, 1e-13, why
        yield "ratio.beverage_for_ratio", {"dose_g": d, "beverage_ratio_g_per_g": 2.2}, {"beverage_g": d_ * M("2.2")}, 1e-12, why
        yield "ratio.dose_for_beverage", {"beverage_g": b, "beverage_ratio_g_per_g": 2.2}, {"dose_g": b_ / M("2.2")}, 1e-12, why
        yield "ratio.for_servings", {"dose_g": d, "water_g": w, "servings": 3}, {"dose_g": 3 * d_, "water_g": 3 * w_}, 1e-12, why
        yield "ratio.whole_cups", {"beverage_g": b, "cup_g": 2.6}, {"servings": b_ // M("2.6")}, 0.0, "a count"
        losses = {"hold_up_g": r_extra / 5, "paper_g": r_extra / 10, "paper_uptake_g_per_g": 2, "drips_g": r_extra / 5, "vapour_g": r_extra / 5}
        kept = x_ * M("0.8")
        yield "retention.apparent_retention", {"dose_g": d, "water_g": w, "beverage_g": b}, {
            "apparent_retention_g_per_g": (w_ - b_) / d_}, 1e-12, why
        yield "retention.retention_of_brew", {**losses, "apparent_retention_g_per_g": 0, "dose_g": d, "water_g": w, "beverage_g": b}, {
            "apparent_retention_g_per_g": (w_ - b_ - kept) / d_}, 1e-12, why
        yield "retention.beverage", {**losses, "apparent_retention_g_per_g": 1.5, "dose_g": d, "water_g": w}, {
            "beverage_g": w_ - M("1.5") * d_ - kept}, 1e-12, why
        yield "retention.water_for_beverage", {**losses, "apparent_retention_g_per_g": 1.5, "dose_g": d, "beverage_g": b}, {
            "water_g": b_ + M("1.5") * d_ + kept}, 1e-12, why
        yield "retention.dose_for_beverage", {**losses, "apparent_retention_g_per_g": 1.5, "water_g": w, "beverage_g": b}, {
            "dose_g": (w_ - b_ - kept) / M("1.5")}, 1e-12, why
        # True retention is the kept liquid of the balance, per dose: x from any strength.
        x, l = dissolved_and_kept(d_, w_, b_, M("0.02"), M(0), M("0.1"), M(1), M("0.0135"))
        e = float(100 * x / d_)
        facts = {"yield_pct": e, "moisture_pct": 2, "vapour_g": 0.1, "dose_g": d}
        seen = float((w_ - b_) / d_)
        yield "retention.true_retention", {**facts, "apparent_retention_g_per_g": seen}, {
            "true_retention_g_per_g": l / d_}, 1e-12, why
        yield "retention.apparent_of_true_retention", {**facts, "true_retention_g_per_g": float(l / d_)}, {
            "apparent_retention_g_per_g": (w_ - b_) / d_}, 1e-12, why
    for w, e in [(50, 20), (60, 20), (65, 20), (70, 20), (85, 20), (66.6, 17)]:
        # A gram of wet grounds is w water and 1 - w of what did not dissolve.
        wet = M(repr(w)) / 100
        yield "retention.retention_of_spent_moisture", {"spent_moisture_pct": w, "yield_pct": e}, {
            "true_retention_g_per_g": wet * (1 - M(e) / 100) / (1 - wet)}, 1e-12, why


def dilution_checks():
    why = "rounding"
    for b, t, a, c in [(45, 5.2, 120, 0), (170, 1.44, 18.5, 150), (33, 6.49, 110, 62), (200, 1.3, 0, 400), (5000, 2.1, 2600, 85)]:
        b_, t_, a_ = (M(repr(q)) for q in (b, t, a))
        s = 100 * solids(M(repr(c)))
        after = (t_ * b_ + s * a_) / (b_ + a_)
        facts = {"strength_pct": t, "water_solids_mg_per_l": c}
        yield "dilution.strength_after_water", {**facts, "beverage_g": b, "added_g": a}, {"strength_pct": after}, 1e-13, why
        # Mass and solids of brew and water as a linear system, for the strength as rounded.
        goal = M(repr(float(after)))
        if a:
            yield "dilution.water_to_reach", {**facts, "beverage_g": b, "wanted_pct": float(goal)}, {"added_g": a_}, float(1e-11 * a), why
            yield "dilution.drink_of_brew", {**facts, "beverage_g": b, "wanted_pct": float(goal)}, {"cup_g": a_ + b_}, float(1e-11 * b), why
            brew, water = mp.lu_solve(mp.matrix([[1, 1], [t_, s]]), mp.matrix([100, 100 * goal]))
            yield "dilution.brew_for_drink", {**facts, "cup_g": 100, "wanted_pct": float(goal)}, {"beverage_g": brew}, 1e-10, why
            cups = int(b_ // brew)
            if cups:
                yield "dilution.split", {**facts, "beverage_g": b, "servings": cups, "cup_g": 100, "wanted_pct": float(goal)}, {
                    "beverage_g": brew, "added_g": water, "rest_g": b_ - cups * brew}, float(1e-11 * b + 1e-10), why
        yield "dilution.with_milk", {"beverage_g": b, "strength_pct": t, "added_g": a, "milk_solids_pct": 12.5}, {
            "beverage_g": b_ + a_, "strength_pct": t_ * b_ / (b_ + a_), "milk_solids_pct": M("12.5") * a_ / (b_ + a_)}, 1e-12, why


def other_checks():
    why = "rounding"
    for t, c in [(1.35, 150), (1.44, 62), (6.49, 400), (9.9, 0)]:
        s = solids(M(c))
        # A kilogram of beverage: coffee, and the minerals in its water.
        coffee = M(repr(t)) / 100
        total = coffee + s * (1 - coffee)
        yield "reading.total_strength", {"strength_pct": t, "zero": 2, "water_solids_mg_per_l": c}, {"strength_pct": 100 * total}, 1e-13, why
        yield "reading.coffee_strength", {"strength_pct": float(100 * total), "zero": 1, "water_solids_mg_per_l": c}, {"strength_pct": t}, 1e-12, why
    for b, k in [(1.7, 0.85), (7.6, 0.87), (0.3, 1.2)]:
        t = M(repr(b)) * M(repr(k))
        yield "reading.strength_of_brix", {"brix": b, "refractive_factor_pct_per_brix": k}, {"strength_pct": t}, 1e-13, why
        yield "reading.brix_of_strength", {"strength_pct": float(t), "refractive_factor_pct_per_brix": k}, {"brix": b}, 1e-13, why
    for m, c, f in [(240, 0.9, 100), (200, 0.84, 35), (482, 1.8, 80)]:
        yield "heat.heat_capacity", {"vessel_g": m, "specific_heat_j_per_g_k": c, "share_pct": f}, {
            "heat_capacity_j_per_k": M(m) * M(repr(c)) * M(f) / 100}, 1e-10, why
    for t, d in [(95, 1.3), (80.2, 0.4)]:
        yield "heat.after_pour", {"water_c": t, "drop_k": d}, {"water_c": M(repr(t)) - M(repr(d))}, 1e-13, why
        yield "heat.before_pour", {"water_c": t, "drop_k": d}, {"water_c": M(repr(t)) + M(repr(d))}, 1e-13, why
    for m, c, d in [(200, 210, 80), (150, 100, 70), (350, 0, 92)]:
        area = mp.pi * (M(d) / 2000) ** 2
        yield "heat.open_cup_rate_estimate", {"water_g": m, "heat_capacity_j_per_k": c, "diameter_mm": d}, {
            "cooling_per_min": 60 * 218 * area / (6 * (M("4.19") * m + c))}, 1e-15, why
    # Straight in the logarithm: halfway in temperature is the geometric mean of the times.
    burns = [(48.9, 300), (52, 90), (54.4, 30), (56.1, 15), (57, 10), (60, 5), (65, 2), (68, 1)]
    for low, high in zip(burns, burns[1:]):
        middle = (M(repr(low[0])) + M(repr(high[0]))) / 2
        time = mp.sqrt(low[1] * high[1])
        yield "caution.time_to_burn", {"water_c": middle}, {"burn": 2, "time_s": time}, float(1e-12 * time), why
    for d, c, f in [(15, 11, 100), (18, 13.5, 80)]:
        yield "caution.caffeine", {"dose_g": d, "caffeine_mg_per_g": c, "share_pct": f}, {
            "caffeine_mg": M(d) * M(repr(c)) * M(f) / 100}, 1e-10, why


def checks():
    yield from balance_checks()
    yield from chart_checks()
    yield from yield_checks()
    yield from mass_checks()
    yield from dilution_checks()
    yield from other_checks()
