/* What an emulated board offers. */

#ifndef BOARD_H
#define BOARD_H

#include <stdint.h>

/** Asks the computer that emulates the board for something. */
intptr_t semihost(intptr_t operation, const void *argument);

/** Prints a text. */
void print(const char *text);

#endif
