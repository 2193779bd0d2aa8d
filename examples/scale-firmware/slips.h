/* What goes wrong at a scale, and how the library takes it. */

#ifndef SLIPS_H
#define SLIPS_H

#include <stdbool.h>

#include "brew.h"

bool slips_show(const struct brew *brewed, double strength_pct);

#endif
