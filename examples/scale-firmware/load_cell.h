/* Where weights come from. This and display.h are all that the brew knows of a board, flash.h apart. */

#ifndef LOAD_CELL_H
#define LOAD_CELL_H

#include <stdbool.h>
#include <stdint.h>

enum {
    /* Calibration: what the empty scale reads, and what a kilogram adds. */
    LOAD_CELL_EMPTY_COUNTS = -61340,
    LOAD_CELL_COUNTS_PER_KG = 420137,
    /* Where the converter's 24 bits end. */
    LOAD_CELL_HIGHEST_COUNTS = 8388607
};

/* One conversion. */
struct load_cell_sample {
    /* When, on a clock that goes on through a power cut: a real-time clock, or one that is kept in flash. */
    uint32_t clock_ms;
    /* As the converter gives it, 24 bits with a sign. */
    int32_t counts;
    /* Whether the converter gave nothing: there are no counts then. */
    bool failed;
    /* Whether the scale's button was pressed since the sample before. */
    bool button;
    /* Whether the supply begins to fail: what is left of it lasts for one page of flash. */
    bool power_fails;
};

/* Waits for the next sample; false when there will be none. */
bool load_cell_next(struct load_cell_sample *sample);

#endif
