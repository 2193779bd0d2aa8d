#include "memory.h"
#include "port.h"

static void fault(void) {
    port_exit(EXIT_AFTER_FAULT);
}

void reset(void) {
#if defined(__ARM_FP)
    /* The floating-point unit is off at reset, and with the hard ABI doubles travel in its registers. */
    *(volatile uint32_t *)0xe000ed88u |= 0xfu << 20;
    __asm__ volatile("dsb\nisb" ::: "memory");
#endif
    memory_set_up();
    port_exit(main());
}

typedef void (*handler)(void);

/* No interrupts are used, so the table ends with the processor's own exceptions. */
__attribute__((section(".start"), used)) static const handler vectors[16] = {
    (handler)(uintptr_t)stack_top, reset, fault, fault, fault, fault, fault, 0, 0, 0, 0, fault, fault, 0, fault, fault,
};
