#include "cup.h"

#include <stddef.h>
#include <stdint.h>

#include "believe.h"
#include "display.h"
#include "refusal.h"

static const double confidence_pct = 95.0;
static const double wanted_strength_pct = 1.30;
const double cup_water_solids_mg_per_l = 90.0;
static const cupwright_window window = CUPWRIGHT_HOME_BREWER_2018;

/* As good as known. */
static const double known = CUPWRIGHT_DEGREES_OF_FREEDOM_HIGHEST;

/* What the person reads off a refractometer and enters, one after the other, until enough: invented. */
static const double readings_pct[] = {1.41, 1.40, 1.40, 1.42, 1.40, 1.41};
enum { READINGS = sizeof readings_pct / sizeof readings_pct[0] };

/* The instrument's sheet says ± 0.02 % and no more: a limit. */
static const double instrument_limit_pct = 0.02;

/* The coffee's refractive factor, against a dried sample: invented. */
static const cupwright_factor_uncertainty factor = {1.0, CUPWRIGHT_DEGREES_OF_FREEDOM_HIGHEST};

/* How well the scale weighs dose and beverage: an estimate. */
static const double u_weighed_g = 0.1;

/* A strength so far. */
struct strength {
    cupwright_strength_estimate estimate;
    int32_t decision;
    cupwright_readings_needed needed;
};

/* A result, how far to either side the truth may lie, and what that comes from most. */
static bool show_budget(const char *label, const cupwright_budget *budget, int places, int32_t quantity) {
    cupwright_error error;
    cupwright_expanded expanded;
    const cupwright_estimate estimate = {budget->value, budget->u, budget->degrees_of_freedom};
    if (!refusal_none(cupwright_uncertainty_expanded(&estimate, confidence_pct, &expanded, &error), &error)) {
        return false;
    }
    display_number(label, budget->value, places, quantity);
    display_number("  with 95 %, to either side", expanded.half_width, places + 1, quantity);
    if (budget->has_dominant) {
        display_text("    most of it from: ");
        display_line(cupwright_quantity_text(budget->dominant.source));
        display_number("  its share", budget->dominant.share_pct, 0, CUPWRIGHT_QUANTITY_SHARE);
    }
    return true;
}

static void show_decision(const char *what, int32_t decision) {
    static const char *const words[] = {
        [CUPWRIGHT_DECISION_INSIDE] = "inside the window",
        [CUPWRIGHT_DECISION_BELOW] = "below the window",
        [CUPWRIGHT_DECISION_ABOVE] = "above the window",
        [CUPWRIGHT_DECISION_NOT_YET] = "not yet decided",
        [CUPWRIGHT_DECISION_TOO_UNCERTAIN] = "too uncertain for so narrow a window",
    };
    display_text("    ");
    display_text(what);
    display_text(": ");
    display_line(words[decision]);
}

static bool decide(const char *what, const cupwright_budget *budget, const cupwright_band *band, int32_t *decision) {
    cupwright_error error;
    const cupwright_estimate estimate = {budget->value, budget->u, budget->degrees_of_freedom};
    if (!refusal_none(cupwright_decision_decide(&estimate, band, confidence_pct, decision, &error), &error)) {
        return false;
    }
    show_decision(what, *decision);
    return true;
}

/* How many readings in all would decide, where so much is left without their scatter. */
static bool ask_for_readings(const cupwright_profile *profile, const cupwright_budget *rest, const cupwright_band *band,
                             cupwright_readings_needed *needed) {
    cupwright_error error;
    const cupwright_learned *scatter = &profile->repeatability_pct;
    if (!refusal_none(cupwright_decision_readings_needed(rest->value, scatter->value, scatter->degrees_of_freedom,
                                                         rest->u, rest->degrees_of_freedom, band, confidence_pct,
                                                         needed, &error),
                      &error)) {
        return false;
    }
    if (needed->needed == CUPWRIGHT_NEEDED_READINGS) {
        display_number("  readings in all would decide", needed->readings, 0, CUPWRIGHT_QUANTITY_READING_COUNT);
    } else {
        display_line(needed->needed == CUPWRIGHT_NEEDED_MORE_THAN_TEN ? "    it would take more than ten readings"
                                                                      : "    no number of readings would decide");
    }
    return true;
}

/* The strength from so many readings, and whether it is inside. */
static bool read_strength(const cupwright_profile *profile, size_t count, struct strength *strength) {
    const cupwright_band band = {window.strength_lowest_pct, window.strength_highest_pct};
    const cupwright_repeatability_estimate repeatability = {
        profile->repeatability_pct.value, profile->repeatability_pct.u, profile->repeatability_pct.degrees_of_freedom};
    const cupwright_water_solids_estimate solids = {cup_water_solids_mg_per_l, 10.0, known};
    cupwright_error error;
    cupwright_strength_estimate read;
    cupwright_standard limit;
    cupwright_budget budget;
    if (!refusal_none(cupwright_uncertainty_of_readings(readings_pct, count, &repeatability, &read, &error), &error) ||
        !refusal_none(cupwright_uncertainty_of_limit(instrument_limit_pct, CUPWRIGHT_SHAPE_RECTANGULAR, &limit, &error),
                      &error)) {
        return false;
    }
    const cupwright_instrument_uncertainty instrument = {limit.u, limit.degrees_of_freedom};
    if (!refusal_none(cupwright_uncertainty_strength(&read, &instrument, &factor, CUPWRIGHT_ZERO_BREW_WATER, &solids,
                                                     &budget, &error),
                      &error) ||
        !show_budget("strength", &budget, 2, CUPWRIGHT_QUANTITY_STRENGTH)) {
        return false;
    }
    strength->estimate = (cupwright_strength_estimate){budget.value, budget.u, budget.degrees_of_freedom};
    if (!decide("strength", &budget, &band, &strength->decision)) {
        return false;
    }
    if (strength->decision != CUPWRIGHT_DECISION_NOT_YET) {
        return true;
    }
    /* What more readings do not lessen: the same without their scatter. */
    read.u_strength_pct = 0.0;
    read.nu_strength = known;
    return refusal_none(cupwright_uncertainty_strength(&read, &instrument, &factor, CUPWRIGHT_ZERO_BREW_WATER, &solids,
                                                       &budget, &error),
                        &error) &&
           ask_for_readings(profile, &budget, &band, &strength->needed);
}

/* As many readings as it takes: two, and as many more as the library says would decide. */
static bool read_until_decided(const cupwright_profile *profile, struct strength *strength) {
    size_t count = 0, wanted = 2;
    display_line("the strength");
    while (wanted > count && wanted <= READINGS) {
        for (; count < wanted; count++) {
            display_number("entered", readings_pct[count], 2, CUPWRIGHT_QUANTITY_STRENGTH);
        }
        if (!read_strength(profile, count, strength)) {
            return false;
        }
        if (strength->decision == CUPWRIGHT_DECISION_NOT_YET &&
            strength->needed.needed == CUPWRIGHT_NEEDED_READINGS) {
            wanted = (size_t)strength->needed.readings;
        }
    }
    return true;
}

/* The yield as it was steeped, and whether it can be. */
static bool show_steeped(const struct brew *brew, double strength_pct) {
    const cupwright_brew steeped = believe_steeped(brew);
    cupwright_error error;
    double yield_pct;
    if (!refusal_none(cupwright_extraction_yield(&steeped, strength_pct, &yield_pct, &error), &error)) {
        return false;
    }
    display_number("yield, steeped", yield_pct, 1, CUPWRIGHT_QUANTITY_YIELD);
    return believe_show(&steeped, strength_pct);
}

/* The yield as windows count it. The factor is in the strength already. */
static bool judge(const struct brew *brew, const struct strength *strength) {
    static const cupwright_factor_uncertainty none = {0.0, CUPWRIGHT_DEGREES_OF_FREEDOM_HIGHEST};
    static const char *const words[] = {
        [CUPWRIGHT_JOINT_DECISION_INSIDE] = "    the cup is inside the window",
        [CUPWRIGHT_JOINT_DECISION_OUTSIDE] = "    the cup is outside the window",
        [CUPWRIGHT_JOINT_DECISION_NOT_YET] = "    of the cup it is not yet decided",
    };
    const cupwright_bands bands = {window.strength_lowest_pct, window.strength_highest_pct, window.yield_lowest_pct,
                                   window.yield_highest_pct};
    const cupwright_band band = {window.yield_lowest_pct, window.yield_highest_pct};
    const cupwright_beverage_estimate beverage = {brew->beverage_g, u_weighed_g, known};
    const cupwright_dose_estimate dose = {brew->dose_g, u_weighed_g, known};
    cupwright_error error;
    cupwright_budget budget;
    cupwright_joint joint;
    int32_t decision;
    display_line("the verdict");
    if (!show_steeped(brew, strength->estimate.strength_pct)) {
        return false;
    }
    if (!refusal_none(cupwright_uncertainty_flow_through_yield(&strength->estimate, &beverage, &dose, &none, &budget,
                                                               &error),
                      &error) ||
        !show_budget("yield as if flowed through", &budget, 1, CUPWRIGHT_QUANTITY_YIELD) ||
        !decide("yield", &budget, &band, &decision)) {
        return false;
    }
    const cupwright_yield_estimate extracted = {budget.value, budget.u, budget.degrees_of_freedom};
    if (!refusal_none(cupwright_decision_joint(&bands, &strength->estimate, &extracted, budget.correlation, &joint,
                                               &error),
                      &error) ||
        !refusal_none(cupwright_decision_decide_joint(joint.both_pct, confidence_pct, &decision, &error), &error)) {
        return false;
    }
    display_number("both inside, probability", joint.both_pct, 1, CUPWRIGHT_QUANTITY_PROBABILITY);
    display_line(words[decision]);
    return true;
}

static bool weaken(const struct brew *brew, const struct strength *strength) {
    const cupwright_beverage_estimate beverage = {brew->beverage_g, u_weighed_g, known};
    const cupwright_water_solids_estimate solids = {cup_water_solids_mg_per_l, 10.0, known};
    cupwright_error error;
    cupwright_budget budget;
    display_line("a weaker cup");
    display_number("strength wanted", wanted_strength_pct, 2, CUPWRIGHT_QUANTITY_STRENGTH);
    return refusal_none(cupwright_uncertainty_water_to_reach(&beverage, &strength->estimate, wanted_strength_pct,
                                                             &solids, &budget, &error),
                        &error) &&
           show_budget("water to add", &budget, 0, CUPWRIGHT_QUANTITY_ADDITION);
}

bool cup_judge(const struct brew *brew, const cupwright_profile *profile, double *strength_pct) {
    struct strength strength;
    if (!read_until_decided(profile, &strength)) {
        return false;
    }
    *strength_pct = strength.estimate.strength_pct;
    return judge(brew, &strength) && weaken(brew, &strength);
}
