/* Cases, and the calls that they are for. */

#ifndef CASES_H
#define CASES_H

#include "rows.h"

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
