/* A load cell without a scale: the trace of one invented brew, played back at any speed. */

#include "load_cell.h"

/* A stretch of the trace: a straight line from where the last one ended. */
struct stretch {
    uint16_t samples;
    /* Whether the button is pressed as it begins. */
    bool button;
    /* Largest noise to either side, in counts: 42 are a tenth of a gram. */
    uint16_t noise;
    /* What lies on the scale at the end. */
    int32_t to_mg;
};

/* Invented data: no such brew was made. The cup weighs 312.4 g, the dosing tray 41.7 g, the brewer with
 * cup and dose 551.2 g. */
static const struct stretch brew[] = {
    {40, true, 20, 0},          /* Empty. */
    {3, false, 300, 312900},    /* The cup is put down, */
    {10, true, 20, 312400},     /* the button pressed before it has settled, */
    {25, false, 20, 312400},    /* and now it lies still. */
    {4, false, 300, 0},         /* It goes off again. */
    {3, false, 300, 42100},     /* The empty tray. */
    {10, false, 20, 41700},
    {25, true, 20, 41700},
    {25, false, 120, 58300},    /* Coffee is ground into it, */
    {10, false, 20, 57800},
    {25, true, 20, 57800},      /* 16.1 g. */
    {5, false, 300, 0},         /* The tray goes off. */
    {6, false, 600, 551900},    /* Brewer on the cup, dose inside. */
    {10, false, 20, 551200},
    {25, true, 20, 551200},
    {90, false, 150, 611600},   /* First pour, 60.4 g. */
    {200, false, 20, 611400},   /* The coffee swells and steams. */
    {190, false, 150, 768600},  /* Second pour, to 217.4 g. */
    {35, true, 20, 768600},     /* Pouring is over. */
    {600, false, 20, 767400},   /* Steeping; vapour leaves. */
    {40, false, 400, 5400000},  /* A hand presses: five kilograms of force, */
    {200, false, 900, 6200000}, /* and more, */
    {15, false, 400, 767000},   /* and lets go. Nothing was poured. */
    {8, false, 600, 500800},    /* The brewer is lifted off, the cup is left. */
    {10, false, 20, 500300},
    {25, true, 20, 500300},     /* 187.9 g in the cup. */
};

enum { STRETCHES = sizeof brew / sizeof brew[0], EMPTY_COUNTS = -61340 };

/* Noise that is the same in every run: a linear congruential generator. */
static int32_t noise(uint16_t largest) {
    static uint32_t state = 2024;
    int32_t sum = 0;
    for (int draw = 0; draw < 2; draw++) {
        state = state * 1664525u + 1013904223u;
        sum += (int32_t)((state >> 16) % (2u * largest + 1u)) - largest;
    }
    return sum / 2;
}

bool load_cell_next(struct load_cell_sample *sample) {
    static uint32_t stretch;
    static uint16_t at;
    if (stretch == STRETCHES) {
        return false;
    }
    const struct stretch *now = &brew[stretch];
    const int64_t from_mg = stretch == 0 ? 0 : brew[stretch - 1].to_mg;
    at++;
    const int64_t mg = from_mg + (now->to_mg - from_mg) * at / now->samples;
    sample->counts = (int32_t)(EMPTY_COUNTS + mg * LOAD_CELL_COUNTS_PER_KG / 1000000) + noise(now->noise);
    sample->button = now->button && at == 1;
    if (at == now->samples) {
        at = 0;
        stretch++;
    }
    return true;
}
