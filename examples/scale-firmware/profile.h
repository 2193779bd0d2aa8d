/* What was learned of one's own brewer and hand, kept in flash. */

#ifndef PROFILE_H
#define PROFILE_H

#include <stdbool.h>

#include "cupwright.h"

/* Learns from earlier brews, keeps it, reads it back, and shows that a damaged byte is found. */
bool profile_learn_and_keep(cupwright_profile *profile);

#endif
