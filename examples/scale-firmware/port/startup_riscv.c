#include "memory.h"
#include "port.h"

__attribute__((aligned(4), used)) static void trap(void) {
    port_exit(EXIT_AFTER_FAULT);
}

__attribute__((used)) static void start_in_c(void) {
    memory_set_up();
    port_exit(main());
}

/* The first instructions of the image. */
__attribute__((naked, section(".start"), used)) void reset(void) {
    /* Naming the extension to the compiler would make it choose the 64-bit libgcc. */
    __asm__ volatile(
        "la sp, stack_top\n"
        "la t0, trap\n"
        ".option arch, +zicsr\n"
        "csrw mtvec, t0\n"
        "j start_in_c");
}
