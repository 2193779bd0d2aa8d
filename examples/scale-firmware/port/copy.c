/* What a compiler may call for a struct that is copied or set to zeros: a C library has both. */

#include <stddef.h>

void *memcpy(void *restrict to, const void *restrict from, size_t count);
void *memset(void *to, int byte, size_t count);

void *memcpy(void *restrict to, const void *restrict from, size_t count) {
    unsigned char *at = to;
    for (const unsigned char *next = from; count > 0; count--) {
        *at++ = *next++;
    }
    return to;
}

void *memset(void *to, int byte, size_t count) {
    for (unsigned char *at = to; count > 0; count--) {
        *at++ = (unsigned char)byte;
    }
    return to;
}
