/* One brew on a scale, from the empty tray to the judged cup. */

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "cupwright.h"
#include "decimal.h"
#include "display.h"
#include "scale.h"

/* What is known before the brew: invented. */
static const double wanted_ratio = 13.5;
static const double wanted_strength_pct = 1.35;
static const double water_solids_mg_per_l = 90.0;
static const double repeatability_pct = 0.02;
static const cupwright_losses losses = {
    .apparent_retention_g_per_g = 1.55,
    .hold_up_g = 3.0,
    .vapour_g = 1.2,
};
static const cupwright_hazards hazards = {.hottest_c = 95.0, .served_c = 70.0, .pressed = 1};

/* What the person reads off a refractometer and enters, one after the other: invented. */
static const double readings_pct[] = {1.64, 1.58, 1.62};
enum { READINGS = sizeof readings_pct / sizeof readings_pct[0] };

static const cupwright_window window = CUPWRIGHT_HOME_BREWER_2018;

/* The masses of the brew as weighed, and what follows. */
struct weighed {
    int32_t cup_mg;
    double dose_g;
    double water_g;
    double beverage_g;
    double strength_pct;
};

/* A refusal in one sentence, from what the library says of it. */
static void show_error(const cupwright_error *error) {
    const char *unit = cupwright_unit_text(error->quantity);
    display_text("  ");
    if (error->field != NULL) {
        display_text(error->field);
        display_text(": ");
    }
    if (error->quantity != 0) {
        display_text(cupwright_quantity_text(error->quantity));
        /* An empty band has two edges and no value. */
        if (error->status != CUPWRIGHT_STATUS_EMPTY_BAND) {
            display_text(" ");
            display_decimal(error->value, 2);
            display_text(" ");
            display_text(unit);
        }
        display_text(": ");
    }
    display_text(cupwright_status_text(error->status));
    if (error->beside != 0) {
        display_text(", here the ");
        display_text(cupwright_quantity_text(error->beside));
    }
    if (error->limit != 0) {
        display_text(", ");
        display_text(cupwright_limit_text(error->limit));
        display_text("; the nearest is ");
        display_decimal(error->nearest, 2);
        display_text(" ");
        display_text(unit);
    } else if (error->quantity != 0) {
        display_text(", ");
        display_decimal(error->lowest, 2);
        display_text(" to ");
        display_decimal(error->highest, 2);
        display_text(" ");
        display_text(unit);
    }
    display_text("\n");
}

/* The same with the bits of its numbers. */
static void show_refusal(const cupwright_error *error) {
    show_error(error);
    display_text("    value, lowest, highest, nearest\n   ");
    display_bits(error->value);
    display_bits(error->lowest);
    display_text("\n   ");
    display_bits(error->highest);
    display_bits(error->nearest);
    display_text("\n");
}

/* Whether a call that should succeed did; shows why not. */
static bool done(int32_t status, const cupwright_error *error) {
    if (status != CUPWRIGHT_STATUS_OK) {
        show_error(error);
    }
    return status == CUPWRIGHT_STATUS_OK;
}

/* Hot water and a press: said before there is either. */
static bool show_cautions(void) {
    cupwright_error error;
    uint32_t cautions;
    if (!done(cupwright_caution_of(&hazards, &cautions, &error), &error)) {
        return false;
    }
    display_line("before the water");
    for (int32_t caution = 1; caution < 32; caution++) {
        if (cautions >> caution & 1u) {
            display_text("  ");
            display_line(cupwright_caution_text(caution));
        }
    }
    return true;
}

/* The next weight at a press of the button. */
static bool weigh_at_button(int32_t *mg) {
    return scale_wait_for_button() && scale_weigh(mg);
}

/* Cup and dose, each at a press of the button. */
static bool weigh_dose(struct weighed *weighed) {
    int32_t tray_mg, filled_mg;
    if (!scale_wait_for_button() || !scale_zero() || !weigh_at_button(&weighed->cup_mg) ||
        !weigh_at_button(&tray_mg) || !weigh_at_button(&filled_mg)) {
        return false;
    }
    weighed->dose_g = decimal_from_thousandths(filled_mg - tray_mg);
    display_line("the dose");
    display_number("cup, to be taken off later", decimal_from_thousandths(weighed->cup_mg), 1,
                   CUPWRIGHT_QUANTITY_VESSEL_MASS);
    display_number("dose", weighed->dose_g, 1, CUPWRIGHT_QUANTITY_DOSE);
    return true;
}

/* How far the pour has come, and how far it has to go. */
static bool show_pour(double dose_g, int32_t poured_mg, int32_t target_mg) {
    cupwright_error error;
    const double poured_g = decimal_from_thousandths(poured_mg);
    display_number("poured", poured_g, 1, CUPWRIGHT_QUANTITY_BREW_WATER);
    double ratio;
    const int32_t status = cupwright_ratio_water_ratio(dose_g, poured_g, &ratio, &error);
    if ((status == CUPWRIGHT_STATUS_OUT_OF_RANGE && error.quantity == CUPWRIGHT_QUANTITY_BREW_WATER) ||
        status == CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE) {
        display_line("    too little for a ratio");
    } else if (!done(status, &error)) {
        return false;
    } else {
        display_number("  ratio so far", ratio, 2, CUPWRIGHT_QUANTITY_WATER_RATIO);
    }
    display_number(poured_mg < target_mg ? "  still to pour" : "  too much",
                   decimal_from_thousandths(poured_mg < target_mg ? target_mg - poured_mg : poured_mg - target_mg), 1,
                   CUPWRIGHT_QUANTITY_BREW_WATER);
    return true;
}

static bool pour(struct weighed *weighed) {
    cupwright_error error;
    double target_g;
    int64_t target_mg;
    int32_t before_mg, mg;
    if (!done(cupwright_ratio_water_for_ratio(weighed->dose_g, wanted_ratio, &target_g, &error), &error) ||
        !decimal_of(target_g, 3, &target_mg) || target_mg > INT32_MAX || !weigh_at_button(&before_mg)) {
        return false;
    }
    display_line("the water");
    display_number("wanted", target_g, 1, CUPWRIGHT_QUANTITY_BREW_WATER);
    for (bool over = false;;) {
        if (!scale_glance(5, &mg, &over)) {
            return false;
        }
        if (over) {
            break;
        }
        if (!show_pour(weighed->dose_g, mg - before_mg, (int32_t)target_mg)) {
            return false;
        }
    }
    if (!scale_weigh(&mg)) {
        return false;
    }
    weighed->water_g = decimal_from_thousandths(mg - before_mg);
    display_line("the pour is over");
    return show_pour(weighed->dose_g, mg - before_mg, (int32_t)target_mg);
}

/* From here the water stands, whatever the scale feels: a hand that presses weighs kilograms. */
static bool steep_and_press(const struct weighed *weighed) {
    cupwright_error error;
    double expected_g;
    if (!done(cupwright_retention_beverage(&losses, weighed->dose_g, weighed->water_g, &expected_g, &error),
              &error)) {
        return false;
    }
    display_line("steep, then press gently");
    display_number("beverage to expect", expected_g, 1, CUPWRIGHT_QUANTITY_BEVERAGE);
    int32_t heaviest_mg = 0;
    for (bool lifted = false; !lifted;) {
        int32_t mg = 0;
        if (!scale_glance(5, &mg, &lifted)) {
            return false;
        }
        heaviest_mg = mg > heaviest_mg ? mg : heaviest_mg;
    }
    display_number("most felt: a hand, not water", decimal_from_thousandths(heaviest_mg), 1,
                   CUPWRIGHT_QUANTITY_VESSEL_MASS);
    display_number("water, as before", weighed->water_g, 1, CUPWRIGHT_QUANTITY_BREW_WATER);
    return true;
}

static bool weigh_beverage(struct weighed *weighed) {
    cupwright_error error;
    int32_t mg;
    double retention;
    if (!scale_weigh(&mg)) {
        return false;
    }
    weighed->beverage_g = decimal_from_thousandths(mg - weighed->cup_mg);
    if (!done(cupwright_retention_of_brew(&losses, weighed->dose_g, weighed->water_g, weighed->beverage_g,
                                          &retention, &error),
              &error)) {
        return false;
    }
    display_line("the cup");
    display_number("beverage", weighed->beverage_g, 1, CUPWRIGHT_QUANTITY_BEVERAGE);
    display_number("retention seen", retention, 2, CUPWRIGHT_QUANTITY_APPARENT_RETENTION);
    return true;
}

/* Readings until they agree, or there are no more. */
static bool read_strength(struct weighed *weighed) {
    cupwright_error error;
    cupwright_combined combined;
    display_line("readings of the strength");
    for (size_t count = 1; count <= READINGS; count++) {
        if (!done(cupwright_reading_combine(readings_pct, count, repeatability_pct, &combined, &error), &error)) {
            return false;
        }
        display_number("entered", readings_pct[count - 1], 2, CUPWRIGHT_QUANTITY_STRENGTH);
        if (combined.has_critical_range) {
            display_number("  apart", combined.range_pct, 3, CUPWRIGHT_QUANTITY_STRENGTH);
            display_number("  may be apart", combined.critical_range_pct, 3, CUPWRIGHT_QUANTITY_STRENGTH);
        }
        if (combined.agreement != CUPWRIGHT_AGREEMENT_TAKE_ANOTHER) {
            break;
        }
        display_line("    take another");
    }
    weighed->strength_pct = combined.strength_pct;
    display_number(combined.agreement == CUPWRIGHT_AGREEMENT_MEAN ? "strength, their mean" : "strength, in doubt",
                   combined.strength_pct, 2, CUPWRIGHT_QUANTITY_STRENGTH);
    return true;
}

/* All the water met all the coffee: what the grounds keep is as strong as the cup. */
static cupwright_brew steeped(const struct weighed *weighed) {
    return (cupwright_brew){
        .dose_g = weighed->dose_g,
        .water_g = weighed->water_g,
        .beverage_g = weighed->beverage_g,
        .moisture_pct = 2.0,
        .water_solids_mg_per_l = water_solids_mg_per_l,
        .vapour_g = losses.vapour_g,
        .held_strength_pct = 100.0,
    };
}

/* Whether to believe a strength, and if not, what each input would have to be instead. */
static bool show_plausibility(const cupwright_brew *brew, double strength_pct) {
    static const char *const words[] = {
        [CUPWRIGHT_CREDIBILITY_ORDINARY] = "    nothing speaks against it",
        [CUPWRIGHT_CREDIBILITY_NEAR_LIMIT] = "    near the limit of what coffee gives: check the inputs",
        [CUPWRIGHT_CREDIBILITY_AT_LIMIT] = "    an input is probably wrong",
        [CUPWRIGHT_CREDIBILITY_BEYOND_LIMIT] = "    an input is almost certainly wrong",
    };
    cupwright_error error;
    cupwright_plausibility judged;
    if (!done(cupwright_extraction_plausibility(brew, strength_pct, &judged, &error), &error)) {
        return false;
    }
    display_line(words[judged.credibility]);
    for (int32_t at = 0; at < judged.doubt_count; at++) {
        const cupwright_doubt *doubt = &judged.doubts[at];
        if (doubt->has_would_have_to_be) {
            display_text("    not ");
            display_decimal(doubt->entered, 2);
            display_line(" but");
            display_number(cupwright_quantity_text(doubt->quantity), doubt->would_have_to_be, 2, doubt->quantity);
        }
    }
    return true;
}

static void show_place(const char *what, const cupwright_place *place, int32_t quantity) {
    static const char *const words[] = {
        [CUPWRIGHT_SIDE_BELOW] = "below",
        [CUPWRIGHT_SIDE_INSIDE] = "inside",
        [CUPWRIGHT_SIDE_ABOVE] = "above",
    };
    display_text("    ");
    display_text(what);
    display_text(" ");
    display_line(words[place->side]);
    display_number("  above the lower edge", place->above_lowest, 2, quantity);
    display_number("  below the upper edge", place->below_highest, 2, quantity);
}

static bool judge(const struct weighed *weighed) {
    cupwright_error error;
    cupwright_standing standing;
    double yield_pct, flow_through_pct, added_g;
    const cupwright_brew brew = steeped(weighed);
    if (!done(cupwright_extraction_yield(&brew, weighed->strength_pct, &yield_pct, &error), &error) ||
        !done(cupwright_extraction_flow_through_yield(weighed->strength_pct, weighed->beverage_g, weighed->dose_g,
                                                      &flow_through_pct, &error),
              &error) ||
        !done(cupwright_verdict_stand(&window, weighed->strength_pct, flow_through_pct, &standing, &error), &error) ||
        !done(cupwright_dilution_water_to_reach(weighed->beverage_g, weighed->strength_pct, wanted_strength_pct,
                                                water_solids_mg_per_l, &added_g, &error),
              &error)) {
        return false;
    }
    display_line("the verdict");
    display_number("yield, steeped", yield_pct, 2, CUPWRIGHT_QUANTITY_YIELD);
    if (!show_plausibility(&brew, weighed->strength_pct)) {
        return false;
    }
    /* The published windows mean this one. */
    display_number("yield as if flowed through", flow_through_pct, 2, CUPWRIGHT_QUANTITY_YIELD);
    show_place("strength", &standing.strength, CUPWRIGHT_QUANTITY_STRENGTH);
    show_place("yield", &standing.yield, CUPWRIGHT_QUANTITY_YIELD);
    display_line(standing.is_inside ? "    the cup is inside the window" : "    the cup is outside the window");
    display_number("strength wanted", wanted_strength_pct, 2, CUPWRIGHT_QUANTITY_STRENGTH);
    display_number("water to add", added_g, 1, CUPWRIGHT_QUANTITY_ADDITION);
    return true;
}

/* A dose that must be refused: true if it is. */
static bool refused(double dose_g, double water_g) {
    cupwright_error error;
    double unused;
    if (cupwright_ratio_water_ratio(dose_g, water_g, &unused, &error) != CUPWRIGHT_STATUS_OUT_OF_RANGE) {
        return false;
    }
    show_refusal(&error);
    return true;
}

/* What goes wrong at a scale, and how the library takes it. */
static bool slips(const struct weighed *weighed) {
    static const double misread_pct = 2.62;
    cupwright_error error;
    double misled_pct, unused;
    const cupwright_brew brew = steeped(weighed);
    display_line("had the strength been misread");
    if (!done(cupwright_extraction_yield(&brew, misread_pct, &misled_pct, &error), &error)) {
        return false;
    }
    display_number("misread", misread_pct, 2, CUPWRIGHT_QUANTITY_STRENGTH);
    display_number("yield", misled_pct, 2, CUPWRIGHT_QUANTITY_YIELD);
    if (!show_plausibility(&brew, misread_pct)) {
        return false;
    }
    display_line("had the tray been put down empty");
    if (!refused(0.0, weighed->water_g)) {
        return false;
    }
    display_line("had a division gone wrong before");
    if (!refused(__builtin_inf(), weighed->water_g)) {
        return false;
    }
    display_line("had a stronger cup been wanted");
    if (cupwright_dilution_water_to_reach(weighed->beverage_g, weighed->strength_pct, 1.80, water_solids_mg_per_l,
                                          &unused, &error) != CUPWRIGHT_STATUS_INFEASIBLE) {
        return false;
    }
    show_refusal(&error);
    display_line("had nobody said what the instrument was zeroed on");
    if (cupwright_reading_total_strength(weighed->strength_pct, 0, water_solids_mg_per_l, &unused, &error) !=
        CUPWRIGHT_STATUS_UNKNOWN_CHOICE) {
        return false;
    }
    show_error(&error);
    return true;
}

int main(void) {
    struct weighed weighed;
    display_line("one invented brew on a scale");
    const bool whole = show_cautions() && weigh_dose(&weighed) && pour(&weighed) && steep_and_press(&weighed) &&
                       weigh_beverage(&weighed) && read_strength(&weighed) && judge(&weighed) && slips(&weighed);
    display_line(whole ? "done" : "stopped");
    return whole ? 0 : 1;
}
