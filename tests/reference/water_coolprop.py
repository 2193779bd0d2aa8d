"""Water by IAPWS-95, the equation that the compact ones were fitted to (CoolProp).

The liquid phase is imposed: at 0.1 MPa and above 99.6 °C a general library would return steam.
"""

from CoolProp.CoolProp import PropsSI

SOURCE = "IAPWS-95 as implemented in CoolProp"
WITH = "CoolProp 8.0.0"

# Its specific heat comes out of a search and is noisy in the twelfth.
DIGITS = 9

LIQUID_PA = 1e5
ICE_POINT = 273.15


def liquid(output, celsius):
    return PropsSI(output, "T|liquid", ICE_POINT + celsius, "P", LIQUID_PA, "Water")


def enthalpy(celsius):
    """J/g above 0 °C."""
    return (liquid("H", celsius) - liquid("H", 0.0)) / 1000


def checks():
    for c in [0.0, 0.5, 4.0, 10.0, 15.0, 20.0, 25.0, 37.5, 50.0, 62.3, 75.0, 85.0, 91.8, 95.0, 99.0, 100.0, 105.0]:
        yield "water.density", {"water_c": c}, {"density_kg_per_m3": liquid("D", c)}, 1e-4, (
            "SR6-08 was fitted to IAPWS-95 within this")
        yield "water.specific_heat", {"water_c": c}, {
            "specific_heat_j_per_g_k": liquid("C", c) / 1000}, 1.6e-4, "largest difference of the two equations"
        yield "water.enthalpy", {"water_c": c}, {"enthalpy_j_per_g": enthalpy(c)}, 5e-3, (
            "the difference in specific heat, integrated")
        if c == 105.0:
            continue  # the difference in enthalpy may lie beyond the range
        yield "water.temperature_of_enthalpy", {"enthalpy_j_per_g": enthalpy(c)}, {"water_c": c}, 1.2e-3, (
            "the difference in enthalpy over 4.2 J/(g K)")
    for c in [0.01, 1.0, 10.0, 20.0, 40.0, 60.0, 80.0, 93.0, 100.0, 105.0]:
        p = PropsSI("P", "T", ICE_POINT + c, "Q", 0, "Water")
        yield "water.vapour_pressure", {"water_c": c}, {"vapour_pressure_kpa": p / 1000}, 3e-4 * p / 1000, (
            "IF97 differs from IAPWS-95 by up to 0.03 %")
        heat = PropsSI("H", "T", ICE_POINT + c, "Q", 1, "Water") - PropsSI("H", "T", ICE_POINT + c, "Q", 0, "Water")
        yield "water.latent_heat", {"water_c": c}, {"latent_heat_j_per_g": heat / 1000}, 0.05 if c > 100 else 0.02, (
            "stated error of the fit, larger beyond its 100 °C")
    for kpa in [50.0, 61.6402, 70.12, 78.2, 89.876, 95.1, 101.325, 105.0, 110.0]:
        t = PropsSI("T", "P", kpa * 1000, "Q", 0, "Water") - ICE_POINT
        yield "water.boiling_point", {"pressure_kpa": kpa}, {"water_c": t}, 0.003, "IF97 against IAPWS-95"
