#include "display.h"

#include <stdbool.h>

#include "cupwright.h"
#include "decimal.h"

enum {
    LABEL_WIDTH = 34,
    NUMBER_WIDTH = 7,
    UNIT_WIDTH = 4,
    /* Sign, nineteen digits, point and end. */
    LONGEST_NUMBER = 22
};

/* Characters as seen: of the bytes of a character in UTF-8 all but the first begin with binary 10. */
static int width_of(const char *text) {
    int width = 0;
    for (; *text != 0; text++) {
        width += ((unsigned char)*text & 0xc0u) != 0x80u;
    }
    return width;
}

static void spaces(int count) {
    for (; count > 0; count--) {
        display_text(" ");
    }
}

void display_line(const char *text) {
    display_text(text);
    display_text("\n");
}

/* The number in a buffer's end; the start of it is returned. */
static const char *written(char buffer[LONGEST_NUMBER], double value, int places) {
    int64_t whole;
    if (!decimal_of(value, places, &whole)) {
        return "(beyond the display)";
    }
    const bool negative = whole < 0;
    uint64_t left = negative ? (uint64_t)-whole : (uint64_t)whole;
    char *at = buffer + LONGEST_NUMBER - 1;
    *at = 0;
    for (int digits = 0; digits <= places || left != 0; digits++) {
        if (digits == places && places != 0) {
            *--at = '.';
        }
        *--at = (char)('0' + left % 10);
        left /= 10;
    }
    if (negative) {
        *--at = '-';
    }
    return at;
}

void display_decimal(double value, int places) {
    char buffer[LONGEST_NUMBER];
    display_text(written(buffer, value, places));
}

void display_bits(double value) {
    char digits[17];
    uint64_t bits = decimal_bits(value);
    for (int at = 15; at >= 0; at--) {
        digits[at] = "0123456789abcdef"[bits & 15];
        bits >>= 4;
    }
    digits[16] = 0;
    display_text(" 0x");
    display_text(digits);
}

void display_moment(double clock_s) {
    char buffer[LONGEST_NUMBER];
    const char *number = written(buffer, clock_s, 1);
    spaces(NUMBER_WIDTH - width_of(number));
    display_text(number);
    display_text(" s");
}

void display_indent(void) {
    spaces(NUMBER_WIDTH + 2);
}

void display_number(const char *label, double value, int places, int32_t quantity) {
    char buffer[LONGEST_NUMBER];
    const char *number = written(buffer, value, places);
    const char *unit = cupwright_unit_text(quantity);
    display_text("  ");
    display_text(label);
    spaces(LABEL_WIDTH - width_of(label) + NUMBER_WIDTH - width_of(number));
    display_text(number);
    display_text(" ");
    display_text(unit);
    spaces(UNIT_WIDTH - width_of(unit));
    display_bits(value);
    display_text("\n");
}
