/* Whether to believe a strength. */

#ifndef BELIEVE_H
#define BELIEVE_H

#include <stdbool.h>

#include "brew.h"
#include "cupwright.h"

/* All the water met all the coffee: what the grounds keep is as strong as the cup. */
cupwright_brew believe_steeped(const struct brew *brew);

/* Whether a strength can be, and if not, what each input would have to be instead. */
bool believe_show(const cupwright_brew *brew, double strength_pct);

#endif
