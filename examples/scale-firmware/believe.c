#include "believe.h"

#include "cup.h"
#include "display.h"
#include "refusal.h"

cupwright_brew believe_steeped(const struct brew *brew) {
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

bool believe_show(const cupwright_brew *brew, double strength_pct) {
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
