"""The cooling law dT/dt = -k [(T - Ta) + beta (p(T) - RH p(Ta))] by stepping it (scipy's DOP853) and by
adaptive quadrature over temperature; vapour pressure from iapws. The library does neither: it
integrates over a logarithm with fixed nodes.
"""

from iapws.iapws97 import _PSat_T
from scipy.integrate import quad, solve_ivp

SOURCE = "the cooling law of the heat room, integrated numerically with IAPWS-IF97 vapour pressure"
WITH = "scipy 1.17.1, iapws 1.5.5"
DIGITS = 11


def kilopascals(celsius):
    return _PSat_T(273.15 + celsius) * 1000


def law(room, humidity, is_open):
    if not is_open:
        return lambda t: t - room
    air = humidity / 100 * kilopascals(room)
    return lambda t: (t - room) + 6.0 * (kilopascals(t) - air)


def checks():
    rooms = [(17.0, 50.0, 1), (21.0, 50.0, 1), (21.0, 50.0, 0), (35.0, 90.0, 1), (6.0, 20.0, 1), (40.0, 0.0, 1), (30.0, 100.0, 1), (-20.0, 50.0, 0)]
    for room, humidity, is_open in rooms:
        f = law(room, humidity, is_open)
        place = {"room_c": room, "humidity_pct": humidity, "cover": 1 if is_open else 2}
        for start, end in [(82.3, 65.0), (95.0, 60.0), (100.0, 45.0)]:
            integral = quad(lambda t: 1 / f(t), end, start, epsabs=1e-13, epsrel=1e-13)[0]
            for k in (0.004, 0.0105):
                yield "heat.time_to_cool", {"water_c": start, "to_c": end, "cooling_per_min": k, **place}, {
                    "time_s": 60 * integral / k}, 6e-8 * integral / k, "1e-9 relative: fixed nodes"
            yield "heat.cooling_rate", {"water_c": start, "to_c": end, "time_s": 720, **place}, {
                "cooling_per_min": integral / 12}, 1e-10, "fixed nodes"
        for start, k, seconds in [(90.0, 0.0105, 600), (82.3, 0.00655058, 1800), (100.0, 0.002, 7200), (95.0, 0.03, 120), (60.0, 0.0065, 36000), (70.0, 0.01, 0)]:
            t = solve_ivp(lambda _, y: [-k / 60 * f(y[0])], (0, seconds), [start], method="DOP853",
                          rtol=1e-12, atol=1e-12).y[0, -1]
            if t < 0.5:
                continue
            yield "heat.temperature_after", {"water_c": start, "time_s": seconds, "cooling_per_min": k, **place}, {
                "water_c": round(t, 8)}, 1e-3 if seconds == 36000 else 1e-6, (
                "within 0.1 K of where it ends the law is taken as straight" if seconds == 36000 else "fixed nodes")
