/*
 * Instructions and stack of calls, on an emulated Cortex-M whose clock counts instructions: a call stands between
 * two macros. A line tells a name, the instructions of the first answer, the most instructions, and the most
 * bytes of stack.
 */

#ifndef COSTS_H
#define COSTS_H

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

#include "words.h"

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

enum { LOOPS = 20000, INSTRUCTIONS_OF_A_LOOP = 4 };

/* Ticks of nothing, and of a loop of known length: together the ticks of an instruction. */
static uint32_t nothing, loops;

static void calibrate(void) {
    SYSTICK_RELOAD = PERIOD - 1;
    /* The processor's clock, with an interrupt at zero. */
    SYSTICK_CONTROL = 7;
    {
        BEFORE_CALL();
        AFTER_CALL();
    }
    nothing = ticks;
    {
        uint32_t count = LOOPS;
        BEFORE_CALL();
        __asm__ volatile(".syntax unified\n1: nop\n nop\n subs %0, #1\n bne 1b" : "+l"(count) : : "cc");
        AFTER_CALL();
    }
    loops = ticks;
}

/** Instructions of so many ticks. */
static uint64_t instructions(uint32_t of_ticks) {
    uint64_t of_call = of_ticks > nothing ? of_ticks - nothing : 0;
    return of_call * LOOPS * INSTRUCTIONS_OF_A_LOOP / (loops - nothing);
}

static void tell_cost(const char *name, const struct cost *cost) {
    print(name);
    print(" ");
    print_number(instructions(cost->first), 10);
    print(" ");
    print_number(instructions(cost->most), 10);
    print(" ");
    print_number(cost->deepest, 10);
    print("\n");
}

#endif
