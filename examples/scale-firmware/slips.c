#include "slips.h"

#include <stddef.h>
#include <stdint.h>

#include "cup.h"
#include "display.h"
#include "refusal.h"

/* All the water met all the coffee: what the grounds keep is as strong as the cup. */
static cupwright_brew steeped(const struct brew *brew) {
    return (cupwright_brew){
        .dose_g = brew->dose_g,
        .water_g = brew->water_g,
        .beverage_g = brew->beverage_g,
        .moisture_pct = 2.0,
        .water_solids_mg_per_l = cup_water_solids_mg_per_l,
        .vapour_g = 1.2,
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
    if (!refusal_none(cupwright_extraction_plausibility(brew, strength_pct, &judged, &error), &error)) {
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

/* A dose that must be refused: true if it is. */
static bool refused(double dose_g, double water_g) {
    cupwright_error error;
    double unused;
    if (cupwright_ratio_water_ratio(dose_g, water_g, &unused, &error) != CUPWRIGHT_STATUS_OUT_OF_RANGE) {
        return false;
    }
    refusal_show_bits(&error);
    return true;
}

/* What goes wrong at a scale, and how the library takes it. */
bool slips_show(const struct brew *brewed, double strength_pct) {
    static const double misread_pct = 2.62;
    cupwright_error error;
    double misled_pct, unused;
    const cupwright_brew brew = steeped(brewed);
    display_line("had the strength been misread");
    if (!refusal_none(cupwright_extraction_yield(&brew, misread_pct, &misled_pct, &error), &error)) {
        return false;
    }
    display_number("misread", misread_pct, 2, CUPWRIGHT_QUANTITY_STRENGTH);
    display_number("yield", misled_pct, 2, CUPWRIGHT_QUANTITY_YIELD);
    if (!show_plausibility(&brew, misread_pct)) {
        return false;
    }
    display_line("had the tray been put down empty");
    if (!refused(0.0, brewed->water_g)) {
        return false;
    }
    display_line("had a division gone wrong before");
    if (!refused(__builtin_inf(), brewed->water_g)) {
        return false;
    }
    display_line("had a stronger cup been wanted");
    if (cupwright_dilution_water_to_reach(brewed->beverage_g, strength_pct, 1.80, cup_water_solids_mg_per_l,
                                          &unused, &error) != CUPWRIGHT_STATUS_INFEASIBLE) {
        return false;
    }
    refusal_show_bits(&error);
    display_line("had nobody said what the instrument was zeroed on");
    if (cupwright_reading_total_strength(strength_pct, 0, cup_water_solids_mg_per_l, &unused, &error) !=
        CUPWRIGHT_STATUS_UNKNOWN_CHOICE) {
        return false;
    }
    refusal_show(&error);
    return true;
}
