#include "kept.h"

#include "flash.h"
#include "scale.h"

/* The library seals its own bytes. The zero lies before them, and its complement: both must fit. */
enum { ZERO_BYTES = 4, SEALED = 2 * ZERO_BYTES, BYTES = SEALED + CUPWRIGHT_FOLLOWER_BYTES };

int32_t kept_write(const cupwright_follower *follower, cupwright_error *error) {
    uint8_t bytes[BYTES];
    const uint32_t zero = (uint32_t)scale_zero_mg();
    for (int at = 0; at < ZERO_BYTES; at++) {
        bytes[at] = (uint8_t)(zero >> 8 * at);
        bytes[ZERO_BYTES + at] = (uint8_t)~bytes[at];
    }
    const int32_t status = cupwright_follow_to_bytes(follower, bytes + SEALED, error);
    if (status == CUPWRIGHT_STATUS_OK) {
        flash_write(FLASH_BREW, bytes, BYTES);
    }
    return status;
}

int32_t kept_read(cupwright_follower *follower, cupwright_error *error) {
    const uint8_t *bytes = flash_read(FLASH_BREW);
    uint32_t zero = 0;
    /* Where the zero is damaged, no bytes are offered, and the library says so. */
    size_t count = CUPWRIGHT_FOLLOWER_BYTES;
    for (int at = 0; at < ZERO_BYTES; at++) {
        zero |= (uint32_t)bytes[at] << 8 * at;
        count = (bytes[at] ^ bytes[ZERO_BYTES + at]) == 0xff ? count : 0;
    }
    const int32_t status = cupwright_follow_from_bytes(bytes + SEALED, count, follower, error);
    if (status == CUPWRIGHT_STATUS_OK) {
        scale_set_zero_mg((int32_t)zero);
    }
    return status;
}
