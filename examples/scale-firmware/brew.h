/* A brew on the scale, followed by the library. */

#ifndef BREW_H
#define BREW_H

#include <stdbool.h>

#include "cupwright.h"

/* What was weighed. */
struct brew {
    double dose_g;
    double water_g;
    double beverage_g;
};

/* Follows a brew to the end of the readings, through a power cut; says what happens and what to do. What the
 * brewer keeps is known from before. */
bool brew_follow(const cupwright_profile *profile, struct brew *brew);

#endif
