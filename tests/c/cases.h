/* Cases, and the calls that they are for. */

#ifndef CASES_H
#define CASES_H

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

static int same(double number, double expected) {
    uint64_t a = bits_of(number), b = bits_of(expected);
    return a == b || (is_nan(a) && is_nan(b));
}

static void next_row(struct row *row) {
    row->count = (size_t)next_number(10);
    row->at = 0;
    for (size_t at = 0; at < row->count && at < MOST_NUMBERS; at++) {
        row->numbers[at] = of_bits(next_number(16));
    }
}

static int is_answer(const struct row *answer, const struct row *expected) {
    int is = answer->count == expected->count;
    for (size_t at = 0; is && at < expected->count; at++) {
        is = same(answer->numbers[at], expected->numbers[at]);
    }
    return is;
}

#endif
