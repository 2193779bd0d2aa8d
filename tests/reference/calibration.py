"""Fits of several brews by scipy: lines by linregress, curves by curve_fit with a model of its own (the
cooling law stepped by DOP853, heat by IAPWS-95), leverages from the projection matrix, the odd one by
Student's t. All data are invented.
"""

import numpy
from scipy.integrate import solve_ivp
from scipy.optimize import curve_fit
from scipy.stats import linregress, t as student

from cooling import law
from water_coolprop import enthalpy

SOURCE = "least squares by general libraries on invented brews"
WITH = "scipy 1.17.1, numpy 2.4.6, iapws 1.5.5, CoolProp 8.0.0"
DIGITS = 10


def quality(jacobian, residuals):
    """What is told of every fit, from its slopes and residuals."""
    jacobian, residuals = numpy.asarray(jacobian, float), numpy.asarray(residuals, float)
    # What no parameter moves tells nothing of any, nor of the scatter of what does.
    tells = (jacobian != 0).any(1)
    q, _ = numpy.linalg.qr(jacobian)
    leverages = numpy.where(tells, (q * q).sum(1), 0.0)
    n, p = tells.sum(), jacobian.shape[1]
    squares, freedom = residuals[tells] @ residuals[tells], n - p
    out = {"quality.measurements": n, "quality.degrees_of_freedom": freedom, "quality.s": (squares / freedom) ** 0.5}
    for at in range(len(residuals)):
        out[f"quality.residuals.{at}"] = residuals[at]
        out[f"quality.leverages.{at}"] = leverages[at]
    if freedom >= 2:
        judged = numpy.where(tells, residuals, 0.0)
        others = (squares - judged**2 / (1 - leverages)) / (freedom - 1)
        distances = judged / numpy.sqrt(others * (1 - leverages))
        at = int(numpy.argmax(abs(distances)))
        chance = min(1.0, n * 2 * student.sf(abs(distances[at]), freedom - 1))
        out |= {"quality.has_odd": 1, "quality.odd.at": at, "quality.odd.studentised": distances[at],
                "quality.odd.chance": chance, "quality.odd.is_suspicious": chance < 0.05}
    return out


def near(outputs, share):
    """A tolerance of so much of each output, and of residuals so much of the largest."""
    scale = max(abs(v) for k, v in outputs.items() if k.startswith("quality.residuals"))
    return {k: share * max(abs(float(v)), scale if k.startswith("quality.") else 0.0) for k, v in outputs.items()}


def line_checks():
    brews = [
        ([12, 15, 15, 18, 20, 20, 25, 30], [27.9, 34.6, 36.4, 41.6, 43.4, 45.0, 54.6, 65.6], 0.0),
        ([15, 15, 30, 30], [31.0, 33.2, 62.1, 60.5], 0.0),
        ([14.8, 20.1, 25.2, 18.3, 22.7, 30.4], [34.9, 45.1, 56.2, 61.0, 50.8, 66.9], 2.5),
        ([500, 1000, 1500], [1100, 2080, 3150], 30.0),
    ]
    for doses, kept, vapour in brews:
        doses, kept = numpy.array(doses, float), numpy.array(kept)
        water = 16 * doses
        inputs = {"dose_g": list(doses), "water_g": list(water), "beverage_g": [round(b, 6) for b in water - kept - vapour],
                  "vapour_g": [vapour] * len(doses)}
        fit = linregress(doses, kept)
        residuals = kept - fit.intercept - fit.slope * doses
        jacobian = numpy.stack([numpy.ones_like(doses), doses], 1)
        told = quality(jacobian, residuals)
        covariance = numpy.linalg.inv(jacobian.T @ jacobian) * told["quality.s"] ** 2
        out = {"apparent_retention_g_per_g": fit.slope, "u_retention_g_per_g": fit.stderr,
               "fitted_hold_up_g": fit.intercept, "u_hold_up_g": fit.intercept_stderr,
               "covariance_g2_per_g": covariance[0, 1]} | told
        yield "calibrate.retention_line", inputs, out, near(out, 1e-8), "ten digits of inputs"
        at = numpy.array([1.0, 1.1 * doses.mean()])
        mean = float(at @ covariance @ at)
        out = {"beverage_g": 16 * at[1] - 1 - fit.intercept - fit.slope * at[1],
               "u_beverage_g": (mean + told["quality.s"] ** 2) ** 0.5, "degrees_of_freedom": told["quality.degrees_of_freedom"],
               "u_mean_g": mean**0.5}
        yield "calibrate.expected_beverage", inputs | {"next_dose_g": at[1], "next_water_g": 16 * at[1], "next_vapour_g": 1}, out, {
            k: 1e-8 * abs(v) for k, v in out.items()}, "ten digits of inputs"
        out = through_origin(doses, kept, "apparent_retention_g_per_g", "u_retention_g_per_g")
        yield "calibrate.retention", inputs, out, near(out, 1e-8), "ten digits of inputs"


def through_origin(x, y, field, u):
    (slope,), ((variance,),) = curve_fit(lambda x, b: b * x, x, y, p0=[1.0], jac=lambda x, b: x[:, None])
    slope = float(numpy.linalg.lstsq(x[:, None], y, rcond=None)[0][0])
    return {field: slope, u: variance**0.5} | quality(x[:, None], y - slope * x)


def ray_checks():
    for brix, strength in [
        ([1.42, 1.66, 1.95], [1.214, 1.402, 1.667]),
        ([1.1, 1.3, 1.5, 1.7, 1.9, 4.2], [0.93, 1.12, 1.27, 1.45, 1.63, 3.9]),
    ]:
        x, y = numpy.array(brix), numpy.array(strength)
        out = through_origin(x, y, "refractive_factor_pct_per_brix", "u_factor_pct")
        out["u_factor_pct"] *= 100 / out["refractive_factor_pct_per_brix"]
        yield "calibrate.refractive_factor", {"brix": brix, "strength_pct": strength}, out, near(out, 1e-8), "ten digits of inputs"
    for liquid, before, settled, vessel in [
        ([250, 200, 250], [95, 95, 88], [84.9, 82.4, 79.2], [21, 21, 21]),
        ([300, 300, 240, 180, 350], [96.2, 93.1, 90.4, 95.0, 85.0], [92.1, 88.9, 85.6, 87.4, 81.9], [22.5, 20.1, 24.0, 18.8, 23.3]),
    ]:
        x = numpy.array(settled) - numpy.array(vessel)
        y = numpy.array([m * (enthalpy(a) - enthalpy(b)) for m, a, b in zip(liquid, before, settled)])
        out = through_origin(x, y, "heat_capacity_j_per_k", "u_heat_capacity_j_per_k")
        tolerance = near(out, 1e-4) | {k: 3.0 for k in out if k.startswith("quality.residuals")}
        for k in ("u_heat_capacity_j_per_k", "quality.s", "quality.odd.studentised", "quality.odd.chance"):
            tolerance[k] = 0.02 * abs(out[k])
        yield "calibrate.heat_capacity", {"liquid_g": liquid, "before_c": before, "settled_c": settled, "vessel_c": vessel}, out, (
            tolerance), "IAPWS SR6-08 and IAPWS-95 differ by up to 0.005 J/g, up to 3 J in 350 g"
    strength, water, dose = [1.41, 1.38, 1.02, 2.03], [300, 310, 400, 200], [20, 20.2, 20, 20]
    t = numpy.array(strength) / 100
    y = 100 * numpy.array(water) / numpy.array(dose) * t / (1 - t)
    fit = quality(numpy.ones((4, 1)), y - y.mean())
    out = {"yield_pct": y.mean(), "u_yield_pct": y.std(ddof=1) / 2} | fit
    yield "calibrate.equilibrium_yield", {"strength_pct": strength, "water_g": water, "dose_g": dose}, out, near(out, 1e-8), (
        "ten digits of inputs")
    cups, readings = [3, 1, 3, 1, 2, 2, 1, 2, 4], [1.44, 1.31, 1.46, 1.33, 1.52, 1.49, 1.32, 1.515, 1.2]
    members = (numpy.array(cups)[:, None] == numpy.array([1, 2, 3, 4])).astype(float)
    means = numpy.linalg.lstsq(members, numpy.array(readings), rcond=None)[0]
    fit = quality(members[:8, :3], (numpy.array(readings) - members @ means)[:8])
    # The cup read once has all the leverage and no residual; it is left out of the reference.
    fit |= {"quality.measurements": 9, "quality.residuals.8": 0, "quality.leverages.8": 1}
    fit["quality.odd.chance"] = min(1.0, 9 / 8 * fit["quality.odd.chance"])
    out = {"repeatability_pct": fit["quality.s"], "u_repeatability_pct": fit["quality.s"] / 10**0.5} | fit
    yield "calibrate.repeatability", {"cup": cups, "strength_pct": readings}, out, near(out, 1e-7), "differences of near-equal readings"


def one_rate(t, equilibrium, ln_time):
    return -equilibrium * numpy.expm1(-t * numpy.exp(-ln_time))


def two_rates(t, equilibrium, share, ln_fast, ln_slow):
    return -equilibrium * (share / 100 * numpy.expm1(-t * numpy.exp(-ln_fast))
                           + (1 - share / 100) * numpy.expm1(-t * numpy.exp(-ln_slow)))


def slopes(model, t, parameters):
    """By central differences of complex steps, exact to rounding."""
    columns = []
    for at in range(len(parameters)):
        moved = numpy.array(parameters, complex)
        moved[at] += 1e-30j
        columns.append(model(t, *moved).imag / 1e-30)
    return numpy.stack(columns, 1)


def curve(model, t, y, start):
    t, y = numpy.array(t, float), numpy.array(y, float)
    parameters, _ = curve_fit(model, t, y, p0=start, jac=lambda t, *p: slopes(model, t, p), method="lm",
                              xtol=1e-15, ftol=1e-15, gtol=1e-15, maxfev=10000)
    jacobian = slopes(model, t, parameters)
    fit = quality(jacobian, y - model(t, *parameters))
    return parameters, numpy.linalg.inv(jacobian.T @ jacobian) * fit["quality.s"] ** 2, fit


def curve_checks():
    for t, y in [
        ([30, 60, 120, 300], [9.1, 13.9, 18.6, 20.7]),
        ([0, 20, 40, 60, 90, 120, 180, 240, 480], [0.1, 7.2, 11.0, 14.5, 16.9, 18.6, 20.2, 20.6, 21.1]),
        ([3600, 7200, 14400, 28800, 43200, 86400], [7.4, 12.0, 16.4, 19.3, 19.6, 19.9]),
    ]:
        p, c, fit = curve(one_rate, t, y, [20.0, numpy.log(numpy.median(t))])
        out = {"equilibrium_yield_pct": p[0], "u_equilibrium_yield_pct": c[0, 0] ** 0.5, "time_constant_s": numpy.exp(p[1]),
               "u_ln_time_constant": c[1, 1] ** 0.5, "covariance_pct": c[0, 1]} | fit
        yield "calibrate.one_rate", {"contact_s": t, "yield_pct": y}, out, near(out, 1e-6), "MINPACK stops there"
    for t, y, start in [
        ([5, 10, 20, 30, 45, 60, 90, 120, 150, 180, 240, 300],
         [4.06, 6.91, 11.16, 13.73, 15.71, 17.0, 18.66, 19.52, 20.35, 20.78, 21.71, 22.19], [23, 60, 2.8, 4.8]),
        ([3, 6, 12, 25, 50, 100, 200, 400], [5.02, 8.12, 10.73, 12.6, 14.41, 17.1, 19.6, 20.96], [21, 50, 1.6, 4.8]),
    ]:
        p, c, fit = curve(two_rates, t, y, start)
        u = numpy.sqrt(numpy.diag(c))
        out = {"equilibrium_yield_pct": p[0], "u_equilibrium_yield_pct": u[0], "fast_share_pct": p[1], "u_fast_share_pct": u[1],
               "fast_time_s": numpy.exp(p[2]), "u_ln_fast_time": u[2], "slow_time_s": numpy.exp(p[3]), "u_ln_slow_time": u[3]}
        out |= {f"covariance.{i}.{j}": c[i, j] for i in range(4) for j in range(4)} | fit
        yield "calibrate.two_rates", {"contact_s": t, "yield_pct": y}, out, near(out, 1e-5), "MINPACK stops there"


def cooling_checks():
    for room, humidity, is_open, t, y in [
        (17.0, 50.0, 1, [0, 300, 600, 1200], [82.3, 72.8, 65.0, 54.4]),
        (22.0, 40.0, 1, [60, 240, 420, 600, 900, 1500, 2400], [88.1, 80.4, 74.1, 69.0, 61.8, 52.0, 43.3]),
        (21.0, 50.0, 0, [0, 600, 1200, 1800, 2700], [91.0, 80.8, 71.6, 63.9, 55.1]),
    ]:
        speed = law(room, humidity, is_open)
        minutes, y = (numpy.array(t, float) - t[0]) / 60, numpy.array(y)

        def model(minutes, start, rate):
            return solve_ivp(lambda _, temperature: [-rate * speed(temperature[0])], (0, minutes[-1]), [start],
                             t_eval=minutes, method="DOP853", rtol=1e-12, atol=1e-12).y[0]

        def jacobian(minutes, start, rate):
            later = model(minutes, start, rate)
            speeds = numpy.array([speed(x) for x in later])
            return numpy.stack([speeds / speed(start), -minutes * speeds], 1)

        p, _ = curve_fit(model, minutes, y, p0=[y[0], 0.01], jac=jacobian, method="lm", xtol=1e-14, ftol=1e-14, gtol=1e-14)
        slope = jacobian(minutes, *p)
        fit = quality(slope, y - model(minutes, *p))
        c = numpy.linalg.inv(slope.T @ slope) * fit["quality.s"] ** 2
        out = {"cooling_per_min": p[1], "u_cooling_per_min": c[1, 1] ** 0.5, "start_c": p[0], "u_start_k": c[0, 0] ** 0.5,
               "covariance_k_per_min": c[0, 1]} | fit
        # What stands far out is told by the small scatter of the others.
        tolerance = near(out, 1e-6) | {k: 1e-4 * abs(out[k]) for k in ("quality.odd.studentised", "quality.odd.chance")}
        yield "calibrate.cooling", {"time_s": t, "water_c": list(y), "room_c": room, "humidity_pct": humidity,
                                    "cover": 1 if is_open else 2}, out, tolerance, "MINPACK stops there; fixed nodes"


def checks():
    yield from line_checks()
    yield from ray_checks()
    yield from curve_checks()
    yield from cooling_checks()
