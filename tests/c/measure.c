/*
 * Instructions and stack of the functions, on an emulated Cortex-M whose clock counts instructions. Reads
 * cases and brews, and prints a line for each function: its name, the instructions of its first answer, the most
 * instructions of any case, and the most bytes of stack.
 */

#include <stdint.h>

#include "platform.h"

enum { PAINTED = 9216 };

#define UNUSED 0xC5C5C5C5u

#define SYSTICK_CONTROL (*(volatile uint32_t *)0xE000E010u)
#define SYSTICK_RELOAD (*(volatile uint32_t *)0xE000E014u)
#define SYSTICK_NOW (*(volatile uint32_t *)0xE000E018u)

enum { PERIOD = 1 << 24 };

/* A period is more than most calls take; its end costs the call a few instructions and 104 bytes at most. */
static volatile uint32_t periods;

void on_timer(void) {
    periods++;
}

static uint32_t ticks, deepest;

/* No function between here and the call: its frame would lie on the paint. */
#define BEFORE_CALL()                                                              \
    volatile uint32_t *top;                                                        \
    __asm__ volatile("mov %0, sp" : "=r"(top));                                    \
    for (volatile uint32_t *word = top - PAINTED / 4; word < top; word++) {        \
        *word = UNUSED;                                                            \
    }                                                                              \
    SYSTICK_NOW = 0;                                                               \
    while (SYSTICK_NOW == 0) {                                                     \
    }                                                                              \
    periods = 0;                                                                   \
    uint32_t before = SYSTICK_NOW

#define AFTER_CALL()                                                               \
    uint32_t after = SYSTICK_NOW;                                                  \
    ticks = before - after + periods * PERIOD;                                     \
    volatile uint32_t *touched = top - PAINTED / 4;                                \
    while (touched < top && *touched == UNUSED) {                                  \
        touched++;                                                                 \
    }                                                                              \
    deepest = (uint32_t)((uintptr_t)top - (uintptr_t)touched)

/** What a function costs. */
struct cost {
    uint32_t first, most, deepest;
};

static void count(struct cost *cost, int is_first) {
    if (cost->first == 0 && is_first) {
        cost->first = ticks;
    }
    cost->most = ticks > cost->most ? ticks : cost->most;
    cost->deepest = deepest > cost->deepest ? deepest : cost->deepest;
}

/* Of a scale that is watched, and of a brew that is followed. */
static struct cost of_live[2];

#define READ(follows) count(&of_live[follows], 1)

#include "brews.h"

enum { LOOPS = 20000, INSTRUCTIONS_OF_A_LOOP = 4 };

/** Ticks of nothing, and of a loop of known length: together the ticks of an instruction. */
static void calibrate(uint32_t *nothing, uint32_t *loops) {
    {
        BEFORE_CALL();
        AFTER_CALL();
    }
    *nothing = ticks;
    {
        uint32_t count = LOOPS;
        BEFORE_CALL();
        __asm__ volatile(".syntax unified\n1: nop\n nop\n subs %0, #1\n bne 1b" : "+l"(count) : : "cc");
        AFTER_CALL();
    }
    *loops = ticks;
}

/** Instructions of so many ticks. */
static uint64_t instructions(uint32_t of_ticks, uint32_t nothing, uint32_t loops) {
    uint64_t of_call = of_ticks > nothing ? of_ticks - nothing : 0;
    return of_call * LOOPS * INSTRUCTIONS_OF_A_LOOP / (loops - nothing);
}

static void tell_cost(const char *name, const struct cost *cost, uint32_t nothing, uint32_t loops) {
    print(name);
    print(" ");
    print_number(instructions(cost->first, nothing, loops), 10);
    print(" ");
    print_number(instructions(cost->most, nothing, loops), 10);
    print(" ");
    print_number(cost->deepest, 10);
    print("\n");
}

int main(void) {
    static struct row given, expected, answer;
    static struct cost costs[CALLS];
    static cupwright_error error;
    char word[48];
    uint32_t nothing, loops;
    SYSTICK_RELOAD = PERIOD - 1;
    /* The processor's clock, with an interrupt at zero. */
    SYSTICK_CONTROL = 7;
    calibrate(&nothing, &loops);
    while (next_word(word, sizeof word) != 0 && strcmp(word, "end") != 0) {
        size_t number = 0;
        for (const char *letter = word; *letter != 0; letter++) {
            number = number * 10 + (size_t)(*letter - '0');
        }
        next_row(&given);
        int32_t status = (int32_t)next_number(10);
        next_row(&expected);
        if (status != CUPWRIGHT_STATUS_OK) {
            next_word(word, sizeof word);
        }
        answer.count = 0;
        if (number >= CALLS || calls[number].with(&given, &answer, &error) != status ||
            (status == CUPWRIGHT_STATUS_OK && !is_answer(&answer, &expected)) || deepest >= PAINTED) {
            print(number < CALLS ? calls[number].name : "no function");
            print(deepest >= PAINTED ? " takes more than can be measured\n" : " is not as expected\n");
            return 1;
        }
        count(&costs[number], status == CUPWRIGHT_STATUS_OK);
    }
    /* How many cases there were. */
    next_number(10);
    uint64_t lines;
    if (play_brews(&lines) != 0) {
        return 1;
    }
    for (size_t at = 0; at < CALLS; at++) {
        tell_cost(calls[at].name, &costs[at], nothing, loops);
    }
    tell_cost("cupwright_live_take", &of_live[0], nothing, loops);
    tell_cost("cupwright_follow_take", &of_live[1], nothing, loops);
    return 0;
}
