/*
 * Brews on a scale: it is watched and the brew is followed, and each reading's answers are compared with the
 * core's by a hash over their bits.
 *
 * A line is an operation, two numbers as the hexadecimal digits of their bits, and digits that depend on
 * the operation: crates/xtask/src/brews.rs.
 */

#ifndef BREWS_H
#define BREWS_H

#include "words.h"

/* Another program may look closer at each reading, and at what the brew will be. */
#if !defined(READ)
#define READ(what)
#endif

enum { END, BEGIN, STEP, TAKE, REFUSED, ZEROED, COUNT_ANEW, GO_ON, KNOW, TOLD };

enum { MOST_STEPS = 24 };

static cupwright_scale scale;
static cupwright_follower follower;
static cupwright_live_step recipe[MOST_STEPS];
static size_t steps;
/* Brews so far, and readings of this one. */
static unsigned brews, readings;

static uint64_t hash;

static void put_bits(uint64_t bits) {
    hash = ((hash << 5 | hash >> 59) ^ bits) * 0x517CC1B727220A95u;
}

static void put_number(double number) {
    put_bits(bits_of(number));
}

static void put_perhaps(int32_t has, double number) {
    put_bits((uint64_t)has);
    put_number(number);
}

static void put_seen(const cupwright_live_seen *seen) {
    put_number(seen->level_g);
    put_perhaps(seen->has_flow, seen->flow_g_per_s);
    put_number(seen->poured_g);
    put_number(seen->unclear_g);
    put_bits((uint64_t)seen->doing);
    put_bits((uint64_t)seen->event);
    put_number(seen->event_clock_s);
    put_number(seen->event_change_g);
}

static void put_now(const cupwright_live_now *now) {
    put_seen(&now->seen);
    put_bits((uint64_t)now->step);
    put_bits((uint64_t)now->cue);
    put_bits((uint64_t)now->why);
    put_perhaps(now->has_to_pour, now->to_pour_g);
    put_perhaps(now->has_to_wait, now->to_wait_s);
    put_perhaps(now->has_ratio, now->ratio_g_per_g);
    put_perhaps(now->has_brewing, now->brewing_s);
    put_perhaps(now->has_flow_variation, now->flow_variation_pct);
}

static void put_account(const cupwright_live_accounts *account) {
    put_number(account->poured_g);
    put_number(account->moved_g);
    put_number(account->tared_g);
    put_number(account->drifted_g);
    put_number(account->unclear_g);
    put_number(account->under_way_g);
    put_number(account->u_poured_g);
}

#define KNOWN CUPWRIGHT_DEGREES_OF_FREEDOM_HIGHEST

/** A brew as it was meant: that of crates/xtask/src/brews.rs. */
static const cupwright_intended MEANT = {
    .dose = {15.0, 0.0625, KNOWN},
    .water = {240.0, 2.0, KNOWN},
    .yield = {20.5, 0.5, KNOWN},
    .losses = {.apparent_retention_g_per_g = 1.375, .hold_up_g = 3.0},
    .retention = {0.125, KNOWN},
    .other = {1.0, KNOWN},
    .moisture_pct = 1.75,
    .held_strength_pct = 100.0,
    .portion = {190.0, 0.0, KNOWN},
    .added = {0.0, 0.0, KNOWN},
};

static void put_outlook(void) {
    const cupwright_window window = CUPWRIGHT_HOME_BREWER_2018;
    cupwright_outlook outlook;
    BEFORE_CALL();
    int32_t status = cupwright_follow_outlook(&follower, &MEANT, &window, &outlook, NULL);
    AFTER_CALL();
    READ(2);
    put_bits((uint64_t)status);
    if (status == CUPWRIGHT_STATUS_OK) {
        put_number(outlook.beverage_g);
        put_number(outlook.u_beverage_g);
        put_number(outlook.strength_pct);
        put_number(outlook.u_strength_pct);
        put_number(outlook.counted_yield_pct);
        put_number(outlook.u_counted_yield_pct);
        put_number(outlook.correlation);
        put_number(outlook.inside_pct);
    }
}

static int32_t watch(double clock_s, double reading_g, cupwright_live_seen *seen, cupwright_error *error) {
    BEFORE_CALL();
    int32_t status = cupwright_live_take(&scale, clock_s, reading_g, seen, error);
    AFTER_CALL();
    READ(0);
    return status;
}

static int32_t follow(double clock_s, double reading_g, cupwright_live_now *now, cupwright_error *error) {
    BEFORE_CALL();
    int32_t status = cupwright_follow_take(&follower, recipe, steps, clock_s, reading_g, now, error);
    AFTER_CALL();
    READ(1);
    return status;
}

static int begin(double division_g, double capacity_g, double fastest_g_per_s) {
    const cupwright_live_setup setup = {division_g, capacity_g, fastest_g_per_s};
    steps = 0;
    brews++;
    readings = 0;
    return cupwright_live_begin(&setup, &scale, NULL) + cupwright_follow_begin(&setup, &follower, NULL);
}

static int add_step(double a, double b, int32_t kind) {
    if (steps == MOST_STEPS) {
        return 1;
    }
    cupwright_live_step *step = &recipe[steps++];
    step->step = kind;
    step->dose_g = step->to_g = step->until_s = step->vessel_g = a;
    step->from_s = kind == CUPWRIGHT_STEP_STIR ? a : b;
    return 0;
}

/** Both states go to bytes and come back. */
static int restore(void) {
    static uint8_t bytes[CUPWRIGHT_FOLLOWER_BYTES];
    int wrong = cupwright_live_to_bytes(&scale, bytes, NULL);
    mark(&scale, sizeof scale);
    wrong += cupwright_live_from_bytes(bytes, CUPWRIGHT_SCALE_BYTES, &scale, NULL);
    wrong += cupwright_follow_to_bytes(&follower, bytes, NULL);
    mark(&follower, sizeof follower);
    return wrong + cupwright_follow_from_bytes(bytes, CUPWRIGHT_FOLLOWER_BYTES, &follower, NULL);
}

static int take_reading(double clock_s, double reading_g, uint64_t expected) {
    cupwright_live_seen seen;
    cupwright_live_now now;
    int wrong = ++readings % 40 == 0 ? restore() : 0;
    wrong += watch(clock_s, reading_g, &seen, NULL) + follow(clock_s, reading_g, &now, NULL);
    if (wrong == 0) {
        hash = 0;
        put_seen(&seen);
        put_now(&now);
    }
    return wrong != 0 || hash != expected;
}

/** A refused reading writes no answer and leaves the state as it was: the hashes of the next ones tell. */
static int refuse_reading(double clock_s, double reading_g, int32_t expected) {
    cupwright_live_seen seen;
    cupwright_live_now now;
    cupwright_error error;
    mark(&seen, sizeof seen);
    mark(&now, sizeof now);
    readings++;
    int wrong = watch(clock_s, reading_g, &seen, &error) != expected || error.status != expected;
    wrong += follow(clock_s, reading_g, &now, &error) != expected || error.status != expected;
    return wrong + !is_marked(&seen, sizeof seen) + !is_marked(&now, sizeof now);
}

static int know(double dose_g, double beverage_g, double lead_s) {
    return cupwright_follow_set_dose(&follower, dose_g, NULL) +
           cupwright_follow_set_beverage(&follower, beverage_g, NULL) +
           cupwright_follow_set_lead(&follower, lead_s, NULL);
}

static int tell(uint64_t expected) {
    cupwright_live_accounts account, followed;
    cupwright_live_weighed weighed;
    int wrong = cupwright_live_account(&scale, &account, NULL) + cupwright_follow_account(&follower, &followed, NULL) +
                cupwright_follow_weighed(&follower, &weighed, NULL);
    if (wrong == 0) {
        hash = 0;
        put_account(&account);
        put_account(&followed);
        put_perhaps(weighed.has_dose, weighed.dose_g);
        put_perhaps(weighed.has_beverage, weighed.beverage_g);
        put_number(weighed.drips_g);
        put_number(weighed.lead_s);
        put_outlook();
    }
    return wrong != 0 || hash != expected;
}

static int play(uint64_t operation, double a, double b, uint64_t expected) {
    switch (operation) {
    case BEGIN:
        return begin(a, b, of_bits(expected));
    case STEP:
        return add_step(a, b, (int32_t)expected);
    case TAKE:
        return take_reading(a, b, expected);
    case REFUSED:
        return refuse_reading(a, b, (int32_t)expected);
    case ZEROED:
        return cupwright_live_zeroed(&scale, a, NULL) + cupwright_follow_zeroed(&follower, a, NULL);
    case COUNT_ANEW:
        return cupwright_live_count_anew(&scale, NULL);
    case GO_ON:
        return cupwright_follow_go_on(&follower, NULL);
    case KNOW:
        return know(a, b, of_bits(expected));
    case TOLD:
        return tell(expected);
    default:
        return 1;
    }
}

/** Plays all brews; the lines that are wrong, of which one more than twenty are enough, and all lines. */
static int play_brews(uint64_t *lines) {
    int wrong = 0;
    for (*lines = 0; wrong <= 20; ++*lines) {
        uint64_t operation = next_number(10);
        double a = of_bits(next_number(16)), b = of_bits(next_number(16));
        uint64_t expected = next_number(16);
        if (operation == END) {
            break;
        }
        if (play(operation, a, b, expected) != 0) {
            print("brew ");
            print_number(brews, 10);
            print(", reading ");
            print_number(readings, 10);
            print(" differs\n");
            wrong++;
        }
    }
    return wrong;
}

#endif
