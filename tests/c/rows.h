/* Calls of the library with numbers in a row. */

#ifndef ROWS_H
#define ROWS_H

#include "null.h"

enum { MOST_NUMBERS = 136, MOST_ITEMS = 24, WROTE_ON_FAILURE = -1 };

/** Numbers in a row. */
struct row {
    double numbers[MOST_NUMBERS];
    size_t count, at;
};

/** A function of the library: its name, a call with numbers, and calls without pointers. */
struct call {
    const char *name;
    int32_t (*with)(struct row *row, struct row *answer, cupwright_error *error);
    int (*without)(struct row *row);
};

static double take(struct row *row) {
    return row->at < row->count ? row->numbers[row->at++] : 0.0;
}

static void give(struct row *row, double number) {
    if (row->count < MOST_NUMBERS) {
        row->numbers[row->count++] = number;
    }
}

#include "calls.h"

enum { CALLS = sizeof calls / sizeof calls[0] };

/* One not-a-number is as good as another. */
static int is_nan(uint64_t bits) {
    return (bits & 0x7FFFFFFFFFFFFFFFu) > 0x7FF0000000000000u;
}

#endif
