/* No other libraries. */

#include "firmware.h"

int others(void) {
    return 1;
}
