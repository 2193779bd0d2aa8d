/* A firmware that uses exp, memset, double arithmetic and its C library, and cupwright beside them. */

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "firmware.h"
#include "hash.h"

/* Here, so that nothing but a call of exp or memset brings in the library that holds them. */
uint32_t own_exp_calls, own_memset_calls;

static int by_size(const void *a, const void *b) {
    const double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

/* 33 binary places smaller than one, where not every toolchain's arithmetic rounds alike. */
static volatile double little = 0x1.97b1838p-33;

/* What the firmware computes for itself. */
static uint64_t own(void) {
    static double values[64];
    memset(values, 0x3f, sizeof values);
    uint64_t hash = hashed(HASH_START, exp(values[63]));
    for (int at = 0; at < 64; at++) {
        values[at] = pow(1.5, at % 7) - log(2.0 + at) * values[at];
    }
    qsort(values, 64, sizeof values[0], by_size);
    for (int at = 0; at < 64; at++) {
        hash = hashed(hash, values[at]);
    }
    return hashed(hash, 1.0 - little);
}

static void print_number(const char *name, uint64_t number) {
    char text[18];
    for (int at = 0; at < 16; at++) {
        text[at] = "0123456789abcdef"[number >> (60 - 4 * at) & 15];
    }
    text[16] = '\n';
    text[17] = 0;
    print(name);
    print(text);
}

/* How often the firmware's exp and its memset were called, one in each half. */
static uint64_t own_calls(void) {
    return (uint64_t)own_exp_calls << 32 | own_memset_calls;
}

int main(void) {
    print_number("own ", own());
    print_number("calls ", own_calls());
    const uint64_t hash = brews();
    print_number("brews ", hash);
    print_number("calls ", own_calls());
    return hash == 0 || !others();
}
