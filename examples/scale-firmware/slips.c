#include "slips.h"

#include <stddef.h>
#include <stdint.h>

#include "believe.h"
#include "cup.h"
#include "display.h"
#include "refusal.h"

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
    const cupwright_brew brew = believe_steeped(brewed);
    display_line("had the strength been misread");
    if (!refusal_none(cupwright_extraction_yield(&brew, misread_pct, &misled_pct, &error), &error)) {
        return false;
    }
    display_number("misread", misread_pct, 2, CUPWRIGHT_QUANTITY_STRENGTH);
    display_number("yield", misled_pct, 2, CUPWRIGHT_QUANTITY_YIELD);
    if (!believe_show(&brew, misread_pct)) {
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
