/* Where weights come from. This and display.h are all that the brew knows of a board. */

#ifndef LOAD_CELL_H
#define LOAD_CELL_H

#include <stdbool.h>
#include <stdint.h>

enum {
    /* Ten times a second, as such converters do at their quietest. */
    LOAD_CELL_SAMPLES_PER_SECOND = 10,
    /* Calibration: what a kilogram adds to the reading. */
    LOAD_CELL_COUNTS_PER_KG = 420137
};

/* One conversion. */
struct load_cell_sample {
    /* As the converter gives it, 24 bits with a sign; an empty scale does not read zero. */
    int32_t counts;
    /* Whether the scale's button was pressed since the sample before. */
    bool button;
};

/* Waits for the next sample; false when there will be none. */
bool load_cell_next(struct load_cell_sample *sample);

#endif
