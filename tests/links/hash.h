/* FNV-1a over the bits of numbers. */

#ifndef HASH_H
#define HASH_H

#include <stdint.h>
#include <string.h>

#define HASH_START 0xcbf29ce484222325u

static inline uint64_t hashed(uint64_t hash, double value) {
    uint64_t bits;
    memcpy(&bits, &value, sizeof bits);
    for (int byte = 0; byte < 8; byte++) {
        hash = (hash ^ (bits >> (8 * byte) & 0xff)) * 0x100000001b3u;
    }
    return hash;
}

#endif
