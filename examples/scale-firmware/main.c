/* One brew on a scale, from what was learned before it to the judged cup. */

#include <stdbool.h>
#include <stdint.h>

#include "brew.h"
#include "cup.h"
#include "cupwright.h"
#include "display.h"
#include "profile.h"
#include "refusal.h"
#include "slips.h"

static const cupwright_hazards hazards = {.hottest_c = 95.0, .served_c = 70.0, .pressed = 1};

/* Hot water and a press: said before there is either. */
static bool show_cautions(void) {
    cupwright_error error;
    uint32_t cautions;
    if (!refusal_none(cupwright_caution_of(&hazards, &cautions, &error), &error)) {
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

int main(void) {
    cupwright_profile profile;
    struct brew brewed;
    double strength_pct;
    display_line("one invented brew on a scale");
    const bool whole = show_cautions() && profile_learn_and_keep(&profile) && brew_follow(&profile, &brewed) &&
                       cup_judge(&brewed, &profile, &strength_pct) && slips_show(&brewed, strength_pct);
    display_line(whole ? "done" : "stopped");
    return whole ? 0 : 1;
}
