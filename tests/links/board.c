/* An emulated Cortex-M. The emulator loads data and finds its memory zero, so start-up has nothing to do. */

#include "firmware.h"

enum { WRITE0 = 0x04, EXIT_EXTENDED = 0x20, STOPPED = 0x20026 };

int main(void);

static void semihost(uintptr_t operation, const void *argument) {
    register uintptr_t r0 __asm__("r0") = operation;
    register const void *r1 __asm__("r1") = argument;
    __asm__ volatile("bkpt 0xAB" : "+r"(r0) : "r"(r1) : "memory");
}

void print(const char *text) {
    semihost(WRITE0, text);
}

static void leave(int code) {
    const uintptr_t reason[2] = {STOPPED, (uintptr_t)code};
    semihost(EXIT_EXTENDED, reason);
}

/* A fault ends the run with a code of its own instead of a hang. */
static void fault(void) {
    leave(99);
}

void reset(void) {
#if defined(__ARM_FP)
    /* The floating-point unit is off at reset. */
    *(volatile uint32_t *)0xE000ED88u |= 0xFu << 20;
    __asm__ volatile("dsb\n isb" ::: "memory");
#endif
    leave(main());
}

extern uint32_t stack_top[];

typedef void (*handler)(void);

__attribute__((section(".start"), used)) static const handler vectors[16] = {
    (handler)(uintptr_t)stack_top, reset, fault, fault, fault, fault, fault, 0, 0, 0, 0, fault, fault, 0, fault, fault,
};
