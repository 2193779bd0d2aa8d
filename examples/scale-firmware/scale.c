#include "scale.h"

#include "decimal.h"

static int32_t zero_mg;

bool scale_next(struct scale_reading *reading) {
    struct load_cell_sample sample;
    if (!load_cell_next(&sample)) {
        return false;
    }
    const int64_t counts = (int64_t)sample.counts - LOAD_CELL_EMPTY_COUNTS;
    const int32_t mg = (int32_t)(counts * 1000000 / LOAD_CELL_COUNTS_PER_KG);
    reading->clock_s = decimal_from_thousandths((int32_t)sample.clock_ms);
    reading->reading_g = sample.failed ? __builtin_nan("") : decimal_from_thousandths(mg - zero_mg);
    reading->button = sample.button;
    reading->power_fails = sample.power_fails;
    return true;
}

double scale_zero(double shown_g) {
    int64_t shown_mg;
    if (!decimal_of(shown_g, 3, &shown_mg)) {
        return 0.0;
    }
    zero_mg += (int32_t)shown_mg;
    return decimal_from_thousandths((int32_t)shown_mg);
}

int32_t scale_zero_mg(void) {
    return zero_mg;
}

void scale_set_zero_mg(int32_t mg) {
    zero_mg = mg;
}
