/* A brew through a power cut. */

#ifndef KEPT_H
#define KEPT_H

#include <stdint.h>

#include "cupwright.h"

/* Writes a brew to flash, with the display's zero; a status of the library. */
int32_t kept_write(const cupwright_follower *follower, cupwright_error *error);

/* Reads both back; a status of the library. The clock must have gone on meanwhile. */
int32_t kept_read(cupwright_follower *follower, cupwright_error *error);

#endif
