"""What CoolProp and iapws answer for water, and how long they take.

Reads lines of a formula, an input and our answer, the output of `speed values`. Prints for each formula of
water: its name, our largest difference from IAPWS-95, nanoseconds of CoolProp with IAPWS-95, the largest
difference and nanoseconds of its IF97, and nanoseconds of iapws with IF97. CoolProp takes a whole array in
one call, so that Python's own time is shared by all its values; iapws is Python throughout, and its
equations are called without the object around them, which computes everything.
"""

import statistics
import sys
import time
from collections import defaultdict

import numpy
from CoolProp.CoolProp import PropsSI
from iapws import iapws97

ICE = 273.15
AIR = 1e5
RUNS = 25


def coolprop(wish, first, second):
    """A property, of a backend and of our unit's inputs."""
    return lambda backend, inputs: PropsSI(wish, *first(inputs), *second(inputs), f"{backend}::Water")


def temperature(celsius):
    return "T", celsius + ICE


def at_air(inputs):
    return "P", numpy.full_like(inputs, AIR)


def saturated(inputs):
    return "Q", numpy.zeros_like(inputs)


def enthalpy(backend, celsius):
    return (coolprop("H", temperature, at_air)(backend, celsius) - level(backend)) / 1000


def of_enthalpy(backend, joules):
    heat = joules * 1000 + level(backend)
    return PropsSI("T", "H", heat, "P", numpy.full_like(heat, AIR), f"{backend}::Water") - ICE


def level(backend):
    """Heat contents have no zero of their own: theirs is set to ours at our first input, J/kg."""
    celsius, joules = asked["water_enthalpy"][0], answered["water_enthalpy"][0]
    return PropsSI("H", "T", celsius + ICE, "P", AIR, f"{backend}::Water") - 1000 * joules


# In our units; then the same of one value by iapws.
WATER = {
    "water_density": (coolprop("D", temperature, at_air), lambda t: 1 / iapws97._Region1(t + ICE, 0.1)["v"]),
    "water_specific_heat": (
        lambda backend, t: coolprop("C", temperature, at_air)(backend, t) / 1000,
        lambda t: iapws97._Region1(t + ICE, 0.1)["cp"],
    ),
    "water_enthalpy": (enthalpy, lambda t: iapws97._Region1(t + ICE, 0.1)["h"]),
    "water_temperature_of_enthalpy": (of_enthalpy, lambda h: iapws97._Backward1_T_Ph(0.1, h)),
    "water_vapour_pressure": (
        lambda backend, t: coolprop("P", temperature, saturated)(backend, t) / 1000,
        lambda t: iapws97._PSat_T(t + ICE),
    ),
    "water_boiling_point": (
        lambda backend, p: PropsSI("T", "P", p * 1000, "Q", numpy.zeros_like(p), f"{backend}::Water") - ICE,
        lambda p: iapws97._TSat_P(p / 1000),
    ),
}


def nanoseconds(call, count):
    """Of one of so many values: the processor's, the median of several runs."""

    def once():
        start = time.thread_time()
        call()
        return time.thread_time() - start

    return statistics.median(once() for _ in range(RUNS)) / count * 1e9


asked, answered = defaultdict(list), defaultdict(list)


def main():
    for line in sys.stdin:
        name, given, answer = line.rsplit(" ", 2)
        asked[name].append(float(given))
        answered[name].append(float(answer))
    for name, (by_coolprop, by_iapws) in WATER.items():
        inputs, ours = numpy.array(asked[name]), numpy.array(answered[name])
        exact, quick = by_coolprop("HEOS", inputs), by_coolprop("IF97", inputs)
        many = numpy.linspace(inputs[0], inputs[-1], 500)
        few = many[::10].tolist()
        print(
            name,
            f"{numpy.abs(ours - exact).max():.1e}",
            f"{nanoseconds(lambda: by_coolprop('HEOS', many), len(many)):.0f}",
            f"{numpy.abs(quick - exact).max():.1e}",
            f"{nanoseconds(lambda: by_coolprop('IF97', many), len(many)):.0f}",
            f"{nanoseconds(lambda: [by_iapws(one) for one in few], len(few)):.0f}",
        )


main()
