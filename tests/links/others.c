/* Two other Rust libraries: exact answers, whoever's arithmetic they use. */

#include "firmware.h"

double neighbour_mean(const double *values, uint32_t count);
double ordinary_share(uint32_t at, double parts);

int others(void) {
    static const double values[] = {1.0, 2.0, 3.0, 4.0};
    return neighbour_mean(values, 4) == 2.5 && ordinary_share(2, 8.0) == 3.75;
}
