/*
 * Instructions and stack of one call of each function, on an emulated Cortex-M whose clock counts
 * instructions. Reads one case for each function, prints a line for each: name, instructions, bytes.
 */

#include <stdint.h>

#include "platform.h"

enum { PAINTED = 4096 };

#define UNUSED 0xC5C5C5C5u

#define SYSTICK_CONTROL (*(volatile uint32_t *)0xE000E010u)
#define SYSTICK_RELOAD (*(volatile uint32_t *)0xE000E014u)
#define SYSTICK_NOW (*(volatile uint32_t *)0xE000E018u)
#define SYSTICK_WRAPPED (1u << 16)

static uint32_t ticks, deepest, wrapped;

/* No function between here and the call: its frame would lie on the paint. */
#define BEFORE_CALL()                                                              \
    volatile uint32_t *top;                                                        \
    __asm__ volatile("mov %0, sp" : "=r"(top));                                    \
    for (volatile uint32_t *word = top - PAINTED / 4; word < top; word++) {        \
        *word = UNUSED;                                                            \
    }                                                                              \
    SYSTICK_NOW = 0;                                                               \
    (void)SYSTICK_CONTROL;                                                         \
    uint32_t before = SYSTICK_NOW

#define AFTER_CALL()                                                               \
    uint32_t after = SYSTICK_NOW;                                                  \
    wrapped = SYSTICK_CONTROL & SYSTICK_WRAPPED;                                   \
    ticks = before - after;                                                        \
    volatile uint32_t *touched = top - PAINTED / 4;                                \
    while (touched < top && *touched == UNUSED) {                                  \
        touched++;                                                                 \
    }                                                                              \
    deepest = (uint32_t)((uintptr_t)top - (uintptr_t)touched)

#include "cases.h"

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

int main(void) {
    static struct row given, expected, answer;
    char word[48];
    uint32_t nothing, loops;
    SYSTICK_RELOAD = 0xFFFFFF;
    SYSTICK_CONTROL = 5;
    calibrate(&nothing, &loops);
    while (next_word(word, sizeof word) != 0 && strcmp(word, "end") != 0) {
        size_t number = 0;
        for (const char *letter = word; *letter != 0; letter++) {
            number = number * 10 + (size_t)(*letter - '0');
        }
        next_row(&given);
        int32_t status = (int32_t)next_number(10);
        next_row(&expected);
        answer.count = 0;
        if (status != CUPWRIGHT_STATUS_OK || number >= CALLS ||
            calls[number].with(&given, &answer, NULL) != status || !is_answer(&answer, &expected) || wrapped) {
            print("a case is no answer\n");
            return 1;
        }
        print(calls[number].name);
        print(" ");
        print_number((uint64_t)(ticks - nothing) * LOOPS * INSTRUCTIONS_OF_A_LOOP / (loops - nothing), 10);
        print(" ");
        print_number(deepest, 10);
        print("\n");
    }
    return 0;
}
