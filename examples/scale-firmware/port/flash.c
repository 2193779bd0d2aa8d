/* An array for the emulator and for a computer: nothing here outlives anything. */

#include "../flash.h"

static uint8_t pages[FLASH_PAGES][FLASH_PAGE_BYTES];

void flash_write(enum flash_page page, const uint8_t *bytes, size_t count) {
    for (size_t at = 0; at < count && at < FLASH_PAGE_BYTES; at++) {
        pages[page][at] = bytes[at];
    }
}

const uint8_t *flash_read(enum flash_page page) {
    return pages[page];
}
