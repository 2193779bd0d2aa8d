/* Cases, and the calls that they are for. */

#ifndef CASES_H
#define CASES_H

#include <stdint.h>

#include "cupwright.h"
#include "platform.h"

/* Another program may look closer at each call. */
#if !defined(BEFORE_CALL)
#define BEFORE_CALL()
#define AFTER_CALL()
#endif

enum { MOST_NUMBERS = 128, MOST_ITEMS = 24, WROTE_ON_FAILURE = -1, MARK = 0xA5 };

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

/* Memory that nobody has written to looks like this. */

static void mark(void *memory, size_t size) {
    memset(memory, MARK, size);
}

static int is_marked(const void *memory, size_t size) {
    const unsigned char *bytes = memory;
    for (size_t at = 0; at < size; at++) {
        if (bytes[at] != MARK) {
            return 0;
        }
    }
    return 1;
}

static cupwright_error null_error;

static int has_no_facts(const cupwright_error *error) {
    return error->value == 0.0 && error->lowest == 0.0 && error->highest == 0.0 && error->nearest == 0.0 &&
           error->quantity == 0 && error->beside == 0 && error->limit == 0;
}

static int refuses_null(int32_t status, const char *field) {
    int refuses = status == CUPWRIGHT_STATUS_NULL && null_error.status == status && has_no_facts(&null_error) &&
                  null_error.field != NULL && strcmp(null_error.field, field) == 0;
    mark(&null_error, sizeof null_error);
    return refuses;
}

#include "calls.h"

enum { CALLS = sizeof calls / sizeof calls[0] };

static uint64_t bits_of(double number) {
    uint64_t bits;
    memcpy(&bits, &number, sizeof bits);
    return bits;
}

static double of_bits(uint64_t bits) {
    double number;
    memcpy(&number, &bits, sizeof number);
    return number;
}

/* One not-a-number is as good as another. */
static int is_nan(uint64_t bits) {
    return (bits & 0x7FFFFFFFFFFFFFFFu) > 0x7FF0000000000000u;
}

static int same(double number, double expected) {
    uint64_t a = bits_of(number), b = bits_of(expected);
    return a == b || (is_nan(a) && is_nan(b));
}

static void print_number(uint64_t number, unsigned base) {
    char digits[24];
    size_t at = sizeof digits - 1;
    digits[at] = 0;
    do {
        digits[--at] = "0123456789abcdef"[number % base];
        number /= base;
    } while (number != 0 && at > 0);
    print(&digits[at]);
}

/** The next word of the cases: its length, 0 at their end. */
static size_t next_word(char *word, size_t size) {
    int byte = next_byte();
    size_t length = 0;
    while (byte == ' ' || byte == '\n') {
        byte = next_byte();
    }
    while (byte > ' ' && length + 1 < size) {
        word[length++] = (char)byte;
        byte = next_byte();
    }
    word[length] = 0;
    return length;
}

static uint64_t next_number(unsigned base) {
    char word[40];
    uint64_t number = 0;
    next_word(word, sizeof word);
    for (const char *letter = word; *letter != 0; letter++) {
        unsigned digit = *letter <= '9' ? (unsigned)(*letter - '0') : (unsigned)(*letter - 'a' + 10);
        number = number * base + digit;
    }
    return number;
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
