/* A load cell without a scale: the trace of one invented brew, played back at any speed. */

#include "load_cell.h"

enum {
    /* Ten samples a second, as such converters do at their quietest. */
    SAMPLE_MS = 100,
    /* Noise of a scale left alone, in counts to either side: 42 are a tenth of a gram. */
    QUIET = 20
};

/* What comes with the first sample of a stretch; of CLEARED, with all of them. */
enum { BUTTON = 1, FAILED, TOO_HIGH, POWER_FAILS, CLEARED };

/* A stretch of the trace. */
struct stretch {
    uint16_t samples;
    /* Largest noise to either side, in counts. */
    uint16_t noise;
    /* What is put on in it, evenly; below zero for what is taken off. All is taken off with CLEARED. */
    int32_t moved_mg;
    /* Water, in mg/s at its end: even in between. Below zero it evaporates. */
    int16_t flow;
    uint8_t comes;
    /* How long there was no sample before it, in tenths of a second. */
    uint8_t gap;
};

/* Invented data: no such brew was made. The cup weighs 312.4 g, the brewer with its paper 222.7 g. Hot water
 * loses 20 mg/s, a guess; the flow of a pour is what is left of it. A pour starts and ends over about a second. That a
 * stream pushes and that some of it is still falling cancel. */
static const struct stretch brew[] = {
    {20, QUIET, 0, 0, 0, 0},               /* Empty. */
    {3, 400, 312900, 0, 0, 0},             /* The cup is put down */
    {3, 60, -500, 0, 0, 0},                /* and rests; */
    {22, QUIET, 0, 0, 0, 0},
    {4, 600, 223300, 0, 0, 0},             /* the brewer with its paper on it. */
    {3, 60, -600, 0, 0, 0},
    {30, QUIET, 0, 0, BUTTON, 0},          /* The button is pressed as soon as it stands. */
    {8, 40, 0, 6000, 0, 0},                /* The paper is rinsed: 40 g. */
    {60, 60, 0, 6000, 0, 0},
    {6, 40, 0, 0, 0, 0},
    {30, QUIET, 0, -20, 0, 0},
    {4, 900, 0, 0, CLEARED, 0},            /* Brewer and cup are lifted, */
    {100, QUIET, 0, 0, 0, 0},              /* emptied at the sink, */
    {4, 900, 537600, 0, 0, 0},             /* and put back; the paper is wet. */
    {3, 60, -600, 0, 0, 0},
    {20, QUIET, 0, 0, BUTTON, 0},
    {3, 60, 0, 7000, 0, 0},                /* Coffee from a tin: most of it, */
    {15, 120, 0, 7500, 0, 0},
    {3, 60, 0, 0, 0, 0},
    {25, QUIET, 0, 0, 0, 0},
    {6, 60, 1300, 0, 0, 0},                /* a little more, */
    {20, QUIET, 0, 0, 0, 0},
    {8, 60, 1500, 0, 0, 0},                /* and more. */
    {50, QUIET, 0, 0, 0, 0},
    {10, 40, 0, 5000, 0, 0},               /* First pour, to wet it all. */
    {110, 80, 0, 5200, 0, 0},
    {6, 40, 0, 0, 0, 0},
    {20, QUIET, 0, -20, 0, 0},
    {1, QUIET, 160000, -20, 0, 0},         /* The kettle knocks against the scale. */
    {1, QUIET, -210000, -20, 0, 0},
    {1, QUIET, 50000, -20, 0, 0},
    {10, QUIET, 0, -20, 0, 0},
    {1, QUIET, 0, -20, FAILED, 0},         /* The converter gives nothing, once. */
    {30, QUIET, 0, -20, 0, 0},
    {50, 6000, 0, -20, 0, 0},              /* Stirred; the spoon takes a little with it. */
    {5, 1500, -300, -20, 0, 0},
    {220, QUIET, 0, -20, 0, 0},
    {10, 40, 0, 7000, 0, 0},               /* Second pour, to the top. */
    {90, 80, 0, 7400, 0, 0},
    {50, 80, 0, 7200, 0, 16},              /* No readings for a while, and the pour goes on; */
    {100, 80, 0, 6800, 0, 0},
    {5, 40, 0, 0, 0, 0},
    {60, QUIET, 0, -20, 0, 0},
    {1, QUIET, 0, -20, TOO_HIGH, 0},       /* One conversion goes wrong. */
    {80, QUIET, 0, -20, 0, 0},
    {1, QUIET, 0, -20, POWER_FAILS, 0},    /* The supply is pulled out by mistake, */
    {310, QUIET, 0, -20, 0, 60},           /* and is back after six seconds. */
    {40, 400, 4600000, -20, 0, 0},         /* A hand presses, */
    {180, 900, 800000, -20, 0, 0},         /* in the end beyond what the scale can weigh, */
    {8, 400, -5400400, -20, 0, 0},         /* and lets go. */
    {40, QUIET, 0, -20, 0, 0},
    {4, 900, 0, 0, CLEARED, 0},            /* All is lifted; cup and brewer are parted. */
    {80, QUIET, 0, 0, 0, 0},
    {4, 400, 532300, 0, 0, 0},             /* The cup, with what has come out, is put back */
    {3, 60, -300, 0, 0, 0},
    {60, QUIET, 0, -10, 0, 0},             /* and weighed: 219.6 g. */
};

enum { STRETCHES = sizeof brew / sizeof brew[0] };

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
    static int64_t load_ug;
    static int64_t at_start_ug;
    static int16_t flow;
    static uint32_t clock_ms;
    if (stretch == STRETCHES) {
        return false;
    }
    const struct stretch *now = &brew[stretch];
    if (at == 0) {
        at_start_ug = load_ug;
        load_ug += (int64_t)flow * now->gap * SAMPLE_MS;
        clock_ms += now->gap * (uint32_t)SAMPLE_MS;
    }
    at++;
    clock_ms += SAMPLE_MS;
    const int64_t moved_ug = now->comes == CLEARED ? -at_start_ug : now->moved_mg * INT64_C(1000);
    /* The flow in the middle of the sample. */
    const int64_t twice_on = (int64_t)(now->flow - flow) * (2 * at - 1) / now->samples;
    load_ug += moved_ug * at / now->samples - moved_ug * (at - 1) / now->samples + (flow + twice_on / 2) * SAMPLE_MS;
    const int64_t counts = load_ug * LOAD_CELL_COUNTS_PER_KG / 1000000000;
    const uint8_t comes = at == 1 ? now->comes : 0;
    sample->clock_ms = clock_ms;
    sample->counts = comes == TOO_HIGH ? LOAD_CELL_HIGHEST_COUNTS
                                       : LOAD_CELL_EMPTY_COUNTS + (int32_t)counts + noise(now->noise);
    sample->failed = comes == FAILED;
    sample->button = comes == BUTTON;
    sample->power_fails = comes == POWER_FAILS;
    if (at == now->samples) {
        at = 0;
        flow = now->flow;
        stretch++;
    }
    return true;
}
