/* An emulated board: start-up, text on the emulator's console, an exit code. */

#include "board.h"

enum { WRITE0 = 0x04, EXIT_EXTENDED = 0x20, STOPPED = 0x20026 };

int main(void);

intptr_t semihost(intptr_t operation, const void *argument) {
#if defined(__riscv)
    register intptr_t a0 __asm__("a0") = operation;
    register const void *a1 __asm__("a1") = argument;
    __asm__ volatile(".balign 16\n.option push\n.option norvc\n slli x0, x0, 0x1f\n ebreak\n srai x0, x0, 7\n"
                     ".option pop"
                     : "+r"(a0)
                     : "r"(a1)
                     : "memory");
    return a0;
#else
    register intptr_t r0 __asm__("r0") = operation;
    register const void *r1 __asm__("r1") = argument;
    __asm__ volatile("bkpt 0xAB" : "+r"(r0) : "r"(r1) : "memory");
    return r0;
#endif
}

_Noreturn static void leave(int code) {
    const uintptr_t reason[2] = {STOPPED, (uintptr_t)code};
    semihost(EXIT_EXTENDED, reason);
    for (;;) {
    }
}

void print(const char *text) {
    semihost(WRITE0, text);
}

extern uint32_t bss_start[], bss_end[], stack_top[];

static void start(void) {
    for (uint32_t *word = bss_start; word < bss_end; word++) {
        *word = 0;
    }
    leave(main());
}

/* A fault ends the run with a code of its own instead of a hang. */
static void fault(void) {
    leave(124);
}

#if defined(__riscv)

__attribute__((aligned(4), used)) static void trap(void) {
    fault();
}

__attribute__((used)) static void start_in_c(void) {
    start();
}

__attribute__((naked, section(".start"), used)) void reset(void) {
    __asm__ volatile(" la sp, stack_top\n la t0, trap\n .option arch, +zicsr\n csrw mtvec, t0\n j start_in_c");
}

#else

void reset(void) {
#if defined(__ARM_FP)
    /* The floating-point unit is off at reset. */
    *(volatile uint32_t *)0xE000ED88u |= 0xFu << 20;
    __asm__ volatile("dsb\n isb" ::: "memory");
#endif
    start();
}

/* For a program that counts with the processor's timer. */
__attribute__((weak)) void on_timer(void) {
    fault();
}

typedef void (*handler)(void);

__attribute__((section(".start"), used)) static const handler vectors[16] = {
    (handler)(uintptr_t)stack_top, reset, fault, fault, fault, fault, fault, 0, 0, 0, 0, fault, fault, 0, fault, on_timer,
};

#endif
