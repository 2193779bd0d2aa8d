/* The firmware's parts. */

#ifndef FIRMWARE_H
#define FIRMWARE_H

#include <stdint.h>

/** Calls of the firmware's own exp and memset so far. */
extern uint32_t own_exp_calls, own_memset_calls;

/** The hash of many answers of the library; 0 if one of them was refused. */
uint64_t brews(void);

/** Whether other libraries, where there are any, answer rightly. */
int others(void);

/** Prints a text. */
void print(const char *text);

#endif
