/* Doubles to and from whole decimals.
 *
 * Compilers' own double arithmetic is not always right in the last bit: a widespread soft-float for
 * Cortex-M4 rounds some sums wrongly. So the firmware adds, averages and rounds in integers, and leaves
 * the brewing to the library, which brings its own arithmetic. */

#ifndef DECIMAL_H
#define DECIMAL_H

#include <stdbool.h>
#include <stdint.h>

enum { DECIMAL_MOST_PLACES = 3 };

/* The nearest double to a number of thousandths. */
double decimal_from_thousandths(int32_t thousandths);

/* A double in whole tenths, hundredths or thousandths, by its places, halves rounded away from zero; false
 * where it does not fit or is not a number. */
bool decimal_of(double value, int places, int64_t *whole);

/* The bits of a double. */
uint64_t decimal_bits(double value);

#endif
