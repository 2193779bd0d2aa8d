"""Heat balances with the enthalpy of IAPWS-95 (CoolProp), by root finding (scipy); and what depends
on the density of water. The heat content of ice is its specific heat, integrated numerically.
"""

from CoolProp.CoolProp import PropsSI
from scipy.integrate import quad
from scipy.optimize import brentq

from water_coolprop import enthalpy, liquid

SOURCE = "first law with IAPWS-95 enthalpy and IAPWS R10-06 heat of fusion"
WITH = "CoolProp 8.0.0, scipy 1.17.1"
DIGITS = 9

# Two enthalpies each up to 0.005 J/g off, over 4.2 J/(g K).
BETWEEN_EQUATIONS = "difference of IAPWS SR6-08 and IAPWS-95"
KELVIN = 2e-3
FUSION = 333.4265


def settled(mass, t0, capacities, temperatures):
    def left_over(t):
        given = mass * (enthalpy(t0) - enthalpy(t))
        return given - sum(c * (t - ti) for c, ti in zip(capacities, temperatures))

    return brentq(left_over, 0.0, 105.0, xtol=1e-12, rtol=1e-14)


def ice_warming(celsius):
    return quad(lambda t: 2.0967 + 0.00735 * t, celsius, 0.0)[0]


def checks():
    walks = [
        (250.0, 95.0, [25.6], [21.0]),
        (250.0, 95.0, [25.6, 168.0], [21.0, 21.0]),
        (250.0, 95.0, [25.6, 336.0], [21.0, 21.0]),
        (340.0, 100.0, [433.8], [18.0]),
        (60.0, 92.0, [24.0, 95.0], [18.0, 78.0]),
        (1000.0, 20.0, [500.0], [95.0]),
        (200.0, 93.0, [], []),
        (756.0, 98.2, [180.0], [11.0]),
        (30.0, 5.0, [10.0], [-40.0]),
        (3.0, 102.0, [1.0, 2.0, 0.0], [0.0, 105.0, 50.0]),
        (0.1, 90.0, [0.3], [20.0]),
        (150000.0, 96.0, [60000.0], [15.0]),
    ]
    for mass, t0, capacities, temperatures in walks:
        t = settled(mass, t0, capacities, temperatures)
        bodies = {"heat_capacity_j_per_k": capacities, "body_c": temperatures}
        yield "heat.settle", {"water_g": mass, "water_c": t0, **bodies}, {"water_c": t}, KELVIN, BETWEEN_EQUATIONS
        # The shift is amplified by the share of heat that the bodies take.
        gain = 1 + sum(capacities) / (4.19 * mass)
        yield "heat.before_settling", {"water_g": mass, "settled_c": t, **bodies}, {"water_c": t0}, KELVIN * gain, BETWEEN_EQUATIONS
        if len(capacities) == 1 and capacities[0] > 50:
            vessel = {"heat_capacity_j_per_k": capacities[0], "body_c": temperatures[0]}
            yield "heat.preheated", {**vessel, "water_g": mass, "water_c": t0}, {"body_c": t}, KELVIN, BETWEEN_EQUATIONS
            yield "heat.vessel_heat_capacity", {"water_g": mass, "water_c": t0, "settled_c": t, "vessel_c": temperatures[0]}, {
                "heat_capacity_j_per_k": capacities[0]}, 0.01 * mass / abs(t - temperatures[0]), (
                "enthalpies 0.01 J/g apart, over the vessel's warming")
    # Vapour leaves with its latent heat, and the rest pays.
    for mass, t0, vapour, capacity in [(250.0, 92.0, 1.0, 0.0), (756.0, 89.8, 8.0, 178.0), (215.0, 89.3, 1.0, 118.0), (60.0, 83.0, 0.0, 95.0)]:
        latent = (PropsSI("H", "T", 273.15 + t0, "Q", 1, "Water") - PropsSI("H", "T", 273.15 + t0, "Q", 0, "Water")) / 1000
        rest = mass - vapour
        t = brentq(lambda x: rest * (enthalpy(t0) - enthalpy(x)) + capacity * (t0 - x) - vapour * latent, 0.0, 105.0, xtol=1e-12)
        yield "heat.after_vapour", {"water_g": mass, "water_c": t0, "vapour_g": vapour, "capacity_j_per_k": capacity}, {
            "water_c": t}, KELVIN, BETWEEN_EQUATIONS
    for hot, th, cold, tc in [(45.0, 82.0, 120.0, 88.0), (170.0, 70.0, 18.5, 8.0), (100.0, 100.0, 100.0, 0.0), (200.0, 60.0, 0.0, 20.0)]:
        mean = (hot * enthalpy(th) + cold * enthalpy(tc)) / (hot + cold)
        t = brentq(lambda x: enthalpy(x) - mean, 0.0, 105.0, xtol=1e-12)
        inputs = {"hot_g": hot, "hot_c": th, "cold_g": cold, "cold_c": tc}
        yield "dilution.mixed_temperature", inputs, {"water_c": t}, KELVIN, BETWEEN_EQUATIONS
        # Milk of 3.93 J/(g K) is a body.
        milk = settled(hot, th, [3.93 * cold], [tc])
        yield "dilution.mixed_with_milk_temperature", inputs, {"water_c": milk}, KELVIN, BETWEEN_EQUATIONS
    for b, t, ice, ti in [(150.0, 80.0, 100.0, -18.0), (150.0, 85.0, 150.0, -18.0), (60.0, 88.0, 90.0, -5.0), (200.0, 93.0, 30.0, 0.0), (120.0, 75.0, 0.0, -20.0), (80.0, 20.0, 60.0, -40.0), (100.0, 0.0, 50.0, 0.0), (250.0, 105.0, 20.0, -40.0)]:
        to_melt = b * enthalpy(t) - ice * ice_warming(ti)
        if to_melt >= ice * FUSION:
            melted = ice
            end = brentq(lambda x: (b + ice) * enthalpy(x) - (to_melt - ice * FUSION), 0.0, 105.0, xtol=1e-12)
        else:
            melted, end = to_melt / FUSION, 0.0
        inputs = {"beverage_g": b, "water_c": t, "ice_g": ice, "ice_c": ti}
        yield "dilution.iced", {**inputs, "strength_pct": 2.4}, {
            "water_c": end, "melted_g": melted, "ice_g": ice - melted, "strength_pct": 2.4 * b / (b + melted)}, {
            "water_c": KELVIN, "melted_g": 2e-5 * b, "ice_g": 2e-5 * b, "strength_pct": 1e-4}, (
            BETWEEN_EQUATIONS + ", over the heat of fusion")
        if end > 0 and ice > 0:
            yield "dilution.ice_to_reach", {"beverage_g": b, "water_c": t, "wanted_c": end, "ice_c": ti}, {"ice_g": ice}, 4e-5 * b, (
                BETWEEN_EQUATIONS + ", over the heat of fusion")
    for ml, t in [(200.0, 95.0), (300.0, 93.0), (1000.0, 20.0), (60.0, 4.0)]:
        mass = ml * liquid("D", t) / 1000
        yield "ratio.water_mass", {"volume_ml": ml, "water_c": t}, {"water_g": mass}, 1e-7 * ml, BETWEEN_EQUATIONS
        yield "ratio.water_volume", {"water_g": mass, "water_c": t}, {"volume_ml": ml}, 1e-7 * ml, BETWEEN_EQUATIONS
    for r, t in [(16.0, 20.0), (1000 / 55, 93.0), (2.0, 95.0)]:
        per_litre = liquid("D", t) / r
        yield "ratio.dose_per_litre", {"water_ratio_g_per_g": r, "water_c": t}, {"dose_g_per_l": per_litre}, 1e-4 / r, BETWEEN_EQUATIONS
        yield "ratio.ratio_of_dose_per_litre", {"dose_g_per_l": per_litre, "water_c": t}, {"water_ratio_g_per_g": r}, 1e-6, BETWEEN_EQUATIONS
    for d, w, t, chamber, v in [(15.0, 200.0, 95.0, 260.0, 0.8), (30.0, 400.0, 95.0, 260.0, 0.8), (46.0, 690.0, 92.0, 250.0, 1.1), (10.0, 900.0, 90.0, 120.0, 0.0)]:
        def volume(n):
            return (w / liquid("D", t) * 1000 + v * d) / n

        n = 1
        while volume(n) > chamber:
            n += 1
        yield "ratio.batches", {"dose_g": d, "water_g": w, "water_c": t, "volume_ml": chamber, "displacement_ml_per_g": v}, {
            "batches": n, "dose_g": d / n, "water_g": w / n, "fill_ml": volume(n)}, 1e-4, BETWEEN_EQUATIONS
        # The largest dose, by halving the interval.
        r = w / d
        low, high = 0.0, 10000.0
        for _ in range(200):
            middle = (low + high) / 2
            fits = middle * r * 1000 / liquid("D", t) + v * middle <= chamber
            low, high = (middle, high) if fits else (low, middle)
        yield "ratio.largest_dose", {"water_ratio_g_per_g": r, "water_c": t, "volume_ml": chamber, "displacement_ml_per_g": v}, {
            "dose_g": low}, 1e-5, BETWEEN_EQUATIONS
