/* What a reading costs that a scale is watched with, one that a brew is followed with, and an outlook. Reads brews. */

#include "costs.h"

static struct cost of_live[3];

#define READ(what) count(&of_live[what], 1)

#include "brews.h"

int main(void) {
    uint64_t lines;
    calibrate();
    if (play_brews(&lines) != 0 || lines == 0) {
        return 1;
    }
    tell_cost("cupwright_live_take", &of_live[0]);
    tell_cost("cupwright_follow_take", &of_live[1]);
    tell_cost("cupwright_follow_outlook", &of_live[2]);
    return 0;
}
