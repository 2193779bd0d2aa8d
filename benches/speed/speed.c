/* Every formula of the table beside its peer, as a program and as a library for benches/peers.rs.

       speed agree   fails where two do not answer alike
       speed values  prints a formula, an input, our answer
       speed rows    prints a formula and a remark
       speed count   under callgrind: leaves a dump for each formula and side, of so many calls and of twice as many
*/

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <valgrind/callgrind.h>

#include "by_hand.h"
#include "peers.h"
#include "weights.h"

/* What the library shows; all else is called as within a program. */
#define EXPORTED __attribute__((visibility("default")))

#define INPUTS 8

/* Inputs of the row that runs, the answers to them, and the statuses of all calls. */
static double inputs[INPUTS], answers[INPUTS];
static int refused;

struct row {
    const char *name;
    const char *remark;
    double low, high;
    /* How far the two may differ, of the answer. */
    double tolerance;
    /* Calls that are counted. */
    long calls;
    /* Makes so many calls. */
    void (*ours)(long calls);
    void (*theirs)(long calls);
};

/* Two loops over the inputs x: our call, which writes its answer to y, and what the peer answers. */
#define PAIR(id, call, peer)                             \
    static void ours_##id(long calls) {                  \
        for (long i = 0; i < calls; i++) {               \
            double x = inputs[i % INPUTS];               \
            double *y = &answers[i % INPUTS];            \
            refused |= call;                             \
        }                                                \
    }                                                    \
    static void theirs_##id(long calls) {                \
        for (long i = 0; i < calls; i++) {               \
            double x = inputs[i % INPUTS];               \
            answers[i % INPUTS] = peer;                  \
        }                                                \
    }

static const struct cupwright_brew BREW = {15, 200, 172, 2, 80, 2, 100};
static const struct cupwright_kinetics KINETICS = {21, 60, 15, 150};
static const struct cupwright_losses LOSSES = {1.9, 3, 1.2, 2, 0.5, 1.5};
static const struct cupwright_body BODIES[2] = {{25.6, 21}, {168, 21}};
static const struct cupwright_surroundings ROOM = {20, 50, CUPWRIGHT_COVER_OPEN};

/* The loop itself: what it takes is taken off every other row's instructions. */
PAIR(loop, (*y = x, 0), x)
PAIR(call, (*y = x * cupwright_abi_version(), 0), x * by_hand_nothing())
PAIR(after_pour, cupwright_heat_after_pour(x, 1, y, NULL), by_hand_after_pour(x, 1))
PAIR(water_ratio, cupwright_ratio_water_ratio(x, 250, y, NULL), by_hand_water_ratio(x, 250))
PAIR(dose_for_water, cupwright_ratio_dose_for_water(x, 16, y, NULL), by_hand_dose_for_water(x, 16))
PAIR(dose_per_litre, cupwright_ratio_dose_per_litre(16, x, y, NULL), by_hand_dose_per_litre(16, x))
PAIR(flow_through_yield, cupwright_extraction_flow_through_yield(x, 190, 16, y, NULL),
     by_hand_flow_through_yield(x, 190, 16))
PAIR(flow_through_strength, cupwright_extraction_flow_through_strength(x, 190, 16, y, NULL),
     by_hand_flow_through_strength(x, 190, 16))
PAIR(steeped_yield, cupwright_extraction_steeped_yield(x, 200, 15, y, NULL), by_hand_steeped_yield(x, 200, 15))
PAIR(steeped_strength, cupwright_extraction_steeped_strength(x, 15, y, NULL), by_hand_steeped_strength(x, 15))
PAIR(yield, cupwright_extraction_yield(&BREW, x, y, NULL), by_hand_yield(&BREW, x))
PAIR(strength, cupwright_extraction_strength(&BREW, x, y, NULL), by_hand_strength(&BREW, x))
PAIR(yield_at_time, cupwright_extraction_yield_at_time(&KINETICS, x, y, NULL), by_hand_yield_at_time(&KINETICS, x))
PAIR(beverage, cupwright_retention_beverage(&LOSSES, x, 250, y, NULL), by_hand_beverage(&LOSSES, x, 250))
PAIR(strength_after_water, cupwright_dilution_strength_after_water(x, 5.2, 120, 80, y, NULL),
     by_hand_strength_after_water(x, 5.2, 120, 80))
PAIR(water_to_reach, cupwright_dilution_water_to_reach(x, 1.5, 1.25, 80, y, NULL),
     by_hand_water_to_reach(x, 1.5, 1.25, 80))
PAIR(mixed_temperature, cupwright_dilution_mixed_temperature(150, x, 100, 20, y, NULL),
     by_hand_mixed_temperature(150, x, 100, 20))
PAIR(density, cupwright_water_density(x, y, NULL), by_hand_density(x))
PAIR(specific_heat, cupwright_water_specific_heat(x, y, NULL), by_hand_specific_heat(x))
PAIR(enthalpy, cupwright_water_enthalpy(x, y, NULL), by_hand_enthalpy(x))
PAIR(temperature_of_enthalpy, cupwright_water_temperature_of_enthalpy(x, y, NULL),
     by_hand_temperature_of_enthalpy(x))
PAIR(vapour_pressure, cupwright_water_vapour_pressure(x, y, NULL), by_hand_vapour_pressure(x))
PAIR(boiling_point, cupwright_water_boiling_point(x, y, NULL), by_hand_boiling_point(x))
PAIR(latent_heat, cupwright_water_latent_heat(x, y, NULL), by_hand_latent_heat(x))
PAIR(pressure_at_altitude, cupwright_water_pressure_at_altitude(x, y, NULL), by_hand_pressure_at_altitude(x))
PAIR(altitude_at_pressure, cupwright_water_altitude_at_pressure(x, y, NULL), by_hand_altitude_at_pressure(x))
PAIR(settle, cupwright_heat_settle(250, x, BODIES, 2, y, NULL), by_hand_settle(250, x, BODIES, 2))
PAIR(time_to_cool, cupwright_heat_time_to_cool(x, 60, 0.006, &ROOM, y, NULL),
     by_hand_time_to_cool(x, 60, 0.006, &ROOM))
PAIR(cooling_rate, cupwright_heat_cooling_rate(x, 60, 900, &ROOM, y, NULL), by_hand_cooling_rate(x, 60, 900, &ROOM))
PAIR(temperature_after, cupwright_heat_temperature_after(x, 900, 0.006, &ROOM, y, NULL),
     by_hand_temperature_after(x, 900, 0.006, &ROOM))
PAIR(brix_of_index, cupwright_reading_brix_of_index(x, y, NULL), by_hand_brix_of_index(x))
PAIR(index_of_brix, cupwright_reading_index_of_brix(x, y, NULL), by_hand_index_of_brix(x))
PAIR(brix_at_20, cupwright_reading_brix_at_20(1.7, x, y, NULL), by_hand_brix_at_20(1.7, x))
PAIR(strength_of_brix, cupwright_reading_strength_of_brix(x, 0.85, y, NULL), by_hand_strength_of_brix(x, 0.85))
PAIR(total_strength, cupwright_reading_total_strength(x, CUPWRIGHT_ZERO_BREW_WATER, 80, y, NULL),
     by_hand_total_strength(x, 80))
PAIR(strength_of_index, cupwright_reading_strength_of_index(x, 25, 0.85, y, NULL),
     by_hand_strength_of_index(x, 25, 0.85))

/* Invented measurements; what is read of them is scaled, so that no two fits are alike. */

#define COUNT(of) (sizeof(of) / sizeof *(of))

static struct cupwright_drained brews[6];
static struct cupwright_timed yields[8];
static struct cupwright_thermometer cup[8];

static int with_brews(double x) {
    static const double KEPT[6][2] = {{12, 27.9}, {15, 34.6}, {18, 41.6}, {20, 43.4}, {25, 54.6}, {30, 65.6}};
    for (size_t i = 0; i < COUNT(brews); i++)
        brews[i] = (struct cupwright_drained){KEPT[i][0], 16 * KEPT[i][0], 16 * KEPT[i][0] - x * KEPT[i][1], 0};
    return 0;
}

static int with_yields(double x) {
    static const double SEEN[8][2] = {{5, 4.06},  {10, 6.91},   {20, 11.16},  {30, 13.73},
                                      {60, 17.0}, {120, 19.52}, {180, 20.78}, {300, 22.19}};
    for (size_t i = 0; i < COUNT(yields); i++)
        yields[i] = (struct cupwright_timed){SEEN[i][0], x * SEEN[i][1]};
    return 0;
}

static int with_cup(double x) {
    static const double SEEN[8] = {82.3, 75.8, 70.2, 65.0, 60.9, 57.4, 54.4, 51.4};
    for (size_t i = 0; i < COUNT(cup); i++)
        cup[i] = (struct cupwright_thermometer){200.0 * (double)i, x * SEEN[i]};
    return 0;
}

static int retention_line(double *y) {
    struct cupwright_retention_line line = {0};
    int status = cupwright_calibrate_retention_line(brews, COUNT(brews), &line, NULL);
    *y = line.apparent_retention_g_per_g;
    return status;
}

static int one_rate(double *y) {
    struct cupwright_one_rate law = {0};
    int status = cupwright_calibrate_one_rate(yields, COUNT(yields), &law, NULL);
    *y = law.time_constant_s;
    return status;
}

static int two_rates(double *y) {
    struct cupwright_two_rates law = {0};
    int status = cupwright_calibrate_two_rates(yields, COUNT(yields), &law, NULL);
    *y = law.slow_time_s;
    return status;
}

static int cooling(double *y) {
    struct cupwright_cooling law = {0};
    int status = cupwright_calibrate_cooling(cup, COUNT(cup), &ROOM, &law, NULL);
    *y = law.cooling_per_min;
    return status;
}

PAIR(fitted_line, (with_brews(x) | retention_line(y)), (with_brews(x), peer_retention_line(brews, COUNT(brews))))
PAIR(fitted_one_rate, (with_yields(x) | one_rate(y)), (with_yields(x), peer_one_rate(yields, COUNT(yields))))
PAIR(fitted_two_rates, (with_yields(x) | two_rates(y)), (with_yields(x), peer_two_rates(yields, COUNT(yields))))
PAIR(fitted_cooling, (with_cup(x) | cooling(y)), (with_cup(x), peer_cooling(cup, COUNT(cup), &ROOM)))

/* Readings of a scale: rest, a pour of eight seconds at 5 g/s, rest, and again. */

#define READINGS 4096

static double readings[READINGS];

static void pour(double rate_hz) {
    uint32_t chance = 1;
    double level_g = 100;
    for (int i = 0; i < READINGS; i++) {
        double at_s = fmod(i / rate_hz, 12);
        if (at_s >= 2 && at_s < 10) level_g += 5 / rate_hz;
        chance = chance * 1664525u + 1013904223u;
        readings[i] = round((level_g + ((double)(chance >> 8) / 16777216 - 0.5) * 0.1) * 10) / 10;
    }
}

/* The last flows are the answers. */
static void followed(long calls, double rate_hz) {
    static const struct cupwright_live_setup SETUP = {0.1, 5000, 20};
    struct cupwright_scale scale;
    struct cupwright_live_seen seen;
    refused |= cupwright_live_begin(&SETUP, &scale, NULL);
    for (long i = 0; i < calls; i++) {
        refused |= cupwright_live_take(&scale, (double)i / rate_hz, readings[i % READINGS], &seen, NULL);
        answers[i % INPUTS] = seen.flow_g_per_s;
    }
}

static void sloped(long calls, double rate_hz, const double *weights, int window) {
    struct peer_slope slope = {weights, window, 0, {0}};
    for (int i = 0; i < window; i++) slope.recent[i] = readings[0];
    for (long i = 0; i < calls; i++)
        answers[i % INPUTS] = rate_hz * peer_slope_take(&slope, readings[i % READINGS]);
}

static void ours_slow_scale(long calls) { followed(calls, 10); }
static void theirs_slow_line(long calls) { sloped(calls, 10, WEIGHTS_1_9, 9); }
static void theirs_slow_parabola(long calls) { sloped(calls, 10, WEIGHTS_2_17, 17); }
static void ours_fast_scale(long calls) { followed(calls, 80); }
static void theirs_fast_parabola(long calls) { sloped(calls, 80, WEIGHTS_2_129, 129); }

#define FORMULA(name, id, low, high, remark) \
    {name, remark, low, high, 1e-9, INPUTS, ours_##id, theirs_##id}
#define FIT(name, id, remark) {name, remark, 0.99, 1.01, 1e-6, INPUTS, ours_##id, theirs_##id}
/* As many readings as end within a pour; two slopes of noisy readings are only roughly the same. */
#define LIVE(name, id, peer, hz, calls, remark) {name, remark, hz, hz, 0.5, calls, ours_##id, theirs_##peer}

static const struct row ROWS[] = {
    FORMULA("loop", loop, 1, 2, ""),
    FORMULA("call", call, 1, 2, "nothing but the call: the layout's version"),
    FORMULA("heat_after_pour", after_pour, 80, 99, "a subtraction; two inputs and the answer checked"),
    FORMULA("ratio_water_ratio", water_ratio, 12, 20, "a division; two inputs and the answer checked"),
    FORMULA("ratio_dose_for_water", dose_for_water, 200, 300, "the same"),
    FORMULA("ratio_dose_per_litre", dose_per_litre, 20, 95, ""),
    FORMULA("extraction_flow_through_yield", flow_through_yield, 1.2, 1.5, "three inputs"),
    FORMULA("extraction_flow_through_strength", flow_through_strength, 18, 22, "three inputs"),
    FORMULA("extraction_steeped_yield", steeped_yield, 1.2, 1.5, "three inputs"),
    FORMULA("extraction_steeped_strength", steeped_strength, 18, 22, ""),
    FORMULA("extraction_yield", yield, 1.2, 1.5, "eight inputs, and whether the water suffices"),
    FORMULA("extraction_strength", strength, 18, 22, "eight inputs, and whether the water suffices"),
    FORMULA("extraction_yield_at_time", yield_at_time, 20, 300, "five inputs; libm's expm1"),
    FORMULA("retention_beverage", beverage, 12, 20, "eight inputs"),
    FORMULA("dilution_strength_after_water", strength_after_water, 40, 60, "four inputs"),
    FORMULA("dilution_water_to_reach", water_to_reach, 200, 300, "four inputs, and whether any water can do it"),
    FORMULA("dilution_mixed_temperature", mixed_temperature, 70, 95, ""),
    FORMULA("water_density", density, 1, 99, ""),
    FORMULA("water_specific_heat", specific_heat, 1, 99, ""),
    FORMULA("water_enthalpy", enthalpy, 1, 99, ""),
    FORMULA("water_temperature_of_enthalpy", temperature_of_enthalpy, 50, 400, ""),
    FORMULA("water_vapour_pressure", vapour_pressure, 1, 99, ""),
    FORMULA("water_boiling_point", boiling_point, 60, 105, ""),
    FORMULA("water_latent_heat", latent_heat, 1, 99, ""),
    FORMULA("water_pressure_at_altitude", pressure_at_altitude, 100, 3000, "libm's exp and ln beside glibc's pow"),
    FORMULA("water_altitude_at_pressure", altitude_at_pressure, 70, 100, "libm's exp and ln beside glibc's pow"),
    FORMULA("heat_settle", settle, 85, 96, "six inputs"),
    FORMULA("heat_time_to_cool", time_to_cool, 80, 92, "libm's exp"),
    FORMULA("heat_cooling_rate", cooling_rate, 80, 92, "libm's exp"),
    FORMULA("heat_temperature_after", temperature_after, 80, 92, "libm's exp"),
    FORMULA("reading_brix_of_index", brix_of_index, 1.334, 1.338, ""),
    FORMULA("reading_index_of_brix", index_of_brix, 1, 5, ""),
    FORMULA("reading_brix_at_20", brix_at_20, 15, 30, ""),
    FORMULA("reading_strength_of_brix", strength_of_brix, 1, 2, ""),
    FORMULA("reading_total_strength", total_strength, 1.2, 1.5, ""),
    FORMULA("reading_strength_of_index", strength_of_index, 1.334, 1.338, "three formulas, each answer checked"),
    FIT("calibrate_retention_line", fitted_line, "closed form; MINPACK iterates"),
    FIT("calibrate_one_rate", fitted_one_rate, "finds its own start"),
    FIT("calibrate_two_rates", fitted_two_rates, "finds its own start; asks whether the second rate earns its place"),
    FIT("calibrate_cooling", fitted_cooling, "the law as one series; by hand in steps of 15 s"),
    LIVE("live_take at 10 Hz, line", slow_scale, slow_line, 10, 1000, "window of 9"),
    LIVE("live_take at 10 Hz, parabola", slow_scale, slow_parabola, 10, 1000, "window of 17"),
    LIVE("live_take at 80 Hz, parabola", fast_scale, fast_parabola, 80, 560, "window of 129"),
};

/* Makes a row's inputs what the loops read. */
static void prepare(const struct row *row) {
    for (int i = 0; i < INPUTS; i++) inputs[i] = row->low + (row->high - row->low) * i / (INPUTS - 1);
    if (strncmp(row->name, "live", 4) == 0) pour(row->low);
}

static void agree(const struct row *row) {
    double ours[INPUTS];
    row->ours(row->calls);
    memcpy(ours, answers, sizeof ours);
    row->theirs(row->calls);
    for (int i = 0; i < INPUTS; i++)
        if (!(fabs(ours[i] - answers[i]) <= row->tolerance * fabs(ours[i]))) {
            fprintf(stderr, "%s of %g: ours %.12g, theirs %.12g\n", row->name, inputs[i], ours[i], answers[i]);
            exit(1);
        }
}

static void tell(const struct row *row) {
    row->ours(row->calls);
    for (int i = 0; i < INPUTS; i++) printf("%s %.17g %.17g\n", row->name, inputs[i], answers[i]);
}

/* Once and twice as many calls: their difference has nothing of what surrounds them. The first calls of all look for
   the system's functions, and are not counted. */
static void count(const struct row *row) {
    void (*side[2])(long) = {row->ours, row->theirs};
    char name[100];
    for (int i = 0; i < 2; i++) {
        side[i](row->calls);
        for (int times = 1; times <= 2; times++) {
            snprintf(name, sizeof name, "%s|%d|%ld", row->name, i, times * row->calls);
            CALLGRIND_ZERO_STATS;
            side[i](times * row->calls);
            CALLGRIND_DUMP_STATS_AT(name);
        }
    }
}

/* Prepares a row; its name, or NULL after the last. */
EXPORTED const char *speed_prepare(size_t row) {
    if (row >= COUNT(ROWS)) return NULL;
    prepare(&ROWS[row]);
    return ROWS[row].name;
}

/* Makes so many calls of the row that was prepared; whether any was refused. */
EXPORTED int speed_run(size_t row, int theirs, long calls) {
    (theirs ? ROWS[row].theirs : ROWS[row].ours)(calls);
    return refused;
}

int main(int given, char **words) {
    const char *wish = given == 2 ? words[1] : "";
    for (size_t i = 0; i < COUNT(ROWS); i++) {
        prepare(&ROWS[i]);
        if (strcmp(wish, "agree") == 0) agree(&ROWS[i]);
        else if (strcmp(wish, "values") == 0) tell(&ROWS[i]);
        else if (strcmp(wish, "rows") == 0) printf("%s|%s\n", ROWS[i].name, ROWS[i].remark);
        else if (strcmp(wish, "count") == 0) count(&ROWS[i]);
        else return 2;
    }
    if (refused) fprintf(stderr, "a call was refused\n");
    return refused != 0;
}
