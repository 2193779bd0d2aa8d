/* Memory that outlives a power cut: the third thing, with load_cell.h and display.h, that is a board's.
 *
 * Here it is an array. A driver for real flash must
 *   - erase a page before it is written, and write whole words, as the processor's manual says;
 *   - have the page of the brew erased beforehand, so that what is left of the supply is enough to write it: a
 *     supervisor with an interrupt, and a capacitor for some 10 ms;
 *   - keep two pages for what is written while the old one is still needed, and take the newer one that the
 *     library can read: it never reads a damaged one, as of a write that was cut short;
 *   - write seldom: flash wears out after some ten thousand times. A brew is written when the power fails, not
 *     after each reading. */

#ifndef FLASH_H
#define FLASH_H

#include <stddef.h>
#include <stdint.h>

enum flash_page { FLASH_BREW, FLASH_PROFILE, FLASH_PAGES };

enum { FLASH_PAGE_BYTES = 1024 };

/* Writes the beginning of a page. */
void flash_write(enum flash_page page, const uint8_t *bytes, size_t count);

/* A page's bytes, where they lie. */
const uint8_t *flash_read(enum flash_page page);

#endif
