#include "brew.h"

#include <stddef.h>
#include <stdint.h>

#include "decimal.h"
#include "display.h"
#include "kept.h"
#include "refusal.h"
#include "scale.h"

/* The scale: 0.01 g, 5 kg; and a kettle with a spout. */
static const cupwright_live_setup setup = {
    .division_g = 0.01,
    .capacity_g = 5000.0,
    .fastest_g_per_s = 15.0,
};

/* A guess, as it was when the brewer was learned. */
static const double vapour_g = 1.2;

/* Invented. Times count from the first water. The vessel is the cup, weighed once and empty. */
static const cupwright_live_step recipe[] = {
    {.step = CUPWRIGHT_STEP_RINSE},
    {.step = CUPWRIGHT_STEP_DOSE, .dose_g = 16.0},
    {.step = CUPWRIGHT_STEP_POUR, .to_g = 60.0},
    {.step = CUPWRIGHT_STEP_STIR, .from_s = 15.0},
    {.step = CUPWRIGHT_STEP_POUR, .to_g = 248.0, .from_s = 45.0},
    {.step = CUPWRIGHT_STEP_WAIT, .until_s = 120.0},
    {.step = CUPWRIGHT_STEP_PRESS},
    {.step = CUPWRIGHT_STEP_BEVERAGE, .vessel_g = 312.4},
};
enum { STEPS = sizeof recipe / sizeof recipe[0] };

/* The brew, and the same brew where the power never fails: a copy goes on as the follower itself. That is here to
 * compare; a scale needs the one. */
static cupwright_follower follower, uncut;

static void show_event(const cupwright_live_seen *seen) {
    display_moment(seen->event_clock_s);
    display_number(cupwright_happening_text(seen->event), seen->event_change_g, 2, CUPWRIGHT_QUANTITY_CHANGE);
}

static void show_cue(double clock_s, const cupwright_live_now *now) {
    display_moment(clock_s);
    display_text("  -> ");
    display_text(cupwright_cue_text(now->cue));
    display_text(": ");
    display_line(cupwright_why_text(now->why));
    if (now->has_to_pour) {
        display_indent();
        display_number("  water so far", now->seen.poured_g, 1, CUPWRIGHT_QUANTITY_POURED);
        display_indent();
        display_number("  to pour", now->to_pour_g, 1, CUPWRIGHT_QUANTITY_CHANGE);
    }
    if (now->has_to_pour && now->seen.unclear_g > 0.0) {
        display_indent();
        display_number("  not sure of", now->seen.unclear_g, 1, CUPWRIGHT_QUANTITY_UNCLEAR);
    }
    if (now->has_to_pour && now->has_ratio) {
        display_indent();
        display_number("  ratio", now->ratio_g_per_g, 2, CUPWRIGHT_QUANTITY_WATER_RATIO);
    }
    if (now->has_to_wait) {
        display_indent();
        display_number("  to wait", now->to_wait_s, 0, CUPWRIGHT_QUANTITY_TIME);
    }
}

/* Each event, and each change of what to do or why. */
static void show(double clock_s, const cupwright_live_now *before, const cupwright_live_now *now) {
    if (now->seen.event != 0) {
        show_event(&now->seen);
    }
    if (now->step != before->step || now->cue != before->cue || now->why != before->why) {
        show_cue(clock_s, now);
    }
}

/* The power fails: the brew goes to flash with what is left of it, memory is lost, and the brew comes back. */
static bool survive_power_cut(void) {
    cupwright_error error;
    display_line("the power fails");
    if (!refusal_none(kept_write(&follower, &error), &error)) {
        return false;
    }
    for (size_t at = 0; at < sizeof follower.state / sizeof follower.state[0]; at++) {
        uncut.state[at] = follower.state[at];
        follower.state[at] = 0;
    }
    scale_set_zero_mg(0);
    /* Memory in which nothing was begun is refused; so a restart in mid-brew can be told from a new one. */
    if (cupwright_follow_go_on(&follower, &error) != CUPWRIGHT_STATUS_NOT_BEGUN) {
        return false;
    }
    refusal_show(&error);
    if (!refusal_none(kept_read(&follower, &error), &error)) {
        return false;
    }
    display_line("  read back from flash");
    return true;
}

static bool set_zero(double clock_s, double shown_g) {
    cupwright_error error;
    const double change_g = scale_zero(shown_g);
    display_moment(clock_s);
    display_number("zero button", change_g, 2, CUPWRIGHT_QUANTITY_CHANGE);
    return refusal_none(cupwright_follow_zeroed(&follower, change_g, &error), &error);
}

static bool go_on_uncut(const struct scale_reading *reading) {
    cupwright_live_now unused;
    cupwright_error error;
    return refusal_none(cupwright_follow_take(&uncut, recipe, STEPS, reading->clock_s, reading->reading_g, &unused,
                                              &error),
                        &error);
}

/* Where all that the reading has changed by is put down, and whether the power cut has changed a bit of it. */
static bool show_account(double level_g) {
    cupwright_error error;
    cupwright_live_accounts account, as_uncut;
    if (!refusal_none(cupwright_follow_account(&follower, &account, &error), &error) ||
        !refusal_none(cupwright_follow_account(&uncut, &as_uncut, &error), &error)) {
        return false;
    }
    const struct {
        const char *label;
        double grams, as_uncut;
    } rows[] = {
        {"water, less what went off", account.poured_g, as_uncut.poured_g},
        {"put on, less taken off", account.moved_g, as_uncut.moved_g},
        {"set to zero", account.tared_g, as_uncut.tared_g},
        {"drifted, evaporated", account.drifted_g, as_uncut.drifted_g},
        {"water or not", account.unclear_g, as_uncut.unclear_g},
        {"under way", account.under_way_g, as_uncut.under_way_g},
    };
    bool same = true;
    display_line("the account");
    for (size_t row = 0; row < sizeof rows / sizeof rows[0]; row++) {
        display_number(rows[row].label, rows[row].grams, 2, CUPWRIGHT_QUANTITY_CHANGE);
        same = same && decimal_bits(rows[row].grams) == decimal_bits(rows[row].as_uncut);
    }
    display_number("their sum, the reading", level_g, 2, CUPWRIGHT_QUANTITY_LEVEL);
    display_line(same ? "  as if the power had not failed" : "  NOT as if the power had not failed");
    return same;
}

/* What will come out, by what the brewer kept before: shown when it is time to press. */
static bool show_expected(const cupwright_profile *profile, double water_g) {
    cupwright_error error;
    cupwright_live_weighed weighed;
    cupwright_expected expected;
    if (!refusal_none(cupwright_follow_weighed(&follower, &weighed, &error), &error) ||
        !refusal_none(cupwright_profile_expected_beverage(profile, weighed.dose_g, water_g, vapour_g, &expected,
                                                          &error),
                      &error)) {
        return false;
    }
    display_indent();
    display_number("  beverage to expect", expected.beverage_g, 1, CUPWRIGHT_QUANTITY_BEVERAGE);
    display_indent();
    display_number("  standard uncertainty", expected.u_beverage_g, 1, CUPWRIGHT_QUANTITY_MASS_UNCERTAINTY);
    return true;
}

static bool is_at(const cupwright_live_now *now, int32_t step) {
    return now->step < STEPS && recipe[now->step].step == step;
}

/* What was weighed, and what the hand has taught. */
static bool show_weighed(struct brew *brew) {
    cupwright_error error;
    cupwright_live_weighed weighed;
    if (!refusal_none(cupwright_follow_weighed(&follower, &weighed, &error), &error) || !weighed.has_dose ||
        !weighed.has_beverage) {
        return false;
    }
    brew->dose_g = weighed.dose_g;
    brew->beverage_g = weighed.beverage_g;
    display_line("weighed");
    display_number("dose", brew->dose_g, 1, CUPWRIGHT_QUANTITY_DOSE);
    display_number("water", brew->water_g, 1, CUPWRIGHT_QUANTITY_BREW_WATER);
    display_number("beverage", brew->beverage_g, 1, CUPWRIGHT_QUANTITY_BEVERAGE);
    display_number("dripped off while it was lifted", weighed.drips_g, 1, CUPWRIGHT_QUANTITY_DRIPS);
    display_number("a stop is called ahead by", weighed.lead_s, 2, CUPWRIGHT_QUANTITY_LEAD);
    return true;
}

bool brew_follow(const cupwright_profile *profile, struct brew *brew) {
    cupwright_error error;
    cupwright_live_now now = {.step = -1}, before = {.step = -1};
    struct scale_reading reading;
    bool zero_wanted = false, was_cut = false;
    display_line("the brew");
    if (!refusal_none(cupwright_follow_begin(&setup, &follower, &error), &error)) {
        return false;
    }
    while (scale_next(&reading)) {
        if (cupwright_follow_take(&follower, recipe, STEPS, reading.clock_s, reading.reading_g, &now, &error) !=
            CUPWRIGHT_STATUS_OK) {
            /* A reading that is none is left out. */
            display_moment(reading.clock_s);
            refusal_show(&error);
            continue;
        }
        show(reading.clock_s, &before, &now);
        if (is_at(&now, CUPWRIGHT_STEP_PRESS) && !is_at(&before, CUPWRIGHT_STEP_PRESS) &&
            !show_expected(profile, now.seen.poured_g)) {
            return false;
        }
        before = now;
        zero_wanted = zero_wanted || reading.button;
        if (zero_wanted && now.seen.doing == CUPWRIGHT_DOING_STILL) {
            /* People press too early: the display waits until all is still. */
            zero_wanted = false;
            if (!set_zero(reading.clock_s, now.seen.level_g)) {
                return false;
            }
        }
        if (was_cut && !go_on_uncut(&reading)) {
            return false;
        }
        if (reading.power_fails) {
            was_cut = true;
            if (!survive_power_cut()) {
                return false;
            }
        }
    }
    brew->water_g = now.seen.poured_g;
    return show_account(now.seen.level_g) && show_weighed(brew);
}
