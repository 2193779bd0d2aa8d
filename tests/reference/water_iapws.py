"""The same equations as in the library, by independent code: IAPWS-IF97 region 4 and SR6-08 (iapws);
and the standard atmosphere by the hydrostatic equation, integrated numerically (mpmath).
"""

import mpmath as mp
from iapws._iapws import _Liquid
from iapws.iapws97 import _PSat_T, _TSat_P

SOURCE = "IAPWS-IF97 region 4 and IAPWS SR6-08 as implemented in iapws; ISO 2533 troposphere by numerical integration"
WITH = "iapws 1.5.5, mpmath 1.4.1"
DIGITS = 12

ICE_POINT = 273.15


def pressure(metres):
    """ISO 2533: dp/p = -g0/(R T) dH with T = 288.15 - 0.0065 H."""
    integral = mp.quad(lambda h: mp.mpf("9.80665") / (mp.mpf("287.05287") * (mp.mpf("288.15") - mp.mpf("0.0065") * h)), [0, metres])
    return mp.mpf("101.325") * mp.exp(-integral)


def checks():
    for c in [0.0, 0.01, 5.0, 21.0, 47.5, 66.0, 88.0, 94.6, 100.0, 105.0]:
        p = _PSat_T(ICE_POINT + c) * 1000
        yield "water.vapour_pressure", {"water_c": c}, {"vapour_pressure_kpa": p}, 1e-11 * p, "same equation, rounding"
    for kpa in [50.0, 64.2, 77.9, 89.9, 100.0, 101.325, 110.0]:
        yield "water.boiling_point", {"pressure_kpa": kpa}, {"water_c": _TSat_P(kpa / 1000) - ICE_POINT}, 1e-9, (
            "same equation, rounding")
    for c in [0.0, 12.5, 33.0, 58.8, 71.1, 93.0, 101.0, 105.0]:
        water = _Liquid(ICE_POINT + c, 0.1)
        zero = _Liquid(ICE_POINT, 0.1)
        yield "water.density", {"water_c": c}, {"density_kg_per_m3": water["rho"]}, 1e-8, "same equation, rounding"
        yield "water.specific_heat", {"water_c": c}, {"specific_heat_j_per_g_k": water["cp"]}, 1e-10, (
            "same equation, rounding")
        # Through g + T s, logarithms and all.
        enthalpy = [w["g"] + t * w["s"] for w, t in ((water, ICE_POINT + c), (zero, ICE_POINT))]
        yield "water.enthalpy", {"water_c": c}, {"enthalpy_j_per_g": enthalpy[0] - enthalpy[1]}, 1e-8, (
            "same equation by another route, rounding")
        if 0 < c < 105:
            yield "water.temperature_of_enthalpy", {"enthalpy_j_per_g": enthalpy[0] - enthalpy[1]}, {"water_c": c}, 1e-9, (
                "same equation by another route, rounding")
    mp.mp.dps = 30
    for metres in [-650.0, -100.0, 0.0, 560.0, 1600.0, 2140.0, 3000.0, 4000.0, 5540.0, 5550.0]:
        p = pressure(metres)
        yield "water.pressure_at_altitude", {"altitude_m": metres}, {"pressure_kpa": p}, 1e-9, "twelve digits"
        if -650.0 < metres < 5550.0:  # a pressure rounded to twelve digits may lie beyond
            yield "water.altitude_at_pressure", {"pressure_kpa": float(p)}, {"altitude_m": metres}, 1e-7, (
                "rounding, the pressure's included")
