/* A board under emulation: cases from a file of the computer that emulates it. */

#include <stdint.h>

#include "board.h"
#include "platform.h"

enum { OPEN = 0x01, READ = 0x06 };

static intptr_t open_cases(void) {
    static const char name[] = "cases.txt";
    const uintptr_t argument[3] = {(uintptr_t)name, 0, sizeof name - 1};
    return semihost(OPEN, argument);
}

int next_byte(void) {
    /* Of no use before it is opened: nothing but zeros is set up before main. */
    static intptr_t file;
    static int is_open;
    static unsigned char buffer[1024];
    static uintptr_t length, at;
    if (!is_open) {
        file = open_cases();
        is_open = 1;
    }
    if (at == length) {
        const uintptr_t argument[3] = {(uintptr_t)file, (uintptr_t)buffer, sizeof buffer};
        /* The call answers how many bytes it did not read. */
        length = sizeof buffer - (uintptr_t)semihost(READ, argument);
        at = 0;
        if (file < 0 || length == 0 || length > sizeof buffer) {
            length = 0;
            return -1;
        }
    }
    return buffer[at++];
}

/* No C library: what the driver uses of one. Volatile, or the compiler would see a call to itself. */

void *memcpy(void *restrict to, const void *restrict from, size_t count) {
    for (size_t at = 0; at < count; at++) {
        ((volatile unsigned char *)to)[at] = ((const unsigned char *)from)[at];
    }
    return to;
}

void *memset(void *to, int byte, size_t count) {
    for (size_t at = 0; at < count; at++) {
        ((volatile unsigned char *)to)[at] = (unsigned char)byte;
    }
    return to;
}

int strncmp(const char *a, const char *b, size_t count) {
    for (size_t at = 0; at < count; at++) {
        if (a[at] != b[at] || a[at] == 0) {
            return (int)(unsigned char)a[at] - (int)(unsigned char)b[at];
        }
    }
    return 0;
}

int strcmp(const char *a, const char *b) {
    return strncmp(a, b, SIZE_MAX);
}
