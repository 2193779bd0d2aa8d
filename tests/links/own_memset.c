/* A firmware may have a memset of its own. */

#include <stddef.h>

#include "firmware.h"

void *memset(void *to, int byte, size_t count);

void *memset(void *to, int byte, size_t count) {
    own_memset_calls++;
    /* Volatile, or the compiler would see a memset here. */
    for (volatile unsigned char *at = to; count > 0; count--) {
        *at++ = (unsigned char)byte;
    }
    return to;
}
