#include "decimal.h"

enum { FRACTION_BITS = 52, EXPONENT_MASK = 0x7ff, EXPONENT_OF_LAST_BIT = 1023 + FRACTION_BITS };

double decimal_from_thousandths(int32_t thousandths) {
    /* The integer becomes a double exactly, so that only the division rounds. */
    return thousandths / 1000.0;
}

uint64_t decimal_bits(double value) {
    const union {
        double value;
        uint64_t bits;
    } both = {value};
    return both.bits;
}

bool decimal_of(double value, int places, int64_t *whole) {
    const uint64_t bits = decimal_bits(value);
    const int exponent = (int)(bits >> FRACTION_BITS) & EXPONENT_MASK;
    /* From here a double has no places after the point; infinities and not-a-numbers come later still. */
    if (exponent >= EXPONENT_OF_LAST_BIT || places > DECIMAL_MOST_PLACES) {
        return false;
    }
    const uint64_t one = UINT64_C(1) << FRACTION_BITS;
    uint64_t digits = (bits & (one - 1)) | one;
    /* 2^53 times 10^3 stays below 2^63. */
    for (int place = 0; place < places; place++) {
        digits *= 10;
    }
    const int shift = EXPONENT_OF_LAST_BIT - exponent;
    /* Shifted by more, less than a half is left, as of zero and numbers too small for the leading one. */
    digits = shift > 63 ? 0 : (digits + (UINT64_C(1) << (shift - 1))) >> shift;
    *whole = bits >> 63 ? -(int64_t)digits : (int64_t)digits;
    return true;
}
