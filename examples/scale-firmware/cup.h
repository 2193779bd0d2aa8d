/* The cup: how strong, how surely, where it stands, and what to add. */

#ifndef CUP_H
#define CUP_H

#include <stdbool.h>

#include "brew.h"
#include "cupwright.h"

/* Reads the strength until it is decided, or no reading decides. */
bool cup_judge(const struct brew *brew, const cupwright_profile *profile, double *strength_pct);

/* Solids of the water. */
extern const double cup_water_solids_mg_per_l;

#endif
