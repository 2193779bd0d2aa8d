/* Text and exit by semihosting: the emulator, or a debugger, does them for the processor. Without either
 * the first call is a fault. */

#include <stdint.h>

#include "../display.h"
#include "port.h"

enum { WRITE0 = 0x04, EXIT_EXTENDED = 0x20, STOPPED = 0x20026 };

static void semihost(intptr_t operation, const void *argument) {
#if defined(__riscv)
    register intptr_t a0 __asm__("a0") = operation;
    register const void *a1 __asm__("a1") = argument;
    /* The three instructions must be uncompressed and on one page. */
    __asm__ volatile(
        ".balign 16\n.option push\n.option norvc\n"
        "slli x0, x0, 0x1f\nebreak\nsrai x0, x0, 7\n"
        ".option pop"
        : "+r"(a0)
        : "r"(a1)
        : "memory");
#else
    register intptr_t r0 __asm__("r0") = operation;
    register const void *r1 __asm__("r1") = argument;
    __asm__ volatile("bkpt 0xab" : "+r"(r0) : "r"(r1) : "memory");
#endif
}

void display_text(const char *text) {
    semihost(WRITE0, text);
}

_Noreturn void port_exit(int code) {
    const uintptr_t reason[2] = {STOPPED, (uintptr_t)code};
    semihost(EXIT_EXTENDED, reason);
    for (;;) {
    }
}
