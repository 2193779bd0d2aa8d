/* Each from the equation in the docs of the formula it is named for. */

#include "by_hand.h"

#include <math.h>

uint32_t by_hand_nothing(void) { return CUPWRIGHT_ABI_VERSION; }

/* mg/L to a share of the mass, at 20 °C. */
static double share(double water_solids_mg_per_l) { return water_solids_mg_per_l * 1e-6 / 0.9982065; }

double by_hand_water_ratio(double dose_g, double water_g) { return water_g / dose_g; }

double by_hand_dose_for_water(double water_g, double ratio) { return water_g / ratio; }

double by_hand_dose_per_litre(double ratio, double water_c) { return by_hand_density(water_c) / ratio; }

double by_hand_flow_through_yield(double strength_pct, double beverage_g, double dose_g) {
    return strength_pct * beverage_g / dose_g;
}

double by_hand_flow_through_strength(double yield_pct, double beverage_g, double dose_g) {
    return yield_pct * dose_g / beverage_g;
}

double by_hand_steeped_yield(double strength_pct, double water_g, double dose_g) {
    double t = strength_pct / 100;
    return 100 * water_g / dose_g * t / (1 - t);
}

double by_hand_steeped_strength(double yield_pct, double ratio) {
    double e = yield_pct / 100;
    return 100 * e / (ratio + e);
}

double by_hand_yield(const struct cupwright_brew *brew, double strength_pct) {
    double d = brew->dose_g, s = share(brew->water_solids_mg_per_l);
    double bean_water = brew->moisture_pct / 100 * d - brew->vapour_g;
    double missing = brew->water_g + bean_water - brew->beverage_g;
    double held = brew->held_strength_pct / 100, tau = strength_pct / 100 - s;
    return 100 * (tau * (brew->beverage_g + held * missing) + s * bean_water) / (d * (1 - s - held * tau));
}

double by_hand_strength(const struct cupwright_brew *brew, double yield_pct) {
    double d = brew->dose_g, s = share(brew->water_solids_mg_per_l), e = yield_pct / 100;
    double bean_water = brew->moisture_pct / 100 * d - brew->vapour_g;
    double missing = brew->water_g + bean_water - brew->beverage_g;
    double held = brew->held_strength_pct / 100;
    double tau = (e * d * (1 - s) - s * bean_water) / (brew->beverage_g + held * (missing + e * d));
    return 100 * (tau + s);
}

double by_hand_yield_at_time(const struct cupwright_kinetics *kinetics, double time_s) {
    double f = kinetics->fast_share_pct / 100;
    return -kinetics->equilibrium_yield_pct *
           (f * expm1(-time_s / kinetics->fast_time_s) + (1 - f) * expm1(-time_s / kinetics->slow_time_s));
}

double by_hand_beverage(const struct cupwright_losses *losses, double dose_g, double water_g) {
    return water_g - losses->apparent_retention_g_per_g * dose_g - losses->hold_up_g -
           losses->paper_g * losses->paper_uptake_g_per_g - losses->drips_g - losses->vapour_g;
}

double by_hand_strength_after_water(double beverage_g, double strength_pct, double added_g,
                                    double water_solids_mg_per_l) {
    return (strength_pct * beverage_g + 100 * share(water_solids_mg_per_l) * added_g) / (beverage_g + added_g);
}

double by_hand_water_to_reach(double beverage_g, double strength_pct, double wanted_pct,
                              double water_solids_mg_per_l) {
    return beverage_g * (strength_pct - wanted_pct) / (wanted_pct - 100 * share(water_solids_mg_per_l));
}

/* Liquid water at 0.1 MPa: IAPWS SR6-08(2011), equations 1 to 4. */

#define R 461.51805
#define C1 -2.452093414e2
#define C3 -8.983025854

static const double A[11] = {0, -1.661470539e5, 2.708781640e6, -1.557191544e8, 0, 1.93763157e-2,
                             6.74458446e3, -2.22521604e5, 1.00231247e8, -1.63552118e9, 8.32299658e9};
static const double B[11] = {0, -8.237426256e-1, 1.908956353, -2.017597384, 8.546361348e-1, 5.78545292e-3,
                             -1.53195665e-2, 3.11337859e-2, -4.23546241e-2, 3.38713507e-2, -1.19946761e-2};

double by_hand_density(double water_c) {
    double kelvin = water_c + 273.15, a = 10 / (593 - kelvin), b = 10 / (kelvin - 232);
    double hot = a * a * a * a * (A[6] + a * (A[7] + a * a * (A[8] + a * (A[9] + a * A[10]))));
    double cold = b * (B[5] + b * (B[6] + b * (B[7] + b * (B[8] + b * (B[9] + b * B[10])))));
    return 1 / (R * 10 / 1e5 * (A[5] + hot + cold));
}

double by_hand_specific_heat(double water_c) {
    double kelvin = water_c + 273.15, a = 10 / (593 - kelvin), b = 10 / (kelvin - 232);
    double a2 = a * a, b2 = b * b;
    double hot = a2 * a2 * a2 * (20 * A[1] + a * (30 * A[2] + a2 * (56 * A[3])));
    double cold = b2 * b2 * (6 * B[1] + b * (12 * B[2] + b * (20 * B[3] + b * (30 * B[4]))));
    return -R * (C3 + kelvin / 10 * (hot + cold)) / 1000;
}

static double absolute(double kelvin) {
    double a = 10 / (593 - kelvin), b = 10 / (kelvin - 232), a2 = a * a, b2 = b * b;
    double gibbs = C1 + a2 * a2 * (A[1] + a * (A[2] + a2 * A[3])) +
                   b2 * (B[1] + b * (B[2] + b * (B[3] + b * B[4])));
    double entropy = C3 + a2 * a2 * a * (4 * A[1] + a * (5 * A[2] + a2 * (7 * A[3]))) -
                     b2 * b * (2 * B[1] + b * (3 * B[2] + b * (4 * B[3] + b * (5 * B[4]))));
    return R * (10 * gibbs - kelvin * entropy);
}

double by_hand_enthalpy(double water_c) { return (absolute(water_c + 273.15) - absolute(273.15)) / 1000; }

/* m h(t) + C t = H, by Newton's steps from a constant specific heat. */
static double balanced(double water_g, double dry_j_per_k, double heat_j) {
    double t = heat_j / (4.19 * water_g + dry_j_per_k);
    for (int step = 0; step < 3; step++) {
        double holds = water_g * by_hand_enthalpy(t) + dry_j_per_k * t;
        t -= (holds - heat_j) / (water_g * by_hand_specific_heat(t) + dry_j_per_k);
    }
    return t;
}

double by_hand_temperature_of_enthalpy(double enthalpy_j_per_g) { return balanced(1, 0, enthalpy_j_per_g); }

double by_hand_mixed_temperature(double hot_g, double hot_c, double cold_g, double cold_c) {
    return balanced(hot_g + cold_g, 0, hot_g * by_hand_enthalpy(hot_c) + cold_g * by_hand_enthalpy(cold_c));
}

double by_hand_after_pour(double water_c, double drop_k) { return water_c - drop_k; }

double by_hand_settle(double water_g, double water_c, const struct cupwright_body *bodies, size_t count) {
    double capacity = 0, heat = water_g * by_hand_enthalpy(water_c);
    for (size_t i = 0; i < count; i++) {
        capacity += bodies[i].heat_capacity_j_per_k;
        heat += bodies[i].heat_capacity_j_per_k * bodies[i].body_c;
    }
    return balanced(water_g, capacity, heat);
}

/* The saturation line: IAPWS-IF97, equations 30 and 31. */

static const double N[11] = {0, 0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.12020824702470e5,
                             -0.32325550322333e7, 0.14915108613530e2, -0.48232657361591e4, 0.40511340542057e6,
                             -0.23855557567849, 0.65017534844798e3};

double by_hand_vapour_pressure(double water_c) {
    double kelvin = water_c + 273.15, t = kelvin + N[9] / (kelvin - N[10]);
    double a = t * t + N[1] * t + N[2];
    double b = N[3] * t * t + N[4] * t + N[5];
    double c = N[6] * t * t + N[7] * t + N[8];
    double root = 2 * c / (-b + sqrt(b * b - 4 * a * c));
    return root * root * root * root * 1000;
}

double by_hand_boiling_point(double pressure_kpa) {
    double b2 = sqrt(pressure_kpa / 1000), b = sqrt(b2);
    double e = b2 + N[3] * b + N[6];
    double f = N[1] * b2 + N[4] * b + N[7];
    double g = N[2] * b2 + N[5] * b + N[8];
    double d = 2 * g / (-f - sqrt(f * f - 4 * e * g)), sum = N[10] + d;
    return (sum - sqrt(sum * sum - 4 * (N[9] + N[10] * d))) / 2 - 273.15;
}

double by_hand_latent_heat(double t) { return 2500.92 + t * (-2.37625 + t * (5.6406e-4 - t * 1.25409e-5)); }

/* The standard troposphere: ISO 2533:1975. */

#define EXPONENT (9.80665 / (287.05287 * 0.0065))

double by_hand_pressure_at_altitude(double altitude_m) {
    return 101.325 * pow(1 - 0.0065 * altitude_m / 288.15, EXPONENT);
}

double by_hand_altitude_at_pressure(double pressure_kpa) {
    return (1 - pow(pressure_kpa / 101.325, 1 / EXPONENT)) * 288.15 / 0.0065;
}

/* dT/dt = -k F(T), F(T) = (T - Ta) + 6 K/kPa [p(T) - RH p(Ta)], for an open cup. */

static double speed(double celsius, double room_c, double vapour_kpa) {
    return celsius - room_c + 6 * (by_hand_vapour_pressure(celsius) - vapour_kpa);
}

/* Where cooling ends: F = 0, by Newton's steps. */
static double end(double room_c, double vapour_kpa) {
    double t = room_c;
    for (int step = 0; step < 8; step++) {
        double f = speed(t, room_c, vapour_kpa);
        t -= f * 1e-3 / (speed(t + 1e-3, room_c, vapour_kpa) - f);
    }
    return t;
}

/* k t: dT/F over ln(T - end), by five points on each of six panels. */
static double span(double from, double to, double end_c, double room_c, double vapour_kpa) {
    static const double NODE[5] = {-0.906179845938664, -0.5384693101056831, 0, 0.5384693101056831,
                                   0.906179845938664};
    static const double WEIGHT[5] = {0.2369268850561891, 0.4786286704993665, 0.5688888888888889,
                                     0.4786286704993665, 0.2369268850561891};
    double low = log(to - end_c), half = (log(from - end_c) - low) / 12, sum = 0;
    for (int panel = 0; panel < 6; panel++)
        for (int i = 0; i < 5; i++) {
            double theta = exp(low + half * (2 * panel + 1 + NODE[i]));
            sum += WEIGHT[i] * theta / speed(end_c + theta, room_c, vapour_kpa);
        }
    return sum * half;
}

double by_hand_time_to_cool(double water_c, double to_c, double cooling_per_min,
                            const struct cupwright_surroundings *room) {
    double vapour_kpa = room->humidity_pct / 100 * by_hand_vapour_pressure(room->room_c);
    double end_c = end(room->room_c, vapour_kpa);
    return 60 * span(water_c, to_c, end_c, room->room_c, vapour_kpa) / cooling_per_min;
}

double by_hand_cooling_rate(double water_c, double to_c, double time_s,
                            const struct cupwright_surroundings *room) {
    return by_hand_time_to_cool(water_c, to_c, 1, room) / time_s;
}

double by_hand_temperature_after(double water_c, double time_s, double cooling_per_min,
                                 const struct cupwright_surroundings *room) {
    double vapour_kpa = room->humidity_pct / 100 * by_hand_vapour_pressure(room->room_c);
    double end_c = end(room->room_c, vapour_kpa), goal = cooling_per_min * time_s / 60, t = water_c, step;
    /* Newton's steps in ln(T - end), where cooling is almost straight. */
    do {
        double theta = t - end_c;
        step = (goal - span(water_c, t, end_c, room->room_c, vapour_kpa)) *
               speed(t, room->room_c, vapour_kpa) / theta;
        t = end_c + theta * exp(-step);
    } while (fabs(step) > 1e-13);
    return t;
}

/* Readings: fits to the ICUMSA 1974 table, as in the docs. */

double by_hand_brix_of_index(double refractive_index) {
    double y = refractive_index - 1.33299;
    return y * (700.327805 + y * (-1831.48841 + y * 4666.42701));
}

double by_hand_index_of_brix(double b) {
    return 1.33299 + b * (1.42737174e-3 + b * (5.41909447e-6 + b * 1.70831402e-8));
}

double by_hand_brix_at_20(double brix, double sample_c) {
    double d = sample_c - 20;
    return brix + d * (0.06197413 + d * (1.209347e-3 - d * 7.130168e-6));
}

double by_hand_strength_of_brix(double brix, double factor) { return factor * brix; }

double by_hand_total_strength(double strength_pct, double water_solids_mg_per_l) {
    return strength_pct + 100 * share(water_solids_mg_per_l) * (1 - strength_pct / 100);
}

double by_hand_strength_of_index(double refractive_index, double sample_c, double factor) {
    return factor * by_hand_brix_at_20(by_hand_brix_of_index(refractive_index), sample_c);
}
