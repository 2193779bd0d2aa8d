/* Readings in grams from raw samples, and the display's zero. All that is seen in them is the library's. */

#ifndef SCALE_H
#define SCALE_H

#include <stdbool.h>
#include <stdint.h>

#include "load_cell.h"

struct scale_reading {
    double clock_s;
    /* Over the display's zero; not a number where the converter gave nothing, which the library refuses. */
    double reading_g;
    bool button;
    bool power_fails;
};

/* Waits for the next reading; false when there will be none. */
bool scale_next(struct scale_reading *reading);

/* Sets the display to zero where it shows so much: by how much readings are lower from now on, in grams. */
double scale_zero(double shown_g);

/* What the display takes for nothing: to be kept with a brew, and taken up again. */
int32_t scale_zero_mg(void);
void scale_set_zero_mg(int32_t mg);

#endif
