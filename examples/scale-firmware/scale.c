#include "scale.h"

#include "load_cell.h"

enum {
    /* Samples in an average: 1.6 s. */
    WINDOW = 16,
    /* Samples further apart than this, a quarter of a gram, are not those of a weight at rest. */
    STILL_COUNTS = 105
};

/* The latest samples. */
struct window {
    int32_t counts[WINDOW];
    int next;
    int filled;
};

/* Sum of a window on an empty scale. */
static int32_t zero_sum;

static void add(struct window *window, int32_t counts) {
    window->counts[window->next] = counts;
    window->next = (window->next + 1) % WINDOW;
    if (window->filled < WINDOW) {
        window->filled++;
    }
}

static bool is_still(const struct window *window) {
    int32_t lowest = window->counts[0];
    int32_t highest = lowest;
    for (int at = 1; at < window->filled; at++) {
        lowest = window->counts[at] < lowest ? window->counts[at] : lowest;
        highest = window->counts[at] > highest ? window->counts[at] : highest;
    }
    return window->filled == WINDOW && highest - lowest <= STILL_COUNTS;
}

/* Of sixteen samples of 24 bits: fits easily. */
static int32_t sum_of(const struct window *window) {
    int32_t sum = 0;
    for (int at = 0; at < WINDOW; at++) {
        sum += window->counts[at];
    }
    return sum;
}

static int32_t milligrams(int32_t sum) {
    const int64_t counts = (int64_t)sum - zero_sum;
    const int64_t per_kg = (int64_t)WINDOW * LOAD_CELL_COUNTS_PER_KG;
    const int64_t half = counts < 0 ? -per_kg / 2 : per_kg / 2;
    return (int32_t)((counts * 1000000 + half) / per_kg);
}

static bool still_sum(int32_t *sum) {
    struct window window;
    window.next = 0;
    window.filled = 0;
    while (!is_still(&window)) {
        struct load_cell_sample sample;
        if (!load_cell_next(&sample)) {
            return false;
        }
        add(&window, sample.counts);
    }
    *sum = sum_of(&window);
    return true;
}

bool scale_wait_for_button(void) {
    struct load_cell_sample sample;
    do {
        if (!load_cell_next(&sample)) {
            return false;
        }
    } while (!sample.button);
    return true;
}

bool scale_zero(void) {
    return still_sum(&zero_sum);
}

bool scale_weigh(int32_t *mg) {
    int32_t sum;
    if (!still_sum(&sum)) {
        return false;
    }
    *mg = milligrams(sum);
    return true;
}

bool scale_glance(int seconds, int32_t *mg, bool *button) {
    struct window window;
    window.next = 0;
    window.filled = 0;
    *button = false;
    for (int left = seconds * LOAD_CELL_SAMPLES_PER_SECOND; left > 0; left--) {
        struct load_cell_sample sample;
        if (!load_cell_next(&sample)) {
            return false;
        }
        if (sample.button) {
            *button = true;
            return true;
        }
        add(&window, sample.counts);
    }
    *mg = milligrams(sum_of(&window));
    return true;
}
