/* What the driver needs of the machine it runs on. */

#ifndef PLATFORM_H
#define PLATFORM_H

#if __STDC_HOSTED__
#include <string.h>
#else
#include <stddef.h>
void *memcpy(void *restrict to, const void *restrict from, size_t count);
void *memset(void *to, int byte, size_t count);
int strcmp(const char *a, const char *b);
int strncmp(const char *a, const char *b, size_t count);
#endif

/** The next byte of the cases, or -1 at their end. */
int next_byte(void);

/** Prints a text. */
void print(const char *text);

#endif
