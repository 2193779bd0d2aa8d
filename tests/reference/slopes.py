"""Filters that live flow is compared with, by scipy: Savitzky and Golay's slope at the newest sample of a
window, for samples one apart; the gains in which Kalman's filter for a constant flow comes to rest.
"""

import numpy
from scipy.linalg import solve_discrete_are
from scipy.signal import savgol_coeffs

SOURCE = "Savitzky, Golay, Anal. Chem. 36 (1964) 1627; the discrete algebraic Riccati equation of a constant flow that wanders"
WITH = "scipy 1.17.1, numpy 2.4.6"
DIGITS = 12
# No formulas of the core: beside the check values, not among them.
FOLDER = "peers"


def checks():
    for order in (1, 2):
        for window in (5, 9, 17, 33, 65, 129):
            weights = savgol_coeffs(window, order, deriv=1, pos=window - 1, use="dot")
            # A middle weight of nought is only rounding; plus nought has one sign.
            weights = [round(float(weight), 12) + 0.0 for weight in weights]
            yield "savitzky_golay.slope", {"order": order, "window": window}, {
                "weights": weights}, 1e-11, "used as they stand"
    for wander, dt in ((2.0, 0.1), (0.2, 0.1), (2.0, 0.0125)):
        move = numpy.array([[1, dt], [0, 1]])
        look = numpy.array([[1.0, 0.0]])
        noise = wander * numpy.array([[dt**3 / 3, dt**2 / 2], [dt**2 / 2, dt]])
        weight = 0.05**2 + 0.1**2 / 12
        ahead = solve_discrete_are(move.T, look.T, noise, [[weight]])
        mass, flow = (ahead @ look.T / (look @ ahead @ look.T + weight)).ravel()
        yield "kalman.gains", {"wander_g2_s3": wander, "dt_s": dt}, {
            "mass": mass, "flow_per_s": flow}, {"mass": 1e-9 * mass, "flow_per_s": 1e-9 * flow}, "nine digits of a solver"
