/* What the person at the scale sees: lines of text. */

#ifndef DISPLAY_H
#define DISPLAY_H

#include <stdint.h>

/* A board's display or serial line: the one function to write for another. Files in port/ have it for an
 * emulator and for a computer. */
void display_text(const char *text);

void display_line(const char *text);

/* A number with as many places, without its unit. */
void display_decimal(double value, int places);

/* A line of a label, a number rounded to its places, its unit, and its bits, which show that two
 * processors have the same number and not just the same rounding of it. The quantity is one of enum
 * cupwright_quantity. */
void display_number(const char *label, double value, int places, int32_t quantity);

/* The time that a line begins with, and as much room without one. */
void display_moment(double clock_s);
void display_indent(void);

/* The bits of a double in sixteen digits. */
void display_bits(double value);

#endif
