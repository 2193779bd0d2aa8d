"""Statistics of repeated readings by scipy and exact fractions; optics of water by IAPWS R9-97 (iapws)."""

import statistics
from fractions import Fraction

import numpy
from iapws import _iapws
from scipy.stats import studentized_range

from water_coolprop import liquid

SOURCE = "ISO 5725-6 factors as quantiles of the studentized range; means and deviations exactly; IAPWS R9-97 refractive index"
WITH = "scipy 1.17.1, numpy 2.4.6, iapws 1.5.5, CoolProp 8.0.0"
DIGITS = 10

# ICUMSA 1974, 0 to 8 °Bx at 20 °C and 589 nm.
SUCROSE = (1.33299, 1.33442, 1.33586, 1.33732, 1.33879, 1.34026, 1.34175, 1.34325, 1.34477)


def index_of_air(celsius):
    """At 589 nm and 101.325 kPa: 1.000272 at 20 °C (memory, Birch & Downs), its excess as the density."""
    return 1 + 2.72e-4 * 293.15 / (273.15 + celsius)


def index_of_water(celsius):
    """Against air of the same temperature, as the sugar scale counts."""
    return _iapws._Refractive(liquid("D", celsius), 273.15 + celsius, 0.5893) / index_of_air(celsius)


def checks():
    for n in range(2, 11):
        factor = studentized_range.ppf(0.95, n, numpy.inf)
        for s in (0.005, 0.01):
            yield "reading.critical_range", {"readings": n, "repeatability_pct": s}, {
                "strength_range_pct": factor * s}, 6e-5 * s, "factors kept to four decimals"
    for readings in ([1.44, 1.46], [1.41, 1.42, 1.44], [6.49, 6.52, 6.47, 6.5], [1.38] * 4 + [1.39] * 6):
        exact = [Fraction(str(r)) for r in readings]
        # So wide a repeatability that no readings of these checks disagree.
        yield "reading.combine", {"strength_pct": readings, "repeatability_pct": 2}, {
            "strength_pct": float(statistics.mean(exact)), "range_pct": float(max(exact) - min(exact))}, 1e-9, "ten digits"
        yield "reading.repeatability", {"strength_pct": readings}, {
            "repeatability_pct": float(statistics.variance(exact)) ** 0.5}, 1e-9, "ten digits"
    # Water and thin brews: a brew's index moves with temperature as water's does, and what it then
    # shows on the sugar scale must be corrected back.
    c, b, a = numpy.polyfit(range(9), SUCROSE, 2)[::-1]
    for brix, share, why in [
        (0.0, 0.009, "the scale has five decimals and is read below zero"),
        (3.0, 0.02, "the library's correction is that of pure water; the scale is 2 % steeper here, and has five decimals"),
        (8.0, 0.065, "the library's correction is that of pure water; the scale is 6 % steeper here, and has five decimals"),
    ]:
        for t in (10.0, 15.0, 18.0, 20.0, 22.5, 25.0, 30.0, 35.0, 40.0):
            n = numpy.polyval([a, b, c], brix) + index_of_water(t) - index_of_water(20.0)
            shown = round(float(max(numpy.roots([a, b, c - n]).real)), 7)
            yield "reading.brix_at_20", {"brix": shown, "sample_c": t}, {"brix": brix}, 0.004 + share * abs(brix - shown), why
