/* Fits by cminpack, the parameters as one would write them and derivatives in closed form where there are
   some; and the plainest code for a Savitzky-Golay slope. */

#include "peers.h"

#include <cminpack-1/cminpack.h>
#include <math.h>

#include "by_hand.h"

#define MOST 30
#define PARAMETERS 4
#define TOLERANCE 1e-12

static void by_derivatives(cminpack_funcder_mn model, const void *data, int m, int n, double *x) {
    double values[MOST], slopes[MOST * PARAMETERS], work[5 * PARAMETERS + MOST];
    int pivots[PARAMETERS];
    lmder1(model, (void *)data, m, n, x, values, slopes, m, TOLERANCE, pivots, work, 5 * n + m);
}

static int line(void *data, int m, int n, const double *x, double *off, double *slopes, int rows, int flag) {
    const struct cupwright_drained *brews = data;
    (void)n;
    for (int i = 0; i < m; i++) {
        double kept = brews[i].water_g - brews[i].beverage_g - brews[i].vapour_g;
        if (flag == 1) {
            off[i] = x[0] + x[1] * brews[i].dose_g - kept;
        } else {
            slopes[i] = 1;
            slopes[i + rows] = brews[i].dose_g;
        }
    }
    return 0;
}

double peer_retention_line(const struct cupwright_drained *brews, int count) {
    double x[2] = {0, 2};
    by_derivatives(line, brews, count, 2, x);
    return x[1];
}

static int one(void *data, int m, int n, const double *x, double *off, double *slopes, int rows, int flag) {
    const struct cupwright_timed *yields = data;
    (void)n;
    for (int i = 0; i < m; i++) {
        double t = yields[i].contact_s, left = exp(-t / x[1]);
        if (flag == 1) {
            off[i] = x[0] * (1 - left) - yields[i].yield_pct;
        } else {
            slopes[i] = 1 - left;
            slopes[i + rows] = -x[0] * left * t / (x[1] * x[1]);
        }
    }
    return 0;
}

double peer_one_rate(const struct cupwright_timed *yields, int count) {
    double x[2] = {20, 60};
    by_derivatives(one, yields, count, 2, x);
    return x[1];
}

static int two(void *data, int m, int n, const double *x, double *off, double *slopes, int rows, int flag) {
    const struct cupwright_timed *yields = data;
    (void)n;
    for (int i = 0; i < m; i++) {
        double t = yields[i].contact_s, fast = exp(-t / x[2]), slow = exp(-t / x[3]);
        double done = x[1] * (1 - fast) + (1 - x[1]) * (1 - slow);
        if (flag == 1) {
            off[i] = x[0] * done - yields[i].yield_pct;
        } else {
            slopes[i] = done;
            slopes[i + rows] = x[0] * (slow - fast);
            slopes[i + 2 * rows] = -x[0] * x[1] * fast * t / (x[2] * x[2]);
            slopes[i + 3 * rows] = -x[0] * (1 - x[1]) * slow * t / (x[3] * x[3]);
        }
    }
    return 0;
}

double peer_two_rates(const struct cupwright_timed *yields, int count) {
    double x[4] = {20, 0.5, 15, 150};
    by_derivatives(two, yields, count, 4, x);
    return x[3];
}

/* What is fitted, and where. */
struct cup {
    const struct cupwright_thermometer *readings;
    double room_c, vapour_kpa;
};

/* An open cup's law, per minute and unit of rate. */
static double speed(const struct cup *cup, double celsius) {
    return -(celsius - cup->room_c + 6 * (by_hand_vapour_pressure(celsius) - cup->vapour_kpa));
}

/* The law from reading to reading by Runge and Kutta's steps of at most 15 s. */
static int cooled(void *data, int m, int n, const double *x, double *off, int flag) {
    const struct cup *cup = data;
    double celsius = x[0], rate = x[1], minutes = cup->readings[0].time_s / 60;
    (void)n, (void)flag;
    for (int i = 0; i < m; i++) {
        double until = cup->readings[i].time_s / 60;
        int steps = (int)ceil((until - minutes) / 0.25);
        double h = steps > 0 ? rate * (until - minutes) / steps : 0;
        for (int step = 0; step < steps; step++) {
            double a = speed(cup, celsius), b = speed(cup, celsius + h / 2 * a);
            double c = speed(cup, celsius + h / 2 * b), d = speed(cup, celsius + h * c);
            celsius += h / 6 * (a + 2 * b + 2 * c + d);
        }
        off[i] = celsius - cup->readings[i].water_c;
        minutes = until;
    }
    return 0;
}

double peer_cooling(const struct cupwright_thermometer *readings, int count,
                    const struct cupwright_surroundings *room) {
    struct cup cup = {readings, room->room_c, room->humidity_pct / 100 * by_hand_vapour_pressure(room->room_c)};
    double x[2] = {readings[0].water_c, 0.006}, values[MOST], work[MOST * 2 + 5 * 2 + MOST];
    int counts[2];
    lmdif1(cooled, &cup, count, 2, x, values, TOLERANCE, counts, work, count * 2 + 5 * 2 + count);
    return x[1];
}

double peer_slope_take(struct peer_slope *slope, double reading_g) {
    double flow = 0;
    int i = 0;
    slope->recent[slope->next] = reading_g;
    slope->next = slope->next + 1 == slope->window ? 0 : slope->next + 1;
    for (int at = slope->next; at < slope->window; at++) flow += slope->weights[i++] * slope->recent[at];
    for (int at = 0; at < slope->next; at++) flow += slope->weights[i++] * slope->recent[at];
    return flow;
}
