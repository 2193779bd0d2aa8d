/* What a reading costs that a scale is watched with, and one that a brew is followed with. Reads brews. */

#include "costs.h"

static struct cost of_live[2];

#define READ(follows) count(&of_live[follows], 1)

#include "brews.h"

int main(void) {
    uint64_t lines;
    calibrate();
    if (play_brews(&lines) != 0 || lines == 0) {
        return 1;
    }
    tell_cost("cupwright_live_take", &of_live[0]);
    tell_cost("cupwright_follow_take", &of_live[1]);
    return 0;
}
