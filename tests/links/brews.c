/* Many calls of the library, whose answers must not depend on how it was linked. */

#include <cupwright.h>

#include "firmware.h"
#include "hash.h"

enum { ROUNDS = 400 };

static uint32_t state;

/* A number between two, in steps so coarse that no arithmetic of the firmware's rounds it. */
static double between(uint32_t lowest, uint32_t highest) {
    /* One step of xorshift. */
    state ^= state << 13;
    state ^= state >> 17;
    state ^= state << 5;
    return (double)((lowest << 16) + state % ((highest - lowest) << 16)) * 0x1p-16;
}

static uint64_t hash;
static int refused;

static void note(int32_t status, double answer) {
    refused |= status != CUPWRIGHT_STATUS_OK;
    hash = hashed(hash, answer);
}

uint64_t brews(void) {
    state = 1;
    hash = HASH_START;
    refused = 0;
    for (int round = 0; round < ROUNDS; round++) {
        double answer = 0.0;
        int32_t status = cupwright_water_boiling_point(between(60, 105), &answer, NULL);
        note(status, answer);

        cupwright_surroundings room;
        room.room_c = between(5, 35);
        room.humidity_pct = between(0, 100);
        room.cover = round % 2 == 0 ? CUPWRIGHT_COVER_OPEN : CUPWRIGHT_COVER_LIDDED;
        const double water_c = between(60, 100);
        const double time_s = between(0, 3600);
        status = cupwright_heat_temperature_after(water_c, time_s, between(1, 64) * 0x1p-10, &room, &answer, NULL);
        note(status, answer);

        cupwright_kinetics kinetics;
        kinetics.equilibrium_yield_pct = between(15, 30);
        kinetics.fast_share_pct = between(0, 100);
        kinetics.fast_time_s = between(1, 60);
        kinetics.slow_time_s = between(60, 600);
        status = cupwright_extraction_yield_at_time(&kinetics, between(0, 900), &answer, NULL);
        note(status, answer);

        cupwright_brew brew;
        brew.dose_g = between(15, 25);
        brew.water_g = between(300, 400);
        brew.beverage_g = between(200, 240);
        brew.moisture_pct = between(0, 12);
        brew.water_solids_mg_per_l = between(0, 300);
        brew.vapour_g = between(0, 10);
        brew.held_strength_pct = between(0, 100);
        status = cupwright_extraction_yield(&brew, between(1, 2), &answer, NULL);
        note(status, answer);

        cupwright_iced iced;
        const double beverage_g = between(100, 400);
        const double beverage_c = between(50, 95);
        const double strength_pct = between(1, 10);
        const double ice_g = between(0, 200);
        status = cupwright_dilution_iced(beverage_g, beverage_c, strength_pct, ice_g, -between(0, 20), &iced, NULL);
        note(status, iced.water_c);
        note(status, iced.melted_g);
        note(status, iced.strength_pct);
    }
    return refused ? 0 : hash;
}
