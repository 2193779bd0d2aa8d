/* What the library refuses, in one sentence made of the library's words. */

#ifndef REFUSAL_H
#define REFUSAL_H

#include <stdbool.h>
#include <stdint.h>

#include "cupwright.h"

void refusal_show(const cupwright_error *error);

/* The same with the bits of its numbers. */
void refusal_show_bits(const cupwright_error *error);

/* Whether a call that should succeed did; shows why not. */
bool refusal_none(int32_t status, const cupwright_error *error);

#endif
