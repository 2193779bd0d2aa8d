/* Weights in whole milligrams from raw samples, by averaging. Finer than the scale is steady. */

#ifndef SCALE_H
#define SCALE_H

#include <stdbool.h>
#include <stdint.h>

/* All of these are false when the load cell has no more samples. */

/* Waits for the button. */
bool scale_wait_for_button(void);

/* Takes what lies on the scale for nothing, once it lies still. */
bool scale_zero(void);

/* What lies on the scale, once it lies still. */
bool scale_weigh(int32_t *mg);

/* What lies on the scale after two or more seconds, still or not. The button ends it at once, without a
 * weight. */
bool scale_glance(int seconds, int32_t *mg, bool *button);

#endif
