/* The same firmware without the library: what it does alone. */

#include "firmware.h"

uint64_t brews(void) {
    return 1;
}
